package machine

import (
	"math"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// TestPast: a plate of 30 × 20 × 10 on a block of 100 × 60 × 12, its middle moved on the face that it lies on: how far it
// reaches past the left, right, bottom and top edges as seen there, less than nothing within.
func TestPast(t *testing.T) {
	t.Parallel()
	solid := func(x, y, z float64) *assembly.Solid {
		return assembly.Of(assembly.Cuboid(assembly.Vec{X: -x / 2, Y: -y / 2, Z: -z}, assembly.Vec{X: x / 2, Y: y / 2}))
	}
	plate := &part.Model{Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{}}}}}
	m := &Machine{solids: map[string]*assembly.Solid{"a": solid(30, 20, 10), "b": solid(100, 60, 12)}, modelOf: map[string]*part.Model{"a": plate}}
	for _, c := range []struct {
		on, with, looks string
		x, y            float64
		want            [4]float64
	}{
		{"front", "back", "up", 40, -25, [4]float64{-75, 5, 5, -45}}, {"front", "back", "right", 45, 25, [4]float64{-85, 5, -40, 10}},
		// On an edge it looks to a side with its front, from where the block's front is.
		{"back", "front", "up", 40, -25, [4]float64{-75, 5, 5, -45}}, {"right", "bottom", "up", 0, 0, [4]float64{15, 3, -20, -30}}, {"top", "bottom", "right", 42, 0, [4]float64{-82, -8, 15, 3}},
	} {
		at := &parts.Point{X: parts.Length{Mm: c.x}, Y: parts.Length{Mm: c.y}}
		in := &parts.Joint{Weld: &parts.WeldJoint{Part: parts.JointRef{Part: "a", Copy: 1}, To: parts.JointRef{Part: "b", Copy: 1}}, Place: &parts.Place{On: c.on, With: c.with, Looks: c.looks, At: at}}
		for i, got := range (Seams{m: m}).PastMm(in) {
			if math.Abs(got-c.want[i]) > 1e-9 {
				t.Errorf("%+v: %g past side %d, want %g", c, got, i, c.want[i])
			}
		}
	}
}

