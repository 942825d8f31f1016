package machine

import (
	"slices"
	"testing"

	"centrepop/layout/assembly"
)

// Along each edge of a plate of 8 × 6 × 4 that stands on it, every 2 mm, the fillets lie
// out from both faces and in from the edge.
func TestBeadLine(t *testing.T) {
	t.Parallel()
	plate := assembly.Body{ID: "p", Solid: assembly.Of(assembly.Cuboid(assembly.Vec{X: 10, Y: 20, Z: -4}, assembly.Vec{X: 18, Y: 26})), Pose: assembly.Move(assembly.Vec{X: 100})}
	v := func(x, y, z float64) assembly.Vec { return assembly.Vec{X: x, Y: y, Z: z} }
	for edge, want := range map[string][]assembly.Vec{
		"bottom": {v(110, 20.5, 0.5), v(112, 20.5, 0.5), v(114, 20.5, 0.5), v(116, 20.5, 0.5), v(118, 20.5, 0.5), v(110, 20.5, -4.5), v(112, 20.5, -4.5), v(114, 20.5, -4.5), v(116, 20.5, -4.5), v(118, 20.5, -4.5)},
		"top":    {v(110, 25.5, 0.5), v(112, 25.5, 0.5), v(114, 25.5, 0.5), v(116, 25.5, 0.5), v(118, 25.5, 0.5), v(110, 25.5, -4.5), v(112, 25.5, -4.5), v(114, 25.5, -4.5), v(116, 25.5, -4.5), v(118, 25.5, -4.5)},
		"left":   {v(110.5, 20, 0.5), v(110.5, 22, 0.5), v(110.5, 24, 0.5), v(110.5, 26, 0.5), v(110.5, 20, -4.5), v(110.5, 22, -4.5), v(110.5, 24, -4.5), v(110.5, 26, -4.5)},
		"right":  {v(117.5, 20, 0.5), v(117.5, 22, 0.5), v(117.5, 24, 0.5), v(117.5, 26, 0.5), v(117.5, 20, -4.5), v(117.5, 22, -4.5), v(117.5, 24, -4.5), v(117.5, 26, -4.5)},
	} {
		if got := beadLine(&plate, edge, 0.5); !slices.EqualFunc(got, want, func(a, b assembly.Vec) bool { return a.Sub(b).Len() < 1e-9 }) {
			t.Errorf("%s: %v, want %v", edge, got, want)
		}
	}
}
