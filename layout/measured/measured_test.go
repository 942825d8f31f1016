package measured_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/measured"
	"centrepop/layout/threads"
)

// flange makes exact readings of holes at the given clock angles: every
// neighbour over, every pair that is nearly opposite between.
func flange(pcd, dia float64, angles ...float64) measured.Survey {
	s := measured.Survey{FirstDeg: angles[0]}
	n := len(angles)
	at := func(i int) (x, y float64) {
		sin, cos := math.Sincos(angles[i%n] * math.Pi / 180)
		return pcd / 2 * sin, pcd / 2 * cos
	}
	apart := func(i, j int) float64 {
		xi, yi := at(i)
		xj, yj := at(j)
		return math.Hypot(xi-xj, yi-yj)
	}
	for range n {
		s.Holes = append(s.Holes, measured.Diameter{Mm: dia})
	}
	for i := range n {
		j := (i + 1) % n
		s.Readings = append(s.Readings, measured.Reading{From: i + 1, To: j + 1, Kind: measured.Over, Mm: apart(i, j) + dia})
	}
	for i := range n {
		if j := i + n/2; n > 3 && j < n {
			s.Readings = append(s.Readings, measured.Reading{From: i + 1, To: j + 1, Kind: measured.Between, Mm: apart(i, j) - dia})
		}
	}
	return s
}

func fit(t *testing.T, s measured.Survey) *measured.Result {
	t.Helper()
	r, err := measured.Fit(s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.6f, want %.6f ± %g", what, got, want, tol)
	}
}

// TestExactReadings recovers flanges from readings without error.
func TestExactReadings(t *testing.T) {
	for _, test := range []struct {
		pcd, dia float64
		angles   []float64
	}{
		{265, 14.5, []float64{45, 135, 225, 315}},
		{500, 18.5, []float64{22.5, 67.5, 112.5, 157.5, 202.5, 247.5, 292.5, 337.5}},
		{120, 9, []float64{0, 120, 240}},
		{120, 9, []float64{0, 70, 160, 250, 301}},
		{180, 11, []float64{10, 55, 100, 145}}, // all on one side
		{180, 11, []float64{300, 20, 110, 200}},
		{180, 11, []float64{-45, 45, 135, 225}},
		{180, 11, []float64{0, 60.5, 120, 179, 240, 301}},
	} {
		r := fit(t, flange(test.pcd, test.dia, test.angles...))
		near(t, "pitch circle", r.PCDMm, test.pcd, 1e-5)
		for i, h := range r.Holes {
			near(t, "angle", h.AngleDeg, math.Mod(test.angles[i]+360, 360), 1e-5)
			near(t, "diameter", h.DiameterMm, test.dia, 1e-6)
			sin, cos := math.Sincos(test.angles[i] * math.Pi / 180)
			near(t, "x", h.XMm, test.pcd/2*sin, 1e-5)
			near(t, "y", h.YMm, test.pcd/2*cos, 1e-5)
		}
		if r.ChiSquare > 1e-6 {
			t.Errorf("%v: exact readings leave chi-square %g", test, r.ChiSquare)
		}
	}
}

// TestUncertaintyOfOneDiameter: on a circle with two exact opposite pairs the
// pitch circle is their mean, u = 0.05/√3/√2 for centre distances
// (JCGM 100:2008, 4.3.7 and 5.1.2), the chords adding nothing to first order
// but through their sum. Here only diagonals carry weight.
func TestUncertaintyOfOneDiameter(t *testing.T) {
	s := flange(265, 14.5, 45, 135, 225, 315)
	for i := range s.Readings {
		r := &s.Readings[i]
		if r.To-r.From == 2 {
			r.Kind, r.Mm = measured.Centres, 265
		} else {
			r.PlusMinusMm = 5 // next to nothing
		}
	}
	near(t, "u of the pitch circle", fit(t, s).PCDUMm, 0.05/math.Sqrt(3)/math.Sqrt2, 2e-4)
}

