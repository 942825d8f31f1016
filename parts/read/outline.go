package read

import (
	"math"

	"centrepop/parts"
	"centrepop/parts/geom"
)

func (f *fields) outline() *parts.Outline {
	key, v := f.oneOf()
	o := &parts.Outline{Pos: f.n.pos, Shape: parts.OutlineShape(key)}
	switch o.Shape {
	case parts.CircleOutline:
		o.Size = f.size(key, shaft)
		o.Width = o.Size.Nominal
	case parts.SquareOutline:
		o.Width = f.length(key)
		o.Height = o.Width
	case parts.RectangleOutline, parts.SlotOutline:
		o.Width, o.Height = f.pair(key)
		if o.Shape == parts.SlotOutline {
			f.not(o.Width, "<=", o.Height, "[overall length, width] with the length greater", "the slot is %s long and %s wide")
		}
	case parts.PolygonOutline:
		f.sub(key).polygon(o)
	case parts.PathOutline:
		o.Path = f.path(v)
	}
	f.besideOutline(o)
	return o
}

// besideOutline reads the keys that go with some shapes only.
func (f *fields) besideOutline(o *parts.Outline) {
	if o.Shape == "" {
		return
	}
	f.spare("fit", o.Shape != parts.CircleOutline, "a "+string(o.Shape)+" takes no fit", "delete fit, or use a circle")
	if o.Shape != parts.SquareOutline && o.Shape != parts.RectangleOutline {
		f.spare("corner", true, "a "+string(o.Shape)+" takes no corner radius", "delete corner, or use square or rectangle")
	} else {
		o.Corner = f.cornerOf("outline", o.Width, o.Height)
	}
	o.LeaveOnPart = f.length("leave")
	f.not(o.LeaveOnPart, ">=", o.Width, "a few millimetres for the lathe", "leave is %s on an outline of %s")
}

// cornerOf reads the radius of the corners of a rectangle: an outline, a window.
func (f *fields) cornerOf(what string, a, b parts.Length) parts.Length {
	r := f.length("corner")
	if a.Set() && b.Set() && 2*r.Mm > min(a.Mm, b.Mm) {
		f.faultf(r.Pos, "at most half the smaller side", "the corner radius %s does not fit the %s", r.Text, what)
	}
	return r
}

// polygon reads a regular polygon or one of listed points.
func (f *fields) polygon(o *parts.Outline) {
	if f == nil {
		return
	}
	if !f.given("points") {
		for _, key := range []string{"sides", "across-flats"} {
			f.need(f.n, key, f.g.Example)
		}
		o.Sides, o.Width, o.First = f.count("sides"), f.length("across-flats"), f.angle("first")
		return
	}
	for _, key := range []string{"sides", "across-flats", "first"} {
		f.spare(key, true, "a polygon of points takes no "+key, "keep points or "+key)
	}
	list := f.n.get("points")
	o.Points = f.points("points")
	if len(o.Points) == len(list.items) && len(o.Points) >= 3 {
		c := o.Contour()
		if i, j, _, crossing, _ := geom.Crossing(o.Corners()); crossing {
			f.faultf(o.Points[j].Pos, "list the corners in order round the outline", "side %d of the polygon crosses side %d", j+1, i+1)
		} else if math.Abs(c.AreaMm2()) < 1 {
			f.fault(list.pos, "the polygon has no area", "three corners or more that do not lie on a line")
		}
	}
}

func (f *fields) bore() *parts.Bore {
	b := &parts.Bore{Pos: f.n.pos, Size: f.size("diameter", hole), Leave: f.length("leave"), AfterWeld: f.yes("after-weld")}
	f.not(b.Leave, ">=", b.Size.Nominal, "a few millimetres on the diameter", "leave is %s in a bore of %s")
	return b
}

// path reads SVG path data of one closed contour.
func (r *reader) path(n *node) parts.Text {
	text, ok := r.scalar(n, "path data", `SVG path data such as "M0 0 L100 0 L100 50 Z", in mm, y up`)
	if !ok {
		return parts.Text{}
	}
	p, wrong := geom.ParsePath(text)
	if wrong == "" {
		wrong = geom.CheckContour(p)
	}
	if wrong != "" {
		r.faultf(n.pos, `one closed contour such as "M0 0 L100 0 L100 50 Z", in mm, y up`, "the path cannot be used: %s", wrong)
		return parts.Text{}
	}
	return parts.Text{Value: text, Pos: n.pos}
}
