package part

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

const railBar = `part: rail
kind: bar
material: S235
bar: {square: 50, wall: 4, length: 460, left: {mitre: 45, long: bottom}, right: {mitre: 30, long: top}}
holes:
  - {name: seat, along: {from: left, first: 80, pitch: 150, count: 2}, size: M12 clearance, walls: both}
  - {name: peg, face: back, along: {from: left, first: 100, up: 20}, size: 9 mm}
  - {name: drain, on: bottom, along: {from: right, first: 60}, size: 8 mm}
`

// Two bars of the first and the second wall make the numbers: 695.6 mm² of metal, 460 long
// along the top less 50 at the left and along the bottom less 50·tan 30° at the right.
func TestBar(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", railBar)
	b := m.Out.Bar
	lost := 50 * math.Tan(math.Pi/6)
	if math.Abs(b.TopMm-410) > 1e-9 || math.Abs(b.BottomMm-(460-lost)) > 1e-6 || b.Top != "410" || b.Length != "460" || b.Section != "square tube 50 × 50 × 4" || m.Out.Overall != "square tube 50 × 50 × 4, 460 long" {
		t.Errorf("%+v", b)
	}
	if b.Left.Cut != "45°, long point at the bottom" || b.Right.SawDeg != 30 || b.Right.Long != "top" || b.Right.Cope != "" {
		t.Errorf("%+v, %+v", b.Left, b.Right)
	}
	// Metal: the section over the mean of top and bottom, less two holes through two walls,
	// and one each through one.
	area := 50.0*50 - 42*42 - (4-math.Pi)*(64-16)
	holes := math.Pi / 4 * 4 * (2*2*13.5*13.5 + 9*9 + 8*8)
	if want := (area*(410+460-lost)/2 - holes) * 7.85e-6; math.Abs(m.Out.MassKg-want) > 1e-4 {
		t.Errorf("%v kg, want %v", m.Out.MassKg, want)
	}
	if c := geom.NewContour(canvas.MustParseSVGPath(string(b.Outline))); math.Abs(math.Abs(c.AreaMm2())-25*(410+460-lost)) > 1e-3 {
		t.Errorf("front view of %v mm²", c.AreaMm2())
	}
	// The left end lies at the right when the back is looked at; all count on.
	want := []plan.BarHole{
		{N: 1, Group: "seat", Side: "front", XMm: -150, From: "80 from L", Up: "25"}, {N: 2, Group: "seat", Side: "front", XMm: 0, From: "230 from L", Up: "25"},
		{N: 3, Group: "drain", Side: "bottom", XMm: 170, From: "60 from R", Up: "25"},
		{N: 4, Group: "peg", Side: "back", XMm: -130, YMm: -5, From: "100 from L", Up: "20"},
	}
	for i, h := range b.Holes {
		h.DiameterMm, h.Size = 0, ""
		if i >= len(want) || h != want[i] {
			t.Errorf("hole %d: %+v", i+1, h)
		}
	}
	if g := m.Groups[0].Group; g.DepthText != "through both walls" || m.Groups[1].Group.DepthText != "through this wall only" {
		t.Errorf("%+v", g)
	}
	text := strings.Join(doText(m.Out), "\n")
	for _, line := range []string{
		"460 between the outermost points, top 410 and bottom 431.1 from point to point", "Left end: saw set 45° from square, long point at the bottom", "Right end: saw set 30°",
		"bottom up", "Lines: seat on the middle line of the front; drain on the middle line of the bottom; peg 20 over the lower edge of the back.",
	} {
		if !strings.Contains(text, line) {
			t.Errorf("%q is not in %s", line, text)
		}
	}
	if len(m.Out.Problems)+len(m.Out.Faces)+len(m.Developments) > 0 {
		t.Errorf("%v, %d faces, %d patterns", m.Out.Problems, len(m.Out.Faces), len(m.Developments))
	}
	wanted := map[string]string{"length": "460", "seat 1 from the left end": "80", "drain 3 from the right end": "60", "peg 4 from the left end": "100"}
	for _, c := range m.Out.Checks {
		if w, ok := wanted[c.What]; ok && c.Wanted == w {
			delete(wanted, c.What)
		}
	}
	if len(wanted) > 0 {
		t.Errorf("%v are not in the record", wanted)
	}
}

