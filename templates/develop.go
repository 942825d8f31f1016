package templates

import (
	"fmt"
	"iter"
	"math"
	"strconv"

	"centrepop/layout/plan"

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
	reach rect
}

// patternChapters draws every flat pattern of a part.
func patternChapters(pl *plan.Plan, part *plan.PartPlan, paper frame) ([]chapter, error) {
	var out []chapter
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
func patternChapter(pl *plan.Plan, part *plan.PartPlan, dev *plan.Development, paper frame) (chapter, error) {
	where := fmt.Sprintf("templates: part %s, %s", part.Name, dev.Name)
	p := &pattern{pl: pl, part: part, dev: dev}
	shape := &canvas.Path{}
	for _, l := range dev.Lines {
		path, err := canvas.ParseSVGPath(string(l.Path))
		if err != nil {
			return chapter{}, fmt.Errorf("%s: line %s: %w", where, l.Name, err)
		}
		b := path.FastBounds()
		p.lines = append(p.lines, patternLine{l, path, rect{b.X0, b.Y0, b.X1, b.Y1}.grown(lineMm)})
		if l.Name == "edge" || l.Role == "tab" {
			shape = shape.Append(path)
		}
	}
	if shape.Empty() || !(dev.MaxMm.XMm > dev.MinMm.XMm && dev.MaxMm.YMm > dev.MinMm.YMm) {
		return chapter{}, fmt.Errorf("%s: the pattern encloses nothing", where)
	}
	// The tiling keeps its cut lines clear of holes, and shows tiles that
	// reach the TOP mark above MaxMm: there is none here.
	face := &plan.Face{Part: part.Name, MinMm: dev.MinMm, MaxMm: plan.XY{XMm: dev.MaxMm.XMm, YMm: math.Inf(1)}}
	for _, m := range dev.Marks {
		face.Holes = append(face.Holes, plan.Hole{XMm: m.CentreMm.XMm, YMm: m.CentreMm.YMm, DiameterMm: m.DiameterMm})
	}
	p.base = &punch{pl: pl, part: part, face: face, outline: shape,
		bounds: rect{dev.MinMm.XMm, dev.MinMm.YMm, dev.MaxMm.XMm, dev.MaxMm.YMm}.grown(patternPadMm)}

	ways := []frame{paper}
	if side := paper.turned(); side.body().height() >= leastAcross {
		ways = append(ways, side)
	}
	var best *tiling
	for _, f := range ways {
		if t := p.base.tile(f); best == nil || t.count() < best.count() {
			best = t
		}
	}
	if best.count() > maxTiles {
		return chapter{part: part.Title, name: dev.Title, sheets: p.keySheets(paper, nil)}, nil
	}
	c := chapter{part: part.Title, name: dev.Title, sheets: p.keySheets(paper, best)}
	for row := range best.rows.from {
		for col := range best.cols.from {
			if !best.empty[row][col] {
				c.sheets = append(c.sheets, p.sheet(best, col, row))
			}
		}
	}
	return c, nil
}

// keySheets draws what goes before the pattern: how to use it, how its tiles
// are joined, its sizes and tables. t is nil for a pattern that is not printed.
// The picture of the tiles is smaller where that saves a page.
func (p *pattern) keySheets(paper frame, t *tiling) []*sheet {
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
func (p *pattern) keySheetsWith(paper frame, t *tiling, picturePart float64) []*sheet {
	d := p.dev
	f := newFlow(func(page int) (*sheet, piece) {
		s := &sheet{frame: paper, part: p.part.Title, name: d.Title + ", key", scale: "not to scale"}
		if page == 0 {
			return s, partHead(p.part, d.Title, paper.body().width())
		}
		return s, runningHead(p.part.Title, d.Title+", continued", paper.body().width())
	})
	f.add(heading("How to use it", f.width()))
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
		steps = []string{fmt.Sprintf("The pattern would take more than %d sheets of %s and is not printed: mark it out from the tables, or print on larger paper.", maxTiles, paper.name)}
	case d.Edge != "":
		steps = append(steps, "Cut along the middle of the outline; the lower edge must be straight.")
	default:
		steps = append(steps, "Mark the metal through the lines with a centre punch, or glue the paper on and cut along the middle of the outline.")
	}
	f.add(stepList(append(steps, d.Notes...), f.width())...)
	f.add(space(2))
	if tiles > 1 {
		f.add(heading(fmt.Sprintf("Join %d tiles", tiles), f.width()))
		height := min(f.width()*p.base.bounds.height()/p.base.bounds.width(), f.body.height()*picturePart)
		picture := piece{height: height + 3}
		p.base.tileMap(&picture.draw, t, rect{0, -height, f.width(), 0}, -1, 0, 4.4)
		f.add(picture, space(2))
	}
	sizes := table{title: "Sizes", columns: []column{{head: "Size", flex: true}, {head: p.unit(), align: Right, bold: true}}}
	if d.On != "" {
		sizes.lead = "On " + d.On + "."
	}
	if d.Copies > 1 {
		sizes.lead += " Cut " + strconv.Itoa(d.Copies) + " of this piece."
	}
	for _, v := range d.Sizes {
		sizes.rows = append(sizes.rows, []string{v.Name, v.Text})
	}
	if len(d.Sizes) > 6 {
		region(f, 2)
	}
	f.table(sizes)
	wide := false
	for _, t := range d.Tables {
		if narrow := len(t.Heads) <= 4; narrow && !wide && len(t.Rows) > 12 {
			region(f, 2)
		} else {
			region(f, 1)
			wide = true
		}
		f.add(space(3))
		out := table{title: t.Title, rows: t.Rows}
		for i, h := range t.Heads {
			out.columns = append(out.columns, column{head: h, bold: i == 0, flex: h == "Size" || h == "Name"})
			if i > 0 && !out.columns[i].flex {
				out.columns[i].align = Right
			}
		}
		f.table(out)
	}
	if len(d.Rules) > 0 {
		f.add(space(2))
		f.add(paragraph("", "Worked out by "+joined("; ", d.Rules...)+".", ruleTextMm, false, f.width())...)
	}
	return f.sheets
}

// region begins n columns, on the next page if little room is left.
func region(f *flow, n int) {
	f.columns(n)
	if !f.fits(40) {
		f.turnPage()
	}
}

func (p *pattern) unit() string {
	if p.pl.Units == "in" {
		return "in"
	}
	return "mm"
}

// sheet draws one tile, or the whole pattern if there is only one.
func (p *pattern) sheet(t *tiling, col, row int) *sheet {
	name, tile, mapWidth := p.dev.Title, "", 0.0
	if t.count() > 1 {
		at := tileName(col, row)
		name += ", tile " + at
		tile = fmt.Sprintf("Tile %s  (A1 to %s)", at, tileName(len(t.cols.from)-1, len(t.rows.from)-1))
		mapWidth = 36
	}
	s := p.base.newSheet(t.frame, name)
	p.head(s, tile, mapWidth)
	b := t.frame.body()
	if mapWidth > 0 {
		p.base.tileMap(&s.draw, t, rect{b.x1 - mapWidth, b.y1 - tileHeadMm + 3, b.x1, b.y1}, col, row, smallMm)
	}
	area := workArea(t.frame, tileHeadMm)
	seen := t.window(p.base, col, row)
	ox := area.x0 - seen.x0 + (area.width()-seen.width())/2
	oy := area.y1 - seen.y1 - (area.height()-seen.height())/2
	window := rect{seen.x0 + ox, seen.y0 + oy, seen.x1 + ox, seen.y1 + oy}
	room := newOccupied(window)
	p.base.cutLines(s, t, col, row, window, ox, oy, room)
	p.draw(s, window, ox, oy, room)
	p.base.cutNotes(s, t, col, row, window, ox, oy, room)
	return s
}

// head says what the sheet is, on what it goes and which way round.
func (p *pattern) head(s *sheet, tile string, rightMm float64) {
	b, d := s.frame.body(), p.dev
	width := b.width() - rightMm - 2
	name, size := shrink(d.Title+" – this side out", 7, true, width)
	s.draw.Add(Text{XMm: b.x0, YMm: b.y1 - 6.5, SizeMm: size, Bold: true, Content: name})
	line := joined("  ·  ", p.part.Title, "make "+strconv.Itoa(p.part.Quantity*d.Copies), p.part.Material)
	if d.Edge != "" {
		line = joined("  ·  ", p.part.Title, "lower edge: "+d.Edge[len("this edge "):], "up is "+d.Beyond)
	}
	line, size = shrink(line, 3.8, false, width)
	s.draw.Add(Text{XMm: b.x0, YMm: b.y1 - 12.4, SizeMm: size, Content: line})
	if tile != "" {
		tile, size = shrink(tile, 5, true, width)
		s.draw.Add(Text{XMm: b.x0, YMm: b.y1 - 19.4, SizeMm: size, Bold: true, Content: tile})
	}
	s.draw.Add(segment(b.x0, b.y1-tileHeadMm+1.5, b.x1, b.y1-tileHeadMm+1.5, lineMm))
}

// patternStroke is how the lines of each role are drawn.
func patternStroke(role string) (width float64, dash []float64) {
	switch role {
	case "cut":
		return lineMm, nil
	case "tab":
		return thinMm, nil
	case "seam":
		return thinMm, chainDash
	case "fold":
		return 0.25, cutDash
	case "top":
		return lineMm, nil
	}
	return hairMm, nil
}

// draw draws what lies in the window, the pattern's origin at (ox, oy).
func (p *pattern) draw(s *sheet, window rect, ox, oy float64, room *occupied) {
	lines := &Drawing{}
	shift := canvas.Identity.Translate(ox, oy)
	seen := rect{window.x0 - ox, window.y0 - oy, window.x1 - ox, window.y1 - oy}
	for _, l := range p.lines {
		if !l.reach.meets(seen) {
			continue
		}
		width, dash := patternStroke(l.Role)
		lines.Add(Shape{Path: l.path, Stroke: Black, WidthMm: width, DashMm: dash})
		room.addPath(l.path.Copy().Transform(shift))
	}
	for _, m := range p.dev.Marks {
		if (rect{m.CentreMm.XMm, m.CentreMm.YMm, m.CentreMm.XMm, m.CentreMm.YMm}).grown(crossArmMm).meets(seen) {
			p.base.pop(lines, room, m.CentreMm.XMm, m.CentreMm.YMm, ox, oy)
		}
	}
	if p.dev.Kind == plan.WrapPattern {
		p.clockScale(lines, room, ox, oy)
		p.axialRule(lines, room, ox, oy)
	}
	s.draw.Add(Group{Drawing: lines, Transform: shift, Clip: window.path()})

	var marks []mark
	for _, m := range p.dev.Marks {
		if seen.hasPoint(m.CentreMm.XMm, m.CentreMm.YMm) {
			size := m.Name
			if m.DiameterMm > 0 {
				size += " Ø" + short(m.DiameterMm, p.pl.Units)
			}
			marks = append(marks, mark{m.N, m.Name, size, ox + m.CentreMm.XMm, oy + m.CentreMm.YMm, max(m.DiameterMm/2, crossArmMm), 0})
		}
	}
	labelMarks(s, room, marks)
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
func (p *pattern) label(s *sheet, room *occupied, text string, x, y, angle float64) {
	if !room.window.hasPoint(x, y) {
		return
	}
	w, h := textWidth(text, textMm, true), ascentMm*textMm
	spot, ok := room.find(x, y, w, h, 1, 6, angle, room.free)
	if !ok {
		spot, ok = room.find(x, y, w, h, 1, 14, angle, room.clearOfTexts)
	}
	if ok {
		room.addText(rect{spot.x0, spot.y0 - dropMm*textMm, spot.x1, spot.y1})
		s.draw.Add(Text{XMm: spot.x0, YMm: spot.y0, SizeMm: textMm, Bold: true, Content: text})
	}
}

// foldTexts names the lines that are no edge, along each of them.
func (p *pattern) foldTexts(s *sheet, window rect, ox, oy float64, room *occupied) {
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
		p.along(s, room, text, ox+a.X, oy+a.Y, ox+b.X, oy+b.Y, smallMm)
	}
}

// along writes a text beside a straight line, turned with it, where the room
// allows it near the middle.
func (p *pattern) along(s *sheet, room *occupied, text string, x0, y0, x1, y1, size float64) {
	length := math.Hypot(x1-x0, y1-y0)
	if near := (rect{min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)}).grown(2 * size); !near.meets(room.window) {
		return
	}
	w := textWidth(text, size, false)
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
				off = -0.9 - ascentMm*size
			}
			x, y := x0+ux*at-uy*off, y0+uy*at+ux*off
			boxes := turnedRoom(x, y, ux, uy, w, size)
			if room.allClear(boxes) {
				for b := range boxes {
					room.addText(b)
				}
				s.draw.Add(Text{XMm: x, YMm: y, SizeMm: size, Align: Centre, RotateDeg: angle, Content: text})
				return
			}
		}
	}
}

// turnedRoom is the room of a text w wide in the direction (ux, uy), centred
// at (x, y): small boxes along it.
func turnedRoom(x, y, ux, uy, w, size float64) iter.Seq[rect] {
	const middle, half = (ascentMm - dropMm) / 2, (ascentMm + dropMm) / 2
	return func(yield func(rect) bool) {
		for t := -w / 2; t < w/2+size*0.4; t += size * 0.4 {
			t := min(t, w/2)
			cx, cy := x+ux*t-uy*size*middle, y+uy*t+ux*size*middle
			if !yield(rect{cx, cy, cx, cy}.grown(size * half)) {
				return
			}
		}
	}
}
