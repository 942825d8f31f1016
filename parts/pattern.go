package parts

import (
	"fmt"
	"math"

	"centrepop/parts/geom"
)

// patterns lists how holes and slots can be laid out: the key in the input and
// what reads its value. Each gives the pattern its shape and count.
var patterns = []struct {
	kind PatternKind
	read func(r *reader, v *node, p *Pattern)
}{
	{"circle", (*reader).ring},
	{"arc", (*reader).arc},
	{"angles", (*reader).anglesOnCircle},
	{"grid", (*reader).grid},
	{"staggered", (*reader).staggered},
	{pointsPattern, (*reader).listed},
}

// pointsPattern is the only one that takes a datum.
const pointsPattern PatternKind = "at"

var patternKeys = func() (keys []string) {
	for _, p := range patterns {
		keys = append(keys, string(p.kind))
	}
	return keys
}()

// pattern reads where holes or slots are.
func (r *reader) pattern(n *node) Pattern {
	p := Pattern{Pos: n.pos, Datum: "centre"}
	if d := n.get("datum"); d != nil {
		if n.get(string(pointsPattern)) == nil {
			r.fault(n.keyPos("datum"), "datum is only for points listed with at", "delete datum, or list the points with at")
		} else if w := r.word(d, "centre", "left-bottom", "left-top", "right-bottom", "right-top"); w != "" {
			p.Datum = w
		}
	}
	key, v := r.oneOf(n, patternKeys...)
	p.Kind = PatternKind(key)
	for _, known := range patterns {
		if known.kind == p.Kind {
			p.Pos = v.pos
			known.read(r, v, &p)
		}
	}
	return p
}

func (r *reader) ring(v *node, p *Pattern) {
	if !r.group(v, "pcd", "count", "first") {
		return
	}
	const form = "circle: {pcd: 140, count: 6, first: 30}"
	p.PCD = r.length(r.need(v, "pcd", form), positive)
	p.Count = r.count(r.need(v, "count", form), 1, maxCount)
	p.Shape = geom.Ring{PCDMm: p.PCD.Mm, Count: p.Count, FirstDeg: r.clock(v.get("first")).Deg}
}

func (r *reader) arc(v *node, p *Pattern) {
	if !r.group(v, "pcd", "count", "first", "last") {
		return
	}
	const form = "arc: {pcd: 140, count: 4, first: 30, last: 150}"
	p.PCD = r.length(r.need(v, "pcd", form), positive)
	p.Count = r.count(r.need(v, "count", form), 2, maxCount)
	first, ok1 := r.angle(r.need(v, "first", form), -360, 360)
	last, ok2 := r.angle(r.need(v, "last", form), -360, 360)
	if ok1 && ok2 && geom.SweepDeg(first.Deg, last.Deg) == 360 {
		r.faultf(last.Pos, "two different angles; circle spaces holes all round",
			"the arc runs from %g to %g degrees, the same place", first.Deg, last.Deg)
	}
	p.Shape = geom.Arc{PCDMm: p.PCD.Mm, Count: p.Count, FirstDeg: first.Deg, LastDeg: last.Deg}
}

func (r *reader) anglesOnCircle(v *node, p *Pattern) {
	if !r.group(v, "pcd", "at") {
		return
	}
	p.PCD = r.length(r.need(v, "pcd", "the pitch circle diameter"), positive)
	shape := geom.Angles{PCDMm: p.PCD.Mm}
	for _, a := range r.angles(r.need(v, "at", "the clock angles, such as [0, 75, 200]")) {
		shape.Deg = append(shape.Deg, a.Deg)
	}
	p.Shape, p.Count = shape, len(shape.Deg)
}

func (r *reader) grid(v *node, p *Pattern) {
	g := r.rows(v, "grid: {columns: 3, rows: 2, pitch: [40, 30], centre: [0, 0]}", 1)
	p.Shape, p.Count = g, r.placesIn(v, g.Columns*g.Rows)
}

func (r *reader) staggered(v *node, p *Pattern) {
	g := r.rows(v, "staggered: {columns: 3, rows: 2, pitch: [40, 30], centre: [0, 0]}", 2)
	p.Shape, p.Count = geom.Staggered(g), r.placesIn(v, g.Columns*g.Rows-g.Rows/2)
}

// rows reads the sizes of a grid of at least least columns.
func (r *reader) rows(v *node, form string, least int) (g geom.Grid) {
	if !r.group(v, "columns", "rows", "pitch", "centre") {
		return g
	}
	g.Columns = r.count(r.need(v, "columns", form), least, maxCount)
	g.Rows = r.count(r.need(v, "rows", form), 1, maxCount)
	if items, ok := r.items(r.need(v, "pitch", form), 2, 2, "the pitch across and up, such as [40, 30]"); ok {
		g.PitchXMm, g.PitchYMm = r.length(items[0], positive).Mm, r.length(items[1], positive).Mm
	}
	if c := v.get("centre"); c != nil {
		at, _ := r.point(c)
		g.Centre = at.at()
	}
	return g
}

// placesIn checks the number of places of a grid.
func (r *reader) placesIn(v *node, count int) int {
	if count > maxCount {
		r.faultf(v.pos, fmt.Sprintf("at most %d", maxCount), "the grid has %d places", count)
	}
	return count
}

func (r *reader) listed(v *node, p *Pattern) {
	shape := geom.Listed{Datum: p.Datum}
	for _, q := range r.points(v, 1) {
		shape.At = append(shape.At, q.at())
		p.blame = append(p.blame, q.Pos)
	}
	p.Shape, p.Count = shape, len(shape.At)
}

// angles reads a list of different clock angles.
func (r *reader) angles(n *node) []Angle {
	items, _ := r.items(n, 1, maxCount, "a list of clock angles, such as [0, 75, 200]")
	var out []Angle
	seen := make(map[float64]bool, len(items))
	for _, item := range items {
		a, ok := r.angle(item, -360, 360)
		if !ok {
			continue
		}
		turn := math.Mod(a.Deg+360, 360)
		if seen[turn] {
			r.faultf(a.Pos, "each angle once", "the angle %g is listed twice", a.Deg)
			continue
		}
		seen[turn] = true
		out = append(out, a)
	}
	return out
}

// points reads a list of at least lo different points.
func (r *reader) points(n *node, lo int) []Point {
	items, _ := r.items(n, lo, maxCount, "a list of points, such as [[0, 60], [0, -60]]")
	var out []Point
	seen := make(map[[2]float64]bool, len(items))
	for _, item := range items {
		p, ok := r.point(item)
		if !ok {
			continue
		}
		at := [2]float64{p.X.Mm + 0, p.Y.Mm + 0}
		if seen[at] {
			r.faultf(p.Pos, "each point once", "the point [%s, %s] is listed twice", p.X.Text, p.Y.Text)
			continue
		}
		seen[at] = true
		out = append(out, p)
	}
	return out
}
