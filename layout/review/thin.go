package review

import (
	"math"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/material"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// thin looks for walls that undercuts, threads, counterbores and slots have left
// too thin.
var thin = together(
	(*view).thinRim, (*view).thinWall, each(everyStep, (*view).thinWeb), (*view).thinCast, (*view).thinHead, each(everySlot, (*view).underSlot),
	each(everyRadial, (*view).underRadial), each(everyHole, (*view).lug),
)

// turnedWall tells whether a wall is that of a turned part, not as bought.
func (v *view) turnedWall() bool { return !v.p.Flat() && v.p.Kind != parts.Tube }

// thinRim is the metal between the bore and the outline of a flat part.
func (v *view) thinRim() {
	if len(v.inside) == 0 || !v.p.Flat() {
		return
	}
	if wall := v.flatWall(); geom.Some(wall) {
		v.atLeast("bore", v.inside[0].Drawn.Pos, wall, min(max(2, 0.5*v.lengthMm), 0.25*v.inside[0].RadiusMm()), Finding{
			What: "little metal stays between the bore and the outline", Numbers: " at the thinnest, wanted ",
			Rule: "a ring is at least half as wide as it is thick, or an eighth of its bore", Fix: "a smaller bore or a larger outline",
		})
	}
}

// thinWall is the wall of a turned part, less its undercuts and threads.
func (v *view) thinWall() {
	for _, s := range v.m.Stretches() {
		out, in := at(v.outside, s.MidMm()), at(v.inside, s.MidMm())
		if out == nil || in == nil || !v.turnedWall() {
			continue
		}
		wall := out.rootMm() - in.rootMm()
		for _, c := range []*cylinder{out, in} {
			if u := c.Undercut; u != nil && s.Meets(v.m.Undercut(c.Step)) {
				wall -= max(0, u.DepthMm-math.Abs(c.RadiusMm()-c.rootMm())) // it is as deep under the thread as its floor lies
			}
		}
		v.atLeast(in.Name, in.Drawn.Pos, wall, leastWallMm(2*out.RadiusMm()), Finding{
			What: "the wall between " + in.Name + " and " + out.Name + " is thin", Numbers: " left, wanted ",
			Rule: "a turned wall at least 2 % of its diameter, and not under " + v.mm(1.5), Fix: "a smaller bore, a larger outside, or a shallower undercut",
		})
	}
}

// thinHead is the metal under a counterbore's head, and that for the cone of a countersink.
func (v *view) thinHead() {
	for _, h := range v.oneOfEach(func(h *hole) bool { return h.group != nil && h.group.Countersink != nil && h.metalMm > 0 }) {
		v.atLeast(h.name, h.pos, h.metalMm, h.group.Countersink.DepthMm(2*h.radiusMm), Finding{
			What: "the countersinks of " + h.name + " come out on the other side", Numbers: " of metal, the cone is deep ",
			Rule: "a part is no thinner than the heads that are let into it: they would bear on what lies under it", Fix: "smaller screws, or a thicker part",
		})
	}
	for _, h := range v.oneOfEach(func(h *hole) bool { return h.group != nil && h.group.Counterbore != nil && h.metalMm > 0 }) {
		v.atLeast(h.name, h.pos, h.metalMm-h.group.Counterbore.Depth.Mm, 0.4*2*h.radiusMm, Finding{
			What: "little metal stays under the counterbores of " + h.name, Numbers: " of " + v.mm(h.metalMm) + ", wanted ",
			Rule: "a head clamps at least 0.4 times its screw of metal", Fix: "shallower counterbores, or a thicker part",
		})
	}
}

// underSlot is the metal under a slot in a face.
func (v *view) underSlot(f *parts.FaceSlot) {
	if !f.Through {
		v.atLeast(f.Name.Value, f.Depth.Pos, v.lengthMm-f.Depth.Mm, max(1.5, 0.1*v.lengthMm), Finding{
			What: "little metal stays under " + f.Name.Value, Numbers: " of " + v.mm(v.lengthMm) + ", wanted ",
			Rule: "a slot leaves a tenth of the plate, and not under " + v.mm(1.5), Fix: "a shallower slot, or one that goes through",
		})
	}
}

// underRadial is the metal under a slot in the outside.
func (v *view) underRadial(f *parts.Radial) {
	wall, severity := v.wallAt(v.axialMm(f)), Check
	least, middle := max(1.5, 0.25*wall), 0.0
	if radiusAt(v.inside, v.axialMm(f)) == 0 { // a solid
		wall *= 2
		v.wideHole(f, wall)
		least, middle = 0.8*wall, wall/2
	}
	floor := wall - f.Depth.Mm
	if f.Through || f.Shape == parts.RadialHole || floor <= 0 || !geom.Over(least, floor) {
		return
	}
	if floor < middle {
		severity = Stop
	}
	v.report(severity, f.Name.Value, f.Pos, Finding{
		What: f.Name.Value + " leaves little metal under it", Numbers: v.mm(floor) + " of " + v.mm(wall) + ", wanted " + v.mm(least), LeftMm: left(floor),
		Rule: "a slot leaves a quarter of a wall, and 0.8 of the diameter of a solid", Fix: "a shallower slot, or a thicker wall",
	})
}

// wideHole finds a hole in the side of a solid that takes more than half of its
// diameter.
func (v *view) wideHole(f *parts.Radial, acrossMm float64) {
	const most = 0.5
	if f.Shape == parts.RadialHole {
		v.atMost(f.Name.Value, f.Pos, v.radialHoleMm(f), most*acrossMm, Finding{
			What: f.Name.Value + " takes most of the part that it crosses", Numbers: " in " + v.mm(acrossMm) + ", wanted at most ",
			Rule: "a hole across a solid takes half its diameter at most", Fix: "a smaller hole, or a thicker part",
		})
	}
}

// thinWeb finds a step that is left as a thin disc: one at the end of a bore that
// closes it part of the way, as behind a seal, or a collar.
func (v *view) thinWeb(c *cylinder) {
	high := seq.Least(c.next(), func(o *cylinder) float64 { return -c.outBy(o) })
	if long := c.LengthMm(); v.turnedWall() && !math.IsInf(high, 1) && high > long {
		v.atLeast(c.Name, c.Drawn.Pos, long, max(1.5, high/10), Finding{
			What: c.Name + " is left as a thin disc", Numbers: " thick and " + v.mm(high) + " high, wanted ",
			Rule: "a collar is a tenth as thick as it is high, and not under " + v.mm(1.5), Fix: "a longer step",
		})
	}
}

// castShare is how thick a flange of grey iron is at the least, in diameters of its bolts.
// Common practice, no source: handbooks have 1.2 to 1.5 for new castings.
const castShare = 1.0

// thinCast looks for flanges of grey iron that are thinner than the bolts in them.
func (v *view) thinCast() {
	if m, err := material.Find(v.p.Material.Value); err != nil || m.Kind != material.GreyIron || !v.turnedWall() {
		return
	}
	for _, h := range v.oneOfEach(func(h *hole) bool { return h.bolt() && h.metalMm > 0 }) {
		t, _ := threads.Parse(h.group.Size.Thread)
		v.atLeast(h.name, h.pos, h.metalMm, castShare*t.MajorMm, Finding{
			What: "the flange under the bolts of " + h.name + " is thin for cast iron",
			Rule: "a flange of cast iron, which breaks and does not bend, is as thick as its bolts", Fix: "a thicker flange, or smaller bolts",
		})
	}
}

// relief looks for undercuts that eat the seat they belong to: wider than a
// quarter of it, or deeper than reliefs are.
func (v *view) relief(c *cylinder) {
	if c.Undercut == nil || c.threaded() {
		return
	}
	u, long := c.Undercut, c.LengthMm()
	deepest := math.Max(0.6, 0.02*c.RadiusMm()*2)
	if geom.Over(u.WidthMm, 0.25*long) || geom.Over(u.DepthMm, deepest) {
		v.report(Check, c.Name, c.Drawn.Pos, Finding{
			What: "the undercut of " + c.Name + " eats its seat", Numbers: v.mm(u.WidthMm) + " wide and " + v.mm(u.DepthMm) + " deep on " + v.mm(long) +
				" of " + v.mm(2*c.RadiusMm()) + "; wanted at most " + v.mm(0.25*long) + " and " + v.mm(deepest),
			OverMm: over(u.WidthMm),
			Rule:   "a relief takes a quarter of the seat at most, and hardly weakens it (DIN 509 has " + v.mm(0.1) + " to " + v.mm(0.5) + ")",
			Fix:    "a narrower or shallower undercut, " + words.Either(strings.HasPrefix(u.Name, "DIN 509"), "of a smaller row of DIN 509, or a longer seat", "such as DIN 509 F"),
		})
	}
}

// A lug is so thick as a share of its eye, that a shackle does not bend it aside: common practice, no source. Its eye
// is torn at so much of its metal's strength: ASME BTH-1-2014 3-3.3.1 with a design factor of 3, from memory.
const lugShare, tornShare = 0.3, 1 / (1.2 * 3)

// lug compares the thickness of a plate with the eyes that it hangs or lifts by, and with the mass of all that stands,
// where that is known and each of two eyes at the most takes its share.
func (v *view) lug(g *parts.HoleGroup) {
	if g.For != parts.Lifting || !v.p.Flat() || g.Size.Make == parts.TappedHole || !g.Through {
		return
	}
	for _, h := range v.holes {
		if h.group != g {
			continue
		}
		f := Finding{
			What: v.p.Title.Value + " is thin for its eye " + g.Name.Value, Numbers: " thick, wanted ",
			Rule: "a lug is at least three tenths of its eye thick", Source: practice, Fix: "a thicker plate",
		}
		v.atLeast(g.Name.Value, g.Pos, v.lengthMm, lugShare*2*h.radiusMm, f)
		m, err := material.Find(v.p.Material.Value)
		if err != nil {
			return
		}
		s, err := m.Strength(v.lengthMm)
		mass := assembly.Together(v.machine().Bodies).MassKg
		if beside := v.nearestEdge(&h).wallMm; err == nil && s.TensileMPa > 0 && geom.Some(beside) && v.bodyOf(v.p.Name.Value) != nil {
			newtons, mpa := 9.81*mass/float64(min(2, v.count(g))), tornShare*s.TensileMPa
			f.What, f.Numbers = v.p.Title.Value+" is thin where "+v.w.RoundMass(mass, 0)+" hang in its eye "+g.Name.Value, " thick with "+v.mm(beside)+" beside the eye, wanted "
			f.Rule, f.Source = "an eye carries what stands in all at a third of its metal's strength over 1.2; only masses that are known count", "ASME BTH-1-2014 3-3.3.1, from memory"
			v.atLeast(g.Name.Value, g.Pos, v.lengthMm, max(newtons/(2*beside*mpa), math.Sqrt(newtons/(8*mpa))), f)
		}
		return
	}
}
