package tapers

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"testing"

	"centrepop/layout/lookup"
)

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

func must(t *testing.T) func(Taper, error) Taper {
	return func(taper Taper, err error) Taper {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return taper
	}
}

// Included angles of ISO 1119 (general-purpose cones), degrees: from memory.
func TestSeries(t *testing.T) {
	t.Parallel()
	for ratio, want := range map[float64]float64{3: 18.92464442, 5: 11.42118627, 10: 5.72481045, 20: 2.86419237, 50: 1.14587740} {
		taper := must(t)(ByRatio(100, ratio, 30))
		if !near(taper.IncludedDeg(), want, 1e-8) || !near(taper.TopSlideDeg(), want/2, 1e-8) || !near(taper.Ratio(), ratio, 1e-9) {
			t.Errorf("1:%v: %v, want %v", ratio, taper.IncludedDeg(), want)
		}
		if back := must(t)(ByAngle(100, want, 30)); !near(back.SmallMm, taper.SmallMm, 1e-6) {
			t.Errorf("1:%v: small %v by angle, %v by ratio", ratio, back.SmallMm, taper.SmallMm)
		}
	}
	// 60° between centres: 1:0.866025.
	if got := must(t)(ByAngle(20, 60, 5)); !near(got.Ratio(), math.Sqrt(3)/2, 1e-12) {
		t.Errorf("%v", got.Ratio())
	}
}

