package sequence

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// The line of what comes in this step, the room for its arrow, and the least height of a
// picture without its arrows.
const (
	newMm       = 0.6
	arrowMm     = 8.0
	arrowHalfMm = 2.4 // of its head's width
	besideMm    = arrowMm + 2

	leastPictureMm = 9.0
)

// cutWords say how a picture is cut and seen.
var cutWords = map[plan.CutKind][2]string{
	plan.CutAxis:   {"Cut along the axis,", "FRONT at the left"},
	plan.CutBolt:   {"Cut along the axis through a bolt,", "FRONT at the left"},
	plan.CutLength: {"Cut lengthwise,", "FRONT at the left"},
	plan.CutAcross: {"Cut across,", "seen from the FRONT"},
	plan.CutLevel:  {"Cut level,", "seen from above, FRONT at the left"},
	plan.CutTop:    {"Cut lengthwise,", "seen from its TOP, FRONT at the left"},
	plan.CutFrame:  {"Cut through the middle of the bars,", "their fronts to you; the diagonals, and the number of each corner"},
}

// margins are what a picture needs round itself for numbers, its caption and arrows in a width and a
// height, and what is left to it: its scale, and how large its arrows are.
type margins struct{ over, under, left, right, scale, arrow float64 }

func roomOf(pic *plan.Picture, width, height float64) margins {
	const whole, least = 55.0, 0.7 // mm of width that take whole arrows, and the least of them
	w, h := pic.MaxMm.XMm-pic.MinMm.XMm, pic.MaxMm.YMm-pic.MinMm.YMm
	m := margins{over: picture.BalloonRowMm, under: picture.CaptionMm + captionMm*float64(len(captionOf(pic, width))-1), left: 2, right: 2, arrow: max(least, min(1, width/whole))}
	var up, down float64
	for _, a := range pic.Arrows {
		switch {
		case a.Dir.XMm > 0.5:
			m.left = besideMm * m.arrow
		case a.Dir.XMm < -0.5:
			m.right = besideMm * m.arrow
		case a.Dir.YMm > 0:
			up = arrowMm * m.arrow
		default:
			down = arrowMm * m.arrow
		}
	}
	if twoRows(pic) {
		m.under += picture.BalloonRowMm
	}
	over, under := m.over, m.under
	m.over, m.under = over+down, under+up
	if len(pic.Corners) > 0 {
		m.left, m.right = cornerMm, cornerMm
	}
	fit := func() float64 { return min((width-m.left-m.right)/w, max(height-m.over-m.under, leastPictureMm)/h) }
	m.scale = fit()
	back, behind := backs(pic, m.scale, m.arrow)
	for i, a := range pic.Arrows { // one behind another, or leaning over the edge of the picture
		tail := a.Dir.YMm * (back[i] + arrowMm*m.arrow)
		up = max(up, tail-(a.AtMm.YMm-pic.MinMm.YMm)*m.scale)
		down = max(down, -tail-(pic.MaxMm.YMm-a.AtMm.YMm)*m.scale)
		switch {
		case !behind[i]:
		case a.Dir.XMm > 0.5:
			m.left += arrowMm * m.arrow
		case a.Dir.XMm < -0.5:
			m.right += arrowMm * m.arrow
		}
	}
	m.over, m.under = over+down, under+up
	m.scale = fit()
	return m
}

// backs are how far the arrows of a picture stand back, in millimetres of paper, to lie over nothing
// that is drawn and not over one another, at a share of their size; behind tells of each whether it
// stands behind another.
func backs(pic *plan.Picture, scale, size float64) (back []float64, behind []bool) {
	for i, a := range pic.Arrows {
		back, behind = append(back, clearOf(pic, a, scale)), append(behind, false)
		for k, o := range pic.Arrows[:i] {
			along, across := tipsApart(a, o, scale)
			if off := back[i] - back[k] - along; a.Dir == o.Dir && a.Dir != (plan.XY{}) && math.Abs(across) < 2*arrowHalfMm*size && math.Abs(off) < arrowMm*size {
				back[i], behind[i] = back[i]-off+arrowMm*size, true
			}
		}
	}
	return back, behind
}

// tipsApart is how far the tip of one arrow lies before that of another, and beside it, in millimetres
// of paper.
func tipsApart(a, o plan.Arrow, scale float64) (along, across float64) {
	d := a.AtMm.Plus(o.AtMm.Times(-1)).Times(scale)
	return d.XMm*a.Dir.XMm + d.YMm*a.Dir.YMm, d.YMm*a.Dir.XMm - d.XMm*a.Dir.YMm
}

