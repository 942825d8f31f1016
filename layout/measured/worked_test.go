package measured_test

import (
	"errors"
	"math"
	"path/filepath"
	"testing"

	"centrepop/layout/measured"
	"centrepop/parts/golden"
)

// unsteady is a survey whose readings are off by a little, up and down in turn, as
// those of a caliper are.
func unsteady(s measured.Survey, mm float64) measured.Survey {
	for i := range s.Readings {
		s.Readings[i].Mm += mm * math.Cos(2.4*float64(i))
	}
	return s
}

// TestWorked: all that is worked out of surveys that are not exact, or that do not
// agree, as text. CENTREPOP_UPDATE=1 writes testdata/worked.txt anew: read the
// difference. What holds for such numbers is checked by the other tests.
func TestWorked(t *testing.T) {
	t.Parallel()
	type answer struct {
		Name    string
		Result  *measured.Result
		Wrong   *measured.Inconsistent
		Refused *measured.InputError
		Nearest []measured.Match
		Goes    []*measured.Mating
	}
	spigot := func(s measured.Survey, mm, off float64) measured.Survey {
		s.Spigot = measured.Diameter{Mm: mm, PlusMinusMm: 0.02}
		for i := range s.Holes {
			s.Readings = append(s.Readings, measured.Reading{From: i + 1, To: measured.Spigot, Kind: measured.Between, Mm: (265-230-14.5)/2 + off*math.Cos(float64(i)*math.Pi/2)})
		}
		return s
	}
	moved := func(s measured.Survey, i int, mm float64) measured.Survey {
		s.Readings[i].Mm += mm
		return s
	}
	coarse := flange(180, 11, 10, 55.2, 100, 145.1)
	for i := range coarse.Readings {
		coarse.Readings[i].PlusMinusMm = 0.1 + 0.05*float64(i%3)
	}
	var out []answer
	for _, c := range []struct {
		name   string
		survey measured.Survey
	}{
		{"four holes, equally spaced", unsteady(flange(265, 14.5, 45, 135, 225, 315), 0.03)},
		{"with a spigot out of the middle", spigot(unsteady(flange(265, 14.5, 45, 135, 225, 315), 0.02), 229.99, 0.12)},
		{"eight holes, one off", unsteady(flange(500, 18.5, 22.5, 67.5, 112.9, 157.5, 202.5, 247.5, 292.5, 337.5), 0.02)},
		{"three holes", flange(120, 9, 0, 121, 240)},
		{"all on one side, read with a rule", coarse},
		{"one reading too large", moved(flange(265, 14.5, 45, 135, 225, 315), 2, 0.9)},
		{"two readings too large", moved(moved(flange(300, 14.5, 0, 60, 120, 180, 240, 300), 1, 1.2), 4, -1.5)},
		{"readings that scatter", unsteady(flange(265, 14.5, 45, 135, 225, 315), 0.25)},
		{"too few", measured.Survey{Holes: make([]measured.Diameter, 2)}},
	} {
		a := answer{Name: c.name}
		var err error
		if a.Result, err = measured.Fit(c.survey); err != nil {
			errors.As(err, &a.Wrong)
			errors.As(err, &a.Refused)
			out = append(out, a)
			continue
		}
		for _, tapped := range []bool{false, true} {
			if m, ok := a.Result.Nearest(tapped); ok {
				a.Nearest = append(a.Nearest, m)
			}
		}
		for k, d := range []measured.Drawn{{BoltMm: 12, PlaceMm: 0.1, BoreMinMm: 230.0, BoreMaxMm: 230.046}, {BoltMm: 8, Tapped: true}} {
			for i, h := range a.Result.Holes {
				sin, cos := math.Sincos((h.AngleDeg + 20 + 0.03*float64(i)) * math.Pi / 180)
				d.Holes = append(d.Holes, measured.DrawnHole{N: i + 1, XMm: float64(1-2*k) * (h.RadiusMm + 0.1) * sin, YMm: h.RadiusMm * cos, MinMm: h.DiameterMm + 0.5})
			}
			m, err := a.Result.Together(d)
			if err != nil {
				t.Fatalf("%s: %v", c.name, err)
			}
			a.Goes = append(a.Goes, m)
		}
		out = append(out, a)
	}
	golden.Whole(t, filepath.Join("testdata", "worked.txt"), golden.Text(out))
}
