package stand

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// BeadShare is how far out of the corner that it fills a bead is looked for, of its leg. Common practice, no source.
const BeadShare = 0.45

// SurfaceMm forgives what lies on a surface, not in it.
const SurfaceMm = 0.01

// Seams finds where straight fillets lie, joint by joint as they come to be made.
type Seams struct {
	m    *Stand
	cuts map[cut][][]geom.Point // made once
}

// cut is a plane that cuts a solid: across a way out from the solid's origin, so far out.
type cut struct {
	of    *assembly.Solid
	way   assembly.Vec
	outMm float64
}

// NewSeams are those of a job.
func NewSeams(job *parts.Job, models []*part.Model) Seams {
	return Seams{bare(job, models, nil), map[cut][][]geom.Point{}}
}

// standing is the machine as some joints place its parts.
func (s Seams) standing(joints []*plan.JointPlan) *Stand {
	s.m.Joints, s.m.Problems = joints, nil
	s.m.place()
	return s.m
}

// section is where a plane cuts a body, to within flatMm, in the plane.
func (s Seams) section(b *assembly.Body, plane assembly.Pose) [][]geom.Point {
	plane = b.Pose.Inverse().Of(plane)
	way := assembly.Vec{X: geom.Clean(plane.Z.X), Y: geom.Clean(plane.Z.Y), Z: geom.Clean(plane.Z.Z)}
	key := cut{b.Solid, way, geom.Clean(plane.At.Dot(way))}
	own := assembly.Frame(way.Times(key.outMm), way, assembly.AxisX)
	loops, made := s.cuts[key]
	if !made {
		loops = (&assembly.Body{Solid: b.Solid, Pose: assembly.Still}).Section(own, flatMm)
		s.cuts[key] = loops
	}
	in := plane.Inverse().Of(own)
	return seq.Map(loops, func(loop []geom.Point) []geom.Point {
		return seq.Map(loop, func(p geom.Point) geom.Point {
			v := in.Apply(assembly.Vec{X: p.XMm, Y: p.YMm})
			return geom.Point{XMm: v.X, YMm: v.Y}
		})
	})
}

// A seam is looked at levelMm beside the plane on which its parts touch, and where that has a
// rounded edge roundedMm deep; its curves are flattened to flatMm, and what runs for less than cornerLeastMm is the
// end of another.
const (
	levelMm       = 0.25
	flatMm        = 0.02
	roundedMm     = 12.0
	cornerLeastMm = 3.0
)

// Corners are the stretches along which the last of some joints, a straight weld with a
// place, has its parts in a corner where a fillet of a leg of legMm lies, on all that its
// first part touches of what is welded by then, of sheet that stands on its edge also round its
// ends; and the sides of that part that stand flush with an edge, where there is none.
func (s Seams) Corners(joints []*plan.JointPlan, legMm float64, ends bool) (corners []plan.Corner, flush []string) {
	m, j := s.standing(joints), joints[len(joints)-1]
	c := cornered{Seams: s, ends: ends, out: BeadShare * legMm, mm: map[plan.Corner]float64{}, flush: map[[2]string]float64{}}
	a := j.A.Instance()
	pose, ok := m.Poses[a.ID()]
	if !ok {
		return nil, nil
	}
	c.a, m.Of[a.ID()] = assembly.Body{ID: a.ID(), Solid: m.solid(a.Part), Pose: pose}, a
	c.beside(m, joints)
	lying, foot := solid.Faces, j.A.Feature
	if p := s.m.Joint(j.Name).Place; p != nil {
		foot = p.With
	}
	if s.m.Mitred(a, foot) {
		lying = []string{foot} // beside it the sides of the bar lean over what it stands on
	}
	for _, face := range lying {
		c.onFace(face)
	}
	return c.found()
}

