package stand

import (
	"cmp"
	"fmt"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/bolts"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// steelKgM3 is the density of fasteners and bearings: common practice, no
// source.
const steelKgM3 = 7850

// bought adds what a joint buys: screws with nuts and washers, a bearing, or the
// nut of a hub.
func (m *Stand) bought(j *plan.JointPlan) {
	switch in := m.Joint(j.Name); in.Kind {
	case parts.BoltKind:
		if in.Stud() == "" {
			m.screws(j, in)
		} else {
			m.studNuts(j, in)
		}
	case parts.BearingKind:
		m.bearing(j, in)
	case parts.SlideKind:
		m.nut(j)
	}
}

// Role is what something bought is in the machine.
type Role struct {
	Kind  Kind
	What  string // of what is on a part, for people: "key"; empty where its own name says it
	Joint string // with whose step it comes, by name; empty for what rides on a part
	On    string // the part that it is on, without a joint from the start
	Loose int    // of what stands: its place among the job's loose things
	Runs  bool   // it sits on a shaft, and its halves come one by one
}

// Kind is what is bought.
type Kind int

// The kinds of what is bought.
const (
	Screw Kind = iota + 1
	Nut
	Cup
	Cone
	Seal     // or another ring that is on its part from the start
	Standing // a motor or a coupling
	Key
	Ring // that keeps something on its shaft
)

// Rides tells whether a body is on its part from the start, as a seal is.
func (m *Stand) Rides(id string) bool { r := m.Roles[id]; return r.On != "" && r.Joint == "" }

func (m *Stand) add(b assembly.Body, r Role) {
	b.Bought = true
	m.Roles[b.ID] = r
	m.Bodies = append(m.Bodies, b)
}

// nut stands on the shaft against what it keeps there; one that is made lies where the job has it.
func (m *Stand) nut(j *plan.JointPlan) {
	b, err := bolts.Find(j.Slide.Nut)
	on := j.B.Instance().ID()
	pose, ok := m.Poses[on]
	if err != nil || !ok || j.Slide.MadeNut != "" {
		return
	}
	z, far := j.Slide.NutFromMm, j.Slide.NutFromMm+j.Slide.NutDir*b.NutHeightMm
	id := j.Name + " nut"
	solid := assembly.Of(assembly.Hexagon(b.NutAcrossFlatsMm, min(-z, -far), max(-z, -far)))
	m.add(assembly.Body{ID: id, Solid: solid, Pose: pose, DensityKgM3: steelKgM3}, Role{Kind: Nut, Joint: j.Name})
	m.Allow(id, on, b.Thread.MajorMm/2)
}

// IsScrew tells whether a body is one of the screws of a joint.
func (m *Stand) IsScrew(id string, j *plan.JointPlan) bool {
	r := m.Roles[id]
	return r.Kind == Screw && r.Joint == j.Name
}

// screws stand in part A's holes, heads on the face that does not meet B.
func (m *Stand) screws(j *plan.JointPlan, in *parts.Joint) {
	b, err := bolts.With(in.Bolt.Size, in.Bolt.Wide)
	if err != nil || j.Bolt.LengthMm == 0 {
		return
	}
	shank, nut := solid.Screw(b, in, j)
	body, bare := assembly.Of(append(nut, shank...)...), assembly.Of(shank...)
	for n, seat := range m.seats(&j.A, m.Job.MeetingOf(in).First, j.Bolt.OffMm) {
		id := fmt.Sprintf("%s screw %d", j.Name, n+1)
		m.Shanks[id] = bare
		m.add(assembly.Body{ID: id, Solid: body, Pose: seat, DensityKgM3: steelKgM3}, Role{Kind: Screw, Joint: j.Name})
		m.Allow(id, j.B.Instance().ID(), b.Thread.MajorMm/2)
	}
}

// seats are where heads or nuts lie on an end of a joint, z out of it: over each hole, on the far
// side of the metal that they clamp from the face that meets, or in its counterbore, so far off its middle.
func (m *Stand) seats(e *plan.JointEnd, meet parts.Face, offMm []plan.XY) []assembly.Pose {
	r := m.Model(e.Part)
	pose, placed := m.Poses[e.Instance().ID()]
	g := r.GroupNamed(e.Feature)
	if g == nil || !placed {
		return nil
	}
	depth, thick, ok := r.PlaneOf(g, meet)
	if !ok {
		return nil
	}
	if g.Face != meet {
		thick -= g.SunkMm()
	}
	out, z := assembly.AxisZ, thick-depth
	if meet == parts.Front {
		out, z = out.Reversed(), -depth-thick
	}
	at := slices.Clone(g.SeenFront(g.OwnMm()))
	for i, off := range offMm {
		at[i] = at[i].Plus(off)
	}
	return seq.Map(at, func(q plan.XY) assembly.Pose {
		return pose.Of(solid.Wall(r, g)).Of(assembly.Frame(assembly.Vec{X: q.XMm, Y: q.YMm, Z: z}, out, assembly.AxisY))
	})
}

// studNuts stand on both ends of made studs, a washer under each where the job wants them: on the
// far face of part A, and of part B if its holes have no thread.
func (m *Stand) studNuts(j *plan.JointPlan, in *parts.Joint) {
	b, err := bolts.With(in.Bolt.Size, in.Bolt.Wide)
	if err != nil {
		return
	}
	up, radius := 0.0, b.Thread.MajorMm/2
	var out []assembly.Simple
	if in.Bolt.Washer {
		up = b.WasherThicknessMm
		out = append(out, assembly.Tube(b.WasherODMm/2, radius, 0, up))
	}
	solid := assembly.Of(append(out, assembly.Hexagon(b.NutAcrossFlatsMm, up, up+b.NutHeightMm))...)
	seats := m.seats(&j.A, m.Job.MeetingOf(in).First, j.Bolt.OffMm)
	var run float64 // from the middle of a slot of B to the centre of its end
	if g := m.Model(j.B.Part).GroupNamed(j.B.Feature); g != nil && g.Size.Thread == nil {
		if half, _, slot := g.SlotMm(); slot {
			run = half.LengthMm()
		}
		seats = append(seats, m.seats(&j.B, m.Job.MeetingOf(in).Second, nil)...)
	}
	studs, n := m.Studs(j), 0
	if j.Bolt.StudStandsMm > 0 {
		for _, t := range studs {
			m.Allow(t.B, j.B.Instance().ID(), radius)
		}
	}
	for _, seat := range seats {
		for _, t := range studs {
			off := seat.Inverse().Apply(m.Poses[t.B].At)
			if off.Z = 0; off.Len() > radius+run {
				continue // it is another's
			}
			n, seat = n+1, seat.Of(assembly.Move(off)) // in a slot the nut stands where the stud does
			id := fmt.Sprintf("%s nut %d", j.Name, n)
			m.add(assembly.Body{ID: id, Solid: solid, Pose: seat, DensityKgM3: steelKgM3}, Role{Kind: Nut, Joint: j.Name})
			m.Allow(id, t.B, radius)
			break
		}
	}
}

// cupShare is how wide a cup is as a part of its bearing, which no job gives:
// 0.78 and 0.81 for 30210 and 30208 of ISO 355, as remembered. Common practice,
// no source.
const cupShare = 0.8

// bearing stands where the joint's plan has its rings' backs: a cup and a cone
// of their own widths, the rollers with the cone; of a ball bearing the outer and the inner ring, the balls with that.
func (m *Stand) bearing(j *plan.JointPlan, in *parts.Joint) {
	b, p := in.Bearing, j.Bearing
	pose, ok := m.AxisOf(j)
	if !ok || p.CupBackMm == p.LargeEndMm {
		return
	}
	inner, outer := b.Bore.Mm/2, b.Outside.Mm/2
	gap := (outer - inner) / 10 // between the rings, bridged by the rollers
	middle := (inner + outer) / 2
	cone := cmp.Or(p.ConeWidthMm, b.Width.Mm)
	// z falls along the assembly's axis; each ring lies from its back inwards.
	back := func(mm, inwards, wide float64) (low, high float64) {
		other := mm + inwards*wide
		return min(-mm, -other), max(-mm, -other)
	}
	share := cupShare
	innerName, outerName := p.Names()
	if b.Ball {
		share = 1
	}
	cupLow, cupHigh := back(p.CupBackMm, p.LargeEndDir, share*b.Width.Mm)
	coneLow, coneHigh := back(p.LargeEndMm, -p.LargeEndDir, cone)
	for _, ring := range []struct {
		kind  Kind
		id    string
		in    plan.JointEnd
		solid *assembly.Solid
	}{
		{Cup, j.Name + " " + outerName, j.B, assembly.Of(assembly.Tube(outer, middle+gap, cupLow, cupHigh))},
		{Cone, j.Name + " " + innerName, j.A, assembly.Of(
			assembly.Tube(middle-gap, inner, coneLow, coneHigh),
			assembly.Tube(middle+gap, middle-gap, max(cupLow, coneLow), min(cupHigh, coneHigh)),
		)},
	} {
		m.add(assembly.Body{ID: ring.id, Solid: ring.solid, Pose: pose, DensityKgM3: steelKgM3}, Role{Kind: ring.kind, Joint: j.Name})
		m.Allow(ring.id, ring.in.Instance().ID(), FitMm+p.ShimMm) // the shims are not drawn
	}
}

// Allow lets two bodies lie in one another, up to a depth in mm.
func (m *Stand) Allow(a, b string, upToMm float64) {
	may := assembly.Allowed{A: a, B: b, UpToMm: upToMm}
	m.Loose = append(m.Loose, may)
	m.looseOf[a] = append(m.looseOf[a], may)
	m.looseOf[b] = append(m.looseOf[b], may)
}

// Allowed is what some bodies may lie in.
func (m *Stand) Allowed(bodies []assembly.Body) []assembly.Allowed {
	return seq.Flat(bodies, func(b assembly.Body) []assembly.Allowed { return m.looseOf[b.ID] })
}

// FitMm is how deep parts of one fit may lie in one another: a press fit's
// interference and a thread's flank stay below. Common practice, no source.
const FitMm = 0.5
