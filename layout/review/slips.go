package review

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// What the ends of rolled and formed parts leave one another, on the diameter. Common
// practice, no source.
const (
	slipLooseMm = 4.0 // play that is too wide to weld
	ledgeMm     = 3.0 // that the one inside stands beyond the other where an end stands on a bore
)

// slips looks at formed ends that are welded to one another: the one slips into the
// other, past its lapped seam, or stands on it.
func (r *reviewer) slips(j *plan.JointPlan) {
	in := r.job.Joint(j.Name)
	end := r.formedEnd
	p := in.Place
	stands := p != nil && !p.Edge() && p.Gap.Mm >= 0
	if stands && (r.formed(in.Weld.Part) || r.formed(in.Weld.To)) {
		end = r.ductEnd
	}
	a, okA := end(in.Weld.Part)
	b, okB := end(in.Weld.To)
	if !okA || !okB {
		r.overHole(j, stands)
		return
	}
	if stands {
		if beside := r.besideMm(in.Weld.Part, in.Weld.To); in.Weld.To.Feature != "outline" || beside < (a.outsideMm+b.insideMm)/2 { // else it is welded beside the bore of a plate
			r.standsOn(j, a, b, beside)
		}
		return
	}
	r.slipsInto(j, a, b)
}

// slipsInto looks at two ends of which one goes into the other, either way.
func (r *reviewer) slipsInto(j *plan.JointPlan, a, b roundEnd) {
	goes, round := a, b
	if a.insideMm-b.outsideMm > b.insideMm-a.outsideMm {
		goes, round = b, a
	}
	play := round.insideMm - goes.outsideMm
	lap, f := max(goes.lapMm, round.lapMm), Finding{
		Part: j.Name, Pos: r.jointPos(j.Name), Numbers: "outside " + r.mm(goes.outsideMm) + ", inside " + r.mm(round.insideMm), OverMm: over(play),
		Rule: "an end slips into the next with a little play", Source: "by geometry", Fix: "sizes that agree: look at what is measured inside and outside",
	}
	r.firstOf(f,
		flaw{geom.Short(play), Finding{Severity: Stop, What: j.Title + ": neither goes into the other"}},
		flaw{geom.Over(play, slipLooseMm), Finding{What: j.Title + ": too much play to weld"}},
		flaw{geom.Over(lap, play/2), Finding{
			What: j.Title + ": the lapped seam does not go in", Numbers: r.mm(play/2) + " of play on one side, the lap stands out " + r.mm(lap), LeftMm: left(play / 2),
			Rule: "what slips in or over passes the lap of a seam", Fix: "no overlap, or more play"}},
	)
}

// standsOn looks at an end that is placed on the face of the other: metal meets metal, and
// inside no ledge is left, by their sizes or by how far the two stand beside one another.
func (r *reviewer) standsOn(j *plan.JointPlan, a, b roundEnd, beside float64) {
	f := Finding{
		Part: j.Name, Pos: r.jointPos(j.Name), Numbers: "inside " + r.mm(a.insideMm) + " on " + r.mm(b.insideMm),
		Rule: "an end that stands on another meets its metal", Source: "by geometry", Fix: "sizes that agree, or a gap below 0 where it goes in",
	}
	out, in, ledge := min(a.outsideMm, b.outsideMm), max(a.insideMm, b.insideMm), math.Abs(a.insideMm-b.insideMm)
	open, wide := min(a.insideMm, b.insideMm) > 0, math.Abs(a.outsideMm-b.outsideMm) // where the outsides agree, one wall is thicker
	r.firstOf(f,
		flaw{!geom.Some(out - in), Finding{
			What: j.Title + ": the one stands in the opening of the other and on nothing", Numbers: "outside " + r.mm(out) + ", inside " + r.mm(in), LeftMm: left(out - in)}},
		flaw{geom.Over(ledge, ledgeMm) && geom.Over(wide, ledgeMm) && open, Finding{What: j.Title + ": the insides leave a ledge", OverMm: over(ledge), Rule: ductRule, Source: practice}},
		flaw{geom.Over(2*beside, ledgeMm) && open, Finding{
			What: j.Title + ": the one stands beside the opening of the other", Numbers: r.mm(beside) + " from middle to middle", OverMm: over(beside),
			Rule: ductRule, Source: practice, Fix: "at: that puts the one round end over the other"}},
	)
}

