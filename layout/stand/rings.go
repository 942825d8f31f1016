package stand

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// undetermined says what the places leave open, and what does not meet.
func (m *Stand) undetermined(root string, meets []assembly.Meet, solved assembly.Poses) {
	need := map[assembly.Freedom]string{
		assembly.SlideX: "from-left or from-right", assembly.SlideY: "from-bottom or from-top", assembly.TurnZ: "top or front",
	}
	open := map[string][]string{}
	var names []string
	for _, o := range solved.Open {
		if m.seated(o) {
			continue
		}
		if open[o.ID] == nil {
			names = append(names, o.ID)
		}
		open[o.ID] = append(open[o.ID], need[o.Free])
	}
	for _, name := range names {
		m.Problems = append(m.Problems, Problem(name, plan.PlaceOpen, m.Joint(name).Place.Pos, plan.Named(name), plan.Named(strings.Join(open[name], "; "))))
	}
	for _, x := range solved.Missed {
		if x.Mm < closesMm && x.Deg < closesDeg {
			continue
		}
		if m.drawnUp(x) {
			m.flanges[x.ID] = true
		}
		x.By = m.loop(x, solved.Missed)
		p := m.Fault(x.ID, plan.PlaceMisses, plan.Named(x.ID), plan.Arg{Unit: plan.Miss, Value: m.Rounded(x.Mm, 2).Value, High: words.Round(x.Deg, 2)}, plan.Named(strings.Join(x.By, ", ")))
		if p.Because = slices.Concat(m.lengths(x), m.guessed(x), m.folded(x)); x.Deg > turnedDeg {
			p.Kind = plan.PlaceTurned
			if turns := m.turns(root, meets, x); len(turns) > 0 {
				p.Because = turns
			}
		}
		skew, said := m.corners(append(slices.Clone(x.By), x.ID))
		if skew != "" {
			p.Kind, p.Args = plan.FrameSkew, append(p.Args, plan.Named(skew))
		}
		if !said {
			m.Problems = append(m.Problems, p)
		}
	}
}

// loop are the joints that go with one that does not close from one of its parts to the other, by the shortest way over those that
// do, in the order of the steps; those that place the two where no joints do.
func (m *Stand) loop(x assembly.Mismatch, missed []assembly.Mismatch) []string {
	last, from, to := m.StepOf(x.ID), map[parts.Instance]*plan.JointPlan{}, parts.Instance{}
	if last < 0 {
		return x.By
	}
	from[m.Joints[last].A.Instance()], to = nil, m.Joints[last].B.Instance()
	over := func(at parts.Instance, j *plan.JointPlan) parts.Instance {
		if at == j.A.Instance() {
			return j.B.Instance()
		}
		return j.A.Instance()
	}
	ties := seq.Keep(m.Joints, func(j *plan.JointPlan) bool {
		_, placed := m.MeetOf(j)
		return (placed || len(j.Placed) > 0) && !slices.ContainsFunc(missed, func(o assembly.Mismatch) bool { return o.ID == j.Name })
	})
	for way := []parts.Instance{m.Joints[last].A.Instance()}; len(way) > 0; way = way[1:] {
		for _, j := range ties {
			next := over(way[0], j)
			if _, known := from[next]; !known && (way[0] == j.A.Instance() || way[0] == j.B.Instance()) {
				from[next], way = j, append(way, next)
			}
		}
	}
	var out []string
	for at := to; from[at] != nil; at = over(at, from[at]) {
		out = append(out, from[at].Name)
	}
	if len(out) == 0 {
		return x.By
	}
	slices.SortFunc(out, func(a, b string) int { return m.StepOf(a) - m.StepOf(b) })
	return out
}

// guessed says of a ball bearing of a loop that does not close what its joint leaves to a guess: which way its shaft looks, or where
// that lies along, if the loop misses that way; of several on one shaft it is the last.
func (m *Stand) guessed(x assembly.Mismatch) (out []plan.Because) {
	for _, name := range slices.Backward(x.By) {
		in := m.Joint(name)
		if in.Bearing == nil || !in.Bearing.Ball {
			continue
		}
		if in.Place != nil || in.Meet.Set() {
			return nil
		}
		along, kind := m.Poses[in.Bearing.Cone.Instance().ID()].Z, plan.LoopFloats
		switch {
		case x.Deg > turnedDeg && !in.OtherWay:
			kind = plan.LoopFlips
		case x.Deg > turnedDeg, math.Abs(along.Dot(x.Along)) < 1-agreeTurn:
			continue
		}
		return []plan.Because{{Name: "or " + name, Problem: plan.Problem{Kind: kind}}}
	}
	return nil
}

