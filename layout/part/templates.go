package part

import (
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// largeBlankMm is the side of a straight cone's blank above which paper goes
// out of true in joining more than the trammel does (common practice, no
// source).
const largeBlankMm = 420.0

// templatePolicy says of each flat pattern why it is not worth printing, where
// there is a better way to mark out. Every face with holes keeps its template.
func (d *shaper) templatePolicy() {
	for p := range seq.Refs(d.Developments) {
		switch {
		case p.Kind == plan.WrapPattern:
			p.NoTemplate = d.needlessWrap(p)
		case p.Kind.Blank(): // what goes round an end, or beside a branch, is always worth its paper
			p.NoTemplate = d.form.needless(d)
		}
	}
}

// needlessWrap is why a wrap is not worth printing: it marks one place alone.
func (d *shaper) needlessWrap(p *plan.Development) string {
	if len(p.Marks) > 1 {
		return ""
	}
	return words.Spaced(p.Marks[0].Name) + " alone is set out there, by the table"
}

// setOut is how a blank that is rolled or bent gets onto its sheet: what a machine cuts by a file is not set out.
func (b *bench) setOut() string {
	if cut := b.Part.Stock.Cut; cut == "laser" || cut == "waterjet" {
		return "Cut by the cutting file of the blank from " + b.StockText()
	}
	for _, p := range b.blanks() {
		if p.NoTemplate != "" {
			text := "Set the blank out with the trammel on " + b.StockText() + ": " + p.NoTemplate
			if f := b.Part.Formed(); f != nil && f.Overlap.Mm != 0 {
				text += "; past one straight edge of each piece leave " + b.W.Said(f.Overlap.Mm) + " more, square to it, for the overlap"
			}
			return text
		}
	}
	return "Cut by the development's 1:1 template from " + b.StockText()
}

// oneTemplate has the through holes that are drawn on the second face of a flat part
// punched from the first: paper set once holds both patterns truer to each other than
// paper set twice. The second is the face that then needs the smaller template.
func (s *Sizes) oneTemplate() {
	if !s.Flat() || !s.marked(parts.Front) || !s.marked(parts.Back) {
		return
	}
	first, second := parts.Front, parts.Back
	if s.blindMm2(parts.Back) > s.blindMm2(parts.Front) {
		first, second = second, first
	}
	for m := range seq.Refs(s.Groups) {
		if m.Face == second && m.Through {
			m.Group.PunchedFrom = first
		}
	}
}

// blindMm2 is the area that holds all that does not go through from a face, and the
// nearer edges to set it by; 0 if there is nothing.
func (s *Sizes) blindMm2(f parts.Face) float64 {
	var box []plan.XY
	for m := range seq.Refs(s.Groups) {
		if m.Face == f && !m.Through {
			box = append(box, m.Points...)
		}
	}
	if len(box) == 0 {
		return 0
	}
	edges, all := s.boundsOn(f), geom.BoxOf(box...)
	return min(all.Max.XMm-edges.Min.XMm, edges.Max.XMm-all.Min.XMm) * min(all.Max.YMm-edges.Min.YMm, edges.Max.YMm-all.Min.YMm)
}

// carry puts on a face what its template marks of the other one.
func (s *Sizes) carry(out *plan.Face) {
	view := &plan.Face{Face: out.Face, MinMm: out.MinMm, DatumAt: out.DatumAt}
	for m := range seq.Refs(s.Groups) {
		if m.Group.PunchedFrom == out.Face {
			m.shown(s.W, view, 0)
		}
	}
	if len(view.Groups) > 0 {
		out.Carried = view
	}
}
