package templates

import (
	"math"
	"slices"
	"strconv"

	"github.com/tdewolff/canvas"

	"centrepop/layout"
	"centrepop/parts"
)

// stackPart is a part in the picture of an assembly.
type stackPart struct {
	layout.Placed
	section *layout.Section
	n       int     // its balloon
	lo, hi  float64 // where it lies on the assembly's axis
	joined  bool    // an end of this joint
}

// z takes a distance from the part's front face to the assembly's axis.
func (p *stackPart) z(mm float64) float64 {
	if p.Flipped {
		return p.FrontMm - mm
	}
	return p.FrontMm + mm
}

// span is where a feature of the part lies on the assembly's axis.
func (p *stackPart) span(e layout.JointEnd) (lo, hi float64) {
	a, b := p.z(e.FromMm), p.z(e.ToMm)
	return min(a, b), max(a, b)
}

// stackView is the picture of an assembly in the making: what it shows, and
// how it lies on paper.
type stackView struct {
	parts      []*stackPart
	a, b       *stackPart
	z0, z1     float64 // the window along the axis
	rMin, rMax float64 // and out from it
	scale      float64
	x0, axis   float64 // paper place of z0 and of the axis
	full       bool    // both sides of the axis
}

// newStack gathers the parts of a joint that have a section; ok is false if
// either end is not placed.
func newStack(plan *layout.Plan, j *layout.JointPlan) (v *stackView, ok bool) {
	v = &stackView{}
	for _, q := range j.Placed {
		part := partNamed(plan, q.Part)
		if part == nil || part.Section == nil || part.Section.LengthMm <= 0 || part.Section.MaxMm <= 0 {
			continue
		}
		p := &stackPart{Placed: q, section: part.Section}
		a, b := p.z(0), p.z(part.Section.LengthMm)
		p.lo, p.hi = min(a, b), max(a, b)
		switch {
		case q.Part == j.A.Part && q.Copy == j.A.Copy:
			v.a, p.joined = p, true
		case q.Part == j.B.Part && q.Copy == j.B.Copy:
			v.b, p.joined = p, true
		}
		v.parts = append(v.parts, p)
	}
	return v, v.a != nil && v.b != nil
}

// frame chooses the window: the two parts of the joint, but of a long one
// only the stretch around the joint.
func (v *stackView) frame(j *layout.JointPlan) {
	r := max(v.a.section.MaxMm, v.b.section.MaxMm)
	lo, hi := min(v.a.lo, v.b.lo), max(v.a.hi, v.b.hi)
	at := v.where(j)
	reach := 2.4 * r
	for _, p := range []*stackPart{v.a, v.b} {
		// A short part is shown whole.
		if p.hi-p.lo < 2*reach {
			reach = max(reach, min(max(p.hi-at, at-p.lo), 3.4*r))
		}
	}
	v.z0, v.z1 = max(lo, at-reach), min(hi, at+reach)
	pad := 0.06 * (v.z1 - v.z0)
	if v.z0 == lo {
		v.z0 -= pad
	}
	if v.z1 == hi {
		v.z1 += pad
	}
	v.rMax = r
	var seen []*stackPart
	for _, p := range v.parts {
		if p.hi > v.z0 && p.lo < v.z1 {
			v.rMax = max(v.rMax, min(p.section.MaxMm, 1.35*r))
			seen = append(seen, p)
		}
	}
	v.parts = seen
	v.parts = slices.DeleteFunc(v.parts, func(p *stackPart) bool { return p == v.a || p == v.b })
	v.parts = append([]*stackPart{v.a, v.b}, v.parts...)
	for i, p := range v.parts {
		p.n = i + 1
	}
}

// where is the joint's place on the axis.
func (v *stackView) where(j *layout.JointPlan) float64 {
	if j.Bolt == nil && j.A.ToMm > j.A.FromMm && j.B.ToMm > j.B.FromMm {
		a0, a1 := v.a.span(j.A)
		b0, b1 := v.b.span(j.B)
		if lo, hi := max(a0, b0), min(a1, b1); lo <= hi {
			return (lo + hi) / 2
		}
		return (a0 + a1 + b0 + b1) / 4
	}
	return (max(v.a.lo, v.b.lo) + min(v.a.hi, v.b.hi)) / 2
}

// at takes a point of the assembly to paper; side is +1 above the axis.
func (v *stackView) at(z, r, side float64) (x, y float64) {
	return v.x0 + (z-v.z0)*v.scale, v.axis + side*(r-v.rMin)*v.scale
}

