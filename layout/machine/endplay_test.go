package machine_test

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A tube of 80 with a bush of 25 flush with each end, and a shaft that turns in both, from its head to an arm that a
// nut holds on a shoulder. At class m (ISO 2768-1) lengths of 30 to 120 are ±0.3 and of 6 to 30 ±0.2: a journal of 80.5
// may be 80.2, and the tube 80.3. Between the bushes are 80 less 25 twice: at the least 79.7 - 50.4 = 29.3, where a
// collar of 29.2 may be 30: the whole, 89.4 ± 0.3, less 25.2 ± 0.2 and 35 ± 0.3.
func TestEndPlays(t *testing.T) {
	t.Parallel()
	const arm = "{name: head, diameter: 36, length: 8}, {name: journal, diameter: 25, fit: e8, length: 80.5}, {name: arm, diameter: 22, fit: h7, length: 20}, {name: end, thread: M20, length: 24}"
	const collar = "{name: journal, diameter: 25, fit: e8, length: 25.2}, {name: collar, diameter: 30, length: 29.2}, {name: tail, diameter: 25, fit: e8, length: 35}"
	kept := "  - {name: arm, slide: {hub: arm.bore, on: shaft.arm, kept-by: shaft.end}}\n"
	free := "  - {name: arm, weld: {part: arm.outline, to: tube.outside, type: fillet}, place: {on: top, with: bottom, at: [0, -30], front: up}}\n"
	for _, c := range []struct{ name, steps, arm, loose, want string }{
		{"short by its limits", arm, kept, "", "end-play-none Shaft Shaft Bush 1 Arm Bush 2 -0.1 0.5"},
		{"by hundredths", strings.Replace(arm, "80.5", "80.512", 1), kept, "", "end-play-none Shaft Shaft Bush 1 Arm Bush 2 -0.09 0.512"},
		{"longer", strings.Replace(arm, "80.5", "80.7", 1), kept, "", ""},
		{"with none at the limits", strings.Replace(arm, "80.5", "80.6", 1), kept, "", "end-play-none Shaft Shaft Bush 1 Arm Bush 2 0 0.6"},
		{"limited closer", strings.Replace(arm, "80.5", "80.5, length-limits: [80.4, 80.5]", 1), kept, "", ""},
		{"with a spacer by words", arm, kept, "loose:\n  - {item: spacer 25 x 36, how: between the arm and the bush as it fits, after: arm}\n", ""},
		{"free to run out", arm, free, "", ""},
		{"a collar between the bushes", collar, free, "", "end-play-none Shaft Shaft Bush 2 Shaft Bush 1 -0.7 0.8"},
		{"one with limits", strings.Replace(collar, "29.2", "29.2, length-limits: [29, 29.2]", 1), free, "", ""},
		{"one longer by its limits", strings.Replace(collar, "29.2", "29.2, length-limits: [29, 29.3]", 1), free, "", "end-play-none Shaft Shaft Bush 2 Shaft Bush 1 0 0.8"},
	} {
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [tube.yaml, bush.yaml, shaft.yaml, arm.yaml]\njoints:\n" +
				"  - {name: one, press: {shaft: bush#1.outside, bore: tube.front}, level: front-with-front}\n  - {name: two, press: {shaft: bush#2.outside, bore: tube.back}, level: back-with-back}\n" +
				"  - {name: turn, slide: {hub: bush#1.bore, on: shaft.journal}, " + map[bool]string{true: "face: front-on-back", false: "level: front-with-front"}[c.steps != collar && strings.HasPrefix(c.steps, "{name: head")] + "}\n" + c.arm + c.loose,
			"tube.yaml":  "part: tube\ntitle: Tube\nkind: tube\nmaterial: S355\nstock: {tube: 50, wall: 8, length: 84, cut: saw}\nprofile:\n  outside: [{name: outside, diameter: 50, length: 80}]\n  inside: [{name: front, diameter: 36, fit: H7, length: 26}, {name: middle, diameter: 34, length: 28}, {name: back, diameter: 36, fit: H7, length: 26}]\n",
			"bush.yaml":  "part: bush\ntitle: Bush\nkind: turned\nquantity: 2\nmaterial: CuSn8\nstock: {round: 40, length: 30, cut: saw}\nprofile:\n  outside: [{name: outside, diameter: 36, fit: n6, length: 25}]\n  inside: [{name: bore, diameter: 25, fit: F8, length: 25}]\n",
			"shaft.yaml": "part: shaft\ntitle: Shaft\nkind: shaft\nmaterial: C45\nstock: {round: 40, length: 150, cut: saw}\nprofile:\n  outside: [" + c.steps + "]\n",
			"arm.yaml":   "part: arm\ntitle: Arm\nkind: plate\nmaterial: S355\nstock: {plate: 25, cut: waterjet}\noutline: {rectangle: [60, 50]}\nbore: {diameter: 22, fit: H8, leave: 3}\n",
		}, plan.EndPlayNone)
		if got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}

