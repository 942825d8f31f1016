package sequence

import (
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/picture"

	"github.com/tdewolff/canvas"
)

// hatching tells the parts apart by the slope and the spacing of the lines.
var hatching = []struct{ deg, pitchMm float64 }{{45, 2.2}, {135, 2.2}, {30, 1.7}, {120, 2.6}, {60, 2.6}, {150, 1.7}}

// The line of what comes in this step, and the room for its arrow.
const (
	newMm    = 0.6
	arrowMm  = 11.0
	besideMm = arrowMm + 3
)

// cutWords say how a picture is cut and seen.
var cutWords = map[plan.CutKind]string{
	plan.CutAxis:   "Cut along the axis, FRONT at the left",
	plan.CutBolt:   "Cut along the axis through a bolt, FRONT at the left",
	plan.CutLength: "Cut lengthwise, FRONT at the left",
	plan.CutAcross: "Cut across, seen from the FRONT",
	plan.CutLevel:  "Cut level, seen from above, FRONT at the left",
}

// onPaper takes points of a picture to a panel.
type onPaper struct {
	low    plan.XY
	x0, y0 float64
	scale  float64
}

func (v *onPaper) at(q plan.XY) (x, y float64) {
	return v.x0 + (q.XMm-v.low.XMm)*v.scale, v.y0 + (q.YMm-v.low.YMm)*v.scale
}

func (v *onPaper) path(loops [][]plan.XY) *canvas.Path {
	path := &canvas.Path{}
	for _, loop := range loops {
		for i, q := range loop {
			if x, y := v.at(q); i == 0 {
				path.MoveTo(x, y)
			} else {
				path.LineTo(x, y)
			}
		}
		path.Close()
	}
	return path
}

// pictureOf draws what stands at a step in section, what is new heavy and with
// the way it comes.
func pictureOf(pic *plan.Picture, width, height float64) draw.Panel {
	w, h := pic.MaxMm.XMm-pic.MinMm.XMm, pic.MaxMm.YMm-pic.MinMm.YMm
	over, under, side := picture.BalloonRowMm, picture.CaptionMm, 2.0
	for _, a := range pic.Arrows {
		switch {
		case a.Dir.XMm > 0.5 || a.Dir.XMm < -0.5:
			side = besideMm
		case a.Dir.YMm < 0:
			over += arrowMm
		default:
			under += arrowMm
		}
	}
	v := &onPaper{low: pic.MinMm, scale: min((width-2*side)/w, (height-over-under)/h)}
	p := draw.Panel{Width: width, Height: over + under + h*v.scale}
	v.x0, v.y0 = (width-w*v.scale)/2, under-p.Height
	var spots []picture.Spot
	legend := map[int]bool{}
	point := func(s *plan.Shape) {
		if s.Item > 0 && !legend[s.Item] {
			legend[s.Item] = true
			x, y := v.at(picture.Metal(s.Loops))
			spots = append(spots, picture.Spot{N: s.Item, X: x, Y: y})
		}
	}
	for _, isNew := range []bool{false, true} {
		for i := range pic.Shapes {
			if s := &pic.Shapes[i]; s.New == isNew && s.Kind == plan.ShapePart {
				v.shape(&p.Draw, s)
				point(s)
			}
		}
	}
	for i := range pic.Shapes {
		if s := &pic.Shapes[i]; s.Kind != plan.ShapePart {
			v.shape(&p.Draw, s)
			point(s)
		}
	}
	for _, c := range pic.Centres {
		x0, y0 := v.at(c[0])
		x1, y1 := v.at(c[1])
		p.Draw.Add(draw.Segment(x0, y0, x1, y1, draw.ThinMm, draw.ChainDash...))
	}
	for _, a := range pic.Arrows {
		x, y := v.at(a.AtMm)
		p.Draw.Add(wayArrow(x, y, a.Dir.XMm, a.Dir.YMm))
	}
	caption, size := draw.Shrink(cutWords[pic.Cut], draw.TextMm, false, width)
	p.Draw.Add(draw.Text{XMm: width / 2, YMm: -p.Height + 1.6, SizeMm: size, Align: draw.Centre, Content: caption})
	picture.BalloonRow(&p, spots)
	return p
}

