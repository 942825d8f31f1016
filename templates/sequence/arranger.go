package sequence

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	"centrepop/templates/picture"

	"github.com/tdewolff/canvas"
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
	apart := ""
	if r.a.Title != "" {
		apart = r.a.Title + ", tied to the machine by no joint"
	}
	head, whole := draw.HeadLine(r.pl.Job, words.Join(", ", "general arrangement", apart, rest, word), room.Width())
	if !whole { // each view says under it what it shows
		head, _ = draw.HeadLine(r.pl.Job, words.Join(", ", "general arrangement", apart, word), room.Width())
	}
	s.Draw.Place(&head.Draw, room.X0, room.Y1)
	room.Y1 -= head.Height
	return s, room
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

// listSheet is the list of parts on a sheet of its own, beside views of a scale.
func (r *arranger) listSheet(scale float64) *draw.Sheet {
	s, room := r.sheet("list of parts", scale)
	s.Scale = "not to scale"
	list := r.list(room.Width())
	s.Draw.Place(&list.Draw, room.X0, room.Y1-1)
	return s
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

// leastColumnMm is the least width of a column beside the view for the list.
const leastColumnMm = 84.0

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
