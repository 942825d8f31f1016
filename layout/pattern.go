package layout

import (
	"fmt"
	"math"
	"sort"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// Clock is the point at a clock angle on a circle about the origin: 0° at
// TOP, clockwise, x right, y up.
func Clock(radiusMm, clockDeg float64) plan.XY {
	sin, cos := sinCosDeg(clockDeg)
	return plan.XY{XMm: clean(radiusMm * sin), YMm: clean(radiusMm * cos)}
}

// sinCosDeg is exact at the multiples of 90° and keeps 30° at 0.5, so that
// coordinates do not print as 6.1e-15.
func sinCosDeg(deg float64) (sin, cos float64) {
	a := math.Mod(deg, 360)
	if a < 0 {
		a += 360
	}
	switch a {
	case 0:
		return 0, 1
	case 90:
		return 1, 0
	case 180:
		return 0, -1
	case 270:
		return -1, 0
	}
	return math.Sincos(a * math.Pi / 180)
}

// clean rounds to a nanometre of a millimetre's thousandth (1e-9 mm): far
// below anything that prints, and it hides the last digit in which machines
// may differ.
func clean(mm float64) float64 {
	r := math.Round(mm*1e9) / 1e9
	if r == 0 {
		return 0 // never -0
	}
	return r
}

// clockOf is the clock angle of a point, 0 ≤ a < 360; 0 at the origin.
func clockOf(p plan.XY) float64 {
	if p.XMm == 0 && p.YMm == 0 {
		return 0
	}
	a := clean(math.Atan2(p.XMm, p.YMm) * 180 / math.Pi)
	if a < 0 {
		a += 360
	}
	return a
}

// distance is the straight distance between two points.
func distance(a, b plan.XY) float64 { return math.Hypot(a.XMm-b.XMm, a.YMm-b.YMm) }

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
const MaxLengthMm = 10000

// NewBoltCircle spaces count holes equally on a pitch circle. firstDeg is the clock
// angle of one of them; hole 1 is the first at or after TOP. It refuses a
// pitch circle outside 0 < pcd ≤ 10 000 mm, a count outside 1 to 1000 and an
// angle beyond ±360°.
func NewBoltCircle(pcdMm float64, count int, firstDeg float64) (*BoltCircle, error) {
	switch {
	case !(pcdMm > 0 && pcdMm <= MaxLengthMm):
		return nil, fmt.Errorf("pitch circle %v mm: it must be over 0 and at most %d mm", pcdMm, MaxLengthMm)
	case count < 1 || count > MaxCount:
		return nil, fmt.Errorf("count %d: it must be 1 to %d", count, MaxCount)
	case !(math.Abs(firstDeg) <= 360):
		return nil, fmt.Errorf("first angle %v°: it must be -360° to 360°", firstDeg)
	}
	angles := make([]float64, count)
	for i := range angles {
		angles[i] = firstDeg + 360*float64(i)/float64(count)
	}
	fromTop(angles)
	c := &BoltCircle{}
	for i, a := range angles {
		p := Clock(pcdMm/2, a)
		c.Holes = append(c.Holes, CircleHole{i + 1, a, p.XMm, p.YMm})
	}
	if count > 1 {
		s, _ := sinCosDeg(180 / float64(count))
		c.ChordMm = clean(pcdMm * s)
		s, _ = sinCosDeg(180 * float64(count/2) / float64(count))
		c.AcrossMm = clean(pcdMm * s)
	}
	return c, nil
}

// fromTop brings angles into 0 ≤ a < 360 and sorts them, so that the first at
// or after TOP comes first. 359.999999999 from rounding counts as TOP.
func fromTop(angles []float64) {
	for i, a := range angles {
		a = math.Mod(a, 360)
		if a < 0 {
			a += 360
		}
		if a = clean(a); a >= 360 {
			a = 0
		}
		angles[i] = a
	}
	sort.Float64s(angles)
}

// centres are the points of a pattern as seen on its face, in numbering
// order: clockwise from TOP on circles, row by row from the top left in grids,
// as listed for points. box is the outline's bounding box on that face.
func centres(p parts.Pattern, min, max plan.XY) []plan.XY {
	radius := p.PCD.Mm / 2
	var angles []float64
	switch p.Kind {
	case parts.CirclePattern:
		for i := range p.Count {
			angles = append(angles, p.First.Deg+360*float64(i)/float64(p.Count))
		}
	case parts.ArcPattern:
		step := 0.0
		if p.Count > 1 {
			step = sweep(p.First.Deg, p.Last.Deg) / float64(p.Count-1)
		}
		for i := range p.Count {
			angles = append(angles, p.First.Deg+step*float64(i))
		}
	case parts.AnglesPattern:
		for _, a := range p.Angles {
			angles = append(angles, a.Deg)
		}
	case parts.GridPattern:
		return grid(p)
	case parts.PointsPattern:
		corner, sx, sy := datumCorner(p.Datum, min, max)
		var pts []plan.XY
		for _, q := range p.Points {
			pts = append(pts, plan.XY{XMm: clean(corner.XMm + sx*q.X.Mm), YMm: clean(corner.YMm + sy*q.Y.Mm)})
		}
		return pts
	}
	fromTop(angles)
	var pts []plan.XY
	for _, a := range angles {
		q := Clock(radius, a)
		pts = append(pts, plan.XY{XMm: clean(q.XMm + p.Centre.X.Mm), YMm: clean(q.YMm + p.Centre.Y.Mm)})
	}
	return pts
}

// sweep is the clockwise angle from first to last, over 0 and at most 360.
func sweep(first, last float64) float64 {
	s := math.Mod(last-first, 360)
	if s <= 0 {
		s += 360
	}
	return s
}

func grid(p parts.Pattern) []plan.XY {
	var pts []plan.XY
	for row := range p.Rows {
		for col := range p.Columns {
			x := (float64(col) - float64(p.Columns-1)/2) * p.PitchX.Mm
			y := (float64(p.Rows-1)/2 - float64(row)) * p.PitchY.Mm
			pts = append(pts, plan.XY{XMm: clean(x + p.Centre.X.Mm), YMm: clean(y + p.Centre.Y.Mm)})
		}
	}
	return pts
}

// datumCorner is the point a datum's lengths start from and the signs that
// turn a positive length inward.
func datumCorner(datum string, min, max plan.XY) (corner plan.XY, sx, sy float64) {
	switch datum {
	case "left-bottom":
		return min, 1, 1
	case "left-top":
		return plan.XY{XMm: min.XMm, YMm: max.YMm}, 1, -1
	case "right-bottom":
		return plan.XY{XMm: max.XMm, YMm: min.YMm}, -1, 1
	case "right-top":
		return max, -1, -1
	}
	return plan.XY{}, 1, 1
}

// chords are the distances that a pair of dividers is set to and that calipers
// check. An equally spaced circle has one neighbour distance; other patterns
// list each pair of neighbours, up to 24.
func chords(kind parts.PatternKind, pts []plan.XY, first int, drillMm float64) []plan.Chord {
	if len(pts) < 2 {
		return nil
	}
	chord := func(i, j int, kind string) plan.Chord {
		d := clean(distance(pts[i], pts[j]))
		return plan.Chord{From: first + i, To: first + j, Kind: kind, CentreMm: d, OverMm: clean(d + drillMm), BetweenMm: clean(d - drillMm)}
	}
	var out []plan.Chord
	if kind == parts.CirclePattern {
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
				if distance(pts[i], pts[j]) > distance(pts[bi], pts[bj])+1e-9 {
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
