package compare

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/parts/geom"

	"pgregory.net/rapid"
)

// ring is n points on a circle, the last part of the way left out for a share
// below 1.
func ring(at point, radius float64, n int, share float64) (out []point) {
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * share * float64(i) / float64(n))
		out = append(out, xy(at.XMm+radius*cos, at.YMm+radius*sin))
	}
	return out
}

// TestCircle: what is a circle, by its points and by the lines between them:
// from 16 corners on, on the circle within 0.03 mm or a thousandth of its
// radius, 2 % of a small one, gone round once.
func TestCircle(t *testing.T) {
	t.Parallel()
	dented := func(radius float64, n int, by float64) []point {
		p := ring(xy(100, 50), radius, n, 1)
		p[1] = xy(100+(p[1].XMm-100)*(1-by/radius), 50+(p[1].YMm-50)*(1-by/radius))
		return p
	}
	for _, c := range []struct {
		name  string
		c     contour
		round bool
		sides int
	}{
		{"a circle", contour{points: ring(xy(100, 50), 10, 90, 1), closed: true}, true, 0},
		{"open", contour{points: ring(xy(100, 50), 10, 90, 1)}, false, 0},
		{"a hexagon", contour{points: ring(xy(100, 50), 10, 6, 1), closed: true}, false, 6},
		{"a square has too few corners to tell", contour{points: ring(xy(100, 50), 10, 4, 1), closed: true}, false, 0},
		{"a pentagon", contour{points: ring(xy(100, 50), 10, 5, 1), closed: true}, false, 5},
		{"15 corners of a small circle", contour{points: ring(xy(100, 50), 1, 15, 1), closed: true}, false, 15},
		{"16 corners of a small circle", contour{points: ring(xy(100, 50), 1, 16, 1), closed: true}, true, 0},
		{"16 corners of a large circle", contour{points: ring(xy(100, 50), 100, 16, 1), closed: true}, false, 16},
		{"half a circle", contour{points: ring(xy(100, 50), 10, 90, 0.5), closed: true}, false, 0},
		{"twice round", contour{points: ring(xy(100, 50), 10, 90, 2), closed: true}, false, 0},
		{"a line", contour{points: []point{xy(0, 0), xy(1, 0), xy(2, 0), xy(3, 0), xy(4, 0)}, closed: true}, false, 0},
		{"dented within", contour{points: dented(10, 90, 0.025), closed: true}, true, 0},
		{"dented beyond", contour{points: dented(10, 90, 0.035), closed: true}, false, 0},
		{"large, dented within", contour{points: dented(100, 300, 0.095), closed: true}, true, 0},
		{"large, dented beyond", contour{points: dented(100, 300, 0.105), closed: true}, false, 0},
		{"small, dented within", contour{points: dented(1, 90, 0.018), closed: true}, true, 0},
		{"small, dented beyond", contour{points: dented(1, 90, 0.022), closed: true}, false, 0},
	} {
		centre, radius, round, sides := c.c.circle()
		if round != c.round || sides != c.sides {
			t.Errorf("%s: round %v, %d sides", c.name, round, sides)
			continue
		}
		if round || sides > 0 {
			if geom.Distance(centre, xy(100, 50)) > 0.01 {
				t.Errorf("%s: about %v", c.name, centre)
			}
		} else if centre != (point{}) || radius != 0 {
			t.Errorf("%s: no circle, yet %v and %v", c.name, centre, radius)
		}
	}
}

// TestThin: what is left of a contour passes within the tolerance of all that
// was there, and is no more than it was.
func TestThin(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		n, tol := rapid.IntRange(5, 120).Draw(t, "corners"), rapid.SampledFrom([]float64{0.002, 0.05}).Draw(t, "within")
		all := ring(xy(3, 4), 20, n, 1)
		for i := range all {
			all[i].XMm += rapid.Float64Range(-0.01, 0.01).Draw(t, "off")
		}
		all = append(all, all[0])
		left := contour{points: thin(all, true, tol), closed: true}
		if len(left.points) >= len(all) || left.points[0] != all[0] {
			t.Fatalf("%d of %d points, from %v", len(left.points), len(all), left.points[0])
		}
		for _, p := range all {
			if off := left.off(p, 0); off > tol {
				t.Fatalf("%v is %g mm off what is left", p, off)
			}
		}
	})
	straight := []point{xy(0, 0), xy(1, 0), xy(2, 0), xy(3, 0), xy(4, 0), xy(4, 4), xy(4, 8)}
	if got := thin(straight, false, 0.01); len(got) != 3 || got[1] != xy(4, 0) || got[2] != xy(4, 8) {
		t.Errorf("an angle is left as %v", got)
	}
}

