package assembly

import (
	"math"
	"slices"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// coaxial is two turned bodies on one axis: their sections in the z and r of
// that axis. Holes and slots in them are left out.
type coaxial struct {
	axis Pose // z along the axis
	a, b []*region
	cut  bool // one of them is not turned alone
}

// onAxis tells whether two bodies are turned about one axis.
func onAxis(a, b *Body) (*coaxial, bool) {
	axis, ok := turnedAxis(a)
	if !ok {
		return nil, false
	}
	other, ok := turnedAxis(b)
	if !ok {
		return nil, false
	}
	off := axis.Inverse().Apply(other.At)
	if math.Hypot(off.X, off.Y) > 1e-4 || axis.Z.Cross(other.Z).Len() > 1e-7 {
		return nil, false
	}
	return &coaxial{
		axis: axis,
		a:    sections(a, axis), b: sections(b, axis),
		cut: max(len(a.Solid.cut), len(a.Solid.within), len(b.Solid.cut), len(b.Solid.within)) > 0,
	}, true
}

// turnedAxis is the axis of a body made of turned solids on one axis.
func turnedAxis(b *Body) (Pose, bool) {
	if len(b.Solid.add) == 0 {
		return Pose{}, false
	}
	first := b.Solid.add[0].at
	for i := range b.Solid.add {
		s := &b.Solid.add[i]
		if _, ok := s.shape.(*turned); !ok {
			return Pose{}, false
		}
		off := first.Inverse().Of(s.at)
		if math.Hypot(off.At.X, off.At.Y) > 1e-4 || math.Abs(off.Z.Z) < 1-1e-12 {
			return Pose{}, false
		}
	}
	return b.Pose.Of(first), true
}

// sections are a body's turned sections in the z and r of an axis.
func sections(b *Body, axis Pose) []*region {
	var out []*region
	for i := range b.Solid.add {
		rel := axis.Inverse().Of(b.Pose.Of(b.Solid.add[i].at))
		src := b.Solid.add[i].shape.(*turned).g
		way := math.Copysign(1, rel.Z.Z)
		g := &region{}
		for _, s := range src.segs {
			s.a.XMm, s.b.XMm = rel.At.Z+way*s.a.XMm, rel.At.Z+way*s.b.XMm
			g.segs = append(g.segs, s)
		}
		g.low, g.high = geom.Point{XMm: inf, YMm: inf}, geom.Point{XMm: -inf, YMm: -inf}
		for _, s := range g.segs {
			g.bound(s.a)
		}
		g.square()
		out = append(out, g)
	}
	return out
}

// at is a point of the machine by its z, radius and angle about the axis.
func (c *coaxial) at(p geom.Point, deg float64) Vec {
	q := Clock(p.YMm, deg)
	return c.axis.Apply(Vec{q.X, q.Y, p.XMm})
}

// deepest is how deep the sections lie in one another. deep is false if
// that is nowhere deeper than the limit. Where holes or slots may clear it the place is
// looked for round the axis; depth is 0 if it is not found there.
func (c *coaxial) deepest(a, b *Body, limit float64) (depth float64, deep bool) {
	var where geom.Point
	for _, ra := range c.a {
		for _, rb := range c.b {
			if p, d := deepestSection(ra, rb); d > depth {
				where, depth = p, d
			}
			if p, d := deepestSection(rb, ra); d > depth {
				where, depth = p, d
			}
		}
	}
	if !geom.Over(depth, limit) {
		return 0, false
	}
	if !c.cut {
		return depth, true
	}
	var best float64
	for k := range 120 {
		p := c.at(where, 3*float64(k))
		da, db := a.Dist(p), b.Dist(p)
		if geom.Over(max(da, db), 0) {
			continue // a hole clears it
		}
		d := -max(da, db)
		if !geom.Over(d, 0) { // on the surface of one, in the other
			d = -min(da, db)
		}
		best = max(best, d)
	}
	if !geom.Over(best, limit) {
		best = 0
	}
	return best, true
}

// deepestSection is the deepest place of b's contour in a: each piece of the
// contour between crossings is in or out as a whole.
func deepestSection(a, b *region) (at geom.Point, depth float64) {
	if a.low.XMm > b.high.XMm || b.low.XMm > a.high.XMm || a.low.YMm > b.high.YMm || b.low.YMm > a.high.YMm {
		return at, depth
	}
	try := func(p geom.Point) {
		if d := -a.dist(p); d > depth {
			at, depth = p, d
		}
	}
	for i := range b.segs {
		s := &b.segs[i]
		cuts := []float64{0, 1}
		for k := range a.segs {
			if t, ok := s.crossings(&a.segs[k]); ok {
				cuts = append(cuts, t)
			}
		}
		slices.Sort(cuts)
		for k := 0; k+1 < len(cuts); k++ {
			const steps = 8
			for n := range steps + 1 {
				try(mix(s.a, s.b, cuts[k]+(cuts[k+1]-cuts[k])*float64(n)/steps))
			}
		}
	}
	// The same section, or one whose contour lies on the other's: look at its
	// middle.
	for _, p := range b.middles() {
		if d := min(-a.dist(p), -b.dist(p)); d > depth {
			at, depth = p, d
		}
	}
	return at, depth
}

// middles are points halfway between the contour's corners in z, inside the
// figure.
func (g *region) middles() []geom.Point {
	zs := distinct(seq.Map(g.segs, func(s seg) float64 { return s.a.XMm }))
	var out []geom.Point
	for i := 0; i+1 < len(zs); i++ {
		z := (zs[i] + zs[i+1]) / 2
		for _, span := range g.along(z) {
			out = append(out, geom.Point{XMm: z, YMm: (span.FromMm + span.ToMm) / 2})
		}
	}
	return out
}

// along are the stretches of radius inside the figure at a z.
func (g *region) along(z float64) []Span {
	return g.spans(z, func(p geom.Point) (along, across float64) { return p.YMm, p.XMm })
}

// across are the stretches of z inside the figure at a radius.
func (g *region) across(r float64) []Span {
	return g.spans(r, func(p geom.Point) (along, across float64) { return p.XMm, p.YMm })
}

// spans are the stretches inside a figure of straight lines on a line at a
// distance across.
func (g *region) spans(at float64, split func(p geom.Point) (along, across float64)) []Span {
	var hits []float64
	for i := range g.segs {
		a, ca := split(g.segs[i].a)
		b, cb := split(g.segs[i].b)
		if (ca > at) != (cb > at) {
			hits = append(hits, a+(b-a)*(at-ca)/(cb-ca))
		}
	}
	slices.Sort(hits)
	var out []Span
	for ends := range slices.Chunk(hits, 2) {
		out = append(out, Span{ends[0], ends[1]})
	}
	return out
}
