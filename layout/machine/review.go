package machine

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// fitMm is how deep parts of one fit may lie in one another: a press fit's
// interference and a thread's flank stay below. Common practice, no source.
const fitMm = 0.5

// overlapMm is the least overlap that is reported between parts that no
// section shows exactly: welds are drawn without their beads and sheets
// without their bends. Less than half of the thinnest sheet, deeper than which
// nothing can lie in it. Common practice, no source.
const overlapMm = 0.4

// pairTolerance is that of two bodies that no joint holds to one another.
var pairTolerance = assembly.Tolerance{OtherMm: overlapMm, CoaxialMm: fitMm, FinestMm: assembly.Usual.FinestMm}

// Review finds what the places show, into Problems.
func (m *Machine) Review() {
	for _, j := range m.joints {
		a, b := instance(j.A).id(), instance(j.B).id()
		switch j.Kind {
		case parts.PressKind:
			m.allow(a, b, fitMm)
		case parts.SlideKind:
			m.keptBy(j, a)
		}
		m.follows(j, a, b)
	}
	m.overlapped()
	m.Problems = append(m.Problems, all(slices.Concat(m.travel(), m.contact(), m.openings(), m.foot(), m.faces(), m.onBeads(), []look{m.floats, m.stand, m.conveys, m.inBushes, m.inTubes, m.pastEnd, m.liftsLow, m.anchoredHigh, m.legsShort, m.tipsUnder, m.shutIn, m.laidEarly, m.laidFree, m.pinned, m.nutsEngage, m.inUse}))...)
}

