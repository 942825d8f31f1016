package part

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/bolts"
	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// setting is what is turned without letting the part go.
type setting struct {
	face   parts.Face
	steps  []*Step // outside from the widest down, inside from the narrowest up
	before []*Step // what was turned in the setting before
}

// first tells whether it is the first of the two.
func (s setting) first() bool { return s.face == parts.Front }

// settings shares out the steps. A widest outside that reaches the back face
// is turned from there, for the chuck holds it while the front is turned.
func (b *bench) settings() [2]setting {
	outside, inside := b.Sides()
	out := [2]setting{{face: parts.Front}, {face: parts.Back}}
	wide := b.widest()
	split := wide.ToMm
	if len(outside) > 1 && !b.splits(wide) && (wide.ToMm >= b.LengthMm()-1e-9 || b.fromBack(wide)) {
		split = wide.FromMm
	}
	share := func(steps []*Step, split float64) {
		for _, s := range steps {
			i := 0
			if s.FromMm >= split-1e-9 || tapped(s) && s.FromMm > 1e-9 && s.ToMm >= b.LengthMm()-1e-9 {
				i = 1 // a tap goes in from the end where its thread begins
			}
			out[i].steps = append(out[i].steps, s)
		}
	}
	slices.SortStableFunc(outside, func(p, q *Step) int { return cmp.Compare(q.Size.NominalMm, p.Size.NominalMm) })
	share(outside, split)
	if len(inside) > 0 {
		last := inside[len(inside)-1]
		byRadius := func(p, q *Step) int { return cmp.Compare(p.drawnRadius(), q.drawnRadius()) }
		narrow := slices.MinFunc(inside, byRadius)
		slices.SortStableFunc(inside, byRadius)
		split := narrow.ToMm
		switch {
		case b.blind(last):
			split = b.LengthMm()
		case b.fromBehind(narrow):
			split = narrow.FromMm
		}
		share(inside, split)
	}
	b.together(&out)
	return out
}

// gripNeedMm is what the jaws should have of the widest outside.
func (b *bench) gripNeedMm() float64 { return gripDias * b.widest().Size.NominalMm }

// backAllowanceMm is what stands behind the part in the first setting: what the stock is longer
// than it, less what its front is faced by, half of that and what facing needs at most; a casting
// has as much on either face. What is sawn on for the jaws is not of it.
func (b *bench) backAllowanceMm() float64 {
	over := math.Max(0, b.sawnMm()-b.moreMm-b.LengthMm())
	if b.Part.Stock.Form == "casting" {
		return over / 2
	}
	return over - math.Min(b.facingMm(), over/2)
}

// facingMm is what facing needs at each end.
func (b *bench) facingMm() float64 { return cutting.FacingAllowanceMm(b.widest().Size.NominalMm) }

// leftMm is what the first setting leaves for the jaws where it turns all up to zMm:
// with what the other end is faced by, the tool clear of the jaws.
func (b *bench) leftMm(zMm float64) float64 {
	return b.LengthMm() - zMm + b.backAllowanceMm() - toolClearMm
}

// restMm is how much of an outside that splits is turned when the part is turned round.
func (b *bench) restMm(s *Step) float64 { return math.Min(b.gripNeedMm(), s.LengthMm()/2) }

// fromBack tells whether the widest outside, though something lies behind it, is
// turned from the back: the jaws would have too little in front of it, and
// another finished diameter is long enough to turn it on.
func (b *bench) fromBack(wide *Step) bool {
	return b.leftMm(wide.ToMm) < b.gripNeedMm() && !b.splits(wide) && b.heldBefore(wide)
}

// heldBefore tells whether a finished diameter in front of an outside is long enough to
// hold the part on.
func (b *bench) heldBefore(wide *Step) bool {
	return slices.ContainsFunc(b.Side(false), func(s *Step) bool { return s.ToMm <= wide.FromMm+1e-9 && s.LengthMm() >= b.gripNeedMm() })
}

// twice tells whether a step is turned in two settings: an outside, or a bore so deep that a bar
// reaches half from each end.
func (b *bench) twice(s *Step) bool {
	if b.whole(s) && !s.Size.AsBought && !b.partedOff() {
		return true
	}
	return !b.onCentres && b.splits(s) || b.barDeep(s) && s.FromMm < geom.CloseMm && s.ToMm > b.LengthMm()-geom.CloseMm && !b.oneSetting(s.Name)
}

// barDeep tells whether a bore is deeper than a bar stays stiff from one end.
func (b *bench) barDeep(s *Step) bool {
	_, both := cutting.BarReach(s.Size.NominalMm, b.boreDeepMm(s))
	return both && s.Inside && !s.Size.AsBought && s.Size.Thread == nil && !b.noBar(s)
}

// rest are the steps of which the second setting turns the rest.
func (b *bench) rest() []*Step {
	return seq.Keep(append([]*Step{b.widest()}, b.Side(true)...), b.twice)
}

// partOffMm is what a parting tool and the facing behind it take. Common practice, no source.
const partOffMm = 5.0

// partingMm is the stock behind a part of which an outside from end to end is turned in one setting with
// others: what the parting tool takes, and for the jaws; 0 of others.
func (b *bench) partingMm() float64 {
	if wide := b.widest(); wide == nil || !b.whole(wide) || wide.Size.AsBought || !b.oneSetting(wide.Name) {
		return 0
	}
	return partOffMm + toolClearMm + max(leastJawMm, b.gripNeedMm())
}

// partingStockMm is how long the stock of such a part has to be; 0 of others.
func (b *bench) partingStockMm() float64 {
	more := b.partingMm()
	if more == 0 {
		return 0
	}
	return b.LengthMm() + b.facingMm() + more
}

// partedOff tells whether the stock is long enough for that.
func (b *bench) partedOff() bool {
	need := b.partingStockMm()
	return need > 0 && b.sawnMm() >= need-geom.CloseMm
}

