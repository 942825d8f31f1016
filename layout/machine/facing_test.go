package machine_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
)

// said are the problems of some kinds, in words.
func said(t *testing.T, files map[string]string, kinds ...plan.ProblemKind) string {
	t.Helper()
	return saidIn(t, t.TempDir(), files, kinds...)
}

// saidIn is said of a folder into which the files are put.
func saidIn(t *testing.T, dir string, files map[string]string, kinds ...plan.ProblemKind) string {
	t.Helper()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	m, _ := load(t, filepath.Join(dir, "job.yaml"))
	var out []string
	for _, p := range m.Problems {
		for _, k := range kinds {
			if p.Kind == k {
				out = append(out, words.Writer{Units: parts.Millimetres}.Says(p))
			}
		}
	}
	return strings.Join(out, "\n")
}

// Two plates are bolted face on face. What is beside the bolts goes on through both,
// ends in a thread, or is sunk on the side of its head; of one name it meets hole on hole.
func TestFacingHoles(t *testing.T) {
	t.Parallel()
	const (
		plate = "part: %s\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [200, %s]}\nholes:\n  - {name: bolts, at: [[-80, 0], [80, 0]], size: %s}\n"
		job   = "job: J\nunits: mm\nparts: [a.yaml, b.yaml]\njoints:\n  - name: j\n    bolt: {through: a.bolts, into: b.bolts, bolt: M8 8.8}\n    face: back-on-front\n"
	)
	for _, c := range []struct{ a, b, want string }{
		{"", "", ""},
		{"name: x, at: [[0, 0]], size: M8 clearance", "", "x of a are holes for screws in no joint, and b closes them"},
		{"name: x, at: [[0, 0]], size: M8 clearance, countersink: {diameter: 18, angle: 90}", "", "x of a are holes for screws in no joint, and b closes them"},
		{"name: x, face: back, at: [[0, 0]], size: M8 clearance, countersink: {diameter: 18, angle: 90}", "", ""},
		{"name: x, at: [[0, 0]], size: M8 tap", "", ""},
		{"name: x, face: back, at: [[0, 0]], size: M8 tap, depth: 6", "", "x of a are holes for screws in no joint, and b closes them"},
		{"name: x, face: front, at: [[0, 0]], size: M8 tap, depth: 6", "", ""},
		{"name: x, at: [[0, 0]], size: 9", "", ""},
		{"name: x, at: [[0, 0]], size: M8 clearance, depth: 5", "", ""},
		{"name: x, at: [[0, 0], [20, 70]], size: 9, depth: 5", "", ""},
		{"name: x, at: [[0, 0], [20, 0], [20, 70]], size: 9", "", "b closes 2 of the 3 x of a, which no joint uses"},
		{"name: x, at: [[0, 0]], size: M8 clearance", "name: y, at: [[0, 0]], size: 12", ""},
		{"name: x, at: [[20, 0]], size: M8 clearance", "name: y, at: [[21.7, 0]], size: 12", ""},
		{"name: x, at: [[20, 0]], size: M8 clearance", "name: y, at: [[21.8, 0]], size: 12", "x of a and y of b face one another and miss by up to 1.8"},
		{"name: x, at: [[20, 0]], size: 9", "name: y, at: [[30.4, 0]], size: 12", "x of a and y of b face one another and miss by up to 10.4"},
		{"name: x, at: [[20, 0]], size: 9", "name: y, at: [[30.6, 0]], size: 12", ""},
		{"name: x, at: [[20, 0]], size: 9", "name: x, at: [[30.6, 0]], size: 12", "x of a and x of b face one another and miss by up to 10.6"},
		{"name: x, at: [[20, 0], [-20, 0]], size: 9", "name: x, at: [[20, 0]], size: 9", ""},
		{"name: x, at: [[20, 0]], size: M8 tap", "name: x, at: [[30.6, 0]], size: M8 tap", ""},
		{"name: x, at: [[20, 0]], size: M8 tap", "name: x, at: [[30.6, 0]], size: 9", "x of a and x of b face one another and miss by up to 10.6"},
		{"name: x, at: [[20, 0]], size: 9, depth: 5", "name: x, at: [[30.6, 0]], size: 9", ""},
		{"name: x, face: back, at: [[-20, 0]], size: 9, depth: 5", "name: x, at: [[20, 0]], size: 9", ""},
	} {
		hole := func(h string) string {
			if h == "" {
				return ""
			}
			return "  - {" + h + "}\n"
		}
		files := map[string]string{"job.yaml": job, "a.yaml": fmt.Sprintf(plate, "a", "160", "M8 clearance") + hole(c.a), "b.yaml": fmt.Sprintf(plate, "b", "100", "M8 tap") + hole(c.b)}
		if got := said(t, files, plan.HoleDeadEnd, plan.HolesPartShut, plan.HolesUnmet); got != c.want {
			t.Errorf("%q on %q: %q, want %q", c.a, c.b, got, c.want)
		}
	}
}

