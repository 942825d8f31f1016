package joint_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/golden"
	"centrepop/parts/read"
)

// workedWith works out a job of testdata/worked with edits of its text, OLD => NEW each.
func workedWith(t *testing.T, name string, edits ...string) *plan.Plan {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "worked", name+".yaml"))
	if err != nil {
		t.Fatal(err)
	}
	s := string(text)
	for _, e := range edits {
		old, now, _ := strings.Cut(e, " => ")
		if strings.Count(s, old) != 1 {
			t.Fatalf("%s has %q not once", name, old)
		}
		s = strings.Replace(s, old, now, 1)
	}
	file := filepath.Join(t.TempDir(), "all.yaml")
	if err := os.WriteFile(file, []byte(s), 0o600); err != nil {
		t.Fatal(err)
	}
	job, err := read.Load(golden.Job(t, file))
	if err != nil {
		t.Fatal(err)
	}
	w, err := layout.Work(job)
	if err != nil {
		t.Fatal(err)
	}
	return w.Plan
}

// problems are the problems of a joint, kind and numbers.
func problems(p *plan.Plan, joint string) string {
	var all []plan.Problem
	for _, q := range p.Faults {
		if q.Joint == joint {
			all = append(all, q)
		}
	}
	for _, j := range p.Joints {
		if j.Name == joint {
			all = append(all, j.Problems...)
		}
	}
	var out []string
	for _, q := range all {
		line := fmt.Sprint(q.Kind)
		for _, a := range q.Args {
			switch {
			case a.Text != "":
				line += ", " + a.Text
			case a.High != 0:
				line += ", " + words.Trim(a.Value, 4) + "–" + words.Trim(a.High, 4)
			default:
				line += ", " + words.Trim(a.Value, 4)
			}
		}
		out = append(out, line)
	}
	return strings.Join(out, "\n")
}

