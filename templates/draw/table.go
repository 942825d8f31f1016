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

// BoldLine at the start of a line of a cell sets it bold.
const BoldLine = "\x01"

// lineOf splits a line of a cell into its text and its weight.
func lineOf(line string, bold bool) (string, bool) {
	text, marked := strings.CutPrefix(line, BoldLine)
	return text, bold || marked
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
				line, bold := lineOf(line, c.Bold)
				w := TextWidth(line, size, bold)
				natural[i] = max(natural[i], w)
				if !c.Flex || w <= c.Firm {
					narrow[i] = max(narrow[i], w)
					continue
				}
				for _, word := range strings.Fields(line) {
					narrow[i] = max(narrow[i], TextWidth(word, size, bold))
				}
			}
		}
		natural[i] = max(natural[i]+2*padAcrossMm+0.2, c.Least)
		narrow[i] = max(narrow[i]+2*padAcrossMm+0.2, c.Least)
		if c.Most > 0 {
			natural[i] = max(narrow[i], min(natural[i], c.Most))
		}
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
	leadMm := TextMm
	if t.Compact {
		leadMm = 2.9
	}
	lead := Stack(append(Paragraph("", t.Lead, leadMm, false, f.Width()), Space(1))...)
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
	p.Draw.Add(Text{YMm: -TextMm * 1.15, SizeMm: size, Bold: true, Content: shown})
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
			part, bold := lineOf(part, c.Bold)
			for _, line := range Wrap(part, t.cellMm(c), bold, widths[i]-2*padAcrossMm) {
				if bold && !c.Bold {
					line = BoldLine + line
				}
				lines[i] = append(lines[i], line)
			}
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
			if line != "" {
				line, bold := lineOf(line, c.Bold)
				text := Text{XMm: x + padAcrossMm, YMm: y, SizeMm: size, Bold: bold, Align: c.Align, Content: line}
				switch c.Align {
				case Centre:
					text.XMm = x + widths[i]/2
				case Right:
					text.XMm = x + widths[i] - padAcrossMm
				}
				p.Draw.Add(text)
			}
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
