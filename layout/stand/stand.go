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
	"cmp"
	"maps"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/seq"
)

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
	flanges map[string]bool        // joints that miss by what screws draw a flange of sheet up
}

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
	m.keepApart()
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

// place finds where every instance stands: those on an axis from the joints'
// plans, the others from the places of their joints and the saddles of tubes.
func (m *Stand) place() {
	var meets []assembly.Meet
	size := map[string]int{} // of the assembly that starts with an instance
	for _, j := range m.Joints {
		if len(j.Placed) == 0 {
			if meet, ok := m.MeetOf(j); ok {
				meets = append(meets, meet)
				meets = append(meets, m.stacked(j)...)
			}
			continue
		}
		first := &j.Placed[0]
		root := first.Instance().ID()
		size[root] = max(size[root], len(j.Placed))
		for p := range seq.Refs(j.Placed[1:]) {
			meets = append(meets, assembly.Meet{
				ID: j.Name, A: root, B: p.Instance().ID(), OnA: onAxis(first).Inverse().Of(onAxis(p)), OnB: assembly.Still,
			})
		}
	}
	meets = distinct(slices.Concat(meets, seq.Flat(m.Joints, m.Studs), m.lies()))
	m.Poses = map[string]assembly.Pose{}
	tied := map[string]bool{}
	for _, t := range meets {
		tied[t.A], tied[t.B] = true, true
	}
	var all []map[string]assembly.Pose
	for root := m.root(tied, size); root != ""; root = m.root(tied, size) {
		solved := assembly.Solve(root, meets)
		all = append(all, solved.At)
		maps.Copy(m.Poses, solved.At)
		m.undetermined(root, meets, solved)
	}
	if len(all) > 1 { // what no joint ties together stands well apart, the heaviest first
		slices.SortStableFunc(all, func(a, b map[string]assembly.Pose) int { return cmp.Compare(m.weighs(b), m.weighs(a)) })
	}
	for n, at := range all {
		for id, pose := range at {
			m.Poses[id] = assembly.Move(assembly.Vec{X: ApartMm * float64(n)}).Of(pose)
		}
	}
}

// root is the first part of the largest assembly that is not placed yet.
func (m *Stand) root(tied map[string]bool, size map[string]int) string {
	best, most := "", -1
	for _, i := range m.copies() {
		id := i.ID()
		_, done := m.Poses[id]
		if !done && tied[id] && size[id] > most {
			best, most = id, size[id]
		}
	}
	return best
}

// weighs is the mass in kg of the parts that are placed so, as far as it is known.
func (m *Stand) weighs(at map[string]assembly.Pose) float64 {
	return seq.Sum(m.copies(), func(i parts.Instance) float64 {
		if _, in := at[i.ID()]; !in {
			return 0
		}
		return m.Model(i.Part).Out.MassKg
	})
}
