package joint_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
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

// TestShoulderLeft: a hub stands against half a millimetre of its shoulder at the least: of a Ø55 beside a Ø40
// a chamfer of SIZE leaves 55 − 2·SIZE across, the hub's own of 0.5 begins at 41.
func TestShoulderLeft(t *testing.T) {
	t.Parallel()
	for size, want := range map[string]bool{"6.5": false, "6.51": true} {
		_, found := slidPlan(t, "shaft.yaml|keyways:|chamfers: [{edge: collar-front, size: "+size+", angle: 45}]\nkeyways:", "hub.yaml|keyways:|chamfers: [{edge: bore-back, size: 0.5, angle: 45}, {edge: bore-front, size: 0.5, angle: 45}]\nkeyways:")
		if got := slices.ContainsFunc(found, func(p plan.Problem) bool { return p.Kind == plan.SlideShoulderLow }); got != want {
			t.Errorf("a chamfer of %s: %s", size, argued(found))
		}
	}
}

// TestPressedUpTo: a bush of Ø32 with a collar of Ø40 pressed through a plate of 20 until the collar lies on it: 4 mm less
// the chamfers of both. With the collar 1 mm off it stands on nothing, and nothing is said; in a bore with a shoulder of Ø24
// it is the bush's own chamfer that takes from 4.
func TestPressedUpTo(t *testing.T) {
	t.Parallel()
	kinds := []plan.ProblemKind{plan.SlideShoulderLow}
	bush := func(long, lead, collar string) string {
		return "part: bush\nkind: turned\nmaterial: CuSn8\nstock: {round: 42 mm}\nprofile:\n  outside: [{name: body, diameter: 32, fit: r6, length: " + long + "}, {name: collar, diameter: 40, length: 3}]\nchamfers: [{edge: body-front, size: " + lead + ", for: lead-in}, {edge: collar-front, size: " + collar + "}]\n"
	}
	plain := func(lead string) string {
		return "part: bush\nkind: turned\nmaterial: CuSn8\nstock: {round: 42 mm}\nprofile:\n  outside: [{name: body, diameter: 32, fit: r6, length: 25}]\nchamfers: [{edge: body-front, size: " + lead + ", for: lead-in}]\n"
	}
	plate := func(size string) string {
		return "part: plate\nkind: plate\nmaterial: S355\nstock: {plate: 20, cut: laser}\noutline: {square: 100}\nbore: {diameter: 32, fit: H7, leave: 2}\nchamfers: [{edge: bore-back, size: " + size + "}]\n"
	}
	const blind = "part: plate\nkind: turned\nmaterial: S355\nstock: {round: 102 mm}\nprofile:\n  outside: [{name: rim, diameter: 95, length: 30}]\n  inside: [{name: hole, diameter: 24, length: 5}, {name: bore, diameter: 32, fit: H7, length: 25}]\n"
	for _, c := range []struct{ bush, plate, level, want string }{
		{bush("20", "1", "0.5"), plate("3"), "front-with-front", ""},
		{bush("20", "1", "0.5"), plate("3.1"), "front-with-front", "slide-shoulder-low, plate, 0.4, collar, 0.5"},
		{bush("20", "1", "0.5"), plate("5"), "front-with-front", "slide-shoulder-low, plate, 0, collar, 0.5"},
		{bush("21", "1", "0.5"), plate("5"), "front-with-front", ""},
		{plain("3.5"), blind, "back-with-back", ""},
		{plain("3.6"), blind, "back-with-back", "slide-shoulder-low, bush, 0.4, hole, 0.5"},
	} {
		if got := foundIn(t, kinds, "{name: p, press: {shaft: bush.body, bore: plate.bore}, level: "+c.level+"}", c.bush, c.plate); got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.bush, c.plate, got, c.want)
		}
	}
}

// TestHalfABar: pieces that come to half of a bar of 6 m, with a cut each and the trim of its end, are cut from one;
// fewer are bought sawn (common practice, no source).
func TestHalfABar(t *testing.T) {
	t.Parallel()
	row := func(mm float64) plan.CutRow {
		p := planned(t, jobOf(t, "{name: cap, press: {shaft: b.post, bore: c.bore}, level: front-with-front}", fmt.Sprintf("part: p\nkind: turned\nquantity: 2\nmaterial: S235\nstock: {round: 60 mm, length: %g mm}\nprofile:\n  outside: [{name: a, diameter: 55, length: 900}]\n", mm),
			"part: b\nkind: turned\nmaterial: S235\nstock: {round: 50 mm, cut: saw}\nprofile:\n  outside: [{name: post, diameter: 40, fit: p6, length: 30}]\n",
			"part: c\nkind: turned\nmaterial: S235\nstock: {round: 160 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 150, length: 10}]\n  inside: [{name: bore, diameter: 40, fit: H7, length: 10}]\n"))
		return p.Cuts[slices.IndexFunc(p.Cuts, func(c plan.CutRow) bool { return strings.HasPrefix(c.Stock, "round Ø60") })]
	}
	lost := row(1000)
	each := (3000 - lost.TrimMm) / 2
	if less, as := row(each-lost.KerfMm-0.1), row(each-lost.KerfMm); !strings.HasSuffix(less.Stock, ", saw cut") || as.BarMm != 6000 || less.BarMm != 0 {
		t.Errorf("%+v and %+v", less, as)
	}
}
