package machine_test

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/machine"
	"centrepop/layout/threads"
)

// A lid of 8 with a hole of 6.6, counterbored by 3, lies on a base with threads M6, so far off it: one of 20 through at the middle,
// one 12 deep at 50, M8 at 100, and one that screws have at 150. The play of 0.6 and 0.25 beside are no more than it may be off, the gap less than the
// screws are long. A hole that meets none is said with the nearest before it in what it lies on. From the face that lies on the base the grip is all of 8. On edge beside a post of 40 across it looks at a
// thread 9 deep at 40 over the base, which may lean by 1°: at 0.9° that lies 20 sin 0.9° = 0.3141 beside and 20 (1 − cos 0.9°) = 0.002467 beyond.
func TestScrewings(t *testing.T) {
	t.Parallel()
	m6, err := threads.Parse("M6")
	if err != nil {
		t.Fatal(err)
	}
	const flat, upright = "with: back, top: up, at: ", "with: bottom, front: right, at: "
	for _, c := range []struct{ lies, hole, want string }{
		{flat + "[0, 0]", "", "hole base taps meets true, 0 beside, 0 off, grip 5 in 20, blind false"},
		{flat + "[0, 0]", "face: back, ", "hole base taps meets true, 0 beside, 0 off, grip 8 in 20, blind false"},
		{flat + "[0.84, 0], gap: 2.5", "", "hole base taps meets true, 0.84 beside, 2.5 off, grip 7.5 in 20, blind false"},
		{flat + "[0, 0.86], gap: 2.5", "", "hole base taps meets false, 0.86 beside, 2.5 off, grip 7.5 in 20, blind false"},
		{flat + "[50, 0], gap: 19.9", "", "hole base blind meets true, 0 beside, 19.9 off, grip 24.9 in 12, blind true"},
		{flat + "[50, 0], gap: 20", "", "hole base blind meets false, 0 beside, 20 off, grip 25 in 12, blind true"},
		{flat + "[50, 0], gap: -0.4", "", "hole base blind meets true, 0 beside, -0.4 off, grip 4.6 in 12, blind true"},
		{flat + "[50, 0], gap: -0.6", "", "hole   meets false, 0 beside, 0 off, grip 0 in 0, blind false"},
		{flat + "[100, 0]", "", "hole base blind meets false, 50 beside, 0 off, grip 5 in 12, blind true"},
		{flat + "[24, 0]", "", "hole base taps meets false, 24 beside, 0 off, grip 5 in 20, blind false"},
		{flat + "[26, 0]", "", "hole base blind meets false, 24 beside, 0 off, grip 5 in 12, blind true"},
		{upright + "[-122, 0]", "clock: 90", "hole post radial meets true, 0 beside, 0 off, grip 5 in 9, blind true"},
		{upright + "[-122, 0]", "clock: 90.9", "hole post radial meets true, 0.3141 beside, 0.002467 off, grip 5.002 in 9, blind true"},
		{upright + "[-122, 0]", "clock: 91.1", "hole   meets false, 0 beside, 0 off, grip 0 in 0, blind false"},
		{upright + "[-122, 0]", "clock: 90, through", "hole post radial meets true, 0 beside, 0 off, grip 5 in 40, blind false"},
	} {
		clock, onPost := strings.CutPrefix(c.hole, "clock: ")
		deep := "depth: 9"
		if through := strings.TrimSuffix(clock, ", through"); through != clock {
			clock, deep = through, "depth: through"
		}
		if !onPost {
			clock = "0"
		} else {
			c.hole = ""
		}
		m, _ := load(t, write(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\nparts: [base.yaml, post.yaml, lid.yaml, bracket.yaml]\njoints:\n  - {name: post, weld: {part: post.outside, to: base.outline, type: fillet, size: 4}, place: {on: front, with: back, at: [-150, 0], top: up}}\n" +
				"  - {name: bracket, bolt: {through: bracket.bolts, into: base.used, bolt: M6 8.8}, face: back-on-front}\n" +
				"loose:\n  - {part: lid, how: screwed on, after: post, lies: [{on: base.front, " + c.lies + "}]}\n",
			"base.yaml":    basePart + "holes:\n  - {name: taps, at: [[0, 0]], size: M6 tap}\n  - {name: blind, at: [[50, 0]], size: M6 tap, depth: 12}\n  - {name: coarse, at: [[100, 0]], size: M8 tap}\n  - {name: used, at: [[100, 40], [120, 40]], size: M6 tap}\n",
			"post.yaml":    "part: post\nkind: turned\nmaterial: S235\nstock: {round: 45, length: 70}\nprofile:\n  outside: [{name: outside, diameter: 40, length: 60}]\nradial:\n  - {name: radial, clock: " + clock + ", axial: 20, size: M6 tap, " + deep + "}\n",
			"lid.yaml":     "part: lid\nkind: plate\nmaterial: S235\nstock: {plate: 8}\noutline: {rectangle: [60, 80]}\nholes:\n  - {name: hole, at: [[0, 0]], " + c.hole + "size: 6.6, counterbore: {diameter: 12, depth: 3}}\n  - {name: wide, at: [[20, 0]], size: 9}\n",
			"bracket.yaml": "part: bracket\nkind: plate\nmaterial: S235\nstock: {plate: 8}\noutline: {square: 60}\nholes: [{name: bolts, at: [[0, 0], [20, 0]], size: M6 clearance}]\n",
		}))
		got := ""
		for _, s := range m.Screwings("lid", machine.Screws{Thread: m6, LongMm: 20, Passes: func(mm float64) bool { return mm > 6 && mm < 7 }}) {
			got += fmt.Sprintf("%s %s %s meets %v, %.4g beside, %.4g off, grip %.4g in %.4g, blind %v", s.Group, s.On, s.Thread, s.Meets, s.OffMm, s.GapMm+0, s.GripMm, s.DeepMm, s.Blind)
		}
		if got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.lies, c.hole, got, c.want)
		}
	}
}