// beside takes the parts near the first of the last of some joints that such joints have set by then, but what hangs
// together with it already: that has no corner with it to weld, save the one that it is welded to now.
func (c *cornered) beside(m *Stand, joints []*plan.JointPlan) {
	j, near := joints[len(joints)-1], c.a.Box()
	a, still := j.A.Instance(), j.B.Instance()
	with, there := hanging(a, joints[:len(joints)-1]), map[parts.Instance]bool{a: true}
	for _, o := range joints {
		for _, end := range []plan.JointEnd{o.B, o.A} {
			i := end.Instance()
			pose, ok := m.Poses[i.ID()]
			if !ok || o.Kind != j.Kind || there[i] || i != still && (slices.Contains(with, i) || m.welds(a, i)) {
				continue
			}
			there[i] = true
			other := assembly.Body{ID: i.ID(), Solid: m.solid(i.Part), Pose: pose}
			if m.Of[i.ID()] = i; other.Box().Meets(near, roundedMm+c.out) {
				c.others = append(c.others, &other)
			}
		}
	}
}

// hanging is what hangs together with a part by some joints, that first.
func hanging(a parts.Instance, joints []*plan.JointPlan) []parts.Instance {
	with := []parts.Instance{a}
	for k := 0; k < len(with); k++ {
		for _, o := range joints {
			switch p, q := o.A.Instance(), o.B.Instance(); with[k] {
			case p:
				with = seq.Add(with, q)
			case q:
				with = seq.Add(with, p)
			}
		}
	}
	return with
}

// welds tells whether a weld of the job joins two parts.
func (m *Stand) welds(a, b parts.Instance) bool {
	return slices.ContainsFunc(m.Job.Of(parts.WeldKind), func(o *parts.Joint) bool {
		first, second := o.Ends()
		p, q := first.Instance(), second.Instance()
		return p == a && q == b || p == b && q == a
	})
}

// swingEveryMm is how far apart the surface of what turns is looked at, corners and rims besides.
const swingEveryMm = 50.0

// SwingMm is what parts turn across, as some joints weld them together, about the axis of one of them.
func (s Seams) SwingMm(joints []*plan.JointPlan, about plan.JointEnd, with []plan.JointEnd) (mm float64) {
	m := s.standing(joints)
	axis := m.Poses[about.Instance().ID()].Inverse()
	for _, i := range with {
		if pose, ok := m.Poses[i.Instance().ID()]; ok {
			mm = max(mm, 2*m.solid(i.Part).ReachMm(axis.Of(pose), swingEveryMm))
		}
	}
	return mm
}

// LongMm is how long some parts are together along the axis of one, as the joints leave them; 0 where it stands nowhere.
func (s Seams) LongMm(joints []*plan.JointPlan, about plan.JointEnd, with []plan.JointEnd) float64 {
	m := s.standing(joints)
	axis, lowMm, highMm := m.Poses[about.Instance().ID()].Inverse(), inf, -inf
	for _, i := range with {
		if pose, ok := m.Poses[i.Instance().ID()]; ok {
			box := m.solid(i.Part).Box().Moved(axis.Of(pose))
			lowMm, highMm = min(lowMm, box.Low.Z), max(highMm, box.High.Z)
		}
	}
	return max(0, highMm-lowMm)
}

// apartToMm is to how much it is said how far parts stand apart.
const apartToMm = 0.2

// GapMm is how far the two of the last joint stand apart, as the others have them; tied is false where those give the two
// no place to each other.
func (s Seams) GapMm(joints []*plan.JointPlan) (mm float64, tied bool) {
	m, last := s.standing(joints), joints[len(joints)-1]
	poseA, okA := m.Poses[last.A.Instance().ID()]
	poseB, okB := m.Poses[last.B.Instance().ID()]
	a, b := &assembly.Body{Solid: m.solid(last.A.Part), Pose: poseA}, &assembly.Body{Solid: m.solid(last.B.Part), Pose: poseB}
	if !okA || !okB || !a.Box().Meets(b.Box(), geom.LargestMm) { // they stand in the room by chance
		return 0, false
	}
	mm, _ = assembly.Clearance(a, b, geom.LargestMm, apartToMm)
	return mm, true
}

