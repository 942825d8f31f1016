// Package sheets draws the cover, the review, and each part's operation sheet
// and inspection record.
package sheets

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/templates/draw"
	"centrepop/templates/figures"
)

// Cover draws the cover and its further pages. own is the number of
// pages of the cover itself, by which the page numbers of the chapters are
// put off.
func Cover(pl *plan.Plan, findings []review.Finding, paper draw.Frame, chapters []draw.Chapter, own int) []*draw.Sheet {
	f := draw.NewFlow(func(page int) (*draw.Sheet, draw.Piece) {
		s := &draw.Sheet{Frame: paper, All: true, Name: "Cover", Scale: "rules 1:1 only"}
		if page == 0 {
			return s, coverHead(pl, paper.Body().Width())
		}
		s.Scale = "not to scale"
		return s, draw.RunningHead(pl.Job, "cover, continued", paper.Body().Width())
	})
	check, warned := scaleCheck(pl.Units, f.Width())
	f.Add(check, draw.Space(4))
	f.Add(reviewSummary(findings, f.Width())...)
	f.Table(indexTable(pl, chapters, own))
	f.Table(boughtTable(pl))
	f.Table(cutTable(pl))
	if len(pl.Lifts) > 0 {
		f.Add(draw.Notes("Heavy, by local lifting rules", pl.Lifts, f.Width())...)
	}
	f.Table(dangerTable(pl))
	f.Add(draw.Notes("Notes", pl.Notes, f.Width())...)
	last := []draw.Piece{conventions(f.Width()), draw.Space(4)}
	if !warned {
		last = append(last, safety(f.Width()), draw.Space(4))
	}
	// Where the signatures would stand alone on a page they fill this one first.
	sign := signatures(f.Width())
	if f.Fits(sign.Height) && !f.Fits(draw.Stack(last...).Height+sign.Height) {
		f.Add(sign, draw.Space(4))
		f.Add(last...)
	} else {
		f.Add(append(last, sign)...)
	}
	return f.Sheets
}

// coverHead is the head of the first page.
func coverHead(pl *plan.Plan, width float64) draw.Piece {
	var p draw.Piece
	job, size := draw.Shrink(pl.Job, 10, true, width)
	p.Draw.Add(draw.Text{YMm: -9, SizeMm: size, Bold: true, Content: job, Heading: 1})
	line := figures.Joined("  ·  ", draw.Labelled("Revision", pl.Revision), draw.Labelled("Date", pl.Date),
		draw.Labelled("Drawn", pl.DrawnBy), draw.Labelled("Checked", pl.CheckedBy), "Sizes in "+unitName(pl.Units))
	y := -10.5
	for _, text := range draw.Wrap(line, 3.8, false, width) {
		y -= 3.8 * draw.Leading
		p.Draw.Add(draw.Text{YMm: y, SizeMm: 3.8, Content: text})
	}
	p.Draw.Add(draw.Segment(0, y-2.5, width, y-2.5, draw.ThickMm))
	p.Height = -y + 5.5
	return p
}

func unitName(u parts.Units) string {
	if u == parts.Inches {
		return "inches, angles in degrees"
	}
	return "millimetres, angles in degrees"
}

// howToPrint is what to do before trusting a template.
var howToPrint = []string{
	"In the print window choose “Actual size” or “100 %”. Switch off “Fit to page”, “Shrink oversized pages” and any scaling of the printer itself.",
	"Print this page first. Lay a steel rule on both 100 mm rules here, across and up.",
	"Each must be 100 mm to within 0.25 mm. If not, do not use the templates: change the print settings and print again.",
	"The same two rules stand on every template. Check them on each sheet: printers and damp paper stretch one way more than the other.",
	"Glue the template flat, check one distance between two far holes with a rule against the table, then pop the crosses.",
}

