package review

import (
	"math"

	"centrepop/layout/part"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// How wide a shoulder is at the least where something is pushed against it, and the corner of a
// rolling bearing. Common practice, no source.
const (
	leastFaceMm   = 0.5
	bearingEdgeMm = 1.0
)

// contact looks for shoulders of which the edge outside, and in the corner the chamfer of
// what sits there, leave nothing to lie against.
func (v *view) contact(c *cylinder) {
	if c.Inside || c.Seat == "" || v.seal(c) != nil {
		return
	}
	mate := math.Max(part.BrokenMm, v.hubEdgeMm(c.Name))
	if c.Undercut != nil {
		mate = math.Max(mate, c.Undercut.MateMm)
	}
	if c.Bears() {
		mate = math.Max(mate, bearingEdgeMm)
	}
	for _, n := range c.next() {
		if n.RadiusMm() < c.RadiusMm()+leastFaceMm || n.threaded() && c.Undercut == nil {
			continue // no shoulder, one that is none, or that of the nut on it
		}
		edge := v.edgeMm(n, n.toward(c))
		if wide := n.RadiusMm() - edge - c.RadiusMm() - mate; geom.Over(leastFaceMm, wide) {
			v.report(Check, c.Name, c.Drawn.Pos, Finding{
				What:    "what sits on " + c.Name + " has hardly a shoulder in " + n.Name,
				Numbers: v.mm(n.RadiusMm()-c.RadiusMm()) + " high, less " + v.mm(edge) + " off its edge and " + v.mm(mate) + " for the edge of what sits there; wanted " + v.mm(leastFaceMm),
				LeftMm:  left(math.Max(0, wide)), Rule: "what is pushed against a shoulder lies on it", Fix: "a thinner seat, a collar, or a smaller chamfer on " + n.Name,
			})
		}
	}
}

// hubEdgeMm is what the larger chamfer of the bore that slides on a step takes of the radius; 0
// where none slides there.
func (v *view) hubEdgeMm(step string) (mm float64) {
	for _, j := range v.job.Of(parts.SlideKind) {
		if s := j.Slide; s.On.Part == v.p.Name.Value && s.On.Feature == step {
			hub, bore := v.viewOf(s.Hub.Part), v.stepOf(s.Hub)
			mm = max(mm, hub.edgeMm(bore, parts.Front), hub.edgeMm(bore, parts.Back))
		}
	}
	return mm
}

// edgeMm is how much of the radius of a step its chamfer at an end takes, or what is broken
// off there.
func (v *view) edgeMm(c *cylinder, end parts.Face) float64 {
	if h := v.chamferOn(c, end); h != nil {
		return h.AcrossMm()
	}
	return part.BrokenMm
}
