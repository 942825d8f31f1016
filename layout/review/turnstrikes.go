package review

import (
	"math"
	"slices"

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
	shaft := seq.At(m.Bodies, func(b *assembly.Body) bool { return m.Of[b.ID] == drives.Instance() })
	if shaft == nil {
		return
	}
	still := seq.Keep(m.Bodies, func(b assembly.Body) bool {
		_, made := m.Of[b.ID]
		return made && !turns[m.Of[b.ID]] && m.Tied(&b, shaft)
	})
	for b := range seq.Refs(m.Bodies) {
		v := r.viewOf(m.Of[b.ID].Part)
		if v == nil || !turns[m.Of[b.ID]] || v.p.Kind == parts.FlightPart || !m.Tied(b, shaft) || v.roundAbout(b, shaft) {
			continue
		}
		if on, deg := struckBy(shaft, b, still); on != nil {
			r.add(Finding{
				Severity: Stop, Part: v.p.Name.Value, Pos: v.p.Name.Pos, What: v.p.Title.Value + " turns with " + m.Title(shaft.ID) + " and strikes " + m.Title(on.ID),
				Numbers: number(deg) + "° on from where it is drawn", Rule: "what turns is free all the way round", Source: "by geometry", Fix: v.p.Title.Value + " nearer the shaft, or " + m.Title(on.ID) + " out of its way",
			})
		}
	}
}

// roundAbout tells whether a part is the same all round the axis of a shaft but for what is cut into it.
func (v *view) roundAbout(b, shaft *assembly.Body) bool {
	return stand.SameAxis(b.Pose, shaft.Pose) && (v.p.Turned() || v.p.Kind == parts.Tube || v.p.Flat() && v.p.Outline.Shape == parts.CircleOutline)
}

// struckBy is what a body that turns with a shaft strikes first, and how far on; nil where it goes round.
func struckBy(shaft, b *assembly.Body, still []assembly.Body) (on *assembly.Body, deg float64) {
	const leastSteps, mostSteps = 24, 240
	into := shaft.Pose.Inverse()
	far := b.Solid.ReachMm(into.Of(b.Pose), turnEveryMm)
	low, high := b.Along(shaft.Pose.Z)
	off := shaft.Pose.At.Dot(shaft.Pose.Z)
	round := assembly.Body{ID: b.ID, Solid: assembly.Of(assembly.Cylinder(far, low-off, high-off)), Pose: shaft.Pose}
	near := seq.Keep(still, func(o assembly.Body) bool {
		if _, in := assembly.PairOverlap(&round, &o, assembly.Usual); !in {
			return false
		}
		_, lies := assembly.PairOverlap(b, &o, assembly.Usual)
		return !lies // that is found as it is drawn
	})
	if len(near) == 0 {
		return nil, 0
	}
	steps := int(min(max(math.Ceil(2*math.Pi*far/turnEveryMm), leastSteps), mostSteps))
	for k := 1; k < steps; k++ {
		deg = 360 * float64(k) / float64(steps)
		turned := *b
		turned.Pose = shaft.Pose.Of(assembly.Rotate(assembly.AxisZ, deg)).Of(into).Of(b.Pose)
		if i := slices.IndexFunc(near, func(o assembly.Body) bool { _, in := assembly.PairOverlap(&turned, &o, assembly.Usual); return in }); i >= 0 {
			return &near[i], geom.Clean(deg)
		}
	}
	return nil, 0
}
