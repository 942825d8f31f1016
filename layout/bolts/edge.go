package bolts

import (
	"fmt"
)

// Edges are least distances of bolt holes in mm, from hole centres.
type Edges struct {
	E1Mm   float64 // to the edge along the force, 1.2 d0
	E2Mm   float64 // to the edge across the force, 1.2 d0
	P1Mm   float64 // between holes along the force, 2.2 d0
	P2Mm   float64 // between rows across the force, 2.4 d0
	P2StMm float64 // between staggered rows, 1.2 d0, if the diagonal is at least 2.4 d0
	SlotMm float64 // e3 and e4, edge to the axis or end centre of a slot, 1.5 d0
}

// EdgeDistances returns the least edge distances and pitches for holes of
// diameter d0 in mm (the hole, not the bolt). EN 1993-1-8:2005 Table 3.3. It
// is an error when d0 is not positive and finite.
func EdgeDistances(d0Mm float64) (Edges, error) {
	if !finite(d0Mm) || d0Mm <= 0 {
		return Edges{}, fmt.Errorf("bolts: hole diameter must be a positive number of mm, not %v", d0Mm)
	}
	return Edges{
		E1Mm: 1.2 * d0Mm, E2Mm: 1.2 * d0Mm,
		P1Mm: 2.2 * d0Mm, P2Mm: 2.4 * d0Mm, P2StMm: 1.2 * d0Mm,
		SlotMm: 1.5 * d0Mm,
	}, nil
}
