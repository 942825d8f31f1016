package machine

import (
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/parts"
)

// ballsLeft finds shafts that may leave their housings by an end: no shoulder, ring or cover stands against the rings of their
// ball bearings that way, and nothing that is fixed to the one meets what is fixed to the other.
func (m *Machine) ballsLeft() (found []plan.Problem) {
	of := m.fixed()
	for _, j := range m.OfKind(parts.BearingKind) {
		shaft, housing := m.At(j.A), m.At(j.B)
		if len(j.Bearing.Leaves) == 0 || shaft == nil || housing == nil {
			continue
		}
		var turning, others []assembly.Body
		for b := range m.Parts() {
			switch of(b.ID) {
			case of(shaft.ID):
				turning = append(turning, *b)
			case of(housing.ID):
				others = append(others, *b)
			}
		}
		var open []string
		for _, face := range j.Bearing.Leaves {
			if _, _, gap := m.nearest(shaft, turning, others, face == parts.Back); gap == inf {
				open = append(open, "its "+string(face))
			}
		}
		if len(open) > 0 {
			found = append(found, m.Fault(j.Name, plan.BallLeft, m.Named(shaft.ID), m.Named(housing.ID), plan.Named(strings.Join(open, " and by "))))
		}
	}
	return found
}
