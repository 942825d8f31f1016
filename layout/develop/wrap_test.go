package develop

import (
	"cmp"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"centrepop/parts/seq"
)

// reporter is what *testing.T and *rapid.T share.
type reporter interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

func near(t reporter, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.9g, want %.9g ± %g", what, got, want, tol)
	}
}

// vec is a point in space for the tests: X right and Y up for somebody
// looking at the front face, Z towards that person.
type vec struct{ x, y, z float64 }

func (a vec) minus(b vec) vec     { return vec{a.x - b.x, a.y - b.y, a.z - b.z} }
func (a vec) dot(b vec) float64   { return a.x*b.x + a.y*b.y + a.z*b.z }
func (a vec) times(f float64) vec { return vec{a.x * f, a.y * f, a.z * f} }
func (a vec) cross(b vec) vec     { return vec{a.y*b.z - a.z*b.y, a.z*b.x - a.x*b.z, a.x*b.y - a.y*b.x} }
func onCylinder(r, clock, z float64) vec {
	return vec{r * math.Sin(rad(clock)), r * math.Cos(rad(clock)), z}
}

// TestWrapHandedness bends the sheet round the part in space: with the
// printed side out, x cross y of the sheet must point away from the axis. A
// mirrored template fails.
func TestWrapHandedness(t *testing.T) {
	for _, back := range []bool{false, true} {
		c := Cylinder{DiameterMm: 100, WidthMm: 80, FromBack: back}
		const h = 1e-5
		for clock := 0.0; clock < 360; clock += 30 {
			place := func(dx, dy float64) vec {
				at := c.Position(clock, 40)
				// Undo Position independently: clock from x, depth from y.
				x, y := at.XMm+dx, at.YMm+dy
				if !back {
					return onCylinder(50, x/(math.Pi*100)*360, -y)
				}
				return onCylinder(50, -x/(math.Pi*100)*360, y-80)
			}
			o := place(0, 0)
			right, up := place(h, 0).minus(o).times(1/h), place(0, h).minus(o).times(1/h)
			out := vec{o.x, o.y, 0}.times(1.0 / 50)
			near(t, "outward", right.cross(up).dot(out), 1, 1e-6)
		}
	}
	front := Cylinder{DiameterMm: 100, WidthMm: 80}
	if p := front.Position(90, 0); p.XMm <= 0 {
		t.Errorf("3 o'clock at x = %g, want right of TOP", p.XMm)
	}
	near(t, "one turn", front.Position(360, 0).XMm, math.Pi*100, 1e-9)
}

func TestWrapLength(t *testing.T) {
	// π·114.3 = 359.084, worked examples (e), branch girths; paper of 0.1 mm
	// adds π/10.
	for _, row := range []struct{ d, paper, want float64 }{
		{114.3, 0, 359.084}, {100, 0, 314.159}, {60, 0, 188.496}, {300, 0, 942.478}, {114.3, 0.1, 359.398},
	} {
		got, err := wrapLengthMm(row.d, row.paper)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "wrap length", got, row.want, 0.0006)
	}
}

func feature(t reporter, d Development, name string) Curve {
	t.Helper()
	for _, c := range d.Curves {
		if c.Name == name && c.Role == Cut {
			return c
		}
	}
	t.Fatalf("no curve %q", name)
	return Curve{}
}

// TestWrapHole checks every point of a hole's outline against the drill in
// space, and its extent against 2·R·asin(d/D).
func TestWrapHole(t *testing.T) {
	c := Cylinder{DiameterMm: 114.3, PaperMm: 0.1, WidthMm: 90, TabMm: 15,
		Features: []Feature{{Name: "port", Kind: Hole, ClockDeg: 30, AxialMm: 40, DiameterMm: 50}}}
	d := closedAt(t, c, 180)
	near(t, "width", d.Box().Size().XMm, math.Pi*114.4+15, 1e-9)
	near(t, "left", d.Box().Min.XMm, -math.Pi*114.4/2, 1e-9)
	curve := feature(t, d, "port")
	if !curve.Closed || len(curve.Segments) < 24 {
		t.Fatalf("outline has %d pieces, closed %v", len(curve.Segments), curve.Closed)
	}
	for _, p := range curve.Points(0) {
		clock := p.XMm/(math.Pi*114.4)*360 - 30
		lateral := 57.15 * math.Sin(rad(clock))
		near(t, "distance from the drill's axis", math.Hypot(lateral, p.YMm-40), 25, 1e-9)
	}
	b := curve.Box()
	near(t, "extent", b.Size().XMm, 57.2*2*math.Asin(25/57.15), 2*ToleranceMm)
	near(t, "height", b.Size().YMm, 50, 2*ToleranceMm)
}

