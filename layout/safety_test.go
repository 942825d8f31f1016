package layout

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A seat that is welded afterwards is not oiled: oil in the root is porosity.
// More than two people lift by ISO 11228-1 (25 kg each, from memory) is not
// lifted by two people.
func TestStepsHurtNobody(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	if text := stepText(jointNamed(t, p, "front-flange")); strings.Contains(text, "oil them") || !strings.Contains(text, "no oil") {
		t.Errorf("pressed, then welded: %s", text)
	}
	heavy := 0
	for _, j := range p.Joints {
		text := strings.Join(j.Cautions, "\n")
		if two := strings.Contains(text, "two people"); two != (j.MassKg > plan.LiftKg && j.MassKg <= 2*plan.LiftKg) {
			t.Errorf("%s of %v kg: %s", j.Name, j.MassKg, text)
		}
		if j.MassKg > 2*plan.LiftKg {
			heavy++
		}
	}
	if heavy == 0 {
		t.Error("nothing heavy in the demo")
	}
}
