package geom_test

import (
	"testing"

	"centrepop/parts/geom"
)

// What two stretches have in common, and what lies between them.
func TestSpan(t *testing.T) {
	on := geom.Between(30, 10)
	for _, c := range []struct {
		name  string
		other geom.Span
		onMm  float64
		meets bool
	}{
		{"over its end", geom.Span{FromMm: 25, ToMm: 40}, 5, true}, {"inside it", geom.Span{FromMm: 12, ToMm: 20}, 8, true}, {"round it", geom.Span{FromMm: 0, ToMm: 40}, 20, true},
		{"touching", geom.Span{FromMm: 30, ToMm: 40}, 0, false}, {"beside", geom.Span{FromMm: 2, ToMm: 7}, -3, false}, {"a place in it", geom.Span{FromMm: 15, ToMm: 15}, 0, true},
	} {
		if a, b := on.OnMm(c.other), c.other.OnMm(on); a != c.onMm || b != c.onMm || on.Meets(c.other) != c.meets || c.other.Meets(on) != c.meets {
			t.Errorf("%s: on it %v and %v, meets %v and %v", c.name, a, b, on.Meets(c.other), c.other.Meets(on))
		}
	}
	if got := geom.Around(7, 2); got != (geom.Span{FromMm: 5, ToMm: 9}) {
		t.Errorf("2 around 7 is %v", got)
	}
	if on.LengthMm() != 20 || on.MidMm() != 20 || !on.Holds(10) || !on.Holds(30) || on.Holds(9.99) || on.Holds(30.01) {
		t.Errorf("%v is %v long about %v", on, on.LengthMm(), on.MidMm())
	}
}
