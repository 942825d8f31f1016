package machine

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// What moves is to be stopped within the larger of stopMm and a part of its way after it.
// Common practice, no source.
const stopMm, stopShare = 6.0, 0.1

// inUse moves what the job says moves, with what goes with it, and finds what that strikes on
// its way, and an end of it that nothing stops.
func (m *Machine) inUse() (found []plan.Problem) {
	for e := range seq.Refs(m.Job.Loose) {
		if b := m.Standing(parts.Instance{Part: e.Part.Value, Copy: 1}); e.Travels != nil && b != nil {
			found = append(found, m.travels(e, b.Pose.Z, e.Travels.Front.Mm, parts.Front)...)
			found = append(found, m.travels(e, b.Pose.Z.Reversed(), e.Travels.Back.Mm, parts.Back)...)
		}
	}
	return found
}

// travels is what a part meets on its way to one end.
func (m *Machine) travels(e *parts.Loose, along assembly.Vec, mm float64, to parts.Face) []plan.Problem {
	var mv, fx []assembly.Body
	for _, b := range m.Bodies {
		of := m.Of[b.ID].Part
		if of == "" {
			of = m.borneBy(m.Roles[b.ID])
		}
		if of == e.Part.Value || slices.ContainsFunc(e.Travels.With, func(t parts.Text) bool { return t.Value == of }) {
			mv = append(mv, b)
		} else {
			fx = append(fx, b)
		}
	}
	w := way(along, mv, fx)
	w.FarMm = mm + max(stopMm, stopShare*(e.Travels.Front.Mm+e.Travels.Back.Mm))
	first := m.soonest(w, mv, fx)
	way := []plan.Arg{plan.Of(plan.Mm, mm), plan.Named(string(to))}
	switch {
	case first.LastMm < mm-overlapMm:
		return []plan.Problem{stand.Problem(e.After.Value, plan.TravelStrikes, e.Travels.Pos,
			append([]plan.Arg{m.Named(first.Mover), m.Named(first.Fixed), m.Rounded(first.LastMm, 1)}, way...)...)}
	case first.LastMm == inf:
		runs := stand.Problem(e.After.Value, plan.TravelRuns, e.Travels.Pos, append([]plan.Arg{m.Named(parts.Instance{Part: e.Part.Value, Copy: 1}.ID()), plan.Of(plan.Mm, w.FarMm-mm)}, way...)...)
		runs.Feature = string(to) // who accepts it at one end has not at the other
		return []plan.Problem{runs}
	}
	return nil
}

// borneBy is the part that something bought goes with: what it is on, of a bearing the housing of the one ring and the shaft
// of the other, of screws, nuts and keys the first of their joint.
func (m *Machine) borneBy(r stand.Role) string {
	j := m.Joint(r.Joint)
	switch {
	case r.On != "":
		return m.Of[r.On].Part
	case j == nil:
		return ""
	}
	first, second := j.Ends()
	if r.Kind == stand.Cup {
		return second.Part
	}
	return first.Part
}

// soonest is what movers meet first as they leave their place on a way; at infinity where nothing is.
func (m *Machine) soonest(w assembly.Way, mv, fx []assembly.Body) assembly.Block {
	first := assembly.Block{LastMm: inf}
	for b := range w.Blocks(mv, fx, m.Allowed(mv)) {
		if b.LastMm < first.LastMm {
			first = b
		}
	}
	return first
}

// shift is a way that slots let part A of a joint go on part B.
type shift struct {
	*plan.Shift
	of    *plan.JointPlan
	along assembly.Vec
	ofA   bool // the slots are A's, and the bolts stay with B
}

// shifts are those of a joint that stands.
func (m *Machine) shifts(j *plan.JointPlan) (out []shift) {
	for k := range j.Bolt.Shifts {
		e, g := j.A, m.Model(j.A.Part).GroupNamed(j.A.Feature)
		half, _, slot := g.SlotMm()
		if k > 0 || !slot { // as the joint lists them
			e, g = j.B, m.Model(j.B.Part).GroupNamed(j.B.Feature)
			half, _, _ = g.SlotMm()
		}
		half = g.SeenFront([]plan.XY{half})[0]
		if pose, ok := m.Poses[e.Instance().ID()]; ok {
			along := pose.Of(solid.Wall(m.Model(e.Part), g)).Turn(assembly.Vec{X: half.XMm, Y: half.YMm}).Unit()
			out = append(out, shift{&j.Bolt.Shifts[k], j, along, e.Instance() == j.A.Instance()})
		}
	}
	return out
}

// shiftEnd is where what the slots of a joint let be set strikes.
type shiftEnd struct {
	joint, mover, fixed string
	lastMm              float64
}

