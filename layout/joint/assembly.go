package joint

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// facing is −1 where the faces that meet turn part A end for end to part B, else 1.
func (t *joint) facing() float64 {
	m := t.meeting()
	s := -m.Second.Outward() / m.First.Outward()
	if m.Level {
		s = -s
	}
	return s
}

// inMetalMm is how far beside a cylinder its face is taken.
const inMetalMm = 0.1

// relative places part A in the coordinates of part B. It reports false where
// the two do not share an axis.
func (j *shop) relative(t *joint) (at placement, shared bool) {
	_, helix := t.flightOf()
	switch p := t.in.Place; {
	case helix && t.in.Meet.Level:
		return t.onLevel(), true
	case !t.alike():
		return placement{}, false
	case p != nil && (!t.is(parts.BoltKind) || p.At != nil):
		at, ok := j.onFace(t)
		return at, ok && p.OnAxis()
	}
	if at, ok := t.kind.place(t); ok {
		return at, true
	}
	m := t.meeting()
	switch {
	case t.along():
		return placement{}, false
	case !m.Set():
		return t.middles(), true
	}
	onA, onB, outer := t.meetAt()
	za, _, okA := t.a.r.Plane(m.First, onA)
	zb, _, okB := t.b.r.Plane(m.Second, onB)
	if !okA || !okB {
		bad := t.a
		if okA {
			bad = t.b
		}
		t.refuse(m.Pos, plan.NoFaceThere, plan.Named(bad.title()))
		return placement{}, false
	}
	zb += m.Second.Outward() * (outer*m.Below.Mm + j.spacerMm(t) + j.stackMm(t))
	return t.set(zb, za, t.facing()), true
}

// placing is as relative, but middle on middle where nothing says how far a shaft goes into its bush.
func (j *shop) placing(t *joint, all []*joint) (at placement, shared bool) {
	if t.along() && !j.otherwise(t, all) {
		return t.middles(), true
	}
	return j.relative(t)
}

// middles puts part A middle on middle of part B.
func (t *joint) middles() placement {
	return t.set(t.b.step.MidMm(), t.a.step.MidMm(), t.sense())
}

// along tells whether a shaft turns in a bush, or a screw in its nut, and other joints say where along the axis.
func (t *joint) along() bool {
	return (t.unkept() || t.is(parts.ScrewKind)) && t.in.Place == nil && !t.meeting().Set()
}

// otherwise tells whether other joints hold both parts of one to each other; of those that leave it to others as well, the
// earlier ones.
func (j *shop) otherwise(t *joint, all []*joint) bool {
	n := slices.Index(all, t)
	_, tied := j.side(t, append(slices.Clone(all[:n]), seq.Keep(all[n+1:], func(o *joint) bool { return !o.along() })...))
	return tied
}

// alike tells whether both ends are holes, or both are steps.
func (t *joint) alike() bool {
	return t.a.group != nil && t.b.group != nil || t.a.step != nil && t.b.step != nil
}

// meetAt are the radii at which the faces of two parts on one axis are taken, and 1 where A is the outer part, else −1.
func (t *joint) meetAt() (onA, onB, outer float64) {
	if t.a.step == nil || t.b.step == nil {
		return geom.MeanRadiusMm(t.a.points()), geom.MeanRadiusMm(t.b.points()), 1
	}
	a, b, outer := t.a.step.Size.NominalMm, t.b.step.Size.NominalMm, 1.0
	if !t.a.step.Inside {
		outer = -1
	}
	if t.in.Meet.Level { // each in its own metal, however loose they are
		return a/2 + outer*inMetalMm, b/2 - outer*inMetalMm, outer
	}
	return (a+b)/4 + inMetalMm, (a+b)/4 + inMetalMm, outer
}

// sense is −1 where the joint says that its parts look opposite ways, else 1.
func (t *joint) sense() float64 {
	if t.in.OtherWay {
		return -1
	}
	return 1
}

// set is A in the coordinates of B, turned as the joint says and looking along B or against it, with a place on
// its axis at one on B's.
func (t *joint) set(onB, onA, s float64) placement {
	return placement{geom.Clean(onB - s*onA), geom.OnClock(t.in.Rotate.Deg), s}
}

// onLevel places A in the coordinates of B where one of them is a flight, whose end lies as far
// behind that of what it stands on as the joint says.
func (t *joint) onLevel() placement {
	m, s := t.in.Meet, t.facing()
	out := m.Second.Outward()
	if t.a.helical() {
		out = -out
	}
	return t.faced(m.First, m.Second, out*m.Below.Mm, placement{turn: geom.OnClock(t.in.Rotate.Deg), s: s})
}

