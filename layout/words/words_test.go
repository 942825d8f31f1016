package words

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout/lookup"
	"centrepop/layout/measured"
	"centrepop/layout/plan"
	"centrepop/layout/press"
	"centrepop/parts"

	"pgregory.net/rapid"
)

// TestWriter: each way of writing a number, in both units, at sizes that have a
// digit more than is written.
func TestWriter(t *testing.T) {
	t.Parallel()
	mm, in := Writer{parts.Millimetres}, Writer{parts.Inches}
	refusal := lookup.Refuse("weld: %v in a wall of %v: not by any class", lookup.Mm(4.5), lookup.Mm(3))
	for _, c := range []struct{ name, got, want string }{
		{"Size", mm.Size(114.3004), "114.3"}, {"Size", mm.Size(0.0015), "0.002"}, {"Size", in.Size(1.37506 * 25.4), "1.3751 in"},
		{"Size", mm.Size(103.9234), "103.92"}, {"Size", mm.Size(-0.9994), "-0.999"}, {"Size", mm.Size(1.0004), "1"}, {"Size", mm.Size(-1.2346), "-1.23"}, {"Size", in.Size(1.3125 * 25.4), "1.3125 in"},
		{"Said", mm.Said(0.5), "0.5 mm"}, {"Said", in.Said(0.5), "0.0197 in"},
		{"Read", mm.Read(1.2349), "1.23"}, {"Read", in.Read(1.2346 * 25.4), "1.235 in"},
		{"Taped", mm.Taped(260.36), "260.4"}, {"Taped", in.Taped(260.35), "10.25 in"},
		{"Near", mm.Near(0.34), "0.3 mm"}, {"Near", in.Near(0.34), "0.01 in"}, {"Near", mm.Near(0), "0 mm"}, {"Near", in.Near(-1), "0 in"}, {"Near", mm.Near(12.6), "13 mm"}, {"Near", mm.Near(0.05), "0.05 mm"},
		{"Dia", mm.Dia(90), "Ø90"}, {"Dia", in.Dia(25.4), "Ø1 in"},
		{"Drill", mm.Drill(8.5004), "Ø8.5"}, {"Drill", mm.Drill(11.1125), "Ø11.11"},
		{"Drill", in.Drill(8.5), "Ø0.3346 in (8.5 mm)"}, {"Drill", in.Drill(6.75), "Ø0.2657 in (6.75 mm)"}, {"Drill", in.Drill(11.1125), "Ø0.4375 in"}, {"Drill", in.Drill(19.05), "Ø0.75 in"}, {"Drill", in.Drill(8.5001), "Ø0.3346 in"}, {"Drill", in.Drill(0.05), "Ø0.002 in (0.05 mm)"},
		{"Setting", mm.Setting(0.0204), "0.02 mm"}, {"Setting", mm.Setting(0.0156), "0.016 mm"}, {"Setting", in.Setting(-0.0305), "-0.0012 in"},
		{"Exact", mm.Exact(12.345), "12.35"}, {"Exact", mm.Exact(12), "12.00"}, {"Exact", in.Exact(25.4), "1.0000"}, {"Exact", in.Exact(12.34), "0.4858"},
		{"Area", mm.Area(22.24), "22.2 mm²"}, {"Area", mm.Area(22.25), "22.3 mm²"}, {"Area", in.Area(22.2), "0.0344 in²"}, {"Area", in.Area(25.4 * 25.4), "1 in²"},
		{"Fine", mm.Fine(12.4, 34.4), "12.4 – 34.4 µm"}, {"Fine", in.Fine(25.4, 50.8), "0.001 – 0.002 in"}, {"Fine", in.Fine(12.7, 12.7), "0.0005 in"},
		{"Torque", mm.Torque(50), "50 N m"}, {"Torque", in.Torque(50), "37 lb ft (50 N m)"}, {"Torque", in.Torque(13.6), "10 lb ft (14 N m)"}, {"Torque", in.Torque(13.5), "119 lb in (14 N m)"}, {"TorqueAs", in.TorqueAs(13.5, 13.6), "10 lb ft (14 N m)"}, {"TorqueAs", in.TorqueAs(5, 13.5), "44 lb in (5 N m)"},
		{"Stresses", mm.Stresses(2.5, 7.6, 1), "2.5 – 7.6 MPa"}, {"Stresses", in.Stresses(2.5, 7.6, 1), "360 – 1100 psi"}, {"Stresses", in.Stresses(22, 66, 0), "3200 – 9600 psi"},
		{"Grams", mm.Grams(8.4), "8 g"}, {"Grams", mm.Grams(1.94), "1.9 g"}, {"Grams", in.Grams(6), "0.21 oz"},
		{"Torques", in.Torques(50, 135.58), "37 – 100 lb ft (50 – 136 N m)"},
		{"Force", mm.Force(444.8, 1), "0.4 kN"}, {"Force", in.Force(444.8, 1), "100 lbf (0.4 kN)"}, {"Forces", in.Forces(4448, 4960, 1), "1000 – 1120 lbf (4.4 – 5 kN)"}, {"Force", in.Force(44482, 0), "10000 lbf (44 kN)"},
		{"Limits", mm.Limits(90.0004, 90.0351), "90.001 – 90.035"}, {"Limits", in.Limits(90.0004, 90.0351), "3.5434 – 3.5446 in"}, {"Limits", mm.Limits(90, 90.035), "90.000 – 90.035"},
		{"Degrees", Degrees([]float64{30, 90.126}), "30°, 90.13°"}, {"Degrees", Degrees(make([]float64, 9)), "0°, 0°, 0°, 0°, 0°, 0°, 0°, 0°, 0°"},
		{"CountOf", CountOf(1), ""}, {"CountOf", CountOf(6), "6 × "}, {"CountOf", CountOf(2), "2 × "},
		{"Join", Join("; ", "a", "", "b"), "a; b"}, {"OrNone", OrNone(""), "no tolerance given"}, {"OrNone", OrNone("1 – 2"), "1 – 2"},
		{"Between", Between(12.04, 34.06, 1, "kN"), "12 – 34.1 kN"}, {"Between", Between(12.01, 12.04, 1, "kN"), "12 kN"}, {"Between", Between(2, 2, 0, ""), "2 – 2"},
		{"Trim", Trim(-0.0004, 3), "0"}, {"Trim", Trim(100, 0), "100"}, {"Trim", Trim(1.005, 2), "1.01"}, {"Trim", Trim(-1.005, 2), "-1.01"},
		{"Lower", Lower("Ähre AB"), "ähre AB"}, {"Capital", Capital("ölig"), "Ölig"}, {"Capital", Capital(""), ""}, {"Spaced", Spaced("bore-back"), "bore back"},
		{"Carriers", mm.Carriers(25), ""}, {"Carriers", mm.Carriers(25.1), "hoist or two people (over 25 kg, ISO 11228-1)"}, {"Carriers", mm.Carriers(33.3), "hoist or two people (over 25 kg, ISO 11228-1)"},
		{"Carriers", mm.Carriers(33.4), "hoist, with rated slings, by local lifting rules"},
		{"Carriers", in.Carriers(30), "hoist or two people (over 55 lb, ISO 11228-1)"},
		{"Kg", in.Arg(plan.Of(plan.Kg, 45.36)), "100 lb"}, {"Kg", mm.Arg(plan.Of(plan.Kg, 45.36)), "45.4 kg"},
		{"Newton", mm.Arg(plan.Of(plan.Newton, 999600)), "1000 kN"}, {"Newton", in.Arg(plan.Of(plan.Newton, 999600)), "224700 lbf (1000 kN)"},
		{"MPa", mm.Arg(plan.Of(plan.MPa, 12.345)), "12.35 MPa"}, {"MPa", in.Arg(plan.Of(plan.MPa, 12.345)), "1790 psi"},
		{"Refused", mm.Refused(refusal), "4.5 mm in a wall of 3 mm: not by any class"}, {"Refused", in.Refused(refusal), "0.1772 in in a wall of 0.1181 in: not by any class"},
		{"Refused", in.Refused(fmt.Errorf("tube: %w", refusal)), "weld: 4.5 mm in a wall of 3 mm: not by any class"},
		{"Refused", in.Refused(errors.New(`material "X" is: not known`)), `material "X" is: not known`},
		{"Miss", mm.Arg(plan.Arg{Unit: plan.Miss, Value: 20}), "20"}, {"Miss", mm.Arg(plan.Arg{Unit: plan.Miss, High: 2.5}), "2.5°"}, {"Miss", in.Arg(plan.Arg{Unit: plan.Miss, Value: 25.4, High: 90}), "1 in and 90°"},
		{"Preheat", mm.Arg(plan.Arg{Unit: plan.Preheat, Value: 149.6, High: 250.4}), "preheat to 150 – 250 °C (a start, common practice), "},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.name, c.got, c.want)
		}
	}
}

