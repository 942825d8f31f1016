package layout

import (
	"errors"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// TestOnMetal: the outside of G2 is 59.614 mm (ISO 228-1), which the reader
// does not know.
func TestOnMetal(t *testing.T) {
	t.Parallel()
	turned := func(inside, holes string) string {
		return "part: plug\nkind: bearing-housing\nprofile:\n  outside: [{name: nose, thread: G2, length: 30}]\n" + inside +
			"holes:\n  - {name: pins, " + holes + ", size: 4}\n"
	}
	const bore = "  inside: [{name: bore, thread: G1, length: 30}]\n" // 33.249 mm
	for _, c := range []struct{ part, where string }{
		{turned("", "circle: {pcd: 58, count: 3}"), ""},
		{turned("", "circle: {pcd: 60, count: 3}"), "p0.yaml:6:32"},
		{turned("", "face: back, at: [[0, 10], [29.9, 0]]"), "p0.yaml:6:44"},
		{turned(bore, "circle: {pcd: 34, count: 3}"), ""},
		{turned(bore, "circle: {pcd: 32, count: 3}"), "p0.yaml:7:32"},
		{turned("  inside: [{name: bore, thread: G1, length: 20}]\n", "face: back, circle: {pcd: 32, count: 3}"), ""}, // blind
	} {
		_, err := job(t, "units: mm", c.part)
		var faults parts.Errors
		if errors.As(err, &faults); (c.where == "") != (err == nil) {
			t.Errorf("%s: %v", c.part, err)
			continue
		}
		for _, f := range faults {
			if !strings.HasPrefix(f.Error(), c.where+": the place at x ") || !strings.Contains(f.What, "no metal under it") {
				t.Errorf("%v, want %s", f, c.where)
			}
		}
	}
}

// TestPatternWords: every pattern there is has words of its own, but for
// listed points, which the hole table shows.
func TestPatternWords(t *testing.T) {
	t.Parallel()
	want := []string{
		"PCD 100, hole 1 at 30°, front face", "PCD 100, hole 1 at 30°, front face", "PCD 100, hole 1 at 0°, front face",
		"3 × 2 at 40 × 30, front face", "3 × 3 at 40 × 30, every second row one less and half a pitch in, front face", "see the hole table, front face",
	}
	if len(want) != len(geom.Patterns) {
		t.Fatalf("%d patterns, words for %d", len(geom.Patterns), len(want))
	}
	r := &resolver{w: words.Writer{Units: parts.Millimetres}}
	for i, p := range geom.Patterns {
		m := &madeGroup{
			hole: &parts.HoleGroup{Pattern: parts.Pattern{Shape: p, PCD: parts.Length{Mm: 100}}}, group: &plan.Group{First: 1}, face: parts.Front,
			pts: p.Places(geom.Box{}),
		}
		if got := r.patternWords(m); got != want[i] {
			t.Errorf("%T: %s, want %s", p, got, want[i])
		}
	}
}
