package geom

import (
	"math"
	"slices"

	"centrepop/parts/seq"
)

// Pattern places equal things on a face, seen by who looks at that face.
type Pattern interface {
	// Places returns the centres in the order in which they are numbered.
	// edges are the bounds of the outline on that face; only a pattern
	// measured from edges looks at them.
	Places(edges Box) []Point
}

// Patterns holds one of each pattern there is, so that a test of a stage can
// ask whether it knows them all.
var Patterns = []Pattern{
	Ring{PCDMm: 100, Count: 6, FirstDeg: 30},
	Arc{PCDMm: 100, Count: 3, FirstDeg: 30, LastDeg: 150},
	Angles{PCDMm: 100, Deg: []float64{0, 75, 200}},
	Grid{Columns: 3, Rows: 2, PitchXMm: 40, PitchYMm: 30},
	Staggered{Columns: 3, Rows: 3, PitchXMm: 40, PitchYMm: 30},
	Along{FirstMm: 30, PitchMm: 40, Count: 2, UpMm: 10},
	Listed{At: []Point{{10, 20}, {30, 20}}, Datum: "left-bottom"},
}

// Ring is Count equally spaced places on a pitch circle about Centre, one
// of them at FirstDeg. It is numbered clockwise from TOP.
type Ring struct {
	PCDMm    float64
	Count    int
	FirstDeg float64
	Centre   Point
}

// Places of a ring.
func (r Ring) Places(Box) []Point { return onCircle(r.Centre, r.PCDMm, r.AnglesDeg()) }

// AnglesDeg are the clock angles of a ring in numbering order, 0 ≤ a < 360.
func (r Ring) AnglesDeg() []float64 {
	angles := make([]float64, r.Count)
	for i := range angles {
		angles[i] = r.FirstDeg + 360*float64(i)/float64(r.Count)
	}
	FromTop(angles)
	return angles
}

// Arc is Count places from FirstDeg clockwise to LastDeg, both ends included,
// equally spaced. It is numbered clockwise from TOP.
type Arc struct {
	PCDMm             float64
	Count             int
	FirstDeg, LastDeg float64
	Centre            Point
}

// Places of an arc.
func (a Arc) Places(Box) []Point {
	step := SweepDeg(a.FirstDeg, a.LastDeg) / float64(max(1, a.Count-1))
	angles := make([]float64, a.Count)
	for i := range angles {
		angles[i] = a.FirstDeg + step*float64(i)
	}
	return onCircle(a.Centre, a.PCDMm, angles)
}

// Angles is places at listed clock angles on a pitch circle, numbered
// clockwise from TOP.
type Angles struct {
	PCDMm  float64
	Deg    []float64
	Centre Point
}

// Places at the angles.
func (a Angles) Places(Box) []Point { return onCircle(a.Centre, a.PCDMm, slices.Clone(a.Deg)) }

// Grid is Columns × Rows places about Centre, numbered in rows from the top
// left.
type Grid struct {
	Columns, Rows      int
	PitchXMm, PitchYMm float64
	Centre             Point
}

// Places of a grid.
func (g Grid) Places(Box) []Point {
	var out []Point
	for row := range g.Rows {
		out = append(out, g.row(row, g.Columns)...)
	}
	return out
}

// row is count places about the middle of a row, counted from the top.
func (g Grid) row(row, count int) []Point {
	y := (float64(g.Rows-1)/2 - float64(row)) * g.PitchYMm
	out := make([]Point, count)
	for i := range out {
		x := (float64(i) - float64(count-1)/2) * g.PitchXMm
		out[i] = Point{Clean(x + g.Centre.XMm), Clean(y + g.Centre.YMm)}
	}
	return out
}

// Staggered is a grid whose second, fourth and so on rows from the top hold one
// place less and so lie half a pitch in. With PitchY = PitchX·√3/2 every place
// is as far from all its neighbours.
type Staggered Grid

// Places of a staggered grid, numbered in rows from the top left.
func (s Staggered) Places(Box) []Point {
	var out []Point
	for row := range s.Rows {
		out = append(out, Grid(s).row(row, max(0, s.Columns-row%2))...)
	}
	return out
}

// Along is Count places in a row from the left or the right edge, UpMm over the
// lower one, or where that is 0 half way up. It is numbered from that edge on.
type Along struct {
	FromRight        bool
	FirstMm, PitchMm float64
	Count            int
	UpMm             float64
}

// Places of a row.
func (a Along) Places(edges Box) []Point {
	at, way, y := edges.Min.XMm, 1.0, (edges.Min.YMm+edges.Max.YMm)/2
	if a.FromRight {
		at, way = edges.Max.XMm, -1
	}
	if a.UpMm > 0 {
		y = edges.Min.YMm + a.UpMm
	}
	out := make([]Point, a.Count)
	for i := range out {
		out[i] = Point{Clean(at + way*(a.FirstMm+float64(i)*a.PitchMm)), Clean(y)}
	}
	return out
}

// Listed is places given one by one, numbered as listed. Datum is "centre", or
// the two edges that they are measured from, inward: left-bottom, left-top,
// right-bottom or right-top.
type Listed struct {
	At    []Point
	Datum string
}

// Places as listed.
func (l Listed) Places(edges Box) []Point {
	corner, sx, sy := Corner(l.Datum, edges)
	return seq.Map(l.At, func(q Point) Point { return Point{Clean(corner.XMm + sx*q.XMm), Clean(corner.YMm + sy*q.YMm)} })
}

// Corner is the point that a datum's lengths start from, and the signs that
// turn a positive length inward. Other words than those of Listed give the
// origin.
func Corner(datum string, edges Box) (at Point, sx, sy float64) {
	switch datum {
	case "left-bottom":
		return edges.Min, 1, 1
	case "left-top":
		return Point{edges.Min.XMm, edges.Max.YMm}, 1, -1
	case "right-bottom":
		return Point{edges.Max.XMm, edges.Min.YMm}, -1, 1
	case "right-top":
		return edges.Max, -1, -1
	}
	return Point{}, 1, 1
}

// SweepDeg is the clockwise angle from first to last, over 0 and at most 360.
func SweepDeg(first, last float64) float64 {
	s := math.Mod(last-first, 360)
	if s <= 0 {
		s += 360
	}
	return s
}

// FromTop brings clock angles into 0 ≤ a < 360 and sorts them, so that the
// first at or after TOP comes first.
func FromTop(deg []float64) {
	for i, a := range deg {
		deg[i] = OnClock(a)
	}
	slices.Sort(deg)
}

func onCircle(centre Point, pcdMm float64, deg []float64) []Point {
	FromTop(deg)
	return seq.Map(deg, func(a float64) Point {
		q := Clock(pcdMm/2, a).Plus(centre)
		return Point{Clean(q.XMm), Clean(q.YMm)}
	})
}
