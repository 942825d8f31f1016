package stand

import (
	"math"
	"reflect"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
)

// TestCorners: of the joints asked for, those between ends of bars: a bar that is mitred at both
// ends has its long points on one side, and what a joint says of its cuts is said.
func TestCorners(t *testing.T) {
	t.Parallel()
	cut := func(deg float64, long parts.Side) parts.BarEnd {
		e := parts.BarEnd{Long: long}
		e.Mitre.Pos, e.Mitre.Deg = parts.Pos{Line: 1}, deg
		return e
	}
	bar := func(left, right parts.BarEnd) *part.Model {
		in := &parts.Part{Kind: parts.BarPart, Bar: &parts.Bar{Left: left, Right: right}}
		return &part.Model{Out: &plan.PartPlan{Title: "Rail"}, Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: in}}}}
	}
	skew, even := bar(cut(45, parts.TopSide), cut(45, parts.BottomSide)), bar(cut(45, parts.TopSide), cut(45, parts.TopSide))
	end := func(part, feature string) plan.JointEnd { return plan.JointEnd{Part: part, Copy: 1, Feature: feature} }
	for _, c := range []struct {
		name, joint string
		rail        *part.Model
		features    [2]string
		kind        plan.ProblemKind
		skew        string
		said        bool
	}{
		{"long points on two sides", "k", skew, [2]string{"left", "right"}, plan.FilletNoCorner, "Rail", false},
		{"on one side", "k", even, [2]string{"left", "right"}, plan.FilletNoCorner, "", false},
		{"square at one end", "k", bar(cut(0, parts.TopSide), cut(45, parts.BottomSide)), [2]string{"left", "right"}, plan.FilletNoCorner, "", false},
		{"square at the other", "k", bar(cut(45, parts.TopSide), cut(0, parts.BottomSide)), [2]string{"left", "right"}, plan.FilletNoCorner, "", false},
		{"unlike", "k", even, [2]string{"left", "right"}, plan.CornerUnlike, "", true},
		{"of two sections", "k", even, [2]string{"left", "right"}, plan.CornerSections, "", true},
		{"not asked for", "other", skew, [2]string{"left", "right"}, plan.CornerUnlike, "", false},
		{"on a side", "k", skew, [2]string{"left", "top"}, plan.CornerUnlike, "", false},
		{"of a side", "k", skew, [2]string{"top", "right"}, plan.CornerUnlike, "", false},
	} {
		m := &Stand{
			modelOf: map[string]*part.Model{"rail": c.rail, "post": even},
			Joints:  []*plan.JointPlan{{Name: "k", A: end("post", c.features[0]), B: end("rail", c.features[1]), Problems: []plan.Problem{{Kind: c.kind}}}},
		}
		if name, said := m.corners([]string{c.joint}); name != c.skew || said != c.said {
			t.Errorf("%s: %q, %v", c.name, name, said)
		}
	}
}