// whole tells whether an outside runs from end to end, so that it is turned as far
// as the jaws allow.
func (b *bench) whole(s *Step) bool {
	return !s.Inside && s.FromMm < 1e-9 && s.ToMm >= b.LengthMm()-1e-9
}

// splits tells whether the widest outside is turned in two settings: it is what the
// jaws hold in both, and long enough for that, or there is next to nothing behind it and nothing before it to
// hold; or it reaches the back, and what is before it is too short to hold it by.
func (b *bench) splits(s *Step) bool {
	left, need := b.leftMm(s.ToMm), b.gripNeedMm()
	if s.Inside || s.Size.AsBought || s.Name != b.widest().Name || left >= need {
		return false
	}
	if s.ToMm >= b.LengthMm()-1e-9 {
		outside, _ := b.Sides()
		return len(outside) > 1 && seq.Max(0, outside[:len(outside)-1], (*Step).LengthMm) < min(leastJawMm, need, s.LengthMm()-b.restMm(s))
	}
	return s.LengthMm() >= 2*need && s.FromMm > 1e-9 || left < leastJawMm && !b.heldBefore(s)
}

// together moves the steps that are to be turned without letting the part go into
// one setting: the one that has more of them, or the later.
func (b *bench) together(out *[2]setting) {
	wanted := func(s *Step) bool { return b.oneSetting(s.Name) }
	var found [2][]*Step
	for i, set := range out {
		found[i] = seq.Keep(set.steps, wanted)
	}
	from, to := 0, 1
	if len(found[0]) > len(found[1]) {
		from, to = 1, 0
	}
	out[from].steps = slices.DeleteFunc(out[from].steps, wanted)
	out[to].steps = append(out[to].steps, found[from]...)
	order := func(s *Step) float64 { // outsides from the largest on, then bores from the smallest on
		if s.Inside {
			return s.drawnRadius()
		}
		return -s.Size.NominalMm
	}
	slices.SortStableFunc(out[to].steps, func(p, q *Step) int { return cmp.Compare(order(p), order(q)) })
}

// oneSetting tells whether a step is one of those turned without letting go.
func (s *Sizes) oneSetting(name string) bool {
	return s.Part.Turned() && slices.ContainsFunc(s.Part.Profile.OneSetting, func(t parts.Text) bool { return t.Value == name })
}

// centreOperation faces a long solid part to length and centres both ends.
func (b *bench) centreOperation() {
	o := plan.Operation{
		Machine: plan.Lathe, Title: "Face and centre both ends", Holding: "chuck near the end that is faced, the other end in the spindle or a steady",
		Do: []string{b.centred("Face the front clean", parts.Front), b.centred("Turn round, face the back to length "+b.W.Size(b.LengthMm()), parts.Back)}, Tool: "facing tool, centre drill",
		Speed: b.speed(cutting.Turn, b.widest().Size.NominalMm), Gauge: "calipers", Refs: b.refs(plan.LengthFeature, plan.CentreFeature),
		Limits: b.wholeLimits("length"),
	}
	b.faced[parts.Front], b.faced[parts.Back] = len(b.ops), len(b.ops)
	b.op(warn(o, whips))
}

// roughOverMm is left on a diameter where both ends of a bar are roughed before one is
// finished. Common practice, no source.
const roughOverMm = 2.0

// roughBoth roughs both ends of a bar that is turned between centres: metal taken off one
// end moves the other.
func (b *bench) roughBoth(settings [2]setting) {
	o := plan.Operation{Machine: plan.Lathe, Title: "Rough both ends", Tool: "roughing tool", Gauge: "calipers",
		Holding: "between centres, driver on the end not turned; or in the chuck with a centre at the free end"}
	var all []*Step
	for _, set := range settings {
		var to []string
		for _, s := range set.steps {
			if over := b.W.Even(s.Size.NominalMm+roughOverMm, 0.01, 0.01); !s.Size.AsBought && over < b.Part.Stock.Size.Mm {
				to, all = append(to, words.Spaced(s.Name)+" to "+b.W.Dia(over)), append(all, s)
			}
		}
		if len(to) == 0 {
			return
		}
		o.Do = append(o.Do, "From the "+string(set.face)+" face: "+strings.Join(to, ", ")+".")
	}
	o.Do = append(o.Do, "Leave "+b.W.Near(roughOverMm/2)+" at every shoulder. Let it cool before anything is finished: what comes off one end moves the other.")
	o.Speed, b.roughed = b.settingSpeed(all), true
	b.op(o)
}

// boxCuts is how many cuts of one setting, drills apart, stand in an operation with one
// tick; what comes after has its own; and roughedSteps how many outsides are roughed before one is finished
// (common practice, no source).
const (
	boxCuts      = 6
	roughedSteps = 3
)

// phase is work of one setting that is done before the next begins.
type phase struct {
	name, tool  string // empty for the turning itself
	do, limits  []string
	refs        []int
	turned, cut []*Step // turned or bored, and threaded
	cuts        int
}

