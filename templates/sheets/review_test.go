package sheets

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// A row of the review counts what is found of its part and names its cut file;
// what is of no part is counted with the joints.
func TestReviewRows(t *testing.T) {
	t.Parallel()
	pl := &plan.Plan{Parts: []*plan.PartPlan{
		{Name: "lid", Title: "Lid", Operations: []plan.Operation{{Machine: "Cutter"}}}, {Name: "peg", Title: "Peg", Operations: []plan.Operation{{Machine: "Saw"}}}}}
	found := []review.Finding{
		{Part: "lid", Severity: review.Stop}, {Part: "lid", Severity: review.Check}, {Part: "lid", Severity: review.Check, Accepted: true},
		{Part: "weld", Severity: review.Note}, {Severity: review.Note}}
	want := [][]string{{"Lid", "lid", "2", "1", "–", ""}, {"Peg", "", "–", "–", "–", ""}, {"Joints and job", "", "–", "–", "2", ""}}
	if got := partRows(pl, found).Rows; !slices.EqualFunc(got, want, slices.Equal) {
		t.Errorf("%q, want %q", got, want)
	}
}

// Notes of one source and cure are one row, that says each rule once and every
// finding.
func TestNotesTogether(t *testing.T) {
	t.Parallel()
	note := func(what, rule, fix string) review.Finding {
		return review.Finding{Part: "weld", Severity: review.Note, Code: "pierce", What: what, Rule: rule, Source: "a table", Fix: fix}
	}
	open := note("open", "r", "f")
	open.Severity = review.Stop
	agreed := note("agreed", "r", "f")
	agreed.Accepted = true
	got := Notes(&plan.Plan{}, []review.Finding{open, agreed, note("a", "r", "f"), note("b", "s", "f"), note("c", "r", "f"), note("d", "r", "g")})[0].Rows
	want := [][]string{{draw.Bold("pierce.") + " r; s (a table): f", "weld: a; weld: b; weld: c"}, {draw.Bold("pierce.") + " r (a table): g", "weld: d"}}
	if !slices.EqualFunc(got, want, slices.Equal) {
		t.Errorf("%q, want %q", got, want)
	}
	if got := Notes(&plan.Plan{}, []review.Finding{open, agreed}); got != nil {
		t.Errorf("nothing to note: %v", got)
	}
}

// An open finding of holes shows them filled on their face; one of nothing drawn
// has no picture.
func TestPlaceOfAFinding(t *testing.T) {
	t.Parallel()
	part := sheettest.FlangePart()
	pl := sheettest.JobOf("Pug mill", parts.Millimetres, part)
	group := part.Faces[0].Groups[0]
	discs := func(d draw.Drawing) int {
		n := 0
		for _, item := range d.Items {
			if s, ok := item.(draw.Shape); ok && s.Fill == draw.Black && s.Path.Bounds().W() < 4 {
				n++
			}
		}
		return n
	}
	bare := discs(placePicture(pl, review.Finding{Part: part.Name, Feature: part.Faces[0].Groups[1].Name}))
	if got := discs(placePicture(pl, review.Finding{Part: part.Name, Feature: group.Name})) - bare; got != group.Count-part.Faces[0].Groups[1].Count {
		t.Errorf("%d more holes filled than of the other group of %d, want those of %d", got, part.Faces[0].Groups[1].Count, group.Count)
	}
	for _, f := range []review.Finding{{Part: part.Name}, {Part: part.Name, Feature: "bore"}, {Part: "weld", Feature: group.Name}} {
		if d := placePicture(pl, f); len(d.Items) > 0 {
			t.Errorf("%+v has a picture", f)
		}
	}
	if s := strings.Join(allTexts(density(1).openFinding(pl, review.Finding{Part: part.Name, What: "close", Fix: "move it", Pos: parts.Pos{File: "f.yaml", Line: 7}}, 180).Draw), " "); !strings.Contains(s, part.Title+": close") || !strings.Contains(s, "Mend: move it") || !strings.Contains(s, "f.yaml line 7") {
		t.Error(s)
	}
}
