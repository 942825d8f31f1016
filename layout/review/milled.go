package review

import (
	"math"

	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// faceReach looks for narrow milled slots that are deeper than the end mill of
// their width reaches: four times its diameter. A wider one is drilled out in a row
// of holes first, whatever its depth.
func (v *view) faceReach(s *parts.FaceSlot) {
	depth := words.Either(s.Through, v.lengthMm, s.Depth.Mm)
	v.slotReach(s.Name.Value, s.Pos, s.Width.Mm, depth)
}

// radialReach looks at the slots in the outside, and for corners that no end mill reaches round.
func (v *view) radialReach(f *parts.Radial) {
	depth := words.Either(f.Through, v.wallAt(v.axialMm(f)), f.Depth.Mm)
	switch {
	case f.Shape == parts.RadialSlot:
		v.slotReach(f.Name.Value, f.Pos, min(f.Around.Mm, f.Along.Mm), depth)
	case f.Corner.Mm > 0 && geom.Over(depth, endMillReach*2*f.Corner.Mm):
		v.report(Check, f.Name.Value, f.Pos, Finding{
			What: "no cutter reaches round the corners of " + f.Name.Value, Numbers: "R " + v.mm(f.Corner.Mm) + " and " + v.mm(depth) + " deep, wanted R " + v.mm(depth/endMillReach/2) + " at least",
			LeftMm: left(f.Corner.Mm), Rule: "an end mill cuts four diameters deep", Fix: "rounder corners, or accept them filed",
		})
	}
}

// endMillReach is how deep an end mill cuts, in diameters. Common practice, no source.
const endMillReach = 4

func (v *view) slotReach(name string, pos parts.Pos, widthMm, depthMm float64) {
	const wideMm = 5
	if leastMm, _, ok := v.leastHole(); widthMm >= wideMm || !geom.Over(depthMm, endMillReach*widthMm) || ok && widthMm >= leastMm {
		return
	}
	v.report(Check, name, pos, Finding{
		What: name + " is too deep for a cutter of its width", Numbers: v.mm(widthMm) + " wide and " + v.mm(depthMm) + " deep, wanted at most " + v.mm(endMillReach*widthMm),
		LeftMm: left(widthMm), Rule: "an end mill cuts four diameters deep", Fix: "a wider or shallower slot",
	})
}

// shutCone looks for a cone in a bore whose wide end lies behind narrower steps on
// both sides, and for one outside whose small end lies between wider ones: what it
// is for does not get there.
func (v *view) shutCone(c *cylinder) {
	if c.Drawn.Taper == nil {
		return
	}
	v.steepCone(c)
	// A ring comes over the small end of a cone, a plug in at its wide end.
	free := words.Either((c.Drawn.Taper.Toward == parts.Back) == c.Inside, c.before, c.behind)
	if shut := seq.First(free, func(o *cylinder) bool { return geom.Some(c.outBy(o)) }); shut != nil {
		v.report(Check, c.Name, c.Drawn.Pos, Finding{
			What:    c.Name + " is a cone that nothing gets onto past " + shut.Name,
			Numbers: v.mm(2*c.RadiusMm()) + " at its wide end, " + shut.Name + " " + v.mm(2*shut.RadiusMm()),
			OverMm:  over(math.Abs(c.RadiusMm() - shut.RadiusMm())),
			Rule:    "a cone is open at the end that its counterpart comes from", Source: "by geometry", Fix: "the cone the other way round, or accept it where nothing sits on it",
		})
	}
}

// flank tells whether a cone is one side of a V groove in the outside, as for a belt: beyond its small end, or a floor
// there, another rises against it.
func (c *cylinder) flank() bool {
	beyond := func(o *cylinder) *cylinder {
		before, behind := o.neighbours()
		return parts.At(c.Drawn.Taper.Toward, before, behind)
	}
	next := beyond(c)
	if next != nil && next.Drawn.Taper == nil {
		next = beyond(next)
	}
	return next != nil && !c.Inside && next.Drawn.Taper != nil && next.Drawn.Taper.Toward != c.Drawn.Taper.Toward
}

// steepCone finds a cone of more than 45 degrees to its axis: what is that steep is
// a chamfer or a countersink, and a slip among the sizes of a cone.
func (v *view) steepCone(c *cylinder) {
	rise, long := c.RadiusMm()-c.Drawn.Taper.SmallMm(2*c.RadiusMm(), c.LengthMm())/2, c.LengthMm()
	if !geom.Over(rise, long) || c.flank() {
		return
	}
	v.report(Check, c.Name, c.Drawn.Pos, Finding{
		What: c.Name + " is steeper than cones are", Numbers: v.mm(2*c.RadiusMm()) + " to " + v.mm(2*(c.RadiusMm()-rise)) + " in " + v.mm(long) + ", " +
			number(2*math.Atan2(rise, long)*180/math.Pi) + "° in all",
		OverMm: over(rise), Rule: "a cone is at most as high as it is long", Fix: "the small diameter, or a chamfer in its place",
	})
}
