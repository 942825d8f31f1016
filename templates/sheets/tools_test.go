package sheets

import (
	"reflect"
	"testing"

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
