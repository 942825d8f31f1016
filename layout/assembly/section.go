package assembly

import (
	"math"
	"slices"

	"centrepop/parts/geom"
)

// edgeMm is how near a level edge is to its place.
const edgeMm = 1e-5

// scan cuts a solid by lines of a plane, from low to high.
type scan struct {
	solid *Solid
	plane Pose // in the solid's frame
	flat  float64
	rows  []row
}

// row is what a line at y crosses: edges of stretches, an even number.
type row struct {
	y  float64
	xs []float64
}

func (s *scan) at(y float64) row {
	r := row{y: y}
	for _, span := range s.solid.Spans(s.plane.Apply(Vec{Y: y}), s.plane.X) {
		r.xs = append(r.xs, span.FromMm, span.ToMm)
	}
	return r
}

// Section cuts a body by a plane, the x and y of a frame: closed contours with
// material on the left, outer ones anticlockwise, holes clockwise, and curves
// flattened to a distance in mm from the true ones; nil where the plane misses
// it. It is made in three steps: lines through the solid, close enough that
// between two of them each edge is straight or the pattern changes within
// edgeMm; strips between them; strips joined to loops.
func (b *Body) Section(plane Pose, flatMm float64) [][]geom.Point {
	box := b.Box().Moved(plane.Inverse())
	if box.Low.Z > 0 || box.High.Z < 0 {
		return nil
	}
	s := &scan{solid: b.Solid, plane: b.Pose.Inverse().Of(plane), flat: flatMm}
	const clearMm = 1.0 // of the solid: no line there meets it
	ys := []float64{box.Low.Y - clearMm, box.High.Y + clearMm}
	rows := 48.0
	if flatMm > 0.03 {
		rows = 16
	}
	step := (box.High.Y - box.Low.Y) / rows
	for k := range int(rows) + 1 {
		// Off the round numbers on which edges lie.
		ys = append(ys, box.Low.Y+step*(float64(k)+0.0137))
	}
	for _, p := range b.marks(plane) {
		ys = append(ys, p-edgeMm/2, p+edgeMm/2)
	}
	slices.Sort(ys)
	prev := s.at(ys[0])
	for _, y := range ys {
		next := s.at(y)
		s.between(prev, next)
		s.rows = append(s.rows, next)
		prev = next
	}
	return joined(s.rows)
}

// marks are heights in the plane where the simple solids may have an edge.
func (b *Body) marks(plane Pose) []float64 {
	inv := plane.Inverse()
	var out []float64
	for _, list := range [3][]Simple{b.Solid.add, b.Solid.within, b.Solid.cut} {
		for i := range list {
			rel := inv.Of(b.Pose.Of(list[i].at))
			box := list[i].shape.box()
			for _, c := range box.corners() {
				out = append(out, rel.Apply(c).Y)
			}
			t, ok := list[i].shape.(*turned)
			if !ok {
				continue
			}
			for _, sg := range t.g.segs {
				y := rel.Apply(Vec{Z: sg.a.XMm}).Y
				across := math.Sqrt(max(0, 1-rel.Z.Y*rel.Z.Y)) * sg.a.YMm
				out = append(out, y-across, y+across)
			}
		}
	}
	return distinct(out)
}

// between puts rows between two until the edges run straight from one to the
// next.
func (s *scan) between(a, b row) {
	if b.y-a.y < 2*edgeMm {
		return
	}
	if len(a.xs) == len(b.xs) && s.straight(a, b) {
		return
	}
	mid := s.at((a.y + b.y) / 2)
	s.between(a, mid)
	s.rows = append(s.rows, mid)
	s.between(mid, b)
}

// straight tells whether rows between two, of as many places, lie on the lines that join them.
func (s *scan) straight(a, b row) bool {
	for _, t := range []float64{0.5, 0.27} { // 0.27 lest a swap of edges looks even
		mid := s.at(a.y + t*(b.y-a.y))
		if len(mid.xs) != len(a.xs) {
			return false
		}
		for i := range mid.xs {
			if math.Abs(a.xs[i]+t*(b.xs[i]-a.xs[i])-mid.xs[i]) > s.flat/2 {
				return false
			}
		}
	}
	return true
}

