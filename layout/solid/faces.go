package solid

import (
	"centrepop/layout/assembly"
)

// FaceFrame is a face, one of Faces, of a part that fills a box, as seen by who looks at it: x right, y up, z
// towards them; left and right, top and bottom are the edges of the front view.
func FaceFrame(face string, box assembly.Box) assembly.Pose {
	c := box.Centre()
	switch face {
	case "front":
		return assembly.Frame(assembly.Vec{Z: box.High.Z}, assembly.AxisZ, assembly.AxisY)
	case "back":
		return assembly.Frame(assembly.Vec{Z: box.Low.Z}, assembly.AxisZ.Reversed(), assembly.AxisY)
	case "left":
		return assembly.Frame(assembly.Vec{X: box.Low.X, Z: c.Z}, assembly.AxisX.Reversed(), assembly.AxisY)
	case "right":
		return assembly.Frame(assembly.Vec{X: box.High.X, Z: c.Z}, assembly.AxisX, assembly.AxisY)
	case "top":
		return assembly.Frame(assembly.Vec{Y: box.High.Y, Z: c.Z}, assembly.AxisY, assembly.AxisZ.Reversed())
	}
	return assembly.Frame(assembly.Vec{Y: box.Low.Y, Z: c.Z}, assembly.AxisY.Reversed(), assembly.AxisZ)
}

// OutOf is the direction out of a face of a part, of length 1.
func OutOf(face string) assembly.Vec { return FaceFrame(face, assembly.Box{}).Z }

// Faces are the sides of a part in its front view.
var Faces = []string{"left", "right", "bottom", "top", "front", "back"}
