package machine

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// overlapMm is the least overlap that is reported between parts that no
// section shows exactly: welds are drawn without their beads and sheets
// without their bends. Less than half of the thinnest sheet, deeper than which
// nothing can lie in it. Common practice, no source.
const overlapMm = 0.4

// pairTolerance is that of two bodies that no joint holds to one another.
var pairTolerance = assembly.Tolerance{OtherMm: overlapMm, CoaxialMm: stand.FitMm, FinestMm: assembly.Usual.FinestMm}

// Review finds what the places show, into Problems.
func (m *Machine) Review() {
	for _, j := range m.Joints {
		a, b := j.A.Instance().ID(), j.B.Instance().ID()
		switch j.Kind {
		case parts.PressKind:
			m.Allow(a, b, stand.FitMm)
		case parts.SlideKind:
			m.keptBy(j, a)
		}
		m.follows(j, a, b)
	}
	m.overlapped()
	m.Problems = append(m.Problems, all(slices.Concat(m.travel(), m.contact(), m.openings(), m.foot(), m.faces(), m.onBeads(), []look{m.floats, m.stand, m.conveys, m.inBushes, m.inTubes, m.pastEnd, m.liftsLow, m.anchoredHigh, m.legsShort, m.legsUneven, m.tipsUnder, m.shutIn, m.laidEarly, m.laidFree, m.pinned, m.nutsEngage, m.inUse, m.shifted}))...)
}

// keptBy lets a hub that stands past its seat press on the plate that keeps it, which is drawn on the
// end of the shaft.
func (m *Machine) keptBy(j *plan.JointPlan, hub string) {
	by := m.Joint(j.Name).Slide.KeptBy
	for _, k := range m.OfKind(parts.BoltKind) {
		if j.Slide.FreeMm < 0 && k.B.Instance() == by.Instance() && k.B.Feature == by.Feature {
			m.Allow(k.A.Instance().ID(), hub, -j.Slide.FreeMm+stand.FitMm)
		}
	}
}

// overlapped finds what lies in one another. Copies that do so alike are one fault, and so is
// all that one part does with several others; what follows from a corner of a frame is none.
func (m *Machine) overlapped() {
	tol := assembly.Usual
	tol.OtherMm = overlapMm
	type kinds struct {
		a, b string
		mm   float64
	}
	astray := slices.ContainsFunc(m.Problems, func(p plan.Problem) bool { return p.Kind == plan.FrameSkew || p.Kind == plan.PlaceMisses }) // each may be why
	at := map[kinds]int{}
	var found [][]assembly.Overlap
	for _, o := range assembly.Overlaps(m.Bodies, m.Loose, tol) {
		m.overlapping[[2]string{o.A, o.B}], m.overlapping[[2]string{o.B, o.A}] = true, true
		if ra, rb := m.Roles[o.A], m.Roles[o.B]; m.overlapping[[2]string{ra.On, o.B}] || m.overlapping[[2]string{o.A, rb.On}] {
			continue // as what it is on
		}
		k := kinds{m.screwsOf(o.A), m.screwsOf(o.B), 0} // one screw speaks for the others of its joint
		if !astray && m.made(o.A, o.B) {
			k = kinds{m.Of[o.A].Part, m.Of[o.B].Part, words.Round(o.DepthMm, 2)}
		}
		if i, before := at[k]; before {
			found[i] = append(found[i], o)
		} else if !m.fromCorner(o.A, o.B) && !m.fromCorner(o.B, o.A) {
			at[k] = len(found)
			found = append(found, []assembly.Overlap{o})
		}
	}
	for !astray {
		worst, most := "", 1
		for b := range seq.Refs(m.Bodies) {
			if n := len(m.othersOf(b.ID, found)); n > most {
				worst, most = b.ID, n
			}
		}
		if worst == "" {
			break
		}
		found = m.crowded(worst, found)
	}
	for _, alike := range found {
		m.overlaps(alike)
	}
}

// onlyOf tells whether made parts that lie in one another alike all do so with one body.
func (m *Machine) onlyOf(id string, alike []assembly.Overlap) bool {
	return !slices.ContainsFunc(alike, func(o assembly.Overlap) bool { return o.A != id && o.B != id || !m.made(o.A, o.B) })
}

