package picture

import (
	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/figures"
)

// Head is the head of the first sheet of a kind.
func Head(part *plan.PartPlan, kind string, width float64) draw.Piece {
	var p draw.Piece
	kindWidth := draw.TextWidth(kind, draw.HeadMm, true)
	title, size := draw.Shrink(part.Title, draw.TitleMm, true, width-kindWidth-6)
	p.Draw.Add(draw.Text{YMm: -7, SizeMm: size, Bold: true, Content: title, Heading: 1})
	p.Draw.Add(draw.Text{XMm: width, YMm: -7, SizeMm: draw.HeadMm, Bold: true, Align: draw.Right, Content: kind})
	facts := figures.Joined("   ·   ", part.Material, draw.Labelled("stock", part.StockText),
		draw.Labelled("size", part.Overall), draw.Labelled("mass", figures.Mass(part.MassKg)), draw.Labelled("TOP marked by", part.Top))
	p.Facts(facts, width)
	return p
}
