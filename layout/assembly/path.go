package assembly

import (
	"iter"
	"math"
	"slices"
)

// Way is how parts come to their seats: from far along a straight line.
type Way struct {
	// Back is the direction from the seat to where the parts come from.
	Back Vec
	// FarMm is how far away they start.
	FarMm float64
	// FinestMm is how finely surfaces are looked at; a body thinner than this
	// may pass unseen unless both are turned on the line's axis.
	FinestMm float64
	// Tolerance is the depth of a contact that slides past.
	Tolerance Tolerance
}

// Block is a body in the way of another.
type Block struct {
	Mover, Fixed string
	// FirstMm is how far from its seat the mover is stopped, coming from far.
	FirstMm float64
	// LastMm is how far from the seat it would be free again; 0 where it would
	// still lie in the other when seated.
	LastMm float64
	At     Vec // where they touch first, in the machine's frame
}

// Blocks are the bodies among the fixed ones that stop one of the movers on its
// way, in the order of the movers and the fixed. Each is looked for when it is
// asked for.
func (w Way) Blocks(movers, fixed []Body, allowed []Allowed) iter.Seq[Block] {
	may := allowance(allowed)
	return func(yield func(Block) bool) {
		for i := range movers {
			swept := movers[i].Box()
			swept = swept.Join(swept.Moved(Move(w.Back.Times(w.FarMm))))
			for k := range fixed {
				limit := may[[2]string{movers[i].ID, fixed[k].ID}]
				if math.IsInf(limit, 1) || !swept.Meets(fixed[k].Box(), 0) {
					continue
				}
				if b, ok := w.block(&movers[i], &fixed[k], limit); ok && !yield(b) {
					return
				}
			}
		}
	}
}

func (w Way) block(m, f *Body, allowedMm float64) (Block, bool) {
	out := Block{Mover: m.ID, Fixed: f.ID}
	if c, ok := onAxis(f, m); ok && math.Abs(c.axis.Z.Dot(w.Back)) > 1-1e-9 {
		for i, s := range c.stops(w, f, m, math.Max(allowedMm, w.Tolerance.CoaxialMm)) {
			out.take(i == 0, s)
		}
		return out, out.FirstMm > 0
	}
	limit := math.Max(allowedMm, w.Tolerance.OtherMm)
	found := false
	take := func(p Vec, s Span) {
		out.take(!found, stop{s.FromMm, s.ToMm, p})
		found = true
	}
	w.rays(m, f, w.Back, limit, func(p Vec, s Span) { take(p.Add(w.Back.Times(s.ToMm)), s) })
	w.rays(f, m, w.Back.Times(-1), limit, take)
	return out, found
}

// take adds a stretch of the way to the block.
func (b *Block) take(first bool, s stop) {
	if first || s.to > b.FirstMm {
		b.FirstMm, b.At = s.to, s.at
	}
	if first || s.from < b.LastMm {
		b.LastMm = s.from
	}
}

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// rays goes along a direction from each point of b's surface and tells where it
// runs deeper than the limit in a.
func (w Way) rays(b, a *Body, along Vec, limit float64, found func(p Vec, s Span)) {
	rel := a.Pose.Inverse().Of(b.Pose)
	box := a.Solid.Box()
	inA, inB := a.Pose.Inverse().Turn(along), b.Pose.Inverse().Turn(along)
	look := func(f *face) bool {
		grown := Box{box.Low.Sub(Vec{f.reach, f.reach, f.reach}), box.High.Add(Vec{f.reach, f.reach, f.reach})}
		return grown.meetsLine(rel.Apply(f.centre), inA, 0, w.FarMm) && math.Abs(b.Solid.Dist(f.centre)) <= f.reach+surfaceMm
	}
	seen := map[Vec]bool{}
	walk(b.Solid.faces, w.FinestMm, look, func(p Vec) {
		q := rel.Apply(p)
		if !box.meetsLine(q, inA, 0, w.FarMm) || seen[p] || math.Abs(b.Solid.Dist(p)) > surfaceMm || !leads(b.Solid, p, inB) {
			return
		}
		seen[p] = true
		for _, s := range a.Solid.spans(q, inA, 0, w.FarMm) {
			middle := q.Add(inA.Times((s.FromMm + s.ToMm) / 2))
			if s.ToMm > limit && a.Solid.Dist(middle) < -limit {
				found(b.Pose.Apply(p), s)
			}
		}
	})
}

