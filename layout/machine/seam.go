package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// Seams finds where straight fillets lie, joint by joint as they come to be made.
type Seams struct{ m *Machine }

// NewSeams are those of a job.
func NewSeams(job *parts.Job, models []*part.Model) Seams { return Seams{bare(job, models, nil)} }

// A seam is looked at every seamEveryMm along it, levelMm beside the plane on which its
// parts touch, and where that has a rounded edge roundedMm deep; what runs for less than
// cornerLeastMm is the end of another.
const (
	seamEveryMm   = 0.25
	levelMm       = 0.25
	roundedMm     = 12.0
	cornerLeastMm = 3.0
)

// faces are the sides of a part in its front view.
var faces = []string{"left", "right", "bottom", "top", "front", "back"}

// Corners are the stretches along which the last of some joints, a straight weld with a
// place, has its parts in a corner where a fillet of a leg of legMm lies, on all that its
// first part touches of what is welded by then, of sheet that stands on its edge also round its
// ends; and the sides of that part that stand flush with an edge, where there is none.
func (s Seams) Corners(joints []*plan.JointPlan, legMm float64, ends bool) (corners []plan.Corner, flush []string) {
	m, j := s.m, joints[len(joints)-1]
	m.joints, m.Problems = joints, nil
	m.place()
	c := cornered{m: m, ends: ends, out: beadShare * legMm, mm: map[plan.Corner]float64{}, flush: map[[2]string]float64{}}
	a, still := instance(j.A), instance(j.B)
	pose, ok := m.poses[a.id()]
	if !ok {
		return nil, nil
	}
	c.a, m.Of[a.id()] = assembly.Body{ID: a.id(), Solid: m.solid(a.Part), Pose: pose}, a
	near := c.a.Box()
	with := []Instance{a} // what hangs together with it already has no corner with it to weld
	for k := 0; k < len(with); k++ {
		for _, o := range joints[:len(joints)-1] {
			p, q := instance(o.A), instance(o.B)
			if q == with[k] {
				p, q = q, p
			}
			if p == with[k] {
				with = seq.Add(with, q)
			}
		}
	}
	there := map[Instance]bool{a: true}
	for _, o := range joints {
		for _, end := range []plan.JointEnd{o.B, o.A} {
			i := Instance{end.Part, end.Copy}
			pose, ok := m.poses[i.id()]
			if !ok || o.Weld == nil && o != j || there[i] || i != still && slices.Contains(with, i) {
				continue
			}
			there[i] = true
			other := assembly.Body{ID: i.id(), Solid: m.solid(i.Part), Pose: pose}
			if m.Of[i.id()] = i; other.Box().Meets(near, roundedMm+c.out) {
				c.others = append(c.others, other)
			}
		}
	}
	for _, face := range faces {
		c.onFace(face)
	}
	return c.found()
}

// swingEveryMm is how far apart the surface of what turns is looked at, corners and rims besides.
const swingEveryMm = 50.0

// SwingMm is what parts turn across, as some joints weld them together, about the axis of one of them.
func (s Seams) SwingMm(joints []*plan.JointPlan, about Instance, with []Instance) (mm float64) {
	m := s.m
	m.joints, m.Problems = joints, nil
	m.place()
	axis := m.poses[about.id()].Inverse()
	for _, i := range with {
		if pose, ok := m.poses[i.id()]; ok {
			mm = max(mm, 2*m.solid(i.Part).ReachMm(axis.Of(pose), swingEveryMm))
		}
	}
	return mm
}

// boreEveryMm is the step in which a round is measured where it leaves a bore.
const boreEveryMm = 0.25

