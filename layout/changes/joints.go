package changes

import (
	"cmp"
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
	head := func(j *plan.JointPlan) Item { return Item{Name: j.Name, Title: j.Title} }
	r.Joints = compared(before.Joints, after.Joints, head, step, func(was, now *plan.JointPlan) ([]Change, bool) {
		changes := compareJoint(was, now)
		if i, k := justBefore(before, after, now.Name); i != k {
			changes = append(changes, Change{Code: Ordered, What: "comes after", OldText: i, NewText: k})
		}
		return changes, false
	})
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
	out = text(out, "kind", string(was.Kind), string(is.Kind), ByHand)
	out = text(out, "parts", ends(was), ends(is), ByHand)
	out = text(out, "place", was.How, is.How, ByHand)
	if was.Kind != is.Kind {
		return out
	}
	both(refs(was.Figures), refs(is.Figures), func(f *plan.Figure) string { return f.Label }, func(o, f *plan.Figure) {
		switch {
		case o == nil:
			out = append(out, Change{Code: Added, What: f.Label, NewText: f.Value})
		case f == nil:
			out = append(out, Change{Code: Removed, What: o.Label, OldText: o.Value})
		default:
			out = text(out, f.Label, o.Value, f.Value, NoMetal)
		}
	})
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
	rows := func(pl *plan.Plan) (out []*row) {
		for _, b := range pl.Bought {
			out = append(out, &row{words.Join(", ", "buy: "+b.Item, b.Note), strconv.Itoa(b.Quantity)})
		}
		out = append(out, seq.Map(pl.Tools, func(t plan.ToolRow) *row { return &row{"make ready: " + t.Tool, t.For} })...)
		for _, s := range pl.Stock {
			out = append(out, &row{"stock for " + s.Part, words.Join(", ", strconv.Itoa(s.Quantity)+" off", s.Material, s.Size)})
		}
		for _, c := range pl.Cuts {
			if c.BarMm == 0 { // each piece with its part
				continue
			}
			out = append(out, &row{"bars: " + c.Stock + ", " + c.Material, strconv.Itoa(len(c.Bars))})
		}
		return out
	}
	both(rows(before), rows(after), func(o *row) string { return o.what }, func(o, n *row) {
		none := &row{}
		r.Supply = text(r.Supply, cmp.Or(n, o).what, cmp.Or(o, none).text, cmp.Or(n, none).text, NoMetal)
	})
}

// sign lists the acceptances that hold no more as they were signed: what they
// accept reads otherwise, or the entry does, or it is new.
func (r *Report) sign(before, after *side) {
	key := func(a *parts.Accept) [3]string { return [3]string{a.Finding.Value, a.Part, a.Feature} }
	both(refs(before.job.Accept), refs(after.job.Accept), key, func(o, a *parts.Accept) {
		entry := cmp.Or(a, o)
		s := Sign{Code: entry.Finding.Value, At: at(entry.Part, entry.Feature), State: Reworded, Reason: entry.Reason.Value, Was: before.accepted(o), Is: after.accepted(a)}
		switch {
		case s.Is == "" && s.Was != "":
			s.State = Removed
		case s.Was == "" && s.Is != "":
			s.State = Added
		case s.Is == "" || s.Was == s.Is && o.Reason.Value == a.Reason.Value && same(o.Number.Mm, a.Number.Mm):
			return
		}
		r.Sign = append(r.Sign, s)
	})
}

// accepted is what an entry of the job accepts, in words; empty for nothing, and where there is no entry.
func (s *side) accepted(a *parts.Accept) string {
	if a == nil {
		return ""
	}
	var texts []string
	for _, f := range s.findings {
		if f.Accepted && f.Code == a.Finding.Value && f.Part == a.Part && (a.Feature == "" || f.Feature == a.Feature) {
			texts = append(texts, found(f))
		}
	}
	return strings.Join(texts, "; ")
}

// at is where a finding or an acceptance stands.
func at(part, feature string) string { return cmp.Or(words.Join(".", part, feature), "job") }

func found(f review.Finding) string { return words.Join("; ", f.What, f.Numbers) }

// StepSheet names the sheets of a joint in Discard and Print.
func StepSheet(joint string) string { return "step " + joint }

// sheets are those of all parts and joints.
func (s *side) sheets() []string {
	return append(seq.Map(s.pl.Parts, func(q *plan.PartPlan) string { return q.Name }), seq.Map(s.pl.Joints, func(j *plan.JointPlan) string { return StepSheet(j.Name) })...)
}

// sheets lists which to throw away and which to print again.
func (r *Report) sheets(before, after *side) {
	put := func(name string, state Code) {
		if state != Added {
			r.Discard = append(r.Discard, name)
		}
		if state != Removed {
			r.Print = append(r.Print, name)
		}
	}
	if r.Differs() {
		put("cover", Reworded)
	}
	if !slices.EqualFunc(before.findings, after.findings, func(a, b review.Finding) bool {
		return a.Code == b.Code && at(a.Part, a.Feature) == at(b.Part, b.Feature) && found(a) == found(b) && a.Reason == b.Reason && a.Fix == b.Fix
	}) {
		put("review", Reworded)
	}
	if slices.ContainsFunc(r.Heading, func(c Change) bool { return c.What == "units" || c.What == "paper" || c.What == "job" }) {
		r.Discard, r.Print = append(r.Discard, before.sheets()...), append(r.Print, after.sheets()...)
		return
	}
	for _, it := range r.Parts {
		put(it.Name, it.State)
	}
	for _, it := range r.Joints {
		put(StepSheet(it.Name), it.State)
	}
}
