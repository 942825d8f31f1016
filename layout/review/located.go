package review

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// located looks for seats of parts of the job along which what sits there can slide,
// either way, with nothing to stop it. What is bought brings a screw of its own, and
// joints look at the seats they name themselves.
func (v *view) located(c *cylinder) {
	if c.Inside || c.Seat == "" || v.jointNames(c.Name) || v.stopped(c) || slices.ContainsFunc(c.next(), func(o *cylinder) bool { return stops(o, c) }) {
		return
	}
	if p := seq.First(v.job.Parts, func(p *parts.Part) bool { return p != v.p && p.NamedIn(c.Seat) && !holdsItself(p) }); p != nil {
		v.report(Check, c.Name, c.Drawn.Pos, Finding{
			What: "nothing stops " + p.Title.Value + " from sliding along " + c.Name, Numbers: v.mm(2*c.RadiusMm()) + ", no shoulder, ring, nut or screw on either side",
			Rule: "what sits on a shaft has its place along it", Fix: "a shoulder, a groove for a retaining ring, a set screw in the hub, or a joint that holds it",
		})
	}
}

// ringOffMm is how far a retaining ring may stand off what it keeps: washers take up so much. Common practice, no source.
const ringOffMm = 2.0

// ringKeeps looks for the retaining ring of a step that a ball bearing sits on or something turns on which lies under that, or
// under another part, and does not get in, or which stands off it and keeps nothing. What a joint has kept by a ring, it looks at itself.
func (v *view) ringKeeps(g plan.GrooveRow) {
	if g.EdgeMm == 0 || slices.ContainsFunc(v.job.Joints, func(j *parts.Joint) bool {
		return j.Slide != nil && j.Slide.KeptBy.Part == v.p.Name.Value && j.Slide.KeptBy.Feature == g.Name
	}) {
		return
	}
	for _, j := range append(v.planned(parts.SlideKind), v.planned(parts.BearingKind)...) {
		spaced := func(e parts.Loose) bool { return e.As == parts.ASpacer && e.After.Value == j.Name }
		if on, ok := v.ringed(j, g.Inside); ok && on.Part == v.p.Name.Value && on.Feature == g.In && !slices.ContainsFunc(v.job.Loose, spaced) && v.ringOf(j, on, g) {
			return
		}
	}
}

// ringed is the end of a joint that a retaining ring in a bore or on a shaft keeps: of a ball bearing its seat there, else the
// shaft that the hub of a slide turns on.
func (v *view) ringed(j *plan.JointPlan, inside bool) (on plan.JointEnd, ok bool) {
	switch ball := j.Bearing != nil && j.Bearing.Ball; {
	case ball && !inside:
		return j.A, true
	case ball:
		return j.B, true
	}
	return j.B, j.Bearing == nil && !inside && v.job.Runs(v.job.Joint(j.Name))
}

// ringOf is the same for one end of a joint, and tells whether it is so. What a ring has of room beside a ball bearing its joint
// looks at; one farther off than the bearing is wide keeps something else.
func (v *view) ringOf(j *plan.JointPlan, on plan.JointEnd, g plan.GrooveRow) bool {
	m, pos := v.machine(), entryPos(v.p, g.Name)
	shaft := m.At(on)
	if shaft == nil {
		return false
	}
	const rays = 8
	radius, half := (3*g.DiameterMm+g.ClearMm)/8, g.WidthMm/2 // in the middle of what the ring stands out
	off, by, under := endless, "", map[string]int{}
	others := seq.Keep(m.Bodies, func(b assembly.Body) bool { return b.ID != shaft.ID && m.Roles[b.ID].Kind != stand.Ring })
	for b := range seq.Refs(others) {
		for _, deg := range geom.Evenly(rays) {
			at := assembly.Clock(radius, deg).Sub(assembly.AxisZ.Times(g.Span().MidMm()))
			for _, s := range b.Spans(shaft.Pose.Apply(at), shaft.Pose.Z) {
				switch gap := max(s.FromMm, -s.ToMm) - half; {
				case geom.Short(gap):
					under[b.ID]++
				case gap < off:
					off, by = gap, m.Title(b.ID)
				}
			}
		}
		if under[b.ID] > rays/2 && j.Bearing != nil {
			return false
		}
		if under[b.ID] > rays/2 {
			v.report(Stop, g.Name, pos, Finding{
				What: "the retaining ring of " + g.Name + " lies under " + m.Title(b.ID), Numbers: v.mm(g.FromMm) + " to " + v.mm(g.ToMm) + " from the front face",
				Rule: "a ring is sprung in where its groove is free", Source: "by geometry", Fix: "move the groove along " + g.In + ", to the end of what it keeps",
			})
			return true
		}
	}
	if math.IsInf(off, 1) || !geom.Over(off, ringOffMm) || j.Bearing != nil && geom.Over(off, j.Bearing.WidthMm) {
		return false
	}
	v.report(Check, g.Name, pos, Finding{
		What: "the retaining ring of " + g.Name + " stands off " + by + ", which is next to it on " + g.In, Numbers: v.mm(off) + ", wanted at most " + v.mm(ringOffMm), OverMm: over(off),
		Rule: "a ring keeps what it lies against", Source: practice, Fix: "move the groove along " + g.In + ", or a spacer in between",
	})
	return true
}

// jointNames tells whether a joint of any kind names a feature.
func (v *view) jointNames(feature string) bool {
	return v.job.Uses(v.p.Name.Value, feature)
}

// stops tells whether the step beside a seat stops what sits there: it is larger, has a
// thread for a nut that stays, or something of its own sits on it.
func stops(beside *cylinder, seat *cylinder) bool {
	return geom.Over(beside.RadiusMm(), seat.RadiusMm()) || beside.threaded() && (beside.Size.Thread == nil || beside.Size.Thread.Lead == nil) || beside.Seat != ""
}

// stopped tells whether something in a seat itself, or beside it in the end of the
// part, holds what sits there: what is fast, a groove, or a thread in the end.
func (v *view) stopped(c *cylinder) bool {
	return v.fast(c) ||
		slices.ContainsFunc(v.p.Grooves, func(g parts.Groove) bool { return g.In.Value == c.Name }) ||
		slices.ContainsFunc(v.holes, func(h hole) bool { return h.thread != nil && h.centreMm() < c.RadiusMm() })
}

// holdsItself tells whether a part has a screw or a clamp to hold it on its shaft.
func holdsItself(p *parts.Part) bool {
	return p.Clamp != nil || slices.ContainsFunc(p.Radials, func(f parts.Radial) bool { return f.Size.Thread != "" })
}
