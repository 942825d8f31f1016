package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Ways are the wrong ways in which what a joint brings also goes onto what
// stands, other than those the joint itself knows: of whole assemblies, turned and
// end for end, of parts beside the other's axis, and of what is pressed, slid, welded or
// carried by bearings. One with nothing out of place changes nothing. They are known once the machine is reviewed.
func (m *Machine) Ways(joint string) []plan.Trap {
	if i := m.StepOf(joint); m.ways != nil && i >= 0 {
		return m.ways[i]
	}
	return nil
}

// fitting is a joint about to be made.
type fitting struct {
	m             *Machine
	j             *plan.JointPlan
	movers, fixed []assembly.Body
	frame         assembly.Pose  // origin in the middle of A's holes and of their metal
	a, b          []assembly.Vec // the holes in it
	through       bool
	other         *fitting       // of the other bar of a mitred corner
	turns, holds  *assembly.Body // where no holes say the way: the part that turns, and the one at its seat
	plane         assembly.Pose  // of that seat where it is flat, from a corner, z into what holds it
	size          assembly.Vec   // of the seat
	rows          int            // in which it is looked at, both ways; 0 where the parts meet all round
}

// fitting is nil where the joint looks at all ways itself, or nothing comes.
func (s *soFar) fitting(j *plan.JointPlan) *fitting {
	idA, idB := j.A.Instance().ID(), j.B.Instance().ID()
	comes, stands := s.of[idA], s.of[idB]
	if comes == nil || stands == nil || comes == stands {
		return nil
	}
	m := s.m
	alone := 0 // a part with its seal is looked at where the joint is
	for _, i := range *comes {
		if m.Roles[m.Bodies[i].ID].Kind != stand.Seal {
			alone++
		}
	}
	if alone == 1 && j.Beside == nil {
		return nil
	}
	ga, gb := m.Model(j.A.Part).GroupNamed(j.A.Feature), m.Model(j.B.Part).GroupNamed(j.B.Feature)
	if ga == nil || gb == nil || len(ga.Points) < 2 {
		return nil
	}
	with := slices.Clone(*comes)
	for _, id := range m.goWith(j) {
		if k, placed := s.bodies[id]; placed {
			with = seq.Add(with, k)
		}
	}
	slices.Sort(with)
	f := m.fits(j, with, *stands)
	f.through = ga.Through && !ga.OnWall() // the other way round another wall would lie there
	f.stand(&m.Bodies[s.bodies[idA]], &m.Bodies[s.bodies[idB]], [2]*part.Group{ga, gb})
	return f
}

// turnedFree is the bolted joint that alone holds a body, and a turn of it in which its
// holes also meet and it lies in no other part.
func (m *Machine) turnedFree(id string) (joint string, deg float64, ok bool) {
	var others []int
	me := slices.IndexFunc(m.Bodies, func(b assembly.Body) bool { return b.ID == id })
	for i := range m.Bodies {
		if _, made := m.Of[m.Bodies[i].ID]; made && i != me {
			others = append(others, i)
		}
	}
	holding := seq.Keep(m.Joints, func(j *plan.JointPlan) bool {
		return slices.Contains(stand.EndsOf(j), id)
	})
	for _, j := range holding {
		if j.Kind != parts.BoltKind || j.A.Part != m.Of[id].Part || len(m.Joint(j.Name).InLine) > 0 {
			return "", 0, false // what is in line, or holds another, stays so
		}
	}
	for _, j := range holding {
		g := m.Model(j.A.Part).GroupNamed(j.A.Feature)
		if g == nil || len(g.Points) < 2 {
			continue
		}
		f := m.fits(j, []int{me}, others)
		at := g.SeenFront(g.OwnMm())
		centre := geom.Mean(at)
		f.frame = f.movers[0].Pose.Of(solid.On(solid.Wall(m.Model(j.A.Part), g), centre))
		f.a = seq.Map(at, func(q plan.XY) assembly.Vec { return assembly.Vec{X: q.XMm - centre.XMm, Y: q.YMm - centre.YMm} })
		f.b = f.a
		for _, deg := range []float64{180, 90, 270} {
			if moved, _ := f.elsewhere(f.inFrame(motion(false, deg))); len(moved) > 0 && f.meet(motion(false, deg)) && f.room(moved) {
				return j.Name, deg, true
			}
		}
	}
	return "", 0, false
}

// inFrame is a motion in the frame, in the machine.
func (f *fitting) inFrame(g assembly.Pose) assembly.Pose { return f.frame.Of(g).Of(f.frame.Inverse()) }

func (m *Machine) fits(j *plan.JointPlan, movers, fixed []int) *fitting {
	return &fitting{m: m, j: j, movers: m.pick(movers), fixed: m.pick(fixed)}
}

// stand puts the frame into the middle of A's holes and of the metal beside them.
func (f *fitting) stand(a, b *assembly.Body, groups [2]*part.Group) {
	axis, shared := f.m.AxisOf(f.j)
	holes, _ := f.m.holesOf(a, groups[0])
	theirs, wall := f.m.holesOf(b, groups[1])
	if !shared {
		axis = wall
	}
	centre := assembly.Vec{}
	for _, p := range holes {
		centre = centre.Add(p.Times(1 / float64(len(holes))))
	}
	f.frame = assembly.Frame(centre, axis.Z, axis.Y)
	own := a.Pose.Inverse().Of(f.frame)
	r := groups[0].Size.FinishedMm/2 + 0.5
	low, high := inf, -inf
	for _, p := range holes {
		at := a.Pose.Inverse().Apply(p).Add(own.X.Times(r))
		for _, s := range a.Solid.Spans(at, own.Z) {
			off := at.Sub(own.At).Dot(own.Z)
			low, high = min(low, off+s.FromMm), max(high, off+s.ToMm)
		}
	}
	if low < high {
		f.frame = f.frame.Of(assembly.Move(assembly.Vec{Z: (low + high) / 2}))
	}
	into := f.frame.Inverse()
	flat := func(list []assembly.Vec) (out []assembly.Vec) {
		for _, p := range list {
			q := into.Apply(p)
			out = append(out, assembly.Vec{X: q.X, Y: q.Y})
		}
		return out
	}
	f.a, f.b = flat(holes), flat(theirs)
}

