package words

import (
	"strings"
	"testing"

	"centrepop/layout/measured"
	"centrepop/parts"
)

var (
	readings = []measured.Reading{{From: 1, To: 3, Kind: measured.Over}, {From: 2, To: measured.Spigot, Kind: measured.Between}}
	inMm     = Flange{Writer{parts.Millimetres}, readings}
	inInches = Flange{Writer{parts.Inches}, readings}
)

// TestRefused: every fault of a survey has words, with its numbers in the
// file's units.
func TestRefused(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		e          measured.InputError
		mm, inches string
		right      string
	}{
		{measured.InputError{Code: measured.HolesCount, Reading: -1, Mm: 2}, "from 2 holes", "from 2 holes", "3 to 36 holes"},
		{measured.InputError{Code: measured.ReadingsCount, Reading: -1}, "there are 0 readings", "", "1 to 400"},
		{measured.InputError{Code: measured.FirstRange, Reading: -1, Hole: 1, Mm: 400}, "hole 1 is 400", "hole 1 is 400", "360 degrees"},
		{measured.InputError{Code: measured.HoleRange, Reading: -1, Hole: 2, Mm: 20320}, "hole 2 is 20320 mm", "hole 2 is 800 in", "above 0"},
		{measured.InputError{Code: measured.HolePlusMinus, Reading: -1, Hole: 2, Mm: 2.54}, "hole 2 has ±2.54 mm", "hole 2 has ±0.1 in", "0.001 mm to a tenth"},
		{measured.InputError{Code: measured.SpigotRange, Reading: -1, Mm: 25.4}, "spigot of 25.4 mm", "spigot of 1 in", "to a tenth"},
		{measured.InputError{Code: measured.NoSuchHole, Hole: 9}, "to hole 9", "to hole 9", "one of the holes"},
		{measured.InputError{Code: measured.SameHole, Hole: 1}, "from hole 1 to itself", "", "two different"},
		{measured.InputError{Code: measured.UnknownKind}, "jaws", "", "over, between or centres"},
		{measured.InputError{Code: measured.LengthRange, Mm: 254000}, "1–3 over is 254000 mm", "1–3 over is 10000 in", "above 0"},
		{measured.InputError{Code: measured.ReadingPlusMinus, Reading: 1, Mm: 5.08}, "2–spigot between has ±5.08 mm", "has ±0.2 in", "a tenth of the reading"},
		{measured.InputError{Code: measured.NoSpigot, Reading: 1}, "2–spigot between needs the spigot", "", "diameter too"},
		{measured.InputError{Code: measured.TooShort, Mm: 12.7}, "is 12.7 mm, less", "is 0.5 in, less", "far edges"},
		{measured.InputError{Code: measured.FewToSpigot, Reading: -1, Mm: 2}, "2 readings to the spigot", "", "three holes"},
		{measured.InputError{Code: measured.Undetermined, Reading: -1, Hole: 4}, "hole 4 has too few", "", "both neighbours"},
		{measured.InputError{Code: measured.NotClockwise, Reading: -1, Hole: 3}, "hole 3 does not", "", "clockwise"},
	} {
		what, right := inMm.Refused(&test.e)
		if !strings.Contains(what, test.mm) || !strings.Contains(right, test.right) || strings.ContainsAny(what+right, "{}") {
			t.Errorf("%s: %q, %q", test.e.Code, what, right)
		}
		if what, right = inInches.Refused(&test.e); !strings.Contains(what, test.inches) || strings.Contains(what+right, "mm") {
			t.Errorf("%s in inches: %q, %q", test.e.Code, what, right)
		}
	}
	if len(refused) != 16 {
		t.Errorf("%d codes have words", len(refused))
	}
}

