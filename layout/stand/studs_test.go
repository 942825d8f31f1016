package stand_test

import (
	"math"
	"strings"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/layouttest"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
)

// TestStuds: a stud of 75 stands in each hole of a plate of 12, so much of its front or its back
// through the face that meets as the joint says, the rest beyond; as many as there are, beside the middles of
// their holes where it says so.
func TestStuds(t *testing.T) {
	t.Parallel()
	const plate = "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm}\noutline: {rectangle: [120, 80]}\nholes:\n  - {name: h, face: back, at: [[30, 20], [-10, 5]], size: M10 clearance}\n"
	const stud = "part: s\nkind: turned\nquantity: 2\nmaterial: C45\nstock: {round: 16 mm, length: 80 mm}\nprofile:\n  outside: [{name: nose, thread: M10, length: 15}, {name: shank, diameter: 12, length: 40}, {name: tail, thread: M10, length: 20}]\n"
	for _, c := range []struct {
		name, stud string
		meet       parts.Face
		tip        float64
		back       bool
		at         []assembly.Vec
		z          float64
		off        []plan.XY
	}{
		{"what a joint before leaves", strings.Replace(stud, "quantity: 2", "quantity: 3", 1), parts.Back, 15, false, []assembly.Vec{{X: -30, Y: 20, Z: 3}}, 1, nil},
		{"on the front", stud, parts.Front, 15, false, []assembly.Vec{{X: -30, Y: 20, Z: -15}, {X: 10, Y: 5, Z: -15}}, -1, nil},
		{"on the back", stud, parts.Back, 15, false, []assembly.Vec{{X: -30, Y: 20, Z: 3}, {X: 10, Y: 5, Z: 3}}, 1, nil},
		{"its back on the front", stud, parts.Front, 20, true, []assembly.Vec{{X: -30, Y: 20, Z: 55}, {X: 10, Y: 5, Z: 55}}, 1, nil},
		{"its back on the back", stud, parts.Back, 60, true, []assembly.Vec{{X: -30, Y: 20, Z: -27}, {X: 10, Y: 5, Z: -27}}, -1, nil},
		{"one", strings.Replace(stud, "quantity: 2", "quantity: 1", 1), parts.Back, 15, false, []assembly.Vec{{X: -30, Y: 20, Z: 3}}, 1, nil},
		{"one, beside the middle of its hole", strings.Replace(stud, "quantity: 2", "quantity: 1", 1), parts.Back, 15, false, []assembly.Vec{{X: -28, Y: 17, Z: 3}}, 1, []plan.XY{{XMm: 2, YMm: -3}}},
	} {
		p, first := layouttest.Model(t, plate), 0
		joints := []*parts.Joint{{Name: parts.Text{Value: "j"}, Meet: parts.Meeting{Pos: parts.Pos{Line: 1}, First: c.meet}, Bolt: &parts.BoltJoint{Stud: parts.Text{Value: "s"}}}}
		if strings.Contains(c.stud, "quantity: 3") {
			first = 2
			joints = append([]*parts.Joint{{Name: parts.Text{Value: "i"}, Bolt: &parts.BoltJoint{Through: parts.JointRef{Part: "p", Copy: 2, Feature: "h"}, Stud: parts.Text{Value: "s"}}}}, joints...)
		}
		m := stand.Of(&parts.Job{Parts: []*parts.Part{p.Part}, Joints: joints}, []*part.Model{p, layouttest.Model(t, c.stud)}, nil)
		got := m.Studs(&plan.JointPlan{Name: "j", A: plan.JointEnd{Part: "p", Copy: 1, Feature: "h"}, B: plan.JointEnd{Part: "p", Copy: 2}, Bolt: &plan.BoltPlan{StudTipMm: c.tip, StudBack: c.back, OffMm: c.off}})
		if len(got) != len(c.at) {
			t.Fatalf("%s: %d studs", c.name, len(got))
		}
		for i, g := range got {
			if g.A != "p#1" || g.B != []string{"s#1", "s#2", "s#3"}[first+i] || g.OnA.At.Sub(c.at[i]).Len() > 1e-9 || math.Abs(g.OnA.Z.Z-c.z) > 1e-9 {
				t.Errorf("%s: %+v, want %v", c.name, g, c.at[i])
			}
		}
	}
}

