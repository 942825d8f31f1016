package templates

import (
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/review"
)

// reviewName is the title of the review's pages.
const reviewName = "Review"

// tightTextMm is the text of the review's tables where it saves a page.
const tightTextMm = 3.0

// reviewChapters draws the findings of the review, if the plan was reviewed.
func reviewChapters(pl *plan.Plan, opt Options, paper frame) []chapter {
	if opt.Findings == nil {
		return nil
	}
	return []chapter{{reviewName, "Findings", reviewSheets(pl, opt.Findings, paper)}}
}

// reviewSheets draws what is open, what is worth knowing and what the job
// accepts, with room to sign. Its tables are set smaller where that saves a
// page.
func reviewSheets(pl *plan.Plan, findings []review.Finding, paper frame) []*sheet {
	sheets := reviewSheetsAt(pl, findings, paper, textMm)
	if len(sheets) > 1 {
		if less := reviewSheetsAt(pl, findings, paper, tightTextMm); len(less) < len(sheets) {
			return less
		}
	}
	return sheets
}

// reviewSheetsAt is reviewSheets with its tables in one size of text.
func reviewSheetsAt(pl *plan.Plan, findings []review.Finding, paper frame, sizeMm float64) []*sheet {
	f := newFlow(func(page int) (*sheet, piece) {
		s := &sheet{frame: paper, name: reviewName, scale: "not to scale"}
		rest := "review before metal is cut"
		if page > 0 {
			rest = "review, continued"
		}
		return s, runningHead(pl.Job, rest, paper.body().width())
	})
	f.add(paragraph("", reviewWords(findings), 4.2, true, f.width())...)
	f.add(space(3))
	var open, noted, accepted []review.Finding
	for _, one := range findings {
		switch {
		case one.Accepted:
			accepted = append(accepted, one)
		case one.Open():
			open = append(open, one)
		default:
			noted = append(noted, one)
		}
	}
	tables := []table{
		findingTable("Open: settle these first", open, true),
		acceptedTable(accepted),
		findingTable("Worth knowing", noted, false),
	}
	sign := reviewSignature(f.width())
	for i := len(tables) - 1; i >= 0; i-- {
		if len(tables[i].rows) > 0 { // the last row stays with the signature
			tables[i].foot = sign.height + 4
			break
		}
	}
	for _, t := range tables {
		for i := range t.columns {
			t.columns[i].size = sizeMm
		}
		f.table(t)
	}
	f.add(sign)
	return f.sheets
}

// reviewWords is the result in a line.
func reviewWords(findings []review.Finding) string {
	c := review.Summary(findings)
	lead := "Nothing open. "
	if c.Open() > 0 {
		lead = "Not ready to cut. "
	}
	return lead + strconv.Itoa(c.Stop) + " to stop at, " + strconv.Itoa(c.Check) + " to check, " +
		strconv.Itoa(c.Note) + " to note, " + strconv.Itoa(c.Accepted) + " accepted."
}

// reviewSummary is the review's result on the cover.
func reviewSummary(findings []review.Finding, width float64) []piece {
	if findings == nil {
		return nil
	}
	pieces := []piece{heading(reviewName, width)}
	pieces = append(pieces, paragraph("", reviewWords(findings)+" See the review's own sheets.", textMm, review.Summary(findings).Open() > 0, width)...)
	return append(pieces, space(4))
}

// findingTable lists findings; settle adds a column to sign each one off.
func findingTable(title string, findings []review.Finding, settle bool) table {
	t := table{title: title, columns: []column{
		{head: "", align: Centre, bold: true},
		{head: "Where", flex: true},
		{head: "What is wrong", flex: true},
		{head: "Rule, and what would fix it", flex: true},
	}}
	if settle {
		t.columns = append(t.columns, column{head: "Settled", align: Centre, least: 18, tick: true})
	}
	for _, f := range findings {
		row := []string{string(f.Severity), findingPlace(f), findingText(f), f.Rule + " (" + f.Source + ")\n" + f.Fix}
		if settle {
			row = append(row, "")
		}
		t.rows = append(t.rows, row)
	}
	return t
}

func acceptedTable(findings []review.Finding) table {
	t := table{title: "Accepted in the job, with the reason", columns: []column{
		{head: "Where", flex: true},
		{head: "What was found", flex: true},
		{head: "Rule", flex: true},
		{head: "Reason", flex: true, bold: true},
	}}
	for _, f := range findings {
		t.rows = append(t.rows, []string{findingPlace(f), findingText(f), f.Rule + " (" + f.Source + ")", f.Reason})
	}
	return t
}

// findingPlace is where to look in the input.
func findingPlace(f review.Finding) string {
	return f.Pos.File + "\nline " + strconv.Itoa(f.Pos.Line) + "\n" + f.Code
}

func findingText(f review.Finding) string {
	if f.Numbers == "" {
		return f.What
	}
	return f.What + "\n" + f.Numbers
}

// reviewSignature is the line to sign the review on.
func reviewSignature(width float64) piece {
	p := piece{height: 16}
	label := "Reviewed by, signature"
	from := textWidth(label, textMm, false) + 3
	p.draw.Add(Text{YMm: -10, SizeMm: textMm, Content: label})
	p.draw.Add(segment(from, -10.6, width*0.66, -10.6, thinMm))
	p.draw.Add(Text{XMm: width*0.66 + 3, YMm: -10, SizeMm: textMm, Content: "Date"})
	p.draw.Add(segment(width*0.66+5+textWidth("Date", textMm, false), -10.6, width, -10.6, thinMm))
	return p
}
