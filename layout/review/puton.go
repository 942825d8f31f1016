package review

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// putOn looks at how a loose part comes to the part that its words name: that it is there by
// then, that nothing which is put on later has to pass, and that the fit lets it on.
func (v made) putOn(to *view) {
	v.tooEarly(to)
	if seat := v.seatOn(to); seat != nil {
		v.blocks(to, seat)
		v.looseFit(to, seat)
		v.twoWays(to, seat)
		v.blindOn(to, seat)
		v.kept(to, seat)
	}
}

// kept looks for a loose part that comes off its shaft again over the nearer end: nothing
// stands there, nothing in the seat or in itself holds it, and no words say what does.
func (v made) kept(to *view, seat *cylinder) {
	said := v.e.How.Value
	for _, n := range v.texts() {
		said += " " + n.Value
	}
	if seat.threaded() || holdsItself(v.p) || to.stopped(seat) || keeps().MatchString(said) {
		return
	}
	past := func(c *cylinder) bool { return stops(c, seat) || to.stopped(c) }
	if slices.ContainsFunc(seat.before, past) && slices.ContainsFunc(seat.behind, past) {
		return
	}
	v.report(Check, "", v.e.How.Pos, Finding{
		What: "nothing keeps " + v.p.Title.Value + " on " + seat.Name + " of " + to.p.Title.Value, Numbers: "no nut, ring or screw, and no words for it",
		Rule: "what is put on stays on", Fix: "what keeps it: a nut, a ring, a screw, or the words, such as: stays by its weight",
	})
}

// seatOn is the outside step of a shaft that a loose part sits on: the one whose seat names
// it, whose thread it has, or that the words name; nil if there is none.
func (v made) seatOn(to *view) *cylinder {
	words := parts.Bare(v.e.How.Value)
	return seq.First(to.outside, func(c *cylinder) bool {
		return to.turned() && (v.p.NamedIn(c.Seat) || c.threaded() && v.nutOf(v.p.Name.Value, c.Drawn.Size.Thread.Value) || strings.Contains(words, " "+strings.ReplaceAll(c.Name, "-", " ")+" "))
	})
}

// comes is the number of the joint with which a part comes to the machine, and for loose
// parts of one joint their order; false where nothing says when.
func (r *reviewer) comes(part string) (at [2]int, ok bool) {
	i := slices.IndexFunc(r.job.Loose, func(e parts.Loose) bool { return e.Part.Value == part })
	n := slices.IndexFunc(r.pl.Joints, func(j *plan.JointPlan) bool {
		return i >= 0 && j.Name == r.job.Loose[i].After.Value || i < 0 && (j.A.Part == part || j.B.Part == part)
	})
	return [2]int{n, i + 1}, n >= 0
}

// tooEarly looks for a loose part that is put on what is not there yet.
func (v made) tooEarly(to *view) {
	mine, ok := v.comes(v.p.Name.Value)
	its, ok2 := v.comes(to.p.Name.Value)
	now := slices.ContainsFunc(clauses(v.e.How, ".;,"), func(s string) bool {
		return to.p.NamedIn(s) && !later().MatchString(s)
	})
	if !ok || !ok2 || !now || slices.Compare(mine[:], its[:]) >= 0 {
		return
	}
	v.report(Check, "", v.e.After.Pos, Finding{
		What: v.p.Title.Value + " is put to " + to.p.Title.Value + " before that is there", Numbers: "after " + v.e.After.Value + "; " + to.p.Title.Value + " comes with " + v.with(its),
		Rule: "what a part goes on or into is there before it", Source: "by the job", Fix: "after: the step that " + to.p.Title.Value + " comes with, or a later one",
	})
}

// with names the joint that a part comes with.
func (r *reviewer) with(at [2]int) string { return r.pl.Joints[at[0]].Name }

// blocks looks for a later joint whose bearing or plate has to pass where the loose part sits.
func (v made) blocks(to *view, seat *cylinder) {
	mine, ok := v.comes(v.p.Name.Value)
	wide := v.wideMm()
	if !ok {
		return
	}
	for _, j := range slices.Backward(v.pl.Joints[mine[0]+1:]) {
		way, open, name := v.wayOn(j, to)
		if way == 0 || !geom.Over(wide, open) || way*(seat.MidMm()-v.middleOn(j, to)) <= 0 {
			continue
		}
		v.report(Stop, "", v.e.After.Pos, Finding{
			What:    v.p.Title.Value + " is on " + to.p.Title.Value + " before " + name + " has to pass there",
			Numbers: v.mm(2*wide) + " in the way of a bore of " + v.mm(2*open) + "; " + j.Name + " comes later",
			Rule:    "what goes on last is on the outside", Source: "by geometry", Fix: "after: " + j.Name,
		})
		return
	}
}

