package joint

import (
	"slices"
	"strconv"

	"centrepop/layout/bars"
	"centrepop/layout/bolts"
	"centrepop/layout/part"
	"centrepop/layout/plan"
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

// anchorsTight is the joint with which the anchors of what one has anchored are tightened: the later one that ties all its copies to one
// another, so that they come to stand as that has them; nil where nothing ties them later.
func (j *making) anchorsTight(t *joint) *joint {
	name, n := t.in.Anchored.Value, slices.Index(j.all, t)
	if name == "" {
		return nil
	}
	tied := func(made []*joint) bool {
		with := j.members(parts.Instance{Part: name, Copy: 1}, made)
		return len(seq.Keep(with, func(i parts.Instance) bool { return i.Part == name })) == j.model(name).Part.Quantity
	}
	if tied(j.all[:n]) {
		return nil
	}
	for k := range j.all[n:] {
		if tied(j.all[:n+k+1]) {
			return j.all[n+k]
		}
	}
	return nil
}

// anchoredHere puts the rows into a joint that fix a part to the floor before it, and tighten the anchors of one that it ties.
func (j *making) anchoredHere(t *joint) {
	if t.in.Anchored.Value != "" {
		tight := j.anchorsTight(t) == nil
		t.out.Steps = slices.Insert(t.out.Steps, 0, plan.JointStep{
			Title: "Anchor", Do: []string{j.anchorText(t, tight)}, Hold: words.Either(tight, "The anchors are tight; it does not rock.", "It stands level, and all nuts of the anchors are on."),
		})
	}
	for _, o := range j.all {
		if j.anchorsTight(o) == t {
			t.step("Tighten the anchors", "Now that they are tied, tighten the anchors of "+j.anchoredTitle(o)+" crosswise, by turns: each is shimmed first where it stands clear of the floor.").Hold =
				"The anchors are tight; it does not rock."
		}
	}
}

// anchoredTitle names what a joint has anchored, with all its copies.
func (j *shop) anchoredTitle(t *joint) string {
	r := j.model(t.in.Anchored.Value)
	if n := r.Part.Quantity; n > 1 {
		return "the " + strconv.Itoa(n) + " × " + r.Out.Title
	}
	return r.Out.Title
}

// anchorText says what is fixed to the floor and by what, or only set there with its anchors where those are tightened later. How long
// and of what kind an anchor is hangs on the floor, which the job does not know.
func (j *shop) anchorText(t *joint, tight bool) string {
	r := j.model(t.in.Anchored.Value)
	it := words.Either(r.Part.Quantity > 1, "them", "it")
	text := "Set " + j.anchoredTitle(t) + " level and fix " + it + " to the floor, before anything more goes on"
	if !tight {
		text = "Set " + j.anchoredTitle(t) + " level in their places on the floor, the nuts of their anchors run down by hand and no more until a later joint has tied them"
	}
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
