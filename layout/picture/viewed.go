package picture

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/machine"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// viewed is a step being drawn.
type viewed struct {
	*drawing
	j            *plan.JointPlan
	mover, still *assembly.Body
	stands       map[string]bool
	there        bool // both hang together before
	byHand       bool // what is drawn is the picture of what is put in by hand, which alone is new there
	come         []coming
	planesOf     []assembly.Pose // of its pictures
}

// isNew tells whether a body comes with the step.
func (v *viewed) isNew(b *assembly.Body) bool {
	if slices.Contains(v.News[v.j.N-1], b) {
		return true
	}
	if v.byHand {
		return false
	}
	if v.Rides(b.ID) {
		b = v.BodyOf[v.Roles[b.ID].On]
	}
	first := v.First(b.ID)
	switch {
	case v.j.Frame != "" && first >= 0 && v.Joints[first].Frame == v.j.Frame:
		return true
	case b == v.mover:
		return !v.there
	}
	return b != v.still && first == v.j.N-1
}

// planes are those that show a joint truly, and the way of what comes: along
// the axis that the parts share; else across the seam, and along it.
func (v *viewed) planes(a, b *assembly.Body) ([]assembly.Pose, assembly.Vec) {
	if axis, ok := v.AxisOf(v.j); ok {
		return []assembly.Pose{v.throughAxis(axis, a)}, v.along(axis.Z, a)
	}
	face, at := v.facing(a, b), a.Box().Centre()
	into := face.Reversed()
	if v.mover == b {
		into = face
	}
	across := func(z assembly.Vec) assembly.Pose { return upright(at, z.Cross(face).Unit()) }
	switch {
	case math.Abs(a.Pose.Z.Dot(face)) < machine.Steep: // a plate on its edge: its own outline, and the seam across
		return []assembly.Pose{upright(at, a.Pose.Z), across(a.Pose.Z)}, into
	case math.Abs(b.Pose.Z.Dot(face)) < machine.Steep:
		return []assembly.Pose{across(b.Pose.Z), upright(at, b.Pose.Z)}, into
	case math.Abs(a.Pose.Y.X) > math.Abs(a.Pose.X.X):
		return []assembly.Pose{upright(at, a.Pose.Y)}, into
	}
	return []assembly.Pose{upright(at, a.Pose.X)}, into
}

// facing is the way out of part b, square to where it meets part a, of parts that share no axis.
func (v *viewed) facing(a, b *assembly.Body) assembly.Vec {
	face := a.Pose.Z
	switch in := v.Joint(v.j.Name); {
	case in.Place != nil:
		_, _, normal := v.Placed(in.Place, v.j.A.Instance(), v.j.B.Instance())
		face = b.Pose.Turn(normal)
	case v.j.A.Feature == string(parts.LeftEnd):
		return a.Pose.X
	case v.j.A.Feature == string(parts.RightEnd):
		return a.Pose.X.Reversed()
	case v.j.Beside != nil:
		r := v.Model(v.j.B.Part)
		g := r.GroupNamed(v.j.B.Feature)
		if face = b.Pose.Turn(solid.Wall(r, g).Z); cmp.Or(in.Meet.Second, g.Face) == parts.Back {
			return face.Reversed()
		}
		return face
	}
	if a.Box().Centre().Sub(b.Box().Centre()).Dot(face) < 0 {
		return face.Reversed()
	}
	return face
}

// throughAxis is a plane that holds an axis, as the machine stands where it may, and the joint's screws.
func (v *viewed) throughAxis(axis assembly.Pose, a *assembly.Body) assembly.Pose {
	own := assembly.Pose{X: axis.Z.Reversed(), Y: axis.Y, Z: axis.X, At: axis.At}
	if holds(stand.AlongAxis, axis) && math.Abs(stand.AlongAxis.Z.Dot(axis.X)) > 1-stand.Level && v.stands[v.Bodies[0].ID] {
		own = stand.AlongAxis
	}
	if out, far := v.beyond(own, axis, a); far {
		return assembly.Frame(axis.At, axis.Z.Reversed().Cross(out), out)
	}
	return own
}

// along is the way of what comes along an axis: by the face by which part a meets, as the cup of a
// bearing, or from the side on which it lies.
func (v *viewed) along(z assembly.Vec, a *assembly.Body) assembly.Vec {
	for _, way := range []func(*plan.JointPlan) (assembly.Vec, bool){v.Meant, v.Led} {
		if into, meant := way(v.j); meant {
			return words.Either(v.mover != a, into.Reversed(), into)
		}
	}
	if way, _ := v.ringWay(v.j, plan.ShapeCup); way != (assembly.Vec{}) {
		return way
	}
	if v.mover.Box().Centre().Sub(v.still.Box().Centre()).Dot(z) > 0 {
		return z.Reversed()
	}
	return z
}

