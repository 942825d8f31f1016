package sequence

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// arrangementName is the sheet that shows the whole machine.
const arrangementName = "General arrangement"

// The reductions that drawings use: ISO 5455 in millimetres, and in inches the
// fractions of an inch for an inch (common practice, no source).
var (
	metricScales = []float64{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000}
	inchScales   = []float64{1, 2, 4, 8, 16, 32, 64, 128, 256, 512}
)

// The room that a view needs beside itself for its sizes and its numbers.
const (
	aroundMm = 18.0
	rowMm    = picture.BalloonRowMm
)

// arranger draws the sheets of the general arrangement.
type arranger struct {
	pl    *plan.Plan
	a     *plan.Arrangement
	w     words.Writer
	frame draw.Frame
	aside map[int]bool // items of the view that is cut whose balloons the one from the side has
}

// newArranger is for the plan's machine, or what stands apart from it.
func newArranger(pl *plan.Plan, a *plan.Arrangement, paper draw.Frame) *arranger {
	if (paper.HeightMm > paper.WidthMm) == (a.Stands == "") {
		paper = paper.Turned()
	}
	return &arranger{pl: pl, a: a, w: words.Writer{Units: pl.Units}, frame: paper}
}

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

func size(v *plan.View) (w, h float64) { return v.MaxMm.XMm - v.MinMm.XMm, v.MaxMm.YMm - v.MinMm.YMm }

// scale is the least reduction at which something fits.
func (r *arranger) scale(fits func(scale float64) bool) float64 {
	list := parts.By(r.pl.Units, metricScales, inchScales)
	for _, s := range list {
		if fits(s) {
			return s
		}
	}
	return list[len(list)-1]
}

func scaleWord(scale float64) string { return "1:" + strconv.Itoa(int(scale)) }

// sheet is an empty sheet with its head, and the room that is left on it.
func (r *arranger) sheet(rest string, scale float64) (*draw.Sheet, draw.Rect) {
	word := scaleWord(scale)
	s := &draw.Sheet{Frame: r.frame, All: true, Name: arrangementName, Scale: word}
	room := r.frame.Body()
	if r.a.Title != "" {
		rest = r.a.Title + ", tied to the machine by no joint, " + rest
	}
	head := draw.RunningHead(r.pl.Job, "general arrangement, "+rest+", "+word, room.Width())
	s.Draw.Place(&head.Draw, room.X0, room.Y1)
	room.Y1 -= head.Height
	return s, room
}

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

// cutView draws what is cut and what is seen behind, and returns where the balloons point.
func (r *arranger) cutView(d *draw.Drawing, p *picture.Paper) (spots []picture.Spot) {
	v := &r.a.Front
	p.Lines(d, v.Lines, draw.ThinMm)
	seen := map[int]bool{}
	maps.Copy(seen, r.aside)
	over := slices.Collect(seq.Refs(v.Shapes))
	for i, s := range over {
		p.Shape(d, s, draw.LineMm)
		if s.Item == 0 {
			continue
		}
		title := r.sheetOf(s.Item)
		if title != "" {
			d.Add(draw.Link{Path: p.Path(s.Loops), To: title})
		}
		if !seen[s.Item] {
			seen[s.Item] = true
			for _, loops := range bothSides(s.Loops) {
				x, y := p.At(picture.Metal(loops, over[i+1:]))
				spots = append(spots, picture.Spot{N: s.Item, X: x, Y: y, To: title})
			}
		}
	}
	return append(spots, r.spots(p, seq.Keep(v.Behind, func(q plan.Place) bool { return !r.aside[q.Item] }))...)
}

// bothSides are the contours of a cut above the axis and those below it, where none
// crosses it; else all of them.
func bothSides(loops [][]plan.XY) [][][]plan.XY {
	up := func(q plan.XY) bool { return q.YMm > 0 }
	above := seq.Keep(loops, func(l []plan.XY) bool { return !slices.ContainsFunc(l, func(q plan.XY) bool { return !up(q) }) })
	below := seq.Keep(loops, func(l []plan.XY) bool { return !slices.ContainsFunc(l, up) })
	if len(above) == 0 || len(below) == 0 || len(above)+len(below) < len(loops) {
		return [][][]plan.XY{loops}
	}
	return [][][]plan.XY{above, below}
}

