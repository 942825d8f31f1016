package read

import (
	"fmt"
	"math"

	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// patterns lists how holes and slots can be laid out: the key in the input and
// what reads its value. Each gives the pattern its shape and count.
var patterns = []struct {
	Key
	read func(f *fields, p *parts.Pattern)
}{
	{Key{Name: "circle", Type: KeysType, Means: "equally spaced all round", Group: ringGroup}, (*fields).ring},
	{Key{Name: "arc", Type: KeysType, Means: "equally spaced from one angle to another", Group: arcGroup}, (*fields).arc},
	{Key{Name: "angles", Type: KeysType, Means: "at listed clock angles", Group: anglesGroup}, (*fields).anglesOnCircle},
	{Key{Name: "grid", Type: KeysType, Means: "in columns and rows", Group: gridGroup}, (*fields).grid},
	{Key{Name: "staggered", Type: KeysType, Means: "in rows, every second half a pitch in", Group: staggeredGroup}, (*fields).staggered},
	{Key{Name: "along", Type: KeysType, Means: "in a row along a side, from a named end", Group: alongGroup}, (*fields).along},
	{Key{Name: pointsPattern, Type: PointsType, Means: "listed points [x, y] from the datum, each once", Entries: [2]int{1, maxCount}, Example: "a list of points, such as [[0, 60], [0, -60]]"}, (*fields).listed},
}

// pointsPattern is the only one that takes a datum.
const pointsPattern = "at"

func patternKeys() (keys []string) {
	for _, p := range patterns {
		keys = append(keys, p.Name)
	}
	return keys
}

// withPatterns puts the keys of the patterns between others.
func withPatterns(before, after []Key) []Key {
	for _, p := range patterns {
		before = append(before, p.Key)
	}
	before = append(before, Key{Name: "datum", Type: WordType, Means: "with at: where points are measured from; from two edges both lengths go inward, so that both are positive", Default: "centre",
		Words: []string{"centre", "left-bottom", "left-top", "right-bottom", "right-top"}})
	return append(before, after...)
}

func (f *fields) pattern() parts.Pattern {
	p := parts.Pattern{Pos: f.n.pos, Datum: "centre"}
	if f.given("datum") && !f.given(pointsPattern) {
		f.fault(f.n.keyPos("datum"), "datum is only for points listed with at", "delete datum, or list the points with at")
	} else if w := f.word("datum"); w != "" {
		p.Datum = w
	}
	key, v := f.oneOf()
	p.Kind = parts.PatternKind(key)
	for _, known := range patterns {
		if known.Name != key {
			continue
		}
		p.Pos = v.pos
		if known.Group == nil {
			known.read(f, &p)
		} else if g := f.sub(key); g != nil {
			known.read(g, &p)
		}
	}
	return p
}

func (f *fields) ring(p *parts.Pattern) {
	p.PCD, p.Count = f.length("pcd"), f.count("count")
	p.Shape = geom.Ring{PCDMm: p.PCD.Mm, Count: p.Count, FirstDeg: f.angle("first").Deg}
}

func (f *fields) arc(p *parts.Pattern) {
	p.PCD, p.Count = f.length("pcd"), f.count("count")
	first, last := f.angle("first"), f.angle("last")
	if first.Pos.Line > 0 && last.Pos.Line > 0 && geom.SweepDeg(first.Deg, last.Deg) == 360 {
		f.faultf(last.Pos, "two different angles; circle spaces holes all round",
			"the arc runs from %g to %g degrees, the same place", first.Deg, last.Deg)
	}
	p.Shape = geom.Arc{PCDMm: p.PCD.Mm, Count: p.Count, FirstDeg: first.Deg, LastDeg: last.Deg}
}

func (f *fields) anglesOnCircle(p *parts.Pattern) {
	p.PCD = f.length("pcd")
	shape := geom.Angles{PCDMm: p.PCD.Mm}
	shape.Deg = seq.Map(f.angles("at"), func(a parts.Angle) float64 { return a.Deg })
	p.Shape, p.Count = shape, len(shape.Deg)
}

func (f *fields) grid(p *parts.Pattern) {
	g := f.rows()
	p.Shape, p.Count = g, f.placesIn(g.Columns*g.Rows)
}

func (f *fields) staggered(p *parts.Pattern) {
	g := f.rows()
	p.Shape, p.Count = geom.Staggered(g), f.placesIn(g.Columns*g.Rows-g.Rows/2)
}

// along reads a row from an end.
func (f *fields) along(p *parts.Pattern) {
	a := geom.Along{FromRight: f.word("from") == string(parts.RightSide), FirstMm: f.length("first").Mm, PitchMm: f.length("pitch").Mm, Count: f.count("count"), UpMm: f.length("up").Mm}
	if a.Count > 1 && !f.given("pitch") {
		f.lack(f.n.pos, f.n.label+" lacks the key pitch: from each place to the next", "pitch: 100")
	}
	p.Shape, p.Count, p.Datum = a, a.Count, "left-bottom"
	if a.FromRight {
		p.Datum = "right-bottom"
	}
}

// seenOn turns the end that a row counts from to the side it is seen at: the left
// end of the front view lies at the right on the back.
func seenOn(p *parts.Pattern, face parts.Face) {
	if a, ok := p.Shape.(geom.Along); ok && face == parts.Back {
		a.FromRight = !a.FromRight
		p.Shape, p.Datum = a, "right-bottom"
		if !a.FromRight {
			p.Datum = "left-bottom"
		}
	}
}

func (f *fields) rows() geom.Grid {
	g := geom.Grid{Columns: f.count("columns"), Rows: f.count("rows"), Centre: f.point("centre").At()}
	across, up := f.pair("pitch")
	g.PitchXMm, g.PitchYMm = across.Mm, up.Mm
	return g
}

// placesIn checks the number of places of a pattern in rows.
func (f *fields) placesIn(count int) int {
	if count > maxCount {
		f.faultf(f.n.pos, fmt.Sprintf("at most %d", maxCount), "the pattern has %d places", count)
	}
	return count
}

func (f *fields) listed(p *parts.Pattern) {
	shape := geom.Listed{Datum: p.Datum}
	for _, q := range f.points(pointsPattern) {
		shape.At = append(shape.At, q.At())
		p.Blame = append(p.Blame, q.Pos)
	}
	p.Shape, p.Count = shape, len(shape.At)
}

// angles reads a list of different clock angles.
func (f *fields) angles(name string) []parts.Angle {
	return eachOnce(f, name, func(n *node) (parts.Angle, bool) { return f.reader.angle(n, -360, 360) },
		func(a parts.Angle) float64 { return math.Mod(a.Deg+360, 360) },
		func(a parts.Angle) { f.faultf(a.Pos, "each angle once", "the angle %g is listed twice", a.Deg) })
}

func (f *fields) points(name string) []parts.Point {
	return eachOnce(f, name, f.reader.point,
		func(p parts.Point) geom.Point { return geom.Point{XMm: p.X.Mm + 0, YMm: p.Y.Mm + 0} },
		func(p parts.Point) {
			f.faultf(p.Pos, "each point once", "the point [%s, %s] is listed twice", p.X.Text, p.Y.Text)
		})
}

// eachOnce reads the entries of a list by what reads one of them, without those at fault and
// those with the key of one before.
func eachOnce[T any, K comparable](f *fields, name string, read func(*node) (T, bool), key func(T) K, twice func(T)) (out []T) {
	seen := map[K]bool{}
	for _, item := range f.entries(name) {
		switch one, ok := read(item); {
		case !ok:
		case seen[key(one)]:
			twice(one)
		default:
			seen[key(one)] = true
			out = append(out, one)
		}
	}
	return out
}

// point reads [x, y]; absent, it is the origin.
func (f *fields) point(name string) parts.Point {
	n := f.val(name)
	if n == nil {
		return parts.Point{}
	}
	p, _ := f.reader.point(n)
	return p
}
