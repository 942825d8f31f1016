package truesize

import (
	"path/filepath"
	"testing"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts/golden"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// TestRecorded: templates and a cutting drawing of some of the small parts of
// layout/part are drawn as recorded: each text and each line with its place to 0.1 mm.
// CENTREPOP_UPDATE=1 writes testdata anew: read the difference, and look at the page.
func TestRecorded(t *testing.T) {
	t.Parallel()
	worked := sheettest.Worked(t, "part", "mm")
	var list []*plan.PartPlan
	for _, name := range []string{"sleeve", "collar", "tray", "funnel", "branch"} {
		list = append(list, worked.Plan.Part(name))
	}
	choice, err := Choose(worked.Plan, list, draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"}, All)
	if err != nil {
		t.Fatal(err)
	}
	var sheets []*draw.Sheet
	for _, c := range choice.Sheets(nil) {
		sheets = append(sheets, c.Sheets...)
	}
	cut, err := part.CutProfile(worked.Job, "plate", part.CutOptions{KerfMm: 0.3})
	if err != nil {
		t.Fatal(err)
	}
	cut.Held = true
	page, err := Profile(cut)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"feeder", "sieve"} {
		pl := sheettest.Worked(t, "joint", name).Plan
		whole, err := Choose(pl, pl.Parts, draw.Frame{WidthMm: 215.9, HeightMm: 279.4, Name: "Letter"}, All)
		if err != nil {
			t.Fatal(err)
		}
		var drawn []*draw.Sheet
		for _, c := range whole.Sheets(nil) {
			drawn = append(drawn, c.Sheets...)
		}
		golden.Whole(t, filepath.Join("testdata", name+".txt"), []byte(sheettest.RecordSheets(t, drawn)))
	}
	golden.Whole(t, filepath.Join("testdata", "parts.txt"), []byte(sheettest.RecordSheets(t, sheets)))
	golden.Whole(t, filepath.Join("testdata", "cut.txt"), []byte(sheettest.Record(t, ProfileDocument(cut, page, "2025-03-14"))))
}
