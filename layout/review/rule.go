package review

import (
	"iter"
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// rule is one rule about a part or a job. The code is what a job names to accept a finding.
type rule[T any] struct {
	code, about string
	check       func(T)
}

// each makes of rules about one thing one about all of them.
func each[V, T any](all func(V) iter.Seq[T], checks ...func(V, T)) func(V) {
	return func(v V) {
		for x := range all(v) {
			for _, check := range checks {
				check(v, x)
			}
		}
	}
}

// of is each for what knows all that its rule asks, such as a part of a job.
func of[V, T any](all func(V) iter.Seq[T], checks ...func(T)) func(V) {
	check := together(checks...)
	return each(all, func(_ V, x T) { check(x) })
}

// together makes one rule of several.
func together[V any](checks ...func(V)) func(V) {
	return func(v V) {
		for _, check := range checks {
			check(v)
		}
	}
}

// one is what there is at most one of, nil where there is none.
func one[T any](x *T) iter.Seq[*T] {
	return func(yield func(*T) bool) {
		if x != nil {
			yield(x)
		}
	}
}

// What a rule about one thing of a job looks at: a part, a loose thing as it is ordered, laid and put on by hand, a
// joint.
func everyPart(r *reviewer) iter.Seq[*view]         { return slices.Values(r.all()) }
func everyLoose(r *reviewer) iter.Seq[*parts.Loose] { return seq.Refs(r.job.Loose) }
func anyJoint(r *reviewer) iter.Seq[*parts.Joint]   { return slices.Values(r.job.Joints) }
func anyPlan(r *reviewer) iter.Seq[*plan.JointPlan] { return slices.Values(r.pl.Joints) }

// everyMade is what the words lay and put on by hand that is a part of the job, everyBought what is none.
func everyMade(r *reviewer) iter.Seq[made] {
	return func(yield func(made) bool) {
		for e := range everyLoose(r) {
			if v := r.viewOf(e.Part.Value); v != nil && !yield(made{v, e}) {
				return
			}
		}
	}
}
func everyBought(r *reviewer) iter.Seq[*parts.Loose] {
	return seq.Refs(seq.Keep(r.job.Loose, func(e parts.Loose) bool { return r.viewOf(e.Part.Value) == nil }))
}

// made is a part of the job that the words put on by hand.
type made struct {
	*view
	e *parts.Loose
}

// everyMotor is that of the job as its rules look at it.
func everyMotor(r *reviewer) iter.Seq[motored] {
	return func(yield func(motored) bool) {
		for m := range one(r.job.Motor) {
			yield(motored{r, m})
		}
	}
}

// What a rule about one joint of a kind looks at, as it stands in the job or worked out.
func everyJoint(kind parts.JointKind) func(*reviewer) iter.Seq[*parts.Joint] {
	return func(r *reviewer) iter.Seq[*parts.Joint] { return slices.Values(r.job.Of(kind)) }
}
func everyPlan(kind parts.JointKind) func(*reviewer) iter.Seq[*plan.JointPlan] {
	return func(r *reviewer) iter.Seq[*plan.JointPlan] { return slices.Values(r.planned(kind)) }
}

// What a rule about one thing of a part looks at.
func everyStep(v *view) iter.Seq[*cylinder]           { return slices.Values(v.steps()) }
func everyKeyway(v *view) iter.Seq[plan.KeywayRow]    { return slices.Values(v.q.Keyways) }
func everyGroove(v *view) iter.Seq[plan.GrooveRow]    { return slices.Values(v.q.Grooves) }
func everyChamfer(v *view) iter.Seq[*parts.Chamfer]   { return seq.Refs(v.p.Chamfers) }
func everyDrilled(v *view) iter.Seq[drilled]          { return slices.Values(v.drilledSizes()) }
func everyDemand(v *view) iter.Seq[parts.Requirement] { return slices.Values(v.p.Require) }
func everyEnd(v *view) iter.Seq[*parts.TubeEnd]       { return seq.Refs(v.p.Ends) }

func everyHole(v *view) iter.Seq[*parts.HoleGroup]       { return seq.Refs(v.p.Holes) }
func everyRadial(v *view) iter.Seq[*parts.Radial]        { return seq.Refs(v.p.Radials) }
func everyHoleOrSlot(v *view) iter.Seq[*parts.HoleGroup] { return seq.Refs(v.holesAndSlots()) }
func everySlot(v *view) iter.Seq[*parts.FaceSlot]        { return seq.Refs(v.p.Slots) }
func everyOutside(v *view) iter.Seq[*cylinder]           { return slices.Values(v.outside) }
func everyInside(v *view) iter.Seq[*cylinder]            { return slices.Values(v.inside) }
func everyFlat(v *view) iter.Seq[plan.FlatsRow]          { return slices.Values(v.q.Flats) }
func everyCentre(v *view) iter.Seq[plan.CentreRow]       { return slices.Values(v.q.Centres) }
func everyClamp(v *view) iter.Seq[*plan.ClampRow]        { return one(v.q.Clamp) }
