package stand

import (
	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

// AlongAxis is the plane of the axis and TOP: front at the left, TOP up.
var AlongAxis = assembly.Pose{X: assembly.Vec{Z: -1}, Y: assembly.Vec{Y: 1}, Z: assembly.Vec{X: 1}}

// onAxis is a part's pose in the frame of its assembly: depth grows from the
// front, clock angles clockwise; a part the other way round counts both
// backwards.
func onAxis(p *plan.Placed) assembly.Pose {
	pose := assembly.Move(assembly.Vec{Z: -p.FrontMm}).Of(assembly.Rotate(assembly.AxisZ, -p.TurnDeg))
	if p.OtherWay {
		pose = pose.Of(assembly.Rotate(assembly.AxisY, 180))
	}
	return pose
}

// Level is how far directions, of length 1, and places in mm may be off one another by rounding.
const Level = 1e-6

// SameAxis tells whether two rounds, whose axes are z of their poses, turn about one line, within 1 mm.
func SameAxis(a, b assembly.Pose) bool {
	const offMm = 1
	at := b.At.Sub(a.At)
	return !geom.Some(a.Z.Cross(b.Z).Len()) && at.Cross(a.Z).Len() < offMm
}

// AxisOf is the axis of a joint's assembly: z out of its front, y to its TOP; false where it has none, or no place.
func (m *Stand) AxisOf(j *plan.JointPlan) (assembly.Pose, bool) {
	if len(j.Placed) == 0 {
		return assembly.Pose{}, false
	}
	pose, ok := m.Poses[j.Placed[0].Instance().ID()]
	return pose.Of(onAxis(&j.Placed[0]).Inverse()), ok
}
