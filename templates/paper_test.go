package templates

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/parts"
)

// The index joins runs of pages that follow one another, however many chapters
// they are.
func TestIndexJoinsRuns(t *testing.T) {
	two := []*sheet{{}, {}}
	table := indexTable([]chapter{
		{part: "Tube", name: operationName, sheets: two}, {part: "Tube", name: "Wrap", sheets: two}, {part: "Tube", name: "Saddle", sheets: two},
		{part: "Tube", name: inspectionName, sheets: two[:1]}, {part: "Tube", name: "Hole", sheets: two}, {part: "Ring", name: operationName, sheets: two[:1]},
	}, 4)
	want := [][]string{{"Tube", "5–6", "", "", "7–10, 12–13", "11"}, {"Ring", "14", "", "", "", ""}}
	if len(table.rows) != len(want) || !slices.Equal(table.rows[0], want[0]) || !slices.Equal(table.rows[1], want[1]) {
		t.Errorf("rows %q, want %q", table.rows, want)
	}
}

// The verdict of an inspection record never stands on a page without a check,
// and the record names its general tolerance once.
func TestVerdictNotAlone(t *testing.T) {
	plan := jobOf("Pug mill", parts.Millimetres, flangePart())
	plan.Tolerance = "ISO 2768-m"
	part := *plan.Parts[0]
	pages := 0
	for n := 1; n <= 60; n++ {
		part.Checks = nil
		for range n {
			part.Checks = append(part.Checks, layout.Check{What: "length", Wanted: "120", Limits: "119.700 – 120.300", Gauge: "calipers", Source: "ISO 2768-m"})
		}
		sheets := inspectionSheets(plan, &part, frame{width: 210, height: 297})
		last := sheets[len(sheets)-1]
		if n := countText(last.draw, "119.700"); n == 0 {
			t.Errorf("%d checks: the last page of %d has no check", len(part.Checks), len(sheets))
		}
		if len(sheets) < pages {
			t.Errorf("%d checks take %d pages, fewer checks took %d", n, len(sheets), pages)
		}
		pages = len(sheets)
		if got := countText(sheets[0].draw, "ISO 2768-m"); got != 1 {
			t.Errorf("%d checks: the general tolerance stands %d times on the first page", n, got)
		}
	}
	if pages < 2 {
		t.Errorf("60 checks on %d page", pages)
	}
}

// countText counts the texts of a drawing that hold a word.
func countText(d Drawing, word string) int {
	n := 0
	for _, item := range d.Items {
		switch item := item.(type) {
		case Text:
			if strings.Contains(item.Content, word) {
				n++
			}
		case Group:
			n += countText(*item.Drawing, word)
		}
	}
	return n
}
