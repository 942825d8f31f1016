// Package machine stands the parts of a job in space: a solid for every part
// instance and for what is bought, a place for each from the joints, and what
// that shows: parts in one another, parts that nothing places, how the machine
// stands.
//
// In go a checked job, its parts worked out and its joints; out come bodies of
// package assembly, in millimetres, and problems as values. The frame is that
// of the first part of the heaviest assembly: x right and y up to TOP in its
// front view, z out of its front.
//
// It follows no standard of its own: sizes of what is bought are those of packages
// bolts, grooves, keys and measured, which name theirs; ISO 355 for the cups of bearings.
package machine

import (
	"iter"
	"math"
	"slices"
	"strconv"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// inf is further than anything lies.
var inf = math.Inf(1)

// Machine is the job in space.
type Machine struct {
	// Bodies are what is placed, in the job's order of parts, then what is
	// bought, in the order of the joints.
	Bodies []assembly.Body
	// Of tells, for each body of a part, which part and copy it is.
	Of map[string]Instance
	// Floating are the instances that no joint places.
	Floating []Instance
	// Up is the way up where the machine stands.
	Up       assembly.Vec
	Problems []plan.Problem

	job         *parts.Job
	models      []*part.Model
	joints      []*plan.JointPlan
	poses       map[string]assembly.Pose
	solids      map[string]*assembly.Solid // of each part
	shanks      map[string]*assembly.Solid // of each screw, without its nut
	loose       []assembly.Allowed
	looseOf     map[string][]assembly.Allowed // by the bodies that they name
	jointOf     map[string]*parts.Joint
	modelOf     map[string]*part.Model
	bodyOf      map[Instance]int   // among Bodies
	passing     []assembly.Body    // what comes off again in the step with which it comes
	ways        [][]plan.Trap      // of each joint
	overlapping map[[2]string]bool // bodies that lie in one another, either way round
	roles       map[string]role    // of each body that is bought
}

// Instance is one copy of a part.
type Instance struct {
	Part string
	Copy int // from 1
}

// id names an instance among the bodies.
func (i Instance) id() string { return i.Part + "#" + strconv.Itoa(i.Copy) }

// instance is what a joint ends in.
func instance(e plan.JointEnd) Instance { return Instance{e.Part, e.Copy} }

// named is what the job names.
func named(ref parts.JointRef) Instance { return Instance{ref.Part, ref.Copy} }

// at is the body of a joint's end, nil where it has no place.
func (m *Machine) at(e plan.JointEnd) *assembly.Body { return m.standing(instance(e)) }

// endsOf are the bodies of a joint's two parts.
func endsOf(j *plan.JointPlan) []string { return []string{instance(j.A).id(), instance(j.B).id()} }

// Of stands a job in space. The joints are those of its plan.
func Of(job *parts.Job, models []*part.Model, joints []*plan.JointPlan) *Machine {
	m := bare(job, models, joints)
	m.place()
	for _, r := range models {
		name := r.Part.Name.Value
		for n := range r.Part.Quantity {
			i := Instance{name, n + 1}
			pose, ok := m.poses[i.id()]
			if !ok {
				m.Floating = append(m.Floating, i)
				continue
			}
			b := assembly.Body{ID: i.id(), Solid: m.solid(name), Pose: pose}
			if r.Material != nil {
				b.DensityKgM3 = r.Material.DensityKgM3
			}
			if m.Of[b.ID] = i; m.off(name) {
				m.passing = append(m.passing, b)
				continue
			}
			m.bodyOf[i] = len(m.Bodies)
			m.Bodies = append(m.Bodies, b)
		}
	}
	for _, j := range joints {
		m.bought(j)
	}
	m.seals()
	m.stood()
	m.keys()
	m.keepers()
	m.screwed()
	return m
}

// bare is a job in which nothing stands yet.
func bare(job *parts.Job, models []*part.Model, joints []*plan.JointPlan) *Machine {
	m := &Machine{
		Of: map[string]Instance{}, bodyOf: map[Instance]int{}, job: job, models: models, joints: joints,
		solids: map[string]*assembly.Solid{}, shanks: map[string]*assembly.Solid{}, overlapping: map[[2]string]bool{},
		looseOf: map[string][]assembly.Allowed{}, jointOf: map[string]*parts.Joint{}, modelOf: map[string]*part.Model{}, roles: map[string]role{},
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

// solid is that of a part, made once.
func (m *Machine) solid(part string) *assembly.Solid {
	if m.solids[part] == nil {
		m.solids[part] = solid(m.model(part))
	}
	return m.solids[part]
}

func (m *Machine) model(name string) *part.Model { return m.modelOf[name] }

// partOf is the part that a body is a copy of, nil for what is bought; formOf its kind.
func (m *Machine) partOf(id string) *part.Model { return m.model(m.Of[id].Part) }
func (m *Machine) formOf(id string) (kind parts.Kind) {
	if r := m.partOf(id); r != nil {
		kind = r.Part.Kind
	}
	return kind
}

func (m *Machine) joint(name string) *parts.Joint { return m.jointOf[name] }

// ofKind are the joints of a kind that are worked out.
func (m *Machine) ofKind(kind parts.JointKind) []*plan.JointPlan { return plan.OfKind(m.joints, kind) }

// parts goes over the bodies of the job's parts, each with its model, without what is bought.
func (m *Machine) parts() iter.Seq2[*assembly.Body, *part.Model] {
	return func(yield func(*assembly.Body, *part.Model) bool) {
		for b := range seq.Refs(m.Bodies) {
			if r := m.partOf(b.ID); r != nil && !yield(b, r) {
				return
			}
		}
	}
}

// stepOf is the place of a joint among those that are worked out, from 0; -1 for another.
func (m *Machine) stepOf(name string) int {
	return slices.IndexFunc(m.joints, func(j *plan.JointPlan) bool { return j.Name == name })
}