// faced is A in the coordinates of B, turned as it is, with its first face so far along B's axis from
// B's second.
func (t *joint) faced(first, second parts.Face, alongMm float64, as placement) placement {
	as.z0 = geom.Clean(faceMm(t.b.r, second.Outward()) + alongMm - as.s*faceMm(t.a.r, first.Outward()))
	return as
}

// onFace places A in the coordinates of B as a place says that has A's origin and a face on a
// face; off the axis by that origin.
func (j *shop) onFace(t *joint) (placement, bool) {
	p := t.in.Place
	if p == nil || p.At == nil || p.Edge() {
		return placement{}, false
	}
	first, second := parts.Face(p.With), parts.Face(p.On)
	if second != parts.Front && second != parts.Back {
		return placement{}, false
	}
	out := second.Outward()
	return t.faced(first, second, out*(p.Gap.Mm+j.spacerMm(t)+j.stackMm(t)), placement{turn: p.TurnDeg(), s: -out / first.Outward()}), true
}

// stackMm is the thickness of the parts clamped between the two ends.
func (j *shop) stackMm(t *joint) float64 {
	if !t.is(parts.BoltKind) {
		return 0
	}
	var sum float64
	for _, f := range j.stack(t) {
		_, thick, _ := f.plane(parts.Front)
		sum += thick
	}
	return sum
}

// placeStack puts the parts between the ends of a bolted joint in their place,
// looking the way part A looks, TOP with part A's, and with them what other joints have put
// on them. Parts that those have placed in A's own group stay there.
func (j *assembly) placeStack(t *joint) {
	if !t.is(parts.BoltKind) {
		return
	}
	a := *j.at(t.a.Instance())
	mate, thickA, _ := t.a.plane(t.meeting().First)
	if thickA <= 0 {
		return
	}
	out := t.meeting().First.Outward()
	for _, f := range j.stack(t) {
		front, thick, ok := f.plane(parts.Front)
		if !ok {
			continue
		}
		if out < 0 {
			front += thick // its back comes against part A's front
		}
		at := placement{mate - front, 0, 1}.then(a.at)
		j.bring(f, a.group, at)
		mate += out * thick
	}
}

// bring puts a part into a group, with what is joined to it; what is there already stays.
func (j *assembly) bring(f feature, group int, at placement) {
	switch q := j.at(f.Instance()); {
	case q == nil:
		j.placed = append(j.placed, placedPart{f.Instance(), f.r, group, at})
	case q.group != group:
		j.join(q.group, group, q.at.inverse().then(at))
	}
}

func (j *assembly) at(i parts.Instance) *placedPart {
	return seq.At(j.placed, func(p *placedPart) bool { return p.Instance == i })
}

// floats tells whether nothing that a joint says places its parts along their axis, nor a shoulder.
func (t *joint) floats() bool {
	_, placed := t.kind.place(t)
	return !placed && t.in.Place == nil && !t.meeting().Set() && t.onShoulder() == nil
}

// onShoulder is the shoulder of what is pressed in that stands on a face of the other part where nothing else is said: middle on
// middle brings it there, for the two are as long; nil without one.
func (t *joint) onShoulder() *part.Step {
	if !t.is(parts.PressKind) || t.meeting().Set() || t.in.Place != nil || !geom.Alike(t.a.step.LengthMm(), t.b.step.LengthMm()) {
		return nil
	}
	return cmp.Or(shoulder(t.a, 1), shoulder(t.a, -1))
}

// asWritten brings the parts that are placed into the order in which the joints name them, and each group into the frame of its
// first.
func (j *assembly) asWritten(all []*joint) {
	named := map[parts.Instance]int{}
	for _, t := range all {
		if t.axis {
			for _, i := range append([]parts.Instance{t.b.Instance(), t.a.Instance()}, t.others()...) {
				if _, before := named[i]; !before {
					named[i] = len(named)
				}
			}
		}
	}
	slices.SortStableFunc(j.placed, func(p, q placedPart) int { return named[p.Instance] - named[q.Instance] })
	frames := map[int]placement{}
	for k := range j.placed {
		p := &j.placed[k]
		if _, known := frames[p.group]; !known {
			frames[p.group] = p.at.inverse()
		}
		p.at = p.at.then(frames[p.group])
	}
}

// frames are how both parts lie in the frame of patterns.
func (j *assembly) frames(t *joint) (a, b placement) {
	a, b = placement{turn: t.in.Rotate.Deg, s: t.facing()}, still
	if s := t.beside; s != nil {
		if a = turnedBy(s.TurnDeg); s.OtherWay {
			a.s = -1
		}
	} else if p, q := j.at(t.a.Instance()), j.at(t.b.Instance()); !t.walls() && p != nil && q != nil {
		a, b = p.at, q.at
	}
	return a, b
}

