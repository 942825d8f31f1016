package bend

import "testing"

// TestClearDeg: two legs on a base of 324 in sheet of 1.5. Square, the tip of the one folded first stands
// (324 − 1.5 − 316) / √2 = 4.6 beside the punch when the other is folded, and some 450 over it: it is left
// open until cos φ and sin φ put it 30 off, (322.5 + 316 cos φ − 316 sin φ) / √2 about, at 83° and not at
// 84° (34.6 less the bend's own). Under 100 high there is only the punch, and a low leg is clear.
func TestClearDeg(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ leg, want float64 }{{316, 83}, {60, 90}, {279, 90}, {281, 89}} {
		p := Panel{WidthMm: 324, HeightMm: 218, ThicknessMm: 1.5, Flanges: []Flange{
			{Side: Left, HeightMm: c.leg, AngleDeg: 90, RadiusMm: 2}, {Side: Right, HeightMm: c.leg, AngleDeg: 90, RadiusMm: 2},
		}}
		b, err := p.Blank()
		if err != nil {
			t.Fatal(err)
		}
		order := b.Order()
		if got := b.ClearDeg(order, order[0]); got != c.want {
			t.Errorf("leg %g: %g°, want %g°", c.leg, got, c.want)
		}
		if got := b.ClearDeg(order, order[1]); got != 90 {
			t.Errorf("the last leg %g: %g°", c.leg, got)
		}
	}
}
