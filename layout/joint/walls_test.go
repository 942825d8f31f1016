package joint_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/parts/read"
)

// walled is a bracket bolted by its top flange to the bottom of an angle, with edits.
func walled(t *testing.T, edits ...string) (*layout.Worked, error) {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{
		"job.yaml": "job: Bracket\nunits: in\ntolerance: m\nparts: [bracket.yaml, leg.yaml]\njoints:\n" +
			"  - {name: feet, bolt: {through: bracket.feet, into: leg.lugs, bolt: 1/4-20 UNC grade 5, nut: yes}, face: back-on-front}\n",
		"bracket.yaml": "part: bracket\ntitle: Bracket\nkind: folded\nmaterial: A36\nstock: {sheet: 1/16, cut: laser}\noutline: {rectangle: [6, 3]}\n" +
			"bends: {radius: 1/16, flanges: [{side: top, height: 1-1/2}]}\n" +
			"holes:\n  - {name: feet, on: top, at: [[-2, 3/4], [2, 3/4]], size: 1/4-20 UNC clearance}\n",
		"leg.yaml": "part: leg\ntitle: Leg\nkind: bar\nmaterial: A36\nbar: {angle: [2, 2], wall: 3/16, length: 10}\n" +
			"holes:\n  - {name: lugs, on: bottom, along: {from: left, first: 3, pitch: 4, count: 2, up: 3/4}, size: 1/4-20 UNC clearance}\n",
	} {
		for _, edit := range edits {
			if old, now, _ := strings.Cut(edit, "|"); old != "" {
				text = strings.ReplaceAll(text, old, now)
			}
		}
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	job, err := read.Load(filepath.Join(dir, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	return layout.Resolve(job)
}

// Holes on a flange and on the leg of an angle meet, and their frames are named.
func TestBoltOnWalls(t *testing.T) {
	t.Parallel()
	w, err := walled(t, "|")
	if err != nil {
		t.Fatal(err)
	}
	j := w.Plan.Joints[0]
	if want := "inside of the top flange of Bracket on the outside of the bottom of Leg, hole on hole, free edge of Bracket at 0° seen on the outside of the bottom of Leg with its front up"; j.How != want {
		t.Errorf("%q", j.How)
	}
	if g := j.Bolt.Grip; len(g) != 2 || g[0].ThickMm != 25.4/16 || g[1].ThickMm != 25.4*3/16 {
		t.Errorf("%+v", g)
	}
	if s := j.Beside; s == nil || s.On != "outside of the bottom of Leg" || s.Up != "front" || s.XMm != 0 || s.YMm != -25.4 || math.Abs(s.FrontMm+25.4/16) > 1e-9 {
		t.Errorf("%+v", s)
	}
	for edit, want := range map[string]string{
		"[-2, 3/4], [2, 3/4]|[2, 3/4]":                                          "has 1 hole and Leg lugs has 2",
		"}, face: back-on-front|}":                                              "the front of the bottom is its outside",
		"nut: yes}|nut: yes, stack: [bracket.feet]}":                            "a group of holes on its front or back",
		"[-2, 3/4], [2, 3/4]|[-2, 3/4], [2.1, 3/4]":                             "are 4.1 in apart where those of Leg lugs are 4 in",
		"[2, 3/4]], size: 1/4-20 UNC clearance|[2, 3/4]], size: 1/4-20 UNC tap": "a group of clearance or plain holes",
		"}, face: back-on-front|}, rotate: 90, face: back-on-front":             "rotate: 180 makes them meet",
	} {
		w, err := walled(t, edit)
		if err == nil {
			t.Errorf("%s: taken, %v", edit, w.Plan.Joints[0].Problems)
		} else if !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", edit, err)
		}
	}
}

// One bolt in a flange places it, hole on hole; that it turns about it is said, unless another bolt holds it too.
func TestOneBolt(t *testing.T) {
	t.Parallel()
	const one = ", bolt: 1/4-20 UNC grade 5, nut: yes}, face: back-on-front"
	for _, c := range []struct{ edit, want string }{
		{"[-2, 3/4], [2, 3/4]|[2, 3/4]", "one bolt holds Bracket, which turns about it on Leg"},
		{"[-2, 3/4], [2, 3/4]], size: 1/4-20 UNC clearance}|[-2, 3/4]], size: 1/4-20 UNC clearance}\n  - {name: far, on: top, at: [[2, 3/4]], size: 1/4-20 UNC clearance}", ""},
	} {
		edits := []string{c.edit, "first: 3, pitch: 4, count: 2, up|first: 3, up"}
		if c.want == "" {
			edits = append(edits, "up: 3/4}, size: 1/4-20 UNC clearance}|up: 3/4}, size: 1/4-20 UNC clearance}\n  - {name: far, on: bottom, along: {from: left, first: 7, up: 3/4}, size: 1/4-20 UNC clearance}",
				one+"}|"+one+"}\n  - {name: far, bolt: {through: bracket.far, into: leg.far"+one+"}")
		}
		w, err := walled(t, edits...)
		if err != nil {
			t.Errorf("%s: %v", c.edit, err)
			continue
		}
		got := ""
		for _, p := range w.Plan.Joints[0].Problems {
			if p.Kind == plan.OneBolt {
				got = p.What
			}
		}
		if got != c.want || w.Plan.Joints[0].Beside.YMm != -25.4 {
			t.Errorf("%s: %q, %+v", c.edit, got, w.Plan.Joints[0].Beside)
		}
	}
}
