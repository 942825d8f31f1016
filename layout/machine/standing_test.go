package machine

import (
	"testing"

	"centrepop/layout/assembly"
	"centrepop/parts"
)

// TestFacing lays a disc Ø40 of 12 over and under a plate Ø100 whose faces are 0 and 20 along z, at StandsMm either way.
func TestFacing(t *testing.T) {
	plate := assembly.Body{Solid: assembly.Of(assembly.Cylinder(50, 0, 20)), Pose: assembly.Frame(assembly.Vec{}, assembly.Vec{Z: 1}, assembly.Vec{X: 1})}
	for _, c := range []struct {
		x, z float64
		face parts.Face
	}{
		{0, 20.49, parts.Front}, {0, 19.51, parts.Front}, {0, 20.51, ""}, {0, 19.49, ""},
		{0, -12.49, parts.Back}, {0, -11.51, parts.Back}, {0, -12.51, ""}, {0, -11.49, ""},
		{69, 20, parts.Front}, {71, 20, ""}, {-71, 20, ""},
	} {
		disc := assembly.Body{Solid: assembly.Of(assembly.Cylinder(20, 0, 12)), Pose: assembly.Frame(assembly.Vec{X: c.x, Z: c.z}, assembly.Vec{Z: 1}, assembly.Vec{X: 1})}
		if face, ok := facing(&plate, &disc); face != c.face || ok != (c.face != "") {
			t.Errorf("at x %v, z %v: %q, %v", c.x, c.z, face, ok)
		}
	}
}
