package picture

import (
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/templates/draw"
)

// Head is the head of the first sheet of a kind, its mass in the units of w.
func Head(part *plan.PartPlan, w words.Writer, kind string, width float64) draw.Piece {
	var p draw.Piece
	kindWidth := draw.TextWidth(kind, draw.HeadMm, true)
	title, size := draw.Shrink(part.Title, draw.TitleMm, true, width-kindWidth-6)
	p.Draw.Add(draw.Text{YMm: -7, SizeMm: size, Bold: true, Content: title, Heading: 1})
	p.Draw.Add(draw.Text{XMm: width, YMm: -7, SizeMm: draw.HeadMm, Bold: true, Align: draw.Right, Content: kind})
	facts := words.Join("   ·   ", part.Material, draw.Labelled("stock", part.StockText),
		draw.Labelled("size", part.Overall), draw.Labelled("mass", w.Mass(part.MassKg)), draw.Labelled("TOP marked by", part.Top))
	p.Facts(facts, width)
	return p
}
