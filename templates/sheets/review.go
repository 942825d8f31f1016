package sheets

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/layout/words"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// ReviewName is the title of the review's pages.
const ReviewName = "Review"

// Review draws the verdict, a row for each part, what is open with a picture of
// its place, what the job accepts, what was not checked and room to sign, then
// what is worth knowing unless that stands elsewhere: as roomy as the fewest pages
// allow, signed on the first if it can be.
func Review(pl *plan.Plan, findings []review.Finding, paper draw.Frame, notes []draw.Table) []*draw.Sheet {
	w := reviewing{pl, findings, paper, notes}
	best, _ := draw.Roomiest([]density{1, 0.9, 0.8}, func(d density) reviewed { return d.review(w, math.MaxInt) },
		func(r reviewed) (pages int, rest float64) { return len(r.sheets), float64(r.signed - 1) })
	return best.review(w, 0).sheets
}

// reviewed is a review that is set, and its page with the signature.
type reviewed struct {
	sheets []*draw.Sheet
	signed int
}

type reviewing struct {
	pl       *plan.Plan
	findings []review.Finding
	paper    draw.Frame
	notes    []draw.Table
}

// notChecked is what a review before cutting leaves to others.
const notChecked = "Not checked here: whether the machine is strong enough for its load, what the stock measures, the files that the cutter has, drawings that others made."

// review sets a review; a trial of so many pages draws nothing, 0 draws.
func (d density) review(w reviewing, trial int) reviewed {
	pl, findings, paper, notes := w.pl, w.findings, w.paper, w.notes
	head := draw.RunningHead(pl.Job, "review before metal is cut", paper.Body().Width())
	f := draw.NewTrial(draw.Pages(draw.Sheet{Frame: paper, Name: ReviewName}, head, pl.Job, "review, continued"), trial)
	f.Add(verdictBox(findings, f.Width()), draw.Space(2))
	var open, accepted []review.Finding
	for _, one := range findings {
		switch {
		case one.Accepted:
			accepted = append(accepted, one)
		case one.Open():
			open = append(open, one)
		}
	}
	d.parted(f, partRows(pl, findings))
	if len(open) > 0 {
		f.Add(draw.Heading("Open: put it right; a check may be accepted in the job, with a reason", f.Width()))
	}
	for _, one := range open {
		f.Add(d.openFinding(pl, one, f.Width()), draw.Space(1.5))
	}
	sign := signLine("Reviewed by, signature", f.Width())
	f.Table(d.listed(acceptedTable(pl, accepted)))
	f.Add(append(draw.Paragraph("", notChecked, d.em(3.2), false, f.Width()), sign)...)
	signed := len(f.Sheets)
	if len(notes) == 0 && slices.ContainsFunc(findings, isNote) {
		f.Add(draw.Paragraph("", "What is worth knowing stands in the appendix.", d.em(3.2), false, f.Width())...)
	}
	for _, t := range notes {
		f.Table(d.listed(t))
	}
	return reviewed{f.Sheets, signed}
}

// parted sets the rows of the parts in two columns where the paper has them.
func (d density) parted(f *draw.Flow, t draw.Table) {
	f.Add(t.Head(f.Width())...)
	t.Title = ""
	half := (len(t.Rows) + 1) / 2
	if f.Width() < twoColumnsMm || half < draw.LeastRows {
		f.Table(d.listed(t))
		return
	}
	left, right := t, t
	left.Rows, right.Rows = t.Rows[:half], t.Rows[half:]
	f.Columns(2)
	f.Table(d.listed(left))
	f.TurnColumn()
	f.Table(d.listed(right))
	f.Columns(1)
}

// verdictBox is the result in a frame.
func verdictBox(findings []review.Finding, width float64) draw.Piece {
	p := draw.Piece{Height: 9}
	text, size := draw.Shrink(reviewWords(findings), draw.HeadMm, true, width-6)
	p.Draw.Add(draw.Box(draw.R(0, -p.Height, width, 0), draw.ThickMm), draw.Text{XMm: 3, YMm: -6.1, SizeMm: size, Bold: true, Content: text})
	return p
}

// partRows has a row for each part, and one for the joints and the job.
func partRows(pl *plan.Plan, findings []review.Finding) draw.Table {
	t := draw.Table{Title: "Part by part: findings, initials", Compact: true, Columns: []draw.Column{
		{Head: "Part", Flex: true, Bold: true, Leads: true, Firm: 24}, {Head: "Cut file", Flex: true, Firm: 22},
		{Head: "Open", Align: draw.Centre, Bold: true}, {Head: "Accepted", Align: draw.Centre}, {Head: "Note", Align: draw.Centre}, {Head: "Initials"},
	}}
	of := map[string][]review.Finding{} // by part; "" for the joints and the job
	for _, f := range findings {
		for _, one := range f.Each() {
			one.With = nil
			name := ""
			if part := partOf(pl, one); part != nil {
				name = part.Name
			}
			of[name] = append(of[name], one)
		}
	}
	row := func(title, file, name string) {
		c := review.Summary(of[name])
		t.Rows = append(t.Rows, []string{title, file, some(c.Open()), some(c.Accepted), some(c.Note), ""})
	}
	for _, part := range pl.Parts {
		file := words.When(slices.ContainsFunc(part.Operations, func(op plan.Operation) bool { return op.Machine == plan.Cutter }), part.Name)
		row(part.Title, file, part.Name)
	}
	row("Joints and job", "", "")
	return t
}

// some is a number, and a dash for none.
func some(n int) string { return words.Either(n == 0, "–", strconv.Itoa(n)) }

