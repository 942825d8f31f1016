package weld

import (
	"math"
	"strings"
	"testing"

	"centrepop/layout/material"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.6g, want %.6g +- %.2g", what, got, want, tol)
	}
}

// testdata/reference/worked_examples.md (f): throats.
func TestThroat(t *testing.T) {
	for z, a := range map[float64]float64{3: 2.12, 4: 2.83, 5: 3.54, 6: 4.24, 8: 5.66, 10: 7.07, 12: 8.49} {
		near(t, "throat", Throat(z), a, 0.005)
	}
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if Throat(bad) != 0 {
			t.Errorf("%v: throat %v; want 0", bad, Throat(bad))
		}
	}
}

// AWS D1.1 Table 7.7 (2020 and 2025 editions).
func TestLegs(t *testing.T) {
	for _, c := range []struct {
		thin, thick float64
		lowH        bool
		want        float64
	}{
		{6, 6, true, 3}, {6.1, 20, true, 5}, {12, 12, true, 5},
		{12.1, 30, true, 6}, {20, 20, true, 6}, {20.1, 40, true, 8},
		{6, 12.1, false, 6}, {6, 25, false, 6}, // need not exceed the thinner part
		{10, 25, false, 8}, {10, 25, true, 5}, {2.5, 6, true, 2.5},
	} {
		j := FilletJoint{c.thin, c.thick, c.lowH}
		got, err := MinLeg(j)
		if err != nil || got != c.want {
			t.Errorf("MinLeg(%+v) = %v, %v; want %v", j, got, err, c.want)
		}
		leg, rule, err := SuggestLeg(j)
		if err != nil || leg < got || leg > c.thin || rule == "" {
			t.Errorf("SuggestLeg(%+v) = %v (%s), %v", j, leg, rule, err)
		}
	}
	for _, c := range []struct {
		j    FilletJoint
		want float64
		rule LegRule
		say  string
	}{
		{FilletJoint{8, 10, true}, 6, LegByThickness, "0.7"},
		{FilletJoint{4, 30, false}, 4, LegByLeast, "AWS"},
		{FilletJoint{2.5, 2.5, true}, 2.5, LegByLeast, "AWS"},
		{FilletJoint{0.5, 0.5, true}, 0.5, LegByThinner, "thinner"},
	} {
		if got, rule, err := SuggestLeg(c.j); err != nil || got != c.want || rule != c.rule || !strings.Contains(string(rule), c.say) {
			t.Errorf("SuggestLeg(%+v) = %v (%s), %v; want %v, %q", c.j, got, rule, err, c.want, c.say)
		}
	}
	for _, bad := range []FilletJoint{{}, {10, 5, true}, {math.NaN(), 5, true}, {5, math.Inf(1), true}} {
		if leg, err := MinLeg(bad); err == nil {
			t.Errorf("MinLeg(%+v) = %v, want an error", bad, leg)
		}
		if leg, _, err := SuggestLeg(bad); err == nil {
			t.Errorf("SuggestLeg(%+v) = %v, want an error", bad, leg)
		}
	}
}

// EN 1993-1-8 simplified method: figures of worked_examples.md (f).
func TestFilletStrength(t *testing.T) {
	for _, c := range []struct {
		grade    string
		fu, want float64
	}{
		{"S275JR", 430, 233.7}, {"s355j2+n", 510, 261.7}, {"S355", 490, 251.5}, {"S355", 470, 241.2}, {"S235", 360, 207.8},
	} {
		got, err := FilletStrength(c.grade, c.fu)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.grade, got, c.want, 0.1)
	}
	f, err := FilletForce(233.7, 4, 100, true)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "force", f/1000, 93.5, 0.05)
	open, err := FilletForce(233.7, 4, 108, false)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "open weld loses a throat at each end", open, f, 1e-9)

	for says, f := range map[string]func() (float64, error){
		"S2350":                              func() (float64, error) { return FilletStrength("S2350", 360) },
		`"S"`:                                func() (float64, error) { return FilletStrength("S", 360) },
		"no correlation factor for C45":      func() (float64, error) { return FilletStrength("C45", 600) },
		"strength NaN MPa":                   func() (float64, error) { return FilletStrength("S235", math.NaN()) },
		"strength 0 MPa":                     func() (float64, error) { return FilletStrength("S235", 0) },
		"throat 2.9 mm is under the 3 mm":    func() (float64, error) { return FilletForce(200, 2.9, 100, true) },
		"length 29.9 mm is under the 30 mm":  func() (float64, error) { return FilletForce(200, 3, 35.9, false) },
		"length 59 mm is under the 60 mm":    func() (float64, error) { return FilletForce(200, 10, 59, true) },
		"length +Inf mm must be":             func() (float64, error) { return FilletForce(200, 4, math.Inf(1), true) },
		"throat NaN mm":                      func() (float64, error) { return FilletForce(200, math.NaN(), 100, true) },
		"throat 0 mm and length 100 mm must": func() (float64, error) { return FilletForce(200, 0, 100, true) },
		"out of all proportion":              func() (float64, error) { return FilletForce(200, 1e300, 1e305, true) },
	} {
		if v, err := f(); err == nil || v != 0 || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v, %v", says, v, err)
		}
	}
	if _, err := FilletForce(200, 3, 36, false); err != nil { // just 30 mm effective
		t.Errorf("30 mm effective refused: %v", err)
	}
}

