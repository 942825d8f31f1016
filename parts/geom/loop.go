package geom

import "math"

// Vertex is a corner of a loop and how the loop goes on to the next: straight
// if Bulge is 0, else by an arc that bulges to the right of the way, and so turns
// left, for a positive bulge, which is the tangent of a quarter of the arc's angle:
// 1 is a half circle.
type Vertex struct {
	Point
	Bulge float64
}

// Loop is a closed contour of straight lines and arcs; the last vertex goes on
// to the first. Either way round.
type Loop []Vertex

// PolygonLoop joins points by straight lines.
func PolygonLoop(points ...Point) Loop {
	out := make(Loop, len(points))
	for i, p := range points {
		out[i].Point = p
	}
	return out
}

// RoundedLoop joins points by straight lines that meet at right angles, each corner rounded by a radius
// of its own in mm, 0 for a sharp one; those beyond the last radius are sharp.
func RoundedLoop(points []Point, radiiMm ...float64) (out Loop) {
	at := func(i int) (p, way Point, r float64) {
		i %= len(points)
		p, way = points[i], points[(i+1)%len(points)].Minus(points[i])
		if i < len(radiiMm) {
			r = radiiMm[i]
		}
		long := way.LengthMm() // divided by, so that what runs level or plumb stays so to the last digit
		return p, Point{way.XMm / long, way.YMm / long}, r
	}
	for i := range points {
		from, on, r := at(i)
		to, turn, next := at(i + 1)
		if out = append(out, Vertex{Point: from}); r > 0 {
			out[len(out)-1].Point = from.Plus(on.Times(r))
		}
		if next > 0 {
			out = append(out, Vertex{to.Minus(on.Times(next)), math.Copysign(math.Tan(math.Pi/8), on.Cross(turn))})
		}
	}
	return out
}

// RectangleLoop is a rectangle between two opposite corners, with round corners
// of a radius in mm, 0 for sharp ones.
func RectangleLoop(low, high Point, cornerMm float64) Loop {
	return RoundedLoop([]Point{low, {high.XMm, low.YMm}, high, {low.XMm, high.YMm}}, cornerMm, cornerMm, cornerMm, cornerMm)
}
