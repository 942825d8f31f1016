// Package joint works out how the parts of a job meet: where each lies in its
// assembly, in which order the joints are made, and the numbers and steps of
// each press fit, weld, bolted joint and bearing. Lengths are millimetres and
// angles degrees. What is wrong with a joint travels as a plan.Problem.
//
// Standards: ISO 286-1 for seats, ISO 492 for rolling bearings; packages press,
// weld, bolts and fits name those that they compute by.
package joint

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Resolve fills the plan's joints and lists from the parts worked out, in the
// order of job.Parts. Each stage hands its result to the next: the ends of the
// joints, the assembly they make, the order to make them in, then joint by
// joint. What keeps a joint from being worked out is returned, and the joint
// left out; the others go on.
func Resolve(pl *plan.Plan, job *parts.Job, models []*part.Model, seams Seams) []plan.Problem {
	s := &shop{job: job, w: words.Writer{Units: job.Units}, models: models, seams: seams}
	all := s.read()
	a := s.place(sound(all))
	order := a.order(sound(all))
	var made []*joint
	together := connected(order)
	madeOf := map[parts.Instance][]*joint{}
	s.sawShort(a, together, order)
	for _, t := range order {
		of := together.of[t]
		m := &making{assembly: a, before: madeOf[of], all: together.joints[of]}
		if m.joint(t); t.refused() {
			continue
		}
		made, madeOf[of] = append(made, t), append(madeOf[of], t)
		t.out.N = len(made)
		pl.Joints = append(pl.Joints, t.out)
	}
	a.pieces(made)
	pl.Bought = s.bought(made)
	pl.Cuts = s.cuts()
	pl.Bars = s.bars()
	pl.Tools = a.tools(made)
	pl.Lifts = lifts(pl, made)
	return seq.Flat(all, func(t *joint) []plan.Problem { return t.faults })
}

// bodies are parts that hang together: each leads to another of its body, but one that stands for all of it.
type bodies map[parts.Instance]parts.Instance

// of is the part that stands for the body of a part.
func (b bodies) of(i parts.Instance) parts.Instance {
	for next, tied := b[i]; tied; next, tied = b[i] {
		if far, on := b[next]; on { // the next time it is nearer
			b[i] = far
		}
		i = next
	}
	return i
}

// tie makes the bodies of two parts one.
func (b bodies) tie(x, y parts.Instance) {
	if x, y = b.of(x), b.of(y); x != y {
		b[x] = y
	}
}

// clusters are the joints that hang together in the finished machine, by a
// part that stands for each cluster, in the order given.
type clusters struct {
	of     map[*joint]parts.Instance
	joints map[parts.Instance][]*joint
}

// connected finds the clusters: two joints with a part in common are in one.
func connected(order []*joint) clusters {
	machine := bodies{}
	for _, t := range order {
		for _, x := range t.held() {
			machine.tie(t.a.Instance(), x)
		}
	}
	out := clusters{map[*joint]parts.Instance{}, map[parts.Instance][]*joint{}}
	for _, t := range order {
		c := machine.of(t.a.Instance())
		out.of[t], out.joints[c] = c, append(out.joints[c], t)
	}
	return out
}

// sound are the joints that nothing has been found against so far.
func sound(all []*joint) []*joint { return slices.DeleteFunc(slices.Clone(all), (*joint).refused) }

func (j *shop) read() []*joint {
	var all []*joint
	for _, in := range j.job.Joints {
		first, second := in.Ends()
		t := &joint{in: in, kind: kindOf(in), w: j.w, a: j.find(first), b: j.find(second)}
		t.kind.ends(j, t)
		all = append(all, t)
	}
	for _, t := range all {
		t.covered(all)
		t.outer = slices.ContainsFunc(ofKind(all, parts.BearingKind), t.behind)
	}
	return all
}

// need refuses a feature that a joint's kind cannot take.
func (t *joint) need(f feature, ok bool, what string) {
	if !ok {
		t.refuse(f.ref.Pos, plan.CannotJoin, plan.Named(f.text()), plan.Named(what))
	}
}

// listed says how a part stands in the job that is pressed into a hole, where the feature is one: no joint does that.
func (f feature) listed() string {
	if f.group == nil || f.slotted() {
		return ""
	}
	return "; no joint presses into one of its holes: list the part under loose:, with how: pressed into it, fits of both and lies: for its place"
}

