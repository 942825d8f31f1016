package draw

import (
	"slices"
	"strings"

	"centrepop/parts/seq"
)

// Column is a column of a table. A table's spare width goes to its flexible
// columns; the others are as wide as their widest cell.
type Column struct {
	Head  string
	Flex  bool
	Align Align
	Size  float64 // em of its cells; 0 means that of the table
	Bold  bool
	Least float64 // least width
	Most  float64 // width that more is not asked for
	Tick  bool    // a box to tick in each row that has no text there
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
	EmMm    float64    // of cells; 0 means TextMm
	Rows    [][]string // "\n" parts lines within a cell
	RowMm   float64    // least height of a row
	Foot    float64    // room kept under the last row, for what belongs below it
	Fit     bool       // flexible columns share so that the table is lowest
	scale   float64    // of all its text, set by shareWidths
	ems     *ems       // its texts measured, for tryWidths
	laid    *laid      // for a width, set by Laid
}

// laid is what of a table is the same wherever it stands.
type laid struct {
	widths           []float64
	cells            []Column // with the em of their texts
	heads            [][]string
	rows             [][][]string // lines by row and column
	headsMm, titleMm float64
	lead             []Piece
	leadMm           float64
}

// Abreast sets rows in blocks side by side, each of as many rows and read downwards.
func Abreast(rows [][]string, blocks int) (out [][]string) {
	high := (len(rows) + blocks - 1) / blocks
	for i := range high {
		var row []string
		for n := i; n < blocks*high; n += high {
			if n < len(rows) {
				row = append(row, rows[n]...)
			} else {
				row = append(row, make([]string, len(rows[0]))...)
			}
		}
		out = append(out, row)
	}
	return out
}

// Laid is the table laid out for a width: its columns keep their widths, and its
// cells their lines, wherever it is set and however often.
func (t Table) Laid(width float64) Table {
	if t.laid != nil {
		return t
	}
	t = t.Measured()
	l := &laid{widths: t.shareWidths(width), cells: slices.Clone(t.Columns)}
	for i, c := range t.Columns {
		l.cells[i].Size = t.cellMm(c)
		l.heads = append(l.heads, Wrap(c.Head, t.headMm(), true, l.widths[i]-2*padAcrossMm))
	}
	for _, row := range t.Rows {
		lines := make([][]string, len(row))
		for i, c := range l.cells {
			first, rest, more := strings.Cut(row[i], "\n")
			lines[i] = wrapMixed(first, c.Size, c.Bold, l.widths[i]-2*padAcrossMm)
			for more {
				first, rest, more = strings.Cut(rest, "\n")
				lines[i] = append(lines[i], wrapMixed(first, c.Size, c.Bold, l.widths[i]-2*padAcrossMm)...)
			}
		}
		l.rows = append(l.rows, lines)
	}
	l.headsMm = t.rowMm(t.headColumns(), l.heads, 0)
	t.laid, t.ems = l, nil
	return t.titled(t.Title, t.Lead, width)
}

// titled is a table that is laid out with another title and lead.
func (t Table) titled(title, lead string, width float64) Table {
	l := *t.laid
	t.Title, t.Lead, t.laid = title, lead, &l
	l.titleMm, l.lead, l.leadMm = 0, nil, 0
	if title != "" {
		l.titleMm = t.heading(title, width).Height
	}
	if lead != "" {
		l.lead = t.lead(width)
		l.leadMm = HeightMm(l.lead...)
	}
	return t
}

// Cut is a table that is laid out with some of its rows under another title and
// lead.
func (t Table) Cut(from, to int, title, lead string, width float64) Table {
	t.Rows = t.Rows[from:to]
	t = t.titled(title, lead, width)
	t.laid.rows = t.laid.rows[from:to]
	return t
}

