package review

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// The torch as the rule sees it: bare wire or electrode next to the weld, then
// a straight nozzle, held at 30° to 60° to both faces of the corner. Common
// practice, no source.
const (
	torchWireMm   = 20.0  // bare, from the weld to the nozzle
	torchNozzleMm = 10.0  // half the width of nozzle or holder
	torchReachMm  = 150.0 // from the weld to where the neck bends away
	torchLeastDeg = 30.0
	torchMostDeg  = 60.0
	torchStepDeg  = 5.0
	torchSampleMm = 1.0
	narrowBoreMm  = 60.0 // a bore under this is not welded deeper than it is wide
)

// weldAccess looks for welds round a circle that the torch does not reach when
// their turn comes, with all that is already joined in its place. Openings in
// the outside of a part are not counted as a way in.
func (r *reviewer) weldAccess(j *plan.JointPlan) {
	n, of := slices.Index(r.pl.Joints, j), j.A
	ends := r.weldEnds(j)
	axis, _ := r.machine().AxisOf(j)
	if len(ends) > 0 {
		n, ends = n+1, meant(j.Weld, cornered(j.Weld, ends))
	} else {
		ends, of, axis = r.footEnd(j)
	}
	if len(ends) > 0 {
		r.reachable(j, ends, r.metalAt(n, of.Instance(), axis))
	}
}

// metal is a part that is round about an axis, by its title: places along that, and radii.
type metal struct {
	title   string
	corners []plan.XY // closed
}

// metalAt is what stands along an axis after the first n joints, together with one of the parts there.
func (r *reviewer) metalAt(n int, of parts.Instance, axis assembly.Pose) []metal {
	m := r.machine()
	in := m.Stage().Together(n, of.ID())
	on := seq.Keep(m.Along(axis), func(p stand.OnAxis) bool { return in[p.ID] })
	return seq.Map(on, func(p stand.OnAxis) metal { return metal{m.Title(p.ID), p.Metal()} })
}

// footEnd is the highest place of a weld round the foot of a branch, with the end of the joint that is of the branch and its
// axis; none of another weld.
func (r *reviewer) footEnd(j *plan.JointPlan) (ends []weldEnd, branch plan.JointEnd, axis assembly.Pose) {
	for _, of := range [][2]plan.JointEnd{{j.A, j.B}, {j.B, j.A}} {
		tube, main := r.viewOf(of[0].Part), r.viewOf(of[1].Part)
		end := seq.At(tube.p.Ends, func(e *parts.TubeEnd) bool { return e.Onto.Part == of[1].Part && e.Place != nil })
		stands := r.machine().At(of[0])
		if stands == nil || end == nil || main.wideMm() == 0 {
			continue
		}
		_, _, foot := footOf(end, tube.wideMm(), main.wideMm())
		free := tube.lengthMm
		if end.Face == parts.Back {
			foot, free = free-foot, 0
		}
		return []weldEnd{{z: foot, r: tube.wideMm(), dir: math.Copysign(1, free-foot), sides: []float64{1}}}, of[0], stands.Pose
	}
	return nil, branch, axis
}

// weldCorner looks for a fillet round a circle where the two parts end level, or nearly:
// there is no corner that holds the leg.
func (r *reviewer) weldCorner(j *plan.JointPlan) {
	w := j.Weld
	ends := r.weldEnds(j)
	if w.Type != "fillet" || len(ends) == 0 {
		return
	}
	corners := seq.Map(ends, func(e weldEnd) float64 { return e.cornerMm })
	room := words.Either(w.Sides == 1, slices.Max(corners), slices.Min(corners))
	if geom.Over(w.LegMm, room) {
		r.ofJoint(j, Finding{
			What:    j.Title + ": the two end level where the fillet goes, or nearly: there is no corner for its leg",
			Numbers: r.mm(geom.Clean(room)) + " of the leg of " + r.mm(w.LegMm), LeftMm: left(room),
			Rule: "a fillet lies in a corner", Source: "by geometry", Fix: "let one stand out by the leg and more, or type: bevel with a chamfer for the weld",
		})
	}
}

// weldEnds are the two ends of a weld round a circle; none of another weld.
func (r *reviewer) weldEnds(j *plan.JointPlan) []weldEnd {
	outerEnd, innerEnd := j.A, j.B
	if !outerEnd.Inside {
		outerEnd, innerEnd = innerEnd, outerEnd
	}
	all := r.along(j)
	outer, inner := all.Find(outerEnd.Instance()), all.Find(innerEnd.Instance())
	if j.Weld.DiameterMm <= 0 || outer == nil || inner == nil || !outerEnd.Inside {
		return nil
	}
	out, in := outer.Span(outerEnd.Span()), inner.Span(innerEnd.Span())
	radius := min(outerEnd.DiameterMm, innerEnd.DiameterMm) / 2 // of a shoulder the weld runs further out
	ends := []weldEnd{
		newWeldEnd(-1, radius, surfaceEnd{*outer, out.FromMm}, surfaceEnd{*inner, in.FromMm}),
		newWeldEnd(1, radius, surfaceEnd{*outer, out.ToMm}, surfaceEnd{*inner, in.ToMm}),
	}
	if j.Weld.Type == "fillet" { // the chamfer of its edge leads in, and is no groove
		ends = seq.Map(ends, func(e weldEnd) weldEnd { e.rank = min(e.rank, 1); return e })
	}
	return ends
}

