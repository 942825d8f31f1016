package joint

import (
	"testing"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
)

// TestWaits: of joints that wait for each other the circle alone is told, each with what it waits for in it:
// neither what comes before it, which is made, nor what only hangs on it.
func TestWaits(t *testing.T) {
	t.Parallel()
	named := func(name string) *joint {
		return &joint{in: &parts.Joint{Name: parts.Text{Value: name}}, w: words.Writer{Units: parts.Millimetres}}
	}
	made, x, y, z := named("made"), named("x"), named("y"), named("z")
	rules := []rule{{made, x, "first"}, {x, y, "b"}, {made, y, "c"}, {y, x, "d"}, {x, made, "e"}, {y, z, "f"}}
	(&shop{}).cycle([]*joint{z, x, y}, rules)
	if len(x.faults)+len(z.faults)+len(made.faults) > 0 || len(y.faults) != 1 || y.faults[0].Kind != plan.WaitForEachOther || y.faults[0].Args[0].Text != "y comes after x (b); x comes after y (d)" {
		t.Errorf("%+v %+v %+v %+v", made.faults, x.faults, y.faults, z.faults)
	}
}

// TestBodies: parts are of one body once joints lead from one to the other, in whatever order they are tied,
// and of their own before.
func TestBodies(t *testing.T) {
	t.Parallel()
	at := func(n int) parts.Instance { return parts.Instance{Part: "p", Copy: n} }
	for _, ties := range [][][2]int{{{1, 2}, {2, 3}, {3, 4}}, {{3, 4}, {1, 2}, {4, 1}}, {{4, 3}, {4, 2}, {4, 1}, {1, 3}}, {{1, 4}, {2, 4}, {3, 4}, {1, 2}}} {
		b := bodies{}
		for _, k := range ties {
			b.tie(at(k[0]), at(k[1]))
		}
		for n := 2; n <= 4; n++ {
			if b.of(at(n)) != b.of(at(1)) {
				t.Errorf("%v: %d is not of the body of 1: %v", ties, n, b)
			}
		}
		if b.of(at(5)) != at(5) || b.of(at(1)) == at(5) {
			t.Errorf("%v: 5 is tied", ties)
		}
		b.tie(at(5), at(3))
		if b.of(at(5)) != b.of(at(2)) {
			t.Errorf("%v: 5 is not tied to 2", ties)
		}
	}
}

