package part

import (
	"centrepop/layout/plan"
)

// largeBlankMm is the side of a straight cone's blank above which paper goes
// out of true in joining more than the trammel does (common practice, no
// source).
const largeBlankMm = 420.0

// templatePolicy says of each flat pattern why it is not worth printing, where
// there is a better way to mark out. Every face with holes keeps its template.
func (d *shaper) templatePolicy() {
	for i := range d.Developments {
		p := &d.Developments[i]
		w, h := p.MaxMm.XMm-p.MinMm.XMm, p.MaxMm.YMm-p.MinMm.YMm
		switch {
		case p.Kind == plan.WrapPattern && len(p.Marks) == 1:
			p.NoTemplate = "one place alone: its arc from TOP and its distance from the face set it out"
		case p.Kind == plan.ConePattern && d.Part.Frustum != nil && d.Part.Frustum.Offset.Mm == 0 && max(w, h) > largeBlankMm:
			p.NoTemplate = "a straight cone: its two radii and the chord set it out better than joined paper"
		}
	}
}

// setOut is how a rolled blank gets onto its sheet.
func (b *bench) setOut() string {
	for _, p := range b.Developments {
		if p.NoTemplate != "" {
			text := "Set the blank out on " + b.StockText() + " with the trammel and cut: " + p.NoTemplate
			if f := b.Part.Frustum; f != nil && f.Overlap.Mm > 0 {
				text += "; past one straight edge of each piece leave " + b.W.Said(f.Overlap.Mm) + " more, square to it, for the overlap"
			}
			return text
		}
	}
	return "Mark the development on " + b.StockText() + " and cut"
}
