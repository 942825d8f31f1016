package draw

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"
)

// TestTallRows: a row that is taller than a page goes on with its next lines: each of them once, in its column and in
// order, and no part taller than the page.
func TestTallRows(t *testing.T) {
	t.Parallel()
	lines := func(name string, n int) string {
		var out []string
		for i := range n {
			out = append(out, fmt.Sprint(name, i))
		}
		return strings.Join(out, "\n")
	}
	for _, c := range [][3]int{{70, 3, 20}, {5, 90, 70}, {1, 1, 100}, {0, 41, 0}} {
		for _, tight := range []bool{false, true} {
			f := newFlow(120, 120, 10)
			table := Table{Tight: tight, Columns: []Column{{Head: "a", Flex: true, Size: 3}, {Head: "b", Flex: true, Size: 4}, {Head: "c", Flex: true, Size: 5}},
				Rows: [][]string{{"one", "two", "three"}, {lines("a", c[0]), lines("b", c[1]), lines("c", c[2])}, {"end", "", ""}}}
			f.Table(table)
			got := map[string][]string{}
			for _, s := range f.Sheets {
				for _, b := range s.Blocks[1:] {
					if b.TopMm-b.HeightMm < f.Body.Y0-1e-6 {
						t.Errorf("%v: a part reaches down to %v, the page to %v", c, b.TopMm-b.HeightMm, f.Body.Y0)
					}
				}
				for _, text := range written(s.Draw.Items) {
					if n := len(text.Content); n > 1 && text.Content[1] >= '0' && text.Content[1] <= '9' {
						got[text.Content[:1]] = append(got[text.Content[:1]], text.Content)
					}
				}
			}
			for i, name := range []string{"a", "b", "c"} {
				if want := strings.Split(lines(name, c[i]), "\n"); c[i] > 0 && !slices.Equal(got[name], want) {
					t.Errorf("%v: column %s has %d lines: %q", c, name, len(got[name]), got[name])
				}
			}
		}
	}
}

// TestWidths: columns take what their texts need; what is left goes to the flexible ones in proportion, without
// any to all; what lacks is taken from them down to their widest word. A column has its least and its most width.
func TestWidths(t *testing.T) {
	t.Parallel()
	word := strings.Repeat("m", 5)
	w := TextWidth(word, TextMm, false) + 2*padAcrossMm + 0.2
	long := TextWidth(word+" "+word, TextMm, false) + 2*padAcrossMm + 0.2
	plain, flex := Column{}, Column{Flex: true}
	for _, c := range []struct {
		name  string
		of    []Column
		row   []string
		total float64
		want  []float64
	}{
		{"as wide as they need", []Column{plain, plain}, []string{word, word + " " + word}, w + long, []float64{w, long}},
		{"all share what is left", []Column{plain, plain}, []string{word, word + " " + word}, 2 * (w + long), []float64{2 * w, 2 * long}},
		{"the flexible ones share it", []Column{plain, flex, flex}, []string{word, word, word + " " + word}, w + 3*(w+long), []float64{w, 3 * w, 3 * long}},
		{"half of what can be spared lacks", []Column{plain, flex}, []string{word, word + " " + word}, w + (w+long)/2, []float64{w, (w + long) / 2}},
		{"a least width", []Column{{Least: 3 * w}, flex}, []string{word, word}, 5 * w, []float64{3 * w, 2 * w}},
		{"a most width", []Column{{Flex: true, Most: 1.2 * w}, plain}, []string{word + " " + word, word}, 2.2 * w, []float64{1.2 * w, w}},
		{"a most width under a word", []Column{{Flex: true, Most: 5}, plain}, []string{word + " " + word, word}, 2 * w, []float64{w, w}},
		{"a head breaks over 22 mm", []Column{{Head: strings.Repeat("mm ", 20)}, plain}, []string{"1", word}, 2 * (22 + 2*padAcrossMm + 0.2 + w), []float64{2 * (22 + 2*padAcrossMm + 0.2), 2 * w}},
		{"a firm line is not broken", []Column{{Flex: true, Firm: long}, flex}, []string{word + " " + word, word + " " + word}, w + long, []float64{long, w}},
	} {
		table := Table{Columns: c.of, Rows: [][]string{c.row}}
		got := table.shareWidths(c.total)
		for i := range got {
			if math.Abs(got[i]-c.want[i]) > 1e-6 || table.scale != 1 {
				t.Errorf("%s: %v at scale %v, want %v", c.name, got, table.scale, c.want)
			}
		}
	}
	// Where words would break, all text is smaller, in steps of 0.05, down to 2.6 mm.
	table := Table{Columns: []Column{plain, plain}, Rows: [][]string{{word, word}}}
	for _, k := range []float64{0.97, 0.93, 0.88} {
		total := 2*k*(w-2*padAcrossMm-0.2) + 2*(2*padAcrossMm+0.2)
		if got := table.shareWidths(total); math.Abs(table.scale-math.Floor(k*20)/20) > 1e-6 || math.Abs(got[0]+got[1]-total) > 1e-6 {
			t.Errorf("%v of the room: scale %v, %v wide of %v", k, table.scale, got, total)
		}
	}
}

