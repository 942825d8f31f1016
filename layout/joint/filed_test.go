package joint_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/read"
)

// filed is the plan of a job of the parts given, each named by its file, in mm.
func filed(t *testing.T, joints string, partTexts ...string) *plan.Plan {
	t.Helper()
	return planned(t, jobOf(t, joints, partTexts...))
}

// jobOf is that job.
func jobOf(t *testing.T, joints string, partTexts ...string) *parts.Job {
	t.Helper()
	dir, names := t.TempDir(), []string{}
	put := func(name, text string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, text := range partTexts {
		names = append(names, strings.Fields(text)[1]+".yaml")
		put(names[len(names)-1], text)
	}
	put("job.yaml", "job: J\nunits: mm\ntolerance: m\nparts: ["+strings.Join(names, ", ")+"]\njoints:\n  - "+joints+"\n")
	job, err := read.Load(filepath.Join(dir, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	return job
}

// A branch of 80 on a main of 200, at 60° and 20 off the axis: 277.94 along the curve where
// they meet (integrated apart from this program), 274.02 without the offset, 257.37 if it
// were square. Its wall of 2 is sheet: tacks of four thicknesses of that, 60 apart at most
// (common practice), not of the 8 of the main.
func TestBranchWeldGoesByTheBranch(t *testing.T) {
	t.Parallel()
	main := "part: main\nkind: tube\nmaterial: S235\nstock: {tube: 200 mm, wall: 8 mm, length: 604 mm}\ntube: {outside: 200, wall: 8, length: 600}\nradial: [{name: opening, clock: 0, axial: 300, size: 20 mm, depth: through}]\n"
	branch := "part: branch\nkind: tube\nmaterial: S235\nstock: {tube: 80 mm, wall: 2 mm, length: 320 mm}\ntube: {outside: 80, wall: 2, length: 300}\nends:\n  back: {onto: main.outside, angle: 60, offset: 20, joint: set-on, gap: 1, clock: 0, place: {clock: 0, axial: 300, leans: back}}\n"
	w := filed(t, "{name: w, weld: {part: branch.outside, to: main.opening, type: square, process: TIG}}", main, branch).Joints[0].Weld
	if math.Abs(w.LengthMm-277.94) > 0.01 || w.TackLengthMm != 8 || len(w.TacksDeg) != 8 {
		t.Errorf("%v mm, %d tacks of %v", w.LengthMm, len(w.TacksDeg), w.TackLengthMm)
	}
}

// Runs of 25 mm² with MAG wire and 18 with sticks (common practice): a fillet of leg 12 is 72
// mm² and a tenth more, 79.2; a chamfer of 9 at 45° against a tube 40.5 under a cap of 2/3 × 9 × 1.
func TestRunsFollowTheSection(t *testing.T) {
	t.Parallel()
	plate := "material: S235\nstock: {plate: 20 mm, cut: saw}\noutline: {square: 100}\n"
	j := filed(t, "{name: w, weld: {part: a.outline, to: b.outline, type: fillet, size: 12, length: 100, process: MAG}}", "part: a\nkind: plate\n"+plate, "part: b\nkind: plate\n"+plate).Joints[0]
	if j.Weld.AreaMm2 != 79.2 || j.Weld.Runs != 4 {
		t.Errorf("fillet of %v mm² in %d runs", j.Weld.AreaMm2, j.Weld.Runs)
	}
	says(t, j, []string{"4 runs of MAG"}, nil)
	tube := "part: tube\nkind: tube\nmaterial: S235\nstock: {tube: 100 mm, wall: 8 mm, length: 204 mm}\ntube: {outside: 100, wall: 8, length: 200}\n"
	flange := "part: flange\nkind: flange\nmaterial: S235\nstock: {plate: 20 mm, cut: saw}\noutline: {circle: 200}\nbore: {diameter: 100, fit: {light-press: tube.outside}, leave: 2}\nchamfers: [{edge: bore-back, size: 9 mm, angle: 45, for: weld}]\n"
	j = filed(t, "{name: w, weld: {part: flange.bore, to: tube.outside, type: bevel, process: MMA}}", tube, flange).Joints[0]
	if j.Weld.AreaMm2 != 46.5 || j.Weld.Runs != 3 || len(j.Weld.Order) == 0 || j.Weld.Order[len(j.Weld.Order)-1].Layer != 3 {
		t.Errorf("groove of %v mm² in %d runs, %+v", j.Weld.AreaMm2, j.Weld.Runs, j.Weld.Order)
	}
}

// A hub turned to 90 from a bar of 130 has the 195 MPa of EN 10025-2:2004 Table 7 over 100 to
// 150, from one of 95 the 215 of over 80 to 100.
func TestPressYieldsByTheBarBought(t *testing.T) {
	t.Parallel()
	for bar, yield := range map[string]float64{"130": 195, "95": 215} {
		p := filed(t, "{name: p, press: {shaft: pin.seat, bore: hub.bore}, level: front-with-front}",
			"part: hub\nkind: turned\nmaterial: S235\nstock: {round: "+bar+" mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 90, length: 40}]\n  inside: [{name: bore, diameter: 45, fit: H7, length: 40}]\n",
			"part: pin\nkind: shaft\nmaterial: C45\nstock: {round: 50 mm, cut: saw}\nprofile:\n  outside: [{name: seat, diameter: 45, fit: p6, length: 40}]\n").Joints[0].Press
		if got := p.HubSafety * p.HubMPa.Max; math.Abs(got-yield) > 0.01*yield {
			t.Errorf("from %s mm: safety %v at %v MPa, as of %v; want %v", bar, p.HubSafety, p.HubMPa.Max, got, yield)
		}
	}
}

// A branch that is cut to stand on a main is welded to the opening there, not to its outside,
// which would be two rounds on one axis (by geometry).
func TestBranchWantsAnOpening(t *testing.T) {
	t.Parallel()
	main := "part: main\nkind: tube\nmaterial: S235\nstock: {tube: 200 mm, wall: 8 mm, length: 604 mm}\ntube: {outside: 200, wall: 8, length: 600}\n"
	branch := "part: branch\nkind: tube\nmaterial: S235\nstock: {tube: 80 mm, wall: 2 mm, length: 320 mm}\ntube: {outside: 80, wall: 2, length: 300}\nends:\n  back: {onto: main.outside, angle: 60, joint: set-on, gap: 1, clock: 0, place: {clock: 0, axial: 300, leans: back}}\n"
	p, err := draft(jobOf(t, "{name: w, weld: {part: branch.outside, to: main.outside, type: square, process: TIG}}", main, branch))
	if err != nil || len(p.Faults) != 1 || p.Faults[0].Kind != plan.CannotJoin || !strings.Contains(p.Faults[0].Args[1].Text, "opening") {
		t.Errorf("%v, %+v", err, p.Faults)
	}
}

// A fit that neither the heat its hub stands (grey iron 250 °C, DIN 7190) nor liquid nitrogen
// opens has no step that heats or cools, and no number to work by.
func TestNothingIsHeatedPastWhatItStands(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ method, fit, step string }{{"heat", "u6", "Stop"}, {"heat", "n6", "Heat"}, {"cool", "u6", "Stop"}, {"cool", "k6", "Cool"}} {
		j := filed(t, "{name: p, press: {shaft: pin.seat, bore: hub.bore, method: "+c.method+"}, level: front-with-front}",
			"part: hub\nkind: turned\nmaterial: EN-GJL-250\nstock: {round: 90 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 80, length: 20}]\n  inside: [{name: bore, diameter: 40, fit: H6, length: 20}]\n",
			"part: pin\nkind: shaft\nmaterial: C45\nstock: {round: 50 mm, cut: saw}\nprofile:\n  outside: [{name: seat, diameter: 40, fit: "+c.fit+", length: 40}]\n").Joints[0]
		if got := j.Steps[1].Title; got != c.step {
			t.Errorf("%s %s: %s, want %s; hub %v °C of %v, shaft %v °C of %v", c.method, c.fit, got, c.step, j.Press.HeatHubC, j.Press.HeatLimitC, j.Press.CoolShaftC, j.Press.ColdLimitC)
		}
	}
}
