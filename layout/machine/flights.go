package machine

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Of two flights of one hand, one behind the other on a shaft: the most between their ends as a part of the smaller
// pitch, as a hanger between them takes; within what part of it they are one flight, whose ends meet; and how far
// round the shaft those may stand apart. Common practice, no source.
const (
	mostGapPitches  = 0.5
	meetingPitches  = 0.05
	mostFlightsDeg  = 15.0
	mostOverLengths = 0.5 // of the shorter: beyond it they are two starts of one flight, side by side
)

// flightsMeet finds flights of one hand behind one another on a shaft that leave a place between them where nothing moves
// the load, or whose ends do not meet.
func (m *Machine) flightsMeet() (found []plan.Problem) {
	for first := range seq.Refs(m.Bodies) {
		if m.FormOf(first.ID) != parts.FlightPart {
			continue
		}
		line := seq.Keep(m.Along(first.Pose), func(o stand.OnAxis) bool { return o.Of.Part.Kind == parts.FlightPart })
		if line[0].ID != first.ID {
			continue // looked at with another of its line
		}
		along := first.Pose.Z.Reversed()
		low := func(o stand.OnAxis) float64 { l, _ := o.Along(along); return l }
		slices.SortStableFunc(line, func(a, b stand.OnAxis) int { return cmp.Compare(low(a), low(b)) })
		for k := range len(line) - 1 {
			found = append(found, m.flightPair(along, line[k], line[k+1])...)
		}
	}
	return found
}

// flightPair is what is wrong between two flights, of which b follows a along an axis.
func (m *Machine) flightPair(along assembly.Vec, a, b stand.OnAxis) []plan.Problem {
	f, g := a.Of.Part.Flight, b.Of.Part.Flight
	_, end := a.Along(along)
	start, _ := b.Along(along)
	pitch, gap := min(f.Pitch.Mm, g.Pitch.Mm), start-end
	if f.Left != g.Left || geom.Over(-gap, mostOverLengths*min(f.Length.Mm, g.Length.Mm)) {
		return nil
	}
	say := func(kind plan.ProblemKind, args ...plan.Arg) []plan.Problem {
		return []plan.Problem{stand.Problem(m.between(b.ID, ""), kind, g.Pos, append([]plan.Arg{m.Named(a.ID), m.Named(b.ID)}, args...)...)}
	}
	own, next := flightEdge(a, along), flightEdge(b, along.Reversed())
	switch apart := math.Atan2(own.Cross(next).Len(), own.Dot(next)) * 180 / math.Pi; {
	case geom.Over(gap, mostGapPitches*pitch):
		return say(plan.FlightGap, plan.Of(plan.Read, gap))
	case geom.Over(-gap, meetingPitches*pitch):
		return say(plan.FlightOver, plan.Of(plan.Read, -gap))
	case !geom.Over(gap, meetingPitches*pitch) && apart > mostFlightsDeg:
		return say(plan.FlightApart, plan.Of(plan.Degree, math.Round(apart)))
	}
	return nil
}

// flightEdge is the way from the axis along the edge in which a flight ends towards a way along it: a flight begins at its
// front at TOP and winds clockwise away from it where it is right-hand.
func flightEdge(o stand.OnAxis, towards assembly.Vec) assembly.Vec {
	f := o.Of.Part.Flight
	turned := words.Either(o.Pose.Z.Dot(towards) < 0, 360*f.Length.Mm/f.Pitch.Mm, 0.0)
	if f.Left {
		turned = -turned
	}
	return o.Pose.Turn(assembly.Clock(1, turned))
}

// widePart is how wide an opening is at least, of the outside of a flight, that lets in or out what that moves. Common
// practice, no source.
const widePart = 0.5

// outOfReach finds wide openings of the tube that a flight turns in which lie beyond an end of it, with no other flight between:
// what comes in is not taken on there, and what is to go out stands before.
func (m *Machine) outOfReach() (found []plan.Problem) {
	for b, r := range m.Parts() {
		if r.Part.Kind != parts.FlightPart {
			continue
		}
		f, line := r.Part.Flight, m.Along(b.Pose)
		own, others := flightSpans(line, b.ID)
		for _, o := range line {
			for _, row := range wideOpenings(o, own, f.Outside.Mm) {
				_, along, _ := row.Sides()
				at := o.Z(row.AxialMm)
				end := max(own.FromMm, min(own.ToMm, at)) // of the flight, towards the opening
				past := func(q geom.Span) bool { return q.OnMm(geom.Between(at, end)) > along/2 }
				if short := math.Abs(at-end) - along/2; geom.Over(short, mostGapPitches*f.Pitch.Mm) && !slices.ContainsFunc(others, past) {
					found = append(found, stand.Problem(m.between(b.ID, ""), plan.FlightShort, f.Pos, m.Named(b.ID), m.Named(o.ID), plan.Named(words.Spaced(row.Name)), m.Rounded(short, 1)))
				}
			}
		}
	}
	return found
}

// flightSpans are where one flight lies along a line, and where the others do.
func flightSpans(line stand.Line, id string) (own geom.Span, others []geom.Span) {
	for _, o := range line {
		if o.Of.Part.Kind != parts.FlightPart {
			continue
		}
		if span := o.Span(geom.Span{ToMm: o.Of.Part.Flight.Length.Mm}); o.ID == id {
			own = span
		} else {
			others = append(others, span)
		}
	}
	return own, others
}

// wideOpenings are those of a round in which something of an outside diameter turns on a stretch of the axis.
func wideOpenings(o stand.OnAxis, on geom.Span, outsideMm float64) (rows []plan.RadialRow) {
	if !slices.ContainsFunc(o.Of.Side(true), func(s *part.Step) bool {
		return s.Size.NominalMm > outsideMm && o.Span(s.Span()).Meets(on)
	}) {
		return nil
	}
	for _, g := range o.Of.Radials {
		if g.In.For == parts.Opening {
			rows = append(rows, g.Rows...)
		}
	}
	return seq.Keep(rows, func(row plan.RadialRow) bool {
		_, along, _ := row.Sides()
		return along >= widePart*outsideMm
	})
}