// TestHeadsKeepClear: each line of a head lies inside its cell, 1.3 mm off its sides, and breaks only where it must.
func TestHeadsKeepClear(t *testing.T) {
	t.Parallel()
	head := "one two three"
	long := TextWidth(head, headTextMm, true)
	for _, c := range []struct {
		wide  float64
		lines int
	}{{long + 2*padAcrossMm + 0.01, 1}, {long + 2*padAcrossMm - 0.01, 2}} {
		table := Table{Columns: []Column{{Head: head, Flex: true}}, Rows: [][]string{{"x"}}}.Laid(c.wide)
		if got := len(table.laid.heads[0]); got != c.lines {
			t.Errorf("in %v: %d lines, want %d", c.wide, got, c.lines)
		}
		if want := float64(c.lines)*headTextMm*Leading + 2*padAboveMm; math.Abs(table.laid.headsMm-want) > 1e-9 {
			t.Errorf("in %v: %v high, want %v", c.wide, table.laid.headsMm, want)
		}
	}
}

// TestRowsHeight: what the width of flexible columns is weighed by: the lines that their texts fill, each a twentieth
// longer where it breaks, of the highest of a row, and the least height.
func TestRowsHeight(t *testing.T) {
	t.Parallel()
	text := strings.Repeat("m", 20)
	long := TextWidth(text, TextMm, false)
	for _, tight := range []bool{false, true} {
		lead, pad := Leading, padAboveMm
		if tight {
			lead, pad = 1.17, 0.3
		}
		table := Table{Tight: tight, RowMm: 7, Columns: []Column{{Flex: true}, {}, {Flex: true, Size: 5}}, Rows: [][]string{{text, text, "x"}, {"x", text, "x\nx\nx"}, {"x", "", "x"}}}
		table.scale, table.ems = 1, table.measured()
		for _, parts := range []float64{0.9, 1, 2, 3.3} {
			n := math.Ceil(parts * 1.05)
			if parts <= 1 {
				n = 1
			}
			want := max(7, n*TextMm*lead+2*pad, 5*lead+2*pad) + max(7, 3*5*lead+2*pad) + max(7, 5*lead+2*pad)
			if got := table.rowsHeight([]float64{long/parts + 2*padAcrossMm, 10, 40}); math.Abs(got-want) > 1e-9 {
				t.Errorf("tight %v, a text %v times as long as its room: %v, want %v", tight, parts, got, want)
			}
		}
	}
}

