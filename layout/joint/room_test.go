package joint_test

import (
	"fmt"
	"strings"
	"testing"
)

// TestRoomOverHeads: what comes to lie over heads comes after them, up to the room that a spanner from the side, 25,
// or a key in line, 100, needs over them (common practice, no source): of M8 over 5.3 (ISO 4014) and 8 (ISO 4762).
func TestRoomOverHeads(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		head string
		gap  float64
		want bool
	}{{"", 30.2, true}, {"", 30.4, false}, {", head: socket", 107.9, true}, {", head: socket", 108.1, false}} {
		p, err := draft(jobOf(t, "{name: bolts, bolt: {through: a.h, into: b.h, bolt: M8 8.8"+c.head+"}, face: back-on-front}\n  - {name: cap, press: {shaft: b.post, bore: c.bore}, level: front-with-front}",
			fmt.Sprintf("part: b\nkind: turned\nmaterial: S235\nstock: {round: 160 mm, cut: saw}\nprofile:\n  outside: [{name: post, diameter: 40, fit: p6, length: %g}, {name: flange, diameter: 150, length: 30}]\nholes:\n  - {name: h, face: front, circle: {pcd: 110, count: 4}, size: M8 tap, depth: 20}\n", 20+c.gap),
			"part: a\nkind: turned\nmaterial: S235\nstock: {round: 160 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 150, length: 10}]\n  inside: [{name: hole, diameter: 41, length: 10}]\nholes:\n  - {name: h, face: front, circle: {pcd: 110, count: 4}, size: M8 clearance}\n",
			"part: c\nkind: turned\nmaterial: S235\nstock: {round: 160 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 150, length: 10}]\n  inside: [{name: bore, diameter: 40, fit: H7, length: 10}]\n"))
		if err != nil {
			t.Fatal(err)
		}
		why := fmt.Sprintf("%+v", jointNamed(t, p, "cap").Why)
		if got := strings.Contains(why, "covers the heads"); got != c.want {
			t.Errorf("%v: %s", c, why)
		}
	}
}
