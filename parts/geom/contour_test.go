package geom

import (
	"errors"
	"math"
	"strings"
	"testing"

	"centrepop/parts/seq"

	"github.com/tdewolff/canvas"
)

func path(t *testing.T, text string) *canvas.Path {
	t.Helper()
	p, wrong := ParsePath(text)
	if wrong != "" {
		t.Fatalf("%s: %s", text, wrong)
	}
	return p
}

// TestDepth: distances by plane geometry; a negative one is outside.
func TestDepth(t *testing.T) {
	t.Parallel()
	const up = "M0 -50 A50 50 0 0 1 0 50 A50 50 0 0 1 0 -50 Z"        // halved by an upright line
	const slant = "M30 -40 A50 50 0 0 1 -30 40 A50 50 0 0 1 30 -40 Z" // and by a slanting one
	const big = "M0 -50 A50 50 0 1 1 -30 -40 Z"                       // most of a circle, cut by a chord
	for _, c := range []struct {
		name string
		p    *canvas.Path
		at   Point
		want float64
	}{
		{"middle of a circle", Circle(100), Point{}, 50},
		{"in a circle, on its start line", Circle(100), Point{30, 0}, 20},
		{"in a circle, left on its start line", Circle(100), Point{-30, 0}, 20},
		{"in a circle, above", Circle(100), Point{24, 32}, 10},
		{"on a circle", Circle(100), Point{30, 40}, 0},
		{"outside a circle", Circle(100), Point{-36, -48}, -10},
		{"in a rectangle", Rectangle(100, 60, 0), Point{45, 10}, 5},
		{"beyond its corner", Rectangle(100, 60, 0), Point{53, 34}, -5},
		{"in a round corner", Rectangle(100, 60, 10), Point{40, 20}, 10},
		{"outside a round corner", Rectangle(100, 60, 10), Point{48, 28}, -(8*math.Sqrt2 - 10)},
		{"end of a slot", Obround(100, 40), Point{45, 0}, 5},
		{"outside the end of a slot", Obround(100, 40), Point{0, 21}, -1},
		{"middle of a hexagon", Regular(6, 50, 0), Point{}, 25},
		{"near a flat", Regular(6, 50, 0), Point{24, 0}, 1},
		{"past a flat", Regular(6, 50, 0), Point{26, 0}, -1},
		{"notch of an L", Polygon([]Point{{0, 0}, {60, 0}, {60, 20}, {20, 20}, {20, 60}, {0, 60}}), Point{23, 24}, -3},
		{"arm of an L", Polygon([]Point{{0, 0}, {60, 0}, {60, 20}, {20, 20}, {20, 60}, {0, 60}}), Point{5, 40}, 5},
		{"level with corners", Polygon([]Point{{0, 0}, {60, 0}, {60, 20}, {20, 20}, {20, 60}, {0, 60}}), Point{10, 20}, 10},
		{"clockwise", Polygon([]Point{{0, 0}, {0, 60}, {60, 60}, {60, 0}}), Point{10, 20}, 10},
		{"middle of a cut circle", path(t, big), Point{}, 15 * math.Sqrt(10)},
		{"on an upright start line", path(t, up), Point{0, 30}, 20}, {"low on it", path(t, up), Point{0, -30}, 20}, {"on a slanting one", path(t, slant), Point{-15, 20}, 25},
		{"beyond the cut", path(t, big), Point{-17, -46}, -5 / math.Sqrt(10)},
	} {
		if got := NewContour(c.p).DepthMm(c.at); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %v lies %g mm inside, want %g", c.name, c.at, got, c.want)
		}
	}
}

