package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/parts/golden"
)

// TestNotices: every module that is linked in has its licence in the file.
func TestNotices(t *testing.T) {
	t.Parallel()
	out, err := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Dir}}{{end}}{{end}}", ".").Output()
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(out)), "\n")
	slices.Sort(lines)
	lines = slices.DeleteFunc(slices.Compact(lines), func(l string) bool { return l == "" })
	if len(lines) < 5 {
		t.Fatalf("only %d modules", len(lines))
	}
	var b strings.Builder
	add := func(name, file string) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&b, "== %s\n\n%s\n\n", name, strings.TrimSpace(strings.ReplaceAll(string(text), "\r\n", "\n")))
	}
	b.WriteString("centrepop holds the following, each under its own licence.\n\n")
	add("The typeface DejaVu Sans Condensed", "../../templates/typeface/LICENSE.txt")
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	add("The Go library", filepath.Join(strings.TrimSpace(string(root)), "LICENSE"))
	for _, line := range lines {
		module, dir, _ := strings.Cut(line, " ")
		found := 0
		for _, pattern := range []string{"LICEN[CS]E*", "COPYING*", "NOTICE*"} {
			files, err := filepath.Glob(filepath.Join(dir, pattern))
			if err != nil {
				t.Fatal(err)
			}
			for _, file := range files {
				add(module, file)
				found++
			}
		}
		if found == 0 { // then the head of its source says what holds
			head := terms(t, dir)
			if head == "" {
				t.Errorf("%s has no licence in %s", module, dir)
			}
			fmt.Fprintf(&b, "== %s, by the head of its source\n\n%s\n\n", module, head)
		}
	}
	golden.Compare(t, "licences.txt", []byte(b.String()))
}

// terms is the comment at the head of a module's first source file that speaks
// of a licence.
func terms(t *testing.T, dir string) string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		head, _, _ := strings.Cut(string(text), "package ")
		if strings.Contains(strings.ToLower(head), "license") {
			return strings.TrimSpace(strings.ReplaceAll(head, "//", ""))
		}
	}
	return ""
}