// joined makes loops of the strips between rows and of the level edges where
// rows within edgeMm differ. A strip's right edge runs up and its left down.
func joined(rows []row) [][]geom.Point {
	var edges [][2]geom.Point
	together := func(i int) int { // the last of the rows that hang together with one
		for i+1 < len(rows) && rows[i+1].y-rows[i].y < 2*edgeMm {
			i++
		}
		return i
	}
	for i := 0; i < len(rows); {
		end := together(i)
		next := end + 1
		if end > i {
			y := (rows[i].y + rows[end].y) / 2
			rows[i].y, rows[end].y = y, y
			edges = append(edges, edgesAt(rows[i], rows[end])...)
		}
		if next < len(rows) && len(rows[end].xs) == len(rows[next].xs) {
			// The next row's y is set before its strip is drawn.
			y := (rows[next].y + rows[together(next)].y) / 2
			edges = append(edges, strip(rows[end], row{y, rows[next].xs})...)
		}
		i = next
	}
	return chain(edges)
}

func strip(a, b row) [][2]geom.Point {
	var out [][2]geom.Point
	for k := range a.xs {
		low, high := geom.Point{XMm: a.xs[k], YMm: a.y}, geom.Point{XMm: b.xs[k], YMm: b.y}
		if k%2 == 0 {
			low, high = high, low
		}
		out = append(out, [2]geom.Point{low, high})
	}
	return out
}

// edgesAt are the edges at one height between the stretches below and above. It
// moves edges above onto those below that they continue.
func edgesAt(below, above row) [][2]geom.Point {
	const snap = 1e-3
	for i, x := range above.xs {
		for _, w := range below.xs {
			if math.Abs(x-w) < snap {
				above.xs[i] = w
			}
		}
	}
	xs := slices.Concat(below.xs, above.xs)
	slices.Sort(xs)
	within := func(r row, x float64) bool {
		n, _ := slices.BinarySearch(r.xs, x)
		return n%2 == 1
	}
	var out [][2]geom.Point
	for i := 0; i+1 < len(xs); i++ {
		if xs[i] == xs[i+1] {
			continue
		}
		mid := (xs[i] + xs[i+1]) / 2
		left, right := geom.Point{XMm: xs[i], YMm: below.y}, geom.Point{XMm: xs[i+1], YMm: below.y}
		switch in, on := within(below, mid), within(above, mid); {
		case in && !on:
			out = append(out, [2]geom.Point{right, left})
		case on && !in:
			out = append(out, [2]geom.Point{left, right})
		}
	}
	return out
}

// chain joins edges end to start into closed loops and leaves out points on a
// straight line. Ends are equal to the last bit, as they come from one row.
func chain(edges [][2]geom.Point) [][]geom.Point {
	from := map[geom.Point][]int{}
	for i, e := range edges {
		from[e[0]] = append(from[e[0]], i)
	}
	used := make([]bool, len(edges))
	var out [][]geom.Point
	for i := range edges {
		var loop []geom.Point
		for k := i; !used[k]; {
			used[k] = true
			loop = append(loop, edges[k][0])
			for _, n := range from[edges[k][1]] {
				if !used[n] {
					k = n
					break
				}
			}
		}
		if loop = smooth(loop); len(loop) > 2 {
			out = append(out, loop)
		}
	}
	return out
}

// smooth leaves out the points of a loop that lie on another or on the line
// between their neighbours, and rounds the others to 1e-6 mm.
func smooth(loop []geom.Point) []geom.Point {
	const off = 1e-4
	var apart []geom.Point
	for _, p := range loop {
		if n := len(apart); n == 0 || p.Minus(apart[n-1]).LengthMm() > off {
			apart = append(apart, p)
		}
	}
	// Begun at its lowest point, a corner that stays: were it begun where rows lie close
	// beside a corner, all of them could go as lying on a line.
	low := 0
	for i, p := range apart {
		if p.YMm < apart[low].YMm || p.YMm == apart[low].YMm && p.XMm < apart[low].XMm {
			low = i
		}
	}
	apart = slices.Concat(apart[low:], apart[:low])
	var out []geom.Point
	for i, p := range apart {
		if i > 0 {
			s := seg{a: out[len(out)-1], b: apart[(i+1)%len(apart)]}
			if s.a != s.b && s.dist2(p) < off*off {
				continue
			}
		}
		out = append(out, geom.Point{XMm: math.Round(p.XMm*1e6) / 1e6, YMm: math.Round(p.YMm*1e6) / 1e6})
	}
	return out
}
