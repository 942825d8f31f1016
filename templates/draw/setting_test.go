package draw

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// TestCells: the cells of a row lie side by side over the whole width, their
// texts inside, at the side that their column says, in the middle of the height;
// a box to tick stands in the middle of its cell.
func TestCells(t *testing.T) {
	t.Parallel()
	table := Table{Columns: []Column{{Head: "No."}, {Head: "what", Flex: true, Size: 4}, {Head: "mm", Align: Right}, {Head: "c", Align: Centre, Bold: true}, {Head: "done", Tick: true}},
		Rows: [][]string{{"1", "one\ntwo\nthree", "12.5", "x", ""}, {"2", "one", "7", "y", ""}}, RowMm: 9}
	for _, tight := range []bool{false, true} {
		table.Tight = tight
		pieces := table.Pieces(120)
		if len(pieces) != 3 {
			t.Fatalf("%d pieces", len(pieces))
		}
		for row, p := range pieces {
			var cells []Rect
			texts := map[int]Rect{}
			var tick Rect
			n := 0
			for _, item := range p.Draw.Items {
				switch it := item.(type) {
				case Shape:
					b := it.Path.Bounds()
					if it.WidthMm == LineMm {
						tick = Rect{b.X0, b.Y0, b.X1, b.Y1}
						continue
					}
					cells = append(cells, Rect{b.X0, b.Y0, b.X1, b.Y1})
					if (it.Fill == Pale) != (row == 0) {
						t.Errorf("row %d: fill %v", row, it.Fill)
					}
				case Text:
					n++
					r, c := TextRect(it), cells[len(cells)-1]
					r.Y0 = it.YMm
					if !c.Holds(r) {
						t.Errorf("row %d: %q at %v leaves %v", row, it.Content, r, c)
					}
					if old, ok := texts[len(cells)-1]; ok {
						r = Rect{min(r.X0, old.X0), min(r.Y0, old.Y0), max(r.X1, old.X1), max(r.Y1, old.Y1)}
					}
					texts[len(cells)-1] = r
				}
			}
			if len(cells) != 5 || n < 4 {
				t.Fatalf("row %d: %d cells, %d texts", row, len(cells), n)
			}
			x := 0.0
			for i, c := range cells {
				if math.Abs(c.X0-x) > 1e-6 || math.Abs(c.Y1) > 1e-9 || math.Abs(c.Y0+p.Height) > 1e-9 {
					t.Errorf("row %d: cell %d is %v, from %v", row, i, c, x)
				}
				x = c.X1
				r, ok := texts[i]
				if !ok {
					continue
				}
				off := r.X0 - c.X0 - padAcrossMm
				switch table.Columns[i].Align {
				case Centre:
					off = (r.X0 + r.X1 - c.X0 - c.X1) / 2
				case Right:
					off = c.X1 - r.X1 - padAcrossMm
				}
				if math.Abs(off) > 1e-6 {
					t.Errorf("row %d: text %d lies %v off its side", row, i, off)
				}
				// The letters' middle is that of the cell to within a fifth of the em.
				if d := (r.Y0 + r.Y1 - c.Y0 - c.Y1) / 2; math.Abs(d) > 0.2*4 {
					t.Errorf("row %d: text %d lies %v off the middle", row, i, d)
				}
			}
			if math.Abs(x-120) > 1e-6 {
				t.Errorf("row %d ends at %v", row, x)
			}
			if c := cells[4]; row > 0 && (math.Abs(tick.X0+tick.X1-c.X0-c.X1) > 1e-9 || math.Abs(tick.Y0+tick.Y1-c.Y0-c.Y1) > 1e-9 || math.Abs(tick.Width()-5) > 1e-9 || math.Abs(tick.Height()-5) > 1e-9) {
				t.Errorf("row %d: the box %v in %v", row, tick, c)
			}
		}
		// Three lines of 4 mm and the room above and below; one line takes the least height.
		want := map[bool]float64{false: 3*4*Leading + 2*padAboveMm, true: 3*4*1.17 + 0.6}[tight]
		if math.Abs(pieces[1].Height-want) > 1e-9 || pieces[2].Height != 9 {
			t.Errorf("rows %v and %v high, want %v and 9", pieces[1].Height, pieces[2].Height, want)
		}
	}
}

