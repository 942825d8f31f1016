// Package picture draws the pictures of a part that several sheets show: the
// section along its axis and its faces, not to scale, with numbered balloons.
package picture

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// Room in panels, in millimetres.
const (
	BalloonStepMm = 2*draw.BalloonMm + 1.2
	BalloonRowMm  = 2*draw.BalloonMm + 4
	CaptionMm     = 6.2
	SidePadMm     = 5.0
	FacePadMm     = 3.0 // at each side of a face
	TopPadMm      = 8.0 // the TOP arrow of a face
)

// Aspect is the width of a face over its height; 1 where either is nothing.
func Aspect(face *plan.Face) float64 {
	w, h := face.MaxMm.XMm-face.MinMm.XMm, face.MaxMm.YMm-face.MinMm.YMm
	if !(w > 0 && h > 0) {
		return 1
	}
	return w / h
}

// Section draws the part cut along its axis: the upper half hatched, the
// lower half hatched too in a flat part and seen from outside in a round one.
// Balloons stand in a row above.
func Section(part *plan.PartPlan, features []plan.Feature, w, h float64) draw.Panel {
	s := part.Section
	lo, hi := reach(s)
	sx, sy := w/s.LengthMm, h/(2*max(s.MaxMm, hi, -lo))
	p := draw.Panel{Width: max(w+2*SidePadMm, BalloonStepMm*float64(len(features)), 30), Height: BalloonRowMm + h + CaptionMm}
	x0, axis := (p.Width-w)/2, -BalloonRowMm-h/2
	at := func(q plan.XY) (float64, float64) { return x0 + q.XMm*sx, axis + q.YMm*sy }
	below := func(q plan.XY) (float64, float64) { return at(plan.XY{XMm: q.XMm, YMm: -q.YMm}) }

	cut(&p.Draw, s, at, draw.R(x0-1, axis, x0+w+1, axis+h/2+1))
	switch {
	case s.Whole != nil:
	case s.Flat:
		draw.Hatch(&p.Draw, draw.Loop(s.Metal(), below), draw.R(x0-1, axis-h/2-1, x0+w+1, axis))
	default:
		p.Draw.Add(draw.Shape{Path: draw.Line(slices.Concat([]plan.XY{{}}, s.Outer, []plan.XY{{XMm: s.LengthMm}}), below), Stroke: draw.Black, WidthMm: draw.LineMm})
		edges := &canvas.Path{}
		for i, q := range s.Outer {
			if onArc(s.Outer, i) {
				continue
			}
			x, y := below(q)
			edges.MoveTo(x, axis)
			edges.LineTo(x, y)
		}
		p.Draw.Add(draw.Shape{Path: edges, Stroke: draw.Black, WidthMm: draw.ThinMm})
	}
	threadLines(&p.Draw, s, at, !s.Flat)
	cutIn(&p.Draw, part, at)
	p.Draw.Add(draw.Segment(x0-4, axis, x0+w+4, axis, draw.ThinMm, draw.ChainDash...))

	y := -p.Height + 1.6
	caption := "Section, FRONT at the left"
	if draw.TextWidth(caption, draw.TextMm, false) > p.Width {
		caption = "Section"
	}
	p.Draw.Add(draw.Text{XMm: p.Width / 2, YMm: y, SizeMm: draw.TextMm, Align: draw.Centre, Content: caption}.Within(p.Width))

	var spots []Spot
	for _, ft := range features {
		x, y := at(ft.Balloon)
		spots = append(spots, Spot{N: ft.N, X: x, Y: y})
	}
	BalloonRow(&p, spots)
	return p
}

// reach is how far a section goes up and down from its axis, in mm.
func reach(s *plan.Section) (lo, hi float64) {
	if s.Whole == nil {
		return 0, s.MaxMm
	}
	for _, loop := range s.Whole {
		for _, q := range loop {
			lo, hi = min(lo, q.YMm), max(hi, q.YMm)
		}
	}
	return lo, hi
}

