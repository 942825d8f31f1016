package review

import (
	"cmp"
	"iter"
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// standingSeals looks at seals where they stand: at what their lip runs on, and at what an
// O-ring in an end face is squeezed against.
func (r *reviewer) standingSeals(p standingIn) {
	v := r.viewOf(p.Part)
	for _, s := range p.section.Seals {
		r.lipOn(v, p.standingPart, s, p.stack)
	}
	r.lipAway(p.standingPart, p.stack)
	for _, g := range v.q.Grooves {
		if g.ORing != nil && g.Face != "" {
			r.facesRing(v, p.standingPart, g, p.stack)
		}
	}
}

// standingIn is a part in its place, with all that stands together with it at the end.
type standingIn struct {
	*standingPart
	stack []*standingPart
}

func everyStanding(r *reviewer) iter.Seq[standingIn] {
	return func(yield func(standingIn) bool) {
		for _, stack := range r.lastStacks() {
			for _, p := range stack {
				if !yield(standingIn{p, stack}) {
					return
				}
			}
		}
	}
}

// lipOn looks for a seal on a shaft of another size than its own.
func (r *reviewer) lipOn(v *view, p *standingPart, s plan.SealMark, stack []*standingPart) {
	for _, o := range stack {
		_, outer, ok := o.radii(p.Z((s.FromMm + s.ToMm) / 2))
		if o == p || !ok || 2*outer > s.OuterMm || geom.Alike(2*outer, s.InnerMm) {
			continue
		}
		if c := at(v.inside, (s.FromMm+s.ToMm)/2); c != nil {
			r.add(Finding{
				Severity: Stop, Part: p.Part, Feature: c.Name, Pos: c.Drawn.Pos, What: "the seal of " + c.Name + " is not one for " + o.Title, Numbers: c.Seat + " on " + r.mm(2*outer),
				Rule: "a lip runs on the shaft of its size", Source: "ISO 6194-1", Fix: "one seal on both drawings",
			})
		}
	}
}

// lipAway looks for seals between the flight of an auger and the nearest bearing of which no lip
// looks at the flight, and tells of the first.
func (r *reviewer) lipAway(flighted *standingPart, stack []*standingPart) {
	wet := slices.ContainsFunc(r.job.Of(parts.WeldKind), func(j *parts.Joint) bool {
		return r.job.Part(j.Weld.Part.Part).Kind == parts.FlightPart && j.Weld.To.Part == flighted.Part
	})
	bearing, middle := r.nearestBearing(flighted.middle(), stack), flighted.middle()
	if !wet || math.IsInf(bearing, 1) {
		return
	}
	var away *Finding
	for _, p := range stack {
		for _, s := range p.section.Seals {
			z, c := p.Z((s.FromMm+s.ToMm)/2), at(r.viewOf(p.Part).inside, (s.FromMm+s.ToMm)/2)
			if c == nil || (z-middle)*(z-bearing) >= 0 {
				continue
			}
			if p.looks(s)*(middle-bearing) > 0 {
				return
			}
			away = cmp.Or(away, &Finding{
				Part: p.Part, Feature: c.Name, Pos: c.Drawn.Pos, What: "the lip of the seal in " + c.Name + " looks away from the flight on " + flighted.Title + ", and no other keeps that from the bearing", Numbers: c.Seat,
				Rule: "a lip keeps back what it looks at", Fix: "lip: the other way",
			})
		}
	}
	if away != nil {
		r.add(*away)
	}
}

// looks is which way along the axis the lip of a seal looks, +1 or −1.
func (p *standingPart) looks(s plan.SealMark) float64 {
	if s.LipBack {
		return p.Z(1) - p.Z(0)
	}
	return p.Z(0) - p.Z(1)
}

// nearestBearing is where the bearing nearest to a place stands on the axis of a stack; infinite without any.
func (r *reviewer) nearestBearing(z float64, stack []*standingPart) float64 {
	near := math.Inf(1)
	for _, j := range r.job.Of(parts.BearingKind) {
		on, c := standing(stack, j.Bearing.Cone.Instance()), r.stepOf(j.Bearing.Cone)
		if on != nil && c != nil && math.Abs(on.Z(c.MidMm())-z) < math.Abs(near-z) {
			near = on.Z(c.MidMm())
		}
	}
	return near
}

// pressedShare is how much of a groove's width, about its middle, has a face opposite at the
// least. Common practice, no source.
const pressedShare = 0.5

// facesRing looks for an O-ring in a face against which another part stands, but not where
// the ring lies.
func (r *reviewer) facesRing(v *view, p *standingPart, g plan.GrooveRow, stack []*standingPart) {
	if slices.ContainsFunc(r.job.Of(parts.BoltKind), func(j *parts.Joint) bool { // what closes it has no place where its joint is wrong
		a, b := j.Ends()
		return (a.Part == p.Part || b.Part == p.Part) && (standing(stack, a.Instance()) == nil || standing(stack, b.Instance()) == nil)
	}) {
		return
	}
	face, out := g.FromMm, -1.0
	if g.Face == parts.Back {
		face, out = g.ToMm, 1
	}
	other, near := "", math.Inf(1)
	var in, to float64
	middle, half := (g.InnerMm+g.OuterMm)/2, pressedShare*(g.OuterMm-g.InnerMm)/2
	for _, o := range stack {
		inner, outer, ok := o.radii(p.Z(face + out*overlapMm/2))
		if o == p || !ok {
			continue
		}
		if 2*inner <= middle-half && 2*outer >= middle+half {
			return
		}
		if off := max(2*inner-middle, middle-2*outer); off < near {
			other, near, in, to = o.Title, off, 2*inner, 2*outer
		}
	}
	if other != "" {
		r.add(Finding{
			Severity: Stop, Part: p.Part, Feature: g.Name, Pos: entryPos(v.p, g.Name), What: "the O-ring of " + g.Name + " lies where no face of " + other + " stands against it", Numbers: r.mm(g.InnerMm) + " to " + r.mm(g.OuterMm) + "; the face is from " + r.mm(in) + " to " + r.mm(to),
			Rule: "an O-ring in a face is squeezed by the face opposite", Source: "by geometry", Fix: "an O-ring of the diameter of that face",
		})
	}
}

// entersMm is how far a spigot reaches into a bore at the least, and how much smaller it is at
// the most, on radius. Common practice, no source.
const entersMm, entersOff = 1.0, 0.3

// leadSide looks for lead-ins at the end of a bore that nothing enters by, where something
// enters by the other.
func (r *reviewer) leadSide(p standingIn) {
	v := r.viewOf(p.Part)
	for _, c := range v.inside {
		if from := r.entersFrom(p.standingPart, c, p.stack); from != "" {
			v.leadsFrom(c, from)
		}
	}
}

// leadsFrom looks for a bore whose only lead-in is at the other face than that by which
// something enters it.
func (v *view) leadsFrom(c *cylinder, from parts.Face) {
	if h := v.chamferOn(c, from.Other()); h != nil && h.For == "lead-in" && v.chamferOn(c, from) == nil {
		v.report(Check, h.Edge.Value, h.Edge.Pos, Finding{
			What: h.Edge.Value + " is a lead-in, and what goes into " + c.Name + " enters by the " + string(from), Rule: "a lead-in is where a part enters", Source: "by the job", Fix: "edge: " + c.Name + "-" + string(from),
		})
	}
}

// entersFrom is the face by which the parts that lie in a bore enter it; empty where none
// does, or some by either.
func (r *reviewer) entersFrom(p *standingPart, c *cylinder, stack []*standingPart) (from parts.Face) {
	for _, o := range stack {
		if o == p || r.pressedIn(o, p) {
			continue // a press says itself where its parts start
		}
		var long float64
		const stepMm = 0.5
		for z := range middles(c.FromMm, c.ToMm, stepMm) {
			if _, outer, ok := o.radii(p.Z(z)); ok && !geom.Over(outer, c.RadiusMm()) && outer > c.RadiusMm()-entersOff {
				long += stepMm
			}
		}
		if long < entersMm {
			continue
		}
		side := parts.Front
		if p.Own(o.middle()) > c.MidMm() {
			side = parts.Back
		}
		if from != "" && from != side {
			return ""
		}
		from = side
	}
	return from
}

// pressedIn tells whether a press joins two parts.
func (r *reviewer) pressedIn(a, b *standingPart) bool {
	return slices.ContainsFunc(r.job.Of(parts.PressKind), func(j *parts.Joint) bool {
		return j.Press.Shaft.Part == a.Part && j.Press.Bore.Part == b.Part
	})
}

// inLine is the plate that has the motor's flange in line with the shaft which the motor
// drives through a belt or a pair of gears; nil where there is none.
func (r *reviewer) inLine() *view {
	m := r.motor()
	if !m.Drives.Set() || m.Through != "belt" && m.Through != "gear-pair" {
		return nil
	}
	sizes := flangeNumber.FindAllString(m.Flange.Value, -1)
	for p := range everyStanding(r) {
		shaft, v := standing(p.stack, m.Drives.Instance()), r.viewOf(p.Part)
		if shaft != nil && p.standingPart != shaft && v.p.Bore != nil && slices.ContainsFunc(v.pitchCircles(), func(mm float64) bool { return slices.Contains(sizes, number(mm)) }) {
			return v
		}
	}
	return nil
}
