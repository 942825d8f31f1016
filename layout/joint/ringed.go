package joint

import (
	"math"

	"centrepop/layout/plan"
)

// allRoundShare of a round is all of it, for a length that is told or corners that are found along chords. Common practice, no source.
const allRoundShare = 0.95

// ringed tells whether a weld closes on itself round a circle: where no length is told, or one that goes all round.
func (t *joint) ringed(p *plan.WeldPlan) bool {
	told := t.in.Weld.Length
	return p.DiameterMm != 0 && (!told.Set() || told.Mm > allRoundShare*math.Pi*p.DiameterMm)
}
