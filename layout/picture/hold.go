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

// hold finds what is to be held at a step until the joint holds it: a piece that is tacked,
// what does not stand on the bench by itself, and what a sling carries from the side. Nil
// where all stands.
func (v *viewed) hold(into assembly.Vec) *plan.Hold {
	if v.j.Frame != "" || v.FormOf(v.mover.ID) == parts.FlightPart { // flat on its plate, or round what it is welded to
		return nil
	}
	out := &plan.Hold{}
	top := v.upward(into)
	before := v.BodiesOf(v.j.N-1, v.still.ID)
	if v.j.Kind == parts.WeldKind && !has(before, v.mover.ID) {
		v.loose(out, before, into, top)
		out.RunsOn = v.runsOn(before)
		if v.radial() {
			out.GapMm = v.j.Weld.GapMm
		}
	}
	after := slices.DeleteFunc(v.BodiesOf(v.j.N, v.still.ID), func(b assembly.Body) bool { // before what is put in by hand then
		return slices.ContainsFunc(v.News[v.j.N-1], func(o *assembly.Body) bool { return o.ID == b.ID })
	})
	floor := v.OnFloor(v.j.N, v.still.ID)
	if !floor && assembly.Together(after).MassKg >= handKg {
		v.benched(out, before, after, into, top)
	}
	if v.j.Kind == parts.PressKind && v.j.Press.LetDown {
		v.letDown(out, top)
	}
	if floor {
		v.balance(out, after)
		v.setOn(out, top)
	}
	out.Slung = v.j.Lift != nil && !v.j.Lift.Loose && (floor && math.Abs(top.Dot(v.Up)) < machine.Steep || out.On[0] != "" || out.Packed)
	if !out.Needed() {
		return nil
	}
	return out
}

// benched notes how what does not stand on the floor is held on the bench, before and after the step.
func (v *viewed) benched(out *plan.Hold, before, after []assembly.Body, into, top assembly.Vec) {
	switch tied := has(before, v.mover.ID) && v.FormOf(v.mover.ID) == parts.BarPart; {
	case v.j.Kind == parts.BoltKind && v.stays(before, v.Up) && v.stays(after, v.Up),
		v.j.Kind == parts.WeldKind && tied && (v.stays(after, v.Up) || v.stays(after, v.Up.Reversed())):
		return
	}
	fallsDeg, lies := worse(tips(before, top), tips(after, top)), v.onlyLies(v.j.N, v.still.ID)
	if v.softFoot(after, top.Reversed()) {
		fallsDeg = worse(fallsDeg, 1)
	}
	switch {
	case fallsDeg <= 0:
		if _, round := v.AxisOf(v.j); round && v.j.Kind == parts.BoltKind && assembly.Together(after).MassKg >= 4*handKg {
			out.Foot = v.endmost(before, top.Reversed())
		}
	case v.j.Kind == parts.PressKind:
		out.UprightDeg = fallsDeg
	case lies != "": // laid down it would slide off
		out.UprightDeg, out.Lies = worse(fallsDeg, tips(v.BodiesOf(v.j.N, v.still.ID), top)), lies
	default:
		out.Once = tips(before, top) <= 0 && !v.softFoot(before, top.Reversed())
		out.Cups = v.j.Kind == parts.BearingKind && len(v.j.Bearing.CupsHere) > 0
		v.lay(out, after, top)
		v.takeOut(out, before, into, top)
	}
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
		if slices.ContainsFunc(v.Job.Loose, func(e parts.Loose) bool { return e.Part.Value == r.Part.Name.Value }) || heavy && !v.carries(b.ID) {
			soft = max(soft, reach)
		} else {
			firm = max(firm, reach)
		}
	}
	return soft > firm+machine.StandsMm
}

// letDown notes how a shaft is held that is let down into its hub.
func (v *viewed) letDown(out *plan.Hold, top assembly.Vec) {
	shaft, down := v.still.ID, top.Reversed()
	if v.Of[v.mover.ID].Part == v.j.A.Part {
		shaft, down = v.mover.ID, top
	}
	if alone := v.BodiesOf(v.j.N-1, shaft); assembly.Together(alone).MassKg >= handKg {
		out.UprightDeg = tips(alone, down)
		out.Grips = out.UprightDeg > 0
	}
}

