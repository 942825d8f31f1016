package geom

import (
	"cmp"
	"math"
	"slices"
)

// maxCrossingChecks is how many pairs of sides are compared at most. The
// longest path of straight lines needs 2 million, if all lie side by side.
const maxCrossingChecks = 5_000_000

// span is a side of a polygon with its extent along the longer way.
type span struct {
	n        int
	a, b     Point
	from, to float64
}

// spans are the sides of a closed polygon in order along its longer way; side
// n runs from corner n to the next.
func spans(c []Point) []span {
	along := func(p Point) float64 { return p.XMm }
	if size := BoxOf(c...).Size(); size.YMm > size.XMm {
		along = func(p Point) float64 { return p.YMm }
	}
	out := make([]span, len(c))
	for i, a := range c {
		b := c[(i+1)%len(c)]
		out[i] = span{i, a, b, math.Min(along(a), along(b)), math.Max(along(a), along(b))}
	}
	slices.SortFunc(out, func(p, q span) int { return cmp.Compare(p.from, q.from) })
	return out
}

// Crossing finds two sides of a closed polygon that cross by more than
// CloseMm: their numbers, the smaller first, and the place; side n runs from
// corner n to the next, from 0. Sides that only touch are no fault. It compares
// sides that share a stretch along the longer way of the polygon, and gives
// up, with ok false, after 5 million pairs.
func Crossing(corners []Point) (i, j int, at Point, crosses, ok bool) {
	if len(corners) < 4 {
		return 0, 0, Point{}, false, true
	}
	var open []span
	checks := 0
	for _, p := range spans(corners) {
		open = slices.DeleteFunc(open, func(q span) bool { return q.to < p.from })
		if checks += len(open); checks > maxCrossingChecks {
			return 0, 0, Point{}, false, false
		}
		for _, q := range open {
			if at, crosses := cross(p.a, p.b, q.a, q.b); crosses {
				return min(p.n, q.n), max(p.n, q.n), at, true, true
			}
		}
		open = append(open, p)
	}
	return 0, 0, Point{}, false, true
}

// cross returns where the lines a-b and p-q cross, if each has its ends more
// than CloseMm on either side of the other.
func cross(a, b, p, q Point) (at Point, crosses bool) {
	beside := func(from, to, p Point) float64 { return side(from, to, p) / Distance(from, to) }
	apart := func(d, e float64) bool { return d > CloseMm && e < -CloseMm || d < -CloseMm && e > CloseMm }
	dp, dq := beside(a, b, p), beside(a, b, q)
	if !apart(dp, dq) || !apart(beside(p, q, a), beside(p, q, b)) {
		return Point{}, false // so too for a line without length, as NaN is not more
	}
	t := dp / (dp - dq)
	return p.Plus(q.Minus(p).Times(t)), true
}
