package parts

import "centrepop/parts/geom"

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
		return geom.NewContour(geom.Polygon(o.Corners()))
	case o.Shape == PathOutline:
		if p, wrong := geom.ParsePath(o.Path.Value); wrong == "" {
			return geom.NewContour(p)
		}
	}
	return geom.NewContour(geom.Circle(w))
}

// Corners of a polygon that lists them.
func (o *Outline) Corners() []geom.Point {
	out := make([]geom.Point, len(o.Points))
	for i, p := range o.Points {
		out[i] = p.At()
	}
	return out
}

// At is the point without where it was written.
func (p Point) At() geom.Point { return geom.Point{XMm: p.X.Mm, YMm: p.Y.Mm} }
