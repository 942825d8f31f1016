package joint

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"centrepop/layout/bolts"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Seams is what only the solids of a job know of its joints, the last of those given being the one asked
// for: see machine.Seams.
type Seams interface {
	Corners(joints []*plan.JointPlan, legMm float64, ends bool) (corners []plan.Corner, flush []string)
	SwingMm(joints []*plan.JointPlan, about plan.JointEnd, with []plan.JointEnd) float64
	LongMm(joints []*plan.JointPlan, about plan.JointEnd, with []plan.JointEnd) float64
	BoreMm(joints []*plan.JointPlan, plate, round plan.JointEnd, boreMm float64) map[string]float64
	GapMm(joints []*plan.JointPlan) (mm float64, tied bool)
	PastMm(in *parts.Joint) [4]float64
}

// shop is what the joints are worked out from; nothing changes it.
type shop struct {
	job    *parts.Job
	w      words.Writer
	models []*part.Model // as in the job
	seams  Seams
	short  map[string]bool // bars that are sawn for the gaps of their welds
}

// assembly is the shop with every part that shares an axis with another in its
// place, in order of appearance.
type assembly struct {
	*shop
	placed []placedPart
}

// making is the assembly at the moment one joint is made.
type making struct {
	*assembly
	before, all []*joint // of its cluster, in the order to make them
}

// joint is one joint on its way to a JointPlan, with what its kind alone knows of it.
type joint struct {
	in      *parts.Joint
	kind    kind
	w       words.Writer
	a, b    feature
	out     *plan.JointPlan
	axis    bool          // the parts share an axis
	guessed bool          // and nothing says where along it
	rel     placement     // then that of A in the coordinates of B
	fixed   bool          // what it belongs to stands on its anchors
	beside  *plan.Beside  // the place of bolted parts that do not; else nil
	stacked []plan.Beside // of the parts between the two, in part A's frame
	marked  []string      // the first mark of the clock, in words; nil if none
	places  bool          // it places the parts: scribed before they are joined, not as a witness after
	why     []rule
	faults  []plan.Problem // what keeps it from being worked out
	flaws   []plan.Problem // what is wrong with its place in the order

	ofBolts
	ofPress
	ofBearing
	ofHub
}

// ofBolts is what is known of a bolted joint.
type ofBolts struct {
	bolt   *bolts.Bolt
	boltMm float64   // its major diameter
	bolts  []plan.XY // where they stand in the frame of patterns
	shifts feature   // along slots: the part that is set, that with less on it
	strips bool      // the strength of its hole's thread says how far it goes in
	sleeve *joint    // in whose step the sleeves for its bolts go into a bar; nil for its own
	ends   string    // which end of a made stud goes to which part; empty where they are alike
	hub    *joint    // of an end plate: that of the hub, past its seat, which it lies on; nil where it lies on its shaft
}

// ofPress is what is known of a press.
type ofPress struct {
	inward bool       // the shaft goes into the hub, which is the heavier
	frame  string     // what the side that stays stands in, which goes into no press; else empty
	built  bool       // the shaft stands by then in what nobody lifts into a hub that is heated
	screw  *drawScrew // that draws its shaft in then; nil where none can
}

// ofBearing is what is known of a bearing.
type ofBearing struct {
	through     *joint    // of a ball bearing: in the step of that it goes into the housing, before the shaft goes through both
	outer       bool      // of a ball bearing: another lies between it and the shoulder of its bore
	lid         mounting  // where a cover's spigot goes into its bore: how its cup sits against that
	draw        *drawBolt // where its cone is drawn on; else nil
	cups, cones []*joint  // bearings whose rings are mounted in the steps of this one
}

// ofHub is what is known of a hub that slides on.
type ofHub struct {
	dir float64 // from its shoulder to what keeps it, +1 towards the shaft's back
}

type kind interface {
	// ends refuses features that cannot be joined so.
	ends(s *shop, t *joint)
	title(t *joint) string
	// place is A in the coordinates of B where neither a place nor faces of the joint say it.
	place(t *joint) (at placement, ok bool)
	// work fills t.out with the numbers, the steps and what to check.
	work(m *making, t *joint)
	// buy lists what the merchant delivers for it.
	buy(s *shop, t *joint, list *buying)
	// massKg is what holds the parts together, seals and weld metal left out.
	massKg(s *shop, t *joint) float64
	// tools lists what the shop makes for it; before are the joints made before.
	tools(j *assembly, t *joint, before []*joint, list *tooling)
	// traps finds the wrong ways to put on what is moved, and what makes them impossible.
	traps(j *making, t *joint, moved []parts.Instance)
}

