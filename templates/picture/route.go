package picture

import (
	"cmp"
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
)

// What a way of a leader costs, in millimetres of leaning.
const (
	kneeCost   = 1.5
	besideCost = 8.0   // with another leader hardly beside it
	crossCost  = 25.0  // over another leader
	metalCost  = 40.0  // through other metal than its surface
	textCost   = 400.0 // through a text
	clearMm    = 0.55  // beside a text, and half of it between leaders
	waysAcross = 8     // places that are tried over a label and over a surface
)

// route draws the leaders of labels from where they leave their rows to their surfaces: as
// they lean least without a text of a length, another leader or metal in their way.
func (v *dimensioned) route(list []*label, side float64) {
	for _, l := range list {
		way := v.way(l, side)
		last := len(way) - 1
		for i := 1; i < last; i++ {
			v.lead(way[i-1].X, way[i-1].Y, way[i].X, way[i].Y)
		}
		a, b := way[last-1], way[last]
		v.leaders = append(v.leaders, [4]float64{a.X, a.Y, b.X, b.Y})
		v.p.Draw.Add(leaderTo(a.X, a.Y, b.X, b.Y)...)
	}
}

// way is the cheapest way of a leader: straight, or with a knee over and under each row of texts.
func (v *dimensioned) way(l *label, side float64) []canvas.Point {
	end := v.surface(l, side)
	onto := v.onto(l)
	from, tips := across(v.starts(l), l.middle), across(onto, l.middle)
	line := func(xs []float64, y float64) []canvas.Point {
		return seq.Map(xs, func(x float64) canvas.Point { return canvas.Point{X: x, Y: y} })
	}
	first, last := line(from, l.at), line(tips, end)
	best, least := []canvas.Point{first[0], last[0]}, math.Inf(1)
	for _, a := range first {
		for _, b := range last {
			if c := v.cost(l, a, b, true); c < least {
				best, least = []canvas.Point{a, b}, c
			}
		}
	}
	if least < crossCost {
		return best
	}
	ways := seq.Map(first, func(a canvas.Point) trial { return trial{[]canvas.Point{a}, 0} })
	rows := v.rowsBetween(l.at, end)
	for _, row := range rows {
		gaps := v.gaps(row, slices.Concat(from, tips))
		ways = v.on(l, ways, line(gaps, row.enter), false)
		for i := range ways {
			down := canvas.Point{X: gaps[i], Y: row.leave}
			ways[i].cost += v.cost(l, ways[i].end(), down, false)
			ways[i].points = append(ways[i].points, down)
		}
	}
	for _, w := range v.on(l, ways, last, true) {
		if w.cost < least {
			best, least = w.points, w.cost
		}
	}
	return best
}

// trial is a way so far, and what it costs.
type trial struct {
	points []canvas.Point
	cost   float64
}

func (t trial) end() canvas.Point { return t.points[len(t.points)-1] }

// on takes ways on to points, each by the cheapest.
func (v *dimensioned) on(l *label, ways []trial, to []canvas.Point, last bool) []trial {
	return seq.Map(to, func(b canvas.Point) trial {
		best := trial{cost: math.Inf(1)}
		for _, w := range ways {
			a := w.end()
			c := w.cost + v.cost(l, a, b, last)
			if len(w.points) > 1 && math.Abs(b.X-a.X) > 0.1 {
				c += kneeCost
			}
			if c < best.cost {
				best = trial{append(slices.Clip(w.points), b), c}
			}
		}
		return best
	})
}

// across are places from one to another, the nearest to a wanted one among them.
func across(ends [2]float64, wanted float64) []float64 {
	out := []float64{min(max(wanted, ends[0]), ends[1])}
	for i := range waysAcross + 1 {
		out = append(out, ends[0]+(ends[1]-ends[0])*float64(i)/waysAcross)
	}
	return out
}

// textRow are texts at a height, with where a leader enters and leaves it.
type textRow struct {
	texts        []draw.Rect
	enter, leave float64
}