// othersOf are the other parts that a body lies in.
func (m *Machine) othersOf(id string, found [][]assembly.Overlap) (of []string) {
	for _, alike := range found {
		if m.onlyOf(id, alike) {
			for _, other := range []string{alike[0].A, alike[0].B} {
				if other != id {
					of = seq.Add(of, m.Of[other].Part)
				}
			}
		}
	}
	return of
}

// crowded takes from what lies in one another all that one part does with several others,
// and says it as one.
func (m *Machine) crowded(id string, found [][]assembly.Overlap) (rest [][]assembly.Overlap) {
	var names []string
	var mm float64
	for _, alike := range found {
		if !m.onlyOf(id, alike) {
			rest = append(rest, alike)
			continue
		}
		for _, o := range alike {
			other := o.A
			if other == id {
				other = o.B
			}
			names, mm = append(names, m.Title(other)), max(mm, o.DepthMm)
		}
	}
	j := m.between(id, "")
	p := stand.Problem(j, plan.OverlapMany, m.posAt(j, id), m.Named(id), plan.Named(strings.Join(names, ", ")), stand.Rounded(mm, 2))
	m.turnCures(id, &p)
	m.Problems = append(m.Problems, p)
	return rest
}

// turnCures says of a body that lies in others that a turn of its joint frees it, if one does.
func (m *Machine) turnCures(id string, p *plan.Problem) bool {
	joint, deg, ok := m.turnedFree(id)
	if ok {
		p.Kind, p.Joint, p.Pos = plan.OverlapTurned, joint, m.PosOf(joint)
		p.Args = append(p.Args, m.Named(id), plan.Of(plan.Degree, deg), plan.Named(joint))
	}
	return ok
}

// fromCorner tells whether one body is a bar that does not fit the other at a corner of their
// frame, and the second is fixed to that other: where it meets the first follows from the corner.
func (m *Machine) fromCorner(bar, on string) bool {
	return slices.ContainsFunc(m.Joints, func(j *plan.JointPlan) bool {
		return slices.ContainsFunc(j.Problems, func(p plan.Problem) bool { return p.Kind == plan.CornerUnlike || p.Kind == plan.CornerSections }) &&
			slices.ContainsFunc(m.heldBy(j.Name, bar), func(next string) bool {
				return slices.ContainsFunc(m.Joints, func(k *plan.JointPlan) bool { return slices.Contains(m.heldBy(k.Name, next), on) })
			})
	})
}

// overlaps says what lies in one another and, where that is known, why: their joint does
// not meet, or one is held in what the other is bolted to.
func (m *Machine) overlaps(alike []assembly.Overlap) {
	o := alike[0]
	j, pos := m.meet(o.A, o.B)
	var a, b []string
	for _, o := range alike {
		a, b = seq.Add(a, m.Title(o.A)), seq.Add(b, m.Title(o.B))
	}
	if !m.made(o.A, o.B) {
		a, b = a[:1], b[:1]
	}
	p := stand.Problem(j, plan.PartsOverlap, pos, plan.Named(strings.Join(a, ", ")), plan.Named(strings.Join(b, ", ")), stand.Rounded(o.DepthMm, 2))
	ids := []string{o.A, o.B}
	for i, q := range m.Problems {
		if q.Kind == plan.FrameSkew && slices.Contains(m.heldBy(q.Joint, o.A), o.B) {
			return // as its bar is cut
		}
		if q.Kind == plan.PlaceMisses && slices.Contains(m.heldBy(q.Joint, o.A), o.B) {
			p.Kind, p.Args, p.Joint, p.Pos = plan.OverlapMisses, append(p.Args, q.Args...), q.Joint, q.Pos
			p.Because = q.Because
			m.Problems[i] = p
			return
		}
	}
	for _, id := range ids {
		if len(alike) == 1 && m.made(ids...) && m.turnCures(id, &p) {
			m.Problems = append(m.Problems, p)
			return
		}
	}
	for k, held := range ids {
		if m.boltedInto(held, ids[1-k], &p) {
			if k == 1 {
				p.Args[0], p.Args[1] = p.Args[1], p.Args[0]
			}
			break
		}
	}
	m.Problems = append(m.Problems, p)
}