// onOneAxis tells whether joints have put both parts on one axis already.
func (j *assembly) onOneAxis(one, two feature) bool {
	a, b := j.at(one.Instance()), j.at(two.Instance())
	return a != nil && b != nil && a.group == b.group
}

// join moves a group into the frame of another.
func (j *assembly) join(from, into int, move placement) {
	for k := range j.placed {
		if j.placed[k].group == from {
			j.placed[k].at, j.placed[k].group = j.placed[k].at.then(move), into
		}
	}
}

// agreeMm is how far two chains of joints may place a part apart. Common
// practice, no source: more is a wrong drawing and no tolerance.
const agreeMm = 0.5

// agrees checks a joint between two parts that other joints have placed.
func (t *joint) agrees(rel placement, a, b placedPart) {
	is := a.at.seenFrom(b.at)
	said := t.in.Meet.Set() || t.is(parts.BoltKind)
	switch {
	case is.s != rel.s && (said || t.in.OtherWay):
		t.refuse(t.in.Pos, plan.TurnedRound, plan.Named(t.a.title()))
	case said && math.Abs(is.z0-rel.z0) > agreeMm:
		t.refuse(t.in.Pos, plan.PlacedElsewhere, plan.Named(t.a.title()), plan.Of(plan.Mm, math.Abs(geom.Clean(is.z0-rel.z0))))
	case t.in.Rotate.Pos.Line != 0 && apart(is.turn, rel.turn) > alignDeg:
		t.refuse(t.in.Rotate.Pos, plan.TurnedElsewhere, plan.Named(t.a.title()), plan.Of(plan.Degree, is.turn), plan.Of(plan.Degree, rel.turn), plan.Named(words.Trim(is.turn, 3)))
	}
}

// members are the parts that hang together once the given joints are made,
// seen from part i, in order of appearance.
func (j *shop) members(i parts.Instance, made []*joint) []parts.Instance {
	return parts.Linked(i, seq.Map(made, (*joint).held))
}

// side are the parts that hang together with the first of a joint once the given joints are made, and
// whether the second is among them.
func (j *shop) side(t *joint, made []*joint) (with []parts.Instance, tied bool) {
	with = j.members(t.a.Instance(), made)
	return with, slices.Contains(with, t.b.Instance())
}

// tiedBy is the joint with which the two of a later one come to hang together; nil where they do not before it.
func (j *making) tiedBy(t *joint) *joint {
	for i := range j.before {
		if _, tied := j.side(t, j.before[:i+1]); tied {
			return j.before[i]
		}
	}
	return nil
}

// there are the parts that hang together with either end of a joint before it is made.
func (j *making) there(t *joint) []parts.Instance {
	return append(j.members(t.a.Instance(), j.before), j.members(t.b.Instance(), j.before)...)
}

// made are the joints that are made once this one is.
func (j *making) made(t *joint) []*joint { return append(slices.Clone(j.before), t) }

// later are the joints that come after one.
func (j *making) later(t *joint) []*joint { return j.all[slices.Index(j.all, t)+1:] }

// setting is by the two faces that a level joint names, or where these lie far apart by the end
// of the shaft's seat and the face of the hub that lie nearest to one another.
func (j *assembly) setting(t *joint) setting {
	m, is, st := t.meeting(), j.stands(t), t.a.step
	outMm := func(z float64, face parts.Face) float64 { // of a place of the first part, out of a face of the second
		return geom.Clean(face.Outward() * (is.z0 + is.s*z - faceMm(t.b.r, face.Outward())))
	}
	best := setting{end: string(m.First), outMm: outMm(faceMm(t.a.r, m.First.Outward()), m.Second), face: m.Second}
	if !t.is(parts.PressKind) || !m.Level || m.Below.Mm <= st.LengthMm() {
		return best
	}
	faces := []parts.Face{parts.Front, parts.Back}
	for i, z := range []float64{st.FromMm, st.ToMm} {
		for _, face := range faces {
			if out := outMm(z, face); math.Abs(out) < math.Abs(best.outMm) {
				best = setting{string(faces[i]) + " end of " + words.Spaced(st.Name), out, face, true}
			}
		}
	}
	return best
}

// onOwn is where the step of the other part of a joint lies along the axis of its own; false where one of the two has no place.
func (j *assembly) onOwn(t *joint, own, other feature) (s geom.Span, placed bool) {
	if j.at(t.a.Instance()) == nil || j.at(t.b.Instance()) == nil {
		return s, false
	}
	at := j.stands(t)
	if own.ref == t.a.ref {
		at = at.inverse()
	}
	return at.span(other.step.Span()), true
}

// stands is A in the coordinates of B as the two are placed, on one axis.
func (j *assembly) stands(t *joint) placement {
	return j.at(t.a.Instance()).at.seenFrom(j.at(t.b.Instance()).at)
}
