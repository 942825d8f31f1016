package joint_test

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A shaft turns in bushes of two plates that are bolted over a spacer, whose holes of 9 leave M8 a play of 2 with nuts: nothing
// else has the bushes in line, be they there by then or not. A spigot on both sides of the spacer does, or dowels in
// both plates; on one side it does not. A shaft for each bush asks for nothing.
func TestInLineBy(t *testing.T) {
	t.Parallel()
	const (
		plate   = "part: %\nkind: turned\nmaterial: S235\nstock: {round: 160, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 150, length: 20}@]\n  inside: [{name: seat, diameter: 40, fit: H7, length: 20}#]\nholes:\n  - {name: h, face: front, circle: {pcd: 120, count: 4}, size: M8 clearance}\n"
		outside = ", {name: spigot, diameter: 90, fit: f7, length: 4}"
		inside  = ", {name: lip, diameter: 60, length: 4}"
		dowels  = "  - {name: dowels, face: front, at: [[0, 65], [0, -65]], size: {diameter: 8, fit: H7}}\n"
		spacer  = "part: spacer\nkind: turned\nmaterial: S235\nstock: {round: 160, cut: saw}\nprofile:\n  outside: [{name: rim, diameter: 150, length: 60}]\n  inside: [{name: bore, diameter: 90, fit: H7, length: 60}]\nholes:\n  - {name: h, face: front, circle: {pcd: 120, count: 4}, size: M8 clearance}\n"
		bush    = "part: bush\nkind: turned\nquantity: 2\nmaterial: CuSn8\nstock: {round: 45, cut: saw}\nprofile:\n  outside: [{name: body, diameter: 40, fit: s6, length: 20}]\n  inside: [{name: bore, diameter: 30, fit: D9, length: 20}]\n"
		shaft   = "part: shaft\nkind: turned\nquantity: 2\nmaterial: C45\nstock: {round: 35, cut: saw}\nprofile:\n  outside: [{name: journal, diameter: 30, fit: h7, length: 120}]\n"
		byPlay  = "bushes-by-play, bush 1, bush 2, shaft 1, 2"
	)
	plain, spigot := strings.NewReplacer("@", "", "#", ""), strings.NewReplacer("@", outside, "#", inside)
	for _, c := range []struct {
		name                string
		a, b                *strings.Replacer
		before, more, other string
		want                string
	}{
		{"by their play", plain, plain, "", "", "1", byPlay},
		{"bolted before", plain, plain, ", before: rear", "", "1", "bushes-early, bush 1, bush 2, shaft 1, 2"},
		{"spigots", spigot, spigot, "", "", "1", ""},
		{"one spigot", spigot, plain, "", "", "1", byPlay},
		{"dowels", plain, plain, "", dowels, "1", ""},
		{"two shafts", plain, plain, "", "", "2", ""},
	} {
		of := func(name string, r *strings.Replacer) string {
			return r.Replace(strings.Replace(plate, "%", name, 1)) + c.more
		}
		joints := "{name: front, press: {shaft: bush#1.body, bore: a.seat}, level: front-with-front}\n  - {name: rear, press: {shaft: bush#2.body, bore: b.seat}, level: front-with-front}\n" +
			"  - {name: cage, bolt: {through: a.h, stack: [spacer.h], into: b.h, bolt: M8 8.8, nut: yes}, face: back-on-back" + c.before + "}\n" +
			"  - {name: in, slide: {hub: bush#1.bore, on: shaft#1.journal}, level: front-with-front, after: [cage, front, rear]}\n  - {name: too, slide: {hub: bush#2.bore, on: shaft#" + c.other + ".journal}, after: in}\n"
		if got := foundIn(t, []plan.ProblemKind{plan.BushesByPlay, plan.BushesEarly}, joints, of("a", c.a), of("b", c.b), spacer, bush, shaft); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
