package picture

import (
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/templates/draw"
)

// Head is the head of the first sheet of a kind, its mass in the units of w.
func Head(part *plan.PartPlan, w words.Writer, kind string, width float64) draw.Piece {
	p, _ := titled(part, kind, width)
	p.Facts(width, facts(part, w)...)
	return p
}

// LowHead is the head of a part that stands under another: what is known of it
// beside its title, where that has room.
func LowHead(part *plan.PartPlan, w words.Writer, kind string, width float64) draw.Piece {
	const gap = 5.0
	p, x := titled(part, kind, width)
	room := width - draw.TextWidth(kind, draw.HeadMm, true) - x - 2*gap
	lines := draw.WrapFacts(facts(part, w), draw.FactsMm, room)
	if room < width/2 || len(lines) > 2 {
		return Head(part, w, kind, width)
	}
	for i, line := range lines {
		y := -7 + draw.FactsMm*draw.Leading*(float64(len(lines)-1)*0.6-float64(i))
		p.Draw.Add(draw.Text{XMm: x + gap, YMm: y, SizeMm: draw.FactsMm, Content: line})
	}
	y := -8 - 1.2*float64(len(lines))
	p.Draw.Add(draw.Segment(0, y, width, y, draw.ThickMm))
	p.Height = -y + 2.4
	return p
}

// titled is a head's title with its kind at the right, and how wide the title is.
func titled(part *plan.PartPlan, kind string, width float64) (p draw.Piece, titleMm float64) {
	title, size := draw.Shrink(part.Title, draw.TitleMm, true, width-draw.TextWidth(kind, draw.HeadMm, true)-6)
	p.Draw.Add(draw.Text{YMm: -7, SizeMm: size, Bold: true, Content: title, Heading: 1})
	p.Draw.Add(draw.Text{XMm: width, YMm: -7, SizeMm: draw.HeadMm, Bold: true, Align: draw.Right, Content: kind})
	return p, draw.TextWidth(title, size, true)
}

func facts(part *plan.PartPlan, w words.Writer) []string {
	return []string{part.Material, draw.Labelled("stock", part.StockText), draw.Labelled("size", part.Overall),
		draw.Labelled("mass", w.Mass(part.MassKg)), draw.Labelled("TOP marked by", part.Top)}
}
