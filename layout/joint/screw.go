package joint

import (
	"math"

	"centrepop/layout/lookup"
	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// screwKind is a thread outside a part in that of a bore: screwed home, face on face, or running in it as a jack screw does in its nut. How much
// of it engages, and whether it gets that far, the machine asks.
type screwKind struct{ plain }

func (screwKind) ends(_ *shop, t *joint) {
	t.need(t.a, t.a.step != nil && !t.a.step.Inside && t.a.step.Size.Thread != nil, "a thread outside, of the part that is screwed in")
	t.need(t.b, t.b.step != nil && t.b.step.Inside && t.b.step.Size.Thread != nil, "a thread inside, of the bore that it is screwed into")
}

func (screwKind) title(t *joint) string {
	if p := t.out.Screw; p != nil && p.Onto {
		return "Screw " + t.b.title() + " onto " + t.a.title()
	}
	return "Screw " + t.a.title() + " into " + t.b.title()
}

func (screwKind) buy(*shop, *joint, *buying) {}

// traps finds none: where a thread bites, not the clock, says how a part comes to be turned.
func (screwKind) traps(*making, *joint, []parts.Instance) {}

func (screwKind) work(j *making, t *joint) {
	screw, nut := t.a.step.Size.Thread, t.b.step.Size.Thread
	if screw.Designation != nut.Designation {
		t.refuse(t.in.Pos, plan.ScrewUnlike, plan.Named(t.a.text()), plan.Named(screw.Designation), plan.Named(t.b.text()), plan.Named(nut.Designation))
		return
	}
	p := &plan.ScrewPlan{Thread: screw.Designation, Home: t.in.Home()}
	p.Onto = len(j.members(t.b.Instance(), j.before)) == 1 && len(j.members(t.a.Instance(), j.before)) > 1
	t.out.Screw = p
	if t.axis {
		p.EngagedMm = geom.Clean(max(0, t.rel.span(t.a.r.FullSpan(t.a.step, true)).OnMm(t.b.r.FullSpan(t.b.step, true))))
		p.Leads, p.Turns = t.screwsIn()
	}
	t.figure("thread", screw.Designation, screw.Source.String())
	t.figure("engaged", t.w.Size(p.EngagedMm)+" of "+t.w.Size(t.b.step.LengthMm())+" in "+t.b.title(), "lengths as drawn, full thread alone")
	if p.Turns > 0 {
		t.figure("turns", words.Trim(p.Turns, 1)+" from where it bites", "way by geometry, lead of the thread")
	}
	t.screwSteps(p)
}

// screwsIn is the end of the screw that goes into the nut first, and how many turns it takes from where the threads meet: by the end that
// the nut lets through, by the shorter way where both go; empty where neither does.
func (t *joint) screwsIn() (leads string, turns float64) {
	thread := t.a.step.Size.Thread
	lead := thread.PitchMm
	if thread.Lead != nil {
		lead = thread.Lead.LeadMm
	}
	turns = math.Inf(1)
	for _, dir := range []float64{-1, 1} {
		from := -t.rel.s * dir // the side of the nut that it comes from
		if !t.a.narrows(dir, thread.MinorMm) || !t.b.opens(from, thread.MajorMm) {
			continue
		}
		bites, stands := end(t.b.step, from), t.rel.z0+t.rel.s*end(t.a.step, dir)
		if n := math.Abs(stands-bites) / lead; n < turns {
			leads, turns = faceName(dir), n
		}
	}
	if leads == "" {
		return "", 0
	}
	return leads, geom.Clean(turns)
}

// narrows tells whether nothing of a part beyond the thread outside it, in a direction along its axis, is wider than a diameter or the thread.
func (f feature) narrows(dir, mm float64) bool {
	for _, s := range f.r.Side(false) {
		thread := s.Size.Thread != nil && s.Size.Thread.Designation == f.step.Size.Thread.Designation
		if dir*(s.MidMm()-f.step.MidMm()) > 0 && !thread && geom.Over(s.Size.NominalMm, mm) {
			return false
		}
	}
	return true
}

// opens tells whether the bore of a part goes on from the thread in it to the face in a direction, nowhere narrower than a diameter or the thread.
func (f feature) opens(dir, mm float64) bool {
	at := end(f.step, dir)
	for _, s := range f.r.Side(true) {
		thread := s.Size.Thread != nil && s.Size.Thread.Designation == f.step.Size.Thread.Designation
		if dir*(s.MidMm()-f.step.MidMm()) <= 0 {
			continue
		}
		if !thread && geom.Over(mm, s.Size.NominalMm) {
			return false
		}
		at = dir * max(dir*at, dir*end(s, dir))
	}
	return geom.Alike(at, faceMm(f.r, dir))
}

func (t *joint) screwSteps(p *plan.ScrewPlan) {
	comes, to, thread, on := t.a, t.b, t.a.step.Size.Thread, "in"
	if p.Onto {
		comes, to, on = to, comes, "on"
	}
	both := func(comes, to string) string { return comes + " " + on + " " + to }
	oil := words.Either(p.Home, "Oil them thinly.", "Grease them over their whole length.")
	t.step("Clean", "Wipe the chips out of both threads "+p.Thread+" and look at their first turns: no burr, no dent.",
		words.Either(t.galls(), "Anti-seize paste on both: the two metals seize on one another.", oil))
	enter := "Enter " + comes.title() + " by hand" + words.When(p.Leads != "", ", its "+p.Leads+" leading,") + " square into " + to.text()
	if p.Onto {
		enter = "Set " + comes.title() + " by hand square on " + to.text() + words.When(p.Leads != "", ", over its "+p.Leads)
	}
	s := t.step("Screw "+on, enter+": the first two turns go with the fingers, or it is crossed.",
		"Turn it "+on+words.When(p.Turns > 0, ", some "+words.Trim(math.Ceil(p.Turns), 0)+" turns,")+" to: "+ofPlace+".",
		words.When(thread.LeftHand || thread.Lead != nil && thread.Lead.LeftHand, "LEFT HAND: it goes counter-clockwise."))
	c := plan.Check{What: "turns by hand", Wanted: both(comes.text(), to.text()), Limits: "over all of its way, with no tight place", Gauge: "hand", Source: lookup.NoSource}
	if p.Home {
		t.step("Tighten", "Tighten "+both(comes.title(), to.title())+", spanner-tight: the job does not say what pulls on it, and no torque is worked out.")
		c.What, c.Wanted, c.Gauge = "home", both(comes.title(), to.title()), "feeler"
		c.Limits = "a " + t.w.Near(0.05) + " feeler does not enter between the faces"
	} else {
		s.Hold = comes.title() + " turns by hand " + on + " " + to.title() + " over all of its way, with no tight place."
	}
	t.out.Checks = append(t.out.Checks, c)
}

// galls tells whether the metals of the two parts seize on one another.
func (t *joint) galls() bool {
	a, errA := material.Find(t.a.r.Part.Material.Value)
	b, errB := material.Find(t.b.r.Part.Material.Value)
	return errA == nil && errB == nil && material.Galls(a.Kind, b.Kind)
}
