package joint

import (
	"slices"
	"strconv"

	"centrepop/layout/bars"
	"centrepop/layout/bolts"
	"centrepop/layout/part"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// anchor is a hole of a part that stands on the floor, and how many there are on all its copies.
type anchor struct {
	item, hole string
	count      int
	spacer     string // what goes round it under a leg that does not lie on the floor; empty where it does
}

// anchors are the holes and slots of the part that a joint has anchored and that no joint puts a bolt
// through: what fixes it to the floor goes there.
func (j *shop) anchors(t *joint) (out []anchor) {
	r := j.model(t.in.Anchored.Value)
	for g := range seq.Refs(r.Groups) {
		if !g.Anchors() || j.job.Bolts(r.Part.Name.Value, g.Group.Name) {
			continue
		}
		item, most := "Anchor for holes "+j.w.Dia(g.Size.FinishedMm), j.through(g.Size.FinishedMm)
		switch {
		case g.Hole == nil:
			item = "Anchor for slots " + j.w.Size(g.Size.FinishedMm) + " wide"
		case g.Size.For != "":
			item, most = "Anchor "+g.Size.For, ""
		}
		if most != "" {
			item += ", " + most + " at most"
		}
		spacer := ""
		if mm := t.underMm(r, g); mm > 0 {
			spacer = "Spacer of pipe, bore over " + j.w.Dia(g.Size.FinishedMm) + ", " + j.w.Size(mm) + " long"
		}
		out = append(out, anchor{item, words.Spaced(g.Group.Name), len(g.Points) * r.Part.Quantity, spacer})
	}
	return out
}

// through is the thickest bolt of a coarse thread that goes through a hole or a slot; empty where none does.
func (j *shop) through(mm float64) (size string) {
	for _, b := range bolts.Coarse(j.w.Units == parts.Inches) {
		if !geom.Over(b.SlotMm(), mm) {
			size = b.Thread.Designation
		}
	}
	return size
}

// underMm is how far above the floor the underside of a leg lies that an anchor holds down:
// of an angle, or of a channel on its edges, that carries the other part of the joint on the
// outside of the same leg. It is 0 where that leg lies on the floor, or nothing tells.
func (t *joint) underMm(r *part.Model, g *part.Group) float64 {
	m := t.meeting()
	on, face := t.b, m.Second
	if t.a.r == r {
		on, face = t.a, m.First
	}
	s, _, bar := r.Bar()
	if !bar || on.r != r || on.group == nil || on.group.Side() != g.Side() || face != parts.Front || s.Hollow() {
		return 0
	}
	side, across := bars.Side(g.Side()), s.DepthMm
	if side == bars.Top || side == bars.Bottom {
		across = s.WidthMm
	}
	return geom.Clean(across - s.AtMm(side))
}

// anchorText says what is fixed to the floor and by what. How long and of what kind an anchor
// is hangs on the floor, which the job does not know.
func (j *shop) anchorText(t *joint) string {
	r := j.model(t.in.Anchored.Value)
	what, it := r.Out.Title, "it"
	if n := r.Part.Quantity; n > 1 {
		what, it = "the "+strconv.Itoa(n)+" × "+what, "them"
	}
	text := "Set " + what + " level and fix " + it + " to the floor, before anything more goes on"
	by, under := "", ""
	for _, a := range j.anchors(t) {
		by = words.Join(", ", by, strconv.Itoa(a.count)+" × "+words.Lower(a.item)+" ("+a.hole+")")
		if a.spacer != "" {
			under = " The leg that is bolted stands clear of the floor: a " + words.Lower(a.spacer) + " by the drawing, cut to the gap there as it is levelled," +
				" round each anchor under it, or tightening bends the leg."
		}
	}
	return words.Either(by == "", text+"; no holes for anchors are drawn: clamp or weld "+it+" to what the floor has.", text+": "+by+", the kind, length and torque by its maker for this floor."+under)
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
		for _, a := range j.anchors(t) {
			list.add(a.item, a.count, j.model(name).Out.Title+" "+a.hole, "length and kind by the floor").Anchor = true
			if a.spacer != "" {
				list.add(a.spacer, a.count, j.model(name).Out.Title+" "+a.hole, "")
			}
		}
	}
}
