package machine

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// Along each edge of a plate of 8 × 6 × 4 that stands on it, every 2 mm, the fillets of leg 1 lie
// out from both faces and in from the edge: in their middle and near both toes.
func TestBeadLine(t *testing.T) {
	t.Parallel()
	plate := assembly.Body{ID: "p", Solid: assembly.Of(assembly.Cuboid(assembly.Vec{X: 10, Y: 20, Z: -4}, assembly.Vec{X: 18, Y: 26})), Pose: assembly.Move(assembly.Vec{X: 100})}
	for edge, at := range map[string]func(t, up float64) assembly.Vec{
		"bottom": func(t, up float64) assembly.Vec { return assembly.Vec{X: 110 + t, Y: 20 + up} },
		"top":    func(t, up float64) assembly.Vec { return assembly.Vec{X: 110 + t, Y: 26 - up} },
		"left":   func(t, up float64) assembly.Vec { return assembly.Vec{X: 110 + up, Y: 20 + t} },
		"right":  func(t, up float64) assembly.Vec { return assembly.Vec{X: 118 - up, Y: 20 + t} },
	} {
		long, want := 8.0, []assembly.Vec{}
		if edge == "left" || edge == "right" {
			long = 6
		}
		for _, c := range [][2]float64{{0.45, 0.45}, {0.1, 0.8}, {0.8, 0.1}} {
			for _, z := range []float64{c[0], -4 - c[0]} {
				for t := 0.0; t <= long; t += 2 {
					want = append(want, at(t, c[1]).Add(assembly.Vec{Z: z}))
				}
			}
		}
		if _, feet := beadLine(&plate, edge, 2); len(feet) != len(want) || math.Abs(feet[0].Z-0.9) > 1e-9 || feet[0].Sub(at(0, -2*surfaceMm)).Len() > 0.9+1e-9 {
			t.Errorf("%s: the foot of a fillet of 2 lies under it, 0.45 × 2 out: %v", edge, feet[0])
		}
		if got, _ := beadLine(&plate, edge, 1); !slices.EqualFunc(got, want, func(a, b assembly.Vec) bool { return a.Sub(b).Len() < 1e-9 }) {
			t.Errorf("%s: %v, want %v", edge, got, want)
		}
	}
}

