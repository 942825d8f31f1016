package templates

import (
	"slices"
	"strings"
)

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
	firm  float64 // lines of a flexible column up to this width are not broken
	spare bool    // left out if no row has anything in it
}

// table is a ruled table whose head is repeated in every column of the page.
type table struct {
	title   string
	lead    string // a text between the title and the head, not repeated
	columns []column
	rows    [][]string // "\n" parts lines within a cell
	rowMm   float64    // least height of a row
	foot    float64    // room kept under the last row, for what belongs below it
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
func (t *table) shareWidths(total float64) []float64 {
	for t.scale = 1.0; ; t.scale -= 0.05 {
		widths, ok := t.tryWidths(total)
		if ok || t.scale*headTextMm <= smallMm-0.2 {
			return widths
		}
	}
}

// cellMm is the em size of a column's cells, headMm that of the heads.
func (t *table) cellMm(c column) float64 {
	size := c.size
	if size == 0 {
		size = textMm
	}
	return max(smallMm, size*t.scale)
}

func (t *table) headMm() float64 { return max(smallMm, headTextMm*t.scale) }

// tryWidths is shareWidths at one size of text; it tells whether no number or
// word has to be broken.
func (t *table) tryWidths(total float64) ([]float64, bool) {
	natural := make([]float64, len(t.columns))
	narrow := make([]float64, len(t.columns)) // no word broken
	sum, narrowSum, flexSum := 0.0, 0.0, 0.0
	for i, c := range t.columns {
		size := t.cellMm(c)
		for _, w := range strings.Fields(c.head) {
			narrow[i] = max(narrow[i], textWidth(w, t.headMm(), true))
		}
		natural[i] = max(narrow[i], min(textWidth(c.head, t.headMm(), true), 22))
		for _, row := range t.rows {
			for _, line := range strings.Split(row[i], "\n") {
				w := textWidth(line, size, c.bold)
				natural[i] = max(natural[i], w)
				if !c.flex || w <= c.firm {
					narrow[i] = max(narrow[i], w)
					continue
				}
				for _, word := range strings.Fields(line) {
					narrow[i] = max(narrow[i], textWidth(word, size, c.bold))
				}
			}
		}
		natural[i] = max(natural[i]+2*padAcrossMm+0.2, c.least)
		narrow[i] = max(narrow[i]+2*padAcrossMm+0.2, c.least)
		sum += natural[i]
		narrowSum += narrow[i]
		if c.flex {
			flexSum += natural[i]
		}
	}
	for i, c := range t.columns {
		switch {
		case sum <= total && flexSum == 0:
			natural[i] *= total / sum
		case sum <= total && c.flex:
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

// table sets a table; a table without rows sets nothing.
func (f *flow) table(t table) {
	if len(t.rows) == 0 {
		return
	}
	t.dropSpare()
	widths := t.shareWidths(f.width())
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
	for i, row := range t.rows {
		foot := 0.0
		if i == len(t.rows)-1 {
			foot = t.foot
		}
		for _, p := range t.rowPieces(row, widths, top) {
			if !started {
				if !f.fits(headHeight+p.height+foot) && !f.atTop() {
					f.turnColumn()
				}
				begin()
			} else if !f.fits(p.height + foot) {
				f.turnColumn()
				begin()
			}
			f.set(p)
		}
	}
	f.add(space(4))
}

// dropSpare leaves out the spare columns that are empty.
func (t *table) dropSpare() {
	for i := len(t.columns) - 1; i >= 0; i-- {
		if !t.columns[i].spare || slices.ContainsFunc(t.rows, func(row []string) bool { return row[i] != "" }) {
			continue
		}
		t.columns = slices.Delete(slices.Clone(t.columns), i, i+1)
		for j, row := range t.rows {
			t.rows[j] = slices.Delete(slices.Clone(row), i, i+1)
		}
	}
}

// headRow draws the heads on a pale ground.
func (t *table) headRow(widths []float64) piece {
	lines := make([][]string, len(t.columns))
	for i, c := range t.columns {
		lines[i] = wrap(c.head, t.headMm(), true, widths[i]-2*padAcrossMm)
	}
	heads := make([]column, len(t.columns))
	for i, c := range t.columns {
		heads[i] = column{align: c.align, size: t.headMm(), bold: true}
	}
	return drawRow(heads, lines, widths, 0, true)
}

// rowPieces draws a row, in more than one piece only if it is taller than a
// page.
func (t *table) rowPieces(row []string, widths []float64, tallest float64) []piece {
	lines := make([][]string, len(row))
	for i, c := range t.columns {
		for _, part := range strings.Split(row[i], "\n") {
			lines[i] = append(lines[i], wrap(part, t.cellMm(c), c.bold, widths[i]-2*padAcrossMm)...)
		}
	}
	cells := slices.Clone(t.columns)
	for i, c := range cells {
		cells[i].size = t.cellMm(c)
	}
	var pieces []piece
	for {
		part := make([][]string, len(lines))
		more := false
		for i, c := range t.columns {
			n := min(len(lines[i]), max(1, int(tallest/(t.cellMm(c)*leading))))
			part[i], lines[i] = lines[i][:n], lines[i][n:]
			more = more || len(lines[i]) > 0
		}
		pieces = append(pieces, drawRow(cells, part, widths, t.rowMm, false))
		if !more {
			return pieces
		}
	}
}

// drawRow draws one row of cells, centred in height.
func drawRow(columns []column, lines [][]string, widths []float64, least float64, head bool) piece {
	p := piece{height: least, keep: head}
	for i, c := range columns {
		p.height = max(p.height, float64(len(lines[i]))*c.size*leading+2*padAboveMm)
	}
	x := 0.0
	for i, c := range columns {
		r := rect{x, -p.height, x + widths[i], 0}
		cell := box(r, thinMm)
		if head {
			cell.Fill = Pale
		}
		p.draw.Add(cell)
		size := c.size
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
