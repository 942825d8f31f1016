package sequence

import (
	"math"

	"centrepop/templates/draw"
)

// closeness is how tightly a step is set: 1 is roomy.
type closeness float64

func (c closeness) em(mm float64) float64 { return max(2.65, mm*float64(c)) }

// tight sets the lines of a table close where that is asked for.
func (c closeness) tight(t draw.Table) draw.Table {
	t.Tight = c < 0.85
	return t
}

type way struct {
	closeness
	spareMm float64 // room that may be taken
	trial   int     // draws nothing, but tells whether it takes more pages; 0 draws
}

// closest draws something as roomy as it can be on the fewest pages, with the room
// in mm that is left if that is one page.
func closest(set func(way) *draw.Flow) []*draw.Sheet {
	at, tried := draw.Roomiest([]closeness{1, 0.8, 0.6, 0.42, 0.36}, func(c closeness) *draw.Flow { return set(way{closeness: c, trial: math.MaxInt}) },
		func(f *draw.Flow) (pages int, rest float64) { return len(f.Sheets), 0 })
	if spare := tried.Lowest - tried.Body.Y0 - 1; len(tried.Sheets) == 1 && spare > 8 {
		if f := set(way{closeness: at, spareMm: spare}); len(f.Sheets) == 1 {
			return f.Sheets
		}
	}
	return set(way{closeness: at}).Sheets
}