// The auger's flight turns in a barrel of 159.3 inside: half a hundredth of its outside
// off it at the least, a tenth at the most, exactly by their radii.
func TestFlightInTube(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ outside, want string }{
		{"157.7", ""},
		{"157.8", "Auger flight turns 0.75 off the inside of Barrel tube: it rubs when it runs out of true"},
		{"132.8", ""},
		{"132.6", "Auger flight turns 13.35 off the inside of Barrel tube: most of its load stays lying there"},
	} {
		t.Run(c.outside, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			if err := os.CopyFS(dir, os.DirFS("../../testdata/pugmill")); err != nil {
				t.Fatal(err)
			}
			text, err := os.ReadFile(filepath.Join(dir, "auger-flight.yaml"))
			if err != nil {
				t.Fatal(err)
			}
			files := map[string]string{"auger-flight.yaml": strings.Replace(string(text), "outside: 151", "outside: "+c.outside, 1)}
			if got := saidIn(t, dir, files, plan.FlightTight, plan.FlightWide); got != c.want {
				t.Errorf("%q, want %q", got, c.want)
			}
		})
	}
}

// An upright of 100 stands on a plate of 120 and is welded along 100; where it reaches over
// the edge, or the weld is longer, less lies there than is to be welded. What it touches is
// counted once it is welded on, nothing that is bolted on, or comes later.
func TestSeamBeyond(t *testing.T) {
	t.Parallel()
	const (
		plate  = "part: %s\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [%s]}\n"
		job    = "job: J\nunits: mm\nparts: [a.yaml, b.yaml, c.yaml]\njoints:\n%s  - name: w\n    weld: {part: a.outline, to: b.outline, type: fillet, length: %s, sides: 2, process: MAG}\n    place: {on: front, with: bottom, from-left: 100, from-bottom: %s, front: left}\n%s"
		bolted = "  - {name: c, bolt: {through: c.h, into: b.h, bolt: M8 8.8}, face: back-on-front}\n"
		welded = "  - {name: c, weld: {part: c.outline, to: b.outline, type: fillet, length: 40}, place: {on: front, with: back, at: [30, 0], top: up}}\n"
	)
	for _, c := range []struct{ length, bottom, before, after, want string }{
		{"100", "10", bolted, "", ""},
		{"100", "20", bolted, "", ""},
		{"100", "21", bolted, "", ""},
		{"100", "22", welded, "", ""},
		{"100", "22", "", welded, "the weld is 100 long, and a lies on what it is welded to over 98"},
		{"100", "22", bolted, "", "the weld is 100 long, and a lies on what it is welded to over 98"},
		{"98", "22", bolted, "", ""},
		{"102", "10", bolted, "", "the weld is 102 long, and a lies on what it is welded to over 100"},
	} {
		files := map[string]string{"job.yaml": fmt.Sprintf(job, c.before, c.length, c.bottom, c.after), "a.yaml": fmt.Sprintf(plate, "a", "100, 80"),
			"b.yaml": fmt.Sprintf(plate, "b", "200, 120") + "holes: [{name: h, at: [[30, -15], [30, 15]], size: M8 tap}]\n",
			"c.yaml": fmt.Sprintf(plate, "c", "40, 60") + "holes: [{name: h, at: [[0, -15], [0, 15]], size: M8 clearance}]\n"}
		if got := said(t, files, plan.SeamBeyond); got != c.want {
			t.Errorf("%s from %s: %q, want %q", c.length, c.bottom, got, c.want)
		}
	}
}
