package templates

import (
	"fmt"
	"math"
	"strconv"

	"centrepop/layout/plan"

	"github.com/tdewolff/canvas"
)

// Room on a template sheet, in millimetres.
const (
	punchHeadMm  = 17.0 // face name and part
	tileHeadMm   = 25.0 // with the tile's name and the map
	ruleSideMm   = 13.0 // the upright rule's strip
	ruleFootMm   = 10.5 // the other rule's strip
	edgePadMm    = 5.0  // quadrant ticks outside the outline
	topRoomMm    = 9.0  // TOP mark above the outline
	legendGapMm  = 3.0
	legendLeast  = 55.0 // width of a legend beside the part
	leastAcross  = 125.0
	numberMm     = 4.4
	holeSizeMm   = 3.2
	smallNumMm   = 3.2
	sizeGapMm    = 1.2
	tickClearMm  = 1.0 // round a quadrant tick, besides the clearance of any label
	centreMarkMm = 10.0
)

// punch is the template of one face in the making.
type punch struct {
	pl      *plan.Plan
	part    *plan.PartPlan
	face    *plan.Face
	outline *canvas.Path // face coordinates
	bounds  rect         // of the outline with the room for its marks
}

// punchChapter draws the template of a face: on one sheet if it fits, else
// on tiles with a key sheet before them.
func punchChapter(pl *plan.Plan, part *plan.PartPlan, face *plan.Face, paper frame) (chapter, error) {
	where := fmt.Sprintf("templates: part %s, %s face", part.Name, face.Face)
	outline, err := canvas.ParseSVGPath(string(face.Outline))
	if err != nil {
		return chapter{}, fmt.Errorf("%s: outline: %w", where, err)
	}
	w, h := face.MaxMm.XMm-face.MinMm.XMm, face.MaxMm.YMm-face.MinMm.YMm
	if !(w > 0 && h > 0) || math.IsInf(w, 0) || math.IsInf(h, 0) || outline.Empty() {
		return chapter{}, fmt.Errorf("%s: the outline encloses nothing", where)
	}
	p := &punch{pl: pl, part: part, face: face, outline: outline, bounds: rect{
		face.MinMm.XMm - edgePadMm, face.MinMm.YMm - edgePadMm, face.MaxMm.XMm + edgePadMm, face.MaxMm.YMm + topRoomMm}}
	c := chapter{part: part.Title, name: punchName(face.Face)}

	ways := []frame{paper}
	if side := paper.turned(); side.body().height() >= leastAcross {
		ways = append(ways, side)
	}
	for _, way := range []struct {
		legend legendKind
		loose  bool
	}{{fullLegend, false}, {fullLegend, true}, {shortLegend, true}, {noLegend, false}, {noLegend, true}} {
		for _, f := range ways {
			s := p.single(f, way.legend, way.loose)
			if s == nil {
				continue
			}
			if way.legend == noLegend {
				c.sheets = p.keySheets(paper, nil)
			}
			c.sheets = append(c.sheets, s)
			return c, nil
		}
	}
	var best *tiling
	for _, f := range ways {
		if t := p.tile(f); best == nil || t.count() < best.count() {
			best = t
		}
	}
	if n := best.count(); n > maxTiles {
		return chapter{}, &TooLargeError{part.Name, fmt.Sprintf("%s: a template of %s × %s mm needs more than %d sheets of %s",
			where, trimmed(w, 1), trimmed(h, 1), maxTiles, paper.name)}
	}
	c.sheets = append(p.keySheets(paper, best), p.tileSheets(best)...)
	return c, nil
}

// workArea is the room for the part on a template sheet.
func workArea(f frame, head float64) rect {
	b := f.body()
	return rect{b.x0 + ruleSideMm, b.y0 + ruleFootMm, b.x1, b.y1 - head}
}

// legendKind says how much of the legend stands on a template.
type legendKind uint8

const (
	noLegend    legendKind = iota
	shortLegend            // the patterns alone
	fullLegend             // with a line on how to pop
)

