package review

import (
	"slices"

	"centrepop/parts"
	"centrepop/parts/seq"
)

// Stopped is a part that is not to be made before its stops are settled.
type Stopped struct {
	Part     string // its name
	Findings []Finding
}

// Stops lists the parts that have an open stop, or stand in a joint that has
// one, in the order of the job.
func Stops(job *parts.Job, findings []Finding) []Stopped {
	var out []Stopped
	for _, p := range job.Parts {
		its := seq.Keep(findings, func(f Finding) bool {
			return f.Severity == Stop && !f.Accepted && slices.Contains(concerns(job, f), p.Name.Value)
		})
		if len(its) > 0 {
			out = append(out, Stopped{p.Name.Value, its})
		}
	}
	return out
}

// concerns are the parts a finding is about. A joint may bear the name of a
// part: then a place in the job file means the joint.
func concerns(job *parts.Job, f Finding) []string {
	if j := job.Joint(f.Part); j != nil && f.Pos.File == job.File {
		a, b := j.Ends()
		return []string{a.Part, b.Part}
	}
	return []string{f.Part}
}
