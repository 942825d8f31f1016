package tapers

import (
	"errors"
	"math"
	"testing"

	"centrepop/layout/lookup"
)

// "Machining hexagons and squares" (Geometer): corners are 1.155 times the flats
// of a hexagon, 1.414 times those of a square. The rest is plain geometry.
func TestFlats(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		f    Flats
		want Milled
	}{
		{Flats{6, 24 * 2 / math.Sqrt(3), 24}, Milled{1.856406, 13.856406, 27.712813, true, 60, 6, 2, 3, 27.712813}},
		{Flats{6, 30, 24}, Milled{3, 13.856406, 27.712813, true, 60, 6, 2, 3, 27.712813}},
		{Flats{6, 26, 24}, Milled{1, 10, 27.712813, false, 60, 6, 2, 3, 27.712813}},
		{Flats{4, 30, 24}, Milled{3, 18, 33.941125, false, 90, 10, 0, 1, 33.941125}},
		{Flats{8, 30, 24}, Milled{3, 9.941125, 25.977412, true, 45, 5, 0, 1, 25.977412}},
		{Flats{12, 30, 28}, Milled{1, 7.502577, 28.987733, true, 30, 3, 1, 3, 28.987733}},
		{Flats{4, 24 * math.Sqrt2, 24}, Milled{4.970563, 24, 33.941125, true, 90, 10, 0, 1, 33.941125}},
		{Flats{2, 0.9, 0.1}, Milled{0.4, 0.894427, 0, false, 180, 20, 0, 1, 0}},
		{Flats{2, 26, 24}, Milled{1, 10, 0, false, 180, 20, 0, 1, 0}},
		{Flats{1, 26, 25}, Milled{1, 10, 0, false, 0, 0, 0, 1, 0}},
		{Flats{1, 40, 21}, Milled{19, 39.949969, 0, false, 0, 0, 0, 1, 0}},
	} {
		got, err := c.f.Work()
		w := c.want
		if err != nil || !near(got.DepthMm, w.DepthMm, 1e-6) || !near(got.WidthMm, w.WidthMm, 1e-6) || !near(got.CornersMm, w.CornersMm, 1e-6) || got.Full != w.Full ||
			got.IndexDeg != w.IndexDeg || got.HeadTurns != w.HeadTurns || got.HeadRest != w.HeadRest || got.HeadOf != w.HeadOf || !near(got.LeastRound, w.LeastRound, 1e-6) {
			t.Errorf("%+v: %+v, %v, want %+v", c.f, got, err, w)
		}
		if turn := float64(got.HeadTurns) + float64(got.HeadRest)/float64(got.HeadOf); !near(turn*9, got.IndexDeg, 1e-9) {
			t.Errorf("%+v: %v turns of the head for %v°", c.f, turn, got.IndexDeg)
		}
	}
	for _, sides := range []int{0, -2, 3, 5, 13, 14} {
		var u *lookup.UnknownError
		if _, err := (Flats{sides, 30, 24}).Work(); !errors.As(err, &u) {
			t.Errorf("%d sides: %v", sides, err)
		}
	}
	for _, f := range []Flats{{6, 0, 1}, {6, 30, 30}, {6, 30, 0}, {1, 30, 15}, {1, 30, 31}, {2, math.NaN(), 20}, {2, 30, math.NaN()}} {
		var r *lookup.RangeError
		if _, err := f.Work(); !errors.As(err, &r) {
			t.Errorf("%+v: %v", f, err)
		}
	}
}

// DIN 82: RKV is turned 0.33 of a pitch smaller (read); the others from memory.
func TestKnurl(t *testing.T) {
	t.Parallel()
	for kind, want := range map[string]float64{"RAA": 29.5, "RBL": 29.5, "RBR": 29.5, "RGE": 29.33, "RGV": 29.67, "RKE": 29.33, "RKV": 29.67} {
		got, err := Knurl{kind, 1}.Work(30)
		if err != nil || !near(got.TurnMm, want, 1e-12) || got.Name == "" || (got.Source.State == lookup.Checked) != (kind == "RKV") {
			t.Errorf("%s: %+v, %v", kind, got, err)
		}
	}
	for _, p := range []float64{0.5, 0.6, 0.8, 1, 1.2, 1.6} {
		if got, err := (Knurl{"RAA", p}).Work(30); err != nil || !near(got.TurnMm, 30-p/2, 1e-12) {
			t.Errorf("%v: %+v, %v", p, got, err)
		}
	}
	var u *lookup.UnknownError
	if _, err := (Knurl{"RXX", 1}).Work(30); !errors.As(err, &u) || len(u.Known) != 7 {
		t.Errorf("%v", err)
	}
	for _, c := range []struct{ pitch, d float64 }{{0.7, 30}, {1, 10}, {1, math.NaN()}, {2, 30}} {
		if _, err := (Knurl{"RAA", c.pitch}).Work(c.d); err == nil {
			t.Errorf("%+v is accepted", c)
		}
	}
}
