package joint

import (
	"slices"

	"centrepop/layout/part"
	"centrepop/layout/words"
	"centrepop/parts"
)

// anchor is a hole of a part that stands on the floor, and how many there are on all its copies.
type anchor struct {
	item, hole string
	count      int
}

// anchors are the holes of a part that no joint puts a bolt through: what fixes it to the floor
// goes there.
func (j *shop) anchors(name string) (out []anchor) {
	r := j.model(name)
	for i := range r.Groups {
		g := &r.Groups[i]
		if g.Hole == nil || g.Size.Thread != nil || j.bolted(r, g) {
			continue
		}
		item := "Anchor for holes " + j.w.Dia(g.Size.FinishedMm)
		if g.Size.For != "" {
			item = "Anchor " + g.Size.For
		}
		out = append(out, anchor{item, words.Spaced(g.Group.Name), len(g.Points) * r.Part.Quantity})
	}
	return out
}

// bolted tells whether a joint puts bolts through a group of holes.
func (j *shop) bolted(r *part.Model, g *part.Group) bool {
	return slices.ContainsFunc(j.job.Joints, func(in *parts.Joint) bool { return in.Bolt != nil && in.Names(r.Part.Name.Value, g.Group.Name) })
}

// anchorText says what is fixed to the floor and by what. How long and of what kind an anchor
// is hangs on the floor, which the job does not know.
func (j *shop) anchorText(name string) string {
	r := j.model(name)
	what, it := r.Out.Title, "it"
	if n := r.Part.Quantity; n > 1 {
		what, it = "the "+words.Trim(float64(n), 0)+" × "+what, "them"
	}
	text := "Set " + what + " level and fix " + it + " to the floor, before anything more goes on"
	by := ""
	for _, a := range j.anchors(name) {
		by = words.Join(", ", by, words.Trim(float64(a.count), 0)+" × "+words.Lower(a.item)+" ("+a.hole+")")
	}
	if by == "" {
		return text + "; no holes for anchors are drawn: clamp or weld " + it + " to what the floor has."
	}
	return text + ": " + by + ", the kind, length and torque by its maker for this floor."
}

// buyAnchors lists what fixes parts to the floor.
func (j *shop) buyAnchors(made []*joint, list *buying) {
	var done []string
	for _, t := range made {
		name := t.in.Anchored.Value
		if name == "" || slices.Contains(done, name) {
			continue
		}
		done = append(done, name)
		for _, a := range j.anchors(name) {
			list.add(a.item, a.count, j.model(name).Out.Title+" "+a.hole, "length and kind by the floor")
		}
	}
}
