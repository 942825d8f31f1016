// Package bend computes folded sheet: how long the blank of a bent strip is,
// where its bend lines lie, and the shortest flange a die can hold.
//
// A [Bend] is one fold; a [Chain] is a strip with legs and bends in a row. All
// lengths are millimetres, all angles degrees. The angle of a bend is what the
// sheet turns through: 0 is flat, 90 is square, above 90 the flange leans back
// over the sheet.
//
// Sources:
//
//   - DIN 6935: the neutral line, k = 0.65 + 0.5·lg(r/s) of half the thickness
//     for an inside radius r up to five times the thickness s, and half the
//     thickness above; and to what the legs are measured (to the outside corner
//     up to a square bend, to the outside tangent beyond). The standard takes
//     the deduction below 15° as nothing; here it is computed.
//   - Die opening by thickness and the radius it leaves in air bending: a common
//     air bending force chart (mild steel).
//   - Sizes of reliefs: common practice, no source.
//
// The neutral line of a real bend depends on material, tool and method, and
// springback is not computed: fold a test strip before a batch, and give its K.
package bend

import (
	"cmp"
	"math"

	"centrepop/layout/lookup"
)

// Limits of what this package takes.
const (
	MaxThicknessMm = 50.0  // beyond it no sheet is folded in a small shop
	MaxLengthMm    = 10000 // of a leg or a radius
	// MinRatio is the least inside radius, in thicknesses, for which DIN 6935's
	// k is computed; a sharper bend needs a measured K. Common practice, no source.
	MinRatio = 0.1
)

// Bend is one fold.
type Bend struct {
	ThicknessMm    float64
	InsideRadiusMm float64
	AngleDeg       float64 // above 0 and below 180
	// K is how far the neutral line lies from the inside, in thicknesses, above
	// 0 and up to 1; 0 takes DIN 6935.
	K float64
}

// KFactor returns how far the neutral line lies from the inside of a bend, in
// thicknesses: half of DIN 6935's k, 0.325 where radius and thickness are
// equal, at most 0.5. It errs unless the thickness is above 0 and the radius at
// least MinRatio thicknesses.
func KFactor(insideRadiusMm, thicknessMm float64) (float64, error) {
	if err := lookup.Length("thickness", thicknessMm, 0, MaxThicknessMm); err != nil {
		return 0, err
	}
	// The least radius itself is fine.
	if err := lookup.Length("inside radius", insideRadiusMm, MinRatio*thicknessMm*(1-1e-9), MaxLengthMm); err != nil {
		return 0, err
	}
	ratio := insideRadiusMm / thicknessMm
	if ratio > 5 {
		return 0.5, nil
	}
	return (0.65 + 0.5*math.Log10(ratio)) / 2, nil
}

// Result is what one bend comes to.
type Result struct {
	K           float64 `json:"k"`            // position of the neutral line in thicknesses from the inside
	AllowanceMm float64 `json:"allowance_mm"` // length of the neutral line in the bend
	DeductionMm float64 `json:"deduction_mm"` // to take off the sum of both legs to get the blank
	SetbackMm   float64 `json:"setback_mm"`   // from the tangent of each leg to the point it is measured to
	ToTangent   bool    `json:"-"`            // legs are measured to the outside tangent, not to the corner
}

// Work computes the bend. It errs with a *lookup.RangeError for a number out of
// range.
func (b Bend) Work() (Result, error) {
	if err := cmp.Or(
		lookup.Length("thickness", b.ThicknessMm, 0, MaxThicknessMm),
		lookup.Length("inside radius", b.InsideRadiusMm, lookup.Under(0), MaxLengthMm),
		lookup.Angle("bend angle", b.AngleDeg, 0, lookup.Under(180)),
	); err != nil {
		return Result{}, err
	}
	k := b.K
	if k == 0 {
		var err error
		if k, err = KFactor(b.InsideRadiusMm, b.ThicknessMm); err != nil {
			return Result{}, err
		}
	}
	if err := lookup.Number("K", k, 0, 1); err != nil {
		return Result{}, err
	}
	turn := b.AngleDeg * math.Pi / 180
	outside := b.InsideRadiusMm + b.ThicknessMm
	r := Result{
		K: k, AllowanceMm: turn * (b.InsideRadiusMm + k*b.ThicknessMm),
		SetbackMm: outside * math.Tan(turn/2), ToTangent: b.AngleDeg > 90,
	}
	if r.ToTangent {
		r.SetbackMm = outside
	}
	r.DeductionMm = 2*r.SetbackMm - r.AllowanceMm
	return r, nil
}

// Relief is the slot at the end of a bend that does not run to the edge, so
// that the sheet beside it does not tear: at least one thickness wide, and as
// deep as the bend from the outside corner plus one thickness. Common
// practice, no source. It errs as Work does.
func (b Bend) Relief() (widthMm, depthMm float64, err error) {
	r, err := b.Work()
	if err != nil {
		return 0, 0, err
	}
	return b.ThicknessMm, r.SetbackMm + b.ThicknessMm, nil
}