// single draws the whole face on one sheet, with the legend below or beside
// it if that is wanted. Loose lets the rules and the legend stand in corners
// that the outline leaves free. It returns nil if there is no room.
func (p *punch) single(f frame, kind legendKind, loose bool) *sheet {
	area := workArea(f, punchHeadMm)
	taken := ruleRects(f)
	room := area
	if loose {
		b := f.body()
		room = rect{b.x0, b.y0, b.x1, b.y1 - punchHeadMm}
	}
	w, h := p.bounds.width(), p.bounds.height()
	if w > room.width() || h > room.height() {
		return nil
	}
	var legend piece
	at := plan.XY{}
	if kind != noLegend {
		below := stack(p.legend(area.width(), kind)...)
		beside := area.width() - w - legendGapMm
		switch {
		case loose:
			legend = below
			at = plan.XY{XMm: area.x0, YMm: area.y0 + below.height}
			taken = append(taken, rect{area.x0, area.y0, area.x1, at.YMm})
		case h+legendGapMm+below.height <= area.height():
			legend = below
			at = plan.XY{XMm: area.x0, YMm: area.y0 + below.height}
			room.y0 = at.YMm + legendGapMm
		case beside >= legendLeast:
			legend = stack(p.legend(beside, kind)...)
			if legend.height > area.height() {
				return nil
			}
			at = plan.XY{XMm: area.x1 - beside, YMm: area.y1}
			room.x1 -= beside + legendGapMm
		default:
			return nil
		}
	}
	ox := (room.x0+room.x1)/2 - (p.bounds.x0+p.bounds.x1)/2
	oy := (room.y0+room.y1)/2 - (p.bounds.y0+p.bounds.y1)/2
	keep := newOccupied(room)
	if loose {
		ox, oy = room.x1-p.bounds.x1, room.y1-p.bounds.y1
		for _, r := range taken {
			if p.reaches(r, ox, oy) {
				return nil
			}
			keep.addText(r)
		}
	}
	s := p.newSheet(f, "Punch template, "+upper(p.face.Face))
	p.head(s, punchHeadMm, "", 0)
	s.draw.Place(&legend.draw, at.XMm, at.YMm)
	p.drawFace(s, room, ox, oy, keep)
	return s
}

// ruleRects is the room of the two rules of a sheet.
func ruleRects(f frame) []rect {
	b := f.body()
	return []rect{
		{b.x0, b.y0, b.x0 + ruleSideMm - 3, b.y0 + 12 + scaleLengthMm + 2},
		{b.x0, b.y0, b.x0 + 13 + scaleLengthMm + 9, b.y0 + ruleFootMm},
	}
}

// reaches tells whether the part or its quadrant ticks, with the face's
// origin at (ox, oy), come into a rectangle of the page.
func (p *punch) reaches(r rect, ox, oy float64) bool {
	onFace := rect{r.x0 - ox, r.y0 - oy, r.x1 - ox, r.y1 - oy}.grown(1)
	lo, hi := p.face.MinMm, p.face.MaxMm
	for _, tick := range []rect{{-1, lo.YMm - 5, 1, lo.YMm}, {lo.XMm - 5, -1, lo.XMm, 1}, {hi.XMm, -1, hi.XMm + 5, 1}, {-1, hi.YMm, 12, hi.YMm + 9}} {
		if tick.meets(onFace) {
			return true
		}
	}
	return p.touches(onFace)
}

// touches tells whether a window of the face shows anything of the part.
func (p *punch) touches(window rect) bool {
	if p.outline.Contains((window.x0+window.x1)/2, (window.y0+window.y1)/2, canvas.NonZero) {
		return true
	}
	seen := newOccupied(window)
	seen.addPath(p.outline)
	return len(seen.cells) > 0
}

func (p *punch) newSheet(f frame, name string) *sheet {
	s := &sheet{frame: f, part: p.part.Title, name: name, scale: "1:1"}
	b := f.body()
	ruleUp(&s.draw, b.x0+10, b.y0+12)
	ruleAcross(&s.draw, b.x0+13, b.y0+9)
	return s
}

