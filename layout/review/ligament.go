package review

import (
	"math"

	"centrepop/layout/bolts"
	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

// ligament looks for holes that overlap or have too little metal between them.
// Holes that do not reach the same depth do not meet.
func ligament(v *view) {
	worst := &worst{}
	for _, pair := range closePairs(v.holes) {
		v.wallBetween(&v.holes[pair[0]], &v.holes[pair[1]], worst)
	}
	worst.report()
	for _, k := range v.q.Keyways {
		for i := range v.holes {
			v.besideKeyway(k, &v.holes[i])
		}
	}
}

// besideKeyway looks at the metal between a hole in a face and the corners of a keyway.
func (v *view) besideKeyway(k plan.KeywayRow, h *hole) {
	if !h.span().Meets(k.Key()) {
		return
	}
	low, high := k.DiameterMm/2-k.DepthMm, k.DiameterMm/2
	if k.Inside {
		low, high = high, high+k.DepthMm
	}
	up := geom.Clock(1, k.ClockDeg)
	for _, q := range []plan.XY{h.a, h.b} {
		out, side := q.Dot(up), math.Abs(q.Cross(up))
		beside, over := math.Max(0, side-k.WidthMm/2), math.Max(0, math.Max(low-out, out-high))
		if wall := math.Hypot(beside, over) - h.radiusMm; geom.Over(h.radiusMm/2, wall) {
			f := Finding{
				What:    h.title() + " and the keyway " + k.Name + " lie close together",
				Numbers: v.mm(math.Max(0, wall)) + " of metal between, wanted " + v.mm(h.radiusMm/2), LeftMm: left(math.Max(0, wall)),
				Rule: "metal between a hole and a keyway at least a quarter of the hole", Fix: "the hole or the keyway at another angle",
			}
			if !geom.Some(wall) {
				f.What = h.title() + " and the keyway " + k.Name + " run into each other"
			}
			v.report(Check, h.name, h.pos, f)
			return
		}
	}
}

// wallBetween looks at the metal between two holes.
func (v *view) wallBetween(g, h *hole, worst *worst) {
	if !g.span().Meets(h.span()) {
		return
	}
	centresMm := apartMm(g, h)
	wallMm := centresMm - g.radiusMm - h.radiusMm
	need := pitch(g, h)
	if headsMm := centresMm - g.headRadiusMm() - h.headRadiusMm(); g.face == h.face && !geom.Some(headsMm) && !geom.Over(need.needMm, centresMm) {
		worst.add(g.name+" "+h.name, headsMm, func(count int) {
			v.report(Check, h.name, h.pos, Finding{
				What:    g.title() + " and " + h.title() + ": their counterbores or countersinks run into each other" + same(count),
				Numbers: "they overlap by " + v.mm(-headsMm), OverMm: over(-headsMm),
				Rule: "a screw head is held all round", Source: "by geometry", Fix: "move one of them, or take smaller heads",
			})
		})
		return
	}
	if !geom.Over(need.needMm, centresMm) {
		return
	}
	worst.add(g.name+" "+h.name, centresMm-need.needMm, func(count int) {
		f := Finding{
			What:    g.title() + " and " + h.title() + " lie close together" + same(count),
			Numbers: "centres " + v.mm(centresMm) + " apart, wanted " + v.mm(need.needMm) + "; " + h.matter() + " between " + v.mm(wallMm), LeftMm: left(wallMm),
			Rule: need.rule, Source: need.source, Fix: "move one of them, or take a smaller size or fewer holes",
		}
		severity := Check
		switch {
		case !geom.Some(centresMm):
			f.Numbers = v.mm(2*g.radiusMm) + " and " + v.mm(2*h.radiusMm) + " on one centre"
			severity, f.What = Stop, g.title()+" and "+h.title()+" are at the same place"
			if f.Fix = "move one of them: both are needed"; g.group != nil && h.group != nil && g.group.Size.Make == h.group.Size.Make && g.radiusMm == h.radiusMm {
				f.Fix = "move one of them, or delete it if it is the same hole twice"
			}
		case !geom.Some(wallMm):
			severity, f.What = Stop, g.title()+" and "+h.title()+" run into each other"+same(count)
			f.Numbers = "centres " + v.mm(centresMm) + " apart; they overlap by " + v.mm(-wallMm)
		}
		v.report(severity, h.name, h.pos, f)
	})
}

// closePairs lists the pairs of holes that can be too close for pitch, or
// whose heads can meet.
func closePairs(holes []hole) [][2]int {
	boxes := make([]box, len(holes))
	for i := range holes {
		h := &holes[i]
		room := max(pitch(h, h).needMm, 2*h.headRadiusMm())
		boxes[i] = box{i, min(h.a.XMm, h.b.XMm) - room, min(h.a.YMm, h.b.YMm) - room,
			max(h.a.XMm, h.b.XMm) + room, max(h.a.YMm, h.b.YMm) + room}
	}
	return meeting(boxes)
}

// pitch is the least distance of two holes' middle lines.
func pitch(g, h *hole) rim {
	d := 2 * math.Max(g.radiusMm, h.radiusMm)
	if h.stripMm > 0 {
		return rim{g.radiusMm + h.radiusMm + h.stripMm, stripRule, practice}
	}
	if g.bolt() && h.bolt() {
		if e, err := bolts.EdgeDistances(d); err == nil {
			return rim{e.P1Mm, "centres of bolt holes at least 2.2 times the hole apart", steelwork}
		}
	}
	d = min(d, 4*math.Min(g.radiusMm, h.radiusMm)) // a screw beside a bore asks for no more than its own diameter
	return rim{g.radiusMm + h.radiusMm + d/2, "metal between two holes at least half the larger one, or the smaller", practice}
}
