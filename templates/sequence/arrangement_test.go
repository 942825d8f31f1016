package sequence

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
	"centrepop/templates/sheettest"
)

// What no joint ties to the machine has a sheet of its own after it, with a list of what is in it alone.
func TestArrangementApart(t *testing.T) {
	t.Parallel()
	view := func(item int, x, y float64) plan.View {
		loop := []plan.XY{{}, {XMm: x}, {XMm: x, YMm: y}, {YMm: y}}
		return plan.View{MaxMm: plan.XY{XMm: x, YMm: y}, Lines: [][]plan.XY{loop}, Shapes: []plan.Shape{{Kind: plan.ShapePart, Item: item, Loops: [][]plan.XY{loop}}}}
	}
	pl := &plan.Plan{Job: "Mill", Units: parts.Millimetres, Parts: []*plan.PartPlan{{Title: "Roll", Quantity: 1}, {Title: "Gear", Quantity: 2}, {Title: "Base", Quantity: 1}},
		Arrangement: &plan.Arrangement{Front: view(3, 800, 430), End: view(3, 210, 430), Top: view(3, 800, 210), Apart: []*plan.Arrangement{
			{Title: "Roll", Holds: map[int]int{1: 1, 2: 1}, Front: view(1, 200, 60), End: view(1, 60, 60), Top: view(1, 200, 60)}}}}
	sheets := Chapters(pl, draw.Frame{WidthMm: 210, HeightMm: 297})[0].Sheets
	if len(sheets) < 2 {
		t.Fatalf("%d sheets", len(sheets))
	}
	last := sheets[len(sheets)-1]
	texts := allTexts(last.Draw)
	for text, want := range map[string]bool{"Roll": true, "Gear": true, "Base": false, "200": true, "800": false, "2": true,
		"Mill – general arrangement, Roll, tied to the machine by no joint, cut along the axis, 1:1": true} {
		if got := slices.Contains(texts, text); got != want {
			t.Errorf("%q: %v, want %v; %v", text, got, want, texts)
		}
	}
	if says := "Tied to it by no joint, each with what is on it on a sheet of its own: Roll (1)."; !slices.ContainsFunc(sheets, func(s *draw.Sheet) bool { return strings.Contains(strings.Join(allTexts(s.Draw), " "), says) }) {
		t.Errorf("nothing says %q", says)
	}
}

