package assembly

import (
	"math"
	"slices"
)

// Pt is a point of an outline in mm.
type Pt struct{ X, Y float64 }

func (a Pt) sub(b Pt) Pt             { return Pt{a.X - b.X, a.Y - b.Y} }
func (a Pt) add(b Pt) Pt             { return Pt{a.X + b.X, a.Y + b.Y} }
func (a Pt) times(f float64) Pt      { return Pt{a.X * f, a.Y * f} }
func (a Pt) dot(b Pt) float64        { return a.X*b.X + a.Y*b.Y }
func (a Pt) cross(b Pt) float64      { return a.X*b.Y - a.Y*b.X }
func (a Pt) len() float64            { return math.Sqrt(a.dot(a)) }
func mix(a, b Pt, t float64) Pt      { return Pt{a.X + (b.X-a.X)*t, a.Y + (b.Y-a.Y)*t} }
func mixVec(a, b Vec, t float64) Vec { return a.Add(b.Sub(a).Times(t)) }

// Vertex is a corner of a loop and how the loop goes on to the next: straight
// if Bulge is 0, else by an arc that bulges to the right of the way for a
// positive bulge, which is the tangent of a quarter of the arc's angle: 1 is a
// half circle.
type Vertex struct {
	Pt
	Bulge float64
}

// Loop is a closed contour of straight lines and arcs; the last vertex goes on
// to the first. Either way round.
type Loop []Vertex

// Outline is a flat figure: what lies inside an odd number of its loops, so
// that holes and islands need no direction. Loops must not cross.
type Outline []Loop

// PolygonLoop joins points by straight lines.
func PolygonLoop(points ...Pt) Loop {
	out := make(Loop, len(points))
	for i, p := range points {
		out[i].Pt = p
	}
	return out
}

// RectangleLoop is a rectangle between two opposite corners, with round corners
// of a radius in mm, 0 for sharp ones.
func RectangleLoop(low, high Pt, cornerMm float64) Loop {
	if cornerMm <= 0 {
		return PolygonLoop(low, Pt{high.X, low.Y}, high, Pt{low.X, high.Y})
	}
	bulge := math.Tan(math.Pi / 8)
	r := cornerMm
	return Loop{
		{Pt{low.X + r, low.Y}, 0}, {Pt{high.X - r, low.Y}, bulge},
		{Pt{high.X, low.Y + r}, 0}, {Pt{high.X, high.Y - r}, bulge},
		{Pt{high.X - r, high.Y}, 0}, {Pt{low.X + r, high.Y}, bulge},
		{Pt{low.X, high.Y - r}, 0}, {Pt{low.X, low.Y + r}, bulge},
	}
}

// seg is a straight line or an arc of a loop.
type seg struct {
	a, b    Pt
	arc     bool
	c       Pt      // centre
	r       float64 // radius
	mid     Pt      // direction from the centre to the middle of the arc
	cosHalf float64 // of half the arc's angle
	from    float64 // angle of a about the centre, radians
	sweep   float64 // angle from a to b, radians, negative clockwise
	ghost   bool    // closes the loop but bounds nothing: the axis of a turned section
}

func newSeg(v Vertex, to Pt) seg {
	s := seg{a: v.Pt, b: to}
	if v.Bulge == 0 {
		return s
	}
	s.arc = true
	s.sweep = 4 * math.Atan(v.Bulge)
	chord := to.sub(v.Pt)
	half := chord.len() / 2
	s.r = half / math.Abs(math.Sin(s.sweep/2))
	left := Pt{-chord.Y, chord.X}.times(1 / chord.len())
	middle := mix(v.Pt, to, 0.5)
	// A positive bulge turns left about a centre on the left of the way.
	s.c = middle.add(left.times(half / math.Tan(s.sweep/2)))
	sign := math.Copysign(1, v.Bulge)
	s.mid = left.times(-sign)
	s.cosHalf = math.Cos(s.sweep / 2)
	s.from = math.Atan2(s.a.Y-s.c.Y, s.a.X-s.c.X)
	return s
}

