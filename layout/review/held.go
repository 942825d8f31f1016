package review

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/machine"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// held looks in space at what the words stand or screw on a part: it is there, and stands the way
// up that they say.
var held = together(
	of(everyPart, (*view).waysUp, (*view).jacksBeside, each(everyRadial, (*view).setScrew), each(everyHole, (*view).saidStand, (*view).jacksOn)), (*reviewer).recesses,
	each(everyLoose, (*reviewer).clamps, (*reviewer).overHoles), each(anyJoint, (*reviewer).carries), of(everyMade, made.screwedOn, made.partlyOn),
)

// clampMm is how far apart the holes of two parts may stand that a screw holds together, beside
// one another by the play of that screw and of those that hold the part already.
// Common practice, no source: a sheet between, and what a screw pulls in.
const clampMm = 5.0

// clamping is a group of holes and one of threads that a screw may hold together, and how far these lie apart and
// beside one another.
type clamping struct {
	v, w              *view
	g, h              *parts.HoleGroup
	apartMm, besideMm float64
}

// clampings are those of a screw in the parts that words name.
func (r *reviewer) clampings(t threads.Thread, words string) (out []clamping) {
	named := seq.Keep(r.all(), func(v *view) bool { return v.p.NamedIn(words) })
	for _, v := range named {
		for _, w := range named {
			for _, g := range v.openFor(t, false) {
				for _, h := range w.openFor(t, true) {
					apart, beside, ok := r.machine().Apart(v.p.Name.Value, g.Name.Value, w.p.Name.Value, h.Name.Value)
					if ok && v != w {
						out = append(out, clamping{v, w, g, h, apart, beside})
					}
				}
			}
		}
	}
	return out
}

// clamps looks at screws that the words put through one part into another: the faces of the
// two lie on one another at the holes.
func (r *reviewer) clamps(e *parts.Loose) {
	o, ok := orderOf(cmp.Or(e.Buy.Value, e.Item.Value))
	if !ok || !strings.Contains(e.How.Value, "through ") {
		return
	}
	var near *clamping
	for c := range seq.Refs(r.clampings(o.thread, parts.Bare(e.How.Value))) {
		if near != nil && c.apartMm+c.besideMm >= near.apartMm+near.besideMm {
			continue
		}
		near = c
		through := c.v.holesOf(c.g.Name.Value)[0]
		if c.apartMm <= clampMm && !geom.Over(c.besideMm, 2*through.radiusMm-o.thread.MajorMm) {
			deep := words.Either(c.h.Through, 0, c.h.Depth.Mm)
			c.w.holds("the screws through "+c.g.Name.Value+" of "+c.v.p.Title.Value+" into "+c.w.p.Title.Value, e.Pos, o.thread.MajorMm, o.longMm-through.metalMm-c.apartMm, deep)
			return
		}
	}
	if near != nil {
		r.add(Finding{
			Part: near.v.p.Name.Value, Feature: near.g.Name.Value, Pos: e.How.Pos,
			What:    "screws through " + near.g.Name.Value + " of " + near.v.p.Title.Value + " do not hold it on " + near.w.p.Title.Value,
			OverMm:  over(words.Either(near.apartMm > clampMm, near.apartMm, near.besideMm)),
			Numbers: r.mm(near.apartMm) + " apart, " + r.mm(near.besideMm) + " beside", Rule: "what a screw holds lies on the other part",
			Source: "by geometry", Fix: "lengths that bring the two together, or the part the other way round",
		})
	}
}

// carries looks in space over the free holes of a part for the room that the note of its joint needs there.
func (r *reviewer) carries(j *parts.Joint) {
	m := carriesHigh().FindStringSubmatch(j.Note.Value)
	first, _ := j.Ends()
	v := r.viewOf(first.Part)
	if m == nil || v == nil {
		return
	}
	high := r.itemMm(m[1] + " " + m[2])
	for _, h := range v.oneOfEach(func(h *hole) bool { return h.group != nil && !v.jointNames(h.name) }) {
		if under, free := r.machine().Above(first.Part, h.name); under != "" && geom.Over(high, free) {
			r.add(Finding{
				Part: first.Part, Feature: h.name, Pos: j.Note.Pos, What: "what " + v.p.Title.Value + " carries has no room under " + under,
				Numbers: r.mm(high) + " in " + r.mm(free), LeftMm: left(free),
				Rule: "what stands on a part has room over it", Source: "by geometry", Fix: "a lower one, or another place",
			})
			return
		}
	}
}

