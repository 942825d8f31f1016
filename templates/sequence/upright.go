package sequence

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// Room in millimetres beside the view of an upright machine that is cut: at its left for a size,
// at each side for balloons, over it for what is up, and under it for a size and a title; and over
// the plan for an hour and a title.
const (
	sizeMm   = 10.0
	columnMm = 2*draw.BalloonMm + 9
	upMm     = 6.0
	belowMm  = 16.0
	planMm   = 13.0
)

// apartTimes is how much larger the views may become where the list of parts stands on a sheet of its own, before it does.
const apartTimes = 1.5

// uprightSheet is how a machine that stands with its front up is set out: the reduction of its views, the list of parts
// that stands beside the plan, if it does, and the room for what is cut and for the plan, each with what stands round it.
type uprightSheet struct {
	scale                float64
	list                 draw.Piece
	listed               bool
	wideMm, cutMm, rowMm float64
}

// setOut finds the largest views that have room on the sheet over the notes, with the list of parts, unless it keeps
// them small.
func (r *arranger) setOut(notes *draw.Piece) uprightSheet {
	w, h := size(&r.a.Front)
	wp, hp := size(&r.a.End)
	ws, _ := size(&r.a.Top)
	body := r.frame.Body()
	column := picture.BalloonStepMm * math.Ceil(float64(len(r.shown()))/2) // half of the balloons at each side
	sideMm := 4.0
	if len(r.aside) > 0 {
		sideMm = 2 * columnMm
	}
	fit := func(listed bool) (u uprightSheet) {
		u.listed = listed
		u.scale = r.scale(func(s float64) bool {
			u.wideMm, u.cutMm = sizeMm+2*columnMm+max(w, wp)/s, max(h/s, column)
			wide := body.Width() - u.wideMm
			if listed {
				u.list = r.list(max(wide, leastColumnMm) - 4)
			}
			u.rowMm = max(hp/s+planMm+4, u.list.Height+2)
			return max(ws/s+sideMm, leastColumnMm) <= wide && u.rowMm+u.cutMm+upMm+belowMm+notes.Height <= body.Height()-10
		})
		return u
	}
	with, alone := fit(true), fit(false)
	if with.list.Height < body.Height()/2 && with.scale <= apartTimes*alone.scale {
		return with
	}
	return alone
}

// standing draws a machine that stands with its front up on one sheet: cut along its axis
// with item numbers, beside it from the side, and above or below it the plan, with the list of
// parts beside that, without the materials if need be, or on a sheet before where that has no room. The view from the
// side takes over numbers where all at the one that is cut would keep the views small.
func (r *arranger) standing() []*draw.Sheet {
	_, h := size(&r.a.Front)
	_, hp := size(&r.a.End)
	ws, _ := size(&r.a.Top)
	body := r.frame.Body()
	notes := r.notes(body.Width())
	u := r.setOut(&notes)
	if r.aside = r.sideTakes(); len(r.aside) > 0 {
		if taken := r.setOut(&notes); taken.scale < u.scale {
			u = taken
		} else {
			r.aside = nil
		}
	}
	sheet, room := r.sheet("cut along the axis, from above and from the side", u.scale)
	d := &sheet.Draw
	edge := room.X0 + u.wideMm
	cut := draw.Rect{X0: room.X0, X1: edge, Y1: room.Y1 - u.rowMm} // under the plan
	plan0 := room.Y1
	if cut.Y0 = cut.Y1 - u.cutMm - upMm - belowMm; r.a.Stands == plan.FirstAngle {
		high := cut.Y1 - cut.Y0
		cut.Y1 = room.Y1
		cut.Y0 = cut.Y1 - high
		plan0 = cut.Y0
	}
	r.standingCut(d, cut, u.scale)
	d.Place(&u.list.Draw, edge+4, plan0-1)
	x := room.X0 + sizeMm + columnMm
	from := &picture.Paper{Low: r.a.End.MinMm, X: x, Y: plan0 - planMm - hp/u.scale, Scale: 1 / u.scale}
	r.plan(d, from, u.scale)
	r.side(d, &picture.Paper{Low: r.a.Top.MinMm, X: (edge + room.X1 - ws/u.scale) / 2, Y: level(cut, h/u.scale), Scale: 1 / u.scale}, u.scale)
	d.Place(&notes.Draw, room.X0, room.Y0+notes.Height)
	if u.listed {
		return []*draw.Sheet{sheet}
	}
	return []*draw.Sheet{r.listSheet(u.scale), sheet}
}

// sideTakes are the items of the view that is cut that the one from the side takes over, so many that three columns of
// balloons are of one height, where it shows so many: those first that are not cut.
func (r *arranger) sideTakes() map[int]bool {
	shown, out := r.shown(), map[int]bool{}
	all := len(shown) + len(r.only(&r.a.Top, maps.Clone(shown)))
	over := len(shown) - 2*((all+2)/3)
	uncut := map[int]bool{}
	for _, q := range r.a.Front.Behind {
		uncut[q.Item] = true
	}
	for _, first := range []bool{true, false} {
		for _, q := range r.a.Top.Behind {
			if len(out) < over && shown[q.Item] && uncut[q.Item] == first {
				out[q.Item] = true
			}
		}
	}
	return out
}