// in tells whether a direction from the centre lies within the arc.
func (s *seg) in(q Pt) bool { return q.dot(s.mid) >= s.cosHalf*q.len()-1e-9 }

// at is the point at a share t of the segment.
func (s *seg) at(t float64) Pt {
	if !s.arc {
		return mix(s.a, s.b, t)
	}
	sin, cos := math.Sincos(s.from + s.sweep*t)
	return Pt{s.c.X + s.r*cos, s.c.Y + s.r*sin}
}

// lineDist2 is the square of the distance from p to a straight line.
func lineDist2(a, b, p Pt) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	qx, qy := p.X-a.X, p.Y-a.Y
	t := qx*dx + qy*dy
	if l := dx*dx + dy*dy; t >= l {
		qx, qy = p.X-b.X, p.Y-b.Y
	} else if t > 0 {
		t /= l
		qx, qy = qx-dx*t, qy-dy*t
	}
	return qx*qx + qy*qy
}

// dist2 is the square of the distance to the segment.
func (s *seg) dist2(p Pt) float64 {
	if !s.arc {
		return lineDist2(s.a, s.b, p)
	}
	q := p.sub(s.c)
	if s.in(q) {
		l := q.len() - s.r
		return l * l
	}
	d, e := p.sub(s.a), p.sub(s.b)
	return min(d.dot(d), e.dot(e))
}

// split cuts an arc where it is highest and lowest, so that each piece lies on
// one side of its centre.
func (s seg) split() []seg {
	if !s.arc {
		return []seg{s}
	}
	var cuts []float64
	for k := -9; k <= 9; k += 2 { // odd multiples of a right angle
		if t := (float64(k)*math.Pi/2 - s.from) / s.sweep; t > 1e-9 && t < 1-1e-9 {
			cuts = append(cuts, t)
		}
	}
	slices.Sort(cuts)
	var out []seg
	from, t0 := s.a, 0.0
	for _, t := range append(cuts, 1) {
		piece := s
		piece.a, piece.b = from, s.at(t)
		if t == 1 {
			piece.b = s.b
		}
		piece.from, piece.sweep = s.from+s.sweep*t0, s.sweep*(t-t0)
		sin, cos := math.Sincos(piece.from + piece.sweep/2)
		piece.mid, piece.cosHalf = Pt{cos, sin}, math.Cos(piece.sweep/2)
		out = append(out, piece)
		from, t0 = piece.b, t
	}
	return out
}

// leftOf tells whether p, level with the segment, lies to the left of it.
func (s *seg) leftOf(p Pt) bool {
	if !s.arc {
		return p.X < s.a.X+(s.b.X-s.a.X)*(p.Y-s.a.Y)/(s.b.Y-s.a.Y)
	}
	dy := p.Y - s.c.Y
	return p.X < s.c.X+math.Copysign(math.Sqrt(max(0, s.r*s.r-dy*dy)), s.mid.X)
}

// region is an outline made ready for questions.
type region struct {
	segs      []seg
	starts    []int // of each loop in segs
	low, high Pt
	upright   bool // a rectangle along x and y, whose edges are these:
	from, to  Pt
}

// square finds out whether the figure is an upright rectangle. What bounds nothing
// is no edge of it.
func (g *region) square() {
	if len(g.segs) != 4 {
		return
	}
	inf := math.Inf(1)
	from, to := g.low, g.high
	for i := range g.segs {
		s, next := &g.segs[i], &g.segs[(i+1)%4]
		level := s.a.Y == s.b.Y
		if s.arc || !level && s.a.X != s.b.X || level == (next.a.Y == next.b.Y) {
			return
		}
		switch {
		case !s.ghost:
		case !level && s.a.X == g.low.X:
			from.X = -inf
		case !level:
			to.X = inf
		case s.a.Y == g.low.Y:
			from.Y = -inf
		default:
			to.Y = inf
		}
	}
	g.upright, g.from, g.to = true, from, to
}