// BoreMm is how wide the last of some joints has its round, in the bore of boreMm of a plate, stand out of the
// front and the back of that plate, so that a fillet has its corner there; 0 where it ends level or below.
func (s Seams) BoreMm(joints []*plan.JointPlan, plate, round Instance, boreMm float64) (mm map[string]float64) {
	m := s.m
	m.joints, m.Problems = joints, nil
	m.place()
	pose, ok := m.poses[plate.id()]
	at, in := m.poses[round.id()]
	if !ok || !in {
		return nil
	}
	mm = map[string]float64{}
	box, way, stands := m.solid(plate.Part).Box(), at.Inverse().Of(pose), m.solid(round.Part)
	for face, z := range map[string]float64{"front": box.High.Z + levelMm, "back": box.Low.Z - levelMm} {
		for r := boreMm/2 - 1; stands.Dist(way.Apply(assembly.Vec{X: r, Z: z})) <= 0; r += boreEveryMm {
			mm[face] = 2 * r
		}
	}
	return mm
}

// PastMm is how far the first part of a joint with a place reaches past the left, right,
// bottom and top edges of the face that it lies on, as one looks at that face.
func (s Seams) PastMm(in *parts.Joint) [4]float64 {
	first, second := in.Ends()
	a, b := Instance{first.Part, first.Copy}, Instance{second.Part, second.Copy}
	rel, _, _ := s.m.placed(in.Place, a, b)
	boxB := s.m.solid(b.Part).Box()
	inFace := faceFrame(in.Place.On, boxB).Inverse()
	p, q := s.m.solid(a.Part).Box().Moved(inFace.Of(rel)), boxB.Moved(inFace)
	return [4]float64{q.Low.X - p.Low.X, p.High.X - q.High.X, q.Low.Y - p.Low.Y, p.High.Y - q.High.Y}
}

// cornered collects the corners between a part and what it stands on.
type cornered struct {
	m      *Machine
	a      assembly.Body
	others []assembly.Body
	ends   bool     // sheet on its edge is looked at round its ends too, but for those of a notch
	lies   []string // its faces that touch
	out    float64  // of the corner to the middle of a fillet's legs
	face   string   // that is looked at
	order  []plan.Corner
	mm     map[plan.Corner]float64
	flush  map[[2]string]float64 // by face and side: positive where there is no corner
}

// onFace looks along the edges of a face of the part, and of what touches it there.
func (c *cornered) onFace(face string) {
	c.face = face
	plane := c.a.Pose.Of(faceFrame(face, c.a.Solid.Box()))
	inPlane := plane.Inverse()
	var touched []*assembly.Body
	for i := range c.others {
		box := c.others[i].Box()
		over, own := box.Moved(inPlane), c.a.Box().Moved(inPlane)
		own.Low.Z, own.High.Z = over.Low.Z, over.High.Z // what stands beside the face touches none of it
		if box.Meets(c.a.Box(), levelMm) && own.Meets(over, -surfaceMm) && over.High.Z >= levelMm && over.Low.Z <= roundedMm {
			touched = append(touched, &c.others[i])
		}
	}
	if len(touched) == 0 {
		return
	}
	c.edges(&c.a, touched, plane, -levelMm)
	for _, b := range touched {
		c.edges(b, []*assembly.Body{&c.a}, plane, levelMm)
	}
}

// edges walks round a body, cut level beside the plane on which it touches others, and adds
// the stretches along which one of them goes on while the body ends.
func (c *cornered) edges(of *assembly.Body, on []*assembly.Body, plane assembly.Pose, level float64) {
	own := plane.Of(assembly.Move(assembly.Vec{Z: level}))
	onEdge := !c.ends && sheet(c.m.model(c.m.Of[of.ID].Part).Part) && math.Abs(of.Pose.Z.Dot(plane.Z)) < 0.5
	inPlane := plane.Inverse()
	within := on[0].Box().Moved(inPlane)
	for _, b := range on[1:] {
		within = within.Join(b.Box().Moved(inPlane))
	}
	within.Low.Z, within.High.Z = level, level
	for _, loop := range of.Section(own, pictureMm) {
		way := math.Copysign(1, doubleArea(loop))
		for i, p := range loop {
			q := loop[(i+1)%len(loop)]
			dx, dy := q.X-p.X, q.Y-p.Y
			long := math.Hypot(dx, dy)
			n := math.Ceil(long / seamEveryMm)
			for k := 0.5; k < n; k++ {
				at := assembly.Vec{X: p.X + dx*k/n, Y: p.Y + dy*k/n, Z: level}
				if !within.Meets(assembly.Box{Low: at, High: at}, 2*levelMm) {
					continue
				}
				away := assembly.Vec{X: way * dy / long, Y: -way * dx / long}
				side := sideOf(of, plane.Turn(away))
				if onEdge && side != "front" && side != "back" {
					continue
				}
				if hollow := of.Dist(plane.Apply(at.Add(away.Times(levelMm)))) < 0; !hollow {
					c.look(stretch{of, on, plane, at, away, side, long / n})
				}
			}
		}
	}
}

