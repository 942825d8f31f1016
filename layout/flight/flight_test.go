package flight

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"centrepop/layout/lookup"
)

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

var mill = Flight{ShaftMm: 60, OutsideMm: 160, PitchMm: 120, ThicknessMm: 6}

// A published worked case (scribd.com 24008487), inches: flight 9, pitch 9, inside
// helix 12.55192704, outside helix 29.67217479. Its pipe is called 2.875, but the
// circumference it goes on with, 8.7493281, is that of 2.785. The inside by its
// second rule, r = B·b/(A − B).
func TestWorkedExample(t *testing.T) {
	t.Parallel()
	b, err := Flight{ShaftMm: 2.785, OutsideMm: 9, PitchMm: 9}.Blank()
	if err != nil || !near(b.InsideHelixMm, 12.55192704, 1e-5) || !near(b.OutsideHelixMm, 29.67217479, 1e-5) {
		t.Errorf("%+v, %v", b, err)
	}
	if want := 2 * 12.55192704 * 3.1075 / (29.67217479 - 12.55192704); !near(b.InsideMm, want, 1e-5) {
		t.Errorf("inside %v, want %v", b.InsideMm, want)
	}
}

// The edges of the flat ring are as long as the helices on the machine, which
// are measured here by walking along them in small straight steps.
func TestEdgesByIntegration(t *testing.T) {
	t.Parallel()
	const steps = 20000
	walk := func(diameter, pitch float64) (length float64) {
		r, turn := diameter/2, 2*math.Pi/steps
		for i := range steps {
			a, b := float64(i)*turn, float64(i+1)*turn
			dx, dy := r*(math.Cos(b)-math.Cos(a)), r*(math.Sin(b)-math.Sin(a))
			length += math.Sqrt(dx*dx + dy*dy + pitch*pitch/steps/steps)
		}
		return length
	}
	for _, f := range []Flight{mill, {ShaftMm: 20, OutsideMm: 300, PitchMm: 40}, {ShaftMm: 100, OutsideMm: 120, PitchMm: 400}} {
		b, err := f.Blank()
		if err != nil {
			t.Fatal(err)
		}
		sweep := (360 - b.GapDeg) * math.Pi / 180
		for _, edge := range []struct{ flat, onShaft float64 }{
			{sweep * b.InsideMm / 2, walk(f.ShaftMm, f.PitchMm)}, {sweep * b.OutsideMm / 2, walk(f.OutsideMm, f.PitchMm)},
		} {
			if !near(edge.flat, edge.onShaft, 1e-6*edge.onShaft) {
				t.Errorf("%+v: flat %v, on the shaft %v", f, edge.flat, edge.onShaft)
			}
		}
		if !near(b.OutsideMm-b.InsideMm, f.OutsideMm-f.ShaftMm, 1e-9) || !near(2*b.WidthMm, b.OutsideMm-b.InsideMm, 1e-9) {
			t.Errorf("%+v: the width is not kept: %+v", f, b)
		}
		mid := walk((f.ShaftMm+f.OutsideMm)/2, f.PitchMm)
		if flat := sweep * (b.InsideMm + b.OutsideMm) / 4; !near(flat*(1+b.MidStrain), mid, 1e-6*mid) {
			t.Errorf("%+v: middle %v flat, %v on the shaft, strain %v", f, flat, mid, b.MidStrain)
		}
		// The area of a ring sector, summed in thin rings.
		area := 0.0
		for i := range 1000 {
			area += sweep * (b.InsideMm/2 + (float64(i)+0.5)*b.WidthMm/1000) * b.WidthMm / 1000
		}
		if !near(area, b.AreaMm2, 1e-6*area) {
			t.Errorf("%+v: area %v, want %v", f, b.AreaMm2, area)
		}
	}
}

