package sheets

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

var a4 = draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"}

// The index names the pages of a part by what they are, and joins runs; a
// chapter of several joins its pages.
func TestIndexJoinsRuns(t *testing.T) {
	t.Parallel()
	on := func(scale string, titles ...string) *draw.Sheet { return &draw.Sheet{Scale: scale, Parts: titles} }
	pl := &plan.Plan{Parts: []*plan.PartPlan{{Title: "Tube", Quantity: 2}, {Title: "Ring", Quantity: 1}}}
	table, others := indexTables(pl, []draw.Chapter{
		{Name: PartsName, Sheets: []*draw.Sheet{on("", "Tube"), on("", "Tube", "Ring"), on("", "Ring")}},
		{Name: "Templates, 1:1", Sheets: []*draw.Sheet{on("1:1", "Tube"), on("1:1", "Ring"), on("1:1", "Tube", "Ring")}},
		{Part: "Assembly", Name: "Step 1", Sheets: []*draw.Sheet{{}}}, {Part: "Assembly", Name: "Step 2", Sheets: []*draw.Sheet{{}, {}}},
	}, 4)
	page, templates := len(table.Columns)-2, len(table.Columns)-1
	var got [][3]string
	for _, row := range table.Rows {
		got = append(got, [3]string{row[0], row[page], row[templates]})
	}
	want := [][3]string{{"Tube", "5–6", "8, 10"}, {"Ring", "6–7", "9–10"}}
	if !slices.Equal(got, want) {
		t.Errorf("rows %q, want %q", got, want)
	}
	if want := []string{"Templates, 1:1", "8–10", "Assembly", "11–13", "", ""}; len(others.Rows) != 1 || !slices.Equal(others.Rows[0], want) {
		t.Errorf("others %q, want %q", others.Rows, want)
	}
	if !table.Columns[0].Leads || !others.Columns[0].Leads || !others.Columns[2].Leads {
		t.Error("a name leads nowhere")
	}
}

// The verdict of a record never stands on a page without a check, and the
// record names its general tolerance once.
func TestVerdictNotAlone(t *testing.T) {
	t.Parallel()
	pl := sheettest.JobOf("Pug mill", parts.Millimetres, sheettest.FlangePart())
	pl.Tolerance = "ISO 2768-m"
	part := *pl.Parts[0]
	pages := 0
	for n := 1; n <= 90; n += 4 {
		part.Checks = nil
		for range n {
			part.Checks = append(part.Checks, plan.Check{What: "length", Wanted: "120", Limits: "119.700 – 120.300", Gauge: "calipers", Source: lookup.Standard("ISO 2768-m")})
		}
		sheets := Parts(pl, []*plan.PartPlan{&part}, a4, nil, nil)
		if countText(sheets[len(sheets)-1].Draw, "119.700") == 0 {
			t.Errorf("%d checks: the last page of %d has no check", n, len(sheets))
		}
		named := 0
		for _, s := range sheets {
			named += countText(s.Draw, "Without a source: ISO 2768-m.")
		}
		if named != 1 {
			t.Errorf("%d checks: the general tolerance is named %d times", n, named)
		}
		pages = len(sheets)
	}
	if pages < 2 {
		t.Errorf("90 checks on %d page", pages)
	}
}

// Every line and limit of every operation, every hole and every check is
// printed, and each piece has its box to tick and its column to fill in.
func TestPartSheetsSayEverything(t *testing.T) {
	t.Parallel()
	for _, s := range sheettest.Samples() {
		for _, part := range s.Plan.Parts {
			f := draw.Frame{WidthMm: s.Paper.WidthMm, HeightMm: s.Paper.HeightMm}
			all := ""
			for _, sheet := range Parts(s.Plan, []*plan.PartPlan{part}, f, map[string]Patterns{part.Name: {Notes: []string{"no template of the drum"}}}, nil) {
				all += " " + strings.Join(allTexts(sheet.Draw), " ")
			}
			all = strings.Join(strings.Fields(all), " ")
			want := []string{"no template of the drum"}
			for _, op := range part.Operations {
				want = append(append(append(want, op.Title, op.Holding), op.Do...), op.Limits...)
			}
			for _, c := range part.Checks {
				want = append(want, c.Limits)
			}
			want = append(want, part.Notes...)
			for _, text := range want {
				// A long text breaks into lines: its words are looked for in order.
				if !wordsInOrder(all, text) {
					t.Errorf("%s on %s: no %q", part.Name, s.Name, text)
				}
			}
		}
	}
}