// The machine is drawn at a scale of ISO 5455 that fits, with its sizes, an item
// number for each part that is cut or seen, and the list that names them; a plan
// without one has no sheet.
func TestArrangement(t *testing.T) {
	t.Parallel()
	square := func(x, y, w, h float64) []plan.XY {
		return []plan.XY{{XMm: x, YMm: y}, {XMm: x + w, YMm: y}, {XMm: x + w, YMm: y + h}, {XMm: x, YMm: y + h}}
	}
	pl := &plan.Plan{Job: "Mill", Units: parts.Millimetres, Parts: []*plan.PartPlan{
		{Title: "Base", Quantity: 1}, {Title: "Post", Quantity: 2}, {Title: "Lid", Quantity: 1}, {Title: "Peg", Quantity: 3}}}
	paper := draw.Frame{WidthMm: 210, HeightMm: 297}
	if got := Chapters(pl, paper); got != nil {
		t.Fatalf("%d chapters of nothing", len(got))
	}
	pl.Arrangement = &plan.Arrangement{
		Front: plan.View{
			MaxMm: plan.XY{XMm: 800, YMm: 430}, Lines: [][]plan.XY{square(200, 300, 100, 130)}, Behind: []plan.Place{{Item: 3, AtMm: plan.XY{XMm: 250, YMm: 400}}},
			Shapes: []plan.Shape{
				{Kind: plan.ShapePart, Item: 1, Title: "Base", Loops: [][]plan.XY{square(0, 0, 800, 30)}},
				{Kind: plan.ShapeBar, Item: 2, Title: "Post", Loops: [][]plan.XY{square(100, 30, 40, 400)}}, {Kind: plan.ShapeScrew, Loops: [][]plan.XY{square(10, 30, 8, 8)}},
			}},
		End:    plan.View{Behind: []plan.Place{{Item: 3}, {Item: 4, AtMm: plan.XY{XMm: 205, YMm: 9}}}, MaxMm: plan.XY{XMm: 210, YMm: 430}, Lines: [][]plan.XY{square(0, 0, 210, 430)}},
		Top:    plan.View{MaxMm: plan.XY{XMm: 800, YMm: 210}, Lines: [][]plan.XY{square(0, 0, 800, 210)}},
		Beside: []string{"Lid"}, ByHand: []string{"Key"}, Passing: []string{"Hook"}, Floating: []string{"Peg"},
		// Two rows across, of which the second is written beside the first and not over it.
		Anchors: []plan.Anchor{{AtMm: plan.XY{XMm: 100, YMm: 50}, FromMm: plan.XY{XMm: 127, YMm: 76.2}, DiameterMm: 14.5}, {AtMm: plan.XY{XMm: 103, YMm: 50}, FromMm: plan.XY{XMm: 130, YMm: 76.2}, DiameterMm: 14.5}},
	}
	for units, want := range map[parts.Units][]string{
		parts.Millimetres: {"1:5", "1:5", "800", "430", "210", "127", "76.2", "Ø14.5"}, parts.Inches: {"1:4", "1:8", "31.5 in", "16.93 in", "8.27 in", "5 in", "3 in", "Ø0.571 in"},
	} {
		pl.Units = units
		chapters := Chapters(pl, paper)
		if len(chapters) != 1 || len(chapters[0].Sheets) != 2 {
			t.Fatalf("%+v", chapters)
		}
		front, outside := chapters[0].Sheets[0], chapters[0].Sheets[1]
		if front.Scale != want[0] || outside.Scale != want[1] || !front.All || !outside.All || front.Frame.WidthMm != 297 {
			t.Errorf("drawn at %s and %s, want %v", front.Scale, outside.Scale, want)
		}
		for sheet, say := range map[*draw.Sheet][]string{
			front:   {want[2], want[3], "1", "2", "3", "Base", "Post", "Peg", "FRONT ◄", "TOP"},
			outside: {want[2], want[3], want[4], "90°", "Seen from the FRONT, " + want[1], want[5], want[6], "Crosses in the view from above: holes for anchors, " + want[7] + ", as far from the FRONT end and from the axis as written above and beside it. Not cut in the view along the axis: Lid (3). Put in by hand at the steps that say so, not drawn: Key. Comes off again, drawn at its step: Hook. Placed by no joint, not drawn: Peg (4).", "4"},
		} {
			texts := allTexts(sheet.Draw)
			whole := strings.Join(texts, " ") // sentences run on
			for _, want := range say {
				if !slices.Contains(texts, want) && !strings.Contains(whole, want) {
					t.Errorf("no %q in %q", want, texts)
				}
			}
		}
		// The parts lead to their sheets by their metal, balloons and rows.
		got := map[string]int{}
		for _, to := range allLinks(front.Draw) {
			got[to]++
		}
		if got["Base"] != 3 || got["Post"] != 3 || got["Lid"] != 2 || got["Peg"] != 1 {
			t.Errorf("links %v", got)
		}
	}
	// With joints the views from outside stand under the order of assembly.
	pl.Units, pl.Joints = parts.Millimetres, sheettest.JoinedPlan().Joints[:2]
	pl.Arrangement.End.MaxMm.YMm, pl.Arrangement.Top.MaxMm.XMm = 300, 400
	chapters := Chapters(pl, paper)
	if order := chapters[1]; len(chapters[0].Sheets) != 1 || len(order.Sheets) != 1 || !slices.Contains(allTexts(order.Sheets[0].Draw), "Seen from the FRONT, 1:5") {
		t.Errorf("arrangement on %d sheets, the order says %q", len(chapters[0].Sheets), allTexts(order.Sheets[0].Draw))
	}
	pl.Arrangement.End.MaxMm.YMm = 430 // only a sheet on its side shows this at 1:5
	if chapters = Chapters(pl, paper); len(chapters[0].Sheets) != 2 {
		t.Errorf("views that are larger on their own sheet: %d sheets", len(chapters[0].Sheets))
	}
	// A list without room beside the machine stands on the second sheet, with joints or without.
	pl.Units, pl.Arrangement.Front.MaxMm.YMm = parts.Millimetres, 650
	pl.Arrangement.Front.Lines = [][]plan.XY{square(0, 0, 799, 649), square(400, 649, 399, 1), square(799, 645, 1, 5)}
	chapters = Chapters(pl, paper)
	if slices.Contains(allTexts(chapters[0].Sheets[0].Draw), "Base") || !slices.Contains(allTexts(chapters[0].Sheets[1].Draw), "Base") {
		t.Error("the list stands over the machine")
	}
	// A list so long that views above it would be cramped has a sheet of its own after them.
	for range 40 {
		pl.Parts = append(pl.Parts, &plan.PartPlan{Title: "Clip", Quantity: 1})
	}
	sheets := Chapters(pl, paper)[0].Sheets
	if len(sheets) != 3 || sheets[1].Scale != "1:5" || sheets[2].Scale != "not to scale" || slices.Contains(allTexts(sheets[1].Draw), "Clip") || !slices.Contains(allTexts(sheets[2].Draw), "Clip") {
		t.Errorf("%d sheets, the views at %s", len(sheets), sheets[1].Scale)
	}
}

