package threads

import "centrepop/parts/geom"

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

// pipeRows: major diameters and threads per inch are ISO 228-1:2000 Table 1;
// gauge and useful lengths are ISO 7-1:1994 Table 1 from memory. G drills are
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
		Source:          "ISO 7-1:1994 Table 1",
	}
	if series != PipeG {
		t.GaugeLengthMm, t.UsefulLengthMm = row.gauge, row.useful
		t.Note = "gauge and useful length from memory"
	}
	switch series {
	case PipeG:
		t.Source = "ISO 228-1:2000 Table 1"
		t.TapDrillMm = row.gTap
		t.Note = "tap drill common practice"
	case PipeR:
		t.Taper = true
		t.Note += "; external thread, no tap drill"
	case PipeRc:
		t.Taper = true
		t.TapDrillMm = row.rcTap
		t.Note += "; tap drill for tapping without a taper reamer, common practice"
	case PipeRp:
		t.TapDrillMm = row.rpTap
		t.Note += "; tap drill common practice from memory"
	}
	return t, true
}
