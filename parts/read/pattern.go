package read

import (
	"fmt"
	"math"

	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// maxCount is the most holes in one group, and entries in one list.
const maxCount = 1000

// patterns lists how holes and slots can be laid out: the key in the input, the
// keys of its value, and what reads them into a shape. A pattern on a circle also gives
// its pitch circle, and listed points say where each of them stands.
var patterns = []struct {
	Key
	read func(f *fields, p *parts.Pattern) geom.Pattern
}{
	{Key{Name: "circle", Type: KeysType, Means: "equally spaced all round",
		Group: &Group{Name: "circle", Means: "Places equally spaced all round a pitch circle.", Example: "circle: {pcd: 140, count: 6, first: 30}", Keys: []Key{
			{Name: "pcd", Type: SizeType, Need: true, Means: "pitch circle diameter"},
			{Name: "count", Type: CountType, Need: true, Means: "number of places", Low: 1, High: maxCount},
			{Name: "first", Type: AngleType, Means: "clock angle of one of them, from TOP", Default: "0"},
			circleCentre,
		}}}, func(f *fields, p *parts.Pattern) geom.Pattern {
		f.pitchCircle(p)
		return geom.Ring{PCDMm: p.PCD.Mm, Count: f.count("count"), FirstDeg: f.angle("first").Deg, Centre: p.Centre}
	}},
	{Key{Name: "arc", Type: KeysType, Means: "equally spaced from one angle to another", Group: &Group{Name: "arc",
		Means: "Places equally spaced from one clock angle clockwise to another, both included.", Example: "arc: {pcd: 140, count: 4, first: 30, last: 150}",
		Keys: []Key{
			{Name: "pcd", Type: SizeType, Need: true, Means: "pitch circle diameter"},
			{Name: "count", Type: CountType, Need: true, Means: "number of places", Low: 2, High: maxCount},
			{Name: "first", Type: AngleType, Need: true, Means: "clock angle of the first"},
			{Name: "last", Type: AngleType, Need: true, Means: "clock angle of the last"},
			circleCentre,
		}}}, func(f *fields, p *parts.Pattern) geom.Pattern {
		f.pitchCircle(p)
		count, first, last := f.count("count"), f.angle("first"), f.angle("last")
		if first.Pos.Line > 0 && last.Pos.Line > 0 && geom.SweepDeg(first.Deg, last.Deg) == 360 {
			f.faultf(last.Pos, "two different angles; circle spaces holes all round",
				"the arc runs from %g to %g degrees, the same place", first.Deg, last.Deg)
		}
		return geom.Arc{PCDMm: p.PCD.Mm, Count: count, FirstDeg: first.Deg, LastDeg: last.Deg, Centre: p.Centre}
	}},
	{Key{Name: "angles", Type: KeysType, Means: "at listed clock angles",
		Group: &Group{Name: "angles", Means: "Places at listed clock angles on a pitch circle.", Example: "angles: {pcd: 140, at: [0, 75, 200]}", Keys: []Key{
			{Name: "pcd", Type: SizeType, Need: true, Means: "pitch circle diameter", Example: "the pitch circle diameter"},
			{Name: "at", Type: AnglesType, Need: true, Means: "clock angles, each once", Entries: [2]int{1, maxCount}, Example: "a list of clock angles, such as [0, 75, 200]"},
			circleCentre,
		}}}, func(f *fields, p *parts.Pattern) geom.Pattern {
		f.pitchCircle(p)
		return geom.Angles{PCDMm: p.PCD.Mm, Deg: seq.Map(f.angles("at"), func(a parts.Angle) float64 { return a.Deg }), Centre: p.Centre}
	}},
	{Key{Name: "grid", Type: KeysType, Means: "in columns and rows", Group: &Group{Name: "grid",
		Means: "Places in columns and rows, numbered in rows from the top left.", Example: "grid: {columns: 3, rows: 2, pitch: [40, 30], centre: [0, 0]}",
		Keys: rowsKeys(1)}}, func(f *fields, _ *parts.Pattern) geom.Pattern { return f.rows() }},
	{Key{Name: "staggered", Type: KeysType, Means: "in rows, every second half a pitch in", Group: &Group{Name: "staggered",
		Means:   "A grid whose second, fourth and so on rows hold one place less and lie half a pitch in.",
		Example: "staggered: {columns: 3, rows: 2, pitch: [40, 30], centre: [0, 0]}",
		Keys:    rowsKeys(2)}}, func(f *fields, _ *parts.Pattern) geom.Pattern { return geom.Staggered(f.rows()) }},
	{Key{Name: "along", Type: KeysType, Means: "in a row along a side, from a named end", Group: &Group{Name: "along",
		Means: "Places in a row along a side, from a named end.", Example: "along: {from: left, first: 50, pitch: 200, count: 2}", Keys: []Key{
			{
				Name: "from", Type: WordType, Means: "the end that they count from, as named on the front view, of a flange with its side at the top",
				Default: string(parts.LeftSide), Words: []string{string(parts.LeftSide), string(parts.RightSide)},
			},
			{Name: "first", Type: SizeType, Need: true, Means: "from that end, a bar's outermost point there, to the first"},
			{Name: "pitch", Type: SizeType, Means: "from each to the next"},
			{Name: "count", Type: CountType, Means: "number of places", Default: "1", Low: 1, High: maxCount},
			{Name: "up", Type: SizeType, Means: "from the lower edge of the side as seen", Default: "the middle of the side"},
		}}}, func(f *fields, p *parts.Pattern) geom.Pattern {
		a := geom.Along{FromRight: f.word("from") == string(parts.RightSide), FirstMm: f.length("first").Mm, PitchMm: f.length("pitch").Mm, Count: f.count("count"), UpMm: f.length("up").Mm}
		if a.Count > 1 && !f.given("pitch") {
			f.lack(f.n.pos, f.n.label+" lacks the key pitch: from each place to the next", "pitch: 100")
		}
		p.Datum = endDatum(a)
		return a
	}},
	{Key{
		Name: pointsPattern, Type: PointsType, Means: "listed points [x, y] from the datum, each once", Entries: [2]int{1, maxCount},
		Example: "a list of points, such as [[0, 60], [0, -60]]",
	}, func(f *fields, p *parts.Pattern) geom.Pattern {
		shape := geom.Listed{Datum: p.Datum}
		for _, q := range f.points(pointsPattern) {
			shape.At = append(shape.At, q.At())
			p.Blame = append(p.Blame, q.Pos)
		}
		return shape
	}},
}

// circleCentre is that of a pitch circle.
var circleCentre = Key{Name: "centre", Type: PointType, Means: "middle of the pitch circle; clock angles count about it", Default: "the origin", Example: "a point [x, y]"}

// pitchCircle reads the circle that places lie on.
func (f *fields) pitchCircle(p *parts.Pattern) {
	p.PCD, p.Centre = f.length("pcd"), f.point("centre").At()
}

// rowsKeys are those of the patterns in rows, with the fewest places of a full row.
func rowsKeys(least float64) []Key {
	return []Key{
		{Name: "columns", Type: CountType, Need: true, Means: "places in a full row", Low: least, High: maxCount},
		{Name: "rows", Type: CountType, Need: true, Means: "number of rows; at most 1000 places together", Low: 1, High: maxCount},
		{Name: "pitch", Type: PairType, Need: true, Means: "distance across, and from row to row", Example: "the pitch across and up, such as [40, 30]"},
		{Name: "centre", Type: PointType, Means: "middle of the pattern", Default: "the origin", Example: "a point [x, y]"},
	}
}

func (f *fields) rows() geom.Grid {
	g := geom.Grid{Columns: f.count("columns"), Rows: f.count("rows"), Centre: f.point("centre").At()}
	across, up := f.pair("pitch")
	g.PitchXMm, g.PitchYMm = across.Mm, up.Mm
	return g
}

// endDatum is the corner at the end that a row counts from.
func endDatum(a geom.Along) string {
	if a.FromRight {
		return "right-bottom"
	}
	return "left-bottom"
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
	for _, known := range patterns {
		if known.Name != key {
			continue
		}
		in := f
		if p.Pos = v.pos; known.Group != nil {
			in = f.sub(key)
		}
		if in == nil {
			continue
		}
		p.Shape = known.read(in, &p)
		if p.Count = len(p.Shape.Places(geom.Box{})); p.Count > maxCount {
			f.faultf(v.pos, fmt.Sprintf("at most %d", maxCount), "the pattern has %d places", p.Count)
		}
	}
	return p
}

// seenOn turns the end that a row counts from to the side it is seen at: the left
// end of the front view lies at the right on the back.
func seenOn(p *parts.Pattern, face parts.Face) {
	if a, ok := p.Shape.(geom.Along); ok && face == parts.Back {
		a.FromRight = !a.FromRight
		p.Shape, p.Datum = a, endDatum(a)
	}
}

// angles reads a list of different clock angles.
func (f *fields) angles(name string) []parts.Angle {
	return eachOnce(f, name, func(n *node) (parts.Angle, bool) { return f.reader.angle(n, -360, 360) },
		func(a parts.Angle) float64 { return math.Mod(a.Deg+360, 360) },
		func(a parts.Angle) { f.faultf(a.Pos, "each angle once", "the angle %g is listed twice", a.Deg) })
}

func (f *fields) points(name string) []parts.Point {
	return eachOnce(f, name, f.reader.point,
		func(p parts.Point) geom.Point { return geom.Point{XMm: p.X.Mm, YMm: p.Y.Mm} },
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
