package machine

import (
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// pairTolerance is that of two bodies that no joint holds to one another.
var pairTolerance = assembly.Tolerance{OtherMm: overlapMm, CoaxialMm: stand.FitMm, FinestMm: assembly.Usual.FinestMm}

// overlapped finds what lies in one another. Copies that do so alike are one fault, and so is
// all that one part does with several others; what follows from a corner of a frame is none.
func (m *Machine) overlapped() {
	tol := assembly.Usual
	tol.OtherMm = overlapMm
	type kinds struct {
		a, b string
		mm   float64
	}
	astray := slices.ContainsFunc(m.Problems, func(p plan.Problem) bool { return p.Kind == plan.FrameSkew || misses(p) }) // each may be why
	at := map[kinds]int{}
	var found [][]assembly.Overlap
	all := assembly.Overlaps(m.Bodies, m.Loose, tol)
	for _, o := range all {
		m.overlapping[[2]string{o.A, o.B}], m.overlapping[[2]string{o.B, o.A}] = true, true
	}
	for _, o := range all {
		if ra, rb := m.Roles[o.A], m.Roles[o.B]; m.overlapping[[2]string{ra.On, o.B}] || m.overlapping[[2]string{o.A, rb.On}] {
			continue // as what it is on
		}
		k := kinds{a: m.screwsOf(o.A), b: m.screwsOf(o.B)} // one screw speaks for the others of its joint
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
// and says it as one; what is bought for those is none more.
func (m *Machine) crowded(id string, found [][]assembly.Overlap) (rest [][]assembly.Overlap) {
	var names []string
	var mm float64
	ids := []string{id}
	for _, alike := range found {
		if !m.onlyOf(id, alike) {
			if o := alike[0]; o.A != id && o.B != id || m.made(o.A, o.B) {
				rest = append(rest, alike)
			}
			continue
		}
		for _, o := range alike {
			other := words.Either(o.A == id, o.B, o.A)
			names, ids, mm = append(names, m.Title(other)), append(ids, other), max(mm, o.DepthMm)
		}
	}
	j := m.between(id, "")
	p := stand.Problem(j, plan.OverlapMany, m.posAt(j, id), m.Named(id), plan.Named(strings.Join(names, ", ")), m.Rounded(mm, 2))
	p.Bodies = ids
	m.turnCures(id, &p)
	m.Problems = append(m.Problems, p)
	return rest
}

// alsoIn tells whether a body lies in others than one: it may be that which is out of place.
func (m *Machine) alsoIn(id, but string) bool {
	return slices.ContainsFunc(m.Bodies, func(b assembly.Body) bool { return b.ID != but && m.made(b.ID) && m.overlapping[[2]string{id, b.ID}] })
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
	var a, b, bodies []string
	for _, o := range alike {
		bodies = seq.Add(bodies, o.A, o.B)
		a, b = seq.Add(a, m.Title(o.A)), seq.Add(b, m.Title(o.B))
	}
	if !m.made(o.A, o.B) {
		a, b = a[:1], b[:1]
	}
	p := stand.Problem(j, plan.PartsOverlap, pos, plan.Named(strings.Join(a, ", ")), plan.Named(strings.Join(b, ", ")), m.Rounded(o.DepthMm, 2))
	p.Bodies = bodies
	ids := []string{o.A, o.B}
	for i, q := range m.Problems {
		if q.Kind == plan.FrameSkew && slices.Contains(m.heldBy(q.Joint, o.A), o.B) {
			return // as its bar is cut
		}
		if misses(q) && slices.Contains(m.heldBy(q.Joint, o.A), o.B) {
			p.Kind, p.Args, p.Joint, p.Pos = plan.OverlapMisses, append(p.Args, q.Args...), q.Joint, q.Pos
			p.Because = q.Because
			m.Problems[i] = p
			return
		}
	}
	for i, id := range ids {
		if len(alike) == 1 && m.made(ids...) && !m.alsoIn(ids[1-i], id) && m.turnCures(id, &p) {
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

// misses tells whether a problem is a joint that does not meet.
func misses(p plan.Problem) bool { return p.Kind == plan.PlaceMisses || p.Kind == plan.PlaceTurned }

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
	meet := m.Job.MeetingOf(in)
	if namedIn(in)[0] == id {
		return meet.First
	}
	return meet.Second
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

// screwsOf names the screws, or the nuts, of a joint as one.
func (m *Machine) screwsOf(id string) string {
	if r := m.Roles[id]; r.Kind == stand.Screw || r.Kind == stand.Nut {
		return r.Joint + " screws"
	}
	return id
}
