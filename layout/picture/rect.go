package picture

import (
	"math"

	"centrepop/layout/plan"
)

// rect is an upright rectangle in a plane, in mm.
type rect struct{ min, max plan.XY }

func rectOf(loops [][]plan.XY) rect {
	r := rect{plan.XY{XMm: inf, YMm: inf}, plan.XY{XMm: -inf, YMm: -inf}}
	for _, loop := range loops {
		for _, p := range loop {
			r = r.join(rect{p, p})
		}
	}
	return r
}

func (r rect) join(o rect) rect {
	return rect{plan.XY{XMm: min(r.min.XMm, o.min.XMm), YMm: min(r.min.YMm, o.min.YMm)}, plan.XY{XMm: max(r.max.XMm, o.max.XMm), YMm: max(r.max.YMm, o.max.YMm)}}
}

// meet is what two rectangles share; where they share nothing, what lies between
// them.
func (r rect) meet(o rect) rect {
	x0, x1 := max(r.min.XMm, o.min.XMm), min(r.max.XMm, o.max.XMm)
	y0, y1 := max(r.min.YMm, o.min.YMm), min(r.max.YMm, o.max.YMm)
	return rect{xy(min(x0, x1), min(y0, y1)), xy(max(x0, x1), max(y0, y1))}
}

func (r rect) touches(o rect) bool {
	return r.min.XMm <= o.max.XMm && o.min.XMm <= r.max.XMm && r.min.YMm <= o.max.YMm && o.min.YMm <= r.max.YMm
}

func (r rect) grown(by float64) rect {
	return rect{xy(r.min.XMm-by, r.min.YMm-by), xy(r.max.XMm+by, r.max.YMm+by)}
}

func (r rect) size() plan.XY { return xy(r.max.XMm-r.min.XMm, r.max.YMm-r.min.YMm) }

// longest is the larger of the two.
func (r rect) longest() float64 { return max(r.size().XMm, r.size().YMm) }

func (r rect) centre() plan.XY { return xy((r.max.XMm+r.min.XMm)/2, (r.max.YMm+r.min.YMm)/2) }

// inside is the point of the rectangle nearest to another.
func (r rect) inside(p plan.XY) plan.XY {
	return xy(max(r.min.XMm, min(r.max.XMm, p.XMm)), max(r.min.YMm, min(r.max.YMm, p.YMm)))
}

// long is the centre line along the longer way, a little beyond both ends.
func (r rect) long() [2]plan.XY {
	c, over := r.centre(), 0.15*r.longest()
	if r.size().XMm > r.size().YMm {
		return [2]plan.XY{xy(r.min.XMm-over, c.YMm), xy(r.max.XMm+over, c.YMm)}
	}
	return [2]plan.XY{xy(c.XMm, r.min.YMm-over), xy(c.XMm, r.max.YMm+over)}
}

// half leaves out the half below an axis, or left of an upright one, and of wide
// rings all but their metal, where that shows the rest clearly larger.
func (r rect) half(at, dir plan.XY, loops [][]plan.XY) rect {
	const roomX, roomY = 110, 75 // of a picture on paper
	level := math.Abs(dir.XMm) > math.Abs(dir.YMm)
	outer, inner := max(r.max.YMm-at.YMm, at.YMm-r.min.YMm), inf
	if !level {
		outer = max(r.max.XMm-at.XMm, at.XMm-r.min.XMm)
	}
	for _, loop := range loops {
		near, far := inf, -inf
		for _, p := range loop {
			out := p.YMm - at.YMm
			if !level {
				out = p.XMm - at.XMm
			}
			near, far = min(near, out), max(far, out)
		}
		if far > 0 {
			inner = min(inner, max(0, near))
		}
	}
	scale := func(across float64) float64 {
		if level {
			return min(roomX/r.size().XMm, roomY/across)
		}
		return min(roomX/across, roomY/r.size().YMm)
	}
	from := at
	full, half, ring := scale(2*outer), scale(1.05*outer), scale(outer-0.9*inner)
	switch {
	case ring > 1.3*half && ring > 1.6*full:
		from = xy(at.XMm+0.9*inner, at.YMm+0.9*inner)
	case half > 1.3*full:
		from = xy(at.XMm-0.05*outer, at.YMm-0.05*outer)
	default:
		return r
	}
	if level {
		r.min.YMm = max(r.min.YMm, from.YMm)
	} else {
		r.min.XMm = max(r.min.XMm, from.XMm)
	}
	return r
}

// through is the stretch of a level or upright line that crosses the rectangle.
func (r rect) through(p, dir plan.XY) [2]plan.XY {
	if math.Abs(dir.XMm) > math.Abs(dir.YMm) {
		return [2]plan.XY{xy(r.min.XMm, p.YMm), xy(r.max.XMm, p.YMm)}
	}
	return [2]plan.XY{xy(p.XMm, r.min.YMm), xy(p.XMm, r.max.YMm)}
}

// clipLines keeps of level and upright lines what lies in the rectangle.
func (r rect) clipLines(lines [][2]plan.XY) [][2]plan.XY {
	var out [][2]plan.XY
	for _, l := range lines {
		if r.touches(rectOf([][]plan.XY{l[:]})) {
			out = append(out, [2]plan.XY{r.inside(l[0]), r.inside(l[1])})
		}
	}
	return out
}

// clip keeps of closed contours what lies in the rectangle.
func (r rect) clip(loops [][]plan.XY) [][]plan.XY {
	var out [][]plan.XY
	for _, loop := range loops {
		for _, inside := range []func(plan.XY) float64{
			func(q plan.XY) float64 { return q.XMm - r.min.XMm },
			func(q plan.XY) float64 { return r.max.XMm - q.XMm },
			func(q plan.XY) float64 { return q.YMm - r.min.YMm },
			func(q plan.XY) float64 { return r.max.YMm - q.YMm },
		} {
			loop = clipHalf(loop, inside)
		}
		if len(loop) > 2 {
			out = append(out, loop)
		}
	}
	return out
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
			out = append(out, xy(p.XMm+t*(q.XMm-p.XMm), p.YMm+t*(q.YMm-p.YMm)))
		}
		if dq >= 0 {
			out = append(out, q)
		}
	}
	return out
}
