package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// placeOn is a face across a shaft's axis of a part whose own axis runs along it, beside it or on it: where it lies along the shaft
// from its front, and along the part from its own.
type placeOn struct {
	body      string
	of        *part.Model
	inside    bool // the end of a step inside
	mm, ownMm float64
}

// is tells whether it is another.
func (p placeOn) is(o placeOn) bool {
	return p.body == o.body && p.inside == o.inside && geom.Alike(p.ownMm, o.ownMm)
}

// placesOn are the faces of bodies across the axis of a shaft: the ends of parts and of their steps.
func (m *Machine) placesOn(shaft *assembly.Body, bodies []assembly.Body) (all []placeOn) {
	for b := range seq.Refs(bodies) {
		on, of := stand.On(shaft.Pose, b, m.PartOf(b.ID)), m.PartOf(b.ID)
		if math.Abs(shaft.Pose.Z.Dot(b.Pose.Z)) < 1-stand.Level {
			continue
		}
		add := func(inside bool, own float64) {
			p := placeOn{b.ID, of, inside, on.Z(own), own}
			if !slices.ContainsFunc(all, p.is) {
				all = append(all, p)
			}
		}
		for _, inside := range []bool{false, true} {
			add(inside, 0)
			for _, s := range of.Side(inside) {
				add(inside, s.FromMm)
				add(inside, s.ToMm)
			}
			add(inside, of.LengthMm())
		}
	}
	return all
}

// linked is how far one place lies behind another, of one part or where two parts meet in a joint, inside the limits of its
// lengths: sure where those have limits. ok is false where neither says it.
func linked(before, behind *placeOn, meet map[[2]string]meeting) (mm plan.Range, sure, ok bool) {
	d := behind.mm - before.mm
	drawn := plan.Range{Min: d, Max: d}
	switch {
	case before.body != behind.body:
		set, held := meet[[2]string{before.body, behind.body}]
		return plan.Range{}, true, held && geom.Alike(d, 0) && set.sets(before, behind)
	case geom.Alike(before.ownMm, behind.ownMm):
		return plan.Range{}, true, true
	case before.inside != behind.inside:
		return drawn, false, false
	case !before.of.Part.Turned():
		return drawn, false, !before.inside // a plate is as thick as it is bought
	}
	return lies(before.of, before.inside, [2]float64{before.ownMm, behind.ownMm}, d), true, true
}

// lies is how far apart two places of a part are inside the limits of its lengths, with the sign of what is drawn; as drawn
// where its steps have no length there.
func lies(r *part.Model, inside bool, fromTo [2]float64, drawnMm float64) plan.Range {
	between := r.BetweenMm(inside, min(fromTo[0], fromTo[1]), max(fromTo[0], fromTo[1]))
	switch {
	case between.Max <= 0:
		return plan.Range{Min: drawnMm, Max: drawnMm}
	case drawnMm < 0:
		return plan.Range{Min: -between.Max, Max: -between.Min}
	}
	return between
}

// wayTo is how far a face lies behind the first of a chain inside limits, by the way on which it loses least.
type wayTo struct {
	mm    plan.Range
	sure  bool    // all on the way have limits
	least float64 // what it loses, a way with what has no limits more than any
	done  bool
}

// nextOf is the way that loses least of those not yet gone on from, -1 where none is left.
func nextOf(ways []wayTo) int {
	next := -1
	for k, w := range ways {
		if !w.done && w.least < inf && (next < 0 || w.least < ways[next].least) {
			next = k
		}
	}
	return next
}

// chain is how far one face lies behind another inside the limits of lengths, along the parts that joints hold together
// between, by the way on which they lose least; sure where all on it have limits. ok is false where no such way is found.
func (m *Machine) chain(shaft *assembly.Body, bodies []assembly.Body, from, to [2]placeOn) (mm plan.Range, sure, ok bool) {
	const unsureMm, linkMm = 1e3, 1e-6
	meet := m.meetings()
	all := m.placesOn(shaft, slices.Concat(bodies, m.studsAt(bodies, meet)))
	ways := seq.Map(all, func(p placeOn) wayTo {
		if p.is(from[0]) || p.is(from[1]) {
			return wayTo{sure: true}
		}
		return wayTo{least: inf}
	})
	for next := nextOf(ways); next >= 0; next = nextOf(ways) {
		w := &ways[next]
		if w.done = true; all[next].is(to[0]) || all[next].is(to[1]) {
			return w.mm, w.sure, true
		}
		for k := range all {
			link, sure, ok := linked(&all[next], &all[k], meet)
			least := w.least + link.Max - link.Min + linkMm
			if !sure {
				least += unsureMm
			}
			if ok && !ways[k].done && least < ways[k].least {
				ways[k] = wayTo{plan.Range{Min: w.mm.Min + link.Min, Max: w.mm.Max + link.Max}, w.sure && sure, least, false}
			}
		}
	}
	return plan.Range{}, false, false
}

// studsAt are the made studs that meet one of some bodies, and are none of them.
func (m *Machine) studsAt(bodies []assembly.Body, meet map[[2]string]meeting) []assembly.Body {
	return seq.Keep(m.Bodies, func(b assembly.Body) bool {
		own := slices.ContainsFunc(bodies, func(o assembly.Body) bool { return o.ID == b.ID })
		meets := func(o assembly.Body) bool { _, is := meet[[2]string{o.ID, b.ID}]; return is }
		return m.PartOf(b.ID) != nil && !own && m.Job.IsStud(m.Of[b.ID].Part) && slices.ContainsFunc(bodies, meets)
	})
}

// meeting is how two bodies that a joint holds together meet along their axis: face to face, or with an end of each level.
type meeting struct {
	first string // the body of the joint's first part
	faces parts.Meeting
}

// sets tells whether the joint sets one place by another: where metal meets metal, or where the ends are that it has level.
func (j meeting) sets(a, b *placeOn) bool {
	if !j.faces.Level {
		return true
	}
	if b.body == j.first {
		a, b = b, a
	}
	end := func(p *placeOn, f parts.Face) bool { return geom.Alike(p.ownMm, parts.At(f, 0, p.of.LengthMm())) }
	return end(a, j.faces.First) && end(b, j.faces.Second)
}

// meetings are the pairs of bodies that a joint holds to one another, either way round, with its studs.
func (m *Machine) meetings() map[[2]string]meeting {
	meet := map[[2]string]meeting{}
	for _, j := range m.Joints {
		if m.Job.Runs(m.Joint(j.Name)) {
			continue
		}
		a, b := j.A.Instance().ID(), j.B.Instance().ID()
		how := meeting{a, m.Job.MeetingOf(m.Joint(j.Name))}
		meet[[2]string{a, b}], meet[[2]string{b, a}] = how, how
		for _, s := range m.Studs(j) {
			for _, id := range []string{a, b} {
				meet[[2]string{id, s.B}], meet[[2]string{s.B, id}] = meeting{}, meeting{}
			}
		}
	}
	return meet
}
