package machine

import (
	"cmp"
	"slices"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// floats says in one note which parts are in no joint, and of each joint that
// gives its part no place what it lacks, unless other joints have placed both.
func (m *Machine) floats() (found []plan.Problem) {
	var names []string
	for _, i := range m.Floating {
		if m.Job.ByHand(i.Part) == nil && !m.joined(i) {
			names = seq.Add(names, m.Model(i.Part).Out.Title)
		}
	}
	if len(names) > 0 && len(m.Bodies) > 0 {
		found = append(found, m.Fault("", plan.PartsFloat, plan.Named(strings.Join(names, ", "))))
	}
	floating := func(e plan.JointEnd) bool { return slices.Contains(m.Floating, e.Instance()) }
	for _, j := range m.Joints {
		if _, ok := m.MeetOf(j); len(j.Placed) == 0 && !ok && (floating(j.A) || floating(j.B)) {
			found = append(found, m.Fault(j.Name, lacks(m.Model(j.A.Part).Part, m.Model(j.B.Part).Part), plan.Named(j.A.Title), plan.Named(j.B.Title)))
		}
	}
	return found
}

// joined tells whether a joint names an instance, worked out or not.
func (m *Machine) joined(i parts.Instance) bool {
	return slices.ContainsFunc(m.Job.Joints, func(j *parts.Joint) bool {
		return j.Stud() == i.Part || j.Some(func(r parts.JointRef) bool { return i == r.Instance() })
	})
}

// between names the joint of two bodies, or else of one of them.
func (m *Machine) between(a, b string) string {
	best, most := "", 0
	for _, j := range m.Joints {
		if n := m.names(j.Name, a, b); n > most {
			best, most = j.Name, n
		}
	}
	return best
}

// names counts those of some bodies that come with a joint.
func (m *Machine) names(joint string, bodies ...string) int {
	ids := seq.Map(m.Joint(joint).Refs(), func(ref parts.JointRef) string { return ref.Instance().ID() })
	return len(seq.Keep(bodies, func(id string) bool { return slices.Contains(ids, id) || m.Roles[id].Joint == joint }))
}

// meet names the joint of two bodies, or else that at which they come together, and where it or the
// loose one of them stands in the job.
func (m *Machine) meet(a, b string) (joint string, pos parts.Pos) {
	joint = m.between(a, b)
	if joint == "" || m.names(joint, a, b) < 2 {
		st := m.Stage()
		if n := slices.IndexFunc(m.Joints, func(j *plan.JointPlan) bool { return st.Together(j.N, a)[b] }); n >= 0 {
			joint = m.Joints[n].Name
		}
	}
	return joint, m.posAt(joint, a, b)
}

// posAt is where two bodies stand in the job: where it lays or stands one of them, at their
// joint, or at the part that the first stands in.
func (m *Machine) posAt(joint string, ids ...string) parts.Pos {
	for i := range m.Job.Loose {
		e := &m.Job.Loose[i]
		if slices.ContainsFunc(ids, func(id string) bool {
			r := m.Roles[id]
			return r.Kind == stand.Standing && r.Loose == i || e.Part.Value != "" && m.Of[id].Part == e.Part.Value
		}) {
			return cmp.Or(e.Part.Pos, e.Pos)
		}
	}
	if on := m.Model(m.Of[m.Roles[ids[0]].On].Part); joint == "" && on != nil { // what is bought stands in a part
		return on.Part.Name.Pos
	}
	return m.PosOf(joint)
}

// lacks is what it is that nothing says where one of two parts stands on the other: of a flight
// neither what it conveys nor its room is looked at.
func lacks(pair ...*parts.Part) plan.ProblemKind {
	if slices.ContainsFunc(pair, func(p *parts.Part) bool { return p.Kind == parts.FlightPart }) {
		return plan.FlightLacking
	}
	return plan.PlaceLacking
}

// pressed tells whether a joint presses a body into another: its bores are those of a bush.
func (m *Machine) pressed(id string) bool {
	return slices.ContainsFunc(m.OfKind(parts.PressKind), func(j *plan.JointPlan) bool { return j.A.Instance().ID() == id })
}
