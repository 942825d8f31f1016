package bend

import (
	"errors"
	"math"
	"slices"
	"testing"

	"centrepop/layout/lookup"
)

func square(t float64) Bend { return Bend{ThicknessMm: t, InsideRadiusMm: t, AngleDeg: 90} }

// A channel of 40, 100 and 40 outside in 2 mm: the blank is the sum less two
// deductions, the bend lines lie symmetrically.
func TestChannel(t *testing.T) {
	t.Parallel()
	f, err := Chain{LegsMm: []float64{40, 100, 40}, Bends: []Bend{square(2), square(2)}}.Blank()
	if err != nil {
		t.Fatal(err)
	}
	allowance := 2.65 * math.Pi / 2
	if want := 180 - 2*(8-allowance); !near(f.LengthMm, want, 1e-9) {
		t.Errorf("length %v, want %v", f.LengthMm, want)
	}
	first, second := f.Folds[0], f.Folds[1]
	if !near(first.FromMm, 36, 1e-9) || !near(first.ToMm, 36+allowance, 1e-9) || !near(first.LineMm, 36+allowance/2, 1e-9) {
		t.Errorf("%+v", first)
	}
	if !near(first.LineMm+second.LineMm, f.LengthMm, 1e-9) || !near(second.FromMm-first.ToMm, 92, 1e-9) {
		t.Errorf("not symmetric: %+v", f)
	}
}

// onChain is where a point lies on the blank that is so far along a leg from the corner
// before it: a set-back before the end of that bend.
func onChain(f Flat, leg int, from float64) float64 {
	if leg == 0 {
		return from
	}
	return f.Folds[leg-1].ToMm - f.Folds[leg-1].SetbackMm + from
}

// What is dimensioned on the folded part lands on the blank: on the first leg
// from its edge, on a later one from its corner.
func TestAt(t *testing.T) {
	t.Parallel()
	f, err := Chain{LegsMm: []float64{40, 100, 40}, Bends: []Bend{square(2), square(2)}}.Blank()
	if err != nil {
		t.Fatal(err)
	}
	allowance := 2.65 * math.Pi / 2
	for _, c := range []struct {
		leg        int
		from, want float64
	}{
		{0, 0, 0}, {0, 20, 20}, {0, 36, 36},
		{1, 50, f.LengthMm / 2}, {1, 4.5, 36 + allowance + 0.5}, {1, 96, 36 + allowance + 92},
		{2, 40, f.LengthMm}, {2, 10, f.LengthMm - 30},
	} {
		if got := onChain(f, c.leg, c.from); !near(got, c.want, 1e-9) {
			t.Errorf("leg %d at %v: %v, want %v", c.leg, c.from, got, c.want)
		}
	}
}

func TestChainRefused(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]Chain{
		"no legs":         {},
		"bends missing":   {LegsMm: []float64{40, 40}},
		"thickness":       {LegsMm: []float64{40, 40, 40}, Bends: []Bend{square(2), square(3)}},
		"bad bend":        {LegsMm: []float64{40, 40}, Bends: []Bend{{ThicknessMm: 2, InsideRadiusMm: 2}}},
		"end leg short":   {LegsMm: []float64{4, 40}, Bends: []Bend{square(2)}},
		"middle too near": {LegsMm: []float64{40, 8, 40}, Bends: []Bend{square(2), square(2)}},
		"leg NaN":         {LegsMm: []float64{math.NaN(), 40}, Bends: []Bend{square(2)}},
	} {
		if _, err := c.Blank(); err == nil {
			t.Errorf("%s is accepted", name)
		}
	}
	var r *lookup.RangeError
	_, err := Chain{LegsMm: []float64{40, 8, 40}, Bends: []Bend{square(2), square(2)}}.Blank()
	if !errors.As(err, &r) || r.What != "leg 2" || !near(r.Above, 8, 1e-9) {
		t.Errorf("%v", err)
	}
	if f, err := (Chain{LegsMm: []float64{70}}).Blank(); err != nil || f.LengthMm != 70 || f.Folds != nil {
		t.Errorf("a flat strip: %+v, %v", f, err)
	}
}

