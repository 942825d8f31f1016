package machine

import (
	"slices"
	"sort"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// barred is what cannot come to its place, or be reached there, among fixed bodies; free tells whether it can among fewer.
type barred struct {
	fixed []assembly.Body
	free  func(fixed []assembly.Body) bool
}

// without tells whether it can among those of its bodies that are there, where that are fewer.
func (w barred) without(there func(id string) bool) bool {
	few := seq.Keep(w.fixed, func(b assembly.Body) bool { return there(b.ID) })
	return len(few) < len(w.fixed) && w.free(few)
}

var anotherOrder = plan.Named("another order of the joints")

// sooner is the order in which a joint is free: made before the fewest of those that come before it now, none of which the job or the
// trade asks for first. Where none is it says only that the order might be another.
func (m *Machine) sooner(j *plan.JointPlan, w barred) plan.Arg {
	n, s := m.StepOf(j.Name), m.Stage()
	asked := m.asked(n)
	free := func(later []int) bool {
		wait := m.waiting(later)
		there := s.tied(func(k int) bool { return k < n && !wait[k] }, j.A.Instance().ID(), j.B.Instance().ID())
		return w.without(func(id string) bool { return there[id] || s.First(id) == n })
	}
	if said := m.saidFirst(j, free); said != "" {
		return plan.Named("without " + said)
	}
	carried := slices.ContainsFunc(m.Joints[:n+1], func(o *plan.JointPlan) bool { return o.Kind == parts.BearingKind })
	var later []int
	for k := range n {
		if !asked[k] && !(carried && m.Joints[k].Kind == parts.WeldKind) { // no welding once bearings are in. Common practice, no source
			later = append(later, k)
		}
	}
	if !free(later) {
		return anotherOrder
	}
	later = later[sort.Search(len(later), func(k int) bool { return !free(later[k:]) })-1:]
	for i := 0; i < len(later); {
		if but := slices.Delete(slices.Clone(later), i, i+1); free(but) {
			later = but
		} else {
			i++
		}
	}
	names := strings.Join(seq.Map(later, func(k int) string { return m.Joints[k].Name }), ", ")
	if len(later) > 1 {
		names = "[" + names + "]"
	}
	return plan.Named("before: " + names + " at " + j.Name)
}

// saidFirst is the word of the job that has a joint made before another, or before one which that waits for, that is free if all joints of its part come later; empty where
// none has.
func (m *Machine) saidFirst(j *plan.JointPlan, free func(later []int) bool) string {
	n := m.StepOf(j.Name)
	asked := m.asked(n)
	for k, o := range slices.Backward(m.Joints[:n]) {
		before := seq.Keep(m.Joint(o.Name).Before, func(t parts.Text) bool { return t.Value == j.Name || asked[m.StepOf(t.Value)] })
		after := slices.ContainsFunc(m.Joint(j.Name).After, func(t parts.Text) bool { return t.Value == o.Name })
		if len(before) == 0 && !after {
			continue
		}
		var later []int
		for i, other := range m.Joints[:n] {
			if i == k || slices.Contains(stand.EndsOf(other), o.A.Instance().ID()) {
				later = append(later, i)
			}
		}
		switch {
		case !free(later):
		case after:
			return "after: " + o.Name + " at " + j.Name
		default:
			return "before: " + before[0].Value + " at " + o.Name
		}
	}
	return ""
}

// laidSooner is the same of what lies on a part: first at its own joint, or with an earlier one of that part.
func (m *Machine) laidSooner(j *plan.JointPlan, l *stand.Laid, w barred) plan.Arg {
	s, on, n := m.Stage(), l.On.ID(), m.StepOf(j.Name)
	for k := n; k >= 0; k-- {
		there, own := s.Together(k, on), k == n && !l.Loose.First || k > 0 && slices.Contains(s.Ends[k-1], on)
		switch {
		case !own || !w.without(func(id string) bool { return there[id] }):
		case k == n && !l.Loose.First:
			return plan.Named("first: yes at " + m.Title(l.ID()))
		default:
			return plan.Named("after: " + m.Joints[k-1].Name + " at " + m.Title(l.ID()))
		}
	}
	return anotherOrder
}

// asked are the joints, by their places, that the job or the trade wants before one, and so on.
func (m *Machine) asked(n int) map[int]bool {
	out := map[int]bool{}
	for next := []int{n}; len(next) > 0; next = next[1:] {
		for _, why := range m.Joints[next[0]].Why {
			if !out[why.Step-1] {
				out[why.Step-1], next = true, append(next, why.Step-1)
			}
		}
	}
	return out
}

// waiting are some joints, by their places, and those that come after one of them, and so on: what is asked for has a place before.
func (m *Machine) waiting(later []int) map[int]bool {
	out := map[int]bool{}
	for n, j := range m.Joints {
		out[n] = slices.Contains(later, n) || slices.ContainsFunc(j.Why, func(why plan.Reason) bool { return out[why.Step-1] })
	}
	return out
}
