package part

import (
	"strings"
	"testing"
)

// Two holes of one row take the screws of one part, so their pitch may be off by half the play of these: a hole of
// 5.5 on M5 (ISO 273 medium) plays 0.5, so 0.25, where two places of ±0.3 and ±0.3 (ISO 2768-m) leave 0.6. Taps for them are held
// to the same. On M10 in 11 it is the general ±0.3 of 38 that
// the places, ±0.3 and ±0.5, leave. Places that leave less need no pitch; holes of two threads, or on two lines, have none.
func TestPitchFitsThePlay(t *testing.T) {
	t.Parallel()
	tube := func(one, other string) string {
		return "part: p\nkind: turned\nmaterial: S235\nstock: {round: 70 mm}\nprofile:\n  outside: [{name: body, diameter: 60, length: 200}]\n  inside: [{name: bore, diameter: 40, length: 200}]\nradial:\n  - {name: one, " + one + ", from: front, depth: through}\n  - {name: other, " + other + ", from: front, depth: through}\n"
	}
	bar := func(holes string) string {
		return "part: p\nkind: bar\nmaterial: S235\nbar: {flat: [30, 10], length: 200}\nholes:\n  - {name: screws, on: top, along: {from: left, " + holes + "}\n"
	}
	for name, c := range map[string]struct{ text, what, limits string }{
		"clearance":   {tube("clock: 0, axial: 100, size: M5 clearance", "clock: 0, axial: 138, size: M5 clearance"), "one to other, centre to centre", "37.75 – 38.25"},
		"taps":        {tube("clock: 0, axial: 100, size: M5 tap", "clock: 0, axial: 138, size: M5 tap"), "one to other, centre to centre", "37.75 – 38.25"},
		"much":        {tube("clock: 0, axial: 120, size: M10 clearance", "clock: 0, axial: 158, size: M10 clearance"), "one to other, centre to centre", "37.7 – 38.3"},
		"fitted":      {tube("clock: 0, axial: 100, size: M5 tap, fitted: set screw M5 x 8", "clock: 0, axial: 138, size: M5 tap, fitted: set screw M5 x 8"), "", ""},
		"two lines":   {tube("clock: 0, axial: 100, size: M5 clearance", "clock: 90, axial: 138, size: M5 clearance"), "", ""},
		"two threads": {tube("clock: 0, axial: 100, size: M5 clearance", "clock: 0, axial: 138, size: M6 clearance"), "", ""},
		"much play":   {tube("clock: 0, axial: 60, size: M16 clearance", "clock: 0, axial: 98, size: M16 clearance"), "", ""},
		"a bar":       {bar("first: 40, pitch: 100, count: 2}, size: M5 tap"), "screws 1 to 2, centre to centre", "99.75 – 100.25"},
		"across it":   {"part: p\nkind: bar\nmaterial: S235\nbar: {square: 60, wall: 4, length: 400}\nholes: [{name: seat, at: [[0, -15], [0, 15]], size: M6 tap}]\n", "seat 1 to 2, centre to centre", "29.8 – 30.2"},
	} {
		m := work(t, "mm", c.text)
		got := ""
		for _, k := range m.Out.Checks {
			if strings.HasSuffix(k.What, "centre to centre") {
				got += k.What + " " + k.Limits
			}
		}
		if got != strings.TrimSpace(c.what+" "+c.limits) {
			t.Errorf("%s: %q, want %q", name, got, c.what+" "+c.limits)
		}
		if name == "clearance" {
			var do []string
			for _, o := range m.Out.Operations {
				do = append(do, o.Do...)
			}
			if all := strings.Join(do, " "); !strings.Contains(all, "38 from the centre of one, 37.75 – 38.25: the two take the screws of one part.") {
				t.Error(all)
			}
		}
	}
}
