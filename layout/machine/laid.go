package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// laidEarly finds loose parts whose step is before that of what they lie on.
func (m *Machine) laidEarly() (found []plan.Problem) {
	st, comes := m.Stage(), map[parts.Instance]int{}
	for _, l := range m.Laid() {
		n := m.StepOf(l.Loose.After.Value)
		comes[l.Instance] = n
		on, loose := comes[l.On]
		if !loose {
			on = st.First(l.On.ID())
		}
		if n >= 0 && on > n {
			found = append(found, stand.Problem(l.Loose.After.Value, plan.LaidEarly, l.At.Ref.Pos, m.Named(l.ID()), plan.Named(l.Loose.After.Value), m.Named(l.On.ID()), plan.Named(m.Joints[on].Name)))
		}
	}
	return found
}

// Something bought that is drawn nowhere, such as a spoke, may be betweenMm thick under what
// lies on it; what touches lies within touchesMm. Common practice, no source.
const betweenMm, touchesMm = 12.0, 0.5

// laidFree finds loose parts that lie neither at their face nor on anything else, and those at their face, without a gap, that go on past it: they
// are smaller than what they lie over, or larger, or beside it.
func (m *Machine) laidFree() (found []plan.Problem) {
	all := slices.Concat(m.Bodies, m.Passing)
	for _, l := range m.Laid() {
		i, on := slices.IndexFunc(all, func(b assembly.Body) bool { return b.ID == l.ID() }), m.Standing(l.On)
		if i < 0 || on == nil {
			continue
		}
		b := &all[i]
		over := b.Solid.Box().Moved(solid.FaceFrame(l.At.On, on.Solid.Box()).Inverse().Of(on.Pose.Inverse()).Of(b.Pose))
		off := max(over.Low.Z, -over.High.Z)
		at := off <= betweenMm && over.High.Z >= 0
		if at && math.Abs(off) > touchesMm || slices.ContainsFunc(m.Bodies, func(o assembly.Body) bool {
			return o.ID != b.ID && o.Box().Meets(b.Box(), touchesMm) && assembly.Near(&o, b, touchesMm, seamFinestMm)
		}) {
			continue
		}
		kind, mm, others, args := plan.LaidFree, off, m.others(b.ID), []plan.Arg{m.Named(b.ID), m.Named(on.ID), plan.Named(l.At.On)}
		if at {
			in := on.Pose.Turn(solid.OutOf(l.At.On)).Reversed()
			mm = m.soonest(way(in, []assembly.Body{*b}, others), []assembly.Body{*b}, others).LastMm
			switch {
			case mm <= betweenMm:
				continue
			case mm == inf:
				kind = plan.LaidFalls
			default:
				kind = plan.LaidPast
			}
		}
		if kind != plan.LaidFalls {
			args = append(args, m.Rounded(mm, 1))
		}
		found = append(found, stand.Problem(l.Loose.After.Value, kind, l.At.Ref.Pos, args...))
	}
	return found
}

// A nut engages as much as the height of a standard one, or where it is lower three quarters of its own
// thread. Common practice, no source.
const nutHighShare, nutFullShare = 0.8, 0.75

// nutsEngage finds nuts and screws on a thread of another pitch, or on too little of their own
// on the axis that they lie on.
func (m *Machine) nutsEngage() (found []plan.Problem) {
	for _, l := range m.screwed() {
		for _, s := range slices.Concat(m.Model(l.Part).Side(false), m.Model(l.Part).Side(true)) {
			if l.step != "" && s.Name != l.step {
				continue
			}
			if worst := m.engagesBadly(&l, s); worst != nil {
				found = append(found, *worst)
			}
		}
	}
	return found
}

// screwedIn is a part that may be screwed in or on, with the joint with whose step that is, and where the job says so; of one that a joint
// screws in, its step and the body that it goes into.
type screwedIn struct {
	parts.Instance
	joint, step, into string
	at                parts.Pos
}

