package measured_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"centrepop/layout/measured"
)

// scattered is a flange of n holes, each off its place by a normal spread
// along and across the circle, with the readings one would take, each up to
// plusMinus off.
func scattered(rng *rand.Rand, n int, spread, plusMinus float64) (s measured.Survey, x, y []float64) {
	const pcd, dia = 400, 18.5
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		x, y = append(x, pcd/2*sin+spread*rng.NormFloat64()), append(y, pcd/2*cos+spread*rng.NormFloat64())
		s.Holes = append(s.Holes, measured.Diameter{Mm: dia})
	}
	read := func(i, j int, kind measured.Kind, edges float64) {
		mm := math.Hypot(x[i]-x[j], y[i]-y[j]) + edges*dia + (2*rng.Float64()-1)*plusMinus
		s.Readings = append(s.Readings, measured.Reading{From: i + 1, To: j + 1, Kind: kind, Mm: mm})
	}
	for i := range n {
		read(i, (i+1)%n, measured.Over, 1)
	}
	for i := range n / 2 {
		read(i, i+n/2, measured.Between, -1)
	}
	return s, x, y
}

// TestScatter: flanges whose holes sit 0.1 mm about their places, read with a
// caliper of ±0.05, are measured and not refused; distances between holes that
// were not measured come out within their uncertainty.
func TestScatter(t *testing.T) {
	t.Parallel()
	rng := rand.New(rand.NewPCG(3, 5))
	for _, n := range []int{4, 6, 8} {
		refused, off, count := 0, 0, 0
		const runs = 200
		for range runs {
			s, x, y := scattered(rng, n, 0.1, 0.05)
			r, err := measured.Fit(s)
			if err != nil {
				refused++
				continue
			}
			for i := range n {
				j := (i + 2) % n
				a, b := r.Holes[i], r.Holes[j]
				count++
				if math.Abs(math.Hypot(a.XMm-b.XMm, a.YMm-b.YMm)-math.Hypot(x[i]-x[j], y[i]-y[j])) > measured.CoverageFactor*math.Hypot(a.PlaceUMm, b.PlaceUMm) {
					off++
				}
			}
		}
		if refused > runs/50 {
			t.Errorf("%d holes: %d of %d refused", n, refused, runs)
		}
		if off > count/10 {
			t.Errorf("%d holes: %d of %d distances are outside their uncertainty", n, off, count)
		}
	}
}

// TestOffCircle: one hole of six is 1 mm outside. With every hole read to the
// next but one as well, that is measured and named; without, the survey is
// refused, as a wrong reading would look the same.
func TestOffCircle(t *testing.T) {
	t.Parallel()
	s, x, y := scattered(rand.New(rand.NewPCG(1, 1)), 6, 0, 0)
	y[3]--
	reread := func(more bool) {
		s.Readings = s.Readings[:9]
		for i := range 6 {
			j := (i + 2) % 6
			s.Readings = append(s.Readings, measured.Reading{From: i + 1, To: j + 1, Kind: measured.Centres})
		}
		for k := range s.Readings {
			r := &s.Readings[k]
			i, j := r.From-1, r.To-1
			r.Mm = math.Hypot(x[i]-x[j], y[i]-y[j])
			r.Kind = measured.Centres
		}
		if !more {
			s.Readings = s.Readings[:9]
		}
	}
	reread(true)
	r := fit(t, s)
	if r.ScatterMm != 0 || r.OneCircle || r.CircleHole != 4 || r.Redundancy != 6 {
		t.Errorf("%+v", r)
	}
	// A least-squares circle takes half of it: the shift by 1/3 and the
	// radius by 1/6 (Coope's linear fit for equal angles).
	near(t, "off the circle", r.CircleOffMm, 0.5, 0.01)
	near(t, "radius of hole 4", r.Holes[3].RadiusMm, r.PCDMm/2+r.CircleOffMm, 1e-9)
	if m, ok := r.Nearest(false); !ok || m.Matches || len(m.Against) == 0 {
		t.Errorf("%+v", m)
	}
	reread(false)
	var bad *measured.Inconsistent
	if _, err := measured.Fit(s); !errors.As(err, &bad) {
		t.Errorf("nine readings: %v", err)
	}
}

