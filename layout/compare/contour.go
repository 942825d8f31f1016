package compare

import (
	"math"
	"slices"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// point is in millimetres, y up.
type point = geom.Point

func xy(x, y float64) point { return point{XMm: x, YMm: y} }

// contour is a line of straight pieces, close enough to the curve it stands
// for. A closed one does not repeat its first point.
type contour struct {
	points []point
	closed bool
	place       // in the drawing
	mark   bool // on a layer for marking
}

func (c *contour) box() geom.Box { return geom.BoxOf(c.points...) }

func (c *contour) size() (w, h float64) {
	size := c.box().Size()
	return size.XMm, size.YMm
}

func (c *contour) moved(by point) contour {
	out := *c
	out.points = seq.Map(c.points, func(p point) point { return p.Plus(by) })
	return out
}

// area and centroid of a contour, an open one as if it were closed.
func (c *contour) area() (mm2 float64, centroid point) { return geom.Middle(c.points) }

func (c *contour) length() float64 {
	sum := 0.0
	for i := 1; i < len(c.points); i++ {
		sum += geom.Distance(c.points[i], c.points[i-1])
	}
	if c.closed && len(c.points) > 1 {
		sum += geom.Distance(c.points[0], c.points[len(c.points)-1])
	}
	return sum
}

// roundness is how far the points of a circle may lie off it: four cubic
// curves, the usual way to draw one, are 0.03 % of the radius off; programs
// round their coordinates to 0.01 mm and worse.
func roundness(radius float64) float64 { return math.Max(0.03, 0.001*radius) }

// fewestCorners is how many straight sides make a circle rather than a polygon.
const fewestCorners = 16

// fit is the circle through the points of a closed contour (the algebraic fit
// of Kåsa, 1976); false if they do not lie on one within the tolerance off.
func (c *contour) fit() (centre point, radius, off float64, ok bool) {
	n := float64(len(c.points))
	var mean point
	for _, p := range c.points {
		mean.XMm += p.XMm / n
		mean.YMm += p.YMm / n
	}
	var xx, xy, yy, xz, yz, zz float64
	for _, p := range c.points {
		q := p.Minus(mean)
		z := float64(q.XMm*q.XMm) + float64(q.YMm*q.YMm)
		xx += float64(q.XMm * q.XMm)
		xy += float64(q.XMm * q.YMm)
		yy += float64(q.YMm * q.YMm)
		xz += float64(q.XMm * z)
		yz += float64(q.YMm * z)
		zz += z
	}
	det := float64(xx*yy) - float64(xy*xy)
	if !(det > 1e-12*zz*zz) {
		return point{}, 0, 0, false
	}
	a := (float64(xz*yy) - float64(yz*xy)) / (2 * det)
	b := (float64(yz*xx) - float64(xz*xy)) / (2 * det)
	centre = mean.Plus(point{XMm: a, YMm: b})
	radius = math.Sqrt(float64(a*a) + float64(b*b) + zz/n)
	// Tolerances follow the size, so that a circle drawn in inches and read
	// as millimetres is still one.
	off = math.Min(roundness(radius), 0.02*radius)
	if slices.ContainsFunc(c.points, func(p point) bool { return math.Abs(geom.Distance(p, centre)-radius) > off }) {
		return point{}, 0, 0, false
	}
	return centre, radius, off, true
}

// circle tells whether a closed contour is a circle: not only its points, also
// the lines between them lie on it. Sides counts those of a polygon whose
// corners alone do.
func (c *contour) circle() (centre point, radius float64, round bool, sides int) {
	if !c.closed || len(c.points) < 5 {
		return point{}, 0, false, 0
	}
	centre, radius, off, ok := c.fit()
	if !ok {
		return point{}, 0, false, 0
	}
	full := math.Pi * radius * radius
	if area, _ := c.area(); area < 0.6*full || area > 1.02*full {
		return point{}, 0, false, 0 // an arc gone over, or a circle run twice
	}
	round = len(c.points) >= fewestCorners
	for i, p := range c.points {
		round = round && geom.ToSegment(centre, p, c.points[(i+1)%len(c.points)]) >= radius-off
	}
	if !round {
		sides = len(c.points)
	}
	return centre, radius, round, sides
}

// thin drops points that lie within the tolerance on the line between their
// neighbours, and points on top of each other.
func thin(points []point, closed bool, tol float64) []point {
	var out []point
	for _, p := range points {
		if len(out) > 0 && geom.Distance(p, out[len(out)-1]) < geom.CloseMm {
			continue
		}
		out = append(out, p)
	}
	if closed && len(out) > 1 && geom.Distance(out[0], out[len(out)-1]) < geom.CloseMm {
		out = out[:len(out)-1]
	}
	if len(out) < 4 {
		return out
	}
	kept := out[:1]
	last := 0 // index in the unthinned row of the last kept point
	src := slices.Clone(out)
	for i := 1; i < len(src)-1; i++ {
		straight := i-last < 32
		for k := last + 1; straight && k <= i; k++ {
			straight = geom.ToSegment(src[k], src[last], src[i+1]) < tol
		}
		if !straight {
			kept = append(kept, src[i])
			last = i
		}
	}
	return append(kept, src[len(src)-1])
}

// mostSamples bounds the work of one comparison of two contours.
const mostSamples = 1500

func sampled(points []point, most int) []point {
	if len(points) <= most {
		return points
	}
	out := make([]point, 0, most)
	for i := range most {
		out = append(out, points[i*len(points)/most])
	}
	return out
}

// apart is how far two contours are from each other at the worst place (the
// Hausdorff distance of their points from the other's line), and where.
func apart(a, b *contour, most int) (worst float64, where point) {
	for _, turn := range [2][2]*contour{{a, b}, {b, a}} {
		to := contour{points: sampled(turn[1].points, most), closed: turn[1].closed}
		for _, p := range sampled(turn[0].points, most) {
			if d := to.off(p, worst); d > worst {
				worst, where = d, p
			}
		}
	}
	return worst, where
}

// off is how far a point is from the contour's line, or any distance up to
// enough where it is not further than that.
func (c *contour) off(p point, enough float64) float64 {
	near := math.Inf(1)
	for i, a := range c.points {
		if i+1 == len(c.points) && !c.closed {
			break
		}
		if near = math.Min(near, geom.ToSegment(p, a, c.points[(i+1)%len(c.points)])); near <= enough {
			break
		}
	}
	return near
}

// offRound is how far the farthest point of the contour's line is from a circle that it
// goes round.
func (c *contour) offRound(centre point, radius float64) float64 {
	return seq.Max(math.Abs(radius-c.off(centre, 0)), c.points, func(p point) float64 { return geom.Distance(p, centre) - radius })
}

// joinMm is how near two ends must be to be the same point.
const joinMm = 0.05

// doubledMm is how near two contours must be to lie on each other.
const doubledMm = 0.1

// end is one end of open contour k.
type end struct {
	k    int
	tail bool
}

// chain joins open contours whose ends meet.
type chain struct {
	open []contour
	used []bool
	ends map[[2]int64][]end // by cells as wide as joinMm
}

func cell(p point) [2]int64 {
	return [2]int64{int64(math.Floor(p.XMm / joinMm)), int64(math.Floor(p.YMm / joinMm))}
}

// join chains open contours whose ends meet; what closes by that becomes
// closed. The order of the input decides where ends of three meet.
func join(open []contour) (joined []contour) {
	j := chain{open, make([]bool, len(open)), map[[2]int64][]end{}}
	for k := range open {
		for _, e := range []end{{k, false}, {k, true}} {
			at := cell(j.at(e))
			j.ends[at] = append(j.ends[at], e)
		}
	}
	for k, c := range open {
		if j.used[k] {
			continue
		}
		j.used[k] = true
		c.points = slices.Clone(c.points)
		for range 2 { // at the tail, then turned round at the head
			c.points = j.extend(c.points)
			slices.Reverse(c.points)
		}
		if meets(c.points) {
			c.closed = true
			c.points = c.points[:len(c.points)-1]
		}
		joined = append(joined, c)
	}
	return joined
}

// meets tells whether a line comes back to its start.
func meets(points []point) bool {
	return len(points) > 2 && geom.Distance(points[0], points[len(points)-1]) <= joinMm
}

// extend goes on at the tail of a line until nothing meets it or it closes.
func (j *chain) extend(points []point) []point {
	for !meets(points) {
		e, ok := j.next(points[len(points)-1])
		if !ok {
			break
		}
		j.used[e.k] = true
		add := slices.Clone(j.open[e.k].points)
		if e.tail {
			slices.Reverse(add)
		}
		points = append(points, add[1:]...)
	}
	return points
}

func (j *chain) at(e end) point {
	if pts := j.open[e.k].points; e.tail {
		return pts[len(pts)-1]
	}
	return j.open[e.k].points[0]
}

// next finds the unused end nearest to p, the first of equals.
func (j *chain) next(p point) (best end, found bool) {
	near := joinMm
	c := cell(p)
	var around []end
	for dx := int64(-1); dx <= 1; dx++ {
		for dy := int64(-1); dy <= 1; dy++ {
			around = append(around, j.ends[[2]int64{c[0] + dx, c[1] + dy}]...)
		}
	}
	for _, e := range around {
		if j.used[e.k] {
			continue
		}
		if d := geom.Distance(p, j.at(e)); d < near || d == near && found && e.k < best.k {
			best, found, near = e, true, d
		}
	}
	return best, found
}