// leads tells whether a point of a surface goes ahead of the solid, or is the
// end of a wall along the way: what lies between is met by those too.
func leads(s *Solid, p, along Vec) bool {
	step := along.Times(1e-3)
	ahead := s.Dist(p.Add(step))
	return ahead >= surfaceMm || ahead > -surfaceMm && s.Dist(p.Sub(step)) >= surfaceMm
}

// stop is a stretch of the way, from and to in mm from the seat, in which two
// sections would lie in one another.
type stop struct {
	from, to float64
	at       Vec
}

// stops are the stretches of the way in which the mover (b) would lie in the
// fixed body (a), over a band of radii wider than the limit.
func (c *coaxial) stops(w Way, f, m *Body, limit float64) []stop {
	back := math.Copysign(1, c.axis.Z.Dot(w.Back))
	var out []stop
	wide, last := 0.0, stop{}
	for _, band := range c.bands() {
		r := (band.FromMm + band.ToMm) / 2
		here, met := meeting(w, acrossAll(c.a, r), acrossAll(c.b, r), back, limit)
		here.at = c.at(Pt{here.at.Z, r}, 0)
		if met && c.cut {
			here, met = c.around(w, f, m, r, back, limit)
		}
		if !met {
			wide = 0
			continue
		}
		if wide == 0 || here.to > last.to {
			last = here
		}
		if wide += band.ToMm - band.FromMm; wide > limit {
			out = append(out, last)
		}
	}
	return out
}

// meeting is the stretch of the way in which stretches of the mover along the
// axis meet those of the fixed body; at holds the z where they touch first.
func meeting(w Way, fixed, mover []Span, back, limit float64) (here stop, met bool) {
	for _, f := range fixed {
		for _, m := range mover {
			// The mover at s back overlaps for s between these.
			from, to, z := f.FromMm-m.ToMm, f.ToMm-m.FromMm, f.ToMm
			if back < 0 {
				from, to, z = m.FromMm-f.ToMm, m.ToMm-f.FromMm, f.FromMm
			}
			from, to = math.Max(from, 0), math.Min(to, w.FarMm)
			if to > limit && to > from && (!met || to > here.to) {
				here, met = stop{from, to, Vec{Z: z}}, true
			}
		}
	}
	return here, met
}

// around looks at a radius all round the axis, for bodies with holes.
func (c *coaxial) around(w Way, f, m *Body, r, back, limit float64) (here stop, met bool) {
	const degs = 5
	for deg := 0.5; deg < 360; deg += degs {
		foot := c.at(Pt{0, r}, deg)
		s, ok := meeting(w, f.Spans(foot, c.axis.Z), m.Spans(foot, c.axis.Z), back, limit)
		if ok && (!met || s.to > here.to) {
			here, met = s, true
			here.at = foot.Add(c.axis.Z.Times(s.at.Z))
		}
	}
	return here, met
}

func acrossAll(gs []*region, r float64) []Span {
	var out []Span
	for _, g := range gs {
		out = append(out, g.across(r)...)
	}
	return out
}

// bands are the radii between the corners of the sections, the wider ones in
// pieces.
func (c *coaxial) bands() []Span {
	var radii []float64
	for _, g := range slices.Concat(c.a, c.b) {
		for i := range g.segs {
			radii = append(radii, g.segs[i].a.Y)
		}
	}
	radii = distinct(radii)
	var out []Span
	for i := 0; i+1 < len(radii); i++ {
		const pieces = 4 // for cones
		step := (radii[i+1] - radii[i]) / pieces
		for k := range pieces {
			out = append(out, Span{radii[i] + step*float64(k), radii[i] + step*float64(k+1)})
		}
	}
	return out
}
