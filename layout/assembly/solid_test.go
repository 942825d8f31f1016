package assembly

import (
	"math"
	"slices"
	"testing"

	"centrepop/parts/geom"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tol {
		t.Errorf("%s: got %.6f, want %.6f", what, got, want)
	}
}

func nearVec(t *testing.T, what string, got, want Vec, tol float64) {
	t.Helper()
	if got.Sub(want).Len() > tol || math.IsNaN(got.X) {
		t.Errorf("%s: got %+v, want %+v", what, got, want)
	}
}

// plate is 200 × 100 × 12, its front face at z = 0, with a bore of 60 and four
// holes of 11 at (±80, ±30).
func plate() *Solid {
	s := Of(Cuboid(Vec{-100, -50, -12}, Vec{100, 50, 0})).Cut(Cylinder(30, -13, 1))
	for _, x := range []float64{-80, 80} {
		for _, y := range []float64{-30, 30} {
			s = s.Cut(Cylinder(5.5, -13, 1).At(Move(Vec{X: x, Y: y})))
		}
	}
	return s
}

// The volumes and centres are the elementary formulas of each body, worked by
// hand.
func TestBulkIsExact(t *testing.T) {
	t.Parallel()
	cone := func(r0, r1, h float64) (mm3, z float64) { // frustum, from its end r0
		v := math.Pi * h / 3 * (r0*r0 + r0*r1 + r1*r1)
		return v, h / 4 * (r0*r0 + 2*r0*r1 + 3*r1*r1) / (r0*r0 + r0*r1 + r1*r1)
	}
	coneMm3, coneZ := cone(80, 40, 120)
	for _, c := range []struct {
		name   string
		solid  *Solid
		mm3    float64
		centre Vec
	}{
		{"cuboid", Of(Cuboid(Vec{0, 0, 0}, Vec{10, 20, 30})), 6000, Vec{5, 10, 15}},
		{"cylinder", Of(Cylinder(10, -5, 25)), math.Pi * 100 * 30, Vec{Z: 10}},
		{"tube", Of(Tube(84.15, 78.15, 0, 500)), math.Pi * (84.15*84.15 - 78.15*78.15) * 500, Vec{Z: 250}},
		{"frustum", Of(Turned([]ZR{{0, 80}, {120, 40}}, nil)), coneMm3, Vec{Z: coneZ}},
		{"blind bore", Of(Turned([]ZR{{0, 20}, {40, 20}}, []ZR{{0, 10}, {30, 10}})),
			math.Pi * (400*40 - 100*30), Vec{Z: (400*40*20 - 100*30*15) / (400*40 - 100*30.0)}},
		{"plate with holes", plate(), (20000 - math.Pi*900 - 4*math.Pi*30.25) * 12, Vec{Z: -6}},
		{"slot", Of(Prism(Outline{geom.RectangleLoop(geom.Point{XMm: -30, YMm: -10}, geom.Point{XMm: 30, YMm: 10}, 10)}, 0, 8)), (800 + math.Pi*100) * 8, Vec{Z: 4}},
		{"half disc", Of(Prism(Outline{geom.Loop{{Point: geom.Point{XMm: -10, YMm: 0}}, {Point: geom.Point{XMm: 10, YMm: 0}, Bulge: 1}}}, 0, 3)), math.Pi * 50 * 3, Vec{Y: 40 / (3 * math.Pi), Z: 1.5}},
		{"ring of an outline", Of(Prism(Outline{circle(geom.Point{XMm: 5, YMm: 0}, 30), circle(geom.Point{XMm: 5, YMm: 0}, 20)}, 0, 4)), math.Pi * 500 * 4, Vec{X: 5, Z: 2}},
		{"two windows half a millimetre apart, and an island", Of(Prism(Outline{rectangle(0, 100), rectangle(10, 20), rectangle(20.5, 60), rectangle(30, 50)}, 0, 4)),
			// each as high as 50 less half its left edge
			(5000 - 450 - 39.5*39.75 + 20*35) * 4, Vec{(5000*50 - 450*15 - 39.5*39.75*40.25 + 700*40) / (5000 - 450 - 39.5*39.75 + 700), 25, 2}},
		{"mitred at both ends", Of(Mitred(Outline{geom.RectangleLoop(geom.Point{XMm: 0, YMm: 0}, geom.Point{XMm: 10, YMm: 20}, 0)}, End{0, 0.5}, End{30, -0.5})), 5000, Vec{14.0 / 3, 10, 15}},
		{"mitred round tube, off the middle", Of(Mitred(Outline{circle(geom.Point{XMm: 5, YMm: 7}, 10), circle(geom.Point{XMm: 5, YMm: 7}, 8)}, End{0, 0}, End{40, 1})),
			// about x = 5 a ring has (R² + r²)/4 = 41 of its area
			math.Pi * 36 * 45, Vec{(40*5 + 25 + 41) / 45.0, 7, (1600 + 80*5 + 25 + 41) / 2 / 45.0}},
		{"mitred angle", Of(Mitred(Outline{geom.PolygonLoop(geom.Point{XMm: 0, YMm: 0}, geom.Point{XMm: 60, YMm: 0}, geom.Point{XMm: 60, YMm: 5}, geom.Point{XMm: 5, YMm: 5}, geom.Point{XMm: 5, YMm: 40}, geom.Point{XMm: 0, YMm: 40})}, End{0, 1}, End{300, 0})),
			// a leg of 60 × 5 and one of 5 × 35: the area, by x, x², y, and xy
			475*300 - 9437.5, Vec{(9437.5*300 - (360000 + 35*125.0/3)) / (475*300 - 9437.5), ((750+3937.5)*300 - (60*60/2*5*5/2 + 12.5*(1600-25)/2)) / (475*300 - 9437.5), (475*90000 - (360000 + 35*125.0/3)) / 2 / (475*300 - 9437.5)}},
		{"hexagon", Of(Hexagon(17, 0, 10)), 17 * 17 * math.Sqrt(3) / 2 * 10, Vec{Z: 5}},
		{"leaning cylinder", Of(Leaning(30, 0, 30, geom.Point{XMm: 40, YMm: 0}, 100)), math.Pi * 900 * 100, Vec{X: 20, Z: 50}},
		{"leaning cone", Of(Leaning(80, 0, 40, geom.Point{XMm: 12, YMm: 0}, 120)), coneMm3, Vec{X: coneZ / 120 * 12, Z: coneZ}},
		// A cone of the flange's edge: the two cuts overlap and count once.
		{"two cuts in one place", Of(Cylinder(50, 0, 10)).Cut(Cylinder(20, -1, 11), Cylinder(20, -1, 11)), math.Pi * 2100 * 10, Vec{Z: 5}},
		{"counterbore", Of(Cuboid(Vec{-50, -50, 0}, Vec{50, 50, 20})).Cut(Turned([]ZR{{-1, 5.5}, {11, 5.5}, {11, 9}, {21, 9}}, nil)),
			200000 - math.Pi*(30.25*11+81*9), Vec{Z: (200000*10 - math.Pi*(30.25*11*5.5+81*9*15.5)) / (200000 - math.Pi*(30.25*11+81*9))}},
		{"shell", Of(Leaning(80, 0, 40, geom.Point{XMm: 12, YMm: 0}, 120)).Hollow(Leaning(40, 0, 20, geom.Point{XMm: 6, YMm: 0}, 120)), 0.75 * coneMm3, Vec{X: (coneZ / 120 * 12 * (1 - 0.125)) / 0.75, Z: coneZ}},
		{"leaning, off the ground", Of(Leaning(30, 50, 30, geom.Point{XMm: 40, YMm: 0}, 150)), math.Pi * 900 * 100, Vec{X: 20, Z: 100}},
		{"a ring milled into a block", Of(Cuboid(Vec{-50, -50, 0}, Vec{50, 50, 10})).Cut(Tube(20, 10, 4, 11)),
			100000 - math.Pi*300*6, Vec{Z: (100000*5 - math.Pi*300*6*7) / (100000 - math.Pi*300*6)}},
		{"two apart", Of(Cylinder(10, 0, 10), Cylinder(10, 30, 40)), math.Pi * 2000, Vec{Z: 20}},
		{"two bars in one another", Of(Cylinder(10, 0, 10), Cylinder(10, 5, 20)), math.Pi * 2000, Vec{Z: 10}},
		{"two plates in one another", Of(Cuboid(Vec{0, 0, 0}, Vec{10, 20, 5}), Cuboid(Vec{0, 0, 3}, Vec{10, 20, 8})), 1600, Vec{5, 10, 4}},
		{"a bore beside it and one in it", Of(Cylinder(50, 0, 10)).Cut(Cylinder(20, 30, 41), Cylinder(20, -1, 11)), math.Pi * 2100 * 10, Vec{Z: 5}},
		{"half of a bar", Of(Cylinder(10, 0, 10)).Within(Cuboid(Vec{-20, -20, 2}, Vec{20, 20, 6})), math.Pi * 400, Vec{Z: 4}},
	} {
		b := c.solid.Bulk()
		near(t, c.name+" volume", b.VolumeMm3, c.mm3, 1e-6*c.mm3)
		nearVec(t, c.name+" centre", b.Centre, c.centre, 1e-4)
		if b.ErrorMm3 > 1e-6*c.mm3 {
			t.Errorf("%s: error %g said for an exact volume", c.name, b.ErrorMm3)
		}
	}
}

