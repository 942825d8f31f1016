package measured

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"testing"
)

// TestTable holds every row against the reference file, which says how far it
// is checked itself.
func TestTable(t *testing.T) {
	t.Parallel()
	f, err := os.Open("../../testdata/reference/motor_flanges.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) != len(sizes)+1 {
		t.Fatalf("%d rows: %v", len(rows), err)
	}
	for i, s := range Standards() {
		row := rows[1+i%len(sizes)][:7]
		hole := s.HoleMm
		if s.Tapped {
			hole = sizes[i%len(sizes)].s
		}
		got := fmt.Sprint([]string{fmt.Sprint(s.PitchMm), fmt.Sprint(s.SpigotMm), fmt.Sprint(s.OutsideMm), fmt.Sprint(hole), fmt.Sprint(s.SpigotHeightMm), fmt.Sprint(s.Holes), s.Thread})
		if got != fmt.Sprint(row) || s.Tapped != (i >= len(sizes)) || s.Tapped != (s.HoleMm == 0) {
			t.Errorf("%s: %s, want %v", s.Name, got, row)
		}
	}
}

// TestReadingBounds: each bound of a reading between holes of 14 and 10, just within and just beyond: two
// holes may seem to overlap by 0.2, so that their centres are 11.8 apart, and not less.
func TestReadingBounds(t *testing.T) {
	t.Parallel()
	s := Survey{Holes: []Diameter{{Mm: 14}, {Mm: 10}}, Spigot: Diameter{Mm: 230}}
	small := Survey{Holes: []Diameter{{Mm: 0.1}, {Mm: 0.1}}}
	for i, c := range []struct {
		s    Survey
		r    Reading
		want Code
	}{
		{s, Reading{From: 1, To: 2, Kind: Over, Mm: 23.81}, ""}, {s, Reading{From: 1, To: 2, Kind: Over, Mm: 23.79}, TooShort},
		{s, Reading{From: 1, To: 2, Kind: Centres, Mm: 11.81}, ""}, {s, Reading{From: 1, To: 2, Kind: Centres, Mm: 11.79}, TooShort},
		{s, Reading{From: 2, To: 1, Kind: Between, Mm: 0.001}, ""}, {s, Reading{From: 2, To: 1, Kind: Between}, LengthRange},
		{small, Reading{From: 1, To: 2, Kind: Over, Mm: 0.101}, ""}, {small, Reading{From: 1, To: 2, Kind: Over, Mm: 0.1}, TooShort},
		{s, Reading{From: 1, To: 2, Kind: Centres, Mm: 10000}, ""}, {s, Reading{From: 1, To: 2, Kind: Centres, Mm: 10000.1}, LengthRange},
		{s, Reading{From: 1, To: 2, Kind: Centres, Mm: 100, PlusMinusMm: 10}, ""}, {s, Reading{From: 1, To: 2, Kind: Centres, Mm: 100, PlusMinusMm: 10.01}, ReadingPlusMinus},
		{s, Reading{From: 1, To: 2, Kind: Centres, Mm: 100, PlusMinusMm: 0.0005}, ""}, {s, Reading{From: 1, To: 2, Kind: Centres, Mm: 100, PlusMinusMm: 0.00049}, ReadingPlusMinus},
		{s, Reading{From: 1, Kind: Between, Mm: 0.5}, ""}, {small, Reading{From: 1, Kind: Between, Mm: 0.5}, NoSpigot}, {s, Reading{From: 3, To: 1, Kind: Over, Mm: 30}, NoSuchHole}, {s, Reading{From: 1, To: 3, Kind: Over, Mm: 30}, NoSuchHole},
	} {
		got := Code("")
		if e := c.s.checkReading(c.r); e != nil {
			got = e.Code
		}
		if got != c.want {
			t.Errorf("%d: %+v: %q, want %q", i, c.r, got, c.want)
		}
	}
}