func TestInconsistent(t *testing.T) {
	t.Parallel()
	one := measured.Suspect{Entry: measured.Entry{Reading: 1}, WantMm: 201.9, OffMm: 2.96}
	two := measured.Suspect{Entry: measured.Entry{Hole: 2}, WantMm: 14.5, OffMm: -0.5}
	for _, test := range []struct {
		e           measured.Inconsistent
		i           int
		what, right string
	}{
		{measured.Inconsistent{Suspects: []measured.Suspect{one}, Equal: true}, 0, "the readings do not close: 1–3 over looks wrong; the others ask for 201.900 (+2.960 mm), taking the holes as equally spaced", "measure it again"},
		{measured.Inconsistent{Suspects: []measured.Suspect{one, two}}, 0, "the readings do not close: one of 1–3 over, diameter of hole 2 looks wrong; here the others ask for 201.900 (+2.960 mm)", "measure it again"},
		{measured.Inconsistent{Suspects: []measured.Suspect{one, two}, CaliperMm: 0.1}, 1, "or this one: the others ask for 14.500 (-0.500 mm)", "measure it again; or, if all were read with care, say how good the caliper is: caliper: 0.1 mm"},
		{measured.Inconsistent{WorstMm: 0.456}, 0, "the readings do not close: they leave up to 0.46 mm, and no single one is to blame", "measure again, each hole to the next but one as well; look for a swapped over and between, and for wrong hole numbers"},
	} {
		if what, right := inMm.Inconsistent(&test.e, test.i); what != test.what || right != test.right {
			t.Errorf("%q, %q", what, right)
		}
	}
	if what, _ := inInches.Inconsistent(&measured.Inconsistent{Suspects: []measured.Suspect{one}}, 0); !strings.HasSuffix(what, "ask for 7.9488 (+0.1165 in)") {
		t.Errorf("%q", what)
	}
}

func TestNearest(t *testing.T) {
	t.Parallel()
	m := &measured.Match{
		Standard:   measured.Standard{Name: "FF300", PitchMm: 300, SpigotMm: 250, Holes: 4, Thread: "M16", Spigots: []measured.SpigotClass{{Class: "j6"}, {Class: "h6"}}},
		PitchOffMm: 0.1234, Source: "table", Matches: true, SpigotClasses: []string{"h6"},
	}
	if got, want := inMm.Nearest(m), "this is FF300: pitch circle 300 mm (+0.123 mm), spigot 250 mm h6, 4 holes, bolt M16 (table)"; got != want {
		t.Errorf("%q", got)
	}
	m.Matches, m.SpigotClasses = false, nil
	m.Against = []measured.Difference{
		{Code: measured.PitchDiffers, OffMm: -2.54}, {Code: measured.CountDiffers, OffMm: -1}, {Code: measured.SpacingDiffers, Hole: 2, OffMm: 0.6},
		{Code: measured.CircleDiffers, Hole: 3, OffMm: 0.7}, {Code: measured.SpigotDiffers, OffMm: 0.25}, {Code: measured.HolesDiffer, Hole: 4, OffMm: -1},
	}
	if got, want := inMm.Nearest(m), "nearest is FF300: pitch circle 300 mm (+0.123 mm), spigot 250 mm j6 or h6, 4 holes, bolt M16; but the pitch circle is -2.540 mm off; it has -1 holes; "+
		"hole 2 is +0.600 mm off equal spacing; hole 3 is +0.700 mm off the circle; the spigot is +0.250 mm off, beyond its classes; hole 4 is -1.000 mm off its diameter (table)"; got != want {
		t.Errorf("%q", got)
	}
	if got := inInches.Nearest(m); strings.Contains(got, "mm") || !strings.Contains(got, "circle is -0.1000 in off") {
		t.Errorf("%q", got)
	}
	if got := inMm.Nearest(nil); got != "no standard motor flange is near" {
		t.Errorf("%q", got)
	}
}