// TestEdits: what an edit of a small job finds, and what lies just inside the bound of it.
// ISO 286-2: of 40 mm, k5 is 40.002 to 40.013 and m6 40.009 to 40.025, and between the
// ends of the classes that a seat is advised lies what its limits may be. The play of M10 in two
// holes of 11 is 1 mm, of which two fifths may be used up; a socket head of M6 is 10 wide
// (ISO 4762), and its hole of 6.6 leaves it 0.6.
func TestEdits(t *testing.T) {
	t.Parallel()
	const ring = "cut: saw}\noutline: {circle: 200}\nbore: {diameter: 130}\nholes:\n  - {name: bolts, circle: {pcd: "
	screws := func(more string) string { return "size: M6 clearance => size: M6 clearance, " + more }
	limits := func(text string) string {
		return "diameter: 40, fit: m6 => diameter: 40, fit: {limits: [" + text + "]}"
	}
	for _, c := range []struct {
		job, joint string
		edits      []string
		want       string // problems with these kinds, all of them; after "only " no others
	}{
		{"drive", "front-bearing", []string{"diameter: 80, fit: N7, => diameter: 80,"}, "seat-without-fit, Housing front cup, H7, H8, G7, J7, JS7, K7, stationary outer ring: H7 in one piece, H8 simple, G7 if heat comes through the shaft, J7, JS7 or K7 if the load's direction is not sure"},
		{"drive", "front-bearing", []string{limits("40.002, 40.025")}, "no seat-limits"},
		{"drive", "front-bearing", []string{limits("40.001, 40.025")}, "seat-limits, Shaft front seat, 40.001, 40.025, m5, m6, k5, k6, 40.002, 40.025"},
		{"drive", "front-bearing", []string{limits("40.002, 40.026")}, "seat-limits, Shaft front seat, 40.002, 40.026, m5, m6, k5, k6, 40.002, 40.025"},
		{"drive", "front-bearing", []string{"diameter: 40, fit: m6 => diameter: 41, fit: m6"}, "only bearing-bore, 40, Shaft front seat, 41"},
		{"drive", "front-bearing", []string{"diameter: 40, fit: m6 => diameter: 40.52, fit: m6"}, "only bearing-bore, 40, Shaft front seat, 40.52"},
		{"drive", "front-bearing", []string{"diameter: 40, fit: m6 => diameter: 40.0105, fit: m6"}, "bearing-size, 40, Shaft front seat, 40.0105"},
		{"drive", "front-bearing", []string{"diameter: 80, fit: N7, => diameter: 80.52, fit: N7,"}, "only bearing-outside, 80, Housing front cup, 80.52"},
		{"drive", "front-bearing", []string{"name: middle, diameter: 54 => name: middle, diameter: 68.9"}, "cup-shoulder-high, Housing front cup, 68.9, 69"},
		{"drive", "front-bearing", []string{"name: middle, diameter: 54 => name: middle, diameter: 69"}, "no cup-shoulder-high"},
		{"drive", "front-bearing", []string{"name: middle, diameter: 48 => name: middle, diameter: 49"}, "no cage-touches"},
		{"drive", "front-bearing", []string{"name: middle, diameter: 48 => name: middle, diameter: 49.1"}, "cage-touches, Shaft front seat, middle, 49.1, 49"},
		{"drive", "front-bearing", []string{"fit: m6, length: 19 => fit: m6, length: 15.8"}, "no seat-short"}, // 0.8 of 19.75
		{"drive", "front-bearing", []string{"fit: m6, length: 19 => fit: m6, length: 15.7"}, "seat-short, Shaft front seat, 15.7, 15.8"},
		{"drive", "cover", []string{screws("counterbore: {diameter: 10.5, depth: 3}")}, "counterbore-tight, 10.5, 10"},
		{"drive", "cover", []string{screws("counterbore: {diameter: 10.6, depth: 3}")}, "no counterbore-tight"},
		{"drive", "cover", []string{screws("counterbore: {diameter: 10.5, depth: 3}"), "head: socket => head: hex"}, "no counterbore-tight"},
		{"drive", "cover", []string{screws("face: back, counterbore: {diameter: 11, depth: 3}")}, "counterbore-wrong-side, Cover screws"},
		{"drive", "cover", []string{screws("countersink: {diameter: 12, angle: 90}")}, "countersunk, Cover screws, socket"},
		{"drive", "cover", []string{screws("depth: 8")}, "only not-through, Cover screws, 8, 12"},
		{"drive", "cover", []string{"name: taps, circle => name: taps, face: back, circle"}, "only opens-elsewhere, Housing taps, back, front"},
		{"drive", "sleeve", []string{"material: C45\ntop: keyway\nstock: {round: 110 => material: Wood\ntop: keyway\nstock: {round: 110"}, "only no-strength, Wheel, unknown material \"Wood\"; nearest: A513 1020 DOM, 1010 hot rolled, 1018 hot rolled"},
		{"drive", "sleeve", []string{"press: 20 t => press: 100 N", "bore: wheel.counter} => bore: wheel.counter, method: press}"}, "press-too-weak, 7796, 100, 220"},
		{"drive", "sleeve", []string{"bore: wheel.counter} => bore: wheel.counter, method: press}"}, "no press-too-weak"},
		{"drive", "base", []string{"M12 8.8 => M13 8.8"}, "only no-bolt, M13, \"M13\": not a diameter of ISO 261; nearest: M12, M14"},
		{"drive", "base", []string{"M12 8.8 => M12 9.7"}, "only no-torque, strength class \"9.7\" is not known: metric 4.6, 5.6, 5.8, 6.8, 8.8, 10.9, 12.9, A2-50, A2-70, A4-70, A4-80; inch grade 2, 5, 8, A574, F835"},
		{"wrong", "short-nut", []string{"pcd: 160.4 => pcd: 160.8"}, "no play-used"},
		{"wrong", "short-nut", []string{"pcd: 160.4 => pcd: 160.8246"}, "play-used, Lid bolts, 0.4123, Ring bolts, 1, holes"},
		{"wrong", "short-nut", []string{ring + "160 => " + ring + "162"}, "no stack-misses"},
		{"wrong", "short-nut", []string{ring + "160 => " + ring + "162.1"}, "only stack-misses, Spacer bolts, Lid bolts, holes"},
	} {
		got := problems(workedWith(t, c.job, c.edits...), c.joint)
		if only, alone := strings.CutPrefix(c.want, "only "); alone {
			if got != only {
				t.Errorf("%s, %q: found\n%s\nwant %s", c.job, c.edits, got, c.want)
			}
			continue
		}
		if kind, none := strings.CutPrefix(c.want, "no "); none && strings.Contains("\n"+got, "\n"+kind+",") || !none && !slices.Contains(strings.Split(got, "\n"), c.want) {
			t.Errorf("%s, %q: found\n%s\nwant %s", c.job, c.edits, got, c.want)
		}
	}
}
