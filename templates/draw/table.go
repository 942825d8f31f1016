package draw

import (
	"slices"
	"strings"
)

// Column is a column of a table. A table's spare width goes to its flexible
// columns; the others are as wide as their widest cell.
type Column struct {
	Head  string
	Flex  bool
	Align Align
	Size  float64 // em of its cells; 0 means textMm
	Bold  bool
	Least float64 // least width
	Most  float64 // width that more is not asked for
	Tick  bool    // an empty box to tick in each row
	Firm  float64 // lines of a flexible column up to this width are not broken
	Leads bool    // its cells lead to the bookmark that is titled like them
	Spare bool    // left out if no row has anything in it
}

// Table is a ruled table whose head is repeated in every column of the page.
type Table struct {
	Title   string
	Tight   bool   // lines close together
	Compact bool   // its title takes a line, without a rule
	Lead    string // a text between the title and the head, not repeated
	Columns []Column
	Rows    [][]string // "\n" parts lines within a cell
	RowMm   float64    // least height of a row
	Foot    float64    // room kept under the last row, for what belongs below it
	Fit     bool       // flexible columns share so that the table is lowest
	scale   float64    // of all its text, set by shareWidths
	fixed   []float64  // widths of the columns, set by Measure
}

// The room in cells, in millimetres.
const (
	padAcrossMm = 1.3
	padAboveMm  = 0.9
	headTextMm  = 3.0
)

// Table sets a table; a table without rows sets nothing.
func (f *Flow) Table(t Table) {
	if len(t.Rows) == 0 {
		return
	}
	t.dropSpare()
	widths := t.shareWidths(f.Width())
	top := f.Tallest() - 25
	started := false
	lead := Stack(t.lead(f.Width())...)
	begin := func() {
		title := t.Title
		if started {
			title += " (continued)"
		}
		if t.Title != "" {
			f.Set(t.heading(title, f.Width()))
		}
		if t.Lead != "" && !started {
			f.Set(lead)
		}
		f.Set(t.headRow(widths))
		started = true
	}
	headHeight := t.headRow(widths).Height
	if t.Lead != "" {
		headHeight += lead.Height
	}
	if t.Title != "" {
		headHeight += t.heading(t.Title, f.Width()).Height
	}
	rows := make([][]Piece, len(t.Rows))
	for i, row := range t.Rows {
		rows[i] = t.rowPieces(row, widths, top)
	}
	for i := range t.Rows {
		for _, p := range rows[i] {
			// Rows that stay together: the first four, and the last four.
			need := p.Height
			if i == 0 || i == len(rows)-leastRows {
				need = min(heightOf(rows[i:min(i+leastRows, len(rows))]), max(p.Height, f.Tallest()*0.4))
			}
			if i == len(rows)-1 || i == 0 && len(rows) <= leastRows || i == len(rows)-leastRows {
				need += t.Foot
			}
			if !started {
				if !f.Fits(headHeight + need) {
					f.advance()
				}
				begin()
			} else if !f.Fits(need) && !(need > p.Height && f.Fits(p.Height) && need > top) {
				f.TurnColumn()
				begin()
			}
			f.Set(p)
		}
	}
	f.Add(Space(4))
}

// heading is the table's title.
func (t *Table) heading(text string, width float64) Piece {
	if !t.Compact {
		return Heading(text, width)
	}
	p := Piece{Height: TextMm * 1.6, Keep: true}
	shown, size := Shrink(text, TextMm, true, width)
	p.Draw.Add(Text{YMm: -TextMm * 1.15, SizeMm: size, Bold: true, Content: shown, Heading: 2})
	return p
}

// leading is the distance of lines in em, padMm the room above and below them.
func (t *Table) leading() float64 {
	if t.Tight {
		return 1.2
	}
	return Leading
}

func (t *Table) padMm() float64 {
	if t.Tight {
		return 0.5
	}
	return padAboveMm
}

// leastRows is how many rows of a table stand together before and after a
// break.
const leastRows = 4

// heightOf is the height of some rows.
func heightOf(rows [][]Piece) float64 {
	sum := 0.0
	for _, pieces := range rows {
		for _, p := range pieces {
			sum += p.Height
		}
	}
	return sum
}

// dropSpare leaves out the spare columns that are empty.
func (t *Table) dropSpare() {
	t.Rows = slices.Clone(t.Rows)
	for i := len(t.Columns) - 1; i >= 0; i-- {
		if !t.Columns[i].Spare || slices.ContainsFunc(t.Rows, func(row []string) bool { return row[i] != "" }) {
			continue
		}
		t.Columns = slices.Delete(slices.Clone(t.Columns), i, i+1)
		for j, row := range t.Rows {
			t.Rows[j] = slices.Delete(slices.Clone(row), i, i+1)
		}
	}
}

// headRow draws the heads on a pale ground.
func (t *Table) headRow(widths []float64) Piece {
	lines := make([][]string, len(t.Columns))
	for i, c := range t.Columns {
		lines[i] = Wrap(c.Head, t.headMm(), true, widths[i]-2*padAcrossMm)
	}
	heads := make([]Column, len(t.Columns))
	for i, c := range t.Columns {
		heads[i] = Column{Align: c.Align, Size: t.headMm(), Bold: true}
	}
	return t.drawRow(heads, lines, widths, 0, true)
}

