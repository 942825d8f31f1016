package keys

import (
	"errors"
	"math"
	"reflect"
	"slices"
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
	for name, c := range map[string]struct {
		err         error
		above, upTo float64
	}{
		"shaft":          {last(For(501)), 6, 500},
		"inch, square":   {last(ForInch(1000, Square)), 5.0 / 16 * 25.4, 9 * 25.4},
		"inch, flat":     {last(ForInch(1, Rectangular)), 7.0 / 16 * 25.4, 9 * 25.4},
		"Woodruff":       {last(WoodruffFor(40)), 3, 38},
		"Woodruff, inch": {last(WoodruffForInch(100)), 5.0 / 16 * 25.4, 2.625 * 25.4},
		"cutter":         {last(SledRunoutMm(0, 1)), 0, math.Inf(1)},
		"depth":          {last(SledRunoutMm(20, 11)), 0, 10},
		"width":          {last(Of(20, 21, 6, false)), 0, 20},
	} {
		var r *lookup.RangeError
		if !errors.As(c.err, &r) || math.Abs(r.Above-c.above) > 1e-9 || r.UpTo != c.upTo && !(math.Abs(r.UpTo-c.upTo) < 1e-9) {
			t.Errorf("%s: %v, want above %v and up to %v", name, c.err, c.above, c.upTo)
		}
	}
}

// TestRangesOfLengths: a key is sold from one length of the series to another.
func TestRangesOfLengths(t *testing.T) {
	t.Parallel()
	for _, r := range din6885 {
		if !slices.Contains(lengthsMm, r.least) || !slices.Contains(lengthsMm, r.most) {
			t.Errorf("width %v: %v to %v are not lengths of the series", r.width, r.least, r.most)
		}
	}
}

// TestWoodruffNumbers: 606 is 3/16 × 3/4 in, 1212 is 3/8 × 1 1/2 in, 202 is 1/16
// × 1/4 in: the standard's rule.
func TestWoodruffNumbers(t *testing.T) {
	t.Parallel()
	seen := map[string][2]float64{}
	for d := 8.0; d < 66; d += 0.5 {
		rows, err := WoodruffForInch(d)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range rows {
			seen[r.Designation] = [2]float64{r.WidthMm / 25.4, r.DiscMm / 25.4}
		}
	}
	for name, want := range map[string][2]float64{"606": {3.0 / 16, 0.75}, "1212": {3.0 / 8, 1.5}, "202": {1.0 / 16, 0.25}, "808": {0.25, 1}} {
		if got := seen[name]; math.Abs(got[0]-want[0]) > 1e-9 || math.Abs(got[1]-want[1]) > 1e-9 {
			t.Errorf("%s is %v in, want %v: %v", name, got, want, seen)
		}
	}
}
