package sequence

import (
	"math"
	"strconv"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
)

// ringShape is an outline of a tapered roller bearing's part: along the axis in
// shares of its width from the cup's back, and outward in shares of its section
// from the bore. The proportions are those of common bearings, for the eye alone.
type ringShape [][2]float64

var (
	coneShape   = ringShape{{0.1, 0}, {1, 0}, {1, 0.42}, {0.9, 0.42}, {0.9, 0.34}, {0.18, 0.2}, {0.18, 0.26}, {0.1, 0.26}}
	cupShape    = ringShape{{0, 1}, {0.8, 1}, {0.8, 0.82}, {0, 0.58}}
	rollerShape = ringShape{{0.88, 0.34}, {0.86, 0.84}, {0.2, 0.64}, {0.22, 0.2}}
	cageShape   = ringShape{{0.08, 0.4}, {0.96, 0.62}}
)

// bearings draws the rings, the roller and the cage of each bearing made so far,
// as they sit: the thick side of the cup on its shoulder, the large end of the
// cone away from it.
func (v *stackView) bearings(pl *plan.Plan, now *plan.JointPlan, p *draw.Panel, side float64) {
	for _, j := range pl.Joints {
		b := j.Bearing
		if j.N > now.N || b == nil || b.LargeEnd == "" || v.find(j.A) == nil || v.find(j.B) == nil {
			continue
		}
		if min(b.CupBackMm, b.LargeEndMm) < v.z0-1e-6 || max(b.CupBackMm, b.LargeEndMm) > v.z1+1e-6 {
			continue
		}
		path := func(shape ringShape) *canvas.Path {
			var points []plan.XY
			for _, q := range shape {
				points = append(points, plan.XY{XMm: b.CupBackMm + b.LargeEndDir*q[0]*b.WidthMm, YMm: b.BoreMm/2 + q[1]*(b.OutsideMm-b.BoreMm)/2})
			}
			return v.path(points, side)
		}
		width := draw.ThinMm
		if j == now {
			width = 0.5
		}
		draw.HatchAt(&p.Draw, path(cupShape), 45, 0.9, width)
		draw.HatchAt(&p.Draw, path(coneShape), 135, 0.9, width)
		p.Draw.Add(draw.Shape{Path: path(cageShape), Stroke: draw.Black, WidthMm: draw.ThinMm},
			draw.Shape{Path: path(rollerShape), Fill: draw.White, Stroke: draw.Black, WidthMm: width})
		if j == now {
			v.ringArrows(p, b, side)
		}
	}
}

// ringArrows shows the way of each ring to its place: the cup towards its
// shoulder, a cone against a shoulder with its large end first, one that a nut
// holds with its small end first.
func (v *stackView) ringArrows(p *draw.Panel, b *plan.BearingPlan, side float64) {
	section := (b.OutsideMm - b.BoreMm) / 2
	v.ringArrow(p, b.CupBackMm+0.8*b.LargeEndDir*b.WidthMm, b.BoreMm/2+0.92*section, -b.LargeEndDir, side)
	coneDir, from := b.LargeEndDir, b.CupBackMm+0.1*b.LargeEndDir*b.WidthMm
	if b.Adjusted {
		coneDir, from = -b.LargeEndDir, b.LargeEndMm
	}
	v.ringArrow(p, from, b.BoreMm/2+0.14*section, coneDir, side)
}

// ringArrow is an arrow that ends at z and r and points along dir.
func (v *stackView) ringArrow(p *draw.Panel, z, r, dir, side float64) {
	x, y := v.at(z, r, side)
	x -= dir * 0.6
	p.Draw.Add(draw.Shape{Path: draw.Polygon(x, y, x-dir*3, y+1.5, x-dir*3, y+0.5, x-dir*8, y+0.5, x-dir*8, y-0.5, x-dir*3, y-0.5, x-dir*3, y-1.5), Fill: draw.Black})
}

func (v *stackView) find(e plan.JointEnd) *stackPart {
	for _, p := range v.parts {
		if p.Part == e.Part && p.Copy == e.Copy {
			return p
		}
	}
	return nil
}

// welds draws the welds made so far as filled triangles in their corners.
func (v *stackView) welds(pl *plan.Plan, now *plan.JointPlan, p *draw.Panel, side float64) {
	for _, j := range pl.Joints {
		if j.N > now.N || j.Weld == nil || j.Weld.DiameterMm <= 0 {
			continue
		}
		a, b := v.find(j.A), v.find(j.B)
		if a == nil || b == nil {
			continue
		}
		outer, inner, outerEnd, innerEnd := a, b, j.A, j.B
		if !j.A.Inside {
			outer, inner, outerEnd, innerEnd = b, a, j.B, j.A
		}
		leg := max(j.Weld.LegMm*v.scale, 2.2) / v.scale
		r := j.Weld.DiameterMm / 2
		o0, o1 := outer.Span(outerEnd)
		i0, i1 := inner.Span(innerEnd)
		corners := []weldCorner{
			cornerAt(o0, i0, -1, r, leg, outer, inner),
			cornerAt(o1, i1, 1, r, leg, outer, inner),
		}
		if j.Weld.Sides == 1 && corners[1].rank > corners[0].rank {
			corners[0] = corners[1]
		}
		if j.Weld.Sides == 1 {
			corners = corners[:1]
		}
		for _, c := range corners {
			c.draw(v, p, side)
		}
	}
}

