package threads

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

// A unifiedRow is one diameter of the Unified series with both pitches.
// Lengths are inches here, as the standards print them.
type unifiedRow struct {
	size string
	d    float64
	unc  unifiedPitch
	unf  unifiedPitch
	hole [3]float64 // ASME B18.2.8 close, normal, loose, smallest hole; zero where not listed
}

// A unifiedPitch is one pitch and its tap drill; tpi 0 where the series does
// not have the size.
type unifiedPitch struct {
	tpi   float64
	drill float64
	name  string
}

// unifiedRows: sizes and threads per inch are ASME B1.1 Table 1. Tap drills
// are the usual 75 % chart of number, letter and fraction drills, looked up in
// two shop charts (all UNC to 1 1/2, UNF to 5/8; the rest from memory; tests
// hold them between 60 and 85 % of thread height). They differ only at
// 1 3/8-6, where one chart has 1 13/64.
// Clearance holes are ASME B18.2.8-1999 Table 1: loose fit looked up in
// Machinery's Handbook 31st ed. p. 1741, normal fit by its drill column
// there, close fit from memory, and checked against the metric drills of
// p. 1743. The standard has no #12, 9/16, 1 3/4 and 2: the first two take the
// steps of their neighbours, the others have no hole here.
var unifiedRows = []unifiedRow{
	{"#0", 0.060, unifiedPitch{}, unifiedPitch{80, 0.0469, "3/64 in"}, [3]float64{0.067, 0.076, 0.094}},
	{"#1", 0.073, unifiedPitch{64, 0.0595, "#53"}, unifiedPitch{72, 0.0595, "#53"}, [3]float64{0.081, 0.089, 0.104}},
	{"#2", 0.086, unifiedPitch{56, 0.0700, "#50"}, unifiedPitch{64, 0.0700, "#50"}, [3]float64{0.094, 0.102, 0.116}},
	{"#3", 0.099, unifiedPitch{48, 0.0785, "#47"}, unifiedPitch{56, 0.0820, "#45"}, [3]float64{0.106, 0.116, 0.128}},
	{"#4", 0.112, unifiedPitch{40, 0.0890, "#43"}, unifiedPitch{48, 0.0935, "#42"}, [3]float64{0.120, 0.128, 0.144}},
	{"#5", 0.125, unifiedPitch{40, 0.1015, "#38"}, unifiedPitch{44, 0.1040, "#37"}, [3]float64{0.141, 0.156, 0.172}},
	{"#6", 0.138, unifiedPitch{32, 0.1065, "#36"}, unifiedPitch{40, 0.1130, "#33"}, [3]float64{0.154, 0.170, 0.185}},
	{"#8", 0.164, unifiedPitch{32, 0.1360, "#29"}, unifiedPitch{36, 0.1360, "#29"}, [3]float64{0.180, 0.196, 0.213}},
	{"#10", 0.190, unifiedPitch{24, 0.1495, "#25"}, unifiedPitch{32, 0.1590, "#21"}, [3]float64{0.206, 0.221, 0.238}},
	{"#12", 0.216, unifiedPitch{24, 0.1770, "#16"}, unifiedPitch{28, 0.1820, "#14"}, [3]float64{0.234, 0.246, 0.266}},
	{"1/4", 0.250, unifiedPitch{20, 0.2010, "#7"}, unifiedPitch{28, 0.2130, "#3"}, [3]float64{0.266, 0.281, 0.297}},
	{"5/16", 0.3125, unifiedPitch{18, 0.2570, "F"}, unifiedPitch{24, 0.2720, "I"}, [3]float64{0.328, 0.344, 0.359}},
	{"3/8", 0.375, unifiedPitch{16, 0.3125, "5/16 in"}, unifiedPitch{24, 0.3320, "Q"}, [3]float64{0.391, 0.406, 0.422}},
	{"7/16", 0.4375, unifiedPitch{14, 0.3680, "U"}, unifiedPitch{20, 0.390625, "25/64 in"}, [3]float64{0.453, 0.469, 0.484}},
	{"1/2", 0.500, unifiedPitch{13, 0.421875, "27/64 in"}, unifiedPitch{20, 0.453125, "29/64 in"}, [3]float64{0.531, 0.562, 0.609}},
	{"9/16", 0.5625, unifiedPitch{12, 0.484375, "31/64 in"}, unifiedPitch{18, 0.515625, "33/64 in"}, [3]float64{0.594, 0.625, 0.672}},
	{"5/8", 0.625, unifiedPitch{11, 0.53125, "17/32 in"}, unifiedPitch{18, 0.578125, "37/64 in"}, [3]float64{0.656, 0.688, 0.734}},
	{"3/4", 0.750, unifiedPitch{10, 0.65625, "21/32 in"}, unifiedPitch{16, 0.6875, "11/16 in"}, [3]float64{0.781, 0.812, 0.906}},
	{"7/8", 0.875, unifiedPitch{9, 0.765625, "49/64 in"}, unifiedPitch{14, 0.8125, "13/16 in"}, [3]float64{0.906, 0.938, 1.031}},
	{"1", 1.000, unifiedPitch{8, 0.875, "7/8 in"}, unifiedPitch{12, 0.921875, "59/64 in"}, [3]float64{1.031, 1.094, 1.156}},
	{"1 1/8", 1.125, unifiedPitch{7, 0.984375, "63/64 in"}, unifiedPitch{12, 1.046875, "1 3/64 in"}, [3]float64{1.156, 1.219, 1.312}},
	{"1 1/4", 1.250, unifiedPitch{7, 1.109375, "1 7/64 in"}, unifiedPitch{12, 1.171875, "1 11/64 in"}, [3]float64{1.281, 1.344, 1.438}},
	{"1 3/8", 1.375, unifiedPitch{6, 1.21875, "1 7/32 in"}, unifiedPitch{12, 1.296875, "1 19/64 in"}, [3]float64{1.438, 1.500, 1.609}},
	{"1 1/2", 1.500, unifiedPitch{6, 1.34375, "1 11/32 in"}, unifiedPitch{12, 1.421875, "1 27/64 in"}, [3]float64{1.562, 1.625, 1.734}},
	{"1 3/4", 1.750, unifiedPitch{5, 1.5625, "1 9/16 in"}, unifiedPitch{}, [3]float64{}},
	{"2", 2.000, unifiedPitch{4.5, 1.78125, "1 25/32 in"}, unifiedPitch{}, [3]float64{}},
	{size: "2 1/4", d: 2.25, unc: unifiedPitch{tpi: 4.5}}, {size: "2 1/2", d: 2.5, unc: unifiedPitch{tpi: 4}},
	{size: "2 3/4", d: 2.75, unc: unifiedPitch{tpi: 4}}, {size: "3", d: 3, unc: unifiedPitch{tpi: 4}},
	{size: "3 1/4", d: 3.25, unc: unifiedPitch{tpi: 4}}, {size: "3 1/2", d: 3.5, unc: unifiedPitch{tpi: 4}},
	{size: "3 3/4", d: 3.75, unc: unifiedPitch{tpi: 4}}, {size: "4", d: 4, unc: unifiedPitch{tpi: 4}},
}

