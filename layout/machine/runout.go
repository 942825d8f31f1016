package machine

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// stopsShort finds parts that are drawn screwed in or on farther than their full thread goes: it runs out before a shoulder
// without an undercut, and the thread that it goes into begins too near that.
func (m *Machine) stopsShort() (found []plan.Problem) {
	for _, l := range m.screwed() {
		pose, placed := m.Poses[l.ID()]
		r := m.Model(l.Part)
		for _, s := range r.Side(false) {
			if !placed || s.Size.Thread == nil || s.Size.Thread.Taper || l.step != "" && s.Name != l.step {
				continue
			}
			for _, back := range []bool{false, true} {
				full, at, way := r.FullThreadMm(s, back), s.FromMm, assembly.AxisZ.Reversed()
				if back {
					at, way = s.ToMm, assembly.AxisZ
				}
				shoulder := pose.Of(assembly.Frame(assembly.Vec{Z: -at}, way, assembly.AxisY))
				if mm, into := m.threadAt(l.ID(), s, shoulder); geom.Over(full, mm+StandsMm) {
					found = append(found, stand.Problem(l.joint, plan.ThreadStops, l.at, m.Named(l.ID()), m.Named(into), m.Rounded(full-mm, 1), m.Rounded(full, 1)))
				}
			}
		}
	}
	return found
}

// jams finds parts that are drawn screwed in or on so far that the screw's end lies where the thread inside runs out.
func (m *Machine) jams() (found []plan.Problem) {
	for _, l := range m.screwed() {
		mine, placed := m.Poses[l.ID()]
		if !placed {
			continue
		}
		line := m.Along(mine)
		own := line.Find(l.Instance)
		for _, p := range line {
			if own == nil || p.ID == own.ID || l.into != "" && p.ID != l.into {
				continue
			}
			if mm := max(jamMm(*own, p), jamMm(p, *own)); geom.Over(mm, StandsMm) {
				found = append(found, stand.Problem(l.joint, plan.ThreadJams, l.at, m.Named(l.ID()), m.Named(p.ID), m.Rounded(mm, 1)))
			}
		}
	}
	return found
}

// jamMm is how far the threads of a part on an axis, but for the bevels at their ends, reach into what is no full thread of those
// inside another.
func jamMm(nut, screw stand.OnAxis) (mm float64) {
	for _, u := range nut.Of.Side(true) {
		for _, s := range screw.Of.Side(false) {
			if u.Size.Thread == nil || s.Size.Thread == nil || u.Size.Thread.Designation != s.Size.Thread.Designation {
				continue
			}
			has := s.Span()
			has.FromMm += screw.Of.Part.BevelMm(s.Name + "-front")
			has.ToMm -= screw.Of.Part.BevelMm(s.Name + "-back")
			front, back := u.Span(), u.Span()
			front.ToMm, back.FromMm = u.FromMm+nut.Of.RunoutMm(u, false), u.ToMm-nut.Of.RunoutMm(u, true)
			mm = max(mm, screw.Span(has).OnMm(nut.Span(front)), screw.Span(has).OnMm(nut.Span(back)))
		}
	}
	return mm
}

// threadAt is how far before a shoulder, along the z of its frame, the nearest thread of another body begins that takes the thread
// of a step up to there, and that body; further than anything where there is none.
func (m *Machine) threadAt(id string, s *part.Step, shoulder assembly.Pose) (mm float64, into string) {
	in, mm := shoulder.Inverse(), inf
	begins := func(b string, at assembly.Vec, sunk float64) {
		q := in.Apply(at)
		if z := q.Z + sunk; math.Hypot(q.X, q.Y) < StandsMm && z > -StandsMm && z < min(mm, s.LengthMm()) {
			mm, into = max(0, z), b
		}
	}
	for b, r := range m.Parts() {
		if b.ID == id {
			continue
		}
		for _, u := range r.Side(true) {
			if t := u.Size.Thread; t != nil && t.Designation == s.Size.Thread.Designation && stand.SameAxis(b.Pose, shoulder) {
				from, to := b.Pose.Apply(assembly.Vec{Z: -u.FromMm}), b.Pose.Apply(assembly.Vec{Z: -u.ToMm})
				if in.Apply(to).Z < in.Apply(from).Z {
					from = to
				}
				begins(b.ID, from, 0)
			}
		}
		for _, f := range seq.Keep(m.Mouths(b), func(f stand.Faced) bool { return f.Group.Size.Thread != nil && f.Out.Dot(shoulder.Z) < 0 }) {
			for _, at := range seq.Keep(f.At, func(assembly.Vec) bool { return f.Group.Size.Thread.Designation == s.Size.Thread.Designation }) {
				sunk := 0.0
				if f.Sunk {
					sunk = f.Group.SunkMm()
				}
				begins(b.ID, at, sunk)
			}
		}
	}
	return mm, into
}
