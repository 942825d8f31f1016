package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// laid is a copy of a loose part that the job gives a place.
type laid struct {
	e  *parts.Loose
	at *parts.Lying
	Instance
	on Instance
}

// laid are those copies, in the job's order.
func (m *Machine) laid() (all []laid) {
	for e := range seq.Refs(m.job.Loose) {
		for k := range e.Lies {
			at := &e.Lies[k]
			all = append(all, laid{e, at, Instance{e.Part.Value, k + 1}, named(at.Ref)})
		}
	}
	return all
}

// off tells whether a loose part comes off again in its step.
func (m *Machine) off(part string) bool {
	return slices.ContainsFunc(m.job.Loose, func(e parts.Loose) bool { return e.Off && e.Part.Value == part })
}

// lies are the meets of loose parts with what they lie on.
func (m *Machine) lies() (out []assembly.Meet) {
	for _, l := range m.laid() {
		rel, _, _ := m.placed(&l.at.Place, l.Instance, l.on)
		out = append(out, assembly.Meet{ID: l.e.After.Value, A: l.on.id(), B: l.id(), OnA: rel, OnB: assembly.Still})
	}
	return out
}

// laidEarly finds loose parts whose step is before that of what they lie on.
func (m *Machine) laidEarly() (found []plan.Problem) {
	st, comes := newStage(m), map[Instance]int{}
	for _, l := range m.laid() {
		n := m.stepOf(l.e.After.Value)
		comes[l.Instance] = n
		on, loose := comes[l.on]
		if !loose {
			on = st.first(l.on.id())
		}
		if n >= 0 && on > n {
			found = append(found, problem(l.e.After.Value, plan.LaidEarly, l.at.Ref.Pos, m.named(l.id()), plan.Named(l.e.After.Value), m.named(l.on.id()), plan.Named(m.joints[on].Name)))
		}
	}
	return found
}

// Something bought that is drawn nowhere, such as a spoke, may be betweenMm thick under what
// lies on it; what touches lies within touchesMm. Common practice, no source.
const betweenMm, touchesMm = 12.0, 0.5

// laidFree finds loose parts that lie neither at their face nor on anything else.
func (m *Machine) laidFree() (found []plan.Problem) {
	all := slices.Concat(m.Bodies, m.passing)
	for _, l := range m.laid() {
		i, on := slices.IndexFunc(all, func(b assembly.Body) bool { return b.ID == l.id() }), m.standing(l.on)
		if i < 0 || on == nil {
			continue
		}
		b := &all[i]
		over := b.Solid.Box().Moved(faceFrame(l.at.On, on.Solid.Box()).Inverse().Of(on.Pose.Inverse()).Of(b.Pose))
		off := max(over.Low.Z, -over.High.Z)
		if off <= betweenMm && over.High.Z >= 0 || slices.ContainsFunc(m.Bodies, func(o assembly.Body) bool {
			return o.ID != b.ID && o.Box().Meets(b.Box(), touchesMm) && assembly.Near(&o, b, touchesMm, seamFinestMm)
		}) {
			continue
		}
		found = append(found, problem(l.e.After.Value, plan.LaidFree, l.at.Ref.Pos, m.named(b.ID), m.named(on.ID), rounded(off, 1), plan.Named(l.at.On)))
	}
	return found
}

// screwed lets loose parts and others lie in one another where the thread of a step of one is that of a step of
// the other, or of its tapped hole on the axis, as deep as that is.
func (m *Machine) screwed() {
	all := slices.Concat(m.Bodies, m.passing)
	for _, l := range m.laid() {
		mine := seq.At(all, func(b *assembly.Body) bool { return b.ID == l.id() })
		for b := range m.parts() {
			for _, pair := range [][2]*assembly.Body{{mine, b}, {b, mine}} {
				if mine == nil || b.ID == mine.ID {
					continue
				}
				for _, t := range threadsOf(m.partOf(pair[0].ID)) {
					if m.threaded(pair[1], pair[0].Pose, t) {
						m.allow(mine.ID, b.ID, (t.MajorMm-t.MinorMm)/2+fitMm)
					}
				}
			}
		}
	}
}

// threaded tells whether a step of a body, or a tapped hole of it on an axis, has a thread.
func (m *Machine) threaded(b *assembly.Body, axis assembly.Pose, t *threads.Thread) bool {
	return m.stepped(b, t) ||
		slices.ContainsFunc(m.mouths(b), func(f faced) bool {
			o := f.group.Size.Thread
			return o != nil && o.Designation == t.Designation && slices.ContainsFunc(f.at, func(at assembly.Vec) bool { return sameAxis(axis, assembly.Pose{Z: f.out, At: at}) })
		})
}

