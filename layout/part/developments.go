package part

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/develop"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

const (
	wrapTabMm    = 15.0  // overlap to glue: common practice, no source
	wrapBeyondMm = 15.0  // paper beyond the last feature
	wrapLeastMm  = 40.0  // narrower strips do not lie true
	wrapSplitMm  = 250.0 // longer steps get a template from each end
)

// developments works out every flat pattern of the part.
func (r *Model) developments() {
	r.wraps()
	if f := r.Part.Frustum; f != nil {
		r.cone(f)
	}
	if t := r.Part.Transition; t != nil {
		r.transition(t)
	}
	r.saddles()
}

// paperMm is the thickness of the printing paper.
func (r *Model) paperMm() float64 {
	if p := r.Job.Shop.PaperThick; p.Set() {
		return p.Mm
	}
	return 0.1
}

// wraps makes a template for each outside cylinder that carries radial
// features; a long one with features near both ends gets two, each measured
// from its own end.
func (r *Model) wraps() {
	outside, _ := r.Sides()
	for _, st := range outside {
		var front, back []plan.RadialRow
		for _, row := range r.Out.Radials {
			if r.outsideAt(row.AxialMm) != st {
				continue
			}
			if row.AxialMm-st.FromMm > st.ToMm-row.AxialMm {
				back = append(back, row)
			} else {
				front = append(front, row)
			}
		}
		if st.ToMm-st.FromMm <= wrapSplitMm && len(front) > 0 {
			front, back = append(front, back...), nil
		}
		both := len(front) > 0 && len(back) > 0
		if len(front) > 0 {
			r.wrap(st, front, develop.FrontFace, both)
		}
		if len(back) > 0 {
			r.wrap(st, back, develop.BackFace, both)
		}
	}
}

// wrap makes one template.
func (r *Model) wrap(st *Step, rows []plan.RadialRow, edge develop.Face, both bool) {
	slices.SortStableFunc(rows, func(a, b plan.RadialRow) int { return a.N - b.N })
	c := develop.Cylinder{DiameterMm: st.Size.NominalMm, PaperMm: r.paperMm(), Edge: edge, AutoSeam: true}
	c.TabMm = math.Min(wrapTabMm, words.Round(math.Pi*c.DiameterMm/5, 1))
	reach := 0.0
	for _, row := range rows {
		f := develop.Feature{Name: row.Name + " " + strconv.Itoa(row.N), ClockDeg: row.ClockDeg, AxialMm: geom.Clean(row.AxialMm - st.FromMm)}
		if edge == develop.BackFace {
			f.AxialMm = geom.Clean(st.ToMm - row.AxialMm)
		}
		along := row.AlongMm
		switch parts.RadialShape(row.Shape) {
		case parts.RadialHole:
			f.Kind, f.DiameterMm = develop.Hole, row.DiameterMm
			along = row.DiameterMm
		case parts.RadialSlot:
			f.Kind, f.WidthMm, f.LengthMm = develop.AxialSlot, row.AroundMm, row.AlongMm
			if row.AroundMm > row.AlongMm {
				f.Kind, f.WidthMm, f.LengthMm = develop.AroundSlot, row.AlongMm, row.AroundMm
			}
		default:
			f.Kind, f.OnSurface = develop.Window, true
			f.WidthMm, f.LengthMm, f.CornerMm = row.AroundMm, row.AlongMm, row.CornerMm
		}
		c.Features = append(c.Features, f)
		reach = math.Max(reach, f.AxialMm+along/2)
	}
	length := geom.Clean(st.ToMm - st.FromMm)
	c.WidthMm = math.Min(length, math.Max(wrapLeastMm, math.Ceil((reach+wrapBeyondMm)/5)*5))
	d, err := c.Develop()
	if err != nil {
		r.Out.Notes = append(r.Out.Notes, "No wrap template for "+words.Spaced(st.Name)+": "+patternFault(err)+". Mark out by the table of arcs.")
		return
	}
	name, at := "wrap-"+st.Name, words.Spaced(st.Name)
	if both {
		name += "-" + map[develop.Face]string{develop.FrontFace: "front", develop.BackFace: "back"}[edge]
	}
	out := r.pattern(name, plan.WrapPattern, d)
	out.Title = "Wrap template: " + at + ", " + r.W.Dia(c.DiameterMm)
	out.On = "the outside of " + at + ", " + r.W.Dia(c.DiameterMm)
	if st.Name == "outside" {
		out.On = "the outside, " + r.W.Dia(c.DiameterMm)
	}
	out.Edge, out.Beyond = r.seat(st, edge)
	out.PaperMm, out.WidthMm = c.PaperMm, c.WidthMm
	out.WrapMm, _ = d.Result("wrap length")
	out.ScaleMm, _ = d.Result("millimetres per degree")
	out.SeamDeg, _ = d.Result("seam clock angle")
	if edge == develop.BackFace {
		out.ScaleMm = -out.ScaleMm
	}
	labels, boxes := map[string][]develop.Label{}, map[string][]develop.Box{}
	for _, l := range d.Labels {
		labels[l.Text] = append(labels[l.Text], l)
	}
	for _, c := range d.Curves {
		boxes[c.Name] = append(boxes[c.Name], c.Box())
	}
	for i, row := range rows {
		name := c.Features[i].Name
		out.Marks = append(out.Marks, r.patternMarks(row, labels[name], boxes[name])...)
	}
	out.Sizes = []plan.PatternValue{
		{Name: "wrap length, seam to seam", Text: r.exact(out.WrapMm)},
		{Name: "paper thickness allowed", Text: r.W.Size(c.PaperMm)},
		{Name: "overlap tab", Text: r.W.Size(c.TabMm)},
		{Name: "seam at clock", Text: words.Trim(out.SeamDeg, 2) + "°"},
		{Name: "one degree", Text: r.W.Size(math.Abs(out.ScaleMm))},
	}
	out.Tables = []plan.PatternTable{r.wrapTable(rows, c, d)}
	out.Notes = []string{
		"Wrap it printed side out. " + words.Capital(out.Edge) + ". TOP line on the TOP mark.",
		"The end must just meet the seam line over the tab. If it does not, measure the outside and print again for that size: 0.1 on the diameter is 0.31 round.",
		"Outlines are those on the outside surface, drilled square to the axis; windows are measured along the surface.",
	}
	if n := r.edgeNote(st, edge); n != "" {
		out.Notes = append(out.Notes, n)
	}
	r.Out.Developments = append(r.Out.Developments, out)
}