// turnSetting is the lathe work of one setting, phase after phase: outsides from the
// widest down, bores from the narrowest up, undercuts, chamfers and grooves, threads,
// and what is polished. Few cuts are one operation, many are one after the other.
func (b *bench) turnSetting(set setting) {
	o := plan.Operation{Machine: plan.Lathe, Title: "Turn from the " + string(set.face) + " face", Tool: "facing and turning tool"}
	if !b.anyTurned(set.steps) {
		o.Title = "Face the " + string(set.face) + " end"
	}
	if b.onCentres {
		o.Tool = "turning tool"
	} else {
		b.faceLines(set, &o)
		b.faced[set.face] = len(b.ops)
	}
	o.Holding = b.holding(set)
	if names := b.namesTogether(set.steps); names != "" {
		o.Do = append(o.Do, "Without letting the part go between them: "+names+".")
	}
	phases := b.phases(set)
	if !set.first() && len(b.rest()) > 0 {
		o.Title = "Turn from the " + string(set.face) + " face"
	}
	at, all := &phases[0], seq.Sum(phases, func(p phase) int { return p.cuts })
	if turned := seq.Keep(at.turned, func(s *Step) bool { return !s.Size.AsBought }); all > boxCuts && len(turned) >= roughedSteps && !b.roughed {
		o.Do = append(o.Do, "Rough all of them "+b.W.Near(1)+" over on diameter, the widest first, before one is finished.")
	}
	at.do, at.limits, o.Do, o.Limits = slices.Concat(o.Do, at.do), slices.Concat(o.Limits, at.limits), nil, nil
	b.boxes(o, phases, all > boxCuts)
	if last := &b.ops[len(b.ops)-1]; set.first() && b.partedOff() {
		last.Do = append(last.Do, "Part off, "+b.W.Near(1)+" over the length.")
	} else if need := b.partingStockMm(); set.first() && need > 0 {
		in := b.Part.Stock
		b.unmeasured = append(b.unmeasured, plan.Problem{Kind: plan.StockShort, Pos: in.Length.Pos, Feature: b.widest().Name, Args: []plan.Arg{plan.Named(b.namesTogether(set.steps)), plan.Of(plan.Mm, b.sawnMm()), plan.Of(plan.Mm, b.W.Up(need, 1, 1.0/16))}})
	}
}

func (b *bench) boxes(o plan.Operation, phases []phase, several bool) {
	var turned, cut []*Step
	n, later := 0, false
	flush := func() {
		o.Gauge = b.gauges(append(slices.DeleteFunc(slices.Clone(turned), func(s *Step) bool { return s.Size.Thread != nil }), cut...))
		if o.Speed = b.threadSpeed(cut); len(turned) > 0 || !later {
			o.Speed = words.Join("; ", b.settingSpeed(turned), o.Speed)
		}
		slices.Sort(o.Refs)
		o.Refs = slices.Compact(o.Refs)
		b.held[len(b.ops)] = later
		b.op(o)
		o, turned, cut, n, later = plan.Operation{Machine: o.Machine, Holding: "same setting"}, nil, nil, 0, true
	}
	for _, p := range phases {
		if several && n > 0 && n+p.cuts > boxCuts {
			flush()
		}
		if later {
			o.Title = words.Capital(words.Join(", ", words.Lower(o.Title), p.name))
		}
		if p.tool != "" && (several || p.name == "grooves") {
			o.Tool = words.Join(", ", o.Tool, p.tool)
		}
		o.Do, o.Limits, o.Refs = append(o.Do, p.do...), append(o.Limits, p.limits...), append(o.Refs, p.refs...)
		turned, cut, n = append(turned, p.turned...), append(cut, p.cut...), n+p.cuts
	}
	flush()
}

// The phases of a setting, in the order they are worked.
const (
	outsidePhase = iota
	borePhase
	taperPhase
	undercutPhase
	chamferPhase
	groovePhase
	knurlPhase
	threadPhase
	finishPhase
)

// phases are the work of a setting; those with nothing to do are left out, but for the first.
func (b *bench) phases(set setting) []phase {
	out := []phase{{}, {name: "bores", tool: "boring bar"}, {name: "tapers"}, {name: "undercuts", tool: "recessing tool"}, {name: "chamfers", tool: "chamfer tool"},
		{name: "grooves", tool: "grooving tool"}, {name: "knurls", tool: "knurling tool"}, {name: "threads", tool: "threading tool"}, {name: "surfaces"}}
	b.restPhase(set, out)
	for _, s := range set.steps {
		p := &out[outsidePhase]
		if s.Inside {
			p = &out[borePhase]
		}
		p.do = append(p.do, b.stepWork(s, set.first() && b.twice(s)))
		p.do = slices.Concat(p.do, b.deepLines(s), b.waistLines(s))
		if line := b.toolRoom(s, set); line != "" {
			p.do = append(p.do, line)
		}
		p.refs, p.turned = append(p.refs, b.ref(s)), append(p.turned, s)
		if !s.Size.AsBought {
			p.cuts++
		}
		if f, ok := detailOf[finish](s); ok && f.polished() {
			p = &out[finishPhase]
		}
		b.stepLimits(s, p)
		if !set.first() || !b.twice(s) {
			b.afterPhases(s, "", out)
		}
	}
	b.lengthLimits(set, out)
	c, g := &out[chamferPhase], &out[groovePhase]
	c.do, c.refs = b.chamferLines(func(c *chamfer) bool { return b.reached(c, set) })
	g.do, g.limits, g.refs = b.grooveLines(func(g *Groove) bool { return g.at(set) })
	c.cuts, g.cuts = len(c.refs), len(g.refs)
	return append(out[:1], slices.DeleteFunc(out[1:], func(p phase) bool { return len(p.do) == 0 })...)
}

// stepLimits are the limits of what is turned, or bored.
func (b *bench) stepLimits(s *Step, p *phase) {
	if _, hard := s.hardened(); hard && !s.Inside && s.Size.Limited { // what is left for grinding on it
		p.limits = append(p.limits, words.Spaced(s.Name)+" "+b.W.Limits(s.Size.MaxMm+grindMm-grindOffMm, s.Size.MaxMm+grindMm+grindOffMm))
	} else if s.Inside || s.firstMm == 0 { // a knurl grows to no limits
		p.limits = append(p.limits, b.limits(words.Spaced(s.Name), s.Size)...)
	}
}

