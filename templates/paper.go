package templates

import (
	"fmt"
	"math"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/templates/draw"
)

// The smallest and largest paper that the sheets can be laid out on, in
// millimetres.
const (
	minPaperWidthMm  = 140
	minPaperHeightMm = 200
	maxPaperMm       = 2000
)

// paperOf returns the paper, upright.
func paperOf(pl *plan.Plan, opt Options) (draw.Frame, error) {
	paper := opt.Paper
	if paper.WidthMm == 0 && paper.HeightMm == 0 {
		paper = pl.Paper
	}
	if paper.WidthMm == 0 && paper.HeightMm == 0 {
		paper = parts.Paper{Name: "A4", WidthMm: 210, HeightMm: 297}
	}
	w, h := min(paper.WidthMm, paper.HeightMm), max(paper.WidthMm, paper.HeightMm)
	if !(w >= minPaperWidthMm && h >= minPaperHeightMm && h <= maxPaperMm) {
		return draw.Frame{}, fmt.Errorf("templates: paper of %s × %s mm: the sheets need at least %d × %d mm and at most %d mm",
			words.Trim(paper.WidthMm, 2), words.Trim(paper.HeightMm, 2), minPaperWidthMm, minPaperHeightMm, maxPaperMm)
	}
	name := paper.Name
	if name == "" || name == "custom" {
		name = words.Trim(w, 1) + " × " + words.Trim(h, 1) + " mm"
	}
	return room(opt.Printer, draw.Frame{WidthMm: w, HeightMm: h, Name: name}), nil
}

// statementMm is the strip along the foot of a corrected sheet that states the
// correction. The sheets lose it in both directions, so that they may lie
// either way.
const statementMm = 4.5

// room is what a correction leaves of upright paper for the sheets, so that
// the corrected drawing keeps the margins of the paper. All of the paper
// without a correction, or with one that correct refuses.
func room(c *layout.Correction, f draw.Frame) draw.Frame {
	if c == nil || c.Check() != nil {
		return f
	}
	m := c.Matrix(false)
	w, h := f.WidthMm-2*draw.MarginMm, f.HeightMm-2*draw.MarginMm
	h1 := math.Min(h, h/m[1][1])
	w1 := math.Min(w, (w-math.Abs(m[0][1])*h1)/m[0][0])
	f.WidthMm, f.HeightMm = w1+2*draw.MarginMm-statementMm, h1+2*draw.MarginMm-statementMm
	return f
}
