package review

import (
	"math"
	"slices"

	"centrepop/parts"
	"centrepop/parts/geom"
)

// screwPasses looks for parts on the axis of a nut that travels which its screw
// does not go through. The screw, which need not stand in the machine, looks the
// way of the nut.
func (r *reviewer) screwPasses(p, q *parts.Part, screw *cylinder) {
	front, back := screw.reaches()
	for _, stack := range r.lastStacks() {
		me := standing(stack, parts.Instance{Part: p.Name.Value, Copy: 1})
		if me == nil {
			continue
		}
		dir, long := 1.0, me.section.LengthMm
		if me.Z(long) < me.Z(0) {
			dir = -1
		}
		for _, o := range stack {
			if o.Part == p.Name.Value || o.Part == q.Name.Value {
				continue
			}
			lo, hi := dir*o.Z(0), dir*o.Z(o.section.LengthMm)
			lo, hi = min(lo, hi), max(lo, hi)
			wants := back
			switch {
			case !geom.Over(dir*me.Z(long), lo) && lo < dir*me.Z(long)+back.longMm:
			case !geom.Over(hi, dir*me.Z(0)) && hi > dir*me.Z(0)-front.longMm:
				wants = front
			default:
				continue
			}
			if bore := 2 * narrowest(o); bore > 0 && geom.Over(2*wants.radiusMm, bore) {
				r.add(Finding{
					Part: o.Part, Pos: r.job.Part(o.Part).Name.Pos, LeftMm: left(bore), Source: "by geometry",
					What: q.Title.Value + " does not pass " + o.Title, Numbers: r.mm(2*wants.radiusMm) + " through " + r.mm(bore),
					Rule: "a screw passes what lies on the axis of its nut", Fix: "a bore wider than the screw, or accept it where the screw does not reach",
				})
			}
		}
	}
}

// reach is how thick a screw is on one side of its thread, and how far it can stick
// out of its nut there.
type reach struct{ radiusMm, longMm float64 }

// reaches are those of a screw in front of its thread and behind it, the thread with both.
func (c *cylinder) reaches() (front, back reach) {
	front = reach{max(mostMm(c.before), c.RadiusMm()), c.ToMm}
	back = reach{max(mostMm(c.behind), c.RadiusMm()), c.LengthMm()}
	for _, o := range c.behind {
		back.longMm += o.LengthMm()
	}
	return front, back
}

// narrowest is the least radius of a part's bore, 0 where it is closed.
func narrowest(o *standingPart) float64 {
	const stepMm = 0.5
	least := math.Inf(1)
	for z := range middles(0, o.section.LengthMm, stepMm) {
		if inner, _, ok := o.section.RadiiAt(z); ok {
			least = min(least, inner)
		}
	}
	return least
}

// nearlyShare is how near the size of a bore comes to that of the shaft that it is
// likely meant for. Common practice, no source.
const nearlyShare = 0.15

// loneBore looks for bores of flat parts in no joint that something runs in, by
// their class, of which no outside of the job has the size and one nearly has.
func (v *view) loneBore() {
	if len(v.inside) != 1 || v.inside[0].Drawn.Size.Fit.Class.Value == "" || v.inside[0].Drawn.Size.Fit.Class.Value >= "H" || v.inJoint(v.p.Name.Value) {
		return
	}
	size, near, off := v.inside[0].Drawn.Size, "", math.Inf(1)
	for _, o := range v.all() {
		for _, s := range o.outside {
			if d := math.Abs(s.Drawn.Size.Nominal.Mm - size.Nominal.Mm); o != v && o.turned() && s.fitted() && d < off {
				near, off = s.Name+" of "+o.p.Title.Value+" is "+v.mm(s.Drawn.Size.Nominal.Mm), d
			}
		}
	}
	if geom.Over(off, 0) && off <= nearlyShare*size.Nominal.Mm {
		v.report(Check, v.inside[0].Name, size.Nominal.Pos, Finding{
			What:    "the bore of " + v.p.Title.Value + " is a running fit on no shaft of the job",
			Numbers: v.mm(size.Nominal.Mm) + " " + size.Fit.Class.Value + "; " + near, OverMm: over(off),
			Rule: "bore and shaft have one nominal size", Source: "ISO 286-1", Fix: "the size of the shaft, or accept it for a shaft that is bought",
		})
	}
}

// inJoint tells whether a joint names a part.
func (r *reviewer) inJoint(part string) bool {
	return slices.ContainsFunc(r.job.Joints, func(j *parts.Joint) bool { return j.Holds(part) })
}
