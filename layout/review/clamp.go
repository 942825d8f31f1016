package review

import (
	"math"

	"centrepop/layout/clamp"
	"centrepop/layout/material"
	"centrepop/layout/plan"
)

// sawnMm is the narrowest cut of a saw through a ring. Common practice, no source: 1/32 in and
// hacksaw blades are about as wide.
const sawnMm = 0.75

// clamped looks for a split ring whose screw has too little metal: beside its hole,
// under its head, in its thread, or at the faces.
func (v *view) clamped(c *plan.ClampRow) {
	steel := true
	if m, err := material.Find(v.p.Material.Value); err == nil {
		steel = m.Kind.Data().Family == material.Steel
	}
	face := math.Min(c.AxialMm, v.lengthMm-c.AxialMm) - c.HeadMm/2
	for _, one := range []struct {
		what, rule, fix string
		have, least     float64
	}{
		{"little metal stays between its hole and the bore", "beside the hole a quarter of the screw, and not under " + v.mm(1), "the screw farther out, or smaller", c.InnerMm, clamp.LeastWallMm(c.MajorMm)},
		{"little metal stays between its hole and the outside", "beside the hole a quarter of the screw, and not under " + v.mm(1), "the screw farther in, or smaller", c.OuterMm, clamp.LeastWallMm(c.MajorMm)},
		{"little metal stays under its head", "half the screw of metal under the head", "the screw farther in, or a narrower cut", c.GripMm, clamp.LeastGripMm(c.MajorMm)},
		{"little of its thread engages", "the screw's diameter of thread in steel, half as much again elsewhere", "the screw farther in, or a smaller one", c.HoldsMm, clamp.LeastThreadMm(c.MajorMm, steel)},
		{"its counterbore lies close to a face", "beside the counterbore a quarter of the screw, and not under " + v.mm(1), "a longer ring, or a smaller screw", face, clamp.LeastWallMm(c.MajorMm)},
		{"its cut is narrower than a saw", "a slitting saw for a ring cuts " + v.mm(sawnMm) + " at the least, and a narrower cut is closed before the ring grips", "the width of the saw", v.p.Clamp.Slot.Mm, sawnMm},
	} {
		v.atLeast("clamp", v.p.Clamp.Pos, one.have, one.least, Finding{What: "clamp: " + one.what, Rule: one.rule, Fix: one.fix})
	}
}