// sheetOf is the title of the sheets of an item; empty for one that is bought.
func (r *arranger) sheetOf(item int) string {
	if item > len(r.pl.Parts) {
		return ""
	}
	return r.pl.Parts[item-1].Title
}

// leastColumnMm is the least width of a column beside the view for the list.
const leastColumnMm = 84.0

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

// listSheet is the list of parts on a sheet of its own, beside views of a scale.
func (r *arranger) listSheet(scale float64) *draw.Sheet {
	s, room := r.sheet("list of parts", scale)
	s.Scale = "not to scale"
	list := r.list(room.Width())
	s.Draw.Place(&list.Draw, room.X0, room.Y1-1)
	return s
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

// notes say what the views leave out.
func (r *arranger) notes(width float64) draw.Piece {
	var notes []string
	if text := r.anchored(); text != "" {
		notes = append(notes, text)
	}
	for _, of := range []struct {
		titles []string
		says   string
	}{{r.a.Beside, "Not cut in the view along the axis: "}, {r.a.ByHand, "Put in by hand at the steps that say so, not drawn: "},
		{r.a.Passing, "Comes off again, drawn at its step: "}, {r.a.Floating, "Placed by no joint, not drawn: "},
		{seq.Map(r.a.Apart, func(a *plan.Arrangement) string { return a.Title }), "Tied to it by no joint, each with what is on it on a sheet of its own: "}} {
		if len(of.titles) > 0 {
			notes = append(notes, of.says+strings.Join(r.numbered(of.titles), ", ")+".")
		}
	}
	return draw.Stack(draw.Paragraph("", strings.Join(notes, " "), draw.TextMm, false, width)...)
}

func (r *arranger) numbered(titles []string) (out []string) {
	for _, title := range titles {
		if i := slices.IndexFunc(r.pl.Parts, func(p *plan.PartPlan) bool { return p.Title == title }); i >= 0 {
			title += " (" + strconv.Itoa(i+1) + ")"
		}
		out = append(out, title)
	}
	return out
}

// only are the parts that a view from outside shows and no view in shown, which it adds them to.
func (r *arranger) only(v *plan.View, shown map[int]bool) (out []plan.Place) {
	for _, q := range v.Behind {
		if !shown[q.Item] {
			shown[q.Item] = true
			out = append(out, q)
		}
	}
	return out
}

// spots are where the balloons of parts that are seen and not cut point.
func (r *arranger) spots(p *picture.Paper, of []plan.Place) []picture.Spot {
	return seq.Map(of, func(q plan.Place) picture.Spot {
		x, y := p.At(q.AtMm)
		return picture.Spot{N: q.Item, X: x, Y: y, To: r.sheetOf(q.Item)}
	})
}

// shown are the items that have their balloons in the view that is cut.
func (r *arranger) shown() map[int]bool {
	out := map[int]bool{}
	for i := range r.a.Front.Shapes {
		out[r.a.Front.Shapes[i].Item] = true
	}
	for _, q := range r.a.Front.Behind {
		out[q.Item] = true
	}
	maps.DeleteFunc(out, func(item int, _ bool) bool { return r.aside[item] })
	return out
}

// sized adds the overall sizes at the left of a view and below it, each over a gap, and
// returns where the view stands.
func (r *arranger) sized(d *draw.Drawing, p *picture.Paper, v *plan.View, gaps [2]float64) draw.Rect {
	x0, y0 := p.At(v.MinMm)
	x1, y1 := p.At(v.MaxMm)
	w, h := size(v)
	extent(d, draw.Rect{X0: x0, Y0: y0, X1: x1, Y1: y0 - gaps[1] - 6}, r.w.Room(w))
	box := draw.Rect{X0: x0, Y0: y0, X1: x1, Y1: y1}
	r.high(d, x0-gaps[0], box, h)
	return box
}

// high adds the height of a view at the left of a place.
func (r *arranger) high(d *draw.Drawing, x float64, box draw.Rect, mm float64) {
	upright(d, draw.Rect{X0: box.Y0, Y0: -x, X1: box.Y1, Y1: 6 - x}, r.w.Room(mm))
}

// upright is an extent turned to the left by a quarter.
func upright(d *draw.Drawing, r draw.Rect, size string) {
	turned := &draw.Drawing{}
	extent(turned, r, size)
	d.Add(draw.Group{Drawing: turned, Transform: canvas.Identity.Rotate(90)})
}

// clockRound names the hours round the view from the front: 0° at TOP, clockwise.
func clockRound(d *draw.Drawing, p *picture.Paper, box draw.Rect) {
	x, y := p.At(plan.XY{})
	at := func(x, y float64, align draw.Align, text string) {
		d.Add(draw.Over(draw.Text{XMm: x, YMm: y, SizeMm: draw.TextMm, Align: align, Content: text})...)
	}
	d.Add(draw.TopArrow(x, box.Y1+6, 6))
	at(x+3, box.Y1+4, draw.Left, "TOP 0°")
	at(box.X1+1.5, y-1, draw.Left, "90°")
	d.Add(draw.Segment(x, box.Y0-1, x, box.Y1+2, draw.HairMm, draw.ChainDash...), draw.Segment(box.X0-1, y, box.X1+1, y, draw.HairMm, draw.ChainDash...))
}

// extent is a dimension line from X0 to X1 at Y1, with its extension lines from
// Y0, and its size above.
func extent(d *draw.Drawing, r draw.Rect, size string) {
	way := math.Copysign(1, r.Y1-r.Y0)
	d.Add(draw.Segment(r.X0, r.Y1, r.X1, r.Y1, draw.ThinMm), draw.Segment(r.X0, r.Y0+way, r.X0, r.Y1+way*1.5, draw.ThinMm), draw.Segment(r.X1, r.Y0+way, r.X1, r.Y1+way*1.5, draw.ThinMm),
		draw.Shape{Path: draw.Polygon(r.X0, r.Y1, r.X0+3, r.Y1+0.6, r.X0+3, r.Y1-0.6), Fill: draw.Black},
		draw.Shape{Path: draw.Polygon(r.X1, r.Y1, r.X1-3, r.Y1+0.6, r.X1-3, r.Y1-0.6), Fill: draw.Black},
		draw.Text{XMm: (r.X0 + r.X1) / 2, YMm: r.Y1 + 1, SizeMm: 3.4, Bold: true, Align: draw.Centre, Content: size})
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

// list names the numbers of the balloons in a width, in two blocks side by side; without the materials, which the cover
// has, where those leave its words no room.
func (r *arranger) list(width float64) draw.Piece {
	block := []draw.Column{{Head: "No.", Bold: true, Align: draw.Centre}, {Head: "Part", Flex: true, Leads: true}, {Head: "off", Align: draw.Centre}, {Head: "Material"}}
	of := func(columns int) draw.Piece {
		t := draw.Table{Compact: true, Tight: true, Columns: slices.Repeat(block[:columns], 2)}
		t.Rows = draw.Abreast(seq.Map(r.items(), func(row []string) []string { return row[:columns] }), 2)
		return draw.Stack(t.Pieces(width)...)
	}
	with, without := of(4), of(3)
	if without.Height < with.Height-draw.TextMm {
		return without
	}
	return with
}

// items are the rows of the list of parts; of what stands apart those that are in it.
func (r *arranger) items() (rows [][]string) {
	for i, p := range r.pl.Parts {
		off := p.Quantity
		if r.a.Holds != nil {
			off = r.a.Holds[i+1]
		}
		if off > 0 {
			rows = append(rows, []string{strconv.Itoa(i + 1), p.Title, strconv.Itoa(off), p.Material})
		}
	}
	for i, title := range r.a.Bought {
		rows = append(rows, []string{strconv.Itoa(len(r.pl.Parts) + i + 1), title, "1", "bought"})
	}
	return rows
}
