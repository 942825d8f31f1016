package solid_test

import (
	"math"
	"testing"
)

// Every section's solid weighs what its area says, whichever way it is open.
func TestBarSolids(t *testing.T) {
	t.Parallel()
	for _, section := range []string{
		"round: 48.3, wall: 3.2", "round: 30", "square: 20", "rectangle: [40, 20]", "angle: [60, 40], wall: 5", "flat: [80, 8]",
		"channel: [100, 50], wall: 6, flange: 8.5", "channel: [100, 50], wall: 6, flange: 8.5, open: top", "channel: [100, 50], wall: 6, open: front", "channel: [100, 50], wall: 6, flange: 8.5, open: bottom",
	} {
		bar := "part: a\nkind: bar\nmaterial: S235\nquantity: 2\nbar: {" + section + ", length: 300, left: {mitre: 40, long: top}, right: {mitre: 20, long: bottom}}\n"
		m, pl := load(t, write(t, map[string]string{
			"job.yaml": "job: A\nunits: mm\ntolerance: m\nparts: [a.yaml]\njoints: [{name: j, weld: {part: a#1.left, to: a#2.left, type: square, length: 50, process: MAG}}]\n", "a.yaml": bar,
		}))
		b := body(t, m, "a#1")
		if kg, _, _ := b.Mass(); math.Abs(kg-pl.Parts[0].MassKg) > 1e-5*kg {
			t.Errorf("%s: solid of %v kg, sheet of %v kg", section, kg, pl.Parts[0].MassKg)
		}
	}
}
