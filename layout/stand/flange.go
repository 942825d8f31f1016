package stand

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
)

// A loop of parts closes where it misses by no more than sizes on drawings are rounded by, to a tenth.
// Common practice, no source.
const (
	closesMm  = 0.05
	closesDeg = 0.05
	turnedDeg = 1 // more is no size that was rounded, but the part the other way round
)

// drawnMm is how far screws draw up a flange of sheet that stands off: what is left so that a cover goes in between what it is bolted to.
// Common practice, no source.
const drawnMm = 0.5

// drawnUp tells whether a joint that does not close draws up a flange of sheet by its miss, square to that.
func (m *Stand) drawnUp(x assembly.Mismatch) bool {
	n := m.StepOf(x.ID)
	if n < 0 || m.Joints[n].Bolt == nil || x.Mm > drawnMm || x.Deg >= closesDeg {
		return false
	}
	return slices.ContainsFunc([]plan.JointEnd{m.Joints[n].A, m.Joints[n].B}, func(e plan.JointEnd) bool {
		r := m.Model(e.Part)
		g := r.GroupNamed(e.Feature)
		if _, flap := r.FlapOf(g); !flap {
			return false
		}
		return math.Abs(m.Poses[e.Instance().ID()].Of(solid.Wall(r, g)).Z.Dot(x.Along)) > 1-Level
	})
}

// keepApart leaves of the joints that do not close out those that draw up a flange of sheet which stands off what it lies on.
func (m *Stand) keepApart() {
	m.Problems = slices.DeleteFunc(m.Problems, func(p plan.Problem) bool {
		if !m.flanges[p.Joint] || p.Kind != plan.PlaceMisses {
			return false
		}
		j := m.Joints[m.StepOf(p.Joint)]
		a, b := m.At(j.A), m.At(j.B)
		if a == nil || b == nil {
			return false
		}
		_, in := assembly.PairOverlap(a, b, assembly.Tolerance{CoaxialMm: closesMm, OtherMm: closesMm, FinestMm: assembly.Usual.FinestMm})
		return !in
	})
}
