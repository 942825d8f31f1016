package templates

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/parts/read"
	"centrepop/templates/sheettest"
	"centrepop/templates/truesize"
)

// TestRecordedPatterns compares the flat patterns of a small job with the
// recorded pages, and checks that its texts keep clear of each other.
func TestRecordedPatterns(t *testing.T) {
	job, err := read.Load(filepath.Join("testdata", "round", "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	worked, err := layout.Resolve(job)
	if err != nil {
		t.Fatal(err)
	}
	plan := worked.Plan
	doc, err := Templates(plan, nil, Options{Templates: truesize.All, Apart: true})
	if err != nil {
		t.Fatal(err)
	}
	for i := range doc.Pages {
		sheettest.CheckPage(t, "round work", &doc.Pages[i])
	}
	got := sheettest.Record(t, doc)
	for _, want := range []string{"Wrap template: outside", "Saddle cut: back end", "Hole in the main", "Cone development", "Square to round"} {
		if !strings.Contains(got, "bookmark 1 "+want) {
			t.Errorf("no bookmark %s", want)
		}
	}
	golden.Whole(t, filepath.Join("testdata", "round", "a4.txt"), []byte(got))
}

// TestPatternTooLarge: a pattern of too many sheets is left to its tables, and
// does not keep the rest of the packet from being printed.
func TestPatternTooLarge(t *testing.T) {
	job, err := read.Load(filepath.Join("testdata", "large", "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	worked, err := layout.Resolve(job)
	if err != nil {
		t.Fatal(err)
	}
	plan := worked.Plan
	doc, err := Packet(plan, Options{Templates: truesize.All})
	if err != nil {
		t.Fatal(err)
	}
	got := ""
	for i := range doc.Pages {
		got += " " + strings.Join(sheettest.TextsOf(t, &doc.Pages[i]), " ")
	}
	if !strings.Contains(got, "more than 400 sheets of A4") || strings.Contains(got, "Tile 1 of") {
		t.Error("the packet does not leave the wrap of a drum to its table")
	}
}

// TestPatternsOnManyPapers checks that the patterns fit every paper, with all
// texts on the page.
func TestPatternsOnManyPapers(t *testing.T) {
	job, err := read.Load(filepath.Join("testdata", "round", "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	worked, err := layout.Resolve(job)
	if err != nil {
		t.Fatal(err)
	}
	plan := worked.Plan
	for _, paper := range []parts.Paper{sheettest.Least, {Name: "A3", WidthMm: 297, HeightMm: 420}, {Name: "Letter", WidthMm: 215.9, HeightMm: 279.4}} {
		doc, err := Templates(plan, nil, Options{Paper: paper})
		if err != nil {
			t.Fatal(err)
		}
		for i := range doc.Pages {
			sheettest.CheckPage(t, "round work on "+paper.Name, &doc.Pages[i])
		}
		again, err := Templates(plan, nil, Options{Paper: paper})
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal([]byte(sheettest.Record(t, doc)), []byte(sheettest.Record(t, again))) {
			t.Errorf("%s: a second drawing differs", paper.Name)
		}
	}
}
