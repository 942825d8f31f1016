package develop

import (
	"math"
	"slices"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Point is a point of the flat sheet in millimetres, x right, y up.
type Point = geom.Point

// polar returns the point at radius and angle, anticlockwise from x.
func polar(radiusMm, angleDeg float64) Point {
	return Point{XMm: radiusMm * cosDeg(angleDeg), YMm: radiusMm * sinDeg(angleDeg)}
}

// Role says what a curve of a pattern is for.
type Role string

// The roles of a curve.
const (
	Edge     Role = "edge"     // the edge of the piece, all round
	Cut      Role = "cut"      // that of an opening in it
	Tab      Role = "tab"      // the outline of an overlap beyond the seam
	Seam     Role = "seam"     // where the ends of the pattern meet
	Fold     Role = "fold"     // a bend line
	Division Role = "division" // a construction or ordinate line, to mark but not to bend
	Top      Role = "top"      // the TOP line, clock angle 0°
)

// Segment is one straight or circular piece of a Curve; it starts where the
// piece before it ends.
type Segment struct {
	// To is the end point.
	To Point
	// Center is the centre of a circular piece, unused for a straight one.
	Center Point
	// SweepDeg is 0 for a straight piece, else the turn about Center,
	// positive anticlockwise, within -360..360.
	SweepDeg float64
}

// Curve is a chain of straight and circular pieces.
type Curve struct {
	// Name says what the line is, such as a feature's name.
	Name string
	Role Role
	// Closed is set when the last piece ends at Start.
	Closed   bool
	Start    Point
	Segments []Segment
}

// polyline returns the points as a chain of straight pieces.
func polyline(name string, role Role, points ...Point) Curve {
	c := Curve{Name: name, Role: role, Start: points[0]}
	c.Segments = seq.Map(points[1:], func(p Point) Segment { return Segment{To: p} })
	return c
}

// polygon is the edge of a sheet: the points joined, back to the first.
func polygon(points ...Point) Curve {
	c := polyline("edge", Edge, points...)
	c.Segments = append(c.Segments, Segment{To: points[0]})
	c.Closed = true
	return c
}

// movedBy is the curve with its origin at a point.
func (c Curve) movedBy(by Point) Curve {
	c.Start = c.Start.Plus(by)
	c.Segments = seq.Map(c.Segments, func(s Segment) Segment {
		return Segment{To: s.To.Plus(by), Center: s.Center.Plus(by), SweepDeg: s.SweepDeg}
	})
	return c
}

// at returns the point of a segment at fraction f, 0..1, from start.
func (s Segment) at(start Point, f float64) Point {
	switch {
	case f <= 0:
		return start
	case f >= 1:
		return s.To
	case s.SweepDeg == 0:
		return start.Plus(s.To.Minus(start).Times(f))
	}
	r := start.Minus(s.Center)
	a := deg(math.Atan2(r.YMm, r.XMm)) + f*s.SweepDeg
	return s.Center.Plus(polar(r.LengthMm(), a))
}

// AreaMm2 returns the area enclosed by a closed curve, positive when it runs
// anticlockwise; zero for an open one. Arcs count exactly.
func (c Curve) AreaMm2() (sum float64) {
	if !c.Closed {
		return 0
	}
	at := c.Start
	for _, s := range c.Segments {
		sum += at.Minus(c.Start).Cross(s.To.Minus(c.Start)) / 2
		r, a := geom.Distance(at, s.Center), rad(s.SweepDeg)
		sum += r * r * (a - math.Sin(a)) / 2
		at = s.To
	}
	return sum
}

// Box returns the exact bounding box, the bulge of arcs included.
func (c Curve) Box() geom.Box {
	on, at := []Point{c.Start}, c.Start
	for _, s := range c.Segments {
		on = append(on, s.To)
		if s.SweepDeg != 0 {
			r := at.Minus(s.Center)
			from := deg(math.Atan2(r.YMm, r.XMm))
			lo, hi := math.Min(from, from+s.SweepDeg), math.Max(from, from+s.SweepDeg)
			for q := math.Ceil(lo/90) * 90; q <= hi; q += 90 {
				on = append(on, s.Center.Plus(polar(r.LengthMm(), q)))
			}
		}
		at = s.To
	}
	return geom.BoxOf(on...)
}

// fitsSheet reports whether a piece of a size lies on a sheet of another, either way round; one of no width
// has no limit.
func fitsSheet(size Point, widthMm, heightMm float64) bool {
	w, h := size.XMm, size.YMm
	return widthMm == 0 || w <= widthMm && h <= heightMm || w <= heightMm && h <= widthMm
}

// sample returns points of f over from..to whose chords stay within
// ToleranceMm of f, judged at three inner points of each chord. The interval
// is first cut in pieces equal parts.
func sample(f func(float64) Point, from, to float64, pieces int) []Point {
	out := []Point{f(from)}
	for i := range pieces {
		a := from + (to-from)*float64(i)/float64(pieces)
		b := from + (to-from)*float64(i+1)/float64(pieces)
		out = refine(out, f, a, b)
	}
	return out
}

// ToleranceMm is the greatest distance between an exact curve and the
// polyline that stands for it. Circular arcs stay arcs and have no error.
const ToleranceMm = 0.002

func refine(out []Point, f func(float64) Point, a, b float64) []Point {
	pa, pb := out[len(out)-1], f(b)
	mid := (a + b) / 2
	off := seq.Max(0.0, []float64{(a + mid) / 2, mid, (mid + b) / 2}, func(t float64) float64 { return geom.ToSegment(f(t), pa, pb) })
	if off <= ToleranceMm {
		return append(out, pb)
	}
	return refine(refine(out, f, a, mid), f, mid, b)
}

// clipX returns the parts of a closed polyline (first point repeated last)
// with x within lo..hi, as open polylines; nil if none. A polyline wholly
// inside comes back whole.
func clipX(points []Point, lo, hi float64) [][]Point {
	inside := func(p Point) bool { return p.XMm >= lo && p.XMm <= hi }
	start := slices.IndexFunc(points[:len(points)-1], func(p Point) bool { return !inside(p) })
	if start < 0 {
		return [][]Point{points}
	}
	ring := slices.Concat(points[start:len(points)-1], points[:start+1])
	var out [][]Point
	var run []Point
	for i := range len(ring) - 1 {
		a, b := ring[i], ring[i+1]
		enter, leave, ok := clipChord(a, b, lo, hi)
		if ok && run == nil {
			run = []Point{enter}
		}
		if ok {
			run = append(run, leave)
		}
		if run != nil && !inside(b) { // a may lie on the edge, where nothing of the chord is within
			out, run = append(out, run), nil
		}
	}
	return out
}

// clipChord returns the part of the chord a-b with x within lo..hi.
func clipChord(a, b Point, lo, hi float64) (enter, leave Point, ok bool) {
	f0, f1 := 0.0, 1.0
	if dx := b.XMm - a.XMm; dx == 0 {
		if a.XMm < lo || a.XMm > hi {
			return a, b, false
		}
	} else {
		near, far := (lo-a.XMm)/dx, (hi-a.XMm)/dx
		f0 = math.Max(f0, math.Min(near, far))
		f1 = math.Min(f1, math.Max(near, far))
	}
	if f0 >= f1 {
		return a, b, false
	}
	s := Segment{To: b}
	return s.at(a, f0), s.at(a, f1), true
}
