package sequence

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// The appendix says every computed number of every joint once with its source,
// every rung of every ladder, and what else it is given; without any of them there
// is none.
func TestAppendix(t *testing.T) {
	t.Parallel()
	paper := draw.Frame{WidthMm: 210, HeightMm: 297}
	pl := sheettest.JoinedPlan()
	pl.Sources = []plan.SourceTable{{Title: "Forms", Rows: []plan.SourceRow{{What: "ring", Source: "DIN 471", State: "checked"}}}}
	more := draw.Table{Title: "Worth knowing", Columns: []draw.Column{{Head: "What", Flex: true}}, Rows: [][]string{{"the noted thing"}}}
	chapters := Appendix(pl, paper, []draw.Table{more})
	if len(chapters) != 1 || chapters[0].Name != AppendixName || chapters[0].Part != "" {
		t.Fatalf("%+v", chapters)
	}
	all := ""
	for _, s := range chapters[0].Sheets {
		all += " " + strings.Join(allTexts(s.Draw), " ")
	}
	want := []string{"the noted thing", "Worth knowing", "Forms", "ring", "DIN 471", "checked"}
	for _, j := range pl.Joints {
		for _, f := range j.Figures {
			want = append(want, f.Value, f.Source)
		}
	}
	rungs := 0
	for _, part := range pl.Parts {
		for _, l := range part.Ladders {
			for _, r := range l.Rungs {
				rungs++
				want = append(want, r.Measured, r.Bore)
			}
		}
	}
	if len(want) < 10 || rungs < 2 {
		t.Fatalf("only %d numbers and %d rungs to look for", len(want), rungs)
	}
	for _, text := range want {
		for _, word := range strings.Fields(text) {
			if !strings.Contains(all, word) {
				t.Errorf("no %q of %q", word, text)
			}
		}
	}
	if got := Appendix(&plan.Plan{}, paper, nil); got != nil {
		t.Errorf("an appendix of nothing: %+v", got)
	}
	if got := Appendix(&plan.Plan{}, paper, []draw.Table{more}); len(got) != 1 || !slices.Contains(allTexts(got[0].Sheets[0].Draw), "the noted thing") {
		t.Errorf("no appendix of %+v", more)
	}
}
