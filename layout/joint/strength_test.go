package joint_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// A made stud is long enough where its thread holds its plate, a washer of 2.5, a nut of
// 10.8 (M12: ISO 7089, ISO 4032) and two pitches of 1.75: 31.8 for a plate of 15, 36.8 for
// one of 20. The longer thread takes the thicker plate, whichever end it is.
func TestStudReaches(t *testing.T) {
	t.Parallel()
	plate := func(name string, thick float64) string {
		return fmt.Sprintf("part: %s\nkind: flange\nmaterial: S235\nstock: {plate: %g mm, cut: laser}\noutline: {circle: 200}\nbore: {diameter: 50}\nholes:\n  - {name: studs, face: front, circle: {pcd: 150, count: 4, first: 45}, size: M12 clearance}\n", name, thick)
	}
	for _, c := range []struct {
		one, other, a, b float64
		short            []float64
	}{
		{15, 15, 31.8, 31.8, nil}, {15, 15, 31.7, 31.8, []float64{0.1}}, {15, 15, 31.8, 31.3, []float64{0.5}}, {15, 20, 31.8, 36.8, nil}, {15, 20, 36.8, 31.8, nil}, {15, 20, 34, 34, []float64{2.8}}, {20, 15, 34, 34, []float64{2.8}},
	} {
		p := filed(t, "{name: j, bolt: {through: one.studs, into: other.studs, bolt: M12, stud: spacer, washer: yes}}", plate("one", c.one), plate("other", c.other),
			fmt.Sprintf("part: spacer\nkind: shaft\nquantity: 4\nmaterial: S235\nstock: {round: 20, cut: saw}\nprofile:\n  outside:\n    - {name: a, thread: M12, length: %g}\n    - {name: body, diameter: 20, length: 90}\n    - {name: b, thread: M12, length: %g}\n", c.a, c.b))
		var short []float64
		for _, f := range p.Joints[0].Problems {
			if f.Kind == plan.StudShort {
				short = append(short, geom.Clean(f.Args[2].Value))
			}
		}
		if fmt.Sprint(short) != fmt.Sprint(c.short) {
			t.Errorf("%+v: short by %v", c, short)
		}
	}
}

