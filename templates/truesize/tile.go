package truesize

import (
	"fmt"
	"math"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/figures"
	"centrepop/templates/picture"

	"github.com/tdewolff/canvas"
)

// maxTiles is the most sheets a template may take.
const maxTiles = 400

// overlapMm is the least width that neighbouring tiles share. The cut line
// runs inside it, at least half of it from either tile's edge.
const overlapMm = 10.0

// strips divides a length into equal strips that overlap. Strip i covers
// from[i] to from[i]+size; cut[i] is the line between strips i and i+1.
type strips struct {
	from []float64
	cut  []float64
	size float64
}

// divide covers lo to hi with strips. Cut lines keep clear of the spans, the
// marks that should stay in one piece, if there is a gap between them;
// otherwise every span no longer than a strip still lies whole in one of
// them.
func divide(lo, hi, size float64, spans [][2]float64) strips {
	s := strips{from: []float64{lo}, size: size}
	for len(s.from) <= maxTiles {
		last := s.from[len(s.from)-1]
		end := last + size
		if end >= hi-1e-9 {
			return s
		}
		cut, ok := clearCut(end-overlapMm/2, last+size*0.4, spans)
		next := cut - overlapMm/2
		if !ok {
			next = end - overlapMm
			for _, sp := range spans {
				if sp[1] > end && sp[1]-sp[0] <= size && sp[0] > last {
					next = min(next, sp[0])
				}
			}
			cut = (next + end) / 2
		}
		s.from = append(s.from, next)
		s.cut = append(s.cut, cut)
	}
	return s
}

