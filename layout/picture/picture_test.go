package picture

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/machine"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/geom"
)

func box(x0, y0, x1, y1 float64) [][]plan.XY {
	return [][]plan.XY{{{XMm: x0, YMm: y0}, {XMm: x1, YMm: y0}, {XMm: x1, YMm: y1}, {XMm: x0, YMm: y1}}}
}

// areas are the sizes of beads in mm², the largest first, with where their
// middles lie; each runs anticlockwise.
func TestBeads(t *testing.T) {
	t.Parallel()
	floor := box(-50, -10, 50, 0)
	bevelled := [][]plan.XY{{{XMm: -5, YMm: 0}, {XMm: 2, YMm: 0}, {XMm: 5, YMm: 3}, {XMm: 5, YMm: 40}, {XMm: -5, YMm: 40}}}
	for name, c := range map[string]struct {
		a, b [][]plan.XY
		w    plan.WeldPlan
		want []float64 // areas
		at   []float64 // x of the middles
	}{
		"both sides":       {box(-5, 0, 5, 40), floor, plan.WeldPlan{LegMm: 6, Sides: 2}, []float64{18, 18}, []float64{-7, 7}},
		"a fit between":    {box(-5, 0.4, 5, 40), floor, plan.WeldPlan{LegMm: 6, Sides: 2}, []float64{18, 18}, []float64{-7, 7}},
		"too far":          {box(-5, 0.7, 5, 40), floor, plan.WeldPlan{LegMm: 6, Sides: 2}, nil, nil},
		"over a gap":       {box(-5, 1.5, 5, 40), floor, plan.WeldPlan{LegMm: 6, Sides: 2, GapMm: 1.5, GapLeastMm: 1.5}, []float64{18, 18}, []float64{-7, 7}},
		"at an edge":       {box(40, 0, 50, 40), floor, plan.WeldPlan{LegMm: 6, Sides: 2}, []float64{18}, []float64{38}},
		"prepared":         {bevelled, floor, plan.WeldPlan{ThinnerMm: 8, Sides: 1}, []float64{4.5}, []float64{4}},
		"prepared, filled": {bevelled, floor, plan.WeldPlan{LegMm: 6, Sides: 2}, []float64{4.5, 18}, []float64{4, -7}},
		"one side":         {box(-5, 0, 5, 40), floor, plan.WeldPlan{LegMm: 6, Sides: 1}, []float64{18}, []float64{-7}},
		"in two corners":   {box(-5, 0, 5, 40), floor, plan.WeldPlan{LegMm: 6, Sides: 1, Corners: []plan.Corner{{Side: "front"}, {Side: "back"}}}, []float64{18, 18}, []float64{-7, 7}},
		"round, one side":  {box(-5, 0, 5, 40), floor, plan.WeldPlan{LegMm: 6, Sides: 1, DiameterMm: 10}, []float64{18, 18}, []float64{-7, 7}},
		// Under two fifths of the larger it is none of its kind.
		"round, narrow on one side": {box(-5, 0, 5, 40), box(-50, -10, 7.3, 0), plan.WeldPlan{LegMm: 6, Sides: 1, DiameterMm: 10}, []float64{18}, []float64{-7}},
		"round, less narrow":        {box(-5, 0, 5, 40), box(-50, -10, 7.5, 0), plan.WeldPlan{LegMm: 6, Sides: 1, DiameterMm: 10}, []float64{18, 7.5}, []float64{-7, 5 + 2.5/3}},
		// A tube that ends 4 within the plate on it has a corner with its bore too: the outer one is welded.
		"round, with an end within": {box(0, 50, 10, 80), box(4, 46, 90, 50), plan.WeldPlan{LegMm: 3, Sides: 1, DiameterMm: 100}, []float64{4.5}, []float64{11}},
		"both of its corners":       {box(0, 50, 10, 80), box(4, 46, 90, 50), plan.WeldPlan{LegMm: 3, Sides: 2, DiameterMm: 100}, []float64{4.5, 4.5}, []float64{11, 3}},
		"beside the axis":           {append(box(0, 150, 10, 180), box(0, 20, 10, 50)...), append(box(4, 146, 90, 150), box(4, 50, 90, 54)...), plan.WeldPlan{LegMm: 3, Sides: 1, DiameterMm: 100}, []float64{4.5, 4.5}, []float64{11, 11}},
		"under":                     {box(-5, -50, 5, -10), floor, plan.WeldPlan{LegMm: 30, Sides: 2}, []float64{450, 450}, []float64{-15, 15}},
	} {
		got := beads(c.a, c.b, &c.w, func(plan.XY) bool { return true })
		if len(got) != len(c.want) {
			t.Errorf("%s: %d beads, want %d: %v", name, len(got), len(c.want), got)
			continue
		}
		slices.SortFunc(got, func(p, q []plan.XY) int {
			return slices.Index(c.at, near(p, c.at)) - slices.Index(c.at, near(q, c.at))
		})
		for i, p := range got {
			area := ((p[1].XMm-p[0].XMm)*(p[2].YMm-p[0].YMm) - (p[2].XMm-p[0].XMm)*(p[1].YMm-p[0].YMm)) / 2
			if x := (p[0].XMm + p[1].XMm + p[2].XMm) / 3; math.Abs(area-c.want[i]) > 0.005 || math.Abs(x-c.at[i]) > 0.005 {
				t.Errorf("%s: bead %d has %.2f mm² at x %.2f, want %.2f at %.2f", name, i, area, x, c.want[i], c.at[i])
			}
		}
	}
}

