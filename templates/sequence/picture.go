package sequence

import (
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// The line of what comes in this step, the room for its arrow, and the least height of a
// picture without its arrows.
const (
	newMm    = 0.6
	arrowMm  = 11.0
	besideMm = arrowMm + 3

	leastPictureMm = 9.0
)

// cutWords say how a picture is cut and seen.
var cutWords = map[plan.CutKind]string{
	plan.CutAxis:   "Cut along the axis, FRONT at the left",
	plan.CutBolt:   "Cut along the axis through a bolt, FRONT at the left",
	plan.CutLength: "Cut lengthwise, FRONT at the left",
	plan.CutAcross: "Cut across, seen from the FRONT",
	plan.CutLevel:  "Cut level, seen from above, FRONT at the left",
	plan.CutFrame:  "Cut through the middle of the bars, their fronts to you; the diagonals, and the number of each corner",
}

// pictureOf draws what stands at a step in section, what is new heavy and with
// the way it comes.
func pictureOf(pic *plan.Picture, width, height float64) draw.Panel {
	w, h := pic.MaxMm.XMm-pic.MinMm.XMm, pic.MaxMm.YMm-pic.MinMm.YMm
	over, under, side := picture.BalloonRowMm, picture.CaptionMm+captionMm*float64(len(captionOf(pic, width))-1), 2.0
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
	if len(pic.Corners) > 0 {
		side = cornerMm
	}
	v := &picture.Paper{Low: pic.MinMm, Scale: min((width-2*side)/w, max(height-over-under, leastPictureMm)/h)}
	p := draw.Panel{Width: width, Height: over + under + h*v.Scale}
	v.X, v.Y = (width-w*v.Scale)/2, under-p.Height
	return draw.Panel{Width: p.Width, Height: p.Height, Later: func() draw.Drawing {
		p := p
		sectionOf(&p, pic, v)
		return p.Draw
	}}
}

// sectionOf draws a picture on its panel.
func sectionOf(p *draw.Panel, pic *plan.Picture, v *picture.Paper) {
	var spots []picture.Spot
	legend := map[int]bool{}
	point := func(s *plan.Shape) {
		if s.Item > 0 && !legend[s.Item] {
			legend[s.Item] = true
			x, y := v.At(picture.Metal(s.Loops))
			spots = append(spots, picture.Spot{N: s.Item, X: x, Y: y})
		}
	}
	for _, isNew := range []bool{false, true} {
		for i := range pic.Shapes {
			if s := &pic.Shapes[i]; s.New == isNew && ofPart(s) {
				v.Shape(&p.Draw, s, lineOf(s))
			}
		}
	}
	for _, isNew := range []bool{true, false} { // of copies the one that itemNames tells of
		for i := range pic.Shapes {
			if s := &pic.Shapes[i]; s.New == isNew {
				point(s)
			}
		}
	}
	for i := range pic.Shapes {
		if s := &pic.Shapes[i]; !ofPart(s) {
			v.Shape(&p.Draw, s, lineOf(s))
		}
	}
	v.Centres(&p.Draw, pic.Centres)
	for _, a := range pic.Arrows {
		x, y := v.At(a.AtMm)
		p.Draw.Add(wayArrow(x, y, a.Dir.XMm, a.Dir.YMm))
	}
	for i, at := range pic.Corners { // beside the picture, at the height of the corner
		x, y := v.At(plan.XY{XMm: pic.MaxMm.XMm, YMm: at.YMm})
		align, dx := draw.Left, 1.0
		if at.XMm < (pic.MinMm.XMm+pic.MaxMm.XMm)/2 {
			x, _ = v.At(pic.MinMm)
			align, dx = draw.Right, -1
		}
		p.Draw.Add(draw.Text{XMm: x + dx, YMm: y - draw.TextMm/2, SizeMm: draw.TextMm, Bold: true, Align: align, Content: strconv.Itoa(i + 1)})
	}
	lines := captionOf(pic, p.Width)
	for i, line := range lines {
		caption, size := draw.Shrink(line, draw.TextMm, false, p.Width-2)
		p.Draw.Add(draw.Text{XMm: p.Width / 2, YMm: -p.Height + 1.4 + captionMm*float64(len(lines)-1-i), SizeMm: size, Align: draw.Centre, Content: caption})
	}
	picture.BalloonRow(p, spots)
}

// cornerMm is the room beside a frame for the number of a corner.
const cornerMm = 6.0

// captionMm is the distance of the lines under a picture.
const captionMm = 3.4

// captionOf says how a picture is cut and seen, in the lines that its width needs.
func captionOf(pic *plan.Picture, width float64) []string {
	text := cutWords[pic.Cut]
	if draw.TextWidth(text, draw.SmallMm, false) <= width-2 {
		return []string{text}
	}
	cut, seen, _ := strings.Cut(text, ", ")
	return append(draw.Wrap(cut+",", draw.SmallMm, false, width-2), draw.Wrap(seen, draw.SmallMm, false, width-2)...)
}

// ofPart tells whether a cut surface is that of a part of the job.
func ofPart(s *plan.Shape) bool { return s.Item > 0 }

// lineOf is the line about a cut surface.
func lineOf(s *plan.Shape) float64 {
	if s.New {
		return newMm
	}
	return draw.ThinMm
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
	dialMm := max(14.5, 18*float64(c))
	if c < 0.5 && len(clockMarks(j)) == 0 { // the last way to keep it on a page; letters need the room
		dialMm = smallDialMm
	}
	beside := aboutSection(pl, j, dialMm)
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

// aboutSection are a joint's weld seen across, and its clock of a radius.
func aboutSection(pl *plan.Plan, j *plan.JointPlan, dialMm float64) (out []draw.Panel) {
	if j.Weld != nil && (len(j.Pictures) < 2 || j.Weld.LegMm == 0) { // two sections show a fillet
		out = append(out, weldPanel(j, j.Weld, pl.Units, dialMm <= smallDialMm))
	}
	if clock, ok := clockPanel(j, dialMm); ok {
		out = append(out, clock)
	}
	return out
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
					out = append(out, strconv.Itoa(s.Item)+": "+s.Title)
				}
			}
		}
	}
	return strings.Join(out, ";   ")
}
