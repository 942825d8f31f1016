package threads

import (
	"strconv"

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
}

// unifiedThread builds a thread of the series, and false when the series does
// not have the size.
func unifiedThread(series string, row unifiedRow) (Thread, bool) {
	pitch := row.unc
	if series == UnifiedUNF {
		pitch = row.unf
	}
	if pitch.tpi == 0 {
		return Thread{}, false
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
		Source:          "ASME B1.1",
		Note:            "tap drill of the common 75 % chart",
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
			t.Source += "; clearance ASME B18.2.8-1999"
			t.Note += "; close fit hole from memory"
		}
	}
	return t, true
}

// round4 rounds to 0.0001 mm: it keeps inch sizes as given (5/16 in is
// 7.9375 mm, 0.562 in is 14.2748 mm) and drops binary noise.
func round4(x float64) float64 { return float64(int64(x*10000+0.5)) / 10000 }
