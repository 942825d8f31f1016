package geom

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"
	"pgregory.net/rapid"
)

// bent is a side of a contour: to its end, with the tangent of a quarter of
// the angle it turns through, 0 for a line, over 0 anticlockwise.
type bent struct {
	to   Point
	bend float64
}

// sampled walks along the sides from the last one's end by steps, each side by
// turning its start about the arc's own centre, worked out from the bend.
func sampled(sides []bent, steps int) (out []Point) {
	from := sides[len(sides)-1].to
	for _, s := range sides {
		chord := s.to.Minus(from)
		for k := range steps {
			f := float64(k) / float64(steps)
			p := from.Plus(chord.Times(f))
			if s.bend != 0 {
				// The centre lies (1 − b²)/4b of the chord to its left.
				c := from.Plus(chord.Times(0.5)).Plus(Point{-chord.YMm, chord.XMm}.Times((1 - s.bend*s.bend) / (4 * s.bend)))
				sin, cos := math.Sincos(4 * math.Atan(s.bend) * f)
				r := from.Minus(c)
				p = c.Plus(Point{r.XMm*cos - r.YMm*sin, r.XMm*sin + r.YMm*cos})
			}
			out = append(out, p)
		}
		from = s.to
	}
	return out
}

// drawn is the sides as a path.
func drawn(sides []bent) *canvas.Path {
	p := &canvas.Path{}
	from := sides[len(sides)-1].to
	p.MoveTo(from.XMm, from.YMm)
	for _, s := range sides {
		if b := math.Abs(s.bend); b == 0 {
			p.LineTo(s.to.XMm, s.to.YMm)
		} else {
			r := Distance(from, s.to) * (1 + b*b) / (4 * b)
			p.ArcTo(r, r, 0, b > 1, s.bend > 0, s.to.XMm, s.to.YMm)
		}
		from = s.to
	}
	p.Close()
	return p
}

// drawSides draws 3 to 7 corners on a grid in order of their angle, each side
// a line or an arc of up to bend.
func drawSides(t *rapid.T, gridMm, bend float64) (out []bent) {
	n := rapid.IntRange(3, 7).Draw(t, "corners")
	for i := range n {
		a := 360 * (float64(i) + rapid.Float64Range(-0.3, 0.3).Draw(t, "turn")) / float64(n)
		p := Clock(rapid.Float64Range(50, 100).Draw(t, "radius"), -a)
		s := bent{to: Point{math.Round(p.XMm/20) * 20 * gridMm, math.Round(p.YMm/20) * 20 * gridMm}}
		if rapid.Bool().Draw(t, "arc") {
			s.bend = rapid.SampledFrom([]float64{-1, -0.6, -0.25, -0.1, 0.1, 0.25, 0.6, 1}).Draw(t, "bend") * bend
		}
		if len(out) == 0 || s.to != out[len(out)-1].to {
			out = append(out, s)
		}
	}
	if len(out) < 3 || out[0].to == out[len(out)-1].to {
		t.Skip("fewer than three corners")
	}
	return out
}

