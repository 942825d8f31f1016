package draw

import "strconv"

// jobHead is what every title block says of the job; each may be empty.
type Job struct {
	Name, Revision string
	Date           string // YYYY-MM-DD
	Tolerance      string // the general tolerance
}

// Sheet is a page in the making. Its drawing lacks only the title block,
// which needs the number of pages.
type Sheet struct {
	Frame Frame
	Part  string // title of the part, empty on the cover
	Name  string // what the sheet is
	Scale string // "1:1" or "not to scale"
	Draw  Drawing
}

// Chapter is a run of sheets with one entry in the index and the bookmarks.
type Chapter struct {
	Part   string
	Name   string
	Sheets []*Sheet
}

// Bind numbers the sheets, draws their title blocks and sets the bookmarks.
func Bind(job Job, chapters []Chapter, subject string) *Document {
	doc := &Document{Title: job.Name, Subject: subject, Language: "en", Date: job.Date}
	if job.Revision != "" {
		doc.Title += ", revision " + job.Revision
	}
	total := 0
	for _, c := range chapters {
		total += len(c.Sheets)
	}
	part := ""
	for _, c := range chapters {
		for i, s := range c.Sheets {
			n := len(doc.Pages) + 1
			titleBlock(job, s, n, total)
			page := Page{WidthMm: s.Frame.WidthMm, HeightMm: s.Frame.HeightMm, Drawing: s.Draw, Label: strconv.Itoa(n)}
			if i == 0 {
				page.Bookmarks = bookmarks(c, c.Part != part)
			}
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
