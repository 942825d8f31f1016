package joint_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/layouttest"
	"centrepop/layout/plan"
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
		{"a sheet of rubber", "title: Shim\nmaterial: NBR 70\n", true},
		{"of a metal that is not known", "title: Shim\nmaterial: Unobtainium\n", false},
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

// What bolts press on takes less than they do: their preload and torque are those of that. M10 of class 8.8 stretch by
// 0.75 of 33700 N, 25275; 14.63 mm of face round holes of 11 press with 19.0 kN on 260 MPa of EN AW-6082, and with
// 35.8 on 490 of S235 (VDI 2230). A washer 2 thick spreads it to 17.83. On a plastic no torque is said.
func TestSoftUnderHeads(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		what, cover, between, flange, bolt string
		preloadN                           float64
		share                              float64
		says                               string
	}{
		{"steel", "S235", "S235", "S235", "M10 8.8, nut: yes", 25275, 0, "First 15 N m, second 35 N m, third 51 N m"},
		{"under the heads", "EN AW-6082 T6", "S235", "S235", "M10 8.8, nut: yes", 18998, 0.75, "75 % of what the bolt takes: more presses into cover, which bears 260 MPa of EN AW-6082 T6"},
		{"under the nuts", "S235", "S235", "EN AW-6082 T6", "M10 8.8, nut: yes", 18998, 0.75, "more presses into flange"},
		{"into a thread", "S235", "S235", "EN AW-6082 T6", "M10 8.8", 25275, 0, ""},
		{"between", "S235", "EN AW-6082 T6", "S235", "M10 8.8, nut: yes", 25275, 0, ""},
		{"with washers", "EN AW-6082 T6", "S235", "S235", "M10 8.8, nut: yes, washer: yes", 25275, 0, ""},
		{"of a class that steel does not bear", "S235", "S235", "S235", "M10 12.9, nut: yes", 35805, 0.85, "third 72 N m"},
		{"none kept", "EN AW-6060 T6", "S235", "S235", "M10 8.8, nut: yes", 25275, 0, ""},
		{"a plastic between", "S235", "PA6", "S235", "M10 8.8, nut: yes", 0, 0, "until the joint is closed, and no further. No torque is worked out: between is of a plastic"},
		{"a plastic under the heads", "POM-C", "S235", "S235", "M10 8.8, nut: yes", 0, 0, "cover is of a plastic"},
	} {
		flat := func(name, metal string) string {
			return "part: " + name + "\nkind: plate\ntop: punch\nmaterial: " + metal + "\nstock: {plate: 10, cut: laser}\noutline: {circle: 200}\nholes:\n  - {name: bolts, circle: {pcd: 160, count: 4}, size: 11}\n"
		}
		flange := flat("flange", c.flange)
		if !strings.Contains(c.bolt, "nut") {
			flange = strings.NewReplacer("plate: 10", "plate: 30", "size: 11", "size: M10 tap").Replace(flange)
		}
		_, p := layouttest.Load(t, layouttest.Write(t, map[string]string{
			"job.yaml":   "job: J\nunits: mm\ntolerance: m\nparts: [cover.yaml, between.yaml, flange.yaml]\njoints:\n  - name: door\n    bolt: {through: cover.bolts, stack: [between.bolts], into: flange.bolts, bolt: " + c.bolt + "}\n    face: back-on-front\n",
			"cover.yaml": flat("cover", c.cover), "between.yaml": flat("between", c.between), "flange.yaml": flange,
		}))
		j := p.Joints[0]
		share := 0.0
		if j.Bolt.Seat != nil {
			share = j.Bolt.Seat.Share
		}
		if said := fmt.Sprint(j.Steps, j.Figures); j.Bolt.PreloadN != c.preloadN || share != c.share || !strings.Contains(said, c.says) {
			t.Errorf("%s: %v N, %v of it: %s", c.what, j.Bolt.PreloadN, share, said)
		}
	}
}

// A gasket with two holes for four bolts has no hole for the others: on the axis of the flange, and off it, where the gasket is placed
// by nothing else. One with more holes than bolts takes them.
func TestGasketHasAHoleForEachBolt(t *testing.T) {
	t.Parallel()
	flat := func(name, at, more string) string {
		return "part: " + name + "\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {square: 300}\nholes:\n  - {name: bolts, circle: {pcd: 160, count: 4, centre: " + at + "}, size: 11}\n" + more
	}
	for _, at := range []string{"[0, 0]", "[20, 0]"} {
		for count, want := range map[string]bool{"2": true, "4": false, "8": false} {
			_, p := layouttest.Load(t, layouttest.Write(t, map[string]string{
				"job.yaml":   "job: J\nunits: mm\ntolerance: m\nparts: [cover.yaml, between.yaml, flange.yaml]\njoints:\n  - {name: door, bolt: {through: cover.bolts, stack: [between.bolts], into: flange.bolts, bolt: M10 8.8, nut: yes}, face: back-on-front}\n",
				"cover.yaml": flat("cover", at, ""), "flange.yaml": flat("flange", at, ""), "between.yaml": strings.Replace(flat("between", at, "for: gasket\n"), "count: 4", "count: "+count, 1),
			}))
			found := slices.ContainsFunc(p.Faults, func(q plan.Problem) bool { return q.Kind == plan.OtherCount })
			if found != want {
				t.Errorf("%s holes at %s: found %v", count, at, found)
			}
		}
	}
}
