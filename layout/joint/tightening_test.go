package joint

import (
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

// TestTighteningIsCrosswise: opposite follows opposite; of an odd number the next but
// one; of a row the ends first. Read off the clock face.
func TestTighteningIsCrosswise(t *testing.T) {
	t.Parallel()
	for _, want := range [][]int{{1, 2}, {1, 3, 2, 4}, {1, 3, 5, 2, 4}, {1, 4, 2, 5, 3, 6}, {1, 5, 3, 7, 2, 6, 4, 8}} {
		var at []plan.XY
		for i := range want {
			at = append(at, geom.Clock(100, 360*float64(i)/float64(len(want))))
		}
		if got, _ := tightening(1, at); !slices.Equal(got, want) {
			t.Errorf("%d bolts: %v, want %v", len(want), got, want)
		}
	}
	// Of two rows of three: the corner across, then what is farthest from both, its farthest, and what is left.
	if got, _ := tightening(1, []plan.XY{{XMm: -50, YMm: -20}, {YMm: -20}, {XMm: 50, YMm: -20}, {XMm: -50, YMm: 20}, {YMm: 20}, {XMm: 50, YMm: 20}}); !slices.Equal(got, []int{1, 6, 2, 4, 3, 5}) {
		t.Errorf("in two rows: %v", got)
	}
	if got, at := tightening(4, []plan.XY{{XMm: -50}, {}, {XMm: 60}}); !slices.Equal(got, []int{4, 6, 5}) || !slices.Equal(at, []plan.XY{{XMm: -50}, {XMm: 60}, {}}) {
		t.Errorf("in a row: %v, %v", got, at)
	}
}
