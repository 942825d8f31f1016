package threads

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"centrepop/parts/golden"
)

// TestTapping6H: pitch, drill and limits of the minor diameter of every coarse metric
// thread, as a tap maker's sheet prints them.
func TestTapping6H(t *testing.T) {
	t.Parallel()
	for _, row := range golden.Table(t, "testdata/tapping_6h.csv", 40) {
		got, err := Parse("M" + row["d_mm"])
		if err != nil {
			t.Fatal(err)
		}
		lo, hi := got.MinorLimitsMm()
		if got.MajorMm < 1.6 { // 5H there
			hi = row.Number(t, "max_mm")
		}
		for column, value := range map[string]float64{"pitch_mm": got.PitchMm, "drill_mm": got.TapDrillMm, "min_mm": lo, "max_mm": hi} {
			if want := row.Number(t, column); !near(value, want, 0.0011) {
				t.Errorf("%s %s: %v, want %v", got.Designation, column, value, want)
			}
		}
	}
}

// pipeMajor are the major diameters of ISO 228-1 and ISO 7-1 in inches: to G4 those that
// a reprint of the pipe sizes (liquisearch.com) and a dealer's table (haustechnik-versand.com, in mm)
// print; 4 1/2 and up as a maker's catalogue prints DIN 259 (luitpoldschott.com), which took 25.40095 mm for the inch.
var pipeMajor = map[string]float64{
	"1/16": 7.723 / 25.4, "1/8": 0.383, "1/4": 0.518, "3/8": 0.656, "1/2": 0.825, "5/8": 0.902, "3/4": 1.041, "7/8": 1.189, "1": 1.309,
	"1 1/8": 1.492, "1 1/4": 1.650, "1 1/2": 1.882, "1 3/4": 2.116, "2": 2.347, "2 1/4": 2.587, "2 1/2": 2.960, "2 3/4": 3.210, "3": 3.460,
	"3 1/2": 3.950, "4": 4.450, "4 1/2": 125.735 / 25.40095, "5": 138.435 / 25.40095, "5 1/2": 151.135 / 25.40095, "6": 163.836 / 25.40095,
}

// basic are the major diameter, the pitch and the height of thread of a designation in
// mm, by itself and, for pipes, by pipeMajor: what the standards say of the name, not the
// product. A coarse metric thread, NPT and lead screws are left to their lists (0).
func basic(t *testing.T, name string, tpi float64) (d, p, height float64) {
	number := func(s string) float64 {
		var sum float64
		for _, part := range strings.Fields(s) {
			above, below, isFraction := strings.Cut(part, "/")
			x, err := strconv.ParseFloat(above, 64)
			if isFraction && err == nil {
				var under float64
				under, err = strconv.ParseFloat(below, 64)
				x /= under
			}
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			sum += x
		}
		return sum
	}
	const in = 25.4
	size, pitch, isInch := strings.Cut(name, "-")
	switch {
	case strings.HasSuffix(name, PipeNPT) || strings.HasPrefix(name, Trapezoidal) || strings.HasSuffix(name, Acme):
		return 0, 0, 0
	case isInch:
		p = in / number(strings.Fields(pitch)[0])
		if gauge, isNumber := strings.CutPrefix(size, "#"); isNumber {
			return in * (0.060 + 0.013*number(gauge)), p, 0.649519 * p // ASME B1.1: numbered sizes
		}
		return in * number(size), p, 0.649519 * p
	case strings.HasPrefix(name, "M"):
		size, pitch, isFine := strings.Cut(name[1:], "x")
		if !isFine {
			return 0, 0, 0
		}
		p = number(pitch)
		return number(size), p, 0.649519 * p
	}
	d = in * pipeMajor[strings.TrimLeft(name, "GRcp")]
	return d, in / tpi, math.Round(640.327*in/tpi) / 1000
}

// TestFormulas holds every row of threads_all.csv, not the product, against the
// formulas of its standard: ISO 68-1 and ASME B1.1, d2 = d - 0.649519 P and D1 = d -
// 1.082532 P; ISO 228-1 and ISO 7-1, d2 = d - h and D1 = d - 2 h. And the drill of each:
// d - P of ISO 2306 (inch: the next 64th above it) within the limits of the minor diameter
// by the formulas of ISO 965-1 (6H, as its table rounds them to preferred numbers, 4 %) and ASME B1.1 (2B; from memory),
// of G by ISO 228-1, of Rp by ISO 7-1.
func TestFormulas(t *testing.T) {
	t.Parallel()
	for _, row := range golden.Table(t, "../../testdata/reference/threads_all.csv", 700) {
		name := row["designation"]
		d, p, height := basic(t, name, row.Number(t, "tpi"))
		if d == 0 {
			continue
		}
		minor, inches := d-2*height, p/25.4
		high := map[string]float64{"28": 0.282, "19": 0.445, "14": 0.541, "11": 0.640}[row["tpi"]]
		is60 := strings.HasPrefix(name, "M") || strings.Contains(name, "-")
		if is60 {
			minor = d - 1.082532*p
			high = 25.4*(0.25*inches-0.4*inches*inches) + 0.017
		}
		if strings.HasPrefix(name, "M") {
			if high = 0.230 * math.Pow(p, 0.7); p < 1 {
				high = 0.433*p - 0.190*math.Pow(p, 1.22)
			}
			high = 1.04*high + 0.0005
		}
		for column, want := range map[string]float64{"pitch_mm": p, "major_mm": d, "pitch_diameter_mm": d - height, "minor_internal_mm": minor} {
			if got := row.Number(t, column); !near(got, want, 0.00071) {
				t.Errorf("%s %s: the row has %v, the formula gives %.4f", name, column, got, want)
			}
		}
		if got, err := Parse(name); err != nil || name[0] != 'R' && !strings.HasPrefix(name, "M1") {
			if _, hi := got.MinorLimitsMm(); hi > minor+high+0.001 || hi < minor+0.9*high-0.017 {
				t.Errorf("%s: the minor diameter is to be at most %v, %v, the formula gives %.3f", name, hi, err, minor+high)
			}
		}
		drill := row.Number(t, "tap_drill_mm")
		switch {
		case drill == 0 || strings.HasPrefix(name, "Rc"):
			continue
		case strings.HasPrefix(name, "Rp"): // 1 1/4 turns of the taper of its mate, 1 1/2 over 2 in
			high = 1.25 * p / 16
			if d > 60 {
				high = 1.5 * p / 16
			}
			minor -= high
			high *= 2
		case row["drill"] == "d - P":
			if past := drill - (d - p); past < -0.00051 || past > 0.2*p+0.00051 {
				t.Errorf("%s: drill %v, d - P is %.4f", name, drill, d-p)
			}
		}
		if drill < minor-0.0006 || drill > minor+high {
			t.Errorf("%s: drill %v is outside %.3f to %.3f", name, drill, minor, minor+high)
		}
	}
}
