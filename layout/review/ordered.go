package review

import (
	"cmp"
	"regexp"
	"strings"

	"centrepop/layout/bolts"
	"centrepop/layout/words"
	"centrepop/parts"
)

// Numbers in the words of what is ordered: the class of a screw, the torque it gets, the angle of
// a head, how far apart the holes of a sheet are, and how long a hub is on its seat.
var (
	screwClass  = regexp.MustCompile(`(?i)(?:^|[ ,])(grade \d+|\d\d?\.\d\d?)(?:[ ,]|$)`)
	saidTorque  = regexp.MustCompile(`(?i)(\d+(?:\.\d+)?) ?(N ?m|lbf?[ -]?ft|lbf?[ -]?in)( oiled)?\b`)
	headDegrees = regexp.MustCompile(`(?i)\b(\d+) ?° (?:flat |countersunk )?head`)
	staggered   = regexp.MustCompile(`(?i)\bstaggered at ` + bareLength)
	hubLong     = regexp.MustCompile(`(?i)\b(?:half|hub|boss) (?:of )?` + bareLength + `(?: long)?(?: at (?:the )?most)?\b`)
)

// screwHolds is the least thread that a screw is in, and torqueFar how far a torque in words may lie beyond
// what its class takes and needs, both as shares. Common practice, no source.
const (
	screwHolds = 0.8 // of its diameter
	torqueFar  = 1.25
)

// orders looks at what the words of a thing bought say of its screws by themselves: there is their
// class, it takes their torque, and there is metal between the holes of a sheet.
func (r *reviewer) orders(e *parts.Loose) {
	f := Finding{Severity: Check, Pos: e.Pos, Source: "by the job"}
	order := cmp.Or(e.Buy.Value, e.Item.Value)
	if hole, row := itemHoles.FindStringSubmatch(e.Item.Value), staggered.FindStringSubmatch(e.Item.Value+"; "+e.How.Value); hole != nil && row != nil {
		if d, pitch := r.itemMm(hole[1]), r.itemMm(row[1]+" "+row[2]); pitch <= d {
			f.What, f.Numbers, f.OverMm = "the holes of "+words.Head(e.Item.Value)+" run into one another", r.mm(d)+" at "+r.mm(pitch), over(d-pitch)
			f.Rule, f.Fix = "there is metal between holes", "holes further apart"
			r.add(f)
			f.OverMm = nil
		}
	}
	t, _, ok := screwBought(order)
	class := screwClass.FindStringSubmatch(order)
	if !ok || class == nil {
		return
	}
	b, err := bolts.Find(t.Designation)
	if err != nil {
		return
	}
	if _, err := b.Grade(class[1]); err != nil {
		f.What, f.Numbers = "no screw of this size has the class that is ordered", class[1]+" for "+t.Designation
		f.Rule, f.Source, f.Fix = "a screw is ordered by a class of its standard", "ISO 898-1, SAE J429", "8.8 or grade 5, say"
		r.add(f)
		return
	}
	said := saidTorque.FindStringSubmatch(e.How.Value)
	if said == nil {
		return
	}
	gives, err := b.Tighten(bolts.Tightening{Class: class[1], Condition: strings.TrimSpace(strings.ToLower(said[3]))})
	if nm := torqueNm(said[1], said[2]); err == nil && (nm > torqueFar*gives.TorqueNm || nm*torqueFar < gives.TorqueLowNm) {
		f.What, f.Numbers = "the words give the screws another torque than their class takes", said[0]+" for "+t.Designation+" "+class[1]+": "+r.w.Torque(gives.TorqueNm)
		f.Rule, f.Source, f.Fix = "a screw is stretched to three quarters of its proof load", "T = K·F·d, Shigley", "the torque, or the class"
		r.add(f)
	}
}

// holds looks at how far screws that are ordered come into their threads: enough to hold, and not to the
// bottom where they are deepMm deep, 0 for through.
func (v *view) holds(what string, pos parts.Pos, d, inMm, deepMm float64) {
	f := Finding{Severity: Check, Part: v.p.Name.Value, Pos: pos, Source: practice}
	switch {
	case inMm < screwHolds*d-slackMm:
		f.What, f.Numbers, f.LeftMm = what+" hardly reach into their threads", v.mm(max(0, inMm))+" in, wanted "+v.mm(screwHolds*d), left(max(0, inMm))
		f.Rule, f.Fix = "a screw holds in one diameter of thread", "a longer screw"
	case deepMm > 0 && inMm > deepMm+slackMm:
		f.What, f.Numbers, f.OverMm = what+" meet the bottom of their holes", v.mm(inMm)+" in "+v.mm(deepMm), over(inMm-deepMm)
		f.Rule, f.Fix = "a screw clamps before it meets the bottom", "a shorter screw"
	default:
		return
	}
	v.add(f)
}

// seatLong looks at a hub that words give a length, on the step it stands on: it ends before the
// groove of the ring that keeps it, and before the end.
func (r *reviewer) seatLong(e *parts.Loose) {
	m := hubLong.FindStringSubmatch(e.How.Value)
	if m == nil || e.Stands == nil {
		return
	}
	v := r.viewOf(e.Stands.On.Part)
	if v == nil {
		return
	}
	c := named(v.outside, e.Stands.On.Feature)
	if c == nil {
		return
	}
	room := c.longMm()
	for _, g := range v.q.Grooves {
		if g.In == e.Stands.On.Feature {
			room = min(room, max(g.FromMm-c.fromMm, c.toMm-g.ToMm))
		}
	}
	if long := r.itemMm(m[1] + " " + m[2]); long > room+slackMm {
		r.add(Finding{
			Severity: Check, Part: v.p.Name.Value, Feature: c.name, Pos: e.How.Pos, What: "what sits on " + c.name + " of " + v.p.Title.Value + " is longer than its seat, by the words", Numbers: r.mm(long) + " on " + r.mm(room), OverMm: over(long - room),
			Rule: "a hub has its whole length on its seat, before what keeps it", Source: "by the job", Fix: "a shorter one, or a longer seat",
		})
	}
}
