package press

import (
	"fmt"
	"math"
	"sort"

	"centrepop/parts/geom"
)

// ContactMm returns the length in mm over which shaft and hub touch all round:
// where their cylinders overlap, less the stretches where one of them is cut back
// by a chamfer, a lead-in or an undercut. 0 if they do not touch. All stretches
// are in one coordinate along the axis; a cut may lie outside the overlap, and
// cuts may overlap each other. It errs for a stretch that falls or is not finite.
func ContactMm(hub, shaft geom.Span, cuts []geom.Span) (float64, error) {
	all := append([]geom.Span{hub, shaft}, cuts...)
	for _, s := range all {
		if !(s.FromMm <= s.ToMm) || math.IsInf(s.FromMm, 0) || math.IsInf(s.ToMm, 0) {
			return 0, fmt.Errorf("press: stretch from %v to %v mm must rise and be finite", s.FromMm, s.ToMm)
		}
	}
	at, end := math.Max(hub.FromMm, shaft.FromMm), math.Min(hub.ToMm, shaft.ToMm)
	cuts = append([]geom.Span(nil), cuts...)
	sort.Slice(cuts, func(i, k int) bool { return cuts[i].FromMm < cuts[k].FromMm })
	length := 0.0
	for _, c := range cuts {
		if c.FromMm >= end {
			break
		}
		length += math.Max(0, c.FromMm-at)
		at = math.Max(at, c.ToMm)
	}
	return length + math.Max(0, end-at), nil
}
