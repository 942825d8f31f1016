package cutting

import (
	"fmt"
	"math"
	"strings"
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
	// Hand taps of ISO 529 less a diameter: M3 48, M8 72, M10 80, M30 138. Points of 118°: a radius over tan 59° = 1.6643.
	for d, want := range map[float64]float64{2.5: 45.5, 3: 45, 7: 65, 8: 64, 8.5: 71.5, 30: 108, 30.1: 0} {
		if got := TapReachMm(d); got != want {
			t.Errorf("Ø%v: a tap reaches %v, want %v", d, got, want)
		}
	}
	for d, want := range map[float64]float64{10: 3.004, 6: 1.803} {
		if got := PointMm(d); math.Abs(got-want) > 0.001 {
			t.Errorf("Ø%v: a point of %v, want %v", d, got, want)
		}
	}
	// Every size from its own line, and what is a little smaller from the one before. These
	// lines and those of the drills are the tables themselves again, from memory: they check
	// the way a size is found, not the sizes (tables.csv says what was looked up).
	for system, lines := range map[System]string{
		Metric: "3 8 12, 4 11 19, 5 13 24, 6 13 24, 8 19 38, 10 22 45, 12 26 53, 16 32 63, 20 38 75, 25 45 90",
		Inch:   "0.25 0.625 1.25, 0.3125 0.75 1.375, 0.375 0.75 1.5, 0.5 1.25 2, 0.625 1.625 2.5, 0.75 1.625 3, 1 2 4",
	} {
		unit, before := map[System]float64{Metric: 1, Inch: 25.4}[system], 0.0
		for _, line := range strings.Split(lines, ", ") {
			var want [3]float64
			if _, err := fmt.Sscan(line, &want[0], &want[1], &want[2]); err != nil {
				t.Fatal(err)
			}
			d, short, long := MillReach(want[0]*unit, system)
			if math.Abs(d-want[0]*unit)+math.Abs(short-want[1]*unit)+math.Abs(long-want[2]*unit) > 1e-9 {
				t.Errorf("end mill %s: Ø%v, %v and %v", line, d, short, long)
			}
			if d, _, _ := MillReach(want[0]*unit-0.01, system); math.Abs(d-before*unit) > 1e-9 {
				t.Errorf("a little under %s: Ø%v, want %v", line, d, before*unit)
			}
			before = want[0]
		}
	}
	for _, line := range strings.Split("3 33, 3.35 36, 3.75 39, 4.25 43, 4.75 47, 5.3 52, 6 57, 6.7 63, 7.5 69, 8.5 75, 9.5 81, 10.6 87, 11.8 94, 13.2 101, 14 108, "+
		"15 114, 16 120, 17 125, 18 130, 19 135, 20 140, 21.2 145, 22.4 150, 23.6 155, 25 160, 26.5 165, 28 170, 30 175", ", ") {
		var to, long float64
		if _, err := fmt.Sscan(line, &to, &long); err != nil {
			t.Fatal(err)
		}
		if got := FluteMm(to); got != long {
			t.Errorf("a drill of %v has flutes of %v, want %v", to, got, long)
		}
	}
	if got := ReamBeyondMm(6); got != 3.5 { // 6/4 + 2: common practice, no source
		t.Errorf("a reamer of 6 wants %v", got)
	}
}
