package assembly

import (
	"iter"
	"math"
	"slices"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
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
}

// Blocks are the bodies among the fixed ones that stop one of the movers on its
// way, in the order of the movers and the fixed. Each is looked for when it is
// asked for.
func (w Way) Blocks(movers, fixed []Body, allowed []Allowed) iter.Seq[Block] {
	return func(yield func(Block) bool) {
		for pair, limit := range w.pairs(movers, fixed, allowed) {
			if b, ok := w.block(&movers[pair[0]], &fixed[pair[1]], limit); ok && !yield(b) {
				return
			}
		}
	}
}

// Free tells whether Blocks has none. It leaves off at the first touch, and looks
// at each body's surface once for all that it may meet.
func (w Way) Free(movers, fixed []Body, allowed []Allowed) bool {
	ahead, behind := make([][]target, len(movers)), make([][]target, len(fixed))
	for pair, limit := range w.pairs(movers, fixed, allowed) {
		m, f := &movers[pair[0]], &fixed[pair[1]]
		if c, ok := w.onAxis(f, m); ok {
			if len(c.stops(w, f, m, max(limit, w.Tolerance.CoaxialMm))) > 0 {
				return false
			}
			continue
		}
		limit = max(limit, w.Tolerance.OtherMm)
		ahead[pair[0]] = append(ahead[pair[0]], target{f, limit})
		behind[pair[1]] = append(behind[pair[1]], target{m, limit})
	}
	touched := false
	touch := func(Span) bool {
		touched = true
		return true
	}
	for i := range movers {
		if w.rays(&movers[i], ahead[i], w.Back, touch); touched {
			return false
		}
	}
	for k := range fixed {
		if w.rays(&fixed[k], behind[k], w.Back.Reversed(), touch); touched {
			return false
		}
	}
	return true
}

// pairs are a mover and a fixed body each that come near one another on the way,
// by their places in the lists, and how deep they may lie in one another.
func (w Way) pairs(movers, fixed []Body, allowed []Allowed) iter.Seq2[[2]int, float64] {
	may := allowance(allowed)
	stand := boxes(fixed)
	return func(yield func([2]int, float64) bool) {
		for i := range movers {
			swept := movers[i].Box()
			swept = swept.Join(swept.Moved(Move(w.Back.Times(w.FarMm))))
			for k := range fixed {
				if !swept.Meets(stand[k], 0) {
					continue
				}
				limit := may[[2]string{movers[i].ID, fixed[k].ID}]
				if limit != inf && !yield([2]int{i, k}, limit) {
					return
				}
			}
		}
	}
}

// onAxis tells whether two bodies are turned about one axis, along the way.
func (w Way) onAxis(f, m *Body) (*coaxial, bool) {
	c, ok := onAxis(f, m)
	return c, ok && geom.Alike(c.axis.Z.Cross(w.Back).Len(), 0)
}

func (w Way) block(m, f *Body, allowedMm float64) (Block, bool) {
	out := Block{Mover: m.ID, Fixed: f.ID}
	if c, ok := w.onAxis(f, m); ok {
		for i, s := range c.stops(w, f, m, max(allowedMm, w.Tolerance.CoaxialMm)) {
			out.take(i == 0, s)
		}
		return out, out.FirstMm > 0
	}
	limit := max(allowedMm, w.Tolerance.OtherMm)
	found := false
	take := func(s Span) bool {
		out.take(!found, s)
		found = true
		return false
	}
	w.rays(m, []target{{f, limit}}, w.Back, take)
	w.rays(f, []target{{m, limit}}, w.Back.Reversed(), take)
	return out, found
}

// take adds a stretch of the way, in mm from the seat, to the block.
func (b *Block) take(first bool, s Span) {
	if first || s.ToMm > b.FirstMm {
		b.FirstMm = s.ToMm
	}
	if first || s.FromMm < b.LastMm {
		b.LastMm = s.FromMm
	}
}

// target is a body that another may meet on the way, and how deep they may lie in
// one another.
type target struct {
	body  *Body
	limit float64
}

// rays goes along a direction from each point of b's surface and tells where it
// runs deeper than the limit in one of the targets, until that is enough.
func (w Way) rays(b *Body, targets []target, along Vec, found func(Span) (enough bool)) {
	const most = 64
	for some := range slices.Chunk(targets, most) {
		r := rayed{way: w, b: b, along: b.Pose.Inverse().Turn(along), seen: map[Vec]bool{}, found: found}
		for _, t := range some {
			inv := t.body.Pose.Inverse()
			r.aims = append(r.aims, aim{t.body.Solid, t.limit, inv.Of(b.Pose), inv.Turn(along)})
		}
		if b.Solid.walk(w.FinestMm, r.look, r.point); r.enough {
			return
		}
	}
}

