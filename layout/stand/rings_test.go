package stand_test

import (
	"fmt"
	"maps"
	"math"
	"strings"
	"testing"

	"centrepop/layout/machine"
	"centrepop/layout/plan"
)

// missed are the loops of a machine that do not close, with what is said of each.
func missed(m *machine.Machine) string {
	var all []string
	for _, p := range m.Problems {
		if p.Kind != plan.PlaceMisses && p.Kind != plan.PlaceTurned {
			continue
		}
		all = append(all, fmt.Sprintf("%s %s by %.4g mm, %.4g° through %s", p.Joint, strings.TrimPrefix(string(p.Kind), "place-"), p.Args[1].Value, p.Args[1].High, p.Args[2].Text))
		for _, b := range p.Because {
			words := []string{b.Name, string(b.Problem.Kind)}
			for _, a := range b.Problem.Args {
				if a.Text != "" {
					words = append(words, a.Text)
				} else {
					words = append(words, fmt.Sprintf("%.5g", a.Value))
				}
			}
			all = append(all, strings.Join(words, " "))
		}
	}
	return strings.Join(all, "; ")
}

// A base and a strap on it, each with two pairs of holes of 20, are bolted by both to two links between them, whose pairs lie
// 40 apart. Where the pairs of the strap lie 94 from middle to middle, as those of the base, the ring closes, to
// 0.05 mm and 0.05°; else it misses by the lengths of all between their joints, or, with a pair turned, by the joints, the strap's
// middle by 2·47·sin 15° = 24.33 where it is turned by 30°. A tag on the base is none of it. Turned by a quarter, one of its joints closes it, of links of no length
// that on either side.
func TestStrapOnTwoLinks(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		long, deg float64
		link      float64
		want      string
	}{
		{94, 0, 40, ""}, {94.04, 0, 40, ""}, {93.96, 0, 40, ""}, {94, 0.048, 40, ""},
		{94.053, 0, 40, "r2 misses by 0.05 mm, 0° through l1, r1, l2; base loop-length 94 l1 r1; link 1 loop-length 40 l1 l2; strap loop-length 94.05 l2 r2; link 2 loop-length 40 r1 r2"},
		{93, 0, 40, "r2 misses by 1 mm, 0° through l1, r1, l2; base loop-length 94 l1 r1; link 1 loop-length 40 l1 l2; strap loop-length 93 l2 r2; link 2 loop-length 40 r1 r2"},
		{93, 0.004, 40, "r2 misses by 1 mm, 0° through l1, r1, l2; base loop-length 94 l1 r1; link 1 loop-length 40 l1 l2; strap loop-length 93 l2 r2; link 2 loop-length 40 r1 r2"},
		{93, 0, 0.6, "r2 misses by 1 mm, 0° through l1, r1, l2; base loop-length 94 l1 r1; link 1 loop-length 0.6 l1 l2; strap loop-length 93 l2 r2; link 2 loop-length 0.6 r1 r2"},
		{93, 0, 0, "r2 misses by 1 mm, 0° through l1, r1, l2; base loop-length 94 l1 r1; strap loop-length 93 l2 r2"},
		{94, 0.053, 40, "r2 misses by 0.04 mm, 0.05° through l1, r1, l2; r2 loop-turn l1, r1, l2"},
		{94, 30, 40, "r2 turned by 24.33 mm, 30° through l1, r1, l2; r2 loop-turn l1, r1, l2"},
		{94, 180, 40, ""}, {94, 90, 40, "r2 turned by 66.47 mm, 90° through l1, r1, l2; r2 loop-turned 90"}, {94, 90, 0, "r2 turned by 66.47 mm, 90° through l1, r1, l2; r1 loop-turned 90; r2 loop-turned 90"},
	} {
		sin, cos := math.Sincos(c.deg * math.Pi / 180)
		pair := func(name string, x, cos, sin float64) string {
			return fmt.Sprintf("  - {name: %s, at: [[%.6f, %.6f], [%.6f, %.6f]], size: M6 clearance}\n", name, x-10*cos, -10*sin, x+10*cos, 10*sin)
		}
		plate := func(name, holes string) string {
			return fmt.Sprintf("part: %s\ntitle: %s\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm}\noutline: {rectangle: [300, 60]}\nholes:\n%s", name, name, holes)
		}
		joint := func(name, through, into string) string {
			return fmt.Sprintf("  - {name: %s, bolt: {through: %s, into: %s, bolt: M6 8.8, nut: yes}, face: back-on-front}\n", name, through, into)
		}
		m, _ := load(t, write(t, map[string]string{
			"base.yaml":  plate("base", pair("l", -47, 1, 0)+pair("r", 47, 1, 0)+pair("t", 120, 1, 0)),
			"tag.yaml":   plate("tag", pair("h", 0, 1, 0)),
			"strap.yaml": plate("strap", pair("l", -47, 1, 0)+pair("r", c.long-47, cos, sin)),
			"link.yaml":  strings.Replace(plate("link", pair("low", c.link, 1, 0)+pair("high", 0, 1, 0)), "material", "quantity: 2\nmaterial", 1),
			"job.yaml": "job: J\nunits: mm\nparts: [base.yaml, strap.yaml, link.yaml, tag.yaml]\njoints:\n" +
				joint("t", "tag.h", "base.t") + joint("l1", "link#1.low", "base.l") + joint("r1", "link#2.low", "base.r") + joint("l2", "strap.l", "link#1.high") + joint("r2", "strap.r", "link#2.high")}))
		if got := missed(m); got != c.want {
			t.Errorf("%g long, turned by %g°: %q, want %q", c.long, c.deg, got, c.want)
		}
	}
}

