package main

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// metric is a length or a mass in metric units.
var metric = regexp.MustCompile(`\b(mm|kg)\b`)

// retainer is a retaining ring of a metric standard, as it is sold.
var retainer = regexp.MustCompile(`DIN 471 [0-9]+ × [0-9.]+ mm`)

// A job in inches is answered in inches and pounds, one in millimetres in those: places of
// holes, chords, pop marks, cut lengths and masses.
func TestAnswersInJobUnits(t *testing.T) {
	t.Parallel()
	out := filepath.Join(t.TempDir(), "p.svg")
	for _, args := range [][]string{{"explain", "job.yaml"}, {"profile", "job.yaml", "yoke-plate", "-o", out}} {
		text, errs, status := runIn(t, "../../testdata/gatejack", "", args...)
		if status != statusDone {
			t.Fatalf("%q: status %d: %s", args, status, errs)
		}
		for _, line := range strings.Split(text, "\n") {
			if metric.MatchString(retainer.ReplaceAllString(line, "")) && !strings.HasPrefix(line, "wrote ") {
				t.Errorf("%q: %s", args, line)
			}
		}
	}
	jack, _, _ := runIn(t, "../../testdata/gatejack", "", "explain", "job.yaml", "yoke-plate")
	mill, _, _ := runIn(t, "../../testdata/pugmill", "", "explain", "job.yaml", "barrel-flange")
	cut, _, _ := runIn(t, "../../testdata/gatejack", "", "profile", "job.yaml", "yoke-plate", "-o", out)
	for _, c := range []struct{ in, want string }{
		// Ø5.5 in circle of four at 45°: 2.75 sin 45° = 1.9445, the plate 16 × 10.5.
		{jack, "in inches) 1 pedestal 45.000 1.9445 1.9445 9.9445 7.1945 2 "},
		// Ø220 circle of six, drilled Ø11: 110 cos 30° = 95.263; chords 110 and 220 less and with Ø11.
		{mill, "in mm) 1 bolts 30.000 55.000 95.263 185.000 225.263 2 "},
		{mill, " bolts 1–2: 110.000 centres, 121.000 over, 99.000 between Ø11 bolts 1–4: 220.000 centres, 231.000 over, 209.000 between Ø11 "},
		// π × 1.5 and 16 + 16 + 10.5 + 10.5 less the corners' rounds.
		{cut, " 4.71 in 2 "},
		{cut, "x, y in inches from the part's origin"},
		{cut, " lb as cut, "},
	} {
		if !strings.Contains(strings.Join(strings.Fields(c.in), " "), c.want) {
			t.Errorf("no %q in\n%.2000s", c.want, c.in)
		}
	}
}
