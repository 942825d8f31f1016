package bend

import (
	"fmt"
	"math"

	"centrepop/layout/lookup"
)

// Chain is a strip folded across: n legs and the n−1 bends between them, all of
// one thickness. A leg is measured along the outside of each of its bends, from
// the free edge or from corner to corner (beyond a square bend, from the outside
// tangent), whichever way the bends go.
type Chain struct {
	LegsMm []float64
	Bends  []Bend
}

// Fold is one bend on the flat blank.
type Fold struct {
	Result
	FromMm, ToMm float64 // where the bend begins and ends on the blank
	LineMm       float64 // its middle: where the punch meets the sheet
}

// Flat is the blank of a chain.
type Flat struct {
	LengthMm float64
	Folds    []Fold
}

// Blank computes the blank. It errs with a *lookup.RangeError where a number is
// out of range or a leg is too short to reach from one bend to the next, and
// otherwise for a chain whose counts or thicknesses do not go together.
func (c Chain) Blank() (Flat, error) {
	if len(c.LegsMm) == 0 || len(c.LegsMm) != len(c.Bends)+1 {
		return Flat{}, fmt.Errorf("bend: %d legs and %d bends: a chain has one bend fewer than legs", len(c.LegsMm), len(c.Bends))
	}
	results := make([]Result, len(c.Bends))
	for i, b := range c.Bends {
		if b.ThicknessMm != c.Bends[0].ThicknessMm {
			return Flat{}, fmt.Errorf("bend: bend %d has another thickness than the first", i+1)
		}
		var err error
		if results[i], err = b.Work(); err != nil {
			return Flat{}, err
		}
	}
	var f Flat
	for i, leg := range c.LegsMm {
		before, after := 0.0, 0.0
		if i > 0 {
			before = results[i-1].SetbackMm
		}
		if i < len(results) {
			after = results[i].SetbackMm
		}
		if err := lookup.Length(fmt.Sprintf("leg %d", i+1), leg, math.Max(0, before+after), MaxLengthMm); err != nil {
			return Flat{}, err
		}
		f.LengthMm += leg - before - after
		if i < len(results) {
			from := f.LengthMm
			f.LengthMm += results[i].AllowanceMm
			f.Folds = append(f.Folds, Fold{Result: results[i], FromMm: from, ToMm: f.LengthMm, LineMm: (from + f.LengthMm) / 2})
		}
	}
	return f, nil
}
