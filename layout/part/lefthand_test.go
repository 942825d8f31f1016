package part

import (
	"strings"
	"testing"
)

// A left-hand thread is cut from the headstock to the tailstock, outside and inside, and tapped by a tap of its own; the
// right-hand one of the same size is not.
func TestLeftHandThreads(t *testing.T) {
	t.Parallel()
	for _, hand := range []string{"", " LH"} {
		said := func(text string) string {
			var do []string
			for _, o := range work(t, "mm", text).Out.Operations {
				do = append(do, o.Do...)
			}
			return strings.Join(do, "\n")
		}
		turned := said("part: p\nkind: turned\nmaterial: C45\nstock: {round: 50, length: 44}\nprofile: {outside: [{name: nose, thread: M30x1.5" + hand + ", length: 20}, {name: head, diameter: 45, length: 20}]}\n")
		plate := said("part: p\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: saw}\noutline: {square: 100}\nholes: [{name: h, at: [[0, 0]], size: M12" + hand + " tap}]\n")
		for text, want := range map[string]bool{"LEFT HAND: the lathe runs forward": true, "M30x1.5 LH": true} {
			if got := strings.Contains(turned, text); got != (want && hand != "") {
				t.Errorf("%q, %s: %v in %s", hand, text, got, turned)
			}
		}
		if got := strings.Contains(plate, "Tap M12 LH, left-hand tap, by hand"); got != (hand != "") || hand == "" && !strings.Contains(plate, "Tap M12 by hand") {
			t.Errorf("%q: %s", hand, plate)
		}
	}
}
