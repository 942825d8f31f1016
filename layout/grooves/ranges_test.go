package grooves

import (
	"errors"
	"math"
	"reflect"
	"testing"

	"centrepop/layout/lookup"
)

// TestRanges: what lies outside is refused with the range itself, which every
// printed refusal states; a ring's section and inside diameter bound each other.
func TestRanges(t *testing.T) {
	t.Parallel()
	last := func(nothing any, err error) error {
		if err != nil && !reflect.ValueOf(nothing).IsZero() {
			t.Errorf("%v, and %v with it", err, nothing)
		}
		return err
	}
	pilot := func(mm float64) error { _, _, err := PilotFor(mm); return err }
	ring := ORing{InsideMm: 50, SectionMm: 3.53}
	for name, c := range map[string]struct {
		err         error
		above, upTo float64
	}{
		"centred part":    {pilot(6), 6, 10000},
		"bore":            {last(ring.In(Piston, 5, false)), 5.4, 10000},
		"rod":             {last(ring.In(Rod, 0, false)), 0, 10000},
		"inside diameter": {last(ORing{InsideMm: 3, SectionMm: 3.53}.In(Rod, 50, false)), 3.53, 10000},
		"section":         {last(ORing{InsideMm: 50, SectionMm: 9}.In(Rod, 50, false)), 1.5, 7},
		"relief":          {last(ReliefFor(0, FormE, false)), 0, 10000},
		"fatigued":        {last(ReliefFor(18, FormE, true)), 18, 10000},
		"ring":            {last(RingFor(2, false)), 3, 200},
		"seal":            {last(SealLandFor(501, 0)), 5.999, 500},
		"seal width":      {last(SealLandFor(40, 51)), 0, 50},
		"pitch":           {last(ThreadEndFor(20, 7, false, false)), 0.5, 6},
		"major diameter":  {last(ThreadEndFor(3, 2, false, false)), 3, 10000},
	} {
		var r *lookup.RangeError
		if !errors.As(c.err, &r) || math.Abs(r.Above-c.above) > 1e-9 || math.Abs(r.UpTo-c.upTo) > 1e-9 {
			t.Errorf("%s: %v, want above %v and up to %v", name, c.err, c.above, c.upTo)
		}
	}
}

// TestJustBeyond: half a millimetre past the end of a range is the next one: of
// pilots (trainees' handbook, table 1), lead-ins of seals and classes of grooves.
func TestJustBeyond(t *testing.T) {
	t.Parallel()
	for d, want := range map[float64]float64{10.5: 2, 25.5: 3.15, 63.5: 5, 100.5: 6.3} {
		if got, _, err := PilotFor(d); err != nil || got != want {
			t.Errorf("pilot for %v: %v, %v, want %v", d, got, err, want)
		}
	}
	for d, by := range map[float64]float64{20.5: 2.5, 30.5: 3, 40.5: 3.5, 50.5: 4, 70.5: 4.5, 95.5: 5.5, 130.5: 7, 240.5: 11} {
		if l, err := SealLandFor(d, 0.5); err != nil || !near(l.LeadInMm, d-by, 1e-9) || !near(l.HousingStraightMm, 0.425, 1e-9) {
			t.Errorf("seal on %v: %+v, %v, want a lead-in of %v", d, l, err, d-by)
		}
	}
	for _, c := range []struct {
		mm     float64
		inside bool
		want   string
	}{
		{22, true, "H11"}, {22.5, true, "H12"}, {100, true, "H12"}, {100.5, true, "H13"},
		{10, false, "h10"}, {10.5, false, "h11"}, {22, false, "h11"}, {22.5, false, "h12"}, {100, false, "h12"}, {100.5, false, "h13"},
	} {
		if got := ringClass(c.mm, c.inside); got != c.want {
			t.Errorf("groove of %v, inside %v: %s, want %s", c.mm, c.inside, got, c.want)
		}
	}
}
