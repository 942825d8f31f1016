package layout

import (
	"errors"
	"math"

	"github.com/tdewolff/canvas"
)

// flatMm is how far a polyline may lie from the curve it stands for.
const flatMm = 0.001

// errTight says that an offset curve would loop back on itself.
var errTight = errors.New("an inside corner or radius is too tight to offset the outline")

// piece is a stretch of a contour: a line, or an arc of a circle. The contour
// runs anticlockwise, so outside is on the right.
type piece struct {
	from, to canvas.Point
	radius   float64      // 0 for a line
	centre   canvas.Point // of an arc
	left     bool         // the arc turns left: the metal is on its inside
	large    bool
}

// offsetOutward moves a closed contour outward by mm (over 0): lines stay
// lines and circular arcs stay arcs, exact; outside corners become arcs of
// radius mm about the corner, inside corners are cut where the moved sides
// meet. Other curves are first made polylines within flatMm. It refuses a
// contour with inside corners too tight to follow.
func offsetOutward(p *canvas.Path, mm float64) (*canvas.Path, error) {
	if signedArea(p) < 0 {
		p = p.Reverse()
	}
	pieces, ok := piecesOf(p)
	if ok {
		if out, err := offsetPieces(pieces, mm); err == nil {
			return out, nil
		}
	}
	pieces, _ = piecesOf(p.Flatten(flatMm))
	return offsetPieces(pieces, mm)
}

// piecesOf takes a closed path apart; ok is false if it holds curves other
// than lines and circular arcs.
func piecesOf(p *canvas.Path) (out []piece, ok bool) {
	for s := p.Scanner(); s.Scan(); {
		from, to := s.Start(), s.End()
		switch s.Cmd() {
		case canvas.MoveToCmd:
			continue
		case canvas.LineToCmd, canvas.CloseCmd:
			if math.Hypot(to.X-from.X, to.Y-from.Y) > 1e-9 {
				out = append(out, piece{from: from, to: to})
			}
		case canvas.ArcToCmd:
			rx, ry, _, large, sweep := s.Arc()
			if math.Abs(rx-ry) > 1e-9 {
				return nil, false
			}
			out = append(out, piece{from: from, to: to, radius: rx, left: sweep, large: large, centre: arcCentre(from, to, rx, large, sweep)})
		default:
			return nil, false
		}
	}
	return out, len(out) > 1
}

// arcCentre is the centre of a circular arc given by its ends.
func arcCentre(from, to canvas.Point, radius float64, large, left bool) canvas.Point {
	chord := math.Hypot(to.X-from.X, to.Y-from.Y)
	rise := math.Sqrt(math.Max(0, radius*radius-chord*chord/4))
	if large == left {
		rise = -rise
	}
	k := rise / chord // left of the chord from from to to
	return canvas.Point{X: (from.X+to.X)/2 - k*(to.Y-from.Y), Y: (from.Y+to.Y)/2 + k*(to.X-from.X)}
}

// outward is the unit vector to the right of a piece at one of its ends.
func (e piece) outward(at canvas.Point) canvas.Point {
	if e.radius == 0 {
		d := math.Hypot(e.to.X-e.from.X, e.to.Y-e.from.Y)
		return canvas.Point{X: (e.to.Y - e.from.Y) / d, Y: -(e.to.X - e.from.X) / d}
	}
	n := canvas.Point{X: (at.X - e.centre.X) / e.radius, Y: (at.Y - e.centre.Y) / e.radius}
	if !e.left {
		n.X, n.Y = -n.X, -n.Y
	}
	return n
}

func offsetPieces(pieces []piece, mm float64) (*canvas.Path, error) {
	n := len(pieces)
	moved := make([]piece, n)
	round := make([]bool, n) // an arc of radius mm follows the piece
	for i, e := range pieces {
		moved[i] = e
		if e.radius > 0 {
			if e.left {
				moved[i].radius += mm
			} else {
				moved[i].radius -= mm
			}
			if moved[i].radius < 1e-6 {
				return nil, errTight
			}
		}
		for _, end := range []*canvas.Point{&moved[i].from, &moved[i].to} {
			o := e.outward(*end)
			*end = canvas.Point{X: end.X + mm*o.X, Y: end.Y + mm*o.Y}
		}
	}
	for i := range pieces {
		j := (i + 1) % n
		a, b := pieces[i].outward(pieces[i].to), pieces[j].outward(pieces[j].from)
		turn := a.X*b.Y - a.Y*b.X
		dot := a.X*b.X + a.Y*b.Y
		switch {
		case math.Abs(turn) < 1e-7 && dot > 0: // smooth
		case turn > 0 || dot < 0 && math.Abs(turn) < 1e-7: // outside corner
			round[i] = true
		case pieces[i].radius == 0 && pieces[j].radius == 0: // inside corner of two lines
			k := mm / (1 + dot)
			at := canvas.Point{X: pieces[i].to.X + k*(a.X+b.X), Y: pieces[i].to.Y + k*(a.Y+b.Y)}
			moved[i].to, moved[j].from = at, at
		default:
			return nil, errTight // as a polyline it can be done
		}
	}
	out := &canvas.Path{}
	out.MoveTo(moved[0].from.X, moved[0].from.Y)
	for i, e := range moved {
		if e.radius > 0 {
			out.ArcTo(e.radius, e.radius, 0, e.large, e.left, e.to.X, e.to.Y)
		} else {
			was := pieces[i]
			if (e.to.X-e.from.X)*(was.to.X-was.from.X)+(e.to.Y-e.from.Y)*(was.to.Y-was.from.Y) < 0 {
				return nil, errTight
			}
			out.LineTo(e.to.X, e.to.Y)
		}
		if next := moved[(i+1)%n]; round[i] {
			out.ArcTo(mm, mm, 0, false, true, next.from.X, next.from.Y)
		}
	}
	out.Close()
	return out, nil
}

// signedArea is the area inside a closed path in mm², positive where it runs
// anticlockwise: exact for lines and circular arcs, other curves by a polyline
// within flatMm.
func signedArea(p *canvas.Path) float64 {
	pieces, ok := piecesOf(p)
	if !ok {
		pieces, _ = piecesOf(p.Flatten(flatMm))
	}
	sum := 0.0
	for _, e := range pieces {
		sum += (float64(e.from.X*e.to.Y) - float64(e.to.X*e.from.Y)) / 2
		if e.radius > 0 {
			// The segment between chord and arc.
			a := e.sweepRad()
			seg := e.radius * e.radius / 2 * (a - math.Sin(a))
			if !e.left {
				seg = -seg
			}
			sum += seg
		}
	}
	return sum
}

// sweepRad is the angle an arc turns through, 0 to 2π.
func (e piece) sweepRad() float64 {
	chord := math.Hypot(e.to.X-e.from.X, e.to.Y-e.from.Y)
	a := 2 * math.Asin(math.Min(1, chord/2/e.radius))
	if e.large {
		a = 2*math.Pi - a
	}
	return a
}

// lengthOf is the length of a closed path in mm: exact for lines and circular
// arcs, other curves by a polyline within flatMm.
func lengthOf(p *canvas.Path) float64 {
	pieces, ok := piecesOf(p)
	if !ok {
		pieces, _ = piecesOf(p.Flatten(flatMm))
	}
	sum := 0.0
	for _, e := range pieces {
		if e.radius > 0 {
			sum += e.radius * e.sweepRad()
		} else {
			sum += math.Hypot(e.to.X-e.from.X, e.to.Y-e.from.Y)
		}
	}
	return sum
}