// TestChiQuantile holds the approximation against tabled values of chi-square
// (NIST/SEMATECH e-Handbook, 1.3.6.7.4), within 3.5 %.
func TestChiQuantile(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		p       float64
		freedom int
		want    float64
	}{
		{0.95, 1, 3.841}, {0.99, 1, 6.635}, {0.999, 1, 10.828}, {0.95, 2, 5.991}, {0.99, 3, 11.345}, {0.999, 4, 18.467}, {0.99, 7, 18.475}, {0.999, 20, 45.315}, {0.9, 10, 15.987},
	} {
		if got := chiQuantile(test.p, test.freedom); math.Abs(got/test.want-1) > 0.035 {
			t.Errorf("%g, %d: %g, want %g", test.p, test.freedom, got, test.want)
		}
	}
	if chiQuantile(0.99, 0) != 0 {
		t.Error("no freedom, no chi-square")
	}
}

// TestSlopes holds every derivative against a difference quotient.
func TestSlopes(t *testing.T) {
	t.Parallel()
	s := newState(4)
	s.space()
	copy(s.p, []float64{130, 0.1, 1.5, 3.2, 4.9, 14, 14.1, 14.2, 14.3, 230, 0.3, -0.2, 0.01, -0.02, 0.03, 0.05})
	row := make([]float64, len(s.p))
	for _, o := range []observation{
		{watch: pair, i: 0, j: 2, edges: 1}, {watch: pair, i: 3, j: 1, edges: -1}, {watch: pair, i: 1, j: 2},
		{watch: toSpigot, i: 1, edges: 1}, {watch: toSpigot, i: 3, edges: -1}, {watch: hole, i: 2}, {watch: spigot}, {watch: onCircle, i: 3},
	} {
		const arc, h = 120.0, 1e-6
		s.predict(o, arc, row)
		for k := range s.p {
			step := h
			if s.isAngle(k) {
				step = h / arc
			}
			up, down := s.clone(), s.clone()
			up.p[k] += step
			down.p[k] -= step
			scratch := make([]float64, len(s.p))
			want := (up.predict(o, arc, scratch) - down.predict(o, arc, scratch)) / (2 * h)
			if math.Abs(row[k]-want) > 1e-5 {
				t.Errorf("%+v: derivative %d is %g, want %g", o, k, row[k], want)
			}
		}
	}
}

// TestPredict: distances worked out by hand on a circle of 200 about holes of
// 10, 20 and 12 and a spigot of 100 set off by 3, 4.
func TestPredict(t *testing.T) {
	t.Parallel()
	s := newState(3)
	copy(s.p, []float64{100, 0, math.Pi / 2, math.Pi, 10, 20, 12, 100, 3, 4, 0, 5, 0})
	row := make([]float64, len(s.p))
	for _, test := range []struct {
		o    observation
		want float64
	}{
		{observation{watch: pair, i: 0, j: 2, edges: 1}, 211},                        // 200 + (10 + 12)/2
		{observation{watch: pair, i: 0, j: 2, edges: -1}, 189},                       // less
		{observation{watch: pair, i: 0, j: 1}, math.Hypot(100, 105)},                 // hole 2 is 5 outside
		{observation{watch: toSpigot, i: 0, edges: -1}, math.Hypot(3, 96) - 5 - 50},  // near edge
		{observation{watch: toSpigot, i: 1, edges: 1}, math.Hypot(102, 4) + 10 - 50}, // far edge
		{observation{watch: onCircle, i: 1}, 5},
	} {
		if got := s.predict(test.o, 100, row); math.Abs(got-test.want) > 1e-9 {
			t.Errorf("%+v: %g, want %g", test.o, got, test.want)
		}
	}
}

