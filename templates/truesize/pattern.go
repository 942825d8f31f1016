package truesize

import (
	"strconv"

	"centrepop/layout/plan"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// patternPadMm is the paper left around a flat pattern, patternRimMm the least.
const (
	patternPadMm = 4.0
	patternRimMm = 0.8
)

// pattern is a flat pattern in the making.
type pattern struct {
	pl      *plan.Plan
	part    *plan.PartPlan
	dev     *plan.Development
	outline *canvas.Path
	lines   []patternLine
	half    bool // up to its mirror line alone
}

// patternLine is a line of the pattern with its path read, and how far it
// reaches.
type patternLine struct {
	plan.PatternLine
	path  *canvas.Path
	reach draw.Rect
}

// how says what is done along the lines.
func (p *pattern) how() string {
	switch {
	case p.dev.Kind == plan.FoldPattern:
		return "Cut along the middle of the outline, pop in the open middle of each cross, scribe the ends of the fold lines."
	case len(p.dev.Marks) > 0:
		return "Pop in the open middle of each cross, then along the outlines of windows and slots."
	case p.dev.Kind == plan.MainPattern:
		return "Punch the metal along the curve; the scale is the clock of the main."
	}
	return "Cut along the middle of the outline, or punch the metal through it."
}

// legend says what the pattern is for, where its edge goes and how it is cut.
func (p *pattern) legend() []string {
	d := p.dev
	var lines []string
	if d.Edge != "" {
		lines = append(lines, "lower edge: "+d.Edge+"; up is "+d.Beyond)
	}
	if d.Origin != "" {
		lines = append(lines, "ringed cross: "+d.Origin+"; up is "+d.Beyond)
	}
	if d.Copies > 1 {
		lines = append(lines, "cut "+strconv.Itoa(d.Copies)+" for one part")
	}
	return lines
}

func (p *pattern) unit() string { return string(p.pl.Units) }

// patternStroke is how the lines of each role are drawn.
func patternStroke(role string) (width float64, dash []float64) {
	switch role {
	case "edge", "cut", "top":
		return draw.LineMm, nil
	case "tab":
		return draw.ThinMm, nil
	case "seam":
		return draw.ThinMm, draw.ChainDash
	case "fold":
		return 0.25, draw.CutDash
	}
	return draw.HairMm, nil
}
