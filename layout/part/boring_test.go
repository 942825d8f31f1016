package part

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// A plate of which the bore alone is turned goes on the mill where it swings over the shop's
// lathe: 240 by 240 swings 339, a round 340, and off the middle what reaches farthest. What has
// more to turn, a thread in its bore or a size that the cutter holds stays where it was.
func TestBoredOnTheMill(t *testing.T) {
	t.Parallel()
	const rest = "bore: {diameter: 40, fit: H7, leave: 2}\nchamfers: [{edge: bore-front, size: 1, angle: 45}]\n"
	for _, c := range []struct{ part, machine string }{
		{"outline: {square: 240}\n" + rest, "Mill"},
		{"outline: {square: 230}\n" + rest, "Lathe"},
		{"outline: {circle: 339}\n" + rest, "Lathe"},
		{"outline: {circle: 340}\n" + rest, "Mill"},
		{"outline: {circle: 340, fit: h9, leave: 3}\n" + rest, "Lathe"},
		{"outline: {circle: 340, leave: 3}\n" + rest, "Lathe"},
		{"outline: {polygon: {points: [[-60, -60], [150, -60], [150, 60], [-60, 60]]}}\n" + rest, "Lathe"},
		{"outline: {polygon: {points: [[-60, -60], [170, -60], [170, 60], [-60, 60]]}}\n" + rest, "Mill"},
		{"outline: {circle: 400}\nbore: {diameter: 40, fit: H7, leave: 2}\ngrooves: [{name: g, in: bore, for: grease, axial: 4, width: 3, depth: 1}]\n", "Lathe"},
		{"outline: {circle: 400}\nbore: {diameter: 40}\n", ""},
	} {
		job := load(t, "mm", "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 12, cut: laser}\n"+c.part)
		job.Shop.SwingMm = parts.Length{Mm: 339.2, Pos: parts.Pos{File: "job.yaml", Line: 1}}
		m := Work(job, job.Parts[0])
		got, cut, chamfered := "", "", ""
		for _, o := range m.Out.Operations {
			switch {
			case strings.HasPrefix(o.Title, "Bore "):
				got = string(o.Machine)
				if milled := o.Machine == "Mill"; milled != (o.Tool == "boring head") || milled != strings.Contains(o.Holding, "under the spindle, the bore as cut true within 0.1") {
					t.Errorf("%s: %s with %s: %s", c.part, o.Machine, o.Tool, o.Holding)
				}
			case o.Title == "Chamfers":
				chamfered = string(o.Machine)
			case o.Machine == "Cutter":
				cut = strings.Join(o.Do, " ")
			}
		}
		if got != c.machine || chamfered != "" && chamfered != c.machine {
			t.Errorf("%s: bored on the %s, chamfered on the %s, want the %s", c.part, got, chamfered, c.machine)
		}
		if c.machine != "" && !strings.Contains(cut, "2 left on diameter for the "+strings.ToLower(c.machine)) {
			t.Errorf("%s: cut with the words %q", c.part, cut)
		}
		if c.machine == "Mill" && slices.ContainsFunc(m.Out.Operations, func(o plan.Operation) bool { return o.Machine == "Lathe" }) {
			t.Errorf("%s: on the lathe as well", c.part)
		}
	}
}
