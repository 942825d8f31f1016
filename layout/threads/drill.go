package threads

import (
	"math"

	"centrepop/parts/geom"
)

// minorTolerance6H are the tolerances of the internal minor diameter, grade 6, by
// pitch in mm: ISO 965-1 Table of TD1 (0.35 to 6 by a tap maker's sheet, 8 from memory). Smaller pitches and those
// between follow the standard's formula.
var minorTolerance6H = map[float64]float64{
	0.35: 0.100, 0.4: 0.112, 0.45: 0.125, 0.5: 0.140, 0.6: 0.160, 0.7: 0.180, 0.75: 0.190, 0.8: 0.200, 1: 0.236, 1.25: 0.265,
	1.5: 0.300, 1.75: 0.335, 2: 0.375, 2.5: 0.450, 3: 0.500, 3.5: 0.560, 4: 0.600, 4.5: 0.670, 5: 0.710, 5.5: 0.750, 6: 0.800, 8: 1.000,
}

// minorToleranceG are the tolerances of the internal minor diameter of pipe
// threads G by threads per inch, in mm: ISO 228-1 Table 1.
var minorToleranceG = map[float64]float64{28: 0.282, 19: 0.445, 14: 0.541, 11: 0.640}

// MinorLimitsMm returns the least and the greatest minor diameter of the internal
// thread in mm, between which a hole for tapping lies. Metric threads: 6H of ISO
// 965-1; unified: 2B of ASME B1.1, by its formula 0.25 P - 0.4 P² in inches for
// all sizes (from memory; under 1/4 in the standard allows more); G: ISO 228-1; Rp: the
// basic diameter more or less, by what the taper 1:16 of its mate makes of 1 1/4 turns, 1 1/2 over 2 in
// (ISO 7-1 Table 1, turns from memory). Taper threads Rc and NPT, whose drill is a shop figure, have
// TapDrillMm to 0.1 mm above it (common practice, no source). Of lead screws it
// is that of the nut by its class. Both are 0 for R.
func (t Thread) MinorLimitsMm() (minMm, maxMm float64) {
	switch t.Series {
	case PipeR:
		return 0, 0
	case Trapezoidal, Acme:
		return t.Lead.Nut.Minor[0], t.Lead.Nut.Minor[1]
	case PipeRp:
		turns := 1.25
		if t.MajorMm > 60 {
			turns = 1.5
		}
		return round3(t.MinorMm - turns*t.PitchMm*TaperPerMm), round3(t.MinorMm + turns*t.PitchMm*TaperPerMm)
	case PipeRc, PipeNPT:
		return t.TapDrillMm, round3(t.TapDrillMm + 0.1)
	case PipeG:
		return t.MinorMm, round3(t.MinorMm + minorToleranceG[t.TPI])
	case UnifiedUNC, UnifiedUNF, UnifiedUNEF, UnifiedUN, UnifiedUNS:
		p := 1 / t.TPI
		return t.MinorMm, round3(t.MinorMm + geom.MmPerInch*(0.25*p-0.4*p*p))
	}
	tolerance, ok := minorTolerance6H[t.PitchMm]
	if !ok { // ISO 965-1 formula for pitches under 1 mm, grade 6
		tolerance = (433*t.PitchMm - 190*math.Pow(t.PitchMm, 1.22)) / 1000
	}
	return t.MinorMm, round3(t.MinorMm + tolerance)
}