// In inches a side is not rounded past the whole: 33-1/3 in with a mitre of 22.5° on the
// bottom, and 12 in coped on a round, whose sides are the whole.
// TestBarSlots: slots of a bar are counted, said, measured and taken out of its metal as its holes are; on the back they
// lie as seen there, and the picture has them as from the front.
func TestBarSlots(t *testing.T) {
	t.Parallel()
	const rail = "part: a\nkind: bar\nmaterial: S235\nbar: {square: 60, wall: 4, length: 500}\n"
	const slots = "slots:\n  - {name: adjust, along: {first: 120, count: 2, pitch: 200}, width: 14, length: 44, turn: 90, walls: both}\n" +
		"  - {name: cross, on: top, along: {from: right, first: 80}, width: 9, length: 25}\n  - {name: lean, face: back, at: [[-100, 5]], width: 8, length: 20, turn: 60}\n"
	m := work(t, "mm", rail+slots)
	b := m.Out.Bar
	ends := []plan.XY{{XMm: 15}, {XMm: 15}, {YMm: 8}, {XMm: -6 * math.Sin(math.Pi/3), YMm: 6 * math.Cos(math.Pi/3)}}
	for i, h := range b.Holes {
		if geom.Distance(h.EndMm, ends[i]) > 1e-9 {
			t.Errorf("slot %d: %v, want %v", h.N, h.EndMm, ends[i])
		}
	}
	if r := b.Measures[0]; r.What != "adjust, slots 1 to 2 from the left end" || r.Wanted != "120, 320; 14 × 44" || r.Limits != "119.7 – 120.3, 319.5 – 320.5; 13.8 – 14.2 × 43.7 – 44.3" { // ISO 2768-m
		t.Errorf("%+v", r)
	}
	gone := 4 * (4*(14*30+math.Pi*49) + 9*16 + math.Pi*4.5*4.5 + 8*12 + math.Pi*16)
	if got := work(t, "mm", rail).Out.MassKg - m.Out.MassKg; math.Abs(got-gone*7.85e-6) > 1e-4 {
		t.Errorf("%v kg less, want %v", got, gone*7.85e-6)
	}
	said := strings.Join(doText(m.Out), "\n")
	for _, want := range []string{"Lines: adjust on the middle line of the front; cross on the middle line of the top; lean 35 over the lower edge of the back.", "Set the long axis along the bar; drill the two ends, mill between", "Set the long axis to clock 60° as it is seen with the right end at the left"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in %s", want, said)
		}
	}
}

// TestBarHoleSaw: a hole of a bar larger than the largest drill of the shop, here 20, is opened by a hole saw, each wall of a tube from its own
// side, at half the speed of a drill, and bored where it has limits: 51 less what the saw cuts over and the bar wants is 49. A bolt's clearance
// hole is done with that. A smaller one is drilled; through a wide tube from both sides, for the pilot's flutes end before the far wall.
// Common practice, no source.
func TestBarHoleSaw(t *testing.T) {
	t.Parallel()
	const tube = "part: a\nkind: bar\nmaterial: S235\nbar: {square: SIDE, wall: 5, length: 500}\nholes: [{name: eye, on: top, at: [[0, 0]], HOLE}]\n"
	for _, c := range []struct {
		side, hole string
		has, not   []string
	}{
		{"90", "size: 51, walls: both", []string{"Hole saw Ø49 or the next smaller, ", "rev/min, its pilot drill in the punch mark, each wall from its own side: carry the marks square round the bar;", "Bore Ø51 with a boring head on the mill."}, []string{"Drill Ø", "faceplate"}},
		{"90", "size: 51", []string{"Hole saw Ø49 or the next smaller, "}, []string{"own side"}},
		{"90", "size: M27 clearance", []string{"Hole saw Ø30, "}, []string{"Bore", "smaller"}},
		{"90", "size: 11, walls: both", []string{"Drill Ø5.5, pilot: ", "Each wall from its own side: carry the marks square round the bar."}, []string{"flutes", "Hole saw"}},
		{"30", "size: 11, walls: both", []string{"Drill Ø5.5, pilot: "}, []string{"own side", "Hole saw"}},
	} {
		m := work(t, "mm\nshop: {drill: {largest: 20}}", strings.NewReplacer("SIDE", c.side, "HOLE", c.hole).Replace(tube))
		said := strings.Join(doText(m.Out), "\n")
		for _, want := range c.has {
			if !strings.Contains(said, want) {
				t.Errorf("%s in %s: no %q in %s", c.hole, c.side, want, said)
			}
		}
		for _, not := range c.not {
			if strings.Contains(said, not) {
				t.Errorf("%s in %s: %q in %s", c.hole, c.side, not, said)
			}
		}
	}
}

