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
		"auger-flight":  "front end of Auger flight 20 and its back end 350 from the front of Auger hub; it starts anywhere round it",
		"hopper-throat": "back of Hopper throat on the front of Hopper, its origin on the other's, 20 down, TOP up, 0.5 inside it",
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

// What stays open between two rounds follows from their limits where they meet, and from the
// flats of a bent end. Hopper ring: bore 151 ± 0.3 round a cone that is 150.75 ± 0.5 a
// millimetre from its end, so up to (151.3 - 150.25)/2 = 0.53 (a cone of 300 to 150 in 200
// grows by 0.75 a millimetre). Throat: 295.32 ± 0.5 in 300 - 2 × 2.136 = 295.73 ± 0.5, up to
// 0.70; its 16 flats stand 146.65 × (1 - cos 11.25°) = 2.82 further off.
func TestGapOfRounds(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "pugmill")
	says(t, jointNamed(t, p, "hopper-cone"), []string{"Gap 0 to 0.53 by its limits"}, []string{"No gap"})
	says(t, jointNamed(t, p, "hopper-throat"), []string{"Gap 0 to 0.7 by its limits"}, []string{"No gap"})
	if got := problems(p, "hopper-throat"); strings.Contains(got, string(plan.FilletGap)) {
		t.Errorf("rolled: %s", got)
	}
	flat := planned(t, editedDemo(t, "pugmill", "hopper-throat.yaml", "bend: rolled", "bend: faceted"))
	says(t, jointNamed(t, flat, "hopper-throat"), []string{"Gap up to 3.52 at the middles of the flats."}, []string{"No gap"})
	if got := problems(flat, "hopper-throat"); !strings.Contains(got, string(plan.FilletGap)) {
		t.Errorf("flats: %s", got)
	}
}
