package fits

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"centrepop/layout/lookup"
)

// generalClasses are the tolerance classes of ISO 2768-1, fine to very coarse,
// in the order of the columns below.
var generalClasses = [...]string{"f", "m", "c", "v"}

// generalRow is one row of an ISO 2768-1 table: the upper end of its range, mm,
// and the permissible deviation either way for f, m, c and v.
type generalRow struct {
	upToMm float64
	limit  [len(generalClasses)]float64
}

// generalLinear is in mm, from 0.5 mm. Source: ISO 2768-1:1989, Table 1.
var generalLinear = [...]generalRow{
	{3, [...]float64{0.05, 0.1, 0.2, none}},
	{6, [...]float64{0.05, 0.1, 0.3, 0.5}},
	{30, [...]float64{0.1, 0.2, 0.5, 1}},
	{120, [...]float64{0.15, 0.3, 0.8, 1.5}},
	{400, [...]float64{0.2, 0.5, 1.2, 2.5}},
	{1000, [...]float64{0.3, 0.8, 2, 4}},
	{2000, [...]float64{0.5, 1.2, 3, 6}},
	{4000, [...]float64{none, 2, 4, 8}},
}

// generalChamfer is in mm, from 0.5 mm. Source: ISO 2768-1:1989, Table 2.
var generalChamfer = [...]generalRow{
	{3, [...]float64{0.2, 0.2, 0.4, 0.4}},
	{6, [...]float64{0.5, 0.5, 1, 1}},
	{math.MaxFloat64, [...]float64{1, 1, 2, 2}},
}

// generalAngle is in minutes of arc by the length of the shorter leg in mm. Source:
// ISO 2768-1:1989, Table 3, as camcut-group.com and a public data file print it.
var generalAngle = [...]generalRow{
	{10, [...]float64{60, 60, 90, 180}},
	{50, [...]float64{30, 30, 60, 120}},
	{120, [...]float64{20, 20, 30, 60}},
	{400, [...]float64{10, 10, 15, 30}},
	{math.MaxFloat64, [...]float64{5, 5, 10, 20}},
}

// generalFromMm is the smallest size with a general tolerance.
const generalFromMm = 0.5

// General returns the general tolerance, plus and minus mm, of a linear
// dimension (length, diameter, step, distance) from 0.5 up to and including
// 4000 mm in class "f", "m", "c" or "v".
//
// The error wraps [ErrNotDefined] below 0.5 mm and above 4000 mm, for f above
// 2000 mm and for v up to and including 3 mm; it is a plain error for another
// class.
// Source: ISO 2768-1:1989, Table 1.
func General(nominalMm float64, class string) (plusMinusMm float64, err error) {
	return general(generalLinear[:], "general linear tolerance", nominalMm, generalFromMm, class)
}

// GeneralChamfer returns the general tolerance, plus and minus mm, of an
// external radius or the height of a chamfer, from 0.5 mm, in class "f", "m",
// "c" or "v" (f and m are equal here, and so are c and v). Errors are as for
// [General], without an upper end. Source: ISO 2768-1:1989, Table 2.
func GeneralChamfer(sizeMm float64, class string) (plusMinusMm float64, err error) {
	return general(generalChamfer[:], "general chamfer tolerance", sizeMm, generalFromMm, class)
}

// GeneralAngle returns the general tolerance of an angle, plus and minus degrees, by
// the length of its shorter leg, above 0, in class "f", "m", "c" or "v" (f and m are
// equal). Errors are as for [General], without an end. Source: ISO 2768-1:1989,
// Table 3.
func GeneralAngle(shorterLegMm float64, class string) (plusMinusDeg float64, err error) {
	minutes, err := general(generalAngle[:], "general angular tolerance", shorterLegMm, 0, class)
	return minutes / 60, err
}

func general(rows []generalRow, what string, sizeMm, fromMm float64, class string) (float64, error) {
	column := slices.Index(generalClasses[:], class)
	if column < 0 {
		return 0, fmt.Errorf(`fits: %s: there is no class %q: the classes are "f", "m", "c" and "v"`, what, class)
	}
	i := sort.Search(len(rows), func(i int) bool { return sizeMm <= rows[i].upToMm })
	switch {
	case sizeMm < fromMm:
		return 0, lookup.Refuse("fits: %v: %w: %s begins at %v: write the tolerance at the dimension", lookup.Mm(sizeMm), ErrNotDefined, what, lookup.Mm(fromMm))
	case i == len(rows):
		return 0, lookup.Refuse("fits: %v: %w: %s ends at %v: write the tolerance at the dimension", lookup.Mm(sizeMm), ErrNotDefined, what, lookup.Mm(rows[len(rows)-1].upToMm))
	}
	if v := rows[i].limit[column]; v != none {
		return v, nil
	}
	// Only the ends of the linear table have blanks: f at the top, v at the
	// bottom; the class beside is defined there.
	beside := generalClasses[1]
	if column > 0 {
		beside = generalClasses[column-1]
	}
	return 0, lookup.Refuse("fits: %v: %w: %s has no class %s at this size; nearest defined: %s", lookup.Mm(sizeMm), ErrNotDefined, what, class, beside)
}
