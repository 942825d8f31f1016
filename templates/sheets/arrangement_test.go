package sheets

import (
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
)

// The machine is drawn at a scale of ISO 5455 that fits, with its sizes, an item
// number for each part cut and a row that names it; a plan without one has no
// sheet.
func TestArrangement(t *testing.T) {
	t.Parallel()
	square := func(x, y, w, h float64) []plan.XY {
		return []plan.XY{{XMm: x, YMm: y}, {XMm: x + w, YMm: y}, {XMm: x + w, YMm: y + h}, {XMm: x, YMm: y + h}}
	}
	pl := &plan.Plan{Job: "Mill", Units: parts.Millimetres, Parts: []*plan.PartPlan{
		{Title: "Base", Quantity: 1}, {Title: "Post", Quantity: 2}, {Title: "Lid", Quantity: 1}, {Title: "Peg", Quantity: 3}}}
	paper := draw.Frame{WidthMm: 210, HeightMm: 297}
	if got := Arrangement(pl, paper); got != nil {
		t.Fatalf("%d chapters of nothing", len(got))
	}
	pl.Arrangement = &plan.Arrangement{
		MaxMm: plan.XY{XMm: 800, YMm: 430}, Beside: []string{"Lid"}, Floating: []string{"Peg"},
		Cuts: []plan.ArrangedPart{{Item: 1, Title: "Base", Loops: [][]plan.XY{square(0, 0, 800, 30)}}, {Item: 2, Title: "Post", Loops: [][]plan.XY{square(100, 30, 40, 400)}}, {Loops: [][]plan.XY{square(10, 30, 8, 8)}}},
	}
	chapters := Arrangement(pl, paper)
	if len(chapters) != 1 || len(chapters[0].Sheets) != 1 || chapters[0].Sheets[0].Scale != "1:5" {
		t.Fatalf("%+v", chapters)
	}
	texts := allTexts(chapters[0].Sheets[0].Draw)
	for _, want := range []string{"800", "430 high", "1", "2", "Base", "Post", "Not cut by this plane: Lid.", "Placed by no joint: Peg."} {
		if !slices.Contains(texts, want) {
			t.Errorf("no %q in %q", want, texts)
		}
	}
	// The parts lead to their sheets: by their metal, the large below the small,
	// by their balloons from the left, and by their rows.
	if got, want := allLinks(chapters[0].Sheets[0].Draw), []string{"Base", "Post", "Post", "Base", "Base", "Post"}; !slices.Equal(got, want) {
		t.Errorf("links to %q, want %q", got, want)
	}
}

// allLinks are what the links of a drawing lead to, in order.
func allLinks(d draw.Drawing) []string {
	var out []string
	for _, item := range d.Items {
		switch item := item.(type) {
		case draw.Link:
			out = append(out, item.To)
		case draw.Group:
			out = append(out, allLinks(*item.Drawing)...)
		}
	}
	return out
}
