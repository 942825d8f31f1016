package truesize

import (
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// template is a face or a flat pattern to print at 1:1.
type template struct {
	part     *plan.PartPlan
	rank     int               // among all of a packet
	dev      *plan.Development // nil for a face
	half     *template         // of a pattern that is its own mirror image; nil else
	punch    *punch            // of a face; nil for a pattern
	also     []*template       // faces of other parts that it serves too
	where    string            // for messages
	name     string            // of its sheets
	side     string            // which side is out
	outline  *canvas.Path
	full     draw.Rect             // with all marks round it
	core     draw.Rect             // the least that shows the outline and TOP
	topMm    *plan.XY              // where TOP is marked, of a face
	taped    *draw.Rect            // without the tab at its end, which is left out where that saves a tile
	marks    []draw.Rect           // crosses and slots: no seam goes through them
	spare    []draw.Rect           // what a seam had better miss
	points   []canvas.Point        // of the outline, once asked for
	cut      map[[2]float64][]tile // the tiles for a size of sheet, once asked for
	captions map[caption][]string  // once asked for
	setAt    *plan.XY              // where the edges cross that it is set by, so that the others may be left out
	boreMm   float64               // the bore at its origin to be set by, 0 for none
	exact    bool                  // cut out along its outline: nothing may be left out
	legend   []string
	how      string // what to do with it, in a line
	dividers string // to check the joined tiles by
	draw     func(laid)
}

// tile is what one sheet, or a part of one, shows of a template.
type tile struct {
	of       *template
	n        int       // from 1; 0 if there is only one
	window   draw.Rect // template coordinates
	cell     draw.Rect // the window without laps
	grid     *grid
	part     bool // the first of those that show not all of the outline
	col, row int
}

// tiles cuts the template for sheets with room for width × height; nil if it
// needs more than maxTiles.
func (t *template) tiles(width, height float64) []tile {
	size := [2]float64{width, height}
	if done, ok := t.cut[size]; ok {
		return done
	}
	if t.cut == nil {
		t.cut = map[[2]float64][]tile{}
	}
	t.cut[size] = t.cutFor(width, height)
	return t.cut[size]
}

// cutFor is tiles, worked out.
func (t *template) cutFor(width, height float64) []tile {
	areas := t.areas()
	for _, area := range areas {
		if area.Width() <= width+1e-9 && area.Height() <= height+1e-9 {
			g := &grid{area: area, shown: [][]bool{{true}}}
			return []tile{{of: t, window: area, cell: area, grid: g, part: t.leaves(g)}}
		}
	}
	var best *grid
	for _, area := range areas {
		for _, xs := range t.across(area, width) {
			for _, ys := range t.down(area, height) {
				if g := t.grid(area, xs, ys); g != nil && (best == nil || t.better(g, best)) {
					best = g
				}
			}
		}
	}
	if best == nil {
		return nil
	}
	var out []tile
	for col, row := range best.cells() {
		n := len(out) + 1
		if best.count() == 1 {
			n = 0
		}
		out = append(out, tile{of: t, n: n, window: best.window(col, row), cell: best.cell(col, row), grid: best, part: n <= 1 && t.leaves(best), col: col, row: row})
	}
	return out
}

// better tells whether a way to cut the template has fewer tiles than another, or as
// many of less paper.
func (t *template) better(g, than *grid) bool {
	if n, m := g.count(), than.count(); n != m {
		return n < m
	}
	return g.paper() < than.paper()-1 && (t.taped == nil || g.area != *t.taped)
}

// areas are what may be shown of the template, the most first: with all marks
// round it; without them; and, where no hole lies there and enough is left to
// set it by, without a strip of its outline.
func (t *template) areas() []draw.Rect {
	out := []draw.Rect{t.full, t.core}
	if t.taped != nil {
		return append(out, *t.taped)
	}
	if t.exact || len(t.marks) == 0 {
		return out
	}
	need := t.marks[0]
	for _, m := range t.marks[1:] {
		need = need.With(m)
	}
	need = need.Grown(3)
	c := t.core
	if t.setAt != nil {
		// The edges that it is set by are enough, of 60 at least.
		x0, x1, y0, y1 := c.X0, max(need.X1, c.X0+60), c.Y0, max(need.Y1, c.Y0+60)
		if t.setAt.XMm > (c.X0+c.X1)/2 {
			x0, x1 = min(need.X0, c.X1-60), c.X1
		}
		if t.setAt.YMm > (c.Y0+c.Y1)/2 {
			y0, y1 = min(need.Y0, c.Y1-60), c.Y1
		}
		return append(out, c.Within(draw.R(x0, y0, x1, y1)))
	}
	return append(out, draw.R(c.X0, c.Y0, max(c.X1-trimMm, min(c.X1, need.X1)), c.Y1),
		draw.R(c.X0, max(c.Y0+trimMm/2, min(c.Y0, need.Y0)), max(c.X1-trimMm, min(c.X1, need.X1)), c.Y1))
}

// across are the ways to lay upright seams over an area.
func (t *template) across(area draw.Rect, width float64) [][]float64 {
	return divisions(area.X0, area.X1, width, t.spans(func(m draw.Rect) [2]float64 { return [2]float64{m.X0, m.X1} }))
}

// down are the ways to lay level seams over an area, counted downwards.
func (t *template) down(area draw.Rect, height float64) [][]float64 {
	return divisions(-area.Y1, -area.Y0, height, t.spans(func(m draw.Rect) [2]float64 { return [2]float64{-m.Y1, -m.Y0} }))
}

// spans are where seams keep out, on one axis.
func (t *template) spans(side func(draw.Rect) [2]float64) [][2]float64 {
	return append(seq.Map(t.marks, func(m draw.Rect) [2]float64 { return side(m.Grown(clearMm)) }), seq.Map(t.spare, side)...)
}

// grid cuts an area along seams; nil if that makes too many tiles.
func (t *template) grid(area draw.Rect, xs, ys []float64) *grid {
	if (len(xs)+1)*(len(ys)+1) > maxTiles {
		return nil
	}
	g := &grid{area: area, xs: xs}
	g.ys = seq.Map(ys, func(y float64) float64 { return -y })
	for row := range len(ys) + 1 {
		g.shown = append(g.shown, make([]bool, len(xs)+1))
		for col := range g.shown[row] {
			g.shown[row][col] = t.touches(g.cell(col, row))
		}
	}
	if !t.exact {
		t.dropBare(g)
	}
	return g
}

// touches tells whether a window shows anything of the template.
func (t *template) touches(window draw.Rect) bool {
	for _, p := range t.along() {
		if window.HasPoint(p.X, p.Y) {
			return true
		}
	}
	return t.outline.Contains((window.X0+window.X1)/2, (window.Y0+window.Y1)/2, canvas.NonZero)
}

// along are points of the outline, alongStepMm apart.
func (t *template) along() []canvas.Point {
	if t.points != nil {
		return t.points
	}
	for scan := t.outline.Flatten(0.1).Scanner(); scan.Scan(); {
		if scan.Cmd() == canvas.MoveToCmd {
			continue
		}
		from, to := scan.Start(), scan.End()
		n := max(1, int(math.Ceil(to.Sub(from).Length()/alongStepMm)))
		for i := range n {
			t.points = append(t.points, from.Interpolate(to, float64(i)/float64(n)))
		}
	}
	return t.points
}

// dropBare leaves out tiles with neither hole nor outline mark, as long as the
// others still hang together and at least three shows of the outline's ends
// are left.
func (t *template) dropBare(g *grid) {
	for col, row := range g.cells() {
		if !t.needs(g.cell(col, row)) {
			g.shown[row][col] = false
			g.shown[row][col] = !g.connected() || t.setAt != nil && !t.edged(g)
		}
	}
}

// set is what a grid shows enough of to set the template by: the upright and the level one
// of the edges that it is set by, and the bore.
type set struct{ upright, level, bore bool }

func (t *template) set(g *grid) set {
	upright, level, bore, r := 0, 0, 0, t.boreMm/2
	for _, p := range t.along() {
		switch {
		case !g.shows(p.X, p.Y):
		case math.Abs(p.X-t.setAt.XMm) < nearEdgeMm:
			upright++
		case math.Abs(p.Y-t.setAt.YMm) < nearEdgeMm:
			level++
		}
	}
	for _, q := range [][2]float64{{r, 0}, {0, r}, {-r, 0}, {0, -r}} {
		if r > 0 && g.shows(q[0], q[1]) {
			bore++
		}
	}
	return set{upright*alongStepMm >= leastEdgeMm, level*alongStepMm >= leastEdgeMm, bore >= 3}
}

// edged tells whether enough is shown to set the template by: both edges, or one and the
// bore.
func (t *template) edged(g *grid) bool {
	s := t.set(g)
	return s.upright && s.level || s.bore && (s.upright || s.level)
}

// partial says that not all of an outline is shown, and what there is to set it by; it is
// empty where all is.
func (one *tile) partial() string {
	t := one.of
	switch {
	case !one.part:
		return ""
	case t.punch != nil && t.punch.part.Knifed: // cut by the template, last: there is no edge or bore to set it by yet
		return "Outline in part: draw the rest on the sheet, between what is shown, before it is cut."
	case t.setAt == nil && t.boreMm > 0:
		return "Outline in part: set it by the bore."
	case t.setAt == nil:
		return "Outline in part: set it by what there is."
	}
	upright, level := "left", "bottom"
	if t.setAt.XMm > (t.core.X0+t.core.X1)/2 {
		upright = "right"
	}
	if t.setAt.YMm > (t.core.Y0+t.core.Y1)/2 {
		level = "top"
	}
	s := t.set(one.grid)
	if s.upright && s.level {
		return "Outline in part, with the " + upright + " and the " + level + " edge."
	}
	edge, other, farMm := upright, level, t.setAt.YMm
	if !s.upright {
		edge, other, farMm = level, upright, t.setAt.XMm
	}
	units := parts.Millimetres
	if t.punch != nil {
		units = t.punch.pl.Units
	}
	return "Outline in part, with the " + edge + " edge. The " + other + " edge is " + words.Short(math.Abs(farMm), units) + " from the middle of the bore here: set it so."
}

// leaves tells whether some of the outline of a face is on no tile.
func (t *template) leaves(g *grid) bool {
	return t.punch != nil && slices.ContainsFunc(t.along(), func(p canvas.Point) bool { return !g.shows(p.X, p.Y) })
}

// topRoomMm is over an outline for the TOP mark.
const topRoomMm = 9.0

// needs tells whether a cell holds a hole, or the middle of a side of the
// outline.
func (t *template) needs(cell draw.Rect) bool {
	if slices.ContainsFunc(t.marks, func(m draw.Rect) bool { return m.Meets(cell) }) {
		return true
	}
	if t.setAt != nil {
		return false // two edges are left with the holes
	}
	midX, midY := (t.core.X0+t.core.X1)/2, (t.core.Y0+t.core.Y1)/2
	return cell.HasPoint(midX, t.core.Y1-topRoomMm) || cell.HasPoint(t.core.X0+1, midY) || cell.HasPoint(t.core.X1-1, midY)
}

// isSmall tells whether a circle is a hole of the other side rather than a
// bore or a pitch circle, so that cuts and marks had better miss it.
func isSmall(c plan.Circle) bool { return !c.Pitch && c.DiameterMm <= 60 }

func circleRect(c plan.Circle) draw.Rect {
	at, half := c.CentreMm, c.HalfMm
	dx, dy := math.Abs(half.XMm), math.Abs(half.YMm)
	return draw.R(at.XMm-dx, at.YMm-dy, at.XMm+dx, at.YMm+dy).Grown(c.DiameterMm / 2)
}