// lengthLimits are those of the lengths whose second end is made in a setting: by what is turned there, or by
// what beside it is bored wider, or turned narrower.
func (b *bench) lengthLimits(set setting, out []phase) {
	for s := range seq.Refs(b.Steps) {
		here := slices.Contains(set.steps, s)
		other := slices.ContainsFunc(b.beside(s), func(o *Step) bool {
			return slices.Contains(set.steps, o) != here && s.Inside == (o.drawnRadius() > s.drawnRadius())
		})
		done := here || other
		if set.first() {
			done = here && !other
		}
		if len(s.limits) < 2 || !done || s.LengthMm() == geom.Clean(b.LengthMm()) { // the whole has its own
			continue
		}
		p := &out[outsidePhase]
		if s.Inside {
			p = &out[borePhase]
		}
		p.limits = append(p.limits, words.Spaced(s.Name)+" "+b.limitsText(b.length(s))+" long")
	}
}

// restPhase turns what of the widest outside the jaws had held before, and of a bore what the bar
// did not reach.
func (b *bench) restPhase(set setting, out []phase) {
	if set.first() {
		return
	}
	for _, s := range b.rest() {
		size, what := b.firstSize(s)
		verb, done, over, p := "Turn", "turned", "On "+b.freeHold()+", over the whole length: ", &out[outsidePhase]
		if b.onCentres {
			over = "Up to the driver, then turned end for end and picked up there: "
		}
		if s.Inside {
			verb, done, over, p = "Bore", "bored", "", &out[borePhase]
			p.refs = append(p.refs, b.ref(s))
			b.stepLimits(s, p)
		}
		size = cmp.Or(size, b.sizeText(s)) + what
		p.do, p.turned, p.cuts = append(p.do, verb+" the rest of "+words.Spaced(s.Name)+" to "+size+", to meet what was "+done+" before."), append(p.turned, s), p.cuts+1
		b.afterPhases(s, over, out)
	}
}

// afterPhases are what is on a step and worked once it is turned.
func (b *bench) afterPhases(s *Step, over string, out []phase) {
	for _, d := range s.details {
		phase, line := d.after(b, s)
		if line == "" {
			continue
		}
		p := &out[phase]
		if phase == threadPhase {
			p.cut = append(p.cut, s)
		}
		if over != "" {
			line = over + words.Lower(line)
		}
		p.do, p.refs, p.cuts = append(p.do, line), append(p.refs, b.ref(s)), p.cuts+1
	}
}

// freeHold is what holds a part while the whole of its outside is worked.
func (b *bench) freeHold() string {
	switch {
	case b.boreMm() > 0:
		return "a mandrel in the bore"
	case len(b.centreRows()) == 0:
		return "centres, drilled small in both ends"
	}
	return "centres"
}

// namesTogether lists the steps of a setting that have to be turned without
// letting the part go.
func (b *bench) namesTogether(steps []*Step) string {
	together := seq.Keep(steps, func(s *Step) bool { return b.oneSetting(s.Name) })
	return words.Join(", ", seq.Map(together, func(s *Step) string { return words.Spaced(s.Name) })...)
}

func (b *bench) anyTurned(steps []*Step) bool {
	return slices.ContainsFunc(steps, func(s *Step) bool { return !s.Size.AsBought })
}

// reached tells whether a chamfer is cut in a setting: those of the end faces
// with the face, the others with their step.
func (b *bench) reached(c *chamfer, set setting) bool {
	switch {
	case c.step == nil:
		return true
	case c.back && c.step.ToMm >= b.LengthMm()-1e-9:
		return set.face == parts.Back
	case !c.back && c.step.FromMm <= 1e-9:
		return set.face == parts.Front
	}
	return slices.Contains(set.steps, c.step)
}

// faceLines face the end that is in front, and open the bores.
func (b *bench) faceLines(set setting, o *plan.Operation) {
	if set.first() {
		o.Do = append(o.Do, b.centred(b.faceFront(), parts.Front))
	} else {
		o.Do = append(o.Do, b.centred(b.faceBack(), parts.Back))
		if len(b.saddles) == 0 {
			o.Limits = append(o.Limits, b.wholeLimits("length")...)
		}
	}
	o.Do = append(o.Do, b.openLines(set)...)
}

// holding is how a part is held in a setting, after the steps turned before.
func (b *bench) holding(set setting) string {
	if b.onCentres {
		on := "the end not turned"
		if !set.first() && b.anyTurned(set.before) {
			on = "the end turned before, over a split sleeve or copper sheet"
		}
		if mine, _, _ := b.trueTo(set.steps, b.Side(false)); mine == nil {
			on += "; or in the chuck with a centre at the free end"
		}
		return "between centres, driver on " + on + b.onCentresSupport(set.steps)
	}
	text := "chuck on the back end, set true"
	switch {
	case set.first():
	case !b.anyTurned(set.steps) && len(b.rest()) == 0:
		text = "turned round, set true"
	default:
		text = b.truedOn(set)
	}
	h := b.heldIn(set)
	b.letGo(set, h)
	return text + b.chuckSupport(set, h)
}

// truedMm is how true a finished diameter runs when a part is turned round (common
// practice, no source).
const truedMm = 0.02

// boughtTrueMm is how nearly opposite places of an outside that is as bought are set alike (common
// practice, no source).
const boughtTrueMm = 0.2

// truedOn is what a part that was turned round runs true to. Where something in this
// setting has to be coaxial with something of the first, as the two seats of a shaft's
// bearings have, it is what was turned with that, within half of the closest tolerance.
func (b *bench) truedOn(set setting) string {
	before := set.before
	mine, first, within := b.trueTo(set.steps, before)
	if wall := b.thinWallMm(before); mine == nil && wall > 0 {
		return "on a stub mandrel turned to the bore where it stands, pushed on lightly or drawn up by a nut and washer: jaws pinch a wall of " + b.W.Said(wall) + " three-cornered"
	}
	if mine == nil {
		return "on " + b.grippedOn(before) + "soft jaws or indicated within " + b.W.Near(within)
	}
	b.unproved(mine, first, 2*within)
	tail := "indicated within " + b.W.Said(math.Floor(1000*within+1e-6)/1000) + ", so that " + words.Spaced(mine.Name) + " comes true to "
	i := slices.IndexFunc(before, func(s *Step) bool { return !s.Inside && !s.Size.AsBought })
	if i < 0 {
		return "turned round, " + words.Spaced(first.Name) + " " + tail + "it"
	}
	text := "on " + words.Spaced(before[i].Name)
	if before[i] != first {
		text += ", turned with " + words.Spaced(first.Name)
	}
	return text + ": soft jaws bored to it, or " + tail + words.Spaced(first.Name)
}

