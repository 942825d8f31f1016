package stand_test

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/parts"
)

const frameJob = `job: Frame
units: mm
tolerance: m
parts: [rail.yaml, end.yaml, post.yaml, arm.yaml]
joints:
  - name: c1
    weld: {part: end#1.left, to: rail#1.right, type: square, length: 100, process: MAG}
  - name: c2
    weld: {part: end#1.right, to: rail#2.left, type: square, length: 100, process: MAG}
  - name: c3
    weld: {part: end#2.left, to: rail#2.right, type: square, length: 100, process: MAG}
  - name: c4
    weld: {part: end#2.right, to: rail#1.left, type: square, length: 100, process: MAG}
  - name: arm
    weld: {part: arm.right, to: post.outside, type: fillet, length: 100, process: MAG}
`

var frameParts = map[string]string{
	"rail.yaml": "part: rail\nkind: bar\nquantity: 2\nmaterial: S235\nbar: {square: 50, wall: 4, length: 460, left: {mitre: 45, long: bottom}, right: {mitre: 45, long: bottom}}\n" +
		"holes:\n  - {name: a, along: {from: left, first: 80}, size: 10}\n  - {name: b, on: top, along: {from: left, first: 150, up: 20}, size: 10}\n" +
		"  - {name: c, on: bottom, along: {from: left, first: 150, up: 20}, size: 10, walls: both}\n  - {name: d, face: back, along: {from: left, first: 120, up: 20}, size: 10}\n",
	"end.yaml":  "part: end\nkind: bar\nquantity: 2\nmaterial: S235\nbar: {square: 50, wall: 4, length: 340, left: {mitre: 45, long: top}, right: {mitre: 45, long: top}}\n",
	"post.yaml": "part: post\nkind: tube\nmaterial: S235\nstock: {tube: 100, wall: 4}\ntube: {outside: 100, wall: 4, length: 500}\n",
	"arm.yaml":  "part: arm\nkind: bar\nmaterial: S235\nbar: {rectangle: [60, 40], wall: 3, length: 300, right: {onto: post.outside, place: {clock: 90, axial: 120}}}\n",
}

func frame(t *testing.T, edits ...string) map[string]string {
	t.Helper()
	files := map[string]string{"job.yaml": frameJob}
	for name, text := range frameParts {
		files[name] = text
	}
	for i := 0; i+2 < len(edits); i += 3 {
		if !strings.Contains(files[edits[i]], edits[i+1]) {
			t.Fatalf("%s has no %q", edits[i], edits[i+1])
		}
		files[edits[i]] = strings.Replace(files[edits[i]], edits[i+1], edits[i+2], 1)
	}
	return files
}