// near is the one of some places that the middle of a bead lies nearest to.
func near(p []plan.XY, at []float64) float64 {
	x := (p[0].XMm + p[1].XMm + p[2].XMm) / 3
	return slices.MinFunc(at, func(a, b float64) int { return int(1000 * (math.Abs(a-x) - math.Abs(b-x))) })
}

func TestWindow(t *testing.T) {
	t.Parallel()
	square := rectOf(box(0, 0, 4, 4))
	for at, want := range map[float64]float64{-1: 16, 1: 12, 3: 4, 5: 0} {
		cut := square
		cut.Min.XMm, cut.Max.XMm = at, 10
		area := 0.0
		for _, loop := range cut.clip(box(0, 0, 4, 4)) {
			for i, q := range loop {
				o := loop[(i+1)%len(loop)]
				area += (q.XMm*o.YMm - o.XMm*q.YMm) / 2
			}
		}
		if math.Abs(area-want) > 1e-12 {
			t.Errorf("right of %g: area %g, not %g", at, area, want)
		}
	}
	lines := square.clipLines([][2]plan.XY{{{XMm: -3, YMm: 2}, {XMm: 9, YMm: 2}}, {{XMm: -3, YMm: 5}, {XMm: 9, YMm: 5}}})
	if len(lines) != 1 || lines[0] != [2]plan.XY{{XMm: 0, YMm: 2}, {XMm: 4, YMm: 2}} {
		t.Errorf("lines %v", lines)
	}
	if got := rectOf(box(0, 0, 1, 1)).meet(rectOf(box(3, 0, 5, 1))); got != rectOf(box(1, 0, 3, 1)) {
		t.Errorf("between two is %v", got)
	}
	level, o := plan.XY{XMm: 1}, plan.XY{}
	for name, c := range map[string]struct {
		loops [][]plan.XY
		dir   plan.XY
		want  rect
	}{
		"a bar is shown whole":         {box(0, -10, 100, 10), level, rectOf(box(0, -10, 100, 10))},
		"a disc by half":               {box(0, -100, 100, 100), level, rectOf(box(0, -5, 100, 100))},
		"a wide one by half":           {box(0, -100, 225, 100), level, rectOf(box(0, -5, 225, 100))}, // 110/225 of 75/200 are 1.304
		"a wider one whole":            {box(0, -100, 226, 100), level, rectOf(box(0, -100, 226, 100))},
		"a narrow ring by half":        {slices.Concat(box(0, 21.3, 12, 100), box(0, -100, 12, -21.3)), level, rectOf(box(0, -5, 12, 100))}, // 105/(100 − 0.9 · 21.3) are 1.299
		"a wider ring by its metal":    {slices.Concat(box(0, 21.5, 12, 100), box(0, -100, 12, -21.5)), level, rectOf(box(0, 19.35, 12, 100))},
		"an upright one by its right":  {box(-100, 0, 100, 50), plan.XY{YMm: -1}, rectOf(box(-5, 0, 100, 50))},
		"of a wide ring the metal":     {slices.Concat(box(0, 80, 12, 100), box(0, -100, 12, -80)), level, rectOf(box(0, 72, 12, 100))},
		"of an upright ring the metal": {slices.Concat(box(80, 0, 100, 12), box(-100, 0, -80, 12)), plan.XY{YMm: 1}, rectOf(box(72, 0, 100, 12))},
	} {
		for _, at := range []plan.XY{o, {XMm: 1000, YMm: -300}, {XMm: -64, YMm: 512}} { // wherever the axis lies
			var moved [][]plan.XY
			for _, loop := range c.loops {
				var to []plan.XY
				for _, q := range loop {
					to = append(to, q.Plus(at))
				}
				moved = append(moved, to)
			}
			want := spanning(c.want.Min.Plus(at), c.want.Max.Plus(at))
			if got := rectOf(moved).half(at, c.dir, moved); got != want {
				t.Errorf("%s, axis at %v: %v, want %v", name, at, got, want)
			}
		}
	}
}

