package svg

import (
	"testing"

	"github.com/tdewolff/canvas"
)

// TestPathData: absolute commands; the turn of an ellipse is kept, a circle has none.
func TestPathData(t *testing.T) {
	t.Parallel()
	ellipse := &canvas.Path{}
	ellipse.MoveTo(0, 0)
	ellipse.ArcTo(10, 5, 30, false, true, 10, 5)
	circle := &canvas.Path{}
	circle.MoveTo(0, 0)
	circle.ArcTo(10, 10, 30, true, false, 10, 5)
	for want, p := range map[string]*canvas.Path{
		"M0 0A10 5 30 0 1 10 5": ellipse, "M0 0A10 10 0 1 0 10 5": circle,
		"M1 2L3 4L3 8Z": canvas.MustParseSVGPath("M1 2l2 2v4z"), "M0 0Q1 2 3 0C4 1 5 1 6 0": canvas.MustParseSVGPath("M0 0Q1 2 3 0C4 1 5 1 6 0"),
	} {
		if got := pathData(p); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
