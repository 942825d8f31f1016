package machine

import (
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Stage knows what stands at each step.
type Stage struct {
	*Machine
	BodyOf   map[string]*assembly.Body
	Lowest   int // of Bodies, where the machine stands on it
	HasFloor bool
	ItemOf   map[string]int     // of a part in the plan, from 1
	Ends     [][]string         // of each joint: all bodies it ties together
	Drive    []string           // motors and couplings
	ties     map[string][]tie   // of each body
	News     [][]*assembly.Body // for each joint: the loose parts that come with it
}

// OnFloor tells whether a body hangs together with what the machine stands on after the first n joints.
func (s *Stage) OnFloor(n int, id string) bool {
	return s.HasFloor && s.Together(n, id)[s.Bodies[s.Lowest].ID]
}

// BodiesOf are the bodies that hang together with one after the first n joints.
func (s *Stage) BodiesOf(n int, id string) []assembly.Body {
	in := s.Together(n, id)
	return seq.Keep(s.Bodies, func(b assembly.Body) bool { return in[b.ID] })
}

// tie is what a body hangs together with after the first n joints: at a joint, as a loose part or what
// one lies on, or as what rides on it from the start.
type tie struct {
	n    int
	id   string
	lies bool // it lies on it, or the other way round, and no joint holds it there
}

// Stage is what stands at each step, worked out once.
func (m *Machine) Stage() *Stage {
	m.staged.Do(func() { m.stage = newStage(m) })
	return m.stage
}

// newStage is that of a machine that stands.
func newStage(m *Machine) *Stage {
	s := &Stage{Machine: m, BodyOf: map[string]*assembly.Body{}, ItemOf: map[string]int{}, ties: map[string][]tie{}}
	s.Lowest, s.HasFloor = m.floor()
	for i, r := range m.Models {
		s.ItemOf[r.Part.Name.Value] = i + 1
	}
	bought := map[string][]string{} // by the names of their joints
	for i := range m.Bodies {
		id := m.Bodies[i].ID
		s.BodyOf[id] = &m.Bodies[i]
		r := m.Roles[id]
		if n := m.StepOf(r.Joint); r.On != "" && n >= 0 {
			s.tie(r.On, id, tie{n: n})
		}
		bought[r.Joint] = append(bought[r.Joint], id)
		if r.Kind == stand.Standing {
			s.Drive = append(s.Drive, id)
		}
		if m.Rides(id) {
			s.ties[r.On] = append(s.ties[r.On], tie{n: -1, id: id})
		}
	}
	for n, j := range m.Joints {
		ends := stand.EndsOf(j)
		ends = append(ends, seq.Map(m.Studs(j), func(t assembly.Meet) string { return t.B })...)
		ends = append(ends, bought[j.Name]...)
		ends = append(ends, seq.Map(m.Joint(j.Name).Clamped(), func(ref parts.JointRef) string { return ref.Instance().ID() })...)
		s.Ends = append(s.Ends, ends)
		for _, e := range ends {
			s.tie(ends[0], e, tie{n: n})
		}
	}
	s.News = make([][]*assembly.Body, len(m.Joints))
	for i := range m.Passing {
		s.BodyOf[m.Passing[i].ID] = &m.Passing[i]
	}
	for _, l := range m.Laid() {
		n := m.StepOf(l.Loose.After.Value)
		b := s.BodyOf[l.ID()]
		if n < 0 || b == nil {
			continue
		}
		if s.News[n] = append(s.News[n], b); !l.Loose.Off {
			s.tie(l.On.ID(), l.ID(), tie{n: n, lies: true})
		}
	}
	return s
}

// floor is the lowest body; ok is false where it is no level plate and
// no foot of a frame that the machine could stand on: which way is up is not known then.
func (m *Machine) floor() (lowest int, ok bool) {
	lowest = -1
	for i := range m.Bodies {
		if b := &m.Bodies[i]; stand.StandsIn(b) == 0 && !m.hangs(b) && (lowest < 0 || m.low(b) < m.low(&m.Bodies[lowest])) {
			lowest = i
		}
	}
	if lowest < 0 {
		return lowest, false
	}
	r := m.PartOf(m.Bodies[lowest].ID)
	return lowest, r != nil && m.carries(&m.Bodies[lowest], r.Part)
}

// low is how high a body reaches down.
func (m *Machine) low(b *assembly.Body) float64 { return b.Box().Low.Dot(m.Up) }

// hangs tells whether a body is a loose part or bought, on which no machine stands.
func (m *Machine) hangs(b *assembly.Body) bool {
	return m.Of[b.ID].Part == "" || m.Job.ByHand(m.Of[b.ID].Part) != nil
}

// carries tells whether a machine may stand on its lowest part: a plate that lies flat, or
// bars of a frame, of which more than one reach so low.
func (m *Machine) carries(b *assembly.Body, p *parts.Part) bool {
	if p.Kind != parts.BarPart {
		return p.Flat() && geom.Alike(b.Pose.Z.Cross(m.Up).Len(), 0)
	}
	feet := 0
	for o := range seq.Refs(m.Bodies) {
		if !m.hangs(o) && m.low(o) < m.low(b)+StandsMm {
			feet++
		}
	}
	return feet > 1
}

// tie ties two bodies together, each way as it is.
func (s *Stage) tie(a, b string, is tie) {
	for from, to := range map[string]string{a: b, b: a} {
		is.id = to
		s.ties[from] = append(s.ties[from], is)
	}
}

// First is the place among the joints, from 0, of the first that ties a body to another; -1 where none does.
func (s *Stage) First(id string) int {
	return slices.IndexFunc(s.Ends, func(ids []string) bool { return slices.Contains(ids, id) })
}

// Together are the ids of the bodies that hang together with one after the first n joints.
func (s *Stage) Together(n int, id string) map[string]bool {
	return s.tied(func(k int) bool { return k < n }, id)
}

// tied are the ids of the bodies that hang together with some once joints are made, by their places.
func (s *Stage) tied(made func(n int) bool, ids ...string) map[string]bool {
	in := map[string]bool{}
	for _, id := range ids {
		in[id] = true
	}
	for next := slices.Clone(ids); len(next) > 0; next = next[1:] {
		for _, t := range s.ties[next[0]] {
			if made(t.n) && !in[t.id] {
				in[t.id] = true
				next = append(next, t.id)
			}
		}
	}
	return in
}
