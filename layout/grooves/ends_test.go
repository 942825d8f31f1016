package grooves

import (
	"errors"
	"math"
	"slices"
	"testing"

	"centrepop/layout/lookup"
)

// DIN 76-1, the values that are only remembered: run-out and shoulder outside
// regular and short, straight part of forms A and B, whole length of B; then
// inside straight part of C, and both of D.
func TestThreadEndMemory(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		pitch                                      float64
		x, xShort, a, aShort, g1, g1Short, g2Short float64
		inside, insideShort, insideMostShort       float64
	}{
		{0.5, 1.25, 0.7, 1.5, 1, 1.1, 0.5, 1.25, 2, 1.25, 2},
		{0.6, 1.5, 0.75, 1.8, 1.2, 1.2, 0.6, 1.5, 2.4, 1.5, 2.4},
		{0.7, 1.75, 0.9, 2.1, 1.4, 1.5, 0.8, 1.75, 2.8, 1.75, 2.75},
		{0.75, 1.9, 1, 2.25, 1.5, 1.6, 0.9, 1.9, 3, 1.9, 2.9},
		{0.8, 2, 1, 2.4, 1.6, 1.7, 0.9, 2, 3.2, 2, 3},
		{1, 2.5, 1.25, 3, 2, 2.1, 1.1, 2.5, 4, 2.5, 3.7},
		{1.25, 3.2, 1.6, 3.75, 2.5, 2.7, 1.5, 3.2, 5, 3.2, 4.9},
		{1.5, 3.8, 1.9, 4.5, 3, 3.2, 1.8, 3.8, 6, 3.8, 5.6},
		{1.75, 4.3, 2.2, 5.25, 3.5, 3.9, 2.1, 4.3, 7, 4.3, 6.4},
		{2, 5, 2.5, 6, 4, 4.5, 2.5, 5, 8, 5, 7.3},
		{2.5, 6.3, 3.2, 7.5, 5, 5.6, 3.2, 6.3, 10, 6.3, 9.3},
		{3, 7.5, 3.8, 9, 6, 6.7, 3.7, 7.5, 12, 7.5, 10.7},
		{3.5, 9, 4.5, 10.5, 7, 7.7, 4.7, 9, 14, 9, 12.7},
		{4, 10, 5, 12, 8, 9, 5, 10, 16, 10, 14},
		{4.5, 11, 5.5, 13.5, 9, 10.5, 5.5, 11, 18, 11, 16},
		{5, 12.5, 6.3, 15, 10, 11.5, 6.5, 12.5, 20, 12.5, 18.5},
		{5.5, 14, 7, 16.5, 11, 12.5, 7.5, 14, 22, 14, 20},
		{6, 15, 7.5, 18, 12, 14, 8, 15, 24, 15, 21},
	} {
		get := func(inside, short bool) ThreadEnd {
			e, err := ThreadEndFor(50, c.pitch, inside, short)
			if err != nil || e.PitchMm != c.pitch || e.Source.State != lookup.Checked || e.RestSource.State != lookup.FromMemory || e.LeastMm >= e.MostMm {
				t.Errorf("%v: %+v, %v", c.pitch, e, err)
			}
			return e
		}
		a, b, in, d := get(false, false), get(false, true), get(true, false), get(true, true)
		for i, pair := range [][2]float64{
			{a.RunoutMm, c.x}, {b.RunoutMm, c.xShort}, {a.ShoulderMm, c.a}, {b.ShoulderMm, c.aShort}, {a.LeastMm, c.g1}, {b.LeastMm, c.g1Short},
			{b.MostMm, c.g2Short}, {in.LeastMm, c.inside}, {d.LeastMm, c.insideShort}, {d.MostMm, c.insideMostShort},
			{b.FloorMm, a.FloorMm}, {d.FloorMm, in.FloorMm}, {in.RunoutMm, 0}, {d.ShoulderMm, 0},
		} {
			if !near(pair[0], pair[1], 1e-9) {
				t.Errorf("%v: value %d is %v, want %v", c.pitch, i, pair[0], pair[1])
			}
		}
	}
}