// cut draws the metal above the axis, in a room, or what is cut from TOP to 180° on both
// sides of it, with the edges seen behind the cut.
func cut(d *draw.Drawing, s *plan.Section, at func(plan.XY) (x, y float64), room draw.Rect) {
	if s.Whole == nil {
		draw.Hatch(d, draw.Loop(s.Metal(), at), room)
	}
	for _, line := range s.Seen {
		d.Add(draw.Shape{Path: draw.Line(line, at), Stroke: draw.Black, WidthMm: draw.LineMm})
	}
	for _, loop := range s.Whole {
		path := draw.Loop(loop, at)
		b := path.Bounds()
		draw.Hatch(d, path, draw.R(b.X0, b.Y0, b.X1, b.Y1))
	}
}

// onArc tells whether a point of a contour joins two equal chords of an arc, at
// which no edge is seen.
func onArc(line []plan.XY, i int) bool {
	if i == 0 || i == len(line)-1 {
		return false
	}
	a, b, c := line[i-1], line[i], line[i+1]
	x, y, u, w := b.XMm-a.XMm, b.YMm-a.YMm, c.XMm-b.XMm, c.YMm-b.YMm
	l, m := math.Hypot(x, y), math.Hypot(u, w)
	return l > 0 && math.Abs(l-m) < 1e-4 && x*u+y*w > l*m*0.95
}

// leastThreadMm is the least distance on paper of a thread's thin line from the thick line of its crest
// (0.7 mm, ISO 6410-1:1993, 4.1, from memory), and a little for the width of the lines.
const leastThreadMm = 0.9

// threadLines are the thin lines of the section's threads at their roots, and of
// outside threads below the axis too where both halves are seen.
func threadLines(d *draw.Drawing, s *plan.Section, at func(plan.XY) (x, y float64), both bool) {
	for _, t := range s.Threads {
		threadLine(d, t, at)
		if !t.Inside && both {
			threadLine(d, t, func(q plan.XY) (x, y float64) { return at(plan.XY{XMm: q.XMm, YMm: -q.YMm}) })
		}
	}
}

// threadLine is the thin line of a thread's root; it returns its height and where it ends.
func threadLine(d *draw.Drawing, t plan.ThreadLine, at func(plan.XY) (x, y float64)) (y, to float64) {
	from, y := at(plan.XY{XMm: t.FromMm, YMm: t.RadiusMm})
	to, crest := at(plan.XY{XMm: t.ToMm, YMm: t.CrestMm})
	if off := y - crest; math.Abs(off) < leastThreadMm {
		y = crest + math.Copysign(leastThreadMm, off)
	}
	d.Add(draw.Segment(from, y, to, y, draw.ThinMm))
	return y, to
}

// onAxis cuts a hole on the axis, with the thin line of its thread's root and the thick one across at the end of
// the full thread (ISO 6410-1:1993, from memory).
func onAxis(d *draw.Drawing, h plan.AxisHole, at func(plan.XY) (x, y float64)) {
	mouth, floor := h.Line[0], h.Line[len(h.Line)-1]
	hole := draw.Loop(slices.Concat([]plan.XY{{XMm: mouth.XMm}}, h.Line, []plan.XY{{XMm: floor.XMm}}), at)
	d.Add(draw.Shape{Path: hole, Fill: draw.White}, draw.Shape{Path: draw.Line(h.Line, at), Stroke: draw.Black, WidthMm: draw.LineMm})
	if h.Thread == nil {
		return
	}
	y, end := threadLine(d, *h.Thread, at)
	_, axis := at(plan.XY{})
	d.Add(draw.Segment(end, axis, end, y, draw.LineMm))
}

