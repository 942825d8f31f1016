package bars

import (
	"math"
	"slices"

	"centrepop/parts/geom"
)

// CornersMm are the radii of a tube's corners outside and inside. Sections are computed
// with twice the wall outside, in millimetres with 2.5 times a wall over 6 mm and three
// times one over 10 mm (EN 10219-2:2006, as its tables are reprinted; in inches, as the AISC
// tables of ASTM A500 weigh).
func (s Section) CornersMm() (outside, inside float64) {
	if !s.Hollow() || s.Shape == Round {
		return 0, 0
	}
	if outside = s.CornerMm; outside == 0 {
		walls := 2.0
		switch {
		case s.Inch || s.WallMm <= 6:
		case s.WallMm <= 10:
			walls = 2.5
		default:
			walls = 3
		}
		outside = math.Min(walls*s.WallMm, math.Min(s.WidthMm, s.DepthMm)/2)
	}
	return outside, math.Max(0, outside-s.WallMm)
}

// Loops are the closed contours of the section, the outside first: x up, y towards who
// looks at the front (0 on the front, negative behind it).
func (s Section) Loops() []geom.Loop {
	w, d, t := s.WidthMm/2, s.DepthMm, s.WallMm
	switch {
	case s.Shape == Round:
		out := []geom.Loop{circle(w, w)}
		if s.Hollow() {
			out = append(out, circle(w, w-t))
		}
		return out
	case s.Shape == Angle:
		root := s.rootMm()
		sharp := []geom.Point{{XMm: w}, {XMm: w, YMm: -t}, {XMm: -w + t, YMm: -t}, {XMm: -w + t, YMm: -d}, {XMm: -w, YMm: -d}, {XMm: -w}}
		return []geom.Loop{geom.RoundedLoop(sharp, 0, root/2, root, root/2, 0, 0)} // EN 10056-1: a toe has half the root
	case s.Shape == Channel:
		root := s.rootMm()
		return []geom.Loop{geom.RoundedLoop(s.channel(), 0, 0, 0, root, root, 0, 0, 0)}
	case s.Hollow():
		outside, inside := s.CornersMm()
		return []geom.Loop{s.box(0, outside), s.box(t, inside)}
	}
	return []geom.Loop{s.box(0, 0)}
}

// box is a rectangle so far inside the section's own, its corners rounded.
func (s Section) box(inMm, cornerMm float64) geom.Loop {
	w, d := s.WidthMm/2-inMm, s.DepthMm-inMm
	return geom.RectangleLoop(geom.Point{XMm: -w, YMm: -d}, geom.Point{XMm: w, YMm: -inMm}, cornerMm)
}

// channel is a U: in a frame where its web lies at u = 0 and its flanges go to u =
// reach, v across.
func (s Section) channel() (out []geom.Point) {
	across, reach := s.WidthMm, s.DepthMm
	if s.Open == Top || s.Open == Bottom {
		across, reach = s.DepthMm, s.WidthMm
	}
	h, t, f := across/2, s.WallMm, s.FlangeMm
	for _, q := range [][2]float64{{0, -h}, {reach, -h}, {reach, f - h}, {t, f - h}, {t, h - f}, {reach, h - f}, {reach, h}, {0, h}} {
		u, v := q[0], q[1]
		switch s.Open {
		case Front:
			out = append(out, geom.Point{XMm: v, YMm: u - s.DepthMm})
		case Top:
			out = append(out, geom.Point{XMm: u - s.WidthMm/2, YMm: v - s.DepthMm/2})
		case Bottom:
			out = append(out, geom.Point{XMm: s.WidthMm/2 - u, YMm: v - s.DepthMm/2})
		default:
			out = append(out, geom.Point{XMm: v, YMm: -u})
		}
	}
	return out
}

func circle(w, r float64) geom.Loop {
	return geom.Loop{{Point: geom.Point{XMm: r, YMm: -w}, Bulge: 1}, {Point: geom.Point{XMm: -r, YMm: -w}, Bulge: 1}}
}

// moments are the area of the metal, and its moment about the middle of the width.
func (s Section) moments() (area, first float64) {
	for i, loop := range s.Loops() {
		a, m := loop.Area()
		if (a < 0) == (i == 0) { // the outside counts, holes are taken off, whichever way they run
			a, m = -a, m.Times(-1)
		}
		area, first = area+a, first+m.XMm
	}
	return area, first
}