// level is where the foot of a view stands that is so high, in the middle of the room for its balloons.
func level(at draw.Rect, high float64) float64 {
	return at.Y0 + belowMm + (at.Y1-at.Y0-upMm-belowMm-high)/2
}

// standingCut is the view that is cut, with its sizes and balloons at both sides.
func (r *arranger) standingCut(d *draw.Drawing, at draw.Rect, scale float64) {
	v := &r.a.Front
	_, h := size(v)
	p := &picture.Paper{Low: v.MinMm, X: at.X0 + sizeMm + columnMm, Y: level(at, h/scale), Scale: 1 / scale}
	spots := r.cutView(d, p)
	p.Centres(d, append(slices.Clone(v.Centres), [2]plan.XY{{YMm: v.MinMm.YMm - 3*scale}, {YMm: v.MaxMm.YMm + 3*scale}}))
	box := r.sized(d, p, v, [2]float64{columnMm, 1})
	slices.SortStableFunc(spots, func(a, b picture.Spot) int { return cmp.Compare(a.X, b.X) })
	left, right := spots[:len(spots)/2], spots[len(spots)/2:]
	picture.BalloonColumn(d, left, box.X0-columnMm+draw.BalloonMm+2, at.Y0+belowMm, at.Y1-upMm)
	picture.BalloonColumn(d, right, box.X1+columnMm-draw.BalloonMm-2, at.Y0+belowMm, at.Y1-upMm)
	says, front, middle := "Cut along the axis, "+scaleWord(scale), "FRONT ▲", (box.X0+box.X1)/2
	clear := draw.TextWidth(says, draw.TextMm, true)/2 + 3
	x0, x1, y := min(box.X0, middle-clear), max(box.X1, middle+clear), at.Y0+2
	if x0-draw.TextWidth(front, draw.TextMm, true) < at.X0 { // a narrow view: over its title
		x0, x1, y = box.X0-1, box.X1+1, y+1.5*draw.TextMm
	}
	d.Add(draw.Text{XMm: x0, YMm: y, SizeMm: draw.TextMm, Bold: true, Align: draw.Right, Content: front},
		draw.Text{XMm: x1, YMm: y, SizeMm: draw.TextMm, Bold: true, Content: "TOP ►"},
		draw.Text{XMm: middle, YMm: at.Y0 + 2, SizeMm: draw.TextMm, Bold: true, Align: draw.Centre, Content: says})
}

// plan is the machine seen from above, with the hours round it.
func (r *arranger) plan(d *draw.Drawing, p *picture.Paper, scale float64) {
	v := &r.a.End
	p.Lines(d, v.Lines, draw.LineMm)
	x0, y0 := p.At(v.MinMm)
	x1, y1 := p.At(v.MaxMm)
	_, h := size(v)
	beside := r.anchors(d, p, draw.Rect{X0: x0, Y0: y0, X1: x1, Y1: y1}, true)
	r.high(d, x0, draw.Rect{Y0: y0, Y1: y1}, h)
	x, y := p.At(plan.XY{})
	top := y - 1
	if slices.ContainsFunc(beside, func(at float64) bool { return math.Abs(at-y) < draw.TextMm }) {
		top = y1 + 3
	}
	d.Add(draw.Segment(x, y0-1, x, y1+2, draw.HairMm, draw.ChainDash...), draw.Segment(x0-1, y, x1+2, y, draw.HairMm, draw.ChainDash...),
		draw.Text{XMm: x1 + 2.5, YMm: top, SizeMm: draw.TextMm, Content: "TOP 0° ►"},
		draw.Text{XMm: x, YMm: y1 + 3, SizeMm: draw.TextMm, Align: draw.Centre, Content: "270°"},
		draw.Text{XMm: (x0 + x1) / 2, YMm: y1 + planMm - 5, SizeMm: draw.TextMm, Bold: true, Align: draw.Centre, Content: "Seen from above, " + scaleWord(scale)})
}

// side is the machine seen from the side, with the numbers that the cut view has not.
func (r *arranger) side(d *draw.Drawing, p *picture.Paper, scale float64) {
	v, says := &r.a.Top, "Seen from the side of TOP"
	if r.a.Stands == plan.FirstAngle {
		says = "Seen from the side opposite TOP"
	}
	p.Lines(d, v.Lines, draw.LineMm)
	x0, y0 := p.At(v.MinMm)
	x1, y1 := p.At(v.MaxMm)
	w, _ := size(v)
	only := r.only(v, r.shown())
	more := max(0, picture.BalloonStepMm*float64(len(only))-(y1-y0)) / 2
	title := draw.Text{XMm: (x0 + x1) / 2, YMm: y0 - belowMm + 2, SizeMm: 3.4, Bold: true, Align: draw.Centre, Content: says + ", " + scaleWord(scale)}
	beside := x1
	if more > 0 {
		beside = max(x1, draw.TextRect(title).X1)
	}
	picture.BalloonColumn(d, r.spots(p, only), beside+draw.BalloonMm+2, y0-more, y1+more)
	extent(d, draw.Rect{X0: x0, Y0: y0, X1: x1, Y1: y0 - 7}, r.w.Room(w))
	d.Add(title)
}