func TestThreadEnd(t *testing.T) {
	t.Parallel()
	// 1/2-13 UNC, pitch 1.954: the row of 2, and says so.
	e, err := ThreadEndFor(12.7, 25.4/13, false, false)
	if err != nil || e.PitchMm != 2 || e.Source.State != lookup.Practice || !near(e.FloorMm, 9.7, 1e-9) {
		t.Errorf("%+v, %v", e, err)
	}
	for _, c := range []struct {
		d, pitch float64
		what     string
	}{{20, 0.49, "pitch"}, {20, 6.1, "pitch"}, {20, math.NaN(), "pitch"}, {3, 2, "major diameter"}, {math.NaN(), 2, "major diameter"}} {
		var r *lookup.RangeError
		if _, err := ThreadEndFor(c.d, c.pitch, false, false); !errors.As(err, &r) || r.What != c.what {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

// DIN 509, ltoi.kr, the last face depth as a public data file prints it: radius, depth, width, face width, face depth, chamfer of the
// mate for E and F, at both ends of each range.
func TestRelief(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		d                                float64
		changing                         bool
		name                             string
		over, upTo, width, g, t2, aE, aF float64
		state                            lookup.State
	}{
		{1.6, false, "0.1x0.1", 0, 1.6, 0.5, 0.8, 0.1, 0, 0, lookup.Checked},
		{1.61, false, "0.2x0.1", 1.6, 3, 1, 0.9, 0.1, 0.2, 0, lookup.Checked},
		{10, false, "0.4x0.2", 3, 10, 2, 1.1, 0.1, 0.4, 0, lookup.Checked},
		{18, false, "0.6x0.2", 10, 18, 2, 1.4, 0.1, 0.8, 0.2, lookup.Checked},
		{40, false, "0.6x0.3", 18, 80, 2.5, 2.1, 0.2, 0.6, 0, lookup.Checked},
		{81, false, "1x0.4", 80, math.Inf(1), 4, 3.2, 0.3, 1.2, 0, lookup.Checked},
		{50, true, "1x0.2", 18, 50, 2.5, 1.8, 0.1, 1.6, 0.8, lookup.Checked},
		{80, true, "1.6x0.3", 50, 80, 4, 3.1, 0.2, 2.6, 1.1, lookup.Checked},
		{125, true, "2.5x0.4", 80, 125, 5, 4.8, 0.3, 4.2, 1.9, lookup.Checked},
		{126, true, "4x0.5", 125, math.Inf(1), 7, 6.4, 0.3, 7, 4, lookup.Checked},
	} {
		e, err1 := ReliefFor(c.d, FormE, c.changing)
		f, err2 := ReliefFor(c.d, FormF, c.changing)
		if err1 != nil || err2 != nil || e.Designation != "DIN 509-E "+c.name || f.Designation != "DIN 509-F "+c.name {
			t.Errorf("%v: %+v, %v, %v", c.d, e, err1, err2)
		}
		if e.OverMm != c.over || e.UpToMm != c.upTo || e.WidthMm != c.width || e.ChamferMm != c.aE || e.FaceWidthMm != 0 || e.Source.State != c.state {
			t.Errorf("%v: %+v", c.d, e)
		}
		if f.WidthMm != c.width || f.FaceWidthMm != c.g || f.FaceDepthMm != c.t2 || f.ChamferMm != c.aF {
			t.Errorf("%v: %+v", c.d, f)
		}
	}
	var u *lookup.UnknownError
	if _, err := ReliefFor(40, "G", false); !errors.As(err, &u) {
		t.Errorf("%v", err)
	}
	for _, c := range []struct {
		d        float64
		changing bool
	}{{0, false}, {18, true}, {math.NaN(), false}, {math.Inf(1), false}} {
		var r *lookup.RangeError
		if _, err := ReliefFor(c.d, FormE, c.changing); !errors.As(err, &r) {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

// Form F closes: from the floor a corner of radius r turns up to the slope of 8°,
// which leaves the shoulder's plane at the height g. The table rounds it to 0.1.
func TestReliefCloses(t *testing.T) {
	t.Parallel()
	sin, cos := math.Sincos(8 * math.Pi / 180)
	for _, row := range slices.Concat(reliefs, fatigued) {
		up := row.radius*(1+sin) + (row.faceDepth-row.radius*(1-cos))*cos/sin
		if math.Abs(up-row.face) > 0.05 {
			t.Errorf("R%v: g is %v, want %.3f", row.radius, row.face, up)
		}
	}
}

// Lead-in: GOST 8752-79, appendix 2, table 2; up to 70 mm tto.com.tw too. The other values: mounting
// instructions named at SealLandFor.
func TestSealLand(t *testing.T) {
	t.Parallel()
	for d, by := range map[float64]float64{10: 1.5, 10.1: 2, 20: 2, 30: 2.5, 40: 3, 50: 3.5, 70: 4, 95: 4.5, 130: 5.5, 240: 7, 500: 11} {
		l, err := SealLandFor(d, 0)
		if err != nil || !near(l.LeadInMm, d-by, 1e-9) || l.LeadInSource.State != lookup.Checked || l.HousingDepthMm != 0 || l.Shaft.Class != "h11" {
			t.Errorf("%v: %+v, %v", d, l, err)
		}
	}
	l, err := SealLandFor(40, 12)
	if err != nil || l.RaUm != (lookup.Range{Min: 0.2, Max: 0.8}) || l.RzUm != (lookup.Range{Min: 1, Max: 4}) || l.RmaxUm != 6.3 || l.HardnessHRC != 45 || l.HardnessFastHRC != 55 ||
		l.RoundClass != "IT8" || l.HousingClass != "H8" || l.HousingRaUm != (lookup.Range{Min: 1.6, Max: 6.3}) || l.HousingChamferDeg != (lookup.Range{Min: 10, Max: 20}) || l.LeadInDeg != (lookup.Range{Min: 15, Max: 30}) {
		t.Errorf("%+v, %v", l, err)
	}
	// yumpu.com 53306168: width 7 wants 5.95 and 7.3; 20 wants 17 and 20.3.
	for width, want := range map[float64][2]float64{7: {5.95, 7.3}, 8: {6.8, 8.3}, 10: {8.5, 10.3}, 15: {12.75, 15.3}, 20: {17, 20.3}} {
		if l, _ := SealLandFor(40, width); !near(l.HousingStraightMm, want[0], 1e-9) || !near(l.HousingDepthMm, want[1], 1e-9) {
			t.Errorf("%v: %+v", width, l)
		}
	}
	for _, c := range [][2]float64{{5.9, 0}, {501, 0}, {math.NaN(), 0}, {40, -1}, {40, 51}, {40, math.NaN()}} {
		if _, err := SealLandFor(c[0], c[1]); err == nil {
			t.Errorf("%v is accepted", c)
		}
	}
	if _, err := SealLandFor(6, 0); err != nil {
		t.Error(err)
	}
}

// DIN 332-1 as a public data file prints it; the cone's depth by geometry (60°, then 120°).
func TestCentre(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		pilot, cone, mouthB, depth float64
		a, b, r                    string
	}{
		{1, 2.12, 3.15, 0.9, "A 1/2.12", "B 1/3.15", "R 1/2.12"}, {1.25, 2.65, 4, 1.1, "A 1.25/2.65", "B 1.25/4", "R 1.25/2.65"},
		{1.6, 3.35, 5, 1.4, "A 1.6/3.35", "B 1.6/5", "R 1.6/3.35"}, {2, 4.25, 6.3, 1.8, "A 2/4.25", "B 2/6.3", "R 2/4.25"},
		{2.5, 5.3, 8, 2.2, "A 2.5/5.3", "B 2.5/8", "R 2.5/5.3"}, {3.15, 6.7, 10, 2.8, "A 3.15/6.7", "B 3.15/10", "R 3.15/6.7"},
		{4, 8.5, 12.5, 3.5, "A 4/8.5", "B 4/12.5", "R 4/8.5"}, {5, 10.6, 16, 4.4, "A 5/10.6", "B 5/16", "R 5/10.6"},
		{6.3, 13.2, 18, 5.5, "A 6.3/13.2", "B 6.3/18", "R 6.3/13.2"}, {8, 17, 22.4, 7, "A 8/17", "B 8/22.4", "R 8/17"}, {10, 21.2, 28, 8.7, "A 10/21.2", "B 10/28", "R 10/21.2"},
	} {
		for form, name := range map[CentreForm]string{CentreA: c.a, CentreB: c.b, CentreR: c.r} {
			got, err := CentreFor(c.pilot, form)
			mouth, depth := c.cone, (c.cone-c.pilot)*math.Sqrt(3)/2
			switch form {
			case CentreB:
				mouth, depth = c.mouthB, depth+(c.mouthB-c.cone)/2/math.Sqrt(3)
			case CentreR:
				depth = 0
			}
			if err != nil || got.Designation != "ISO 6411-"+name || got.MouthMm != mouth || got.ConeMm != c.cone || got.PilotDepth != c.depth || !near(got.ConeDepthMm, depth, 1e-9) || got.Source.State != lookup.Checked {
				t.Errorf("%s: %+v, %v", name, got, err)
			}
		}
	}
	var u *lookup.UnknownError
	if _, err := CentreFor(3, CentreA); !errors.As(err, &u) || len(u.Known) != 11 {
		t.Errorf("%v", err)
	}
	if _, err := CentreFor(4, "C"); !errors.As(err, &u) || len(u.Known) != 3 {
		t.Errorf("%v", err)
	}
	// The trainees' handbook, table 1, at the end of each range.
	for d, want := range map[float64]float64{10: 1, 25: 2, 63: 3.15, 100: 5, 101: 6.3} {
		got, source, err := PilotFor(d)
		state := lookup.Checked
		if d > 100 {
			state = lookup.Practice
		}
		if err != nil || got != want || source.State != state {
			t.Errorf("%v: %v, %v, %v", d, got, source, err)
		}
	}
	for _, d := range []float64{6, math.NaN(), math.Inf(1)} {
		if _, _, err := PilotFor(d); err == nil {
			t.Errorf("%v is accepted", d)
		}
	}
}

// A relief by its name, DIN 509 as above; what no row has names all rows.
func TestReliefSized(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		radius, depth, width float64
	}{{0.4, 0.2, 2}, {0.6, 0.2, 2}, {0.6, 0.3, 2.5}, {1, 0.4, 4}, {2.5, 0.4, 5}} {
		if r, err := ReliefSized(c.radius, c.depth, FormF); err != nil || r.WidthMm != c.width || r.RadiusMm != c.radius || r.DepthMm != c.depth || r.FaceWidthMm == 0 {
			t.Errorf("%v: %+v, %v", c, r, err)
		}
	}
	var u *lookup.UnknownError
	if _, err := ReliefSized(0.6, 0.4, FormE); !errors.As(err, &u) || len(u.Known) != 10 || u.Value != "DIN 509-E 0.6x0.4" {
		t.Errorf("%v", err)
	}
	if _, err := ReliefSized(0.6, 0.3, "G"); !errors.As(err, &u) || u.What != "form" {
		t.Errorf("%v", err)
	}
}
