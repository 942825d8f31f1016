package draw

import (
	"slices"
	"strings"
	"testing"
)

// contents are the texts of a piece in order, bold ones in capitals.
func contents(p Piece) []string {
	var out []string
	for _, item := range p.Draw.Items {
		if t, ok := item.(Text); ok {
			if t.Bold {
				t.Content = strings.ToUpper(t.Content)
			}
			out = append(out, t.Content)
		}
	}
	return out
}

// A line of a cell holds bold text and plain, breaks where Wrap would, and
// stands where it would as one text.
func TestMixedText(t *testing.T) {
	t.Parallel()
	text := Bold("Cut the blank.") + "  of plate " + Bold("9 – 11")
	if got := Bold(""); got != "" {
		t.Errorf("nothing bold is %q", got)
	}
	wide := wrapMixed(text, 3, false, 200)
	if want := []string{Bold("Cut the blank.") + " of plate " + Bold("9 – 11")}; !slices.Equal(wide, want) {
		t.Errorf("%q, want %q", wide, want)
	}
	narrow := wrapMixed(text, 3, false, TextWidth("Cut the", 3, true)+0.01)
	if want := []string{Bold("Cut the"), Bold("blank."), "of plate", Bold("9 – 11")}; !slices.Equal(narrow, want) {
		t.Errorf("%q, want %q", narrow, want)
	}
	for off, lines := range map[float64]int{0.01: 1, -0.01: 2} {
		if got := wrapMixed(Bold("Cut the"), 3, false, TextWidth("Cut the", 3, true)+off); len(got) != lines {
			t.Errorf("%v mm more than its width: %q", off, got)
		}
	}
	for _, line := range wrapMixed("of "+Bold(strings.Repeat("w", 40)), 3, false, 20) {
		if w := mixedWidth(line, 3, false); w > 20 {
			t.Errorf("%q is %v wide in 20", line, w)
		}
	}
	whole := TextWidth("Cut the blank.", 3, true) + TextWidth(" of plate ", 3, false) + TextWidth("9 – 11", 3, true)
	if got := mixedWidth(wide[0], 3, false); got != whole {
		t.Errorf("width %v, want %v", got, whole)
	}
	for align, from := range map[Align]float64{Left: 10, Centre: 10 - whole/2, Right: 10 - whole} {
		var p Piece
		addMixed(&p.Draw, Text{XMm: 10, SizeMm: 3, Align: align, Content: wide[0]})
		if got := contents(p); !slices.Equal(got, []string{"CUT THE BLANK.", " of plate ", "9 – 11"}) || p.Draw.Items[0].(Text).XMm != from {
			t.Errorf("align %v: %q from %v, want %v", align, got, p.Draw.Items[0].(Text).XMm, from)
		}
	}
}

// A fitted table is no taller than one whose columns share by the length of
// their texts, and lower where one column has all the text.
func TestFitIsLowest(t *testing.T) {
	t.Parallel()
	long := strings.Repeat("a long text of many words ", 6)
	table := Table{Columns: []Column{{Head: "a", Flex: true}, {Head: "b", Flex: true}},
		Rows: [][]string{{long, "short"}, {long, "short"}, {"short", long + long + long}}}
	plain := tableMm(table, 120)
	table.Fit = true
	if got := tableMm(table, 120); got >= plain {
		t.Errorf("%.1f mm fitted, %.1f not", got, plain)
	}
	if sum := 0.0; true {
		for _, w := range table.shareWidths(120) {
			sum += w
		}
		if sum < 119.999 || sum > 120.001 {
			t.Errorf("columns of %v mm in 120", sum)
		}
	}
}

// Height is what a flow takes for a table, and LeastWidth is where its words
// begin to break.
func TestTableMeasures(t *testing.T) {
	t.Parallel()
	table := Table{Title: "Holes", Lead: "of the front", Compact: true, Columns: []Column{{Head: "No."}, {Head: "x"}},
		Rows: [][]string{{"1", "100.00"}, {"2", "-100.00"}}}
	f := NewFlow(func(int) (*Sheet, Piece) { return &Sheet{Frame: Frame{WidthMm: 210, HeightMm: 297}}, Piece{} })
	before := f.Left()
	f.Table(table)
	if got := before - f.Left() - 4; got < tableMm(table, f.Width())-1e-9 || got > tableMm(table, f.Width())+1e-9 {
		t.Errorf("a flow takes %v mm, height is %v", got, tableMm(table, f.Width()))
	}
	least := table.LeastWidth()
	if _, _, ok := (&Table{Columns: table.Columns, Rows: table.Rows, scale: SmallMm / headTextMm}).tryWidths(least); !ok {
		t.Errorf("words break at %v mm", least)
	}
	if _, _, ok := (&Table{Columns: table.Columns, Rows: table.Rows, scale: SmallMm / headTextMm}).tryWidths(least - 0.01); ok {
		t.Errorf("no word breaks under %v mm", least)
	}
}

// tableMm is the height of a table at a width, with title and lead.
func tableMm(t Table, width float64) float64 {
	sum, rows := t.Measure(width)
	for _, h := range rows {
		sum += h
	}
	return sum
}

// TestLeadsOverItsCell: a link lies over the cell whose words lead on, and an empty one leads nowhere; a box to tick stands in an empty cell alone.
func TestLeadsOverItsCell(t *testing.T) {
	t.Parallel()
	table := Table{RowMm: 8, Columns: []Column{{Head: "what"}, {Head: "page", Leads: true}, {Head: "done", Tick: true}}, Rows: [][]string{{"one", "part", "yes"}, {"two", "", ""}}}.Laid(80)
	for i, row := range table.Pieces(80)[1:] {
		links, boxes, w := []Rect{}, 0, table.laid.widths
		for _, item := range row.Draw.Items {
			switch item := item.(type) {
			case Link:
				b := item.Path.Bounds()
				links = append(links, Rect{b.X0, b.Y0, b.X1, b.Y1})
			case Shape:
				if b := item.Path.Bounds(); b.W() < w[2]-1 && b.H() > 1 {
					boxes++
				}
			}
		}
		if want := (Rect{w[0], -row.Height, w[0] + w[1], 0}); len(links) != 1-i || boxes != i || i == 0 && links[0] != want {
			t.Errorf("row %d: links %v, boxes %d, want %v", i+1, links, boxes, want)
		}
	}
}

// TestTickInItsRow: a box to tick is 5 mm, in a low row as much less as leaves 0.5 mm
// above and below it, but never under 3.2 mm.
func TestTickInItsRow(t *testing.T) {
	t.Parallel()
	for high, want := range map[float64]float64{9: 5, 6: 5, 5.3: 4.3, 4: 3.2} {
		table := Table{RowMm: high, Compact: true, Tight: true, Columns: []Column{{Head: "what", Size: 2}, {Head: "done", Size: 2, Tick: true}}, Rows: [][]string{{"one", ""}}}
		row := table.Pieces(60)[1]
		box := row.Draw.Items[len(row.Draw.Items)-1].(Shape).Path.Bounds()
		if got := box.H(); row.Height != max(high, 4.2) || got < want-1e-9 || got > want+1e-9 || box.Y0+row.Height < 0.5-1e-9 || box.Y1 > -0.5+1e-9 {
			t.Errorf("a row of %v: %v high, from %v to %v, want %v", row.Height, got, box.Y0, box.Y1, want)
		}
	}
}
