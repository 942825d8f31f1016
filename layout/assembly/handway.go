package assembly

import (
	"math"
	"slices"
)

// A hand is taken for a block of 20, felt along lines 5 apart and moved by two of these: what is narrower keeps it out wherever
// it lies, if its bars are not narrower still, and what is 10 wider lets it through wherever it lies.
const (
	latticeMm = 5.0
	halfHand  = 2
	handStep  = 2
)

// outletsMm is how far apart two places are ways out by themselves.
const outletsMm = 250.0

// manyWays are in how many of six directions a place has to be free, on and on, to be outside.
const manyWays = 3

// node is a place of the lattice.
type node [3]int

func (n node) at() Vec { return Vec{float64(n[0]), float64(n[1]), float64(n[2])}.Times(latticeMm) }

func (n node) moved(axis, by int) node { n[axis] += by; return n }

// lane is a line of the lattice: which of its steps something stands across, from the lowest on, and where it is free on and
// on: up to one place and down from another.
type lane struct {
	shut       []bool
	upTo, from int
}

// lattice is the room about bodies.
type lattice struct {
	bodies    []Body
	low, high node
	lanes     [3][]*lane // of each axis, row by row
}

// Outlets are the places outside of all bodies to which a hand gets from some places between them, no farther from the first
// of those than it reaches: there most directions are free on and on. What lies about one that is nearer, or behind it, is no other.
func Outlets(bodies []Body, from []Vec, reachMm float64) (out []Vec) {
	if len(from) == 0 {
		return nil
	}
	l := newLattice(bodies)
	seen := map[node]bool{}
	var todo []node
	come := func(n node) {
		at := n.at()
		if seen[n] || at.Sub(from[0]).Len() > reachMm || slices.ContainsFunc(out, func(o Vec) bool { return at.Sub(o).Len() < outletsMm }) {
			return
		}
		seen[n] = true
		if l.outside(n) {
			out = append(out, at)
			return
		}
		todo = append(todo, n)
	}
	for _, p := range from {
		come(node{nearStep(p.X), nearStep(p.Y), nearStep(p.Z)})
	}
	for len(todo) > 0 {
		n := todo[0]
		todo = todo[1:]
		for axis := range n {
			for _, by := range []int{-1, 1} {
				if next := n.moved(axis, by*handStep); !seen[next] && l.passes(n, axis, min(0, by*handStep)) {
					come(next)
				}
			}
		}
	}
	return out
}

// nearStep is the nearest place of a hand.
func nearStep(mm float64) int { return handStep * int(math.Round(mm/latticeMm/handStep)) }

// newLattice is the lattice round all bodies, and more than a hand beyond.
func newLattice(bodies []Body) *lattice {
	box, l := nothing(), &lattice{bodies: bodies}
	for _, b := range boxes(bodies) {
		box = box.Join(b)
	}
	const beyond = 2 * handStep
	l.low = node{nearStep(box.Low.X) - beyond, nearStep(box.Low.Y) - beyond, nearStep(box.Low.Z) - beyond}
	l.high = node{nearStep(box.High.X) + beyond, nearStep(box.High.Y) + beyond, nearStep(box.High.Z) + beyond}
	for axis := range l.lanes {
		l.lanes[axis] = make([]*lane, l.wide((axis+1)%3)*l.wide((axis+2)%3))
	}
	return l
}

// wide is how many places the lattice has along an axis.
func (l *lattice) wide(axis int) int { return l.high[axis] - l.low[axis] + 1 }

// lane is a line along an axis, made when it is first asked for; one beyond all bodies is that at the edge.
func (l *lattice) lane(n node, axis int) *lane {
	for k := range n {
		n[k] = min(max(n[k], l.low[k]), l.high[k])
	}
	b, c := (axis+1)%3, (axis+2)%3
	at := &l.lanes[axis][(n[b]-l.low[b])*l.wide(c)+n[c]-l.low[c]]
	if *at == nil {
		*at = l.made(n, axis)
	}
	return *at
}

func (l *lattice) made(n node, axis int) *lane {
	n[axis] = l.low[axis]
	long := l.high[axis] - l.low[axis]
	got := &lane{make([]bool, long), l.high[axis], l.low[axis]}
	start := n.at()
	for _, c := range Crossings(l.bodies, start, []Vec{AxisX, AxisY, AxisZ}[axis]) {
		first, last := int(math.Floor(c.FromMm/latticeMm)), int(math.Floor(c.ToMm/latticeMm))
		for k := max(first, 0); k <= min(last, long-1); k++ {
			got.shut[k] = true
		}
		got.upTo, got.from = min(got.upTo, l.low[axis]+first), max(got.from, l.low[axis]+last+1)
	}
	return got
}

// round are the places beside one across an axis that a hand takes up, itself among them.
func round(n node, axis int) (out [(2*halfHand + 1) * (2*halfHand + 1)]node) {
	const wide = 2*halfHand + 1
	for k := range out {
		out[k] = n.moved((axis+1)%3, k/wide-halfHand).moved((axis+2)%3, k%wide-halfHand)
	}
	return out
}

// passes tells whether a hand gets along an axis from a place to the next, by the steps that begin so far from it.
func (l *lattice) passes(n node, axis, step int) bool {
	k := n[axis] + step - l.low[axis]
	for _, at := range round(n, axis) {
		shut := l.lane(at, axis).shut
		if slices.Contains(shut[min(max(k, 0), len(shut)):min(max(k+handStep, 0), len(shut))], true) {
			return false
		}
	}
	return true
}

// outside tells whether most directions from a place are free on and on.
func (l *lattice) outside(n node) bool {
	ways := 0
	for axis := range n {
		up, down := true, true
		for _, at := range round(n, axis) {
			lane := l.lane(at, axis)
			up, down = up && n[axis] >= lane.from, down && n[axis] <= lane.upTo
		}
		for _, free := range []bool{up, down} {
			if free {
				ways++
			}
		}
	}
	return ways >= manyWays
}
