package compare

import (
	"math"
)

// point is in millimetres, y up.
type point struct{ x, y float64 }

func (a point) minus(b point) point { return point{a.x - b.x, a.y - b.y} }
func (a point) distance(b point) float64 {
	return math.Hypot(a.x-b.x, a.y-b.y)
}

// contour is a line of straight pieces, close enough to the curve it stands
// for. A closed one does not repeat its first point.
type contour struct {
	points       []point
	closed       bool
	line, column int
	element      string
	mark         bool // on a layer for marking
}

func (c *contour) box() (lo, hi point) {
	lo, hi = point{math.Inf(1), math.Inf(1)}, point{math.Inf(-1), math.Inf(-1)}
	for _, p := range c.points {
		lo = point{math.Min(lo.x, p.x), math.Min(lo.y, p.y)}
		hi = point{math.Max(hi.x, p.x), math.Max(hi.y, p.y)}
	}
	return lo, hi
}

// size is the width and the height of the box.
func (c *contour) size() (w, h float64) {
	lo, hi := c.box()
	return hi.x - lo.x, hi.y - lo.y
}

// area and centroid of a closed contour, by the shoelace formula; of an open
// one as if it were closed. The centroid of a contour without area is the
// middle of its box.
func (c *contour) area() (mm2 float64, centroid point) {
	lo, hi := c.box()
	o := point{(lo.x + hi.x) / 2, (lo.y + hi.y) / 2}
	var sum, x, y float64
	for i, p := range c.points {
		a, b := p.minus(o), c.points[(i+1)%len(c.points)].minus(o)
		cross := float64(a.x*b.y) - float64(b.x*a.y)
		sum += cross
		x += (a.x + b.x) * cross
		y += (a.y + b.y) * cross
	}
	if math.Abs(sum) < 1e-9 {
		return 0, o
	}
	return math.Abs(sum) / 2, point{o.x + x/(3*sum), o.y + y/(3*sum)}
}

func (c *contour) length() float64 {
	sum := 0.0
	for i := 1; i < len(c.points); i++ {
		sum += c.points[i].distance(c.points[i-1])
	}
	if c.closed && len(c.points) > 1 {
		sum += c.points[0].distance(c.points[len(c.points)-1])
	}
	return sum
}

// roundness is how far the points of a circle may lie off it: four cubic
// curves, the usual way to draw one, are 0.03 % of the radius off; programs
// round their coordinates to 0.01 mm and worse.
func roundness(radius float64) float64 { return math.Max(0.03, 0.001*radius) }

// fewestCorners is how many straight sides make a circle rather than a polygon.
const fewestCorners = 16

// circle fits a circle to a closed contour (the algebraic fit of Kåsa, 1976)
// and tells whether the contour is one.
func (c *contour) circle() (centre point, radius float64, ok bool) {
	n := float64(len(c.points))
	if !c.closed || len(c.points) < fewestCorners {
		return point{}, 0, false
	}
	var mean point
	for _, p := range c.points {
		mean.x += p.x / n
		mean.y += p.y / n
	}
	var xx, xy, yy, xz, yz, zz float64
	for _, p := range c.points {
		q := p.minus(mean)
		z := float64(q.x*q.x) + float64(q.y*q.y)
		xx += float64(q.x * q.x)
		xy += float64(q.x * q.y)
		yy += float64(q.y * q.y)
		xz += float64(q.x * z)
		yz += float64(q.y * z)
		zz += z
	}
	det := float64(xx*yy) - float64(xy*xy)
	if !(det > 1e-12*zz*zz) {
		return point{}, 0, false
	}
	a := (float64(xz*yy) - float64(yz*xy)) / (2 * det)
	b := (float64(yz*xx) - float64(xz*xy)) / (2 * det)
	centre = point{mean.x + a, mean.y + b}
	radius = math.Sqrt(float64(a*a) + float64(b*b) + zz/n)
	// Tolerances follow the size, so that a circle drawn in inches and read
	// as millimetres is still one.
	off := math.Min(roundness(radius), 0.02*radius)
	for i, p := range c.points {
		if math.Abs(p.distance(centre)-radius) > off {
			return point{}, 0, false
		}
		next := c.points[(i+1)%len(c.points)]
		if next.distance(p) > 2*radius*math.Sin(math.Pi/(fewestCorners-1.5)) {
			return point{}, 0, false
		}
	}
	area, _ := c.area()
	if full := math.Pi * radius * radius; area < 0.95*full || area > 1.02*full {
		return point{}, 0, false // an arc gone over, or a circle run twice
	}
	return centre, radius, true
}