// boltedInto says of a body that is pressed or welded into what the other that it lies in is bolted to, by which joint it
// is there, if it is.
func (m *Machine) boltedInto(held, other string, p *plan.Problem) bool {
	for _, in := range m.Joints {
		if in.Kind != parts.PressKind && in.Kind != parts.WeldKind {
			continue
		}
		for _, on := range m.OfKind(parts.BoltKind) {
			for _, holder := range m.heldBy(in.Name, held) {
				if !slices.Contains(m.heldBy(on.Name, other), holder) {
					continue
				}
				p.Kind, p.Joint, p.Pos = plan.OverlapBy, in.Name, m.PosOf(in.Name)
				p.Args = append(p.Args, m.Named(holder), plan.Named(""))
				if m.Joint(in.Name).Meet.Level && m.faceAt(in.Name, holder) != m.faceAt(on.Name, holder) {
					p.Args[4] = plan.Named(p.Args[3].Text + " the other way round, or ")
				}
				return true
			}
		}
	}
	return false
}

// faceAt is the face by which an instance meets the other end of a joint.
func (m *Machine) faceAt(joint, id string) parts.Face {
	in := m.Joint(joint)
	if namedIn(in)[0] == id {
		return in.Meet.First
	}
	return in.Meet.Second
}

// made tells whether bodies are parts of the job, none of them bought.
func (m *Machine) made(ids ...string) bool {
	return !slices.ContainsFunc(ids, func(id string) bool { _, made := m.Of[id]; return !made })
}

// namedIn are the instances that a joint of the job ends in.
func namedIn(in *parts.Joint) []string {
	a, b := in.Ends()
	return []string{a.Instance().ID(), b.Instance().ID()}
}

// heldBy are the other ends of a joint of an instance.
func (m *Machine) heldBy(joint, id string) (out []string) {
	ends := namedIn(m.Joint(joint))
	if i := slices.Index(ends, id); i >= 0 {
		out = append(out, ends[1-i])
	}
	return out
}

// follows lets parts lie in one another where the joint says already that one does
// not go over the other.
func (m *Machine) follows(j *plan.JointPlan, a, b string) {
	for _, p := range j.Problems {
		switch p.Kind {
		case plan.SlideBinds:
			m.Allow(a, b, inf)
		case plan.RegisterLarger:
			m.Allow(p.Ends[0].Instance().ID(), p.Ends[1].Instance().ID(), p.Args[4].Value)
		case plan.SlidePlate:
			for _, ref := range m.Joint(j.Name).Clamped() {
				m.Allow(ref.Instance().ID(), b, inf)
			}
		}
	}
}

// look finds problems. Looks know nothing of one another and only read the
// machine.
type look func() []plan.Problem

// all looks on all processors, and returns what is found in the order of the
// looks.
func all(looks []look) []plan.Problem {
	found := make([][]plan.Problem, len(looks))
	seq.OnAll(len(looks), func(k int) { found[k] = looks[k]() })
	return slices.Concat(found...)
}

// screwsOf names the screws, or the nuts, of a joint as one.
func (m *Machine) screwsOf(id string) string {
	if r := m.Roles[id]; r.Kind == stand.Screw || r.Kind == stand.Nut {
		return r.Joint + " screws"
	}
	return id
}

// floats says in one note which parts are in no joint, and of each joint that
// gives its part no place what it lacks, unless other joints have placed both.
func (m *Machine) floats() (found []plan.Problem) {
	var names []string
	for _, i := range m.Floating {
		if !m.ByHand(i) && !m.joined(i) {
			names = seq.Add(names, m.Model(i.Part).Out.Title)
		}
	}
	if len(names) > 0 && len(m.Bodies) > 0 {
		found = append(found, m.Fault("", plan.PartsFloat, plan.Named(strings.Join(names, ", "))))
	}
	floating := func(e plan.JointEnd) bool { return slices.Contains(m.Floating, e.Instance()) }
	for _, j := range m.Joints {
		if _, ok := m.MeetOf(j); len(j.Placed) == 0 && !ok && (floating(j.A) || floating(j.B)) {
			found = append(found, m.Fault(j.Name, lacks(m.Model(j.A.Part).Part, m.Model(j.B.Part).Part), plan.Named(j.A.Title), plan.Named(j.B.Title)))
		}
	}
	return found
}

// ByHand tells whether an instance is put in by hand at a step.
func (m *Machine) ByHand(i parts.Instance) bool {
	return slices.ContainsFunc(m.Job.Loose, func(e parts.Loose) bool { return e.Part.Value == i.Part })
}