// holesOf are the middles of a group's holes in the machine, on the front of the part or of its wall, and the frame of that.
func (m *Machine) holesOf(b *assembly.Body, g *part.Group) (at []assembly.Vec, wall assembly.Pose) {
	wall = b.Pose.Of(solid.Wall(m.PartOf(b.ID), g))
	return seq.Map(g.SeenFront(g.OwnMm()), func(q plan.XY) assembly.Vec { return wall.Apply(assembly.Vec{X: q.XMm, Y: q.YMm}) }), wall
}

// ways tries every turn, without and with the other way round, at which the holes
// meet and nothing is in the way.
func (f *fitting) ways() (traps []plan.Trap) {
	for _, round := range []bool{false, true} {
		if round && !f.through {
			break
		}
		first, open := motion(round, 0).Apply(f.a[0]), false // where one turn comes to its place, the others do
		var turns, tried []float64
		for _, q := range f.b {
			turns = append(turns, math.Mod(assembly.ClockDeg(q)-assembly.ClockDeg(first)+720, 360))
		}
		slices.Sort(turns)
		for _, turn := range turns {
			near := func(o float64) bool { return math.Abs(math.Remainder(o-turn, 360)) < 0.5 }
			if slices.ContainsFunc(tried, near) || !round && near(0) || f.known(round, near) {
				continue
			}
			tried = append(tried, turn)
			if g := motion(round, turn); f.meet(g) {
				moved, out := f.wrong(f.inFrame(g))
				if f.room(moved) && (open || f.comes(moved)) {
					open = true
					traps = append(traps, plan.Trap{TurnDeg: words.Round(turn, 3), OtherWay: round, Out: out})
				}
			}
		}
	}
	return traps
}

// motion turns clockwise, first end for end about the line through TOP if it is
// the other way round.
func motion(round bool, turn float64) assembly.Pose {
	p := assembly.Rotate(assembly.AxisZ, -turn)
	if round {
		p = p.Of(assembly.Rotate(assembly.AxisY, 180))
	}
	return p
}

// known tells whether the joint says itself that this way is wrong.
func (f *fitting) known(round bool, near func(deg float64) bool) bool {
	return slices.ContainsFunc(f.j.Traps, func(t plan.Trap) bool { return t.Instead == "" && t.OtherWay == round && near(t.TurnDeg) })
}

// meet tells whether every hole of A, moved, meets one of B within its play.
func (f *fitting) meet(g assembly.Pose) bool {
	for _, p := range f.a {
		q := g.Apply(p)
		q.Z = 0
		if !slices.ContainsFunc(f.b, func(o assembly.Vec) bool { return !geom.Over(o.Sub(q).Len(), f.j.Bolt.PlayMm/2) }) {
			return false
		}
	}
	return true
}

// wrong is what a motion brings elsewhere: nothing where all that stands
// looks the same after it.
func (f *fitting) wrong(g assembly.Pose) (moved []assembly.Body, out []plan.Out) {
	moved, out = f.elsewhere(g)
	if !slices.ContainsFunc(f.fixed, func(b assembly.Body) bool { return !alike(f.fixed, b, g.Of(b.Pose)) }) {
		return nil, nil
	}
	return moved, out
}

// elsewhere are what comes to lie where nothing alike was, in its new place, and
// the parts of it.
func (f *fitting) elsewhere(g assembly.Pose) (moved []assembly.Body, out []plan.Out) {
	made := 0
	for _, b := range f.movers {
		pose := g.Of(b.Pose)
		if _, part := f.m.Of[b.ID]; part {
			made++
		}
		if alike(f.movers, b, pose) {
			continue
		}
		if _, made := f.m.Of[b.ID]; made {
			out = append(out, plan.Out{What: f.m.Title(b.ID), Elsewhere: true, Unruled: true})
		}
		b.Pose = pose
		moved = append(moved, b)
	}
	if len(out) == made && made > 1 {
		out = []plan.Out{{What: "all of it", Elsewhere: true, Unruled: true}}
	}
	return moved, out
}

// alike tells whether a body at a pose is where one of its solid was.
func alike(list []assembly.Body, b assembly.Body, pose assembly.Pose) bool {
	return slices.ContainsFunc(list, func(o assembly.Body) bool { return o.Solid == b.Solid && o.Solid.Same(o.Pose.Inverse().Of(pose)) })
}

// room tells whether what comes to lie elsewhere lies in nothing that stands.
func (f *fitting) room(moved []assembly.Body) bool {
	tol := assembly.Usual
	tol.OtherMm = overlapMm
	for i := range moved {
		for k := range f.fixed {
			if _, in := assembly.PairOverlap(&moved[i], &f.fixed[k], tol); in {
				return false
			}
		}
	}
	return true
}

// comes tells whether it gets there along the axis of the holes.
func (f *fitting) comes(moved []assembly.Body) bool {
	return slices.ContainsFunc([]assembly.Vec{f.frame.Z, f.frame.Z.Reversed()}, func(back assembly.Vec) bool {
		return way(back, moved, f.fixed).Free(moved, f.fixed, nil)
	})
}
