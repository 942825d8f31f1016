package review

import (
	"strings"
	"testing"
)

// An overlap says what it comes from, where that is known: a nose wider than its bore,
// a frame whose corners and bolts disagree, with the lengths that do.
func TestWhyTheyOverlap(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		file, from, to string
		says           []string
		part           string
	}{
		{"lantern.yaml", "diameter: 158.5", "diameter: 160.5", []string{"Barrel tube, joined to Barrel flange 2, reaches 0.6 into Lantern, which is bolted to Barrel flange 2"}, "rear-flange"},
		{"stand-end.yaml", "length: 310", "length: 330", []string{"stand-corner-2 misses by 20 the place that", "base-far, base-near", "Stand rail 2 and Stand end 1 lie in one another", "Stand end 1 280 from stand-corner-1 to stand-corner-2; Base plate 260 from base-far to base-near"}, "stand-corner-2"},
		{"stand-rail.yaml", "first: 90", "first: 100", []string{"Stand rail 2 215 from stand-corner-2 to base-far; Stand rail 1 195 from stand-corner-1 to base-near"}, "stand-corner-2"},
	} {
		job, err := seed{"pugmill", c.file, c.from, c.to, ""}.load(t)
		if err != nil {
			t.Fatal(err)
		}
		found, _, err := reviewed(job)
		if err != nil {
			t.Fatal(err)
		}
		said := ""
		for _, f := range found {
			if f.Part == c.part && f.Severity == Stop {
				said += f.Code + ": " + f.What + " " + f.Fix
			}
			if f.Code == "place" {
				t.Errorf("said twice: %s", f.What)
			}
		}
		for _, want := range append(c.says, "overlap: ") {
			if strings.Count(said, want) != 1 {
				t.Errorf("%q is not once in %q", want, said)
			}
		}
	}
}