// meant are the ends that a weld is made at: both of one on two sides, the one of
// higher rank of one on one side, or either if they are equal.
func meant(w *plan.WeldPlan, ends []weldEnd) []weldEnd {
	switch {
	case w.Sides != 1 || len(ends) < 2 || ends[0].rank == ends[1].rank:
		return ends
	case ends[0].rank > ends[1].rank:
		return ends[:1]
	}
	return ends[1:]
}

// cornered are the ends at which a fillet has a corner, all of any other weld, and where none has: the parts may
// end level at one end, and the corner lies at the other.
func cornered(w *plan.WeldPlan, ends []weldEnd) []weldEnd {
	some := seq.Keep(ends, func(e weldEnd) bool { return !geom.Over(w.LegMm, e.cornerMm) })
	if w.Type != "fillet" || len(some) == 0 {
		return ends
	}
	return some
}

// reachable reports a weld that cannot be reached at the ends that it is made at.
func (r *reviewer) reachable(j *plan.JointPlan, ends []weldEnd, stands []metal) {
	var blocked []string
	var free float64
	for _, e := range ends {
		if why, mm := e.blocked(stands, r.mm); why != "" {
			blocked, free = append(blocked, why), max(free, mm)
		}
	}
	if len(blocked) == 0 || j.Weld.Sides == 1 && len(blocked) < len(ends) {
		return
	}
	r.ofJoint(j, Finding{
		What: j.Title + ": the torch does not reach the weld when its turn comes", Numbers: few(blocked), LeftMm: left(free),
		Rule: "a torch " + r.mm(2*torchNozzleMm) + " wide, from " + r.mm(torchWireMm) + " off the weld, has " + r.mm(torchReachMm) +
			" of free way at 30° to 60°; a bore under " + r.mm(narrowBoreMm) + " is not welded deeper than it is wide",
		Fix: "weld it before what is in the way is put on, weld the other end, or leave more room",
	})
}

// gapMm is the way from a point to the metal, 0 inside it.
func (p metal) gapMm(z, radius float64) float64 {
	least, at := endless, plan.XY{XMm: z, YMm: radius}
	if geom.Inside(at, p.corners) {
		return 0
	}
	for i, a := range p.corners {
		least = min(least, geom.ToSegment(at, a, p.corners[(i+1)%len(p.corners)]))
	}
	return least
}

// weldEnd is one end of a weld round a circle: the corner, and where the torch
// comes from. Of the two ends of a weld on one side the one with the higher
// rank is meant: where an edge is prepared, else where the inner part stands
// out. The picture on the sequence sheet shows the same end.
type weldEnd struct {
	z, r, dir float64   // the corner; outward along the axis
	sides     []float64 // +1: from outside, −1: from inside the bore
	rank      int
	depthMm   float64 // in the bore, 0 at its mouth
	cornerMm  float64 // along the axis, how far the corner's inner side reaches
}

// surfaceEnd is where a surface of a part ends along the axis.
type surfaceEnd struct {
	stand.OnAxis
	z float64
}

// newWeldEnd finds the corner at the end, in direction dir of the axis, of a
// joint of radius r.
func newWeldEnd(dir, r float64, outer, inner surfaceEnd) weldEnd {
	const small, flushMm = 0.3, 0.5 // a chamfer for a weld is larger; a fillet needs more
	e := weldEnd{z: outer.z, r: r, dir: dir, cornerMm: math.Abs(inner.z - outer.z)}
	switch d := (inner.z - outer.z) * dir; {
	case d > flushMm:
		e.rank, e.sides = 1, []float64{1}
	case d < -flushMm:
		e.z, e.depthMm, e.sides = inner.z, -d, []float64{-1}
	default:
		e.sides = []float64{1, -1}
	}
	if bore, _, ok := outer.Radii(outer.z - dir*0.05); ok && bore > r+small {
		e.rank = 2
	}
	if _, outside, ok := inner.Radii(inner.z - dir*0.05); ok && outside < r-small {
		e.rank = 2
	}
	// Against a shoulder the corner is at the shoulder's outside.
	if _, outside, ok := inner.Radii(outer.z + dir*0.05); ok && outside > r+small {
		e.r, e.sides, e.cornerMm = outside, []float64{1}, endless
	}
	return e
}

// blocked says what is in the way of the torch in all its directions, and where
// the weld is; empty if it comes in. Named is what leaves most of the way free.
func (e weldEnd) blocked(stands []metal, mm func(float64) string) (why string, freeMm float64) {
	if e.depthMm > 2*e.r && 2*e.r < narrowBoreMm {
		return mm(e.depthMm) + " deep in a bore of " + mm(2*e.r), 0
	}
	farMm, by := 0.0, ""
	for _, side := range e.sides {
		for deg := torchLeastDeg; deg <= torchMostDeg; deg += torchStepDeg {
			p, s := e.hits(stands, side, deg)
			if p == nil {
				return "", 0
			}
			if s > farMm {
				farMm, by = s, p.title
			}
		}
	}
	return by + " in the way " + mm(farMm) + " from the weld", farMm
}

// hits is the first part in the way of a torch at an angle to the axis, and how
// far from the weld; nil if the way is free.
func (e weldEnd) hits(stands []metal, side, deg float64) (*metal, float64) {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	for s := torchSampleMm; s <= torchReachMm; s += torchSampleMm {
		z, r := e.z+e.dir*s*cos, math.Abs(e.r+side*s*sin)
		room := words.Either(s >= torchWireMm, torchNozzleMm-geom.CloseMm, geom.CloseMm)
		for p := range seq.Refs(stands) {
			if p.gapMm(z, r) < room {
				return p, s
			}
		}
	}
	return nil, 0
}