// metal is a part's cut surface in z and r of the assembly, inside the window.
func (v *stackView) metal(p *stackPart) []layout.XY {
	var out []layout.XY
	for _, q := range cutPoints(p.section) {
		out = append(out, layout.XY{XMm: p.z(q.XMm), YMm: q.YMm})
	}
	out = clipHalf(out, func(q layout.XY) float64 { return q.XMm - v.z0 })
	out = clipHalf(out, func(q layout.XY) float64 { return v.z1 - q.XMm })
	if v.rMin > 0 {
		out = clipHalf(out, func(q layout.XY) float64 { return q.YMm - v.rMin })
	}
	return clipHalf(out, func(q layout.XY) float64 { return v.rMax*1.001 - q.YMm })
}

// clipHalf keeps the side of a polygon where inside is not negative
// (Sutherland and Hodgman).
func clipHalf(points []layout.XY, inside func(layout.XY) float64) []layout.XY {
	var out []layout.XY
	for i, q := range points {
		p := points[(i+len(points)-1)%len(points)]
		dp, dq := inside(p), inside(q)
		if dp*dq < 0 {
			t := dp / (dp - dq)
			out = append(out, layout.XY{XMm: p.XMm + t*(q.XMm-p.XMm), YMm: p.YMm + t*(q.YMm-p.YMm)})
		}
		if dq >= 0 {
			out = append(out, q)
		}
	}
	return out
}

// reach is where a part has metal at a place of the axis: from the bore to
// the outside; ok is false beyond its ends.
func (p *stackPart) reach(z float64) (inner, outer float64, ok bool) {
	own := z - p.FrontMm
	if p.Flipped {
		own = -own
	}
	outer, ok = along(p.section.Outer, own)
	inner, _ = along(p.section.Inner, own)
	return inner, outer, ok && outer > inner
}

// along is the radius of a contour at z.
func along(line []layout.XY, z float64) (float64, bool) {
	for i := 0; i+1 < len(line); i++ {
		a, b := line[i], line[i+1]
		if a.XMm <= z && z <= b.XMm && b.XMm > a.XMm {
			return a.YMm + (b.YMm-a.YMm)*(z-a.XMm)/(b.XMm-a.XMm), true
		}
	}
	return 0, false
}

// hatching tells the parts apart by the slope and the spacing of the lines.
var hatching = []struct{ deg, pitchMm float64 }{{45, 2.4}, {135, 2.4}, {20, 3.4}, {110, 3.4}, {70, 3.0}, {160, 3.0}, {0, 2.8}, {90, 2.8}}

// hatchAt draws a cut surface white with lines at an angle.
func hatchAt(d *Drawing, cut *canvas.Path, deg, pitch, edgeMm float64) {
	d.Add(Shape{Path: cut, Fill: White})
	b := cut.Bounds()
	cx, cy := (b.X0+b.X1)/2, (b.Y0+b.Y1)/2
	sin, cos := math.Sincos(deg * math.Pi / 180)
	half := math.Hypot(b.W(), b.H())/2 + pitch
	lines := &canvas.Path{}
	// The lines lie on a grid of the paper, so that the two halves of a part
	// match.
	off := math.Mod(-cx*sin+cy*cos, pitch)
	for k := -math.Ceil(half/pitch) * pitch; k <= half; k += pitch {
		ox, oy := cx-sin*(k-off), cy+cos*(k-off)
		lines.MoveTo(ox-cos*half, oy-sin*half)
		lines.LineTo(ox+cos*half, oy+sin*half)
	}
	inner := &Drawing{Items: []Item{Shape{Path: lines, Stroke: Black, WidthMm: hairMm}}}
	d.Add(Group{Drawing: inner, Transform: canvas.Identity, Clip: cut})
	d.Add(Shape{Path: cut, Stroke: Black, WidthMm: edgeMm})
}

// stackPictures draws the joint's parts in section as they stand together, and
// the list of their names. Parts that share no axis are drawn apart.
func stackPictures(plan *layout.Plan, j *layout.JointPlan, width, maxHeight float64) []piece {
	v, ok := newStack(plan, j)
	if !ok {
		return apartPictures(plan, j, width, maxHeight*0.75)
	}
	v.frame(j)
	const sidePad = 17.0 // for the arrow
	high := maxHeight - balloonRowMm - captionMm
	var beside []panel
	if b := j.Bolt; b != nil && len(b.OrderDeg) > 1 {
		beside = append(beside, tightenPanel(j, b))
	}
	v.fit(width-2*sidePad-61, high)
	if d, ok := v.detail(plan, j, high); ok && j.Bolt == nil {
		beside = append(beside, d)
	}
	used := 0.0
	for _, q := range beside {
		used += q.width
	}
	if width-used < 90 {
		used = 0
	}
	v.fit(width-2*sidePad-used, high)
	h := (v.rMax - v.rMin) * v.scale
	if v.full {
		h *= 2
	}
	w := (v.z1 - v.z0) * v.scale
	p := panel{width: max(w+2*sidePad, balloonStepMm*float64(len(v.parts)), 70), height: balloonRowMm + h + captionMm + 2}
	v.x0 = (p.width - w) / 2
	v.axis = -balloonRowMm - (v.rMax-v.rMin)*v.scale
	v.draw(plan, j, &p)
	rows := panelRows(append([]panel{p}, beside...), width)
	rows = rows[:len(rows)-1]
	for i := range rows {
		rows[i].keep = true
	}
	return append(append(rows, v.legendAt(width)...), space(3))
}

