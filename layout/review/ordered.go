package review

import (
	"cmp"
	"strings"

	"centrepop/layout/bolts"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
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
	r.holesMeet(e)
	order := cmp.Or(e.Buy.Value, e.Item.Value)
	o, ok := orderOf(order)
	class := screwClass().FindStringSubmatch(order)
	if !ok || class == nil {
		return
	}
	b, err := bolts.Find(o.thread.Designation)
	if err != nil {
		return
	}
	_, unknown := b.Grade(class[1])
	of := " for " + o.thread.Designation
	f := flaw{unknown != nil, Finding{
		What: "no screw of this size has the class that is ordered", Numbers: class[1] + of,
		Rule: "a screw is ordered by a class of its standard", Source: "ISO 898-1, SAE J429", Fix: "8.8 or grade 5, say"}}
	if said := saidTorque().FindStringSubmatch(e.How.Value); said != nil && unknown == nil {
		gives, err := b.Tighten(bolts.Tightening{Class: class[1], Condition: strings.TrimSpace(strings.ToLower(said[3]))})
		nm := torqueNm(said[1], said[2])
		f = flaw{err == nil && (nm > torqueFar*gives.TorqueNm || nm*torqueFar < gives.TorqueLowNm), Finding{
			What: "the words give the screws another torque than their class takes", Numbers: said[0] + of + " " + class[1] + ": " + r.w.Torque(gives.TorqueNm),
			Rule: "a screw is stretched to three quarters of its proof load", Source: "T = K·F·d, Shigley", Fix: "the torque, or the class"}}
	}
	r.firstOf(Finding{Pos: e.Pos}, f)
}

// holesMeet looks at the holes of a sheet as it is ordered.
func (r *reviewer) holesMeet(e *parts.Loose) {
	hole, row := itemHoles().FindStringSubmatch(e.Item.Value), staggered().FindStringSubmatch(e.Item.Value+"; "+e.How.Value)
	if hole == nil || row == nil {
		return
	}
	if d, pitch := r.itemMm(hole[1]), r.itemMm(row[1]+" "+row[2]); pitch <= d {
		r.add(Finding{
			Pos: e.Pos, What: "the holes of " + words.Head(e.Item.Value) + " run into one another", Numbers: r.mm(d) + " at " + r.mm(pitch), OverMm: over(d - pitch),
			Rule: "there is metal between holes", Source: "by the job", Fix: "holes further apart",
		})
	}
}

// holds looks at how far screws that are ordered come into their threads: enough to hold, and not to the
// bottom where they are deepMm deep, 0 for through.
func (v *view) holds(what string, pos parts.Pos, d, inMm, deepMm float64) {
	v.firstOf(v.here("", pos),
		flaw{geom.Over(screwHolds*d, inMm), Finding{
			What: what + " hardly reach into their threads", Numbers: v.mm(max(0, inMm)) + " in, wanted " + v.mm(screwHolds*d), LeftMm: left(max(0, inMm)),
			Rule: "a screw holds in one diameter of thread", Fix: "a longer screw"}},
		flaw{deepMm > 0 && geom.Over(inMm, deepMm), Finding{
			What: what + " meet the bottom of their holes", Numbers: v.mm(inMm) + " in " + v.mm(deepMm), OverMm: over(inMm - deepMm),
			Rule: "a screw clamps before it meets the bottom", Fix: "a shorter screw"}},
	)
}

// seatLong looks at a hub that words give a length, on the step it stands on: it ends before the
// groove of the ring that keeps it, and before the end.
func (r *reviewer) seatLong(e *parts.Loose) {
	m := hubLong().FindStringSubmatch(e.How.Value)
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
	grooves := seq.Keep(v.q.Grooves, func(g plan.GrooveRow) bool { return g.In == e.Stands.On.Feature })
	room := seq.Min(c.LengthMm(), grooves, func(g plan.GrooveRow) float64 { return max(g.FromMm-c.FromMm, c.ToMm-g.ToMm) })
	if long := r.itemMm(m[1] + " " + m[2]); geom.Over(long, room) {
		r.add(Finding{
			Severity: Check, Part: v.p.Name.Value, Feature: c.Name, Pos: e.How.Pos,
			What:    "what sits on " + c.Name + " of " + v.p.Title.Value + " is longer than its seat, by the words",
			Numbers: r.mm(long) + " on " + r.mm(room), OverMm: over(long - room),
			Rule: "a hub has its whole length on its seat, before what keeps it", Source: "by the job", Fix: "a shorter one, or a longer seat",
		})
	}
}
