package sequence

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
	"centrepop/templates/sheettest"
)

// TestReady: the tools of a run stand in its width, each before its page, a name as large as leaves room for both.
func TestReady(t *testing.T) {
	t.Parallel()
	const width = 60.0
	j := &plan.JointPlan{Tools: []string{"Drift", "Pushing sleeve of the rear bearing with its cover", "Plate", "Cap"}}
	size, seen := closeness(1).em(3.2), 0
	for _, line := range closeness(1).ready([]*plan.JointPlan{j}, width) {
		if len(line.Refers) > 0 && line.Height != size*draw.Leading {
			t.Errorf("a line of %v", line.Height)
		}
		for k, page := range line.Refers {
			name := line.Draw.Items[k+len(line.Draw.Items)-len(line.Refers)].(draw.Text)
			end := name.XMm + draw.TextWidth(name.Content, name.SizeMm, true)
			if seen++; page.XMm < end || page.XMm+draw.PageOfMm(size) > width || page.Title != name.Content {
				t.Errorf("%q ends at %v, its page from %v to %v", name.Content, end, page.XMm, page.XMm+draw.PageOfMm(size))
			}
		}
	}
	if seen != len(j.Tools) {
		t.Errorf("%d of %d tools", seen, len(j.Tools))
	}
}

// TestCaptions: how a picture is cut and seen stands in one line where that leaves a millimetre at each side.
func TestCaptions(t *testing.T) {
	t.Parallel()
	for cut, says := range cutWords {
		long := draw.TextWidth(says[0]+" "+says[1], draw.SmallMm, false)
		for more, one := range map[float64]bool{2.01: true, 1.99: false, -long / 2: false} {
			lines := captionOf(&plan.Picture{Cut: cut}, long+more)
			for _, line := range lines {
				if draw.TextWidth(line, draw.SmallMm, false) > long+more-2 || (len(lines) == 1) != one {
					t.Errorf("%s in %v: %q", cut, long+more, lines)
				}
			}
		}
	}
}

// TestTipsApart: how far along an arrow aslant, and how far beside it, another's tip lies, at twice the size.
func TestTipsApart(t *testing.T) {
	t.Parallel()
	a, o := plan.Arrow{AtMm: plan.XY{XMm: 30, YMm: 25}, Dir: plan.XY{XMm: 0.6, YMm: 0.8}}, plan.Arrow{AtMm: plan.XY{XMm: 20, YMm: 20}}
	if along, across := tipsApart(a, o, 2); math.Abs(along-20)+math.Abs(across+10) > 1e-9 {
		t.Errorf("%v along, %v beside", along, across)
	}
}

