package read

import (
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// What no demonstration shows is what goes wrong unseen: each key of a job and its parts
// stands in one of the two, but for these, which their own tests show.
func TestDemosShowTheKeys(t *testing.T) {
	t.Parallel()
	elsewhere := []string{
		"against", "moving", // O-rings that seal on the round beside theirs, or slide
		"bushes", "hole", // a jig without bushes is the demonstration
		"bought", // the demonstrations buy nothing half finished
		"key",    // keyways of the demonstrations are those of their standard
		"channel", "open", "corners", "punch", "hardness", "other-way-round", "ratio", "square-up",
	}
	var text strings.Builder
	files, err := filepath.Glob("../../testdata/[pg]*/*.yaml")
	if err != nil || len(files) < 40 {
		t.Fatal(len(files), err)
	}
	for _, f := range files {
		src, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		text.Write(src)
	}
	shown := map[string]bool{}
	for _, m := range regexp.MustCompile(`(?m)(?:^|[ {-])([a-zA-Z-]+):`).FindAllStringSubmatch(regexp.MustCompile(`"[^"\n]*"`).ReplaceAllString(text.String(), ""), -1) {
		shown[m[1]] = true
	}
	missing := map[string]bool{}
	for _, g := range groupsFrom(jobGroup, partGroup) {
		for _, k := range g.Keys {
			if !shown[k.Name] {
				missing[k.Name] = true
			}
		}
	}
	for _, name := range slices.Sorted(maps.Keys(missing)) {
		if !slices.Contains(elsewhere, name) {
			t.Errorf("no demonstration shows %s", name)
		}
	}
	for _, name := range elsewhere {
		if shown[name] {
			t.Errorf("%s is shown: take it out of the list", name)
		}
	}
}