// A tall machine stands at the left, with the list beside it and below that the
// views from outside where they are large enough; nothing lies over the list.
func TestArrangementOfATallMachine(t *testing.T) {
	t.Parallel()
	box := func(w, h float64) plan.View {
		return plan.View{MaxMm: plan.XY{XMm: w, YMm: h}, Lines: [][]plan.XY{{{}, {XMm: w}, {XMm: w, YMm: h}, {YMm: h}, {}}}}
	}
	for _, c := range []struct {
		outside float64 // the height of the view from the front
		sheets  int
	}{{250, 1}, {4000, 2}} {
		pl := &plan.Plan{Job: "Mill", Units: parts.Millimetres, Parts: []*plan.PartPlan{{Title: "Base", Quantity: 1}, {Title: "Post", Quantity: 2}},
			Arrangement: &plan.Arrangement{Front: box(500, 1400), End: box(200, c.outside), Top: box(500, 200)}}
		chapters := Chapters(pl, draw.Frame{WidthMm: 210, HeightMm: 297})
		front := chapters[0].Sheets[0]
		if len(chapters[0].Sheets) != c.sheets || front.Scale != "1:10" || !slices.Contains(allTexts(front.Draw), "Post") {
			t.Errorf("views %v high: %d sheets at %s say %q", c.outside, len(chapters[0].Sheets), front.Scale, allTexts(front.Draw))
		}
		if seen := slices.Contains(allTexts(front.Draw), "Seen from the FRONT, 1:5"); seen != (c.sheets == 1) {
			t.Errorf("views %v high: on the first sheet %v", c.outside, seen)
		}
		page := &draw.Page{Drawing: front.Draw}
		if got := sheettest.Crossed(page); len(got) > 0 {
			t.Errorf("views %v high: a line through %v", c.outside, got)
		}
	}
}

// The numbers of a tall machine with many parts have rows as long as they need beside the list, and do not lie over one
// another: thirty, 6.8 across and 1.2 between, half above and half below.
func TestManyNumbersOfATallMachine(t *testing.T) {
	t.Parallel()
	pl := &plan.Plan{Job: "Mill", Units: parts.Millimetres, Arrangement: &plan.Arrangement{}}
	front := plan.View{MaxMm: plan.XY{XMm: 500, YMm: 1400}}
	for n := range 30 {
		pl.Parts = append(pl.Parts, &plan.PartPlan{Title: "Part " + strconv.Itoa(n+1), Quantity: 1})
		front.Behind = append(front.Behind, plan.Place{Item: n + 1, AtMm: plan.XY{XMm: 250, YMm: 40 * float64(n+1)}})
	}
	pl.Arrangement.Front, pl.Arrangement.End, pl.Arrangement.Top = front, plan.View{MaxMm: plan.XY{XMm: 200, YMm: 4000}}, plan.View{MaxMm: plan.XY{XMm: 500, YMm: 200}}
	sheet := Chapters(pl, draw.Frame{WidthMm: 210, HeightMm: 297})[0].Sheets[0]
	if !slices.Contains(allTexts(sheet.Draw), "Part 30") {
		t.Error("no list beside the machine")
	}
	var at [][2]float64
	for _, item := range sheet.Draw.Items {
		if ring, ok := item.(draw.Shape); ok && ring.Path != nil && math.Abs(ring.Path.Bounds().W()-2*draw.BalloonMm) < 0.01 && math.Abs(ring.Path.Bounds().H()-2*draw.BalloonMm) < 0.01 {
			b := ring.Path.Bounds()
			at = append(at, [2]float64{b.X0, b.Y0})
		}
	}
	for i, a := range at {
		for _, b := range at[:i] {
			if math.Hypot(a[0]-b[0], a[1]-b[1]) < 2*draw.BalloonMm {
				t.Errorf("numbers lie over one another at %v and %v", a, b)
			}
		}
	}
	if len(at) != 30 {
		t.Errorf("%d numbers", len(at))
	}
}

