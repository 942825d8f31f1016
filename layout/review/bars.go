package review

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// hiddenHeads looks for bolts through one wall of a tube bar: their heads or nuts
// come inside it.
func (r *reviewer) hiddenHeads(j *parts.Joint) {
	for _, ref := range []parts.JointRef{j.Bolt.Through, j.Bolt.Into} {
		v := r.viewOf(ref.Part)
		if g, _ := v.groupNamed(ref.Feature); g != nil && v.p.Tubular() && g.OneWall() {
			v.report(Check, ref.Feature, g.Pos, Finding{
				What: "the bolts of " + j.Name.Value + " go through one wall of " + v.p.Title.Value + " and end inside it",
				Rule: "head and nut of a bolt are outside, where a spanner gets at them", Fix: "walls: both, or accept it beside an open end",
			})
		}
	}
}

// oneWall looks for a rod with nuts on both sides of each of what it holds, that goes into a tube
// of which one wall has a hole for it.
func oneWall(r *reviewer) {
	for e := range seq.Refs(r.job.Loose) {
		said, item := parts.Bare(e.How.Value), strings.Fields(parts.Bare(e.Item.Value))
		if !strings.Contains(said, " nuts on both sides ") && !strings.Contains(said, " nut on both sides ") {
			continue
		}
		for v, g := range r.groups() {
			if v.p.Tubular() && g.OneWall() && v.p.NamedIn(said) && slices.Contains(item, strings.ToLower(g.Name.Value)) {
				v.report(Check, g.Name.Value, g.Pos, Finding{
					What: g.Name.Value + " of " + v.p.Title.Value + " is in one wall, and what goes through has nuts on both sides", Numbers: e.How.Value,
					Rule: "head and nut of a bolt are outside, where a spanner gets at them", Fix: "walls: both",
				})
			}
		}
	}
}

// barFloor looks for blind holes of a bar without a wall, whose drill comes out at the far side.
func (v *view) barFloor() {
	bar := v.p.Bar
	if bar == nil || bar.Wall.Set() {
		return
	}
	for g := range seq.Refs(v.p.Holes) {
		across, drill := words.Either(g.On == parts.TopSide || g.On == parts.BottomSide, bar.Width.Mm, bar.Depth.Mm), g.Depth.Mm
		if t, err := threads.Parse(g.Size.Thread); err == nil && g.Size.Make == parts.TappedHole {
			drill = fullMm(&t, drill)
		}
		if g.Through || across <= 0 || !geom.Over(drill, across) {
			continue
		}
		v.report(Check, g.Name.Value, g.Pos, Finding{
			What: g.Name.Value + " of " + v.p.Title.Value + " are blind, but their drill comes out at the far side", Numbers: "full diameter " + v.mm(drill) + " deep in " + v.mm(across) + " of metal",
			OverMm: over(drill - across), Rule: "a blind hole keeps a floor", Source: "by geometry", Fix: "make it shallower, or depth: through",
		})
	}
}

// freeEnds looks for ends of bars that no weld joins, though the bar is in the machine: those that are cut to meet
// something, a mitre or a cope, and those that are welded on other copies.
func (v *view) freeEnds() {
	p := v.p
	for side, end := range p.BarEnds() {
		var free []int
		for copy := 1; copy <= p.Quantity; copy++ {
			its := func(ref parts.JointRef) bool { return ref.Instance() == parts.Instance{Part: p.Name.Value, Copy: copy} }
			in := slices.ContainsFunc(v.job.Joints, func(j *parts.Joint) bool { return j.Some(its) })
			welded := slices.ContainsFunc(v.job.Of(parts.WeldKind), func(j *parts.Joint) bool {
				return j.Some(func(ref parts.JointRef) bool { return its(ref) && ref.Feature == string(side) })
			})
			if in && !welded {
				free = append(free, copy)
			}
		}
		cut := end.Mitred() || end.Coped()
		for _, copy := range free {
			f := Finding{
				What: "the " + string(side) + " end of " + copyTitle(p, copy) + " is cut to meet something, and no joint welds it",
				Rule: "an end that is cut for a joint is in one", Fix: "add the weld joint, or cut the end square",
			}
			if !cut {
				f.What, f.Rule, f.Fix = "the "+string(side)+" end of "+copyTitle(p, copy)+
					" is welded nowhere, and that of other copies is", "the copies of a part are held alike", "add the weld joint, or a part of its own for the copy that ends free"
			}
			if cut || v.endWelded(string(side)) {
				v.report(Check, "", cmp.Or(end.Pos, p.Name.Pos), f)
			}
		}
	}
}

