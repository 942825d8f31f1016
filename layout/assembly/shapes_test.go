package assembly

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"centrepop/parts/geom"
)

// shapesByFormula are solids with what is inside by the formula of each body.
var shapesByFormula = []struct {
	name  string
	solid *Solid
	in    func(p Vec) bool
}{
	{"cylinder", Of(Cylinder(30, -10, 40)), func(p Vec) bool { return math.Hypot(p.X, p.Y) < 30 && p.Z > -10 && p.Z < 40 }},
	{"tube across", Of(Tube(40, 25, -30, 30).At(Rotate(AxisY, 90))), func(p Vec) bool {
		r := math.Hypot(p.Y, p.Z)
		return r < 40 && r > 25 && math.Abs(p.X) < 30
	}},
	{"cone", Of(Turned([]ZR{{0, 50}, {40, 10}}, nil)), func(p Vec) bool { return p.Z > 0 && p.Z < 40 && math.Hypot(p.X, p.Y) < 50-p.Z }},
	{"cone to its point", Of(Turned([]ZR{{-20, 0}, {30, 25}}, nil)), func(p Vec) bool { return p.Z < 30 && math.Hypot(p.X, p.Y) < (p.Z+20)/2 }},
	{"blind bore", Of(Turned([]ZR{{-20, 40}, {30, 40}}, []ZR{{-20, 15}, {10, 15}})), func(p Vec) bool {
		r := math.Hypot(p.X, p.Y)
		return r < 40 && math.Abs(p.Z-5) < 25 && (r > 15 || p.Z > 10)
	}},
	{"bore blind from behind", Of(Turned([]ZR{{-20, 40}, {30, 40}}, []ZR{{10, 15}, {30, 15}})), func(p Vec) bool {
		r := math.Hypot(p.X, p.Y)
		return r < 40 && math.Abs(p.Z-5) < 25 && (r > 15 || p.Z < 10)
	}},
	{"slot", Of(Prism(Outline{geom.RectangleLoop(geom.Point{XMm: -40, YMm: -12}, geom.Point{XMm: 40, YMm: 12}, 12)}, 5, 25)), func(p Vec) bool {
		return math.Hypot(math.Max(math.Abs(p.X)-28, 0), p.Y) < 12 && p.Z > 5 && p.Z < 25
	}},
	{"half disc", Of(Prism(Outline{geom.Loop{{Point: geom.Point{XMm: -40, YMm: 0}}, {Point: geom.Point{XMm: 40, YMm: 0}, Bulge: 1}}}, -15, 15)), func(p Vec) bool { return p.Y > 0 && math.Hypot(p.X, p.Y) < 40 && math.Abs(p.Z) < 15 }},
	{"hexagon", Of(Hexagon(60, -10, 20)), func(p Vec) bool {
		far := 0.0
		for k := range 6 {
			q := Clock(1, 30+60*float64(k))
			far = math.Max(far, p.X*q.X+p.Y*q.Y)
		}
		return far < 30 && p.Z > -10 && p.Z < 20
	}},
	{"plate", plate(), func(p Vec) bool {
		hole := math.Hypot(math.Abs(p.X)-80, math.Abs(p.Y)-30) < 5.5 || math.Hypot(p.X, p.Y) < 30
		return math.Abs(p.X) < 100 && math.Abs(p.Y) < 50 && p.Z < 0 && p.Z > -12 && !hole
	}},
	{"pyramid, cut off", Of(simple(newRuled([]geom.Point{{XMm: -40, YMm: -40}, {XMm: 40, YMm: -40}, {XMm: 40, YMm: 40}, {XMm: -40, YMm: 40}}, []geom.Point{{XMm: -20, YMm: -20}, {XMm: 20, YMm: -20}, {XMm: 20, YMm: 20}, {XMm: -20, YMm: 20}}, -10, 30))), func(p Vec) bool {
		return math.Max(math.Abs(p.X), math.Abs(p.Y)) < 40-(p.Z+10)/2 && p.Z > -10 && p.Z < 30
	}},
	{"leaning prism", Of(simple(newRuled([]geom.Point{{XMm: -30, YMm: -20}, {XMm: 30, YMm: -20}, {XMm: 30, YMm: 20}, {XMm: -30, YMm: 20}}, []geom.Point{{XMm: -10, YMm: -20}, {XMm: 50, YMm: -20}, {XMm: 50, YMm: 20}, {XMm: -10, YMm: 20}}, 0, 40))), func(p Vec) bool {
		return math.Abs(p.X-p.Z/2) < 30 && math.Abs(p.Y) < 20 && p.Z > 0 && p.Z < 40
	}},
	{"bar mitred at one end", Of(Mitred(Outline{geom.RectangleLoop(geom.Point{XMm: -20, YMm: -15}, geom.Point{XMm: 20, YMm: 15}, 0)}, End{-30, 0}, End{25, -0.5})), func(p Vec) bool {
		return math.Abs(p.X) < 20 && math.Abs(p.Y) < 15 && p.Z > -30 && p.Z < 25-p.X/2
	}},
	{"bars across, what both hold", Of(Cylinder(20, -60, 60)).Within(Cylinder(25, -60, 60).At(Rotate(AxisX, 90))), func(p Vec) bool {
		return math.Hypot(p.X, p.Y) < 20 && math.Hypot(p.X, p.Z) < 25
	}},
	{"block with a slanting window", Of(Cuboid(Vec{-30, -25, -20}, Vec{30, 25, 20})).Cut(Cuboid(Vec{-8, -6, -80}, Vec{8, 6, 80}).At(Rotate(AxisX, 40))), func(p Vec) bool {
		q := Rotate(AxisX, -40).Apply(p)
		return math.Abs(p.X) < 30 && math.Abs(p.Y) < 25 && math.Abs(p.Z) < 20 && !(math.Abs(q.X) < 8 && math.Abs(q.Y) < 6)
	}},
}

