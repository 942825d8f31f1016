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
// contour with inside corners, radii or necks too tight to follow.
func Outward(p *canvas.Path, mm float64) (*canvas.Path, error) {
	if NewContour(p).AreaMm2() < 0 {
		p = p.Reverse()
	}
	out, err := offset(piecesOf(p, false), mm)
	if err != nil {
		return nil, err
	}
	if _, _, _, crosses, _ := Crossing(corners(out)); crosses {
		return nil, ErrTight
	}
	return out, nil
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
		default: // inside corner
			at, ok := moved[i].meets(moved[j], pieces[i].to)
			if !ok {
				return nil, ErrTight
			}
			moved[i].to, moved[j].from = at, at
		}
	}
	return joined(pieces, moved, round, mm)
}

// meets is where the lines and circles that two pieces lie on cross, nearest to a
// place; false if they do not.
func (e piece) meets(o piece, near Point) (Point, bool) {
	if e.radius == 0 && o.radius > 0 {
		return o.meets(e, near)
	}
	d := Point{o.to.XMm - o.from.XMm, o.to.YMm - o.from.YMm}
	long := math.Hypot(d.XMm, d.YMm)
	var foot Point // two crossings lie half to either side of it, along d
	half := 0.0
	switch {
	case e.radius == 0:
		v := Point{e.to.XMm - e.from.XMm, e.to.YMm - e.from.YMm}
		t := (v.XMm*(e.from.YMm-o.from.YMm) - v.YMm*(e.from.XMm-o.from.XMm)) / (v.XMm*d.YMm - v.YMm*d.XMm)
		return Point{o.from.XMm + t*d.XMm, o.from.YMm + t*d.YMm}, !math.IsInf(t, 0) && !math.IsNaN(t)
	case o.radius == 0:
		t := ((e.centre.XMm-o.from.XMm)*d.XMm + (e.centre.YMm-o.from.YMm)*d.YMm) / (long * long)
		foot = Point{o.from.XMm + t*d.XMm, o.from.YMm + t*d.YMm}
		half = e.radius*e.radius - math.Pow(Distance(foot, e.centre), 2)
	default: // two circles cross on a line square to that of their centres
		u := Point{o.centre.XMm - e.centre.XMm, o.centre.YMm - e.centre.YMm}
		long = math.Hypot(u.XMm, u.YMm)
		a := (long*long + e.radius*e.radius - o.radius*o.radius) / (2 * long)
		foot = Point{e.centre.XMm + a*u.XMm/long, e.centre.YMm + a*u.YMm/long}
		half, d = e.radius*e.radius-a*a, Point{-u.YMm, u.XMm}
	}
	if !(half >= 0) || !(long > 0) {
		return Point{}, false
	}
	half = math.Sqrt(half) / long
	at := Point{foot.XMm + half*d.XMm, foot.YMm + half*d.YMm}
	if other := (Point{foot.XMm - half*d.XMm, foot.YMm - half*d.YMm}); Distance(other, near) < Distance(at, near) {
		at = other
	}
	return at, true
}

// sweep is the angle that an arc turns from one place on it to another, its way
// round, in radians from 0 to a whole turn.
func (e piece) sweep(from, to Point) float64 {
	turn := math.Atan2(to.YMm-e.centre.YMm, to.XMm-e.centre.XMm) - math.Atan2(from.YMm-e.centre.YMm, from.XMm-e.centre.XMm)
	if !e.left {
		turn = -turn
	}
	if turn = math.Mod(turn+4*math.Pi, 2*math.Pi); turn > 2*math.Pi-1e-9 {
		return 0 // back by a rounding
	}
	return turn
}

// joined draws the moved pieces as one path, with arcs about the corners.
func joined(pieces, moved []piece, round []bool, mm float64) (*canvas.Path, error) {
	out := &canvas.Path{}
	out.MoveTo(moved[0].from.XMm, moved[0].from.YMm)
	for i, e := range moved {
		was := pieces[i]
		if e.radius > 0 {
			left := was.sweep(was.from, was.to) - e.sweep(was.from, e.from) - e.sweep(e.to, was.to)
			if left < 1e-9 {
				return nil, ErrTight // nothing of the arc is left
			}
			out.ArcTo(e.radius, e.radius, 0, left > math.Pi, e.left, e.to.XMm, e.to.YMm)
		} else {
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
