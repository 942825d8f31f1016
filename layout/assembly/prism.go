package assembly

import (
	"math"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// prism is an outline in x and y between two ends.
type prism struct {
	g         *region
	low, high End
}

// End is the plane in which a prism ends: its height over the y axis in mm, and by how much it rises for
// each mm of x.
type End struct{ AtMm, Rise float64 }

func (e End) z(x float64) float64 { return e.AtMm + e.Rise*x }

// over is how far p lies over the end, square to it.
func (e End) over(p Vec) float64 { return (p.Z - e.z(p.X)) / math.Sqrt(1+e.Rise*e.Rise) }

// on is the place of the end over a point of the outline.
func (e End) on(p geom.Point) Vec { return Vec{p.XMm, p.YMm, e.z(p.XMm)} }

func (s *prism) box() Box {
	return nothing().With(s.low.on(s.g.low), s.low.on(s.g.high), s.high.on(s.g.low), s.high.on(s.g.high))
}

func (s *prism) dist(p Vec) float64 {
	side, end := s.g.dist(geom.Point{XMm: p.X, YMm: p.Y}), max(-s.low.over(p), s.high.over(p))
	if s.low.Rise != 0 || s.high.Rise != 0 {
		return max(side, end) // beside a slant nothing is further
	}
	return slab(side, end)
}

func (s *prism) hits(o, d Vec, ts []float64) []float64 {
	for _, e := range [2]End{s.low, s.high} {
		if up := d.Z - e.Rise*d.X; up != 0 {
			ts = append(ts, (e.z(o.X)-o.Z)/up)
		}
	}
	p, q := geom.Point{XMm: o.X, YMm: o.Y}, geom.Point{XMm: d.X, YMm: d.Y}
	for i := range s.g.segs {
		e := &s.g.segs[i]
		if e.arc {
			f := p.Minus(e.c)
			ts = quadratic(q.Dot(q), 2*f.Dot(q), f.Dot(f)-e.r*e.r, ts, func(t float64) bool { return e.in(f.Plus(q.Times(t))) })
			continue
		}
		side := e.b.Minus(e.a)
		den, w := q.Cross(side), e.a.Minus(p) // no u lies between of a line along the side
		if u := w.Cross(q) / den; u > -edgeShare && u < 1+edgeShare {
			ts = append(ts, w.Cross(side)/den)
		}
	}
	return ts
}

// edgeFlatMm is how far the straight pieces of a round edge lie off it at most.
const edgeFlatMm = 0.01

// edgeShare is how far, of its length, an edge counts beyond its ends: no line passes between two.
const edgeShare = 1e-6

// arcPatch is the largest angle, in radians, that one patch of a face spans.
const arcPatch = math.Pi / 3

func (s *prism) faces() []face {
	out := ends(s.box(), s.low, s.high)
	for i := range s.g.segs {
		e := &s.g.segs[i]
		at := func(a, b float64) Vec {
			p := e.at(a)
			low, high := s.low.z(p.XMm), s.high.z(p.XMm)
			return Vec{p.XMm, p.YMm, low + b*(high-low)}
		}
		n := 1
		if e.arc {
			n = int(math.Ceil(math.Abs(e.sweep) / arcPatch))
		}
		for k := range n {
			out = append(out, newFace(at, float64(k)/float64(n), float64(k+1)/float64(n), 0, 1))
		}
	}
	return out
}

// ends are the faces on which a shape in a box ends.
func ends(box Box, of ...End) (out []face) {
	for _, e := range of {
		at := func(a, b float64) Vec {
			return e.on(geom.Point{XMm: box.Low.X + a*(box.High.X-box.Low.X), YMm: box.Low.Y + b*(box.High.Y-box.Low.Y)})
		}
		out = append(out, newFace(at, 0, 1, 0, 1))
	}
	return out
}

// bulk is the length over the outline, which is even in x, by its area and its moments.
func (s *prism) bulk() (mm3 float64, centre Vec) {
	area, c := s.g.area()
	long := End{s.high.AtMm - s.low.AtMm, s.high.Rise - s.low.Rise}
	mm3 = area * long.z(c.XMm)
	centre = Vec{c.XMm, c.YMm, (s.low.AtMm + s.high.AtMm) / 2}
	if s.low.Rise == 0 && s.high.Rise == 0 {
		return mm3, centre
	}
	xx, xy := s.g.second()
	square := func(e End) float64 { return e.AtMm*e.AtMm*area + 2*e.AtMm*e.Rise*area*c.XMm + e.Rise*e.Rise*xx }
	return mm3, Vec{long.AtMm*area*c.XMm + long.Rise*xx, long.AtMm*area*c.YMm + long.Rise*xy, (square(s.high) - square(s.low)) / 2}.Times(1 / mm3)
}

// columns are a grid of lines along z; each stands for the same area, and all
// together for the outline's.
func (s *prism) columns(n int) []column { return gridColumns(s.g, 4*n) }

func gridColumns(g *region, n int) []column {
	size := g.high.Minus(g.low)
	var out []column
	for i := range n {
		for k := range n {
			p := g.low.Plus(geom.Point{XMm: size.XMm * (float64(i) + 0.5) / float64(n), YMm: size.YMm * (float64(k) + 0.5) / float64(n)})
			if g.dist(p) < 0 {
				out = append(out, column{at: p})
			}
		}
	}
	area, _ := g.area()
	for i := range out {
		out[i].area = area / float64(len(out))
	}
	return out
}

func (s *prism) edges(view Vec) [][]Vec {
	var out [][]Vec
	for i := range s.g.starts {
		flat := s.g.flat(i, edgeFlatMm)
		for _, e := range [2]End{s.low, s.high} {
			out = append(out, seq.Map(append(flat, flat[0]), e.on))
		}
		loop := s.g.loop(i)
		for k := range loop {
			e, before := &loop[k], &loop[(k+len(loop)-1)%len(loop)]
			if sharp(before.along(1), e.along(0)) {
				out = append(out, []Vec{s.low.on(e.a), s.high.on(e.a)})
			}
			for _, p := range e.grazed(geom.Point{XMm: view.X, YMm: view.Y}) {
				out = append(out, []Vec{s.low.on(p), s.high.on(p)})
			}
		}
	}
	return out
}

// along is the way the segment runs at its start (0) or end (1), as long as the segment.
func (s *seg) along(t float64) geom.Point {
	if !s.arc {
		return s.b.Minus(s.a)
	}
	q := s.at(t).Minus(s.c)
	return geom.Point{XMm: -q.YMm, YMm: q.XMm}.Times(s.sweep)
}

// grazed are the points of an arc that a view from the side touches.
func (s *seg) grazed(view geom.Point) []geom.Point {
	if !s.arc || geom.Alike(view.LengthMm(), 0) {
		return nil
	}
	side := geom.Point{XMm: -view.YMm, YMm: view.XMm}.Times(1 / view.LengthMm())
	var out []geom.Point
	for _, sign := range []float64{-1, 1} {
		if q := side.Times(sign); s.in(q) {
			out = append(out, s.c.Plus(q.Times(s.r)))
		}
	}
	return out
}

func (s *prism) generators() (out []generator) {
	box := s.box()
	for i := range s.g.starts {
		flat := s.g.flat(i, edgeFlatMm)
		turn := seq.Map(append(flat, flat[0]), func(p geom.Point) Vec { return Vec{X: p.XMm, Y: p.YMm} })
		out = append(out, generator{turn, box.Low.Z, box.High.Z})
	}
	return out
}
