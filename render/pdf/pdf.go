// Package pdf writes a templates.Document as a PDF 1.7 file at true size.
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
// a date that is none. Nothing is written to w before the file is complete.
//
// The format is that of ISO 32000-1:2008; clause numbers in the comments of
// this package refer to it.
package pdf

import (
	"bytes"
	"fmt"
	"io"
	"regexp"
	"time"

	"github.com/go-pdf/fpdf"

	"centrepop/parts/geom"
	"centrepop/templates"
	"centrepop/templates/typeface"
)

// ptPerMm is the number of points in a millimetre: 72 to the inch.
const ptPerMm = 72 / geom.MmPerInch

// maxPageMm is the largest page side: 14400 points (annex C.2).
const maxPageMm = 14400 / ptPerMm

// undated stands in the file's dates where the document has none.
var undated = time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)

// Write writes the document to w. The document needs at least one page, and
// page sides above 0 and up to 5080 mm.
func Write(w io.Writer, doc *templates.Document) error {
	date, err := check(doc)
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	body, err := pages(doc, date)
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	whole, err := complete(body, doc, date)
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	if _, err := w.Write(whole); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}

// languageTag is the shape of a language tag such as en or de-CH (RFC 5646).
var languageTag = regexp.MustCompile(`^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$`)

// check refuses what the file could not say and returns the date to put in.
func check(doc *templates.Document) (time.Time, error) {
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

// pages returns the file with pages and fonts, as the library writes it.
func pages(doc *templates.Document, date time.Time) ([]byte, error) {
	first := doc.Pages[0]
	f := fpdf.NewCustom(&fpdf.InitType{
		OrientationStr: "P",
		UnitStr:        "mm",
		Size:           fpdf.SizeType{Wd: first.WidthMm, Ht: first.HeightMm},
	})
	f.SetCompression(true)
	f.SetCatalogSort(true)  // else its tables come in the order of Go maps
	f.SetCreationDate(date) // else it asks the clock
	f.SetModificationDate(date)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.AddUTF8FontFromBytes(family, "", typeface.Regular())
	f.AddUTF8FontFromBytes(family, "B", typeface.Bold())
	for i := range doc.Pages {
		page := &doc.Pages[i]
		f.AddPageFormat("P", fpdf.SizeType{Wd: page.WidthMm, Ht: page.HeightMm})
		p := painter{f: f, heightMm: page.HeightMm}
		if err := p.drawing(&page.Drawing, 0); err != nil {
			return nil, fmt.Errorf("page %d: %w", i+1, err)
		}
	}
	var b bytes.Buffer
	if err := f.Output(&b); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