// A machine of 400 by 400 by 1000 that stands with its front up is drawn upright at 1:10 on an upright
// sheet, with the list, the plan and a view from the side at the right, which in third angle is that
// of TOP, with the plan above, and in first angle the other, with the plan below. A list of a hundred
// parts has a sheet of its own.
func TestArrangementThatStands(t *testing.T) {
	t.Parallel()
	box := func(w, h float64, x float64) plan.View {
		return plan.View{MinMm: plan.XY{XMm: x}, MaxMm: plan.XY{XMm: x + w, YMm: h}, Lines: [][]plan.XY{{{XMm: x}, {XMm: x + w}, {XMm: x + w, YMm: h}, {XMm: x, YMm: h}, {XMm: x}}}}
	}
	for _, c := range []struct {
		angle plan.Angle
		units parts.Units
		parts int
		want  []string
	}{
		{plan.ThirdAngle, parts.Inches, 3, []string{"Seen from the side of TOP, 1:8", "Seen from above, 1:8", "39.38 in", "15.75 in"}},
		{plan.FirstAngle, parts.Millimetres, 3, []string{"Seen from the side opposite TOP, 1:10", "Seen from above, 1:10", "1000", "400"}},
		{plan.FirstAngle, parts.Millimetres, 100, []string{"Seen from the side opposite TOP, 1:10"}},
	} {
		pl := &plan.Plan{Job: "Jack", Units: c.units, Arrangement: &plan.Arrangement{Stands: c.angle, Front: box(400, 1000, -200), End: box(400, 400, -200), Top: box(400, 1000, -200)}}
		for i := range c.parts {
			pl.Parts = append(pl.Parts, &plan.PartPlan{Title: "Part " + strconv.Itoa(i), Quantity: 1})
			if i >= 12 {
				continue
			}
			at := float64(i)*15 + 100
			pl.Arrangement.Front.Shapes = append(pl.Arrangement.Front.Shapes, plan.Shape{Kind: plan.ShapePart, Item: i + 1, Loops: [][]plan.XY{{{XMm: -5, YMm: at}, {XMm: 30, YMm: at}, {XMm: 30, YMm: at + 10}}}})
		}
		sheets := Chapters(pl, draw.Frame{WidthMm: 297, HeightMm: 210})[0].Sheets
		last := sheets[len(sheets)-1]
		if len(sheets) != 1+c.parts/100 || last.Frame.HeightMm != 297 || !slices.Contains(allTexts(sheets[0].Draw), "Part 2") {
			t.Errorf("%v: %d sheets of %v", c, len(sheets), last.Frame)
		}
		texts := allTexts(last.Draw)
		for _, say := range append(c.want, "FRONT ▲", "TOP ►", "TOP 0° ►", "270°", "3") {
			if !slices.Contains(texts, say) {
				t.Errorf("%v: no %q in %q", c.angle, say, texts)
			}
		}
		heights, middles := map[string]float64{}, map[string]float64{}
		for _, item := range last.Draw.Items {
			if text, ok := item.(draw.Text); ok {
				heights[text.Content] = text.YMm
				middles[strings.Split(text.Content, ",")[0]] = text.XMm
			}
		}
		if cut, plan, hour := middles["Cut along the axis"], middles["Seen from above"], middles["270°"]; cut == 0 || math.Abs(cut-plan)+math.Abs(cut-hour) > 1e-6 {
			t.Errorf("%v: the cut stands about %v, the plan about %v, its hour at %v", c.angle, cut, plan, hour)
		}
		if above := heights["TOP 0° ►"] > heights["FRONT ▲"]; above != (c.angle == plan.ThirdAngle) {
			t.Errorf("%v: the plan lies at %v, the view at %v", c.angle, heights["TOP 0° ►"], heights["FRONT ▲"])
		}
		if got := sheettest.Crossed(&draw.Page{Drawing: last.Draw}); len(got) > 0 {
			t.Errorf("%v: a line through %v", c.angle, got)
		}
	}
}

