package assembly

import (
	"math"

	"centrepop/parts/geom"
)

// Turned is a section turned about the z axis: its outside contour from one end
// to the other, and its bore's, which may be empty, blind, or end on the axis.
func Turned(outer, inner []ZR) Simple { return simple(newTurned(outer, inner)) }

// Cylinder is a round bar, or what a drill removes, between two heights.
func Cylinder(radiusMm, lowMm, highMm float64) Simple {
	return Turned([]ZR{{lowMm, radiusMm}, {highMm, radiusMm}}, nil)
}

// Tube is a ring or tube between two heights.
func Tube(outsideMm, insideMm, lowMm, highMm float64) Simple {
	return Turned([]ZR{{lowMm, outsideMm}, {highMm, outsideMm}}, []ZR{{lowMm, insideMm}, {highMm, insideMm}})
}

// Prism is an outline between two heights.
func Prism(o Outline, lowMm, highMm float64) Simple {
	return Mitred(o, End{AtMm: lowMm}, End{AtMm: highMm})
}

// Mitred is an outline between two planes, the lower one below the other all over the outline.
func Mitred(o Outline, low, high End) Simple { return simple(&prism{newRegion(o), low, high}) }

// Cuboid is a box between two opposite corners.
func Cuboid(low, high Vec) Simple {
	return Prism(Outline{geom.RectangleLoop(geom.Point{XMm: low.X, YMm: low.Y}, geom.Point{XMm: high.X, YMm: high.Y}, 0)}, low.Z, high.Z)
}

// roundCorners is how many corners stand for a circle of a ruled body; they
// stand outside it so that the area is the circle's.
const roundCorners = 72

// circleCorners are n points round a centre, from angle 45° on, a polygon of
// the circle's area.
func circleCorners(centre geom.Point, radiusMm float64, n int) []geom.Point {
	step := 2 * math.Pi / float64(n)
	r := radiusMm * math.Sqrt(step/math.Sin(step))
	out := make([]geom.Point, n)
	for i := range out {
		sin, cos := math.Sincos(math.Pi/4 + step*float64(i))
		out[i] = centre.Plus(geom.Point{XMm: r * cos, YMm: r * sin})
	}
	return out
}

// Leaning is a solid between a circle about the axis at one height and a circle
// elsewhere at another: the outside, or the inside, of an eccentric cone.
func Leaning(lowRadiusMm, lowMm, highRadiusMm float64, highCentre geom.Point, highMm float64) Simple {
	a, b := circleCorners(geom.Point{}, lowRadiusMm, roundCorners), circleCorners(highCentre, highRadiusMm, roundCorners)
	return ruledBetween(a, b, lowMm, highMm)
}

// ruledBetween puts the polygon at the lower height first.
func ruledBetween(a, b []geom.Point, lowMm, highMm float64) Simple {
	if lowMm > highMm {
		a, b, lowMm, highMm = b, a, highMm, lowMm
	}
	return simple(newRuled(a, b, lowMm, highMm))
}

// SquareToRound is a solid between a rectangle of a size about the axis at one height and
// a circle at another: flats to the circle where its tangent runs along them,
// a quarter of a leaning cone at each corner.
func SquareToRound(size geom.Point, lowMm, radiusMm float64, centre geom.Point, highMm float64) Simple {
	const quarter = roundCorners / 4
	circle := circleCorners(centre, radiusMm, roundCorners)
	w, d := size.XMm/2, size.YMm/2
	corners := [4]geom.Point{{XMm: w, YMm: d}, {XMm: -w, YMm: d}, {XMm: -w, YMm: -d}, {XMm: w, YMm: -d}}
	var a, b []geom.Point
	for k, c := range corners {
		// The corner at 45° serves the circle from 0° to 90°.
		for i := -quarter / 2; i <= quarter/2; i++ {
			a, b = append(a, c), append(b, circle[(k*quarter+i+roundCorners)%roundCorners])
		}
	}
	return ruledBetween(a, b, lowMm, highMm)
}

// Hexagon is a nut's or a head's prism by its width across flats.
func Hexagon(acrossFlatsMm, lowMm, highMm float64) Simple {
	pts := make([]geom.Point, 6)
	for i := range pts {
		p := Clock(acrossFlatsMm/math.Sqrt(3), float64(60*i))
		pts[i] = geom.Point{XMm: p.X, YMm: p.Y}
	}
	return Prism(Outline{geom.PolygonLoop(pts...)}, lowMm, highMm)
}
