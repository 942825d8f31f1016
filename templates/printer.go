package templates

import (
	"fmt"
	"math"
	"strconv"

	"github.com/tdewolff/canvas"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/templates/draw"
)

// correct puts the pages of a document, drawn on the room of the options'
// paper, through the options' correction, about the middle of the full paper,
// and states it at the foot of each. Rules are corrected like all else, so
// that a true print shows true millimetres.
func correct(doc *draw.Document, pl *plan.Plan, opt Options) (*draw.Document, error) {
	c := opt.Printer
	if c == nil {
		return doc, nil
	}
	if err := c.Check(); err != nil {
		return nil, fmt.Errorf("templates: %w", err)
	}
	paper, err := paperOf(pl, Options{Paper: opt.Paper})
	if err != nil {
		return nil, err
	}
	for i := range doc.Pages {
		p := &doc.Pages[i]
		onItsSide := p.WidthMm > p.HeightMm
		drawn := p.Drawing
		inner := &draw.Drawing{}
		inner.Place(&drawn, statementMm/2, statementMm)
		text, size := draw.Shrink("Corrected for "+c.Text()+". True on this printer only: check the rules.", draw.TextMm, false, p.WidthMm-2*draw.MarginMm)
		inner.Add(draw.Text{XMm: draw.MarginMm + statementMm/2, YMm: draw.MarginMm + 0.9, SizeMm: size, Content: text})
		width, height := p.WidthMm+statementMm, p.HeightMm+statementMm
		p.WidthMm, p.HeightMm = paper.WidthMm, paper.HeightMm
		if onItsSide {
			p.WidthMm, p.HeightMm = paper.HeightMm, paper.WidthMm
		}
		p.Drawing = draw.Drawing{Items: []draw.Item{aboutMiddle(inner, c, onItsSide, plan.XY{XMm: width, YMm: height}, plan.XY{XMm: p.WidthMm, YMm: p.HeightMm})}}
	}
	return doc, nil
}

// aboutMiddle puts a drawing of a size through a correction, its
// middle on that of the paper.
func aboutMiddle(d *draw.Drawing, c *layout.Correction, onItsSide bool, size, paper plan.XY) draw.Group {
	m := c.Matrix(onItsSide)
	x, y := size.XMm/2, size.YMm/2
	return draw.Group{Drawing: d, Transform: canvas.Matrix{
		{m[0][0], m[0][1], paper.XMm/2 - m[0][0]*x - m[0][1]*y},
		{m[1][0], m[1][1], paper.YMm/2 - m[1][0]*x - m[1][1]*y},
	}}
}

// checkRimMm is the least that stays free between the rules of a check page
// and the edge of the paper.
const checkRimMm = 14.0

// CheckRules are the lengths of the two rules of a printer check page on a
// paper, across and up: the largest multiples of 50 mm that fit it upright.
// Paper that cannot hold 150 mm and 250 mm is refused: the reading would be
// too coarse, and a printer's correction holds for all its papers.
func CheckRules(paper parts.Paper) (acrossMm, upMm float64, err error) {
	long := func(side float64) float64 { return math.Floor((side-2*checkRimMm+1e-9)/50) * 50 }
	w, h := math.Min(paper.WidthMm, paper.HeightMm), math.Max(paper.WidthMm, paper.HeightMm)
	if !(w >= 150+2*checkRimMm && h >= 250+2*checkRimMm && h <= maxPaperMm) {
		return 0, 0, fmt.Errorf("paper of %s × %s mm: a printer is checked on A4, Letter or larger; the correction then holds for its other papers",
			words.Trim(paper.WidthMm, 1), words.Trim(paper.HeightMm, 1))
	}
	return long(w), long(h), nil
}

// CheckPage draws the page from which a printer is measured: a rule across and
// one up, both diagonals of their rectangle, and what to do with them. With a
// correction it proves the correction instead. The paper must be one that
// CheckRules takes.
func CheckPage(paper parts.Paper, c *layout.Correction) (*draw.Document, error) {
	f, err := paperOf(&plan.Plan{}, Options{Paper: paper})
	if err != nil {
		return nil, err
	}
	across, up, err := CheckRules(paper)
	if err != nil {
		return nil, err
	}
	if c != nil {
		if err := c.Check(); err != nil {
			return nil, fmt.Errorf("templates: %w", err)
		}
	}
	d := &draw.Drawing{}
	x, y := (f.WidthMm-across)/2, (f.HeightMm-up)/2
	checkRule(d, x, y, across, false)
	checkRule(d, x, y, up, true)
	corners := [4][2]float64{{x, y}, {x + across, y + up}, {x + across, y}, {x, y + up}}
	// The diagonals are only hinted at near their ends: the text is between.
	for i, p := range corners {
		q := corners[i^1]
		l := math.Hypot(q[0]-p[0], q[1]-p[1])
		d.Add(draw.Segment(p[0]+(q[0]-p[0])*15/l, p[1]+(q[1]-p[1])*15/l, p[0]+(q[0]-p[0])*28/l, p[1]+(q[1]-p[1])*28/l, draw.ThinMm))
		d.Add(cornerMark(p[0], p[1])...)
	}
	for i, p := range [2][2]float64{{x, y}, {x + across, y}} {
		dx := 18.0
		if i == 1 {
			dx = -18
		}
		d.Add(draw.Text{XMm: p[0] + dx, YMm: p[1] + 26, SizeMm: draw.TitleMm, Bold: true, Align: draw.Centre, Content: strconv.Itoa(i + 1)})
	}
	checkText(d, f, c, draw.R(x, y, x+across, y+up))
	title := "Printer check, " + f.Name
	page := draw.Page{WidthMm: f.WidthMm, HeightMm: f.HeightMm, Drawing: *d, Label: "1", Bookmarks: []draw.Bookmark{{Title: title}}}
	if c != nil {
		sheet := plan.XY{XMm: f.WidthMm, YMm: f.HeightMm}
		page.Drawing = draw.Drawing{Items: []draw.Item{aboutMiddle(d, c, false, sheet, sheet)}}
	}
	return &draw.Document{Title: title, Subject: "Printer check", Language: "en", Pages: []draw.Page{page}}, nil
}

