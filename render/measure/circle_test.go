package measure

import (
	"math"
	"testing"
)

// round are the curves of a stretch of an ellipse about (x, y), each of so many degrees, a move to its beginning first.
func round(x, y, rx, ry, from float64, turns ...float64) []Seg {
	on := func(deg, h, s float64) Point { // h along the ellipse from the point at an angle
		sin, cos := math.Sincos(deg * math.Pi / 180)
		return Point{x + rx*(cos-s*h*sin), y + ry*(sin+s*h*cos)}
	}
	at := on(from, 0, 0)
	out := []Seg{{Kind: Move, Start: at, End: at, WidthMm: 0.5}}
	for _, turn := range turns {
		h := 4.0 / 3 * math.Tan(turn*math.Pi/720)
		out = append(out, Seg{Kind: Curve, Start: out[len(out)-1].End, C1: on(from, h, 1), C2: on(from+turn, h, -1), End: on(from+turn, 0, 0), WidthMm: 0.5})
		from += turn
	}
	return out
}

// TestCircleOf: what goes round once at one distance from a point is a circle, however its curves are divided and wherever
// it lies; what is open, goes round twice, has a side or a corner, or is off by more than 0.005 mm and 20 millionths is none.
func TestCircleOf(t *testing.T) {
	t.Parallel()
	eighths, uneven := []float64{45, 45, 45, 45, 45, 45, 45, 45}, []float64{45, 45, 45, 45, 30, 30, 30, 30, 30, 20, 10}
	line := func(s []Seg, to Point) []Seg {
		return append(s[:len(s):len(s)], Seg{Kind: Line, Start: s[len(s)-1].End, End: to})
	}
	whole := round(30, -7, 10, 10, 20, eighths...)
	backwards := round(30, -7, 10, 10, 20, -45, -45, -45, -45, -45, -45, -45, -45)
	for name, c := range map[string]struct {
		segs []Seg
		r    float64 // 0 for none
	}{
		"eighths": {whole, 10}, "uneven": {round(30, -7, 10, 10, 0, uneven...), 10}, "begun elsewhere": {round(30, -7, 10, 10, 137, uneven...), 10}, "backwards": {backwards, 10},
		"small": {round(30, -7, 0.2, 0.2, 0, eighths...), 0.2}, "large": {round(30, -7, 2000, 2000, 0, eighths...), 2000},
		"closed by a line of no length": {line(whole, whole[0].End), 10}, "closed by hardly a line": {line(whole, Point{whole[0].End.X + 0.95e-4, whole[0].End.Y}), 10}, "closed by a short line": {line(whole, Point{whole[0].End.X + 1.05e-4, whole[0].End.Y}), 0},
		"with a side": {line(round(30, -7, 10, 10, 0, 45, 45, 45, 45, 45, 45, 45), Point{40, -7}), 0},
		"open":        {round(30, -7, 10, 10, 0, eighths[1:]...), 0}, "open by a hair": {round(30, -7, 10, 10, 0, 45, 45, 45, 45, 45, 45, 45, 44.9), 0}, "twice round": {round(30, -7, 10, 10, 0, append(eighths[:8:8], eighths...)...), 0},
		"there and back": {round(30, -7, 10, 10, 0, 45, 45, -45, -45), 0}, "one curve": {round(30, -7, 10, 10, 0, 40), 0}, "two moves": {append(whole[:1:1], whole...), 0}, "no move": {whole[1:], 0}, "nothing": {whole[:1], 0},
		// An ellipse is off the circle between its axes by a quarter of their difference.
		"nearly an ellipse": {round(30, -7, 10.0048, 9.9952, 0, eighths...), 10}, "an ellipse": {round(30, -7, 10.0056, 9.9944, 0, eighths...), 0},
		"a large one, nearly": {round(30, -7, 1000.019, 999.981, 0, eighths...), 1000}, "a large ellipse": {round(30, -7, 1000.026, 999.974, 0, eighths...), 0},
	} {
		got, ok := circleOf(c.segs)
		if ok != (c.r > 0) {
			t.Errorf("%s: %v, %+v", name, ok, got)
		} else if ok && (got.Centre.Dist(Point{30, -7}) > 1e-3*math.Max(1, c.r/100) || math.Abs(got.DiameterMm-2*c.r) > 0.001*math.Max(1, c.r/50) || got.WidthMm != 0.5) {
			t.Errorf("%s: %+v, want a radius of %v", name, got, c.r)
		}
	}
}

