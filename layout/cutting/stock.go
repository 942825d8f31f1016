package cutting

import (
	"fmt"
	"math"
	"sort"

	"centrepop/parts/geom"
)

// roundBarsMm are hot-rolled and bright round bar diameters in mm: EN 10060
// preferred sizes with the usual bright-bar sizes (from memory).
var roundBarsMm = [...]float64{
	6, 8, 10, 12, 14, 15, 16, 18, 20, 22, 24, 25, 26, 28, 30, 32, 35, 36, 38, 40, 42, 45, 48, 50,
	52, 55, 60, 63, 65, 70, 75, 80, 85, 90, 95, 100, 105, 110, 115, 120, 125, 130, 135, 140, 145,
	150, 155, 160, 165, 170, 175, 180, 190, 200, 210, 220, 230, 240, 250, 260, 280, 300,
}

// platesMm are the plate and sheet thicknesses in mm that merchants keep: common
// practice (EN 10029 and EN 10051 fix tolerances, not sizes).
var platesMm = [...]float64{
	1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100,
}

// inchPlates32 are plate thicknesses in 1/32 in: common practice.
var inchPlates32 = [...]int{2, 3, 4, 5, 6, 8, 10, 12, 14, 16, 20, 24, 28, 32, 36, 40, 44, 48, 56, 64, 72, 80, 88, 96, 112, 128}

// StockSize is a size a merchant keeps.
type StockSize struct {
	Mm   float64 // the size, mm
	Name string  // "50 mm", "2-1/4 in"
}

// RoundBars returns round bar diameters of a system in rising order. Inch bars:
// 1/4 to 1-1/2 by 1/16, to 3 by 1/8, to 6 by 1/4, to 12 by 1/2 (common practice).
func RoundBars(s System) []StockSize {
	if s != Inch {
		return metricSizes(roundBarsMm[:])
	}
	var out []StockSize
	for n := 4; n <= 192; n++ { // sixteenths
		switch {
		case n <= 24, n <= 48 && n%2 == 0, n <= 96 && n%4 == 0, n%8 == 0:
			out = append(out, StockSize{float64(n) / 16 * geom.MmPerInch, inchName(n, 16)})
		}
	}
	return out
}

// Plates returns plate thicknesses of a system in rising order.
func Plates(s System) []StockSize {
	if s != Inch {
		return metricSizes(platesMm[:])
	}
	out := make([]StockSize, len(inchPlates32))
	for i, n := range inchPlates32 {
		out[i] = StockSize{float64(n) / 32 * geom.MmPerInch, inchName(n, 32)}
	}
	return out
}

func metricSizes(mm []float64) []StockSize {
	out := make([]StockSize, len(mm))
	for i, v := range mm {
		out[i] = StockSize{v, fmt.Sprintf("%g mm", v)}
	}
	return out
}

// smallestFrom returns the first size not below wantMm.
func smallestFrom(sizes []StockSize, wantMm float64, what string) (StockSize, error) {
	if !positive(wantMm) {
		return StockSize{}, fmt.Errorf("cutting: %s %v mm is not a positive number", what, wantMm)
	}
	i := sort.Search(len(sizes), func(i int) bool { return sizes[i].Mm >= wantMm-1e-6 })
	if i == len(sizes) {
		return StockSize{}, fmt.Errorf("cutting: no stock %s of %.2f mm or more: the largest kept is %s", what, wantMm, sizes[i-1].Name)
	}
	return sizes[i], nil
}

// PlateFor returns the thinnest stock plate not under thicknessMm plus
// allowanceMm (mm, for facing; 0 to use the plate as rolled).
func PlateFor(thicknessMm, allowanceMm float64, s System) (StockSize, error) {
	if !notNegative(allowanceMm) {
		return StockSize{}, fmt.Errorf("cutting: facing allowance %v mm is not zero or more", allowanceMm)
	}
	if !positive(thicknessMm) {
		return StockSize{}, fmt.Errorf("cutting: plate thickness %v mm is not a positive number", thicknessMm)
	}
	return smallestFrom(Plates(s), thicknessMm+allowanceMm, "plate thickness")
}

// Blank is the piece of round bar to saw for a turned part.
type Blank struct {
	Bar       StockSize // bar to saw from
	LengthMm  float64   // length to saw, mm, rounded up to whole mm
	TurnMm    float64   // metal on diameter between bar and finished part, mm
	FacePerMm float64   // metal for facing at each end, mm
	GripMm    float64   // extra length for the chuck, cut off at the end, mm
	MassKg    float64   // mass of the blank, kg
}

