package cutting

import (
	"math"
	"testing"
)

// ISO 1641-1 end mills, flute length of the standard and the long series, and ASME
// B94.19 regular and long; ISO 235 jobber drills, and taper shank above 14 mm. All
// from memory.
func TestReach(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		wide             float64
		s                System
		dia, short, long float64
	}{
		{8, Metric, 8, 19, 38}, {13.5, Metric, 12, 26, 53}, {7.99, Metric, 6, 13, 24}, {40, Metric, 25, 45, 90}, {2, Metric, 0, 0, 0},
		{7.9375, Inch, 7.9375, 19.05, 34.925}, {17.4625, Inch, 15.875, 41.275, 63.5}, {5, Inch, 0, 0, 0},
	} {
		if d, short, long := MillReach(c.wide, c.s); math.Abs(d-c.dia)+math.Abs(short-c.short)+math.Abs(long-c.long) > 1e-9 {
			t.Errorf("%v wide: Ø%v, %v and %v, want %v", c.wide, d, short, long, c)
		}
	}
	for d, want := range map[float64]float64{1: 33, 3: 33, 3.1: 36, 6: 57, 8.5: 75, 11.5: 94, 16.67: 125, 23: 155, 30: 175, 40: 175} {
		if got := FluteMm(d); got != want {
			t.Errorf("Ø%v: flutes %v, want %v", d, got, want)
		}
	}
	if got := ReamBeyondMm(6); got != 3.5 { // 6/4 + 2: common practice, no source
		t.Errorf("a reamer of 6 wants %v", got)
	}
}
