package grooves

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"centrepop/layout/lookup"
)

// Every row of both ring tables: the groove leaves the ring its hold, deeper
// grooves come with larger diameters, and nothing is out of order.
func TestRingTables(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		table  []ringRow
		inside bool
	}{{din471, false}, {din472, true}} {
		for i, r := range c.table {
			depth := (r.nominal - r.groove) / 2
			if c.inside {
				depth = -depth
			}
			if depth <= 0 || depth > 2.51 || r.lug < 2 {
				t.Errorf("%+v: depth %v", r, depth)
			}
			if i == 0 {
				continue
			}
			before := c.table[i-1]
			beforeDepth := math.Abs(before.nominal-before.groove) / 2
			if r.nominal <= before.nominal || depth < beforeDepth-1e-9 || r.thickness < before.thickness || r.lug < before.lug-0.051 {
				t.Errorf("%+v comes after %+v", r, before)
			}
		}
	}
}

// Thickness and groove depth grow in steps over both tables: the diameters at
// which they do, as the two files and the printed tables agree; the column of
// lugs is guarded by its sum.
func TestRingSteps(t *testing.T) {
	t.Parallel()
	type step struct{ from, value float64 }
	at := func(steps []step, d float64) (v float64) {
		for _, s := range steps {
			if d >= s.from {
				v = s.value
			}
		}
		return v
	}
	for _, c := range []struct {
		table            []ringRow
		thickness, depth []step
		lugs             float64
	}{
		{din471, []step{{3, 0.4}, {5, 0.6}, {6, 0.7}, {7, 0.8}, {9, 1}, {18, 1.2}, {28, 1.5}, {36, 1.75}, {50, 2}, {65, 2.5}, {85, 3}, {105, 4}},
			[]step{{3, 0.1}, {6, 0.15}, {8, 0.2}, {11, 0.25}, {13, 0.3}, {15, 0.35}, {16, 0.4}, {18, 0.5}, {24, 0.55}, {27, 0.7}, {31, 0.85}, {35, 1}, {40, 1.25}, {50, 1.5}, {80, 1.75}, {105, 2}, {150, 2.5}}, 625.9},
		{din472, []step{{8, 0.8}, {10, 1}, {23, 1.2}, {34, 1.5}, {40, 1.75}, {50, 2}, {65, 2.5}, {85, 3}, {105, 4}},
			[]step{{8, 0.2}, {12, 0.25}, {13, 0.3}, {15, 0.35}, {16, 0.4}, {18, 0.5}, {23, 0.55}, {24, 0.6}, {27, 0.7}, {31, 0.85}, {35, 1}, {40, 1.25}, {50, 1.5}, {80, 1.75}, {105, 2}, {150, 2.5}}, 628.3},
	} {
		sum := 0.0
		for _, r := range c.table {
			sum += r.lug
			if r.thickness != at(c.thickness, r.nominal) || !near(math.Abs(r.groove-r.nominal)/2, at(c.depth, r.nominal), 1e-9) {
				t.Errorf("%+v", r)
			}
		}
		if !near(sum, c.lugs, 1e-6) {
			t.Errorf("the lugs add up to %v, want %v", sum, c.lugs)
		}
	}
}

// Lug heights as din471def.csv and din472def.csv give them; d4 = d1 ± 2.1·a
// (modulusmetal.com, DIN 472).
func TestRing(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		d            float64
		inside       bool
		thick, clear float64
	}{
		{40, false, 1.75, 52.6}, {40, true, 1.75, 27.82}, {52, false, 2, 66.7}, {28, true, 1.2, 17.92}, {28, false, 1.5, 37.87}, {100, true, 3, 80.68}, {200, false, 4, 229.82},
	} {
		got, err := RingFor(c.d, c.inside)
		if err != nil || got.ThicknessMm != c.thick || !near(got.ClearMm, c.clear, 1e-9) || got.Source.State != lookup.Checked {
			t.Errorf("%+v: %+v, %v", c, got, err)
		}
	}
	var e *RingError
	if _, err := RingFor(43, false); !errors.As(err, &e) || e.BelowMm != 42 || e.AboveMm != 44 {
		t.Errorf("43: %v", err)
	}
	for _, c := range []struct {
		d, from float64
		inside  bool
	}{{2.9, 3, false}, {201, 3, false}, {7, 8, true}, {math.NaN(), 8, true}} {
		var r *lookup.RangeError
		if _, err := RingFor(c.d, c.inside); !errors.As(err, &r) || !near(r.Above, c.from, 1e-9) || r.UpTo != 200 {
			t.Errorf("%v: %v", c.d, err)
		}
	}
	if got, err := RingFor(3, false); err != nil || got.NominalMm != 3 {
		t.Errorf("3: %v", err)
	}
}

