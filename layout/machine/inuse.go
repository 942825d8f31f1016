package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
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
		if r := m.Roles[b.ID]; of == "" {
			of = m.Of[r.On].Part // what is bought goes with what it is on
		}
		if of == e.Part.Value || slices.ContainsFunc(e.Travels.With, func(t parts.Text) bool { return t.Value == of }) {
			mv = append(mv, b)
		} else {
			fx = append(fx, b)
		}
	}
	w := way(along, mv, fx)
	w.FarMm = mm + max(stopMm, stopShare*(e.Travels.Front.Mm+e.Travels.Back.Mm))
	first := assembly.Block{LastMm: inf}
	for b := range w.Blocks(mv, fx, m.Allowed(mv)) {
		if b.LastMm < first.LastMm {
			first = b
		}
	}
	way := []plan.Arg{plan.Of(plan.Mm, mm), plan.Named(string(to))}
	switch {
	case first.LastMm < mm-overlapMm:
		return []plan.Problem{stand.Problem(e.After.Value, plan.TravelStrikes, e.Travels.Pos, append([]plan.Arg{m.Named(first.Mover), m.Named(first.Fixed), stand.Rounded(first.LastMm, 1)}, way...)...)}
	case math.IsInf(first.LastMm, 1):
		return []plan.Problem{stand.Problem(e.After.Value, plan.TravelRuns, e.Travels.Pos, append([]plan.Arg{m.Named(mv[0].ID), plan.Of(plan.Mm, w.FarMm-mm)}, way...)...)}
	}
	return nil
}
