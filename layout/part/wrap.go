package part

import (
	"math"
	"slices"
	"strconv"

	"centrepop/layout/develop"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// wraps makes a template for each outside cylinder that carries radial
// features; a long one with features near both ends gets two, each measured
// from its own end.
func (d *shaper) wraps() {
	for _, st := range d.Side(false) {
		var front, back []plan.RadialRow
		for _, row := range d.rows() {
			switch {
			case d.outsideAt(row.AxialMm) != st, d.branchOver(row.N) != nil, row.InFlat: // that is cut by another template, or in the flat
			case row.AxialMm-st.FromMm > st.ToMm-row.AxialMm:
				back = append(back, row)
			default:
				front = append(front, row)
			}
		}
		if st.ToMm-st.FromMm <= wrapSplitMm && len(front) > 0 {
			front, back = append(front, back...), nil
		}
		for _, w := range []wrapped{{st, front, parts.Front, len(back) > 0}, {st, back, parts.Back, len(front) > 0}} {
			if len(w.rows) > 0 {
				d.wrap(w)
			}
		}
	}
}

// wrapped is a stretch of a round with what is marked on it.
type wrapped struct {
	*Step
	rows []plan.RadialRow
	edge parts.Face // the end that its square edge is set to
	both bool       // there is one from the other end too
}

// cylinder is the wrapped stretch as package develop takes it.
func (w wrapped) cylinder(paperMm float64) develop.Cylinder {
	c := develop.Cylinder{DiameterMm: w.Size.NominalMm, PaperMm: paperMm, FromBack: w.edge == parts.Back}
	c.TabMm = math.Min(wrapTabMm, words.Round(math.Pi*c.DiameterMm/5, 1))
	var reach float64
	for _, row := range w.rows {
		f := develop.Feature{Name: row.Name + " " + strconv.Itoa(row.N), ClockDeg: row.ClockDeg, AxialMm: geom.Clean(parts.At(w.edge, row.AxialMm-w.FromMm, w.ToMm-row.AxialMm))}
		along := radialKinds[parts.RadialShape(row.Shape)].wrap(row, &f)
		if low, high := f.AxialMm-along/2, f.AxialMm+along/2; f.Kind == develop.AxialSlot && min(high, w.LengthMm())-max(low, 0) > row.AroundMm { // what runs out over the next step
			low, high = max(low, 0), min(high, w.LengthMm())
			f.AxialMm, f.LengthMm, along = geom.Clean((low+high)/2), geom.Clean(high-low), high-low
		}
		c.Features = append(c.Features, f)
		reach = math.Max(reach, f.AxialMm+along/2)
	}
	c.WidthMm = math.Min(w.LengthMm(), math.Max(wrapLeastMm, math.Ceil((reach+wrapBeyondMm)/5)*5))
	return c
}

func (d *shaper) wrap(w wrapped) {
	slices.SortStableFunc(w.rows, func(a, b plan.RadialRow) int { return a.N - b.N })
	c := w.cylinder(d.paperMm())
	p, err := c.Develop()
	at := words.Spaced(w.Name)
	if err != nil {
		d.Notes = append(d.Notes, "No wrap template for "+at+": "+d.W.Refused(err)+". Mark out by the table of arcs.")
		return
	}
	name := "wrap-" + w.Name
	name += words.When(w.both, "-"+string(w.edge))
	d.wrapped[name] = w.Step
	out := d.pattern(name, plan.WrapPattern, p)
	out.Title = "Wrap template: " + at + ", " + d.W.Dia(c.DiameterMm)
	out.On = words.Either(w.Name == "outside", "the outside, "+d.W.Dia(c.DiameterMm), "the outside of "+at+", "+d.W.Dia(c.DiameterMm))
	out.Edge, out.Beyond = d.wrapSeat(w)
	out.SeatAt = string(w.edge)
	out.PaperMm, out.WidthMm, out.WrapMm, out.SeamDeg = c.PaperMm, c.WidthMm, p.WrapMm, p.SeamDeg
	out.ScaleMm = parts.At(w.edge, out.WrapMm, -out.WrapMm) / 360
	out.Marks = w.marks(c, p)
	out.Sizes = []plan.PatternValue{
		{Name: "wrap length, seam to seam", Text: d.exact(out.WrapMm)},
		{Name: "paper thickness allowed", Text: d.W.Size(c.PaperMm)},
		{Name: "overlap tab", Text: d.W.Size(c.TabMm)},
		{Name: "seam at clock", Text: words.Angle(out.SeamDeg)},
		{Name: "one degree", Text: d.W.Size(math.Abs(out.ScaleMm))},
	}
	out.Tables = []plan.PatternTable{d.wrapTable(w.rows, c)}
	out.Notes = []string{
		"Wrap it printed side out. " + words.Capital(out.Edge) + ". TOP line on the TOP mark.",
		"The end must just meet the seam line over the tab. If it does not, measure the outside and print again for that size: 0.1 on the diameter is 0.31 round.",
		"Outlines are those on the outside surface, drilled square to the axis; windows are measured along the surface.",
	}
	if n := d.bevelNote(w); n != "" {
		out.Notes = append(out.Notes, n)
	}
	d.Developments = append(d.Developments, out)
}

// wrapSeat says what the square edge of a wrap is set to and what lies beyond it.
func (s *Sizes) wrapSeat(w wrapped) (seat, beyond string) {
	next, after := s.neighbours(w.Step)
	beyond = "to the back"
	if w.edge == parts.Back {
		next, beyond = after, "to the front"
	}
	switch {
	case next == nil:
		return "level with the " + string(w.edge) + " face", beyond
	case next.Size.NominalMm > w.Size.NominalMm:
		return "against the shoulder of " + words.Spaced(next.Name) + ", on the " + string(w.edge) + " side", beyond
	}
	return "level with the " + string(w.edge) + " end of " + words.Spaced(w.Name), beyond
}

// bevelNote warns where a bevel takes away the edge that the paper is set to.
func (g *Shape) bevelNote(w wrapped) string {
	for _, c := range g.bevels {
		if c.step == w.Step && c.back == (w.edge == parts.Back) {
			return "The edge is bevelled " + g.W.Size(c.Size.Mm) + ": hold a straight edge on the face and set the paper to it."
		}
	}
	return ""
}

// marks finds where the features lie on the pattern: once, or twice where one
// crosses the seam.
func (w wrapped) marks(c develop.Cylinder, p develop.Development) []plan.PatternMark {
	labels, boxes := map[string][]develop.Label{}, map[string][]geom.Box{}
	for _, l := range p.Labels {
		labels[l.Text] = append(labels[l.Text], l)
	}
	for _, c := range p.Curves {
		boxes[c.Name] = append(boxes[c.Name], c.Box())
	}
	var out []plan.PatternMark
	for i, row := range w.rows {
		name := c.Features[i].Name
		for _, l := range labels[name] {
			m := plan.PatternMark{N: row.N, Name: row.Name, CentreMm: at(l.At), DiameterMm: row.DiameterMm, Size: row.SizeText}
			for _, b := range boxes[name] {
				if b.Min.XMm <= l.At.XMm && l.At.XMm <= b.Max.XMm {
					m.MinMm, m.MaxMm = at(b.Min), at(b.Max)
				}
			}
			out = append(out, m)
		}
	}
	return out
}

// wrapTable lists the features as distances to mark without the template.
func (s *Sizes) wrapTable(rows []plan.RadialRow, c develop.Cylinder) plan.PatternTable {
	t := plan.PatternTable{Title: "Features", Heads: []string{"No.", "Name", "Clock", "From the edge", "From TOP on the paper", "Arc on the metal", "Size"}}
	for i, row := range rows {
		x := c.Position(row.ClockDeg, 0).XMm
		t.Rows = append(t.Rows, []string{strconv.Itoa(row.N), row.Name, words.FineAngle(row.ClockDeg),
			s.W.Size(c.Features[i].AxialMm), s.exact(math.Abs(x)) + " clockwise", s.exact(row.ArcMm), row.SizeText})
	}
	return t
}
