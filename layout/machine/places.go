package machine

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// onAxis is a part's pose in the frame of its assembly: depth grows from the
// front, clock angles clockwise; a part the other way round counts both
// backwards.
func onAxis(p *plan.Placed) assembly.Pose {
	pose := assembly.Move(assembly.Vec{Z: -p.FrontMm}).Of(assembly.Rotate(assembly.AxisZ, -p.TurnDeg))
	if p.OtherWay {
		pose = pose.Of(assembly.Rotate(assembly.AxisY, 180))
	}
	return pose
}

// place finds where every instance stands: those on an axis from the joints'
// plans, the others from the places of their joints and the saddles of tubes.
func (m *Machine) place() {
	var meets []assembly.Meet
	var ids []string
	size := map[string]int{} // of the assembly that starts with an instance
	for _, r := range m.models {
		for n := range r.Part.Quantity {
			ids = append(ids, Instance{r.Part.Name.Value, n + 1}.id())
		}
	}
	for _, j := range m.joints {
		if len(j.Placed) == 0 {
			if meet, ok := m.stands(j); ok {
				meets = append(meets, meet)
			}
			continue
		}
		first := &j.Placed[0]
		root := Instance{first.Part, first.Copy}.id()
		size[root] = max(size[root], len(j.Placed))
		for k := range j.Placed[1:] {
			p := &j.Placed[k+1]
			meets = append(meets, assembly.Meet{
				ID: j.Name, A: root, B: Instance{p.Part, p.Copy}.id(), OnA: onAxis(first).Inverse().Of(onAxis(p)), OnB: assembly.Still,
			})
		}
	}
	for _, j := range m.joints {
		meets = append(meets, m.studs(j)...)
	}
	meets = append(meets, m.lies()...)
	m.poses = map[string]assembly.Pose{}
	meets = distinct(meets)
	tied := map[string]bool{}
	for _, t := range meets {
		tied[t.A], tied[t.B] = true, true
	}
	var all []map[string]assembly.Pose
	for root := m.root(ids, tied, size); root != ""; root = m.root(ids, tied, size) {
		solved := assembly.Solve(root, meets)
		all = append(all, solved.At)
		maps.Copy(m.poses, solved.At)
		m.undetermined(solved)
	}
	if len(all) > 1 { // what no joint ties together stands well apart, the heaviest first
		kg := func(at map[string]assembly.Pose) float64 { return m.weighs(ids, at) }
		slices.SortStableFunc(all, func(a, b map[string]assembly.Pose) int { return cmp.Compare(kg(b), kg(a)) })
	}
	for n, at := range all {
		for id, pose := range at {
			m.poses[id] = assembly.Move(assembly.Vec{X: apartMm * float64(n)}).Of(pose)
		}
	}
}

// weighs is the mass in kg of those of some instances that are placed, as far as it is known.
func (m *Machine) weighs(ids []string, at map[string]assembly.Pose) float64 {
	return seq.Sum(ids, func(id string) float64 {
		name, _, _ := strings.Cut(id, "#")
		if _, in := at[id]; !in {
			return 0
		}
		return m.model(name).Out.MassKg
	})
}

// apartMm is between assemblies that have no place to one another; parts are
// at most 10 m long.
const apartMm = 50_000

// Tied tells whether joints that are worked out place two bodies to one another.
func (m *Machine) Tied(a, b *assembly.Body) bool {
	return standsIn(a) == standsIn(b)
}

// standsIn is the place among the assemblies of the one that a body stands in: 0 is the machine's.
func standsIn(b *assembly.Body) int { return int(math.Round(b.Pose.At.X / apartMm)) }

// root is the first part of the largest assembly that is not placed yet.
func (m *Machine) root(ids []string, tied map[string]bool, size map[string]int) string {
	best, most := "", -1
	for _, id := range ids {
		_, done := m.poses[id]
		if !done && tied[id] && size[id] > most {
			best, most = id, size[id]
		}
	}
	return best
}