// TestSmallPlaces: what places are worked out with, by hand; cuboids lie askew of nothing.
func TestSmallPlaces(t *testing.T) {
	t.Parallel()
	v := func(x, y, z float64) assembly.Vec { return assembly.Vec{X: x, Y: y, Z: z} }
	cuboid := func(low, high, at assembly.Vec) *assembly.Body {
		return &assembly.Body{Solid: assembly.Of(assembly.Cuboid(low, high)), Pose: assembly.Move(at)}
	}
	bar := cuboid(v(-50, -10, -20), v(50, 10, 0), v(100, 0, 0)) // from 50 to 150
	ref := func(part string, n int) parts.JointRef { return parts.JointRef{Part: part, Copy: n} }
	job := &Stand{Job: &parts.Job{Joints: []*parts.Joint{{Kind: parts.WeldKind, Weld: &parts.WeldJoint{Part: ref("a", 1), To: ref("b", 2)}}}}}
	welded := func(a, b parts.JointRef) bool { return job.welds(a.Instance(), b.Instance()) }
	length := func(mm float64) parts.Length { return parts.Length{Mm: mm, Pos: parts.Pos{Line: 1}} }
	shift := func(low, high parts.Length) [2]any {
		mm, open := along(low, high, [2]float64{-5, 25}, [2]float64{100, 300})
		return [2]any{mm, open}
	}
	steps := &Stand{Joints: []*plan.JointPlan{{Name: "i"}, {Name: "j"}}}
	line := func(offMm, lean float64) bool { // a round that stands beside another, and leans
		return SameAxis(assembly.Move(v(7, 8, 9)), assembly.Move(v(7+offMm, 8, 50)).Of(assembly.Rotate(assembly.AxisX, lean*180/math.Pi)))
	}
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"the side that looks up most", []string{sideOf(bar, v(0, 0, 1)), sideOf(bar, v(0, 0, -1)), sideOf(bar, v(0.1, 0.8, 0)), sideOf(bar, v(0, -2, 1)), sideOf(bar, v(3, 2, 1)), sideOf(bar, v(-1, 0, 0.5)), sideOf(bar, v(1, 1, 1)), sideOf(bar, v(0, 0, 0))}, []string{"front", "back", "top", "bottom", "right", "left", "front", ""}},
		{"welded: both ends, whichever is first, of the same copies", []bool{welded(ref("a", 1), ref("b", 2)), welded(ref("b", 2), ref("a", 1)), welded(ref("a", 1), ref("b", 1)), welded(ref("c", 1), ref("b", 2)), welded(ref("b", 2), ref("c", 1)), welded(ref("a", 2), ref("b", 2)), welded(ref("b", 1), ref("a", 1))}, []bool{true, true, false, false, false, false, false}},
		{"a sling from its low side, its high one, the middle", [][2]any{shift(length(20), parts.Length{}), shift(parts.Length{}, length(20)), shift(parts.Length{}, parts.Length{})}, [][2]any{{125.0, false}, {255.0, false}, {190.0, true}}},
		{"places of one part within half a millimetre and 0.01 radians (0.57°), others beyond", distinct([]assembly.Meet{
			{ID: "1", A: "a", B: "b", OnA: assembly.Still, OnB: assembly.Still}, {ID: "2", A: "a", B: "b", OnA: assembly.Move(assembly.Vec{X: 0.4}), OnB: assembly.Still},
			{ID: "3", A: "a", B: "b", OnA: assembly.Move(assembly.Vec{X: 104}), OnB: assembly.Move(assembly.Vec{X: -104})}, {ID: "4", A: "a", B: "b", OnA: assembly.Rotate(assembly.AxisZ, 0.6), OnB: assembly.Still},
			{ID: "5", A: "a", B: "b", OnA: assembly.Move(assembly.Vec{Y: -0.52}), OnB: assembly.Still}}),
			[]assembly.Meet{{ID: "1", A: "a", B: "b", OnA: assembly.Still, OnB: assembly.Still}, {ID: "3", A: "a", B: "b", OnA: assembly.Move(assembly.Vec{X: 104}), OnB: assembly.Move(assembly.Vec{X: -104})}, {ID: "4", A: "a", B: "b", OnA: assembly.Rotate(assembly.AxisZ, 0.6), OnB: assembly.Still},
				{ID: "5", A: "a", B: "b", OnA: assembly.Move(assembly.Vec{Y: -0.52}), OnB: assembly.Still}}},
		{"half a millimetre off is another", len(distinct([]assembly.Meet{{A: "a", B: "b", OnA: assembly.Still, OnB: assembly.Still}, {A: "a", B: "b", OnA: assembly.Move(assembly.Vec{X: 0.5}), OnB: assembly.Still}})), 2},
		{"one line, within a millimetre and a millionth", []bool{line(0.99, 0), line(1.01, 0), line(0, 0.95e-6), line(0, 1.05e-6), line(5, 1)}, []bool{true, false, true, false, false}},
		{"seen along the axis: the front at the left, TOP up", AlongAxis.Inverse().Apply(v(5, 4, -3)), v(3, 4, 5)},
		{"the place of a joint", []int{steps.StepOf("i"), steps.StepOf("j"), steps.StepOf("k")}, []int{0, 1, -1}},
		{"steps of a cut", distinct([]assembly.Meet{{ID: "1", A: "a", B: "b"}, {ID: "2", A: "a", B: "b"}, {ID: "3", A: "a", B: "b", Free: make([]assembly.Freedom, 1)}, {ID: "4", A: "b", B: "a"}}), []assembly.Meet{{ID: "1", A: "a", B: "b"}, {ID: "3", A: "a", B: "b", Free: make([]assembly.Freedom, 1)}, {ID: "4", A: "b", B: "a"}}},
	} {
		if !reflect.DeepEqual(c.got, c.want) {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
}
