package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/fits"
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

// Of what is welded or pressed to a hub, seconds says how its bores go over the shaft: one that is nearly the shaft's is meant as
// a seat.
const (
	secondShare = 0.15      // how far the two diameters may differ, as a share. Common practice, no source
	loosest     = "H11/h11" // the loosest fit of a bore that guides. Common practice, no source
)

// seconds finds second seats: bores of the body of a hub, beside the one that its joint names, which bind on the shaft where
// they lie, or have so much play there that the hub alone holds a body whose end lies farther off than the hub is long.
func (m *Machine) seconds() (found []plan.Problem) {
	group := groups(slices.Concat(m.OfKind(parts.WeldKind), m.OfKind(parts.PressKind)))
	for _, j := range m.OfKind(parts.SlideKind) {
		hub, shaft, seat := m.At(j.A), m.At(j.B), m.Model(j.A.Part).StepNamed(j.A.Feature)
		if hub == nil || shaft == nil || seat == nil || group[hub.ID] == "" || group[hub.ID] == group[shaft.ID] {
			continue
		}
		line := m.Along(shaft.Pose)
		at, on := line.Find(j.A.Instance()), line.Find(j.B.Instance())
		for _, o := range line {
			if at == nil || on == nil || o.ID == hub.ID || group[o.ID] != group[hub.ID] || m.slidesOn(m.Of[o.ID], j.B.Instance()) {
				continue
			}
			for _, bore := range o.Of.Side(true) {
				mid := o.Span(bore.Span()).MidMm()
				alone := math.Abs(mid-at.Span(seat.Span()).MidMm()) > seat.LengthMm()
				if p := m.second(j, &o, on, bore, alone); p != nil {
					found = append(found, *p)
				}
			}
		}
	}
	return found
}

// slidesOn tells whether a joint of its own has a part slide on a shaft, or carries it there by a bearing.
func (m *Machine) slidesOn(part, shaft parts.Instance) bool {
	return slices.ContainsFunc(m.Joints, func(j *plan.JointPlan) bool {
		return (j.Kind == parts.SlideKind || j.Kind == parts.BearingKind) && j.A.Instance() == part && j.B.Instance() == shaft
	})
}

// second is what is wrong with one bore over the shaft that a joint puts its hub on; nil if it goes over nothing that is nearly
// as wide.
func (m *Machine) second(j *plan.JointPlan, o, shaft *stand.OnAxis, bore *part.Step, alone bool) *plan.Problem {
	for _, s := range shaft.Of.Side(false) {
		d := s.Size.NominalMm
		if over := shaft.Span(s.Span()).OnMm(o.Span(bore.Span())); !geom.Over(over, 0) || math.Abs(bore.Size.NominalMm-d) > secondShare*d || bore.Size.Thread != nil || s.Size.Thread != nil {
			continue
		}
		in, on := made(o.Of, bore), made(shaft.Of, s)
		play := plan.Range{Min: geom.Clean(in.MinMm - on.MaxMm), Max: geom.Clean(in.MaxMm - on.MinMm)}
		names := []plan.Arg{plan.Named(m.Title(o.ID) + " " + words.Spaced(bore.Name)), plan.Named(m.Title(shaft.ID) + " " + words.Spaced(s.Name))}
		most, err := fits.Between(d, loosest)
		switch {
		case geom.Over(0, play.Min) && !geom.Over(d, bore.Size.NominalMm): // else the two lie in one another as drawn
			p := m.Fault(j.Name, plan.SecondBinds, append(names, plan.Of(plan.Mm, -play.Min))...)
			return &p
		case err == nil && alone && geom.Over(play.Max, most.ClearanceMaxUm/1000):
			p := m.Fault(j.Name, plan.SecondFree, append(names, plan.Of(plan.Mm, play.Min), plan.Of(plan.Mm, play.Max), plan.Named(j.A.Title+" "+words.Spaced(j.A.Feature)))...)
			return &p
		}
	}
	return nil
}

// made is the size of a step as it may come out, by the general tolerance where it has no limits of its own.
func made(of *part.Model, s *part.Step) part.Sized {
	if s.Size.Limited {
		return s.Size
	}
	return of.General(geom.Clean(s.Size.NominalMm))
}
