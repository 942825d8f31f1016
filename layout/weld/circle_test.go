package weld

import (
	"math"
	"slices"
	"testing"

	"centrepop/parts/geom"
)

func TestBalanced(t *testing.T) {
	if got := balanced(4); !slices.Equal(got, []int{0, 2, 1, 3}) {
		t.Errorf("four: %v, want top, bottom, right, left", got)
	}
	if got := balanced(8); !slices.Equal(got[:4], []int{0, 4, 2, 6}) {
		t.Errorf("eight: %v, want opposite, then square to it", got)
	}
	for n := 1; n <= 60; n++ {
		order := balanced(n)
		sorted := slices.Clone(order)
		slices.Sort(sorted)
		for i, v := range sorted {
			if v != i {
				t.Fatalf("%d places: %v is no permutation", n, order)
			}
		}
		if n < 4 || n%4 != 0 {
			continue
		}
		if apart(order[0], order[1], n) != n/2 || apart(order[2], order[3], n) != n/2 {
			t.Errorf("%d places: %v does not begin with two opposite pairs", n, order)
		}
		// Heat stays even: after k places no gap is over twice the even share,
		// counted in whole places.
		for k := 1; k <= n; k++ {
			at := slices.Clone(order[:k])
			slices.Sort(at)
			widest := at[0] + n - at[k-1]
			for i := 1; i < k; i++ {
				widest = max(widest, at[i]-at[i-1])
			}
			if even := (n + k - 1) / k; widest > 2*even {
				t.Errorf("%d places, %d used: gap of %d against an even %d", n, k, widest, even)
			}
		}
	}
}

func TestTackCircle(t *testing.T) {
	for _, c := range []struct {
		d, thin, thick float64
		n              int
		length         float64
	}{
		{114.3, 6, 6, 4, 24},  // girth 359, pitch 180: four of 4 x 6
		{600, 6, 6, 12, 24},   // girth 1885 at 180: 10.5, up to 12
		{600, 20, 20, 8, 50},  // pitch 300 at most, length 50 at most
		{600, 3.1, 20, 8, 50}, // no sheet: by the thicker part
		{30, 4, 5, 4, math.Pi * 30 / 12},
		{600, 2, 20, 32, 8},  // sheet of 2: tacks of 8 every 60: 31.4, up to 32
		{600, 1, 20, 48, 5},  // 5 at least, every 40 at least: 47.1, up to 48
		{600, 3, 3, 24, 10},  // 10 at most, every 90: 20.9, up to 24
		{160, 1.2, 5, 16, 5}, // 4.8 is under 5; 502.7 at 40: 12.6, up to 16
	} {
		p, err := TackCircle(c.d, c.thin, c.thick, 0)
		if err != nil || len(p.Tacks) != c.n {
			t.Errorf("TackCircle(%v, %v): %d tacks, %v; want %d", c.d, c.thick, len(p.Tacks), err, c.n)
			continue
		}
		near(t, "tack length", p.LengthMm, c.length, 1e-9)
		near(t, "pitch closes the circle", p.PitchMm*float64(c.n), math.Pi*c.d, 1e-9)
	}
	p, err := TackCircle(114.3, 6, 6, -45)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{315, 135, 45, 225} {
		near(t, "clock angle", p.Tacks[i].ClockDeg, want, 1e-9)
	}
	for _, bad := range [][4]float64{{0, 6, 6, 0}, {100, 0, 6, 0}, {100, 6, 5, 0}, {100, 6, math.NaN(), 0}, {100, 6, 6, math.NaN()}, {100, 6, 6, math.Inf(1)}, {100, 6, 6, math.Inf(-1)}, {math.NaN(), 6, 6, 0}, {1e9, 6, 6, 0}, {math.Inf(1), 6, 6, 0}} {
		if p, err := TackCircle(bad[0], bad[1], bad[2], bad[3]); err == nil {
			t.Errorf("TackCircle(%v) = %v, want an error", bad, p)
		}
	}
}

// Lengths by hand: four thicknesses, a third of the seam in all at most.
func TestTackRow(t *testing.T) {
	for _, c := range []struct {
		long, thin, thick float64
		n                 int
		each              float64
	}{
		{120, 10, 12, 2, 20},      // a third of 120 for two; 50 by the thickness
		{1000, 10, 12, 5, 50},     // every 300 at most: 3.3, five with both ends
		{1000, 10, 11.9, 5, 47.6}, // EN 1011-2: four thicknesses under 12 mm
		{1000, 2, 12, 18, 8},      // sheet: every 60, 16.7
		{40, 10, 12, 1, 40.0 / 3}, // two would be 6.7, under 8
		{20, 2, 12, 1, 20.0 / 3},
		{120, 10, 10, 2, 20}, // alike
	} {
		n, each, err := TackRow(c.long, c.thin, c.thick)
		if err != nil || n != c.n || math.Abs(each-c.each) > 1e-9 {
			t.Errorf("TackRow(%v, %v, %v) = %d × %v, %v; want %d × %v", c.long, c.thin, c.thick, n, each, err, c.n, c.each)
		}
	}
	for _, bad := range [][3]float64{{0, 6, 6}, {100, 0, 6}, {100, 6, 5}, {100, 6, math.NaN()}, {math.NaN(), 6, 6}, {1e9, 6, 6}, {math.Inf(1), 6, 6}} {
		if n, each, err := TackRow(bad[0], bad[1], bad[2]); err == nil || n != 0 || each != 0 {
			t.Errorf("TackRow(%v) = %v, want an error", bad, n)
		}
	}
}