// TestCoverage draws surveys with uniform reading errors: the true pitch
// circle lies within the expanded uncertainty about 95 times in 100, and the
// refusal of consistent surveys is rare.
func TestCoverage(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 9))
	within, refused, unequal, runs := 0, 0, 0, 600
	for range runs {
		s := flange(265, 14.5, 45, 135, 225, 315)
		for i := range s.Readings {
			s.Readings[i].Mm += (2*rng.Float64() - 1) * 0.05
		}
		for i := range s.Holes {
			s.Holes[i].Mm += (2*rng.Float64() - 1) * 0.05
		}
		r, err := measured.Fit(s)
		if err != nil {
			refused++
			continue
		}
		if math.Abs(r.PCDMm-265) <= measured.CoverageFactor*r.PCDUMm {
			within++
		}
		if !r.Equal {
			unequal++
		}
	}
	share := float64(within) / float64(runs-refused)
	if share < 0.92 || share > 0.995 {
		t.Errorf("the true value is inside %.3f of the time", share)
	}
	if refused > runs/100 || unequal > runs/20 {
		t.Errorf("of %d good surveys %d were refused and %d called unequal", runs, refused, unequal)
	}
}

func TestEqualSpacing(t *testing.T) {
	if r := fit(t, flange(265, 14.5, 45, 135, 225, 315)); !r.Equal {
		t.Error("a square is called unequal")
	}
	r := fit(t, flange(265, 14.5, 45, 135.5, 225, 315)) // 1.16 mm
	if r.Equal || r.EqualHole != 2 {
		t.Errorf("hole 2 half a degree out: equal %v, hole %d", r.Equal, r.EqualHole)
	}
	near(t, "furthest", r.EqualOffMm, 0.375*math.Pi/180*132.5, 1e-4) // less its share of the mean
}

// TestEqualInDoubt: readings of a square that are all as far out, the chords long and
// the diagonals short, turn no hole: as long as they agree at all, they leave it equal.
func TestEqualInDoubt(t *testing.T) {
	most := 0.0
	for off := 0.0; off < 0.2; off += 0.005 {
		s := flange(265, 14.5, 45, 135, 225, 315)
		for i := range s.Readings {
			s.Readings[i].Mm += map[bool]float64{true: off, false: -off}[i < 4]
		}
		r, err := measured.Fit(s)
		if err != nil {
			break
		}
		if most = r.ChiSquare; !r.Equal {
			t.Errorf("%.3f out: called unequal", off)
		}
	}
	if most < 5 {
		t.Errorf("the readings agree no further than chi-square %.1f", most)
	}
}

// TestWrongReading puts one wrong reading into a survey and wants it named.
func TestWrongReading(t *testing.T) {
	for k := range 6 {
		s := flange(265, 14.5, 45, 135, 225, 315)
		s.Readings[k].Mm += 1
		_, err := measured.Fit(s)
		var bad *measured.Inconsistent
		if !errors.As(err, &bad) {
			t.Fatalf("reading %d 1 mm wrong: %v", k, err)
		}
		if len(bad.Suspects) != 1 || bad.Suspects[0].Entry != (measured.Entry{Reading: k + 1}) {
			t.Errorf("reading %d is wrong, suspected: %v", k, err)
			continue
		}
		near(t, "how wrong", bad.Suspects[0].OffMm, 1, 0.1)
	}
	// A digit dropped.
	s := flange(500, 18.5, 0, 45, 90, 135, 180, 225, 270, 315)
	s.Readings[3].Mm -= 100
	var bad *measured.Inconsistent
	if _, err := measured.Fit(s); !errors.As(err, &bad) || len(bad.Suspects) == 0 || bad.Suspects[0].Reading != 4 {
		t.Errorf("100 mm off: %v", err)
	}
}

// TestManyHoles: the search for a wrong reading stays quick on the largest
// survey.
func TestManyHoles(t *testing.T) {
	angles := make([]float64, measured.MaxHoles)
	for i := range angles {
		angles[i] = float64(i) * 10
	}
	s := flange(800, 18, angles...)
	s.Readings[5].Mm += 3
	var bad *measured.Inconsistent
	if _, err := measured.Fit(s); !errors.As(err, &bad) || len(bad.Suspects) != 1 || bad.Suspects[0].Reading != 6 {
		t.Errorf("got %v", err)
	}
}

