package machine_test

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A gusset whose corner is clipped by the leg of a fillet clears it; clipped by
// less, or not at all, it stands on the weld. Welded first, or where the weld ends
// before its edge does, it is clear of it.
func TestOnBead(t *testing.T) {
	t.Parallel()
	const (
		base   = "part: base\ntitle: Base\nkind: plate\nmaterial: S235\nstock: {plate: 15 mm, cut: laser}\noutline: {rectangle: [300, 200]}\n"
		wall   = "part: wall\ntitle: Wall\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {rectangle: [200, 150]}\n"
		gusset = "part: gusset\ntitle: Gusset\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {polygon: {points: [[0, 0], [80, 0], [0, 80]]}}\n"
		job    = "job: J\nunits: mm\nparts: [base.yaml, wall.yaml, gusset.yaml]\njoints:\n  - name: upright\n    weld: {part: wall.outline, to: base.outline, type: fillet, size: 8 mm, length: 200 mm, sides: 2}\n    place: {on: front, with: bottom, from-left: 50 mm, from-bottom: 100 mm, front: down}\n" +
			"  - name: stay\n    weld: {part: gusset.outline, to: wall.outline, type: fillet, length: 80 mm, sides: 2}\n    place: {on: front, with: left, from-left: 20 mm, from-bottom: 0, front: left}\n    after: upright\n"
	)
	clip := func(mm string) []string {
		return []string{"[[0, 0]", "[[" + mm + ", 0]", "[0, 80]]", "[0, 80], [0, " + mm + "]]"}
	}
	for _, c := range []struct {
		name    string
		changes []string
		legMm   float64 // of the weld that it stands on; 0 where it is clear
	}{
		{"square", nil, 8}, {"clipped by 6", clip("6"), 8}, {"clipped by 9", clip("9"), 0}, {"a leg of 8.126", append(clip("6"), "size: 8", "size: 8.126"), 8.13}, {"a leg of 5 and 6 clipped", append(clip("6"), "size: 8", "size: 5"), 0},
		{"one side", []string{"length: 200 mm, sides: 2", "length: 200 mm, sides: 1"}, 0}, {"a weld that ends before", []string{"length: 200", "length: 120"}, 0}, {"that ends as near as its places lie", []string{"length: 200", "length: 198"}, 8}, {"and before", []string{"length: 200", "length: 197"}, 0},
		{"the gusset first", []string{"front: left}\n    after: upright", "front: left}\n    before: upright"}, 0},
	} {
		edit := strings.NewReplacer(c.changes...)
		m, _ := load(t, write(t, map[string]string{"base.yaml": base, "wall.yaml": wall, "gusset.yaml": edit.Replace(gusset), "job.yaml": edit.Replace(job)}))
		legMm := 0.0
		for _, p := range m.Problems {
			if p.Kind == plan.OnBead && p.Args[0].Text == "Gusset" && p.Args[1].Text == "Wall" {
				legMm = p.Args[2].Value
			} else {
				t.Errorf("%s: %s", c.name, p.What)
			}
		}
		if legMm != c.legMm {
			t.Errorf("%s: on a bead with a leg of %g, want %g", c.name, legMm, c.legMm)
		}
	}
}
