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
	length := 0.0
	for i := range saddleSteps {
		length += s.stepMm(i)
	}
	return length, nil
}

// at is a place of the curve, and along how far it lies up the branch from where the axes cross, for a branch of radius
// small. Main along x; the branch's axis leans cos along x and sin along z.
func (s Saddle) at(i int, small float64) (x, y, z, along float64) {
	sin, cos := math.Sincos(s.AngleDeg * math.Pi / 180)
	sp, cp := math.Sincos(2 * math.Pi * float64(i) / saddleSteps)
	y = s.OffsetMm + small*sp
	z = math.Sqrt(math.Max(0, s.MainMm*s.MainMm/4-y*y))
	along = (z - small*cp*cos) / sin
	return along*cos - small*cp*sin, y, z, along
}

// stepMm is the length of the curve from one place to the next.
func (s Saddle) stepMm(i int) float64 {
	x0, y0, z0, _ := s.at(i, s.BranchMm/2)
	x, y, z, _ := s.at(i+1, s.BranchMm/2)
	return math.Sqrt((x-x0)*(x-x0) + (y-y0)*(y-y0) + (z-z0)*(z-z0))
}

// Opened is what the end of a branch leaves open over its main, beyond its gap, where its whole wall is cut to one height.
type Opened struct {
	Mm2   float64 // section of it, the mean over the length of the weld
	Mm    float64 // the most at its outside
	AtDeg float64 // where that is, from the obtuse side of the branch's axis
}

// openedSteps divides the wall.
const openedSteps = 20

// Opened returns that of a branch of wallMm, by geometry: the wall touches where it comes down first.
func (s Saddle) Opened(wallMm float64) (out Opened) {
	long := 0.0
	for i := range saddleSteps {
		var up [openedSteps + 1]float64
		top, sum := math.Inf(-1), 0.0
		for k := range up {
			_, _, _, up[k] = s.at(i, s.BranchMm/2-wallMm*float64(k)/openedSteps)
			top = math.Max(top, up[k])
			sum += up[k]
		}
		sum -= (up[0] + up[openedSteps]) / 2
		ds := s.stepMm(i)
		out.Mm2, long = out.Mm2+ds*wallMm*(top-sum/openedSteps), long+ds
		if mm := top - up[0]; mm > out.Mm+1e-9 {
			out.Mm, out.AtDeg = mm, float64(i)*360/saddleSteps
		}
	}
	out.Mm2 /= long
	return out
}