// endWelded tells whether a weld joins an end of some copy of the part.
func (v *view) endWelded(side string) bool {
	return slices.ContainsFunc(v.job.Of(parts.WeldKind), func(j *parts.Joint) bool { return j.Names(v.p.Name.Value, side) })
}

// besideEnd tells whether the place of a weld lies by what its first part has there: a gap as long as half of it puts its other end
// there.
func (r *reviewer) besideEnd(j *parts.Joint) bool {
	v := r.viewOf(j.Weld.Part.Part)
	return v != nil && math.Abs(j.Place.Gap.Mm) < v.lengthMm/2
}

// placeSides looks for welds whose ends name one side of a part, and whose place another;
// and for mitred corners of bars as wide that are unlike in what else they are.
func (r *reviewer) placeSides(j *parts.Joint) {
	say := func(what, numbers, rule, fix string) {
		r.add(Finding{Part: j.Name.Value, Pos: j.Pos, What: what, Numbers: numbers, Rule: rule, Source: "by the job", Fix: fix})
	}
	if p := j.Place; p != nil {
		for _, end := range [][2]string{{j.Weld.Part.Feature, p.With}, {j.Weld.To.Feature, p.On}} {
			if end[0] != end[1] && slices.Contains(parts.Sides, end[0]) && slices.Contains(parts.Sides, end[1]) {
				say(j.Name.Value+" welds one side and is placed by another", end[0]+" and "+end[1], "a part is welded where it touches", "the same side at weld and place")
			}
			if face := parts.EndFaces[end[0]]; face != "" && (end[1] == string(parts.Front) || end[1] == string(parts.Back)) && end[1] != string(face) && r.besideEnd(j) {
				say(j.Name.Value+" welds one end and is placed by the other", end[0]+", which is its "+string(face)+", and "+end[1],
					"a part is welded where it touches", "the "+string(face)+" in the place, or the other end in the weld")
			}
		}
		return
	}
	a, b := r.job.Part(j.Weld.Part.Part), r.job.Part(j.Weld.To.Part)
	if end := a.BarEnd(j.Weld.Part.Feature); end == nil || !end.Mitred() || b.Kind != parts.BarPart {
		return
	}
	x, y := a.Bar, b.Bar
	if x.Width.Mm != y.Width.Mm { // their cuts differ in length
		return
	}
	unlike := func(what, of, other string) {
		if of != other {
			say(a.Title.Value+" and "+b.Title.Value+" meet in a corner with unlike "+what+"s", of+" and "+other, "a frame is of one bar, or its corners are made for two", "one "+what+", or accept it")
		}
	}
	if x.Section != y.Section {
		unlike("section", string(x.Section), string(y.Section))
		return
	}
	unlike("depth", r.mm(x.Depth.Mm), r.mm(y.Depth.Mm))
	unlike("wall", r.mm(x.Wall.Mm), r.mm(y.Wall.Mm))
	unlike("flange", r.mm(x.Flange.Mm), r.mm(y.Flange.Mm))
}

// copedOver looks for bars that stand on an opening of the round they are coped
// onto. A bar lies across it: its depth along the axis, its width round it.
func copedOver(r *reviewer) {
	for _, p := range r.job.Parts {
		for _, end := range p.BarEnds() {
			if !end.Onto.Set() || end.Place == nil {
				continue
			}
			v := r.viewOf(end.Onto.Part)
			z := end.Place.AxialMm(v.lengthMm)
			o := seq.At(v.openings(), func(o *opening) bool {
				around := math.Abs(math.Remainder(o.clockDeg-end.Place.Clock.Deg, 360)) * math.Pi / 180 * v.q.Section.MaxMm
				return geom.Over(p.Bar.Depth.Mm/2+o.alongMm, math.Abs(o.zMm-z)) && geom.Over(p.Bar.Width.Mm/2+o.aroundMm, around)
			})
			if o == nil {
				continue
			}
			v.report(Stop, o.radial.Name.Value, o.radial.Pos, Finding{
				What: o.title(v) + " lies under " + p.Title.Value, Numbers: "it runs from " + v.mm(o.zMm-o.alongMm) + " to " + v.mm(o.zMm+o.alongMm) +
					" from the front face, the bar from " + v.mm(z-p.Bar.Depth.Mm/2) + " to " + v.mm(z+p.Bar.Depth.Mm/2),
				Rule: "an opening is free when the parts are joined", Source: "by geometry", Fix: "move it along or round the axis",
			})
		}
	}
}
