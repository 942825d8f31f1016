package machine_test

import (
	"math"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// A bush 32 s6 in a plate of 120, bored 25 F7 (25.020 to 25.041, ISO 286-2), with a shaft lying in it. At
// the tightest, 0.059, the pressure is 0.059/32 over ((120² + 32²)/(120² - 32²) + 0.3)/210000 and ((32² +
// 25²)/(32² - 25²) - 0.34)/110000, 44.5 MPa, and the bore closes by 2 × 44.5 × 25 × 32²/(110000 × (32² -
// 25²)) = 0.052 (Lamé). f7 (to 24.980) keeps -0.012, e8 (to 24.960) 0.008, less than 0.0125, d8 (to
// 24.935) 0.033, whether it lies there or a joint says that it turns there. m6 (to 25.021) has none as drawn. A shaft that begins 8 further back bears on 12 of 20, one that lies before it on none.
func TestInBushes(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ fit, gap, want string }{
		{"f7", "-20", "bush-closes Shaft run Bush bore -0.012 0.052"},
		{"e8", "-20", "bush-tight Shaft run Bush bore 0.008 0.052"},
		{"d8", "-20", ""}, {"f7", "turns", "bush-closes Shaft run Bush bore -0.012 0.052"}, {"d8", "turns", ""},
		{"d8", "turns, below: 99.9", "bush-short Shaft run Bush bore 0 20"}, {"d8", "turns, below: 100.1", "seat-missed Bush bore Shaft run 80.1"}, // past four of its lengths
		{"m6", "-20", "bush-seizes Shaft run Bush bore -0.001"}, {"25, fit: {limits: [25, 25.0213]}", "-20", "bush-seizes Shaft run Bush bore -0.001"},
		{"d8", "-12", "bush-short Shaft run Bush bore 12 20"},
		{"d8", "-15", ""},
		{"d8", "-14.9", "bush-short Shaft run Bush bore 14.9 20"},
		{"f7", "-0.5", "bush-short Shaft run Bush bore 0.5 20; bush-closes Shaft run Bush bore -0.012 0.052"},
		{"f7", "-12.004", "bush-short Shaft run Bush bore 12 20"},                 // besides that it does not turn
		{"d8", "40", "bush-short Shaft run Bush bore 0 20"},                       // nothing is in the bush, and what should be ends 40 before it
		{"d8", "79.9", "bush-short Shaft run Bush bore 0 20"}, {"d8", "80.1", ""}, // beyond four times its length it is not its own
		// What is 0.75 smaller than the bore is still its journal: three hundredths.
		{"24.25, fit: {limits: [24.2, 24.25]}", "-12", "bush-short Shaft run Bush bore 12 20"}, {"24.24, fit: {limits: [24.2, 24.24]}", "-12", ""},
		{"24.98, fit: {limits: [24.97, 24.9803]}", "-20", "bush-closes Shaft run Bush bore -0.012 0.052"}, {"24.95, fit: {limits: [24.94, 24.9563]}", "-20", "bush-tight Shaft run Bush bore 0.012 0.052"}, // to thousandths
		// 25.020 - 0.052 - 0.0125 = 24.9555.
		// H11/c11 at 25, ISO 286-1 tables: +130 and -240, 0.370 at the most; 25.041 - 0.370 = 24.671.
		{"24.7, fit: {limits: [24.671, 24.7]}", "-20", ""}, {"24.7, fit: {limits: [24.67, 24.7]}", "-20", "bush-loose Shaft run Bush bore 0.371 0.37"},
		{"24.95, fit: {limits: [24.94, 24.955]}", "-20", ""}, {"24.95, fit: {limits: [24.94, 24.956]}", "-20", "bush-tight Shaft run Bush bore 0.012 0.052"},
	} {
		run := "25, fit: " + c.fit
		if strings.Contains(c.fit, ",") {
			run = c.fit
		}
		lies := "loose:\n  - {part: shaft, how: by hand into the bush, after: bush, lies: [{on: bush.front, with: front, gap: " + c.gap + "}]}\n"
		if below, turns := strings.CutPrefix(c.gap, "turns"); turns {
			lies = "  - {name: turn, slide: {hub: bush.bore, on: shaft.run}, level: front-with-front" + below + "}\n"
		}
		got := found(t, map[string]string{
			"job.yaml":   "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, bush.yaml, shaft.yaml]\njoints:\n  - {name: bush, press: {shaft: bush.outside, bore: plate.bore}, level: front-with-front}\n" + lies,
			"plate.yaml": "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 120}\nbore: {diameter: 32, fit: H7, leave: 2}\n",
			"bush.yaml":  "part: bush\ntitle: Bush\nkind: turned\nmaterial: CuSn8\nstock: {round: 36, length: 24}\nprofile:\n  outside: [{name: outside, diameter: 32, fit: s6, length: 20}]\n  inside: [{name: bore, diameter: 25, fit: F7, length: 20}]\nchamfers: [{edge: outside-back, size: 1, angle: 15, for: lead-in}]\n",
			"shaft.yaml": "part: shaft\ntitle: Shaft\nkind: shaft\nmaterial: C45\nstock: {round: 30, length: 86}\nprofile:\n  outside: [{name: run, diameter: " + run + ", length: 60}, {name: head, diameter: 28, length: 20}]\n",
		}, plan.BushSeizes, plan.BushCloses, plan.BushTight, plan.BushLoose, plan.BushShort, plan.SeatMissed)
		if c.want == "" && got != "" || !strings.Contains(got, c.want) {
			t.Errorf("%s, %s: %q", c.fit, c.gap, got)
		}
	}
}

