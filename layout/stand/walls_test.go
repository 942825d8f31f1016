package stand_test

import (
	"math"
	"testing"

	"centrepop/layout/assembly"
)

// wallFiles are a rail with holes in its upper or lower side, a guard with holes in
// its flanges, and a plate on one of them.
func wallFiles(side, joint string) map[string]string {
	return map[string]string{
		"job.yaml": "job: Guard\nunits: mm\ntolerance: m\nparts: [rail.yaml, guard.yaml, plate.yaml]\njoints:\n" +
			"  - {name: guard, bolt: {through: guard.feet, into: rail.lugs, bolt: M6 8.8, nut: yes}, " + joint + "}\n" +
			"  - {name: plate, bolt: {through: plate.holes, into: guard.shelf, bolt: M5 8.8, nut: yes}, face: back-on-back}\n",
		"rail.yaml": "part: rail\nkind: bar\nmaterial: S235\nbar: {rectangle: [60, 40], wall: 3, length: 500}\nholes:\n" +
			"  - {name: lugs, on: " + side + ", along: {from: left, first: 100, pitch: 100, count: 3, up: 12}, size: M6 clearance, walls: both}\n",
		"guard.yaml": `part: guard
kind: folded
material: S235
stock: {sheet: 1.5, cut: laser}
outline: {rectangle: [280, 150]}
bends:
  radius: 2
  flanges:
    - {side: bottom, height: 40, toward: front}
    - {side: right, height: 30, angle: 60}
holes:
  - {name: feet, on: bottom, at: [[-100, 20], [0, 20], [100, 20]], size: M6 clearance}
  - {name: shelf, on: right, at: [[-40, 18], [40, 18]], size: M5 clearance}
`,
		"plate.yaml": "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 3, cut: laser}\noutline: {rectangle: [120, 24]}\nholes:\n  - {name: holes, at: [[-40, 0], [40, 0]], size: M5 clearance}\n",
	}
}

// Bolted by a flange, a guard stands where its holes meet those of a bar's side. By
// hand: the holes lie 12 from the lower edge of the side, which is the front of the top
// and the back of the bottom, and the corner of the guard 20 further, away from its free
// edge. The plate lies on the inside of a flange that leans 60° to the back.
func TestWalls(t *testing.T) {
	t.Parallel()
	of := func(x, y, z float64) assembly.Vec { return assembly.Vec{X: x, Y: y, Z: z} }
	for _, c := range []struct {
		side, joint            string
		corner, edge, top, end assembly.Vec // of the guard, in the rail's front view
	}{
		{"top", "face: back-on-front", of(-50, 30, 8), of(-50, 30, -32), of(-50, 180, 8), of(-190, 30, 8)},
		{"top", "face: back-on-front, rotate: 180", of(-50, 30, -32), of(-50, 30, 8), of(-50, 180, -32), of(90, 30, -32)},
		{"bottom", "face: back-on-front", of(-50, -30, -48), of(-50, -30, -8), of(-50, -180, -48), of(-190, -30, -48)},
	} {
		m, pl := load(t, write(t, wallFiles(c.side, c.joint)))
		rail, guard := body(t, m, "rail#1"), body(t, m, "guard#1")
		own := rail.Pose.Inverse().Of(guard.Pose)
		for _, p := range [][2]assembly.Vec{{of(0, -75, -1.5), c.corner}, {of(0, -75, 38.5), c.edge}, {of(0, 75, -1.5), c.top}, {of(140, -75, -1.5), c.end}} {
			if got := own.Apply(p[0]); got.Sub(p[1]).Len() > 1e-6 {
				t.Errorf("%s, %s: %v of the guard lies at %v, want %v", c.side, c.joint, p[0], got, p[1])
			}
		}
		on := guard.Pose.Inverse().Of(body(t, m, "plate#1").Pose)
		sin, cos := math.Sincos(math.Pi / 3)
		want := of(140+18*cos-1.5*sin, 0, -18*sin-1.5*cos)
		if got := on.Apply(of(0, 0, -3)); got.Sub(want).Len() > 1e-6 {
			t.Errorf("plate at %v, want %v", got, want)
		}
		// Through both walls of the rail, and square to it: the head on the guard.
		screw := body(t, m, "guard screw 1")
		if way := screw.Pose.Z.Sub(rail.Pose.Turn(of(0, c.corner.Y/30, 0))); way.Len() > 1e-6 {
			t.Errorf("the screw's head looks to %v", screw.Pose.Z)
		}
		for _, p := range m.Problems {
			t.Errorf("%s, %s: %s %s", c.side, c.joint, p.Kind, p.What)
		}
		if grip := pl.Joints[0].Bolt.GripMm; grip != 61.5 {
			t.Errorf("grip %v", grip)
		}
	}
}
