package templates

import (
	"slices"

	"centrepop/layout/changes"
	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/templates/draw"
	"centrepop/templates/sequence"
	"centrepop/templates/sheets"
)

// Since is an earlier state of the job, of which sheets are in the shop.
type Since struct {
	Plan     *plan.Plan
	Findings []review.Finding
	// Report is what differs: the sheets of its parts and joints are printed,
	// and those of the whole job that read otherwise.
	Report *changes.Report
}

// tasks draw the sheets that differ from those of the earlier state, marked.
// A part has its sheets to itself, so that they can go into the folder.
func (s *Since) tasks(pl *plan.Plan, list []*plan.PartPlan, opt Options, paper draw.Frame) []task {
	out := []task{func() ([]draw.Chapter, error) { return sheets.Changes(pl, s.Report, paper), nil }}
	if opt.For.wants(Reviewer) {
		out = append(out, s.marked(
			func() ([]draw.Chapter, error) { now, _ := opt.reviewed(pl, opt.Findings, paper); return now, nil },
			func() ([]draw.Chapter, error) {
				before, _ := opt.reviewed(s.Plan, s.Findings, paper)
				return before, nil
			}))
	}
	for _, part := range list {
		if !opt.For.wants(Machinist) || !slices.Contains(s.Report.Print, part.Name) {
			continue
		}
		before := func() ([]draw.Chapter, error) { return nil, nil }
		if was := s.Plan.Part(part.Name); was != nil {
			before = func() ([]draw.Chapter, error) { return onePart(s.Plan, was, opt, paper) }
		}
		out = append(out, s.marked(func() ([]draw.Chapter, error) { return onePart(pl, part, opt, paper) }, before))
	}
	if opt.For.wants(Machinist) {
		out = append(out, s.marked( // one cut list for all bars
			func() ([]draw.Chapter, error) { return sheets.Bars(pl, list, paper), nil },
			func() ([]draw.Chapter, error) { return sheets.Bars(s.Plan, s.Plan.Parts, paper), nil }))
	}
	if opt.For.wants(Machinist) && len(opt.Parts) == 0 {
		out = append(out, s.marked(
			func() ([]draw.Chapter, error) { return sheets.Tools(pl, paper), nil },
			func() ([]draw.Chapter, error) { return sheets.Tools(s.Plan, paper), nil }))
	}
	if opt.For.wants(Fabricator, Reviewer) && len(opt.Parts) == 0 {
		out = append(out, s.marked(
			func() ([]draw.Chapter, error) { return opt.assembly(pl, opt.Findings, paper), nil },
			func() ([]draw.Chapter, error) { return opt.assembly(s.Plan, s.Findings, paper), nil }))
	}
	return out
}

// marked is a task whose sheets are marked against those of another: all sheets
// of the parts and joints that differ, of the rest those that read otherwise.
func (s *Since) marked(now, was task) task {
	return func() ([]draw.Chapter, error) {
		chapters, err := now()
		if err != nil {
			return nil, err
		}
		before, err := was()
		if err != nil {
			return nil, err
		}
		for i, c := range chapters {
			var old []*draw.Sheet
			for _, b := range before {
				if sameSubject(b, c) {
					old = append(old, b.Sheets...)
				}
			}
			if other := draw.Revise(c.Sheets, old, s.Report.Before()); !s.wanted(c) {
				chapters[i].Sheets = other
			}
		}
		return slices.DeleteFunc(chapters, func(c draw.Chapter) bool { return len(c.Sheets) == 0 }), nil
	}
}

// wanted tells whether a chapter is of a part or a joint that differs.
func (s *Since) wanted(c draw.Chapter) bool {
	return slices.ContainsFunc(c.Of, func(name string) bool {
		return slices.Contains(s.Report.Print, name) || slices.Contains(s.Report.Print, changes.StepSheet(name))
	})
}

// sameSubject tells whether two chapters are of the same.
func sameSubject(a, b draw.Chapter) bool {
	if len(a.Of)+len(b.Of) == 0 || a.Part != sequence.Name {
		return a.Name == b.Name
	}
	return slices.ContainsFunc(a.Of, func(name string) bool { return slices.Contains(b.Of, name) })
}