// weldCorner is a triangle of weld metal in z and r. Of the two ends of a
// joint welded from one side, the one with the higher rank is meant: where an
// edge is prepared, else where the weld is easiest to reach.
type weldCorner struct {
	points [3]plan.XY
	rank   int
}

// cornerAt is the weld at one end, in direction dir of the axis, of a round
// joint of radius r: o and i are where the outer and the inner part's surface
// ends.
func cornerAt(o, i, dir, r, leg float64, outer, inner *stackPart) weldCorner {
	const small = 0.3 // a chamfer for a weld is larger
	var c weldCorner
	end := o
	switch d := (i - o) * dir; {
	case d > 0.5: // the inner part stands out: a corner on the outer face
		c.rank = 1
		c.points = [3]plan.XY{{XMm: o, YMm: r}, {XMm: o + dir*leg, YMm: r}, {XMm: o, YMm: r + leg}}
	case d < -0.5: // the inner part ends inside: a corner in the bore
		end = i
		c.points = [3]plan.XY{{XMm: i, YMm: r}, {XMm: i + dir*leg, YMm: r}, {XMm: i, YMm: r - leg}}
	default:
		c.points = [3]plan.XY{{XMm: o - dir*leg, YMm: r}, {XMm: o, YMm: r - leg/2}, {XMm: o, YMm: r + leg/2}}
	}
	if bore, _, ok := outer.reach(o - dir*0.05); ok && bore > r+small {
		c.rank, end = 2, o
		c.points = [3]plan.XY{{XMm: o, YMm: r}, {XMm: o - dir*(bore-r), YMm: r}, {XMm: o, YMm: bore}}
	}
	if _, outside, ok := inner.reach(i - dir*0.05); ok && outside < r-small {
		c.rank, end = 2, i
		c.points = [3]plan.XY{{XMm: end, YMm: r}, {XMm: end - dir*(r-outside), YMm: r}, {XMm: end, YMm: outside}}
	}
	return c
}

// draw fills the corner, if it lies in the window.
func (c weldCorner) draw(v *stackView, p *draw.Panel, side float64) {
	var xy []float64
	for _, q := range c.points {
		if q.XMm < v.z0 || q.XMm > v.z1 || q.YMm < v.rMin || q.YMm > v.rMax*1.05 {
			return
		}
		x, y := v.at(q.XMm, q.YMm, side)
		xy = append(xy, x, y)
	}
	p.Draw.Add(draw.Shape{Path: draw.Polygon(xy...), Fill: draw.Black})
}

// bolts draws the bolts made so far: a centre line, and for those of this
// joint the head, the shank and the nut.
func (v *stackView) bolts(pl *plan.Plan, now *plan.JointPlan, p *draw.Panel, side float64) {
	for _, j := range pl.Joints {
		if j.N > now.N || j.Bolt == nil {
			continue
		}
		a, b := v.find(j.A), v.find(j.B)
		r := boltRadius(pl, j)
		if a == nil || b == nil || r <= 0 {
			continue
		}
		if a.section.Flat && r > a.section.MaxMm {
			r = 0.88 * a.section.MaxMm // in the corners of a plate, beyond the cut
		}
		if r > v.rMax {
			continue
		}
		dir := 1.0
		if a.lo+a.hi > b.lo+b.hi {
			dir = -1
		}
		face, ok := a.faceAt(r, dir, b)
		if !ok || len(j.Bolt.Grip) == 0 {
			continue
		}
		head := face - dir*j.Bolt.Grip[0].ThickMm
		length := max(j.Bolt.LengthMm, j.Bolt.GripMm)
		d := j.A.DiameterMm * 0.9
		inWindow := func(z float64) bool { return z > v.z0 && z < v.z1 }
		if !inWindow(head) {
			continue
		}
		tail := head
		if j.Bolt.Spacer {
			tail -= dir * 1.3 * d // a stud stands out of both nuts
		}
		if j == now {
			v.box(p, tail, tail+dir*length, r, d/2, side, draw.LineMm)
			v.box(p, head, head-dir*0.65*d, r, 0.85*d, side, draw.LineMm)
			if n := len(j.Bolt.Grip); n > 1 && j.Bolt.Grip[n-1].What == j.B.Title {
				if nut, ok := b.faceAt(r, dir, a); ok {
					v.box(p, nut, nut+dir*0.8*d, r, 0.85*d, side, draw.LineMm)
				}
			}
		}
		x0, y := v.at(max(v.z0, min(v.z1, head-dir*1.2*d)), r, side)
		x1, _ := v.at(max(v.z0, min(v.z1, tail+dir*(length+0.5*d))), r, side)
		p.Draw.Add(draw.Segment(x0, y, x1, y, draw.LineMm, draw.ChainDash...))
	}
}