// A made stud in a tapped plate of 25, a plate of 15 over it: M12 has a pitch of 1.75, a nut of 10.8
// and a washer of 2.5 (ISO 4032, ISO 7089); without an undercut the last 5.25 of a thread are not full
// and an undercut A is 6.1 wide (DIN 76-1: 3 P, 3.5 P), and steel wants 12 engaged. It goes in as far as its thread is full or to a pitch from the
// bottom, up to a shoulder where it has one, and its nut wants 15 + 10.8 + 2.5 + 3.5 = 31.8 of what stands out.
func TestStudScrewedIn(t *testing.T) {
	t.Parallel()
	plate := func(name string, thick float64, size string) string {
		return fmt.Sprintf("part: %s\nkind: flange\nmaterial: S235\nstock: {plate: %g mm, cut: laser}\noutline: {circle: 200}\nbore: {diameter: 50}\nholes:\n  - {name: studs, face: front, circle: {pcd: 150, count: 4, first: 45}, size: %s}\n", name, thick, size)
	}
	const root, post = "{name: root, thread: M12, length: 20}, ", "{name: root, thread: M12, length: 20, undercut: DIN 76-A}, {name: body, diameter: 20, length: 50}, "
	for _, c := range []struct {
		hole, steps    string
		stands, in     float64
		apart          float64
		back           bool
		problems, says string
	}{
		{"M12 tap, depth: 22", root + "{name: shank, diameter: 12, length: 5}, {name: tail, thread: M12, length: 34}", 44.25, 14.75, 0, true, "", "until they stand out of it by 44.25: no tighter, and not on the bottom of the hole."},
		{"M12 tap, depth: 15.75", root + "{name: shank, diameter: 12, length: 5}, {name: tail, thread: M12, length: 34}", 45, 14, 0, true, "", "stand out of it by 45"},
		{"M12 tap, depth: 13.75", root + "{name: shank, diameter: 12, length: 5}, {name: tail, thread: M12, length: 34}", 47, 12, 0, true, "stud-short", ""}, // as much as is needed
		{"M12 tap, depth: 13", root + "{name: shank, diameter: 12, length: 5}, {name: tail, thread: M12, length: 34}", 47.75, 11.25, 0, true, "short-engagement short-thread stud-short", ""},
		{"M12 tap", "{name: rod, thread: M12, length: 60}", 35, 25, 0, false, "", "stand out of it by 35"},
		{"M12 tap", "{name: rod, thread: M12, length: 55}", 30, 25, 0, false, "stud-short", ""},
		{"M12 tap", root + "{name: shank, diameter: 12, length: 30}, {name: tail, thread: M12, length: 30}", 65.25, 14.75, 0, true, "stud-short", ""},
		{"M12 tap, depth: 22", post + "{name: tail, thread: M12, length: 34}", 84, 13.9, 50, true, "", "up to the shoulder of body."},
		{"M12 tap", strings.Replace(post, ", undercut: DIN 76-A", "", 1) + "{name: tail, thread: M12, length: 34}", 89.25, 14.75, 55.25, true, "stud-off", ""},
		{"M12 tap, depth: 18", post + "{name: tail, thread: M12, length: 34}", 84, 11.9, 50, true, "bottoms-out short-engagement", ""},
	} {
		j := filed(t, "{name: j, bolt: {through: one.studs, into: other.studs, bolt: M12, stud: spacer, washer: yes}, face: back-on-front}", plate("one", 15, "M12 clearance"), plate("other", 25, c.hole),
			"part: spacer\nkind: shaft\nquantity: 4\nmaterial: S235\nstock: {round: 20, cut: saw}\nprofile:\n  outside: ["+c.steps+"]\n").Joints[0]
		var kinds []string
		for _, f := range j.Problems {
			kinds = append(kinds, string(f.Kind))
		}
		slices.Sort(kinds)
		b := j.Bolt
		if apart := b.StudStandsMm - b.StudTipMm; math.Abs(b.StudStandsMm-c.stands) > 1e-9 || math.Abs(b.EngagementMm-c.in) > 1e-9 || math.Abs(apart-c.apart) > 1e-9 || b.StudBack != c.back || strings.Join(kinds, " ") != c.problems {
			t.Errorf("%s, %s: stands %v, %v engaged, %v apart, %v, %v", c.hole, c.steps, b.StudStandsMm, b.EngagementMm, apart, b.StudBack, kinds)
		}
		if c.says != "" {
			says(t, j, []string{"Screw in the studs", c.says, "All 4 by hand on the studs, over one, a washer under each."}, []string{"a nut on each end"})
		}
	}
	p := filed(t, "{name: j, bolt: {through: one.studs, into: other.studs, bolt: M12, stud: rod, washer: yes}, face: back-on-front}", plate("one", 15, "M12 clearance"), plate("other", 25, "M12 tap"),
		"part: rod\nkind: shaft\nquantity: 4\nmaterial: S235\nstock: {round: 12, cut: saw}\nprofile:\n  outside: [{name: rod, thread: M12, length: 60}]\n")
	for item, n := range map[string]int{"Nut M12": 4, "Washer M12": 4} {
		if !slices.ContainsFunc(p.Bought, func(r plan.BoughtRow) bool { return strings.HasPrefix(r.Item, item) && r.Quantity == n }) {
			t.Errorf("%d of %s: %+v", n, item, p.Bought)
		}
	}
	flats := filed(t, "{name: j, bolt: {through: one.studs, into: other.studs, bolt: M12, stud: rod}, face: back-on-front}", plate("one", 15, "M12 clearance"), plate("other", 25, "M12 tap"),
		"part: rod\nkind: shaft\nquantity: 4\nmaterial: S235\nstock: {round: 20, cut: saw}\nprofile:\n  outside: ["+post+"{name: tail, thread: M12, length: 34}]\nflats: [{name: grip, in: body, across: 16}]\n").Joints[0]
	says(t, flats, []string{"A spanner 16 on grip turns each"}, []string{"Two nuts locked"})
	// A nut of 34 full but for 5.25 may be turned down to plate and washer: 15 + 2.5 + 28.75; a rod of 60 has to keep 12 in its hole.
	grooved := filed(t, "{name: j, bolt: {through: one.studs, into: other.studs, bolt: M12, stud: rod, washer: yes}, face: back-on-front}", plate("one", 15, "M12 clearance"), plate("other", 25, "M12 tap, depth: 22"),
		"part: rod\nkind: shaft\nquantity: 4\nmaterial: S235\nstock: {round: 20, cut: saw}\nprofile:\n  outside: [{name: root, thread: M12, length: 20, undercut: DIN 76-A}, {name: shank, diameter: 12, length: 5}, {name: tail, thread: M12, length: 34}]\n")
	for most, of := range map[float64]*plan.Plan{48: p, 46.25: grooved} {
		limits := of.Joints[0].Checks[slices.IndexFunc(of.Joints[0].Checks, func(c plan.Check) bool { return strings.HasPrefix(c.What, "studs out") })]
		if limits.MinMm != 31.8 || limits.MaxMm != most {
			t.Errorf("to %v: %+v", most, limits)
		}
	}
}

