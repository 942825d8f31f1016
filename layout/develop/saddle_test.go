package develop

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"centrepop/parts/geom"
)

// TestSaddleWorkedExamples: worked examples (e), thin tubes, outside on
// outside: exact geometry of the classical division method.
func TestSaddleWorkedExamples(t *testing.T) {
	for _, row := range []struct {
		main, branch, angle float64
		w, drop             [7]float64
	}{
		{600, 300, 90, [7]float64{300.000, 290.474, 270.416, 259.808, 270.416, 290.474, 300.000}, [7]float64{0.000, 9.526, 29.584, 40.192, 29.584, 9.526, 0.000}},
		{100, 100, 90, [7]float64{50.000, 43.301, 25.000, 0.000, 25.000, 43.301, 50.000}, [7]float64{0.000, 6.699, 25.000, 50.000, 25.000, 6.699, 0.000}},
		{100, 60, 90, [7]float64{50.000, 47.697, 42.720, 40.000, 42.720, 47.697, 50.000}, [7]float64{0.000, 2.303, 7.280, 10.000, 7.280, 2.303, 0.000}},
		{219.1, 114.3, 90, [7]float64{109.550, 105.758, 97.732, 93.462, 97.732, 105.758, 109.550}, [7]float64{0.000, 3.792, 11.818, 16.088, 11.818, 3.792, 0.000}},
		{100, 100, 45, [7]float64{120.711, 104.539, 60.355, 0.000, 10.355, 17.936, 20.711}, [7]float64{0.000, 16.172, 60.355, 120.711, 110.355, 102.775, 100.000}},
		{100, 60, 45, [7]float64{100.711, 93.434, 75.415, 56.569, 45.415, 41.473, 40.711}, [7]float64{0.000, 7.276, 25.295, 44.142, 55.295, 59.238, 60.000}},
		{219.1, 114.3, 45, [7]float64{212.077, 199.057, 166.789, 132.175, 109.639, 100.070, 97.777}, [7]float64{0.000, 13.020, 45.288, 79.902, 102.438, 112.007, 114.300}},
	} {
		p, err := Saddle{MainDiameterMm: row.main, BranchDiameterMm: row.branch, AngleDeg: row.angle}.Develop()
		if err != nil {
			t.Fatal(err)
		}
		if len(p.Ordinates) != 12 {
			t.Fatalf("%d ordinates", len(p.Ordinates))
		}
		for i, o := range p.Ordinates {
			k := i
			if i > 6 {
				k = 12 - i // the far side repeats the near side
			}
			near(t, "w", o.FromCrossingMm, row.w[k], 0.0006)
			near(t, "drop", o.DropMm, row.drop[k], 0.0006)
			near(t, "x", o.XMm, math.Pi*row.branch*float64(i)/12, 1e-9)
			near(t, "ordinate", o.YMm, 25+row.drop[k], 0.0006)
		}
		near(t, "girth", p.Branch.Box().Size().XMm, math.Pi*row.branch, 1e-9)
		near(t, "height", p.Branch.Box().Size().YMm, 25+maxOf(row.drop[:]), 0.003)
		near(t, "deepest", p.DeepestMm, maxOf(row.drop[:]), 0.003)
	}
}

func maxOf(v []float64) float64 {
	m := v[0]
	for _, x := range v {
		m = math.Max(m, x)
	}
	return m
}

// branchPoint places a point of the branch in space: the main's axis is x
// (acute side positive), the branch's axis leans in the x-z plane, and the
// offset is to the right for somebody looking along the branch to the main
// with the acute side up.
func branchPoint(angle, offset, rho, t, w float64) vec {
	s, c := math.Sin(rad(angle)), math.Cos(rad(angle))
	axis, up := vec{c, 0, s}, vec{s, 0, -c}
	right := axis.times(-1).cross(up)
	p := axis.times(w)
	for _, part := range []vec{up.times(rho * math.Cos(rad(t))), right.times(offset + rho*math.Sin(rad(t)))} {
		p = vec{p.x + part.x, p.y + part.y, p.z + part.z}
	}
	return p
}

