package review

import (
	"strings"
	"testing"
)

// TestStandsOff: a gland that is laid 5 off its box with nuts of the thread of its studs is held by them and asks for no bolt
// joint; one that lies on it, or has other nuts or none, does.
func TestStandsOff(t *testing.T) {
	t.Parallel()
	const (
		box   = "part: box\nkind: flange\nmaterial: S235\ntop: punch\nstock: {round: 110}\nprofile:\n  outside: [{name: body, diameter: 108, length: 30}]\n  inside: [{name: bore, diameter: 50, length: 30}]\nholes: [{name: taps, circle: {pcd: 80, count: 2, first: 90}, size: M8 tap, depth: 16}]\n"
		gland = "part: gland\nkind: flange\nmaterial: S235\ntop: punch\nstock: {round: 110}\nprofile:\n  outside: [{name: rim, diameter: 108, length: 12}]\n  inside: [{name: bore, diameter: 40, length: 12}]\nholes: [{name: studs, circle: {pcd: 80, count: 2, first: 90}, size: M8 clearance}]\n"
		base  = "part: base\nkind: plate\nmaterial: S235\ntop: punch\nstock: {plate: 12, cut: laser}\noutline: {rectangle: [200, 200]}\n"
		job   = "job: t\nunits: mm\ntolerance: m\nparts: [base.yaml, box.yaml, gland.yaml]\njoints:\n  - {name: w, weld: {part: box.body, to: base.outline, type: fillet}, place: {on: front, with: back, at: [0, 0], top: up}}\nloose:\n  - {part: gland, how: on the packing, after: w, buy: \"nut M8\", count: 2, lies: [{on: box.front, with: back, gap: 5}]}\n"
	)
	for edit, asks := range map[string]bool{"gap: 5": false, "gap: 0": true, `"nut M6"`: true, `"grease"`: true} {
		old := map[bool]string{true: "gap: 5", false: `"nut M8"`}[strings.HasPrefix(edit, "gap")]
		said := false
		for _, f := range reviewOf(t, map[string]string{"base.yaml": base, "box.yaml": box, "gland.yaml": gland, "job.yaml": strings.Replace(job, old, edit, 1)}) {
			said = said || f.Code == "unjoined"
		}
		if said != asks {
			t.Errorf("%s: asks for a bolt joint %v", edit, said)
		}
	}
}