// TestBarStands: what is a corner of an opening stands with a square end on the top or the bottom of a bar as
// deep, fronts level and the same way; anything else about its place or its cuts and it is none.
func TestBarStands(t *testing.T) {
	t.Parallel()
	mm := func(v float64) parts.Length { return parts.Length{Mm: v, Pos: parts.Pos{Line: 1}} }
	level := func() *parts.Place {
		return &parts.Place{On: "top", With: "left", Looks: "down", At: &parts.Point{X: mm(40), Y: mm(0)}}
	}
	for _, c := range []struct {
		what string
		edit func(j *parts.Joint, post, rail *parts.Part)
		want bool
	}{
		{"without a place", func(j *parts.Joint, _, _ *parts.Part) { j.Place = nil }, true},
		{"at the origin's height", func(*parts.Joint, *parts.Part, *parts.Part) {}, true},
		{"level below", func(j *parts.Joint, _, _ *parts.Part) { j.Place.At, j.Place.FromBottom = nil, mm(0) }, true},
		{"level above", func(j *parts.Joint, _, _ *parts.Part) { j.Place.At, j.Place.FromTop = nil, mm(0) }, true},
		{"on the bottom", func(j *parts.Joint, _, _ *parts.Part) {
			j.Place.On, j.Weld.To.Feature, j.Place.Looks = "bottom", "bottom", "up"
		}, true},
		{"from below", func(j *parts.Joint, _, _ *parts.Part) { j.Place.At, j.Place.FromBottom = nil, mm(3) }, false},
		{"from above", func(j *parts.Joint, _, _ *parts.Part) { j.Place.At, j.Place.FromTop = nil, mm(3) }, false},
		{"nowhere said", func(j *parts.Joint, _, _ *parts.Part) { j.Place.At = nil }, false},
		{"higher", func(j *parts.Joint, _, _ *parts.Part) { j.Place.At.Y = mm(2) }, false},
		{"off it", func(j *parts.Joint, _, _ *parts.Part) { j.Place.Gap = mm(2) }, false},
		{"fronts apart", func(j *parts.Joint, _, _ *parts.Part) { j.Place.Looks = "up" }, false},
		{"by another end", func(j *parts.Joint, _, _ *parts.Part) { j.Place.With = "right" }, false},
		{"on another side", func(j *parts.Joint, _, _ *parts.Part) { j.Place.On = "bottom" }, false},
		{"on its front", func(j *parts.Joint, _, _ *parts.Part) {
			j.Place.On, j.Weld.To.Feature, j.Place.Looks = "front", "front", ""
		}, false},
		{"by its side", func(j *parts.Joint, _, _ *parts.Part) { j.Weld.Part.Feature = "top" }, false},
		{"deeper", func(_ *parts.Joint, post, _ *parts.Part) { post.Bar.Depth = mm(60) }, true},
		{"deeper, nobody says where", func(j *parts.Joint, post, _ *parts.Part) { j.Place, post.Bar.Depth = nil, mm(60) }, false},
		{"mitred", func(_ *parts.Joint, post, _ *parts.Part) {
			post.Bar.Left.Mitre = parts.Angle{Deg: 45, Pos: parts.Pos{Line: 1}}
		}, false},
		{"its other end mitred", func(_ *parts.Joint, post, _ *parts.Part) {
			post.Bar.Right.Mitre = parts.Angle{Deg: 45, Pos: parts.Pos{Line: 1}}
		}, true},
		{"on a bar mitred on the left", func(_ *parts.Joint, _, rail *parts.Part) {
			rail.Bar.Left.Mitre = parts.Angle{Deg: 45, Pos: parts.Pos{Line: 1}}
		}, false},
		{"on a bar mitred on the right", func(_ *parts.Joint, _, rail *parts.Part) {
			rail.Bar.Right.Mitre = parts.Angle{Deg: 45, Pos: parts.Pos{Line: 1}}
		}, false},
		{"on a bar coped", func(_ *parts.Joint, _, rail *parts.Part) { rail.Bar.Right.Onto.Part = "tube" }, false},
		{"on a plate", func(_ *parts.Joint, _, rail *parts.Part) { rail.Bar = nil }, false},
		{"bolted", func(j *parts.Joint, _, _ *parts.Part) { j.Kind = parts.BoltKind }, false},
	} {
		bar := func() *parts.Part { return &parts.Part{Bar: &parts.Bar{Width: mm(40), Depth: mm(50), Length: mm(400)}} }
		post, rail := bar(), bar()
		in := &parts.Joint{Kind: parts.WeldKind, Place: level(), Weld: &parts.WeldJoint{Part: parts.JointRef{Part: "post", Feature: "left"}, To: parts.JointRef{Part: "rail", Feature: "top"}}}
		c.edit(in, post, rail)
		j := &joint{in: in, a: stepped(*post, part.Step{}), b: stepped(*rail, part.Step{})}
		j.a.ref, j.b.ref = in.Weld.Part, in.Weld.To
		end, on, ok := j.stands()
		if ok != c.want || ok && (end.ref.Part != "post" || on.ref.Part != "rail") {
			t.Errorf("%s: %v", c.what, ok)
		}
	}
}

// TestPlacedOnItsAxis: what a place stands on a round with its origin on the other's shares its axis, its
// front so far from the other's as the place says; with the origin beside it, or by distances from an edge,
// it does not.
func TestPlacedOnItsAxis(t *testing.T) {
	t.Parallel()
	mm := func(v float64) parts.Length { return parts.Length{Mm: v, Pos: parts.Pos{Line: 1}} }
	for _, c := range []struct {
		what  string
		place parts.Place
		want  bool
	}{
		{"on it", parts.Place{At: &parts.Point{}}, true},
		{"to the right", parts.Place{At: &parts.Point{X: mm(5)}}, false},
		{"above", parts.Place{At: &parts.Point{Y: mm(-5)}}, false},
		{"from an edge", parts.Place{FromLeft: mm(20)}, false},
	} {
		c.place.On, c.place.With, c.place.Gap = "back", "front", mm(3)
		j := &joint{in: &parts.Joint{Kind: parts.WeldKind, Place: &c.place}, kind: weldKind{}, a: feature{r: worked("collar", 20)}, b: feature{r: worked("tube", 100)}}
		j.a.r.Steps, j.b.r.Steps = []part.Step{cylinder(0, 20, 80, false)}, []part.Step{cylinder(0, 100, 60, false)}
		j.a.step, j.b.step = &j.a.r.Steps[0], &j.b.r.Steps[0]
		if at, ok := (&shop{}).relative(j); ok != c.want || ok && at != (placement{z0: 103, s: 1}) {
			t.Errorf("%s: %+v, %v", c.what, at, ok)
		}
	}
}
