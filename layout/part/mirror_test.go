package part

import (
	"testing"

	"centrepop/layout/develop"
)

// TestMirrorLine: a pattern is its own mirror image about the middle of its edge,
// laps and seams left out, if every point of edge, folds and divisions and every
// centre of an arc has an image.
func TestMirrorLine(t *testing.T) {
	t.Parallel()
	at := func(x, y float64) develop.Point { return develop.Point{XMm: x, YMm: y} }
	line := func(role develop.Role, points ...develop.Point) develop.Curve {
		c := develop.Curve{Role: role, Start: points[0]}
		for _, p := range points[1:] {
			c.Segments = append(c.Segments, develop.Segment{To: p})
		}
		return c
	}
	edge := line(develop.Cut, at(10, 0), at(50, 0), at(40, 30), at(20, 30), at(10, 0))
	fold, other := line(develop.Fold, at(15, 0), at(20, 30)), line(develop.Fold, at(45, 0), at(40, 30))
	arc := line(develop.Cut, at(10, 0), at(50, 0))
	arc.Segments[0].SweepDeg, arc.Segments[0].Center = 90, at(30, 20)
	askew := line(develop.Cut, at(10, 0), at(50, 0))
	askew.Segments[0].SweepDeg, askew.Segments[0].Center = 90, at(31, 20)
	for name, c := range map[string]struct {
		curves []develop.Curve
		ok     bool
	}{
		"edge":            {[]develop.Curve{edge}, true},
		"with folds":      {[]develop.Curve{edge, fold, other}, true},
		"one fold":        {[]develop.Curve{edge, fold}, false},
		"one division":    {[]develop.Curve{edge, line(develop.Division, at(15, 0), at(20, 30))}, false},
		"lap and seam":    {[]develop.Curve{edge, line(develop.Tab, at(50, 0), at(60, 0)), line(develop.Seam, at(50, 0), at(40, 30))}, true},
		"a corner off":    {[]develop.Curve{line(develop.Cut, at(10, 0), at(50, 0), at(40, 30), at(20.02, 30), at(10, 0))}, false},
		"rounded":         {[]develop.Curve{line(develop.Cut, at(10, 0), at(50, 0), at(40, 30), at(20.002, 30), at(10, 0))}, true},
		"higher":          {[]develop.Curve{line(develop.Cut, at(10, 0), at(50, 0.02), at(40, 30), at(20, 30), at(10, 0))}, false},
		"arc":             {[]develop.Curve{arc}, true},
		"arc, not middle": {[]develop.Curve{askew}, false},
		"nothing":         {nil, false},
	} {
		if x, ok := mirrorLine(develop.Development{Curves: c.curves}); ok != c.ok || ok && x != 30 {
			t.Errorf("%s: %v, %v, want 30, %v", name, x, ok, c.ok)
		}
	}
}
