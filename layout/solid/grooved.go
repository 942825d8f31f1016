package solid

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
)

// ORing is an O-ring as it lies squeezed in its groove: from the floor to what it seals against, in
// the middle of a groove round about, at the wall that holds it in a face; as wide as its section
// leaves it, since rubber gives way and does not shrink.
func ORing(g *part.Groove) assembly.Simple {
	row := &g.Row
	mm2 := math.Pi / 4 * row.ORing.SectionMm * row.ORing.SectionMm
	if row.Face != "" {
		wide := mm2 / row.DepthMm
		inner := row.OuterMm/2 - wide
		if g.In.PressureOutside {
			inner = row.InnerMm / 2
		}
		return assembly.Tube(inner+wide, inner, -row.ToMm, -row.FromMm)
	}
	low, high := min(row.FloorMm, row.AgainstMm)/2, max(row.FloorMm, row.AgainstMm)/2
	middle, half := -(row.FromMm+row.ToMm)/2, min(mm2/(high-low), row.WidthMm)/2
	return assembly.Tube(high, low, middle-half, middle+half)
}

// Retaining is a retaining ring in its groove, at the wall that it is pressed on: towards the back or
// the front. It reaches halfway to where its lugs need room: common practice, no source. ok is false where
// the groove is for no ring.
func Retaining(r *part.Model, g *part.Groove, toBack bool) (ring assembly.Simple, ok bool) {
	_, thick, ok := g.Ring(r.W)
	if !ok {
		return ring, false
	}
	row := &g.Row
	front := row.FromMm
	if toBack {
		front = row.ToMm - thick
	}
	rim, floor := (row.DiameterMm+row.ClearMm)/4, row.FloorMm/2
	return assembly.Tube(max(rim, floor), min(rim, floor), -front-thick, -front), true
}