// TestAmbiguous: on an unequal flange with one spare reading, it cannot be
// told which of the neighbours is wrong, and the message says so.
func TestAmbiguous(t *testing.T) {
	s := flange(265, 14.5, 40, 140, 220, 320)
	s.Readings[0].Mm += 2
	_, err := measured.Fit(s)
	var bad *measured.Inconsistent
	if !errors.As(err, &bad) {
		t.Fatal(err)
	}
	named := false
	for _, c := range bad.Suspects {
		named = named || c.Reading == 1
	}
	if !named || len(bad.Suspects) < 2 {
		t.Errorf("got %v", err)
	}
}

// TestSpigotOffset recovers a spigot that is not in the middle.
func TestSpigotOffset(t *testing.T) {
	s := flange(265, 14.5, 45, 135, 225, 315)
	s.Spigot = measured.Diameter{Mm: 230, PlusMinusMm: 0.02}
	for i, a := range []float64{45, 135, 225, 315} {
		sin, cos := math.Sincos(a * math.Pi / 180)
		d := math.Hypot(132.5*sin-0.3, 132.5*cos+0.4)
		s.Readings = append(s.Readings, measured.Reading{From: i + 1, To: measured.Spigot, Kind: measured.Between, Mm: d - 115 - 7.25})
	}
	r := fit(t, s)
	if r.Centred == nil {
		t.Fatal("no offset")
	}
	near(t, "x", r.Centred.XMm, 0.3, 1e-4)
	near(t, "y", r.Centred.YMm, -0.4, 1e-4)
	near(t, "spigot", r.SpigotMm, 230, 1e-4)
}

func TestRefused(t *testing.T) {
	good := func() measured.Survey { return flange(265, 14.5, 45, 135, 225, 315) }
	for _, test := range []struct {
		code          measured.Code
		reading, hole int
		change        func(*measured.Survey)
	}{
		{measured.HolesCount, -1, 0, func(s *measured.Survey) { s.Holes = s.Holes[:2] }},
		{measured.HolesCount, -1, 0, func(s *measured.Survey) { s.Holes = make([]measured.Diameter, measured.MaxHoles+1) }},
		{measured.ReadingsCount, -1, 0, func(s *measured.Survey) { s.Readings = nil }},
		{measured.ReadingsCount, -1, 0, func(s *measured.Survey) { s.Readings = make([]measured.Reading, measured.MaxReadings+1) }},
		{measured.Undetermined, -1, 1, func(s *measured.Survey) { s.Readings = s.Readings[:3] }},
		{measured.Undetermined, -1, 1, func(s *measured.Survey) { s.Readings = s.Readings[4:] }},
		{measured.LengthRange, 0, 0, func(s *measured.Survey) { s.Readings[0].Mm = math.NaN() }},
		{measured.LengthRange, 0, 0, func(s *measured.Survey) { s.Readings[0].Mm = math.Inf(1) }},
		{measured.LengthRange, 0, 0, func(s *measured.Survey) { s.Readings[0].Mm = 10001 }},
		{measured.LengthRange, 1, 0, func(s *measured.Survey) { s.Readings[1].Mm = -3 }},
		{measured.NoSuchHole, 0, 5, func(s *measured.Survey) { s.Readings[0].To = 5 }},
		{measured.NoSuchHole, 0, -1, func(s *measured.Survey) { s.Readings[0].To = -1 }},
		{measured.NoSuchHole, 2, 0, func(s *measured.Survey) { s.Readings[2].From = 0 }},
		{measured.NoSuchHole, 2, 5, func(s *measured.Survey) { s.Readings[2].From = 5 }},
		{measured.SameHole, 0, 1, func(s *measured.Survey) { s.Readings[0].To = 1 }},
		{measured.UnknownKind, 0, 0, func(s *measured.Survey) { s.Readings[0].Kind = "across" }},
		{measured.NoSpigot, 0, 0, func(s *measured.Survey) { s.Readings[0].To = measured.Spigot }},
		{measured.ReadingPlusMinus, 0, 0, func(s *measured.Survey) { s.Readings[0].PlusMinusMm = 50 }},
		{measured.ReadingPlusMinus, 0, 0, func(s *measured.Survey) { s.Readings[0].PlusMinusMm = 0.0004 }},
		{measured.HolePlusMinus, -1, 2, func(s *measured.Survey) { s.Holes[1].PlusMinusMm = -0.05 }},
		{measured.HolePlusMinus, -1, 2, func(s *measured.Survey) { s.Holes[1].PlusMinusMm = 1.46 }},
		{measured.HoleRange, -1, 2, func(s *measured.Survey) { s.Holes[1].Mm = 0 }},
		{measured.FirstRange, -1, 1, func(s *measured.Survey) { s.FirstDeg = math.NaN() }},
		{measured.FirstRange, -1, 1, func(s *measured.Survey) { s.FirstDeg = -360.1 }},
		{measured.SpigotRange, -1, 0, func(s *measured.Survey) { s.Spigot.Mm = -230 }},
		{measured.SpigotRange, -1, 0, func(s *measured.Survey) { s.Spigot = measured.Diameter{Mm: 230, PlusMinusMm: 24} }},
		{measured.TooShort, 0, 0, func(s *measured.Survey) { s.Readings[0].Mm = 20 }},
		{measured.TooShort, 0, 0, func(s *measured.Survey) { s.Readings[0].Mm = 28.79 }},
		{measured.TooShort, 0, 0, func(s *measured.Survey) { s.Readings[0].Kind, s.Readings[0].Mm = measured.Centres, 14.29 }},
		{measured.FewToSpigot, -1, 0, func(s *measured.Survey) {
			s.Spigot.Mm = 230
			s.Readings = append(s.Readings, measured.Reading{From: 1, Kind: measured.Between, Mm: 10.25}, measured.Reading{From: 2, Kind: measured.Between, Mm: 10.25})
		}},
		{measured.NotClockwise, -1, 2, func(s *measured.Survey) {
			*s = flange(265, 4, 0, 20, 17, 40)
		}},
	} {
		s := good()
		test.change(&s)
		var input *measured.InputError
		if r, err := measured.Fit(s); !errors.As(err, &input) || r != nil || input.Code != test.code || input.Reading != test.reading || input.Hole != test.hole {
			t.Errorf("%s reading %d hole %d: %v, %v", test.code, test.reading, test.hole, r, err)
		}
	}
}

