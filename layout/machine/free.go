package machine

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts/seq"
)

// FreeInto is the way that is free to where movers are: one that is meant if it is, else the
// shortest along the axes of a pose; where none is the first that is meant, and false.
func (m *Machine) FreeInto(pose assembly.Pose, mv, fx []assembly.Body, meant ...assembly.Vec) (assembly.Vec, bool) {
	all := seq.Map(meant, func(into assembly.Vec) assembly.Way { return way(into.Reversed(), mv, fx) })
	for _, w := range append(all, waysAlong(pose, mv, fx)...) {
		if w.Free(mv, fx, m.Allowed(mv)) {
			return w.Back.Reversed(), true
		}
	}
	return append(meant, assembly.Vec{})[0], false
}

// freeWay tells whether movers come to where they are along one of the axes of a pose, from far or from
// beside their seat, and else what stops them where they come furthest out, or on the way that is meant.
func (m *Machine) freeWay(pose assembly.Pose, mv, fx []assembly.Body, meant ...assembly.Vec) (worst assembly.Block, free bool) {
	if _, free = m.FreeInto(pose, mv, fx); free {
		return worst, true
	}
	if _, free = m.FromBeside(pose, mv, fx); free {
		return worst, true
	}
	ways := waysAlong(pose, mv, fx)
	for _, back := range meant {
		ways = []assembly.Way{way(back, mv, fx)}
	}
	blocks := seq.Map(ways, func(w assembly.Way) assembly.Block {
		b, _ := m.block(w, mv, fx)
		return b
	})
	return slices.MaxFunc(blocks, func(a, b assembly.Block) int { return cmp.Compare(a.LastMm, b.LastMm) }), false // it comes furthest out that way
}

// FromBeside is the last leg of a way of two, to where movers are along an axis of a pose: before it they come
// square to it from far to where they are just clear of one of those, or all, that they lie against or in.
func (m *Machine) FromBeside(pose assembly.Pose, mv, fx []assembly.Body) (into assembly.Vec, free bool) {
	may := m.Allowed(mv)
	for _, out := range waysAlong(pose, mv, fx) {
		frame := assembly.Frame(assembly.Vec{}, out.Back, out.Back.Square()).Inverse()
		var clear []float64
		for i := range mv {
			box := mv[i].Box()
			for k := range fx {
				if f := fx[k].Box(); box.Meets(f, 0) {
					clear = append(clear, math.Ceil(f.Moved(frame).High.Z-box.Moved(frame).Low.Z)+1)
				}
			}
		}
		slices.Sort(clear)
		for _, mm := range slices.Compact(clear) {
			if out.FarMm = mm; !out.Free(mv, fx, may) {
				break
			}
			beside := moved(mv, assembly.Move(out.Back.Times(mm)))
			for _, w := range slices.Concat(waysAlong(pose, beside, fx), waysAlong(stand.AlongAxis, beside, fx)) {
				if math.Abs(w.Back.Dot(out.Back)) < stand.Level && w.Free(beside, fx, may) {
					return out.Back.Reversed(), true
				}
			}
		}
	}
	return into, false
}

// waysAlong are the ways along the axes of a pose, the shortest out first, which likely is meant.
func waysAlong(pose assembly.Pose, mv, fx []assembly.Body) (ways []assembly.Way) {
	axes := []assembly.Vec{pose.Z, pose.Z.Reversed(), pose.Y, pose.Y.Reversed(), pose.X, pose.X.Reversed()}
	ways = seq.Map(axes, func(back assembly.Vec) assembly.Way { return way(back, mv, fx) })
	slices.SortStableFunc(ways, func(a, b assembly.Way) int { return cmp.Compare(a.FarMm, b.FarMm) })
	return ways
}

// moved are bodies after a motion.
func moved(bodies []assembly.Body, g assembly.Pose) []assembly.Body {
	out := slices.Clone(bodies)
	for i := range out {
		out[i].Pose = g.Of(out[i].Pose)
	}
	return out
}

// pathFinestMm is how finely surfaces are looked at on the way. Common practice,
// no source.
const pathFinestMm = 8

// way is from far enough for the two boxes to be clear of one another.
func way(back assembly.Vec, movers, fixed []assembly.Body) assembly.Way {
	frame := assembly.Frame(assembly.Vec{}, back, back.Square()).Inverse()
	low := seq.Least(movers, func(m assembly.Body) float64 { return m.Box().Moved(frame).Low.Z })
	high := seq.Max(-inf, fixed, func(f assembly.Body) float64 { return f.Box().Moved(frame).High.Z })
	tol := assembly.Usual
	tol.OtherMm = overlapMm
	return assembly.Way{Back: back, FarMm: max(0, high-low) + 1, FinestMm: pathFinestMm, Tolerance: tol}
}

// overlap tells whether one of the movers lies in what stands when seated.
func (m *Machine) overlap(movers, fixed []int) bool {
	return slices.ContainsFunc(movers, func(i int) bool {
		return slices.ContainsFunc(fixed, func(k int) bool { return m.overlapping[[2]string{m.Bodies[i].ID, m.Bodies[k].ID}] })
	})
}

// block is what stops movers nearest to their seat on a way; false where nothing does.
func (m *Machine) block(w assembly.Way, movers, fixed []assembly.Body) (nearest assembly.Block, ok bool) {
	for b := range w.Blocks(movers, fixed, m.Allowed(movers)) {
		if !ok || b.LastMm < nearest.LastMm {
			nearest, ok = b, true
		}
	}
	return nearest, ok
}

// blocked says what is in the way of movers, and the order in which it is not.
func (m *Machine) blocked(j *plan.JointPlan, b assembly.Block, order plan.Arg) []plan.Problem {
	p := m.Fault(j.Name, plan.PathBlocked, m.Named(b.Mover), m.Named(b.Fixed), m.Rounded(b.FirstMm, 1), order)
	p.Bodies = []string{b.Mover, b.Fixed}
	return []plan.Problem{p}
}
