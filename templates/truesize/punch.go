package truesize

import (
	"fmt"
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// Room round a face, in millimetres.
const (
	edgePadMm    = 5.0 // quadrant ticks outside the outline
	rimMm        = 0.6 // of an outline that fills the sheet
	tickClearMm  = 1.0 // round a quadrant tick, besides the clearance of any label
	centreMarkMm = 10.0
	discTickMm   = 4.0
)

// punch is the template of one face.
type punch struct {
	pl   *plan.Plan
	part *plan.PartPlan
	face *plan.Face // as the plan has it
	marked
	outline *canvas.Path  // face coordinates
	lo, hi  plan.XY       // its box
	extra   []plan.Circle // of other parts that the template serves too
	edgeMm  float64       // radius of the step it ends at, 0 for the whole face
}

// marked is what a template marks: the holes and slots of its own face, and of the other
// those that it carries. What the other's template carries of its own is drawn plain.
type marked struct {
	spots   []spot
	groups  []plan.Group
	drilled []plan.Circle // and the pitch circles of what is carried
}

// spot is a hole, popped in its middle, or a slot, popped at the centres of its ends.
type spot struct {
	group  string
	n      int
	at     plan.XY // its middle
	pops   []plan.XY
	wideMm float64 // its diameter or its width
	longMm float64 // a slot's length, 0 of a hole
}

// spotsOf are the holes of a face and then its slots.
func spotsOf(face *plan.Face) []spot {
	holes := seq.Map(face.Holes, func(h plan.Hole) spot {
		at := plan.XY{XMm: h.XMm, YMm: h.YMm}
		return spot{h.Group, h.N, at, []plan.XY{at}, h.DiameterMm, 0}
	})
	return append(holes, seq.Map(face.Slots, func(s plan.Slot) spot {
		return spot{s.Group, s.N, plan.XY{XMm: s.XMm, YMm: s.YMm}, s.EndsMm[:], s.WidthMm, s.LengthMm}
	})...)
}

// size is what it is made to, in words.
func (s spot) size(units parts.Units) string {
	return words.Either(s.longMm > 0, words.Short(s.wideMm, units)+" × "+words.Short(s.longMm, units), "Ø"+words.Short(s.wideMm, units))
}

// reach is how far its marks go from where it is popped.
func (s spot) reach() float64 { return max(s.wideMm/2, draw.CrossArmMm) }

// room is that of its marks, in face coordinates.
func (s spot) room() draw.Rect {
	a, b := s.pops[0], s.pops[len(s.pops)-1]
	return draw.R(min(a.XMm, b.XMm), min(a.YMm, b.YMm), max(a.XMm, b.XMm), max(a.YMm, b.YMm)).Grown(s.reach())
}

// draw draws its edge, the middle line of a slot, and a cross where it is popped.
func (s spot) draw(l laid) {
	a, b := s.pops[0], s.pops[len(s.pops)-1]
	edge := draw.SlotPath(a.XMm, a.YMm, b.XMm, b.YMm, s.wideMm)
	l.lines.Add(draw.Shape{Path: edge, Stroke: draw.Black, WidthMm: draw.ThinMm, DashMm: draw.HiddenDash})
	if s.longMm > 0 {
		l.AddPath(edge.Copy().Transform(l.shift()))
		l.lines.Add(draw.Segment(a.XMm, a.YMm, b.XMm, b.YMm, draw.HairMm, draw.ChainDash...))
	} else {
		l.AddCircle(l.ox+a.XMm, l.oy+a.YMm, s.wideMm/2)
	}
	for _, at := range s.pops {
		l.pop(at.XMm, at.YMm)
	}
}

// markedOn is what the template of a face marks; with all, also what the other face's
// template carries.
func markedOn(face *plan.Face, all bool) marked {
	var m marked
	from := map[string]parts.Face{}
	for _, g := range face.Groups {
		if g.PunchedFrom == "" || all {
			m.groups = append(m.groups, g)
		} else {
			from[g.Name] = g.PunchedFrom
		}
	}
	for _, s := range spotsOf(face) {
		if on := from[s.group]; on == "" {
			m.spots = append(m.spots, s)
		} else {
			half := plan.XY{XMm: s.pops[0].XMm - s.at.XMm, YMm: s.pops[0].YMm - s.at.YMm}
			m.drilled = append(m.drilled, plan.Circle{Label: s.group + " from the " + string(on), CentreMm: s.at, HalfMm: half, DiameterMm: s.wideMm})
		}
	}
	if c := face.Carried; c != nil {
		m.drilled = append(m.drilled, c.Circles...) // pitch circles
		m.spots, m.groups = append(m.spots, spotsOf(c)...), append(m.groups, c.Groups...)
	}
	return m
}

// numbered are numbers of a group as its template has them: with the letter of the
// face that they are of, where the template is of the other one.
func (p *punch) numbered(group string, first, count int) string {
	if c := p.face.Carried; c != nil {
		if i := slices.IndexFunc(c.Groups, func(g plan.Group) bool { return g.Name == group }); i >= 0 {
			return words.Lettered(c.Groups[i].Marked, first, count)
		}
	}
	return words.Span(first, count)
}

// newPunch reads the outline of a face.
func newPunch(pl *plan.Plan, part *plan.PartPlan, face *plan.Face, all bool) (*template, error) {
	where := fmt.Sprintf("templates: part %s, %s face", part.Name, face.Face)
	outline, err := canvas.ParseSVGPath(string(face.Outline))
	if err != nil {
		return nil, fmt.Errorf("%s: outline: %w", where, err)
	}
	lo, hi := face.MinMm, face.MaxMm
	var edge float64 // of the outermost step with nothing to mark beyond it
	for _, c := range face.Cuts {
		if !c.Outside {
			edge = c.DiameterMm / 2
			outline, lo, hi = canvas.Circle(edge), plan.XY{XMm: -edge, YMm: -edge}, plan.XY{XMm: edge, YMm: edge}
			break
		}
	}
	w, h := hi.XMm-lo.XMm, hi.YMm-lo.YMm
	if !(w > 0 && h > 0) || math.IsInf(w, 0) || math.IsInf(h, 0) || outline.Empty() {
		return nil, fmt.Errorf("%s: the outline encloses nothing", where)
	}
	p := &punch{pl: pl, part: part, face: face, marked: markedOn(face, all), outline: outline, lo: lo, hi: hi, edgeMm: edge}
	t := &template{
		part: part, punch: p, where: where, name: "Punch template, " + words.Upper(face.Face) + " face", side: words.Upper(face.Face) + ", this side out",
		outline: outline, full: draw.R(lo.XMm-edgePadMm, lo.YMm-edgePadMm, hi.XMm+edgePadMm, hi.YMm+topRoomMm),
		core: draw.R(lo.XMm-rimMm, lo.YMm-rimMm, hi.XMm+rimMm, hi.YMm+topRoomMm), legend: p.legend(), how: p.how(), draw: p.drawFace,
	}
	t.marks = seq.Map(p.spots, spot.room)
	t.spare = seq.Map(seq.Keep(p.circles(), func(c plan.Circle) bool { return p.shows(c) && isSmall(c) }), circleRect)
	top := p.top()
	t.dividers, t.topMm = p.dividers(), &top
	if !face.Round {
		t.setAt = &face.SetAt
	}
	if i := slices.IndexFunc(face.Circles, func(c plan.Circle) bool { return !c.Pitch && c.CentreMm == plan.XY{} }); i >= 0 {
		t.boreMm = face.Circles[i].DiameterMm
	}
	return t, nil
}

// how says what is popped, and what is not: the cutter or a jig makes it.
func (p *punch) how() string {
	if p.part.Knifed {
		return "Punch each hole in the middle of its cross, to the dashed ring."
	}
	const ring = " The dashed ring is the drilled size: check by it after drilling."
	var not []string
	for _, g := range p.groups {
		switch span := p.numbered(g.Name, g.First, g.Count); g.Placed {
		case "":
		case plan.ByCutter:
			not = append(not, span+" (cut already)")
		default:
			not = append(not, span+" (by jig "+g.Placed+")")
		}
	}
	switch list := words.Join(", ", not...); {
	case list == "":
		return "Pop in the open middle of each cross." + ring
	case len(not) == len(p.groups):
		return "Pop nothing: " + list + "." + ring
	default:
		return "Pop in the open middle of each cross but " + list + "." + ring
	}
}

// legend says what the numbers are, a line for each pattern.
func (p *punch) legend() []string {
	var lines []string
	for _, c := range p.cuts() {
		at := "cut along Ø" + words.Short(c.DiameterMm, p.pl.Units)
		switch {
		case c.Inside && c.ProudMm > 0:
			at += ": the disc lies " + words.Short(c.ProudMm, p.pl.Units) + " over the ring, TOP to TOP"
		case c.Inside:
			at += ": the disc lies " + words.Short(-c.ProudMm, p.pl.Units) + " under the ring, TOP to TOP"
		default:
			at += ", which stands " + words.Short(c.ProudMm, p.pl.Units) + " proud"
		}
		lines = append(lines, at)
	}
	short := func(mm float64) string { return words.Short(mm, p.pl.Units) }
	for _, g := range p.groups {
		line := p.numbered(g.Name, g.First, g.Count) + "  " + words.Join(", ", g.SizeText, g.DepthText, g.Extra, words.PitchCircle(g.PCDMm, g.PCDAboutMm, short))
		line += words.When(g.Marked != "" && g.Marked != p.face.Face, "; drawn on the "+string(g.Marked)+", mirrored here")
		lines = append(lines, line)
	}
	return lines
}

// dividers is the longest distance between two holes of a pattern, to check a
// joined template by.
func (p *punch) dividers() string {
	var text string
	var longest float64
	for _, g := range p.groups {
		for _, c := range g.Chords {
			if c.CentreMm > longest {
				longest = c.CentreMm
				within := words.Either(p.pl.Units == parts.Inches, "0.02 in", "0.5 mm")
				text = fmt.Sprintf("Dividers: %s to %s = %s, within %s.", p.numbered(g.Name, c.From, 1), p.numbered(g.Name, c.To, 1), words.Short(c.CentreMm, p.pl.Units), within)
			}
		}
	}
	return text
}

// drawFace draws what lies in the window (page coordinates), with the face's
// origin at (ox, oy). Lines are cut off at the window; labels stand whole
// inside it, and keep clear of what room holds already.
func (p *punch) drawFace(l laid) {
	onFace := l.seen()
	p.outlines(l)
	p.ticks(l)
	for _, s := range p.spots {
		if s.room().Meets(onFace) {
			s.draw(l)
		}
	}
	l.clip()

	var marks []draw.Mark
	for _, s := range p.spots {
		if onFace.Holds(s.room()) {
			marks = append(marks, draw.Mark{Number: p.numbered(s.group, s.n, 1), Group: s.group, Size: s.size(p.pl.Units),
				X: l.ox + s.at.XMm, Y: l.oy + s.at.YMm, Radius: s.wideMm / 2, Outward: math.Atan2(s.at.YMm, s.at.XMm)})
		}
	}
	draw.LabelMarks(l.Sheet, l.Occupied, marks)
	for _, c := range p.circles() {
		if p.shows(c) {
			l.nameCircle(c)
		}
	}
	for _, c := range p.cuts() {
		p.discTop(l, c)
	}
}

// circles are those of the face and of what else its template serves, and what is
// marked from the other face; a hole that is marked here is none.
func (p *punch) circles() []plan.Circle {
	all := seq.Add(slices.Concat(p.face.Circles, p.extra), p.drilled...) // patterns of both faces may share a pitch circle
	return slices.DeleteFunc(all, func(c plan.Circle) bool {
		return !c.Pitch && slices.ContainsFunc(p.spots, func(s spot) bool { return c.CentreMm == s.at && c.DiameterMm == s.wideMm })
	})
}

// shows tells whether a circle lies on the template.
func (p *punch) shows(c plan.Circle) bool {
	return p.edgeMm == 0 || math.Hypot(c.CentreMm.XMm, c.CentreMm.YMm)+c.DiameterMm/2 < p.edgeMm-1e-6
}

// cuts are the steps that the template is cut along, but for its own edge.
func (p *punch) cuts() []plan.FaceCut {
	return seq.Keep(p.face.Cuts, func(c plan.FaceCut) bool { return p.edgeMm == 0 || c.DiameterMm/2 < p.edgeMm-1e-6 })
}

// discTop marks TOP on the disc that is cut out of a stepped face.
func (p *punch) discTop(l laid, c plan.FaceCut) {
	r := c.DiameterMm / 2
	if !c.Inside || !l.Window.HasPoint(l.ox, l.oy+r) {
		return
	}
	l.Draw.Add(draw.Segment(l.ox, l.oy+r-discTickMm, l.ox, l.oy+r, draw.LineMm))
	l.AddText(draw.R(l.ox, l.oy+r-discTickMm, l.ox, l.oy+r).Grown(tickClearMm))
	w, h := draw.TextWidth("TOP", draw.SmallMm, true), draw.AscentMm*draw.SmallMm
	inside := func(spot draw.Rect) bool {
		return math.Hypot(max(spot.X1-l.ox, l.ox-spot.X0), max(spot.Y1-l.oy, l.oy-spot.Y0)) < r-0.5 && l.Free(spot)
	}
	if spot, ok := l.Find(draw.Search{X: l.ox, Y: l.oy + r - discTickMm/2, W: w, H: h, Near: 1.2, Far: 14}, inside); ok {
		l.AddText(spot)
		l.Draw.Add(draw.Text{XMm: spot.X0, YMm: spot.Y0, SizeMm: draw.SmallMm, Bold: true, Content: "TOP"})
	}
}

func (p *punch) outlines(l laid) {
	l.lines.Add(draw.Shape{Path: p.outline, Stroke: draw.Black, WidthMm: draw.LineMm})
	l.AddPath(p.outline.Copy().Transform(l.shift()))
	for _, c := range p.cuts() {
		l.lines.Add(draw.Ring(0, 0, c.DiameterMm/2, draw.LineMm, draw.CutDash...))
		l.AddCircle(l.ox, l.oy, c.DiameterMm/2)
	}
	for _, c := range p.circles() {
		if !p.shows(c) || slices.ContainsFunc(p.cuts(), func(k plan.FaceCut) bool {
			return !c.Pitch && c.CentreMm == (plan.XY{}) && math.Abs(k.DiameterMm-c.DiameterMm) < 1e-6
		}) {
			continue
		}
		x, y := c.CentreMm.XMm, c.CentreMm.YMm
		if c.Pitch {
			l.lines.Add(draw.Ring(x, y, c.DiameterMm/2, draw.HairMm, draw.ChainDash...))
		} else {
			l.lines.Add(draw.Stadium(canvas.Point{X: x, Y: y}, canvas.Point{X: c.HalfMm.XMm, Y: c.HalfMm.YMm}, c.DiameterMm/2, 0.25))
		}
		l.AddCircle(l.ox+x, l.oy+y, c.DiameterMm/2)
	}
}

// ticks draws the quadrant ticks outside the outline, the TOP mark above it
// and the centre mark.
func (p *punch) ticks(l laid) {
	lo, hi := p.lo, p.hi
	tick := func(x0, y0, x1, y1 float64) {
		l.lines.Add(draw.Segment(x0, y0, x1, y1, draw.LineMm))
		// Kept clear like a text: a label that comes close to a short line
		// reads as part of it, and none may lie over it.
		l.AddText(draw.R(l.ox+min(x0, x1), l.oy+min(y0, y1), l.ox+max(x0, x1), l.oy+max(y0, y1)).Grown(tickClearMm))
	}
	top := p.top()
	if lo.XMm < 0 && hi.XMm > 0 {
		tick(0, lo.YMm-1, 0, lo.YMm-4.5)
		tick(0, hi.YMm+1, 0, hi.YMm+3)
	}
	l.topMark(top)
	if lo.YMm < 0 && hi.YMm > 0 {
		tick(lo.XMm-4.5, 0, lo.XMm-1, 0)
		tick(hi.XMm+1, 0, hi.XMm+4.5, 0)
	}
	if slices.ContainsFunc(p.spots, func(s spot) bool {
		return slices.ContainsFunc(s.pops, func(at plan.XY) bool { return geom.Distance(at, plan.XY{}) < s.reach()+1 })
	}) {
		return
	}
	if lo.XMm < 0 && hi.XMm > 0 && lo.YMm < 0 && hi.YMm > 0 {
		for _, d := range [4][2]float64{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
			tick(d[0]*draw.CrossOpenMm, d[1]*draw.CrossOpenMm, d[0]*centreMarkMm, d[1]*centreMarkMm)
		}
	}
}

// top is where TOP is marked: over the origin, or where that lies in a corner over what
// is highest.
func (p *punch) top() plan.XY {
	at := plan.XY{YMm: p.hi.YMm + 3}
	if p.lo.XMm >= 0 || p.hi.XMm <= 0 {
		at.XMm = highest(p.outline, p.hi.YMm)
	}
	return at
}

// highest is the middle of what of an outline reaches up to y.
func highest(outline *canvas.Path, y float64) float64 {
	left, right := math.Inf(1), math.Inf(-1)
	for _, q := range outline.Flatten(draw.FlatMm).Coords() {
		if q.Y > y-nearEdgeMm {
			left, right = min(left, q.X), max(right, q.X)
		}
	}
	return (left + right) / 2
}
