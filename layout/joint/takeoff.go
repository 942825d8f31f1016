package joint

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/bolts"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
)

// comesOff lists, the last put on first, what is put on by hand with a later joint and lies over
// the heads or nuts of bolts, with what lies on that: it comes off before these are tightened.
func (j *making) comesOff(t *joint) (titles []string) {
	for _, e := range j.job.Loose {
		if e.Part.Value == "" || e.Off || slices.ContainsFunc(j.before, func(o *joint) bool { return o.in.Name.Value == e.After.Value }) {
			continue
		}
		r := j.model(e.Part.Value)
		if slices.ContainsFunc(titles, func(title string) bool { return liesOn(e, title) }) ||
			slices.ContainsFunc(j.headSides(t), func(side headSide) bool { return j.overHeads(r, side, t) }) {
			titles = slices.Insert(titles, 0, r.Out.Title)
		}
	}
	return titles
}

// liesOn tells whether the words of a loose part lay it on another of a title, or of the last
// word of that.
func liesOn(e parts.Loose, title string) bool {
	said, title := strings.ToLower(e.How.Value), strings.ToLower(title)
	last := title[strings.LastIndex(title, " ")+1:]
	_, after, ok := strings.Cut(said, " on ")
	after = strings.TrimPrefix(after, "the ")
	return ok && (strings.HasPrefix(after, title) || strings.HasPrefix(after, last))
}

// overHeads tells whether a loose part sits beyond the heads of bolts, on the step of a shaft
// that is its seat, and reaches out over one of them.
func (j *making) overHeads(r *part.Model, side headSide, t *joint) bool {
	wide := 0.0
	for i := range r.Steps {
		if s := &r.Steps[i]; !s.Inside {
			wide = max(wide, s.Size.NominalMm/2)
		}
	}
	form := bolts.Head(t.in.Bolt.Head)
	if side.isNut {
		form = bolts.Hex
	}
	head, err := t.bolt.HeadDiameterMm(form)
	if err != nil || !slices.ContainsFunc(side.pts, func(p plan.XY) bool { return math.Hypot(p.XMm, p.YMm)-head/2 < wide }) {
		return false
	}
	for i := range j.placed {
		q := &j.placed[i]
		for k := range q.r.Steps {
			s := &q.r.Steps[k]
			beyond := (q.at.z0 + q.at.s*(s.FromMm+s.ToMm)/2 - side.zMm) * side.dir
			if q.group == side.group && !s.Inside && beyond > 0 && strings.Contains(strings.ToLower(s.Seat), strings.ToLower(r.Out.Title)) {
				return true
			}
		}
	}
	return false
}
