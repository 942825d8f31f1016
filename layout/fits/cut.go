package fits

import (
	"slices"

	"centrepop/layout/lookup"
)

// thermalUpTo are the upper ends, mm, of the columns of [thermal]; the range to the
// upper one excludes it.
var thermalUpTo = [...]float64{3, 10, 35, 125, 315, 1000, 2000, 4000, 6000, 8000}

// thermalRow is a row of [thermal]: the thickest plate it is for, mm, and its limits.
type thermalRow struct {
	upToMm float64
	limit  [len(thermalUpTo)]float64
}

// thermal is the limit deviation, plus and minus mm, of a size cut by flame or plasma,
// by the plate up to and including a thickness. Source: ISO 9013:2017, tolerance class
// 2, as modulusmetal.com prints it; over 20 mm from memory.
var thermal = [...]thermalRow{
	{1, [...]float64{0.5, 0.6, 0.6, 0.7, 0.7, 0.8, 0.9, 0.9, none, none}},
	{3.15, [...]float64{0.6, 0.6, 0.7, 0.7, 0.8, 0.9, 1, 1.1, 1.4, 1.4}},
	{6.3, [...]float64{0.7, 0.8, 0.9, 0.9, 1.1, 1.2, 1.3, 1.3, 1.6, 1.6}},
	{10, [...]float64{none, 1, 1.1, 1.3, 1.4, 1.5, 1.6, 1.7, 1.9, 2}},
	{50, [...]float64{none, 1.8, 1.8, 1.8, 1.9, 2.3, 3, 4.2, 4.3, 4.5}},
}

// ThermalCut returns what a size, in mm, cut out of plate of a thickness, in mm, by flame
// or plasma may be off, plus and minus mm: sizes over 0 and under 8000, plate over 0 to 50.
//
// The error wraps [ErrNotDefined] outside that, and where the table has no value.
// Source: ISO 9013:2017, tolerance class 2.
func ThermalCut(nominalMm, thicknessMm float64) (plusMinusMm float64, err error) {
	row := slices.IndexFunc(thermal[:], func(r thermalRow) bool { return thicknessMm <= r.upToMm })
	column := slices.IndexFunc(thermalUpTo[:], func(upTo float64) bool { return nominalMm < upTo })
	if nominalMm > 0 && thicknessMm > 0 && row >= 0 && column >= 0 && thermal[row].limit[column] != none {
		return thermal[row].limit[column], nil
	}
	return 0, lookup.Refuse("fits: thermal cut of %v in plate of %v: %w", lookup.Mm(nominalMm), lookup.Mm(thicknessMm), ErrNotDefined)
}
