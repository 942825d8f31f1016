package machine

import (
	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// What a flight leaves beside it in its tube, as shares of its outside: at the least what
// it is out of true by when it is welded, at the most what still takes its load along.
// Common practice, no source.
const (
	tightShare = 0.005
	wideShare  = 0.1
)

// FlightGapMm is how far a flight runs off what is narrowest round it, and in what; empty for nothing.
func (m *Machine) FlightGapMm(part string) (in string, mm float64) {
	for b, r := range m.Parts() {
		if r.Part.Kind == parts.FlightPart && r.Part.Name.Value == part {
			in, mm, _ = m.flightIn(b, r.Part.Flight)
		}
	}
	return in, mm
}

// flightIn is what is narrowest round a flight, how far off it that is, and how long it is in rounds.
func (m *Machine) flightIn(b *assembly.Body, f *parts.Flight) (name string, leastMm, inMm float64) {
	leastMm = inf
	ends := b.Solid.Box()
	for _, o := range m.Along(b.Pose) {
		if m.overlapping[[2]string{o.ID, b.ID}] {
			continue
		}
		for _, s := range o.Of.Side(true) {
			long := o.Span(s.Span()).OnMm(geom.Between(-ends.High.Z, -ends.Low.Z))
			if gap := (s.Size.NominalMm - f.Outside.Mm) / 2; long > 0 && s.Size.NominalMm > f.Shaft.Mm {
				inMm += long
				if gap < leastMm {
					name, leastMm = m.Title(o.ID), gap
				}
			}
		}
	}
	return name, leastMm, inMm
}

// inTubes finds flights that rub in the round they turn in, by its radius and theirs, or
// leave most of their load lying there.
func (m *Machine) inTubes() (found []plan.Problem) {
	for b, r := range m.Parts() {
		f := r.Part.Flight
		if r.Part.Kind != parts.FlightPart {
			continue
		}
		name, least, in := m.flightIn(b, f)
		kind := plan.FlightTight
		switch {
		case geom.Over(tightShare*f.Outside.Mm, least):
		case geom.Over(least, wideShare*f.Outside.Mm) && !geom.Over(f.Length.Mm/2, in):
			kind = plan.FlightWide
		default:
			continue
		}
		found = append(found, stand.Problem(m.between(b.ID, ""), kind, f.Pos, m.Named(b.ID), plan.Named(name), m.Rounded(least, 2)))
	}
	return found
}

// pastEnd finds flights that reach past the end of what they are welded to.
func (m *Machine) pastEnd() (found []plan.Problem) {
	for _, j := range m.OfKind(parts.WeldKind) {
		ends := []plan.JointEnd{j.A, j.B}
		for k, e := range ends {
			b, o := m.At(e), m.At(ends[1-k])
			if b == nil || o == nil || m.FormOf(b.ID) != parts.FlightPart || !stand.SameAxis(o.Pose, b.Pose) {
				continue
			}
			box := b.Box().Moved(o.Pose.Inverse())
			for _, s := range m.Model(ends[1-k].Part).Side(false) {
				if past := max(-box.Low.Z-s.ToMm, s.FromMm+box.High.Z); s.Name == ends[1-k].Feature && past > StandsMm {
					found = append(found, m.Fault(j.Name, plan.WeldPast, m.Named(b.ID), m.Named(o.ID), m.Rounded(past, 1)))
				}
			}
		}
	}
	return found
}
