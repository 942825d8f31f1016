package review

import (
	"math"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// crossed looks for grooves that run into something else: a keyway of their
// step, the way of a lip, holes in their face, or the edge of it.
func (v *view) crossed(g plan.GrooveRow) {
	if g.Face != "" {
		v.faceGrooveHoles(g)
		v.faceGrooveEdge(g)
		return
	}
	v.grooveOnKeyway(g)
	v.grooveUnderLip(g)
}

func (v *view) crosses(s Severity, g plan.GrooveRow, f Finding) {
	f.Source = "by geometry"
	v.report(s, g.Name, entryPos(v.p, g.Name), f)
}

func (v *view) grooveOnKeyway(g plan.GrooveRow) {
	for _, k := range v.q.Keyways {
		key := k.Key()
		if k.In != g.In || k.Inside != g.Inside || !key.Meets(g.Span()) {
			continue
		}
		v.crosses(Check, g, Finding{
			What: g.Name + " crosses " + k.Name, Numbers: "it runs from " + v.mm(g.FromMm) + " to " + v.mm(g.ToMm) + " from the front face, the keyway from " +
				v.mm(key.FromMm) + " to " + v.mm(key.ToMm),
			OverMm: over(key.OnMm(g.Span())), Rule: "a groove stays whole all round, and a key bears along its whole length", Fix: "move the groove beyond the keyway, or a shorter keyway",
		})
	}
}

// grooveUnderLip finds a groove with an edge in the land that the lip of a seal
// is pushed along.
func (v *view) grooveUnderLip(g plan.GrooveRow) {
	c := v.step(g.In)
	if g.Inside || v.seal(c) == nil || g.ORing != nil {
		return
	}
	v.crosses(Check, g, Finding{
		What: g.Name + " lies in the land of " + c.Seat, Numbers: v.mm(g.WidthMm) + " wide in " + c.Name, OverMm: over(g.WidthMm),
		Rule: "a lip is pushed along its land, and an edge cuts it", Fix: "a groove in another step",
	})
}

// faceGrooveHoles finds holes that a groove in an end face runs into: an O-ring
// does not seal there.
func (v *view) faceGrooveHoles(g plan.GrooveRow) {
	for h := range seq.Refs(v.holes) {
		gap := math.Max(h.centreMm()-h.radiusMm-g.OuterMm/2, g.InnerMm/2-h.centreMm()-h.radiusMm)
		if !h.span().Meets(g.Span()) || !geom.Short(gap) {
			continue
		}
		v.crosses(Stop, g, Finding{
			What: g.Name + " runs into " + h.title(), Numbers: "it lies between " + v.mm(g.InnerMm) + " and " + v.mm(g.OuterMm) + ", the hole reaches " + v.mm(-gap) + " into it",
			Rule: "a groove in a face is whole all round", Fix: "another O-ring, or holes on another circle",
		})
		return
	}
}

// faceGrooveEdge finds a groove that leaves no wall in its face: it comes out at
// the outside, or in the bore.
func (v *view) faceGrooveEdge(g plan.GrooveRow) {
	if len(v.outside) == 0 {
		return
	}
	next := seq.First(v.outside, func(c *cylinder) bool {
		return parts.At(g.Face, geom.Alike(c.ToMm, g.FromMm), geom.Alike(c.FromMm, g.ToMm))
	})
	if next != nil && geom.Over(next.RadiusMm(), g.InnerMm/2) {
		v.crosses(Stop, g, Finding{
			What: g.Name + " lies under " + next.Name + ", which stands on its face", Numbers: "from " + v.mm(g.InnerMm) + " on, " + next.Name + " is " + v.mm(2*next.RadiusMm()),
			Rule: "a groove in a shoulder is open to the face", Fix: "a larger O-ring, or a smaller " + next.Name,
		})
		return
	}
	mid := g.Span().MidMm()
	inner, outer := radiusAt(v.inside, mid), radiusAt(v.outside, mid)
	wall := outer - g.OuterMm/2
	if inner > 0 {
		wall = math.Min(wall, g.InnerMm/2-inner)
	}
	v.thin(g.Name, wall, math.Min(leastWallMm(2*outer), g.DepthMm), "comes out at the side of its face", Finding{
		What: g.Name + " leaves little metal beside it", Rule: "a groove in a face has a wall at both sides", Fix: "another O-ring, or a wider face",
	})
}