// A ring of 50 × 3.53 on a piston in a bore of 57, at rest: the floor is 57 −
// 2·2.7 = 51.6, the ring stretched by 3.2 %, so its section keeps its volume at
// 3.53/√1.032. ISO 3601-1 tolerance ±0.10.
func TestPiston(t *testing.T) {
	t.Parallel()
	g, err := ORing{50, 3.53}.In(Piston, 57, false)
	if err != nil {
		t.Fatal(err)
	}
	section := 3.53 / math.Sqrt(1.032)
	for name, c := range map[string][2]float64{
		"floor": {g.FloorMm, 51.6}, "stretch": {g.Stretch, 0.032}, "tolerance": {g.SectionTolMm, 0.1},
		"least": {g.Squeeze.Min, 1 - 2.75/(section-0.1)}, "most": {g.Squeeze.Max, 1 - 2.7/(section+0.1)},
		"fill": {g.Fill, math.Pi / 4 * section * section / 2.7 / 4.8}, "lead-in": {g.LeadInMm, 4}, "lead-in angle": {g.LeadInDeg, 15},
	} {
		if !near(c[0], c[1], 1e-9) {
			t.Errorf("%s %v, want %v", name, c[0], c[1])
		}
	}
	if g.Problems != nil {
		t.Errorf("%+v", g.Problems)
	}
	if g, _ = (ORing{50, 3.53}).In(Piston, 57, true); !near(g.FloorMm, 50.8, 1e-9) || g.DepthMm != 3.1 {
		t.Errorf("moving: %+v", g)
	}
}

func TestRodAndFace(t *testing.T) {
	t.Parallel()
	g, err := ORing{50, 3.53}.In(Rod, 51, false)
	if err != nil || !near(g.FloorMm, 56.4, 1e-9) || !near(g.Stretch, 56.4/57.06-1, 1e-12) || !near(g.Squeeze.Max, 1-2.7/3.63, 1e-12) || g.OuterMm != 0 {
		t.Errorf("%+v, %v", g, err)
	}
	g, err = ORing{50, 3.53}.In(FaceInside, 0, false)
	if err != nil || !near(g.OuterMm, 57.06, 1e-9) || !near(g.InnerMm, 47.06, 1e-9) || g.LeadInMm != 0 || g.LeadInDeg != 0 || g.FloorMm != 0 || g.Stretch != 0 {
		t.Errorf("%+v, %v", g, err)
	}
	g, err = ORing{50, 3.53}.In(FaceOutside, 0, false)
	if err != nil || g.InnerMm != 50 || g.OuterMm != 60 {
		t.Errorf("%+v, %v", g, err)
	}
}

// Lead-in lengths: scribd.com 515814706, by section.
func TestLeadIn(t *testing.T) {
	t.Parallel()
	for section, want := range map[float64]float64{1.5: 2.1, 1.78: 2.1, 2: 3.1, 2.62: 3.1, 3: 4, 3.53: 4, 4: 6, 5.33: 6, 6: 7.2, 6.99: 7.2, 7: 7.2} {
		if g, err := (ORing{50, section}).In(Piston, 60, false); err != nil || g.LeadInMm != want {
			t.Errorf("%v: %v, %v, want %v", section, g.LeadInMm, err, want)
		}
	}
	// ISO 3601-1, as testdata/reference/tables.csv has it.
	for section, want := range map[float64]float64{1.78: 0.08, 2: 0.08, 2.62: 0.09, 3: 0.09, 3.53: 0.1, 4.5: 0.1, 5.33: 0.13, 6: 0.13, 6.99: 0.15, 7: 0.15} {
		if g, _ := (ORing{50, section}).In(Piston, 60, false); g.SectionTolMm != want {
			t.Errorf("%v ± %v, want %v", section, g.SectionTolMm, want)
		}
	}
}

