package joint

import (
	"slices"

	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// pressedGroove is the weld in a chamfered bore against the round in it: there is no other
// groove between the two, whatever type the job gives.
func (t *joint) pressedGroove(p *plan.WeldPlan) error {
	drawn, on := weldChamfers(t)
	lacks := ""
	switch {
	case p.Type == "square":
		lacks = "square edges leave nothing between them to fill"
	case p.Type != "bevel":
		lacks = "the round has no edge there for the other half of a V"
	case len(drawn) == 0:
		lacks = "no chamfer is drawn between them for the weld"
	case len(drawn) < p.Sides:
		lacks = "only one of its two sides has a chamfer for the weld"
	}
	if lacks != "" {
		t.refuse(t.in.Pos, plan.GrooveLacking, plan.Named(t.a.text()), plan.Named(t.b.text()), plan.Named(lacks))
		return nil
	}
	c := drawn[0]
	p.Bevelled = on
	g, err := weld.PressedGroove(c.Size.Mm, c.Angle.Deg, weld.CapMm(c.Size.Mm), weldProcesses[p.Process], true)
	if err != nil {
		return err
	}
	p.Symbol, p.AreaMm2, p.ThroatMm = g.Shape.Symbol(), words.Round(g.AreaMm2, 1), words.Round(g.ThroatMm, 2)
	p.BevelDeg, p.OneEdge, p.DepthMm = c.Angle.Deg, true, geom.Clean(c.Size.Mm)
	t.figure("preparation", p.Symbol+", "+words.Angle(p.BevelDeg)+", "+t.w.Size(p.DepthMm)+" deep along the round, no gap", g.Source)
	if p.ThroatMm != 0 {
		t.figure("throat to count on", t.w.Read(p.ThroatMm)+", welded flat or horizontal", "AWS D1.1 partial penetration bevels (from memory)")
	}
	t.figure("chamfer drawn", t.w.Size(c.Size.Mm)+" × "+words.Angle(c.Angle.Deg)+" on "+words.Spaced(c.Edge.Value)+" of "+on, "part")
	return nil
}

// filletLoad tells what a fillet carries by design, where both metals take an
// ordinary weld and EN 1993-1-8 knows them.
func (t *joint) filletLoad(p *plan.WeldPlan) {
	metals, ok := weldMetals(t)
	if !ok || metals.Class > material.WeldPreheated {
		return
	}
	runs, closed := slices.Repeat([]float64{p.LengthMm}, t.in.Weld.Sides), t.ringed(p)
	switch {
	case p.Round && len(p.Flush) < 2 && len(alongs(p.Corners)) == 1: // one run, its ends returned: EN 1993-1-8 clause 4.5.1(1)
		runs, closed = []float64{p.LengthMm}, len(p.Flush) == 0
	case t.derived():
		runs = seq.Map(p.Corners, func(c plan.Corner) float64 { return c.LengthMm })
	}
	l, err := weld.FilletLoad(p.ThroatMm, runs, closed, weld.Side{Material: *t.a.r.Material, ThickMm: t.a.thickMm()}, weld.Side{Material: *t.b.r.Material, ThickMm: t.b.thickMm()})
	if err != nil {
		return
	}
	t.figure("carries by design", t.w.Force(l.ForceN, 0)+" of factored load", "EN 1993-1-8 clause 4.5.3.3, "+l.Weaker)
}

// saddleMm is the length of the weld round a branch of branchMm that stands on a
// round: along the curve where they meet, at the angle and offset of its end.
func (t *joint) saddleMm(branchMm float64) (float64, error) {
	return t.saddle(branchMm).LengthMm()
}

func (t *joint) saddle(branchMm float64) weld.Saddle {
	s := weld.Saddle{MainMm: t.b.radial.Rows[0].OutsideMm, BranchMm: branchMm, AngleDeg: 90}
	if e := t.branchEnd(); e != nil && e.Angle.Deg > 0 {
		s.AngleDeg, s.OffsetMm = e.Angle.Deg, e.Offset.Mm
	}
	return s
}

// opensMm is how much more than its gap a branch may open at its flanks before they are said to be filled apart. Common
// practice, no source.
const opensMm = 1.0

// opened adds to a groove what the flanks of a branch that is set on leave open, for its wall is cut to one height.
func (t *joint) opened(p *plan.WeldPlan) {
	e := t.branchEnd()
	if e == nil || e.SetIn || p.DiameterMm == 0 {
		return
	}
	o := t.saddle(p.DiameterMm).Opened(t.a.thickMm())
	p.AreaMm2 = words.Round(p.AreaMm2+o.Mm2, 1)
	if o.Mm <= opensMm {
		return
	}
	p.OpensMm = words.Round(p.GapMm+o.Mm, 1)
	if e.Offset.Mm == 0 {
		p.OpensDeg = []float64{geom.OnClock(e.Clock.Deg + 180 - o.AtDeg), geom.OnClock(e.Clock.Deg + 180 + o.AtDeg)}
		slices.Sort(p.OpensDeg)
	}
	t.figure("gap at the flanks", "opens to "+t.w.Read(p.OpensMm)+" outside, "+t.w.Area(words.Round(o.Mm2, 1))+" of the weld metal on an average", "by geometry")
}

// flanks says where the gap of a branch opens, and how it is filled there.
func (t *joint) flanks(p *plan.WeldPlan) string {
	if p.OpensMm == 0 {
		return ""
	}
	at := words.Join(" and ", seq.Map(p.OpensDeg, words.Angle)...)
	return "At its flanks" + words.When(at != "", ", "+at+",") + " the outside of its wall stands up to " + t.w.Read(p.OpensMm) + " off " + t.b.title() +
		": more runs there, from the root out, until they are as full as the rest."
}