// screwsFor are the screws without nuts that are bought for a loose part: with it, or by themselves with words that name it; how
// many, 0 where that is not said.
func (v made) screwsFor() (o screwOrder, count int, pos parts.Pos, ok bool) {
	if o, ok = orderOf(v.e.Buy.Value); ok {
		return o, v.e.Count, v.e.Buy.Pos, !o.nut()
	}
	for e := range everyBought(v.reviewer) {
		if o, ok = orderOf(e.Item.Value); ok && !o.nut() && v.p.NamedIn(e.Item.Value+" "+e.How.Value) {
			return o, e.Count, e.Item.Pos, true
		}
	}
	return o, 0, v.e.Pos, false
}

// screwedOn looks in space at a loose part that screws hold on what it lies on: each of them meets a thread there, and comes far
// enough into it.
func (v made) screwedOn() {
	o, count, pos, ok := v.screwsFor()
	if own, _, _ := v.forScrew(o.thread); !ok || len(own) > 0 || len(v.e.Lies) == 0 || parts.SetScrew(o.words) {
		return
	}
	all := v.machine().Screwings(v.p.Name.Value, machine.Screws{Thread: o.thread, LongMm: o.longMm, Passes: func(mm float64) bool { return passesThrough(mm, o.thread) }})
	meet := seq.Keep(all, func(s machine.Screwing) bool { return s.Meets })
	if off := seq.At(all, func(s *machine.Screwing) bool { return !s.Meets && s.On != "" }); off != nil && len(meet) < min(len(all), max(1, count)) {
		f := v.here(off.Group, v.e.Pos)
		f.What, f.Numbers, f.OverMm = off.Group+" of "+v.p.Title.Value+" as it lies do not meet "+off.Thread+" of "+
			v.viewOf(off.On).p.Title.Value, v.mm(off.OffMm)+" beside, "+v.mm(max(0, off.GapMm))+" apart", over(max(off.OffMm, off.GapMm))
		f.Rule, f.Source, f.Fix = "a screw goes straight through its hole into its thread", "by geometry", "one pattern on both drawings, or lies: where the two meet"
		v.add(f)
		return
	}
	if len(v.clampings(o.thread, parts.Bare(v.e.How.Value))) == 0 || !strings.Contains(v.e.How.Value, "through ") { // else clamps looks at them
		v.screwsReach(o, pos, meet)
	}
}

// seatedShare is how much of a bore lies on the step that it is fitted to, at the least. Common practice, no source.
const seatedShare = 0.75

// partlyOn looks in space for a loose part whose bore lies partly beside the step of a shaft that its words put it on.
func (v made) partlyOn() {
	for _, to := range v.all() {
		seat := v.seatOn(to)
		if to == v.view || seat == nil || seat.threaded() || !to.p.NamedIn(v.e.How.Value) {
			continue
		}
		bore := seq.At(v.inside, func(c **cylinder) bool {
			return !(*c).threaded() && math.Abs((*c).RadiusMm()-seat.RadiusMm()) <= meetMm
		})
		for b := range v.machine().Parts() {
			on := v.machine().Along(b.Pose).Find(parts.Instance{Part: to.p.Name.Value, Copy: 1})
			if bore == nil || on == nil || v.machine().Of[b.ID].Part != v.p.Name.Value {
				continue
			}
			if lies := on.Span(seat.Span()).OnMm((*bore).Span()); geom.Over(lies, 0) && geom.Over(seatedShare*(*bore).LengthMm(), lies) {
				f := v.here((*bore).Name, v.e.Pos)
				f.What, f.Numbers, f.LeftMm = (*bore).Name+" of "+v.p.Title.Value+" as it lies is partly beside "+seat.Name+" of "+to.p.Title.Value,
					v.mm(lies)+" of "+v.mm((*bore).LengthMm())+" on it, wanted "+v.mm(seatedShare*(*bore).LengthMm()), left(lies)
				f.Rule, f.Source, f.Fix = "a bore lies on the step that it is fitted to", practice, "a longer "+seat.Name+", or lies: where it is on that"
				v.add(f)
				return
			}
		}
	}
}