// TestFitCircle: points on a circle are met exactly, however they are spread; points on a line have none.
func TestFitCircle(t *testing.T) {
	t.Parallel()
	for _, degs := range [][]float64{{0, 120, 240}, {0, 10, 20, 200}, {5, 6, 90, 91, 92, 300}, {-80, -20, 30}} {
		var points []Point
		for _, deg := range degs {
			sin, cos := math.Sincos(deg * math.Pi / 180)
			points = append(points, Point{12 + 5*cos, -40 + 5*sin})
		}
		if c, r := fitCircle(points); c.Dist(Point{12, -40}) > 1e-9 || math.Abs(r-5) > 1e-9 {
			t.Errorf("%v: %v, %v", degs, c, r)
		}
	}
	if c, r := fitCircle([]Point{{1, 2}, {2, 2}, {6, 2}}); c != (Point{3, 2}) || r != 0 {
		t.Errorf("a line: %v, %v", c, r)
	}
}

// TestSegments: places along a segment and its length: of a line, and of a quarter of a circle as a curve.
func TestSegments(t *testing.T) {
	t.Parallel()
	line := Seg{Kind: Line, Start: Point{1, 2}, End: Point{4, 6}}
	if got := line.At(0.25); got != (Point{1.75, 3}) || line.Length() != 5 || line.At(0) != line.Start || line.At(1) != line.End {
		t.Errorf("%v along a line of %v", got, line.Length())
	}
	if move := (Seg{Start: Point{1, 2}, End: Point{4, 6}}); move.Length() != 0 {
		t.Errorf("a move is %v long", move.Length())
	}
	curve := Seg{Kind: Curve, Start: Point{0, 0}, C1: Point{0, 3}, C2: Point{6, 9}, End: Point{9, 0}}
	// By halving (de Casteljau): 0 3|6 9 give 0 1.5, 3 6, 7.5 4.5; these 1.5 3.75, 5.25 5.25; these 3.375 4.5.
	if got := curve.At(0.5); got != (Point{3.375, 4.5}) || curve.At(0) != curve.Start || curve.At(1) != curve.End {
		t.Errorf("%v in the middle", got)
	}
	if got := round(0, 0, 10, 10, 30, 45)[1].Length(); math.Abs(got-10*math.Pi/4) > 5e-5 {
		t.Errorf("an eighth of Ø20 is %v long", got)
	}
	straight := Seg{Kind: Curve, Start: Point{0, 0}, C1: Point{1, 0}, C2: Point{2, 0}, End: Point{3, 0}}
	if got := straight.Length(); math.Abs(got-3) > 1e-12 {
		t.Errorf("a straight curve is %v long", got)
	}
}

// TestMatrix: one map after another does what both do in turn, and lines grow by the root of what areas grow by.
func TestMatrix(t *testing.T) {
	t.Parallel()
	m, n := matrix{2, 3, 5, 7, 11, 13}, matrix{17, 19, 23, 29, 31, 37}
	const x, y = 41.0, 43.0
	q := n.apply(x, y)
	want := m.apply(q.X/mmPerPt, q.Y/mmPerPt)
	if q.Dist(Point{(17*41 + 23*43 + 31) * mmPerPt, (19*41 + 29*43 + 37) * mmPerPt}) > 1e-9 || m.after(n).apply(x, y).Dist(want) > 1e-9 || identity.after(n) != n || n.after(identity) != n {
		t.Errorf("%v, %v", q, m.after(n))
	}
	for m, want := range map[matrix]float64{{2, 0, 0, 2, 5, 6}: 2, {0, 3, -3, 0, 0, 0}: 3, {4, 0, 0, -1, 0, 0}: 2, {2, 3, 5, 12, 0, 0}: 3} {
		if m.scale() != want {
			t.Errorf("%v widens lines %v times, want %v", m, m.scale(), want)
		}
	}
}

// TestSubpaths: a path is cut before each move.
func TestSubpaths(t *testing.T) {
	t.Parallel()
	for _, c := range [][]int{{}, {1}, {3, 1, 2}} { // how many segments each has
		var segs []Seg
		for _, n := range c {
			for k := range n {
				segs = append(segs, Seg{Kind: min(Kind(k), Line)})
			}
		}
		got := subpaths(segs)
		for i, sub := range got {
			if len(got) != len(c) || len(sub) != c[i] {
				t.Errorf("%v: %v", c, got)
			}
		}
	}
	if got := subpaths([]Seg{{Kind: Line}, {Kind: Line}, {}}); len(got) != 2 || len(got[0]) != 2 {
		t.Errorf("begun without a move: %v", got)
	}
}
