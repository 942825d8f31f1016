package part

import (
	"math"

	"centrepop/layout/plan"
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

// onLathe makes the drilling of a central hole work for the lathe.
func onLathe(o *plan.Operation, m *Group) {
	o.Machine, o.Holding = "Lathe", "set true at the "+string(m.Face)+" end, in the chuck or a steady; drill in the tailstock"
}