// TestLinesOfMixed: a word that leaves too little room goes on the next line, also after one letter.
func TestLinesOfMixed(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]string{"a " + Bold("mmm"): "a|" + Bold("mmm"), Bold("a") + " mmm": Bold("a") + "|mmm", "a b " + Bold("c"): "a b " + Bold("c")} {
		if got := strings.Join(wrapMixed(text, 3, false, TextWidth("mmm", 3, true)), "|"); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// TestMixedLinesAreFull: at any width the lines of bold and plain text say all of it in order, none is wider, and none had
// room for the next word.
func TestMixedLinesAreFull(t *testing.T) {
	t.Parallel()
	text := "Turn the seat to " + Bold("Ø60 h6 over all of it, feed 0.12") + " , then part it off " + Bold("at 104") + " mm"
	plain := strings.Join(strings.Fields(strings.ReplaceAll(text, BoldMark, "")), " ")
	for _, bold := range []bool{false, true} {
		for width := TextWidth("feed 0.12", 3, true); width < TextWidth(plain, 3, true)+5; width += 0.37 {
			lines := wrapMixed(text, 3, bold, width)
			if got := strings.ReplaceAll(strings.Join(lines, " "), BoldMark, ""); got != plain {
				t.Fatalf("%v mm: %q", width, lines)
			}
			for i, line := range lines {
				if w := mixedWidth(line, 3, bold); w > width+1e-9 {
					t.Errorf("%v mm: %q is %v wide", width, line, w)
				}
				if i+1 == len(lines) {
					continue
				}
				next := lines[i+1]
				heavy := bold || strings.HasPrefix(next, BoldMark)
				word := strings.Fields(strings.ReplaceAll(next, BoldMark, " "))[0]
				if w := mixedWidth(line, 3, bold) + TextWidth(" ", 3, heavy) + TextWidth(word, 3, heavy); w < width-0.1 { // kerning
					t.Errorf("%v mm: %q is on the next line, and %v would do", width, word, w)
				}
			}
		}
	}
}

// TestBlocksOfRows: a single row in blocks has empty ones beside it, and rows fill whole blocks.
func TestBlocksOfRows(t *testing.T) {
	t.Parallel()
	for n, want := range map[int]string{1: "1,,", 2: "1,2,", 3: "1,2,3", 4: "1,3,|2,4,", 6: "1,3,5|2,4,6"} {
		var rows [][]string
		for i := range n {
			rows = append(rows, []string{fmt.Sprint(i + 1)})
		}
		var got []string
		for _, row := range Abreast(rows, 3) {
			got = append(got, strings.Join(row, ","))
		}
		if s := strings.Join(got, "|"); s != want {
			t.Errorf("%d rows: %q, want %q", n, s, want)
		}
	}
}

// TestRefersMove: where the number of a page comes moves with its piece, in columns too.
func TestRefersMove(t *testing.T) {
	t.Parallel()
	f := newFlow(200, 150, 20)
	p := piece(15, false)
	p.Refers = []PageOf{{Title: "x", XMm: 3, YMm: -4, SizeMm: 3}}
	f.Add(piece(10, false), p)
	f.Columns(2)
	f.TurnColumn()
	f.Add(p)
	body, got := f.Body, f.Sheets[0].Refers
	if len(got) != 2 || got[0].XMm != body.X0+3 || math.Abs(got[0].YMm-(body.Y1-20-10-4)) > 1e-9 ||
		math.Abs(got[1].XMm-(body.X0+(body.Width()+GutterMm)/2+3)) > 1e-9 || math.Abs(got[1].YMm-(body.Y1-20-25-4)) > 1e-9 {
		t.Errorf("%+v in %v", got, body)
	}
}

// TestLowColumns: columns that begin under the middle of a page are left for a page of their own by a piece that does
// not fit; at the head of a page one that is too tall stays.
func TestLowColumns(t *testing.T) {
	t.Parallel()
	for part, pages := range map[float64]int{0.2: 1, 0.49: 1, 0.51: 2} {
		f := newFlow(100, 150, 0)
		high := f.Body.Height()
		used := part * high
		f.Add(piece(used, false))
		f.Columns(2)
		f.Add(piece(high-used-5, false), piece(high-25, false))
		if len(f.Sheets) != pages {
			t.Errorf("columns from %v of %v down: %d pages, want %d", used, high, len(f.Sheets), pages)
		}
	}
	f := newFlow(100, 150, 0)
	f.Add(piece(500, false))
	if len(f.Sheets) != 1 {
		t.Errorf("too tall for any page: %d pages", len(f.Sheets))
	}
}

// TestComplete: sheets that are complete are handed over where somebody takes them, and nothing is kept then.
func TestComplete(t *testing.T) {
	t.Parallel()
	var none *Kept
	none.Complete([]*Sheet{{}})
	(&Kept{}).Complete([]*Sheet{{}})
	var took []string
	k := &Kept{Ready: func(s *Sheet) { took = append(took, s.Name) }}
	for range 2 {
		k.Complete(k.Sheets(1, func() []*Sheet { return []*Sheet{{Name: "a"}, {Name: "b"}} }))
	}
	if k.Turn(); !slices.Equal(took, []string{"a", "b", "a", "b"}) || k.Drawn != 0 {
		t.Errorf("took %q, drawn %d", took, k.Drawn)
	}
}

// TestSumTellsApart: drawings that differ in anything drawn have other sums, equal ones the same.
func TestSumTellsApart(t *testing.T) {
	t.Parallel()
	line := func(x float64) *canvas.Path { return Segment(0, 0, x, 5, 1).Path }
	group := func(m canvas.Matrix, clip *canvas.Path) Group {
		return Group{Drawing: &Drawing{Items: []Item{Disc(1, 2, 3)}}, Transform: m, Clip: clip}
	}
	one := canvas.Identity
	items := []Item{
		Text{Content: "a"}, Text{Content: "b"}, Text{Content: "a", XMm: 1}, Text{Content: "a", YMm: 1}, Text{Content: "a", SizeMm: 1}, Text{Content: "a", RotateDeg: 1}, Text{Content: "a", Bold: true}, Text{Content: "a", Align: Right}, Text{Content: "a", Tone: Grey},
		Shape{Path: line(1)}, Shape{Path: line(2)}, Shape{Path: line(1), WidthMm: 1}, Shape{Path: line(1), DashMm: []float64{1}}, Shape{Path: line(1), Fill: Black}, Shape{Path: line(1), Stroke: Black},
		Link{Path: line(1), To: "a"}, Link{Path: line(1), To: "b"}, Link{Path: line(2), To: "a"},
		group(one, nil), group(one, line(1)), group(one, line(2)), group(one.Translate(1, 0), nil), group(one.Translate(0, 1), nil), group(one.Rotate(90), nil),
	}
	seen := map[uint64]int{}
	for i, item := range items {
		sum := Sum(&Drawing{Items: []Item{item}})
		if k, is := seen[sum]; is {
			t.Errorf("%+v has the sum of %+v", item, items[k])
		}
		if seen[sum] = i; sum != Sum(&Drawing{Items: []Item{item}}) {
			t.Errorf("%+v has two sums", item)
		}
	}
}

// TestSmallThings: a label stands before a value alone; a chapter is bound with its own closing in place of a title block.
func TestSmallThings(t *testing.T) {
	t.Parallel()
	if Labelled("mass", "") != "" || Labelled("mass", "2 kg") != "mass: 2 kg" {
		t.Error("labelled")
	}
	var closed [2]int
	a4 := Frame{WidthMm: 210, HeightMm: 297}
	doc := Bind(Job{Name: "Job"}, []Chapter{{Name: "A", Sheets: []*Sheet{{Frame: a4, Starts: []string{"bolt"}}}}, {Name: "B", Sheets: []*Sheet{{Frame: a4, Holds: []string{"bolt", "nut"}, Close: func(n, total int) { closed = [2]int{n, total} }},
		{Frame: a4, Holds: []string{"nut"}, Refers: []PageOf{{Title: "nut", XMm: 7, YMm: 9, SizeMm: 3, RotateDeg: 90}, {Title: "bolt", XMm: 1}, {Title: "none", XMm: 2}}}}}}, "all")
	if closed != [2]int{2, 3} || len(written(doc.Pages[1].Drawing.Items)) != 0 || len(written(doc.Pages[0].Drawing.Items)) == 0 {
		t.Errorf("closed as %v, %d texts", closed, len(written(doc.Pages[1].Drawing.Items)))
	}
	texts := written(doc.Pages[2].Drawing.Items)
	for _, want := range []Text{{XMm: 7, YMm: 9, SizeMm: 3, RotateDeg: 90, Bold: true, Content: "page 2"}, {XMm: 1, Bold: true, Content: "page 1"}} {
		if !slices.Contains(texts, want) {
			t.Errorf("no %+v in %+v", want, texts)
		}
	}
}

// TestOver: the patch under a text is 0.4 mm wider at either side and 0.1 higher and lower than its room, turned with it.
func TestOver(t *testing.T) {
	t.Parallel()
	for _, text := range []Text{{XMm: 20, YMm: 30, SizeMm: 4, Content: "Ø11"}, {XMm: 20, YMm: 30, SizeMm: 4, Align: Centre, Content: "gap"}, {XMm: 20, YMm: 30, SizeMm: 4, Align: Right, RotateDeg: 90, Content: "Ø11"}} {
		items, r := Over(text), TextRect(text)
		want := Rect{r.X0 - 0.4, r.Y0 - 0.1, r.X1 + 0.4, r.Y1 + 0.1}
		if text.RotateDeg == 90 { // (x, y) about (20, 30) goes to (20 − (y − 30), 30 + x − 20)
			want = Rect{50 - want.Y1, 10 + want.X0, 50 - want.Y0, 10 + want.X1}
		}
		b := items[0].(Shape).Path.Bounds()
		if math.Abs(b.X0-want.X0)+math.Abs(b.Y0-want.Y0)+math.Abs(b.X1-want.X1)+math.Abs(b.Y1-want.Y1) > 1e-9 || items[1] != Item(text) {
			t.Errorf("%+v: %v, want %v", text, b, want)
		}
	}
}

// TestStadium: a slot with round ends is as long as from end to end and two radii, as wide as these, and turned as it
// leads; one that leads nowhere is a circle.
func TestStadium(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		half canvas.Point
		w, h float64
	}{{canvas.Point{}, 6, 6}, {canvas.Point{X: 1}, 8, 6}, {canvas.Point{X: -4}, 14, 6}, {canvas.Point{Y: 1}, 6, 8}, {canvas.Point{X: 3, Y: 4}, 12, 14}} {
		s := Stadium(canvas.Point{X: 10, Y: 20}, c.half, 3, 0.2)
		if b := s.Path.Bounds(); math.Abs(b.W()-c.w)+math.Abs(b.H()-c.h)+math.Abs(b.X0+b.X1-20)+math.Abs(b.Y0+b.Y1-40) > 1e-6 {
			t.Errorf("%v: %v, want %v x %v", c.half, b, c.w, c.h)
		}
		if want, got := 6*math.Pi+4*c.half.Length(), s.Path.Length(); math.Abs(got-want) > 0.01 {
			t.Errorf("%v: %v round, want %v", c.half, got, want)
		}
	}
}