// A press yields where one of the two safeties is below 1, and only there: of a thin hub,
// of a hollow pin, and of neither though both are below 2. Of a bush that yields alone it is said
// as what it grips and how its bore closes.
func TestPressYields(t *testing.T) {
	t.Parallel()
	seen := map[string]bool{}
	for _, rim := range []float64{55, 120} {
		for _, hollow := range []float64{0, 34} {
			for _, fit := range []string{"p6", "s6", "u6", "x6", "z6"} {
				bore := ""
				if hollow > 0 {
					bore = fmt.Sprintf("  inside: [{name: oil, diameter: %g, length: 40}]\n", hollow)
				}
				p := filed(t, "{name: p, press: {shaft: pin.seat, bore: hub.bore}, level: front-with-front}",
					fmt.Sprintf("part: hub\nkind: turned\nmaterial: S355\nstock: {round: 130 mm, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: %g, length: 40}]\n  inside: [{name: bore, diameter: 45, fit: H7, length: 40}]\n", rim),
					fmt.Sprintf("part: pin\nkind: shaft\nmaterial: S355\nstock: {round: 50 mm, cut: saw}\nprofile:\n  outside: [{name: seat, diameter: 45, fit: %s, length: 40}]\n%s", fit, bore)).Joints[0]
				hub, pin := p.Press.HubSafety, p.Press.ShaftSafety
				said := seq.Map(p.Problems, func(f plan.Problem) plan.ProblemKind { return f.Kind })
				bush := hub >= 1 && pin < 1 && hollow > 0
				if slices.Contains(said, plan.PressYields) != (!bush && min(hub, pin) < 1) || slices.Contains(said, plan.BushYields) != bush {
					t.Errorf("rim %g, bore %g, %s: safety %v and %v, said %v", rim, hollow, fit, hub, pin, said)
				}
				where := func(s float64) string {
					return map[bool]string{true: "yields", false: map[bool]string{true: "near", false: "far"}[s < 2]}[s < 1]
				}
				seen[strings.Join([]string{where(hub), where(pin)}, " ")] = true
			}
		}
	}
	for _, want := range []string{"near far", "yields far", "near near"} {
		if !seen[want] {
			t.Errorf("no joint is %s: %v", want, seen)
		}
	}
	if !seen["near yields"] && !seen["far yields"] {
		t.Errorf("no pin yields alone: %v", seen)
	}
}

