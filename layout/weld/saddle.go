package weld

import (
	"fmt"
	"math"

	"centrepop/layout/lookup"
)

// Saddle is a branch tube standing on a main tube.
type Saddle struct {
	MainMm   float64 // outside diameter of the main, mm
	BranchMm float64 // outside diameter of the branch, mm, not over the main's
	AngleDeg float64 // between the axes, 30 to 90
	OffsetMm float64 // of the axes, mm; either sign
}

// saddleSteps divides the branch's round; the length is then true to a millionth.
const saddleSteps = 1440

// LengthMm returns the length of the weld round the branch in mm, along the curve
// in which the two outsides meet: by geometry, longer than the branch's girth. It
// errs for sizes that are not positive and finite, an angle outside 30 to 90
// degrees, and a branch that reaches past the main.
func (s Saddle) LengthMm() (float64, error) {
	if !positive(s.MainMm) || !positive(s.BranchMm) || math.IsNaN(s.OffsetMm) || math.Abs(s.OffsetMm)+s.BranchMm/2 > s.MainMm/2+1e-9 {
		return 0, lookup.Refuse("weld: no saddle of %v on %v at an offset of %v: the branch must lie inside the main", lookup.Mm(s.BranchMm), lookup.Mm(s.MainMm), lookup.Mm(s.OffsetMm))
	}
	if !(s.AngleDeg >= 30 && s.AngleDeg <= 90) {
		return 0, fmt.Errorf("weld: saddle at %v degrees: want 30 to 90", s.AngleDeg)
	}
	sin, cos := math.Sincos(s.AngleDeg * math.Pi / 180)
	big, small := s.MainMm/2, s.BranchMm/2
	// Main along x; the branch's axis leans cos along x and sin along z.
	at := func(i int) (x, y, z float64) {
		sp, cp := math.Sincos(2 * math.Pi * float64(i) / saddleSteps)
		y = s.OffsetMm + small*sp
		z = math.Sqrt(math.Max(0, big*big-y*y))
		along := (z - small*cp*cos) / sin
		return along*cos - small*cp*sin, y, z
	}
	length := 0.0
	x0, y0, z0 := at(0)
	for i := 1; i <= saddleSteps; i++ {
		x, y, z := at(i)
		length += math.Sqrt((x-x0)*(x-x0) + (y-y0)*(y-y0) + (z-z0)*(z-z0))
		x0, y0, z0 = x, y, z
	}
	return length, nil
}
