package review

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/material"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// pierce looks for holes that the cutter cannot make. The bore's blank is cut;
// a round hole is then drilled from the punch template, and a slot milled: one note
// of the part says which.
func pierce(v *view) {
	leastMm, source, ok := v.leastHole()
	if !ok {
		return
	}
	cut := v.p.Stock.Cut
	f := Finding{
		Rule: cut + " holes in " + v.mm(v.lengthMm) + " at least " + v.mm(leastMm), Source: source, Fix: "drill it instead of having it cut, or make it larger",
	}
	if b := v.p.Bore; b != nil && geom.Over(leastMm, b.Size.Nominal.Mm-part.BoreLeftMm(v.job, b)) {
		f.What = "the bore is too small for the " + cut + ", which only marks it"
		f.Numbers = v.mm(b.Size.Nominal.Mm-part.BoreLeftMm(v.job, b)) + " as cut in " + v.mm(v.lengthMm) + ", wanted " + v.mm(leastMm)
		f.LeftMm = left(b.Size.Nominal.Mm - part.BoreLeftMm(v.job, b))
		v.report(Check, "bore", b.Pos, f)
		f.LeftMm = nil
	}
	var after, sizes []string
	first := v.p.Name.Pos
	note := func(how, name string, mm float64, pos parts.Pos) {
		if after == nil {
			first = pos
		}
		after = append(after, how+" "+name)
		sizes = append(sizes, v.mm(mm))
	}
	for _, d := range v.drilledSizes() {
		if d.Make != parts.TappedHole && !d.fitted() && d.through && geom.Over(leastMm, d.mm) {
			note("drill", d.name, d.mm, d.Pos)
		}
	}
	for i := range v.p.Slots {
		if s := &v.p.Slots[i]; s.Through && geom.Over(leastMm, s.Width.Mm) {
			note("mill", s.Name.Value, s.Width.Mm, s.Pos)
		}
	}
	if after == nil {
		return
	}
	f.What = "the " + cut + " only marks what is too small for it: " + strings.Join(after, ", ")
	f.Numbers = strings.Join(sizes, ", ") + " in " + v.mm(v.lengthMm) + ", wanted " + v.mm(leastMm)
	f.Fix = "drill and mill them after cutting, or make them larger"
	v.report(Note, "", first, f)
}

// cutEdge is the metal on diameter that clears the edge a cutter leaves, its
// taper and the skin that heat hardened. Rules of thumb.
var cutEdge = map[string]float64{"laser": 1, "plasma": 3, "waterjet": 1, "flame": 3}

// stockLeft looks for fitted bores and outlines that are cut without metal left
// for the lathe, or too little of it.
func stockLeft(v *view) {
	o, cut := v.p.Outline, v.p.Stock.Cut
	least := cutEdge[cut]
	if !v.p.Flat() || least == 0 {
		return
	}
	look := func(feature string, pos parts.Pos, leaveMm, onMm, lessMm float64) {
		f := Finding{
			What: "the " + feature + " has a fit, but the " + cut + " leaves too little for the lathe", Numbers: v.mm(leaveMm) + " left on " + v.mm(onMm) + ", wanted " + v.mm(least),
			Rule: "at least " + v.mm(least) + " on diameter for the lathe over a " + cut + " cut edge, which is rough and tapered", Fix: "add leave, at least " + v.mm(least+lessMm),
		}
		f.Numbers += words.When(lessMm > 0, " and the "+v.mm(lessMm)+" that its tube, as bought, may be smaller")
		if geom.Over(least+lessMm, leaveMm) {
			v.report(Stop, feature, pos, f)
		}
	}
	if b := v.p.Bore; b != nil && v.toTurn(b.Size.Fit, b.Size.Nominal.Mm) {
		look("bore", b.Pos, part.BoreLeftMm(v.job, b), b.Size.Nominal.Mm, v.smallerMm())
	}
	if o.Shape == parts.CircleOutline && v.toTurn(o.Size.Fit, o.Width.Mm) {
		look("outline", o.Pos, o.LeaveOnPart.Mm, o.Width.Mm, 0)
	}
}

// smallerMm is how much under its drawn size the tube may be that the bore is turned to as measured.
func (v *view) smallerMm() float64 {
	size := v.p.Bore.Size
	tube := v.job.Part(size.Fit.LightPress.Part)
	if tube == nil || !tube.BoughtTube() {
		return 0
	}
	if m, err := material.Find(tube.Material.Value); err == nil {
		if tol, err := fits.TubeOutside(fits.TubeStandard(m.Name), size.Nominal.Mm); err == nil { // else it is drawn to limits of its own
			return words.Round(tol.PlusMinusMm, 2)
		}
	}
	return 0
}

// toTurn tells fits that the cutter does not hold: all but limits and a plus-minus as wide as
// its own.
func (v *view) toTurn(f parts.Fit, mm float64) bool {
	holds, _ := part.CutterHolds(v.p.Stock.Cut, mm, v.lengthMm)
	return f.Class.Value != "" || f.LightPress.Set() || len(f.Measured) > 0 || len(f.Limits) == 2 && geom.Over(holds, f.Limits[1].Mm-f.Limits[0].Mm) ||
		f.PlusMinus.Set() && geom.Over(holds, 2*f.PlusMinus.Mm)
}

