package machine

import (
	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// soFar is what is joined at a step: of each body the group it belongs to.
type soFar struct {
	m      *Machine
	bodies map[string]int
	of     map[string]*[]int
	looks  []look
}

func (s *soFar) unite(a, b string) {
	x, y := s.of[a], s.of[b]
	if x == y || x == nil || y == nil {
		return
	}
	*x = append(*x, *y...)
	for _, i := range *y {
		s.of[s.m.Bodies[i].ID] = x
	}
}

// goWith are the bodies that lie on part A when it comes: its studs, where none are screwed into
// part B, and what is clamped with it.
func (m *Machine) goWith(j *plan.JointPlan) (out []string) {
	for _, t := range m.Studs(j) {
		if j.Bolt.StudStandsMm == 0 {
			out = append(out, t.B)
		}
	}
	return append(out, seq.Map(m.Joint(j.Name).Clamped(), func(ref parts.JointRef) string { return ref.Instance().ID() })...)
}

func (m *Machine) pick(list []int) []assembly.Body {
	return seq.Map(list, func(i int) assembly.Body { return m.Bodies[i] })
}