// TestContourIsItsPolygon: area, length, and depth of points on the grid of the
// corners are those of a fine polygon laid along the same lines and arcs.
func TestContourIsItsPolygon(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		mm := rapid.SampledFrom([]float64{1, 0.01}).Draw(t, "grid")
		sides := drawSides(t, mm, 2)
		dots := sampled(sides, 400)
		area, length := 0.0, 0.0
		for i, p := range dots {
			q := dots[(i+1)%len(dots)]
			area += p.Cross(q) / 2
			length += Distance(p, q)
		}
		c := NewContour(drawn(sides))
		if got := c.AreaMm2(); math.Abs(got-area) > 3e-5*length*length {
			t.Fatalf("area %g, the polygon's %g", got, area)
		}
		if got := c.LengthMm(); math.Abs(got-length) > 2e-5*length {
			t.Fatalf("length %g, the polygon's %g", got, length)
		}
		at := Point{float64(rapid.IntRange(-12, 12).Draw(t, "x")) * 10 * mm, float64(rapid.IntRange(-12, 12).Draw(t, "y")) * 10 * mm}
		near, inside := math.Inf(1), false
		off := at.Plus(Point{1.7e-7 * mm, 2.9e-7 * mm}) // off the corners' levels
		for i, p := range dots {
			q := dots[(i+1)%len(dots)]
			near = math.Min(near, ToSegment(at, p, q))
			if (p.YMm > off.YMm) != (q.YMm > off.YMm) && off.XMm < p.XMm+(off.YMm-p.YMm)/(q.YMm-p.YMm)*(q.XMm-p.XMm) {
				inside = !inside
			}
		}
		if near < 0.01*mm {
			return // which side is for the rounding to say
		}
		if got := Inside(off, dots); got != inside {
			t.Fatalf("%v inside: %v", off, got)
		}
		if !inside {
			near = -near
		}
		if got := c.DepthMm(at); math.Abs(got-near) > 0.005*mm {
			t.Fatalf("%v lies %g mm inside, the polygon says %g", at, got, near)
		}
	})
}

// TestOutwardIsAllAsFar: every place of a contour moved out by d is d from the
// contour, and it encloses more, whichever way it ran.
func TestOutwardIsAllAsFar(t *testing.T) {
	t.Parallel()
	moved := 0
	rapid.Check(t, func(t *rapid.T) {
		mm := rapid.SampledFrom([]float64{1, 0.1}).Draw(t, "grid")
		p := drawn(drawSides(t, mm, 0.5))
		if _, _, _, crosses, _ := Crossing(corners(p)); crosses {
			t.Skip("crosses itself")
		}
		was := NewContour(p)
		if rapid.Bool().Draw(t, "clockwise") {
			p = p.Reverse()
		}
		d := rapid.Float64Range(0.2, 2).Draw(t, "mm") * mm
		out, err := Outward(p, d)
		if err != nil {
			t.Skip(err)
		}
		for _, e := range piecesOf(out, true) {
			if got := was.DepthMm(e.from); math.Abs(got+d) > 2*FlatMm {
				t.Fatalf("%v is %g mm outside, moved by %g", e.from, -got, d)
			}
		}
		if grown := NewContour(out).AreaMm2() - math.Abs(was.AreaMm2()); !(grown > 0) {
			t.Fatalf("grown by %g mm²", grown)
		}
		moved++
	})
	if moved < 50 {
		t.Errorf("only %d contours were moved", moved)
	}
}

// TestOutwardOfCusps: a half disc of 100 with half discs of 40 and 60 cut from
// its flat side (the arbelos) has three corners of 0°, each rounded by a half
// disc; its arcs change by d.
func TestOutwardOfCusps(t *testing.T) {
	t.Parallel()
	const d = 2.0
	p := path(t, "M50 0 A50 50 0 0 1 -50 0 A20 20 0 0 0 -10 0 A30 30 0 0 0 50 0 Z")
	out, err := Outward(p, d)
	if err != nil {
		t.Fatal(err)
	}
	want := math.Pi / 2 * (52*52 - 18*18 - 28*28 + 3*d*d)
	if got := NewContour(out).AreaMm2(); math.Abs(got-want) > 1e-6 {
		t.Errorf("area %g, want %g", got, want)
	}
}

