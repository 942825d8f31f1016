package parts

import (
	"slices"
	"strings"
)

// Accept is a finding of the review that the job takes as it is, with the
// reason. It says nothing about whether there is such a finding.
type Accept struct {
	Pos     Pos
	Finding Text   // code of the finding, such as edge
	Part    string // where: name of a part or joint; empty for the whole job
	Feature string // of that part; empty for all of it
	At      Pos    // of the place; that of the entry if none is given
	Reason  Text
}

// accept reads what the job takes as it is.
func (l *loader) accept(n *node, job *Job) {
	items, _ := l.items(n, 0, 1000, "a list such as [{finding: edge, at: barrel-flange.pry, reason: only jacks the joint apart}]")
	for _, item := range items {
		if !l.group(item, "finding", "at", "reason") {
			continue
		}
		a := Accept{
			Pos:     item.pos,
			Finding: l.name(l.need(item, "finding", "the code the review prints, such as finding: edge")),
			Reason:  l.text(l.need(item, "reason", "why it is right all the same, in a line of text"), maxNote),
			At:      item.pos,
		}
		if !l.place(item.get("at"), job, &a) || a.Finding.Value == "" || a.Reason.Value == "" {
			continue
		}
		if i := slices.IndexFunc(job.Accept, func(o Accept) bool {
			return o.Finding.Value == a.Finding.Value && o.Part == a.Part && o.Feature == a.Feature
		}); i >= 0 {
			l.faultf(item.pos, "each finding once", "this finding is accepted already, in line %d", job.Accept[i].Pos.Line)
			continue
		}
		job.Accept = append(job.Accept, a)
	}
}

// place reads part or part.feature; it reports false if that is at fault.
func (l *loader) place(n *node, job *Job, a *Accept) bool {
	if n == nil {
		return true
	}
	const right = "a part such as barrel-flange, its feature such as barrel-flange.pry, or a joint"
	text, ok := l.scalar(n, "a place", right)
	if !ok {
		return false
	}
	part, feature, dot := strings.Cut(text, ".")
	if !nameForm.MatchString(part) || dot && !nameForm.MatchString(feature) {
		l.faultf(n.pos, right, "%s is %s, which is no place", n.label, quote(text))
		return false
	}
	var names []string
	for _, p := range job.Parts {
		names = append(names, p.Name.Value)
	}
	for _, j := range job.Joints {
		names = append(names, j.Name.Value)
	}
	if !slices.Contains(names, part) && !l.broken {
		what := "there is no part or joint " + part + " in the job"
		if like := nearest(part, names); like != "" {
			what += "; perhaps " + like + " is meant"
		}
		l.fault(n.pos, what, right)
		return false
	}
	a.Part, a.Feature, a.At = part, feature, n.pos
	return true
}
