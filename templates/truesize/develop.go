package truesize

import (
	"fmt"
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

// patternPadMm is the paper left around a flat pattern, patternRimMm the least.
const (
	patternPadMm = 4.0
	patternRimMm = 0.8
)

// originRingMm is the radius of the ring about the origin of a hole in a main.
const originRingMm = 2.0

// pattern is a flat pattern in the making.
type pattern struct {
	pl      *plan.Plan
	part    *plan.PartPlan
	dev     *plan.Development
	outline *canvas.Path
	lines   []patternLine
	half    bool // up to its mirror line alone
}

// patternLine is a line of the pattern with its path read, and how far it
// reaches.
type patternLine struct {
	plan.PatternLine
	path  *canvas.Path
	reach draw.Rect
}

// newPattern reads the lines of a flat pattern.
func newPattern(pl *plan.Plan, part *plan.PartPlan, dev *plan.Development) (*template, error) {
	where := fmt.Sprintf("templates: part %s, %s", part.Name, dev.Name)
	p := &pattern{pl: pl, part: part, dev: dev}
	shape := &canvas.Path{}
	for _, l := range dev.Lines {
		path, err := canvas.ParseSVGPath(string(l.Path))
		if err != nil {
			return nil, fmt.Errorf("%s: line %s: %w", where, l.Name, err)
		}
		b := path.FastBounds()
		p.lines = append(p.lines, patternLine{l, path, draw.R(b.X0, b.Y0, b.X1, b.Y1).Grown(draw.LineMm)})
		if l.Role == "edge" || l.Role == "tab" {
			shape = shape.Append(path)
		}
	}
	p.outline = shape
	lo, hi := dev.MinMm, dev.MaxMm
	if shape.Empty() || !(hi.XMm > lo.XMm && hi.YMm > lo.YMm) {
		return nil, fmt.Errorf("%s: the pattern encloses nothing", where)
	}
	bounds := draw.R(lo.XMm, lo.YMm, hi.XMm, hi.YMm)
	t := &template{part: part, dev: dev, where: where, name: dev.Title, side: "this side out", outline: shape, exact: true,
		full: bounds.Grown(patternPadMm), core: bounds.Grown(patternRimMm), legend: p.legend(), how: p.how(), draw: p.draw}
	if dev.Kind == plan.FoldPattern { // as its front is seen, TOP up
		t.side = words.Upper(parts.Front) + ", this side out"
		t.full.Y1, t.core.Y1 = hi.YMm+topRoomMm, hi.YMm+topRoomMm
	}
	if end := lo.XMm + dev.WrapMm; dev.WrapMm > 0 && end < hi.XMm {
		taped := t.core
		taped.X1 = end + patternRimMm
		t.taped = &taped
	}
	if dev.MirrorMm != nil && len(dev.Marks) == 0 {
		t.half = p.halfOf(t)
	}
	t.marks = seq.Map(dev.Marks, func(m plan.PatternMark) draw.Rect {
		return spot{pops: []plan.XY{m.CentreMm}, wideMm: m.DiameterMm}.room()
	})
	return t, nil
}

// topped tells whether a pattern shows the part as a face of it is seen, TOP up.
func (t *template) topped() bool { return t.dev != nil && t.dev.Kind == plan.FoldPattern }

// halfOf is the template of the half with the lap, or of the right one, to be
// turned over for the other.
func (p *pattern) halfOf(whole *template) *template {
	q, t := *p, *whole
	q.half = true
	x, lo, hi := *p.dev.MirrorMm, p.dev.MinMm, p.dev.MaxMm
	lap := ""
	if n := len(p.dev.Labels); n > 0 && p.dev.Kind == plan.ConePattern {
		lap = "; turned over, " + p.dev.Labels[n-1].Text + " is " + p.dev.Labels[0].Text
	}
	for _, l := range p.lines {
		if l.Role == "tab" {
			lap += "; overlap at one end only"
			if l.reach.X0 < x-1 && l.reach.X1 < x+1 {
				hi.XMm = x
			}
		}
	}
	if hi.XMm > x {
		lo.XMm = x
	}
	bounds := draw.R(lo.XMm, lo.YMm, hi.XMm, hi.YMm)
	t.full, t.core = bounds.Grown(patternPadMm), bounds.Grown(patternRimMm)
	if hi.XMm == x { // the paper beyond the centre line shows that it is one
		t.core.X1 = t.full.X1
	} else {
		t.core.X0 = t.full.X0
	}
	t.name += ", half"
	t.draw = q.draw
	for _, table := range p.dev.Tables {
		lap += words.When(!table.Drawn && table.Heads[0] == "Line", "; line names by the table")
	}
	t.legend = append(slices.Clip(t.legend), "scribe it, turn it over on the centre line, scribe again"+lap)
	return &t
}

// how says what is done along the lines.
func (p *pattern) how() string {
	switch {
	case p.dev.Kind == plan.FoldPattern:
		return "Cut along the middle of the outline, pop in the open middle of each cross, scribe the ends of the fold lines."
	case len(p.dev.Marks) > 0:
		return "Pop in the open middle of each cross, then along the outlines of windows and slots."
	case p.dev.Kind == plan.MainPattern:
		return "Punch the metal along the curve; the scale is the clock of the main."
	}
	return "Cut along the middle of the outline, or punch the metal through it."
}

// legend says what the pattern is for, where its edge goes and how it is cut.
func (p *pattern) legend() []string {
	d := p.dev
	var lines []string
	if d.Edge != "" {
		lines = append(lines, "lower edge: "+d.Edge+"; up is "+d.Beyond)
	}
	if d.Origin != "" {
		lines = append(lines, "ringed cross: "+d.Origin+"; up is "+d.Beyond)
	}
	if d.Copies > 1 {
		lines = append(lines, "cut "+strconv.Itoa(d.Copies)+" for one part")
	}
	return lines
}

func (p *pattern) unit() string { return string(p.pl.Units) }

// patternStroke is how the lines of each role are drawn.
func patternStroke(role string) (width float64, dash []float64) {
	switch role {
	case "edge", "cut", "top":
		return draw.LineMm, nil
	case "tab":
		return draw.ThinMm, nil
	case "seam":
		return draw.ThinMm, draw.ChainDash
	case "fold":
		return 0.25, draw.CutDash
	}
	return draw.HairMm, nil
}

// draw draws what lies in the window.
func (p *pattern) draw(l laid) {
	seen := l.seen()
	for _, q := range p.lines {
		if !q.reach.Meets(seen) {
			continue
		}
		width, dash := patternStroke(q.Role)
		path := q.path
		if q.Role == "top" || q.Role == "division" {
			path = p.openAtMarks(path)
		}
		l.lines.Add(draw.Shape{Path: path, Stroke: draw.Black, WidthMm: width, DashMm: dash})
		l.AddPath(q.path.Copy().Transform(l.shift()))
	}
	for _, m := range p.dev.Marks {
		if (spot{pops: []plan.XY{m.CentreMm}}).room().Meets(seen) {
			l.pop(m.CentreMm.XMm, m.CentreMm.YMm)
		}
	}
	p.scales(l)
	l.clip()
	p.texts(l)
}

// scales are TOP over what is folded, the clock and the rule of a wrap, and the clock and the origin of a hole in a main.
func (p *pattern) scales(l laid) {
	lo, hi := p.dev.MinMm, p.dev.MaxMm
	switch p.dev.Kind {
	case plan.FoldPattern:
		l.topMark(plan.XY{XMm: highest(p.outline, hi.YMm), YMm: hi.YMm + 3})
	case plan.WrapPattern:
		p.clockScale(l, draw.R(lo.XMm, 0, lo.XMm+p.dev.WrapMm, 0))
		p.axialRule(l)
	case plan.MainPattern:
		p.clockScale(l, draw.R(lo.XMm, lo.YMm, hi.XMm, lo.YMm))
		at := p.dev.OriginMm
		l.lines.Add(draw.Ring(at.XMm, at.YMm, originRingMm, draw.LineMm))
		l.AddCircle(l.ox+at.XMm, l.oy+at.YMm, originRingMm)
	}
}

// texts are the numbers of what is popped, and the names of points and lines.
func (p *pattern) texts(l laid) {
	draw.LabelMarks(l.Sheet, l.Occupied, p.marks(l))
	if p.dev.Kind == plan.WrapPattern {
		p.wrapTexts(l)
		return
	}
	towards := math.Pi / 2
	if p.dev.Kind == plan.BranchPattern {
		towards = math.Pi / 4 // beside its line, and on the part of the paper that stays
	}
	for _, text := range p.labels() {
		l.label(text, towards)
	}
	if p.taped(l) {
		seam := l.ox + p.dev.MinMm.XMm + p.dev.WrapMm
		l.along(tapeIt, canvas.Point{X: seam, Y: l.Window.Y0}, canvas.Point{X: seam, Y: l.Window.Y1})
	}
	if p.half {
		l.centreLine(l.ox + *p.dev.MirrorMm)
	}
	p.foldTexts(l)
}

// labels are the texts at points; round a thin branch, whose lines stand closer than their numbers
// are wide, every second line has one.
func (p *pattern) labels() []plan.PatternLabel {
	all := p.dev.Labels
	if p.dev.Kind != plan.BranchPattern || p.dev.WrapMm > float64(len(all))*draw.TextWidth("00", draw.TextMm, true) {
		return all
	}
	return seq.Keep(all, func(l plan.PatternLabel) bool {
		n, err := strconv.Atoi(l.Text)
		return err != nil || n%2 == 0
	})
}

// marks are the crosses that are seen, to label.
func (p *pattern) marks(l laid) (marks []draw.Mark) {
	seen := l.seen()
	for _, m := range p.dev.Marks {
		if seen.HasPoint(m.CentreMm.XMm, m.CentreMm.YMm) {
			size := m.Name
			size += words.When(m.DiameterMm > 0, " Ø"+words.Short(m.DiameterMm, p.pl.Units))
			marks = append(marks, draw.Mark{
				Number: strconv.Itoa(m.N), Group: m.Name, Size: size, X: l.ox + m.CentreMm.XMm, Y: l.oy + m.CentreMm.YMm,
				Radius: max(m.DiameterMm/2, draw.CrossArmMm), Outward: 0,
			})
		}
	}
	return marks
}

// centreLine draws the line at x that a half pattern is turned over on, if it lies in
// the window.
func (l laid) centreLine(x float64) {
	if x < l.Window.X0 || x > l.Window.X1 {
		return
	}
	l.Draw.Add(draw.Segment(x, l.Window.Y0, x, l.Window.Y1, draw.ThinMm, draw.ChainDash...))
	l.AddLine(x, l.Window.Y0, x, l.Window.Y1)
	l.along("centre line: cut along it, turn over on it", canvas.Point{X: x, Y: l.Window.Y0}, canvas.Point{X: x, Y: l.Window.Y1})
}

// openAtMarks is a straight line that leaves out the crosses on it, whose middles
// stay open for the punch.
func (p *pattern) openAtMarks(line *canvas.Path) *canvas.Path {
	pts := line.Coords()
	if len(pts) != 2 {
		return line
	}
	a, way := pts[0], pts[1].Sub(pts[0])
	length := way.Length()
	way = way.Norm(1)
	var on []float64
	for _, m := range p.dev.Marks {
		off := canvas.Point{X: m.CentreMm.XMm, Y: m.CentreMm.YMm}.Sub(a)
		if t := off.Dot(way); math.Abs(off.PerpDot(way)) < draw.CrossOpenMm && t > -draw.CrossArmMm && t < length+draw.CrossArmMm {
			on = append(on, t)
		}
	}
	slices.Sort(on)
	out, from := &canvas.Path{}, 0.0
	for _, t := range append(on, length+draw.CrossArmMm) {
		if to := min(length, t-draw.CrossArmMm); to > from+1e-9 {
			b, e := a.Add(way.Mul(from)), a.Add(way.Mul(to))
			out.MoveTo(b.X, b.Y)
			out.LineTo(e.X, e.Y)
		}
		from = t + draw.CrossArmMm
	}
	return out
}

// label writes a short text near a point, first in the direction of the angle,
// where there is room on this sheet.
func (l laid) label(text plan.PatternLabel, angle float64) {
	x, y := l.ox+text.AtMm.XMm, l.oy+text.AtMm.YMm
	if !l.Window.HasPoint(x, y) {
		return
	}
	w, h := draw.TextWidth(text.Text, draw.TextMm, true), draw.AscentMm*draw.TextMm
	spot, ok := l.Find(draw.Search{X: x, Y: y, W: w, H: h, Near: 1, Far: 6, Angle: angle}, l.Free)
	if !ok {
		spot, ok = l.Find(draw.Search{X: x, Y: y, W: w, H: h, Near: 1, Far: 14, Angle: angle}, l.ClearOfTexts)
	}
	if ok {
		l.AddText(draw.R(spot.X0, spot.Y0-draw.DropMm*draw.TextMm, spot.X1, spot.Y1))
		l.Draw.Add(draw.Text{XMm: spot.X0, YMm: spot.Y0, SizeMm: draw.TextMm, Bold: true, Content: text.Text})
	}
}

// foldTexts names the lines that are no edge, along each of them.
func (p *pattern) foldTexts(l laid) {
	for _, q := range p.lines {
		text := ""
		switch q.Role {
		case "fold", "division", "top":
			if text = q.Text; text == "" {
				continue
			}
		case "seam":
			text = "seam: the other edge meets this line"
		case "tab":
			text = "overlap"
		default:
			continue
		}
		pts := q.path.Coords()
		if len(pts) < 2 {
			continue
		}
		a, b := pts[0], pts[len(pts)-1]
		if q.Role == "tab" { // beside the seam, on the lap
			a, b = pts[len(pts)/2-1], pts[len(pts)/2]
		}
		l.along(text, canvas.Point{X: l.ox + a.X, Y: l.oy + a.Y}, canvas.Point{X: l.ox + b.X, Y: l.oy + b.Y})
	}
}

// along writes a text beside a straight line, turned with it, where the room
// allows it near the middle.
func (l laid) along(text string, from, to canvas.Point) {
	const size = draw.SmallMm
	x0, y0, x1, y1 := from.X, from.Y, to.X, to.Y
	length := math.Hypot(x1-x0, y1-y0)
	if near := draw.R(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)).Grown(2 * size); !near.Meets(l.Window) {
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
	for i := range 60 { // off other lines, then only off other texts
		off := alongFreeMm
		if i >= 30 {
			off = alongMm
		}
		at := length/2 + float64((i%30+1)/2)*4*float64(1-2*(i%2))
		if at < w/2+1 || at > length-w/2-1 {
			continue
		}
		for _, off := range []float64{off, -off - draw.AscentMm*size} {
			x, y := x0+ux*at-uy*off, y0+uy*at+ux*off
			boxes := turnedRoom(canvas.Point{X: x, Y: y}, canvas.Point{X: ux, Y: uy}, w, size)
			if l.AllClear(boxes, i < 30) {
				for b := range boxes {
					l.AddText(b)
				}
				label := draw.Text{XMm: x, YMm: y, SizeMm: size, Align: draw.Centre, RotateDeg: angle, Content: text}
				if i < 30 {
					l.Draw.Add(label)
				} else {
					l.Draw.Add(draw.Over(label)...)
				}
				return
			}
		}
	}
}

// How far a text beside a line is off it: so far that the line does not count as
// being in its way, and where others are.
const (
	alongFreeMm = 2.0
	alongMm     = 0.9
)

// turnedRoom is the room of a text w wide in the direction way, centred at a
// point: small boxes along it.
func turnedRoom(at, way canvas.Point, w, size float64) iter.Seq[draw.Rect] {
	const middle, half = (draw.AscentMm - draw.DropMm) / 2, (draw.AscentMm + draw.DropMm) / 2
	return func(yield func(draw.Rect) bool) {
		for t := -w / 2; t < w/2+size*0.4; t += size * 0.4 {
			t := min(t, w/2)
			cx, cy := at.X+way.X*t-way.Y*size*middle, at.Y+way.Y*t+way.X*size*middle
			if !yield(draw.R(cx, cy, cx, cy).Grown(size * half)) {
				return
			}
		}
	}
}
