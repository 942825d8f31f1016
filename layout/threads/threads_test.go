package threads

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"centrepop/parts/golden"
)

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

// Each row names its source: ISO 724, ISO 228-1:2000.
func TestReferenceThreads(t *testing.T) {
	for _, row := range golden.Table(t, "../../testdata/reference/threads.csv", 31) {
		name := row["designation"]
		got, err := Parse(name)
		if err != nil {
			t.Error(err)
			continue
		}
		if got.Designation != name {
			t.Errorf("%s came back as %s", name, got.Designation)
		}
		for _, c := range []struct {
			column string
			got    float64
		}{
			{"pitch_mm", got.PitchMm}, {"tpi", got.TPI}, {"major_mm", got.MajorMm},
			{"pitch_diameter_mm", got.PitchDiameterMm}, {"minor_internal_mm", got.MinorMm},
			{"tap_drill_mm", got.TapDrillMm},
		} {
			if want := row.Number(t, c.column); !near(c.got, want, 1e-9) {
				t.Errorf("%s %s = %v, want %v (%s)", name, c.column, c.got, want, row["source"])
			}
		}
	}
}

// ISO 273:1979.
func TestReferenceClearance(t *testing.T) {
	for _, row := range golden.Table(t, "../../testdata/reference/clearance_holes.csv", 9) {
		got, err := Parse(row["bolt"])
		if err != nil {
			t.Error(err)
			continue
		}
		for series, column := range map[string]string{"fine": "fine_mm", "medium": "medium_mm", "coarse": "coarse_mm", "CLOSE": "fine_mm", " Normal": "medium_mm", "loose": "coarse_mm"} {
			hole, err := got.ClearanceMm(series)
			if want := row.Number(t, column); err != nil || hole != want {
				t.Errorf("%s %s = %v, %v, want %v", row["bolt"], series, hole, err, want)
			}
		}
	}
}

// ISO 273 as a hardware reference page prints it (M1 to M14), and the British
// list that agrees with it from M18 up in fine and medium.
func TestPublishedClearance(t *testing.T) {
	for name, want := range map[string]Clearance{
		"M1": {1.1, 1.2, 1.3}, "M1.2": {1.3, 1.4, 1.5}, "M1.4": {1.5, 1.6, 1.8}, "M1.6": {1.7, 1.8, 2}, "M2": {2.2, 2.4, 2.6},
		"M2.5": {2.7, 2.9, 3.1}, "M3": {3.2, 3.4, 3.6}, "M3.5": {3.7, 3.9, 4.2}, "M4": {4.3, 4.5, 4.8}, "M5": {5.3, 5.5, 5.8},
		"M6": {6.4, 6.6, 7}, "M7": {7.4, 7.6, 8}, "M8": {8.4, 9, 10}, "M10": {10.5, 11, 12}, "M12": {13, 13.5, 14.5}, "M14": {15, 15.5, 16.5},
		"M18": {19, 20, 21}, "M22": {23, 24, 26}, "M27": {28, 30, 32}, "M33": {34, 36, 38}, "M39": {40, 42, 45}, "M42": {43, 45, 48},
	} {
		if got, err := Parse(name); err != nil || got.Clearance == nil || *got.Clearance != want {
			t.Errorf("%s: %+v, %v, want %v", name, got.Clearance, err, want)
		}
	}
}

// ASME B18.2.8 Table 3b gives inch drills for metric screws (Machinery's
// Handbook 31st ed. p. 1743); they stay within 1.6 mm of the ISO 273 hole.
func TestLargeClearanceAgainstInchDrills(t *testing.T) {
	for name, drills := range map[string]Clearance{
		"M30": {1 + 7.0/32, 1 + 9.0/32, 1 + 3.0/8}, "M36": {1 + 15.0/32, 1 + 17.0/32, 1 + 21.0/32},
		"M42": {1 + 11.0/16, 1 + 25.0/32, 1 + 29.0/32}, "M48": {1 + 31.0/32, 2 + 1.0/32, 2 + 3.0/16},
		"M56": {2 + 5.0/16, 2 + 7.0/16, 2 + 5.0/8}, "M64": {2 + 5.0/8, 2 + 3.0/4, 2 + 15.0/16}, "M72x6": {2 + 15.0/16, 3 + 1.0/8, 3 + 1.0/4},
	} {
		got, err := Parse(name)
		if err != nil {
			t.Error(err)
			continue
		}
		c := got.Clearance
		if !near(c.FineMm, drills.FineMm*25.4, 1.6) || !near(c.MediumMm, drills.MediumMm*25.4, 1.6) || !near(c.CoarseMm, drills.CoarseMm*25.4, 1.6) {
			t.Errorf("%s: %+v, inch drills %+v", name, c, drills)
		}
	}
}

