package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
)

// What moves is to be stopped within the larger of stopMm and a part of its way after it.
// Common practice, no source.
const stopMm, stopShare = 6.0, 0.1

// inUse moves what the job says moves, with what goes with it, and finds what that strikes on
// its way, and an end of it that nothing stops.
func (m *Machine) inUse() (found []plan.Problem) {
	for i := range m.job.Loose {
		e := &m.job.Loose[i]
		at := slices.IndexFunc(m.Bodies, func(b assembly.Body) bool { return m.Of[b.ID].Part == e.Part.Value })
		if e.Travels == nil || at < 0 {
			continue
		}
		axis := m.Bodies[at].Pose.Z
		found = append(found, m.travels(e, axis, e.Travels.Front.Mm, parts.Front)...)
		found = append(found, m.travels(e, axis.Times(-1), e.Travels.Back.Mm, parts.Back)...)
	}
	return found
}

// travels is what a part meets on its way to one end.
func (m *Machine) travels(e *parts.Loose, along assembly.Vec, mm float64, to parts.Face) []plan.Problem {
	var mv, fx []assembly.Body
	for _, b := range m.Bodies {
		of := m.Of[b.ID].Part
		if r := m.roles[b.ID]; of == "" {
			of = m.Of[r.on].Part // what is bought goes with what it is on
		}
		if of == e.Part.Value || slices.ContainsFunc(e.Travels.With, func(t parts.Text) bool { return t.Value == of }) {
			mv = append(mv, b)
		} else {
			fx = append(fx, b)
		}
	}
	w := way(along, mv, fx)
	w.FarMm = mm + max(stopMm, stopShare*(e.Travels.Front.Mm+e.Travels.Back.Mm))
	first := assembly.Block{LastMm: math.Inf(1)}
	for b := range w.Blocks(mv, fx, m.allowed(mv)) {
		if b.LastMm < first.LastMm {
			first = b
		}
	}
	problem := func(kind plan.ProblemKind, args ...plan.Arg) []plan.Problem {
		args = append(args, plan.Of(plan.Mm, mm), plan.Named(string(to)))
		return []plan.Problem{{Joint: e.After.Value, Kind: kind, Pos: e.Travels.Pos, Args: args}}
	}
	switch {
	case first.LastMm < mm-overlapMm:
		return problem(plan.TravelStrikes, m.named(first.Mover), m.named(first.Fixed), plan.Of(plan.Mm, words.Round(first.LastMm, 1)))
	case math.IsInf(first.LastMm, 1):
		return problem(plan.TravelRuns, plan.Named(m.title(mv[0].ID)), plan.Of(plan.Mm, w.FarMm-mm))
	}
	return nil
}
