package picture

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/machine"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// What is held by hand weighs less than handKg; what does not fall over by a knock stands up
// to safeDeg off the level, about one in five. Common practice, no source.
const (
	handKg  = 3.0
	safeDeg = 11.0
)

// holding is a step as one looks for what is to be held at it: what stands before what comes is put on and
// after, the way that it comes and the way up.
type holding struct {
	*viewed
	*plan.Hold
	before, after []assembly.Body
	into, top     assembly.Vec
}

// hold finds what is to be held at a step until the joint holds it: a piece that is tacked,
// what does not stand on the bench by itself, and what a sling carries from the side. Nil
// where all stands.
func (v *viewed) hold(into assembly.Vec) *plan.Hold {
	if v.j.Frame != "" || v.FormOf(v.mover.ID) == parts.FlightPart { // flat on its plate, or round what it is welded to
		return nil
	}
	h := &holding{viewed: v, Hold: &plan.Hold{}, into: into, top: v.upward(into), before: v.BodiesOf(v.j.N-1, v.still.ID)}
	h.after = slices.DeleteFunc(v.BodiesOf(v.j.N, v.still.ID), func(b assembly.Body) bool { // before what is put in by hand then
		return slices.ContainsFunc(v.News[v.j.N-1], func(o *assembly.Body) bool { return o.ID == b.ID })
	})
	if v.j.Kind == parts.WeldKind && !has(h.before, v.mover.ID) {
		h.tacked()
	}
	floor := v.OnFloor(v.j.N, v.still.ID)
	firm := floor || v.anchored(h.after)
	switch {
	case floor:
		h.balance()
		h.setOn()
	case !firm && assembly.Together(h.after).MassKg >= handKg:
		h.benched()
	}
	if v.j.Kind == parts.PressKind && v.j.Press.LetDown {
		h.letDown()
	}
	h.Slung = h.slung(firm)
	if !h.Needed() {
		return nil
	}
	return h.Hold
}

// slung tells whether what is lifted stays in its sling: it comes from the side to what stands firm, or that lies packed up.
func (h *holding) slung(firm bool) bool {
	lift := h.j.Lift
	return lift != nil && !lift.Loose && (firm && math.Abs(h.top.Dot(h.Up)) < machine.Steep || h.On[0] != "" || h.Packed)
}

// benched notes how what does not stand on the floor is held on the bench, before and after the step.
func (h *holding) benched() {
	if h.asMounted() {
		return
	}
	fallsDeg, lies := worse(tips(h.before, h.top), tips(h.after, h.top)), h.onlyLies(h.j.N, h.still.ID)
	if h.softFoot(h.after, h.top.Reversed()) {
		fallsDeg = worse(fallsDeg, 1)
	}
	switch {
	case fallsDeg <= 0:
		if _, round := h.AxisOf(h.j); round && h.j.Kind == parts.BoltKind && assembly.Together(h.after).MassKg >= 4*handKg {
			h.Foot = h.endmost(h.before, h.top.Reversed())
		}
	case h.j.Kind == parts.PressKind:
		h.UprightDeg, h.Hot = fallsDeg, h.j.Press.Method != "press"
	case lies != "": // laid down it would slide off
		h.UprightDeg, h.Lies = worse(fallsDeg, tips(h.BodiesOf(h.j.N, h.still.ID), h.top)), lies
	default:
		if h.Once = h.stays(h.before, h.top); h.j.Kind == parts.BoltKind && h.stays(h.after, h.Up) { // as it will in the machine
			h.Packed = true
			return
		}
		h.Cups = h.j.Kind == parts.BearingKind && len(h.j.Bearing.CupsHere) > 0
		lies := h.lay(h.after, h.top)
		h.On, h.Packed, h.CentreMm, h.At = lies.on, lies.packed, lies.centreMm, lies.at
		h.takeOut()
	}
}

// asMounted tells whether what is bolted, slid or screwed on stands as it will in the machine, and what is welded to a bar that others hold
// as it will or upside down.
func (h *holding) asMounted() bool {
	switch h.j.Kind {
	case parts.BoltKind, parts.SlideKind, parts.ScrewKind:
		return h.stays(h.before, h.Up) && h.stays(h.after, h.Up)
	case parts.WeldKind:
		return has(h.before, h.mover.ID) && h.FormOf(h.mover.ID) == parts.BarPart && (h.stays(h.after, h.Up) || h.stays(h.after, h.Up.Reversed()))
	}
	return false
}

