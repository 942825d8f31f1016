package plan_test

import (
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/seq"
)

// What is clamped is as thick as its layers together: 2.5 + 12 + 14 + 2.5 with washers at both ends, 26 without.
func TestClampedIsTheSumOfItsLayers(t *testing.T) {
	t.Parallel()
	grip := []plan.GripRow{{ThickMm: 12}, {ThickMm: 14}}
	for want, p := range map[float64]plan.BoltPlan{31: {Grip: grip, GripMm: 26, WasherMm: 2.5, NutWasherMm: 2.5}, 28.5: {Grip: grip, GripMm: 26, WasherMm: 2.5}, 26: {Grip: grip, GripMm: 26}} {
		if sum := seq.Sum(p.Layers(), func(g plan.GripRow) float64 { return g.ThickMm }); p.ClampedMm() != want || sum != want {
			t.Errorf("%v and %v, want %v", p.ClampedMm(), sum, want)
		}
	}
}
