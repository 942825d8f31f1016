package stand_test

import (
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
)

// The loose parts of the jack, by hand from its drawings in inches. The tube's front lies 1/32
// under the flange's, at z = -1/32, its back 24 on: the key bar 20-1/2 deep ends there and is
// 2-1/2 long, its upper edge 0.22 under the tube's outside of 1-3/4; one stop collar ends 18
// deep, the other begins 7-1/4 under the tube; the stem of 37-3/4 begins 27 over its back. The
// hub of 1 lies on the collar of 7/8, whose back lies 2.092 behind the nut's front, and the
// cone 3/8 over the hub with its large end down.
func TestLoosePartsLie(t *testing.T) {
	t.Parallel()
	const mm, tube = 25.4, -1.0 / 32
	m, _ := load(t, "../../testdata/gatejack/job.yaml")
	at := func(id string, x, y [2]float64, z [2]float64) {
		boxed(t, m, id, assembly.Vec{X: mm * x[0], Y: mm * y[0], Z: mm * z[0]}, assembly.Vec{X: mm * x[1], Y: mm * y[1], Z: mm * z[1]})
	}
	round := func(id string, r, low, long float64) {
		at(id, [2]float64{-r, r}, [2]float64{-r, r}, [2]float64{low, low + long})
	}
	at("key-bar#1", [2]float64{-0.125, 0.125}, [2]float64{1.53 - 1.125, 1.53}, [2]float64{tube - 20.5, tube - 18})
	round("stop-collar#1", 1.46875, tube-18, 0.5)
	round("stop-collar#2", 1.46875, tube-24-7.25-0.5, 0.5)
	round("stem#1", 0.5, tube-24+27-37.75, 37.75)
	front := body(t, m, "drive-nut#1").Box().High.Z / mm
	round("lock-collar#1", 1, front-2.092, 0.875)
	round("handwheel-hub#1", 2, front-2.092+0.875, 1)
	round("rain-cone#1", 3.5, front-2.092+0.875+1+0.375, 2.5)
	if b := body(t, m, "rain-cone#1"); b.Pose.Z != assembly.AxisZ.Times(-1) {
		t.Errorf("the cone looks to %v", b.Pose.Z)
	}
}

// A screw of M16x1.5 lies in its tapped hole, 14.5 drilled, by its flank, 0.75, and in a hole of another pitch or
// beside its axis it is in the way. Its end, 22 deep in a plate of 20, is in what that lies on by 2.
func TestScrewInItsTap(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ thread, x, gap, want string }{
		{"M16x1.5", "-30", "-19", ""},
		{"M16x1.5", "-30", "-22", "parts-overlap Base Screw 2"},
		{"M16x1.5", "-29", "-19", "parts-overlap Plate Screw 1.75"},
		{"M16", "-30", "-19", "parts-overlap Plate Screw 0.75"},
	} {
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [base.yaml, plate.yaml, screw.yaml]\njoints:\n" +
				"  - {name: plate, weld: {part: plate.outline, to: base.outline, type: fillet, size: 5}, place: {on: front, with: back, at: [0, 0], top: up}}\n" +
				"loose:\n  - {part: screw, how: screwed down, after: plate, lies: [{on: plate.front, with: back, at: [" + c.x + ", 0], gap: " + c.gap + "}]}\n",
			"base.yaml":  "part: base\ntitle: Base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 120}\n",
			"plate.yaml": "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 100}\nholes: [{name: screw, at: [[-30, 0]], size: M16x1.5 tap}]\n",
			"screw.yaml": "part: screw\ntitle: Screw\nkind: turned\nmaterial: C45\nstock: {round: 40, length: 90}\nprofile:\n  outside: [{name: head, diameter: 38, length: 20}, {name: thread, thread: " + c.thread + ", length: 55}]\n",
		}, plan.PartsOverlap)
		if got != c.want {
			t.Errorf("%s at %s, %s: %q, want %q", c.thread, c.x, c.gap, got, c.want)
		}
	}
}