// screwed are the parts that are laid somewhere, and those that joints screw into others.
func (m *Machine) screwed() (all []screwedIn) {
	for _, l := range m.Laid() {
		all = append(all, screwedIn{l.Instance, l.Loose.After.Value, "", "", l.At.Ref.Pos})
	}
	for _, j := range m.OfKind(parts.ScrewKind) {
		all = append(all, screwedIn{j.A.Instance(), j.Name, j.A.Feature, j.B.Instance().ID(), m.PosOf(j.Name)})
	}
	return all
}

// engagesBadly is what is wrong with the thread of a step of something screwed in where it engages most; nil where it is held by
// some thread, or has none to engage in.
func (m *Machine) engagesBadly(l *screwedIn, s *part.Step) (worst *plan.Problem) {
	mine, placed := m.Poses[l.ID()]
	if !placed || s.Size.Thread == nil {
		return nil
	}
	most := -inf
	for _, p := range m.Along(mine) {
		if p.ID == l.ID() || l.into != "" && p.ID != l.into {
			continue
		}
		for _, u := range other(p.Of, s) {
			has, say, on := m.engages(l, s, p, u)
			switch {
			case on && say == nil:
				return nil
			case say != nil && geom.Over(has, most):
				worst, most = say, has
			}
		}
	}
	return worst
}

// other are the threads of a part that may go on or into one.
func other(r *part.Model, s *part.Step) []*part.Step {
	return seq.Keep(r.Side(!s.Inside), func(u *part.Step) bool {
		return u.Size.Thread != nil && math.Abs(u.Size.Thread.MajorMm-s.Size.Thread.MajorMm) <= StandsMm
	})
}

// engages is how much of a thread of a part on the axis of one screwed in lies in that of this, mm, with what is wrong; on is false for
// another thread, which it does not reach.
func (m *Machine) engages(l *screwedIn, s *part.Step, p stand.OnAxis, u *part.Step) (has float64, wrong *plan.Problem, on bool) {
	nut := words.Either(!s.Inside, u, s)
	has = max(0, p.Span(u.Span()).OnMm(s.Span()))
	wants := min(nutHighShare*nut.Size.NominalMm, nutFullShare*nut.LengthMm())
	if nut.Size.Thread.Lead != nil { // a nut that travels carries on all of it
		wants = nutFullShare * nut.LengthMm()
	} else if full := max(0, p.Span(p.Of.FullSpan(u, false)).OnMm(m.Model(l.Part).FullSpan(s, false))); has >= wants-StandsMm {
		has, wants = full, min(nutHighShare*nut.Size.NominalMm, nut.LengthMm())/2 // less undercuts and chamfers, half a nut at the least
	}
	mine, its := s.Size.Thread.Designation, u.Size.Thread.Designation
	say := stand.Problem(l.joint, plan.NutHangs, l.at, m.Named(l.ID()), plan.Named(m.Title(p.ID)+" "+words.Spaced(u.Name)), m.Rounded(has, 2), m.Rounded(wants, 2))
	switch {
	case mine != its && has < StandsMm:
		return has, nil, false
	case mine != its:
		say.Kind, say.Args = plan.NutPitch, append(say.Args[:2], plan.Named(mine), plan.Named(its))
	case has >= wants-StandsMm:
		return has, nil, true
	}
	return has, &say, true
}

// lay brings the loose parts of a step to where they lie: those that come before its two
// meet, or the others.
func (s *soFar) lay(j *plan.JointPlan, first bool) {
	for _, l := range s.m.Laid() {
		on := s.of[l.On.ID()]
		if l.Loose.After.Value != j.Name || l.Loose.First != first || on == nil {
			continue
		}
		fixed := slices.Clone(*on)
		if l.Loose.Off {
			s.looks = append(s.looks, func() []plan.Problem { return s.m.passes(j, &l, fixed) })
			continue
		}
		if movers := slices.Clone(*s.of[l.ID()]); !s.m.overlap(movers, fixed) {
			s.looks = append(s.looks, func() []plan.Problem { return s.m.laidIn(j, &l, s.m.pick(movers), s.m.pick(fixed)) })
		}
		s.unite(l.On.ID(), l.ID())
	}
}