// Two equal cylinders that cross at right angles share 16 r³ / 3 (Archimedes).
func TestBulkOfCrossedCylinders(t *testing.T) {
	t.Parallel()
	s := Of(Cylinder(10, -50, 50)).Within(Cylinder(10, -50, 50).At(Rotate(AxisX, 90)))
	b := s.Bulk()
	want := 16000.0 / 3
	near(t, "volume", b.VolumeMm3, want, 0.02*want)
	if b.ErrorMm3 <= 0 || b.ErrorMm3 > 0.1*want {
		t.Errorf("error said %g of %g", b.ErrorMm3, want)
	}
	if off := math.Abs(b.VolumeMm3 - want); off > 2*b.ErrorMm3 {
		t.Errorf("off by %g, said %g", off, b.ErrorMm3)
	}
}

// A square to a circle: area at half height by Simpson's rule on the ends and
// the middle, against a sum of 4000 levels of the same body.
func TestSquareToRound(t *testing.T) {
	t.Parallel()
	s := Of(SquareToRound(geom.Point{XMm: 200, YMm: 160}, 0, 50, geom.Point{XMm: 10, YMm: -5}, 150))
	r := s.add[0].shape.(*ruled)
	sum := 0.0
	const n = 4000
	for i := range n {
		a, _ := geom.PolygonLoop(r.level((float64(i) + 0.5) / n)...).Area()
		sum += a * 150 / n
	}
	near(t, "volume", s.Bulk().VolumeMm3, sum, 1e-6*sum)
	first, _ := geom.PolygonLoop(r.a...).Area()
	last, _ := geom.PolygonLoop(r.b...).Area()
	near(t, "rectangle", first, 32000, 1e-6)
	near(t, "circle", last, math.Pi*2500, 1e-6)
	for _, c := range []struct {
		at   Vec
		want bool
	}{
		{Vec{99, 79, 1}, true}, {Vec{99, 79, 20}, false}, {Vec{99, 0, 4}, false}, {Vec{99, 0, 1}, true},
		{Vec{59, -5, 149.5}, true}, {Vec{61, -5, 149.9}, false}, {Vec{0, 0, 151}, false}, {Vec{0, 0, -1}, false},
	} {
		if got := s.Dist(c.at) < -surfaceMm; got != c.want {
			t.Errorf("%+v inside: %v", c.at, got)
		}
	}
}

