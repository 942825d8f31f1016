package review

import (
	"math"
	"strconv"

	"centrepop/layout/measured"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// chainWheel is the chain and the number of teeth that the title of a part, or a note on it, has; false where it has not both.
func (v *view) chainWheel() (c measured.Chain, teeth int, ok bool) {
	for _, said := range append([]parts.Text{v.p.Title}, v.p.Notes...) {
		if m := teethSaid().FindStringSubmatch(said.Value); m != nil {
			teeth, _ = strconv.Atoi(m[1])
			c, ok = measured.ParseChain(said.Value)
			return c, teeth, ok && teeth > 5
		}
	}
	return c, 0, false
}

// rimOfTeeth compares the outsides of a wheel for a chain with what is over so many teeth of its pitch.
func (v *view) rimOfTeeth() {
	c, teeth, ok := v.chainWheel()
	if !ok || len(v.outside) == 0 {
		return
	}
	least, most := c.RimMm(teeth)
	on := geom.Span{FromMm: least, ToMm: most}
	if seq.First(v.outside, func(s *cylinder) bool { return on.Holds(2 * s.RadiusMm()) }) != nil {
		return
	}
	is := 2 * v.wideMm()
	v.report(Check, "", v.p.Title.Pos, Finding{
		What: "no outside of " + v.p.Title.Value + " is that of its teeth", Numbers: v.mm(is) + " at its widest, " + number(float64(teeth)) + " teeth of " + c.Name +
			" have " + v.mm(least) + " to " + v.mm(most),
		OverMm: over(math.Max(least-is, is-most)), Rule: "the teeth of a wheel stand one pitch of its chain apart", Source: "ISO 606, from memory", Fix: "the number of teeth, the chain, or the outside",
	})
}

// chainFits compares a chain that is bought with the wheels of the job, where it is the only one, and its length with the way round those of the motor.
func (r *reviewer) chainFits(e *parts.Loose) {
	c, ok := measured.ParseChain(e.Item.Value)
	if !ok || !e.Chain() {
		return
	}
	f := Finding{Pos: e.Item.Pos, Rule: "a chain has the pitch and the rollers of its wheels", Source: "ISO 606", Fix: "the chain of the wheels, or wheels for the chain"}
	one := len(seq.Keep(r.job.Loose, func(o parts.Loose) bool { _, named := measured.ParseChain(o.Item.Value); return named && o.Chain() })) == 1
	for _, v := range r.all() {
		if its, _, ok := v.chainWheel(); ok && one && its.Name != c.Name {
			f.What, f.Numbers = "the chain that is bought is not that of "+v.p.Title.Value, c.Name+" on "+its.Name
			r.add(f)
			return
		}
	}
	motor, driven := r.wheels()
	if _, span, ok := r.apart(motor, driven); ok && c.Links > 0 {
		r.chainLong(e, c, motor, driven, span)
	}
}

// chainLong compares the links of a chain with those that lie round its wheels, as far as slots let these be shifted. It hangs through a little where it is one
// link longer; two come out of it.
func (r *reviewer) chainLong(e *parts.Loose, c measured.Chain, motor, driven *view, span float64) {
	const fewerLinks, moreLinks = 0.1, 2.0
	_, a, okA := motor.chainWheel()
	_, b, okB := driven.chainWheel()
	if !okA || !okB {
		return
	}
	shift, links := r.takeUpMm(), float64(c.Links)
	least, most := c.LinksRound(a, b, math.Max(c.PitchMm, span-shift)), c.LinksRound(a, b, span+shift)
	f := Finding{
		Pos: e.Item.Pos, Rule: "a chain goes round its wheels, and hangs through a little", Source: "by geometry", Fix: "a chain of that length, or another distance of the shafts",
		Numbers: number(links) + " links, wanted " + number(words.Round(c.LinksRound(a, b, span), 1)) + " at " + r.mm(words.Round(span, 0)),
	}
	if shift > 0 {
		f.Numbers += ", " + number(words.Round(least, 1)) + " to " + number(words.Round(most, 1)) + " as far as the slots let the shafts be shifted"
	}
	r.firstOf(f,
		flaw{least-links > fewerLinks, Finding{What: "the chain " + c.Name + " is too short for its wheels"}},
		flaw{links-most >= moreLinks && !r.tensioned(), Finding{What: "the chain " + c.Name + " is too long for its wheels"}},
	)
}
