package geom

import (
	"math"
	"slices"
	"testing"
)

// TestPlaces: corner points and counts worked out by hand from the words of
// each pattern.
func TestPlaces(t *testing.T) {
	t.Parallel()
	edges := Box{Point{-100, -50}, Point{100, 50}}
	for _, c := range []struct {
		name string
		p    Pattern
		want []Point
	}{
		{"ring from 90°, numbered from TOP", Ring{PCDMm: 100, Count: 4, FirstDeg: 90}, []Point{{0, 50}, {50, 0}, {0, -50}, {-50, 0}}},
		{"ring about a point of its own", Ring{PCDMm: 100, Count: 4, FirstDeg: 90, Centre: Point{10, -20}}, []Point{{10, 30}, {60, -20}, {10, -70}, {-40, -20}}},
		{"arc about a point of its own", Arc{PCDMm: 20, Count: 2, FirstDeg: 0, LastDeg: 90, Centre: Point{-5, 5}}, []Point{{-5, 15}, {5, 5}}},
		{"angles about a point of their own", Angles{PCDMm: 20, Deg: []float64{180}, Centre: Point{0, 7}}, []Point{{0, -3}}},
		{"ring of one before TOP", Ring{PCDMm: 60, Count: 1, FirstDeg: -90}, []Point{{-30, 0}}},
		{"arc from 30° to 150°, both ends", Arc{PCDMm: 100, Count: 3, FirstDeg: 30, LastDeg: 150}, []Point{{25, 25 * math.Sqrt(3)}, {50, 0}, {25, -25 * math.Sqrt(3)}}},
		{"arc over TOP is numbered from TOP", Arc{PCDMm: 100, Count: 3, FirstDeg: -90, LastDeg: 90}, []Point{{0, 50}, {50, 0}, {-50, 0}}},
		{"arc of one", Arc{PCDMm: 100, Count: 1, FirstDeg: 180, LastDeg: 200}, []Point{{0, -50}}},
		{"listed angles", Angles{PCDMm: 100, Deg: []float64{270, 90}}, []Point{{50, 0}, {-50, 0}}},
		{"grid, rows from the top left", Grid{Columns: 2, Rows: 2, PitchXMm: 40, PitchYMm: 30}, []Point{{-20, 15}, {20, 15}, {-20, -15}, {20, -15}}},
		{"grid about a centre", Grid{Columns: 3, Rows: 1, PitchXMm: 10, PitchYMm: 30, Centre: Point{5, 7}}, []Point{{-5, 7}, {5, 7}, {15, 7}}},
		{"staggered, the middle row one less", Staggered{Columns: 3, Rows: 3, PitchXMm: 40, PitchYMm: 30, Centre: Point{1, 2}},
			[]Point{{-39, 32}, {1, 32}, {41, 32}, {-19, 2}, {21, 2}, {-39, -28}, {1, -28}, {41, -28}}},
		{"staggered, two rows", Staggered{Columns: 2, Rows: 2, PitchXMm: 10, PitchYMm: 8}, []Point{{-5, 4}, {5, 4}, {0, -4}}},
		{"staggered, one column", Staggered{Columns: 1, Rows: 3, PitchXMm: 10, PitchYMm: 8}, []Point{{0, 8}, {0, -8}}},
		{"listed from the centre", Listed{At: []Point{{3, 4}}, Datum: "centre"}, []Point{{3, 4}}},
		{"from the left bottom corner", Listed{At: []Point{{10, 20}}, Datum: "left-bottom"}, []Point{{-90, -30}}},
		{"from the left top corner", Listed{At: []Point{{10, 20}}, Datum: "left-top"}, []Point{{-90, 30}}},
		{"from the right bottom corner", Listed{At: []Point{{10, 20}}, Datum: "right-bottom"}, []Point{{90, -30}}},
		{"from the right top corner", Listed{At: []Point{{10, 20}}, Datum: "right-top"}, []Point{{90, 30}}},
	} {
		got := c.p.Places(edges)
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
			continue
		}
		for i := range got {
			if Distance(got[i], c.want[i]) > 1e-9 {
				t.Errorf("%s: place %d at %v, want %v", c.name, i+1, got[i], c.want[i])
			}
		}
	}
}

