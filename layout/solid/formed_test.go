package solid

import (
	"math"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/parts"
)

// TestFormed: what transitions and leaning cones of plate hold, said by their outside or inside. From a rectangle of w × d to a
// circle of r over h there are h / 3 · (w·d + (w + d) · r + π r²), since each level is the mean of both; a cone is as a straight one.
// The wall of a cone is across the plate, and further across the axis by the slope; both ends stand at their heights.
func TestFormed(t *testing.T) {
	t.Parallel()
	const w, d, across, h, wall, x, y = 240.4, 181.6, 100.2, 150.8, 3.1, 21.3, -14.7
	square := func(out float64) float64 { // grown by so much all round
		w, d, r := w+2*out, d+2*out, across/2+out
		return h / 3 * (w*d + (w+d)*r + math.Pi*r*r)
	}
	slope := math.Hypot(1, (w-across)/2/h)
	cone := func(out float64) float64 {
		a, b := w/2+out*slope, across/2+out*slope
		return math.Pi * h / 3 * (a*a + a*b + b*b)
	}
	for _, inside := range []bool{false, true} {
		out := 0.0
		if inside {
			out = wall
		}
		plate := parts.Formed{Height: mm(h), Thickness: mm(wall), Inside: inside}
		to := transition(&parts.Transition{Width: mm(w), Depth: mm(d), Diameter: mm(across), Offset: parts.Point{X: mm(x), Y: mm(y)}, Formed: plate})
		lean := leaning(&parts.Frustum{Large: mm(w), Small: mm(across), Offset: mm(y), Formed: plate})
		for _, c := range []struct {
			name       string
			s          *assembly.Solid
			mm3        float64
			wide, deep float64 // half of it, in front
			off        assembly.Vec
			behind     float64 // radius
		}{
			{"transition", to, square(out) - square(out-wall), w/2 + out, d/2 + out, assembly.Vec{X: x, Y: y, Z: -h}, across/2 + out},
			{"cone", lean, cone(out) - cone(out-wall), w/2 + out*slope, w/2 + out*slope, assembly.Vec{Y: y, Z: -h}, across/2 + out*slope},
		} {
			if got := c.s.Bulk().VolumeMm3; math.Abs(got-c.mm3) > 2e-3*c.mm3 {
				t.Errorf("%s, inside %v: %.0f mm³, want %.0f", c.name, inside, got, c.mm3)
			}
			box := c.s.Box()
			if box.Low.Sub(assembly.Vec{X: -c.wide, Y: -c.deep, Z: -h}).Len() > 0.15 || box.High.Sub(assembly.Vec{X: c.wide, Y: c.deep}).Len() > 0.15 { // rounds are polygons of their area
				t.Errorf("%s, inside %v: %v", c.name, inside, box)
			}
			for _, way := range []assembly.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
				for by, metal := range map[float64]bool{0.05: false, -0.05: true, 0.05 - c.behind: false} {
					p := c.off.Add(way.Times(c.behind + by)).Add(assembly.Vec{Z: 1e-3})
					if c.s.Dist(p) < 0 != metal {
						t.Errorf("%s, inside %v, behind: metal %v at %v", c.name, inside, !metal, p)
					}
				}
			}
		}
	}
}
