package picture

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

func xy(x, y float64) plan.XY { return plan.XY{XMm: geom.Clean(x), YMm: geom.Clean(y)} }

// onPlane is a point of the machine in a plane, dirOn a direction.
func onPlane(plane assembly.Pose, p assembly.Vec) plan.XY {
	q := plane.Inverse().Apply(p)
	return xy(q.X, q.Y)
}

func dirOn(plane assembly.Pose, d assembly.Vec) plan.XY {
	q := plane.Inverse().Turn(d)
	return xy(q.X, q.Y)
}

// inf is further than anything lies.
var inf = math.Inf(1)
