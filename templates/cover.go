package templates

import (
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/parts"
)

// coverSheets draws the cover and its further pages. own is the number of
// pages of the cover itself, by which the page numbers of the chapters are
// put off.
func coverSheets(pl *plan.Plan, findings []review.Finding, paper frame, chapters []chapter, own int) []*sheet {
	f := newFlow(func(page int) (*sheet, piece) {
		s := &sheet{frame: paper, name: "Cover", scale: "rules 1:1 only"}
		if page == 0 {
			return s, coverHead(pl, paper.body().width())
		}
		s.scale = "not to scale"
		return s, runningHead(pl.Job, "cover, continued", paper.body().width())
	})
	check, warned := scaleCheck(pl.Units, f.width())
	f.add(check, space(4))
	f.add(reviewSummary(findings, f.width())...)
	f.table(partsTable(pl))
	f.table(boughtTable(pl))
	f.table(cutTable(pl))
	f.table(indexTable(chapters, own))
	if len(pl.Lifts) > 0 {
		f.add(notes("Heavy: lift with a hoist or with help", []string{strings.Join(pl.Lifts, "; ") + "."}, f.width())...)
	}
	f.add(notes("Notes", pl.Notes, f.width())...)
	last := []piece{conventions(f.width()), space(4)}
	if !warned {
		last = append(last, safety(f.width()), space(4))
	}
	// Where the signatures would stand alone on a page they fill this one first.
	sign := signatures(f.width())
	if f.fits(sign.height) && !f.fits(stack(last...).height+sign.height) {
		f.add(sign, space(4))
		f.add(last...)
	} else {
		f.add(append(last, sign)...)
	}
	return f.sheets
}

// coverHead is the head of the first page.
func coverHead(pl *plan.Plan, width float64) piece {
	var p piece
	job, size := shrink(pl.Job, 10, true, width)
	p.draw.Add(Text{YMm: -9, SizeMm: size, Bold: true, Content: job})
	line := joined("  ·  ", labelled("Revision", pl.Revision), labelled("Date", pl.Date),
		labelled("Drawn", pl.DrawnBy), labelled("Checked", pl.CheckedBy), "Sizes in "+unitName(pl.Units))
	y := -10.5
	for _, text := range wrap(line, 3.8, false, width) {
		y -= 3.8 * leading
		p.draw.Add(Text{YMm: y, SizeMm: 3.8, Content: text})
	}
	p.draw.Add(segment(0, y-2.5, width, y-2.5, thickMm))
	p.height = -y + 5.5
	return p
}

func labelled(label, value string) string {
	if value == "" {
		return ""
	}
	return label + ": " + value
}

func unitName(u parts.Units) string {
	if u == parts.Inches {
		return "inches, angles in degrees"
	}
	return "millimetres, angles in degrees"
}

