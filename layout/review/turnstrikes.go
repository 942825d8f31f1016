package review

import (
	"iter"
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// turnEveryMm is how far apart what turns is looked at on its way round, at its farthest; common practice, no source.
const turnEveryMm = 5.0

// turnStrikes looks for what turns with the shaft that the motor drives and strikes, in a turn, what stands still: it is
// free as it is drawn. What is round about the shaft strikes nothing later.
func (r *reviewer) turnStrikes() {
	drives := r.motor().Drives
	if !drives.Set() {
		return
	}
	m, turns := r.machine(), r.turnsWith(drives.Instance())
	shaft := m.Standing(drives.Instance())
	if shaft == nil {
		return
	}
	var still []*assembly.Body
	for b := range r.tiedTo(shaft) {
		if !turns[m.Of[b.ID]] {
			still = append(still, b)
		}
	}
	for _, s := range r.sweptWith(shaft, turns) {
		if s.v.p.Kind == parts.FlightPart || s.v.roundAbout(s.Body, shaft) {
			continue
		}
		if on, deg := s.strikes(still); on != nil {
			s.v.report(Stop, "", s.v.p.Name.Pos, Finding{
				What:    s.v.p.Title.Value + " turns with " + m.Title(shaft.ID) + " and strikes " + m.Title(on.ID),
				Numbers: number(deg) + "° on from where it is drawn", Rule: "what turns is free all the way round", Source: "by geometry",
				Fix: s.v.p.Title.Value + " nearer the shaft, or " + m.Title(on.ID) + " out of its way",
			})
		}
	}
}

// tiedTo goes over the made parts that joints tie to a body, itself among them.
func (r *reviewer) tiedTo(to *assembly.Body) iter.Seq2[*assembly.Body, *view] {
	return func(yield func(*assembly.Body, *view) bool) {
		for b, of := range r.machine().Parts() {
			if v := r.viewOf(of.Part.Name.Value); v != nil && r.machine().Tied(b, to) && !yield(b, v) {
				return
			}
		}
	}
}

// swept is a part that turns with a shaft, and its round: how far that reaches from the axis of the shaft, and where it
// lies along that, from the origin of the shaft.
type swept struct {
	*assembly.Body
	v              *view
	farMm          float64
	lowMm, highMm  float64
	shaft, inShaft assembly.Pose
}

// sweptWith are the rounds of a shaft and of all that turns with it.
func (r *reviewer) sweptWith(shaft *assembly.Body, turns map[parts.Instance]bool) (out []swept) {
	for b, v := range r.tiedTo(shaft) {
		if turns[r.machine().Of[b.ID]] {
			out = append(out, sweepOf(b, v, shaft))
		}
	}
	return out
}

// sweepOf is the round of a body about the axis of a shaft; of what is round itself, by its box.
func sweepOf(b *assembly.Body, v *view, shaft *assembly.Body) swept {
	in := shaft.Pose.Inverse().Of(b.Pose)
	own := b.Solid.Box()
	box, far := own.Moved(in), max(own.High.X, own.High.Y)
	if v == nil || !v.roundAbout(b, shaft) {
		far = b.Solid.ReachMm(in, turnEveryMm)
	}
	return swept{b, v, far, box.Low.Z, box.High.Z, shaft.Pose, in}
}

// sweptSteps are the same step by step, and those of what is bought and runs with the shaft, as a coupling does.
func (r *reviewer) sweptSteps(shaft *assembly.Body, turns map[parts.Instance]bool) (out []swept) {
	out = seq.Flat(r.sweptWith(shaft, turns), swept.stepped)
	for b := range seq.Refs(r.machine().Bodies) {
		if m := r.machine(); m.Roles[b.ID].Runs && m.Tied(b, shaft) {
			out = append(out, sweepOf(b, nil, shaft))
		}
	}
	return out
}

// stepped are the rounds of the steps of what is turned about the axis of the shaft, where a disc may be of one piece with
// what comes out of a guard; of another part it is the part's own.
func (s swept) stepped() (out []swept) {
	if !s.v.p.Turned() || !stand.SameAxis(s.Pose, s.shaft) {
		return []swept{s}
	}
	for _, c := range s.v.outside {
		from, to := s.inShaft.Apply(assembly.Vec{Z: -c.FromMm}).Z, s.inShaft.Apply(assembly.Vec{Z: -c.ToMm}).Z
		step := s
		step.farMm, step.lowMm, step.highMm = c.RadiusMm(), min(from, to), max(from, to)
		out = append(out, step)
	}
	return out
}

// nearest is the place of the round that lies next to a point.
func (s *swept) nearest(p assembly.Vec) assembly.Vec {
	q := s.shaft.Inverse().Apply(p)
	if r := math.Hypot(q.X, q.Y); r > s.farMm {
		q.X, q.Y = q.X*s.farMm/r, q.Y*s.farMm/r
	}
	q.Z = min(max(q.Z, s.lowMm), s.highMm)
	return s.shaft.Apply(q)
}

// roundAbout tells whether a part is the same all round the axis of a shaft but for what is cut into it.
func (v *view) roundAbout(b, shaft *assembly.Body) bool {
	return stand.SameAxis(b.Pose, shaft.Pose) && (v.p.Turned() || v.p.Kind == parts.Tube || v.p.Flat() && v.p.Outline.Shape == parts.CircleOutline)
}

// strikes is what it strikes first of what stands still, and how far on; nil where it goes round.
func (s *swept) strikes(still []*assembly.Body) (on *assembly.Body, deg float64) {
	const leastSteps, mostSteps = 24, 240
	meets := func(b, o *assembly.Body) bool { _, in := assembly.PairOverlap(b, o, assembly.Usual); return in }
	round := assembly.Body{ID: s.ID, Solid: assembly.Of(assembly.Cylinder(s.farMm, s.lowMm, s.highMm)), Pose: s.shaft}
	near := seq.Keep(still, func(o *assembly.Body) bool { return meets(&round, o) && !meets(s.Body, o) }) // else it is found as it is drawn
	if len(near) == 0 {
		return nil, 0
	}
	steps := int(min(max(math.Ceil(2*math.Pi*s.farMm/turnEveryMm), leastSteps), mostSteps))
	for k := range steps - 1 { // as it is drawn they are apart
		turned, deg := *s.Body, 360*float64(k+1)/float64(steps)
		turned.Pose = s.shaft.Of(assembly.Rotate(assembly.AxisZ, deg)).Of(s.inShaft)
		if on := seq.First(near, func(o *assembly.Body) bool { return meets(&turned, o) }); on != nil {
			return on, geom.Clean(deg)
		}
	}
	return nil, 0
}
