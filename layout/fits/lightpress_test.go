package fits

import (
	"slices"
	"strings"
	"testing"
)

// Common practice, no source: 0.01 to 0.03 mm under the measured diameter.
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
	if got, err := LightPressLadder(1, 1, 0.1); err == nil || got != nil || !strings.Contains(err.Error(), "smallest diameter 0 mm") {
		t.Errorf("down to nothing: got %v, %v", got, err)
	}
}