// cutIn draws what is cut into the upper half of a section, turned into its plane: its
// keyways, flats, what goes in from outside, the holes on its axis, and the grooves of its end faces.
func cutIn(d *draw.Drawing, part *plan.PartPlan, at func(plan.XY) (x, y float64)) {
	add := func(p *canvas.Path) {
		d.Add(draw.Shape{Path: p, Fill: draw.White, Stroke: draw.Black, WidthMm: draw.ThinMm})
	}
	block := func(from, to, r0, r1 float64) {
		ax, ay := at(plan.XY{XMm: from, YMm: r0})
		bx, by := at(plan.XY{XMm: to, YMm: r1})
		add(draw.Polygon(ax, ay, bx, ay, bx, by, ax, by))
	}
	for _, h := range part.Section.OnAxis {
		onAxis(d, h, at)
	}
	for _, k := range part.Keyways {
		add(keywayPath(k, at))
	}
	for _, g := range part.Grooves {
		if g.Face != "" {
			block(g.FromMm, g.ToMm, g.InnerMm/2, g.OuterMm/2)
		}
	}
	for _, f := range part.Flats {
		block(f.FromMm, f.ToMm, f.DiameterMm/2, max(0, f.DiameterMm/2-f.DepthMm))
	}
	for _, r := range part.Shown {
		half, floor := max(r.DiameterMm, r.AlongMm)/2, max(0, r.OutsideMm/2-r.DepthMm)
		block(r.AxialMm-half, r.AxialMm+half, r.OutsideMm/2, floor)
		x, y := at(plan.XY{XMm: r.AxialMm, YMm: r.OutsideMm / 2})
		_, foot := at(plan.XY{YMm: floor})
		d.Add(draw.Segment(x, y+1.5, x, foot-1.5, draw.ThinMm, draw.ChainDash...))
	}
}

// keywayPath is a keyway turned into the upper half of the section; a
// side-and-face or Woodruff cutter leaves its arc beyond the ends of the full depth.
func keywayPath(k plan.KeywayRow, at func(plan.XY) (x, y float64)) *canvas.Path {
	crown, toward := k.DiameterMm/2, -1.0
	if k.Inside {
		toward = 1
	}
	cutter := (k.RunoutMm*k.RunoutMm + k.DepthMm*k.DepthMm) / (2 * k.DepthMm) // its radius
	p := &canvas.Path{}
	p.MoveTo(at(plan.XY{XMm: k.FromMm - k.RunoutMm, YMm: crown}))
	const steps = 12
	for i := -steps; i <= steps; i++ {
		z, off := k.FromMm, k.RunoutMm*float64(i)/steps
		if i > 0 {
			z = k.ToMm
		}
		deep := k.DepthMm + math.Sqrt(cutter*cutter-off*off) - cutter
		p.LineTo(at(plan.XY{XMm: z + off, YMm: crown + toward*deep}))
		if i == 0 {
			p.LineTo(at(plan.XY{XMm: k.ToMm, YMm: crown + toward*deep}))
		}
	}
	p.LineTo(at(plan.XY{XMm: k.ToMm + k.RunoutMm, YMm: crown}))
	p.Close()
	return p
}

// Spot is what a balloon points at.
type Spot struct {
	N    int
	X, Y float64
	To   string // the bookmark that the balloon leads to; may be empty
}

// BalloonRow sets balloons in a row along a panel's upper edge.
func BalloonRow(p *draw.Panel, spots []Spot) {
	BalloonLine(&p.Draw, spots, -draw.BalloonMm-0.5, 0, p.Width)
}

// BalloonLine sets balloons in a row at a height, between two places.
func BalloonLine(d *draw.Drawing, spots []Spot, rowY, x0, x1 float64) {
	for i, x := range spread(spots, rowY, x0, x1) {
		balloon(d, x, rowY, spots[i])
	}
}

// LeadersMm is how long the leaders of a row are together.
func LeadersMm(spots []Spot, rowY, x0, x1 float64) (mm float64) {
	for i, x := range spread(spots, rowY, x0, x1) {
		mm += math.Hypot(x-spots[i].X, rowY-spots[i].Y)
	}
	return mm
}

// BalloonColumn sets balloons in a column, between two heights.
func BalloonColumn(d *draw.Drawing, spots []Spot, columnX, y0, y1 float64) {
	for i := range spots {
		spots[i].X, spots[i].Y = spots[i].Y, spots[i].X
	}
	for i, y := range spread(spots, columnX, y0, y1) {
		spots[i].X, spots[i].Y = spots[i].Y, spots[i].X
		balloon(d, columnX, y, spots[i])
	}
}

