package sequence

import (
	"math"
	"slices"
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
	arrowMm  = 8.0
	besideMm = arrowMm + 2

	leastPictureMm = 9.0
)

// cutWords say how a picture is cut and seen.
var cutWords = map[plan.CutKind][2]string{
	plan.CutAxis:   {"Cut along the axis,", "FRONT at the left"},
	plan.CutBolt:   {"Cut along the axis through a bolt,", "FRONT at the left"},
	plan.CutLength: {"Cut lengthwise,", "FRONT at the left"},
	plan.CutAcross: {"Cut across,", "seen from the FRONT"},
	plan.CutLevel:  {"Cut level,", "seen from above, FRONT at the left"},
	plan.CutFrame:  {"Cut through the middle of the bars,", "their fronts to you; the diagonals, and the number of each corner"},
}

// roomOf is what a picture needs over, under and at each side of itself for numbers, its
// caption and arrows, and its scale in a width and a height.
func roomOf(pic *plan.Picture, width, height float64) (over, under, side, scale float64) {
	w, h := pic.MaxMm.XMm-pic.MinMm.XMm, pic.MaxMm.YMm-pic.MinMm.YMm
	over, under, side = picture.BalloonRowMm, picture.CaptionMm+captionMm*float64(len(captionOf(pic, width))-1), 2.0
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
	return over, under, side, min((width-2*side)/w, max(height-over-under, leastPictureMm)/h)
}

// pictureOf draws what stands at a step in section, what is new heavy and with
// the way it comes.
func pictureOf(pic *plan.Picture, width, height float64) draw.Panel {
	w, h := pic.MaxMm.XMm-pic.MinMm.XMm, pic.MaxMm.YMm-pic.MinMm.YMm
	over, under, _, scale := roomOf(pic, width, height)
	v := &picture.Paper{Low: pic.MinMm, Scale: scale}
	p := draw.Panel{Width: width, Height: over + under + h*v.Scale}
	v.X, v.Y = (width-w*v.Scale)/2, under-p.Height
	return draw.Panel{Width: p.Width, Height: p.Height, Later: func() draw.Drawing {
		p := p
		sectionOf(&p, pic, v)
		return p.Draw
	}}
}

// shares divides a width among the pictures of a step by how wide they are for their height.
func shares(pics []plan.Picture, width float64) []float64 {
	out, sum := make([]float64, len(pics)), 0.0
	for i := range pics {
		w, h := pics[i].MaxMm.XMm-pics[i].MinMm.XMm, pics[i].MaxMm.YMm-pics[i].MinMm.YMm
		out[i] = max(1, min(2, w/h))
		sum += out[i]
	}
	for i := range out {
		out[i] *= width / sum
	}
	return out
}

// sectionOf draws a picture on its panel.
func sectionOf(p *draw.Panel, pic *plan.Picture, v *picture.Paper) {
	var spots []picture.Spot
	legend := map[int]bool{}
	point := func(s *plan.Shape) {
		if numbered(pic, s) && !legend[s.Item] {
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
		back := clearOf(pic, a, v.Scale)
		if back > 0 { // from beside what it would cover a line leads on
			p.Draw.Add(draw.Segment(x, y, x-back*a.Dir.XMm, y-back*a.Dir.YMm, draw.ThinMm))
		}
		p.Draw.Add(wayArrow(x-back*a.Dir.XMm, y-back*a.Dir.YMm, a.Dir.XMm, a.Dir.YMm))
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
	cut, seen := cutWords[pic.Cut][0], cutWords[pic.Cut][1]
	if text := cut + " " + seen; draw.TextWidth(text, draw.SmallMm, false) <= width-2 {
		return []string{text}
	}
	return append(draw.Wrap(cut, draw.SmallMm, false, width-2), draw.Wrap(seen, draw.SmallMm, false, width-2)...)
}

// ofPart tells whether a cut surface is that of a part of the job.
func ofPart(s *plan.Shape) bool { return s.Item > 0 }

// numbered tells whether a shape has its balloon: in a picture of what is laid, only that has.
func numbered(pic *plan.Picture, s *plan.Shape) bool {
	return s.Item > 0 && (s.New || !pic.Laid)
}

// lineOf is the line about a cut surface.
func lineOf(s *plan.Shape) float64 {
	if s.New {
		return newMm
	}
	return draw.ThinMm
}

// clearOf is how far an arrow stands back, in millimetres of paper, to lie over nothing that
// is drawn.
func clearOf(pic *plan.Picture, a plan.Arrow, scale float64) float64 {
	const stepMm, tipMm = 0.5, 0.6
	last := -1.0 // of the places behind its tip that lie on metal
	far := math.Hypot(pic.MaxMm.XMm-pic.MinMm.XMm, pic.MaxMm.YMm-pic.MinMm.YMm) * scale
	for back := tipMm; back < far; back += stepMm {
		for _, across := range []float64{-2, 0, 2} {
			q := plan.XY{XMm: a.AtMm.XMm - (back*a.Dir.XMm+across*a.Dir.YMm)/scale, YMm: a.AtMm.YMm - (back*a.Dir.YMm-across*a.Dir.XMm)/scale}
			if q.XMm < pic.MinMm.XMm || q.XMm > pic.MaxMm.XMm || q.YMm < pic.MinMm.YMm || q.YMm > pic.MaxMm.YMm {
				continue
			}
			if back <= max(last, 0)+arrowMm && onMetal(pic, q) {
				last = back
			}
		}
	}
	if last < 0 {
		return 0
	}
	return last + stepMm
}

// onMetal tells whether a place lies in a cut surface.
func onMetal(pic *plan.Picture, q plan.XY) bool {
	return slices.ContainsFunc(pic.Shapes, func(s plan.Shape) bool {
		in := false
		for _, loop := range s.Loops {
			for i, b := range loop {
				a := loop[(i+len(loop)-1)%len(loop)]
				if (a.YMm > q.YMm) != (b.YMm > q.YMm) && q.XMm < a.XMm+(b.XMm-a.XMm)*(q.YMm-a.YMm)/(b.YMm-a.YMm) {
					in = !in
				}
			}
		}
		return in
	})
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
	if room/float64(len(j.Pictures)) < least {
		room = width
	}
	var panels []draw.Panel
	for i, wide := range shares(j.Pictures, room) {
		panels = append(panels, pictureOf(&j.Pictures[i], wide-0.1, height))
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
				if numbered(&pic, &s) && s.New == isNew && !seen[s.Item] {
					seen[s.Item] = true
					out = append(out, strconv.Itoa(s.Item)+": "+s.Title)
				}
			}
		}
	}
	return strings.Join(out, ";   ")
}
