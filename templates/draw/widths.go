package draw

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/parts/seq"
)

// shareWidths shares the width among the columns. Where even the narrowest
// columns are too wide together, all text of the table becomes smaller, down
// to smallMm.
func (t *Table) shareWidths(total float64) []float64 {
	for t.scale = 1.0; ; t.scale -= 0.05 {
		widths, narrow, ok := t.tryWidths(total)
		if ok || t.scale*headTextMm <= SmallMm-0.2 {
			if t.Fit && ok {
				t.lowest(widths, narrow)
			}
			return widths
		}
	}
}

// cellMm is the em size of a column's cells, headMm that of the heads.
func (t *Table) cellMm(c Column) float64 {
	size := cmp.Or(c.Size, t.EmMm, TextMm)
	return max(SmallMm, size*t.scale)
}

func (t *Table) headMm() float64 { return max(SmallMm, headTextMm*t.scale) }

// tryWidths is shareWidths at one size of text, with the least width of each
// column; it tells whether no number or word has to be broken.
func (t *Table) tryWidths(total float64) (natural, narrow []float64, ok bool) {
	natural = make([]float64, len(t.Columns))
	narrow = make([]float64, len(t.Columns)) // no word broken
	var sum, narrowSum, flexSum float64
	if t.ems == nil {
		t.ems = t.measured()
	}
	for i, c := range t.Columns {
		natural[i], narrow[i] = t.columnMm(i)
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
		case narrowSum <= total:
			natural[i] = narrow[i] + (natural[i]-narrow[i])*(total-narrowSum)/(sum-narrowSum)
		default:
			natural[i] = narrow[i] * total / narrowSum
		}
	}
	return natural, narrow, narrowSum <= total
}

// The room in cells, in millimetres.
const (
	padAcrossMm = 1.3
	padAboveMm  = 0.9
	headTextMm  = 3.0
)

// columnMm is the width that a column takes as it is, and the least that breaks no word of it.
func (t *Table) columnMm(i int) (natural, narrow float64) {
	c, ems := t.Columns[i], t.ems
	size := t.cellMm(c)
	narrow = ems.heads[i].word * t.headMm()
	natural = max(narrow, min(ems.heads[i].whole*t.headMm(), 22))
	for _, row := range ems.rows {
		for _, line := range row[i] {
			w := line.whole * size
			natural = max(natural, w)
			if c.Flex && w > c.Firm {
				w = line.word * size
			}
			narrow = max(narrow, w)
		}
	}
	natural = max(natural+2*padAcrossMm+0.2, c.Least)
	narrow = max(narrow+2*padAcrossMm+0.2, c.Least)
	if c.Most > 0 {
		natural = max(narrow, min(natural, c.Most))
	}
	return natural, narrow
}

// shares are the widths that lowest tries between two columns.
const shares = 12

// lowest moves width between neighbouring flexible columns to where the rows
// together are lowest. It reckons with the length of the texts, not with their
// words.
func (t *Table) lowest(widths, narrow []float64) {
	var flex []int
	for i, c := range t.Columns {
		if c.Flex {
			flex = append(flex, i)
		}
	}
	for k := range len(flex) - 1 {
		i, j := flex[k], flex[k+1]
		room := widths[i] + widths[j]
		best, at := t.rowsHeight(widths)-0.1, widths[i]
		for n := range shares + 1 {
			widths[i] = narrow[i] + (room-narrow[i]-narrow[j])*float64(n)/shares
			widths[j] = room - widths[i]
			if h := t.rowsHeight(widths); h < best {
				best, at = h-0.1, widths[i]
			}
		}
		widths[i], widths[j] = at, room-at
	}
}

// ems are the texts of a table measured in em, so for every size of them.
type ems struct {
	heads []lineEms
	rows  [][][]lineEms // by row and column
}

// lineEms is a line of text, and its widest word.
type lineEms struct{ whole, word float64 }

// Measured is the table without its empty spare columns and with its texts measured,
// for every width that it is laid out for.
func (t Table) Measured() Table {
	if t.ems == nil {
		t.dropSpare()
		t.ems = t.measured()
	}
	return t
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

func (t *Table) measured() *ems {
	out := &ems{rows: make([][][]lineEms, 0, len(t.Rows))}
	line := func(text string, bold bool) lineEms {
		l := lineEms{whole: mixedWidth(text, 1, bold)}
		if !strings.Contains(text, " ") && !strings.Contains(text, BoldMark) {
			l.word = l.whole
			return l
		}
		for word := range strings.FieldsSeq(strings.ReplaceAll(text, BoldMark, "")) {
			l.word = max(l.word, TextWidth(word, 1, bold))
		}
		return l
	}
	out.heads = seq.Map(t.Columns, func(c Column) lineEms { return line(c.Head, true) })
	cells := make([][]lineEms, len(t.Rows)*len(t.Columns))
	lines := make([]lineEms, 0, len(cells))
	for r, row := range t.Rows {
		in := cells[r*len(t.Columns):][:len(t.Columns)]
		for i, c := range t.Columns {
			from := len(lines)
			for text := range strings.SplitSeq(row[i], "\n") {
				lines = append(lines, line(text, c.Bold))
			}
			in[i] = lines[from:]
		}
		out.rows = append(out.rows, in)
	}
	return out
}

// rowsHeight is about how high the rows are together.
func (t *Table) rowsHeight(widths []float64) float64 {
	const ragged = 1.05 // a line is rarely full
	var sum float64
	for _, row := range t.ems.rows {
		high := t.RowMm
		for i, c := range t.Columns {
			if !c.Flex {
				continue
			}
			n, size, room := 0.0, t.cellMm(c), widths[i]-2*padAcrossMm
			for _, line := range row[i] {
				if w := line.whole * size; w <= room {
					n++
				} else {
					n += math.Ceil(w * ragged / room)
				}
			}
			high = max(high, n*size*t.leading()+2*t.padMm())
		}
		sum += high
	}
	return sum
}

func (t *Table) padMm() float64 {
	if t.Tight {
		return 0.3
	}
	return padAboveMm
}

// leading is the distance of lines in em, padMm the room above and below them.
func (t *Table) leading() float64 {
	if t.Tight {
		return 1.17
	}
	return Leading
}

// baseline is where letters stand in a line, in em from its top: higher where the
// lines are close, so that what hangs below them is clear of the rule.
func (t *Table) baseline() float64 {
	if t.Tight {
		return 0.955
	}
	return 1.03
}
