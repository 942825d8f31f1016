package review

import (
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// runsRound is what a step carries all round, so that nothing may be cut into it: the ring of a bearing, the lip of a
// seal, the nut that sets a bearing; empty for another.
func (v *view) runsRound(c *cylinder) string {
	bears := func(j *parts.Joint) bool { return j.Names(v.p.Name.Value, c.Name) }
	nut := func(j *plan.JointPlan) bool {
		return j.A.Part == v.p.Name.Value && j.Bearing.HeldBy != "" && j.Bearing.HeldBy == c.Drawn.Size.Thread.Value
	}
	behindRing := slices.ContainsFunc(c.next(), func(o *cylinder) bool { return o.Bears() })
	switch {
	case c.threaded() && !c.Inside && (behindRing || slices.ContainsFunc(v.planned(parts.BearingKind), nut)):
		return "the nut that sets a bearing"
	case c.threaded():
		return ""
	case c.Bears() || slices.ContainsFunc(v.job.Of(parts.BearingKind), bears):
		return "the ring of a bearing"
	case v.sealsOn(c):
		return "a seal"
	}
	return ""
}

// sealsOn tells whether the lip of a seal runs on a step, or a seal sits in it, with or without its sizes.
func (v *view) sealsOn(c *cylinder) bool {
	return v.seal(c) != nil || parts.SeatUse(c.Seat) == parts.ASeal
}

// flatsInSeat and keywayInSeat look for what is cut into such a step. A keyway in a thread is that of its lock washer.
func (v *view) flatsInSeat(f plan.FlatsRow) {
	v.cutIn(v.step(f.In), f.Name, geom.Span{FromMm: f.FromMm, ToMm: f.ToMm})
}

func (v *view) keywayInSeat(k plan.KeywayRow) {
	if c := v.step(k.In); c != nil && !c.threaded() {
		v.cutIn(c, k.Name, k.Key())
	}
}

func (v *view) cutIn(c *cylinder, name string, on geom.Span) {
	if c == nil {
		return
	}
	carries := v.runsRound(c)
	if carries == "" {
		return
	}
	v.report(Check, name, entryPos(v.p, name), Finding{
		What:    name + " is cut into " + c.Name + ", which carries " + carries,
		Numbers: v.mm(on.FromMm) + " to " + v.mm(on.ToMm) + " from the front face; " + c.Name + " from " + v.mm(c.FromMm) + " to " + v.mm(c.ToMm),
		OverMm:  over(on.OnMm(c.Span())), Rule: "a ring bears, a lip seals and a nut holds all round: a flat or a key takes that away, and a key stands in the way of a ring", Source: practice,
		Fix: "in a step of its own beside " + c.Name,
	})
}