// head draws the face's name and what else tells this template from others;
// rightMm is kept free at the right.
func (p *punch) head(s *sheet, height float64, tile string, rightMm float64) {
	b := s.frame.body()
	width := b.width() - rightMm
	arrow := 14.0
	name, size := shrink(upper(p.face.Face)+" face – this side out", 7.5, true, width-arrow-2)
	s.draw.Add(Text{XMm: b.x0, YMm: b.y1 - 6.5, SizeMm: size, Bold: true, Content: name})
	line := joined("  ·  ", p.part.Title, "make "+strconv.Itoa(p.part.Quantity), p.part.Material)
	if p.face.Mirrored {
		line += "  ·  already mirrored for the back"
	}
	line, size = shrink(line, 3.8, false, width-arrow-2)
	s.draw.Add(Text{XMm: b.x0, YMm: b.y1 - 12.4, SizeMm: size, Content: line})
	if tile != "" {
		tile, size = shrink(tile, 5, true, width-arrow-2)
		s.draw.Add(Text{XMm: b.x0, YMm: b.y1 - 19.4, SizeMm: size, Bold: true, Content: tile})
	}
	x := b.x1 - rightMm - 5
	s.draw.Add(topArrow(x, b.y1-8.5, 8), Text{XMm: x, YMm: b.y1 - 12.4, SizeMm: textMm, Bold: true, Align: Centre, Content: "TOP"})
	s.draw.Add(segment(b.x0, b.y1-height+1.5, b.x1, b.y1-height+1.5, lineMm))
}

// legend says what the numbers are.
func (p *punch) legend(width float64, kind legendKind) []piece {
	pieces := []piece{heading("What to drill", width)}
	for _, g := range p.face.Groups {
		text := joined(", ", g.Name+": "+g.SizeText, g.DepthText)
		if g.PCDMm > 0 {
			text += ", on pitch circle Ø" + short(g.PCDMm, p.pl.Units)
		}
		text = joined("; ", text, g.Extra)
		if g.Marked != "" && g.Marked != p.face.Face {
			text += "; drawn on the " + string(g.Marked) + ", mirrored here"
		}
		pieces = append(pieces, numbered(span(g.First, g.Count), text, width))
	}
	for _, s := range p.face.Slots {
		if !p.inGroup(s.N) {
			pieces = append(pieces, numbered(strconv.Itoa(s.N), fmt.Sprintf("%s: slot %s × %s", s.Group,
				short(s.WidthMm, p.pl.Units), short(s.LengthMm, p.pl.Units)), width))
		}
	}
	if kind == shortLegend {
		return pieces
	}
	pieces = append(pieces, space(0.8))
	pieces = append(pieces, paragraph("", "Pop in the open middle of each cross. The dashed ring is the drilled size: check by it after drilling.", textMm, false, width)...)
	return pieces
}

// inGroup tells whether a number belongs to a listed group.
func (p *punch) inGroup(n int) bool {
	for _, g := range p.face.Groups {
		if n >= g.First && n < g.First+g.Count {
			return true
		}
	}
	return false
}

// numbered is a text hung in from bold numbers.
func numbered(numbers, text string, width float64) piece {
	indent := max(13, textWidth(numbers, 3.8, true)+2)
	body := stack(paragraph("", text, 3.8, false, width-indent)...)
	p := piece{height: body.height + 0.8}
	p.draw.Add(Text{YMm: -3.8, SizeMm: 3.8, Bold: true, Content: numbers})
	p.draw.Place(&body.draw, indent, 0)
	return p
}

// holeReach is how far a hole's marks go from its centre.
func holeReach(h plan.Hole) float64 { return max(h.DiameterMm/2, crossArmMm) }

// slotRect is the room of a slot's marks, in face coordinates.
func slotRect(s plan.Slot) rect {
	r := max(s.WidthMm/2, crossArmMm)
	a, b := s.EndsMm[0], s.EndsMm[1]
	return rect{min(a.XMm, b.XMm), min(a.YMm, b.YMm), max(a.XMm, b.XMm), max(a.YMm, b.YMm)}.grown(r)
}

