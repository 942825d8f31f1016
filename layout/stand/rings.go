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
)

// A loop of parts closes where it misses by no more than sizes on drawings are rounded by, to a tenth.
// Common practice, no source.
const (
	closesMm  = 0.05
	closesDeg = 0.05
	turnedDeg = 1 // more is no size that was rounded, but the part the other way round
)

// undetermined says what the places leave open, and what does not meet.
func (m *Stand) undetermined(solved assembly.Poses) {
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
		p := m.Fault(x.ID, plan.PlaceMisses, plan.Named(x.ID), plan.Arg{Unit: plan.Miss, Value: m.Rounded(x.Mm, 2).Value, High: words.Round(x.Deg, 2)}, plan.Named(strings.Join(x.By, ", ")))
		if p.Because = m.lengths(x); x.Deg > turnedDeg {
			p.Kind = plan.PlaceTurned
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
// of holes, or of the cut of a bar's end.
func (m *Stand) pointOf(i parts.Instance, feature string) (at assembly.Vec, ok bool) {
	if cut, size, ok := m.CutOf(i, feature); ok {
		return cut.Apply(size.Times(0.5)), true
	}
	r := m.Model(i.Part)
	g := r.GroupNamed(feature)
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