// Basic dimensions as printed in ISO 724 (metric, from memory) and ASME B1.1
// (Unified, inches; as a tap maker's chart prints D1 min, the rest from memory), independent of the formula used.
func TestPublishedBasicDimensions(t *testing.T) {
	for _, c := range []struct {
		name         string
		pitch, minor float64
		inch         bool
	}{
		{"M1.6", 1.373, 1.221, false},
		{"M2", 1.740, 1.567, false},
		{"M2.5", 2.208, 2.013, false},
		{"M4", 3.545, 3.242, false},
		{"M6", 5.350, 4.917, false},
		{"M10", 9.026, 8.376, false},
		{"M14", 12.701, 11.835, false},
		{"M18", 16.376, 15.294, false},
		{"M42", 39.077, 37.129, false},
		{"M48", 44.752, 42.587, false},
		{"M56", 52.428, 50.046, false},
		{"M64", 60.103, 57.505, false},
		{"M100x2", 98.701, 97.835, false},
		{"1/4-20 UNC", 0.2175, 0.1959, true},
		{"5/16-18 UNC", 0.2764, 0.2524, true},
		{"3/8-16 UNC", 0.3344, 0.3073, true},
		{"1/2-13 UNC", 0.4500, 0.4167, true},
		{"3/4-10 UNC", 0.6850, 0.6417, true},
		{"1-8 UNC", 0.9188, 0.8647, true},
		{"1/2-20 UNF", 0.4675, 0.4459, true},
		{"#10-32 UNF", 0.1697, 0.1562, true},
		{"#4-40 UNC", 0.0958, 0.0849, true},
	} {
		got, err := Parse(c.name)
		if err != nil {
			t.Error(err)
			continue
		}
		tol, scale := 1e-9, 1.0
		if c.inch {
			tol, scale = 0.00006, 25.4
		}
		if !near(got.PitchDiameterMm/scale, c.pitch, tol) || !near(got.MinorMm/scale, c.minor, tol) {
			t.Errorf("%s: pitch and minor diameter %v, %v, want %v, %v", c.name, got.PitchDiameterMm/scale, got.MinorMm/scale, c.pitch, c.minor)
		}
	}
}

// Pipe diameters and gauge lengths as a reprint of the pipe sizes prints ISO 228-1 and ISO 7-1
// (liquisearch.com), useful lengths as a maker of fittings does (AAP Industries, BS EN 10241).
func TestPublishedPipe(t *testing.T) {
	for _, c := range []struct {
		name                               string
		major, pitch, minor, gauge, useful float64
	}{
		{"G1/16", 7.723, 7.142, 6.561, 0, 0},
		{"G1/4", 13.157, 12.301, 11.445, 0, 0},
		{"G3/4", 26.441, 25.279, 24.117, 0, 0},
		{"G1 1/4", 41.910, 40.431, 38.952, 0, 0},
		{"G2 1/2", 75.184, 73.705, 72.226, 0, 0},
		{"G6", 163.830, 162.351, 160.872, 0, 0},
		{"R1/8", 9.728, 9.147, 8.566, 4.0, 6.5},
		{"Rc1/2", 20.955, 19.793, 18.631, 8.2, 13.2},
		{"Rp1", 33.249, 31.770, 30.291, 10.4, 16.8},
		{"R3/4", 26.441, 25.279, 24.117, 9.5, 14.5}, // gauge length 9.5 also in a maker's fitting sheet to ISO 7-1
		{"R1/4", 13.157, 12.301, 11.445, 6, 9.7}, {"R3/8", 16.662, 15.806, 14.950, 6.4, 10.1}, {"R1", 33.249, 31.770, 30.291, 10.4, 16.8},
		{"R1 1/4", 41.910, 40.431, 38.952, 12.7, 19.1}, {"R1 1/2", 47.803, 46.324, 44.845, 12.7, 19.1}, {"R2", 59.614, 58.135, 56.656, 15.9, 23.4},
		{"R2 1/2", 75.184, 73.705, 72.226, 17.5, 26.7}, {"R3", 87.884, 86.405, 84.926, 20.6, 29.8},
		{"R4", 113.030, 111.551, 110.072, 25.4, 35.8}, // the reprint has 25.5; 11 threads are 25.4
		{"R5", 138.430, 136.951, 135.472, 28.6, 40.1}, {"R6", 163.830, 162.351, 160.872, 28.6, 40.1},
	} {
		got, err := Parse(c.name)
		if err != nil {
			t.Error(err)
			continue
		}
		if got.MajorMm != c.major || got.PitchDiameterMm != c.pitch || got.MinorMm != c.minor || got.GaugeLengthMm != c.gauge || got.UsefulLengthMm != c.useful {
			t.Errorf("%s = %+v, want %+v", c.name, got, c)
		}
		if got.Clearance != nil {
			t.Errorf("%s has a clearance hole", c.name)
		}
	}
}

func TestM10(t *testing.T) {
	got, err := Parse("m 10")
	if err != nil {
		t.Fatal(err)
	}
	if got.PitchMm != 1.5 || got.MajorMm != 10 || got.PitchDiameterMm != 9.026 || got.MinorMm != 8.376 || got.TapDrillMm != 8.5 || *got.Clearance != (Clearance{10.5, 11, 12}) {
		t.Errorf("M10 = %+v, %+v", got, got.Clearance)
	}
}

