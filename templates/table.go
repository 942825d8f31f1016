package templates

import "strings"

// column is a column of a table. A table's spare width goes to its flexible
// columns; the others are as wide as their widest cell.
type column struct {
	head  string
	flex  bool
	align Align
	size  float64 // em of its cells; 0 means textMm
	bold  bool
	least float64 // least width
	tick  bool    // an empty box to tick in each row
}

// table is a ruled table whose head is repeated in every column of the page.
type table struct {
	title   string
	lead    string // a text between the title and the head, not repeated
	columns []column
	rows    [][]string // "\n" parts lines within a cell
	rowMm   float64    // least height of a row
}

// The room in cells, in millimetres.
const (
	padAcrossMm = 1.3
	padAboveMm  = 0.9
	headTextMm  = 3.0
)

func (c column) sizeMm() float64 {
	if c.size == 0 {
		return textMm
	}
	return c.size
}

// widths shares the width among the columns.
func (t *table) widths(total float64) []float64 {
	natural := make([]float64, len(t.columns))
	word := make([]float64, len(t.columns)) // no narrower than the longest word
	sum, flexSum := 0.0, 0.0
	for i, c := range t.columns {
		for _, w := range strings.Fields(c.head) {
			word[i] = max(word[i], textWidth(w, headTextMm, true))
		}
		natural[i] = max(word[i], min(textWidth(c.head, headTextMm, true), 22))
		for _, row := range t.rows {
			for _, line := range strings.Split(row[i], "\n") {
				natural[i] = max(natural[i], textWidth(line, c.sizeMm(), c.bold))
				if c.flex {
					for _, w := range strings.Fields(line) {
						word[i] = max(word[i], textWidth(w, c.sizeMm(), c.bold))
					}
				}
			}
		}
		natural[i] = max(natural[i]+2*padAcrossMm+0.2, c.least)
		word[i] = max(word[i]+2*padAcrossMm+0.2, c.least)
		sum += natural[i]
		if c.flex {
			flexSum += natural[i]
		}
	}
	if sum <= total {
		for i, c := range t.columns {
			switch {
			case flexSum == 0:
				natural[i] *= total / sum
			case c.flex:
				natural[i] += (total - sum) * natural[i] / flexSum
			}
		}
		return natural
	}
	// Too wide: flexible columns give way down to their longest word, then
	// all columns alike.
	give := 0.0
	for i, c := range t.columns {
		if c.flex {
			give += natural[i] - word[i]
		}
	}
	over := sum - total
	if give > 0 {
		share := min(1, over/give)
		for i, c := range t.columns {
			if c.flex {
				natural[i] -= share * (natural[i] - word[i])
			}
		}
		over -= share * give
	}
	if over > 1e-9 {
		for i := range natural {
			natural[i] *= total / (total + over)
		}
	}
	return natural
}

// table sets a table; a table without rows sets nothing.
func (f *flow) table(t table) {
	if len(t.rows) == 0 {
		return
	}
	widths := t.widths(f.width())
	top := f.tallest() - 25
	started := false
	lead := stack(append(paragraph("", t.lead, textMm, false, f.width()), space(1.5))...)
	begin := func() {
		title := t.title
		if started {
			title += " (continued)"
		}
		if t.title != "" {
			f.set(heading(title, f.width()))
		}
		if t.lead != "" && !started {
			f.set(lead)
		}
		f.set(t.headRow(widths))
		started = true
	}
	headHeight := t.headRow(widths).height
	if t.lead != "" {
		headHeight += lead.height
	}
	if t.title != "" {
		headHeight += heading(t.title, f.width()).height
	}
	for _, row := range t.rows {
		for _, p := range t.rowPieces(row, widths, top) {
			if !started {
				if !f.fits(headHeight+p.height) && !f.atTop() {
					f.turnColumn()
				}
				begin()
			} else if !f.fits(p.height) {
				f.turnColumn()
				begin()
			}
			f.set(p)
		}
	}
	f.add(space(4))
}

// headRow draws the heads on a pale ground.
func (t *table) headRow(widths []float64) piece {
	lines := make([][]string, len(t.columns))
	for i, c := range t.columns {
		lines[i] = wrap(c.head, headTextMm, true, widths[i]-2*padAcrossMm)
	}
	heads := make([]column, len(t.columns))
	for i, c := range t.columns {
		heads[i] = column{align: c.align, size: headTextMm, bold: true}
	}
	return drawRow(heads, lines, widths, 0, true)
}

// rowPieces draws a row, in more than one piece only if it is taller than a
// page.
func (t *table) rowPieces(row []string, widths []float64, tallest float64) []piece {
	lines := make([][]string, len(row))
	for i, c := range t.columns {
		for _, part := range strings.Split(row[i], "\n") {
			lines[i] = append(lines[i], wrap(part, c.sizeMm(), c.bold, widths[i]-2*padAcrossMm)...)
		}
	}
	var pieces []piece
	for {
		part := make([][]string, len(lines))
		more := false
		for i, c := range t.columns {
			n := min(len(lines[i]), max(1, int(tallest/(c.sizeMm()*leading))))
			part[i], lines[i] = lines[i][:n], lines[i][n:]
			more = more || len(lines[i]) > 0
		}
		pieces = append(pieces, drawRow(t.columns, part, widths, t.rowMm, false))
		if !more {
			return pieces
		}
	}
}

// drawRow draws one row of cells, centred in height.
func drawRow(columns []column, lines [][]string, widths []float64, least float64, head bool) piece {
	p := piece{height: least, keep: head}
	for i, c := range columns {
		p.height = max(p.height, float64(len(lines[i]))*c.sizeMm()*leading+2*padAboveMm)
	}
	x := 0.0
	for i, c := range columns {
		r := rect{x, -p.height, x + widths[i], 0}
		cell := box(r, thinMm)
		if head {
			cell.Fill = Pale
		}
		p.draw.Add(cell)
		size := c.sizeMm()
		y := -(p.height-float64(len(lines[i]))*size*leading)/2 - size*1.03
		for _, line := range lines[i] {
			if line != "" {
				text := Text{XMm: x + padAcrossMm, YMm: y, SizeMm: size, Bold: c.bold, Align: c.align, Content: line}
				switch c.align {
				case Centre:
					text.XMm = x + widths[i]/2
				case Right:
					text.XMm = x + widths[i] - padAcrossMm
				}
				p.draw.Add(text)
			}
			y -= size * leading
		}
		if c.tick {
			m := (r.x0 + r.x1) / 2
			p.draw.Add(box(rect{m - 2.5, -p.height/2 - 2.5, m + 2.5, -p.height/2 + 2.5}, lineMm))
		}
		x += widths[i]
	}
	return p
}
