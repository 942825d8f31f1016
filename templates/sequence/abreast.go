package sequence

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// Sizes of a step that stands beside another, in millimetres.
const (
	besideWideMm = 125.0 // the least width of a step
	sectionMm    = 33.0  // and of each of its sections
	sectionsMm   = 43.0  // its sections' height
	lowMm        = 32.0  // that where they have a row to themselves
	numbersMm    = 43.0  // their least width
	stepBoxMm    = 13.0  // the box of its number
	stepTitleMm  = 4.8
)

// asideWay is how close a step beside another is set, how high its pictures are as a
// share of the highest, whether its numbers stand over the pictures, which then have
// more of the width, or beside them, and whether the sections have a row to themselves.
type asideWay struct {
	closeness
	pictures float64
	over     bool
	apart    bool // the sections have a row to themselves
}

// asideWays are tried from the roomiest on: the pictures are made smaller before what
// is to do gets smaller than 3 mm.
var asideWays = []asideWay{
	{1, 1, true, false}, {0.95, 1, true, false}, {readable, 1, true, false}, {readable, 1, false, false}, {readable, 0.8, true, false}, {readable, 0.8, false, false}, {readable, 0.65, false, false},
	{0.85, 0.8, true, false}, {0.85, 0.8, false, false}, {0.8, 1, true, false}, {0.8, 1, false, false}, {0.8, 0.7, true, false}, {0.8, 0.7, false, false},
}

// readable is the closeness at which what is to do is set in 3 mm.
const readable = 0.91

// halves are steps as each fits on half a sheet, which is on its side; a step may come
// first on one, or second.
type halves struct {
	pl   *plan.Plan
	on   draw.Frame
	made map[int]*aside // by the number of its first joint; nil where it does not fit
}

func halvesOf(pl *plan.Plan, paper draw.Frame) *halves {
	return &halves{pl, paper.Turned(), map[int]*aside{}}
}

// abreast draws two steps side by side, each with all that it has, as roomy as it
// fits; nil where one does not.
func (h *halves) abreast(first, second []*plan.JointPlan) []*draw.Sheet {
	if (h.on.Body().Width()-draw.GutterMm)/2 < besideWideMm {
		return nil
	}
	left := h.half(first)
	if left == nil {
		return nil
	}
	right := h.half(second)
	if right == nil {
		return nil
	}
	f := h.flow("Steps "+words.Span(first[0].N, len(first))+", "+words.Span(second[0].N, len(second)), 0)
	left.set(f)
	f.TurnColumn()
	right.set(f)
	return f.Sheets
}

func (h *halves) flow(name string, trial int) *draw.Flow {
	f := draw.NewTrial(func(int) (*draw.Sheet, draw.Piece) {
		return &draw.Sheet{Frame: h.on, All: true, Part: Name, Name: name, Scale: "not to scale"}, draw.Piece{}
	}, trial)
	f.Columns(2)
	return f
}

// half is a step on half a sheet, laid out once, as roomy as it fits; nil where it does
// not.
func (h *halves) half(run []*plan.JointPlan) *aside {
	if one, ok := h.made[run[0].N]; ok {
		return one
	}
	h.made[run[0].N] = nil
	texts, pictures := map[closeness]*asideText{}, map[asideWay][]draw.Piece{}
	try := func(way asideWay) bool {
		f := h.flow("", math.MaxInt)
		if _, beside := way.besidePictures(h.pl, run, f.Width()); way.scale(run[len(run)-1], beside, f.Width()) == 0 {
			return false
		}
		if texts[way.closeness] == nil {
			texts[way.closeness] = way.asideText(h.pl, run, f.Width())
		}
		shown := way
		if shown.closeness = 0; pictures[shown] == nil { // of any closeness
			pictures[shown] = shown.asidePictures(h.pl, run, f.Width())
		}
		one := &aside{texts[way.closeness], pictures[shown]}
		one.set(f)
		if len(f.Sheets) > 1 || f.Column() > 0 {
			return false
		}
		h.made[run[0].N] = one
		return true
	}
	if i := slices.IndexFunc(asideWays, try); i >= 0 {
		_ = slices.ContainsFunc(asideWays[i].larger(h.pl, run, h.flow("", math.MaxInt).Width()), try) // the first that fits is kept
	}
	return h.made[run[0].N]
}

// aside is a step on half a sheet: its texts and its pictures.
type aside struct {
	*asideText
	shown []draw.Piece
}