// plain is a kind of joint that weighs nothing, needs no tool and places nothing by itself, and whose round
// parts may be turned.
type plain struct{}

func (plain) place(*joint) (at placement, ok bool)              { return at, false }
func (plain) massKg(*shop, *joint) float64                      { return 0 }
func (plain) tools(*assembly, *joint, []*joint, *tooling)       {}
func (plain) traps(j *making, t *joint, moved []parts.Instance) { j.witness(t, moved) }

// kinds are all kinds of joint that the reader knows.
var kinds = map[parts.JointKind]kind{
	parts.PressKind:   pressKind{},
	parts.WeldKind:    weldKind{},
	parts.BoltKind:    boltKind{},
	parts.BearingKind: bearingKind{},
	parts.SlideKind:   slideKind{},
}

// kindOf is the kind of a joint: of a bearing by its rolling bodies.
func kindOf(in *parts.Joint) kind {
	if in.Bearing != nil && in.Bearing.Ball {
		return ballKind{}
	}
	return kinds[in.Kind]
}

// placement takes a part's coordinates to those of a frame: z' = z0 + s z,
// clock' = turn + s clock, s being −1 for a part that is turned end for end.
type placement struct {
	z0, turn, s float64
}

func (p placement) then(q placement) placement { // q after p
	return placement{q.z0 + q.s*p.z0, geom.OnClock(q.turn + q.s*p.turn), q.way(p.s)}
}

// way is a direction along the axis of a part, 1 or −1, in the frame; and one in the frame along that of the part.
func (p placement) way(dir float64) float64 { return p.s * dir }

// turned tells whether the part looks the other way than the frame.
func (p placement) turned() bool { return p.s < 0 }

func (p placement) inverse() placement {
	return placement{-p.s * p.z0, geom.OnClock(-p.s * p.turn), p.s}
}

// seenFrom is a placement in the coordinates of what another places in the same frame.
func (p placement) seenFrom(q placement) placement { return p.then(q.inverse()) }

// clock is the frame's clock angle of a part's.
func (p placement) clock(deg float64) float64 { return geom.OnClock(p.turn + p.s*deg) }

// point is the frame's x and y of a point seen from the part's front.
func (p placement) point(q plan.XY) plan.XY {
	sin, cos := geom.SinCosDeg(p.turn)
	x := p.s * q.XMm
	return plan.XY{XMm: geom.Clean(x*cos + q.YMm*sin), YMm: geom.Clean(q.YMm*cos - x*sin)}
}

// span is where a stretch of the part lies in the frame.
func (p placement) span(own geom.Span) geom.Span {
	return geom.Between(p.z0+p.s*own.FromMm, p.z0+p.s*own.ToMm)
}

// along is where a part lies in the frame.
func (p *placedPart) along() geom.Span { return p.at.span(geom.Span{ToMm: p.r.LengthMm()}) }

// still moves nothing, turnedBy turns clockwise.
var still = placement{s: 1}

func turnedBy(deg float64) placement { return placement{turn: deg, s: 1} }

// apart is the angle between two clock angles, 0 to 180.
func apart(a, b float64) float64 {
	d := geom.OnClock(a - b)
	return math.Min(d, 360-d)
}

// placedPart is a part in a group of parts on one axis.
type placedPart struct {
	parts.Instance
	r     *part.Model
	group int
	at    placement
}

// feature is what a JointRef points at. At most one of step, group and radial
// is set; none for TOP and for an outline that is not round.
type feature struct {
	ref    parts.JointRef
	r      *part.Model
	step   *part.Step
	group  *part.Group
	radial *part.Radial
	keyway *part.Keyway
	nth    int // of radial, from 1; 0 is all
}

// Instance is the copy of a part that it is on.
func (f feature) Instance() parts.Instance { return f.ref.Instance() }

// title names the part for people, with the copy where there are several.
func (f feature) title() string { return copyTitle(f.r, f.ref.Copy) }

func copyTitle(r *part.Model, n int) string {
	t := r.Out.Title
	t += words.When(r.Part.Quantity > 1, " "+strconv.Itoa(n))
	return t
}

func (f feature) text() string { return f.title() + " " + words.Spaced(f.ref.Feature) }

