package part

import (
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// face is the view of one face with the groups marked on it; with others, also
// the through holes of the other face, to punch from here.
func (s *Sizes) face(f parts.Face, others bool) *plan.Face {
	out := s.bareFace(f)
	if v, ok := s.form.(faced); ok {
		v.onFace(s.W, out)
	}
	s.stepsOn(out)
	s.flatsOn(out)
	for k := range seq.Refs(s.Keyways) {
		if k.opensAt(f, s.LengthMm()) {
			out.Notches = append(out.Notches, k.notch(f))
		}
	}
	s.groupsOn(out, others)
	s.carry(out)
	s.cuts(out)
	if s.Clamp != nil {
		s.Clamp.split(out)
	}
	out.NoClock = s.anyClock()
	out.NoTemplate = s.needlessFace(out, others)
	return out
}