// TestAreaAndLength: circles, rectangles and their corners by plane geometry.
func TestAreaAndLength(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name         string
		p            *canvas.Path
		area, length float64
	}{
		{"circle", Circle(100), math.Pi * 2500, math.Pi * 100},
		{"rectangle", Rectangle(100, 60, 0), 6000, 320},
		{"round corners", Rectangle(100, 60, 10), 6000 - (4-math.Pi)*100, 320 - 80 + 20*math.Pi},
		{"slot", Obround(100, 40), 60*40 + math.Pi*400, 120 + 40*math.Pi},
		{"upright slot", Obround(40, 100), 60*40 + math.Pi*400, 120 + 40*math.Pi},
		{"hexagon, across flats² × √3/2", Regular(6, 50, 0), 2500 * math.Sqrt(3) / 2, 6 * 50 / math.Sqrt(3)},
		{"triangle, inscribed radius 10", Regular(3, 20, 0), 300 * math.Sqrt(3), 60 * math.Sqrt(3)},
	} {
		k := NewContour(c.p)
		if got := k.AreaMm2(); math.Abs(got-c.area) > 1e-6 && math.Abs(got+c.area) > 1e-6 {
			t.Errorf("%s: area %g, want %g", c.name, got, c.area)
		}
		if got := k.LengthMm(); math.Abs(got-c.length) > 1e-6 {
			t.Errorf("%s: length %g, want %g", c.name, got, c.length)
		}
	}
	if up, down := NewContour(Circle(10)).AreaMm2(), NewContour(Circle(10).Reverse()).AreaMm2(); up != -down {
		t.Errorf("areas %g one way round and %g the other", up, down)
	}
}

func TestBounds(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		p    *canvas.Path
		want Box
	}{
		{Circle(100), Box{Point{-50, -50}, Point{50, 50}}},
		{Rectangle(100, 60, 10), Box{Point{-50, -30}, Point{50, 30}}},
		{Regular(4, 20, 45), Box{Point{-10, -10}, Point{10, 10}}},
		{path(t, "M0 0 L40 0 A20 20 0 0 1 0 0 Z"), Box{Point{0, 0}, Point{40, 20}}},
	} {
		got := Bounds(c.p)
		if Distance(got.Min, c.want.Min) > 1e-6 || Distance(got.Max, c.want.Max) > 1e-6 {
			t.Errorf("%v, want %v", got, c.want)
		}
	}
	if got := (Box{Point{-1, -2}, Point{3, 4}}).Mirrored(); got != (Box{Point{-3, -2}, Point{1, 4}}) {
		t.Errorf("mirrored %v", got)
	}
}

// TestOutward: a convex contour moved by d grows by L·d + π·d² (Steiner's
// formula for parallel curves) and its length by 2π·d.
func TestOutward(t *testing.T) {
	t.Parallel()
	const d = 1.5
	for name, p := range map[string]*canvas.Path{"circle": Circle(100), "rectangle": Rectangle(100, 60, 0), "round corners": Rectangle(100, 60, 10), "slot": Obround(100, 40), "clockwise": Circle(80).Reverse()} {
		was := NewContour(p)
		moved, err := Outward(p, d)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		now := NewContour(moved)
		if got, want := now.AreaMm2(), math.Abs(was.AreaMm2())+was.LengthMm()*d+math.Pi*d*d; math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: area %g, want %g", name, got, want)
		}
		if got, want := now.LengthMm(), was.LengthMm()+2*math.Pi*d; math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: length %g, want %g", name, got, want)
		}
	}
	l := Polygon([]Point{{0, 0}, {60, 0}, {60, 20}, {20, 20}, {20, 60}, {0, 60}})
	moved, err := Outward(l, d)
	if err != nil {
		t.Fatal(err)
	}
	// The inside corner of the L moves to 20 + d, 20 + d.
	if got := NewContour(moved).DepthMm(Point{20 + d, 20 + d}); math.Abs(got) > 1e-9 {
		t.Errorf("the inside corner is %g mm off", got)
	}
	// An oblique one moves by the sum of the outward normals of its sides over 1 and their product.
	oblique := Polygon([]Point{{10, 5}, {70, 5}, {70, 45}, {34, 17}, {10, 45}})
	n1, n2 := Point{-28, 36}.Times(1/math.Hypot(28, 36)), Point{28, 24}.Times(1/math.Hypot(28, 24))
	if moved, err = Outward(oblique, d); err != nil {
		t.Fatal(err)
	}
	corner := Point{34, 17}.Plus(n1.Plus(n2).Times(d / (1 + n1.Dot(n2))))
	if got := seq.Min(math.Inf(1), corners(moved), func(p Point) float64 { return Distance(p, corner) }); got > 1e-9 {
		t.Errorf("no corner at %v, the nearest %g off", corner, got)
	}
	notch := Polygon([]Point{{0, 0}, {100, 0}, {100, 50}, {50.1, 50}, {50.1, 20}, {50, 20}, {50, 50}, {0, 50}})
	if _, err := Outward(notch, 5); !errors.Is(err, ErrTight) {
		t.Errorf("a notch of 0.1 mm moved by 5 mm: %v", err)
	}
}

