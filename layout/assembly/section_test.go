package assembly

import (
	"math"
	"testing"

	"centrepop/parts/geom"
)

func TestSectionAreas(t *testing.T) {
	t.Parallel()
	along := Frame(Vec{}, AxisX.Times(-1), AxisY) // the plane of y and z
	for _, c := range []struct {
		name  string
		solid *Solid
		plane Pose
		mm2   float64
		loops int
	}{
		{"cuboid", Of(Cuboid(Vec{0, 0, 0}, Vec{10, 20, 30})), Move(Vec{Z: 10}), 200, 1},
		{"tube along its axis", Of(Tube(50, 30, 0, 200)), along, 2 * 20 * 200, 2},
		{"tube across", Of(Tube(50, 30, 0, 200)), Move(Vec{Z: 70}), math.Pi * 1600, 2},
		{"bar at 60°", Of(Cylinder(20, -100, 100)), Rotate(AxisX, 60), math.Pi * 400 / math.Cos(math.Pi/3), 1},
		{"housing", housing(), along, 2 * (30*30 + 40*30), 2},
		{"blind bore", Of(Turned([]ZR{{0, 20}, {40, 20}}, []ZR{{0, 10}, {30, 10}})), along, 40*40 - 20*30, 1},
		{"cone shell", Of(Turned([]ZR{{0, 80}, {120, 40}}, []ZR{{0, 77}, {120, 37}})), along, 2 * 3 * 120, 2},
		{"plate in its plane", plate(), Move(Vec{Z: -5}), 20000 - math.Pi*900 - 4*math.Pi*30.25, 6},
		{"plate across through holes", plate(), Frame(Vec{X: 80}, AxisX.Times(-1), AxisY), (100 - 22) * 12, 3},
		{"plate tilted by 30°", Of(Cuboid(Vec{-100, -50, -12}, Vec{100, 50, 0})), Rotate(AxisX, 60).Shifted(Vec{Z: -6}), 200 * 12 / math.Sin(math.Pi/3), 1},
		{"off the axis", Of(Cylinder(20, 0, 100)), Frame(Vec{X: 12}, AxisX.Times(-1), AxisY), 32 * 100, 1},
		{"two bars in one another", Of(Cylinder(10, 0, 30), Cylinder(20, 20, 40)), along, 20*20 + 40*20, 1},
		{"beside it", plate(), Move(Vec{Z: 3}), 0, 0},
	} {
		b := still("b", c.solid)
		for _, flatMm := range []float64{0.01, 0.05} {
			got := b.Section(c.plane, flatMm)
			if len(got) != c.loops {
				t.Errorf("%s: %d loops, want %d: %+v", c.name, len(got), c.loops, got)
				continue
			}
			sum := 0.0
			for _, loop := range got {
				a, _ := geom.PolygonLoop(loop...).Area()
				sum += a
			}
			near(t, c.name, sum, c.mm2, 0.1*flatMm*c.mm2)
		}
	}
}

// A section of straight edges has its corners and no others.
func TestSectionCorners(t *testing.T) {
	t.Parallel()
	along := Frame(Vec{}, AxisX.Times(-1), AxisY)
	h := still("h", housing())
	got := h.Section(along, 0.01)
	want := map[geom.Point]bool{}
	for _, p := range []geom.Point{{XMm: 0, YMm: 50}, {XMm: 0, YMm: 80}, {XMm: 60, YMm: 80}, {XMm: 60, YMm: 40}, {XMm: 30, YMm: 40}, {XMm: 30, YMm: 50}} {
		q := along.Inverse().Apply(Vec{0, p.YMm, p.XMm})
		want[geom.Point{XMm: math.Round(q.X), YMm: math.Round(q.Y)}] = true
		q = along.Inverse().Apply(Vec{0, -p.YMm, p.XMm})
		want[geom.Point{XMm: math.Round(q.X), YMm: math.Round(q.Y)}] = true
	}
	n := 0
	for _, loop := range got {
		for _, p := range loop {
			n++
			r := geom.Point{XMm: math.Round(p.XMm), YMm: math.Round(p.YMm)}
			if !want[r] || p.Minus(r).LengthMm() > 2e-5 {
				t.Errorf("corner at %+v", p)
			}
		}
	}
	if n != 12 {
		t.Errorf("%d corners, want 12: %+v", n, got)
	}
}