// folded says of a part that one other holds by lips of it alone, and that looks two ways, that its lips may be folded the wrong way.
func (m *Stand) folded(x assembly.Mismatch) []plan.Because {
	last := m.Joint(x.ID)
	if last == nil || x.Deg < turnedDeg {
		return nil
	}
	first, second := last.Ends()
	for _, i := range []parts.Instance{first.Instance(), second.Instance()} {
		r := m.Model(i.Part)
		lips := r.Part.Bends != nil && !slices.ContainsFunc(append(slices.Clone(x.By), x.ID), func(name string) bool {
			in := m.Joint(name)
			a, b := in.Ends()
			on := words.Either(a.Instance() == i, a, b)
			g := r.GroupNamed(on.Feature)
			if on.Instance() != i || g == nil {
				return true
			}
			_, lip := r.FlapOf(g)
			return !lip
		})
		if lips {
			return []plan.Because{{Name: "or " + r.Out.Title, Problem: plan.Problem{Kind: plan.LoopFolded}}}
		}
	}
	return nil
}

// seated tells whether what the place of a shaft in its bush leaves open is settled by their one axis; what turns has no
// clock either.
func (m *Stand) seated(o assembly.Open) bool {
	s := m.Joint(o.ID).Slide
	return s != nil && SameAxis(m.Poses[s.Hub.Instance().ID()], m.Poses[s.On.Instance().ID()])
}

// lengths are how long the parts of a ring that does not close are along its miss, each
// between its two joints there; what has none in it is left out. Where they are turned to one
// another, or fewer than two are known, it is the joints that are named.
func (m *Stand) lengths(x assembly.Mismatch) (out []plan.Because) {
	type end struct {
		joint string
		at    assembly.Vec
	}
	first := map[parts.Instance]end{}
	for _, j := range m.Joints {
		for _, e := range []plan.JointEnd{j.A, j.B} {
			i := e.Instance()
			at, ok := m.pointOf(i, e.Feature)
			if !ok || j.Name != x.ID && !slices.Contains(x.By, j.Name) {
				continue
			}
			from, known := first[i]
			first[i] = end{j.Name, at}
			if mm := m.Rounded(math.Abs(m.Poses[i.ID()].Turn(at.Sub(from.at)).Dot(x.Along)), 2); known && mm.Value > 0 {
				out = append(out, plan.Because{Name: e.Title, Problem: plan.Problem{Kind: plan.LoopLength, Args: []plan.Arg{mm, plan.Named(from.joint), plan.Named(j.Name)}}})
			}
		}
	}
	if words.Round(x.Deg, 2) > 0 || len(out) < 2 {
		return []plan.Because{{Name: x.ID, Problem: plan.Problem{Kind: plan.LoopTurn, Args: []plan.Arg{plan.Named(strings.Join(x.By, ", "))}}}}
	}
	return out
}

// pointOf is the middle of what a joint takes hold of, in the frame of its part: of a group
// of holes, of a step, or of the cut of a bar's end.
func (m *Stand) pointOf(i parts.Instance, feature string) (at assembly.Vec, ok bool) {
	if cut, size, ok := m.CutOf(i, feature); ok {
		return cut.Apply(size.Times(0.5)), true
	}
	r := m.Model(i.Part)
	g := r.GroupNamed(feature)
	if step := r.StepNamed(feature); g == nil && step != nil {
		return assembly.Vec{Z: -step.MidMm()}, true
	}
	if g == nil {
		return at, false
	}
	return solid.On(solid.Wall(r, g), geom.Mean(g.SeenFront(g.OwnMm()))).At, true
}

// corners looks at the corners of a frame that does not close: a bar of them with its long
// points on two sides, and whether one says itself that its cuts do not fit.
func (m *Stand) corners(joints []string) (skew string, said bool) {
	for _, j := range m.Joints {
		if !slices.Contains(joints, j.Name) || !parts.Side(j.A.Feature).IsEnd() || !parts.Side(j.B.Feature).IsEnd() {
			continue
		}
		said = said || slices.ContainsFunc(j.Problems, func(p plan.Problem) bool { return p.Kind == plan.CornerUnlike || p.Kind == plan.CornerSections })
		for _, e := range []plan.JointEnd{j.A, j.B} {
			r := m.Model(e.Part)
			if in := r.Part.Bar; r.Part.Kind == parts.BarPart && in.Left.Mitred() && in.Right.Mitred() && in.Left.Long != in.Right.Long {
				skew = r.Out.Title
			}
		}
	}
	return skew, said
}
