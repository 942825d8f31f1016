package truesize

import (
	"iter"
	"math"
	"slices"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// Joints between tiles, in millimetres. The upper or left tile of a seam goes
// on for glueMm beyond it, the other begins rimMatchMm before it, so that the
// match marks are whole on both.
const (
	maxTiles   = 400 // the most sheets a template may take
	glueMm     = 8.0 // covered by the neighbour
	rimMatchMm = 4.0 // cut off
	lapMm      = glueMm + rimMatchMm
	clearMm    = 5.0  // between a seam and the arms of a cross
	trimMm     = 20.0 // of outline without a hole that may be left out

	alongStepMm = 2   // between the points that stand for an outline
	leastEdgeMm = 30  // of each edge, to set a template by
	nearEdgeMm  = 0.5 // of the outline's box: that is an edge
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
	full     draw.Rect   // with all marks round it
	core     draw.Rect   // the least that shows the outline and TOP
	topMm    *plan.XY    // where TOP is marked, of a face
	taped    *draw.Rect  // without the tab at its end, which is left out where that saves a tile
	marks    []draw.Rect // crosses and slots: no seam goes through them
	spare    []draw.Rect // what a seam had better miss
	ends     [][2]float64
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

// match is a mark on a seam, in template coordinates.
type match struct {
	letter string
	x, y   float64
	across bool // on a level seam
}

// grid cuts a template along upright and level lines.
type grid struct {
	area  draw.Rect
	xs    []float64 // upright seams, from the left
	ys    []float64 // level seams, from the top down
	shown [][]bool  // by row and column
	marks []match
}

// has tells whether there is a tile in a place, and it is shown.
func (g *grid) has(col, row int) bool {
	return row >= 0 && row < len(g.shown) && col >= 0 && col < len(g.shown[row]) && g.shown[row][col]
}

// cells are the tiles that are shown, by rows from the top left: column and row.
func (g *grid) cells() iter.Seq2[int, int] {
	return func(yield func(int, int) bool) {
		for row := range g.shown {
			for col, shown := range g.shown[row] {
				if shown && !yield(col, row) {
					return
				}
			}
		}
	}
}

func (g *grid) count() (n int) {
	for range g.cells() {
		n++
	}
	return n
}

// paper is the area of all tiles with their laps, in mm².
func (g *grid) paper() float64 {
	sum := 0.0
	for col, row := range g.cells() {
		w := g.window(col, row)
		sum += w.Width() * w.Height()
	}
	return sum
}

// cell is the share of a tile without laps.
func (g *grid) cell(col, row int) draw.Rect {
	r := g.area
	if col > 0 {
		r.X0 = g.xs[col-1]
	}
	if col < len(g.xs) {
		r.X1 = g.xs[col]
	}
	if row > 0 {
		r.Y1 = g.ys[row-1]
	}
	if row < len(g.ys) {
		r.Y0 = g.ys[row]
	}
	return r
}

// window is a cell with its laps.
func (g *grid) window(col, row int) draw.Rect {
	r := g.cell(col, row)
	if col > 0 {
		r.X0 -= rimMatchMm
	}
	if col < len(g.xs) {
		r.X1 += glueMm
	}
	if row > 0 {
		r.Y1 += rimMatchMm
	}
	if row < len(g.ys) {
		r.Y0 -= glueMm
	}
	return r
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
		need = draw.R(min(need.X0, m.X0), min(need.Y0, m.Y0), max(need.X1, m.X1), max(need.Y1, m.Y1))
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
		return append(out, draw.R(max(c.X0, x0), max(c.Y0, y0), min(c.X1, x1), min(c.Y1, y1)))
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

// divisions are the ways to cut lo to hi, the seams moved by more and more of the
// room that there is to spare; none if a seam cannot keep clear of the spans.
func divisions(lo, hi, size float64, spans [][2]float64) (ways [][]float64) {
	const shares = 5
	for i := range shares + 1 {
		cuts, ok := divide(lo, hi, size, float64(i)/shares, spans)
		if ok && (len(ways) == 0 || !slices.Equal(cuts, ways[len(ways)-1])) {
			ways = append(ways, cuts)
		}
	}
	return ways
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

// divide cuts lo to hi into as few stretches as fit into size with their laps.
// Seams keep clear of the spans where they can.
func divide(lo, hi, size, share float64, spans [][2]float64) ([]float64, bool) {
	step := size - lapMm
	n := int(math.Ceil((hi-lo-lapMm)/step - 1e-9))
	if hi-lo <= size {
		n = 1
	}
	if n > maxTiles || step <= 2*lapMm {
		return nil, false
	}
	for ; n < maxTiles; n++ {
		var cuts []float64
		from, fine := lo, true
		slack := float64(n)*step + lapMm - (hi - lo)
		for i := 1; i < n && fine; i++ {
			// The first stretch has no rim to cut off.
			most := from + step
			if i == 1 {
				most += rimMatchMm
			}
			least := max(from+trimMm, hi-float64(n-i)*step-glueMm)
			at, ok := clearCut(most-share*min(slack, most-least)/float64(n), least, spans)
			if !ok {
				at, ok = clearCut(most, least, spans)
			}
			fine = ok
			cuts, from = append(cuts, at), at
		}
		if fine {
			return cuts, true
		}
		if n > 12 {
			break
		}
	}
	// Too many marks for a clear seam: the seams lie where they fall.
	n = int(math.Ceil((hi-lo-lapMm)/step - 1e-9))
	var cuts []float64
	for i := 1; i < n; i++ {
		cuts = append(cuts, lo+float64(i)*(hi-lo)/float64(n))
	}
	return cuts, true
}

// clearCut looks from high down to low for a place inside no span.
func clearCut(high, low float64, spans [][2]float64) (float64, bool) {
	for at := high; at >= low-1e-9; {
		moved := false
		for _, sp := range spans {
			if sp[0] < at && at < sp[1] {
				at, moved = sp[0], true
			}
		}
		if !moved {
			return at, true
		}
	}
	return 0, false
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

// shows tells whether a point lies on a tile that is shown.
func (g *grid) shows(x, y float64) bool {
	for row := range g.shown {
		if r := g.cell(0, row); y < r.Y0 || y > r.Y1 {
			continue
		}
		for col, shown := range g.shown[row] {
			if shown && g.cell(col, row).HasPoint(x, y) {
				return true
			}
		}
	}
	return false
}

// needs tells whether a cell holds a hole, or the middle of a side of the
// outline.
func (t *template) needs(cell draw.Rect) bool {
	if slices.ContainsFunc(t.marks, func(m draw.Rect) bool { return m.Meets(cell) }) {
		return true
	}
	midX, midY := (t.core.X0+t.core.X1)/2, (t.core.Y0+t.core.Y1)/2
	if len(t.ends) == 2 && t.ends[0][0] < 0 && t.ends[0][1] > 0 {
		midX = 0
	}
	if t.setAt != nil {
		return false // two edges are left with the holes
	}
	return cell.HasPoint(midX, t.core.Y1-topRoomMm) || cell.HasPoint(t.core.X0+1, midY) || cell.HasPoint(t.core.X1-1, midY)
}

// connected tells whether every tile shown hangs on the others by whole sides.
func (g *grid) connected() bool {
	seen := map[[2]int]bool{}
	var walk func(col, row int)
	walk = func(col, row int) {
		at := [2]int{col, row}
		if !g.has(col, row) || seen[at] {
			return
		}
		seen[at] = true
		walk(col-1, row)
		walk(col+1, row)
		walk(col, row-1)
		walk(col, row+1)
	}
	for col, row := range g.cells() {
		walk(col, row)
		return len(seen) == g.count()
	}
	return false
}

// seams are the match marks of a tile; those of its grid are set when first asked for.
func (one *tile) seams() (out []match) {
	if g := one.grid; g.marks == nil && one.n > 0 {
		one.of.matchMarks(g)
	}
	return seq.Keep(one.grid.marks, func(m match) bool { return one.window.Holds(draw.R(m.x, m.y, m.x, m.y).Grown(3.3)) })
}

// matchMarks sets two marks on each seam between two tiles, clear of the holes
// where it can.
func (t *template) matchMarks(g *grid) {
	holes := draw.NewOccupied(g.area.Grown(1))
	for _, m := range slices.Concat(t.marks, t.spare) {
		holes.AddText(m)
	}
	holes.AddPath(t.outline)
	put := func(lo, hi float64, at func(float64) (x, y float64), across bool) {
		for _, wanted := range []float64{0.15, 0.85} {
			best := lo + wanted*(hi-lo)
			for i := range 40 {
				shift := float64((i+1)/2) * 2
				if (i%2 == 1) == (wanted < 0.5) {
					shift = -shift
				}
				if try := best + shift; try > lo+4 && try < hi-4 && math.Abs(shift) <= 0.25*(hi-lo) {
					if x, y := at(try); holes.Free(draw.R(x, y, x, y).Grown(5)) {
						best = try
						break
					}
				}
			}
			x, y := at(min(max(best, lo+4), hi-4))
			g.marks = append(g.marks, match{letters(len(g.marks)), x, y, across})
		}
	}
	for row := range g.shown {
		for col, x := range g.xs {
			if c := g.cell(col, row); g.has(col, row) && g.has(col+1, row) {
				put(c.Y0, c.Y1, func(v float64) (float64, float64) { return x, v }, false)
			}
		}
	}
	for row, y := range g.ys {
		for col := range g.shown[row] {
			if c := g.cell(col, row); g.has(col, row) && g.has(col, row+1) {
				put(c.X0, c.X1, func(v float64) (float64, float64) { return v, y }, true)
			}
		}
	}
}

// letters counts A, B … Z, AA, AB …
func letters(n int) string {
	name := ""
	for ; ; n = n/26 - 1 {
		name = string(rune('A'+n%26)) + name
		if n < 26 {
			return name
		}
	}
}

// number is that of a tile that is shown, from 1.
func (g *grid) number(col, row int) (n int) {
	for i, j := range g.cells() {
		if n++; i == col && j == row {
			break
		}
	}
	return n
}

// isSmall tells whether a circle is a hole of the other side rather than a
// bore or a pitch circle, so that cuts and marks had better miss it.
func isSmall(c plan.Circle) bool { return !c.Pitch && c.DiameterMm <= 60 }

func circleRect(c plan.Circle) draw.Rect {
	at, half := c.CentreMm, c.HalfMm
	dx, dy := math.Abs(half.XMm), math.Abs(half.YMm)
	return draw.R(at.XMm-dx, at.YMm-dy, at.XMm+dx, at.YMm+dy).Grown(c.DiameterMm / 2)
}

// side is a side of a tile that another lies at, whose place in the grid it is: left or
// right if it is upright, low at the left and at the foot.
type side struct {
	col, row     int
	upright, low bool
	atMm         float64 // of the seam, in template coordinates
}

// cut tells whether the tile is cut there; else the other is laid on it.
func (s side) cut() bool { return s.upright == s.low }

func (one *tile) sides() []side {
	c := one.cell
	return seq.Keep([]side{{one.col - 1, one.row, true, true, c.X0}, {one.col + 1, one.row, true, false, c.X1},
		{one.col, one.row - 1, false, false, c.Y1}, {one.col, one.row + 1, false, true, c.Y0}}, func(s side) bool { return one.grid.has(s.col, s.row) })
}

// seamLines draws the seams of a tile and their match marks. It is cut on its
// left and upper seams (dashed); on the right and lower ones (chain) its
// neighbours are laid.
func (one *tile) seamLines(l laid) {
	line := func(x0, y0, x1, y1 float64, dash []float64) {
		l.Draw.Add(draw.Segment(x0, y0, x1, y1, draw.LineMm, dash...))
		l.AddLine(x0, y0, x1, y1)
	}
	for _, s := range one.sides() {
		dash := draw.ChainDash
		if s.cut() {
			dash = draw.CutDash
		}
		if s.upright {
			line(l.ox+s.atMm, l.Window.Y0, l.ox+s.atMm, l.Window.Y1, dash)
		} else {
			line(l.Window.X0, l.oy+s.atMm, l.Window.X1, l.oy+s.atMm, dash)
		}
	}
	for _, m := range one.seams() {
		l.Draw.Add(draw.MatchMark(l.ox+m.x, l.oy+m.y)...)
		l.AddText(draw.R(l.ox+m.x, l.oy+m.y, l.ox+m.x, l.oy+m.y).Grown(3.4))
	}
}

// seamLetters names the match marks of a tile, on its side of the seam and off the
// lines of what is drawn.
func (one *tile) seamLetters(l laid) {
	apart := func(r draw.Rect) bool { return l.Free(r) && l.ClearOfTexts(r.Grown(2)) } // so that it is not read with another text
	for _, m := range one.seams() {
		x, y := l.ox+m.x, l.oy+m.y
		towards := 0.0
		switch {
		case m.across && m.y > (one.cell.Y0+one.cell.Y1)/2:
			towards = -math.Pi / 2
		case m.across:
			towards = math.Pi / 2
		case m.x > (one.cell.X0+one.cell.X1)/2:
			towards = math.Pi
		}
		size, spot, ok := 0.0, draw.Rect{}, false
		for _, way := range []struct {
			size, far float64
			clear     func(draw.Rect) bool
		}{{4.4, 6, apart}, {4.4, 6, l.Free}, {4.4, 11, l.Free}, {3.4, 11, l.Free}, {4.4, 20, l.ClearOfTexts}} {
			size = way.size
			if spot, ok = l.Find(draw.Search{X: x, Y: y, W: draw.TextWidth(m.letter, size, true), H: draw.AscentMm * size, Near: 4, Far: way.far, Angle: towards}, way.clear); ok {
				break
			}
		}
		if ok {
			l.Draw.Add(draw.Text{XMm: spot.X0, YMm: spot.Y0, SizeMm: size, Bold: true, Content: m.letter})
			l.AddText(spot)
		}
	}
}

// title is that of a tile, to which numbers of pages refer.
func (t *template) title(n int) string {
	return t.part.Title + ": " + t.name + ", tile " + strconv.Itoa(n)
}

// seamNote is what to do at a seam; where it names a tile, in few words if need be, its
// page stands after it.
type seamNote struct{ text, short, title string }

// seamNotes writes along the seams what to do there, where there is room.
func (one *tile) seamNotes(l laid) {
	for _, s := range one.sides() {
		note, off := seamNote{text: "cut along this line"}, s.atMm-3.4
		if !s.cut() {
			n := one.grid.number(s.col, s.row)
			note = seamNote{"edge of tile " + strconv.Itoa(n) + " lies on this line", "tile " + strconv.Itoa(n) + " here", one.of.title(n)}
		}
		if s.low {
			off = s.atMm + 0.7
		}
		if s.upright {
			note.write(l, l.ox+off, true)
		} else {
			note.write(l, l.oy+off, false)
		}
	}
}

// write sets a note near the middle of a seam, from a line at off on: upwards, or
// level. Where there is room for no more, the page is left out.
func (note seamNote) write(l laid, off float64, upright bool) {
	for _, way := range []seamNote{note, {text: note.short, title: note.title}, {text: note.text}} {
		if way.text != "" && way.put(l, off, upright) {
			return
		}
	}
}

// put sets a note in its words, and tells whether there was room.
func (note seamNote) put(l laid, off float64, upright bool) bool {
	const size, gap = draw.SmallMm, 1.2
	text := draw.Text{SizeMm: size, Content: note.text}
	drop, long := draw.DropMm*size, draw.TextWidth(note.text, size, false)
	high, w, width := draw.AscentMm*size+drop, l.Window, long
	lo, hi := w.X0, w.X1
	if upright {
		lo, hi, text.RotateDeg = w.Y0, w.Y1, 90
	}
	if note.title != "" {
		width += gap + draw.PageOfMm(size)
	}
	for at := (lo+hi)/2 - width/2; at > lo+2; at -= 4 {
		r, x, y, ahead := draw.R(at, off, at+width, off+high), at, off+drop, [2]float64{1, 0}
		if upright {
			r, x, y, ahead = draw.R(off, at, off+high, at+width), off+high-drop, at, [2]float64{0, 1}
		}
		if !l.Free(r) {
			continue
		}
		l.AddText(r)
		text.XMm, text.YMm = x, y
		l.Draw.Add(text)
		if note.title != "" {
			l.Refers = append(l.Refers, draw.PageOf{Title: note.title, XMm: x + ahead[0]*(long+gap), YMm: y + ahead[1]*(long+gap), SizeMm: size, RotateDeg: text.RotateDeg})
		}
		return true
	}
	return false
}

// The cells of a map of tiles, and how many tiles it is drawn for.
const (
	mapCellMm  = 16.5
	mapRowMm   = 8.2
	mapLeast   = 3
	mapMost    = 60
	mapPlaceMm = 1.0 // round it
)

// pageMap is a map of the tiles on the first of them: which lies where, and on which
// page it is printed.
func (one *tile) pageMap(s *draw.Sheet, rooms []*draw.Occupied) {
	g := one.grid
	if n := g.count(); one.n != 1 || n < mapLeast || n > mapMost {
		return
	}
	rows, cols := len(g.shown), len(g.shown[0])
	for _, room := range rooms {
		at, ok := placeFor(room, float64(cols)*mapCellMm+2*mapPlaceMm, float64(rows)*mapRowMm+2*mapPlaceMm)
		if !ok {
			continue
		}
		room.AddText(at)
		for col, row := range g.cells() {
			x, y := at.X0+mapPlaceMm+float64(col)*mapCellMm, at.Y1-mapPlaceMm-float64(row+1)*mapRowMm
			n := g.number(col, row)
			s.Draw.Add(draw.Box(draw.R(x, y, x+mapCellMm, y+mapRowMm), draw.ThinMm),
				draw.Text{XMm: x + 1, YMm: y + mapRowMm/2 + 0.9, SizeMm: draw.TextMm, Content: "tile " + strconv.Itoa(n)})
			s.Refers = append(s.Refers, draw.PageOf{Title: one.of.title(n), XMm: x + 1, YMm: y + 1.2, SizeMm: draw.SmallMm})
		}
		return
	}
}

// drawMap draws the template small with its tiles inside r, this one dark.
func (one *tile) drawMap(d *draw.Drawing, r draw.Rect) {
	g := one.grid
	scale := min(r.Width()/g.area.Width(), r.Height()/g.area.Height())
	ox := (r.X0+r.X1)/2 - (g.area.X0+g.area.X1)/2*scale
	oy := (r.Y0+r.Y1)/2 - (g.area.Y0+g.area.Y1)/2*scale
	small := func(c draw.Rect) draw.Rect {
		return draw.R(ox+c.X0*scale, oy+c.Y0*scale, ox+c.X1*scale, oy+c.Y1*scale)
	}
	d.Add(draw.Shape{Path: small(one.cell).Path(), Fill: draw.Grey})
	outline := &draw.Drawing{}
	outline.Add(draw.Shape{Path: one.of.outline.Copy().Transform(canvas.Identity.Translate(ox, oy).Scale(scale, scale)), Stroke: draw.Black, WidthMm: draw.ThinMm})
	d.Add(draw.Group{Drawing: outline, Transform: canvas.Identity, Clip: r.Path()})
	for col, row := range g.cells() {
		d.Add(draw.Box(small(g.cell(col, row)), draw.HairMm))
	}
}