// shape draws a cut surface: parts and rings hatched, weld metal filled, screws
// and rollers plain.
func (v *onPaper) shape(d *draw.Drawing, s *plan.Shape) {
	line := draw.ThinMm
	if s.New {
		line = newMm
	}
	path := v.path(s.Loops)
	switch s.Kind {
	case plan.ShapePart:
		look := hatching[s.Item%len(hatching)]
		draw.HatchAt(d, path, look.deg, look.pitchMm, line)
	case plan.ShapeCup:
		draw.HatchAt(d, path, 45, 0.9, min(line, 0.45))
	case plan.ShapeCone:
		draw.HatchAt(d, path, 135, 0.9, min(line, 0.45))
	case plan.ShapeBead:
		d.Add(draw.Shape{Path: path, Fill: draw.Black})
	default:
		d.Add(draw.Shape{Path: path, Fill: draw.White, Stroke: draw.Black, WidthMm: min(line, 0.45)})
	}
}

// wayArrow ends at a point and points along a direction.
func wayArrow(x, y, dx, dy float64) draw.Shape {
	const head, half, shaft = 4.5, 2.4, 0.9
	at := func(back, across float64) (float64, float64) { return x - back*dx - across*dy, y - back*dy + across*dx }
	var xy []float64
	for _, q := range [][2]float64{{0.4, 0}, {head, half}, {head, shaft}, {arrowMm, shaft}, {arrowMm, -shaft}, {head, -shaft}, {head, -half}} {
		px, py := at(q[0], q[1])
		xy = append(xy, px, py)
	}
	return draw.Shape{Path: draw.Polygon(xy...), Fill: draw.Black, Stroke: draw.White, WidthMm: 0.3}
}

// pictures are the sections of a joint, and beside them or below its weld seen
// across and its clock.
func (c closeness) pictures(pl *plan.Plan, j *plan.JointPlan, width, height float64) []draw.Piece {
	var beside []draw.Panel
	if j.Weld != nil && (len(j.Pictures) < 2 || j.Weld.LegMm == 0) { // two sections show a fillet
		beside = append(beside, weldPanel(j, j.Weld, pl.Units))
	}
	if clock, ok := clockPanel(j, max(14.5, 18*float64(c))); ok {
		beside = append(beside, clock)
	}
	if len(j.Pictures) == 0 {
		return apartPictures(pl, j, width, height*0.75, beside...)
	}
	room := width
	for _, q := range beside {
		room -= q.Width
	}
	const least = 58.0
	each := room / float64(len(j.Pictures))
	if each < least {
		each = width / float64(len(j.Pictures))
	}
	var panels []draw.Panel
	for i := range j.Pictures {
		panels = append(panels, pictureOf(&j.Pictures[i], each-0.1, height))
	}
	rows := panelRows(append(panels, beside...), width)
	for i := range rows {
		rows[i].Keep = true
	}
	return append(append(rows[:len(rows)-1], draw.Paragraph("", itemNames(j), c.em(3.2), true, width)...), draw.Space(2))
}

// itemNames say what the numbers in the pictures are, which are those of the
// list of parts.
func itemNames(j *plan.JointPlan) string {
	var out []string
	seen := map[int]bool{}
	for _, isNew := range []bool{true, false} {
		for _, pic := range j.Pictures {
			for _, s := range pic.Shapes {
				if s.Item > 0 && s.New == isNew && !seen[s.Item] {
					seen[s.Item] = true
					out = append(out, strconv.Itoa(s.Item)+" "+s.Title)
				}
			}
		}
	}
	return strings.Join(out, "   ")
}