// TestLargest: what is just within the limits is taken.
func TestLargest(t *testing.T) {
	s := flange(265, 14.5, 45, 135, 225, 315)
	s.Readings[0].PlusMinusMm, s.Holes[0].PlusMinusMm, s.FirstDeg = 20.18, 0.0005, -360
	fit(t, s)
	// A tenth of what was measured, and less than a millimetre.
	s = flange(6, 0.5, 0, 90, 180, 270)
	s.Holes[0].PlusMinusMm = 0.05
	s.Readings[4].Kind, s.Readings[4].Mm, s.Readings[4].PlusMinusMm = measured.Centres, 6, 0.6
	near(t, "a small circle", fit(t, s).PCDMm, 6, 1e-5)
	s = flange(1.2, 0.3, 0, 90, 180, 270)
	s.Spigot.Mm, s.Spigot.PlusMinusMm = 0.4, 0.01
	near(t, "a very small circle", fit(t, s).PCDMm, 1.2, 1e-5)
	near(t, "a very small spigot", fit(t, s).SpigotMm, 0.4, 1e-9)
}

// TestStandardsAgree checks the table against what it is built on: the free
// holes are ISO 273 coarse for the bolt, and the sizes leave room for each
// other.
func TestStandardsAgree(t *testing.T) {
	all := measured.Standards()
	if len(all) != 36 {
		t.Errorf("%d flanges", len(all))
	}
	for i, f := range all {
		bolt, err := threads.Parse(f.Thread)
		if err != nil {
			t.Fatal(err)
		}
		if coarse, err := bolt.ClearanceMm("coarse"); !f.Tapped && (err != nil || coarse != f.HoleMm) {
			t.Errorf("%s: hole %g, ISO 273 coarse for %s is %g (%v)", f.Name, f.HoleMm, f.Thread, coarse, err)
		}
		if room := (f.OutsideMm - f.PitchMm - f.HoleMm) / 2; room < 4 {
			t.Errorf("%s: %g mm outside the holes", f.Name, room)
		}
		if room := (f.PitchMm - f.SpigotMm - f.HoleMm) / 2; room < 2 {
			t.Errorf("%s: %g mm inside the holes", f.Name, room)
		}
		if i > 0 && all[i-1].Tapped == f.Tapped && !(all[i-1].PitchMm < f.PitchMm && all[i-1].SpigotMm < f.SpigotMm && all[i-1].OutsideMm < f.OutsideMm) {
			t.Errorf("%s is not larger than the one before", f.Name)
		}
	}
}