// blank looks for stock that is too small for the finished part.
func blank(v *view) {
	s := v.p.Stock
	if !v.turned() || !s.Size.Set() || !slices.Contains([]string{"round", "tube", "casting"}, s.Form) {
		return
	}
	wide, f := v.widest(), v.here("", s.Pos)
	f.Severity, f.Rule, f.Source, f.Fix = Stop, "the stock is at least as large as the part", "by geometry", "what is drawn within the stock, or a larger stock where the drawing is right"
	v.eachOf(f,
		flaw{geom.Over(2*wide.RadiusMm(), s.Size.Mm), Finding{What: "the stock is thinner than " + wide.Name + " of the part", Numbers: v.mm(s.Size.Mm) + " for " + v.mm(2*wide.RadiusMm())}},
		flaw{s.Length.Set() && geom.Over(v.lengthMm, s.Length.Mm), Finding{What: "the stock is shorter than the part", Numbers: v.mm(s.Length.Mm) + " for " + v.mm(v.lengthMm)}},
	)
}

// latheMm is the swing a part needs on the lathe: twice the farthest point of
// its outline from the axis it turns about, 0 if nothing is turned.
func (v *view) latheMm() float64 {
	if !slices.ContainsFunc(v.q.Operations, func(o plan.Operation) bool { return o.Machine == plan.Lathe }) {
		return 0
	}
	return 2 * seq.Max(v.q.Section.MaxMm, v.outline, func(p plan.XY) float64 { return math.Hypot(p.XMm, p.YMm) })
}

// swing looks for parts that are too wide for the lathe, if they go on it.
func swing(v *view) {
	most, needMm := v.job.Shop.SwingMm, v.latheMm()
	if slices.ContainsFunc(v.q.Operations, func(o plan.Operation) bool { return o.Machine != plan.Lathe && part.Bores(o) }) {
		v.report(Note, "", v.p.Name.Pos, Finding{
			What: v.p.Title.Value + " is too large for the lathe, and the mill bores it", Numbers: "swing " + v.mm(most.Mm),
			Rule: "what is turned swings over the bed", Source: "shop: lathe: swing", Fix: "see that the mill's table and throat take it, or have it turned elsewhere",
		})
		return
	}
	if !most.Set() || !geom.Over(needMm, most.Mm) {
		return
	}
	v.report(Stop, "", v.p.Name.Pos, Finding{
		What: v.p.Title.Value + " is over the lathe's swing", Numbers: "turns " + v.mm(needMm) + " across its corners, swing " + v.mm(most.Mm),
		Rule: "what is turned swings over the bed", Source: "shop: lathe: swing", Fix: "have it turned elsewhere, or make it smaller",
	})
}

// between looks for shafts that are longer than the lathe, and for tubes that it faces. A part up to four
// times as long as thick is held in the chuck alone.
func between(v *view) {
	most := v.job.Shop.BetweenMm
	if !v.turned() && (v.p.Kind != parts.Tube || v.latheMm() == 0) || !most.Set() || !geom.Over(v.lengthMm, most.Mm) {
		return
	}
	f := Finding{
		What: v.p.Title.Value + " is longer than the lathe takes between centres", Numbers: v.mm(v.lengthMm) + " long, " + v.mm(most.Mm) + " between centres", OverMm: over(v.lengthMm - most.Mm),
		Rule: "a shaft is turned between centres", Source: "shop: lathe: between", Fix: "make it in two, or have it turned elsewhere",
	}
	severity := Stop
	if v.p.Kind == parts.Tube {
		severity, f.Rule, f.Fix = Check, "what is faced goes on the lathe", "have it cut and faced elsewhere; where it goes through the spindle, accept it"
	}
	v.report(severity, "", v.p.Name.Pos, f)
}

// counterpart looks for light presses whose mate cannot be measured when the bore is
// turned, and for fits that nothing answers: a class on a bore whose shaft in
// the job, named by the seat, has none. Joints are looked at by their own rules.
func (v *view) counterpart(c *cylinder) {
	ref := c.Drawn.Size.Fit.LightPress
	other := v.viewOf(ref.Part)
	if other == nil || other.p.Kind == parts.Tube || !other.turned() {
		return // a tube as bought has no limits, and is measured
	}
	if s := named(other.outside, ref.Feature); s != nil && !s.fitted() {
		v.report(Note, c.Name, ref.Pos, Finding{
			What: "the counterpart of " + c.Name + " is turned here too, and has no limits", Numbers: ref.Part + "." + ref.Feature + " " + v.mm(s.Drawn.Size.Nominal.Mm),
			Rule: "a light press goes over what is bought and measured; two turned parts take a fit", Fix: "give both sides a fit, such as H7 and p6",
		})
	}
}