// trueTo is a step of a setting that has to be coaxial with one of another, that one, and how
// closely it is set to it: the closest of them; nil where there is none.
func (b *bench) trueTo(set, others []*Step) (mine, other *Step, within float64) {
	within = truedMm
	for _, s := range set {
		for _, f := range others {
			if mm, ok := b.coaxialMm(s, f); ok && !slices.Contains(set, f) && (mine == nil || mm < within) {
				mine, other, within = s, f, math.Min(mm, within)
			}
		}
	}
	return mine, other, within
}

// unproved notes that nothing measures how true the seats of two bearings run to one another
// that are turned in two settings.
func (b *bench) unproved(s, f *Step, withinMm float64) {
	asked := func(name string) bool {
		return slices.ContainsFunc(b.required, func(q *requirement) bool {
			return (q.Kind == parts.Coaxiality || q.Kind == parts.RunOut) && (q.Of.Value == name || q.To.Value == name)
		})
	}
	if !asked(s.Name) || !asked(f.Name) {
		p := b.Part.Profile
		in := seq.At(slices.Concat(p.Outside, p.Inside), func(q *parts.Step) bool { return q.Name.Value == s.Name })
		b.unmeasured = append(b.unmeasured, plan.Problem{Kind: plan.SeatsUnproved, Pos: in.Pos, Feature: s.Name, Args: []plan.Arg{plan.Named(s.Name), plan.Named(f.Name), plan.Of(plan.Mm, withinMm)}})
	}
}

// gripped is the widest of the finished outsides that the jaws may hold: no thread.
func gripped(before []*Step) *Step {
	return seq.First(before, func(s *Step) bool { return !s.Inside && s.Size.Thread == nil })
}

// grippedOn names the finished diameter that the jaws hold, and what before it they have to pass.
func (b *bench) grippedOn(before []*Step) string {
	on := gripped(before)
	switch {
	case on == nil && len(before) > 0:
		if blank := seq.First(before, func(s *Step) bool { return !s.Inside && b.twice(s) }); blank != nil {
			return words.Spaced(blank.Name) + " at " + b.W.Dia(b.threadBlankMm(blank)) + ", not yet threaded, "
		}
		if bore := seq.First(before, func(s *Step) bool { return s.Inside && s.Size.Thread == nil }); bore != nil {
			return words.Spaced(bore.Name) + ", jaws from inside and none on a thread, "
		}
		return "a split ring screwed on the thread, "
	case on == nil:
		return "a finished diameter, "
	case on.FromMm > geom.CloseMm:
		return words.Spaced(on.Name) + " (the " + b.W.Said(on.FromMm) + " before it free), "
	}
	return words.Spaced(on.Name) + ", "
}

// waistMm is how far both neighbours stand over an outside for a usual tool not to reach between them.
// Common practice, no source.
const waistMm = 10.0

// waistLines say how an outside between two higher ones is reached, and how round its corners may be
// for the washers beside it to lie flat.
func (b *bench) waistLines(s *Step) []string {
	high, low, corner, neighbours := 0.0, math.Inf(1), math.Inf(1), b.beside(s)
	for _, o := range neighbours {
		up := (o.Size.NominalMm - s.Size.NominalMm) / 2
		high, low = max(high, up), min(low, up)
	}
	if s.Inside || s.Size.AsBought || len(neighbours) < 2 || low < waistMm {
		return nil
	}
	for _, m := range b.Groups {
		if bolt, err := bolts.Find(m.Size.For); err == nil {
			corner = min(corner, geom.Distance(m.Points[0], plan.XY{})-(bolt.WasherODMm+s.Size.MaxMm)/2)
		}
	}
	line := "A recess tool, right- and left-hand, standing out " + b.W.Room(high) + " or more; face both shoulders with it"
	if r := math.Floor(2*corner) / 2; r > 0 && r < low {
		line += ", corners R" + b.W.Said(r) + " at most: washers lie there"
	}
	return []string{line + "."}
}

// pinchShare is the wall, to the diameter, under which jaws bend a ring. Common practice, no source.
const pinchShare = 0.05

// thinWallMm is the wall of a short ring that jaws would bend, where its bore is finished before it is turned round; else 0.
func (b *bench) thinWallMm(before []*Step) float64 {
	out, bore := b.widest().Size.NominalMm, b.boreMm()
	wall := geom.Clean((out - bore) / 2)
	if bore == 0 || wall >= pinchShare*out || b.LengthMm() > out || !slices.ContainsFunc(before, func(s *Step) bool { return s.Inside && !s.Size.AsBought }) {
		return 0
	}
	return wall
}

// coaxialMm tells how true one step has to run to another: both are seats of
// bearings, or it is required.
func (b *bench) coaxialMm(s, f *Step) (float64, bool) {
	within, ok := truedMm, false
	if s.bearing() && f.bearing() && s.Size.Limited && f.Size.Limited {
		within, ok = math.Min(within, math.Min(s.Size.MaxMm-s.Size.MinMm, f.Size.MaxMm-f.Size.MinMm)/2), true
	}
	for _, q := range b.required {
		to := func(a, b *Step) bool { return q.Of.Value == a.Name && q.To.Value == b.Name }
		if (q.Kind == parts.Coaxiality || q.Kind == parts.RunOut) && (to(s, f) || to(f, s)) {
			within, ok = math.Min(within, q.Within.Mm/2), true
		}
	}
	return within, ok
}

