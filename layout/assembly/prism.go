package assembly

import (
	"math"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// prism is an outline in x and y between two heights z.
type prism struct {
	g         *region
	low, high float64
	seams     []geom.Point
}

func (s *prism) box() Box {
	return Box{Vec{s.g.low.XMm, s.g.low.YMm, s.low}, Vec{s.g.high.XMm, s.g.high.YMm, s.high}}
}

func (s *prism) dist(p Vec) float64 {
	return slab(s.g.dist(geom.Point{XMm: p.X, YMm: p.Y}), max(s.low-p.Z, p.Z-s.high))
}

// slab joins the distance to the side and that to the ends.
func slab(side, end float64) float64 {
	if side > 0 && end > 0 {
		return math.Sqrt(side*side + end*end)
	}
	return max(side, end)
}

func (s *prism) hits(o, d Vec, ts []float64) []float64 {
	if d.Z != 0 {
		ts = append(ts, (s.low-o.Z)/d.Z, (s.high-o.Z)/d.Z)
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
		den := q.Cross(side)
		if math.Abs(den) < 1e-12 {
			continue
		}
		w := e.a.Minus(p)
		if u := w.Cross(q) / den; u > -1e-6 && u < 1+1e-6 {
			ts = append(ts, w.Cross(side)/den)
		}
	}
	return ts
}

// arcPatch is the largest angle, in radians, that one patch of a face spans.
const arcPatch = math.Pi / 3

func (s *prism) faces() []face {
	out := ends(s.box())
	for i := range s.g.segs {
		e := &s.g.segs[i]
		at := func(a, b float64) Vec {
			p := e.at(a)
			return Vec{p.XMm, p.YMm, s.low + b*(s.high-s.low)}
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

// ends are the faces at the bottom and the top of a box, on which a shape ends.
func ends(box Box) (out []face) {
	for _, z := range []float64{box.Low.Z, box.High.Z} {
		at := func(a, b float64) Vec {
			return Vec{box.Low.X + a*(box.High.X-box.Low.X), box.Low.Y + b*(box.High.Y-box.Low.Y), z}
		}
		out = append(out, newFace(at, 0, 1, 0, 1))
	}
	return out
}

func (s *prism) bulk() (mm3 float64, centre Vec) {
	area, c := s.g.area()
	return area * (s.high - s.low), Vec{c.XMm, c.YMm, (s.low + s.high) / 2}
}

// columns are a grid of lines along z; each stands for the same area, and all
// together for the outline's.
func (s *prism) columns(n int) []column {
	return gridColumns(s.g, 4*n)
}

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
	lift := func(p geom.Point, z float64) Vec { return Vec{p.XMm, p.YMm, z} }
	out = seq.Map(s.seams, func(p geom.Point) []Vec { return []Vec{lift(p, s.low), lift(p, s.high)} })
	for i := range s.g.starts {
		flat := s.g.flat(i, 0.01)
		for _, z := range []float64{s.low, s.high} {
			out = append(out, seq.Map(append(flat, flat[0]), func(p geom.Point) Vec { return lift(p, z) }))
		}
		loop := s.g.loop(i)
		for k := range loop {
			e, before := &loop[k], &loop[(k+len(loop)-1)%len(loop)]
			if sharp(before.along(1), e.along(0)) {
				out = append(out, []Vec{lift(e.a, s.low), lift(e.a, s.high)})
			}
			for _, p := range e.grazed(geom.Point{XMm: view.X, YMm: view.Y}) {
				out = append(out, []Vec{lift(p, s.low), lift(p, s.high)})
			}
		}
	}
	return out
}

// along is the direction of the segment at its start (0) or end (1).
func (s *seg) along(t float64) geom.Point {
	if !s.arc {
		return s.b.Minus(s.a)
	}
	q := s.at(t).Minus(s.c)
	return geom.Point{XMm: -q.YMm, YMm: q.XMm}.Times(math.Copysign(1, s.sweep))
}

// grazed are the points of an arc that a view from the side touches.
func (s *seg) grazed(view geom.Point) []geom.Point {
	if !s.arc || view.LengthMm() < 1e-9 {
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
	for i := range s.g.starts {
		flat := s.g.flat(i, 0.01)
		turn := seq.Map(append(flat, flat[0]), func(p geom.Point) Vec { return Vec{p.XMm, p.YMm, 0} })
		out = append(out, generator{turn, s.low, s.high})
	}
	return out
}
