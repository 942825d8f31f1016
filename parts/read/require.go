package read

import (
	"slices"

	"centrepop/parts"
	"centrepop/parts/meant"
)

// requirements reads the tolerances of form, direction and place; what they
// speak of has to be on the part.
func (r *reader) requirements(groups []*fields, p *parts.Part) []parts.Requirement {
	named := p.FeatureNames(parts.OutlineFeature, parts.BoreFeature, parts.OutsideFeature, parts.InsideFeature)
	known := append([]string{string(parts.Front), string(parts.Back)}, named...)
	var out []parts.Requirement
	for _, f := range groups {
		q := parts.Requirement{Pos: f.n.pos, Kind: parts.RequirementKind(f.word("is")), Within: f.length("within"), Of: f.name("of"), To: f.name("to")}
		of := known
		if q.Kind == parts.EqualLength {
			of = append([]string{"length"}, named...)
		}
		r.oneOfNames(q.Of, of)
		r.oneOfNames(q.To, known)
		switch datum := q.To.Value != ""; {
		case q.Kind == "":
		case q.Kind.Alone() && datum:
			r.faultf(q.To.Pos, "delete to", "%s has no datum", q.Kind)
		case !q.Kind.Alone() && !f.given("to"):
			r.faultf(q.Pos, "to: the face, step, bore or outline it is measured from", "%s needs a datum", q.Kind)
		case datum && q.To.Value == q.Of.Value:
			r.faultf(q.To.Pos, "another feature", "%s of %s is measured from itself", q.Kind, q.Of.Value)
		}
		out = append(out, q)
	}
	return out
}

// oneOfNames refuses a name that is not among those known.
func (r *reader) oneOfNames(t parts.Text, known []string) {
	if t.Value == "" || slices.Contains(known, t.Value) {
		return
	}
	r.faultf(t.Pos, list(known), "there is no %s on the part%s", t.Value, meant.Perhaps(t.Value, known))
}
