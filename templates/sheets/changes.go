package sheets

import (
	"centrepop/layout/changes"
	"centrepop/layout/plan"
	"centrepop/templates/draw"
)

// ChangesName is the sheet that lists what differs from an earlier state.
const ChangesName = "What has changed"

// Changes draws the list of what differs from an earlier state of the job: what
// made parts still serve for, which sheets to throw away, what to sign again.
func Changes(pl *plan.Plan, report *changes.Report, paper draw.Frame) []draw.Chapter {
	f := draw.NewFlow(func(int) (*draw.Sheet, draw.Piece) {
		return &draw.Sheet{Frame: paper, Name: ChangesName, Scale: "not to scale"},
			draw.RunningHead(pl.Job, "what has changed since "+report.Before(), paper.Body().Width())
	})
	for _, l := range report.Outline() {
		lead := ""
		if l.Level > 0 {
			lead = []string{"–", "    ·"}[l.Level-1]
		} else {
			f.Add(draw.Space(2))
		}
		lines := draw.Paragraph(lead, l.Text, draw.TextMm, l.Level == 0, f.Width())
		lines[len(lines)-1].Keep = l.Level == 0
		f.Add(lines...)
	}
	return []draw.Chapter{{Name: ChangesName, Sheets: f.Sheets}}
}