// TestRoundInABore: a round of 40 with a collar of 50 in the bore of a plate of 100 × 60 × 12: what stands out of the faces by
// more than a quarter of a millimetre, how long both are, what stands nowhere aside, and what they turn across, by the plate's corners and by the
// axis of a round beside it.
func TestRoundInABore(t *testing.T) {
	t.Parallel()
	models := []*part.Model{
		layouttest.Model(t, "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm}\noutline: {rectangle: [100, 60]}\nbore: {diameter: 40}\n"),
		layouttest.Model(t, "part: rod\nkind: shaft\nmaterial: C45\nstock: {round: 60, length: 40}\nprofile:\n  outside: [{name: collar, diameter: 50, length: 10}, {name: body, diameter: 40, length: 20}]\n"),
	}
	plate, rod, other := plan.JointEnd{Part: "plate", Copy: 1}, plan.JointEnd{Part: "rod", Copy: 1}, plan.JointEnd{Part: "rod", Copy: 2}
	for _, c := range []struct{ front, wantFront, wantBack float64 }{
		{-10, 50, 40}, {-10.2, 50, 40}, {-9.8, 50, 40}, {-0.26, 50, 40}, {-0.24, 0, 40}, {5, 0, 50}, {12.2, 0, 50}, {-17.74, 40, 40}, {-17.76, 40, 0}, {-18.5, 40, 0},
	} {
		joints := []*plan.JointPlan{{Name: "j", Placed: []plan.Placed{{Part: "plate", Copy: 1}, {Part: "rod", Copy: 1, FrontMm: c.front}}}}
		s := stand.NewSeams(&parts.Job{Joints: []*parts.Joint{{Name: parts.Text{Value: "j"}}}}, models)
		if got := s.BoreMm(joints, plate, rod, 40); got["front"] != c.wantFront || got["back"] != c.wantBack {
			t.Errorf("its front at %g: %v", c.front, got)
		}
		if got := s.BoreMm(joints, plate, other, 40); got != nil {
			t.Errorf("of what stands nowhere: %v", got)
		}
		if got, want := s.LongMm(joints, plate, []plan.JointEnd{rod, plate, other}), max(12, c.front+30)-min(0, c.front); math.Abs(got-want) > 1e-9 {
			t.Errorf("its front at %g: %g long, want %g", c.front, got, want)
		}
		if got := s.LongMm(joints, plate, []plan.JointEnd{other}); got != 0 {
			t.Errorf("what stands nowhere is %g long", got)
		}
		for _, about := range []plan.JointEnd{plate, rod} {
			if got := s.SwingMm(joints, about, []plan.JointEnd{rod, plate, other}); math.Abs(got-2*math.Hypot(50, 30)) > 1e-6 {
				t.Errorf("turns across %g", got)
			}
		}
		if got := s.SwingMm(joints, plate, []plan.JointEnd{rod}); math.Abs(got-50) > 0.1 {
			t.Errorf("the rod turns across %g", got)
		}
	}
}

