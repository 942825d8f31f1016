package assembly

import (
	"math"

	"centrepop/parts/geom"
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

// halves cuts a face with these corners across its longer way: the halves, their
// corners, and the cut's two ends, which are corners of both.
func (f *face) halves(round *corners) (halves [2]face, rounds [2]corners, ends [2]Vec) {
	a, b := (f.a0+f.a1)/2, (f.b0+f.b1)/2
	halves = [2]face{*f, *f}
	left, right, low, high := f.point(f.a0, b), f.point(f.a1, b), f.point(a, f.b0), f.point(a, f.b1)
	if left.Sub(right).Len() > low.Sub(high).Len() {
		halves[0].a1, halves[1].a0 = a, a
		rounds = [2]corners{{round[0], low, high, round[3]}, {low, round[1], round[2], high}}
		ends = [2]Vec{low, high}
	} else {
		halves[0].b1, halves[1].b0 = b, b
		rounds = [2]corners{{round[0], round[1], right, left}, {left, right, round[2], round[3]}}
		ends = [2]Vec{left, right}
	}
	halves[0].settle(rounds[0])
	halves[1].settle(rounds[1])
	return halves, rounds, ends
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
	for i := range s.faces {
		f := &s.faces[i]
		if who, off := w.enter(f, math.MaxUint64); who != 0 {
			round := f.corners()
			for _, c := range round {
				w.corner(c, who)
			}
			w.halve(f, &round, who, off)
		}
	}
}

type walker struct {
	solid  *Solid
	finest float64
	look   func(centre Vec, reach float64, who among) among
	point  func(p Vec, who among)
}

// enter is who goes on into a face, none if it is off the surface as a whole, and
// how far its middle is off it.
func (w *walker) enter(f *face, who among) (in among, off float64) {
	if who = w.look(f.centre, f.reach, who); who == 0 {
		return 0, 0
	}
	if off = math.Abs(w.solid.Dist(f.centre)); geom.Over(off, f.reach) {
		return 0, off
	}
	return who, off
}

func (w *walker) corner(p Vec, who among) {
	if who = w.look(p, 0, who); who != 0 && geom.Alike(w.solid.Dist(p), 0) {
		w.point(p, who)
	}
}

func (w *walker) halve(f *face, round *corners, who among, off float64) {
	if f.reach <= w.finest {
		if !geom.Over(off, 0) {
			if who = w.look(f.centre, 0, who); who != 0 {
				w.point(f.centre, who)
			}
		}
		return
	}
	// The cut's two ends are the new corners.
	halves, rounds, ends := f.halves(round)
	w.corner(ends[0], who)
	w.corner(ends[1], who)
	for i := range halves {
		if in, off := w.enter(&halves[i], who); in != 0 {
			w.halve(&halves[i], &rounds[i], in, off)
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