// limit6H is the tolerance of the internal minor diameter, grade 6 of
// ISO 965-1 (its formulae, from memory).
func limit6H(pitch float64) float64 {
	if pitch >= 1 {
		return 0.230 * math.Pow(pitch, 0.7)
	}
	return 0.433*pitch - 0.190*math.Pow(pitch, 1.22)
}

// ASME B1.20.1-2013 Table 2, inches: E1, L1, L2 and L3 as two published copies print
// them, the pitch diameter E0 at the small end by its formula D - (0.05 D + 1.1) p,
// L2 by (0.80 D + 6.8) p, with D the outside of the pipe.
func TestPublishedNPT(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name                               string
		outside, middle, hand, long, tight float64
	}{
		{"1/16-27 NPT", 0.3125, 0.28118, 0.160, 0.2611, 0.1111}, {"1/8-27 NPT", 0.405, 0.37360, 0.1615, 0.2639, 0.1111},
		{"1/4-18 NPT", 0.540, 0.49163, 0.2278, 0.4018, 0.1667}, {"3/8-18 NPT", 0.675, 0.62701, 0.240, 0.4078, 0.1667},
		{"1/2-14 NPT", 0.840, 0.77843, 0.320, 0.5337, 0.2143}, {"3/4-14 NPT", 1.050, 0.98887, 0.339, 0.5457, 0.2143},
		{"1-11.5 NPT", 1.315, 1.23863, 0.400, 0.6828, 0.2609}, {"1 1/4-11.5 NPT", 1.660, 1.58338, 0.420, 0.7068, 0.2609},
		{"1 1/2-11.5 NPT", 1.900, 1.82234, 0.420, 0.7235, 0.2609}, {"2-11.5 NPT", 2.375, 2.29627, 0.436, 0.7565, 0.2609},
		{"2 1/2-8 NPT", 2.875, 2.76216, 0.682, 1.1375, 0.25}, {"3-8 NPT", 3.5, 3.38850, 0.766, 1.2, 0.25},
		{"3 1/2-8 NPT", 4, 3.88881, 0.821, 1.25, 0.25}, {"4-8 NPT", 4.5, 4.38712, 0.844, 1.3, 0.25},
	} {
		got, err := Parse(c.name)
		if err != nil {
			t.Error(err)
			continue
		}
		const in, tol = 25.4, 0.0009 // mm, as rounded and printed
		small := c.outside - (0.05*c.outside+1.1)/got.TPI
		if !near(got.PitchDiameterMm, in*c.middle, tol) || !near(got.PitchDiameterMm, in*(small+c.hand/16), 0.003) || !near(got.MajorMm-got.MinorMm, 2*in*0.8/got.TPI, tol) {
			t.Errorf("%s: diameters %v %v %v", c.name, got.MajorMm, got.PitchDiameterMm, got.MinorMm)
		}
		if !near(got.GaugeLengthMm, in*c.hand, tol) || !near(got.UsefulLengthMm, in*c.long, tol) || !near(c.long, (0.8*c.outside+6.8)/got.TPI, 0.0001) || !near(got.WrenchMm, in*c.tight, 0.0018) {
			t.Errorf("%s: lengths %v %v %v", c.name, got.GaugeLengthMm, got.UsefulLengthMm, got.WrenchMm)
		}
	}
}

// The tapping drill must leave a thread inside the minor diameter limits:
// ISO 965-1 6H, ISO 228-1 Table 1 (0.282, 0.445, 0.541, 0.640 by pitch, as a
// tap maker's wall chart prints them). For Rc it lies between the minor diameters at the two ends of the
// useful length; for Rp within a third of a pitch of D1.
func TestTapDrillsWithinLimits(t *testing.T) {
	pipeLimit := map[float64]float64{28: 0.282, 19: 0.445, 14: 0.541, 11: 0.640}
	for _, thread := range All() {
		low, high := thread.MinorMm, 0.0
		switch thread.Series {
		case MetricCoarse, MetricFine:
			high = low + limit6H(thread.PitchMm) + 0.005
		case PipeG:
			high = low + pipeLimit[thread.TPI]
		case PipeR, Trapezoidal, Acme:
			low, high = 0, 0
		case PipeRc:
			low, high = low-thread.UsefulLengthMm*TaperPerMm, low
		case PipeNPT: // by hand and by wrench: L1 + L3
			low, high = low-(thread.GaugeLengthMm+thread.WrenchMm)*TaperPerMm, low
		case PipeRp:
			low, high = thread.MinorLimitsMm()
		default: // Unified: 60 to 85 % of 1.299 P
			height := 1.299 * 25.4 / thread.TPI
			low, high = thread.MajorMm-0.85*height, thread.MajorMm-0.60*height
		}
		if thread.TapDrillMm < low || thread.TapDrillMm > high {
			t.Errorf("%s: tap drill %v not in %.3f … %.3f", thread.Designation, thread.TapDrillMm, low, high)
		}
	}
}

