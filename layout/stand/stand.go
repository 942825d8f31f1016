// Package stand puts the parts of a job in their places: every copy that joints
// place, and what is bought (fasteners, bearings, seals, keys, rings, motors and
// couplings) in its own. It answers who stands where and what is called what, and
// what the joints need of that (Seams); what is wrong in the standing machine, and
// which ways things come, package machine finds.
//
// In go a checked job, its parts worked out and its joints; out come bodies of
// package assembly, in millimetres, and as problems the places that are open, do not
// meet or are not known. The frame is that of the first part of the heaviest
// assembly: x right and y up to TOP in its front view, z out of its front.
//
// It follows no standard of its own: sizes of what is bought are those of packages
// bolts, grooves, keys and measured, which name theirs; ISO 355 for the cups of bearings.
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

// Stand is the job in space. It is made by Of, and only read after.
type Stand struct {
	// Bodies are what is placed, in the job's order of parts, then what is
	// bought, in the order of the joints.
	Bodies []assembly.Body
	// Of tells, for each body of a part, which part and copy it is.
	Of map[string]parts.Instance
	// Floating are the instances that no joint places.
	Floating []parts.Instance
	// Up is the way up where the machine stands.
	Up assembly.Vec
	// Problems are what is wrong with the places.
	Problems []plan.Problem
	// Job, Models and Joints are what Of was given; Joints are in the order to make them.
	Job    *parts.Job
	Models []*part.Model
	Joints []*plan.JointPlan
	// Poses are where instances stand, by their ids.
	Poses map[string]assembly.Pose
	// Shanks are screws without their nuts, by their ids.
	Shanks map[string]*assembly.Solid
	// Loose is what may lie in one another, and how deep.
	Loose []assembly.Allowed
	// Passing are the bodies that come off again in the step with which they come.
	Passing []assembly.Body
	// Roles are those of what is bought, by its ids.
	Roles map[string]Role

	solids  map[string]*assembly.Solid    // of each part
	looseOf map[string][]assembly.Allowed // by the bodies that they name
	jointOf map[string]*parts.Joint
	modelOf map[string]*part.Model
	bodyOf  map[parts.Instance]int // among Bodies
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

// Of stands a job in space. The joints are those of its plan.
func Of(job *parts.Job, models []*part.Model, joints []*plan.JointPlan) *Stand {
	m := bare(job, models, joints)
	m.place()
	for _, i := range m.copies() {
		pose, ok := m.Poses[i.ID()]
		if !ok {
			m.Floating = append(m.Floating, i)
			continue
		}
		b := assembly.Body{ID: i.ID(), Solid: m.solid(i.Part), Pose: pose, DensityKgM3: m.Model(i.Part).DensityKgM3()}
		m.Of[b.ID] = i
		if e := m.Job.ByHand(i.Part); e != nil && e.Off { // it comes off again in its step
			m.Passing = append(m.Passing, b)
			continue
		}
		m.bodyOf[i] = len(m.Bodies)
		m.Bodies = append(m.Bodies, b)
	}
	for _, j := range joints {
		m.bought(j)
	}
	m.seals()
	m.stood()
	m.keys()
	m.keepers()
	m.screwed()
	m.driven()
	return m
}

// bare is a job in which nothing stands yet.
func bare(job *parts.Job, models []*part.Model, joints []*plan.JointPlan) *Stand {
	m := &Stand{
		Of: map[string]parts.Instance{}, bodyOf: map[parts.Instance]int{}, Job: job, Models: models, Joints: joints,
		solids: map[string]*assembly.Solid{}, Shanks: map[string]*assembly.Solid{},
		looseOf: map[string][]assembly.Allowed{}, jointOf: map[string]*parts.Joint{}, modelOf: map[string]*part.Model{}, Roles: map[string]Role{},
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
