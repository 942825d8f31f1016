package layout

import (
	"math"
	"strings"
	"testing"
)

// badPrinter is what a printer does to a page: x' = across·x + up·sin θ·y,
// y' = up·cos θ·y, then all of it turned by the paper lying crooked.
func badPrinter(across, up, skewDeg, turnDeg float64) [2][2]float64 {
	s, c := math.Sincos(skewDeg * math.Pi / 180)
	st, ct := math.Sincos(turnDeg * math.Pi / 180)
	return product([2][2]float64{{ct, -st}, {st, ct}}, [2][2]float64{{across, up * s}, {0, up * c}})
}

func product(a, b [2][2]float64) (m [2][2]float64) {
	for i := range 2 {
		for j := range 2 {
			m[i][j] = a[i][0]*b[0][j] + a[i][1]*b[1][j]
		}
	}
	return m
}

func applied(m [2][2]float64, x, y float64) float64 {
	return math.Hypot(m[0][0]*x+m[0][1]*y, m[1][0]*x+m[1][1]*y)
}

// readings measures the rules and diagonals that a printer prints.
func readings(m [2][2]float64, w, h float64) PrinterReadings {
	return PrinterReadings{
		AcrossOfMm: w, AcrossMm: applied(m, w, 0), UpOfMm: h, UpMm: applied(m, 0, h),
		DiagonalsMm: [2]float64{applied(m, w, h), applied(m, -w, h)},
	}
}

// What is corrected and then printed is as large and as square as drawn:
// every length, whichever way it lies and however crooked the paper goes in.
func TestCorrectionUndoesPrinter(t *testing.T) {
	for _, p := range [][4]float64{
		{1, 1, 0, 0}, {0.973, 0.981, 0, 0}, {1.01, 0.99, 0.5, 0}, {0.96, 1.04, -1.9, 0.7}, {1.0027, 0.9988, 0.05, -1},
	} {
		m := badPrinter(p[0], p[1], p[2], p[3])
		c, err := NewCorrection("test", readings(m, 150, 250))
		if err != nil {
			t.Fatalf("%v: %v", p, err)
		}
		near(t, "skew", c.SkewDeg, p[2], 1e-9)
		near(t, "across", c.AcrossFactor, 1/p[0], 1e-12)
		near(t, "up", c.UpFactor, 1/p[1], 1e-12)
		// On its side the sheet is turned to the paper and the print back.
		turn, back := [2][2]float64{{0, -1}, {1, 0}}, [2][2]float64{{0, 1}, {-1, 0}}
		onSide := product(back, product(m, turn))
		for _, xy := range [][2]float64{{200, 0}, {0, 200}, {150, 130}, {-150, 130}} {
			want := math.Hypot(xy[0], xy[1])
			near(t, "upright", applied(product(m, c.Matrix(false)), xy[0], xy[1]), want, 1e-9)
			near(t, "on its side", applied(product(onSide, c.Matrix(true)), xy[0], xy[1]), want, 1e-9)
		}
	}
}

func TestCorrectionText(t *testing.T) {
	c, err := NewCorrection("office", PrinterReadings{AcrossOfMm: 150, AcrossMm: 149.6, UpOfMm: 250, UpMm: 250.3})
	if err != nil {
		t.Fatal(err)
	}
	// 150/149.6 = 1.00267 and 250/250.3 = 0.99880
	if c := (&Correction{"den", 1, 1, 0.1264}); c.Text() != "printer den: across ×1.0000, up ×1.0000, skew 0.13°" {
		t.Error(c.Text())
	}
	if want := "printer office: across ×1.0027, up ×0.9988, skew 0°"; c.Text() != want {
		t.Errorf("%q, want %q", c.Text(), want)
	}
}

