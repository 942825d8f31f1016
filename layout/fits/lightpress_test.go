package fits

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// Common practice, no source: 0.01 to 0.03 mm under the measured diameter.
func TestLightPress(t *testing.T) {
	for _, c := range []struct{ measured, lo, hi float64 }{
		{114.3, 114.27, 114.29},
		{88.87, 88.84, 88.86},
		{0.04, 0.01, 0.03},
		{0.03, 0, 0},
		{-20, 0, 0},
		{math.NaN(), 0, 0},
		{math.Inf(1), 0, 0},
		{math.Inf(-1), 0, 0},
	} {
		if lo, hi := LightPress(c.measured); lo != c.lo || hi != c.hi {
			t.Errorf("%v: got %v to %v, want %v to %v", c.measured, lo, hi, c.lo, c.hi)
		}
	}
}

func TestLightPressLadder(t *testing.T) {
	got, err := LightPressLadder(114.3, 0.3, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	want := []Rung{
		{114, 113.97, 113.99},
		{114.1, 114.07, 114.09},
		{114.2, 114.17, 114.19},
		{114.3, 114.27, 114.29},
		{114.4, 114.37, 114.39},
		{114.5, 114.47, 114.49},
		{114.6, 114.57, 114.59},
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	if got, err := LightPressLadder(50, 0.25, 0.1); err != nil || len(got) != 5 || got[2].MeasuredMm != 50 {
		t.Errorf("a spread of two and a half steps: got %v, %v; want two steps either way", got, err)
	}
	if got, err := LightPressLadder(50, 0, 0.1); err != nil || len(got) != 1 {
		t.Errorf("no spread: got %v, %v; want the nominal alone", got, err)
	}
	for _, c := range []struct {
		nominal, spread, step float64
		says                  string
	}{
		{math.NaN(), 1, 0.1, "nominal"},
		{50, math.Inf(1), 0.1, "spread"},
		{50, 1, math.NaN(), "step"},
		{50, 1, 0, "step 0 mm"},
		{50, 1, -0.1, "step -0.1 mm"},
		{50, -1, 0.1, "below zero"},
		{1, 1, 0.1, "smallest diameter 0 mm"},
		{50, 1, 0.001, "too many"},
	} {
		got, err := LightPressLadder(c.nominal, c.spread, c.step)
		if err == nil || got != nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%v %v %v: got %v, %v; want %q", c.nominal, c.spread, c.step, got, err, c.says)
		}
	}
}
