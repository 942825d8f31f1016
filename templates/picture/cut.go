package picture

import (
	"math"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
	"centrepop/templates/draw"
)

// hatching tells parts apart by the slope and the spacing in mm of the lines.
var hatching = []struct{ deg, pitch float64 }{{45, 2.2}, {135, 2.2}, {30, 1.7}, {120, 2.6}, {60, 2.6}, {150, 1.7}}

// Paper takes points of the machine to a drawing: Low, in mm, stands at X and Y. What ends at High, if
// that is set, or at Low goes on past it.
type Paper struct {
	Low, High plan.XY
	X, Y      float64
	Scale     float64 // mm of paper for a mm of the machine
}

// At is where a point of the machine lies in the drawing.
func (v *Paper) At(q plan.XY) (x, y float64) {
	return v.X + (q.XMm-v.Low.XMm)*v.Scale, v.Y + (q.YMm-v.Low.YMm)*v.Scale
}

// Path has closed contours of the machine in the drawing.
func (v *Paper) Path(loops [][]plan.XY) *canvas.Path {
	path := &canvas.Path{}
	for _, loop := range loops {
		path = path.Append(draw.Loop(loop, v.At))
	}
	return path
}

// Shape draws a cut surface with a line of a width in mm: parts and rings
// hatched, weld metal filled, screws, studs and rollers plain.
func (v *Paper) Shape(d *draw.Drawing, s *plan.Shape, width float64) {
	const smallMm = 0.45 // the most about what is small
	loops, edges := v.broken(s.Loops)
	path := v.Path(loops)
	if s.Kind != plan.ShapePart {
		width = min(width, smallMm)
	}
	if len(edges) > 0 { // over the thin line all round
		defer v.Lines(d, edges, width)
		width = draw.HairMm
	}
	switch s.Kind {
	case plan.ShapePart:
		look := hatching[s.Item%len(hatching)]
		draw.HatchAt(d, path, look.deg, look.pitch, width)
	case plan.ShapeCup:
		draw.HatchAt(d, path, 45, 0.9, width)
	case plan.ShapeCone:
		draw.HatchAt(d, path, 135, 0.9, width)
	case plan.ShapeBead:
		d.Add(draw.Shape{Path: path, Fill: draw.Black})
	default:
		d.Add(draw.Shape{Path: path, Fill: draw.White, Stroke: draw.Black, WidthMm: width})
	}
}

// broken has a wave, as a break line, wherever a contour ends at the window because what it is of goes
// on past it; and of such contours the stretches that are true edges.
func (v *Paper) broken(loops [][]plan.XY) (closed, edges [][]plan.XY) {
	for _, loop := range loops {
		n, first := len(loop), 0 // after the wave with which the contour ends
		for ; first < n && !v.cutOff(loop[(first+n-1)%n], loop[first]); first++ {
		}
		var out, edge []plan.XY
		for i := range n {
			p, q := loop[(first+i)%n], loop[(first+i+1)%n]
			switch edge = append(edge, p); {
			case !v.cutOff(p, q):
				out = append(out, p)
				continue
			case len(edge) > 1:
				edges = append(edges, edge)
			}
			out, edge = append(out, v.wave(p, q)...), nil
		}
		closed = append(closed, out)
	}
	return closed, edges
}

// cutOff tells whether a stretch of a contour lies along the window.
func (v *Paper) cutOff(p, q plan.XY) bool {
	same := func(a, b, c float64) bool { return math.Abs(a-c) < geom.CloseMm && math.Abs(b-c) < geom.CloseMm }
	return v.High != plan.XY{} && (same(p.XMm, q.XMm, v.Low.XMm) || same(p.XMm, q.XMm, v.High.XMm) || same(p.YMm, q.YMm, v.Low.YMm) || same(p.YMm, q.YMm, v.High.YMm))
}

// wave goes inside the window from one point on to another, which it leaves out.
func (v *Paper) wave(p, q plan.XY) (out []plan.XY) {
	const highMm, longMm, steps = 0.8, 4.0, 8
	way, in := q.Plus(p.Times(-1)), v.Low.Plus(v.High).Times(0.5).Plus(p.Times(-1))
	long := math.Hypot(way.XMm, way.YMm) * v.Scale
	waves := max(1, math.Round(long/longMm))
	high := math.Copysign(min(highMm/long, 0.2), way.XMm*in.YMm-way.YMm*in.XMm)
	for i := range int(waves * steps) {
		t := float64(i) / (waves * steps)
		out = append(out, p.Plus(way.Times(t)).Plus(plan.XY{XMm: -way.YMm, YMm: way.XMm}.Times(high*(1-math.Cos(2*math.Pi*t*waves))/2)))
	}
	return out
}

// Lines draws edges.
func (v *Paper) Lines(d *draw.Drawing, lines [][]plan.XY, width float64) {
	path := &canvas.Path{}
	for _, l := range lines {
		path = path.Append(draw.Line(l, v.At))
	}
	d.Add(draw.Shape{Path: path, Stroke: draw.Black, WidthMm: width})
}

// Centres draws centre lines.
func (v *Paper) Centres(d *draw.Drawing, lines [][2]plan.XY) {
	for _, c := range lines {
		x0, y0 := v.At(c[0])
		x1, y1 := v.At(c[1])
		d.Add(draw.Segment(x0, y0, x1, y1, draw.HairMm, draw.ChainDash...))
	}
}
