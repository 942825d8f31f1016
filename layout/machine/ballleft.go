package machine

import (
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// ballsLeft finds shafts that may leave their housings by an end: no shoulder, ring or cover stands against the rings of their
// ball bearings that way, and nothing that is fixed to the one meets what is fixed to the other; and of what a motor turns, those that such a meeting
// alone stops.
func (m *Machine) ballsLeft() (found []plan.Problem) {
	of := m.fixed()
	for _, j := range m.OfKind(parts.BearingKind) {
		shaft, housing := m.At(j.A), m.At(j.B)
		turning, others := m.fixedWith(of, shaft.ID), m.fixedWith(of, housing.ID)
		var open []string
		for _, face := range j.Bearing.Leaves {
			turns, still, gap := m.nearest(shaft, turning, others, face == parts.Back)
			switch {
			case gap == inf && !m.cheekBefore(shaft, housing, turning, face):
				open = append(open, "its "+string(face))
			case gap < inf && m.motorTurns(turning):
				found = append(found, m.Fault(j.Name, plan.BallRubs, m.Named(shaft.ID), m.Named(turns.ID), m.Named(still.ID), m.Rounded(gap, 1), plan.Named(string(face))))
			}
		}
		if len(open) > 0 {
			found = append(found, m.Fault(j.Name, plan.BallLeft, m.Named(shaft.ID), m.Named(housing.ID), plan.Named(strings.Join(open, " and by "))))
		}
	}
	return found
}

// motorTurns tells whether the motor of the job drives one of some bodies that turn together.
func (m *Machine) motorTurns(turning []assembly.Body) bool {
	return m.Job.Motor != nil && slices.ContainsFunc(turning, func(b assembly.Body) bool { return m.Of[b.ID] == m.Job.Motor.Drives.Instance() })
}

// cheekBefore tells whether something that is fixed to a shaft and does not lie on its axis, as a cheek, stands before the housing on the side
// from which a shaft that leaves by a face would bring it along, where the two meet as they are seen along the axis.
func (m *Machine) cheekBefore(shaft, housing *assembly.Body, fixed []assembly.Body, face parts.Face) bool {
	own := shaft.Pose.Inverse()
	h := housing.Box().Moved(own)
	return slices.ContainsFunc(fixed, func(b assembly.Body) bool {
		if stand.SameAxis(shaft.Pose, b.Pose) {
			return false
		}
		box := b.Box().Moved(own) // z falls from the front of the shaft to its back
		clear := words.Either(face == parts.Back, !geom.Over(h.High.Z, box.Low.Z), !geom.Over(box.High.Z, h.Low.Z))
		box.Low.Z, box.High.Z = h.Low.Z, h.High.Z
		return clear && box.Meets(h, 0)
	})
}
