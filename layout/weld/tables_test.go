package weld

import (
	"maps"
	"math"
	"testing"

	"centrepop/parts/golden"
)

// The ranges of ISO 9692-1 and the values taken in them, the figures of the code again
// (from memory, unchecked): angle, gap, root face, each least, used, greatest.
func TestPrepFigures(t *testing.T) {
	t.Parallel()
	c := func(min, use, max float64) Choice { return Choice{min, use, max} }
	none := Choice{}
	for _, row := range []struct {
		t                float64
		e                Edges
		s                Sides
		angle, gap, face Choice
	}{
		{3, BothEdges, OneSide, none, c(1.5, 3, 3), none},
		{6, OneEdge, TwoSides, none, c(0, 3, 3), none},
		{8, BothEdges, OneSide, c(40, 60, 60), c(0, 2, 4), c(0, 1.5, 2)},
		{20, BothEdges, OneSide, c(60, 60, 60), c(1, 2.5, 4), c(2, 2, 4)},
		{20, BothEdges, TwoSides, c(60, 60, 60), c(1, 2, 3), c(0, 2, 2)},
		{8, OneEdge, OneSide, c(35, 45, 60), c(2, 2.5, 4), c(1, 1.5, 2)},
		{20, OneEdge, OneSide, c(35, 45, 60), c(2, 3, 4), c(1, 1.5, 2)},
		{20, OneEdge, TwoSides, c(35, 45, 60), c(1, 2, 4), c(0, 2, 2)},
	} {
		p, err := ButtPrep(row.t, row.e, row.s)
		if err != nil || p.AngleDeg != row.angle || p.GapMm != row.gap || p.RootFaceMm != row.face {
			t.Errorf("%v mm, edges %d, sides %d: %+v, %v", row.t, row.e, row.s, p, err)
		}
	}
	if (BothEdges != 0) || OneEdge != 1 || OneSide != 0 || TwoSides != 1 {
		t.Error("edges and sides")
	}
	for _, bad := range [][2]int{{-1, 0}, {2, 0}, {0, -1}, {0, 2}} {
		if p, err := ButtPrep(5, Edges(bad[0]), Sides(bad[1])); err == nil {
			t.Errorf("edges and sides %v: %+v", bad, p)
		}
	}
	// A back run is asked for only when both sides are welded.
	for s, want := range map[Sides]string{OneSide: "", TwoSides: "gouge or grind the root and put a back run"} {
		if p, _ := ButtPrep(9, BothEdges, s); p.Note != want {
			t.Errorf("sides %d: note %q", s, p.Note)
		}
	}
	for name, bad := range map[string]Prep{
		"gap":       {Shape: SingleV, GapMm: Choice{Use: -1}, AngleDeg: Choice{Use: 60}},
		"root face": {Shape: SingleV, RootFaceMm: Choice{Use: -1}, AngleDeg: Choice{Use: 60}},
		"angle":     {Shape: SingleV, AngleDeg: Choice{Use: 90}},
		"no angle":  {Shape: SingleV, AngleDeg: Choice{Use: -1}},
		"a fillet":  {Shape: Fillet, AngleDeg: Choice{Use: 60}},
	} {
		if a, err := bad.GrooveArea(10, 0); err == nil || a != 0 {
			t.Errorf("%s: %v", name, a)
		}
	}
	v := Prep{Shape: SingleV, AngleDeg: Choice{Use: 60}}
	for _, bad := range [][2]float64{{0, 1}, {10, -1}, {math.Inf(1), 0}, {10, math.Inf(1)}} {
		if a, err := v.GrooveArea(bad[0], bad[1]); err == nil || a != 0 {
			t.Errorf("thickness and cap %v: %v", bad, a)
		}
	}
	if a, err := v.GrooveArea(0.5, 0); err != nil || math.Abs(a-0.25*math.Tan(math.Pi/6)) > 1e-12 {
		t.Errorf("half a millimetre: %v, %v", a, err)
	}
}

