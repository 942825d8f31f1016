package sheets

import (
	"reflect"
	"testing"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
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
