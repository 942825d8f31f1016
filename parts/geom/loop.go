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
		return p, way.unit(), r
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

// Arc is the circle of the arc by which a loop goes on from a vertex to the next: its centre, its radius in
// mm, and the angle that it turns through, in radians, negative clockwise.
func (v Vertex) Arc(to Point) (centre Point, radiusMm, sweepRad float64) {
	half, chord := 2*math.Atan(v.Bulge), to.Minus(v.Point)
	left := Point{-chord.YMm, chord.XMm}
	return v.Plus(to).Times(0.5).Plus(left.Times(0.5 / math.Tan(half))), chord.LengthMm() / 2 / math.Abs(math.Sin(half)), 2 * half
}

// Area is the area inside the loop in mm², positive anticlockwise, and its moment in mm³, which is the area
// times its centroid: of the polygon, and of the segments between chords and arcs, exact.
func (l Loop) Area() (mm2 float64, moment Point) {
	for i, v := range l {
		to := l[(i+1)%len(l)].Point
		a := v.Cross(to) / 2
		mm2, moment = mm2+a, moment.Plus(v.Plus(to).Times(a/3))
		if v.Bulge != 0 {
			// ½r²(φ − sin φ), its centroid at 4r sin³(φ/2) / 3(φ − sin φ) from the centre.
			centre, r, phi := v.Arc(to)
			a, chord := r*r/2*(phi-math.Sin(phi)), to.Minus(v.Point)
			mm2, moment = mm2+a, moment.Plus(centre.Times(a)).Plus(Point{chord.YMm, -chord.XMm}.Times(chord.Dot(chord)/12))
		}
	}
	return mm2, moment
}

// Points are the corners of the loop in order, and on each arc others that part it evenly into so many pieces.
func (l Loop) Points(pieces int) (pts []Point) {
	for i, v := range l {
		if pts = append(pts, v.Point); v.Bulge == 0 {
			continue
		}
		centre, _, sweep := v.Arc(l[(i+1)%len(l)].Point)
		for k := 1; k < pieces; k++ {
			sin, cos := math.Sincos(sweep * float64(k) / float64(pieces))
			out := v.Minus(centre)
			pts = append(pts, centre.Plus(Point{out.XMm*cos - out.YMm*sin, out.XMm*sin + out.YMm*cos}))
		}
	}
	return pts
}
