package develop

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// FeatureKind is the shape of an opening in the side of a cylinder.
type FeatureKind int

// The shapes of a Feature.
const (
	// Hole is a round hole of DiameterMm drilled square to the axis.
	Hole FeatureKind = iota
	// AxialSlot runs along the axis: WidthMm is the cutter, LengthMm the
	// length over its round ends.
	AxialSlot
	// AroundSlot is milled while the part turns: WidthMm is the cutter,
	// LengthMm the length over its ends along the outside surface.
	AroundSlot
	// Window is a rectangle, WidthMm around by LengthMm along the axis, with
	// corners of CornerMm.
	Window
)

// Feature is an opening in the side of a cylinder. The drill or cutter
// enters square to the axis, parallel to the radius at ClockDeg.
type Feature struct {
	Name string
	Kind FeatureKind
	// ClockDeg is the clock angle of the centre on the front face,
	// -360..360.
	ClockDeg float64
	// AxialMm is the distance of the centre from the face the pattern's
	// square edge is set to.
	AxialMm float64
	// DiameterMm is the drill of a Hole.
	DiameterMm float64
	// WidthMm and LengthMm size slots and windows, see the kinds.
	WidthMm, LengthMm float64
	// CornerMm is the corner radius of a Window, 0 for sharp.
	CornerMm float64
	// OnSurface measures the width of a Window along the outside surface
	// (marked out with a tape, sides cut towards the axis). Else the width is
	// straight across, as a milling cutter or saw leaves it.
	OnSurface bool
}

// Cylinder is a paper template for the outside of a round part.
type Cylinder struct {
	// DiameterMm is the outside diameter the paper goes round.
	DiameterMm float64
	// PaperMm is the paper's thickness, 0 to ignore it. Office paper of
	// 80 g/m² is near 0.1 mm.
	PaperMm float64
	// WidthMm is the template's extent along the axis.
	WidthMm float64
	// TabMm is the overlap beyond the right end, glued under the left end;
	// 0 for ends that butt.
	TabMm float64
	// FromBack puts the square edge y = 0 at the back face; clock angles, still those of the front face, grow
	// to the left. Else it is at the front face, and they grow to the right.
	FromBack bool
	// Features are what is marked on it; its ends meet in the middle of the widest gap between them.
	Features []Feature
}

// wrapLengthMm returns the length of a sheet of the given thickness that just
// closes around the outside of a cylinder, π·(D + t): the middle of the sheet
// keeps its length. Both in millimetres; the diameter within
// MinLengthMm..MaxLengthMm, the thickness zero or more and below the
// diameter, else an error.
func wrapLengthMm(diameterMm, thicknessMm float64) (float64, error) {
	err := cmp.Or(checkLength("diameter", diameterMm), checkAllowance("paper thickness", thicknessMm))
	if err != nil {
		return 0, err
	}
	if thicknessMm >= diameterMm {
		return 0, refuse("a sheet of %v cannot be wrapped on a diameter of %v", lookup.Mm(thicknessMm), lookup.Mm(diameterMm))
	}
	return math.Pi * (diameterMm + thicknessMm), nil
}

// Position returns the point of the template for a clock angle on the front
// face and an axial distance from the square edge, with x = 0 on the TOP
// line. From the front x grows with the clock angle, from the back it falls.
// The angle is not reduced: 370° lies one wrap beyond 10°. Nothing is
// checked; Develop does that.
func (c Cylinder) Position(clockDeg, axialMm float64) Point {
	return Point{XMm: (c.DiameterMm + c.PaperMm) / 2 * rad(c.turn(clockDeg)), YMm: axialMm}
}

// turn returns the clock angle with the sign it has on the sheet.
func (c Cylinder) turn(clockDeg float64) float64 {
	if c.FromBack {
		return -clockDeg
	}
	return clockDeg
}

// Develop returns the wrap template with the outlines of all features. It
// refuses lengths out of range, a feature wider than the cylinder, one that
// runs over the template's edges, and two features of the same name.
func (c Cylinder) Develop() (Development, error) {
	length, err := wrapLengthMm(c.DiameterMm, c.PaperMm)
	if err != nil {
		return Development{}, err
	}
	if err := cmp.Or(checkLength("template width", c.WidthMm), checkAllowance("tab", c.TabMm)); err != nil {
		return Development{}, err
	}
	if c.TabMm > length/2 {
		return Development{}, refuse("a tab of %v is more than half of the wrap length of %v", lookup.Mm(c.TabMm), lookup.Mm(length))
	}
	outlines, err := c.outlines()
	if err != nil {
		return Development{}, err
	}
	return c.closed(outlines, length, c.widestGapDeg(outlines)), nil
}

