package joint

import (
	"math"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/press"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// strengthSectionMm is the size of the stock as bought by which its standard gives
// the strength of a part: the thickness of plate or flat, the wall of a tube, the
// diameter or side of a bar. A casting, and a part without stock, goes by the wall
// of the member.
func strengthSectionMm(p *parts.Part, m press.Member) float64 {
	switch st := p.Stock; st.Form {
	case "plate", "sheet", "round", "square":
		return st.Size.Mm
	case "tube":
		return st.Second.Mm
	case "flat":
		return math.Min(st.Size.Mm, st.Second.Mm)
	}
	switch {
	case p.Flat():
		return p.Thickness.Mm
	case m.InsideMm != 0:
		return (m.OutsideMm - m.InsideMm) / 2
	}
	return m.OutsideMm
}

// contactMm is the length over which the two parts of a press touch all round:
// the overlap of their steps as placed, less chamfers and undercuts.
func (j *shop) contactMm(t *joint) float64 {
	place, ok := j.relative(t)
	if !ok {
		return 0
	}
	mm, err := press.ContactMm(t.b.step.Span(), place.span(t.a.step.Span()), append(seq.Map(t.a.cuts(), place.span), t.b.cuts()...))
	if err != nil {
		return 0
	}
	return geom.Clean(mm)
}

// cuts are the stretches of a step that a chamfer, an undercut or a groove takes away.
func (f feature) cuts() (out []geom.Span) {
	own := f.step.Span()
	front := func(mm float64) geom.Span { return geom.Span{FromMm: own.FromMm, ToMm: own.FromMm + mm} }
	back := func(mm float64) geom.Span { return geom.Span{FromMm: own.ToMm - mm, ToMm: own.ToMm} }
	for _, c := range f.r.Part.Chamfers {
		switch c.Edge.Value {
		case f.ref.Feature + "-front":
			out = append(out, front(c.Size.Mm))
		case f.ref.Feature + "-back":
			out = append(out, back(c.Size.Mm))
		}
	}
	if u := f.step.Undercut; u != nil {
		if f.r.UndercutAtBack(f.step) {
			out = append(out, back(u.WidthMm))
		} else {
			out = append(out, front(u.WidthMm))
		}
	}
	for i := range f.r.Grooves {
		if g := &f.r.Grooves[i].Row; g.Face == "" && g.In == f.step.Name {
			out = append(out, geom.Span{FromMm: g.FromMm, ToMm: g.ToMm})
		}
	}
	return out
}

// pressCautions prints cautions, and notes the ones that stop as problems.
func (j *making) pressCautions(t *joint, cautions []press.Caution) {
	for _, c := range cautions {
		switch c.Code {
		case press.BoreCloses:
			if p := t.out.Press; p != nil {
				p.BoreClosesMm = words.Round(c.Mm, 3)
			}
			t.figure("bore of the inner part closes by", t.w.Read(c.Mm), "Lamé")
			if text := j.boresKept(t, c); text != "" {
				t.caution(text)
			}
			continue
		case press.TooHot:
			t.problem(plan.PressTooHot, plan.Named(t.b.title()), plan.Of(plan.Celsius, c.C), plan.Named(c.Material), plan.Of(plan.Celsius, c.LimitC))
		case press.TooCold:
			t.problem(plan.PressTooCold, plan.Named(t.a.title()), plan.Of(plan.Celsius, c.C), plan.Of(plan.Celsius, c.LimitC), plan.Named(c.Material))
		}
		t.caution(t.w.PressCaution(c))
	}
}

// playLeft says which play a shaft keeps that turns in a bore of what is pressed in, closed by so much; empty where
// none is known to, or too little is left.
func (j *making) playLeft(t *joint, bore *part.Step, closesMm float64) string {
	for _, o := range j.all {
		if o.refused() || !o.turns() || o.a.Instance() != t.a.Instance() || o.a.step != bore {
			continue
		}
		shaft := o.b.step
		least, most := bore.Size.MinMm-shaft.Size.MaxMm-closesMm, bore.Size.MaxMm-shaft.Size.MinMm
		if !geom.Over(fits.OilShare*bore.Size.NominalMm, least) {
			return "The inner part's bore closes by up to " + t.w.Said(closesMm) + ", and is made for it: " + o.b.title() + " keeps " +
				t.w.Fine(least*1000, most*1000) + " of play in it without reaming."
		}
	}
	return ""
}

// boresKept says of the bores inside a joint that have a size to keep, limits of their own or a thread, that they close: what play that leaves
// a shaft in them, else their limits, by their names where there are several. It is empty without one.
func (j *making) boresKept(t *joint, c press.Caution) string {
	_, inside := t.a.r.Sides()
	bores := seq.Keep(inside, func(s *part.Step) bool {
		return s.FromMm < t.a.step.ToMm && s.ToMm > t.a.step.FromMm && (s.Size.Fitted() || s.Size.Thread != nil)
	})
	var text, limits string
	for _, s := range bores {
		name := words.When(len(bores) > 1, words.Spaced(s.Name)+" ")
		if left := j.playLeft(t, s, c.Mm); left != "" {
			text += " " + left
		} else if limits += "; "; s.Size.Thread == nil {
			limits += name + t.w.Limits(s.Size.MinMm, s.Size.MaxMm)
		}
	}
	if limits != "" {
		if text = " " + t.w.PressCaution(c) + text; strings.Trim(limits, "; ") != "" {
			text += " Its limits: " + strings.Trim(limits, "; ") + "."
		}
	}
	return strings.TrimSpace(text)
}

// thermalFigures are the temperatures that make the parts slip together, held
// against what the materials stand, and both at once where one alone does not do.
func (t *joint) thermalFigures(p *plan.PressPlan, in press.Joint) {
	p.HeatLimitC, p.ColdLimitC = in.Hub.Material.MaxHeatC, in.Shaft.Material.MinColdC
	hot := t.w.Heat(p.HeatHubC) + ", clearance " + t.w.Size(p.ClearanceMm)
	hot += words.When(p.TooHot(), "; over the "+t.w.Heat(p.HeatLimitC)+" that "+in.Hub.Material.Name+" stands: not by heat alone")
	t.figure("slips on with the hub at", hot, "from "+t.w.Heat(in.RoomC))
	cold := t.w.Heat(p.CoolShaftC)
	cold += words.When(p.TooCold(), "; under the "+t.w.Heat(p.ColdLimitC)+" to be had: not by cold alone")
	t.figure("or with the shaft at", cold, "")
	if hubC, shaftC, ok, err := press.Together(in); err == nil && ok && p.TooHot() && p.TooCold() {
		t.figure("or both", "hub "+t.w.Heat(hubC)+" and shaft "+t.w.Heat(shaftC), "the same clearance")
	}
}