// underMm is how far within its bore a round has metal where it leaves it. Common practice, no source.
const underMm = 1.0

// BoreMm is how wide the last of some joints has its round, in the bore of boreMm of a plate, stand out of the
// front and the back of that plate, so that a fillet has its corner there; 0 where it ends level or below.
func (s Seams) BoreMm(joints []*plan.JointPlan, plate, round plan.JointEnd, boreMm float64) (mm map[string]float64) {
	m := s.standing(joints)
	pose, ok := m.Poses[plate.Instance().ID()]
	at, in := m.Poses[round.Instance().ID()]
	if !ok || !in {
		return nil
	}
	mm = map[string]float64{}
	box, way, stands := m.solid(plate.Part).Box(), at.Inverse().Of(pose), m.solid(round.Part)
	for face, z := range map[string]float64{"front": box.High.Z + levelMm, "back": box.Low.Z - levelMm} {
		for _, s := range stands.Spans(way.Apply(assembly.Vec{Z: z}), way.Turn(assembly.AxisX)) {
			if in := boreMm/2 - underMm; s.FromMm <= in && s.ToMm >= in {
				mm[face] = 2 * s.ToMm
			}
		}
	}
	return mm
}

// PastMm is how far the first part of a joint with a place reaches past the left, right,
// bottom and top edges of the face that it lies on, as one looks at that face.
func (s Seams) PastMm(in *parts.Joint) [4]float64 {
	first, second := in.Ends()
	a, b := first.Instance(), second.Instance()
	rel, _, _ := s.m.Placed(in.Place, a, b)
	boxB := s.m.solid(b.Part).Box()
	inFace := solid.FaceFrame(in.Place.On, boxB).Inverse()
	_, at, foot := s.m.standsWith(a, in.Place.With)
	p, q := foot.Moved(inFace.Of(rel).Of(at)), boxB.Moved(inFace)
	return [4]float64{q.Low.X - p.Low.X, p.High.X - q.High.X, q.Low.Y - p.Low.Y, p.High.Y - q.High.Y}
}

// Through is the hole of the second part of a joint with a place on whose axis the first lies, empty where that is none of one alone, and
// how far its end stands out past the far side.
func (s Seams) Through(in *parts.Joint) (hole string, outMm float64) {
	first, second := in.Ends()
	b := second.Instance()
	rel, _, _ := s.m.Placed(in.Place, first.Instance(), b)
	r, box := s.m.Model(b.Part), s.m.solid(b.Part).Box()
	for g := range seq.Refs(r.Groups) {
		if len(g.Points) == 1 && SameAxis(rel, solid.On(solid.Wall(r, g), g.SeenFront(g.OwnMm())[0])) {
			hole = g.Group.Name
		}
	}
	deep := box.Moved(solid.FaceFrame(in.Place.On, box).Inverse())
	return hole, geom.Clean(-in.Place.Gap.Mm - (deep.High.Z - deep.Low.Z))
}

