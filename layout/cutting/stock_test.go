package cutting

import (
	"math"
	"testing"
)

func TestStockDrill(t *testing.T) {
	for _, c := range []struct {
		d    float64
		s    System
		r    Rounding
		want string
	}{
		{8.5, Metric, Down, "8.5"}, // M10 tap drill, ISO 2306
		{10.2, Metric, Nearest, "10.2"},
		{6.75, Metric, Nearest, "6.75"},
		{13.95, Metric, Up, "14.0"}, {13.95, Metric, Down, "13.9"}, // to 14 by 0.1 and the quarters: DIN 338
		{10.71, Metric, Nearest, "10.7"}, {10.78, Metric, Nearest, "10.8"}, {11.8, Metric, Down, "11.8"}, {13.76, Metric, Down, "13.75"},
		{14.1, Metric, Down, "14.0"}, {14.1, Metric, Up, "14.25"}, {30.8, Metric, Down, "30.75"}, // to 32 by 0.25: DIN 345
		{14.125, Metric, Nearest, "14.0"}, // tie: smaller
		{32.2, Metric, Up, "32.5"}, {3.1, Metric, Up, "3.1"}, {3.2, Metric, Up, "3.2"}, {3.22, Metric, Up, "3.25"}, {2.72, Metric, Up, "2.8"},
		{1, Metric, Down, "1.0"}, {1.02, Metric, Down, "1.0"}, {50, Metric, Up, "50.0"}, {49.9, Metric, Up, "50.0"},
		{0.201 * 25.4, Inch, Nearest, "#7"}, // 1/4-20 UNC tap drill
		{0.257 * 25.4, Inch, Nearest, "F"},  // 5/16-18 UNC tap drill
		{27. / 64 * 25.4, Inch, Down, "27/64 in"},
		{6.35, Inch, Down, "1/4 in"},
		{1.05 * 25.4, Inch, Up, "1-1/16 in"},
		{1.04 * 25.4, Inch, Down, "1-1/32 in"},
	} {
		got, err := StockDrill(c.d, c.s, c.r)
		if err != nil || got.Name != c.want {
			t.Errorf("StockDrill(%v, %v, %v) = %q, %v; want %q", c.d, c.s, c.r, got.Name, err, c.want)
		}
	}
	for _, bad := range []float64{0, -3, 0.29, math.NaN(), math.Inf(1)} {
		if got, err := StockDrill(bad, Metric, Down); err == nil {
			t.Errorf("StockDrill(%v) = %v, want an error", bad, got)
		}
	}
	if got, err := StockDrill(51, Metric, Up); err == nil {
		t.Errorf("StockDrill(51 up) = %v, want an error", got)
	}
	for _, s := range []System{Metric, Inch} {
		all := StockDrills(s)
		for i := 1; i < len(all); i++ {
			if all[i].DiaMm <= all[i-1].DiaMm {
				t.Errorf("drills %q and %q out of order", all[i-1].Name, all[i].Name)
			}
		}
	}
}

// Common practice, no source: by the band of the diameter, its end included.
func TestFacingAllowance(t *testing.T) {
	for d, want := range map[float64]float64{10: 1.5, 50: 1.5, 50.1: 2, 100: 2, 100.1: 3, 300: 3} {
		if got := FacingAllowanceMm(d); got != want {
			t.Errorf("bar of %v: %v a face, want %v", d, got, want)
		}
	}
}
