package picture

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/machine"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// drawing draws what stands at each step. Sections of a body by a plane are made
// once for all steps.
type drawing struct {
	*machine.Stage
	cuts map[cutKey][][]plan.XY
}

// cutKey names a section of a body, or of a pattern of screws turned into the
// plane.
type cutKey struct {
	plane assembly.Pose
	id    string
}

// pictureMm is how near curves in pictures are to the true ones: less than the
// width of a line at a scale of 1:1.
const pictureMm = 0.05

func (s *drawing) cut(plane assembly.Pose, b *assembly.Body) [][]plan.XY {
	key := cutKey{plane, b.ID}
	if loops, done := s.cuts[key]; done {
		return loops
	}
	var out [][]plan.XY
	for _, loop := range b.Section(plane, pictureMm) {
		out = append(out, seq.Map(loop, func(p geom.Point) plan.XY { return xy(p.XMm, p.YMm) }))
	}
	s.cuts[key] = out
	return out
}

// extent is the rectangle about a body in a plane that passes its box.
func extent(plane assembly.Pose, b *assembly.Body) (rect, bool) {
	box := b.Box().Moved(plane.Inverse())
	return spanning(xy(box.Low.X, box.Low.Y), xy(box.High.X, box.High.Y)), box.Low.Z <= 0 && box.High.Z >= 0
}

// itemOf is the number of a body in the list of parts and of what stands, from 1; 0 for another.
func (s *drawing) itemOf(id string) int {
	if r := s.Roles[id]; r.Kind == stand.Standing {
		return len(s.Models) + 1 + slices.Index(s.Drive, id)
	}
	return s.ItemOf[s.Of[id].Part]
}

// kindIn is how a part, or what stands, is drawn in a plane.
func (s *drawing) kindIn(plane assembly.Pose, b *assembly.Body) plan.ShapeKind {
	if b.Bought {
		return plan.ShapeScrew
	}
	outside, inside := s.PartOf(b.ID).Sides()
	if len(outside) > 0 && len(inside) == 0 && holds(plane, b.Pose) {
		return plan.ShapeBar
	}
	return plan.ShapePart
}

func holds(plane, axis assembly.Pose) bool {
	return math.Abs(plane.Z.Dot(axis.Z)) < stand.Level && math.Abs(plane.Z.Dot(axis.At.Sub(plane.At))) < stand.Level
}

// fasteners are the screws and nuts of a joint, and the made studs.
func (s *drawing) fasteners(j *plan.JointPlan) (out []*assembly.Body) {
	stud := s.Joint(j.Name).Stud()
	for _, id := range s.Ends[j.N-1][2:] {
		if kind := s.Roles[id].Kind; kind == stand.Screw || kind == stand.Nut || stud != "" && s.Of[id].Part == stud {
			out = append(out, s.BodyOf[id])
		}
	}
	return out
}

// screwsIn are the screws and made studs of a joint as a plane through its axis
// shows them: those that it cuts, and where it cuts none, one turned into it at
// each side with its nuts, or of parts that share no axis those beside it moved straight
// into it. Of the whole machine made studs stand where they are.
func (v *viewed) screwsIn(plane assembly.Pose, j *plan.JointPlan) []plan.Shape {
	var out []plan.Shape
	var first *assembly.Body
	add := func(b *assembly.Body, loops [][]plan.XY) {
		if b.Bought && len(loops) > 0 {
			out = append(out, plan.Shape{Kind: plan.ShapeScrew, Loops: loops})
		} else if len(loops) > 0 {
			part := v.Of[b.ID].Part
			out = append(out, plan.Shape{Kind: plan.ShapeBar, Item: v.ItemOf[part], Title: v.Model(part).Out.Title, Loops: loops})
		}
	}
	for _, b := range v.fasteners(j) {
		first = cmp.Or(first, b)
		add(b, v.cut(plane, b))
	}
	pose, ok := v.Poses[j.A.Instance().ID()]
	if len(out) > 0 || first == nil || !ok || !holds(plane, pose) || v.mover == nil && !first.Bought {
		return out
	}
	if j.Beside != nil {
		v.movedIn(plane, j, add)
		return out
	}
	own := pose.Inverse()
	across := plane.Z.Cross(pose.Z) // out from the axis, in the plane
	for _, side := range []float64{0, 180} {
		turn := assembly.ClockDeg(own.Apply(first.Pose.At)) - assembly.ClockDeg(own.Turn(across)) + side
		for _, b := range v.fasteners(j) {
			if off := first.Pose.Inverse().Apply(b.Pose.At); math.Hypot(off.X, off.Y) > stand.Level {
				continue // of another hole
			}
			turned := *b
			turned.ID += words.Trim(side, 0) // its own in the cuts
			turned.Pose = pose.Of(assembly.Rotate(assembly.AxisZ, turn)).Of(own.Of(b.Pose))
			add(b, v.cut(plane, &turned))
		}
	}
	return out
}

