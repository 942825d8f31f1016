package layout

import (
	"math"

	"github.com/tdewolff/canvas"

	"centrepop/parts"
)

// outlinePath is the outline of a flat part seen on the front face, or the
// largest circle of a round one; millimetres, y up.
func (r *resolver) outlinePath() *canvas.Path {
	o := r.part.Outline
	if o == nil {
		if f := r.part.Frustum; f != nil {
			return canvas.Circle(f.Large.Mm / 2)
		}
		if t := r.part.Transition; t != nil {
			return centred(roundedBox(t.Width.Mm, t.Depth.Mm, 0))
		}
		return canvas.Circle(r.widest().size.nominalMm / 2)
	}
	w, h := o.Width.Mm, o.Height.Mm
	switch o.Shape {
	case parts.SquareOutline:
		return centred(roundedBox(w, w, o.Corner.Mm))
	case parts.RectangleOutline:
		return centred(roundedBox(w, h, o.Corner.Mm))
	case parts.SlotOutline:
		return centred(roundedBox(w, h, math.Min(w, h)/2))
	case parts.PolygonOutline:
		return polygon(o)
	case parts.PathOutline:
		// parts has checked the syntax and that it closes.
		path, err := canvas.ParseSVGPath(o.Path.Value)
		if err != nil {
			r.fault(o.Path.Pos, "path data cannot be read: "+err.Error(), "SVG path data in millimetres, closed with Z")
			return canvas.Circle(1)
		}
		if !path.Closed() {
			r.fault(o.Path.Pos, "the outline is open", "close it with Z")
		}
		return path
	}
	return canvas.Circle(w / 2)
}

func roundedBox(w, h, corner float64) *canvas.Path {
	if corner <= 0 {
		return canvas.Rectangle(w, h)
	}
	return canvas.RoundedRectangle(w, h, corner)
}

// centred moves a path so that its bounding box is centred on the origin.
func centred(p *canvas.Path) *canvas.Path {
	b := p.Bounds()
	return p.Translate(-(b.X0+b.X1)/2, -(b.Y0+b.Y1)/2)
}

// polygon is a regular polygon by its width across flats, or the listed points.
func polygon(o *parts.Outline) *canvas.Path {
	p := &canvas.Path{}
	if len(o.Points) > 0 {
		for i, q := range o.Points {
			if i == 0 {
				p.MoveTo(q.X.Mm, q.Y.Mm)
			} else {
				p.LineTo(q.X.Mm, q.Y.Mm)
			}
		}
		p.Close()
		return p
	}
	// Across flats is twice the inscribed radius, for odd counts too.
	_, cos := sinCosDeg(180 / float64(o.Sides))
	radius := o.Width.Mm / 2 / cos
	for i := range o.Sides {
		q := Clock(radius, o.First.Deg+360*float64(i)/float64(o.Sides))
		if i == 0 {
			p.MoveTo(q.XMm, q.YMm)
		} else {
			p.LineTo(q.XMm, q.YMm)
		}
	}
	p.Close()
	return p
}

// areaMm2 is the area inside a closed path, by the shoelace formula on a
// polyline within 0.001 mm of the path.
func areaMm2(p *canvas.Path) float64 {
	sum := 0.0
	for _, sub := range p.Flatten(0.001).Split() {
		pts := sub.Coords()
		for i := range pts {
			a, b := pts[i], pts[(i+1)%len(pts)]
			sum += float64(a.X*b.Y) - float64(b.X*a.Y)
		}
	}
	return math.Abs(sum) / 2
}

func mirrored(p *canvas.Path) *canvas.Path {
	return p.Transform(canvas.Identity.Scale(-1, 1))
}
