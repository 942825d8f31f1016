package sheets

import (
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// x and y are counted from the middle, or the table says from where.
func TestCountedFrom(t *testing.T) {
	t.Parallel()
	at := func(x, y float64) plan.XY { return plan.XY{XMm: x, YMm: y} }
	for _, c := range []struct {
		face plan.Face
		want string
	}{
		{plan.Face{MinMm: at(-60, -20), MaxMm: at(60, 20)}, ""},
		{plan.Face{MinMm: at(0, 0), MaxMm: at(110, 140)}, "x, y from the bottom left corner."},
		{plan.Face{MinMm: at(-65, -54.33), MaxMm: at(65, 71.16)}, "x, y from a point 65.00 from left, 54.33 from bottom."},
		{plan.Face{MinMm: at(-65, -54.33), MaxMm: at(65, 71.16), Round: true}, ""},
	} {
		got := ""
		for _, s := range countedFrom(&c.face, parts.Millimetres) {
			got += s
		}
		if got != c.want {
			t.Errorf("%v: %q, want %q", c.face.MinMm, got, c.want)
		}
	}
}