// TestMeasuredHeads: the head of a table is as high as its title, its lead and its heads that it has.
func TestMeasuredHeads(t *testing.T) {
	t.Parallel()
	columns, rows := []Column{{Head: "a"}, {Head: "b"}}, [][]string{{"1", "2"}, {"3", "4"}, {"5", "6"}, {"7", "8"}, {"9", "10"}}
	heads := headTextMm*Leading + 2*padAboveMm
	title, lead := HeadMm*Leading+2.6, TextMm*Leading+1
	for _, c := range []struct {
		title, lead string
		want        float64
	}{{"", "", heads}, {"Title", "", heads + title}, {"", "Lead.", heads + lead}, {"Title", "Lead.", heads + title + lead}} {
		table := Table{Title: c.title, Lead: c.lead, Columns: columns, Rows: rows}
		if got, _ := table.Measure(100); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%q, %q: %v, want %v", c.title, c.lead, got, c.want)
		}
		cut := table.Cut(1, 3, "", "", 100)
		if got, high := cut.Measure(100); math.Abs(got-heads) > 1e-9 || len(high) != 2 || cut.Rows[0][0] != "3" {
			t.Errorf("cut: %v, %d rows", got, len(high))
		}
		// A table is begun where its head and four rows have room, and goes to the next page for a hair less.
		_, high := table.Measure(100)
		need := c.want + high[0] + high[1] + high[2] + high[3]
		for spare, pages := range map[float64]int{0.01: 1, -0.01: 2} {
			f := newFlow(100, 150, 0)
			f.Add(piece(f.Body.Height()-need-spare, false))
			f.Table(Table{Title: c.title, Lead: c.lead, Columns: columns, Rows: rows[:4]})
			if len(f.Sheets) != pages {
				t.Errorf("%q, %q: %v more than it needs: %d pages", c.title, c.lead, spare, len(f.Sheets))
			}
		}
	}
}