// Exact values of the pug mill's flight, to 1e-3.
func TestBlank(t *testing.T) {
	t.Parallel()
	b, err := mill.Blank()
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string][2]float64{
		"inside": {b.InsideMm, 76.178}, "outside": {b.OutsideMm, 176.178}, "gap": {b.GapDeg, 23.870},
		"inside gap": {b.InsideGapMm, 15.754}, "outside gap": {b.OutsideGapMm, 36.434},
		"inside lead": {b.InsideLeadDeg, 32.482}, "outside lead": {b.OutsideLeadDeg, 13.427},
	} {
		if !near(c[0], c[1], 6e-4) {
			t.Errorf("%s %v, want %v", name, c[0], c[1])
		}
	}
	if b.MidStrain > 0 || b.MidStrain < -0.05 {
		t.Errorf("the middle stretches by %v", b.MidStrain)
	}
	// A tiny pitch is a flat disc: no gap worth cutting, the shaft's own diameter.
	if b, err = (Flight{ShaftMm: 60, OutsideMm: 160, PitchMm: 0.01}).Blank(); err != nil || !near(b.GapDeg, 0, 1e-4) || !near(b.InsideMm, 60, 1e-4) {
		t.Errorf("%+v, %v", b, err)
	}
}

func TestFor(t *testing.T) {
	t.Parallel()
	b, _ := mill.Blank()
	ring := 360 - b.GapDeg
	for _, c := range []struct {
		length float64
		blanks int
		last   float64
	}{{480, 4, ring}, {480.01, 4, ring}, {500, 5, ring / 6}, {60, 1, ring / 2}, {119.999, 1, ring * 119.999 / 120}, {600, 5, ring}} {
		r, err := mill.For(c.length)
		if err != nil || r.Blanks != c.blanks || !near(r.LastDeg, c.last, 1e-6) || !near(r.Turns, c.length/120, 1e-9) {
			t.Errorf("%v: %+v, %v", c.length, r, err)
		}
		if !near(r.SeamMm, r.Turns*b.InsideHelixMm, 1e-6) || !near(r.VolumeMm3, 6*r.Turns*b.AreaMm2, 1e-3) {
			t.Errorf("%v: %+v", c.length, r)
		}
	}
	for _, l := range []float64{0, -1, 10001, math.NaN()} {
		if _, err := mill.For(l); err == nil {
			t.Errorf("%v is accepted", l)
		}
	}
	if _, err := (Flight{}).For(100); err == nil {
		t.Error("an empty flight is accepted")
	}
}

// A model's auger is worked out like a mill's.
func TestSmall(t *testing.T) {
	t.Parallel()
	model := Flight{ShaftMm: 0.5, OutsideMm: 0.9, PitchMm: 0.4, ThicknessMm: 0.2}
	if r, err := model.For(0.8); err != nil || r.Blanks != 2 {
		t.Errorf("%+v, %v", r, err)
	}
	// A thousandth of a turn, 0.12, too much is not another ring, more is.
	if r, _ := mill.For(480.13); r.Blanks != 5 {
		t.Errorf("%+v", r)
	}
	if r, _ := mill.For(480.1); r.Blanks != 4 {
		t.Errorf("%+v", r)
	}
}

func TestRefused(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		f    Flight
		what string
	}{
		{Flight{0, 160, 120, 6, ""}, "shaft diameter"}, {Flight{60, 60, 120, 6, ""}, "outside diameter"}, {Flight{60, 10001, 120, 6, ""}, "outside diameter"},
		{Flight{60, 160, 0, 6, ""}, "pitch"}, {Flight{60, 160, math.Inf(1), 6, ""}, "pitch"}, {Flight{60, 160, 120, -1, ""}, "thickness"},
		{Flight{60, 160, 120, 51, ""}, "thickness"}, {Flight{60, math.NaN(), 120, 6, ""}, "outside diameter"},
	} {
		var r *lookup.RangeError
		if _, err := c.f.Blank(); !errors.As(err, &r) || r.What != c.what {
			t.Errorf("%+v: %v", c.f, err)
		}
	}
	var u *lookup.UnknownError
	if _, err := (Flight{60, 160, 120, 0, "up"}).Blank(); !errors.As(err, &u) || len(u.Known) != 2 {
		t.Errorf("%v", err)
	}
	for _, hand := range []Hand{"", Right, Left} {
		if _, err := (Flight{60, 160, 120, 0, hand}).Blank(); err != nil {
			t.Error(err)
		}
	}
}

func ExampleFlight_Blank() {
	b, err := Flight{ShaftMm: 60, OutsideMm: 160, PitchMm: 120}.Blank()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("ring %.2f / %.2f, cut out %.1f degrees\n", b.InsideMm, b.OutsideMm, b.GapDeg)
	// Output: ring 76.18 / 176.18, cut out 23.9 degrees
}