// scaleCheck shows the rules and says how to print at true size. It takes in
// the general caution, and says so, where that has room beside the rule.
func scaleCheck(units parts.Units, width float64) (p draw.Piece, warned bool) {
	left := 12.0
	if units == parts.Inches {
		left = 24
	}
	title := draw.Heading("Print at true size, and check it", width)
	p.Draw.Place(&title.Draw, 0, 0)
	y := -title.Height - 2
	foot := y - draw.ScaleLengthMm
	if units == parts.Inches {
		foot = y - 4*geom.MmPerInch
	}
	draw.RuleUp(&p.Draw, 10, foot)
	if units == parts.Inches {
		draw.InchRule(&p.Draw, 21, foot, true)
	}
	beside := width - left - 6
	how := slices.Clone(howToPrint)
	if units == parts.Inches {
		for i := range how {
			how[i] = strings.Replace(how[i], "within 0.25 mm.", "within 0.25 mm, and 4 in to within 0.01 in.", 1)
		}
	}
	steps := draw.StepList(how, beside)
	text := draw.Stack(append(slices.Clone(steps), draw.Space(2), safety(beside))...)
	if warned = text.Height <= draw.ScaleLengthMm; !warned {
		text = draw.Stack(steps...)
	}
	p.Draw.Place(&text.Draw, left+6, y)
	low := min(foot, y-text.Height) - 4
	draw.RuleAcross(&p.Draw, 6, low)
	low -= 10
	if units == parts.Inches {
		draw.InchRule(&p.Draw, 6, low, false)
		low -= 10
	}
	p.Height = -low
	return p, warned
}

func boughtTable(pl *plan.Plan) draw.Table {
	t := draw.Table{Title: "To buy", Columns: []draw.Column{
		{Head: "Item", Flex: true, Bold: true},
		{Head: "No. off", Align: draw.Centre, Bold: true},
		{Head: "For", Flex: true},
		{Head: "Note", Flex: true, Spare: true},
	}}
	for _, b := range pl.Bought {
		t.Rows = append(t.Rows, []string{b.Item, strconv.Itoa(b.Quantity), b.For, b.Note})
	}
	return t
}

// dangerTable says once what the rows of the operations warn of in a few words.
func dangerTable(pl *plan.Plan) draw.Table {
	t := draw.Table{Title: "Where a row shows ⚠", Compact: true, Tight: true, Columns: []draw.Column{{Bold: true, Size: 2.9}, {Flex: true, Size: 2.9}}}
	if len(pl.Dangers) > 0 {
		t.Rows = append(t.Rows, []string{"Every machine", "Eye protection; no gloves, sleeves or rags near what turns; take the chuck key out; let hot parts cool. Local rules come first."})
	}
	for _, d := range pl.Dangers {
		t.Rows = append(t.Rows, []string{d.Machine, strings.Join(d.Says, " ")})
	}
	return t
}

// cutTable is the sawing list, a row for a bar with its pieces in order.
func cutTable(pl *plan.Plan) draw.Table {
	t := draw.Table{Title: "To saw, in " + figures.LengthWord(pl.Units), Columns: []draw.Column{
		{Head: "Bar", Flex: true, Bold: true},
		{Head: "Material", Flex: true},
		{Head: "Bar length", Align: draw.Right},
		{Head: "Pieces, in this order", Flex: true},
		{Head: "Left over", Align: draw.Right},
	}}
	for _, c := range pl.Cuts {
		for _, bar := range c.Bars {
			var pieces []string
			for _, p := range bar.Pieces {
				title := p.Part
				if part := pl.Part(p.Part); part != nil {
					title = part.Title
				}
				pieces = append(pieces, title+" "+figures.Short(p.LengthMm, pl.Units))
			}
			t.Rows = append(t.Rows, []string{c.Stock, c.Material, figures.Short(c.BarMm, pl.Units), strings.Join(pieces, "; "), figures.Short(bar.OffcutMm, pl.Units)})
		}
	}
	return t
}

