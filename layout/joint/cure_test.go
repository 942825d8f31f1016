package joint_test

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// A turned part goes on backwards where its other face finds room: the barrel's
// end puts its thread of 80 into the die ring's bore of 110, and the gland its
// rim onto the housing, and the cover its countersinks. With a thread of 115 it does not go in.
func TestBackwards(t *testing.T) {
	t.Parallel()
	backwards := func(p *plan.Plan, name string) bool {
		return slices.ContainsFunc(jointNamed(t, p, name).Traps, func(k plan.Trap) bool { return k.OtherWay })
	}
	p := demoPlan(t, "pugmill")
	for name, want := range map[string]bool{"nozzle": true, "gland": true, "lantern": false, "barrel": false, "rear-cover": true} {
		if got := backwards(p, name); got != want {
			t.Errorf("%s goes on backwards: %v", name, got)
		}
	}
	p, err := draft(editedDemo(t, "pugmill", "barrel-end.yaml", "thread: M80x2", "thread: M115x2"))
	if err != nil {
		t.Fatal(err)
	}
	if backwards(p, "nozzle") {
		t.Error("a thread of 115 goes into a bore of 110")
	}
}

// The die ring also goes onto the other flange of the barrel while that is free:
// the lantern's joint comes later, when the die is on the first.
func TestOtherPlace(t *testing.T) {
	t.Parallel()
	for job, want := range map[string]map[string]string{
		"pugmill":  {"delivery-die": "Barrel flange 2", "barrel": ""},
		"gatejack": {"housing": "Pedestal flange 2", "yoke": ""},
	} {
		p := demoPlan(t, job)
		for name, copied := range want {
			j, got := jointNamed(t, p, name), ""
			for _, k := range j.Traps {
				got += k.Instead
			}
			if got != copied || strings.Contains(strings.Join(j.Remedies, " "), " is the one at the front of ") != (copied != "") {
				t.Errorf("%s: %q, want %q: %q", name, got, copied, j.Remedies)
			}
		}
	}
}

// One drawing gets one cure, whichever of its copies is bolted and to what.
func TestOneCureForADrawing(t *testing.T) {
	t.Parallel()
	for job, want := range map[string]struct {
		cure   string
		joints []string
	}{
		"pugmill":  {"hole 6 of Barrel flange bolts (all 2 pieces) at 332° instead of 330°", []string{"delivery-die", "barrel"}},
		"gatejack": {"hole 4 of Pedestal flange bolts (all 2 pieces) at 317° instead of 315°", []string{"housing", "yoke"}},
	} {
		p := demoPlan(t, job)
		for _, name := range want.joints {
			j := jointNamed(t, p, name)
			text := strings.Join(append(j.Remedies, offsetWords(j)), " ")
			if words.Out(j.Offset[0]) != want.cure || !strings.Contains(text, "at 0° (assembly clock)") {
				t.Errorf("%s: %s", name, text)
			}
		}
	}
}