// The drill lies within the minor diameter limits of ASME B1.1 class 2B,
// inches, as a tap maker's chart prints them (it rounds to 0.001 from #6 up).
func TestUnifiedMinorLimits(t *testing.T) {
	for name, limit := range map[string][2]float64{
		"#1-64 UNC": {0.0561, 0.0622}, "#2-56 UNC": {0.0667, 0.0737}, "#3-48 UNC": {0.0764, 0.0845}, "#4-40 UNC": {0.0849, 0.0939},
		"#5-40 UNC": {0.0979, 0.1062}, "#6-32 UNC": {0.1040, 0.1140}, "#8-32 UNC": {0.1300, 0.1390}, "#10-24 UNC": {0.1450, 0.1550},
		"#12-24 UNC": {0.1710, 0.1810}, "1/4-20 UNC": {0.1960, 0.2070}, "5/16-18 UNC": {0.2520, 0.2650}, "3/8-16 UNC": {0.3070, 0.3210},
		"7/16-14 UNC": {0.3600, 0.3760}, "1/2-13 UNC": {0.4170, 0.4340}, "9/16-12 UNC": {0.4720, 0.4900}, "5/8-11 UNC": {0.5270, 0.5460},
		"3/4-10 UNC": {0.6420, 0.6630}, "7/8-9 UNC": {0.7550, 0.7780}, "1-8 UNC": {0.8650, 0.8900}, "1 1/8-7 UNC": {0.9700, 0.9980},
		"1 1/4-7 UNC": {1.0950, 1.1230}, "1 3/8-6 UNC": {1.1950, 1.2250}, "1 1/2-6 UNC": {1.3200, 1.3500}, "1 3/4-5 UNC": {1.5330, 1.5670},
		"2-4.5 UNC": {1.7590, 1.7950},
		"#0-80 UNF": {0.0465, 0.0514}, "#2-64 UNF": {0.0691, 0.0753}, "#4-48 UNF": {0.0894, 0.0968}, "#6-40 UNF": {0.111, 0.119}, "#10-32 UNF": {0.156, 0.164}, "#12-28 UNF": {0.177, 0.186},
	} {
		got, err := Parse(name)
		if err != nil {
			t.Error(err)
			continue
		}
		if drill := got.TapDrillMm / 25.4; drill < limit[0] || drill > limit[1] {
			t.Errorf("%s: drill %.4f not in %v", name, drill, limit)
		}
		if minor := got.MinorMm / 25.4; !near(minor, limit[0], 0.0007) {
			t.Errorf("%s: D1 %.4f, chart %v", name, minor, limit[0])
		}
	}
}

// A few rows of charts everyone knows.
func TestUnifiedDrillsAndHoles(t *testing.T) {
	for _, c := range []struct {
		name, drill         string
		close, normal, free float64 // inches, ASME B18.2.8-1999 Table 1
	}{
		{"1/4-20 UNC", "#7", 0.266, 0.281, 0.297},
		{"3/8-16 UNC", "5/16 in", 0.391, 0.406, 0.422},
		{"1/2-13 UNC", "27/64 in", 0.531, 0.562, 0.609},
		{"3/4-16 UNF", "11/16 in", 0.781, 0.812, 0.906},
		{"1 1/2-6 UNC", "1 11/32 in", 1.562, 1.625, 1.734},
	} {
		got, err := Parse(c.name)
		if err != nil {
			t.Error(err)
			continue
		}
		h := got.Clearance
		if drill := map[string]float64{"#7": 0.201, "5/16 in": 0.3125, "27/64 in": 27.0 / 64, "11/16 in": 0.6875, "1 11/32 in": 1.34375}[c.drill]; !near(got.TapDrillMm, drill*25.4, 0.00006) {
			t.Errorf("%s: drill %v mm, want %s", c.name, got.TapDrillMm, c.drill)
		}
		if got.TapDrillName != c.drill || !near(h.FineMm, c.close*25.4, 0.00006) || !near(h.MediumMm, c.normal*25.4, 0.00006) || !near(h.CoarseMm, c.free*25.4, 0.00006) {
			t.Errorf("%s: drill %s, holes %+v, want %+v", c.name, got.TapDrillName, h, c)
		}
	}
}

// ASME B18.2.8 Table 3a gives metric drills for the same inch holes
// (Machinery's Handbook 31st ed. p. 1743, close fit column); they agree to
// 0.2 mm.
func TestCloseFitAgainstMetricDrills(t *testing.T) {
	for name, drill := range map[string]float64{"#0 UNF": 1.7, "#1 UNC": 2.05, "#2 UNC": 2.4, "#3 UNC": 2.7, "#4 UNC": 3, "#5 UNC": 3.6, "#6 UNC": 3.9, "#8 UNC": 4.6, "#10 UNC": 5.2, "1/4 UNC": 6.7, "5/16 UNC": 8.3, "3/8 UNC": 9.9, "7/16 UNC": 11.5, "1/2 UNC": 13.5, "5/8 UNC": 16.75, "3/4 UNC": 20, "7/8 UNC": 23, "1 UNC": 26, "1 1/8 UNC": 29.5, "1 1/4 UNC": 32.5, "1 3/8 UNC": 36.5, "1 1/2 UNC": 39.5} {
		got, err := Parse(name)
		if err != nil {
			t.Error(err)
			continue
		}
		if !near(got.Clearance.FineMm, drill, 0.2) {
			t.Errorf("%s close fit %v, metric drill %v", name, got.Clearance.FineMm, drill)
		}
	}
}