// A frame of mitred tube closes from the cuts alone, its ends turned over; a bar stands on a
// round by its cope. Holes lie where they are dimensioned, in the walls they go through.
func TestBarsInSpace(t *testing.T) {
	t.Parallel()
	m, pl := stood(t, write(t, frame(t)))
	for _, p := range m.Problems {
		t.Errorf("%s: %s", p.Kind, p.What)
	}
	rail := body(t, m, "rail#1")
	own := rail.Pose.Inverse()
	all := assembly.Box{}
	for _, id := range []string{"rail#1", "rail#2", "end#1", "end#2"} {
		box := body(t, m, id).Box().Moved(own)
		if id == "rail#1" {
			all = box
		}
		all = all.Join(box)
	}
	// The first lies with its long side below: the frame stands over it, all fronts level.
	if low, high := (assembly.Vec{X: -230, Y: -25, Z: -50}), (assembly.Vec{X: 230, Y: 315, Z: 0}); all.Low.Sub(low).Len() > 1e-6 || all.High.Sub(high).Len() > 1e-6 {
		t.Errorf("from %v to %v", all.Low, all.High)
	}
	for what, c := range map[string]struct {
		at    assembly.Vec
		metal bool
	}{
		"front wall": {assembly.Vec{X: -140, Z: -2}, true}, "a": {assembly.Vec{X: -150, Z: -2}, false}, "behind a": {assembly.Vec{X: -150, Z: -48}, true}, "hollow": {assembly.Vec{X: -140, Z: -25}, false},
		"b": {assembly.Vec{X: -80, Y: 23, Z: -20}, false},                                                                       // up is to the back
		"c": {assembly.Vec{X: -80, Y: -23, Z: -30}, false}, "c in the other wall": {assembly.Vec{X: -80, Y: 23, Z: -30}, false}, // up is to the front
		"d": {assembly.Vec{X: -110, Y: -5, Z: -48}, false}, "beside d": {assembly.Vec{X: 110, Y: -5, Z: -48}, true},
		"over the cut": {assembly.Vec{X: -190, Y: 23, Z: -10}, false}, "under it": {assembly.Vec{X: -190, Y: -23, Z: -10}, true},
	} {
		if got := rail.Solid.Dist(c.at) < 0; got != c.metal {
			t.Errorf("%s: metal %v", what, got)
		}
	}
	// The arm's edges stand 40 from the axis, its middle 120 behind the post's front.
	post, arm := body(t, m, "post#1"), body(t, m, "arm#1")
	box := arm.Box().Moved(post.Pose.Inverse())
	if low, high := (assembly.Vec{X: 40, Y: -30, Z: -140}), (assembly.Vec{X: 340, Y: 30, Z: -100}); box.Low.Sub(low).Len() > 1e-6 || box.High.Sub(high).Len() > 1e-6 {
		t.Errorf("arm from %v to %v", box.Low, box.High)
	}
	for _, p := range pl.Parts {
		kg, _, _ := body(t, m, p.Name+"#1").Mass()
		if math.Abs(kg-p.MassKg) > 0.01*p.MassKg {
			t.Errorf("%s: solid of %v kg, sheet of %v kg", p.Name, kg, p.MassKg)
		}
	}
}

// Bars meet by the cuts of their ends, and a bar with a cope stands on the round that it is cut to, in a place: of other faces and
// other parts nothing says where they stand. What no joint ties together stands in machines of its own.
func TestBarsMeetByTheirEnds(t *testing.T) {
	t.Parallel()
	m, _ := stood(t, write(t, frame(t)))
	for _, c := range []struct {
		a, aEnd, b, bEnd string
		want             bool
	}{
		{"end", "left", "rail", "right", true}, {"end", "right", "rail", "right", true}, {"rail", "left", "end", "left", true},
		{"end", "front", "rail", "right", false}, {"end", "left", "rail", "front", false}, {"end", "top", "rail", "bottom", false},
		{"end", "left", "post", "left", false}, {"post", "right", "end", "left", false}, {"arm", "left", "rail", "left", false},
		{"arm", "right", "post", "outside", true}, {"arm", "right", "rail", "front", false}, {"rail", "right", "post", "outside", false},
	} {
		end := func(part, feature string) plan.JointEnd { return plan.JointEnd{Part: part, Copy: 1, Feature: feature} }
		if _, ok := m.MeetOf(&plan.JointPlan{Name: "c1", A: end(c.a, c.aEnd), B: end(c.b, c.bEnd)}); ok != c.want {
			t.Errorf("%+v: %v", c, ok)
		}
	}
	for pair, want := range map[[2]string]bool{{"rail#1", "rail#2"}: true, {"rail#1", "end#2"}: true, {"arm#1", "post#1"}: true, {"arm#1", "rail#1"}: false, {"end#1", "post#1"}: false} {
		if m.Tied(body(t, m, pair[0]), body(t, m, pair[1])) != want {
			t.Errorf("%v tied: %v", pair, !want)
		}
	}
}

// Of an arm coped at both ends on two posts, the end that sits on each.
func TestCopes(t *testing.T) {
	t.Parallel()
	files := frame(t, "arm.yaml", "right: {", "left: {onto: prop.outside, place: {clock: 270, axial: 120}}, right: {", "job.yaml", "post.yaml,", "post.yaml, prop.yaml,")
	files["prop.yaml"] = strings.Replace(files["post.yaml"], "part: post", "part: prop", 1)
	m, _ := stood(t, write(t, files))
	arm := m.Model("arm").Part.Bar
	for on, want := range map[string]*parts.BarEnd{"prop": arm.End(parts.LeftEnd), "post": arm.End(parts.RightEnd), "rail": nil} {
		if got := m.Cope(parts.Instance{Part: "arm", Copy: 1}, parts.Instance{Part: on, Copy: 1}); got != want {
			t.Errorf("on %s: %+v", on, got)
		}
	}
}