// screwsReach looks at how far screws, ordered at a place of the job, come into the threads that they meet. One that fills a
// thread that goes through holds by what there is.
func (v made) screwsReach(o screwOrder, pos parts.Pos, meet []machine.Screwing) {
	for s := range seq.Refs(meet) {
		in, bottom := o.longMm-o.washers()*o.thread.MajorMm-s.GripMm, words.Either(s.Blind, s.DeepMm, 0.0)
		if s.Blind || geom.Over(s.DeepMm, in) {
			v.holds("the screws bought for "+v.p.Title.Value+" into "+s.Thread+" of "+v.viewOf(s.On).p.Title.Value, pos, o.thread.MajorMm, in, bottom)
			return
		}
	}
}

// overHoles looks in space at the holes that the words of a loose thing name: where it is bolted on, one
// of its own meets them, and screws with sunk heads come before what is bolted on those.
func (r *reviewer) overHoles(e *parts.Loose) {
	said, v := r.untitled(e.Item.Value+" "+e.How.Value), r.viewOf(e.Part.Value)
	for on, g := range r.groups() {
		if on == v || !saysHoles(said, g.Name.Value) || on.jointNames(g.Name.Value) {
			continue
		}
		f := on.here(g.Name.Value, e.How.Pos)
		f.Source = "by geometry"
		of := g.Name.Value + " of " + on.p.Title.Value
		wide := seq.Max(0, on.holesOf(g.Name.Value), func(h hole) float64 { return h.radiusMm })
		elsewhere := slices.ContainsFunc(e.Lies, func(l parts.Lying) bool { return l.Ref.Part != on.p.Name.Value })
		if off, ok := r.machine().Off(e.Part.Value, on.p.Name.Value, g.Name.Value); ok && off > wide && strings.Contains(e.Buy.Value, "nut") && !elsewhere {
			f.What, f.Numbers, f.OverMm = "no hole of "+v.p.Title.Value+" as it lies meets "+of, r.mm(off)+" off", over(off)
			f.Rule, f.Fix = "a bolt goes through both holes", "lies: at the place where the holes meet"
			r.add(f)
		}
		if under := r.onHeads(e, on.p, g); under != "" {
			f.What, f.Numbers, f.OverMm = "screws no longer go into "+of+": "+under+" lies on their heads by then", "after: "+e.After.Value, nil
			f.Rule, f.Fix = "a screw goes in before what covers its head", "first: yes, or after a joint before that one"
			r.add(f)
		}
	}
}

// onHeads is the part that has been bolted over the sunk heads of a group when its screws come; empty for none.
func (r *reviewer) onHeads(e *parts.Loose, p *parts.Part, g *parts.HoleGroup) string {
	for _, j := range r.pl.Joints {
		face, ok := r.faceOf(j.Name, p.Name.Value)
		if last := j.Name == e.After.Value; ok && j.Kind == parts.BoltKind && g.Countersink != nil && face == g.Face && !(last && e.First) {
			for _, end := range []plan.JointEnd{j.A, j.B} {
				if over := r.job.Part(end.Part); slices.Contains(r.machine().Under(p.Name.Value, g.Name.Value, meetMm), over.Title.Value) {
					return over.Title.Value
				}
			}
		}
		if j.Name == e.After.Value {
			break
		}
	}
	return ""
}

// openFor are the groups in no joint that have a thread, or that let it through.
func (v *view) openFor(t threads.Thread, tapped bool) []*parts.HoleGroup {
	open := v.oneOfEach(func(h *hole) bool {
		if h.group == nil || v.jointNames(h.name) {
			return false
		}
		if tapped {
			return h.thread != nil && h.thread.Designation == t.Designation
		}
		return h.thread == nil && passesThrough(2*h.radiusMm, t)
	})
	return seq.Map(open, func(h *hole) *parts.HoleGroup { return h.group })
}

// jacking tells whether a group has the threads of jacking screws, by what it is for or by the words of a loose part.
func (v *view) jacking(g *parts.HoleGroup) bool {
	pushes := func(e parts.Loose) bool {
		return e.Part.Value == v.p.Name.Value && g.For == parts.Drawing && strings.Contains(e.How.Value, " push ")
	}
	return g.Size.Make == parts.TappedHole && (g.For == parts.Jacking || slices.ContainsFunc(v.job.Loose, pushes)) && !v.jointNames(g.Name.Value)
}

