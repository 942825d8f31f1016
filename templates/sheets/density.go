package sheets

import "centrepop/templates/draw"

// density is how close a part's sheets are set: 1 is roomy.
type density float64

// em is a size of text at a density, not under 7.5 pt.
func (d density) em(mm float64) float64 { return max(2.65, mm*float64(d)) }

// bodyMm is the em of operations, smallMm that of what stands beside them and
// of tables.
func (d density) bodyMm() float64  { return d.em(3.3) }
func (d density) smallMm() float64 { return d.em(2.9) }

// pictures is how much smaller than the largest the pictures are.
func (d density) pictures() float64 { return float64(d) }

// tight sets the lines of a table close where the density asks for it.
func (d density) tight(t draw.Table) draw.Table {
	t.Tight = d < 0.9
	return t
}

func (d density) listed(t draw.Table) draw.Table {
	t.Compact, t.Fit, t.EmMm = true, true, d.em(3.2)
	return d.tight(t)
}

// densities are tried from the roomiest on.
var densities = []density{1, 0.9, 0.8, 0.7, 0.6, 0.52, 0.42}