// TestRects: what rectangles share, touch, and the lines through them.
func TestRects(t *testing.T) {
	t.Parallel()
	r := rectOf(box(10, 20, 50, 30))
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"size", r.Size(), plan.XY{XMm: 40, YMm: 10}}, {"centre", r.Middle(), plan.XY{XMm: 30, YMm: 25}}, {"grown", r.grown(3), rectOf(box(7, 17, 53, 33))},
		{"shared", r.meet(rectOf(box(40, 25, 90, 90))), rectOf(box(40, 25, 50, 30))}, {"above", r.meet(rectOf(box(0, 35, 90, 90))), rectOf(box(10, 30, 50, 35))},
		{"nearest inside", r.inside(plan.XY{XMm: 5, YMm: 28}), plan.XY{XMm: 10, YMm: 28}}, {"nearest corner", r.inside(plan.XY{XMm: 60, YMm: 2}), plan.XY{XMm: 50, YMm: 20}},
		{"long way", r.long(), [2]plan.XY{{XMm: 4, YMm: 25}, {XMm: 56, YMm: 25}}}, {"upright", rectOf(box(20, 10, 30, 50)).long(), [2]plan.XY{{XMm: 25, YMm: 4}, {XMm: 25, YMm: 56}}},
		{"level line", r.through(plan.XY{XMm: 3, YMm: 22}, plan.XY{XMm: -1}), [2]plan.XY{{XMm: 10, YMm: 22}, {XMm: 50, YMm: 22}}},
		{"upright line", r.through(plan.XY{XMm: 13, YMm: 2}, plan.XY{YMm: 1}), [2]plan.XY{{XMm: 13, YMm: 20}, {XMm: 13, YMm: 30}}},
		{"touches at a corner", r.touches(rectOf(box(50, 30, 60, 60))), true}, {"beside", r.touches(rectOf(box(50.1, 20, 60, 30))), false}, {"under", r.touches(rectOf(box(10, 0, 50, 19.9))), false},
		{"before", r.touches(rectOf(box(0, 20, 9.9, 30))), false}, {"over", r.touches(rectOf(box(10, 30.1, 50, 40))), false},
		{"joined", r.join(rectOf(box(0, 25, 20, 60))), rectOf(box(0, 20, 50, 60))},
	} {
		if c.got != c.want {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
}

// TestWedge: angles, feet and what lies within, by hand.
func TestWedge(t *testing.T) {
	t.Parallel()
	at := func(x, y float64) plan.XY { return plan.XY{XMm: x, YMm: y} }
	for _, c := range []struct {
		a, b, c, d plan.XY
		want       float64
	}{{at(0, 0), at(5, 0), at(0, 0), at(0, 3), 90}, {at(1, 1), at(2, 1), at(7, 7), at(8, 8), 45}, {at(0, 0), at(-1, 0), at(0, 0), at(2, 0), 180}, {at(0, 0), at(1, 0), at(3, 4), at(4, 4-math.Sqrt(3)), 60}} {
		if got := turned(c.a, c.b, c.c, c.d); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%+v: %g", c, got)
		}
	}
	loops := append(box(0, 0, 40, 30), box(10, 10, 20, 20)[0])
	for _, c := range []struct {
		p, foot plan.XY
		off     float64
	}{{at(5, 15), at(0, 15), 5}, {at(15, 16), at(15, 20), 4}, {at(43, 34), at(40, 30), 5}, {at(36, 15), at(40, 15), 4}, {at(8, 15), at(10, 15), 2}, {at(20, -3), at(20, 0), 3}} {
		foot, ends, off := nearest(c.p, loops)
		if geom.Distance(foot, c.foot) > 1e-9 || math.Abs(off-c.off) > 1e-9 || math.Abs(geom.Distance(ends[0], foot)+geom.Distance(foot, ends[1])-geom.Distance(ends[0], ends[1])) > 1e-9 {
			t.Errorf("%v: %v on %v, %g off", c.p, foot, ends, off)
		}
	}
	if got := toward(at(1, 2), at(7, 10), 5); geom.Distance(got, at(4, 6)) > 1e-9 {
		t.Errorf("5 towards: %v", got)
	}
}

