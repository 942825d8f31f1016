package templates

import (
	"cmp"
	"fmt"
	"slices"
	"sync"

	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	"centrepop/templates/sequence"
	"centrepop/templates/sheets"
	"centrepop/templates/truesize"
)

// task draws some chapters that stand together. Tasks know nothing of each
// other and only read the plan.
type task func() ([]draw.Chapter, error)

// ofChoice is a task that needs a choice of templates.
func ofChoice(choose func() (*truesize.Choice, error), draws func(*truesize.Choice) []draw.Chapter) task {
	return func() ([]draw.Chapter, error) {
		c, err := choose()
		if err != nil {
			return nil, err
		}
		return draws(c), nil
	}
}

// partChapters draw the operations and records of all parts, beside the templates chosen.
func partChapters(pl *plan.Plan, list []*plan.PartPlan, opt Options, paper draw.Frame, c *truesize.Choice) []draw.Chapter {
	patterns := map[string]sheets.Patterns{}
	for i, part := range list {
		patterns[part.Name] = sheets.Patterns{Printed: c.Patterns[i], Notes: c.Missing[i]}
	}
	var out []draw.Chapter
	if own := sheets.Unbarred(list); len(own) > 0 {
		out = append(out, draw.Chapter{Name: sheets.PartsName, Sheets: sheets.Parts(pl, own, paper, patterns, opt.Kept)})
	}
	return append(out, sheets.Bars(pl, list, paper)...)
}

// onePart draws the sheets of a part alone: its operations, which of a bar stand on the
// cut list, and its templates.
func onePart(pl *plan.Plan, part *plan.PartPlan, opt Options, paper draw.Frame) ([]draw.Chapter, error) {
	list := []*plan.PartPlan{part}
	choice, err := truesize.Choose(pl, list, paper, opt.Templates)
	if err != nil {
		return nil, err
	}
	var chapters []draw.Chapter
	if part.Bar == nil {
		chapters = partChapters(pl, list, opt, paper, choice)
		chapters[0].Part, chapters[0].Name = part.Title, sheets.PartSheet
	}
	chapters = append(chapters, choice.Apart()...)
	for i := range chapters {
		chapters[i].Of = []string{part.Name}
		for _, s := range chapters[i].Sheets {
			s.Starts = nil // the chapter has a bookmark
		}
	}
	return chapters, nil
}

// reviewed draws the review, if there was one, and returns the tables that it leaves
// to the appendix: what is worth knowing, where that would take a further page.
func (opt Options) reviewed(pl *plan.Plan, findings []review.Finding, paper draw.Frame) (chapters []draw.Chapter, left []draw.Table) {
	if findings == nil {
		return nil, nil
	}
	notes := sheets.Notes(pl, findings)
	drawn := sheets.Review(pl, findings, paper, notes)
	if len(opt.Parts) == 0 && len(notes) > 0 {
		if without := sheets.Review(pl, findings, paper, nil); len(without) < len(drawn) {
			drawn, left = without, notes
		}
	}
	return []draw.Chapter{{Part: sheets.ReviewName, Name: "Findings", Sheets: drawn}}, left
}

func (opt Options) assembly(pl *plan.Plan, findings []review.Finding, paper draw.Frame) []draw.Chapter {
	var notes []draw.Table
	if opt.For.wants(Reviewer) {
		_, notes = opt.reviewed(pl, findings, paper)
	}
	return slices.Concat(sequence.Chapters(pl, paper), sheets.Cards(pl, paper), sequence.Appendix(pl, paper, notes))
}

// tasks are all sheets of the packet but its cover.
func (opt Options) tasks(pl *plan.Plan, list []*plan.PartPlan, paper draw.Frame) []task {
	var tasks []task
	notes := func() []draw.Table { return nil }
	if opt.For.wants(Reviewer) {
		reviewed := sync.OnceValues(func() ([]draw.Chapter, []draw.Table) { return opt.reviewed(pl, opt.Findings, paper) })
		notes = func() []draw.Table { _, left := reviewed(); return left }
		tasks = append(tasks, func() ([]draw.Chapter, error) { chapters, _ := reviewed(); return chapters, nil })
	}
	if opt.For.wants(Machinist) {
		choose := sync.OnceValues(func() (*truesize.Choice, error) { return truesize.Choose(pl, list, paper, opt.Templates) })
		tasks = append(tasks,
			ofChoice(choose, func(c *truesize.Choice) []draw.Chapter { return partChapters(pl, list, opt, paper, c) }),
			ofChoice(choose, func(c *truesize.Choice) []draw.Chapter { return c.Sheets(opt.Kept) }))
	}
	if opt.For.wants(Machinist) && len(opt.Parts) == 0 {
		tasks = append(tasks, func() ([]draw.Chapter, error) { return sheets.Tools(pl, paper), nil })
	}
	if opt.For.wants(Fabricator, Reviewer) && len(opt.Parts) == 0 {
		tasks = append(tasks, func() ([]draw.Chapter, error) { return sequence.Chapters(pl, paper), nil },
			func() ([]draw.Chapter, error) { return sheets.Cards(pl, paper), nil },
			func() ([]draw.Chapter, error) { return sequence.Appendix(pl, paper, notes()), nil })
	}
	return tasks
}

// work does the tasks on all processors and returns their chapters in the
// order of the tasks, or the error of the first that has one.
func (opt Options) work(tasks []task) ([]draw.Chapter, error) {
	done := make([][]draw.Chapter, len(tasks))
	errs := make([]error, len(tasks))
	seq.OnAll(len(tasks), func(i int) {
		if done[i], errs[i] = tasks[i](); errs[i] == nil {
			errs[i] = opt.press(done[i])
		}
	})
	if err := cmp.Or(errs...); err != nil {
		return nil, err
	}
	return slices.Concat(done...), nil
}

// press hands the drawings of the sheets over, if they are to be.
func (opt Options) press(chapters []draw.Chapter) error {
	if opt.Press == nil {
		return nil
	}
	for _, c := range chapters {
		for _, s := range c.Sheets {
			if err := opt.pressSheet(s); err != nil {
				return fmt.Errorf("templates: %s, %s: %w", c.Part, s.Name, err)
			}
		}
	}
	return nil
}

// pressSheet hands over the drawing of a sheet, if it was not yet.
func (opt Options) pressSheet(s *draw.Sheet) error {
	if len(s.Draw.Items) == 1 {
		if _, done := s.Draw.Items[0].(draw.Pressed); done {
			return nil
		}
	}
	pressed, err := opt.Press(&s.Draw)
	if err == nil {
		s.Draw, s.Blocks = draw.Drawing{Items: []draw.Item{pressed}}, nil
	}
	return err
}