func TestRunOrder(t *testing.T) {
	runs, err := RunOrder(114.3, 1, 0)
	if err != nil {
		t.Fatal(err)
	}
	want := [][2]float64{{0, 90}, {180, 270}, {90, 180}, {270, 0}}
	for i, w := range want {
		near(t, "start", runs[i].StartDeg, w[0], 1e-9)
		near(t, "end", runs[i].EndDeg, w[1], 1e-9)
		if !runs[i].Clockwise || runs[i].Layer != 1 {
			t.Errorf("run %d: %+v", i, runs[i])
		}
	}
	// Each layer of each plan goes once round without gap or overlap, and its
	// ends keep clear of those below.
	for _, p := range []struct {
		mm     float64
		layers int
		first  float64
	}{{600, 3, 15}, {200, 2, -30}, {50, 4, 700}} {
		runs, err := RunOrder(p.mm, p.layers, p.first)
		if err != nil {
			t.Fatal(err)
		}
		n := len(runs) / p.layers
		if each := math.Pi * p.mm / float64(n); n%4 != 0 || each > 150 || n > 4 && each*float64(n)/float64(n-4) < 150 {
			t.Errorf("%+v: %d sectors of %v mm", p, n, each)
		}
		for layer := 1; layer <= p.layers; layer++ {
			var starts []float64
			for _, r := range runs[(layer-1)*n : layer*n] {
				if r.Layer != layer || r.StartDeg < 0 || r.StartDeg >= 360 || r.EndDeg < 0 || r.EndDeg >= 360 {
					t.Fatalf("%+v: run %+v", p, r)
				}
				from, to := r.StartDeg, r.EndDeg
				if !r.Clockwise {
					from, to = to, from
				}
				near(t, "sector", geom.OnClock(to-from), 360/float64(n), 1e-9)
				starts = append(starts, from)
			}
			slices.Sort(starts)
			for i := 1; i < n; i++ {
				near(t, "even starts", starts[i]-starts[i-1], 360/float64(n), 1e-9)
			}
			if layer > 1 {
				below := runs[(layer-2)*n]
				from := below.StartDeg
				if !below.Clockwise {
					from = below.EndDeg
				}
				offset := math.Mod(geom.OnClock(starts[0]-from)+1e-9, 360/float64(n))
				near(t, "ends half a sector apart", offset, 180/float64(n), 1e-6)
			}
		}
	}
	for _, bad := range [][3]float64{{}, {100, 0, 0}, {100, 51, 0}, {math.NaN(), 1, 0}, {-1, 1, 0}, {100, 1, math.NaN()}, {1e9, 1, 0}} {
		if runs, err := RunOrder(bad[0], int(bad[1]), bad[2]); err == nil {
			t.Errorf("RunOrder(%v) = %d runs, want an error", bad, len(runs))
		}
	}
}

// TWI, FAQ "How much shall I allow for weld shrinkage?".
func TestShrinkage(t *testing.T) {
	s, err := FilletShrinkage(6, 8, 3000)
	if err != nil || s.AcrossMinMm != 0.8 || s.AcrossMaxMm != 0.8 || s.AlongMm != 0.8 {
		t.Errorf("fillet: %+v, %v", s, err)
	}
	if s, err = FilletShrinkage(12, 8, 1500); err != nil || s.AcrossMinMm != 0.8 || math.Abs(s.AcrossMaxMm-1.6) > 1e-12 || math.Abs(s.AlongMm-0.4) > 1e-12 {
		t.Errorf("large fillet: %+v, %v", s, err)
	}
	if s, err = ButtShrinkage(3000); err != nil || s.AcrossMinMm != 1.5 || s.AcrossMaxMm != 3 || s.AlongMm != 3 {
		t.Errorf("butt: %+v, %v", s, err)
	}
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if s, err := FilletShrinkage(bad, 8, 100); err == nil {
			t.Errorf("leg %v: %+v, want an error", bad, s)
		}
		if s, err := ButtShrinkage(bad); err == nil {
			t.Errorf("length %v: %+v, want an error", bad, s)
		}
		if a, err := SquareUp(bad, 10); err == nil {
			t.Errorf("diameter %v: %+v, want an error", bad, a)
		}
	}
	last := Allowance{}
	for _, d := range []float64{80, 150, 151, 300, 301, 600, 601, 1000} {
		a, err := SquareUp(d, d)
		if err != nil || a.FaceMm < last.FaceMm || a.BoreMm < last.BoreMm || a.FaceMm < 1.5 || a.BoreMm < 2 {
			t.Errorf("SquareUp(%v) = %+v, %v after %+v", d, a, err, last)
		}
		thin, err := SquareUp(d, d/20)
		if err != nil || thin.FaceMm != 1.5*a.FaceMm || thin.BoreMm != a.BoreMm {
			t.Errorf("thin SquareUp(%v) = %+v, %v; thick %+v", d, thin, err, a)
		}
		last = a
	}
	if a, err := SquareUp(1001, 10); err == nil {
		t.Errorf("SquareUp(1001) = %+v, want an error", a)
	}
}