func TestParsePath(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		path   string
		area   float64 // mm²
		within float64 // for curves taken as polylines
	}{
		{"M0 0 L100 0 L100 50 L0 50 Z", 5000, 1e-9},
		{"m0 0 100 0 0 50 -100 0z", 5000, 1e-9},
		{"M0,0h100v50h-100z", 5000, 1e-9},
		{"M.5.5L100.5.5 100.5 50.5.5 50.5Z", 5000, 1e-9},
		{"M0.,0.,100.,0,100,50,0,50z", 5000, 1e-9},
		// A circle of two arcs, π 50²; flags may touch what follows.
		{"M50 0A50 50 0 0 1-50 0A50 50 0 01 50 0Z", math.Pi * 2500, 1e-6},
		// Radii too small are enlarged to a half circle (SVG 1.1 F.6.6).
		{"M50 0A1 1 0 0 1 -50 0Z", math.Pi * 1250, 1e-6},
		// Parabola segment under a quadratic: 2/3 of its triangle.
		{"M0 0Q50 100 100 0Z", 2.0 / 3 * 5000, 0.2},
		{"M0 0Q50 100 100 0T200 0V-100H0Z", 20000, 0.2},
		// Cubic that is a straight line, and its smooth continuation.
		{"M0 0C10 0 20 0 30 0S80 0 90 0V10H0Z", 900, 1e-6},
	} {
		p, wrong := ParsePath(c.path)
		if wrong != "" {
			t.Errorf("%q: %s", c.path, wrong)
			continue
		}
		if got := math.Abs(NewContour(p).AreaMm2()); math.Abs(got-c.area) > c.within {
			t.Errorf("area of %q is %g, want %g", c.path, got, c.area)
		}
	}
	for _, c := range []struct{ path, want string }{
		{"", "not closed"}, {"Z", "does not start with M"}, {"L1 1", "does not start with M"}, {"M0 0", "not closed"},
		{"M0 0H1e2", "not closed"}, {"M0 0 L1", "a number within ±10000"}, {"M0 0 Lx", "a number within"}, {"M0 0 L1e9 0 Z", "a number within"},
		{"M0 0 l9999 0 l9999 0 Z", "more than 10000 mm from the origin"}, {"M0 0 A1 1 0 2 0 5 5 Z", "a flag, 0 or 1"}, {"M0 0 A1 1 0 0 2 5 5 Z", "a flag, 0 or 1"},
		{"M0 0 v9999 v9999 Z", "more than 10000 mm from the origin"}, {"M0 0M1 1L5 5Z", "a second M"}, {",M0 0L5 5 0 5Z", "a command letter is needed at \",M0"},
		{"5 5", "a command letter is needed at \"5 5\""}, {"M0 0 L5 5 Z 3", "a command letter is needed at \"3\""}, {"M0 0 L5 5 Z L3 3 Z", "goes on after Z"}, {"M0 0L5 5M1 1Z", "a second M"},
		{"M0 0 L-- Z", "a number within"}, {"M 0 0 \x00", "a number within"},
		{"M0 0" + strings.Repeat(" 1 1", maxPathSegments+1) + "Z", "more than 2000 segments"},
	} {
		if _, wrong := ParsePath(c.path); !strings.Contains(wrong, c.want) {
			t.Errorf("%.40q: %q, want %q", c.path, wrong, c.want)
		}
	}
}