// asideText is what a step says over its pictures, between them and its tables, and
// under these.
type asideText struct {
	over, between []draw.Piece
	tables        []draw.Table
	under         []draw.Piece
}

func (c closeness) asideText(pl *plan.Plan, run []*plan.JointPlan, width float64) *asideText {
	t := &asideText{tables: c.asideTables(run, width), under: closer(c.closing(run, width))}
	t.over = append([]draw.Piece{asideHead(pl, run, width)}, c.warnings(pl, run, width)...)
	if names := itemNames(run[len(run)-1]); names != "" {
		t.between = draw.Paragraph("", names, c.em(3), true, width)
	}
	t.between = closer(append(t.between, c.told(run, width)...))
	return t
}

// set sets the step in a column.
func (c *aside) set(f *draw.Flow) {
	f.Add(c.over...)
	f.Add(c.shown...)
	f.Add(c.between...)
	for _, t := range c.tables {
		f.Table(t)
	}
	f.Add(c.under...)
}

// closer sets pieces a little closer.
func closer(pieces []draw.Piece) []draw.Piece {
	for i := range pieces {
		pieces[i].Height *= 0.88
	}
	return pieces
}

// asidePictures are the sections of a joint, and beside them or below its weld seen
// across and its clock; its numbers over all, or beside them too.
func (c asideWay) asidePictures(pl *plan.Plan, run []*plan.JointPlan, width float64) (out []draw.Piece) {
	j := run[len(run)-1]
	head, beside := c.besidePictures(pl, run, width)
	if len(j.Pictures) == 0 {
		return append(head, apartPictures(pl, j, width, lowMm*c.pictures, beside...)...)
	}
	room, high := c.sections(j, beside, width)
	rows := panelRows(append(sections(j.Pictures, room, high), beside...), width)
	return append(append(head, rows[:len(rows)-1]...), draw.Space(0.6))
}

// besidePictures are what stands over the sections of a joint, and what beside or below them.
func (c asideWay) besidePictures(pl *plan.Plan, run []*plan.JointPlan, width float64) (head []draw.Piece, beside []draw.Panel) {
	beside = aboutSection(pl, run[len(run)-1], smallDialMm)
	list := keyNumbers(run, words.Writer{Units: pl.Units})
	row, whole := numberRow(list, width)
	switch {
	case len(list) == 0:
	case c.over && whole:
		head = append(head, row, draw.Space(1))
	default:
		beside = append(beside, numberColumn(list))
	}
	return head, beside
}

// sections are the width and the height for the sections of a joint: beside what stands there,
// or in a row of their own.
func (c asideWay) sections(j *plan.JointPlan, beside []draw.Panel, width float64) (room, high float64) {
	room, high = width-widthsMm(beside), sectionsMm*c.pictures
	if c.apart || room < sectionMm*float64(len(j.Pictures)) {
		return width, lowMm * c.pictures
	}
	return room, max(high, tallest(beside))
}

// scale is how large a way shows the sections of a joint; 0 where one has no room for its numbers.
func (c asideWay) scale(j *plan.JointPlan, beside []draw.Panel, width float64) float64 {
	room, high := c.sections(j, beside, width)
	return leastScale(j.Pictures, room, high)
}

// larger are the ways to set a step as closely as one, or as can be read, with its pictures
// clearly larger: the largest first.
func (c asideWay) larger(pl *plan.Plan, run []*plan.JointPlan, width float64) (ways []asideWay) {
	j := run[len(run)-1]
	if len(j.Pictures) == 0 {
		return nil
	}
	const clearly = 1.1
	beside, scales := map[bool][]draw.Panel{}, map[asideWay]float64{}
	for _, over := range []bool{true, false} {
		_, beside[over] = asideWay{over: over}.besidePictures(pl, run, width)
	}
	least := clearly * c.scale(j, beside[c.over], width)
	for _, grow := range []float64{2.2, 1.8, 1.5, 1.25, 1} {
		for _, set := range [][2]bool{{true, false}, {false, false}, {true, true}, {false, true}} {
			way := asideWay{0, c.pictures * grow, set[0], set[1]}
			scale := way.scale(j, beside[way.over], width)
			for _, near := range []closeness{c.closeness, min(c.closeness, readable)} {
				way.closeness = near
				if scales[way] = scale; scale >= least && !slices.Contains(ways, way) {
					ways = append(ways, way)
				}
			}
		}
	}
	slices.SortStableFunc(ways, func(a, b asideWay) int { return cmp.Compare(scales[b], scales[a]) })
	return ways
}

