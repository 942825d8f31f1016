package machine

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// StandsMm is how far off a face a part still stands on it. Common practice, no
// source: what a weld bridges beside the touch of one corner.
const StandsMm = 0.5

func facing(plate, b *assembly.Body) (parts.Face, bool) {
	box, own := b.Box().Moved(plate.Pose.Inverse()), plate.Solid.Box()
	if box.Low.X > own.High.X || box.High.X < own.Low.X || box.Low.Y > own.High.Y || box.High.Y < own.Low.Y {
		return "", false
	}
	switch {
	case geom.Over(StandsMm, math.Abs(box.Low.Z-own.High.Z)):
		return parts.Front, true
	case geom.Over(StandsMm, math.Abs(box.High.Z-own.Low.Z)):
		return parts.Back, true
	}
	return "", false
}

func outward(b *assembly.Body, face parts.Face) assembly.Vec {
	return parts.At(face, b.Pose.Z, b.Pose.Z.Reversed())
}

// Touch tells whether two bodies touch on a face.
func Touch(a, b *assembly.Body) bool {
	if !b.Box().Meets(a.Box(), StandsMm) {
		return false
	}
	for _, way := range []assembly.Vec{assembly.AxisX, assembly.AxisY, assembly.AxisZ} {
		if assembly.Touches(a, b, way, StandsMm) || assembly.Touches(a, b, way.Reversed(), StandsMm) {
			return true
		}
	}
	return false
}

// CommonMm is the longest way along which the rooms of two bodies lie beside one another, along x, y or z.
func CommonMm(a, b *assembly.Body) float64 {
	size := a.Box().Common(b.Box()).Size()
	return max(size.X, size.Y, size.Z)
}

// Steep is how much of a direction lies along another that it is as good as. Common practice, no source.
const Steep = 0.9

// TouchMm2 is the area on which a body going one way, of length 1, touches another, within StandsMm.
func TouchMm2(on, b *assembly.Body, toward assembly.Vec) (mm2 float64) {
	if !on.Box().Meets(b.Box(), StandsMm) {
		return 0
	}
	for _, g := range assembly.Gaps(on, b, toward) {
		if geom.Over(StandsMm, math.Abs(g.Mm)) {
			mm2 += g.AreaMm2
		}
	}
	return mm2
}

// overlapMm is the least overlap that is reported between parts that no
// section shows exactly: welds are drawn without their beads and sheets
// without their bends. Less than half of the thinnest sheet, deeper than which
// nothing can lie in it. Common practice, no source.
const overlapMm = 0.4