func TestCheckContour(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ path, want string }{
		{"M0 0 L100 0 L100 50 L0 50 Z", ""},
		{"M0 0 L100 0 L100 50 L0 50 L0 0 Z", ""},                                             // closed twice
		{"M-50 0 A50 50 0 0 1 50 0 A50 50 0 0 1 -50 0 Z", ""},                                // a circle
		{"M0 0 H60 V40 H0 V30 H50 V10 H0 Z", ""},                                             // a hook
		{"M0 0 L50 50 L100 0 L100 100 L50 50 L0 100 Z", ""},                                  // touches itself in a point
		{"M-90 -90 L90 90 L90 -90 L-60 90 Z", "it crosses itself near x 8.182, y 8.182 mm"},  // y = x meets y = −90 − 1.2(x − 90)
		{"M0 0 C300 300 -200 300 100 0 Z", "crosses itself"},                                 // a loop
		{"M0 0 L100 0 L100 100 L0 100 L50 -10 Z", "it crosses itself near x 45.455, y 0 mm"}, // the side to 50, −10 is 10/11 down
		{"M-0.0001 -50 V50 H50 V-0.0001 H-50 V-50 Z", "it crosses itself near x 0, y 0 mm"},  // and not −0
		{"M0 0 V1000 H10 V-1 H20 V1000 H30 V500 H-5 Z", "crosses itself"},                    // higher than wide
		{"M0 0 L100 0 L50 0 Z", "no area"},
		{"M0 0 L0.9 0 L0.9 1 L0 1 Z", "no area"},
		{"M9000 0 A2000 2000 0 0 1 9000 4000 Z", "more than 10000 mm"}, // bulges to 11 000
	} {
		if got := CheckContour(path(t, c.path)); got != c.want && (c.want == "" || !strings.Contains(got, c.want)) {
			t.Errorf("%s: %q, want %q", c.path, got, c.want)
		}
	}
}

// TestCrossingIsBounded: sides that all lie side by side are given up before
// they cost seconds.
func TestCrossingIsBounded(t *testing.T) {
	t.Parallel()
	var c []Point
	for i := range 60_000 {
		c = append(c, Point{float64(i) / 60, 1e4 * float64(i%2)})
	}
	if i, j, at, crosses, ok := Crossing(c); ok || crosses || i != 0 || j != 0 || at != (Point{}) {
		t.Errorf("60 000 sides side by side: %d and %d at %v, %v", i, j, at, crosses)
	}
	if i, j, _, crosses, ok := Crossing([]Point{{0, 0}, {10, 10}, {10, 0}, {0, 10}}); !crosses || !ok || i != 0 || j != 2 {
		t.Errorf("a bow tie: sides %d and %d, %v", i, j, crosses)
	}
}

// FuzzPath: a contour of finite numbers or a reason, never both; a contour
// that does not cross itself turned about is still one that does not.
func FuzzPath(f *testing.F) {
	for _, seed := range []string{"M0 0 L100 0 L100 50 Z", "m0-1-1-1c0 0 1 1 2 2s3 3 4 4q1 1 2 2t3 3a5 5 0 01 6 6h1v1z", "M-50 0 A50 50 0 0 1 50 0 A50 50 0 0 1 -50 0 Z",
		"M-90 -90 L90 90 L90 -90 L-60 90 Z", "M0 0", "", "Z", "M1e9 0", "MNaN 0Z", "M0 0 A0 0 0 0 0 1 1 Z", "M0 0 A1e-9 1 0 1 1 1 1 Z", "M0 0 a.0000001 9999 45 1 0 9 9z"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, wrong := ParsePath(text)
		if wrong != "" {
			if p != nil {
				t.Fatalf("%q: both a contour and %q", text, wrong)
			}
			return
		}
		if CheckContour(p) != "" {
			return
		}
		k := NewContour(p)
		for name, v := range map[string]float64{"area": k.AreaMm2(), "length": k.LengthMm(), "depth": k.DepthMm(Point{1, 1})} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%q: %s %v", text, name, v)
			}
		}
	})
}

// TestToSegment: beside the line, beyond its ends, and of no length.
func TestToSegment(t *testing.T) {
	p := func(x, y float64) Point { return Point{XMm: x, YMm: y} }
	for i, c := range []struct {
		at, a, b Point
		want     float64
	}{
		{p(5, 3), p(0, 0), p(10, 0), 3}, {p(13, 4), p(0, 0), p(10, 0), 5}, {p(-3, -4), p(0, 0), p(10, 0), 5}, {p(3, 4), p(0, 0), p(0, 0), 5}, {p(0, 10), p(0, 0), p(6, 8), 6}, {p(0.25, 0.3), p(0, 0), p(0.5, 0), 0.3},
	} {
		if got := ToSegment(c.at, c.a, c.b); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%d: %g, want %g", i, got, c.want)
		}
	}
}

