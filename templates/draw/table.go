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
	Tick  bool    // an empty box to tick in each row
	Firm  float64 // lines of a flexible column up to this width are not broken
	Spare bool    // left out if no row has anything in it
}

// Table is a ruled table whose head is repeated in every column of the page.
type Table struct {
	Title   string
	Lead    string // a text between the title and the head, not repeated
	Columns []Column
	Rows    [][]string // "\n" parts lines within a cell
	RowMm   float64    // least height of a row
	Foot    float64    // room kept under the last row, for what belongs below it
	scale   float64    // of all its text, set by shareWidths
}

// The room in cells, in millimetres.
const (
	padAcrossMm = 1.3
	padAboveMm  = 0.9
	headTextMm  = 3.0
)

// shareWidths shares the width among the columns. Where even the narrowest
// columns are too wide together, all text of the table becomes smaller, down
// to smallMm.
func (t *Table) shareWidths(total float64) []float64 {
	for t.scale = 1.0; ; t.scale -= 0.05 {
		widths, ok := t.tryWidths(total)
		if ok || t.scale*headTextMm <= SmallMm-0.2 {
			return widths
		}
	}
}

// cellMm is the em size of a column's cells, headMm that of the heads.
func (t *Table) cellMm(c Column) float64 {
	size := c.Size
	if size == 0 {
		size = TextMm
	}
	return max(SmallMm, size*t.scale)
}

func (t *Table) headMm() float64 { return max(SmallMm, headTextMm*t.scale) }

// tryWidths is shareWidths at one size of text; it tells whether no number or
// word has to be broken.
func (t *Table) tryWidths(total float64) ([]float64, bool) {
	natural := make([]float64, len(t.Columns))
	narrow := make([]float64, len(t.Columns)) // no word broken
	sum, narrowSum, flexSum := 0.0, 0.0, 0.0
	for i, c := range t.Columns {
		size := t.cellMm(c)
		for _, w := range strings.Fields(c.Head) {
			narrow[i] = max(narrow[i], TextWidth(w, t.headMm(), true))
		}
		natural[i] = max(narrow[i], min(TextWidth(c.Head, t.headMm(), true), 22))
		for _, row := range t.Rows {
			for _, line := range strings.Split(row[i], "\n") {
				w := TextWidth(line, size, c.Bold)
				natural[i] = max(natural[i], w)
				if !c.Flex || w <= c.Firm {
					narrow[i] = max(narrow[i], w)
					continue
				}
				for _, word := range strings.Fields(line) {
					narrow[i] = max(narrow[i], TextWidth(word, size, c.Bold))
				}
			}
		}
		natural[i] = max(natural[i]+2*padAcrossMm+0.2, c.Least)
		narrow[i] = max(narrow[i]+2*padAcrossMm+0.2, c.Least)
		sum += natural[i]
		narrowSum += narrow[i]
		if c.Flex {
			flexSum += natural[i]
		}
	}
	for i, c := range t.Columns {
		switch {
		case sum <= total && flexSum == 0:
			natural[i] *= total / sum
		case sum <= total && c.Flex:
			natural[i] += (total - sum) * natural[i] / flexSum
		case sum <= total:
		case narrowSum <= total && sum > narrowSum:
			natural[i] = narrow[i] + (natural[i]-narrow[i])*(total-narrowSum)/(sum-narrowSum)
		default:
			natural[i] = narrow[i] * total / narrowSum
		}
	}
	return natural, narrowSum <= total
}

// Table sets a table; a table without rows sets nothing.
func (f *Flow) Table(t Table) {
	if len(t.Rows) == 0 {
		return
	}
	t.dropSpare()
	widths := t.shareWidths(f.Width())
	top := f.Tallest() - 25
	started := false
	lead := Stack(append(Paragraph("", t.Lead, TextMm, false, f.Width()), Space(1.5))...)
	begin := func() {
		title := t.Title
		if started {
			title += " (continued)"
		}
		if t.Title != "" {
			f.Set(Heading(title, f.Width()))
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
		headHeight += Heading(t.Title, f.Width()).Height
	}
	for i, row := range t.Rows {
		foot := 0.0
		if i == len(t.Rows)-1 {
			foot = t.Foot
		}
		for _, p := range t.rowPieces(row, widths, top) {
			if !started {
				if !f.Fits(headHeight+p.Height+foot) && !f.AtTop() {
					f.TurnColumn()
				}
				begin()
			} else if !f.Fits(p.Height + foot) {
				f.TurnColumn()
				begin()
			}
			f.Set(p)
		}
	}
	f.Add(Space(4))
}

// dropSpare leaves out the spare columns that are empty.
func (t *Table) dropSpare() {
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
	return drawRow(heads, lines, widths, 0, true)
}

// rowPieces draws a row, in more than one piece only if it is taller than a
// page.
func (t *Table) rowPieces(row []string, widths []float64, tallest float64) []Piece {
	lines := make([][]string, len(row))
	for i, c := range t.Columns {
		for _, part := range strings.Split(row[i], "\n") {
			lines[i] = append(lines[i], Wrap(part, t.cellMm(c), c.Bold, widths[i]-2*padAcrossMm)...)
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
			n := min(len(lines[i]), max(1, int(tallest/(t.cellMm(c)*Leading))))
			part[i], lines[i] = lines[i][:n], lines[i][n:]
			more = more || len(lines[i]) > 0
		}
		pieces = append(pieces, drawRow(cells, part, widths, t.RowMm, false))
		if !more {
			return pieces
		}
	}
}

// drawRow draws one row of cells, centred in height.
func drawRow(columns []Column, lines [][]string, widths []float64, least float64, head bool) Piece {
	p := Piece{Height: least, Keep: head}
	for i, c := range columns {
		p.Height = max(p.Height, float64(len(lines[i]))*c.Size*Leading+2*padAboveMm)
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
		y := -(p.Height-float64(len(lines[i]))*size*Leading)/2 - size*1.03
		for _, line := range lines[i] {
			if line != "" {
				text := Text{XMm: x + padAcrossMm, YMm: y, SizeMm: size, Bold: c.Bold, Align: c.Align, Content: line}
				switch c.Align {
				case Centre:
					text.XMm = x + widths[i]/2
				case Right:
					text.XMm = x + widths[i] - padAcrossMm
				}
				p.Draw.Add(text)
			}
			y -= size * Leading
		}
		if c.Tick {
			m := (r.X0 + r.X1) / 2
			p.Draw.Add(Box(Rect{m - 2.5, -p.Height/2 - 2.5, m + 2.5, -p.Height/2 + 2.5}, LineMm))
		}
		x += widths[i]
	}
	return p
}

// Pieces are a table's rows at a width, without a title.
func (t Table) Pieces(width float64) []Piece {
	if len(t.Rows) == 0 {
		return nil
	}
	t.dropSpare()
	widths := t.shareWidths(width)
	out := []Piece{t.headRow(widths)}
	for _, row := range t.Rows {
		out = append(out, t.rowPieces(row, widths, 200)...)
	}
	return out
}