// fit chooses the scale for a room, and whether both sides of the axis are
// drawn, only one, or of wide rings only the metal.
func (v *stackView) fit(width, height float64) {
	span := v.z1 - v.z0
	bore := v.rMax
	for _, p := range v.parts {
		for _, q := range cutPoints(p.section) {
			bore = min(bore, q.YMm)
		}
	}
	bore *= 0.9
	full, half := min(width/span, height/(2*v.rMax)), min(width/span, 0.9*height/v.rMax)
	rings := min(width/span, 0.9*height/(v.rMax-bore))
	v.full, v.scale, v.rMin = false, half, 0
	switch {
	case rings > 1.3*half && rings > 1.6*full:
		v.scale, v.rMin = rings, bore
	case full*1.3 > half:
		v.full, v.scale = true, full
	}
}

// detail draws the joint itself much larger; ok is false where that would not
// be much larger than the whole.
func (v *stackView) detail(plan *layout.Plan, j *layout.JointPlan, high float64) (panel, bool) {
	const width = 61.0
	if j.A.DiameterMm <= 0 || j.B.DiameterMm <= 0 || j.A.ToMm <= j.A.FromMm || j.B.ToMm <= j.B.FromMm {
		return panel{}, false
	}
	a0, a1 := v.a.span(j.A)
	b0, b1 := v.b.span(j.B)
	lo, hi := max(a0, b0), min(a1, b1)
	if hi <= lo {
		return panel{}, false
	}
	r := (j.A.DiameterMm + j.B.DiameterMm) / 4
	half := 0.95 * (hi - lo)
	if j.Weld != nil {
		half = max(half, 2.5*j.Weld.LegMm)
	}
	if j.Bearing != nil {
		half = max(half, 0.75*math.Abs(j.B.DiameterMm-j.A.DiameterMm)/2)
	}
	d := *v
	d.full = false
	mid := (lo + hi) / 2
	d.z0, d.z1 = mid-half, mid+half
	d.rMin, d.rMax = max(0, r-half), r+half
	d.scale = min((width-8)/(d.z1-d.z0), high/(d.rMax-d.rMin))
	if d.scale < 1.5*v.scale {
		return panel{}, false
	}
	w, h := (d.z1-d.z0)*d.scale, (d.rMax-d.rMin)*d.scale
	p := panel{width: width, height: h + captionMm + 2}
	d.x0, d.axis = (width-w)/2, -h
	for i := len(d.parts) - 1; i >= 0; i-- {
		if points := d.metal(d.parts[i]); len(points) > 2 {
			look := hatching[i%len(hatching)]
			edge := thinMm
			if d.parts[i].joined {
				edge = 0.5
			}
			hatchAt(&p.draw, d.path(points, 1), look.deg, look.pitchMm, edge)
		}
	}
	d.bearings(plan, j, &p, 1)
	d.welds(plan, j, &p, 1)
	p.draw.Add(box(rect{d.x0, -h, d.x0 + w, 0}, lineMm))
	p.draw.Add(Text{XMm: width / 2, YMm: -p.height + 1.6, SizeMm: textMm, Align: Centre, Content: "The joint, larger"})
	return p, true
}

// legendAt names the balloons; in two columns where there is room.
func (v *stackView) legendAt(width float64) []piece {
	columns := 1
	if width > 150 {
		columns = 2
	}
	w := width/float64(columns) - 2
	rows := (len(v.parts) + columns - 1) / columns
	var out []piece
	for i := range rows {
		row := piece{height: 5}
		for k := range columns {
			n := i + k*rows
			if n >= len(v.parts) {
				continue
			}
			p := v.parts[n]
			name := strconv.Itoa(p.n) + "  " + p.Title
			text, size := shrink(name, 3.8, p.joined, w)
			row.draw.Add(Text{XMm: float64(k) * (width/float64(columns) + 1), YMm: -3.8, SizeMm: size, Bold: p.joined, Content: text})
		}
		out = append(out, row)
	}
	return out
}