// TestMatrix solves and inverts a system worked out by hand.
func TestMatrix(t *testing.T) {
	t.Parallel()
	l, ok := cholesky([][]float64{{4, 2, 0}, {2, 5, 2}, {0, 2, 10}}, 1e-9)
	if !ok || l[0][0] != 2 || l[1][0] != 1 || l[1][1] != 2 || l[2][1] != 1 || l[2][2] != 3 || l[2][0] != 0 {
		t.Fatalf("%v", l)
	}
	// x = 1, −2, 3
	for i, want := range []float64{1, -2, 3} {
		if got := solve(l, []float64{0, -2, 26})[i]; math.Abs(got-want) > 1e-12 {
			t.Errorf("x%d is %g", i, got)
		}
	}
	inv := inverse(l)
	for i, row := range [][]float64{{46.0 / 144, -20.0 / 144, 4.0 / 144}, {-20.0 / 144, 40.0 / 144, -8.0 / 144}, {4.0 / 144, -8.0 / 144, 16.0 / 144}} {
		for j, want := range row {
			if math.Abs(inv[i][j]-want) > 1e-12 {
				t.Errorf("inverse %d %d is %g, want %g", i, j, inv[i][j], want)
			}
		}
	}
	if _, ok := cholesky([][]float64{{1, 1}, {1, 1}}, 1e-9); ok {
		t.Error("a singular matrix is factored")
	}
	if _, ok := cholesky([][]float64{{1, 1}, {1, 1.0001}}, 1e-3); ok {
		t.Error("a matrix that lost nearly all of its pivot is factored")
	}
	// What is lost is a share of the diagonal: the unit changes nothing.
	for _, unit := range []float64{1e-9, 1e-3, 1e3, 1e9} {
		for off, want := range map[float64]bool{1.0001: false, 1.01: true} {
			if _, ok := cholesky([][]float64{{unit, unit}, {unit, unit * off}}, 1e-3); ok != want {
				t.Errorf("%g in units of %g: %v", off, unit, ok)
			}
		}
	}
}

// TestStart: the first guess from the chords goes round once, also where one
// spans more than half the circle, and is equally spaced where one is missing.
func TestStart(t *testing.T) {
	t.Parallel()
	chord := func(r, deg float64) float64 { return 2 * r * math.Sin(deg*math.Pi/360) }
	for _, test := range []struct {
		r      float64
		angles []float64
	}{
		{100, []float64{0, 90, 180, 270}},
		{75, []float64{0, 50, 170, 230, 300}},
		{100, []float64{0, 30, 60}},        // the last chord spans 300°
		{60, []float64{0, 10, 25, 45, 70}}, // 290°
		{80, []float64{0, 300, 330}},       // the first chord does
	} {
		n := len(test.angles)
		s := Survey{Holes: make([]Diameter, n)}
		for i := range n {
			s.Holes[i].Mm = 8
			next := 360 + test.angles[0]
			if i+1 < n {
				next = test.angles[i+1]
			}
			s.Readings = append(s.Readings, Reading{From: i + 1, To: (i+1)%n + 1, Kind: Over, Mm: chord(test.r, next-test.angles[i]) + 8})
		}
		s.Readings[0].From, s.Readings[0].To, s.Readings[0].Kind = s.Readings[0].To, s.Readings[0].From, Between // either way round
		s.Readings[0].Mm -= 16
		st := s.start()
		if math.Abs(st.p[0]-test.r) > 1e-6 {
			t.Errorf("%v: radius %g, want %g", test.angles, st.p[0], test.r)
		}
		for i, want := range test.angles {
			if math.Abs(st.angle(i)*180/math.Pi-want) > 1e-6 {
				t.Errorf("%v: hole %d at %g", test.angles, i+1, st.angle(i)*180/math.Pi)
			}
		}
		if st.p[st.diaAt(1)] != 8 {
			t.Error("no diameter")
		}
	}
	s := Survey{Holes: make([]Diameter, 6), Readings: []Reading{
		{From: 1, To: 3, Kind: Centres, Mm: chord(50, 120)}, {From: 6, To: 1, Kind: Centres, Mm: chord(51, 60)}, {From: 2, To: 5, Kind: Centres, Mm: chord(52, 180)}, {From: 3, To: 6, Kind: Centres, Mm: chord(53, 180)}, {From: 1, To: 4, Kind: Centres, Mm: chord(49, 180)},
	}}
	if st := s.start(); math.Abs(st.p[0]-51) > 1e-9 || math.Abs(st.angle(4)-4*math.Pi/3) > 1e-12 {
		t.Errorf("the middle of five radii is %g", st.p[0])
	}
	// From a hole of 8 to a spigot of 60: 12 between the edges, 20 from the far edge.
	s = Survey{Holes: []Diameter{{Mm: 8}, {Mm: 8}, {Mm: 8}}, Spigot: Diameter{Mm: 60}, Readings: []Reading{{From: 1, Kind: Between, Mm: 12}, {From: 2, Kind: Over, Mm: 20}, {From: 3, Kind: Centres, Mm: 16}}}
	if st := s.start(); math.Abs(st.p[0]-46) > 1e-9 || st.p[st.spigotAt()] != 60 {
		t.Errorf("a circle of radius 46 about the spigot is %g", st.p[0])
	}
}