// seat says what the square edge of a wrap is set to and what lies beyond it.
func (r *Model) seat(st *Step, edge develop.Face) (seat, beyond string) {
	outside, _ := r.Sides()
	i := slices.Index(outside, st)
	j, end := i-1, parts.Front
	beyond = "to the back"
	if edge == develop.BackFace {
		j, end, beyond = i+1, parts.Back, "to the front"
	}
	switch {
	case j < 0 || j >= len(outside):
		return "this edge level with the " + string(end) + " face", beyond
	case outside[j].Size.NominalMm > st.Size.NominalMm:
		return "this edge against the shoulder of " + words.Spaced(outside[j].Name) + ", on the " + string(end) + " side", beyond
	}
	return "this edge level with the " + string(end) + " end of " + words.Spaced(st.Name), beyond
}

// edgeNote warns where a bevel takes away the edge that the paper is set to.
func (r *Model) edgeNote(st *Step, edge develop.Face) string {
	end := parts.Front
	if edge == develop.BackFace {
		end = parts.Back
	}
	for _, c := range r.Part.Chamfers {
		if c.Edge.Value == st.Name+"-"+string(end) {
			return "The edge is bevelled " + r.W.Size(c.Size.Mm) + ": hold a straight edge on the face and set the paper to it."
		}
	}
	return ""
}

// patternMarks finds where a feature lies on the pattern: once, or twice if it
// crosses the seam.
func (r *Model) patternMarks(row plan.RadialRow, labels []develop.Label, boxes []develop.Box) []plan.PatternMark {
	var out []plan.PatternMark
	for _, l := range labels {
		m := plan.PatternMark{N: row.N, Name: row.Name, CentreMm: at(l.At), DiameterMm: row.DiameterMm, Size: row.SizeText}
		for _, b := range boxes {
			if b.Min.XMm <= l.At.XMm && l.At.XMm <= b.Max.XMm {
				m.MinMm, m.MaxMm = at(b.Min), at(b.Max)
			}
		}
		out = append(out, m)
	}
	return out
}

// wrapTable lists the features as distances to mark without the template.
func (r *Model) wrapTable(rows []plan.RadialRow, c develop.Cylinder, d develop.Development) plan.PatternTable {
	t := plan.PatternTable{Title: "Features", Heads: []string{"No.", "Name", "Clock", "From the edge", "From TOP on the paper", "Arc on the metal", "Size"}}
	for i, row := range rows {
		x := c.Position(row.ClockDeg, 0).XMm
		t.Rows = append(t.Rows, []string{strconv.Itoa(row.N), row.Name, words.Trim(row.ClockDeg, 3) + "°",
			r.W.Size(c.Features[i].AxialMm), r.exact(math.Abs(x)) + " clockwise", r.exact(row.ArcMm), row.SizeText})
	}
	return t
}

