package machine

import (
	"slices"

	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// Review finds what the places show, into Problems.
func (m *Machine) Review() {
	for _, j := range m.Joints {
		a, b := j.A.Instance().ID(), j.B.Instance().ID()
		switch j.Kind {
		case parts.PressKind:
			m.Allow(a, b, stand.FitMm)
		case parts.SlideKind:
			m.keptBy(j, a)
		}
		m.follows(j, a, b)
	}
	m.overlapped()
	m.Problems = append(m.Problems, all(slices.Concat(m.travel(), m.contact(), m.openings(), m.foot(), m.faces(), m.onBeads(), []look{m.floats, m.stand, m.conveys, m.inBushes, m.endPlays, m.inTubes, m.pastEnd, m.liftsLow, m.anchoredHigh, m.legsShort, m.legsUneven, m.tipsUnder, m.shutIn, m.laidEarly, m.laidFree, m.pinned, m.nutsEngage, m.inUse, m.shifted, m.gaskets, m.short}))...)
}

// keptBy lets a hub that stands past its seat press on the plate that keeps it, which is drawn on the
// end of the shaft.
func (m *Machine) keptBy(j *plan.JointPlan, hub string) {
	by := m.Joint(j.Name).Slide.KeptBy
	for _, k := range m.OfKind(parts.BoltKind) {
		if j.Slide.FreeMm < 0 && k.B.Instance() == by.Instance() && k.B.Feature == by.Feature {
			m.Allow(k.A.Instance().ID(), hub, -j.Slide.FreeMm+stand.FitMm)
		}
	}
}

// look finds problems. Looks know nothing of one another and only read the
// machine.
type look func() []plan.Problem

// all looks on all processors, and returns what is found in the order of the
// looks.
func all(looks []look) []plan.Problem {
	found := make([][]plan.Problem, len(looks))
	seq.OnAll(len(looks), func(k int) { found[k] = looks[k]() })
	return slices.Concat(found...)
}