// movedIn gives the cuts of a joint's screws that lie along a plane, each moved square to
// it until it lies in it, one for those that fall together.
func (s *drawing) movedIn(plane assembly.Pose, j *plan.JointPlan, add func(*assembly.Body, [][]plan.XY)) {
	var seen []plan.XY
	for _, first := range s.fasteners(j) {
		if math.Abs(plane.Z.Dot(first.Pose.Z)) > stand.Level {
			continue
		}
		b, at := *first, onPlane(plane, first.Pose.At)
		if slices.ContainsFunc(seen, func(p plan.XY) bool { return geom.Distance(p, at) < geom.CloseMm }) {
			continue
		}
		seen = append(seen, at)
		b.ID += " moved in" // its own in the cuts
		b.Pose = assembly.Move(plane.Z.Times(plane.Z.Dot(plane.At.Sub(b.Pose.At)))).Of(b.Pose)
		add(first, s.cut(plane, &b))
	}
}

// ringShape is an outline of a rolling bearing's part: along the axis in
// shares of its width from the cup's back, and outward in shares of its section
// from the bore. The proportions are those of common bearings, for the eye alone.
type ringShape [][2]float64

type ringPart struct {
	kind  plan.ShapeKind
	shape ringShape
}

var ringShapes = []ringPart{
	{plan.ShapeCup, ringShape{{0, 1}, {0.8, 1}, {0.8, 0.82}, {0, 0.58}}},
	{plan.ShapeCone, ringShape{{0.1, 0}, {1, 0}, {1, 0.42}, {0.9, 0.42}, {0.9, 0.34}, {0.18, 0.2}, {0.18, 0.26}, {0.1, 0.26}}},
	{plan.ShapeRoller, ringShape{{0.88, 0.34}, {0.86, 0.84}, {0.2, 0.64}, {0.22, 0.2}}},
}

// ballShapes are those of a ball bearing, its ball as an octagon.
var ballShapes = []ringPart{
	{plan.ShapeCup, ringShape{{0, 1}, {1, 1}, {1, 0.7}, {0, 0.7}}},
	{plan.ShapeCone, ringShape{{0, 0}, {1, 0}, {1, 0.3}, {0, 0.3}}},
	{plan.ShapeRoller, ringShape{{0.37, 0.2}, {0.63, 0.2}, {0.82, 0.38}, {0.82, 0.62}, {0.63, 0.8}, {0.37, 0.8}, {0.18, 0.62}, {0.18, 0.38}}},
}

// shapesOf are the parts of a bearing.
func shapesOf(j *plan.JointPlan) []ringPart {
	if j.Bearing.Ball {
		return ballShapes
	}
	return ringShapes
}

// rings are the cup, the cone and the rollers of a bearing that are in at a step, in a plane
// that holds its axis, as they sit: the thick side of the cup on its shoulder.
func (v *viewed) rings(plane assembly.Pose, j *plan.JointPlan) (out []plan.Shape) {
	for _, r := range shapesOf(j) {
		if n := v.ringStep(j, r.kind); n < v.j.N {
			out = append(out, plan.Shape{Kind: r.kind, Title: j.Bearing.Bearing, New: n == v.j.N-1, Loops: v.ringLoops(plane, j, r.shape)})
		}
	}
	return out
}

// ringStep is the place among the joints, from 0, at which a ring of a bearing goes in; the
// rollers go with their cone.
func (s *drawing) ringStep(j *plan.JointPlan, kind plan.ShapeKind) int {
	for _, o := range s.OfKind(parts.BearingKind) {
		if b := o.Bearing; kind == plan.ShapeCup && slices.Contains(b.CupsHere, j.Name) || kind != plan.ShapeCup && slices.Contains(b.ConesHere, j.Name) {
			return o.N - 1
		}
	}
	return j.N - 1
}

// ringLoops are a ring's outlines on both sides of the axis; none in a plane that does not hold it.
func (s *drawing) ringLoops(plane assembly.Pose, j *plan.JointPlan, shape ringShape) (loops [][]plan.XY) {
	b := j.Bearing
	axis, ok := s.AxisOf(j)
	if !ok || b.LargeEnd == "" || !holds(plane, axis) {
		return nil
	}
	for _, side := range []float64{1, -1} {
		loops = append(loops, seq.Map(shape, func(q [2]float64) plan.XY {
			z, r := b.CupBackMm+b.LargeEndDir*q[0]*b.WidthMm, b.BoreMm/2+q[1]*(b.OutsideMm-b.BoreMm)/2
			return onPlane(plane, axis.At.Sub(axis.Z.Times(z)).Add(plane.Z.Cross(axis.Z).Times(side*r)))
		}))
	}
	return loops
}

// ringWay is the way of a ring to its place: a cup towards its shoulder, and so the cone that a
// nut holds, with its small end first; a cup that a cover is bolted on behind comes from that side. Lone tells whether it comes by itself: a cone on the
// shoulder of a shaft comes with that, and the rollers with their cone.
func (v *viewed) ringWay(j *plan.JointPlan, kind plan.ShapeKind) (into assembly.Vec, lone bool) {
	axis, ok := v.AxisOf(j)
	if b := j.Bearing; ok && j.Kind == parts.BearingKind && b.LargeEnd != "" {
		dir := b.LargeEndDir
		if kind == plan.ShapeCup && b.CupFromCover {
			dir = -dir
		}
		return axis.Z.Times(dir), b.Ball && !b.OnShaft || kind == plan.ShapeCup && !b.Ball || kind == plan.ShapeCone && b.Adjusted
	}
	return into, false
}
