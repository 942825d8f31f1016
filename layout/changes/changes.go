// Package changes says what differs between two states of a job: sizes, limits,
// holes, joints, stock and order, what already cut or drilled parts may still be
// used for, which sheets to print again, and which acceptances to sign again.
//
// In go two checked jobs; out comes a Report of values: codes, numbers in
// millimetres and degrees, and the Use of what was made to the old drawing. Use
// follows from geometry alone: metal may be taken away and not put back. Whether
// a repair (weld on, sleeve, plug) is worth it, it does not say. Sentences
// are made in words.go alone, in the new job's units.
//
// The package names no standard: limits are those that package layout worked out.
package changes

import (
	"centrepop/layout"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// side is one of the two states.
type side struct {
	job      *parts.Job
	pl       *plan.Plan
	findings []review.Finding
}

func work(job *parts.Job) (*side, error) {
	w, err := layout.Resolve(job)
	if err != nil {
		return nil, err
	}
	return &side{job, w.Plan, review.Review(w)}, nil
}

// Compare holds the new state of a job against the old one. Texts are in the new
// job's units. The error is a parts.Errors where either cannot be worked out.
func Compare(oldJob, newJob *parts.Job) (*Report, error) {
	same := *oldJob
	same.Units = newJob.Units
	before, err := work(&same)
	if err != nil {
		return nil, err
	}
	after, err := work(newJob)
	if err != nil {
		return nil, err
	}
	r := &Report{Job: newJob.Name.Value, Units: newJob.Units, Heading: []Change{}, Supply: []Change{}, Sign: []Sign{}, Discard: []string{}, Print: []string{}}
	r.heading(oldJob, after, before.pl)
	r.parts(before, after)
	r.joints(before.pl, after.pl)
	r.supply(before.pl, after.pl)
	r.sign(before, after)
	r.sheets(before, after)
	return r, nil
}

// heading compares the head of the job. oldJob has the units as they were.
func (r *Report) heading(oldJob *parts.Job, after *side, before *plan.Plan) {
	now, yes := after.pl, map[bool]string{false: "no", true: "yes"}
	for _, line := range []struct{ what, was, is string }{
		{"job", before.Job, now.Job}, {"revision", before.Revision, now.Revision}, {"date", before.Date, now.Date},
		{"drawn", before.DrawnBy, now.DrawnBy}, {"checked", before.CheckedBy, now.CheckedBy},
		{"units", string(oldJob.Units), string(now.Units)}, {"paper", before.Paper.Name, now.Paper.Name},
		{"tolerance", before.Tolerance, now.Tolerance}, {"sheets of tools", yes[oldJob.Tools], yes[after.job.Tools]},
	} {
		r.Heading = text(r.Heading, line.what, line.was, line.is, NoMetal)
	}
	r.Heading = list(r.Heading, "note", before.Notes, now.Notes)
}

func (r *Report) parts(before, after *side) {
	head := func(q *plan.PartPlan) Item { return Item{Name: q.Name, Title: q.Title} }
	r.Parts = compared(before.pl.Parts, after.pl.Parts, head, printed, func(was, now *plan.PartPlan) ([]Change, bool) {
		of := func(s *side, q *plan.PartPlan) model { return model{part.Work(s.job, s.job.Part(q.Name)), q} }
		return comparePart(pair{was: of(before, was), is: of(after, now)})
	})
}

// printed is all that the sheets of a part show, as bytes to compare.
func printed(q *plan.PartPlan) []byte {
	outlines := seq.Map(q.Faces, func(f *plan.Face) plan.Contour { return f.Outline })
	return asJSON([]any{q, outlines})
}