func TestSaddleInSpace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Saddle{MainDiameterMm: rapid.Float64Range(40, 800).Draw(t, "D"), AngleDeg: rapid.Float64Range(30, 90).Draw(t, "angle"), Divisions: 24,
			SeamDeg: rapid.Float64Range(-360, 360).Draw(t, "seam")}
		s.BranchDiameterMm = s.MainDiameterMm * rapid.Float64Range(0.1, 1).Draw(t, "d/D")
		s.OffsetMm = (s.MainDiameterMm - s.BranchDiameterMm) / 2 * rapid.Float64Range(-0.999, 0.999).Draw(t, "offset")
		p, err := s.Develop()
		if err != nil {
			t.Fatal(err)
		}
		r := s.MainDiameterMm / 2
		for i, o := range p.Ordinates {
			at := branchPoint(s.AngleDeg, s.OffsetMm, s.BranchDiameterMm/2, o.PositionDeg, o.FromCrossingMm)
			near(t, "on the main", math.Hypot(at.y, at.z), r, 1e-6)
			if at.z < -1e-6 {
				t.Errorf("cut on the far side of the main, z = %g", at.z)
			}
			// The hole's point of a thin branch is the same point of space. The
			// hole pattern looks down on the main with +x up, so its right is -y.
			h := p.Hole.Tables[0].Rows[i].Values
			near(t, "hole y", h[2], at.x, 1e-6)
			near(t, "hole x", r*math.Sin(h[1]/r), -at.y, 1e-6)
		}
		if w := p.Branch.Box().Size().XMm; math.Abs(w-math.Pi*s.BranchDiameterMm) > 1e-6 {
			t.Errorf("pattern is %g wide", w)
		}
	})
}

// TestSaddleMirror: without offset the two halves match; with it, reversing
// the offset mirrors the table.
func TestSaddleMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Saddle{MainDiameterMm: 200, BranchDiameterMm: rapid.Float64Range(20, 150).Draw(t, "d"), BranchWallMm: 3, MainWallMm: 4,
			AngleDeg: rapid.Float64Range(30, 90).Draw(t, "angle"), OffsetMm: rapid.Float64Range(0, 20).Draw(t, "offset"),
			SetIn: rapid.Bool().Draw(t, "set in"), GapMm: 2}
		a, err := s.Develop()
		if err != nil {
			t.Fatal(err)
		}
		s.OffsetMm = -s.OffsetMm
		b, err := s.Develop()
		if err != nil {
			t.Fatal(err)
		}
		for i := range a.Ordinates {
			j := (12 - i) % 12
			near(t, "ordinate", a.Ordinates[i].YMm, b.Ordinates[j].YMm, 1e-6)
			near(t, "angle", a.Ordinates[i].BetweenDeg, b.Ordinates[j].BetweenDeg, 1e-6)
		}
		near(t, "hole", a.Hole.Box().Min.XMm, -b.Hole.Box().Max.XMm, 1e-2)
	})
}