// round tells whether a feature is a plain cylinder, inside or outside.
func round(f feature, inside bool) bool {
	return f.step != nil && f.step.Inside == inside && f.step.Size.Thread == nil
}

// reasons are why a joint has its place, by the numbers of the steps it comes after.
func (t *joint) reasons() []plan.Reason {
	made := slices.DeleteFunc(t.why, func(r rule) bool { return r.first.out == nil || r.first.out.N == 0 }) // a joint that cannot be made has no step
	slices.SortStableFunc(made, func(a, b rule) int { return a.first.out.N - b.first.out.N })
	return seq.Map(made, func(r rule) plan.Reason { return plan.Reason{Step: r.first.out.N, Why: r.why} })
}

// joint works out one joint of the final order.
func (j *making) joint(t *joint) {
	if t.refused() { // it waits for others that wait for it
		return
	}
	t.out = &plan.JointPlan{Name: t.in.Name.Value, Kind: t.in.Kind, A: t.a.end(), B: t.b.end(), Why: t.reasons(), Beside: t.beside, Stack: t.stacked}
	t.out.How = j.how(t)
	j.slidesAlong(t)
	for _, p := range t.flaws {
		t.add(p)
	}
	j.align(t)
	j.thickYet(t)
	if t.axis && !t.refused() {
		t.out.Placed = j.onAxis(t)
	}
	t.kind.work(j, t)
	t.out.Title = t.kind.title(t)
	if t.refused() {
		t.out.Placed = nil
	}
	if moved, tied := j.side(t, j.before); t.axis && !t.refused() && !tied { // else other joints hold it
		t.kind.traps(j, t, moved)
	}
	if !t.refused() {
		j.finish(t)
	}
}

func (f feature) end() plan.JointEnd {
	e := plan.JointEnd{Part: f.ref.Part, Copy: f.ref.Copy, Title: f.title(), PartTitle: f.r.Out.Title, Feature: f.ref.Feature}
	if s := f.step; s != nil {
		e.DiameterMm, e.MinMm, e.MaxMm, e.Inside = geom.Clean(s.Size.NominalMm), geom.Clean(s.Size.MinMm), geom.Clean(s.Size.MaxMm), s.Inside
		e.FromMm, e.ToMm = geom.Clean(s.FromMm), geom.Clean(s.ToMm)
	}
	if f.group != nil {
		e.DiameterMm = f.group.Size.FinishedMm
	}
	return e
}

// between are the parts that a bolted joint clamps between its two.
func (j *shop) between(t *joint) string {
	return strings.Join(seq.Map(j.stack(t), feature.title), ", ")
}

// betweenText names what is clamped between the two, nothing where that is nothing.
func (j *shop) betweenText(t *joint) string {
	if !t.is(parts.BoltKind) || len(t.in.Bolt.Stack) == 0 {
		return ""
	}
	return ", " + j.between(t) + " between them"
}

// how says in words how the parts stand to each other.
func (j *making) how(t *joint) string {
	switch p := t.in.Place; {
	case t.out.Beside != nil:
		return t.besideText(j.w) + j.betweenText(t)
	case p != nil && t.axis && t.enters():
		return t.alongText() + j.topText(t)
	case p != nil:
		return j.placeText(t, p)
	case t.axis:
		return j.axisText(t)
	case t.unkept():
		return "where the other joints have them"
	}
	return j.cutText(t)
}

// axisText says how two parts stand to each other that meet on one axis.
func (j *making) axisText(t *joint) string {
	m, text := t.meeting(), "fronts looking the same way"
	switch {
	case t.along():
		text = "how far it goes in is not said"
	case !m.Set() && slices.ContainsFunc(j.before, t.joins):
		text = "as they were put together"
	case m.Level:
		text = j.setting(t).words(j.w, t.a.title(), t.b.title())
	case m.Set():
		text = t.againstText()
		if s := j.seatedBy(t); s != nil {
			text = shoulderOf(words.Spaced(s.Name)) + " of " + t.a.title() + " on the " + string(m.Second) + " of " + t.b.title()
		} else if j.spacerMm(t) > 0 {
			text = string(m.First) + " of " + t.a.title() + " " + j.w.Size(j.spacerMm(t)) + " from the " + string(m.Second) + " of " + t.b.title()
		}
	case j.stands(t).turned():
		text = "fronts looking opposite ways"
	}
	if t.is(parts.BearingKind) || t.turns() { // its shaft turns
		return text
	}
	if stop := t.onShoulder(); stop != nil && !slices.ContainsFunc(j.before, t.joins) {
		text += ", " + shoulderOf(words.Spaced(stop.Name)) + " of " + t.a.title() + " on " + t.b.title()
	}
	return text + j.betweenText(t) + j.topText(t)
}