// TestMiddle: area and centroid of polygons off the origin, either way round, and of arcs; by hand.
func TestMiddle(t *testing.T) {
	t.Parallel()
	triangle := []Point{{10, 20}, {40, 20}, {10, 80}}
	back := []Point{triangle[2], triangle[1], triangle[0]}
	for _, c := range []struct {
		corners []Point
		mm2     float64
		at      Point
	}{
		{triangle, 900, Point{20, 40}}, {back, 900, Point{20, 40}},
		{[]Point{{0, 0}, {60, 0}, {60, 20}, {20, 20}, {20, 50}, {0, 50}}, 1800, Point{(1200*30 + 600*10) / 1800.0, (1200*10 + 600*35) / 1800.0}},
		{[]Point{{2, 3}, {8, 5}, {2, 3}}, 0, Point{5, 4}}, // without area
	} {
		if mm2, at := Middle(c.corners); math.Abs(mm2-c.mm2) > 1e-9 || Distance(at, c.at) > 1e-9 {
			t.Errorf("%v mm² about %v, want %v about %v", mm2, at, c.mm2, c.at)
		}
	}
	half, _ := ParsePath("M -20 5 A 20 20 0 0 1 20 5 Z") // y up, and so below
	mm2, at := NewContour(half).Middle()
	if math.Abs(mm2-200*math.Pi) > 0.5 || math.Abs(at.XMm) > 1e-6 || math.Abs(math.Abs(at.YMm-5)-80/(3*math.Pi)) > 0.01 {
		t.Errorf("half a disc: %v mm² about %v", mm2, at)
	}
}

// TestInside: a square of 40 by 30 with a hole, and nothing.
func TestInside(t *testing.T) {
	t.Parallel()
	at := func(x, y float64) Point { return Point{XMm: x, YMm: y} }
	plate := [][]Point{{at(0, 0), at(40, 0), at(40, 30), at(0, 30)}, {at(10, 10), at(10, 20), at(20, 20), at(20, 10)}}
	for p, want := range map[Point]bool{at(5, 15): true, at(15, 15): false, at(25, 15): true, at(45, 15): false, at(5, 35): false, at(-5, 15): false} {
		if got := Inside(p, plate...); got != want {
			t.Errorf("%v: %v", p, got)
		}
	}
	slanted := []Point{at(110, 50), at(150, 70), at(130, 130), at(90, 110)} // left side x = 110 − (y − 50)/3, right one x = 150 − (y − 70)/3
	for p, want := range map[Point]bool{at(100.1, 80): true, at(99.9, 80): false, at(139.9, 100): true, at(140.1, 100): false, at(120, 56): true, at(120, 54): false, at(110, 119): true, at(110, 121): false} {
		if got := Inside(p, slanted); got != want {
			t.Errorf("%v in the slanted one: %v", p, got)
		}
	}
	if Inside(at(0, 0)) {
		t.Error("inside nothing")
	}
}

func TestApart(t *testing.T) {
	at := func(x, y float64) Point { return Point{XMm: x, YMm: y} }
	for _, c := range []struct {
		a, b, c, d Point
		want       float64
	}{
		{at(0, 0), at(10, 0), at(5, -5), at(5, 5), 0}, {at(0, 0), at(10, 0), at(5, 2), at(5, 5), 2}, {at(0, 0), at(10, 0), at(13, 4), at(13, 9), 5},
		{at(0, 0), at(10, 0), at(2, 3), at(8, 3), 3}, {at(0, 0), at(10, 0), at(12, 0), at(20, 0), 2}, {at(0, 0), at(10, 0), at(5, 0), at(20, 0), 0},
		{at(1, 1), at(1, 1), at(4, 5), at(4, 5), 5}, {at(1, 1), at(1, 1), at(0, 5), at(9, 5), 4}, {at(0, 0), at(10, 0), at(10, 0), at(10, 9), 0},
	} {
		if got, back := Apart(c.a, c.b, c.c, c.d), Apart(c.d, c.c, c.b, c.a); got != c.want || back != c.want {
			t.Errorf("%+v: %v, %v", c, got, back)
		}
	}
}
