package part

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// A hole on the axis is drilled in the lathe, with its speeds, and asks for no
// template; beside it another that is set out asks for both.
func TestHoleOnTheAxis(t *testing.T) {
	t.Parallel()
	shaft := `
part: shaft
kind: shaft
material: C45
stock: {round: 60 mm, length: 105 mm}
profile: {outside: [{name: body, diameter: 50, length: 100}]}
holes:
  - {name: draw, face: back, at: [[0, 0]], size: M12 tap, depth: 28}
`
	for _, c := range []struct {
		more, machines string
		template       bool
	}{
		{"", "Lathe", false},
		{"  - {name: pins, face: back, circle: {pcd: 30, count: 2}, size: 6, depth: 10}\n", "Lathe Drill", true},
		{"  - {name: off, face: front, at: [[0, 1]], size: 6, depth: 10}\n", "Drill Lathe", false},
	} {
		m := work(t, "mm", shaft+c.more)
		var machines []string
		for _, o := range m.Out.Operations {
			if strings.Contains(o.Title, "tap") || strings.Contains(o.Title, "Ø6") {
				machines = append(machines, string(o.Machine))
			}
		}
		i := slices.IndexFunc(m.Out.Faces, func(f *plan.Face) bool { return f.Face == parts.Back })
		if got := strings.Join(machines, " "); got != c.machines || (m.Out.Faces[i].NoTemplate == "") != c.template {
			t.Errorf("%s: %s, no template: %q", c.more, got, m.Out.Faces[i].NoTemplate)
		}
		sets := slices.ContainsFunc(m.Out.Operations, func(o plan.Operation) bool { return strings.Contains(o.Title, "punch") })
		if sets != (c.more != "") {
			t.Errorf("%q: sets out %v", c.more, sets)
		}
	}
}
