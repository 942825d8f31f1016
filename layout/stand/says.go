package stand

import (
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
)

// PosOf is where a joint stands in the job; the head of it for another.
func (m *Stand) PosOf(joint string) parts.Pos {
	if j := m.Joint(joint); j != nil {
		return j.Pos
	}
	return parts.Pos{File: m.Job.File, Line: 1, Column: 1}
}

// Problem is one of a joint, at a place in the job.
func Problem(joint string, kind plan.ProblemKind, pos parts.Pos, args ...plan.Arg) plan.Problem {
	return plan.Problem{Joint: joint, Kind: kind, Pos: pos, Args: args}
}

// Fault is a problem of a joint at its own place.
func (m *Stand) Fault(joint string, kind plan.ProblemKind, args ...plan.Arg) plan.Problem {
	return Problem(joint, kind, m.PosOf(joint), args...)
}

// Named is the title of a body as an argument of a problem.
func (m *Stand) Named(id string) plan.Arg { return plan.Named(m.Title(id)) }

// Rounded is a length in mm with so many decimals, of which an inch job has two more.
func (m *Stand) Rounded(mm float64, decimals int) plan.Arg {
	return plan.Of(plan.Mm, words.Writer{Units: m.Job.Units}.Rounded(mm, decimals))
}

// Title is what people call a body: a part by its title, with its number where there are more.
func (m *Stand) Title(id string) string {
	if r := m.Roles[id]; r.What != "" {
		return r.What + " of " + m.Title(r.On)
	}
	i, ok := m.Of[id]
	if !ok {
		return id
	}
	r := m.Model(i.Part)
	if r.Part.Quantity > 1 {
		_, n, _ := strings.Cut(id, "#")
		return r.Out.Title + " " + n
	}
	return r.Out.Title
}
