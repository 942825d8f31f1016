package assembly

import (
	"math"

	"centrepop/parts/geom"
)

// ruled is a body between two polygons with as many corners, at two heights:
// corner i goes straight to corner i. A corner may stand more than once, which
// makes a triangle; so a square goes to a circle, and a circle to a circle
// beside it.
type ruled struct {
	a, b      []geom.Point
	low, high float64
	slope     float64 // shortens a distance in the level to one in space
	open      bool    // as the inside of a shell: no skin over its ends
}

func newRuled(a, b []geom.Point, low, high float64) *ruled {
	s := &ruled{a: a, b: b, low: low, high: high}
	var most float64
	for i := range a {
		most = max(most, b[i].Minus(a[i]).LengthMm()/(high-low))
	}
	s.slope = 1 / math.Sqrt(1+most*most)
	return s
}

func (s *ruled) box() Box {
	box := nothing()
	for i := range s.a {
		box = box.With(Vec{s.a[i].XMm, s.a[i].YMm, s.low}, Vec{s.b[i].XMm, s.b[i].YMm, s.high})
	}
	return box
}

// level is the polygon at a share t of the height.
func (s *ruled) level(t float64) (out []geom.Point) {
	for i := range s.a {
		out = append(out, mix(s.a[i], s.b[i], t))
	}
	return out
}

func (s *ruled) dist(p Vec) float64 {
	t := (p.Z - s.low) / (s.high - s.low)
	t = max(0, min(1, t))
	q, best, inside := geom.Point{XMm: p.X, YMm: p.Y}, inf, false
	a, b := geom.Point{}, mix(s.a[len(s.a)-1], s.b[len(s.a)-1], t)
	for i := range s.a {
		a, b = b, mix(s.a[i], s.b[i], t)
		if a == b {
			continue
		}
		if (a.YMm > q.YMm) != (b.YMm > q.YMm) && q.XMm < a.XMm+(b.XMm-a.XMm)*(q.YMm-a.YMm)/(b.YMm-a.YMm) {
			inside = !inside
		}
		best = min(best, lineDist2(a, b, q))
	}
	side := math.Sqrt(best) * s.slope
	if inside {
		side = -side
	}
	if s.open {
		return side
	}
	return max(side, max(s.low-p.Z, p.Z-s.high))
}

// hits are where the line crosses the ends and the rules' surfaces: P on the
// line at t is in the level's edge where (P − E) × (F − E) = 0, of degree two
// in t since E and F move evenly with z.
func (s *ruled) hits(o, d Vec, ts []float64) []float64 {
	h := s.high - s.low
	if d.Z != 0 {
		ts = append(ts, (s.low-o.Z)/d.Z, (s.high-o.Z)/d.Z)
	}
	z0, z1 := (o.Z-s.low)/h, d.Z/h // the share of the height is z0 + z1 t
	for i := range s.a {
		k := (i + 1) % len(s.a)
		da, db := s.b[i].Minus(s.a[i]), s.b[k].Minus(s.a[k])
		p0 := geom.Point{XMm: o.X, YMm: o.Y}.Minus(s.a[i]).Minus(da.Times(z0))
		p1 := geom.Point{XMm: d.X, YMm: d.Y}.Minus(da.Times(z1))
		e := s.a[k].Minus(s.a[i])
		e0, e1 := e.Plus(db.Minus(da).Times(z0)), db.Minus(da).Times(z1)
		ts = quadratic(p1.Cross(e1), p1.Cross(e0)+p0.Cross(e1), p0.Cross(e0), ts, func(t float64) bool { // within the edge
			w, v := e0.Plus(e1.Times(t)), p0.Plus(p1.Times(t))
			l := w.Dot(w)
			return l > 0 && v.Dot(w) >= -edgeShare*l && v.Dot(w) <= (1+edgeShare)*l
		})
	}
	return ts
}

func (s *ruled) faces() []face {
	out := ends(s.box(), End{AtMm: s.low}, End{AtMm: s.high})
	for i := range s.a {
		k := (i + 1) % len(s.a)
		at := func(a, b float64) Vec {
			p := mix(mix(s.a[i], s.a[k], a), mix(s.b[i], s.b[k], a), b)
			return Vec{p.XMm, p.YMm, s.low + b*(s.high-s.low)}
		}
		out = append(out, newFace(at, 0, 1, 0, 1))
	}
	return out
}

// bulk is exact by the prismoidal rule: the level's area is of degree two in z
// and its moment of degree three.
func (s *ruled) bulk() (mm3 float64, centre Vec) {
	h := s.high - s.low
	var moment Vec
	for _, at := range []struct{ t, weight float64 }{{0, 1}, {0.5, 4}, {1, 1}} {
		a, m := geom.PolygonLoop(s.level(at.t)...).Area()
		w := at.weight * h / 6
		mm3 += w * a
		moment = moment.Add(Vec{m.XMm, m.YMm, a * (s.low + at.t*h)}.Times(w))
	}
	return math.Abs(mm3), moment.Times(1 / mm3)
}

func (s *ruled) columns(n int) []column {
	box := s.box()
	g := newRegion(Outline{geom.RectangleLoop(geom.Point{XMm: box.Low.X, YMm: box.Low.Y}, geom.Point{XMm: box.High.X, YMm: box.High.Y}, 0)})
	return gridColumns(g, 8*n)
}

func (s *ruled) edges(view Vec) [][]Vec {
	var out [][]Vec
	lift := func(p geom.Point, z float64) Vec { return Vec{p.XMm, p.YMm, z} }
	var low, high []Vec
	n := len(s.a)
	for i := range n + 1 {
		low, high = append(low, lift(s.a[i%n], s.low)), append(high, lift(s.b[i%n], s.high))
	}
	out = append(out, low, high)
	normal := func(i int) Vec {
		along := lift(mix(s.b[i], s.b[(i+1)%n], 0.5), s.high).Sub(lift(mix(s.a[i], s.a[(i+1)%n], 0.5), s.low))
		across := s.a[(i+1)%n].Minus(s.a[i]).Plus(s.b[(i+1)%n].Minus(s.b[i]))
		return lift(across, 0).Cross(along).Unit()
	}
	for i := range n {
		before, after := normal((i+n-1)%n), normal(i)
		fold := before.Dot(after) < math.Cos(15*math.Pi/180)
		limb := looks(before, view) != looks(after, view)
		if fold || limb {
			out = append(out, []Vec{low[i], high[i]})
		}
	}
	return out
}

// looks tells whether a face looks towards who looks, is seen on edge, or looks
// away: 1, 0, −1.
func looks(normal, view Vec) int {
	switch dot := normal.Dot(view); {
	case geom.Over(dot, 0):
		return 1
	case geom.Over(0, dot):
		return -1
	}
	return 0
}

func (s *ruled) generators() []generator { return nil }
