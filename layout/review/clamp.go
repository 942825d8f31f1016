package review

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/bolts"
	"centrepop/layout/clamp"
	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// sawnMm is the narrowest cut of a saw through a ring. Common practice, no source: 1/32 in and
// hacksaw blades are about as wide.
const sawnMm = 0.75

// clamped looks for a split ring whose screw has too little metal: beside its hole,
// under its head, in its thread, or at the faces.
func (v *view) clamped(c *plan.ClampRow) {
	steel := true
	if m, err := material.Find(v.p.Material.Value); err == nil {
		steel = m.Kind.Data().Family == material.Steel
	}
	if b, err := bolts.Find(c.Thread); err == nil && !b.MadeWith(c.Class, bolts.Socket) {
		v.report(Check, "clamp", v.p.Clamp.Pos, Finding{
			What:   "clamp: its screw has a socket head, and those are not made in " + c.Class,
			Rule:   "inch socket head screws are of ASTM A574, or of stainless steel; the grades of SAE J429 are hexagon",
			Source: "ASTM A574; SAE J429", Fix: "A574, or A2-70",
		})
	}
	face := math.Min(c.AxialMm, v.lengthMm-c.AxialMm) - c.HeadMm/2
	for _, one := range []struct {
		what, rule, fix string
		have, least     float64
	}{
		{"little metal stays between its hole and the bore", "beside the hole a quarter of the screw, and not under " + v.mm(1),
			"the screw farther out, or smaller", c.InnerMm, clamp.LeastWallMm(c.MajorMm)},
		{"little metal stays between its hole and the outside", "beside the hole a quarter of the screw, and not under " + v.mm(1),
			"the screw farther in, or smaller", c.OuterMm, clamp.LeastWallMm(c.MajorMm)},
		{"little metal stays under its head", "half the screw of metal under the head", "the screw farther in, or a narrower cut", c.GripMm, clamp.LeastGripMm(c.MajorMm)},
		{"little of its thread engages", "the screw's diameter of thread in steel, half as much again elsewhere", "the screw farther in, or a smaller one",
			c.HoldsMm, clamp.LeastThreadMm(c.MajorMm, steel)},
		{"its counterbore lies close to a face", "beside the counterbore a quarter of the screw, and not under " + v.mm(1), "a longer ring, or a smaller screw", face, clamp.LeastWallMm(c.MajorMm)},
		{"its cut is narrower than a saw",
			"a slitting saw for a ring cuts " + v.mm(sawnMm) + " at the least, and a narrower cut is closed before the ring grips", "the width of the saw",
			v.p.Clamp.Slot.Mm, sawnMm},
	} {
		v.atLeast("clamp", v.p.Clamp.Pos, one.have, one.least, Finding{What: "clamp: " + one.what, Rule: one.rule, Fix: one.fix})
	}
}

// across is a stretch of the screw of a split ring, along it from the middle of the cut: positive on the side of its
// head.
type across struct {
	geom.Span
	radiusMm float64
}

// screwRoom are the hole of the screw on the side of its head, its counterbore, and the thread.
func screwRoom(c *plan.ClampRow) []across {
	exit := math.Sqrt(math.Max(0, c.OutsideMm*c.OutsideMm/4-c.AtMm*c.AtMm))
	return []across{{geom.Span{ToMm: c.SeatMm}, c.HoleMm / 2}, {geom.Span{FromMm: c.SeatMm, ToMm: exit}, c.HeadMm / 2}, {geom.Span{FromMm: -exit}, c.MajorMm / 2}}
}

// clampFree looks for what else of the part, or welded to it, the cut or the screw of a split ring goes through.
func (v *view) clampFree(c *plan.ClampRow) {
	out, seen := geom.Clock(1, c.ClockDeg), map[string]bool{}
	meets := func(name, what string, cutMm, screwMm float64) {
		f := Finding{
			Rule:   "a ring is split, and its screw lies, where nothing else is: the cut opens what it runs through, a drill runs off in it",
			Source: "by geometry", Fix: "clock: where nothing is, or move " + what,
		}
		f.What, f.OverMm = "clamp: its cut runs into "+what, over(cutMm)
		if !geom.Some(cutMm) {
			f.What, f.OverMm = "clamp: its screw runs into "+what, over(screwMm)
		}
		if deep := math.Max(cutMm, screwMm); geom.Some(deep) && !seen[name] {
			seen[name] = true
			f.Numbers = "by " + v.mm(deep) + "; cut at clock " + number(c.ClockDeg) + "°, screw " + v.mm(c.AtMm) + " from the axis, " + v.mm(c.AxialMm) + " from the front face"
			v.report(Stop, "clamp", v.p.Clamp.Pos, f)
		}
	}
	for h := range seq.Refs(v.holes) {
		meets(h.name, h.title(), holeInCut(c, h, out), holeInScrew(c, h, out))
	}
	for _, k := range v.q.Keyways {
		side := math.Abs(math.Sin((k.ClockDeg-c.ClockDeg)*math.Pi/180)) * c.BoreMm / 2
		if k.In == c.In && sameSide(k.ClockDeg, c.ClockDeg) {
			meets(k.Name, "the keyway "+k.Name, k.WidthMm/2+c.SlotMm/2-side, 0)
		}
	}
	for o := range seq.Refs(v.openings()) {
		meets(o.radial.Name.Value, o.title(v), o.inCut(c), o.inScrew(c))
	}
	v.clampWelded(c)
}