// pictureOf draws what stands at a step in section, what is new heavy and with
// the way it comes.
func pictureOf(pic *plan.Picture, width, height float64) draw.Panel {
	w, h := pic.MaxMm.XMm-pic.MinMm.XMm, pic.MaxMm.YMm-pic.MinMm.YMm
	m := roomOf(pic, width, height)
	v := &picture.Paper{Low: pic.MinMm, High: pic.MaxMm, Scale: m.scale}
	p := draw.Panel{Width: width, Height: m.over + m.under + h*v.Scale}
	v.X, v.Y = max(m.left, min((width-w*v.Scale)/2, width-m.right-w*v.Scale)), m.under-p.Height
	return draw.Panel{Width: p.Width, Height: p.Height, Later: func() draw.Drawing {
		p := p
		sectionOf(&p, pic, v, m.arrow)
		return p.Draw
	}}
}

// sections are pictures of a step side by side.
func sections(pics []plan.Picture, width, height float64) (out []draw.Panel) {
	for i, wide := range shares(pics, width) {
		out = append(out, pictureOf(&pics[i], wide-0.1, height))
	}
	return out
}

func widthsMm(panels []draw.Panel) float64 {
	return seq.Sum(panels, func(p draw.Panel) float64 { return p.Width })
}

func tallest(panels []draw.Panel) (mm float64) {
	return seq.Max(0, panels, func(p draw.Panel) float64 { return p.Height })
}

// shares divides a width among the pictures of a step by how wide they are for their height, each at
// least with room for its numbers where the others then have theirs.
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
	for i := range out {
		for k := range out {
			if less := balloonsMm(&pics[i]) - out[i]; less > 0 && out[k]-less >= balloonsMm(&pics[k]) {
				out[i], out[k] = out[i]+less, out[k]-less
			}
		}
	}
	return out
}

// twoRows tells whether a picture has a row of numbers below it too: one that is higher than wide, of more numbers than five, whose
// lines from above would run through much of it (common practice, no source).
func twoRows(pic *plan.Picture) bool {
	return pic.MaxMm.YMm-pic.MinMm.YMm > pic.MaxMm.XMm-pic.MinMm.XMm && len(numbersOf(pic)) > 5
}

// numbersOf are the numbers that a picture has.
func numbersOf(pic *plan.Picture) (items []int) {
	for _, s := range pic.Shapes {
		if s.Named {
			items = seq.Add(items, s.Item)
		}
	}
	return items
}

// balloonsMm is the width that the numbers of a picture take in a row.
func balloonsMm(pic *plan.Picture) float64 {
	return picture.BalloonStepMm * float64(len(numbersOf(pic)))
}

// leastScale is that of the smallest of pictures side by side in a width and a height; 0 where one
// has no room for its numbers.
func leastScale(pics []plan.Picture, width, height float64) float64 {
	least := math.Inf(1)
	for i, wide := range shares(pics, width) {
		if wide < balloonsMm(&pics[i])-1e-9 {
			return 0
		}
		least = min(least, roomOf(&pics[i], wide, height).scale)
	}
	return least
}

