package truesize

import (
	"iter"
	"math"
	"slices"

	"centrepop/templates/draw"
)

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
	var sum float64
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

// number is that of a tile that is shown, from 1.
func (g *grid) number(col, row int) (n int) {
	for i, j := range g.cells() {
		if n++; i == col && j == row {
			break
		}
	}
	return n
}
