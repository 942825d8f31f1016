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
		on := e.to.Minus(e.from).unit()
		return Point{on.YMm, -on.XMm}
	}
	n := at.Minus(e.centre).unit()
	if !e.left {
		return n.Times(-1)
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
		if out.radius -= mm; !Over(out.radius, 0) {
			return e, false
		}
	}
	for _, end := range []*Point{&out.from, &out.to} {
		*end = end.Plus(e.outward(*end).Times(mm))
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
		switch turn := math.Atan2(a.Cross(b), a.Dot(b)); {
		case math.Abs(turn) < 1e-7: // smooth
		case turn > 0 || turn < 1e-7-math.Pi: // outside corner, or back the way it came
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

// meets is where the lines and circles that two pieces at an angle lie on cross, nearest to a
// place; false if they do not.
func (e piece) meets(o piece, near Point) (Point, bool) {
	if e.radius == 0 && o.radius > 0 {
		return o.meets(e, near)
	}
	d := o.to.Minus(o.from)
	var foot Point    // two crossings lie to either side of it, along d
	var half2 float64 // how far, squared
	switch {
	case e.radius == 0:
		v := e.to.Minus(e.from)
		return o.from.Plus(d.Times(v.Cross(e.from.Minus(o.from)) / v.Cross(d))), true
	case o.radius == 0:
		foot = o.from.Plus(d.Times(e.centre.Minus(o.from).Dot(d) / d.Dot(d)))
		half2 = e.radius*e.radius - math.Pow(Distance(foot, e.centre), 2)
	default: // two circles cross on a line square to that of their centres
		u := o.centre.Minus(e.centre)
		t := (1 + (e.radius*e.radius-o.radius*o.radius)/u.Dot(u)) / 2
		foot = e.centre.Plus(u.Times(t))
		half2, d = e.radius*e.radius-t*t*u.Dot(u), Point{-u.YMm, u.XMm}
	}
	if half2 < 0 {
		return Point{}, false
	}
	half := d.unit().Times(math.Sqrt(half2))
	at, other := foot.Plus(half), foot.Minus(half)
	if Distance(other, near) < Distance(at, near) {
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
			if e.to.Minus(e.from).Dot(was.to.Minus(was.from)) < 0 {
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
