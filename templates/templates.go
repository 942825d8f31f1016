// Package templates puts the sheets of a packet together: from a plan to a
// document of pages in millimetres. The sheets are drawn in the packages below
// it: draw has the primitives, truesize the 1:1 templates, sheets those of a
// part and the cover, sequence the steps of the assembly.
//
// Every number and every worked-out string comes from the plan. Text sizes are
// em sizes in millimetres; nothing is smaller than 2.6 mm, and what is read at
// the bench is 3.2 mm or more. Templates are never scaled; every other picture
// says that it is not to scale. Clock angles run from TOP clockwise, looking
// at the named face.
package templates

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"sync"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	"centrepop/templates/sequence"
	"centrepop/templates/sheets"
	"centrepop/templates/truesize"
)

// Options choose the paper. The zero value takes the plan's paper, and A4 if
// the plan names none.
type Options struct {
	// Paper is the sheet, at least 140 mm by 200 mm and at most 2 m; it is
	// used upright, and on its side where a template then needs fewer sheets.
	Paper parts.Paper
	// Printer is the correction of the printer the sheets are for; nil draws
	// them as they are. The sheets keep the paper's margins, so a printer that
	// prints small leaves them less room.
	Printer *layout.Correction
	// Findings are those of the review, for the cover and the review's pages;
	// nil if the plan was not reviewed, empty if nothing was found.
	Findings []review.Finding
	// Held are the names of the parts that are not released, whose sheets are
	// stamped.
	Held []string
	// Press takes over the drawing of each sheet as soon as it is laid out,
	// so that the drawings need not be kept until all sheets are; nil keeps
	// them. It is called on several goroutines at once.
	Press func(*draw.Drawing) (draw.Pressed, error)
	// For leaves out what another reader of the packet needs; empty is for all.
	For Reader
	// Parts are the names of the parts whose sheets are printed, none of the
	// assembly then; all and the assembly if there are none.
	Parts []string
	// Templates says which 1:1 templates are printed.
	Templates truesize.Policy
	// TwoSided lays the packet out for both sides of the paper: each template on an
	// odd page, with nothing on its back.
	TwoSided bool
	// Since prints only what differs from an earlier state; nil prints all.
	Since *Since
	// Apart gives every template sheets of its own, where Templates draws them
	// alone.
	Apart bool
	// Kept are the sheets of the packet before; those of parts and templates that
	// are drawn from equal values stay as they were. Not together with Press.
	Kept *draw.Kept
}

// Reader is who a packet is for.
type Reader string

// The readers: who makes the parts, who joins them, who checks before either.
const (
	Machinist  Reader = "machinist"
	Fabricator Reader = "fabricator"
	Reviewer   Reader = "reviewer"
)

// wants tells whether a packet for this reader has what the other is for.
func (r Reader) wants(of ...Reader) bool { return r == "" || slices.Contains(of, r) }

// The smallest and largest paper that the sheets can be laid out on, in
// millimetres.
const (
	minPaperWidthMm  = 140
	minPaperHeightMm = 200
	maxPaperMm       = 2000
)

