package picture

import (
	"math"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

// TestCorner: the fillet between a plate that stands on another and its face, by hand: legs of
// 4, or what the two leave of that, its points anticlockwise; under a bevel of 45° it is filled
// to three legs, 12 along the bevel and 8.485 along the face; none where the edge stays on the
// face, stands off it, or the face ends at once.
func TestCorner(t *testing.T) {
	t.Parallel()
	at := func(c ...float64) (out []plan.XY) {
		for i := 0; i < len(c); i += 2 {
			out = append(out, plan.XY{XMm: c[i], YMm: c[i+1]})
		}
		return out
	}
	upright := at(0, 0, 0, 30, -10, 30, -10, 0)
	for _, c := range []struct {
		name       string
		own        []plan.XY
		wide, high float64 // how far the face goes on, and how far under the corner it lies
		u          plan.XY
		points     []plan.XY
		groove     bool
		areaMm2    float64
	}{
		{"square", upright, 50, 0, plan.XY{YMm: 30}, at(0, 0, 4, 0, 0, 4), false, 8},
		{"a low edge", at(0, 0, 0, 3, -10, 3, -10, 0), 50, 0, plan.XY{YMm: 3}, at(0, 0, 4, 0, 0, 3), false, 6},
		{"a narrow face", upright, 2, 0, plan.XY{YMm: 30}, at(0, 0, 2, 0, 0, 4), false, 4},
		{"a face that ends at once", upright, 0.2, 0, plan.XY{YMm: 30}, nil, false, 0},
		{"stands off", upright, 50, 0.4, plan.XY{YMm: 30}, nil, false, 0},
		{"a bevel", at(0, 0, 30, 30, -10, 30, -10, 0), 50, 0, plan.XY{XMm: 30, YMm: 30}, at(0, 0, 8.485, 0, 8.485, 8.485), true, 36},
		{"a small bevel", at(0, 0, 5, 5, 5, 30, -10, 30, -10, 0), 50, 0, plan.XY{XMm: 5, YMm: 5}, at(0, 0, 5, 0, 5, 5), true, 12.5},
		{"a bevel of 60°", at(0, 0, 20, 34.641, -10, 34.641, -10, 0), 50, 0, plan.XY{XMm: 20, YMm: 34.641}, at(0, 0, 6, 0, 6, 10.392), true, 31.177},
		{"an edge that leans by 70°", at(0, 0, 10, 27.475, -10, 27.475, -10, 0), 50, 0, plan.XY{XMm: 10, YMm: 27.475}, at(0, 0, 4, 0, 1.368, 3.759), false, 7.518},
		{"along the face", at(0, 0, 30, 0, 30, 30, 0, 30), 50, 0, plan.XY{XMm: 30}, nil, false, 0},
	} {
		s := meeting{touch: 0.3, leg: 4, own: [][]plan.XY{c.own}, other: [][]plan.XY{at(-50, -c.high, -50, -20, c.wide, -20, c.wide, -c.high)}}
		got := s.corner(plan.XY{}, c.u)
		if len(got) > 1 || (len(got) == 0) != (c.points == nil) {
			t.Errorf("%s: %+v", c.name, got)
			continue
		}
		for _, b := range got {
			far := 0.0
			for i, p := range b.points {
				far = max(far, geom.Distance(p, c.points[i]))
			}
			if far > 0.001 || b.groove != c.groove || math.Abs(b.areaMm2-c.areaMm2) > 0.001 {
				t.Errorf("%s: %+v", c.name, b)
			}
		}
	}
}