// keptBy lets a hub that stands past its seat press on the plate that keeps it, which is drawn on the
// end of the shaft.
func (m *Machine) keptBy(j *plan.JointPlan, hub string) {
	by := m.joint(j.Name).Slide.KeptBy
	for _, k := range m.ofKind(parts.BoltKind) {
		if j.Slide.FreeMm < 0 && by.Is(k.B.Part, k.B.Copy) && k.B.Feature == by.Feature {
			m.allow(instance(k.A).id(), hub, -j.Slide.FreeMm+fitMm)
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
	for _, o := range assembly.Overlaps(m.Bodies, m.loose, tol) {
		m.overlapping[[2]string{o.A, o.B}], m.overlapping[[2]string{o.B, o.A}] = true, true
		if ra, rb := m.roles[o.A], m.roles[o.B]; m.overlapping[[2]string{ra.on, o.B}] || m.overlapping[[2]string{o.A, rb.on}] {
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
	mm := 0.0
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
			names, mm = append(names, m.title(other)), max(mm, o.DepthMm)
		}
	}
	j := m.between(id, "")
	p := problem(j, plan.OverlapMany, m.posAt(j, id), m.named(id), plan.Named(strings.Join(names, ", ")), rounded(mm, 2))
	m.turnCures(id, &p)
	m.Problems = append(m.Problems, p)
	return rest
}

// turnCures says of a body that lies in others that a turn of its joint frees it, if one does.
func (m *Machine) turnCures(id string, p *plan.Problem) bool {
	joint, deg, ok := m.turnedFree(id)
	if ok {
		p.Kind, p.Joint, p.Pos = plan.OverlapTurned, joint, m.posOf(joint)
		p.Args = append(p.Args, m.named(id), plan.Of(plan.Degree, deg), plan.Named(joint))
	}
	return ok
}

// fromCorner tells whether one body is a bar that does not fit the other at a corner of their
// frame, and the second is fixed to that other: where it meets the first follows from the corner.
func (m *Machine) fromCorner(bar, on string) bool {
	return slices.ContainsFunc(m.joints, func(j *plan.JointPlan) bool {
		return slices.ContainsFunc(j.Problems, func(p plan.Problem) bool { return p.Kind == plan.CornerUnlike || p.Kind == plan.CornerSections }) &&
			slices.ContainsFunc(m.heldBy(j.Name, bar), func(next string) bool {
				return slices.ContainsFunc(m.joints, func(k *plan.JointPlan) bool { return slices.Contains(m.heldBy(k.Name, next), on) })
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
		a, b = seq.Add(a, m.title(o.A)), seq.Add(b, m.title(o.B))
	}
	if !m.made(o.A, o.B) {
		a, b = a[:1], b[:1]
	}
	p := problem(j, plan.PartsOverlap, pos, plan.Named(strings.Join(a, ", ")), plan.Named(strings.Join(b, ", ")), rounded(o.DepthMm, 2))
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
	for _, in := range m.joints {
		if in.Kind != parts.PressKind && in.Kind != parts.WeldKind {
			continue
		}
		for _, on := range m.ofKind(parts.BoltKind) {
			for _, holder := range m.heldBy(in.Name, held) {
				if !slices.Contains(m.heldBy(on.Name, other), holder) {
					continue
				}
				p.Kind, p.Joint, p.Pos = plan.OverlapBy, in.Name, m.posOf(in.Name)
				p.Args = append(p.Args, m.named(holder), plan.Named(""))
				if m.joint(in.Name).Meet.Level && m.faceAt(in.Name, holder) != m.faceAt(on.Name, holder) {
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
	in := m.joint(joint)
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
	return []string{named(a).id(), named(b).id()}
}

// heldBy are the other ends of a joint of an instance.
func (m *Machine) heldBy(joint, id string) (out []string) {
	ends := namedIn(m.joint(joint))
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
			m.allow(a, b, inf)
		case plan.RegisterLarger:
			for x := range seq.Refs(m.Bodies) {
				for y := range seq.Refs(m.Bodies) {
					if m.title(x.ID) == p.Args[0].Text && m.title(y.ID) == p.Args[2].Text {
						m.allow(x.ID, y.ID, p.Args[4].Value)
					}
				}
			}
		case plan.SlidePlate:
			for _, ref := range m.joint(j.Name).Clamped() {
				m.allow(named(ref).id(), b, inf)
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
	if r := m.roles[id]; r.kind == aScrew || r.kind == aNut {
		return r.joint + " screws"
	}
	return id
}

// floats says in one note which parts are in no joint, and of each joint that
// gives its part no place what it lacks, unless other joints have placed both.
func (m *Machine) floats() (found []plan.Problem) {
	var names []string
	for _, i := range m.Floating {
		if !m.byHand(i) && !m.joined(i) {
			names = seq.Add(names, m.model(i.Part).Out.Title)
		}
	}
	if len(names) > 0 && len(m.Bodies) > 0 {
		found = append(found, m.fault("", plan.PartsFloat, plan.Named(strings.Join(names, ", "))))
	}
	floating := func(e plan.JointEnd) bool { return slices.Contains(m.Floating, instance(e)) }
	for _, j := range m.joints {
		if _, ok := m.stands(j); len(j.Placed) == 0 && !ok && (floating(j.A) || floating(j.B)) {
			found = append(found, m.fault(j.Name, lacks(m.model(j.A.Part).Part, m.model(j.B.Part).Part), plan.Named(j.A.Title), plan.Named(j.B.Title)))
		}
	}
	return found
}

// byHand tells whether an instance is put in by hand at a step.
func (m *Machine) byHand(i Instance) bool {
	return slices.ContainsFunc(m.job.Loose, func(e parts.Loose) bool { return e.Part.Value == i.Part })
}

// joined tells whether a joint names an instance, worked out or not.
func (m *Machine) joined(i Instance) bool {
	return slices.ContainsFunc(m.job.Joints, func(j *parts.Joint) bool {
		return j.Stud() == i.Part || j.Some(func(r parts.JointRef) bool { return i == named(r) })
	})
}

// floor is the lowest body; ok is false where it is no level plate and
// no foot of a frame that the machine could stand on: which way is up is not known then.
func (m *Machine) floor() (lowest int, ok bool) {
	lowest = -1
	for i := range m.Bodies {
		if b := &m.Bodies[i]; standsIn(b) == 0 && !m.hangs(b) && (lowest < 0 || m.low(b) < m.low(&m.Bodies[lowest])) {
			lowest = i
		}
	}
	if lowest < 0 {
		return lowest, false
	}
	r := m.partOf(m.Bodies[lowest].ID)
	return lowest, r != nil && m.carries(&m.Bodies[lowest], r.Part)
}

// low is how high a body reaches down.
func (m *Machine) low(b *assembly.Body) float64 { return b.Box().Low.Dot(m.Up) }

// hangs tells whether a body is a loose part or bought, on which no machine stands.
func (m *Machine) hangs(b *assembly.Body) bool { return m.Of[b.ID].Part == "" || m.byHand(m.Of[b.ID]) }

// stand tells at which step the centre of gravity of what stands comes to lie
// beyond what it stands on, before anything of it is anchored.
func (m *Machine) stand() []plan.Problem {
	lowest, ok := m.floor()
	if !ok {
		return nil
	}
	st := newStage(m)
	for n, j := range m.joints {
		on := st.together(n+1, m.Bodies[lowest].ID)
		if len(on) == 1 || m.onlyBars(on) || j.Kind == parts.WeldKind && m.lacksFoot(on, lowest) {
			continue
		}
		if m.lacks(on) {
			return nil
		}
		bodies := st.bodiesOf(n+1, m.Bodies[lowest].ID)
		name := m.joint(j.Name).Anchored.Value
		if slices.ContainsFunc(bodies, func(b assembly.Body) bool { return name != "" && m.Of[b.ID].Part == name }) {
			return nil
		}
		s, ok := assembly.Standing(bodies, m.Up)
		if !ok || s.MarginMm > 0 {
			continue
		}
		return []plan.Problem{m.fault(j.Name, plan.WouldTip, m.named(m.Bodies[lowest].ID), rounded(-s.MarginMm, 1), plan.Of(plan.Kg, assembly.Together(bodies).MassKg))}
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
	return slices.ContainsFunc(m.job.Joints, func(in *parts.Joint) bool {
		ends := namedIn(in)
		return (on[ends[0]] || on[ends[1]]) && m.stepOf(in.Name.Value) < 0
	})
}

// tipsUnder finds screws that come out of a tapped hole under what the machine stands on, once for each joint.
func (m *Machine) tipsUnder() (found []plan.Problem) {
	lowest, ok := m.floor()
	if !ok {
		return nil
	}
	for _, j := range m.ofKind(parts.BoltKind) {
		if j.Bolt.ProtrusionMm <= 0 || m.joint(j.Name).Bolt.Nut {
			continue
		}
		for b := range seq.Refs(m.Bodies) {
			if under := m.low(&m.Bodies[lowest]) - m.low(b); m.isScrew(b.ID, j) && under > surfaceMm {
				found = append(found, m.fault(j.Name, plan.TipUnder, m.named(m.Bodies[lowest].ID), rounded(under, 1), plan.Named(j.Title)))
				break
			}
		}
	}
	return found
}

// anchoredHigh finds what is anchored to the floor and stands over the middle of what it
// carries: the machine is upside down. Where a joint is not worked out, its middle is not known.
func (m *Machine) anchoredHigh() (found []plan.Problem) {
	if len(m.joints) < len(m.job.Joints) {
		return nil
	}
	for _, j := range m.joints {
		name := m.joint(j.Name).Anchored.Value
		i := slices.IndexFunc(m.Bodies, func(b assembly.Body) bool { return m.Of[b.ID].Part == name })
		if name == "" || i < 0 || !slices.ContainsFunc(m.Bodies, func(b assembly.Body) bool { return m.low(&b) < m.low(&m.Bodies[i]) }) {
			continue
		}
		middle := assembly.Together(m.Bodies).Centre.Dot(m.Up)
		if m.low(&m.Bodies[i]) <= middle {
			continue
		}
		found = append(found, problem(j.Name, plan.AnchoredHigh, m.joint(j.Name).Anchored.Pos, m.named(m.Bodies[i].ID), rounded(m.low(&m.Bodies[i])-middle, 0)))
	}
	return found
}

// legsShort finds the lowest of what is named a leg or a foot, where the machine is anchored nowhere and something
// else of it reaches lower: it does not stand on its legs. Legs with something lower under them stand on that.
func (m *Machine) legsShort() []plan.Problem {
	if len(m.joints) < len(m.job.Joints) || slices.ContainsFunc(m.job.Joints, func(in *parts.Joint) bool { return in.Anchored.Value != "" }) {
		return nil
	}
	var leg, lowest *assembly.Body
	for b := range m.parts() {
		if m.hangs(b) {
			continue
		}
		if lowest == nil || m.low(b) < m.low(lowest) {
			lowest = b
		}
		if m.partOf(b.ID).Part.For == parts.Leg && (leg == nil || m.low(b) < m.low(leg)) {
			leg = b
		}
	}
	if leg == nil || m.low(leg)-m.low(lowest) < 1 || !newStage(m).together(len(m.joints), leg.ID)[lowest.ID] {
		return nil
	}
	box, down := leg.Box(), m.Up.Times(m.low(lowest)-m.low(leg))
	under := box.With(box.Low.Add(down), box.High.Add(down))
	for b := range m.parts() {
		if m.low(b) < m.low(leg)-1 && b.Box().Meets(under, -1) {
			return nil
		}
	}
	return []plan.Problem{problem("", plan.LegsShort, m.partOf(leg.ID).Part.Title.Pos, m.named(leg.ID), rounded(m.low(leg)-m.low(lowest), 1), m.named(lowest.ID))}
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

// onlyBars tells whether what stands is a frame in the making, which lies as it is welded
// best.
func (m *Machine) onlyBars(on map[string]bool) bool {
	for id := range on {
		if m.formOf(id) != parts.BarPart {
			return false
		}
	}
	return true
}

// A loop of parts closes where it misses by no more than sizes on drawings are rounded by, to a tenth.
// Common practice, no source.
const (
	closesMm  = 0.05
	closesDeg = 0.05
)

// undetermined says what the places leave open, and what does not meet.
func (m *Machine) undetermined(solved assembly.Poses) {
	need := map[assembly.Freedom]string{
		assembly.SlideX: "from-left or from-right", assembly.SlideY: "from-bottom or from-top", assembly.TurnZ: "top or front",
	}
	open := map[string][]string{}
	var names []string
	for _, o := range solved.Open {
		if open[o.ID] == nil {
			names = append(names, o.ID)
		}
		open[o.ID] = append(open[o.ID], need[o.Free])
	}
	for _, name := range names {
		m.Problems = append(m.Problems, problem(name, plan.PlaceOpen, m.joint(name).Place.Pos, plan.Named(name), plan.Named(strings.Join(open[name], "; "))))
	}
	for _, x := range solved.Missed {
		if x.Mm < closesMm && x.Deg < closesDeg {
			continue
		}
		p := m.fault(x.ID, plan.PlaceMisses, plan.Named(x.ID), plan.Arg{Unit: plan.Miss, Value: words.Round(x.Mm, 2), High: words.Round(x.Deg, 2)}, plan.Named(strings.Join(x.By, ", ")))
		p.Because = m.lengths(x)
		skew, said := m.corners(append(slices.Clone(x.By), x.ID))
		if skew != "" {
			p.Kind, p.Args = plan.FrameSkew, append(p.Args, plan.Named(skew))
		}
		if !said {
			m.Problems = append(m.Problems, p)
		}
	}
}

// lengths are how long the parts of a ring that does not close are along its miss, each
// between its two joints there; what has none in it is left out. Where they are turned to one
// another, or fewer than two are known, it is the joints that are named.
func (m *Machine) lengths(x assembly.Mismatch) (out []plan.Because) {
	type end struct {
		joint string
		at    assembly.Vec
	}
	first := map[Instance]end{}
	for _, j := range m.joints {
		for _, e := range []plan.JointEnd{j.A, j.B} {
			i := instance(e)
			at, ok := m.pointOf(i, e.Feature)
			if !ok || j.Name != x.ID && !slices.Contains(x.By, j.Name) {
				continue
			}
			from, known := first[i]
			first[i] = end{j.Name, at}
			if mm := words.Round(math.Abs(m.poses[i.id()].Turn(at.Sub(from.at)).Dot(x.Along)), 2); known && mm > 0 {
				out = append(out, plan.Because{Name: e.Title, Problem: plan.Problem{Kind: plan.LoopLength, Args: []plan.Arg{plan.Of(plan.Mm, mm), plan.Named(from.joint), plan.Named(j.Name)}}})
			}
		}
	}
	if words.Round(x.Deg, 2) > 0 || len(out) < 2 {
		return []plan.Because{{Name: x.ID, Problem: plan.Problem{Kind: plan.LoopTurn, Args: []plan.Arg{plan.Named(strings.Join(x.By, ", "))}}}}
	}
	return out
}

// pointOf is the middle of what a joint takes hold of, in the frame of its part: of a group
// of holes, or of the cut of a bar's end.
func (m *Machine) pointOf(i Instance, feature string) (at assembly.Vec, ok bool) {
	if cut, size, ok := m.cutOf(i, feature); ok {
		return cut.Apply(size.Times(0.5)), true
	}
	r := m.model(i.Part)
	g := groupNamed(r, feature)
	if g == nil {
		return at, false
	}
	return on(wall(r, g), middle(seenFront(g, g.Points))).At, true
}

// corners looks at the corners of a frame that does not close: a bar of them with its long
// points on two sides, and whether one says itself that its cuts do not fit.
func (m *Machine) corners(joints []string) (skew string, said bool) {
	for _, j := range m.joints {
		if !slices.Contains(joints, j.Name) || !isEnd(j.A.Feature) || !isEnd(j.B.Feature) {
			continue
		}
		said = said || slices.ContainsFunc(j.Problems, func(p plan.Problem) bool { return p.Kind == plan.CornerUnlike || p.Kind == plan.CornerSections })
		for _, e := range []plan.JointEnd{j.A, j.B} {
			r := m.model(e.Part)
			if in := r.Part.Bar; r.Part.Kind == parts.BarPart && in.Left.Mitred() && in.Right.Mitred() && in.Left.Long != in.Right.Long {
				skew = r.Out.Title
			}
		}
	}
	return skew, said
}

// between names the joint of two bodies, or else of one of them.
func (m *Machine) between(a, b string) string {
	best, most := "", 0
	for _, j := range m.joints {
		if n := m.names(j.Name, a, b); n > most {
			best, most = j.Name, n
		}
	}
	return best
}

// names counts those of some bodies that come with a joint.
func (m *Machine) names(joint string, bodies ...string) (n int) {
	ids := seq.Map(m.joint(joint).Refs(), func(ref parts.JointRef) string { return named(ref).id() })
	for _, id := range bodies {
		if slices.Contains(ids, id) || m.roles[id].joint == joint {
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
		st := newStage(m)
		if n := slices.IndexFunc(m.joints, func(j *plan.JointPlan) bool { return st.together(j.N, a)[b] }); n >= 0 {
			joint = m.joints[n].Name
		}
	}
	return joint, m.posAt(joint, a, b)
}

func (m *Machine) posOf(joint string) parts.Pos {
	if j := m.joint(joint); j != nil {
		return j.Pos
	}
	return parts.Pos{File: m.job.File, Line: 1, Column: 1}
}

// problem is one of a joint, at a place in the job.
func problem(joint string, kind plan.ProblemKind, pos parts.Pos, args ...plan.Arg) plan.Problem {
	return plan.Problem{Joint: joint, Kind: kind, Pos: pos, Args: args}
}

// fault is a problem of a joint at its own place.
func (m *Machine) fault(joint string, kind plan.ProblemKind, args ...plan.Arg) plan.Problem {
	return problem(joint, kind, m.posOf(joint), args...)
}

func (m *Machine) named(id string) plan.Arg { return plan.Named(m.title(id)) }

// rounded is a length with so many decimals.
func rounded(mm float64, decimals int) plan.Arg { return plan.Of(plan.Mm, words.Round(mm, decimals)) }

// posAt is where two bodies stand in the job: where it lays or stands one of them, at their
// joint, or at the part that the first stands in.
func (m *Machine) posAt(joint string, ids ...string) parts.Pos {
	for i := range m.job.Loose {
		e := &m.job.Loose[i]
		if slices.ContainsFunc(ids, func(id string) bool {
			r := m.roles[id]
			return r.kind == aStanding && r.loose == i || e.Part.Value != "" && m.Of[id].Part == e.Part.Value
		}) {
			return cmp.Or(e.Part.Pos, e.Pos)
		}
	}
	if on := m.model(m.Of[m.roles[ids[0]].on].Part); joint == "" && on != nil { // what is bought stands in a part
		return on.Part.Name.Pos
	}
	return m.posOf(joint)
}

// title of a body for people.
func (m *Machine) title(id string) string {
	if r := m.roles[id]; r.what != "" {
		return r.what + " of " + m.title(r.on)
	}
	i, ok := m.Of[id]
	if !ok {
		return id
	}
	r := m.model(i.Part)
	if r.Part.Quantity > 1 {
		_, n, _ := strings.Cut(id, "#")
		return r.Out.Title + " " + n
	}
	return r.Out.Title
}

// lacks is what it is that nothing says where one of two parts stands on the other: of a flight
// neither what it conveys nor its room is looked at.
func lacks(pair ...*parts.Part) plan.ProblemKind {
	if slices.ContainsFunc(pair, func(p *parts.Part) bool { return p.Kind == parts.FlightPart }) {
		return plan.FlightLacking
	}
	return plan.PlaceLacking
}