// TurningAllowanceMm returns the least metal in mm to leave on diameter over a
// finished diameter dMm turned all over from hot-rolled bar: 2 mm to 50, 3 to
// 80, 4 to 120, 5 to 200, 6 above. Common practice, no source.
func TurningAllowanceMm(dMm float64) float64 {
	switch {
	case dMm <= 50:
		return 2
	case dMm <= 80:
		return 3
	case dMm <= 120:
		return 4
	case dMm <= 200:
		return 5
	}
	return 6
}

// FacingAllowanceMm returns the metal in mm to leave for facing at each sawn end
// of a bar of diameter dMm: 1.5 mm to 50, 2 to 100, 3 above, for a bandsaw that
// may run out of square. Common practice, no source.
func FacingAllowanceMm(dMm float64) float64 {
	switch {
	case dMm <= 50:
		return 1.5
	case dMm <= 100:
		return 2
	}
	return 3
}

// RoundBlank chooses the bar and sawn length for a part of finished largest
// diameter dMm and length lengthMm. skin is false when that diameter may stay
// as bright bar supplies it (no metal on diameter). gripMm is extra length for
// the chuck, 0 when the part is turned end for end. It errs for sizes that are
// not positive and finite, or beyond the bar series (300 mm, 12 in).
func RoundBlank(dMm, lengthMm, gripMm, densityKgM3 float64, skin bool, s System) (Blank, error) {
	if !positive(dMm) || !positive(lengthMm) || !positive(densityKgM3) {
		return Blank{}, fmt.Errorf("cutting: blank needs positive numbers, has diameter %v mm, length %v mm, density %v kg/m3", dMm, lengthMm, densityKgM3)
	}
	if !notNegative(gripMm) {
		return Blank{}, fmt.Errorf("cutting: chucking length %v mm is not zero or more", gripMm)
	}
	add := 0.0
	if skin {
		add = TurningAllowanceMm(dMm)
	}
	bar, err := smallestFrom(RoundBars(s), dMm+add, "round bar")
	if err != nil {
		return Blank{}, err
	}
	face := FacingAllowanceMm(bar.Mm)
	length := math.Ceil(lengthMm + 2*face + gripMm - 1e-9)
	mass, err := MassCylinderKg(bar.Mm, 0, length, densityKgM3)
	if err != nil {
		return Blank{}, err
	}
	return Blank{bar, length, bar.Mm - dMm, face, gripMm, mass}, nil
}

// MassCylinderKg returns the mass in kg of a round or tube: outside and inside
// diameter (0 for solid) and length in mm, density in kg/m3. It errs unless
// 0 <= inside < outside and all are finite and the others positive.
func MassCylinderKg(outsideMm, insideMm, lengthMm, densityKgM3 float64) (float64, error) {
	if !positive(outsideMm) || !positive(lengthMm) || !positive(densityKgM3) {
		return 0, fmt.Errorf("cutting: mass needs positive numbers, has outside %v mm, length %v mm, density %v kg/m3", outsideMm, lengthMm, densityKgM3)
	}
	if !(insideMm >= 0 && insideMm < outsideMm) {
		return 0, fmt.Errorf("cutting: inside diameter %v mm must be from 0 to below the outside %v mm", insideMm, outsideMm)
	}
	areaMm2 := math.Pi / 4 * (outsideMm - insideMm) * (outsideMm + insideMm)
	return MassPlateKg(areaMm2, lengthMm, densityKgM3)
}

// MassPlateKg returns the mass in kg of a plate of areaMm2 (mm2, holes taken
// off) and thicknessMm at density densityKgM3. All must be positive and finite,
// and so must the result.
func MassPlateKg(areaMm2, thicknessMm, densityKgM3 float64) (float64, error) {
	m := areaMm2 * thicknessMm * densityKgM3 * 1e-9
	if !positive(areaMm2) || !positive(thicknessMm) || !positive(densityKgM3) || !positive(m) {
		return 0, fmt.Errorf("cutting: mass needs positive numbers, has area %v mm2, thickness %v mm, density %v kg/m3", areaMm2, thicknessMm, densityKgM3)
	}
	return m, nil
}
