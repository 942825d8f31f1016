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
	"centrepop/layout/joint"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
)

// Resolve works out a job. The error is a parts.Errors with every fault of
// every part, each pointing at the input.
func Resolve(job *parts.Job) (*plan.Plan, error) {
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
	var errs parts.Errors
	var rs []*part.Model
	for _, p := range job.Parts {
		r := part.Work(job, p)
		rs = append(rs, r)
		errs = append(errs, r.Errs...)
		out.Parts = append(out.Parts, r.Out)
		out.Stock = append(out.Stock, plan.StockRow{
			Part: r.Out.Title, Quantity: p.Quantity, Material: r.Out.Material,
			Size: r.Out.StockText, MassKg: r.Out.MassKg,
		})
	}
	if len(errs) == 0 {
		errs = joint.Resolve(out, job, rs)
	}
	if len(errs) > 0 {
		return nil, errs
	}
	return out, nil
}