// indexTable lists the pages of each part, then those of the other chapters;
// own is how many pages the cover has.
func indexTable(pl *plan.Plan, chapters []draw.Chapter, own int) draw.Table {
	t := draw.Table{Title: "Parts, and where to find them", Compact: true, Columns: []draw.Column{
		{Head: "Part", Flex: true, Bold: true, Size: 3.2, Leads: true},
		{Head: "No. off", Align: draw.Centre, Bold: true, Size: 3.2},
		{Head: "Material", Flex: true, Size: 2.9},
		{Head: "Stock", Flex: true, Size: 2.9},
		{Head: "Mass each", Align: draw.Right, Size: 2.9},
		{Head: "Page", Align: draw.Centre, Bold: true, Size: 3.2},
		{Head: "Templates", Align: draw.Centre, Bold: true, Size: 3.2, Spare: true},
	}}
	pages := map[string]*[2]runs{} // by title: operations, templates
	for _, part := range pl.Parts {
		pages[part.Title] = &[2]runs{}
	}
	n := own
	var others [][2]string
	part, run := "", [2]int{}
	for _, c := range chapters {
		first := n + 1
		for _, s := range c.Sheets {
			n++
			for _, title := range s.Parts {
				if at := pages[title]; at != nil && s.Scale == "1:1" {
					at[1].add(n)
				} else if at != nil {
					at[0].add(n)
				}
			}
		}
		switch {
		case c.Name == PartsName:
		case c.Part != "" && c.Part == part: // a chapter of several
			run[1] = n
			others[len(others)-1][1] = figures.Span(run[0], n-run[0]+1)
		default:
			part, run = c.Part, [2]int{first, n}
			name := c.Name
			if c.Part != "" {
				name = c.Part
			}
			others = append(others, [2]string{name, figures.Span(first, n-first+1)})
		}
	}
	for _, part := range pl.Parts {
		at := pages[part.Title]
		t.Rows = append(t.Rows, []string{part.Title, strconv.Itoa(part.Quantity), part.Material, part.StockText, figures.Mass(part.MassKg), at[0].text(), at[1].text()})
	}
	for _, other := range others {
		t.Rows = append(t.Rows, []string{other[0], "", "", "", "", other[1], ""})
	}
	return t
}

// runs are pages in rising order, as first and last of each run.
type runs [][2]int

func (r *runs) add(n int) {
	if k := len(*r); k > 0 && (*r)[k-1][1] >= n-1 {
		(*r)[k-1][1] = n
		return
	}
	*r = append(*r, [2]int{n, n})
}

func (r runs) text() string {
	text := ""
	for _, run := range r {
		text = figures.Joined(", ", text, figures.Span(run[0], run[1]-run[0]+1))
	}
	return text
}

// conventions explains clock angles, numbering, faces and coordinates.
func conventions(width float64) draw.Piece {
	text := []string{
		"Every part has a front and a back face and a TOP. Mark TOP on the metal before the first hole is marked, and mark it again if it is cut away.",
		"Clock angle: 0° at TOP, clockwise, looking at the named face.",
		"Hole 1 is the first at or after TOP; numbers run clockwise on the marked face. A hole has the same number on the template, in the tables and in the record.",
		"A hole that goes through is on the other side when the part is turned over. Templates of a back face are mirrored already: never turn a template over.",
		"x is to the right, y towards TOP, from the part’s centre unless the table names an edge.",
	}
	pic := clockPicture()
	if width >= 190 {
		p := draw.Stack(append([]draw.Piece{draw.Heading("How angles and holes are counted", width)}, stepListPlain(text, width-102)...)...)
		p.Draw.Place(&pic, width-98, -draw.HeadMm*draw.Leading-1)
		p.Height = max(p.Height, 62)
		return p
	}
	picture := draw.Piece{Height: 54, Draw: pic}
	return draw.Stack(append([]draw.Piece{draw.Heading("How angles and holes are counted", width), picture}, stepListPlain(text, width)...)...)
}

// stepListPlain sets texts with dashes.
func stepListPlain(texts []string, width float64) []draw.Piece {
	var pieces []draw.Piece
	for _, t := range texts {
		pieces = append(pieces, draw.Paragraph("–", t, draw.TextMm, false, width)...)
		pieces = append(pieces, draw.Space(1))
	}
	return pieces
}

// safety is the general caution.
func safety(width float64) draw.Piece {
	text := "The law, the rules of your workshop and the makers’ instructions for machines and materials come before anything in this packet. " +
		"Whoever does the work judges whether it is safe on the machine at hand. Guard and hold the work, wear what the job needs, " +
		"support heavy parts from below, and stop if a size or a step does not make sense."
	lines := draw.Paragraph("", text, draw.TextMm, false, width-24)
	body := draw.Stack(lines...)
	p := draw.Piece{Height: max(body.Height+11, 20)}
	p.Draw.Add(draw.Box(draw.R(0, -p.Height, width, 0), draw.ThickMm))
	p.Draw.Add(draw.Warning(3, -15, 14)...)
	p.Draw.Add(draw.Text{XMm: 21, YMm: -6, SizeMm: 4.2, Bold: true, Content: "Safety"})
	p.Draw.Place(&body.Draw, 21, -8.5)
	return p
}