func TestSpellings(t *testing.T) {
	for given, want := range map[string]string{
		"M10": "M10", " m10 ": "M10", "M 10 x 1,25": "M10x1.25", "M10×1.25": "M10x1.25", "M10*1.250": "M10x1.25",
		"M10x1.5": "M10", "m8X1": "M8x1", "M1.6": "M1.6",
		"G1": "G1", "g1/2": "G1/2", "G 1/2": "G1/2", "G1 1/4": "G1 1/4", "G1-1/4": "G1 1/4", "G1¼\"": "G1 1/4", "G½": "G1/2",
		"R1/2": "R1/2", "RC1/2": "Rc1/2", "rp 3/4": "Rp3/4", "Rc 1-1/2": "Rc1 1/2",
		"1/2-13 UNC": "1/2-13 UNC", "1/2 UNC": "1/2-13 UNC", "1/2-13UNC": "1/2-13 UNC", "1/2\"-13 UNC": "1/2-13 UNC", "1/2-13": "1/2-13 UNC", "1/2-20": "1/2-20 UNF",
		"#10-24 UNC": "#10-24 UNC", "10-24 UNC": "#10-24 UNC", "No. 10-32": "#10-32 UNF", "#10 UNF": "#10-32 UNF",
		"1-8 UNC": "1-8 UNC", "1 UNC": "1-8 UNC", "1-12": "1-12 UNF", "2-4.5 UNC": "2-4.5 UNC", "2-56": "#2-56 UNC",
		"1-1/4 UNC": "1 1/4-7 UNC", "1 1/4-7 unc": "1 1/4-7 UNC", "1-1/4-12 UNF": "1 1/4-12 UNF", "1¼-7": "1 1/4-7 UNC",
		"1/8 NPT": "1/8-27 NPT", "NPT 1/8": "1/8-27 NPT", "1/8-27NPT": "1/8-27 NPT", "1/2\"-14 NPT": "1/2-14 NPT", "1¼ npt": "1 1/4-11.5 NPT", "1 1/4-11.5 NPT": "1 1/4-11.5 NPT",
		"1-11-1/2 NPT": "1-11.5 NPT", "1 1/2-11 1/2 NPT": "1 1/2-11.5 NPT", "1-1/2 NPT": "1 1/2-11.5 NPT", "4 NPT": "4-8 NPT",
		"0.500-13 UNC": "1/2-13 UNC", ".3125-18 UNC": "5/16-18 UNC",
		"4-4 UNC": "4-4 UNC", "3 UNC": "3-4 UNC", "2-4 1/2 UNC": "2-4.5 UNC", "2 1/4-4-1/2": "2 1/4-4.5 UNC", "4-8 UN": "4-8 UN", "4-8": "4-8 UN", "1-1/2-8 UN": "1 1/2-8 UN",
		"1-8 UN": "1-8 UNC", "1-12 UN": "1-12 UNF", "1.563-18": "1.563-18 UNS", "1.563-12": "1 9/16-12 UN", "0.781-32 UNS": "0.781-32 UNS", "1.173-18": "1.173-18 UNS",
	} {
		got, err := Parse(given)
		if err != nil || got.Designation != want {
			t.Errorf("Parse(%q) = %q, %v, want %q", given, got.Designation, err, want)
		}
	}
}

