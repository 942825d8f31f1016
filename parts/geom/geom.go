// Package geom is the plane geometry that the reader and the layout share:
// points, clock angles, patterns of holes, outlines, and what is inside them.
// A hole pattern or an outline is worked out here and nowhere else, so that
// what is checked and what is printed cannot differ.
//
// Lengths are millimetres and angles degrees; x is to the right, y up. Clock
// angles are 0° at TOP (12 o'clock) and run clockwise. The package knows
// neither parts nor files. Path data follow SVG 1.1 chapter 8.
package geom

import (
	"iter"
	"math"

	"centrepop/parts/seq"
)

// MmPerInch is exact by definition (international yard and pound agreement,
// 1959).
const MmPerInch = 25.4

// KgPerPound is the avoirdupois pound, exact by definition (NIST SP 811).
const KgPerPound = 0.45359237

// CloseMm is the slack of geometric comparisons, against the rounding of
// inches.
const CloseMm = 1e-6

// Over tells whether a length, or an angle, is more than another by more than that slack.
func Over(aMm, bMm float64) bool { return aMm > bMm+CloseMm }

// Some tells whether a length, or an angle, is more than nothing by more than that slack, and Short whether it is less.
func Some(mm float64) bool  { return Over(mm, 0) }
func Short(mm float64) bool { return Some(-mm) }

// Alike tells whether two lengths differ by that slack at the most.
func Alike(aMm, bMm float64) bool { return !Some(math.Abs(aMm - bMm)) }

// LargestMm is the largest length and coordinate in millimetres.
const LargestMm = 10_000.0

// Point is a point in millimetres, x right, y up.
type Point struct {
	XMm float64 `json:"x_mm"`
	YMm float64 `json:"y_mm"`
}

// Mirrored is the point as seen from the other face.
func (p Point) Mirrored() Point { return Point{Clean(-p.XMm), p.YMm} }

// Plus is the sum of two points taken as vectors.
func (p Point) Plus(q Point) Point { return Point{p.XMm + q.XMm, p.YMm + q.YMm} }

// Minus is the vector from q to p.
func (p Point) Minus(q Point) Point { return Point{p.XMm - q.XMm, p.YMm - q.YMm} }

// Times is the vector made f times as long.
func (p Point) Times(f float64) Point { return Point{p.XMm * f, p.YMm * f} }

// Cross is the cross product in mm²: over 0 where q is anticlockwise of p.
func (p Point) Cross(q Point) float64 { return p.XMm*q.YMm - p.YMm*q.XMm }

// Dot is the dot product in mm².
func (p Point) Dot(q Point) float64 { return p.XMm*q.XMm + p.YMm*q.YMm }

// LengthMm is the distance from the origin.
func (p Point) LengthMm() float64 { return math.Sqrt(p.Dot(p)) }

// unit is the vector made 1 long; what runs level or plumb stays so to the last digit.
func (p Point) unit() Point { return Point{p.XMm / p.LengthMm(), p.YMm / p.LengthMm()} }

// Distance is the straight distance between two points in mm.
func Distance(a, b Point) float64 { return math.Hypot(a.XMm-b.XMm, a.YMm-b.YMm) }

// Mean is the middle of some points, that count alike; the origin of none.
func Mean(of []Point) (at Point) {
	n := float64(len(of))
	for _, q := range of {
		at = at.Plus(Point{XMm: q.XMm / n, YMm: q.YMm / n})
	}
	return at
}

// MeanRadiusMm is how far from the origin places lie, as a mean; 0 for none.
func MeanRadiusMm(pts []Point) float64 {
	return seq.Sum(pts, Point.LengthMm) / float64(max(1, len(pts)))
}

// Clock is the point at a clock angle on a circle about the origin.
func Clock(radiusMm, clockDeg float64) Point {
	sin, cos := SinCosDeg(clockDeg)
	return Point{Clean(radiusMm * sin), Clean(radiusMm * cos)}
}

// OnClock brings an angle into 0 ≤ a < 360. 359.9999999999 from rounding is TOP.
func OnClock(deg float64) float64 {
	a := math.Mod(deg, 360)
	if a < 0 {
		a += 360
	}
	if a = Clean(a); a >= 360 {
		a = 0
	}
	return a
}

// Evenly are n clock angles evenly round, the first at TOP, by their number.
func Evenly(n int) iter.Seq2[int, float64] {
	return func(yield func(int, float64) bool) {
		for k := range n {
			if !yield(k, 360*float64(k)/float64(n)) {
				return
			}
		}
	}
}

// Common is the largest number that divides two whole ones, neither less than 0: by it two ways of parting a round agree.
func Common(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// ClockDeg is the clock angle of a point, 0 ≤ a < 360; 0 at the origin.
func ClockDeg(p Point) float64 {
	if p.XMm == 0 && p.YMm == 0 {
		return 0
	}
	a := Clean(math.Atan2(p.XMm, p.YMm) * 180 / math.Pi)
	if a < 0 {
		a += 360
	}
	return a
}

// SinCosDeg is exact at the multiples of 90°, so that coordinates do not print
// as 6.1e-15.
func SinCosDeg(deg float64) (sin, cos float64) {
	q := math.Round(deg / 90)
	s, c := math.Sincos((deg - 90*q) * math.Pi / 180)
	switch int(math.Mod(q, 4)) & 3 {
	case 1:
		return c, -s
	case 2:
		return -s, -c
	case 3:
		return -c, s
	}
	return s, c
}

// Clean rounds to 1e-9: far below anything that prints, and it hides the last
// digit in which machines may differ. It never gives −0.
func Clean(v float64) float64 {
	if v = math.Round(v*1e9) / 1e9; v == 0 {
		return 0
	}
	return v
}

// Box is an upright rectangle, such as the bounds of an outline.
type Box struct{ Min, Max Point }

// BoxOf is the least box around points; around none it is inside out, without end.
func BoxOf(points ...Point) Box {
	b := Box{Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}}
	for _, p := range points {
		b = b.Join(Box{p, p})
	}
	return b
}

// Join is the least box around two.
func (b Box) Join(o Box) Box {
	return Box{Point{min(b.Min.XMm, o.Min.XMm), min(b.Min.YMm, o.Min.YMm)}, Point{max(b.Max.XMm, o.Max.XMm), max(b.Max.YMm, o.Max.YMm)}}
}

// Size is the width and the height of the box, mm.
func (b Box) Size() Point { return b.Max.Minus(b.Min) }

// Middle is the middle of the box.
func (b Box) Middle() Point { return b.Min.Plus(b.Max).Times(0.5) }

// Mirrored is the box as seen from the other face.
func (b Box) Mirrored() Box { return Box{Point{-b.Max.XMm, b.Min.YMm}, Point{-b.Min.XMm, b.Max.YMm}} }
