package joint

import (
	"math"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// A fillet bridges a gap of half a millimetre and a fifth of its throat, at most 3 mm
// (ISO 5817 no. 617, level C, as EN 25817 no. 10 before it: scribd.com 445864602).
const (
	bridgedMm, bridgedThroat, bridgedMostMm = 0.5, 0.2, 3.0
)

// slack finds the least and the most gap that a round leaves in the round that it is welded into, from the
// limits of both, and whether a fillet bridges it. What has no axis, or is a branch on its
// main, has its gap otherwise.
func (j *making) slack(t *joint, p *plan.WeldPlan) {
	stands := t.in.Place != nil && t.in.Place.Gap.Mm > 0 && p.LegMm != 0 && !t.enters()
	if stands {
		p.GapMm = t.in.Place.Gap.Mm
	}
	p.GapLeastMm = p.GapMm
	if open := j.rimOpenMm(t); p.LegMm != 0 && open > 0 {
		p.GapMm = words.Round(p.GapMm+open, 2)
		t.unbridged(p, " at its edges")
	}
	if stands || p.LegMm == 0 || t.b.radial != nil || t.a.roundMm() == 0 || t.b.roundMm() == 0 {
		return
	}
	in, out, ok := t.nested()
	if !ok {
		return
	}
	if t.helixMm() != 0 { // it is drawn out to the round that it lies on, by its nominal size
		in.MaxMm, out.MinMm, in.MinMm, out.MaxMm = in.NominalMm, out.NominalMm, in.NominalMm, out.NominalMm
	}
	p.GapLeastMm = words.Round(math.Max(0, out.MinMm-in.MaxMm)/2, 2)
	p.GapMm = words.Round(math.Max(0, out.MaxMm-in.MinMm)/2+t.flatsShortMm(), 2)
	where := words.When(t.flatsShortMm() != 0, " at the middles of the flats")
	t.unbridged(p, where)
}

// unbridged notes a gap that a fillet does not bridge, and where it is.
func (t *joint) unbridged(p *plan.WeldPlan, where string) {
	if most := math.Min(bridgedMostMm, bridgedMm+bridgedThroat*p.ThroatMm); p.GapMm > most {
		t.problem(plan.FilletGap, plan.Of(plan.Mm, p.GapMm), plan.Of(plan.Mm, most), plan.Named(where))
	}
}

// rimOpenMm is what the straight edge of a plate, or the square end of a bar, leaves open on the round that it stands on: by
// the sagitta of that between where the two touch and the edge farther from there.
func (j *making) rimOpenMm(t *joint) float64 {
	p, radius := t.in.Place, t.b.roundMm()/2
	if p == nil || radius == 0 || !p.OnRim() || t.a.roundMm() != 0 || !t.a.straight(p.With) {
		return 0
	}
	past := j.seams.PastMm(t.in)
	if p.On == string(parts.LeftEnd) || p.On == string(parts.RightEnd) { // there it curves upward
		past[0], past[1] = past[2], past[3]
	}
	low, high := -radius-past[0], radius+past[1]
	far, near := max(-low, high), max(low, -high, 0)
	if far >= radius {
		return 0
	}
	return math.Sqrt(radius*radius-near*near) - math.Sqrt(radius*radius-far*far)
}

// straight tells whether a side of a part is straight along and across: an edge of a rectangle, or a bar's end as sawn.
func (f feature) straight(side string) bool {
	if end := f.r.Part.BarEnd(side); end != nil {
		return !end.Mitred() && !end.Coped()
	}
	o := f.r.Part.Outline
	return f.r.Part.Flat() && (o.Shape == parts.SquareOutline || o.Shape == parts.RectangleOutline) && o.Corner.Mm == 0
}

// nested are the limits of the inner round's outside and of the outer round's inside, in
// the plane of the face that one is placed on; ok is false where neither is in the other.
func (t *joint) nested() (in, out part.Sized, ok bool) {
	for _, k := range t.ways() {
		in, out = k[0].sizeAt(t, false), k[1].sizeAt(t, true)
		if in.NominalMm == 0 || out.NominalMm == 0 {
			continue
		}
		switch { // what is made to the other as it measures
		case in.Measured():
			in.MinMm, in.MaxMm = out.MaxMm+in.OffMm.Min, out.MinMm+in.OffMm.Max
		case out.Measured():
			out.MinMm, out.MaxMm = in.MaxMm+out.OffMm.Min, in.MinMm+out.OffMm.Max
		}
		if in.MinMm < out.MaxMm {
			return in, out, true
		}
	}
	return in, out, false
}

// sizeAt is the diameter of a round at the weld, of its bore or outside, with limits; 0
// where the feature is on the other side. An end of sheet may go in to a depth, or over what
// then goes in to it.
func (f feature) sizeAt(t *joint, inside bool) part.Sized {
	if f.step != nil {
		if f.step.Inside != inside {
			return part.Sized{}
		}
		return f.step.Size
	}
	if f.helical() {
		return f.r.General(f.roundMm())
	}
	z, gap := 0.0, 0.0
	if pl := t.in.Place; pl != nil {
		gap = math.Max(0, -pl.Gap.Mm)
	}
	if inside { // the seam runs at its own end
		gap = 0
	}
	if f.ref.Feature != "large-end" {
		z, gap = f.r.LengthMm(), -gap
	}
	inner, outer, _ := f.r.Section.RadiiAt(z + gap)
	if inside {
		outer = inner
	}
	return f.r.General(geom.Clean(2 * outer))
}

// flatsShortMm is what the flats of a faceted end leave open beside a round.
func (t *joint) flatsShortMm() (mm float64) {
	for _, f := range []feature{t.a, t.b} {
		if tr := f.r.Part.Transition; tr != nil {
			mm += part.FlatsShortMm(tr)
		}
	}
	return mm
}

// gapText says what stays open between two parts when they are set for a weld.
func (t *joint) gapText(p *plan.WeldPlan) string {
	switch least, most := t.w.Read(p.GapLeastMm), t.w.Read(p.GapMm); {
	case p.GapMm == 0:
		return "No gap."
	case p.GapLeastMm == p.GapMm:
		return "Gap " + most + "."
	case t.in.Place != nil && t.in.Place.OnRim():
		return "Gap " + least + " where it touches, " + most + " at its edges."
	case t.flatsShortMm() != 0:
		return "Gap up to " + most + " at the middles of the flats."
	default:
		text := "Gap " + least + " to " + most + " by its limits: the same all round."
		if in, out, _ := t.nested(); geom.Over(in.MaxMm, out.MinMm) && t.in.Place != nil && t.in.Place.Gap.Mm < 0 {
			text += " One that does not go in so far stays where it stops, square."
		}
		return text
	}
}