func TestUnknown(t *testing.T) {
	for given, want := range map[string]string{
		"M10x1.2":                     `threads: "M10x1.2": not a pitch of this diameter in ISO 261; nearest: M10, M10x1.25, M10x1, M10x0.75`,
		"M13":                         `threads: "M13": not a diameter of ISO 261; nearest: M12, M14`,
		"M19.5":                       `threads: "M19.5": not a diameter of ISO 261; nearest: M20, M18`,
		"M0.1":                        `threads: "M0.1": not a diameter of ISO 261; nearest: M1`,
		"M999":                        `threads: "M999": not a diameter of ISO 261; nearest: M200x8`,
		"M15":                         `threads: "M15": this diameter has no coarse pitch: write the pitch; nearest: M15x1.5, M15x1`,
		"1/8-28 NPT":                  "not a size of ASME B1.20.1 from 1/16 to 4 with its threads per inch; nearest: 1/8-27 NPT",
		"5 NPT":                       "not a size of ASME B1.20.1",
		"G5/4":                        "nearest: G1/4, G5/8, G3/4",
		"R5/8":                        "ISO 7-1 does not have this size; nearest: ",
		"1/2":                         "no thread series: add UNC, UNF",
		"3/8":                         "or end with NPT or ACME; nearest: 3/8-16 UNC, ",
		"1/2-14 UNC":                  "nearest: 1/2-13 UNC, ",
		"4-9 UN":                      "nearest: 4-8 UN, 4-6 UN, 4-12 UN",
		"1-9/16-24 UN":                "nearest: 1 9/16-20 UN, 1 9/16-18 UNEF, ",
		"4-41":                        "nearest: #4-40 UNC, #4-48 UNF, ",
		"1 1/2 UN":                    "needs its threads per inch; nearest: 1 1/2-6 UNC, ",
		"2 1/16-16 UN":                "lock nuts; nearest: ",
		"1/2 UNK":                     "nearest: ",
		"":                            "empty; nearest: ",
		"MNaN":                        "the diameter is not a number",
		"MInf":                        "the diameter is not a number",
		"M1e1":                        "the diameter is not a number",
		"M-10":                        "the diameter is not a number",
		"G1/2 LH":                     `threads: "G1/2 LH": a left hand is known of metric, Unified and lead-screw threads alone; nearest: G1/2`,
		"M24x1.5 LH LH":               "a left hand is known of metric, Unified and lead-screw threads alone; nearest: M24x1.5 LH",
		"LH":                          "empty; nearest: ",
		"M10x":                        "the pitch is not a number above zero",
		"M10x0":                       "the pitch is not a number above zero",
		"G":                           "the size is missing",
		"1/2-13-13 UNC":               "nearest: 1/2-13 UNC",
		strings.Repeat("M1000000", 9): "too long; nearest: ",
	} {
		got, err := Parse(given)
		var unknown *UnknownError
		if !errors.As(err, &unknown) {
			t.Errorf("Parse(%q) = %+v, %v, want an *UnknownError", given, got, err)
			continue
		}
		if !strings.Contains(err.Error(), want) || len(unknown.Nearest()) == 0 {
			t.Errorf("Parse(%q): %v\nwant %s", given, err, want)
		}
		for _, name := range unknown.Nearest() {
			if _, err := Parse(name); err != nil {
				t.Errorf("Parse(%q) proposes %q: %v", given, name, err)
			}
		}
	}
}

func TestClearanceErrors(t *testing.T) {
	m10, _ := Parse("M10")
	if _, err := m10.ClearanceMm("tight"); err == nil || !strings.Contains(err.Error(), "fine, medium or coarse") {
		t.Errorf("tight: %v", err)
	}
	g1, _ := Parse("G1")
	if _, err := g1.ClearanceMm("fine"); err == nil || !strings.Contains(err.Error(), "G1") {
		t.Errorf("G1: %v", err)
	}
	if hole, err := m10.ClearanceMm(""); err != nil || hole != 11 {
		t.Errorf("empty series: %v, %v, want medium 11", hole, err)
	}
}

// Every thread: parses back to itself, diameters in order, clearance series
// in order and outside the thread, names unique.
func TestAllConsistent(t *testing.T) {
	list := All()
	if len(list) < 300 {
		t.Fatalf("%d threads", len(list))
	}
	seen := map[string]bool{}
	for _, thread := range list {
		name := thread.Designation
		if seen[name] {
			t.Errorf("%s twice", name)
		}
		seen[name] = true
		back, err := Parse(name)
		if err != nil || back.Designation != name || back.MajorMm != thread.MajorMm || back.PitchMm != thread.PitchMm {
			t.Errorf("%s parses to %+v, %v", name, back, err)
		}
		if !(0 < thread.MinorMm && thread.MinorMm < thread.PitchDiameterMm && thread.PitchDiameterMm < thread.MajorMm) {
			t.Errorf("%s: diameters %v %v %v", name, thread.MinorMm, thread.PitchDiameterMm, thread.MajorMm)
		}
		if thread.Source.Name == "" {
			t.Errorf("%s has no source", name)
		}
		if c := thread.Clearance; c != nil && !(thread.MajorMm < c.FineMm && c.FineMm < c.MediumMm && c.MediumMm < c.CoarseMm && c.CoarseMm < 1.6*thread.MajorMm) {
			t.Errorf("%s: clearance %+v", name, *c)
		}
		if x, err := thread.RunoutMm(); (err != nil) != thread.Taper || (err == nil && x < 2*thread.PitchMm) {
			t.Errorf("%s run-out: %v, %v", name, x, err)
		}
	}
	for i := 1; i < len(metricRows); i++ {
		if metricRows[i].d <= metricRows[i-1].d {
			t.Errorf("M%v is out of order", metricRows[i].d)
		}
	}
}

