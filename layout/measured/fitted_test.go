package measured_test

import (
	"math"
	"testing"

	"centrepop/layout/measured"

	"pgregory.net/rapid"
)

// TestResidualsAreOfTheHoles: what each reading is off is what it says less the
// distance between the fitted holes, with their diameters as the jaws stood; a
// hole's place is as sure as the less sure of its arc and its radius.
func TestResidualsAreOfTheHoles(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		s := flange(265, 14.5, 45, 120, 225, 315)
		s.Spigot = measured.Diameter{Mm: 230, PlusMinusMm: 0.02}
		for i := range s.Holes {
			s.Readings = append(s.Readings, measured.Reading{From: i + 1, To: measured.Spigot, Kind: measured.Between, Mm: 132.5 - 7.25 - 115})
		}
		for i := range s.Readings {
			s.Readings[i].Mm += rapid.Float64Range(-0.03, 0.03).Draw(t, "error")
		}
		r, err := measured.Fit(s)
		if err != nil {
			t.Skip(err)
		}
		if len(r.Residuals) != len(s.Readings)+len(s.Holes)+1 {
			t.Fatalf("%d residuals of %d readings", len(r.Residuals), len(s.Readings))
		}
		for _, q := range r.Residuals {
			if math.Abs(q.MeasuredMm-q.FittedMm-q.OffMm) > 1e-9 {
				t.Fatalf("%+v does not add up", q)
			}
			want := r.SpigotMm
			switch {
			case q.Hole > 0:
				want = r.Holes[q.Hole-1].DiameterMm
			case q.Reading > 0:
				g := s.Readings[q.Reading-1]
				if q.MeasuredMm != g.Mm {
					t.Fatalf("%+v is not %+v", q, g)
				}
				a := r.Holes[g.From-1]
				x, y, dia := r.Centred.XMm, r.Centred.YMm, r.SpigotMm
				if g.To != measured.Spigot {
					b := r.Holes[g.To-1]
					x, y, dia = b.XMm, b.YMm, b.DiameterMm
				}
				want = math.Hypot(a.XMm-x, a.YMm-y)
				switch g.Kind {
				case measured.Over:
					want += (a.DiameterMm + dia) / 2
				case measured.Between:
					want -= (a.DiameterMm + dia) / 2
				}
			}
			if math.Abs(q.FittedMm-want) > 1e-6 {
				t.Fatalf("%+v: fitted, the holes are %v", q, want)
			}
		}
		most, out := 0.0, 0.0
		for _, h := range r.Holes {
			arc := h.AngleUDeg * math.Pi / 180 * h.RadiusMm
			if math.Abs(math.Max(arc, h.RadiusUMm)-h.PlaceUMm) > 1e-12 {
				t.Fatalf("%+v: %v along the circle", h, arc)
			}
			most, out = math.Max(most, math.Abs(h.OffEqualMm)), math.Max(out, math.Abs(h.OffCircleMm))
			if math.Abs(h.OffCircleMm-h.RadiusMm+r.PCDMm/2) > 1e-9 {
				t.Fatalf("%+v is not so far off a circle of %v", h, r.PCDMm)
			}
		}
		if math.Abs(r.Holes[r.EqualHole-1].OffEqualMm) != most || r.Holes[r.EqualHole-1].OffEqualMm != r.EqualOffMm {
			t.Fatalf("hole %d is %v off, another %v", r.EqualHole, r.EqualOffMm, most)
		}
		if math.Abs(r.Holes[r.CircleHole-1].OffCircleMm) != out || r.Holes[r.CircleHole-1].OffCircleMm != r.CircleOffMm {
			t.Fatalf("hole %d is %v off the circle, another %v", r.CircleHole, r.CircleOffMm, out)
		}
	})
}

// TestTogetherTurned: the same holes turned by any angle about a spigot off
// their centre go on by that turn, exactly, and leave half of both plays, with a
// bore that lets the part be shifted nowhere.
func TestTogetherTurned(t *testing.T) {
	t.Parallel()
	for _, turn := range []float64{0, 10, -25, 40} {
		r := &measured.Result{PCDMm: 200, SpigotMm: 150, Centred: &measured.Offset{XMm: 0.3, YMm: -0.2}}
		d := measured.Drawn{BoltMm: 12, BoreMinMm: 150, BoreMaxMm: 150}
		for i, deg := range []float64{5, 95, 170, 300} {
			sin, cos := math.Sincos(deg * math.Pi / 180)
			h := measured.HoleResult{N: i + 1, AngleDeg: deg, RadiusMm: 100, XMm: 100 * sin, YMm: 100 * cos, DiameterMm: 13}
			r.Holes = append(r.Holes, h)
			x, y := h.XMm-0.3, h.YMm+0.2
			sin, cos = math.Sincos(turn * math.Pi / 180)
			d.Holes = append(d.Holes, measured.DrawnHole{N: i + 1, XMm: x*cos + y*sin, YMm: y*cos - x*sin, MinMm: 12.6})
		}
		m, err := r.Together(d)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "turn", m.TurnDeg, turn, 0.02)
		near(t, "margin", m.MarginMm, 0.3+0.5, 0.002)
		if !m.Goes || m.Mirrored {
			t.Errorf("turned by %v: %+v", turn, m)
		}
	}
}