// TestPictured: a drawing of level and upright lines is a table and no picture, wherever it stands; a line that leans, or
// a curve, makes a picture, which differs with what it shows.
func TestPictured(t *testing.T) {
	t.Parallel()
	seen := map[uint64]string{}
	for svg, want := range map[string]bool{"M5 3V9": false, "M5 3H9": false, "M7 2H9V4H7Z": false, "M5 3V9L5.0000005 12": false, "M5 3L5.00001 9": true, "M5 3L9 3.00001": true, "M5 3L9 7": true, "M5 3L9 8": true, "M5 3Q9 9 12 3": true, "M1 1L3 3": true} {
		d := &Drawing{Items: []Item{Shape{Path: canvas.MustParseSVGPath(svg), Stroke: Black}, Text{Content: "a"}}}
		sum, ok := pictured(d)
		if ok != want {
			t.Errorf("%s: %v", svg, ok)
		}
		if other, is := seen[sum]; is && want && !strings.Contains(svg+other, ".0") {
			t.Errorf("%s is %s", svg, other)
		}
		seen[sum] = svg
	}
}

// TestLeaderFromRim: a leader begins at the rim of its balloon and ends in a dot; inside the balloon there is the dot alone.
func TestLeaderFromRim(t *testing.T) {
	t.Parallel()
	for far, lines := range map[float64]int{0: 0, BalloonMm: 0, BalloonMm + 0.1: 1, 30: 1} {
		items := Leader(10, 20, 10+0.6*far, 20+0.8*far)
		got := drawnLines(items[:len(items)-1])
		if len(got) != lines || lines == 1 && (math.Hypot(got[0][0]-10, got[0][1]-20)-BalloonMm > 1e-9 || math.Abs(got[0][2]-10-0.6*far) > 1e-9 || math.Abs((got[0][0]-10)*0.8-(got[0][1]-20)*0.6) > 1e-9) {
			t.Errorf("%v off: %v", far, got)
		}
		if b := items[len(items)-1].(Shape).Path.Bounds(); math.Abs(b.W()-1.2) > 1e-6 || math.Abs(b.X0+b.X1-20-1.2*far) > 1e-6 {
			t.Errorf("%v off: the dot is %v", far, b)
		}
	}
}