// TestSmallRules: what decides how a picture and its numbers stand, at both sides of its bounds.
func TestSmallRules(t *testing.T) {
	t.Parallel()
	pic := func(arrows ...plan.Arrow) *plan.Picture {
		return &plan.Picture{MaxMm: plan.XY{XMm: 100, YMm: 50}, Arrows: arrows}
	}
	along := func(x, y float64) plan.Arrow {
		return plan.Arrow{AtMm: plan.XY{XMm: 50, YMm: 25}, Dir: plan.XY{XMm: x, YMm: y}}
	}
	sides := func(width float64, arrows ...plan.Arrow) string { // what is left, right, over and under it
		m := roomOf(pic(arrows...), width, 400)
		if want := min((width-m.left-m.right)/100, (400-m.over-m.under)/50); math.Abs(m.scale-want) > 1e-9 {
			t.Errorf("scale %v, want %v", m.scale, want)
		}
		return fmt.Sprintf("%.3g %.3g %.3g %.3g, %.3g", m.left, m.right, m.over-picture.BalloonRowMm, m.under-picture.CaptionMm, m.arrow)
	}
	front := func(placed ...plan.Placed) string {
		return frontOf(&plan.JointPlan{Placed: placed, A: plan.JointEnd{Title: "d"}, B: plan.JointEnd{Title: "b"}})
	}
	said := func(units parts.Units, lo, hi float64) string {
		return words.NarrowFine(plan.Range{Min: lo, Max: hi}, units)
	}
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"no arrows", sides(55), "2 2 0 0, 1"}, {"four fifths of the width", sides(44), "2 2 0 0, 0.8"}, {"the least arrows", sides(38), "2 2 0 0, 0.7"},
		{"to the right, from the left", sides(55, along(0.51, 0.86)), fmt.Sprintf("%.3g 2 0 0, 1", besideMm)}, {"hardly", sides(55, along(0.5, 0.87)), fmt.Sprintf("2 2 0 %.3g, 1", arrowMm)},
		{"to the left, from the right", sides(44, along(-0.51, 0.86)), fmt.Sprintf("2 %.3g 0 0, 0.8", 0.8*besideMm)}, {"hardly", sides(55, along(-0.5, -0.87)), fmt.Sprintf("2 2 %.3g 0, 1", arrowMm)},
		{"one behind the other", sides(55, along(-1, 0), along(-1, 0)), fmt.Sprintf("2 %.3g 0 0, 1", besideMm+arrowMm)}, {"and on the left", sides(55, along(1, 0), along(1, 0)), fmt.Sprintf("%.3g 2 0 0, 1", besideMm+arrowMm)},
		// The tail of the second lies 0.86 of two arrows of 8 under its tip, 13.76, which is 25 at 0.43 over the edge, 10.75.
		{"leaning, one behind the other", sides(55, along(-0.51, 0.86), along(-0.51, 0.86)), fmt.Sprintf("2 %.3g 0 3.01, 1", besideMm+arrowMm)}, {"and on the left", sides(55, along(0.51, 0.86), along(0.51, 0.86)), fmt.Sprintf("%.3g 2 0 3.01, 1", besideMm+arrowMm)},
		{"and from above", sides(55, along(0.51, -0.86), along(0.51, -0.86)), fmt.Sprintf("%.3g 2 3.01 0, 1", besideMm+arrowMm)},
		{"hardly, and no farther", sides(55, along(-0.5, -0.87), along(-0.5, -0.87)), fmt.Sprintf("2 2 %.3g 0, 1", arrowMm)}, {"nor there", sides(55, along(0.5, 0.87), along(0.5, 0.87)), fmt.Sprintf("2 2 0 %.3g, 1", arrowMm)},
		{"the front of one of the joint, else of the first, that lies as the assembly does", []string{front(), front(plan.Placed{Title: "a", TurnDeg: 9}), front(plan.Placed{Title: "a", TurnDeg: 9}, plan.Placed{Title: "c"}), front(plan.Placed{Title: "a", OtherWay: true}, plan.Placed{Title: "c", FrontMm: 1}),
			front(plan.Placed{Title: "a"}, plan.Placed{Title: "d"}), front(plan.Placed{Title: "a"}, plan.Placed{Title: "d"}, plan.Placed{Title: "b"}), front(plan.Placed{Title: "a"}, plan.Placed{Title: "b", TurnDeg: 9})}, "[b a c c d b a]"},
		{"a state of a source in one line up to 26 mm", sources(&plan.Plan{Sources: []plan.SourceTable{{Title: "Joints"}}})[0].Columns[2].Firm, 26.0},
		{"a range in µm", []string{said(parts.Millimetres, 0.5, 1.2), said(parts.Millimetres, -0.02, 0), said(parts.Inches, 0.0254, 2.54)}, "[500–1200 µm -20 to 0 µm 0.001–0.1 in]"},
	} {
		if got, want := fmt.Sprint(c.got), fmt.Sprint(c.want); got != want {
			t.Errorf("%s: %s, want %s", c.what, got, want)
		}
	}
	// The page of a tool's sheet stands half an em behind its name, on its line.
	for _, width := range []float64{180, 60} {
		x, size := 0.0, closeness(1).em(3.2)
		lines := closeness(1).ready([]*plan.JointPlan{{Tools: []string{"T1 Stop disc", "T2 Sleeve"}}}, width)
		lead := draw.TextWidth("Have ready:", size, false) + size/2
		if len(lines[0].Refers) == 0 {
			t.Fatalf("no pages in %v", width)
		}
		x = lead + draw.TextWidth("T1 Stop disc", size, true) + size/2
		if r := lines[0].Refers[0]; math.Abs(r.XMm-x) > 1e-9 || math.Abs(r.YMm+size) > 1e-9 || r.SizeMm != size || r.Title != "T1 Stop disc" {
			t.Errorf("in %v the page stands at %+v, want %v", width, r, x)
		}
	}
}

