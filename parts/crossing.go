package parts

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// maxCrossingChecks is how many pairs of pieces are compared at most. The
// longest path of straight lines needs 2 million, if all lie side by side.
const maxCrossingChecks = 5_000_000

// pathCrossing finds two pieces of a closed contour that cross by more than
// closeMm, and says so; "" if there are none. Pieces that only touch are no
// fault. It compares pieces that share a stretch along the longer side of the
// contour, and gives up, saying so too, after maxCrossingChecks.
func pathCrossing(c []xy) string {
	low, high := c[0], c[0]
	for _, p := range c {
		low = xy{math.Min(low.x, p.x), math.Min(low.y, p.y)}
		high = xy{math.Max(high.x, p.x), math.Max(high.y, p.y)}
	}
	along := func(p xy) float64 { return p.x }
	if high.y-low.y > high.x-low.x {
		along = func(p xy) float64 { return p.y }
	}
	type piece struct {
		a, b     xy
		from, to float64
	}
	pieces := make([]piece, len(c))
	for i, a := range c {
		b := c[(i+1)%len(c)]
		pieces[i] = piece{a, b, math.Min(along(a), along(b)), math.Max(along(a), along(b))}
	}
	slices.SortFunc(pieces, func(p, q piece) int { return cmp.Compare(p.from, q.from) })
	var open []piece
	checks := 0
	for _, p := range pieces {
		open = slices.DeleteFunc(open, func(q piece) bool { return q.to < p.from })
		if checks += len(open); checks > maxCrossingChecks {
			return "it is too intricate to check for crossings"
		}
		for _, q := range open {
			if at, crosses := crossing(p.a, p.b, q.a, q.b); crosses {
				return fmt.Sprintf("it crosses itself near x %s, y %s mm", formatMm(at.x), formatMm(at.y))
			}
		}
		open = append(open, p)
	}
	return ""
}

// crossing returns where the lines a-b and p-q cross, if each has its ends more
// than closeMm on either side of the other.
func crossing(a, b, p, q xy) (at xy, crosses bool) {
	beside := func(from, to, p xy) float64 {
		return ((to.x-from.x)*(p.y-from.y) - (to.y-from.y)*(p.x-from.x)) / math.Hypot(to.x-from.x, to.y-from.y)
	}
	apart := func(d, e float64) bool { return d > closeMm && e < -closeMm || d < -closeMm && e > closeMm }
	dp, dq := beside(a, b, p), beside(a, b, q)
	if !apart(dp, dq) || !apart(beside(p, q, a), beside(p, q, b)) {
		return xy{}, false // so too for a line without length, as NaN is not more
	}
	t := dp / (dp - dq)
	return xy{p.x + t*(q.x-p.x), p.y + t*(q.y-p.y)}, true
}
