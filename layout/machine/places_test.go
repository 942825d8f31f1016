package machine

import (
	"math"
	"strings"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
)

// TestFaceFrame: the faces of a box from (1, 2, 3) to (11, 42, 8) as who looks at each sees it:
// right and up are those of the front view, from above and below its front lies nearest.
func TestFaceFrame(t *testing.T) {
	t.Parallel()
	v := func(x, y, z float64) assembly.Vec { return assembly.Vec{X: x, Y: y, Z: z} }
	room := assembly.Box{Low: v(1, 2, 3), High: v(11, 42, 8)}
	for face, want := range map[string]assembly.Pose{
		"front":  {At: v(0, 0, 8), X: v(1, 0, 0), Y: v(0, 1, 0), Z: v(0, 0, 1)},
		"back":   {At: v(0, 0, 3), X: v(-1, 0, 0), Y: v(0, 1, 0), Z: v(0, 0, -1)},
		"left":   {At: v(1, 0, 5.5), X: v(0, 0, 1), Y: v(0, 1, 0), Z: v(-1, 0, 0)},
		"right":  {At: v(11, 0, 5.5), X: v(0, 0, -1), Y: v(0, 1, 0), Z: v(1, 0, 0)},
		"top":    {At: v(0, 42, 5.5), X: v(1, 0, 0), Y: v(0, 0, -1), Z: v(0, 1, 0)},
		"bottom": {At: v(0, 2, 5.5), X: v(1, 0, 0), Y: v(0, 0, 1), Z: v(0, -1, 0)},
	} {
		got := faceFrame(face, room)
		if off := got.At.Sub(want.At).Len() + got.X.Sub(want.X).Len() + got.Y.Sub(want.Y).Len() + got.Z.Sub(want.Z).Len(); off > 1e-9 {
			t.Errorf("%s: %+v, want %+v", face, got, want)
		}
	}
}

// TestStuds: a stud of 75 stands in each hole of a plate of 12, so much of its front or its back
// through the face that meets as the joint says, the rest beyond; as many as there are.
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
	}{
		{"on the front", stud, parts.Front, 15, false, []assembly.Vec{{X: -30, Y: 20, Z: -15}, {X: 10, Y: 5, Z: -15}}, -1},
		{"on the back", stud, parts.Back, 15, false, []assembly.Vec{{X: -30, Y: 20, Z: 3}, {X: 10, Y: 5, Z: 3}}, 1},
		{"its back on the front", stud, parts.Front, 20, true, []assembly.Vec{{X: -30, Y: 20, Z: 55}, {X: 10, Y: 5, Z: 55}}, 1},
		{"its back on the back", stud, parts.Back, 60, true, []assembly.Vec{{X: -30, Y: 20, Z: -27}, {X: 10, Y: 5, Z: -27}}, -1},
		{"one", strings.Replace(stud, "quantity: 2", "quantity: 1", 1), parts.Back, 15, false, []assembly.Vec{{X: -30, Y: 20, Z: 3}}, 1},
	} {
		m := &Machine{
			modelOf: map[string]*part.Model{"p": modelOf(t, plate), "s": modelOf(t, c.stud)},
			jointOf: map[string]*parts.Joint{"j": {Meet: parts.Meeting{Pos: parts.Pos{Line: 1}, First: c.meet}, Bolt: &parts.BoltJoint{Stud: parts.Text{Value: "s"}}}},
		}
		got := m.studs(&plan.JointPlan{Name: "j", A: plan.JointEnd{Part: "p", Copy: 1, Feature: "h"}, Bolt: &plan.BoltPlan{StudTipMm: c.tip, StudBack: c.back}})
		if len(got) != len(c.at) {
			t.Fatalf("%s: %d studs", c.name, len(got))
		}
		for i, g := range got {
			if g.A != "p#1" || g.B != []string{"s#1", "s#2"}[i] || g.OnA.At.Sub(c.at[i]).Len() > 1e-9 || math.Abs(g.OnA.Z.Z-c.z) > 1e-9 {
				t.Errorf("%s: %+v, want %v", c.name, g, c.at[i])
			}
		}
	}
}

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
		m := &Machine{
			modelOf: map[string]*part.Model{"rail": c.rail, "post": even},
			joints:  []*plan.JointPlan{{Name: "k", A: end("post", c.features[0]), B: end("rail", c.features[1]), Problems: []plan.Problem{{Kind: c.kind}}}},
		}
		if name, said := m.corners([]string{c.joint}); name != c.skew || said != c.said {
			t.Errorf("%s: %q, %v", c.name, name, said)
		}
	}
}