// pitchSeries are the series of ASME B1.1 with one pitch for many sizes: threads per inch, first
// and last size. They go by 1/16 in to 2 in and by 1/8 in from there (from memory; UN values at some
// sizes by Machinery's Handbook 27th ed. p. 1755). #12-32 UNEF stands apart.
var pitchSeries = []struct {
	series        string
	tpi, from, to float64
}{
	{UnifiedUNEF, 32, 0.25, 0.375}, {UnifiedUNEF, 28, 0.4375, 0.5}, {UnifiedUNEF, 24, 0.5625, 0.6875}, {UnifiedUNEF, 20, 0.75, 1}, {UnifiedUNEF, 18, 1.0625, 1.6875},
	{UnifiedUN, 4, 2.5, 6}, {UnifiedUN, 6, 1.375, 6}, {UnifiedUN, 8, 1, 6}, {UnifiedUN, 12, 0.5625, 6}, {UnifiedUN, 16, 0.375, 6},
	{UnifiedUN, 20, 0.25, 3}, {UnifiedUN, 28, 0.25, 1.5}, {UnifiedUN, 32, 0.25, 1},
}

// nutRows are the threads of shafts for bearing lock nuts, size and threads per inch:
// N-00 to N-14, AN-15, AN-16; Machinery's Handbook, Guide, AFBMA
// standard for shafts for tapered roller bearing locknuts, and a maker's list to AN-15.
var nutRows = []struct {
	size, nut string
	tpi       float64
}{
	{"0.391", "N-00", 32}, {"0.469", "N-01", 32}, {"0.586", "N-02", 32}, {"0.664", "N-03", 32}, {"0.781", "N-04", 32}, {"0.969", "N-05", 32},
	{"1.173", "N-06", 18}, {"1.376", "N-07", 18}, {"1.563", "N-08", 18}, {"1.767", "N-09", 18}, {"1.967", "N-10", 18},
	{"2.157", "N-11", 18}, {"2.360", "N-12", 18}, {"2.548", "N-13", 18}, {"2.751", "N-14", 18}, {"2.933", "AN-15", 12}, {"3.137", "AN-16", 12},
}

