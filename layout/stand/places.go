package stand

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// ApartMm is how far apart along x assemblies stand that have no place to one another; parts are
// at most 10 m long.
const ApartMm = 50_000

// Tied tells whether joints that are worked out place two bodies to one another.
func (m *Stand) Tied(a, b *assembly.Body) bool { return StandsIn(a) == StandsIn(b) }

// StandsIn is the place among the assemblies of the one that a body stands in: 0 is the machine's.
func StandsIn(b *assembly.Body) int { return standsIn(b.Pose) }

func standsIn(at assembly.Pose) int { return int(math.Round(at.At.X / ApartMm)) }

// stacked are the meets of the parts between those of a joint that share no axis.
func (m *Stand) stacked(j *plan.JointPlan) (out []assembly.Meet) {
	for n, s := range j.Stack {
		at := onAxis(&plan.Placed{FrontMm: s.FrontMm, TurnDeg: s.TurnDeg}).Shifted(assembly.Vec{X: s.XMm, Y: s.YMm})
		out = append(out, assembly.Meet{ID: j.Name, A: j.A.Instance().ID(), B: m.Joint(j.Name).Bolt.Stack[n].Instance().ID(), OnA: at, OnB: assembly.Still})
	}
	return out
}

// Studs are the meets of the made studs of a joint, one in each hole of part A: so much of each
// beyond the face of A that meets.
func (m *Stand) Studs(j *plan.JointPlan) (out []assembly.Meet) {
	in := m.Joint(j.Name)
	if in.Stud() == "" {
		return nil
	}
	r, stud, way, turned := m.Model(j.A.Part), m.Model(in.Stud()), 1.0, true // from A to B
	g, meet := r.GroupNamed(j.A.Feature), m.Job.MeetingOf(in).First
	if meet == parts.Back {
		way, turned = -1, false
	}
	depth, _, _ := r.PlaneOf(g, meet)
	z := -depth - way*j.Bolt.StudTipMm
	if j.Bolt.StudBack {
		z, turned = z+way*stud.LengthMm(), !turned
	}
	first := m.Job.StudsBefore(in)
	for n, q := range g.SeenFront(g.Points[:max(0, min(len(g.Points), stud.Part.Quantity-first))]) {
		if off := j.Bolt.OffMm; len(off) > 0 {
			q = q.Plus(off[n])
		}
		at := assembly.Move(assembly.Vec{X: q.XMm, Y: q.YMm, Z: z})
		if turned {
			at = at.Of(assembly.Rotate(assembly.AxisY, 180))
		}
		id := parts.Instance{Part: in.Stud(), Copy: first + n + 1}.ID()
		out = append(out, assembly.Meet{ID: j.Name, A: j.A.Instance().ID(), B: id, OnA: at, OnB: assembly.Still})
	}
	return out
}

// Two joints of the same parts say the same place within agreeMm, and the same directions within agreeTurn
// radians: bolts have their play. Common practice, no source.
const agreeMm, agreeTurn = 0.5, 0.01

// distinct leaves out meets that say again what an earlier one says; what differs stays, to be found.
func distinct(meets []assembly.Meet) []assembly.Meet {
	seen := map[[2]string][]assembly.Pose{}
	return seq.Keep(meets, func(t assembly.Meet) bool {
		if len(t.Free) > 0 {
			return true
		}
		key, rel := [2]string{t.A, t.B}, t.OnA.Of(t.OnB.Inverse())
		again := slices.ContainsFunc(seen[key], func(p assembly.Pose) bool {
			return p.At.Sub(rel.At).Len() < agreeMm && p.X.Sub(rel.X).Len() < agreeTurn && p.Z.Sub(rel.Z).Len() < agreeTurn
		})
		seen[key] = append(seen[key], rel)
		return !again
	})
}

// MeetOf is the meet of a joint whose parts share no axis; false where nothing says where one stands on the other.
func (m *Stand) MeetOf(j *plan.JointPlan) (assembly.Meet, bool) {
	a, b := j.A.Instance(), j.B.Instance()
	meet := assembly.Meet{ID: j.Name, A: b.ID(), B: a.ID(), OnB: assembly.Still}
	if s := j.Beside; s != nil {
		pose := onAxis(&plan.Placed{FrontMm: s.FrontMm, TurnDeg: s.TurnDeg, OtherWay: s.OtherWay})
		ra, rb := m.Model(a.Part), m.Model(b.Part)
		with := solid.Wall(ra, ra.GroupNamed(j.A.Feature)).Inverse()
		meet.OnA = solid.Wall(rb, rb.GroupNamed(j.B.Feature)).Of(pose.Shifted(assembly.Vec{X: s.XMm, Y: s.YMm})).Of(with)
		return meet, true
	}
	if in := m.Joint(j.Name); in.Place != nil {
		rel, free, normal := m.Placed(in.Place, a, b)
		// The freedoms lie in the face.
		meet.OnA = assembly.Frame(rel.At, normal, rel.Y)
		meet.OnB = rel.Inverse().Of(meet.OnA)
		meet.Free = free
		return meet, true
	}
	var ok bool
	if meet.OnA, ok = m.branch(a, b); ok {
		return meet, true
	}
	if meet.OnA, ok = m.corner(a, b, j.A.Feature, j.B.Feature); ok {
		return meet, true
	}
	meet.OnA, ok = m.coped(a, b)
	return meet, ok
}

