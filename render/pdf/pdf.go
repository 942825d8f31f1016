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
	"bytes"
	"fmt"
	"io"
	"regexp"
	"runtime"
	"sync"
	"sync/atomic"
	"time"

	"centrepop/parts/geom"
	"centrepop/render"
	"centrepop/templates/draw"
)

// ptPerMm is the number of points in a millimetre: 72 to the inch.
const ptPerMm = 72 / geom.MmPerInch

// maxPageMm is the largest page side: 14400 points (annex C.2).
const maxPageMm = 14400 / ptPerMm

// undated stands in the file's dates where the document has none.
var undated = time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)

// Write writes the document to w. The document needs at least one page, and
// page sides above 0 and up to 5080 mm.
func Write(w io.Writer, doc *draw.Document) error {
	date, err := check(doc)
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	streams, used, err := paint(doc.Pages)
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	f := newFile(w)
	resources, err := f.fonts(used)
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	tree := f.reserve()
	kids := make([]int, len(doc.Pages))
	for i, page := range doc.Pages {
		content := f.packed("", streams[i])
		kids[i] = f.object(fmt.Sprintf("<</Type /Page /Parent %d 0 R /MediaBox [0 0 %s %s] /Resources %d 0 R /Contents %d 0 R>>",
			tree, render.Decimal(page.WidthMm*ptPerMm, 4), render.Decimal(page.HeightMm*ptPerMm, 4), resources, content))
	}
	f.put(tree, fmt.Sprintf("<</Type /Pages /Count %d /Kids [%s]>>", len(kids), references(kids)))
	if err := f.complete(doc, date, tree, kids); err != nil {
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

func references(objects []int) []byte {
	var b []byte
	for _, n := range objects {
		b = fmt.Appendf(b, "%d 0 R ", n)
	}
	return b
}

// paint returns the content streams of the pages, compressed, and what they
// set. It works on all processors; what it returns does not depend on their
// number. The error is that of the first page that has one.
func paint(pages []draw.Page) ([][]byte, *glyphs, error) {
	streams := make([][]byte, len(pages))
	errs := make([]error, len(pages))
	used := &glyphs{}
	var next atomic.Int64
	var all sync.WaitGroup
	var merging sync.Mutex
	for range min(runtime.GOMAXPROCS(0), len(pages)) {
		all.Go(func() {
			p, z := &painter{}, newPacker()
			for i := int(next.Add(1)) - 1; i < len(pages); i = int(next.Add(1)) - 1 {
				content, err := p.page(&pages[i])
				streams[i], errs[i] = bytes.Clone(z.pack(content)), err
			}
			merging.Lock()
			defer merging.Unlock()
			used.merge(&p.used)
		})
	}
	all.Wait()
	for i, err := range errs {
		if err != nil {
			return nil, nil, fmt.Errorf("page %d: %w", i+1, err)
		}
	}
	return streams, used, nil
}

// languageTag is the shape of a language tag such as en or de-CH (RFC 5646).
var languageTag = regexp.MustCompile(`^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$`)

// check refuses what the file could not say and returns the date to put in.
func check(doc *draw.Document) (time.Time, error) {
	if doc == nil || len(doc.Pages) == 0 {
		return undated, fmt.Errorf("the document has no page")
	}
	if doc.Language != "" && !languageTag.MatchString(doc.Language) {
		return undated, fmt.Errorf("%q is not a language tag such as en or de-CH", doc.Language)
	}
	level := -1
	for i, page := range doc.Pages {
		if !sideOK(page.WidthMm) || !sideOK(page.HeightMm) {
			return undated, fmt.Errorf("page %d: %v x %v mm is no page size", i+1, page.WidthMm, page.HeightMm)
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

func sideOK(mm float64) bool { return mm > 0 && mm <= maxPageMm }
