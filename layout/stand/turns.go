package stand

import (
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/parts/geom"
)

// mostTurns is of how many joints a loop that does not close is said that a turn of one closes it: of more they tell nothing.
const mostTurns = 3

// turns are the joints of a loop that misses by a turn of which one alone, its part turned on the face that it lies on, brings all that they
// hold to where it is to be.
func (m *Stand) turns(root string, meets []assembly.Meet, x assembly.Mismatch) (out []plan.Because) {
	for _, name := range append(slices.Clone(x.By), x.ID) {
		n := m.StepOf(name)
		if n < 0 || len(m.Joints[n].Placed) > 0 {
			continue
		}
		for _, deg := range []float64{180, 90, 270} {
			if m.closesTurned(root, meets, m.Joints[n], deg) {
				out = append(out, plan.Because{Name: name, Problem: plan.Problem{Kind: plan.LoopTurned, Args: []plan.Arg{plan.Of(plan.Degree, deg)}}})
				break
			}
		}
	}
	if len(out) > mostTurns {
		return nil
	}
	return out
}

// closesTurned tells whether all loops from a root close, or nearly do, with part A of a joint turned: about the middle of its holes, or about its origin where
// a place says where that lies.
func (m *Stand) closesTurned(root string, meets []assembly.Meet, j *plan.JointPlan, deg float64) bool {
	r := m.Model(j.A.Part)
	g := r.GroupNamed(j.A.Feature)
	for k := range meets {
		if meets[k].ID != j.Name || len(meets[k].Free) > 0 {
			continue
		}
		about := assembly.Still
		if j.Beside != nil && g != nil {
			about = solid.On(solid.Wall(r, g), geom.Mean(g.SeenFront(g.OwnMm())))
		}
		meets = slices.Clone(meets)
		meets[k].OnA = meets[k].OnA.Of(about).Of(assembly.Rotate(assembly.AxisZ, deg)).Of(about.Inverse())
		return !slices.ContainsFunc(assembly.Solve(root, meets).Missed, func(x assembly.Mismatch) bool { return x.Mm > drawnMm || x.Deg > turnedDeg })
	}
	return false
}