// TestTablesOfARun: several pieces have a table of their places between what to do and what to check.
func TestTablesOfARun(t *testing.T) {
	t.Parallel()
	for n, want := range map[int]string{1: "[Do, and tick|What]", 2: "[Do, and tick|Its place|What]", 3: "[Do, and tick|Its place|What]"} {
		var run []*plan.JointPlan
		for i := range n {
			run = append(run, &plan.JointPlan{A: plan.JointEnd{Copy: i + 1}, Steps: []plan.JointStep{{N: 1, Title: "Weld"}}, Checks: []plan.Check{{What: "leg"}}})
		}
		for how, tables := range map[string][]draw.Table{"alone": closeness(1).tables(run, 180), "beside another": closeness(1).asideTables(run, 130)} {
			got := ""
			for i, table := range tables {
				column := map[bool]int{true: 1, false: len(table.Columns) - 1 - n}[len(table.Columns) == 2]
				if i == len(tables)-1 {
					column = 0
				} else if i == 0 {
					column = len(table.Columns) - 1 - n
				}
				got += "|" + table.Columns[column].Head
				if how == "beside another" && !table.Tight {
					t.Errorf("%d, %s: table %d is not tight", n, how, i)
				}
			}
			if how == "beside another" { // which heads the checks by their title
				want = strings.Replace(want, "|What", "|Check before going on", 1)
			} else {
				want = strings.Replace(want, "|Check before going on", "|What", 1)
			}
			if "["+got[1:]+"]" != want {
				t.Errorf("%d, %s: %s, want %s", n, how, got, want)
			}
		}
	}
}

// TestDialsOfAStep: the clock of a step is as large as it is roomy, and small only where nothing lies on it that has a
// letter and the step is set as close as can be.
func TestDialsOfAStep(t *testing.T) {
	t.Parallel()
	mark := plan.ClockMark{Deg: 90, Part: "Cover", Label: "port"}
	for _, c := range []struct {
		c     closeness
		marks []plan.ClockMark
		r     float64
	}{{1, nil, 18}, {0.9, []plan.ClockMark{mark}, 16.2}, {0.8, nil, 14.5}, {0.5, nil, 14.5}, {0.42, nil, smallDialMm}, {0.42, []plan.ClockMark{mark}, 14.5}} {
		j := &plan.JointPlan{Bolt: &plan.BoltPlan{OrderDeg: []float64{0, 180, 90, 270}}, Clock: c.marks}
		var got []float64
		for _, piece := range c.c.pictures(&plan.Plan{Units: parts.Millimetres}, j, 180, 60) {
			for _, p := range sheettest.Flatten(t, piece.Drawn(), 0, 0, nil) {
				if s, ok := p.Item.(draw.Shape); ok && s.WidthMm == draw.LineMm && s.Path.Closed() {
					got = append(got, s.Path.Bounds().W()/2)
				}
			}
		}
		if len(got) == 0 || math.Abs(slices.Max(got)-c.r) > 1e-6 {
			t.Errorf("%v, %d marks: circles of %v, want %v", c.c, len(c.marks), got, c.r)
		}
	}
}