// spread orders spots along a row, and finds a place in it for the balloon of each.
func spread(spots []Spot, rowY, x0, x1 float64) []float64 {
	slices.SortStableFunc(spots, func(a, b Spot) int { return cmp.Compare(a.X, b.X) })
	wanted := seq.Map(spots, func(q Spot) float64 { return q.X })
	places := draw.Spread(wanted, BalloonStepMm, x0+draw.BalloonMm, x1-draw.BalloonMm)
	// Two leaders that cross change their balloons.
	for range spots {
		for i := range spots {
			for j := i + 1; j < len(spots); j++ {
				if draw.Cross(canvas.Point{X: places[i], Y: rowY}, canvas.Point{X: spots[i].X, Y: spots[i].Y}, canvas.Point{X: places[j], Y: rowY}, canvas.Point{X: spots[j].X, Y: spots[j].Y}) {
					spots[i], spots[j] = spots[j], spots[i]
				}
			}
		}
	}
	return places
}

func balloon(d *draw.Drawing, x, y float64, q Spot) {
	d.Add(draw.Leader(x, y, q.X, q.Y)...)
	d.Add(draw.Balloon(x, y, q.N)...)
	if q.To != "" {
		d.Add(draw.Link{Path: draw.R(x, y, x, y).Grown(draw.BalloonMm).Path(), To: q.To})
	}
}

// Face draws a face of a height, in mm, with its holes and their numbers.
func Face(face *plan.Face, h float64) draw.Panel {
	w := h * Aspect(face)
	size := draw.Panel{Width: max(w+2*FacePadMm, draw.TextWidth(caption(face), draw.SmallMm, true)+1.1), Height: TopPadMm + h + CaptionMm}
	pad := (size.Width - w) / 2
	size.Later = func() draw.Drawing {
		f := &facePicture{face: face, panel: size, w: w, h: h, scale: h / (face.MaxMm.YMm - face.MinMm.YMm)}
		f.ox, f.oy = pad-face.MinMm.XMm*f.scale, -TopPadMm-face.MaxMm.YMm*f.scale
		f.on = draw.R(pad, -TopPadMm-h, pad+w, -TopPadMm).Grown(1)
		f.room = draw.NewOccupied(draw.R(0.6, 0.6-size.Height, size.Width-0.6, 0))
		f.outline()
		f.circles()
		f.openings()
		f.titles()
		f.numbers()
		return f.panel.Draw
	}
	return size
}

// facePicture is a face being drawn at a scale, with what already takes room.
type facePicture struct {
	face        *plan.Face
	panel       draw.Panel
	scale, w, h float64
	ox, oy      float64   // where the face's origin falls
	on          draw.Rect // the face and a little round it
	room        *draw.Occupied
}

// at is where a point of the face falls in the picture.
func (f *facePicture) at(xMm, yMm float64) (float64, float64) {
	return f.ox + xMm*f.scale, f.oy + yMm*f.scale
}

func (f *facePicture) placed(p *canvas.Path) *canvas.Path {
	return p.Transform(canvas.Identity.Translate(f.ox, f.oy).Scale(f.scale, f.scale))
}

// stroke draws a path and keeps its room.
func (f *facePicture) stroke(shape draw.Shape) {
	shape.Stroke = draw.Black
	f.panel.Draw.Add(shape)
	f.room.AddPath(shape.Path)
}

func (f *facePicture) outline() {
	if outline, err := canvas.ParseSVGPath(string(f.face.Outline)); err == nil {
		f.stroke(draw.Shape{Path: f.placed(outline), WidthMm: draw.LineMm})
	}
	for _, c := range f.face.Folds {
		if line, err := canvas.ParseSVGPath(string(c)); err == nil {
			f.stroke(draw.Shape{Path: f.placed(line), WidthMm: draw.ThinMm, DashMm: draw.CutDash})
		}
	}
}

