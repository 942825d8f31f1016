package geom

import (
	"math"
	"slices"
	"testing"
)

// TestVectors: plane vectors by hand.
func TestVectors(t *testing.T) {
	t.Parallel()
	p, q := Point{3, 4}, Point{-2, 5}
	if got := MeanRadiusMm([]Point{{3, 4}, {0, 10}, {-9, 0}}); got != 8 || MeanRadiusMm(nil) != 0 {
		t.Errorf("mean radius %v", got)
	}
	for _, c := range []struct {
		name      string
		got, want Point
	}{
		{"plus", p.Plus(q), Point{1, 9}},
		{"minus", p.Minus(q), Point{5, -1}},
		{"times", p.Times(2.5), Point{7.5, 10}},
		{"mirrored", p.Mirrored(), Point{-3, 4}},
		{"mirrored on the axis", Point{0, 1}.Mirrored(), Point{0, 1}},
		{"cleaned", Point{Clean(1.00000000049), Clean(-4e-10)}, Point{1, 0}},
	} {
		if c.got != c.want || math.Signbit(c.got.XMm) != math.Signbit(c.want.XMm) || math.Signbit(c.got.YMm) != math.Signbit(c.want.YMm) {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"cross", p.Cross(q), 23}, {"cross the other way", q.Cross(p), -23}, {"dot", p.Dot(q), 14},
		{"length", p.LengthMm(), 5}, {"distance", Distance(p, q), math.Sqrt(26)},
		{"clock angle right of TOP", ClockDeg(Point{1, 1}), 45}, {"right", ClockDeg(Point{2, 0}), 90}, {"down", ClockDeg(Point{0, -0.5}), 180},
		{"left", ClockDeg(Point{-1, 0}), 270}, {"left of TOP", ClockDeg(Point{-1, 1}), 315}, {"just left of TOP", ClockDeg(Point{-0.001, 1}), 359.942704},
		{"up", ClockDeg(Point{0, 3}), 0}, {"past a turn", OnClock(400), 40}, {"back past a turn", OnClock(-400), 320},
		{"divides both", float64(Common(12, 18)), 6}, {"divides both the other way", float64(Common(18, 12)), 6}, {"divides nothing and 5", float64(Common(0, 5)), 5}, {"none in common", float64(Common(8, 9)), 1},
	} {
		if math.Abs(c.got-c.want) > 1e-6 {
			t.Errorf("%s: %g, want %g", c.name, c.got, c.want)
		}
	}
}

