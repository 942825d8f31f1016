package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// TestReadme makes the job of the README, reviews it and prints it, and works
// out its flange.
func TestReadme(t *testing.T) {
	t.Parallel()
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	names := map[string]string{"job": "job.yaml", "part": "cover.yaml", "flange": "motor.yaml"}
	for _, block := range regexp.MustCompile("(?s)```yaml\n(.*?)```").FindAllStringSubmatch(string(text), -1) {
		first, _, _ := strings.Cut(block[1], ":")
		if name := names[first]; name != "" {
			write(t, filepath.Join(folder, name), block[1])
			delete(names, first)
		}
	}
	if len(names) > 0 {
		t.Fatalf("the README lacks %v", names)
	}
	for _, c := range []struct{ args, want string }{
		{"review job.yaml", "0 to stop at"}, {"sheets job.yaml -o packet.pdf", "1 part\n"}, {"flange motor.yaml", "100"},
	} {
		out, errs, status := runIn(t, folder, "", strings.Fields(c.args)...)
		if status == statusBad || !strings.Contains(out, c.want) {
			t.Errorf("%s: status %d\n%s%s", c.args, status, errs, out)
		}
	}
	// Every command stands in the table.
	for _, name := range commandNames() {
		if !regexp.MustCompile("centrepop[^|\n]*\\b"+name+"\\b").Match(text) && !strings.Contains(string(text), "`"+name+"`") {
			t.Errorf("the README says nothing of %s", name)
		}
	}
}