// inTheWay is the first of what a joint brings that goes where a part lies which comes off again only once the joint is made, and how
// deep; nil where all has room.
func (m *Machine) inTheWay(j *plan.JointPlan, passing *assembly.Body, stands []assembly.Body) (in *assembly.Body, deepMm float64) {
	for _, id := range m.Stage().Ends[m.StepOf(j.Name)] {
		b := m.Stage().BodyOf[id]
		if b == nil || slices.ContainsFunc(stands, func(o assembly.Body) bool { return o.ID == id }) {
			continue
		}
		if o, met := assembly.PairOverlap(passing, b, pairTolerance); met {
			return b, o.DepthMm
		}
	}
	return nil, 0
}

// passes tells whether what comes off again has room at its step, and comes there.
func (m *Machine) passes(j *plan.JointPlan, l *stand.Laid, fixed []int) []plan.Problem {
	fx := m.pick(fixed)
	for b := range seq.Refs(m.Passing) {
		if b.ID != l.ID() {
			continue
		}
		for k := range fx {
			if o, in := assembly.PairOverlap(b, &fx[k], pairTolerance); in {
				return []plan.Problem{stand.Problem(j.Name, plan.PartsOverlap, l.At.Pos, m.Named(b.ID), m.Named(fx[k].ID), m.Rounded(o.DepthMm, 2))}
			}
		}
		if in, deep := m.inTheWay(j, b, fx); l.Loose.First && in != nil {
			return []plan.Problem{stand.Problem(j.Name, plan.PassingInWay, l.At.Pos, m.Named(b.ID), m.Named(in.ID), m.Rounded(deep, 2))}
		}
		return m.laidIn(j, l, []assembly.Body{*b}, fx)
	}
	return nil
}

// laidIn tells what is in the way of a loose part, which comes straight, or, where it is said so, on edge
// through an opening, to be turned behind it and moved to where it lies.
func (m *Machine) laidIn(j *plan.JointPlan, l *stand.Laid, mv, fx []assembly.Body) []plan.Problem {
	pose := m.Poses[l.ID()]
	block, free := m.freeWay(pose, mv, fx)
	if free {
		return nil
	}
	if _, _, free = m.OnEdge(pose, mv, fx); free && l.Loose.Turned {
		return nil
	}
	p := m.blocked(j, block, m.laidSooner(j, l, barred{fx, func(fixed []assembly.Body) bool {
		_, free := m.freeWay(pose, mv, fixed)
		return free
	}}))
	p[0].Pos = l.At.Pos
	return p
}

// OnEdge is the way by which movers come in turned by a quarter, and how far from where they lie: at
// the height of one of the openings in what is there or just there; ok is false where none is free.
func (m *Machine) OnEdge(pose assembly.Pose, movers, fixed []assembly.Body) (into, from assembly.Vec, ok bool) {
	const step = 15.0 // degrees
	at, off := movers[0].Box().Centre(), []float64{0}
	for b := range seq.Refs(fixed) {
		if r := m.PartOf(b.ID); r != nil {
			for _, o := range r.Radials {
				mouth := b.Pose.Apply(assembly.Vec{Z: -o.Rows[0].AxialMm})
				off = append(off, mouth.Sub(at).Dot(pose.Z))
			}
		}
	}
	f := &fitting{m: m, fixed: fixed}
	for _, mm := range off {
		along := way(pose.Z.Times(math.Copysign(1, mm)), movers, fixed)
		if along.FarMm = math.Abs(mm); mm != 0 && !along.Free(movers, fixed, m.Allowed(movers)) {
			continue
		}
		for _, axis := range []assembly.Vec{pose.X, pose.Y} {
			var edge []assembly.Body
			room := true
			for deg := step; deg <= 90 && room; deg += step {
				g := assembly.Move(at.Add(pose.Z.Times(mm))).Of(assembly.Rotate(axis, deg)).Of(assembly.Move(at.Reversed()))
				edge = moved(movers, g)
				room = f.room(edge)
			}
			if into, ok = m.FreeInto(pose, edge, fixed); room && ok {
				return into, pose.Z.Times(mm), true
			}
		}
	}
	return into, from, false
}
