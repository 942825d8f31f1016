package machine

import (
	"cmp"
	"maps"
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

// stand tells at which step the centre of gravity of what stands comes to lie
// beyond what it stands on, before anything of it is anchored.
func (m *Machine) stand() []plan.Problem {
	lowest, ok := m.floor()
	if !ok {
		return nil
	}
	st := m.Stage()
	for n, j := range m.Joints {
		on := st.Together(n+1, m.Bodies[lowest].ID)
		if len(on) == 1 || m.OnlyBars(on) || j.Kind == parts.WeldKind && m.lacksFoot(on, lowest) {
			continue
		}
		if m.lacks(on) {
			return nil
		}
		bodies := st.BodiesOf(n+1, m.Bodies[lowest].ID)
		name := m.Joint(j.Name).Anchored.Value
		if slices.ContainsFunc(bodies, func(b assembly.Body) bool { return name != "" && m.Of[b.ID].Part == name }) {
			return nil
		}
		s, ok := assembly.Standing(bodies, m.Up)
		if !ok || s.MarginMm > 0 {
			continue
		}
		return []plan.Problem{m.Fault(j.Name, plan.WouldTip, m.Named(m.Bodies[lowest].ID), m.Rounded(-s.MarginMm, 1), plan.Of(plan.Kg, assembly.Together(bodies).MassKg))}
	}
	return nil
}

// lacksFoot tells whether some of what the machine will stand on is not there yet: it is
// welded as it lies best until then.
func (m *Machine) lacksFoot(on map[string]bool, lowest int) bool {
	return slices.ContainsFunc(m.Bodies, func(b assembly.Body) bool {
		return !on[b.ID] && !m.hangs(&b) && m.low(&b) < m.low(&m.Bodies[lowest])+1
	})
}

// lacks tells whether a joint of some of these bodies is not worked out: what they stand on is
// not known then.
func (m *Machine) lacks(on map[string]bool) bool {
	return slices.ContainsFunc(m.Job.Joints, func(in *parts.Joint) bool {
		ends := namedIn(in)
		return (on[ends[0]] || on[ends[1]]) && m.StepOf(in.Name.Value) < 0
	})
}

// tipsUnder finds screws that come out of a tapped hole under what the machine stands on, once for each joint.
func (m *Machine) tipsUnder() (found []plan.Problem) {
	lowest, ok := m.floor()
	if !ok {
		return nil
	}
	for _, j := range m.OfKind(parts.BoltKind) {
		if j.Bolt.ProtrusionMm <= 0 || m.Joint(j.Name).Bolt.Nut {
			continue
		}
		for b := range seq.Refs(m.Bodies) {
			if under := m.low(&m.Bodies[lowest]) - m.low(b); m.IsScrew(b.ID, j) && geom.Over(under, stand.SurfaceMm) {
				found = append(found, m.Fault(j.Name, plan.TipUnder, m.Named(m.Bodies[lowest].ID), m.Rounded(under, 1), plan.Named(j.Title)))
				break
			}
		}
	}
	return found
}

// anchoredHigh finds what is anchored to the floor and stands over the middle of what it
// carries: the machine is upside down. Where a joint is not worked out, its middle is not known.
func (m *Machine) anchoredHigh() (found []plan.Problem) {
	if len(m.Joints) < len(m.Job.Joints) {
		return nil
	}
	for _, j := range m.Joints {
		name := m.Joint(j.Name).Anchored.Value
		i := slices.IndexFunc(m.Bodies, func(b assembly.Body) bool { return m.Of[b.ID].Part == name })
		if name == "" || i < 0 {
			continue
		}
		middle := assembly.Together(m.Bodies).Centre.Dot(m.Up)
		if !geom.Over(m.low(&m.Bodies[i]), middle) {
			continue
		}
		found = append(found, stand.Problem(j.Name, plan.AnchoredHigh, m.Joint(j.Name).Anchored.Pos, m.Named(m.Bodies[i].ID), m.Rounded(m.low(&m.Bodies[i])-middle, 0), plan.Named(m.upIs())))
	}
	return found
}

// underFloor finds the lowest of what reaches lower than a plate that lies level and is anchored to the floor, and is held to it.
func (m *Machine) underFloor() []plan.Problem {
	if len(m.Joints) < len(m.Job.Joints) {
		return nil
	}
	for _, j := range m.Joints {
		name := m.Joint(j.Name).Anchored.Value
		foot := seq.At(m.Bodies, func(b *assembly.Body) bool { return name != "" && m.Of[b.ID].Part == name })
		if foot == nil || !m.PartOf(foot.ID).Part.Flat() || math.Abs(foot.Pose.Z.Dot(m.Up)) < 1-stand.Level {
			continue // it may hang on a wall, and rails lie over openings
		}
		on, least := m.Stage().Together(len(m.Joints), foot.ID), foot
		for b := range seq.Refs(m.Bodies) {
			if (on[b.ID] || m.Roles[b.ID].Kind == stand.Standing && m.Tied(b, foot)) && m.low(b) < m.low(least) {
				least = b
			}
		}
		if under := m.low(foot) - m.low(least); under > leastUnderMm && m.PartOf(least.ID) != m.PartOf(foot.ID) {
			return []plan.Problem{stand.Problem(j.Name, plan.UnderFloor, m.Joint(j.Name).Anchored.Pos, m.Named(least.ID), m.Rounded(under, 1), m.Named(foot.ID))}
		}
	}
	return nil
}

// leastUnderMm is by how much something may end under what is anchored: a foot is packed up so far. Common practice, no source.
const leastUnderMm = 1.0

// legsShort finds the lowest of what is named a leg or a foot, where the machine is anchored nowhere and something
// else of it reaches lower: it does not stand on its legs. Legs with something lower under them stand on that, but over the centre of
// gravity of all they hang upside down. Of machines that stand by themselves it is the worst.
func (m *Machine) legsShort() []plan.Problem {
	if len(m.Joints) < len(m.Job.Joints) || slices.ContainsFunc(m.Job.Joints, func(in *parts.Joint) bool { return in.Anchored.Value != "" }) {
		return nil
	}
	legs, all := map[int]*assembly.Body{}, map[int]*assembly.Body{} // the lowest of each machine
	lower := func(of map[int]*assembly.Body, b *assembly.Body) {
		if low := of[stand.StandsIn(b)]; low == nil || m.low(b) < m.low(low) {
			of[stand.StandsIn(b)] = b
		}
	}
	for b, r := range m.Parts() {
		if m.hangs(b) {
			continue
		}
		if lower(all, b); r.Part.For == parts.Leg {
			lower(legs, b)
		}
	}
	var found []plan.Problem
	worst := 1.0
	for _, n := range slices.Sorted(maps.Keys(legs)) {
		leg, lowest := legs[n], all[n]
		off, high := m.low(leg)-m.low(lowest), m.low(leg)-assembly.Together(m.Stage().BodiesOf(len(m.Joints), leg.ID)).Centre.Dot(m.Up)
		over := geom.Over(high, 0)
		if off < worst || !m.Stage().Together(len(m.Joints), leg.ID)[lowest.ID] || !over && m.standsOnPart(leg, m.low(lowest)) {
			continue
		}
		worst, found = off, []plan.Problem{stand.Problem("", plan.LegsShort, m.PartOf(leg.ID).Part.Title.Pos, m.Named(leg.ID), m.Rounded(off, 1), m.Named(lowest.ID))}
		if over {
			found = []plan.Problem{stand.Problem("", plan.LegsHigh, m.PartOf(leg.ID).Part.Title.Pos, m.Named(leg.ID), m.Rounded(high, 0), plan.Named(m.upIs()))}
		}
	}
	return found
}

// onEdge finds a foot, a plate across the end of an upright alone, that stands on its edge as long as the job does not say that
// the front is up, and would lie level then.
func (m *Machine) onEdge() []plan.Problem {
	if m.Job.FrontUp || len(m.Joints) < len(m.Job.Joints) {
		return nil
	}
	for b, r := range m.Parts() {
		if r.Part.For != parts.Leg || !r.Part.Flat() || math.Abs(b.Pose.Z.Dot(assembly.AxisZ)) < 1-stand.Level {
			continue
		}
		var on []string
		for _, j := range m.Joints {
			on = seq.Add(on, m.heldBy(j.Name, b.ID)...)
		}
		if len(on) != 1 || m.FormOf(on[0]) != parts.BarPart {
			continue
		}
		if post := m.Standing(m.Of[on[0]]); post != nil && math.Abs(post.Pose.X.Dot(b.Pose.Z)) >= 1-stand.Level {
			return []plan.Problem{stand.Problem("", plan.OnEdge, r.Part.Title.Pos, m.Named(b.ID), plan.Named(m.upIs()), m.Named(post.ID))}
		}
	}
	return nil
}

// standsOnPart tells whether something of the machine is under a leg, which ends over a level.
func (m *Machine) standsOnPart(leg *assembly.Body, level float64) bool {
	box, down := leg.Box(), m.Up.Times(level-m.low(leg))
	under := box.With(box.Low.Add(down), box.High.Add(down))
	for b := range m.Parts() {
		if m.low(b) < m.low(leg)-1 && b.Box().Meets(under, -1) {
			return true
		}
	}
	return false
}

// uprightPart is the least height of what is upright, as a share of its box's diagonal. Common practice, no source.
const uprightPart = 0.9

// levelPart is the cosine of how far a foot may lie out of level. Common practice, no source: 3°, more than bent legs do.
const levelPart = 0.9986

// uneven finds the leg or the foot of a machine that does not stand with the others. One with a foot that is not level leans on
// its floor, and its legs stand to its axes at any angle.
func (m *Machine) uneven() []plan.Problem {
	feet := m.feet()
	switch leans := slices.ContainsFunc(feet, func(f standing) bool { return -f.down.Dot(m.Up) < levelPart }); {
	case len(m.Joints) < len(m.Job.Joints):
		return nil
	case !leans:
		if leg := m.legsUneven(); leg != nil {
			return leg
		}
	}
	return m.feetApart(feet)
}

// legsUneven finds the leg of three or more upright ones that ends, with the foot joined to it, furthest over or under
// where most of them do, by StandsMm or more.
func (m *Machine) legsUneven() []plan.Problem {
	var legs, ends []*assembly.Body
	for b, r := range m.Parts() {
		size := b.Box().High.Sub(b.Box().Low)
		if r.Part.For != parts.Leg || m.hangs(b) || size.Dot(m.Up) < uprightPart*size.Len() {
			continue
		}
		legs, ends = append(legs, b), append(ends, m.footOf(b))
	}
	if len(legs) < 3 {
		return nil
	}
	floor := slices.Sorted(slices.Values(seq.Map(ends, m.low)))[len(ends)/2]
	odd := slices.MaxFunc(ends, func(a, b *assembly.Body) int {
		return cmp.Compare(math.Abs(m.low(a)-floor), math.Abs(m.low(b)-floor))
	})
	leg, off := legs[slices.Index(ends, odd)], m.low(odd)-floor
	if math.Abs(off) < StandsMm || !m.Stage().Together(len(m.Joints), leg.ID)[legs[0].ID] || m.standsOnPart(odd, floor) {
		return nil
	}
	kind := words.Either(off < 0, plan.LegLow, plan.LegHigh)
	return []plan.Problem{stand.Problem(m.between(leg.ID, ""), kind, m.PartOf(leg.ID).Part.Title.Pos, m.Named(leg.ID), m.Rounded(math.Abs(off), 2))}
}

// footOf is what is joined to a leg and ends lowest, or the leg itself.
func (m *Machine) footOf(leg *assembly.Body) *assembly.Body {
	end := leg
	for _, j := range m.Joints {
		for _, id := range m.heldBy(j.Name, leg.ID) {
			if foot := m.Standing(m.Of[id]); foot != nil && m.low(foot) < m.low(end) {
				end = foot
			}
		}
	}
	return end
}

// standing is a plate at the end of a leg, and the way that it looks, away from that.
type standing struct {
	*assembly.Body
	down assembly.Vec
}

// offMm is how far a foot's underside reaches out of the plane of another's.
func (f standing) offMm(o standing) float64 {
	low, high := f.Along(o.down)
	_, level := o.Along(o.down)
	back, under := f.Along(f.down)
	return max(math.Abs(high-level), high-low-(under-back))
}

// feetApart finds the foot of three or more that lies furthest out of the plane of the one that most share, by StandsMm
// or more.
func (m *Machine) feetApart(feet []standing) []plan.Problem {
	if len(feet) < 3 {
		return nil
	}
	share := func(o standing) int {
		return len(seq.Keep(feet, func(f standing) bool { return f.offMm(o) < StandsMm }))
	}
	most := slices.MaxFunc(feet, func(a, b standing) int { return cmp.Compare(share(a), share(b)) })
	odd := slices.MaxFunc(feet, func(a, b standing) int { return cmp.Compare(a.offMm(most), b.offMm(most)) })
	off := odd.offMm(most)
	if off < StandsMm || !m.Stage().Together(len(m.Joints), most.ID)[odd.ID] {
		return nil
	}
	return []plan.Problem{stand.Problem(m.between(odd.ID, ""), plan.FeetApart, m.PartOf(odd.ID).Part.Title.Pos, m.Named(odd.ID), m.Rounded(off, 1), m.Named(most.ID))}
}

// feet are the plates that are joined to one leg alone, a bar.
func (m *Machine) feet() (feet []standing) {
	for b, r := range m.Parts() {
		if r.Part.For != parts.Leg || !r.Part.Flat() || m.hangs(b) {
			continue
		}
		var on []string
		for _, j := range m.Joints {
			on = seq.Add(on, m.heldBy(j.Name, b.ID)...)
		}
		if len(on) != 1 || m.FormOf(on[0]) != parts.BarPart || m.PartOf(on[0]).Part.For != parts.Leg {
			continue
		}
		leg, down := m.Standing(m.Of[on[0]]), b.Pose.Z
		if leg == nil {
			continue
		}
		if leg.Box().Centre().Sub(b.Box().Centre()).Dot(down) > 0 {
			down = down.Times(-1)
		}
		feet = append(feet, standing{b, down})
	}
	return feet
}

// OnlyBars tells whether what stands, by ids, is a frame in the making, which lies as it is welded
// best.
func (m *Machine) OnlyBars(on map[string]bool) bool {
	for id := range on {
		if m.FormOf(id) != parts.BarPart {
			return false
		}
	}
	return true
}

// upIs says what of which part is up where the machine stands: that from which the others are placed.
func (m *Machine) upIs() string {
	for b := range m.Parts() {
		if b.Pose == assembly.Still {
			return words.Either(m.Job.FrontUp, "front", "TOP") + " of " + m.Title(b.ID)
		}
	}
	return ""
}
