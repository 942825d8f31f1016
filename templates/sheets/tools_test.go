package sheets

import (
	"reflect"
	"testing"

	"centrepop/templates/draw"
)

// Heights 50, 30, 60, 40 and 100 with 2.5 between, on a first page of 100 and others
// of 110: the 100 fills the first; 60 and 40 (102.5 of 110) the second, and 50 and 30
// the third.
func TestPacked(t *testing.T) {
	t.Parallel()
	var pieces [][]draw.Piece
	for _, high := range []float64{50, 30, 60, 40, 100} {
		pieces = append(pieces, []draw.Piece{draw.Space(high - 1), draw.Space(1)})
	}
	got := packed(pieces, 100, 110)
	if want := [][]int{{4}, {2, 3}, {0, 1}}; !reflect.DeepEqual(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