// TestTextsInTheirRoom: a text that a picture has little room for is set as small as it must be, and then cut, to that room.
func TestTextsInTheirRoom(t *testing.T) {
	t.Parallel()
	said := func(n int) string { return strings.Repeat("Bearing housing ", n) }
	const huge = 12345678.9 // of a leg or a throat
	for n := range 6 {
		fillet, butt := &plan.WeldPlan{LegMm: huge, ThroatMm: huge, Process: said(n)}, &plan.WeldPlan{Process: said(n), Bevelled: said(n), BevelDeg: 30, GapMm: huge, RootFaceMm: 1, ThinnerMm: 5}
		note := ", " + said(n)
		seen := &plan.JointPlan{Bolt: &plan.BoltPlan{OrderDeg: []float64{0, 90}}, Placed: []plan.Placed{{Title: said(n)}}}
		dial, _ := clockPanel(seen, 18)
		small, _ := clockPanel(seen, smallDialMm)
		for _, c := range []struct {
			what   string
			d      draw.Drawing
			text   string
			size   float64
			bold   bool
			roomMm float64
		}{
			{"the foot of a weld", weldPanel(fillet, parts.Millimetres, false).Draw, note, 3.2, false, 60}, {"of a small one", weldPanel(fillet, parts.Millimetres, true).Draw, note, 3.2, false, 43},
			{"a throat", weldPanel(fillet, parts.Millimetres, false).Draw, "throat " + words.Sized(huge, parts.Millimetres), 3.4, false, 61 - 20 - 6.5}, {"a small throat", weldPanel(fillet, parts.Millimetres, true).Draw, "throat " + words.Sized(huge, parts.Millimetres), 3.4, false, 44 - 13 - 4.5},
			{"a leg", weldPanel(fillet, parts.Millimetres, false).Draw, "leg " + words.Sized(huge, parts.Millimetres), 3.8, true, 61 - 20 - 13 - 1.5}, {"a small leg", weldPanel(fillet, parts.Millimetres, true).Draw, "leg " + words.Sized(huge, parts.Millimetres), 3.8, true, 44 - 13 - 9 - 1.5},
			// A groove is drawn over the width of its panel but 2 mm and a sixth of the leg at each side.
			{"a bevel", weldPanel(butt, parts.Millimetres, false).Draw, words.Join(" ", said(n), "opened to 30°"), 3.4, false, 61 - 4 - 13.0/3 + 4}, {"a gap", weldPanel(butt, parts.Millimetres, true).Draw, "gap " + words.Short(huge, parts.Millimetres) + ", root face 1 mm", 3.4, false, 44 - 4 - 3 + 4},
			{"whose front a clock shows", dial.Draw, said(n), 3.4, true, 50.6}, {"on a small one", small.Draw, said(n), 2.8, true, 45 - 2},
		} {
			text, size := draw.Shrink(c.text, c.size, c.bold, c.roomMm)
			if c.text == "" {
				continue
			}
			if !slices.ContainsFunc(c.d.Items, func(item draw.Item) bool {
				got, ok := item.(draw.Text)
				return ok && got.Content == text && math.Abs(got.SizeMm-size) < 1e-9 && got.Bold == c.bold
			}) {
				t.Errorf("%s: no %q of %v in %q", c.what, text, size, allTexts(c.d))
			}
		}
	}
}

// TestTwoRows: six numbers of a picture that is higher than wide stand three above it and three below, each near what it points at;
// of five, or of one as wide as high, all above. Under it stands a row of 10.8 then, two radii of 3.4 and 4 between.
func TestTwoRows(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		n     int
		high  float64
		below []int
	}{{5, 120, nil}, {6, 120, []int{4, 5, 6}}, {6, 80, nil}} {
		pic := &plan.Picture{MaxMm: plan.XY{XMm: 80, YMm: c.high}}
		for i := range c.n { // one under another
			y := c.high - float64(i)*12
			pic.Shapes = append(pic.Shapes, plan.Shape{Item: i + 1, Named: true, Loops: [][]plan.XY{{{YMm: y}, {XMm: 80, YMm: y}, {XMm: 80, YMm: y - 10}, {YMm: y - 10}}}},
				plan.Shape{Item: i + 1, Named: true, Loops: [][]plan.XY{{{YMm: y}, {XMm: 8, YMm: y}, {XMm: 8, YMm: y - 1}}}})
		}
		if c.below != nil { // the last three lie in the lower half
			for i := 3; i < 6; i++ {
				for j := range pic.Shapes[2*i].Loops[0] {
					pic.Shapes[2*i].Loops[0][j].YMm -= 40
				}
			}
		}
		under := roomOf(pic, 120, 200).under - picture.CaptionMm
		p := pictureOf(pic, 120, 200)
		var below []int
		for _, item := range p.Later().Items {
			if text, ok := item.(draw.Text); ok && text.Bold && text.YMm < -p.Height/2 {
				n, _ := strconv.Atoi(text.Content)
				below = append(below, n)
			}
		}
		slices.Sort(below)
		if wanted := 10.8 * min(1, float64(len(c.below))); !slices.Equal(below, c.below) || math.Abs(under-wanted) > 1e-9 {
			t.Errorf("%d numbers, %v high: %v below, %v under it; want %v", c.n, c.high, below, under, c.below)
		}
	}
}

// TestFloatStandsWhereItIsSet: a play that shims under a cover set later is no number of the bearing's own step.
func TestFloatStandsWhereItIsSet(t *testing.T) {
	t.Parallel()
	for by, want := range map[string]int{"": 2, "cap": 1} { // grease besides
		if got := bearingNumbers(&plan.BearingPlan{HasEndFloat: true, EndFloatMm: plan.Range{Min: 0.02, Max: 0.06}, SetBy: by}, words.Writer{}); len(got) != want {
			t.Errorf("set by %q: %+v", by, got)
		}
	}
}