// draw draws the stack, what joins it, the arrow and the balloons.
func (v *stackView) draw(plan *layout.Plan, j *layout.JointPlan, p *panel) {
	sides := []float64{1}
	if v.full {
		sides = []float64{1, -1}
	}
	// Those of the joint last, so that their edges lie on top.
	for i := len(v.parts) - 1; i >= 0; i-- {
		part := v.parts[i]
		points := v.metal(part)
		if len(points) < 3 {
			continue
		}
		edge := thinMm
		if part.joined {
			edge = 0.5
		}
		look := hatching[i%len(hatching)]
		if v.full && len(part.section.Inner) == 0 {
			// A solid part is one surface across the axis.
			both := slices.Clone(points)
			both = slices.DeleteFunc(both, func(q layout.XY) bool { return q.YMm == 0 })
			for k := len(both) - 1; k >= 0; k-- {
				both = append(both, layout.XY{XMm: both[k].XMm, YMm: -both[k].YMm})
			}
			hatchAt(&p.draw, v.path(both, 1), look.deg, look.pitchMm, edge)
			continue
		}
		for _, side := range sides {
			hatchAt(&p.draw, v.path(points, side), look.deg, look.pitchMm, edge)
		}
	}
	for _, side := range sides {
		v.bearings(plan, j, p, side)
		v.welds(plan, j, p, side)
		v.bolts(plan, j, p, side)
	}
	left, _ := v.at(v.z0, 0, 1)
	right, _ := v.at(v.z1, 0, 1)
	if v.rMin == 0 {
		p.draw.Add(segment(left-3, v.axis, right+3, v.axis, thinMm, chainDash...))
	}
	for _, part := range v.parts {
		for _, z := range []float64{v.z0, v.z1} {
			if inner, outer, ok := part.reach(z); ok && part.lo < z-1e-9 && part.hi > z+1e-9 && inner < v.rMax {
				outer, inner = min(outer, v.rMax), max(inner, v.rMin)
				if v.full && inner == 0 {
					p.draw.Add(v.breakLine(z, -outer, outer, 1))
					continue
				}
				for _, side := range sides {
					p.draw.Add(v.breakLine(z, inner, outer, side))
				}
			}
		}
	}
	v.arrow(j, p)

	caption := "Cut along the axis. The clock is seen from the left."
	if v.rMin > 0 {
		caption = "The rings cut, axis below. Clock seen from the left."
	} else if !v.full {
		caption = "Half section. The clock is seen from the left."
	}
	if j.Bearing != nil {
		caption = "Small arrows: how cup and cone go in. The clock is seen from the left."
	}
	caption, size := shrink(caption, textMm, false, p.width)
	p.draw.Add(Text{XMm: p.width / 2, YMm: -p.height + 1.6, SizeMm: size, Align: Centre, Content: caption})

	var spots []spot
	for _, part := range v.parts {
		if z, r, ok := v.spotOn(part); ok {
			x, y := v.at(z, r, 1)
			spots = append(spots, spot{part.n, x, y})
		}
	}
	balloonRow(p, spots)
}

func (v *stackView) path(points []layout.XY, side float64) *canvas.Path {
	path := &canvas.Path{}
	for i, q := range points {
		x, y := v.at(q.XMm, q.YMm, side)
		if i == 0 {
			path.MoveTo(x, y)
		} else {
			path.LineTo(x, y)
		}
	}
	path.Close()
	return path
}

// breakLine is the zigzag where a part goes on beyond the picture.
func (v *stackView) breakLine(z, from, to, side float64) Shape {
	x, y0 := v.at(z, from, side)
	_, y1 := v.at(z, to, side)
	y0, y1 = min(y0, y1)-1.5, max(y0, y1)+1.5
	path := &canvas.Path{}
	path.MoveTo(x, y0)
	n := max(1, int((y1-y0)/8))
	for i := range n {
		m := y0 + (y1-y0)*(float64(i)+0.5)/float64(n)
		path.LineTo(x, m-1.2)
		path.LineTo(x-1.4, m-0.4)
		path.LineTo(x+1.4, m+0.4)
		path.LineTo(x, m+1.2)
	}
	path.LineTo(x, y1)
	return Shape{Path: path, Stroke: Black, WidthMm: thinMm}
}

// spotOn finds a place in a part's metal for the end of a leader, where no
// other part lies over it.
func (v *stackView) spotOn(p *stackPart) (z, r float64, ok bool) {
	lo, hi := max(p.lo, v.z0), min(p.hi, v.z1)
	best := 0.0
	for i := range 19 {
		at := lo + (hi-lo)*(float64(i)+1)/20
		inner, outer, there := p.reach(at)
		if !there {
			continue
		}
		outer = min(outer, v.rMax)
		if score := min(outer-inner, 0.5*v.rMax) - 0.05*math.Abs(at-(lo+hi)/2); outer > inner && (score > best || !ok) {
			best, ok = score, true
			z, r = at, inner+(outer-inner)*0.6
		}
	}
	return z, r, ok
}