// A round welded on one face of a plate is filled there alone: a plate 12 thick, z from 0 to 12 along the picture's x.
func TestBeadOnTheFaceMeant(t *testing.T) {
	t.Parallel()
	body := &assembly.Body{Solid: assembly.Of(assembly.Cuboid(assembly.Vec{X: -50, Y: -50}, assembly.Vec{X: 50, Y: 50, Z: 12})), Pose: assembly.Move(assembly.Vec{})}
	along := assembly.Pose{X: assembly.Vec{Z: 1}, Y: assembly.Vec{Y: 1}, Z: assembly.Vec{X: -1}}
	for _, c := range []struct {
		corners     []plan.Corner
		front, back bool
	}{{nil, true, true}, {[]plan.Corner{{Side: "front"}}, true, false}, {[]plan.Corner{{Side: "back"}}, false, true}, {[]plan.Corner{{Side: "front"}, {Side: "back"}}, true, true}} {
		there := onFaceOf(along, &plan.JointPlan{Weld: &plan.WeldPlan{DiameterMm: 36, Corners: c.corners}}, nil, body)
		if there(plan.XY{XMm: 14}) != c.front || there(plan.XY{XMm: -2}) != c.back {
			t.Errorf("%v: front %v, back %v", c.corners, there(plan.XY{XMm: 14}), there(plan.XY{XMm: -2}))
		}
	}
}