// A frame of two rails of 460 and ends of 340 and another length, all of 50 and cut by 45°: along the miss the ends are as long as
// from the middle of a cut to that of the other, 50 less than over all, and the rails, across it, are not named.
func TestFrameSaysItsLengths(t *testing.T) {
	t.Parallel()
	got := map[string]string{}
	for _, length := range []string{"338", "339.94", "339.96"} {
		m, _ := load(t, write(t, frame(t, "job.yaml", "end#2.left", "arm#2.left", "job.yaml", "end#2.right", "arm#2.right",
			"arm.yaml", "material: S235\n", "quantity: 2\nmaterial: S235\n", "arm.yaml", "bar: {rectangle: [60, 40], wall: 3, length: 300, right: {onto: post.outside, place: {clock: 90, axial: 120}}}",
			"bar: {square: 50, wall: 4, length: "+length+", left: {mitre: 45, long: bottom}, right: {mitre: 45, long: bottom}}", "job.yaml", "arm.right, to: post.outside", "arm#1.right, to: rail#1.front")))
		got[length] = missed(m)
	}
	if want := map[string]string{
		"338":    "c4 misses by 2 mm, 0° through c1, c2, c3; end 1 loop-length 290 c1 c2; arm 2 loop-length 288 c3 c4",
		"339.94": "c4 misses by 0.06 mm, 0° through c1, c2, c3; end 1 loop-length 290 c1 c2; arm 2 loop-length 289.94 c3 c4",
		"339.96": "",
	}; !maps.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// A guard 100 high outside, of 2 sheet, has a flange out from the free edge of its top and of its bottom, with holes 12 from
// the outside corner: 50 + 12 - 2 = 60 from its middle each. On holes 121 apart it misses by 1.
func TestGuardOnItsEdges(t *testing.T) {
	t.Parallel()
	for low, want := range map[string]string{
		"-60": "", "-61": "lower misses by 1 mm, 0° through upper; guard loop-length 120 upper lower; plate loop-length 121 upper lower",
	} {
		m, _ := load(t, write(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, guard.yaml]\njoints:\n" +
				"  - {name: upper, bolt: {through: guard.upper, into: plate.upper, bolt: M6 8.8}, face: back-on-front}\n" +
				"  - {name: lower, bolt: {through: guard.lower, into: plate.lower, bolt: M6 8.8}, face: back-on-front, rotate: 180}\n",
			"plate.yaml": "part: plate\ntitle: plate\nkind: plate\nmaterial: S235\nstock: {plate: 15, cut: laser}\noutline: {rectangle: [200, 200]}\nholes:\n" +
				"  - {name: upper, at: [[-40, 60], [40, 60]], size: M6 tap}\n  - {name: lower, at: [[-40, " + low + "], [40, " + low + "]], size: M6 tap}\n",
			"guard.yaml": "part: guard\ntitle: guard\nkind: folded\nmaterial: S235\nstock: {sheet: 2, cut: laser}\noutline: {rectangle: [120, 100]}\nbends:\n  radius: 2\n  flanges:\n" +
				"    - {side: top, height: 50}\n    - {side: bottom, height: 50}\n    - {side: top-2, height: 24, toward: front}\n    - {side: bottom-2, height: 24, toward: front}\nholes:\n" +
				"  - {name: upper, on: top-2, at: [[-40, 12], [40, 12]], size: M6 clearance}\n  - {name: lower, on: bottom-2, at: [[-40, 12], [40, 12]], size: M6 clearance}\n",
		}))
		if got := missed(m); got != want {
			t.Errorf("%s: %q, want %q", low, got, want)
		}
	}
}