// TestTogetherLeastTurn: of the ways that fit alike the one with the least turn
// is taken, whichever hole is number 1.
func TestTogetherLeastTurn(t *testing.T) {
	t.Parallel()
	for _, first := range []float64{0, 30, 60, 180, 330} {
		for _, turn := range []float64{0, 4, -4} {
			r := &measured.Result{PCDMm: 200}
			d := measured.Drawn{BoltMm: 12}
			for i := range 12 {
				deg := math.Mod(first+30*float64(i), 360)
				sin, cos := math.Sincos(deg * math.Pi / 180)
				r.Holes = append(r.Holes, measured.HoleResult{N: i + 1, AngleDeg: deg, RadiusMm: 100, XMm: 100 * sin, YMm: 100 * cos, DiameterMm: 13})
				sin, cos = math.Sincos((30*float64(i) + turn) * math.Pi / 180)
				d.Holes = append(d.Holes, measured.DrawnHole{N: i + 1, XMm: 100 * sin, YMm: 100 * cos, MinMm: 13})
			}
			m, err := r.Together(d)
			if err != nil || m.Mirrored || math.Abs(m.TurnDeg-turn) > 0.02 {
				t.Errorf("hole 1 at %v, drawn %v on: turned by %v, mirrored %v, %v", first, turn, m.TurnDeg, m.Mirrored, err)
			}
		}
	}
}

// TestOneSpare: with one reading more than the unknowns need, every entry that
// it checks is as far off, in its own standard deviation, as the root of
// chi-square, since each sees the same one contradiction (Baarda, A testing
// procedure for use in geodetic networks, 1968).
func TestOneSpare(t *testing.T) {
	t.Parallel()
	s := flange(265, 14.5, 45, 135, 225, 315)
	s.Readings = s.Readings[:5]
	s.Readings[2].Mm += 0.06
	s.Readings[1].PlusMinusMm, s.Holes[3].PlusMinusMm = 0.1, 0.02
	r := fit(t, s)
	if r.Redundancy != 1 || r.ChiSquare < 0.01 {
		t.Fatalf("%d spare, chi-square %v", r.Redundancy, r.ChiSquare)
	}
	checked := 0
	for _, q := range r.Residuals {
		if q.Normalised != 0 {
			checked++
			near(t, "normalised", math.Abs(q.Normalised), math.Sqrt(r.ChiSquare), 1e-5)
		}
	}
	if checked < 5 {
		t.Errorf("%d entries are checked", checked)
	}
}

// TestSpigotDoubt: with holes that are as good as exact, two readings each along
// an axis put the spigot's centre within u/√2 along it (JCGM 100:2008, 5.1.2);
// the larger of both axes is given.
func TestSpigotDoubt(t *testing.T) {
	t.Parallel()
	for _, pm := range [][2]float64{{0.1, 0.1}, {0.2, 0.1}, {0.1, 0.2}} { // up and down, left and right
		s := flange(265, 14.5, 0, 90, 180, 270)
		s.Spigot = measured.Diameter{Mm: 230, PlusMinusMm: 0.0005}
		for i := range s.Readings {
			s.Readings[i].PlusMinusMm = 0.0005
		}
		for i := range s.Holes {
			s.Holes[i].PlusMinusMm = 0.0005
			s.Readings = append(s.Readings, measured.Reading{From: i + 1, To: measured.Spigot, Kind: measured.Between, Mm: 132.5 - 7.25 - 115, PlusMinusMm: pm[i%2]})
		}
		r := fit(t, s)
		near(t, "u of the spigot's place", r.Centred.UMm, max(pm[0], pm[1])/math.Sqrt(3)/math.Sqrt2, 1e-4)
		near(t, "u of the spigot", r.SpigotUMm, 0.0005/math.Sqrt(3), 1e-5)
	}
}
