package review

import (
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// screwPasses looks for parts on the axis of a nut that travels which its screw
// does not go through. The screw, which need not stand in the machine, looks the
// way of the nut.
func (r *reviewer) screwPasses(p, q *parts.Part, screw *cylinder) {
	m := r.machine()
	front, back := screw.reaches()
	for me := range everyStanding(r) {
		if me.v.p != p {
			continue
		}
		for _, o := range me.along {
			if o.Of.Part == p || o.Of.Part == q || r.job.ByHand(m.Of[o.ID].Part) != nil || r.ridesOn(o.Of.Part, q) { // it says itself what it goes on
				continue
			}
			wants, on := back, o.Whole()
			switch {
			case !geom.Over(me.v.lengthMm, on.FromMm) && on.FromMm < me.v.lengthMm+back.longMm:
			case !geom.Some(on.ToMm) && on.ToMm > -front.longMm:
				wants = front
			default:
				continue
			}
			if bore := 2 * narrowest(o.Of.Out.Section); bore > 0 && geom.Over(2*wants.radiusMm, bore) {
				r.add(Finding{
					Part: o.Of.Part.Name.Value, Pos: o.Of.Part.Name.Pos, LeftMm: left(bore), Source: "by geometry",
					What: q.Title.Value + " does not pass " + m.Title(o.ID), Numbers: r.mm(2*wants.radiusMm) + " through " + r.mm(bore),
					Rule: "a screw passes what lies on the axis of its nut", Fix: "a bore wider than the screw, or accept it where the screw does not reach",
				})
			}
		}
	}
}

// ridesOn tells whether a part sits on a screw by a joint of the two, and travels with it.
func (r *reviewer) ridesOn(p, screw *parts.Part) bool {
	return slices.ContainsFunc(r.job.Joints, func(j *parts.Joint) bool { return j.Holds(p.Name.Value) && j.Holds(screw.Name.Value) })
}

// reach is how thick a screw is on one side of its thread, and how far it can stick
// out of its nut there.
type reach struct{ radiusMm, longMm float64 }

// reaches are those of a screw in front of its thread and behind it, the thread with both.
func (c *cylinder) reaches() (front, back reach) {
	front = reach{max(mostMm(c.before), c.RadiusMm()), c.ToMm}
	long := seq.Sum(append([]*cylinder{c}, c.behind...), func(o *cylinder) float64 { return o.LengthMm() })
	return front, reach{max(mostMm(c.behind), c.RadiusMm()), long}
}

// narrowest is the least radius of a part's bore, 0 where it is closed.
func narrowest(o *plan.Section) float64 {
	const stepMm = 0.5
	least := endless
	for z := range middles(0, o.LengthMm, stepMm) {
		if inner, _, ok := o.RadiiAt(z); ok {
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
	if len(v.inside) != 1 || v.inside[0].Drawn.Size.Fit.Class.Value == "" || v.inside[0].Drawn.Size.Fit.Class.Value >= "H" || v.job.Fastens(v.p.Name.Value) {
		return
	}
	size, near, off := v.inside[0].Drawn.Size, "", endless
	for _, o := range v.all() {
		for _, s := range o.outside {
			if d := math.Abs(s.Drawn.Size.Nominal.Mm - size.Nominal.Mm); o != v && o.turned() && s.fitted() && d < off {
				near, off = s.Name+" of "+o.p.Title.Value+" is "+v.mm(s.Drawn.Size.Nominal.Mm), d
			}
		}
	}
	if geom.Some(off) && off <= nearlyShare*size.Nominal.Mm {
		v.report(Check, v.inside[0].Name, size.Nominal.Pos, Finding{
			What:    "the bore of " + v.p.Title.Value + " is a running fit on no shaft of the job",
			Numbers: v.mm(size.Nominal.Mm) + " " + size.Fit.Class.Value + "; " + near, OverMm: over(off),
			Rule: "bore and shaft have one nominal size", Source: "ISO 286-1", Fix: "the size of the shaft, or accept it for a shaft that is bought",
		})
	}
}