// Bushes of 12 in two plates of 12 as bought, 100 apart on pillars, and a collar of 99 between: it may be 99.05, and at
// class m each bush 12.2, and so stand in by 0.2. Pillars of 99.95 leave 99.95 - 0.4 - 99.05 = 0.5, those of 98 leave -1.45,
// less what the plates lack.
func TestEndPlayOverPillars(t *testing.T) {
	t.Parallel()
	for limits, want := range map[string]string{"[99.95, 100.05]": "", "[98, 102]": "end-play-unsure Shaft Shaft Bush 2 Shaft Bush 1 -1.45 1"} {
		plate := "kind: plate\nmaterial: S355\ntop: scribe\nstock: {plate: 12, cut: laser}\noutline: {rectangle: [200, 100]}\nbore: {diameter: 36, fit: H7, leave: 3}\nholes: [{name: pillars, at: [[-70, 0], [70, 0]], size: M16 clearance}]\n"
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [front.yaml, back.yaml, pillar.yaml, bush.yaml, shaft.yaml]\njoints:\n" +
				"  - {name: one, press: {shaft: bush#1.outside, bore: front.bore}, level: front-with-front}\n  - {name: two, press: {shaft: bush#2.outside, bore: back.bore}, level: back-with-back}\n" +
				"  - {name: pillars, bolt: {through: back.pillars, into: front.pillars, bolt: M16, stud: pillar, nut: yes}, face: front-on-back}\n" +
				"  - {name: turn, slide: {hub: bush#1.bore, on: shaft.journal}, place: {on: front, with: back, at: [0, 0], top: up, gap: -20}}\n",
			"front.yaml":  "part: front\ntitle: Front\n" + plate,
			"back.yaml":   "part: back\ntitle: Back\n" + plate,
			"pillar.yaml": "part: pillar\ntitle: Pillar\nkind: turned\nquantity: 2\nmaterial: C45\nstock: {round: 32, length: 170}\nprofile:\n  outside: [{name: first, thread: M16, length: 32}, {name: body, diameter: 30, length: 100, length-limits: " + limits + "}, {name: last, thread: M16, length: 32}]\n",
			"bush.yaml":   "part: bush\ntitle: Bush\nkind: turned\nquantity: 2\nmaterial: CuSn8\nstock: {round: 40, length: 16}\nprofile:\n  outside: [{name: outside, diameter: 36, fit: n6, length: 12}]\n  inside: [{name: bore, diameter: 25, fit: F8, length: 12}]\n",
			"shaft.yaml":  "part: shaft\ntitle: Shaft\nkind: shaft\nmaterial: C45\nstock: {round: 40, length: 145}\nprofile:\n  outside: [{name: journal, diameter: 25, fit: e8, length: 20}, {name: collar, diameter: 32, length: 99, length-limits: [98.95, 99.05]}, {name: tail, diameter: 25, fit: e8, length: 20}]\n",
		}, plan.EndPlayNone, plan.EndPlayUnsure)
		if got != want {
			t.Errorf("%s: %q, want %q", limits, got, want)
		}
	}
}

