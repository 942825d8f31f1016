package geom

import (
	"errors"
	"math"

	"github.com/tdewolff/canvas"
)

// ErrTight says that an offset curve would loop back on itself.
var ErrTight = errors.New("an inside corner or radius is too tight to offset the outline")

// Outward moves a closed contour outward by mm (over 0): lines stay lines and
// circular arcs stay arcs, exact; outside corners become arcs of radius mm
// about the corner, inside corners are cut where the moved sides meet. Other
// curves are first made polylines within FlatMm. The error is ErrTight for a
// contour with inside corners too tight to follow.
func Outward(p *canvas.Path, mm float64) (*canvas.Path, error) {
	if NewContour(p).AreaMm2() < 0 {
		p = p.Reverse()
	}
	if out, err := offset(piecesOf(p, false), mm); err == nil {
		return out, nil
	}
	return offset(piecesOf(p, true), mm)
}

// outward is the unit vector to the right of a piece at one of its ends.
func (e piece) outward(at Point) Point {
	if e.radius == 0 {
		d := Distance(e.from, e.to)
		return Point{(e.to.YMm - e.from.YMm) / d, -(e.to.XMm - e.from.XMm) / d}
	}
	n := Point{(at.XMm - e.centre.XMm) / e.radius, (at.YMm - e.centre.YMm) / e.radius}
	if !e.left {
		n.XMm, n.YMm = -n.XMm, -n.YMm
	}
	return n
}

// moved is a piece moved to its right; false if an arc would vanish.
func (e piece) moved(mm float64) (piece, bool) {
	out := e
	switch {
	case e.radius > 0 && e.left:
		out.radius += mm
	case e.radius > 0:
		if out.radius -= mm; out.radius < 1e-6 {
			return e, false
		}
	}
	for _, end := range []*Point{&out.from, &out.to} {
		o := e.outward(*end)
		*end = Point{end.XMm + mm*o.XMm, end.YMm + mm*o.YMm}
	}
	return out, true
}

func offset(pieces []piece, mm float64) (*canvas.Path, error) {
	n := len(pieces)
	moved := make([]piece, n)
	round := make([]bool, n) // an arc of radius mm follows the piece
	for i, e := range pieces {
		var ok bool
		if moved[i], ok = e.moved(mm); !ok {
			return nil, ErrTight
		}
	}
	for i := range pieces {
		j := (i + 1) % n
		a, b := pieces[i].outward(pieces[i].to), pieces[j].outward(pieces[j].from)
		turn := a.XMm*b.YMm - a.YMm*b.XMm
		dot := a.XMm*b.XMm + a.YMm*b.YMm
		switch {
		case math.Abs(turn) < 1e-7 && dot > 0: // smooth
		case turn > 0 || dot < 0 && math.Abs(turn) < 1e-7: // outside corner
			round[i] = true
		case pieces[i].radius == 0 && pieces[j].radius == 0: // inside corner of two lines
			k := mm / (1 + dot)
			at := Point{pieces[i].to.XMm + k*(a.XMm+b.XMm), pieces[i].to.YMm + k*(a.YMm+b.YMm)}
			moved[i].to, moved[j].from = at, at
		default:
			return nil, ErrTight // as a polyline it can be done
		}
	}
	return joined(pieces, moved, round, mm)
}

// joined draws the moved pieces as one path, with arcs about the corners.
func joined(pieces, moved []piece, round []bool, mm float64) (*canvas.Path, error) {
	out := &canvas.Path{}
	out.MoveTo(moved[0].from.XMm, moved[0].from.YMm)
	for i, e := range moved {
		if e.radius > 0 {
			out.ArcTo(e.radius, e.radius, 0, e.large, e.left, e.to.XMm, e.to.YMm)
		} else {
			was := pieces[i]
			if (e.to.XMm-e.from.XMm)*(was.to.XMm-was.from.XMm)+(e.to.YMm-e.from.YMm)*(was.to.YMm-was.from.YMm) < 0 {
				return nil, ErrTight
			}
			out.LineTo(e.to.XMm, e.to.YMm)
		}
		if next := moved[(i+1)%len(moved)]; round[i] {
			out.ArcTo(mm, mm, 0, false, true, next.from.XMm, next.from.YMm)
		}
	}
	out.Close()
	return out, nil
}
