package templates

import (
	"iter"
	"math"
	"slices"
	"strconv"

	"github.com/tdewolff/canvas"
)

// rect is an upright rectangle in millimetres.
type rect struct{ x0, y0, x1, y1 float64 }

func (r rect) width() float64  { return r.x1 - r.x0 }
func (r rect) height() float64 { return r.y1 - r.y0 }

// grown is r with d added on every side.
func (r rect) grown(d float64) rect { return rect{r.x0 - d, r.y0 - d, r.x1 + d, r.y1 + d} }

func (r rect) meets(s rect) bool {
	return r.x0 < s.x1 && s.x0 < r.x1 && r.y0 < s.y1 && s.y0 < r.y1
}

func (r rect) holds(s rect) bool {
	return r.x0 <= s.x0 && s.x1 <= r.x1 && r.y0 <= s.y0 && s.y1 <= r.y1
}

func (r rect) hasPoint(x, y float64) bool {
	return r.x0 <= x && x <= r.x1 && r.y0 <= y && y <= r.y1
}

func (r rect) path() *canvas.Path {
	return canvas.Rectangle(r.width(), r.height()).Translate(r.x0, r.y0)
}

// cellMm is the grid by which occupied keeps what it holds.
const cellMm = 5.0

// clearMm is the least room around a label.
const clearMm = 0.5

// cell is one square of the grid: the points in it, and the texts that come
// into it.
type cell struct {
	points []canvas.Point
	texts  []rect
}

// occupied is what labels must keep clear of: lines, kept as points at most
// half a millimetre apart, and texts, kept as rectangles. Only what lies in
// the window is kept, by the squares of a grid, so that a question costs the
// same however much there is.
type occupied struct {
	window rect
	texts  []rect // in the order they came, for undo
	cells  map[[2]int32]*cell
}

func newOccupied(window rect) *occupied {
	return &occupied{window: window, cells: map[[2]int32]*cell{}}
}

func cellOf(x, y float64) [2]int32 {
	return [2]int32{int32(math.Floor(x / cellMm)), int32(math.Floor(y / cellMm))}
}

// at returns a square of the grid to put something into.
func (o *occupied) at(c [2]int32) *cell {
	in := o.cells[c]
	if in == nil {
		in = &cell{}
		o.cells[c] = in
	}
	return in
}

// squares lists the squares that the part of r in the window touches.
func (o *occupied) squares(r rect) iter.Seq[[2]int32] {
	w := o.window.grown(clearMm)
	lo, hi := cellOf(max(r.x0, w.x0), max(r.y0, w.y0)), cellOf(min(r.x1, w.x1), min(r.y1, w.y1))
	return func(yield func([2]int32) bool) {
		for i := lo[0]; i <= hi[0]; i++ {
			for j := lo[1]; j <= hi[1]; j++ {
				if !yield([2]int32{i, j}) {
					return
				}
			}
		}
	}
}

func (o *occupied) addPoint(x, y float64) {
	if o.window.hasPoint(x, y) {
		in := o.at(cellOf(x, y))
		in.points = append(in.points, canvas.Point{X: x, Y: y})
	}
}

// addLine keeps a straight line clear.
func (o *occupied) addLine(x0, y0, x1, y1 float64) {
	if !o.window.grown(clearMm).meets(rect{min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)}.grown(clearMm)) {
		return
	}
	n := max(1, int(math.Ceil(math.Hypot(x1-x0, y1-y0)/0.5)))
	for i := 0; i <= n; i++ {
		t := float64(i) / float64(n)
		o.addPoint(x0+t*(x1-x0), y0+t*(y1-y0))
	}
}

// addCircle keeps a circle's line clear.
func (o *occupied) addCircle(x, y, r float64) {
	n := max(12, int(math.Ceil(2*math.Pi*r/0.5)))
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		o.addPoint(x+r*c, y+r*s)
	}
}

// addPath keeps the lines of a path clear.
func (o *occupied) addPath(p *canvas.Path) {
	for scan := p.Flatten(0.1).Scanner(); scan.Scan(); {
		if scan.Cmd() != canvas.MoveToCmd {
			from, to := scan.Start(), scan.End()
			o.addLine(from.X, from.Y, to.X, to.Y)
		}
	}
}

func (o *occupied) addText(r rect) {
	o.texts = append(o.texts, r)
	for c := range o.squares(r) {
		in := o.at(c)
		in.texts = append(in.texts, r)
	}
}

// undo takes back the texts after the first n.
func (o *occupied) undo(n int) {
	for i := len(o.texts) - 1; i >= n; i-- {
		for c := range o.squares(o.texts[i]) {
			in := o.cells[c]
			in.texts = in.texts[:len(in.texts)-1]
		}
	}
	o.texts = o.texts[:n]
}

// clearOfTexts tells whether r lies in the window and meets no text.
func (o *occupied) clearOfTexts(r rect) bool { return o.clear(r, false) }

