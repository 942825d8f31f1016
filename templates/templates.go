// Package templates draws the sheets of a shop packet: the cover, the 1:1
// punch templates, the operation sheets, the inspection records and the
// sequence in which the parts are pressed, welded and bolted. It takes every
// number and every worked-out string from a layout.Plan and decides only
// where they stand on paper.
//
// All coordinates and sizes are millimetres on paper, x to the right and y up;
// a page's origin is its lower left corner. Face drawings keep the plan's
// coordinates: the part's origin, x right and TOP up as seen by who looks at
// that face. Text sizes are em sizes in millimetres; nothing is smaller than
// 2.6 mm, and what is read at the bench is 3.2 mm or more. Punch templates are
// never scaled; every other picture says that it is not to scale.
//
// Clock angles run from TOP clockwise, looking at the named face.
package templates

import (
	"errors"
	"fmt"
	"strconv"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/parts"
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

// A TooLargeError says that a drawing at 1:1 needs more than maxTiles sheets.
type TooLargeError struct {
	Part string // the part's name
	what string
}

// Error names the part, its size and the paper.
func (e *TooLargeError) Error() string { return e.what + ": choose larger paper" }

// Packet draws the whole packet: the cover, then for each part its operation
// sheet, its punch templates and its inspection record; then the sequence in
// which the parts are joined. It returns an error if the paper is outside the
// range of Options or an outline cannot be read, and a *TooLargeError if a
// drawing needs more than maxTiles sheets.
func Packet(pl *plan.Plan, opt Options) (*Document, error) {
	paper, err := paperOf(pl, opt)
	if err != nil {
		return nil, err
	}
	chapters := reviewChapters(pl, opt, paper)
	for _, part := range pl.Parts {
		chapters = append(chapters, chapter{part.Title, operationName, operationSheets(pl, part, paper)})
		trueSize, err := templateChapters(pl, part, paper)
		if err != nil {
			return nil, err
		}
		chapters = append(chapters, trueSize...)
		if len(part.Checks) > 0 {
			chapters = append(chapters, chapter{part.Title, inspectionName, inspectionSheets(pl, part, paper)})
		}
	}
	chapters = append(chapters, sequenceChapters(pl, paper)...)
	// The index does not change its length with the numbers in it, so the
	// first drawing of the cover only counts its pages.
	pages := len(coverSheets(pl, opt.Findings, paper, chapters, 0))
	cover := chapter{"", "Cover", coverSheets(pl, opt.Findings, paper, chapters, pages)}
	return bind(pl, append([]chapter{cover}, chapters...), "Shop packet").correct(pl, opt)
}

// templateChapters are all 1:1 sheets of a part: its faces, then what is
// wrapped or developed.
func templateChapters(pl *plan.Plan, part *plan.PartPlan, paper frame) ([]chapter, error) {
	var chapters []chapter
	for _, face := range part.Faces {
		c, err := punchChapter(pl, part, face, paper)
		if err != nil {
			return nil, err
		}
		chapters = append(chapters, c)
	}
	flat, err := patternChapters(pl, part, paper)
	return append(chapters, flat...), err
}

// Templates draws the punch templates alone, of the parts named, or of all
// parts if none is named. A name that is not in the plan, and a choice that
// leaves no face to mark, are errors; so is what Packet refuses.
func Templates(pl *plan.Plan, partNames []string, opt Options) (*Document, error) {
	paper, err := paperOf(pl, opt)
	if err != nil {
		return nil, err
	}
	chosen := pl.Parts
	if len(partNames) > 0 {
		chosen = nil
		for _, name := range partNames {
			part := partNamed(pl, name)
			if part == nil {
				return nil, fmt.Errorf("templates: no part is named %q", name)
			}
			chosen = append(chosen, part)
		}
	}
	var chapters []chapter
	for _, part := range chosen {
		trueSize, err := templateChapters(pl, part, paper)
		if err != nil {
			return nil, err
		}
		chapters = append(chapters, trueSize...)
	}
	if len(chapters) == 0 {
		return nil, errors.New("templates: no face of these parts has anything to mark, and none is wrapped or developed")
	}
	return bind(pl, chapters, "Punch templates").correct(pl, opt)
}

func partNamed(pl *plan.Plan, name string) *plan.PartPlan {
	for _, part := range pl.Parts {
		if part.Name == name {
			return part
		}
	}
	return nil
}

// paperOf returns the paper, upright.
func paperOf(pl *plan.Plan, opt Options) (frame, error) {
	paper := opt.Paper
	if paper.WidthMm == 0 && paper.HeightMm == 0 {
		paper = pl.Paper
	}
	if paper.WidthMm == 0 && paper.HeightMm == 0 {
		paper = parts.Paper{Name: "A4", WidthMm: 210, HeightMm: 297}
	}
	w, h := min(paper.WidthMm, paper.HeightMm), max(paper.WidthMm, paper.HeightMm)
	if !(w >= minPaperWidthMm && h >= minPaperHeightMm && h <= maxPaperMm) {
		return frame{}, fmt.Errorf("templates: paper of %s × %s mm: the sheets need at least %d × %d mm and at most %d mm",
			trimmed(paper.WidthMm, 2), trimmed(paper.HeightMm, 2), minPaperWidthMm, minPaperHeightMm, maxPaperMm)
	}
	name := paper.Name
	if name == "" || name == "custom" {
		name = trimmed(w, 1) + " × " + trimmed(h, 1) + " mm"
	}
	return room(opt.Printer, frame{width: w, height: h, name: name}), nil
}

// sheet is a page in the making. Its drawing lacks only the title block,
// which needs the number of pages.
type sheet struct {
	frame frame
	part  string // title of the part, empty on the cover
	name  string // what the sheet is
	scale string // "1:1" or "not to scale"
	draw  Drawing
}

// The names of the chapters, for the index and the bookmarks.
const (
	operationName  = "Operation sheet"
	inspectionName = "Inspection record"
)

// punchName is the name of a face's template.
func punchName(face parts.Face) string { return "Punch template, " + upper(face) + " face" }

// chapter is a run of sheets with one entry in the index and the bookmarks.
type chapter struct {
	part   string
	name   string
	sheets []*sheet
}

// bind numbers the sheets, draws their title blocks and sets the bookmarks.
func bind(pl *plan.Plan, chapters []chapter, subject string) *Document {
	doc := &Document{Title: pl.Job, Subject: subject, Language: "en", Date: pl.Date}
	if pl.Revision != "" {
		doc.Title += ", revision " + pl.Revision
	}
	total := 0
	for _, c := range chapters {
		total += len(c.sheets)
	}
	part := ""
	for _, c := range chapters {
		for i, s := range c.sheets {
			n := len(doc.Pages) + 1
			titleBlock(pl, s, n, total)
			page := Page{WidthMm: s.frame.width, HeightMm: s.frame.height, Drawing: s.draw, Label: strconv.Itoa(n)}
			if i == 0 {
				page.Bookmarks = bookmarks(c, c.part != part)
			}
			doc.Pages = append(doc.Pages, page)
		}
		part = c.part
	}
	return doc
}

// bookmarks returns the entries of a chapter; newPart says that its part
// begins with it.
func bookmarks(c chapter, newPart bool) []Bookmark {
	if c.part == "" {
		return []Bookmark{{Title: c.name}}
	}
	entry := Bookmark{Title: c.name, Level: 1}
	if newPart {
		return []Bookmark{{Title: c.part}, entry}
	}
	return []Bookmark{entry}
}