// cornered collects the corners between a part and what it stands on.
type cornered struct {
	Seams
	a      assembly.Body
	others []*assembly.Body
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
	plane := c.a.Pose.Of(solid.FaceFrame(face, c.a.Solid.Box()))
	if a := c.m.Of[c.a.ID]; c.m.Mitred(a, face) {
		cut, _, _ := c.m.CutOf(a, face)
		plane = c.a.Pose.Of(cut)
	}
	inPlane := plane.Inverse()
	var touched []*assembly.Body
	for _, o := range c.others {
		box := o.Box()
		over, own := box.Moved(inPlane), c.a.Box().Moved(inPlane)
		own.Low.Z, own.High.Z = over.Low.Z, over.High.Z // what stands beside the face touches none of it
		if box.Meets(c.a.Box(), levelMm) && own.Meets(over, -SurfaceMm) && over.High.Z >= levelMm && over.Low.Z <= roundedMm {
			touched = append(touched, o)
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
	onEdge := !c.ends && c.m.PartOf(of.ID).Part.PlateLike() && math.Abs(of.Pose.Z.Dot(plane.Z)) < 0.5
	inPlane := plane.Inverse()
	within := on[0].Box().Moved(inPlane)
	for _, b := range on[1:] {
		within = within.Join(b.Box().Moved(inPlane))
	}
	within.Low.Z, within.High.Z = level, level
	for _, loop := range c.section(of, own) {
		area, _ := geom.PolygonLoop(loop...).Area()
		way := math.Copysign(1, area)
		for i, p := range loop {
			q := loop[(i+1)%len(loop)]
			long := math.Hypot(q.XMm-p.XMm, q.YMm-p.YMm)
			along := assembly.Vec{X: (q.XMm - p.XMm) / long, Y: (q.YMm - p.YMm) / long}
			st := stretch{of: of, on: on, plane: plane, at: assembly.Vec{X: p.XMm, Y: p.YMm, Z: level}, along: along, away: assembly.Vec{X: way * along.Y, Y: -way * along.X}, longMm: long}
			if !within.Meets(assembly.Box{Low: st.at, High: st.at}.With(st.at.Add(along.Times(long))), 2*levelMm) {
				continue
			}
			if st.side = sideOf(of, plane.Turn(st.away)); !onEdge || st.side == "front" || st.side == "back" {
				c.pieces(st)
			}
		}
	}
}

// pieces looks at a straight edge between the places where something begins or ends beside it.
func (c *cornered) pieces(s stretch) {
	ends := []float64{0, s.longMm}
	meet := func(out, deep float64, bodies ...*assembly.Body) {
		from, along := s.place(out, deep), s.plane.Turn(s.along)
		for _, b := range bodies {
			for _, span := range b.Spans(from, along) {
				ends = append(ends, span.FromMm, span.ToMm)
			}
		}
	}
	meet(-levelMm, levelMm, s.on...)
	meet(-levelMm, roundedMm, s.on...)
	meet(levelMm, -levelMm, s.of)
	meet(c.out, levelMm, s.on...)
	meet(c.out, -c.out, c.others...)
	ends = seq.Keep(ends, func(mm float64) bool { return mm >= 0 && mm <= s.longMm })
	slices.Sort(ends)
	for i, end := range ends[1:] {
		piece := s
		piece.longMm = end - ends[i]
		piece.at = s.at.Add(s.along.Times((ends[i] + end) / 2))
		if hollow := s.of.Dist(piece.place(levelMm, -levelMm)) < 0; !hollow && piece.longMm > geom.CloseMm {
			c.look(piece)
		}
	}
}

// stretch is a straight piece of an edge of a body that touches others in a plane: where it begins, its middle
// once it is looked at, the ways along it and out of the body there, all in the plane, on a side of the body.
type stretch struct {
	of              *assembly.Body
	on              []*assembly.Body
	plane           assembly.Pose
	at, along, away assembly.Vec
	side            string
	longMm          float64
}

// place is a point so far out of the body and so deep in what it touches, beside the stretch.
func (s stretch) place(out, deep float64) assembly.Vec {
	p := s.at.Add(s.away.Times(out))
	p.Z = math.Copysign(deep, -s.at.Z*deep)
	return s.plane.Apply(p)
}

// look adds a piece to the corners, or to the flush sides of the part.
func (c *cornered) look(s stretch) {
	of, side, long := s.of, s.side, s.longMm
	holds := func(p assembly.Vec) func(b *assembly.Body) bool {
		return func(b *assembly.Body) bool { return b.Dist(p) <= 0 }
	}
	inside := func(p assembly.Vec) func(b *assembly.Body) bool {
		return func(b *assembly.Body) bool { return b.Dist(p) < 0 }
	}
	if !slices.ContainsFunc(s.on, holds(s.place(-levelMm, levelMm))) {
		if of == &c.a && slices.ContainsFunc(s.on, holds(s.place(-levelMm, roundedMm))) {
			c.flush[[2]string{c.face, side}] += long // over a rounded edge
		}
		return // it does not touch here
	}
	if of == &c.a {
		c.lies = seq.Add(c.lies, c.face)
	}
	if slices.ContainsFunc(c.others, inside(s.place(c.out, -c.out))) || c.slot(s) {
		return // something fills the corner, or no torch gets there
	}
	b, corner := seq.Find(s.on, inside(s.place(c.out, levelMm)))
	if of == &c.a {
		c.flush[[2]string{c.face, side}] += map[bool]float64{false: long, true: -2 * long}[corner]
	}
	if corner {
		key := plan.Corner{Side: side, Of: c.m.Title(of.ID), Along: c.m.Title(b.ID)}
		if _, seen := c.mm[key]; !seen {
			c.order = append(c.order, key)
		}
		c.mm[key] += long
	}
}

// A wall beside a seam, no further off than slotMm, shuts a torch out that is to come down torchMm and more between it and
// the part: the nozzle is wider, and its wire stands out no further. Common practice, no source.
const slotMm, torchMm = 12.0, 25.0

// slot tells whether a piece lies at the bottom of a slot, between one of its two sides and a wall beside that, from a
// third of the height of a torch up; a side that leans over is no such side.
func (c *cornered) slot(s stretch) bool {
	all, up := append([]*assembly.Body{&c.a}, c.others...), s.plane.Z.Times(math.Copysign(1, s.at.Z))
	shut := func(sides []*assembly.Body, side func(off, high float64) assembly.Vec, way assembly.Vec) bool {
		near := func(high float64) bool {
			from, within := side(levelMm, high), side(-levelMm, high)
			return slices.ContainsFunc(sides, func(b *assembly.Body) bool { return b.Dist(within) <= 0 && b.Dist(from) > 0 }) && slices.ContainsFunc(all, func(b *assembly.Body) bool {
				return slices.ContainsFunc(b.Spans(from, way), func(span assembly.Span) bool { return span.ToMm > 0 && span.FromMm < slotMm })
			})
		}
		return near(torchMm/3) && near(torchMm)
	}
	return shut([]*assembly.Body{s.of}, func(off, high float64) assembly.Vec { return s.place(off, -high) }, s.plane.Turn(s.away)) ||
		shut(s.on, func(off, high float64) assembly.Vec { return s.place(high, -off) }, up)
}

// sideOf is the side of a body that looks most in a direction.
func sideOf(b *assembly.Body, way assembly.Vec) string {
	best, side := 0.0, ""
	for _, face := range []string{"front", "back", "top", "bottom", "right", "left"} {
		if d := b.Pose.Turn(solid.OutOf(face)).Dot(way); d > best+1e-9 {
			best, side = d, face
		}
	}
	return side
}

// found are the corners that are long enough, the longest first, and the sides without any.
func (c *cornered) found() (corners []plan.Corner, flush []string) {
	for _, key := range c.order {
		notch := c.ends && key.Of == c.m.Title(c.a.ID) && slices.Contains(c.lies, key.Side) && c.m.PartOf(c.a.ID).Part.PlateLike()
		if mm := c.mm[key]; mm >= cornerLeastMm && !notch {
			key.LengthMm = words.Writer{Units: c.m.Job.Units}.Even(mm, 1, 0.05)
			corners = append(corners, key)
		}
	}
	slices.SortStableFunc(corners, func(p, q plan.Corner) int {
		return cmp.Or(cmp.Compare(q.LengthMm, p.LengthMm), cmp.Compare(slices.Index(solid.Faces, p.Side), slices.Index(solid.Faces, q.Side)))
	})
	for _, side := range solid.Faces {
		for _, face := range solid.Faces {
			if c.flush[[2]string{face, side}] >= cornerLeastMm {
				flush = seq.Add(flush, side)
			}
		}
	}
	return corners, flush
}
