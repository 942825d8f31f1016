package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// shutIn finds screws whose heads lie inside a tube bar that is none of their joint. The
// first of a joint speaks for the others.
func (m *Machine) shutIn() (found []plan.Problem) {
	var tubes []assembly.Body
	for b, r := range m.Parts() {
		if r.Part.Tubular() {
			tubes = append(tubes, *b)
		}
	}
	for _, j := range m.Joints {
		if p, ok := m.headIn(j, tubes); ok {
			found = append(found, p)
		}
	}
	return found
}

func (m *Machine) headIn(j *plan.JointPlan, tubes []assembly.Body) (p plan.Problem, ok bool) {
	for s := range seq.Refs(m.Bodies) {
		for b := range seq.Refs(tubes) {
			if of := m.Of[b.ID]; of.Part != j.A.Part && of.Part != j.B.Part && m.IsScrew(s.ID, j) && headBoxed(b, s) {
				return m.Fault(j.Name, plan.HeadShutIn, plan.Named(words.Spaced(j.Name)), m.Named(b.ID), stand.Rounded(fromEnds(b, topOf(s)), 1)), true
			}
		}
	}
	return p, false
}

// Hooded lists the folded parts that later joints bring, in whose box heads of a joint lie: guards
// and hoods, which come off before a hand reaches them.
func (m *Machine) Hooded(j *plan.JointPlan) (titles []string) {
	for b, r := range m.Parts() {
		if r.Part.Kind != parts.Folded || slices.ContainsFunc(m.Joints[:j.N], func(o *plan.JointPlan) bool { return slices.Contains(stand.EndsOf(o), b.ID) }) {
			continue
		}
		if slices.ContainsFunc(m.Bodies, func(s assembly.Body) bool {
			return m.IsScrew(s.ID, j) && headBoxed(b, &s)
		}) {
			titles = append(titles, m.Title(b.ID))
		}
	}
	return titles
}

// topOf is the top of the head of a screw, in the machine; headBoxed tells whether that head lies in the box of a body.
func topOf(screw *assembly.Body) assembly.Vec {
	return screw.Pose.Apply(assembly.Vec{Z: screw.Solid.Box().High.Z})
}

func headBoxed(b, screw *assembly.Body) bool {
	return boxed(b, screw.Pose.At) && boxed(b, topOf(screw))
}

// boxed tells whether a place lies in the box that a body fills in its own frame, its
// faces with it.
func boxed(b *assembly.Body, at assembly.Vec) bool {
	q := b.Pose.Inverse().Apply(at)
	return b.Solid.Box().Meets(assembly.Box{Low: q, High: q}, stand.Level)
}

// fromEnds is how far a place in a bar, which lies along x, lies from its farther end.
func fromEnds(b *assembly.Body, at assembly.Vec) float64 {
	q, box := b.Pose.Inverse().Apply(at), b.Solid.Box()
	return math.Max(q.X-box.Low.X, box.High.X-q.X)
}
