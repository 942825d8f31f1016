package part

import (
	"slices"

	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// central tells whether a group is one hole on the axis of a turned part: the lathe
// drills it, and nothing is set out for it.
func (s *Sizes) central(m *Group) bool {
	return s.Part.Turned() && m.Hole != nil && len(m.Points) == 1 && m.Points[0].LengthMm() < geom.CloseMm
}

// allCentral tells whether nothing but central holes is marked on a face.
func (s *Sizes) allCentral(f parts.Face) bool {
	return s.marked(f) && !slices.ContainsFunc(s.Groups, func(m Group) bool { return m.Face == f && !s.central(&m) })
}

// heldCentral is how the lathe holds the part for a central hole: on what is finished, over copper.
func (b *bench) heldCentral(m *Group) string {
	on := "in the chuck"
	on += words.When(b.anyTurned(b.Side(false)), " over copper, on no thread,")
	return "set true at the " + string(m.Face) + " end, " + on + " or a steady; drill in the tailstock"
}