// stays tells whether bodies stand by themselves, this way up.
func (v *viewed) stays(bodies []assembly.Body, top assembly.Vec) bool {
	return tips(bodies, top) == 0 && !v.softFoot(bodies, top.Reversed())
}

// softFoot tells whether bodies would stand on nothing but what is put in by hand or, too heavy for one person,
// what is of sheet.
func (v *viewed) softFoot(bodies []assembly.Body, down assembly.Vec) bool {
	heavy := assembly.Together(bodies).MassKg > plan.LiftKg
	firm, soft := -inf, -inf
	for b := range seq.Refs(bodies) {
		r := v.PartOf(b.ID)
		if r == nil {
			continue
		}
		_, reach := b.Along(down)
		if v.Job.ByHand(r.Part.Name.Value) != nil || heavy && !v.carries(b.ID) {
			soft = max(soft, reach)
		} else {
			firm = max(firm, reach)
		}
	}
	return soft > firm+machine.StandsMm
}

// letDown notes how a shaft is held that is let down into its hub.
func (h *holding) letDown() {
	shaft, down := h.still.ID, h.top.Reversed()
	if h.Of[h.mover.ID].Part == h.j.A.Part {
		shaft, down = h.mover.ID, h.top
	}
	if alone := h.BodiesOf(h.j.N-1, shaft); assembly.Together(alone).MassKg >= handKg {
		h.UprightDeg = tips(alone, down)
		h.Grips = h.UprightDeg > 0
	}
}

// tacked notes what a piece stands off, what else its seam runs on to, and how it stands until it is tacked: at the
// slope at which it falls over, flat against an upright face, or against one with nothing under it.
func (h *holding) tacked() {
	h.RunsOn = h.runsOn(h.before)
	if h.radial() {
		h.GapMm = h.j.Weld.GapMm
	}
	piece := []assembly.Body{*h.mover}
	if h.PieceDeg = tips(piece, h.top); math.Abs(h.into.Dot(h.top)) > 1-machine.Steep {
		return
	}
	carried := slices.ContainsFunc(h.before, func(b assembly.Body) bool {
		return b.Box().Meets(h.mover.Box(), machine.StandsMm) && assembly.Touches(&b, h.mover, h.top.Reversed(), machine.StandsMm)
	})
	if flat := tips(piece, h.into.Reversed()) == 0; flat && (!carried || h.PieceDeg > 0) {
		h.Against = h.PartOf(h.still.ID).Out.Title
	} else {
		h.Hangs = !carried
	}
}

// onlyLies is the part put in by hand with the first n joints on what hangs together with a body then
// that its words have held by its weight alone; empty where there is none.
func (v *viewed) onlyLies(n int, id string) string {
	with := v.Together(n, id)
	for _, e := range v.Job.Loose {
		if i := v.StepOf(e.After.Value); e.Part.Value != "" && !e.Off && i >= 0 && v.Joints[i].N <= n && e.Held == parts.ByWeight && with[v.Joints[i].A.Instance().ID()] {
			return v.Model(e.Part.Value).Out.Title
		}
	}
	return ""
}

// balance notes that what stands on the floor then has its centre of gravity beyond its feet. Once
// something bought and weighed is on, whose place no joint gives, it is not known.
func (h *holding) balance() {
	var later []string
	for k, e := range h.Job.Loose {
		i := h.StepOf(e.After.Value)
		switch {
		case e.MassKg <= plan.LiftKg || i < 0 || slices.ContainsFunc(h.Drive, func(id string) bool { return h.Roles[id].Loose == k }) && h.Joints[i].N <= h.j.N:
		case h.Joints[i].N < h.j.N:
			return
		default:
			later = append(later, words.Head(e.Item.Value))
		}
	}
	if s, ok := assembly.Standing(h.BodiesOf(h.j.N-1, h.Bodies[h.Lowest].ID), h.Up); ok && s.MarginMm < 0 {
		return // said at an earlier step
	}
	if s, ok := assembly.Standing(h.after, h.Up); ok && s.MarginMm < 0 && !h.OnlyBars(h.Together(h.j.N, h.still.ID)) {
		h.BeyondMm, h.Later = math.Ceil(-s.MarginMm), later
		h.At = h.endmost(h.after, s.Toward)
		h.Free = !h.anchored(h.after)
	}
}

