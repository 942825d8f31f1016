package assembly

import (
	"math"
	"slices"

	"centrepop/parts/geom"
)

func mix(a, b geom.Point, t float64) geom.Point {
	return geom.Point{XMm: a.XMm + (b.XMm-a.XMm)*t, YMm: a.YMm + (b.YMm-a.YMm)*t}
}
func mixVec(a, b Vec, t float64) Vec { return a.Add(b.Sub(a).Times(t)) }

// Outline is a flat figure: what lies inside an odd number of its loops, so
// that holes and islands need no direction. Loops must not cross.
type Outline []geom.Loop

// seg is a straight line or an arc of a loop.
type seg struct {
	a, b    geom.Point
	arc     bool
	c       geom.Point // centre
	r       float64    // radius
	mid     geom.Point // direction from the centre to the middle of the arc
	cosHalf float64    // of half the arc's angle
	from    float64    // angle of a about the centre, radians
	sweep   float64    // angle from a to b, radians, negative clockwise
	ghost   bool       // closes the loop but bounds nothing: the axis of a turned section
}

func newSeg(v geom.Vertex, to geom.Point) seg {
	s := seg{a: v.Point, b: to}
	if v.Bulge == 0 {
		return s
	}
	s.arc = true
	s.c, s.r, s.sweep = v.Arc(to)
	s.from = math.Atan2(s.a.YMm-s.c.YMm, s.a.XMm-s.c.XMm)
	return s
}

// in tells whether a direction from the centre lies within the arc.
func (s *seg) in(q geom.Point) bool { return q.Dot(s.mid) >= s.cosHalf*q.LengthMm()-1e-9 }

// at is the point at a share t of the segment.
func (s *seg) at(t float64) geom.Point {
	if !s.arc {
		return mix(s.a, s.b, t)
	}
	sin, cos := math.Sincos(s.from + s.sweep*t)
	return geom.Point{XMm: s.c.XMm + s.r*cos, YMm: s.c.YMm + s.r*sin}
}

// lineDist2 is the square of the distance from p to a straight line.
func lineDist2(a, b, p geom.Point) float64 {
	dx, dy := b.XMm-a.XMm, b.YMm-a.YMm
	qx, qy := p.XMm-a.XMm, p.YMm-a.YMm
	t := qx*dx + qy*dy
	if l := dx*dx + dy*dy; t >= l {
		qx, qy = p.XMm-b.XMm, p.YMm-b.YMm
	} else if t > 0 {
		t /= l
		qx, qy = qx-dx*t, qy-dy*t
	}
	return qx*qx + qy*qy
}

// dist2 is the square of the distance to the segment.
func (s *seg) dist2(p geom.Point) float64 {
	if !s.arc {
		return lineDist2(s.a, s.b, p)
	}
	q := p.Minus(s.c)
	if s.in(q) {
		l := q.LengthMm() - s.r
		return l * l
	}
	d, e := p.Minus(s.a), p.Minus(s.b)
	return min(d.Dot(d), e.Dot(e))
}

// split cuts an arc where it is highest and lowest, so that each piece lies on
// one side of its centre.
func (s seg) split() []seg {
	if !s.arc {
		return []seg{s}
	}
	var cuts []float64
	low, high := min(s.from, s.from+s.sweep), max(s.from, s.from+s.sweep)
	for turn := (math.Ceil(low/math.Pi-0.5) + 0.5) * math.Pi; turn < high; turn += math.Pi {
		if t := (turn - s.from) / s.sweep; t > 1e-9 && t < 1-1e-9 {
			cuts = append(cuts, t)
		}
	}
	slices.Sort(cuts)
	var out []seg
	from, t0 := s.a, float64(0)
	for _, t := range append(cuts, 1) {
		piece := s
		piece.a, piece.b = from, s.at(t)
		if t == 1 {
			piece.b = s.b
		}
		piece.from, piece.sweep = s.from+s.sweep*t0, s.sweep*(t-t0)
		sin, cos := math.Sincos(piece.from + piece.sweep/2)
		piece.mid, piece.cosHalf = geom.Point{XMm: cos, YMm: sin}, math.Cos(piece.sweep/2)
		out = append(out, piece)
		from, t0 = piece.b, t
	}
	return out
}

// leftOf tells whether p, level with the segment, lies to the left of it.
func (s *seg) leftOf(p geom.Point) bool {
	if !s.arc {
		return p.XMm < s.a.XMm+(s.b.XMm-s.a.XMm)*(p.YMm-s.a.YMm)/(s.b.YMm-s.a.YMm)
	}
	dy := p.YMm - s.c.YMm
	return p.XMm < s.c.XMm+math.Copysign(math.Sqrt(max(0, s.r*s.r-dy*dy)), s.mid.XMm)
}

// region is an outline made ready for questions.
type region struct {
	segs      []seg
	loops     []geom.Loop
	starts    []int // of each loop in segs
	low, high geom.Point
	upright   bool // a rectangle along x and y, whose edges are these:
	from, to  geom.Point
}

// square finds out whether the figure is an upright rectangle. What bounds nothing
// is no edge of it.
func (g *region) square() {
	if len(g.segs) != 4 {
		return
	}
	from := g.low
	for i := range g.segs {
		s, next := &g.segs[i], &g.segs[(i+1)%4]
		level := s.a.YMm == s.b.YMm
		if s.arc || !level && s.a.XMm != s.b.XMm || level == (next.a.YMm == next.b.YMm) {
			return
		}
		if s.ghost { // the axis lies lowest
			from.YMm = -inf
		}
	}
	g.upright, g.from, g.to = true, from, g.high
}

