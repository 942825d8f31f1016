package review

import (
	"strings"
	"testing"
)

// TestNips: two rolls of 120, 1 apart on a plate, in the open and in a drum with a lid, whose bore lets a hand through where it is
// 30 or wider, and not where it is 19: the lid ends 133 before the plate, the middle of the rolls lies 44 before it, and the place outside is the next by tens. Farther apart
// than 25 they are no nip (ISO 13854 table 1, from memory).
func TestNips(t *testing.T) {
	t.Parallel()
	const says = "a hand gets to where roll 1 and roll 2 run together, "
	const open = says + "from the side past bad plate: 73 mm from outside, wanted 850 mm"
	const above = says + "from above past lid: 100 mm from outside, wanted 850 mm"
	lid := func(more string) []string {
		return []string{"bad-plate.yaml]", "bad-plate.yaml, drum.yaml, lid.yaml]", "motor: {", "loose:\n  - {part: drum, how: laid over the rolls, after: near-2, lies: [{on: bad-plate.front, with: back, at: [0, 0]}]}\n" +
			"  - {part: lid, how: laid on the drum, after: near-2, lies: [{on: drum.front, with: back, at: [0, 0]}]}\nmotor: {", "{circle: 360}", "{circle: 360}" + more}
	}
	for _, c := range []struct {
		edit []string
		want string
	}{
		{nil, open},
		{[]string{"-60.5, 0", "-70, 0"}, open},
		{[]string{"-60.5, 0", "-85, 0"}, ""},
		{lid(""), ""},
		{lid("\nbore: {diameter: 30}"), above},
		{lid("\nbore: {diameter: 19}"), ""},
	} {
		got := caseSays(t, "guard.nip", "guard", strings.NewReplacer(c.edit...), nil)
		var nips []string
		for _, f := range strings.Split(got, "; ") {
			if strings.Contains(f, "run together") {
				nips = append(nips, f)
			}
		}
		if got := strings.Join(nips, "; "); got != c.want {
			t.Errorf("%q: %q, want %q", c.edit, got, c.want)
		}
	}
}
