package bars

import (
	"errors"
	"math"
	"testing"

	"centrepop/layout/lookup"
)

// TestRanges: what lies outside is refused with the range itself, which every
// printed refusal states; its ends are taken.
func TestRanges(t *testing.T) {
	t.Parallel()
	last := func(_ any, err error) error { return err }
	mitre := func(deg, a, b float64) error { _, _, err := Mitre(deg, a, b); return err }
	nest := func(s Stock) error {
		return last(Nest([]Piece{{Name: "a", Member: Member{LengthMm: 300, WidthMm: 40}}}, s))
	}
	for name, c := range map[string]struct {
		err         error
		above, upTo float64
	}{
		"length":       {last(Member{20001, 50, 0, 0}.Work()), 0, 20000},
		"width":        {last(Member{300, 20001, 0, 0}.Work()), 0, 20000},
		"start":        {last(Member{300, 50, -76, 0}.Work()), -75, 75},
		"end":          {last(Member{300, 50, 0, 76}.Work()), -75, 75},
		"no side left": {last(Member{50, 50, 45, 45}.Work()), 50, 20000},
		"long side":    {last(ByLong(90, 50, 45, 45)), 100, 20000},
		"corner":       {mitre(180, 50, 50), 0, 180},
		"first":        {mitre(90, 20001, 50), 0, 20000},
		"second":       {mitre(90, 50, 20001), 0, 20000},
		"saw":          {mitre(20, 50, 50), -75, 75},
		"round":        {last(CopeOn(20001, 40)), 0, 20000},
		"bar":          {last(CopeOn(60, 61)), 0, 60},
		"points":       {last(ByPoints(100, 50, 45, 45)), 50, 20000},
		"stock":        {nest(Stock{BarMm: 20001}), 0, 20000},
		"kerf":         {nest(Stock{BarMm: 3000, KerfMm: 101}), 0, 100},
		"trim":         {nest(Stock{BarMm: 3000, TrimMm: 3001}), 0, 3000},
		"piece":        {nest(Stock{BarMm: 305, TrimMm: 10}), 0, 295},
	} {
		var r *lookup.RangeError
		if !errors.As(c.err, &r) || math.Abs(r.Above-c.above) > 1e-8 || math.Abs(r.UpTo-c.upTo) > 2e-6 {
			t.Errorf("%s: %v, want above %v and up to %v", name, c.err, c.above, c.upTo)
		}
	}
	for name, err := range map[string]error{
		"75° at both ends": last(Member{300, 50, -75, 75}.Work()), "kerf of 100": nest(Stock{BarMm: 3000, KerfMm: 100}), "flush": nest(Stock{BarMm: 310, TrimMm: 10}), "round": last(CopeOn(20000, 60)), "0.5°": mitre(179.5, 0.5, 0.5),
	} {
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestLeastTurned: of ways that end as soon, the least turned is taken: a square
// piece lies as it is, a bar of two like mitres too.
func TestLeastTurned(t *testing.T) {
	t.Parallel()
	for _, m := range []Member{{300, 50, 0, 0}, {300, 50, 20, -20}} {
		got, err := Nest([]Piece{{Name: "a", Member: m, Count: 3}}, Stock{BarMm: 3000, KerfMm: 3})
		if err != nil {
			t.Fatal(err)
		}
		for i, c := range got[0].Cuts {
			if c.Turned || c.Reversed {
				t.Errorf("%+v, piece %d: %+v", m, i, c)
			}
		}
	}
	// A piece that ends half a millimetre sooner end for end lies so.
	got, err := Nest([]Piece{{Name: "a", Member: Member{300, 50, 0, 1}, Keep: KeepTop}, {Name: "b", Member: Member{200, 50, 0, -1}, Keep: KeepTop}}, Stock{BarMm: 3000, KerfMm: 3})
	if err != nil || !got[0].Cuts[1].Reversed {
		t.Errorf("%+v, %v", got, err)
	}
}