// A slender machine of many parts is drawn no smaller for their numbers: 39 at its cut would want 20 one over another at
// each side over a plan of 64 (1:20); with 14 in each of three columns there is room. Each is there once, and FRONT on the paper.
func TestManyNumbersOfWhatStands(t *testing.T) {
	t.Parallel()
	box := func(w, h float64) plan.View {
		return plan.View{MinMm: plan.XY{XMm: -w / 2}, MaxMm: plan.XY{XMm: w / 2, YMm: h}, Lines: [][]plan.XY{{{XMm: -w / 2}, {XMm: w / 2}, {XMm: w / 2, YMm: h}}}}
	}
	const cut, seen, all = 33, 39, 42
	pl := &plan.Plan{Job: "Stirrer", Units: parts.Millimetres, Arrangement: &plan.Arrangement{Stands: plan.FirstAngle, Front: box(700, 1682), End: box(700, 1272), Top: box(1272, 1682)}}
	for i := range 100 { // the list of parts has a sheet of its own
		pl.Parts = append(pl.Parts, &plan.PartPlan{Title: "Part", Quantity: 1})
		at, a := plan.XY{XMm: float64(i%7)*90 - 300, YMm: float64(i)*38 + 50}, pl.Arrangement
		switch {
		case i < cut:
			a.Front.Shapes = append(a.Front.Shapes, plan.Shape{Kind: plan.ShapePart, Item: i + 1, Loops: [][]plan.XY{{at, at.Plus(plan.XY{XMm: 30}), at.Plus(plan.XY{XMm: 30, YMm: 10})}}})
		case i < seen:
			a.Front.Behind = append(a.Front.Behind, plan.Place{Item: i + 1, AtMm: at})
		}
		if i < all {
			a.Top.Behind = append(a.Top.Behind, plan.Place{Item: i + 1, AtMm: at})
		}
	}
	sheets := Chapters(pl, draw.Frame{WidthMm: 297, HeightMm: 210})[0].Sheets
	last := sheets[len(sheets)-1]
	times := map[string]int{}
	for _, item := range last.Draw.Items {
		if text, ok := item.(draw.Text); ok {
			times[text.Content]++
			if r := draw.TextRect(text); r.X0 < last.Frame.Body().X0 || r.X1 > last.Frame.Body().X1 {
				t.Errorf("%q at %v", text.Content, r)
			}
		}
	}
	if times["Cut along the axis, 1:20"] != 1 || times["FRONT ▲"] != 1 {
		t.Errorf("%v", times)
	}
	for n := range all {
		if got := times[strconv.Itoa(n+1)]; got != 1 {
			t.Errorf("%d balloons of %d", got, n+1)
		}
	}
}

// allTexts are the texts of a drawing, in order.
func allTexts(d draw.Drawing) []string {
	var out []string
	for _, item := range d.Items {
		switch item := item.(type) {
		case draw.Text:
			out = append(out, item.Content)
		case draw.Group:
			out = append(out, allTexts(*item.Drawing)...)
		}
	}
	return out
}

// allLinks are what the links of a drawing lead to, in order.
func allLinks(d draw.Drawing) []string {
	var out []string
	for _, item := range d.Items {
		switch item := item.(type) {
		case draw.Link:
			out = append(out, item.To)
		case draw.Group:
			out = append(out, allLinks(*item.Drawing)...)
		}
	}
	return out
}

// A machine 150 mm wide on paper stands at each reduction of ISO 5455:1979, clause 5, or
// in inches at each power of 2; the one before would be 300 mm wide or more.
func TestScales(t *testing.T) {
	t.Parallel()
	for units, scales := range map[parts.Units][]float64{
		parts.Millimetres: {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000}, parts.Inches: {1, 2, 4, 8, 16, 32, 64, 128, 256, 512},
	} {
		for _, k := range scales {
			view := plan.View{MaxMm: plan.XY{XMm: 150 * k, YMm: 60 * k}, Lines: [][]plan.XY{{{}, {XMm: 150 * k}, {XMm: 150 * k, YMm: 60 * k}, {}}}}
			pl := &plan.Plan{Job: "Mill", Units: units, Parts: []*plan.PartPlan{{Title: "Base", Quantity: 1}}, Arrangement: &plan.Arrangement{Front: view, End: view, Top: view}}
			if got, want := Chapters(pl, draw.Frame{WidthMm: 210, HeightMm: 297})[0].Sheets[0].Scale, "1:"+strconv.Itoa(int(k)); got != want {
				t.Errorf("%s: %s, want %s", units, got, want)
			}
		}
	}
}

