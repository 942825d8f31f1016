package review

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/layouttest"
)

// findings are the findings under a code in a small job, what each says and its numbers.
func findings(t *testing.T, code string, files map[string]string) (out string) {
	t.Helper()
	for _, f := range reviewOf(t, files) {
		if f.Code == code {
			out += f.What + ": " + f.Numbers + "\n"
		}
	}
	return out
}

// TestCopedOver: an opening of 20 round and 30 along lies under a bar of 60 × 40 on a tube of 200 while it is nearer than
// 15 + 20 along the axis, and 10 + 30 round it, that is 22.9°.
func TestCopedOver(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		clock, axial float64
		want         string
	}{
		{90, 384.9, "369.9 mm to 399.9 mm"}, {90, 385.1, ""}, {90, 315.1, "300.1 mm to 330.1 mm"}, {90, 314.9, ""},
		{112.8, 350, "335 mm to 365 mm"}, {113, 350, ""}, {67.2, 350, "335 mm to 365 mm"}, {67, 350, ""},
	} {
		if c.want != "" {
			c.want = "port lies under stay: it runs from " + c.want + " from the front face, the bar from 330 mm to 370 mm\n"
		}
		got := findings(t, "covered", map[string]string{
			"job.yaml":  "job: J\nunits: mm\nparts: [drum.yaml, stay.yaml]\n",
			"stay.yaml": "part: stay\nkind: bar\nmaterial: S235\nbar: {rectangle: [60, 40], wall: 4, length: 400, right: {onto: drum.outside, place: {clock: 90, axial: 350}}}\n",
			"drum.yaml": fmt.Sprintf("part: drum\nkind: tube\nmaterial: S235\nstock: {tube: 200, wall: 6, length: 703}\ntube: {outside: 200, wall: 6, length: 700}\nradial: [{name: port, clock: %g, axial: %g, window: {around: 20, along: 30, corner: 3}}]\n", c.clock, c.axial),
		})
		if got != c.want {
			t.Errorf("%v: %q, want %q", c, got, c.want)
		}
	}
}

// TestMeetsRows: three threads M6 at 40 in a row behind a wall of 6 meet holes of 6.6 that are off by no more than their 0.6 of
// play and 0.25 beside, all on one clock angle. Screws of 20 reach 5.9 into them through a wall of 14.1, where one diameter is wanted, and through one
// of 9.9 meet the bottom of threads of 10.
func TestMeetsRows(t *testing.T) {
	t.Parallel()
	const off = "taps of wedge do not meet the holes in barrel: "
	for _, c := range []struct {
		third, clock float64
		wall, deep   string
		want         string
	}{
		{140, 0, "6", "through", ""}, {140.84, 0, "6", "through", ""}, {140.86, 0, "6", "through", off + "0.86 mm off, with 0.6 mm of play\n"}, {139.14, 0, "6", "through", off + "0.86 mm off, with 0.6 mm of play\n"},
		{140, 5, "6", "through", "three of barrel lies at another clock angle than one: taps of wedge are in one line: 5° and 0°\n"}, {141, 5, "6", "through", off + "40 mm off, with 0.6 mm of play\n"},
		{140, 0, "14", "through", ""}, {140, 0, "14.1", "through", "the screws bought for wedge hardly reach into it: 20 mm long, 14.1 mm of it in the wall of barrel\n"},
		{140, 0, "10", "10", ""}, {140, 0, "9.9", "10", "the screws bought for wedge meet the bottom of their holes: 20 mm long, 9.9 mm of it in the wall of barrel\n"},
	} {
		got := findings(t, "bought", map[string]string{
			"job.yaml":  "job: J\nunits: mm\nparts: [base.yaml, rib.yaml, barrel.yaml, wedge.yaml]\njoints:\n" + layouttest.RibWeld + ", place: {on: front, with: bottom, at: [0, 0], front: left}}\nloose: [{part: wedge, how: inside the barrel, buy: screws M6 x 20, count: 3, after: rib}]\n",
			"base.yaml": layouttest.BasePart, "rib.yaml": strings.Replace(layouttest.RibPart, "quantity: 2", "quantity: 1", 1),
			"wedge.yaml":  "part: wedge\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: saw}\noutline: {rectangle: [120, 30]}\nholes: [{name: taps, along: {from: left, first: 20, pitch: 40, count: 3}, size: M6 tap, depth: " + c.deep + "}]\n",
			"barrel.yaml": fmt.Sprintf("part: barrel\nkind: tube\nmaterial: S235\nstock: {tube: 200, wall: %[3]s, length: 303}\ntube: {outside: 200, wall: %[3]s, length: 300}\nradial:\n  - {name: one, clock: 0, axial: 60, size: 6.6}\n  - {name: two, clock: 0, axial: 100, size: 6.6}\n  - {name: three, clock: %[1]g, axial: %[2]g, size: 6.6}\n", c.clock, c.third, c.wall),
		})
		if got != c.want {
			t.Errorf("%v: %q", c, got)
		}
	}
}

// TestScrewsStand: the screws of a plate stand on the one that its words name, which lies under each of them and no more than 25
// below, or all on one thing where the words name no part of the job.
func TestScrewsStand(t *testing.T) {
	t.Parallel()
	const foot, floor = "The levelling screws stand on the foot plate.", "The levelling screws stand on the floor."
	const named, one = "screws in levelling of base do not stand on Foot plate as the words say: ", "screws in levelling of base do not all stand on one thing: "
	for _, c := range []struct{ wide, place, words, want string }{
		{"110", "at: [0, 0], gap: 0", foot, ""}, {"110", "at: [0, 0], gap: 25", foot, ""}, {"110", "at: [0, 0], gap: 25.1", foot, named + "hole 1 over nothing; " + foot}, {"90", "at: [0, 0], gap: 0", foot, named + "hole 1 over nothing; " + foot},
		{"110", "at: [10, 0], gap: 0", foot, named + "hole 2 over nothing; " + foot}, {"110", "at: [-10, 0], gap: 0", foot, named + "hole 1 over nothing; " + foot},
		{"110", "at: [0, 0], gap: 0", floor, ""}, {"90", "at: [0, 0], gap: 0", floor, ""}, {"110", "at: [10, 0], gap: 0", floor, one + "hole 1 over Foot plate, another over nothing; " + floor},
		{"90", "at: [0, 0], gap: 0", "The screws stand on the foot plate.", ""}, {"90", "at: [0, 0], gap: 0", "The levelling screws are in the foot plate.", ""},
	} {
		got := findings(t, "held", map[string]string{
			"job.yaml":  "job: J\nunits: mm\nparts: [base.yaml, foot.yaml]\njoints:\n  - {name: foot, weld: {part: foot.outline, to: base.outline, type: fillet, length: 40}, place: {on: back, with: back, top: up, " + c.place + "}}\n",
			"base.yaml": layouttest.BasePart + "holes: [{name: levelling, at: [[-50, 0], [50, 0]], size: M8 tap}]\nnotes: [\"" + c.words + "\"]\n",
			"foot.yaml": "part: foot\ntitle: Foot plate\nkind: plate\nmaterial: S235\nstock: {plate: 10}\noutline: {rectangle: [" + c.wide + ", 40]}\n",
		})
		if want := strings.TrimSuffix(c.want, "."); strings.TrimSpace(got) != want {
			t.Errorf("%v: %q", c, got)
		}
	}
}