// stepped tells whether a step of a body has a thread.
func (m *Machine) stepped(b *assembly.Body, t *threads.Thread) bool {
	return slices.ContainsFunc(threadsOf(m.partOf(b.ID)), func(o *threads.Thread) bool { return o.Designation == t.Designation })
}

// A nut engages as much as the height of a standard one, or where it is lower three quarters of its own
// thread. Common practice, no source.
const nutHighShare, nutFullShare = 0.8, 0.75

// nutsEngage finds loose nuts and screws on a thread of another pitch, or on too little of their own
// on the axis that they lie on.
func (m *Machine) nutsEngage() (found []plan.Problem) {
	for _, l := range m.laid() {
		mine, placed := m.poses[l.id()]
		outside, inside := m.model(l.Part).Sides()
		for _, s := range slices.Concat(outside, inside) {
			var worst *plan.Problem // of what engages most
			most, held := 0.0, !placed || s.Size.Thread == nil
			for b := range seq.Refs(m.Bodies) {
				if r := m.partOf(b.ID); !held && r != nil && b.ID != l.id() && sameAxis(mine, b.Pose) {
					for _, u := range other(r, s) {
						has, wants, say := m.engages(&l, s, b, u)
						if held = held || say == nil && has >= wants-standsMm; say != nil && (worst == nil || has > most) {
							worst, most = say, has
						}
					}
				}
			}
			if !held && worst != nil {
				found = append(found, *worst)
			}
		}
	}
	return found
}

// other are the threads of a part that may go on or into one.
func other(r *part.Model, s *part.Step) []*part.Step {
	steps, inside := r.Sides()
	if !s.Inside {
		steps = inside
	}
	return seq.Keep(steps, func(u *part.Step) bool {
		return u.Size.Thread != nil && math.Abs(u.Size.Thread.MajorMm-s.Size.Thread.MajorMm) <= standsMm
	})
}

// engages is how much of a thread of a body lies in that of a loose part, and how much is wanted, mm, with
// what is wrong.
func (m *Machine) engages(l *laid, s *part.Step, b *assembly.Body, u *part.Step) (has, wants float64, wrong *plan.Problem) {
	low, high := liesAlong(b.Pose.Inverse().Of(m.poses[l.id()]), s)
	nut := s
	if !s.Inside {
		nut = u
	}
	has, wants = max(0, min(high, u.ToMm)-max(low, u.FromMm)), min(nutHighShare*nut.Size.NominalMm, nutFullShare*nut.LengthMm())
	mine, its := s.Size.Thread.Designation, u.Size.Thread.Designation
	say := problem(l.e.After.Value, plan.NutHangs, l.at.Ref.Pos, m.named(l.id()), plan.Named(m.title(b.ID)+" "+words.Spaced(u.Name)), rounded(has, 2), rounded(wants, 2))
	switch {
	case mine != its && has >= standsMm:
		say.Kind, say.Args = plan.NutPitch, append(say.Args[:2], plan.Named(mine), plan.Named(its))
	case mine != its || has >= wants-standsMm:
		return has, wants, nil
	}
	return has, wants, &say
}

// threadsOf are the threads of a turned part.
func threadsOf(r *part.Model) (list []*threads.Thread) {
	outside, inside := r.Sides()
	for _, s := range slices.Concat(outside, inside) {
		if s.Size.Thread != nil {
			list = append(list, s.Size.Thread)
		}
	}
	return list
}

// lay brings the loose parts of a step to where they lie: those that come before its two
// meet, or the others.
func (s *soFar) lay(j *plan.JointPlan, first bool) {
	for _, l := range s.m.laid() {
		on := s.of[l.on.id()]
		if l.e.After.Value != j.Name || l.e.First != first || on == nil {
			continue
		}
		fixed := slices.Clone(*on)
		if l.e.Off {
			s.looks = append(s.looks, func() []plan.Problem { return s.m.passes(j, &l, fixed) })
			continue
		}
		if movers := slices.Clone(*s.of[l.id()]); !s.m.overlap(movers, fixed) {
			s.looks = append(s.looks, func() []plan.Problem { return s.m.laidIn(j, &l, s.m.pick(movers), s.m.pick(fixed)) })
		}
		s.unite(l.on.id(), l.id())
	}
}

// passes tells whether what comes off again has room at its step, and comes there.
func (m *Machine) passes(j *plan.JointPlan, l *laid, fixed []int) []plan.Problem {
	fx := m.pick(fixed)
	for b := range seq.Refs(m.passing) {
		if b.ID != l.id() {
			continue
		}
		for k := range fx {
			if o, in := assembly.PairOverlap(b, &fx[k], 0, pairTolerance); in {
				return []plan.Problem{problem(j.Name, plan.PartsOverlap, l.at.Pos, m.named(b.ID), m.named(fx[k].ID), rounded(o.DepthMm, 2))}
			}
		}
		return m.laidIn(j, l, []assembly.Body{*b}, fx)
	}
	return nil
}