// slidesAlong notes that nothing says how far a part goes into the other, in which it could be pushed along.
func (j *making) slidesAlong(t *joint) {
	if t.guessed && (t.enters() || t.unkept()) && !geom.Alike(t.a.step.LengthMm(), t.b.step.LengthMm()) {
		t.problem(plan.AlongLacking, plan.Named(t.a.title()), plan.Named(t.b.title()))
	}
}

// seatedBy is the shoulder of what goes into a bore that lies on the face that its joint names; nil where an end of it does.
func (j *making) seatedBy(t *joint) *part.Step {
	if !t.enters() || t.a.step.Inside {
		return nil
	}
	at := j.stands(t)
	for _, dir := range []float64{-1, 1} {
		if s := shoulder(t.a, dir); s != nil && geom.Alike(at.z0+at.s*end(t.a.step, dir), faceMm(t.b.r, t.meeting().Second.Outward())) {
			return s
		}
	}
	return nil
}

// againstText says which faces meet, or which shoulder of its shaft a bush stands against.
func (t *joint) againstText() string {
	m := t.meeting()
	if t.unkept() {
		if stop := shoulder(t.b, -m.Second.Outward()); stop != nil {
			return string(m.First) + " of " + t.a.title() + " against " + shoulderOf(words.Spaced(stop.Name)) + " of " + t.b.title()
		}
	}
	return string(m.First) + " of " + t.a.title() + " on the " + string(m.Second) + " of " + t.b.title()
}

// cutText says how two parts without a common axis stand to each other by the way their ends are cut.
func (j *making) cutText(t *joint) string {
	switch cope, stand := t.copeText(), t.stand(); {
	case t.corner():
		return words.Spaced(t.a.ref.Feature) + " end of " + t.a.title() + " to the " + words.Spaced(t.b.ref.Feature) + " end of " + t.b.title() + ", cut to cut, long points outside, fronts level"
	case cope != "":
		return cope
	case stand != nil:
		return stand.Text(t.w, t.a.title(), t.b.title())
	}
	set := "square and place by the drawing"
	if _, tied := j.side(t, j.before); tied {
		return t.a.text() + " against " + t.b.text() + ", as the two stand already"
	}
	if by := t.leansBy(); by != "" {
		set = "its cut flat on it, so that it leans by " + by + "; its place by the drawing"
	}
	return t.a.text() + " against " + t.b.text() + "; " + set
}

// stands is A in the coordinates of B as the two are placed, on one axis.
func (j *assembly) stands(t *joint) placement {
	return j.at(t.a.Instance()).at.seenFrom(j.at(t.b.Instance()).at)
}

// noTop tells whether one of the two parts of a joint is alike all round, with no mark at its TOP, and in no other
// joint: which way it is turned is nothing.
func (j *making) noTop(t *joint) bool {
	return len(t.in.InLine) == 0 && slices.ContainsFunc([]feature{t.a, t.b}, func(f feature) bool {
		p := f.r.Part
		return p.AllRound() && p.Top.Value == "" && !slices.ContainsFunc(j.job.Joints, func(o *parts.Joint) bool { return o != t.in && o.Holds(p.Name.Value) })
	})
}

// topText says which way TOP of the first part of a joint on one axis looks; empty where that is nothing.
func (j *making) topText(t *joint) string {
	if j.noTop(t) {
		return ""
	}
	return ", TOP of " + t.a.title() + " at " + words.Angle(j.stands(t).turn) + " of " + t.b.title()
}

// enters tells whether one of two parts lies round in a bore of the other, welded or pressed there.
func (t *joint) enters() bool {
	return t.forGood() && t.a.step != nil && t.b.step != nil && t.a.step.Inside != t.b.step.Inside
}