// wordsInOrder tells whether the words of a text follow one another, perhaps
// with others between where a table sets cells beside each other.
func wordsInOrder(all, text string) bool {
	for _, word := range strings.Fields(text) {
		if !strings.Contains(all, strings.Trim(word, "…")) {
			return false
		}
	}
	return true
}

// TestSmallPartsShareAPage: two plates with little to do stand on one page,
// which both own.
func TestSmallPartsShareAPage(t *testing.T) {
	t.Parallel()
	small := func(title string) *plan.PartPlan {
		return &plan.PartPlan{Name: title, Title: title, Quantity: 1, Operations: []plan.Operation{{N: 1, Machine: "Saw", Title: "Cut"}},
			Checks: []plan.Check{{What: "length", Limits: "9 – 11"}}}
	}
	list := []*plan.PartPlan{small("Key"), small("Link"), small("Clip")}
	sheets := Parts(&plan.Plan{Units: parts.Millimetres, Parts: list}, list, a4, nil, nil)
	if len(sheets) != 1 || !slices.Equal(sheets[0].Parts, []string{"Key", "Link", "Clip"}) || len(sheets[0].Starts) != 3 {
		t.Errorf("%d sheets, the first of %q", len(sheets), sheets[0].Parts)
	}
}

// TestSignedOnce: who signs stands beside the rules where there is room, else at
// the end; in either case once.
func TestSignedOnce(t *testing.T) {
	t.Parallel()
	pl := sheettest.JobOf("Pug mill", parts.Millimetres, sheettest.FlangePart())
	pl.Lifts = slices.Repeat([]string{strings.Repeat("after the front bearing: two people; ", 30)}, 20)
	for _, c := range []struct {
		paper draw.Frame
		first bool
	}{{a4, true}, {draw.Frame{WidthMm: 140, HeightMm: 200, Name: "least"}, false}} {
		sheets := density(0.7).cover(cover{pl: pl, paper: c.paper}, 0)
		if len(sheets) < 2 {
			t.Fatalf("%s: %d pages", c.paper.Name, len(sheets))
		}
		for i, s := range sheets {
			want := 0
			if i == 0 && c.first || i == len(sheets)-1 && !c.first {
				want = 1
			}
			if got := countText(s.Draw, "Signed before"); got != want {
				t.Errorf("%s, page %d of %d: signed %d times, want %d", c.paper.Name, i+1, len(sheets), got, want)
			}
		}
	}
}

// TestSmallPartFillsAPage: a small part stands on what a large one leaves of its
// last page, although another part comes between them, and so takes no page.
func TestSmallPartFillsAPage(t *testing.T) {
	t.Parallel()
	part := func(title string, checks int) *plan.PartPlan {
		p := &plan.PartPlan{Name: title, Title: title, Quantity: 1, Operations: []plan.Operation{{N: 1, Machine: "Saw", Title: "Cut"}}}
		for range checks {
			p.Checks = append(p.Checks, plan.Check{What: "length", Limits: "9 – 11"})
		}
		return p
	}
	list := []*plan.PartPlan{part("Frame", 120), part("Rail", 90), part("Clip", 9)}
	sheets := Parts(&plan.Plan{Units: parts.Millimetres, Parts: list}, list, a4, nil, nil)
	alone := 0
	for _, p := range list[:2] {
		alone += len(Parts(&plan.Plan{Units: parts.Millimetres, Parts: list}, []*plan.PartPlan{p}, a4, nil, nil))
	}
	var order []string
	for _, s := range sheets {
		order = append(order, s.Starts...)
	}
	if len(sheets) != alone || !slices.Equal(order, []string{"Frame", "Clip", "Rail"}) {
		t.Errorf("%d sheets for %d, in the order %q", len(sheets), alone, order)
	}
}