// bearings draws each bearing made so far as a crossed box.
func (v *stackView) bearings(plan *layout.Plan, now *layout.JointPlan, p *panel, side float64) {
	for _, j := range plan.Joints {
		if j.N > now.N || j.Bearing == nil {
			continue
		}
		shaft, housing := v.find(j.A), v.find(j.B)
		if shaft == nil || housing == nil || j.A.DiameterMm >= j.B.DiameterMm {
			continue
		}
		a0, a1 := shaft.span(j.A)
		b0, b1 := housing.span(j.B)
		lo, hi := max(a0, b0, v.z0), min(a1, b1, v.z1)
		if hi <= lo {
			lo, hi = max(b0, v.z0), min(b1, v.z1)
		}
		if hi <= lo {
			continue
		}
		x0, y0 := v.at(lo, j.A.DiameterMm/2, side)
		x1, y1 := v.at(hi, j.B.DiameterMm/2, side)
		width := thinMm
		if j == now {
			width = 0.7
		}
		p.draw.Add(Shape{Path: polygon(x0, y0, x1, y0, x1, y1, x0, y1), Fill: White, Stroke: Black, WidthMm: width})
		p.draw.Add(segment(x0, y0, x1, y1, width), segment(x0, y1, x1, y0, width))
		if j == now {
			v.ringArrow(p, housing, j.B, x0, x1, y0+(y1-y0)*0.85)
			v.ringArrow(p, shaft, j.A, x0, x1, y0+(y1-y0)*0.15)
		}
	}
}

// ringArrow shows from which end a bearing's ring goes to its shoulder.
func (v *stackView) ringArrow(p *panel, part *stackPart, e layout.JointEnd, x0, x1, y float64) {
	low, high := part.free(e, -1), part.free(e, 1)
	if low == high {
		return
	}
	tip, dir := x0-0.6, 1.0
	if high {
		tip, dir = x1+0.6, -1
	}
	p.draw.Add(Shape{Path: polygon(tip, y, tip-dir*3, y+1.5, tip-dir*3, y+0.5, tip-dir*8, y+0.5, tip-dir*8, y-0.5, tip-dir*3, y-0.5, tip-dir*3, y-1.5), Fill: Black})
}

func (v *stackView) find(e layout.JointEnd) *stackPart {
	for _, p := range v.parts {
		if p.Part == e.Part && p.Copy == e.Copy {
			return p
		}
	}
	return nil
}

// welds draws the welds made so far as filled triangles in their corners.
func (v *stackView) welds(plan *layout.Plan, now *layout.JointPlan, p *panel, side float64) {
	for _, j := range plan.Joints {
		if j.N > now.N || j.Weld == nil || j.Weld.DiameterMm <= 0 {
			continue
		}
		a, b := v.find(j.A), v.find(j.B)
		if a == nil || b == nil {
			continue
		}
		outer, inner, outerEnd, innerEnd := a, b, j.A, j.B
		if !j.A.Inside {
			outer, inner, outerEnd, innerEnd = b, a, j.B, j.A
		}
		leg := max(j.Weld.LegMm*v.scale, 2.2) / v.scale
		r := j.Weld.DiameterMm / 2
		o0, o1 := outer.span(outerEnd)
		i0, i1 := inner.span(innerEnd)
		corners := []weldCorner{
			cornerAt(o0, i0, -1, r, leg, outer, inner),
			cornerAt(o1, i1, 1, r, leg, outer, inner),
		}
		if j.Weld.Sides == 1 && corners[1].rank > corners[0].rank {
			corners[0] = corners[1]
		}
		if j.Weld.Sides == 1 {
			corners = corners[:1]
		}
		for _, c := range corners {
			c.draw(v, p, side)
		}
	}
}

// weldCorner is a triangle of weld metal in z and r. Of the two ends of a
// joint welded from one side, the one with the higher rank is meant: where an
// edge is prepared, else where the weld is easiest to reach.
type weldCorner struct {
	points [3]layout.XY
	rank   int
}

// cornerAt is the weld at one end, in direction dir of the axis, of a round
// joint of radius r: o and i are where the outer and the inner part's surface
// ends.
func cornerAt(o, i, dir, r, leg float64, outer, inner *stackPart) weldCorner {
	const small = 0.3 // a chamfer for a weld is larger
	var c weldCorner
	end := o
	switch d := (i - o) * dir; {
	case d > 0.5: // the inner part stands out: a corner on the outer face
		c.rank = 1
		c.points = [3]layout.XY{{XMm: o, YMm: r}, {XMm: o + dir*leg, YMm: r}, {XMm: o, YMm: r + leg}}
	case d < -0.5: // the inner part ends inside: a corner in the bore
		end = i
		c.points = [3]layout.XY{{XMm: i, YMm: r}, {XMm: i + dir*leg, YMm: r}, {XMm: i, YMm: r - leg}}
	default:
		c.points = [3]layout.XY{{XMm: o - dir*leg, YMm: r}, {XMm: o, YMm: r - leg/2}, {XMm: o, YMm: r + leg/2}}
	}
	if bore, _, ok := outer.reach(o - dir*0.05); ok && bore > r+small {
		c.rank, end = 2, o
		c.points = [3]layout.XY{{XMm: o, YMm: r}, {XMm: o - dir*(bore-r), YMm: r}, {XMm: o, YMm: bore}}
	}
	if _, outside, ok := inner.reach(i - dir*0.05); ok && outside < r-small {
		c.rank, end = 2, i
		c.points = [3]layout.XY{{XMm: end, YMm: r}, {XMm: end - dir*(r-outside), YMm: r}, {XMm: end, YMm: outside}}
	}
	return c
}

