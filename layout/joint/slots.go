package joint

import (
	"math"
	"slices"

	"centrepop/layout/bolts"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// leeway is how far a hole of A may lie from its mate in B with the bolt still entering: half the
// play in a tapped joint, half the two plays with nuts; and from the middle of a slot on each
// side as far as the centres of its ends, in the frame of the patterns.
type leeway struct {
	mm   float64
	a, b plan.XY
}

// reachMm is the leeway over holes, and across slots.
func (t *joint) reachMm() float64 {
	d := t.boltMm
	play := math.Max(0, t.a.group.Size.FinishedMm-d)
	if t.b.group.Size.Thread == nil {
		play += math.Max(0, t.b.group.Size.FinishedMm-d)
	}
	return play / 2
}

// run is from the middle of the slots of a group to the centre of an end, seen as its points are; zero of holes.
func (f feature) run() plan.XY {
	half, _, _ := f.group.SlotMm()
	return parts.At(f.group.Face, half, half.Mirrored())
}

func (f feature) slotted() bool { return f.group != nil && f.group.Hole == nil }

// place is one of what a group consists of.
func (f feature) place() string { return words.Either(f.slotted(), "slot", "hole") }

// holes is what a group consists of.
func (f feature) holes() plan.Arg { return plan.Named(f.place() + "s") }

// leewayIn is that of patterns which are placed so.
func (t *joint) leewayIn(a, b placement) leeway {
	return leeway{t.reachMm(), a.point(t.a.run()), b.point(t.b.run())}
}

// leeway is that of patterns.
func (j *making) leeway(t *joint) leeway { return t.leewayIn(j.frames(t)) }

// runIn is the run of a group as its part is placed.
func (j *making) runIn(f feature) plan.XY {
	if p := j.at(f.Instance()); p != nil {
		return p.at.point(f.run())
	}
	return f.run()
}

// slotted tells whether one of the two has slots.
func (r leeway) slotted() bool { return r.a != plan.XY{} || r.b != plan.XY{} }

// offMm is how far the bolts that go through one place of A lie from those that go through one of B, or the other
// way round.
func (r leeway) offMm(p, q plan.XY) float64 {
	if !r.slotted() {
		return geom.Distance(p, q)
	}
	return geom.Apart(p.Minus(r.a), p.Plus(r.a), q.Minus(r.b), q.Plus(r.b))
}

// found tells whether a bolt goes through both.
func (r leeway) found(p, q plan.XY) bool { return !geom.Over(r.offMm(p, q), r.mm) }

// turns are those that bring a place onto one of others about the origin, each once; slots meet at
// quarter turns as well that do not bring their middles on one another.
func (r leeway) turns(first plan.XY, onto []plan.XY) (turns []float64) {
	for _, q := range onto {
		turn := geom.OnClock(geom.ClockDeg(q) - geom.ClockDeg(first))
		if !slices.ContainsFunc(turns, func(o float64) bool { return !geom.Over(apart(o, turn), 0) }) {
			turns = append(turns, turn)
		}
	}
	if r.slotted() {
		turns = seq.Add(turns, 0, 90, 180, 270)
	}
	return turns
}

// across are places seen along the slots, on which their pitch does not count; with holes alone, and with slots
// that cross one another, they are as they were.
func (r leeway) across(at []plan.XY) []plan.XY {
	way := r.b
	if r.a.LengthMm() > 0 {
		way = r.a
	}
	if !r.slotted() || !geom.Alike(r.a.Cross(r.b), 0) {
		return at
	}
	return seq.Map(at, func(p plan.XY) plan.XY { return p.Minus(way.Times(p.Dot(way) / way.Dot(way))) })
}

// spot is where the bolt of a place of A and one of B stands: on the middle line of A's slot, halfway along what B
// leaves of that.
func (r leeway) spot(p, q plan.XY) plan.XY {
	d, long := q.Minus(p), r.a.LengthMm()
	if long == 0 {
		return p
	}
	share := d.Dot(r.a) / (long * long) // of the run
	if turn := r.a.Cross(r.b); !geom.Alike(turn, 0) {
		share = d.Cross(r.b) / turn
	} else if other := r.b.LengthMm() / long; other > 0 {
		share = (max(-1, share-other) + min(1, share+other)) / 2
	}
	return p.Plus(r.a.Times(max(-1, min(1, share))))
}

// shiftMm is how far A can go one way from where it is drawn until a bolt meets the end of a slot, the play of
// holes left out.
func (r leeway) shiftMm(a, mates []plan.XY, way plan.XY) float64 {
	low, high := 0.0, 2*(r.a.LengthMm()+r.b.LengthMm()+r.mm)
	for range 60 {
		mid := (low + high) / 2
		by, free := way.Times(mid), true
		for i, p := range a {
			free = free && r.found(p.Plus(by), mates[i])
		}
		if free {
			low = mid
		} else {
			high = mid
		}
	}
	return words.Round(max(0, low-r.mm), 3)
}

// slots works out of patterns that meet where the bolts stand in the slots, how far the parts can be shifted, and
// what the heads and nuts bear on; the places of the bolts are given.
func (j *making) slots(t *joint, a, b []plan.XY) (bolts []plan.XY) {
	r, p := j.leeway(t), t.out.Bolt
	if !r.slotted() {
		t.adjust(nil)
		return a
	}
	own, on := j.frames(t)
	var mates []plan.XY
	for _, q := range a {
		best := b[0]
		for _, o := range b {
			if r.offMm(q, o) < r.offMm(q, best) {
				best = o
			}
		}
		at := r.spot(q, best)
		mates, bolts = append(mates, best), append(bolts, at)
		off := own.inverse().point(at.Minus(q))
		p.OffMm = append(p.OffMm, plan.XY{XMm: geom.Clean(off.XMm), YMm: geom.Clean(off.YMm)})
	}
	shift := func(f feature, run plan.XY, frame placement) {
		if long := run.LengthMm(); long > 0 {
			way := run.Times(1 / long)
			p.Shifts = append(p.Shifts, plan.Shift{
				Of: f.text(), Mm: r.shiftMm(a, mates, way), BackMm: r.shiftMm(a, mates, way.Times(-1)),
				Along: plan.XY{XMm: geom.Clean(way.XMm), YMm: geom.Clean(way.YMm)}, TowardsDeg: geom.OnClock(geom.ClockDeg(frame.inverse().point(way))),
			})
		}
	}
	shift(t.a, r.a, own)
	if r.a.LengthMm() == 0 || !geom.Alike(r.a.Cross(r.b), 0) { // else the two are one way
		shift(t.b, r.b, on)
	}
	t.adjust(p.Shifts)
	t.bridged(t.a, t.in.Stud() != "")
	if t.b.group.Size.Thread == nil {
		t.bridged(t.b, true)
	}
	return bolts
}

// stood is where the bolts stand on one of the two parts, and where they come to as far as slots let the parts be
// shifted, in the assembly of that part.
func (j *assembly) stood(t *joint, f feature) (pts, far []plan.XY) {
	frame, b := j.frames(t)
	if f.Instance() == t.b.Instance() {
		frame = b
	}
	way := func(v plan.XY) plan.XY { return j.at(f.Instance()).at.point(frame.inverse().point(v)) }
	for k, at := range t.bolts {
		if f.Instance() == t.a.Instance() {
			at = j.at(f.Instance()).at.point(f.points()[k].Plus(t.out.Bolt.OffMm[k]))
		} else if t.out.Beside != nil {
			at = way(at)
		}
		pts = append(pts, at)
		for _, s := range t.out.Bolt.Shifts {
			far = append(far, at.Plus(way(s.Along.Times(s.Mm))), at.Minus(way(s.Along.Times(s.BackMm))))
		}
	}
	return pts, far
}

// adjust sees that the parts can be shifted as far as the joint asks.
func (t *joint) adjust(shifts []plan.Shift) {
	want := t.in.Bolt.Adjust
	least := seq.Least(shifts, func(s plan.Shift) float64 { return min(s.Mm, s.BackMm) })
	if len(shifts) == 0 {
		least = 0
	}
	if geom.Over(want.Mm, least) {
		t.problem(plan.ShiftShort, plan.Named(t.a.title()), plan.Of(plan.Mm, geom.Clean(least)), plan.Of(plan.Mm, want.Mm))
	}
}

// bridged sees that head, or nut, or the washer under it bears on both sides of a slot.
func (t *joint) bridged(f feature, nut bool) {
	if !f.slotted() {
		return
	}
	in, width, what := t.in.Bolt, f.group.Size.FinishedMm, "heads"
	if nut {
		what = "nuts"
	}
	b := t.bolt.OverSlot(bolts.Head(in.Head), nut, in.Washer, width)
	args := []plan.Arg{plan.Named(what), plan.Named(f.text()), plan.Of(plan.Mm, max(0, b.LeftMm))}
	switch wide, ok := t.bolt.Wide(); {
	case geom.Over(b.NeedMm, b.LeftMm):
		cure := "narrower slots"
		if w := wide.OverSlot(bolts.Head(in.Head), nut, true, width); ok && w.LeftMm >= w.NeedMm {
			cure = "washer: yes and wide: yes, " + t.w.Dia(wide.WasherODMm) + " × " + t.w.Size(wide.WasherThicknessMm)
		}
		t.problem(plan.SlotUnbridged, append(args, plan.Of(plan.Mm, width), plan.Of(plan.Diameter, b.OutsideMm), plan.Named(cure))...)
	case !in.Washer:
		t.problem(plan.SlotBare, args...)
	}
}

// setAlong is the part that is set along slots: the first, or the second where less hangs together with that, by all
// other joints where a later one is set again, else by those made before.
func (j *making) setAlong(t *joint) feature {
	by := j.before
	if t.in.Bolt.Adjust.Set() {
		by = seq.Keep(j.all, func(o *joint) bool { return o != t })
	}
	if a, b := j.members(t.a.Instance(), by), j.members(t.b.Instance(), by); len(b) < len(a) {
		return t.b
	}
	return t.a
}

// setBefore tells whether joints made before hold the two of a joint in slots to one another, other than by what turns, so
// that its slots only follow those; not where the job wants it set by them.
func (j *making) setBefore(t *joint) bool {
	fixed := seq.Keep(j.before, func(o *joint) bool { return !o.is(parts.BearingKind) && !o.runs() })
	_, tied := j.side(t, fixed)
	return tied && !t.in.Bolt.Adjust.Set()
}

// shiftText says how far a part can be shifted along slots from where it is drawn: along those of the first part, which come
// first, or of the second.
func (t *joint) shiftText(i int) string {
	s, f := t.out.Bolt.Shifts[i], t.a
	if i > 0 || !f.slotted() {
		f = t.b
	}
	if t.shifts.Instance() == t.b.Instance() {
		s.Mm, s.BackMm = s.BackMm, s.Mm
	}
	text := t.w.Said(s.Mm) + " each way"
	if !geom.Alike(s.Mm, s.BackMm) {
		text = t.w.Said(s.Mm) + " " + f.toward(s.TowardsDeg) + " and " + t.w.Said(s.BackMm) + " " + f.toward(geom.OnClock(s.TowardsDeg+180))
	}
	return text + " along the slots of " + f.title()
}

// toward is a way on the face that the slots of a group are in.
func (f feature) toward(deg float64) string {
	sides := map[float64]string{0: "top", 90: "right", 180: "bottom", 270: "left"}
	if side := sides[deg]; side != "" && !f.onWall() {
		return "towards its " + side
	}
	return "towards " + words.Trim(deg, 1) + "° seen on the " + f.wallText(parts.Front)
}
