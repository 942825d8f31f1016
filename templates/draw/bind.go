package draw

import (
	"cmp"
	"slices"
	"strconv"

	"centrepop/parts/seq"
)

// Job is what every title block says of the job; each may be empty.
type Job struct {
	Name, Revision string
	Date           string // YYYY-MM-DD
	Tolerance      string // the general tolerance
	// Held are the titles of the parts that are not released: all their
	// sheets are stamped.
	Held []string
}

// Sheet is a page in the making. Its drawing lacks only the title block,
// which needs the number of pages.
type Sheet struct {
	Frame Frame
	Part  string // title of the part, empty on the cover
	Name  string // what the sheet is
	Scale string // "1:1" or "not to scale"
	Draw  Drawing
	// Parts are the titles of all parts that have something on the sheet, if
	// more than Part says; Starts are bookmarks for what begins on it.
	Parts, Starts []string
	// Holds are the titles of what else numbers of pages refer to; they are no bookmarks.
	Holds []string
	// All says that the sheet is about all parts: it is stamped where one is held.
	All bool
	// Close draws what needs the page's number; nil for the title block.
	Close func(page, total int)
	// FillShare is the part of the room that is used, of sheets at 1:1.
	FillShare float64
	// Unsaid says of a sheet at 1:1 that notes have found no room on it.
	Unsaid bool
	// Blocks are the pieces that a flow has set on the sheet.
	Blocks []Block
	// Refers are numbers of pages that are written once all sheets are there.
	Refers []PageOf
	// Revision is a note that the sheet takes the place of another.
	Revision string
}

// TrueScale is the scale of a template.
const TrueScale = "1:1"

// Chapter is a run of sheets with one entry in the index and the bookmarks.
type Chapter struct {
	Part   string
	Name   string
	Sheets []*Sheet
	// Of names what the chapter is of where its name does not last: a step's
	// number changes, its joints do not.
	Of []string
}

// PageOf is the number of the page on which something of a title begins, "page 71",
// from a baseline point in the direction of the turn; nothing if it is not in the
// document.
type PageOf struct {
	Title            string
	XMm, YMm, SizeMm float64
	RotateDeg        float64
}

// StepOf is the title by which numbers of pages refer to a joint's step.
func StepOf(joint string) string { return "step " + joint }

// PageOfMm is the room that the number of a page takes in a size of text.
func PageOfMm(sizeMm float64) float64 { return TextWidth("page 8888", sizeMm, true) }

// starts are the pages on which titles begin, from 1.
func starts(chapters []Chapter) map[string]int {
	at, n := map[string]int{}, 0
	for _, c := range chapters {
		for _, s := range c.Sheets {
			n++
			for _, title := range append(slices.Clip(s.Starts), s.Holds...) {
				at[title] = cmp.Or(at[title], n)
			}
		}
	}
	return at
}

// Bind numbers the sheets, draws their title blocks and sets the bookmarks.
func Bind(job Job, chapters []Chapter, subject string) *Document {
	doc := &Document{Title: job.Name, Subject: subject, Language: "en", Date: job.Date}
	if job.Revision != "" {
		doc.Title += ", revision " + job.Revision
	}
	total := seq.Sum(chapters, func(c Chapter) int { return len(c.Sheets) })
	part, at := "", starts(chapters)
	for _, c := range chapters {
		for i, s := range c.Sheets {
			n := len(doc.Pages) + 1
			if s.Close != nil {
				s.Close(n, total)
			} else {
				titleBlock(job, s, n, total)
			}
			for _, r := range s.Refers {
				if n := at[r.Title]; n > 0 {
					s.Draw.Add(Text{XMm: r.XMm, YMm: r.YMm, SizeMm: r.SizeMm, RotateDeg: r.RotateDeg, Bold: true, Content: "page " + strconv.Itoa(n)})
				}
			}
			if job.holds(s) {
				stamp(s)
			}
			if s.Revision != "" {
				noteRevision(s)
			}
			page := Page{WidthMm: s.Frame.WidthMm, HeightMm: s.Frame.HeightMm, Drawing: s.Draw, Label: strconv.Itoa(n)}
			if i == 0 {
				page.Bookmarks = bookmarks(c, c.Part != part)
			}
			page.Bookmarks = append(page.Bookmarks, seq.Map(s.Starts, func(title string) Bookmark { return Bookmark{Title: title, Level: 1} })...)
			doc.Pages = append(doc.Pages, page)
		}
		part = c.Part
	}
	return doc
}

// bookmarks returns the entries of a chapter; newPart says that its part
// begins with it.
func bookmarks(c Chapter, newPart bool) []Bookmark {
	if c.Part == "" {
		return []Bookmark{{Title: c.Name}}
	}
	entry := Bookmark{Title: c.Name, Level: 1}
	if newPart {
		return []Bookmark{{Title: c.Part}, entry}
	}
	return []Bookmark{entry}
}
