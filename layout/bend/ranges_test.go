package bend

import (
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"centrepop/layout/lookup"
)

// TestRanges: what lies outside is refused with the range itself, which every
// printed refusal states.
func TestRanges(t *testing.T) {
	t.Parallel()
	last := func(nothing any, err error) error {
		if err != nil && !reflect.ValueOf(nothing).IsZero() {
			t.Errorf("%v, and %v with it", err, nothing)
		}
		return err
	}
	k := func(r, s float64) error { _, err := KFactor(r, s); return err }
	for name, c := range map[string]struct {
		err         error
		above, upTo float64
	}{
		"thickness":   {k(5, 51), 0, 50},
		"radius":      {k(0.1, 2), 0.2, 10000},
		"bend":        {last(Bend{51, 2, 90, 0}.Work()), 0, 50},
		"inside":      {last(Bend{2, -1, 90, 0}.Work()), 0, 10000},
		"angle":       {last(Bend{2, 2, 180, 0}.Work()), 0, 180},
		"K":           {last(Bend{2, 2, 90, 1.1}.Work()), 0, 1},
		"leg":         {last(Chain{LegsMm: []float64{4, 40}, Bends: []Bend{{2, 2, 90, 0.4}}}.Blank()), 4, 10000},
		"die":         {last(DieFor(51, false)), 0, 50},
		"die in 21":   {last(DieFor(21, false)), 0, 250.0 / 12},
		"opening":     {last(Die{}.MinFlangeMm(90)), 0, 10000},
		"flange bend": {last(Die{OpeningMm: 16}.MinFlangeMm(180)), 0, 180},
	} {
		var r *lookup.RangeError
		if !errors.As(c.err, &r) || math.Abs(r.Above-c.above) > 1e-8 || math.Abs(r.UpTo-c.upTo) > 1e-9 {
			t.Errorf("%s: %v, want above %v and up to %v", name, c.err, c.above, c.upTo)
		}
	}
	for text, err := range map[string]error{
		"bend 2 has another thickness than the first":    last(Chain{LegsMm: []float64{50, 40, 30}, Bends: []Bend{{2, 2, 90, 0.4}, {3, 2, 90, 0.4}}}.Blank()),
		"2 legs and 0 bends: a chain has one bend fewer": last(Chain{LegsMm: []float64{50, 40}}.Blank()),
	} {
		if err == nil || !strings.Contains(err.Error(), text) {
			t.Errorf("%v, want %s", err, text)
		}
	}
	// A square bend is measured to its corner, one just over to the tangent.
	for deg, want := range map[float64]bool{90: false, 90.5: true} {
		if got, err := (Bend{2, 2, deg, 0.4}).Work(); err != nil || got.ToTangent != want {
			t.Errorf("%v°: %+v, %v", deg, got, err)
		}
	}
}

// TestDieSteps: the factor at both sides of its steps, common charts as named at
// DieFor.
func TestDieSteps(t *testing.T) {
	t.Parallel()
	for s, want := range map[float64]float64{2.9: 18, 3: 25, 8: 80, 8.1: 100, 10: 100, 10.2: 125, 0.5: 4} {
		if got, err := DieFor(s, false); err != nil || got.OpeningMm != want {
			t.Errorf("%v mm: V %v, %v, want %v", s, got.OpeningMm, err, want)
		}
	}
}