// Squaring up, all common practice: the figures of the code again, which no source stands behind.
func TestSquareUpFigures(t *testing.T) {
	t.Parallel()
	for d, want := range map[float64][2]float64{0.5: {1.5, 2}, 150: {1.5, 2}, 150.5: {2, 3}, 300: {2, 3}, 300.5: {3, 4}, 600: {3, 4}, 600.5: {4, 5}, 1000: {4, 5}} {
		if a, err := SquareUp(d, d/15); err != nil || a.FaceMm != want[0] || a.BoreMm != want[1] || a.Source == "" {
			t.Errorf("SquareUp(%v) = %+v, %v; want %v", d, a, err, want)
		}
		if a, err := SquareUp(d, d/15.1); err != nil || a.FaceMm != 1.5*want[0] || a.BoreMm != want[1] {
			t.Errorf("thin SquareUp(%v) = %+v, %v", d, a, err)
		}
	}
	if a, err := SquareUp(100, 0); err == nil || a != (Allowance{}) {
		t.Errorf("no thickness: %+v", a)
	}
	for _, bad := range [][3]float64{{6, 0, 100}, {6, 8, 0}, {0, 8, 100}} {
		if s, err := FilletShrinkage(bad[0], bad[1], bad[2]); err == nil || s != (Shrinkage{}) {
			t.Errorf("shrinkage of %v: %+v", bad, s)
		}
	}
	if s, err := FilletShrinkage(6, 8, 3000); err != nil || s.Source != twi {
		t.Errorf("leg of three quarters: %+v, %v", s, err)
	}
}

// On the very edge of each rule.
func TestWeldEdges(t *testing.T) {
	t.Parallel()
	if positive(0) || !positive(0.5) || positive(math.Inf(1)) || !notNegative(0) || notNegative(-0.5) || notNegative(math.Inf(1)) {
		t.Error("positive and notNegative")
	}
	if LeastThroatMm != 3 || gammaM2 != 1.25 {
		t.Error("EN 1993-1-8: least throat 3, gamma 1.25")
	}
	for _, c := range []struct {
		throat, length float64
		closed, ok     bool
	}{{3, 30, true, true}, {3, 29.9, true, false}, {3, 36, false, true}, {3, 35.9, false, false}, {8, 48, true, true}, {8, 47.9, true, false}, {8, 64, false, true}} {
		n, err := FilletForce(200, c.throat, c.length, c.closed)
		if (err == nil) != c.ok || !c.ok && n != 0 {
			t.Errorf("throat %v, length %v: %v, %v", c.throat, c.length, n, err)
		}
	}
	near(t, "throat of half a millimetre", Throat(0.5), 0.353553, 1e-6)
	if Throat(0) != 0 {
		t.Error("throat and leg of nothing")
	}
	// A saddle whose branch just touches the main's side, and one a hair beyond.
	if mm, err := (Saddle{100, 60, 90, 20}).LengthMm(); err != nil || mm < math.Pi*60 {
		t.Errorf("touching: %v, %v", mm, err)
	}
	if mm, err := (Saddle{100, 60, 90, 20.001}).LengthMm(); err == nil || mm != 0 {
		t.Errorf("beyond: %v, %v", mm, err)
	}
	for deg, ok := range map[float64]bool{29.9: false, 30: true, 90: true, 90.1: false} {
		if mm, err := (Saddle{100, 60, deg, 0}).LengthMm(); (err == nil) != ok || !ok && mm != 0 {
			t.Errorf("at %v: %v, %v", deg, mm, err)
		}
	}
	for deg, ok := range map[float64]bool{29.9: false, 30: true, 60: true, 60.1: false} {
		if a, err := ChamferArea(4, deg); (err == nil) != ok || !ok && a != 0 {
			t.Errorf("chamfer at %v: %v, %v", deg, a, err)
		}
	}
	for depth, want := range map[float64]float64{3: 0, 3.5: 0.5} {
		if a, err := ChamferThroat(depth, 45, Stick, true); (err == nil) != (want > 0) || math.Abs(a-want) > 1e-12 {
			t.Errorf("throat of %v: %v, %v", depth, a, err)
		}
	}
	for _, p := range []Process{MAG, MIG, FluxCored, MetalCored, SelfShielded} {
		if a, err := ChamferThroat(5, 45, p, true); err != nil || a != 5 {
			t.Errorf("wire process %d: %v, %v", p, a, err)
		}
	}
	if leg, _, err := SuggestLeg(FilletJoint{}); err == nil || leg != 0 {
		t.Errorf("leg of nothing: %v, %v", leg, err)
	}
	for _, bad := range [][3]float64{{0, 1, 1}, {1, 0, 1}, {1, 1, 0}, {1e200, 1e200, 1}} {
		if f, err := FillerFor(bad[0], bad[1], bad[2], MAG); err == nil || f != (Filler{}) {
			t.Errorf("filler of %v: %+v", bad, f)
		}
	}
	// The greatest plans, and one more.
	if p, err := TackCircle(400*100/math.Pi, 3.1, 3.1, 0); err != nil || len(p.Tacks) != 400 {
		t.Errorf("400 tacks: %d, %v", len(p.Tacks), err)
	}
	if p, err := TackCircle(401*100/math.Pi, 3.1, 3.1, 0); err == nil {
		t.Errorf("over 400 tacks: %d", len(p.Tacks))
	}
	for layers, ok := range map[int]bool{0: false, 1: true, 50: true, 51: false} {
		if _, err := RunOrder(100, layers, 0); (err == nil) != ok {
			t.Errorf("%d layers: %v", layers, err)
		}
	}
	for n, ok := range map[float64]bool{400: true, 401: false} {
		if _, err := RunOrder(n*150/math.Pi, 1, 0); (err == nil) != ok {
			t.Errorf("%v sectors: %v", n, err)
		}
	}
	for runs, ok := range map[float64]bool{1000: true, 1001: false} {
		if f, err := FillerFor(runs*18, 100, 7850, Stick); (err == nil) != ok || ok && f.Runs != 1000 {
			t.Errorf("%v runs: %+v, %v", runs, f, err)
		}
	}
}

