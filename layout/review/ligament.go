package review

import (
	"math"

	"centrepop/layout/bolts"
)

// ligament looks for holes that overlap or have too little metal between them.
// Holes that do not reach the same depth do not meet.
func ligament(v *view) {
	worst := newWorst()
	for _, pair := range closePairs(v.holes) {
		v.wallBetween(&v.holes[pair[0]], &v.holes[pair[1]], worst)
	}
	worst.report()
}

// wallBetween looks at the metal between two holes.
func (v *view) wallBetween(g, h *hole, worst *worst) {
	if math.Min(g.toMm, h.toMm)-math.Max(g.fromMm, h.fromMm) < slackMm {
		return
	}
	centresMm := apartMm(g, h)
	wallMm := centresMm - g.radiusMm - h.radiusMm
	need := pitch(g, h)
	if headsMm := centresMm - g.headRadiusMm() - h.headRadiusMm(); g.face == h.face && headsMm < slackMm && centresMm >= need.needMm-slackMm {
		worst.add(g.name+" "+h.name, headsMm, func(count int) {
			v.report(Check, h.name, h.pos(), Finding{
				What:    g.title() + " and " + h.title() + ": their counterbores or countersinks run into each other" + same(count),
				Numbers: "they overlap by " + v.mm(-headsMm),
				OverMm:  over(-headsMm), Rule: "a screw head is held all round", Source: "by geometry", Fix: "move one of them, or take smaller heads",
			})
		})
		return
	}
	if centresMm >= need.needMm-slackMm {
		return
	}
	worst.add(g.name+" "+h.name, centresMm-need.needMm, func(count int) {
		f := Finding{
			What:    g.title() + " and " + h.title() + " lie close together" + same(count),
			Numbers: "centres " + v.mm(centresMm) + " apart, wanted " + v.mm(need.needMm) + "; metal between " + v.mm(wallMm), LeftMm: left(wallMm),
			Rule: need.rule, Source: need.source,
			Fix: "move one of them, or take a smaller size or fewer holes",
		}
		severity := Check
		switch {
		case centresMm < slackMm:
			f.Numbers = v.mm(2*g.radiusMm) + " and " + v.mm(2*h.radiusMm) + " on one centre"
			severity, f.What = Stop, g.title()+" and "+h.title()+" are at the same place"
			if f.Fix = "move one of them: both are needed"; g.group != nil && h.group != nil && g.group.Size.Make == h.group.Size.Make && g.radiusMm == h.radiusMm {
				f.Fix = "move one of them, or delete it if it is the same hole twice"
			}
		case wallMm < slackMm:
			severity, f.What = Stop, g.title()+" and "+h.title()+" run into each other"+same(count)
			f.Numbers = "centres " + v.mm(centresMm) + " apart; they overlap by " + v.mm(-wallMm)
		}
		v.report(severity, h.name, h.pos(), f)
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
	if g.bolt() && h.bolt() {
		if e, err := bolts.EdgeDistances(d); err == nil {
			return rim{e.P1Mm, "centres of bolt holes at least 2.2 times the hole apart", steelwork}
		}
	}
	return rim{g.radiusMm + h.radiusMm + d/2, "metal between two holes at least half the larger one", practice}
}