func holeRect(h plan.Hole) rect {
	return rect{h.XMm, h.YMm, h.XMm, h.YMm}.grown(holeReach(h))
}

// drawFace draws what lies in the window (page coordinates), with the face's
// origin at (ox, oy). Lines are cut off at the window; labels stand whole
// inside it, and keep clear of what room holds already.
func (p *punch) drawFace(s *sheet, window rect, ox, oy float64, room *occupied) {
	onFace := rect{window.x0 - ox, window.y0 - oy, window.x1 - ox, window.y1 - oy}
	lines := &Drawing{}
	shift := canvas.Identity.Translate(ox, oy)
	p.outlines(lines, room, shift)
	p.ticks(lines, room, ox, oy)
	for _, h := range p.face.Holes {
		if !holeRect(h).meets(onFace) {
			continue
		}
		if h.DiameterMm > 0 {
			lines.Add(ring(h.XMm, h.YMm, h.DiameterMm/2, thinMm, hiddenDash...))
			room.addCircle(ox+h.XMm, oy+h.YMm, h.DiameterMm/2)
		}
		p.pop(lines, room, h.XMm, h.YMm, ox, oy)
	}
	for _, slot := range p.face.Slots {
		if !slotRect(slot).meets(onFace) {
			continue
		}
		path := slotPath(slot)
		lines.Add(Shape{Path: path, Stroke: Black, WidthMm: thinMm, DashMm: hiddenDash})
		room.addPath(path.Copy().Transform(shift))
		lines.Add(segment(slot.EndsMm[0].XMm, slot.EndsMm[0].YMm, slot.EndsMm[1].XMm, slot.EndsMm[1].YMm, hairMm, chainDash...))
		for _, end := range slot.EndsMm {
			p.pop(lines, room, end.XMm, end.YMm, ox, oy)
		}
	}
	s.draw.Add(Group{Drawing: lines, Transform: shift, Clip: window.path()})

	var marks []mark
	for _, h := range p.face.Holes {
		if onFace.holds(holeRect(h)) {
			marks = append(marks, mark{h.N, h.Group, "Ø" + short(h.DiameterMm, p.pl.Units),
				ox + h.XMm, oy + h.YMm, h.DiameterMm / 2, math.Atan2(h.YMm, h.XMm)})
		}
	}
	for _, slot := range p.face.Slots {
		if onFace.holds(slotRect(slot)) {
			marks = append(marks, mark{slot.N, slot.Group, short(slot.WidthMm, p.pl.Units) + " × " + short(slot.LengthMm, p.pl.Units),
				ox + slot.XMm, oy + slot.YMm, slot.WidthMm / 2, math.Atan2(slot.YMm, slot.XMm)})
		}
	}
	labelMarks(s, room, marks)
	for _, c := range p.face.Circles {
		labelCircle(s, room, c, ox, oy)
	}
}

// outlines draws the outline and the circles.
func (p *punch) outlines(lines *Drawing, room *occupied, shift canvas.Matrix) {
	lines.Add(Shape{Path: p.outline, Stroke: Black, WidthMm: lineMm})
	room.addPath(p.outline.Copy().Transform(shift))
	for _, c := range p.face.Circles {
		x, y := c.CentreMm.XMm, c.CentreMm.YMm
		if c.Pitch {
			lines.Add(ring(x, y, c.DiameterMm/2, hairMm, chainDash...))
		} else {
			lines.Add(ring(x, y, c.DiameterMm/2, 0.25))
		}
		at := shift.Dot(canvas.Point{X: x, Y: y})
		room.addCircle(at.X, at.Y, c.DiameterMm/2)
	}
}

