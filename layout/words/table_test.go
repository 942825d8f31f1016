package words

import (
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

func TestTableFormats(t *testing.T) {
	mm, in := Writer{parts.Millimetres}, Writer{parts.Inches}
	for _, c := range []struct{ got, want string }{
		{Fixed(35, parts.Millimetres), "35.00"}, {Fixed(-0.001, parts.Millimetres), "0.00"},
		{Fixed(-12.7, parts.Inches), "-0.500"}, {Fixed(1e-9, parts.Inches), "0.000"},
		{Short(8.5, parts.Millimetres), "8.5"}, {Short(11, parts.Millimetres), "11"}, {Short(100, parts.Millimetres), "100"},
		{Short(11.1125, parts.Inches), "0.438"}, {Angle(360.0 / 7), "51.43°"}, {Angle(30), "30°"}, {FineAngle(360.0 / 7), "51.429°"},
		{mm.Mass(0), "not known"}, {mm.Mass(0.6551), "0.655 kg"}, {mm.Mass(13.44), "13.4 kg"}, {mm.Mass(2.314), "2.31 kg"}, {mm.Mass(250.4), "250 kg"},
		{in.Mass(0.45359237), "1.00 lb"}, {in.Mass(100), "220 lb"}, {in.RoundMass(0.2, 2), "0.44 lb"}, {mm.RoundMass(0.2, 2), "0.2 kg"},
		{PitchCircle(0, plan.XY{XMm: 3}, mm.Size), ""}, {PitchCircle(140, plan.XY{}, mm.Size), "PCD 140"},
		{PitchCircle(140, plan.XY{YMm: -40}, mm.Size), "PCD 140 about x 0, y -40"}, {PitchCircle(25.4, plan.XY{XMm: 12.7, YMm: 6.35}, in.Size), "PCD 1 in about x 0.5 in, y 0.25 in"},
		{Span(1, 6), "1–6"}, {Span(7, 1), "7"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

// TestEqualChords: chords of one length stand together where the first of them does.
func TestEqualChords(t *testing.T) {
	var got []string
	chord := func(from, to int, mm float64) plan.Chord { return plan.Chord{From: from, To: to, CentreMm: mm} }
	for _, equal := range EqualChords([]plan.Chord{chord(1, 2, 50), chord(2, 3, 50.00001), chord(3, 4, 50+1e-9), chord(1, 4, 150)}) {
		got = append(got, Pairs(equal))
	}
	if want := []string{"1–2, 3–4", "2–3", "1–4"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestRoomIsRoundedUp(t *testing.T) {
	for mm, want := range map[float64][2]string{698.77: {"699", "27.52 in"}, 340: {"340", "13.39 in"}, 1100.0000001: {"1100", "43.31 in"}, 25.4: {"26", "1 in"}} {
		if got := (Writer{parts.Millimetres}).Room(mm); got != want[0] {
			t.Errorf("%v mm: %s, want %s", mm, got, want[0])
		}
		if got := (Writer{parts.Inches}).Room(mm); got != want[1] {
			t.Errorf("%v mm in inches: %s, want %s", mm, got, want[1])
		}
	}
}

// TestNarrow: a range for a narrow place, with a word where a minus would run into the dash.
func TestNarrow(t *testing.T) {
	t.Parallel()
	r := func(lo, hi float64) plan.Range { return plan.Range{Min: lo, Max: hi} }
	w := Writer{parts.Millimetres}
	for _, c := range [][2]string{
		{Narrow(r(12, 14.006), parts.Millimetres), "12–14.01 mm"}, {Narrow(r(-12.7, 25.4), parts.Inches), "-0.5 to 1 in"}, {Narrow(r(2, 2), parts.Millimetres), "2 mm"}, {Narrow(r(0.5, 0.9), parts.Millimetres), "0.5–0.9 mm"},
		{NarrowFine(r(-0.0005, 0.002), parts.Millimetres), "-1 to 2 µm"}, {NarrowFine(r(0.0254, 2.54), parts.Inches), "0.001–0.1 in"},
		{Sized(3.505, parts.Millimetres), "3.51 mm"}, {Sized(25.4, parts.Inches), "1 in"},
		{w.NarrowForces(12000, 34000, 1), "12–34 kN"}, {w.NarrowForces(12000, 12000, 1), "12 kN"},
	} {
		if c[0] != c[1] {
			t.Errorf("%q, want %q", c[0], c[1])
		}
	}
}

func TestNumbers(t *testing.T) {
	t.Parallel()
	for want, all := range map[string][]int{"": nil, "7": {7}, "1, 2": {1, 2}, "1–3": {1, 2, 3}, "19, 21–24, 26, 27": {19, 21, 22, 23, 24, 26, 27}, "3, 2, 1": {3, 2, 1}} {
		if got := Numbers(all); got != want {
			t.Errorf("%v: %q, want %q", all, got, want)
		}
	}
}
