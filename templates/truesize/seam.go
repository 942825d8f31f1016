package truesize

import (
	"math"
	"slices"
	"strconv"

	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// match is a mark on a seam, in template coordinates.
type match struct {
	letter string
	x, y   float64
	across bool // on a level seam
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
		for _, share := range []float64{0.15, 0.85} {
			x, y := at(onSeam(lo, hi, share, func(v float64) bool {
				x, y := at(v)
				return holes.Free(draw.R(x, y, x, y).Grown(5))
			}))
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

// onSeam is where a mark stands on a seam from lo to hi: at a share of it, or as near to that as it is free, towards
// its end first; 4 mm off its ends at the least.
func onSeam(lo, hi, share float64, free func(float64) bool) float64 {
	at := lo + share*(hi-lo)
	for i := range 40 {
		shift := float64((i+1)/2) * 2
		if (i%2 == 1) == (share < 0.5) {
			shift = -shift
		}
		if try := at + shift; try > lo+4 && try < hi-4 && math.Abs(shift) <= 0.25*(hi-lo) && free(try) {
			return try
		}
	}
	return min(max(at, lo+4), hi-4)
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
		var towards float64
		switch {
		case m.across && m.y > (one.cell.Y0+one.cell.Y1)/2:
			towards = -math.Pi / 2
		case m.across:
			towards = math.Pi / 2
		case m.x > (one.cell.X0+one.cell.X1)/2:
			towards = math.Pi
		}
		var size float64
		var spot draw.Rect
		var ok bool
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