// TestRoundInABore: a round of 40 with a collar of 50 in the bore of a plate of 100 × 60 × 12: what stands out of the faces by
// more than a quarter of a millimetre, and what both turn across, by the plate's corners and by the axis of a round beside it.
func TestRoundInABore(t *testing.T) {
	t.Parallel()
	models := []*part.Model{
		modelOf(t, "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm}\noutline: {rectangle: [100, 60]}\nbore: {diameter: 40}\n"),
		modelOf(t, "part: rod\nkind: shaft\nmaterial: C45\nstock: {round: 60, length: 40}\nprofile:\n  outside: [{name: collar, diameter: 50, length: 10}, {name: body, diameter: 40, length: 20}]\n"),
	}
	plate, rod, other := plan.JointEnd{Part: "plate", Copy: 1}, plan.JointEnd{Part: "rod", Copy: 1}, plan.JointEnd{Part: "rod", Copy: 2}
	for _, c := range []struct{ front, wantFront, wantBack float64 }{
		{-10, 50, 40}, {-10.2, 50, 40}, {-9.8, 50, 40}, {-0.3, 50, 40}, {-0.2, 0, 40}, {5, 0, 50}, {12.2, 0, 50}, {-17.7, 40, 40}, {-17.8, 40, 0}, {-18.5, 40, 0},
	} {
		joints := []*plan.JointPlan{{Name: "j", Placed: []plan.Placed{{Part: "plate", Copy: 1}, {Part: "rod", Copy: 1, FrontMm: c.front}}}}
		s := NewSeams(&parts.Job{Joints: []*parts.Joint{{Name: parts.Text{Value: "j"}}}}, models)
		if got := s.BoreMm(joints, plate, rod, 40); got["front"] != c.wantFront || got["back"] != c.wantBack {
			t.Errorf("its front at %g: %v", c.front, got)
		}
		if got := s.BoreMm(joints, plate, other, 40); got != nil {
			t.Errorf("of what stands nowhere: %v", got)
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

// TestEndsOfABar: a bar of 400 × 50 × 30: where its ends lie along it at a height, and the plane of its cut with its size, from the
// corner on the back that lies to the right of who looks out of the bar, z up: mitred by 45° the cut is 50 √2 high. One of
// 60 cut by 60° has the middle of its left cut 50 · tan 60° / 2 = 43.3 in, beyond its own middle.
func TestEndsOfABar(t *testing.T) {
	t.Parallel()
	end := func(deg float64, long parts.Side) parts.BarEnd {
		return parts.BarEnd{Long: long, Mitre: parts.Angle{Deg: deg, Pos: parts.Pos{Line: 1}}}
	}
	length := func(mm float64) parts.Length { return parts.Length{Mm: mm, Pos: parts.Pos{Line: 1}} }
	bar := func(long float64, left, right parts.BarEnd) *part.Model {
		in := &parts.Part{Kind: parts.BarPart, Bar: &parts.Bar{Length: length(long), Width: length(50), Depth: length(30), Left: left, Right: right}}
		return &part.Model{Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: in}}}}
	}
	v := func(x, y, z float64) assembly.Vec { return assembly.Vec{X: x, Y: y, Z: z} }
	diagonal := math.Sqrt2 / 2
	for _, c := range []struct {
		name      string
		bar       *part.Model
		end       parts.Side
		low, high float64 // where it lies 25 under the middle, and 25 over it
		at, out   assembly.Vec
		long      float64
	}{
		{"square, left", bar(400, end(0, ""), end(0, "")), parts.LeftEnd, -200, -200, v(-200, 25, -30), v(-1, 0, 0), 50},
		{"square, right", bar(400, end(0, ""), end(0, "")), parts.RightEnd, 200, 200, v(200, -25, -30), v(1, 0, 0), 50},
		{"mitred, left, long below", bar(400, end(45, parts.BottomSide), end(0, "")), parts.LeftEnd, -200, -150, v(-150, 25, -30), v(-diagonal, diagonal, 0), 50 * math.Sqrt2},
		{"mitred, left, long above", bar(400, end(45, parts.TopSide), end(0, "")), parts.LeftEnd, -150, -200, v(-200, 25, -30), v(-diagonal, -diagonal, 0), 50 * math.Sqrt2},
		{"mitred, right, long above", bar(400, end(0, ""), end(45, parts.TopSide)), parts.RightEnd, 150, 200, v(150, -25, -30), v(diagonal, -diagonal, 0), 50 * math.Sqrt2},
		{"short and steep", bar(60, end(60, parts.BottomSide), end(0, "")), parts.LeftEnd, -30, -30 + 50*math.Sqrt(3), v(-30+50*math.Sqrt(3), 25, -30), v(-0.5, math.Sqrt(3)/2, 0), 100},
	} {
		b := c.bar.Part.Bar
		if low, high := endX(b, c.end, -25), endX(b, c.end, 25); math.Abs(low-c.low)+math.Abs(high-c.high) > 1e-9 {
			t.Errorf("%s: from %g below to %g above", c.name, low, high)
		}
		at, size, ok := (&Machine{modelOf: map[string]*part.Model{"bar": c.bar}}).cutOf(Instance{"bar", 1}, string(c.end))
		if !ok || at.At.Sub(c.at).Len()+at.Z.Sub(c.out).Len()+at.Y.Sub(assembly.AxisZ).Len() > 1e-9 || size.Sub(v(c.long, 30, 0)).Len() > 1e-9 {
			t.Errorf("%s: cut at %+v, of %v", c.name, at, size)
		}
		if _, _, ok := (&Machine{modelOf: map[string]*part.Model{"bar": c.bar}}).cutOf(Instance{"bar", 1}, "top"); ok {
			t.Errorf("%s: its top is no end", c.name)
		}
	}
}

// TestUnmetBounds: holes of 9 and 12 that face one another half a millimetre apart: within 1.5 and a quarter they meet, of other
// names they are two from 10.5 on.
func TestUnmetBounds(t *testing.T) {
	t.Parallel()
	m := &Machine{}
	holes := func(name string, mm float64, out assembly.Vec, at ...assembly.Vec) *faced {
		return &faced{body: &assembly.Body{ID: name}, at: at, out: out, group: &part.Group{Hole: &parts.HoleGroup{}, Size: part.Made{FinishedMm: mm}, Group: &plan.Group{Name: name}}}
	}
	for _, c := range []struct {
		name        string
		off, apart  float64
		used, again bool // whether a joint uses one, whether both look the same way
		want        float64
	}{
		{"x", 1.74, 0, false, false, 0}, {"x", 1.76, 0, false, false, 1.76}, {"x", 10.6, 0, false, false, 10.6}, {"y", 1.76, 0, false, false, 1.76}, {"y", 10.49, 0, false, false, 10.49}, {"y", 10.51, 0, false, false, 0},
		{"y", 5, 0.5, false, false, 5.02}, {"y", 5, -0.5, false, false, 5.02}, {"y", 5, 0.51, false, false, 0}, {"y", 5, -0.51, false, false, 0}, {"y", 5, 0, true, false, 0}, {"y", 5, 0, false, true, 0},
	} {
		f, g := holes("x", 9, assembly.AxisZ, assembly.Vec{}), holes(c.name, 12, assembly.AxisZ.Times(-1), assembly.Vec{X: c.off, Z: c.apart}, assembly.Vec{X: 90, Z: c.apart})
		if c.again {
			g.out = f.out
		}
		for _, pair := range [][2]*faced{{f, g}, {g, f}} {
			pair[1].used = c.used
			got, worst := m.unmet(&plan.JointPlan{}, pair[0], pair[1]), 0.0
			for _, p := range got {
				worst = p.Args[4].Value
			}
			if pair[1].used = false; worst != c.want {
				t.Errorf("%+v: %g", c, worst)
			}
		}
	}
	// Each is to meet the nearest of the others, and the worst is told: of three 2, 3 and 4 beside, the last.
	f, g := holes("x", 9, assembly.AxisZ, assembly.Vec{}, assembly.Vec{X: 40}, assembly.Vec{Y: 40}), holes("x", 9, assembly.AxisZ.Times(-1), assembly.Vec{X: 42}, assembly.Vec{Y: 43}, assembly.Vec{X: 4})
	if p := m.unmet(&plan.JointPlan{}, f, g); len(p) != 1 || math.Abs(p[0].Args[4].Value-4) > geom.CloseMm {
		t.Errorf("%+v", p)
	}
}

