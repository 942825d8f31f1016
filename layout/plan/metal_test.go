package plan_test

import (
	"slices"
	"testing"

	"centrepop/layout/plan"
)

// A round of Ø40 and 30 long: solid, bored through to Ø20, and bored 10 deep, where the metal
// behind the floor goes to the axis and the back face.
func TestMetal(t *testing.T) {
	t.Parallel()
	outer := []plan.XY{{XMm: 0, YMm: 20}, {XMm: 30, YMm: 20}}
	for _, c := range []struct{ inner, want []plan.XY }{
		{nil, []plan.XY{{XMm: 30}, {}}},
		{[]plan.XY{{YMm: 10}, {XMm: 30, YMm: 10}}, []plan.XY{{XMm: 30, YMm: 10}, {YMm: 10}}},
		{[]plan.XY{{YMm: 10}, {XMm: 10, YMm: 10}, {XMm: 10}}, []plan.XY{{XMm: 30}, {XMm: 10}, {XMm: 10, YMm: 10}, {YMm: 10}}},
	} {
		s := plan.Section{LengthMm: 30, Outer: outer, Inner: c.inner}
		if got := s.Metal(); !slices.Equal(got, slices.Concat(outer, c.want)) {
			t.Errorf("%v: %v", c.inner, got)
		}
	}
}