// ductRule is what two openings that lie over one another are held to.
const ductRule = "a duct runs through a joint without a step"

// What of holes in a face is meant for a round end that is welded there: the nearest, where that is no smaller than half of it
// and the two lie over one another, or one that is nearly as wide as the end wherever it lies. Common practice, no source.
const (
	halfOf   = 0.5
	likeOf   = 0.1 // how far the two may differ, as a share
	onFaceMm = 3.0 // how far off the face an end stands at the most
)

// overHole looks at the round end of a cone or a transition that is welded on a face with a hole for it.
func (r *reviewer) overHole(j *plan.JointPlan, stands bool) {
	in := r.job.Joint(j.Name)
	end, to, sunk := in.Weld.Part, in.Weld.To, 0.0
	if !r.formed(end) {
		end, to = to, end
	}
	a, ok := r.formedEnd(end)
	b, on, m := r.machine().Standing(end.Instance()), r.machine().Standing(to.Instance()), r.machine()
	if !ok || !r.formed(end) || b == nil || on == nil {
		return
	}
	if in.Place != nil {
		sunk = max(0, -in.Place.Gap.Mm)
	}
	beside, hole := endless, 0.0
	for _, f := range m.Mouths(on) {
		d := f.Group.Hole.Size.Size.Nominal.Mm
		for _, at := range f.At {
			p, box := b.Pose.Inverse().Apply(at), b.Solid.Box()
			if f.Used || d < halfOf*a.insideMm || geom.Some(f.Out.Cross(b.Pose.Z).Len()) || min(math.Abs(p.Z-box.Low.Z), math.Abs(p.Z-box.High.Z)) > onFaceMm+sunk {
				continue
			}
			p.Z = 0
			off := p.Sub(r.middle(end)).Len()
			if off < beside && (off < (a.outsideMm+d)/2 || math.Abs(d-a.insideMm) <= likeOf*a.insideMm) {
				beside, hole = off, d
			}
		}
	}
	switch face := (roundEnd{outsideMm: endless, insideMm: hole}); {
	case hole == 0:
	case stands:
		r.standsOn(j, a, face, beside)
	case geom.Over(2*beside, max(ledgeMm, hole-a.outsideMm)):
		r.standsOn(j, a, roundEnd{endless, a.insideMm, 0}, beside)
	default:
		r.slipsInto(j, a, face)
	}
}

// besideMm is how far the middles of two ends lie apart, across the second's axis; 0 where one of them stands nowhere.
func (r *reviewer) besideMm(a, b parts.JointRef) float64 {
	m := r.machine()
	on, to := m.Standing(a.Instance()), m.Standing(b.Instance())
	if on == nil || to == nil {
		return 0
	}
	off := on.Pose.Apply(r.middle(a)).Sub(to.Pose.Apply(r.middle(b)))
	return off.Sub(to.Pose.Z.Times(off.Dot(to.Pose.Z))).Len()
}

// middle is that of an end, in the frame of its part: off the axis where a cone or a transition leans to it.
func (r *reviewer) middle(ref parts.JointRef) assembly.Vec {
	switch p := r.job.Part(ref.Part); {
	case p.Kind == parts.TransitionPiece && ref.Feature == "round-end":
		return assembly.Vec{X: p.Transition.Offset.X.Mm, Y: p.Transition.Offset.Y.Mm}
	case p.Kind == parts.Cone && ref.Feature == "small-end":
		return assembly.Vec{Y: p.Frustum.Offset.Mm}
	}
	return assembly.Vec{}
}

