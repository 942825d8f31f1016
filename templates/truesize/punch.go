// Package truesize draws what is true at 1:1: the punch templates of faces, the
// wraps and flat patterns, on one sheet or on tiles, and the cutting file of a
// profile. Face drawings keep the plan's coordinates: the part's origin, x
// right and TOP up as seen by who looks at that face. Nothing here is scaled.
package truesize

import (
	"fmt"
	"math"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/figures"

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
	tickClearMm  = 1.0 // round a quadrant tick, besides the clearance of any label
	centreMarkMm = 10.0
)

// punch is the template of one face in the making.
type punch struct {
	pl      *plan.Plan
	part    *plan.PartPlan
	face    *plan.Face
	outline *canvas.Path // face coordinates
	flat    *canvas.Path // the outline in straight lines, once it was asked for
	bounds  draw.Rect    // of the outline with the room for its marks
}

// punchChapter draws the template of a face: on one sheet if it fits, else
// on tiles with a key sheet before them.
func punchChapter(pl *plan.Plan, part *plan.PartPlan, face *plan.Face, paper draw.Frame) (draw.Chapter, error) {
	where := fmt.Sprintf("templates: part %s, %s face", part.Name, face.Face)
	outline, err := canvas.ParseSVGPath(string(face.Outline))
	if err != nil {
		return draw.Chapter{}, fmt.Errorf("%s: outline: %w", where, err)
	}
	w, h := face.MaxMm.XMm-face.MinMm.XMm, face.MaxMm.YMm-face.MinMm.YMm
	if !(w > 0 && h > 0) || math.IsInf(w, 0) || math.IsInf(h, 0) || outline.Empty() {
		return draw.Chapter{}, fmt.Errorf("%s: the outline encloses nothing", where)
	}
	p := &punch{pl: pl, part: part, face: face, outline: outline, bounds: draw.R(
		face.MinMm.XMm-edgePadMm, face.MinMm.YMm-edgePadMm, face.MaxMm.XMm+edgePadMm, face.MaxMm.YMm+topRoomMm)}
	c := draw.Chapter{Part: part.Title, Name: PunchName(face.Face)}

	ways := []draw.Frame{paper}
	if side := paper.Turned(); side.Body().Height() >= leastAcross {
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
				c.Sheets = p.keySheets(paper, nil)
			}
			c.Sheets = append(c.Sheets, s)
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
		return draw.Chapter{}, &TooLargeError{part.Name, fmt.Sprintf("%s: a template of %s × %s mm needs more than %d sheets of %s",
			where, figures.Trimmed(w, 1), figures.Trimmed(h, 1), maxTiles, paper.Name)}
	}
	c.Sheets = append(p.keySheets(paper, best), p.tileSheets(best)...)
	return c, nil
}

