package parts

import (
	"math"

	"centrepop/parts/geom"
)

// Keys of the outline shapes and of what may stand beside each.
var outlineKeys = []string{"circle", "square", "rectangle", "polygon", "slot", "path"}

// outline reads the contour of a flat part.
func (r *reader) outline(n *node) *Outline {
	if !r.group(n, "circle", "square", "rectangle", "polygon", "slot", "path", "corner", "fit", "leave") {
		return nil
	}
	key, v := r.oneOf(n, outlineKeys...)
	o := &Outline{Pos: n.pos, Shape: OutlineShape(key)}
	switch o.Shape {
	case CircleOutline:
		o.Size = r.size(v, n.get("fit"), shaft)
		o.Width = o.Size.Nominal
	case SquareOutline:
		o.Width = r.length(v, positive)
		o.Height = o.Width
	case RectangleOutline, SlotOutline:
		if items, ok := r.items(v, 2, 2, "the width and the height, such as [200, 120]"); ok {
			o.Width, o.Height = r.length(items[0], positive), r.length(items[1], positive)
		}
		if o.Shape == SlotOutline && o.Width.Set() && o.Height.Set() && o.Width.Mm <= o.Height.Mm {
			r.faultf(o.Width.Pos, "[overall length, width] with the length greater", "the slot is %s long and %s wide", o.Width.Text, o.Height.Text)
		}
	case PolygonOutline:
		r.polygon(v, o)
	case PathOutline:
		o.Path = r.path(v)
	}
	r.besideOutline(n, o)
	return o
}

// besideOutline reads the keys that go with some shapes only.
func (r *reader) besideOutline(n *node, o *Outline) {
	if o.Shape == "" {
		return
	}
	if n.get("fit") != nil && o.Shape != CircleOutline {
		r.faultf(n.keyPos("fit"), "delete fit, or use a circle", "a %s takes no fit", o.Shape)
	}
	if c := n.get("corner"); c != nil {
		if o.Shape != SquareOutline && o.Shape != RectangleOutline {
			r.faultf(n.keyPos("corner"), "delete corner, or use square or rectangle", "a %s takes no corner radius", o.Shape)
		} else {
			o.Corner = r.length(c, fromZero)
			if o.Corner.Set() && o.Width.Set() && o.Height.Set() && o.Corner.Mm > min(o.Width.Mm, o.Height.Mm)/2 {
				r.faultf(c.pos, "at most half the smaller side", "the corner radius %s does not fit the outline", o.Corner.Text)
			}
		}
	}
	o.LeaveOnPart = r.length(n.get("leave"), fromZero)
	if o.LeaveOnPart.Set() && o.Width.Set() && o.LeaveOnPart.Mm >= o.Width.Mm {
		r.faultf(o.LeaveOnPart.Pos, "a few millimetres for the lathe", "leave is %s on an outline of %s", o.LeaveOnPart.Text, o.Width.Text)
	}
}

// polygon reads a regular polygon or one of listed points.
func (r *reader) polygon(v *node, o *Outline) {
	if !r.group(v, "sides", "across-flats", "first", "points") {
		return
	}
	if v.get("points") == nil {
		const form = "polygon: {sides: 6, across-flats: 50, first: 0}, or polygon: {points: [[0, 0], [50, 0], [0, 50]]}"
		o.Sides = r.count(r.need(v, "sides", form), 3, 64)
		o.Width = r.length(r.need(v, "across-flats", form), positive)
		o.First = r.clock(v.get("first"))
		return
	}
	for _, key := range []string{"sides", "across-flats", "first"} {
		if v.get(key) != nil {
			r.faultf(v.keyPos(key), "keep points or "+key, "a polygon of points takes no %s", key)
		}
	}
	list := v.get("points")
	o.Points = r.points(list, 3)
	if len(o.Points) == len(list.items) && len(o.Points) >= 3 {
		c := o.Contour()
		if i, j, _, crossing, _ := geom.Crossing(o.corners()); crossing {
			r.faultf(o.Points[j].Pos, "list the corners in order round the outline", "side %d of the polygon crosses side %d", j+1, i+1)
		} else if math.Abs(c.AreaMm2()) < 1 {
			r.fault(list.pos, "the polygon has no area", "three corners or more that do not lie on a line")
		}
	}
}

// bore reads the centre bore of a flat part.
func (r *reader) bore(n *node) *Bore {
	if !r.group(n, "diameter", "fit", "leave") {
		return nil
	}
	b := &Bore{
		Pos:   n.pos,
		Size:  r.size(r.need(n, "diameter", "bore: {diameter: 114.3 mm, fit: H7, leave: 2 mm}"), n.get("fit"), hole),
		Leave: r.length(n.get("leave"), fromZero),
	}
	if b.Leave.Set() && b.Size.Nominal.Set() && b.Leave.Mm >= b.Size.Nominal.Mm {
		r.faultf(b.Leave.Pos, "a few millimetres on the diameter", "leave is %s in a bore of %s", b.Leave.Text, b.Size.Nominal.Text)
	}
	return b
}

// path reads SVG path data of one closed contour.
func (r *reader) path(n *node) Text {
	text, ok := r.scalar(n, "path data", `SVG path data such as "M0 0 L100 0 L100 50 Z", in mm, y up`)
	if !ok {
		return Text{}
	}
	p, wrong := geom.ParsePath(text)
	if wrong == "" {
		wrong = geom.CheckContour(p)
	}
	if wrong != "" {
		r.faultf(n.pos, `one closed contour such as "M0 0 L100 0 L100 50 Z", in mm, y up`, "the path cannot be used: %s", wrong)
		return Text{}
	}
	return Text{Value: text, Pos: n.pos}
}

// Contour is the outline seen on the front face, y up. The outline must be one
// that was read without a fault.
func (o *Outline) Contour() geom.Contour {
	w, h := o.Width.Mm, o.Height.Mm
	switch {
	case o.Shape == SquareOutline:
		return geom.NewContour(geom.Rectangle(w, w, o.Corner.Mm))
	case o.Shape == RectangleOutline:
		return geom.NewContour(geom.Rectangle(w, h, o.Corner.Mm))
	case o.Shape == SlotOutline:
		return geom.NewContour(geom.Obround(w, h))
	case o.Shape == PolygonOutline && o.Sides > 0:
		return geom.NewContour(geom.Regular(o.Sides, w, o.First.Deg))
	case o.Shape == PolygonOutline:
		return geom.NewContour(geom.Polygon(o.corners()))
	case o.Shape == PathOutline:
		if p, wrong := geom.ParsePath(o.Path.Value); wrong == "" {
			return geom.NewContour(p)
		}
	}
	return geom.NewContour(geom.Circle(w))
}

// corners of a polygon that lists them.
func (o *Outline) corners() []geom.Point {
	out := make([]geom.Point, len(o.Points))
	for i, p := range o.Points {
		out[i] = p.at()
	}
	return out
}

// at is the point without where it was written.
func (p Point) at() geom.Point { return geom.Point{XMm: p.X.Mm, YMm: p.Y.Mm} }
