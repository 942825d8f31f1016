package solid_test

import (
	"math"
	"testing"

	"centrepop/layout/assembly"
)

// A tray stands on a plate by two screws: its flanges are where they were folded
// to, and its holes where they were dimensioned.
func TestFolded(t *testing.T) {
	t.Parallel()
	m, pl := load(t, write(t, map[string]string{
		"job.yaml": `job: Tray
units: mm
tolerance: m
parts: [tray.yaml, plate.yaml]
joints:
  - name: feet
    bolt: {through: tray.feet, into: plate.taps, bolt: M5 8.8}
    face: back-on-front
    in-line: [tray.top, plate.top]
`,
		"tray.yaml": `part: tray
kind: folded
material: S235
top: scribe
stock: {sheet: 2, cut: laser}
outline: {rectangle: [200, 120]}
bends:
  radius: 2
  flanges:
    - {side: top, height: 40, toward: front}
    - {side: right, height: 30, toward: front, left: 20, right: 20}
    - {side: bottom, height: 25}
holes:
  - {name: feet, at: [[-40, 0], [40, 0]], size: M5 clearance}
  - {name: gland, on: top, at: [[-30, 20]], size: 20 mm}
  - {name: peg, on: right, at: [[10, 17]], size: 8 mm}
`,
		"plate.yaml": `part: plate
kind: plate
material: S235
top: scribe
stock: {plate: 12, cut: laser}
outline: {rectangle: [200, 100]}
holes:
  - {name: taps, at: [[-40, 0], [40, 0]], size: M5 tap}
`,
	}))
	b := body(t, m, "tray#1")
	own := b.Pose.Inverse()
	box := b.Box().Moved(own)
	if low, high := (assembly.Vec{X: -100, Y: -60, Z: -25}), (assembly.Vec{X: 100, Y: 60, Z: 38}); box.Low.Sub(low).Len() > 1e-6 || box.High.Sub(high).Len() > 1e-6 {
		t.Errorf("from %v to %v", box.Low, box.High)
	}
	for what, c := range map[string]struct {
		at    assembly.Vec
		metal bool
	}{
		"top flange": {assembly.Vec{X: 0, Y: 59, Z: 18}, true}, "gland": {assembly.Vec{X: -30, Y: 59, Z: 18}, false}, // 20 from the back of the base
		"right flange": {assembly.Vec{X: 99, Y: 0, Z: 15}, true}, "peg": {assembly.Vec{X: 99, Y: -10, Z: 15}, false},
		"beside the right flange": {assembly.Vec{X: 99, Y: 50, Z: -1}, true}, "its end": {assembly.Vec{X: 99, Y: 41, Z: 15}, false},
		"bottom flange": {assembly.Vec{X: 0, Y: -59, Z: -20}, true}, "its inside": {assembly.Vec{X: 0, Y: -57, Z: -20}, false}, "feet": {assembly.Vec{X: 40, Y: 0, Z: -1}, false},
	} {
		if got := b.Solid.Dist(c.at) < 0; got != c.metal {
			t.Errorf("%s: metal %v", what, got)
		}
	}
	// What the solid leaves out, the reliefs and the bends' stretch, is little.
	for _, p := range pl.Parts {
		if p.Name == "tray" {
			if kg := assembly.Together(m.Bodies[:1]).MassKg; math.Abs(kg-p.MassKg) > 0.012*p.MassKg {
				t.Errorf("solid of %v kg, sheet of %v kg", kg, p.MassKg)
			}
		}
	}
}
