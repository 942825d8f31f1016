package stand_test

import (
	"math"
	"strings"
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
		m, _ := load(t, write(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [base.yaml, plate.yaml, screw.yaml]\njoints:\n" +
				"  - {name: plate, weld: {part: plate.outline, to: base.outline, type: fillet, size: 5}, place: {on: front, with: back, at: [0, 0], top: up}}\n" +
				"loose:\n  - {part: screw, how: screwed down, after: plate, lies: [{on: plate.front, with: back, at: [" + c.x + ", 0], gap: " + c.gap + "}]}\n",
			"base.yaml":  "part: base\ntitle: Base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 120}\n",
			"plate.yaml": "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 100}\nholes: [{name: screw, at: [[-30, 0]], size: M16x1.5 tap}]\n",
			"screw.yaml": "part: screw\ntitle: Screw\nkind: turned\nmaterial: C45\nstock: {round: 40, length: 90}\nprofile:\n  outside: [{name: head, diameter: 38, length: 20}, {name: thread, thread: " + c.thread + ", length: 55}]\n",
		}))
		if may := m.Allowed([]assembly.Body{{ID: "screw#1"}}); c.gap == "-19" && c.want == "" && (len(may) != 1 || may[0].B != "plate#1" || math.Abs(may[0].UpToMm-1.312) > 1e-9) {
			t.Errorf("it may lie in %+v", may)
		}
		if got := argued(m, plan.PartsOverlap); got != c.want {
			t.Errorf("%s at %s, %s: %q, want %q", c.thread, c.x, c.gap, got, c.want)
		}
	}
}

// A nut lies in the thread of a pin that it is screwed on, and one of another pitch, or without a thread, is in its way.
func TestNutOnItsThread(t *testing.T) {
	t.Parallel()
	for thread, want := range map[string]string{"thread: M30": "", "thread: M30x2": "parts-overlap Pin Nut", "diameter: 28": "parts-overlap Pin Nut"} {
		got := found(t, map[string]string{
			"job.yaml":   "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, pin.yaml, nut.yaml]\njoints:\n  - {name: pin, press: {shaft: pin.seat, bore: plate.bore}, level: front-with-front}\nloose:\n  - {part: nut, how: screwed on by hand, after: pin, lies: [{on: pin.back, with: front, gap: -16}]}\n",
			"plate.yaml": "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 120}\nbore: {diameter: 32, fit: H7, leave: 2}\n",
			"pin.yaml":   "part: pin\ntitle: Pin\nkind: turned\nmaterial: C45\nstock: {round: 36, length: 44}\nprofile:\n  outside: [{name: seat, diameter: 32, fit: s6, length: 20}, {name: end, thread: M30, length: 20}]\nchamfers: [{edge: seat-front, size: 1, angle: 15, for: lead-in}]\n",
			"nut.yaml":   "part: nut\ntitle: Nut\nkind: turned\nmaterial: C45\nstock: {round: 60, length: 20}\nprofile:\n  outside: [{name: body, diameter: 55, length: 16}]\n  inside: [{name: hole, " + thread + ", length: 16}]\n",
		}, plan.PartsOverlap)
		if !strings.HasPrefix(got, want) || want == "" && got != "" {
			t.Errorf("%s: %q, want %q", thread, got, want)
		}
	}
}
