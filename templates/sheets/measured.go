package sheets

import "centrepop/templates/draw"

// Room for what stands side by side, in millimetres.
const (
	twoColumnsMm = 150.0 // width from which there are two columns
	gapMm        = 4.0   // under a table
)

// measured is a table with its heights in a column.
type measured struct {
	draw.Table
	column float64   // its width
	headMm float64   // title, lead and heads
	barsMm float64   // heads alone
	rowsMm []float64 // each row
	sumMm  []float64 // of the rows before each, and of all
}

func measure(t draw.Table, width float64) measured {
	m := measured{Table: t, column: width}
	m.headMm, m.rowsMm = m.Measure(width)
	bare := m.Cut(0, 0, "", "", width)
	m.barsMm, _ = bare.Measure(width)
	m.sumMm = make([]float64, len(m.rowsMm)+1)
	for i, h := range m.rowsMm {
		m.sumMm[i+1] = m.sumMm[i] + h
	}
	return m
}

// high is the height of rows from one to before another under a head.
func (m measured) high(from, to int, headMm float64) float64 {
	if from >= to {
		return 0
	}
	return headMm + m.sumMm[to] - m.sumMm[from]
}

func (m measured) whole() float64 { return m.high(0, len(m.rowsMm), m.headMm) }

// bare is a table of some of the rows without title and lead.
func (m measured) bare(from, to int) draw.Table { return m.Cut(from, to, "", "", m.column) }
