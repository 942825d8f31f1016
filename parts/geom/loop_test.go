package geom

import (
	"math"
	"testing"
)

// TestLoops: a corner is cut off by its own radius and turns left or right as the way does, and a sharp one stays; by hand.
func TestLoops(t *testing.T) {
	t.Parallel()
	quarter := math.Tan(math.Pi / 8)
	ell := []Point{{0, 0}, {10, 0}, {10, 4}, {4, 4}, {4, 8}, {0, 8}}
	for _, c := range []struct{ got, want Loop }{
		{RoundedLoop(ell, 0, 1, 0, 2), Loop{{Point{0, 0}, 0}, {Point{9, 0}, quarter}, {Point{10, 1}, 0}, {Point{10, 4}, 0}, {Point{6, 4}, -quarter}, {Point{4, 6}, 0}, {Point{4, 8}, 0}, {Point{0, 8}, 0}}},
		{RectangleLoop(Point{-1, 0}, Point{5, 3}, 0), PolygonLoop(Point{-1, 0}, Point{5, 0}, Point{5, 3}, Point{-1, 3})},
		{RectangleLoop(Point{-1, 2}, Point{5, 2}, 0), PolygonLoop(Point{-1, 2}, Point{5, 2}, Point{5, 2}, Point{-1, 2})}, // without height
		{RectangleLoop(Point{0, 0}, Point{8, 6}, 2), Loop{{Point{2, 0}, 0}, {Point{6, 0}, quarter}, {Point{8, 2}, 0}, {Point{8, 4}, quarter}, {Point{6, 6}, 0}, {Point{2, 6}, quarter}, {Point{0, 4}, 0}, {Point{0, 2}, quarter}}},
	} {
		for i, v := range c.got {
			if len(c.got) != len(c.want) || v != c.want[i] {
				t.Errorf("corner %d is %v, want %v", i, v, c.want)
				break
			}
		}
	}
}
