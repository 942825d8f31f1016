package review

import (
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// A screw reaches out of its nut with its thread and with what is beyond that.
func TestScrewReach(t *testing.T) {
	t.Parallel()
	step := func(mm, long float64) parts.Step {
		return parts.Step{Size: parts.Size{Nominal: parts.Length{Mm: mm}}, Length: parts.Length{Mm: long}}
	}
	steps := []parts.Step{step(6, 5), step(20, 100), step(12, 10), step(25, 40)}
	front, back := stepsOf(steps, false)[1].reaches()
	if want := (reach{10, 105}); front != want {
		t.Errorf("in front %v, want %v", front, want)
	}
	if want := (reach{12.5, 150}); back != want {
		t.Errorf("behind %v, want %v", back, want)
	}
}

// The narrowest place of a bore counts, and a closed end has none.
func TestNarrowest(t *testing.T) {
	t.Parallel()
	outer := []plan.XY{{YMm: 20}, {XMm: 10, YMm: 20}}
	for _, c := range []struct {
		inner []plan.XY
		want  float64
	}{
		{[]plan.XY{{YMm: 8}, {XMm: 4, YMm: 8}, {XMm: 4, YMm: 6}, {XMm: 10, YMm: 6}}, 6},
		{[]plan.XY{{YMm: 8}, {XMm: 4, YMm: 8}, {XMm: 4}}, 0},
	} {
		if got := narrowest(&standingPart{section: &plan.Section{LengthMm: 10, Outer: outer, Inner: c.inner}}); got != c.want {
			t.Errorf("%v: narrowest %v, want %v", c.inner, got, c.want)
		}
	}
}
