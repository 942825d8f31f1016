package assembly

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"centrepop/parts/geom"
)

// A point beyond a corner by 3, 4 and 12 is 13 away.
func TestWithinOfABox(t *testing.T) {
	t.Parallel()
	b := Box{Low: Vec{0, 0, 0}, High: Vec{10, 20, 30}}
	for _, c := range []struct {
		p    Vec
		mm   float64
		want bool
	}{
		{Vec{13, 24, 42}, 13.001, true}, {Vec{13, 24, 42}, 13, false}, {Vec{13, 24, 42}, 12.999, false}, {Vec{-3, -4, -12}, 13.001, true}, {Vec{-3, -4, -12}, 12.999, false},
		{Vec{10, 20, 30}, 0, true}, {Vec{0, 0, 0}, 0, true}, {Vec{5, 5, 5}, -1, true}, {Vec{11, 5, 5}, 0, false}, {Vec{11, 5, 5}, -2, false}, {Vec{5, 22, 5}, 2.1, true}, {Vec{5, 5, 32.2}, 2.1, false},
	} {
		if got := b.within(c.p, c.mm); got != c.want {
			t.Errorf("%v within %g: %v", c.p, c.mm, got)
		}
	}
	far := Box{Low: Vec{12, 0, 0}, High: Vec{13, 20, 30}}
	for axis, turned := range []func(Vec) Vec{func(p Vec) Vec { return p }, func(p Vec) Vec { return Vec{p.Y, p.X, p.Z} }, func(p Vec) Vec { return Vec{p.Z, p.Y, p.X} }} {
		near, far := Box{turned(b.Low), turned(b.High)}, Box{turned(far.Low), turned(far.High)}
		if !near.Meets(far, 2) || near.Meets(far, 1.99) || !far.Meets(near, 2) || far.Meets(near, 1.99) {
			t.Errorf("axis %d: 2 mm between boxes", axis)
		}
	}
}

// A line of sight is blocked by one stretch of metal, not by the sum of two: through two
// plates of 3 with 4 between.
func TestBlocksInOneGo(t *testing.T) {
	t.Parallel()
	s := Of(Cuboid(Vec{-5, -5, 0}, Vec{5, 5, 3}), Cuboid(Vec{-5, -5, 7}, Vec{5, 5, 10}))
	for _, c := range []struct {
		length, least float64
		want          bool
	}{{100, 2.9, true}, {100, 3, false}, {100, 3.1, false}, {100, 5.9, false}, {6.8, 0.7, true}, {6.8, 0.9, false}, {5, 0.01, false}} {
		if got := s.blocks(Vec{1, 1, -6}, AxisZ, c.length, 0, c.least); got != c.want {
			t.Errorf("over %g, %g at least: %v", c.length, c.least, got)
		}
	}
}

// The faces of a shape lie on it: no point of one is off its box, and together they reach
// all of its sides.
func TestFacesLieOnTheShape(t *testing.T) {
	t.Parallel()
	for _, c := range shapesByFormula {
		for _, one := range c.solid.add {
			of := nothing()
			box := one.shape.box()
			for _, f := range one.shape.faces() {
				for i := range 5 {
					for k := range 5 {
						p := f.point(f.a0+(f.a1-f.a0)*float64(i)/4, f.b0+(f.b1-f.b0)*float64(k)/4)
						of = of.With(p)
						if !box.within(p, 1e-6) {
							t.Fatalf("%s: %v of a face is outside %v", c.name, p, box)
						}
						if f.centre.Sub(p).Len() > f.reach+1e-6 && math.Abs(f.reach) > 0 {
							t.Errorf("%s: %v is further than %g from %v", c.name, p, f.reach, f.centre)
						}
					}
				}
			}
			if of.Low.Sub(box.Low).Len()+of.High.Sub(box.High).Len() > 0.03*box.High.Sub(box.Low).Len() {
				t.Errorf("%s: faces reach %v, the shape %v", c.name, of, box)
			}
		}
	}
}

func TestLooks(t *testing.T) {
	t.Parallel()
	for z, want := range map[float64]int{1: 1, 2e-6: 1, 1e-6: 0, 0: 0, -1e-6: 0, -2e-6: -1, -1: -1} {
		if got := looks(Vec{X: 1, Z: z}, AxisZ); got != want {
			t.Errorf("a normal with %g: %d, want %d", z, got, want)
		}
	}
}