// sawnMm is the length that the stock is cut to: as bought, else with what facing both
// ends and the jaws need.
func (b *bench) sawnMm() float64 {
	if l := b.Part.Stock.Length; l.Set() {
		return l.Mm
	}
	if b.cut.outline != nil {
		return b.plateMm()
	}
	return geom.Clean(b.LengthMm() + 2*b.facingMm() + b.partingMm() + b.moreMm)
}

// stockKg is the mass of what goes into the chuck first: bar, tube, casting or blank;
// 0 where it is not known.
func (b *bench) stockKg() float64 {
	k := b.Part.Stock
	if b.Material == nil || !k.Size.Set() {
		return 0
	}
	area, long := sweptMm2(k.Size.Mm, 0), 0.0
	switch {
	case b.cut.outline != nil:
		area, long = math.Abs(geom.NewContour(b.cut.outline).AreaMm2()), b.plateMm()
		for _, o := range b.cut.openings {
			area -= sweptMm2(2*o.radius, geom.Distance(o.a, o.b))
		}
	case !b.Part.Turned() && b.Part.Kind != parts.Tube:
		return 0
	case k.Form == "casting":
		return b.castKg()
	case k.Form == "tube":
		area -= sweptMm2(k.Size.Mm-2*k.Second.Mm, 0)
	case k.Form == "square":
		area = k.Size.Mm * k.Size.Mm
	}
	return area * cmp.Or(long, b.sawnMm()) * 1e-9 * b.Material.DensityKgM3
}

// castKg is the mass of a casting as castText orders it.
func (b *bench) castKg() float64 {
	more := math.Max(0, b.Part.Stock.Size.Mm-b.widest().Size.NominalMm)
	pieces, volume := b.pieces(0, b.LengthMm()), 0.0
	pieces[0].LengthMm += (b.sawnMm() - b.LengthMm()) / 2
	pieces[len(pieces)-1].LengthMm += (b.sawnMm() - b.LengthMm()) / 2
	for _, p := range pieces {
		volume += (sweptMm2(p.OutMm+more, 0) - sweptMm2(b.coreMm(more), 0)) * p.LengthMm
	}
	return volume * 1e-9 * b.Material.DensityKgM3
}

// grip is what is left behind the turned outsides for the jaws, with what stands behind the part.
func (b *bench) grip(steps []*Step) float64 {
	return math.Max(0, b.leftMm(b.turnedToMm(steps))+b.moreMm)
}

// jawStockMm is how long the stock has to be for the jaws to have enough behind what is turned in
// the first setting.
func (b *bench) jawStockMm(steps []*Step) float64 {
	out := b.facingMm() + b.turnedToMm(steps) + toolClearMm
	if slices.ContainsFunc(steps, b.whole) {
		out = b.facingMm() + b.LengthMm()
	}
	need := math.Min(cutting.JawMm, math.Max(gripShare*out, math.Min(b.gripNeedMm(), out)))
	return math.Max(b.LengthMm()+2*b.facingMm(), out+need)
}

// turnedToMm is how far from the front outsides are turned that do not run from end to end.
func (b *bench) turnedToMm(steps []*Step) (far float64) {
	for _, s := range steps {
		if !s.Inside && !s.Size.AsBought && s.ToMm-s.FromMm < b.LengthMm()-1e-9 {
			if to := s.ToMm; b.splits(s) {
				far = math.Max(far, to-b.restMm(s))
			} else {
				far = math.Max(far, to)
			}
		}
	}
	return far
}

// settingSpeed is the speed at the widest outside, then those at the smallest
// where it may run half as fast again, and at the widest bore.
func (b *bench) settingSpeed(steps []*Step) string {
	var out, bore, small float64
	for _, s := range steps {
		d := s.Size.NominalMm
		switch {
		case tapped(s), s.Size.Thread != nil:
		case s.Size.AsBought, s.Inside && b.noBar(s):
		case s.Inside:
			bore = math.Max(bore, d)
		default:
			out = math.Max(out, d)
			if small == 0 || d < small {
				small = d
			}
		}
	}
	switch {
	case out > 0:
	case bore > 0:
		return b.speed(cutting.Bore, bore)
	default:
		out = b.widest().Size.NominalMm
	}
	text := b.speed(cutting.Turn, out)
	base, _, _ := b.rpm(cutting.Turn, out, true)
	add := func(label string, op cutting.Op, dia float64) {
		if n, _, _ := b.rpm(op, dia, true); n > 0 && n != base {
			text = words.Join("; ", text, label+words.Trim(n, 0)+" at "+b.W.Dia(dia))
		}
	}
	if n, _, _ := b.rpm(cutting.Turn, small, true); small > 0 && n >= 1.5*base {
		add("", cutting.Turn, small)
	}
	add("boring ", cutting.Bore, bore)
	return text
}

// threadSpeed is the speed at the widest of threads that are cut.
func (b *bench) threadSpeed(steps []*Step) string {
	widest := 0.0
	for _, s := range steps {
		if !tapped(s) {
			widest = math.Max(widest, s.Size.NominalMm)
		}
	}
	if n, _, _ := b.rpm(cutting.Thread, widest, true); n > 0 {
		return "threads " + words.Trim(n, 0) + " at " + b.W.Dia(widest)
	}
	return ""
}

// gauges names what measures the steps of a setting.
func (b *bench) gauges(steps []*Step) string {
	var out []string
	for _, s := range steps {
		if g := gauge(s); g != "calipers" && !s.Size.AsBought && !slices.Contains(out, g) {
			out = append(out, g)
		}
	}
	return words.Join(", ", append(out, "calipers")...)
}