// A published case of the two-roll method (machinecalcs.com, "How to measure a
// taper"), inches: stacks of 1 and 3, readings 2.812 and 2.612: half angle
// 2.862°, ratio 1:10. The taper stands on its large end.
func TestOverPins(t *testing.T) {
	t.Parallel()
	taper := must(t)(ByRatio(4, 10, 10))
	if !near(taper.TopSlideDeg(), 2.862, 5e-4) {
		t.Errorf("half angle %v", taper.TopSlideDeg())
	}
	low, err1 := taper.OverPinsMm(0.5, 1, false)
	high, err2 := taper.OverPinsMm(0.5, 3, false)
	if err1 != nil || err2 != nil || !near(low-high, 2.812-2.612, 1e-12) {
		t.Errorf("%v, %v, %v, %v", low, high, err1, err2)
	}
	// On its small end the handbook rule holds: M = d + p(1 + cot((90 − α/2)/2)).
	for _, c := range []Taper{taper, must(t)(ByAngle(40, 60, 20))} {
		half := c.TopSlideDeg() * math.Pi / 180
		want := c.SmallMm + 2*(1+1/math.Tan((math.Pi/2-half)/2))
		if got, err := c.OverPinsMm(2, 0, true); err != nil || !near(got, want, 1e-9) {
			t.Errorf("%+v: %v, %v, want %v", c, got, err, want)
		}
		// A pin's middle is as far from the flank as its radius.
		m, err := c.OverPinsMm(2, 3, false)
		x, z := m/2-1, 3+1.0
		distance := (x-c.LargeMm/2)*math.Cos(half) + z*math.Sin(half)
		if err != nil || !near(distance, 1, 1e-9) {
			t.Errorf("%+v: pin %v from the flank, %v", c, distance, err)
		}
	}
	for _, c := range []struct {
		pin, stack float64
		small      bool
	}{{0, 1, false}, {math.NaN(), 1, false}, {2, 9.1, false}, {2, -0.1, false}, {25, 0, true}, {2, math.NaN(), true}} {
		if got, err := taper.OverPinsMm(c.pin, c.stack, c.small); err == nil || got != 0 {
			t.Errorf("%+v is accepted", c)
		}
	}
	// The contact, not the middle of the pin, must be on the flank: at 60° it is
	// half a radius lower on the large end and half a radius higher on the small.
	steep := must(t)(ByAngle(40, 60, 20))
	for _, c := range []struct {
		stack       float64
		small, fine bool
	}{{18.9, false, true}, {19.1, false, false}, {16.9, true, true}, {17.1, true, false}} {
		if _, err := steep.OverPinsMm(4, c.stack, c.small); (err == nil) != c.fine {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

func TestPlanes(t *testing.T) {
	t.Parallel()
	taper := must(t)(New(40, 30, 100))
	for z, want := range map[float64]float64{0: 40, 100: 30, 25: 37.5} {
		if got, err := taper.DiameterMm(z); err != nil || !near(got, want, 1e-12) {
			t.Errorf("%v: %v, %v", z, got, err)
		}
	}
	for _, z := range []float64{-0.001, 100.001, math.NaN()} {
		if _, err := taper.DiameterMm(z); err == nil {
			t.Errorf("%v is accepted", z)
		}
	}
	if got := taper.AdvanceMm(0.05); !near(got, 0.5, 1e-12) {
		t.Error(got)
	}
	if got := taper.FlankMm(); !near(got, math.Sqrt(10025), 1e-12) {
		t.Error(got)
	}
	if got := taper.TopSlideDeg(); !near(got, 2.862405, 1e-6) {
		t.Error(got)
	}
}

func TestRefused(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		large, small, length float64
		what                 string
	}{
		{0, 0, 10, "large diameter"}, {math.NaN(), 1, 1, "large diameter"}, {40, 40, 10, "small diameter"}, {40, -1, 10, "small diameter"},
		{40, 41, 10, "small diameter"}, {40, 30, 0, "length"}, {40, 30, math.Inf(1), "length"}, {10001, 1, 1, "large diameter"},
	} {
		var r *lookup.RangeError
		if _, err := New(c.large, c.small, c.length); !errors.As(err, &r) || r.What != c.what {
			t.Errorf("%+v: %v", c, err)
		}
	}
	for _, end := range []float64{0, 0.4, 39.9} {
		if taper, err := New(40, end, 10); err != nil || taper.SmallMm != end {
			t.Errorf("down to %v: %+v, %v", end, taper, err)
		}
	}
	for _, err := range []error{
		func() error { _, err := ByRatio(40, 0, 10); return err }(), func() error { _, err := ByRatio(40, 0.1, 10); return err }(),
		func() error { _, err := ByAngle(40, 0, 10); return err }(), func() error { _, err := ByAngle(40, 180, 10); return err }(),
		func() error { _, err := ByAngle(40, 90, 21); return err }(),
	} {
		if err == nil {
			t.Error("accepted")
		}
	}
}

func TestSmall(t *testing.T) {
	t.Parallel()
	small := must(t)(ByAngle(0.9, 0.5, 0.8))
	if got, err := small.OverPinsMm(0.5, 0.1, true); err != nil || !near(got, 1.896, 1e-3) {
		t.Error(got, err)
	}
	if got := must(t)(ByRatio(0.9, 0.99, 0.5)); !near(got.SmallMm, 0.9-0.5/0.99, 1e-12) {
		t.Error(got)
	}
	// A pin may touch at the very foot of a sharp cone on its large end.
	flat := must(t)(ByAngle(40, 120, 10))
	if _, err := flat.OverPinsMm(2, 0, false); err != nil {
		t.Error(err)
	}
}

func ExampleTaper() {
	t, err := ByRatio(40, 10, 50)
	if err != nil {
		fmt.Println(err)
		return
	}
	over, _ := t.OverPinsMm(10, 0, true)
	fmt.Printf("small end %.3f, top slide %.3f degrees\n", t.SmallMm, t.TopSlideDeg())
	fmt.Printf("over pins of 10 on its small end %.3f\n", over)
	// Output:
	// small end 35.000, top slide 2.862 degrees
	// over pins of 10 on its small end 55.512
}

// TestRanges: what lies outside is refused with the range itself, which every
// printed refusal states; its ends are taken.
func TestRanges(t *testing.T) {
	t.Parallel()
	taper := must(t)(New(40, 30, 100))
	last := func(nothing any, err error) error {
		if err != nil && !reflect.ValueOf(nothing).IsZero() {
			t.Errorf("%v, and %v with it", err, nothing)
		}
		return err
	}
	for name, c := range map[string]struct {
		err         error
		above, upTo float64
	}{
		"round":       {last(Flats{6, 10001, 24}.Work()), 0, 10000},
		"six flats":   {last(Flats{6, 30, 31}.Work()), 0, 30},
		"one flat":    {last(Flats{1, 30, 31}.Work()), 15, 30},
		"knurl pitch": {last(Knurl{"RAA", 0.7}.Work(30)), 0, 1.6},
		"knurled":     {last(Knurl{"RAA", 1.2}.Work(12)), 12, 10000},
		"large end":   {last(New(10001, 1, 1)), 0, 10000},
		"small end":   {last(New(40, 41, 1)), 0, 40},
		"length":      {last(New(40, 30, 10001)), 0, 10000},
		"ratio":       {last(ByRatio(40, 2e6, 1)), 0, 1e6},
		"angle":       {last(ByAngle(40, 180, 1)), 0, 180},
		"plane":       {last(taper.DiameterMm(101)), 0, 100},
		"pin":         {last(taper.OverPinsMm(10001, 0, false)), 0, 10000},
		"stack":       {last(taper.OverPinsMm(2, 101, false)), 0, 100},
		"contact":     {last(taper.OverPinsMm(2, 99.5, false)), 0, 100},
	} {
		var r *lookup.RangeError
		if !errors.As(c.err, &r) || !near(r.Above, c.above, 1e-9) || !near(r.UpTo, c.upTo, 1e-9) {
			t.Errorf("%s: %v, want above %v and up to %v", name, c.err, c.above, c.upTo)
		}
	}
	for name, err := range map[string]error{
		"a point": last(New(40, 0, 10)), "twelve flats that meet": last(Flats{12, 30, 29}.Work()), "near 180°": last(ByAngle(40, 179.9, 0.01)), "ratio": last(ByRatio(40, 0.5, 1)), "knurl over ten pitches": last(Knurl{"RAA", 1.2}.Work(12.1)),
	} {
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	// The corners of a hexagon of 24 are 27.7128 across: less round leaves no
	// sharp corner.
	for round, full := range map[float64]bool{27.7129: true, 27.7127: false, 27.5: false} {
		if got, err := (Flats{6, round, 24}).Work(); err != nil || got.Full != full {
			t.Errorf("round %v: %+v, %v", round, got, err)
		}
	}
}
