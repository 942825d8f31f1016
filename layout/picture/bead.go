package picture

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// bead is a corner between two cut surfaces filled with weld metal.
type bead struct {
	points  [3]plan.XY // anticlockwise, the first in the corner
	groove  bool       // an edge prepared for it
	areaMm2 float64
}

// beads are the corners between two cut surfaces that a weld fills: where one
// contour leaves the other at an angle, and the wedge between them is empty. Of a
// weld from one side that is taken which an edge is prepared for, else the
// largest, of two alike the outer one; all round, those like it at both sides of the axis. Only those whose middle lies
// where one may be are taken.
func beads(a, b [][]plan.XY, w *plan.WeldPlan, there func(plan.XY) bool) [][]plan.XY {
	leg := cmp.Or(w.LegMm, w.ThinnerMm)
	touch := w.GapLeastMm + 0.6 // fits, and corners that a press fit rounds
	var all []bead
	for _, m := range []meeting{{a, b, touch, leg}, {b, a, touch, leg}} {
		for _, loop := range m.own {
			for i, v := range loop {
				all = append(all, seq.Flat([]int{1, len(loop) - 1}, func(step int) []bead { return m.corner(v, loop[(i+step)%len(loop)]) })...)
			}
		}
	}
	all = slices.DeleteFunc(all, func(c bead) bool { return !there(c.middle()) })
	middle := middleOf(all, w.DiameterMm/2+2*leg)
	slices.SortStableFunc(all, func(p, q bead) int {
		if p.groove != q.groove {
			if p.groove {
				return -1
			}
			return 1
		}
		if c := -cmp.Compare(math.Round(p.areaMm2*100), math.Round(q.areaMm2*100)); c != 0 || w.DiameterMm == 0 {
			return c
		}
		return -cmp.Compare(math.Round(geom.Distance(p.middle(), middle)*100), math.Round(geom.Distance(q.middle(), middle)*100))
	})
	var kept []bead
	var out [][]plan.XY
	near := leg
	if w.OneSided() {
		near = max(leg, w.DiameterMm/2) // the corner on the other face of a plate, or inside the round, is another side
	}
	for _, c := range all {
		again := slices.ContainsFunc(kept, func(k bead) bool { return geom.Distance(k.middle(), c.middle()) < near })
		if again || w.OneSided() && len(kept) > 0 && (w.DiameterMm == 0 || c.groove != kept[0].groove || c.areaMm2 < 0.4*kept[0].areaMm2) {
			continue
		}
		kept = append(kept, c)
		out = append(out, c.points[:])
	}
	return out
}

// middleOf is what the beads of a round lie about: a place on the axis of the picture where they are within its
// radius of that, else the middle of them all.
func middleOf(all []bead, radiusMm float64) (out plan.XY) {
	onAxis := true
	for i := range all {
		m := all[i].middle()
		out = out.Plus(m.Times(1 / float64(len(all))))
		onAxis = onAxis && math.Abs(m.YMm) < radiusMm
	}
	if onAxis {
		out.YMm = 0
	}
	return out
}

func (c *bead) middle() plan.XY {
	p := c.points
	return xy((p[0].XMm+p[1].XMm+p[2].XMm)/3, (p[0].YMm+p[1].YMm+p[2].YMm)/3)
}

// meeting is a cut surface that a weld joins to another: how near they touch, and how
// far the weld reaches along both.
type meeting struct {
	own, other [][]plan.XY
	touch, leg float64
}

// corner looks at the edge from a point v of a contour to the next, u: if the point touches the
// other surface and the edge leaves it, it makes a corner with each way along the
// other contour that leaves an empty wedge.
func (s meeting) corner(v, u plan.XY) []bead {
	touch, leg := s.touch, s.leg
	foot, ends, off := nearest(v, s.other)
	long := geom.Distance(v, u)
	if off > touch || long < touch {
		return nil
	}
	if _, _, away := nearest(toward(v, u, min(long, leg)), s.other); away <= touch {
		return nil
	}
	var out []bead
	for _, end := range ends {
		along := geom.Distance(foot, end)
		if along < touch {
			continue
		}
		c := bead{points: [3]plan.XY{v, toward(v, u, min(long, leg)), toward(foot, end, min(along, leg))}}
		angle := turned(v, u, foot, end)
		if angle < 65 { // a bevel: filled to its end
			c.groove = true
			c.points[1] = toward(v, u, min(long, 3*leg))
			c.points[2] = toward(foot, end, min(along, 3*leg, geom.Distance(v, c.points[1])*math.Cos(angle*math.Pi/180)))
		}
		m := c.middle()
		if angle < 20 || angle > 155 || geom.Inside(m, s.own...) || geom.Inside(m, s.other...) {
			continue
		}
		p := c.points
		c.areaMm2 = p[1].Minus(p[0]).Cross(p[2].Minus(p[0])) / 2
		if c.areaMm2 < 0 {
			c.points[1], c.points[2], c.areaMm2 = p[2], p[1], -c.areaMm2
		}
		out = append(out, c)
	}
	return out
}

// turned is the angle in degrees between two directions, each from one point to
// another.
func turned(a, b, c, d plan.XY) float64 {
	u, w := b.Minus(a), d.Minus(c)
	return math.Abs(math.Atan2(u.Cross(w), u.Dot(w))) * 180 / math.Pi
}

// toward is the point at a distance from one towards another.
func toward(a, b plan.XY, mm float64) plan.XY {
	t := mm / geom.Distance(a, b)
	return xy(a.XMm+t*(b.XMm-a.XMm), a.YMm+t*(b.YMm-a.YMm))
}

// nearest is the point of contours nearest to another, the ends of the edge it
// lies on, and how far it is.
func nearest(p plan.XY, loops [][]plan.XY) (foot plan.XY, ends [2]plan.XY, off float64) {
	off = inf
	for _, loop := range loops {
		for i, a := range loop {
			b := loop[(i+1)%len(loop)]
			dx, dy := b.XMm-a.XMm, b.YMm-a.YMm
			t := ((p.XMm-a.XMm)*dx + (p.YMm-a.YMm)*dy) / (dx*dx + dy*dy)
			q := xy(a.XMm+max(0, min(1, t))*dx, a.YMm+max(0, min(1, t))*dy)
			if d := geom.Distance(p, q); d < off {
				foot, ends, off = q, [2]plan.XY{a, b}, d
			}
		}
	}
	return foot, ends, off
}