// TestSawShort: sawn 2 and 6 shorter at its ends, a bar of 600 is 592 long, and its holes
// lie as much nearer to them, on its front, its back and its top; what stands from it in
// the machine stays as it is drawn, and a bar with a cope is not made shorter.
func TestSawShort(t *testing.T) {
	t.Parallel()
	const rail = "part: rail\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 4, length: 600, left: {mitre: 45, long: bottom}}\nholes: [{name: a, along: {from: left, first: 90, pitch: 30, count: 2}, size: 9}, {name: b, face: back, along: {from: right, first: 80, pitch: 30, count: 2}, size: 9}, {name: c, on: top, along: {from: right, first: 70, pitch: 30, count: 2}, size: 9}]\n"
	m := work(t, "mm", rail)
	if !m.SawShort(2, 6) || m.SawShort(0, 0) {
		t.Fatal("not shorter, or shorter by nothing")
	}
	b := m.Out.Bar
	for i, want := range []string{"88 from L", "118 from L", "64 from R", "94 from R", "74 from R", "104 from R"} {
		if got := b.Holes[i].From; got != want {
			t.Errorf("hole %d: %s, want %s", i+1, got, want)
		}
	}
	if b.Length != "592" || b.Short != "Sawn left 2 short and right 6 short, for the welds: 600 with them." || !strings.Contains(m.Out.Operations[0].Do[0], "592") {
		t.Errorf("%s, %q, %q", b.Length, b.Short, m.Out.Operations[0].Do)
	}
	_, drawn, _ := m.Bar()
	_, sawn, _ := m.Sawn()
	if drawn.LengthMm-sawn.LengthMm != 8 || m.Groups[0].Points[0].XMm != -210 {
		t.Errorf("%v, %v, %v", drawn, sawn, m.Groups[0].Points)
	}
	for short, off := range map[string][2]float64{"left 0.5 short and right 0.5 long": {0.5, -0.5}, "left as drawn and right 0.4 short": {0, 0.4}, "0.3 short at each end": {0.3, 0.3}} {
		if m := work(t, "mm", rail); !m.SawShort(off[0], off[1]) || m.Out.Bar.Short != "Sawn "+short+", for the welds: 600 with them." {
			t.Errorf("%v: %q", off, m.Out.Bar.Short)
		}
	}
	if work(t, "mm", strings.Replace(rail, "length: 600,", "length: 600, right: {onto: {diameter: 60}},", 1)).SawShort(2, 0) {
		t.Error("a coped bar is shorter")
	}
}

func TestInchBar(t *testing.T) {
	t.Parallel()
	b := work(t, "in", "part: a\nkind: bar\nmaterial: A36\nbar: {square: 2, wall: 1/8, length: 33-1/3, left: {mitre: 22.5, long: top}}\n").Out.Bar
	if b.Top != "33.333 in" || b.Bottom != "32.505 in" {
		t.Errorf("%q, %q", b.Top, b.Bottom)
	}
	if b = work(t, "in", "part: a\nkind: bar\nmaterial: A36\nbar: {angle: [3, 2], wall: 1/4, length: 12, right: {onto: {diameter: 6}}}\n").Out.Bar; b.Top != "" || b.Length != "12 in" {
		t.Errorf("%q, %q", b.Top, b.Length)
	}
}

