package pdf

import (
	"math"
	"strings"

	"github.com/tdewolff/canvas"
)

// pathOperators returns the path construction operators (clause 8.5.2) for a
// path in millimetres that has been checked, empty for an empty path.
func pathOperators(path *canvas.Path) string {
	var b strings.Builder
	for s := path.Scanner(); s.Scan(); {
		end := s.End()
		switch s.Cmd() {
		case canvas.MoveToCmd:
			b.WriteString(point(end.X, end.Y) + "m ")
		case canvas.LineToCmd:
			b.WriteString(point(end.X, end.Y) + "l ")
		case canvas.QuadToCmd:
			// The same curve as a cubic: two thirds of the way to the
			// quadratic's control point from either end.
			start, c := s.Start(), s.CP1()
			cubic(&b, toward(start, c), toward(end, c), end)
		case canvas.CubeToCmd:
			cubic(&b, s.CP1(), s.CP2(), end)
		case canvas.ArcToCmd:
			rx, ry, rotDeg, large, sweep := s.Arc()
			for _, c := range arcCubics(s.Start(), rx, ry, rotDeg*math.Pi/180, large, sweep, end) {
				cubic(&b, c[0], c[1], c[2])
			}
		case canvas.CloseCmd:
			b.WriteString("h ")
		}
	}
	return b.String()
}

func toward(from, to canvas.Point) canvas.Point {
	return canvas.Point{X: from.X + (to.X-from.X)*2/3, Y: from.Y + (to.Y-from.Y)*2/3}
}

func cubic(b *strings.Builder, c1, c2, end canvas.Point) {
	b.WriteString(point(c1.X, c1.Y) + point(c2.X, c2.Y) + point(end.X, end.Y) + "c ")
}

// arcCubics turns an elliptical arc into cubic curves of at most 45 degrees
// each, whose radius is then off by 4.3 millionths at most: 2 thousandths of
// a millimetre on a circle of one metre. Each curve is two control points and
// its end; the last ends exactly at end. The centre comes from the end
// points as SVG 1.1 appendix F.6.5 gives it.
func arcCubics(start canvas.Point, rx, ry, rot float64, large, sweep bool, end canvas.Point) [][3]canvas.Point {
	sinRot, cosRot := math.Sincos(rot)
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
	if large == sweep {
		side = -side
	}
	cx, cy := side*uy, -side*ux
	from := math.Atan2(uy-cy, ux-cx)
	turn := math.Atan2(-uy-cy, -ux-cx) - from
	if sweep && turn < 0 {
		turn += 2 * math.Pi
	} else if !sweep && turn > 0 {
		turn -= 2 * math.Pi
	}
	n := int(math.Ceil(math.Abs(turn)/(math.Pi/4) - 1e-9))
	if n < 1 {
		n = 1
	}
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