func TestDist(t *testing.T) {
	t.Parallel()
	ring := Of(Tube(50, 30, 0, 20))
	disc := Of(Prism(Outline{circle(geom.Point{}, 40)}, 0, 10))
	// A corner that stands twice but for the last digit, and a place level with it.
	twice := Of(Prism(Outline{geom.PolygonLoop(geom.Point{}, geom.Point{XMm: 10, YMm: 0}, geom.Point{XMm: 20, YMm: 15.875}, geom.Point{XMm: 20, YMm: 15.875 + 2e-15}, geom.Point{XMm: 10, YMm: 30}, geom.Point{XMm: 0, YMm: 30})}, 0, 10))
	for _, c := range []struct {
		name  string
		solid *Solid
		at    Vec
		want  float64
	}{
		{"in the wall", ring, Vec{40, 0, 10}, -10},
		{"in the bore", ring, Vec{0, 0, 10}, 30},
		{"beside", ring, Vec{0, 56, 10}, 6},
		{"off the rim", ring, Vec{0, 53, 24}, 5},
		{"disc's centre", disc, Vec{0, 0, 5}, -5},
		{"near its round", disc, Vec{0, 37, 5}, -3},
		{"off its corner", disc, Vec{0, -43, 14}, 5},
		{"in a hole", plate(), Vec{80, 30, -6}, 5.5},
		{"level with a corner that stands twice", twice, Vec{4, 15.875, 5}, -4},
		{"beside a hole", plate(), Vec{80, 37, -6}, -1.5},
		{"solid at its axis", Of(Cylinder(10, 0, 30)), Vec{0, 0, 15}, -10},
		{"blind bore's floor", Of(Turned([]ZR{{0, 20}, {40, 20}}, []ZR{{0, 10}, {30, 10}})), Vec{0, 0, 32}, -2},
	} {
		near(t, c.name, c.solid.Dist(c.at), c.want, 1e-9)
	}
}