// stepWork is the line for one cylinder; a whole one is turned up to the jaws.
func (b *bench) stepWork(s *Step, whole bool) string {
	if s.Size.AsBought {
		text := words.Capital(words.Spaced(s.Name)) + " " + b.W.Dia(s.Size.NominalMm)
		if s.LengthMm() < b.LengthMm()-geom.CloseMm {
			text += ", " + b.longText(s) + " long"
		}
		return text + ": as bought, not turned."
	}
	verb := "Turn "
	switch {
	case s.Inside && s.Size.Thread == nil && b.noBar(s):
		verb = "Drill out "
	case s.Name == "bore":
		verb = "Machine "
	case s.Inside:
		verb = "Bore "
	}
	name, long := words.Spaced(s.Name), ", "+b.longText(s)+" long"
	line := verb + name + " " + b.sizeText(s) + long
	switch first, what := b.firstSize(s); {
	case tapped(s):
		line = words.Capital(name) + ": the tap drill makes it, no bar reaches so deep" + long
	case first != "":
		line = verb + name + " to " + first + long + what
	case b.drilledFirst(s):
		line = words.Capital(name) + " " + b.sizeText(s) + long + ": made by the drill above, no bar reaches so deep"
	}
	switch {
	case whole && s.Inside:
		line += ", half of it from here, the rest when turned round: so the bar stays short"
	case whole && b.onCentres:
		line += ", as far as the driver allows, the rest when turned round"
	case whole:
		line += ", as far as the jaws allow, the rest when turned round"
	case b.barDeep(s):
		line += ", with the thickest bar that goes in, light last cuts, the last one again without setting deeper: so far in it springs"
	}
	for _, d := range s.details {
		line += d.clause(b.W)
	}
	return line + "."
}

// firstSize is what a step is turned to first, and what for; empty where that is its size.
func (b *bench) firstSize(s *Step) (size, what string) {
	switch {
	case s.Size.Thread != nil:
		return b.W.Dia(b.threadBlankMm(s)), ", for the thread"
	case s.firstMm > 0:
		return b.W.Dia(s.firstMm), ", " + s.firstFor
	}
	return "", ""
}

// threadBlankMm is the diameter before threading: the tap drill inside;
// outside the major diameter, less a tenth of the pitch on metric and unified
// threads, which stays inside their 6g and 2A limits (common practice, no
// source).
func (b *bench) threadBlankMm(s *Step) float64 {
	t := s.Size.Thread
	switch {
	case s.Inside && t.TapDrillMm > 0 && t.TapDrillName == "":
		return b.W.Even(t.TapDrillMm, 0.001, 0.001)
	case s.Inside && t.TapDrillMm > 0:
		return t.TapDrillMm
	case s.Inside:
		return t.MinorMm
	case t.Series == threads.PipeG || t.Taper:
		return t.MajorMm
	}
	return b.W.Even(t.MajorMm-t.PitchMm/10, 0.01, 0.001)
}

// threadWork is the line that cuts a thread.
func (b *bench) threadWork(s *Step) string {
	t := s.Size.Thread
	line := "Cut " + words.Spaced(s.Name) + " " + t.Designation
	if tapped(s) {
		return "Tap " + words.Spaced(s.Name) + " " + t.Designation + ", " + b.W.Size(s.LengthMm()) + " long, by hand, the tap on the tailstock centre, square, " + b.fluid() + "."
	}
	if s.Inside && t.MajorMm <= 24 { // what one taps by hand; common practice, no source
		line = "Tap by hand or cut " + words.Spaced(s.Name) + " " + t.Designation
	}
	switch {
	case t.TPI > 0 && b.W.Units == parts.Inches:
		line += ", " + words.Trim(t.TPI, 1) + " per inch"
	case t.TPI > 0:
		line += ", " + words.Trim(t.TPI, 1) + " per inch (pitch " + words.Trim(t.PitchMm, 3) + " mm)"
	default:
		line += ", pitch " + words.Trim(t.PitchMm, 3) + " mm"
	}
	if t.Taper {
		line += ", taper 1:16"
	}
	return line + ", " + b.W.Size(s.LengthMm()) + " long."
}

// toolRoom lets the tool that cuts an inside thread run out into a wider bore which is
// not there yet: it is bored later, from the other face. Room as for a blind thread.
func (b *bench) toolRoom(s *Step, set setting) string {
	if !set.first() || !s.Inside || s.Size.Thread == nil || tapped(s) {
		return ""
	}
	room, err := s.Size.Thread.RunoutMm()
	for _, o := range b.beside(s) {
		if deeper := (o.FromMm > s.FromMm) == (set.face == parts.Front); err == nil && deeper && !slices.Contains(set.steps, o) && o.leastMm() >= b.threadBlankMm(s) {
			end := max(set.face.FromFront(s.FromMm, b.LengthMm()), set.face.FromFront(s.ToMm, b.LengthMm()))
			return "Bore on at " + b.W.Dia(b.threadBlankMm(s)) + " to " + b.W.Said(geom.Clean(end+math.Min(room, o.LengthMm()))) + " deep, where " + words.Spaced(o.Name) + " will be: the threading tool runs out there."
		}
	}
	return ""
}

// tapped tells whether an inside thread is drilled and tapped because a boring bar
// does not reach through it.
func tapped(s *Step) bool {
	t := s.Size.Thread
	if !s.Inside || t == nil || t.TapDrillMm == 0 || t.MajorMm > 30 { // larger taps are not at hand; common practice, no source
		return false
	}
	ok, both := cutting.BarReach(t.TapDrillMm, s.ToMm-s.FromMm)
	return !ok || both
}

// beyondBar tells whether a bar in the tool post does not reach through the bore of a
// tube or casting, which no drill opens either, for it is there already.
func (b *bench) beyondBar(s *Step) bool {
	form := b.Part.Stock.Form
	if !s.Inside || s.Size.AsBought || s.Size.Thread != nil || form != "tube" && form != "casting" {
		return false
	}
	ok, _ := cutting.BarReach(s.Size.NominalMm, b.boreDeepMm(s))
	return !ok
}

