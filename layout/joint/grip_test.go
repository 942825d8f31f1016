package joint_test

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// TestSplitHubIsClamped: a split ring that nothing on its shaft keeps is set to its place and closed there by its screw,
// and is not said to turn; with a ring on the shaft beside it is closed after that. Unsplit, the shaft turns in it.
func TestSplitHubIsClamped(t *testing.T) {
	t.Parallel()
	const keys = "keyways:\n  - {name: key, in: bore, clock: 30}\n"
	keyless := []string{"shaft.yaml|keyways:\n  - {name: key, in: seat, clock: 90, axial: 70, length: 40}\n|", "shaft.yaml|top: keyway|top: punch"}
	const split, placed = "hub.yaml|" + keys + "|clamp: {in: bore, slot: 2, screw: M8 8.8, clock: 90}\n", "job.yaml|, kept-by: shaft.ring}|}\n    level: back-with-back\n    below: 110"
	for _, c := range []struct {
		edits                 []string
		clamps, turns, keeper bool
	}{
		{append(slices.Clone(keyless), split, placed), true, false, false},
		{append(slices.Clone(keyless), split), true, false, true},
		{append(slices.Clone(keyless), "hub.yaml|"+keys+"|", placed), false, true, false},
	} {
		j, problems := slidPlan(t, c.edits...)
		text := stepText(j)
		const tighten = "Tighten its screw M8 x 35, 8.8 to "
		holds := "Hub neither turns nor slides on Shaft by hand, and its cut is still open."
		if strings.Contains(text, tighten) != c.clamps || slices.ContainsFunc(j.Steps, func(s plan.JointStep) bool { return s.Hold == holds }) != c.clamps || j.Slide.Gripped != c.clamps {
			t.Errorf("clamps %v: %s\n%+v", c.clamps, text, problems)
		}
		if turns := slices.ContainsFunc(j.Steps, func(s plan.JointStep) bool { return strings.Contains(s.Hold, "turns by hand all round") }); turns != c.turns {
			t.Errorf("turns %v: %s", c.turns, text)
		}
		if grease := strings.Contains(text, "grease them thinly"); grease || strings.Contains(text, "clean and dry") != c.clamps || slices.ContainsFunc(problems, func(p plan.Problem) bool { return p.Kind == plan.SlideNoKey }) {
			t.Errorf("%s\n%v", text, problems)
		}
		last := j.Steps[len(j.Steps)-1].Title
		if strings.Contains(text, "Spring the retaining ring") != c.keeper || (last == "Clamp") != c.clamps {
			t.Errorf("kept %v: %s", c.keeper, text)
		}
		if torque := slices.ContainsFunc(j.Checks, func(c plan.Check) bool {
			return c.What == "torque of the clamp" && strings.HasPrefix(c.Limits, "threads oiled, K = ")
		}); torque != c.clamps {
			t.Errorf("the record: %+v", j.Checks)
		}
	}
}

// TestLooseCollarIsTightened: the screw of a split collar that no joint holds is tightened as it is put in; that of a nut
// is the lock of its bearing, which says so.
func TestLooseCollarIsTightened(t *testing.T) {
	t.Parallel()
	const tighten = "Tighten its screw M5 x"
	for edit, want := range map[string]bool{"slot: 2, screw: M5 8.8, clock: 90} => slot: 2, screw: M5 8.8, clock: 90}": true, "clamp: {in: bore, slot: 2, screw: M5 8.8, clock: 90} => ": false} {
		if got := strings.Contains(stepText(jointNamed(t, workedWith(t, "winch", edit), "side-2-foot")), tighten); got != want {
			t.Errorf("%s: %v", edit, got)
		}
	}
	if text := stepText(jointNamed(t, demoPlan(t, "gatejack"), "upper-bearing")); strings.Contains(text, "Tighten its screw") || strings.Count(text, "Lock it by the clamp of Lock collar") != 1 {
		t.Error(text)
	}
}
