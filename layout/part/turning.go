package part

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/bolts"
	"centrepop/layout/cutting"
	"centrepop/layout/grooves"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

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

// roughBoth roughs both ends of a bar that is turned between centres, each from its own: metal taken off one
// end moves the other.
func (b *bench) roughBoth(settings [2]setting) {
	o := plan.Operation{Machine: plan.Lathe, Title: "Rough both ends", Tool: "roughing tool", Gauge: "calipers",
		Holding: "between centres, driver on the other end; or in the chuck with a centre at the free end"}
	var all []*Step
	for i, set := range settings {
		var to []string
		own := seq.Keep(set.steps, func(s *Step) bool { return !b.behind(set.face, s) })
		others := seq.Keep(settings[1-i].steps, func(s *Step) bool { return b.behind(settings[1-i].face, s) })
		for _, s := range append(own, others...) {
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
	name        string // empty for the turning itself
	tools       []string
	do, limits  []string
	lengths     []string // what measures lengths that calipers do not
	refs        []int
	turned, cut []*Step // turned or bored, and threaded
	cuts        int
}

// turnSetting is the lathe work of one setting, phase after phase: outsides from the
// widest down, bores from the narrowest up, undercuts, chamfers and grooves, threads,
// and what is polished. Few cuts are one operation, many are one after the other.
func (b *bench) turnSetting(set setting) {
	b.face = set.face
	o := plan.Operation{Machine: plan.Lathe, Title: "Turn from the " + string(set.face) + " face", Tool: "facing and turning tool"}
	if !anyTurned(set.steps) {
		o.Title = "Face the " + string(set.face) + " end"
	}
	o.Holding = b.holding(set)
	if b.onCentres {
		o.Tool = "turning tool"
	} else {
		b.faceLines(set, &o)
		b.faced[set.face] = len(b.ops)
	}
	if names := b.namesTogether(set.steps); names != "" {
		o.Do = append(o.Do, "Without letting the part go between them: "+names+".")
	}
	phases := b.phases(set)
	if !set.first() && len(b.rest()) > 0 {
		o.Title = "Turn from the " + string(set.face) + " face"
	}
	at, all := &phases[0], seq.Sum(phases, func(p phase) int { return p.cuts })
	if line := b.roughLine(phases, all); line != "" {
		o.Do = append(o.Do, line)
	}
	b.finishes[len(b.ops)] = len(o.Do)
	at.do, at.limits, o.Do, o.Limits = slices.Concat(o.Do, at.do), slices.Concat(o.Limits, at.limits), nil, nil
	b.boxes(o, phases, all > boxCuts)
	if last := &b.ops[len(b.ops)-1]; set.first() && b.partedOff() {
		last.Do = append(last.Do, "Part off, "+b.W.Near(1)+" over the length.")
	} else if set.first() && b.sawnOff() {
		last.Do = append(last.Do, "Saw off what it was held by, "+b.W.Near(1)+" over the length.")
	} else if need := b.partingStockMm(); set.first() && need > 0 {
		kind, names := plan.StockShort, b.namesTogether(set.steps)
		kind, names = words.Either(names != "", kind, plan.FitSplit), cmp.Or(names, words.Spaced(b.widest().Name))
		b.unmeasured = append(b.unmeasured, plan.Problem{
			Kind: kind, Pos: b.Part.Stock.Length.Pos, Feature: b.widest().Name,
			Args: []plan.Arg{plan.Named(names), plan.Of(plan.Mm, b.sawnMm()), plan.Of(plan.Mm, b.W.Up(need, 1, 1.0/16))},
		})
	}
}

// roughLine roughs what is turned in a setting before one of it is finished: many outsides, for metal taken off one moves
// the others, and all where a close size would be measured warm.
func (b *bench) roughLine(phases []phase, cuts int) string {
	cut := seq.Keep(seq.Flat(phases, func(p phase) []*Step { return p.turned }), func(s *Step) bool {
		return !s.Size.AsBought && !tapped(s) && !(s.Inside && b.noBar(s))
	})
	outsides := len(seq.Keep(cut, func(s *Step) bool { return !s.Inside }))
	switch {
	case b.roughed:
		return ""
	case outsides < len(cut) && b.Part.Stock.Form != "tube" && !b.cut.boreCut && slices.ContainsFunc(cut, b.warm):
		return "Rough all, leave " + b.W.Near(0.5) + " on diameter, let it cool before one is finished."
	case cuts > boxCuts && outsides >= roughedSteps:
		return "Rough all of them " + b.W.Near(1) + " over on diameter, the widest first, before one is finished."
	}
	return ""
}

// warmK is how much warmer than the room roughing leaves a part, and warmShare how much of its tolerance a size may
// have grown when it is finished. Common practice, no source.
const (
	warmK     = 30.0
	warmShare = 0.5
)

// warm tells whether a size is so close that it may not be finished in a part that is warm from roughing.
func (b *bench) warm(s *Step) bool {
	return b.Material != nil && s.Size.Fitted() && s.Size.Thread == nil && !s.Size.Measured() &&
		b.Material.AlphaPerK*warmK*s.Size.NominalMm > warmShare*(s.Size.MaxMm-s.Size.MinMm)
}

func (b *bench) boxes(o plan.Operation, phases []phase, several bool) {
	var turned, cut []*Step
	var lengths []string
	tools, n, later := []string{o.Tool}, 0, false
	flush := func() {
		o.Tool = words.Join(", ", tools...)
		o.Gauge = b.gauges(append(slices.DeleteFunc(slices.Clone(turned), func(s *Step) bool { return s.Size.Thread != nil }), cut...), lengths...)
		if o.Speed = b.threadSpeed(cut); len(turned) > 0 || !later {
			o.Speed = words.Join("; ", b.settingSpeed(turned), o.Speed)
		}
		slices.Sort(o.Refs)
		o.Refs = slices.Compact(o.Refs)
		b.held[len(b.ops)] = later
		b.op(o)
		o, turned, cut, lengths, tools, n, later = plan.Operation{Machine: o.Machine, Holding: "same setting"}, nil, nil, nil, nil, 0, true
	}
	for _, p := range phases {
		if several && n > 0 && n+p.cuts > boxCuts {
			flush()
		}
		if later {
			o.Title = words.Capital(words.Join(", ", words.Lower(o.Title), p.name))
		}
		tools, lengths = seq.Add(tools, p.tools...), seq.Add(lengths, p.lengths...)
		o.Do, o.Limits, o.Refs = append(o.Do, p.do...), append(o.Limits, p.limits...), append(o.Refs, p.refs...)
		turned, cut, n = append(turned, p.turned...), append(cut, p.cut...), n+p.cuts
	}
	flush()
}

// phases are the work of a setting; those with nothing to do are left out, but for the first.
func (b *bench) phases(set setting) []phase {
	out := []phase{{}, {name: "bores"}, {name: "tapers"}, {name: "undercuts"}, {name: "chamfers"},
		{name: "grooves"}, {name: "knurls", tools: []string{"knurling tool"}}, {name: "threads"}, {name: "surfaces"}}
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
		p.refs, p.turned, p.tools = append(p.refs, b.ref(s)), append(p.turned, s), seq.Add(p.tools, b.stepTools(s)...)
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
	c.do = slices.Concat(b.rimLines(set), c.do)
	for _, edge := range b.bevels {
		if b.reached(edge, set) {
			c.tools = seq.Add(c.tools, edge.tool())
		}
	}
	g.do, g.limits, g.refs = b.grooveLines(func(g *Groove) bool { return g.at(set) })
	for q := range seq.Refs(b.Grooves) {
		if q.at(set) {
			g.tools = seq.Add(g.tools, insideTool(q.Row.Inside, "grooving tool"))
		}
	}
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
	p.limits = append(p.limits, b.leadLimits(s)...)
}

// lengthLimits are those of the lengths whose second end is made in a setting: by what is turned there, or by
// what beside it is bored wider, or turned narrower.
func (b *bench) lengthLimits(set setting, out []phase) {
	for s := range seq.Refs(b.Steps) {
		here := slices.Contains(set.steps, s)
		other := slices.ContainsFunc(b.beside(s), func(o *Step) bool {
			return slices.Contains(set.steps, o) != here && s.Inside == (o.RadiusMm() > s.RadiusMm())
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
		if gauge := b.lengthGauge(s); gauge != "calipers" {
			p.lengths = seq.Add(p.lengths, gauge)
		}
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
			p.tools = seq.Add(p.tools, b.stepTools(s)...)
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
		switch phase {
		case threadPhase:
			p.cut = append(p.cut, s)
			p.tools = seq.Add(p.tools, words.Either(tapped(s), "tap", insideTool(s.Inside, "threading tool")))
		case undercutPhase:
			p.tools = seq.Add(p.tools, insideTool(s.Inside, "recessing tool"))
		}
		if over != "" {
			line = over + words.Lower(line)
		}
		p.do, p.refs, p.cuts = append(p.do, line), append(p.refs, b.ref(s)), p.cuts+1
	}
}

// insideTool is a lathe tool, in a bore one made for it.
func insideTool(inside bool, tool string) string { return words.When(inside, "internal ") + tool }

// stepTools are what the tool that turns the outside does not do of a step: bore it, reach between two
// shoulders, and its undercut, where that has no line of its own.
func (b *bench) stepTools(s *Step) (out []string) {
	if s.Size.AsBought || s.Inside && b.noBar(s) {
		return nil
	}
	if s.Inside {
		out = append(out, "boring bar")
	}
	if b.between(s, 1) {
		out = append(out, insideTool(s.Inside, "grooving tool"))
	}
	if s.Undercut != nil && s.Undercut.Name == "" {
		out = append(out, insideTool(s.Inside, "recessing tool"))
	}
	return out
}

// namesTogether lists the steps of a setting that have to be turned without
// letting the part go.
func (b *bench) namesTogether(steps []*Step) string {
	together := seq.Keep(steps, func(s *Step) bool { return b.oneSetting(s.Name) })
	return words.Join(", ", seq.Map(together, func(s *Step) string { return words.Spaced(s.Name) })...)
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
	if line := b.tailLine(set); line != "" {
		o.Do, o.Tool = append(o.Do, line), o.Tool+", centre drill"
	}
	o.Do = append(o.Do, b.openLines(set)...)
}

// tailLine drills the centre of a free end that one is to hold, where the drawing has none there: there is none before.
func (b *bench) tailLine(set setting) string {
	end := set.face.FromFront(0, b.LengthMm())
	if !b.tail || b.centreLine(set.face) != "" || b.boreAt(end) != nil {
		return ""
	}
	size, speed := "", ""
	if pilot, _, err := grooves.PilotFor(b.outsideAt(end).Size.NominalMm); err == nil {
		c, _ := grooves.CentreFor(pilot, grooves.CentreA) // of the series
		size, speed = " "+c.Designation, b.atSpeed(cutting.Drill, c.ConeMm, true)
	}
	return "If a centre holds it, not a steady: centre-drill" + size + speed + ", before anything is turned; it stays in the end."
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

// gauges names what measures the steps of a setting, with what else does.
func (b *bench) gauges(steps []*Step, out ...string) string {
	for _, s := range steps {
		if s.gauged() && !s.Size.AsBought {
			out = seq.Add(out, gauge(s))
		}
	}
	return words.Join(", ", append(out, "calipers")...)
}

// stepWork is the line for one cylinder; a whole one is turned up to the jaws.
func (b *bench) stepWork(s *Step, whole bool) string {
	if s.Size.AsBought {
		short := words.When(s.LengthMm() < b.LengthMm()-geom.CloseMm, ", "+b.longText(s)+" long")
		return words.Capital(words.Spaced(s.Name)) + " " + b.W.Dia(s.Size.NominalMm) + short + ": as bought, not turned."
	}
	line := b.cutLine(s)
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

// cutLine says by what one cylinder is cut, to what size and how long.
func (b *bench) cutLine(s *Step) string {
	verb := "Turn "
	switch {
	case s.Inside && s.Size.Thread == nil && b.noBar(s):
		verb = "Drill out "
	case s.Name == boreStep:
		verb = "Machine "
	case s.Inside:
		verb = "Bore "
	}
	name, long := words.Spaced(s.Name), ", "+b.longText(s)+" long"
	switch first, what := b.firstSize(s); {
	case tapped(s):
		return words.Capital(name) + ": the tap drill makes it, no bar reaches so deep" + long
	case first != "":
		return verb + name + " to " + first + long + what
	case b.drilledFirst(s):
		return words.Capital(name) + " " + b.sizeText(s) + long + ": made by the drill above, no bar reaches so deep"
	}
	return verb + name + " " + b.sizeText(s) + long
}

// firstSize is what a step is turned to first, and what for; empty where that is its size.
func (b *bench) firstSize(s *Step) (size, what string) {
	switch {
	case s.Size.Thread != nil:
		return b.W.Dia(b.threadBlankMm(s)), ", for the thread"
	case s.firstMm != 0:
		return b.W.Dia(s.firstMm), ", " + s.firstFor
	}
	return "", ""
}