// checkRule is a rule of any length with its zero at (x, y), numbers and marks
// inside the rectangle of both rules.
func checkRule(d *draw.Drawing, x, y, length float64, up bool) {
	marks := &canvas.Path{}
	for i := 0; i <= int(length); i++ {
		at, tick := float64(i), draw.TickMm(i)
		if up {
			marks.MoveTo(x, y+at)
			marks.LineTo(x+tick, y+at)
		} else {
			marks.MoveTo(x+at, y)
			marks.LineTo(x+at, y+tick)
		}
		if i%10 != 0 || i == 0 || i == int(length) {
			continue
		}
		t := draw.Text{XMm: x + at, YMm: y + 4.8, SizeMm: draw.SmallMm, Align: draw.Centre, Content: strconv.Itoa(i)}
		if up {
			t.XMm, t.YMm, t.Align = x+4.6, y+at-0.95, draw.Left
		}
		d.Add(t)
	}
	d.Add(draw.Shape{Path: marks, Stroke: draw.Black, WidthMm: draw.ThinMm})
	if up {
		d.Add(draw.Segment(x, y, x, y+length, draw.ThinMm))
	} else {
		d.Add(draw.Segment(x, y, x+length, y, draw.ThinMm))
	}
}

// cornerMark is a fine cross with a ring: the point to measure from.
func cornerMark(x, y float64) []draw.Item {
	return []draw.Item{
		draw.Segment(x-5, y, x+5, y, draw.ThinMm),
		draw.Segment(x, y-5, x, y+5, draw.ThinMm),
		draw.Ring(x, y, 2.5, draw.ThinMm),
	}
}

// checkText says between the corners what to do, and gives blanks for the readings.
func checkText(d *draw.Drawing, f draw.Frame, c *layout.Correction, corners draw.Rect) {
	across, up := corners.Width(), corners.Height()
	r := draw.R(corners.X0+16, corners.Y0+34, corners.X1-8, corners.Y1-28)
	diagonal := words.Trim(math.Hypot(across, up), 1)
	steps := []string{
		"Print this page at “Actual size” or “100 %”, with “Fit to page” off, on the paper you use for templates. Let it lie a minute: warm paper is dry and short.",
		"Measure with a steel rule between the centres of the ringed corner crosses, to 0.1 mm if you can: with the rule's own 10 mm mark as the start, not its worn end.",
		"Across is the lower edge, up the left edge. Diagonal 1 runs from corner 1, lower left, to the upper right; diagonal 2 from corner 2, lower right, to the upper left.",
		"Give the tool the readings:",
	}
	command := fmt.Sprintf("centrepop printer set NAME --paper %s --across … --up … --diagonal1 … --diagonal2 …", paperArgument(f))
	after := "Then print with --printer NAME. Print this page again with --printer NAME to prove it: all four lengths must be right to 0.2 mm. Measure anew after a change of paper, driver or toner."
	head := "Printer check"
	if c != nil {
		head = "Printer check, corrected"
		steps = []string{
			"This page is corrected for " + c.Text() + ".",
			"Print it on that printer at “Actual size” or “100 %” and measure between the centres of the ringed corner crosses. All four lengths must be right to 0.2 mm.",
		}
		command, after = "", "If they are not, print the page without --printer, measure and set the printer again."
	}
	pieces := []draw.Piece{draw.Heading(head, r.Width()), draw.Space(1.5)}
	for i, s := range steps {
		pieces = append(pieces, draw.Numbered(strconv.Itoa(i+1), s, r.Width()))
	}
	if command != "" {
		pieces = append(pieces, draw.Paragraph("", command, draw.TextMm, true, r.Width())...)
	}
	pieces = append(pieces, draw.Space(1.5))
	pieces = append(pieces, draw.Paragraph("", after, 3.8, false, r.Width())...)
	text := draw.Stack(pieces...)
	d.Place(&text.Draw, r.X0, r.Y1)
	y := r.Y1 - text.Height - 12
	for _, row := range [][2]string{
		{"Across", words.Trim(across, 1)}, {"Up", words.Trim(up, 1)}, {"Diagonal 1", diagonal}, {"Diagonal 2", diagonal},
	} {
		d.Add(draw.Text{XMm: r.X0, YMm: y, SizeMm: draw.HeadMm, Bold: true, Content: row[0]},
			draw.Text{XMm: r.X0 + 29, YMm: y, SizeMm: draw.HeadMm, Content: "of " + row[1] + ":"},
			draw.Segment(r.X0+51, y-1, r.X0+79, y-1, draw.LineMm),
			draw.Text{XMm: r.X0 + 81, YMm: y, SizeMm: draw.HeadMm, Content: "mm"})
		y -= 11
	}
}

// paperArgument names the paper as --paper takes it.
func paperArgument(f draw.Frame) string {
	switch f.Name {
	case "A4", "A3", "Letter", "Tabloid":
		return f.Name
	}
	return words.Trim(f.WidthMm, 1) + "x" + words.Trim(f.HeightMm, 1)
}
