package pdf

import (
	"iter"
	"math"

	"github.com/tdewolff/canvas"

	"centrepop/templates/draw"
)

// subpaths lists the runs of a path's data that begin with a move.
func subpaths(data []float64) iter.Seq[[]float64] {
	return func(yield func([]float64) bool) {
		from := 0
		for i := 0; i < len(data); {
			next := i + length(data[i])
			if next == len(data) || data[next] == canvas.MoveToCmd {
				if i > from && !yield(data[from:next]) { // a move alone draws nothing
					return
				}
				from = next
			}
			i = next
		}
	}
}

// length is the number of values of a command: itself before and behind, and
// between them its points and the numbers of an arc.
func length(command float64) int {
	switch command {
	case canvas.QuadToCmd:
		return 6
	case canvas.CubeToCmd, canvas.ArcToCmd:
		return 8
	}
	return 4
}

// reach is a rectangle that holds a subpath: its points, those that pull its
// curves, and about the end of an arc a square that its ellipse cannot leave.
func reach(data []float64) draw.Rect {
	a := draw.R(data[1], data[2], data[1], data[2])
	for i := 0; i < len(data); {
		n := length(data[i])
		x, y := data[i+n-3], data[i+n-2]
		if data[i] == canvas.ArcToCmd {
			rx, ry := data[i+1], data[i+2]
			// An ellipse that does not reach from end to end is enlarged.
			chord := math.Hypot(x-data[i-3], y-data[i-2])
			r := 2 * max(rx, ry) * max(1, chord/2/min(rx, ry))
			a = a.With(draw.R(x, y, x, y).Grown(r))
		} else {
			for j := i + 1; j < i+n-1; j += 2 {
				a = a.With(draw.R(data[j], data[j+1], data[j], data[j+1]))
			}
		}
		i += n
	}
	return a
}

// appendPath appends the path construction operators (clause 8.5.2) for a
// subpath in millimetres that has been checked.
func (p *painter) appendPath(b []byte, data []float64) []byte {
	if x, y, w, h, ok := rectangle(data); ok {
		b = p.appendPoint(b, x, y)
		b = append(appendPt(b, w), ' ')
		return append(appendPt(b, h), " re "...)
	}
	var at canvas.Point
	for i := 0; i < len(data); {
		n := length(data[i])
		end := canvas.Point{X: data[i+n-3], Y: data[i+n-2]}
		switch data[i] {
		case canvas.MoveToCmd:
			b = append(p.appendPoint(b, end.X, end.Y), "m "...)
		case canvas.LineToCmd:
			b = append(p.appendPoint(b, end.X, end.Y), "l "...)
		case canvas.QuadToCmd:
			// The same curve as a cubic: two thirds of the way to the
			// quadratic's control point from either end.
			c := canvas.Point{X: data[i+1], Y: data[i+2]}
			b = p.appendCubic(b, toward(at, c), toward(end, c), end)
		case canvas.CubeToCmd:
			b = p.appendCubic(b, canvas.Point{X: data[i+1], Y: data[i+2]}, canvas.Point{X: data[i+3], Y: data[i+4]}, end)
		case canvas.ArcToCmd:
			a := arc{data[i+1], data[i+2], data[i+3], data[i+4] == 1 || data[i+4] == 3, data[i+4] == 2 || data[i+4] == 3}
			for _, c := range a.cubics(at, end) {
				b = p.appendCubic(b, c[0], c[1], c[2])
			}
		case canvas.CloseCmd:
			b = append(b, "h "...)
		}
		at = end
		i += n
	}
	return b
}

// appendPoint appends a place of an item in points, a space after each number.
func (p *painter) appendPoint(b []byte, xMm, yMm float64) []byte {
	b = append(appendPt(b, xMm+p.dxMm), ' ')
	return append(appendPt(b, yMm+p.dyMm), ' ')
}

