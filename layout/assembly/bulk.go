package assembly

import (
	"math"
	"slices"

	"centrepop/parts/seq"
)

// Bulk is how much there is of a solid.
type Bulk struct {
	VolumeMm3 float64
	Centre    Vec // of gravity, in the solid's frame
	// ErrorMm3 is how far the volume may be off where solids overlap or are cut
	// at a slant: the difference from a sum half as fine. 0 where it is exact.
	ErrorMm3 float64
}

func (b *Bulk) add(mm3 float64, centre Vec) {
	total := b.VolumeMm3 + mm3
	if total != 0 {
		b.Centre = b.Centre.Times(b.VolumeMm3 / total).Add(centre.Times(mm3 / total))
	}
	b.VolumeMm3 = total
}

// fine is how finely columns sum up what overlaps.
const fine = 6 // twice the coarse sum's 3

// Bulk is the solid's volume and centre of gravity: exact for simple solids
// apart from one another, less holes along an axis through flat faces; else a
// sum of columns with its error. It is summed up once.
func (s *Solid) Bulk() Bulk {
	s.known.weighed.Do(func() { s.known.bulk = s.sumUp() })
	return s.known.bulk
}

func (s *Solid) sumUp() Bulk {
	var out Bulk
	for i := range s.add {
		beside := touching(s.add[i], s.add[:i])
		if len(s.within) == 0 && len(beside) == 0 {
			mm3, centre := s.add[i].shape.bulk()
			out.add(mm3, s.add[i].at.Apply(centre))
			continue
		}
		here := Solid{add: s.add[i : i+1], within: s.within, cut: beside, bound: s.add[i].bound}
		out.sum(s.add[i], &here, 1)
	}
	for i := range s.cut {
		if !s.cut[i].bound.Meets(s.bound, 0) {
			continue
		}
		beside := touching(s.cut[i], s.cut[:i])
		if s.cut[i].hollow && len(s.within) == 0 && len(beside) == 0 {
			mm3, centre := s.cut[i].shape.bulk()
			out.add(-mm3, s.cut[i].at.Apply(centre))
			continue
		}
		gone := Solid{add: touching(s.cut[i], s.add), within: slices.Concat(s.within, s.cut[i:i+1]), cut: beside, bound: s.bound.Common(s.cut[i].bound)}
		out.sum(s.cut[i], &gone, -1)
	}
	return out
}

// touching are those of others that may meet a simple solid.
func touching(s Simple, others []Simple) []Simple {
	return seq.Keep(others, func(o Simple) bool { return s.bound.Meets(o.bound, 0) })
}

// sum adds, or with sign −1 takes off, what lies of a solid in the columns of a
// simple one.
func (b *Bulk) sum(columns Simple, s *Solid, sign float64) {
	one, _ := columnSum(columns, s, 1)
	two, _ := columnSum(columns, s, 2)
	mm3, centre := columnSum(columns, s, 3)
	if max(math.Abs(mm3-one), math.Abs(mm3-two)) > 1e-9*math.Abs(mm3) { // not one length throughout
		half := mm3
		mm3, centre = columnSum(columns, s, fine)
		b.ErrorMm3 += math.Abs(mm3 - half)
	}
	b.add(sign*mm3, centre)
}

func columnSum(columns Simple, s *Solid, n int) (mm3 float64, centre Vec) {
	along := columns.at.Turn(AxisZ)
	var moment Vec
	for _, c := range columns.shape.columns(n) {
		foot := columns.at.Apply(Vec{X: c.at.XMm, Y: c.at.YMm})
		for _, span := range s.Spans(foot, along) {
			v := c.area * (span.ToMm - span.FromMm)
			mm3 += v
			moment = moment.Add(foot.Add(along.Times((span.FromMm + span.ToMm) / 2)).Times(v))
		}
	}
	if mm3 == 0 {
		return 0, Vec{}
	}
	return mm3, moment.Times(1 / mm3)
}

// Mass is the body's mass in kg and its centre of gravity in the machine's
// frame. ok is false where neither a mass nor a density is known; the centre is
// that of the volume then.
func (b *Body) Mass() (kg float64, centre Vec, ok bool) {
	bulk := b.Solid.Bulk()
	centre = b.Pose.Apply(bulk.Centre)
	if b.MassKg > 0 {
		return b.MassKg, centre, true
	}
	return bulk.VolumeMm3 * 1e-9 * b.DensityKgM3, centre, b.DensityKgM3 > 0
}