// TestSmallGeometry: what the steps are worked out with, by hand; cuboids lie askew of nothing.
func TestSmallGeometry(t *testing.T) {
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
	edges := []bool{}
	for _, p := range []assembly.Vec{v(50, -10, -20), v(150, 10, 0), v(49.9, 0, -5), v(150.1, 0, -5), v(100, -10.1, -5), v(100, 10.1, -5), v(100, 0, -20.1), v(100, 0, 0.1)} {
		edges = append(edges, boxed(bar, p))
	}
	length := func(mm float64) parts.Length { return parts.Length{Mm: mm, Pos: parts.Pos{Line: 1}} }
	shift := func(low, high parts.Length) [2]any {
		mm, open := along(low, high, [2]float64{-5, 25}, [2]float64{100, 300})
		return [2]any{mm, open}
	}
	sling := func(a, b float64) assembly.Sling {
		return assembly.Sling{Points: [2]assembly.Vec{assembly.AxisY.Times(a), assembly.AxisY.Times(b)}}
	}
	plate := cuboid(v(-50, -40, -10), v(50, 40, 0), v(7, 8, 9))
	stands := func(x, y, z float64) parts.Face { // a cube of 10, from the middle of the plate's front
		face, ok := facing(plate, cuboid(v(-5, -5, -5), v(5, 5, 5), v(7+x, 8+y, 9+z)))
		if ok != (face != "") {
			t.Errorf("%g, %g, %g: on %q is %v", x, y, z, face, ok)
		}
		return face
	}
	on := func(thick float64) [2]int { // 8 × 8 in rows of 4: one from 0 to 6 on one from 0 to 4
		own, on := (&fitting{plane: assembly.Move(assembly.Vec{}), size: v(8, 8, 0), rows: 4, holds: cuboid(assembly.Vec{}, v(4, 8, 1), assembly.Vec{})}).lies(cuboid(v(0, 0, -thick), v(6, 8, 0), assembly.Vec{}))
		return [2]int{own, on}
	}
	tall := func(centre float64) *hung {
		return &hung{stage: &stage{Machine: &Machine{Up: assembly.AxisY}}, Group: assembly.Group{Centre: assembly.AxisY.Times(centre)}}
	}
	falls := func(wide, high float64) float64 { // a steel block on its foot
		b := cuboid(v(-wide/2, -100, 0), v(wide/2, 100, high), assembly.Vec{})
		b.DensityKgM3 = 7850
		return tips([]assembly.Body{*b}, assembly.AxisZ)
	}
	catches := func(mm float64, at assembly.Vec, size float64) bool { // a strap of 50 round a beam of 20 × 20 along x, beside a cube
		h := &hung{stage: &stage{}, along: assembly.AxisX, strapMm: 50, bodies: []assembly.Body{*cuboid(v(-300, -10, -10), v(300, 10, 10), assembly.Vec{})}}
		h.others = []assembly.Body{*cuboid(v(-size/2, -size/2, -size/2), v(size/2, size/2, size/2), at)}
		return h.caught(mm)
	}
	seats := []seat{{0, 10, ""}, {30, 50, ""}}
	carries := func(sum float64, s ...seat) bool { return (&fitting{}).carried(s, sum) }
	if lowest, ok := (&Machine{}).floor(); lowest >= 0 || ok {
		t.Errorf("nothing stands on %d", lowest)
	}
	mitred := &parts.Bar{Length: length(400), Width: length(50)}
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"places along a slot of 30 × 10", alongSlot(plan.XY{XMm: 10}, 5), xys(-10, 0, -5, 0, 0, 0, 5, 0, 10, 0)}, {"along a slanting one", alongSlot(plan.XY{XMm: 3, YMm: 4}, 3), xys(-3, -4, -1.5, -2, 0, 0, 1.5, 2, 3, 4)}, {"along no slot", alongSlot(plan.XY{}, 5), xys(0, 0, 0, 0)},
		{"worse of two falls", []float64{worse(5, 7), worse(7, 5), worse(0, 7), worse(5, 0), worse(0, 0)}, []float64{5, 5, 7, 5, 0}},
		// tan 11° is 0.1944: 100 over the middle of its foot, 19.44 to its edge.
		{"what stands to 11°, and falls before", []float64{falls(38.9, 200), falls(38.8, 200), falls(7, 200), falls(2, 200), falls(200, 38.9)}, []float64{0, 10, 2, 1, 0}},
		{"a strap that something 5 beside it catches", []bool{catches(0, v(0, 19.9, 0), 10), catches(0, v(0, 20.1, 0), 10), catches(100, v(0, 19.9, 0), 10), catches(100, v(70.1, 19.9, 0), 10), catches(100, v(69.9, 19.9, 0), 10), catches(-100, v(-129.9, 0, 19.9), 10), catches(-100, v(-130.1, 0, 19.9), 10), catches(0, v(0, 0, 0), 10)}, []bool{true, false, false, true, false, true, false, false}},
		{"beside one another along x", commonMm(bar, cuboid(v(0, 0, 0), v(80, 5, 5), v(120, 0, 0))), 30.0}, {"along y", commonMm(bar, cuboid(v(0, -30, 0), v(5, 30, 5), v(148, 0, 0))), 20.0}, {"along z", commonMm(bar, cuboid(v(0, 0, -100), v(5, 5, 0), v(150, 10, -4))), 16.0},
		{"the faces of a box are in it", edges, []bool{true, true, false, false, false, false, false, false}},
		{"from the farther end", []float64{fromEnds(bar, v(60, 3, 3)), fromEnds(bar, v(149, 3, 3))}, []float64{90, 99}},
		{"between two boxes", between(bar.Box(), cuboid(v(0, 4, 30), v(20, 50, 60), v(140, 0, 0)).Box()), v(145, 7, 15)},
		{"the side that looks up most", []string{sideOf(bar, v(0, 0, 1)), sideOf(bar, v(0, 0, -1)), sideOf(bar, v(0.1, 0.8, 0)), sideOf(bar, v(0, -2, 1)), sideOf(bar, v(3, 2, 1)), sideOf(bar, v(-1, 0, 0.5)), sideOf(bar, v(1, 1, 1)), sideOf(bar, v(0, 0, 0))}, []string{"front", "back", "top", "bottom", "right", "left", "front", ""}},
		{"a sling from its low side, its high one, the middle", [][2]any{shift(length(20), parts.Length{}), shift(parts.Length{}, length(20)), shift(parts.Length{}, parts.Length{})}, [][2]any{{125.0, false}, {255.0, false}, {190.0, true}}},
		{"the centre over the lower place of a sling", []float64{tall(25).overMm(sling(10, 30)), tall(25.2).overMm(sling(30, 10)), tall(9).overMm(sling(30, 10))}, []float64{15, 16, 0}},
		{"the long points of a bar", []assembly.Vec{longPoint(mitred, parts.LeftEnd), longPoint(mitred, parts.RightEnd)}, []assembly.Vec{v(-200, 25, 0), v(200, 25, 0)}},
		{"diagonals", diagonals(xys(0, 0, 40, 30, 40, 0, 0, 30)), [][2]plan.XY{{xys(0, 0)[0], xys(40, 30)[0]}, {xys(40, 0)[0], xys(0, 30)[0]}}}, {"diagonals in order", diagonals(xys(0, 0, 40, 0, 40, 30, 0, 30)), [][2]plan.XY{{xys(0, 0)[0], xys(40, 30)[0]}, {xys(40, 0)[0], xys(0, 30)[0]}}}, {"no diagonals of three", len(diagonals(xys(0, 0, 1, 0, 1, 1))), 0},
		{"seats that swap", []bool{carries(10, seats[0]), carries(15, seats[0]), carries(15.1, seats[0]), carries(5, seats[0]), carries(4.9, seats[0]), carries(50, seats...), carries(70, seats...)}, []bool{true, true, false, true, false, true, false}},
		{"seats of two bearings", []bool{carries(50, seat{0, 20, "a"}, seat{30, 50, "a"}), carries(50, seat{0, 20, "a"}, seat{30, 50, "b"}), carries(50, seat{0, 20, "a"}, seat{40, 60, "a"}), carries(49, seat{0, 20, "a"}, seat{40, 60, "a"})}, []bool{true, false, true, false}},
		{"the middle of a seat", (&seat{10, 50, ""}).middle(), 30.0},
		// 12 · (1 − cos 5°) = 0.046 and 12 · (1 − cos 85°) = 10.954; 4 deep in a side of 8.
		{"the face that it stands on, to half a millimetre", []parts.Face{stands(0, 0, 5), stands(0, 0, 5.49), stands(0, 0, 5.51), stands(0, 0, 4.51), stands(0, 0, 4.49), stands(0, 0, -15.49), stands(0, 0, -15.51), stands(0, 0, -14.49)}, []parts.Face{"front", "front", "", "front", "", "back", "", ""}},
		{"as far as its edges", []parts.Face{stands(55, 0, 5), stands(55.1, 0, 5), stands(-55, 0, 5), stands(-55.1, 0, 5), stands(0, 45, 5), stands(0, 45.1, 5), stands(0, -45, 5), stands(0, -45.1, 5)}, []parts.Face{"front", "", "front", "", "front", "", "front", ""}},
		{"places that lie on a seat, half a millimetre deep", [][2]int{on(0.6), on(0.4)}, [][2]int{{12, 8}, {0, 0}}},
		{"places of one part within half a millimetre, one of them turned over", distinct([]assembly.Meet{
			{ID: "1", A: "a", B: "b", OnA: assembly.Still, OnB: assembly.Still}, {ID: "2", A: "a", B: "b", OnA: assembly.Move(assembly.Vec{X: 0.4}), OnB: assembly.Still},
			{ID: "3", A: "a", B: "b", OnA: assembly.Move(assembly.Vec{X: 104}), OnB: assembly.Move(assembly.Vec{X: -104})}, {ID: "4", A: "a", B: "b", OnA: assembly.Rotate(assembly.AxisZ, 1), OnB: assembly.Still}}),
			[]assembly.Meet{{ID: "1", A: "a", B: "b", OnA: assembly.Still, OnB: assembly.Still}, {ID: "3", A: "a", B: "b", OnA: assembly.Move(assembly.Vec{X: 104}), OnB: assembly.Move(assembly.Vec{X: -104})}, {ID: "4", A: "a", B: "b", OnA: assembly.Rotate(assembly.AxisZ, 1), OnB: assembly.Still}}},
		{"steps of a cut", distinct([]assembly.Meet{{ID: "1", A: "a", B: "b"}, {ID: "2", A: "a", B: "b"}, {ID: "3", A: "a", B: "b", Free: make([]assembly.Freedom, 1)}, {ID: "4", A: "b", B: "a"}}), []assembly.Meet{{ID: "1", A: "a", B: "b"}, {ID: "3", A: "a", B: "b", Free: make([]assembly.Freedom, 1)}, {ID: "4", A: "b", B: "a"}}},
	} {
		if !reflect.DeepEqual(c.got, c.want) {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
}

// TestNear: what comes within the radius of an opening and its reach, 5 + 3, along an axis;
// the part with the opening is not asked.
func TestNear(t *testing.T) {
	t.Parallel()
	at := func(x, y, z float64) assembly.Body {
		return assembly.Body{Solid: assembly.Of(assembly.Cuboid(assembly.Vec{}, assembly.Vec{X: 1, Y: 1, Z: 1})), Pose: assembly.Move(assembly.Vec{X: 100 + x, Y: y, Z: z})}
	}
	all := []assembly.Body{at(0, 0, 0), at(7.9, 0, 0), at(8.1, 0, 0), at(-8.9, 0, 0), at(-9.1, 0, 0), at(0, 7.9, 0), at(0, 8.1, 0), at(0, -9.1, 0), at(0, 0, 7.9), at(0, 0, 8.1), at(0, 0, -9.1), at(5, 5, 5)}
	all[0].ID = "it"
	var got []int
	for _, b := range nearby(all, "it", assembly.Opening{At: assembly.Vec{X: 100}, RadiusMm: 5, ReachMm: 3}) {
		got = append(got, slices.IndexFunc(all, func(o assembly.Body) bool { return o.Pose == b.Pose }))
	}
	if want := []int{1, 3, 5, 8, 11}; !slices.Equal(got, want) {
		t.Errorf("%v are near, want %v", got, want)
	}
}

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

// TestRadialSolid: what a hole, a tapped one, a slot and a window take out of a round of 100 at 3
// o'clock, 30 from the front: as deep as said, from the outside, or from the axis where they go
// through; around along the chord of the arc, 2 · 50 · sin(20 / 100).
func TestRadialSolid(t *testing.T) {
	t.Parallel()
	const chord = 9.9335 // half of it
	for _, c := range []struct {
		shape           parts.RadialShape
		deep            float64
		thread          *threads.Thread
		from            float64
		acrossMm, along float64 // half of each
	}{
		{parts.RadialHole, 12, nil, 38, 10, 10}, {parts.RadialHole, 0, nil, 0, 10, 10}, {parts.RadialHole, 12, &threads.Thread{}, 38, 8.5, 8.5},
		{parts.RadialSlot, 5, nil, 45, chord, 15}, {parts.RadialWindow, 0, nil, 0, chord, 15}, {parts.RadialWindow, 50, nil, 0, chord, 15},
	} {
		f := &part.Radial{In: &parts.Radial{Shape: c.shape, Depth: parts.Length{Mm: c.deep}}, Size: part.Made{FinishedMm: 20, DrillMm: 17, Thread: c.thread},
			Rows: []plan.RadialRow{{Shape: string(c.shape), ClockDeg: 90, AxialMm: 30, OutsideMm: 100, AroundMm: 20, AlongMm: 30, CornerMm: 2}}}
		box := assembly.Of(radial(nil, f)...).Box()
		want := assembly.Box{Low: assembly.Vec{X: c.from, Y: -c.acrossMm, Z: -30 - c.along}, High: assembly.Vec{X: 51, Y: c.acrossMm, Z: -30 + c.along}}
		if box.Low.Sub(want.Low).Len() > 0.001 || box.High.Sub(want.High).Len() > 0.001 {
			t.Errorf("%s %g deep: %v, want %v", c.shape, c.deep, box, want)
		}
	}
}

// A head is shut in by a tube that it lies in whole, its seat and its top, and not by the two parts
// that it holds together: by hand, a tube from −20 to 20 and screws with heads of 6.
func TestHeadShutIn(t *testing.T) {
	t.Parallel()
	bar := assembly.Body{ID: "bar#1", Solid: assembly.Of(assembly.Cuboid(assembly.Vec{X: -100, Y: -20, Z: -20}, assembly.Vec{X: 100, Y: 20, Z: 20}))}
	bar.Pose = assembly.Still
	head := assembly.Of(assembly.Cuboid(assembly.Vec{X: -5, Y: -5, Z: -30}, assembly.Vec{X: 5, Y: 5, Z: 6}))
	for _, c := range []struct {
		name string
		z    float64
		of   string
		want bool
	}{{"inside", 10, "bar", true}, {"its top stands out", 17, "bar", false}, {"its seat lies under it", -22, "bar", false}, {"clear of it", 30, "bar", false}, {"of the part itself", 10, "a", false}, {"of its mate", 10, "b", false}} {
		m := &Machine{job: &parts.Job{}, roles: map[string]role{"s": {kind: aScrew, joint: "j"}}, Of: map[string]Instance{"bar#1": {c.of, 1}},
			modelOf: map[string]*part.Model{"bar": {Out: &plan.PartPlan{Title: "Bar"}, Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{}}}}}}}
		m.Bodies = []assembly.Body{{ID: "s", Solid: head, Pose: assembly.Move(assembly.Vec{Z: c.z})}}
		p, ok := m.headIn(&plan.JointPlan{Name: "j", A: plan.JointEnd{Part: "a"}, B: plan.JointEnd{Part: "b"}}, []assembly.Body{bar})
		if ok != c.want || ok && (p.Kind != plan.HeadShutIn || p.Args[2].Value != 100) {
			t.Errorf("%s: %v %+v", c.name, ok, p)
		}
	}
}