// asideHead is the head of a step beside another: its number in a box and, since the
// title names the kind, no word over it.
func asideHead(pl *plan.Plan, run []*plan.JointPlan, width float64) draw.Piece {
	var p draw.Piece
	p.Draw.Add(draw.Shape{Path: draw.R(0, -stepBoxMm, stepBoxMm, 0).Path(), Stroke: draw.Black, WidthMm: draw.ThickMm},
		draw.Text{XMm: stepBoxMm / 2, YMm: -7.8, SizeMm: 8.4, Bold: true, Align: draw.Centre, Content: words.Span(run[0].N, len(run))}.Within(stepBoxMm-2),
		draw.Text{XMm: stepBoxMm / 2, YMm: -11.7, SizeMm: draw.SmallMm, Align: draw.Centre, Content: "of " + strconv.Itoa(len(pl.Joints))})
	x, room, y := stepBoxMm+3, width-stepBoxMm-3, 0.6
	if kg := run[len(run)-1].MassKg; kg > 0 {
		const em = 4.2
		text := "then " + words.Writer{Units: pl.Units}.Mass(kg)
		p.Draw.Add(draw.Text{XMm: width, YMm: -4.6, SizeMm: em, Bold: true, Align: draw.Right, Content: text})
		room -= draw.TextWidth(text, em, true) + 4
	}
	for _, line := range draw.Wrap(titleOf(run), stepTitleMm, true, room) {
		y -= stepTitleMm * 1.2
		p.Draw.Add(draw.Text{XMm: x, YMm: y + 1.2, SizeMm: stepTitleMm, Bold: true, Content: line, Heading: 1})
	}
	for _, text := range placeLines(run) {
		for _, line := range draw.Wrap(text, 3, false, width-x) {
			y -= 3 * 1.25
			p.Draw.Add(draw.Text{XMm: x, YMm: y + 0.8, SizeMm: 3, Content: line})
		}
	}
	y = min(y, -stepBoxMm) - 1
	p.Draw.Add(draw.Segment(0, y, width, y, draw.ThickMm))
	p.Height = 0.5 - y
	return p
}

// numberColumn sets numbers one below the other.
func numberColumn(list []keyNumber) draw.Panel {
	p := draw.Panel{Width: numbersMm, Height: smallBox.highMm * float64(len(list))}
	for _, k := range list {
		p.Width = max(p.Width, k.leastMm())
	}
	for i, k := range list {
		smallBox.draw(&p.Draw, k, draw.R(0, -smallBox.highMm*float64(i+1), p.Width, -smallBox.highMm*float64(i)))
	}
	return p
}

// numberRow sets numbers side by side, each with the width that it needs and an equal
// share of the rest. It tells whether nothing of them is cut.
func numberRow(list []keyNumber, width float64) (p draw.Piece, whole bool) {
	p.Height = smallBox.highMm
	spare, x := width, 0.0
	for _, k := range list {
		spare -= k.leastMm()
	}
	for _, k := range list {
		w := k.leastMm() + spare/float64(len(list))
		smallBox.draw(&p.Draw, k, draw.R(x, -smallBox.highMm, x+w, 0))
		x += w
	}
	return p, spare >= 0
}

// leastMm is the width that a small box of a number needs.
func (k keyNumber) leastMm() float64 {
	const valueMm = 4.2
	return 3.2 + max(draw.TextWidth(k.label, draw.SmallMm, false), draw.TextWidth(k.value, valueMm, true), draw.TextWidth(k.rest, draw.SmallMm, false))
}

// asideTables are what to do, each with its title in its text, which parts take
// which place, and what to check.
func (c closeness) asideTables(run []*plan.JointPlan, width float64) []draw.Table {
	do, check := c.stepTable(run), c.checkTable(run)
	do.Columns = append(do.Columns[:1:1], do.Columns[2:]...)
	for i, row := range do.Rows {
		do.Rows[i] = append([]string{row[0], words.Join(" ", draw.Bold(row[1]+"."), row[2])}, row[3:]...)
	}
	do.RowMm = 5.6
	check.Columns[0].Head, check.Title, check.RowMm = check.Title, "", 5
	check.Columns[0].Least = draw.TextWidth(check.Columns[0].Head, 3, true) + 3
	return seq.Map(c.inOrder(run, do, check), func(t draw.Table) draw.Table {
		t.Tight = true
		return t.Laid(width)
	})
}
