package joint

import (
	"slices"
	"strconv"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// canFlip tells whether part A can be bolted on the wrong way round: nothing is
// fixed to it yet, its holes go through, and with its other face on the joint it
// and part B do not lie in one another.
func (j *making) canFlip(t *joint) bool {
	return t.a.group != nil && t.a.group.Through && len(j.members(t.a.Instance(), j.before)) == 1 &&
		(t.a.r.Part.Flat() || t.a.r.Part.Turned() && j.goesRound(t))
}

// clearMm is how far two parts that meet may lie in one another by rounding, and
// by what a fit takes.
const clearMm = 0.05

// goesRound tells whether turned part A with its other face on the joint finds
// room beside part B.
func (j *making) goesRound(t *joint) bool {
	if !t.axis {
		return false
	}
	a, b := j.at(t.a.Instance()), j.at(t.b.Instance())
	meet, radius := t.meeting().First, geom.MeanRadiusMm(t.a.points())
	own, _, okOwn := t.a.r.Plane(meet, radius)
	other, _, okOther := t.a.r.Plane(meet.Other(), radius)
	if !okOwn || !okOther {
		return false
	}
	turned := placement{a.at.z0 + a.at.s*(own+other), a.at.turn, -a.at.s}
	for _, r := range between(t.a.r.Steps, t.b.r.Steps) {
		for _, m := range t.a.r.MetalAt(r) {
			for _, n := range t.b.r.MetalAt(r) {
				if turned.span(m).OnMm(b.at.span(n)) > clearMm {
					return false
				}
			}
		}
	}
	return true
}

// between are radii in the middle between those of the steps of two parts.
func between(a, b []part.Step) []float64 {
	var out []float64
	all := seq.Map(slices.Concat(a, b), func(s part.Step) float64 { return s.Size.NominalMm / 2 })
	slices.Sort(all)
	for i := range len(all) - 1 {
		if all[i+1]-all[i] > clearMm {
			out = append(out, (all[i]+all[i+1])/2)
		}
	}
	return out
}

// otherPlaces finds other copies of the parts that meet, in what comes and in
// what stands, with the holes of this joint still free: it goes together there
// as well.
func (j *making) otherPlaces(t *joint) bool {
	found := false
	for _, f := range []feature{t.a, t.b} {
		if f.r.Part.Quantity == 1 {
			continue
		}
		for _, i := range j.members(f.Instance(), j.before) {
			if i.Part != f.ref.Part || i == f.Instance() || slices.ContainsFunc(ofKind(j.before, parts.BoltKind), func(o *joint) bool { return o.holds(i, f.ref.Feature) }) {
				continue
			}
			copied := copyTitle(f.r, i.Copy)
			t.out.Traps = append(t.out.Traps, plan.Trap{Instead: copied, Breaks: true, Out: []plan.Out{{What: copied + " in the place of " + f.title()}}})
			t.out.Remedies = append(t.out.Remedies, j.tellsApart(f, i))
			found = true
		}
	}
	return found
}

// tellsApart says which of two copies is the right one: by the end of a part that is made but
// once and has both, else by numbers alone.
func (j *making) tellsApart(f feature, other parts.Instance) string {
	a, b := j.at(f.Instance()), j.at(other)
	for _, q := range j.placed {
		tied := func(i parts.Instance) bool {
			return slices.ContainsFunc(j.before, func(o *joint) bool { return o.has(i) && o.has(q.Instance) && i != q.Instance })
		}
		if !tied(f.Instance()) || !tied(other) || q.r.Part.Quantity > 1 || b == nil || a.group != q.group || b.group != q.group {
			continue
		}
		end := faceName((a.at.z0 - b.at.z0) * q.at.s)
		return f.title() + " is the one at the " + end + " of " + q.r.Out.Title + "."
	}
	return "Stamp the numbers of the copies of " + f.r.Out.Title + " where they are seen: only they tell them apart."
}

// holds tells whether a joint takes the holes of a copy.
func (t *joint) holds(i parts.Instance, feature string) bool {
	own, _, ok := t.from(i)
	return ok && own.ref.Feature == feature
}

// cures are what makes wrong ways seen, or impossible where they are serious.
func (j *making) cures(t *joint, serious bool) {
	if !slices.ContainsFunc(t.out.Traps, func(k plan.Trap) bool { return k.Instead == "" }) {
		return
	}
	t.scribe(false, "Scribe a witness mark across both edges at "+words.Angle(j.markDeg(t))+" (assembly clock).")
	if serious {
		t.out.Offset = j.offsetHole(t)
	}
}

// scribe has a mark made, which places the parts or is a witness that they are right.
func (t *joint) scribe(places bool, line string) {
	t.out.Remedies = append(t.out.Remedies, line)
	if t.marked == nil {
		t.marked, t.places = []string{line}, places
	}
}

// markDeg is where to scribe: at TOP of the part that comes, so that one drawing
// gets one mark whatever it is joined to.
func (j *making) markDeg(t *joint) float64 { return j.at(t.a.Instance()).at.clock(0) }

// leads is the side of a bolted joint whose drawing says where the offset hole
// is: that of which there are more copies, else the part that comes.
func (t *joint) leads() (lead, other feature) {
	if t.b.r.Part.Quantity > t.a.r.Part.Quantity {
		return t.b, t.a
	}
	return t.a, t.b
}

// offsetHole looks for the smallest shift of the last hole on its circle, the
// same in both parts, that leaves a single way of assembly; one drawing gets the
// same in every joint of its copies. It gives that hole and the one of the mate, each on
// its marked face; nil where there is none.
func (j *making) offsetHole(t *joint) []plan.Out {
	lead, _ := t.leads()
	if len(lead.group.Points) < 2 || j.leeway(t).slotted() {
		return nil
	}
	joints := []*joint{t}
	if lead.r.Part.Quantity > 1 {
		joints = j.all
	}
	for shift := 2.0; shift <= 15; shift++ {
		if slices.ContainsFunc(ofKind(joints, parts.BoltKind), func(o *joint) bool { return o.sharesLead(lead) && !j.single(o, shift) }) {
			continue
		}
		return j.moved(t, shift)
	}
	return nil
}

// moved are the last hole of the drawing that leads in a joint, and the one that it meets, each
// with the clock angle to which they go together by a shift of the first on its marked face.
func (j *making) moved(t *joint, shift float64) []plan.Out {
	lead, other := t.leads()
	at := func(f feature, k int, by float64) plan.Out {
		was := geom.ClockDeg(f.group.Points[k])
		of := f.text()
		if n := f.r.Part.Quantity; n > 1 {
			of = f.r.Out.Title + " " + words.Spaced(f.ref.Feature) + " (all " + strconv.Itoa(n) + " pieces)"
		}
		return plan.Out{What: "hole " + strconv.Itoa(f.group.Group.First+k) + " of " + of, Clocked: true, AtDeg: geom.OnClock(was + by), RightDeg: was}
	}
	k := len(lead.group.Points) - 1
	out := []plan.Out{at(lead, k, shift)}
	p, q := j.at(lead.Instance()), j.at(other.Instance())
	if mate := j.meets(t, j.pattern(lead)[k], j.pattern(other)); mate >= 0 {
		out = append(out, at(other, mate, shift*p.at.way(lead.group.Face.Outward())*q.at.way(other.group.Face.Outward())))
	}
	return out
}

// meets is the place of a pattern at which a hole of the other part lies; -1 where none does.
func (j *making) meets(t *joint, at plan.XY, holes []plan.XY) int {
	return slices.IndexFunc(holes, func(q plan.XY) bool { return j.leeway(t).found(at, q) })
}

// sharesLead tells whether the drawing of a feature leads in a joint.
func (t *joint) sharesLead(lead feature) bool {
	f, _ := t.leads()
	return f.group != nil && f.ref.Part == lead.ref.Part && f.ref.Feature == lead.ref.Feature
}

// single tells whether the holes of a joint meet in one way only once the last
// of the leading drawing is shifted, by its marked face.
func (j *making) single(t *joint, shift float64) bool {
	lead, other := t.leads()
	p := j.at(lead.Instance())
	if p == nil {
		return true
	}
	a, b := j.pattern(lead), j.pattern(other)
	k := len(a) - 1
	mate := j.meets(t, a[k], b)
	if mate < 0 {
		return true
	}
	turn := turnedBy(-p.at.way(lead.group.Face.Outward()) * shift)
	a[k], b[mate] = turn.point(a[k]), turn.point(b[mate])
	return len(motions(a, b, j.leeway(t), j.canFlip(t))) == 0
}