// openFinding is a frame with the place, what is wrong, the rule and the cure.
func (d density) openFinding(pl *plan.Plan, f review.Finding, width float64) draw.Piece {
	pic := placePicture(pl, f)
	x := 3.0
	if len(pic.Items) > 0 {
		x = placeMm + 5
	}
	var lines []draw.Piece
	add := func(text string, bold bool) {
		if text != "" {
			lines = append(lines, draw.Paragraph("", text, d.em(3.2), bold, width-x-3)...)
		}
	}
	add(words.Join(": ", titleOf(pl, f), f.What), true)
	add(words.Join("  ", string(f.Severity), f.Numbers), false)
	add("Mend: "+f.Fix, false)
	add(f.Rule+" ("+f.Source+")", false)
	where := f.Pos.File + " line " + strconv.Itoa(f.Pos.Line) + ", " + f.Code
	add(where, false)
	text := draw.Stack(lines...)
	p := draw.Piece{Height: text.Height + 11}
	if len(pic.Items) > 0 {
		p.Height = max(p.Height, placeMm+3)
		p.Draw.Place(&pic, 1.5, -p.Height/2+placeMm/2)
	}
	p.Draw.Add(draw.Box(draw.R(0, -p.Height, width, 0), draw.LineMm))
	p.Draw.Place(&text.Draw, x, -1.5)
	p.Refers = []draw.PageOf{{Title: pageTitle(pl, f), XMm: x + draw.TextWidth(where, d.em(3.2), false) + 2, YMm: -1.5 - text.Height + d.em(3.2)*(draw.Leading-1), SizeMm: d.em(3.2)}}
	ticks := []string{"mended", "accepted, because"}
	if f.Severity == review.Stop { // it cannot be accepted
		ticks = ticks[:1]
	}
	for i, word := range ticks {
		at := x + 28*float64(i)
		p.Draw.Add(draw.Box(draw.R(at, -p.Height+2.5, at+4.4, -p.Height+6.9), draw.LineMm), draw.Text{XMm: at + 6, YMm: -p.Height + 3.4, SizeMm: d.em(3.2), Content: word})
	}
	p.Draw.Add(draw.Segment(x+36*float64(len(ticks))-8, -p.Height+3, width-4, -p.Height+3, draw.ThinMm))
	return p
}

// reviewWords is the result in a line.
func reviewWords(findings []review.Finding) string {
	c := review.Summary(findings)
	lead := words.Either(c.Open() > 0, "Not ready to cut. ", "Nothing open. ")
	return lead + strconv.Itoa(c.Stop) + " to stop at, " + strconv.Itoa(c.Check) + " to check, " +
		strconv.Itoa(c.Note) + " to note" + places(findings) + ", " + strconv.Itoa(c.Accepted) + " accepted."
}

// places says at how many places the notes are, where one is at several.
func places(findings []review.Finding) string {
	all, n := 0, 0
	for _, f := range findings {
		if !f.Accepted && f.Severity == review.Note {
			all, n = all+len(f.Each()), n+1
		}
	}
	return words.When(all != n, " at "+strconv.Itoa(all)+" places")
}

// reviewLine is the review's result on the cover.
func (d density) reviewLine(findings []review.Finding, width float64) []draw.Piece {
	if findings == nil {
		return nil
	}
	p := draw.Piece{Height: 6.5}
	p.Draw.Add(draw.Text{YMm: -4, SizeMm: d.em(3.4), Bold: true, Content: "Review: " + reviewWords(findings)}.Within(width))
	return []draw.Piece{p}
}

func acceptedTable(pl *plan.Plan, findings []review.Finding) draw.Table {
	t := draw.Table{Title: "Accepted in the job, with the reason", Columns: []draw.Column{
		{Head: "Where", Flex: true},
		{Head: "What was found", Flex: true},
		{Head: "Reason", Flex: true},
	}}
	for _, f := range findings {
		t.Rows = append(t.Rows, []string{titleOf(pl, f), words.Join("; ", f.What, f.Numbers) + " (" + f.Code + ": " + f.Source + ")", f.Reason})
	}
	return t
}

// isNote tells whether a finding is only worth knowing.
func isNote(f review.Finding) bool { return !f.Accepted && !f.Open() }

// Notes are what is worth knowing, a row for each sort with all its places; none where there is nothing.
func Notes(pl *plan.Plan, findings []review.Finding) []draw.Table {
	t := draw.Table{Title: "Worth knowing", Columns: []draw.Column{
		{Head: "Rule, and what would fix it", Flex: true},
		{Head: "Where, and what", Flex: true},
	}}
	for _, f := range findings {
		if !isNote(f) {
			continue
		}
		whats := seq.Map(f.Each(), func(one review.Finding) string {
			return draw.Bold(titleOf(pl, one)+":") + " " + words.Join(", ", one.What, one.Numbers)
		})
		t.Rows = append(t.Rows, []string{draw.Bold(strconv.Itoa(len(t.Rows)+1)+" "+f.Code+".") + " " + f.Rule + " (" + f.Source + "): " + f.Fix, strings.Join(whats, "; ")})
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []draw.Table{t}
}

// signLine is the line to sign a sheet on, with its date.
func signLine(label string, width float64) draw.Piece {
	p := draw.Piece{Height: 9}
	from := draw.TextWidth(label, draw.TextMm, false) + 3
	p.Draw.Add(draw.Text{YMm: -7, SizeMm: draw.TextMm, Content: label})
	p.Draw.Add(draw.Segment(from, -7.6, width*0.66, -7.6, draw.ThinMm))
	p.Draw.Add(draw.Text{XMm: width*0.66 + 3, YMm: -7, SizeMm: draw.TextMm, Content: "Date"})
	p.Draw.Add(draw.Segment(width*0.66+5+draw.TextWidth("Date", draw.TextMm, false), -7.6, width, -7.6, draw.ThinMm))
	return p
}
