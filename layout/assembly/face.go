package assembly

import (
	"math"
	"sync/atomic"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// face is a piece of a surface: a point for each a and b between two limits.
type face struct {
	at             func(a, b float64) Vec
	on             *Simple // whose frame the points are in; nil where it is the solid's
	a0, a1, b0, b1 float64
	centre         Vec
	reach          float64 // no point of the face is further from the centre
}

type corners [4]Vec

func newFace(at func(a, b float64) Vec, a0, a1, b0, b1 float64) face {
	f := face{at: at, a0: a0, a1: a1, b0: b0, b1: b1}
	f.settle(f.corners())
	return f
}

// settle works out the middle and the reach.
func (f *face) settle(round corners) {
	f.centre, f.reach = f.point((f.a0+f.a1)/2, (f.b0+f.b1)/2), 0
	for _, c := range round {
		f.reach = max(f.reach, c.Sub(f.centre).Len())
	}
}

// of is the face seen from the frame that a simple solid stands in.
func (f face) of(s *Simple) face {
	if !s.still {
		f.on = s
		f.centre = s.at.apply(f.centre)
	}
	return f
}

func (f *face) point(a, b float64) Vec {
	p := f.at(a, b)
	if f.on != nil {
		p = f.on.at.apply(p)
	}
	return p
}

func (f *face) corners() corners {
	return corners{f.point(f.a0, f.b0), f.point(f.a1, f.b0), f.point(f.a1, f.b1), f.point(f.a0, f.b1)}
}

// patch is a piece of a solid's surface, with what walks that came there found.
type patch struct {
	face
	off atomic.Uint64       // how far the middle is off the surface, as the bits of −off; 0 for not asked yet
	cut atomic.Pointer[cut] // nil for not cut yet
}

// cut is a patch cut in two: the halves, and the cut's two ends, which are corners of both.
type cut struct {
	halves [2]patch
	ends   [2]spot
}

// spot is a corner of patches.
type spot struct {
	at Vec
	on atomic.Int32 // the surface: 0 for not asked yet, 1 or −1
}

// keptMm is the least reach of patches that stay cut for later walks: finer ones are many, and few come by again.
const keptMm = 4.0

// halve cuts a patch across its longer way.
func (c *cut) halve(p *patch, round *corners) {
	a, b := (p.a0+p.a1)/2, (p.b0+p.b1)/2
	first, second := &c.halves[0], &c.halves[1]
	first.face, second.face = p.face, p.face
	left, right, low, high := p.point(p.a0, b), p.point(p.a1, b), p.point(a, p.b0), p.point(a, p.b1)
	if left.Sub(right).Len() > low.Sub(high).Len() {
		first.a1, second.a0 = a, a
		c.ends[0].at, c.ends[1].at = low, high
	} else {
		first.b1, second.b0 = b, b
		c.ends[0].at, c.ends[1].at = left, right
	}
	rounds := c.rounds(p, round)
	first.settle(rounds[0])
	second.settle(rounds[1])
}

// rounds are the corners of the halves of a patch with these.
func (c *cut) rounds(p *patch, round *corners) [2]corners {
	from, to := c.ends[0].at, c.ends[1].at
	if c.halves[0].a1 != p.a1 {
		return [2]corners{{round[0], from, to, round[3]}, {from, round[1], round[2], to}}
	}
	return [2]corners{{round[0], round[1], to, from}, {from, to, round[2], round[3]}}
}

// walked is a face of a solid as walks begin at it.
type walked struct {
	patch
	round corners
	spots [4]spot
}

// surface are the solid's faces, made ready for walks once.
func (s *Solid) surface() []walked {
	s.known.walked.Do(func() {
		s.known.surface = make([]walked, len(s.faces))
		for i := range s.faces {
			w := &s.known.surface[i]
			w.face, w.round = s.faces[i], s.faces[i].corners()
			for n, at := range w.round {
				w.spots[n].at = at
			}
		}
	})
	return s.known.surface
}

// among is a set of up to 64 others that a walk is made for, bit by bit.
type among uint64

// walk goes through ever smaller pieces of a solid's surface on behalf of others.
// look says which of those that came as far go on into a piece, by its middle and
// reach; below the finest reach, point is given the middle and the corners that
// lie on the surface and that look, at no reach, does not refuse: each at least
// once.
func (s *Solid) walk(finest float64, look func(centre Vec, reach float64, who among) among, point func(p Vec, who among)) {
	w := walker{s, finest, look, point}
	for f := range seq.Refs(s.surface()) {
		if who, off := w.enter(&f.patch, math.MaxUint64); who != 0 {
			for n := range f.spots {
				w.corner(&f.spots[n], who)
			}
			w.pass(&f.patch, &f.round, who, off)
		}
	}
}

type walker struct {
	solid  *Solid
	finest float64
	look   func(centre Vec, reach float64, who among) among
	point  func(p Vec, who among)
}

// enter is who goes on into a patch, none if it is off the surface as a whole, and
// how far its middle is off it.
func (w *walker) enter(p *patch, who among) (in among, off float64) {
	known := p.off.Load()
	if off = -math.Float64frombits(known); geom.Over(off, p.reach) {
		return 0, off
	}
	if who = w.look(p.centre, p.reach, who); who == 0 || known != 0 {
		return who, off
	}
	off = math.Abs(w.solid.Dist(p.centre))
	p.off.Store(math.Float64bits(-off))
	if geom.Over(off, p.reach) {
		return 0, off
	}
	return who, off
}

func (w *walker) corner(c *spot, who among) {
	on := c.on.Load()
	if on < 0 {
		return
	}
	if who = w.look(c.at, 0, who); who == 0 {
		return
	}
	if on == 0 {
		on = -1
		if geom.Alike(w.solid.Dist(c.at), 0) {
			on = 1
		}
		c.on.Store(on)
	}
	if on > 0 {
		w.point(c.at, who)
	}
}

// pass goes on into a patch with these corners, whose middle is so far off the surface.
func (w *walker) pass(p *patch, round *corners, who among, off float64) {
	if p.reach <= w.finest {
		if !geom.Over(off, 0) {
			if who = w.look(p.centre, 0, who); who != 0 {
				w.point(p.centre, who)
			}
		}
		return
	}
	if p.reach < keptMm {
		var c cut
		c.halve(p, round)
		w.halves(&c, c.rounds(p, round), who)
		return
	}
	c := p.cut.Load()
	if c == nil { // who else cuts it meanwhile finds the same
		c = &cut{}
		c.halve(p, round)
		p.cut.Store(c)
	}
	w.halves(c, c.rounds(p, round), who)
}

// halves goes on into those of a patch that has been cut.
func (w *walker) halves(c *cut, rounds [2]corners, who among) {
	w.corner(&c.ends[0], who) // the new corners
	w.corner(&c.ends[1], who)
	for i := range c.halves {
		if in, off := w.enter(&c.halves[i], who); in != 0 {
			w.pass(&c.halves[i], &rounds[i], in, off)
		}
	}
}

// Surface are points on the solid's surface, no further apart than about the
// spacing in mm, corners and rims included.
func (s *Solid) Surface(spacingMm float64) []Vec {
	var out []Vec
	seen := map[Vec]bool{}
	s.walk(spacingMm/2, func(Vec, float64, among) among { return 1 }, func(p Vec, _ among) {
		if key := p.rounded(1e-4); !seen[key] {
			seen[key] = true
			out = append(out, p)
		}
	})
	return out
}

// ReachMm is how far the surface reaches from the z axis of a frame that a pose takes it to, in mm, at
// places no further apart than about the spacing in mm, corners and rims included.
func (s *Solid) ReachMm(moved Pose, spacingMm float64) (mm float64) {
	off := func(p Vec) float64 { q := moved.Apply(p); return math.Hypot(q.X, q.Y) }
	s.walk(spacingMm/2, func(centre Vec, reach float64, who among) among {
		if off(centre)+reach <= mm {
			return 0 // no further than what was found
		}
		return who
	}, func(p Vec, _ among) { mm = max(mm, off(p)) })
	return mm
}

// A surface is looked at sameEveryMm apart, corners and rims besides, and passes
// for the same where it lies no further off than sameMm. Common practice, no source.
const (
	sameEveryMm = 100
	sameMm      = 0.25
)

// Same tells whether a solid looks as it was once it is moved.
func (s *Solid) Same(moved Pose) bool {
	s.known.outlined.Do(func() { s.known.outline = s.Surface(sameEveryMm) })
	for _, p := range s.known.outline {
		if q := moved.Apply(p); !s.bound.within(q, sameMm) || geom.Over(math.Abs(s.Dist(q)), sameMm) {
			return false
		}
	}
	return true
}
