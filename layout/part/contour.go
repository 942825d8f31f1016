package part

import (
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
)

// OutlineContour is the outline of a part seen on its front face, before any
// hole: the contour of a flat part, the largest circle of a round one. The part
// must be one that Resolve has accepted in this job.
func OutlineContour(job *parts.Job, p *parts.Part) plan.Contour {
	r := &Model{Job: job, Part: p, W: words.Writer{Units: job.Units}}
	r.cylinders()
	return plan.Contour(r.OutlinePath().ToSVG())
}

// LeastHoleMm is the smallest hole that a cutter (laser, plasma, waterjet or
// flame) makes well in a plate, with where that is from; false for a cutter
// that follows no file. It is what CutProfile goes by.
func LeastHoleMm(cut string, thicknessMm float64) (mm float64, source string, ok bool) {
	p := plan.Profile{Cut: cut, ThicknessMm: thicknessMm}
	ok = findLeast(&p)
	return p.LeastMm, p.LeastSource, ok
}
