package joint_test

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// By hand from the drawings: the tubes lie 1 under the faces of their flanges. The
// cone on 520 to 541 of a shaft of 730 comes from the back, 189 to go; that on 611
// to 628 or so too, by its large end. Both cups start level with the housing. The
// bores that nothing stands in while it is welded: 50 H11 and 130 H7, 0.03 less.
func TestToolsOfTheMill(t *testing.T) {
	t.Parallel()
	want := []plan.ToolRow{
		{Tool: "Stop disc Ø167.3 × 1 thick, to lie on the end of Barrel tube", For: "step 1, front flange; step 3, rear flange"},
		{Tool: "Stop disc Ø138.7 × 1 thick, to lie on the end of Inlet stub", For: "step 5, inlet flange"},
		{Tool: "Sleeve Ø50.5 inside, Ø58 outside, 209 long, on the cone's small end", For: "step 10, front bearing"},
		{Tool: "Ring Ø85 inside, Ø89 outside, 20 long, on the cup", For: "step 10, front bearing"},
		{Tool: "Sleeve Ø40.5 inside, Ø47 outside, 122 long, on the cone's large end", For: "step 11, rear bearing"},
		{Tool: "Ring Ø74 inside, Ø79 outside, 20 long, on the cup", For: "step 11, rear bearing"},
		{Tool: "Scrap plug Ø49.97 × 371 long, for the bore of Auger hub", For: "step 12, auger flight"},
		{Tool: "Scrap plug Ø129.97 × 15 long, for the bore of Housing plate", For: "step 18, upright; step 19, gusset 1; step 20, gusset 2; step 21, gusset 3; step 22, gusset 4"},
	}
	if got := demoPlan(t, "pugmill").Tools; !slices.Equal(got, want) {
		t.Errorf("%q\nwant %q", got, want)
	}
	silent, err := draft(editedDemo(t, "pugmill", "job.yaml", "tools: yes\n", ""))
	if err != nil || len(silent.Tools) > 0 {
		t.Errorf("%v %q", err, silent.Tools)
	}
}

// A hub of 50 in the middle of the seat from 40 to 100, so from 45: 45 stand out
// before it, and 20 more are the sleeve's.
func TestPressSleeves(t *testing.T) {
	t.Parallel()
	press := func(fit string) string {
		return "job.yaml|slide: {hub: hub.bore, on: shaft.seat, kept-by: shaft.ring}|press: {shaft: shaft.seat, bore: hub.bore, fit: H7/p6" + fit + "|"
	}
	for _, c := range []struct {
		press, want string
		edits       []string
	}{
		{"}", "Press sleeve Ø41 inside, 65 long, ends square", nil},
		{", method: heat}", "", nil},
		{"}\n    level: front-with-front", "Flat plate wider than Ø40", []string{"shaft.yaml|    - {name: nose, thread: M24, length: 40}\n|", "shaft.yaml|axial: 70|axial: 30", "shaft.yaml|axial: 45|axial: 5"}},
		{", method: heat}\n    level: front-with-front\n    below: 2", "Stop disc Ø39 × 2 thick, to lie on the end of Shaft", []string{"shaft.yaml|    - {name: nose, thread: M24, length: 40}\n|", "shaft.yaml|axial: 70|axial: 30", "shaft.yaml|axial: 45|axial: 5"}},
	} {
		edits := append([]string{"job.yaml|tolerance: m|tolerance: m\ntools: yes", strings.TrimSuffix(press(c.press), "|")}, c.edits...)
		got, worked := "", slidJob(t, edits...)
		for _, r := range worked.Tools {
			got += r.Tool
		}
		// What is pressed, and not welded or shrunk, rests a day (DIN 7190, from memory).
		if rests := strings.Contains(stepText(worked.Joints[len(worked.Joints)-1]), "Leave 24 h before the full load"); rests != !strings.Contains(c.press, "heat") {
			t.Errorf("%s: rests %v", c.press, rests)
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.press, got, c.want)
		}
	}
}