// loose notes how a piece stands until it is tacked: at the slope at which it falls over, flat against
// an upright face, or against one with nothing under it.
func (v *viewed) loose(out *plan.Hold, before []assembly.Body, into, top assembly.Vec) {
	piece := []assembly.Body{*v.mover}
	if out.PieceDeg = tips(piece, top); math.Abs(into.Dot(top)) > 1-machine.Steep {
		return
	}
	carried := slices.ContainsFunc(before, func(b assembly.Body) bool {
		return b.Box().Meets(v.mover.Box(), machine.StandsMm) && machine.TouchMm2(&b, v.mover, top.Reversed()) > 0
	})
	if flat := tips(piece, into.Reversed()) == 0; flat && (!carried || out.PieceDeg > 0) {
		out.Against = v.PartOf(v.still.ID).Out.Title
	} else {
		out.Hangs = !carried
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
func (v *viewed) balance(out *plan.Hold, after []assembly.Body) {
	var later []string
	for k, e := range v.Job.Loose {
		i := v.StepOf(e.After.Value)
		switch {
		case e.MassKg <= plan.LiftKg || i < 0 || slices.ContainsFunc(v.Drive, func(id string) bool { return v.Roles[id].Loose == k }) && v.Joints[i].N <= v.j.N:
		case v.Joints[i].N < v.j.N:
			return
		default:
			later = append(later, words.Head(e.Item.Value))
		}
	}
	if s, ok := assembly.Standing(v.BodiesOf(v.j.N-1, v.Bodies[v.Lowest].ID), v.Up); ok && s.MarginMm < 0 {
		return // said at an earlier step
	}
	if s, ok := assembly.Standing(after, v.Up); ok && s.MarginMm < 0 && !v.OnlyBars(v.Together(v.j.N, v.still.ID)) {
		out.BeyondMm, out.Later = math.Ceil(-s.MarginMm), later
		out.At = v.endmost(after, s.Toward)
		out.Free = !slices.ContainsFunc(v.Joints, func(o *plan.JointPlan) bool { return o.N <= v.j.N && v.Joint(o.Name).Anchored.Value != "" })
	}
}

// setOn notes that what is bolted on what stands on the floor falls over until its bolts hold, and what
// lies loose on it.
func (v *viewed) setOn(out *plan.Hold, top assembly.Vec) {
	comes := v.BodiesOf(v.j.N-1, v.mover.ID)
	if v.j.Kind != parts.BoltKind || v.j.Lift != nil || v.OnFloor(v.j.N-1, v.mover.ID) || assembly.Together(comes).MassKg < handKg {
		return
	}
	var bears []assembly.Vec
	before := v.BodiesOf(v.j.N-1, v.still.ID)
	for c := range seq.Refs(v.BodiesOf(v.j.N, v.still.ID)) { // what comes, and what lies between the two
		if c.Bought || has(before, c.ID) {
			continue
		}
		for b := range seq.Refs(before) {
			if b.Box().Meets(c.Box(), machine.StandsMm) {
				bears = append(bears, assembly.Contact(b, c, v.Up.Reversed(), machine.StandsMm)...)
			}
		}
	}
	switch s, ok := assembly.StandingOn(comes, bears, v.Up); {
	case top.Dot(v.Up) < machine.Steep: // it comes from below, or against an upright face
		if carried := ok && s.MarginMm >= 0; !carried && (top.Dot(v.Up) < -machine.Steep || assembly.Together(comes).MassKg >= 4*handKg) {
			out.Comes = v.Title(v.mover.ID)
		}
	case !ok:
	case s.TipDeg < safeDeg:
		out.UprightDeg, out.Bolts, out.Lies = math.Max(1, math.Floor(s.TipDeg)), true, v.onlyLies(v.j.N-1, v.mover.ID)
	}
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

// lay finds what lies in V-blocks of what does not stand on end: its heaviest part, and beyond
// the centre of gravity the part under the farthest place that carries; where that is above
// the heaviest part itself, that alone. It gives where along the axis the second block is, and
// by how much the centre of gravity lies beyond the first part.
func (v *viewed) lay(out *plan.Hold, bodies []assembly.Body, top assembly.Vec) (block, beyondMm float64) {
	axis, down := v.still.Pose.Z, v.still.Pose.Y.Reversed()
	if a, ok := v.AxisOf(v.j); ok {
		axis, down = a.Z, a.Y.Reversed()
	} else if math.Abs(axis.Dot(top)) < stand.Level {
		down = top.Reversed()
	}
	heavy, most := -1, 0.0
	for i := range bodies {
		if kg, _, ok := bodies[i].Mass(); ok && kg > most && v.carries(bodies[i].ID) {
			heavy, most = i, kg
		}
	}
	g := assembly.Together(bodies)
	if heavy < 0 || len(g.Unknown) > 0 {
		return block, beyondMm
	}
	switch z := bodies[heavy].Pose.Z; {
	case !v.rounded(bodies[heavy].ID):
		out.Packed = true
		return block, beyondMm
	case math.Abs(z.Dot(axis)) < stand.Level && math.Abs(z.Dot(top)) < stand.Level:
		axis, down = z, top.Reversed()
	case math.Abs(z.Dot(axis)) < machine.Steep: // aslant to what is welded on it
		out.Packed = true
		return block, beyondMm
	}
	low, high := bodies[heavy].Along(axis)
	back, front := low, high
	for i := range bodies {
		least, most := bodies[i].Along(axis)
		back, front = min(back, least), max(front, most)
	}
	centre, name := g.Centre.Dot(axis), v.Title(bodies[heavy].ID)
	out.CentreMm, out.At = words.Round(front-centre, 0), v.endmost(bodies, axis)
	if quarter := (high - low) / 4; centre > low+quarter && centre < high-quarter {
		out.On = [2]string{name, name}
		return block, beyondMm
	}
	away := math.Copysign(front-back, centre-(low+high)/2)
	for _, share := range slung {
		p := g.Centre.Add(axis.Times(share * away)).Add(down.Times(front - back + g.Box.Size().Len()))
		hit := assembly.Crossings(bodies, p, down.Reversed())
		if len(hit) > 0 && v.carries(hit[0].ID) {
			out.On = [2]string{name, v.Title(hit[0].ID)}
			return p.Dot(axis), math.Ceil(max(0, low-centre, centre-high))
		}
	}
	out.CentreMm, out.At = 0, ""
	return block, beyondMm
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
func (v *viewed) takeOut(out *plan.Hold, before []assembly.Body, into, top assembly.Vec) {
	axis, shared := v.AxisOf(v.j)
	if out.On[0] == "" || !shared || has(before, v.mover.ID) || tips(before, top) == 0 {
		return
	}
	var was plan.Hold
	block, beyondMm := v.lay(&was, before, top)
	if was.On[0] == was.On[1] || was.On[0] != out.On[0] {
		return
	}
	comes := assembly.Together(v.BodiesOf(v.j.N-1, v.mover.ID))
	if _, foremost := comes.Box.Along(into); (comes.MassKg >= handKg || beyondMm > 0) && foremost > axis.Z.Times(block).Dot(into) {
		out.Out, out.TipsMm = was.On[1], beyondMm
	}
}