func TestButtPrep(t *testing.T) {
	for _, c := range []struct {
		t    float64
		e    Edges
		s    Sides
		want Shape
	}{
		{3, BothEdges, OneSide, Square}, {4, OneEdge, OneSide, Square}, {4.1, BothEdges, OneSide, SingleV}, {10, BothEdges, OneSide, SingleV},
		{10.1, BothEdges, OneSide, SingleY}, {40, BothEdges, OneSide, SingleY}, {6, OneEdge, OneSide, SingleBevel}, {12, OneEdge, OneSide, SingleBevel},
		{8, BothEdges, TwoSides, Square}, {9, BothEdges, TwoSides, SingleV}, {12, BothEdges, TwoSides, DoubleV}, {9, OneEdge, TwoSides, SingleBevel}, {12, OneEdge, TwoSides, DoubleBevel},
	} {
		p, err := ButtPrep(c.t, c.e, c.s)
		if err != nil || p.Shape != c.want || p.Source == "" || p.Shape.Symbol() == "" {
			t.Errorf("ButtPrep(%v, %v, %v) = %+v, %v; want %s", c.t, c.e, c.s, p, err, c.want.Symbol())
		}
	}
	for tMm := 0.5; tMm <= 40; tMm += 0.5 { // always inside its own ranges, and fillable
		for _, e := range []Edges{BothEdges, OneEdge} {
			for _, s := range []Sides{OneSide, TwoSides} {
				p, err := ButtPrep(tMm, e, s)
				if err != nil {
					t.Fatal(err)
				}
				for _, c := range []Choice{p.AngleDeg, p.GapMm, p.RootFaceMm} {
					if !(c.Min >= 0 && c.Min <= c.Use && c.Use <= c.Max) {
						t.Errorf("%v mm: %+v out of its range", tMm, p)
					}
				}
				if area, err := p.GrooveArea(tMm, 1); err != nil || !(area > 0) {
					t.Errorf("%v mm: area %v, %v", tMm, area, err)
				}
			}
		}
	}
	for _, bad := range []float64{0, -1, 40.1, math.NaN(), math.Inf(1)} {
		if p, err := ButtPrep(bad, BothEdges, OneSide); err == nil {
			t.Errorf("ButtPrep(%v) = %+v, want an error", bad, p)
		}
	}
	if p, err := ButtPrep(5, 7, OneSide); err == nil {
		t.Errorf("unknown edges: %+v, want an error", p)
	}
}