func TestWrapSlotsAndWindows(t *testing.T) {
	r, rp := 50.0, 50.05
	c := Cylinder{DiameterMm: 100, PaperMm: 0.1, WidthMm: 120, Features: []Feature{
		{Name: "axial", Kind: AxialSlot, ClockDeg: 0, AxialMm: 60, WidthMm: 12, LengthMm: 50},
		{Name: "around", Kind: AroundSlot, ClockDeg: 90, AxialMm: 60, WidthMm: 10, LengthMm: 60},
		{Name: "chord", Kind: Window, ClockDeg: 200, AxialMm: 50, WidthMm: 40, LengthMm: 30, CornerMm: 4},
		{Name: "tape", Kind: Window, ClockDeg: 270, AxialMm: 50, WidthMm: 40, LengthMm: 30, OnSurface: true},
	}}
	d, err := c.Develop()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		name          string
		width, height float64
	}{
		{"axial", 2 * rp * math.Asin(6/r), 50},
		{"around", 60 * rp / r, 10},
		{"chord", 2 * rp * math.Asin(20/r), 30},
		{"tape", 40 * rp / r, 30},
	} {
		b := feature(t, d, row.name).Box()
		near(t, row.name+" width", b.Size().XMm, row.width, 2*ToleranceMm)
		near(t, row.name+" height", b.Size().YMm, row.height, 2*ToleranceMm)
	}
	// The widest gap is from the window measured by tape (ends 20 mm of
	// surface after 270°) to the axial slot (starts asin(6/50) before TOP).
	seam := d.SeamDeg
	c.FromBack = true
	if d, err = c.Develop(); err != nil {
		t.Fatal(err)
	}
	near(t, "seam from the back face", d.SeamDeg, seam, 1e-6)
	near(t, "seam", seam, (270+deg(20/r)+360-deg(math.Asin(6/r)))/2, 0.05)
}

func TestWrapBackFaceMirrors(t *testing.T) {
	f := []Feature{{Name: "a", ClockDeg: 60, AxialMm: 30, DiameterMm: 20}}
	front := closedAt(t, Cylinder{DiameterMm: 80, WidthMm: 60, Features: f}, 180)
	back := closedAt(t, Cylinder{DiameterMm: 80, WidthMm: 60, FromBack: true, Features: f}, 180)
	a, b := feature(t, front, "a").Box(), feature(t, back, "a").Box()
	near(t, "mirrored left", b.Min.XMm, -a.Max.XMm, 1e-6)
	near(t, "mirrored right", b.Max.XMm, -a.Min.XMm, 1e-6)
}

func TestWrapAcrossSeam(t *testing.T) {
	c := Cylinder{DiameterMm: 80, WidthMm: 60, TabMm: 10, Features: []Feature{{Name: "a", ClockDeg: 358, AxialMm: 30, DiameterMm: 20}}}
	d := closedAt(t, c, 0)
	sum, n := 0.0, 0
	length := math.Pi * 80
	for _, curve := range d.Curves {
		if curve.Name != "a" {
			continue
		}
		n++
		b := curve.Box()
		if b.Min.XMm < -1e-9 || b.Max.XMm > length+10+1e-9 {
			t.Errorf("part reaches %g to %g, outside the sheet", b.Min.XMm, b.Max.XMm)
		}
		if b.Min.XMm < 1e-9 {
			sum += b.Size().XMm // the part at the left edge
		} else {
			sum += length - b.Min.XMm // the part up to the seam
			near(t, "end on the tab", b.Max.XMm, length*358/360+40*math.Asin(10.0/40), 2*ToleranceMm)
		}
	}
	if n != 2 {
		t.Fatalf("drawn %d times, want at both ends", n)
	}
	near(t, "both parts", sum, 80*math.Asin(10.0/40), 2*ToleranceMm)
}

func TestWrapRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	ok := Cylinder{DiameterMm: 80, WidthMm: 60, TabMm: 10}
	with := func(f Feature) Cylinder { c := ok; c.Features = []Feature{f}; return c }
	bad := map[string]Cylinder{
		"diameter is not a finite number":             {DiameterMm: nan, WidthMm: 60},
		"diameter is 0 mm, want 0.01 mm to 100000 mm": {WidthMm: 60},
		"diameter is -5":                              {DiameterMm: -5, WidthMm: 60},
		"diameter is 1000":                            {DiameterMm: 1e6, WidthMm: 60},
		"width is not":                                {DiameterMm: 80, WidthMm: inf},
		"paper thickness":                             {DiameterMm: 80, WidthMm: 60, PaperMm: -1},
		"wrapped on a":                                {DiameterMm: 80, WidthMm: 60, PaperMm: 80},
		"more than half":                              {DiameterMm: 80, WidthMm: 60, TabMm: 130},
		"hole diameter":                               with(Feature{AxialMm: 30}),
		"width 80 mm breaks out of the side of the diameter 80 mm": with(Feature{AxialMm: 30, DiameterMm: 80}),
		"but the template": with(Feature{AxialMm: 30, DiameterMm: 61}),
		"less than its":    with(Feature{Kind: AxialSlot, AxialMm: 30, WidthMm: 10, LengthMm: 9}),
		"its cutter":       with(Feature{Kind: AroundSlot, AxialMm: 30, WidthMm: 10, LengthMm: 9}),
		"all the way":      with(Feature{Kind: AroundSlot, AxialMm: 30, WidthMm: 10, LengthMm: 252}),
		"too large for":    with(Feature{Kind: Window, AxialMm: 30, WidthMm: 10, LengthMm: 20, CornerMm: 6}),
		"not known":        with(Feature{Kind: 9, AxialMm: 30}),
	}
	for want, c := range bad {
		d, err := c.Develop()
		if !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: got %v", want, err)
		}
		if len(d.Curves) != 0 && err != nil {
			t.Errorf("%s: an error and a pattern", want)
		}
	}
	ok.Features = []Feature{{Name: "a", AxialMm: 30, DiameterMm: 5}, {Name: "a", AxialMm: 40, DiameterMm: 5}}
	if _, err := ok.Develop(); err == nil || !strings.Contains(err.Error(), "two features") {
		t.Errorf("same name twice: %v", err)
	}
}

// TestWrapOutlineProperty: for any radial drill, every outline vertex lies on
// the drill in space, and the chords stay near it.
func TestWrapOutlineProperty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(10, 500).Draw(t, "D")
		hole := d * rapid.Float64Range(0.05, 0.99).Draw(t, "hole/D")
		clock := rapid.Float64Range(-360, 360).Draw(t, "clock")
		c := Cylinder{DiameterMm: d, WidthMm: hole + 10,
			Features: []Feature{{Name: "a", ClockDeg: clock, AxialMm: hole/2 + 5, DiameterMm: hole}}}
		dev, err := c.Develop()
		if err != nil {
			t.Fatal(err)
		}
		points := feature(t, dev, "a").Points(0)
		for i, p := range points {
			off := func(p Point) float64 {
				lateral := d / 2 * math.Sin(2*p.XMm/d-rad(clock))
				return math.Hypot(lateral, p.YMm-hole/2-5) - hole/2
			}
			near(t, "vertex", off(p), 0, 1e-7)
			if i > 0 {
				near(t, "chord middle", off(points[i-1].Plus(p).Times(0.5)), 0, 2*ToleranceMm)
			}
		}
	})
}

// TestWrapSides: a side that lies on the edge of the strip is drawn where its outline is, and is no line of its own
// at the other end; what crosses the seam is drawn in part at both, and once more on the tab.
func TestWrapSides(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		lo, hi, tab float64
		want        [][2]float64 // from and to of each piece
	}{
		{80, 100, 0, [][2]float64{{80, 100}}},
		{0, 20, 0, [][2]float64{{0, 20}}},
		{40, 60, 0, [][2]float64{{40, 60}}},
		{90, 110, 0, [][2]float64{{0, 10}, {90, 100}}},
		{90, 110, 5, [][2]float64{{0, 10}, {90, 105}}},
		{-10, 10, 20, [][2]float64{{0, 10}, {90, 110}}},
	} {
		o := outline{lo: c.lo, hi: c.hi, points: []Point{{XMm: c.lo, YMm: 10}, {XMm: c.hi, YMm: 10}, {XMm: c.hi, YMm: 30}, {XMm: c.lo, YMm: 30}, {XMm: c.lo, YMm: 10}}}
		var d Development
		Cylinder{TabMm: c.tab}.place(&d, []outline{o}, 0, 100)
		got := make([][2]float64, 0, len(d.Curves))
		for _, curve := range d.Curves {
			x := func(p Point) float64 { return p.XMm }
			points := curve.Points(0)
			got = append(got, [2]float64{seq.Min(1e9, points, x), seq.Max(-1e9, points, x)})
		}
		slices.SortFunc(got, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
		if !slices.Equal(got, c.want) {
			t.Errorf("from %g to %g: %v, want %v", c.lo, c.hi, got, c.want)
		}
	}
}