// wayOn tells from which side a joint puts something over a shaft, +1 from its back and −1
// from its front, how wide a hole that has, as a radius, and what it is; 0 where it puts
// nothing on it.
func (r *reviewer) wayOn(j *plan.JointPlan, shaft *view) (way, openMm float64, name string) {
	if b := j.Bearing; b != nil && j.A.Part == shaft.p.Name.Value {
		if named(shaft.outside, j.A.Feature) == nil || b.LargeEnd == "" {
			return 0, 0, ""
		}
		if way = 1; (b.LargeEnd == string(parts.Front)) == b.Adjusted { // a shoulder lets it on by its small end
			way = -1
		}
		return way, b.BoreMm / 2, "the bearing " + b.Bearing
	}
	over, of := r.onShaft(shaft, j.A), r.onShaft(shaft, j.B)
	if first, _ := r.comes(j.A.Part); j.Kind != parts.BoltKind || over == nil || of == nil || r.with(first) != j.Name {
		return 0, 0, ""
	}
	if way = 1; over.Middle() < of.Middle() {
		way = -1
	}
	return way, narrowest(over.Of.Out.Section), j.A.Title
}

// middleOn is where, from a shaft's front, what a joint puts on it comes to lie.
func (r *reviewer) middleOn(j *plan.JointPlan, shaft *view) float64 {
	if j.Bearing != nil {
		return named(shaft.outside, j.A.Feature).MidMm()
	}
	return r.onShaft(shaft, j.A).Middle()
}

// onShaft is an end of a joint as it stands along the axis of a shaft; nil where it does not, or is of the shaft itself.
func (r *reviewer) onShaft(shaft *view, e plan.JointEnd) *stand.OnAxis {
	on := r.machine().Standing(parts.Instance{Part: shaft.p.Name.Value, Copy: 1})
	if on == nil {
		return nil
	}
	if p := r.machine().Along(on.Pose).Find(e.Instance()); p != nil && p.ID != on.ID {
		return p
	}
	return nil
}

// looseFit looks for a loose part whose bore is smaller than its seat more often than not, or
// may be where its words say that it slides.
func (v made) looseFit(to *view, seat *cylinder) {
	said := v.e.How.Value
	for _, n := range v.p.Notes {
		said += " " + n.Value
	}
	for _, c := range v.inside {
		low, high, ok := limitsOf(c.Drawn.Size)
		from, most, ok2 := limitsOf(seat.Drawn.Size)
		if !ok || !ok2 || c.threaded() || c.Drawn.Size.Nominal.Mm != seat.Drawn.Size.Nominal.Mm || byForce().MatchString(said) {
			continue
		}
		tight := words.Either(slides().MatchString(said), most-low, (from+most-low-high)/2)
		if !geom.Some(tight) {
			continue
		}
		v.report(Check, c.Name, c.Drawn.Pos, Finding{
			OverMm: over(tight), What: v.p.Title.Value + " is too tight to be put on " + to.p.Title.Value + " as the job says",
			Numbers: v.w.Limits(low, high) + " over " + v.w.Limits(from, most), Rule: "what no joint presses goes on by hand", Source: "ISO 286-1",
			Fix: "a fit with play, such as H7/h7, or a press joint",
		})
	}
}

// twoWays looks for a seat that is larger than what is to sit on it, and for what is put on
// from both ends and passes one of them only.
func (v made) twoWays(to *view, seat *cylinder) {
	open := v.openMm()
	named := strings.Contains(parts.Bare(v.e.How.Value), "on the "+strings.ReplaceAll(seat.Name, "-", " ")+" ")
	if math.IsInf(open, 1) || !named && !v.p.NamedIn(seat.Seat) || seat.threaded() || byForce().MatchString(v.e.How.Value) {
		return
	}
	past, name := seat.RadiusMm(), seat.Name
	if bothEnds().MatchString(v.e.How.Value) {
		for _, c := range to.outside {
			if c.RadiusMm() > past {
				past, name = c.RadiusMm(), c.Name
			}
		}
	}
	const fitMm = 0.1 // limits of fits are compared elsewhere
	if past < open+fitMm {
		return
	}
	what := v.p.Title.Value + " does not go on " + name + " of " + to.p.Title.Value
	if name != seat.Name {
		what = v.p.Title.Value + " does not pass " + name + " of " + to.p.Title.Value + " to " + seat.Name + ", and one comes from that end"
	}
	v.report(Check, "", v.e.How.Pos, Finding{
		What: what, Numbers: v.mm(2*open) + " over " + v.mm(2*past), OverMm: over(2 * (past - open)),
		Rule: "what is put on a shaft goes over all that it passes", Source: "by geometry", Fix: "a smaller " + name + ", or a larger bore",
	})
}

// blindOn looks for a bore that ends inside the part, on a seat that does not end with its shaft.
func (v *view) blindOn(to *view, seat *cylinder) {
	n := len(v.inside)
	if !v.turned() || n == 0 || len(seat.before) == 0 || len(seat.behind) == 0 {
		return
	}
	if c := v.inside[n-1]; geom.Over(v.lengthMm, c.ToMm) {
		v.report(Stop, c.Name, c.Drawn.Pos, Finding{
			What: "the bore of " + v.p.Title.Value + " is blind, and " + to.p.Title.Value + " goes through it", Numbers: v.mm(c.ToMm) + " of " + v.mm(v.lengthMm),
			Rule: "a ring in the middle of a shaft is open at both ends", Source: "by geometry", Fix: "a bore as long as the part",
		})
	}
}
