package machine

import (
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
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
	m.Problems = append(m.Problems, all(slices.Concat(m.travel(), m.contact(), m.openings(), m.foot(), m.faces(), m.onBeads(), []look{m.floats, m.keepers,
		m.stand, m.conveys, m.flightsMeet, m.outOfReach, m.inBushes, m.endPlays, m.ballsLeft, m.offSeats, m.seconds, m.lugsShut, m.inTubes, m.pastEnd, m.liftsLow, m.liftsAside,
		m.anchoredHigh, m.underFloor, m.legsShort, m.onEdge, m.uneven, m.tipsUnder, m.shutIn, m.closedIn, m.laidEarly, m.laidFree, m.headsPass, m.pinned,
		m.nutsEngage, m.stopsShort, m.jams, m.inUse, m.shifted, m.gaskets, m.short, m.sheetsTight}))...)
}

// keptBy lets a hub that stands past its seat press on the plate that keeps it, which is drawn on the
// end of the shaft.
func (m *Machine) keptBy(j *plan.JointPlan, hub string) {
	for _, k := range m.keeping(j) {
		if j.Slide.FreeMm < 0 {
			m.Allow(k.A.Instance().ID(), hub, -j.Slide.FreeMm+stand.FitMm)
		}
	}
}

// keeping are the joints that bolt what keeps a hub into the end of its shaft.
func (m *Machine) keeping(j *plan.JointPlan) []*plan.JointPlan {
	by := m.Joint(j.Name).Slide.KeptBy
	return seq.Keep(m.OfKind(parts.BoltKind), func(k *plan.JointPlan) bool { return k.B.Instance() == by.Instance() && k.B.Feature == by.Feature })
}

// keepers finds what is bolted on to keep a hub and has nothing before the end of the hub, round its bore.
func (m *Machine) keepers() (found []plan.Problem) {
	const onMm, rays = 0.5, 24 // outside the bore; round it
	for _, j := range m.OfKind(parts.SlideKind) {
		hub := m.At(j.A)
		for _, k := range m.keeping(j) {
			plate := m.At(k.A)
			bore, bears := m.PartOf(hub.ID).StepNamed(j.A.Feature), false
			wide := bore.Size.NominalMm
			if ratio, _ := bore.Cone(); ratio > 0 { // its small end is the keeper's
				wide -= bore.LengthMm() / ratio
			}
			for _, side := range assembly.Round(assembly.AxisZ, rays) {
				at := hub.Pose.Apply(side.Times(wide/2 + onMm))
				bears = bears || len(plate.Spans(at, hub.Pose.Z)) > 0
			}
			if !bears {
				found = append(found, m.Fault(k.Name, plan.KeeperSmall, m.Named(plate.ID), plan.Named(words.Spaced(bore.Name)), m.Named(hub.ID), plan.Of(plan.Diameter, geom.Clean(wide))))
			}
		}
	}
	return found
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