// joined tells whether a joint names an instance, worked out or not.
func (m *Machine) joined(i parts.Instance) bool {
	return slices.ContainsFunc(m.Job.Joints, func(j *parts.Joint) bool {
		return j.Stud() == i.Part || j.Some(func(r parts.JointRef) bool { return i == r.Instance() })
	})
}

// floor is the lowest body; ok is false where it is no level plate and
// no foot of a frame that the machine could stand on: which way is up is not known then.
func (m *Machine) floor() (lowest int, ok bool) {
	lowest = -1
	for i := range m.Bodies {
		if b := &m.Bodies[i]; stand.StandsIn(b) == 0 && !m.hangs(b) && (lowest < 0 || m.low(b) < m.low(&m.Bodies[lowest])) {
			lowest = i
		}
	}
	if lowest < 0 {
		return lowest, false
	}
	r := m.PartOf(m.Bodies[lowest].ID)
	return lowest, r != nil && m.carries(&m.Bodies[lowest], r.Part)
}

// low is how high a body reaches down.
func (m *Machine) low(b *assembly.Body) float64 { return b.Box().Low.Dot(m.Up) }

// hangs tells whether a body is a loose part or bought, on which no machine stands.
func (m *Machine) hangs(b *assembly.Body) bool { return m.Of[b.ID].Part == "" || m.ByHand(m.Of[b.ID]) }

// stand tells at which step the centre of gravity of what stands comes to lie
// beyond what it stands on, before anything of it is anchored.
func (m *Machine) stand() []plan.Problem {
	lowest, ok := m.floor()
	if !ok {
		return nil
	}
	st := NewStage(m)
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
		return []plan.Problem{m.Fault(j.Name, plan.WouldTip, m.Named(m.Bodies[lowest].ID), stand.Rounded(-s.MarginMm, 1), plan.Of(plan.Kg, assembly.Together(bodies).MassKg))}
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
			if under := m.low(&m.Bodies[lowest]) - m.low(b); m.IsScrew(b.ID, j) && under > stand.SurfaceMm {
				found = append(found, m.Fault(j.Name, plan.TipUnder, m.Named(m.Bodies[lowest].ID), stand.Rounded(under, 1), plan.Named(j.Title)))
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
		if m.low(&m.Bodies[i]) <= middle {
			continue
		}
		found = append(found, stand.Problem(j.Name, plan.AnchoredHigh, m.Joint(j.Name).Anchored.Pos, m.Named(m.Bodies[i].ID), stand.Rounded(m.low(&m.Bodies[i])-middle, 0)))
	}
	return found
}