// branch is the pose of a tube with a saddle on its main.
func (m *Stand) branch(a, b parts.Instance) (assembly.Pose, bool) {
	tube, main, e := m.Model(a.Part), m.Model(b.Part), m.Saddle(a, b)
	if e == nil {
		return assembly.Pose{}, false
	}
	reach, _, _ := tube.ReachMm(e.Face)
	crossing, out, lean := BranchAxis(e, main.LengthMm())
	z, at := out, crossing.Add(out.Times(reach))
	if e.Face == parts.Front {
		z, at = out.Reversed(), crossing.Add(out.Times(reach-tube.LengthMm()))
	}
	return assembly.Frame(at, z, lean).Of(assembly.Rotate(assembly.AxisZ, e.Clock.Deg)), true
}

// Saddle is the end of a tube a that sits in a place of its main b, nil if there is none.
func (m *Stand) Saddle(a, b parts.Instance) *parts.TubeEnd {
	tube := m.Model(a.Part)
	return seq.At(tube.Part.Ends, func(e *parts.TubeEnd) bool {
		_, _, ok := tube.ReachMm(e.Face)
		return ok && e.Place != nil && e.Onto.Part == b.Part
	})
}

// BranchAxis is where the axis of a branch with a place passes that of its main, in
// the frame of a main of lengthMm, whose front lies at z = 0 and looks to +z; the way
// out along it; and which way along the main it leans.
func BranchAxis(e *parts.TubeEnd, lengthMm float64) (from, along, lean assembly.Vec) {
	out := assembly.ClockWay(e.Place.Clock.Deg)
	lean = parts.At(e.Place.Leans, assembly.AxisZ, assembly.AxisZ.Reversed())
	side := out.Cross(lean)
	from = assembly.Vec{Z: -e.Place.AxialMm(lengthMm)}.Add(side.Times(-e.Offset.Mm))
	return from, assembly.Rotate(side, 90-e.Angle.Deg).Turn(out), lean
}

// Placed is the pose of part a in part b's frame as a place says, what of it is
// left open, and the direction out of the face.
func (m *Stand) Placed(p *parts.Place, a, b parts.Instance) (rel assembly.Pose, free []assembly.Freedom, normal assembly.Vec) {
	boxB := m.solid(b.Part).Box()
	on := solid.FaceFrame(p.On, boxB)
	out, at, foot := m.standsWith(a, p.With)
	// The first part's face looks into the second's; which way its TOP, or of
	// an edge its front, points is Looks.
	pointer := assembly.AxisY
	if p.Edge() {
		pointer = assembly.AxisZ
	}
	ways := map[string]assembly.Vec{"up": on.Y, "down": on.Y.Reversed(), "right": on.X, "left": on.X.Reversed()}
	looks, said := ways[p.Looks]
	if !said {
		looks = on.Y
		free = append(free, assembly.TurnZ)
	}
	target := assembly.Frame(assembly.Vec{}, on.Z.Reversed(), looks)
	own := assembly.Frame(assembly.Vec{}, out, pointer)
	rel = target.Of(own.Inverse())
	// The extents of both on the face.
	inFace := on.Inverse()
	ea, eb := foot.Moved(inFace.Of(rel).Of(at)), boxB.Moved(inFace)
	x, openX := along(p.FromLeft, p.FromRight, [2]float64{ea.Low.X, ea.High.X}, [2]float64{eb.Low.X, eb.High.X})
	y, openY := along(p.FromBottom, p.FromTop, [2]float64{ea.Low.Y, ea.High.Y}, [2]float64{eb.Low.Y, eb.High.Y})
	origin := inFace.Apply(assembly.Vec{})
	if p.At != nil {
		own := inFace.Apply(rel.At)
		x, openX = p.At.X.Mm+origin.X-own.X, false
		y, openY = p.At.Y.Mm+origin.Y-own.Y, false
	}
	if openX {
		free = append(free, assembly.SlideX)
	}
	if openY {
		free = append(free, assembly.SlideY)
	}
	shift := assembly.Vec{X: x, Y: y, Z: p.Gap.Mm - ea.Low.Z}
	rel.At = rel.At.Add(on.Turn(shift))
	return rel, free, on.Z
}

// standsWith is a face of a part that lies on another: the way out of it, in the part's frame, and a box in a frame
// of its own. Of a bar's mitred end it is the cut, of another face the whole part.
func (m *Stand) standsWith(i parts.Instance, face string) (out assembly.Vec, at assembly.Pose, box assembly.Box) {
	if m.Mitred(i, face) {
		cut, size, _ := m.CutOf(i, face)
		return cut.Z, cut, assembly.Box{High: size}
	}
	return solid.OutOf(face), assembly.Still, m.solid(i.Part).Box()
}

// along is the shift that puts what reaches from low to high of the first part at a
// distance from one of the two edges of the other's face; open where neither is said: middle on middle.
func along(fromLow, fromHigh parts.Length, part, face [2]float64) (shift float64, open bool) {
	switch {
	case fromLow.Set():
		return face[0] + fromLow.Mm - part[0], false
	case fromHigh.Set():
		return face[1] - fromHigh.Mm - part[1], false
	}
	return (face[0]+face[1])/2 - (part[0]+part[1])/2, true
}