// SeamMm is the length of the seam of a cut at an angle from square, 0 to under 90°, that
// goes across the width: along the middle of walls and legs, across the front of a solid bar.
func (s Section) SeamMm(cutDeg float64) float64 {
	w, d, t, across := s.WidthMm, s.DepthMm, s.WallMm, 1/cos(cutDeg)
	switch {
	case s.Shape == Angle:
		return (w-t/2)*across + d - t/2
	case s.Shape == Channel && (s.Open == Top || s.Open == Bottom):
		return (2*w-t)*across + d - s.FlangeMm
	case s.Shape == Channel:
		return (w-s.FlangeMm)*across + 2*d - t
	case !s.Hollow():
		return w * across
	}
	sum := 0.0
	for _, loop := range s.Loops() {
		pts := loop.Points(arcPieces)
		for i, p := range pts {
			step := pts[(i+1)%len(pts)].Minus(p)
			sum += math.Hypot(step.XMm*across, step.YMm) / 2
		}
	}
	return sum
}

// Outside are the sides that the seam of a cut is welded from: those of a tube's walls, the
// outside of an angle and of a channel, the front of a solid bar.
func (s Section) Outside() []Side {
	switch {
	case s.Shape == Angle:
		return []Side{Front, Bottom}
	case s.Shape == Channel:
		return slices.DeleteFunc([]Side{Front, Back, Top, Bottom}, func(side Side) bool { return side == s.Open })
	case s.Hollow():
		return []Side{Front, Back, Top, Bottom}
	}
	return []Side{Front}
}

// arcPieces stand for an arc in the length of a seam.
const arcPieces = 64

// AreaMm2 is the area of the metal.
func (s Section) AreaMm2() float64 { area, _ := s.moments(); return area }

// PackedMm is how high packing under the front leg of an angle is that lies with its front up: it stands on the
// edge of its other leg, and without packing it tips, for the middle of its mass lies beside that edge. 0 of
// what stands by itself so.
func (s Section) PackedMm() float64 {
	if area, first := s.moments(); s.Shape != Angle || first/area <= s.WallMm-s.WidthMm/2 {
		return 0
	}
	return s.DepthMm - s.WallMm
}

// VolumeMm3 is that of a member of the section, its cuts straight across.
func (s Section) VolumeMm3(m Member) float64 {
	area, first := s.moments()
	return area*m.LengthMm + first*(tan(m.StartDeg)+tan(m.EndDeg))
}

// Metal lists, from the front, the stretches behind it that have metal half way up:
// walls, a web, or all of it. Of an angle it is the leg in front.
func (s Section) Metal() []geom.Span {
	d, t := s.DepthMm, s.WallMm
	switch {
	case s.Hollow(), s.Shape == Channel && (s.Open == Top || s.Open == Bottom):
		if s.Shape == Channel {
			t = s.FlangeMm
		}
		return []geom.Span{{ToMm: t}, {FromMm: d - t, ToMm: d}}
	case s.Shape == Angle, s.Shape == Channel && s.Open != Front:
		return []geom.Span{{ToMm: t}}
	case s.Shape == Channel:
		return []geom.Span{{FromMm: d - t, ToMm: d}}
	}
	return []geom.Span{{ToMm: d}}
}

// AtMm is the metal that a drill goes through from a side: one wall, or all of a
// solid bar. It is 0 where the side is open.
func (s Section) AtMm(side Side) float64 {
	switch {
	case s.Hollow():
		return s.WallMm
	case s.Shape == Angle && (side == Front || side == Bottom):
		return s.WallMm
	case s.Shape == Angle:
		return 0
	case s.Shape == Channel && side == s.Open:
		return 0
	case s.Shape == Channel && side == opposite(s.Open):
		return s.WallMm
	case s.Shape == Channel:
		return s.FlangeMm
	case side == Top || side == Bottom:
		return s.WidthMm
	}
	return s.DepthMm
}

func opposite(side Side) Side {
	return map[Side]Side{Front: Back, Back: Front, Top: Bottom, Bottom: Top}[side]
}

// FlatMm is the flat of a side across the bar, from its middle as seen by who looks at
// the side with the start at the left: y up on front and back, to the back on the top and
// to the front on the bottom. What lies outside is a corner's radius, or has another leg or
// flange behind it.
func (s Section) FlatMm(side Side) (low, high float64) {
	half := s.WidthMm / 2
	if side == Top || side == Bottom {
		half = s.DepthMm / 2
	}
	outside, _ := s.CornersMm()
	low, high = outside-half, half-outside
	switch {
	case s.Shape == Angle && side == Front: // its lower edge is the heel
		low += s.WallMm
	case s.Shape == Angle: // seen from below, front up
		high -= s.WallMm
	case s.Shape == Channel && side == opposite(s.Open):
		low, high = low+s.FlangeMm, high-s.FlangeMm
	case s.Shape == Channel && (s.Open == Top || s.Open == Back && side == Top || s.Open == Front && side == Bottom):
		low += s.WallMm
	case s.Shape == Channel:
		high -= s.WallMm
	}
	return low, high
}
