package review

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/part"
	"centrepop/parts"
)

// How wide a shoulder is at the least where something is pushed against it, and the corner of a
// rolling bearing. Common practice, no source.
const (
	leastFaceMm   = 0.5
	bearingEdgeMm = 1.0
)

// contact looks for shoulders of which the edge outside, and in the corner the chamfer of
// what sits there, leave nothing to lie against.
func contact(v *view) {
	for i := range v.outside {
		c := &v.outside[i]
		if c.step == nil || c.step.Seat.Value == "" || v.seal(*c) != nil {
			continue
		}
		mate := part.BrokenMm
		if c.undercut != nil {
			mate = math.Max(mate, c.undercut.MateMm)
		}
		if strings.HasPrefix(c.step.Seat.Value, "bearing ") {
			mate = math.Max(mate, bearingEdgeMm)
		}
		mate = math.Max(mate, v.hubEdgeMm(c.name))
		for k, face := range map[int]parts.Face{i - 1: parts.Back, i + 1: parts.Front} {
			if k < 0 || k >= len(v.outside) || v.outside[k].radiusMm < c.radiusMm+leastFaceMm {
				continue // no shoulder, or one that is none
			}
			n := &v.outside[k]
			if n.size.Thread.Value != "" && c.undercut == nil {
				continue // the nut on it is the shoulder
			}
			edge := v.edgeMm(n, face)
			if wide := n.radiusMm - edge - c.radiusMm - mate; wide < leastFaceMm-slackMm {
				v.report(Check, c.name, c.pos, Finding{
					What:    "what sits on " + c.name + " has hardly a shoulder in " + n.name,
					Numbers: v.mm(n.radiusMm-c.radiusMm) + " high, less " + v.mm(edge) + " off its edge and " + v.mm(mate) + " for the edge of what sits there; wanted " + v.mm(leastFaceMm),
					LeftMm:  left(math.Max(0, wide)), Rule: "what is pushed against a shoulder lies on it", Fix: "a thinner seat, a collar, or a smaller chamfer on " + n.name,
				})
			}
		}
	}
}

// hubEdgeMm is what the larger chamfer of the bore that slides on a step takes of the radius; 0
// where none slides there.
func (v *view) hubEdgeMm(step string) (mm float64) {
	for _, s := range v.slides() {
		if hub := v.viewOf(s.Hub.Part); hub != nil && s.On.Part == v.p.Name.Value && s.On.Feature == step {
			bore := &cylinder{name: s.Hub.Feature}
			mm = max(mm, hub.edgeMm(bore, parts.Front), hub.edgeMm(bore, parts.Back))
		}
	}
	return mm
}

// edgeMm is how much of the radius of a step its chamfer at an end takes, or what is broken
// off there.
func (v *view) edgeMm(c *cylinder, end parts.Face) float64 {
	if i := slices.IndexFunc(v.p.Chamfers, func(h parts.Chamfer) bool { return h.Edge.Value == c.name+"-"+string(end) }); i >= 0 {
		return v.p.Chamfers[i].AcrossMm()
	}
	return part.BrokenMm
}