// A port through the wall of a hub comes out on the bush that is pressed in there: it is open where the bush has a hole at
// its clock angle or a groove round, and not with one on the other side or beside it along the axis. What is no port is not looked at.
func TestFeedClosed(t *testing.T) {
	t.Parallel()
	const closed = "feed-closed port Hub Bush"
	for _, c := range []struct{ bush, use, want string }{
		{"", "grease", closed}, {"", "other", ""},
		{"radial: [{name: oil, clock: 0, axial: 10, size: 4, for: grease}]\n", "grease", ""},
		{"radial: [{name: oil, clock: 90, axial: 10, size: 4, for: grease}]\n", "grease", closed},
		{"radial: [{name: oil, clock: 0, axial: 4, size: 4, for: grease}]\n", "grease", closed},
		{"grooves: [{name: round, in: outside, for: grease, axial: 8, width: 4, depth: 1.5}]\n", "grease", ""},
	} {
		got := found(t, map[string]string{
			"job.yaml":  "job: J\nunits: mm\ntolerance: m\nparts: [hub.yaml, bush.yaml]\njoints:\n  - {name: bush, press: {shaft: bush.outside, bore: hub.bore}, level: front-with-front}\n",
			"hub.yaml":  "part: hub\ntitle: Hub\nkind: turned\nmaterial: S235\nstock: {round: 75, length: 24}\nprofile:\n  outside: [{name: outside, diameter: 70, length: 20}]\n  inside: [{name: bore, diameter: 32, fit: H7, length: 20}]\nradial: [{name: port, clock: 0, axial: 10, size: M8x1 tap, for: " + c.use + "}]\n",
			"bush.yaml": "part: bush\ntitle: Bush\nkind: turned\nmaterial: CuSn8\nstock: {round: 36, length: 24}\nprofile:\n  outside: [{name: outside, diameter: 32, fit: s6, length: 20}]\n  inside: [{name: bore, diameter: 25, fit: F7, length: 20}]\n" + c.bush,
		}, plan.FeedClosed)
		if got != c.want {
			t.Errorf("%q, for %s: %q, want %q", c.bush, c.use, got, c.want)
		}
	}
}

// A bush goes into a bore that is narrower behind with its back first: the chamfer on it lies there, or
// one on the mouth of the bore. It is pressed into what is heavier, not that on it.
func TestLeadsIn(t *testing.T) {
	t.Parallel()
	const back = "{edge: outside-back, size: 1, angle: 15, for: lead-in}"
	for _, c := range []struct {
		name, bush, narrow, want string
	}{
		{"at the end that goes first", back, "28", ""},
		{"at the other", strings.Replace(back, "back", "front", 1), "28", "lead-in-behind Bush Hub back outside back"},
		{"from either side", strings.Replace(back, "back", "front", 1), "34", ""},
	} {
		m, p := load(t, write(t, map[string]string{
			"job.yaml":  "job: J\nunits: mm\ntolerance: m\nparts: [hub.yaml, bush.yaml]\njoints:\n  - {name: bush, press: {shaft: bush.outside, bore: hub.bore}, level: front-with-front}\n",
			"hub.yaml":  "part: hub\ntitle: Hub\nkind: turned\nmaterial: S235\nstock: {round: 130, length: 29}\nprofile:\n  outside: [{name: outside, diameter: 120, length: 25}]\n  inside: [{name: bore, diameter: 32, fit: H7, length: 20}, {name: waist, diameter: " + c.narrow + ", length: 5}]\n",
			"bush.yaml": "part: bush\ntitle: Bush\nkind: turned\nmaterial: CuSn8\nstock: {round: 36, length: 24}\nprofile:\n  outside: [{name: outside, diameter: 32, fit: s6, length: 20}]\n  inside: [{name: bore, diameter: 25, fit: F7, length: 20}]\nchamfers: [" + c.bush + "]\n",
		}))
		if got := argued(m, plan.LeadInBehind); got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
		j := p.Joints[0]
		if j.Title != "Press Bush into Hub" || !j.Press.Inward {
			t.Errorf("%s: %q", c.name, j.Title)
		}
		into, led := m.Led(j)
		if out := m.Poses[j.A.Instance().ID()].Z.Dot(into); !led || math.Abs(out-words.Either(c.bush == back, -1.0, 1)) > 1e-9 { // Z is out of the front
			t.Errorf("%s: %v, %v along its axis", c.name, led, out)
		}
	}
}

