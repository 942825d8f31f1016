package sequence

import (
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// apart draws what no joint ties to the machine: cut, with a list of what is in it, and from outside
// where there is room.
func (r *arranger) apart() []*draw.Sheet {
	if r.a.Stands != "" {
		return r.standing()
	}
	front, listed, _ := r.front()
	if !listed {
		return append([]*draw.Sheet{front}, r.views(false)...)
	}
	return []*draw.Sheet{front}
}

// arrangement draws the machine cut along its axis with item numbers, overall
// sizes and the list of parts, and seen from outside: on a second sheet, unless
// that would show it no larger than its place under the order of assembly does.
// Then the views come as a piece as wide as that page.
func (r *arranger) arrangement(width float64) (sheets []*draw.Sheet, views *draw.Piece) {
	if r.a.Stands != "" {
		return r.standing(), nil
	}
	front, listed, whole := r.front()
	if whole {
		return []*draw.Sheet{front}, nil
	}
	own := r.views(listed)
	sheets = append([]*draw.Sheet{front}, own...)
	if p, scale := r.outside(width, width*viewsShare); listed && scaleWord(scale) == own[0].Scale {
		return sheets, &p
	}
	return sheets, nil
}

// viewsShare is the most height over width of the views on another sheet.
const viewsShare = 0.6

// front is the sheet of the machine cut along its axis; listed tells whether the
// list of parts has found room on it, whole whether the views from outside have.
func (r *arranger) front() (sheet *draw.Sheet, listed, whole bool) {
	v := &r.a.Front
	w, h := size(v)
	body := r.frame.Body()
	scale := r.scale(func(s float64) bool {
		return w/s <= body.Width()-2*aroundMm && h/s <= body.Height()-10-2*rowMm-aroundMm/2
	})
	sheet, room := r.sheet("cut along the axis", scale)
	spare := room.Height() - 2*rowMm - aroundMm/2 - h/scale
	list := r.list(room.Width())
	if listed = spare > list.Height+4; listed { // above the view
		sheet.Draw.Place(&list.Draw, room.X0, room.Y1-1)
		room.Y1 -= list.Height
		spare -= list.Height
	}
	x := (room.X0 + room.X1 - w/scale) / 2
	if !listed {
		rows := picture.BalloonStepMm * float64(len(r.items())/2+1) // of the numbers, half above and half below
		if left := room.X0 + max(w/scale+2.5*aroundMm, rows+aroundMm/4); room.X1-left >= leastColumnMm {
			listed, whole = r.column(sheet, draw.Rect{X0: left, Y0: room.Y0, X1: room.X1, Y1: room.Y1}, scale)
			if listed {
				x, room.X1 = (room.X0+left-w/scale)/2, left-aroundMm/4
			}
		}
	}
	low := room.Y0 + aroundMm/2 + rowMm + max(0, spare/2)
	p := &picture.Paper{Low: v.MinMm, X: x, Y: low, Scale: 1 / scale}
	d := &sheet.Draw
	spots := r.cutView(d, p)
	p.Centres(d, append(slices.Clone(v.Centres), [2]plan.XY{{XMm: v.MinMm.XMm - 3*scale}, {XMm: v.MaxMm.XMm + 3*scale}}))
	box := r.sized(d, p, v, [2]float64{0, rowMm})
	if under := -v.MinMm.YMm; under > 0 && r.a.Title == "" { // from the axis to what it stands on
		_, axis := p.At(plan.XY{})
		upright(d, draw.Rect{X0: box.Y0, Y0: -box.X1, X1: axis, Y1: -box.X1 - 6}, r.w.Read(under))
	}
	balloons(d, spots, draw.Rect{X0: box.X0 + 1, Y0: box.Y0 - rowMm, X1: box.X1 - 1, Y1: box.Y1 + rowMm}, room)
	d.Add(draw.Over(draw.Text{XMm: room.X0, YMm: min(box.Y0+6, box.Y1-19), SizeMm: draw.TextMm, Bold: true, Content: "FRONT ◄"})...)
	d.Add(draw.TopArrow(room.X0+4, box.Y1-8, 7), draw.Text{XMm: room.X0, YMm: box.Y1 - 13, SizeMm: draw.TextMm, Bold: true, Content: "TOP"})
	return sheet, listed || r.corner(sheet, p, spots, room), whole
}

// column sets the list of parts, and below it the views from outside where they are
// at least half as large as the view, into a room beside the view.
func (r *arranger) column(s *draw.Sheet, room draw.Rect, scale float64) (listed, whole bool) {
	list := r.list(room.Width())
	if list.Height > room.Height() {
		return false, false
	}
	s.Draw.Place(&list.Draw, room.X0, room.Y1-1)
	p, small := r.outside(room.Width(), room.Height()-list.Height-4)
	if small > 2*scale || p.Height > room.Height()-list.Height-4 {
		return true, false
	}
	s.Draw.Place(&p.Draw, room.X0, room.Y1-list.Height-4)
	return true, true
}

// corner sets the list of parts into an upper corner of the front view that is
// empty; false where none is.
func (r *arranger) corner(s *draw.Sheet, p *picture.Paper, spots []picture.Spot, room draw.Rect) bool {
	box := draw.Rect{}
	box.X0, box.Y0 = p.At(r.a.Front.MinMm)
	box.X1, box.Y1 = p.At(r.a.Front.MaxMm)
	taken := func(within draw.Rect) bool {
		in := func(loop []plan.XY) bool {
			return slices.ContainsFunc(loop, func(q plan.XY) bool {
				x, y := p.At(q)
				return x > within.X0 && x < within.X1 && y > within.Y0
			})
		}
		return slices.ContainsFunc(r.a.Front.Lines, in) ||
			slices.ContainsFunc(r.a.Front.Shapes, func(s plan.Shape) bool { return slices.ContainsFunc(s.Loops, in) })
	}
	for _, width := range []float64{room.Width() * 0.5, 122, 108, 96} {
		list := r.list(width)
		at := draw.Rect{X0: room.X1 - width - 4, Y0: room.Y1 - list.Height - 4, X1: room.X1, Y1: room.Y1}
		if !taken(at) && !slices.ContainsFunc(spots, func(q picture.Spot) bool { return q.Y > (box.Y0+box.Y1)/2 && q.X > at.X0-3*picture.BalloonStepMm }) {
			s.Draw.Place(&list.Draw, room.X1-width, room.Y1-1)
			return true
		}
	}
	return false
}

// Room in millimetres beside and above the views from outside: a size and its
// gap at the left, an hour at the right, TOP above, a size and a title below.
const (
	hourMm  = 13.8
	topMm   = 13.0
	underMm = 18.0
)

// crampedBy is how much smaller the views may come out for the list of parts beside them. Common practice, no source.
const crampedBy = 2.5

// views is the sheet of the machine seen from its front and from above, under which the list of parts comes where that has
// no place yet, or on a sheet of its own after it where the views would be cramped.
func (r *arranger) views(listed bool) []*draw.Sheet {
	body := r.frame.Body()
	high := body.Height() - 10 // less the head
	p, scale := r.outside(body.Width(), high)
	var list draw.Piece
	if !listed {
		list = r.list(body.Width())
		beside, small := r.outside(body.Width(), high-list.Height-2)
		if small > crampedBy*scale {
			return append(r.views(true), r.listSheet(scale))
		}
		p, scale, high = beside, small, high-list.Height-2
	}
	s, room := r.sheet("from the front and from above", scale)
	s.Draw.Place(&p.Draw, room.X0, room.Y1-max(0, high-p.Height)/2)
	s.Draw.Place(&list.Draw, room.X0, room.Y0+list.Height)
	return []*draw.Sheet{s}
}

// outside are the views from the front and from above side by side, with what
// they leave out, inside a width and a height, and their scale.
func (r *arranger) outside(width, high float64) (p draw.Piece, scale float64) {
	end, top := &r.a.End, &r.a.Top
	we, he := size(end)
	wt, ht := size(top)
	text := r.notes(width)
	shown := r.shown()
	atEnd, atTop := r.only(end, shown), r.only(top, shown)
	beside := 0.0 // of what says where anchors lie, which balloons stand clear of
	if len(atTop) > 0 {
		beside = r.anchorsMm()
	}
	scale = r.scale(func(s float64) bool {
		return (we+wt)/s <= width-3*hourMm-beside && max(he, ht)/s <= high-topMm-underMm-text.Height
	})
	tall := max(he, ht) / scale
	gap := (width - beside - (we+wt)/scale) / 4
	x := max(gap, hourMm)
	for _, view := range []struct {
		v     *plan.View
		only  []plan.Place
		title string
	}{{end, atEnd, "Seen from the FRONT"}, {top, atTop, "Seen from above, FRONT at the left"}} {
		w, h := size(view.v)
		at := &picture.Paper{Low: view.v.MinMm, X: x, Y: -topMm - (tall+h/scale)/2, Scale: 1 / scale}
		at.Lines(&p.Draw, view.v.Lines, draw.LineMm)
		box := r.sized(&p.Draw, at, view.v, [2]float64{0, 1})
		title, size := draw.Shrink(view.title+", "+scaleWord(scale), 3.4, true, w/scale+2*gap-4)
		p.Draw.Add(draw.Text{XMm: (box.X0 + box.X1) / 2, YMm: box.Y0 - 15, SizeMm: size, Bold: true, Align: draw.Centre, Content: title})
		_, axis := at.At(plan.XY{})
		column := box.X1 + draw.BalloonMm + 2
		if view.v == top {
			column += beside
			p.Draw.Add(draw.Segment(box.X0-3, axis, box.X1+3, axis, draw.HairMm, draw.ChainDash...))
		}
		picture.BalloonColumn(&p.Draw, r.spots(at, view.only), column, min(box.Y0, axis-2-picture.BalloonStepMm*float64(len(view.only))), axis-2)
		if view.v == end { // over the leaders
			clockRound(&p.Draw, at, box)
		} else {
			r.anchors(&p.Draw, at, box, false)
		}
		x += w/scale + 2*gap
	}
	p.Height = topMm + tall + underMm + text.Height
	p.Draw.Place(&text.Draw, 0, text.Height-p.Height)
	return p, scale
}

// balloons sets numbers in a row above a view and in one below it. Each spot goes to
// the row, and of several of one number the one is taken, that leave the leaders the
// shortest. Rows that would be too short are as long as the room.
func balloons(d *draw.Drawing, spots []picture.Spot, within, room draw.Rect) {
	heights := [2]float64{within.Y1 - draw.BalloonMm - 1, within.Y0 + draw.BalloonMm + 1}
	ways := map[int][]balloonWay{}
	var numbers []int
	for _, q := range spots {
		numbers = seq.Add(numbers, q.N)
		for row := range heights {
			ways[q.N] = append(ways[q.N], balloonWay{q, row})
		}
	}
	if float64(len(numbers))*picture.BalloonStepMm > 2*within.Width()-picture.BalloonStepMm {
		within.X0, within.X1 = room.X0, room.X1
	}
	chosen := map[int]int{}
	rows := func() (rows [2][]picture.Spot) {
		for _, n := range numbers {
			w := ways[n][chosen[n]]
			rows[w.row] = append(rows[w.row], w.Spot)
		}
		return rows
	}
	length := func() (mm float64) {
		for row, q := range rows() {
			mm += picture.LeadersMm(q, heights[row], within.X0, within.X1)
			mm += 1000 * max(0, float64(len(q))*picture.BalloonStepMm-within.Width()) // they do not fit
		}
		return mm
	}
	best := length()
	for better := true; better; {
		better = false
		for _, n := range numbers {
			was := chosen[n]
			for way := range ways[n] {
				chosen[n] = way
				if mm := length(); mm < best-0.01 {
					best, was, better = mm, way, true
				}
			}
			chosen[n] = was
		}
	}
	for row, q := range rows() {
		picture.BalloonLine(d, q, heights[row], within.X0, within.X1)
	}
}

// balloonWay is a place that a number may point at, and the row that it may stand in.
type balloonWay struct {
	picture.Spot
	row int
}