// rowPieces draws a row, in more than one piece only if it is taller than a
// page.
func (t *Table) rowPieces(row []string, widths []float64, tallest float64) []Piece {
	lines := make([][]string, len(row))
	for i, c := range t.Columns {
		for _, part := range strings.Split(row[i], "\n") {
			lines[i] = append(lines[i], wrapMixed(part, t.cellMm(c), c.Bold, widths[i]-2*padAcrossMm)...)
		}
	}
	cells := slices.Clone(t.Columns)
	for i, c := range cells {
		cells[i].Size = t.cellMm(c)
	}
	var pieces []Piece
	for {
		part := make([][]string, len(lines))
		more := false
		for i, c := range t.Columns {
			n := min(len(lines[i]), max(1, int(tallest/(t.cellMm(c)*t.leading()))))
			part[i], lines[i] = lines[i][:n], lines[i][n:]
			more = more || len(lines[i]) > 0
		}
		p := t.drawRow(cells, part, widths, t.RowMm, false)
		x := 0.0
		for i, c := range t.Columns {
			if c.Leads && row[i] != "" {
				p.Draw.Add(Link{Path: Rect{x, -p.Height, x + widths[i], 0}.Path(), To: row[i]})
			}
			x += widths[i]
		}
		pieces = append(pieces, p)
		if !more {
			return pieces
		}
	}
}

// drawRow draws one row of cells, centred in height.
func (t *Table) drawRow(columns []Column, lines [][]string, widths []float64, least float64, head bool) Piece {
	p := Piece{Height: least, Keep: head}
	for i, c := range columns {
		p.Height = max(p.Height, float64(len(lines[i]))*c.Size*t.leading()+2*t.padMm())
	}
	x := 0.0
	for i, c := range columns {
		r := Rect{x, -p.Height, x + widths[i], 0}
		cell := Box(r, ThinMm)
		if head {
			cell.Fill = Pale
		}
		p.Draw.Add(cell)
		size := c.Size
		y := -(p.Height-float64(len(lines[i]))*size*t.leading())/2 - size*1.03
		for _, line := range lines[i] {
			at := x + padAcrossMm
			switch c.Align {
			case Centre:
				at = x + widths[i]/2
			case Right:
				at = x + widths[i] - padAcrossMm
			}
			addMixed(&p.Draw, Text{XMm: at, YMm: y, SizeMm: size, Bold: c.Bold, Align: c.Align, Content: line})
			y -= size * t.leading()
		}
		if c.Tick {
			m := (r.X0 + r.X1) / 2
			p.Draw.Add(Box(Rect{m - 2.5, -p.Height/2 - 2.5, m + 2.5, -p.Height/2 + 2.5}, LineMm))
		}
		x += widths[i]
	}
	return p
}

// Measure fixes the widths of the columns for a width of the table, and returns
// the height of title, lead and heads, and of each row.
func (t *Table) Measure(width float64) (headMm float64, rowsMm []float64) {
	t.dropSpare()
	t.fixed = t.shareWidths(width)
	headMm = t.headRow(t.fixed).Height
	if t.Title != "" {
		headMm += t.heading(t.Title, width).Height
	}
	if t.Lead != "" {
		headMm += Stack(t.lead(width)...).Height
	}
	for _, row := range t.Rows {
		rowsMm = append(rowsMm, heightOf([][]Piece{t.rowPieces(row, t.fixed, 1000)}))
	}
	return headMm, rowsMm
}

// Height is the height of a table at a width, with title and lead; 0 without
// rows.
func (t Table) Height(width float64) float64 {
	if len(t.Rows) == 0 {
		return 0
	}
	sum, rows := t.Measure(width)
	for _, h := range rows {
		sum += h
	}
	return sum
}

// Pieces are a table's rows at a width, without its title and lead.
func (t Table) Pieces(width float64) []Piece {
	widths := t.shareWidths(width)
	out := []Piece{t.headRow(widths)}
	for _, row := range t.Rows {
		out = append(out, t.rowPieces(row, widths, 1000)...)
	}
	return out
}

// Head is the title of a table and its lead, set over a width of their own.
func (t Table) Head(width float64) []Piece {
	pieces := []Piece{t.heading(t.Title, width)}
	if t.Lead != "" {
		pieces = append(pieces, t.lead(width)...)
	}
	return pieces
}

// LeastWidth is the width below which words or numbers of a table break.
func (t Table) LeastWidth() float64 {
	t.dropSpare()
	t.scale = SmallMm / headTextMm
	_, narrow, _ := t.tryWidths(0)
	sum := 0.0
	for _, w := range narrow {
		sum += w
	}
	return sum
}

// lead is the text between title and head.
func (t *Table) lead(width float64) []Piece {
	size := TextMm
	if t.Compact {
		size = 2.9
	}
	if t.Tight {
		size = 2.65
	}
	return append(Paragraph("", t.Lead, size, false, width), Space(1))
}
