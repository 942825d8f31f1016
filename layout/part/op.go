package part

import (
	"math"
	"slices"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// hoisted says what a heavy part needs while it goes into the chuck, and each time that it is
// held anew, when it weighs what it does finished or more.
func (b *bench) hoisted() string {
	kg, how := math.Max(b.stockKg(), b.massKg()), " before turning: hoist it in"
	if slices.ContainsFunc(b.ops, func(o plan.Operation) bool { return o.Machine == plan.Lathe }) {
		kg, how = b.massKg(), ": hoist it round"
	}
	return words.When(kg > plan.LiftKg, "; "+b.W.RoundMass(kg, 0)+how+" and do not let go before the jaws hold")
}

// op numbers an operation from 1. A caution stands where it first applies, not
// again in each step of the part.
func (b *bench) op(o plan.Operation) {
	if slices.ContainsFunc(b.ops, func(p plan.Operation) bool { return p.Caution == o.Caution }) {
		o.Caution, o.Dangers = "", nil
	}
	if o.Machine == plan.Lathe && !b.held[len(b.ops)] {
		o.Holding += b.hoisted()
	}
	o.N = len(b.ops) + 1
	b.ops = append(b.ops, o)
}