// box draws a white rectangle about a line along the axis, cut to the window.
func (v *stackView) box(p *draw.Panel, za, zb, r, half, side, width float64) {
	lo, hi := max(v.z0, min(za, zb)), min(v.z1, max(za, zb))
	if hi <= lo {
		return
	}
	x0, y0 := v.at(lo, r-half, side)
	x1, y1 := v.at(hi, r+half, side)
	p.Draw.Add(draw.Shape{Path: draw.Polygon(x0, y0, x1, y0, x1, y1, x0, y1), Fill: draw.White, Stroke: draw.Black, WidthMm: width})
}

// boltRadius is the radius of a bolted pattern: half its pitch circle, or how
// far its first hole lies from the axis.
func boltRadius(pl *plan.Plan, j *plan.JointPlan) float64 {
	if j.Bolt.PCDMm > 0 {
		return j.Bolt.PCDMm / 2
	}
	part := pl.Part(j.A.Part)
	if part == nil {
		return 0
	}
	for _, face := range part.Faces {
		for _, h := range face.Holes {
			if h.Group == j.A.Feature {
				return h.RadiusMm
			}
		}
	}
	return 0
}

// faceAt is where a part's metal at a radius ends in direction dir, nearest
// to the other part.
func (p *stackPart) faceAt(r, dir float64, other *stackPart) (z float64, ok bool) {
	const steps = 400
	var ends []float64
	was := false
	for i := range steps + 1 {
		at := p.lo + (p.hi-p.lo)*(float64(i)+0.5)/(steps+1)
		inner, outer, there := p.reach(at)
		is := there && inner <= r && (r <= outer || p.section.Flat)
		if is != was {
			edge := p.lo + (p.hi-p.lo)*float64(i)/(steps+1)
			if (dir > 0 && was) || (dir < 0 && is) {
				ends = append(ends, edge)
			}
		}
		was = is
	}
	if was && dir > 0 {
		ends = append(ends, p.hi)
	}
	if len(ends) == 0 {
		return 0, false
	}
	target := other.lo
	if dir < 0 {
		target = other.hi
	}
	best := ends[0]
	for _, e := range ends {
		if math.Abs(e-target) < math.Abs(best-target) {
			best = e
		}
	}
	return best, true
}

// arrow shows which way the part that moves goes on.
func (v *stackView) arrow(j *plan.JointPlan, p *draw.Panel) {
	mover, still := v.a, v.b
	if j.Press != nil {
		mover, still = v.b, v.a // the hub goes on the shaft
	}
	if j.Weld != nil || j.Bearing != nil {
		return
	}
	dir := 1.0
	if mover.lo+mover.hi > still.lo+still.hi {
		dir = -1
	}
	if j.Press != nil {
		if from := v.entry(j); from != 0 {
			dir = -from
		}
	}
	const long, half = 12.0, 2.6
	x, y := v.x0-2, v.axis+min(0.5*(v.rMax-v.rMin)*v.scale, 14)
	if dir < 0 {
		x = v.x0 + (v.z1-v.z0)*v.scale + 2
	}
	one := func(y float64) {
		tip, tail := x, x-dir*long
		p.Draw.Add(draw.Shape{Path: draw.Polygon(tip, y, tip-dir*5, y+half*1.6, tip-dir*5, y+half*0.6, tail, y+half*0.6, tail, y-half*0.6, tip-dir*5, y-half*0.6, tip-dir*5, y-half*1.6), Fill: draw.Black})
	}
	one(y)
	if v.full {
		one(2*v.axis - y)
	}
	word := strconv.Itoa(mover.n) + " goes on"
	at := draw.Text{XMm: x - dir*1, YMm: y + half*1.6 + 1.4, SizeMm: draw.SmallMm, Bold: true, Align: draw.Right, Content: word}
	if dir < 0 {
		at.Align = draw.Left
	}
	p.Draw.Add(at)
}

// entry is the end of the axis, −1 or +1, from which the hub can be slid on
// the shaft; 0 if both ends or neither is free.
func (v *stackView) entry(j *plan.JointPlan) float64 {
	fromLow := v.a.free(j.A, -1) && v.b.free(j.B, 1)
	fromHigh := v.a.free(j.A, 1) && v.b.free(j.B, -1)
	switch {
	case fromLow && !fromHigh:
		return -1
	case fromHigh && !fromLow:
		return 1
	}
	return 0
}

// free tells whether nothing of the part itself stands between a round step
// or bore and one end of the axis.
func (p *stackPart) free(e plan.JointEnd, end float64) bool {
	const play = 0.3
	lo, hi := p.Span(e)
	line := p.section.Outer
	if e.Inside {
		line = p.section.Inner
	}
	for _, q := range line {
		z := p.Z(q.XMm)
		if beyond := (end < 0 && z < lo-1e-6) || (end > 0 && z > hi+1e-6); !beyond {
			continue
		}
		if (e.Inside && q.YMm < e.DiameterMm/2-play) || (!e.Inside && q.YMm > e.DiameterMm/2+play) {
			return false
		}
	}
	return true
}