// studs are the meets of the made studs of a joint, one in each hole of part A: so much of each
// beyond the face of A that meets.
func (m *Machine) studs(j *plan.JointPlan) (out []assembly.Meet) {
	in := m.joint(j.Name)
	if in.Stud() == "" {
		return nil
	}
	r, stud, way := m.model(j.A.Part), m.model(in.Stud()), 1.0 // from A to B
	g, meet := groupNamed(r, j.A.Feature), m.meetingFace(j, in)
	if meet == parts.Back {
		way = -1
	}
	depth, _, _ := r.PlaneOf(g, meet)
	z, turned := -depth-way*j.Bolt.StudTipMm, way > 0
	if j.Bolt.StudBack {
		z, turned = z+way*stud.LengthMm(), !turned
	}
	for n, q := range seenFront(g, g.Points[:min(len(g.Points), stud.Part.Quantity)]) {
		at := assembly.Move(assembly.Vec{X: q.XMm, Y: q.YMm, Z: z})
		if turned {
			at = at.Of(assembly.Rotate(assembly.AxisY, 180))
		}
		id := Instance{in.Stud(), n + 1}.id()
		out = append(out, assembly.Meet{ID: j.Name, A: instance(j.A).id(), B: id, OnA: at, OnB: assembly.Still})
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

// stands is the meet of a joint whose parts share no axis.
func (m *Machine) stands(j *plan.JointPlan) (assembly.Meet, bool) {
	a, b := instance(j.A), instance(j.B)
	meet := assembly.Meet{ID: j.Name, A: b.id(), B: a.id(), OnB: assembly.Still}
	if s := j.Beside; s != nil {
		pose := onAxis(&plan.Placed{FrontMm: s.FrontMm, TurnDeg: s.TurnDeg, OtherWay: s.OtherWay})
		ra, rb := m.model(a.Part), m.model(b.Part)
		with := wall(ra, groupNamed(ra, j.A.Feature)).Inverse()
		meet.OnA = wall(rb, groupNamed(rb, j.B.Feature)).Of(pose.Shifted(assembly.Vec{X: s.XMm, Y: s.YMm})).Of(with)
		return meet, true
	}
	if in := m.joint(j.Name); in.Place != nil {
		rel, free, normal := m.placed(in.Place, a, b)
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
func (m *Machine) branch(a, b Instance) (assembly.Pose, bool) {
	tube, main, e := m.model(a.Part), m.model(b.Part), m.saddle(a, b)
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

// saddle is the end of a tube that sits in a place of its main, nil if there is none.
func (m *Machine) saddle(a, b Instance) *parts.TubeEnd {
	tube := m.model(a.Part)
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
	lean = assembly.AxisZ
	if e.Place.Leans == parts.Back {
		lean = lean.Reversed()
	}
	side := out.Cross(lean)
	from = assembly.Vec{Z: -e.Place.AxialMm(lengthMm)}.Add(side.Times(-e.Offset.Mm))
	return from, assembly.Rotate(side, 90-e.Angle.Deg).Turn(out), lean
}

// faceFrame is a face of a part as seen by who looks at it: x right, y up, z
// towards them; left and right, top and bottom are the edges of the front view.
func faceFrame(face string, box assembly.Box) assembly.Pose {
	c := box.Centre()
	switch face {
	case "front":
		return assembly.Frame(assembly.Vec{Z: box.High.Z}, assembly.AxisZ, assembly.AxisY)
	case "back":
		return assembly.Frame(assembly.Vec{Z: box.Low.Z}, assembly.AxisZ.Reversed(), assembly.AxisY)
	case "left":
		return assembly.Frame(assembly.Vec{X: box.Low.X, Z: c.Z}, assembly.AxisX.Reversed(), assembly.AxisY)
	case "right":
		return assembly.Frame(assembly.Vec{X: box.High.X, Z: c.Z}, assembly.AxisX, assembly.AxisY)
	case "top":
		return assembly.Frame(assembly.Vec{Y: box.High.Y, Z: c.Z}, assembly.AxisY, assembly.AxisZ.Reversed())
	}
	return assembly.Frame(assembly.Vec{Y: box.Low.Y, Z: c.Z}, assembly.AxisY.Reversed(), assembly.AxisZ)
}

// outOf is the direction out of a face of a part.
func outOf(face string) assembly.Vec { return faceFrame(face, assembly.Box{}).Z }

// placed is the pose of part a in part b's frame as a place says, what of it is
// left open, and the direction out of the face.
func (m *Machine) placed(p *parts.Place, a, b Instance) (rel assembly.Pose, free []assembly.Freedom, normal assembly.Vec) {
	boxB := m.solid(b.Part).Box()
	on := faceFrame(p.On, boxB)
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
func (m *Machine) standsWith(i Instance, face string) (out assembly.Vec, at assembly.Pose, box assembly.Box) {
	if m.mitred(i, face) {
		cut, size, _ := m.cutOf(i, face)
		return cut.Z, cut, assembly.Box{High: size}
	}
	return outOf(face), assembly.Still, m.solid(i.Part).Box()
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
