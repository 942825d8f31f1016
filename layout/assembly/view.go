package assembly

import (
	"math"
	"slices"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Line is a visible edge in a view, in the x and y of its plane.
type Line struct {
	ID     string
	Points []geom.Point
}

// Look is what is seen of the edges of bodies when looking against a frame's z:
// towards −z, x to the right, y up, with what stands before the frame's plane
// taken away. What lies in the plane is for Section to draw. The edges of each
// body are tested against all bodies at places fineMm apart; between two that
// differ the place is found to a hundredth of it, and curves become chords that
// lie off them by a twentieth of it at most.
func Look(bodies []Body, frame Pose, fineMm float64) []Line {
	var out []Line
	inv := frame.Inverse()
	shades := make([]shade, len(bodies))
	edges := map[drawnSolid][][]Vec{} // screws share one solid
	for i := range bodies {
		b := &bodies[i]
		back := b.Pose.Inverse()
		shades[i] = shade{solid: b.Solid, to: back, along: back.Turn(frame.Z), box: b.Box().Moved(inv)}
	}
	for i := range bodies {
		own := &shades[i]
		if own.box.Low.Z >= 0 {
			continue
		}
		v := &viewer{id: bodies[i].ID, inv: inv, fine: fineMm}
		front := own.box
		front.High.Z = 0
		for k := range shades { // those that may lie before it
			if s := &shades[k]; s.box.Meets(front, 0) {
				v.before = append(v.before, s)
			}
		}
		key := drawnSolid{bodies[i].Solid, own.along.rounded(1e-9)}
		if _, done := edges[key]; !done {
			edges[key] = key.edges(fineMm)
		}
		for _, edge := range edges[key] {
			line := seq.Map(edge, bodies[i].Pose.Apply)
			out = append(out, v.visible(line)...)
		}
	}
	return out
}

// shade is a body that may hide others: the machine's frame in its own, the way
// to who looks in its own frame, and its box in the view's.
type shade struct {
	solid *Solid
	to    Pose
	along Vec
	box   Box
}

// viewer tests the edges of one body.
type viewer struct {
	id     string
	inv    Pose // the machine in the view's frame
	fine   float64
	before []*shade // who hid last comes first
}

// seen tells whether nothing hides a point of the body from who looks. What
// runs along a face towards who looks is hidden by that face's front edge; what
// lies in the plane is drawn by its section.
func (v *viewer) seen(p Vec) bool {
	q := v.inv.Apply(p)
	if q.Z > -1e-3 {
		return false
	}
	before := Box{Low: q, High: Vec{X: q.X, Y: q.Y}}
	for i, s := range v.before {
		if s.box.High.Z <= q.Z || !s.box.Meets(before, surfaceMm) {
			continue
		}
		// A line that touches a round runs in it by rounding.
		if s.solid.blocks(s.to.Apply(p), s.along, -q.Z, chordMm, 0.1) {
			copy(v.before[1:i+1], v.before[:i])
			v.before[0] = s
			return false
		}
	}
	return true
}

// chords leaves out points of a line where a straight piece serves: points on it,
// and those off it by a twentieth of fineMm if it is no longer than that. Looks
// are then taken at its ends, which lie on the solid.
func chords(line []Vec, fineMm float64) []Vec {
	if len(line) < 3 {
		return line
	}
	out := []Vec{line[0]}
	from := 0
	for i := 2; i < len(line); i++ {
		off := surfaceMm
		if line[i].Sub(line[from]).Len() <= fineMm {
			off = fineMm / 20
		}
		if !straight(line[from:i+1], off) {
			from = i - 1
			out = append(out, line[from])
		}
	}
	return append(out, line[len(line)-1])
}

// straight tells whether the points between two lie near their chord; ends that
// meet have none.
func straight(line []Vec, offMm float64) bool {
	a, b := line[0], line[len(line)-1]
	d := b.Sub(a)
	l := d.Len()
	if geom.Alike(l, 0) {
		return false
	}
	return !slices.ContainsFunc(line[1:len(line)-1], func(p Vec) bool { return p.Sub(a).Cross(d).Len() > offMm*l })
}

// chordMm is how far the straight pieces of a rim may lie off it.
const chordMm = 0.1

// besideEnd is how far from the ends of a piece of an edge, as a share of it, it is looked at.
const besideEnd = 1e-3

// visible are the stretches of an edge that are seen, in the view.
func (v *viewer) visible(edge []Vec) []Line {
	var out []Line
	var run []geom.Point
	put := func(p Vec) {
		q := v.inv.Apply(p)
		run = append(run, geom.Point{XMm: math.Round(q.X*1e6) / 1e6, YMm: math.Round(q.Y*1e6) / 1e6})
	}
	flush := func() {
		if len(run) > 1 && extent(run) > 0.02 {
			out = append(out, Line{v.id, run})
		}
		run = nil
	}
	was := false
	for i := 0; i+1 < len(edge); i++ {
		a, b := edge[i], edge[i+1]
		n := max(1, int(math.Ceil(b.Sub(a).Len()/v.fine)))
		t0 := besideEnd / float64(n)
		if i == 0 { // later ones begin where the one before ended
			was = v.seen(mixVec(a, b, t0))
		}
		if was && len(run) == 0 {
			put(a)
		} else if !was {
			flush()
		}
		for k := range n {
			t1 := (float64(k) + 1 - besideEnd) / float64(n)
			is := v.seen(mixVec(a, b, t1))
			if is != was {
				put(mixVec(a, b, v.change(a, b, t0, t1, was)))
				if was {
					flush()
				}
			}
			was, t0 = is, t1
		}
		if was {
			put(b)
		}
	}
	flush()
	return out
}

// change is where between two shares of a line it goes out of or into sight.
func (v *viewer) change(a, b Vec, t0, t1 float64, was bool) float64 {
	for range 8 {
		if mid := (t0 + t1) / 2; v.seen(mixVec(a, b, mid)) == was {
			t0 = mid
		} else {
			t1 = mid
		}
	}
	return (t0 + t1) / 2
}

func extent(pts []geom.Point) float64 {
	var sum float64
	for i := 0; i+1 < len(pts); i++ {
		sum += pts[i+1].Minus(pts[i]).LengthMm()
	}
	return sum
}

// drawnSolid is a solid seen along a direction of its own frame.
type drawnSolid struct {
	*Solid
	view Vec
}

// edges are the edges that are drawn, in the solid's frame: those of its simple
// solids that lie on it, and those that cuts make in it.
func (s drawnSolid) edges(fineMm float64) [][]Vec {
	var out [][]Vec
	for _, list := range [3][]Simple{s.add, s.within, s.cut} {
		for i := range list {
			for _, line := range list[i].shape.edges(list[i].back.Turn(s.view)) {
				moved := seq.Map(line, list[i].at.Apply)
				out = append(out, s.onSurface(chords(moved, fineMm), fineMm)...)
			}
		}
	}
	for _, line := range s.rims() {
		out = append(out, s.onSurface(chords(line, fineMm), fineMm)...)
	}
	return out
}

// onSurface are the stretches of a line of points that lie on the surface.
func (s *Solid) onSurface(line []Vec, fineMm float64) [][]Vec {
	var out [][]Vec
	var run []Vec
	for i, p := range line {
		if i > 0 {
			run = s.along([2]Vec{line[i-1], p}, fineMm, run, &out)
		} else if s.on(p) {
			run = append(run, p)
		}
	}
	if len(run) > 1 {
		out = append(out, run)
	}
	return out
}

func (s *Solid) on(p Vec) bool { return math.Abs(s.Dist(p)) < 10*surfaceMm }

// along takes a straight piece of a line: long ones in parts, each judged by its
// middle and cut off where it leaves the surface.
func (s *Solid) along(ends [2]Vec, fineMm float64, run []Vec, out *[][]Vec) []Vec {
	a, b := ends[0], ends[1]
	n := max(1, int(math.Ceil(b.Sub(a).Len()/fineMm)))
	flush := func() {
		if len(run) > 1 {
			*out = append(*out, run)
		}
		run = nil
	}
	for k := range n {
		from, to := mixVec(a, b, float64(k)/float64(n)), mixVec(a, b, float64(k+1)/float64(n))
		mid := mixVec(from, to, 0.5)
		if !s.on(mid) {
			if !s.chord(from, to, fineMm) {
				flush()
				continue
			}
			mid = from
		}
		if len(run) == 0 {
			run = append(run, s.lastOn(mid, from))
		}
		if end := s.lastOn(mid, to); end == to {
			run = append(run, to)
		} else {
			run = append(run, end)
			flush()
		}
	}
	return run
}

// lastOn is where a line from a point on the surface leaves it; its end if it
// does not.
func (s *Solid) lastOn(on, end Vec) Vec {
	if s.on(end) {
		return end
	}
	for range 16 {
		if mid := mixVec(on, end, 0.5); s.on(mid) {
			on = mid
		} else {
			end = mid
		}
	}
	return on
}

// chord tells whether both ends of a short piece lie on the surface: its middle
// lies off it where it stands for an arc.
func (s *Solid) chord(a, b Vec, fineMm float64) bool {
	return b.Sub(a).Len() < 2*fineMm && s.on(a) && s.on(b)
}

// rims are the edges that cuts make in the rest of the solid, whoever looks:
// worked out once.
func (s *Solid) rims() [][]Vec {
	s.known.rimmed.Do(func() {
		for i := range s.cut {
			s.known.rims = append(s.known.rims, s.rim(&s.cut[i])...)
		}
	})
	return s.known.rims
}

// rim is where the lines along a cut's surface enter and leave the solid.
func (s *Solid) rim(c *Simple) [][]Vec {
	rest := Solid{add: s.add, within: s.within, bound: s.bound}
	along := c.at.Turn(AxisZ)
	var out [][]Vec
	for _, turn := range c.shape.generators() {
		var lines [][]Vec
		for _, foot := range turn.feet {
			spans := rest.spans(c.at.Apply(foot), along, turn.low, turn.high)
			if 2*len(spans) != len(lines) {
				out = append(out, lines...)
				lines = make([][]Vec, 2*len(spans))
			}
			for k, sp := range spans {
				lines[2*k] = append(lines[2*k], c.at.Apply(foot).Add(along.Times(sp.FromMm)))
				lines[2*k+1] = append(lines[2*k+1], c.at.Apply(foot).Add(along.Times(sp.ToMm)))
			}
		}
		out = append(out, lines...)
	}
	return out
}
