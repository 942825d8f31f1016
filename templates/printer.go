package templates

import (
	"fmt"
	"math"
	"strconv"

	"github.com/tdewolff/canvas"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/parts"
)

// statementMm is the strip along the foot of a corrected sheet that states the
// correction. The sheets lose it in both directions, so that they may lie
// either way.
const statementMm = 4.5

// room is what a correction leaves of upright paper for the sheets, so that
// the corrected drawing keeps the margins of the paper. All of the paper
// without a correction, or with one that correct refuses.
func room(c *layout.Correction, f frame) frame {
	if c == nil || c.Check() != nil {
		return f
	}
	m := c.Matrix(false)
	w, h := f.width-2*marginMm, f.height-2*marginMm
	h1 := math.Min(h, h/m[1][1])
	w1 := math.Min(w, (w-math.Abs(m[0][1])*h1)/m[0][0])
	f.width, f.height = w1+2*marginMm-statementMm, h1+2*marginMm-statementMm
	return f
}

// correct puts the pages of a document, drawn on the room of the options'
// paper, through the options' correction, about the middle of the full paper,
// and states it at the foot of each. Rules are corrected like all else, so
// that a true print shows true millimetres.
func (doc *Document) correct(pl *plan.Plan, opt Options) (*Document, error) {
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
		inner := &Drawing{}
		inner.Place(&drawn, statementMm/2, statementMm)
		text, size := shrink("Corrected for "+c.Text()+". True on this printer only: check the rules.", textMm, false, p.WidthMm-2*marginMm)
		inner.Add(Text{XMm: marginMm + statementMm/2, YMm: marginMm + 0.9, SizeMm: size, Content: text})
		width, height := p.WidthMm+statementMm, p.HeightMm+statementMm
		p.WidthMm, p.HeightMm = paper.width, paper.height
		if onItsSide {
			p.WidthMm, p.HeightMm = paper.height, paper.width
		}
		p.Drawing = Drawing{Items: []Item{aboutMiddle(inner, c, onItsSide, width, height, p.WidthMm, p.HeightMm)}}
	}
	return doc, nil
}

// aboutMiddle puts a drawing of width × height through a correction, its
// middle on that of the paper.
func aboutMiddle(d *Drawing, c *layout.Correction, onItsSide bool, width, height, paperWidth, paperHeight float64) Group {
	m := c.Matrix(onItsSide)
	x, y := width/2, height/2
	return Group{Drawing: d, Transform: canvas.Matrix{
		{m[0][0], m[0][1], paperWidth/2 - m[0][0]*x - m[0][1]*y},
		{m[1][0], m[1][1], paperHeight/2 - m[1][0]*x - m[1][1]*y},
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
			trimmed(paper.WidthMm, 1), trimmed(paper.HeightMm, 1))
	}
	return long(w), long(h), nil
}

// CheckPage draws the page from which a printer is measured: a rule across and
// one up, both diagonals of their rectangle, and what to do with them. With a
// correction it proves the correction instead. The paper must be one that
// CheckRules takes.
func CheckPage(paper parts.Paper, c *layout.Correction) (*Document, error) {
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
	d := &Drawing{}
	x, y := (f.width-across)/2, (f.height-up)/2
	checkRule(d, x, y, across, false)
	checkRule(d, x, y, up, true)
	corners := [4][2]float64{{x, y}, {x + across, y + up}, {x + across, y}, {x, y + up}}
	// The diagonals are only hinted at near their ends: the text is between.
	for i, p := range corners {
		q := corners[i^1]
		l := math.Hypot(q[0]-p[0], q[1]-p[1])
		d.Add(segment(p[0]+(q[0]-p[0])*15/l, p[1]+(q[1]-p[1])*15/l, p[0]+(q[0]-p[0])*28/l, p[1]+(q[1]-p[1])*28/l, thinMm))
		d.Add(cornerMark(p[0], p[1])...)
	}
	for i, p := range [2][2]float64{{x, y}, {x + across, y}} {
		dx := 18.0
		if i == 1 {
			dx = -18
		}
		d.Add(Text{XMm: p[0] + dx, YMm: p[1] + 26, SizeMm: titleMm, Bold: true, Align: Centre, Content: strconv.Itoa(i + 1)})
	}
	checkText(d, f, c, rect{x + 16, y + 34, x + across - 8, y + up - 28}, across, up)
	title := "Printer check, " + f.name
	page := Page{WidthMm: f.width, HeightMm: f.height, Drawing: *d, Label: "1", Bookmarks: []Bookmark{{Title: title}}}
	if c != nil {
		page.Drawing = Drawing{Items: []Item{aboutMiddle(d, c, false, f.width, f.height, f.width, f.height)}}
	}
	return &Document{Title: title, Subject: "Printer check", Language: "en", Pages: []Page{page}}, nil
}

// checkRule is a rule of any length with its zero at (x, y), numbers and marks
// inside the rectangle of both rules.
func checkRule(d *Drawing, x, y, length float64, up bool) {
	marks := &canvas.Path{}
	for i := 0; i <= int(length); i++ {
		at, tick := float64(i), tickMm(i)
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
		t := Text{XMm: x + at, YMm: y + 4.8, SizeMm: smallMm, Align: Centre, Content: strconv.Itoa(i)}
		if up {
			t.XMm, t.YMm, t.Align = x+4.6, y+at-0.95, Left
		}
		d.Add(t)
	}
	d.Add(Shape{Path: marks, Stroke: Black, WidthMm: thinMm})
	if up {
		d.Add(segment(x, y, x, y+length, thinMm))
	} else {
		d.Add(segment(x, y, x+length, y, thinMm))
	}
}

// cornerMark is a fine cross with a ring: the point to measure from.
func cornerMark(x, y float64) []Item {
	return []Item{
		segment(x-5, y, x+5, y, thinMm),
		segment(x, y-5, x, y+5, thinMm),
		ring(x, y, 2.5, thinMm),
	}
}

// checkText says what to do, and gives blanks for the readings.
func checkText(d *Drawing, f frame, c *layout.Correction, r rect, across, up float64) {
	diagonal := trimmed(math.Hypot(across, up), 1)
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
	pieces := []piece{heading(head, r.width()), space(1.5)}
	for i, s := range steps {
		pieces = append(pieces, numbered(strconv.Itoa(i+1), s, r.width()))
	}
	if command != "" {
		pieces = append(pieces, paragraph("", command, textMm, true, r.width())...)
	}
	pieces = append(pieces, space(1.5))
	pieces = append(pieces, paragraph("", after, 3.8, false, r.width())...)
	text := stack(pieces...)
	d.Place(&text.draw, r.x0, r.y1)
	y := r.y1 - text.height - 12
	for _, row := range [][2]string{
		{"Across", trimmed(across, 1)}, {"Up", trimmed(up, 1)}, {"Diagonal 1", diagonal}, {"Diagonal 2", diagonal},
	} {
		d.Add(Text{XMm: r.x0, YMm: y, SizeMm: headMm, Bold: true, Content: row[0]},
			Text{XMm: r.x0 + 29, YMm: y, SizeMm: headMm, Content: "of " + row[1] + ":"},
			segment(r.x0+51, y-1, r.x0+79, y-1, lineMm),
			Text{XMm: r.x0 + 81, YMm: y, SizeMm: headMm, Content: "mm"})
		y -= 11
	}
}

// paperArgument names the paper as --paper takes it.
func paperArgument(f frame) string {
	switch f.name {
	case "A4", "A3", "Letter", "Tabloid":
		return f.name
	}
	return trimmed(f.width, 1) + "x" + trimmed(f.height, 1)
}