// What comes to lie elsewhere the other way round is named, and all of it together where nothing
// else comes; that it lies there breaks no rule of the job.
func TestElsewhere(t *testing.T) {
	t.Parallel()
	titled := func(s string) *part.Model {
		return &part.Model{Out: &plan.PartPlan{Title: s}, Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{}}}}}
	}
	m := &Machine{modelOf: map[string]*part.Model{"a": titled("Arm"), "b": titled("Boss")}, Of: map[string]Instance{"a#1": {"a", 1}, "b#1": {"b", 1}}}
	arm := assembly.Body{ID: "a#1", Solid: assembly.Of(assembly.Cuboid(assembly.Vec{X: 10}, assembly.Vec{X: 40, Y: 5, Z: 5})), Pose: assembly.Still}
	boss := assembly.Body{ID: "b#1", Solid: assembly.Of(assembly.Cuboid(assembly.Vec{X: 50}, assembly.Vec{X: 60, Y: 9, Z: 9})), Pose: assembly.Still}
	middle := assembly.Body{ID: "b#1", Solid: assembly.Of(assembly.Cuboid(assembly.Vec{X: -5, Y: -5}, assembly.Vec{X: 5, Y: 5, Z: 9})), Pose: assembly.Still}
	for want, movers := range map[string][]assembly.Body{"Arm": {arm, middle}, "all of it": {arm, boss}} {
		_, out := (&fitting{m: m, movers: movers}).elsewhere(assembly.Rotate(assembly.AxisZ, 180))
		if !slices.Equal(out, []plan.Out{{What: want, Elsewhere: true, Unruled: true}}) {
			t.Errorf("%s: %+v", want, out)
		}
	}
}

