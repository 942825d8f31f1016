package threads

import (
	"cmp"
	"math"
	"strconv"
	"strings"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

// An acmeRow is one size of the general purpose Acme threads: ASME B1.5-1997, the standard series.
type acmeRow struct {
	size   string
	d, tpi float64 // inches, threads per inch
}

// acmeRows: to 1 1/8 as a maker's table and a designer's data sheet print them, all as two public lists have them.
var acmeRows = []acmeRow{
	{"1/4", 0.25, 16}, {"5/16", 0.3125, 14}, {"3/8", 0.375, 12}, {"7/16", 0.4375, 12}, {"1/2", 0.5, 10}, {"5/8", 0.625, 8}, {"3/4", 0.75, 6}, {"7/8", 0.875, 6},
	{"1", 1, 5}, {"1 1/8", 1.125, 5}, {"1 1/4", 1.25, 5}, {"1 3/8", 1.375, 4}, {"1 1/2", 1.5, 4}, {"1 3/4", 1.75, 4}, {"2", 2, 4}, {"2 1/4", 2.25, 3}, {"2 1/2", 2.5, 3},
	{"2 3/4", 2.75, 3}, {"3", 3, 2}, {"3 1/2", 3.5, 2}, {"4", 4, 2}, {"4 1/2", 4.5, 2}, {"5", 5, 2},
}

// acmeClasses are the classes of general purpose threads, the first that of a thread without one, and
// acmeShares what each takes of the diameter D and the pitch p in inches: the allowance of the screw is the first
// times √D, the tolerance of the pitch diameter the second times √D and the third times √p (ASME B1.5, from
// memory; a maker's table and a data sheet agree to the last digit).
var (
	acmeClasses = []string{"2G", "3G", "4G"}
	acmeShares  = map[string][3]float64{"2G": {0.008, 0.006, 0.030}, "3G": {0.006, 0.0028, 0.014}, "4G": {0.004, 0.002, 0.010}}
)

// acmeThread builds the thread of a row, of class "" as of class 2G. Several starts have the limits of
// one: ASME B1.5 leaves that to the user.
func acmeThread(row acmeRow, class string, left bool, starts int) Thread {
	p, clear := 1/row.tpi, 0.020 // allowance on the diameter, at crest and root
	if row.tpi > 10 {
		clear = 0.010
	}
	name := row.size + "-" + number(row.tpi) + " " + Acme
	if starts > 1 {
		name += " " + strconv.Itoa(starts) + " start"
	}
	of := cmp.Or(class, acmeClasses[0])
	share, root := acmeShares[of], math.Sqrt(row.d)
	below, tolerance := share[0]*root, share[1]*root+share[2]*math.Sqrt(p)
	middle, crest := row.d-p/2, math.Max(0.05*p, 0.005)
	inches := func(x float64) float64 { return math.Round(x*1e4) / 1e4 } // each piece, as the tables of the standard are made
	limits := func(lo, hi float64) [2]float64 {
		return [2]float64{geom.MmPerInch * inches(lo), geom.MmPerInch * inches(hi)}
	}
	effective, core := inches(middle)-inches(below), inches(row.d-p-clear)
	flat := func(off float64) float64 { return round4(geom.MmPerInch * (0.3707*p - 0.259*off)) }
	mm := func(in float64) float64 { return round3(geom.MmPerInch * in) }
	return Thread{
		Designation: handed(name, left), Series: Acme, Class: class,
		PitchMm: mm(p), TPI: row.tpi, MajorMm: round4(geom.MmPerInch * row.d), PitchDiameterMm: mm(middle), MinorMm: mm(row.d - p),
		Source: lookup.Standard("ASME B1.5 class " + of),
		Note:   "cut with a tool or a tap of its own; limits by the formulas of the standard (from memory), to 1 1/8 in as a maker prints them",
		Lead: &Lead{
			AngleDeg: 29, Starts: starts, LeftHand: left, LeadMm: geom.MmPerInch * p * float64(starts), ClearanceMm: mm(clear / 2),
			Screw: LeadLimits{
				Class: of, Major: limits(row.d-crest, row.d), Pitch: limits(effective-inches(tolerance), effective),
				Minor: limits(core-inches(1.5*tolerance), core), FlatMm: flat(clear - below), DepthMm: mm((p + clear) / 2),
			},
			Nut: LeadLimits{
				Class: of, Major: limits(row.d+clear, row.d+2*clear), Pitch: limits(middle, inches(middle)+inches(tolerance)),
				Minor: limits(row.d-p, row.d-p+crest), FlatMm: flat(clear), DepthMm: mm((p + clear) / 2),
			},
		},
	}
}

// parseAcme reads a size with its threads per inch, and what stands behind ACME: "3/4-6 ACME-2G", "1-5 ACME 2 starts LH".
func parseAcme(designation, before, behind string) (Thread, error) {
	size, tpi, ok := sizeAndTPI(before)
	class, left, starts, marks := leadMarks(split(behind), acmeClasses)
	switch {
	case !ok || size == "":
		return Thread{}, unknown(designation, "a size and threads per inch stand before "+Acme)
	case !marks:
		return Thread{}, unknown(designation, "behind "+Acme+" may stand a class ("+strings.Join(acmeClasses, ", ")+"), LH, and 2 starts; centralizing and stub threads are not known here")
	}
	inch, isDecimal := decimal(size)
	for _, row := range acmeRows {
		if (row.size == size || isDecimal && math.Abs(row.d-inch) < 0.0006) && (tpi == 0 || tpi == row.tpi) {
			return acmeThread(row, class, left, starts), nil
		}
	}
	return Thread{}, unknown(designation, "not a size of the series of ASME B1.5 from 1/4 to 5 with its threads per inch")
}
