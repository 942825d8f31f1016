package weld

import (
	"math"
	"testing"
)

// TestPlaceOff: ISO 13920 class A, tables 1 and 2 (as modulusmetal.com prints them): ±1 up to
// 400, ±2 up to 1000, ±3 up to 2000, ±4 up to 4000, then 1 more each of 8000, 12 000, 16 000
// and 20 000, ±9 over that; angles 6, 4.5 and 3 mm/m.
func TestPlaceOff(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ mm, off float64 }{{0, 1}, {400, 1}, {400.1, 2}, {1000, 2}, {1001, 3}, {2000, 3}, {2001, 4}, {4000, 4}, {4001, 5}, {8000, 5}, {8001, 6}, {12000, 6}, {12001, 7}, {16000, 7}, {16001, 8}, {20000, 8}, {20001, 9}} {
		if got := PlaceOff(c.mm); got != c.off {
			t.Errorf("%v: %v, want %v", c.mm, got, c.off)
		}
	}
	for _, c := range []struct{ mm, off float64 }{{136, 0.816}, {400, 2.4}, {500, 2.25}, {1000, 4.5}, {1200, 3.6}} {
		if got := LeanOff(c.mm); math.Abs(got-c.off) > 1e-9 {
			t.Errorf("lean of %v: %v, want %v", c.mm, got, c.off)
		}
	}
}

// ISO 13920 table 3, class E, from memory.
func TestAlikeOff(t *testing.T) {
	for mm, want := range map[float64]float64{20: 0.5, 120: 0.5, 121: 1, 400: 1, 1000: 1.5, 2000: 2} {
		near(t, "parallel", AlikeOff(mm), want, 1e-12)
	}
}