func newRegion(o Outline) *region {
	g := &region{low: geom.Point{XMm: inf, YMm: inf}, high: geom.Point{XMm: -inf, YMm: -inf}}
	for _, loop := range o {
		g.starts = append(g.starts, len(g.segs))
		var kept geom.Loop // without a corner that lies on the next: a side left out would leave the figure open there
		for i, v := range loop {
			if loop[(i+1)%len(loop)].Minus(v.Point).LengthMm() > geom.CloseMm {
				kept = append(kept, v)
			}
		}
		g.loops = append(g.loops, kept)
		for i, v := range kept {
			for _, s := range newSeg(v, kept[(i+1)%len(kept)].Point).split() {
				g.segs = append(g.segs, s)
				g.bound(s.a)
				for _, side := range []geom.Point{{XMm: 1, YMm: 0}, {XMm: -1, YMm: 0}} {
					if s.arc && s.in(side) {
						g.bound(s.c.Plus(side.Times(s.r)))
					}
				}
			}
		}
	}
	g.square()
	return g
}

func (g *region) bound(p geom.Point) {
	g.low = geom.Point{XMm: min(g.low.XMm, p.XMm), YMm: min(g.low.YMm, p.YMm)}
	g.high = geom.Point{XMm: max(g.high.XMm, p.XMm), YMm: max(g.high.YMm, p.YMm)}
}

func (g *region) loop(i int) []seg {
	if i+1 < len(g.starts) {
		return g.segs[g.starts[i]:g.starts[i+1]]
	}
	return g.segs[g.starts[i]:]
}

// dist is the distance from p to the figure's edge, negative inside.
func (g *region) dist(p geom.Point) float64 {
	if g.upright {
		return slab(max(g.from.XMm-p.XMm, p.XMm-g.to.XMm), max(g.from.YMm-p.YMm, p.YMm-g.to.YMm))
	}
	best, inside := inf, false
	for i := range g.segs {
		s := &g.segs[i]
		from, to := s.a.YMm-p.YMm, s.b.YMm-p.YMm
		if (from > 0) != (to > 0) {
			if s.leftOf(p) {
				inside = !inside
			}
		} else if off := min(math.Abs(from), math.Abs(to)); off*off > best {
			continue // no arc reaches higher or lower than its ends
		}
		switch {
		case s.ghost:
		case s.arc:
			best = min(best, s.dist2(p))
		default:
			best = min(best, lineDist2(s.a, s.b, p))
		}
	}
	if inside {
		return -math.Sqrt(best)
	}
	return math.Sqrt(best)
}

// slab joins the distance to the side and that to the ends.
func slab(side, end float64) float64 {
	if side <= 0 || end <= 0 {
		return max(side, end)
	}
	return math.Sqrt(side*side + end*end)
}

// counts is what loop i adds to the area in mm² and to its moment, less than nothing for a hole, which lies inside
// an odd number of others; sign is −1 where that is the other way than it runs.
func (g *region) counts(i int) (mm2 float64, moment geom.Point, sign float64) {
	mm2, moment = g.loops[i].Area()
	sign = math.Copysign(1, mm2)
	for k := range g.loops {
		if in := (&region{segs: g.loop(k)}); k != i && in.dist(g.loop(i)[0].a) < 0 {
			sign = -sign
		}
	}
	return sign * mm2, moment.Times(sign), sign
}

// area is the area in mm² and the centroid.
func (g *region) area() (mm2 float64, centre geom.Point) {
	for i := range g.loops {
		a, m, _ := g.counts(i)
		mm2, centre = mm2+a, centre.Plus(m)
	}
	return mm2, centre.Times(1 / mm2)
}

// second are the moments of the area by x² and by xy, in mm⁴, each arc as 512 chords.
func (g *region) second() (xx, xy float64) {
	for i := range g.loops {
		_, _, sign := g.counts(i)
		pts := g.loops[i].Points(512)
		for k, p := range pts {
			q := pts[(k+1)%len(pts)]
			c := sign * p.Cross(q) / 24
			xx += 2 * c * (p.XMm*p.XMm + p.XMm*q.XMm + q.XMm*q.XMm)
			xy += c * (p.XMm*(2*p.YMm+q.YMm) + q.XMm*(2*q.YMm+p.YMm))
		}
	}
	return xx, xy
}

// flat is loop i as points; arcs are within tol of their chords.
func (g *region) flat(i int, tol float64) []geom.Point {
	var out []geom.Point
	for _, s := range g.loop(i) {
		n := s.pieces(tol)
		for k := range n {
			out = append(out, s.at(float64(k)/float64(n)))
		}
	}
	return out
}

// pieces is how many straight pieces keep within tol of the segment.
func (s *seg) pieces(tol float64) int {
	if !s.arc {
		return 1
	}
	step := 2 * math.Acos(max(0, 1-tol/s.r))
	return int(math.Ceil(math.Abs(s.sweep) / step))
}

// crossings are the shares of the segment at which it crosses another, both
// straight.
func (s *seg) crossings(o *seg) (float64, bool) {
	d, e := s.b.Minus(s.a), o.b.Minus(o.a)
	q, den := o.a.Minus(s.a), d.Cross(e) // of parallel ones 0, and the shares no numbers between 0 and 1
	t, u := q.Cross(e)/den, q.Cross(d)/den
	return t, t > 0 && t < 1 && u >= 0 && u <= 1
}
