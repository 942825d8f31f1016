package review

import (
	"slices"
	"strings"

	"centrepop/parts"
)

// guardsMade looks for guards that the motor's page names and the first run is to find shut,
// and that no part and no line of the list to buy is.
func guardsMade(r *reviewer) {
	if r.job.Motor == nil {
		return
	}
	for _, g := range r.job.Motor.Guards {
		named := " " + strings.ToLower(wordsOf(g.Value)) + " "
		made := func(p *parts.Part) bool { // by its whole name: a cover of the hopper is no hopper
			return strings.HasPrefix(named, " "+strings.ToLower(p.Title.Value)+" ") || strings.HasPrefix(named, " "+p.Name.Value+" ")
		}
		bought := func(e parts.Loose) bool {
			for _, item := range []string{e.Item.Value, e.Buy.Value} {
				if lower := " " + strings.ToLower(wordsOf(item)) + " "; item != "" && (strings.Contains(lower, named) || strings.Contains(named, lower)) {
					return true
				}
			}
			return false
		}
		if slices.ContainsFunc(r.job.Parts, made) || slices.ContainsFunc(r.job.Loose, bought) {
			continue
		}
		r.add(Finding{
			Severity: Check, Pos: g.Pos, What: "a guard is named that is neither a part of the job nor bought", Numbers: g.Value,
			Rule: "the first run is signed for guards that are there", Source: practice, Fix: "its part by the name it has here, or an item under loose",
		})
	}
}
