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
		turned := said("part: p\nkind: turned\nmaterial: C45\nstock: {round: 50, length: 44}\nprofile: {outside: [{name: nose, thread: M30x1.5" + hand + ", length: 20, undercut: DIN 76-A}, {name: head, diameter: 45, length: 20}]}\n")
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

// TestThreadsEndAtMetal: a tool ends at a shoulder that has no undercut, and cannot begin there: towards the headstock a
// left-hand thread is cut in reverse, away from it a right-hand one; with the undercut, or nothing beside it, forward.
func TestThreadsEndAtMetal(t *testing.T) {
	t.Parallel()
	const (
		toTail = "from the headstock to the tailstock"
		toHead = "from the tailstock to the headstock"
		nose   = "outside: [{name: nose, thread: M30x1.5HAND, length: 20}, {name: head, diameter: 45, length: 20}]"
		free   = "outside: [{name: nose, thread: M30x1.5HAND, length: 20}, {name: neck, diameter: 20, length: 5}, {name: head, diameter: 45, length: 20}]"
		blind  = "outside: [{name: head, diameter: 70, length: 40}]\n  inside: [{name: nose, thread: M36x1.5HAND, length: 20}]"
		tail   = "one-setting: [nose, collar, seat]\n  outside: [{name: collar, diameter: 45, length: 10}, {name: nose, thread: M30x1.5HAND, length: 20}, {name: seat, diameter: 20, length: 30}]"
	)
	for _, c := range []struct{ profile, hand, way, turns string }{
		{nose, " LH", toHead, "in reverse"},
		{free, " LH", toTail, "forward"},
		{blind, " LH", toHead, "in reverse"},
		{nose, "", "", ""},
		{blind, "", "", ""},
		{tail, "", "", ""},
		{tail, " LH", toHead, "in reverse"},
		{strings.Replace(tail, "collar, seat]", "collar]", 1), "", "", ""},
	} {
		text := strings.ReplaceAll(c.profile, "HAND", c.hand)
		got := lines(work(t, "mm", "part: p\nkind: turned\nmaterial: C45\nstock: {round: 80, length: 70}\nprofile:\n  "+text+"\n"))
		if (c.way == "") == strings.Contains(got, "the lathe runs") || !strings.Contains(got, c.way) || !strings.Contains(got, c.turns) {
			t.Errorf("%s: not %q %q in\n%s", text, c.turns, c.way, got)
		}
	}
}