// jacksOn looks for threads of jacking screws that have no part before either mouth, where all
// parts have their places.
func (v *view) jacksOn(g *parts.HoleGroup) {
	if len(v.pl.Faults) > 0 || !v.jacking(g) {
		return
	}
	f := v.here(g.Name.Value, g.Pos)
	f.What, f.Rule, f.Source, f.Fix = "screws in "+g.Name.Value+" of "+v.p.Title.Value+
		" press on nothing", "a jacking screw presses on the part that it pushes off", "by geometry", "holes over that part"
	under := v.machine().Under(v.p.Name.Value, g.Name.Value, underMm)
	beside := func(copy []string) bool { return slices.Contains(copy, "") && cmp.Or(copy...) != "" }
	switch {
	case !g.Through:
		f.What, f.Fix = f.What+": the holes are blind", "depth: through"
	case len(under) == 0:
		return
	case cmp.Or(under...) != "" && !slices.ContainsFunc(slices.Collect(slices.Chunk(under, g.Pattern.Count)), beside):
		t, err := threads.Parse(g.Size.Thread)
		deeper, on := v.machine().Uneven(v.p.Name.Value, g.Name.Value, tipShare*t.MajorMm, underMm)
		if err != nil || deeper <= standsOffMm {
			return
		}
		f.What, f.Numbers, f.OverMm = "screws in "+g.Name.Value+" of "+v.p.Title.Value+" come down on an edge, a groove or a gap at "+
			on, v.mm(deeper)+" deeper on one side than on another", over(deeper)
		f.Rule, f.Fix = "a jacking screw presses on a face as wide as its point", "holes over a flat face"
	}
	v.add(f)
}

// jacksBeside looks for the jacking screws of a round part that stand on one side of its axis alone, by the widest angle between one
// and the next. Common practice, no source: three stand 120° apart, and one of them may be left out.
func (v *view) jacksBeside() {
	const most = 240.0
	var at []float64
	var first *parts.HoleGroup
	for g := range everyHole(v) {
		if v.jacking(g) {
			first = cmp.Or(first, g)
			at = append(at, seq.Map(v.holesOf(g.Name.Value), func(h hole) float64 { return geom.ClockDeg(h.a) })...)
		}
	}
	if len(at) < 2 || !v.turned() && v.p.Outline.Shape != parts.CircleOutline {
		return
	}
	slices.Sort(at)
	wide := at[0] + 360 - at[len(at)-1]
	for k := range len(at) - 1 {
		wide = max(wide, at[k+1]-at[k])
	}
	if geom.Over(wide, most) {
		v.report(Check, first.Name.Value, first.Pos, Finding{
			What:    "the screws in " + first.Name.Value + " of " + v.p.Title.Value + " push on one side of it alone: it tilts and jams",
			Numbers: number(wide) + "° without a screw, wanted at most " + number(most) + "°",
			Rule:    "what is jacked off is pushed evenly", Fix: "the screws across from one another, or three of them evenly round",
		})
	}
}

// underMm is how far under their holes what screws stand on is at the most. Common practice, no source.
const underMm = 25.0

// saidStand looks for holes whose screws, by the words, stand on something that is not under
// all of them.
func (v *view) saidStand(g *parts.HoleGroup) {
	v.fittedIn(g.Name, g.Fitted, g.Size)
	for _, note := range v.p.Notes {
		for _, said := range strings.Split(note.Value, ".") {
			m := standOn().FindStringSubmatch(said)
			if m == nil || !saysHoles(" "+strings.ToLower(m[1]), g.Name.Value) {
				continue
			}
			under := v.machine().Under(v.p.Name.Value, g.Name.Value, underMm)
			if len(under) == 0 {
				continue
			}
			meant := under[len(under)/2]
			f := Finding{What: "screws in " + g.Name.Value + " of " + v.p.Title.Value + " do not all stand on one thing", Numbers: ", another over " + cmp.Or(meant, "nothing")}
			for _, p := range v.job.Parts {
				lacks := func(word string) bool { return !strings.Contains(" "+strings.ToLower(m[2]), " "+word) }
				if p != v.p && !slices.ContainsFunc(strings.Fields(strings.ToLower(p.Title.Value)), lacks) {
					meant = p.Title.Value
					f.What, f.Numbers = "screws in "+g.Name.Value+" of "+v.p.Title.Value+" do not stand on "+meant+" as the words say", ""
				}
			}
			if other := slices.IndexFunc(under, func(on string) bool { return on != meant }); other >= 0 {
				f.Numbers = "hole " + number(float64(other%g.Pattern.Count+1)) + " over " + cmp.Or(under[other], "nothing") + f.Numbers + "; " + strings.TrimSpace(said)
				f.Rule, f.Source, f.Fix = "what a screw stands on is under it", "by geometry", "another place for the holes, or the words"
				v.report(Check, g.Name.Value, g.Pos, f)
			}
		}
	}
}