// DIN 76-1 regular run-outs, from memory: M6 5.1, M8 6.2, M10 7.3, M12 8.3,
// M16 9.3.
func TestBlindDrill(t *testing.T) {
	for name, want := range map[string]float64{"M6": 5.1, "M8": 6.2, "M10": 7.3, "M12": 8.3, "M16": 9.3, "M36": 16.8} {
		thread, err := Parse(name)
		if err != nil {
			t.Fatal(err)
		}
		got, err := thread.BlindDrillMm(20)
		if err != nil || !near(got, 20+want, 1e-9) {
			t.Errorf("%s: %v, %v, want %v", name, got, err, 20+want)
		}
	}
	inch, _ := Parse("1/2-13 UNC") // 1.954 mm: between the rows for 1.75 and 2
	if got, err := inch.BlindDrillMm(25.4); err != nil || !near(got, 25.4+9.1, 1e-9) {
		t.Errorf("1/2-13: %v, %v", got, err)
	}
	rc, _ := Parse("Rc1/2")
	if got, err := rc.BlindDrillMm(15); err == nil || !strings.Contains(err.Error(), "taper") {
		t.Errorf("Rc1/2: %v, %v", got, err)
	}
	if _, err := (Thread{}).RunoutMm(); err == nil {
		t.Error("a zero thread has a run-out")
	}
}

// The run-out grows with the pitch.
func TestRunoutGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Thread{PitchMm: rapid.Float64Range(0.2, 8).Draw(t, "a")}
		b := Thread{PitchMm: rapid.Float64Range(0.2, 8).Draw(t, "b")}
		if a.PitchMm > b.PitchMm {
			a, b = b, a
		}
		x, errA := a.RunoutMm()
		y, errB := b.RunoutMm()
		if errA != nil || errB != nil || x > y+0.051 {
			t.Fatalf("pitch %v gives %v (%v), %v gives %v (%v)", a.PitchMm, x, errA, b.PitchMm, y, errB)
		}
	})
}

// An accepted designation is a known thread whose own designation parses to
// the same thread; a refused one returns a zero thread and proposes threads.
func FuzzParse(f *testing.F) {
	for _, thread := range All() {
		f.Add(thread.Designation)
	}
	for _, seed := range []string{"M10×1,25", "G1¼", "No. 10-24", "0.500-13 UNC", "x", "M.", "1//2 UNC", "#-1 UNF", "½-13", "\xff"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, designation string) {
		got, err := Parse(designation)
		if err != nil {
			var unknown *UnknownError
			if got != (Thread{}) || !errors.As(err, &unknown) || len(unknown.Nearest()) == 0 {
				t.Fatalf("%q: %+v, %v", designation, got, err)
			}
			return
		}
		again, err := Parse(got.Designation)
		if err != nil || again.Designation != got.Designation || again.MajorMm != got.MajorMm || again.PitchMm != got.PitchMm {
			t.Fatalf("%q gives %+v, which gives %+v, %v", designation, got, again, err)
		}
		if !(got.MajorMm > got.MinorMm && got.MinorMm > 0 && got.PitchMm > 0) {
			t.Fatalf("%q: %+v", designation, got)
		}
	})
}

// TestUnifiedBeyondInch: basic pitch diameter and the limits 2B of the minor diameter, in
// inches. The sizes 2 1/2, 5 3/4 and 6 in: Machinery's Handbook 27th ed., Standard series,
// Unified screw threads (p. 1755 and on); 2 1/4-4.5, 2 3/4-4 and 3 3/4-4: a chart of the internal limits of
// UNC; with the stress area in square inches. Lock nuts: pitch diameter of AFBMA's shafts
// in Machinery's Handbook, Guide.
func TestUnifiedBeyondInch(t *testing.T) {
	t.Parallel()
	for name, want := range map[string][3]float64{
		"2 1/2-4 UNC": {2.3376, 2.229, 2.267}, "2 1/2-6 UN": {2.3917, 2.320, 2.350}, "2 1/2-8 UN": {2.4188, 2.365, 2.390}, "2 1/2-12 UN": {2.4459, 2.410, 2.428},
		"2 1/2-16 UN": {2.4594, 2.432, 2.446}, "5 3/4-12 UN": {5.6959, 5.660, 5.678}, "6-16 UN": {5.9594, 5.932, 5.946}, "6-12 UN": {5.9459, 5.910, 5.928},
		"2 1/4-4.5 UNC": {2.1057, 2.009, 2.045}, "2 3/4-4 UNC": {2.5876, 2.479, 2.517}, "3 3/4-4 UNC": {3.5876, 3.479, 3.517},
		"0.391-32": {0.3707, 0, 0}, "0.781-32": {0.7607, 0, 0}, "1.563-18": {1.5269, 0, 0}, "2.933-12": {2.8789, 0, 0}, "3.137-12": {3.0829, 0, 0},
	} {
		got, err := Parse(name)
		if err != nil {
			t.Error(err)
			continue
		}
		lo, hi := got.MinorLimitsMm()
		if !near(got.PitchDiameterMm/25.4, want[0], 0.0001) || want[1] > 0 && !(near(lo/25.4, want[1], 0.00055) && near(hi/25.4, want[2], 0.00055)) {
			t.Errorf("%s: %.4f, %.4f to %.4f, want %v", name, got.PitchDiameterMm/25.4, lo/25.4, hi/25.4, want)
		}
		if got.Series != UnifiedUNS && (got.TapDrillMm < lo || got.TapDrillMm > hi || got.TapDrillName == "") {
			t.Errorf("%s: drill %v %q outside %v to %v", name, got.TapDrillMm, got.TapDrillName, lo, hi)
		}
	}
}

