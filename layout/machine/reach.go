package machine

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// A hand gets through handMm, and from where it is a tool in its fingers reaches fingersMm: what it holds passes
// anything for the last nearMm, and is toolMm wide behind that. Common practice, no source.
const handMm, fingersMm, nearMm, toolMm = 55.0, 200.0, 60.0, 24.0

// stepMm is how far a hand moves between two places that are looked at.
const stepMm = handMm / 2

// closedIn finds bolted joints whose heads or nuts lie in what is closed by the time of their step, the joint itself
// made: no hand and no straight tool gets there.
func (m *Machine) closedIn() (found []plan.Problem) {
	for n, j := range m.Joints {
		if j.Kind != parts.BoltKind {
			continue
		}
		screws := seq.Keep(m.Bodies, func(b assembly.Body) bool { return m.IsScrew(b.ID, j) })
		in := newReach(seq.Keep(m.Stage().BodiesOf(n+1, j.A.Instance().ID()), func(b assembly.Body) bool {
			return m.Roles[b.ID].Kind != stand.Screw && m.Roles[b.ID].Kind != stand.Nut
		}))
		for _, what := range []string{"a head", "a nut"} {
			nut := what == "a nut"
			if nut && !m.Joint(j.Name).Bolt.Nut {
				continue
			}
			shut := seq.Keep(screws, func(s assembly.Body) bool { return !in.reached(&s, nut, j.Bolt) })
			if len(shut) > 0 {
				order := m.sooner(j, barred{in.bodies, func(there []assembly.Body) bool {
					return newReach(append(there, shut[0])).reached(&shut[0], nut, j.Bolt)
				}})
				found = append(found, m.Fault(j.Name, plan.ClosedIn, plan.Named(what), plan.Named(words.Spaced(j.Name)), plan.Named(m.closing(in, &shut[0], nut, j.Bolt)), order))
				break
			}
		}
	}
	return found
}

// closing is the title of what closes in a screw: of the parts without any one of which it is reached, and not through
// its own hole, the last to come.
func (m *Machine) closing(in *reach, screw *assembly.Body, nut bool, b *plan.BoltPlan) string {
	last := slices.SortedStableFunc(slices.Values(in.bodies), func(a, b assembly.Body) int { return m.Stage().First(b.ID) - m.Stage().First(a.ID) })
	for _, gone := range last {
		without := seq.Keep(in.bodies, func(o assembly.Body) bool { return o.ID != gone.ID })
		if newReach(append(without, *screw)).reached(screw, nut, b) {
			return m.Title(gone.ID)
		}
	}
	return "what stands there"
}

// reach knows where a hand gets among bodies.
type reach struct {
	bodies []assembly.Body
	boxes  []assembly.Box
	all    assembly.Box
	hand   map[[3]int]bool // whether one gets out of a place that was tried, as steps
}

func newReach(bodies []assembly.Body) *reach {
	in := &reach{bodies: bodies, hand: map[[3]int]bool{}}
	for i := range bodies {
		b := bodies[i].Box()
		if in.boxes = append(in.boxes, b); i == 0 {
			in.all = b
		}
		in.all = in.all.Join(b)
	}
	return in
}

// clear is how far a place lies from all metal at the least, to a limit; beside a cut it may lie further.
func (in *reach) clear(at assembly.Vec, limitMm float64) float64 {
	for i := range in.bodies {
		if in.boxes[i].Meets(assembly.Box{Low: at, High: at}, limitMm) {
			limitMm = min(limitMm, in.bodies[i].Dist(at))
		}
	}
	return limitMm
}

// roomy tells whether no metal is met within a distance of a place, looking from it along axes and all that lie halfway between them.
func (in *reach) roomy(at assembly.Vec, mm float64) bool {
	if in.clear(at, mm) >= mm {
		return true
	}
	for i := range in.bodies {
		b := &in.bodies[i]
		if !in.boxes[i].Meets(assembly.Box{Low: at, High: at}, mm) {
			continue
		}
		met := func(way assembly.Vec) bool {
			return slices.ContainsFunc(b.Spans(at, way), func(s assembly.Span) bool { return s.FromMm < mm && s.ToMm > -mm })
		}
		if b.Dist(at) < mm && (b.Dist(at) < 0 || slices.ContainsFunc(round, met)) {
			return false
		}
	}
	return true
}

// round are the ways from a place along the axes and halfway between two and three of them, of each line one.
var round = func() (ways []assembly.Vec) {
	for k := 14; k < 27; k++ { // of 27 in three rows of three the later half
		ways = append(ways, assembly.Vec{X: float64(k%3 - 1), Y: float64(k/3%3 - 1), Z: float64(k/9 - 1)}.Unit())
	}
	return ways
}()