// alongText is where along its axis a place has a face of what enters.
func (t *joint) alongText() string {
	p, how := t.in.Place, " level with"
	switch along := parts.Face(p.On).Outward() * p.Gap.Mm; {
	case along > 0:
		how = " " + t.w.Size(along) + " behind"
	case along < 0:
		how = " " + t.w.Size(-along) + " in front of"
	}
	return p.With + " of " + t.a.title() + how + " the " + p.On + " of " + t.b.title()
}

// copeText says where on a round the coped end of a bar sits; empty where no place is said.
func (t *joint) copeText() string {
	end, ok := t.a.barEnd()
	if !ok {
		return ""
	}
	e := t.a.r.Part.Bar.End(end)
	if e.Place == nil || e.Onto.Part != t.b.ref.Part {
		return ""
	}
	from := cmp.Or(e.Place.From, parts.Front)
	return t.a.text() + " on " + t.b.text() + " at clock " + words.Angle(e.Place.Clock.Deg) + ", square to it, its middle " + t.w.Size(e.Place.Axial.Mm) +
		" from the " + string(from) + " of " + t.b.title() + ", fronts looking the same way"
}

// placeText says where a part stands on another by the faces and distances of
// the joint.
func (j *shop) placeText(t *joint, p *parts.Place) string {
	w, on := j.w, p.On+" of "+t.b.title()
	if long := t.a.r.LengthMm(); t.a.helical() && p.OnAxis() && -p.Gap.Mm >= long && j.flightsOn(t.b.Instance()) == 1 {
		near := string(parts.Face(p.With).Other())
		return near + " end of " + t.a.title() + " " + w.Size(math.Abs(p.Gap.Mm+long)) + " and its " + p.With + " end " + w.Size(math.Abs(p.Gap.Mm)) +
			" from the " + on + "; it starts anywhere round it"
	}
	text := p.With + " of " + t.a.title() + " on the " + on + j.fromText(t, p) + j.originText(t, p)
	if p.Looks != "" {
		end := words.Either(p.Edge(), "front", "TOP")
		text += ", " + end + " " + t.looksText(p)
		if to := lengthTo(p); to != "" && t.a.r.Part.Bar != nil {
			text += ", its right end to the " + to + " of " + t.b.title()
		}
		text += t.leansText(p)
	}
	switch on := t.b.roundMm(); {
	case p.Gap.Mm > 0:
		text += ", " + w.Size(p.Gap.Mm) + " clear of it"
	case p.Gap.Mm < 0 && on > 0 && t.a.roundMm() > on:
		text += ", " + w.Size(-p.Gap.Mm) + " over it"
	case p.Gap.Mm < 0:
		text += ", " + w.Size(-p.Gap.Mm) + " inside it"
	}
	return text
}

// fromText says how far a part stands from the edges of what it stands on.
func (j *shop) fromText(t *joint, p *parts.Place) (text string) {
	for i, mm := range []parts.Length{p.FromLeft, p.FromRight, p.FromBottom, p.FromTop} {
		if !mm.Set() {
			continue
		}
		edge := []string{"left", "right", "bottom", "top"}[i]
		from := "its " + edge + " edge"
		if end := t.b.r.Part.BarEnd(edge); j.short[t.b.ref.Part] && end != nil && end.Mitred() {
			from = "the outside of its frame at the " + edge // its own end is sawn short of that
		}
		text += j.edgeText(mm.Mm, from)
	}
	return text
}

// edgeText says how far a part stands from an edge, or past it where that is less than 0.
func (j *shop) edgeText(mm float64, edge string) string {
	return ", " + j.w.Size(math.Abs(mm)) + words.Either(mm < 0, " past ", " from ") + edge
}

// middleAt is where the middle of the face that a part stands with lies from the other's middle, seen on that
// face; its origin, and not known, where either is no middle that a person at the bench finds.
func (t *joint) middleAt(p *parts.Place) (at plan.XY, known bool) {
	at = plan.XY{XMm: p.At.X.Mm, YMm: p.At.Y.Mm}
	narrows, to := p.With == string(parts.Back), t.a.r.Part.Narrowed()
	if !t.a.middled() || !t.b.middled() || narrows && to != (geom.Point{}) && p.On != string(parts.Front) {
		return at, false
	}
	if narrows {
		at = turnedBy(p.TurnDeg()).point(to).Plus(at)
	}
	return at, true
}

