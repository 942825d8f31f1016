package sheets

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// The index joins runs of pages that follow one another, however many chapters
// they are.
func TestIndexJoinsRuns(t *testing.T) {
	two := []*draw.Sheet{{}, {}}
	table := indexTable([]draw.Chapter{
		{Part: "Tube", Name: OperationName, Sheets: two}, {Part: "Tube", Name: "Wrap", Sheets: two}, {Part: "Tube", Name: "Saddle", Sheets: two},
		{Part: "Tube", Name: InspectionName, Sheets: two[:1]}, {Part: "Tube", Name: "Hole", Sheets: two}, {Part: "Ring", Name: OperationName, Sheets: two[:1]},
	}, 4)
	want := [][]string{{"Tube", "5–6", "", "", "7–10, 12–13", "11"}, {"Ring", "14", "", "", "", ""}}
	if len(table.Rows) != len(want) || !slices.Equal(table.Rows[0], want[0]) || !slices.Equal(table.Rows[1], want[1]) {
		t.Errorf("rows %q, want %q", table.Rows, want)
	}
}

// The verdict of an inspection record never stands on a page without a check,
// and the record names its general tolerance once.
func TestVerdictNotAlone(t *testing.T) {
	pl := sheettest.JobOf("Pug mill", parts.Millimetres, sheettest.FlangePart())
	pl.Tolerance = "ISO 2768-m"
	part := *pl.Parts[0]
	pages := 0
	for n := 1; n <= 60; n++ {
		part.Checks = nil
		for range n {
			part.Checks = append(part.Checks, plan.Check{What: "length", Wanted: "120", Limits: "119.700 – 120.300", Gauge: "calipers", Source: "ISO 2768-m"})
		}
		sheets := Inspection(pl, &part, draw.Frame{WidthMm: 210, HeightMm: 297})
		last := sheets[len(sheets)-1]
		if n := countText(last.Draw, "119.700"); n == 0 {
			t.Errorf("%d checks: the last page of %d has no check", len(part.Checks), len(sheets))
		}
		if len(sheets) < pages {
			t.Errorf("%d checks take %d pages, fewer checks took %d", n, len(sheets), pages)
		}
		pages = len(sheets)
		if got := countText(sheets[0].Draw, "ISO 2768-m"); got != 1 {
			t.Errorf("%d checks: the general tolerance stands %d times on the first page", n, got)
		}
	}
	if pages < 2 {
		t.Errorf("60 checks on %d page", pages)
	}
}

// A long step fills the page it begins on; every line and every limit of it is
// printed once, a limit with the line that names it. A short step stays whole.
func TestLongStepIsParted(t *testing.T) {
	op := plan.Operation{N: 2, Machine: "Lathe", Title: "Turn from the front face", Holding: "chuck", Caution: "hot"}
	for _, name := range []string{"body", "spigot", "shoulder", "cup", "nose", "rim", "land", "seat", "neck", "collar", "pilot", "tail"} {
		op.Do = append(op.Do, "Turn "+name+" Ø90 f7, 20 long.")
		op.Limits = append(op.Limits, name+" 89.929 – 89.964")
	}
	whole := operationBox(op, 190).Height
	if whole < splitMm {
		t.Fatalf("the step is only %.1f mm tall", whole)
	}
	for _, left := range []float64{whole + 1, 120, 90, 40, 5} {
		pieces := operationBoxes(op, 190, left, 230)
		parted := left >= 90 && left < whole
		if (len(pieces) > 2) != parted {
			t.Errorf("%.0f mm left: %d pieces", left, len(pieces))
		}
		if parted && pieces[0].Height > left {
			t.Errorf("%.0f mm left: first box of %.1f mm", left, pieces[0].Height)
		}
		var all draw.Drawing
		for _, p := range pieces {
			all.Place(&p.Draw, 0, 0)
		}
		for _, text := range append(slices.Clone(op.Do), op.Limits...) {
			if n := countText(all, text); n != 1 {
				t.Errorf("%.0f mm left: %q stands %d times", left, text, n)
			}
		}
	}
	first, second := partOperation(op, 5)
	if len(first.Limits) != 5 || len(second.Limits) != 7 || second.Caution != "" || second.Title != op.Title+" (continued)" {
		t.Errorf("parted into %+v and %+v", first, second)
	}
	op.Do, op.Limits = op.Do[:2], nil
	if n := len(operationBoxes(op, 190, 20, 230)); n != 2 {
		t.Errorf("a short step is in %d pieces", n)
	}
}

// countText counts the texts of a drawing that hold a word.
func countText(d draw.Drawing, word string) int {
	n := 0
	for _, item := range d.Items {
		switch item := item.(type) {
		case draw.Text:
			if strings.Contains(item.Content, word) {
				n++
			}
		case draw.Group:
			n += countText(*item.Drawing, word)
		}
	}
	return n
}