// Each process: least efficiency of the published list, and the area of a run, which is common
// practice: the figures of the code again.
func TestProcesses(t *testing.T) {
	t.Parallel()
	want := map[Process]laid{
		Stick: {0.60, 18}, SelfShielded: {0.75, 25}, MIG: {0.92, 25}, MAG: {0.92, 25}, FluxCored: {0.82, 30}, MetalCored: {0.94, 30}, TIG: {0.94, 10},
	}
	if !maps.Equal(laidBy, want) {
		t.Errorf("%v, want %v", laidBy, want)
	}
}

// A value goes to the nearest step that lies in the range, or stays: sixteenths of an inch.
func TestStepped(t *testing.T) {
	t.Parallel()
	const step = 25.4 / 16
	for in, want := range map[Choice]float64{{0, 2, 4}: step, {1, 2.5, 4}: 2 * step, {2, 2, 3.1}: 2, {0, 1.5, 1.58}: 1.5, {0, 0, 2}: 0} {
		if got := in.Stepped(step); got != (Choice{in.Min, want, in.Max}) {
			t.Errorf("%v: %v, want %v", in, got, want)
		}
	}
}

// A groove in 12 mm is as much less deep as its root face is high: by plane geometry, gap × 12 and one
// or two triangles on what is left.
func TestRootFace(t *testing.T) {
	t.Parallel()
	tan30 := math.Tan(math.Pi / 6)
	for _, c := range []struct {
		shape          Shape
		deg, gap, face float64
		want           float64
	}{
		{SingleV, 60, 2, 2, 24 + 100*tan30}, {SingleY, 60, 0, 4, 64 * tan30}, {SingleBevel, 45, 2.5, 1, 30 + 60.5}, {DoubleV, 60, 2, 2, 24 + 50*tan30}, {DoubleBevel, 45, 0, 2, 25}, {Square, 0, 3, 0, 36},
	} {
		p := Prep{Shape: c.shape, AngleDeg: Choice{Use: c.deg}, GapMm: Choice{Use: c.gap}, RootFaceMm: Choice{Use: c.face}}
		if got, err := p.GrooveArea(12, 0); err != nil || math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %v, %v, want %v", c.shape.Symbol(), got, err, c.want)
		}
	}
}

// The yield of filler whole: what of it was looked up, testdata/reference/tables.csv says.
func TestFillerTable(t *testing.T) {
	t.Parallel()
	golden.Held(t, "filler by process: least yield, mm² a run", golden.Pairs(laidBy))
}