func newRegion(o Outline) *region {
	inf := math.Inf(1)
	g := &region{low: Pt{inf, inf}, high: Pt{-inf, -inf}}
	for _, loop := range o {
		g.starts = append(g.starts, len(g.segs))
		var kept Loop // without a corner that lies on the next: a side left out would leave the figure open there
		for i, v := range loop {
			if loop[(i+1)%len(loop)].sub(v.Pt).len() >= 1e-9 {
				kept = append(kept, v)
			}
		}
		for i, v := range kept {
			for _, s := range newSeg(v, kept[(i+1)%len(kept)].Pt).split() {
				g.segs = append(g.segs, s)
				g.bound(s.a)
				for _, side := range []Pt{{1, 0}, {-1, 0}} {
					if s.arc && s.in(side) {
						g.bound(s.c.add(side.times(s.r)))
					}
				}
			}
		}
	}
	g.square()
	return g
}

func (g *region) bound(p Pt) {
	g.low = Pt{min(g.low.X, p.X), min(g.low.Y, p.Y)}
	g.high = Pt{max(g.high.X, p.X), max(g.high.Y, p.Y)}
}

func (g *region) loop(i int) []seg {
	if i+1 < len(g.starts) {
		return g.segs[g.starts[i]:g.starts[i+1]]
	}
	return g.segs[g.starts[i]:]
}

// dist is the distance from p to the figure's edge, negative inside.
func (g *region) dist(p Pt) float64 {
	if g.upright {
		return slab(max(g.from.X-p.X, p.X-g.to.X), max(g.from.Y-p.Y, p.Y-g.to.Y))
	}
	best, inside := math.Inf(1), false
	for i := range g.segs {
		s := &g.segs[i]
		if (s.a.Y > p.Y) != (s.b.Y > p.Y) && s.leftOf(p) {
			inside = !inside
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

// area is the area in mm² and the centroid. A loop inside an odd number of
// others is a hole.
func (g *region) area() (mm2 float64, centre Pt) {
	for i := range g.starts {
		loop := g.loop(i)
		a, m := loopArea(loop)
		if a < 0 {
			a, m = -a, m.times(-1)
		}
		for k := range g.starts {
			if k != i && insideLoop(g.loop(k), loop[0].at(0.5)) {
				a, m = -a, m.times(-1)
			}
		}
		mm2, centre = mm2+a, centre.add(m)
	}
	if mm2 != 0 {
		centre = centre.times(1 / mm2)
	}
	return mm2, centre
}

func insideLoop(loop []seg, p Pt) bool {
	g := region{segs: loop}
	return g.dist(p) < 0
}

// loopArea is the signed area, positive anticlockwise, and the area's moment.
func loopArea(loop []seg) (area float64, moment Pt) {
	for i := range loop {
		s := &loop[i]
		a := s.a.cross(s.b) / 2
		area, moment = area+a, moment.add(s.a.add(s.b).times(a/3))
		if !s.arc {
			continue
		}
		// The piece between chord and arc: ½r²(φ − sin φ), its centroid at
		// 4r sin³(φ/2) / 3(φ − sin φ) from the centre.
		phi := math.Abs(s.sweep)
		piece := s.r * s.r / 2 * (phi - math.Sin(phi))
		away := 4 * s.r * math.Pow(math.Sin(phi/2), 3) / (3 * (phi - math.Sin(phi)))
		if s.sweep < 0 {
			piece = -piece
		}
		area, moment = area+piece, moment.add(s.c.add(s.mid.times(away)).times(piece))
	}
	return area, moment
}

// flat is loop i as points; arcs are within tol of their chords.
func (g *region) flat(i int, tol float64) []Pt {
	var out []Pt
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
	return max(1, int(math.Ceil(math.Abs(s.sweep)/step)))
}

// crossings are the shares of the segment at which it crosses another, both
// straight.
func (s *seg) crossings(o *seg) (float64, bool) {
	d, e := s.b.sub(s.a), o.b.sub(o.a)
	den := d.cross(e)
	if math.Abs(den) < 1e-12 {
		return 0, false
	}
	q := o.a.sub(s.a)
	t, u := q.cross(e)/den, q.cross(d)/den
	return t, t > 0 && t < 1 && u >= 0 && u <= 1
}
