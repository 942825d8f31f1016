package review

import (
	"math"
	"slices"

	"centrepop/layout/fits"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// chamfer looks for chamfers that are larger than the wall or plate they are
// on, that meet one another, or that run into a hole.
func (v *view) chamfer(c *parts.Chamfer) {
	name, end := c.On()
	step, title := v.step(name), "the "+c.Word()+" "+c.Edge.Value
	if step == nil {
		v.chamferMeets(c, name, nil, v.lengthMm)
		return
	}
	v.chamferMeets(c, name, step, step.LengthMm())
	if c.Sphere {
		return // it takes the whole end; [crowned]
	}
	if without, numbers := v.noEdge(step, end == parts.Front); without != "" {
		v.report(Check, c.Edge.Value, c.Edge.Pos, Finding{
			What: title + " lies at " + without, Numbers: c.Word() + " " + v.mm(c.Size.Mm) + "; " + numbers, OverMm: over(c.Size.Mm),
			Rule: "a chamfer breaks an edge, and none is there", Source: "by geometry", Fix: "no chamfer, or one at the edge beside a smaller outside or a larger bore",
		})
		return
	}
	const mostOfSeat = 1.0 / 3
	if seat := step.Seat != "" || step.fitted(); seat && c.For != "weld" && geom.Over(c.Size.Mm, mostOfSeat*step.LengthMm()) {
		v.report(Check, c.Edge.Value, c.Size.Pos, Finding{
			What: title + " takes much of the seat", Numbers: v.mm(c.Size.Mm) + " of " + v.mm(step.LengthMm()), OverMm: over(c.Size.Mm),
			Rule: "a chamfer leaves two thirds of its seat at the least", Fix: "a shorter chamfer",
		})
	}
	v.chamferWall(c, step, end, title)
}

// chamferWall looks at what a chamfer leaves of its wall, and at holes that it runs into.
func (v *view) chamferWall(c *parts.Chamfer, step *cylinder, end parts.Face, title string) {
	acrossMm, faceMm := c.AcrossMm(), parts.At(end, step.FromMm, step.ToMm)
	wallMm := v.wallAt(faceMm - end.Outward()*c.Size.Mm/2)
	if !v.turned() && step.Inside {
		wallMm = v.flatWall()
	}
	if dome := c.Radius.Set() && len(v.inside) == 0; !dome && !geom.Over(wallMm, acrossMm) {
		v.report(Stop, c.Edge.Value, c.Size.Pos, Finding{
			What: title + " is larger than the wall", Numbers: v.mm(acrossMm) + " across, wall " + v.mm(wallMm),
			Rule: "a chamfer leaves a face", Source: "by geometry", Fix: "a smaller chamfer or a thicker wall",
		})
		return
	}
	if h := v.chamferHole(step, acrossMm, faceMm); h != nil {
		v.report(Check, c.Edge.Value, c.Size.Pos, Finding{
			What:    title + " runs into " + h.name,
			Numbers: v.mm(acrossMm) + " across on " + v.mm(2*step.RadiusMm()) + ", " + h.name + " " + v.mm(2*h.radiusMm) + " at " + v.mm(h.centreMm()) + " from the centre",
			OverMm:  over(acrossMm), Rule: "a chamfer stays clear of holes", Source: "by geometry", Fix: "a smaller chamfer, or move the holes",
		})
	}
}

// noEdge tells of an end of a step at which no edge stands free what is there, with its size: the floor of
// a blind bore, or a step that does not go back from it.
func (v *view) noEdge(step *cylinder, front bool) (what, numbers string) {
	next, behind := step.neighbours()
	if !front {
		next = behind
	}
	switch {
	case next == nil && step.Inside && !front && geom.Over(v.lengthMm, step.ToMm):
		return "the floor of a blind bore", v.mm(v.lengthMm-step.ToMm) + " of metal behind it"
	case next == nil || next.Undercut != nil || step.Undercut != nil:
	case !geom.Short(step.sign() * (next.endMm(!front) - step.endMm(front))):
		return "no edge: " + next.Name + " begins there", v.mm(2*next.endMm(!front)) + " beside " + v.mm(2*step.endMm(front)) + " on diameter"
	}
	return "", ""
}

// endMm is the radius of a step at its front or its back, of a cone there.
func (c *cylinder) endMm(front bool) float64 {
	if c.Drawn.Taper == nil || (c.Drawn.Taper.Toward == parts.Front) != front {
		return c.RadiusMm()
	}
	return c.Drawn.Taper.SmallMm(2*c.RadiusMm(), c.LengthMm()) / 2
}

// knifeMm is the land under which what is left between two cuts is a knife edge, that cuts the hand and breaks
// out. Common practice, no source.
const knifeMm = 0.3

// chamferMeets looks for what is cut at the other end of the same edge: a chamfer, or the undercut of its step.
func (v *view) chamferMeets(c *parts.Chamfer, name string, step *cylinder, roomMm float64) {
	meets := func(what string, otherMm float64, pos parts.Pos, edge string, wanted bool) {
		f := Finding{
			What: what + " of " + name + " overlap", Numbers: v.mm(c.Size.Mm) + " and " + v.mm(otherMm) + " in " + v.mm(roomMm),
			Rule: "two chamfers, or one and an undercut, leave a land between them", Source: "by geometry", Fix: "smaller ones",
		}
		land := roomMm - c.Size.Mm - otherMm
		switch {
		case geom.Short(land):
			v.report(Stop, edge, pos, f)
		case geom.Over(knifeMm, land) && !wanted:
			f.What, f.Source, f.LeftMm = what+" of "+name+" leave a knife edge between them", "", left(max(0, land))
			f.Numbers += "; wanted " + v.mm(knifeMm) + " between"
			v.report(Check, edge, pos, f)
		}
	}
	for o := range seq.Refs(v.p.Chamfers) {
		if o.Edge.Value == name+"-back" && c.Edge.Value == name+"-front" {
			meets("the chamfers at both ends", o.Size.Mm, o.Size.Pos, o.Edge.Value, sharp(c) || sharp(o))
		}
	}
	if step != nil && step.Undercut != nil {
		meets("the "+c.Word()+" and the undercut", step.Undercut.WidthMm, c.Size.Pos, c.Edge.Value, sharp(c))
	}
}

// sharp tells a chamfer that may end in an edge: for a weld, or round.
func sharp(c *parts.Chamfer) bool { return c.For == "weld" || c.Radius.Set() }

// crowned looks for a spherical end that is to lie flat: one that something is
// required of, or that a pattern of holes bolts to something.
func (v *view) crowned(c *parts.Chamfer) {
	if !c.Sphere {
		return
	}
	_, face := c.On()
	flat := Finding{
		Numbers: "SR " + v.mm(c.Radius.Mm) + " on " + v.mm(2*c.Radius.Mm*math.Sin(2*(90-c.Angle.Deg)*math.Pi/180)),
		Rule:    "a crowned end touches in a point", Source: "by geometry", Fix: "a flat end with a radius on its edge",
	}
	for _, q := range v.p.Require {
		if q.Of.Value == string(face) || q.To.Value == string(face) {
			flat.What = "the " + string(face) + " end is crowned and has a requirement of " + string(q.Kind)
			v.report(Stop, c.Edge.Value, q.Pos, flat)
		}
	}
	for _, h := range v.p.Holes {
		if h.Face == face && len(v.holesOf(h.Name.Value)) > 1 {
			flat.What = "the " + string(face) + " end is crowned, and " + h.Name.Value + " bolt it to something"
			v.report(Check, c.Edge.Value, h.Pos, flat)
		}
	}
}

// chamferHole is a hole that a chamfer of a step reaches at a face, or nil.
func (v *view) chamferHole(step *cylinder, acrossMm, faceMm float64) *hole {
	return seq.At(v.holes, func(h *hole) bool {
		return h.span().Holds(faceMm) && (step.Inside && geom.Over(step.RadiusMm()+acrossMm, h.nearMm()-h.radiusMm) ||
			!step.Inside && geom.Over(h.farMm()+h.radiusMm, step.RadiusMm()-acrossMm) && h.centreMm() < step.RadiusMm())
	})
}

// flatWall is the least metal between bore and outline of a flat part.
func (v *view) flatWall() float64 {
	centre := hole{}
	return v.toOutline(&centre) - v.inside[0].RadiusMm()
}

// undercut looks for fine seats that end at a shoulder without a relief, where
// the corner radius of the tool keeps what sits there off the shoulder.
func (v *view) undercut(c *cylinder) {
	if c.Drawn.Undercut != nil || c.Seat == "" || !fine(c.Drawn.Size.Fit, 7) {
		return
	}
	shoulders := seq.Keep(c.next(), func(o *cylinder) bool { return geom.Some(c.outBy(o)) })
	severity, needed := v.reliefNeed(c)
	if len(shoulders) == 0 || !needed || v.keptOff(c, shoulders) {
		return
	}
	v.report(severity, c.Name, c.Drawn.Pos, Finding{
		What: c.Name + " ends at the shoulder of " + shoulders[len(shoulders)-1].Name + " without an undercut", Numbers: "seat of " + c.Seat + ", " + v.mm(2*c.RadiusMm()),
		Rule: "a seat that is to touch its shoulder has a relief in the corner, or its counterpart a chamfer larger than the corner",
		Fix:  "add an undercut, or check the counterpart's chamfer against the tool's corner radius",
	})
}

// keptOff tells whether a nut sets the cone of a bearing on a seat, off the only shoulder of that.
func (v *view) keptOff(c *cylinder, shoulders []*cylinder) bool {
	return len(shoulders) == 1 && slices.ContainsFunc(v.planned(parts.BearingKind), func(j *plan.JointPlan) bool {
		return j.A.Part == v.p.Name.Value && j.A.Feature == c.Name && j.Bearing.Adjusted && j.Bearing.KeepOffMm > 0
	})
}

// reliefNeed tells whether what sits in a seat needs a relief in its corner, and
// how badly: a bearing's ring does, as its radius is small; a part of this job
// with a chamfer of its own does not.
func (v *view) reliefNeed(c *cylinder) (Severity, bool) {
	if c.Bears() {
		return Check, true
	}
	for _, p := range v.job.Parts {
		if p != v.p && p.NamedIn(c.Seat) {
			return Note, !v.counterChamfer(p, c)
		}
	}
	return Note, true
}

// counterChamfer tells whether the surface of a part that goes onto a seat, or
// into it, has a chamfer.
func (v *view) counterChamfer(p *parts.Part, c *cylinder) bool {
	edges := v.viewOf(p.Name.Value).edges(2*c.RadiusMm(), 1, !c.Inside)
	if p.Bore != nil && !c.Inside {
		edges = append(edges, "bore-front", "bore-back")
	}
	return slices.ContainsFunc(p.Chamfers, func(h parts.Chamfer) bool { return slices.Contains(edges, h.Edge.Value) })
}

// limitsOf are the limits of a diameter that its fit gives; ok is false where it
// has none.
func limitsOf(s parts.Size) (lowMm, highMm float64, ok bool) {
	f, nominal := s.Fit, s.Nominal.Mm
	switch {
	case len(f.Limits) == 2:
		return f.Limits[0].Mm, f.Limits[1].Mm, true
	case f.PlusMinus.Set():
		return nominal - f.PlusMinus.Mm, nominal + f.PlusMinus.Mm, true
	}
	l, err := fits.Limit(nominal, f.Class.Value)
	return l.MinMm, l.MaxMm, err == nil
}

// leastWallMm is the thinnest wall that is turned and held without a plan for
// it. Common practice, no source.
func leastWallMm(outsideMm float64) float64 { return math.Max(1.5, 0.02*outsideMm) }
