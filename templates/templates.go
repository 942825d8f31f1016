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

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/sheets"
	"centrepop/templates/truesize"
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