// allClear tells whether all of them are clear of texts.
func (o *occupied) allClear(boxes iter.Seq[rect]) bool {
	for b := range boxes {
		if !o.clearOfTexts(b) {
			return false
		}
	}
	return true
}

// free tells whether r lies in the window and meets neither text nor line.
func (o *occupied) free(r rect) bool { return o.clear(r, true) }

func (o *occupied) clear(r rect, ofLines bool) bool {
	if !o.window.holds(r) {
		return false
	}
	g := r.grown(clearMm)
	for c := range o.squares(g) {
		if in := o.cells[c]; in != nil && in.meets(g, ofLines) {
			return false
		}
	}
	return true
}

// meets tells whether a text of the square meets r, or a line if they count.
func (c *cell) meets(r rect, lines bool) bool {
	for _, t := range c.texts {
		if t.meets(r) {
			return true
		}
	}
	if lines {
		for _, p := range c.points {
			if r.hasPoint(p.X, p.Y) {
				return true
			}
		}
	}
	return false
}

// beside returns the rectangle of size w × h whose nearest edge lies about
// distance d from (x, y) in the direction of the angle.
func beside(x, y, w, h, d, angle float64) rect {
	s, c := math.Sincos(angle)
	cx := x + c*(d+w/2)
	cy := y + s*(d+h/2)
	return rect{cx - w/2, cy - h/2, cx + w/2, cy + h/2}
}

// find looks for room for a w × h label around (x, y), from distance near to
// far, first in the direction of the angle and then to both sides of it. The
// answer is whether there is any.
func (o *occupied) find(x, y, w, h, near, far, angle float64, ok func(rect) bool) (rect, bool) {
	for d := near; d <= far; d += 1.0 {
		for i := range 24 {
			turn := float64((i+1)/2) * math.Pi / 12
			if i%2 == 1 {
				turn = -turn
			}
			r := beside(x, y, w, h, d, angle+turn)
			if ok(r) {
				return r, true
			}
		}
	}
	return rect{}, false
}

// mark is a hole or slot to label, in page coordinates.
type mark struct {
	n       int
	group   string
	size    string
	x, y    float64
	radius  float64
	outward float64 // direction away from the part's centre, radians
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
		{numberMm, true, 6, false},
		{numberMm, false, 5, false},
		{smallNumMm, false, 6, false},
	}
	lastWays = []labelWay{
		{numberMm, true, 20, false},
		{smallNumMm, false, 12, true},
		{smallNumMm, false, 60, true},
	}
)

// labelMarks writes the numbers and sizes of marks near them.
func labelMarks(s *sheet, room *occupied, marks []mark) {
	for len(marks) > 0 {
		n := 1
		for n < len(marks) && marks[n].group == marks[0].group {
			n++
		}
		labelPattern(s, room, marks[:n])
		marks = marks[n:]
	}
}

// labelPattern labels the marks of one pattern.
func labelPattern(s *sheet, room *occupied, marks []mark) {
	before := len(room.texts)
	for _, way := range labelWays {
		var spots []rect
		for _, m := range marks {
			spot, ok := m.place(room, way)
			if !ok {
				break
			}
			room.addText(spot)
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
				room.addText(spot)
				m.draw(s, room, spot, way)
				break
			}
		}
	}
}

// place finds room for a label.
func (m mark) place(room *occupied, way labelWay) (rect, bool) {
	w := textWidth(strconv.Itoa(m.n), way.numberMm, true)
	if way.withSize {
		w += sizeGapMm + textWidth(m.size, holeSizeMm, false)
	}
	near := m.radius + 0.8
	ok := room.free
	if way.overLine {
		ok = room.clearOfTexts
	}
	return room.find(m.x, m.y, w, ascentMm*way.numberMm, near, near+way.farMm, m.outward, ok)
}

// draw writes a label into its spot, with a leader if it stands far off.
func (m mark) draw(s *sheet, room *occupied, spot rect, way labelWay) {
	number := strconv.Itoa(m.n)
	s.draw.Add(Text{XMm: spot.x0, YMm: spot.y0, SizeMm: way.numberMm, Bold: true, Content: number})
	if way.withSize {
		s.draw.Add(Text{XMm: spot.x0 + textWidth(number, way.numberMm, true) + sizeGapMm, YMm: spot.y0, SizeMm: holeSizeMm, Content: m.size})
	}
	x, y := min(max(m.x, spot.x0-0.5), spot.x1+0.5), min(max(m.y, spot.y0-0.5), spot.y1+0.5)
	if d := math.Hypot(x-m.x, y-m.y); d > m.radius+6 {
		k := (m.radius + 0.5) / d
		s.draw.Add(segment(x, y, m.x+(x-m.x)*k, m.y+(y-m.y)*k, hairMm))
		room.addLine(x, y, m.x+(x-m.x)*k, m.y+(y-m.y)*k)
	}
}