// Two plates of 12 welded upright on a base, 100 apart: nothing along the shaft says how far, so that is taken as drawn, and not
// for sure. A collar of 99.8 between their bushes is what 139.8 ± 0.5 leaves less 20 ± 0.2 twice: 100.7 at the most.
func TestEndPlayOnABase(t *testing.T) {
	t.Parallel()
	for collar, want := range map[string]string{"99": "", "99.8": "end-play-unsure Shaft Shaft Bush 2 Shaft Bush 1 -0.7 0.2"} {
		plate := "kind: plate\nmaterial: S355\ntop: scribe\nstock: {plate: 12, cut: laser}\noutline: {rectangle: [200, 100]}\nbore: {diameter: 36, fit: H7, leave: 3}\n"
		place := func(name, y string) string {
			return "  - {name: " + name + ", weld: {part: " + name + ".outline, to: base.outline, type: fillet, length: 150, sides: 2}, place: {on: front, with: bottom, at: [0, " + y + "], front: up}}\n"
		}
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [base.yaml, front.yaml, back.yaml, bush.yaml, shaft.yaml]\njoints:\n" + place("front", "56") + place("back", "-56") +
				"  - {name: one, press: {shaft: bush#1.outside, bore: front.bore}, level: front-with-front}\n  - {name: two, press: {shaft: bush#2.outside, bore: back.bore}, level: back-with-back}\n" +
				"  - {name: turn, slide: {hub: bush#1.bore, on: shaft.journal}, place: {on: front, with: back, at: [0, 0], top: up, gap: -20}}\n",
			"base.yaml":  "part: base\ntitle: Base\nkind: plate\nmaterial: S355\nstock: {plate: 15, cut: laser}\noutline: {rectangle: [240, 200]}\n",
			"front.yaml": "part: front\ntitle: Front\n" + plate,
			"back.yaml":  "part: back\ntitle: Back\n" + plate,
			"bush.yaml":  "part: bush\ntitle: Bush\nkind: turned\nquantity: 2\nmaterial: CuSn8\nstock: {round: 40, length: 16}\nprofile:\n  outside: [{name: outside, diameter: 36, fit: n6, length: 12}]\n  inside: [{name: bore, diameter: 25, fit: F8, length: 12}]\n",
			"shaft.yaml": "part: shaft\ntitle: Shaft\nkind: shaft\nmaterial: C45\nstock: {round: 40, length: 145}\nprofile:\n  outside: [{name: journal, diameter: 25, fit: e8, length: 20}, {name: collar, diameter: 32, length: " + collar + "}, {name: tail, diameter: 25, fit: e8, length: 20}]\n",
		}, plan.EndPlayNone, plan.EndPlayUnsure)
		if got != want {
			t.Errorf("%s: %q, want %q", collar, got, want)
		}
	}
}