// TestShapes: by a thousand points and lines each, the distance has the sign of
// what is inside and is never more than to a point of the surface; a line is in
// the solid where its points are; the box holds all; and the faces cover the
// surface.
func TestShapes(t *testing.T) {
	t.Parallel()
	for _, s := range shapesByFormula {
		t.Run(s.name, func(t *testing.T) {
			t.Parallel()
			rng := rand.New(rand.NewPCG(11, 13))
			some := func(size float64) Vec {
				return Vec{(2*rng.Float64() - 1) * size, (2*rng.Float64() - 1) * size, (2*rng.Float64() - 1) * size}
			}
			skin := s.solid.Surface(6)
			if len(skin) < 20 {
				t.Fatalf("%d points of the surface", len(skin))
			}
			for _, p := range skin {
				if d := s.solid.Dist(p); math.Abs(d) > 1e-4 {
					t.Fatalf("%v of the surface is %v off it", p, d)
				}
			}
			box := s.solid.Box()
			for range 1000 {
				p := some(60)
				d := s.solid.Dist(p)
				if math.Abs(d) > 1e-6 && (d < 0) != s.in(p) {
					t.Fatalf("%v: %v off, inside %v", p, d, s.in(p))
				}
				if s.in(p) && !box.within(p, 0) {
					t.Fatalf("%v lies outside %v", p, box)
				}
				for _, q := range skin {
					if q.Sub(p).Len() < math.Abs(d)-1e-4 {
						t.Fatalf("%v: %v off, but %v is %v away", p, d, q, q.Sub(p).Len())
					}
				}
			}
			turned, reach := Rotate(Vec{3, 2, 6}.Unit(), 50).Shifted(Vec{X: 7, Y: 2}), 0.0
			for _, p := range skin {
				q := turned.Apply(p)
				reach = max(reach, math.Hypot(q.X, q.Y))
			}
			near(t, "reach", s.solid.ReachMm(turned, 6), reach, 1e-3)
			if len(s.solid.add)+len(s.solid.cut)+len(s.solid.within) == 1 { // exact but for bodies with leaning sides and ends
				_, leans := s.solid.add[0].shape.(*ruled)
				p, mitred := s.solid.add[0].shape.(*prism)
				if !leans && !(mitred && p.high.Rise != 0) {
					fine := s.solid.Surface(2)
					for range 60 {
						p := some(60)
						least := math.Inf(1)
						for _, q := range fine {
							least = math.Min(least, q.Sub(p).Len())
						}
						if d := math.Abs(s.solid.Dist(p)); d > least+1e-4 || d < math.Sqrt(least*least-2)-1e-4 {
							t.Fatalf("%v: %v off, the nearest of the surface is %v away", p, d, least)
						}
					}
				}
			}
			met := 0
			for range 300 {
				from, along := some(80), some(1).Unit()
				spans := s.solid.Spans(from, along)
				met += len(spans)
				for x := -200.0; x < 200; x += 0.37 {
					within, near := false, false
					for _, sp := range spans {
						within = within || x > sp.FromMm && x < sp.ToMm
						near = near || math.Abs(x-sp.FromMm) < 1e-3 || math.Abs(x-sp.ToMm) < 1e-3
					}
					if p := from.Add(along.Times(x)); !near && within != s.in(p) {
						t.Fatalf("%v of the line %v %v: in a stretch %v, inside %v: %v", x, from, along, within, s.in(p), spans)
					}
				}
				for _, sp := range spans {
					end := from.Add(along.Times(sp.FromMm))
					if least := slices.MinFunc(skin, func(a, b Vec) int { return cmp.Compare(a.Sub(end).Len(), b.Sub(end).Len()) }); least.Sub(end).Len() > 9 {
						t.Fatalf("no point of the surface is near %v", end)
					}
				}
			}
			if met < 10 {
				t.Errorf("%d stretches", met)
			}
			// Cut off at both ends.
			for range 100 {
				from, along := some(60), some(1).Unit()
				for _, sp := range s.solid.spans(from, along, -20, 35) {
					if sp.FromMm < -20 || sp.ToMm > 35 || !s.in(from.Add(along.Times((sp.FromMm+sp.ToMm)/2))) {
						t.Fatalf("%v of −20 to 35", sp)
					}
				}
			}
		})
	}
}