// holeInCut is how far a hole in a face reaches into the cut, holeInScrew into the room of the screw; 0 or less where it
// lies clear.
func holeInCut(c *plan.ClampRow, h *hole, out plan.XY) (deep float64) {
	for _, q := range []plan.XY{h.a, h.b} {
		if q.Dot(out) > 0 {
			deep = math.Max(deep, h.radiusMm+c.SlotMm/2-math.Abs(q.Cross(out)))
		}
	}
	return deep
}

func holeInScrew(c *plan.ClampRow, h *hole, out plan.XY) (deep float64) {
	head := geom.Clock(1, c.ClockDeg+90)
	for _, q := range []plan.XY{h.a, h.b} {
		for _, s := range screwRoom(c) {
			beside := math.Max(s.FromMm-q.Dot(head), q.Dot(head)-s.ToMm)
			if h.span().Meets(geom.Around(c.AxialMm, s.radiusMm)) {
				deep = math.Max(deep, math.Min(h.radiusMm-beside, h.radiusMm+s.radiusMm-math.Abs(q.Dot(out)-c.AtMm)))
			}
		}
	}
	return deep
}

// inCut is how far an opening in the outside reaches into the cut at the outside, inScrew into the room of the screw.
func (o *opening) inCut(c *plan.ClampRow) float64 {
	if !sameSide(o.clockDeg, c.ClockDeg) {
		return 0
	}
	return o.aroundMm + c.SlotMm/2 - o.outerMm*math.Abs(math.Sin((o.clockDeg-c.ClockDeg)*math.Pi/180))
}

func (o *opening) inScrew(c *plan.ClampRow) (deep float64) {
	turn := (o.clockDeg - c.ClockDeg) * math.Pi / 180
	in := c.BoreMm / 2
	if !o.radial.Through {
		in = math.Max(in, o.outerMm-o.radial.Depth.Mm)
	}
	at := func(radius float64) plan.XY {
		return plan.XY{XMm: radius * math.Sin(turn), YMm: radius * math.Cos(turn)}
	}
	for _, s := range screwRoom(c) {
		apart := geom.Apart(at(in), at(o.outerMm), plan.XY{XMm: s.FromMm, YMm: c.AtMm}, plan.XY{XMm: s.ToMm, YMm: c.AtMm})
		deep = math.Max(deep, math.Min(s.radiusMm+o.aroundMm-apart, s.radiusMm+o.alongMm-math.Abs(o.zMm-c.AxialMm)))
	}
	return deep
}

// clampWelded looks for what is welded to a split ring over its cut, or before its screw.
func (v *view) clampWelded(c *plan.ClampRow) {
	b := v.bodyOf(v.p.Name.Value)
	if b == nil {
		return
	}
	m, rim := v.machine(), c.OutsideMm/2+1
	point := func(outMm, headMm, axialMm float64) assembly.Vec {
		at := assembly.Clock(math.Hypot(outMm, headMm), c.ClockDeg+math.Atan2(headMm, outMm)*180/math.Pi)
		at.Z = -axialMm
		return b.Pose.Apply(at)
	}
	var cut, screw []assembly.Vec
	for axial := 0.5; axial < v.lengthMm; axial++ {
		cut = append(cut, point(rim, 0, axial))
	}
	for way := 0.5; way < c.LongMm; way++ { // the screw comes in along its axis
		screw = append(screw, point(c.AtMm, math.Sqrt(math.Max(0, rim*rim-c.AtMm*c.AtMm))+way, c.AxialMm))
	}
	for o := range seq.Refs(m.Bodies) {
		title, covers := m.Title(o.ID), func(at []assembly.Vec) bool {
			return slices.ContainsFunc(at, func(p assembly.Vec) bool { return o.Dist(p) < 0 })
		}
		what := "clamp: its cut runs into " + title
		switch {
		case o.ID == b.ID || !v.welds(m.Of[o.ID]):
			continue
		case covers(cut):
		case covers(screw):
			what = "clamp: " + title + " stands before its screw"
		default:
			continue
		}
		v.report(Stop, "clamp", v.p.Clamp.Pos, Finding{What: what, Numbers: "cut at clock " + number(c.ClockDeg) + "°",
			Rule: "a ring opens and closes where nothing is welded over its cut, and its screw is reached", Source: "by geometry", Fix: "another clock, or " + title + " at another place"})
	}
}

// welds tells whether a joint welds a copy of another part to this one.
func (v *view) welds(o parts.Instance) bool {
	return slices.ContainsFunc(v.job.Of(parts.WeldKind), func(j *parts.Joint) bool {
		a, b := j.Ends()
		return a.Instance() == o && b.Part == v.p.Name.Value || b.Instance() == o && a.Part == v.p.Name.Value
	})
}
