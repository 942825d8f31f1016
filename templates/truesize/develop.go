package truesize

import (
	"fmt"
	"iter"
	"math"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/figures"
	"centrepop/templates/picture"

	"github.com/tdewolff/canvas"
)

// patternPadMm is the paper left around a flat pattern.
const patternPadMm = 4.0

// pattern is a flat pattern in the making. It borrows the tiling of the punch
// templates: base holds only what that needs.
type pattern struct {
	base  *punch
	pl    *plan.Plan
	part  *plan.PartPlan
	dev   *plan.Development
	lines []patternLine
}

// patternLine is a line of the pattern with its path read, and how far it
// reaches.
type patternLine struct {
	plan.PatternLine
	path  *canvas.Path
	reach draw.Rect
}

// patternChapters draws every flat pattern of a part.
func patternChapters(pl *plan.Plan, part *plan.PartPlan, paper draw.Frame) ([]draw.Chapter, error) {
	var out []draw.Chapter
	for i := range part.Developments {
		c, err := patternChapter(pl, part, &part.Developments[i], paper)
		if err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

// patternChapter draws a flat pattern: a key sheet with the sizes and tables,
// then the pattern at 1:1, on tiles where it is larger than the paper. One of
// more than maxTiles tiles is left to be marked out from its tables.
func patternChapter(pl *plan.Plan, part *plan.PartPlan, dev *plan.Development, paper draw.Frame) (draw.Chapter, error) {
	where := fmt.Sprintf("templates: part %s, %s", part.Name, dev.Name)
	p := &pattern{pl: pl, part: part, dev: dev}
	shape := &canvas.Path{}
	for _, l := range dev.Lines {
		path, err := canvas.ParseSVGPath(string(l.Path))
		if err != nil {
			return draw.Chapter{}, fmt.Errorf("%s: line %s: %w", where, l.Name, err)
		}
		b := path.FastBounds()
		p.lines = append(p.lines, patternLine{l, path, draw.R(b.X0, b.Y0, b.X1, b.Y1).Grown(draw.LineMm)})
		if l.Name == "edge" || l.Role == "tab" {
			shape = shape.Append(path)
		}
	}
	if shape.Empty() || !(dev.MaxMm.XMm > dev.MinMm.XMm && dev.MaxMm.YMm > dev.MinMm.YMm) {
		return draw.Chapter{}, fmt.Errorf("%s: the pattern encloses nothing", where)
	}
	// The tiling keeps its cut lines clear of holes, and shows tiles that
	// reach the TOP mark above MaxMm: there is none here.
	face := &plan.Face{Part: part.Name, MinMm: dev.MinMm, MaxMm: plan.XY{XMm: dev.MaxMm.XMm, YMm: math.Inf(1)}}
	for _, m := range dev.Marks {
		face.Holes = append(face.Holes, plan.Hole{XMm: m.CentreMm.XMm, YMm: m.CentreMm.YMm, DiameterMm: m.DiameterMm})
	}
	p.base = &punch{pl: pl, part: part, face: face, outline: shape,
		bounds: draw.R(dev.MinMm.XMm, dev.MinMm.YMm, dev.MaxMm.XMm, dev.MaxMm.YMm).Grown(patternPadMm)}

	ways := []draw.Frame{paper}
	if side := paper.Turned(); side.Body().Height() >= leastAcross {
		ways = append(ways, side)
	}
	var best *tiling
	for _, f := range ways {
		if t := p.base.tile(f); best == nil || t.count() < best.count() {
			best = t
		}
	}
	if best.count() > maxTiles {
		return draw.Chapter{Part: part.Title, Name: dev.Title, Sheets: p.keySheets(paper, nil)}, nil
	}
	c := draw.Chapter{Part: part.Title, Name: dev.Title, Sheets: p.keySheets(paper, best)}
	for row := range best.rows.from {
		for col := range best.cols.from {
			if !best.empty[row][col] {
				c.Sheets = append(c.Sheets, p.sheet(best, col, row))
			}
		}
	}
	return c, nil
}

// keySheets draws what goes before the pattern: how to use it, how its tiles
// are joined, its sizes and tables. t is nil for a pattern that is not printed.
// The picture of the tiles is smaller where that saves a page.
func (p *pattern) keySheets(paper draw.Frame, t *tiling) []*draw.Sheet {
	sheets := p.keySheetsWith(paper, t, 0.3)
	if len(sheets) > 1 {
		if less := p.keySheetsWith(paper, t, 0.18); len(less) < len(sheets) {
			return less
		}
	}
	return sheets
}

// keySheetsWith is keySheets with the picture of the tiles no taller than a
// part of the page.
func (p *pattern) keySheetsWith(paper draw.Frame, t *tiling, picturePart float64) []*draw.Sheet {
	d := p.dev
	f := draw.NewFlow(func(page int) (*draw.Sheet, draw.Piece) {
		s := &draw.Sheet{Frame: paper, Part: p.part.Title, Name: d.Title + ", key", Scale: "not to scale"}
		if page == 0 {
			return s, picture.Head(p.part, d.Title, paper.Body().Width())
		}
		return s, draw.RunningHead(p.part.Title, d.Title+", continued", paper.Body().Width())
	})
	f.Add(draw.Heading("How to use it", f.Width()))
	steps := []string{"Check both 100 mm rules on every sheet with a steel rule before you cut."}
	tiles := 0
	if t != nil {
		tiles = t.count()
	}
	if tiles > 1 {
		steps = append(steps,
			"Cut each tile on its dashed lines, left and above. Lay its cut edge on the chain line of the tile to the left of it, or above it, so that the halves of the diamonds with the same number meet. Glue on a flat table.")
	}
	switch {
	case t == nil:
		steps = []string{fmt.Sprintf("The pattern would take more than %d sheets of %s and is not printed: mark it out from the tables, or print on larger paper.", maxTiles, paper.Name)}
	case d.Edge != "":
		steps = append(steps, "Cut along the middle of the outline; the lower edge must be straight.")
	default:
		steps = append(steps, "Mark the metal through the lines with a centre punch, or glue the paper on and cut along the middle of the outline.")
	}
	f.Add(draw.StepList(append(steps, d.Notes...), f.Width())...)
	f.Add(draw.Space(2))
	if tiles > 1 {
		f.Add(draw.Heading(fmt.Sprintf("Join %d tiles", tiles), f.Width()))
		height := min(f.Width()*p.base.bounds.Height()/p.base.bounds.Width(), f.Body.Height()*picturePart)
		picture := draw.Piece{Height: height + 3}
		p.base.tileMap(&picture.Draw, t, draw.R(0, -height, f.Width(), 0), -1, 0, 4.4)
		f.Add(picture, draw.Space(2))
	}
	sizes := draw.Table{Title: "Sizes", Columns: []draw.Column{{Head: "Size", Flex: true}, {Head: p.unit(), Align: draw.Right, Bold: true}}}
	if d.On != "" {
		sizes.Lead = "On " + d.On + "."
	}
	if d.Copies > 1 {
		sizes.Lead += " Cut " + strconv.Itoa(d.Copies) + " of this piece."
	}
	for _, v := range d.Sizes {
		sizes.Rows = append(sizes.Rows, []string{v.Name, v.Text})
	}
	if len(d.Sizes) > 6 {
		region(f, 2)
	}
	f.Table(sizes)
	wide := false
	for _, t := range d.Tables {
		if narrow := len(t.Heads) <= 4; narrow && !wide && len(t.Rows) > 12 {
			region(f, 2)
		} else {
			region(f, 1)
			wide = true
		}
		f.Add(draw.Space(3))
		out := draw.Table{Title: t.Title, Rows: t.Rows}
		for i, h := range t.Heads {
			out.Columns = append(out.Columns, draw.Column{Head: h, Bold: i == 0, Flex: h == "Size" || h == "Name"})
			if i > 0 && !out.Columns[i].Flex {
				out.Columns[i].Align = draw.Right
			}
		}
		f.Table(out)
	}
	if len(d.Rules) > 0 {
		f.Add(draw.Space(2))
		f.Add(draw.Paragraph("", "Worked out by "+figures.Joined("; ", d.Rules...)+".", draw.RuleTextMm, false, f.Width())...)
	}
	return f.Sheets
}

// region begins n columns, on the next page if little room is left.
func region(f *draw.Flow, n int) {
	f.Columns(n)
	if !f.Fits(40) {
		f.TurnPage()
	}
}

func (p *pattern) unit() string {
	if p.pl.Units == "in" {
		return "in"
	}
	return "mm"
}

// sheet draws one tile, or the whole pattern if there is only one.
func (p *pattern) sheet(t *tiling, col, row int) *draw.Sheet {
	name, tile, mapWidth := p.dev.Title, "", 0.0
	if t.count() > 1 {
		at := tileName(col, row)
		name += ", tile " + at
		tile = fmt.Sprintf("Tile %s  (A1 to %s)", at, tileName(len(t.cols.from)-1, len(t.rows.from)-1))
		mapWidth = 36
	}
	s := p.base.newSheet(t.frame, name)
	p.head(s, tile, mapWidth)
	b := t.frame.Body()
	if mapWidth > 0 {
		p.base.tileMap(&s.Draw, t, draw.R(b.X1-mapWidth, b.Y1-tileHeadMm+3, b.X1, b.Y1), col, row, draw.SmallMm)
	}
	area := workArea(t.frame, tileHeadMm)
	seen := t.window(p.base, col, row)
	ox := area.X0 - seen.X0 + (area.Width()-seen.Width())/2
	oy := area.Y1 - seen.Y1 - (area.Height()-seen.Height())/2
	window := draw.R(seen.X0+ox, seen.Y0+oy, seen.X1+ox, seen.Y1+oy)
	room := draw.NewOccupied(window)
	p.base.cutLines(s, t, col, row, window, ox, oy, room)
	p.draw(s, window, ox, oy, room)
	p.base.cutNotes(s, t, col, row, window, ox, oy, room)
	return s
}

// head says what the sheet is, on what it goes and which way round.
func (p *pattern) head(s *draw.Sheet, tile string, rightMm float64) {
	b, d := s.Frame.Body(), p.dev
	width := b.Width() - rightMm - 2
	name, size := draw.Shrink(d.Title+" – this side out", 7, true, width)
	s.Draw.Add(draw.Text{XMm: b.X0, YMm: b.Y1 - 6.5, SizeMm: size, Bold: true, Content: name})
	line := figures.Joined("  ·  ", p.part.Title, "make "+strconv.Itoa(p.part.Quantity*d.Copies), p.part.Material)
	if d.Edge != "" {
		line = figures.Joined("  ·  ", p.part.Title, "lower edge: "+d.Edge[len("this edge "):], "up is "+d.Beyond)
	}
	line, size = draw.Shrink(line, 3.8, false, width)
	s.Draw.Add(draw.Text{XMm: b.X0, YMm: b.Y1 - 12.4, SizeMm: size, Content: line})
	if tile != "" {
		tile, size = draw.Shrink(tile, 5, true, width)
		s.Draw.Add(draw.Text{XMm: b.X0, YMm: b.Y1 - 19.4, SizeMm: size, Bold: true, Content: tile})
	}
	s.Draw.Add(draw.Segment(b.X0, b.Y1-tileHeadMm+1.5, b.X1, b.Y1-tileHeadMm+1.5, draw.LineMm))
}

// patternStroke is how the lines of each role are drawn.
func patternStroke(role string) (width float64, dash []float64) {
	switch role {
	case "cut":
		return draw.LineMm, nil
	case "tab":
		return draw.ThinMm, nil
	case "seam":
		return draw.ThinMm, draw.ChainDash
	case "fold":
		return 0.25, draw.CutDash
	case "top":
		return draw.LineMm, nil
	}
	return draw.HairMm, nil
}

// draw draws what lies in the window, the pattern's origin at (ox, oy).
func (p *pattern) draw(s *draw.Sheet, window draw.Rect, ox, oy float64, room *draw.Occupied) {
	lines := &draw.Drawing{}
	shift := canvas.Identity.Translate(ox, oy)
	seen := draw.R(window.X0-ox, window.Y0-oy, window.X1-ox, window.Y1-oy)
	for _, l := range p.lines {
		if !l.reach.Meets(seen) {
			continue
		}
		width, dash := patternStroke(l.Role)
		lines.Add(draw.Shape{Path: l.path, Stroke: draw.Black, WidthMm: width, DashMm: dash})
		room.AddPath(l.path.Copy().Transform(shift))
	}
	for _, m := range p.dev.Marks {
		if (draw.R(m.CentreMm.XMm, m.CentreMm.YMm, m.CentreMm.XMm, m.CentreMm.YMm)).Grown(draw.CrossArmMm).Meets(seen) {
			p.base.pop(lines, room, m.CentreMm.XMm, m.CentreMm.YMm, ox, oy)
		}
	}
	if p.dev.Kind == plan.WrapPattern {
		p.clockScale(lines, room, ox, oy)
		p.axialRule(lines, room, ox, oy)
	}
	s.Draw.Add(draw.Group{Drawing: lines, Transform: shift, Clip: window.Path()})

	var marks []draw.Mark
	for _, m := range p.dev.Marks {
		if seen.HasPoint(m.CentreMm.XMm, m.CentreMm.YMm) {
			size := m.Name
			if m.DiameterMm > 0 {
				size += " Ø" + figures.Short(m.DiameterMm, p.pl.Units)
			}
			marks = append(marks, draw.Mark{N: m.N, Group: m.Name, Size: size, X: ox + m.CentreMm.XMm, Y: oy + m.CentreMm.YMm, Radius: max(m.DiameterMm/2, draw.CrossArmMm), Outward: 0})
		}
	}
	draw.LabelMarks(s, room, marks)
	if p.dev.Kind == plan.WrapPattern {
		p.wrapTexts(s, window, ox, oy, room)
		return
	}
	towards := math.Pi / 2
	if p.dev.Kind == plan.BranchPattern {
		towards = math.Pi / 4 // beside its line, and on the part of the paper that stays
	}
	for _, l := range p.dev.Labels {
		p.label(s, room, l.Text, ox+l.AtMm.XMm, oy+l.AtMm.YMm, towards)
	}
	p.foldTexts(s, window, ox, oy, room)
}

// label writes a short text near a point, first in the direction of the angle,
// where there is room on this sheet.
func (p *pattern) label(s *draw.Sheet, room *draw.Occupied, text string, x, y, angle float64) {
	if !room.Window.HasPoint(x, y) {
		return
	}
	w, h := draw.TextWidth(text, draw.TextMm, true), draw.AscentMm*draw.TextMm
	spot, ok := room.Find(x, y, w, h, 1, 6, angle, room.Free)
	if !ok {
		spot, ok = room.Find(x, y, w, h, 1, 14, angle, room.ClearOfTexts)
	}
	if ok {
		room.AddText(draw.R(spot.X0, spot.Y0-draw.DropMm*draw.TextMm, spot.X1, spot.Y1))
		s.Draw.Add(draw.Text{XMm: spot.X0, YMm: spot.Y0, SizeMm: draw.TextMm, Bold: true, Content: text})
	}
}

// foldTexts names the lines that are no edge, along each of them.
func (p *pattern) foldTexts(s *draw.Sheet, window draw.Rect, ox, oy float64, room *draw.Occupied) {
	for _, l := range p.lines {
		text := ""
		switch l.Role {
		case "fold", "division", "top":
			if text = l.Text; text == "" {
				continue
			}
		case "seam":
			text = "seam: the other edge meets this line"
		case "tab":
			text = "overlap"
		default:
			continue
		}
		pts := l.path.Coords()
		if len(pts) < 2 {
			continue
		}
		a, b := pts[0], pts[len(pts)-1]
		if l.Role == "tab" { // beside the seam, on the lap
			a, b = pts[len(pts)/2-1], pts[len(pts)/2]
		}
		p.along(s, room, text, ox+a.X, oy+a.Y, ox+b.X, oy+b.Y, draw.SmallMm)
	}
}

// along writes a text beside a straight line, turned with it, where the room
// allows it near the middle.
func (p *pattern) along(s *draw.Sheet, room *draw.Occupied, text string, x0, y0, x1, y1, size float64) {
	length := math.Hypot(x1-x0, y1-y0)
	if near := draw.R(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)).Grown(2 * size); !near.Meets(room.Window) {
		return
	}
	w := draw.TextWidth(text, size, false)
	if length < w+4 {
		return
	}
	if x1 < x0 || x1 == x0 && y1 < y0 {
		x0, y0, x1, y1 = x1, y1, x0, y0
	}
	ux, uy := (x1-x0)/length, (y1-y0)/length
	angle := math.Atan2(uy, ux) * 180 / math.Pi
	for i := range 30 {
		at := length/2 + float64((i+1)/2)*4*float64(1-2*(i%2))
		if at < w/2+1 || at > length-w/2-1 {
			continue
		}
		for _, side := range []float64{1, -1} {
			off := 0.9
			if side < 0 {
				off = -0.9 - draw.AscentMm*size
			}
			x, y := x0+ux*at-uy*off, y0+uy*at+ux*off
			boxes := turnedRoom(x, y, ux, uy, w, size)
			if room.AllClear(boxes) {
				for b := range boxes {
					room.AddText(b)
				}
				s.Draw.Add(draw.Text{XMm: x, YMm: y, SizeMm: size, Align: draw.Centre, RotateDeg: angle, Content: text})
				return
			}
		}
	}
}

// turnedRoom is the room of a text w wide in the direction (ux, uy), centred
// at (x, y): small boxes along it.
func turnedRoom(x, y, ux, uy, w, size float64) iter.Seq[draw.Rect] {
	const middle, half = (draw.AscentMm - draw.DropMm) / 2, (draw.AscentMm + draw.DropMm) / 2
	return func(yield func(draw.Rect) bool) {
		for t := -w / 2; t < w/2+size*0.4; t += size * 0.4 {
			t := min(t, w/2)
			cx, cy := x+ux*t-uy*size*middle, y+uy*t+ux*size*middle
			if !yield(draw.R(cx, cy, cx, cy).Grown(size * half)) {
				return
			}
		}
	}
}
