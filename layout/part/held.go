package part

import (
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// freeHold is what holds a part while the whole of its outside is worked.
func (b *bench) freeHold() string {
	switch {
	case b.BoreMm() != 0:
		return "a mandrel in the bore"
	case len(b.centreRows()) == 0:
		return "centres, drilled small in both ends"
	}
	return "centres"
}

// leastDriverMm is the length of an outside that a driver sits on. Common practice, no source.
const leastDriverMm = 12.0

// driverOn is what a driver sits on at the end turned before, and what keeps it from marking that: the first outside
// from the end that is long enough, a thread in a nut of its own.
func (b *bench) driverOn(set setting) string {
	outside := slices.Clone(b.Side(false))
	if set.face == parts.Front {
		slices.Reverse(outside)
	}
	on := seq.First(outside, func(s *Step) bool { return s.LengthMm() >= leastDriverMm })
	switch {
	case on != nil && on.Size.Thread != nil:
		return words.Spaced(on.Name) + ", in a spare nut " + on.Size.Thread.Designation + " sawn open on one side, or copper sheet"
	case on != nil && on != outside[0]:
		return words.Spaced(on.Name) + ", over a split sleeve or copper sheet"
	}
	return "the end turned before, over a split sleeve or copper sheet"
}

// behind tells whether an outside lies behind the widest, seen from the end that a setting works from: where the driver is.
func (b *bench) behind(face parts.Face, s *Step) bool {
	wide := b.widest()
	if face == parts.Front {
		return s.FromMm >= wide.ToMm-geom.CloseMm && !s.Inside && !s.Size.AsBought
	}
	return s.ToMm <= wide.FromMm+geom.CloseMm && !s.Inside && !s.Size.AsBought
}

// truedOn is what a part that was turned round runs true to. Where something in this
// setting has to be coaxial with something of the first, as the two seats of a shaft's
// bearings have, it is what was turned with that, within half of the closest tolerance.
func (b *bench) truedOn(set setting) string {
	before := set.before
	mine, first, within := b.trueTo(set.steps, before)
	if wall := b.thinWallMm(before); mine == nil && wall > 0 {
		return "on a stub mandrel turned to the bore where it stands, pushed on lightly or drawn up by a nut and washer: jaws pinch a wall of " + b.W.Said(wall) + " three-cornered"
	}
	if on := gripped(before); mine == nil && on != nil && on.Size.AsBought {
		return "on " + words.Spaced(on.Name) + " as bought, which is not round: four jaws, set true by " + b.boredBefore(before, within)
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
	text += words.When(before[i] != first, ", turned with "+words.Spaced(first.Name))
	return text + ": soft jaws bored to it, or " + tail + words.Spaced(first.Name)
}

// boredBefore is what was bored in the first setting, if an indicator reaches it through the part, else the mean of what the indicator reads.
func (b *bench) boredBefore(before []*Step, within float64) string {
	bore := seq.First(before, func(s *Step) bool { return s.Inside && !s.Size.AsBought && s.Size.Thread == nil })
	if bore == nil || b.BoreMm() < throughMm {
		return "the mean of four readings a quarter turn apart"
	}
	return words.Spaced(bore.Name) + ", indicated through the bore within " + b.W.Near(within)
}

// throughMm is the least bore that a lever indicator reaches through. Common practice, no source.
const throughMm = 25.0

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

// pinchShare is the wall, to the diameter, under which jaws bend a ring. Common practice, no source.
const pinchShare = 0.05

// thinWallMm is the wall of a short ring that jaws would bend, where its bore is finished before it is turned round; else 0.
func (b *bench) thinWallMm(before []*Step) float64 {
	out, bore := b.widest().Size.NominalMm, b.BoreMm()
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
	if s.Bears() && f.Bears() && s.Size.Limited && f.Size.Limited {
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

// grip is what is left behind the turned outsides for the jaws, with what stands behind the part.
func (b *bench) grip(steps []*Step) float64 {
	return math.Max(0, b.leftMm(b.turnedToMm(steps))+b.moreMm)
}

// turnedToMm is how far from the front outsides are turned that do not run from end to end.
func (b *bench) turnedToMm(steps []*Step) (far float64) {
	for _, s := range steps {
		if !s.Inside && !s.Size.AsBought && geom.Over(b.LengthMm(), s.LengthMm()) {
			if to := s.ToMm; b.splits(s) {
				far = math.Max(far, to-b.restMm(s))
			} else {
				far = math.Max(far, to)
			}
		}
	}
	return far
}