// TestOnlyLies: a lid that its words have held by its weight alone lies on what hangs together with a body once its step is
// made, whether that is the first or a later one.
func TestOnlyLies(t *testing.T) {
	t.Parallel()
	end := func(part string) plan.JointEnd { return plan.JointEnd{Part: part, Copy: 1} }
	lid := &part.Model{Out: &plan.PartPlan{Title: "Lid"}, Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{}}}}}
	for _, c := range []struct {
		after, part, how string
		off              bool
		n                int
		id, want         string
	}{
		{"one", "lid", "lies by its weight", false, 1, "x#1", "Lid"}, {"one", "lid", "lies by its weight", false, 1, "y#1", "Lid"}, {"one", "lid", "lies by its weight", false, 1, "z#1", ""}, {"one", "lid", "lies by its weight", false, 2, "z#1", "Lid"}, {"one", "lid", "lies by its weight", false, 0, "x#1", ""},
		{"two", "lid", "lies by its weight", false, 1, "x#1", ""}, {"two", "lid", "lies by its weight", false, 2, "x#1", "Lid"}, {"none", "lid", "lies by its weight", false, 2, "x#1", ""},
		{"one", "lid", "clamped", false, 2, "x#1", ""}, {"one", "lid", "lies by its weight", true, 2, "x#1", ""}, {"one", "", "lies by its weight", false, 2, "x#1", ""},
	} {
		m := &Machine{
			job:     &parts.Job{Loose: []parts.Loose{{After: parts.Text{Value: c.after}, Part: parts.Text{Value: c.part}, How: parts.Text{Value: c.how}, Held: parts.HeldBy(c.how), Off: c.off}}},
			joints:  []*plan.JointPlan{{Name: "one", N: 1, A: end("x"), B: end("y")}, {Name: "two", N: 2, A: end("z"), B: end("x")}},
			jointOf: map[string]*parts.Joint{"one": {}, "two": {}}, modelOf: map[string]*part.Model{"lid": lid},
		}
		if got := (&viewed{stage: newStage(m)}).onlyLies(c.n, c.id); got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// TestFirstTied: the first joint that ties a body is found, of what is bought or clamped as well.
func TestFirstTied(t *testing.T) {
	t.Parallel()
	s := &stage{ends: [][]string{{"a#1", "b#1", "one screw 1"}, {"c#1", "a#1", "plate#1"}}}
	for id, want := range map[string]int{"a#1": 0, "b#1": 0, "one screw 1": 0, "c#1": 1, "plate#1": 1, "d#1": -1} {
		if got := s.first(id); got != want {
			t.Errorf("%s: %d", id, got)
		}
	}
}

// TestOpeningOf: an opening at 3 o'clock, 30 behind the front of a round of 100, looks out to the right of it; of the round
// on its side, with its front up, it lies 30 lower.
func TestOpeningOf(t *testing.T) {
	t.Parallel()
	row := &plan.RadialRow{ClockDeg: 90, AxialMm: 30, OutsideMm: 100}
	for _, c := range []struct{ pose, want assembly.Pose }{
		{assembly.Still, assembly.Pose{At: assembly.Vec{X: 50, Z: -30}, Z: assembly.AxisX}},
		{assembly.Move(assembly.Vec{X: 1, Y: 2, Z: 3}).Of(assembly.Frame(assembly.Vec{}, assembly.AxisY, assembly.AxisZ)), assembly.Pose{At: assembly.Vec{X: -49, Y: -28, Z: 3}, Z: assembly.AxisX.Reversed()}},
	} {
		if o := openingOf(&assembly.Body{Pose: c.pose}, row); o.At.Sub(c.want.At).Len()+o.Along.Sub(c.want.Z).Len() > 1e-9 {
			t.Errorf("%+v: at %v, along %v", c.pose, o.At, o.Along)
		}
	}
}
