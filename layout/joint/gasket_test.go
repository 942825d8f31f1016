package joint_test

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/layouttest"
)

// A soft gasket between two faces: no preload, torque or closed gap is claimed of its bolts, but that it is compressed
// alike, within a tenth of what it measures free. One of metal, and another sheet, take the torque.
func TestSoftGasket(t *testing.T) {
	t.Parallel()
	const job = `job: door
units: mm
tolerance: m
parts: [cover.yaml, between.yaml, flange.yaml]
joints:
  - name: door
    bolt: {through: cover.bolts, stack: [between.bolts], into: flange.bolts, bolt: M10 8.8, washer: yes, nut: yes}
    face: back-on-front
`
	flat := func(name, thick, more string) string {
		return "part: " + name + "\nkind: plate\ntop: punch\nstock: {plate: " + thick + ", cut: laser}\noutline: {circle: 200}\nholes:\n  - {name: bolts, circle: {pcd: 160, count: 4}, size: 11}\n" + more
	}
	for _, c := range []struct {
		what, more string
		soft       bool
	}{
		{"by its title", "title: Door gasket\nmaterial: EPDM\n", true},
		{"by its use", "for: gasket\nmaterial: NBR\n", true},
		{"of a material not said", "title: Gasket\n", true},
		{"of metal", "title: Door gasket\nmaterial: 1.4301\n", false},
		{"no gasket", "title: Shim\nmaterial: PA6\n", false},
		{"said not to be one", "title: Gasket carrier\nfor: other\n", false},
	} {
		t.Run(c.what, func(t *testing.T) {
			t.Parallel()
			_, p := layouttest.Load(t, layouttest.Write(t, map[string]string{"job.yaml": job, "cover.yaml": flat("cover", "10", "material: S235\n"), "between.yaml": flat("between", "4", c.more), "flange.yaml": flat("flange", "12", "material: S235\n")}))
			b, steps, checks := p.Joints[0].Bolt, fmt.Sprint(p.Joints[0].Steps), fmt.Sprint(p.Joints[0].Checks)
			if soft := b.Soft != nil; soft != c.soft || soft && b.Soft.ThickMm != 4 {
				t.Errorf("soft %+v", b.Soft)
			}
			if b.TorqueNm > 0 == c.soft || b.PreloadN > 0 == c.soft || b.GripMm != 26 {
				t.Errorf("%v N m, %v N, grip %v", b.TorqueNm, b.PreloadN, b.GripMm)
			}
			for text, want := range map[string]bool{"is compressed as its maker says, alike at every bolt": c.soft, "second ": !c.soft, "feeler does not enter": !c.soft, "alike at every bolt within 0.4 mm": c.soft} {
				if strings.Contains(steps, text) != want {
					t.Errorf("steps say %q: %v", text, !want)
				}
			}
			if strings.Contains(checks, "closed") == c.soft || strings.Contains(checks, "alike at every bolt within 0.4 mm") != c.soft || strings.Contains(checks, "N m") == c.soft {
				t.Errorf("checks %s", checks)
			}
		})
	}
}
