package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/parts/golden"
)

// TestHostileFiles runs every case of the tables through the program. Each
// must give a report that points into the input, and no output. Its first
// line must be the wanted one, which leaves out the name of the file it is
// about where that is the input itself.
func TestHostileFiles(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("testdata/hostile")); err != nil {
		t.Fatal(err)
	}
	seen := map[string]string{}
	for file, cases := range golden.Cases(t, "testdata/hostile") {
		lines := strings.Split(fileText(t, file), "\n")
		for _, c := range cases {
			if seen[c.Name] != "" {
				t.Errorf("%s is in %s and %s", c.Name, seen[c.Name], file)
			}
			seen[c.Name] = file
			t.Run(c.Name, func(t *testing.T) {
				first := hostileReport(t, c, dir)
				if first != c.Want && !golden.Update() {
					t.Errorf("%s:%d\nwant %s\ngot  %s", file, c.Line+1, c.Want, first)
				}
				lines[c.Line] = strings.TrimSuffix(lines[c.Line], c.Want) + first
			})
		}
		if golden.Update() {
			golden.Compare(t, file, []byte(strings.Join(lines, "\n")))
		}
	}
	kept, _ := filepath.Glob("testdata/hostile/files/*.yaml")
	for _, file := range kept {
		if name := strings.TrimSuffix(filepath.Base(file), ".yaml"); seen[name] == "" {
			t.Errorf("%s is in no table", file)
		}
	}
}

// hostileReport runs the case in a copy of testdata/hostile, checks the
// report and returns its first line.
func hostileReport(t *testing.T, h golden.Case, dir string) string {
	t.Helper()
	file := h.Name + ".yaml"
	path := filepath.Join(dir, file)
	write(t, path, h.Text)
	defer os.Remove(path)
	job := path
	if !h.IsJob() {
		job = filepath.Join(dir, "job.yaml")
		write(t, job, "job: Hostile\nunits: mm\nparts: ["+file+"]\n")
	}
	text := refused(t, job)
	checkReport(t, dir, text)
	first, _, _ := strings.Cut(text, "\n")
	return strings.TrimPrefix(first, file+":")
}
