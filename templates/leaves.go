package templates

import (
	"fmt"
	"slices"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/sheets"
)

// leaves lays the packet out for printing on both sides of the paper, behind a cover of
// so many pages: what is cut out begins on an odd page and has the other side of its
// leaf to itself.
func leaves(chapters []draw.Chapter, cover int) []draw.Chapter {
	out, n := slices.Clone(chapters), cover
	for i, c := range chapters {
		out[i].Sheets = nil
		for _, s := range c.Sheets {
			if s.Scale == draw.TrueScale && n%2 == 1 {
				at := &out[i]
				if i > 0 && len(at.Sheets) == 0 {
					at = &out[i-1]
				}
				at.Sheets = append(at.Sheets, empty(s.Frame, "the next leaf is cut out"))
				n++
			}
			out[i].Sheets = append(out[i].Sheets, s)
			if n++; s.Scale == draw.TrueScale {
				out[i].Sheets = append(out[i].Sheets, empty(s.Frame, "the other side is cut out"))
				n++
			}
		}
	}
	return out
}

// empty is a side of a leaf that is left so.
func empty(f draw.Frame, why string) *draw.Sheet {
	s := &draw.Sheet{Frame: f, Name: "empty"}
	s.Close = func(n, total int) {
		s.Draw.Add(draw.Text{XMm: f.WidthMm / 2, YMm: draw.MarginMm, SizeMm: draw.SmallMm, Align: draw.Centre,
			Content: fmt.Sprintf("left empty: %s · page %d of %d", why, n, total)})
	}
	return s
}

// coverOf is what the cover tells of a job: of a packet of some parts these alone, what
// they are sawn from and their machines; what is bought and lifted stands in the whole
// packet.
func (opt Options) coverOf(pl *plan.Plan) *plan.Plan {
	if len(opt.Parts) == 0 {
		return pl
	}
	one := *pl
	one.Parts = slices.DeleteFunc(slices.Clone(pl.Parts), func(p *plan.PartPlan) bool { return !slices.Contains(opt.Parts, p.Name) })
	sawn := func(piece plan.CutPiece) bool { return slices.Contains(opt.Parts, piece.Name) }
	one.Dangers = slices.DeleteFunc(slices.Clone(pl.Dangers), func(d plan.Danger) bool {
		return !slices.ContainsFunc(one.Parts, func(p *plan.PartPlan) bool {
			return slices.ContainsFunc(p.Operations, func(op plan.Operation) bool { return op.Machine == d.Machine })
		})
	})
	one.Bought, one.Lifts, one.Arrangement, one.Cuts = nil, nil, nil, nil
	for _, c := range pl.Cuts {
		if bars := slices.DeleteFunc(slices.Clone(c.Bars), func(b plan.CutBar) bool {
			return !slices.ContainsFunc(b.Pieces, sawn)
		}); len(bars) > 0 {
			if c.BarMm == 0 { // no order among them
				bars[0].Pieces = slices.DeleteFunc(slices.Clone(bars[0].Pieces), func(p plan.CutPiece) bool { return !sawn(p) })
			}
			c.Bars = bars
			one.Cuts = append(one.Cuts, c)
		}
	}
	return &one
}

// covered puts the cover before the chapters, which it names by their pages.
func (opt Options) covered(pl *plan.Plan, chapters []draw.Chapter, paper draw.Frame) (cover draw.Chapter, all []draw.Chapter) {
	all, pl = chapters, opt.coverOf(pl)
	own := sheets.Cover(pl, opt.Findings, paper, all, 0)
	for n := 0; opt.TwoSided && n != len(own); { // its length hangs on the pages that it names
		n = max(n, len(own))
		all = leaves(chapters, n)
		if own = sheets.Cover(pl, opt.Findings, paper, all, n); len(own) < n {
			own = append(own, empty(paper, "so that what is cut out begins a leaf"))
		}
	}
	return draw.Chapter{Name: "Cover", Sheets: own}, all
}