// Sections and their sizes in words, and whether a wall is what bolts clamp.
func TestBarSections(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		in, want string
		stretch  []geom.Span
		weldMm   float64
	}{
		{"rectangle: [60, 40], wall: 3", "rectangular tube 60 × 40 × 3", []geom.Span{{FromMm: 0, ToMm: 3}, {FromMm: 37, ToMm: 40}}, 3},
		{"round: 48.3, wall: 3.2", "round tube Ø48.3 × 3.2", []geom.Span{{FromMm: 0, ToMm: 3.2}, {FromMm: 45.099999999999994, ToMm: 48.3}}, 3.2},
		{"round: 30", "round bar Ø30", []geom.Span{{FromMm: 0, ToMm: 30}}, 15},
		{"square: 20", "square bar 20", []geom.Span{{FromMm: 0, ToMm: 20}}, 10},
		{"angle: [60, 40], wall: 5", "angle 60 × 40 × 5", []geom.Span{{FromMm: 0, ToMm: 5}}, 5},
		{"channel: [100, 50], wall: 6, flange: 8.5", "channel 100 × 50 × 6, flanges 8.5", []geom.Span{{FromMm: 0, ToMm: 6}}, 6},
		{"channel: [100, 50], wall: 6, flange: 8.5, open: top", "channel 100 × 50 × 6, flanges 8.5", []geom.Span{{FromMm: 0, ToMm: 8.5}, {FromMm: 91.5, ToMm: 100}}, 6},
		{"flat: [80, 8]", "flat 80 × 8", []geom.Span{{FromMm: 0, ToMm: 8}}, 8},
	} {
		m := work(t, "mm", "part: a\nkind: bar\nmaterial: S235\nbar: {"+c.in+", length: 300}\n")
		if m.Out.Bar.Section != c.want || m.StockText() != c.want || !slices.Equal(m.MetalAt(0), c.stretch) || m.WallMm(0) != c.weldMm || m.Out.Bar.Top != "" {
			t.Errorf("%s: %q, metal %v, wall %v", c.in, m.Out.Bar.Section, m.MetalAt(0), m.WallMm(0))
		}
	}
}

// A cope of a bar 60 wide on a round of 100: 10 deep, its edges 40 from the axis. The paper
// lies over the front, a side and the back: 60 + 40 + 60 less what the corners of radius 6
// save at each end, and half of the corners beyond, and 30 to 31 mm under the deepest place, a whole millimetre from the end.
func TestCopedBar(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", "part: a\nkind: bar\nmaterial: S235\nbar: {rectangle: [60, 40], wall: 3, length: 300.4, right: {onto: {diameter: 100}}}\n")
	if c, ok := m.Cope(parts.RightEnd); !ok || math.Abs(c.DepthMm-10) > 1e-9 {
		t.Errorf("%+v, %v", c, ok)
	}
	if len(m.Developments) != 1 {
		t.Fatalf("%d patterns", len(m.Developments))
	}
	d := m.Developments[0]
	long := 300.4 - 260
	if wide := 2*(60-12) + (40 - 12) + 3*math.Pi*6/2; d.Kind != plan.CopePattern || math.Abs(d.MaxMm.XMm-wide) > 1e-6 || math.Abs(d.MaxMm.YMm-long) > 1e-6 || !strings.Contains(d.Edge, "260 from the left end") {
		t.Errorf("%+v", d)
	}
	edge := canvas.MustParseSVGPath(string(d.Lines[0].Path))
	if b := edge.Bounds(); math.Abs(b.Y1-long) > 1e-3 || b.Y0 != 0 {
		t.Errorf("paper %v", b)
	}
	low := math.Inf(1)
	for _, q := range edge.Coords() {
		if q.Y > 1 {
			low = math.Min(low, q.Y)
		}
	}
	if math.Abs(low-(long-10)) > 0.02 {
		t.Errorf("deepest at %v, want %v", low, long-10)
	}
	if text := d.Lines[1].Text + ", " + d.Lines[2].Text; text != "front | bottom, bottom | back" {
		t.Error(text)
	}
	left := work(t, "mm", "part: a\nkind: bar\nmaterial: S235\nbar: {rectangle: [60, 40], wall: 3, length: 300, left: {onto: {diameter: 100}}}\n")
	if text := left.Developments[0].Lines[1].Text; text != "front | top" || left.Out.Bar.Left.Cut != "coped R50, 10 deep" {
		t.Error(text, left.Out.Bar.Left)
	}
	// The segment of the round over the metal's share of 60 × 40.
	half := math.Asin(0.6)
	segment := 2500*half - 30*40
	area := 60.0*40 - 54*34 - (4-math.Pi)*(36-9)
	if want := (area*300 - segment*40*area/2400) * 7.85e-6; math.Abs(left.Out.MassKg-want) > 1e-4 {
		t.Errorf("%v kg, want %v", left.Out.MassKg, want)
	}
	if angle := work(t, "mm", "part: a\nkind: bar\nmaterial: S235\nbar: {angle: [60, 40], wall: 5, length: 300, left: {onto: {diameter: 100}}}\n"); len(angle.Developments) != 0 || !strings.Contains(strings.Join(doText(angle.Out), "\n"), "Scribe the arc R50 on the front") {
		t.Error("paper for an angle")
	}
}