// TestPosAt: two bodies are found where the job lays or stands one of them, then at their joint,
// without one where the part is named that the first stands in, and else at the head of the job.
func TestPosAt(t *testing.T) {
	t.Parallel()
	at := func(line int) parts.Pos { return parts.Pos{File: "job.yaml", Line: line, Column: 1} }
	named := func(name string, line int) parts.Text { return parts.Text{Value: name, Pos: at(line)} }
	m := &Machine{
		job:     &parts.Job{File: "job.yaml", Loose: []parts.Loose{{}, {Part: named("lever", 7)}, {Pos: at(8)}}},
		Of:      map[string]Instance{"lever#1": {Part: "lever"}, "plate#1": {Part: "plate"}, "rod#1": {Part: "rod"}},
		roles:   map[string]role{"seal": {on: "plate#1"}, "motor": {kind: aStanding, on: "plate#1", loose: 2}, "screw": {kind: aScrew, joint: "j"}},
		modelOf: map[string]*part.Model{"plate": {Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{Name: named("plate", 3)}}}}}},
		jointOf: map[string]*parts.Joint{"j": {Pos: at(9)}},
	}
	for want, ids := range map[int][]string{9: {"j", "rod#1", "screw"}, 7: {"j", "rod#1", "lever#1"}, 8: {"j", "rod#1", "motor"}, 3: {"", "seal", "rod#1"}, 1: {"", "rod#1", "seal"}} {
		if got := m.posAt(ids[0], ids[1:]...); got != at(want) {
			t.Errorf("%q: line %d, want %d", ids, got.Line, want)
		}
	}
}

