package assembly

import (
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Tolerance is how deep two bodies may lie in one another before it counts, and
// how finely surfaces are looked at. Exactly as deep does not count, whatever
// rounding the poses bring.
type Tolerance struct {
	CoaxialMm float64 // turned bodies on one axis, by the exact sections
	OtherMm   float64
	FinestMm  float64 // pieces of a surface that lies near another body
}

// Usual lets turned bodies on one axis lie 0.05 mm in one another and others 0.3 mm.
// Common practice, no source.
var Usual = Tolerance{CoaxialMm: 0.05, OtherMm: 0.3, FinestMm: 4}

// allowing is the tolerance of two bodies that may lie so deep in one another besides, mm.
func (t Tolerance) allowing(mm float64) Tolerance {
	t.CoaxialMm, t.OtherMm = max(t.CoaxialMm, mm), max(t.OtherMm, mm)
	return t
}

// Allowed is a pair of bodies that may lie in one another up to a depth in mm:
// the interference of a press fit, a thread in its tapped hole. UpToMm may be
// infinite.
type Allowed struct {
	A, B   string
	UpToMm float64
}

// Overlap is how deep two bodies lie in one another.
type Overlap struct {
	A, B    string
	DepthMm float64
}

// Overlaps are the bodies that share a place, pair by pair in the order of the
// bodies. A contact within the tolerance is none.
func Overlaps(bodies []Body, allowed []Allowed, tol Tolerance) []Overlap {
	may := allowance(allowed)
	near := pairs(bodies)
	found := make([]Overlap, len(near))
	seq.OnAll(len(near), func(k int) {
		a, b := near[k][0], near[k][1]
		limit := may[[2]string{a.ID, b.ID}]
		if limit == inf {
			return
		}
		if o, ok := PairOverlap(a, b, tol.allowing(limit)); ok {
			found[k] = o
		}
	})
	return seq.Keep(found, func(o Overlap) bool { return o.DepthMm > 0 })
}

// allowance looks a pair up either way round.
func allowance(allowed []Allowed) map[[2]string]float64 {
	may := map[[2]string]float64{}
	for _, x := range allowed {
		for _, key := range [][2]string{{x.A, x.B}, {x.B, x.A}} {
			may[key] = max(may[key], x.UpToMm)
		}
	}
	return may
}

// pairs are the bodies whose boxes meet, two by two.
func pairs(bodies []Body) [][2]*Body {
	var out [][2]*Body
	near := boxes(bodies)
	for i := range bodies {
		for k := i + 1; k < len(bodies); k++ {
			if near[i].Meets(near[k], 0) {
				out = append(out, [2]*Body{&bodies[i], &bodies[k]})
			}
		}
	}
	return out
}

// PairOverlap is where two bodies lie in one another by more than the tolerance.
func PairOverlap(a, b *Body, tol Tolerance) (Overlap, bool) {
	out := Overlap{A: a.ID, B: b.ID}
	boxA, boxB := a.Box(), b.Box()
	if !boxA.Meets(boxB, -min(tol.CoaxialMm, tol.OtherMm)) {
		return out, false // what both hold lies no deeper in them than their boxes lie in one another
	}
	if c, ok := onAxis(a, b); ok {
		depth, deep := c.deepest(a, b, tol.CoaxialMm)
		if out.DepthMm = depth; !deep || depth > 0 {
			return out, deep
		}
	}
	if !boxA.Meets(boxB, -tol.OtherMm) {
		return out, false
	}
	out.DepthMm = max(deepest(a, b, tol.OtherMm, tol.FinestMm), deepest(b, a, tol.OtherMm, tol.FinestMm))
	return out, out.DepthMm > 0
}

// deepest is how deep the deepest place of b's surface lies in a, where it is deeper than
// the limit; 0 if none is.
func deepest(a, b *Body, limit, finest float64) (depth float64) {
	rel := a.Pose.Inverse().Of(b.Pose)
	least := -limit - surfaceMm
	best := least
	look := func(mid Vec, reach float64, _ among) among { // in b's frame
		centre := rel.apply(mid)
		if !a.Solid.bound.within(centre, reach) {
			return 0
		}
		d := a.Solid.Dist(centre)
		if d-reach >= best {
			return 0
		}
		if !geom.Over(d, 0) && reach > 2*finest && geom.Alike(b.Solid.Dist(mid), 0) {
			// Faces that lie on one another and look the same way hide the
			// depth: look below the surface.
			best = min(best, d)
			best = min(best, under(a, b, rel, mid, -best))
		}
		return 1
	}
	b.Solid.walk(finest, look, func(p Vec, _ among) {
		best = a.Solid.Dist(rel.apply(p))
	})
	if best == least {
		return 0
	}
	return -best
}

// under is the distance of the place below b's surface, at p on it, that is deepest in both
// bodies; 0 where none is.
func under(a, b *Body, rel Pose, p Vec, deeper float64) (dist float64) {
	in := b.Solid.normal(p).Reversed()
	for h := 1.5 * deeper; h < 200; h *= 1.5 {
		q := p.Add(in.Times(h))
		d := max(a.Solid.Dist(rel.apply(q)), b.Solid.Dist(q))
		if d > -0.5*h {
			break
		}
		dist = min(dist, d)
	}
	return dist
}