// beyond is the way out to the first of a joint's screws or studs, if the cut
// surface of their part does not reach out so far: in the corner of a plate.
func (v *viewed) beyond(plane, axis assembly.Pose, part *assembly.Body) (assembly.Vec, bool) {
	screws := v.fasteners(v.j)
	if v.j.Kind != parts.BoltKind || len(screws) == 0 {
		return assembly.Vec{}, false
	}
	out := screws[0].Pose.At.Sub(axis.At)
	out = out.Sub(axis.Z.Times(out.Dot(axis.Z)))
	across, reach := plane.Z.Cross(axis.Z), 0.0
	for _, loop := range v.cut(plane, part) {
		for _, p := range loop {
			at := plane.Apply(assembly.Vec{X: p.XMm, Y: p.YMm})
			reach = max(reach, math.Abs(at.Sub(axis.At).Dot(across)))
		}
	}
	return out.Unit(), out.Len() > reach
}

// upright is the plane through a point with a normal, as a machine is drawn: TOP
// up, front at the left or to who looks; from above with the front at the left.
func upright(at, normal assembly.Vec) assembly.Pose {
	if math.Abs(normal.Y) > 0.9 {
		return assembly.Frame(at, assembly.AxisY, assembly.AxisX.Reversed())
	}
	if 2*normal.X+normal.Z < 0 {
		normal = normal.Reversed()
	}
	if math.Abs(normal.X) > 1-stand.Level && math.Abs(at.X) < stand.Level {
		return stand.AlongAxis
	}
	return assembly.Frame(at, normal, assembly.AxisY)
}

// kindOf says how a plane lies.
func (v *viewed) kindOf(plane assembly.Pose) plan.CutKind {
	axis, ok := v.AxisOf(v.j)
	switch {
	case ok && math.Abs(plane.Z.Dot(axis.X)) < 1-stand.Level:
		return plan.CutBolt
	case ok:
		return plan.CutAxis
	}
	return v.lieOf(plane)
}

// lieOf says how a plane lies that holds no axis of a joint.
func (v *viewed) lieOf(plane assembly.Pose) plan.CutKind {
	switch {
	case math.Abs(plane.Z.Y) > 0.9:
		return words.Either(v.Up == assembly.AxisY, plan.CutLevel, plan.CutTop)
	case math.Abs(plane.Z.Z) > math.Abs(plane.Z.X):
		return plan.CutAcross
	}
	return plan.CutLength
}

// shapes are the cut surfaces of what stands, in a window: parts, then weld metal,
// bearings and screws with their centre lines. The two parts of the joint come first, so
// that of copies these are named.
func (v *viewed) shapes(plane assembly.Pose, win rect) (out []plan.Shape, centres [][2]plan.XY) {
	for _, b := range v.seenBodies() {
		item, r := v.itemOf(b.ID), v.Roles[b.ID]
		if room, ok := extent(plane, b); ok && win.touches(room) && (item > 0 || r.What != "") {
			out = append(out, plan.Shape{Kind: v.kindIn(plane, b), Item: item, Title: v.Title(b.ID), New: v.mover != nil && v.isNew(b), Loops: v.cut(plane, b)})
		}
	}
	joining := v.shapesJoining(plane, win)
	for _, shape := range joining {
		if shape.Kind == plan.ShapeScrew || shape.Kind == plan.ShapeBar {
			centres = append(centres, rectOf(shape.Loops).long())
		}
	}
	out = append(out, joining...)
	for s := range seq.Refs(out) {
		s.Loops = win.clip(s.Loops)
	}
	return slices.DeleteFunc(out, func(s plan.Shape) bool { return len(s.Loops) == 0 }), win.clipLines(centres)
}

// shapesJoining are those of weld metal, bearings and screws, not clipped to the window.
func (v *viewed) shapesJoining(plane assembly.Pose, win rect) (out []plan.Shape) {
	for _, j := range v.Joints {
		bearing := j.Kind == parts.BearingKind
		if !v.joins(plane, win, j) || j.N > v.j.N && !bearing { // whose cup may be in already
			continue
		}
		for _, shape := range v.joining(plane, j, v.BodyOf[v.Ends[j.N-1][0]], v.BodyOf[v.Ends[j.N-1][1]]) {
			shape.New = !v.byHand && (shape.New || j == v.j && !bearing)
			out = append(out, shape)
		}
	}
	return out
}

// seenBodies are what stands at the step, the two parts of the joint first, and what comes with it and
// comes off again; of the whole machine none of that.
func (v *viewed) seenBodies() (all []*assembly.Body) {
	for _, joined := range []bool{true, false} {
		for b := range seq.Refs(v.Bodies) {
			if v.stands[b.ID] && (b == v.mover || b == v.still) == joined {
				all = append(all, b)
			}
		}
	}
	for b := range seq.Refs(v.Passing) {
		if v.mover != nil && v.isNew(b) {
			all = append(all, b)
		}
	}
	return all
}