// A hole wants 0.7 of a bolt hole, or a quarter of another, between it and an edge, and
// must not reach a corner or a root. By hand on angles of 60 × 40 × 5 and tubes of 50 with
// corners of 8.
func TestBarProblems(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		bar, holes string
		want       plan.ProblemKind
		value      float64
	}{
		{"square: 50, wall: 4, length: 300", "along: {first: 20}, size: M12 clearance", "", 0},                               // 13.25 left, 9.45 wanted
		{"square: 50, wall: 4, length: 300", "along: {first: 14}, size: M12 clearance", plan.BarHoleNear, 7.25},              // to the end
		{"square: 50, wall: 4, length: 300", "along: {first: 14}, size: 13.5", "", 0},                                        // 3.375 wanted
		{"square: 50, wall: 4, length: 300", "along: {first: 5}, size: 13.5", plan.BarHoleOut, 1.75},                         //
		{"square: 50, wall: 4, length: 300", "along: {first: 100, up: 14}, size: 13.5", plan.BarHoleOut, 0.75},               // flat from 8 on
		{"square: 50, wall: 4, length: 300", "along: {first: 100, up: 15}, size: 13.5", "", 0},                               //
		{"angle: [60, 40], wall: 5, length: 300", "along: {first: 100, up: 10}, size: 12", plan.BarHoleOut, 1},               // the root at 5
		{"angle: [60, 40], wall: 5, length: 300", "along: {first: 100, up: 52}, size: 12", plan.BarHoleNear, 2},              // 3 wanted at the edge
		{"angle: [60, 40], wall: 5, length: 300", "on: bottom, along: {first: 100, up: 33}, size: 12", plan.BarHoleOut, 4},   // y to the front there: its root
		{"angle: [60, 40], wall: 5, length: 300", "on: bottom, along: {first: 100, up: 10}, size: 12", "", 0},                // 4 at the edge
		{"flat: [80, 8], length: 300, left: {mitre: 45, long: top}", "along: {first: 60}, size: 12", "", 0},                  // (60 − 40)/√2 − 6
		{"flat: [80, 8], length: 300, left: {mitre: 45, long: top}", "along: {first: 50}, size: 12", plan.BarHoleNear, 1.07}, //
		{"square: 50, wall: 4, length: 300, left: {mitre: 45, long: bottom}", "on: top, along: {first: 62}, size: 12", "", 0},
		{"square: 50, wall: 4, length: 300, left: {mitre: 45, long: bottom}", "on: top, along: {first: 58}, size: 12", plan.BarHoleNear, 2},
		{"square: 50, wall: 4, length: 300, left: {mitre: 45, long: bottom}", "on: bottom, along: {first: 8}, size: 12", plan.BarHoleNear, 2}, // it ends there
		{"square: 50, wall: 4, length: 300, left: {mitre: 45, long: bottom}", "on: bottom, along: {first: 9.5}, size: 12", "", 0},
		{"rectangle: [60, 40], wall: 3, length: 300, left: {onto: {diameter: 100}}", "along: {first: 18.5}, size: 12", plan.BarHoleNear, 2.5},       // hollow 10 deep
		{"square: 50, wall: 4, length: 300", "along: {first: 20}, width: 10, length: 30, turn: 90", "", 0},                                          // 5 left of a slot, 2.5 wanted
		{"square: 50, wall: 4, length: 300", "along: {first: 17}, width: 10, length: 30, turn: 90", plan.BarHoleNear, 2},                            //
		{"square: 50, wall: 4, length: 300", "along: {first: 17}, width: 10, length: 30", "", 0},                                                    // across
		{"square: 50, wall: 4, length: 300", "along: {first: 90}, width: 10, length: 34", "", 0},                                                    // flat from 8 to 42
		{"square: 50, wall: 4, length: 300", "along: {first: 90}, width: 10, length: 35", plan.BarHoleOut, 0.5},                                     //
		{"square: 50, wall: 4, length: 300", "along: {first: 90, up: 14}, width: 8, length: 28, turn: 45", plan.BarHoleOut, 5.07},                   // 10 · cos 45° + 4 below 14
		{"flat: [80, 8], length: 300, left: {mitre: 45, long: top}", "along: {first: 60}, width: 10, length: 30, turn: 90", plan.BarHoleNear, 2.07}, // (50 − 40)/√2 − 5
		{"flat: [30, 8], length: 300", "along: {first: 100}, size: M6 tap, depth: 8", plan.BarTooDeep, 8},
		{"flat: [30, 8], length: 300", "along: {first: 100}, width: 6, length: 20, depth: 8", plan.BarTooDeep, 8},
		{"flat: [30, 8], length: 300", "on: top, along: {first: 100}, size: 4, depth: 29", "", 0},
		{"square: 50, wall: 7, length: 300", "along: {first: 100}, size: 9", plan.BarNotSold, 0},
		{"square: 50, wall: 1.5, length: 300", "along: {first: 100}, size: 9", plan.BarTooThin, 1.5}, // EN 10219-2 begins with 2
		{"square: 50, wall: 4, length: 6001", "along: {first: 100}, size: 9", plan.BarTooLong, 6001},
	} {
		key := "holes"
		if strings.Contains(c.holes, "width:") {
			key = "slots"
		}
		m := work(t, "mm", "part: a\nkind: bar\nmaterial: S235\nbar: {"+c.bar+"}\n"+key+": [{name: h, "+c.holes+"}]\n")
		var kinds []plan.ProblemKind
		for _, p := range m.Out.Problems {
			kinds = append(kinds, p.Kind)
			i := 1
			if p.Kind == plan.BarTooLong {
				i = 0
			} else if p.Kind == plan.BarTooThin {
				i = 3
			}
			if p.Kind != plan.BarNotSold && math.Abs(p.Args[i].Value-c.value) > 0.005 && c.want != plan.BarHoleNear || p.Kind == plan.BarHoleNear && math.Abs(p.Args[1].Value-c.value) > 0.05 {
				t.Errorf("%s, %s: %+v, want %v", c.bar, c.holes, p.Args, c.value)
			}
		}
		if c.want == "" && len(kinds) > 0 || c.want != "" && !slices.Equal(kinds, []plan.ProblemKind{c.want}) {
			t.Errorf("%s, %s: %v, want %s", c.bar, c.holes, kinds, c.want)
		}
	}
}

// doText is all that the operations say.
func doText(p *plan.PartPlan) []string {
	var out []string
	for _, op := range p.Operations {
		out = append(append(out, op.Title, op.Holding), op.Do...)
	}
	return out
}