func (f *facePicture) circles() {
	for _, c := range f.face.Circles {
		x, y := f.at(c.CentreMm.XMm, c.CentreMm.YMm)
		r := c.DiameterMm / 2 * f.scale
		if c.Pitch {
			// A pitch circle may run out over the edges of a plate.
			circle := &draw.Drawing{Items: []draw.Item{draw.Ring(x, y, r, draw.HairMm, draw.ChainDash...)}}
			f.panel.Draw.Add(draw.Group{Drawing: circle, Transform: canvas.Identity, Clip: f.on.Path()})
		} else {
			f.panel.Draw.Add(draw.Stadium(canvas.Point{X: x, Y: y}, canvas.Point{X: c.HalfMm.XMm * f.scale, Y: c.HalfMm.YMm * f.scale}, r, draw.LineMm))
		}
		f.room.AddCircle(x, y, r)
	}
}

// hiddenDash is the dash of an edge that lies behind the face (ISO 128-24).
var hiddenDash = []float64{1.8, 0.9}

// line goes through points of the face.
func (f *facePicture) line(points []plan.XY) *canvas.Path {
	return draw.Line(points, func(q plan.XY) (x, y float64) { return f.at(q.XMm, q.YMm) })
}

// openings are the keyways of bores, the cut of a split ring, the holes and the slots.
func (f *facePicture) openings() {
	d := &f.panel.Draw
	for _, notch := range f.face.Notches {
		path := f.line(notch)
		d.Add(draw.Shape{Path: path, Fill: draw.White})
		f.stroke(draw.Shape{Path: path, WidthMm: draw.LineMm})
	}
	for _, line := range f.face.Hidden {
		f.stroke(draw.Shape{Path: f.line(line), WidthMm: draw.HairMm, DashMm: hiddenDash})
	}
	for i := range f.face.Holes {
		x, y, r, arm := f.hole(i)
		d.Add(draw.Ring(x, y, r, 0.25), draw.Segment(x-arm, y, x+arm, y, draw.HairMm), draw.Segment(x, y-arm, x, y+arm, draw.HairMm))
		f.room.AddCircle(x, y, r)
	}
	for _, s := range f.face.Slots {
		path := draw.SlotPath(s.EndsMm[0].XMm, s.EndsMm[0].YMm, s.EndsMm[1].XMm, s.EndsMm[1].YMm, s.WidthMm)
		f.stroke(draw.Shape{Path: f.placed(path), WidthMm: 0.25})
	}
}

// hole is where a hole falls, a radius that can be seen, and the arm of its cross; both
// keep clear of the holes numbered before and after it.
func (f *facePicture) hole(i int) (x, y, r, arm float64) {
	holes := f.face.Holes
	x, y = f.at(holes[i].XMm, holes[i].YMm)
	room := math.Inf(1)
	for _, k := range [2]int{i - 1, i + 1} {
		if k >= 0 && k < len(holes) {
			room = min(room, f.scale*math.Hypot(holes[k].XMm-holes[i].XMm, holes[k].YMm-holes[i].YMm))
		}
	}
	r = max(min(0.6, 0.4*room), holes[i].DiameterMm/2*f.scale)
	return x, y, r, max(r, min(r+0.8, room/2-0.15))
}

// titles are TOP and the words below.
func (f *facePicture) titles() {
	d, mid := &f.panel.Draw, f.panel.Width/2
	if !f.face.NoClock {
		d.Add(draw.TopArrow(mid, 1.4-TopPadMm, 5))
		d.Add(draw.Text{XMm: mid + 3, YMm: 2.2 - TopPadMm, SizeMm: draw.TextMm, Bold: true, Content: "TOP"})
		f.room.AddText(draw.R(mid-2, 1.4-TopPadMm, mid+3+draw.TextWidth("TOP", draw.TextMm, true), 0))
	}
	says := caption(f.face)
	if full := says + ", seen from the back"; f.face.Mirrored && draw.TextWidth(full, draw.TextMm, true) < f.panel.Width-1 {
		says = full
	}
	text := draw.Text{XMm: mid, YMm: -TopPadMm - f.h - 5, SizeMm: draw.TextMm, Bold: true, Align: draw.Centre, Content: says}.Within(f.panel.Width - 1)
	d.Add(text)
	half := draw.TextWidth(text.Content, text.SizeMm, true) / 2
	f.room.AddText(draw.R(mid-half, text.YMm, mid+half, text.YMm+draw.AscentMm*text.SizeMm))
}

