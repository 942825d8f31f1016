package joint

import (
	"testing"

	"centrepop/parts/seq"
)

// TestConeWidths: how much narrower and wider than T a metric tapered bearing of the normal class may be, by its bore, as three bearing
// makers' catalogues print it (tolerances of metric tapered roller bearings, deviation of T).
func TestConeWidths(t *testing.T) {
	t.Parallel()
	for _, c := range []coneWidth{{18, 0, 0.2}, {80, 0, 0.2}, {81, -0.2, 0.2}, {120, -0.2, 0.2}, {121, -0.25, 0.35}, {180, -0.25, 0.35}, {315, -0.25, 0.35}, {316, -0.4, 0.4}} {
		if got := seq.First(coneWidths, func(row coneWidth) bool { return c.toMm <= row.toMm }); got.leastMm != c.leastMm || got.mostMm != c.mostMm {
			t.Errorf("bore %v: %v", c.toMm, got)
		}
	}
}