// joins tells whether both parts of a joint stand, and a window of a plane shows where they meet.
func (v *viewed) joins(plane assembly.Pose, win rect, j *plan.JointPlan) bool {
	a, b := v.BodyOf[v.Ends[j.N-1][0]], v.BodyOf[v.Ends[j.N-1][1]]
	if a == nil || b == nil || !v.stands[a.ID] {
		return false
	}
	ra, oka := extent(plane, a)
	rb, okb := extent(plane, b)
	return (oka || okb) && win.touches(ra.meet(rb))
}

// joining is what joins two bodies: weld metal, a bearing, screws; of the whole machine made studs
// are parts like others.
func (v *viewed) joining(plane assembly.Pose, j *plan.JointPlan, a, b *assembly.Body) []plan.Shape {
	switch j.Kind {
	case parts.WeldKind:
		if j.Weld.Corners != nil && !j.Weld.Round && math.Abs(plane.Z.Dot(a.Pose.Z)) > 0.9 && v.Model(j.A.Part).Part.PlateLike() {
			return nil // along the plate: its corners lie before and behind
		}
		return []plan.Shape{{Kind: plan.ShapeBead, Loops: beads(v.cut(plane, a), v.cut(plane, b), j.Weld, onFaceOf(plane, j, a, b))}}
	case parts.BearingKind:
		return v.rings(plane, j)
	}
	out := v.screwsIn(plane, j)
	if v.mover == nil {
		out = slices.DeleteFunc(out, func(s plan.Shape) bool { return s.Kind == plan.ShapeBar })
	}
	return out
}

// onFaceOf tells of a place in a plane whether it lies on the face of a plate on which alone a round is welded
// in its bore; always, where no one face is meant.
func onFaceOf(plane assembly.Pose, j *plan.JointPlan, a, b *assembly.Body) func(plan.XY) bool {
	if j.Weld.DiameterMm == 0 || len(j.Weld.Corners) != 1 {
		return func(plan.XY) bool { return true }
	}
	plate := b
	if j.A.Inside {
		plate = a
	}
	box, into := plate.Solid.Box(), plate.Pose.Inverse().Of(plane)
	return func(p plan.XY) bool {
		return into.Apply(assembly.Vec{X: p.XMm, Y: p.YMm}).Z > (box.Low.Z+box.High.Z)/2 == (j.Weld.Corners[0].Side == string(parts.Front))
	}
}

// window is what a picture shows: the two parts, but of a long one only the
// stretch about the joint and its screws; beside another part also the others of its kind.
func (v *viewed) window(plane assembly.Pose, mover, still [][]plan.XY) rect {
	small, big := rectOf(mover), rectOf(still)
	if small.longest() > big.longest() {
		small, big = big, small
	}
	axis, onAxis := v.AxisOf(v.j)
	about, reach := small.meet(big), 0.6*small.longest()
	if !onAxis {
		reach *= 4 // its place on the other matters
	}
	if rings := v.ringsIn(plane); len(rings) > 0 { // that their way round shows
		about = rectOf(rings)
		reach = 0.25 * about.longest()
	}
	all := small.join(big)
	pad := 0.02 * all.longest()
	win := all.grown(pad).meet(about.grown(reach))
	for _, s := range v.screwsIn(plane, v.j) { // heads and nuts whole
		if s.Kind == plan.ShapeScrew {
			win = win.join(rectOf(s.Loops).grown(pad))
		}
	}
	if onAxis {
		return win.half(onPlane(plane, axis.At), dirOn(plane, axis.Z), append(mover, still...))
	}
	for b := range seq.Refs(v.Bodies) {
		if !v.stands[b.ID] || v.Of[b.ID].Part != v.j.A.Part {
			continue
		}
		r, cut := extent(plane, b)
		if all, now := win.join(r.grown(pad)).Size(), win.Size(); cut && (b == v.mover || b == v.still || max(all.XMm/now.XMm, all.YMm/now.YMm) < 1.5) { // else it would make all small
			win = win.join(r.grown(pad))
		}
	}
	return win
}

// ringsIn are the cut rings of all bearings, in the picture of one.
func (v *viewed) ringsIn(plane assembly.Pose) (loops [][]plan.XY) {
	if v.j.Kind != parts.BearingKind {
		return nil
	}
	for _, o := range v.OfKind(parts.BearingKind) {
		for _, r := range v.rings(plane, o) {
			loops = append(loops, r.Loops...)
		}
	}
	return loops
}

// between is the middle of what two boxes have in common, or of the way from one to the other.
func between(a, b assembly.Box) assembly.Vec { return a.Common(b).Centre() }