// Bars that do not close a ring are said to miss; what stands on several feet of a frame may
// tip, what is only a frame in the making does not.
func TestFrameMisses(t *testing.T) {
	t.Parallel()
	for length, miss := range map[string]float64{"338": 2, "339.94": 0.06, "339.96": 0} { // within 0.05 it closes
		m, _ := load(t, write(t, frame(t, "job.yaml", "end#2.left", "arm#2.left", "job.yaml", "end#2.right", "arm#2.right",
			"arm.yaml", "material: S235\n", "quantity: 2\nmaterial: S235\n", "arm.yaml", "bar: {rectangle: [60, 40], wall: 3, length: 300, right: {onto: post.outside, place: {clock: 90, axial: 120}}}",
			"bar: {square: 50, wall: 4, length: "+length+", left: {mitre: 45, long: bottom}, right: {mitre: 45, long: bottom}}", "job.yaml", "arm.right, to: post.outside", "arm#1.right, to: rail#1.front")))
		found := 0.0
		for _, p := range m.Problems {
			if p.Kind == plan.PlaceMisses && p.Joint == "c4" {
				found = p.Args[1].Value
			}
			if p.Kind == plan.WouldTip {
				t.Error(p.What)
			}
		}
		if math.Abs(found-miss) > 0.01 {
			t.Errorf("%+v", m.Problems)
		}
	}
}

