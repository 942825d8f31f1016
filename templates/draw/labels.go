package draw

import (
	"iter"
	"math"
	"slices"

	"github.com/tdewolff/canvas"
)

// clearMm is the least room around a label.
const clearMm = 0.5

// entry is something kept in a square of the grid, and what was put into the
// square before it: its place in a list, from 1, and 0 for none.
type entry[T any] struct {
	at     T
	before int32
}

// square is one of the grid: the last entry of each kind put into it.
type square struct{ point, text int32 }

// Occupied is what labels must keep clear of: lines, kept as points at most
// half a millimetre apart, and texts, kept as rectangles. Only what lies in
// the window is kept, by the squares of a grid, so that a question costs the
// same however much there is.
type Occupied struct {
	Window  Rect
	texts   []Rect // in the order they came, for undo
	kept    []entry[Rect]
	points  [][]entry[canvas.Point] // block by block
	count   int32
	edgeMm  float64  // of a square
	columns int      // of the grid, which begins at the lower left of the window and the room around it
	grid    []square // row by row
}

// The edge of a square of the grid, and the most squares: those of a larger window
// are larger.
const (
	squareMm    = 5.0
	mostSquares = 1 << 17
)

// NewOccupied is empty room in a window.
func NewOccupied(window Rect) *Occupied {
	w := window.Grown(clearMm)
	o := &Occupied{Window: window, edgeMm: max(squareMm, math.Sqrt(w.Width()*w.Height()/mostSquares))}
	const last = 2 // the one that the far edge is in, and one for what rounding adds
	o.columns = int(w.Width()/o.edgeMm) + last
	o.grid = make([]square, o.columns*(int(w.Height()/o.edgeMm)+last))
	return o
}

// pointBlock is how many points are made room for at once.
const pointBlock = 128

func (o *Occupied) point(n int32) *entry[canvas.Point] { return &o.points[n/pointBlock][n%pointBlock] }

// place is the column and row of a point of the window or of the room around it, which the first and the
// last ones have besides their own.
func (o *Occupied) place(x, y float64) (column, row int) {
	return int((x - o.Window.X0) / o.edgeMm), int((y - o.Window.Y0) / o.edgeMm)
}

// squares lists the squares that the part of r in the window touches.
func (o *Occupied) squares(r Rect) iter.Seq[*square] {
	w := o.Window.Grown(clearMm)
	if r.X0 > w.X1 || r.X1 < w.X0 || r.Y0 > w.Y1 || r.Y1 < w.Y0 {
		return func(func(*square) bool) {}
	}
	i0, j0 := o.place(max(r.X0, w.X0), max(r.Y0, w.Y0))
	i1, j1 := o.place(min(r.X1, w.X1), min(r.Y1, w.Y1))
	return func(yield func(*square) bool) {
		for j := j0; j <= j1; j++ {
			for i := i0; i <= i1; i++ {
				if !yield(&o.grid[j*o.columns+i]) {
					return
				}
			}
		}
	}
}

func (o *Occupied) addPoint(x, y float64) {
	if o.Window.HasPoint(x, y) {
		column, row := o.place(x, y)
		in := &o.grid[row*o.columns+column]
		if o.count%pointBlock == 0 {
			o.points = append(o.points, make([]entry[canvas.Point], pointBlock))
		}
		*o.point(o.count) = entry[canvas.Point]{canvas.Point{X: x, Y: y}, in.point}
		o.count++
		in.point = o.count
	}
}

// lineStepMm is the most that two points of a line or a circle are apart.
const lineStepMm = 0.5

// AddLine keeps a straight line clear.
func (o *Occupied) AddLine(x0, y0, x1, y1 float64) {
	for x, y := range linePoints(o.Window, x0, y0, x1, y1) {
		o.addPoint(x, y)
	}
}

// linePoints lists points along a line, its ends among them, but for those
// well off the window.
func linePoints(window Rect, x0, y0, x1, y1 float64) iter.Seq2[float64, float64] {
	n := max(1, int(math.Ceil(math.Hypot(x1-x0, y1-y0)/lineStepMm)))
	from, to := 0.0, 1.0 // the part of the line within the window
	for _, side := range [2][4]float64{{x0, x1, window.X0, window.X1}, {y0, y1, window.Y0, window.Y1}} {
		a, b, lo, hi := side[0], side[1], side[2]-lineStepMm, side[3]+lineStepMm
		switch {
		case a == b && (a < lo || a > hi):
			to = -1
		case a < b:
			from, to = max(from, (lo-a)/(b-a)), min(to, (hi-a)/(b-a))
		case a > b:
			from, to = max(from, (hi-a)/(b-a)), min(to, (lo-a)/(b-a))
		}
	}
	return func(yield func(float64, float64) bool) {
		if from > to {
			return
		}
		for i := int(from * float64(n)); i <= min(n, int(to*float64(n))+1); i++ {
			t := float64(i) / float64(n)
			if !yield(x0+t*(x1-x0), y0+t*(y1-y0)) {
				return
			}
		}
	}
}

