package changes

import (
	"bytes"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

func (r *Report) joints(before, after *plan.Plan) {
	for _, now := range after.Joints {
		was := before.Joint(now.Name)
		if was == nil {
			r.Joints = append(r.Joints, Item{Name: now.Name, Title: now.Title, State: Added, Changes: []Change{}})
			continue
		}
		it := Item{Name: now.Name, Title: now.Title, State: Reworded, Changes: compareJoint(was, now)}
		if i, k := justBefore(before, after, now.Name); i != k {
			it.Changes = append(it.Changes, Change{Code: Ordered, What: "comes after", OldText: i, NewText: k})
		}
		if len(it.Changes) == 0 && !bytes.Equal(step(was), step(now)) {
			it.Changes = []Change{{Code: Printed}}
		}
		if it.Use = worst(it.Changes); len(it.Changes) > 0 {
			r.Joints = append(r.Joints, it)
		}
	}
	for _, was := range before.Joints {
		if after.Joint(was.Name) == nil {
			r.Joints = append(r.Joints, Item{Name: was.Name, Title: was.Title, State: Removed, Changes: []Change{}})
		}
	}
}

// step is all that the step of a joint shows, as bytes to compare: the mass to
// the tenth of a kilogram that is printed.
func step(j *plan.JointPlan) []byte {
	shown := *j
	shown.MassKg = words.Round(j.MassKg, 1)
	return asJSON(shown)
}

// justBefore names the joints that come just before one in both states, of those that
// both have.
func justBefore(before, after *plan.Plan, name string) (was, is string) {
	just := func(pl, other *plan.Plan) string {
		last := "nothing"
		for _, j := range pl.Joints {
			if j.Name == name {
				break
			}
			if other.Joint(j.Name) != nil {
				last = j.Name
			}
		}
		return last
	}
	return just(before, after), just(after, before)
}

func compareJoint(was, is *plan.JointPlan) []Change {
	var out []Change
	out = text(out, "kind", was.Kind, is.Kind)
	out = text(out, "parts", ends(was), ends(is))
	out = text(out, "place", was.How, is.How)
	for i := range out {
		out[i].Use = ByHand
	}
	if was.Kind != is.Kind {
		return out
	}
	for _, f := range is.Figures {
		i := slices.IndexFunc(was.Figures, func(o plan.Figure) bool { return o.Label == f.Label })
		if i < 0 {
			out = append(out, Change{Code: Added, What: f.Label, NewText: f.Value})
			continue
		}
		out = text(out, f.Label, was.Figures[i].Value, f.Value)
	}
	for _, o := range was.Figures {
		if !slices.ContainsFunc(is.Figures, func(f plan.Figure) bool { return f.Label == o.Label }) {
			out = append(out, Change{Code: Removed, What: o.Label, OldText: o.Value})
		}
	}
	return weld(out, was, is)
}

// weld says whether a weld that is made serves: more may be laid on it.
func weld(out []Change, was, is *plan.JointPlan) []Change {
	if was.Weld == nil || is.Weld == nil || was.Weld.Type == is.Weld.Type && same(was.Weld.LegMm, is.Weld.LegMm) && same(was.Weld.LengthMm, is.Weld.LengthMm) && was.Weld.Sides == is.Weld.Sides {
		return out
	}
	use := AsIs
	switch {
	case was.Weld.Type != is.Weld.Type:
		use = ByHand
	case is.Weld.LegMm > was.Weld.LegMm+sameMm || is.Weld.LengthMm > was.Weld.LengthMm+sameMm || is.Weld.Sides > was.Weld.Sides:
		use = WeldOn
	}
	return append(out, Change{Code: Reworded, What: "weld", Use: use})
}

func ends(j *plan.JointPlan) string {
	return j.A.Part + "." + j.A.Feature + " to " + j.B.Part + "." + j.B.Feature
}

// supply compares what is cut from stock and bought.
func (r *Report) supply(before, after *plan.Plan) {
	type row struct{ what, text string }
	rows := func(pl *plan.Plan) (out []row) {
		for _, b := range pl.Bought {
			out = append(out, row{words.Join(", ", "buy: "+b.Item, b.Note), strconv.Itoa(b.Quantity)})
		}
		out = append(out, seq.Map(pl.Tools, func(t plan.ToolRow) row { return row{"make ready: " + t.Tool, t.For} })...)
		for _, s := range pl.Stock {
			out = append(out, row{"stock for " + s.Part, words.Join(", ", strconv.Itoa(s.Quantity)+" off", s.Material, s.Size)})
		}
		for _, c := range pl.Cuts {
			if c.BarMm == 0 { // each piece with its part
				continue
			}
			out = append(out, row{"bars: " + c.Stock + ", " + c.Material, strconv.Itoa(len(c.Bars))})
		}
		return out
	}
	old, now := rows(before), rows(after)
	find := func(in []row, what string) string {
		if i := slices.IndexFunc(in, func(o row) bool { return o.what == what }); i >= 0 {
			return in[i].text
		}
		return ""
	}
	for _, n := range now {
		r.Supply = text(r.Supply, n.what, find(old, n.what), n.text)
	}
	for _, o := range old {
		if find(now, o.what) == "" {
			r.Supply = text(r.Supply, o.what, o.text, "")
		}
	}
}

// sign lists the acceptances that hold no more as they were signed: what they
// accept reads otherwise, or the entry does, or it is new.
func (r *Report) sign(before, after *side) {
	find := func(s *side, a parts.Accept) (parts.Accept, bool) {
		i := slices.IndexFunc(s.job.Accept, func(o parts.Accept) bool {
			return o.Finding.Value == a.Finding.Value && o.Part == a.Part && o.Feature == a.Feature
		})
		if i < 0 {
			return parts.Accept{}, false
		}
		return s.job.Accept[i], true
	}
	for _, a := range after.job.Accept {
		o, _ := find(before, a)
		s := Sign{Code: a.Finding.Value, At: at(a.Part, a.Feature), State: Reworded, Reason: a.Reason.Value, Was: before.accepted(o), Is: after.accepted(a)}
		switch {
		case s.Is == "" && s.Was != "":
			s.State = Removed
		case s.Was == "" && s.Is != "":
			s.State = Added
		case s.Is == "" || s.Was == s.Is && o.Reason.Value == a.Reason.Value && same(o.Number.Mm, a.Number.Mm):
			continue
		}
		r.Sign = append(r.Sign, s)
	}
	for _, o := range before.job.Accept {
		if _, still := find(after, o); !still && before.accepted(o) != "" {
			r.Sign = append(r.Sign, Sign{Code: o.Finding.Value, At: at(o.Part, o.Feature), State: Removed, Reason: o.Reason.Value, Was: before.accepted(o)})
		}
	}
}

// accepted is what an entry of the job accepts, in words; empty for nothing.
func (s *side) accepted(a parts.Accept) string {
	var texts []string
	for _, f := range s.findings {
		if f.Accepted && f.Code == a.Finding.Value && f.Part == a.Part && (a.Feature == "" || f.Feature == a.Feature) {
			texts = append(texts, found(f))
		}
	}
	return strings.Join(texts, "; ")
}

// at is where a finding or an acceptance stands.
func at(part, feature string) string {
	if place := words.Join(".", part, feature); place != "" {
		return place
	}
	return "job"
}

func found(f review.Finding) string { return words.Join("; ", f.What, f.Numbers) }

// StepSheet names the sheets of a joint in Discard and Print.
func StepSheet(joint string) string { return "step " + joint }

// sheets lists which to throw away and which to print again.
func (r *Report) sheets(before, after *side) {
	put := func(name string, it Item) {
		if it.State != Added {
			r.Discard = append(r.Discard, name)
		}
		if it.State != Removed {
			r.Print = append(r.Print, name)
		}
	}
	if r.Differs() {
		put("cover", Item{State: Reworded})
	}
	if !slices.EqualFunc(before.findings, after.findings, func(a, b review.Finding) bool {
		return a.Code == b.Code && at(a.Part, a.Feature) == at(b.Part, b.Feature) && found(a) == found(b) && a.Reason == b.Reason && a.Fix == b.Fix
	}) {
		put("review", Item{State: Reworded})
	}
	if slices.ContainsFunc(r.Heading, func(c Change) bool { return c.What == "units" || c.What == "paper" || c.What == "job" }) {
		for _, q := range before.pl.Parts {
			put(q.Name, Item{State: Removed})
		}
		for _, j := range before.pl.Joints {
			put(StepSheet(j.Name), Item{State: Removed})
		}
		for _, q := range after.pl.Parts {
			put(q.Name, Item{State: Added})
		}
		for _, j := range after.pl.Joints {
			put(StepSheet(j.Name), Item{State: Added})
		}
		return
	}
	for _, it := range r.Parts {
		put(it.Name, it)
	}
	for _, it := range r.Joints {
		put(StepSheet(it.Name), it)
	}
}
