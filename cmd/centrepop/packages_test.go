package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// Every package that can be imported has a comment that says what it is for and an
// example that runs: one with the output it must have.
func TestPackagesSayWhatTheyAre(t *testing.T) {
	t.Parallel()
	runs := regexp.MustCompile(`(?s)\nfunc Example\w*\(\) \{.*\n\t// (Unordered o|O)utput:`)
	type found struct{ comment, example bool }
	packages := map[string]*found{}
	for _, root := range []string{"layout", "parts", "render", "templates"} {
		err := filepath.WalkDir(filepath.Join("../..", root), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || filepath.Ext(path) != ".go" {
				return err
			}
			text, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			dir := filepath.Dir(path)
			if packages[dir] == nil {
				packages[dir] = &found{}
			}
			if strings.HasSuffix(path, "_test.go") {
				packages[dir].example = packages[dir].example || runs.Match(text)
			} else {
				packages[dir].comment = packages[dir].comment || strings.HasPrefix(string(text), "// Package "+filepath.Base(dir)+" ")
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if len(packages) < 40 {
		t.Errorf("only %d packages found", len(packages))
	}
	for dir, p := range packages {
		if !p.comment || !p.example {
			t.Errorf("%s: comment %v, example with its output %v", dir, p.comment, p.example)
		}
	}
}