// runningHead is the head of a further page.
func runningHead(title, rest string, width float64) piece {
	p := piece{height: 10}
	shown, size := shrink(title+" – "+rest, 4.6, true, width)
	p.draw.Add(Text{YMm: -4.6, SizeMm: size, Bold: true, Content: shown})
	p.draw.Add(segment(0, -6.8, width, -6.8, 0.5))
	return p
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
func scaleCheck(units parts.Units, width float64) (p piece, warned bool) {
	left := 12.0
	if units == parts.Inches {
		left = 24
	}
	title := heading("Print at true size, and check it", width)
	p.draw.Place(&title.draw, 0, 0)
	y := -title.height - 2
	foot := y - scaleLengthMm
	if units == parts.Inches {
		foot = y - 4*mmPerInch
	}
	ruleUp(&p.draw, 10, foot)
	if units == parts.Inches {
		inchRule(&p.draw, 21, foot, true)
	}
	beside := width - left - 6
	how := slices.Clone(howToPrint)
	if units == parts.Inches {
		for i := range how {
			how[i] = strings.Replace(how[i], "within 0.25 mm.", "within 0.25 mm, and 4 in to within 0.01 in.", 1)
		}
	}
	steps := stepList(how, beside)
	text := stack(append(slices.Clone(steps), space(2), safety(beside))...)
	if warned = text.height <= scaleLengthMm; !warned {
		text = stack(steps...)
	}
	p.draw.Place(&text.draw, left+6, y)
	low := min(foot, y-text.height) - 4
	ruleAcross(&p.draw, 6, low)
	low -= 10
	if units == parts.Inches {
		inchRule(&p.draw, 6, low, false)
		low -= 10
	}
	p.height = -low
	return p, warned
}

// stepList numbers a list of texts.
func stepList(texts []string, width float64) []piece {
	var pieces []piece
	for i, t := range texts {
		pieces = append(pieces, paragraph(strconv.Itoa(i+1)+".", t, 3.8, false, width)...)
		pieces = append(pieces, space(1.8))
	}
	return pieces
}

func partsTable(pl *plan.Plan) table {
	t := table{title: "Parts", columns: []column{
		{head: "Part", flex: true, bold: true},
		{head: "No. off", align: Centre, bold: true},
		{head: "Material", flex: true},
		{head: "Stock", flex: true},
		{head: "Mass each", align: Right},
		{head: "Mass all", align: Right},
	}}
	for _, s := range pl.Stock {
		title := s.Part
		if part := partNamed(pl, s.Part); part != nil {
			title = part.Title
		}
		t.rows = append(t.rows, []string{title, strconv.Itoa(s.Quantity), s.Material, s.Size, mass(s.MassKg), mass(s.MassKg * float64(s.Quantity))})
	}
	return t
}

func boughtTable(pl *plan.Plan) table {
	t := table{title: "To buy", columns: []column{
		{head: "Item", flex: true, bold: true},
		{head: "No. off", align: Centre, bold: true},
		{head: "For", flex: true},
		{head: "Note", flex: true, spare: true},
	}}
	for _, b := range pl.Bought {
		t.rows = append(t.rows, []string{b.Item, strconv.Itoa(b.Quantity), b.For, b.Note})
	}
	return t
}

// cutTable is the sawing list, a row for a bar with its pieces in order.
func cutTable(pl *plan.Plan) table {
	t := table{title: "To saw, in " + lengthWord(pl.Units), columns: []column{
		{head: "Bar", flex: true, bold: true},
		{head: "Material", flex: true},
		{head: "Bar length", align: Right},
		{head: "Pieces, in this order", flex: true},
		{head: "Left over", align: Right},
	}}
	for _, c := range pl.Cuts {
		for _, bar := range c.Bars {
			var pieces []string
			for _, p := range bar.Pieces {
				title := p.Part
				if part := partNamed(pl, p.Part); part != nil {
					title = part.Title
				}
				pieces = append(pieces, title+" "+short(p.LengthMm, pl.Units))
			}
			t.rows = append(t.rows, []string{c.Stock, c.Material, short(c.BarMm, pl.Units), strings.Join(pieces, "; "), short(bar.OffcutMm, pl.Units)})
		}
	}
	return t
}

// indexTable lists the pages of each part's sheets, a row for a part.
func indexTable(chapters []chapter, own int) table {
	t := table{title: "Sheets, by page", columns: []column{
		{head: "Part", flex: true, bold: true},
		{head: operationName, align: Centre, spare: true},
		{head: punchName(parts.Front), align: Centre, spare: true},
		{head: punchName(parts.Back), align: Centre, spare: true},
		{head: "Other sheets", flex: true, align: Centre, spare: true},
		{head: inspectionName, align: Centre, spare: true},
	}}
	const other = 4
	page := own + 1
	var runs [][][2]int // first and last pages of each cell of the row
	for i, c := range chapters {
		if i == 0 || c.part != chapters[i-1].part {
			t.rows = append(t.rows, []string{c.part, "", "", "", "", ""})
			runs = make([][][2]int, len(t.columns))
		}
		row := t.rows[len(t.rows)-1]
		k := slices.IndexFunc(t.columns[1:], func(col column) bool { return col.head == c.name }) + 1
		if k == 0 {
			k = other
		}
		last := page + len(c.sheets) - 1
		if n := len(runs[k]); n > 0 && runs[k][n-1][1] == page-1 {
			runs[k][n-1][1] = last
		} else {
			runs[k] = append(runs[k], [2]int{page, last})
		}
		row[k] = ""
		for _, run := range runs[k] {
			row[k] = joined(", ", row[k], span(run[0], run[1]-run[0]+1))
		}
		page = last + 1
	}
	return t
}

// conventions explains clock angles, numbering, faces and coordinates.
func conventions(width float64) piece {
	text := []string{
		"Every part has a front and a back face and a TOP. Mark TOP on the metal before the first hole is marked, and mark it again if it is cut away.",
		"Clock angle: 0° at TOP, clockwise, looking at the named face.",
		"Hole 1 is the first at or after TOP; numbers run clockwise on the marked face. A hole has the same number on the template, in the tables and in the record.",
		"A hole that goes through is on the other side when the part is turned over. Templates of a back face are mirrored already: never turn a template over.",
		"x is to the right, y towards TOP, from the part’s centre unless the table names an edge.",
	}
	pic := clockPicture()
	if width >= 190 {
		p := stack(append([]piece{heading("How angles and holes are counted", width)}, stepListPlain(text, width-102)...)...)
		p.draw.Place(&pic, width-98, -headMm*leading-1)
		p.height = max(p.height, 62)
		return p
	}
	picture := piece{height: 54, draw: pic}
	return stack(append([]piece{heading("How angles and holes are counted", width), picture}, stepListPlain(text, width)...)...)
}

// stepListPlain sets texts with dashes.
func stepListPlain(texts []string, width float64) []piece {
	var pieces []piece
	for _, t := range texts {
		pieces = append(pieces, paragraph("–", t, textMm, false, width)...)
		pieces = append(pieces, space(1))
	}
	return pieces
}

// safety is the general caution.
func safety(width float64) piece {
	text := "The law, the rules of your workshop and the makers’ instructions for machines and materials come before anything in this packet. " +
		"Whoever does the work judges whether it is safe on the machine at hand. Guard and hold the work, wear what the job needs, " +
		"support heavy parts from below, and stop if a size or a step does not make sense."
	lines := paragraph("", text, textMm, false, width-24)
	body := stack(lines...)
	p := piece{height: max(body.height+11, 20)}
	p.draw.Add(box(rect{0, -p.height, width, 0}, thickMm))
	p.draw.Add(warning(3, -15, 14)...)
	p.draw.Add(Text{XMm: 21, YMm: -6, SizeMm: 4.2, Bold: true, Content: "Safety"})
	p.draw.Place(&body.draw, 21, -8.5)
	return p
}

// signatures are the boxes to sign before metal is cut.
func signatures(width float64) piece {
	p := heading("Signed before any metal is cut", width)
	p.keep = false
	y := -p.height
	boxes := []string{"Drawn", "Checked by a second person", "Scale of templates checked"}
	w := width / float64(len(boxes))
	for i, name := range boxes {
		x := float64(i) * w
		p.draw.Add(box(rect{x, y - 24, x + w, y}, lineMm))
		lines := wrap(name, textMm, true, w-4)
		for j, line := range lines {
			p.draw.Add(Text{XMm: x + 2, YMm: y - 4.4 - float64(j)*textMm*leading, SizeMm: textMm, Bold: true, Content: line})
		}
		for j, what := range []string{"Name and signature", "Date"} {
			at := y - 14.6 - 7.4*float64(j)
			label, size := shrink(what, smallMm, false, w-4)
			p.draw.Add(Text{XMm: x + 2, YMm: at - 0.2, SizeMm: size, Content: label})
			from := x + 3 + textWidth(label, size, false)
			if from < x+w-8 {
				p.draw.Add(segment(from, at-0.6, x+w-2, at-0.6, thinMm))
			}
		}
	}
	p.height += 26
	return p
}