// pattern takes over the lines and labels of a development.
func (r *Model) pattern(name string, kind plan.DevelopmentKind, d develop.Development) plan.Development {
	out := plan.Development{Name: name, Kind: kind, Copies: 1, MinMm: at(d.Box.Min), MaxMm: at(d.Box.Max)}
	for _, c := range d.Curves {
		out.Lines = append(out.Lines, plan.PatternLine{Name: c.Name, Role: c.Role.String(), Path: contour(c)})
		if c.Name == "edge" && c.Closed {
			out.AreaMm2 = math.Abs(c.AreaMm2())
		}
	}
	for _, l := range d.Labels {
		out.Labels = append(out.Labels, plan.PatternLabel{Text: l.Text, AtMm: at(l.At)})
	}
	for _, f := range d.Formulas {
		out.Rules = append(out.Rules, f.Name+": "+f.Rule)
	}
	return out
}

// values writes results in the job's units.
func (r *Model) values(list []develop.Value) []plan.PatternValue {
	var out []plan.PatternValue
	for _, v := range list {
		out = append(out, plan.PatternValue{Name: v.Name, Text: r.inUnit(v.Value, v.Unit)})
	}
	return out
}

// tables writes the tables of a development in the job's units.
func (r *Model) tables(list []develop.Table) []plan.PatternTable {
	var out []plan.PatternTable
	for _, t := range list {
		p := plan.PatternTable{Title: t.Title, Heads: []string{"No."}}
		for _, c := range t.Columns {
			p.Heads = append(p.Heads, c.Name)
		}
		for _, row := range t.Rows {
			cells := []string{row.Label}
			for i, v := range row.Values {
				cells = append(cells, r.inUnit(v, t.Columns[i].Unit))
			}
			p.Rows = append(p.Rows, cells)
		}
		out = append(out, p)
	}
	return out
}

func (r *Model) inUnit(v float64, unit string) string {
	switch unit {
	case "mm":
		return r.exact(v)
	case "deg":
		return words.Trim(v, 2) + "°"
	case "mm2":
		if r.Job.Units == parts.Inches {
			return words.Trim(v/words.MmPerInch/words.MmPerInch, 1) + " sq in"
		}
		return words.Trim(v/100, 1) + " cm²"
	}
	return words.Trim(v, 3)
}

// exact writes a length of a pattern: to 0.01 mm, or 0.001 in.
func (r *Model) exact(mm float64) string {
	if r.Job.Units == parts.Inches {
		return strings.Replace(strconv.FormatFloat(words.Round(mm/words.MmPerInch, 3), 'f', 3, 64), "-0.000", "0.000", 1)
	}
	return strings.Replace(strconv.FormatFloat(words.Round(mm, 2), 'f', 2, 64), "-0.00", "0.00", 1)
}

func at(p develop.Point) plan.XY { return plan.XY{XMm: geom.Clean(p.XMm), YMm: geom.Clean(p.YMm)} }

// contour writes a curve as SVG path data, y up, to a millionth of a
// millimetre; arcs stay arcs.
func contour(c develop.Curve) plan.Contour {
	var b strings.Builder
	point := func(cmd string, p develop.Point) {
		b.WriteString(cmd + coordinate(p.XMm) + " " + coordinate(p.YMm))
	}
	point("M", c.Start)
	from := c.Start
	for _, s := range c.Segments {
		if s.SweepDeg == 0 {
			point("L", s.To)
			from = s.To
			continue
		}
		// Halves, because a full turn has no single arc in SVG.
		radius := math.Hypot(from.XMm-s.Center.XMm, from.YMm-s.Center.YMm)
		sin, cos := math.Sincos(s.SweepDeg / 2 * math.Pi / 180)
		dx, dy := from.XMm-s.Center.XMm, from.YMm-s.Center.YMm
		middle := develop.Point{XMm: s.Center.XMm + dx*cos - dy*sin, YMm: s.Center.YMm + dx*sin + dy*cos}
		sweep := "0"
		if s.SweepDeg > 0 {
			sweep = "1"
		}
		for _, to := range []develop.Point{middle, s.To} {
			point("A"+coordinate(radius)+" "+coordinate(radius)+" 0 0 "+sweep+" ", to)
		}
		from = s.To
	}
	if c.Closed {
		b.WriteString("Z")
	}
	return plan.Contour(b.String())
}

func coordinate(mm float64) string { return words.Trim(mm, 6) }

// patternFault is a library's refusal without its prefixes.
func patternFault(err error) string {
	return strings.ReplaceAll(strings.ReplaceAll(err.Error(), develop.ErrInput.Error()+": ", ""), "develop: ", "")
}
