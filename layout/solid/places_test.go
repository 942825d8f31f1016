package solid

import (
	"testing"

	"centrepop/layout/assembly"
)

// TestFaceFrame: the faces of a box from (1, 2, 3) to (11, 42, 8) as who looks at each sees it:
// right and up are those of the front view, from above and below its front lies nearest.
func TestFaceFrame(t *testing.T) {
	t.Parallel()
	v := func(x, y, z float64) assembly.Vec { return assembly.Vec{X: x, Y: y, Z: z} }
	room := assembly.Box{Low: v(1, 2, 3), High: v(11, 42, 8)}
	for face, want := range map[string]assembly.Pose{
		"front":  {At: v(0, 0, 8), X: v(1, 0, 0), Y: v(0, 1, 0), Z: v(0, 0, 1)},
		"back":   {At: v(0, 0, 3), X: v(-1, 0, 0), Y: v(0, 1, 0), Z: v(0, 0, -1)},
		"left":   {At: v(1, 0, 5.5), X: v(0, 0, 1), Y: v(0, 1, 0), Z: v(-1, 0, 0)},
		"right":  {At: v(11, 0, 5.5), X: v(0, 0, -1), Y: v(0, 1, 0), Z: v(1, 0, 0)},
		"top":    {At: v(0, 42, 5.5), X: v(1, 0, 0), Y: v(0, 0, -1), Z: v(0, 1, 0)},
		"bottom": {At: v(0, 2, 5.5), X: v(1, 0, 0), Y: v(0, 0, 1), Z: v(0, -1, 0)},
	} {
		got := FaceFrame(face, room)
		if off := got.At.Sub(want.At).Len() + got.X.Sub(want.X).Len() + got.Y.Sub(want.Y).Len() + got.Z.Sub(want.Z).Len(); off > 1e-9 {
			t.Errorf("%s: %+v, want %+v", face, got, want)
		}
	}
}