// A bar of a ring with its long points on two sides is said to be the cause, once for each
// corner that does not meet, and nothing of what follows from it.
func TestFrameSkew(t *testing.T) {
	t.Parallel()
	m, _ := load(t, write(t, frame(t, "rail.yaml", "right: {mitre: 45, long: bottom}", "right: {mitre: 45, long: top}")))
	var got []string
	for _, p := range m.Problems {
		got = append(got, string(p.Kind)+" "+p.Joint)
		if p.Kind == plan.FrameSkew && p.Args[3].Text != "rail" {
			t.Errorf("%+v", p.Args)
		}
	}
	if want := []string{"frame-skew c4"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// The edge of a mitred tube at its long point is seen, with the rounds of its corners: a tube
// of 50 × 4, whose outer radius is twice its wall (EN 10219-2, from memory), shows 34 straight
// there, and 50 with what runs round from it to 8 before the point.
func TestMitreIsSeen(t *testing.T) {
	t.Parallel()
	m, _ := stood(t, write(t, frame(t)))
	bar := *body(t, m, "rail#1")
	bar.Pose = assembly.Still
	for _, c := range []struct{ fromEnd, wide float64 }{{0.01, 34}, {8.01, 50}} {
		low, high := math.Inf(1), math.Inf(-1)
		// From below, where the long side is.
		for _, l := range assembly.Look([]assembly.Body{bar}, assembly.Pose{X: assembly.AxisX, Y: assembly.AxisZ, Z: assembly.AxisY.Times(-1), At: assembly.Vec{Y: -100}}, 2) {
			for _, p := range l.Points {
				if p.XMm > 230-c.fromEnd {
					low, high = math.Min(low, p.YMm), math.Max(high, p.YMm)
				}
			}
		}
		if math.Abs(high-low-c.wide) > 0.3 {
			t.Errorf("%v from the long point the end is %v wide, not %v", c.fromEnd, high-low, c.wide)
		}
	}
}

// rightAndUp are the sides of a part to the right and above, as one looks at each of its faces.
var rightAndUp = map[string][2]string{"front": {"right", "top"}, "back": {"left", "top"}, "left": {"front", "top"}, "right": {"back", "top"}, "top": {"right", "back"}, "bottom": {"right", "front"}}

// A bar that stands with a mitred end on a face of another has its cut flat on it, with the edge of that as far from the
// face's as is said, rises by the rest of its angle to a right one, and leans to the side that its step says.
func TestLeansOnItsMitre(t *testing.T) {
	t.Parallel()
	sides := map[string]assembly.Vec{
		"right": assembly.AxisX, "left": assembly.AxisX.Times(-1), "top": assembly.AxisY, "bottom": assembly.AxisY.Times(-1), "front": assembly.AxisZ, "back": assembly.AxisZ.Times(-1),
	}
	for on, out := range sides {
		for _, end := range []string{"left", "right"} {
			for _, long := range []string{"top", "bottom"} {
				for _, looks := range []string{"up", "down", "left", "right"} {
					m, pl := stood(t, write(t, map[string]string{"post.yaml": "part: post\nkind: bar\nmaterial: S235\nbar: {flat: [100, 80], length: 120}\n",
						"brace.yaml": "part: brace\nkind: bar\nmaterial: S235\nbar: {flat: [20, 10], length: 300, " + end + ": {mitre: 30, long: " + long + "}}\n",
						"job.yaml": "job: Foot\nunits: mm\nparts: [post.yaml, brace.yaml]\njoints:\n  - {name: foot, weld: {part: brace." + end + ", to: post." + on +
							", type: fillet, size: 3}, place: {on: " + on + ", with: " + end + ", from-left: 7, from-bottom: 9, front: " + looks + "}}\n"}))
					is := end + " end, long " + long + ", on " + on + " looking " + looks
					own, face := body(t, m, "post#1").Pose.Inverse().Of(body(t, m, "brace#1").Pose), body(t, m, "post#1").Solid.Box()
					tip := map[string]float64{"left": -1, "right": 1}[end]
					along := own.X.Times(-tip)
					lean := along.Sub(out.Times(along.Dot(out))) // by sin 30° along the face
					if math.Abs(along.Dot(out)-math.Sqrt(3)/2) > 1e-9 || math.Abs(lean.Len()-0.5) > 1e-9 {
						t.Errorf("%s: runs along %+v", is, along)
					}
					_, said, found := strings.Cut(pl.Joints[0].How, ", leaning 30° ")
					said = strings.FieldsFunc(strings.TrimPrefix(said, "to the "), func(r rune) bool { return r == ' ' || r == ';' })[0]
					if seen, is := map[string]string{"up": "top", "down": "bottom"}[said]; is {
						said = seen
					} else if on == "back" { // as seen on the face
						said = map[string]string{"left": "right", "right": "left"}[said]
					}
					if !found || lean.Dot(sides[said]) < 0.49 {
						t.Errorf("%s: %q, but leans %+v", is, pl.Joints[0].How, lean)
					}
					// The cut reaches from the long point, 150 from the middle, to 20·tan 30° less; its edges are 7 and 9 from the face's.
					var foot assembly.Box
					for i, p := range []assembly.Vec{{X: tip * 150, Y: 10}, {X: tip * (150 - 20*math.Tan(math.Pi/6)), Y: -10}} {
						if long == "bottom" {
							p.Y = -p.Y
						}
						q := own.Apply(p)
						if i == 0 {
							foot = assembly.Box{Low: q, High: q}
						}
						foot = foot.With(q, q.Sub(own.Z.Times(10)))
					}
					for i, mm := range []float64{7, 9} {
						from, _ := face.Along(sides[rightAndUp[on][i]])
						if at, _ := foot.Along(sides[rightAndUp[on][i]]); math.Abs(at-from-mm) > 1e-9 {
							t.Errorf("%s: %g from the edge, want %g", is, at-from, mm)
						}
					}
					_, top := face.Along(out)
					if low, high := foot.Along(out); math.Abs(low-top) > 1e-9 || math.Abs(high-top) > 1e-9 {
						t.Errorf("%s: its cut lies %g to %g over the face", is, low-top, high-top)
					}
				}
			}
		}
	}
}

// A brace of 40 × 40 in the corner of a post on a rail, of solid bars: its long side of 450 is the third side of a triangle of
// 450/√2 = 318.198; each end has fillets of 40 across and of 40·√2 = 57 along, on what it is welded to and nothing else.
// Where the head is said 10 from its place, that is found; where it has none, the brace stands there by its foot.
func TestBraceOfACorner(t *testing.T) {
	t.Parallel()
	bar := func(name, size string) string {
		return "part: " + name + "\nkind: bar\nquantity: 1\nmaterial: S235\nbar: {square: " + size + "}\n"
	}
	place := func(left string) string {
		return ", place: {on: bottom, with: right, from-left: " + left + ", from-bottom: 5, front: up}"
	}
	for head, miss := range map[string]float64{place("261.6296"): 0, place("251.6296"): 10, "": 0} {
		m, pl := load(t, write(t, map[string]string{"post.yaml": bar("post", "50, length: 600"), "rail.yaml": bar("rail", "50, length: 800"),
			"brace.yaml": bar("brace", "40, length: 450, left: {mitre: 45, long: bottom}, right: {mitre: 45, long: bottom}"),
			"job.yaml": "job: Brace\nunits: mm\nparts: [post.yaml, rail.yaml, brace.yaml]\njoints:\n" +
				"  - {name: tee, weld: {part: post.left, to: rail.top, type: fillet, size: 3}, place: {on: top, with: left, at: [0, 0], front: down}}\n" +
				"  - {name: foot, weld: {part: brace.left, to: rail.top, type: fillet, size: 3}, place: {on: top, with: left, from-right: 56.802, from-bottom: 5, front: down}}\n" +
				"  - {name: head, weld: {part: brace.right, to: post.bottom, type: fillet, size: 3}" + head + "}\n"}))
		found := 0.0
		for _, p := range m.Problems {
			if p.Kind == plan.PlaceMisses && p.Joint == "head" {
				found = p.Args[1].Value
			} else {
				t.Errorf("%+v", p)
			}
		}
		if math.Abs(found-miss) > 0.01 {
			t.Errorf("head at %s misses by %g, want %g", head, found, miss)
		}
		if how := "brace right against post bottom, as the two stand already"; strings.HasPrefix(pl.Joints[2].How, how) != (head == "") {
			t.Errorf("%q: %s", head, pl.Joints[2].How)
		}
		for i, along := range []string{"", "rail", "post"} {
			if i == 0 || miss > 0 {
				continue
			}
			got := map[string]float64{}
			for _, c := range pl.Joints[i].Weld.Corners {
				got[c.Side+" of "+c.Of+" along "+c.Along] = c.LengthMm
			}
			want := map[string]float64{"top of brace along " + along: 40, "bottom of brace along " + along: 40, "front of brace along " + along: 57, "back of brace along " + along: 57}
			if !maps.Equal(got, want) {
				t.Errorf("%s: %v, want %v", pl.Joints[i].Name, got, want)
			}
		}
	}
}

// The cope of a bar and the saddle of a tube sit on the part that they are cut for where the place there is said, and on no other.
func TestSitsWhereItIsSaid(t *testing.T) {
	t.Parallel()
	for _, place := range []string{"", ", place: {clock: 90, axial: 120}"} {
		m, _ := stood(t, write(t, map[string]string{
			"post.yaml": strings.Replace(frameParts["post.yaml"], "material", "quantity: 2\nmaterial", 1), "arm.yaml": strings.Replace(frameParts["arm.yaml"], ", place: {clock: 90, axial: 120}", place, 1),
			"stub.yaml": "part: stub\nkind: tube\nmaterial: S235\nstock: {tube: 50, wall: 3}\ntube: {outside: 50, wall: 3, length: 200}\nends: {back: {onto: post.outside, angle: 90" + place + "}}\n",
			"job.yaml":  "job: J\nunits: mm\nparts: [post.yaml, arm.yaml, stub.yaml]\njoints:\n  - {name: posts, weld: {part: post#1.outside, to: post#2.outside, type: fillet}, place: {on: front, with: back, at: [0, 0], top: up}}\n"}))
		i := func(part string) parts.Instance { return parts.Instance{Part: part, Copy: 1} }
		said := place != ""
		if m.Cope(i("arm"), i("post")) != nil != said || m.Saddle(i("stub"), i("post")) != nil != said || m.Cope(i("arm"), i("stub")) != nil || m.Saddle(i("stub"), i("arm")) != nil {
			t.Errorf("with %q", place)
		}
	}
}