// Of a ring cut above and below the axis the number points at the half that is nearer to
// a row with room; leaders go to the nearer row and stay between the ends of the view
// unless the rows would be too short.
func TestBalloonRows(t *testing.T) {
	t.Parallel()
	if got := bothSides([][]plan.XY{{{YMm: 5}, {XMm: 1, YMm: 6}}, {{YMm: -5}, {XMm: 1, YMm: -6}}, {{YMm: 7}}}); len(got) != 2 || len(got[0]) != 2 || len(got[1]) != 1 {
		t.Errorf("a ring has the sides %v", got)
	}
	for _, loops := range [][][]plan.XY{{{{YMm: 5}, {XMm: 1, YMm: -6}}}, {{{YMm: 5}}, {{YMm: 5}, {YMm: -6}}, {{YMm: -6}}}, {{{YMm: 4}}}} {
		if got := bothSides(loops); len(got) != 1 || len(got[0]) != len(loops) {
			t.Errorf("%v has the sides %v", loops, got)
		}
	}
	rows := func(spots []picture.Spot, within draw.Rect) (above, below int, least, most float64) {
		d := draw.Drawing{}
		balloons(&d, spots, within, draw.R(-200, 0, 400, 100))
		least, most = math.Inf(1), math.Inf(-1)
		for _, item := range d.Items {
			if text, ok := item.(draw.Text); ok {
				least, most = min(least, text.XMm), max(most, text.XMm)
				if text.YMm > 50 {
					above++
				} else {
					below++
				}
			}
		}
		return above, below, least, most
	}
	within := draw.R(0, 0, 60, 100)
	ring := func(n int) []picture.Spot { return []picture.Spot{{N: n, X: 30, Y: 60}, {N: n, X: 30, Y: 40}} }
	if above, below, _, _ := rows([]picture.Spot{{N: 1, X: 10, Y: 70}, {N: 2, X: 50, Y: 20}}, within); above != 1 || below != 1 {
		t.Errorf("%d above and %d below", above, below)
	}
	var spots []picture.Spot
	for n := range 6 { // each way all are 60 − 4.5 or so away; three in each row are the nearest in all
		spots = append(spots, ring(n+1)...)
	}
	if above, below, least, most := rows(spots, within); above != 3 || below != 3 || least < 0 || most > 60 {
		t.Errorf("of six rings %d above and %d below, from %g to %g", above, below, least, most)
	}
	for n := range 20 {
		spots = append(spots, ring(n+7)...)
	}
	if above, below, least, most := rows(spots, within); above != 13 || below != 13 || least > -10 || most < 70 {
		t.Errorf("of 26 rings %d above and %d below, from %g to %g", above, below, least, most)
	}
}

// A part that the cut view of an upright machine does not show has its number in the view from the side.
func TestNumbersAtTheSide(t *testing.T) {
	t.Parallel()
	a := plan.Arrangement{Top: plan.View{MaxMm: plan.XY{XMm: 200, YMm: 400}, Behind: []plan.Place{{Item: 1, AtMm: plan.XY{XMm: 50, YMm: 50}}, {Item: 2, AtMm: plan.XY{XMm: 150, YMm: 90}}}}}
	a.Front.Shapes = []plan.Shape{{Item: 1}}
	r := arranger{pl: &plan.Plan{Parts: []*plan.PartPlan{{}, {}}}, a: &a}
	d := draw.Drawing{}
	r.side(&d, &picture.Paper{Low: a.Top.MinMm, Scale: 0.1}, 10)
	if got := allTexts(d); slices.Contains(got, "1") || !slices.Contains(got, "2") {
		t.Errorf("the side says %q", got)
	}
	for _, item := range d.Items { // 2 mm beside the view
		if text, ok := item.(draw.Text); ok && text.Content == "2" && math.Abs(text.XMm-22-draw.BalloonMm) > 1e-6 {
			t.Errorf("the balloon stands at %v", text.XMm)
		}
	}
}

// TOP of a plan stands beside its line, or over the plan where the place of an anchor stands there.
func TestTopBesideAnchors(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		yMm float64
		top float64
	}{{60, 19}, {10, 43}} {
		v := plan.View{MinMm: plan.XY{XMm: -200, YMm: -200}, MaxMm: plan.XY{XMm: 200, YMm: 200}}
		a := plan.Arrangement{End: v, Anchors: []plan.Anchor{{AtMm: plan.XY{XMm: 100, YMm: c.yMm}, FromMm: plan.XY{XMm: 100, YMm: c.yMm}}}}
		r := arranger{pl: &plan.Plan{}, a: &a}
		d := draw.Drawing{}
		r.plan(&d, &picture.Paper{Low: v.MinMm, Scale: 0.1}, 10)
		for _, item := range d.Items {
			if text, ok := item.(draw.Text); ok && text.Content == "TOP 0° ►" && math.Abs(text.YMm-c.top) > 1e-6 {
				t.Errorf("anchor %g beside: TOP stands %g high, want %g", c.yMm, text.YMm, c.top)
			}
		}
	}
}

