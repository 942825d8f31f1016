package sequence

import (
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// Name heads the assembly's sheets in the index and the bookmarks.
const Name = "Assembly"

// jointHead is the head of a joint's first sheet: the step's number large in
// a box, the kind of joint, and what is joined.
func jointHead(pl *plan.Plan, run []*plan.JointPlan, width float64) draw.Piece {
	j := run[0]
	const side = 22.0
	var p draw.Piece
	p.Draw.Add(draw.Shape{Path: draw.R(0, -side, side, 0).Path(), Stroke: draw.Black, WidthMm: draw.ThickMm})
	p.Draw.Add(draw.Text{XMm: side / 2, YMm: -13.8, SizeMm: 15, Bold: true, Align: draw.Centre, Content: words.Span(j.N, len(run))}.Within(side - 4))
	p.Draw.Add(draw.Text{XMm: side / 2, YMm: -19.4, SizeMm: draw.TextMm, Align: draw.Centre, Content: "step of " + strconv.Itoa(len(pl.Joints))})
	x := side + 4
	p.Draw.Add(draw.Text{XMm: x, YMm: -8, SizeMm: 10, Bold: true, Content: kindWord(j)})
	if kg := run[len(run)-1].MassKg; kg > 0 {
		p.Draw.Add(draw.Text{XMm: width, YMm: -7, SizeMm: draw.HeadMm, Bold: true, Align: draw.Right, Content: "then " + words.Writer{Units: pl.Units}.Mass(kg)})
	}
	y := -10.5
	for _, line := range draw.Wrap(titleOf(run), 5.2, true, width-x) {
		y -= 5.2 * 1.25
		p.Draw.Add(draw.Text{XMm: x, YMm: y + 1.2, SizeMm: 5.2, Bold: true, Content: line, Heading: 1})
	}
	y -= 0.4
	line := func(text string) {
		for _, part := range draw.Wrap(text, draw.TextMm, false, width-x) {
			y -= draw.TextMm * draw.Leading
			p.Draw.Add(draw.Text{XMm: x, YMm: y + 1, SizeMm: draw.TextMm, Content: part})
		}
	}
	for _, text := range placeLines(run) {
		line(text)
	}
	y = min(y, -side)
	p.Draw.Add(draw.Segment(0, y-2, width, y-2, draw.ThickMm))
	p.Height = -y + 5
	return p
}

// kindWord is the word over a joint's sheet.
func kindWord(j *plan.JointPlan) string {
	if p := j.Press; p != nil && p.Method != "press" {
		return "SHRINK"
	}
	return strings.ToUpper(string(j.Kind))
}

// placeLines say how a step's parts come to lie, unless one of its rows does, and why
// it has its place in the order.
func placeLines(run []*plan.JointPlan) (out []string) {
	j := run[0]
	if len(run) == 1 && !j.Told {
		out = append(out, words.Capital(j.How)+".")
	}
	if len(j.Why) > 0 {
		out = append(out, "In the order: "+strings.Join(reasons(j.Why), "; ")+".")
	}
	return out
}

// reasons says what a joint comes after, those that have the same reason together:
// "after steps 1, 4–6: the job says so".
func reasons(why []plan.Reason) (out []string) {
	var ends []string
	steps := map[string][]int{}
	for _, w := range why {
		if len(steps[w.Why]) == 0 {
			ends = append(ends, w.Why)
		}
		steps[w.Why] = seq.Add(steps[w.Why], w.Step)
	}
	for _, end := range ends {
		name := words.Either(len(steps[end]) > 1, "steps ", "step ")
		out = append(out, "after "+name+words.Numbers(steps[end])+": "+end)
	}
	return out
}
