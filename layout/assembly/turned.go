package assembly

import (
	"math"
	"sync"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// ZR is a point of a turned section: z along the axis and the radius, in mm.
type ZR struct{ Z, R float64 }

// turned is a figure in z and r turned about the z axis.
type turned struct {
	g    *region
	span Box
}

// newTurned closes a section between an outside and an inside contour. The
// inside may be empty, shorter than the outside (blind) or end on the axis.
func newTurned(outer, inner []ZR) *turned {
	var points []geom.Point
	add := func(p ZR) { points = append(points, geom.Point{XMm: p.Z, YMm: p.R}) }
	onAxis := func(p ZR) {
		if p.R > 0 {
			add(ZR{p.Z, 0})
		}
	}
	for _, p := range outer {
		add(p)
	}
	first, last := outer[0], outer[len(outer)-1]
	if len(inner) == 0 {
		onAxis(last)
		onAxis(first)
		return turnedLoop(points)
	}
	if end := inner[len(inner)-1]; !geom.Alike(end.Z, last.Z) {
		onAxis(last)
		onAxis(end)
	}
	for i := len(inner) - 1; i >= 0; i-- {
		add(inner[i])
	}
	if !geom.Alike(inner[0].Z, first.Z) {
		onAxis(inner[0])
		onAxis(first)
	}
	return turnedLoop(points)
}

// turnedLoop turns a closed polygon in z (X) and r (Y).
func turnedLoop(points []geom.Point) *turned {
	t := &turned{g: newRegion(Outline{geom.PolygonLoop(points...)})}
	for s := range seq.Refs(t.g.segs) {
		s.ghost = geom.Alike(s.a.YMm, 0) && geom.Alike(s.b.YMm, 0)
	}
	t.g.square()
	r := t.g.high.YMm
	t.span = Box{Vec{-r, -r, t.g.low.XMm}, Vec{r, r, t.g.high.XMm}}
	return t
}

func (t *turned) box() Box { return t.span }

func (t *turned) dist(p Vec) float64 {
	return t.g.dist(geom.Point{XMm: p.Z, YMm: math.Sqrt(p.X*p.X + p.Y*p.Y)})
}

// hits are where a line crosses the cones, cylinders and rings.
func (t *turned) hits(o, d Vec, ts []float64) []float64 {
	for s := range seq.Refs(t.g.segs) {
		if s.ghost {
			continue
		}
		dz := s.b.XMm - s.a.XMm
		if geom.Alike(dz, 0) {
			if d.Z != 0 {
				ts = append(ts, (s.a.XMm-o.Z)/d.Z)
			}
			continue
		}
		k := (s.b.YMm - s.a.YMm) / dz
		r0, r1 := s.a.YMm+k*(o.Z-s.a.XMm), k*d.Z // the radius is r0 + r1 t along the line
		low, high := min(s.a.XMm, s.b.XMm), max(s.a.XMm, s.b.XMm)
		ts = quadratic(d.X*d.X+d.Y*d.Y-r1*r1, 2*(o.X*d.X+o.Y*d.Y-r0*r1), o.X*o.X+o.Y*o.Y-r0*r0, ts, func(t float64) bool {
			z := o.Z + t*d.Z
			return !geom.Over(low, z) && !geom.Over(z, high)
		})
	}
	return ts
}

// quadratic appends the real roots of a t² + b t + c that are on a surface.
func quadratic(a, b, c float64, ts []float64, on func(t float64) bool) []float64 {
	take := func(t float64) {
		if on(t) {
			ts = append(ts, t)
		}
	}
	disc := b*b - 4*a*c
	switch q := -(b + math.Copysign(math.Sqrt(max(0, disc)), b)) / 2; {
	case disc < 0, math.Abs(a) < 1e-12 && math.Abs(b) < 1e-12:
	case math.Abs(a) < 1e-12:
		take(-c / b)
	case q == 0:
		take(0)
	default:
		take(q / a)
		take(c / q)
	}
	return ts
}

// sectors is how many patches go round a turned face.
const sectors = 6

func (t *turned) faces() []face {
	var out []face
	for s := range seq.Refs(t.g.segs) {
		if s.ghost {
			continue
		}
		at := func(a, b float64) Vec {
			p := mix(s.a, s.b, a)
			sin, cos := math.Sincos(2 * math.Pi * b)
			return Vec{p.YMm * cos, p.YMm * sin, p.XMm}
		}
		for k := range sectors {
			out = append(out, newFace(at, 0, 1, float64(k)/sectors, float64(k+1)/sectors))
		}
	}
	return out
}

// bulk is the volume and centre by π ∮ r² dz and π ∮ r² z dz, which Simpson's
// rule gives exactly between two points.
func (t *turned) bulk() (mm3 float64, centre Vec) {
	var moment float64
	for s := range seq.Refs(t.g.segs) {
		m, dz := mix(s.a, s.b, 0.5), s.b.XMm-s.a.XMm
		mm3 += math.Pi * dz / 6 * (s.a.YMm*s.a.YMm + 4*m.YMm*m.YMm + s.b.YMm*s.b.YMm)
		moment += math.Pi * dz / 6 * (s.a.YMm*s.a.YMm*s.a.XMm + 4*m.YMm*m.YMm*m.XMm + s.b.YMm*s.b.YMm*s.b.XMm)
	}
	if mm3 != 0 {
		centre = Vec{Z: moment / mm3}
	}
	return math.Abs(mm3), centre
}

// radii are the section's own radii, ascending, each once.
func (t *turned) radii() []float64 {
	return distinct(seq.Map(t.g.segs, func(s seg) float64 { return s.a.YMm }))
}

func (t *turned) columns(n int) []column {
	var out []column
	radii := distinct(append(t.radii(), 0))
	for i := 0; i+1 < len(radii); i++ {
		a2, b2 := radii[i]*radii[i], radii[i+1]*radii[i+1]
		for k := range n {
			r := math.Sqrt(a2 + (b2-a2)*(float64(k)+0.5)/float64(n))
			around := 6 * n
			for m := range around {
				sin, cos := math.Sincos(2 * math.Pi * (float64(m) + 0.5) / float64(around))
				out = append(out, column{geom.Point{XMm: r * cos, YMm: r * sin}, math.Pi * (b2 - a2) / float64(n*around)})
			}
		}
	}
	return out
}

// around is how many straight pieces stand for a circle in a picture: within
// 0.05 mm at 100 mm radius.
const around = 96

func (t *turned) edges(view Vec) [][]Vec {
	var out [][]Vec
	segs := t.g.segs
	for i := range segs {
		s, before := &segs[i], &segs[(i+len(segs)-1)%len(segs)]
		if geom.Over(s.a.YMm, 0) && sharp(s.a.Minus(before.a), s.b.Minus(s.a)) {
			out = append(out, ring(s.a.YMm, s.a.XMm))
		}
		if s.ghost {
			continue
		}
		// The normal lies in the plane of the view at cos = −nz vz / nr v.
		d := s.b.Minus(s.a)
		nr, nz := -d.XMm, d.YMm
		cos := -nz * view.Z / (nr * math.Hypot(view.X, view.Y))
		half := math.Acos(cos)
		if math.IsNaN(half) { // on no line, or on all
			continue
		}
		for _, sign := range []float64{-1, 1} {
			sin, cos := math.Sincos(math.Atan2(view.Y, view.X) + sign*half)
			out = append(out, []Vec{{s.a.YMm * cos, s.a.YMm * sin, s.a.XMm}, {s.b.YMm * cos, s.b.YMm * sin, s.b.XMm}})
		}
	}
	return out
}

// sharp tells whether a contour turns by more than 10° where two lines meet.
func sharp(d, e geom.Point) bool { return math.Abs(math.Atan2(d.Cross(e), d.Dot(e))) > 10*math.Pi/180 }

// unitRing is round once, of radius 1.
var unitRing = sync.OnceValue(func() (out [around + 1]Vec) {
	for k := range out {
		out[k] = Clock(1, 360*float64(k)/around)
	}
	return out
})

func ring(r, z float64) []Vec {
	unit := unitRing()
	out := make([]Vec, len(unit))
	for k, p := range unit {
		out[k] = Vec{r * p.X, r * p.Y, z}
	}
	return out
}

// generators are lines along the axis on each cylinder, round and round.
func (t *turned) generators() []generator {
	var out []generator
	for _, s := range t.g.segs {
		if s.a.YMm != s.b.YMm || s.ghost {
			continue
		}
		out = append(out, generator{ring(s.a.YMm, 0), min(s.a.XMm, s.b.XMm), max(s.a.XMm, s.b.XMm)})
	}
	return out
}