// pop draws a centre-pop cross.
func (p *punch) pop(lines *Drawing, room *occupied, x, y, ox, oy float64) {
	lines.Add(popCross(x, y))
	room.addLine(ox+x-crossArmMm, oy+y, ox+x+crossArmMm, oy+y)
	room.addLine(ox+x, oy+y-crossArmMm, ox+x, oy+y+crossArmMm)
}

// ticks draws the quadrant ticks outside the outline, the TOP mark above it
// and the centre mark.
func (p *punch) ticks(lines *Drawing, room *occupied, ox, oy float64) {
	lo, hi := p.face.MinMm, p.face.MaxMm
	tick := func(x0, y0, x1, y1 float64) {
		lines.Add(segment(x0, y0, x1, y1, lineMm))
		// Kept clear like a text: a label that comes close to a short line
		// reads as part of it, and none may lie over it.
		room.addText(rect{ox + min(x0, x1), oy + min(y0, y1), ox + max(x0, x1), oy + max(y0, y1)}.grown(tickClearMm))
	}
	if lo.XMm < 0 && hi.XMm > 0 {
		tick(0, lo.YMm-1, 0, lo.YMm-4.5)
		tick(0, hi.YMm+1, 0, hi.YMm+3)
		lines.Add(topArrow(0, hi.YMm+3, 5))
		room.addLine(ox, oy+hi.YMm, ox, oy+hi.YMm+8)
		text := Text{XMm: 3, YMm: hi.YMm + 4.2, SizeMm: textMm, Bold: true, Content: "TOP"}
		if r := textRect(text); room.window.holds(rect{ox + r.x0, oy + r.y0, ox + r.x1, oy + r.y1}) {
			lines.Add(text)
			room.addText(rect{ox + r.x0, oy + r.y0, ox + r.x1, oy + r.y1})
		}
	}
	if lo.YMm < 0 && hi.YMm > 0 {
		tick(lo.XMm-4.5, 0, lo.XMm-1, 0)
		tick(hi.XMm+1, 0, hi.XMm+4.5, 0)
	}
	for _, h := range p.face.Holes {
		if math.Hypot(h.XMm, h.YMm) < holeReach(h)+1 {
			return
		}
	}
	if lo.XMm < 0 && hi.XMm > 0 && lo.YMm < 0 && hi.YMm > 0 {
		for _, d := range [4][2]float64{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
			tick(d[0]*crossOpenMm, d[1]*crossOpenMm, d[0]*centreMarkMm, d[1]*centreMarkMm)
		}
	}
}

// labelCircle writes a circle's name beside its line where there is room: at
// a large circle close to the line, at a small one as near as can be.
func labelCircle(s *sheet, room *occupied, c plan.Circle, ox, oy float64) {
	x, y, r := ox+c.CentreMm.XMm, oy+c.CentreMm.YMm, c.DiameterMm/2
	if c.Label == "" || !room.window.grown(-2).meets(rect{x, y, x, y}.grown(r)) {
		return
	}
	for _, size := range []float64{textMm, smallMm} {
		drop := dropOf(c.Label) * size
		w, h := textWidth(c.Label, size, false), ascentMm*size+drop
		spot, ok := besideCircle(room, x, y, r, w, h)
		if !ok && isSmall(c) {
			spot, ok = room.find(x, y, w, h, r+0.9, r+9, math.Atan2(c.CentreMm.YMm, c.CentreMm.XMm), room.free)
		}
		if ok {
			room.addText(spot)
			s.draw.Add(Text{XMm: spot.x0, YMm: spot.y0 + drop, SizeMm: size, Content: c.Label})
			return
		}
	}
}

// besideCircle looks for room at the line of a circle, outside and then
// inside it, from the right on.
func besideCircle(room *occupied, x, y, r, w, h float64) (rect, bool) {
	for i := range 48 {
		angle := math.Pi * (0.25 - float64(i%24)/12)
		sin, cos := math.Sincos(angle)
		if i >= 24 {
			angle += math.Pi
		}
		if spot := beside(x+r*cos, y+r*sin, w, h, 1.0, angle); room.free(spot) {
			return spot, true
		}
	}
	return rect{}, false
}
