package stand

import (
	"math"
	"slices"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/parts"
)

// TestPast: a plate of 30 × 20 × 10 on a block of 100 × 60 × 12, its middle moved on the face that it lies on: how far it
// reaches past the left, right, bottom and top edges as seen there, less than nothing within.
func TestPast(t *testing.T) {
	t.Parallel()
	solid := func(x, y, z float64) *assembly.Solid {
		return assembly.Of(assembly.Cuboid(assembly.Vec{X: -x / 2, Y: -y / 2, Z: -z}, assembly.Vec{X: x / 2, Y: y / 2}))
	}
	plate := &part.Model{Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{}}}}}
	m := &Stand{solids: map[string]*assembly.Solid{"a": solid(30, 20, 10), "b": solid(100, 60, 12)}, modelOf: map[string]*part.Model{"a": plate}}
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
		if low, high := solid.EndX(b, c.end, -25), solid.EndX(b, c.end, 25); math.Abs(low-c.low)+math.Abs(high-c.high) > 1e-9 {
			t.Errorf("%s: from %g below to %g above", c.name, low, high)
		}
		at, size, ok := (&Stand{modelOf: map[string]*part.Model{"bar": c.bar}}).CutOf(parts.Instance{Part: "bar", Copy: 1}, string(c.end))
		if !ok || at.At.Sub(c.at).Len()+at.Z.Sub(c.out).Len()+at.Y.Sub(assembly.AxisZ).Len() > 1e-9 || size.Sub(v(c.long, 30, 0)).Len() > 1e-9 {
			t.Errorf("%s: cut at %+v, of %v", c.name, at, size)
		}
		if _, _, ok := (&Stand{modelOf: map[string]*part.Model{"bar": c.bar}}).CutOf(parts.Instance{Part: "bar", Copy: 1}, "top"); ok {
			t.Errorf("%s: its top is no end", c.name)
		}
	}
}

// TestLongEnough: a corner, and a side without one, is found from 3 on.
func TestLongEnough(t *testing.T) {
	t.Parallel()
	corner := func(side string) plan.Corner { return plan.Corner{Side: side} }
	c := &cornered{Seams: Seams{m: &Stand{Job: &parts.Job{Units: parts.Millimetres}}}, order: []plan.Corner{corner("left"), corner("right"), corner("top")}, mm: map[plan.Corner]float64{corner("left"): 2.99, corner("right"): 3, corner("top"): 40},
		flush: map[[2]string]float64{{"front", "bottom"}: 3, {"front", "back"}: 2.99}}
	corners, flush := c.found()
	if !slices.Equal(corners, []plan.Corner{{Side: "top", LengthMm: 40}, {Side: "right", LengthMm: 3}}) || !slices.Equal(flush, []string{"bottom"}) {
		t.Errorf("%+v, %v", corners, flush)
	}
}