// AddCircle keeps a circle's line clear.
func (o *Occupied) AddCircle(x, y, r float64) {
	n := max(12, int(math.Ceil(2*math.Pi*r/lineStepMm)))
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		o.addPoint(x+r*c, y+r*s)
	}
}

// FlatMm is how far the straight lines that stand for a curve may be off it.
const FlatMm = 0.1

// AddPath keeps the lines of a path clear.
func (o *Occupied) AddPath(p *canvas.Path) {
	for scan := p.Flatten(FlatMm).Scanner(); scan.Scan(); {
		if scan.Cmd() != canvas.MoveToCmd {
			from, to := scan.Start(), scan.End()
			o.AddLine(from.X, from.Y, to.X, to.Y)
		}
	}
}

// AddText keeps the room of a text clear.
func (o *Occupied) AddText(r Rect) {
	o.texts = append(o.texts, r)
	for in := range o.squares(r) {
		o.kept = append(o.kept, entry[Rect]{r, in.text})
		in.text = int32(len(o.kept))
	}
}

// undo takes back the texts after the first n.
func (o *Occupied) undo(n int) {
	for i := len(o.texts) - 1; i >= n; i-- {
		squares := 0
		for in := range o.squares(o.texts[i]) {
			in.text = o.kept[in.text-1].before
			squares++
		}
		o.kept = o.kept[:len(o.kept)-squares]
	}
	o.texts = o.texts[:n]
}

// ClearOfTexts tells whether r lies in the window and meets no text.
func (o *Occupied) ClearOfTexts(r Rect) bool { return o.clear(r, false) }

// AllClear tells whether all of them are clear of texts, and of lines if those
// count.
func (o *Occupied) AllClear(boxes iter.Seq[Rect], ofLines bool) bool {
	for b := range boxes {
		if !o.clear(b, ofLines) {
			return false
		}
	}
	return true
}

// Free tells whether r lies in the window and meets neither text nor line.
func (o *Occupied) Free(r Rect) bool { return o.clear(r, true) }

func (o *Occupied) clear(r Rect, ofLines bool) bool {
	if !o.Window.Holds(r) {
		return false
	}
	g := r.Grown(clearMm)
	i0, j0 := o.place(g.X0, g.Y0)
	i1, j1 := o.place(g.X1, g.Y1)
	for j := j0; j <= j1; j++ { // not over squares: this is asked for every place tried
		if slices.ContainsFunc(o.grid[j*o.columns+i0:j*o.columns+i1+1], func(in square) bool { return o.meets(in, g, ofLines) }) {
			return false
		}
	}
	return true
}

// meets tells whether a text of the square meets r, or a line if they count.
func (o *Occupied) meets(in square, r Rect, lines bool) bool {
	for at := in.text; at > 0; at = o.kept[at-1].before {
		if o.kept[at-1].at.Meets(r) {
			return true
		}
	}
	if !lines {
		return false
	}
	for at := in.point; at > 0; {
		p := o.point(at - 1)
		if r.HasPoint(p.at.X, p.at.Y) {
			return true
		}
		at = p.before
	}
	return false
}

// Search is a label of W × H that is wanted around (X, Y), Near to Far from it in the
// direction of the Angle, all in millimetres and radians.
type Search struct{ X, Y, W, H, Near, Far, Angle float64 }

// At is the label with its nearest edge about d from (X, Y) in the direction of an angle.
func (l Search) At(d, angle float64) Rect {
	s, c := math.Sincos(angle)
	x, y := l.X+c*(d+l.W/2), l.Y+s*(d+l.H/2)
	return Rect{x - l.W/2, y - l.H/2, x + l.W/2, y + l.H/2}
}

// Find looks for room for a label, from near to far, first in the direction of the
// angle and then to both sides of it. The answer is whether there is any.
func (o *Occupied) Find(l Search, ok func(Rect) bool) (Rect, bool) {
	for d := l.Near; d <= l.Far; d += 1.0 {
		for i := range 24 {
			turn := float64((i+1)/2) * math.Pi / 12
			if i%2 == 1 {
				turn = -turn
			}
			r := l.At(d, l.Angle+turn)
			if ok(r) {
				return r, true
			}
		}
	}
	return Rect{}, false
}