// caption is what stands under a face.
func caption(face *plan.Face) string {
	return words.Either(len(face.Folds) > 0, "Flat blank, "+words.Upper(face.Face)+" face", words.Upper(face.Face)+" face")
}

// numbers are those of the holes and slots beside them, where there is room; the first of a
// group none of which has it, and a slot that has none, at the end of a line, beside the face if
// need be.
func (f *facePicture) numbers() {
	said := map[string]bool{}
	for _, far := range []float64{nearMm, f.panel.Width} {
		for i, hole := range f.face.Holes {
			if x, y, r, _ := f.hole(i); far == nearMm || !said[hole.Group] {
				said[hole.Group] = f.number(draw.Search{X: x, Y: y, Near: r + 1.2, Far: r + far, Angle: math.Atan2(hole.YMm, hole.XMm)}, r, hole.N) || said[hole.Group]
			}
		}
		for i, s := range f.face.Slots {
			slot := fmt.Sprint("slot ", i)
			for _, q := range [3]plan.XY{{XMm: s.XMm, YMm: s.YMm}, s.EndsMm[0], s.EndsMm[1]} {
				x, y := f.at(q.XMm, q.YMm)
				r := s.WidthMm / 2 * f.scale
				said[slot] = said[slot] || f.number(draw.Search{X: x, Y: y, Near: r + 1.2, Far: r + far, Angle: math.Atan2(q.YMm, q.XMm)}, r, s.N)
			}
		}
	}
}

// nearMm is how far from the edge of a hole its number may stand without a line.
const nearMm = 4.5

// ledPoints are how many steps along a line are looked at for what is written there.
const ledPoints = 12

// led is the line from a number to the edge of its hole; ok is false where it runs over another
// or over what is written.
func (f *facePicture) led(at draw.Rect, x, y, r float64) (line draw.Shape, ok bool) {
	x0, y0 := min(max(x, at.X0-0.4), at.X1+0.4), min(max(y, at.Y0-0.4), at.Y1+0.4)
	k := r / math.Hypot(x0-x, y0-y)
	for i := range f.face.Holes {
		hx, hy, hr, _ := f.hole(i)
		t := min(max(((hx-x)*(x0-x)+(hy-y)*(y0-y))/math.Pow(math.Hypot(x0-x, y0-y), 2), 0), 1)
		if math.Hypot(hx-x, hy-y) > 1e-6 && math.Hypot(x+t*(x0-x)-hx, y+t*(y0-y)-hy) < hr+0.5 {
			return line, false
		}
	}
	x, y = x+k*(x0-x), y+k*(y0-y)
	for i := range ledPoints + 1 {
		t := float64(i) / ledPoints
		if px, py := x0+t*(x-x0), y0+t*(y-y0); !f.room.ClearOfTexts(draw.R(px, py, px, py)) {
			return line, false
		}
	}
	return draw.Segment(x0, y0, x, y, draw.ThinMm), true
}

// own tells whether a number would be read as that of the hole at (x, y): no other lies nearer, and
// no circle between them.
func (f *facePicture) own(at draw.Rect, x, y, r float64) bool {
	mx, my := (at.X0+at.X1)/2, (at.Y0+at.Y1)/2
	off := math.Hypot(mx-x, my-y) - r
	for i := range f.face.Holes {
		if hx, hy, hr, _ := f.hole(i); math.Hypot(hx-x, hy-y) > 1e-6 && math.Hypot(mx-hx, my-hy)-hr < 1.4*off {
			return false
		}
	}
	for _, c := range f.face.Circles {
		cx, cy := f.at(c.CentreMm.XMm, c.CentreMm.YMm)
		inside := func(px, py float64) bool { return math.Hypot(px-cx, py-cy) < c.DiameterMm/2*f.scale }
		if !c.Pitch && inside(x, y) != inside(mx, my) {
			return false
		}
	}
	return true
}