// TestBoxMeetsLine holds the test of a box against points of the line.
func TestBoxMeetsLine(t *testing.T) {
	t.Parallel()
	rng := rand.New(rand.NewPCG(5, 6))
	box := Box{Vec{-10, -20, -5}, Vec{15, 20, 30}}
	inside := func(p Vec, more float64) bool { return box.within(p, more) }
	for range 3000 {
		o := Vec{rng.Float64()*80 - 40, rng.Float64()*80 - 40, rng.Float64()*80 - 40}
		d := Vec{rng.Float64() - 0.5, rng.Float64() - 0.5, rng.Float64() - 0.5}
		switch rng.IntN(4) { // along an axis
		case 0:
			d.Y, d.Z = 0, 0
		case 1:
			d.X = 0
		}
		d = d.Unit()
		low, high := -20+10*rng.Float64(), 40*rng.Float64()
		on, near := false, false
		for x := low; x <= high; x += 0.05 {
			p := o.Add(d.Times(x))
			on, near = on || inside(p, 0), near || inside(p, 0.1)
		}
		if got := box.meetsLine(o, d, low, high); on && !got || got && !near {
			t.Fatalf("%v + %v, %v to %v: %v", o, d, low, high, got)
		}
	}
	// Faces count.
	for _, c := range []struct {
		o, d Vec
		want bool
	}{
		{Vec{15, 0, -50}, AxisZ, true}, {Vec{15.001, 0, -50}, AxisZ, false}, {Vec{-10.001, 0, -50}, AxisZ, false}, {Vec{-10, 0, -50}, AxisZ, true},
		{Vec{0, 20 + 0.9e-6, -50}, AxisZ, true}, {Vec{0, -20 - 0.9e-6, -50}, AxisZ, true}, {Vec{-50, 20.1, 0}, AxisX, false},
	} {
		if got := box.meetsLine(c.o, c.d, -100, 100); got != c.want {
			t.Errorf("%v + %v: %v", c.o, c.d, got)
		}
	}
	if !nothing().Moved(Move(AxisX)).Empty() {
		t.Error("nothing, moved")
	}
}