// draw fills the corner, if it lies in the window.
func (c weldCorner) draw(v *stackView, p *panel, side float64) {
	var xy []float64
	for _, q := range c.points {
		if q.XMm < v.z0 || q.XMm > v.z1 || q.YMm < v.rMin || q.YMm > v.rMax*1.05 {
			return
		}
		x, y := v.at(q.XMm, q.YMm, side)
		xy = append(xy, x, y)
	}
	p.draw.Add(Shape{Path: polygon(xy...), Fill: Black})
}

// bolts draws the bolts made so far: a centre line, and for those of this
// joint the head, the shank and the nut.
func (v *stackView) bolts(plan *layout.Plan, now *layout.JointPlan, p *panel, side float64) {
	for _, j := range plan.Joints {
		if j.N > now.N || j.Bolt == nil {
			continue
		}
		a, b := v.find(j.A), v.find(j.B)
		r := boltRadius(plan, j)
		if a == nil || b == nil || r <= 0 {
			continue
		}
		if a.section.Flat && r > a.section.MaxMm {
			r = 0.88 * a.section.MaxMm // in the corners of a plate, beyond the cut
		}
		if r > v.rMax {
			continue
		}
		dir := 1.0
		if a.lo+a.hi > b.lo+b.hi {
			dir = -1
		}
		face, ok := a.faceAt(r, dir, b)
		if !ok || len(j.Bolt.Grip) == 0 {
			continue
		}
		head := face - dir*j.Bolt.Grip[0].ThickMm
		length := max(j.Bolt.LengthMm, j.Bolt.GripMm)
		d := j.A.DiameterMm * 0.9
		inWindow := func(z float64) bool { return z > v.z0 && z < v.z1 }
		if !inWindow(head) {
			continue
		}
		tail := head
		if j.Bolt.TorqueNm == 0 && length > j.Bolt.GripMm+3*d {
			tail -= dir * 1.3 * d // a stud stands out of both nuts
		}
		if j == now {
			v.box(p, tail, tail+dir*length, r, d/2, side, lineMm)
			v.box(p, head, head-dir*0.65*d, r, 0.85*d, side, lineMm)
			if n := len(j.Bolt.Grip); n > 1 && j.Bolt.Grip[n-1].What == j.B.Title {
				if nut, ok := b.faceAt(r, dir, a); ok {
					v.box(p, nut, nut+dir*0.8*d, r, 0.85*d, side, lineMm)
				}
			}
		}
		x0, y := v.at(max(v.z0, min(v.z1, head-dir*1.2*d)), r, side)
		x1, _ := v.at(max(v.z0, min(v.z1, tail+dir*(length+0.5*d))), r, side)
		p.draw.Add(segment(x0, y, x1, y, lineMm, chainDash...))
	}
}

// box draws a white rectangle about a line along the axis, cut to the window.
func (v *stackView) box(p *panel, za, zb, r, half, side, width float64) {
	lo, hi := max(v.z0, min(za, zb)), min(v.z1, max(za, zb))
	if hi <= lo {
		return
	}
	x0, y0 := v.at(lo, r-half, side)
	x1, y1 := v.at(hi, r+half, side)
	p.draw.Add(Shape{Path: polygon(x0, y0, x1, y0, x1, y1, x0, y1), Fill: White, Stroke: Black, WidthMm: width})
}

// boltRadius is the radius of a bolted pattern: half its pitch circle, or how
// far its first hole lies from the axis.
func boltRadius(plan *layout.Plan, j *layout.JointPlan) float64 {
	if j.Bolt.PCDMm > 0 {
		return j.Bolt.PCDMm / 2
	}
	part := partNamed(plan, j.A.Part)
	if part == nil {
		return 0
	}
	for _, face := range part.Faces {
		for _, h := range face.Holes {
			if h.Group == j.A.Feature {
				return h.RadiusMm
			}
		}
	}
	return 0
}