// signatures are the boxes to sign before metal is cut.
func signatures(width float64) draw.Piece {
	p := draw.Heading("Signed before any metal is cut", width)
	p.Keep = false
	y := -p.Height
	boxes := []string{"Drawn", "Checked by a second person", "Scale of templates checked"}
	w := width / float64(len(boxes))
	for i, name := range boxes {
		x := float64(i) * w
		p.Draw.Add(draw.Box(draw.R(x, y-24, x+w, y), draw.LineMm))
		lines := draw.Wrap(name, draw.TextMm, true, w-4)
		for j, line := range lines {
			p.Draw.Add(draw.Text{XMm: x + 2, YMm: y - 4.4 - float64(j)*draw.TextMm*draw.Leading, SizeMm: draw.TextMm, Bold: true, Content: line})
		}
		for j, what := range []string{"Name and signature", "Date"} {
			at := y - 14.6 - 7.4*float64(j)
			label, size := draw.Shrink(what, draw.SmallMm, false, w-4)
			p.Draw.Add(draw.Text{XMm: x + 2, YMm: at - 0.2, SizeMm: size, Content: label})
			from := x + 3 + draw.TextWidth(label, size, false)
			if from < x+w-8 {
				p.Draw.Add(draw.Segment(from, at-0.6, x+w-2, at-0.6, draw.ThinMm))
			}
		}
	}
	p.Height += 26
	return p
}

// clockMm is the radius of the dials of clockPicture.
const clockMm = 15.0

// clockPicture explains clock angles and numbering: the same six holes from
// the front and, mirrored, from the back. It is 96 mm wide and 52 mm high,
// its origin the upper left corner.
func clockPicture() draw.Drawing {
	var d draw.Drawing
	for i, face := range []parts.Face{parts.Front, parts.Back} {
		cx, cy := 26+48*float64(i), -26.0
		d.Add(draw.Ring(cx, cy, clockMm, draw.LineMm), draw.Ring(cx, cy, 10, draw.HairMm, draw.ChainDash...))
		d.Add(draw.Segment(cx-3, cy, cx+3, cy, draw.ThinMm), draw.Segment(cx, cy-3, cx, cy+3, draw.ThinMm))
		for j := range 12 {
			s, c := math.Sincos(float64(j) * math.Pi / 6)
			d.Add(draw.Segment(cx+s*clockMm, cy+c*clockMm, cx+s*(clockMm+1.5), cy+c*(clockMm+1.5), draw.ThinMm))
		}
		for n := range 6 {
			a := float64(30+60*n) * math.Pi / 180
			if face == parts.Back {
				a = -a
			}
			s, c := math.Sincos(a)
			d.Add(draw.Ring(cx+10*s, cy+10*c, 1, draw.ThinMm))
			d.Add(draw.Text{XMm: cx + 6.2*s, YMm: cy + 6.2*c - 1, SizeMm: draw.SmallMm, Align: draw.Centre, Content: strconv.Itoa(n + 1)})
		}
		d.Add(draw.TopArrow(cx, cy+clockMm+2, 4))
		d.Add(draw.Text{XMm: cx + 2.6, YMm: cy + clockMm + 3, SizeMm: draw.SmallMm, Bold: true, Content: "TOP 0°"})
		d.Add(draw.Text{XMm: cx + clockMm + 2, YMm: cy - 1, SizeMm: draw.SmallMm, Content: "90°"})
		d.Add(draw.Text{XMm: cx, YMm: cy - clockMm - 4.2, SizeMm: draw.SmallMm, Align: draw.Centre, Content: "180°"})
		d.Add(draw.Text{XMm: cx - clockMm - 2, YMm: cy - 1, SizeMm: draw.SmallMm, Align: draw.Right, Content: "270°"})
		d.Add(draw.Text{XMm: cx, YMm: cy - clockMm - 9, SizeMm: draw.TextMm, Bold: true, Align: draw.Centre, Content: fmt.Sprintf("%s face", figures.Upper(face))})
	}
	return d
}