// Weight of weld metal per metre, filler-metal data handbook of a consumables
// maker (tables of rectangles, triangles and reinforcement): 1/8 in gap in 1/2 in
// plate 0.315 kg/m, each 30 degree flank 0.365, cap 12.7 x 1.59 0.106; fillets 6.35
// 0.158, 9.53 0.356, 12.7 0.632 (0.424 lb/ft).
func TestAreasAgainstHandbook(t *testing.T) {
	const rho = 7850e-6 // kg per mm2 and metre
	for z, kg := range map[float64]float64{6.35: 0.158, 9.53: 0.356, 12.7: 0.632} {
		near(t, "fillet kg/m", FilletArea(z, false)*rho, kg, 0.002)
		near(t, "convex", FilletArea(z, true), 1.1*FilletArea(z, false), 1e-9)
	}
	v := Prep{Shape: SingleV, AngleDeg: Choice{Use: 60}, GapMm: Choice{Use: 3.175}}
	for _, c := range []struct {
		p    Prep
		kg   float64
		what string
	}{
		{v, 0.315 + 2*0.365, "V"},
		{Prep{Shape: SingleBevel, AngleDeg: Choice{Use: 30}, GapMm: v.GapMm}, 0.315 + 0.365, "bevel"},
		{Prep{Shape: DoubleV, AngleDeg: v.AngleDeg, GapMm: v.GapMm}, 0.315 + 0.365, "double V halves the flanks"},
		{Prep{Shape: DoubleBevel, AngleDeg: Choice{Use: 30}, GapMm: v.GapMm}, 0.315 + 0.365/2, "double bevel"},
		{Prep{Shape: Square, GapMm: v.GapMm}, 0.315, "square"},
	} {
		area, err := c.p.GrooveArea(12.7, 0)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.what+" kg/m", area*rho, c.kg, 0.004)
	}
	// Cap alone: square groove with a mouth of 12.7 mm.
	wide := Prep{Shape: Square, GapMm: Choice{Use: 12.7}}
	flush, _ := wide.GrooveArea(10, 0)
	capped, err := wide.GrooveArea(10, 1.59)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "cap kg/m", (capped-flush)*rho, 0.106, 0.001)
	// Over a V of 60° with 2 open and a face of 2 in 10 the mouth is 2 + 2·8·tan 30° = 11.2376, and a cap of 2 is ⅔ of mouth × 2.
	area, err := Prep{Shape: SingleV, AngleDeg: v.AngleDeg, GapMm: Choice{Use: 2}, RootFaceMm: Choice{Use: 2}}.GrooveArea(10, 2)
	if near(t, "V with a cap", area, 2*10+8*8*math.Tan(math.Pi/6)+11.2376*2*2/3, 1e-3); err != nil {
		t.Error(err)
	}

	for thick, want := range map[float64]float64{5: 1, 20: 2, 40: 3} { // a tenth, 1 to 3 mm
		near(t, "cap", CapMm(thick), want, 1e-12)
	}
	for name, p := range map[string]Prep{
		"fillet":    {Shape: Fillet},
		"root face": {Shape: SingleV, RootFaceMm: Choice{Use: 10}},
		"angle":     {Shape: SingleV, AngleDeg: Choice{Use: math.NaN()}},
		"gap":       {Shape: SingleV, GapMm: Choice{Use: -1}},
	} {
		if a, err := p.GrooveArea(10, 0); err == nil || a != 0 {
			t.Errorf("%s: %v, want an error", name, a)
		}
	}
	for _, bad := range []float64{0, -2, math.NaN(), math.Inf(1), 1e200} {
		if a := FilletArea(bad, true); a != 0 {
			t.Errorf("FilletArea(%v) = %v, want 0", bad, a)
		}
	}
}

// Round corners of 8 under a wall of 4 and of 8, by hand: 32 less 19.66; a square less its quarter circle.
func TestFlareArea(t *testing.T) {
	near(t, "half the round", FlareArea(8, 4), 12.346, 0.001)
	for _, wide := range []float64{8, 9} {
		near(t, "all of it", FlareArea(8, wide), 64*(1-math.Pi/4), 1e-9)
	}
	near(t, "sharp", FlareArea(0, 4)+FlareArea(8, 0), 0, 0)
}

func TestFiller(t *testing.T) {
	f, err := FillerFor(FilletArea(12.7, false), 304.8, 7850, Stick)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "deposited lb", f.DepositedKg/0.45359237, 0.424, 0.002)
	near(t, "buy", f.BuyMaxKg, f.DepositedKg/0.60, 1e-12)
	if f.Runs != 5 { // 80.6 mm2 in runs of 18
		t.Errorf("%d runs, want 5", f.Runs)
	}
	for _, bad := range [][3]float64{{0, 1, 1}, {1, math.NaN(), 1}, {1, 1, math.Inf(1)}, {1e5, 1, 7850}, {1e300, 1e300, 1}} {
		if f, err := FillerFor(bad[0], bad[1], bad[2], Stick); err == nil {
			t.Errorf("FillerFor(%v) = %+v, want an error", bad, f)
		}
	}
	if f, err := FillerFor(10, 10, 7850, 99); err == nil {
		t.Errorf("unknown process: %+v, want an error", f)
	}
}

func TestDesignation(t *testing.T) {
	for _, c := range []struct {
		size     float64
		legs     bool
		n        int
		len, gap float64
		want     string
	}{
		{4, false, 0, 0, 0, "a4"}, {6, true, 0, 0, 0, "z6"}, {Throat(5), false, 0, 0, 0, "a3.5"}, {4, false, 3, 50, 100, "a4  3 x 50 (100)"},
	} {
		if got, err := Designation(c.size, c.legs, c.n, c.len, c.gap); err != nil || got != c.want {
			t.Errorf("%q, %v; want %q", got, err, c.want)
		}
	}
	for _, bad := range []struct {
		size     float64
		n        int
		len, gap float64
	}{{0, 0, 0, 0}, {math.NaN(), 0, 0, 0}, {4, -1, 0, 0}, {4, 2, 0, 10}, {4, 2, 10, math.Inf(1)}} {
		if got, err := Designation(bad.size, false, bad.n, bad.len, bad.gap); err == nil {
			t.Errorf("Designation(%+v) = %q, want an error", bad, got)
		}
	}
}

