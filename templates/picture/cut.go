package picture

import (
	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
)

// hatching tells parts apart by the slope and the spacing in mm of the lines.
var hatching = []struct{ deg, pitch float64 }{{45, 2.2}, {135, 2.2}, {30, 1.7}, {120, 2.6}, {60, 2.6}, {150, 1.7}}

// Paper takes points of the machine to a drawing: Low, in mm, stands at X and Y.
type Paper struct {
	Low   plan.XY
	X, Y  float64
	Scale float64 // mm of paper for a mm of the machine
}

// At is where a point of the machine lies in the drawing.
func (v *Paper) At(q plan.XY) (x, y float64) {
	return v.X + (q.XMm-v.Low.XMm)*v.Scale, v.Y + (q.YMm-v.Low.YMm)*v.Scale
}

// Path has closed contours of the machine in the drawing.
func (v *Paper) Path(loops [][]plan.XY) *canvas.Path {
	path := &canvas.Path{}
	for _, loop := range loops {
		v.line(path, loop)
		path.Close()
	}
	return path
}

func (v *Paper) line(path *canvas.Path, points []plan.XY) {
	for i, q := range points {
		if x, y := v.At(q); i == 0 {
			path.MoveTo(x, y)
		} else {
			path.LineTo(x, y)
		}
	}
}

// Shape draws a cut surface with a line of a width in mm: parts and rings
// hatched, weld metal filled, screws, studs and rollers plain.
func (v *Paper) Shape(d *draw.Drawing, s *plan.Shape, width float64) {
	const smallMm = 0.45 // the most about what is small
	path := v.Path(s.Loops)
	switch s.Kind {
	case plan.ShapePart:
		look := hatching[s.Item%len(hatching)]
		draw.HatchAt(d, path, look.deg, look.pitch, width)
	case plan.ShapeCup:
		draw.HatchAt(d, path, 45, 0.9, min(width, smallMm))
	case plan.ShapeCone:
		draw.HatchAt(d, path, 135, 0.9, min(width, smallMm))
	case plan.ShapeBead:
		d.Add(draw.Shape{Path: path, Fill: draw.Black})
	default:
		d.Add(draw.Shape{Path: path, Fill: draw.White, Stroke: draw.Black, WidthMm: min(width, smallMm)})
	}
}

// Lines draws edges.
func (v *Paper) Lines(d *draw.Drawing, lines [][]plan.XY, width float64) {
	path := &canvas.Path{}
	for _, l := range lines {
		v.line(path, l)
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
