package threads

import (
	"math"
	"strconv"

	"centrepop/layout/lookup"
)

// Factors of the basic profile, ISO 68-1: with H = P·√3/2, the pitch diameter
// lies 2·3H/8 and the internal minor diameter 2·5H/8 below the major one.
var (
	pitchDiameterFactor = 3 * math.Sqrt(3) / 8 // 0.649519
	minorFactor         = 5 * math.Sqrt(3) / 8 // 1.082532
)

// A metricRow is one nominal diameter of ISO 261 with its pitches, and of
// ISO 273 with its clearance holes.
type metricRow struct {
	d      float64
	coarse float64    // pitch, 0 where ISO 261 has only fine ones
	drill  float64    // tap drill for the coarse pitch
	fine   []float64  // falling
	hole   [3]float64 // ISO 273 fine, medium, coarse; zero where not listed
}

// metricRows follows ISO 261 for the pitches (the choice M1 to M200; from
// memory, where the reference table or a published list has the size it
// agrees) and ISO 273:1979 for the holes (to M36 by the reference table and a
// published list; above from memory, against the inch drills that ASME
// B18.2.8 gives for M42 to M72). Coarse tap drills are those of ISO 2306
// practice, d − P brought to a sold drill: M8 6.8 and not 6.75, M12 10.2 and
// not 10.25, M4.5 3.7 and not 3.75.
var metricRows = []metricRow{
	{1, 0.25, 0.75, []float64{0.2}, [3]float64{1.1, 1.2, 1.3}},
	{1.1, 0.25, 0.85, []float64{0.2}, [3]float64{}},
	{1.2, 0.25, 0.95, []float64{0.2}, [3]float64{1.3, 1.4, 1.5}},
	{1.4, 0.3, 1.1, []float64{0.2}, [3]float64{1.5, 1.6, 1.8}},
	{1.6, 0.35, 1.25, []float64{0.2}, [3]float64{1.7, 1.8, 2}},
	{1.8, 0.35, 1.45, []float64{0.2}, [3]float64{2, 2.1, 2.2}},
	{2, 0.4, 1.6, []float64{0.25}, [3]float64{2.2, 2.4, 2.6}},
	{2.2, 0.45, 1.75, []float64{0.25}, [3]float64{}},
	{2.5, 0.45, 2.05, []float64{0.35}, [3]float64{2.7, 2.9, 3.1}},
	{3, 0.5, 2.5, []float64{0.35}, [3]float64{3.2, 3.4, 3.6}},
	{3.5, 0.6, 2.9, []float64{0.35}, [3]float64{3.7, 3.9, 4.2}},
	{4, 0.7, 3.3, []float64{0.5}, [3]float64{4.3, 4.5, 4.8}},
	{4.5, 0.75, 3.7, []float64{0.5}, [3]float64{4.8, 5, 5.3}},
	{5, 0.8, 4.2, []float64{0.5}, [3]float64{5.3, 5.5, 5.8}},
	{d: 5.5, fine: []float64{0.5}},
	{6, 1, 5, []float64{0.75}, [3]float64{6.4, 6.6, 7}},
	{7, 1, 6, []float64{0.75}, [3]float64{7.4, 7.6, 8}},
	{8, 1.25, 6.8, []float64{1, 0.75}, [3]float64{8.4, 9, 10}},
	{9, 1.25, 7.8, []float64{1, 0.75}, [3]float64{}},
	{10, 1.5, 8.5, []float64{1.25, 1, 0.75}, [3]float64{10.5, 11, 12}},
	{11, 1.5, 9.5, []float64{1, 0.75}, [3]float64{}},
	{12, 1.75, 10.2, []float64{1.5, 1.25, 1}, [3]float64{13, 13.5, 14.5}},
	{14, 2, 12, []float64{1.5, 1.25, 1}, [3]float64{15, 15.5, 16.5}},
	{d: 15, fine: []float64{1.5, 1}},
	{16, 2, 14, []float64{1.5, 1}, [3]float64{17, 17.5, 18.5}},
	{d: 17, fine: []float64{1.5, 1}},
	{18, 2.5, 15.5, []float64{2, 1.5, 1}, [3]float64{19, 20, 21}},
	{20, 2.5, 17.5, []float64{2, 1.5, 1}, [3]float64{21, 22, 24}},
	{22, 2.5, 19.5, []float64{2, 1.5, 1}, [3]float64{23, 24, 26}},
	{24, 3, 21, []float64{2, 1.5, 1}, [3]float64{25, 26, 28}},
	{d: 25, fine: []float64{2, 1.5, 1}},
	{d: 26, fine: []float64{1.5}},
	{27, 3, 24, []float64{2, 1.5, 1}, [3]float64{28, 30, 32}},
	{d: 28, fine: []float64{2, 1.5, 1}},
	{30, 3.5, 26.5, []float64{3, 2, 1.5, 1}, [3]float64{31, 33, 35}},
	{d: 32, fine: []float64{2, 1.5}},
	{33, 3.5, 29.5, []float64{3, 2, 1.5}, [3]float64{34, 36, 38}},
	{d: 35, fine: []float64{1.5}},
	{36, 4, 32, []float64{3, 2, 1.5}, [3]float64{37, 39, 42}},
	{d: 38, fine: []float64{1.5}},
	{39, 4, 35, []float64{3, 2, 1.5}, [3]float64{40, 42, 45}},
	{d: 40, fine: []float64{3, 2, 1.5}},
	{42, 4.5, 37.5, []float64{4, 3, 2, 1.5}, [3]float64{43, 45, 48}},
	{45, 4.5, 40.5, []float64{4, 3, 2, 1.5}, [3]float64{46, 48, 52}},
	{48, 5, 43, []float64{4, 3, 2, 1.5}, [3]float64{50, 52, 56}},
	{d: 50, fine: []float64{3, 2, 1.5}},
	{52, 5, 47, []float64{4, 3, 2, 1.5}, [3]float64{54, 56, 62}},
	{d: 55, fine: []float64{4, 3, 2, 1.5}},
	{56, 5.5, 50.5, []float64{4, 3, 2, 1.5}, [3]float64{58, 62, 66}},
	{d: 58, fine: []float64{4, 3, 2, 1.5}},
	{60, 5.5, 54.5, []float64{4, 3, 2, 1.5}, [3]float64{62, 66, 70}},
	{d: 62, fine: []float64{4, 3, 2, 1.5}},
	{64, 6, 58, []float64{4, 3, 2, 1.5}, [3]float64{66, 70, 74}},
	{d: 65, fine: []float64{4, 3, 2, 1.5}},
	{68, 6, 62, []float64{4, 3, 2, 1.5}, [3]float64{70, 74, 78}},
	{d: 70, fine: []float64{6, 4, 3, 2, 1.5}},
	{d: 72, fine: []float64{6, 4, 3, 2, 1.5}, hole: [3]float64{74, 78, 82}},
	{d: 75, fine: []float64{4, 3, 2, 1.5}},
	{d: 76, fine: []float64{6, 4, 3, 2, 1.5}, hole: [3]float64{78, 82, 86}},
	{d: 78, fine: []float64{2}},
	{d: 80, fine: []float64{6, 4, 3, 2, 1.5}, hole: [3]float64{82, 86, 91}},
	{d: 82, fine: []float64{2}},
	{d: 85, fine: []float64{6, 4, 3, 2}, hole: [3]float64{87, 91, 96}},
	{d: 90, fine: []float64{6, 4, 3, 2}, hole: [3]float64{93, 96, 101}},
	{d: 95, fine: []float64{6, 4, 3, 2}, hole: [3]float64{98, 101, 107}},
	{d: 100, fine: []float64{6, 4, 3, 2}, hole: [3]float64{104, 107, 112}},
	{d: 105, fine: []float64{6, 4, 3, 2}},
	{d: 110, fine: []float64{6, 4, 3, 2}},
	{d: 115, fine: []float64{6, 4, 3, 2}},
	{d: 120, fine: []float64{6, 4, 3, 2}},
	{d: 125, fine: []float64{8, 6, 4, 3, 2}},
	{d: 130, fine: []float64{8, 6, 4, 3, 2}},
	{d: 135, fine: []float64{6, 4, 3, 2}},
	{d: 140, fine: []float64{8, 6, 4, 3, 2}},
	{d: 145, fine: []float64{6, 4, 3, 2}},
	{d: 150, fine: []float64{8, 6, 4, 3, 2}},
	{d: 155, fine: []float64{6, 4, 3}},
	{d: 160, fine: []float64{8, 6, 4, 3}},
	{d: 165, fine: []float64{6, 4, 3}},
	{d: 170, fine: []float64{8, 6, 4, 3}},
	{d: 175, fine: []float64{6, 4, 3}},
	{d: 180, fine: []float64{8, 6, 4, 3}},
	{d: 185, fine: []float64{6, 4, 3}},
	{d: 190, fine: []float64{8, 6, 4, 3}},
	{d: 195, fine: []float64{6, 4, 3}},
	{d: 200, fine: []float64{8, 6, 4, 3}},
}

