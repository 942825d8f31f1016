package assembly

import "testing"

// TestOutlets: out of a box of plates round 200 a hand gets by a hole that is 30 wide, and not by one of 19; by two that are
// farther apart than 250 it gets out twice. What it reaches less far than it has no way out.
func TestOutlets(t *testing.T) {
	t.Parallel()
	box := func(halfMm float64, holes ...[2]float64) []Body {
		shell := Of(Cuboid(Vec{-halfMm, -halfMm, -halfMm}, Vec{halfMm, halfMm, halfMm}))
		in := halfMm - 3
		cut := []Simple{Cuboid(Vec{-in, -in, -in}, Vec{in, in, in})}
		for _, h := range holes {
			cut = append(cut, Cuboid(Vec{h[0] - h[1]/2, -h[1] / 2, in - 1}, Vec{h[0] + h[1]/2, h[1] / 2, halfMm + 1}))
		}
		return []Body{{ID: "box", Solid: shell.Cut(cut...), Pose: Still}}
	}
	for _, c := range []struct {
		bodies []Body
		reach  float64
		want   int
	}{
		{box(100), 850, 0},
		{box(100, [2]float64{3, 30}), 850, 1},
		{box(100, [2]float64{3, 30}), 90, 0},
		{box(100, [2]float64{3, 19}), 850, 0},
		{box(150, [2]float64{-130, 30}, [2]float64{130, 30}), 850, 2},
		{box(150, [2]float64{-50, 30}, [2]float64{50, 30}), 850, 1},
	} {
		if got := Outlets(c.bodies, []Vec{{}}, c.reach); len(got) != c.want {
			t.Errorf("%d ways out, %v, want %d", len(got), got, c.want)
		}
	}
}