// aim is a target as a surface's frame sees it: that frame in its own, and the way
// in its own.
type aim struct {
	solid *Solid
	limit float64
	rel   Pose
	along Vec
}

// rayed is a body whose surface is walked for targets.
type rayed struct {
	way    Way
	b      *Body
	along  Vec // in its own frame
	aims   []aim
	seen   map[Vec]bool
	found  func(Span) (enough bool)
	enough bool
}

func (r *rayed) look(centre Vec, reach float64, who among) (in among) {
	if r.enough {
		return 0
	}
	for k := range r.aims {
		if who&(1<<k) == 0 {
			continue
		}
		a := &r.aims[k]
		box := a.solid.bound
		box.Low, box.High = box.Low.Sub(Vec{reach, reach, reach}), box.High.Add(Vec{reach, reach, reach})
		if box.meetsLine(a.rel.apply(centre), a.along, 0, r.way.FarMm) {
			in |= 1 << k
		}
	}
	return in
}

func (r *rayed) point(p Vec, who among) {
	if r.seen[p] || !leads(r.b.Solid, p, r.along) {
		return
	}
	r.seen[p] = true
	for k := range r.aims {
		if who&(1<<k) == 0 {
			continue
		}
		a := &r.aims[k]
		q := a.rel.apply(p)
		for _, s := range a.solid.spans(q, a.along, 0, r.way.FarMm) {
			middle := q.Add(a.along.Times((s.FromMm + s.ToMm) / 2))
			if a.solid.Dist(middle) < -a.limit && r.found(s) {
				r.enough = true
				return
			}
		}
	}
}

// leads tells whether a point of a surface goes ahead of the solid, or is the
// end of a wall along the way: what lies between is met by those too.
func leads(s *Solid, p, along Vec) bool {
	step := along.Times(1e-3)
	ahead := s.Dist(p.Add(step))
	return geom.Over(ahead, 0) || geom.Alike(ahead, 0) && geom.Over(s.Dist(p.Sub(step)), 0)
}

// back is 1 where the mover comes from along the axis, −1 where from against it.
func (c *coaxial) back(w Way) float64 { return math.Copysign(1, c.axis.Z.Dot(w.Back)) }

// stops are the stretches of the way, in mm from the seat, in which the mover (b) would lie
// in the fixed body (a), over a band of radii wider than the limit.
func (c *coaxial) stops(w Way, f, m *Body, limit float64) (out []Span) {
	var wide float64
	var last Span
	for _, band := range c.bands() {
		r := (band.FromMm + band.ToMm) / 2
		here, met := meeting(w, acrossAll(c.a, r), acrossAll(c.b, r), c.back(w), limit)
		if met && c.cut {
			here, met = c.around(w, f, m, r, limit)
		}
		if !met {
			wide = 0
			continue
		}
		if wide == 0 || here.ToMm > last.ToMm {
			last = here
		}
		if wide += band.ToMm - band.FromMm; wide > limit {
			out = append(out, last)
		}
	}
	return out
}

// meeting is the stretch of the way in which stretches of the mover along the
// axis meet those of the fixed body.
func meeting(w Way, fixed, mover []Span, back, limit float64) (here Span, met bool) {
	for _, f := range fixed {
		for _, m := range mover {
			// The mover at s back overlaps for s between these.
			from, to := f.FromMm-m.ToMm, f.ToMm-m.FromMm
			if back < 0 {
				from, to = -to, -from
			}
			from, to = max(from, 0), min(to, w.FarMm)
			if to > limit && to > from && (!met || to > here.ToMm) {
				here, met = Span{from, to}, true
			}
		}
	}
	return here, met
}

// around looks at a radius all round the axis, for bodies with holes.
func (c *coaxial) around(w Way, f, m *Body, r, limit float64) (here Span, met bool) {
	for k := range 72 {
		foot := c.at(geom.Point{YMm: r}, 5*float64(k)+0.5)
		s, ok := meeting(w, f.Spans(foot, c.axis.Z), m.Spans(foot, c.axis.Z), c.back(w), limit)
		if ok && (!met || s.ToMm > here.ToMm) {
			here, met = s, true
		}
	}
	return here, met
}

func acrossAll(gs []*region, r float64) []Span {
	return seq.Flat(gs, func(g *region) []Span { return g.across(r) })
}

// bands are the radii between the corners of the sections, the wider ones in
// pieces.
func (c *coaxial) bands() []Span {
	var radii []float64
	for _, g := range slices.Concat(c.a, c.b) {
		for i := range g.segs {
			radii = append(radii, g.segs[i].a.YMm)
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
