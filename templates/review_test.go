package templates

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheets"
	"centrepop/templates/sheettest"
)

// reviewed are findings of each sort, with texts as long as real ones.
func reviewed() []review.Finding {
	long := strings.Repeat("from its centre to the outline 10 mm, wanted 13.2 mm; ", 4)
	at := func(line int) parts.Pos { return parts.Pos{File: "barrel-flange.yaml", Line: line, Column: 5} }
	return []review.Finding{
		{Severity: review.Stop, Code: "stock-left", Pos: at(7), What: "the bore has a fit, but nothing is left", Numbers: "0 mm left", Rule: "leave metal", Source: "common practice, no source", Fix: "add leave"},
		{Severity: review.Check, Code: "edge", Pos: at(9), What: "bolts lie close to the outline", Numbers: long, Rule: long, Source: "EN 1993-1-8:2005 Table 3.3", Fix: "move them"},
		{Severity: review.Check, Code: "ligament", Pos: at(11), What: "pins lie close together", Rule: "keep apart", Source: "common practice, no source", Fix: "move them", Accepted: true, Reason: "they only locate the cover"},
		{Severity: review.Note, Code: "pierce", Pos: at(12), What: "too small to cut", Rule: "drill", Source: "common practice, no source", Fix: "drill them"},
	}
}

func TestReviewPages(t *testing.T) {
	for _, s := range sheettest.Samples() {
		doc, err := Packet(s.Plan, Options{Paper: s.Paper, Findings: reviewed()})
		if err != nil {
			t.Fatal(err)
		}
		first := slices.IndexFunc(doc.Pages, func(p draw.Page) bool {
			return len(p.Bookmarks) > 0 && p.Bookmarks[0].Title == sheets.ReviewName
		})
		if first < 1 {
			t.Fatalf("%s: no review after the cover", s.Plan.Job)
		}
		end := first + 1
		for end < len(doc.Pages) && len(doc.Pages[end].Bookmarks) == 0 {
			end++
		}
		for i := range doc.Pages[:end] {
			sheettest.CheckPage(t, s.Plan.Job, &doc.Pages[i])
		}
		cover := sheettest.Record(t, &draw.Document{Pages: doc.Pages[:first]})
		pages := sheettest.Record(t, &draw.Document{Pages: doc.Pages[first:end]})
		if !strings.Contains(cover, "Not ready to cut. 1 to stop at, 1 to check, 1 to note, 1 accepted.") {
			t.Errorf("%s: the cover does not tell the result", s.Plan.Job)
		}
		for _, want := range []string{"stock-left", "edge", "ligament", "pierce", "line 9", "Reviewed by"} {
			if !strings.Contains(pages, want) {
				t.Errorf("%s: the review lacks %q", s.Plan.Job, want)
			}
		}
	}
}

func TestReviewOfNothing(t *testing.T) {
	s := sheettest.Samples()[0]
	for _, c := range []struct {
		findings []review.Finding
		want     int
	}{{nil, 0}, {[]review.Finding{}, 1}} {
		doc, err := Packet(s.Plan, Options{Paper: s.Paper, Findings: c.findings})
		if err != nil {
			t.Fatal(err)
		}
		got := 0
		for _, p := range doc.Pages {
			for _, b := range p.Bookmarks {
				if b.Title == sheets.ReviewName {
					got++
				}
			}
		}
		if got != c.want {
			t.Errorf("%d reviews for %v, want %d", got, c.findings, c.want)
		}
	}
}
