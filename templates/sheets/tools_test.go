package sheets

import (
	"reflect"
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// TestPacked: on a first page of so much room and others of 110, with 2.5 between, the
// pieces stand in their order, unless the highest first take fewer pages.
func TestPacked(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		high  []float64
		first float64
		want  [][]int
	}{
		{[]float64{50, 30, 60, 40, 100}, 100, [][]int{{0, 1}, {2, 3}, {4}}}, // the highest first take as many
		{[]float64{40, 40, 60, 60}, 105, [][]int{{0, 2}, {1, 3}}},           // and here fewer
	} {
		var pieces [][]draw.Piece
		for _, high := range c.high {
			pieces = append(pieces, []draw.Piece{draw.Space(high - 1), draw.Space(1)})
		}
		if got := packed(pieces, c.first, 110); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%v: %v, want %v", c.high, got, c.want)
		}
	}
}

// TestToolHead: the facts of a tool stand at the right of its line, so small that they leave its name alone.
func TestToolHead(t *testing.T) {
	t.Parallel()
	const width = 120.0
	tool := &plan.PartPlan{Title: "Push sleeve for the tapered bearings", Material: "C45, normalised", StockText: "round 80 mm, 130 mm long", Overall: "Ø 75 × 120 mm", Quantity: 1}
	items := toolHead(&plan.Plan{}, tool, width).Draw.Items
	name, facts := draw.TextRect(items[0].(draw.Text)), draw.TextRect(items[1].(draw.Text))
	if facts.X0 < name.X1+3.9 || facts.X1 > width+1e-6 {
		t.Errorf("the name in %v, its facts in %v", name, facts)
	}
}

// TestToolSheet: a tool with a face is shown by that, one without by its section; on paper under 150 mm wide its tables stand one
// below another, to be parted, and on either there is room for who passed it.
func TestToolSheet(t *testing.T) {
	t.Parallel()
	tool := sheettest.FlangePart()
	faced := density(1).picture(tool, 90)
	bare := *tool
	bare.Faces = nil
	if len(tool.Faces) != 1 || slices.Equal(allTexts(faced.Draw), allTexts(density(1).picture(&bare, 90).Draw)) {
		t.Errorf("of %d faces none is shown", len(tool.Faces))
	}
	for width, parted := range map[float64]bool{149.9: true, 150: false} {
		pieces := density(1).tool(sheettest.JobOf("Jack", parts.Inches, tool), tool, width)
		if (len(pieces) > 1) != parted {
			t.Errorf("%v wide: %d pieces", width, len(pieces))
		}
		if all := draw.Stack(pieces...); !slices.Contains(allTexts(all.Draw), "passed, by") {
			t.Errorf("%v wide: %q", width, allTexts(all.Draw))
		}
	}
}