// TestQuadratic: roots that are known, small beside large ones too.
func TestQuadratic(t *testing.T) {
	t.Parallel()
	all := func(float64) bool { return true }
	for _, r := range [][2]float64{{1, 2}, {-3, 4}, {-2, -7}, {1e-6, 1e6}, {-1e6, 1e-6}, {0, 5}, {0, -5}, {3, 3}} {
		for _, a := range []float64{1, -2, 0.5} {
			got := quadratic(a, -a*(r[0]+r[1]), a*r[0]*r[1], nil, all)
			slices.Sort(got)
			want := []float64{min(r[0], r[1]), max(r[0], r[1])}
			if len(got) == 1 && r[0] == r[1] {
				got = append(got, got[0])
			}
			for i := range want {
				if len(got) != 2 || math.Abs(got[i]-want[i]) > 1e-9*math.Max(1e-6, math.Abs(want[i])) {
					t.Errorf("%v times %v: %v", a, r, got)
					break
				}
			}
		}
	}
	if got := quadratic(0, 2, -8, nil, all); len(got) != 1 || got[0] != 4 {
		t.Errorf("2 t = 8: %v", got)
	}
	if len(quadratic(0, 0, 1, nil, all))+len(quadratic(1, 0, 1, nil, all)) != 0 || quadratic(1, 0, 0, nil, all)[0] != 0 {
		t.Error("no root")
	}
}

// TestLimbs: seen across, a turned body's limbs only touch the line of sight, and
// its rings are where its contour turns by more than 10°.
func TestLimbs(t *testing.T) {
	t.Parallel()
	solids := []*turned{newTurned([]ZR{{0, 50}, {40, 10}}, nil), newTurned([]ZR{{-5, 20}, {30, 25}, {60, 25}}, nil), newTurned([]ZR{{0, 30}, {20, 30}}, []ZR{{0, 10}, {20, 10}})}
	for _, s := range solids {
		body := Of(simple(s))
		for _, view := range []Vec{AxisX, AxisY.Times(-1), {1, 2, 0.3}, {-1, 0.5, -0.4}} {
			view = view.Unit()
			limbs := 0
			for _, line := range s.edges(view) {
				if len(line) != 2 {
					continue
				}
				limbs++
				mid := mixVec(line[0], line[1], 0.5)
				if off := s.dist(mid); math.Abs(off) > 1e-9 {
					t.Errorf("a limb lies %v off", off)
				}
				// The way to who looks runs along the surface there: to first order nothing changes.
				d := (s.dist(mid.Add(view.Times(1e-4))) - s.dist(mid.Add(view.Times(-1e-4)))) / 2e-4
				if math.Abs(d) > 1e-3 || math.Abs(body.normal(mid).Dot(view)) > 1e-3 {
					t.Errorf("limb at %v seen along %v: the surface leaves by %v", mid, view, d)
				}
			}
			if limbs < 2 {
				t.Errorf("%d limbs seen along %v", limbs, view)
			}
		}
	}
	for deg, want := range map[float64]int{9: 2, 11: 3, -9: 2, -11: 3, 90: 3} {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		rings := 0
		for _, line := range newTurned([]ZR{{0, 50}, {40, 50}, {40 + 20*cos, 50 + 20*sin}}, nil).edges(AxisZ) {
			if len(line) > 2 {
				rings++
			}
		}
		if rings != want {
			t.Errorf("a turn of %g°: %d rings, want %d", deg, rings, want)
		}
	}
	if sharp(geom.Point{XMm: 1, YMm: 0}, geom.Point{XMm: math.Cos(0.17), YMm: math.Sin(0.17)}) || !sharp(geom.Point{XMm: 1, YMm: 0}, geom.Point{XMm: math.Cos(0.18), YMm: -math.Sin(0.18)}) { // 9.7°, 10.3°
		t.Error("10°")
	}
}