// Air bending chart (artizono.com, scribd.com 414866806): 6×t up to 2.5, 8×t
// from 3 to 8, 10×t to 10, 12×t above.
func TestDie(t *testing.T) {
	t.Parallel()
	for thickness, want := range map[float64]float64{
		0.5: 4, 1: 6, 1.5: 10, 2: 12, 2.5: 16, 3: 25, 4: 32, 5: 40, 6: 50, 8: 80, 8.5: 100, 10: 100, 12: 160, 16: 200, 20: 250,
	} {
		d, err := DieFor(thickness, false)
		if err != nil || d.OpeningMm != want || !near(d.RadiusMm, 0.16*want, 1e-12) {
			t.Errorf("%v: %+v, %v, want %v", thickness, d, err, want)
		}
	}
	// The columns of that chart again, as they stand in the code.
	if !slices.Equal(openings, []float64{4, 6, 7, 8, 10, 12, 14, 16, 18, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250}) {
		t.Errorf("the chart has other dies: %v", openings)
	}
	for _, o := range []float64{0.1875, 0.25, 0.3125, 0.375, 0.5, 0.625, 1, 1.25, 1.5} { // common practice, no source
		s := o / 6
		if s >= 0.11811 { // 3 mm
			s = o / 8
		}
		if d, err := DieFor(25.4*s, true); err != nil || !near(d.OpeningMm, 25.4*o, 1e-9) {
			t.Errorf("%v in: %+v, %v, want %v in", s, d, err, o)
		}
	}
	for _, o := range []float64{5, 6, 8, 10} { // twelve of more than 10 mm
		if d, err := DieFor(25.4*o/12, true); err != nil || !near(d.OpeningMm, 25.4*o, 1e-9) {
			t.Errorf("%v in: %+v, %v, want %v in", o/12, d, err, o)
		}
	}
	var r *lookup.RangeError
	if _, err := DieFor(21, false); !errors.As(err, &r) || !near(r.UpTo, 250.0/12, 1e-9) {
		t.Errorf("21: %v", err)
	}
	// An inch shop has dies of its own: six thicknesses of 5/64 are 15/32, eight of 1/8 an inch.
	for thickness, want := range map[float64]float64{0.03: 0.1875, 0.078125: 0.5, 0.1: 0.625, 0.115: 0.75, 0.125: 1, 0.1875: 1.5, 0.25: 2, 0.375: 4} {
		if d, err := DieFor(25.4*thickness, true); err != nil || !near(d.OpeningMm, 25.4*want, 1e-9) {
			t.Errorf("%v in: %+v, %v, want %v in", thickness, d, err, want)
		}
	}
	if _, err := DieFor(21.5, true); !errors.As(err, &r) || !near(r.UpTo, 254.0/12, 1e-9) {
		t.Errorf("21.5 in an inch shop: %v", err)
	}
	if _, err := DieFor(0, false); err == nil {
		t.Error("no thickness is accepted")
	}
}

// Minimum flange b and inside radius of the air bending force chart
// (scribd.com 414866806), inches by V opening in inches. Its b follows from the
// geometry to within a sixteenth and a few percent for the die's rounded edges.
func TestFlangeChart(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ v, b, radius float64 }{
		{0.5, 0.344, 0.078}, {0.625, 0.438, 0.094}, {1, 0.688, 0.156}, {1.25, 0.875, 0.203}, {1.5, 1.125, 0.25},
		{2, 1.375, 0.313}, {2.5, 1.75, 0.406}, {3, 2.188, 0.516}, {5, 3.5, 0.75}, {6, 4.5, 1.031}, {8, 5.5, 1.313}, {10, 6.875, 1.625},
	} {
		got, err := Die{OpeningMm: c.v * 25.4}.MinFlangeMm(90)
		if err != nil || !near(got/25.4, c.b, c.b*0.06) {
			t.Errorf("V %v: %v, %v, chart %v", c.v, got/25.4, err, c.b)
		}
		if !near(radiusShare*c.v, c.radius, c.radius*0.07) {
			t.Errorf("V %v: radius %v, chart %v", c.v, radiusShare*c.v, c.radius)
		}
	}
	// Nearly flat the leg must only cross half the opening; leaning back it needs more.
	for angle, want := range map[float64]float64{1e-6: 8, 90: 8 * math.Sqrt2, 120: 16} {
		if got, err := (Die{OpeningMm: 16}).MinFlangeMm(angle); err != nil || !near(got, want, 1e-9) {
			t.Errorf("%v°: %v, %v", angle, got, err)
		}
	}
	for _, angle := range []float64{0, 180, math.NaN()} {
		if _, err := (Die{OpeningMm: 16}).MinFlangeMm(angle); err == nil {
			t.Errorf("%v° is accepted", angle)
		}
	}
	if _, err := (Die{}).MinFlangeMm(90); err == nil {
		t.Error("no opening is accepted")
	}
}
