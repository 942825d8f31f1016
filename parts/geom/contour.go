package geom

import (
	"math"

	"github.com/tdewolff/canvas"
)

// FlatMm is how far a polyline may lie from the curve it stands for.
const FlatMm = 0.001

// piece is a stretch of a contour: a line, or an arc of a circle. Where the
// contour runs anticlockwise, outside is on the right.
type piece struct {
	from, to Point
	radius   float64 // 0 for a line
	centre   Point   // of an arc
	left     bool    // the arc turns left: the metal is on its inside
	large    bool
}

// Contour is one closed path taken apart into lines and circular arcs, exact;
// other curves are polylines within FlatMm. Path is the path itself.
type Contour struct {
	Path   *canvas.Path
	pieces []piece
}

// NewContour takes a closed path apart.
func NewContour(p *canvas.Path) Contour { return Contour{p, piecesOf(p, false)} }

// piecesOf takes a closed path apart: into lines and circular arcs, or with
// straight into lines alone.
func piecesOf(p *canvas.Path, straight bool) (out []piece) {
	line := func(from, to Point) {
		if Distance(from, to) > 1e-9 {
			out = append(out, piece{from: from, to: to})
		}
	}
	for s := p.Scanner(); s.Scan(); {
		from, to := Point{s.Start().X, s.Start().Y}, Point{s.End().X, s.End().Y}
		switch s.Cmd() {
		case canvas.MoveToCmd:
			continue
		case canvas.LineToCmd, canvas.CloseCmd:
			line(from, to)
			continue
		case canvas.ArcToCmd:
			if rx, ry, _, large, sweep := s.Arc(); !straight && math.Abs(rx-ry) <= 1e-9 {
				out = append(out, piece{from: from, to: to, radius: rx, left: sweep, large: large, centre: arcCentre(from, to, rx, large == sweep)})
				continue
			}
		}
		// One curve at a time: flattening a whole path costs the square of
		// its curves.
		for _, c := range s.Path().Flatten(FlatMm).Coords()[1:] {
			line(from, Point{c.X, c.Y})
			from = Point{c.X, c.Y}
		}
	}
	return out
}

// corners is a closed path as a polygon, each curve within a four thousandth
// of its own size or 0.01 mm: fine enough to tell whether it crosses itself.
func corners(p *canvas.Path) (out []Point) {
	for s := p.Scanner(); s.Scan(); {
		switch s.Cmd() {
		case canvas.MoveToCmd:
			out = append(out, Point{s.End().X, s.End().Y})
			continue
		case canvas.CloseCmd:
			continue // back to the first corner
		}
		one := s.Path()
		b := one.Bounds()
		for _, c := range one.Flatten(math.Max(0.01, math.Max(b.W(), b.H())/4000)).Coords()[1:] {
			out = append(out, Point{c.X, c.Y})
		}
	}
	return out
}

// arcCentre is the centre of a circular arc given by its ends; right tells on
// which side of the chord it lies.
func arcCentre(from, to Point, radius float64, right bool) Point {
	chord := to.Minus(from)
	left := Point{-chord.YMm, chord.XMm}.unit().Times(math.Sqrt(math.Max(0, radius*radius-chord.Dot(chord)/4)))
	if right {
		left = left.Times(-1)
	}
	return from.Plus(to).Times(0.5).Plus(left)
}

// Loop is the contour as corners with straight lines and arcs between them.
func (c Contour) Loop() (out Loop) {
	for _, e := range c.pieces {
		v := Vertex{Point: e.from}
		if e.radius > 0 {
			v.Bulge = math.Tan(e.sweepRad() / 4)
		}
		if !e.left {
			v.Bulge = -v.Bulge
		}
		out = append(out, v)
	}
	return out
}

// AreaMm2 is the area inside, positive where the contour runs anticlockwise.
func (c Contour) AreaMm2() float64 {
	mm2, _ := c.Loop().Area()
	return mm2
}

// Middle is the area in mm² and the centroid of a closed polygon, by the shoelace formula, either way
// round; the centroid of one without area is the middle of its box.
func Middle(corners []Point) (mm2 float64, centroid Point) {
	var sum, x, y float64
	o := BoxOf(corners...).Middle()
	for i, p := range corners {
		a, b := p.Minus(o), corners[(i+1)%len(corners)].Minus(o)
		cross := float64(a.XMm*b.YMm) - float64(b.XMm*a.YMm)
		sum, x, y = sum+cross, x+(a.XMm+b.XMm)*cross, y+(a.YMm+b.YMm)*cross
	}
	if math.Abs(sum) < 1e-9 {
		return 0, o
	}
	return math.Abs(sum) / 2, Point{o.XMm + x/(3*sum), o.YMm + y/(3*sum)}
}

