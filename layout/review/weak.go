package review

import (
	"math"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts/geom"
)

// What a solid keeps where it is cut away: common practice, no source.
const (
	flatsShare = 0.5 // of the diameter, across flats
	neckShare  = 0.8 // of the core of the thread beside a neck
	reliefMm   = 0.3 // under the root of a lead screw
	leastTurns = 4.0 // of an outside thread that a nut or a tapped hole is to hold by
)

// weak looks for places where a turned part is the weakest link of what hangs on
// it: milled away by flats, necked below its thread, or threaded for few turns.
var weak = together(each(everyFlat, (*view).weakFlats), each(everyStep, (*view).fewTurns, (*view).leadRelief), each(everyOutside, (*view).weakNeck, (*view).wideNeck, (*view).wideTip))

// weakFlats looks at what flats leave.
func (v *view) weakFlats(f plan.FlatsRow) {
	v.atLeast(f.Name, entryPos(v.p, f.Name), f.AcrossMm, flatsShare*f.DiameterMm, Finding{
		What: f.Name + " takes most of the part that it is milled on", Numbers: " of " + v.mm(f.DiameterMm) + ", wanted at least ",
		Rule: "flats leave half the diameter at the least", Fix: "a larger size across the flats, or a thicker step",
	})
}

// wideTip finds a plain end before a thread that is larger than the core of its nut, where
// nothing lets the nut on from the other side.
func (v *view) wideTip(c *cylinder) {
	t := c.Size.Thread
	if t == nil {
		return
	}
	wide := func(steps []*cylinder) (out *cylinder) {
		for _, o := range steps {
			like := o.Drawn.Size.Thread.Value == c.Drawn.Size.Thread.Value // a nut screws over it
			if !like && geom.Over(2*o.RadiusMm(), t.MinorMm) && o.RadiusMm() > outerMm(out) {
				out = o
			}
		}
		return out
	}
	front, back := wide(c.before), wide(c.behind)
	if front == nil || back == nil {
		return // open at one end
	}
	tip := words.Either(back.RadiusMm() < front.RadiusMm(), back, front)
	v.report(Check, tip.Name, tip.Drawn.Pos, Finding{
		What: "no nut starts on " + c.Name + ": " + tip.Name + " before it is larger than its core", OverMm: over(2 * tip.RadiusMm()),
		Numbers: v.mm(2*tip.RadiusMm()) + ", wanted at most " + v.mm(t.MinorMm),
		Rule:    "what stands before a thread goes through its nut", Source: rootSource(t), Fix: "a smaller diameter there",
	})
}

// weakNeck finds the undercut of a thread, or a step between two larger ones, one of them a thread, that
// is well under the core of that thread: it breaks before the thread does.
func (v *view) weakNeck(c *cylinder) {
	d, name, of := 2*c.RadiusMm(), c.Name, c
	switch before, behind := c.neighbours(); {
	case c.threaded() && c.Undercut != nil:
		d, name = d-2*c.Undercut.DepthMm, "the undercut"
	case c.threaded() || outerMm(before) <= c.RadiusMm() || outerMm(behind) <= c.RadiusMm() || !before.threaded() && !behind.threaded():
		return
	case !before.threaded() || behind.threaded() && behind.rootMm() < before.rootMm():
		of = behind
	default:
		of = before
	}
	core := 2 * of.rootMm()
	v.atLeast(c.Name, c.Drawn.Pos, d, neckShare*core, Finding{
		What: name + " is weaker than " + of.Name + " beside it", Numbers: " beside a core of " + v.mm(core) + ", wanted at least ",
		Rule: "a neck beside a thread keeps about the core of the thread", Fix: "a larger diameter there",
	})
}

