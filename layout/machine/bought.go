package machine

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/bolts"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// steelKgM3 is the density of fasteners and bearings: common practice, no
// source.
const steelKgM3 = 7850

// bought adds what a joint buys: screws with nuts and washers, a bearing, or the
// nut of a hub.
func (m *Machine) bought(j *plan.JointPlan) {
	switch in := m.joint(j.Name); in.Kind {
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

type role struct {
	kind  kind
	what  string // of what is on a part, for people: "key"; empty where its own name says it
	joint string // with whose step it comes, by name; empty for what rides on a part
	on    string // the part that it is on, without a joint from the start
	loose int    // of what stands: its place among the job's loose things
	runs  bool   // it sits on a shaft, and its halves come one by one
}

type kind int

const (
	aScrew kind = iota + 1
	aNut
	aCup
	aCone
	aSeal     // or another ring that is on its part from the start
	aStanding // a motor or a coupling
	aKey
	aRing // that keeps something on its shaft
)

// rides tells whether a body is on its part from the start, as a seal is.
func (m *Machine) rides(id string) bool { r := m.roles[id]; return r.on != "" && r.joint == "" }

func (m *Machine) add(b assembly.Body, r role) {
	b.Bought = true
	m.roles[b.ID] = r
	m.Bodies = append(m.Bodies, b)
}

// nut stands on the shaft against what it keeps there.
func (m *Machine) nut(j *plan.JointPlan) {
	b, err := bolts.Find(j.Slide.Nut)
	on := instance(j.B).id()
	pose, ok := m.poses[on]
	if err != nil || !ok {
		return
	}
	z, far := j.Slide.NutFromMm, j.Slide.NutFromMm+j.Slide.NutDir*b.NutHeightMm
	id := j.Name + " nut"
	solid := assembly.Of(assembly.Hexagon(b.NutAcrossFlatsMm, min(-z, -far), max(-z, -far)))
	m.add(assembly.Body{ID: id, Solid: solid, Pose: pose, DensityKgM3: steelKgM3}, role{kind: aNut, joint: j.Name})
	m.allow(id, on, b.Thread.MajorMm/2)
}

// isScrew tells whether a body is one of the screws of a joint.
func (m *Machine) isScrew(id string, j *plan.JointPlan) bool {
	r := m.roles[id]
	return r.kind == aScrew && r.joint == j.Name
}

// screws stand in part A's holes, heads on the face that does not meet B.
func (m *Machine) screws(j *plan.JointPlan, in *parts.Joint) {
	b, err := bolts.With(in.Bolt.Size, in.Bolt.Wide)
	if err != nil || j.Bolt.LengthMm == 0 {
		return
	}
	shank, nut := screw(b, in, j)
	body, bare := assembly.Of(append(nut, shank...)...), assembly.Of(shank...)
	for n, seat := range m.seats(&j.A, m.meetingFace(j, in), j.Bolt.OffMm) {
		id := fmt.Sprintf("%s screw %d", j.Name, n+1)
		m.shanks[id] = bare
		m.add(assembly.Body{ID: id, Solid: body, Pose: seat, DensityKgM3: steelKgM3}, role{kind: aScrew, joint: j.Name})
		m.allow(id, instance(j.B).id(), b.Thread.MajorMm/2)
	}
}

// seats are where heads or nuts lie on an end of a joint, z out of it: over each hole, on the far
// side of the metal that they clamp from the face that meets, or in its counterbore, so far off its middle.
func (m *Machine) seats(e *plan.JointEnd, meet parts.Face, offMm []plan.XY) []assembly.Pose {
	r := m.model(e.Part)
	pose, placed := m.poses[instance(*e).id()]
	g := groupNamed(r, e.Feature)
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
	at := slices.Clone(seenFront(g, g.OwnMm()))
	for i, off := range offMm {
		at[i] = at[i].Plus(off)
	}
	return seq.Map(at, func(q plan.XY) assembly.Pose {
		return pose.Of(wall(r, g)).Of(assembly.Frame(assembly.Vec{X: q.XMm, Y: q.YMm, Z: z}, out, assembly.AxisY))
	})
}

// studNuts stand on both ends of made studs, a washer under each where the job wants them: on the
// far face of part A, and of part B if its holes have no thread.
func (m *Machine) studNuts(j *plan.JointPlan, in *parts.Joint) {
	b, err := bolts.With(in.Bolt.Size, in.Bolt.Wide)
	if err != nil {
		return
	}
	up, radius := 0.0, b.Thread.MajorMm/2
	var out []assembly.Simple
	if in.Bolt.Washer && b.WasherThicknessMm > 0 {
		up = b.WasherThicknessMm
		out = append(out, assembly.Tube(b.WasherODMm/2, radius, 0, up))
	}
	solid := assembly.Of(append(out, assembly.Hexagon(b.NutAcrossFlatsMm, up, up+b.NutHeightMm))...)
	seats := m.seats(&j.A, m.meetingFace(j, in), nil)
	if g := groupNamed(m.model(j.B.Part), j.B.Feature); g != nil && g.Size.Thread == nil {
		meet := g.Face
		if in.Meet.Set() {
			meet = in.Meet.Second
		}
		seats = append(seats, m.seats(&j.B, meet, nil)...)
	}
	studs, n := m.studs(j), 0
	if j.Bolt.StudStandsMm > 0 {
		for _, t := range studs {
			m.allow(t.B, instance(j.B).id(), radius)
		}
	}
	for _, seat := range seats {
		for _, t := range studs {
			if off := seat.Inverse().Apply(m.poses[t.B].At); math.Hypot(off.X, off.Y) > radius {
				continue // it is another's
			}
			n++
			id := fmt.Sprintf("%s nut %d", j.Name, n)
			m.add(assembly.Body{ID: id, Solid: solid, Pose: seat, DensityKgM3: steelKgM3}, role{kind: aNut, joint: j.Name})
			m.allow(id, t.B, radius)
		}
	}
}

// meetingFace is the face of part A that looks to part B: the joint's, or the
// usual one of what is bolted into.
func (m *Machine) meetingFace(j *plan.JointPlan, in *parts.Joint) parts.Face {
	if in.Meet.Set() {
		return in.Meet.First
	}
	g := groupNamed(m.model(j.B.Part), j.B.Feature)
	if in.OtherWay {
		return g.Face
	}
	return map[parts.Face]parts.Face{parts.Front: parts.Back, parts.Back: parts.Front}[g.Face]
}

// screw is a bolt with its head up, seated at z = 0 on the part or its washer,
// and the nut where the grip ends, if it has one.
func screw(b bolts.Bolt, in *parts.Joint, j *plan.JointPlan) (out, nut []assembly.Simple) {
	r := b.Thread.MajorMm / 2
	up := 0.0
	if in.Bolt.Washer && b.WasherThicknessMm > 0 {
		up = b.WasherThicknessMm
		out = append(out, assembly.Tube(b.WasherODMm/2, r, 0, up))
	}
	out = append(out, assembly.Cylinder(r, up-j.Bolt.LengthMm, up))
	if in.Bolt.Head == "socket" {
		out = append(out, assembly.Cylinder(b.SocketHeadDiameterMm/2, up, up+b.SocketHeadHeightMm))
	} else {
		out = append(out, assembly.Hexagon(b.AcrossFlatsMm, up, up+b.HeadHeightMm))
	}
	if in.Bolt.Nut {
		low := -j.Bolt.GripMm
		if in.Bolt.Washer && b.WasherThicknessMm > 0 {
			nut = append(nut, assembly.Tube(b.WasherODMm/2, r, low-b.WasherThicknessMm, low))
			low -= b.WasherThicknessMm
		}
		nut = append(nut, assembly.Hexagon(b.NutAcrossFlatsMm, low-b.NutHeightMm, low))
	}
	return out, nut
}

// cupShare is how wide a cup is as a part of its bearing, which no job gives:
// 0.78 and 0.81 for 30210 and 30208 of ISO 355, as remembered. Common practice,
// no source.
const cupShare = 0.8

// bearing stands where the joint's plan has its rings' backs: a cup and a cone
// of their own widths, the rollers with the cone.
func (m *Machine) bearing(j *plan.JointPlan, in *parts.Joint) {
	b, p := in.Bearing, j.Bearing
	pose, ok := m.axisOf(j)
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
	cupLow, cupHigh := back(p.CupBackMm, p.LargeEndDir, cupShare*b.Width.Mm)
	coneLow, coneHigh := back(p.LargeEndMm, -p.LargeEndDir, cone)
	for _, ring := range []struct {
		kind  kind
		id    string
		in    plan.JointEnd
		solid *assembly.Solid
	}{
		{aCup, j.Name + " cup", j.B, assembly.Of(assembly.Tube(outer, middle+gap, cupLow, cupHigh))},
		{aCone, j.Name + " cone", j.A, assembly.Of(
			assembly.Tube(middle-gap, inner, coneLow, coneHigh),
			assembly.Tube(middle+gap, middle-gap, max(cupLow, coneLow), min(cupHigh, coneHigh)),
		)},
	} {
		m.add(assembly.Body{ID: ring.id, Solid: ring.solid, Pose: pose, DensityKgM3: steelKgM3}, role{kind: ring.kind, joint: j.Name})
		m.allow(ring.id, instance(ring.in).id(), fitMm)
	}
}

func groupNamed(r *part.Model, name string) *part.Group {
	return seq.At(r.Groups, func(g *part.Group) bool { return g.Group.Name == name })
}

func (m *Machine) allow(a, b string, upToMm float64) {
	may := assembly.Allowed{A: a, B: b, UpToMm: upToMm}
	m.loose = append(m.loose, may)
	m.looseOf[a] = append(m.looseOf[a], may)
	m.looseOf[b] = append(m.looseOf[b], may)
}

// allowed is what some bodies may lie in.
func (m *Machine) allowed(bodies []assembly.Body) (out []assembly.Allowed) {
	for i := range bodies {
		out = append(out, m.looseOf[bodies[i].ID]...)
	}
	return out
}