// TestOneCircle: four exact holes are on one circle, a rhombus is not.
func TestOneCircle(t *testing.T) {
	t.Parallel()
	if r := fit(t, flange(265, 14.5, 45, 135, 225, 315)); !r.OneCircle || r.ScatterMm != measured.ScatterMm || math.Abs(r.CircleOffMm) > 1e-6 {
		t.Errorf("a square: %+v", r)
	}
	s := flange(265, 14.5, 45, 135, 225, 315)
	s.Readings[4].Mm += 0.4 // holes 1 and 3 are 0.2 out, 2 and 4 as much in
	s.Readings[5].Mm -= 0.4
	r := fit(t, s)
	if r.OneCircle || !r.Equal {
		t.Errorf("a rhombus: %+v", r)
	}
	for i, h := range r.Holes {
		near(t, "out", h.OffCircleMm, 0.2*float64(1-i%2*2), 0.003)
	}
	if r := fit(t, flange(120, 9, 0, 110, 240)); !r.OneCircle {
		t.Error("three holes are not on one circle")
	}
	doubted, rng := 0, rand.New(rand.NewPCG(7, 11))
	for range 50 { // what a caliper cannot tell from a circle
		s, _, _ := scattered(rng, 8, 0.02, 0.08)
		if r, err := measured.Fit(s); err == nil && !r.OneCircle {
			doubted++
		}
	}
	if doubted > 2 {
		t.Errorf("%d of 50 circles are doubted", doubted)
	}
}

// TestCaliper: readings that disagree by more than they claim bring the ± with
// which they would agree; a reading that is wrong does not.
func TestCaliper(t *testing.T) {
	t.Parallel()
	rng := rand.New(rand.NewPCG(2, 4))
	suggested := map[float64]int{}
	for range 60 {
		s, _, _ := scattered(rng, 8, 0.05, 0.3)
		_, err := measured.Fit(s)
		if bad := (*measured.Inconsistent)(nil); errors.As(err, &bad) {
			suggested[bad.CaliperMm]++
		}
	}
	if suggested[0.1]+suggested[0.15]+suggested[0.2]+suggested[0.3] < 10 || suggested[0]+suggested[0.02]+suggested[0.03]+suggested[0.05] > 2 {
		t.Errorf("suggested: %v", suggested)
	}
	s := flange(265, 14.5, 45, 135, 225, 315)
	s.Readings[1].Mm += 3
	_, err := measured.Fit(s)
	if bad := (*measured.Inconsistent)(nil); !errors.As(err, &bad) || bad.CaliperMm != 0 {
		t.Errorf("3 mm wrong: %v", err)
	}
	// A fine caliper is suggested coarser, not the default.
	s = flange(265, 14.5, 45, 135, 225, 315)
	for k := range s.Readings {
		s.Readings[k].PlusMinusMm = 0.001
	}
	for i := range s.Holes {
		s.Holes[i].PlusMinusMm = 0.001
	}
	s.Readings[1].Mm += 0.05
	_, err = measured.Fit(s)
	if bad := (*measured.Inconsistent)(nil); !errors.As(err, &bad) || bad.CaliperMm != 0.02 && bad.CaliperMm != 0.03 {
		t.Errorf("0.05 off at ±0.001: %v %+v", err, bad)
	}
}

// TestSpigotFit: what a caliper can say of a spigot in its bore.
func TestSpigotFit(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		spigot float64
		want   measured.Code
		goes   bool
	}{
		{229.94, measured.SpigotClears, true},
		{230.02, measured.SpigotUndecided, true}, // j6 in H7, 230.000 to 230.046
		{230.06, measured.SpigotUndecided, true}, // may just be 230.046
		{230.08, measured.SpigotTight, false},
	} {
		s := flange(265, 14.5, 45, 135, 225, 315)
		s.Spigot = measured.Diameter{Mm: test.spigot, PlusMinusMm: 0.02}
		r := fit(t, s)
		m, err := r.Together(measured.Drawn{Holes: drawn(265, 14.5, 45, 135, 225, 315), BoltMm: 12, BoreMinMm: 230, BoreMaxMm: 230.046})
		if err != nil || m.Spigot != test.want || m.Goes != test.goes {
			t.Errorf("%g: %+v %v", test.spigot, m, err)
			continue
		}
		u := 2 * 0.02 / math.Sqrt(3)
		near(t, "least", m.ClearanceMm, 230-test.spigot-u, 1e-9)
		near(t, "most", m.ClearanceToMm, 230.046-test.spigot+u, 1e-9)
		near, _ := r.Nearest(false)
		if got := near.Transition(230); got != (test.spigot < 230.05) && test.spigot > 230 {
			t.Errorf("%g: a transition fit: %v", test.spigot, got)
		}
		if near.Transition(229.9) {
			t.Error("a bore under its nominal size is taken for the standard's")
		}
	}
}

// TestBothClasses: from 250 mm up spigots of j6 and of h6 are both accepted.
func TestBothClasses(t *testing.T) {
	t.Parallel()
	for _, spigot := range []float64{300.014, 299.970} { // upper end of j6, lower end of h6
		s := flange(350, 18.5, 45, 135, 225, 315)
		s.Spigot = measured.Diameter{Mm: spigot, PlusMinusMm: 0.002}
		if m, ok := fit(t, s).Nearest(false); !ok || m.Name != "FF350" || !m.Matches || len(m.SpigotClasses) != 1 {
			t.Errorf("%g: %+v", spigot, m)
		}
	}
}
