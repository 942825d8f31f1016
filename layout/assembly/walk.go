package assembly

import (
	"math"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

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

// A surface is looked at sameEveryMm apart, corners, rims and the middles of faces besides, and passes
// for the same where it lies no further off than sameMm. Common practice, no source.
const (
	sameEveryMm = 100
	sameMm      = 0.25
)

// Same tells whether a solid looks as it was once it is moved.
func (s *Solid) Same(moved Pose) bool {
	s.known.outlined.Do(func() {
		s.known.outline = s.Surface(sameEveryMm)
		for f := range seq.Refs(s.surface()) { // of a flat from end to end, all corners lie on the ends
			if geom.Alike(s.Dist(f.centre), 0) {
				s.known.outline = append(s.known.outline, f.centre)
			}
		}
	})
	for _, p := range s.known.outline {
		if q := moved.Apply(p); !s.bound.within(q, sameMm) || geom.Over(math.Abs(s.Dist(q)), sameMm) {
			return false
		}
	}
	return true
}
