package machine

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// travel follows the order of making: at every joint what is joined comes
// together along a straight line, and every screw goes in along its own. It
// says what is in the way where no line is free.
func (m *Machine) travel() {
	so := &soFar{m: m, of: map[string]*[]int{}, bodies: map[string]int{}}
	for i := range m.Bodies {
		so.bodies[m.Bodies[i].ID] = i
		so.of[m.Bodies[i].ID] = &[]int{i}
	}
	for _, j := range m.joints {
		so.join(j)
	}
}

// soFar is what is joined at a step: of each body the group it belongs to.
type soFar struct {
	m      *Machine
	bodies map[string]int
	of     map[string]*[]int
}

// join makes one joint.
func (s *soFar) join(j *plan.JointPlan) {
	a, b := Instance{j.A.Part, j.A.Copy}.id(), Instance{j.B.Part, j.B.Copy}.id()
	if s.of[a] == nil || s.of[b] == nil {
		return // not placed
	}
	for _, id := range s.m.goWith(j) {
		s.unite(a, id)
	}
	if cup, cone := j.Name+" cup", j.Name+" cone"; s.of[cup] != nil {
		s.come(j, *s.of[cup], []int{s.bodies[b]})
		s.come(j, *s.of[cone], *s.of[a])
		s.unite(b, cup)
		s.unite(a, cone)
	}
	if s.of[a] != s.of[b] {
		s.come(j, *s.of[a], *s.of[b])
		s.unite(a, b)
	}
	var screws []string
	for k := range s.m.Bodies {
		if id := s.m.Bodies[k].ID; strings.HasPrefix(id, j.Name+" screw ") {
			screws = append(screws, id)
		}
	}
	for _, id := range screws {
		if !s.m.overlap([]int{s.bodies[id]}, *s.of[a]) && s.drive(j, s.bodies[id], *s.of[a]) {
			break // it speaks for the others
		}
	}
	for _, id := range screws {
		s.unite(a, id)
	}
}

// goWith are the bodies that lie on part A when it comes: its studs, and what
// is clamped with it.
func (m *Machine) goWith(j *plan.JointPlan) []string {
	var out []string
	for _, t := range m.studs(j) {
		out = append(out, t.B)
	}
	for _, ref := range m.joint(j.Name).Clamped() {
		out = append(out, Instance{ref.Part, ref.Copy}.id())
	}
	return out
}

func (s *soFar) unite(a, b string) {
	x, y := s.of[a], s.of[b]
	if x == y || x == nil || y == nil {
		return
	}
	*x = append(*x, *y...)
	for _, i := range *y {
		s.of[s.m.Bodies[i].ID] = x
	}
}

func (s *soFar) pick(list []int) []assembly.Body {
	out := make([]assembly.Body, 0, len(list))
	for _, i := range list {
		out = append(out, s.m.Bodies[i])
	}
	return out
}

// pathFinestMm is how finely surfaces are looked at on the way. Common practice,
// no source.
const pathFinestMm = 8

// way is from far enough for the two boxes to be clear of one another.
func way(back assembly.Vec, movers, fixed []assembly.Body) assembly.Way {
	low, high := math.Inf(1), math.Inf(-1)
	frame := assembly.Frame(assembly.Vec{}, back, back.Square()).Inverse()
	far := 0.0
	for i := range movers {
		low = math.Min(low, movers[i].Box().Moved(frame).Low.Z)
	}
	for i := range fixed {
		high = math.Max(high, fixed[i].Box().Moved(frame).High.Z)
	}
	if high > low {
		far = high - low
	}
	tol := assembly.Usual
	tol.OtherMm = overlapMm
	return assembly.Way{Back: back, FarMm: far + 1, FinestMm: pathFinestMm, Tolerance: tol}
}

// come brings movers to what stands: along the axes of part A's frame, first
// its own, either way. One free line is enough.
func (s *soFar) come(j *plan.JointPlan, movers, fixed []int) {
	if s.m.overlap(movers, fixed) {
		return // said, and whatever it does on the way follows from that
	}
	pose := s.m.poses[Instance{j.A.Part, j.A.Copy}.id()]
	mv, fx := s.pick(movers), s.pick(fixed)
	var ways []assembly.Way
	for _, back := range []assembly.Vec{pose.Z, pose.Z.Times(-1), pose.Y, pose.Y.Times(-1), pose.X, pose.X.Times(-1)} {
		ways = append(ways, way(back, mv, fx))
	}
	// The shortest way out is likely the one that is meant.
	slices.SortStableFunc(ways, func(a, b assembly.Way) int { return cmp.Compare(a.FarMm, b.FarMm) })
	worst := assembly.Block{LastMm: -1}
	for _, w := range ways {
		b, met := s.m.block(w, mv, fx)
		if !met {
			return
		}
		if b.LastMm > worst.LastMm { // it comes furthest out this way
			worst = b
		}
	}
	s.m.blocked(j, worst)
}

// drive brings a screw to its hole from its head's side, over the length of its
// shank: clear of the hole it goes any way. It tells whether something is in the way.
func (s *soFar) drive(j *plan.JointPlan, screw int, fixed []int) bool {
	mv, fx := s.pick([]int{screw}), s.pick(fixed)
	mv[0].Solid = s.m.shanks[mv[0].ID]
	w := way(mv[0].Pose.Z, mv, fx)
	w.FarMm = -mv[0].Solid.Box().Low.Z
	b, met := s.m.block(w, mv, fx)
	if met {
		s.m.blocked(j, b)
	}
	return met
}

// overlap tells whether one of the movers lies in what stands when seated.
func (m *Machine) overlap(movers, fixed []int) bool {
	for _, i := range movers {
		for _, k := range fixed {
			if m.overlapping[[2]string{m.Bodies[i].ID, m.Bodies[k].ID}] {
				return true
			}
		}
	}
	return false
}

// block is the first that is in the way.
func (m *Machine) block(w assembly.Way, movers, fixed []assembly.Body) (assembly.Block, bool) {
	for i := range movers {
		if b := w.Blocks(movers[i:i+1], fixed, m.loose); len(b) > 0 {
			return b[0], true
		}
	}
	return assembly.Block{}, false
}

func (m *Machine) blocked(j *plan.JointPlan, b assembly.Block) {
	m.Problems = append(m.Problems, plan.Problem{Joint: j.Name, Kind: plan.PathBlocked, Pos: m.posOf(j.Name), Args: []plan.Arg{
		plan.Named(m.title(b.Mover)), plan.Named(m.title(b.Fixed)), plan.Of(plan.Mm, words.Round(b.FirstMm, 1)),
	}})
}
