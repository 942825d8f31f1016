package cutting

import (
	"math"

	"centrepop/parts/seq"
)

// FinishForceN is how hard a finishing cut pushes the work aside, N: a chip of 0.5 ×
// 0.1 mm in steel at 3000 N/mm², half of it across (common practice, no source).
const FinishForceN = 75.0

// JawMm is how much of a round the jaws of a small lathe take hold of (common
// practice, no source).
const JawMm = 50.0

// A Stretch is a length of a bar of one section, solid where InMm is 0.
type Stretch struct{ LengthMm, OutMm, InMm float64 }

// BendInChuckMm returns how far a finishing cut atMm from the free end bends a bar
// aside there, mm: pieces from the free end to the jaws, modulus in MPa. Castigliano
// on a cantilever, F/E · ∫ m²/I; one piece and a cut at the end give F l³/(3 E I)
// (Shigley, table of beams).
func BendInChuckMm(pieces []Stretch, atMm, eMPa float64) float64 {
	return bend(pieces, eMPa, func(from, to float64) float64 {
		a, b := math.Max(0, from-atMm), math.Max(0, to-atMm)
		return (b*b*b - a*a*a) / 3
	})
}

// BendOnCentresMm returns the same for a bar between centres, pieces from one
// centre to the other. One piece and a cut in its middle give F l³/(48 E I).
func BendOnCentresMm(pieces []Stretch, atMm, eMPa float64) float64 {
	length := seq.Sum(pieces, func(p Stretch) float64 { return p.LengthMm })
	left, right := (length-atMm)/length, atMm/length // reactions to a force of one
	return bend(pieces, eMPa, func(from, to float64) float64 {
		cube := func(a, b float64) float64 { return (b*b*b - a*a*a) / 3 }
		sum := left * left * cube(math.Min(from, atMm), math.Min(to, atMm))
		return sum + right*right*cube(length-math.Max(to, atMm), length-math.Max(from, atMm))
	})
}

// bend adds up F/E · ∫ m² dz/I over the pieces.
func bend(pieces []Stretch, eMPa float64, square func(fromMm, toMm float64) float64) float64 {
	sum, at := 0.0, 0.0
	for _, p := range pieces {
		i := math.Pi / 64 * (math.Pow(p.OutMm, 4) - math.Pow(p.InMm, 4))
		sum += square(at, at+p.LengthMm) / i
		at += p.LengthMm
	}
	return FinishForceN / eMPa * sum
}