// closed is the template whose ends meet at a clock angle.
func (c Cylinder) closed(outlines []outline, lengthMm, seamDeg float64) Development {
	left := geom.OnClock(c.turn(seamDeg))
	if left > 0 {
		left -= 360
	}
	leftMm := lengthMm * left / 360
	d := Development{
		WrapMm:  lengthMm,
		SeamDeg: geom.OnClock(seamDeg),
		Formulas: []Formula{
			{"wrap length", "L = π·(D + paper)"},
			{"clock angle to x", "x = L·clock/360"},
			{"hole outline", "x = (D + paper)/2·asin(u/(D/2)), u² + y² = (d/2)²"},
		},
	}
	c.frame(&d, leftMm, leftMm+lengthMm)
	c.place(&d, outlines, leftMm, leftMm+lengthMm)
	return d
}

// frame draws the edges, the tab, the seam and the quadrant lines.
func (c Cylinder) frame(d *Development, leftMm, rightMm float64) {
	w, end := c.WidthMm, rightMm+c.TabMm
	left, right := [2]Point{{XMm: leftMm}, {XMm: leftMm, YMm: w}}, [2]Point{{XMm: rightMm}, {XMm: rightMm, YMm: w}}
	d.Blank = polygon(left[0], right[0], right[1], left[1])
	d.Curves = append(d.Curves, d.Blank)
	if c.TabMm > 0 {
		tab := []Point{right[0], {XMm: end}, {XMm: end, YMm: w}, right[1]}
		d.Curves = append(d.Curves, polyline("tab", Tab, tab...), polyline("seam", Seam, right[:]...))
		d.Blank = polygon(append(append(left[:1:1], tab...), left[1])...)
	}
	for q := 0.0; q < 360; q += 90 {
		role, name := Division, fmt.Sprintf("%g°", q)
		if q == 0 {
			role, name = Top, "TOP"
		}
		for _, x := range copies(c.Position(q, 0).XMm, rightMm-leftMm, leftMm, rightMm) {
			d.Curves = append(d.Curves, polyline(name, role, Point{XMm: x, YMm: 0}, Point{XMm: x, YMm: w}))
			d.Labels = append(d.Labels, Label{name, Point{XMm: x, YMm: w}})
		}
	}
}

// copies returns all of x + k·period within lo..hi, rising.
func copies(x, period, lo, hi float64) []float64 {
	eps := 1e-9 * period
	var out []float64
	for v := x + period*math.Ceil((lo-x)/period-1e-9); v <= hi+eps; v += period {
		out = append(out, v)
	}
	return out
}

// outline is a feature's closed polyline around x = its clock angle
// (reduced to 0..360 on the sheet) and its centre.
type outline struct {
	feature Feature
	points  []Point
	center  Point
	lo, hi  float64 // extent in x
}

func (c Cylinder) outlines() ([]outline, error) {
	var out []outline
	seen := make(map[string]bool, len(c.Features))
	for _, f := range c.Features {
		if seen[f.Name] {
			return nil, refuse("two features are named %q", f.Name)
		}
		seen[f.Name] = true
		o, err := c.outline(f)
		if err != nil {
			return nil, lookup.Refuse("feature %q: %w", f.Name, err)
		}
		out = append(out, o)
	}
	return out, nil
}

