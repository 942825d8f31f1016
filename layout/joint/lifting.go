package joint

import (
	"slices"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
)

// anchored tells whether one of the parts is fixed to the floor when this joint
// is made.
func (j *making) anchored(t *joint, members []parts.Instance) bool {
	return slices.ContainsFunc(j.made(t), func(o *joint) bool {
		part := o.in.Anchored.Value
		return part != "" && slices.ContainsFunc(members, func(m parts.Instance) bool { return m.Part == part })
	})
}

// legsStand is how many legs a frame stands on by itself: common practice, no source.
const legsStand = 3

// onLegs tells whether a side that is bolted to stands on its legs by then, and the other does not.
func (j *making) onLegs(t *joint, f, other feature) bool {
	legs := func(f feature) (n int) {
		for _, i := range j.members(f.Instance(), j.before) {
			if j.model(i.Part).Part.For == parts.Leg {
				n++
			}
		}
		return n
	}
	return t.is(parts.BoltKind) && legs(f) >= legsStand && legs(other) < legsStand
}

// heavy says what a step lifts, which is the lighter of its two sides, or the
// one that neither is anchored nor stands on legs, and when the assembly becomes too heavy to be moved
// as before; kg is its mass then, at least that much where not all is known.
func (j *making) heavy(t *joint, thenKg float64, all bool) {
	var (
		lift            feature
		heaviest, least float64
		fixed, stays    bool
	)
	if _, tied := j.side(t, j.before); tied {
		return
	}
	for i, e := range []feature{t.a, t.b} {
		kg, _ := j.sideKg(e)
		heaviest = max(heaviest, kg)
		if j.anchored(t, j.members(e.Instance(), j.before)) {
			fixed, stays = true, true
			continue
		}
		if j.onLegs(t, e, []feature{t.b, t.a}[i]) {
			stays = true
			continue
		}
		if i > 0 && !stays && (kg >= least || t.is(parts.SlideKind) && !t.turns()) { // a hub comes to its shaft
			continue
		}
		lift, least = e, kg
	}
	if least > 0 {
		j.lifts(t, lift, false)
	}
	if how := t.w.Carriers(thenKg); !fixed && !t.fixed && how != "" && heaviest <= plan.LiftKg { // the order of assembly says what is for the hoist alone
		t.caution("From here on the assembly is " + words.AtLeast(!all) + t.w.RoundMass(thenKg, 1) + ": " + how + ".")
	}
}

// lifts says that a step lifts a part with all that is on it by then, where that is too heavy
// for a hand: a side of its joint, or what is tried on it.
func (j *making) lifts(t *joint, f feature, tried bool) {
	side := j.members(f.Instance(), j.before)
	kg, all := j.sideKg(f)
	if kg <= plan.LiftKg || t.out.Lift != nil && t.out.Lift.MassKg >= kg {
		return
	}
	t.out.Lift = &plan.Lift{What: f.title(), MassKg: kg, AtLeast: !all, How: t.w.Carriers(kg)}
	switch {
	case tried:
		t.out.Lift.What += ", to try it on"
	case len(side) > 1:
		t.out.Lift.What += " with all that is on it"
	}
	if tried {
		t.out.Lift.Tried, t.out.Lift.TriedCopy = f.ref.Part, f.ref.Copy
	}
}

// sideKg is the mass of a part with all that is on it by then, and whether all of it is known.
func (j *making) sideKg(f feature) (kg float64, all bool) {
	return j.massKg(j.members(f.Instance(), j.before), j.before)
}

// heavyLoose says what a step that lifts no side of its joint lifts of what it puts in: the heaviest.
func (j *making) heavyLoose(t *joint) {
	if t.out.Lift != nil {
		return
	}
	for _, e := range j.job.Loose {
		if kg := e.MassKg; e.After.Value == t.in.Name.Value && kg > plan.LiftKg && (t.out.Lift == nil || kg > t.out.Lift.MassKg) {
			t.out.Lift = &plan.Lift{What: words.Head(e.Item.Value), MassKg: kg, How: t.w.Carriers(kg), Loose: true}
		}
	}
}

// added are the parts that this joint brings to the assembly: the side without
// the part that was placed first.
func (j *making) added(t *joint) []parts.Instance {
	a, tied := j.side(t, j.before)
	if tied {
		return nil
	}
	b := j.members(t.b.Instance(), j.before)
	for _, q := range j.placed {
		if slices.Contains(a, q.Instance) {
			return b
		}
		if slices.Contains(b, q.Instance) {
			return a
		}
	}
	return nil
}
