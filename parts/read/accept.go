package read

import (
	"slices"
	"strings"

	"centrepop/parts"
	"centrepop/parts/meant"
)

// renamedFindings are codes of earlier versions and what they are called now.
var renamedFindings = map[string]string{"mate": "counterpart", "align": "in-line"}

// accept reads what the job takes as it is.
func (l *loader) accept() {
	job := l.job
	for _, f := range l.each("accept") {
		a := parts.Accept{Pos: f.n.pos, Finding: f.name("finding"), Reason: f.text("reason"), Number: f.length("number")}
		if now := renamedFindings[a.Finding.Value]; now != "" {
			l.faultf(a.Finding.Pos, "finding: "+now, "the finding %s of earlier versions is now %s", a.Finding.Value, now)
			continue
		}
		if !l.place(f.val("at"), &a) || a.Finding.Value == "" || a.Reason.Value == "" {
			continue
		}
		if i := slices.IndexFunc(job.Accept, func(o parts.Accept) bool {
			return o.Finding.Value == a.Finding.Value && o.Part == a.Part && o.Feature == a.Feature && o.Number.Set() == a.Number.Set() && o.Number.Mm == a.Number.Mm
		}); i >= 0 {
			l.faultf(f.n.pos, "each finding once", "this finding is accepted already, in line %d", job.Accept[i].Pos.Line)
			continue
		}
		job.Accept = append(job.Accept, a)
	}
}

// place reads part or part.feature; it reports false if that is at fault.
func (l *loader) place(n *node, a *parts.Accept) bool {
	if n == nil {
		return false // the table of keys asks for it
	}
	right := acceptGroup.key("at").Example
	text, ok := l.scalar(n, "a place", right)
	if !ok {
		return false
	}
	if text == "job" {
		return true
	}
	part, feature, dot := strings.Cut(text, ".")
	if !nameForm().MatchString(part) || dot && !nameForm().MatchString(feature) {
		l.faultf(n.pos, right, "%s is %s, which is no place", n.label, parts.Quote(text))
		return false
	}
	if names := slices.Concat(l.partNames(), l.jointNames()); !slices.Contains(names, part) && !l.broken {
		l.faultf(n.pos, right, "there is no part or joint %s in the job%s", part, meant.Perhaps(part, names))
		return false
	}
	a.Part, a.Feature = part, feature
	return true
}
