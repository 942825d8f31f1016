package review

import (
	"fmt"
	"strings"
	"testing"
)

// TestKeywayEnds: on a seat of 60 with a DIN 509-F undercut 2.5 wide beside its shoulder, keys 12 × 8
// of DIN 6885-1 are 28 to 140 long in the series ... 45, 50, 56, 63 ...; by hand.
func TestKeywayEnds(t *testing.T) {
	t.Parallel()
	const shaft = "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 65, length: 108, cut: saw}\nprofile:\n  outside:\n    - {name: seat, diameter: 40, fit: h6, length: 60%s}\n    - {name: land, diameter: 60, length: 40}\nkeyways:\n  - {name: key, in: seat, %s}\n"
	const relief = ", undercut: DIN 509-F"
	for _, c := range []struct{ undercut, key, want string }{
		{relief, "length: 45", ""},
		{relief, "length: 58", "runs through the undercut of seat; nearly runs out at the end of seat, 1 mm of metal left; no key with round ends is sold, 58 mm, the nearest is 56 mm"},
		{relief, "length: 59", "runs through the undercut of seat; nearly runs out at the end of seat, 0.5 mm of metal left; no key with round ends is sold, 59 mm, the nearest is 56 mm"},
		{relief, "length: 60", "runs through the undercut of seat"},
		{relief, "length: 50, axial: 27, from: front", ""},
		{relief, "length: 50, axial: 33, from: front", "runs through the undercut of seat, 2 mm before its shoulder"},
		{relief, "length: 50, axial: 32.5, from: front", ""},
		{relief, "length: 50, axial: 32.6, from: front", "runs through the undercut of seat, 2.4 mm before its shoulder"},
		{"", "length: 56", ""},
		{"", "length: 48", "no key with round ends is sold, 48 mm, the nearest is 50 mm"},
		{"", "length: 48, cutter: 63", ""},
		{"", "length: 60", ""},
	} {
		got := ""
		for _, f := range alone(t, "keyway", fmt.Sprintf(shaft, c.undercut, c.key)) {
			got += f.What + ", " + f.Numbers + "\n"
		}
		for _, want := range strings.Split(c.want, "; ") {
			if a, b, _ := strings.Cut(want, ", "); !strings.Contains(got, a) || !strings.Contains(got, b) {
				t.Errorf("%s: %q lacks %q", c.key, got, want)
			}
		}
		if n := strings.Count(got, "\n"); c.want == "" && n > 0 || c.want != "" && n != 1+strings.Count(c.want, "; ") {
			t.Errorf("%s: %d findings %q", c.key, n, got)
		}
	}
}
