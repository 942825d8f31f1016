package machine

import (
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// travel follows the order of making: at every joint what is joined comes
// together along a straight line, from far or from beside its seat, and every screw
// goes in along its own. It says what is in the way where no line is free.
func (m *Machine) travel() []look {
	so := &soFar{m: m, of: map[string]*[]int{}, bodies: map[string]int{}}
	for i := range m.Bodies {
		so.bodies[m.Bodies[i].ID] = i
		so.of[m.Bodies[i].ID] = &[]int{i}
	}
	for _, b := range m.Bodies {
		if on := m.Roles[b.ID].On; m.Rides(b.ID) {
			so.unite(on, b.ID)
		}
	}
	m.ways = make([][]plan.Trap, len(m.Joints))
	for n, j := range m.Joints {
		so.wrongWays(n, j)
		so.stand(j, true)
		so.lay(j, true)
		so.join(j)
		so.stand(j, false)
		so.lay(j, false)
	}
	return so.looks
}

func (s *soFar) join(j *plan.JointPlan) {
	a, b := j.A.Instance().ID(), j.B.Instance().ID()
	if s.of[a] == nil || s.of[b] == nil {
		return // not placed
	}
	for _, id := range s.m.goWith(j) {
		s.unite(a, id)
	}
	for _, t := range s.m.Studs(j) {
		if j.Bolt.StudStandsMm > 0 {
			s.unite(b, t.B) // before A comes
		}
	}
	if cup, cone := rings(j); s.of[cup] != nil && j.Bearing.Ball {
		if j.Bearing.Last {
			s.meet(j, a, b)
		}
		s.balls(j)
	} else if s.of[cup] != nil {
		s.come(j, *s.of[cup], []int{s.bodies[b]})
		s.come(j, *s.of[cone], *s.of[a])
		s.unite(b, cup)
		s.unite(a, cone)
	}
	s.meet(j, a, b)
	var screws []string
	var free []int // screws that do not lie in what they hold
	for k := range s.m.Bodies {
		id := s.m.Bodies[k].ID
		if s.m.IsScrew(id, j) {
			if screws = append(screws, id); !s.m.overlap([]int{k}, *s.of[a]) {
				free = append(free, k)
			}
		}
	}
	s.drive(j, free, *s.of[a])
	for _, id := range screws {
		s.unite(a, id)
	}
}

// meet brings what hangs together with A of a joint to B, unless they hang together already.
func (s *soFar) meet(j *plan.JointPlan, a, b string) {
	if s.of[a] != s.of[b] {
		s.come(j, *s.of[a], *s.of[b])
		s.unite(a, b)
	}
}

// rings are the bodies of a bearing's rings, in the housing and on the shaft; of another joint none.
func rings(j *plan.JointPlan) (outer, inner string) {
	if j.Bearing != nil {
		inner, outer = j.Bearing.Names()
	}
	return j.Name + " " + outer, j.Name + " " + inner
}

// balls brings the ball bearings that a step mounts: its own, where that is not in yet, and those that go in with it.
func (s *soFar) balls(j *plan.JointPlan) {
	all := s.m.OfKind(parts.BearingKind)
	if slices.ContainsFunc(all, func(o *plan.JointPlan) bool { return o != j && slices.Contains(o.Bearing.CupsHere, j.Name) }) {
		return
	}
	s.ball(j)
	for _, o := range all {
		if outer, _ := rings(o); o != j && slices.Contains(j.Bearing.CupsHere, o.Name) && s.of[outer] != nil {
			s.ball(o)
		}
	}
}

// ball brings a ball bearing, whose rings do not come apart, to what it goes on first: shaft or housing, or both where they
// are together.
func (s *soFar) ball(j *plan.JointPlan) {
	outer, inner := rings(j)
	to := words.Either(j.Bearing.OnShaft, j.A.Instance().ID(), j.B.Instance().ID())
	s.unite(outer, inner)
	s.come(j, *s.of[outer], *s.of[to])
	s.unite(to, outer)
}

// stand brings the keys, motors, couplings and retaining rings of a joint, those before the two
// meet or after. What sits on a shaft comes in halves, or along it before or after what stands on its end; the way of
// a key or a ring is not looked at.
func (s *soFar) stand(j *plan.JointPlan, first bool) {
	for k := range s.m.Bodies {
		r := s.m.Roles[s.m.Bodies[k].ID]
		if !slices.Contains([]stand.Kind{stand.Standing, stand.Key, stand.Ring}, r.Kind) || r.Joint != j.Name ||
			first != (r.Kind == stand.Key || r.Kind == stand.Standing && s.m.Job.Loose[r.Loose].First) {
			continue
		}
		if fixed := slices.Clone(*s.of[r.On]); r.Kind == stand.Standing && !r.Runs {
			s.come(j, []int{k}, fixed)
		} else if r.Kind == stand.Standing && !s.m.overlap([]int{k}, fixed) {
			s.looks = append(s.looks, func() []plan.Problem { return s.m.comesRound(j, k, fixed) })
		}
		s.unite(r.On, s.m.Bodies[k].ID)
	}
}

// comesRound brings a coupling along its shaft, or in halves from the side, round its shaft and the motor's.
func (m *Machine) comesRound(j *plan.JointPlan, k int, fixed []int) (found []plan.Problem) {
	mv, on, first := m.pick([]int{k}), m.Roles[m.Bodies[k].ID].On, func(r stand.Role) bool { return m.Job.Loose[r.Loose].First }
	all := seq.Keep(m.pick(fixed), func(b assembly.Body) bool { // what comes with it may come after
		r := m.Roles[b.ID]
		return r.Kind != stand.Standing || r.Joint != j.Name || first(r) != first(m.Roles[mv[0].ID])
	})
	beside := seq.Keep(all, func(b assembly.Body) bool {
		return b.ID != on && m.Roles[b.ID].Kind != stand.Standing && m.Roles[b.ID].On != on
	})
	pose := mv[0].Pose
	for _, from := range []struct {
		fx    []assembly.Body
		backs []assembly.Vec
	}{{beside, []assembly.Vec{pose.X, pose.X.Reversed(), pose.Y, pose.Y.Reversed()}}, {all, []assembly.Vec{pose.Z, pose.Z.Reversed()}}} {
		for _, back := range from.backs {
			b, blocked := m.block(way(back, mv, from.fx), mv, from.fx)
			if !blocked {
				return nil
			}
			found = append(found, m.blocked(j, b, anotherOrder)...)
		}
	}
	return found[:1]
}

// come brings movers to what stands: along the axes of part A's frame, first
// its own, either way. One free line is enough.
func (s *soFar) come(j *plan.JointPlan, movers, fixed []int) {
	if s.m.overlap(movers, fixed) {
		return // said, and whatever it does on the way follows from that
	}
	s.looks = append(s.looks, func() []plan.Problem { return s.m.comes(j, movers, fixed) })
}

func (m *Machine) comes(j *plan.JointPlan, movers, fixed []int) []plan.Problem {
	pose := m.Poses[j.A.Instance().ID()]
	var meant []assembly.Vec
	if into, by := m.Meant(j); by {
		meant = []assembly.Vec{into.Reversed()}
	}
	mv, fx := m.pick(movers), m.pick(fixed)
	block, free := m.freeWay(pose, mv, fx, meant...)
	if free {
		return m.leadsIn(j, mv, fx)
	}
	own := func(of []int, e plan.JointEnd) []assembly.Body {
		return m.pick(seq.Keep(of, func(i int) bool { return m.Of[m.Bodies[i].ID] == e.Instance() }))
	}
	if first, alone := m.freeWay(pose, own(movers, j.A), own(fixed, j.B), meant...); !alone { // what the two do by themselves comes first
		block = first
	}
	return m.blocked(j, block, m.sooner(j, barred{fx, func(fixed []assembly.Body) bool {
		_, free := m.freeWay(pose, mv, fixed, meant...)
		return free
	}}))
}

// Meant is the way by which part A of a bolted joint is to come: by the face that it meets with; false of another joint.
func (m *Machine) Meant(j *plan.JointPlan) (into assembly.Vec, ok bool) {
	meet, z := m.Job.MeetingOf(m.Joint(j.Name)), m.Poses[j.A.Instance().ID()].Z
	return parts.At(meet.First, z, z.Reversed()), j.Kind == parts.BoltKind && meet.Set()
}

// leadsIn finds a shaft that can be pressed into its hub only with an end first at which neither has a chamfer.
func (m *Machine) leadsIn(j *plan.JointPlan, mv, fx []assembly.Body) []plan.Problem {
	if j.Kind != parts.PressKind || j.Press.Method != "press" || j.Press.LeadInOn == "" {
		return nil
	}
	a, first := m.Poses[j.A.Instance().ID()].Z, ""
	for _, back := range []assembly.Vec{a, a.Reversed()} {
		if w := way(back, mv, fx); w.Free(mv, fx, m.Allowed(mv)) {
			var led bool
			if first, led = m.leads(j, back); led {
				return nil
			}
		}
	}
	if first == "" {
		return nil
	}
	return []plan.Problem{m.Fault(j.Name, plan.LeadInBehind, plan.Named(j.A.Title), plan.Named(j.B.Title), plan.Named(first), plan.Named(words.Spaced(j.A.Feature+"-"+first)))}
}

// leads is the end of part A of a press that goes first where it comes by a way back, and tells whether one of the two has a chamfer there.
func (m *Machine) leads(j *plan.JointPlan, back assembly.Vec) (first string, led bool) {
	a, b := m.Poses[j.A.Instance().ID()].Z, m.Poses[j.B.Instance().ID()].Z
	drawn := func(e plan.JointEnd, edge string) bool {
		return slices.ContainsFunc(m.Model(e.Part).Part.Chamfers, func(c parts.Chamfer) bool { return c.Edge.Value == e.Feature+"-"+edge && c.For != "weld" })
	}
	ends := map[bool]string{true: "back", false: "front"}
	first = ends[back == a]
	return first, drawn(j.A, first) || drawn(j.B, ends[back.Dot(b) < 0])
}

// Led is the way by which part A of a press is to come, with the end first where there is a chamfer; false where there is one for
// both ends, or for none.
func (m *Machine) Led(j *plan.JointPlan) (into assembly.Vec, ok bool) {
	if j.Kind != parts.PressKind {
		return into, false
	}
	z := m.Poses[j.A.Instance().ID()].Z
	_, out := m.leads(j, z)
	_, in := m.leads(j, z.Reversed())
	return words.Either(out, z.Reversed(), z), out != in
}

// drive brings screws to their holes from their heads' side, over the length of
// their shanks: clear of the hole they go any way. The first that something is in
// the way of speaks for the others.
func (s *soFar) drive(j *plan.JointPlan, screws, fixed []int) {
	m := s.m
	s.looks = append(s.looks, func() []plan.Problem {
		fx := m.pick(fixed)
		for _, k := range screws {
			mv := m.pick([]int{k})
			mv[0].Solid = m.Shanks[mv[0].ID]
			w := way(mv[0].Pose.Z, mv, fx)
			w.FarMm = -mv[0].Solid.Box().Low.Z
			if free := func(fixed []assembly.Body) bool { return w.Free(mv, fixed, m.Allowed(mv)) }; !free(fx) {
				b, _ := m.block(w, mv, fx)
				return m.blocked(j, b, m.sooner(j, barred{fx, free}))
			}
		}
		return nil
	})
}
