package assembly

import (
	"slices"

	"centrepop/parts/geom"
)

// Span is a stretch of a line inside a solid: distances from the line's point
// along its direction.
type Span struct{ FromMm, ToMm float64 }

// clip leaves of a stretch of a line, which runs from o by d along an axis, what lies between two heights, and
// tells whether there is anything.
func (s *Span) clip(o, d, from, to float64) bool {
	if from, to = from-surfaceMm-o, to+surfaceMm-o; d == 0 {
		return from < 0 && to > 0 && s.FromMm < s.ToMm
	}
	a, b := from/d, to/d
	s.FromMm, s.ToMm = max(s.FromMm, min(a, b)), min(s.ToMm, max(a, b))
	return s.FromMm < s.ToMm
}

// distinct sorts numbers and leaves out what is within rounding of the one
// before.
func distinct(v []float64) []float64 {
	slices.Sort(v)
	return slices.CompactFunc(v, geom.Alike)
}