// TestRectPaths: a rectangle of any sides has its path from corner to corner; without a side there is none.
func TestRectPaths(t *testing.T) {
	t.Parallel()
	for _, c := range [][2]float64{{1, 5}, {5, 1}, {1, 1}, {0.2, 30}} {
		if got := drawnLines([]Item{Shape{Path: R(2, 3, 2+c[0], 3+c[1]).Path()}}); len(got) != 4 || got[0] != [4]float64{2, 3, 2 + c[0], 3} || got[2] != [4]float64{2 + c[0], 3 + c[1], 2, 3 + c[1]} {
			t.Errorf("%v: %v", c, got)
		}
	}
	if !R(2, 3, 2, 9).Path().Empty() || !R(2, 3, 9, 3).Path().Empty() {
		t.Error("a rectangle without a side has a path")
	}
	// Text is never broken narrower than 1 mm: two letters of more than that stand on lines of their own.
	for width, want := range map[float64]int{-5: 2, 0: 2, 1: 2, 2: 1} {
		if got := Wrap("il", 3, false, width); len(got) != want {
			t.Errorf("in %v: %q", width, got)
		}
	}
}

// TestFarLabels: a label that stands more than 6 mm off its hole has a line from 0.5 mm off itself to 0.5 mm off the
// hole, towards its middle, which is kept clear; one nearer has none.
func TestFarLabels(t *testing.T) {
	t.Parallel()
	m := Mark{Number: "12", X: 50, Y: 40, Radius: 3}
	way := labelWay{numberMm: SmallNumMm}
	for _, c := range []struct {
		spot Rect
		from [2]float64 // of the line; none where it is the middle of the hole
	}{
		{R(60, 39, 65, 41), [2]float64{59.5, 40}}, {R(59.4, 39, 64, 41), [2]float64{50, 40}}, {R(20, 39, 25, 41), [2]float64{25.5, 40}}, {R(49, 55, 52, 58), [2]float64{50, 54.5}}, {R(49, 10, 52, 14), [2]float64{50, 14.5}},
		{R(60, 60, 64, 63), [2]float64{59.5, 59.5}}, {R(30, 10, 36, 14), [2]float64{36.5, 14.5}},
	} {
		s, room := &Sheet{}, NewOccupied(R(0, 0, 100, 80))
		m.draw(s, room, c.spot, way)
		got := drawnLines(s.Draw.Items)
		if c.from == [2]float64{m.X, m.Y} {
			if len(got) != 0 {
				t.Errorf("%v: a line %v", c.spot, got)
			}
			continue
		}
		d := math.Hypot(c.from[0]-m.X, c.from[1]-m.Y)
		want := [4]float64{c.from[0], c.from[1], m.X + (c.from[0]-m.X)*3.5/d, m.Y + (c.from[1]-m.Y)*3.5/d}
		if len(got) != 1 || math.Abs(got[0][0]-want[0])+math.Abs(got[0][1]-want[1])+math.Abs(got[0][2]-want[2])+math.Abs(got[0][3]-want[3]) > 1e-9 {
			t.Errorf("%v: %v, want %v", c.spot, got, want)
		}
		for _, k := range []float64{0, 0.3, 0.6, 1} {
			x, y := want[0]+(want[2]-want[0])*k, want[1]+(want[3]-want[1])*k
			if room.Free(R(x, y, x, y)) {
				t.Errorf("%v: %v, %v on its line is free", c.spot, x, y)
			}
		}
	}
}