func total(lines []Line, id string) float64 {
	sum := 0.0
	for _, l := range lines {
		if l.ID == id {
			sum += extent(l.Points)
		}
	}
	return sum
}

func TestView(t *testing.T) {
	t.Parallel()
	front := Move(Vec{Z: 500})
	box := still("box", Of(Cuboid(Vec{0, 0, 0}, Vec{100, 50, 20})))
	for _, c := range []struct {
		name   string
		bodies []Body
		frame  Pose
		id     string
		want   float64
		tol    float64
	}{
		// Both faces' outlines lie over one another where they are seen from
		// the front; the back one is hidden but for its grazing edges.
		{"disc", []Body{still("d", Of(Cylinder(40, 0, 10)))}, front, "d", 2 * math.Pi * 40, 1},
		{"disc from the side", []Body{still("d", Of(Cylinder(40, 0, 10)))}, Frame(Vec{Y: 500}, AxisY, AxisZ), "d", 2*80 + 2*10, 2},
		{"plate's bore and holes", []Body{still("p", plate())}, front, "p", 2*300 + 2*math.Pi*30 + 8*math.Pi*5.5, 8},
		{"half hidden", []Body{box, at("lid", Of(Cuboid(Vec{0, 0, 0}, Vec{200, 200, 5})), Move(Vec{50, -20, 30}))}, front, "box", 50 + 2*50, 1},
		// Both rims from the side, a line each, and the two limbs between them.
		{"leaning pipe from the side", []Body{still("d", Of(Leaning(40, 0, 40, geom.Point{XMm: 30, YMm: 0}, 100)))}, Frame(Vec{Y: -500}, AxisY.Times(-1), AxisZ), "d", 2*80 + 2*math.Hypot(30, 100), 4},
		{"wholly hidden", []Body{box, at("lid", Of(Cuboid(Vec{-50, -50, 0}, Vec{200, 200, 5})), Move(Vec{0, 0, 30}))}, front, "box", 0, 0},
		{"hidden at its left end, half a millimetre", []Body{box, still("lid", Of(Cuboid(Vec{-20, -20, 30}, Vec{0.5, 100, 35})))}, front, "box", 2*99.5 + 50, 0.05},
		{"at its right end", []Body{box, still("lid", Of(Cuboid(Vec{99.5, -20, 30}, Vec{120, 100, 35})))}, front, "box", 2*99.5 + 50, 0.05},
		{"at its lower edge", []Body{box, still("lid", Of(Cuboid(Vec{-20, -20, 30}, Vec{200, 0.5, 35})))}, front, "box", 100 + 2*49.5, 0.05},
		{"at its upper edge", []Body{box, still("lid", Of(Cuboid(Vec{-20, 49.5, 30}, Vec{200, 100, 35})))}, front, "box", 100 + 2*49.5, 0.05},
		{"before the plane", []Body{box}, Move(Vec{Z: -10}), "box", 0, 0},
	} {
		near(t, c.name, total(Look(c.bodies, c.frame, 4), c.id), c.want, c.tol)
	}
}

// A bar mitred at both ends, seen on the side on which it is the longer and from beside: its edges end on
// the slants, by hand.
func TestMitredShows(t *testing.T) {
	t.Parallel()
	bar := Of(Mitred(Outline{geom.RectangleLoop(geom.Point{XMm: 0, YMm: 0}, geom.Point{XMm: 40, YMm: 20}, 0)}, End{0, 0.75}, End{200, -0.3}))
	from := func(normal, up Vec) float64 {
		return total(Look([]Body{still("bar", bar)}, Frame(normal.Times(500), normal, up), 4), "bar")
	}
	near(t, "from below, where y is 0", from(AxisY.Times(-1), AxisZ), 200+(200-12-30)+50+math.Hypot(40, 12), 0.1)
	near(t, "on the long side", from(AxisX.Times(-1), AxisZ), 2*200+2*20, 0.3)
	near(t, "on the short side", from(AxisX, AxisZ), 2*158+4*20+2*30+2*12, 0.3) // both slants in sight
}