// TestScrewsOf: the screws and the nuts of a joint are named as one, anything else by itself.
func TestScrewsOf(t *testing.T) {
	t.Parallel()
	m := &Machine{roles: map[string]role{"screw": {kind: aScrew, joint: "j"}, "nut": {kind: aNut, joint: "j"}, "seal": {kind: aSeal, joint: "j"}, "motor": {kind: aStanding, joint: "j"}}}
	for id, want := range map[string]string{"screw": "j screws", "nut": "j screws", "seal": "seal", "motor": "motor", "plate#1": "plate#1"} {
		if got := m.screwsOf(id); got != want {
			t.Errorf("%s: %q", id, got)
		}
	}
}

// TestHolesMeet: turned by 90° every hole of A lies within half the play of one of B, across their axis.
func TestHolesMeet(t *testing.T) {
	t.Parallel()
	v := func(x, y, z float64) assembly.Vec { return assembly.Vec{X: x, Y: y, Z: z} }
	for _, c := range []struct {
		b    []assembly.Vec
		want bool
	}{
		{[]assembly.Vec{v(0, 20, 0), v(-30, 0, 0)}, true}, {[]assembly.Vec{v(-30, 0.5, 0), v(0.5, 20, 0), v(9, 9, 0)}, true}, {[]assembly.Vec{v(0.51, 20, 0), v(-30, 0, 0)}, false}, {[]assembly.Vec{v(0, 20, 0)}, false}, {[]assembly.Vec{v(0, -20, 0), v(30, 0, 0)}, false},
	} {
		f := &fitting{j: &plan.JointPlan{Bolt: &plan.BoltPlan{PlayMm: 1}}, a: []assembly.Vec{v(20, 0, 3), v(0, 30, -3)}, b: c.b}
		if got := f.meet(assembly.Rotate(assembly.AxisZ, 90)); got != c.want {
			t.Errorf("%v: %v", c.b, got)
		}
	}
}