// A sized thread is one of the Unified series with its size as it is written and in inches.
type sized struct {
	size   string
	inches float64
	Thread
}

// unified are the Unified threads: UNC, UNF, UNEF, the constant pitches where none has
// them, and those of lock nuts; each by size.
var unified = sync.OnceValue(func() (list []sized) {
	has := map[string]bool{}
	add := func(series string, row unifiedRow, pitch unifiedPitch) {
		if key := fmt.Sprint(row.d, pitch.tpi); pitch.tpi > 0 && !has[key] {
			has[key] = true
			list = append(list, sized{row.size, row.d, unifiedThread(series, row, pitch)})
		}
	}
	for _, row := range unifiedRows {
		add(UnifiedUNC, row, row.unc)
	}
	for _, row := range unifiedRows {
		add(UnifiedUNF, row, row.unf)
	}
	add(UnifiedUNEF, unifiedRow{size: "#12", d: 0.216}, unifiedPitch{tpi: 32})
	for _, s := range pitchSeries {
		for n := int(16 * s.from); n <= int(16*s.to); n++ {
			if n < 16*2 || n%2 == 0 {
				add(s.series, unifiedRow{size: Fraction(n, 16, " "), d: float64(n) / 16}, unifiedPitch{tpi: s.tpi})
			}
		}
	}
	for _, n := range nutRows {
		d, _ := decimal(n.size)
		add(UnifiedUNS, unifiedRow{size: n.size, d: d}, unifiedPitch{tpi: n.tpi})
		list[len(list)-1].Source = lookup.Standard("ABMA 8.2, lock nut " + n.nut)
	}
	return list
})

// Fraction writes n of the parts of an inch, which are a power of two, in lowest terms, with a sign
// between whole inches and the rest: "2 1/2", "3", "7/8".
func Fraction(n, parts int, between string) string {
	for ; n%2 == 0 && parts > 1; n, parts = n/2, parts/2 {
	}
	whole, rest := n/parts, n%parts
	switch {
	case rest == 0:
		return strconv.Itoa(whole)
	case whole == 0:
		return fmt.Sprintf("%d/%d", rest, parts)
	}
	return fmt.Sprintf("%d%s%d/%d", whole, between, rest, parts)
}