// Holes of Ø9 for M8 play 1: circles of 150 and 154 miss each other, and so do equal ones
// turned by 20° or with places that nothing brings together; half a millimetre of the
// circle, 0.25 at a hole, is play. What is said tells which it is, and the turn that would do.
func TestHolesMiss(t *testing.T) {
	t.Parallel()
	ring := func(name, holes string) string {
		return "part: " + name + "\nkind: ring\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {circle: 200}\nbore: {diameter: 60}\nholes:\n  - {name: h, " + holes + ", size: M8 clearance}\n"
	}
	for holes, want := range map[string]string{
		"circle: {pcd: 150, count: 6, first: 30}":            "",
		"circle: {pcd: 150.5, count: 6, first: 30}":          "",
		"circle: {pcd: 154, count: 6, first: 30}":            "holes-miss-circle, a h, b h, 2, 1, holes, 154, 150",
		"circle: {pcd: 150, count: 6, first: 50}":            "holes-miss-turn, a h, b h, 26.0472, 1, holes, 40", // 2 · 75 · sin 10°; on by 60 − 20
		"angles: {pcd: 150, at: [0, 20, 90, 180, 200, 270]}": "holes-miss, a h, b h, 38.8229, 1, holes",          // 2 · 75 · sin 15°
		// The ring's holes as places: what is not on a circle says its distances, 39 and 62 make 73.246 where a ring of six has 75.
		"at: [[75, 0], [-75, 0], [37.5, 64.952], [-37.5, 64.952], [37.5, -64.952], [-37.5, -64]]": "play-used, a h, 0.9519, b h, 1, holes",
		"at: [[75, 0], [-75, 0], [37.5, 64.952], [-37.5, 64.952], [37.5, -64.952], [-36, -62]]":   "holes-miss-apart, a h, b h, 73.2462, 1, holes, 75",
	} {
		p, err := draft(jobOf(t, "{name: j, bolt: {through: a.h, into: b.h, bolt: M8 8.8, nut: yes}, face: front-on-back}", ring("a", holes), ring("b", "circle: {pcd: 150, count: 6, first: 30}")))
		if p == nil {
			t.Fatal(err)
		}
		if got := problems(p, "j"); got != want {
			t.Errorf("%s: %q, want %q", holes, got, want)
		}
	}
}

// A foot of 12 goes by M12 on a base of 15 tapped through, under a washer of 2.5: 30 stands 0.5 out of it, and 25
// engages 10.5 of 12. Out of a base that is anchored nothing may stand; one that has something on that face is not
// on the floor with it.
func TestScrewOutOfAnAnchoredBase(t *testing.T) {
	t.Parallel()
	plate := func(name, thick, hole string) string {
		return "part: " + name + "\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: " + thick + " mm, cut: laser}\noutline: {square: 150}\nholes:\n  - {name: h, face: front, at: [[0, -58], [0, 58]], size: M12 " + hole + "}\n"
	}
	for _, c := range []struct {
		thick, anchored, more string
		long                  float64
	}{
		{"15", "", "", 30}, {"15", ", anchored: base", "", 0}, {"20", ", anchored: base", "", 30}, {"15", ", anchored: foot", "", 30},
		{"15", ", anchored: base", "\n  - {name: k, weld: {part: foot#2.outline, to: base#1.outline, type: fillet}, place: {on: back, with: bottom, from-left: 0, from-bottom: 10, front: up}}", 30},
	} {
		j := jointNamed(t, filed(t, "{name: j, bolt: {through: foot#1.h, into: base#1.h, bolt: M12 8.8, washer: yes}, face: back-on-front"+c.anchored+"}"+c.more, plate("foot", "12", "clearance"), plate("base", c.thick, "tap")), "j")
		if j.Bolt == nil || j.Bolt.LengthMm != c.long {
			t.Errorf("%+v: %+v", c, j.Bolt)
		}
	}
}
