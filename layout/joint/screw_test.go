package joint_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/parts/golden"
	"centrepop/parts/read"
)

// TestScrews: of the screw jack, with edits of its files, how much of a thread engages, in how many turns, which end goes in first, and what
// the steps say. Tr24x5 climbs 5 a turn, or 10 with two starts (ISO 2904); M16 climbs 2, M16x1.5 LH goes the other way. The chamfers of 2.5 at both ends of the nut are no full thread, nor are
// the undercut of 7 of the nose (DIN 76-1) with its chamfer of 1.5, or the 7.3 before the floor of the cap. By geometry.
func TestScrews(t *testing.T) {
	t.Parallel()
	const at = "place: {on: front, with: front, at: [0, 0], gap: -60}"
	for _, c := range []struct{ what, joint, file, was, is, want, says string }{
		{"it runs", "spindle", "", "", "", "Tr24x5 30 of 40, 7 turns, front, home false, onto false", "Turn it in, some 7 turns, to: front of Spindle 60 behind the front of Bridge nut."},
		{"deeper", "spindle", "job", "gap: -60", "gap: -70", "Tr24x5 35 of 40, 9 turns, front, home false, onto false", "some 9 turns"},
		{"of two starts", "spindle", "spindle nut", "Tr24x5", "Tr24x10P5", "Tr24x10P5 30 of 40, 3.5 turns, front, home false, onto false", "some 4 turns"},
		{"nothing says how far", "spindle", "job", ", " + at, "", "Tr24x5 35 of 40, 24 turns, front, home false, onto false", "how far it goes in is not said"},
		{"home", "knob", "", "", "", "M16 6.5 of 20, 7.5 turns, back, home true, onto true", "Tighten Knob on Spindle, spanner-tight: the job does not say what pulls on it"},
		{"a floor behind its thread", "cap", "", "", "", "M16x1.5 LH 11.2 of 20, 13.3333 turns, front, home false, onto true", "LEFT HAND: it goes counter-clockwise."},
		{"a shoulder at either end", "spindle", "spindle", "{name: pin, thread: M16x1.5 LH, length: 25}", "{name: pin, diameter: 30, length: 25}", "Tr24x5 22.5 of 40, 0 turns, , home false, onto false", "Enter Spindle by hand square into Bridge nut thread"},
		{"stainless in stainless", "knob", "spindle knob", "material: C45", "material: 1.4301", "M16 6.5 of 20, 7.5 turns, back, home true, onto true", "Anti-seize paste on both: the two metals seize on one another."},
		{"stainless in steel", "knob", "spindle", "material: C45", "material: 1.4301", "M16 6.5 of 20, 7.5 turns, back, home true, onto true", "Oil them thinly."},
	} {
		path := golden.Job(t, filepath.Join("testdata", "worked", "jack.yaml"))
		for _, file := range strings.Fields(c.file) {
			edit(t, filepath.Join(filepath.Dir(path), file+".yaml"), c.was, c.is)
		}
		job, err := read.Load(path)
		if err != nil {
			t.Fatal(c.what, err)
		}
		if c.joint != "cap" { // the lower end of the spindle may have another thread
			job.Joints = job.Joints[:3]
		}
		w, err := layout.Resolve(job)
		if err != nil {
			t.Fatal(c.what, err)
		}
		j := jointNamed(t, w.Plan, c.joint)
		p := j.Screw
		got := fmt.Sprintf("%s %g of %g, %.6g turns, %s, home %t, onto %t", p.Thread, p.EngagedMm, j.B.ToMm-j.B.FromMm, p.Turns, p.Leads, p.Home, p.Onto)
		if got != c.want || !strings.Contains(stepsSay(j), c.says) {
			t.Errorf("%s: %s, want %s; %s", c.what, got, c.want, stepsSay(j))
		}
	}
}

// stepsSay is all that the steps of a joint say.
func stepsSay(j *plan.JointPlan) (all string) {
	for _, s := range j.Steps {
		all += strings.Join(s.Do, " ") + " " + s.Hold + "\n"
	}
	return all
}

// edit replaces what a file has once.
func edit(t *testing.T, path, was, is string) {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil || strings.Count(string(text), was) != 1 {
		t.Fatal(path, err, was)
	}
	if err := os.WriteFile(path, []byte(strings.Replace(string(text), was, is, 1)), 0o600); err != nil {
		t.Fatal(err)
	}
}

// TestScrewsRefused: two threads that are not one, and ends that are no thread of their side.
func TestScrewsRefused(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ file, was, is, want string }{
		{"knob", "thread: M16", "thread: M16x1.5", "screw-unlike: Spindle nose M16 Knob thread M16x1.5"},
		{"cap", "thread: M16x1.5 LH", "thread: M16x1.5", "screw-unlike: Spindle pin M16x1.5 LH Cap thread M16x1.5"},
		{"job", "screw: spindle.nose", "screw: spindle.head", "cannot-join: Spindle head a thread outside, of the part that is screwed in"},
		{"job", "nut: knob.thread", "nut: knob.hollow", "cannot-join: Knob hollow a thread inside, of the bore that it is screwed into"},
	} {
		path := golden.Job(t, filepath.Join("testdata", "worked", "jack.yaml"))
		edit(t, filepath.Join(filepath.Dir(path), c.file+".yaml"), c.was, c.is)
		job, err := read.Load(path)
		if err != nil {
			t.Fatal(err)
		}
		w, err := layout.Work(job)
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, p := range w.Plan.Faults {
			got += string(p.Kind) + ":"
			for _, a := range p.Args {
				got += " " + a.Text
			}
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.is, got, c.want)
		}
	}
}