// A bush that words alone press in, 32 s6 in H7: its play as drawn, 25.020 less 24.980, and what nobody works out. One
// that is laid in, or a ring that is pressed on the shaft, closes nothing.
func TestBushesByWords(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ how, outside, fit, want string }{
		{"pressed into the plate", "32, fit: s6", "f7", "bush-unknown Shaft run Bush bore 0.04"},
		{"pressed into the plate", "32, fit: s6", "m6", "bush-seizes Shaft run Bush bore -0.001"},
		{"laid into the plate", "32, fit: g6", "f7", ""}, {"pressed on the shaft", "31", "m6", ""},
	} {
		got := found(t, map[string]string{
			"job.yaml":   "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, foot.yaml, bush.yaml, shaft.yaml]\njoints:\n  - {name: foot, weld: {part: plate.outline, to: foot.outline, type: fillet, size: 3}, place: {on: front, with: bottom, front: up, at: [0, 0]}}\nloose:\n  - {part: bush, how: " + c.how + ", after: foot, lies: [{on: plate.front, with: front, gap: -20}]}\n  - {part: shaft, how: by hand into the bush, after: foot, lies: [{on: plate.front, with: front, gap: -20}]}\n",
			"foot.yaml":  "part: foot\ntitle: Foot\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {square: 200}\n",
			"plate.yaml": "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 120}\nbore: {diameter: 32, fit: H7, leave: 2}\n",
			"bush.yaml":  "part: bush\ntitle: Bush\nkind: turned\nmaterial: CuSn8\nstock: {round: 36, length: 24}\nprofile:\n  outside: [{name: outside, diameter: " + c.outside + ", length: 20}]\n  inside: [{name: bore, diameter: 25, fit: F7, length: 20}]\n",
			"shaft.yaml": "part: shaft\ntitle: Shaft\nkind: shaft\nmaterial: C45\nstock: {round: 30, length: 66}\nprofile:\n  outside: [{name: run, diameter: 25, fit: " + c.fit + ", length: 60}]\n",
		}, plan.BushSeizes, plan.BushCloses, plan.BushTight, plan.BushUnknown)
		if got != c.want {
			t.Errorf("%s: %q", c.how, got)
		}
	}
}

// A joint says which journal runs in a bush: where its tail of 16 is drawn in the bore of 20 instead, it bears on none of it, and its fit
// is judged all the same: k6 in H7 lacks 15 µm (ISO 286-1). Drawn in the bore, f7 is found good.
func TestNamedJournal(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ gap, fit, want string }{
		{"-60", "f7", ""},
		{"-10", "f7", "bush-short shaft journal bush bore 0 20"},
		{"-10", "k6", "bush-short shaft journal bush bore 0 20; bush-seizes shaft journal bush bore -0.015"},
	} {
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, bush.yaml, shaft.yaml]\njoints:\n  - {name: bush, press: {shaft: bush.outside, bore: plate.bore}, level: front-with-front}\n" +
				"  - {name: run, slide: {hub: bush.bore, on: shaft.journal}, place: {on: front, with: front, at: [0, 0], top: up, gap: " + c.gap + "}}\n",
			"plate.yaml": "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 120}\nbore: {diameter: 30, fit: H7, leave: 2}\n",
			"bush.yaml":  "part: bush\nkind: turned\nmaterial: CuSn12\nstock: {round: 40, length: 24}\nprofile:\n  outside: [{name: outside, diameter: 30, fit: p6, length: 20}]\n  inside: [{name: bore, diameter: 20, fit: H7, length: 20}]\nchamfers: [{edge: outside-front, size: 1, angle: 15, for: lead-in}]\n",
			"shaft.yaml": "part: shaft\nkind: turned\nmaterial: C45\nstock: {round: 30, length: 104}\nprofile:\n  outside: [{name: tail, diameter: 16, length: 40}, {name: journal, diameter: 20, fit: " + c.fit + ", length: 30}, {name: end, diameter: 18, length: 30}]\n",
		}, plan.BushShort, plan.BushSeizes)
		if got != c.want {
			t.Errorf("%s, gap %s: %q, want %q", c.fit, c.gap, got, c.want)
		}
	}
}