// TestSaddleGapAndWall: whatever the wall, set on: no point of the wall comes
// nearer to the main than the gap, and at every ordinate some point is at it.
func TestSaddleGapAndWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Saddle{MainDiameterMm: 219.1, MainWallMm: 8, BranchDiameterMm: rapid.Float64Range(40, 170).Draw(t, "d"), BranchWallMm: rapid.Float64Range(0, 12).Draw(t, "wall"),
			AngleDeg: rapid.Float64Range(30, 90).Draw(t, "angle"), OffsetMm: rapid.Float64Range(-15, 15).Draw(t, "offset"), GapMm: rapid.Float64Range(0, 4).Draw(t, "gap"),
			SetIn: rapid.Bool().Draw(t, "set in"), Divisions: 24}
		p, err := s.Develop()
		if err != nil {
			t.Fatal(err)
		}
		want := 219.1/2 + s.GapMm
		if s.SetIn {
			want = 219.1/2 - 8
		}
		for _, o := range p.Ordinates {
			least := math.Inf(1)
			for k := 0.0; k <= 40; k++ {
				rho := s.BranchDiameterMm/2 - s.BranchWallMm*k/40
				at := branchPoint(s.AngleDeg, s.OffsetMm, rho, o.PositionDeg, o.FromCrossingMm)
				least = math.Min(least, math.Hypot(at.y, at.z))
			}
			if least < want-1e-6 {
				t.Errorf("t %g: wall %g inside the surface", o.PositionDeg, want-least)
			}
			near(t, "touches", least, want, 0.01)
		}
	})
}

func TestSaddleBetween(t *testing.T) {
	p, err := Saddle{MainDiameterMm: 100, BranchDiameterMm: 100, AngleDeg: 45}.Develop()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "toe", p.Ordinates[0].BetweenDeg, 45, 1e-9)
	near(t, "flank", p.Ordinates[3].BetweenDeg, 180, 1e-5)
	near(t, "heel", p.Ordinates[6].BetweenDeg, 135, 1e-9)
}

// TestSaddleDrawn: the drawn cut passes through every ordinate of the table,
// and stays within the tolerance of the exact curve between its points.
func TestSaddleDrawn(t *testing.T) {
	s := Saddle{MainDiameterMm: 219.1, MainWallMm: 8, BranchDiameterMm: 114.3, BranchWallMm: 6.3, AngleDeg: 50, OffsetMm: 30, GapMm: 2, SeamDeg: 200, TabMm: 10, Divisions: 24}
	p, err := s.Develop()
	if err != nil {
		t.Fatal(err)
	}
	points := p.Branch.Curves[0].Points(0)
	for _, o := range p.Ordinates {
		least := math.Inf(1)
		for i := 1; i < len(points); i++ {
			least = math.Min(least, geom.ToSegment(Point{XMm: o.XMm, YMm: o.YMm}, points[i-1], points[i]))
		}
		near(t, "drawn through the ordinate", least, 0, 2*ToleranceMm)
		if left := p.Branch.Box().Min.XMm; o.XMm < left || o.XMm > left+math.Pi*114.3+1e-9 {
			t.Errorf("ordinate %g° at x = %g lies off the pattern", o.PositionDeg, o.XMm)
		}
	}
	// Offset to the right, away from the crown, falls off the main there: the
	// cut at 90° lies lower, so nearer to the crossing, than at 270°.
	if q, r := p.Ordinates[6], p.Ordinates[18]; !(q.FromCrossingMm < r.FromCrossingMm) {
		t.Errorf("w is %g at 90° and %g at 270°", q.FromCrossingMm, r.FromCrossingMm)
	}
	for i, o := range p.Ordinates {
		if row := p.Branch.Tables[0].Rows[i].Values; row[3] != o.YMm || row[1] != o.XMm {
			t.Errorf("table row %d differs from the ordinates", i)
		}
	}
	box := p.Branch.Curves[0].Box()
	// The tab carries the cut on: its height at the seam is that of the left
	// end, and it is the tab's length wide.
	tab := p.Branch.Curves[1]
	if tab.Role != Tab {
		t.Fatalf("second curve is %s", tab.Role)
	}
	right := p.Branch.Box().Max.XMm
	near(t, "tab ends", right, box.Max.XMm+10, 1e-9)
	end := tab.Segments[len(tab.Segments)-1].To
	near(t, "tab meets the seam", geom.Distance(end, Point{XMm: box.Max.XMm, YMm: leftHeight(points, box.Min.XMm)}), 0, 1e-9)
	near(t, "deepest point drawn", box.Max.YMm, p.SquareEdgeMm-minW(p.Ordinates), 0.5)
}