// TestPatternsApart: marks are labelled alike within their pattern alone: one that has no room for its size does not
// take it from the next pattern.
func TestPatternsApart(t *testing.T) {
	t.Parallel()
	s, room := &Sheet{}, NewOccupied(R(0, 0, 200, 100))
	room.AddText(R(0, 0, 60, 46))
	room.AddText(R(0, 54, 60, 100))
	room.AddText(R(33, 46, 60, 54))
	marks := []Mark{{Number: "1", Group: "a", Size: "M8 tap, drill 6.8 deep", X: 25, Y: 50, Radius: 1}, {Number: "2", Group: "b", Size: "Ø11", X: 120, Y: 30, Radius: 5}, {Number: "3", Group: "b", Size: "Ø11", X: 120, Y: 70, Radius: 5}}
	LabelMarks(s, room, marks)
	var got []string
	for _, text := range written(s.Draw.Items) {
		got = append(got, text.Content)
	}
	if want := []string{"1", "2", "Ø11", "3", "Ø11"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestFourRowsTogether: the first four of many rows stand under their heads together, or on the next page.
func TestFourRowsTogether(t *testing.T) {
	t.Parallel()
	table := Table{Columns: []Column{{Head: "a"}}, RowMm: 8}
	for i := range 9 {
		table.Rows = append(table.Rows, []string{fmt.Sprint(i)})
	}
	head, high := table.Measure(84)
	need := head + high[0] + high[1] + high[2] + high[3]
	for spare, rows := range map[float64]int{0.01: 4, -0.01: 0} {
		f := newFlow(100, 200, 0)
		f.Add(piece(f.Body.Height()-need-spare, false))
		f.Table(table)
		got := 0
		for _, text := range written(f.Sheets[0].Draw.Items) {
			if text.Content != "a" {
				got++
			}
		}
		if got != rows || len(f.Sheets) != 2 {
			t.Errorf("%v more than four rows: %d rows on the first of %d pages", spare, got, len(f.Sheets))
		}
	}
}
