package part

import (
	"math"
	"testing"

	"centrepop/layout/plan"
)

// A hexagon of 24 on a round of 40 has sharp corners (27.7 across): π/4·40² less
// √3/2·24² over its length of 10. Four flats of 34 on 40 leave round corners: four segments
// of 3 × 20², r² acos(17/20) − 17 √(20² − 17²) each. One flat of 30 to the far side goes 10 deep.
func TestFlatsMass(t *testing.T) {
	t.Parallel()
	segment := func(r, up float64) float64 { return r*r*math.Acos(up/r) - up*math.Sqrt(r*r-up*up) }
	for _, c := range []struct {
		row  plan.FlatsRow
		want float64
	}{
		{plan.FlatsRow{Sides: 6, DiameterMm: 40, AcrossMm: 24, DepthMm: 8, Full: true, FromMm: 5, ToMm: 15}, 10 * (400*math.Pi - math.Sqrt(3)/2*576)},
		{plan.FlatsRow{Sides: 4, DiameterMm: 40, AcrossMm: 34, DepthMm: 3, ToMm: 20}, 20 * 4 * segment(20, 17)},
		{plan.FlatsRow{Sides: 1, DiameterMm: 40, AcrossMm: 30, DepthMm: 10, ToMm: 1}, segment(20, 10)},
	} {
		if got := (&Flats{Row: c.row}).volumeMm3(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%d flats: %v mm³, want %v", c.row.Sides, got, c.want)
		}
	}
}
