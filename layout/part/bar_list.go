package part

import (
	"math"
	"strconv"
	"strings"

	"centrepop/layout/bars"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

func (b *bar) show(n *Numbered, out *plan.PartPlan) { out.Dimensions, out.Bar = nil, b.plan(n) }

// copeGapMm is how far a cope may stand off its round anywhere, so how much too deep or
// too shallow it may be (common practice, no source).
const copeGapMm = 1.0

// plan is the bar as the cut list shows it.
func (b *bar) plan(n *Numbered) *plan.BarPlan {
	in := b.in
	out := &plan.BarPlan{
		Section: b.sectionWords(n.W), Outline: plan.Contour(b.outline(n.Sizes).ToSVG()), WidthMm: in.Width.Mm, DepthMm: in.Depth.Mm, LengthMm: words.Round(in.Length.Mm, 6),
		TopMm: words.Round(b.sides.TopMm, 6), BottomMm: words.Round(b.sides.BottomMm, 6), Length: n.W.Size(in.Length.Mm), Limits: n.limitsText(n.General(in.Length.Mm)), Short: b.short,
		Left: b.endPlan(n.W, parts.LeftEnd), Right: b.endPlan(n.W, parts.RightEnd),
	}
	if out.TopMm != out.LengthMm || out.BottomMm != out.LengthMm {
		out.Top, out.Bottom = n.W.Taped(out.TopMm), n.W.Taped(out.BottomMm)
	}
	out.Profile = append(out.Profile, seq.Map(b.shape.Loops(), sectionContour)...)
	for m := range seq.Refs(n.Groups) {
		for k, q := range m.Points {
			mm, end := b.fromEnd(m, k)
			out.Holes = append(out.Holes, plan.BarHole{
				N: m.Group.First + k, Group: m.Name.Value, Side: string(m.Side()), XMm: m.barXMm(k), YMm: q.YMm, DiameterMm: m.Group.DrillMm, Size: m.Group.SizeText, EndMm: m.inFront(m.ownHalf),
				From: n.W.Size(mm) + " from " + words.Either(end == parts.LeftEnd, "L", "R"), Up: n.W.Size(b.upMm(m, k)),
			})
		}
		out.Measures = append(out.Measures, b.holeRecords(n, m)...)
	}
	for _, side := range []parts.Side{parts.LeftEnd, parts.RightEnd} {
		if c, ok := b.copes[side]; ok {
			out.Measures = append(out.Measures, plan.BarRecord{
				What: string(side) + " cope, depth", Wanted: n.W.Read(c.DepthMm), Limits: n.W.Limits(math.Max(0, c.DepthMm-copeGapMm), c.DepthMm+copeGapMm),
			})
		}
	}
	return out
}

// mostListed is how many holes of a row are measured one by one; of a longer one the
// first, the last and the pitch are.
const mostListed = 4

// holeRecords are what is measured of a group of holes: each place from the end it counts
// from, and with the first of them the size and the thread.
func (b *bar) holeRecords(n *Numbered, m *Group) []plan.BarRecord {
	byEnd := map[parts.Side][]int{}
	for i := range m.Points {
		_, end := b.fromEnd(m, i)
		byEnd[end] = append(byEnd[end], i)
	}
	var out []plan.BarRecord
	for _, end := range []parts.Side{parts.LeftEnd, parts.RightEnd} {
		at := byEnd[end]
		if len(at) == 0 {
			continue
		}
		g := *m.Group
		g.First, g.Count = g.First+at[0], len(at)
		shape := m.kind.cutShape()
		what, ends := numbered(shape, &g), at
		row, along := m.Pattern.Shape.(geom.Along)
		pitched := along && len(at) > mostListed
		if pitched {
			ends = []int{at[0], at[len(at)-1]}
			what = shape + "s " + strconv.Itoa(g.First) + ", " + strconv.Itoa(g.First+g.Count-1)
		}
		r := plan.BarRecord{What: words.Spaced(m.Name.Value) + ", " + what + " from the " + string(end) + " end"}
		add := func(z Sized, prefix string) {
			r.Wanted, r.Limits = words.Join(", ", r.Wanted, prefix+n.W.Size(z.NominalMm)), words.Join(", ", r.Limits, n.limitsText(z))
		}
		var mm [2]float64 // of the last and the one before
		for _, k := range ends {
			mm[1] = mm[0]
			mm[0], _ = b.fromEnd(m, k)
			add(n.General(mm[0]), "")
		}
		if pitched {
			r.What += ", " + shape + " to " + shape
			add(n.pitch(row.PitchMm, m.Size), "each ")
		} else if (along || len(at) == 2) && len(at) > 1 && n.pitchLost(mm[1], mm[0], m.Size) {
			add(n.pitch(m.apartMm(ends[len(ends)-2], ends[len(ends)-1]), m.Size), "pitch ")
		}
		if len(out) == 0 {
			b.sizeRecord(n, m, &r)
		}
		out = append(out, r)
	}
	return out
}

// sizeRecord adds the diameter that has limits, and the thread.
func (b *bar) sizeRecord(n *Numbered, m *Group, r *plan.BarRecord) {
	if l := n.limitsText(m.Size.Size); l != "" {
		r.Wanted, r.Limits = r.Wanted+"; "+m.Group.SizeText, r.Limits+"; Ø"+l
	}
	if s, ok := m.kind.(slots); ok {
		r.Wanted += "; " + s.cutText(n.W, m)
		r.Limits = words.Join("; ", r.Limits, words.Join(" × ", n.limitsText(n.General(s.in.Width.Mm)), n.limitsText(n.General(s.in.Length.Mm))))
	}
	if m.Size.Thread == nil {
		return
	}
	r.Wanted, r.Limits = r.Wanted+"; "+m.Size.Thread.Designation, r.Limits+"; "+n.runsFreely(m.Size.Thread, m.Depth.Mm)
}

// endPlan is how an end is cut, in words.
func (b *bar) endPlan(w words.Writer, side parts.Side) plan.BarEnd {
	e := b.in.End(side)
	out := plan.BarEnd{Name: string(side), Cut: "square"}
	if e.Mitred() {
		out.SawDeg, out.Long = e.Mitre.Deg, string(e.Long)
		out.Cut = words.Angle(e.Mitre.Deg) + ", long point at the " + out.Long
	}
	if c, ok := b.copes[side]; ok {
		out.Cope = strings.Join(b.copeLines(w, side, c), " ")
		out.Cut = "coped R" + w.Size(c.RadiusMm) + ", " + w.Read(c.DepthMm) + " deep"
	}
	return out
}

// copeLines are how an end is hollowed.
func (b *bar) copeLines(w words.Writer, side parts.Side, c bars.Cope) []string {
	mark := "Wrap the template round the end, its square edge on a line " + w.Size(b.templateFromMm(w, c)) + " from the " + string(side.OtherEnd()) + " end; scribe the curve on front and back."
	if !b.wraps() {
		mark = "Scribe the arc R" + w.Size(c.RadiusMm) + " on the front, its middle " + w.Read(c.DepthMm) + " from the end."
	}
	return []string{mark, "Cut with a hole saw of " + w.Dia(2*c.RadiusMm) + " where there is one, else saw and grind to the line; try it on the round: no gap over " + w.Near(copeGapMm) + "."}
}

// copeMarginMm is the paper beyond the deepest place of a cope.
const copeMarginMm = 30.0

// templateFromMm is where the square edge of a cope's template lies, from the far end: a
// whole millimetre or eighth of an inch.
func (b *bar) templateFromMm(w words.Writer, c bars.Cope) float64 {
	return math.Max(0, w.Down(b.in.Length.Mm-c.DepthMm-copeMarginMm, 1, 1.0/8))
}

func (b *bar) features(n *Numbered) {
	n.add(plan.Feature{Kind: plan.EdgeFeature, Name: "section", Size: b.sectionWords(n.W), Note: "as the bar is bought"})
	n.add(plan.Feature{Kind: plan.LengthFeature, Name: "length", Size: n.W.Size(b.in.Length.Mm), Limits: n.limitsText(n.General(b.in.Length.Mm)), Note: "between the outermost points"})
	for _, side := range []parts.Side{parts.LeftEnd, parts.RightEnd} {
		if cut := b.endPlan(n.W, side); cut.SawDeg != 0 || cut.Cope != "" {
			n.add(plan.Feature{Kind: plan.EndFeature, Name: string(side) + " end", Size: cut.Cut})
		}
	}
}
