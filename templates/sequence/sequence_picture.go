package sequence

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/picture"

	"github.com/tdewolff/canvas"
)

// stackPart is a part in the picture of an assembly.
type stackPart struct {
	plan.Placed
	section *plan.Section
	n       int     // its balloon
	lo, hi  float64 // where it lies on the assembly's axis
	joined  bool    // an end of this joint
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
func newStack(pl *plan.Plan, j *plan.JointPlan) (v *stackView, ok bool) {
	v = &stackView{}
	for _, q := range j.Placed {
		part := pl.Part(q.Part)
		if part == nil || part.Section == nil || part.Section.LengthMm <= 0 || part.Section.MaxMm <= 0 {
			continue
		}
		p := &stackPart{Placed: q, section: part.Section}
		a, b := p.Z(0), p.Z(part.Section.LengthMm)
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
func (v *stackView) frame(j *plan.JointPlan) {
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
func (v *stackView) where(j *plan.JointPlan) float64 {
	if j.Bolt == nil && j.A.ToMm > j.A.FromMm && j.B.ToMm > j.B.FromMm {
		a0, a1 := v.a.Span(j.A)
		b0, b1 := v.b.Span(j.B)
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
func (v *stackView) metal(p *stackPart) []plan.XY {
	var out []plan.XY
	for _, q := range picture.CutPoints(p.section) {
		out = append(out, plan.XY{XMm: p.Z(q.XMm), YMm: q.YMm})
	}
	out = clipHalf(out, func(q plan.XY) float64 { return q.XMm - v.z0 })
	out = clipHalf(out, func(q plan.XY) float64 { return v.z1 - q.XMm })
	if v.rMin > 0 {
		out = clipHalf(out, func(q plan.XY) float64 { return q.YMm - v.rMin })
	}
	return clipHalf(out, func(q plan.XY) float64 { return v.rMax*1.001 - q.YMm })
}

// clipHalf keeps the side of a polygon where inside is not negative
// (Sutherland and Hodgman).
func clipHalf(points []plan.XY, inside func(plan.XY) float64) []plan.XY {
	var out []plan.XY
	for i, q := range points {
		p := points[(i+len(points)-1)%len(points)]
		dp, dq := inside(p), inside(q)
		if dp*dq < 0 {
			t := dp / (dp - dq)
			out = append(out, plan.XY{XMm: p.XMm + t*(q.XMm-p.XMm), YMm: p.YMm + t*(q.YMm-p.YMm)})
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
	inner, outer, ok = p.section.RadiiAt(p.Own(z))
	return inner, outer, ok && outer > inner
}

// hatching tells the parts apart by the slope and the spacing of the lines.
var hatching = []struct{ deg, pitchMm float64 }{{45, 2.4}, {135, 2.4}, {20, 3.4}, {110, 3.4}, {70, 3.0}, {160, 3.0}, {0, 2.8}, {90, 2.8}}

// stackPictures draws the joint's parts in section as they stand together, and
// the list of their names. Parts that share no axis are drawn apart.
func stackPictures(pl *plan.Plan, j *plan.JointPlan, width, maxHeight float64, more ...draw.Panel) []draw.Piece {
	v, ok := newStack(pl, j)
	if !ok {
		return apartPictures(pl, j, width, maxHeight*0.75, more...)
	}
	v.frame(j)
	const sidePad = 17.0 // for the arrow
	high := maxHeight - picture.BalloonRowMm - picture.CaptionMm
	var beside []draw.Panel
	if j.Weld != nil {
		beside = append(beside, weldPanel(j, j.Weld, pl.Units))
	}
	v.fit(width-2*sidePad-61, high)
	if d, ok := v.detail(pl, j, high); ok && j.Bolt == nil && j.Weld == nil {
		beside = append(beside, d)
	}
	beside = append(beside, more...)
	used := 0.0
	for _, q := range beside {
		used += q.Width
	}
	if width-used < 62 {
		used = 0
	}
	v.fit(width-2*sidePad-used, high)
	h := (v.rMax - v.rMin) * v.scale
	if v.full {
		h *= 2
	}
	w := (v.z1 - v.z0) * v.scale
	p := draw.Panel{Width: max(w+2*sidePad, picture.BalloonStepMm*float64(len(v.parts)), 70), Height: picture.BalloonRowMm + h + picture.CaptionMm + 2}
	v.x0 = (p.Width - w) / 2
	v.axis = -picture.BalloonRowMm - (v.rMax-v.rMin)*v.scale
	v.draw(pl, j, &p)
	rows := panelRows(append([]draw.Panel{p}, beside...), width)
	rows = rows[:len(rows)-1]
	for i := range rows {
		rows[i].Keep = true
	}
	return append(append(rows, v.legendAt(width)...), draw.Space(3))
}

// fit chooses the scale for a room, and whether both sides of the axis are
// drawn, only one, or of wide rings only the metal.
func (v *stackView) fit(width, height float64) {
	span := v.z1 - v.z0
	bore := v.rMax
	for _, p := range v.parts {
		for _, q := range picture.CutPoints(p.section) {
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
func (v *stackView) detail(pl *plan.Plan, j *plan.JointPlan, high float64) (draw.Panel, bool) {
	const width = 61.0
	if j.A.DiameterMm <= 0 || j.B.DiameterMm <= 0 || j.A.ToMm <= j.A.FromMm || j.B.ToMm <= j.B.FromMm {
		return draw.Panel{}, false
	}
	a0, a1 := v.a.Span(j.A)
	b0, b1 := v.b.Span(j.B)
	lo, hi := max(a0, b0), min(a1, b1)
	if hi <= lo {
		return draw.Panel{}, false
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
		return draw.Panel{}, false
	}
	w, h := (d.z1-d.z0)*d.scale, (d.rMax-d.rMin)*d.scale
	p := draw.Panel{Width: width, Height: h + picture.CaptionMm + 2}
	d.x0, d.axis = (width-w)/2, -h
	for i := len(d.parts) - 1; i >= 0; i-- {
		if points := d.metal(d.parts[i]); len(points) > 2 {
			look := hatching[i%len(hatching)]
			edge := draw.ThinMm
			if d.parts[i].joined {
				edge = 0.5
			}
			draw.HatchAt(&p.Draw, d.path(points, 1), look.deg, look.pitchMm, edge)
		}
	}
	d.bearings(pl, j, &p, 1)
	d.welds(pl, j, &p, 1)
	p.Draw.Add(draw.Box(draw.R(d.x0, -h, d.x0+w, 0), draw.LineMm))
	p.Draw.Add(draw.Text{XMm: width / 2, YMm: -p.Height + 1.6, SizeMm: draw.TextMm, Align: draw.Centre, Content: "The joint, larger"})
	return p, true
}

// legendAt names the balloons; in two columns where there is room.
func (v *stackView) legendAt(width float64) []draw.Piece {
	var parts []string
	for _, p := range v.parts {
		parts = append(parts, strconv.Itoa(p.n)+" "+p.Title)
	}
	return draw.Paragraph("", strings.Join(parts, "   "), 3.2, true, width)
}

// draw draws the stack, what joins it, the arrow and the balloons.
func (v *stackView) draw(pl *plan.Plan, j *plan.JointPlan, p *draw.Panel) {
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
		edge := draw.ThinMm
		if part.joined {
			edge = 0.5
		}
		look := hatching[i%len(hatching)]
		if v.full && len(part.section.Inner) == 0 {
			// A solid part is one surface across the axis.
			both := slices.Clone(points)
			both = slices.DeleteFunc(both, func(q plan.XY) bool { return q.YMm == 0 })
			for k := len(both) - 1; k >= 0; k-- {
				both = append(both, plan.XY{XMm: both[k].XMm, YMm: -both[k].YMm})
			}
			draw.HatchAt(&p.Draw, v.path(both, 1), look.deg, look.pitchMm, edge)
			continue
		}
		for _, side := range sides {
			draw.HatchAt(&p.Draw, v.path(points, side), look.deg, look.pitchMm, edge)
		}
	}
	for _, side := range sides {
		v.bearings(pl, j, p, side)
		v.welds(pl, j, p, side)
		v.bolts(pl, j, p, side)
	}
	left, _ := v.at(v.z0, 0, 1)
	right, _ := v.at(v.z1, 0, 1)
	if v.rMin == 0 {
		p.Draw.Add(draw.Segment(left-3, v.axis, right+3, v.axis, draw.ThinMm, draw.ChainDash...))
	}
	for _, part := range v.parts {
		for _, z := range []float64{v.z0, v.z1} {
			if inner, outer, ok := part.reach(z); ok && part.lo < z-1e-9 && part.hi > z+1e-9 && inner < v.rMax {
				outer, inner = min(outer, v.rMax), max(inner, v.rMin)
				if v.full && inner == 0 {
					p.Draw.Add(v.breakLine(z, -outer, outer, 1))
					continue
				}
				for _, side := range sides {
					p.Draw.Add(v.breakLine(z, inner, outer, side))
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
	caption, size := draw.Shrink(caption, draw.TextMm, false, p.Width)
	p.Draw.Add(draw.Text{XMm: p.Width / 2, YMm: -p.Height + 1.6, SizeMm: size, Align: draw.Centre, Content: caption})

	var spots []picture.Spot
	for _, part := range v.parts {
		if z, r, ok := v.spotOn(part); ok {
			x, y := v.at(z, r, 1)
			spots = append(spots, picture.Spot{N: part.n, X: x, Y: y})
		}
	}
	picture.BalloonRow(p, spots)
}

func (v *stackView) path(points []plan.XY, side float64) *canvas.Path {
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
func (v *stackView) breakLine(z, from, to, side float64) draw.Shape {
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
	return draw.Shape{Path: path, Stroke: draw.Black, WidthMm: draw.ThinMm}
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
