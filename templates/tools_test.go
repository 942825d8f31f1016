package templates

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/parts/read"
	"centrepop/templates/sheettest"
)

// The sheets of the nine tools of the mill take three pages, and every step that uses
// one names it with the page where its sheet begins. A packet for who makes no parts
// has neither sheets nor pages.
func TestToolsAndTheirPages(t *testing.T) {
	t.Parallel()
	job, err := read.Load("../testdata/pugmill/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	worked, err := layout.Resolve(job)
	if err != nil {
		t.Fatal(err)
	}
	for _, reader := range []Reader{"", Fabricator} {
		doc, err := Packet(worked.Plan, Options{For: reader})
		if err != nil {
			t.Fatal(err)
		}
		at, pages, named := doc.Marks(), map[int]bool{}, 0
		for i := range doc.Pages {
			texts := sheettest.TextsOf(t, &doc.Pages[i])
			for _, r := range worked.Plan.Tools {
				if page, ok := at[r.Name]; ok {
					pages[page] = true
				}
				if !slices.Contains(texts, "Have ready:") || !slices.Contains(texts, r.Name) {
					continue
				}
				named++
				wants := "page " + strconv.Itoa(at[r.Name]+1)
				if slices.Contains(texts, wants) != (reader == "") {
					t.Errorf("for %q: page %d names %s, want %s: %s", reader, i+1, r.Name, wants, strings.Join(texts, " | "))
				}
			}
		}
		if want := map[Reader]int{"": 4}[reader]; len(pages) != want || named != 10 {
			t.Errorf("for %q: sheets on %d pages, want %d; named %d times", reader, len(pages), want, named)
		}
	}
}
