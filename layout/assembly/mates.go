package assembly

import (
	"math"
	"slices"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Freedom is a way in which a joint lets a part move, in the joint's frame.
type Freedom string

// The freedoms.
const (
	SlideX Freedom = "slide-x" // along x, mm
	SlideY Freedom = "slide-y"
	SlideZ Freedom = "slide-z" // along the axis
	TurnX  Freedom = "turn-x"
	TurnY  Freedom = "turn-y"
	TurnZ  Freedom = "turn-z" // about the axis, degrees
)

// freedoms in the order of a twist: slides, then turns.
var freedoms = []Freedom{SlideX, SlideY, SlideZ, TurnX, TurnY, TurnZ}

// Meet says that a frame on part B lies on a frame on part A, but for the
// freedoms that are left. The frames are in the parts' own coordinates.
type Meet struct {
	ID       string
	A, B     string
	OnA, OnB Pose
	Free     []Freedom
}

// Mismatch is a joint that closes a loop and does not: by how much its frames
// miss one another in what it does not leave free. By are the joints that place one of
// its parts by the other, Along the way of the miss.
type Mismatch struct {
	ID    string
	Mm    float64
	Deg   float64
	By    []string
	Along Vec
}

// Open is a freedom that no other joint takes away.
type Open struct {
	ID, Part string
	Free     Freedom
}

// Poses are where parts stand.
type Poses struct {
	At     map[string]Pose // of all that joints tie to the root
	Open   []Open          // what the joints leave undetermined; the parts stand at 0
	Missed []Mismatch      // joints whose frames do not meet
}

// Solve places the parts from the root, which stands still, each by
// the first meet that reaches it, and then moves them within the freedoms so
// that the other meets close too.
func Solve(root string, meets []Meet) Poses {
	s := &solver{meets: meets, root: root}
	s.grow()
	s.close()
	out := Poses{At: s.place(s.q), Open: s.open()}
	for _, i := range s.loops {
		miss := s.miss(out.At, &meets[i])
		mm := Vec{miss[0], miss[1], miss[2]}.Len()
		deg := Vec{miss[3], miss[4], miss[5]}.Len() / leverMm * 180 / math.Pi
		if geom.Over(mm, 0) || geom.Over(deg, 0) {
			along := out.At[meets[i].A].Of(meets[i].OnA).Turn(Vec{miss[0], miss[1], miss[2]}).Unit()
			out.Missed = append(out.Missed, Mismatch{meets[i].ID, mm, deg, s.path(meets[i].A, meets[i].B), along})
		}
	}
	return out
}

// branch is a meet that places a part: from A to B, or the other way.
type branch struct {
	meet    int
	back    bool
	freeAt  int // of its freedoms in q
	freedom int // how many
}

type solver struct {
	meets []Meet
	root  string
	tree  []branch
	loops []int
	names []Open
	q     []float64 // freedoms of the tree: mm and radians times leverMm
}

// grow makes the tree in the order of the meets.
func (s *solver) grow() {
	placed := map[string]bool{s.root: true}
	used := make([]bool, len(s.meets))
	for again := true; again; {
		again = false
		for i := range s.meets {
			m := &s.meets[i]
			if used[i] || placed[m.A] == placed[m.B] {
				continue
			}
			back := placed[m.B]
			part := m.B
			if back {
				part = m.A
			}
			s.tree = append(s.tree, branch{i, back, len(s.q), len(m.Free)})
			for _, f := range m.Free {
				s.names = append(s.names, Open{m.ID, part, f})
				s.q = append(s.q, 0)
			}
			placed[part], used[i], again = true, true, true
		}
	}
	for i := range s.meets {
		if !used[i] && placed[s.meets[i].A] && placed[s.meets[i].B] {
			s.loops = append(s.loops, i)
		}
	}
}

// path are the joints of the tree from one part to another, each once, in the order in
// which they place.
func (s *solver) path(from, to string) []string {
	on := map[int]int{} // how often each branch lies on the ways back to the root
	for _, part := range []string{from, to} {
		for i := len(s.tree) - 1; i >= 0; i-- {
			b := s.tree[i]
			m := &s.meets[b.meet]
			child, parent := m.B, m.A
			if b.back {
				child, parent = m.A, m.B
			}
			if child == part {
				part = parent
				on[i]++
			}
		}
	}
	var out []string
	for i, b := range s.tree {
		if id := s.meets[b.meet].ID; on[i] == 1 && !slices.Contains(out, id) {
			out = append(out, id)
		}
	}
	return out
}

// leverMm makes an angle comparable to a length: what it moves at this radius.
const leverMm = 100

// motion is the movement of freedoms by amounts.
func motion(free []Freedom, q []float64) Pose {
	out := Still
	for i, f := range free {
		k := slices.Index(freedoms, f)
		if axis := []Vec{AxisX, AxisY, AxisZ}[k%3]; k < 3 {
			out = out.Of(Move(axis.Times(q[i])))
		} else {
			out = out.Of(Rotate(axis, q[i]/leverMm*180/math.Pi))
		}
	}
	return out
}

func (s *solver) place(q []float64) map[string]Pose {
	at := map[string]Pose{s.root: Still}
	for _, b := range s.tree {
		m := &s.meets[b.meet]
		rel := m.OnA.Of(motion(m.Free, q[b.freeAt:b.freeAt+b.freedom])).Of(m.OnB.Inverse())
		if b.back {
			at[m.A] = at[m.B].Of(rel.Inverse())
		} else {
			at[m.B] = at[m.A].Of(rel)
		}
	}
	return at
}

// miss is how a meet's frames differ in what is not free: three lengths and
// three turns times leverMm, in the frame on A.
func (s *solver) miss(at map[string]Pose, m *Meet) [6]float64 {
	rel := at[m.A].Of(m.OnA).Inverse().Of(at[m.B].Of(m.OnB))
	turn := turnBetween(Still, rel).Times(leverMm)
	out := [6]float64{rel.At.X, rel.At.Y, rel.At.Z, turn.X, turn.Y, turn.Z}
	for i, f := range freedoms {
		if slices.Contains(m.Free, f) {
			out[i] = 0
		}
	}
	return out
}

func (s *solver) misses(q []float64) []float64 {
	at := s.place(q)
	var out []float64
	for _, i := range s.loops {
		m := s.miss(at, &s.meets[i])
		out = append(out, m[:]...)
	}
	return out
}

// slopes is the derivative of the misses by each freedom.
func (s *solver) slopes(q []float64) (cols [][]float64) {
	const h = 1e-4
	for k := range q {
		p := slices.Clone(q)
		p[k] += h
		up := s.misses(p)
		p[k] -= 2 * h
		down := s.misses(p)
		for i := range up {
			up[i] = (up[i] - down[i]) / (2 * h)
		}
		cols = append(cols, up)
	}
	return cols
}

// close moves the freedoms to the least misses: Gauss-Newton with a damping
// that leaves alone what no meet decides.
func (s *solver) close() {
	damp := 1e-3
	now := s.misses(s.q)
	for range 60 {
		if norm2(now) < 1e-20 {
			return
		}
		step := dampedStep(s.slopes(s.q), now, damp)
		q := slices.Clone(s.q)
		for i := range q {
			q[i] -= step[i]
		}
		next := s.misses(q)
		if norm2(next) >= norm2(now) {
			damp *= 10
			continue
		}
		s.q, now, damp = q, next, math.Max(1e-12, damp/10)
	}
}

func norm2(v []float64) float64 { return seq.Sum(v, func(x float64) float64 { return x * x }) }

// dampedStep solves (JᵀJ + damp) step = Jᵀ miss by Cholesky.
func dampedStep(cols [][]float64, miss []float64, damp float64) []float64 {
	n := len(cols)
	a := make([][]float64, n)
	step := make([]float64, n)
	for i := range n {
		a[i] = make([]float64, n)
		for k := range i + 1 {
			a[i][k] = dot(cols[i], cols[k])
		}
		a[i][i] += damp
		step[i] = dot(cols[i], miss)
	}
	for i := range n {
		for k := range i + 1 {
			sum := a[i][k]
			for m := range k {
				sum -= a[i][m] * a[k][m]
			}
			if i == k {
				a[i][i] = math.Sqrt(math.Max(sum, damp*1e-6))
			} else {
				a[i][k] = sum / a[k][k]
			}
		}
	}
	for i := range n {
		for k := range i {
			step[i] -= a[i][k] * step[k]
		}
		step[i] /= a[i][i]
	}
	for i := n - 1; i >= 0; i-- {
		for k := i + 1; k < n; k++ {
			step[i] -= a[k][i] * step[k]
		}
		step[i] /= a[i][i]
	}
	return step
}

func dot(a, b []float64) float64 {
	var sum float64
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

// open are the freedoms whose movement the misses do not feel: a freedom is
// decided if its slope does not lie in the span of the others'.
func (s *solver) open() []Open {
	cols := s.slopes(s.q)
	var out []Open
	for k := range cols {
		var base [][]float64
		for i, c := range cols {
			if i != k {
				base = appendBase(base, c)
			}
		}
		if len(appendBase(base, cols[k])) == len(base) {
			out = append(out, s.names[k])
		}
	}
	return out
}

// appendBase adds to an orthonormal base what a vector has beyond it.
func appendBase(base [][]float64, v []float64) [][]float64 {
	v = slices.Clone(v)
	for range 2 { // twice against rounding
		for _, b := range base {
			f := dot(b, v)
			for i := range v {
				v[i] -= f * b[i]
			}
		}
	}
	l := math.Sqrt(norm2(v))
	if l < 1e-5 {
		return base
	}
	for i := range v {
		v[i] /= l
	}
	return append(base, v)
}