// TestGapBetween: how far a collar of 50 stands behind the plate of 12 with a bore of 40, to 0.2; nothing of what stands nowhere.
func TestGapBetween(t *testing.T) {
	t.Parallel()
	models := []*part.Model{
		layouttest.Model(t, "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm}\noutline: {rectangle: [100, 60]}\nbore: {diameter: 40}\n"),
		layouttest.Model(t, "part: rod\nkind: shaft\nmaterial: C45\nstock: {round: 60, length: 40}\nprofile:\n  outside: [{name: collar, diameter: 50, length: 30}]\n"),
	}
	plate, rod := plan.JointEnd{Part: "plate", Copy: 1}, plan.JointEnd{Part: "rod", Copy: 1}
	for _, c := range []struct {
		front, want float64
		a, b        plan.JointEnd
		tied        bool
	}{
		{12, 0, rod, plate, true}, {13, 1, rod, plate, true}, {52, 40, rod, plate, true}, {52, 40, plate, rod, true}, {-40, 10, plate, rod, true},
		{52, 0, plate, plan.JointEnd{Part: "rod", Copy: 2}, false}, {52, 0, plan.JointEnd{Part: "rod", Copy: 2}, plate, false}, {1e6, 0, rod, plate, false},
	} {
		joints := []*plan.JointPlan{{Name: "j", Placed: []plan.Placed{{Part: "plate", Copy: 1}, {Part: "rod", Copy: 1, FrontMm: c.front}}}, {Name: "k", A: c.a, B: c.b}}
		s := stand.NewSeams(&parts.Job{Joints: []*parts.Joint{{Name: parts.Text{Value: "j"}}, {Name: parts.Text{Value: "k"}}}}, models)
		if mm, tied := s.GapMm(joints); math.Abs(mm-c.want) > 0.2 || tied != c.tied {
			t.Errorf("its front at %g: %g, %v", c.front, mm, tied)
		}
	}
}

// TestTubeInABore: a round of 40 stands out of a plate with metal 1 within the bore, where its own bore is no wider than 38.
func TestTubeInABore(t *testing.T) {
	t.Parallel()
	for inside, want := range map[string]float64{"30": 40, "37.9": 40, "38.1": 0} {
		models := []*part.Model{
			layouttest.Model(t, "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm}\noutline: {rectangle: [100, 60]}\nbore: {diameter: 40}\n"),
			layouttest.Model(t, "part: tube\nkind: turned\nmaterial: C45\nstock: {round: 60, length: 40}\nprofile:\n  outside: [{name: body, diameter: 40, length: 30}]\n  inside: [{name: bore, diameter: "+inside+", length: 30}]\n"),
		}
		joints := []*plan.JointPlan{{Name: "j", Placed: []plan.Placed{{Part: "plate", Copy: 1}, {Part: "tube", Copy: 1, FrontMm: -10}}}}
		got := stand.NewSeams(&parts.Job{Joints: []*parts.Joint{{Name: parts.Text{Value: "j"}}}}, models).BoreMm(joints, plan.JointEnd{Part: "plate", Copy: 1}, plan.JointEnd{Part: "tube", Copy: 1}, 40)
		if got["front"] != want || got["back"] != want {
			t.Errorf("bored %s: %v", inside, got)
		}
	}
}

// TestDriven: of a shaft of 10, 20 and 10 a motor turns the front end by what is nearer to it, or in the middle, else the back one.
func TestDriven(t *testing.T) {
	t.Parallel()
	m := stand.Of(&parts.Job{}, []*part.Model{layouttest.Model(t, "part: s\nkind: shaft\nmaterial: C45\nstock: {round: 30, length: 50}\nprofile:\n  outside: [{name: a, diameter: 20, length: 10}, {name: b, diameter: 25, length: 20}, {name: c, diameter: 20, length: 10}]\n")}, nil)
	for step, want := range map[string]float64{"a": 1, "b": 1, "c": -1} {
		if got := m.Driven(parts.JointRef{Part: "s", Copy: 1, Feature: step}); got != want {
			t.Errorf("%s: %g", step, got)
		}
	}
}

// TestPosOf: a joint is said at its own place, and what no joint of the job is at the head of its file.
func TestPosOf(t *testing.T) {
	t.Parallel()
	at := parts.Pos{File: "job.yaml", Line: 7, Column: 5}
	m := stand.Of(&parts.Job{File: "job.yaml", Joints: []*parts.Joint{{Name: parts.Text{Value: "j"}, Pos: at}}}, nil, nil)
	if got, head := m.PosOf("j"), m.PosOf("other"); got != at || head != (parts.Pos{File: "job.yaml", Line: 1, Column: 1}) {
		t.Errorf("%+v, %+v", got, head)
	}
}