// Packet draws the packet: the cover and the review, then the operations
// and records of the parts, the 1:1 templates and the sequence in which the
// parts are joined. It returns an error if the paper is outside the
// range of Options or an outline cannot be read, and a *TooLargeError if a
// drawing needs too many sheets.
func Packet(pl *plan.Plan, opt Options) (*draw.Document, error) {
	paper, err := paperOf(pl, opt)
	if err != nil {
		return nil, err
	}
	list, err := chosen(pl, opt.Parts)
	if err != nil {
		return nil, err
	}
	if opt.Press != nil {
		// Were it to fail, it would fail again when the task is done.
		opt.Kept = &draw.Kept{Ready: func(s *draw.Sheet) { _ = opt.pressSheet(s) }}
	}
	opt.Kept.Turn()
	tasks := opt.tasks(pl, list, paper)
	if opt.Since != nil {
		tasks = opt.Since.tasks(pl, list, opt, paper)
	}
	chapters, err := opt.work(tasks)
	if err != nil {
		return nil, err
	}
	cover, chapters := opt.covered(pl, chapters, paper)
	subject := "Shop packet"
	if s := opt.Since; s != nil {
		subject = "Changed sheets"
		draw.Revise(cover.Sheets, sheets.Cover(opt.coverOf(s.Plan), s.Findings, paper, chapters, len(cover.Sheets)), s.Report.Before())
	}
	doc := draw.Bind(opt.head(pl), append([]draw.Chapter{cover}, chapters...), subject)
	doc.TwoSided = opt.TwoSided
	return correct(doc, pl, opt)
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

// Templates draws the punch templates alone, of the parts named, or of all
// parts if none is named. A name that is not in the plan, and a choice that
// leaves no face to mark, are errors; so is what Packet refuses.
func Templates(pl *plan.Plan, partNames []string, opt Options) (*draw.Document, error) {
	paper, err := paperOf(pl, opt)
	if err != nil {
		return nil, err
	}
	list, err := chosen(pl, partNames)
	if err != nil {
		return nil, err
	}
	choice, err := truesize.Choose(pl, list, paper, opt.Templates)
	if err != nil {
		return nil, err
	}
	chapters, err := opt.work([]task{func() ([]draw.Chapter, error) {
		if opt.Apart {
			return choice.Apart(), nil
		}
		return choice.Sheets(nil), nil
	}})
	if err != nil {
		return nil, err
	}
	if len(chapters) == 0 {
		return nil, errors.New("templates: no face of these parts has anything to mark, and none is wrapped or developed")
	}
	return correct(draw.Bind(opt.head(pl), chapters, "Punch templates"), pl, opt)
}

func chosen(pl *plan.Plan, names []string) ([]*plan.PartPlan, error) {
	if len(names) == 0 {
		return pl.Parts, nil
	}
	var list []*plan.PartPlan
	for _, name := range names {
		part := pl.Part(name)
		if part == nil {
			return nil, fmt.Errorf("templates: no part is named %q", name)
		}
		list = append(list, part)
	}
	return list, nil
}

// paperOf returns the paper, upright.
func paperOf(pl *plan.Plan, opt Options) (draw.Frame, error) {
	paper := opt.Paper
	if paper.WidthMm == 0 && paper.HeightMm == 0 {
		paper = pl.Paper
	}
	if paper.WidthMm == 0 && paper.HeightMm == 0 {
		paper = parts.Paper{Name: "A4", WidthMm: 210, HeightMm: 297}
	}
	w, h := min(paper.WidthMm, paper.HeightMm), max(paper.WidthMm, paper.HeightMm)
	if !(w >= minPaperWidthMm && h >= minPaperHeightMm && h <= maxPaperMm) {
		return draw.Frame{}, fmt.Errorf("templates: paper of %s × %s mm: the sheets need at least %d × %d mm and at most %d mm",
			words.Trim(paper.WidthMm, 2), words.Trim(paper.HeightMm, 2), minPaperWidthMm, minPaperHeightMm, maxPaperMm)
	}
	name := paper.Name
	if name == "" || name == "custom" {
		name = words.Trim(w, 1) + " × " + words.Trim(h, 1) + " mm"
	}
	return room(opt.Printer, draw.Frame{WidthMm: w, HeightMm: h, Name: name}), nil
}

// head is what the title blocks say of a plan's job.
func (opt Options) head(pl *plan.Plan) draw.Job {
	job := draw.Job{Name: pl.Job, Revision: pl.Revision, Date: pl.Date, Tolerance: pl.Tolerance}
	for _, name := range opt.Held {
		if q := pl.Part(name); q != nil {
			job.Held = append(job.Held, q.Title)
		}
	}
	return job
}