// leftHeight returns the height of the left edge of an outline.
func leftHeight(points []Point, x float64) float64 {
	h := 0.0
	for _, p := range points {
		if p.XMm == x {
			h = math.Max(h, p.YMm)
		}
	}
	return h
}

func minW(all []Ordinate) float64 {
	w := math.Inf(1)
	for _, o := range all {
		w = math.Min(w, o.FromCrossingMm)
	}
	return w
}

func TestSaddleScales(t *testing.T) {
	s := Saddle{MainDiameterMm: 219.1, MainWallMm: 8, BranchDiameterMm: 114.3, BranchWallMm: 6.3, AngleDeg: 60, PaperMm: 0.1, TabMm: 12}
	p, err := s.Develop()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "template", p.Branch.Box().Size().XMm, math.Pi*114.4+12, 1e-9)
	across, _ := p.Hole.Result("hole diameter across the branch")
	near(t, "bore", across, 114.3-12.6, 1e-9)
	width, _ := p.Hole.Result("hole width on the sheet")
	near(t, "hole width", width, 219.2*math.Asin((114.3-12.6)/219.1), 0.005)
	s.SetIn, s.GapMm = true, 1.5
	if p, err = s.Develop(); err != nil {
		t.Fatal(err)
	}
	width, _ = p.Hole.Result("hole width on the sheet")
	near(t, "hole set in", width, 219.2*math.Asin((114.3+3)/219.1), 0.005)
	if a := p.Hole.Curves[1].AreaMm2(); a <= 0 {
		t.Errorf("hole runs clockwise, area %g", a)
	}
}

func TestSaddleRefuses(t *testing.T) {
	nan := math.NaN()
	for _, row := range []struct {
		s    Saddle
		want string
	}{
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 101, AngleDeg: 90}, "larger than the main"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 50, AngleDeg: 29}, "angle is 29"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 50, AngleDeg: 91}, "angle is 91"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 50, AngleDeg: nan}, "angle is NaN"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 50, AngleDeg: 90, OffsetMm: 76}, "misses"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 50, AngleDeg: 90, OffsetMm: -30}, "overhangs"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 50, AngleDeg: 90, OffsetMm: nan}, "offset is not"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 50, AngleDeg: 90, MainWallMm: 50}, "cannot have a wall"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 50, AngleDeg: 90, BranchWallMm: 25}, "cannot have a wall"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 50, AngleDeg: 90, SetIn: true}, "needs the main's wall"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 95, AngleDeg: 90, MainWallMm: 5, SetIn: true}, "set it on"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 88, AngleDeg: 90, MainWallMm: 5, SetIn: true, GapMm: 7}, "wider than the main"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 50, AngleDeg: 90, GapMm: -1}, "gap"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 50, AngleDeg: 90, GapMm: 26}, "gap of 26"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: 50, AngleDeg: 90, TabMm: 100}, "half round"},
		{Saddle{BranchDiameterMm: 50, AngleDeg: 90}, "main diameter"},
		{Saddle{MainDiameterMm: 100, BranchDiameterMm: -50, AngleDeg: 90}, "branch diameter"},
	} {
		_, err := row.s.Develop()
		if !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: got %v", row.want, err)
		}
	}
}

// A margin is the usual one, or enough to be drawn: one of 5e-324 gave lines
// without length.
func TestSaddleMargin(t *testing.T) {
	t.Parallel()
	for mm, ok := range map[float64]bool{0: true, MinLengthMm: true, 0.009: false, 5e-324: false, -1: false, math.NaN(): false} {
		_, err := Saddle{MainDiameterMm: 100, BranchDiameterMm: 60, AngleDeg: 90, MarginMm: mm}.Develop()
		if (err == nil) != ok {
			t.Errorf("a margin of %g: %v", mm, err)
		}
	}
}