// TestCurvesAreClose: circles, ellipses, arcs and cubics are read as lines that
// lie within 0.002 mm of them.
func TestCurvesAreClose(t *testing.T) {
	t.Parallel()
	for _, r := range []float64{0.5, 5, 80, 500} {
		for _, body := range []string{
			fmt.Sprintf(`<circle r="%g"/>`, r), fmt.Sprintf(`<ellipse rx="%g" ry="%g"/>`, r, r),
			fmt.Sprintf(`<path d="M%g 0A%g %g 0 0 1 %g 0A%g %g 0 0 1 %g 0Z"/>`, r, r, r, -r, r, r, r),
			fmt.Sprintf(`<path d="M%g 0A%g %g 0 0 1 0 %gA%g %g 0 1 1 %g 0Z"/>`, r, r, r, r, r, r, r),
		} {
			s, err := Read(strings.NewReader(`<svg width="1000mm" height="1000mm" viewBox="0 0 1000 1000">` + body + `</svg>`))
			if err != nil || len(s.contours) != 1 {
				t.Fatalf("%s: %v", body, err)
			}
			c := s.contours[0]
			centre := c.box().Middle()
			for i, p := range c.points {
				q := c.points[(i+1)%len(c.points)]
				if on, between := geom.Distance(p, centre), geom.ToSegment(centre, p, q); math.Abs(on-r) > 0.0045 || r-between > 0.0045 {
					t.Errorf("%s: from %v to %v mm of its middle", body, between, on)
					break
				}
			}
		}
	}
}

// TestCircleOfUnevenCorners: a circle has its centre and size whatever part of it has
// more corners: here six in each quarter but the first, which has forty.
func TestCircleOfUnevenCorners(t *testing.T) {
	t.Parallel()
	for turn := range 8 {
		var points []point
		for i := range 58 {
			deg := float64(i) * 90 / 40
			if i > 40 {
				deg = 90 + float64(i-40)*15
			}
			sin, cos := math.Sincos((deg + float64(turn)*45) * math.Pi / 180)
			points = append(points, xy(100+0.7*cos, 50+0.7*sin))
		}
		centre, radius, round, _ := (&contour{points: points, closed: true}).circle()
		if !round || geom.Distance(centre, xy(100, 50)) > 1e-6 || math.Abs(radius-0.7) > 0.01 {
			t.Errorf("turned %d°: %v, about %v of %v", turn*45, round, centre, radius)
		}
	}
}

// TestOffRound: how far a contour is off a circle of 10: outside by its corners, inside
// by its sides, and by as much as it is out of its place.
func TestOffRound(t *testing.T) {
	t.Parallel()
	square := func(half float64) contour {
		return contour{points: []point{xy(-half, -half), xy(half, -half), xy(half, half), xy(-half, half)}, closed: true}
	}
	for name, c := range map[string]struct {
		c    contour
		want float64
	}{
		"a square round it":   {square(10), 10 * (math.Sqrt2 - 1)},
		"a square in it":      {square(10 / math.Sqrt2), 10 * (1 - 1/math.Sqrt2)},
		"a circle":            {contour{points: ring(xy(0, 0), 10, 720, 1), closed: true}, 0},
		"a smaller circle":    {contour{points: ring(xy(0, 0), 9.7, 720, 1), closed: true}, 0.3},
		"a circle out of it":  {contour{points: ring(xy(0.12, 0.16), 10, 720, 1), closed: true}, 0.2},
		"a larger one beside": {contour{points: ring(xy(-1, 0), 10.5, 720, 1), closed: true}, 1.5},
	} {
		if got := c.c.offRound(xy(0, 0), 10); math.Abs(got-c.want) > 2e-4 {
			t.Errorf("%s: %v off, want %v", name, got, c.want)
		}
	}
}
