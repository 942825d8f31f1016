package bend

import (
	"math"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

// openings are the V dies commonly sold, mm: the columns of an air bending
// force chart (scribd.com 414866806).
var openings = []float64{4, 6, 7, 8, 10, 12, 14, 16, 18, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250}

// inchOpenings are those that an inch shop has, inches. Common practice, no source.
var inchOpenings = []float64{0.1875, 0.25, 0.3125, 0.375, 0.5, 0.625, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10}

// radiusShare is the inside radius that air bending leaves in mild steel, as a
// share of the opening (artizono.com: "approximate 16% of the die opening").
const radiusShare = 0.16

// AirRadiusMm is the inside radius that air bending over an opening leaves in
// mild steel, whatever the punch.
func AirRadiusMm(openingMm float64) float64 { return radiusShare * openingMm }

// Die is a V die for air bending.
type Die struct {
	OpeningMm float64 `json:"die_mm"`
	RadiusMm  float64 `json:"die_radius_mm"` // inside radius it leaves in mild steel, whatever the punch
}

// DieFor returns the V die for a thickness: an opening of 6 thicknesses below 3
// mm, 8 up to 8 mm, 10 up to 10 mm and 12 above, the next size sold. Source: the
// rows "die opening" of the air bending charts at artizono.com and scribd.com
// 414866806, which leave gaps that are closed here towards the smaller factor.
// It errs where no die sold is wide enough; inch asks for one of an inch shop.
func DieFor(thicknessMm float64, inch bool) (Die, error) {
	if err := lookup.Length("thickness", thicknessMm, 0, MaxThicknessMm); err != nil {
		return Die{}, err
	}
	factor := 12.0
	switch {
	case thicknessMm < 3:
		factor = 6
	case thicknessMm <= 8:
		factor = 8
	case thicknessMm <= 10:
		factor = 10
	}
	sold, unit := openings, 1.0
	if inch {
		sold, unit = inchOpenings, geom.MmPerInch
	}
	for _, v := range sold {
		if v = geom.Clean(v * unit); v >= factor*thicknessMm-1e-9 {
			return Die{OpeningMm: v, RadiusMm: AirRadiusMm(v)}, nil
		}
	}
	return Die{}, lookup.Length("thickness", thicknessMm, 0, sold[len(sold)-1]*unit/factor)
}

// MinFlangeMm returns the shortest leg, measured along the outside, that still
// rests on both edges of the die when the bend is done: half the opening along
// the leaning leg, V/2 : cos(angle/2), which is 0.71 of the opening for a square
// bend. Below it the leg slips into the die. Geometry; it errs for an angle out
// of range.
func (d Die) MinFlangeMm(angleDeg float64) (float64, error) {
	if err := lookup.Length("die opening", d.OpeningMm, 0, MaxLengthMm); err != nil {
		return 0, err
	}
	if err := lookup.Angle("bend angle", angleDeg, 0, lookup.Under(180)); err != nil {
		return 0, err
	}
	return d.OpeningMm / 2 / math.Cos(angleDeg*math.Pi/360), nil
}