// wideNeck finds a short neck between a thread and a larger step that is thicker than the root of
// the thread, into which the tool is to run out, or shorter than a turn of it.
func (v *view) wideNeck(c *cylinder) {
	beside := c.next()
	for k, o := range beside {
		next := beside[len(beside)-1-k]
		if next == o || !o.threaded() || o.Drawn.Undercut != nil || c.LengthMm() > 2*o.RadiusMm() || !geom.Over(o.RadiusMm(), c.RadiusMm()) || next.RadiusMm() <= c.RadiusMm() {
			continue
		}
		root, pitch, f := o.rootMm(), o.Size.Thread.PitchMm, v.here(c.Name, c.Drawn.Pos)
		v.firstOf(f, flaw{geom.Over(c.RadiusMm(), root), Finding{
			What: "the thread " + o.Name + " does not run out into " + c.Name + ": it is cut deeper than that", OverMm: over(2 * c.RadiusMm()),
			Numbers: v.mm(2*c.RadiusMm()) + ", the root of " + o.Drawn.Size.Thread.Value + " " + v.mm(2*root),
			Rule:    "a neck that a thread runs out into is under its root", Source: rootSource(o.Size.Thread), Fix: "at most " + v.mm(2*root) + ", or an undercut",
		}}, flaw{geom.Over(pitch, c.LengthMm()), Finding{
			What: c.Name + " is shorter than a turn of the thread " + o.Name + " that runs out into it", LeftMm: left(c.LengthMm()), Numbers: v.mm(c.LengthMm()) + ", wanted " + v.mm(pitch),
			Rule: "a tool is drawn out of its thread within a turn at the best", Fix: "a neck two pitches long",
		}})
	}
}

// rootSource is where the root of a thread is from.
func rootSource(t *threads.Thread) string {
	if t.Lead != nil {
		return t.Source.String()
	}
	return "ISO 724, ASME B1.1"
}

// leadRelief finds the thread of a lead screw whose undercut is shallower than the thread, and one without
// where metal stands over its root: so broad a tool cannot be drawn out of a full cut by hand. Common practice, no source.
func (v *view) leadRelief(c *cylinder) {
	if c.Size.Thread == nil || c.Size.Thread.Lead == nil {
		return
	}
	t, l := c.Size.Thread, c.Size.Thread.Lead.Of(c.Inside)
	f := Finding{Rule: "a broad tool runs out into a relief that is as deep as its thread", Source: practice}
	if u := c.Undercut; u != nil {
		deep := math.Abs(c.RadiusMm() - c.rootMm()) // to the nominal root
		f.What, f.Numbers, f.Fix = "the undercut of "+c.Name+" is shallower than its thread", ", wanted ", "a depth of "+v.mm(deep+reliefMm)
		v.atLeast(c.Name, c.Drawn.Pos, u.DepthMm, deep, f)
		return
	}
	stands := func(o *cylinder, end bool) bool { // over the root; of a blind bore its floor
		switch {
		case o == nil:
			return !end
		case c.Inside:
			return geom.Over(c.rootMm(), o.rootMm())
		}
		return geom.Over(o.RadiusMm(), c.rootMm())
	}
	before, behind := c.neighbours()
	if !stands(before, !geom.Some(c.FromMm)) && !stands(behind, !geom.Over(v.lengthMm, c.ToMm)) {
		return
	}
	f.What, f.Numbers = "the tool of "+c.Name+" has no relief to run out into", t.Designation+" of "+v.mm(l.DepthMm)+" depth"
	f.OverMm, f.Fix = over(l.DepthMm), "undercut: {width: two pitches, depth: a little over that of the thread}, or a neck under its root"
	v.report(Check, c.Name, c.Drawn.Pos, f)
}

// fewTurns finds a thread of so few turns that nothing holds by it.
func (v *view) fewTurns(c *cylinder) {
	if c.Size.Thread == nil {
		return
	}
	long := c.LengthMm()
	if c.Undercut != nil {
		long -= c.Undercut.WidthMm
	}
	v.atLeast(c.Name, c.Drawn.Pos, long, leastTurns*c.Size.Thread.PitchMm, Finding{
		What: c.Name + " has few turns of thread", Numbers: " of " + c.Size.Thread.Designation + ", wanted at least ",
		Rule: "a thread holds by " + strconv.Itoa(int(leastTurns)) + " turns at the least", Fix: "a longer step, or a finer thread",
	})
}
