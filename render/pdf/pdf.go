// Package pdf writes a draw.Document as a PDF 1.7 file at true size.
//
// In come pages in millimetres with the origin at the lower left corner of
// the paper and y up, which is also how PDF counts; out go points (1/72 inch)
// with four decimals, 0.00004 mm. Arcs become cubic curves that stay within
// 5 millionths of their radius. Text is real text in the embedded faces of
// package typeface.
//
// The file asks viewers not to scale it when printing, carries page labels,
// bookmarks, title and language, and is the same byte for byte for the same
// document: no clock and no order of a Go map enters it. Layers are ignored.
//
// Errors name the page and what is wrong with it: a size, coordinate or width
// that is not a finite number or out of range, a bookmark that skips a level,
// a date that is none, a character that the typeface lacks. Nothing is written
// to w before all pages are drawn.
//
// The format is that of ISO 32000-1:2008; clause numbers in the comments of
// this package refer to it.
package pdf

import (
	"fmt"
	"io"
	"regexp"
	"sync"
	"time"

	"centrepop/parts/seq"
	"centrepop/render"
	"centrepop/templates/draw"
)

// maxPageMm is the largest page side: 14400 points (annex C.2).
const maxPageMm = 14400 / ptPerMm

// undated stands in the file's dates where the document has none.
var undated = time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)

// Write writes the document to w. The document needs at least one page, and
// page sides above 0 and up to 5080 mm.
func Write(w io.Writer, doc *draw.Document) error { return new(Press).Write(w, doc) }

// A Press takes over drawings while others are still being made, and then
// writes the document that they belong to. The zero value is ready to use.
type Press struct {
	lock     sync.Mutex
	idle     []*painter
	painters []*painter // all of them: each knows what it has set
	pack     packer
}

// Take takes over a drawing: what it returns stands for the drawing in the
// document that Write will be given, and the drawing can be forgotten. It may
// be called on several goroutines. Errors are those of a page's drawing.
func (p *Press) Take(d *draw.Drawing) (draw.Pressed, error) {
	painter := p.hire()
	defer p.release(painter)
	content, err := painter.apart(d)
	if err != nil {
		return draw.Pressed{}, fmt.Errorf("pdf: %w", err)
	}
	return draw.Pressed{By: taken{[][]byte{p.pack.pack(content)}, painter.links, painter.tags}}, nil
}

// hire returns a painter that nobody else uses until it is released.
func (p *Press) hire() *painter {
	p.lock.Lock()
	defer p.lock.Unlock()
	if n := len(p.idle); n > 0 {
		last := p.idle[n-1]
		p.idle = p.idle[:n-1]
		return last
	}
	made := &painter{pack: &p.pack}
	p.painters = append(p.painters, made)
	return made
}

func (p *Press) release(idle *painter) {
	p.lock.Lock()
	defer p.lock.Unlock()
	p.idle = append(p.idle, idle)
}

// used is what all painters have set.
func (p *Press) used() *glyphs {
	all := &glyphs{}
	for _, painter := range p.painters {
		all.merge(&painter.used)
	}
	return all
}

// Write writes the document to w, as the function of that name does.
func (p *Press) Write(w io.Writer, doc *draw.Document) error {
	date, err := check(doc)
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	painted, err := p.paint(doc.Pages)
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	f := newFile(w, &p.pack)
	resources, err := f.fonts(p.used())
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	tree := f.reserve()
	kids := make([]int, len(doc.Pages))
	for i := range kids {
		kids[i] = f.reserve()
	}
	targets := doc.Marks()
	for i, page := range doc.Pages {
		annots := f.annotations(painted[i].links, targets, kids)
		content := seq.Map(painted[i].content, func(part []byte) int { return f.packed("", part) })
		f.put(kids[i], fmt.Sprintf("<</Type /Page /Parent %d 0 R /MediaBox [0 0 %s %s] /Resources %d 0 R /Contents [%s] /StructParents %d%s>>",
			tree, render.Decimal(page.WidthMm*ptPerMm, 4), render.Decimal(page.HeightMm*ptPerMm, 4), resources, references(content), i, annots))
	}
	f.put(tree, fmt.Sprintf("<</Type /Pages /Count %d /Kids [%s]>>", len(kids), references(kids)))
	if err := f.complete(doc, date, tree, kids, f.structure(painted, kids)); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}

// fonts writes the faces and returns the resources of all pages.
func (f *file) fonts(used *glyphs) (int, error) {
	list := ""
	for _, bold := range []bool{false, true} {
		set := used.set(bold)
		if len(set) == 0 {
			continue
		}
		n, err := f.font(bold, set)
		if err != nil {
			return 0, err
		}
		list += fmt.Sprintf(" /%s %d 0 R", fontName(bold), n)
	}
	return f.object("<</Font <<" + list + ">>>>"), nil
}

// paint returns the pages with their contents compressed. It works on all
// processors; what it returns does not depend on their number. The error is
// that of the first page that has one.
func (p *Press) paint(pages []draw.Page) ([]taken, error) {
	painted := make([]taken, len(pages))
	errs := make([]error, len(pages))
	seq.OnAll(len(pages), func(i int) {
		painter := p.hire()
		defer p.release(painter)
		errs[i] = painter.page(&pages[i])
		painter.endStream()
		painted[i] = taken{painter.done, painter.links, painter.tags}
	})
	for i, err := range errs {
		if err != nil {
			return nil, fmt.Errorf("page %d: %w", i+1, err)
		}
	}
	return painted, nil
}

// languageTag is the shape of a language tag such as en or de-CH (RFC 5646).
var languageTag = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$`) })

// check refuses what the file could not say and returns the date to put in.
func check(doc *draw.Document) (time.Time, error) {
	if doc == nil || len(doc.Pages) == 0 {
		return undated, fmt.Errorf("the document has no page")
	}
	if doc.Language != "" && !languageTag().MatchString(doc.Language) {
		return undated, fmt.Errorf("%q is not a language tag such as en or de-CH", doc.Language)
	}
	level := -1
	for i, page := range doc.Pages {
		w, h := page.WidthMm, page.HeightMm
		if ok := min(w, h) > 0 && max(w, h) <= maxPageMm; !ok { // nor is NaN
			return undated, fmt.Errorf("page %d: %v x %v mm is no page size", i+1, w, h)
		}
		for _, b := range page.Bookmarks {
			if b.Level < 0 || b.Level > level+1 {
				return undated, fmt.Errorf("page %d: bookmark %q at level %d follows one at level %d", i+1, b.Title, b.Level, level)
			}
			level = b.Level
		}
	}
	if doc.Date == "" {
		return undated, nil
	}
	date, err := time.Parse(time.DateOnly, doc.Date)
	if err != nil {
		return undated, fmt.Errorf("%q is not a date YYYY-MM-DD", doc.Date)
	}
	return date, nil
}