// faceAt is where a part's metal at a radius ends in direction dir, nearest
// to the other part.
func (p *stackPart) faceAt(r, dir float64, other *stackPart) (z float64, ok bool) {
	const steps = 400
	var ends []float64
	was := false
	for i := range steps + 1 {
		at := p.lo + (p.hi-p.lo)*(float64(i)+0.5)/(steps+1)
		inner, outer, there := p.reach(at)
		is := there && inner <= r && (r <= outer || p.section.Flat)
		if is != was {
			edge := p.lo + (p.hi-p.lo)*float64(i)/(steps+1)
			if (dir > 0 && was) || (dir < 0 && is) {
				ends = append(ends, edge)
			}
		}
		was = is
	}
	if was && dir > 0 {
		ends = append(ends, p.hi)
	}
	if len(ends) == 0 {
		return 0, false
	}
	target := other.lo
	if dir < 0 {
		target = other.hi
	}
	best := ends[0]
	for _, e := range ends {
		if math.Abs(e-target) < math.Abs(best-target) {
			best = e
		}
	}
	return best, true
}

// arrow shows which way the part that moves goes on.
func (v *stackView) arrow(j *layout.JointPlan, p *panel) {
	mover, still := v.a, v.b
	if j.Press != nil {
		mover, still = v.b, v.a // the hub goes on the shaft
	}
	if j.Weld != nil || j.Bearing != nil {
		return
	}
	dir := 1.0
	if mover.lo+mover.hi > still.lo+still.hi {
		dir = -1
	}
	if j.Press != nil {
		if from := v.entry(j); from != 0 {
			dir = -from
		}
	}
	const long, half = 12.0, 2.6
	x, y := v.x0-2, v.axis+min(0.5*(v.rMax-v.rMin)*v.scale, 14)
	if dir < 0 {
		x = v.x0 + (v.z1-v.z0)*v.scale + 2
	}
	draw := func(y float64) {
		tip, tail := x, x-dir*long
		p.draw.Add(Shape{Path: polygon(tip, y, tip-dir*5, y+half*1.6, tip-dir*5, y+half*0.6, tail, y+half*0.6, tail, y-half*0.6, tip-dir*5, y-half*0.6, tip-dir*5, y-half*1.6), Fill: Black})
	}
	draw(y)
	if v.full {
		draw(2*v.axis - y)
	}
	word := strconv.Itoa(mover.n) + " goes on"
	at := Text{XMm: x - dir*1, YMm: y + half*1.6 + 1.4, SizeMm: smallMm, Bold: true, Align: Right, Content: word}
	if dir < 0 {
		at.Align = Left
	}
	p.draw.Add(at)
}

// entry is the end of the axis, −1 or +1, from which the hub can be slid on
// the shaft; 0 if both ends or neither is free.
func (v *stackView) entry(j *layout.JointPlan) float64 {
	fromLow := v.a.free(j.A, -1) && v.b.free(j.B, 1)
	fromHigh := v.a.free(j.A, 1) && v.b.free(j.B, -1)
	switch {
	case fromLow && !fromHigh:
		return -1
	case fromHigh && !fromLow:
		return 1
	}
	return 0
}

// free tells whether nothing of the part itself stands between a round step
// or bore and one end of the axis.
func (p *stackPart) free(e layout.JointEnd, end float64) bool {
	const play = 0.3
	lo, hi := p.span(e)
	line := p.section.Outer
	if e.Inside {
		line = p.section.Inner
	}
	for _, q := range line {
		z := p.z(q.XMm)
		if beyond := (end < 0 && z < lo-1e-6) || (end > 0 && z > hi+1e-6); !beyond {
			continue
		}
		if (e.Inside && q.YMm < e.DiameterMm/2-play) || (!e.Inside && q.YMm > e.DiameterMm/2+play) {
			return false
		}
	}
	return true
}

// apartPictures draws the two parts of a joint that share no axis side by
// side, each with its own picture.
func apartPictures(plan *layout.Plan, j *layout.JointPlan, width, maxHeight float64) []piece {
	var panels []panel
	each := (width - 64) / 2
	if each < 56 {
		each = width/2 - 1
	}
	for i, e := range []layout.JointEnd{j.A, j.B} {
		part := partNamed(plan, e.Part)
		if part == nil || part.Section == nil || part.Section.LengthMm <= 0 || part.Section.MaxMm <= 0 {
			continue
		}
		title := strconv.Itoa(i+1) + "  " + e.Title
		p := panel{width: each, height: maxHeight}
		s := part.Section
		if len(part.Faces) > 0 {
			face := part.Faces[0]
			h := min(maxHeight-topPadMm-captionMm-8, (p.width-2*facePadMm)/aspect(face))
			q := facePanel(face, nil, h*aspect(face), h)
			p.draw.Place(&q.draw, (p.width-q.width)/2, -7)
		} else {
			scale := min((p.width-12)/s.LengthMm, (maxHeight-18)/(2*s.MaxMm))
			w, h := s.LengthMm*scale, 2*s.MaxMm*scale
			q := sectionPanel(part, nil, w, h)
			p.draw.Place(&q.draw, (p.width-q.width)/2, -7+balloonRowMm-4)
		}
		text, size := shrink(title, 3.8, true, p.width)
		p.draw.Add(Text{XMm: p.width / 2, YMm: -4.4, SizeMm: size, Bold: true, Align: Centre, Content: text})
		panels = append(panels, p)
	}
	if j.Weld != nil {
		panels = append(panels, weldPanels(j, plan.Units)...)
	}
	if b := j.Bolt; b != nil && len(b.OrderDeg) > 1 {
		panels = append(panels, tightenPanel(j, b))
	}
	return panelRows(panels, width)
}