// An upright rectangle is as far from everything as its four lines are.
func TestUpright(t *testing.T) {
	t.Parallel()
	for name, s := range map[string]Simple{
		"cuboid": Cuboid(Vec{-3, -2, 0}, Vec{5, 7, 1}), "bar": Cylinder(4, -6, 6), "tube": Tube(8, 4, -6, 6),
	} {
		var g *region
		switch shape := s.shape.(type) {
		case *prism:
			g = shape.g
		case *turned:
			g = shape.g
		}
		if !g.upright {
			t.Errorf("%s is not seen to be upright", name)
		}
		lines := *g
		lines.upright = false
		for x := -9.0; x <= 9; x += 0.75 {
			for y := 0.0; y <= 9; y += 0.75 {
				near(t, name, g.dist(geom.Point{XMm: x, YMm: y}), lines.dist(geom.Point{XMm: x, YMm: y}), 1e-12)
			}
		}
	}
	if newTurned([]ZR{{0, 5}, {10, 3}}, nil).g.upright {
		t.Error("a cone is upright")
	}
	// Four sides: one of them bowed, or slanting, or two that lean.
	for side := range 4 {
		bowed := geom.RectangleLoop(geom.Point{}, geom.Point{XMm: 10, YMm: 6}, 0)
		slanting := slices.Clone(bowed)
		bowed[side].Bulge, slanting[side].XMm = 0.1, 5
		leaning := slices.Clone(bowed)
		leaning[side].Bulge, leaning[side].XMm, leaning[(side+1)%4].XMm = 0, leaning[side].XMm+1, leaning[(side+1)%4].XMm+1
		for name, loop := range map[string]geom.Loop{"bowed": bowed, "slanting": slanting, "leaning": leaning} {
			g := newRegion(Outline{loop})
			if upright := name == "leaning" && bowed[side].XMm == bowed[(side+1)%4].XMm; g.upright != upright {
				t.Errorf("%s at side %d: upright %v", name, side, g.upright)
			}
		}
	}
}

func TestSpans(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name        string
		solid       *Solid
		from, along Vec
		want        []Span
	}{
		{"across a tube", Of(Tube(50, 30, 0, 20)), Vec{-100, 0, 10}, AxisX, []Span{{50, 70}, {130, 150}}},
		{"along its wall", Of(Tube(50, 30, 0, 20)), Vec{40, 0, -5}, AxisZ, []Span{{5, 25}}},
		{"grazing its round", Of(Tube(50, 30, 0, 20)), Vec{-100, 50, 10}, AxisX, nil},
		{"through a hole", plate(), Vec{80, 30, 10}, AxisZ.Times(-1), nil},
		{"beside it", plate(), Vec{80, 36, 10}, AxisZ.Times(-1), []Span{{10, 22}}},
		{"through plate and bore", plate(), Vec{-150, 0, -6}, AxisX, []Span{{50, 120}, {180, 250}}},
		{"round", Of(Prism(Outline{circle(geom.Point{}, 25)}, 0, 10)), Vec{-40, 15, 5}, AxisX, []Span{{20, 60}}},
		{"cone", Of(Turned([]ZR{{0, 80}, {120, 40}}, nil)), Vec{-100, 0, 60}, AxisX, []Span{{40, 160}}},
		{"cone at a slant", Of(Turned([]ZR{{0, 40}, {40, 0}}, nil)), Vec{-30, 0, 0}, Vec{1, 0, 1}.Unit(), []Span{{0, 35 * math.Sqrt2}}},
		{"leaning, off the ground", Of(Leaning(30, 50, 30, geom.Point{XMm: 40, YMm: 0}, 150)), Vec{-100, 0, 100}, AxisX, []Span{{90, 150}}},
		{"in front of a shoulder", Of(Turned([]ZR{{0, 20}, {10, 20}, {10, 40}, {30, 40}}, nil)), Vec{-100, 0, 20}, AxisX, []Span{{60, 140}}},
		{"square end", Of(SquareToRound(geom.Point{XMm: 200, YMm: 160}, 0, 50, geom.Point{}, 150)), Vec{-200, 0, 75}, AxisX, []Span{{125, 275}}},
	} {
		got := c.solid.Spans(c.from, c.along)
		if len(got) != len(c.want) {
			t.Errorf("%s: got %v, want %v", c.name, got, c.want)
			continue
		}
		for i := range got {
			near(t, c.name, got[i].FromMm, c.want[i].FromMm, 2e-2)
			near(t, c.name, got[i].ToMm, c.want[i].ToMm, 2e-2)
		}
	}
}

