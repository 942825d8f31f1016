package bolts

import (
	"math"
	"testing"
)

// By hand: ring 50, nut 25: ln 2 = 0.693147, so 1.3 × 0.693147 + 1 − 0.7/16 =
// 1.857341; of 10 kN, 795.775 N × 1.857341 = 1478.025 N; 12 × 1478.025 / 235 =
// 75.4736, of which the root is 8.68755 mm.
func TestPlateMm(t *testing.T) {
	t.Parallel()
	got, err := PlateMm(10000, 50, 25, 235)
	if err != nil || math.Abs(got-8.68755) > 1e-4 {
		t.Errorf("%v %v", got, err)
	}
	for _, bad := range [][4]float64{{0, 50, 25, 235}, {1, 50, 50, 235}, {1, 50, -1, 235}, {1, math.NaN(), 25, 235}, {1, 50, 25, math.Inf(1)}} {
		if _, err := PlateMm(bad[0], bad[1], bad[2], bad[3]); err == nil {
			t.Errorf("%v is taken", bad)
		}
	}
}