// TestUnplaced: screws of a joint that nothing places stand nowhere.
func TestUnplaced(t *testing.T) {
	t.Parallel()
	const plate = "kind: plate\nmaterial: S235\nstock: {plate: 12}\noutline: {rectangle: [120, 80]}\nholes:\n  - {name: h, at: [[30, 20]], size: M10 clearance}\n"
	ref := func(part string) parts.JointRef { return parts.JointRef{Part: part, Copy: 1, Feature: "h"} }
	p, q := layouttest.Model(t, "part: p\n"+plate), layouttest.Model(t, "part: q\n"+plate)
	m := stand.Of(&parts.Job{Parts: []*parts.Part{p.Part, q.Part}, Joints: []*parts.Joint{{Name: parts.Text{Value: "j"}, Kind: parts.BoltKind, Bolt: &parts.BoltJoint{Through: ref("p"), Into: ref("q"), Size: "M10"}}}},
		[]*part.Model{p, q},
		[]*plan.JointPlan{{Name: "j", A: plan.JointEnd{Part: "p", Copy: 1, Feature: "h"}, B: plan.JointEnd{Part: "q", Copy: 1, Feature: "h"}, Bolt: &plan.BoltPlan{LengthMm: 40}}})
	if len(m.Bodies) > 0 || len(m.Floating) != 2 {
		t.Errorf("%d stand, %d float", len(m.Bodies), len(m.Floating))
	}
}

// TestMouths: a hole through a plate of 12 opens on both faces, out of each and in its plane, a blind one on its own; seen from the front
// what is in the back lies mirrored. A head lies in the mouth on the side of its counterbore, and a slot runs to the middle of its end.
func TestMouths(t *testing.T) {
	t.Parallel()
	m := stand.Of(&parts.Job{}, []*part.Model{layouttest.Model(t, "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm}\noutline: {rectangle: [120, 80]}\nholes:\n"+
		"  - {name: through, at: [[30, 20]], size: 8}\n  - {name: blind, face: back, at: [[10, 5]], size: 6, depth: 7}\n  - {name: sunk, at: [[-20, -10]], size: M6 clearance, counterbore: {diameter: 11, depth: 6}}\n"+
		"slots:\n  - {name: slot, at: [[0, 25]], width: 6, length: 26, turn: 90}\n")}, nil)
	v := func(x, y, z float64) assembly.Vec { return assembly.Vec{X: x, Y: y, Z: z} }
	m.Of["p#1"] = parts.Instance{Part: "p", Copy: 1}
	got := m.HolesAndSlots(&assembly.Body{ID: "p#1", Pose: assembly.Move(v(100, 0, 0))})
	want := []stand.Faced{
		{At: []assembly.Vec{v(130, 20, 0)}, Out: v(0, 0, 1)}, {At: []assembly.Vec{v(130, 20, -12)}, Out: v(0, 0, -1)},
		{At: []assembly.Vec{v(80, -10, 0)}, Out: v(0, 0, 1), Sunk: true}, {At: []assembly.Vec{v(80, -10, -12)}, Out: v(0, 0, -1)},
		{At: []assembly.Vec{v(100, 25, 0)}, Out: v(0, 0, 1), Run: v(10, 0, 0)}, {At: []assembly.Vec{v(100, 25, -12)}, Out: v(0, 0, -1), Run: v(10, 0, 0)},
		{At: []assembly.Vec{v(90, 5, -12)}, Out: v(0, 0, -1)}, // what is on the back comes last
	}
	if len(got) != len(want) {
		t.Fatalf("%d mouths", len(got))
	}
	for i, w := range want {
		g := got[i]
		if len(g.At) != 1 || g.At[0].Sub(w.At[0]).Len()+g.Out.Sub(w.Out).Len()+g.Run.Sub(w.Run).Len() > 1e-9 || g.Sunk != w.Sunk || g.Used {
			t.Errorf("%d, %s: at %v, out %v, run %v, sunk %v, used %v", i, g.Group.Group.Name, g.At, g.Out, g.Run, g.Sunk, g.Used)
		}
	}
	bar := stand.Of(&parts.Job{}, []*part.Model{layouttest.Model(t, "part: b\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 4, length: 460}\nholes:\n  - {name: wall, on: top, along: {from: left, first: 150, up: 25}, size: 10}\n")}, nil)
	bar.Of["b#1"] = parts.Instance{Part: "b", Copy: 1}
	if all := bar.HolesAndSlots(&assembly.Body{ID: "b#1", Pose: assembly.Still}); len(all) != 1 || all[0].At[0].Sub(v(-80, 25, -25)).Len()+all[0].Out.Sub(v(0, 1, 0)).Len() > 1e-9 {
		t.Errorf("in the upper wall of a bar: %+v", all)
	}
}

