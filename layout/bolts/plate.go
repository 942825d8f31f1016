package bolts

import (
	"fmt"
	"math"

	"centrepop/layout/lookup"
)

// PlateMm is the least thickness in mm of a round steel plate that lies on a ring of
// diameter ringMm and is pulled down through a hole in its middle, by a nut or head
// of diameter nutMm on it, so that its stress stays at stressMPa under forceN. All
// must be above 0 and the nut smaller than the ring.
//
// The bending moment in the middle of a plate that is free at its edge and loaded on
// a circle, M = F/4π ((1+ν) ln(a/c) + 1 − (1−ν) c²/4a²) with ν 0.3 (Timoshenko and
// Woinowsky-Krieger, Theory of Plates and Shells, from memory), gives 6M/t²; the hole
// doubles it, as a small hole does in a plate that is bent both ways (from memory).
func PlateMm(forceN, ringMm, nutMm, stressMPa float64) (float64, error) {
	for _, x := range []float64{forceN, ringMm, nutMm, stressMPa} {
		if !finite(x) || x <= 0 {
			return 0, fmt.Errorf("bolts: the force, diameters and stress of a plate must be above 0, not %v", x)
		}
	}
	if nutMm >= ringMm {
		return 0, lookup.Refuse("bolts: a nut of %v does not fit into a ring of %v", lookup.Mm(nutMm), lookup.Mm(ringMm))
	}
	const nu, hole = 0.3, 2
	share := nutMm / ringMm // c/a
	moment := forceN / (4 * math.Pi) * ((1+nu)*math.Log(1/share) + 1 - (1-nu)*share*share/4)
	return math.Sqrt(6 * hole * moment / stressMPa), nil
}