// TestTriangularStagger: with a rise of √3/2 of the pitch every place is one
// pitch from each neighbour (equilateral triangles).
func TestTriangularStagger(t *testing.T) {
	t.Parallel()
	at := Staggered{Columns: 5, Rows: 4, PitchXMm: 20, PitchYMm: 20 * math.Sqrt(3) / 2}.Places(Box{})
	if len(at) != 18 { // 5 + 4 + 5 + 4
		t.Fatalf("%d places", len(at))
	}
	for i, p := range at {
		near, neighbours := math.Inf(1), 0
		for j, q := range at {
			if d := Distance(p, q); i != j {
				near = math.Min(near, d)
				if math.Abs(d-20) < 1e-6 {
					neighbours++
				}
			}
		}
		if math.Abs(near-20) > 1e-6 || neighbours < 2 {
			t.Errorf("place %d is %g from its nearest, with %d neighbours", i+1, near, neighbours)
		}
	}
}

// TestPatternsAreComplete: the list of patterns is what other stages are tested
// against; its places by hand, from the left bottom corner of a square of 100.
func TestPatternsAreComplete(t *testing.T) {
	t.Parallel()
	r := 25 * math.Sqrt(3)
	sin75, cos75 := (math.Sqrt(6)+math.Sqrt2)/4, (math.Sqrt(6)-math.Sqrt2)/4
	want := [][]Point{
		{{25, r}, {50, 0}, {25, -r}, {-25, -r}, {-50, 0}, {-25, r}},
		{{25, r}, {50, 0}, {25, -r}},
		{{0, 50}, {50 * sin75, 50 * cos75}, {-50 * math.Sin(math.Pi/9), -50 * math.Cos(math.Pi/9)}},
		{{-40, 15}, {0, 15}, {40, 15}, {-40, -15}, {0, -15}, {40, -15}},
		{{-40, 30}, {0, 30}, {40, 30}, {-20, 0}, {20, 0}, {-40, -30}, {0, -30}, {40, -30}},
		{{30, 10}, {70, 10}},
		{{10, 20}, {30, 20}},
	}
	if len(Patterns) != len(want) {
		t.Fatalf("%d patterns, places of %d", len(Patterns), len(want))
	}
	for i, p := range Patterns {
		got := p.Places(Box{Max: Point{100, 100}})
		if !slices.EqualFunc(got, want[i], func(a, b Point) bool { return Distance(a, b) < 1e-8 }) {
			t.Errorf("%T of the list: %v, want %v", p, got, want[i])
		}
	}
}

// TestAlong: a row half way up what lies off the middle, from the left and from the right.
func TestAlong(t *testing.T) {
	t.Parallel()
	edges := Box{Point{-20, -10}, Point{180, 40}}
	for want, a := range map[[2]Point]Along{
		{{0, 15}, {50, 15}}:     {FirstMm: 20, PitchMm: 50, Count: 2},
		{{160, 15}, {110, 15}}:  {FromRight: true, FirstMm: 20, PitchMm: 50, Count: 2},
		{{0, -9.5}, {50, -9.5}}: {FirstMm: 20, PitchMm: 50, Count: 2, UpMm: 0.5},
	} {
		if got := a.Places(edges); !slices.Equal(got, want[:]) {
			t.Errorf("%+v: %v, want %v", a, got, want)
		}
	}
}

func TestClock(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		deg  float64
		want Point
	}{{0, Point{0, 10}}, {90, Point{10, 0}}, {180, Point{0, -10}}, {270, Point{-10, 0}}, {-90, Point{-10, 0}}, {30, Point{5, 5 * math.Sqrt(3)}}, {450, Point{10, 0}}} {
		got := Clock(10, c.deg)
		if Distance(got, c.want) > 1e-9 {
			t.Errorf("%g°: %v, want %v", c.deg, got, c.want)
		}
		if back := ClockDeg(got); math.Abs(math.Mod(back-c.deg+720, 360)) > 1e-6 {
			t.Errorf("%g° comes back as %g°", c.deg, back)
		}
	}
	for _, origin := range []Point{{}, {0, math.Copysign(0, -1)}} {
		if ClockDeg(origin) != 0 {
			t.Error("the origin has a clock angle")
		}
	}
	for _, c := range [][3]float64{{30, 150, 120}, {300, 60, 120}, {-90, 90, 180}, {10, 10, 360}, {350, -350, 20}, {0, 0.5, 0.5}} {
		if got := SweepDeg(c[0], c[1]); math.Abs(got-c[2]) > 1e-9 {
			t.Errorf("from %g° to %g° is %g°, want %g°", c[0], c[1], got, c[2])
		}
	}
	angles := []float64{-30, 359.9999999999, 720, 0.5}
	FromTop(angles)
	if want := [4]float64{0, 0, 0.5, 330}; [4]float64(angles) != want {
		t.Errorf("from TOP: %v, want %v", angles, want)
	}
}