// What is beyond common practice, just inside and just outside of each limit.
func TestORingProblems(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		ring  ORing
		seat  Seat
		d     float64
		codes []Code
	}{
		{ORing{50, 3.53}, Piston, 53*1 + 5.4, nil}, {ORing{50, 3.53}, Piston, 53.1 + 5.4, []Code{StretchHigh}},
		{ORing{50, 3.53}, Piston, 50 + 5.4, nil}, {ORing{50, 3.53}, Piston, 49.9 + 5.4, []Code{StretchLow}},
		{ORing{50, 3.53}, Rod, 57.06*0.971 - 5.4, nil}, {ORing{50, 3.53}, Rod, 57.06*0.969 - 5.4, []Code{StretchLow}},
		{ORing{50, 3.53}, Rod, 57.06*1.059 - 5.4, nil}, {ORing{50, 3.53}, Rod, 57.06*1.061 - 5.4, []Code{StretchHigh}},
	} {
		g, err := c.ring.In(c.seat, c.d, false)
		var got []Code
		for _, p := range g.Problems {
			got = append(got, p.Code)
		}
		if err != nil || !slices.Equal(got, c.codes) {
			t.Errorf("%+v: %v, %v, stretch %v", c, got, err, g.Stretch)
		}
	}
	full := Gland{Seat: FaceInside, Fill: 0.851}
	full.judge()
	if len(full.Problems) != 1 || full.Problems[0] != (Problem{FillHigh, 0.851, 0, 0.85}) {
		t.Errorf("%+v", full.Problems)
	}
	almost := Gland{Seat: FaceInside, Fill: 0.849}
	almost.judge()
	if almost.Problems != nil {
		t.Errorf("%+v", almost.Problems)
	}
}

// The five inch sections of ISO 3601-1 find their rows; what lies between rows
// does not.
func TestInchSections(t *testing.T) {
	t.Parallel()
	for inch, depth := range map[float64]float64{0.070: 1.3, 0.103: 2, 0.139: 2.7, 0.210: 4.3, 0.275: 5.8} {
		if g, err := (ORing{50, inch * 25.4}).In(Rod, 50, false); err != nil || g.DepthMm != depth {
			t.Errorf("%v in: %v, %v", inch, g.DepthMm, err)
		}
	}
	if _, err := (ORing{50, 3.515}).In(Rod, 50, false); err == nil {
		t.Error("3.515 finds a row")
	}
}

func TestORingRefused(t *testing.T) {
	t.Parallel()
	var s *SectionError
	if _, err := (ORing{50, 3.6}).In(Piston, 60, false); !errors.As(err, &s) || len(s.KnownMm) != len(glands) {
		t.Errorf("%v", err)
	}
	var u *lookup.UnknownError
	if _, err := (ORing{50, 3.53}).In("loose", 60, false); !errors.As(err, &u) || len(u.Known) != 4 {
		t.Errorf("%v", err)
	}
	for _, c := range []struct {
		ring ORing
		seat Seat
		d    float64
		what string
	}{
		{ORing{50, 1.4}, Piston, 60, "section"}, {ORing{50, 7.1}, Piston, 60, "section"}, {ORing{50, math.NaN()}, Piston, 60, "section"},
		{ORing{3.5, 3.53}, Piston, 60, "inside diameter"}, {ORing{math.NaN(), 3.53}, Piston, 60, "inside diameter"},
		{ORing{50, 3.53}, Piston, 5.4, "bore"}, {ORing{50, 3.53}, Piston, math.NaN(), "bore"}, {ORing{50, 3.53}, Rod, 0, "rod"},
	} {
		var r *lookup.RangeError
		if _, err := c.ring.In(c.seat, c.d, false); !errors.As(err, &r) || r.What != c.what {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

// The land of a shaft of 40: h11 is 0/−160 µm (ISO 286-1).
func ExampleSealLandFor() {
	l, err := SealLandFor(40, 8)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("shaft %.3f – %.3f, lead-in to %g or less\n", l.Shaft.MinMm, l.Shaft.MaxMm, l.LeadInMm)
	fmt.Printf("housing straight for %.1f, deep %.1f\n", l.HousingStraightMm, l.HousingDepthMm)
	// Output:
	// shaft 39.840 – 40.000, lead-in to 37 or less
	// housing straight for 6.8, deep 8.3
}