// The half of a stepped ring behind the plane of its axis shows its steps
// inside, not its outside.
func TestHalfView(t *testing.T) {
	t.Parallel()
	lines := Look([]Body{still("h", housing())}, Frame(Vec{}, AxisX, AxisY), 4)
	seen := false
	for _, l := range lines {
		for _, p := range l.Points {
			if math.Abs(p.YMm) > 80+1e-6 {
				t.Errorf("%+v lies off the part", p)
			}
			if math.Abs(p.XMm+30) < 1e-6 && math.Abs(p.YMm) < 39 {
				seen = true
			}
		}
	}
	if !seen {
		t.Errorf("the step in the bore is not drawn: %+v", lines)
	}
}

// A tube with mitred ends, cut along its middle: both its walls show, whichever way it
// lies. A wall that widens upwards once went with the rows beside its lower corners.
func TestSectionOfMitredTube(t *testing.T) {
	t.Parallel()
	along := Pose{X: AxisY, Y: AxisZ, Z: AxisX}
	tube := Outline{geom.RectangleLoop(geom.Point{XMm: -25, YMm: -50}, geom.Point{XMm: 25, YMm: 0}, 8), geom.RectangleLoop(geom.Point{XMm: -21, YMm: -46}, geom.Point{XMm: 21, YMm: -4}, 4)}
	s := Of(Mitred(tube, End{-205, 1}, End{205, -1}).At(along))
	for _, deg := range []float64{0, 90, 180, 270} {
		b := Body{Solid: s, Pose: Rotate(AxisZ, deg)}
		loops := b.Section(Move(Vec{Z: -25}), 0.05)
		area := 0.0
		for _, l := range loops {
			for i, p := range l {
				area += p.Cross(l[(i+1)%len(l)]) / 2
			}
		}
		// Walls of 4: 460 and 452 long at their edges, 360 and 368.
		if want := 4.0 * (456 + 364); len(loops) != 2 || math.Abs(area-want) > 0.5 {
			t.Errorf("turned by %v: %d walls, %v mm², want %v", deg, len(loops), area, want)
		}
	}
}

// TestLeaningDist: a millimetre within or without the circle that a leaning cone has at a height is within or without
// the cone, all round; over a square-to-round the same of the rectangle at its foot and the circle at its head.
func TestLeaningDist(t *testing.T) {
	t.Parallel()
	cone := Of(Leaning(40, 0, 20, geom.Point{XMm: 30, YMm: 10}, 100))
	hood := Of(SquareToRound(geom.Point{XMm: 80, YMm: 60}, 0, 20, geom.Point{XMm: 5}, 100))
	for deg := 7.0; deg < 367; deg += 15 {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		for z := 5.0; z < 100; z += 15 {
			for _, off := range []float64{-1, 1} {
				r := 40 - 0.2*z + off
				if got := cone.Dist(Vec{0.3*z + r*cos, 0.1*z + r*sin, z}); (got < 0) != (off < 0) || math.Abs(got) > 1.1 {
					t.Errorf("%v mm off the cone at %v°, %v up: %v", off, deg, z, got)
				}
			}
		}
		for _, off := range []float64{-1, 1} {
			foot := min(40/math.Abs(cos), 30/math.Abs(sin)) + 2*off
			low, high := hood.Dist(Vec{foot * cos, foot * sin, 0.01}), hood.Dist(Vec{5 + (20+off)*cos, (20 + off) * sin, 99.99})
			if (low < 0) != (off < 0) || (high < 0) != (off < 0) {
				t.Errorf("%v mm off the hood at %v°: %v and %v", off, deg, low, high)
			}
		}
	}
}