// number writes the number of a hole of a radius as the search says, if there is room, with a
// line to it if it stands far off; the template has them all.
func (f *facePicture) number(l draw.Search, r float64, n int) bool {
	text := strconv.Itoa(n)
	l.W, l.H = draw.TextWidth(text, draw.SmallMm, true), draw.AscentMm*draw.SmallMm
	far := l.Far > r+nearMm
	spot, ok := f.room.Find(l, func(at draw.Rect) bool {
		if !f.room.Free(at) {
			return false
		}
		if far {
			_, clear := f.led(at, l.X, l.Y, r)
			return clear
		}
		return f.on.Holds(at) && f.own(at, l.X, l.Y, r)
	})
	if !ok {
		return false
	}
	if far {
		line, _ := f.led(spot, l.X, l.Y, r)
		f.panel.Draw.Add(line)
	}
	f.room.AddText(spot)
	f.panel.Draw.Add(draw.Text{XMm: spot.X0, YMm: spot.Y0, SizeMm: draw.SmallMm, Bold: true, Content: text})
	return true
}

// Metal is a place in a cut surface for the end of a leader, in what the shapes drawn over it leave to
// be seen: where of some level chords the middle of a stretch has the most round it, of chords with as
// much the one nearest to the middle.
func Metal(loops [][]plan.XY, over []*plan.Shape) plan.XY {
	box := geom.BoxOf(slices.Concat(loops...)...)
	low, high := box.Min, box.Max
	near := seq.Map(over, func(s *plan.Shape) [][]plan.XY { return s.Loops })
	best, at := 0.0, loops[0][0]
	for n := range 24 {
		y := low.YMm + (high.YMm-low.YMm)*(float64(n)+0.53)/24
		for _, level := range seen(loops, near, y, false) {
			x := (level[0] + level[1]) / 2
			for _, up := range seen(loops, near, x, true) {
				if room := min(level[1]-level[0], 2*(y-up[0]), 2*(up[1]-y)) * (1.2 - 0.4*math.Abs(float64(n)-11.5)/12); room > best+1e-9 {
					best, at = room, plan.XY{XMm: x, YMm: y}
				}
			}
		}
	}
	return at
}

// seen are the stretches of a level line, or of an upright one, in contours and outside of what lies
// over them.
func seen(loops [][]plan.XY, over [][][]plan.XY, at float64, upright bool) (out [][2]float64) {
	out = chords(loops, at, upright)
	for _, o := range over {
		for _, gone := range chords(o, at, upright) {
			var left [][2]float64
			for _, c := range out {
				for _, part := range [][2]float64{{c[0], min(c[1], gone[0])}, {max(c[0], gone[1]), c[1]}} {
					if part[1] > part[0] {
						left = append(left, part)
					}
				}
			}
			out = left
		}
	}
	return out
}

// chords are the stretches of a level line, or of an upright one, in contours.
func chords(loops [][]plan.XY, at float64, upright bool) (out [][2]float64) {
	var xs []float64
	for _, loop := range loops {
		for i, a := range loop {
			b := loop[(i+1)%len(loop)]
			if upright {
				a, b = plan.XY{XMm: a.YMm, YMm: a.XMm}, plan.XY{XMm: b.YMm, YMm: b.XMm}
			}
			if a.YMm < at != (b.YMm < at) {
				xs = append(xs, a.XMm+(at-a.YMm)*(b.XMm-a.XMm)/(b.YMm-a.YMm))
			}
		}
	}
	slices.Sort(xs)
	for i := 0; i+1 < len(xs); i += 2 {
		out = append(out, [2]float64{xs[i], xs[i+1]})
	}
	return out
}