// TestScalesAtBounds: the scale is the largest at which views with what stands round them have room on the sheet, less 10 mm
// for its head: 1:10 up to there, and 1:20 beyond, on A4.
func TestScalesAtBounds(t *testing.T) {
	t.Parallel()
	view := func(w, h float64) plan.View {
		return plan.View{MinMm: plan.XY{XMm: -w / 2}, MaxMm: plan.XY{XMm: w / 2, YMm: h}, Lines: [][]plan.XY{{{XMm: -w / 2}, {XMm: w / 2, YMm: h}}}}
	}
	wide, high := papers[0].Body().Width(), papers[0].Body().Height()
	over, low := papers[0].Turned().Body().Width(), papers[0].Turned().Body().Height()
	lying := func(a *plan.Arrangement) *draw.Sheet {
		front, _, _ := newArranger(&plan.Plan{}, a, papers[0]).front()
		return front
	}
	standing := func(a *plan.Arrangement) *draw.Sheet {
		a.Stands = plan.ThirdAngle
		sheets := newArranger(&plan.Plan{}, a, papers[0]).standing()
		return sheets[len(sheets)-1]
	}
	note := newArranger(&plan.Plan{}, &plan.Arrangement{}, papers[0]).notes(wide).Height // of none
	outside := func(a *plan.Arrangement) *draw.Sheet {
		_, scale := newArranger(&plan.Plan{}, a, papers[0]).outside(200, 100)
		return &draw.Sheet{Frame: papers[0], Scale: scaleWord(scale)}
	}
	for name, c := range map[string]struct {
		draw            func(*plan.Arrangement) *draw.Sheet
		front, end, top plan.View
		grow            func(a *plan.Arrangement, by float64)
	}{
		// 18 mm stand at each side, rows of balloons over and under, and 9 mm for the words.
		"as wide": {lying, view(10*(over-36), 100), plan.View{}, plan.View{}, func(a *plan.Arrangement, by float64) { a.Front.MaxMm.XMm += by }},
		"as high": {lying, view(100, 10*(low-10-2*(2*draw.BalloonMm+4)-9)), plan.View{}, plan.View{}, func(a *plan.Arrangement, by float64) { a.Front.MaxMm.YMm += by }},
		// Over the plan 13 mm and 4 under it, 6 mm over the view and 16 under it.
		"upright, high": {standing, view(400, 10*(high-10-40-17-22-note)), view(400, 400), view(400, 100), func(a *plan.Arrangement, by float64) { a.Front.MaxMm.YMm += by }},
		"with its plan": {standing, view(400, 1000), view(400, 10*(high-10-100-17-22-note)), view(400, 100), func(a *plan.Arrangement, by float64) { a.End.MaxMm.YMm += by }},
		// From outside hours stand at 3 places beside the views, and over and under them sizes and titles.
		"outside, wide": {outside, plan.View{}, view(10*(200-3*hourMm)-400, 100), view(400, 100), func(a *plan.Arrangement, by float64) { a.Top.MaxMm.XMm += by }},
		"outside, high": {outside, plan.View{}, view(400, 10*(100-topMm-underMm-note)), view(400, 100), func(a *plan.Arrangement, by float64) { a.End.MaxMm.YMm += by }},
		"from above":    {outside, plan.View{}, view(400, 100), view(400, 10*(100-topMm-underMm-note)), func(a *plan.Arrangement, by float64) { a.Top.MaxMm.YMm += by }},
		// At its left 10 mm for the height, at each side a column of balloons of 9 mm more than one, at the right 84 mm for the list.
		"upright, wide": {standing, view(10*(wide-84-10-4*draw.BalloonMm-18), 1000), view(400, 400), view(400, 100), func(a *plan.Arrangement, by float64) { a.Front.MaxMm.XMm += by }},
		"a wide plan":   {standing, view(400, 1000), view(10*(wide-84-10-4*draw.BalloonMm-18), 400), view(400, 100), func(a *plan.Arrangement, by float64) { a.End.MaxMm.XMm += by }},
		"a wide side":   {standing, view(400, 1000), view(400, 400), view(10*(wide-4-40-10-4*draw.BalloonMm-18), 100), func(a *plan.Arrangement, by float64) { a.Top.MaxMm.XMm += by }},
	} {
		for by, scale := range map[float64]string{-0.5: "1:10", 0.5: "1:20"} {
			a := &plan.Arrangement{Front: c.front, End: c.end, Top: c.top}
			if c.grow(a, by); c.draw(a).Scale != scale {
				t.Errorf("%s and %v more: %s, want %s", name, by, c.draw(a).Scale, scale)
			}
		}
	}
}