// lineBore bores such a bore from end to end: the bar turns between centres, and the
// part lies still on the slide that feeds it (common practice, no source).
func (b *bench) lineBore(s *Step) {
	b.op(plan.Operation{
		Machine: plan.Lathe, Title: "Bar between centres: " + words.Spaced(s.Name), Refs: []int{b.ref(s)},
		Holding: "clamped on the cross slide in V blocks or on packing, " + b.inLine() + " at both ends; bar between centres, driven by a dog",
		Do:      []string{b.stepWork(s, false), "A bar in the tool post does not reach so deep. Set the cutter out with a micrometer, a little at a pass, the last ones light; feed the carriage. Measure at both ends."},
		Tool:    "boring bar with a cutter in its middle", Speed: b.speed(cutting.Bore, s.Size.NominalMm), Gauge: gauge(s),
		Limits: b.limits(words.Spaced(s.Name), s.Size),
	})
}

// inLine is how near the outside of a part that lies still is set to the centres: the wall of what is as
// bought is no rounder than it came, and only opposite places are compared (common practice, no source).
func (b *bench) inLine() string {
	if b.anyTurned(b.Side(false)) {
		return "its outside in line with the centres within " + b.W.Near(truedMm)
	}
	return "its outside, as bought, swept by an indicator on the bar, opposite places alike within " + b.W.Near(boughtTrueMm)
}

// boreDeepMm is how far a bar goes in for a bore: from the nearer face, or from the
// open one of a blind bore.
func (b *bench) boreDeepMm(s *Step) float64 {
	if b.boreMm() > 0 {
		return math.Min(s.ToMm, b.LengthMm()-s.FromMm)
	}
	return s.ToMm
}

// noBar tells whether a bore in solid stock is not bored because no bar reaches.
func (b *bench) noBar(s *Step) bool {
	if !s.Inside || s.Size.AsBought || b.Part.Stock.Form == "casting" || b.Part.Stock.Form == "tube" {
		return false
	}
	if s.Size.Thread != nil {
		return tapped(s)
	}
	ok, _ := cutting.BarReach(s.Size.NominalMm, b.boreDeepMm(s))
	return !ok
}

// deepLines make a bore with limits, or drill one that is tapped, where no bar reaches and what
// opens the middle leaves it narrower.
func (b *bench) deepLines(s *Step) []string {
	if b.drilledFirst(s) || !tapped(s) && (s.Size.Thread != nil || !s.Size.Fitted() || !b.noBar(s)) {
		return nil
	}
	m := Made{Thread: s.Size.Thread, FinishedMm: s.Size.NominalMm, Size: s.Size}
	way := b.holeWay(m, s.LengthMm(), true) // a narrower bore, or metal, is behind it
	if m.Thread != nil {
		way.Drills = way.Drills[max(0, len(way.Drills)-1):] // the narrower one is its pilot
		return b.drillLines(way, true)
	}
	return append(b.drillLines(way, true), b.finishLines(m, way)...)
}

// drilledFirst tells whether the drills that open the middle make a bore.
func (b *bench) drilledFirst(s *Step) bool {
	return b.noBar(s) && !slices.ContainsFunc(b.Side(true), func(o *Step) bool { return o.drawnRadius() < s.drawnRadius() })
}

// ends says what becomes of the two ends that the saw leaves.
func (b *bench) ends() string {
	switch front, back := b.saddledEnd(parts.Front), b.saddledEnd(parts.Back); {
	case front && back:
		return "cut both ends to their saddle curves"
	case front || back:
		return "face one end and cut the other to its saddle curve"
	case b.partedOff():
		return "face the front, and to hold it by until it is parted off"
	}
	return "face both ends"
}

// leastCoreMm is the smallest hole that is cored. Common practice, no source.
const leastCoreMm = 20.0

// coreMm is the core of a casting that leaves some metal in its narrowest bore; 0 where it is
// cast solid.
func (b *bench) coreMm(moreMm float64) float64 {
	inside := b.Side(true)
	core := seq.Min(math.Inf(1), inside, func(s *Step) float64 { return s.leastMm() - moreMm })
	if len(inside) == 0 || core < leastCoreMm-geom.CloseMm {
		return 0
	}
	return geom.Clean(core)
}

// castText is what a casting is ordered by: each diameter of the part with what the stock
// leaves on the largest, but for steps that are cast with their neighbour, and the core.
func (b *bench) castText() string {
	more, long := geom.Clean(b.Part.Stock.Size.Mm-b.widest().Size.NominalMm), b.Part.Stock.Length.Mm
	if long == 0 || more <= 0 {
		return ""
	}
	text := "Ordered with " + b.W.Size(more) + " on diameters and " + b.W.Read((long-b.LengthMm())/2) + " on each face: "
	for _, s := range b.Side(false) {
		if s.LengthMm() > more {
			text += words.Spaced(s.Name) + " " + b.W.Dia(s.Size.NominalMm+more) + ", "
		}
	}
	if core := b.coreMm(more); core > 0 {
		text += "core " + b.W.Dia(core)
	} else {
		text += "cast solid"
	}
	return text + ". Draft, fillets, shrinkage and a stepped core are the pattern maker's."
}

// saw cuts the bar with what facing both ends needs.
func (t *turned) saw(b *bench) {
	if b.cut.outline != nil {
		t.cutDisc(b)
		return
	}
	if b.Part.Stock.Form == "casting" {
		b.op(warn(plan.Operation{
			Machine: plan.Bench, Title: "Check the casting",
			Do:    []string{b.castText(), "Fettle gates and flash; check that every face has metal to clean up.", "Find the centre from the cored and outside surfaces and mark it."},
			Gauge: "calipers, surface gauge",
		}, castFlash))
		return
	}
	b.op(warn(plan.Operation{
		Machine: plan.Saw, Title: "Cut the stock",
		Do: []string{"Cut " + b.W.Said(b.sawnMm()) + " long: " + b.StockText() + ". Finished " + b.W.Said(b.LengthMm()) + "; the rest is to " + b.ends() + "."},
	}, clampStock))
}
