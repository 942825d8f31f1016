package weld

import (
	"fmt"
	"math"

	"centrepop/layout/material"
)

// Load is what the fillets of a joint carry by design.
type Load struct {
	ForceN    float64 // factored resistance in any direction, N: to compare with a factored load
	Weaker    string  // name of the part's material that rules
	StressMPa float64 // on the throat
}

// Side is one of the two parts that a weld joins.
type Side struct {
	material.Material
	ThickMm float64 // where the weld sits
}

// FilletLoad returns what fillets of throatMm carry that join two sides, by
// EN 1993-1-8 clause 4.5.3.3 with the tensile strength and correlation factor of
// the weaker part. Each of runsMm, the lengths of the runs (mm), loses a throat at
// each end unless it is closed (a full circle). It errs as FilletForce, and for a
// material without a correlation factor: such a weld is not to be counted on.
func FilletLoad(throatMm float64, runsMm []float64, closed bool, a, b Side) (Load, error) {
	l := Load{StressMPa: math.Inf(1)}
	for _, p := range []Side{a, b} {
		s, err := p.Strength(p.ThickMm)
		if err != nil {
			return Load{}, err
		}
		f, err := FilletStrength(p.Name, s.TensileMPa)
		if err != nil {
			return Load{}, err
		}
		if f < l.StressMPa {
			l.StressMPa, l.Weaker = f, p.Name
		}
	}
	if len(runsMm) == 0 {
		return Load{}, fmt.Errorf("weld: no runs to carry anything")
	}
	for _, run := range runsMm {
		n, err := FilletForce(l.StressMPa, throatMm, run, closed)
		if err != nil {
			return Load{}, err
		}
		l.ForceN += n
	}
	return l, nil
}