// anchored tells whether one of some bodies is fixed to the floor by this step.
func (v *viewed) anchored(bodies []assembly.Body) bool {
	return slices.ContainsFunc(v.Joints, func(o *plan.JointPlan) bool {
		name := v.Joint(o.Name).Anchored.Value
		return o.N <= v.j.N && name != "" && slices.ContainsFunc(bodies, func(b assembly.Body) bool { return v.Of[b.ID].Part == name })
	})
}

// setOn notes that what is bolted on what stands on the floor falls over until its bolts hold, and what
// lies loose on it.
func (h *holding) setOn() {
	comes := h.BodiesOf(h.j.N-1, h.mover.ID)
	kg := assembly.Together(comes).MassKg
	if h.j.Kind != parts.BoltKind || h.j.Lift != nil || h.OnFloor(h.j.N-1, h.mover.ID) || kg < handKg {
		return
	}
	s, ok := assembly.StandingOn(comes, h.bears(), h.Up)
	switch up := h.top.Dot(h.Up); {
	case up < machine.Steep: // it comes from below, or against an upright face
		if carried := ok && s.MarginMm >= 0; !carried && (up < -machine.Steep || kg >= 4*handKg) {
			h.Comes = h.Title(h.mover.ID)
		}
	case ok && s.TipDeg < safeDeg:
		h.UprightDeg, h.Bolts, h.Lies = math.Max(1, math.Floor(s.TipDeg)), true, h.onlyLies(h.j.N-1, h.mover.ID)
	}
}

// bears are the places where what comes, and what lies between the two, bears on what stands.
func (h *holding) bears() (at []assembly.Vec) {
	for c := range seq.Refs(h.BodiesOf(h.j.N, h.still.ID)) {
		if c.Bought || has(h.before, c.ID) {
			continue
		}
		for b := range seq.Refs(h.before) {
			if b.Box().Meets(c.Box(), machine.StandsMm) {
				at = append(at, assembly.Contact(b, c, h.Up.Reversed(), machine.StandsMm)...)
			}
		}
	}
	return at
}

// runsOn are the parts that a piece on a face touches besides the one it is joined to, where its
// seam is longer than what it has in common with that one.
func (v *viewed) runsOn(before []assembly.Body) (out []string) {
	in := v.Joint(v.j.Name)
	if in.Place == nil || v.j.Weld.DiameterMm > 0 || v.j.Weld.LengthMm < machine.CommonMm(v.mover, v.still)+machine.StandsMm {
		return nil
	}
	for b := range seq.Refs(before) {
		if r := v.PartOf(b.ID); r != nil && b.ID != v.still.ID && machine.Touch(b, v.mover) {
			out = seq.Add(out, r.Out.Title)
		}
	}
	return out
}

// radial tells whether a piece stands on the round of another.
func (v *viewed) radial() bool {
	_, onAxis := v.AxisOf(v.j)
	return v.rounded(v.still.ID) && !onAxis && v.Joint(v.j.Name).Place == nil
}

// upward is the way up at a step: what comes is put on from above, one on the round of another
// square to it, and one that meets an upright plate where the machine stands already.
func (v *viewed) upward(into assembly.Vec) assembly.Vec {
	if v.radial() {
		out := v.mover.Box().Centre().Sub(v.still.Pose.At)
		return out.Sub(v.still.Pose.Z.Times(out.Dot(v.still.Pose.Z))).Unit()
	}
	if v.HasFloor && v.j.Kind == parts.WeldKind && math.Abs(into.Dot(v.Up)) < 1-machine.Steep {
		if before := v.BodiesOf(v.j.N-1, v.still.ID); len(before) > 1 && tips(before, v.Up) == 0 {
			return v.Up
		}
	}
	return into.Reversed()
}

// tips is the slope at which bodies fall over, whole degrees, at least 1; 0 where they stand.
func tips(bodies []assembly.Body, top assembly.Vec) float64 {
	s, ok := assembly.Standing(bodies, top)
	if ok && s.TipDeg >= safeDeg {
		return 0
	}
	return math.Max(1, math.Floor(s.TipDeg))
}

// worse is the lesser of two slopes at which something falls over; 0 is none.
func worse(a, b float64) float64 {
	if a == 0 || b == 0 {
		return a + b
	}
	return min(a, b)
}

func has(bodies []assembly.Body, id string) bool {
	return slices.ContainsFunc(bodies, func(b assembly.Body) bool { return b.ID == id })
}

