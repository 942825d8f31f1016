package picture

import (
	"math"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

// at are places by their coordinates, x and y by turns.
func at(c ...float64) (out []plan.XY) {
	for i := 0; i < len(c); i += 2 {
		out = append(out, plan.XY{XMm: c[i], YMm: c[i+1]})
	}
	return out
}

// TestCorner: the fillet between a plate that stands on another and its face, by hand: legs of
// 4, or what the two leave of that, its points anticlockwise; under a bevel of 45° it is filled
// to three legs, 12 along the bevel and 8.485 along the face; none where the edge stays on the
// face, stands off it, or the face ends at once.
func TestCorner(t *testing.T) {
	t.Parallel()
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

// TestExtent: a block of 40 × 20 from 5, 6 on, in a plane that passes it, its faces with it, and in one half a millimetre beside it.
func TestExtent(t *testing.T) {
	t.Parallel()
	for z, passes := range map[float64]bool{-5: true, -10: true, 0: true, 0.5: false, -10.5: false} { // of its lower face
		r, ok := extent(assembly.Move(assembly.Vec{X: 1, Y: 2, Z: 3}), &assembly.Body{
			Solid: assembly.Of(assembly.Cuboid(assembly.Vec{X: 5, Y: 6}, assembly.Vec{X: 45, Y: 26, Z: 10})), Pose: assembly.Move(assembly.Vec{Z: z + 3})})
		if want := spanning(xy(4, 4), xy(44, 24)); ok != passes || r != want {
			t.Errorf("%g over the plane: %v, %v", z, r, ok)
		}
	}
}

// TestStrapIsCaught: a strap of 40 round a bar of 200 × 50 × 50 that hangs by its middle, beside a block from 90 to 110 along it,
// is caught where both lie under it and less than 5 apart, but not by what lies within the bar.
func TestStrapIsCaught(t *testing.T) {
	t.Parallel()
	body := func(low, high assembly.Vec) []assembly.Body {
		return []assembly.Body{{Solid: assembly.Of(assembly.Cuboid(low, high)), Pose: assembly.Still}}
	}
	caught := func(mm, off float64) bool {
		return (&hung{Group: assembly.Group{Centre: assembly.Vec{X: 100}}, along: assembly.AxisX, strapMm: 40, bodies: body(assembly.Vec{}, assembly.Vec{X: 200, Y: 50, Z: 50}),
			others: body(assembly.Vec{X: 90, Y: 50 + off}, assembly.Vec{X: 110, Y: 80 + off, Z: 50})}).caught(mm)
	}
	for _, c := range []struct {
		mm, off float64
		want    bool
	}{{0, 4.9, true}, {0, 5.1, false}, {29.9, 4, true}, {30.1, 4, false}, {-29.9, 4, true}, {-30.1, 4, false}, {0, -40, false}} {
		if caught(c.mm, c.off) != c.want {
			t.Errorf("%g along, %g off: %v", c.mm, c.off, !c.want)
		}
	}
}

// TestMiddleOf: beads 8 off an axis at both sides lie about it, however far apart along it, while their weld is wider than that; else about
// their own middle.
func TestMiddleOf(t *testing.T) {
	t.Parallel()
	at := func(x, y float64) bead {
		return bead{points: [3]plan.XY{{XMm: x, YMm: y}, {XMm: x + 3, YMm: y}, {XMm: x, YMm: y + 3}}} // its middle 1, 1 on
	}
	for _, c := range []struct {
		radius float64
		want   plan.XY
	}{{8.1, plan.XY{XMm: 16}}, {7.9, plan.XY{XMm: 16, YMm: 8.0 / 3}}} {
		if got := middleOf([]bead{at(0, 7), at(15, 7), at(30, -9)}, c.radius); geom.Distance(got, c.want) > 1e-9 {
			t.Errorf("within %g: %v", c.radius, got)
		}
	}
}

// TestTail: what moves to the right is pushed where its rear edge crosses the middle of its height: of one that is 4 further back at its
// top, or bent there, on that edge; of two the one that reaches further back, or the higher of equals.
func TestTail(t *testing.T) {
	t.Parallel()
	block := func(x, y float64) []plan.XY { return at(x, y, x+20, y, x+20, y+10, x, y+10) }
	bent := at(0, 0, 20, 0, 20, 10, 4, 10, 2, 8)
	for _, c := range []struct {
		loops [][]plan.XY
		d     plan.XY
		want  plan.XY
	}{
		{[][]plan.XY{at(0, 0, 20, 0, 20, 10, 4, 10)}, plan.XY{XMm: 1}, plan.XY{XMm: 2, YMm: 5}},
		{[][]plan.XY{bent}, plan.XY{XMm: 1}, plan.XY{XMm: 1.25, YMm: 5}}, {[][]plan.XY{bent}, plan.XY{XMm: -1}, plan.XY{XMm: 20, YMm: 5}}, {[][]plan.XY{bent}, plan.XY{YMm: -1}, plan.XY{XMm: 10, YMm: 10}},
		{[][]plan.XY{block(0, 0), block(-0.5, -30), block(7, 30)}, plan.XY{XMm: 1}, plan.XY{XMm: -0.5, YMm: -25}},
		{[][]plan.XY{block(0, -30), block(0, 0), block(1e-9, -60)}, plan.XY{XMm: 1}, plan.XY{YMm: 5}},
	} {
		if got := tail(c.loops, c.d); geom.Distance(got, c.want) > 1e-6 {
			t.Errorf("%v along %v: %v, want %v", c.loops, c.d, got, c.want)
		}
	}
}