// Table sets a table; a table without rows sets nothing.
func (f *Flow) Table(t Table) {
	if len(t.Rows) == 0 {
		return
	}
	t = t.Laid(f.Width())
	top, started := f.Tallest()-25, false
	headHeight := t.laid.headsMm + t.laid.leadMm + t.laid.titleMm
	rows := make([][]band, len(t.Rows))
	for i := range t.Rows {
		rows[i] = t.bands(i, top)
	}
	for i := range rows {
		for _, b := range rows[i] {
			switch need := t.together(rows, i, f.Tallest()*0.4, b.high); {
			case !started:
				if !f.Fits(headHeight + need) {
					f.advance()
				}
				f.heads(&t, t.Title, t.Lead)
			case !f.Fits(need) && !(need > b.high && f.Fits(b.high) && need > top):
				f.TurnColumn()
				f.heads(&t, t.Title+" (continued)", "")
			}
			started = true
			f.draw(b.high, func() Piece { return t.rowPiece(i, b) })
		}
	}
	f.Add(Space(t.GapMm()))
}

// heads sets what stands over rows: a title, if the table has one, a text under it, the head.
func (f *Flow) heads(t *Table, title, lead string) {
	if t.Title != "" {
		f.draw(t.laid.titleMm, func() Piece { return t.heading(title, f.Width()) })
	}
	if lead != "" {
		f.draw(t.laid.leadMm, func() Piece { return Stack(t.laid.lead...) })
	}
	f.draw(t.laid.headsMm, t.headRow)
}

// together is the height that stays together with a band of the row at i: the first four rows, and the last
// four, unless they are higher than most, and the foot of the table.
func (t *Table) together(rows [][]band, i int, most, high float64) float64 {
	first, last := i == 0, i == len(rows)-LeastRows
	if first && !last {
		most = min(most, togetherMm)
	}
	if first || last {
		high = min(bandsMm(rows[i:min(i+LeastRows, len(rows))]), max(high, most))
	}
	if i == len(rows)-1 || last || first && len(rows) <= LeastRows {
		high += t.Foot
	}
	return high
}

// GapMm is the room under a table.
func (t *Table) GapMm() float64 {
	if t.Tight {
		return 1.6
	}
	return 4
}

func (t *Table) heading(text string, width float64) Piece {
	if !t.Compact {
		return Heading(text, width)
	}
	p := Piece{Height: TextMm * 1.6, Keep: true}
	p.Draw.Add(Text{YMm: -TextMm * 1.15, SizeMm: TextMm, Bold: true, Content: text, Heading: 2}.Within(width))
	return p
}

// LeastRows is how many rows of a table stand together before and after a
// break.
const LeastRows = 4

// togetherMm is what need not stand together at the top of a table any more: rows as high as paragraphs part sooner.
const togetherMm = 36

func (t *Table) headColumns() []Column {
	return seq.Map(t.Columns, func(c Column) Column { return Column{Align: c.Align, Size: t.headMm(), Bold: true} })
}

// headRow draws the heads on a pale ground.
func (t *Table) headRow() Piece {
	return t.drawRow(t.headColumns(), t.laid.heads, t.laid.headsMm, true)
}

// band is a row, or a part of one that is taller than a page.
type band struct {
	lines [][]string // by column
	high  float64
}

// bands are those of a row: more than one only if it is taller than a page.
func (t *Table) bands(row int, tallest float64) []band {
	lines := t.laid.rows[row]
	if high := t.rowMm(t.laid.cells, lines, t.RowMm); high <= tallest {
		return []band{{lines, high}}
	}
	lines = slices.Clone(lines)
	var out []band
	for {
		part := make([][]string, len(lines))
		more := false
		for i, c := range t.laid.cells {
			n := min(len(lines[i]), max(1, int(tallest/(c.Size*t.leading()))))
			part[i], lines[i] = lines[i][:n], lines[i][n:]
			more = more || len(lines[i]) > 0
		}
		out = append(out, band{part, t.rowMm(t.laid.cells, part, t.RowMm)})
		if !more {
			return out
		}
	}
}

func bandsMm(rows [][]band) float64 {
	return seq.Sum(slices.Concat(rows...), func(b band) float64 { return b.high })
}

func (t *Table) rowPiece(row int, b band) Piece {
	p := t.drawRow(t.laid.cells, b.lines, b.high, false)
	var x float64
	for i, c := range t.Columns {
		if c.Leads && t.Rows[row][i] != "" {
			p.Draw.Add(Link{Path: Rect{x, -p.Height, x + t.laid.widths[i], 0}.Path(), To: t.Rows[row][i]})
		}
		x += t.laid.widths[i]
	}
	return p
}