func TestBoxOfTurned(t *testing.T) {
	t.Parallel()
	b := Body{Solid: plate(), Pose: Rotate(AxisX, 90).Shifted(Vec{Z: 7})}
	nearVec(t, "low", b.Box().Low, Vec{-100, 0, -43}, 1e-9)
	nearVec(t, "high", b.Box().High, Vec{100, 12, 57}, 1e-9)
}

// circle is a loop of two arcs.
func circle(centre geom.Point, radiusMm float64) geom.Loop {
	return geom.Loop{
		{Point: geom.Point{XMm: centre.XMm - radiusMm, YMm: centre.YMm}, Bulge: 1},
		{Point: geom.Point{XMm: centre.XMm + radiusMm, YMm: centre.YMm}, Bulge: 1},
	}
}

// TestSquareToRoundLimbs: seen along a side of its square, the triangles on the
// two sides stand on edge; their slanting edges are still the outline of what is
// seen: from the corner (±100, 0) to the quarter point (±50, 150), by the
// definition of the body.
func TestSquareToRoundLimbs(t *testing.T) {
	t.Parallel()
	body := Body{ID: "throat", Solid: Of(SquareToRound(geom.Point{XMm: 200, YMm: 160}, 0, 50, geom.Point{}, 150)), Pose: Move(Vec{})}
	side := Pose{X: AxisX, Y: AxisZ, Z: AxisY.Times(-1), At: Vec{Y: -500}}
	found := map[float64]bool{}
	for _, l := range Look([]Body{body}, side, 3) {
		a, b := l.Points[0], l.Points[len(l.Points)-1]
		if a.YMm > b.YMm {
			a, b = b, a
		}
		if math.Abs(a.YMm) < 0.1 && math.Abs(b.YMm-150) < 0.1 && math.Abs(math.Abs(a.XMm)-100) < 0.1 && math.Abs(math.Abs(b.XMm)-50) < 0.1 {
			found[math.Copysign(1, a.XMm)] = true
		}
	}
	if len(found) != 2 {
		t.Errorf("the outline has sides %v, want both", found)
	}
}

// rectangle runs from one x to another, centred on y = 25 and as high as 50 less half its left edge.
func rectangle(from, to float64) geom.Loop {
	return geom.RectangleLoop(geom.Point{XMm: from, YMm: from / 4}, geom.Point{XMm: to, YMm: 50 - from/4}, 0)
}

// A disc of 124 with one flat 2 deep from end to end, of which all corners lie on the ends, looks the same turned by no more than
// nothing; with four flats by quarter turns. By geometry.
func TestSameWithFlats(t *testing.T) {
	t.Parallel()
	disc := func(clocks ...float64) *Solid {
		var flats []Simple
		for _, deg := range clocks {
			flats = append(flats, Cuboid(Vec{-124, -9, 60}, Vec{124, 9, 64}).At(Frame(Vec{Z: -9}, ClockWay(deg), AxisZ)))
		}
		return Of(Cylinder(62, -18, 0)).Cut(flats...)
	}
	for _, turn := range []float64{90, 180, 270} {
		if disc(90).Same(Rotate(AxisZ, turn)) || !disc(0, 90, 180, 270).Same(Rotate(AxisZ, turn)) {
			t.Errorf("turned by %g", turn)
		}
	}
}