// TestOutwardMeets: an inside corner of a line and an arc, or of two arcs, moves to
// where the moved sides meet, however far: Pythagoras. A keyhole of 10 with a neck 4
// wide closes at 2.
func TestOutwardMeets(t *testing.T) {
	t.Parallel()
	const arch = "M-50 0 L50 0 L50 20 L30 20 A30 30 0 0 1 -30 20 L-50 20 Z"
	const pair = "M0 15 A25 25 0 1 1 0 -15 A25 25 0 1 1 0 15 Z" // discs of 25 about ±20, 0
	const bay = "M-50 -50 L-30 -50 A30 30 0 0 0 30 -50 L50 -50 L50 50 L-50 50 Z"
	const keyhole = "M-40 -60 L40 -60 L40 40 L2 40 L2 9.79795897 A10 10 0 1 0 -2 9.79795897 L-2 40 L-40 40 Z"
	for _, c := range []struct {
		text   string
		mm     float64
		corner Point
	}{
		{arch, 15, Point{math.Sqrt(45*45 - 15*15), 35}},
		{arch, 25, Point{math.Sqrt(55*55 - 25*25), 45}},
		{pair, 10, Point{0, math.Sqrt(35*35 - 20*20)}},
		{pair, 100, Point{0, -math.Sqrt(125*125 - 20*20)}},
		{keyhole, 1.9, Point{0.1, 9.79795897}},
		{bay, 25, Point{5, -50}}, {keyhole, 2.1, Point{}}, {keyhole, 10.5, Point{}}, {arch, 45, Point{}},
	} {
		out, err := Outward(path(t, c.text), c.mm)
		if c.corner == (Point{}) {
			if !errors.Is(err, ErrTight) {
				t.Errorf("%s by %g: %v, want %v", c.text, c.mm, err, ErrTight)
			}
			continue
		}
		if err != nil {
			t.Errorf("%s by %g: %v", c.text, c.mm, err)
			continue
		}
		if got := NewContour(out).DepthMm(c.corner); math.Abs(got) > 1e-6 {
			t.Errorf("%s by %g: %v lies %g inside", c.text, c.mm, c.corner, got)
		}
		was := NewContour(path(t, c.text))
		for _, e := range piecesOf(out, false) {
			if got := was.DepthMm(e.from); math.Abs(got+c.mm) > 1e-6 {
				t.Errorf("%s by %g: %v is %g outside", c.text, c.mm, e.from, -got)
			}
		}
	}
}

// TestOutwardIntoCorners: an inside corner of a line and an arc is followed; the arc
// that is left of a bay may be short.
func TestOutwardIntoCorners(t *testing.T) {
	t.Parallel()
	// The square of 100 grown by 2.5, less the mouth of the bay between its two
	// round corners and the half disc of 0.5 that is left of it.
	out, err := Outward(path(t, "M-50 -50 L-3 -50 A3 3 0 0 0 3 -50 L50 -50 L50 50 L-50 50 Z"), 2.5)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := NewContour(out).AreaMm2(), 10000+1000+6.25*math.Pi-(6*2.5-3.125*math.Pi)-0.125*math.Pi; math.Abs(got-want) > 1e-6 {
		t.Errorf("a bay of 3 by 2.5: area %g, want %g", got, want)
	}
	for name, c := range map[string]struct {
		text string
		mm   float64
	}{
		"arch on a wall":     {"M-50 0 L50 0 L50 20 L30 20 A30 30 0 0 1 -30 20 L-50 20 Z", 0.2},
		"boss of 0.8":        {"M-50 -50 L50 -50 L50 50 L0.8 50 A0.8 0.8 0 0 1 -0.8 50 L-50 50 Z", 0.04},
		"disc of 0.6":        {"M0.3 0 A0.3 0.3 0 0 1 -0.3 0 A0.3 0.3 0 0 1 0.3 0 Z", 0.05},
		"bay of 0.2":         {"M-0.4 -0.4 L-0.2 -0.4 A0.2 0.2 0 0 0 0.2 -0.4 L0.4 -0.4 L0.4 0.4 L-0.4 0.4 Z", 0.1},
		"smooth into a line": {"M-50 -50 L50 -50 A20 20 0 0 1 50 -10 L-50 -10 Z", 5},
	} {
		was := NewContour(path(t, c.text))
		out, err := Outward(path(t, c.text), c.mm)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, e := range piecesOf(out, true) {
			if got := was.DepthMm(e.from); math.Abs(got+c.mm) > 2*FlatMm {
				t.Errorf("%s: %v is %g mm outside, moved by %g", name, e.from, -got, c.mm)
				break
			}
		}
	}
}

