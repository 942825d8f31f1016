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
	"centrepop/layout/card"
	"centrepop/layout/joint"
	"centrepop/layout/machine"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
)

// Resolve works out a job of which everything can be worked out. The error is a
// parts.Errors with every fault of every part, or else of every joint, each
// pointing at the input.
func Resolve(job *parts.Job) (*plan.Plan, error) {
	out, err := Draft(job)
	if err != nil || len(out.Faults) == 0 {
		return out, err
	}
	w, errs := words.Writer{Units: job.Units}, parts.Errors{}
	for _, p := range out.Faults {
		errs = append(errs, job.Fault(p.Pos, p.What, w.Fix(p)))
	}
	return nil, errs
}

// Draft works out what it can of a job: joints that cannot be worked out are
// missing in the plan, and its Faults say why. The error is a parts.Errors with
// every fault of every part.
func Draft(job *parts.Job) (*plan.Plan, error) {
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
	out.Faults = joint.Resolve(out, job, models)
	card.Fill(out, job)
	return out, nil
}

// Stand stands a job in space: a solid in its place for every part and for what
// is bought. The plan must be the one that Draft made of this job.
func Stand(job *parts.Job, pl *plan.Plan) *machine.Machine {
	m := inSpace(job, pl)
	m.Review()
	w := words.Writer{Units: job.Units}
	for i := range m.Problems {
		m.Problems[i].What = w.Says(m.Problems[i])
	}
	return m
}

// Arrange cuts the machine along its axis for the general arrangement. The plan
// must be the one that Draft made of this job.
func Arrange(job *parts.Job, pl *plan.Plan) *plan.Arrangement {
	return inSpace(job, pl).Arrangement()
}

// inSpace places the parts of a job and what is bought, without judging it.
func inSpace(job *parts.Job, pl *plan.Plan) *machine.Machine {
	var models []*part.Model
	for _, p := range job.Parts {
		models = append(models, part.Work(job, p))
	}
	return machine.Of(job, models, pl.Joints)
}

// heading is what a plan takes from the head of the job.
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
	for _, n := range job.Notes {
		out.Notes = append(out.Notes, n.Value)
	}
	return out
}
