package review

import (
	"cmp"
	"slices"

	"centrepop/layout/fits"
	"centrepop/layout/material"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Metal that turning, facing and sawing take at the least. Common practice, no
// source.
const (
	turnMm     = 1.0 // on diameter, where the outside is turned
	faceMm     = 1.0 // on length, for both ends
	castMm     = 4.0 // of a casting, on diameter
	castFaceMm = 4.0
)

// allowance looks for stock that leaves nothing to turn or to face, and for
// plate, sheet and tube that are not what is drawn.
func allowance(v *view) {
	s := v.p.Stock
	if !s.Size.Set() {
		return
	}
	switch {
	case s.ByArea():
		v.plateAllowance()
	case s.Form == "flat" && v.p.Flat():
		v.flatAllowance()
	case v.p.Kind == parts.Tube && s.Form == "tube":
		v.tubeAllowance()
	case v.turned() && (s.Form == "round" || s.Form == "casting" || s.Form == "tube"):
		v.turnAllowance()
	}
}

func (v *view) plateAllowance() {
	s, drawn := v.p.Stock, v.lengthMm
	switch v.p.Kind {
	case parts.Cone, parts.TransitionPiece:
		drawn = v.p.Formed().Thickness.Mm
	case parts.FlightPart:
		drawn = v.p.Flight.Thickness.Mm
	case parts.Tube: // rolled, or a ring out of a plate
		if v.p.Rolled != nil || s.Form == "sheet" {
			drawn = v.wallAt(v.lengthMm / 2)
		}
	}
	faced := func(j *plan.JointPlan) bool { return j.Weld.Faced == v.p.Name.Value } // a copy of it, after the weld
	f, more := v.here("", s.Pos), s.Size.Mm-drawn
	f.Numbers, f.OverMm = v.mm(s.Size.Mm)+" for "+v.mm(drawn), over(more)
	f.Rule, f.Source, f.Fix = "the stock is as thick as the part, or thicker where its faces are machined", "by geometry", "write the thickness that is bought"
	v.firstOf(f,
		flaw{geom.Short(more), Finding{Severity: Stop, What: "the " + s.Form + " is thinner than the part"}},
		flaw{!v.turned() && geom.Some(more) && len(seq.Keep(v.planned(parts.WeldKind), faced)) < max(1, v.p.Quantity),
			Finding{What: "the " + s.Form + " is thicker than the part, and no step faces it"}},
		flaw{v.p.Rolled != nil && geom.Some(more), Finding{What: "the " + s.Form + " is thicker than the wall that is rolled from it"}},
		flaw{v.turned() && v.p.Kind != parts.Tube && geom.Over(faceMm, more), Finding{What: "the " + s.Form + " leaves nothing to face both ends"}},
	)
}

// flatAllowance compares flat bar with what is drawn: its thickness, and its
// width with the narrower side.
func (v *view) flatAllowance() {
	s, f := v.p.Stock, v.here("", v.p.Stock.Pos)
	wide, high := v.box()
	f.Severity, f.Numbers = Stop, v.mm(s.Second.Mm)+" for "+v.mm(v.lengthMm)
	f.Rule, f.Source, f.Fix = "flat bar is as thick and as wide as the part, or more where it is machined", "by geometry", "write the bar that is bought"
	v.eachOf(f,
		flaw{geom.Over(v.lengthMm, s.Second.Mm), Finding{What: "the flat is thinner than the part"}},
		flaw{geom.Over(s.Second.Mm, v.lengthMm), Finding{Severity: Check, What: "the flat is thicker than the part, and no step faces it", OverMm: over(s.Second.Mm - v.lengthMm)}},
		flaw{geom.Over(min(wide, high), s.Size.Mm), Finding{What: "the flat is narrower than the part", Numbers: v.mm(s.Size.Mm) + " for " + v.mm(min(wide, high))}},
	)
}

// box is the width and height of the outline of a flat part.
func (v *view) box() (wide, high float64) {
	size := geom.BoxOf(v.outline...).Size()
	return size.XMm, size.YMm
}

func (v *view) tubeAllowance() {
	s, f := v.p.Stock, v.here("", v.p.Stock.Pos)
	wall, out := v.wallAt(v.lengthMm/2), 2*radiusAt(v.outside, v.lengthMm/2)
	f.Severity, f.Rule, f.Source, f.Fix = Stop, "a tube is drawn as it is bought", "by geometry", "write the same size at tube and stock"
	v.firstOf(f,
		flaw{!geom.Alike(out, s.Size.Mm), Finding{What: "the tube that is bought is not the one that is drawn", Numbers: v.mm(s.Size.Mm) + " for " + v.mm(out)}},
		flaw{!geom.Alike(wall, s.Second.Mm), Finding{What: "the wall that is bought is not the one that is drawn", Numbers: v.mm(s.Second.Mm) + " for " + v.mm(wall)}},
	)
	for _, c := range v.outside {
		if over := s.Size.Mm - 2*c.RadiusMm(); c.fitted() && geom.Over(turnMm, over) {
			v.report(Check, c.Name, s.Pos, Finding{
				What: "the tube leaves nothing to turn " + c.Name, LeftMm: left(max(0, over)), Numbers: v.mm(over) + " on diameter, wanted " + v.mm(turnMm),
				Rule: "the skin of the stock is turned away", Fix: "no fit on the outside, and the other part bored to it as measured; or a turned part from thicker tube",
			})
		}
	}
	v.lengthAllowance(faceMm)
}

func (v *view) turnAllowance() {
	s, wide := v.p.Stock, slices.MaxFunc(v.outside, func(a, b *cylinder) int { return cmp.Compare(v.firstMm(a), v.firstMm(b)) })
	least, face := turnMm, faceMm
	if s.Form == "casting" {
		least, face = castMm, castFaceMm
	}
	first := v.firstMm(wide)
	over := s.Size.Mm - first
	m, err := material.Find(v.p.Material.Value) // bars of cast metals are sold with their skin
	cast := err == nil && slices.Contains([]material.Kind{material.GreyIron, material.DuctileIron, material.TinBronze, material.OtherBronze}, m.Kind)
	asBought := !cast && geom.Alike(over, 0) && !wide.fitted() && !wide.threaded() && wide.Drawn.Finish.Value == ""
	if geom.Over(least, over) && !asBought && !geom.Short(s.Size.Mm-2*v.widest().RadiusMm()) { // else it is too small altogether
		f := Finding{
			What: "the stock leaves nothing to turn " + wide.Name, Numbers: v.mm(over) + " on diameter, wanted " + v.mm(least), LeftMm: left(over),
			Rule: "the skin of the stock is turned away", Fix: "the next larger stock, or " + wide.Name + " as small as it is to be",
		}
		if wide.AfterWeld {
			f.What += " with what stays on it until after the weld"
			f.Numbers = v.mm(s.Size.Mm) + " for " + v.mm(first) + ", wanted " + v.mm(first+least)
		}
		v.report(Check, wide.Name, s.Pos, f)
	}
	v.boreAllowance()
	v.lengthAllowance(face)
}

// widest is the first of the widest steps of a turned part.
func (v *view) widest() *cylinder {
	return slices.MaxFunc(v.outside, func(a, b *cylinder) int { return cmp.Compare(a.RadiusMm(), b.RadiusMm()) })
}

// firstMm is the diameter to which a step outside is turned first: with what stays on it until after the last weld.
func (v *view) firstMm(c *cylinder) float64 {
	if c.AfterWeld {
		return 2*c.RadiusMm() + part.WeldLeaveMm(v.job)
	}
	return 2 * c.RadiusMm()
}

// boreAllowance looks for tube whose hole leaves nothing to bore a fitted step.
func (v *view) boreAllowance() {
	s := v.p.Stock
	if s.Form != "tube" || len(v.inside) == 0 {
		return
	}
	narrow := slices.MinFunc(v.inside, func(a, b *cylinder) int { return cmp.Compare(a.RadiusMm(), b.RadiusMm()) })
	left := 2*narrow.RadiusMm() - (s.Size.Mm - 2*s.Second.Mm)
	f := v.here(narrow.Name, s.Pos)
	f.Numbers, f.LeftMm, f.Rule, f.Fix = v.mm(left)+" on diameter, wanted "+v.mm(turnMm), &left, "the skin of the stock is turned away", "a thicker wall"
	v.firstOf(f,
		flaw{geom.Short(left), Finding{Severity: Stop, What: "the hole of the tube is larger than " + narrow.Name}},
		flaw{geom.Over(turnMm, left) && narrow.fitted(), Finding{What: "the tube leaves nothing to bore " + narrow.Name}},
	)
}

// lengthAllowance looks for stock that is cut too short to face.
func (v *view) lengthAllowance(least float64) {
	s := v.p.Stock
	if over := s.Length.Mm - v.lengthMm; s.Length.Set() && !geom.Short(over) && geom.Over(least, over) {
		v.report(Check, "", s.Length.Pos, Finding{
			What: "the stock leaves nothing to face", Numbers: v.mm(over) + " on length, wanted " + v.mm(least), LeftMm: left(over),
			Rule: "both ends are faced to length", Fix: "order it longer",
		})
	}
}

// reamedLater tells whether holes are reamed with those of another part, in the step that bolts the two together.
func (v *view) reamedLater(h *parts.HoleGroup) bool {
	return slices.ContainsFunc(v.q.Faces, func(f *plan.Face) bool {
		return slices.ContainsFunc(f.Groups, func(g plan.Group) bool { return g.Name == h.Name.Value && g.ReamedWith != "" })
	})
}

// fineHoles looks for holes to a fine size that a later weld of their part pulls out of size.
func (v *view) fineHoles(h *parts.HoleGroup) {
	size := h.Size.Size
	if h.Size.Make != parts.PlainHole || !fine(size.Fit, 9) || v.reamedLater(h) {
		return
	}
	if _, err := fits.Limit(size.Nominal.Mm, size.Fit.Class.Value); err != nil && size.Fit.Class.Value != "" {
		return
	}
	welds := seq.Keep(v.planned(parts.WeldKind), func(j *plan.JointPlan) bool { return j.A.Part == v.p.Name.Value || j.B.Part == v.p.Name.Value })
	if n := len(welds); n > 0 {
		v.report(Check, h.Name.Value, h.Pos, Finding{
			What:    v.p.Title.Value + ": " + h.Name.Value + words.Either(h.Pattern.Count == 1, " is", " are") + " finished to size before the weld " + welds[n-1].Name,
			Numbers: v.mm(size.Nominal.Mm) + " " + size.Fit.Class.Value,
			Rule:    "fine holes are finished after the last weld near them, which moves them", Fix: "drill under size, and ream after welding",
		})
	}
}