// originText says where the origin of a part lies from that of what it stands on; of two bars,
// whose origins are no marks, how far the first reaches past the other's sides, and of what stands on a bar or a plate how far
// it is from the nearer edges: a tape is laid to those.
func (j *shop) originText(t *joint, p *parts.Place) string {
	switch {
	case p.At == nil:
		return ""
	case t.a.r.Part.Bar != nil && t.b.r.Part.Bar != nil:
		return j.pastText(t)
	case p.Gap.Mm >= 0 && (t.b.r.Part.Bar != nil || t.b.r.Part.Kind == parts.Plate && t.b.roundMm() == 0):
		return j.edgesText(t)
	}
	at, known := t.middleAt(p)
	return ", " + strings.Join(append([]string{"its " + words.Either(known, "middle", "origin") + " on the other's"}, offText(j.w, at.XMm, at.YMm)...), ", ")
}

// flightsOn counts the flights that stand on a part: where one starts round it is of no matter.
func (j *shop) flightsOn(hub parts.Instance) (n int) {
	for _, in := range j.job.Joints {
		on, to := in.Ends()
		if in.Place != nil && to.Instance() == hub && j.find(on).helical() {
			n++
		}
	}
	return n
}

// pastText says how far a bar reaches past the sides of the face that it lies on.
func (j *shop) pastText(t *joint) (text string) {
	ways, past := faceWays[t.in.Place.On], j.seams.PastMm(t.in)
	for i, side := range []string{opposite[ways[0]], ways[0], opposite[ways[1]], ways[1]} {
		word := words.Either(past[i] < 0, " short of its ", " past its ")
		text += ", " + j.w.Size(math.Abs(past[i])) + word + side
	}
	return text
}

// edgesText says how far what stands on a face is from the nearer of its left and right edges, and of its lower and upper.
func (j *shop) edgesText(t *joint) (text string) {
	edges, past := [4]string{"left", "right", "bottom", "top"}, j.seams.PastMm(t.in)
	for i := 0; i < len(past); i += 2 {
		n := i
		if geom.Over(math.Abs(past[i]), math.Abs(past[i+1])) {
			n++
		}
		text += j.edgeText(-past[n], "its "+edges[n]+" edge")
	}
	return text
}

// faceWays are, for each face of a part, its sides to the right and above as one looks at
// that face; left and right, top and bottom are those of its front view.
var faceWays = map[string][2]string{
	"front": {"right", "top"}, "back": {"left", "top"}, "left": {"front", "top"}, "right": {"back", "top"}, "top": {"right", "back"}, "bottom": {"right", "front"},
}

var opposite = map[string]string{"front": "back", "back": "front", "left": "right", "right": "left", "top": "bottom", "bottom": "top"}

// looksText says where a part looks: as seen on a face, or by the sides of what it stands on
// where that is seen on edge.
func (t *joint) looksText(p *parts.Place) string {
	if ways := faceWays[p.On]; p.OnRim() {
		to := map[string]string{"up": ways[1], "down": opposite[ways[1]], "right": ways[0], "left": opposite[ways[0]]}
		return "to the " + to[p.Looks] + " of " + t.b.title()
	}
	return map[string]string{"up": "up", "down": "down", "left": "to the left", "right": "to the right"}[p.Looks]
}

// lengthTo is the side of the other part that the right end of a bar lies towards; empty where
// it is one of its ends that stands on it.
func lengthTo(p *parts.Place) string {
	ways := faceWays[p.On]
	to := map[string]string{"up": opposite[ways[0]], "down": ways[0], "right": ways[1], "left": opposite[ways[1]]}[p.Looks]
	switch p.With {
	case "front", "bottom":
		return to
	case "back", "top":
		return opposite[to]
	}
	return ""
}

// leansText is the way that a bar leans which stands on a face with its mitred end: over its shorter side.
func (t *joint) leansText(p *parts.Place) string {
	end := t.a.r.Part.BarEnd(p.With)
	if end == nil || !end.Mitred() {
		return ""
	}
	to := *p
	to.Looks = map[string]string{"up": "left", "left": "down", "down": "right", "right": "up"}[p.Looks] // the top of what stands on its right end
	if (p.With == string(parts.LeftEnd)) != (end.Long == parts.TopSide) {
		to.Looks = map[string]string{"up": "down", "down": "up", "left": "right", "right": "left"}[to.Looks]
	}
	return ", leaning " + words.FineAngle(end.Mitre.Deg) + " " + t.looksText(&to)
}

