package review

import (
	"fmt"
	"iter"
	"slices"
	"strings"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// rarest is how many of a unit pass at most between two times that something is greased or
// looked at, about five years. Common practice, no source.
var rarest = map[string]float64{"h": 10_000, "hour": 10_000, "day": 2000, "week": 260, "month": 60, "season": 10, "year": 5}

// greaseShare is how long grease stays good, as a share of that: two years. Common practice, no source.
const greaseShare = 0.4

// howOften is a time of the upkeep, with its unit; none in other words.
func howOften(t parts.Text) (n float64, unit string) {
	m := every().FindStringSubmatch(t.Value)
	if m == nil {
		return 0, ""
	}
	return figure(m[1]), m[2]
}

// upkeep looks for times that are too long to be meant, at what is greased, and at what wears.
var upkeep = together(
	each(everyLoose, (*reviewer).onPaint), (*reviewer).tooRarely, each(everyPort, (*reviewer).portGrease, (*reviewer).unevenly), (*reviewer).allGreased,
	each(everyWear, (*reviewer).flightWorn, (*reviewer).wornOut, (*reviewer).wearing),
)

func everyPort(r *reviewer) iter.Seq[parts.Port] { return slices.Values(r.upkeep().Ports) }
func everyWear(r *reviewer) iter.Seq[parts.Wear] { return slices.Values(r.upkeep().Wear) }

// tooRarely looks at the times of the upkeep.
func (r *reviewer) tooRarely() {
	up := r.upkeep()
	for _, p := range up.Ports {
		r.rarely(p.Every, greaseShare)
	}
	for _, b := range up.Bolts {
		r.rarely(b.Every, 1)
	}
	for _, w := range up.Wear {
		r.rarely(w.Every, 1)
	}
}

// rarely reports a time that is more than a share of the longest.
func (r *reviewer) rarely(t parts.Text, share float64) {
	n, unit := howOften(t)
	if strings.HasPrefix(unit, "h") {
		share = 1 // of running, not of standing
	}
	if unit != "" && n > share*rarest[unit] {
		r.add(Finding{
			Pos: t.Pos, What: "a place of the upkeep is looked at hardly ever", Numbers: t.Value,
			Rule: "grease ages in two years, and bolts are looked at in five at the most", Fix: "a shorter time",
		})
	}
}

// allGreased looks for a bearing without a port beside one that has one.
func (r *reviewer) allGreased() {
	r.beside(seq.Map(r.upkeep().Ports, func(p parts.Port) parts.Text { return p.Bearing }), Finding{
		Pos: r.upkeep().Pos, What: "the upkeep greases %s and not %s", Rule: "all bearings of one housing are greased", Fix: "a port for %s too, or accept it where it is sealed",
	})
}

// wearing looks for what wears by a name that no part has: its first word begins titles of
// parts, and its second stands in none, nor in what is bought.
func (r *reviewer) wearing(w parts.Wear) {
	said := strings.Fields(strings.ToLower(w.Item.Value))
	if len(said) < 2 {
		return
	}
	titles := seq.Map(r.job.Parts, func(p *parts.Part) string { return p.Title.Value })
	like := seq.Keep(titles, func(title string) bool { return strings.HasPrefix(strings.ToLower(title)+" ", said[0]+" ") })
	all := strings.ToLower(" " + strings.Join(append(titles, seq.Map(r.pl.Bought, func(b plan.BoughtRow) string { return b.Item })...), " "))
	if len(like) > 0 && !strings.Contains(all, " "+strings.TrimSuffix(said[1], "s")) {
		r.add(Finding{
			Pos: w.Pos, What: "the upkeep looks at what no part and nothing bought is called", Numbers: w.Item.Value + "; there is " + strings.Join(like, ", "),
			Rule: "what wears is called as on its own sheet", Fix: "part: with its name",
		})
	}
}

// greaseKind is how such words name a grease, sorted.
func greaseKind(said string) []string {
	kind := greaseOf().FindAllString(strings.ToLower(strings.ReplaceAll(said, "NLGI ", "NLGI")), -1)
	slices.Sort(kind)
	return slices.Compact(kind)
}

// bearing is that of a joint by its name; nil where it has none.
func (r *reviewer) bearing(joint string) *parts.BearingJoint {
	if j := r.job.Joint(joint); j != nil {
		return j.Bearing
	}
	return nil
}

// portGrease compares the grease of the upkeep with that of the bearing's joint.
func (r *reviewer) portGrease(p parts.Port) {
	b, name, again := r.bearing(p.Bearing.Value), p.Bearing.Value, p.Grease.Value
	if b == nil {
		return
	}
	first := b.Grease.Value
	was, is := greaseKind(first), greaseKind(again)
	r.firstOf(Finding{Part: name, Pos: p.Pos},
		flaw{b.Sealed(), Finding{
			What: "the upkeep greases " + name + ", which is sealed on both sides", Numbers: b.Bearing.Value,
			Rule: "a sealed bearing takes no grease and is changed when it is worn", Fix: "an open bearing, or wear in place of the port"}},
		flaw{first == "" && again == "", Finding{
			What: "the upkeep greases " + name + ", and nothing says with what", Rule: "a bearing is greased with what it was filled with", Fix: "grease at the bearing of the joint"}},
		flaw{len(was) > 0 && len(is) > 0 && !slices.Equal(was, is), Finding{
			What: "the upkeep greases " + name + " with another grease than it was filled with", Numbers: first + ", " + again,
			Rule: "greases of two thickeners soften one another", Fix: "one grease in both places; the upkeep takes that of the joint where it names none"}},
	)
}

// The least ratio of two times for grease that is a slip and no choice: common practice, no source.
const unevenShare = 20.0

// unevenly looks for bearings of one housing, of which one is greased far less often than another.
func (r *reviewer) unevenly(p parts.Port) {
	a := r.bearing(p.Bearing.Value)
	rare, unit := howOften(p.Every)
	if a == nil || unit == "" {
		return
	}
	for o := range everyPort(r) {
		b := r.bearing(o.Bearing.Value)
		if often, same := howOften(o.Every); b != nil && a.Cup.Part == b.Cup.Part && same == unit && rare >= unevenShare*often {
			r.add(Finding{
				Pos: p.Every.Pos, What: "the upkeep greases " + p.Bearing.Value + " far less often than " + o.Bearing.Value,
				Numbers: p.Every.Value + " and " + o.Every.Value + ", both in " + a.Cup.Part,
				Rule:    "bearings of one housing are greased about as often", Fix: "one time for both, or accept it",
			})
		}
	}
}

// beside reports f for each bearing that is not among the named beside one of its housing that is:
// %s stands for their names.
func (r *reviewer) beside(named []parts.Text, f Finding) {
	is := func(j *parts.Joint) bool {
		return slices.ContainsFunc(named, func(t parts.Text) bool { return t.Value == j.Name.Value })
	}
	for _, j := range r.job.Of(parts.BearingKind) {
		o := seq.First(r.job.Of(parts.BearingKind), func(o *parts.Joint) bool { return is(o) && o.Bearing.Cup.Part == j.Bearing.Cup.Part })
		if o != nil && !is(j) {
			one := f
			one.Numbers = "both in " + j.Bearing.Cup.Part
			one.What, one.Fix = fmt.Sprintf(f.What, o.Name.Value, j.Name.Value), fmt.Sprintf(f.Fix, j.Name.Value)
			r.add(one)
		}
	}
}

// wornShare is how much of its pitch the play of a thread may be. Common practice, no source: half the pitch is metal.
const wornShare = 0.75

// flightWorn looks at how far off its round words call a flight worn out: neither before it runs, nor never.
func (r *reviewer) flightWorn(w parts.Wear) {
	off := offSaid().FindStringSubmatch(w.Look.Value)
	if off == nil {
		return
	}
	in, gap := r.machine().FlightGapMm(w.Part.Value)
	if in == "" {
		return
	}
	f := Finding{
		Severity: Check, Part: w.Part.Value, Pos: w.Look.Pos, What: "by the words it is worn out when it is new", Numbers: r.mm(gap) + " off " + in + " as drawn",
		Rule: "words and numbers of one job agree", Source: "by geometry", Fix: "a larger limit",
	}
	flight := r.job.Part(w.Part.Value).Flight
	switch mm := r.itemMm(off[1] + " " + off[2]); {
	case mm >= gap+(flight.Outside.Mm-flight.Shaft.Mm)/2:
		f.What, f.Fix = "by the words it is worn out when nothing of it is left", "a smaller limit"
	case mm > gap:
		return
	}
	r.add(f)
}

// wornOut looks at a nut that words keep until the play eats its thread.
func (r *reviewer) wornOut(w parts.Wear) {
	m, v := playSaid().FindStringSubmatch(w.Look.Value), r.viewOf(w.Part.Value)
	if m == nil || v == nil {
		return
	}
	play := r.itemMm(m[1] + " " + m[2])
	for _, c := range v.inside {
		if t := c.Size.Thread; t != nil && play > wornShare*t.PitchMm {
			v.report(Check, c.Name, w.Look.Pos, Finding{
				What: "by the words " + v.p.Title.Value + " runs until its thread is worn through", Numbers: r.mm(play) + " of play on a pitch of " + r.mm(t.PitchMm), OverMm: over(play),
				Rule: "a nut is changed before half its thread is worn", Source: practice, Fix: "a smaller play",
			})
		}
	}
}

// onPaint looks for an earth that words put on paint.
func (r *reviewer) onPaint(e *parts.Loose) {
	if said := e.Item.Value + "; " + e.How.Value; earthed().MatchString(said) && painted().MatchString(said) && !denied().MatchString(e.How.Value) {
		r.add(Finding{
			Pos: e.How.Pos, What: "the earth is put on paint", Numbers: e.How.Value,
			Rule: "an earth lies on bright metal", Source: "IEC 60204-1, from memory", Fix: "on bright metal",
		})
	}
}