// TestCrossingTriesAll: two sides are found to cross exactly where some pair
// does, compared one by one.
func TestCrossingTriesAll(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		wide := rapid.SampledFrom([]float64{0.2, 1, 5}).Draw(t, "stretched")
		c := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Point {
			return Point{wide * float64(rapid.IntRange(-9, 9).Draw(t, "x")), float64(rapid.IntRange(-9, 9).Draw(t, "y")) / wide}
		}), 3, 9).Draw(t, "corners")
		end := func(i int) Point { return c[(i+1)%len(c)] }
		any := false
		for i := range c {
			for j := range i {
				_, x := cross(c[i], end(i), c[j], end(j))
				any = any || x
			}
		}
		i, j, at, crosses, ok := Crossing(c)
		if !ok || crosses != any {
			t.Fatalf("crosses %v (%v), pair by pair %v", crosses, ok, any)
		}
		if !crosses {
			if i != 0 || j != 0 || at != (Point{}) {
				t.Fatalf("no crossing, yet %d, %d, %v", i, j, at)
			}
			return
		}
		if off := math.Max(ToSegment(at, c[i], end(i)), ToSegment(at, c[j], end(j))); i >= j || off > 1e-9 {
			t.Fatalf("sides %d and %d: %v is %g mm off them", i, j, at, off)
		}
	})
}

// TestCrossingSlack: sides cross once their ends lie more than CloseMm beyond,
// in millimetres however long they are.
func TestCrossingSlack(t *testing.T) {
	t.Parallel()
	for _, long := range []float64{1, 1000} {
		for _, c := range []struct {
			over float64
			want bool
		}{{0.5 * CloseMm, false}, {2 * CloseMm, true}} {
			for name, ends := range map[string][4]Point{
				"over":        {{0, 0}, {long, 0}, {long / 2, long}, {long / 2, -c.over}},
				"under":       {{0, 0}, {long, 0}, {long / 2, -long}, {long / 2, c.over}},
				"back over":   {{long, 0}, {0, 0}, {long / 2, long}, {long / 2, -c.over}},
				"beside":      {{-c.over, 0}, {long, 0}, {0, long}, {0, -long}},
				"beside back": {{-c.over, 0}, {long, 0}, {0, -long}, {0, long}},
			} {
				if _, got := cross(ends[0], ends[1], ends[2], ends[3]); got != c.want {
					t.Errorf("%s by %g at %g: crosses %v", name, c.over, long, got)
				}
			}
		}
	}
}

// TestPathOfBoth: path data is what canvas's own reader of SVG paths takes it
// for (chapter 8 of SVG 1.1), absolute and relative, written apart or not.
func TestPathOfBoth(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		text := fmt.Sprintf("M%d %d", rapid.IntRange(-90, 90).Draw(t, "x"), rapid.IntRange(-90, 90).Draw(t, "y"))
		for range rapid.IntRange(1, 6).Draw(t, "commands") {
			letter := rapid.SampledFrom(strings.Split("LHVCSQTA", "")).Draw(t, "command")
			n := pathArguments[letter[0]]
			if rapid.Bool().Draw(t, "relative") {
				letter = strings.ToLower(letter)
			}
			text += letter
			for i := range n {
				v := float64(rapid.IntRange(-180, 180).Draw(t, "number")) / 2
				switch {
				case n == 7 && i < 2:
					v = math.Abs(v) + 1
				case n == 7 && (i == 3 || i == 4):
					v = float64(rapid.IntRange(0, 1).Draw(t, "flag"))
				}
				text += fmt.Sprintf(" %g", v)
			}
		}
		text += "Z"
		want, err := canvas.ParseSVGPath(text)
		if err != nil {
			t.Fatal(err)
		}
		got, wrong := ParsePath(text)
		if wrong != "" || got.String() != want.String() {
			t.Fatalf("%s: %v (%s), want %v", text, got, wrong, want)
		}
	})
}

