package joint_test

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// Where a part stands is said in the words of its place.
func TestPlaceText(t *testing.T) {
	t.Parallel()
	want := map[string]string{
		"upright":       "bottom of Housing plate on the front of Base plate, 120 from its left edge, 10 from its bottom edge, front to the left",
		"gusset-4":      "left of Gusset 4 on the back of Housing plate, 0 from its right edge, 0 from its bottom edge, front to the left; fillet along Housing plate on its front (125), along Base plate on its back (95) and front (95)",
		"stand-foot-2":  "front of Stand foot 2 on the right of Stand leg 2, 60 past its front, 10 past its back, 15 past its bottom, 15 past its top, TOP to the top of Stand leg 2, its right end to the front of Stand leg 2",
		"hopper-throat": "back of Hopper throat on the front of Hopper, its origin on the other's, 20 down, TOP up, 1 inside it",
	}
	for _, j := range demoPlan(t, "pugmill").Joints {
		w, ok := want[j.Name]
		if delete(want, j.Name); ok && j.How != w {
			t.Errorf("%s: %q, want %q", j.Name, j.How, w)
		}
	}
	if len(want) > 0 {
		t.Errorf("no joints %v", want)
	}
}

// A round that stands with its end on a face is welded all round: π × 60.3 = 189.44, with
// tacks on the clock; what does not end there has no round to run.
func TestWeldRoundAnEnd(t *testing.T) {
	t.Parallel()
	const core = "weld: {part: core.outside, to: base.outline, type: fillet, size: 5, length: 180, process: MMA}\n    place: {on: front, with: back"
	round := strings.Replace(core, ", length: 180", "", 1)
	w := jointNamed(t, workedWith(t, "formed", core+" => "+round), "core").Weld
	if w == nil || w.LengthMm != 189.44 || w.DiameterMm != 60.3 || len(w.TacksDeg) != 4 {
		t.Errorf("%+v", w)
	}
	if got := problems(workedWith(t, "formed", core+", at: [120, 30], top: left} => "+strings.Replace(round, "with: back", "with: left", 1)+", at: [120, 30], front: left}"), "core"); !strings.Contains(got, string(plan.WeldNoLength)) {
		t.Errorf("on its side: %q", got)
	}
}
