package assembly

import (
	"cmp"
	"iter"
	"math"
	"slices"

	"centrepop/parts/geom"
)

// Gap is a place where a face of one body looks at a face of another along a
// direction.
type Gap struct {
	Mm      float64 // between the faces; 0 where they touch, less where they overlap
	AreaMm2 float64 // of the faces that look at one another at this distance
}

// gapStep is how far gaps may differ and count as one, in mm.
const gapStep = 0.01

// Gaps are the distances between faces of a and b that look at one another when
// b goes against a along a direction, smallest first: the first is how far b
// can go; a face that should close and is not the first stands off. Exact for
// turned bodies on one axis along it; else by columns across the direction.
func Gaps(a, b *Body, toward Vec) []Gap {
	if gaps, ok := turnedGaps(a, b, toward); ok {
		return gaps
	}
	var out []Gap
	for _, g := range columns(a, b, toward) {
		out = addGap(out, g)
	}
	return sortGaps(out)
}

// turnedGaps are the Gaps of turned bodies on one axis along the direction.
func turnedGaps(a, b *Body, toward Vec) ([]Gap, bool) {
	c, ok := onAxis(a, b)
	if !ok || c.cut || !geom.Alike(c.axis.Z.Cross(toward).Len(), 0) {
		return nil, false
	}
	return c.gaps(math.Copysign(1, c.axis.Z.Dot(toward))), true
}

// Touches tells whether one of the Gaps is smaller than so much, either way.
func Touches(a, b *Body, toward Vec, withinMm float64) bool {
	near := func(g Gap) bool { return geom.Over(withinMm, math.Abs(g.Mm)) }
	if gaps, ok := turnedGaps(a, b, toward); ok {
		return slices.ContainsFunc(gaps, near)
	}
	for _, g := range columns(a, b, toward) {
		if near(g) {
			return true
		}
	}
	return false
}

// Contact are places where b going along a direction bears on a within so much, one in each column.
func Contact(a, b *Body, toward Vec, withinMm float64) (out []Vec) {
	for at, g := range columns(a, b, toward) {
		if math.Abs(g.Mm) < withinMm {
			out = append(out, at)
		}
	}
	return out
}

// thinMm is how thick a room is at most in which no line runs in a body.
const thinMm = 1e-9

// columns looks along a direction where a and b lie behind one another, and gives each gap between
// them with the point of b at it.
func columns(a, b *Body, toward Vec) iter.Seq2[Vec, Gap] {
	frame := Frame(Vec{}, toward, toward.Square())
	inv := frame.Inverse()
	boxA, boxB := a.Box().Moved(inv), b.Box().Moved(inv)
	box := boxB.Common(boxA)
	low, size := box.Low, box.Size()
	const n = 60
	cell := geom.Point{XMm: size.X / n, YMm: size.Y / n}
	return func(yield func(Vec, Gap) bool) {
		if min(size.X, size.Y, boxA.High.Z-boxB.Low.Z) < thinMm {
			return // they lie beside one another, or a behind b
		}
		inA, inB := a.Pose.Inverse(), b.Pose.Inverse()
		for i := range n * n {
			from := frame.Apply(Vec{X: low.X + cell.XMm*(float64(i/n)+0.5), Y: low.Y + cell.YMm*(float64(i%n)+0.5)})
			ahead := a.Solid.Spans(inA.Apply(from), inA.Turn(toward))
			if len(ahead) == 0 {
				continue
			}
			gaps, ends := facing(ahead, b.Solid.Spans(inB.Apply(from), inB.Turn(toward)))
			for n, mm := range gaps {
				if !yield(from.Add(toward.Times(ends[n])), Gap{mm, cell.XMm * cell.YMm}) {
					return
				}
			}
		}
	}
}

// facing is how far from an end of a stretch of b the next stretch of a ahead is, and where that end is.
func facing(a, b []Span) (gaps, ends []float64) {
	for _, s := range b {
		best := inf
		for _, f := range a {
			if f.FromMm+f.ToMm > s.FromMm+s.ToMm {
				best = min(best, f.FromMm-s.ToMm)
			}
		}
		if best < inf {
			gaps, ends = append(gaps, best), append(ends, s.ToMm)
		}
	}
	return gaps, ends
}

func addGap(list []Gap, g Gap) []Gap {
	for i := range list {
		if math.Abs(list[i].Mm-g.Mm) < gapStep {
			list[i].AreaMm2 += g.AreaMm2
			return list
		}
	}
	return append(list, g)
}

func sortGaps(list []Gap) []Gap {
	slices.SortFunc(list, func(a, b Gap) int { return cmp.Compare(a.Mm, b.Mm) })
	return list
}

func (c *coaxial) gaps(way float64) []Gap {
	var out []Gap
	for _, band := range c.bands() {
		r := (band.FromMm + band.ToMm) / 2
		area := math.Pi * (band.ToMm*band.ToMm - band.FromMm*band.FromMm)
		gaps, _ := facing(turnedWay(acrossAll(c.a, r), way), turnedWay(acrossAll(c.b, r), way))
		for _, mm := range gaps {
			out = addGap(out, Gap{mm, area})
		}
	}
	return sortGaps(out)
}

// turnedWay counts stretches the other way for way −1.
func turnedWay(spans []Span, way float64) []Span {
	if way > 0 {
		return spans
	}
	for i, s := range spans {
		spans[i] = Span{-s.ToMm, -s.FromMm}
	}
	return spans
}

// Near tells whether two bodies touch, lie in one another or come within a distance
// in mm, of which places finestMm apart on their surfaces are judged.
func Near(a, b *Body, mm, finestMm float64) bool {
	return comesNear(a, b, mm, finestMm) || comesNear(b, a, mm, finestMm)
}

// comesNear tells whether a place on b's surface lies that near to a, or in it.
func comesNear(a, b *Body, mm, finestMm float64) (near bool) {
	rel := a.Pose.Inverse().Of(b.Pose)
	look := func(centre Vec, reach float64, _ among) among {
		if near || a.Solid.Dist(rel.apply(centre))-reach >= mm {
			return 0
		}
		return 1
	}
	b.Solid.walk(finestMm, look, func(Vec, among) { near = true })
	return near
}

// Clearance is the least distance between two bodies' surfaces; ok is false where
// they lie in one another or are further apart than the limit. It is found to within toMm.
func Clearance(a, b *Body, limitMm, toMm float64) (mm float64, ok bool) {
	mm = limitMm
	near := func(a, b *Body) {
		rel := a.Pose.Inverse().Of(b.Pose)
		look := func(centre Vec, reach float64, _ among) among {
			least := mm
			if reach > 0 {
				least -= toMm
			}
			if a.Solid.Dist(rel.apply(centre))-reach < least {
				return 1
			}
			return 0
		}
		b.Solid.walk(toMm, look, func(p Vec, _ among) {
			mm, ok = a.Solid.Dist(rel.apply(p)), true
		})
	}
	near(a, b)
	near(b, a)
	return mm, ok && !geom.Over(0, mm)
}
