package sheets

import (
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// longRows is the most rows of a table that stand in one column.
const longRows = 14

// leastHalf is the fewest rows in one of the two columns that a table is broken into;
// draw.LeastRows where it goes on from another page.
const leastHalf = 3

// halve is where rows up to n are broken into two columns side by side, and the height of the taller; n where one column is no taller.
func (m measured) halve(from, n int, headMm float64) (at int, high float64) {
	at, high = n, m.high(from, n, headMm)
	least := leastHalf
	if from > 0 {
		least = draw.LeastRows
	}
	for k := from + least; k <= n-least; k++ {
		if h := max(m.high(from, k, headMm), m.high(k, n, m.barsMm)); h < high-0.1 {
			at, high = k, h
		}
	}
	return at, high
}

// region is the part of a sheet under its operations: tables to work by, and
// the record.
type region struct {
	narrow []measured // in two columns
	record recording  // in two columns or beside the others
}

// below sets hole tables and record in the way that is lowest, and goes on to
// the next page where a table ends or the record has rows enough on either.
func (d dense) below(f *draw.Flow, all []*holes) {
	r := region{record: d.record()}
	verdict := r.record.verdict
	if f.Width() < twoColumnsMm {
		oneBelow(f, all, r.record)
		return
	}
	for _, t := range all {
		if t.leastMm > d.columnMm() {
			f.Table(t.page())
			continue
		}
		r.narrow = append(r.narrow, t.column().parted()...)
	}
	beside := max(r.height(r.narrow), r.record.whole())
	k := r.balance()
	above := max(r.height(r.narrow[:k]), r.height(r.narrow[k:]))
	if len(r.narrow) > 0 && beside <= above+r.under() && f.Fits(beside+verdict.Height) {
		r.pair(f, r.narrow, []measured{r.record.measured})
	} else {
		if !f.Fits(above) && above < f.Tallest() {
			f.TurnPage()
		}
		r.pair(f, r.narrow[:k], r.narrow[k:])
		r.setRecord(f)
	}
	if len(r.record.Rows) > 0 {
		f.Add(verdict)
	}
}

// parted is a table that is too long for a column, in two.
func (m measured) parted() []measured {
	n := len(m.rowsMm)
	if n <= longRows {
		return []measured{m}
	}
	k, _ := m.halve(0, n, m.headMm)
	return []measured{measure(m.Cut(0, k, m.Title, m.Lead, m.column), m.column), measure(m.Cut(k, n, m.Title+" (continued)", "", m.column), m.column)}
}

// under is the height of the rows of the record below the other tables.
func (r *region) under() float64 {
	_, halved := r.record.halve(0, len(r.record.rowsMm), r.record.barsMm)
	wide := r.record.wide
	return min(halved, wide.high(0, len(wide.rowsMm), wide.barsMm))
}

// setRecord sets the record over the whole width where that is lower: pieces
// with columns of their own leave half the width too little for words. Else it
// stands in two columns, on more than one page where either gets rows enough.
func (r *region) setRecord(f *draw.Flow) {
	if _, halved := r.record.halve(0, len(r.record.rowsMm), r.record.barsMm); r.under() < halved-0.1 {
		t := r.record.wide.Table
		t.Foot = r.record.verdict.Height
		f.Table(t)
		return
	}
	m, from, head := r.record, 0, r.record.head
	for from < len(m.rowsMm) && !f.Over() {
		room := f.Left() - draw.HeightMm(head...) - m.GapMm()
		n, k := m.fill(from, room)
		if n == from && f.Left() < f.Tallest()-1 {
			f.TurnPage()
			continue
		}
		f.Add(head...)
		if n == from { // rows taller than a page
			f.Columns(2)
			f.Table(m.bare(from, len(m.rowsMm)))
			f.Columns(1)
			return
		}
		f.Columns(2)
		f.Table(m.bare(from, k))
		if k < n {
			f.TurnColumn()
			f.Table(m.bare(k, n))
		}
		f.Columns(1)
		title := draw.Table{Title: m.Title + " (continued)", Compact: m.Compact}
		head = title.Head(f.Width())
		if from = n; from < len(m.rowsMm) {
			f.TurnPage()
		}
	}
}

// fill is how many of the rows from one on stand in two columns of this height, with
// the verdict under the last, and where they are broken; none of them if they are
// too few for two columns.
func (r *recording) fill(from int, roomMm float64) (n, at int) {
	all := len(r.rowsMm)
	for n, under := all, r.verdict.Height; ; under = 0 {
		if r.high(from, n, 0)/2+under <= roomMm { // the taller column has half of it at least
			if k, high := r.halve(from, n, r.barsMm); high+under <= roomMm {
				return n, k
			}
		}
		if n = min(n-1, all-draw.LeastRows); n < from+2*draw.LeastRows {
			return from, from
		}
	}
}

// oneBelow sets everything one below the other, on narrow paper.
func oneBelow(f *draw.Flow, all []*holes, record recording) {
	for _, t := range all {
		f.Table(t.page())
	}
	last := record.wide.Table
	last.Foot = record.verdict.Height
	if f.Table(last); len(last.Rows) > 0 {
		f.Add(record.verdict)
	}
}

func (r *region) height(tables []measured) float64 {
	return seq.Sum(tables, func(t measured) float64 { return t.whole() + gapMm })
}

// balance is how many of the narrow tables stand in the left column.
func (r *region) balance() int {
	best, at := r.height(r.narrow), len(r.narrow)
	for k := range r.narrow {
		if h := max(r.height(r.narrow[:k]), r.height(r.narrow[k:])); k > 0 && h < best {
			best, at = h, k
		}
	}
	return at
}

func (r *region) pair(f *draw.Flow, left, right []measured) {
	f.Columns(2)
	for i, column := range [][]measured{left, right} {
		if i > 0 && f.Column() == 0 {
			f.TurnColumn()
		}
		for _, t := range column {
			f.Table(t.Table)
		}
	}
	f.Columns(1)
}