func side(v float64, below, above string) string { return words.Either(v < 0, below, above) }

// figure adds a number to the joint.
func (t *joint) figure(label, value, source string) {
	t.out.Figures = append(t.out.Figures, plan.Figure{Label: label, Value: value, Source: source})
}

func (t *joint) step(title string, do ...string) *plan.JointStep {
	s := plan.JointStep{Title: title, Do: slices.DeleteFunc(do, func(d string) bool { return d == "" })}
	t.out.Steps = append(t.out.Steps, s)
	return &t.out.Steps[len(t.out.Steps)-1]
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

// onAxis are the parts that hang together on the axis of a joint once it is made, and where each is on it.
func (j *making) onAxis(t *joint) (placed []plan.Placed) {
	members, added, group := j.members(t.a.Instance(), j.made(t)), j.added(t), j.at(t.a.Instance()).group
	for _, q := range j.placed {
		if q.group == group && slices.Contains(members, q.Instance) {
			placed = append(placed, plan.Placed{
				Part: q.Part, Copy: q.Copy, Title: copyTitle(q.r, q.Copy),
				FrontMm: geom.Clean(q.at.z0), TurnDeg: geom.OnClock(q.at.turn), OtherWay: q.at.turned(),
				New: slices.Contains(added, q.Instance),
			})
		}
	}
	return placed
}

// finish marks the clock of the assembly and weighs it.
func (j *making) finish(t *joint) {
	made := j.made(t)
	members := j.members(t.a.Instance(), made)
	if t.axis {
		j.clockMarks(t)
	}
	if mark := (plan.JointStep{Title: "Mark the clock", Do: t.marked}); t.places {
		t.out.Steps = slices.Insert(t.out.Steps, 0, mark)
	} else if mark.Do != nil {
		t.out.Steps = append(t.out.Steps, mark)
	}
	if t.in.Anchored.Value != "" {
		t.out.Steps = append([]plan.JointStep{{
			Title: "Anchor", Do: []string{j.anchorText(t)}, Hold: "The anchors are tight; it does not rock.",
		}}, t.out.Steps...)
	}
	j.fitLate(t)
	j.putIn(t, putFirst)
	j.putIn(t, putLast)
	t.written()
	if t.is(parts.BoltKind) && t.axis {
		j.registers(t)
	}
	for i := range t.out.Problems {
		t.out.Problems[i].What = j.w.Says(t.out.Problems[i])
	}
	for _, a := range t.out.InLine {
		t.out.Checks = append(t.out.Checks, plan.Check{What: "in line: " + a.What, Wanted: "at " + words.Angle(a.Deg), Limits: "by eye and square", Gauge: "eye, protractor"})
	}
	kg, all := j.massKg(members, made)
	if t.fixed = j.anchored(t, members); all {
		t.out.MassKg = kg
	}
	j.heavy(t, kg, all)
	j.heavyLoose(t)
	j.unlike(t)
	if t.in.Note.Value != "" {
		t.caution(t.in.Note.Value)
	}
}

// anchored tells whether one of the parts is fixed to the floor when this joint
// is made.
func (j *making) anchored(t *joint, members []parts.Instance) bool {
	return slices.ContainsFunc(j.made(t), func(o *joint) bool {
		part := o.in.Anchored.Value
		return part != "" && slices.ContainsFunc(members, func(m parts.Instance) bool { return m.Part == part })
	})
}

// legsStand is how many legs a frame stands on by itself: common practice, no source.
const legsStand = 3

// onLegs tells whether a side that is bolted to stands on its legs by then, and the other does not.
func (j *making) onLegs(t *joint, f, other feature) bool {
	legs := func(f feature) (n int) {
		for _, i := range j.members(f.Instance(), j.before) {
			if j.model(i.Part).Part.For == parts.Leg {
				n++
			}
		}
		return n
	}
	return t.is(parts.BoltKind) && legs(f) >= legsStand && legs(other) < legsStand
}

// heavy says what a step lifts, which is the lighter of its two sides, or the
// one that neither is anchored nor stands on legs, and when the assembly becomes too heavy to be moved
// as before; kg is its mass then, at least that much where not all is known.
func (j *making) heavy(t *joint, thenKg float64, all bool) {
	var (
		lift            feature
		heaviest, least float64
		fixed, stays    bool
	)
	if _, tied := j.side(t, j.before); tied {
		return
	}
	for i, e := range []feature{t.a, t.b} {
		kg, _ := j.sideKg(e)
		heaviest = max(heaviest, kg)
		if j.anchored(t, j.members(e.Instance(), j.before)) {
			fixed, stays = true, true
			continue
		}
		if j.onLegs(t, e, []feature{t.b, t.a}[i]) {
			stays = true
			continue
		}
		if i > 0 && !stays && (kg >= least || t.is(parts.SlideKind) && !t.turns()) { // a hub comes to its shaft
			continue
		}
		lift, least = e, kg
	}
	if least > 0 {
		j.lifts(t, lift, false)
	}
	if how := t.w.Carriers(thenKg); !fixed && !t.fixed && how != "" && heaviest <= plan.LiftKg { // the order of assembly says what is for the hoist alone
		t.caution("From here on the assembly is " + words.AtLeast(!all) + t.w.RoundMass(thenKg, 1) + ": " + how + ".")
	}
}

// sideKg is the mass of a part with all that is on it by then, and whether all of it is known.
func (j *making) sideKg(f feature) (kg float64, all bool) {
	return j.massKg(j.members(f.Instance(), j.before), j.before)
}

// lifts says that a step lifts a part with all that is on it by then, where that is too heavy
// for a hand: a side of its joint, or what is tried on it.
func (j *making) lifts(t *joint, f feature, tried bool) {
	side := j.members(f.Instance(), j.before)
	kg, all := j.sideKg(f)
	if kg <= plan.LiftKg || t.out.Lift != nil && t.out.Lift.MassKg >= kg {
		return
	}
	t.out.Lift = &plan.Lift{What: f.title(), MassKg: kg, AtLeast: !all, How: t.w.Carriers(kg)}
	switch {
	case tried:
		t.out.Lift.What += ", to try it on"
	case len(side) > 1:
		t.out.Lift.What += " with all that is on it"
	}
	if tried {
		t.out.Lift.Tried, t.out.Lift.TriedCopy = f.ref.Part, f.ref.Copy
	}
}

// heavyLoose says what a step that lifts no side of its joint lifts of what it puts in: the heaviest.
func (j *making) heavyLoose(t *joint) {
	if t.out.Lift != nil {
		return
	}
	for _, e := range j.job.Loose {
		if kg := e.MassKg; e.After.Value == t.in.Name.Value && kg > plan.LiftKg && (t.out.Lift == nil || kg > t.out.Lift.MassKg) {
			t.out.Lift = &plan.Lift{What: words.Head(e.Item.Value), MassKg: kg, How: t.w.Carriers(kg), Loose: true}
		}
	}
}

// added are the parts that this joint brings to the assembly: the side without
// the part that was placed first.
func (j *making) added(t *joint) []parts.Instance {
	a, tied := j.side(t, j.before)
	if tied {
		return nil
	}
	b := j.members(t.b.Instance(), j.before)
	for _, q := range j.placed {
		if slices.Contains(a, q.Instance) {
			return b
		}
		if slices.Contains(b, q.Instance) {
			return a
		}
	}
	return nil
}

// clockMarks lists what lies where on the two parts, and what the rules name.
func (j *making) clockMarks(t *joint) {
	if j.noTop(t) {
		return
	}
	refs := seq.Flat(t.in.InLine, func(rule parts.LineRule) []parts.JointRef { return rule.Refs })
	for _, p := range j.placed {
		title := copyTitle(p.r, p.Copy)
		mark := func(name, label string, deg float64) {
			if k := isNamed(p.Instance, refs, name); k || t.has(p.Instance) {
				t.out.Clock = append(t.out.Clock, plan.ClockMark{Label: label, Part: title, Deg: p.at.clock(deg), Key: k})
			}
		}
		mark("top", "TOP", 0)
		for _, m := range p.r.Radials {
			for _, row := range m.Rows {
				mark(row.Name, words.Spaced(row.Name), row.ClockDeg)
			}
		}
		for i := range p.r.Groups {
			f := feature{ref: parts.JointRef{Part: p.Part, Copy: p.Copy}, r: p.r, group: &p.r.Groups[i]}
			if name := f.group.Group.Name; isNamed(p.Instance, refs, name) {
				for _, deg := range f.clocks() {
					mark(name, words.Spaced(name), deg)
				}
			}
		}
	}
}