func TestChamfer(t *testing.T) {
	a, err := ChamferArea(5, 45)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "5 x 45", a, 12.5, 1e-9)
	for _, c := range []struct {
		depth, deg float64
		p          Process
		flat       bool
		want       float64
	}{
		{5, 45, Stick, true, 2}, {5, 45, MAG, true, 5}, {5, 45, MAG, false, 2}, {5, 60, Stick, false, 5}, {8, 50, TIG, true, 5},
	} {
		if got, err := ChamferThroat(c.depth, c.deg, c.p, c.flat); err != nil || got != c.want {
			t.Errorf("ChamferThroat(%+v) = %v, %v", c, got, err)
		}
	}
	for _, bad := range []struct {
		depth, deg float64
		p          Process
	}{{0, 45, MAG}, {math.NaN(), 45, MAG}, {5, 29, MAG}, {5, 61, MAG}, {5, math.NaN(), MAG}, {5, 40, MAG}, {3, 45, Stick}, {5, 45, 99}, {1e200, 45, MAG}} {
		if got, err := ChamferThroat(bad.depth, bad.deg, bad.p, true); err == nil || got != 0 {
			t.Errorf("ChamferThroat(%+v) = %v, want an error", bad, got)
		}
	}
}

// A flange of S235 with a bore chamfered 5 x 45 pressed on a tube: 12.5 mm2 under
// the cap of 2/3 x 5 x 1; MAG in the flat reaches the root, stick leaves 3 mm.
func TestPressedGroove(t *testing.T) {
	t.Parallel()
	g, err := PressedGroove(5, 45, 1, MAG, true)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "area", g.AreaMm2, 12.5+2.0/3*5, 1e-9)
	if g.Shape != SingleBevel || g.GapMm != (Choice{}) || g.RootFaceMm != (Choice{}) || g.AngleDeg != (Choice{45, 45, 60}) || g.ThroatMm != 5 || g.Source == "" {
		t.Errorf("%+v", g)
	}
	if g, err = PressedGroove(5, 45, 0, Stick, true); err != nil || g.ThroatMm != 2 {
		t.Errorf("stick: %+v, %v", g, err)
	}
	if g, err = PressedGroove(3, 45, 0, Stick, true); err != nil || g.ThroatMm != 0 {
		t.Errorf("nothing left: %+v, %v", g, err)
	}
	g, err = PressedGroove(5, 60, 2, MAG, false)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "60 degrees", g.AreaMm2, 12.5*math.Sqrt(3)+2.0/3*5*math.Sqrt(3)*2, 1e-9)
	for _, bad := range [][3]float64{{0, 45, 1}, {5, 20, 1}, {5, 45, -1}, {5, 45, math.NaN()}} {
		if g, err := PressedGroove(bad[0], bad[1], bad[2], MAG, true); err == nil {
			t.Errorf("%v: %+v, want an error", bad, g)
		}
	}
	if g, err := PressedGroove(5, 45, 1, 99, true); err == nil {
		t.Errorf("unknown process: %+v", g)
	}
}

// EN 1993-1-8, 4.5.3.3, by hand: S355 to S235, leg 6 (throat 4.243), two runs of
// 100: 360/(sqrt 3 x 0.8 x 1.25) = 207.8 MPa on 2 x (100 - 8.485) x 4.243 is 161.4
// kN; the stronger part's figure, one length less 2a, would be 196.
func TestFilletLoad(t *testing.T) {
	t.Parallel()
	get := func(name string) material.Material {
		m, err := material.Find(name)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	s235, s355 := get("S235"), get("S355J2+N")
	for _, order := range [][2]material.Material{{s355, s235}, {s235, s355}} {
		l, err := FilletLoad(Throat(6), []float64{100, 100}, false, Side{order[0], 10}, Side{order[1], 10})
		if err != nil || l.Weaker != "S235" {
			t.Fatalf("%+v, %v", l, err)
		}
		near(t, "kN", l.ForceN/1000, 161.4, 0.05)
		near(t, "MPa", l.StressMPa, 207.85, 0.01)
	}
	closed, err := FilletLoad(4, []float64{100}, true, Side{s355, 10}, Side{s355, 10})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "closed", closed.ForceN, 4*100*470/(math.Sqrt(3)*0.9*1.25), 1e-6)
	thick, err := FilletLoad(4, []float64{100}, true, Side{s355, 120}, Side{s355, 10}) // 450 MPa over 100 mm
	near(t, "thick part", thick.ForceN/closed.ForceN, 450.0/470, 1e-9)
	if err != nil {
		t.Fatal(err)
	}
	for name, f := range map[string]func() (Load, error){
		"no factor":   func() (Load, error) { return FilletLoad(4, []float64{100}, true, Side{s355, 10}, Side{get("C45"), 10}) },
		"too thick":   func() (Load, error) { return FilletLoad(4, []float64{100}, true, Side{s355, 10}, Side{s235, 300}) },
		"no runs":     func() (Load, error) { return FilletLoad(4, nil, true, Side{s355, 10}, Side{s235, 10}) },
		"short run":   func() (Load, error) { return FilletLoad(4, []float64{100, 30}, false, Side{s355, 10}, Side{s235, 10}) },
		"thin throat": func() (Load, error) { return FilletLoad(2, []float64{100}, false, Side{s355, 10}, Side{s235, 10}) },
	} {
		if l, err := f(); err == nil {
			t.Errorf("%s: %+v, want an error", name, l)
		}
	}
}