// TestEvenly: an eighth of the round each.
func TestEvenly(t *testing.T) {
	var got []float64
	for k, deg := range Evenly(8) {
		if got = append(got, deg); k == 5 {
			break
		}
	}
	if want := []float64{0, 45, 90, 135, 180, 225}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestOver: more than the slack, and no less; alike where neither is more.
func TestOver(t *testing.T) {
	t.Parallel()
	for over, want := range map[float64]bool{-1: false, 0: false, 0.9e-6: false, 1e-6: false, 1.1e-6: true, 0.001: true} {
		if Over(over, 0) != want || Some(over) != want || Short(-over) != want || over > 0.9e-6 && Over(0, over) {
			t.Errorf("over by %g: %v", over, !want)
		}
		if far := math.Abs(over) > 1e-6; Alike(over, 0) == far || Alike(7-over, 7) == far && math.Abs(over) != 1e-6 {
			t.Errorf("alike at %g: %v", over, far)
		}
	}
	for inch, mm := range map[float64]float64{0.1: 2.54, 0.7: 17.78, 2.3: 58.42, 3.3: 83.82} {
		if Over(inch*MmPerInch, mm) || Over(mm, inch*MmPerInch) {
			t.Errorf("%g in is %v mm", inch, inch*MmPerInch)
		}
	}
}

// TestSinCos: exact at the quarters, whatever the turns before.
func TestSinCos(t *testing.T) {
	t.Parallel()
	for _, c := range [][3]float64{{0, 0, 1}, {90, 1, 0}, {180, 0, -1}, {270, -1, 0}, {-90, -1, 0}, {-180, 0, -1}, {-270, 1, 0}, {-450, -1, 0}, {360, 0, 1}, {810, 1, 0}} {
		if sin, cos := SinCosDeg(c[0]); sin != c[1] || cos != c[2] {
			t.Errorf("%g°: %g, %g, want %g, %g", c[0], sin, cos, c[1], c[2])
		}
	}
	for _, deg := range []float64{30, -30, 450.5, -719.25} {
		sin, cos := SinCosDeg(deg)
		if wantSin, wantCos := math.Sincos(deg * math.Pi / 180); math.Abs(sin-wantSin) > 1e-12 || math.Abs(cos-wantCos) > 1e-12 {
			t.Errorf("%g°: %g, %g", deg, sin, cos)
		}
	}
}

// TestFromTop: each angle by hand; TOP itself is 0, never 360.
func TestFromTop(t *testing.T) {
	t.Parallel()
	angles := []float64{-0.5, -360, 0, 725, 359.5, -1e-12, 180}
	FromTop(angles)
	want := []float64{0, 0, 0, 5, 180, 359.5, 359.5}
	for i := range want {
		if angles[i] != want[i] {
			t.Errorf("%v, want %v", angles, want)
			break
		}
	}
}

// TestOutwardArcs moves contours whose arcs bulge out and in: the radii grow
// by the distance outside and shrink inside, and a fillet of less than the
// distance cannot follow.
func TestOutwardArcs(t *testing.T) {
	t.Parallel()
	// A square of 100 whose lower side is a half circle of 30 into it.
	const bay = "M-50 -50 L-30 -50 A30 30 0 0 0 30 -50 L50 -50 L50 50 L-50 50 Z"
	was := NewContour(path(t, bay))
	if got, want := was.AreaMm2(), 10000-math.Pi*450; math.Abs(got-want) > 1e-6 {
		t.Fatalf("area %g, want %g", got, want)
	}
	moved, err := Outward(path(t, bay), 2)
	if err != nil {
		t.Fatal(err)
	}
	now := NewContour(moved)
	for _, c := range []struct {
		at   Point
		want float64
	}{
		{Point{0, -20}, -1}, // the bay's crown, 30 above the side, went down by 2: 28 about 0, −50
		{Point{0, -22}, 0}, {Point{0, -50}, -28}, {Point{52, 0}, 0}, {Point{0, 52}, 0}, {Point{-52, 10}, 0},
		{Point{50 + 2*math.Sqrt2/2, 50 + 2*math.Sqrt2/2}, 0}, // round the corner
		{Point{-40, -52}, 0},
	} {
		got := now.DepthMm(c.at)
		if c.want == -1 {
			if got < 1.5 {
				t.Errorf("%v lies %g inside the moved contour", c.at, got)
			}
			continue
		}
		if math.Abs(got-c.want) > 1e-6 {
			t.Errorf("%v lies %g inside the moved contour, want %g", c.at, got, c.want)
		}
	}
	// A notch with a round bottom of radius 3 moved by 3.1 closes.
	if _, err := Outward(path(t, "M-50 0 L-3 0 L-3 -20 A3 3 0 0 1 3 -20 L3 0 L50 0 L50 -60 L-50 -60 Z"), 3.1); err == nil {
		t.Error("a notch 6 wide took an offset of 3.1")
	}
	if _, err := Outward(path(t, "M0 0 H60 V20 H24 A4 4 0 0 0 20 24 V60 H0 Z"), 5); err == nil {
		t.Error("a fillet of 4 took an offset of 5")
	}
	// Discs of 26 and 30 about 0 and 28 cross 10 along; moved by 7 they are of 33 and 37 and cross (33² − 37² + 28²)/56 = 9 along.
	if moved, err = Outward(path(t, "M10 -24 A30 30 0 1 1 10 24 A26 26 0 1 1 10 -24 Z"), 7); err != nil {
		t.Fatal(err)
	}
	for _, at := range []Point{{9, math.Sqrt(33*33 - 81)}, {9, -math.Sqrt(33*33 - 81)}, {-33, 0}, {65, 0}} {
		if got := NewContour(moved).DepthMm(at); math.Abs(got) > 1e-6 {
			t.Errorf("%v lies %g inside the two discs", at, got)
		}
	}
}

// TestDepthOnLevels: points level with corners and ends of arcs are counted
// once, on either side.
func TestDepthOnLevels(t *testing.T) {
	t.Parallel()
	diamond := Polygon([]Point{{0, -10}, {10, 0}, {0, 10}, {-10, 0}})
	d := 10 / math.Sqrt2
	for _, c := range []struct {
		at   Point
		want float64
	}{{Point{}, d}, {Point{12, 0}, -2}, {Point{-12, 0}, -2}, {Point{5, 0}, 5 / math.Sqrt2}, {Point{-5, 0}, 5 / math.Sqrt2}, {Point{-20, 10}, -10 * math.Sqrt2}} {
		if got := NewContour(diamond).DepthMm(c.at); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v lies %g inside, want %g", c.at, got, c.want)
		}
	}
}

// TestParsedNumbers: the largest coordinate is taken, the least above is not.
func TestParsedNumbers(t *testing.T) {
	t.Parallel()
	if _, wrong := ParsePath("M0 0 L10000 0 L10000 10000 L0 10000 Z"); wrong != "" {
		t.Errorf("the largest square: %s", wrong)
	}
	for _, text := range []string{"M0 0 L10000.1 0 L5 5 Z", "M-10000.1 0 L5 0 L5 5 Z"} {
		if _, wrong := ParsePath(text); wrong == "" {
			t.Errorf("%s is taken", text)
		}
	}
	if p, wrong := ParsePath("M0 0 L0.123456789012345678901 0 L5 5 Z"); wrong != "" {
		t.Errorf("many digits: %s, %v", wrong, p)
	}
}
