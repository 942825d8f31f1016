package develop

import (
	"fmt"
	"math"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

// rolledSteps is the least number of flat strips a rolled surface is unrolled
// in. A chord of half a degree is 3 millionths shorter than its arc.
const rolledSteps = 720

// Space is a point of the finished part in millimetres: x right and y up
// looking at the front face (the base), depth away from that face.
type Space struct{ XMm, YMm, DepthMm float64 }

func (s Space) minus(o Space) Space {
	return Space{s.XMm - o.XMm, s.YMm - o.YMm, s.DepthMm - o.DepthMm}
}

func (s Space) dot(o Space) float64 { return s.XMm*o.XMm + s.YMm*o.YMm + s.DepthMm*o.DepthMm }

// cross is the vector product. Depth runs away from the viewer, so x, y and
// depth form a left-handed frame; the product is that of the same arrows in a
// right-handed one.
func (s Space) cross(o Space) Space {
	return Space{
		s.DepthMm*o.YMm - s.YMm*o.DepthMm,
		s.XMm*o.DepthMm - s.DepthMm*o.XMm,
		s.YMm*o.XMm - s.XMm*o.YMm,
	}
}

// DistanceMm returns the distance between two points of the part.
func (s Space) DistanceMm(o Space) float64 {
	d := s.minus(o)
	return math.Hypot(math.Hypot(d.XMm, d.YMm), d.DepthMm)
}

// Line is one line of a triangulated part from its base to its top.
type Line struct {
	// Label is the number on the pattern.
	Label string
	// Base and Top are its ends on the part.
	Base, Top Space
	// TrueMm is its true length.
	TrueMm float64
	// BendDeg is how far the surface turns: for a faceted part the bend at
	// this line, for a rolled one the turn from this line to the next.
	// Positive bends away from somebody looking at the marks; at the seam it
	// is the angle the two edges must meet at.
	BendDeg float64
}

// StripPattern is the flat pattern of a part unrolled from line to line.
type StripPattern struct {
	// Pieces are the flat pieces in clock order from the seam.
	Pieces []Development
	// Lines are the marked lines all round, the seam once.
	Lines []Line
	// AreaMm2 is the area of all pieces without laps.
	AreaMm2 float64
}

// rung is one line of the strip; the surface between two rungs is flat.
type rung struct {
	base, top Space
	label     string // empty for an unmarked line
	cut       bool   // a piece may end here
	flat      bool   // the line lies in a flat and is never bent
}

// strip is a closed band of rungs in clock order; the last repeats the first.
type strip struct {
	title   string
	rungs   []rung
	faceted bool
	lapMm   float64
	// girths in space by formula, for the check
	baseGirthMm, topGirthMm float64
}

// unroll lays the rungs flat, each by its true distances to the one before,
// with the base down, clock order to the right and the middle rung upright.
func unroll(rungs []rung) (base, top []Point) {
	base, top = make([]Point, len(rungs)), make([]Point, len(rungs))
	top[0] = Point{XMm: 0, YMm: rungs[0].base.DistanceMm(rungs[0].top)}
	for i := 1; i < len(rungs); i++ {
		a, b := rungs[i-1], rungs[i]
		base[i], top[i] = base[i-1], top[i-1]
		if b.base != a.base {
			base[i] = swing(base[i-1], top[i-1], a.base.DistanceMm(b.base), a.top.DistanceMm(b.base))
		}
		if b.top != a.top {
			top[i] = swing(base[i], top[i-1], b.base.DistanceMm(b.top), a.top.DistanceMm(b.top))
		}
	}
	up := top[len(top)/2].Minus(base[len(base)/2])
	up = up.Times(1 / up.LengthMm())
	turn := func(p Point) Point { return Point{XMm: p.Cross(up), YMm: p.Dot(up)} }
	for i := range base {
		base[i], top[i] = turn(base[i]), turn(top[i])
	}
	box := geom.BoxOf(base...).Join(geom.BoxOf(top...))
	for i := range base {
		base[i], top[i] = base[i].Minus(box.Min), top[i].Minus(box.Min)
	}
	return base, top
}

// swing returns the point at distance fromP from p and fromQ from q, to the
// right of the way from p to q.
func swing(p, q Point, fromP, fromQ float64) Point {
	d := q.Minus(p)
	l := d.LengthMm()
	d = d.Times(1 / l)
	along := (fromP*fromP - fromQ*fromQ + l*l) / (2 * l)
	aside := math.Sqrt(math.Max(0, fromP*fromP-along*along))
	return p.Plus(d.Times(along)).Plus(Point{XMm: d.YMm, YMm: -d.XMm}.Times(aside))
}

// develop cuts the strip in pieces at cut rungs, as evenly as these allow,
// and unrolls each.
func (s strip) develop(pieces int) (StripPattern, error) {
	var cuts []int
	for i, r := range s.rungs {
		if r.cut {
			cuts = append(cuts, i)
		}
	}
	spans := len(cuts) - 1
	if pieces > spans {
		return StripPattern{}, refuse("%d pieces, but the part can be cut in %d at most", pieces, spans)
	}
	p := StripPattern{Lines: s.lines()}
	baseSum, topSum, trueArea := 0.0, 0.0, 0.0
	for k := range pieces {
		from, to := cuts[spans*k/pieces], cuts[spans*(k+1)/pieces]
		part := s.rungs[from : to+1]
		base, top := unroll(part)
		var d Development
		if !s.draw(&d, part, base, top) {
			return StripPattern{}, refuse("%s: the flat pattern overlaps itself, make it in more pieces", s.named(k, pieces))
		}
		p.AreaMm2 += d.Curves[0].AreaMm2()
		for i := 1; i < len(part); i++ {
			baseSum += geom.Distance(base[i], base[i-1])
			topSum += geom.Distance(top[i], top[i-1])
			trueArea += trueAreaMm2(part[i-1].base, part[i-1].top, part[i].base) + trueAreaMm2(part[i].base, part[i-1].top, part[i].top)
		}
		p.Pieces = append(p.Pieces, d)
	}
	check := Table{Title: "check of the pattern", Columns: []Column{{"on the sheet", ""}, {"on the part", ""}}, Rows: []Row{
		{"edge of base", []float64{baseSum, s.baseGirthMm}, "mm"},
		{"edge of top", []float64{topSum, s.topGirthMm}, "mm"},
		{"area", []float64{p.AreaMm2, trueArea}, "mm2"},
	}}
	for _, r := range check.Rows {
		if math.Abs(r.Values[0]-r.Values[1]) > 1e-6*(1+math.Abs(r.Values[1])) {
			return StripPattern{}, refuse("%s: %s is %.6g flat and %.6g formed, the shape is too extreme", s.title, r.Label, r.Values[0], r.Values[1])
		}
	}
	for i := range p.Pieces {
		p.Pieces[i].Tables = append(p.Pieces[i].Tables, check)
	}
	return p, nil
}

// named names one of the pieces.
func (s strip) named(k, pieces int) string {
	if pieces == 1 {
		return s.title
	}
	return fmt.Sprintf("%s, piece %d of %d", s.title, k+1, pieces)
}

func trueAreaMm2(a, b, c Space) float64 {
	n := b.minus(a).cross(c.minus(a))
	return math.Sqrt(n.dot(n)) / 2
}

// fit develops in as few pieces of the choices as lie flat without
// overlapping and fit the sheet; a sheet of 0 × 0 has no limit.
func (s strip) fit(choices []int, sheetWidthMm, sheetHeightMm float64) (StripPattern, error) {
	var last error
	for _, pieces := range choices {
		p, err := s.develop(pieces)
		if err != nil {
			last = err
			continue
		}
		last = nil
		for i := range p.Pieces {
			if size := p.Pieces[i].Box().Size(); !fitsSheet(size, sheetWidthMm, sheetHeightMm) {
				last = refuse("%s needs %v × %v, the sheet is %v × %v", s.named(i, pieces), lookup.Mm(size.XMm), lookup.Mm(size.YMm), lookup.Mm(sheetWidthMm), lookup.Mm(sheetHeightMm))
			}
		}
		if last == nil {
			return p, nil
		}
	}
	return StripPattern{}, last
}

// draw adds outline, lap, lines, labels and the line table of one piece; false for one that overlaps itself.
func (s strip) draw(d *Development, part []rung, base, top []Point) bool {
	n := len(part) - 1
	var ring []Point
	add := func(p Point) {
		if len(ring) == 0 || ring[len(ring)-1] != p {
			ring = append(ring, p)
		}
	}
	for _, p := range base {
		add(p)
	}
	for i := n; i >= 0; i-- {
		add(top[i])
	}
	d.Curves = append(d.Curves, polygon(ring...))
	whole := s.drawLap(d, ring, [2]Point{base[n], top[n]})
	d.Blank = polygon(whole...)
	s.drawLines(d, part, base, top)
	return !crossesItself(whole)
}

// drawLap adds the lap beside the last line, from base to top, and returns the
// ring of the piece with it.
func (s strip) drawLap(d *Development, ring []Point, last [2]Point) []Point {
	if s.lapMm == 0 {
		return ring
	}
	base, top := last[0], last[1]
	up := top.Minus(base)
	out := Point{XMm: up.YMm, YMm: -up.XMm}.Times(s.lapMm / up.LengthMm())
	lap := []Point{base, base.Plus(out), top.Plus(out), top}
	d.Curves = append(d.Curves, polyline("lap", Tab, lap...), polyline("seam", Seam, base, top))
	var whole []Point
	for _, p := range ring {
		whole = append(whole, p)
		if p == base {
			whole = append(whole, lap[1:len(lap)-1]...)
		}
	}
	return whole
}

// drawLines adds the marked lines, their labels and their table.
func (s strip) drawLines(d *Development, part []rung, base, top []Point) {
	n := len(part) - 1
	t := Table{Title: "lines", Drawn: true, Columns: []Column{
		{"base x", "mm"}, {"base y", "mm"}, {"top x", "mm"}, {"top y", "mm"}, {"length", "mm"},
		{"base to next", "mm"}, {"top to next", "mm"}, {"next base to this top", "mm"},
	}}
	var marked []int
	for i, r := range part {
		if r.label != "" { // the first and the last are
			marked = append(marked, i)
		}
	}
	for k, i := range marked {
		if i > 0 && i < n {
			role := Division
			if s.faceted && !part[i].flat {
				role = Fold
			}
			d.Curves = append(d.Curves, polyline(part[i].label, role, base[i], top[i]))
		}
		d.Labels = append(d.Labels, Label{part[i].label, base[i].Plus(top[i]).Times(0.5)})
		row := []float64{base[i].XMm, base[i].YMm, top[i].XMm, top[i].YMm, geom.Distance(base[i], top[i]), 0, 0, 0}
		if k+1 < len(marked) {
			j := marked[k+1]
			row[5], row[6], row[7] = geom.Distance(base[i], base[j]), geom.Distance(top[i], top[j]), geom.Distance(top[i], base[j])
		}
		t.Rows = append(t.Rows, Row{Label: part[i].label, Values: row})
	}
	d.Tables = []Table{t}
}

// lines returns the marked lines with their bends.
func (s strip) lines() []Line {
	n := len(s.rungs) - 1
	normals := make([]Space, n) // outward, of the flat between rung i and i+1
	for i := range n {
		a, b := s.rungs[i], s.rungs[i+1]
		side := b.base.minus(a.base)
		if b.base == a.base {
			side = b.top.minus(a.top)
		}
		v := side.cross(a.top.minus(a.base))
		l := math.Sqrt(v.dot(v))
		normals[i] = Space{v.XMm / l, v.YMm / l, v.DepthMm / l}
	}
	bend := func(i int) float64 {
		before, after := normals[(i+n-1)%n], normals[i]
		axis := s.rungs[i].top.minus(s.rungs[i].base)
		length := math.Sqrt(axis.dot(axis))
		return deg(math.Atan2(before.cross(after).dot(axis)/length, before.dot(after)))
	}
	var out []Line
	for i := range n {
		r := s.rungs[i]
		own := bend(i)
		if i > 0 {
			back := s.rolledBackDeg(i, own)
			out[len(out)-1].BendDeg += back
			own -= back
		}
		if r.label != "" {
			out = append(out, Line{Label: r.label, Base: r.base, Top: r.top, TrueMm: r.base.DistanceMm(r.top), BendDeg: own})
		}
	}
	return out
}

// rolledBackDeg is what counts to the line before of the bend at a rung: all of it at one
// between lines, half where the surface is round on both sides of a line, and all where
// it is round before and flat behind.
func (s strip) rolledBackDeg(i int, bendDeg float64) float64 {
	round := func(k int) bool { return s.rungs[k].label == "" }
	switch {
	case round(i) || round(i-1) && !round(i+1):
		return bendDeg
	case round(i - 1):
		return bendDeg / 2
	}
	return 0
}

// crossesItself reports whether two edges of the closed ring of points that
// do not follow each other meet.
func crossesItself(ring []Point) bool {
	n := len(ring)
	for i := range n {
		a, b := ring[i], ring[(i+1)%n]
		for j := i + 2; j < n; j++ {
			if i == 0 && j == n-1 {
				continue
			}
			c, d := ring[j], ring[(j+1)%n]
			ab, cd := b.Minus(a), d.Minus(c)
			if ab.Cross(c.Minus(a))*ab.Cross(d.Minus(a)) < 0 && cd.Cross(a.Minus(c))*cd.Cross(b.Minus(c)) < 0 {
				return true
			}
		}
	}
	return false
}
