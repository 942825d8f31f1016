package assembly

import "math"

// Line is a visible edge in a view, in the x and y of its plane.
type Line struct {
	ID     string
	Points []Pt
}

// View is what is seen of bodies when looking against a frame's z: towards −z,
// x to the right, y up.
type View struct {
	// Cuts are sections by the frame's plane, to be hatched.
	Cuts []Cut
	// Lines are the visible edges behind the plane.
	Lines []Line
}

// Look at the bodies, with what stands before the frame's plane taken away. The
// edges of each body are tested piece by piece against all bodies.
func Look(bodies []Body, frame Pose) View {
	out := View{Cuts: Section(bodies, frame)}
	inv := frame.Inverse()
	boxes := make([]Box, len(bodies))
	for i := range bodies {
		boxes[i] = bodies[i].Box().Moved(inv)
	}
	for i := range bodies {
		if boxes[i].Low.Z >= 0 {
			continue
		}
		v := &viewer{bodies: bodies, frame: frame, back: frame.Z, own: i}
		for k := range bodies { // those that may lie before it
			if boxes[k].High.Z > boxes[i].Low.Z && boxes[k].Low.Z < 0 && over(boxes[i], boxes[k]) {
				v.before = append(v.before, k)
			}
		}
		for _, edge := range bodies[i].edges(frame.Z) {
			out.Lines = append(out.Lines, v.visible(edge)...)
		}
	}
	return out
}

// over tells whether two boxes meet in x and y.
func over(a, b Box) bool {
	return a.Low.X <= b.High.X && b.Low.X <= a.High.X && a.Low.Y <= b.High.Y && b.Low.Y <= a.High.Y
}

// viewer tests the edges of one body.
type viewer struct {
	bodies []Body
	frame  Pose
	back   Vec // towards who looks
	own    int
	before []int
}

// seen tells whether nothing hides a point of the body from who looks. What
// runs along a face towards who looks is hidden by that face's front edge; what
// lies in the plane is drawn by its section.
func (v *viewer) seen(p Vec) bool {
	depth := -v.frame.Inverse().Apply(p).Z
	if depth < 1e-3 {
		return false
	}
	for _, k := range v.before {
		b := &v.bodies[k]
		inv := b.Pose.Inverse()
		for _, s := range b.Solid.stretches(inv.Apply(p), inv.Turn(v.back), 0, depth, chordMm) {
			// A line that touches a round runs in it by rounding.
			if s.ToMm-s.FromMm > 0.1 {
				return false
			}
		}
	}
	return true
}

// chordMm is how far the straight pieces of a rim may lie off it.
const chordMm = 0.03

// pieceMm is how far apart an edge is looked at; between two looks that differ
// the place is found to a hundredth of it.
const pieceMm = 4

// visible are the stretches of an edge that are seen, in the view.
func (v *viewer) visible(edge []Vec) []Line {
	inv := v.frame.Inverse()
	var out []Line
	var run []Pt
	put := func(p Vec) {
		q := inv.Apply(p)
		run = append(run, Pt{math.Round(q.X*1e6) / 1e6, math.Round(q.Y*1e6) / 1e6})
	}
	flush := func() {
		if len(run) > 1 && extent(run) > 0.02 {
			out = append(out, Line{v.bodies[v.own].ID, run})
		}
		run = nil
	}
	for i := 0; i+1 < len(edge); i++ {
		a, b := edge[i], edge[i+1]
		n := max(1, int(math.Ceil(b.Sub(a).Len()/pieceMm)))
		was := v.seen(mixVec(a, b, 1e-3/float64(n)))
		if was && len(run) == 0 {
			put(a)
		} else if !was {
			flush()
		}
		for k := range n {
			t0, t1 := (float64(k)+1e-3)/float64(n), (float64(k)+1-1e-3)/float64(n)
			is := v.seen(mixVec(a, b, t1))
			if is != was {
				put(mixVec(a, b, v.change(a, b, t0, t1, was)))
				if was {
					flush()
				}
			}
			was = is
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

func extent(pts []Pt) float64 {
	sum := 0.0
	for i := 0; i+1 < len(pts); i++ {
		sum += pts[i+1].sub(pts[i]).len()
	}
	return sum
}

// edges are the body's edges in the machine's frame that a view along a
// direction shows: those of its simple solids that lie on it, and those that
// cuts make in it.
func (b *Body) edges(view Vec) [][]Vec {
	inv := b.Pose.Inverse()
	local := inv.Turn(view)
	var out [][]Vec
	keep := func(line []Vec) {
		for _, part := range b.Solid.onSurface(line) {
			for i := range part {
				part[i] = b.Pose.Apply(part[i])
			}
			out = append(out, part)
		}
	}
	for _, list := range [3][]Simple{b.Solid.add, b.Solid.within, b.Solid.cut} {
		for i := range list {
			for _, line := range list[i].shape.edges(list[i].back.Turn(local)) {
				moved := make([]Vec, len(line))
				for k, p := range line {
					moved[k] = list[i].at.Apply(p)
				}
				keep(moved)
			}
		}
	}
	for i := range b.Solid.cut {
		for _, line := range b.Solid.rims(i) {
			keep(line)
		}
	}
	return out
}

// onSurface are the stretches of a line of points that lie on the surface.
func (s *Solid) onSurface(line []Vec) [][]Vec {
	var out [][]Vec
	var run []Vec
	for i, p := range line {
		if i > 0 {
			run = s.along(line[i-1], p, run, &out)
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

// along takes a straight piece of a line: long ones in parts, each judged by
// its middle.
func (s *Solid) along(a, b Vec, run []Vec, out *[][]Vec) []Vec {
	n := max(1, int(math.Ceil(b.Sub(a).Len()/pieceMm)))
	for k := range n {
		t0, t1 := float64(k)/float64(n), float64(k+1)/float64(n)
		if !s.on(mixVec(a, b, (t0+t1)/2)) && !s.chord(a, b) {
			if len(run) > 1 {
				*out = append(*out, run)
			}
			run = nil
			continue
		}
		if len(run) == 0 {
			run = append(run, mixVec(a, b, t0))
		}
		run = append(run, mixVec(a, b, t1))
	}
	return run
}

// chord tells whether both ends of a short piece lie on the surface: its middle
// lies off it where it stands for an arc.
func (s *Solid) chord(a, b Vec) bool {
	return b.Sub(a).Len() < 2*pieceMm && s.on(a) && s.on(b)
}

// rims are the edges that cut i makes in the rest of the solid: where the lines
// along its surface enter and leave.
func (s *Solid) rims(i int) [][]Vec {
	c := &s.cut[i]
	rest := Solid{add: s.add, within: s.within, bound: s.bound}
	box := c.shape.box()
	along := c.at.Turn(AxisZ)
	var out [][]Vec
	for _, turn := range c.shape.generators() {
		var lines [][]Vec
		for _, foot := range turn {
			spans := rest.spans(c.at.Apply(foot), along, box.Low.Z, box.High.Z)
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