// legsShort finds the lowest of what is named a leg or a foot, where the machine is anchored nowhere and something
// else of it reaches lower: it does not stand on its legs. Legs with something lower under them stand on that.
func (m *Machine) legsShort() []plan.Problem {
	if len(m.Joints) < len(m.Job.Joints) || slices.ContainsFunc(m.Job.Joints, func(in *parts.Joint) bool { return in.Anchored.Value != "" }) {
		return nil
	}
	var leg, lowest *assembly.Body
	for b := range m.Parts() {
		if m.hangs(b) {
			continue
		}
		if lowest == nil || m.low(b) < m.low(lowest) {
			lowest = b
		}
		if m.PartOf(b.ID).Part.For == parts.Leg && (leg == nil || m.low(b) < m.low(leg)) {
			leg = b
		}
	}
	if leg == nil || m.low(leg)-m.low(lowest) < 1 || !NewStage(m).Together(len(m.Joints), leg.ID)[lowest.ID] {
		return nil
	}
	if m.standsOnPart(leg, m.low(lowest)) {
		return nil
	}
	return []plan.Problem{stand.Problem("", plan.LegsShort, m.PartOf(leg.ID).Part.Title.Pos, m.Named(leg.ID), stand.Rounded(m.low(leg)-m.low(lowest), 1), m.Named(lowest.ID))}
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

// legsUneven finds the leg of three or more upright ones that ends, with the foot joined to it, furthest over or under
// where most of them do, by StandsMm or more.
func (m *Machine) legsUneven() []plan.Problem {
	var legs, ends []*assembly.Body
	for b, r := range m.Parts() {
		size := b.Box().High.Sub(b.Box().Low)
		if r.Part.For != parts.Leg || m.hangs(b) || size.Dot(m.Up) < uprightPart*size.Len() {
			continue
		}
		end := b
		for _, j := range m.Joints {
			for _, id := range m.heldBy(j.Name, b.ID) {
				if foot := m.Standing(m.Of[id]); foot != nil && m.low(foot) < m.low(end) {
					end = foot
				}
			}
		}
		legs, ends = append(legs, b), append(ends, end)
	}
	if len(m.Joints) < len(m.Job.Joints) || len(legs) < 3 {
		return nil
	}
	floor := slices.Sorted(slices.Values(seq.Map(ends, m.low)))[len(ends)/2]
	odd := slices.MaxFunc(ends, func(a, b *assembly.Body) int {
		return cmp.Compare(math.Abs(m.low(a)-floor), math.Abs(m.low(b)-floor))
	})
	leg, off := legs[slices.Index(ends, odd)], m.low(odd)-floor
	if math.Abs(off) < StandsMm || !NewStage(m).Together(len(m.Joints), leg.ID)[legs[0].ID] || m.standsOnPart(odd, floor) {
		return nil
	}
	kind := plan.LegHigh
	if off < 0 {
		kind = plan.LegLow
	}
	return []plan.Problem{stand.Problem(m.between(leg.ID, ""), kind, m.PartOf(leg.ID).Part.Title.Pos, m.Named(leg.ID), stand.Rounded(math.Abs(off), 2))}
}

// carries tells whether a machine may stand on its lowest part: a plate that lies flat, or
// bars of a frame, of which more than one reach so low.
func (m *Machine) carries(b *assembly.Body, p *parts.Part) bool {
	if p.Kind != parts.BarPart {
		return p.Flat() && b.Pose.Z.Cross(m.Up).Len() < 1e-6
	}
	feet := 0
	for o := range seq.Refs(m.Bodies) {
		if !m.hangs(o) && m.low(o) < m.low(b)+1 {
			feet++
		}
	}
	return feet > 1
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

// between names the joint of two bodies, or else of one of them.
func (m *Machine) between(a, b string) string {
	best, most := "", 0
	for _, j := range m.Joints {
		if n := m.names(j.Name, a, b); n > most {
			best, most = j.Name, n
		}
	}
	return best
}

// names counts those of some bodies that come with a joint.
func (m *Machine) names(joint string, bodies ...string) (n int) {
	ids := seq.Map(m.Joint(joint).Refs(), func(ref parts.JointRef) string { return ref.Instance().ID() })
	for _, id := range bodies {
		if slices.Contains(ids, id) || m.Roles[id].Joint == joint {
			n++
		}
	}
	return n
}

// meet names the joint of two bodies, or else that at which they come together, and where it or the
// loose one of them stands in the job.
func (m *Machine) meet(a, b string) (joint string, pos parts.Pos) {
	joint = m.between(a, b)
	if joint == "" || m.names(joint, a, b) < 2 {
		st := NewStage(m)
		if n := slices.IndexFunc(m.Joints, func(j *plan.JointPlan) bool { return st.Together(j.N, a)[b] }); n >= 0 {
			joint = m.Joints[n].Name
		}
	}
	return joint, m.posAt(joint, a, b)
}

// posAt is where two bodies stand in the job: where it lays or stands one of them, at their
// joint, or at the part that the first stands in.
func (m *Machine) posAt(joint string, ids ...string) parts.Pos {
	for i := range m.Job.Loose {
		e := &m.Job.Loose[i]
		if slices.ContainsFunc(ids, func(id string) bool {
			r := m.Roles[id]
			return r.Kind == stand.Standing && r.Loose == i || e.Part.Value != "" && m.Of[id].Part == e.Part.Value
		}) {
			return cmp.Or(e.Part.Pos, e.Pos)
		}
	}
	if on := m.Model(m.Of[m.Roles[ids[0]].On].Part); joint == "" && on != nil { // what is bought stands in a part
		return on.Part.Name.Pos
	}
	return m.PosOf(joint)
}

// lacks is what it is that nothing says where one of two parts stands on the other: of a flight
// neither what it conveys nor its room is looked at.
func lacks(pair ...*parts.Part) plan.ProblemKind {
	if slices.ContainsFunc(pair, func(p *parts.Part) bool { return p.Kind == parts.FlightPart }) {
		return plan.FlightLacking
	}
	return plan.PlaceLacking
}