// TestSpigotLimits takes the limits, in µm, of EASA AR100-2020, table 2-10
// (after IEC 60072-1, C.1.7); the second class of 250 to 500 mm is ISO 286-2,
// tables for j and h.
func TestSpigotLimits(t *testing.T) {
	want := map[float64]string{
		40: "j6 +11 -5", 50: "j6 +11 -5", 60: "j6 +12 -7", 70: "j6 +12 -7", 80: "j6 +12 -7", 95: "j6 +13 -9", 110: "j6 +13 -9",
		130: "j6 +14 -11", 180: "j6 +14 -11", 230: "j6 +16 -13", 250: "j6 +16 -13 h6 +0 -29", 300: "h6 +0 -32 j6 +16 -16",
		350: "h6 +0 -36 j6 +18 -18", 450: "h6 +0 -40 j6 +20 -20", 550: "h6 +0 -44", 680: "h6 +0 -50", 880: "h6 +0 -56", 1000: "h6 +0 -56",
	}
	seen := 0
	for _, f := range measured.Standards() {
		got := ""
		for _, c := range f.Spigots {
			got += fmt.Sprintf(" %s %+.0f %+.0f", c.Class, 1000*(c.MaxMm-f.SpigotMm)+1e-9, 1000*(c.MinMm-f.SpigotMm))
		}
		if got = strings.TrimSpace(got); got != want[f.SpigotMm] {
			t.Errorf("%s: %s, want %s", f.Name, got, want[f.SpigotMm])
		}
		seen++
	}
	if seen != 2*len(want) {
		t.Errorf("%d flanges", seen)
	}
}

