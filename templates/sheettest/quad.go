package sheettest

import (
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// quad is a rectangle, turned, its corners in order.
type quad [4]canvas.Point

func (q quad) middle() canvas.Point { return q[0].Interpolate(q[2], 0.5) }

func (q quad) holds(p canvas.Point) bool {
	for i := range q {
		if q[(i+1)%4].Sub(q[i]).PerpDot(p.Sub(q[i])) < 0 {
			return false
		}
	}
	return true
}

func (q quad) box() draw.Rect {
	r := draw.R(q[0].X, q[0].Y, q[0].X, q[0].Y)
	for _, p := range q {
		r = r.With(draw.R(p.X, p.Y, p.X, p.Y))
	}
	return r
}

// meets tells whether two quads lie over each other: no side of either has the other wholly beyond it.
func (q quad) meets(o quad) bool {
	for _, pair := range [2][2]quad{{q, o}, {o, q}} {
		for i, from := range pair[0] {
			side := pair[0][(i+1)%4].Sub(from)
			beyond := true
			for _, corner := range pair[1] {
				beyond = beyond && side.PerpDot(corner.Sub(from)) <= 0
			}
			if beyond {
				return false
			}
		}
	}
	return true
}

// corners are the corners of a text's room, shrunk by less, turned about its
// position.
func corners(t draw.Text, less float64) quad {
	r := draw.TextRect(t).Grown(-less)
	turn := canvas.Identity.RotateAbout(t.RotateDeg, t.XMm, t.YMm)
	return quad{
		turn.Dot(canvas.Point{X: r.X0, Y: r.Y0}), turn.Dot(canvas.Point{X: r.X1, Y: r.Y0}),
		turn.Dot(canvas.Point{X: r.X1, Y: r.Y1}), turn.Dot(canvas.Point{X: r.X0, Y: r.Y1}),
	}
}
