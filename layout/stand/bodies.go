package stand

import (
	"iter"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// inf is further than anything lies.
var inf = math.Inf(1)

// bare is a job in which nothing stands yet.
func bare(job *parts.Job, models []*part.Model, joints []*plan.JointPlan) *Stand {
	m := &Stand{
		Of: map[string]parts.Instance{}, bodyOf: map[parts.Instance]int{}, Job: job, Models: models, Joints: joints,
		solids: map[string]*assembly.Solid{}, Shanks: map[string]*assembly.Solid{},
		looseOf: map[string][]assembly.Allowed{}, jointOf: map[string]*parts.Joint{}, modelOf: map[string]*part.Model{}, Roles: map[string]Role{},
		flanges: map[string]bool{},
	}
	if m.Up = assembly.AxisY; job.FrontUp {
		m.Up = assembly.AxisZ
	}
	for _, j := range job.Joints {
		m.jointOf[j.Name.Value] = j
	}
	for _, r := range models {
		m.modelOf[r.Part.Name.Value] = r
	}
	return m
}

// copies are those of all parts, in the job's order.
func (m *Stand) copies() (all []parts.Instance) {
	for _, r := range m.Models {
		for n := range r.Part.Quantity {
			all = append(all, parts.Instance{Part: r.Part.Name.Value, Copy: n + 1})
		}
	}
	return all
}

// Standing is the body of a copy of a part, nil where it has no place or comes off again.
func (m *Stand) Standing(i parts.Instance) *assembly.Body {
	if k, ok := m.bodyOf[i]; ok {
		return &m.Bodies[k]
	}
	return nil
}

// At is the body of a joint's end, nil where it has no place.
func (m *Stand) At(e plan.JointEnd) *assembly.Body { return m.Standing(e.Instance()) }

// EndsOf are the ids of the bodies of a joint's two parts.
func EndsOf(j *plan.JointPlan) []string { return []string{j.A.Instance().ID(), j.B.Instance().ID()} }

// solid is that of a part, made once.
func (m *Stand) solid(part string) *assembly.Solid {
	if m.solids[part] == nil {
		m.solids[part] = solid.Of(m.Model(part))
	}
	return m.solids[part]
}

// Model is a part worked out, by its name; nil for another.
func (m *Stand) Model(name string) *part.Model { return m.modelOf[name] }

// PartOf is the part that a body is a copy of, by its id; nil for what is bought.
func (m *Stand) PartOf(id string) *part.Model { return m.Model(m.Of[id].Part) }

// FormOf is the kind of that part; empty for what is bought.
func (m *Stand) FormOf(id string) (kind parts.Kind) {
	if r := m.PartOf(id); r != nil {
		kind = r.Part.Kind
	}
	return kind
}

// Joint is a joint of the job, by its name; nil for another.
func (m *Stand) Joint(name string) *parts.Joint { return m.jointOf[name] }

// OfKind are the joints of a kind that are worked out.
func (m *Stand) OfKind(kind parts.JointKind) []*plan.JointPlan { return plan.OfKind(m.Joints, kind) }

// Parts goes over the bodies of the job's parts, each with its model, without what is bought.
func (m *Stand) Parts() iter.Seq2[*assembly.Body, *part.Model] {
	return func(yield func(*assembly.Body, *part.Model) bool) {
		for b := range seq.Refs(m.Bodies) {
			if r := m.PartOf(b.ID); r != nil && !yield(b, r) {
				return
			}
		}
	}
}

// StepOf is the place of a joint among those that are worked out, from 0; -1 for another.
func (m *Stand) StepOf(name string) int {
	return slices.IndexFunc(m.Joints, func(j *plan.JointPlan) bool { return j.Name == name })
}