// weldPanels are the small pictures of a weld: across it, the tacks, the runs.
func weldPanels(j *layout.JointPlan, units parts.Units) []panel {
	var panels []panel
	if w := j.Weld; w != nil {
		panels = append(panels, weldPanel(j, w, units))
		layers := 0
		for _, run := range w.Order {
			layers = max(layers, run.Layer)
		}
		r := dialPanelMm
		if layers > 1 {
			r = dialSmallMm
		}
		if len(w.TacksDeg) > 0 && w.DiameterMm > 0 {
			panels = append(panels, tackPanel(j, w, r, short(w.TackLengthMm, units)))
		}
		// Further layers go on in turn like the first two.
		for layer := 1; layer <= min(layers, 2); layer++ {
			panels = append(panels, runsPanel(j, w, r, layer, layers))
		}
	}
	return panels
}

// weldPanel draws the weld across: a fillet in its corner with leg and
// throat, or the prepared edges of a butt.
func weldPanel(j *layout.JointPlan, w *layout.WeldPlan, units parts.Units) panel {
	p := panel{width: 61, height: 60}
	p.draw.Add(Text{XMm: 31, YMm: -4.2, SizeMm: 3.8, Bold: true, Align: Centre, Content: "Across the weld"})
	const mid, floor = 20.0, -42.0
	if w.LegMm > 0 {
		hatchAt(&p.draw, polygon(6, floor, 52, floor, 52, floor-9, 6, floor-9), 45, 2.4, lineMm)
		hatchAt(&p.draw, polygon(mid-9, floor+0.6, mid, floor+0.6, mid, floor+30, mid-9, floor+30), 135, 2.4, lineMm)
		const leg = 13.0
		p.draw.Add(Shape{Path: polygon(mid, floor, mid+leg, floor, mid, floor+leg), Fill: Black})
		p.draw.Add(segment(mid+leg/2, floor+leg/2, mid+leg/2+8, floor+leg/2+8, thinMm))
		p.draw.Add(Text{XMm: mid + leg/2 + 6, YMm: floor + leg/2 + 10, SizeMm: 3.4, Content: "throat " + sized(w.ThroatMm, units)})
		p.draw.Add(Text{XMm: mid + leg + 2, YMm: floor + 1.4, SizeMm: 3.8, Bold: true, Content: "leg " + sized(w.LegMm, units)})
	} else {
		gap, face, depth := 1.6, 0.0, 22.0
		if w.RootFaceMm > 0 {
			face = max(2.2, depth*w.RootFaceMm/max(w.ThinnerMm, w.RootFaceMm))
		}
		run := math.Min(15, (depth-face)*math.Tan(w.BevelDeg/2*math.Pi/180))
		x, y := 31.0, floor
		hatchAt(&p.draw, polygon(4, y, x-gap/2, y, x-gap/2, y+face, x-gap/2-run, y+depth, 4, y+depth), 45, 2.4, lineMm)
		hatchAt(&p.draw, polygon(58, y, x+gap/2, y, x+gap/2, y+face, x+gap/2+run, y+depth, 58, y+depth), 135, 2.4, lineMm)
		text := "no bevel"
		if w.BevelDeg > 0 {
			text = "opened to " + degrees(w.BevelDeg)
		}
		p.draw.Add(Text{XMm: x, YMm: y + depth + 4, SizeMm: 3.4, Align: Centre, Content: text})
		text, size := shrink("gap "+short(w.GapMm, units)+", root face "+sized(w.RootFaceMm, units), 3.4, false, 58)
		p.draw.Add(Text{XMm: x, YMm: y - 5.4, SizeMm: size, Align: Centre, Content: text})
	}
	note, size := shrink(joined(" ", w.Symbol, w.Designation)+", "+w.Process, 3.2, false, 60)
	p.draw.Add(Text{XMm: 31, YMm: -p.height + 1.4, SizeMm: size, Align: Centre, Content: note})
	return p
}
