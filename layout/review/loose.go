package review

import (
	"cmp"
	"maps"
	"math"
	"regexp"
	"slices"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// loose compares parts that no joint holds with the part that their words name: what goes
// over it, and a key that reaches from the tube it stands in into a keyway.
var loose = together(
	(*reviewer).motorOver, each(everyLoose, (*reviewer).whileFree), each(everyBought, (*reviewer).covers, (*reviewer).itemCircle, (*reviewer).itemOver, (*reviewer).coupledLate),
	of(everyMade, made.roomFor, made.inItem, made.toOthers, made.onMotorShaft, made.onMotorKey, made.turnedByMotor, made.keyLate),
)

// motorOver looks at what the motor brings over a part, itemOver at what another thing bought does.
func (r *reviewer) motorOver() {
	notes := r.motor().Notes
	for _, said := range notes {
		r.comesOver(said, seq.Map(notes, func(how parts.Text) string { return how.Value })...)
	}
}
func (r *reviewer) itemOver(e *parts.Loose) { r.comesOver(e.Item, e.How.Value) }

// whileFree looks for what is to go in while nothing is under it, and comes later.
func (r *reviewer) whileFree(e *parts.Loose) {
	if stillFree().MatchString(e.How.Value) && !e.First {
		r.add(Finding{
			Pos: e.Pos, What: "what is to be put in while nothing is under it comes when the parts of " + e.After.Value + " are together", Numbers: stillFree().FindString(e.How.Value),
			Rule: "words and order of one job agree", Source: "by the job", Fix: "first: yes",
		})
	}
}

// coupledLate looks at a coupling that comes when the motor stands before its shaft already: its hub goes on along that.
func (r *reviewer) coupledLate(e *parts.Loose) {
	m := r.motor()
	if e.Stands == nil || r.job.OnHoles(e.Stands) || m.Drives.Set() && (!m.InLine() || m.Drives.Part != e.Stands.On.Part) || comesInPieces().MatchString(e.Item.Value+" "+e.How.Value) {
		return
	}
	for o := range everyBought(r) {
		if (o.As == parts.AMotor || o.Stands != nil && r.job.OnHoles(o.Stands)) && r.turn(o) < r.turn(e) {
			r.add(Finding{
				Pos: e.Pos, What: words.Head(e.Item.Value) + " is put on when " + words.Head(o.Item.Value) + " stands before its shaft already",
				Numbers: "after " + e.After.Value + "; the motor after " + o.After.Value,
				Rule:    "a hub goes on along its shaft before the other shaft stands there",
				Fix:     "after: " + o.After.Value + words.Either(o.First, ", first: yes", "") + " for it too, or the motor later",
			})
		}
	}
}

// turn is when a loose thing comes: the step, and whether before or after the two of that meet.
func (r *reviewer) turn(e *parts.Loose) int {
	return 2*r.nth(e.After.Value) + words.Either(e.First, 0, 1)
}

// nth is the number of a joint in the order in which they are made, from 0.
func (r *reviewer) nth(joint string) int {
	return slices.IndexFunc(r.pl.Joints, func(j *plan.JointPlan) bool { return j.Name == joint })
}

// keyLate finds a key that comes when what it turns is on the step of its keyway already.
func (v made) keyLate() {
	if !isKey(v.p) {
		return
	}
	thick, _, _ := v.keyMm()
	how, its := parts.Bare(v.e.How.Value), []keyed(nil)
	for _, w := range v.all() {
		for _, k := range w.q.Keyways {
			if !k.Inside && geom.Alike(k.WidthMm, thick) {
				its = append(its, keyed{w, k.In})
			}
		}
	}
	for _, said := range []func(k keyed) bool{
		func(k keyed) bool { return k.p.NamedIn(v.e.How.Value) },
		func(k keyed) bool { return strings.Contains(how, " "+strings.ReplaceAll(k.step, "-", " ")+" ") },
	} {
		if named := seq.Keep(its, said); len(named) > 0 {
			its = named
		}
	}
	if len(its) != 1 { // which of them it goes into nobody says
		return
	}
	if name, after := v.onStep(its[0].view, its[0].step); name != "" {
		v.report(Check, "", v.e.After.Pos, Finding{
			What: v.p.Title.Value + " comes when " + name + " is on " + its[0].step + " of " + its[0].p.Title.Value + " already", Numbers: "after " + v.e.After.Value + "; " + name + " with " + after,
			Rule: "a key lies in its keyway before the hub goes over it", Source: "by geometry", Fix: "after: an earlier joint, or first: yes at " + after,
		})
	}
}

// onStep is what is on a step of a shaft before a loose part comes, and with which joint it came; empty for nothing.
func (v made) onStep(shaft *view, step string) (name, after string) {
	for e := range everyBought(v.reviewer) {
		if s := e.Stands; s != nil && s.On.Part == shaft.p.Name.Value && s.On.Feature == step && (v.turn(e) < v.turn(v.e) || v.turn(e) == v.turn(v.e) && e.Pos.Line < v.e.Pos.Line) {
			return words.Head(e.Item.Value), e.After.Value
		}
	}
	for _, j := range v.planned(parts.SlideKind) {
		if j.B.Part == shaft.p.Name.Value && j.B.Feature == step && 2*v.nth(j.Name) < v.turn(v.e) {
			return j.A.Title, j.Name
		}
	}
	return "", ""
}

// roomFor compares the length of a part with the room that the words leave for it.
func (v made) roomFor() {
	m := roomSaid().FindStringSubmatch(v.e.How.Value)
	if m == nil {
		return
	}
	if room := v.itemMm(m[1] + " " + m[2]); geom.Over(v.lengthMm, room) {
		v.report(Check, "", v.e.How.Pos, Finding{
			What: v.p.Title.Value + " is longer than the room that the words leave for it", Numbers: v.mm(v.lengthMm) + " in " + v.mm(room), LeftMm: left(room),
			Rule: "what comes in along its length needs that much free", Source: "by geometry", Fix: "more room, or another way in",
		})
	}
}

// toOthers looks at a part beside each other that its words name.
func (v made) toOthers() {
	words := parts.Bare(onMotor().ReplaceAllString(v.e.How.Value, "")) // which no part of the job is
	for _, o := range v.all() {
		if o == v.view {
			continue
		}
		v.throughOpening(o)
		v.enters(o, words)
		if m := goesIn().FindStringSubmatch(words); m != nil && v.job.Begins(m[2], o.p) {
			v.tooWide(o)
		}
		if m := liesOn().FindStringSubmatch(words); m != nil && v.job.Begins(m[1], o.p) {
			v.falls(o)
			v.inRim(o)
			continue
		}
		v.to(o, words)
	}
}

// pressOverMm is how much larger than its hole what is pressed in may be drawn. Common practice, no source.
const pressOverMm = 0.2

// enters looks at a round that its words put into or through another part, or screw into it: one of its steps at least
// has a hole there, or one of its threads.
func (v made) enters(o *view, words string) {
	for _, at := range entering().FindAllStringSubmatchIndex(words, -1) {
		switch {
		case !v.turned() || !v.job.Begins(words[at[1]:], o.p):
		case at[2] >= 0 && strings.HasPrefix(words[at[2]:at[3]], "screw"):
			v.screwsInto(o)
			return
		case len(o.holes) > 0 && o.p.Bore == nil && !o.turned():
			v.goesInto(o)
			return
		}
	}
}

// goesInto compares the thinnest step of a round with the widest hole of the flat part that it goes into.
func (v made) goesInto(o *view) {
	thin := seq.Least(v.outside, func(c *cylinder) float64 { return c.RadiusMm() })
	wide := seq.Max(0, o.holes, func(h hole) float64 { return h.radiusMm })
	if geom.Over(2*(thin-wide), pressOverMm) {
		v.report(Check, "", v.e.Part.Pos, Finding{
			What: v.p.Title.Value + " does not go into " + o.p.Title.Value, Numbers: v.mm(2*thin) + " at its thinnest into " + v.mm(2*wide) + " at the widest", OverMm: over(2 * (thin - wide)),
			Rule: "what goes into a hole is no larger than it", Source: "by geometry", Fix: "a larger hole, or a thinner step",
		})
	}
}

// screwsInto compares the threads on the outside of a round with those of the part that it is screwed into.
func (v made) screwsInto(o *view) {
	var own []string
	has := o.threads()
	for _, c := range v.outside {
		if c.Size.Thread == nil {
			continue
		}
		if has[threadName(c.Drawn.Size.Thread.Value)] {
			return
		}
		own = append(own, c.Drawn.Size.Thread.Value)
	}
	if len(own) > 0 {
		v.report(Stop, "", v.e.Part.Pos, Finding{
			What: v.p.Title.Value + " does not screw into " + o.p.Title.Value + ", which has not its thread", Numbers: strings.Join(own, ", "),
			Rule: "a screw and its nut have one thread", Source: "by geometry", Fix: "the same thread on both drawings",
		})
	}
}

// to looks at a part that its words stop on another, or put over it.
func (v made) to(o *view, words string) {
	p := o.p
	stopped := func(at []int) bool { return v.job.Begins(words[at[1]:], p) || v.firstNamed(words[at[1]:], p) }
	if slices.ContainsFunc(stopsAt().FindAllStringIndex(words, -1), stopped) {
		v.stopsOn(o)
	}
	if !p.NamedIn(words) {
		return
	}
	beside := regexp.MustCompile(`(?i)\b(?:against|beside|behind|before|next to) (?:the |its )?(?:` + regexp.QuoteMeta(p.Title.Value) + `|` + regexp.QuoteMeta(p.Name.Value) + `)(?: |$)`)
	if p.NamedIn(beside.ReplaceAllString(words, "")) {
		v.goesOver(o)
		v.keyReach(v.view, o)
		v.putOn(o)
	}
}

// stopsOn looks at a stop that goes through what it is to stop on.
func (v made) stopsOn(on *view) {
	wide, bore := v.wideMm(), on.openMm()
	if !aStop().MatchString(v.p.Title.Value) || wide == 0 || math.IsInf(bore, 1) || geom.Over(wide, bore) {
		return
	}
	v.add(Finding{
		Part: v.p.Name.Value, Pos: v.e.How.Pos, What: v.p.Title.Value + " goes through " + on.p.Title.Value + " and stops nothing there",
		Numbers: v.mm(2*wide) + " in a bore of " + v.mm(2*bore), LeftMm: left(2 * wide),
		Rule: "a stop is wider than the bore that it comes to rest on", Source: "by geometry", Fix: "a smaller bore, or a larger stop",
	})
}

// firstNamed tells whether words begin with the first word of a part's title, which no other has.
func (r *reviewer) firstNamed(words string, p *parts.Part) bool {
	first := func(s string) string {
		word, _, _ := strings.Cut(strings.ToLower(strings.TrimSpace(s)), " ")
		return word
	}
	return first(words) == first(p.Title.Value) && !slices.ContainsFunc(r.job.Parts, func(o *parts.Part) bool { return o != p && first(o.Title.Value) == first(words) })
}

// tooWide looks at what is to be in a tube: it is round and wider than the tube inside.
func (v made) tooWide(tube *view) {
	open, wide := tube.openMm(), v.wideMm()
	if tube.p.Kind != parts.Tube || wide < open {
		return
	}
	v.report(Check, "", v.e.How.Pos, Finding{
		What: v.p.Title.Value + " does not go into " + tube.p.Title.Value, Numbers: v.mm(2*wide) + " in " + v.mm(2*open), OverMm: over(2 * (wide - open)),
		Rule: "what is in a tube is smaller than it inside", Source: "by geometry", Fix: "a smaller " + v.p.Title.Value + ", or a larger tube",
	})
}

// inItem looks at a cone that is put into a hole of a thing that is bought: its small end is
// larger than the holes.
func (v made) inItem() {
	m, cone := goesIn().FindStringSubmatch(parts.Bare(v.e.How.Value)), v.p.Frustum
	if m == nil || m[1] == "" || cone == nil {
		return
	}
	outside, _ := cone.Walls()
	small := cone.Small.Mm + outside
	for e := range seq.Refs(v.job.Loose) {
		of := e.Item.Value
		name, _, _ := strings.Cut(of, ",")
		size := itemHoles().FindStringSubmatch(of)
		if size == nil || !strings.HasPrefix(strings.ToLower(m[2]), strings.ToLower(name)) || small < v.itemMm(size[1]) {
			continue
		}
		v.report(Check, "", v.e.How.Pos, Finding{
			What: v.p.Title.Value + " does not go into a hole of the " + name, Numbers: v.mm(small) + " in " + v.mm(v.itemMm(size[1])), OverMm: over(small - v.itemMm(size[1])),
			Rule: "what goes into a hole is smaller than it", Source: "by the job", Fix: "a smaller end, or larger holes",
		})
	}
}

// covers looks at a sheet that is bought to lie on the mouth of a part: it is smaller than the
// mouth, and falls in.
func (r *reviewer) covers(e *parts.Loose) {
	size, on := itemSheet().FindStringSubmatch(e.Item.Value), onMouth().FindStringSubmatch(parts.Bare(e.How.Value))
	if size == nil || on == nil {
		return
	}
	long, short := r.itemMm(size[1]), r.itemMm(size[2])
	long, short = max(long, short), min(long, short)
	for _, p := range r.job.Parts {
		if !r.job.Begins(on[1], p) {
			continue
		}
		wide, deep := mouthMm(p)
		if long > wide && short > deep {
			continue
		}
		r.add(Finding{
			Part: p.Name.Value, Pos: e.Pos, What: "the sheet bought to lie on the mouth of " + p.Title.Value + " falls into it",
			Numbers: r.mm(long) + " by " + r.mm(short) + " on " + r.mm(wide) + " by " + r.mm(deep),
			LeftMm:  left(min(long-wide, short-deep)), Rule: "what lies on an opening is larger than it", Source: "by the job", Fix: "a larger sheet",
		})
	}
}

// mouthMm is how wide and deep the large end of a part of formed sheet is inside; no width of another.
func mouthMm(p *parts.Part) (wide, deep float64) {
	switch p.Kind {
	case parts.TransitionPiece:
		wide, deep = max(p.Transition.Width.Mm, p.Transition.Depth.Mm), min(p.Transition.Width.Mm, p.Transition.Depth.Mm)
	case parts.Cone:
		wide, deep = p.Frustum.Large.Mm, p.Frustum.Large.Mm
	default:
		return -endless, 0
	}
	_, in := p.Formed().Walls()
	return wide - in, deep - in
}

// brings tells whether words bring something onto a part: they have its title, or its last word after one
// that brings.
func (r *reviewer) brings(how string, p *parts.Part) bool {
	return p.NamedIn(how) || r.onto(how, p)
}
func (r *reviewer) onto(how string, p *parts.Part) bool {
	return parts.Onto(how, func(rest string) bool { return r.job.Begins(rest, p) })
}

// brought are the parts that words bring something onto, by what stands after a word that brings; else all that they name.
func (r *reviewer) brought(how string) []*parts.Part {
	if onto := seq.Keep(r.job.Parts, func(p *parts.Part) bool { return r.onto(how, p) }); len(onto) > 0 {
		return onto
	}
	return seq.Keep(r.job.Parts, func(p *parts.Part) bool { return p.NamedIn(how) })
}

// comesOver looks at a thing bought that words bring onto a part, over what runs through that: its bore is
// narrower. Of several parts it comes onto the one before which least stands out.
func (r *reviewer) comesOver(said parts.Text, how ...string) {
	bored := boredFor().FindAllStringSubmatch(said.Value, -1)
	if bored == nil {
		return
	}
	least := map[string]float64{}
	for _, words := range how {
		for _, p := range r.brought(words) {
			for title, mm := range r.machine().Beyond(p.Name.Value) {
				least[title] = min(mm, cmp.Or(least[title], mm))
			}
		}
	}
	for _, title := range slices.Sorted(maps.Keys(least)) {
		for _, m := range bored {
			bore, mm := r.itemMm(m[1]+m[3]+" "+m[2]+m[4]), least[title]
			if m[5] != "" && !strings.HasPrefix(strings.ToLower(m[5])+" ", strings.ToLower(title)+" ") || !geom.Over(mm, bore) || bore == 0 {
				continue
			}
			r.add(Finding{
				Pos: said.Pos, What: "what is bought does not come over " + title, Numbers: r.mm(bore) + " over " + r.mm(mm), OverMm: over(mm - bore),
				Rule: "a bore is wider than what it comes over", Source: "by the job", Fix: "a wider bore",
			})
		}
	}
}

// falls looks at what is to lie on something round: its opening is smaller than that.
func (v made) falls(on *view) {
	open := v.openMm()
	if len(on.outside) == 0 || math.IsInf(open, 1) {
		return
	}
	wide := on.wideMm()
	if v.p.Kind == parts.Cone && keepsOff().MatchString(v.p.Title.Value) {
		v.atLeast("", v.p.Frustum.Large.Pos, v.p.Frustum.Large.Mm, 2*wide, Finding{
			What: v.p.Title.Value + " does not reach over " + on.p.Title.Value + " that it lies on", Numbers: " over ",
			Rule: "what keeps water or dirt off reaches over the edge", Source: "by geometry", Fix: "a larger end",
		})
	}
	if geom.Over(wide, open) {
		return
	}
	v.report(Check, "", v.e.How.Pos, Finding{
		What: v.p.Title.Value + " does not lie on " + on.p.Title.Value + ": it falls over it", Numbers: v.mm(2*open) + " over " + v.mm(2*wide), OverMm: over(2 * open),
		Rule: "what lies on a part has a smaller opening than it", Source: "by geometry", Fix: "a smaller opening",
	})
}

// inRim looks at what is to lie on a part inside the rim of a thing that is bought for the same part.
func (v made) inRim(on *view) {
	wide := 2 * v.wideMm()
	if v.p.Kind == parts.Cone {
		wide = v.p.Frustum.Large.Mm
	}
	for o := range seq.Refs(v.job.Loose) {
		said := o.Item.Value + "; " + o.How.Value
		if m := itemRim().FindStringSubmatch(said); m != nil && v.brings(o.How.Value, on.p) {
			if rim := v.itemMm(m[1] + " " + m[2]); !geom.Over(rim, wide) {
				v.report(Check, "", v.e.How.Pos, Finding{
					What: v.p.Title.Value + " runs against the rim of what is bought for " + on.p.Title.Value, Numbers: v.mm(wide) + " in " + v.mm(rim), OverMm: over(wide - rim),
					Rule: "what lies in a rim is smaller than it inside", Source: "by geometry", Fix: "a smaller " + v.p.Title.Value + ", or a wider rim",
				})
			}
		}
	}
}

// screwsPass looks at the screws of a loose part that come through holes of their name in
// the wall of what it stands in.
func (r *reviewer) screwsPass(v, wall *view, g *parts.HoleGroup) {
	t, err := threads.Parse(g.Size.Thread)
	if g.Size.Thread == "" || err != nil {
		return
	}
	for _, row := range wall.q.Radials {
		if tooSmall(row, g, t) {
			v.report(Check, g.Name.Value, g.Pos, Finding{
				What: "the screws of " + v.p.Title.Value + " do not go through " + row.Name + " of " + wall.p.Title.Value + " with any play, or their heads do too", LeftMm: left(row.DiameterMm),
				Numbers: t.Designation + " through " + r.mm(row.DiameterMm) + ", wanted " + r.mm(playing(t)) + " at the least",
				Rule:    "the hole lets the screw through", Source: "ISO 273, ASME B18.2.8", Fix: "holes for that screw",
			})
		}
	}
}

// goesOver looks at what is put over a shaft: one of its ends at least goes through, or screws in.
func (v made) goesOver(shaft *view) {
	open := v.openMm()
	for _, o := range shaft.outside {
		if o.Size.Thread != nil && slices.ContainsFunc(v.inside, func(c *cylinder) bool {
			return c.Size.Thread != nil && c.Size.Thread.Designation == o.Size.Thread.Designation
		}) {
			open = max(open, o.RadiusMm())
		}
	}
	for g := range seq.Refs(v.p.Holes) {
		v.screwsPass(v.view, shaft, g)
	}
	n := len(shaft.outside)
	if v.lainAlong(shaft) || n == 0 || math.IsInf(open, 1) || !shaft.turned() || len(shaft.inside) > 0 && shaft.p.Kind == parts.Tube {
		return
	}
	past := func(end, next *cylinder) float64 {
		least := 2 * end.RadiusMm()
		if len(v.e.Lies) > 0 { // it is known where it comes to lie: on the end that is as long as it
			least = min(least, v.lengthMm)
		}
		if end.LengthMm() < least {
			return max(end.RadiusMm(), next.RadiusMm()) // a short step at the very end is its point
		}
		return end.RadiusMm()
	}
	least, on := min(past(shaft.outside[0], shaft.outside[min(1, n-1)]), past(shaft.outside[n-1], shaft.outside[max(n-2, 0)])), shaft.p.Title.Value
	if step := v.overStep(shaft); step != nil {
		least, on = step.RadiusMm(), words.Spaced(step.Name)+" of "+on
	}
	if geom.Over(least, open) {
		v.report(Check, "", v.e.Part.Pos, Finding{
			What: v.p.Title.Value + " does not go over " + on, Numbers: v.mm(2*open) + " over " + v.mm(2*least), LeftMm: left(2 * open),
			Rule: "what goes over a shaft goes over its end", Source: "by geometry", Fix: "a larger opening",
		})
	}
}

// overStep is the step of a shaft that the words put a part over: "over the pin of the spindle".
func (v made) overStep(shaft *view) *cylinder {
	return seq.First(shaft.outside, func(o *cylinder) bool {
		name := regexp.MustCompile(`(?i)\bover (?:the |its )?` + regexp.QuoteMeta(words.Spaced(o.Name)) + ` of (?:the |its )?`)
		at := name.FindStringIndex(v.e.How.Value)
		return at != nil && v.job.Begins(v.e.How.Value[at[1]:], shaft.p)
	})
}

// lainAlong tells whether a turned part lies on the axis of another at a place that is known: what is in its way
// there, and on its way there, is looked at in space.
func (v made) lainAlong(shaft *view) bool {
	m := v.machine()
	for _, l := range m.Laid() {
		pose, placed := m.Poses[l.ID()]
		if !placed || l.Part != v.p.Name.Value || !v.turned() {
			continue
		}
		if seq.At(m.Along(pose), func(p *stand.OnAxis) bool { return p.Of.Part == shaft.p }) != nil {
			return true
		}
	}
	return false
}

// reachShare is the least of a keyway's depth that a key goes in by. Common practice, no
// source.
const reachShare = 0.5

// keyReach looks at a key that stands in a tube: from its inside it goes into the
// keyway of the shaft there, and not to the bottom.
func (r *reviewer) keyReach(v, tube *view) {
	if !isKey(v.p) || tube.p.Kind != parts.Tube || len(tube.inside) == 0 {
		return
	}
	thick, high, _ := v.keyMm()
	for _, shaft := range r.all() {
		for f := range seq.Refs(shaft.p.Radials) {
			if f.Shape != parts.RadialSlot || f.Through || !geom.Alike(f.Around.Mm, thick) {
				continue
			}
			c := at(shaft.outside, shaft.axialMm(f))
			if c == nil || c.RadiusMm() > tube.inside[0].RadiusMm() {
				continue
			}
			in := high - (tube.inside[0].RadiusMm() - c.RadiusMm())
			if !geom.Over(reachShare*f.Depth.Mm, in) && !geom.Over(in, f.Depth.Mm) {
				r.keyPath(v, shaft, f, tube.inside[0].RadiusMm()-high)
				continue
			}
			v.report(Check, "", v.p.Name.Pos, Finding{
				What:    v.p.Title.Value + " does not go into " + f.Name.Value + " of " + shaft.p.Title.Value + " as it is to",
				Numbers: r.mm(in) + " beyond the gap, in a keyway " + r.mm(f.Depth.Mm) + " deep", LeftMm: left(in),
				Rule: "a key goes half into its keyway at the least, and not to the bottom", Fix: "a bar as high as the gap and most of the keyway",
			})
		}
	}
}

// keyPath finds a keyway that no end of its shaft lets come over a key which stands in a tube
// and reaches to a radius: past both of its ends the shaft is thicker than that.
func (r *reviewer) keyPath(v, shaft *view, f *parts.Radial, tipMm float64) {
	z, closed := shaft.axialMm(f), endless
	for _, way := range []float64{-1, 1} {
		end, most := z+way*f.Along.Mm/2, 0.0
		for _, c := range shaft.outside {
			if geom.Over(way*(c.MidMm()-end), -c.LengthMm()/2) {
				most = max(most, c.RadiusMm())
			}
		}
		closed = min(closed, most-tipMm)
	}
	if !geom.Some(closed) {
		return
	}
	shaft.report(Stop, f.Name.Value, f.Pos, Finding{
		What:    f.Name.Value + " of " + shaft.p.Title.Value + " does not come over " + v.p.Title.Value + ": it is closed at both ends",
		Numbers: r.mm(closed) + " in the way of the key, which stands fast in its tube", Rule: "a keyway that slides over a fixed key runs out at the end that comes first", Source: "by geometry",
		Fix: "run it out over a thinner step, or make that end of the shaft as thin as its floor",
	})
}

// waysUp compares such words of a part, and of what puts it on, with how it stands.
func (v *view) waysUp() {
	p, b := v.p, v.bodyOf(v.p.Name.Value)
	if b == nil {
		return
	}
	for t, w := range saying(v.putWords(), wayUp) {
		way, end := b.Pose.Z.Dot(v.machine().Up), strings.ToLower(w[1])
		if slices.Contains([]string{"small", "narrow", "back", "flanges", "round"}, end) {
			way = -way // large and square ends are at the front, and flanges are bent to the back
		}
		known := end == "front" || end == "back" || p.Formed() != nil || p.Kind == parts.Folded
		if !known || (way > 0.5) == strings.EqualFold(w[2], "up") || math.Abs(way) < 0.5 {
			continue
		}
		v.add(Finding{
			Part: p.Name.Value, Pos: t.Pos, What: p.Title.Value + " stands the other way up than its words say", Numbers: w[0],
			Rule: "words and numbers of one job agree", Source: "by geometry", Fix: "the other face at its place, or the words",
		})
		return
	}
}

// putWords are the words of a part, and of what puts it on.
func (v *view) putWords() []parts.Text {
	said := slices.Clone(v.texts())
	for e := range seq.Refs(v.job.Loose) {
		if e.Part.Value == v.p.Name.Value {
			said = append(said, e.How)
		}
	}
	for _, j := range v.job.Joints {
		if a, _ := j.Ends(); a.Part == v.p.Name.Value {
			said = append(said, j.Note)
		}
	}
	return said
}

// itemCircle compares the circle that the holes of a thing bought lie on with the threads of
// the part that it goes on.
func (r *reviewer) itemCircle(e *parts.Loose) {
	m := itemRadius().FindStringSubmatch(e.Item.Value)
	if m == nil {
		return
	}
	hole, circle := r.itemMm(m[1]), r.itemMm(m[2])
	if strings.EqualFold(m[3], "radius") {
		circle *= 2
	}
	for _, v := range r.all() {
		if hole == 0 || circle == 0 || !r.brings(e.How.Value, v.p) {
			continue
		}
		var has []float64
		for h := range seq.Refs(v.holes) {
			if h.thread == nil || h.group.Pattern.PCD.Mm == 0 || h.group.For.Moves() {
				continue
			}
			pcd, play := h.group.Pattern.PCD.Mm, hole-h.thread.MajorMm
			if play > 0 && math.Abs(pcd-circle) <= play+meetMm {
				return
			}
			has = append(has, pcd)
		}
		if len(has) > 0 {
			v.report(Check, "", e.Item.Pos, Finding{
				What:    "the holes of what is bought for " + v.p.Title.Value + " do not meet its threads, or do not let their screws through",
				Numbers: "holes " + r.mm(hole) + " on a circle of " + r.mm(circle) + "; threads on " + few(v.written(has)),
				Rule:    "a screw goes through what it holds into its thread", Source: "by the job", Fix: "one circle in both places, and holes a little larger than the screws",
			})
		}
	}
}