// TestClasses: 1/4-20 by a calculator that prints the tables of ASME B1.1; 1/2-13 from memory; #10-32,
// 1/4-28 and 1/2-20 by the table of inside threads in a tap maker's catalogue, in mm; the series are
// those of the table of ASME B1.1-2003 at 5/8 and 11/16.
func TestClasses(t *testing.T) {
	t.Parallel()
	for name, want := range map[string][2]float64{
		"1/4-20 UNC-2A": {0.2127, 0.2164}, "1/4-20 UNC-2B": {0.2175, 0.2224},
		"1/4-20 UNC-1A": {0.2108, 0.2164}, "1/4-20 UNC-1B": {0.2175, 0.2248}, "1/2-13 UNC-1A": {0.4411, 0.4485}, "1/2-13 UNC-1B": {0.4500, 0.4597}, // from memory
		"1/2-13 UNC-2A": {0.4435, 0.4485}, "1/2-13 UNC 3a": {0.4463, 0.4500}, "1/2-13-2B": {0.4500, 0.4565}, "1/2-13 UNC-3B": {0.4500, 0.4548},
		"#10-32 UNF-2B": {4.310 / 25.4, 4.409 / 25.4}, "#10-32 UNF-3B": {4.310 / 25.4, 4.384 / 25.4}, "1/4-28 UNF-2B": {5.761 / 25.4, 5.870 / 25.4},
		"1/2-20 UNF-2B": {11.874 / 25.4, 12.017 / 25.4}, "1/2-20 UNF - 3B": {11.874 / 25.4, 11.981 / 25.4},
	} {
		got, err := Parse(name)
		if err != nil {
			t.Error(err)
			continue
		}
		if lo, hi := got.PitchLimitsMm(); !near(lo/25.4, want[0], 0.00003) || !near(hi/25.4, want[1], 0.00003) {
			t.Errorf("%s: %.5f to %.5f in, want %v", name, lo/25.4, hi/25.4, want)
		}
	}
	for name, series := range map[string]string{
		"5/8-12 UN": "UN", "5/8-16 UN": "UN", "5/8-20 UN": "UN", "5/8-24 UNEF": "UNEF", "5/8-28 UN": "UN", "5/8-32 UN": "UN", "11/16-12 UN": "UN", "11/16-16 UN": "UN",
		"11/16-20 UN": "UN", "11/16-24 UNEF": "UNEF", "1/4-32 UNEF": "UNEF", "1/4-32 UN": "UNEF", "1-9/16-18 UNEF-2A": "UNEF", "#12-32 UNEF": "UNEF", "2-20 UN": "UN",
	} {
		if got, err := Parse(name); err != nil || got.Series != series {
			t.Errorf("%s: %s, %v", name, got.Series, err)
		}
	}
	for _, n := range nutRows { // each says which nut goes on it, and what stands before them in the list says nothing of a nut
		if got, err := Parse(fmt.Sprintf("%s-%g UNS", n.size, n.tpi)); err != nil || got.Source.String() != "ABMA 8.2, lock nut "+n.nut {
			t.Errorf("%s: %s, %v", n.nut, got.Source, err)
		}
	}
	for _, u := range unified() {
		if u.Series != UnifiedUNS && !strings.HasPrefix(u.Source.String(), "ASME B1.1") {
			t.Errorf("%s: %s", u.Designation, u.Source)
		}
	}
	for _, name := range []string{"1/2-13 UNC-4A", "1/2-13 UNC-2C", "1 1/2-32 UN", "4-20 UN", "1/2-13 UNC2A-2A-2A", "-2A", "M8-2A"} {
		if got, err := Parse(name); err == nil {
			t.Errorf("%s is %s", name, got.Designation)
		}
	}
}

// A left-hand thread is cut as its right-hand one, and is none of those that go with it (ISO 965-1 marks it LH).
func TestLeftHand(t *testing.T) {
	for given, want := range map[string]string{"M24x1.5 LH": "M24x1.5", "m20-lh": "M20", "1/2-13 UNC-LH": "1/2-13 UNC", "M24x1.5LH": "M24x1.5"} {
		got, err := Parse(given)
		right, no := Parse(want)
		if err != nil || no != nil || !got.LeftHand || right.LeftHand || got.Designation != want+" LH" {
			t.Errorf("%s: %+v, %v", given, got, err)
		}
		again, err := Parse(got.Designation)
		if err != nil || !reflect.DeepEqual(again, got) {
			t.Errorf("%s read again: %+v, %v", given, again, err)
		}
		right.Designation, right.LeftHand = got.Designation, true
		if !reflect.DeepEqual(got, right) {
			t.Errorf("%s: %+v, want %+v", given, got, right)
		}
	}
}