// Two posts of 10 stand on a base, their outer faces 120 apart, with a cap on the outside of each whose shoulder lies 6 out: the
// shoulders of a shaft in ball bearings there are to be 132 apart. Nothing says that the second cap looks the other way
// than the first: the last bearing is to say it. With 131 the shaft floats there, and its place says so, its front 162 in the front
// of the cap.
func TestLoopOverBearings(t *testing.T) {
	t.Parallel()
	const turned, placed = ", other-way-round: yes", ", place: {on: front, with: front, at: [0, 0], gap: -162}"
	const loop, floats = " through one, two, cap2, b1, b2; ", "; or b2 loop-floats"
	const lengths = "cap1 misses by 1 mm, 0°" + loop + "cap 1 loop-length 9 cap1 b1; shaft loop-length 143 b1 b2; cap 2 loop-length 9 cap2 b2"
	for _, c := range []struct {
		middle    float64
		way, want string
	}{
		{132, turned, ""}, {131, placed, ""},
		{132, "", "cap1 turned by 24 mm, 180°" + loop + "cap1 loop-turn one, two, cap2, b1, b2; or b2 loop-flips"},
		{131, turned, lengths + floats},
		{131, strings.Replace(placed, "162", "163", 1), lengths},
	} {
		m, _ := load(t, write(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\nparts: [base.yaml, post.yaml, cap.yaml, shaft.yaml]\njoints:\n" +
				"  - {name: one, weld: {part: post#1.outline, to: base.outline, type: fillet}, place: {on: front, with: bottom, from-left: 0, from-bottom: 0, front: down}}\n" +
				"  - {name: two, weld: {part: post#2.outline, to: base.outline, type: fillet}, place: {on: front, with: bottom, from-left: 0, from-bottom: 110, front: up}}\n" +
				"  - {name: cap1, bolt: {through: cap#1.bolts, into: post#1.taps, bolt: M6 8.8}, face: back-on-front}\n" +
				"  - {name: cap2, bolt: {through: cap#2.bolts, into: post#2.taps, bolt: M6 8.8}, face: back-on-front}\n" +
				"  - {name: b1, ball-bearing: {bearing: 6004-2RS, housing: cap#1.seat, shaft: shaft.nose, rotating: inner}}\n" +
				"  - {name: b2, ball-bearing: {bearing: 6004-2RS, housing: cap#2.seat, shaft: shaft.tail, rotating: inner}" + c.way + "}\n",
			"base.yaml": "part: base\ntitle: base\nkind: plate\nmaterial: S235\nstock: {plate: 10}\noutline: {rectangle: [90, 120]}\n",
			"post.yaml": "part: post\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: 10}\noutline: {rectangle: [90, 100]}\nbore: {diameter: 38}\nholes: [{name: taps, circle: {pcd: 62, count: 4, first: 45}, size: M6 tap}]\n",
			"cap.yaml": "part: cap\ntitle: cap\nkind: turned\nquantity: 2\nmaterial: S355\nstock: {round: 85, length: 28}\nprofile:\n  outside: [{name: round, diameter: 80, length: 24}]\n" +
				"  inside: [{name: seat, diameter: 42, fit: H7, length: 18}, {name: web, diameter: 34, length: 6}]\nholes: [{name: bolts, circle: {pcd: 62, count: 4, first: 45}, size: M6 clearance}]\n",
			"shaft.yaml": "part: shaft\ntitle: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 30, length: 160}\nprofile:\n  outside: [{name: nose, diameter: 20, fit: k6, length: 12}, {name: middle, diameter: 24, length: " +
				fmt.Sprint(c.middle) + "}, {name: tail, diameter: 20, fit: k6, length: 12}]\n",
		}))
		if got := missed(m); got != c.want {
			t.Errorf("%g%s: %q, want %q", c.middle, c.way, got, c.want)
		}
	}
}

// A hood on a plate by lips along its top and its bottom: both turned outward they lie in one plane and it closes; with that at
// its top turned inward, the hood would look two ways, and its lips are named. A channel whose flanges lie on two plates is none of it.
func TestLipsFoldedTwoWays(t *testing.T) {
	t.Parallel()
	for toward, want := range map[string]bool{"back": false, "front": true} {
		hood := "part: hood\nkind: folded\nmaterial: S235\nstock: {sheet: 1.5, cut: laser}\noutline: {rectangle: [200, 100]}\nbends:\n  radius: 1.5\n  flanges:\n    - {side: top, height: 60, toward: front}\n" +
			"    - {side: bottom, height: 60, toward: front}\n    - {side: top-2, height: 24, toward: " + toward + "}\n    - {side: bottom-2, height: 24, toward: back}\n" +
			"holes:\n  - {name: high, on: top-2, at: [[-60, 13], [60, 13]], size: 6.6}\n  - {name: low, on: bottom-2, at: [[-60, 13], [60, 13]], size: 6.6}\n"
		plate := "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 8, cut: laser}\noutline: {rectangle: [240, 200]}\nholes:\n  - {name: high, at: [[-60, 62.2], [60, 62.2]], size: M6 tap}\n  - {name: low, at: [[-60, -62.2], [60, -62.2]], size: M6 tap}\n"
		m, _ := stood(t, write(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [hood.yaml, plate.yaml]\njoints:\n  - {name: one, bolt: {through: hood.high, into: plate.high, bolt: M6 8.8}, face: front-on-front}\n" +
				"  - {name: two, bolt: {through: hood.low, into: plate.low, bolt: M6 8.8}, face: front-on-front, rotate: 180}\n",
			"hood.yaml": hood, "plate.yaml": plate,
		}))
		if got := missed(m); strings.Contains(got, "or hood loop-folded") != want || want != strings.Contains(got, "two turned by") {
			t.Errorf("toward the %s: %q", toward, got)
		}
	}
}
