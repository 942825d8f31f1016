package part_test

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A copy that no weld holds is finished on the sheet, where all the others wait: the step after their last
// weld never comes to it. What stays on until then is what the bore as cut lacks.
func TestUnweldedCopies(t *testing.T) {
	t.Parallel()
	const plate = "part: p\nkind: plate\nquantity: 2\nmaterial: S355\nstock: {plate: 20, cut: laser}\noutline: {square: 100}\nbore: {diameter: 32, fit: H7, leave: 3, after-weld: yes}\n"
	const hub = "part: p\nkind: turned\nquantity: 2\nmaterial: S235\nstock: {round: 65}\nprofile:\n  outside: [{name: rim, diameter: 60, length: 10}, {name: body, diameter: 45, length: 15}]\n  inside: [{name: bore, diameter: 20, fit: H7, length: 25, after-weld: yes}]\nkeyways: [{name: key, in: bore}]\n"
	const base = "part: b\nkind: plate\nmaterial: S355\nstock: {plate: 20, cut: laser}\noutline: {square: 300}\n"
	weld := func(copy, feature string) string {
		return "joints:\n  - {name: w" + copy + ", weld: {part: p#" + copy + "." + feature + ", to: b.outline, type: fillet}, place: {on: front, with: back, at: [0, 0], top: up}}\n"
	}
	both := weld("1", "outline") + "  - {name: w2, weld: {part: p#2.outline, to: b.outline, type: fillet}, place: {on: back, with: back, at: [0, 0], top: up}}\n"
	for _, c := range []struct {
		joints, part string
		want, not    []string
	}{
		{weld("1", "outline"), plate, []string{"Bore as cut Ø29, until the welds.", "Finish piece 2 now", "Nothing is welded to piece 2: bore Ø32 H7.", "Rough to 0.5 mm under"}, []string{"final", "left on diameter for"}},
		{weld("2", "body"), hub, []string{"Nothing is welded to piece 1: bore Ø20 H7, set true by rim Ø60 as turned.", "For bore hold it, and set the tool, as in operation", "key: keyway 6 JS9 × 25. Clock 0°"}, nil},
		{"", plate, []string{"Finish all pieces now"}, nil},
		{weld("1", "outline"), strings.Replace(plate, "quantity: 2", "quantity: 3", 1), []string{"Finish pieces 2, 3 now"}, nil},
		// One drawn by its limits has no class, and a step on the lathe the limits that it is finished to.
		{weld("2", "body"), strings.Replace(hub, "fit: H7", "fit: {limits: [20.01, 20.03]}", 1), []string{"Nothing is welded to piece 1: bore Ø20, set true by rim Ø60 as turned.", "key: keyway 6 JS9 × 25"}, []string{"Ø20 limits"}},
		{"", strings.Replace(plate, "fit: H7", "fit: {limits: [32.01, 32.03]}", 1), []string{"Nothing is welded to all pieces: bore Ø32."}, []string{"Ø32 limits"}},
		{both, plate, []string{"Bore as cut Ø29, until the welds."}, []string{"Finish"}},
	} {
		p := mustJob(t, "units: mm\n"+c.joints, c.part, base).Parts[0]
		inOrder(t, p, c.want...)
		for i, o := range p.Operations {
			if o.N != i+1 {
				t.Errorf("%s: operation %d is the %d.: %s", c.joints, o.N, i+1, o.Title)
			}
		}
		for _, not := range c.not {
			absent(t, p, not)
		}
		finished := slices.ContainsFunc(p.Checks, func(k plan.Check) bool {
			return strings.Contains(k.What, ", finished: bore") && (strings.Contains(k.Wanted, "H7") || strings.Contains(k.Limits, ".01 – "))
		})
		if i := slices.IndexFunc(p.Operations, func(o plan.Operation) bool { return strings.HasPrefix(o.Title, "Finish ") }); i >= 0 && len(p.Operations[i].Limits) != 1 {
			t.Errorf("%s: to no limits: %+v", c.part, p.Operations[i])
		}
		if finished == (c.joints == both) {
			t.Errorf("%s: %+v", c.joints, p.Checks)
		}
		if c.part == plate && !slices.ContainsFunc(p.Notes, func(n string) bool { return strings.Contains(n, ": 3 mm stay on the diameter until then.") }) {
			t.Error(p.Notes)
		}
	}
}
