package part

import (
	"fmt"
	"math"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

// BoltCircle is a circle of equally spaced holes.
type BoltCircle struct {
	Holes    []CircleHole `json:"holes"`
	ChordMm  float64      `json:"chord_mm"`  // between neighbours; 0 for a single hole
	AcrossMm float64      `json:"across_mm"` // longest distance between two holes
}

// CircleHole is a hole of a bolt circle.
type CircleHole struct {
	N        int     `json:"n"`
	AngleDeg float64 `json:"angle_deg"`
	XMm      float64 `json:"x_mm"`
	YMm      float64 `json:"y_mm"`
}

// MaxCount is the largest number of holes in one pattern.
const MaxCount = 1000

// MaxLengthMm is the largest length a drawing may hold.
const MaxLengthMm = geom.LargestMm

// NewBoltCircle spaces count holes equally on a pitch circle. firstDeg is the clock
// angle of one of them; hole 1 is the first at or after TOP. It refuses a
// pitch circle outside 0 < pcd ≤ 10 000 mm, a count outside 1 to 1000 and an
// angle beyond ±360°.
func NewBoltCircle(pcdMm float64, count int, firstDeg float64) (*BoltCircle, error) {
	switch {
	case !(pcdMm > 0 && pcdMm <= MaxLengthMm):
		return nil, fmt.Errorf("pitch circle %v mm: it must be over 0 and at most %g mm", pcdMm, MaxLengthMm)
	case count < 1 || count > MaxCount:
		return nil, fmt.Errorf("count %d: it must be 1 to %d", count, MaxCount)
	case !(math.Abs(firstDeg) <= 360):
		return nil, fmt.Errorf("first angle %v°: it must be -360° to 360°", firstDeg)
	}
	c := &BoltCircle{}
	for i, a := range (geom.Ring{Count: count, FirstDeg: firstDeg}).AnglesDeg() {
		p := geom.Clock(pcdMm/2, a)
		c.Holes = append(c.Holes, CircleHole{i + 1, a, p.XMm, p.YMm})
	}
	if count > 1 {
		s, _ := geom.SinCosDeg(180 / float64(count))
		c.ChordMm = geom.Clean(pcdMm * s)
		s, _ = geom.SinCosDeg(180 * float64(count/2) / float64(count))
		c.AcrossMm = geom.Clean(pcdMm * s)
	}
	return c, nil
}

// chords are the distances that a pair of dividers is set to and that calipers
// check. An equally spaced circle has one neighbour distance; other patterns
// list each pair of neighbours, up to 24.
func chords(shape geom.Pattern, pts []plan.XY, first int, drillMm float64) []plan.Chord {
	if len(pts) < 2 {
		return nil
	}
	chord := func(i, j int, kind string) plan.Chord {
		d := geom.Clean(geom.Distance(pts[i], pts[j]))
		return plan.Chord{From: first + i, To: first + j, Kind: kind, CentreMm: d, OverMm: geom.Clean(d + drillMm), BetweenMm: geom.Clean(d - drillMm)}
	}
	var out []plan.Chord
	if _, even := shape.(geom.Ring); even {
		out = append(out, chord(0, 1, "neighbours"))
		if len(pts) > 3 { // in a ring of three, every pair are neighbours
			out = append(out, chord(0, len(pts)/2, "across"))
		}
		return out
	}
	for i := 0; i+1 < len(pts) && i < 24; i++ {
		out = append(out, chord(i, i+1, "neighbours"))
	}
	if len(pts) > 2 {
		bi, bj := 0, 1
		for i := range pts {
			for j := i + 1; j < len(pts); j++ {
				if geom.Distance(pts[i], pts[j]) > geom.Distance(pts[bi], pts[bj])+1e-9 {
					bi, bj = i, j
				}
			}
		}
		if bj != bi+1 { // else it is in the list already
			out = append(out, chord(bi, bj, "across"))
		}
	}
	return out
}
