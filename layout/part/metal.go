package part

import (
	"cmp"
	"math"
	"slices"

	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// RadiusMm is the radius a step is drawn with: an inside thread shows its
// minor diameter.
func (s *Step) RadiusMm() float64 {
	if s.Inside && s.Size.Thread != nil {
		return s.Size.Thread.MinorMm / 2
	}
	return s.Size.NominalMm / 2
}

// leastMm is the smallest diameter of a bore.
func (s *Step) leastMm() float64 {
	if s.firstMm != 0 {
		return s.firstMm
	}
	if t := s.Size.Thread; t != nil && s.Inside && t.TapDrillMm != 0 {
		return t.TapDrillMm
	}
	return 2 * s.RadiusMm()
}

// stepAt is the step of one side at a place on the axis, or nil; the first
// where two meet.
func stepAt(steps []*Step, z float64) *Step {
	return seq.First(steps, func(s *Step) bool { return s.Span().Holds(z) })
}

// outsideAt is the outside step at an axial place.
func (s *Sizes) outsideAt(z float64) *Step { return stepAt(s.Side(false), z) }

// boreAt is the inside step at an axial place, or nil.
func (s *Sizes) boreAt(z float64) *Step { return stepAt(s.Side(true), z) }

// MetalAt lists the stretches of a part's axis where there is metal at a radius.
// The edge of an outline that is not round is not looked at.
func (s *Sizes) MetalAt(radiusMm float64) []geom.Span { return s.form.metalAt(s, radiusMm) }

func (usual) metalAt(s *Sizes, radiusMm float64) []geom.Span {
	outsides, insides := s.Sides()
	var out []geom.Span
	for _, cut := range s.Stretches() {
		mid, outside, inside := cut.MidMm(), math.Inf(1), -1.0
		if len(outsides) > 0 {
			outside = stepAt(outsides, mid).Size.NominalMm / 2
		}
		if st := stepAt(insides, mid); st != nil {
			inside = st.Size.NominalMm / 2
		}
		if outside <= radiusMm || inside >= radiusMm {
			continue
		}
		if n := len(out); n > 0 && cut.FromMm-out[n-1].ToMm < geom.CloseMm {
			out[n-1].ToMm = cut.ToMm
		} else {
			out = append(out, cut)
		}
	}
	return out
}

// Stretches are those of the part's axis in which no diameter changes, front to back, mm.
func (s *Sizes) Stretches() (out []geom.Span) {
	ends := []float64{0, s.LengthMm()}
	for _, st := range s.Steps {
		ends = append(ends, st.FromMm, st.ToMm)
	}
	slices.Sort(ends)
	for i, from := range ends[:len(ends)-1] {
		if to := ends[i+1]; to-from >= geom.CloseMm {
			out = append(out, geom.Span{FromMm: from, ToMm: to})
		}
	}
	return out
}

// Plane is where a face lies on the part's axis at a radius, and how much
// metal lies behind it there.
func (s *Sizes) Plane(f parts.Face, radiusMm float64) (zMm, thickMm float64, ok bool) {
	m := s.MetalAt(radiusMm)
	if len(m) == 0 {
		return 0, 0, false
	}
	if f == parts.Front {
		return m[0].FromMm, m[0].LengthMm(), true
	}
	last := m[len(m)-1]
	return last.ToMm, last.LengthMm(), true
}

// BoreMm is the narrowest bore right through the part in mm, 0 if there is none.
func (s *Sizes) BoreMm() float64 {
	inside := s.Side(true)
	if len(inside) == 0 || inside[len(inside)-1].ToMm < s.LengthMm()-geom.CloseMm {
		return 0
	}
	return slices.MinFunc(inside, func(a, b *Step) int { return cmp.Compare(a.Size.NominalMm, b.Size.NominalMm) }).Size.NominalMm
}

// between tells whether a step lies between two that have more metal, side 1, or less, side -1.
func (s *Sizes) between(st *Step, side float64) bool {
	beside := s.beside(st)
	return len(beside) == 2 && !slices.ContainsFunc(beside, func(o *Step) bool { return side*st.side()*(o.RadiusMm()-st.RadiusMm()) < geom.CloseMm })
}