// laidIn tells what is in the way of a loose part, which comes straight, or, where it is said so, on edge
// through an opening, to be turned behind it and moved to where it lies.
func (m *Machine) laidIn(j *plan.JointPlan, l *laid, mv, fx []assembly.Body) []plan.Problem {
	block, free := m.freeWay(m.poses[l.id()], mv, fx)
	if free {
		return nil
	}
	if _, _, free = m.onEdge(m.poses[l.id()], mv, fx); free && l.e.Turned {
		return nil
	}
	p := m.blocked(j, block)
	p[0].Pos = l.at.Pos
	return p
}

// onEdge is the way by which movers come in turned by a quarter, and how far from where they lie: at
// the height of one of the openings in what is there or just there; ok is false where none is free.
func (m *Machine) onEdge(pose assembly.Pose, movers, fixed []assembly.Body) (into, from assembly.Vec, ok bool) {
	const step = 15.0 // degrees
	at, off := movers[0].Box().Centre(), []float64{0}
	for b := range seq.Refs(fixed) {
		if r := m.partOf(b.ID); r != nil {
			for _, o := range r.Radials {
				mouth := b.Pose.Apply(assembly.Vec{Z: -o.Rows[0].AxialMm})
				off = append(off, mouth.Sub(at).Dot(pose.Z))
			}
		}
	}
	f := &fitting{m: m, fixed: fixed}
	for _, mm := range off {
		along := way(pose.Z.Times(math.Copysign(1, mm)), movers, fixed)
		if along.FarMm = math.Abs(mm); mm != 0 && !along.Free(movers, fixed, m.allowed(movers)) {
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
			if into, ok = m.freeInto(pose, edge, fixed); room && ok {
				return into, pose.Z.Times(mm), true
			}
		}
	}
	return into, from, false
}

// moved are bodies after a motion.
func moved(bodies []assembly.Body, g assembly.Pose) []assembly.Body {
	out := slices.Clone(bodies)
	for i := range out {
		out[i].Pose = g.Of(out[i].Pose)
	}
	return out
}

// laidPicture adds a section through the loose parts of a step that no other picture of it
// shows: along the machine's axis if it cuts all of them, else through the first.
func (v *viewed) laidPicture() {
	hidden := slices.DeleteFunc(slices.Clone(v.news[v.j.N-1]), func(b *assembly.Body) bool {
		return slices.ContainsFunc(v.j.Pictures, func(p plan.Picture) bool {
			return slices.ContainsFunc(p.Shapes, func(s plan.Shape) bool { return s.New && s.Title == v.title(b.ID) })
		})
	})
	if len(hidden) == 0 {
		return
	}
	at, pose := hidden[0].Box().Centre(), hidden[0].Pose
	for _, plane := range []assembly.Pose{alongAxis, upright(at, pose.Y), upright(at, pose.X), upright(at, pose.Z)} {
		var loops [][]plan.XY
		cuts := 0
		for _, b := range hidden {
			if cut := v.cut(plane, b); len(cut) > 0 {
				loops = append(loops, cut...)
				cuts++
			}
		}
		if cuts == 0 || plane == alongAxis && cuts < len(hidden) {
			continue
		}
		all := rectOf(loops)
		size := all.size()
		win := all.grown(0.6 * max(size.XMm, size.YMm))
		if !v.showsUnder(plane, win, hidden) {
			win = all.grown(1.5 * max(size.XMm, size.YMm))
		}
		v.byHand = true
		shapes, _ := v.shapes(plane, win)
		for _, s := range shapes { // no wider than what it shows
			all = all.join(rectOf(s.Loops))
		}
		win = win.meet(all.grown(0.02 * max(size.XMm, size.YMm)))
		p := plan.Picture{Cut: plan.CutAxis, MinMm: win.min, MaxMm: win.max, Arrows: v.arrows(plane, win, v.news[v.j.N-1])}
		p.Shapes, p.Centres = v.shapes(plane, win)
		if plane != alongAxis {
			p.Cut = lieOf(plane)
		}
		v.j.Pictures, v.planesOf = append(v.j.Pictures, p), append(v.planesOf, plane)
		return
	}
}

// showsUnder tells whether a window of a plane shows more than a scrap of what one of some loose parts
// lies on.
func (v *viewed) showsUnder(plane assembly.Pose, win rect, hidden []*assembly.Body) bool {
	return slices.ContainsFunc(v.laid(), func(l laid) bool {
		on := v.body[l.on.id()]
		if on == nil || !slices.Contains(hidden, v.body[l.id()]) {
			return false
		}
		shown := rectOf(win.clip(v.cut(plane, on))).size()
		return max(shown.XMm, shown.YMm) > 0.2*max(win.size().XMm, win.size().YMm)
	})
}