// Equal round tubes square to each other meet in two half ellipses of half axes
// r and r sqrt 2: perimeter 7.64040 r (complete elliptic integral, E(1/2) =
// 1.3506439). A thin branch on a thick main tends to its girth, and at an angle to
// the ellipse of half axes r and r/sin; the pug mill's stub, 139.7 on 168.3, has
// 468 mm and not the 439 of its girth.
func TestSaddle(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		what   string
		s      Saddle
		want   float64
		within float64
	}{
		{"equal tubes", Saddle{100, 100, 90, 0}, 50 * 4 * math.Sqrt2 * 1.3506438810, 1e-3},
		{"thin branch", Saddle{1000, 10, 90, 0}, math.Pi * 10, 1e-3},
		{"thin branch at 30", Saddle{100000, 10, 30, 0}, 48.4422, 1e-3}, // ellipse 10 x 5: 9.68845 x 5
		{"pug mill stub", Saddle{168.3, 139.7, 90, 0}, 468.549, 0.002},  // worked out apart from this program
	} {
		got, err := c.s.LengthMm()
		if err != nil || math.Abs(got-c.want) > c.within {
			t.Errorf("%s: %.4f, %v; want %.4f", c.what, got, err, c.want)
		}
	}
	// The end of the stub, 4 thick, is flat across its wall: at its flanks the outside stands √(84.15² − 65.85²) − √(84.15² −
	// 69.85²) = 5.465 higher than where the inside touches; summed apart from this program it is 4.585 mm² on an average.
	// One that leans by 60° on what is all but flat touches on its obtuse side with the inside, 10 farther in: 10 / tan 60°.
	if o := (Saddle{168.3, 139.7, 90, 0}).Opened(4); math.Abs(o.Mm-5.465) > 1e-3 || math.Abs(o.Mm2-4.585) > 0.01 || o.AtDeg != 90 {
		t.Errorf("opens %+v", o)
	}
	if o := (Saddle{1e6, 80, 60, 0}).Opened(10); math.Abs(o.Mm-10/math.Sqrt(3)) > 1e-2 || o.AtDeg != 0 {
		t.Errorf("leaning, it opens %+v", o)
	}
	a, _ := Saddle{200, 80, 60, 20}.LengthMm()
	b, _ := Saddle{200, 80, 60, -20}.LengthMm()
	mid, _ := Saddle{200, 80, 60, 0}.LengthMm()
	near(t, "either side", a, b, 1e-9)
	if a <= mid {
		t.Errorf("offset branch %v is not longer than %v", a, mid)
	}
	for _, bad := range []Saddle{{}, {100, 0, 90, 0}, {100, 101, 90, 0}, {100, 80, 90, 11}, {100, 80, 90, -11}, {100, 80, 29, 0}, {100, 80, 91, 0}, {100, 80, math.NaN(), 0}, {100, 80, 90, math.NaN()}, {math.Inf(1), 80, 90, 0}} {
		if got, err := bad.LengthMm(); err == nil || got != 0 {
			t.Errorf("%+v: %v, want an error", bad, got)
		}
	}
}

func TestNames(t *testing.T) {
	seen := map[string]bool{"": true}
	for s := Square; s <= Fillet; s++ {
		if seen[s.Symbol()] {
			t.Errorf("shape %d: name %q empty or used twice", s, s.Symbol())
		}
		seen[s.Symbol()] = true
	}
}