// chokes looks for a flat part between two that are bolted whose bore is narrower than both of theirs, where one of
// these ends a duct, and that has no other holes there to let through what comes.
func (r *reviewer) chokes(j *parts.Joint) {
	bore := func(ref parts.JointRef) float64 {
		if p := r.job.Part(ref.Part); p.Flat() && p.Bore != nil {
			return p.Bore.Size.Nominal.Mm
		}
		return 0
	}
	r.opensInto(j.Bolt.Through, j.Bolt.Into, bore(j.Bolt.Through))
	r.opensInto(j.Bolt.Into, j.Bolt.Through, bore(j.Bolt.Into))
	through, into := bore(j.Bolt.Through), bore(j.Bolt.Into)
	way := min(through, into)
	if way == 0 || !r.endsDuct(j.Bolt.Through) && !r.endsDuct(j.Bolt.Into) {
		return
	}
	for _, ref := range j.Bolt.Stack {
		p, open := r.job.Part(ref.Part), bore(ref)
		past := func(h hole) bool { return h.centreMm() < way/2 }
		if p.For == parts.Gasket || open == 0 || !geom.Over(way-open, ledgeMm) || slices.ContainsFunc(r.viewOf(ref.Part).holes, past) {
			continue
		}
		r.add(Finding{
			Part: p.Name.Value, Feature: "bore", Pos: p.Bore.Pos, What: p.Title.Value + " narrows the way between the two that it lies between",
			Numbers: r.mm(open) + " between " + r.mm(through) + " and " + r.mm(into), LeftMm: left(open),
			Rule: ductRule, Source: practice, Fix: "a bore as wide as theirs, or accept it where it is to hold back",
		})
	}
}

// opensInto looks for the one hole of a part, or its bore, in the middle of the bolts that hold the flange of a duct on it, that is narrower
// than the bore of that, and for none at all where the part goes on elsewhere. What holds back on purpose has several.
func (r *reviewer) opensInto(flange, to parts.JointRef, boreMm float64) {
	v, title := r.viewOf(to.Part), r.job.Part(flange.Part).Title.Value
	duct, is := r.ductOn(flange)
	if boreMm == 0 || !is {
		return
	}
	middle, pcd := v.circleOf(to.Feature)
	within := seq.Keep(v.holes, func(h hole) bool { return h.name != to.Feature && geom.Distance(h.middle(), middle) < pcd/2 })
	narrows := func(name string, pos parts.Pos, mm, besideMm float64) {
		v.report(Check, name, pos, Finding{
			What: name + " of " + v.p.Title.Value + " narrows the way of the duct that is bolted on there", Numbers: v.mm(mm) + " before " + v.mm(besideMm) + " in " + title, LeftMm: left(mm),
			Rule: ductRule, Source: practice, Fix: "a hole as wide as that, or accept it where it is to hold back",
		})
	}
	switch bore := v.p.Bore; {
	case len(within) == 1 && bore == nil:
		if h := within[0]; h.group != nil && h.thread == nil && geom.Distance(h.middle(), middle) <= faceOffMm && geom.Over(boreMm/2-h.radiusMm, ledgeMm) {
			narrows(h.name, h.pos, 2*h.radiusMm, boreMm)
		}
	case len(within) > 0:
	case bore != nil:
		if d := bore.Size.Nominal.Mm; duct.sheet && middle.LengthMm() <= faceOffMm && geom.Over(duct.insideMm-d, ledgeMm) {
			narrows("bore", bore.Pos, d, duct.insideMm)
		}
	case v.p.Flat() && duct.sheet && v.toOutline(&hole{a: middle, b: middle}) > 0 && r.elsewhere(to, flange):
		v.report(Check, "", v.p.Name.Pos, Finding{
			What: v.p.Title.Value + " shuts the duct that is bolted on there: it has no opening inside the bolts", Numbers: v.mm(boreMm) + " in " + title,
			Rule: "a duct leads on through what carries it", Source: practice, Fix: "a bore in it, or accept it where nothing is to come through",
		})
	}
}

// elsewhere tells whether another joint holds a part that one with a flange holds.
func (r *reviewer) elsewhere(ref, flange parts.JointRef) bool {
	return slices.ContainsFunc(r.job.Joints, func(j *parts.Joint) bool {
		is := func(of parts.Instance) func(parts.JointRef) bool {
			return func(o parts.JointRef) bool { return o.Instance() == of }
		}
		return j.Some(is(ref.Instance())) && !j.Some(is(flange.Instance()))
	})
}

