package changes

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/parts/read"
)

const base = "testdata/base"

// edited loads the base job with some edits: file, old and new text, in threes.
func edited(t *testing.T, edits ...string) *parts.Job {
	t.Helper()
	dir := t.TempDir()
	files, err := filepath.Glob(filepath.Join(base, "*.yaml"))
	if err != nil || len(files) < 5 {
		t.Fatalf("found %d files: %v", len(files), err)
	}
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		text := string(src)
		for i := 0; i+2 < len(edits); i += 3 {
			if edits[i] != filepath.Base(file) {
				continue
			}
			if strings.Count(text, edits[i+1]) != 1 {
				t.Fatalf("%s has %q not once", file, edits[i+1])
			}
			text = strings.Replace(text, edits[i+1], edits[i+2], 1)
		}
		if err := os.WriteFile(filepath.Join(dir, filepath.Base(file)), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	job, err := read.Load(filepath.Join(dir, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	return job
}

func compare(t *testing.T, was, is *parts.Job) *Report {
	t.Helper()
	r, err := Compare(was, is)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// of are the lines of the report on a part or joint, its head first.
func of(r *Report, name string) []string {
	var out []string
	for _, line := range r.Lines() {
		switch {
		case strings.HasPrefix(line, "  "+name+",") || strings.HasPrefix(line, "  "+name+":") || line == "  "+name:
			out = []string{strings.TrimSpace(line)}
		case len(out) > 0 && strings.HasPrefix(line, "    "):
			out = append(out, strings.TrimSpace(line))
		case len(out) > 0:
			return out
		}
	}
	return out
}

// TestUnchanged: nothing differs from itself, and nothing is to be printed.
func TestUnchanged(t *testing.T) {
	t.Parallel()
	r := compare(t, edited(t), edited(t))
	if r.Differs() || len(r.Print)+len(r.Discard) > 0 || !slices.Equal(r.Lines(), []string{"nothing has changed"}) {
		t.Errorf("%+v", r)
	}
	for _, demo := range []string{"pugmill", "gatejack"} {
		job, err := read.Load(filepath.Join("../../testdata", demo, "job.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		if r := compare(t, job, job); r.Differs() {
			t.Errorf("%s: %q", demo, r.Lines())
		}
	}
}

// TestEdits makes one edit at a time and compares both ways. What is recorded
// follows from where metal is, and was read case by case.
func TestEdits(t *testing.T) {
	t.Parallel()
	var got strings.Builder
	for _, c := range editCases {
		plain, other := edited(t), edited(t, c[0]+".yaml", c[1], c[2])
		there, back := compare(t, plain, other), compare(t, other, plain)
		fmt.Fprintf(&got, "%s: %s => %s\n\t%s\nback\n\t%s\n\n", c[0], c[1], c[2], strings.Join(of(there, c[0]), "\n\t"), strings.Join(of(back, c[0]), "\n\t"))
		for _, r := range []*Report{there, back} {
			if !slices.Contains(r.Print, c[0]) || !slices.Contains(r.Discard, c[0]) || !slices.Contains(r.Print, "cover") {
				t.Errorf("%s: to print %q, to throw away %q", c, r.Print, r.Discard)
			}
		}
	}
	golden.Compare(t, "testdata/edits.txt", []byte(got.String()))
}

// TestWhole compares jobs as wholes: parts, joints, order, acceptances, sheets.
func TestWhole(t *testing.T) {
	t.Parallel()
	var got strings.Builder
	for _, c := range wholeCases {
		plain, other := edited(t), edited(t, c.edits...)
		fmt.Fprintf(&got, "%s\n\t%s\nback\n\t%s\n\n", c.name, strings.Join(compare(t, plain, other).Lines(), "\n\t"), strings.Join(compare(t, other, plain).Lines(), "\n\t"))
	}
	golden.Compare(t, "testdata/whole.txt", []byte(got.String()))
}

// A groove that is drawn no longer may stay in what is made: whether it weakens that is decided by hand. One that is new is turned.
func TestGrooveNoLonger(t *testing.T) {
	t.Parallel()
	bare, grooved := edited(t), edited(t, "spindle.yaml", "radial:", "grooves: [{name: relief, in: body, axial: 135, from: front, for: relief, width: 3, depth: 1}]\nradial:")
	for _, c := range []struct {
		was, is *parts.Job
		want    string
	}{{grooved, bare, "decide by hand"}, {bare, grooved, "rework"}} {
		if lines := of(compare(t, c.was, c.is), "spindle"); !strings.HasPrefix(lines[0], "spindle, already made: "+c.want) || !strings.Contains(strings.Join(lines, "\n"), "relief: ") {
			t.Errorf("%q, want %s", lines, c.want)
		}
	}
}

// TestFaceTakenOff: 5 mm off the front, and what is measured from there comes 5 nearer
// to it: it stays where it is in the metal, so nothing is said of it, and the part is
// turned down. So does a groove. With a keyway that moves by one more, or stays as far from its new face,
// no way to lay them together saves it.
func TestFaceTakenOff(t *testing.T) {
	t.Parallel()
	const groove = "grooves: [{name: relief, in: body, axial: %d, from: front, for: relief, width: 3, depth: 1}]\nradial:"
	front := []string{"spindle.yaml", "axial: 110, from: back", "axial: 90, from: front", "spindle.yaml", "axial: 80, from: back", "axial: 120, from: front", "spindle.yaml", "radial:", fmt.Sprintf(groove, 135)}
	for axial, want := range map[string]string{"85": "rework", "86": "scrap", "90": "scrap"} {
		now := []string{"spindle.yaml", "axial: 110, from: back", "axial: " + axial + ", from: front", "spindle.yaml", "axial: 80, from: back", "axial: 115, from: front", "spindle.yaml", "fit: k6, length: 40", "fit: k6, length: 35", "spindle.yaml", "radial:", fmt.Sprintf(groove, 130)}
		lines := of(compare(t, edited(t, front...), edited(t, now...)), "spindle")
		text := strings.Join(lines, "\n")
		if !strings.HasPrefix(lines[0], "spindle, already made: "+want) || want == "rework" && (strings.Contains(text, "keyway") || strings.Contains(text, "oil") || strings.Contains(text, "relief")) {
			t.Errorf("keyway at %s: %s", axial, text)
		}
	}
}
