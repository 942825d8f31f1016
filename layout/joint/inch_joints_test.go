package joint_test

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/read"
)

// A fillet of an inch job has a leg in sixteenths, which a gauge in inches reads, and is named by
// it: 0.7 of 1/8 in is 2.2, not under the 3 of AWS D1.1 Table 7.7, so 1/8 in.
func TestInchFilletsAreInSixteenths(t *testing.T) {
	t.Parallel()
	j := jointNamed(t, demoPlan(t, "gatejack"), "stay")
	if w := j.Weld; w.LegMm != 3.175 || w.Designation != "0.125 in leg" || w.ThroatMm != 2.25 {
		t.Errorf("leg %v %q, throat %v", w.LegMm, w.Designation, w.ThroatMm)
	}
	// AWS D1.1 Table 7.7, inch column: 1/8 for metal up to 1/4.
	if i := slices.IndexFunc(j.Figures, func(f plan.Figure) bool { return f.Label == "least leg" }); i < 0 || j.Figures[i].Value != "0.125 in" {
		t.Errorf("%+v", j.Figures)
	}
	says(t, j, []string{"fillet weld 0.125 in leg", "throat: 0.089 in or more"}, []string{"z3"})
	says(t, jointNamed(t, demoPlan(t, "gatejack"), "frame-corner-4"), []string{"Gap 0.063 in.", "the outside 16.125 in × 10.625 in, within 0.039 in.", "a root face of 0.063 in", "Lay Yoke plate on it, cold: all 4 bolts, 5/8-11 UNC, that are to hold it there enter by hand"}, nil)
	if row := stockRow(t, demoPlan(t, "gatejack"), "round Ø3.125 in, saw cut"); row.KerfMm != 25.4*3/32 || row.TrimMm != 25.4*3/8 {
		t.Errorf("a cut of %v and %v at the end", row.KerfMm, row.TrimMm)
	}
}

// A nut that is made and has no clamp is locked by nothing; studs of an inch thread take nuts of
// an inch grade.
func TestMadeNutsAndInchStuds(t *testing.T) {
	t.Parallel()
	p, err := draft(editedDemo(t, "gatejack", "lock-collar.yaml", "clamp: {in: lock-thread, slot: 1/16, screw: \"#8-32 UNC A574\", clock: 90}\n", ""))
	if err != nil {
		t.Fatal(err)
	}
	says(t, jointNamed(t, p, "upper-bearing"), []string{"Nothing on the sheet of Lock collar locks it: peg it, or jam it with a second nut."}, []string{"Lock it by"})
	dir := t.TempDir()
	for name, text := range map[string]string{
		"job.yaml":   "job: Studs\nunits: in\ntolerance: m\nparts: [cheek.yaml, spacer.yaml]\njoints:\n  - {name: cheeks, bolt: {through: cheek#1.studs, into: cheek#2.studs, bolt: 1/2-13 UNC, stud: spacer}}\n",
		"cheek.yaml": "part: cheek\nkind: flange\nquantity: 2\nmaterial: A36\nstock: {plate: 3/8, cut: laser}\noutline: {circle: 8}\nbore: {diameter: 2}\nholes:\n  - {name: studs, face: front, circle: {pcd: 6, count: 4, first: 45}, size: 1/2-13 UNC clearance}\n",
		"spacer.yaml": "part: spacer\nkind: shaft\nquantity: 4\nmaterial: A36\nstock: {round: 3/4, length: 6-1/8, cut: saw}\nprofile:\n  outside:\n    - {name: a, thread: 1/2-13 UNC, length: 1-1/4}\n" +
			"    - {name: body, diameter: 3/4, length: 3-1/2}\n    - {name: b, thread: 1/2-13 UNC, length: 1-1/4}\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	job, err := read.Load(filepath.Join(dir, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	if b := jointNamed(t, planned(t, job), "cheeks").Bolt; b.NutClass != "grade 5" {
		t.Errorf("nuts of %s", b.NutClass)
	}
}