// clearCut looks from high down to low for a place inside no span.
func clearCut(high, low float64, spans [][2]float64) (float64, bool) {
	for at := high; at >= low; {
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

// match is a mark on a cut line, in face coordinates.
type match struct {
	n      int
	x, y   float64
	across bool // on a level cut line, so its tiles lie above and below
}

// tiling divides a template among sheets. Columns run from the left, rows
// from the top, so rows hold -y.
type tiling struct {
	frame      draw.Frame
	cols, rows strips
	marks      []match
	empty      [][]bool // by row and column: nothing of the part on the tile
}

// count is the number of tiles.
func (t *tiling) count() int {
	n := len(t.cols.from) * len(t.rows.from)
	for _, row := range t.empty {
		for _, empty := range row {
			if empty {
				n--
			}
		}
	}
	return n
}

// tile divides the template among sheets of the frame.
func (p *punch) tile(f draw.Frame) *tiling {
	area := workArea(f, tileHeadMm)
	var across, down [][2]float64
	add := func(r draw.Rect) {
		r = r.Grown(1.5)
		across = append(across, [2]float64{r.X0, r.X1})
		down = append(down, [2]float64{-r.Y1, -r.Y0})
	}
	for _, h := range p.face.Holes {
		add(holeRect(h))
	}
	for _, s := range p.face.Slots {
		add(slotRect(s))
	}
	for _, c := range p.face.Circles {
		if isSmall(c) {
			add(circleRect(c))
		}
	}
	t := &tiling{frame: f,
		cols: divide(p.bounds.X0, p.bounds.X1, area.Width(), across),
		rows: divide(-p.bounds.Y1, -p.bounds.Y0, area.Height(), down)}
	if len(t.cols.from)*len(t.rows.from) > 4*maxTiles {
		return t
	}
	for row := range t.rows.from {
		var empty []bool
		for col := range t.cols.from {
			empty = append(empty, p.misses(t.window(p, col, row)))
		}
		t.empty = append(t.empty, empty)
	}
	p.matchMarks(t)
	return t
}

// window is a tile's part of the face.
func (t *tiling) window(p *punch, col, row int) draw.Rect {
	x, y := t.cols.from[col], -t.rows.from[row]
	return draw.R(x, max(y-t.rows.size, p.bounds.Y0), min(x+t.cols.size, p.bounds.X1), y)
}

// misses tells whether a window shows nothing of the part or its TOP mark.
func (p *punch) misses(window draw.Rect) bool {
	top := draw.R(-6, p.face.MaxMm.YMm, 12, p.face.MaxMm.YMm+topRoomMm)
	return !top.Meets(window) && !p.touches(window)
}

// isSmall tells whether a circle is a hole of the other side rather than a
// bore or a pitch circle, so that cuts and marks had better miss it.
func isSmall(c plan.Circle) bool { return !c.Pitch && c.DiameterMm <= 60 }

func circleRect(c plan.Circle) draw.Rect {
	at, half := c.CentreMm, c.HalfMm
	dx, dy := math.Abs(half.XMm), math.Abs(half.YMm)
	return draw.R(at.XMm-dx, at.YMm-dy, at.XMm+dx, at.YMm+dy).Grown(c.DiameterMm / 2)
}

// matchMarks sets two marks on each stretch of cut line between two tiles,
// clear of the holes where it can.
func (p *punch) matchMarks(t *tiling) {
	holes := draw.NewOccupied(p.bounds.Grown(1))
	for _, h := range p.face.Holes {
		holes.AddText(holeRect(h))
	}
	for _, s := range p.face.Slots {
		holes.AddText(slotRect(s))
	}
	for _, c := range p.face.Circles {
		if isSmall(c) {
			holes.AddText(circleRect(c))
		}
	}
	holes.AddPath(p.outline)
	put := func(lo, hi float64, at func(float64) (x, y float64), across bool) {
		for _, wanted := range []float64{0.2, 0.8} {
			best := lo + wanted*(hi-lo)
			for i := range 40 {
				shift := float64((i+1)/2) * 2
				if (i%2 == 1) == (wanted < 0.5) {
					shift = -shift
				}
				try := lo + wanted*(hi-lo) + shift
				if math.Abs(try-(lo+wanted*(hi-lo))) > 0.25*(hi-lo) {
					continue
				}
				x, y := at(try)
				if holes.Free(draw.R(x, y, x, y).Grown(5)) {
					best = try
					break
				}
			}
			x, y := at(best)
			t.marks = append(t.marks, match{len(t.marks) + 1, x, y, across})
		}
	}
	for row := range t.rows.from {
		top, bottom := t.rows.from[row], t.rows.from[row]+t.rows.size
		if row > 0 {
			top = t.rows.cut[row-1]
		}
		bottom = min(bottom, -p.bounds.Y0)
		if row < len(t.rows.cut) {
			bottom = t.rows.cut[row]
		}
		for col, cut := range t.cols.cut {
			if !t.empty[row][col] && !t.empty[row][col+1] {
				put(top, bottom, func(v float64) (float64, float64) { return cut, -v }, false)
			}
		}
	}
	for col := range t.cols.from {
		left, right := t.cols.from[col], t.cols.from[col]+t.cols.size
		if col > 0 {
			left = t.cols.cut[col-1]
		}
		right = min(right, p.bounds.X1)
		if col < len(t.cols.cut) {
			right = t.cols.cut[col]
		}
		for row, cut := range t.rows.cut {
			if !t.empty[row][col] && !t.empty[row+1][col] {
				put(left, right, func(v float64) (float64, float64) { return v, -cut }, true)
			}
		}
	}
}

// tileName is a letter for the row, from the top, and a number for the
// column, from the left.
func tileName(col, row int) string {
	name := ""
	for n := row; ; n = n/26 - 1 {
		name = string(rune('A'+n%26)) + name
		if n < 26 {
			break
		}
	}
	return name + strconv.Itoa(col+1)
}

// tileSheets draws the tiles, by rows from the top left.
func (p *punch) tileSheets(t *tiling) []*draw.Sheet {
	var sheets []*draw.Sheet
	for row := range t.rows.from {
		for col := range t.cols.from {
			if !t.empty[row][col] {
				sheets = append(sheets, p.tileSheet(t, col, row))
			}
		}
	}
	return sheets
}

func (p *punch) tileSheet(t *tiling, col, row int) *draw.Sheet {
	name := tileName(col, row)
	s := p.newSheet(t.frame, "Punch template, "+figures.Upper(p.face.Face)+", tile "+name)
	const mapWidth = 36.0
	last := tileName(len(t.cols.from)-1, len(t.rows.from)-1)
	p.head(s, tileHeadMm, fmt.Sprintf("Tile %s  (A1 to %s)", name, last), mapWidth+2)
	b := t.frame.Body()
	p.tileMap(&s.Draw, t, draw.R(b.X1-mapWidth, b.Y1-tileHeadMm+3, b.X1, b.Y1), col, row, draw.SmallMm)

	area := workArea(t.frame, tileHeadMm)
	seen := t.window(p, col, row)
	ox := area.X0 - seen.X0 + (area.Width()-seen.Width())/2
	oy := area.Y1 - seen.Y1 - (area.Height()-seen.Height())/2
	window := draw.R(seen.X0+ox, seen.Y0+oy, seen.X1+ox, seen.Y1+oy)
	room := draw.NewOccupied(window)
	p.cutLines(s, t, col, row, window, ox, oy, room)
	p.drawFace(s, window, ox, oy, room)
	p.cutNotes(s, t, col, row, window, ox, oy, room)
	return s
}

// cutLines draws the cut lines and the match marks of a tile. A tile is cut
// on its left and upper lines (dashed); on its right and lower lines (chain)
// the next tiles are laid.
func (p *punch) cutLines(s *draw.Sheet, t *tiling, col, row int, window draw.Rect, ox, oy float64, room *draw.Occupied) {
	line := func(x0, y0, x1, y1 float64, dash []float64) {
		s.Draw.Add(draw.Segment(x0, y0, x1, y1, draw.LineMm, dash...))
		room.AddLine(x0, y0, x1, y1)
	}
	if col > 0 {
		x := ox + t.cols.cut[col-1]
		line(x, window.Y0, x, window.Y1, draw.CutDash)
	}
	if col < len(t.cols.cut) {
		x := ox + t.cols.cut[col]
		line(x, window.Y0, x, window.Y1, draw.ChainDash)
	}
	if row > 0 {
		y := oy - t.rows.cut[row-1]
		line(window.X0, y, window.X1, y, draw.CutDash)
	}
	if row < len(t.rows.cut) {
		y := oy - t.rows.cut[row]
		line(window.X0, y, window.X1, y, draw.ChainDash)
	}
	var shown []match
	for _, m := range t.marks {
		at := draw.R(ox+m.x, oy+m.y, ox+m.x, oy+m.y)
		if window.Holds(at.Grown(3.5)) {
			s.Draw.Add(draw.MatchMark(at.X0, at.Y0)...)
			room.AddText(at.Grown(3.4))
			shown = append(shown, m)
		}
	}
	// The numbers stand on this tile's side of the cut.
	for _, m := range shown {
		x, y := ox+m.x, oy+m.y
		towards := 0.0
		switch {
		case m.across && y > (window.Y0+window.Y1)/2:
			towards = -math.Pi / 2
		case m.across:
			towards = math.Pi / 2
		case x > (window.X0+window.X1)/2:
			towards = math.Pi
		}
		number := strconv.Itoa(m.n)
		w, h := draw.TextWidth(number, draw.TextMm, true), draw.AscentMm*draw.TextMm
		spot, ok := room.Find(x, y, w, h, 4.0, 6, towards, room.Free)
		if !ok {
			spot, ok = room.Find(x, y, w, h, 4.0, 20, towards, room.ClearOfTexts)
		}
		if ok {
			s.Draw.Add(draw.Text{XMm: spot.X0, YMm: spot.Y0, SizeMm: draw.TextMm, Bold: true, Content: number})
			room.AddText(spot)
		}
	}
}

// cutNotes writes along the cut lines what to do there, where there is room.
func (p *punch) cutNotes(s *draw.Sheet, t *tiling, col, row int, window draw.Rect, ox, oy float64, room *draw.Occupied) {
	drop := draw.DropMm * draw.SmallMm
	h := draw.AscentMm*draw.SmallMm + drop
	upright := func(text string, x float64) {
		w := draw.TextWidth(text, draw.SmallMm, false)
		for y := (window.Y0+window.Y1)/2 - w/2; y > window.Y0+2; y -= 4 {
			if r := (draw.R(x, y, x+h, y+w)); room.Free(r) {
				room.AddText(r)
				s.Draw.Add(draw.Text{XMm: r.X1 - drop, YMm: r.Y0, SizeMm: draw.SmallMm, RotateDeg: 90, Content: text})
				return
			}
		}
	}
	level := func(text string, y float64) {
		w := draw.TextWidth(text, draw.SmallMm, false)
		for x := (window.X0+window.X1)/2 - w/2; x > window.X0+2; x -= 4 {
			if r := (draw.R(x, y, x+w, y+h)); room.Free(r) {
				room.AddText(r)
				s.Draw.Add(draw.Text{XMm: r.X0, YMm: r.Y0 + drop, SizeMm: draw.SmallMm, Content: text})
				return
			}
		}
	}
	if col > 0 {
		upright("cut along this line", ox+t.cols.cut[col-1]-h-0.7)
	}
	if col < len(t.cols.cut) {
		upright("edge of "+tileName(col+1, row)+" goes on this line", ox+t.cols.cut[col]+0.7)
	}
	if row > 0 {
		level("cut along this line", oy-t.rows.cut[row-1]+0.7)
	}
	if row < len(t.rows.cut) {
		level("edge of "+tileName(col, row+1)+" goes on this line", oy-t.rows.cut[row]-h-0.7)
	}
}

// tileMap draws the face small with the tiles on it, inside r. The tile at
// col, row is shaded and drawn bold; a negative col marks none. Names are
// written where tiles are large enough.
func (p *punch) tileMap(d *draw.Drawing, t *tiling, r draw.Rect, col, row int, nameMm float64) {
	scale := min(r.Width()/p.bounds.Width(), r.Height()/p.bounds.Height())
	ox := (r.X0+r.X1)/2 - (p.bounds.X0+p.bounds.X1)/2*scale
	oy := (r.Y0+r.Y1)/2 - (p.bounds.Y0+p.bounds.Y1)/2*scale
	cell := func(col, row int) draw.Rect {
		w := draw.R(p.bounds.X0, p.bounds.Y0, p.bounds.X1, p.bounds.Y1)
		if col > 0 {
			w.X0 = t.cols.cut[col-1]
		}
		if col < len(t.cols.cut) {
			w.X1 = t.cols.cut[col]
		}
		if row > 0 {
			w.Y1 = -t.rows.cut[row-1]
		}
		if row < len(t.rows.cut) {
			w.Y0 = -t.rows.cut[row]
		}
		return draw.R(ox+w.X0*scale, oy+w.Y0*scale, ox+w.X1*scale, oy+w.Y1*scale)
	}
	if col >= 0 {
		d.Add(draw.Shape{Path: cell(col, row).Path(), Fill: draw.Pale})
	}
	d.Add(draw.Shape{Path: p.outline.Copy().Transform(canvas.Identity.Translate(ox, oy).Scale(scale, scale)), Stroke: draw.Black, WidthMm: draw.ThinMm})
	for j := range t.rows.from {
		for i := range t.cols.from {
			c := cell(i, j)
			if t.empty[j][i] {
				continue
			}
			d.Add(draw.Box(c, draw.HairMm))
			name := tileName(i, j)
			if draw.TextWidth(name, nameMm, true) < c.Width()-0.8 && draw.AscentMm*nameMm < c.Height()-0.6 {
				d.Add(draw.Text{XMm: (c.X0 + c.X1) / 2, YMm: (c.Y0+c.Y1)/2 - nameMm*0.36, SizeMm: nameMm, Bold: true, Align: draw.Centre, Content: name})
			}
		}
	}
	if col >= 0 {
		d.Add(draw.Box(cell(col, row), draw.ThickMm))
	}
}

// keySheets draws the sheet that goes before a template that has no room for
// its legend: the map of its tiles, how to join them, and the legend. t is
// nil if the template is on one sheet.
func (p *punch) keySheets(paper draw.Frame, t *tiling) []*draw.Sheet {
	name := "Punch template, " + figures.Upper(p.face.Face) + ", key"
	f := draw.NewFlow(func(page int) (*draw.Sheet, draw.Piece) {
		s := &draw.Sheet{Frame: paper, Part: p.part.Title, Name: name, Scale: "not to scale"}
		if page == 0 {
			return s, picture.Head(p.part, figures.Upper(p.face.Face)+" template: key", paper.Body().Width())
		}
		return s, draw.RunningHead(p.part.Title, figures.Upper(p.face.Face)+" template key, continued", paper.Body().Width())
	})
	if t != nil {
		f.Add(draw.Heading(fmt.Sprintf("Join %d tiles", t.count()), f.Width()))
		height := min(f.Width()*p.bounds.Height()/p.bounds.Width(), f.Body.Height()*0.42)
		picture := draw.Piece{Height: height + 3}
		p.tileMap(&picture.Draw, t, draw.R(0, -height, f.Width(), 0), -1, 0, 4.4)
		f.Add(picture, draw.Space(2))
		f.Add(draw.StepList([]string{
			"Check both 100 mm rules on every tile before you cut.",
			"Cut each tile on its dashed lines, left and above. Leave the sides with the chain lines as they are.",
			"Lay its cut edge on the chain line of the tile to the left of it, or above it, so that the halves of the diamonds with the same number meet. Glue on a flat table.",
			"Then measure between two far holes and compare with the table of the operation sheet: the joined template must be right within 0.5 mm.",
		}, f.Width())...)
		f.Add(draw.Space(3))
	}
	f.Add(p.legend(f.Width(), fullLegend)...)
	return f.Sheets
}