// duct is how wide the end of a tube, a cone or a transition is inside, 0 of what is not round, and whether it is one of sheet.
type duct struct {
	insideMm float64
	sheet    bool
}

// ductOn is the end of a duct that is welded to a flat part or pressed into it; false without one.
func (r *reviewer) ductOn(ref parts.JointRef) (duct, bool) {
	bore := parts.JointRef{Part: ref.Part, Copy: ref.Copy, Feature: "bore"}
	for _, j := range r.job.Joints {
		if j.Weld == nil && j.Press == nil || !j.Some(bore.Is) {
			continue
		}
		a, b := j.Ends()
		for _, o := range []parts.JointRef{a, b} {
			if kind := r.job.Part(o.Part).Kind; slices.Contains([]parts.Kind{parts.Tube, parts.Cone, parts.TransitionPiece}, kind) {
				end, _ := r.ductEnd(o)
				return duct{end.insideMm, kind != parts.Tube}, true
			}
		}
	}
	return duct{}, false
}

// endsDuct tells whether a duct ends in a flat part.
func (r *reviewer) endsDuct(ref parts.JointRef) bool {
	_, is := r.ductOn(ref)
	return is
}

// roundEnd is the outside and inside diameter of an end; one is 0 or infinite
// where the part has no such surface. lapMm is what a lapped seam stands proud there.
type roundEnd struct{ outsideMm, insideMm, lapMm float64 }

// formedEnd is the round end of a cone or transition, that of a tube by its bore, the bore of a plate, the
// inside of a flight or an outside that it goes round.
func (r *reviewer) formedEnd(ref parts.JointRef) (roundEnd, bool) {
	p, c := r.job.Part(ref.Part), r.stepOf(ref)
	if sheet := p.Formed(); r.formed(ref) {
		size, ok := formedMm(p, ref.Feature)
		outside, inside := sheet.Walls()
		var lap float64
		if sheet.Overlap.Mm > 0 {
			lap = sheet.Thickness.Mm
		}
		return roundEnd{size + outside, size - inside, lap}, ok
	}
	switch {
	case c != nil && c.Inside && p.Kind == parts.Tube:
		return roundEnd{outsideMm: 2 * r.viewOf(ref.Part).wideMm(), insideMm: 2 * c.RadiusMm()}, true
	case p.Kind == parts.FlightPart && ref.Feature == "inside":
		return roundEnd{outsideMm: endless, insideMm: p.Flight.Shaft.Mm}, true
	case c != nil && c.Inside && p.Flat():
		return roundEnd{outsideMm: endless, insideMm: c.Drawn.Size.Nominal.Mm}, true
	case c != nil && !c.Inside && p.Turned():
		return roundEnd{outsideMm: c.Drawn.Size.Nominal.Mm}, true
	}
	return roundEnd{}, false
}

// formed tells whether an end is that of a cone or transition of sheet.
func (r *reviewer) formed(ref parts.JointRef) bool {
	p := r.job.Part(ref.Part)
	return p.Formed() != nil && !p.Turned()
}

// ductEnd is a formedEnd that stands on another or carries it: a tube's, by its outside too, with its bore, and
// a plate's, by its outline too, which is that of its bore.
func (r *reviewer) ductEnd(ref parts.JointRef) (end roundEnd, ok bool) {
	v := r.viewOf(ref.Part)
	if v.p.Flat() && v.p.Bore != nil && ref.Feature == "outline" {
		ref.Feature = "bore"
	}
	end, ok = r.formedEnd(ref)
	if v.p.Kind == parts.Tube && len(v.inside) > 0 {
		end.insideMm = 2 * seq.Least(v.inside, (*cylinder).RadiusMm)
	}
	return end, ok
}

// formedMm is the diameter of a round end of a cone or transition as it is given; false for another end.
func formedMm(p *parts.Part, end string) (mm float64, ok bool) {
	switch end {
	case "small-end":
		return p.Frustum.Small.Mm, true
	case "large-end":
		return p.Frustum.Large.Mm, true
	case "round-end":
		return p.Transition.Diameter.Mm, true
	}
	return 0, false
}
