package review

import (
	"slices"

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

// jointNames tells whether a joint of any kind names a feature.
func (v *view) jointNames(feature string) bool {
	return slices.ContainsFunc(v.job.Joints, func(j *parts.Joint) bool { return j.Names(v.p.Name.Value, feature) })
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
