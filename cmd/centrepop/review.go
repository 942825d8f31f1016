package main

import (
	"fmt"
	"strings"

	"centrepop/layout"
	"centrepop/layout/review"
	"centrepop/layout/words"
)

// findingJSON is a finding with its place in the input.
type findingJSON struct {
	Severity review.Severity `json:"severity"`
	Code     string          `json:"code"`
	Part     string          `json:"part,omitempty"`
	Feature  string          `json:"feature,omitempty"`
	At       string          `json:"at"` // the place as accept names it
	File     string          `json:"file"`
	Line     int             `json:"line"`
	Column   int             `json:"column"`
	What     string          `json:"what"`
	Numbers  string          `json:"numbers,omitempty"`
	LeftMm   *float64        `json:"left_mm,omitempty"` // as measured, the less the worse
	OverMm   *float64        `json:"over_mm,omitempty"` // as measured, the more the worse
	Rule     string          `json:"rule"`
	Source   string          `json:"source"`
	Fix      string          `json:"fix"`
	Accepted bool            `json:"accepted"`
	Reason   string          `json:"reason,omitempty"`
	With     []findingJSON   `json:"with,omitempty"` // the other places of a note
}

func jsonOf(list []review.Finding) []findingJSON {
	out := []findingJSON{}
	for _, f := range list {
		out = append(out, findingJSON{f.Severity, f.Code, f.Part, f.Feature, f.At(), f.Pos.File, f.Pos.Line, f.Pos.Column,
			f.What, f.Numbers, f.LeftMm, f.OverMm, f.Rule, f.Source, f.Fix, f.Accepted, f.Reason, jsonOf(f.With)})
	}
	return out
}

// reviewCmd prints what the review finds. It ends with errFindings if anything
// is open: neither accepted by the job nor a mere note.
func reviewCmd(c *call) error {
	if err := c.parse(1, 1); err != nil {
		return err
	}
	job, err := loadJob(c.args[0])
	if err != nil {
		return err
	}
	w, err := layout.Work(job)
	if err != nil {
		return err
	}
	findings := review.Review(w)
	count := review.Summary(findings)
	out := struct {
		Open     int           `json:"open"`
		Count    review.Count  `json:"count"`
		Findings []findingJSON `json:"findings"`
	}{count.Open(), count, jsonOf(findings)}
	return c.judged(out, reviewText(findings, count), count.Open() > 0)
}

// reviewText writes findings for reading in a terminal: open ones first, then
// the accepted ones with their reasons, then the count.
func reviewText(findings []review.Finding, count review.Count) string {
	var b strings.Builder
	for _, f := range findings {
		if !f.Accepted {
			fmt.Fprintf(&b, "%s:%d:%d %s %s: %s\n", f.Pos.File, f.Pos.Line, f.Pos.Column, f.Severity, f.Code, f.What)
			if f.Numbers != "" {
				fmt.Fprintf(&b, "    %s\n", f.Numbers)
			}
			for _, o := range f.With {
				fmt.Fprintf(&b, "    %s:%d:%d %s\n", o.Pos.File, o.Pos.Line, o.Pos.Column, words.Join("; ", o.What, o.Numbers))
			}
			if f.Severity != review.Note {
				fmt.Fprintf(&b, "    rule: %s (%s)\n", f.Rule, f.Source)
			}
			fmt.Fprintf(&b, "    fix: %s\n", f.Fix)
			if f.Severity == review.Check {
				fmt.Fprintf(&b, "    to accept it: finding: %s, at: %s\n", f.Code, words.Join(", number: ", f.At(), f.Number))
			}
		}
	}
	for _, f := range findings {
		if f.Accepted {
			fmt.Fprintf(&b, "%s:%d:%d accepted %s: %s\n", f.Pos.File, f.Pos.Line, f.Pos.Column, f.Code, f.What)
			if f.Numbers != "" {
				fmt.Fprintf(&b, "    %s\n", f.Numbers)
			}
			fmt.Fprintf(&b, "    reason: %s\n", f.Reason)
		}
	}
	fmt.Fprintf(&b, "%d to stop at, %d to check, %d to note, %d accepted\n", count.Stop, count.Check, count.Note, count.Accepted)
	return b.String()
}
