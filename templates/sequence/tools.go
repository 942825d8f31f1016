package sequence

import (
	"centrepop/layout/plan"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// ready names the tools that the workshop has made for the joints of a run, with
// the pages of their sheets, as many in a line as there is room for.
func (c closeness) ready(run []*plan.JointPlan, width float64) []draw.Piece {
	var names []string
	for _, j := range run {
		names = seq.Add(names, j.Tools...)
	}
	if len(names) == 0 {
		return nil
	}
	size := c.em(3.2)
	line := draw.Piece{Height: size * draw.Leading}
	var out []draw.Piece
	lead := "Have ready:"
	line.Draw.Add(draw.Text{YMm: -size, SizeMm: size, Content: lead})
	x := draw.TextWidth(lead, size, false) + size/2
	for _, name := range names {
		name, em := draw.Shrink(name, size, true, width-draw.PageOfMm(size)-size)
		long := draw.TextWidth(name, em, true)
		if x+long+size/2+draw.PageOfMm(size) > width && x > size {
			out, line, x = append(out, line), draw.Piece{Height: size * draw.Leading}, 0
		}
		line.Draw.Add(draw.Text{XMm: x, YMm: -size, SizeMm: em, Bold: true, Content: name})
		line.Refers = append(line.Refers, draw.PageOf{Title: name, XMm: x + long + size/2, YMm: -size, SizeMm: size})
		x += long + size + draw.PageOfMm(size) + size
	}
	return append(out, line, draw.Space(1.5))
}