// TestBesideTheViews: what is in the way of no table stands beside the views: the
// remarks under a short table, and under the views a table for which a long one leaves
// room.
func TestBesideTheViews(t *testing.T) {
	t.Parallel()
	holes := func(face parts.Face, n int) *plan.Face {
		f := &plan.Face{Face: face, Round: true, MinMm: plan.XY{XMm: -50, YMm: -50}, MaxMm: plan.XY{XMm: 50, YMm: 50}}
		for i := range n {
			f.Holes = append(f.Holes, plan.Hole{N: i + 1, XMm: 10, YMm: float64(i), DiameterMm: 5})
		}
		return f
	}
	for _, c := range []struct {
		front, back  int
		remark, more int // the columns of the remarks
		second       int // and of the second table
		slots, third int // slots of the back, and the column of their table
	}{{3, 0, 1, 1, -1, 0, -1}, {12, 0, 0, 1, -1, 0, -1}, {20, 3, 0, 0, 0, 0, -1}, {20, 14, 0, 0, 1, 0, -1}, {20, 3, 0, 0, 0, 1, 1}, {20, 3, 0, 0, 0, 9, 1}, {26, 3, 0, 0, 0, 1, 0}, {26, 3, 0, 0, 0, 9, 1}} {
		p := &plan.PartPlan{Name: "Ring", Title: "Ring", Quantity: 1, Section: &plan.Section{Flat: true}, Notes: []string{"Mind.", "More."}, Faces: []*plan.Face{holes(parts.Front, c.front)},
			Operations: []plan.Operation{{N: 1, Machine: "Saw", Title: "Cut"}}}
		if c.back > 0 {
			p.Faces = append(p.Faces, holes(parts.Back, c.back))
			for i := range c.slots {
				p.Faces[1].Slots = append(p.Faces[1].Slots, plan.Slot{N: 50 + i, WidthMm: 6, LengthMm: 20})
			}
		}
		one := contentOf(origin{&plan.Plan{Units: parts.Millimetres}, p, Patterns{}}, a4).at(0.8)
		f := draw.NewFlow(one.page(a4))
		one.set(f, true)
		column := func(text string) int {
			top := 0.0
			for _, b := range f.Sheets[0].Blocks {
				if strings.Contains(strings.Join(allTexts(*b.Draw), " "), "Machine") {
					top = b.TopMm
				}
			}
			for _, b := range f.Sheets[0].Blocks {
				if strings.Contains(strings.Join(allTexts(*b.Draw), " "), text) {
					switch {
					case b.TopMm < top:
						return 1
					case b.XMm > a4.WidthMm/2:
						return 1
					}
					return 0
				}
			}
			return -1
		}
		if r, m, s, third := column("Mind."), column("More."), column("BACK face: holes"), column("BACK face: slots"); r != c.remark || m != c.more || s != c.second || third != c.third {
			t.Errorf("%d and %d holes, %d slots: the remarks in columns %d and %d, the second table in %d, the third in %d", c.front, c.back, c.slots, r, m, s, third)
		}
	}
}

// TestPiecesNeedTheWidth: the record of four pieces is set over the whole width
// where that is lower, of one piece in two columns of three rows at least.
func TestPiecesNeedTheWidth(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ quantity, rows, heads int }{{1, 10, 2}, {4, 10, 1}, {1, 6, 2}, {1, 5, 1}} {
		p := &plan.PartPlan{Name: "Pillar", Title: "Pillar", Quantity: c.quantity}
		for range c.rows {
			p.Checks = append(p.Checks, plan.Check{What: "front thread M16 for a counterpart · gauge", Limits: "counterpart runs freely, no shake"})
		}
		sheets := Parts(&plan.Plan{Units: parts.Millimetres}, []*plan.PartPlan{p}, a4, nil, nil)
		if got := countText(sheets[0].Draw, "Limits"); got != c.heads {
			t.Errorf("%d rows, %d pieces: %d columns of the record, want %d", c.rows, c.quantity, got, c.heads)
		}
	}
}

// TestBesides: of few parts on a page each has its tables beside its views or below
// the operations; of many all or none.
func TestBesides(t *testing.T) {
	t.Parallel()
	for n, want := range map[int][]uint64{1: {0, 1}, 2: {0, 3, 1, 2}, 3: {0, 7, 1, 2, 3, 4, 5, 6}, 4: {0, 15}} {
		if got := besides(n); !slices.Equal(got, want) {
			t.Errorf("%d parts: %b, want %b", n, got, want)
		}
	}
	if l := (&look{beside: 2}); l.besideViews(0) || !l.besideViews(1) {
		t.Error("not the second part alone")
	}
}

func TestPieceHeads(t *testing.T) {
	t.Parallel()
	for n, want := range map[int]string{1: "ok", 2: "pc 1|pc 2", 4: "pc 1|pc 2|pc 3|pc 4", 5: "all 5"} {
		if got := strings.Join(pieceHeads(n, "ok"), "|"); got != want {
			t.Errorf("%d pieces: %q, want %q", n, got, want)
		}
	}
}

