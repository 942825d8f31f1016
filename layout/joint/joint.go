package joint

import (
	"slices"
	"strings"

	"centrepop/layout/bolts"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/press"
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
	Through(in *parts.Joint) (hole string, outMm float64)
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
	dir     float64       // from its shoulder to what keeps it, +1 towards the shaft's back
	between []*part.Model // loose ones between shoulder and hub, as many times as there are of each
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

// making is the assembly at the moment one joint is made.
type making struct {
	*assembly
	before, all []*joint // of its cluster, in the order to make them
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

// has tells whether a part is one of a joint's two.
func (t *joint) has(i parts.Instance) bool { return t.a.Instance() == i || t.b.Instance() == i }

// refuse notes why the joint cannot be worked out, at a place of the input.
func (t *joint) refuse(pos parts.Pos, kind plan.ProblemKind, args ...plan.Arg) {
	p := plan.Problem{Kind: kind, Joint: t.in.Name.Value, Pos: pos, Args: args}
	p.What = t.w.Says(p)
	t.faults = append(t.faults, p)
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

func (t *joint) step(title string, do ...string) *plan.JointStep {
	s := plan.JointStep{Title: title, Do: slices.DeleteFunc(do, func(d string) bool { return d == "" })}
	t.out.Steps = append(t.out.Steps, s)
	return &t.out.Steps[len(t.out.Steps)-1]
}

// meeting is parts.Joint.Meeting.
func (t *joint) meeting() parts.Meeting {
	if t.b.group == nil {
		return t.in.Meet
	}
	return t.in.Meeting(t.b.group.Face)
}

// unkept tells whether a joint is a slide in which nothing on the shaft keeps the hub.
func (t *joint) unkept() bool { return t.in.Slide != nil && t.in.Slide.Unkept() }

// walls tells whether a joint has holes on a flange of a folded part, or on the top or
// the bottom of a bar.
func (t *joint) walls() bool { return t.a.onWall() || t.b.onWall() }

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

// need refuses a feature that a joint's kind cannot take.
func (t *joint) need(f feature, ok bool, what string) {
	if !ok {
		t.refuse(f.ref.Pos, plan.CannotJoin, plan.Named(f.text()), plan.Named(what))
	}
}

// reasons are why a joint has its place, by the numbers of the steps it comes after.
func (t *joint) reasons() []plan.Reason {
	made := slices.DeleteFunc(t.why, func(r rule) bool { return r.first.out == nil || r.first.out.N == 0 }) // a joint that cannot be made has no step
	slices.SortStableFunc(made, func(a, b rule) int { return a.first.out.N - b.first.out.N })
	return seq.Map(made, func(r rule) plan.Reason { return plan.Reason{Step: r.first.out.N, Why: r.why} })
}

// sound are the joints that nothing has been found against so far.
func sound(all []*joint) []*joint { return slices.DeleteFunc(slices.Clone(all), (*joint).refused) }

// between are the parts that a bolted joint clamps between its two.
func (j *shop) between(t *joint) string {
	return strings.Join(seq.Map(j.stack(t), feature.title), ", ")
}

func (j *shop) stack(t *joint) []feature { return seq.Map(t.in.Bolt.Stack, j.find) }

// betweenText names what is clamped between the two, nothing where that is nothing.
func (j *shop) betweenText(t *joint) string {
	if !t.is(parts.BoltKind) || len(t.in.Bolt.Stack) == 0 {
		return ""
	}
	return ", " + j.between(t) + " between them"
}

// figure adds a number to the joint.
func (t *joint) figure(label, value, source string) {
	t.out.Figures = append(t.out.Figures, plan.Figure{Label: label, Value: value, Source: source})
}

// ofPlace stands in what a step does for how the parts come to lie, until that is written.
const ofPlace = "\uE000"

// written numbers the steps and writes in them how the parts come to lie: of this piece, and of each of several
// that are the same work.
func (t *joint) written() {
	a, b := t.out.A, t.out.B
	one, each := strings.NewReplacer(ofPlace, t.out.How), strings.NewReplacer(ofPlace, "each in its place, below", a.Title, a.PartTitle, b.Title, b.PartTitle)
	for i := range t.out.Steps {
		s := &t.out.Steps[i]
		do := strings.Join(s.Do, " ")
		s.N, s.Alike, t.out.Told = i+1, each.Replace(do), t.out.Told || strings.Contains(do, ofPlace)
		for k := range s.Do {
			s.Do[k] = one.Replace(s.Do[k])
		}
	}
}

func (t *joint) caution(texts ...string) {
	t.out.Cautions = seq.Add(t.out.Cautions, texts...)
}

// problem notes something wrong with the joint that does not stop the sheets.
func (t *joint) problem(kind plan.ProblemKind, args ...plan.Arg) {
	t.add(plan.Problem{Kind: kind, Args: args})
}

func (t *joint) add(p plan.Problem) {
	p.Pos = t.in.Pos
	t.out.Problems = append(t.out.Problems, p)
}

// gripped tells whether a slide puts a shaft into a split ring, whose screw then holds it there.
func (t *joint) gripped() bool {
	return t.in.Slide != nil && t.a.r != nil && t.a.r.Clamp != nil && t.a.r.Clamp.Row.In == t.a.ref.Feature
}

// turns tells whether a joint is a shaft that turns in a plain bush.
func (t *joint) turns() bool { return t.unkept() && !t.gripped() }

// runs tells whether one part of a joint turns in the other, but for a bearing: a shaft in a plain bush, or a screw in its nut.
func (t *joint) runs() bool { return t.turns() || t.in.Screw != nil && !t.in.Home() }

// playFigure says the play of the bore, by the drawings and as more words have it.
func (t *joint) playFigure(p *plan.SlidePlan, as string) {
	t.figure("play of the bore", t.w.Fine(p.PlayMm.Min*1000, p.PlayMm.Max*1000)+" on diameter", "limits on the drawings"+as)
}

// head is the form of the heads, and headsMm how deep their tops, or their seats in counterbores, lie under the face of a
// part; below 0 they stand proud of their cones.
func (t *joint) head() bolts.Head { return bolts.Head(t.in.Bolt.Head) }

// onBarEnd are the bar whose end is welded, and what it stands on; ok is false where no end of a bar is.
func (t *joint) onBarEnd() (bar, on feature, ok bool) {
	bar, on = t.a, t.b
	if _, end := bar.barEnd(); !end {
		bar, on = on, bar
	}
	_, ok = bar.barEnd()
	return bar, on, ok
}

// coverOf names what a joint bolts to a housing.
func (t *joint) coverOf(housing feature) string {
	if _, cover, ok := t.from(housing.Instance()); ok {
		return cover.title()
	}
	return t.a.title()
}

// derived tells whether the length of a weld is that of the corners that its parts make.
func (t *joint) derived() bool { return len(t.out.Weld.Corners) > 0 && !t.in.Weld.Length.Set() }

func (t *joint) headsMm(f feature) float64 {
	s, ok := t.bolt.Sunk()
	if h := f.group.Hole; ok && t.head() == bolts.Countersunk && f.Instance() == t.a.Instance() && f.ref.Feature == t.a.ref.Feature && h != nil && h.Countersink != nil {
		return s.DeepMm(h.Countersink.Diameter.Mm)
	}
	return f.group.SunkMm()
}

// rest is the step after a press, which a weld does not wait for: it carries the load, and its heat ends what the rest is for.
func (t *joint) rest(weldFollows bool) {
	if !weldFollows {
		t.step("Rest", "Leave "+words.Trim(press.RestHours, 0)+" h before the full load (DIN 7190, from memory).")
	}
}

// boltProblem takes a problem of a bolt's length into the plan.
func boltProblem(p bolts.Problem) plan.Problem {
	out := plan.Problem{Kind: plan.ProblemKind(p.Kind)}
	out.Args = seq.Map(p.Mm, func(mm float64) plan.Arg { return plan.Of(plan.Mm, geom.Clean(mm)) })
	if p.Of != "" {
		out.Args = append(out.Args, plan.Named(p.Of))
	}
	return out
}

// roomC is the temperature sizes are measured at, ISO 1.
const roomC = 20.0

// faceMm is where the front, outward -1, or the back of a part lies on its axis.
func faceMm(r *part.Model, outward float64) float64 {
	if back(outward) {
		return r.LengthMm()
	}
	return 0
}

// shoulderOf is the shoulder of a step in words; one whose name says so is only a step.
func shoulderOf(step string) string {
	return words.Either(strings.Contains(step, "shoulder"), "the step "+step, "the shoulder "+step)
}

// stepsAt are the steps of one side of a part of which something lies on a stretch of its axis.
func stepsAt(r *part.Model, inside bool, on geom.Span) []*part.Step {
	return seq.Keep(r.Side(inside), func(s *part.Step) bool { return s.Span().Meets(on) })
}

// closedMm is what a joint of faces that are not turned gapes at most beside its bolts. Common practice, no source.
const closedMm = 0.1