// unifiedThread builds a thread of the series. A pitch without a drill takes the size less
// the pitch, as far as 64ths of an inch go the next near above; a lock nut's thread is bored.
func unifiedThread(series string, row unifiedRow, pitch unifiedPitch) Thread {
	note := "tap drill of the common 75 % chart"
	if pitch.drill == 0 {
		note = "tap drill by the rule d − P"
		pitch.drill = row.d - 1/pitch.tpi
		if series != UnifiedUNS {
			if n := math.Ceil(64*pitch.drill - 1e-9); n/64-pitch.drill < 0.2/pitch.tpi { // else it leaves too little thread
				pitch.drill, pitch.name = n/64, Fraction(int(n), 64, " ")+" in"
			}
		}
	}
	t := Thread{
		Designation:     row.size + "-" + strconv.FormatFloat(pitch.tpi, 'f', -1, 64) + " " + series,
		Series:          series,
		PitchMm:         round3(geom.MmPerInch / pitch.tpi),
		TPI:             pitch.tpi,
		MajorMm:         round4(geom.MmPerInch * row.d),
		PitchDiameterMm: round3(geom.MmPerInch * (row.d - pitchDiameterFactor/pitch.tpi)),
		MinorMm:         round3(geom.MmPerInch * (row.d - minorFactor/pitch.tpi)),
		TapDrillMm:      round4(geom.MmPerInch * pitch.drill),
		TapDrillName:    pitch.name,
		Source:          lookup.Standard("ASME B1.1"),
		Note:            note,
	}
	if row.hole[1] > 0 {
		t.Clearance = &Clearance{
			FineMm:   round4(geom.MmPerInch * row.hole[0]),
			MediumMm: round4(geom.MmPerInch * row.hole[1]),
			CoarseMm: round4(geom.MmPerInch * row.hole[2]),
		}
		switch row.size {
		case "#12":
			t.Note += "; #12 is not in ASME B18.2.8: clearance by the steps of #10, nearest letter drill, common practice"
		case "9/16":
			t.Note += "; 9/16 is not in ASME B18.2.8: clearance by the steps of 1/2 and 5/8, common practice"
		default:
			t.Source.Of += "; clearance ASME B18.2.8-1999"
			t.Note += "; close fit hole from memory, within 0.2 mm of the metric drill the standard gives"
		}
	}
	return t
}

// round4 rounds to 0.0001 mm: it keeps inch sizes as given (5/16 in is
// 7.9375 mm, 0.562 in is 14.2748 mm) and drops binary noise.
func round4(x float64) float64 { return float64(int64(x*10000+0.5)) / 10000 }

// classShares are the tolerances of the pitch diameter in that of class 2A: ASME B1.1.
var classShares = map[string]float64{"1A": 1.5, "2A": 1, "3A": 0.75, "1B": 1.95, "2B": 1.3, "3B": 0.975}

// PitchLimitsMm are the limits of the pitch diameter in mm of a thread with a class, which is on an
// outside by its A and in a hole by its B, by the formulas of ASME B1.1: the tolerance of class 2A is
// 0.0015·(D^⅓ + √LE) + 0.015·P^⅔ in inches over a length LE of one diameter, or nine pitches of UNEF,
// UNS and UN of 12 per inch and more (from memory); the others are shares of it. Zero without a class.
func (t Thread) PitchLimitsMm() (lo, hi float64) {
	share := classShares[t.Class]
	if share == 0 {
		return 0, 0
	}
	inches := func(x float64) float64 { return math.Round(x*1e4) / 1e4 }
	d, p := t.MajorMm/geom.MmPerInch, 1/t.TPI
	long := d
	if t.Series == UnifiedUNEF || t.Series == UnifiedUNS || t.Series == UnifiedUN && t.TPI >= 12 {
		long = 9 * p
	}
	tol := math.Round(1e6*(0.0015*(math.Cbrt(d)+math.Sqrt(long))+0.015*math.Cbrt(p*p))) / 1e6
	basic := inches(d - pitchDiameterFactor*p)
	if strings.HasSuffix(t.Class, "B") {
		return basic * geom.MmPerInch, (basic + inches(share*tol)) * geom.MmPerInch
	}
	if t.Class != "3A" {
		basic -= inches(0.3 * tol)
	}
	return (basic - inches(share*tol)) * geom.MmPerInch, basic * geom.MmPerInch
}
