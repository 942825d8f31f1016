package bolts

import "fmt"

// Edges are least distances of bolt holes in mm, from hole centres.
type Edges struct {
	E1Mm float64 // to the edge along the force, 1.2 d0
	P1Mm float64 // between holes along the force, 2.2 d0
}

// EdgeDistances returns the least edge distances and pitches for holes of
// diameter d0 in mm (the hole, not the bolt). EN 1993-1-8:2005 Table 3.3. It
// is an error when d0 is not positive and finite.
func EdgeDistances(d0Mm float64) (Edges, error) {
	if !finite(d0Mm) || d0Mm <= 0 {
		return Edges{}, fmt.Errorf("bolts: hole diameter must be a positive number of mm, not %v", d0Mm)
	}
	return Edges{E1Mm: 1.2 * d0Mm, P1Mm: 2.2 * d0Mm}, nil
}