// rectangle tells whether a subpath is an upright rectangle, begun at the
// corner (x, y) and first drawn along x, as the operator for one is.
func rectangle(data []float64) (x, y, w, h float64, ok bool) {
	if len(data) == 20 && data[4] == canvas.LineToCmd && data[8] == canvas.LineToCmd && data[12] == canvas.LineToCmd && data[16] == canvas.CloseCmd {
		x, y, w, h = data[1], data[2], data[9]-data[1], data[10]-data[2]
		ok = data[5] == data[9] && data[6] == y && data[13] == x && data[14] == data[10]
	}
	return x, y, w, h, ok
}

func toward(from, to canvas.Point) canvas.Point {
	return canvas.Point{X: from.X + (to.X-from.X)*2/3, Y: from.Y + (to.Y-from.Y)*2/3}
}

func (p *painter) appendCubic(b []byte, c1, c2, end canvas.Point) []byte {
	b = p.appendPoint(b, c1.X, c1.Y)
	b = p.appendPoint(b, c2.X, c2.Y)
	return append(p.appendPoint(b, end.X, end.Y), "c "...)
}

// arc is an elliptical arc as SVG has it: its radii in mm, how it is turned in radians,
// and which of the four through two points it is.
type arc struct {
	rx, ry, rot  float64
	large, sweep bool
}

// cubics turns the arc between two points into cubic curves of at most 45 degrees
// each, whose radius is then off by 4.3 millionths at most: 2 thousandths of
// a millimetre on a circle of one metre. Each curve is two control points and
// its end; the last ends exactly at end. The centre comes from the end
// points as SVG 1.1 appendix F.6.5 gives it.
func (a arc) cubics(start, end canvas.Point) [][3]canvas.Point {
	rx, ry := a.rx, a.ry
	sinRot, cosRot := math.Sincos(a.rot)
	dx, dy := (start.X-end.X)/2, (start.Y-end.Y)/2
	x1, y1 := cosRot*dx+sinRot*dy, -sinRot*dx+cosRot*dy
	if tooSmall := math.Hypot(x1/rx, y1/ry); tooSmall > 1 { // F.6.6
		rx, ry = rx*tooSmall, ry*tooSmall
	}
	// In the frame where the ellipse is the unit circle: half the chord is h,
	// and the centre lies beside its middle.
	ux, uy := x1/rx, y1/ry
	h := math.Hypot(ux, uy)
	if h == 0 {
		return nil
	}
	side := math.Sqrt(math.Max(0, 1-h*h)) / h
	if a.large == a.sweep {
		side = -side
	}
	cx, cy := side*uy, -side*ux
	from := math.Atan2(uy-cy, ux-cx)
	turn := math.Atan2(-uy-cy, -ux-cx) - from
	if a.sweep == (turn < 0) { // it goes the other way round
		turn -= math.Copysign(2*math.Pi, turn)
	}
	n := max(1, int(math.Ceil(math.Abs(turn)/(math.Pi/4)-1e-9)))
	step := turn / float64(n)
	// The length of the handles on the unit circle that makes the middle of
	// the curve lie on it.
	handle := 4.0 / 3 * math.Tan(step/4)
	middle := canvas.Point{X: (start.X + end.X) / 2, Y: (start.Y + end.Y) / 2}
	place := func(x, y float64) canvas.Point {
		x, y = rx*(x+cx), ry*(y+cy)
		return canvas.Point{X: middle.X + cosRot*x - sinRot*y, Y: middle.Y + sinRot*x + cosRot*y}
	}
	curves := make([][3]canvas.Point, n)
	for i := range curves {
		s0, c0 := math.Sincos(from + float64(i)*step)
		s1, c1 := math.Sincos(from + float64(i+1)*step)
		curves[i] = [3]canvas.Point{
			place(c0-handle*s0, s0+handle*c0),
			place(c1+handle*s1, s1-handle*c1),
			place(c1, s1),
		}
	}
	curves[n-1][2] = end
	return curves
}
