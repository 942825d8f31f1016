package part

import (
	"math"

	"centrepop/layout/develop"
	"centrepop/parts/geom"
)

// mirrorMm is how far two points of a pattern may be from mirror images of one
// another.
const mirrorMm = 0.005

// mirrorLine is the upright line that turns the edge and the lines of a pattern into
// themselves, laps and seams left out; ok is false where there is none.
func mirrorLine(d develop.Development) (xMm float64, ok bool) {
	var points []develop.Point
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range d.Curves {
		if c.Role != develop.Cut && c.Role != develop.Fold && c.Role != develop.Division {
			continue
		}
		points = append(points, c.Start)
		for _, s := range c.Segments {
			points = append(points, s.To)
			if s.SweepDeg != 0 {
				points = append(points, s.Center)
			}
		}
		if b := c.Box(); c.Role == develop.Cut {
			lo, hi = min(lo, b.Min.XMm), max(hi, b.Max.XMm)
		}
	}
	xMm = geom.Clean((lo + hi) / 2)
	for _, p := range points {
		found := false
		for _, q := range points {
			found = found || math.Abs(p.XMm+q.XMm-2*xMm) < mirrorMm && math.Abs(p.YMm-q.YMm) < mirrorMm
		}
		if !found {
			return 0, false
		}
	}
	return xMm, len(points) > 0
}
