package review

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/parts"
)

// seed is a fault put into a demo job: one text of one file replaced.
type seed struct{ job, file, from, to, code string }

func seeds(t *testing.T) []seed {
	t.Helper()
	text, err := os.ReadFile("testdata/seeded.txt")
	if err != nil {
		t.Fatal(err)
	}
	var out []seed
	for line := range strings.Lines(string(text)) {
		if line = strings.TrimSpace(line); line == "" || line[0] == '#' {
			continue
		}
		f := strings.Split(line, " | ")
		if len(f) != 5 {
			t.Fatalf("%q: want job, file, text, new text and code", line)
		}
		out = append(out, seed{f[0], f[1], f[2], f[3], f[4]})
	}
	return out
}

// load puts the fault into a copy of the demo.
func (s seed) load(t *testing.T) (*parts.Job, error) {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../../testdata/"+s.job)); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, s.file)
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(string(text), s.from); n != 1 {
		t.Fatalf("%s has %q %d times", s.file, s.from, n)
	}
	if err := os.WriteFile(path, []byte(strings.Replace(string(text), s.from, s.to, 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	return parts.Load(filepath.Join(dir, "job.yaml"))
}

// Every seeded fault is found under its code, and not as something the demo has
// anyway.
func TestSeededFaults(t *testing.T) {
	t.Parallel()
	clean := map[string][]string{}
	for _, job := range []string{"pugmill", "gatejack"} {
		j, err := parts.Load("../../testdata/" + job + "/job.yaml")
		if err != nil {
			t.Fatal(err)
		}
		found, _, err := Job(j)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range found {
			clean[job] = append(clean[job], f.Code+f.What+f.Numbers)
		}
	}
	for _, s := range seeds(t) {
		t.Run(s.job+"/"+s.file+"/"+s.to, func(t *testing.T) {
			t.Parallel()
			job, err := s.load(t)
			var found []Finding
			if err == nil {
				found, _, err = Job(job)
			}
			if s.code == "refused" {
				if err == nil {
					t.Error("not refused")
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			var others []string
			for _, f := range found {
				if slices.Contains(clean[s.job], f.Code+f.What+f.Numbers) {
					continue
				}
				if f.Code == s.code {
					return
				}
				others = append(others, string(f.Severity)+" "+f.Code+": "+f.What)
			}
			t.Errorf("no finding %s, only %q", s.code, others)
		})
	}
}
