package part

import (
	"cmp"
	"slices"

	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// auxiliary tells whether the length of a step follows from the others of its
// side and the whole, and so has no limits of its own: a chain that is closed
// keeps one such link, in brackets (ISO 129-1, from memory). It is the longest
// step without a seat or a fit, or the longest, and none whose length has limits
// or has to be equal on all copies.
func (s *Sizes) auxiliary(st *Step) bool {
	steps := s.Side(st.Inside)
	if len(steps) < 2 || steps[len(steps)-1].ToMm < s.LengthMm()-geom.CloseMm {
		return false
	}
	free := func(st *Step) float64 {
		switch {
		case len(st.limits) > 0 || slices.ContainsFunc(s.Part.Require, func(q parts.Requirement) bool { return q.Kind == parts.EqualLength && q.Of.Value == st.Name }):
			return 0
		case st.Seat != "" || st.Size.Fitted() || st.Size.Thread != nil:
			return st.LengthMm()
		}
		return st.LengthMm() + s.LengthMm()
	}
	return st == slices.MaxFunc(steps, func(a, b *Step) int { return cmp.Compare(free(a), free(b)) })
}

// length is a step's length with its limits: of one from end to end those of the whole.
func (s *Sizes) length(st *Step) Sized {
	if st.LengthMm() == geom.Clean(s.LengthMm()) {
		return s.whole()
	}
	return s.General(st.LengthMm()).within(st.limits)
}

// formed is a size of what is formed by hand and welded, as welded things are measured; no tool
// passes over it after that.
func formed(mm float64) Sized {
	off := weld.PlaceOff(mm)
	return spread(mm, off, off, weld.PlaceSource)
}

// shaped is the same where the job limits what is not said.
func (s *Sizes) shaped(mm float64) Sized {
	if out := s.General(mm); !out.Limited {
		return out
	}
	return formed(mm)
}

// whole is the length of the part with its limits: those of a step from end to end, where one has some.
func (s *Sizes) whole() Sized {
	limited := s.General
	if s.Part.Formed() != nil && s.Part.Rolled == nil {
		limited = s.shaped
	}
	out := limited(geom.Clean(s.LengthMm()))
	for st := range seq.Refs(s.Steps) {
		if st.LengthMm() == out.NominalMm {
			out = out.within(st.limits)
		}
	}
	return out
}

// BetweenMm is how far two places along the axis, ends of steps outside or inside, may lie apart
// inside the limits of the lengths: the sum of the links between them or, where one of those follows
// from the others, the whole less the rest.
func (s *Sizes) BetweenMm(inside bool, fromMm, toMm float64) plan.Range {
	var between, rest plan.Range
	open := false
	for _, st := range s.Side(inside) {
		l, sum := s.length(st), &rest
		if st.FromMm > fromMm-geom.CloseMm && st.ToMm < toMm+geom.CloseMm {
			sum = &between
			if open = open || s.auxiliary(st); s.auxiliary(st) {
				continue
			}
		}
		sum.Min, sum.Max = sum.Min+l.MinMm, sum.Max+l.MaxMm
	}
	if open {
		whole := s.whole()
		between = plan.Range{Min: whole.MinMm - rest.Max, Max: whole.MaxMm - rest.Min}
	}
	return plan.Range{Min: geom.Clean(between.Min), Max: geom.Clean(between.Max)}
}

// Unlimited are the names of the steps between two places along the axis whose lengths have no limits of their own.
func (s *Sizes) Unlimited(inside bool, fromMm, toMm float64) (names []string) {
	for _, st := range s.Side(inside) {
		if st.FromMm > fromMm-geom.CloseMm && st.ToMm < toMm+geom.CloseMm && len(st.limits) == 0 {
			names = append(names, words.Spaced(st.Name))
		}
	}
	return names
}

// longText is a step's length: "104", or "(104)" where it is auxiliary.
func (s *Sizes) longText(st *Step) string {
	if s.auxiliary(st) {
		return "(" + s.W.Size(st.LengthMm()) + ")"
	}
	return s.W.Size(st.LengthMm())
}