// TestChords: a short piece may stray by a twentieth of its length, a long one by
// nothing.
func TestChords(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		long, off float64
		want      int
	}{{4, 0.19, 2}, {4, 0.21, 3}, {4.2, 0.19, 3}, {3, 0.19, 2}, {20, 1e-7, 2}, {20, 1e-5, 3}, {2, 0.19, 2}} {
		line := []Vec{{}, {X: c.long / 2, Y: c.off}, {X: c.long}}
		if got := chords(line, 4); len(got) != c.want || got[0] != line[0] || got[len(got)-1] != line[2] {
			t.Errorf("%v off %v: %v", c.off, c.long, got)
		}
	}
	circle := ring(10, 0)
	for _, p := range chords(circle, 4) {
		if !slices.Contains(circle, p) {
			t.Errorf("%v is no point of the line", p)
		}
	}
	if n := len(chords(circle, 4)); n < 16 || n > 60 { // chords of 2 mm stray by 0.05, of 4 by 0.2: 2π·10/4 = 15.7
		t.Errorf("a circle in %d points", n)
	}
}

// TestGapsAcross: gaps between blocks, and across an axis, by hand: how far, and how
// much area looks.
func TestGapsAcross(t *testing.T) {
	t.Parallel()
	a, b := still("a", Of(Cuboid(Vec{50, 0, 0}, Vec{60, 30, 20}))), still("b", Of(Cuboid(Vec{0, 10, 5}, Vec{10, 50, 40})))
	got := Gaps(&a, &b, AxisX)
	if len(got) != 1 {
		t.Fatalf("%+v", got)
	}
	near(t, "gap", got[0].Mm, 40, 1e-9)
	near(t, "area", got[0].AreaMm2, 20*15, 1e-6)
	if got = Gaps(&a, &b, AxisX.Times(-1)); len(got) != 0 {
		t.Errorf("behind: %+v", got)
	}
	if got = Gaps(&a, &b, AxisZ); len(got) != 0 {
		t.Errorf("beside: %+v", got)
	}
	// A bar of 10 in a bore of 20 goes 10 across the axis at its middle, not at all along it.
	bore, bar := still("bore", Of(Tube(40, 20, 0, 50))), still("bar", Of(Cylinder(10, -20, 90)))
	if got = Gaps(&bore, &bar, AxisX); len(got) == 0 || math.Abs(got[0].Mm-10) > 0.02 {
		t.Errorf("across: %+v", got)
	}
	// Tilted by 30° about the middle of the bore it stands in the wall, whatever
	// the sections of both say.
	tilted := at("bar", Of(Cylinder(10, -60, 60)), Rotate(AxisX, 30).Shifted(Vec{Z: 25}))
	if _, ok := onAxis(&bore, &tilted); ok {
		t.Error("a tilted bar is on the axis")
	}
	if over := Overlaps([]Body{bore, tilted}, nil, Usual); len(over) != 1 {
		t.Errorf("tilted: %+v", over)
	}
	if _, ok := onAxis(&bore, &bar); !ok {
		t.Error("a bar in a bore is not on its axis")
	}
	for _, p := range []Pose{Move(Vec{X: 1e-3}), Move(Vec{Y: -1e-3}), Rotate(AxisY, 0.01)} {
		off := at("bar", Of(Cylinder(10, -20, 90)), p)
		if _, ok := onAxis(&bore, &off); ok {
			t.Errorf("%+v is on the axis", p)
		}
	}
}

