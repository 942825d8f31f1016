package part_test

import (
	"errors"
	"strings"
	"testing"

	"centrepop/parts"
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
	for _, c := range []struct{ pt, where string }{
		{turned("", "circle: {pcd: 58, count: 3}"), ""},
		{turned("", "circle: {pcd: 60, count: 3}"), "p0.yaml:6:32"},
		{turned("", "face: back, at: [[0, 10], [29.9, 0]]"), "p0.yaml:6:44"},
		{turned(bore, "circle: {pcd: 34, count: 3}"), ""},
		{turned(bore, "circle: {pcd: 32, count: 3}"), "p0.yaml:7:32"},
		{turned("  inside: [{name: bore, thread: G1, length: 20}]\n", "face: back, circle: {pcd: 32, count: 3}"), ""}, // blind
	} {
		_, err := job(t, "units: mm", c.pt)
		var faults parts.Errors
		if errors.As(err, &faults); (c.where == "") != (err == nil) {
			t.Errorf("%s: %v", c.pt, err)
			continue
		}
		for _, f := range faults {
			if !strings.HasPrefix(f.Error(), c.where+": the place at x ") || !strings.Contains(f.What, "no metal under it") {
				t.Errorf("%v, want %s", f, c.where)
			}
		}
	}
}
