package picture

import (
	"centrepop/layout/plan"
	"centrepop/templates/draw"
)

// Room round a dimensioned section, in millimetres.
const (
	labelRowMm   = 8.6  // size over limits
	plainRowMm   = 5.4  // sizes alone
	chainMm      = 7.5  // a line of lengths with its texts
	chainRowMm   = 3.9  // a further row of its texts
	roomyMm      = 26.0 // of a section that can do with less
	dimSidePad   = 7.0
	wholeSidePad = 16.0 // with TOP at the left and how far an end is off at the right
	sizeEmMm     = 3.4  // em of a size, and of its limits
	limitEmMm    = 2.7
	labelGapMm   = 3.4 // between the labels of a row
	passMm       = 1.6 // for a leader between them
	endMm        = 1.4 // from an end to its word
	arrowMm      = 2.2
	leastMm      = 14.0 // of the section itself
	shortMm      = 34.0 // of a short part, which is drawn longer than it is for the sake of its lengths,
	mostStretch  = 1.8  // but not more
	endsMm       = 7.4  // FRONT and BACK under a whole section
)

// dimensioned is a section in the making.
type dimensioned struct {
	part                          *plan.PartPlan
	s                             *plan.Section
	outsides, bores, above, below []plan.Dimension
	overall                       plan.Dimension
	p                             draw.Panel
	leaders                       [][4]float64
	texts                         []draw.Rect // of the lengths
	tips                          []float64   // where leaders stand on their surfaces at that side
	over                          []draw.Item // these, drawn over all lines
	offset                        *plan.Dimension
	rows                          [2]int  // of the texts of the lengths above and below
	lo, hi                        float64 // of the section, from its axis
	x0, axis, w, h                float64
}

// x is where a place along the axis lies, and y one so far above it.
func (v *dimensioned) x(z float64) float64 { return v.x0 + z*v.w/v.s.LengthMm }

func (v *dimensioned) y(r float64) float64 { return v.axis + r*v.h/(v.hi-v.lo) }
