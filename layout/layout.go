// Package layout computes everything a sheet prints: it resolves a checked
// parts.Job into a Plan. It is pure: no files, no clock, no drawing.
//
// Lengths are millimetres and angles degrees inside; the strings of the Plan
// are written in the job's units. Clock angles are 0° at TOP and run clockwise
// looking at the named face; x is to the right, y up, and the origin is the
// part's axis (turned parts) or the centre of its outline.
//
// What the YAML reader cannot know (whether a thread or an ISO 286 class
// exists) is refused here, with the same located parts.Error.
//
// The sub-packages (fits, threads, cutting, ...) are small libraries that name
// their standards and can be used alone; this package puts them together.
package layout

import (
	"slices"
	"sync"

	"centrepop/layout/card"
	"centrepop/layout/joint"
	"centrepop/layout/machine"
	"centrepop/layout/part"
	"centrepop/layout/picture"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// Worked is a job worked out: its plan, and what the rest is made from.
type Worked struct {
	Job  *parts.Job
	Plan *plan.Plan
	// Machine stands the job in space, once for all who ask: a solid in its
	// place for every part and for what is bought, and what that shows.
	Machine func() *machine.Machine

	models []*part.Model // of the job's parts, in its order
}

// Model is a part worked out, by its name; nil if there is none.
func (w *Worked) Model(name string) *part.Model {
	return seq.First(w.models, func(m *part.Model) bool { return m.Part.Name.Value == name })
}

// Resolve works out a job of which everything can be worked out. The error is a
// parts.Errors with every fault of every part, or else of every joint, each
// pointing at the input.
func Resolve(job *parts.Job) (*Worked, error) {
	w, err := Work(job)
	if err != nil {
		return nil, err
	}
	if err := w.Faults(); err != nil {
		return nil, err
	}
	return w, nil
}

// Work works out what it can of a job: joints that cannot be worked out are
// missing in the plan, and its Faults say why; pictures and cards come with
// Arrange. The error is a parts.Errors with
// every fault of every part.
func Work(job *parts.Job) (*Worked, error) {
	out := heading(job)
	var errs parts.Errors
	var models []*part.Model
	for _, p := range job.Parts {
		m := part.Work(job, p)
		models = append(models, m)
		errs = append(errs, m.Errs...)
		out.Parts = append(out.Parts, m.Out)
		out.Stock = append(out.Stock, plan.StockRow{
			Part: m.Out.Title, Quantity: p.Quantity, Material: m.Out.Material,
			Size: m.Out.StockText, MassKg: m.Out.MassKg,
		})
	}
	if len(errs) > 0 {
		return nil, errs
	}
	out.Dangers = dangers(out.Parts)
	out.Faults = joint.Resolve(out, job, models, stand.NewSeams(job, models))
	return &Worked{Job: job, Plan: out, models: models, Machine: sync.OnceValue(func() *machine.Machine { return standing(job, out, models) })}, nil
}

// Faults are what keeps joints from being worked out, as located errors; nil if
// nothing does.
func (w *Worked) Faults() error {
	if len(w.Plan.Faults) == 0 {
		return nil
	}
	words := words.Writer{Units: w.Job.Units}
	return parts.Errors(seq.Map(w.Plan.Faults, func(p plan.Problem) *parts.Error { return w.Job.Fault(p.Pos, p.What, words.Fix(p)) }))
}

// dangers are those of all operations, by machine in the order of the work, each
// once.
func dangers(list []*plan.PartPlan) []plan.Danger {
	var out []plan.Danger
	for _, p := range list {
		for _, op := range p.Operations {
			for _, says := range op.Dangers {
				i := slices.IndexFunc(out, func(d plan.Danger) bool { return d.Machine == op.Machine })
				if i < 0 {
					i, out = len(out), append(out, plan.Danger{Machine: op.Machine})
				}
				out[i].Says = seq.Add(out[i].Says, says)
			}
		}
	}
	return out
}

// standing places the parts of a job and what is bought, and looks at what that
// shows.
func standing(job *parts.Job, pl *plan.Plan, models []*part.Model) *machine.Machine {
	m := machine.Of(job, models, pl.Joints)
	m.Review()
	w := words.Writer{Units: job.Units}
	for i := range m.Problems {
		m.Problems[i].What = w.Says(m.Problems[i])
	}
	return m
}

// Arrange adds to the plan what the machine shows: the general arrangement, what
// stands at each joint, and then the cards, which name what hides bolts.
func (w *Worked) Arrange() {
	w.Plan.Arrangement = picture.Draw(w.Machine())
	card.Fill(w.Plan, w.Job)
}

// ArrangeAs adds what Arrange does, as the machine was arranged before, so that
// what has not changed stays as it is.
func (w *Worked) ArrangeAs(before *plan.Plan) {
	w.Plan.Arrangement = before.Arrangement
	for _, j := range w.Plan.Joints {
		if o := before.Joint(j.Name); o != nil {
			j.StandAs(o)
		}
	}
	card.Fill(w.Plan, w.Job)
}

func heading(job *parts.Job) *plan.Plan {
	out := &plan.Plan{
		Job:       job.Name.Value,
		Revision:  job.Revision.Value,
		Date:      job.Date.Value,
		DrawnBy:   job.DrawnBy.Value,
		CheckedBy: job.CheckedBy.Value,
		Units:     job.Units,
		Paper:     job.Paper,
	}
	if job.Tolerance.Value != "" {
		out.Tolerance = "ISO 2768-" + job.Tolerance.Value
	}
	out.Notes = seq.Map(job.Notes, func(n parts.Text) string { return n.Value })
	return out
}
