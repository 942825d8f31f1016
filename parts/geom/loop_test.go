package geom

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"
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

// TestLoopAreas: areas and centroids of circles, their halves and segments, and of round corners by the
// elementary formulas (half a disc has its centroid at 4r/3π), wherever they lie and whichever way they run;
// the points of their arcs lie on them; and a path taken apart is the same loop.
func TestLoopAreas(t *testing.T) {
	t.Parallel()
	quarter := math.Tan(math.Pi / 8)
	fillet := (1 - math.Pi/4) * 4 // between a corner and its round of 2
	for _, c := range []struct {
		name   string
		loop   Loop
		mm2    float64
		centre Point
	}{
		{"triangle", PolygonLoop(Point{0, 0}, Point{6, 0}, Point{0, 3}), 9, Point{2, 1}},
		{"disc", Loop{{Point{2, 0}, 1}, {Point{-2, 0}, 1}}, 4 * math.Pi, Point{}},
		{"lower half", Loop{{Point{-3, 0}, 1}, {Point{3, 0}, 0}}, 4.5 * math.Pi, Point{0, -4 / math.Pi}},
		{"quarter", Loop{{Point{0, 0}, 0}, {Point{3, 0}, quarter}, {Point{0, 3}, 0}}, 2.25 * math.Pi, Point{4 / math.Pi, 4 / math.Pi}},
		{"three quarters", Loop{{Point{0, 0}, 0}, {Point{0, 3}, math.Tan(3 * math.Pi / 8)}, {Point{3, 0}, 0}}, 6.75 * math.Pi, Point{-4 / math.Pi / 3, -4 / math.Pi / 3}},
		{"round corners", RectangleLoop(Point{0, 0}, Point{10, 6}, 2), 60 - 4*fillet, Point{5, 3}},
		{"hollow corner", RoundedLoop([]Point{{0, 0}, {10, 0}, {10, 4}, {4, 4}, {4, 8}, {0, 8}}, 0, 0, 0, 2), 56 + fillet,
			Point{(40*5 + 16*2 + fillet*(4+2*(10-3*math.Pi)/(12-3*math.Pi))) / (56 + fillet), (40*2 + 16*6 + fillet*(4+2*(10-3*math.Pi)/(12-3*math.Pi))) / (56 + fillet)}},
	} {
		for _, off := range []Point{{}, {50, -20}} {
			var way, back Loop
			var d strings.Builder
			for i, v := range c.loop {
				next := c.loop[(i+1)%len(c.loop)]
				way = append(way, Vertex{v.Plus(off), v.Bulge})
				back = append(Loop{{next.Plus(off), -v.Bulge}}, back...)
				if i == 0 {
					fmt.Fprintf(&d, "M%v %v", way[0].XMm, way[0].YMm)
				}
				to := next.Plus(off)
				if v.Bulge == 0 {
					fmt.Fprintf(&d, "L%v %v", to.XMm, to.YMm)
					continue
				}
				centre, r, sweep := way[i].Arc(to)
				large := map[bool]int{true: 1}[math.Abs(sweep) > math.Pi]
				fmt.Fprintf(&d, "A%v %v 0 %d %d %v %v", r, r, large, map[bool]int{true: 1}[sweep > 0], to.XMm, to.YMm)
				pts := Loop{way[i], {to, 0}}.Points(5)
				for k, p := range pts[:5] { // a fifth of the arc further each
					turned := math.Remainder(math.Atan2(p.YMm-centre.YMm, p.XMm-centre.XMm)-math.Atan2(way[i].YMm-centre.YMm, way[i].XMm-centre.XMm)-sweep*float64(k)/5, 2*math.Pi)
					if math.Abs(Distance(p, centre)-r) > 1e-9 || math.Abs(turned) > 1e-9 {
						t.Errorf("%s: point %d of the arc at %v", c.name, k, p)
					}
				}
				if pts[5] != to || len(pts) != 6 {
					t.Errorf("%s: ends with %v", c.name, pts[5:])
				}
			}
			taken := NewContour(canvas.MustParseSVGPath(d.String() + "z")).Loop()
			for sign, loop := range map[float64]Loop{1: way, -1: back, 1.0000001: taken} {
				sign = math.Round(sign)
				mm2, moment := loop.Area()
				want := c.centre.Plus(off)
				if math.Abs(mm2-sign*c.mm2) > 1e-6 || Distance(moment.Times(1/mm2), want) > 1e-6 {
					t.Errorf("%s: %v mm² at %v, want %v at %v", c.name, mm2, moment.Times(1/mm2), sign*c.mm2, want)
				}
			}
		}
	}
}

// TestCurvedLoop: the straight pieces that stand for a curve leave it by no more than FlatMm: of the parabola
// y = 120 u (1 − u), x = 100 u, and of the same as a cubic.
func TestCurvedLoop(t *testing.T) {
	t.Parallel()
	for _, text := range []string{"M0 0Q50 60 100 0Z", "M0 0C33.3333333 40 66.6666667 40 100 0Z"} {
		at := NewContour(canvas.MustParseSVGPath(text)).Loop()
		if len(at) < 10 || at[0].XMm != 0 || at[0].YMm != 0 || at[len(at)-1].Point != (Point{100, 0}) {
			t.Fatalf("%s: %v", text, at)
		}
		for i, p := range at[1:] {
			x, y := (p.XMm+at[i].XMm)/200, (p.YMm+at[i].YMm)/2
			if off := (120*x*(1-x) - y) / math.Hypot(1, 1.2*(1-2*x)); math.Abs(off) > 1.03*FlatMm || p.XMm <= at[i].XMm || math.Abs(120*p.XMm/100*(1-p.XMm/100)-p.YMm) > 1e-4 {
				t.Errorf("%s: %g off between %v and %v", text, off, at[i], p)
			}
		}
	}
}