// TestFacing: for each end of a stretch the next stretch ahead, by their middles;
// less than nothing where they lie in one another.
func TestFacing(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		a, b []Span
		want []float64
	}{
		{[]Span{{50, 60}}, []Span{{0, 10}}, []float64{40}}, {[]Span{{0, 10}}, []Span{{50, 60}}, nil},
		{[]Span{{5, 40}}, []Span{{0, 30}}, []float64{-25}}, {[]Span{{0, 29}}, []Span{{0, 30}}, nil}, {[]Span{{0, 31}}, []Span{{0, 30}}, []float64{-30}},
		{[]Span{{80, 90}, {20, 30}}, []Span{{0, 10}, {40, 50}}, []float64{10, 30}},
		{[]Span{{-40, -30}, {-10, -5}}, []Span{{-60, -50}}, []float64{10}},
	} {
		got, ends := facing(c.a, c.b)
		if !slices.Equal(got, c.want) {
			t.Errorf("%v against %v: %v, want %v", c.b, c.a, got, c.want)
		}
		for _, at := range ends { // each is an end of a stretch that comes
			if !slices.ContainsFunc(c.b, func(s Span) bool { return s.ToMm == at }) {
				t.Errorf("%v against %v: ends %v", c.b, c.a, ends)
			}
		}
	}
}

// TestGridColumns: columns stand evenly over an outline, about its middle, and for
// all of its area.
func TestGridColumns(t *testing.T) {
	t.Parallel()
	for name, o := range map[string]Outline{
		"rectangle": {geom.RectangleLoop(geom.Point{XMm: -10, YMm: 5}, geom.Point{XMm: 30, YMm: 25}, 0)}, "disc": {circle(geom.Point{XMm: 7, YMm: -3}, 20)}, "ring": {circle(geom.Point{XMm: 7, YMm: -3}, 20), circle(geom.Point{XMm: 7, YMm: -3}, 10)},
	} {
		g := newRegion(o)
		area, centre := g.area()
		for _, n := range []int{4, 12, 24} {
			var sum float64
			var at geom.Point
			for _, c := range gridColumns(g, n) {
				sum += c.area
				at = at.Plus(c.at.Times(c.area / area))
				if g.dist(c.at) >= 0 {
					t.Fatalf("%s: a column at %v", name, c.at)
				}
			}
			if math.Abs(sum-area) > 1e-6*area || at.Minus(centre).LengthMm() > 1e-6 {
				t.Errorf("%s, %d: %v of %v mm², about %v not %v", name, n, sum, area, at, centre)
			}
		}
	}
	if n := len(gridColumns(newRegion(Outline{geom.RectangleLoop(geom.Point{XMm: -10, YMm: 5}, geom.Point{XMm: 30, YMm: 25}, 0)}), 12)); n != 144 {
		t.Errorf("%d columns of a rectangle", n)
	}
}

// A countersink shows its rim from the side that it opens to, and from the other its hole alone.
func TestCountersinkSeenFromBothSides(t *testing.T) {
	t.Parallel()
	line := []ZR{{-11, 3.3}, {-3.7, 3.3}, {0, 7}, {1, 7}}
	s := Of(Prism(Outline{geom.RectangleLoop(geom.Point{XMm: -50, YMm: -50}, geom.Point{XMm: 50, YMm: 50}, 0)}, -10, 0)).Cut(Turned(line, nil))
	for want, from := range map[float64]Pose{7: Move(Vec{Z: 100}), 3.3: Frame(Vec{Z: -100}, AxisZ.Times(-1), AxisY)} {
		most := 0.0
		for _, l := range Look([]Body{{ID: "p", Solid: s, Pose: Still}}, from, 2) {
			if r := l.Points[0].LengthMm(); r < 49 {
				most = max(most, r)
			}
		}
		if math.Abs(most-want) > 1e-6 {
			t.Errorf("the largest ring has a radius of %v, want %v", most, want)
		}
	}
}
