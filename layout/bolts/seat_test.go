package bolts

import (
	"math"
	"testing"
)

// Rings under heads and nuts: π/4 (14.63² - 11²) = 73.07 of M10, whose face is 1.37 less than its flats; 28.2 of 30 of
// M20; 15.2 of a socket head of 16; 14.63 + 1.6 × 2 = 17.83 under a washer.
func TestSeat(t *testing.T) {
	for _, c := range []struct {
		size        string
		head        Head
		nut, washer bool
		hole, want  float64
	}{
		{"M10", Hex, false, false, 11, 73.07}, {"M10", Hex, true, false, 11, 73.07}, {"M20", Hex, false, false, 22, 244.45}, {"M10", Socket, false, false, 11, 86.43},
		{"M10", Socket, true, false, 11, 73.07}, {"M10", Hex, false, true, 11, 154.65}, {"M10", Countersunk, false, false, 11, 0}, {"M10", Countersunk, true, false, 11, 73.07}, {"M10", Hex, false, false, 15, 0},
	} {
		b, err := Find(c.size)
		if err != nil {
			t.Fatal(err)
		}
		if got := b.SeatMm2(c.head, c.nut, c.washer, c.hole); math.Abs(got-c.want) > 0.01 {
			t.Errorf("%s %s, nut %v, washer %v, hole %v: %v mm², want %v", c.size, c.head, c.nut, c.washer, c.hole, got, c.want)
		}
	}
}