// Middle is the area inside the contour in mm², and its centroid, as of a polygon within 0.01 mm.
func (c Contour) Middle() (mm2 float64, centroid Point) { return Middle(corners(c.Path)) }

// LengthMm is the length of the contour.
func (c Contour) LengthMm() float64 {
	sum := 0.0
	for _, e := range c.pieces {
		if e.radius > 0 {
			sum += e.radius * e.sweepRad()
		} else {
			sum += Distance(e.from, e.to)
		}
	}
	return sum
}

// sweepRad is the angle an arc turns through, 0 to 2π.
func (e piece) sweepRad() float64 {
	a := 2 * math.Asin(math.Min(1, Distance(e.from, e.to)/2/e.radius))
	if e.large {
		a = 2*math.Pi - a
	}
	return a
}

// DepthMm is how far inside the contour a point lies: its distance from the
// nearest stretch, negative outside. The circle of that radius about the point
// touches the contour.
func (c Contour) DepthMm(p Point) float64 {
	near, inside := math.Inf(1), false
	for _, e := range c.pieces {
		near = math.Min(near, e.distance(p))
		a, b := e.from, e.to
		if (a.YMm > p.YMm) != (b.YMm > p.YMm) && e.chordRight(p) != (b.YMm > a.YMm) {
			inside = !inside // a ray to the right crosses the chord
		}
		if e.radius > 0 && Distance(p, e.centre) < e.radius && e.bulges(p) {
			inside = !inside // between chord and arc
		}
	}
	if !inside {
		return -near
	}
	return near
}

// bulges tells whether a point lies on the side of an arc's chord where the
// arc is.
func (e piece) bulges(p Point) bool { return e.chordRight(p) == e.left }

// chordRight tells whether a point lies to the right of the chord. A point on
// it counts as one a little higher and, where that is still on it, a little to
// the right, so that it is never counted on both sides or on neither.
func (e piece) chordRight(p Point) bool {
	s := side(e.from, e.to, p)
	if s == 0 && e.from.YMm == e.to.YMm {
		return e.to.XMm < e.from.XMm
	}
	if s == 0 {
		return e.to.YMm > e.from.YMm
	}
	return s < 0
}

// distance is that of a point from a line or an arc.
func (e piece) distance(p Point) float64 {
	if e.radius == 0 {
		return ToSegment(p, e.from, e.to)
	}
	off := Distance(p, e.centre)
	k := e.radius / off // not a number at the centre, from which the ends are as near as the rest
	if e.bulges(e.centre.Plus(p.Minus(e.centre).Times(k))) {
		return math.Abs(off - e.radius)
	}
	return math.Min(Distance(p, e.from), Distance(p, e.to))
}

// side is over 0 for a point to the left of the line from a to b: twice the
// area of the triangle.
func side(a, b, p Point) float64 { return b.Minus(a).Cross(p.Minus(a)) }

// Inside tells whether p lies in the surface that closed lines bound.
func Inside(p Point, loops ...[]Point) (in bool) {
	for _, loop := range loops {
		for i, a := range loop {
			b := loop[(i+1)%len(loop)]
			if a.YMm > p.YMm != (b.YMm > p.YMm) && p.XMm < a.XMm+(p.YMm-a.YMm)*(b.XMm-a.XMm)/(b.YMm-a.YMm) {
				in = !in
			}
		}
	}
	return in
}

// ToSegment is the distance of p from the line between a and b, mm; from a where the
// two are one.
func ToSegment(p, a, b Point) float64 {
	d, t := b.Minus(a), 0.0
	if l := float64(d.XMm*d.XMm) + float64(d.YMm*d.YMm); l > 0 {
		t = math.Max(0, math.Min(1, (float64((p.XMm-a.XMm)*d.XMm)+float64((p.YMm-a.YMm)*d.YMm))/l))
	}
	return Distance(p, Point{XMm: a.XMm + t*d.XMm, YMm: a.YMm + t*d.YMm})
}

// Apart is the distance of the line between a and b from that between c and d, mm; either may be a point.
func Apart(a, b, c, d Point) float64 {
	ab, cd, ac := b.Minus(a), d.Minus(c), c.Minus(a)
	turn := ab.Cross(cd) // without one s and t are no numbers, or without end
	if s, t := ac.Cross(cd)/turn, ac.Cross(ab)/turn; min(s, t) >= 0 && max(s, t) <= 1 {
		return 0
	}
	return min(ToSegment(a, c, d), ToSegment(b, c, d), ToSegment(c, a, b), ToSegment(d, a, b))
}
