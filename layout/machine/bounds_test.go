package machine

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// Along each edge of a plate of 8 × 6 × 4 that stands on it, every 2 mm, the fillets of leg 1 lie
// out from both faces and in from the edge: in their middle and near both toes.
func TestBeadLine(t *testing.T) {
	t.Parallel()
	plate := assembly.Body{ID: "p", Solid: assembly.Of(assembly.Cuboid(assembly.Vec{X: 10, Y: 20, Z: -4}, assembly.Vec{X: 18, Y: 26})), Pose: assembly.Move(assembly.Vec{X: 100})}
	if line, _ := beadLine(&plate, "bottom", 2); math.Abs(line[0].Z-0.9) > 1e-9 || math.Abs(line[0].Y-20.9) > 1e-9 {
		t.Errorf("of a leg of 2 the middle lies 0.9 out and up: %v", line[0])
	}
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
		if _, feet := beadLine(&plate, edge, 2); len(feet) != len(want) || math.Abs(feet[0].Z-0.9) > 1e-9 || feet[0].Sub(at(0, -2*stand.SurfaceMm)).Len() > 0.9+1e-9 {
			t.Errorf("%s: the foot of a fillet of 2 lies under it, 0.45 × 2 out: %v", edge, feet[0])
		}
		if got, _ := beadLine(&plate, edge, 1); !slices.EqualFunc(got, want, func(a, b assembly.Vec) bool { return a.Sub(b).Len() < 1e-9 }) {
			t.Errorf("%s: %v, want %v", edge, got, want)
		}
	}
}

// TestSmallGeometry: what is found is worked out with, by hand; cuboids lie askew of nothing.
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
	plate := cuboid(v(-50, -40, -10), v(50, 40, 0), v(7, 8, 9))
	stands := func(x, y, z float64) parts.Face { // a cube of 10, from the middle of the plate's front
		face, ok := facing(plate, cuboid(v(-5, -5, -5), v(5, 5, 5), v(7+x, 8+y, 9+z)))
		if ok != (face != "") {
			t.Errorf("%g, %g, %g: on %q is %v", x, y, z, face, ok)
		}
		return face
	}
	on := func(thick float64) [2]int { // 8 × 8 in rows of 4, whose middles lie at 1, 3, 5 and 7: one to just over 5 and 7 on one from 0 to 4
		own, on := (&fitting{plane: assembly.Move(assembly.Vec{}), size: v(8, 8, 0), rows: 4, holds: cuboid(assembly.Vec{}, v(4, 8, 1), assembly.Vec{})}).lies(cuboid(v(0, 0, -thick), v(5.05, 7.05, 0), assembly.Vec{}))
		return [2]int{own, on}
	}
	around := true // a grain of 1, 5 off, within 6 and not within 4
	for k := range 27 {
		way := v(float64(k%3-1), float64(k/3%3-1), float64(k/9-1))
		grain := newReach([]assembly.Body{*cuboid(v(-0.5, -0.5, -0.5), v(0.5, 0.5, 0.5), way.Unit().Times(5))})
		around = around && (way.Len() == 0 || !grain.roomy(assembly.Vec{}, 6) && grain.roomy(assembly.Vec{}, 4))
	}
	seats := []seat{{geom.Between(0, 10), ""}, {geom.Between(30, 50), ""}}
	carries := func(sum float64, s ...seat) bool { return (&fitting{}).carried(s, sum) }
	if lowest, ok := Of(&parts.Job{}, nil, nil).floor(); lowest >= 0 || ok {
		t.Errorf("nothing stands on %d", lowest)
	}
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"places along a slot of 30 × 10", alongSlot(plan.XY{XMm: 10}, 5), xys(-10, 0, -5, 0, 0, 0, 5, 0, 10, 0)}, {"along a slanting one", alongSlot(plan.XY{XMm: 3, YMm: 4}, 3), xys(-3, -4, -1.5, -2, 0, 0, 1.5, 2, 3, 4)}, {"along no slot", alongSlot(plan.XY{}, 5), xys(0, 0, 0, 0)},
		{"beside one another along x", CommonMm(bar, cuboid(v(0, 0, 0), v(80, 5, 5), v(120, 0, 0))), 30.0}, {"along y", CommonMm(bar, cuboid(v(0, -30, 0), v(5, 30, 5), v(148, 0, 0))), 20.0}, {"along z", CommonMm(bar, cuboid(v(0, 0, -100), v(5, 5, 0), v(150, 10, -4))), 16.0},
		{"the faces of a box are in it", edges, []bool{true, true, false, false, false, false, false, false}},
		{"from the farther end", []float64{fromEnds(bar, v(60, 3, 3)), fromEnds(bar, v(149, 3, 3))}, []float64{90, 99}},
		{"seats that swap", []bool{carries(10, seats[0]), carries(15, seats[0]), carries(15.1, seats[0]), carries(5, seats[0]), carries(4.9, seats[0]), carries(50, seats...), carries(70, seats...)}, []bool{true, true, false, true, false, true, false}},
		{"seats of two bearings", []bool{carries(50, seat{geom.Between(0, 20), "a"}, seat{geom.Between(30, 50), "a"}), carries(50, seat{geom.Between(0, 20), "a"}, seat{geom.Between(30, 50), "b"}), carries(50, seat{geom.Between(0, 20), "a"}, seat{geom.Between(40, 60), "a"}), carries(49, seat{geom.Between(0, 20), "a"}, seat{geom.Between(40, 60), "a"})}, []bool{true, false, true, false}},
		// 12 · (1 − cos 5°) = 0.046 and 12 · (1 − cos 85°) = 10.954; 4 deep in a side of 8.
		{"the face that it stands on, to half a millimetre", []parts.Face{stands(0, 0, 5), stands(0, 0, 5.49), stands(0, 0, 5.51), stands(0, 0, 4.51), stands(0, 0, 4.49), stands(0, 0, -15.49), stands(0, 0, -15.51), stands(0, 0, -14.49)}, []parts.Face{"front", "front", "", "front", "", "back", "", ""}},
		{"as far as its edges", []parts.Face{stands(55, 0, 5), stands(55.1, 0, 5), stands(-55, 0, 5), stands(-55.1, 0, 5), stands(0, 45, 5), stands(0, 45.1, 5), stands(0, -45, 5), stands(0, -45.1, 5)}, []parts.Face{"front", "", "front", "", "front", "", "front", ""}},
		{"metal on any side of a place", around, true},
		{"places that lie on a seat, half a millimetre deep", [][2]int{on(0.6), on(0.4)}, [][2]int{{12, 8}, {0, 0}}},
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

