package sheets

import (
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/templates/draw"
)

// ReviewName is the title of the review's pages.
const ReviewName = "Review"

// Review draws what is open, what is worth knowing and what the job
// accepts, with room to sign. Its tables are set smaller where that saves a
// page.
func Review(pl *plan.Plan, findings []review.Finding, paper draw.Frame) []*draw.Sheet {
	var best []*draw.Sheet
	for _, size := range []float64{draw.TextMm, 3.0, 2.65} {
		if sheets := reviewSheetsAt(pl, findings, paper, size); best == nil || len(sheets) < len(best) {
			best = sheets
		}
	}
	return best
}

// reviewSheetsAt is reviewSheets with its tables in one size of text.
func reviewSheetsAt(pl *plan.Plan, findings []review.Finding, paper draw.Frame, sizeMm float64) []*draw.Sheet {
	f := draw.NewFlow(func(page int) (*draw.Sheet, draw.Piece) {
		s := &draw.Sheet{Frame: paper, All: true, Name: ReviewName, Scale: "not to scale"}
		rest := "review before metal is cut"
		if page > 0 {
			rest = "review, continued"
		}
		return s, draw.RunningHead(pl.Job, rest, paper.Body().Width())
	})
	f.Add(draw.Paragraph("", reviewWords(findings), 4.2, true, f.Width())...)
	f.Add(draw.Space(3))
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
	tables := []draw.Table{
		findingTable("Open: settle these first", open, true),
		acceptedTable(accepted),
		findingTable("Worth knowing", noted, false),
	}
	sign := signLine("Reviewed by, signature", f.Width())
	for i := len(tables) - 1; i >= 0; i-- {
		if len(tables[i].Rows) > 0 { // the last row stays with the signature
			tables[i].Foot = sign.Height + 4
			break
		}
	}
	for _, t := range tables {
		for i := range t.Columns {
			t.Columns[i].Size = sizeMm
		}
		f.Table(t)
	}
	f.Add(sign)
	return f.Sheets
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
func reviewSummary(findings []review.Finding, width float64) []draw.Piece {
	if findings == nil {
		return nil
	}
	pieces := []draw.Piece{draw.Heading(ReviewName, width)}
	pieces = append(pieces, draw.Paragraph("", reviewWords(findings)+" See the review's own sheets.", draw.TextMm, review.Summary(findings).Open() > 0, width)...)
	return append(pieces, draw.Space(4))
}

// findingTable lists findings; settle adds a column to sign each one off.
func findingTable(title string, findings []review.Finding, settle bool) draw.Table {
	t := draw.Table{Title: title, Columns: []draw.Column{
		{Head: "", Align: draw.Centre, Bold: true},
		{Head: "Where", Flex: true},
		{Head: "What is wrong", Flex: true},
		{Head: "Rule, and what would fix it", Flex: true},
	}}
	if settle {
		t.Columns = append(t.Columns, draw.Column{Head: "Settled", Align: draw.Centre, Least: 18, Tick: true})
	}
	for _, f := range findings {
		row := []string{string(f.Severity), findingPlace(f), findingText(f), f.Rule + " (" + f.Source + ")\n" + f.Fix}
		if settle {
			row = append(row, "")
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func acceptedTable(findings []review.Finding) draw.Table {
	t := draw.Table{Title: "Accepted in the job, with the reason", Columns: []draw.Column{
		{Head: "Where", Flex: true},
		{Head: "What was found", Flex: true},
		{Head: "Rule", Flex: true},
		{Head: "Reason", Flex: true, Bold: true},
	}}
	for _, f := range findings {
		t.Rows = append(t.Rows, []string{findingPlace(f), findingText(f), f.Rule + " (" + f.Source + ")", f.Reason})
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

// signLine is the line to sign a sheet on, with its date.
func signLine(label string, width float64) draw.Piece {
	p := draw.Piece{Height: 16}
	from := draw.TextWidth(label, draw.TextMm, false) + 3
	p.Draw.Add(draw.Text{YMm: -10, SizeMm: draw.TextMm, Content: label})
	p.Draw.Add(draw.Segment(from, -10.6, width*0.66, -10.6, draw.ThinMm))
	p.Draw.Add(draw.Text{XMm: width*0.66 + 3, YMm: -10, SizeMm: draw.TextMm, Content: "Date"})
	p.Draw.Add(draw.Segment(width*0.66+5+draw.TextWidth("Date", draw.TextMm, false), -10.6, width, -10.6, draw.ThinMm))
	return p
}