// metricThread builds the thread of one diameter and one of its pitches.
func metricThread(row metricRow, pitch float64) Thread {
	t := Thread{
		Designation:     "M" + number(row.d),
		Series:          MetricCoarse,
		PitchMm:         pitch,
		MajorMm:         row.d,
		PitchDiameterMm: round3(row.d - pitchDiameterFactor*pitch),
		MinorMm:         round3(row.d - minorFactor*pitch),
		TapDrillMm:      row.drill,
		Source:          lookup.Source{Name: "ISO 261, ISO 724", Of: "; tap drill ISO 2306 practice", State: lookup.Checked},
	}
	if pitch != row.coarse {
		t.Series = MetricFine
		t.Designation += "x" + number(pitch)
		t.TapDrillMm = round3(row.d - pitch)
		t.Note = "tap drill by the rule d − P"
		if sold := math.Round(t.TapDrillMm*10) / 10; pitch == 1.25 && row.d <= 14 {
			t.Note += "; " + number(sold) + " is the common drill"
		}
	}
	if row.hole[1] > 0 {
		t.Clearance = &Clearance{row.hole[0], row.hole[1], row.hole[2]}
		t.Source.Of += "; clearance ISO 273:1979"
	}
	return t
}

// number writes a size without trailing zeros: 10, 1.25.
func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
