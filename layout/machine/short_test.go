package machine_test

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// Two rails of 40 stand 300 apart on a plate, and a cross bar is welded to one of them: it reaches the other within 0.2,
// or stops before it, by a side of its section at the most; what is shorter was not meant to reach. Half past
// the end of the rail it stands free.
func TestBarShort(t *testing.T) {
	t.Parallel()
	const job = `job: j
units: mm
tolerance: m
up: front
parts: [base.yaml, rail.yaml, cross.yaml, stop.yaml]
joints:
  - name: rail-a
    weld: {part: rail#1.back, to: base.outline, type: fillet, size: 3, length: 400, sides: 2}
    place: {on: front, with: back, at: [-170, 0], top: left}
  - name: rail-b
    weld: {part: rail#2.back, to: base.outline, type: fillet, size: 3, length: 400, sides: 2}
    place: {on: front, with: back, at: [170, 0], top: left}
  - name: cross
    weld: {part: cross.left, to: rail#1.bottom, type: fillet, size: 3}
    place: {on: bottom, with: left, at: [0, 0], front: up}
`
	const railB = "  - name: rail-b\n    weld: {part: rail#2.back, to: base.outline, type: fillet, size: 3, length: 400, sides: 2}\n    place: {on: front, with: back, at: [170, 0], top: left}\n"
	const far = "  - name: far\n    weld: {part: cross.right, to: rail#2.top, type: fillet, size: 3}\n"
	bar := func(name, quantity, length string) string {
		return "part: " + name + "\nkind: bar\nquantity: " + quantity + "\nmaterial: S235\nbar: {square: 40, wall: 3, length: " + length + "}\n"
	}
	for _, c := range []struct{ length, more, was, is, want string }{
		{"300", "", "", "", ""},
		{"299.9", "", "", "", ""},
		{"299.5", "", "", "", "bar-short cross right 0.5 rail 2 300"},
		{"260.1", "", "", "", "bar-short cross right 39.9 rail 2 300"},
		{"259.9", "", "", "", ""},
		{"290", far, "", "", ""},
		{"290", "loose:\n  - {part: stop, how: laid there, after: cross, lies: [{on: base.front, with: back, at: [170, 0], top: left}]}\n", railB, "", ""}, // a rail that is laid there is none of the frame's
		{"290", "", "at: [0, 0]", "at: [228, 0]", ""}, // half of it past the end of the rail: it looks at that with three fifths of its side
		{"290", "", "at: [0, 0]", "at: [227.9, 0]", "bar-short cross right 10 rail 2 300"},
		{"290", "", "at: [0, 0]", "at: [-227.9, 0]", "bar-short cross right 10 rail 2 300"},
		{"290", "", "at: [0, 0]", "at: [-228.1, 0]", ""},
		{"290", "", "at: [0, 0]", "at: [0, 2]", "bar-short cross right 10 rail 2 300"},
		{"290", "", "at: [0, 0]", "at: [0, 8.1]", ""},
		{"290", "", "at: [0, 0]", "at: [0, -2]", "bar-short cross right 10 rail 2 300"},
		{"290", "", "at: [0, 0]", "at: [0, -8.1]", ""},
		{"290", "", "", "", "bar-short cross right 10 rail 2 300"},
		{"290", "", "part: cross.left", "part: cross.bottom", "bar-short cross right 10 rail 2 300"}, // it stands on its left end all the same
		{"290.1234", "", "", "", "bar-short cross right 9.88 rail 2 300.003"},
	} {
		files := map[string]string{"job.yaml": strings.Replace(job, c.was, c.is, 1) + c.more, "rail.yaml": bar("rail", "2", "480"), "stop.yaml": bar("stop", "1", "480"), "cross.yaml": bar("cross", "1", c.length),
			"base.yaml": "part: base\nkind: plate\nmaterial: S235\ntop: punch\nstock: {plate: 10, cut: laser}\noutline: {rectangle: [500, 500]}\n"}
		if got := found(t, files, plan.BarShort); got != c.want {
			t.Errorf("%s long, %q: %q, want %q", c.length, c.is+c.more, got, c.want)
		}
	}
}
