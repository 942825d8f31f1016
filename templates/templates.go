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
	var chapters []draw.Chapter
	if opt.Findings != nil {
		chapters = append(chapters, draw.Chapter{Part: sheets.ReviewName, Name: "Findings", Sheets: sheets.Review(pl, opt.Findings, paper)})
	}
	for _, part := range pl.Parts {
		chapters = append(chapters, draw.Chapter{Part: part.Title, Name: sheets.OperationName, Sheets: sheets.Operations(pl, part, paper)})
		trueSize, err := truesize.Chapters(pl, part, paper)
		if err != nil {
			return nil, err
		}
		chapters = append(chapters, trueSize...)
		if len(part.Checks) > 0 {
			chapters = append(chapters, draw.Chapter{Part: part.Title, Name: sheets.InspectionName, Sheets: sheets.Inspection(pl, part, paper)})
		}
	}
	chapters = append(chapters, sequence.Chapters(pl, paper)...)
	// The index does not change its length with the numbers in it, so the
	// first drawing of the cover only counts its pages.
	pages := len(sheets.Cover(pl, opt.Findings, paper, chapters, 0))
	cover := draw.Chapter{Part: "", Name: "Cover", Sheets: sheets.Cover(pl, opt.Findings, paper, chapters, pages)}
	return correct(draw.Bind(headOf(pl), append([]draw.Chapter{cover}, chapters...), "Shop packet"), pl, opt)
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
	var chapters []draw.Chapter
	for _, part := range chosen {
		trueSize, err := truesize.Chapters(pl, part, paper)
		if err != nil {
			return nil, err
		}
		chapters = append(chapters, trueSize...)
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
