package stand_test

import (
	"fmt"
	"math"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/layouttest"
	"centrepop/layout/stand"
)

// TestStudsInSlots: a foot of 12 that its place has 4 to the right of where its slots stand over the holes of a base of
// 10: the studs stand 4 to the left of the slots, over the holes, and both nuts with them; M10 of ISO 4032 is 8.4 high, 16 across
// its flats, its corners along x. With the holes in the foot and the slots in the base the studs stand in the holes.
func TestStudsInSlots(t *testing.T) {
	t.Parallel()
	const of = "kind: plate\nmaterial: S235\n"
	const slots, holes = "slots: [{name: h, at: [[-40, 0], [40, 0]], width: 11, length: 31, turn: 90}]\n", "holes: [{name: h, at: [[-40, 0], [40, 0]], size: M10 clearance}]\n"
	for foot, base := range map[string]string{slots: holes, holes: slots} {
		m, p := layouttest.Load(t, layouttest.Write(t, map[string]string{
			"job.yaml":  "job: J\nunits: mm\ntolerance: m\nparts: [foot.yaml, base.yaml, stud.yaml]\njoints:\n  - {name: x, bolt: {through: foot.h, into: base.h, bolt: M10, stud: stud, washer: yes}, place: {on: front, with: back, at: [4, 0], top: up}}\n",
			"foot.yaml": "part: foot\n" + of + "stock: {plate: 12, cut: laser}\noutline: {rectangle: [140, 60]}\n" + foot,
			"base.yaml": "part: base\n" + of + "stock: {plate: 10, cut: laser}\noutline: {square: 200}\n" + base,
			"stud.yaml": "part: stud\nkind: turned\nquantity: 2\nmaterial: C45\nstock: {round: 10, length: 60, cut: saw}\nprofile:\n  outside: [{name: nose, thread: M10, length: 26}, {name: shank, diameter: 8, length: 8}, {name: tail, thread: M10, length: 24}]\n",
		}))
		if len(p.Faults) > 0 {
			t.Fatalf("%+v", p.Faults)
		}
		for n, x := range map[string][]float64{slots: {-44, 36}, holes: {-40, 40}}[foot] {
			for k, z := range []float64{0, -22 - 10.4} {
				layouttest.Boxed(t, m, fmt.Sprintf("x nut %d", n+1+2*k), assembly.Vec{X: x - 10, Y: -10, Z: z}, assembly.Vec{X: x + 10, Y: 10, Z: z + 10.4})
			}
			if at := m.Poses[fmt.Sprintf("stud#%d", n+1)].At; math.Abs(at.X-x) > 1e-9 || math.Abs(at.Y) > 1e-9 {
				t.Errorf("stud %d stands at %v", n+1, at)
			}
		}
	}
}

// TestStudsInTaps: studs of 12 in the threads of a block of 40 carry a nut and a washer (M4: 3.2 high of ISO 4032, 0.8 thick
// of ISO 7089) on the strap of 6 alone, none on the block.
func TestStudsInTaps(t *testing.T) {
	t.Parallel()
	const of = "kind: plate\nmaterial: S235\n"
	m, p := layouttest.Load(t, layouttest.Write(t, map[string]string{
		"job.yaml":   "job: J\nunits: mm\ntolerance: m\nparts: [strap.yaml, block.yaml, stud.yaml]\njoints:\n  - {name: x, bolt: {through: strap.h, into: block.h, bolt: M4, stud: stud, washer: yes}, face: back-on-front}\n",
		"strap.yaml": "part: strap\n" + of + "stock: {plate: 6}\noutline: {rectangle: [140, 60]}\nholes: [{name: h, at: [[-40, 0], [40, 0]], size: M4 clearance}]\n",
		"block.yaml": "part: block\n" + of + "stock: {plate: 40}\noutline: {rectangle: [140, 60]}\nholes: [{name: h, at: [[-40, 0], [40, 0]], size: M4 tap, depth: 15}]\n",
		"stud.yaml":  "part: stud\nkind: turned\nquantity: 2\nmaterial: C45\nstock: {round: 4, length: 30, cut: saw}\nprofile:\n  outside: [{name: nose, thread: M4, length: 12}, {name: tail, thread: M4, length: 10}]\n",
	}))
	if len(p.Faults) > 0 {
		t.Fatalf("%+v", p.Faults)
	}
	nuts := 0
	for _, b := range m.Bodies {
		if m.Roles[b.ID].Kind == stand.Nut {
			nuts++
			if box := b.Box(); math.Abs(box.High.Z-box.Low.Z-4) > 1e-9 {
				t.Errorf("%s: from %g to %g", b.ID, box.Low.Z, box.High.Z)
			}
		}
	}
	if nuts != 2 {
		t.Errorf("%d nuts", nuts)
	}
}