// TestLimitsInward: what is printed lies within the limits, less than a digit
// from them, or a tenth of the room, or where there is much room the digit
// before.
func TestLimitsInward(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		lo := rapid.Float64Range(0.1, 5000).Draw(t, "least")
		hi := lo + rapid.Float64Range(0.01, 1).Draw(t, "wide")
		for units, digit := range map[parts.Units]float64{parts.Millimetres: 0.001, parts.Inches: 0.0001} {
			scale := 1.0
			if units == parts.Inches {
				scale = 25.4
			}
			most := math.Max(digit, limitLoss*(hi-lo)/scale)
			if hi-lo >= 100*digit*scale {
				most = math.Max(most, 10*digit)
			}
			text := strings.Split(strings.TrimSuffix(Writer{units}.Limits(lo, hi), " in"), " – ")
			a, err1 := strconv.ParseFloat(text[0], 64)
			b, err2 := strconv.ParseFloat(text[1], 64)
			if over, under := a-lo/scale, hi/scale-b; err1 != nil || err2 != nil || over < -2*digit*1e-3 || under < -2*digit*1e-3 || math.Max(over, under) > most*1.001 {
				t.Fatalf("%v to %v: %v", lo, hi, text)
			}
		}
	})
}

// TestAimInside: the size that is wanted lies inside its limits as they are printed. 2 mm
// is 0.07874 in, so limits of 2 to 2.1 are 0.0788 to 0.0826.
func TestAimInside(t *testing.T) {
	t.Parallel()
	in, mm := Writer{parts.Inches}, Writer{parts.Millimetres}
	for want, got := range map[string]string{
		"0.0788 in": in.Aim(2, 2, 2.1), "0.0826 in": in.Aim(2.1, 2, 2.1), "1.368 in": in.Aim(34.732, 34.732, 34.986), "1.25 in": in.Aim(31.75, 31.75, 31.775),
		"2": mm.Aim(2, 2, 2.1), "12.345": mm.Aim(12.3449, 12.3449, 12.365), "7": mm.Aim(7, 6.9, 7.1),
	} {
		if got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	if got := Fixed(5.8125*25.4, parts.Inches) + " " + in.Read(5.8125*25.4); got != "5.813 5.813 in" {
		t.Errorf("a half is rounded twice: %s", got)
	}
}

// TestCautionDigits: the figures of a caution, each with a digit more than is
// written.
func TestCautionDigits(t *testing.T) {
	t.Parallel()
	mm, in := Writer{parts.Millimetres}, Writer{parts.Inches}
	for _, c := range []struct {
		w    Writer
		c    press.Caution
		want string
	}{
		{mm, press.Caution{Code: press.Loose, Mm: 0.02346}, "0.023 mm of play"}, {in, press.Caution{Code: press.Loose, Mm: 0.0129}, "0.0005 in of play"},
		{in, press.Caution{Code: press.Flattened, Mm: 0.008, OfMm: 0.0129}, "Roughness of 0.0003 in takes up the whole interference of 0.0005 in"},
		{mm, press.Caution{Code: press.Breaks, Safety: 0.8456}, "stands 0.85 of this stress."}, {mm, press.Caution{Code: press.Yields, Safety: 0.8456}, "stands 0.85 of this stress elastically"},
		{mm, press.Caution{Code: press.Brittle, Safety: 1.6456, LeastSafety: 2.54}, "has a safety of 1.65 only; 2.5 is usual"},
		{mm, press.Caution{Code: press.BoreCloses, Mm: 0.02346}, "closes by 0.023 mm:"}, {in, press.Caution{Code: press.BoreCloses, Mm: 0.0129}, "closes by 0.0005 in:"},
		{mm, press.Caution{Code: press.TooHot, C: 510.6, LimitC: 249.6}, "511 °C is above the 250 °C for"},
		{mm, press.Caution{Code: press.TooCold, C: -556.4, LimitC: -195.8}, "-556 °C is below the -196 °C"}, {mm, press.Caution{Code: press.NeedsNitrogen, C: -120.4}, "-120 °C is colder"},
	} {
		if got := c.w.PressCaution(c.c); !strings.Contains(got, c.want) {
			t.Errorf("%s: %q, want %q in it", c.c.Code, got, c.want)
		}
	}
}

// TestFlangeFigures: a length without a sign is never −0, one off by nothing is
// +0; hole 1 and reading numbers at their ends.
func TestFlangeFigures(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ name, got, want string }{
		{"fixed", inMm.fixed(-0.0001), "0.000"}, {"fixed", inMm.fixed(1.23456), "1.235"}, {"fixed", inInches.fixed(-0.0001), "0.0000"}, {"fixed", inInches.fixed(25.4), "1.0000"},
		{"off", inMm.off(0), "+0.000 mm"}, {"off", inMm.off(-0.5), "-0.500 mm"},
		{"entry", inMm.Entry(measured.Entry{Hole: 1}), "diameter of hole 1"}, {"entry", inMm.Entry(measured.Entry{}), "spigot diameter"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.name, c.got, c.want)
		}
	}
	for _, reading := range []int{-1, len(inMm.Readings)} {
		if what, _ := inMm.Refused(&measured.InputError{Code: measured.NoSpigot, Reading: reading}); what != "reading  needs the spigot" {
			t.Errorf("reading %d: %q", reading, what)
		}
	}
	if what, _ := inMm.Refused(&measured.InputError{Code: measured.FirstRange, Reading: -1, Mm: 400.126}); what != "the clock angle of hole 1 is 400.13" {
		t.Errorf("%q", what)
	}
	r := &measured.Result{PCDMm: 265, Holes: []measured.HoleResult{{N: 1, AngleDeg: 45, AngleUDeg: 0.0125, RadiusMm: 132.5, DiameterMm: 15}}}
	lines := inMm.Result("f", r)
	if len(lines) != 8 || !strings.Contains(lines[2], "45.000 ± 0.025 ") {
		t.Errorf("no spigot: %q", lines)
	}
	r.SpigotMm = 0.5
	if lines := inMm.Result("f", r); len(lines) != 9 || lines[1] != "spigot 0.500 ± 0.000 mm" {
		t.Errorf("a small spigot: %q", lines)
	}
	p := measured.Pair{Flange: 1, Drawn: 2, FlangeMinMm: 301.6}
	if got := inInches.HoleTight(p, "M12"); !strings.HasSuffix(got, "may be only Ø11.874 in") {
		t.Errorf("%q", got)
	}
}

// Readout: zeros are kept, so that columns line up, and no zero has a sign.
func TestReadout(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		mm    float64
		units parts.Units
		want  string
	}{{12.34567, parts.Millimetres, "12.346"}, {25.4, parts.Inches, "1.0000"}, {-1.27, parts.Inches, "-0.0500"}, {-0.0001, parts.Millimetres, "0.000"}} {
		if got := Readout(c.mm, c.units); got != c.want {
			t.Errorf("%v: %s, want %s", c.mm, got, c.want)
		}
	}
}

// TestEither: the first text where it is so, and only then.
func TestEither(t *testing.T) {
	for _, c := range []struct {
		is           bool
		either, when string
	}{{true, "yes", "yes"}, {false, "no", ""}} {
		if got := Either(c.is, "yes", "no"); got != c.either {
			t.Errorf("Either(%v) is %q, want %q", c.is, got, c.either)
		}
		if got := When(c.is, "yes"); got != c.when {
			t.Errorf("When(%v) is %q, want %q", c.is, got, c.when)
		}
	}
}
