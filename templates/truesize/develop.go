package truesize

import (
	"fmt"
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

// originRingMm is the radius of the ring about the origin of a hole in a main.
const originRingMm = 2.0

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
