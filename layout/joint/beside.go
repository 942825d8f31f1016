package joint

import (
	"math"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// beside is where a bolted part stands whose axis does not lie on the other
// part's: a lug on a plate. The holes give the place. It is nil where the
// patterns meet about one axis, or do not meet at all. Where the joint has a place that gives
// it, and the holes have to lie there. Of holes on a wall of a
// part it is where that wall stands, in its own frame.
func (j *shop) besides(t *joint) *plan.Beside {
	if at, ok := j.onFace(t); ok {
		if t.in.Place.OnAxis() {
			return nil
		}
		p := t.in.Place.At
		return &plan.Beside{XMm: geom.Clean(-t.meeting().Second.Outward() * p.X.Mm), YMm: geom.Clean(p.Y.Mm), FrontMm: at.z0, TurnDeg: at.turn, OtherWay: at.turned()}
	}
	if t.a.group == nil || t.b.group == nil || len(t.a.group.Points) != len(t.b.group.Points) {
		return nil
	}
	m, s := t.meeting(), t.facing()
	a, b := placedBy(t.a.points(), placement{turn: t.in.Rotate.Deg, s: s}), t.b.points()
	reach := t.leewayIn(placement{turn: t.in.Rotate.Deg, s: s}, still)
	ca, cb := centroid(a), centroid(b)
	about := meets(a, b, still, reach) || len(motions(a, b, reach, false)) > 0
	if reach.slotted() { // they are drawn with the bolts in the middle of their slots
		about = geom.Distance(ca, cb) <= reach.mm
	}
	if !t.walls() && (about || geom.Distance(ca, plan.XY{})+geom.Distance(cb, plan.XY{}) <= reach.mm) {
		return nil
	}
	turn, ok := turnOnto(a, b, reach, t.in.Rotate.Pos.Line != 0)
	if !ok {
		return nil
	}
	at := placement{turn: geom.OnClock(t.in.Rotate.Deg + turn), s: s}
	ca = centroid(placedBy(t.a.points(), at))
	za, _, okA := t.a.plane(m.First)
	zb, _, okB := t.b.plane(m.Second)
	if !okA || !okB {
		return nil
	}
	zb += m.Second.Outward() * (j.spacerMm(t) + j.stackMm(t))
	out := &plan.Beside{
		XMm: geom.Clean(cb.XMm - ca.XMm), YMm: geom.Clean(cb.YMm - ca.YMm), FrontMm: geom.Clean(zb - s*za),
		TurnDeg: at.turn, OtherWay: at.turned(),
	}
	if t.b.onWall() {
		out.On, out.Up = t.b.wallText(parts.Front), t.b.up()
	}
	return out
}

// besideStack is where the parts between the two ends of such a joint lie, in part A's frame: one on the other from its
// face, looking the way it looks, the holes of each on A's. None where the holes of one do not meet A's.
func (j *shop) besideStack(t *joint) (out []plan.Beside) {
	first := t.meeting().First
	mate, _, _ := t.a.plane(first)
	a, way := t.a.points(), first.Outward()
	for _, f := range j.stack(t) {
		front, thick, ok := f.plane(parts.Front)
		if !ok || len(f.points()) != len(a) {
			return nil
		}
		turn, ok := turnOnto(f.points(), a, t.leewayIn(still, still), false)
		if !ok {
			return nil
		}
		if way < 0 {
			front += thick // its back comes against part A's front
		}
		off := centroid(a).Minus(centroid(placedBy(f.points(), turnedBy(turn))))
		out = append(out, plan.Beside{XMm: geom.Clean(off.XMm), YMm: geom.Clean(off.YMm), FrontMm: geom.Clean(mate - front), TurnDeg: turn})
		mate += way * thick
	}
	return out
}

// laidOn are the holes of a part between the two as it is laid on others in such a joint, the middle of its holes on theirs; turned
// until the bolts go through, where they ever do. Nil where it has more holes than they, which say nothing of its place.
func (j *making) laidOn(t *joint, f feature, at []plan.XY, r leeway) ([]plan.XY, leeway) {
	way, _ := j.frames(t)
	q := placedBy(f.points(), way)
	if r.b = way.point(f.run()); len(q) != len(at) {
		return nil, r
	}
	turn, _ := turnOnto(q, at, leeway{r.mm, r.b, r.a}, false)
	r.b = turnedBy(turn).point(r.b)
	return seq.Map(placedBy(about(q, centroid(q)), turnedBy(turn)), centroid(at).Plus), r
}

// turnOnto is the least turn of pattern a about its middle that brings it onto
// b's, moved there; where the turn is said only none.
func turnOnto(a, b []plan.XY, r leeway, said bool) (deg float64, ok bool) {
	ca, cb := centroid(a), centroid(b)
	from, onto := about(a, ca), about(b, cb)
	best := math.Inf(1)
	turns := r.turns(from[0], onto)
	if said {
		turns = []float64{0}
	}
	for _, turn := range turns {
		if apart(turn, 0) < best && meets(from, onto, turnedBy(turn), r) {
			best, deg, ok = apart(turn, 0), turn, true
		}
	}
	return deg, ok
}

func about(pts []plan.XY, c plan.XY) []plan.XY {
	return seq.Map(pts, func(p plan.XY) plan.XY { return p.Minus(c) })
}

func centroid(pts []plan.XY) plan.XY {
	var sum plan.XY
	for _, p := range pts {
		sum = sum.Plus(p)
	}
	return sum.Times(1 / float64(len(pts)))
}

func placedBy(pts []plan.XY, at placement) []plan.XY { return seq.Map(pts, at.point) }

// patterns are the holes of both parts in one frame: the assembly's, or where
// the parts share no axis the second part's.
func (j *making) patterns(t *joint) (a, b []plan.XY) {
	s := t.out.Beside
	if s == nil && !t.walls() {
		return j.pattern(t.a), j.pattern(t.b)
	}
	way, _ := j.frames(t)
	a, b = placedBy(t.a.points(), way), t.b.points()
	if s == nil { // middle on middle, to say how far they miss
		return about(a, centroid(a)), about(b, centroid(b))
	}
	return seq.Map(a, plan.XY{XMm: s.XMm, YMm: s.YMm}.Plus), b
}

// besideText says where a bolted part stands whose axis is not the other's.
func (t *joint) besideText(w words.Writer) string {
	s, m := t.out.Beside, t.meeting()
	if t.walls() || !t.a.middled() || !t.b.middled() {
		return t.a.wallText(m.First) + " on the " + t.b.wallText(m.Second) + ", " + t.a.place() + " on " + t.b.place() + ", " + t.a.up() + " of " + t.a.title() + " at " +
			words.Angle(s.TurnDeg) + " seen on the " + t.b.wallText(parts.Front) + " with its " + t.b.up() + " up"
	}
	off := offText(w, s.XMm, s.YMm)
	return string(m.First) + " of " + t.a.title() + " on the " + string(m.Second) + " of " + t.b.title() + ", " + t.a.place() + " on " + t.b.place() + ", its middle " +
		strings.Join(off, " and ") + words.Either(len(off) == 0, "on", " from") + " that of " + t.b.title() +
		" seen from its " + string(parts.Front) + ", TOP at " + words.Angle(s.TurnDeg)
}

// up is what lies at 12 o'clock of the face that a group of holes is on.
func (f feature) up() string {
	switch {
	case !f.onWall():
		return "TOP"
	case f.r.Part.Bar == nil:
		return "free edge"
	case f.group.Side() == parts.BottomSide:
		return "front"
	}
	return "back"
}

// clocked are bolts about the point that their clock goes by: their own middle where the
// other part's lies so far off that they fall together.
func (t *joint) clocked(pts []plan.XY) []plan.XY {
	if t.out.Beside == nil {
		return pts
	}
	for i := range pts {
		for k := range i {
			if apart(geom.ClockDeg(pts[i]), geom.ClockDeg(pts[k])) < clockApartDeg {
				return about(pts, centroid(pts))
			}
		}
	}
	return pts
}

// clockApartDeg is how far two marks on a clock stand apart to be told from each other.
const clockApartDeg = 20
