package part

import (
	"fmt"
	"strings"
	"testing"
)

// A sheet that shows the back alone says of clock angles outside that they are seen from the front, but at TOP and opposite, where they are the
// same; one that shows the front, or both, does not. By geometry.
func TestClockSeenFromTheFront(t *testing.T) {
	t.Parallel()
	const part = "part: p\nkind: turned\nmaterial: S235\ntop: punch\nstock: {round: 95 mm, length: 50 mm, cut: saw}\nprofile:\n  outside: [{name: body, diameter: 90, length: 44}]\n  inside: [{name: bore, diameter: 40, length: 44}]\n" +
		"holes:\n  - {name: taps, face: %s, circle: {pcd: 65, count: 4}, size: M6 tap, depth: 12}\nflats:\n  - {name: push, in: body, across: 84, sides: 1, clock: %s, length: 20}\nradial:\n  - {name: oil, clock: %s, axial: 30, from: front, size: 6}\n"
	for _, c := range []struct {
		face, clock string
		times       int
	}{{"back", "90", 4}, {"back", "180", 0}, {"front", "90", 0}} {
		m := work(t, "mm", fmt.Sprintf(part, c.face, c.clock, c.clock))
		said := lines(m)
		for _, f := range m.Out.Features {
			said += f.Note + "\n"
		}
		if n := strings.Count(said, "lock "+c.clock+"° (seen from the front)"); n != c.times {
			t.Errorf("%+v: %d times in %s", c, n, said)
		}
	}
}
