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
	"errors"
	"fmt"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/figures"
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
	// Press takes over the drawing of each sheet as soon as it is laid out,
	// so that the drawings need not be kept until all sheets are; nil keeps
	// them. It is called on several goroutines at once.
	Press func(*draw.Drawing) (draw.Pressed, error)
}

// The smallest and largest paper that the sheets can be laid out on, in
// millimetres.
const (
	minPaperWidthMm  = 140
	minPaperHeightMm = 200
	maxPaperMm       = 2000
)

// Packet draws the whole packet: the cover, then for each part its operation
// sheet, its punch templates and its inspection record; then the sequence in
// which the parts are joined. It returns an error if the paper is outside the
// range of Options or an outline cannot be read, and a *TooLargeError if a
// drawing needs more than maxTiles sheets.
func Packet(pl *plan.Plan, opt Options) (*draw.Document, error) {
	paper, err := paperOf(pl, opt)
	if err != nil {
		return nil, err
	}
	var tasks []task
	if opt.Findings != nil {
		tasks = append(tasks, func() ([]draw.Chapter, error) {
			return []draw.Chapter{{Part: sheets.ReviewName, Name: "Findings", Sheets: sheets.Review(pl, opt.Findings, paper)}}, nil
		})
	}
	for _, part := range pl.Parts {
		tasks = append(tasks, partTasks(pl, part, paper)...)
	}
	tasks = append(tasks, func() ([]draw.Chapter, error) { return sequence.Chapters(pl, paper), nil })
	chapters, err := opt.work(tasks)
	if err != nil {
		return nil, err
	}
	// The index does not change its length with the numbers in it, so the
	// first drawing of the cover only counts its pages.
	pages := len(sheets.Cover(pl, opt.Findings, paper, chapters, 0))
	cover := draw.Chapter{Part: "", Name: "Cover", Sheets: sheets.Cover(pl, opt.Findings, paper, chapters, pages)}
	return correct(draw.Bind(headOf(pl), append([]draw.Chapter{cover}, chapters...), "Shop packet"), pl, opt)
}

// task draws some chapters that stand together. Tasks know nothing of each
// other and only read the plan.
type task func() ([]draw.Chapter, error)

// partTasks draw the sheets of a part.
func partTasks(pl *plan.Plan, part *plan.PartPlan, paper draw.Frame) []task {
	tasks := []task{
		func() ([]draw.Chapter, error) {
			return []draw.Chapter{{Part: part.Title, Name: sheets.OperationName, Sheets: sheets.Operations(pl, part, paper)}}, nil
		},
		func() ([]draw.Chapter, error) { return truesize.Chapters(pl, part, paper) },
	}
	if len(part.Checks) > 0 {
		tasks = append(tasks, func() ([]draw.Chapter, error) {
			return []draw.Chapter{{Part: part.Title, Name: sheets.InspectionName, Sheets: sheets.Inspection(pl, part, paper)}}, nil
		})
	}
	return tasks
}

// work does the tasks on all processors and returns their chapters in the
// order of the tasks, or the error of the first that has one.
func (opt Options) work(tasks []task) ([]draw.Chapter, error) {
	done := make([][]draw.Chapter, len(tasks))
	errs := make([]error, len(tasks))
	var next atomic.Int64
	var all sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(tasks)) {
		all.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(tasks); i = int(next.Add(1)) - 1 {
				if done[i], errs[i] = tasks[i](); errs[i] == nil {
					errs[i] = opt.press(done[i])
				}
			}
		})
	}
	all.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
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
			pressed, err := opt.Press(&s.Draw)
			if err != nil {
				return fmt.Errorf("templates: %s, %s: %w", c.Part, s.Name, err)
			}
			s.Draw = draw.Drawing{Items: []draw.Item{pressed}}
		}
	}
	return nil
}

// Templates draws the punch templates alone, of the parts named, or of all
// parts if none is named. A name that is not in the plan, and a choice that
// leaves no face to mark, are errors; so is what Packet refuses.
func Templates(pl *plan.Plan, partNames []string, opt Options) (*draw.Document, error) {
	paper, err := paperOf(pl, opt)
	if err != nil {
		return nil, err
	}
	chosen := pl.Parts
	if len(partNames) > 0 {
		chosen = nil
		for _, name := range partNames {
			part := pl.Part(name)
			if part == nil {
				return nil, fmt.Errorf("templates: no part is named %q", name)
			}
			chosen = append(chosen, part)
		}
	}
	var tasks []task
	for _, part := range chosen {
		tasks = append(tasks, func() ([]draw.Chapter, error) { return truesize.Chapters(pl, part, paper) })
	}
	chapters, err := opt.work(tasks)
	if err != nil {
		return nil, err
	}
	if len(chapters) == 0 {
		return nil, errors.New("templates: no face of these parts has anything to mark, and none is wrapped or developed")
	}
	return correct(draw.Bind(headOf(pl), chapters, "Punch templates"), pl, opt)
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
			figures.Trimmed(paper.WidthMm, 2), figures.Trimmed(paper.HeightMm, 2), minPaperWidthMm, minPaperHeightMm, maxPaperMm)
	}
	name := paper.Name
	if name == "" || name == "custom" {
		name = figures.Trimmed(w, 1) + " × " + figures.Trimmed(h, 1) + " mm"
	}
	return room(opt.Printer, draw.Frame{WidthMm: w, HeightMm: h, Name: name}), nil
}

// headOf is what the title blocks say of a plan's job.
func headOf(pl *plan.Plan) draw.Job {
	return draw.Job{Name: pl.Job, Revision: pl.Revision, Date: pl.Date, Tolerance: pl.Tolerance}
}
