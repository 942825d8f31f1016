package picture

import (
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

// rect is an upright rectangle in a plane, in mm.
type rect struct{ geom.Box }

func rectOf(loops [][]plan.XY) rect { return rect{geom.BoxOf(slices.Concat(loops...)...)} }

func (r rect) join(o rect) rect { return rect{r.Join(o.Box)} }

// spanning is the rectangle of two of its corners.
func spanning(p, q plan.XY) rect { return rect{geom.BoxOf(p, q)} }

// meet is what two rectangles share; where they share nothing, what lies between
// them.
func (r rect) meet(o rect) rect {
	x0, x1 := max(r.Min.XMm, o.Min.XMm), min(r.Max.XMm, o.Max.XMm)
	y0, y1 := max(r.Min.YMm, o.Min.YMm), min(r.Max.YMm, o.Max.YMm)
	return spanning(xy(x0, y0), xy(x1, y1))
}

func (r rect) touches(o rect) bool {
	return r.Min.XMm <= o.Max.XMm && o.Min.XMm <= r.Max.XMm && r.Min.YMm <= o.Max.YMm && o.Min.YMm <= r.Max.YMm
}

func (r rect) grown(by float64) rect {
	return spanning(xy(r.Min.XMm-by, r.Min.YMm-by), xy(r.Max.XMm+by, r.Max.YMm+by))
}

// longest is the larger of the two.
func (r rect) longest() float64 { return max(r.Size().XMm, r.Size().YMm) }

// inside is the point of the rectangle nearest to another.
func (r rect) inside(p plan.XY) plan.XY {
	return xy(max(r.Min.XMm, min(r.Max.XMm, p.XMm)), max(r.Min.YMm, min(r.Max.YMm, p.YMm)))
}

// long is the centre line along the longer way, a little beyond both ends.
func (r rect) long() [2]plan.XY {
	c, over := r.Middle(), 0.15*r.longest()
	if r.Size().XMm > r.Size().YMm {
		return [2]plan.XY{xy(r.Min.XMm-over, c.YMm), xy(r.Max.XMm+over, c.YMm)}
	}
	return [2]plan.XY{xy(c.XMm, r.Min.YMm-over), xy(c.XMm, r.Max.YMm+over)}
}

// half leaves out the half below an axis, or left of an upright one, and of wide
// rings all but their metal, where that shows the rest clearly larger.
func (r rect) half(at, dir plan.XY, loops [][]plan.XY) rect {
	const roomX, roomY = 110, 75 // of a picture on paper
	level := math.Abs(dir.XMm) > math.Abs(dir.YMm)
	outer, inner := max(r.Max.YMm-at.YMm, at.YMm-r.Min.YMm), inf
	if !level {
		outer = max(r.Max.XMm-at.XMm, at.XMm-r.Min.XMm)
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
			return min(roomX/r.Size().XMm, roomY/across)
		}
		return min(roomX/across, roomY/r.Size().YMm)
	}
	from := at
	full, half, ring := scale(2*outer), scale(1.05*outer), scale(outer-0.9*inner)
	switch {
	case ring > 1.3*half:
		from = xy(at.XMm+0.9*inner, at.YMm+0.9*inner)
	case half > 1.3*full:
		from = xy(at.XMm-0.05*outer, at.YMm-0.05*outer)
	default:
		return r
	}
	if level {
		r.Min.YMm = max(r.Min.YMm, from.YMm)
	} else {
		r.Min.XMm = max(r.Min.XMm, from.XMm)
	}
	return r
}

// through is the stretch of a level or upright line that crosses the rectangle.
func (r rect) through(p, dir plan.XY) [2]plan.XY {
	if math.Abs(dir.XMm) > math.Abs(dir.YMm) {
		return [2]plan.XY{xy(r.Min.XMm, p.YMm), xy(r.Max.XMm, p.YMm)}
	}
	return [2]plan.XY{xy(p.XMm, r.Min.YMm), xy(p.XMm, r.Max.YMm)}
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
			func(q plan.XY) float64 { return q.XMm - r.Min.XMm },
			func(q plan.XY) float64 { return r.Max.XMm - q.XMm },
			func(q plan.XY) float64 { return q.YMm - r.Min.YMm },
			func(q plan.XY) float64 { return r.Max.YMm - q.YMm },
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