// rowsBetween are the rows of the texts of lengths between two heights, in the order from one to the other.
func (v *dimensioned) rowsBetween(from, to float64) (rows []textRow) {
	texts := seq.Keep(v.texts, func(r draw.Rect) bool { return (r.Y0-from)*(r.Y0-to) < 0 })
	slices.SortStableFunc(texts, func(a, b draw.Rect) int {
		if from > to {
			a, b = b, a
		}
		return cmp.Compare(a.Y1, b.Y1)
	})
	for _, r := range texts {
		if n := len(rows); n == 0 || math.Abs(rows[n-1].texts[0].Y1-r.Y1) > 1 {
			rows = append(rows, textRow{})
		}
		row := &rows[len(rows)-1]
		row.texts = append(row.texts, r)
		all := row.texts[0]
		for _, o := range row.texts {
			all = all.With(o)
		}
		if row.enter, row.leave = all.Y1+0.2, all.Y0-0.2; from < to {
			row.enter, row.leave = row.leave, row.enter
		}
	}
	return rows
}

// gaps are the places beside the texts of a row, and of others those clear of them.
func (v *dimensioned) gaps(row textRow, others []float64) []float64 {
	for _, r := range row.texts {
		others = append(others, r.X0-clearMm, r.X1+clearMm)
	}
	return seq.Keep(others, func(x float64) bool {
		return x > 0 && x < v.p.Width && !slices.ContainsFunc(row.texts, func(r draw.Rect) bool { return x > r.X0-clearMm+1e-6 && x < r.X1+clearMm-1e-6 })
	})
}

// cost is that of a piece of a leader; the last ends on the surface of its label.
func (v *dimensioned) cost(l *label, a, b canvas.Point, last bool) float64 {
	c := math.Abs(a.X - b.X)
	for _, r := range v.texts {
		if meets(a, b, draw.R(r.X0-clearMm+0.1, r.Y0-0.1, r.X1+clearMm-0.1, r.Y1+0.1)) {
			c += textCost
		}
	}
	for _, o := range v.leaders {
		from, to := canvas.Point{X: o[0], Y: o[1]}, canvas.Point{X: o[2], Y: o[3]}
		switch {
		case draw.Cross(a, b, from, to):
			c += crossCost
		case beside(a, b, from, to):
			c += besideCost
		}
	}
	if last && v.throughMetal(l, a, b) {
		c += metalCost
	}
	return c
}

// beside tells whether two pieces of leaders are hardly apart in the middle of the first.
func beside(a, b, from, to canvas.Point) bool {
	mid := a.Interpolate(b, 0.5)
	if (from.Y-mid.Y)*(to.Y-mid.Y) >= 0 {
		return false
	}
	return math.Abs(from.X+(to.X-from.X)*(mid.Y-from.Y)/(to.Y-from.Y)-mid.X) < clearMm
}

// meets tells whether a line meets a rectangle.
func meets(a, b canvas.Point, r draw.Rect) bool {
	corners := [4]canvas.Point{{X: r.X0, Y: r.Y0}, {X: r.X1, Y: r.Y0}, {X: r.X1, Y: r.Y1}, {X: r.X0, Y: r.Y1}}
	for i, p := range corners {
		if draw.Cross(a, b, p, corners[(i+1)%4]) {
			return true
		}
	}
	return r.HasPoint(a.X, a.Y) || r.HasPoint(b.X, b.Y)
}

// throughMetal tells whether a leader to a surface goes through metal that stands past it, in a half section.
func (v *dimensioned) throughMetal(l *label, a, b canvas.Point) bool {
	const steps, grazeMm = 12, 0.3
	if v.s.Whole != nil {
		return false
	}
	contour := v.s.Outer
	if l.Inside {
		contour = v.s.Inner
	}
	for i := range steps {
		p := a.Interpolate(b, float64(i)/steps)
		low, high := heights(contour, (p.X-v.x0)*v.s.LengthMm/v.w)
		if !l.Inside && p.Y < v.y(high)-grazeMm || l.Inside && p.Y > v.y(low)+grazeMm {
			return true
		}
	}
	return false
}

// heights are the least and the greatest radius of a contour at a place along the axis; beyond its ends none
// is in the way.
func heights(contour []plan.XY, z float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for i := 1; i < len(contour); i++ {
		p, q := contour[i-1], contour[i]
		if p.XMm > q.XMm {
			p, q = q, p
		}
		if z < p.XMm || z > q.XMm {
			continue
		}
		r := p.YMm
		if q.XMm > p.XMm {
			r += (q.YMm - p.YMm) * (z - p.XMm) / (q.XMm - p.XMm)
		}
		low, high = min(low, r), max(high, r)
	}
	return low, high
}
