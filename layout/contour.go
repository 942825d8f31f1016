package layout

import "centrepop/parts"

// OutlineContour is the outline of a part seen on its front face, before any
// hole: the contour of a flat part, the largest circle of a round one. The part
// must be one that Resolve has accepted in this job.
func OutlineContour(job *parts.Job, p *parts.Part) Contour {
	r := &resolver{job: job, part: p, w: Writer{job.Units}}
	r.cylinders()
	return Contour(r.outlinePath().ToSVG())
}