func (t *Table) rowMm(columns []Column, lines [][]string, least float64) float64 {
	for i, c := range columns {
		least = max(least, float64(len(lines[i]))*c.Size*t.leading()+2*t.padMm())
		if c.Tick {
			least = max(least, leastTickMm+2*tickClearMm)
		}
	}
	return least
}

// drawRow draws one row of cells, centred in height.
func (t *Table) drawRow(columns []Column, lines [][]string, high float64, head bool) Piece {
	p := Piece{Height: high, Keep: head}
	widths := t.laid.widths
	var x float64
	for i, c := range columns {
		r := Rect{x, -p.Height, x + widths[i], 0}
		cell := Box(r, ThinMm)
		if head {
			cell.Fill = Pale
		}
		p.Draw.Add(cell)
		size := c.Size
		y := -(p.Height-float64(len(lines[i]))*size*t.leading())/2 - size*t.baseline()
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
		if c.Tick && len(strings.Join(lines[i], "")) == 0 {
			x, y, half := (r.X0+r.X1)/2, -p.Height/2, min(tickMm, p.Height-2*tickClearMm)/2
			p.Draw.Add(Box(Rect{x - half, y - half, x + half, y + half}, LineMm))
		}
		x += widths[i]
	}
	return p
}

// tickMm is the side of a box to tick, leastTickMm that in a low row, and tickClearMm what
// is left between it and the lines of its row.
const (
	tickMm      = 5.0
	leastTickMm = 3.2
	tickClearMm = 0.5
)

// Measure lays the table out for a width, and returns the height of title, lead
// and heads, and of each row.
func (t *Table) Measure(width float64) (headMm float64, rowsMm []float64) {
	*t = t.Laid(width)
	rowsMm = make([]float64, 0, len(t.Rows))
	for i := range t.Rows {
		rowsMm = append(rowsMm, t.rowMm(t.laid.cells, t.laid.rows[i], t.RowMm))
	}
	return t.laid.headsMm + t.laid.titleMm + t.laid.leadMm, rowsMm
}

// endlessMm is a page that every row finds room on.
const endlessMm = 1000

// Pieces are a table's rows at a width, without its title and lead.
func (t Table) Pieces(width float64) []Piece {
	t = t.Laid(width)
	out := []Piece{t.headRow()}
	for i := range t.Rows {
		out = append(out, seq.Map(t.bands(i, endlessMm), func(b band) Piece { return t.rowPiece(i, b) })...)
	}
	return out
}

// Head is the title of a table and its lead, set over a width of their own; the
// lead beside the title where that is lower.
func (t Table) Head(width float64) []Piece {
	pieces := []Piece{t.heading(t.Title, width)}
	if x := TextWidth(t.Title, TextMm, true) + 4; t.Lead != "" && t.Compact && x < width/2 {
		if lead := t.lead(width - x); HeightMm(lead...) < pieces[0].Height+HeightMm(t.lead(width)...) {
			beside, down := Stack(lead...), TextMm*1.15-t.leadEm() // on the line of the title
			pieces[0].Draw.Place(&beside.Draw, x, -down)
			pieces[0].Height = max(pieces[0].Height, down+beside.Height)
			return pieces
		}
	}
	if t.Lead != "" {
		pieces = append(pieces, t.lead(width)...)
	}
	return pieces
}

// LeastWidth is the width below which words or numbers of a table break.
func (t Table) LeastWidth() float64 {
	t = t.Measured()
	t.scale = SmallMm / headTextMm
	_, narrow, _ := t.tryWidths(0)
	return seq.Sum(narrow, func(w float64) float64 { return w })
}

// lead is the text between title and head.
func (t *Table) lead(width float64) []Piece {
	return append(Paragraph("", t.Lead, t.leadEm(), false, width), Space(1))
}

func (t *Table) leadEm() float64 {
	switch {
	case t.Tight:
		return 2.65
	case t.Compact:
		return 2.9
	}
	return TextMm
}