// TestSmallDrawing: what the steps are drawn with, by hand; cuboids lie askew of nothing.
func TestSmallDrawing(t *testing.T) {
	t.Parallel()
	v := func(x, y, z float64) assembly.Vec { return assembly.Vec{X: x, Y: y, Z: z} }
	cuboid := func(low, high, at assembly.Vec) *assembly.Body {
		return &assembly.Body{Solid: assembly.Of(assembly.Cuboid(low, high)), Pose: assembly.Move(at)}
	}
	xys := func(c ...float64) (out []plan.XY) {
		for i := 0; i < len(c); i += 2 {
			out = append(out, plan.XY{XMm: c[i], YMm: c[i+1]})
		}
		return out
	}
	bar := cuboid(v(-50, -10, -20), v(50, 10, 0), v(100, 0, 0)) // from 50 to 150
	length := func(mm float64) parts.Length { return parts.Length{Mm: mm, Pos: parts.Pos{Line: 1}} }
	sling := func(a, b float64) []assembly.Vec {
		return []assembly.Vec{assembly.AxisY.Times(a), assembly.AxisY.Times(b)}
	}
	tall := func(centre float64) *hung {
		return &hung{drawing: &drawing{Stage: &machine.Stage{Machine: &machine.Machine{Stand: &stand.Stand{Up: assembly.AxisY}}}}, Group: assembly.Group{Centre: assembly.AxisY.Times(centre)}}
	}
	falls := func(wide, high float64) float64 { // a steel block on its foot
		b := cuboid(v(-wide/2, -100, 0), v(wide/2, 100, high), assembly.Vec{})
		b.DensityKgM3 = 7850
		return tips([]assembly.Body{*b}, assembly.AxisZ)
	}
	catches := func(mm float64, at assembly.Vec, size float64) bool { // a strap of 50 round a beam of 20 × 20 along x, beside a cube
		h := &hung{drawing: &drawing{Stage: &machine.Stage{}}, along: assembly.AxisX, strapMm: 50, bodies: []assembly.Body{*cuboid(v(-300, -10, -10), v(300, 10, 10), assembly.Vec{})}}
		h.others = []assembly.Body{*cuboid(v(-size/2, -size/2, -size/2), v(size/2, size/2, size/2), at)}
		return h.caught(mm)
	}
	mitred := &parts.Bar{Length: length(400), Width: length(50)}
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"worse of two falls", []float64{worse(5, 7), worse(7, 5), worse(0, 7), worse(5, 0), worse(0, 0)}, []float64{5, 5, 7, 5, 0}},
		// tan 11° is 0.1944: 100 over the middle of its foot, 19.44 to its edge.
		{"what stands to 11°, and falls before", []float64{falls(38.9, 200), falls(38.8, 200), falls(7, 200), falls(2, 200), falls(200, 38.9)}, []float64{0, 10, 2, 1, 0}},
		{"a strap that something 5 beside it catches", []bool{catches(0, v(0, 19.9, 0), 10), catches(0, v(0, 20.1, 0), 10), catches(100, v(0, 19.9, 0), 10), catches(100, v(70.1, 19.9, 0), 10), catches(100, v(69.9, 19.9, 0), 10), catches(-100, v(-129.9, 0, 19.9), 10), catches(-100, v(-130.1, 0, 19.9), 10), catches(0, v(0, 0, 0), 10)}, []bool{true, false, false, true, false, true, false, false}},
		{"between two boxes", between(bar.Box(), cuboid(v(0, 4, 30), v(20, 50, 60), v(140, 0, 0)).Box()), v(145, 7, 15)},
		{"the centre over the lower place of a sling", []float64{tall(25).overMm(sling(10, 30)), tall(25.2).overMm(sling(30, 10)), tall(9).overMm(sling(30, 10))}, []float64{15, 16, 0}},
		{"the long points of a bar", []assembly.Vec{longPoint(mitred, parts.LeftEnd), longPoint(mitred, parts.RightEnd)}, []assembly.Vec{v(-200, 25, 0), v(200, 25, 0)}},
		{"diagonals", diagonals(xys(0, 0, 40, 30, 40, 0, 0, 30)), [][2]plan.XY{{xys(0, 0)[0], xys(40, 30)[0]}, {xys(40, 0)[0], xys(0, 30)[0]}}}, {"diagonals in order", diagonals(xys(0, 0, 40, 0, 40, 30, 0, 30)), [][2]plan.XY{{xys(0, 0)[0], xys(40, 30)[0]}, {xys(40, 0)[0], xys(0, 30)[0]}}}, {"no diagonals of three", len(diagonals(xys(0, 0, 1, 0, 1, 1))), 0},
	} {
		if !reflect.DeepEqual(c.got, c.want) {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
}