// outline projects the feature's plane outline on the cylinder and unrolls it.
func (c Cylinder) outline(f Feature) (outline, error) {
	err := cmp.Or(checkAngle("clock angle", f.ClockDeg), checkLength("axial distance", f.AxialMm), checkAllowance("corner radius", f.CornerMm))
	if err != nil {
		return outline{}, err
	}
	radius := c.DiameterMm / 2
	flat, project, err := f.shape(radius)
	if err != nil {
		return outline{}, err
	}
	scale := (c.DiameterMm + c.PaperMm) / 2
	base := scale * rad(geom.OnClock(c.turn(f.ClockDeg)))
	unroll := func(p Point) Point {
		return Point{XMm: base + scale*project(p.XMm), YMm: f.AxialMm + p.YMm}
	}
	o := outline{feature: f, center: unroll(Point{})}
	at := flat.Start
	o.points = []Point{unroll(at)}
	for _, s := range flat.Segments {
		if s.SweepDeg == 0 {
			// Level and upright lines stay straight on the sheet.
			o.points = append(o.points, unroll(s.To))
		} else {
			start := at
			arc := sample(func(t float64) Point { return unroll(s.at(start, t)) }, 0, 1, 4)
			o.points = append(o.points, arc[1:]...)
		}
		at = s.To
	}
	box := polyline("", Cut, o.points...).Box()
	o.lo, o.hi = box.Min.XMm, box.Max.XMm
	if box.Min.YMm < 0 || box.Max.YMm > c.WidthMm {
		return outline{}, refuse("reaches from %v to %v, but the template from 0 to %v", lookup.Mm(box.Min.YMm), lookup.Mm(box.Max.YMm), lookup.Mm(c.WidthMm))
	}
	if box.Size().XMm >= 2*math.Pi*scale {
		return outline{}, refuse("goes all the way round")
	}
	return o, nil
}

// shape returns the plane outline of the feature about its centre and the
// rule that turns a sideways distance into an angle in radians.
func (f Feature) shape(radiusMm float64) (Curve, func(float64) float64, error) {
	around := func(u float64) float64 { return asin(u / radiusMm) }
	width, length, corner := f.WidthMm, f.LengthMm, f.WidthMm/2
	var err error
	switch f.Kind {
	case Hole:
		width, length, corner = f.DiameterMm, f.DiameterMm, f.DiameterMm/2
		err = cmp.Or(checkLength("hole diameter", f.DiameterMm), f.fits(f.DiameterMm, radiusMm))
	case AxialSlot:
		err = f.checkSlot(radiusMm)
		if err == nil && f.LengthMm < f.WidthMm {
			err = refuse("slot length %v is less than its width %v", lookup.Mm(f.LengthMm), lookup.Mm(f.WidthMm))
		}
	case AroundSlot:
		return f.aroundSlot(radiusMm)
	case Window:
		corner, err = f.CornerMm, f.checkWindow(radiusMm)
		if f.OnSurface {
			around = func(u float64) float64 { return u / radiusMm }
		}
	default:
		err = refuse("feature kind %d is not known", f.Kind)
	}
	if err != nil {
		return Curve{}, nil, err
	}
	return roundedRectangle(width, length, corner), around, nil
}

// fits refuses a width that breaks out of the side of the cylinder.
func (f Feature) fits(widthMm, radiusMm float64) error {
	if widthMm/2 >= radiusMm {
		return refuse("width %v breaks out of the side of the diameter %v", lookup.Mm(widthMm), lookup.Mm(2*radiusMm))
	}
	return nil
}

func (f Feature) checkSlot(radiusMm float64) error {
	return cmp.Or(checkLength("slot width", f.WidthMm), checkLength("slot length", f.LengthMm), f.fits(f.WidthMm, radiusMm))
}

func (f Feature) checkWindow(radiusMm float64) error {
	if err := cmp.Or(checkLength("window width", f.WidthMm), checkLength("window length", f.LengthMm)); err != nil {
		return err
	}
	switch {
	case 2*f.CornerMm > math.Min(f.WidthMm, f.LengthMm):
		return refuse("corner radius %v is too large for a window of %v × %v", lookup.Mm(f.CornerMm), lookup.Mm(f.WidthMm), lookup.Mm(f.LengthMm))
	case f.OnSurface:
		return nil
	}
	return f.fits(f.WidthMm, radiusMm)
}

// aroundSlot is a slot along the circumference, cut on the radius.
func (f Feature) aroundSlot(radiusMm float64) (Curve, func(float64) float64, error) {
	if err := f.checkSlot(radiusMm); err != nil {
		return Curve{}, nil, err
	}
	// Length over the ends = R·(2·half + 2·asin(cutter radius/R)).
	half := f.LengthMm/2 - radiusMm*asin(f.WidthMm/2/radiusMm)
	if half < 0 {
		return Curve{}, nil, refuse("slot length %v is less than the hole its cutter of %v leaves", lookup.Mm(f.LengthMm), lookup.Mm(f.WidthMm))
	}
	turning := func(u float64) float64 {
		switch {
		case u > half:
			return half/radiusMm + asin((u-half)/radiusMm)
		case u < -half:
			return -half/radiusMm + asin((u+half)/radiusMm)
		}
		return u / radiusMm
	}
	return roundedRectangle(2*half+f.WidthMm, f.WidthMm, f.WidthMm/2), turning, nil
}