func TestCorrectionRefuses(t *testing.T) {
	good := PrinterReadings{AcrossOfMm: 150, AcrossMm: 149.6, UpOfMm: 250, UpMm: 250.3}
	for _, c := range []struct {
		name   string
		change func(r *PrinterReadings)
		want   string
	}{
		{"fit to page", func(r *PrinterReadings) { r.AcrossMm = 142 }, "across: 142 mm instead of 150 mm is off by -5.3 %: more than 5 % is a wrong print setting, another paper or a slip; print at 100 % and measure again"},
		{"too large", func(r *PrinterReadings) { r.UpMm = 263 }, "up: 263 mm instead of 250 mm is off by 5.2 %: more"},
		{"too large by a hair", func(r *PrinterReadings) { r.UpMm = 262.5001 }, "more than 5 %"},
		{"too long a rule", func(r *PrinterReadings) { r.AcrossOfMm, r.AcrossMm = 10001, 10001 }, "across: 10001 mm of 10001 mm is no reading"},
		{"far too long", func(r *PrinterReadings) { r.AcrossMm = 20001 }, "no reading"},
		{"nothing", func(r *PrinterReadings) { r.UpMm = 0 }, "no reading"},
		{"negative", func(r *PrinterReadings) { r.UpMm = -250 }, "no reading"},
		{"NaN", func(r *PrinterReadings) { r.AcrossMm = math.NaN() }, "no reading"},
		{"infinite", func(r *PrinterReadings) { r.AcrossOfMm = math.Inf(1) }, "no reading"},
		{"one diagonal", func(r *PrinterReadings) { r.DiagonalsMm[0] = 291.5 }, "skew needs both diagonals"},
		{"the other diagonal", func(r *PrinterReadings) { r.DiagonalsMm[1] = 0.5 }, "both diagonals"},
		{"diagonal NaN", func(r *PrinterReadings) { r.DiagonalsMm = [2]float64{math.NaN(), 291.5} }, "diagonal 1: NaN mm of"},
		{"the other NaN", func(r *PrinterReadings) { r.DiagonalsMm = [2]float64{291.5, math.NaN()} }, "diagonal 2: NaN mm of"},
		{"diagonals do not fit", func(r *PrinterReadings) { r.DiagonalsMm = [2]float64{294, 293.5} }, "the diagonals average 293.8 mm and the rules ask for 291.6 mm: one of the four readings is wrong"},
		{"lengths to a thousandth, shares to a tenth", func(r *PrinterReadings) { r.AcrossOfMm, r.AcrossMm = 150.12346, 141.98765 }, "across: 141.988 mm instead of 150.123 mm is off by -5.4 %"},
		{"diagonals to a tenth: √((294.02² + 293.47²)/2) and √(149.6² + 250.2²)", func(r *PrinterReadings) { r.UpMm, r.DiagonalsMm = 250.2, [2]float64{294.02, 293.47} }, "average 293.7 mm and the rules ask for 291.5 mm:"},
		{"leaning", func(r *PrinterReadings) { r.DiagonalsMm = [2]float64{297.5, 285.4} }, "the diagonals differ by 12.1 mm: a skew over 2° is a slip in measuring"},
	} {
		r := good
		c.change(&r)
		if got, err := NewCorrection("x", r); err == nil || !strings.Contains(err.Error(), c.want) || got != nil {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
	if _, err := NewCorrection("x", PrinterReadings{AcrossOfMm: 10000, AcrossMm: 10000, UpOfMm: 10000, UpMm: 10000}); err != nil {
		t.Error(err)
	}
	// Each bound to a digit: 5 % of a rule; diagonals on average as long as √(150² + 250²) = 291.548 but for 1 mm; 2° is
	// d₁² − d₂² = 4 · 150 · 250 · sin 2° = 5234.92, so that 296.004 and 287.024 are within it.
	square := PrinterReadings{AcrossOfMm: 150, AcrossMm: 150, UpOfMm: 250, UpMm: 250}
	diagonals := func(d1, d2 float64) func(r *PrinterReadings) {
		return func(r *PrinterReadings) { r.DiagonalsMm = [2]float64{d1, d2} }
	}
	for i, c := range []struct {
		change func(r *PrinterReadings)
		ok     bool
	}{
		{func(r *PrinterReadings) { r.AcrossOfMm, r.AcrossMm, r.UpOfMm, r.UpMm = 0.5, 0.5, 0.5, 0.5 }, true}, {func(r *PrinterReadings) { r.AcrossMm = 157.5 }, true}, {func(r *PrinterReadings) { r.AcrossMm = 157.501 }, false}, {func(r *PrinterReadings) { r.UpMm = 237.5 }, true}, {func(r *PrinterReadings) { r.UpMm = 237.499 }, false},
		{diagonals(292.547, 292.547), true}, {diagonals(292.549, 292.549), false}, {diagonals(290.549, 290.549), true}, {diagonals(290.547, 290.547), false},
		{diagonals(296.002, 287.026), true}, {diagonals(287.026, 296.002), true}, {diagonals(296.006, 287.022), false}, {diagonals(287.022, 296.006), false},
		{func(r *PrinterReadings) { // 3 mm wide, so that a sine of 6.98 comes out
			*r = PrinterReadings{AcrossOfMm: 3, AcrossMm: 3, UpOfMm: 250, UpMm: 250, DiagonalsMm: [2]float64{260.5, 240}}
		}, false},
	} {
		r := square
		if c.change(&r); r.DiagonalsMm[0] != 0 && c.ok {
			want := math.Asin((r.DiagonalsMm[0]*r.DiagonalsMm[0]-r.DiagonalsMm[1]*r.DiagonalsMm[1])/(4*150*250)) * 180 / math.Pi
			if got, err := NewCorrection("x", r); err != nil || math.Abs(got.SkewDeg-want) > 1e-9 {
				t.Errorf("%d: %+v, %v, want %g°", i, got, err, want)
			}
		}
		if _, err := NewCorrection("x", r); (err == nil) != c.ok {
			t.Errorf("%d: %v, %v", i, r, err)
		}
	}
}

func TestCorrectionCheck(t *testing.T) {
	good := Correction{"x", 1 / 1.05, 1 / 0.95, -2}
	if err := good.Check(); err != nil {
		t.Error(err)
	}
	for _, c := range []*Correction{{"x", 1 / 0.95, 1 / 1.05, 2}, {"x", 1/0.95 + 1e-9, 1/1.05 - 1e-9, 2}, {"x", 1, 1, 0}} {
		if err := c.Check(); err != nil {
			t.Error(err)
		}
	}
	for _, c := range []Correction{{"x", 1.0527, 1, 0}, {"x", 1/0.95 + 1.05e-9, 1, 0}, {"x", 1, 1/1.05 - 1.05e-9, 0}, {"x", 0.9523, 1, 0}, {"x", 1, 1, -2.001}, {}, {"x", 1, 1.06, 0}, {"x", 0.95, 1, 0}, {"x", math.NaN(), 1, 0}, {"x", 1, 1, math.NaN()}, {"x", 1, 1, 2.1}, {"x", -1, 1, 0}} {
		if err := c.Check(); err == nil {
			t.Errorf("%v is accepted", c)
		}
	}
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}
