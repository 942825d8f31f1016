package review

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// nipMm is how near to one another two things that turn draw fingers in: less than the gap that keeps them from being crushed.
// ISO 13854 table 1, from memory.
const nipMm = 25.0

// drawnInMm is how far the surfaces of the two are from a hand that they draw in. Common practice, no source.
const drawnInMm = 25.0

// sideways is the rise of a way in, over its length, up to which it comes from the side.
const sideways = 0.7

// turned is what turns about an axis, with all that turns with it.
type turned struct {
	shaft *assembly.Body
	with  map[parts.Instance]bool
}

// turning are all that turn in bearings or bushes of the job, that which the motor drives first.
func (r *reviewer) turning() (out []turned) {
	add := func(i parts.Instance) {
		if b := r.machine().Standing(i); b != nil && !slices.ContainsFunc(out, func(t turned) bool { return t.with[i] }) {
			out = append(out, turned{b, r.turnsWith(i)})
		}
	}
	add(r.motor().Drives.Instance())
	for _, j := range r.job.Joints {
		if j.Kind == parts.BearingKind {
			cone, cup := j.Ends()
			add(words.Either(j.Bearing.Rotating == "outer", cup, cone).Instance())
		}
	}
	return out
}

// nips looks for the places where two things that turn about axes of their own, side by side, draw in what a hand gets to
// from outside: of each way in by itself.
func (r *reviewer) nips() {
	if !r.motor().Drives.Set() {
		return
	}
	all := r.turning()
	if len(all) < 2 || !all[0].with[r.motor().Drives.Instance()] {
		return
	}
	for _, other := range all[1:] {
		if r.machine().Tied(all[0].shaft, other.shaft) && !geom.Over(1, math.Abs(all[0].shaft.Pose.Z.Dot(other.shaft.Pose.Z))) {
			if a, b, near := r.nip(all[0], other); near {
				r.reachedNip(a, b)
			}
		}
	}
}

// nip is the pair of parts of two that turn whose rounds lie closest side by side; false where they are no nip.
func (r *reviewer) nip(one, other turned) (a, b swept, near bool) {
	least := nipMm
	for _, s := range r.sweptWith(one.shaft, one.with) {
		for _, t := range r.sweptWith(other.shaft, other.with) {
			if way, on := s.beside(t); on.FromMm < on.ToMm && math.Hypot(way.X, way.Y)-s.farMm-t.farMm < least {
				least, a, b = math.Hypot(way.X, way.Y)-s.farMm-t.farMm, s, t
			}
		}
	}
	return a, b, least < nipMm
}

// beside is the way to the axis of another round, and the stretch of the own axis on which both lie; it runs backwards
// where they lie on none.
func (s swept) beside(t swept) (way assembly.Vec, on geom.Span) {
	to := s.shaft.Inverse().Of(t.shaft)
	its := geom.Between(to.Apply(assembly.Vec{Z: t.lowMm}).Z, to.Apply(assembly.Vec{Z: t.highMm}).Z)
	return to.At, geom.Span{FromMm: max(s.lowMm, its.FromMm), ToMm: min(s.highMm, its.ToMm)}
}

// mouths are the places from which the rounds of two draw a hand in, on both sides of where they are closest, that there
// first.
func mouths(a, b swept) (out []assembly.Vec) {
	const every = 10.0
	way, on := a.beside(b)
	apart := math.Hypot(way.X, way.Y)
	to := assembly.Vec{X: way.X / apart, Y: way.Y / apart}
	up := assembly.AxisZ.Cross(to)
	middle := to.Times(a.farMm + (apart-a.farMm-b.farMm)/2)
	out = append(out, a.shaft.Apply(middle.Add(assembly.AxisZ.Times(on.MidMm()))))
	for side := -a.farMm; side <= a.farMm; side += every / 2 {
		p := middle.Add(up.Times(side))
		near, far := p.Len()-a.farMm, p.Sub(to.Times(apart)).Len()-b.farMm
		if min(near, far) < every || max(near, far) > drawnInMm {
			continue
		}
		for z := on.FromMm + every; z < on.ToMm-every; z += every {
			out = append(out, a.shaft.Apply(p.Add(assembly.AxisZ.Times(z))))
		}
	}
	return out
}

// reachedNip says where a hand gets to the nip of two, and from how near, past each part by itself.
func (r *reviewer) reachedNip(a, b swept) {
	m := r.machine()
	near, way, from := map[string]float64{}, map[string]string{}, mouths(a, b)
	for _, p := range assembly.Outlets(seq.Keep(m.Bodies, func(o assembly.Body) bool { return m.Tied(&o, a.Body) }), from, armMm) {
		past, off := r.past(p), p.Sub(from[0]).Len()
		if was, ok := near[past]; past != "" && (!ok || off < was) {
			up := p.Sub(from[0]).Unit().Dot(m.Up)
			near[past], way[past] = off, words.Either(math.Abs(up) > sideways, words.Either(up > 0, " from above", " from below"), " from the side")
		}
	}
	for _, past := range slices.SortedFunc(maps.Keys(near), func(a, b string) int { return cmp.Or(cmp.Compare(near[a], near[b]), cmp.Compare(a, b)) }) {
		p := r.job.Part(past)
		r.add(Finding{
			Severity: Check, Part: p.Name.Value, Pos: p.Name.Pos, What: "a hand gets to where " + m.Title(a.ID) + " and " + m.Title(b.ID) + " run together," + way[past] + " past " + p.Title.Value,
			Numbers: r.mm(words.Round(near[past], 0)) + " from outside, wanted " + r.mm(armMm), LeftMm: left(near[past]),
			Rule: "a guard keeps hands off where two things that turn draw in what comes between", Source: "ISO 13857 table 4, from memory",
			Fix: "a guard there, a narrower opening, or a longer way in",
		})
	}
}

// past is the part that stands nearest to a place outside.
func (r *reviewer) past(p assembly.Vec) (part string) {
	m, least := r.machine(), endless
	for b, of := range m.Parts() {
		if d := math.Abs(b.Dist(p)); d < least {
			least, part = d, of.Part.Name.Value
		}
	}
	return part
}