// TestKeyAndNut: a key 12 × 8 (ISO/R 773, from memory: 5 deep in a shaft of 40) lies on the floor of its keyway, 18 to either side of its middle, 3 out of the step that a hub
// slides on, and is let into what runs on that as deep as it likes; one of another step comes not with it. A nut M20 (ISO 4032: 18 high, 30 across
// its flats) stands where the hub ends, away from it.
func TestKeyAndNut(t *testing.T) {
	t.Parallel()
	shaft := layouttest.Model(t, "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 60, length: 140}\nprofile:\n  outside: [{name: seat, diameter: 40, length: 80}, {name: collar, diameter: 50, length: 50}]\nkeyways:\n  - {name: own, in: seat, length: 36, axial: 20, from: front, clock: 90}\n  - {name: other, in: collar, length: 30, axial: 95, from: front}\n")
	hub := layouttest.Model(t, "part: hub\nkind: turned\nmaterial: C45\nstock: {round: 80, length: 60}\nprofile:\n  outside: [{name: rim, diameter: 70, length: 50}]\n  inside: [{name: bore, diameter: 40, length: 50}]\n")
	for _, c := range []struct {
		key       string
		from, dir float64
		low, high float64 // of the nut
	}{{"12 × 8 × 36", 10, -1, -10, 8}, {"", 70, 1, -88, -70}} {
		m := stand.Of(&parts.Job{Joints: []*parts.Joint{{Name: parts.Text{Value: "j"}, Kind: parts.SlideKind, Slide: &parts.SlideJoint{}}}}, []*part.Model{shaft, hub}, []*plan.JointPlan{{
			Name: "j", Kind: parts.SlideKind, A: plan.JointEnd{Part: "hub", Copy: 1, Feature: "bore"}, B: plan.JointEnd{Part: "shaft", Copy: 1, Feature: "seat"},
			Placed: []plan.Placed{{Part: "shaft", Copy: 1}, {Part: "hub", Copy: 1, FrontMm: 15}}, Slide: &plan.SlidePlan{Key: c.key, Nut: "M20", NutFromMm: c.from, NutDir: c.dir},
		}})
		boxes := map[string]assembly.Box{}
		for i := range m.Bodies {
			boxes[m.Bodies[i].ID] = m.Bodies[i].Box()
		}
		if nut := boxes["j nut"]; math.Abs(nut.Low.Z-c.low)+math.Abs(nut.High.Z-c.high) > 1e-9 || math.Abs(min(nut.Size().X, nut.Size().Y)-30) > 1e-9 {
			t.Errorf("nut from %g: %+v", c.from, nut)
		}
		if may := m.Allowed([]assembly.Body{{ID: "j nut"}}); len(may) != 1 || may[0] != (assembly.Allowed{A: "j nut", B: "shaft#1", UpToMm: 10}) {
			t.Errorf("the nut lies in %+v", may)
		}
		key, stands := boxes["j key own"]
		if want := (assembly.Box{Low: assembly.Vec{X: 15, Y: -6, Z: -38}, High: assembly.Vec{X: 23, Y: 6, Z: -2}}); stands != (c.key != "") || stands && key.Low.Sub(want.Low).Len()+key.High.Sub(want.High).Len() > 1e-9 {
			t.Errorf("key %q: %+v", c.key, key)
		}
		if _, stands := boxes["j key other"]; stands || len(m.Allowed([]assembly.Body{{ID: "j key own"}})) != map[bool]int{true: 1}[c.key != ""] {
			t.Error("a key of another step, or one that lies in what is no coupling")
		}
	}
}