// TestOrdered: the holes go once round, the last one before the first comes again.
func TestOrdered(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		angles []float64
		hole   int
		ok     bool
	}{
		{[]float64{0, 2, 4}, 0, true}, {[]float64{1, 3, 7.2}, 0, true}, {[]float64{1, 3, 7.3}, 2, false},
		{[]float64{0, 4, 2}, 1, false}, {[]float64{3, 2, 4}, 0, false}, {[]float64{0, 0, 4}, 0, false},
	} {
		f := &fitted{state: newState(3)}
		copy(f.p[1:], test.angles)
		copy(f.p[f.diaAt(0):], []float64{9, 9, 9})
		if hole, ok := f.ordered(); hole != test.hole || ok != test.ok {
			t.Errorf("%v: %d %v", test.angles, hole, ok)
		}
	}
}

// TestHighest finds the top of a parabola.
func TestHighest(t *testing.T) {
	t.Parallel()
	for _, top := range []float64{-3, -0.7, 0, 1.9, 2} {
		if got := highest(-3, 2, func(x float64) float64 { return -(x - top) * (x - top) }); math.Abs(got-top) > 1e-5 {
			t.Errorf("%g, want %g", got, top)
		}
	}
}

// TestMargin: what is left of the play of the tightest pair, off its place and
// in doubt.
func TestMargin(t *testing.T) {
	t.Parallel()
	p := placing{
		drawn: []DrawnHole{{XMm: 100}, {XMm: -100}, {YMm: 100}}, x: []float64{100.2, -100, 0}, y: []float64{0, 0, 100},
		play: []float64{1, 1, 1}, doubt: []float64{0.1, 0.5, 0.2},
	}
	for _, test := range []struct{ turn, x, y, want float64 }{
		{0, 0, 0, 0.5}, {0, 0.3, 0, 0.2}, {0, -0.2, 0, 0.3}, {0, 0, 0.4, 0.1}, {0.004, 0, 0, 0.1}, // 0.4 mm round
	} {
		if got := p.margin(test.turn, test.x, test.y); math.Abs(got-test.want) > 1e-3 {
			t.Errorf("%+v: %g", test, got)
		}
	}
	// Turned 0.4 mm round, a hole at the top goes to the right, and a shift adds to it.
	if off := p.off(2, 0.004, 0.3, 0); math.Abs(off-0.7) > 1e-3 {
		t.Errorf("off by %g", off)
	}
	// The most is left where the second, in most doubt, lies best.
	if turn, x, y := p.improve(0.5); p.margin(turn, x, y) < 0.5-1e-3 {
		t.Errorf("%g at %g, %g, %g", p.margin(turn, x, y), turn, x, y)
	}
}