// outside tells whether a place lies beyond all that stands by half a hand.
func (in *reach) outside(at assembly.Vec) bool {
	return !in.all.Meets(assembly.Box{Low: at, High: at}, handMm/2)
}

// reached tells whether a hand or a straight tool gets to the head of a screw, or to its nut.
func (in *reach) reached(screw *assembly.Body, nut bool, b *plan.BoltPlan) bool {
	const stepDeg, rays = 15, 24
	round := assembly.Round(assembly.AxisZ, rays)
	from, out := besides(screw, nut, b)
	if in.clear(from[0], offMm) < 0 {
		return true // it stands in metal, which is another fault
	}
	for k, p := range from {
		if !in.roomy(p, held(0)) {
			continue
		}
		if k == 0 && in.along(p, out.Z, inf, func(float64) float64 { return offMm }) {
			return true // along its axis
		}
		for tilt := 0.0; tilt <= 165; tilt += stepDeg {
			sin, cos := geom.SinCosDeg(tilt)
			for _, side := range round {
				if in.along(p, out.Turn(side.Times(sin).Add(assembly.AxisZ.Times(cos))), fingersMm, held) {
					return true
				}
			}
		}
	}
	return false
}

// offMm is how far beside a head or a nut a hand or a tool takes it.
const offMm = 2.5

// besides are places before and beside the head of a screw, or its nut, the one on its axis first, and a frame with z out of it.
func besides(screw *assembly.Body, nut bool, b *plan.BoltPlan) (from []assembly.Vec, out assembly.Pose) {
	const sides = 6
	box := screw.Solid.Box()
	end, seat, off, out := box.High.Z, -b.SunkMm, offMm, screw.Pose
	if nut {
		end, seat, off = box.Low.Z, -b.SunkMm-b.GripMm, -offMm
		out = out.Of(assembly.Rotate(assembly.AxisX, 180))
	}
	from = []assembly.Vec{{Z: end + off}}
	for _, side := range assembly.Round(assembly.AxisZ, sides) {
		from = append(from, side.Times(box.High.X+offMm).Add(assembly.AxisZ.Times((seat+end)/2)))
	}
	return seq.Map(from, screw.Pose.Apply), out
}

// held is how far metal has to be from the middle of a tool that is held to what it turns, so far off that.
func held(off float64) float64 {
	if off < nearMm {
		return 2
	}
	return toolMm / 2
}

// along tells whether a straight tool from a place comes out of all that stands, or within mm to where a hand holds it.
func (in *reach) along(from, way assembly.Vec, mm float64, room func(float64) float64) bool {
	const leastMm = 4
	for off := 0.0; off < mm; {
		at := from.Add(way.Times(off))
		switch {
		case !in.roomy(at, room(off)):
			return false
		case in.outside(at), mm < inf && in.handAt(at):
			return true
		}
		off += max(leastMm, in.clear(at, handMm)-toolMm/2)
	}
	return false
}

// handAt tells whether a place has room for a hand, and one gets there from outside.
func (in *reach) handAt(at assembly.Vec) bool {
	cell := func(v assembly.Vec) [3]int {
		return [3]int{int(math.Round(v.X / stepMm)), int(math.Round(v.Y / stepMm)), int(math.Round(v.Z / stepMm))}
	}
	var been [][3]int
	for next := []assembly.Vec{at}; len(next) > 0; {
		at, next = next[len(next)-1], next[:len(next)-1]
		out, tried := in.hand[cell(at)]
		if out = out || in.outside(at); out {
			for _, c := range been {
				in.hand[c] = true
			}
			return true
		}
		if in.hand[cell(at)] = false; tried || !in.roomy(at, handMm/2) {
			continue
		}
		been, next = append(been, cell(at)), append(next, in.outward(at)...)
	}
	return false
}

// outward are the places a step from one along the axes, the nearest to the outside last.
func (in *reach) outward(at assembly.Vec) (next []assembly.Vec) {
	for _, axis := range []assembly.Vec{assembly.AxisX, assembly.AxisY, assembly.AxisZ} {
		for _, way := range []assembly.Vec{axis, axis.Reversed()} {
			next = append(next, at.Add(way.Times(stepMm)))
		}
	}
	left := func(v assembly.Vec) float64 {
		low, high := v.Sub(in.all.Low), in.all.High.Sub(v)
		return min(low.X, low.Y, low.Z, high.X, high.Y, high.Z)
	}
	slices.SortStableFunc(next, func(a, b assembly.Vec) int { return -cmp.Compare(left(a), left(b)) })
	return next
}
