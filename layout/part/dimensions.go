package part

import (
	"math"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// dimensions are the sizes that the section is drawn with: each diameter, and
// of turned parts each length. A chain of lengths is not closed: one link is
// auxiliary, the same as in the operations and the record. A plate keeps the
// thickness it is bought with.
func (r *Sizes) dimensions(profiled, bought bool) []plan.Dimension {
	var out []plan.Dimension
	for _, inside := range []bool{false, true} {
		for s := range seq.Refs(r.Steps) {
			if s.Inside != inside || !profiled && s.Name != outlineStep && s.Name != boreStep {
				continue
			}
			text := "Ø" + s.Size.classed(r.W)
			if s.Size.Thread != nil {
				text = s.Size.Thread.Designation
			}
			d := plan.Dimension{
				Kind: plan.DiameterDim, FromMm: s.FromMm, ToMm: s.ToMm, RadiusMm: s.RadiusMm(), Inside: inside,
				Text: text, Limits: r.limitsText(s.Size)}
			if s.Size.ByLimits() { // drawn by them
				d.Text, d.Limits = "Ø"+d.Limits, ""
			}
			out = append(out, seq.Flat(s.details, func(shape detail) []plan.Dimension { return shape.dimension(r, s, &d) })...)
			out = append(out, d)
			if profiled {
				d := plan.Dimension{Kind: plan.LengthDim, FromMm: s.FromMm, ToMm: s.ToMm, Inside: inside, Text: r.longText(s)}
				if !r.auxiliary(s) {
					d.Limits = r.limitsText(r.length(s))
				}
				out = append(out, d)
			}
		}
	}
	out = append(out, r.cutDimensions()...)
	length := r.whole()
	overall := plan.Dimension{Kind: plan.OverallDim, ToMm: r.LengthMm(), Text: r.W.Size(length.NominalMm), Limits: r.limitsText(length)}
	if bought {
		overall.Limits = ""
	}
	return append(out, overall)
}

// limitsOnce leaves out the limits that stand in the row of an operation, where
// they are worked to.
func (b *bench) limitsOnce(dims []plan.Dimension) []plan.Dimension {
	for d := range seq.Refs(dims) {
		if b.worked[workedTo{d.Limits, d.Kind != plan.DiameterDim}] {
			d.Limits = ""
		}
	}
	return dims
}

// cutDimensions are those of the keyways, grooves, rounded ends and flats cut into the steps,
// and the names of what is cut in from outside.
func (r *Sizes) cutDimensions() []plan.Dimension {
	var out []plan.Dimension
	for k := range seq.Refs(r.Keyways) {
		key := k.Row.Key()
		text := words.Either(k.open < 2, "keyway "+k.sizeText(r.W), "keyway "+k.widthText(r.W))
		out = append(out, plan.Dimension{
			Kind: plan.DiameterDim, FromMm: key.FromMm, ToMm: key.ToMm, RadiusMm: k.floorMm(), Inside: k.Row.Inside,
			Text: text})
	}
	for g := range seq.Refs(r.Grooves) {
		d := plan.Dimension{
			Kind: plan.DiameterDim, FromMm: g.Row.FromMm, ToMm: g.Row.ToMm, RadiusMm: geom.Clean(g.Row.FloorMm / 2), Inside: g.Row.Inside,
			Text: g.sizeText(r.W), Limits: r.limitsText(g.floor),
		}
		if g.Row.Face != "" { // from the nearer side of the metal; its sizes stand under the picture
			d.Text, d.RadiusMm, d.Limits = words.Spaced(g.Row.Name), geom.Clean(g.Row.OuterMm/2), ""
			mid := (g.Row.FromMm + g.Row.ToMm) / 2
			bore, round := r.boreAt(mid), r.outsideAt(mid)
			if d.Inside = bore != nil && (round == nil || g.Row.InnerMm-bore.Size.NominalMm < round.Size.NominalMm-g.Row.OuterMm); d.Inside {
				d.RadiusMm = geom.Clean(g.Row.InnerMm / 2)
			}
		}
		out = append(out, d)
	}
	for _, c := range r.chamfers() {
		if c.Radius.Set() {
			out = append(out, c.dimension(r.W))
		}
	}
	for f := range seq.Refs(r.Flats) {
		out = append(out, plan.Dimension{
			Kind: plan.DiameterDim, FromMm: f.Row.FromMm, ToMm: f.Row.ToMm, RadiusMm: geom.Clean(f.Row.DiameterMm / 2),
			Text: f.name() + " " + f.acrossText(r.W), Limits: r.limitsText(r.General(f.Row.AcrossMm))})
	}
	for _, m := range r.Radials {
		row := m.Rows[0]
		half := math.Max(row.DiameterMm, row.AlongMm) / 2
		out = append(out, plan.Dimension{
			Kind: plan.DiameterDim, FromMm: geom.Clean(row.AxialMm - half), ToMm: geom.Clean(row.AxialMm + half), RadiusMm: geom.Clean(row.OutsideMm / 2),
			Text: words.CountOf(len(m.Rows)) + words.Spaced(row.Name)})
	}
	return out
}
