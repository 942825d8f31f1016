package part

import (
	"math"

	"centrepop/parts"
	"centrepop/parts/geom"
)

// central tells whether a group is one hole on the axis of a turned part: the lathe
// drills it, and nothing is set out for it.
func (s *Sizes) central(m *Group) bool {
	if s.Part.Profile == nil || m.Hole == nil || len(m.Points) != 1 {
		return false
	}
	return math.Hypot(m.Points[0].XMm, m.Points[0].YMm) < geom.CloseMm
}

// allCentral tells whether nothing but central holes is marked on a face.
func (s *Sizes) allCentral(f parts.Face) bool {
	found := false
	for i := range s.Groups {
		if m := &s.Groups[i]; m.Face == f {
			if found = s.central(m); !found {
				return false
			}
		}
	}
	return found
}

// heldCentral is how the lathe holds the part for a central hole: on what is finished, over copper.
func (b *bench) heldCentral(m *Group) string {
	on := "in the chuck"
	if outside, _ := b.Sides(); b.anyTurned(outside) {
		on += " over copper, on no thread,"
	}
	return "set true at the " + string(m.Face) + " end, " + on + " or a steady; drill in the tailstock"
}