// A shaft of 36 × 8, 25 × 80.5, 22 × 20 and M20 × 24 has its centre of gravity 57.3 behind its front: 24 behind a bush of
// 25 against its head, and between that and a second one. One of 36 × 80 and 25 × 30 has it (36² · 80 · 40 + 25² · 30 · 95) / (36² · 80 + 25² · 30) = 48.4
// behind its front, 32 before the bush; of what no density is known of nobody knows where.
func TestOneBush(t *testing.T) {
	t.Parallel()
	const two = "  - {name: two, press: {shaft: bush#2.outside, bore: tube.back}, level: back-with-back}\n"
	const steps = "{name: head, diameter: 36, length: 8}, {name: journal, diameter: 25, fit: e8, length: 80.5}, {name: arm, diameter: 22, fit: h7, length: 20}, {name: end, thread: M20, length: 24}"
	for _, c := range []struct{ two, up, steps, material, want string }{
		{"", "", steps, "C45", "one-bush Shaft Bush 1 24"},
		{two, "", steps, "C45", ""},
		{"", "up: front\n", steps, "C45", ""}, // it stands
		{"", "", "{name: head, diameter: 36, length: 80}, {name: journal, diameter: 25, fit: e8, length: 30}", "C45", "one-bush Shaft Bush 1 32"},
		{"", "", steps, "unobtainium", ""},
	} {
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\n" + c.up + "parts: [tube.yaml, bush.yaml, shaft.yaml]\njoints:\n" +
				"  - {name: one, press: {shaft: bush#1.outside, bore: tube.front}, level: front-with-front}\n" + c.two +
				"  - {name: turn, slide: {hub: bush#1.bore, on: shaft.journal}, face: front-on-back}\n",
			"tube.yaml":  "part: tube\ntitle: Tube\nkind: tube\nmaterial: S355\nstock: {tube: 50, wall: 8, length: 84, cut: saw}\nprofile:\n  outside: [{name: outside, diameter: 50, length: 80}]\n  inside: [{name: front, diameter: 36, fit: H7, length: 26}, {name: middle, diameter: 34, length: 28}, {name: back, diameter: 36, fit: H7, length: 26}]\n",
			"bush.yaml":  "part: bush\ntitle: Bush\nkind: turned\nquantity: 2\nmaterial: CuSn8\nstock: {round: 40, length: 30, cut: saw}\nprofile:\n  outside: [{name: outside, diameter: 36, fit: n6, length: 25}]\n  inside: [{name: bore, diameter: 25, fit: F8, length: 25}]\n",
			"shaft.yaml": "part: shaft\ntitle: Shaft\nkind: shaft\nmaterial: " + c.material + "\nstock: {round: 40, length: 150, cut: saw}\nprofile:\n  outside: [" + c.steps + "]\n",
		}, plan.OneBush)
		if got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// Two flanges are bolted face to face, each with a chamber of 6 behind its bore, a collar of 36 in both: each floor lies 20 ± 0.2 less
// 14 ± 0.2 (class m) from the other flange, so that between them are 11.2 at the least.
func TestEndPlayInAChamber(t *testing.T) {
	t.Parallel()
	flange := func(name, inside string) string {
		return "part: " + name + "\nkind: turned\nmaterial: CuSn8\nstock: {round: 105, length: 24}\nprofile:\n  outside: [{name: rim, diameter: 100, length: 20}]\n  inside: [" + inside + "]\nholes:\n  - {name: h, face: front, circle: {pcd: 75, count: 4}, size: M8 clearance}\n"
	}
	const bore, chamber = "{name: bore, diameter: 25, fit: F8, length: 14}", "{name: chamber, diameter: 40, length: 6}"
	for collar, want := range map[string]string{"11.1, length-limits: [11, 11.1]": "", "11.2, length-limits: [11, 11.2]": "end-play-none shaft shaft back shaft front 0 0.8", "11.25, length-limits: [11, 11.25]": "end-play-none shaft shaft back shaft front -0.05 0.75"} {
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [front.yaml, back.yaml, shaft.yaml]\njoints:\n  - {name: j, bolt: {through: front.h, into: back.h, bolt: M8 8.8, nut: yes}, face: back-on-front}\n" +
				"  - {name: turn, slide: {hub: front.bore, on: shaft.journal}, level: front-with-front}\n",
			"front.yaml": flange("front", bore+", "+chamber), "back.yaml": flange("back", chamber+", "+bore),
			"shaft.yaml": "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 40, length: 90}\nprofile:\n  outside: [{name: journal, diameter: 25, fit: e8, length: 14.1}, {name: collar, diameter: 36, length: " + collar + "}, {name: tail, diameter: 25, fit: e8, length: 30}]\n",
		}, plan.EndPlayNone, plan.EndPlayUnsure)
		if got != want {
			t.Errorf("%s: %q, want %q", collar, got, want)
		}
	}
}