// thin drops points that lie within the tolerance on the line between their
// neighbours, and points on top of each other.
func thin(points []point, closed bool, tol float64) []point {
	var out []point
	for _, p := range points {
		if len(out) > 0 && p.distance(out[len(out)-1]) < 1e-6 {
			continue
		}
		out = append(out, p)
	}
	if closed && len(out) > 1 && out[0].distance(out[len(out)-1]) < 1e-6 {
		out = out[:len(out)-1]
	}
	if len(out) < 4 {
		return out
	}
	kept := out[:1]
	last := 0 // index in the unthinned row of the last kept point
	src := append([]point(nil), out...)
	for i := 1; i < len(src)-1; i++ {
		straight := i-last < 32
		for k := last + 1; straight && k <= i; k++ {
			straight = toSegment(src[k], src[last], src[i+1]) < tol
		}
		if !straight {
			kept = append(kept, src[i])
			last = i
		}
	}
	return append(kept, src[len(src)-1])
}

// toSegment is the distance of p from the segment a–b.
func toSegment(p, a, b point) float64 {
	d := b.minus(a)
	l := float64(d.x*d.x) + float64(d.y*d.y)
	if l == 0 {
		return p.distance(a)
	}
	t := (float64((p.x-a.x)*d.x) + float64((p.y-a.y)*d.y)) / l
	t = math.Max(0, math.Min(1, t))
	return p.distance(point{a.x + t*d.x, a.y + t*d.y})
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
func apart(a, b *contour, most int) (float64, point) {
	worst, where := 0.0, point{}
	for _, turn := range [2][2]*contour{{a, b}, {b, a}} {
		from := sampled(turn[0].points, most)
		to := sampled(turn[1].points, most)
		for _, p := range from {
			near := math.Inf(1)
			for i := range to {
				j := i + 1
				if j == len(to) {
					if !turn[1].closed {
						break
					}
					j = 0
				}
				if d := toSegment(p, to[i], to[j]); d < near {
					if near = d; near <= worst {
						break
					}
				}
			}
			if len(to) == 1 {
				near = p.distance(to[0])
			}
			if near > worst && !math.IsInf(near, 0) {
				worst, where = near, p
			}
		}
	}
	return worst, where
}

// joinMm is how near two ends must be to be the same point.
const joinMm = 0.05

// join chains open contours whose ends meet; what closes by that becomes
// closed. The order of the input decides where ends of three meet.
func join(open []contour) (joined []contour) {
	type end struct {
		k    int
		tail bool
	}
	cell := func(p point) [2]int64 {
		return [2]int64{int64(math.Floor(p.x / joinMm)), int64(math.Floor(p.y / joinMm))}
	}
	ends := map[[2]int64][]end{}
	for k := range open {
		pts := open[k].points
		ends[cell(pts[0])] = append(ends[cell(pts[0])], end{k, false})
		ends[cell(pts[len(pts)-1])] = append(ends[cell(pts[len(pts)-1])], end{k, true})
	}
	used := make([]bool, len(open))
	// next finds the unused end nearest to p, the first of equals.
	next := func(p point) (end, bool) {
		best, found, near := end{}, false, joinMm
		c := cell(p)
		for dx := int64(-1); dx <= 1; dx++ {
			for dy := int64(-1); dy <= 1; dy++ {
				for _, e := range ends[[2]int64{c[0] + dx, c[1] + dy}] {
					if used[e.k] {
						continue
					}
					q := open[e.k].points[0]
					if e.tail {
						q = open[e.k].points[len(open[e.k].points)-1]
					}
					if d := p.distance(q); d < near || d == near && found && e.k < best.k {
						best, found, near = e, true, d
					}
				}
			}
		}
		return best, found
	}
	for k := range open {
		if used[k] {
			continue
		}
		used[k] = true
		c := open[k]
		c.points = append([]point(nil), c.points...)
		for range 2 { // at the tail, then turned round at the head
			for c.points[0].distance(c.points[len(c.points)-1]) > joinMm || len(c.points) < 3 {
				e, ok := next(c.points[len(c.points)-1])
				if !ok {
					break
				}
				used[e.k] = true
				add := append([]point(nil), open[e.k].points...)
				if e.tail {
					reverse(add)
				}
				c.points = append(c.points, add[1:]...)
			}
			reverse(c.points)
		}
		if len(c.points) > 2 && c.points[0].distance(c.points[len(c.points)-1]) <= joinMm {
			c.closed = true
			c.points = c.points[:len(c.points)-1]
		}
		joined = append(joined, c)
	}
	return joined
}

func reverse(p []point) {
	for i, j := 0, len(p)-1; i < j; i, j = i+1, j-1 {
		p[i], p[j] = p[j], p[i]
	}
}
