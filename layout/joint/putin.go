package joint

import (
	"maps"
	"regexp"
	"slices"
	"strings"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// putWhen is where in the step of a joint something loose comes.
type putWhen int

const (
	putFirst putWhen = iota // before the two meet
	putNut                  // the nut that adjusts a cone or keeps a hub, before that is set or tightened by it; and what fills the room before its ring
	putLast                 // after all else
)

// ranged is a clause that sets something from one number to another: what, the two with the unit, and of what.
var ranged = regexp.MustCompile(`(?:[^.,:;]*until |^| )([^.,:; ][^.,:;]*?) (\d[\d./-]*) to (\d[\d./-]*(?: mm| in)?)( [^.,:;]*)?`)

// saysOff finds words that take off again what is put in for a step alone.
var saysOff = regexp.MustCompile(`\b(?:off|out) (?:again|before|once|after)\b|\b(?:comes?|taken?|goes) (?:off|out)\b`)

// looseTitle names what no joint fastens: a part by its title, what is bought by its words.
func (s *shop) looseTitle(e *parts.Loose) string {
	if e.Part.Value != "" {
		return s.model(e.Part.Value).Out.Title
	}
	return words.Capital(e.Item.Value)
}

// nutThread is the thread of the nut that adjusts the cone of a joint, or keeps its hub; empty without one.
func (t *joint) nutThread() string {
	if p := t.out.Bearing; p != nil && p.Adjusted {
		return p.HeldBy
	}
	if p := t.out.Slide; p != nil {
		return p.Nut
	}
	return ""
}

// copies is how many of a loose part come, which all do at once: "5 × "; nothing for one, and for what is bought.
func (s *shop) copies(e *parts.Loose) string {
	if e.Part.Value == "" {
		return ""
	}
	return words.CountOf(s.model(e.Part.Value).Part.Quantity)
}

// looseInOrder are the loose things as they are listed, a coupling before the motor that comes in the same step and is
// listed before it: its hub goes along its shaft while nothing stands before that.
func (s *shop) looseInOrder() (out []*parts.Loose) {
	for e := range seq.Refs(s.job.Loose) {
		at := slices.IndexFunc(out, func(o *parts.Loose) bool {
			return o.After.Value == e.After.Value && o.First == e.First && o.Stands != nil && s.job.OnHoles(o.Stands)
		})
		if at < 0 || e.Stands == nil || s.job.OnHoles(e.Stands) {
			at = len(out)
		}
		out = slices.Insert(out, at, e)
	}
	return out
}

// putIn adds to the step what no joint fastens and the job says after this one, as far as
// it comes then.
func (j *making) putIn(t *joint, when putWhen) {
	var made *part.Model
	var ordered *parts.Loose
	if thread := t.nutThread(); thread != "" {
		made, ordered = j.nutMade(thread), j.nutOrdered(thread)
	}
	first := 0
	for _, e := range j.looseInOrder() {
		comes, title := putLast, j.looseTitle(e)
		switch {
		case e.First:
			comes = putFirst
		case e == ordered, made != nil && e.Part.Value == made.Part.Name.Value:
			comes = putNut
		case e.As == parts.ASpacer && t.out.Slide != nil && t.out.Slide.Ring:
			comes = putNut
		}
		if comes != when || e.After.Value != t.in.Name.Value {
			continue
		}
		t.out.PutIn = append(t.out.PutIn, words.Head(title))
		for _, m := range ranged.FindAllStringSubmatch(e.How.Value, -1) {
			what, limits, gauge := m[1]+m[4], m[2]+" – "+m[3], "calipers"
			if at := strings.Index(what, " stands off the axis of "); at >= 0 { // which nothing touches, in a bore deeper than jaws reach
				what, limits = what[:at]+" from the opposite wall of the bore, at both its ends", "half the bore as measured and "+limits
				gauge = "telescoping gauge on a rod, micrometer"
			}
			t.out.Checks = append(t.out.Checks, plan.Check{What: words.Head(title) + ": " + what, Limits: limits, Gauge: gauge})
		}
		s := j.putInStep(t, e)
		if when == putFirst {
			t.out.Steps = slices.Insert(t.out.Steps, first, s)
			first++
			continue
		}
		t.out.Steps = append(t.out.Steps, s)
	}
}

// putInStep is the row in which one thing is put in.
func (j *making) putInStep(t *joint, e *parts.Loose) plan.JointStep {
	s := plan.JointStep{Title: "Put in", Do: []string{strings.TrimSuffix(j.copies(e)+j.looseTitle(e)+": "+e.How.Value, ".") + "."}}
	if looks := j.looksTo(e); looks != "" {
		s.Do = append(s.Do, looks)
	}
	if e.Buy.Value != "" {
		s.Do = append(s.Do, "Use "+words.CountOf(e.Count)+e.Buy.Value+".")
	}
	if grip := j.looseClamp(e); grip != "" {
		s.Do = append(s.Do, grip)
	}
	if e.Off && !saysOff.MatchString(e.How.Value) {
		s.Do = append(s.Do, "It comes off again before the next step.")
	}
	if e.MassKg > plan.LiftKg {
		s.Caution = "It is " + t.w.RoundMass(e.MassKg, 1) + ": " + t.w.Carriers(e.MassKg) + "."
	}
	if e == j.job.Coupled() {
		j.turnedByHand(&s, t)
	}
	if e.Belt() && !e.Off {
		s.Do = append(s.Do, j.tensioned(t, e)...)
	}
	return s
}

// turningEnd is the end of a joint that turns in a bearing or a bush; false where none does.
func (t *joint) turningEnd() (of feature, ok bool) {
	bearing := t.is(parts.BearingKind)
	return words.Either(bearing && t.in.Bearing.Rotating != "outer", t.a, t.b), !t.refused() && (bearing || t.turns())
}

// turnedByHand has the shaft that the motor drives felt by hand first, in the row in which it is coupled, or what turns
// in bearings where that is not known to turn. Nothing where it comes to turn in a later step.
func (j *making) turnedByHand(s *plan.JointStep, t *joint) {
	var turn []string
	turns, driven := map[parts.Instance]bool{}, map[parts.Instance]bool{}
	m := j.job.Motor
	if m != nil && m.Drives.Set() {
		driven = j.job.Turning(m.Drives.Instance())
	}
	for _, o := range j.all {
		of, ok := o.turningEnd()
		if !ok {
			continue
		}
		later := !slices.Contains(j.made(t), o)
		if later && driven[of.Instance()] {
			return
		}
		if one := of.Instance(); !later && !turns[one] && (o.is(parts.BearingKind) || driven[one]) {
			turn = append(turn, of.title())
			maps.Copy(turns, j.job.Turning(one))
		}
	}
	if len(driven) > 0 && turns[m.Drives.Instance()] {
		turn = []string{j.find(m.Drives).title()}
	}
	if turn != nil {
		s.Hold = "Before that " + strings.Join(turn, " and ") + " turned by hand, three turns each way, nothing rubs, no tight place, signed here; after it by hand only with the motor locked off."
	}
}

// tensioned has a belt or a chain tensioned that comes with a joint: by what is bolted in slots by then, to be set along them, each part
// once with all its bolts loose.
func (j *making) tensioned(t *joint, belt *parts.Loose) (do []string) {
	set := map[parts.Instance][]*joint{}
	var order []parts.Instance
	for _, o := range j.made(t) {
		if j.tensions(o) && o.out.Bolt != nil && len(o.out.Bolt.Shifts) > 0 {
			of := o.shifts.Instance()
			order, set[of] = seq.Add(order, of), append(set[of], o)
		}
	}
	for _, of := range order {
		var pairs []string
		for _, o := range set[of] {
			pairs = seq.Add(pairs, o.a.title()+" and "+o.b.title()+" together")
		}
		steps := words.Either(len(set[of]) > 1, "steps", "step")
		do = append(do, "Loosen the bolts that hold "+strings.Join(pairs, " and those that hold ")+", shift "+set[of][0].shifts.title()+
			" along the slots until "+words.Either(belt.Chain(), "the chain has the slack", "the belt has the tension")+" that its maker says, and tighten them again as in their own "+steps+".")
	}
	return do
}

// tensions tells whether what a joint lets be set along slots tensions a belt: where the motor is set so, not what carries a
// bearing: that of the shaft that it drives would lie askew, another is set for something else.
func (j *making) tensions(t *joint) bool {
	m := j.job.Motor
	if t.in.Bolt == nil || !t.in.Bolt.Adjust.Set() {
		return false
	}
	motor := seq.At(j.job.Loose, func(e *parts.Loose) bool { return e.As == parts.AMotor && e.Stands != nil })
	if m == nil || motor == nil || j.hangs(t, motor.Stands.On.Instance()) {
		return true
	}
	moved := slices.ContainsFunc(j.all, func(o *joint) bool {
		return o.in.Bolt != nil && o.in.Bolt.Adjust.Set() && j.hangs(o, motor.Stands.On.Instance())
	})
	return !moved || !slices.ContainsFunc(j.all, func(o *joint) bool {
		on := o.b // the housing
		if o.turns() {
			on = o.a
		}
		return (o.is(parts.BearingKind) || o.turns()) && j.hangs(t, on.Instance())
	})
}

// hangs tells whether a part is what a joint lets be set along slots, or is fixed to that but by what turns or is set too.
func (j *making) hangs(t *joint, i parts.Instance) bool {
	fixed := seq.Keep(j.all, func(o *joint) bool {
		return !o.is(parts.BearingKind) && !o.runs() && (o.in.Bolt == nil || !o.in.Bolt.Adjust.Set())
	})
	return slices.Contains(j.members(j.setAlong(t).Instance(), fixed), i)
}

// beltLater is what a joint in slots is to tension and comes with a later one, by its title; empty without one.
func (j *making) beltLater(t *joint) string {
	belt := seq.At(j.job.Loose, func(e *parts.Loose) bool {
		return e.Belt() && !e.Off && !slices.ContainsFunc(j.before, func(o *joint) bool { return o.in.Name.Value == e.After.Value })
	})
	if belt == nil || !j.tensions(t) {
		return ""
	}
	return words.Head(j.looseTitle(belt))
}

// looseKg is the mass of what is put in by hand with the joints made so far of an
// assembly, of things bought as the job weighs them.
func (j *shop) looseKg(members []parts.Instance, made []*joint) (kg float64) {
	for _, t := range made {
		for _, e := range j.job.Loose {
			if e.After.Value == t.in.Name.Value && !e.Off && slices.Contains(members, t.a.Instance()) {
				kg += e.MassKg
				if e.Part.Value != "" {
					m := j.model(e.Part.Value)
					kg += m.Out.MassKg * float64(m.Part.Quantity)
				}
			}
		}
	}
	return kg
}

// buyLoose lists what is bought and put on by hand, and what loose things are fastened with.
func (j *shop) buyLoose(made []*joint, list *buying) {
	for _, e := range j.job.Loose {
		add := func(item string, n int) {
			i := slices.IndexFunc(made, func(t *joint) bool { return t.out.Name == e.After.Value })
			switch {
			case item == "":
			case e.Part.Value != "":
				list.add(words.Capital(item), n, j.model(e.Part.Value).Out.Title, "")
			case i >= 0:
				list.use(made[i], words.Capital(item), n, "")
			}
		}
		add(e.Buy.Value, e.Count)
		n := 1
		if e.Buy.Value == "" {
			n = e.Count
		}
		add(e.Item.Value, n)
	}
}

// looksTo says which way the front of something turned looks that lies along the axis of a part, by the faces that
// lie on one another; empty where its two ends are alike, the job gives it no such place, or its copies look unlike.
func (j *making) looksTo(e *parts.Loose) string {
	if len(e.Lies) == 0 || e.Part.Value == "" {
		return ""
	}
	r, first := j.model(e.Part.Value), &e.Lies[0]
	if alike := r.EndForEnd() && len(r.Part.Holes)+len(r.Part.Slots)+len(r.Part.Radials)+len(r.Part.Keyways)+len(r.Part.Flats) == 0; alike || !r.Part.Turned() {
		return ""
	}
	for k := range e.Lies {
		if at := &e.Lies[k]; at.Edge() || at.OnRim() || (at.With == at.On) != (first.With == first.On) || at.Ref.Part != first.Ref.Part {
			return ""
		}
	}
	way := words.Either(first.With == first.On, "the other way than", "the same way as")
	return "The front of " + r.Out.Title + " looks " + way + " that of " + j.model(first.Ref.Part).Out.Title + "."
}
