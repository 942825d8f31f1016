package joint

import (
	"testing"

	"centrepop/layout/bolts"
)

// TestLockingNut: the greatest height of a self-locking nut, DIN 985:1987 as fasten.it prints it, and two pitches.
func TestLockingNut(t *testing.T) {
	t.Parallel()
	for size, high := range map[string]float64{"M3": 4, "M4": 5, "M5": 5, "M6": 6, "M8": 8, "M10": 10, "M12": 12, "M14": 14,
		"M16": 16, "M18": 18.5, "M20": 20, "M22": 22, "M24": 24, "M27": 27, "M30": 30, "M33": 33, "M36": 36} {
		b, err := bolts.Find(size)
		if err != nil {
			t.Fatal(err)
		}
		if got := lockingNutMm(&b) - 2*b.Thread.PitchMm; got != high {
			t.Errorf("%s: %g high, published %g", size, got, high)
		}
	}
}