// titled is a part of which only its name and title are known; none of it stands.
func titled(name, title string) *part.Model {
	return &part.Model{Out: &plan.PartPlan{Title: title}, Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{Name: parts.Text{Value: name}}}}}}
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
	}{{"inside", 10, "bar", true}, {"of another joint", 10, "other", false}, {"its top stands out", 17, "bar", false}, {"its seat lies under it", -22, "bar", false}, {"clear of it", 30, "bar", false}, {"of the part itself", 10, "a", false}, {"of its mate", 10, "b", false}} {
		m := Of(&parts.Job{}, []*part.Model{titled("bar", "Bar")}, nil)
		m.Roles["s"], m.Of["bar#1"] = stand.Role{Kind: stand.Screw, Joint: words.Either(c.of == "other", "k", "j")}, parts.Instance{Part: c.of, Copy: 1}
		m.Bodies = []assembly.Body{{ID: "s", Solid: head, Pose: assembly.Move(assembly.Vec{Z: c.z})}}
		p, ok := m.headIn(&plan.JointPlan{Name: "j", A: plan.JointEnd{Part: "a"}, B: plan.JointEnd{Part: "b"}}, []assembly.Body{bar})
		if ok != c.want || ok && (p.Kind != plan.HeadShutIn || p.Args[2].Value != 100) {
			t.Errorf("%s: %v %+v", c.name, ok, p)
		}
	}
}