// Sizes of the texts at a mark, em in millimetres, and the gap between its
// number and its size.
const (
	NumberMm   = 5.2
	HoleSizeMm = 3.2
	SmallNumMm = 3.4
	SizeGapMm  = 1.2
)

// Mark is a hole or slot to label, in page coordinates.
type Mark struct {
	Number  string
	Group   string
	Size    string
	X, Y    float64
	Radius  float64
	Outward float64 // direction away from the part's centre, radians
}

// labelWay is a way to label a mark: how large its number is, whether its
// size stands beside it, how far off it may stand, and whether it may lie
// over lines (never over another text).
type labelWay struct {
	numberMm float64
	withSize bool
	farMm    float64
	overLine bool
}

// The ways, best first. All marks of a pattern are labelled the same way of
// the first three if there is one that suits them all; otherwise each for
// itself.
var (
	labelWays = []labelWay{
		{NumberMm, true, 6, false},
		{NumberMm, false, 5, false},
		{SmallNumMm, false, 6, false},
	}
	lastWays = []labelWay{
		{NumberMm, true, 20, false},
		{SmallNumMm, false, 12, true},
		{SmallNumMm, false, 60, true},
	}
)

// LabelMarks writes the numbers and sizes of marks near them.
func LabelMarks(s *Sheet, room *Occupied, marks []Mark) {
	for len(marks) > 0 {
		n := 1
		for n < len(marks) && marks[n].Group == marks[0].Group {
			n++
		}
		labelPattern(s, room, marks[:n])
		marks = marks[n:]
	}
}

func labelPattern(s *Sheet, room *Occupied, marks []Mark) {
	before := len(room.texts)
	for _, way := range labelWays {
		var spots []Rect
		for _, m := range marks {
			spot, ok := m.place(room, way)
			if !ok {
				break
			}
			room.AddText(spot)
			spots = append(spots, spot)
		}
		if len(spots) == len(marks) {
			for i, m := range marks {
				m.draw(s, room, spots[i], way)
			}
			return
		}
		room.undo(before)
	}
	for _, m := range marks {
		for _, way := range append(slices.Clone(labelWays), lastWays...) {
			if spot, ok := m.place(room, way); ok {
				room.AddText(spot)
				m.draw(s, room, spot, way)
				break
			}
		}
	}
}

// overturned tells whether a number reads as another one upside down.
func overturned(number string) bool {
	turned := map[rune]rune{'0': '0', '6': '9', '8': '8', '9': '6'}
	back := ""
	for _, digit := range number {
		other, ok := turned[digit]
		if !ok {
			return false
		}
		back = string(other) + back
	}
	return back != number
}

func (m Mark) place(room *Occupied, way labelWay) (Rect, bool) {
	w := TextWidth(m.Number, way.numberMm, true)
	if way.withSize {
		w += SizeGapMm + TextWidth(m.Size, HoleSizeMm, false)
	}
	near := m.Radius + 0.8
	ok := room.Free
	if way.overLine {
		ok = room.ClearOfTexts
	}
	return room.Find(Search{m.X, m.Y, w, AscentMm * way.numberMm, near, near + way.farMm, m.Outward}, ok)
}

// draw writes a label into its spot, with a leader if it stands far off.
func (m Mark) draw(s *Sheet, room *Occupied, spot Rect, way labelWay) {
	s.Draw.Add(Text{XMm: spot.X0, YMm: spot.Y0, SizeMm: way.numberMm, Bold: true, Content: m.Number})
	if overturned(m.Number) { // a line under it tells 6 from 9
		s.Draw.Add(Segment(spot.X0, spot.Y0-0.7, spot.X0+TextWidth(m.Number, way.numberMm, true), spot.Y0-0.7, 0.4))
	}
	if way.withSize {
		s.Draw.Add(Text{XMm: spot.X0 + TextWidth(m.Number, way.numberMm, true) + SizeGapMm, YMm: spot.Y0, SizeMm: HoleSizeMm, Content: m.Size})
	}
	x, y := min(max(m.X, spot.X0-0.5), spot.X1+0.5), min(max(m.Y, spot.Y0-0.5), spot.Y1+0.5)
	if d := math.Hypot(x-m.X, y-m.Y); d > m.Radius+6 {
		k := (m.Radius + 0.5) / d
		s.Draw.Add(Segment(x, y, m.X+(x-m.X)*k, m.Y+(y-m.Y)*k, HairMm))
		room.AddLine(x, y, m.X+(x-m.X)*k, m.Y+(y-m.Y)*k)
	}
}