// shifted sets what is bolted by slots off along them, with all that hangs on it, as far as the joint wants it to be
// set, else as its slots go, and finds what it strikes before that. What other joints hold to both is not set.
func (m *Machine) shifted() (found []plan.Problem) {
	all := seq.Flat(m.OfKind(parts.BoltKind), m.shifts)
	said := map[shiftEnd]bool{} // that it strikes the same both ways is said once
	for _, s := range all {
		free := map[string]bool{} // joints that let go that way
		for _, o := range all {
			if math.Abs(o.along.Dot(s.along)) > 1-stand.Level {
				free[o.of.Name] = true
			}
		}
		m.onlyParting(s, free)
		mv, fx := m.parted(s, free)
		want := m.Joint(s.of.Name).Bolt.Adjust.Mm
		if through, held := m.heldBeside(s, free); held && want > 0 && !slices.ContainsFunc(found, func(p plan.Problem) bool { return p.Kind == plan.ShiftHeld && p.Joint == s.of.Name }) {
			found = append(found, m.Fault(s.of.Name, plan.ShiftHeld, m.Named(s.of.A.Instance().ID()), m.Named(s.of.B.Instance().ID()), plan.Of(plan.Mm, want), plan.Named(s.Of), plan.Named(through)))
		}
		for _, to := range []struct {
			along assembly.Vec
			mm    float64
		}{{s.along, s.Mm}, {s.along.Reversed(), s.BackMm}} {
			w := way(to.along, mv, fx)
			w.FarMm = to.mm
			if want > 0 {
				w.FarMm = min(w.FarMm, want)
			}
			first := m.soonest(w, mv, fx)
			end := shiftEnd{s.of.Name, first.Mover, first.Fixed, geom.Clean(first.LastMm)}
			if first.LastMm == inf || said[end] || m.overlapping[[2]string{first.Mover, first.Fixed}] {
				continue
			}
			said[end] = true
			kind := words.Either(want == 0, plan.ShiftStops, plan.ShiftStrikes)
			found = append(found, m.Fault(s.of.Name, kind, m.Named(first.Mover), m.Named(first.Fixed), m.Rounded(first.LastMm, 1), plan.Of(plan.Mm, w.FarMm), plan.Named(s.Of)))
		}
	}
	return found
}

// onlyParting leaves of the joints that let go those without which part A of a joint hangs on its part B: what else has slots that way stays
// as it is set.
func (m *Machine) onlyParting(s shift, free map[string]bool) {
	apart := func() bool {
		return !m.letGo(free).Together(len(m.Joints), s.of.A.Instance().ID())[s.of.B.Instance().ID()]
	}
	if !apart() {
		return
	}
	for _, name := range slices.Sorted(maps.Keys(free)) {
		if name == s.of.Name {
			continue
		}
		if delete(free, name); !apart() {
			free[name] = true
		}
	}
}

// heldBeside tells whether part A of a joint hangs on its part B by other made parts all the same when some joints let go, and by which, by the
// shortest way: a shaft that goes along in its bearings holds nothing that way.
func (m *Machine) heldBeside(s shift, free map[string]bool) (through string, held bool) {
	at, from, to := m.letGo(free), s.of.A.Instance().ID(), s.of.B.Instance().ID()
	by := map[string]string{from: ""}
	for next := []string{from}; len(next) > 0 && by[to] == ""; next = next[1:] {
		for _, t := range at.ties[next[0]] {
			if _, seen := by[t.id]; seen || t.n < 0 || t.lies || !m.made(t.id) || m.slidesAlong(m.Joints[t.n], s.along) {
				continue
			}
			by[t.id], next = next[0], append(next, t.id)
		}
	}
	if by[to] == "" {
		return "", false
	}
	var names []string
	for id := by[to]; id != from; id = by[id] {
		names = append([]string{m.Title(id)}, names...)
	}
	return cmp.Or(strings.Join(names, ", "), "another joint of the two"), true
}

// slidesAlong tells whether one part of a joint turns in the other about an axis along a way.
func (m *Machine) slidesAlong(j *plan.JointPlan, along assembly.Vec) bool {
	axis, ok := m.AxisOf(j)
	return ok && m.Job.Runs(m.Joint(j.Name)) && math.Abs(axis.Z.Dot(along)) > 1-stand.Level
}

// letGo is the whole machine, some joints of which hold nothing.
func (m *Machine) letGo(free map[string]bool) *Stage {
	at := newStage(m) // one of its own, whose ties let go
	for id, ties := range at.ties {
		at.ties[id] = seq.Keep(ties, func(t tie) bool { return t.n < 0 || t.lies || !free[m.Joints[t.n].Name] })
	}
	return at
}

// parted is what goes with part A of a joint when some joints let go, and what stays; none where A hangs on B all the
// same. The bolts of the joint go with the part whose slots they are not in, those of the others with nobody, and so
// does a coupling.
func (m *Machine) parted(s shift, free map[string]bool) (mv, fx []assembly.Body) {
	with := m.letGo(free).Together(len(m.Joints), s.of.A.Instance().ID())
	if with[s.of.B.Instance().ID()] {
		return nil, nil
	}
	for _, b := range m.Bodies {
		switch r := m.Roles[b.ID]; {
		case r.Runs || free[r.Joint] && r.Joint != s.of.Name:
		case with[b.ID] || r.Joint == s.of.Name && !s.ofA || with[r.On]:
			mv = append(mv, b)
		default:
			fx = append(fx, b)
		}
	}
	return mv, fx
}
