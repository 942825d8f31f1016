package sequence

import (
	"fmt"
	"path/filepath"
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/golden"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// TestRecorded: the sheets of a plan made by hand, with a joint of each kind, of the
// general arrangement and of some steps of small jobs in space, are drawn as recorded:
// each text and each line with its place to 0.1 mm. CENTREPOP_UPDATE=1 writes testdata
// anew: read the difference, and look at the page.
func TestRecorded(t *testing.T) {
	t.Parallel()
	a4 := draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"}
	made := sheettest.JoinedPlan()
	made.Sources = []plan.SourceTable{{Title: "Forms", Rows: []plan.SourceRow{{What: "ring", Source: "DIN 471", State: "checked"}}}}
	want := map[string][]draw.Chapter{
		"appendix": Appendix(made, a4, nil), "narrow": Appendix(made, draw.Frame{WidthMm: 165.9, HeightMm: 220}, nil), "wide": Appendix(made, draw.Frame{WidthMm: 166.1, HeightMm: 220}, nil),
	}
	for i, c := range Chapters(made, a4) {
		want[fmt.Sprint("made-", i)] = []draw.Chapter{c}
	}
	for name, keep := range map[string][]string{"inch": {"wheel"}, "frame": {"corner-1", "corner-2", "corner-3", "foot"}} {
		worked := sheettest.Worked(t, "joint", name)
		worked.Arrange()
		pl := *worked.Plan
		pl.Joints = slices.DeleteFunc(slices.Clone(pl.Joints), func(j *plan.JointPlan) bool { return !slices.Contains(keep, j.Name) })
		want[name] = Chapters(&pl, draw.Frame{WidthMm: 215.9, HeightMm: 279.4, Name: "Letter"})
	}
	for _, name := range []string{"feeder", "screw", "sieve", "winch"} {
		worked := sheettest.Worked(t, "joint", name)
		worked.Arrange()
		want[name] = append(Chapters(worked.Plan, a4), Appendix(worked.Plan, a4, nil)...)
	}
	want["apart"] = Chapters(sheettest.Worked(t, "joint", "formed").Plan, a4) // nothing stands yet: each part has its own picture
	for name, chapters := range want {
		var sheets []*draw.Sheet
		for _, c := range chapters {
			sheets = append(sheets, c.Sheets...)
		}
		golden.Whole(t, filepath.Join("testdata", name+".txt"), []byte(sheettest.RecordSheets(t, sheets)))
	}
}
