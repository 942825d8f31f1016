package machine

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// sameRound is how far the diameters of steps may differ that are one round to a hub, as a share: limits and
// clearances. Common practice, no source.
const sameRound = 0.02

// besideSeat is how far a bore lies beside all of the diameter of a seat, below 0 where it lies on it.
func (m *Machine) besideSeat(hub, shaft *assembly.Body, bore, seat *part.Step) float64 {
	on := stand.On(hub.Pose, shaft, m.PartOf(shaft.ID))
	like := seq.Keep(on.Of.Side(false), func(s *part.Step) bool {
		return math.Abs(s.Size.NominalMm-seat.Size.NominalMm) <= sameRound*seat.Size.NominalMm
	})
	return seq.Least(like, func(s *part.Step) float64 {
		return 0 - on.Span(s.Span()).OnMm(bore.Span())
	})
}

// besideAxis is how far an end of a bore lies beside the axis of a shaft.
func besideAxis(hub, shaft *assembly.Body, bore *part.Step) float64 {
	at := shaft.Pose.Inverse().Of(hub.Pose)
	off := func(mm float64) float64 {
		p := at.Apply(assembly.Vec{Z: -mm})
		return math.Hypot(p.X, p.Y)
	}
	return max(off(bore.FromMm), off(bore.ToMm))
}

// onAxisMm is how far a bore may lie beside its shaft, beyond their play, where other joints place the two: what sizes on
// drawings are rounded by. Common practice, no source.
const onAxisMm = 0.1

// offSeats finds hubs that slide or are pressed on a shaft and stand beside its axis, where other joints place the two, or
// wholly beside the seat that their joint names and beside all of its diameter. Of a bush that is pressed in and near its
// journal, inBushes says that.
func (m *Machine) offSeats() (found []plan.Problem) {
	for _, j := range m.Joints {
		if j.Kind == parts.SlideKind || j.Kind == parts.PressKind {
			found = append(found, m.offSeat(j)...)
		}
	}
	return found
}

// offSeat is that of one joint, whichever of its ends is the bore.
func (m *Machine) offSeat(j *plan.JointPlan) []plan.Problem {
	inHub, onShaft := j.A, j.B
	if j.Kind == parts.PressKind {
		inHub, onShaft = onShaft, inHub
	}
	hub, shaft, bore, seat := m.At(inHub), m.At(onShaft), m.Model(inHub.Part).StepNamed(inHub.Feature), m.Model(onShaft.Part).StepNamed(onShaft.Feature)
	if bore == nil || seat == nil || hub == nil || shaft == nil || !m.Tied(hub, shaft) {
		return nil // what ties them is said to lack its place
	}
	fault := func(kind plan.ProblemKind, mm float64) []plan.Problem {
		name := func(e plan.JointEnd) plan.Arg { return plan.Named(e.Title + " " + words.Spaced(e.Feature)) }
		return []plan.Problem{m.Fault(j.Name, kind, name(inHub), name(onShaft), m.Rounded(mm, 2))}
	}
	if off := besideAxis(hub, shaft, bore); off > onAxisMm+max(0, bore.Size.NominalMm-seat.Size.NominalMm)/2 {
		return fault(plan.SeatAside, off)
	}
	bush := m.Job.Runs(m.Joint(j.Name)) && m.pressed(j.A.Instance().ID())
	if apart := m.besideSeat(hub, shaft, bore, seat); !geom.Over(0, apart) && !(bush && apart < reachShare*bore.LengthMm()) {
		return fault(plan.SeatMissed, apart)
	}
	return nil
}
