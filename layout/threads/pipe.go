package threads

import (
	"strconv"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

// A pipeRow is one size of the 55° pipe threads. ISO 228-1 and ISO 7-1 share
// the diameters.
type pipeRow struct {
	size  string // as in the designation
	tpi   float64
	major float64
	gTap  float64 // tap drill for G
	// The rest is zero where ISO 7-1 does not have the size.
	gauge  float64 // basic gauge length
	useful float64 // useful thread length at the basic gauge length
	rcTap  float64 // drill for Rc tapped without a taper reamer
	rpTap  float64 // drill for Rp
}

// pipeRows: major diameters and threads per inch are ISO 228-1:2000 Table 1; gauge lengths
// ISO 7-1:1994 Table 1 as a reprint of the sizes has them (but 4: 25.4 is 11 threads, it prints
// 25.5), useful lengths as a maker of fittings prints them (but 1/16, from memory). G drills are
// a shop list (looked up to 2 in, larger ones from memory), but for 1 1/2
// where its 45.5 passes the ISO 228-1 limit. Rc drills are a tap maker's
// largest straight holes to 2 in, and by the same rule above: the minor
// diameter at the end of the useful length and a little more. Rp drills are
// from memory. Tests hold G drills within the minor diameter limits of
// ISO 228-1, and Rc drills between the minor diameters at both ends of the
// useful length.
var pipeRows = []pipeRow{
	{"1/16", 28, 7.723, 6.8, 4.0, 6.5, 6.2, 6.6},
	{"1/8", 28, 9.728, 8.8, 4.0, 6.5, 8.2, 8.6},
	{"1/4", 19, 13.157, 11.8, 6.0, 9.7, 10.9, 11.5},
	{"3/8", 19, 16.662, 15.25, 6.4, 10.1, 14.4, 15},
	{"1/2", 14, 20.955, 19, 8.2, 13.2, 17.9, 18.5},
	{size: "5/8", tpi: 14, major: 22.911, gTap: 21},
	{"3/4", 14, 26.441, 24.5, 9.5, 14.5, 23.3, 24},
	{size: "7/8", tpi: 14, major: 30.201, gTap: 28.25},
	{"1", 11, 33.249, 30.75, 10.4, 16.8, 29.3, 30.25},
	{size: "1 1/8", tpi: 11, major: 37.897, gTap: 35.5},
	{"1 1/4", 11, 41.910, 39.5, 12.7, 19.1, 37.9, 39},
	{"1 1/2", 11, 47.803, 45.25, 12.7, 19.1, 43.8, 45},
	{size: "1 3/4", tpi: 11, major: 53.746, gTap: 51},
	{"2", 11, 59.614, 57, 15.9, 23.4, 55.4, 56.75},
	{size: "2 1/4", tpi: 11, major: 65.710, gTap: 63},
	{"2 1/2", 11, 75.184, 72.5, 17.5, 26.7, 70.7, 72.25},
	{size: "2 3/4", tpi: 11, major: 81.534, gTap: 79},
	{"3", 11, 87.884, 85.5, 20.6, 29.8, 83.3, 85},
	{size: "3 1/2", tpi: 11, major: 100.330, gTap: 98},
	{"4", 11, 113.030, 110.5, 25.4, 35.8, 108.1, 110},
	{size: "4 1/2", tpi: 11, major: 125.730, gTap: 123},
	{"5", 11, 138.430, 136, 28.6, 40.1, 133.3, 135.5},
	{size: "5 1/2", tpi: 11, major: 151.130, gTap: 148.5},
	{"6", 11, 163.830, 161, 28.6, 40.1, 158.7, 161},
}

// pipeHeightFactor is the height of the 55° rounded thread divided by the
// pitch, ISO 228-1 and ISO 7-1.
const pipeHeightFactor = 0.640327

// pipeThread builds a thread of the series, and false when the series does
// not have the size.
func pipeThread(series string, row pipeRow) (Thread, bool) {
	if series != PipeG && row.gauge == 0 {
		return Thread{}, false
	}
	height := round3(pipeHeightFactor * geom.MmPerInch / row.tpi)
	t := Thread{
		Designation:     series + row.size,
		Series:          series,
		PitchMm:         round3(geom.MmPerInch / row.tpi),
		TPI:             row.tpi,
		MajorMm:         row.major,
		PitchDiameterMm: round3(row.major - height),
		MinorMm:         round3(row.major - 2*height),
		Source:          lookup.Standard("ISO 7-1:1994 Table 1"),
	}
	if series != PipeG {
		t.GaugeLengthMm, t.UsefulLengthMm = row.gauge, row.useful
		if row.size == "1/16" {
			t.Note = "useful length from memory; "
		}
	}
	switch series {
	case PipeG:
		t.Source = lookup.Standard("ISO 228-1:2000 Table 1")
		t.TapDrillMm = row.gTap
		t.Note = "tap drill common practice"
	case PipeR:
		t.Taper = true
		t.Note += "external thread, no tap drill"
	case PipeRc:
		t.Taper = true
		t.TapDrillMm = row.rcTap
		t.Note += "tap drill for tapping without a taper reamer, common practice"
	case PipeRp:
		t.TapDrillMm = row.rpTap
		t.Note += "tap drill common practice from memory"
	}
	return t, true
}

// A nptRow is one size of the taper pipe threads NPT, lengths in inches.
type nptRow struct {
	size      string
	tpi       float64
	pitch     float64 // pitch diameter E1 at the gauge plane
	hand      float64 // L1, engagement by hand
	effective float64 // L2, effective outside thread
	drill     float64
	name      string // trade name of the drill
}

// nptRows are ASME B1.20.1-2013 Table 2 (E1, L1 and L2 compared with two published
// copies to the digits these print, 1/16 and the fifth digits of E1 from memory). Drills are those of
// ASME B94.9-2008 for tapping without a taper reamer to 2 1/2 (Machinery's Handbook, 31st ed., Table 24a
// of taps); from 3 a dealer's chart, whose smaller ones are a 64th or two wider.
var nptRows = []nptRow{
	{"1/16", 27, 0.28118, 0.160, 0.2611, 0.242, "C"},
	{"1/8", 27, 0.37360, 0.1615, 0.2639, 0.332, "Q"},
	{"1/4", 18, 0.49163, 0.2278, 0.4018, 0.4375, "7/16 in"},
	{"3/8", 18, 0.62701, 0.240, 0.4078, 0.5625, "9/16 in"},
	{"1/2", 14, 0.77843, 0.320, 0.5337, 0.703125, "45/64 in"},
	{"3/4", 14, 0.98887, 0.339, 0.5457, 0.90625, "29/32 in"},
	{"1", 11.5, 1.23863, 0.400, 0.6828, 1.140625, "1 9/64 in"},
	{"1 1/4", 11.5, 1.58338, 0.420, 0.7068, 1.484375, "1 31/64 in"},
	{"1 1/2", 11.5, 1.82234, 0.420, 0.7235, 1.71875, "1 23/32 in"},
	{"2", 11.5, 2.29627, 0.436, 0.7565, 2.1875, "2 3/16 in"},
	{"2 1/2", 8, 2.76216, 0.682, 1.1375, 2.609375, "2 39/64 in"},
	{"3", 8, 3.38850, 0.766, 1.2000, 3.25, "3 1/4 in"},
	{"3 1/2", 8, 3.88881, 0.821, 1.2500, 3.75, "3 3/4 in"},
	{"4", 8, 4.38712, 0.844, 1.3000, 4.25, "4 1/4 in"},
}

// nptHeightFactor is the height of the 60° truncated thread NPT divided by the pitch,
// ASME B1.20.1.
const nptHeightFactor = 0.8

// nptThread builds the thread of a row. A wrench turns it on by three threads, by two
// from 2 1/2 in: L3 of ASME B1.20.1 Table 2.
func nptThread(row nptRow) Thread {
	pitch, turns := geom.MmPerInch/row.tpi, 3.0
	if row.tpi == 8 {
		turns = 2
	}
	middle, height := geom.MmPerInch*row.pitch, nptHeightFactor*pitch
	return Thread{
		Designation:     row.size + "-" + strconv.FormatFloat(row.tpi, 'f', -1, 64) + " " + PipeNPT,
		Series:          PipeNPT,
		PitchMm:         round3(pitch),
		TPI:             row.tpi,
		MajorMm:         round3(middle + height),
		PitchDiameterMm: round3(middle),
		MinorMm:         round3(middle - height),
		TapDrillMm:      geom.MmPerInch * row.drill,
		TapDrillName:    row.name,
		Taper:           true,
		GaugeLengthMm:   round3(geom.MmPerInch * row.hand),
		UsefulLengthMm:  round3(geom.MmPerInch * row.effective),
		WrenchMm:        round3(turns * pitch),
		Source:          lookup.Standard("ASME B1.20.1-2013 Table 2"),
		Note:            "tap drill for tapping without a taper reamer, ASME B94.9-2008 to 2 1/2 in, above it common practice",
	}
}
