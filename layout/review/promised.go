package review

import (
	"iter"
	"regexp"
	"slices"
	"strings"

	"centrepop/layout/bolts"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// guardsMade looks for guards that the motor's page names and the first run is to find shut,
// and that no part and no line of the list to buy is; and for guards with a switch that are
// bought and that the page does not name.
var guardsMade = of(everyMotor, together(each(motored.guards, motored.guardThere, motored.hinged), each(motored.orders, motored.switchNamed), motored.promised))

func (r motored) guards() iter.Seq[parts.Text] { return slices.Values(r.m.Guards) }

// guardThere looks for a guard that is neither made nor bought.
func (r motored) guardThere(g parts.Text) {
	named := parts.Bare(g.Value)
	whole := strings.TrimSpace(ofWhat().ReplaceAllString(named, ""))
	made := func(p *parts.Part) bool { // by its whole name: a cover of the hopper is no hopper, nor is its grille
		return whole == strings.ToLower(p.Title.Value) || whole == p.Name.Value
	}
	is := func(item string) bool {
		item, _, _ = strings.Cut(item, " for ") // what is for a guard is none
		lower := parts.Bare(item)
		return item != "" && (strings.Contains(lower, named) || strings.Contains(named, lower))
	}
	if !slices.ContainsFunc(r.job.Parts, made) && !slices.ContainsFunc(r.job.Loose, func(e parts.Loose) bool { return is(e.Item.Value) || is(e.Buy.Value) }) {
		r.add(Finding{
			Pos: g.Pos, What: "a guard is named that is neither a part of the job nor bought", Numbers: g.Value,
			Rule: "the first run is signed for guards that are there", Fix: "its part by the name it has here, or an item under loose",
		})
	}
}

// switchNamed looks for guards that are bought with a switch and that stop no motor by the words of it.
func (r motored) switchNamed(e *parts.Loose) {
	for _, name := range switched(e) {
		if !slices.ContainsFunc(r.m.Guards, func(g parts.Text) bool {
			return strings.Contains(strings.ToLower(g.Value), ofWhat().ReplaceAllString(name, ""))
		}) {
			r.add(Finding{
				Pos: r.m.Pos, What: "a guard is bought with a switch, and the guards that stop the motor do not name it", Numbers: name,
				Rule: "a guard that opens stops what turns behind it", Source: "ISO 14119, from memory", Fix: "the " + name + " under guards:",
			})
		}
	}
}

// hinged looks at a guard that stops the motor, as the page says, and that is hung in hinges: it is bought
// with a switch, or nothing stops the motor when it opens.
func (r motored) hinged(g parts.Text) {
	named := strings.TrimSpace(parts.Bare(g.Value))
	says := func(is phrase) bool {
		return slices.ContainsFunc(r.job.Loose, func(e parts.Loose) bool {
			said := e.Item.Value + "; " + e.How.Value + "; " + e.Buy.Value
			return strings.Contains(strings.ToLower(said), named) && is().MatchString(said)
		})
	}
	if says(aHinge) && !says(aSwitch) {
		r.add(Finding{
			Pos: g.Pos, What: "a guard that stops the motor hangs in hinges, and no switch is bought for it", Numbers: g.Value,
			Rule: "a guard that opens stops what turns behind it", Source: "ISO 14119, from memory", Fix: "with a switch, where it is bought",
		})
	}
}

// switched are the names of the guards in the words of a thing bought that has a switch.
func switched(e *parts.Loose) (names []string) {
	if !aSwitch().MatchString(e.Item.Value + " " + e.How.Value) {
		return nil
	}
	for _, thing := range strings.Split(strings.ToLower(e.Item.Value), ",") {
		if thing = strings.TrimSpace(thing); opensByHand().MatchString(ofWhat().ReplaceAllString(thing, "")) {
			names = append(names, thing)
		}
	}
	return names
}

// ownThings are nouns of what is bought or made whole, as words say it and as a name ends that
// is such a thing: a coupling guard is no coupling.
var ownThings = []struct{ noun, said, is string }{
	{"grille", "grille", "(?:grille|grid|grating|screen)"}, {"hand wheel", "hand[- ]?wheel", "wheel"}, {"coupling", "coupling", "coupling"},
}

// things are the names of all that is made or ordered, without what they are for or go to.
func (r *reviewer) things() (names []string) {
	names = append(names, seq.Map(r.job.Parts, func(p *parts.Part) string { return p.Title.Value })...)
	for e := range seq.Refs(r.job.Loose) {
		for _, thing := range strings.Split(e.Item.Value, ",") {
			names = append(names, strings.TrimSpace(ofWhat().ReplaceAllString(thing, "")))
		}
	}
	return names
}

// absent looks for things that the words handle or drive and that are neither made nor
// ordered.
func (r motored) absent(said []parts.Text) {
	things := r.things()
	none := func(noun string) bool {
		is := regexp.MustCompile(`(?i)` + noun + `s?(?:$| \d)`)
		return !slices.ContainsFunc(things, is.MatchString)
	}
	f := Finding{Severity: Check, Rule: "what the words handle is made or on the list of what to buy", Source: "by the job", Fix: "an item under loose, or other words"}
	for _, thing := range ownThings {
		word := regexp.MustCompile(`(?i)\b(?:the|a|its) (?:[a-z]+ )?` + thing.said + `\b[- ]?(\w*)`)
		i := slices.IndexFunc(said, func(t parts.Text) bool {
			return slices.ContainsFunc(word.FindAllStringSubmatch(t.Value, -1), func(m []string) bool { return !partOfThing().MatchString(m[1]) })
		})
		if i >= 0 && none(thing.is) {
			f.Pos, f.Numbers = said[i].Pos, said[i].Value
			f.What = "the words handle a " + thing.noun + ", which is neither made nor bought"
			r.add(f)
		}
	}
	isMotor := func(e *parts.Loose) bool { return e.As == parts.AMotor }
	if r.m.Drives.Set() && none("motor") && seq.At(r.job.Loose, isMotor) == nil {
		f.Pos, f.Numbers, f.What = r.m.Drives.Pos, r.m.Drives.Part+"."+r.m.Drives.Feature, "the motor that drives "+r.job.Part(r.m.Drives.Part).Title.Value+" is not on the list of what to buy"
		r.add(f)
	}
}

// promises are things that words rely on for safety, with the words of what is ordered that
// are such a thing.
var promises = []struct {
	what     string
	said, is phrase
	made     bool // it may be a part of the job
}{
	{"a limit switch", spoken(`\blimit switch`), aSwitch, false},
	{"the switch of a guard", spoken(`\b(?:its|a|the) (?:interlock|(?:guard |safety )?switch)\b`), aSwitch, false},
	{"a hinge", aHinge, aHinge, true},
	{"a heater", spoken(`\bheaters?\b`), spoken(`\bheaters?\b`), false},
	{"an emergency stop", spoken(`\bemergency stop:`), spoken(`\b(?:emergency|e-stop|stop button|mushroom|control (?:box|panel))\b`), false},
	{"the screw of the earth", spoken(`\bearth:.*\b(?:screw|lug)\b`), spoken(`\b(?:earth(?:ing)?|ground(?:ing)?)\b`), false},
}

// promised looks for what words of the motor, of the first run and of how things are put on
// rely on for safety, and that nobody is to buy.
func (r motored) promised() {
	m := r.m
	said := slices.Clone(m.Notes)
	if !ownEarth().MatchString(m.Earth.Value) {
		said = append(said, parts.Text{Value: "earth: " + m.Earth.Value, Pos: m.Earth.Pos})
	}
	if m.EmergencyStop.Value != "" {
		said = append(said, parts.Text{Value: "emergency stop: " + m.EmergencyStop.Value, Pos: m.EmergencyStop.Pos})
	}
	said = append(append(said, r.run().WarmUpHow), r.run().Checks...)
	ordered := ""
	for e := range seq.Refs(r.job.Loose) {
		said, ordered = append(said, e.How), ordered+e.Item.Value+"; "+e.Buy.Value+"; "
	}
	if ordered != "" {
		r.absent(said)
	}
	for _, p := range promises {
		at := slices.IndexFunc(said, func(t parts.Text) bool { return p.said().MatchString(t.Value) })
		made := p.made && slices.ContainsFunc(r.job.Parts, func(q *parts.Part) bool { return p.is().MatchString(q.Title.Value + " " + q.Name.Value) })
		if at < 0 || ordered == "" || made || p.is().MatchString(ordered) {
			continue
		}
		r.add(Finding{
			Pos: said[at].Pos, What: "the words rely on " + p.what + ", and none is bought", Numbers: said[at].Value,
			Rule: "what keeps people safe is on the list of what to buy", Fix: "an item under loose",
		})
	}
}

// anchored looks at how the machine is fixed to the floor: that it is, where words name
// anchors; that the holes for them are in what is fixed; and that a nut goes on over each.
var anchored = together(of(everyPart, (*view).freeAnchors, (*view).anchoredAt), (*reviewer).noAnchors)

// fixed are the words that anchor parts to the floor, by the part.
func (r *reviewer) fixed() map[string]parts.Text {
	out := map[string]parts.Text{}
	for _, j := range r.job.Joints {
		if j.Anchored.Value != "" {
			out[j.Anchored.Value] = j.Anchored
		}
	}
	return out
}

// anchorage is the finding that a feature of the part is not anchored as it is to be.
func (v *view) anchorage(feature string, pos parts.Pos, what, numbers, fix string) {
	v.report(Check, feature, pos, Finding{What: what, Numbers: numbers, Rule: "what is anchored has free holes for its anchors, and its step says so", Fix: fix})
}

// freeAnchors looks at holes for anchors in a part that no step anchors: at what lies over them, and, where a step anchors
// others, that none anchors it.
func (v *view) freeAnchors() {
	fixed := v.fixed()
	if _, is := fixed[v.p.Name.Value]; is {
		return
	}
	for _, g := range v.holesAndSlots() {
		if !anchors().MatchString(g.Name.Value) {
			continue
		}
		if !v.jointNames(g.Name.Value) {
			v.anchorRoom(&g)
		}
		if len(fixed) > 0 {
			v.anchorage(g.Name.Value, g.Pos, g.Name.Value+" of "+v.p.Title.Value+" are for anchors, and no step anchors it", "", "anchored: "+v.p.Name.Value)
		}
	}
}

// noAnchors looks for words that name anchors where no step fixes the machine.
func (r *reviewer) noAnchors() {
	if len(r.fixed()) > 0 || len(r.job.Joints) == 0 {
		return
	}
	for _, v := range r.all() {
		for _, t := range append(slices.Clone(v.texts()), seq.Map(v.holesAndSlots(), func(g parts.HoleGroup) parts.Text { return g.Name })...) {
			if anchors().MatchString(t.Value) {
				r.add(Finding{
					Pos: t.Pos, What: "words name anchors, and no step fixes the machine to the floor", Numbers: t.Value,
					Rule: "what is anchored has free holes for its anchors, and its step says so", Fix: "anchored: at the joint before which that is done",
				})
				return
			}
		}
	}
}

// anchoredAt looks at the holes of a part that is anchored, and at what it stands on.
func (v *view) anchoredAt() {
	at, is := v.fixed()[v.p.Name.Value]
	if !is {
		return
	}
	free := seq.Keep(v.holesAndSlots(), func(g parts.HoleGroup) bool { return g.Anchors() && !v.jointNames(g.Name.Value) })
	for g := range seq.Refs(free) {
		v.anchorRoom(g)
		if under, mm := v.machine().Below(v.p.Name.Value, g.Name.Value); under != "" && mm < meetMm {
			v.anchorage(g.Name.Value, at.Pos, v.p.Title.Value+" is anchored, and stands on "+under+", not on the floor", g.Name.Value, "anchored: the part that lies on the floor")
		}
	}
	if len(free) == 0 {
		v.anchorage("", at.Pos, v.p.Title.Value+" is anchored, and has no hole that an anchor goes through", "", "holes for anchors, or the part that has them")
	}
}

// thickShare is how thick a foot is, as a share of the diameter of its anchor. Common
// practice, no source.
const thickShare = 0.5

// anchorRoom looks for a part over the hole of an anchor, where its nut comes, two diameters
// high: as wide as that is over its flats, and with washer and socket where the part is welded on.
func (v *view) anchorRoom(g *parts.HoleGroup) {
	const high, freely = 2, 1.1 // diameters; a plain hole to its anchor
	d := g.Size.Size.Nominal.Mm / freely
	b, err := bolts.Find(g.Size.Thread)
	if err != nil {
		b, err = bolts.Find(g.Size.Thread + " UNC") // of inches alone every pitch passes the same hole
	}
	if err == nil {
		d = b.Thread.MajorMm
	}
	if b := v.p.Bar; v.p.Kind == parts.BarPart && !b.Wall.Set() {
		v.atLeast(g.Name.Value, g.Pos, min(b.Width.Mm, b.Depth.Mm), thickShare*d, Finding{
			What: v.p.Title.Value + " is thin for its anchors", Numbers: ", wanted at least ", Rule: "a foot is half as thick as its anchor at the least", Fix: "a thicker foot",
		})
	}
	nut := max(0.75*d, b.NutAcrossFlatsMm/2)
	over, clear := v.machine().Over(v.p.Name.Value, g.Name.Value, 2*d, high*d)
	for _, j := range v.planned(parts.WeldKind) {
		if in := v.job.Joint(j.Name); over == "" || !in.Holds(over) || !in.Holds(v.p.Name.Value) {
			continue
		}
		if err != nil {
			nut += j.Weld.LegMm
			break
		}
		if room, err := b.HeadRoom(bolts.Place{Nut: true, Washer: true, FilletMm: j.Weld.LegMm}); err == nil {
			nut = room.NeedWallMm
		}
	}
	if over == "" || !geom.Over(nut, clear) {
		return
	}
	v.report(Check, g.Name.Value, g.Pos, Finding{
		What:    v.job.Part(over).Title.Value + " lies where the nuts of the anchors in " + g.Name.Value + " of " + v.p.Title.Value + " come",
		Numbers: v.mm(clear) + " free round the middle of a hole, wanted " + v.mm(nut),
		LeftMm:  left(clear), Rule: "a nut goes on over an anchor, with washer and socket where the part stands there before",
		Fix: "another place for the holes, or larger holes in what lies over them",
	})
}
