package assembly

import (
	"math"

	"centrepop/parts/seq"
)

// prism is an outline in x and y between two heights z.
type prism struct {
	g         *region
	low, high float64
	seams     []Pt
}

func (s *prism) box() Box {
	return Box{Vec{s.g.low.X, s.g.low.Y, s.low}, Vec{s.g.high.X, s.g.high.Y, s.high}}
}

func (s *prism) dist(p Vec) float64 {
	return slab(s.g.dist(Pt{p.X, p.Y}), max(s.low-p.Z, p.Z-s.high))
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
	p, q := Pt{o.X, o.Y}, Pt{d.X, d.Y}
	for i := range s.g.segs {
		e := &s.g.segs[i]
		if e.arc {
			f := p.sub(e.c)
			ts = quadratic(q.dot(q), 2*f.dot(q), f.dot(f)-e.r*e.r, ts, func(t float64) bool { return e.in(f.add(q.times(t))) })
			continue
		}
		side := e.b.sub(e.a)
		den := q.cross(side)
		if math.Abs(den) < 1e-12 {
			continue
		}
		w := e.a.sub(p)
		if u := w.cross(q) / den; u > -1e-6 && u < 1+1e-6 {
			ts = append(ts, w.cross(side)/den)
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
			return Vec{p.X, p.Y, s.low + b*(s.high-s.low)}
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
	return area * (s.high - s.low), Vec{c.X, c.Y, (s.low + s.high) / 2}
}

// columns are a grid of lines along z; each stands for the same area, and all
// together for the outline's.
func (s *prism) columns(n int) []column {
	return gridColumns(s.g, 4*n)
}

func gridColumns(g *region, n int) []column {
	size := g.high.sub(g.low)
	var out []column
	for i := range n {
		for k := range n {
			p := g.low.add(Pt{size.X * (float64(i) + 0.5) / float64(n), size.Y * (float64(k) + 0.5) / float64(n)})
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
	lift := func(p Pt, z float64) Vec { return Vec{p.X, p.Y, z} }
	out = seq.Map(s.seams, func(p Pt) []Vec { return []Vec{lift(p, s.low), lift(p, s.high)} })
	for i := range s.g.starts {
		flat := s.g.flat(i, 0.01)
		for _, z := range []float64{s.low, s.high} {
			out = append(out, seq.Map(append(flat, flat[0]), func(p Pt) Vec { return lift(p, z) }))
		}
		loop := s.g.loop(i)
		for k := range loop {
			e, before := &loop[k], &loop[(k+len(loop)-1)%len(loop)]
			if sharp(before.along(1), e.along(0)) {
				out = append(out, []Vec{lift(e.a, s.low), lift(e.a, s.high)})
			}
			for _, p := range e.grazed(Pt{view.X, view.Y}) {
				out = append(out, []Vec{lift(p, s.low), lift(p, s.high)})
			}
		}
	}
	return out
}

// along is the direction of the segment at its start (0) or end (1).
func (s *seg) along(t float64) Pt {
	if !s.arc {
		return s.b.sub(s.a)
	}
	q := s.at(t).sub(s.c)
	return Pt{-q.Y, q.X}.times(math.Copysign(1, s.sweep))
}

// grazed are the points of an arc that a view from the side touches.
func (s *seg) grazed(view Pt) []Pt {
	if !s.arc || view.len() < 1e-9 {
		return nil
	}
	side := Pt{-view.Y, view.X}.times(1 / view.len())
	var out []Pt
	for _, sign := range []float64{-1, 1} {
		if q := side.times(sign); s.in(q) {
			out = append(out, s.c.add(q.times(s.r)))
		}
	}
	return out
}

func (s *prism) generators() (out []generator) {
	for i := range s.g.starts {
		flat := s.g.flat(i, 0.01)
		turn := seq.Map(append(flat, flat[0]), func(p Pt) Vec { return Vec{p.X, p.Y, 0} })
		out = append(out, generator{turn, s.low, s.high})
	}
	return out
}