// refuse notes why the joint cannot be worked out, at a place of the input.
func (t *joint) refuse(pos parts.Pos, kind plan.ProblemKind, args ...plan.Arg) {
	p := plan.Problem{Kind: kind, Joint: t.in.Name.Value, Pos: pos, Args: args}
	p.What = t.w.Says(p)
	t.faults = append(t.faults, p)
}

// is tells whether a joint is of one of some kinds.
func (t *joint) is(kinds ...parts.JointKind) bool { return slices.Contains(kinds, t.in.Kind) }

// forGood tells whether a joint does not come apart again.
func (t *joint) forGood() bool { return t.is(parts.WeldKind, parts.PressKind) }

// ofKind are those of some joints that are of a kind.
func ofKind(all []*joint, kind parts.JointKind) []*joint {
	return seq.Keep(all, func(t *joint) bool { return t.is(kind) })
}

// bearingIn is the first bearing of some joints in a housing, nil where there is none; bearingOn the first on a
// shaft.
func bearingIn(all []*joint, housing parts.Instance) *joint {
	return seq.First(ofKind(all, parts.BearingKind), func(t *joint) bool { return t.b.Instance() == housing })
}

func bearingOn(all []*joint, shaft ...parts.Instance) *joint {
	return seq.First(ofKind(all, parts.BearingKind), func(t *joint) bool { return slices.Contains(shaft, t.a.Instance()) })
}

// bolted tells whether one of some joints puts bolts into a part.
func bolted(all []*joint, i parts.Instance) bool {
	return slices.ContainsFunc(ofKind(all, parts.BoltKind), func(t *joint) bool { return t.has(i) })
}

func (t *joint) refused() bool { return len(t.faults) > 0 }

// model finds a part; the loader has checked that it is there.
func (j *shop) model(name string) *part.Model {
	return j.models[slices.IndexFunc(j.models, func(r *part.Model) bool { return r.Part.Name.Value == name })]
}

func (j *shop) find(ref parts.JointRef) feature {
	r, name := j.model(ref.Part), ref.Feature
	radial := func(name string) *part.Radial {
		return seq.At(r.Radials, func(m *part.Radial) bool { return m.In.Name.Value == name })
	}
	f := feature{ref: ref, r: r, step: r.StepNamed(name), radial: radial(name)}
	f.group = seq.At(r.Groups, func(g *part.Group) bool { return g.Group.Name == name })
	f.keyway = seq.At(r.Keyways, func(k *part.Keyway) bool { return k.In.Name.Value == name })
	if base, n, ok := parts.Numbered(name); ok && f.step == nil && f.group == nil && f.radial == nil && f.keyway == nil {
		f.radial, f.nth = radial(base), n
	}
	return f
}

// onWall tells whether a feature is a group of holes on a flange of a folded part, or
// on the top or the bottom of a bar.
func (f feature) onWall() bool { return f.group != nil && f.group.OnWall() }

// plane is where a face of what a group of holes goes through lies, and how much
// metal lies behind it.
func (f feature) plane(face parts.Face) (zMm, thickMm float64, ok bool) {
	return f.r.PlaneOf(f.group, face)
}

// points are the centres of a hole group seen from the part's front, or from the
// front of the wall that it is on.
func (f feature) points() []plan.XY {
	switch {
	case f.group == nil:
		return nil
	case f.group.Face == parts.Back:
		return flipped(f.group.OwnMm())
	}
	return f.group.OwnMm()
}

// clocks are the clock angles of a feature seen from the part's front.
func (f feature) clocks() []float64 {
	switch {
	case f.keyway != nil:
		return []float64{f.keyway.Row.ClockDeg}
	case f.radial != nil:
		rows := f.radial.Rows
		if f.nth > 0 {
			rows = rows[min(f.nth-1, len(rows)):min(f.nth, len(rows))]
		}
		return seq.Map(rows, func(row plan.RadialRow) float64 { return row.ClockDeg })
	case f.group != nil && !f.onWall():
		off := func(q plan.XY) bool { return geom.Over(q.LengthMm(), 0) }
		return seq.Map(seq.Keep(f.points(), off), geom.ClockDeg)
	case f.ref.Feature == "top":
		return []float64{0}
	}
	return nil
}

// meeting is parts.Joint.Meeting.
func (t *joint) meeting() parts.Meeting {
	if t.b.group == nil {
		return t.in.Meet
	}
	return t.in.Meeting(t.b.group.Face)
}

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