func TestMating(t *testing.T) {
	t.Parallel()
	m := &measured.Mating{Spigot: measured.SpigotUndecided, ClearanceMm: -0.0432, ClearanceToMm: 0.0488, TurnDeg: 0.05, Mirrored: true, MarginMm: 0.129, Concentric: true,
		Pairs: []measured.Pair{{Flange: 1, Drawn: 2, OffMm: 0.1, DoubtMm: 0.2, PlayMm: 0.3, MarginMm: -0.254, NeedsMm: 12.7004}}}
	got := strings.Join(inMm.Mating(m, true), "\n")
	want := `  whether the spigot enters, a caliper cannot decide: it may be 0.043 mm too large or 0.049 mm loose; the standard means it to be a transition fit; it is taken to be in the middle of the holes, as nothing was measured to it
  only with the flange against the other face than the holes are marked on
  with the flange turned +0.050° clockwise
  flange  part      off    doubt     play   margin   hole needed
       1     2    0.100    0.200    0.300   -0.254   Ø12.71
  the bolts go in, with 0.12 mm to spare at the tightest`
	if got != want {
		t.Errorf("%s", got)
	}
	m.MarginMm, m.TurnDeg, m.Mirrored, m.Concentric = -0.1, 0.049, false, false
	if got := inInches.Mating(m, false); len(got) != 3 || !strings.HasSuffix(got[0], "0.0017 in too large or 0.0019 in loose; measure both with micrometers") || !strings.HasSuffix(got[2], "-0.0100   Ø0.501 in") {
		t.Errorf("%q", got)
	}
	m.Spigot, m.ClearanceToMm = measured.SpigotTight, -0.1
	if got := inMm.SpigotFit(m, true); got != "the spigot is at least 0.1 mm larger than the largest bore" {
		t.Errorf("%q", got)
	}
	if got := inMm.Mating(&measured.Mating{}, false); len(got) != 2 { // no spigot, no pairs, nothing to spare
		t.Errorf("%q", got)
	}
	p := m.Pairs[0]
	if got, want := inInches.HoleTight(p, "M12"), "hole 1 of the flange and hole 2 of the part: the bolt M12 may not pass, by 0.01 in; a drawn hole of Ø0.501 in would do"; got != want {
		t.Errorf("%q", got)
	}
	p.NeedsMm, p.FlangeMinMm = 0, 11.8765
	if got := inMm.HoleTight(p, "M12"); !strings.HasSuffix(got, "; the flange's own hole may be only Ø11.88") {
		t.Errorf("%q", got)
	}
}

// TestResult: the verdicts on the shape, and what was taken for granted.
func TestResult(t *testing.T) {
	t.Parallel()
	r := &measured.Result{PCDMm: 265, PCDUMm: 0.01, SpigotMm: 230, SpigotUMm: 0.005, Centred: &measured.Offset{XMm: 0.1, YMm: -0.2, UMm: 0.03},
		Holes: []measured.HoleResult{{N: 1, AngleDeg: 45}}, OneCircle: true, CircleHole: 1, CircleOffMm: 0.012, EqualHole: 2, EqualOffMm: -0.5, Coverage: "k"}
	got := strings.Join(inMm.Result("", r), "\n")
	for _, want := range []string{
		"flange: pitch circle 265.000 ± 0.020 mm, 1 holes\n", "spigot 230.000 ± 0.010 mm, its centre at 0.100, -0.200 ± 0.060 from",
		"\non one circle, as far as the readings tell (hole 1 is furthest off: +0.012 mm)\n", "\nnot equally spaced: hole 2 is -0.500 mm off\n",
		"\nno reading checks another: a wrong one would not show\n", "\n(± is the k)\n(every hole's radius is from the readings alone)",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in\n%s", want, got)
		}
	}
	r.Redundancy, r.ScatterMm, r.Residuals = 1, 0.1, []measured.Residual{{Entry: measured.Entry{Reading: 2}, MeasuredMm: 25.4, OffMm: -0.0254}, {}}
	got = strings.Join(inInches.Result("pump", r), "\n")
	for _, want := range []string{"pump: pitch circle 10.4331 ± 0.0008 in", "\nreadings more than needed: 1; measured less fitted:\n  2–spigot between        1.0000  -0.0010 in\n  spigot diameter",
		"\n(where the readings leave it open, holes are taken to be within about 0.008 in of the circle)"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in\n%s", want, got)
		}
	}
}