// countText counts the texts of a drawing that hold a word.
func countText(d draw.Drawing, word string) int {
	n := 0
	for _, text := range allTexts(d) {
		if strings.Contains(text, word) {
			n++
		}
	}
	return n
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

// A table of the points of a flat pattern is left out where the pattern is printed
// at 1:1, and said to be; what the pattern does not show stays, and so do the rules.
func TestPointsOnTheTemplate(t *testing.T) {
	t.Parallel()
	pl := sheettest.JobOf("Pug mill", parts.Millimetres, sheettest.FlangePart())
	dev := plan.Development{Name: "cone", Kind: plan.ConePattern, Title: "Cone", Sizes: []plan.PatternValue{{Name: "radius", Text: "300"}}, Rules: []string{"R = r/sin a"},
		Tables: []plan.PatternTable{{Title: "bends", Heads: []string{"No."}, Rows: [][]string{{"12°"}}}, {Title: "points", Drawn: true, Heads: []string{"No."}, Rows: [][]string{{"87.65"}}}}}
	pl.Parts[0].Developments = []plan.Development{dev}
	for printed, want := range map[string][4]int{"cone": {1, 0, 1, 1}, "other": {1, 1, 0, 1}} {
		all := ""
		for _, s := range Parts(pl, pl.Parts, a4, map[string]Patterns{pl.Parts[0].Name: {Printed: []string{printed}}}, nil) {
			all += strings.Join(allTexts(s.Draw), " ") + " "
		}
		got := [4]int{}
		for i, text := range []string{"12°", "87.65", "Its points are on the template", "Worked out by R = r/sin a."} {
			got[i] = strings.Count(all, text)
		}
		if got != want {
			t.Errorf("with %s printed: %v, want %v in %s", printed, got, want, all)
		}
	}
}

// Blocks stand in two columns so that the taller is as low as it can be.
func TestLowestSplit(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		highs []float64
		want  int
	}{{[]float64{50, 20, 30}, 1}, {[]float64{10, 20, 30, 5}, 2}, {[]float64{5, 6, 60}, 2}, {[]float64{60, 5, 6}, 1}, {[]float64{10}, 0}, {nil, 0}} {
		if got, _ := lowestSplit(c.highs); got != c.want {
			t.Errorf("%v: %d in the left, want %d", c.highs, got, c.want)
		}
	}
}

// TestFacesBesideASection: two faces beside a section together stand as high as its
// sizes make it, however close the sheet is set.
func TestFacesBesideASection(t *testing.T) {
	t.Parallel()
	face := func(side parts.Face) *plan.Face {
		return &plan.Face{Face: side, Round: true, MinMm: plan.XY{XMm: -50, YMm: -50}, MaxMm: plan.XY{XMm: 50, YMm: 50}, Outline: "M50 0A50 50 0 0 1 -50 0A50 50 0 0 1 50 0Z"}
	}
	p := &plan.PartPlan{Section: &plan.Section{LengthMm: 50, MaxMm: 50}, Faces: []*plan.Face{face(parts.Front), face(parts.Back)}}
	for i := range 12 {
		p.Dimensions = append(p.Dimensions, plan.Dimension{Kind: plan.DiameterDim, ToMm: 50, RadiusMm: 30, Inside: i%2 == 0, Text: "Ø60 H7", Limits: "60.000 – 60.030"})
	}
	alone := *p
	alone.Faces = nil
	section, both := views(&alone, 0.42, 90)[0], views(p, 0.42, 90)[0]
	if both.Height < section.Height-0.1 {
		t.Errorf("with faces %g high, without %g", both.Height, section.Height)
	}
	least := 0.0
	var of func(d *draw.Drawing)
	of = func(d *draw.Drawing) {
		for _, item := range d.Items {
			switch it := item.(type) {
			case draw.Group:
				of(it.Drawing)
			case draw.Shape:
				if b := it.Path.Bounds(); math.Abs(b.W()-b.H()) < 1e-6 && b.W() > least {
					least = b.W()
				}
			}
		}
	}
	of(both.Drawn())
	if least < 14 {
		t.Errorf("the faces are %g mm across", least)
	}
}

// TestPicturesFillThePage: what pages leave over goes to their pictures, and no page is added and none overrun for it.
func TestPicturesFillThePage(t *testing.T) {
	t.Parallel()
	paper := draw.Frame{WidthMm: 210, HeightMm: 297}
	c := contentOf(origin{&plan.Plan{}, sheettest.HousingPart(), Patterns{}}, paper)
	group := []*content{c}
	l := alone(c, paper).look
	small := l.pictures()
	if l.enlarge(group, paper); l.larger <= small {
		t.Errorf("%+v", l)
	}
	f := draw.NewTrial(c.page(paper), l.pages)
	if l.set(f, group); f.Over() || f.Past {
		t.Error("more pages, or past the foot of one")
	}
}
