package cutting

import (
	"math"
	"testing"
)

// Beams of one section as Shigley's table has them, with F = 75 N and E = 210 GPa:
// Ø20, 200 long, I = 7854 mm⁴. A bar of two equal halves is the same bar; a stepped one
// is worked out by hand: ∫ m²/I in two parts.
func TestBend(t *testing.T) {
	t.Parallel()
	const e = 210000.0
	i := func(d float64) float64 { return math.Pi / 64 * math.Pow(d, 4) }
	bar := []Stretch{{200, 20, 0}}
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"in the chuck, at the end", BendInChuckMm(bar, 0, e), 75 * 8e6 / (3 * e * i(20))},
		{"in the chuck, half way", BendInChuckMm(bar, 100, e), 75 * 1e6 / (3 * e * i(20))},
		{"in the chuck, at the jaws", BendInChuckMm(bar, 200, e), 0},
		{"on centres, in the middle", BendOnCentresMm(bar, 100, e), 75 * 8e6 / (48 * e * i(20))},
		{"on centres, a quarter in", BendOnCentresMm(bar, 50, e), 75 * 50 * 50 * 150 * 150 / (3 * e * i(20) * 200)},
		{"two halves", BendOnCentresMm([]Stretch{{100, 20, 0}, {100, 20, 0}}, 50, e), 75 * 50 * 50 * 150 * 150 / (3 * e * i(20) * 200)},
		{"three pieces, cut in the second", BendOnCentresMm([]Stretch{{30, 20, 0}, {120, 20, 0}, {50, 20, 0}}, 70, e), 75 * 70 * 70 * 130 * 130 / (3 * e * i(20) * 200)},
		{"three pieces, cut in the last", BendOnCentresMm([]Stretch{{30, 20, 0}, {90, 20, 0}, {80, 20, 0}}, 170, e), 75 * 170 * 170 * 30 * 30 / (3 * e * i(20) * 200)},
		// The moment is z/2 up to the middle: ∫ is 60³/12, then (100³ − 60³)/12, twice.
		{"stepped, in the middle", BendOnCentresMm([]Stretch{{60, 10, 0}, {80, 20, 0}, {60, 10, 0}}, 100, e), 75 / e * 2 * (216e3/12/i(10) + (1e6-216e3)/12/i(20))},
		{"a tube", BendInChuckMm([]Stretch{{200, 20, 16}}, 0, e), 75 * 8e6 / (3 * e * (i(20) - i(16)))},
		{"thin at the free end", BendInChuckMm([]Stretch{{100, 10, 0}, {100, 20, 0}}, 0, e), 75 / e * (1e6/3/i(10) + (8e6-1e6)/3/i(20))},
	} {
		if !(math.Abs(c.got-c.want) <= 1e-9*math.Max(1, c.want)) {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
}
