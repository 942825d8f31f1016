package assembly

import "math"

// ruled is a body between two polygons with as many corners, at two heights:
// corner i goes straight to corner i. A corner may stand more than once, which
// makes a triangle; so a square goes to a circle, and a circle to a circle
// beside it.
type ruled struct {
	a, b      []Pt
	low, high float64
	slope     float64 // shortens a distance in the level to one in space
	open      bool    // as the inside of a shell: no skin over its ends
}

func newRuled(a, b []Pt, low, high float64) *ruled {
	s := &ruled{a: a, b: b, low: low, high: high}
	most := 0.0
	for i := range a {
		most = max(most, b[i].sub(a[i]).len()/(high-low))
	}
	s.slope = 1 / math.Sqrt(1+most*most)
	return s
}

func (s *ruled) box() Box {
	box := nothing()
	for i := range s.a {
		box = box.With(Vec{s.a[i].X, s.a[i].Y, s.low}, Vec{s.b[i].X, s.b[i].Y, s.high})
	}
	return box
}

// level is the polygon at a share t of the height, appended to buf.
func (s *ruled) level(t float64, buf []Pt) []Pt {
	for i := range s.a {
		buf = append(buf, mix(s.a[i], s.b[i], t))
	}
	return buf
}

func (s *ruled) dist(p Vec) float64 {
	t := (p.Z - s.low) / (s.high - s.low)
	t = max(0, min(1, t))
	q, best, inside := Pt{p.X, p.Y}, math.Inf(1), false
	a, b := Pt{}, mix(s.a[len(s.a)-1], s.b[len(s.a)-1], t)
	for i := range s.a {
		a, b = b, mix(s.a[i], s.b[i], t)
		if a == b {
			continue
		}
		if (a.Y > q.Y) != (b.Y > q.Y) && q.X < a.X+(b.X-a.X)*(q.Y-a.Y)/(b.Y-a.Y) {
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
		da, db := s.b[i].sub(s.a[i]), s.b[k].sub(s.a[k])
		p0 := Pt{o.X, o.Y}.sub(s.a[i]).sub(da.times(z0))
		p1 := Pt{d.X, d.Y}.sub(da.times(z1))
		e := s.a[k].sub(s.a[i])
		e0, e1 := e.add(db.sub(da).times(z0)), db.sub(da).times(z1)
		ts = quadratic(p1.cross(e1), p1.cross(e0)+p0.cross(e1), p0.cross(e0), ts, func(t float64) bool { // within the edge
			w, v := e0.add(e1.times(t)), p0.add(p1.times(t))
			l := w.dot(w)
			return l > 0 && v.dot(w) >= -1e-6*l && v.dot(w) <= (1+1e-6)*l
		})
	}
	return ts
}

func (s *ruled) faces() []face {
	out := ends(s.box())
	for i := range s.a {
		k := (i + 1) % len(s.a)
		at := func(a, b float64) Vec {
			p := mix(mix(s.a[i], s.a[k], a), mix(s.b[i], s.b[k], a), b)
			return Vec{p.X, p.Y, s.low + b*(s.high-s.low)}
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
		a, m := loopArea(polySegs(s.level(at.t, nil)))
		w := at.weight * h / 6
		mm3 += w * a
		moment = moment.Add(Vec{m.X, m.Y, a * (s.low + at.t*h)}.Times(w))
	}
	return math.Abs(mm3), moment.Times(1 / mm3)
}

func polySegs(pts []Pt) []seg {
	out := make([]seg, 0, len(pts))
	for i, p := range pts {
		out = append(out, seg{a: p, b: pts[(i+1)%len(pts)]})
	}
	return out
}

func (s *ruled) columns(n int) []column {
	box := s.box()
	g := newRegion(Outline{RectangleLoop(Pt{box.Low.X, box.Low.Y}, Pt{box.High.X, box.High.Y}, 0)})
	return gridColumns(g, 8*n)
}

func (s *ruled) edges(view Vec) [][]Vec {
	var out [][]Vec
	lift := func(p Pt, z float64) Vec { return Vec{p.X, p.Y, z} }
	var low, high []Vec
	n := len(s.a)
	for i := range n + 1 {
		low, high = append(low, lift(s.a[i%n], s.low)), append(high, lift(s.b[i%n], s.high))
	}
	out = append(out, low, high)
	normal := func(i int) Vec {
		along := lift(mix(s.b[i], s.b[(i+1)%n], 0.5), s.high).Sub(lift(mix(s.a[i], s.a[(i+1)%n], 0.5), s.low))
		across := s.a[(i+1)%n].sub(s.a[i])
		if across.len() < 1e-9 {
			across = s.b[(i+1)%n].sub(s.b[i])
		}
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
	case dot > 1e-9:
		return 1
	case dot < -1e-9:
		return -1
	}
	return 0
}

func (s *ruled) generators() []generator { return nil }