// TestFirm: what is firm is not broken up to its width; spare columns without a
// word are left out; a column has at least its least width.
func TestFirm(t *testing.T) {
	t.Parallel()
	const text = "Ø12 H7 deep"
	wide := mixedWidth(text, SmallMm, false)
	rows := [][]string{{"1", text, ""}}
	at := func(c Column) float64 {
		c.Size = headTextMm // becomes SmallMm as the heads do
		return Table{Columns: []Column{{Head: "n"}, c, {Head: "spare", Spare: true}}, Rows: rows}.LeastWidth()
	}
	soft := at(Column{Flex: true})
	word := max(TextWidth("deep", SmallMm, false), TextWidth("Ø12", SmallMm, false))
	for _, c := range []struct {
		name string
		c    Column
		more float64
	}{
		{"soft", Column{Flex: true}, 0}, {"firm", Column{Flex: true, Firm: wide}, wide - word}, {"not so firm", Column{Flex: true, Firm: wide - 0.01}, 0},
		{"fixed", Column{}, wide - word}, {"least", Column{Flex: true, Least: word + 10}, 10 - 2*padAcrossMm - 0.2},
	} {
		if got := at(c.c) - soft; math.Abs(got-c.more) > 1e-6 {
			t.Errorf("%s: %v more, want %v", c.name, got, c.more)
		}
	}
	rows[0][2] = "x"
	if at(Column{Flex: true}) <= soft+5 {
		t.Error("a spare column with a word is left out")
	}
	if w := (Table{Columns: []Column{{Head: "n"}, {Head: "w", Flex: true, Most: 30}}, Rows: [][]string{{"1", strings.Repeat("word ", 30)}}}).Laid(200).laid.widths; w[0]+w[1] < 199.999 {
		t.Errorf("%v of 200", w)
	}
}

// TestTableBreaks: from four heights of pages high enough for four rows in 40 % of them, at least four rows stand before
// and after a break, the head and the title stand over each, no row leaves the
// page, and the room for what belongs below stays under the last.
func TestTableBreaks(t *testing.T) {
	t.Parallel()
	for rows := 1; rows < 24; rows++ {
		for high := 140.0; high < 215; high += 9.5 {
			for k := range 8 {
				foot, down := float64(k%2)*20, float64(k/2)*28
				table := Table{Title: "Holes", Lead: "as seen", Columns: []Column{{Head: "n"}, {Head: "x", Flex: true}}, RowMm: 7, Foot: foot}
				for i := range rows {
					table.Rows = append(table.Rows, []string{fmt.Sprint(i), "x"})
				}
				f := NewFlow(func(int) (*Sheet, Piece) { return &Sheet{Frame: Frame{WidthMm: 100, HeightMm: high}}, Space(12) })
				f.Add(Stack(append(Paragraph("", "first", 3, false, 50), Space(down))...))
				f.Table(table)
				seen := 0
				for page, s := range f.Sheets {
					here, heads, title := 0, 0, ""
					for _, b := range s.Blocks {
						if b.TopMm-b.HeightMm < f.Body.Y0-1e-6 || b.TopMm > f.Body.Y1+1e-6 {
							t.Fatalf("%d rows on %v mm: a piece of page %d lies at %v", rows, high, page, b.TopMm)
						}
						for _, text := range written(b.Draw.Items) {
							switch {
							case text.Content == "n":
								heads++
							case strings.HasPrefix(text.Content, "Holes"):
								title = text.Content
							case text.Content == fmt.Sprint(seen):
								seen++
								here++
								if last := seen == rows; last && b.TopMm-b.HeightMm-foot < f.Body.Y0-1e-6 {
									t.Fatalf("%d rows on %v mm: no room under the last", rows, high)
								}
							}
						}
					}
					if here == 0 {
						continue
					}
					if first := seen == here; heads != 1 || first && title != "Holes" || !first && title != "Holes (continued)" {
						t.Fatalf("%d rows on %v mm: page %d has %d heads under %q", rows, high, page, heads, title)
					}
					if here < min(rows, LeastRows) && (rows <= LeastRows || rows >= 2*LeastRows) { // between, there is no break that leaves four at both sides
						t.Fatalf("%d rows on %v mm: %d rows on page %d", rows, high, here, page)
					}
				}
				if seen != rows {
					t.Fatalf("%d rows on %v mm: %d are set", rows, high, seen)
				}
			}
		}
	}
}