// TestSmallBounds: what the answers turn on, by hand, just inside it and just beyond.
func TestSmallBounds(t *testing.T) {
	t.Parallel()
	mm2 := func(o Outline) float64 {
		area, _ := newRegion(o).area()
		return math.Round(area*1e6) / 1e6
	}
	rectangle := func(corner float64) Outline {
		return Outline{geom.RectangleLoop(geom.Point{}, geom.Point{XMm: 10, YMm: 6}, corner)}
	}
	steel := func(b Body) Body {
		b.DensityKgM3 = 7850
		return b
	}
	feet := func(low float64) int { // a plate on three posts of Ø20 and a fourth that ends above the floor
		plate := steel(still("plate", Of(Cuboid(Vec{0, 0, 50}, Vec{200, 100, 60}))))
		bodies := []Body{plate}
		for i, p := range []Vec{{10, 10, 0}, {190, 10, 0}, {10, 90, 0}, {190, 90, low}} {
			bodies = append(bodies, steel(at(string(rune('a'+i)), Of(Cuboid(Vec{-10, -10, 0}, Vec{10, 10, 50 - p.Z})), Move(p))))
		}
		s, _ := Standing(bodies, AxisZ)
		n := 0
		for _, f := range s.Feet {
			if f.X > 170 && f.Y > 70 {
				n++
			}
		}
		return n
	}
	sees := func(x, z float64) float64 { // of an opening of 12 in radius, with a pin of 0.1 in front
		free, _ := Opening{Along: AxisZ, RadiusMm: 12, ReachMm: 30}.Look([]Body{still("pin", Of(Cylinder(0.1, z, z+5).At(Move(Clock(x, 7.5)))))})
		return math.Round((1-free)*144*1e3) / 1e3
	}
	ends := func(crossings []Crossing) (out []float64) {
		for _, c := range crossings {
			out = append(out, c.FromMm, c.ToMm)
		}
		return out
	}
	bar := Of(Cylinder(10, 0, 40))
	block := Of(Cuboid(Vec{-20, -10, 0}, Vec{20, 10, 30}))
	turns := func(p Pose) Vec {
		v := turnBetween(Still, p).Times(180 / math.Pi)
		return Vec{math.Round(v.X*1e6) / 1e6, math.Round(v.Y*1e6) / 1e6, math.Round(v.Z*1e6) / 1e6}
	}
	spread := func(s shape, n int) (sum float64) {
		for _, c := range s.columns(n) {
			sum += c.area
		}
		return math.Round(sum * 1e3)
	}
	pyramid := newRuled([]geom.Point{{XMm: -40, YMm: -40}, {XMm: 40, YMm: -40}, {XMm: 40, YMm: 40}, {XMm: -40, YMm: 40}}, []geom.Point{{XMm: -20, YMm: -20}, {XMm: 20, YMm: -20}, {XMm: 20, YMm: 20}, {XMm: -20, YMm: 20}}, -10, 30)
	moved := func(f Freedom, q float64) Vec {
		p := motion([]Freedom{f}, []float64{q}).Apply(Vec{1, 2, 3})
		return Vec{math.Round(p.X*1e6) / 1e6, math.Round(p.Y*1e6) / 1e6, math.Round(p.Z*1e6) / 1e6}
	}
	quarter := leverMm * math.Pi / 2
	about := func(o Outline) geom.Point {
		_, c := newRegion(o).area()
		return geom.Point{XMm: math.Round(c.XMm*1e3) / 1e3, YMm: math.Round(c.YMm*1e3) / 1e3}
	}
	clockwise := geom.PolygonLoop(geom.Point{}, geom.Point{XMm: 0, YMm: 6}, geom.Point{XMm: 10, YMm: 6}, geom.Point{XMm: 10, YMm: 0})
	bow := math.Tan(math.Pi / 48) // an arc of 15° over a chord of 10
	kg := func(mass, density float64) [2]any {
		b := still("b", Of(Cuboid(Vec{}, Vec{1e3, 1e3, 1e3})))
		b.MassKg, b.DensityKgM3 = mass, density
		kg, _, ok := b.Mass()
		return [2]any{math.Round(kg*1e6) / 1e6, ok}
	}
	deep := func(a, b *Solid, move Vec) float64 {
		over, _ := PairOverlap(&Body{Solid: a, Pose: Still}, &Body{Solid: b, Pose: Move(move)}, Usual)
		return math.Round(over.DepthMm*1e3) / 1e3
	}
	axial := func(p Pose, more ...Simple) bool { // the ring is made up of more than one
		a, b := still("a", Of(append([]Simple{Tube(40, 20, 0, 50)}, more...)...)), at("b", Of(Cylinder(10, 0, 30)), p)
		_, ok := onAxis(&a, &b)
		return ok
	}
	notAlone := func(a, b *Solid) bool {
		c, _ := onAxis(&Body{Solid: a, Pose: Still}, &Body{Solid: b, Pose: Still})
		return c.cut
	}
	half := Cuboid(Vec{-50, 0, -50}, Vec{50, 50, 90})
	slung := func(z float64) any { // a bar, 200 long, its top at z
		b := steel(still("bar", Of(Cuboid(Vec{-100, -5, z - 10}, Vec{100, 5, z}))))
		s, ok := Slings([]Body{b}, AxisZ, AxisX, 60)
		return [3]any{s.Points, s.IDs, ok}
	}
	hooked := func(z float64) any { return [3]any{[2]Vec{{-60, 0, z}, {60, 0, z}}, [2]string{"bar", "bar"}, true} }
	slope := func(f Freedom) (out []float64) { // of what a stop misses, by a freedom of what it stops
		s := &solver{root: "rail", meets: []Meet{{A: "rail", B: "shoe", OnA: Still, OnB: Still, Free: []Freedom{f}}, {A: "rail", B: "shoe", OnA: Still, OnB: Still}}}
		s.grow()
		for _, x := range s.slopes(s.q)[0] {
			out = append(out, math.Round(x*1e6)/1e6)
		}
		return out
	}
	rings := func(outside, inside float64, from ...float64) *Solid { // a ring of 10 at each
		var out []Simple
		for _, z := range from {
			out = append(out, Tube(outside, inside, z, z+10))
		}
		return Of(out...)
	}
	way := Way{Back: AxisZ, FarMm: 300, FinestMm: 3, Tolerance: Usual}
	stops := func(fixed, mover *Solid, back Vec) (out []float64) {
		w := way
		w.Back = back
		for _, b := range slices.Collect(w.Blocks([]Body{still("m", mover)}, []Body{still("f", fixed)}, nil)) {
			out = append(out, math.Round(b.FirstMm*1e6)/1e6, b.LastMm)
		}
		if free := w.Free([]Body{still("m", mover)}, []Body{still("f", fixed)}, nil); free != (out == nil) {
			t.Errorf("free %v, stops %v", free, out)
		}
		return out
	}
	halves := func(side float64) *Solid {
		away := func(side, low, high float64) Simple {
			return Cuboid(Vec{min(0, 100*side), -100, low}, Vec{max(0, 100*side), 100, high})
		}
		return rings(60, 30, 100, 150).Cut(away(side, 90, 120), away(-side, 140, 170))
	}
	meets := func(fixed []Span, back float64) Span { // a mover of 10 on its way over 200
		here, met := meeting(Way{FarMm: 200}, fixed, []Span{{0, 10}}, back, 0.5)
		if met != (here != Span{}) {
			t.Errorf("%v: met %v in %v", fixed, met, here)
		}
		return here
	}
	crossed := func(x0, y0, x1, y1 float64) float64 {
		t, ok := (&seg{b: geom.Point{XMm: 10}}).crossings(&seg{a: geom.Point{XMm: x0, YMm: y0}, b: geom.Point{XMm: x1, YMm: y1}})
		if !ok {
			return -1
		}
		return t
	}
	triangle := Of(Prism(Outline{geom.PolygonLoop(geom.Point{}, geom.Point{XMm: 30, YMm: 0}, geom.Point{XMm: 0, YMm: 40})}, 0, 20))
	stands := func(s *Solid) [2]any {
		got, ok := Standing([]Body{steel(still("b", s))}, AxisZ)
		return [2]any{len(got.Feet), ok}
	}
	section := func(s *Solid, z float64) (out []float64) { // corners and area of each loop
		for _, l := range (&Body{Solid: s, Pose: Still}).Section(Move(Vec{Z: z}), 0.05) {
			out = append(out, float64(len(l)), math.Round(mm2(Outline{geom.PolygonLoop(l...)})*1e3)/1e3)
		}
		return out
	}
	long := func(fineMm float64, from Pose) (mm float64) {
		for _, l := range Look([]Body{still("b", block)}, from, fineMm) {
			mm += extent(l.Points)
		}
		return math.Round(mm*1e3) / 1e3
	}
	through := Of(Cuboid(Vec{-20, -20, 0}, Vec{20, 20, 5}), Cuboid(Vec{-20, -20, 10}, Vec{20, 20, 15})).Cut(Cylinder(8, -1, 16)).rims()
	halfRound := newRegion(Outline{geom.Loop{{Point: geom.Point{YMm: -10}, Bulge: 1}, {Point: geom.Point{YMm: 10}}}})
	slope30 := newRegion(Outline{geom.PolygonLoop(geom.Point{}, geom.Point{XMm: 30}, geom.Point{YMm: 40})})
	round := &prism{g: newRegion(Outline{circle(geom.Point{}, 10)}), high: End{AtMm: 5}}
	folds := func(deg float64) int { // of an upright body with a corner that turns so far and three sharp ones, from above
		sin, cos := math.Sincos(deg * math.Pi / 180)
		p := []geom.Point{{}, {XMm: 10}, {XMm: 10 + 10*cos, YMm: 10 * sin}, {XMm: 5, YMm: 50}}
		return len(newRuled(p, p, 0, 20).edges(AxisZ))
	}
	misses := func(way Vec) Vec {
		at := Solve("a", []Meet{{ID: "1", A: "a", B: "b", OnA: Still, OnB: Still}, {ID: "2", A: "a", B: "b", OnA: Move(way.Times(-3)), OnB: Still}})
		return at.Missed[0].Along
	}
	// What a damped step is solved from, three freedoms that are not square to one another.
	cols, miss := [][]float64{{1, 2, 0, 1}, {0, 1, 3, 1}, {2, 0, 1, 4}}, []float64{5, -1, 2, 3}
	step := dampedStep(cols, miss, 0.1)
	left := make([]float64, 3)
	for i := range cols {
		left[i] = 0.1*step[i] - dot(cols[i], miss)
		for k := range cols {
			left[i] += dot(cols[i], cols[k]) * step[k]
		}
		left[i] = math.Round(left[i] * 1e9)
	}
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"half a round: in it and beside it, by its flat and by its arc", []float64{halfRound.dist(geom.Point{XMm: 3}), halfRound.dist(geom.Point{XMm: -1}), halfRound.dist(geom.Point{XMm: 9.5}), halfRound.dist(geom.Point{XMm: 12}), halfRound.dist(geom.Point{XMm: -3, YMm: 14})}, []float64{-3, 1, -0.5, 2, 5}},
		// 17 pieces to a quarter would lie 10 · (1 − cos(90°/34)) = 0.0107 off.
		{"a round edge of 10, to 0.01", []int{len(round.edges(AxisZ)), len(round.edges(AxisZ)[0]), len(round.generators()[0].feet)}, []int{2, 73, 73}},
		{"stretches in a triangle, level and upright", [][]Span{slope30.across(10), slope30.along(15), slope30.across(41)}, [][]Span{{{0, 22.5}}, {{0, 20}}, nil}},
		{"on a face, to 0.01 µm", []bool{block.on(Vec{Z: 30 + 0.99e-5}), block.on(Vec{Z: 30 + 1.05e-5}), block.on(Vec{Z: 30 - 0.99e-5}), block.on(Vec{Z: 30 - 1.05e-5})}, []bool{true, false, true, false}},
		{"a way by the clock is 1 long", []Vec{ClockWay(90), ClockWay(0)}, []Vec{AxisX, AxisY}},
		{"half a hollow block", int(math.Round(Of(Cuboid(Vec{}, Vec{10, 10, 10})).Hollow(Cuboid(Vec{2, 2, 2}, Vec{8, 8, 8})).Within(Cuboid(Vec{}, Vec{5, 10, 10})).Bulk().VolumeMm3)), 392},
		{"folds of 15° and over are seen", []int{folds(14.95), folds(15.05)}, []int{2 + 3, 2 + 4}},
		{"a stop that misses by 3, whichever way", []Vec{misses(AxisX), misses(AxisY), misses(AxisZ)}, []Vec{AxisX, AxisY, AxisZ}},
		{"what stands on three corners", [][2]any{stands(triangle), stands(block), stands(Of(Cylinder(10, 0, 50).At(Rotate(AxisX, 90))))}, [][2]any{{3, true}, {4, true}, {0, false}}},
		{"cut just inside a face and just off it", [][]float64{section(triangle, 0.5), section(triangle, 19.5), section(triangle, -0.5), section(triangle, 20.5)}, [][]float64{{3, 600}, {3, 600}, nil, nil}},
		{"seen from above, below and ahead, however fine", []float64{long(2, Move(Vec{Z: 100})), long(7, Move(Vec{Z: 100})), long(2, Frame(Vec{Z: -100}, AxisZ.Times(-1), AxisY)), long(2, Frame(Vec{Y: -100}, AxisY.Times(-1), AxisZ))}, []float64{120, 120, 120, 140}},
		{"rims of a bore through two plates", []int{len(through), len(through[0])}, []int{4, len(through[3])}},
		{"left of what a damped step solves", left, []float64{0, 0, 0}},
		{"square to it, however long", []Vec{AxisX.Times(0.5).Square(), AxisX.Times(20).Square(), AxisY.Times(0.5).Square(), AxisZ.Square()}, []Vec{AxisZ, AxisZ, AxisZ.Times(-1), AxisY}},
		{"small areas, one of them 1 mm²", []geom.Point{about(Outline{geom.RectangleLoop(geom.Point{XMm: 3}, geom.Point{XMm: 3.5, YMm: 1}, 0)}), about(Outline{geom.RectangleLoop(geom.Point{XMm: 3}, geom.Point{XMm: 4, YMm: 1}, 0)}), about(Outline{geom.RectangleLoop(geom.Point{XMm: 3}, geom.Point{XMm: 5, YMm: 1}, 0), geom.RectangleLoop(geom.Point{XMm: 3.2, YMm: 0.2}, geom.Point{XMm: 3.7, YMm: 0.8}, 0)})}, []geom.Point{{XMm: 3.25, YMm: 0.5}, {XMm: 3.5, YMm: 0.5}, {XMm: 4.097, YMm: 0.5}}},
		{"about its middle, whichever way its corners go", []any{about(Outline{clockwise}), mm2(Outline{clockwise}), about(Outline{clockwise, geom.PolygonLoop(geom.Point{XMm: 1, YMm: 1}, geom.Point{XMm: 1, YMm: 2}, geom.Point{XMm: 2, YMm: 2}, geom.Point{XMm: 2, YMm: 1})})}, []any{geom.Point{XMm: 5, YMm: 3}, 60.0, geom.Point{XMm: 5.059, YMm: 3.025}}},
		// The piece between arc and chord: r = 5 / sin 7.5° = 38.306, r²/2 · (0.261799 − sin 15°) = 2.187.
		{"flat arcs, out and in", []float64{mm2(Outline{geom.Loop{{Point: geom.Point{}, Bulge: bow}, {Point: geom.Point{XMm: 10}}, {Point: geom.Point{XMm: 10, YMm: 6}}, {Point: geom.Point{XMm: 0, YMm: 6}}}}), mm2(Outline{geom.Loop{{Point: geom.Point{}, Bulge: -bow}, {Point: geom.Point{XMm: 10}}, {Point: geom.Point{XMm: 10, YMm: 6}}, {Point: geom.Point{XMm: 0, YMm: 6}}}})}, []float64{62.186658, 57.813342}},
		{"the mass said, that of its density, none", [][2]any{kg(0.5, 7850), kg(2, 0.5), kg(0, 0.5), kg(0, 0)}, [][2]any{{0.5, true}, {2.0, true}, {0.5, true}, {0.0, false}}},
		{"a ring round a shaft, free, then 1 deep, and one beyond its end", []float64{deep(Of(Cylinder(10, 0, 50)), Of(Tube(20, 10.5, 10, 20)), Vec{}), deep(Of(Cylinder(11, 0, 50)), Of(Tube(20, 10, 10, 20)), Vec{}), deep(Of(Cylinder(11, 0, 50)), Of(Tube(20, 10, 10, 20)), Vec{Z: 41})}, []float64{0, 1, 0}},
		// A taper of 1 : 10 pushed 10 too far is 1 too large, 1 · cos 5.71° = 0.995 off the surface.
		{"a taper in its bore, 10 too far in", []float64{deep(Of(Turned([]ZR{{0, 30}, {50, 30}}, []ZR{{0, 20}, {50, 15}})), Of(Turned([]ZR{{-20, 22}, {50, 15}}, nil)), Vec{}), deep(Of(Turned([]ZR{{0, 30}, {50, 30}}, []ZR{{0, 20}, {50, 15}})), Of(Turned([]ZR{{-20, 22}, {50, 15}}, nil)), Vec{Z: 10})}, []float64{0, 0.995}},
		{"the same ring twice, 1.5 deep in its middle", deep(rings(20, 17, 0), rings(20, 17, 0), Vec{}), 1.5},
		{"on one axis", []bool{axial(Still), axial(Move(Vec{X: 1e-4})), axial(Move(Vec{X: 1.05e-4})), axial(Rotate(AxisX, 180)), axial(Rotate(AxisX, 5e-6)), axial(Rotate(AxisX, 6.2e-6)), axial(Still, Tube(50, 20, 50, 60)), axial(Still, Tube(50, 20, 50, 60).At(Move(Vec{X: 1e-4}))), axial(Still, Tube(50, 20, 50, 60).At(Move(Vec{X: 1.05e-4}))), axial(Still, Tube(50, 20, 50, 60).At(Rotate(AxisX, 180))), axial(Still, Tube(50, 20, 50, 60).At(Rotate(AxisX, 0.01))), axial(Still, half)}, []bool{true, true, false, true, true, false, true, true, false, true, false, false}},
		{"not turned alone", []bool{notAlone(bar, bar), notAlone(bar.Cut(half), bar), notAlone(bar, bar.Cut(half)), notAlone(bar.Within(half), bar), notAlone(bar, bar.Within(half)), notAlone(bar.Cut(half), bar.Within(half)), notAlone(bar.Cut(half), bar.Cut(half))}, []bool{false, true, true, true, true, true, true}},
		{"slung at its top, wherever that is", []any{slung(0), slung(500), slung(-500)}, []any{hooked(0), hooked(500), hooked(-500)}},
		{"how a stop's misses go with a freedom", [][]float64{slope(SlideX), slope(SlideZ), slope(TurnY)}, [][]float64{{1, 0, 0, 0, 0, 0}, {0, 0, 1, 0, 0, 0}, {0, 0, 0, 0, 1, 0}}},
		{"appended where it leads elsewhere", []int{len(appendBase(nil, []float64{1e-6, 0})), len(appendBase(nil, []float64{0.9e-5, 0})), len(appendBase(nil, []float64{1.05e-5, 0})), len(appendBase([][]float64{{1, 0}}, []float64{3, 0})), len(appendBase([][]float64{{1, 0}}, []float64{3, 1}))}, []int{0, 0, 1, 1, 2}},
		// The mover's ring of 30 to 50 meets that of 45 to 60 outside, and its neck of 20 that of 25 to 15 inside.
		{"stopped by a ring, from both sides", [][]float64{stops(rings(60, 45, 100), rings(50, 30, 0), AxisZ), stops(rings(60, 45, -100), rings(50, 30, 0), AxisZ.Times(-1)), stops(rings(60, 45, 100), rings(50, 30, 0), AxisZ.Times(-1)), stops(rings(60, 50, 100), rings(50, 30, 0), AxisZ), stops(rings(60, 49.9, 100), rings(50, 30, 0), AxisZ), stops(rings(60, 49.94, 100), rings(50, 30, 0), AxisZ), stops(rings(60, 49.96, 100), rings(50, 30, 0), AxisZ)}, [][]float64{{110, 90}, {110, 90}, nil, nil, {110, 90}, {110, 90}, nil}},
		{"stopped by two, the inner one nearer, and by the nearer alone", [][]float64{stops(Of(Tube(25, 15, 150, 160), Tube(60, 45, 80, 90)), Of(Tube(50, 30, 0, 10), Tube(20, 10, 0, 10)), AxisZ), stops(Of(Tube(25, 15, 50, 60), Tube(60, 45, 80, 90)), Of(Tube(50, 30, 0, 10), Tube(20, 10, 0, 10)), AxisZ), stops(Of(Tube(25, 15, 50, 60)), Of(Tube(50, 30, 0, 10), Tube(20, 10, 0, 10)), AxisZ)}, [][]float64{{160, 70}, {90, 40}, {60, 40}}},
		{"it lies 0.6 in it and comes from there", [][]float64{stops(rings(60, 45, 0), rings(50, 30, 9.4), AxisZ), stops(rings(60, 45, 0), rings(50, 30, 9.96), AxisZ)}, [][]float64{{0.6, 0}, nil}},
		// A half ring from 150 on one side, from 100 on the other: the one farther out stops first.
		{"stopped by halves of rings", [][]float64{stops(halves(-1), rings(50, 40, 0), AxisZ), stops(halves(1), rings(50, 40, 0), AxisZ)}, [][]float64{{160, 140}, {160, 140}}},
		{"meets on the way", []any{meets([]Span{{110, 120}}, 1), meets([]Span{{110, 120}}, -1), meets([]Span{{-120, -110}}, -1), meets([]Span{{200, 220}}, 1), meets([]Span{{210, 230}}, 1), meets([]Span{{211, 230}}, 1), meets([]Span{{5, 12}}, 1), meets([]Span{{-5, 0.5}}, 1), meets([]Span{{-5, 0.6}}, 1), meets([]Span{{30, 40}, {60, 65}, {20, 25}}, 1)}, []any{Span{100, 120}, Span{}, Span{110, 130}, Span{190, 200}, Span{}, Span{}, Span{0, 12}, Span{}, Span{0, 0.6}, Span{50, 65}}},
		{"crosses a line of 10 and where, ends of the other counting", []float64{crossed(4, -5, 4, 5), crossed(2, -5, 6, 5), crossed(4, 0, 4, 5), crossed(4, -5, 4, 0), crossed(4, 1, 4, 5), crossed(4, -5, 4, -1), crossed(0, -5, 0, 5), crossed(10, -5, 10, 5), crossed(11, -5, 11, 5), crossed(2, 3, 7, 3), crossed(5, 5, 9, -5)}, []float64{0.4, 0.4, 0.4, 0.4, -1, -1, -1, -1, -1, -1, 0.7}},
		{"a rectangle with round corners", []float64{mm2(rectangle(0)), mm2(rectangle(0.5)), mm2(rectangle(1)), mm2(rectangle(3))}, []float64{60, 59.785398, 59.141593, 52.274334}},
		{"discs of Ø10 beside one another, one in the other, with one in that", []float64{mm2(Outline{circle(geom.Point{}, 5), circle(geom.Point{XMm: 10.2}, 5)}), mm2(Outline{circle(geom.Point{}, 5), circle(geom.Point{}, 4)}), mm2(Outline{circle(geom.Point{}, 5), circle(geom.Point{}, 4), circle(geom.Point{}, 3)})}, []float64{157.079633, 28.274334, 56.548668}},
		{"an arc cut where it is highest and lowest", []int{len(newRegion(Outline{circle(geom.Point{}, 5)}).segs), len(newRegion(Outline{geom.Loop{{Point: geom.Point{XMm: -10, YMm: 0}}, {Point: geom.Point{XMm: 10, YMm: 0}, Bulge: 1}}}).segs), len(newRegion(Outline{geom.Loop{{Point: geom.Point{XMm: 0, YMm: -10}}, {Point: geom.Point{XMm: 0, YMm: 10}, Bulge: 1}}}).segs)}, []int{4, 3, 2}},
		{"boxes joined", []Box{nothing().Join(bar.Box()), bar.Box().Join(nothing()), block.Box().Join(bar.Box())}, []Box{bar.Box(), bar.Box(), {Vec{-20, -10, 0}, Vec{20, 10, 40}}}},
		{"half a millimetre over the floor is a foot", []int{feet(0), feet(0.49), feet(0.51), feet(0.9)}, []int{1, 1, 0, 0}},
		// Six rings of equal area, the first at 12 · √(1/12) = 3.464, in 24 spokes, the first at 7.5°.
		{"one look of the 144 through an opening meets a pin", []float64{sees(3.464, 10), sees(3.7, 10), sees(6, 10), sees(7.746, 10), sees(3.464, 29.9), sees(3.464, 30), sees(3.464, 30.1), sees(3.464, -4), sees(3.464, -6)}, []float64{1, 0, 1, 1, 1, 0, 0, 1, 0}},
		{"what a line crosses ahead", [][]float64{ends(Crossings([]Body{still("b", bar)}, Vec{X: -50}, AxisX)), ends(Crossings([]Body{still("b", block)}, Vec{Z: 10}, AxisX)), ends(Crossings([]Body{still("b", block)}, Vec{X: 20.1, Z: 10}, AxisX)), ends(Crossings([]Body{still("b", block)}, Vec{X: -20.5, Z: 10}, AxisX)), ends(Crossings([]Body{still("b", block)}, Vec{X: 19.5, Z: 10}, AxisX))}, [][]float64{nil, {0, 20}, nil, {0.5, 40.5}, {0, 0.5}}},
		{"looks the same once it is turned", []bool{bar.Same(Rotate(AxisZ, 37)), bar.Same(Rotate(AxisX, 180)), bar.Same(Rotate(AxisX, 180).Shifted(Vec{Z: 40})), bar.Same(Move(Vec{X: 0.2})), bar.Same(Move(Vec{X: 0.3})), bar.Same(Move(Vec{Z: 0.24})), bar.Same(Move(Vec{Z: 0.26})), block.Same(Rotate(AxisZ, 180)), block.Same(Rotate(AxisZ, 90)), Of(Cuboid(Vec{-20, -20, 0}, Vec{20, 20, 30})).Same(Rotate(AxisZ, 90))}, []bool{true, false, true, true, false, true, false, true, false, true}},
		{"turns", []Vec{turns(Still), turns(Rotate(AxisX, 30)), turns(Rotate(AxisY, -90)), turns(Rotate(AxisZ, 179)), turns(Rotate(AxisX, 180)), turns(Rotate(AxisY, 180)), turns(Rotate(AxisZ, 180))}, []Vec{{}, {X: 30}, {Y: -90}, {Z: 179}, {X: 180}, {Y: 180}, {Z: 180}}},
		{"freedoms", []Vec{moved(SlideX, 5), moved(SlideY, 5), moved(SlideZ, -5), moved(TurnX, quarter), moved(TurnY, quarter), moved(TurnZ, quarter)}, []Vec{{6, 2, 3}, {1, 7, 3}, {1, 2, -2}, {1, -3, 2}, {3, 2, -1}, {-2, 1, 3}}},
		{"columns stand for the whole outline", []float64{spread(block.add[0].shape, 3), spread(pyramid, 3), spread(pyramid, 1)}, []float64{800e3, 6400e3, 6400e3}},
		{"as many lines to a shape as it is to be fine", []int{len(block.add[0].shape.columns(1)), len(block.add[0].shape.columns(3)), len(pyramid.columns(1))}, []int{16, 144, 64}},
		{"a leaning body has a circle of 72 corners, of the disc's area", []float64{float64(len(circleCorners(geom.Point{}, 10, roundCorners))), math.Round(mm2(Outline{geom.PolygonLoop(circleCorners(geom.Point{XMm: 3, YMm: 4}, 10, 72)...)})*1e3) / 1e3}, []float64{72, 314.159}},
		{"a hull leaves out what lies on its sides", hull([]geom.Point{{XMm: 0, YMm: 0}, {XMm: 10, YMm: 0}, {XMm: 5, YMm: 0}, {XMm: 5, YMm: 5}, {XMm: 10, YMm: 10}, {XMm: 0, YMm: 10}, {XMm: 10, YMm: 5}, {XMm: 3, YMm: 4}}), []geom.Point{{XMm: 0, YMm: 0}, {XMm: 10, YMm: 0}, {XMm: 10, YMm: 10}, {XMm: 0, YMm: 10}}},
		{"a hull of one place, of a line", [][]geom.Point{hull([]geom.Point{{XMm: 1, YMm: 2}}), hull([]geom.Point{{XMm: 0, YMm: 0}, {XMm: 5, YMm: 5}, {XMm: 10, YMm: 10}})}, [][]geom.Point{{{XMm: 1, YMm: 2}}, {{XMm: 0, YMm: 0}, {XMm: 10, YMm: 10}}}},
		{"a clock", []float64{ClockDeg(Vec{Y: 1}), ClockDeg(Vec{X: 1}), ClockDeg(Vec{Y: -1}), ClockDeg(Vec{X: -1})}, []float64{0, 90, 180, 270}},
		{"any y where it is along z", []float64{Frame(Vec{}, AxisX, AxisX.Times(3)).Y.Dot(AxisZ), Frame(Vec{}, AxisX, Vec{3, 0.95e-6, 0}).Y.Dot(AxisZ), Frame(Vec{}, AxisX, Vec{3, 1.05e-6, 0}).Y.Dot(AxisZ)}, []float64{1, 1, 0}},
		{"gaps that are alike to 0.01 are one", addGap(addGap(addGap(nil, Gap{Mm: 1, AreaMm2: 2}), Gap{Mm: 1.0099, AreaMm2: 3}), Gap{Mm: 0.9899, AreaMm2: 4}), []Gap{{Mm: 1, AreaMm2: 5}, {Mm: 0.9899, AreaMm2: 4}}},
	} {
		if !reflect.DeepEqual(c.got, c.want) {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
	// The corner of a block of 40 × 20 is √(20² + 10²) from its axis, moved by 5 in x √(25² + 10²).
	near(t, "reach", block.ReachMm(Still, 5), math.Hypot(20, 10), 1e-9)
	near(t, "reach, moved", block.ReachMm(Move(Vec{X: -5}), 5), math.Hypot(25, 10), 1e-9)
	near(t, "reach, on its side", block.ReachMm(Rotate(AxisX, 90), 5), math.Hypot(20, 30), 1e-9)
	near(t, "reach of a round", bar.ReachMm(Move(Vec{X: 3}), 1), 13, 0.01)
}

// TestAlong: a box of 20 × 10 × 4 from the origin, in a direction of 3 : −4 : 0, reaches from −40/5 to 60/5; a body of it, turned
// a quarter about Z and 7 out along X, from 7 − 10 to 7 along X, and along the slant that its own length has then as in its own
// frame, though the box round it in the machine reaches farther.
func TestAlong(t *testing.T) {
	t.Parallel()
	box := Box{High: Vec{X: 20, Y: 10, Z: 4}}
	slant := Vec{X: 0.6, Y: -0.8}
	body := func(p Pose) *Body { return &Body{Solid: Of(Cuboid(Vec{}, box.High)), Pose: p} }
	leaning := Rotate(AxisZ, 30)
	for i, c := range []struct {
		is        func(Vec) (low, high float64)
		way       Vec
		low, high float64
	}{
		{box.Along, slant, -8, 12}, {box.Along, slant.Reversed(), -12, 8}, {box.Along, AxisZ, 0, 4},
		{body(Move(Vec{X: 7}).Of(Rotate(AxisZ, 90))).Along, AxisX, -3, 7},
		{body(Move(Vec{Y: 5}).Of(leaning)).Along, leaning.X, 2.5, 22.5},
	} {
		if low, high := c.is(c.way); math.Abs(low-c.low) > 1e-9 || math.Abs(high-c.high) > 1e-9 {
			t.Errorf("%d: %g to %g, want %g to %g", i, low, high, c.low, c.high)
		}
	}
}

// TestWithinRounding: what counts as the same, as nothing or as parallel, by its bound: just within and just beyond.
func TestWithinRounding(t *testing.T) {
	t.Parallel()
	xy := func(x, y float64) geom.Point { return geom.Point{XMm: x, YMm: y} }
	roots := func(a, b, c float64) int {
		return len(quadratic(a, b, c, nil, func(float64) bool { return true }))
	}
	sides := func(off float64) int { // of a square, one of whose corners stands twice
		return len(newRegion(Outline{geom.PolygonLoop(xy(0, 0), xy(off, 0), xy(10, 0), xy(10, 10), xy(0, 10))}).segs)
	}
	quarter := newRegion(Outline{geom.Loop{{Point: xy(7, -7), Bulge: math.Tan(math.Pi / 8)}, {Point: xy(7, 7)}, {Point: xy(-7, 0)}}}).segs[0]
	room := func(x0, y0, x1, y1 float64) [2]geom.Point { // of a quarter from one point to another and its chord
		g := newRegion(Outline{geom.Loop{{Point: xy(x0, y0), Bulge: math.Tan(math.Pi / 8)}, {Point: xy(x1, y1)}}})
		tenth := func(p geom.Point) geom.Point { return xy(math.Round(p.XMm*10)/10, math.Round(p.YMm*10)/10) }
		return [2]geom.Point{tenth(g.low), tenth(g.high)}
	}
	in := func(off float64) bool { // off is an angle beyond the end of the arc
		sin, cos := math.Sincos(math.Pi/4 + off)
		return quarter.in(xy(cos, sin))
	}
	cuts := func(early float64) int { // of an arc from so much before the top to the far side
		sin, cos := math.Sincos(math.Pi/2 - early)
		arc := seg{arc: true, r: 10, from: math.Pi/2 - early, sweep: 1, a: xy(10*cos, 10*sin), b: xy(10*math.Cos(math.Pi/2+1-early), 10*math.Sin(math.Pi/2+1-early))}
		return len(arc.split())
	}
	plate := Of(Cuboid(Vec{Z: -10}, Vec{10, 10, 0}))
	islands, _ := newRegion(Outline{geom.PolygonLoop(xy(0, 0), xy(10, 0), xy(10, 10), xy(0, 10)), geom.PolygonLoop(xy(10.5, 0), xy(20.5, 0), xy(20.5, 10), xy(10.5, 10))}).area()
	parallel := func(rise float64) bool { // two of 1, crossed in their middles
		_, ok := (&seg{a: xy(-0.5, -rise/2), b: xy(0.5, rise/2)}).crossings(&seg{a: xy(-0.5, 0), b: xy(0.5, 0)})
		return !ok
	}
	axis := func(r float64) int {
		return len(turnedLoop([]geom.Point{xy(0, r), xy(0, 10), xy(20, 10), xy(20, r)}).faces())
	}
	tilted := func(deg float64) bool {
		a, b := still("a", Of(Tube(40, 20, 0, 50), Tube(50, 20, 50, 60).At(Rotate(AxisX, deg)))), still("b", Of(Cylinder(10, 0, 30)))
		_, ok := onAxis(&a, &b)
		return ok
	}
	rests := func(mm float64) float64 { // the middle of a cuboid so small
		var b Bulk
		b.add(mm, Vec{X: 5})
		return b.Centre.X
	}
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"the room of a quarter to the right, and of one to the left", [][2]geom.Point{room(7, -7, 7, 7), room(-7, 7, -7, -7)}, [][2]geom.Point{{xy(7, -7), xy(9.9, 7)}, {xy(-9.9, -7), xy(-7, 7)}}},
		{"numbers", []int{len(distinct([]float64{5, 5 + 0.95e-6})), len(distinct([]float64{5, 5 + 1.05e-6})), len(distinct([]float64{3, 1, 3}))}, []int{1, 2, 2}},
		{"roots: of a square, of a line, of nothing, of none", []int{roots(1, 0, -1), roots(1.05e-12, 1, -1), roots(0.95e-12, 1, -1), roots(0, 1.05e-12, -1), roots(0, 0.95e-12, -1), roots(1, 0, 1), roots(1, 0, 0)}, []int{2, 2, 1, 1, 0, 0, 1}},
		{"corners", []int{sides(0.95e-6), sides(1.05e-6)}, []int{4, 5}},
		{"beyond the end of a quarter, 1e-9 of its radius inward", []bool{in(0), in(1.38e-9), in(1.48e-9), in(-1)}, []bool{true, true, false, true}},
		{"an arc that begins before the top", []int{cuts(0.95e-9), cuts(1.05e-9), cuts(0.5), cuts(-0.1)}, []int{1, 2, 2, 1}},
		{"a straight side is one piece", len(newRegion(Outline{geom.PolygonLoop(xy(0, 0), xy(10, 0), xy(10, 10))}).flat(0, 0.1)), 3},
		{"two islands half a millimetre apart", islands, 200.0},
		{"an arc from 170° to 460°", len((seg{arc: true, r: 10, from: math.Pi * 170 / 180, sweep: math.Pi * 290 / 180}).split()), 3}, // over 270° and 450°
		{"the sides of a prism of 0.8", len(Of(ruledBetween([]geom.Point{xy(0, 0), xy(0.8, 0), xy(0.8, 0.8), xy(0, 0.8)}, []geom.Point{xy(0, 0), xy(0.8, 0), xy(0.8, 0.8), xy(0, 0.8)}, 0, 5)).Spans(Vec{-5, 0.4, 2}, AxisX)), 1},
		{"an edge on the surface, and off it", []int{len(plate.onSurface([]Vec{{}, {X: 5}}, 10)), len(plate.onSurface([]Vec{{}, {X: 5}, {X: 5, Z: 50}}, 10)), len(plate.onSurface([]Vec{{}, {Z: 50}}, 10))}, []int{1, 1, 0}},
		{"over an end that rises by 3 in 4", (End{AtMm: 10, Rise: 0.75}).over(Vec{X: 4, Z: 18}), 4.0}, // 5 above it at 13, times 4 in 5
		{"parallel", []bool{parallel(0), parallel(0.1)}, []bool{true, false}},
		{"a skin along the axis", []int{axis(0.95e-6), axis(1.05e-6)}, []int{3 * sectors, 4 * sectors}},
		{"rings tilted to one another by 1.414e-6", []bool{tilted(7.9e-5), tilted(8.3e-5)}, []bool{true, false}},
		{"nothing to weigh", []float64{rests(0), rests(1)}, []float64{0, 5}},
		{"a chord", []bool{straight([]Vec{{}, {X: 5}, {X: 0.95e-6}}, 1), straight([]Vec{{}, {X: 5}, {X: 1.05e-6}}, 1), straight([]Vec{{}, {X: 5, Y: 0.9}, {X: 10}}, 1), straight([]Vec{{}, {X: 5, Y: 1.05}, {X: 10}}, 1)}, []bool{false, true, true, false}},
		{"seen along an arc's axis", []int{len(quarter.grazed(xy(0, 0.95e-6))), len(quarter.grazed(xy(0, 1.05e-6))), len(quarter.grazed(xy(1, 0)))}, []int{0, 1, 0}},
		{"a line beside an edge", []float64{lineDist2(xy(0, 0), xy(10, 0), xy(5, 3)), lineDist2(xy(0, 0), xy(10, 0), xy(-4, 3)), lineDist2(xy(0, 0), xy(10, 0), xy(13, 4)), lineDist2(xy(0, 0), xy(10, 0), xy(0, 2)), lineDist2(xy(0, 0), xy(10, 0), xy(10, 2)), lineDist2(xy(2, 1), xy(6, 4), xy(1, 6.5)), lineDist2(xy(2, 1), xy(6, 4), xy(-5, 2)), lineDist2(xy(2, 1), xy(6, 4), xy(7, 11))}, []float64{9, 25, 25, 4, 4, 25, 50, 50}},
		{"a line in a body for long enough", []int{len(Of(Cuboid(Vec{}, Vec{10, 10, 0.95e-7})).Spans(Vec{5, 5, -1}, AxisZ)), len(Of(Cuboid(Vec{}, Vec{10, 10, 1.05e-7})).Spans(Vec{5, 5, -1}, AxisZ))}, []int{0, 1}},
		{"two stretches with a gap", []int{len(Of(Cuboid(Vec{}, Vec{10, 10, 1}), Cuboid(Vec{Z: 1 + 0.95e-6}, Vec{10, 10, 2})).Spans(Vec{5, 5, -1}, AxisZ)), len(Of(Cuboid(Vec{}, Vec{10, 10, 1}), Cuboid(Vec{Z: 1 + 1.05e-6}, Vec{10, 10, 2})).Spans(Vec{5, 5, -1}, AxisZ))}, []int{1, 2}},
	} {
		if !reflect.DeepEqual(c.got, c.want) {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
}
