package geom

import (
	"math"

	"github.com/tdewolff/canvas"
)

// Circle is a circle about the origin.
func Circle(diameterMm float64) *canvas.Path { return canvas.Circle(diameterMm / 2) }

// Rectangle is a rectangle centred on the origin, with round corners where
// cornerMm is over 0.
func Rectangle(widthMm, heightMm, cornerMm float64) *canvas.Path {
	return centred(canvas.RoundedRectangle(widthMm, heightMm, cornerMm))
}

// Obround is a slot centred on the origin: a rectangle whose shorter sides are
// half circles.
func Obround(lengthMm, widthMm float64) *canvas.Path {
	return Rectangle(lengthMm, widthMm, math.Min(lengthMm, widthMm)/2)
}

// Regular is a regular polygon about the origin with a corner at firstDeg.
// Across flats is twice the inscribed radius, for odd counts too.
func Regular(sides int, acrossFlatsMm, firstDeg float64) *canvas.Path {
	_, cos := SinCosDeg(180 / float64(sides))
	corners := make([]Point, sides)
	for i := range corners {
		corners[i] = Clock(acrossFlatsMm/2/cos, firstDeg+360*float64(i)/float64(sides))
	}
	return Polygon(corners)
}

// Polygon is the closed polygon of the corners.
func Polygon(corners []Point) *canvas.Path {
	p := &canvas.Path{}
	for i, q := range corners {
		if i == 0 {
			p.MoveTo(q.XMm, q.YMm)
		} else {
			p.LineTo(q.XMm, q.YMm)
		}
	}
	p.Close()
	return p
}

// Bounds is the bounding box of a path, exact for lines and circular arcs.
func Bounds(p *canvas.Path) Box {
	b := p.Bounds()
	return Box{Point{Clean(b.X0), Clean(b.Y0)}, Point{Clean(b.X1), Clean(b.Y1)}}
}

// centred moves a path so that its bounding box is centred on the origin.
func centred(p *canvas.Path) *canvas.Path {
	b := p.Bounds()
	return p.Translate(-(b.X0+b.X1)/2, -(b.Y0+b.Y1)/2)
}