// TestPathLimits: each limit is taken, one more is not.
func TestPathLimits(t *testing.T) {
	t.Parallel()
	segments := func(n int) string { return "M0 0" + strings.Repeat("L1 1", n-2) + "Z" }
	for _, c := range []struct{ text, wrong string }{
		{segments(maxPathSegments), ""}, {segments(maxPathSegments + 1), "it has more than 2000 segments"},
		{"M0 0 L" + strings.Repeat("5", 20) + " 0 Z", `after L a number within ±10000 is needed at "55555555555555555555 0 Z"`},
		{"M0 0 L0." + strings.Repeat("5", 20) + " 0 Z", ""},
		{"M0 0 Lx" + strings.Repeat("5", 39), `after L a number within ±10000 is needed at "x` + strings.Repeat("5", 39) + `"`},
		{"M0 0 Lx" + strings.Repeat("5", 40), `after L a number within ±10000 is needed at "x` + strings.Repeat("5", 39) + `…"`},
	} {
		if _, wrong := ParsePath(c.text); wrong != c.wrong {
			t.Errorf("%.30s: %q, want %q", c.text, wrong, c.wrong)
		}
	}
	for text, want := range map[string]string{
		"M-10000 -10000 H10000 V10000 H-10000 Z": "", "M0 0 H1 V1 H0 Z": "", "M0 0 H1 V0.999 H0 Z": "the contour has no area",
		"M0 0 H-1 V1 H0 Z":                   "",
		"M0 0 L2.0008 2 L2 0 L0 1.0004 Z":    "it crosses itself near x 0.667, y 0.667 mm",
		"M0 0 L100 0 C100 30 140 60 98 10 Z": "it crosses itself near x 103.605, y 16.807",
	} {
		if got := CheckContour(path(t, text)); got != want && (want == "" || !strings.HasPrefix(got, want)) {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}

// TestEllipse: π·a·b, though the radii differ by little; a whole turn about one
// of them is an arc where they do not.
func TestEllipse(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ a, b, within float64 }{{5, 5.4, 0.3}, {5, 5, 1e-9}} {
		p := path(t, fmt.Sprintf("M%g 0 A%g %g 0 0 1 -%g 0 A%g %g 0 0 1 %g 0 Z", c.a, c.a, c.b, c.a, c.a, c.b, c.a))
		if got := NewContour(p).AreaMm2(); math.Abs(got-math.Pi*c.a*c.b) > c.within {
			t.Errorf("%g × %g: area %g, want %g", c.a, c.b, got, math.Pi*c.a*c.b)
		}
	}
}

// TestCorners: curves are broken as finely as their size asks, no finer: the
// sagitta of a chord is r·(1 − cos(half its angle)).
func TestCorners(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ diameter, offMm float64 }{{2, 0.01}, {20, 0.01}, {400, 0.1}} {
		at := corners(Circle(c.diameter))
		n := math.Pi / math.Acos(1-2*c.offMm/(c.diameter/2)) // off by as much on either side
		if got := float64(len(at)); got < n || got > n+4 {
			t.Errorf("Ø%g has %g corners; %.1f keep within %g mm", c.diameter, got, n, c.offMm)
		}
		at = slices.CompactFunc(at, func(p, q Point) bool { return Distance(p, q) < 1e-9 })
		for _, p := range at {
			if math.Abs(p.LengthMm()-c.diameter/2) > 2*c.offMm {
				t.Errorf("Ø%g: %v is off it", c.diameter, p)
			}
		}
	}
}
