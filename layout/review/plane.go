package review

import (
	"cmp"
	"iter"
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
	"centrepop/parts/seq"

	"github.com/tdewolff/canvas"
)

// polyline flattens a contour to within 0.001 mm. The first point is repeated
// at the end.
func polyline(c plan.Contour) []plan.XY {
	path, err := canvas.ParseSVGPath(string(c))
	if err != nil {
		return nil // layout wrote it, so it can be read
	}
	out := seq.Map(path.Flatten(0.001).Coords(), func(p canvas.Point) plan.XY { return plan.XY{XMm: p.X, YMm: p.Y} })
	if len(out) > 0 && out[0] != out[len(out)-1] {
		out = append(out, out[0])
	}
	return out
}

// nearMm and farMm are the least and the greatest distance of a hole's middle
// line from the axis.
func (h *hole) nearMm() float64 { return geom.ToSegment(plan.XY{}, h.a, h.b) }
func (h *hole) farMm() float64  { return max(h.a.LengthMm(), h.b.LengthMm()) }

// apartMm is the distance of two holes' middle lines.
func apartMm(g, h *hole) float64 { return geom.Apart(g.a, g.b, h.a, h.b) }

// toOutline is the distance of a hole's middle line from the outline of a flat
// part.
func (v *view) toOutline(h *hole) float64 {
	if len(v.outside) > 0 {
		return v.outside[0].RadiusMm() - h.farMm()
	}
	best := endless
	for i := 0; i+1 < len(v.outline); i++ {
		best = math.Min(best, geom.Apart(h.a, h.b, v.outline[i], v.outline[i+1]))
	}
	return best
}

// box is an upright rectangle about the thing of that number.
type box struct {
	n              int
	x0, y0, x1, y1 float64
}

// meeting lists the pairs of things whose boxes meet, lower number first,
// rising. It goes over the boxes from left to right, so that only neighbours
// are compared. A thing may have several boxes.
func meeting(boxes []box) [][2]int {
	slices.SortFunc(boxes, func(a, b box) int { return cmp.Compare(a.x0, b.x0) })
	var pairs [][2]int
	for i, a := range boxes {
		for _, b := range boxes[i+1:] {
			if b.x0 > a.x1 {
				break
			}
			if a.n != b.n && a.y0 <= b.y1 && b.y0 <= a.y1 {
				pairs = append(pairs, [2]int{min(a.n, b.n), max(a.n, b.n)})
			}
		}
	}
	slices.SortFunc(pairs, func(a, b [2]int) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	return slices.Compact(pairs)
}

// middles are the middles of the stretches of a length that the way from one place to another is parted in.
func middles(fromMm, toMm, longMm float64) iter.Seq[float64] {
	return func(yield func(float64) bool) {
		for z := fromMm + longMm/2; z < toMm; z += longMm {
			if !yield(z) {
				return
			}
		}
	}
}

// midRadii are the inner and the outer radius in the middle of the length of a part.
func midRadii(s *plan.Section) (inner, outer float64, ok bool) { return s.RadiiAt(s.LengthMm / 2) }