func TestNearest(t *testing.T) {
	s := flange(265.1, 14.6, 45, 135, 225, 315)
	s.Spigot = measured.Diameter{Mm: 230.01}
	m, ok := fit(t, s).Nearest(false)
	if !ok || m.Name != "FF265" || !m.Matches || len(m.Against) != 0 || !slices.Equal(m.SpigotClasses, []string{"j6"}) {
		t.Errorf("got %+v", m)
	}
	s.Spigot.Mm = 229.5
	if m, ok = fit(t, s).Nearest(false); !ok || m.Matches || len(m.Against) != 1 || m.Against[0].Code != measured.SpigotDiffers || m.Against[0].Hole != 0 || math.Abs(m.Against[0].OffMm+0.5) > 1e-3 {
		t.Errorf("spigot half a millimetre small: %+v", m)
	}
	s = flange(130, 6.7, 0, 90, 180, 270)
	if m, ok = fit(t, s).Nearest(true); !ok || m.Name != "FT130" || m.Thread != "M8" {
		t.Errorf("got %+v", m)
	}
	if m, ok = fit(t, flange(245, 14, 45, 135, 225, 315)).Nearest(false); ok {
		t.Errorf("245 mm is taken for %s", m.Name)
	}
	// NEMA 56C: AJ 5 7/8 in, AK 4 1/2 in; the tapped face itself and its counterpart with
	// free holes. Its spigot may be 0.003 in under (from memory).
	s = flange(5.875*25.4, 0.406*25.4, 45, 135, 225, 315)
	for under, want := range map[float64]bool{0: true, 0.0025: true, 0.02: false} {
		s.Spigot.Mm = (4.5 - under) * 25.4
		for _, tapped := range []bool{true, false} {
			if m, ok = fit(t, s).Nearest(tapped); !ok || m.Matches != want || m.Name != "NEMA 56C, 143TC, 145TC" || m.Thread != "3/8-16 UNC" || !strings.HasPrefix(m.Source, "NEMA MG 1") {
				t.Errorf("%v under: %+v", under, m)
			}
		}
	}
	// Holes off equal spacing by less than half a millimetre still match.
	for off, want := range map[float64]bool{0.3: true, 0.9: false} {
		s = flange(265, 14.5, 45, 135+off*360/math.Pi/265*4/3, 225, 315)
		m, _ = fit(t, s).Nearest(false)
		if m.Matches != want || !want && (m.Against[0].Code != measured.SpacingDiffers || m.Against[0].Hole != 2 || math.Abs(m.Against[0].OffMm-off) > 0.01) {
			t.Errorf("%g mm off: %+v", off, m)
		}
	}
	// Sizes about the limits of a match.
	for dia, want := range map[float64]bool{15.05: true, 15.15: false, 13.95: true, 13.85: false} {
		if m, _ = fit(t, flange(265, dia, 45, 135, 225, 315)).Nearest(false); m.Matches != want || math.Abs(m.HoleOffMm-(dia-14.5)) > 1e-6 {
			t.Errorf("holes of %g: %+v", dia, m)
		}
	}
	for pcd, want := range map[float64]bool{265.45: true, 265.55: false, 264.55: true, 264.45: false} {
		if m, _ = fit(t, flange(pcd, 14.5, 45, 135, 225, 315)).Nearest(false); m.Matches != want || m.Name != "FF265" {
			t.Errorf("pitch circle %g: %+v", pcd, m)
		}
	}
	for pcd, want := range map[float64]bool{251.8: true, 251.7: false} { // 5 % off
		if _, ok = fit(t, flange(pcd, 14.5, 45, 135, 225, 315)).Nearest(false); ok != want {
			t.Errorf("%g is near: %v", pcd, ok)
		}
	}
	// Eight holes tell FF400 from FF350 at 376; the spigot decides too.
	if m, _ = fit(t, flange(375.5, 18.5, 0, 90, 180, 270)).Nearest(false); m.Name != "FF350" {
		t.Errorf("got %s", m.Name)
	}
	if m, _ = fit(t, flange(373.5, 18.5, 0, 45, 90, 135, 180, 225, 270, 315)).Nearest(false); m.Name != "FF400" {
		t.Errorf("got %s", m.Name)
	}
	if m, _ = fit(t, flange(371.5, 18.5, 0, 45, 90, 135, 180, 225, 270, 315)).Nearest(false); m.Name != "FF350" {
		t.Errorf("got %s", m.Name)
	}
	// Five holes on the pitch circle of a four-hole flange.
	if m, ok = fit(t, flange(165, 12, 0, 72, 144, 216, 288)).Nearest(false); !ok || m.Matches {
		t.Errorf("got %+v", m)
	}
}

func drawn(pcd, dia float64, angles ...float64) []measured.DrawnHole {
	var out []measured.DrawnHole
	for i, a := range angles {
		sin, cos := math.Sincos(a * math.Pi / 180)
		out = append(out, measured.DrawnHole{N: i + 1, XMm: pcd / 2 * sin, YMm: pcd / 2 * cos, MinMm: dia})
	}
	return out
}