// along tells whether a shaft turns in a bush, and other joints say where along the axis.
func (t *joint) along() bool { return t.unkept() && t.in.Place == nil && !t.meeting().Set() }

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

// place puts every joined part on the axis of its assembly, by what is said of it before what is guessed: in
// whatever order the joints are written, a part has one place.
func (s *shop) place(all []*joint) *assembly {
	j := &assembly{shop: s}
	for _, t := range s.surest(all) {
		j.put(t, all)
	}
	j.asWritten(all)
	return j
}

// put places both parts of a joint to each other, if they share an axis, and what is clamped between them.
func (j *assembly) put(t *joint, all []*joint) {
	if t.beside != nil || t.walls() {
		if t.walls() && t.in.Place != nil {
			t.refuse(t.in.Place.Pos, plan.PlaceIdle, plan.Named(t.a.title()))
		}
		if t.walls() || !j.onOneAxis(t.a, t.b) {
			t.stacked = j.besideStack(t)
			return
		}
		t.beside = nil
	}
	rel, ok := j.placing(t, all)
	if t.axis, t.rel = ok, rel; !ok {
		if t.cutTo() && t.in.Rotate.Pos.Line != 0 {
			t.refuse(t.in.Rotate.Pos, plan.TurnIdle, plan.Named(t.a.title()), plan.Named(t.b.title()))
		}
		return
	}
	for _, f := range []feature{t.b, t.a} { // each part first in a group of its own
		if j.at(f.Instance()) == nil {
			j.placed = append(j.placed, placedPart{f.Instance(), f.r, len(j.placed), still})
		}
	}
	if a, b := *j.at(t.a.Instance()), *j.at(t.b.Instance()); a.group == b.group {
		t.agrees(rel, a, b)
	} else {
		t.guessed = t.floats()
		j.join(a.group, b.group, a.at.inverse().then(rel.then(b.at)))
	}
	j.placeStack(t)
	j.placePlate(t)
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

// surest are joints in the order in which they place their parts: what says where, such as faces, a shoulder or holes about
// one axis; bearings of which nothing says which way round their parts look; other holes, which need not share an axis; the
// second ball bearing on a seat, for the one against its shoulder says where the shaft is; what nothing is said of; and cones
// that a nut holds. It notes which bolted parts the holes place off the axis.
func (j *shop) surest(all []*joint) []*joint {
	last := map[*joint]int{}
	for _, t := range all {
		m, mounted := mounting{}, false
		if t.is(parts.BoltKind) {
			t.beside = j.besides(t)
		} else if t.is(parts.BearingKind) {
			m, mounted = t.mount()
		}
		switch {
		case t.beside != nil || t.walls():
			last[t] = 2
		case mounted && m.fixed == nil:
			last[t] = 5
		case t.floats():
			last[t] = 4
		case slices.ContainsFunc(all, t.second):
			last[t] = 3
		case t.is(parts.BearingKind) && !t.in.OtherWay && !t.in.Meet.Set() && t.in.Place == nil:
			last[t] = 1
		}
	}
	return slices.SortedStableFunc(slices.Values(all), func(p, q *joint) int { return last[p] - last[q] })
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

// from are a joint's end on a part and its other one; ok is false for another part.
func (t *joint) from(i parts.Instance) (own, other feature, ok bool) {
	switch i {
	case t.a.Instance():
		return t.a, t.b, true
	case t.b.Instance():
		return t.b, t.a, true
	}
	return own, other, false
}

// has tells whether a part is one of a joint's two.
func (t *joint) has(i parts.Instance) bool { return t.a.Instance() == i || t.b.Instance() == i }

// takes tells whether a part is one of a joint's two, or clamped with them.
func (t *joint) takes(i parts.Instance) bool {
	return t.has(i) || slices.ContainsFunc(t.in.Clamped(), func(r parts.JointRef) bool { return r.Instance() == i })
}

// ways are the two ends of a joint, either first.
func (t *joint) ways() [2][2]feature { return [2][2]feature{{t.a, t.b}, {t.b, t.a}} }

// held are all parts that the joint holds: what it clamps and its two ends.
func (t *joint) held() []parts.Instance { return append(t.others(), t.a.Instance(), t.b.Instance()) }

// others are the parts clamped with the two ends.
func (t *joint) others() []parts.Instance { return seq.Map(t.in.Clamped(), parts.JointRef.Instance) }
