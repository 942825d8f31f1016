package assembly

import (
	"sync/atomic"
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