// roundedRectangle returns a width × height rectangle around the origin,
// anticlockwise, with corner arcs; straight pieces of no length are left out.
func roundedRectangle(width, height, corner float64) Curve {
	x, y := width/2-corner, height/2-corner
	c := Curve{Closed: true, Start: Point{XMm: width / 2, YMm: -y}}
	at := c.Start
	side := func(to Point) {
		if geom.Distance(at, to) > 1e-12*(width+height) {
			c.Segments = append(c.Segments, Segment{To: to})
			at = to
		}
	}
	turn := func(center, to Point) {
		if corner > 0 {
			c.Segments = append(c.Segments, Segment{To: to, Center: center, SweepDeg: 90})
			at = to
		}
	}
	side(Point{XMm: width / 2, YMm: y})
	turn(Point{XMm: x, YMm: y}, Point{XMm: x, YMm: height / 2})
	side(Point{XMm: -x, YMm: height / 2})
	turn(Point{XMm: -x, YMm: y}, Point{XMm: -width / 2, YMm: y})
	side(Point{XMm: -width / 2, YMm: -y})
	turn(Point{XMm: -x, YMm: -y}, Point{XMm: -x, YMm: -height / 2})
	side(Point{XMm: x, YMm: -height / 2})
	turn(Point{XMm: x, YMm: -y}, Point{XMm: width / 2, YMm: -y})
	c.Segments[len(c.Segments)-1].To = c.Start
	return c
}

// widestGapDeg returns the clock angle in the middle of the widest free arc
// between features, 180° when there is none to avoid.
func (c Cylinder) widestGapDeg(outlines []outline) float64 {
	length := math.Pi * (c.DiameterMm + c.PaperMm)
	type span struct{ lo, hi float64 }
	var spans []span
	for _, o := range outlines {
		shift := math.Floor(o.lo/length) * length
		spans = append(spans, span{o.lo - shift, o.hi - shift})
	}
	if len(spans) == 0 {
		return 180
	}
	// By start, then end: a fixed order makes the first of equal gaps win.
	slices.SortFunc(spans, func(a, b span) int { return cmp.Or(cmp.Compare(a.lo, b.lo), cmp.Compare(a.hi, b.hi)) })
	var at float64
	reach, best := spans[0].hi, -1.0
	for _, s := range spans[1:] {
		if gap := s.lo - reach; gap > best+1e-9 {
			best, at = gap, reach+gap/2
		}
		reach = math.Max(reach, s.hi)
	}
	if gap := spans[0].lo + length - reach; gap > best+1e-9 {
		at = reach + gap/2
	}
	return geom.OnClock(c.turn(360 * at / length))
}

// place adds every outline at its place on the sheet. One that crosses the
// seam is drawn at both ends, cut off at the left edge and the tab's end.
func (c Cylinder) place(d *Development, outlines []outline, leftMm, rightMm float64) {
	length := rightMm - leftMm
	for _, o := range outlines {
		hi := rightMm
		if len(copies(leftMm, length, o.lo, o.hi)) > 0 { // it crosses the seam
			hi += c.TabMm
		}
		for k := -2.0; k <= 2; k++ {
			shift := k * length
			if o.hi+shift <= leftMm || o.lo+shift >= hi {
				continue
			}
			moved := seq.Map(o.points, func(p Point) Point { return Point{XMm: p.XMm + shift, YMm: p.YMm} })
			for _, part := range clipX(moved, leftMm, hi) {
				curve := polyline(o.feature.Name, Cut, part...)
				curve.Closed = part[0] == part[len(part)-1]
				d.Curves = append(d.Curves, curve)
			}
		}
		for _, x := range copies(o.center.XMm, length, leftMm, hi) {
			d.Labels = append(d.Labels, Label{o.feature.Name, Point{XMm: x, YMm: o.center.YMm}})
		}
	}
}