// doubleArea is twice the area in a loop, negative of one that runs clockwise.
func doubleArea(loop []assembly.Pt) (sum float64) {
	for i, p := range loop {
		q := loop[(i+1)%len(loop)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return sum
}

// stretch is a piece of an edge of a body that touches others in a plane: its middle and
// the way out of the body there, both in the plane, on a side of the body.
type stretch struct {
	of       *assembly.Body
	on       []*assembly.Body
	plane    assembly.Pose
	at, away assembly.Vec
	side     string
	longMm   float64
}

// look adds a stretch to the corners, or to the flush sides of the part.
func (c *cornered) look(s stretch) {
	of, on, side, long := s.of, s.on, s.side, s.longMm
	place := func(out, deep float64) assembly.Vec {
		p := s.at.Add(s.away.Times(out))
		p.Z = math.Copysign(deep, -s.at.Z*deep)
		return s.plane.Apply(p)
	}
	under, beyond, above := place(-levelMm, levelMm), place(c.out, levelMm), place(c.out, -c.out)
	holds := func(p assembly.Vec) func(b *assembly.Body) bool {
		return func(b *assembly.Body) bool { return b.Dist(p) <= 0 }
	}
	if !slices.ContainsFunc(on, holds(under)) {
		if of == &c.a && slices.ContainsFunc(on, holds(place(-levelMm, roundedMm))) {
			c.flush[[2]string{c.face, side}] += long // over a rounded edge
		}
		return // it does not touch here
	}
	if of == &c.a {
		c.lies = seq.Add(c.lies, c.face)
	}
	for i := range c.others {
		if c.others[i].Dist(above) < 0 {
			return // something fills the corner
		}
	}
	for _, b := range on {
		if b.Dist(beyond) < 0 {
			if of == &c.a {
				c.flush[[2]string{c.face, side}] -= 2 * long
			}
			key := plan.Corner{Side: side, Of: c.m.title(of.ID), Along: c.m.title(b.ID)}
			if _, seen := c.mm[key]; !seen {
				c.order = append(c.order, key)
			}
			c.mm[key] += long
			return
		}
	}
	if of == &c.a {
		c.flush[[2]string{c.face, side}] += long
	}
}

// sideOf is the side of a body that looks most in a direction.
func sideOf(b *assembly.Body, way assembly.Vec) string {
	best, side := 0.0, ""
	for _, s := range []struct {
		name string
		way  assembly.Vec
	}{{"front", b.Pose.Z}, {"top", b.Pose.Y}, {"right", b.Pose.X}} {
		name, d := s.name, s.way.Dot(way)
		if d < 0 {
			name, d = map[string]string{"front": "back", "top": "bottom", "right": "left"}[name], -d
		}
		if d > best+1e-9 {
			best, side = d, name
		}
	}
	return side
}

// found are the corners that are long enough, and the sides without any.
func (c *cornered) found() (corners []plan.Corner, flush []string) {
	for _, key := range c.order {
		notch := c.ends && key.Of == c.m.title(c.a.ID) && slices.Contains(c.lies, key.Side) && sheet(c.m.model(c.m.Of[c.a.ID].Part).Part)
		if mm := c.mm[key]; mm >= cornerLeastMm && !notch {
			key.LengthMm = words.Round(words.Round(mm, 1), 0) // what looking by steps leaves decides no half
			corners = append(corners, key)
		}
	}
	for _, side := range faces {
		for _, face := range faces {
			if c.flush[[2]string{face, side}] >= cornerLeastMm {
				flush = seq.Add(flush, side)
			}
		}
	}
	return corners, flush
}