// TestTitlesOfViews: the title of a view from outside has the width of the view and of its share of the rest, less 4 mm.
func TestTitlesOfViews(t *testing.T) {
	t.Parallel()
	v := plan.View{MaxMm: plan.XY{XMm: 300, YMm: 200}}
	for _, width := range []float64{110, 120, 140, 160, 200} {
		p, scale := newArranger(&plan.Plan{}, &plan.Arrangement{End: v, Top: v}, papers[0]).outside(width, 90)
		for _, title := range []string{"Seen from the FRONT", "Seen from above, FRONT at the left"} {
			text, size := draw.Shrink(title+", "+scaleWord(scale), 3.4, true, 300/scale+(width-600/scale)/2-4)
			if !slices.ContainsFunc(p.Draw.Items, func(item draw.Item) bool {
				got, ok := item.(draw.Text)
				return ok && got.Content == text && math.Abs(got.SizeMm-size) < 1e-9
			}) {
				t.Errorf("%v wide: no %q of %v in %q", width, text, size, allTexts(p.Draw))
			}
		}
	}
}

// TestListHasRoom: the list of parts has its materials where that leaves its words room, and goes without them where it
// would be higher for them.
func TestListHasRoom(t *testing.T) {
	t.Parallel()
	pl := demo(t, "gatejack")
	r := newArranger(pl, pl.Arrangement, papers[1])
	least := r.list(190).Height
	for width, want := range map[float64]int{190: 2, 118: 2, 112: 0, 84: 0} {
		p := r.list(width)
		n := len(seq.Keep(allTexts(p.Draw), func(s string) bool { return s == "Material" }))
		if n != want || p.Height != least {
			t.Errorf("%v wide: %d columns of materials, %v high, wanted %d and %v", width, n, p.Height, want, least)
		}
	}
}

// TestListBesideUpright: where an upright machine leaves the list of parts room beside its plan only without the
// materials, which the cover has, it stands there so, and on no sheet of its own.
func TestListBesideUpright(t *testing.T) {
	t.Parallel()
	pl := demo(t, "gatejack")
	sheets := newArranger(pl, pl.Arrangement, papers[1]).standing()
	texts := allTexts(sheets[0].Draw)
	if len(sheets) != 1 || !slices.Contains(texts, "Cord sheave") || slices.Contains(texts, "Material") {
		t.Errorf("%d sheets, %q", len(sheets), texts)
	}
}

// TestLowMachine: of a machine that is lower than a column of its balloons, or than its arrow, balloons stand clear of each
// other and within the room for the view, whose foot lies midway, and TOP and FRONT are not written over each other;
// where it is high enough each has its old place.
func TestLowMachine(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		high   float64 // 1:2
		stands plan.Angle
	}{{20, plan.ThirdAngle}, {20, plan.FirstAngle}, {200, plan.ThirdAngle}, {20, ""}, {200, ""}} {
		v := plan.View{MaxMm: plan.XY{XMm: 300, YMm: c.high}}
		pl := &plan.Plan{Job: "Bench"}
		for i := range 9 {
			x := float64(30 * i)
			loop := []plan.XY{{XMm: x}, {XMm: x + 30}, {XMm: x + 30, YMm: c.high}, {XMm: x, YMm: c.high}}
			v.Shapes = append(v.Shapes, plan.Shape{Kind: plan.ShapePart, Item: i + 1, Loops: [][]plan.XY{loop}})
			pl.Parts = append(pl.Parts, &plan.PartPlan{Title: "Plate", Quantity: 1})
		}
		pl.Arrangement = &plan.Arrangement{Front: v, End: v, Top: v, Stands: c.stands}
		sheets, _ := newArranger(pl, pl.Arrangement, papers[0]).arrangement(200)
		at := map[string]draw.Text{}
		var balloons []plan.XY
		for _, item := range sheets[0].Draw.Items {
			text, ok := item.(draw.Text)
			if !ok {
				continue
			}
			if n, err := strconv.Atoi(text.Content); err == nil && n < 10 && text.Bold && text.SizeMm == 3.8 {
				balloons = append(balloons, plan.XY{XMm: text.XMm, YMm: text.YMm})
			}
			at[text.Content] = text
		}
		for i, p := range balloons {
			for _, q := range balloons[:i] {
				if geom.Distance(p, q) < 2*draw.BalloonMm {
					t.Errorf("%+v: balloons at %v and %v", c, p, q)
				}
			}
		}
		if len(balloons) != 9 {
			t.Errorf("%+v: %d balloons", c, len(balloons))
		}
		if c.stands == "" && c.high < 100 != (math.Abs(at["TOP"].YMm-at["FRONT ◄"].YMm-6) < 1e-9) {
			t.Errorf("%+v: TOP at %v, FRONT at %v", c, at["TOP"].YMm, at["FRONT ◄"].YMm)
		}
	}
}