// sectionOf draws a picture on its panel, its arrows at a share of their size.
func sectionOf(p *draw.Panel, pic *plan.Picture, v *picture.Paper, size float64) {
	var spots []picture.Spot
	drawn := painted(pic)
	for i, s := range drawn {
		v.Shape(&p.Draw, s, lineOf(s))
		if first := balloonOf(pic, s.Item); first == s { // of copies the one that itemNames tells of
			x, y := v.At(picture.Metal(s.Loops, drawn[i+1:]))
			spots = append(spots, picture.Spot{N: s.Item, X: x, Y: y})
		}
	}
	v.Centres(&p.Draw, pic.Centres)
	back, _ := backs(pic, v.Scale, size)
	for i, a := range pic.Arrows {
		x, y := v.At(a.AtMm)
		if a.Dir == (plan.XY{}) {
			p.Draw.Add(endOn(x, y)...)
			continue
		}
		if back[i] > 0 { // from beside what it would cover a line leads on
			p.Draw.Add(draw.Segment(x, y, x-back[i]*a.Dir.XMm, y-back[i]*a.Dir.YMm, draw.ThinMm))
		}
		p.Draw.Add(wayArrow(x-back[i]*a.Dir.XMm, y-back[i]*a.Dir.YMm, a.Dir, size))
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
	if twoRows(pic) {
		caption := picture.CaptionMm + captionMm*float64(len(lines)-1)
		within := draw.R(0, caption-p.Height, p.Width, 0.5)
		balloons(&p.Draw, spots, within, within)
		return
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

// painted are the shapes of a picture from below up: parts that stand, those that are new, and
// over them what is bought.
func painted(pic *plan.Picture) (out []*plan.Shape) {
	for _, layer := range []func(s *plan.Shape) bool{
		func(s *plan.Shape) bool { return s.Item > 0 && !s.New },
		func(s *plan.Shape) bool { return s.Item > 0 && s.New },
		func(s *plan.Shape) bool { return s.Item == 0 },
	} {
		for s := range seq.Refs(pic.Shapes) {
			if layer(s) {
				out = append(out, s)
			}
		}
	}
	return out
}

// balloonOf is the first new shape of an item that has its number in a picture, or the first; nil for none.
func balloonOf(pic *plan.Picture, item int) (out *plan.Shape) {
	for s := range seq.Refs(pic.Shapes) {
		if s.Item == item && s.Named && (out == nil || s.New && !out.New) {
			out = s
		}
	}
	return out
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
	return slices.ContainsFunc(pic.Shapes, func(s plan.Shape) bool { return geom.Inside(q, s.Loops...) })
}

// wayArrow ends at a point and points along a direction, at a share of its size.
func wayArrow(x, y float64, dir plan.XY, size float64) draw.Shape {
	const head, half, shaft = 4.5, arrowHalfMm, 0.9
	dx, dy := dir.XMm*size, dir.YMm*size
	at := func(back, across float64) (float64, float64) { return x - back*dx - across*dy, y - back*dy + across*dx }
	var xy []float64
	for _, q := range [][2]float64{{0.4, 0}, {head, half}, {head, shaft}, {arrowMm, shaft}, {arrowMm, -shaft}, {head, -shaft}, {head, -half}} {
		px, py := at(q[0], q[1])
		xy = append(xy, px, py)
	}
	return draw.Shape{Path: draw.Polygon(xy...), Fill: draw.Black, Stroke: draw.White, WidthMm: 0.3}
}

// endOn is the arrow of what comes square to the picture, from before it: its feathers in a ring,
// over a point.
func endOn(x, y float64) []draw.Item {
	const r = 1.9
	y += r + 0.6
	d := r * math.Sqrt2 / 2
	return []draw.Item{
		draw.Shape{Path: draw.R(x, y, x, y).Grown(r).Path(), Fill: draw.White},
		draw.Ring(x, y, r, newMm), draw.Segment(x-d, y-d, x+d, y+d, newMm), draw.Segment(x-d, y+d, x+d, y-d, newMm),
	}
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
	room := width - widthsMm(beside)
	const least = 58.0
	if high := height + tallest(beside); room/float64(len(j.Pictures)) < least && leastScale(j.Pictures, room, high) > leastScale(j.Pictures, width, height) {
		height = high // they stand larger beside the others than over them
	} else if room/float64(len(j.Pictures)) < least {
		room = width
	}
	if room < width { // as high as what they stand beside costs no room
		height = max(height, tallest(beside))
	}
	rows := panelRows(append(sections(j.Pictures, room, height), beside...), width)
	for i := range rows {
		rows[i].Keep = true
	}
	return append(append(rows[:len(rows)-1], draw.Paragraph("", itemNames(j), c.em(3.2), true, width)...), draw.Space(2))
}

// aboutSection are a joint's weld seen across, and its clock of a radius.
func aboutSection(pl *plan.Plan, j *plan.JointPlan, dialMm float64) (out []draw.Panel) {
	if j.Weld != nil && (len(j.Pictures) < 2 || j.Weld.LegMm == 0) { // two sections show a fillet
		out = append(out, weldPanel(j.Weld, pl.Units, dialMm <= smallDialMm))
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
				if s.Named && s.New == isNew && !seen[s.Item] {
					seen[s.Item] = true
					out = append(out, strconv.Itoa(s.Item)+": "+s.Title)
				}
			}
		}
	}
	return strings.Join(out, ";   ")
}