// TestHooded: a folded part that a later joint brings hoods the heads of one that lie in its box, seat and top.
func TestHooded(t *testing.T) {
	t.Parallel()
	head := assembly.Of(assembly.Cuboid(assembly.Vec{X: -5, Y: -5, Z: -30}, assembly.Vec{X: 5, Y: 5, Z: 6}))
	bolt, hood := &plan.JointPlan{Name: "j", A: plan.JointEnd{Part: "a", Copy: 1}, B: plan.JointEnd{Part: "b", Copy: 1}}, &plan.JointPlan{Name: "k", A: plan.JointEnd{Part: "hood", Copy: 1}, B: plan.JointEnd{Part: "a", Copy: 1}}
	for _, c := range []struct {
		name  string
		kind  parts.Kind
		order []*plan.JointPlan
		of    string // whose screw it is
		z     float64
		want  []string
	}{
		{"under it", parts.Folded, []*plan.JointPlan{bolt, hood}, "j", 10, []string{"Hood"}}, {"it is there before", parts.Folded, []*plan.JointPlan{hood, bolt}, "j", 10, nil}, {"a plate", parts.Plate, []*plan.JointPlan{bolt, hood}, "j", 10, nil},
		{"a screw of the other", parts.Folded, []*plan.JointPlan{bolt, hood}, "k", 10, nil}, {"over it", parts.Folded, []*plan.JointPlan{bolt, hood}, "j", 55, nil},
	} {
		r := titled("hood", "Hood")
		r.Part.Kind, r.Part.Quantity = c.kind, 1
		m := Of(&parts.Job{}, []*part.Model{r}, nil)
		m.Joints, m.Of["hood#1"], m.Roles["s"] = c.order, parts.Instance{Part: "hood", Copy: 1}, stand.Role{Kind: stand.Screw, Joint: c.of}
		m.Bodies = []assembly.Body{{ID: "hood#1", Solid: assembly.Of(assembly.Cuboid(assembly.Vec{X: -50, Y: -50}, assembly.Vec{X: 50, Y: 50, Z: 60})), Pose: assembly.Still}, {ID: "s", Solid: head, Pose: assembly.Move(assembly.Vec{Z: c.z})}}
		bolt.N = slices.Index(c.order, bolt) + 1
		if got := m.Hooded(bolt); !slices.Equal(got, c.want) {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}

// What comes to lie elsewhere the other way round is named, and all of it together where nothing
// else comes; that it lies there breaks no rule of the job.
func TestElsewhere(t *testing.T) {
	t.Parallel()
	m := Of(&parts.Job{}, []*part.Model{titled("a", "Arm"), titled("b", "Boss")}, nil)
	m.Of = map[string]parts.Instance{"a#1": {Part: "a", Copy: 1}, "b#1": {Part: "b", Copy: 1}}
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
	plate := titled("plate", "Plate")
	plate.Part.Name.Pos = at(3)
	m := Of(&parts.Job{File: "job.yaml", Loose: []parts.Loose{{}, {Part: named("lever", 7)}, {Pos: at(8)}}, Joints: []*parts.Joint{{Name: parts.Text{Value: "j"}, Pos: at(9)}}}, []*part.Model{plate}, nil)
	m.Of = map[string]parts.Instance{"lever#1": {Part: "lever"}, "plate#1": {Part: "plate"}, "rod#1": {Part: "rod"}}
	m.Roles = map[string]stand.Role{"seal": {On: "plate#1"}, "motor": {Kind: stand.Standing, On: "plate#1", Loose: 2}, "screw": {Kind: stand.Screw, Joint: "j"}}
	for want, ids := range map[int][]string{9: {"j", "rod#1", "screw"}, 7: {"j", "rod#1", "lever#1"}, 8: {"j", "rod#1", "motor"}, 3: {"", "seal", "rod#1"}, 1: {"", "rod#1", "seal"}} {
		if got := m.posAt(ids[0], ids[1:]...); got != at(want) {
			t.Errorf("%q: line %d, want %d", ids, got.Line, want)
		}
	}
}

// TestBetweenRadii: of steps of 30, 25 and 30 across and one of 36 metal is looked at in the middle of what lies between them, from
// their axis on, and 1 outside of them.
func TestBetweenRadii(t *testing.T) {
	t.Parallel()
	shaft, arm := titled("shaft", "Shaft"), titled("arm", "Arm")
	for _, mm := range []float64{30, 25, 30} {
		shaft.Steps = append(shaft.Steps, part.Step{Size: part.Sized{NominalMm: mm}})
	}
	arm.Steps = []part.Step{{Inside: true, Size: part.Sized{NominalMm: 36}}}
	m := Of(&parts.Job{}, []*part.Model{shaft, arm}, nil)
	m.Of = map[string]parts.Instance{"shaft#1": {Part: "shaft", Copy: 1}, "arm#1": {Part: "arm", Copy: 1}}
	if got := m.betweenRadii([]assembly.Body{{ID: "shaft#1"}, {ID: "arm#1"}}); !slices.Equal(got, []float64{6.25, 13.75, 16.5, 19}) {
		t.Error(got)
	}
}

// TestScrewsOf: the screws and the nuts of a joint are named as one, anything else by itself.
func TestScrewsOf(t *testing.T) {
	t.Parallel()
	m := Of(&parts.Job{}, nil, nil)
	m.Roles = map[string]stand.Role{"screw": {Kind: stand.Screw, Joint: "j"}, "nut": {Kind: stand.Nut, Joint: "j"}, "seal": {Kind: stand.Seal, Joint: "j"}, "motor": {Kind: stand.Standing, Joint: "j"}}
	for id, want := range map[string]string{"screw": "j screws", "nut": "j screws", "seal": "seal", "motor": "motor", "plate#1": "plate#1"} {
		if got := m.screwsOf(id); got != want {
			t.Errorf("%s: %q", id, got)
		}
	}
}

// TestKnownTraps: what a joint says itself of a turn, either way round, holds for what comes within half a degree of it; what it says of
// another part instead is of no turn.
func TestKnownTraps(t *testing.T) {
	t.Parallel()
	f := &fitting{j: &plan.JointPlan{Traps: []plan.Trap{{TurnDeg: 90}, {TurnDeg: 180, OtherWay: true}, {TurnDeg: 45, Instead: "x"}}}}
	for _, c := range []struct {
		round bool
		deg   float64
		want  bool
	}{{false, 90, true}, {true, 90, false}, {true, 180, true}, {false, 180, false}, {false, 45, false}, {true, 45, false}} {
		if got := f.known(c.round, func(deg float64) bool { return deg == c.deg }); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// TestIsFit: the limits of a fit are a size's own, of a round without a thread, and less than a tenth apart.
func TestIsFit(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		change func(s *part.Sized)
		want   bool
	}{
		"a fit": {func(*part.Sized) {}, true}, "without limits": {func(s *part.Sized) { s.Limited = false }, false}, "of the class": {func(s *part.Sized) { s.ByClass = true }, false},
		"as bought": {func(s *part.Sized) { s.AsBought = true }, false}, "a thread": {func(s *part.Sized) { s.Thread = &threads.Thread{} }, false}, "wide limits": {func(s *part.Sized) { s.MaxMm = 25.1 }, false},
	} {
		s := part.Sized{NominalMm: 25, Limited: true, MinMm: 25, MaxMm: 25.09}
		if c.change(&s); isFit(s) != c.want {
			t.Errorf("%s: %v", name, !c.want)
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

// TestHeldByAHole: a step of 10 stands 30 over the mouth of a hole of 20, 40 under its floor, or turned over 40 over its mouth: it lies
// in the hole where it reaches more than half a millimetre into it, as far as it travels towards its front or its back, within half
// a millimetre of the axis and along it.
func TestHeldByAHole(t *testing.T) {
	t.Parallel()
	h := &mouth{out: assembly.AxisZ, deepMm: 20}
	over, under, turned := assembly.Move(assembly.Vec{Z: 40}), assembly.Move(assembly.Vec{Z: -60}), assembly.Move(assembly.Vec{Z: 40}).Of(assembly.Rotate(assembly.AxisX, 180))
	in := assembly.Move(assembly.Vec{Z: 5})
	for _, c := range []struct {
		name        string
		pose        assembly.Pose
		front, back float64 // of its travel
		want        bool
	}{
		{"over it", over, 0, 0, false}, {"back into it", over, 0, 30.6, true}, {"back to its mouth", over, 0, 30.4, false}, {"away from it", over, 60, 0, false},
		{"under it", under, 0, 0, false}, {"front into it", under, 40.6, 0, true}, {"front to its floor", under, 40.4, 0, false}, {"back away from it", under, 0, 60, false},
		{"turned", turned, 40.6, 0, true}, {"turned, to its mouth", turned, 40.4, 0, false}, {"turned, away from it", turned, 0, 60, false},
		{"half in it", in, 0, 0, true}, {"in by 0.4", assembly.Move(assembly.Vec{Z: 9.6}), 0, 0, false}, {"in by 0.6", assembly.Move(assembly.Vec{Z: 9.4}), 0, 0, true},
		{"through its floor by all but 0.6", assembly.Move(assembly.Vec{Z: -19.4}), 0, 0, true}, {"through its floor by all but 0.4", assembly.Move(assembly.Vec{Z: -19.6}), 0, 0, false},
		{"0.5 beside it", in.Shifted(assembly.Vec{X: 0.5}), 0, 0, true}, {"0.54 beside it", in.Shifted(assembly.Vec{Y: 0.54}), 0, 0, false},
		{"leaning by 0.95e-6", in.Of(assembly.Rotate(assembly.AxisX, 0.95e-6*180/math.Pi)), 0, 0, true}, {"leaning by 1.05e-6", in.Of(assembly.Rotate(assembly.AxisX, 1.05e-6*180/math.Pi)), 0, 0, false},
	} {
		if got := h.holds(c.pose, geom.Span{ToMm: 10}, &parts.Travels{Front: parts.Length{Mm: c.front}, Back: parts.Length{Mm: c.back}}); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
		if c.front+c.back == 0 && h.holds(c.pose, geom.Span{ToMm: 10}, nil) != c.want {
			t.Errorf("%s, which does not travel: %v", c.name, !c.want)
		}
	}
}

// TestBesideAndHeld: a place 3 and 4 beside a hole is 5 off its axis, however far along it; beside a slot it is as far off the nearest of its
// middle line; and a body holds places that lie deeper in it than on its surface.
func TestBesideAndHeld(t *testing.T) {
	t.Parallel()
	v := func(x, y, z float64) assembly.Vec { return assembly.Vec{X: x, Y: y, Z: z} }
	for _, c := range []struct {
		at   []assembly.Vec
		run  assembly.Vec
		want float64
	}{
		{[]assembly.Vec{{}}, v(0, 0, 0), 5}, {[]assembly.Vec{{}}, v(0.8, 0, 0), math.Hypot(2.2, 4)}, {[]assembly.Vec{{}}, v(-0.8, 0, 0), math.Hypot(2.2, 4)},
		{[]assembly.Vec{{}}, v(6, 0, 0), 4}, {[]assembly.Vec{{}}, v(0, 3, 0), math.Hypot(3, 1)}, {[]assembly.Vec{v(0, 0, 0), v(3, 0, 20)}, v(0, 0, 0), 4},
	} {
		if got := beside(&stand.Faced{At: c.at, Run: c.run}, v(3, 4, 7), assembly.AxisZ); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%+v: %g off", c, got)
		}
	}
	block := &assembly.Body{Solid: assembly.Of(assembly.Cuboid(assembly.Vec{}, v(10, 10, 10))), Pose: assembly.Move(v(100, 0, 0))}
	for x, want := range map[float64]bool{105: true, 110: false, 110.5: false, 109.991: false, 109.989: true, 5: false} {
		if holdsAny(block, []assembly.Vec{v(200, 0, 0), v(x, 5, 5)}) != want {
			t.Errorf("held at %g: %v", x, !want)
		}
	}
}

// TestNextOf: of the ways along a chain the one that loses least goes on, of those that lead somewhere and have not gone on yet.
func TestNextOf(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		ways []wayTo
		want int
	}{
		{[]wayTo{{least: 3}, {least: 2}, {least: 4}}, 1}, {[]wayTo{{least: 3}, {least: 2, done: true}, {least: 4}}, 0}, {[]wayTo{{least: inf}, {least: 0}}, 1}, {[]wayTo{{least: inf}, {least: 0, done: true}}, -1},
	} {
		if got := nextOf(c.ways); got != c.want {
			t.Errorf("%+v: %d", c.ways, got)
		}
	}
}
