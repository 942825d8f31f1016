package solid_test

import (
	"math"
	"testing"

	"centrepop/layout/assembly"
)

// What holes and slots take out: a tapped hole at its drill, a counterbore, an
// obround pocket, a keyseat as a pocket with straight sides, and grooves.
func TestWhatIsCutOut(t *testing.T) {
	t.Parallel()
	block := "part: block\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {rectangle: [200, 100]}\nholes:\n" +
		"  - {name: tap, at: [[-60, 0]], size: M8 tap}\n  - {name: sunk, face: back, at: [[-60, 30]], size: 11 mm, counterbore: {diameter: 18, depth: 11}}\n" +
		"slots:\n  - {name: pocket, face: front, at: [[40, 0]], width: 12, length: 40, turn: 0, depth: 7}\n"
	shaft := "part: shaft\nkind: shaft\nquantity: 1\nmaterial: S235\nstock: {round: 50 mm}\nprofile:\n  outside:\n    - {name: body, diameter: 40, length: 100}\n" +
		"radial:\n  - {name: seat, clock: 90, axial: 50, from: front, slot: {around: 10, along: 60}, depth: 5}\n" +
		"grooves:\n  - {name: grease, in: body, axial: 90, for: grease, width: 4, depth: 2}\n  - {name: seal, in: front, for: o-ring, o-ring: 20x2}\n  - {name: back, in: back, for: o-ring, o-ring: 20x2}\n" +
		"flats:\n  - {name: square, in: body, sides: 4, across: 34, clock: 45, length: 6}\n"
	job := "job: Cuts\nunits: mm\nparts: [block.yaml, shaft.yaml]\njoints:\n  - {name: stand, weld: {part: shaft.body, to: block.outline, type: fillet, length: 50}, place: {on: front, with: front, at: [0, 0], top: up}}\n"
	m, _ := load(t, write(t, map[string]string{"block.yaml": block, "shaft.yaml": shaft, "job.yaml": job}))
	// Tap drill 6.8; the pocket is 28 × 12 and a circle of 12.
	want := 200*100*20.0 - math.Pi*3.4*3.4*20 - math.Pi*(5.5*5.5*9+81*11) - (28*12+math.Pi*36)*7
	b := body(t, m, "block#1").Solid.Bulk()
	if math.Abs(b.VolumeMm3-want) > 0.5 {
		t.Errorf("block %.1f, want %.1f", b.VolumeMm3, want)
	}
	s := body(t, m, "shaft#1").Solid
	for _, c := range []struct {
		at   assembly.Vec
		want bool
	}{
		{assembly.Vec{X: 14.9, Z: -50}, true}, {assembly.Vec{X: 15.1, Z: -50}, false}, {assembly.Vec{X: 16, Y: 4.7, Z: -50}, false},
		{assembly.Vec{X: 16, Y: 5.2, Z: -50}, true}, {assembly.Vec{X: 16, Z: -79}, false}, {assembly.Vec{X: 16, Y: 4, Z: -79}, true}, {assembly.Vec{X: 16, Z: -81}, true},
		{assembly.Vec{X: 12.1, Y: 12.1, Z: -3}, false}, {assembly.Vec{X: 11.9, Y: 11.9, Z: -3}, true}, {assembly.Vec{X: 12.1, Y: 12.1, Z: -6.1}, true}, {assembly.Vec{X: -12.1, Y: 12.1, Z: -3}, false}, {assembly.Vec{X: 19.5, Z: -3}, true},
		{assembly.Vec{Y: 18.1, Z: -92}, false}, {assembly.Vec{Y: 17.9, Z: -92}, true}, {assembly.Vec{Y: 19, Z: -94.1}, true},
		{assembly.Vec{Y: 11, Z: -1.4}, false}, {assembly.Vec{Y: 11, Z: -1.6}, true}, {assembly.Vec{Y: 12.1, Z: -1}, true}, {assembly.Vec{Y: 9.1, Z: -1}, true},
		{assembly.Vec{Y: 11, Z: -98.6}, false}, {assembly.Vec{Y: 11, Z: -98.4}, true},
	} {
		if got := s.Dist(c.at) < 0; got != c.want {
			t.Errorf("%+v inside: %v", c.at, got)
		}
	}
}
