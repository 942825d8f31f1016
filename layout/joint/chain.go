package joint

import (
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

// relied is a length that a joint relies on: as drawn, and what the limits of the lengths
// it comes from may take of it, in mm.
type relied struct {
	what     string
	mm, less float64
	wantMm   float64
	of       string // the steps whose length wants limits
	cone     bool   // the diameters of those do: a length comes from them by their taper
}

// standsOffMm is how far what must not touch first stands off at the least. Common practice, no source.
const standsOffMm = 0.1

// rely notes a length that is there as drawn, and not at the limits.
func (t *joint) rely(l relied) {
	if least := geom.Clean(l.mm - l.less); !geom.Over(l.wantMm, l.mm) && geom.Over(l.wantMm, least) {
		kind := plan.LengthsEat
		if l.cone {
			kind = plan.ConeEats
		}
		t.problem(kind, plan.Named(l.what), plan.Of(plan.Mm, l.mm), plan.Of(plan.Mm, l.wantMm), plan.Of(plan.Mm, least), plan.Named(l.of))
	}
}

// lessMm and moreMm are how much shorter and longer than drawn two places of a part may lie apart.
func lessMm(r *part.Model, inside bool, a, b float64) float64 {
	return geom.Clean(max(a, b) - min(a, b) - r.BetweenMm(inside, min(a, b), max(a, b)).Min)
}

func moreMm(r *part.Model, inside bool, a, b float64) float64 {
	return geom.Clean(r.BetweenMm(inside, min(a, b), max(a, b)).Max - (max(a, b) - min(a, b)))
}