// workArea is the room for the part on a template sheet.
func workArea(f draw.Frame, head float64) draw.Rect {
	b := f.Body()
	return draw.R(b.X0+ruleSideMm, b.Y0+ruleFootMm, b.X1, b.Y1-head)
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
func (p *punch) single(f draw.Frame, kind legendKind, loose bool) *draw.Sheet {
	area := workArea(f, punchHeadMm)
	taken := ruleRects(f)
	room := area
	if loose {
		b := f.Body()
		room = draw.R(b.X0, b.Y0, b.X1, b.Y1-punchHeadMm)
	}
	w, h := p.bounds.Width(), p.bounds.Height()
	if w > room.Width() || h > room.Height() {
		return nil
	}
	var legend draw.Piece
	at := plan.XY{}
	if kind != noLegend {
		below := draw.Stack(p.legend(area.Width(), kind)...)
		beside := area.Width() - w - legendGapMm
		switch {
		case loose:
			legend = below
			at = plan.XY{XMm: area.X0, YMm: area.Y0 + below.Height}
			taken = append(taken, draw.R(area.X0, area.Y0, area.X1, at.YMm))
		case h+legendGapMm+below.Height <= area.Height():
			legend = below
			at = plan.XY{XMm: area.X0, YMm: area.Y0 + below.Height}
			room.Y0 = at.YMm + legendGapMm
		case beside >= legendLeast:
			legend = draw.Stack(p.legend(beside, kind)...)
			if legend.Height > area.Height() {
				return nil
			}
			at = plan.XY{XMm: area.X1 - beside, YMm: area.Y1}
			room.X1 -= beside + legendGapMm
		default:
			return nil
		}
	}
	ox := (room.X0+room.X1)/2 - (p.bounds.X0+p.bounds.X1)/2
	oy := (room.Y0+room.Y1)/2 - (p.bounds.Y0+p.bounds.Y1)/2
	keep := draw.NewOccupied(room)
	if loose {
		ox, oy = room.X1-p.bounds.X1, room.Y1-p.bounds.Y1
		for _, r := range taken {
			if p.reaches(r, ox, oy) {
				return nil
			}
			keep.AddText(r)
		}
	}
	s := p.newSheet(f, "Punch template, "+figures.Upper(p.face.Face))
	p.head(s, punchHeadMm, "", 0)
	s.Draw.Place(&legend.Draw, at.XMm, at.YMm)
	p.drawFace(s, room, ox, oy, keep)
	return s
}

// ruleRects is the room of the two rules of a sheet.
func ruleRects(f draw.Frame) []draw.Rect {
	b := f.Body()
	return []draw.Rect{
		{X0: b.X0, Y0: b.Y0, X1: b.X0 + ruleSideMm - 3, Y1: b.Y0 + 12 + draw.ScaleLengthMm + 2},
		{X0: b.X0, Y0: b.Y0, X1: b.X0 + 13 + draw.ScaleLengthMm + 9, Y1: b.Y0 + ruleFootMm},
	}
}

// reaches tells whether the part or its quadrant ticks, with the face's
// origin at (ox, oy), come into a rectangle of the page.
func (p *punch) reaches(r draw.Rect, ox, oy float64) bool {
	onFace := draw.R(r.X0-ox, r.Y0-oy, r.X1-ox, r.Y1-oy).Grown(1)
	lo, hi := p.face.MinMm, p.face.MaxMm
	for _, tick := range []draw.Rect{{X0: -1, Y0: lo.YMm - 5, X1: 1, Y1: lo.YMm}, {X0: lo.XMm - 5, Y0: -1, X1: lo.XMm, Y1: 1}, {X0: hi.XMm, Y0: -1, X1: hi.XMm + 5, Y1: 1}, {X0: -1, Y0: hi.YMm, X1: 12, Y1: hi.YMm + 9}} {
		if tick.Meets(onFace) {
			return true
		}
	}
	return p.touches(onFace)
}

// touches tells whether a window of the face shows anything of the part.
func (p *punch) touches(window draw.Rect) bool {
	if p.flat == nil {
		p.flat = p.outline.Flatten(draw.FlatMm)
	}
	return draw.Crosses(window, p.flat) || p.outline.Contains((window.X0+window.X1)/2, (window.Y0+window.Y1)/2, canvas.NonZero)
}

func (p *punch) newSheet(f draw.Frame, name string) *draw.Sheet {
	s := &draw.Sheet{Frame: f, Part: p.part.Title, Name: name, Scale: "1:1"}
	b := f.Body()
	draw.RuleUp(&s.Draw, b.X0+10, b.Y0+12)
	draw.RuleAcross(&s.Draw, b.X0+13, b.Y0+9)
	return s
}

// head draws the face's name and what else tells this template from others;
// rightMm is kept free at the right.
func (p *punch) head(s *draw.Sheet, height float64, tile string, rightMm float64) {
	b := s.Frame.Body()
	width := b.Width() - rightMm
	arrow := 14.0
	name, size := draw.Shrink(figures.Upper(p.face.Face)+" face – this side out", 7.5, true, width-arrow-2)
	s.Draw.Add(draw.Text{XMm: b.X0, YMm: b.Y1 - 6.5, SizeMm: size, Bold: true, Content: name})
	line := figures.Joined("  ·  ", p.part.Title, "make "+strconv.Itoa(p.part.Quantity), p.part.Material)
	if p.face.Mirrored {
		line += "  ·  already mirrored for the back"
	}
	line, size = draw.Shrink(line, 3.8, false, width-arrow-2)
	s.Draw.Add(draw.Text{XMm: b.X0, YMm: b.Y1 - 12.4, SizeMm: size, Content: line})
	if tile != "" {
		tile, size = draw.Shrink(tile, 5, true, width-arrow-2)
		s.Draw.Add(draw.Text{XMm: b.X0, YMm: b.Y1 - 19.4, SizeMm: size, Bold: true, Content: tile})
	}
	x := b.X1 - rightMm - 5
	s.Draw.Add(draw.TopArrow(x, b.Y1-8.5, 8), draw.Text{XMm: x, YMm: b.Y1 - 12.4, SizeMm: draw.TextMm, Bold: true, Align: draw.Centre, Content: "TOP"})
	s.Draw.Add(draw.Segment(b.X0, b.Y1-height+1.5, b.X1, b.Y1-height+1.5, draw.LineMm))
}

// legend says what the numbers are.
func (p *punch) legend(width float64, kind legendKind) []draw.Piece {
	pieces := []draw.Piece{draw.Heading("What to drill", width)}
	for _, g := range p.face.Groups {
		text := figures.Joined(", ", g.Name+": "+g.SizeText, g.DepthText)
		if g.PCDMm > 0 {
			text += ", on pitch circle Ø" + figures.Short(g.PCDMm, p.pl.Units)
		}
		text = figures.Joined("; ", text, g.Extra)
		if g.Marked != "" && g.Marked != p.face.Face {
			text += "; drawn on the " + string(g.Marked) + ", mirrored here"
		}
		pieces = append(pieces, draw.Numbered(figures.Span(g.First, g.Count), text, width))
	}
	for _, s := range p.face.Slots {
		if !p.inGroup(s.N) {
			pieces = append(pieces, draw.Numbered(strconv.Itoa(s.N), fmt.Sprintf("%s: slot %s × %s", s.Group,
				figures.Short(s.WidthMm, p.pl.Units), figures.Short(s.LengthMm, p.pl.Units)), width))
		}
	}
	if kind == shortLegend {
		return pieces
	}
	pieces = append(pieces, draw.Space(0.8))
	pieces = append(pieces, draw.Paragraph("", "Pop in the open middle of each cross. The dashed ring is the drilled size: check by it after drilling.", draw.TextMm, false, width)...)
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

// holeReach is how far a hole's marks go from its centre.
func holeReach(h plan.Hole) float64 { return max(h.DiameterMm/2, draw.CrossArmMm) }

// slotRect is the room of a slot's marks, in face coordinates.
func slotRect(s plan.Slot) draw.Rect {
	r := max(s.WidthMm/2, draw.CrossArmMm)
	a, b := s.EndsMm[0], s.EndsMm[1]
	return draw.R(min(a.XMm, b.XMm), min(a.YMm, b.YMm), max(a.XMm, b.XMm), max(a.YMm, b.YMm)).Grown(r)
}

func holeRect(h plan.Hole) draw.Rect {
	return draw.R(h.XMm, h.YMm, h.XMm, h.YMm).Grown(holeReach(h))
}

// drawFace draws what lies in the window (page coordinates), with the face's
// origin at (ox, oy). Lines are cut off at the window; labels stand whole
// inside it, and keep clear of what room holds already.
func (p *punch) drawFace(s *draw.Sheet, window draw.Rect, ox, oy float64, room *draw.Occupied) {
	onFace := draw.R(window.X0-ox, window.Y0-oy, window.X1-ox, window.Y1-oy)
	lines := &draw.Drawing{}
	shift := canvas.Identity.Translate(ox, oy)
	p.outlines(lines, room, shift)
	p.ticks(lines, room, ox, oy)
	for _, h := range p.face.Holes {
		if !holeRect(h).Meets(onFace) {
			continue
		}
		if h.DiameterMm > 0 {
			lines.Add(draw.Ring(h.XMm, h.YMm, h.DiameterMm/2, draw.ThinMm, draw.HiddenDash...))
			room.AddCircle(ox+h.XMm, oy+h.YMm, h.DiameterMm/2)
		}
		p.pop(lines, room, h.XMm, h.YMm, ox, oy)
	}
	for _, slot := range p.face.Slots {
		if !slotRect(slot).Meets(onFace) {
			continue
		}
		a, b := slot.EndsMm[0], slot.EndsMm[1]
		path := draw.SlotPath(a.XMm, a.YMm, b.XMm, b.YMm, slot.WidthMm)
		lines.Add(draw.Shape{Path: path, Stroke: draw.Black, WidthMm: draw.ThinMm, DashMm: draw.HiddenDash})
		room.AddPath(path.Copy().Transform(shift))
		lines.Add(draw.Segment(slot.EndsMm[0].XMm, slot.EndsMm[0].YMm, slot.EndsMm[1].XMm, slot.EndsMm[1].YMm, draw.HairMm, draw.ChainDash...))
		for _, end := range slot.EndsMm {
			p.pop(lines, room, end.XMm, end.YMm, ox, oy)
		}
	}
	s.Draw.Add(draw.Group{Drawing: lines, Transform: shift, Clip: window.Path()})

	var marks []draw.Mark
	for _, h := range p.face.Holes {
		if onFace.Holds(holeRect(h)) {
			marks = append(marks, draw.Mark{N: h.N, Group: h.Group, Size: "Ø" + figures.Short(h.DiameterMm, p.pl.Units),
				X: ox + h.XMm, Y: oy + h.YMm, Radius: h.DiameterMm / 2, Outward: math.Atan2(h.YMm, h.XMm)})
		}
	}
	for _, slot := range p.face.Slots {
		if onFace.Holds(slotRect(slot)) {
			marks = append(marks, draw.Mark{N: slot.N, Group: slot.Group, Size: figures.Short(slot.WidthMm, p.pl.Units) + " × " + figures.Short(slot.LengthMm, p.pl.Units),
				X: ox + slot.XMm, Y: oy + slot.YMm, Radius: slot.WidthMm / 2, Outward: math.Atan2(slot.YMm, slot.XMm)})
		}
	}
	draw.LabelMarks(s, room, marks)
	for _, c := range p.face.Circles {
		labelCircle(s, room, c, ox, oy)
	}
}

// outlines draws the outline and the circles.
func (p *punch) outlines(lines *draw.Drawing, room *draw.Occupied, shift canvas.Matrix) {
	lines.Add(draw.Shape{Path: p.outline, Stroke: draw.Black, WidthMm: draw.LineMm})
	room.AddPath(p.outline.Copy().Transform(shift))
	for _, c := range p.face.Circles {
		x, y := c.CentreMm.XMm, c.CentreMm.YMm
		if c.Pitch {
			lines.Add(draw.Ring(x, y, c.DiameterMm/2, draw.HairMm, draw.ChainDash...))
		} else {
			lines.Add(draw.Stadium(x, y, c.HalfMm.XMm, c.HalfMm.YMm, c.DiameterMm/2, 0.25))
		}
		at := shift.Dot(canvas.Point{X: x, Y: y})
		room.AddCircle(at.X, at.Y, c.DiameterMm/2)
	}
}

// pop draws a centre-pop cross.
func (p *punch) pop(lines *draw.Drawing, room *draw.Occupied, x, y, ox, oy float64) {
	lines.Add(draw.PopCross(x, y))
	room.AddLine(ox+x-draw.CrossArmMm, oy+y, ox+x+draw.CrossArmMm, oy+y)
	room.AddLine(ox+x, oy+y-draw.CrossArmMm, ox+x, oy+y+draw.CrossArmMm)
}

// ticks draws the quadrant ticks outside the outline, the TOP mark above it
// and the centre mark.
func (p *punch) ticks(lines *draw.Drawing, room *draw.Occupied, ox, oy float64) {
	lo, hi := p.face.MinMm, p.face.MaxMm
	tick := func(x0, y0, x1, y1 float64) {
		lines.Add(draw.Segment(x0, y0, x1, y1, draw.LineMm))
		// Kept clear like a text: a label that comes close to a short line
		// reads as part of it, and none may lie over it.
		room.AddText(draw.R(ox+min(x0, x1), oy+min(y0, y1), ox+max(x0, x1), oy+max(y0, y1)).Grown(tickClearMm))
	}
	if lo.XMm < 0 && hi.XMm > 0 {
		tick(0, lo.YMm-1, 0, lo.YMm-4.5)
		tick(0, hi.YMm+1, 0, hi.YMm+3)
		lines.Add(draw.TopArrow(0, hi.YMm+3, 5))
		room.AddLine(ox, oy+hi.YMm, ox, oy+hi.YMm+8)
		text := draw.Text{XMm: 3, YMm: hi.YMm + 4.2, SizeMm: draw.TextMm, Bold: true, Content: "TOP"}
		if r := draw.TextRect(text); room.Window.Holds(draw.R(ox+r.X0, oy+r.Y0, ox+r.X1, oy+r.Y1)) {
			lines.Add(text)
			room.AddText(draw.R(ox+r.X0, oy+r.Y0, ox+r.X1, oy+r.Y1))
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
			tick(d[0]*draw.CrossOpenMm, d[1]*draw.CrossOpenMm, d[0]*centreMarkMm, d[1]*centreMarkMm)
		}
	}
}

// labelCircle writes a circle's name beside its line where there is room: at
// a large circle close to the line, at a small one as near as can be.
func labelCircle(s *draw.Sheet, room *draw.Occupied, c plan.Circle, ox, oy float64) {
	x, y, r := ox+c.CentreMm.XMm, oy+c.CentreMm.YMm, c.DiameterMm/2
	if c.Label == "" || !room.Window.Grown(-2).Meets(draw.R(x, y, x, y).Grown(r)) {
		return
	}
	for _, size := range []float64{draw.TextMm, draw.SmallMm} {
		drop := draw.DropOf(c.Label) * size
		w, h := draw.TextWidth(c.Label, size, false), draw.AscentMm*size+drop
		spot, ok := besideCircle(room, x, y, r, w, h)
		if !ok && isSmall(c) {
			spot, ok = room.Find(x, y, w, h, r+0.9, r+9, math.Atan2(c.CentreMm.YMm, c.CentreMm.XMm), room.Free)
		}
		if ok {
			room.AddText(spot)
			s.Draw.Add(draw.Text{XMm: spot.X0, YMm: spot.Y0 + drop, SizeMm: size, Content: c.Label})
			return
		}
	}
}

// besideCircle looks for room at the line of a circle, outside and then
// inside it, from the right on.
func besideCircle(room *draw.Occupied, x, y, r, w, h float64) (draw.Rect, bool) {
	for i := range 48 {
		angle := math.Pi * (0.25 - float64(i%24)/12)
		sin, cos := math.Sincos(angle)
		if i >= 24 {
			angle += math.Pi
		}
		if spot := draw.Beside(x+r*cos, y+r*sin, w, h, 1.0, angle); room.Free(spot) {
			return spot, true
		}
	}
	return draw.Rect{}, false
}
