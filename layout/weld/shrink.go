package weld

import (
	"fmt"
	"math"

	"centrepop/layout/lookup"
)

// Shrinkage is what a weld draws in, mm.
type Shrinkage struct {
	AcrossMinMm float64 // across the weld, least
	AcrossMaxMm float64 // across the weld, greatest
	AlongMm     float64 // along the weld over its length
	Source      string
}

const twi = "TWI rule of thumb for steel"

// FilletShrinkage returns what one fillet draws in: 0.8 mm across when the leg is
// not over three quarters of the plate, and 0.8 mm along for 3 m (TWI, FAQ "How
// much shall I allow for weld shrinkage"). For a larger leg the rule says only
// "more": the upper figure then grows with the leg, and says so. It errs for sizes
// that are not positive and finite.
func FilletShrinkage(legMm, plateMm, lengthMm float64) (Shrinkage, error) {
	if !positive(legMm) || !positive(plateMm) || !positive(lengthMm) {
		return Shrinkage{}, fmt.Errorf("weld: shrinkage needs positive sizes, has leg %v, plate %v, length %v mm", legMm, plateMm, lengthMm)
	}
	s := Shrinkage{0.8, 0.8, 0.8 * lengthMm / 3000, twi}
	if limit := 0.75 * plateMm; legMm > limit {
		s.AcrossMaxMm *= legMm / limit
		s.Source = twi + "; upper figure in proportion to the leg: common practice"
	}
	return s, nil
}

// ButtShrinkage returns what a 60 degree V butt draws in: 1.5 to 3 mm across, and
// 3 mm along for 3 m (TWI, as above). It errs if lengthMm is not positive and
// finite.
func ButtShrinkage(lengthMm float64) (Shrinkage, error) {
	if !positive(lengthMm) {
		return Shrinkage{}, fmt.Errorf("weld: shrinkage needs a positive length, has %v mm", lengthMm)
	}
	return Shrinkage{1.5, 3, 3 * lengthMm / 3000, twi}, nil
}

// Allowance is metal to leave for machining after welding.
type Allowance struct {
	FaceMm float64 // on each face to be squared up, mm
	BoreMm float64 // on the diameter of a bore or register, mm
	Source string
}

// squareUpMm is the largest diameter that SquareUp answers for.
const squareUpMm = 1000.0

// SquareUp returns the metal to leave on a flange or ring of diameterMm that is
// welded on and then faced and bored true: 1.5 mm a face and 2 mm on a bore to 150
// mm diameter, 2 and 3 to 300, 3 and 4 to 600, 4 and 5 to 1000; half as much again
// on the face when the part is thinner than a fifteenth of its diameter, for it
// dishes. Common practice, no source: measure the first one made. It errs for
// sizes that are not positive, or a diameter over 1000 mm.
func SquareUp(diameterMm, thickMm float64) (Allowance, error) {
	if !positive(diameterMm) || !positive(thickMm) || diameterMm > squareUpMm {
		return Allowance{}, lookup.Refuse("weld: square-up allowance is for diameters to %v and a positive thickness, not %v and %v", lookup.Mm(squareUpMm), lookup.Mm(diameterMm), lookup.Mm(thickMm))
	}
	a := Allowance{4, 5, "common practice, no source"}
	switch {
	case diameterMm <= 150:
		a.FaceMm, a.BoreMm = 1.5, 2
	case diameterMm <= 300:
		a.FaceMm, a.BoreMm = 2, 3
	case diameterMm <= 600:
		a.FaceMm, a.BoreMm = 3, 4
	}
	if thickMm < diameterMm/15 {
		a.FaceMm *= 1.5
	}
	return a, nil
}

// PullMm is how far along a round the shrinkage of a weld round it pulls its diameter: half a wave of the bending of a
// cylinder from a ring of force, of mean radius and wall in mm, which is 4 % of that at the ring by then. β⁴ = 3(1−ν²)/(a²h²),
// Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., chapter 15, from memory; a thick one is taken as a thin one.
func PullMm(meanRadiusMm, wallMm float64) float64 {
	const poisson = 0.3
	return math.Pi * math.Sqrt(meanRadiusMm*wallMm) / math.Pow(3*(1-poisson*poisson), 0.25)
}
