package fits

import (
	"errors"
	"fmt"
	"testing"

	"centrepop/parts/golden"
)

// ISO 9013:2017 tolerance class 2, as modulusmetal.com prints it: a range to an upper size
// excludes it, one of thickness includes it.
func TestThermalCut(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ mm, thick, want float64 }{
		{2.9, 1, 0.5}, {3, 1, 0.6}, {3999, 0.5, 0.9}, {4000, 1, 0}, {9.9, 3.15, 0.6}, {10, 3.15, 0.7}, {7999, 3, 1.4}, {8000, 3, 0},
		{34.9, 6.3, 0.9}, {125, 6.3, 1.1}, {314, 6.3, 1.1}, {315, 4, 1.2}, {2.9, 8, 0}, {151, 8, 1.4}, {230, 10, 1.4}, {1000, 10, 1.6}, {2000, 10, 1.7}, {6000, 10, 2},
		{5, 12, 1.8}, {124.9, 20, 1.8}, {266.7, 19.05, 1.9}, {460, 20, 2.3}, {1500, 15, 3}, {3000, 15, 4.2}, {5000, 15, 4.3}, {7000, 15, 4.5}, {460, 50, 2.3}, {460, 50.1, 0}, {0, 10, 0}, {10, 0, 0}, {-1, 5, 0},
	} {
		got, err := ThermalCut(c.mm, c.thick)
		if got != c.want || (err == nil) != (c.want > 0) || err != nil && !errors.Is(err, ErrNotDefined) {
			t.Errorf("%g in %g: ±%g, %v, want ±%g", c.mm, c.thick, got, err, c.want)
		}
	}
}

// TestThermalCutWhole: every cell of the file, at both ends of its ranges.
func TestThermalCutWhole(t *testing.T) {
	t.Parallel()
	for _, row := range golden.Table(t, reference+"thermal_cut.csv", len(thermal)) {
		from := 0.0
		for _, to := range thermalUpTo {
			want := row.Number(t, fmt.Sprint(to))
			for _, mm := range []float64{from + 1e-9, to - 1e-9} {
				for _, thick := range []float64{row.Number(t, "over_thick") + 1e-9, row.Number(t, "up_to_thick")} {
					if got, err := ThermalCut(mm, thick); got != want || (err == nil) != (want > 0) {
						t.Errorf("%g in %g: ±%g, %v, want ±%g", mm, thick, got, err, want)
					}
				}
			}
			from = to
		}
	}
}