// lying is how what does not stand on end lies: the parts of it in V-blocks, or that it is packed up; its centre of gravity
// from the front end, that of a part; where along the axis the second block is, and by how much the centre of gravity lies
// beyond the first part.
type lying struct {
	on                [2]string
	packed            bool
	centreMm          float64
	at                string
	blockMm, beyondMm float64
}

// lay finds what lies in V-blocks: the heaviest part of some bodies, and beyond the centre of gravity the part under the
// farthest place that carries; where that is above the heaviest part itself, that alone.
func (v *viewed) lay(bodies []assembly.Body, top assembly.Vec) (out lying) {
	heavy, g := v.heaviest(bodies), assembly.Together(bodies)
	if heavy == nil || len(g.Unknown) > 0 {
		return out
	}
	axis, down, aslant := v.laidAlong(heavy, top)
	if aslant {
		return lying{packed: true}
	}
	low, high := heavy.Along(axis)
	back, front := low, high
	for i := range bodies {
		least, most := bodies[i].Along(axis)
		back, front = min(back, least), max(front, most)
	}
	centre, name := g.Centre.Dot(axis), v.Title(heavy.ID)
	out = lying{centreMm: words.Round(front-centre, 0), at: v.endmost(bodies, axis)}
	if quarter := (high - low) / 4; centre > low+quarter && centre < high-quarter {
		out.on = [2]string{name, name}
		return out
	}
	away := math.Copysign(front-back, centre-(low+high)/2)
	for _, share := range slung {
		p := g.Centre.Add(axis.Times(share * away)).Add(down.Times(g.Box.Size().Len()))
		hit := assembly.Crossings(bodies, p, down.Reversed())
		if len(hit) > 0 && v.carries(hit[0].ID) {
			out.on, out.blockMm, out.beyondMm = [2]string{name, v.Title(hit[0].ID)}, p.Dot(axis), math.Ceil(max(0, low-centre, centre-high))
			return out
		}
	}
	return lying{}
}

// heaviest is the heaviest of bodies that carries the others; nil where there is none.
func (v *viewed) heaviest(bodies []assembly.Body) (heavy *assembly.Body) {
	most := 0.0
	for b := range seq.Refs(bodies) {
		if kg, _, ok := b.Mass(); ok && kg > most && v.carries(b.ID) {
			heavy, most = b, kg
		}
	}
	return heavy
}

// laidAlong is the axis along which bodies lie in blocks, and the way down then: that of the joint, or of what it stands
// on, or of the heaviest where that is level; aslant tells that this is not round, or neither.
func (v *viewed) laidAlong(heavy *assembly.Body, top assembly.Vec) (axis, down assembly.Vec, aslant bool) {
	axis, down = v.still.Pose.Z, v.still.Pose.Y.Reversed()
	if a, ok := v.AxisOf(v.j); ok {
		axis, down = a.Z, a.Y.Reversed()
	} else if math.Abs(axis.Dot(top)) < stand.Level {
		down = top.Reversed()
	}
	switch z := heavy.Pose.Z; {
	case !v.rounded(heavy.ID):
		return axis, down, true
	case math.Abs(z.Dot(axis)) < stand.Level && math.Abs(z.Dot(top)) < stand.Level:
		return z, top.Reversed(), false
	default: // aslant to what is welded on it
		return axis, down, math.Abs(z.Dot(axis)) < machine.Steep
	}
}

// rounded tells whether a part has an outside that lies in V-blocks.
func (v *viewed) rounded(id string) bool {
	r := v.PartOf(id)
	if r == nil {
		return false
	}
	outside, _ := r.Sides()
	return len(outside) > 0
}

// takeOut finds the block under what lies already that is in the way of what slides over it,
// where that is too heavy for one hand while the other moves the block, or what lies tips without it.
func (h *holding) takeOut() {
	axis, shared := h.AxisOf(h.j)
	if !shared || has(h.before, h.mover.ID) || tips(h.before, h.top) == 0 {
		return
	}
	was := h.lay(h.before, h.top)
	if was.on[0] == was.on[1] || was.on[0] != h.On[0] {
		return
	}
	comes := assembly.Together(h.BodiesOf(h.j.N-1, h.mover.ID))
	if _, foremost := comes.Box.Along(h.into); (comes.MassKg >= handKg || was.beyondMm > 0) && foremost > axis.Z.Times(was.blockMm).Dot(h.into) {
		h.Out, h.TipsMm = was.on[1], was.beyondMm
	}
}
