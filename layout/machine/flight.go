package machine

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/flight"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// sectors is how many flat sectors stand for a turn of a flight.
const sectors = 12

// axialMm is how thick the sectors are, for them to weigh what the sheet does.
func axialMm(f *parts.Flight) float64 {
	run, err := flight.Flight{ShaftMm: f.Shaft.Mm, OutsideMm: f.Outside.Mm, PitchMm: f.Pitch.Mm, ThicknessMm: f.Thickness.Mm}.For(f.Length.Mm)
	if err != nil {
		return f.Thickness.Mm
	}
	return run.VolumeMm3 / (run.Turns * math.Pi / 4 * (f.Outside.Mm*f.Outside.Mm - f.Shaft.Mm*f.Shaft.Mm))
}

// helicoid stands flat sectors, one behind the other, for the turns of a flight:
// clockwise away from the front where it winds right.
func helicoid(f *parts.Flight) *assembly.Solid {
	inner, outer := f.Shaft.Mm/2, f.Outside.Mm/2
	half := axialMm(f) / 2
	step, turn := f.Pitch.Mm/sectors, 360.0/sectors
	bulge := math.Tan(turn * math.Pi / 720)
	if f.Left {
		turn = -turn
	}
	var add []assembly.Simple
	count := max(2, int(math.Round(f.Length.Mm/step)))
	for k := range count {
		a, b := (float64(k)-0.5)*turn, (float64(k)+0.5)*turn // so that no plane through the axis runs between two
		at := func(radius, clock float64) geom.Point {
			v := assembly.Clock(radius, clock)
			return geom.Point{XMm: v.X, YMm: v.Y}
		}
		if f.Left {
			a, b = b, a // clockwise from a to b
		}
		loop := geom.Loop{{Point: at(inner, a), Bulge: -bulge}, {Point: at(inner, b)}, {Point: at(outer, b), Bulge: bulge}, {Point: at(outer, a)}}
		z := -half - float64(k)*(f.Length.Mm-2*half)/float64(count-1) // from end to end
		add = append(add, assembly.Prism(assembly.Outline{loop}, z-half, z+half))
	}
	return assembly.Of(add...)
}

// What a flight leaves beside it in its tube, as shares of its outside: at the least what
// it is out of true by when it is welded, at the most what still takes its load along.
// Common practice, no source.
const (
	tightShare = 0.005
	wideShare  = 0.1
)

// FlightGapMm is how far a flight runs off what is narrowest round it, and in what; empty for nothing.
func (m *Machine) FlightGapMm(part string) (in string, mm float64) {
	for b, r := range m.parts() {
		if r.Part.Kind == parts.FlightPart && r.Part.Name.Value == part {
			in, mm, _ = m.flightIn(b, r.Part.Flight)
		}
	}
	return in, mm
}

// flightIn is what is narrowest round a flight, how far off it that is, and how long it is in rounds.
func (m *Machine) flightIn(b *assembly.Body, f *parts.Flight) (name string, leastMm, inMm float64) {
	leastMm = inf
	for o, other := range m.parts() {
		if !sameAxis(o.Pose, b.Pose) || m.overlapping[[2]string{o.ID, b.ID}] {
			continue
		}
		ends := b.Box().Moved(o.Pose.Inverse())
		_, inside := other.Sides()
		for _, s := range inside {
			long := min(s.ToMm, -ends.Low.Z) - max(s.FromMm, -ends.High.Z)
			if gap := (s.Size.NominalMm - f.Outside.Mm) / 2; long > 0 && s.Size.NominalMm > f.Shaft.Mm {
				inMm += long
				if gap < leastMm {
					name, leastMm = m.title(o.ID), gap
				}
			}
		}
	}
	return name, leastMm, inMm
}

// inTubes finds flights that rub in the round they turn in, by its radius and theirs, or
// leave most of their load lying there.
func (m *Machine) inTubes() (found []plan.Problem) {
	for b, r := range m.parts() {
		f := r.Part.Flight
		if r.Part.Kind != parts.FlightPart {
			continue
		}
		name, least, in := m.flightIn(b, f)
		kind := plan.FlightTight
		if least > wideShare*f.Outside.Mm {
			kind = plan.FlightWide
		}
		if name == "" || kind == plan.FlightTight && least >= tightShare*f.Outside.Mm || kind == plan.FlightWide && in < f.Length.Mm/2 {
			continue
		}
		found = append(found, problem(m.between(b.ID, ""), kind, f.Pos, m.named(b.ID), plan.Named(name), rounded(least, 2)))
	}
	return found
}

// pastEnd finds flights that reach past the end of what they are welded to.
func (m *Machine) pastEnd() (found []plan.Problem) {
	for _, j := range m.ofKind(parts.WeldKind) {
		ends := []plan.JointEnd{j.A, j.B}
		for k, e := range ends {
			b, o := m.at(e), m.at(ends[1-k])
			if b == nil || o == nil || m.formOf(b.ID) != parts.FlightPart || !sameAxis(o.Pose, b.Pose) {
				continue
			}
			box := b.Box().Moved(o.Pose.Inverse())
			outside, _ := m.model(ends[1-k].Part).Sides()
			for _, s := range outside {
				if past := max(-box.Low.Z-s.ToMm, s.FromMm+box.High.Z); s.Name == ends[1-k].Feature && past > standsMm {
					found = append(found, m.fault(j.Name, plan.WeldPast, m.named(b.ID), m.named(o.ID), rounded(past, 1)))
				}
			}
		}
	}
	return found
}