func TestTogether(t *testing.T) {
	r := fit(t, flange(265, 14.5, 45, 135, 225, 315))
	together := func(d measured.Drawn) *measured.Mating {
		t.Helper()
		m, err := r.Together(d)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	// The same pattern: the floating play is (14.5 − 2 u + 14.5)/2 − 12.
	m := together(measured.Drawn{Holes: drawn(265, 14.5, 45, 135, 225, 315), BoltMm: 12})
	if !m.Goes || math.Abs(m.TurnDeg) > 1e-9 {
		t.Errorf("got %+v", m)
	}
	near(t, "play", m.Pairs[0].PlayMm, 2.5-r.Holes[0].DiaUMm, 1e-9)
	near(t, "off", m.Pairs[0].OffMm, 0, 1e-5)
	// A pitch circle of 270 puts every hole 2.5 mm out: too much.
	if m = together(measured.Drawn{Holes: drawn(270, 14.5, 45, 135, 225, 315), BoltMm: 12}); m.Goes {
		t.Errorf("270 goes onto 265: %+v", m)
	}
	near(t, "off", m.Pairs[2].OffMm, 2.5, 1e-4)
	near(t, "needed hole", m.Pairs[2].NeedsMm, 14.5-2*m.Pairs[2].MarginMm, 1e-9)
	big := measured.Drawn{Holes: drawn(270, m.Pairs[2].NeedsMm+0.001, 45, 135, 225, 315), BoltMm: 12}
	if !together(big).Goes {
		t.Error("the hole it asks for does not go either")
	}
	// Tapped: 2 mm out with 14.5 − 12.
	if m = together(measured.Drawn{Holes: drawn(269, 14.5, 45, 135, 225, 315), BoltMm: 12, Tapped: true}); m.Goes {
		t.Errorf("tapped: %+v", m)
	}
	// A bolt that does not enter one of the holes is not helped by the other.
	if m = together(measured.Drawn{Holes: drawn(265, 11.9, 45, 135, 225, 315), BoltMm: 12}); m.Goes || m.Pairs[0].NeedsMm != 12 {
		t.Errorf("M12 through 11.9: %+v", m)
	}
	near(t, "margin of M12 in 11.9", m.MarginMm, -0.05, 1e-9)
	if m = together(measured.Drawn{Holes: drawn(265, 30, 45, 135, 225, 315), BoltMm: 16}); m.Goes || m.Pairs[0].NeedsMm != 0 {
		t.Errorf("M16 through 14.5: %+v", m)
	}
	near(t, "margin of M16 in 14.5", m.MarginMm, (m.Pairs[0].FlangeMinMm-16)/2, 1e-9)
	// A bolt as large as the least hole of the flange enters it, and one as large as
	// what is drawn that: then the hole to be drilled is still told.
	least := r.Holes[0].DiameterMm - measured.CoverageFactor*r.Holes[0].DiaUMm
	if p := together(measured.Drawn{Holes: drawn(265, 20, 45, 135, 225, 315), BoltMm: least}).Pairs[0]; p.FlangeMinMm != least || p.NeedsMm < least {
		t.Errorf("a bolt of %v: %+v", least, p)
	}
	// The smallest bore is a bore, and does not go over a spigot.
	small := fit(t, func() measured.Survey {
		s := flange(265, 14.5, 45, 135, 225, 315)
		s.Spigot = measured.Diameter{Mm: 230, PlusMinusMm: 0.01}
		return s
	}())
	if m, err := small.Together(measured.Drawn{Holes: drawn(265, 14.5, 45, 135, 225, 315), BoltMm: 12, BoreMinMm: 0.5, BoreMaxMm: 0.6}); err != nil || m.Spigot != measured.SpigotTight || m.Goes {
		t.Errorf("a bore of 0.5 over 230: %+v, %v", m, err)
	}
	// Drawn with hole 1 at TOP, a quarter of it away: it is turned.
	if m = together(measured.Drawn{Holes: drawn(265, 14.5, 0, 90, 180, 270), BoltMm: 12}); !m.Goes || math.Abs(math.Abs(m.TurnDeg)-45) > 1e-6 {
		t.Errorf("got %+v", m)
	}
	if _, err := r.Together(measured.Drawn{Holes: drawn(265, 14.5, 0, 120, 240), BoltMm: 12}); err == nil {
		t.Error("three holes go onto four")
	}
	// Holes on the axes are fine, one in the middle is not.
	for _, h := range []measured.DrawnHole{{N: 1, MinMm: 14.5}, {N: 1, XMm: 10001, MinMm: 14.5}, {N: 1, YMm: -10001, MinMm: 14.5}, {N: 1, YMm: 5, MinMm: 10001}} {
		holes := drawn(265, 14.5, 0, 90, 180, 270)
		holes[0] = h
		if _, err := r.Together(measured.Drawn{Holes: holes, BoltMm: 12}); err == nil {
			t.Errorf("%+v is taken", h)
		}
	}
	for _, d := range []measured.Drawn{{BoltMm: 0}, {BoltMm: 12, PlaceMm: -0.1}, {BoltMm: 12, PlaceMm: 101}, {BoltMm: 12, BoreMinMm: 5, BoreMaxMm: 4}, {BoltMm: 12, BoreMinMm: -1}, {BoltMm: 12, BoreMaxMm: 10001}} {
		d.Holes = drawn(265, 14.5, 0, 90, 180, 270)
		if _, err := r.Together(d); err == nil {
			t.Errorf("%+v is taken", d)
		}
	}
	// What a hole may be made off its place counts whole.
	exact := together(measured.Drawn{Holes: drawn(265, 14.5, 45, 135, 225, 315), BoltMm: 12})
	placed := together(measured.Drawn{Holes: drawn(265, 14.5, 45, 135, 225, 315), BoltMm: 12, PlaceMm: 0.25})
	near(t, "doubt", placed.Pairs[1].DoubtMm, exact.Pairs[1].DoubtMm+0.25, 1e-9)
	near(t, "doubt", exact.Pairs[1].DoubtMm, 2*r.Holes[1].PlaceUMm, 1e-9)
	near(t, "margin", placed.MarginMm, placed.Pairs[0].PlayMm-placed.Pairs[0].OffMm-placed.Pairs[0].DoubtMm, 1e-9)
	if _, err := r.Together(measured.Drawn{Holes: drawn(265, math.NaN(), 0, 90, 180, 270), BoltMm: 12}); err == nil {
		t.Error("NaN goes on")
	}
}

// TestTogetherShift: holes all 1 mm to the right go on when the part may be
// shifted, and do not when a close spigot holds it.
func TestTogetherShift(t *testing.T) {
	s := flange(265, 13, 45, 135, 225, 315)
	s.Spigot = measured.Diameter{Mm: 230, PlusMinusMm: 0.01}
	r := fit(t, s)
	d := measured.Drawn{Holes: drawn(265, 13, 45, 135, 225, 315), BoltMm: 12.2}
	for i := range d.Holes {
		d.Holes[i].XMm++
	}
	m, err := r.Together(d)
	if err != nil || !m.Goes {
		t.Errorf("free: %+v %v", m, err)
	}
	d.BoreMinMm, d.BoreMaxMm = 230.2, 230.3
	m, err = r.Together(d)
	if err != nil || m.Goes || m.Spigot != measured.SpigotClears || !m.Concentric {
		t.Errorf("held: %+v %v", m, err)
	}
	near(t, "spigot clearance", m.ClearanceMm, 0.2-2*0.01/math.Sqrt(3), 1e-9)
	near(t, "off", m.Pairs[0].OffMm, 1-m.ClearanceMm/2, 2e-3)
	d.BoreMinMm, d.BoreMaxMm = 229.9, 229.98
	for i := range d.Holes {
		d.Holes[i].XMm--
	}
	if m, err = r.Together(d); err != nil || m.Goes || m.Spigot != measured.SpigotTight {
		t.Errorf("a bore smaller than the spigot: %+v %v", m, err)
	}
}

func TestTogetherMirrored(t *testing.T) {
	r := fit(t, flange(200, 11, 0, 80, 180, 270))
	d := measured.Drawn{Holes: drawn(200, 11, 0, 90, 180, 280), BoltMm: 10}
	if m, err := r.Together(d); err != nil || !m.Goes || !m.Mirrored {
		t.Errorf("turned over: %+v %v", m, err)
	}
}

func FuzzFit(f *testing.F) {
	f.Add(265.0, 0.3, 1.0, uint8(4))
	f.Add(100.0, -50.0, 200.0, uint8(3))
	f.Add(0.001, 1e9, math.Inf(1), uint8(36))
	f.Fuzz(func(t *testing.T, pcd, off, other float64, n uint8) {
		count := 3 + int(n)%10
		angles := make([]float64, count)
		for i := range angles {
			angles[i] = 360 * float64(i) / float64(count)
		}
		s := flange(pcd, 3, angles...)
		s.Readings[0].Mm += off
		s.Readings[count-1].Mm = other
		r, err := measured.Fit(s)
		if (r == nil) == (err == nil) {
			t.Fatalf("%v, %v", r, err)
		}
		if r == nil {
			return
		}
		if math.IsNaN(r.PCDMm) || math.IsInf(r.PCDMm, 0) || !(r.PCDMm > 0) || math.IsNaN(r.PCDUMm) {
			t.Errorf("pitch circle %v ± %v", r.PCDMm, r.PCDUMm)
		}
	})
}
