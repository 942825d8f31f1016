package review

import (
	"cmp"
	"iter"
	"math"
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// standingSeals looks at seals where they stand: at what their lip runs on, and at what an
// O-ring in an end face is squeezed against.
func (r *reviewer) standingSeals(p standingIn) {
	for _, s := range p.v.q.Section.Seals {
		r.lipOn(p, s)
	}
	r.lipAway(p)
	for _, g := range p.v.q.Grooves {
		switch {
		case g.ORing == nil:
		case g.Face != "":
			r.facesRing(p, g)
		default:
			r.roundRing(p, g)
		}
	}
}

// standingIn is a part in its place, with all others of the job that stand along its axis: places along that are
// counted from its front face.
type standingIn struct {
	stand.OnAxis
	v     *view
	along stand.Line
}

func everyStanding(r *reviewer) iter.Seq[standingIn] {
	if m := r.machine(); r.standing == nil {
		for b, of := range m.Parts() {
			others := seq.Keep(m.Along(b.Pose), func(o stand.OnAxis) bool { return o.ID != b.ID })
			r.standing = append(r.standing, standingIn{stand.On(b.Pose, b, of), r.viewOf(of.Part.Name.Value), others})
		}
	}
	return slices.Values(r.standing)
}

// lipOn looks for a seal on a shaft of another size than its own, and for a step that does not say that a lip runs on it: what a
// land has to be is asked of those that do.
func (r *reviewer) lipOn(p standingIn, s plan.SealMark) {
	for _, o := range p.along {
		mid := s.Span().MidMm()
		_, outer, ok := o.Radii(mid)
		if !ok || 2*outer > s.OuterMm {
			continue
		}
		if geom.Alike(2*outer, s.InnerMm) {
			r.lipUnsaid(p, o, mid)
			continue
		}
		if c := at(p.v.inside, s.Span().MidMm()); c != nil {
			p.v.report(Stop, c.Name, c.Drawn.Pos, Finding{
				What: "the seal of " + c.Name + " is not one for " + r.machine().Title(o.ID), Numbers: c.Seat + " on " + r.mm(2*outer),
				Rule: "a lip runs on the shaft of its size", Source: "ISO 6194-1", Fix: "one seal on both drawings",
			})
		}
	}
}

// lipUnsaid looks for a step under the lip of a seal, at a place along that, whose seat names none.
func (r *reviewer) lipUnsaid(p standingIn, o stand.OnAxis, mid float64) {
	of := r.viewOf(o.Of.Part.Name.Value)
	bore, land := at(p.v.inside, mid), at(of.outside, o.Own(mid))
	if bore == nil || land == nil || of.seal(land) != nil || parts.SeatUse(land.Seat) == parts.ASeal {
		return
	}
	of.report(Check, land.Name, land.Drawn.Pos, Finding{
		What: "the lip of the seal in " + bore.Name + " of " + p.Of.Part.Title.Value + " runs on " + land.Name + ", which does not say so", Numbers: bore.Seat,
		Rule: "a land is turned, hardened and chamfered for the lip that runs on it", Source: "DIN 3760 as seal makers print it",
		Fix: "seat: " + bore.Seat + ", on a step of its own where the lip runs",
	})
}

// lipAway looks, on both sides of the flight of an auger, for seals between it and the nearest bearing of which no lip
// looks at the flight, and tells of the first of each side.
func (r *reviewer) lipAway(flighted standingIn) {
	wet := slices.ContainsFunc(r.job.Of(parts.WeldKind), func(j *parts.Joint) bool {
		return r.job.Part(j.Weld.Part.Part).Kind == parts.FlightPart && j.Weld.To.Instance().ID() == flighted.ID
	})
	if !wet {
		return
	}
	for _, side := range []float64{-1, 1} {
		if away := r.allAway(flighted, side); away != nil {
			r.add(*away)
		}
	}
}

// allAway is the first seal on a side of a flight, +1 or −1, of which no lip looks at it; nil where one does, or none is.
func (r *reviewer) allAway(flighted standingIn, side float64) (away *Finding) {
	bearing, middle := r.nearestBearing(flighted, side), flighted.Middle()
	for _, p := range flighted.along {
		name := p.Of.Part.Name.Value
		for _, s := range p.Of.Out.Section.Seals {
			z, c := p.Z(s.Span().MidMm()), at(r.viewOf(name).inside, s.Span().MidMm())
			if c == nil || bearing == side*endless || (z-middle)*(z-bearing) >= 0 {
				continue
			}
			if looks(p, s)*side < 0 {
				return nil
			}
			away = cmp.Or(away, &Finding{
				Part: name, Feature: c.Name, Pos: c.Drawn.Pos, What: "the lip of the seal in " + c.Name + " looks away from the flight on " +
					r.machine().Title(flighted.ID) + ", and no other keeps that from the bearing", Numbers: c.Seat,
				Rule: "a lip keeps back what it looks at", Fix: "lip: the other way",
			})
		}
	}
	return away
}

// looks is which way along the axis the lip of a seal looks, +1 or −1.
func looks(p stand.OnAxis, s plan.SealMark) float64 {
	if s.LipBack {
		return p.Z(1) - p.Z(0)
	}
	return p.Z(0) - p.Z(1)
}

// nearestBearing is where the bearing nearest to the middle of a part on a side, +1 or −1, stands on its axis, on the part
// itself or another; endless without any.
func (r *reviewer) nearestBearing(p standingIn, side float64) float64 {
	near, z, line := side*endless, p.Middle(), append(stand.Line{p.OnAxis}, p.along...)
	for _, j := range r.job.Of(parts.BearingKind) {
		on, c := line.Find(j.Bearing.Cone.Instance()), r.stepOf(j.Bearing.Cone)
		if on == nil || c == nil {
			continue
		}
		if at := on.Z(c.MidMm()); side*(at-z) > 0 && side*at < side*near {
			near = at
		}
	}
	return near
}

// pressedShare is how much of a groove's width, about its middle, has a face opposite at the
// least. Common practice, no source.
const pressedShare = 0.5

// boltedNowhere tells whether what is bolted to a body, or that itself, has no place, for its joint is wrong.
func (r *reviewer) boltedNowhere(id string) bool {
	return slices.ContainsFunc(r.job.Of(parts.BoltKind), func(j *parts.Joint) bool {
		a, b := j.Ends()
		return (a.Instance().ID() == id || b.Instance().ID() == id) && (r.machine().Standing(a.Instance()) == nil || r.machine().Standing(b.Instance()) == nil)
	})
}

// facesRing looks for an O-ring in a face against which another part stands, but not where
// the ring lies.
func (r *reviewer) facesRing(p standingIn, g plan.GrooveRow) {
	v, m := p.v, r.machine()
	if r.boltedNowhere(p.ID) {
		return
	}
	face, out := g.FromMm, -1.0
	if g.Face == parts.Back {
		face, out = g.ToMm, 1
	}
	other, near := "", endless
	var in, to float64
	middle, half := (g.InnerMm+g.OuterMm)/2, pressedShare*(g.OuterMm-g.InnerMm)/2
	for _, o := range p.along {
		inner, outer, ok := o.Radii(face + out*overlapMm/2)
		if !ok {
			continue
		}
		if 2*inner <= middle-half && 2*outer >= middle+half {
			return
		}
		if off := max(2*inner-middle, middle-2*outer); off < near {
			other, near, in, to = m.Title(o.ID), off, 2*inner, 2*outer
		}
	}
	f := Finding{Rule: "an O-ring in a face is squeezed by the face opposite", Source: "by geometry", Fix: "an O-ring of the diameter of that face"}
	on, beside := r.facedBy(p, middle/2, face+out*overlapMm/2)
	switch {
	case other != "":
		f.Numbers = "the face is from " + r.mm(in) + " to " + r.mm(to)
	case on > 0 && on < 1: // of what stands beside its axis
		other, f.Numbers, f.Fix = beside, number(math.Round(100*on))+" % of it lies on one", "a place where the face goes all round it"
	default:
		return
	}
	f.What, f.Numbers = "the O-ring of "+g.Name+" lies where no face of "+other+" stands against it", r.mm(g.InnerMm)+" to "+r.mm(g.OuterMm)+"; "+f.Numbers
	if on == 0 && (in >= g.OuterMm || to <= g.InnerMm) { // something else is to stand there
		f.What, f.Numbers = "the O-ring of "+g.Name+" lies where nothing stands against it", f.Numbers+", of "+other
		f.Fix = "a joint that puts the part with that face there, or an O-ring of the diameter of the face that is"
	}
	v.report(Stop, g.Name, entryPos(v.p, g.Name), f)
}

// roundRing looks for an O-ring in a round that lies beyond the bore or the outside that it seals against, of a part that
// is joined to its own, as they stand.
func (r *reviewer) roundRing(p standingIn, g plan.GrooveRow) {
	var lands []geom.Span
	on := ""
	for _, o := range p.along {
		other := r.viewOf(o.Of.Part.Name.Value)
		if other == nil || !other.p.NamedIn(p.v.step(g.In).Seat) && !p.v.joinedWith(other.p) {
			continue
		}
		for _, c := range other.steps() {
			if c.Inside != g.Inside && math.Abs(2*c.RadiusMm()-g.AgainstMm) < againstMm {
				lands, on = append(lands, o.Span(geom.Between(c.FromMm+other.p.BevelMm(c.Name+"-front"), c.ToMm-other.p.BevelMm(c.Name+"-back")))), c.Name+" of "+r.machine().Title(o.ID)
			}
		}
	}
	held := func(z float64) bool {
		return slices.ContainsFunc(lands, func(s geom.Span) bool { return s.Holds(z) })
	}
	middle, half := g.Span().MidMm(), pressedShare*g.Span().LengthMm()/2
	if len(lands) == 0 || held(middle-half) && held(middle+half) {
		return
	}
	last, severity, lies := lands[len(lands)-1], Stop, " lies beyond "
	if held(middle) {
		severity, lies = Check, " lies partly beyond "
	}
	p.v.report(severity, g.Name, entryPos(p.v.p, g.Name), Finding{
		What: "the O-ring of " + g.Name + lies + on + ", which it seals against", Numbers: r.mm(g.FromMm) + " to " + r.mm(g.ToMm) +
			" from the front; that is from " + r.mm(last.FromMm) + " to " + r.mm(last.ToMm) + " without its bevels",
		Rule: "an O-ring lies on the round that it seals against", Source: "by geometry", Fix: "move the groove, or a longer " + on,
	})
}

// facedBy is the share of a circle about the axis of a part, so far behind its front face, that lies in the metal of others, and
// the title of the last of these.
func (r *reviewer) facedBy(p standingIn, radius, depthMm float64) (share float64, by string) {
	const rays = 72
	for _, deg := range geom.Evenly(rays) {
		at := assembly.Clock(radius, deg)
		at.Z = -depthMm
		at = p.Pose.Apply(at)
		for b := range r.machine().Parts() {
			if b.ID != p.ID && b.Dist(at) < 0 {
				share, by = share+1.0/rays, r.machine().Title(b.ID)
				break
			}
		}
	}
	return math.Round(share*rays) / rays, by
}

// entersMm is how far a spigot reaches into a bore at the least, and how much smaller it is at
// the most, on radius. Common practice, no source.
const entersMm, entersOff = 1.0, 0.3

// leadSide looks for lead-ins at the end of a bore that nothing enters by, where something
// enters by the other.
func (r *reviewer) leadSide(p standingIn) {
	for _, c := range p.v.inside {
		if from := r.entersFrom(p, c); from != "" {
			p.v.leadsFrom(c, from)
		}
	}
}

// leadsFrom looks for a bore whose only lead-in is at the other face than that by which
// something enters it.
func (v *view) leadsFrom(c *cylinder, from parts.Face) {
	if h := v.chamferOn(c, from.Other()); h != nil && h.For == "lead-in" && v.chamferOn(c, from) == nil {
		v.report(Check, h.Edge.Value, h.Edge.Pos, Finding{
			What: h.Edge.Value + " is a lead-in, and what goes into " + c.Name + " enters by the " + string(from), Rule: "a lead-in is where a part enters",
			Source: "by the job", Fix: "edge: " + c.Name + "-" + string(from),
		})
	}
}

// entersFrom is the face by which the parts that lie in a bore enter it; empty where none
// does, or some by either.
func (r *reviewer) entersFrom(p standingIn, c *cylinder) (from parts.Face) {
	for _, o := range p.along {
		if !o.Whole().Meets(c.Span()) {
			continue
		}
		if r.pressedIn(o.Of.Part.Name.Value, p.v.p.Name.Value) {
			if from = shoulderAt(o, c); from != "" {
				return from
			}
			continue // a press says itself where its parts start
		}
		var long float64
		const stepMm = 0.5
		for z := range middles(c.FromMm, c.ToMm, stepMm) {
			if _, outer, ok := o.Radii(z); ok && !geom.Over(outer, c.RadiusMm()) && outer > c.RadiusMm()-entersOff {
				long += stepMm
			}
		}
		if long < entersMm {
			continue
		}
		side := words.Either(o.Middle() > c.MidMm(), parts.Back, parts.Front)
		if from != "" && from != side {
			return ""
		}
		from = side
	}
	return from
}

// shoulderAt is the end of a bore at which what is pressed into it is larger, and has to come from; empty for none or both.
func shoulderAt(o stand.OnAxis, c *cylinder) parts.Face {
	whole := o.Whole()
	wider := func(fromMm, toMm float64) bool {
		const stepMm = 0.5
		for z := range middles(fromMm, toMm, stepMm) {
			if _, outer, ok := o.Radii(z); ok && geom.Over(outer, c.RadiusMm()+stepMm) {
				return true
			}
		}
		return false
	}
	switch front, back := wider(whole.FromMm, c.FromMm), wider(c.ToMm, whole.ToMm); {
	case front && !back:
		return parts.Front
	case back && !front:
		return parts.Back
	}
	return ""
}

// pressedIn tells whether a press joins two parts.
func (r *reviewer) pressedIn(a, b string) bool {
	return slices.ContainsFunc(r.job.Of(parts.PressKind), func(j *parts.Joint) bool {
		return j.Press.Shaft.Part == a && j.Press.Bore.Part == b
	})
}

// inLine is the plate that has the motor's flange in line with the shaft which the motor
// drives through a belt or a pair of gears; nil where there is none.
func (r *reviewer) inLine() *view {
	m := r.motor()
	if !m.Drives.Set() || m.Through != "belt" && m.Through != "gear-pair" {
		return nil
	}
	sizes, shaft := flangeNumber().FindAllString(m.Flange.Value, -1), r.machine().Standing(m.Drives.Instance())
	if shaft == nil {
		return nil
	}
	for _, p := range r.machine().Along(shaft.Pose) {
		if v := r.viewOf(p.Of.Part.Name.Value); p.ID != shaft.ID && v.p.Bore != nil && slices.ContainsFunc(v.pitchCircles(), func(mm float64) bool { return slices.Contains(sizes, number(mm)) }) {
			return v
		}
	}
	return nil
}

// space reports what shows where the parts stand in space.
func space(r *reviewer) {
	for _, p := range r.machine().Problems {
		if p.Kind == plan.FlightBackward && r.inLine() != nil {
			continue // which way it turns is not known: said of the motor
		}
		f := Finding{Part: p.Joint, Feature: p.Feature, What: p.What, bodies: p.Bodies, astray: elsewhere(p)}
		if by := map[plan.ProblemKind]int{plan.PlaceTurned: 2, plan.PlaceMisses: 2, plan.OverlapMisses: 5}[p.Kind]; f.astray {
			f.doubted = append(strings.Split(p.Args[by].Text, ", "), p.Joint)
		}
		if p.Kind == plan.PathBlocked && len(r.pl.Faults) > 0 {
			f.bodies = nil // without a joint the order is another
		}
		r.problem(p, f)
	}
}

// missesMuch is from where on a joint that does not close leaves parts elsewhere than they are meant to be: more than bolts have play, mm.
// Common practice, no source.
const missesMuch = 1.0

// elsewhere tells whether a joint misses so much, or by a turn, that what its parts lie in may only follow from that.
func elsewhere(p plan.Problem) bool {
	switch p.Kind {
	case plan.PlaceTurned:
		return true
	case plan.PlaceMisses:
		return p.Args[1].Value >= missesMuch
	case plan.OverlapMisses:
		return p.Args[4].Value >= missesMuch
	}
	return false
}
