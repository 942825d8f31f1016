package machine

import (
	"slices"

	"centrepop/layout/grooves"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// lugsShut finds retaining rings on shafts whose lugs and the pliers in them have no room when they are put in: in the groove, or on the
// way to it from the end that they come from.
func (m *Machine) lugsShut() (found []plan.Problem) {
	for n, j := range m.Joints {
		keepers := j.Keepers
		if j.Slide != nil && j.Slide.Ring {
			keepers = append(keepers[:len(keepers):len(keepers)], plan.Keeper{On: j.B.Instance(), Groove: m.Joint(j.Name).Slide.KeptBy.Feature, ToBack: j.Slide.From == string(parts.Back)})
		}
		for _, k := range keepers {
			found = append(found, m.lugShut(n, j, k)...)
		}
	}
	return found
}

// lugShut is that of one ring, which comes with the nth joint. Of what comes with a bearing nothing says whether it is there
// before the ring.
func (m *Machine) lugShut(n int, j *plan.JointPlan, k plan.Keeper) []plan.Problem {
	b, r := m.Standing(k.On), m.Model(k.On.Part)
	in := seq.At(r.Grooves, func(g *part.Groove) bool { return g.Row.Name == k.Groove })
	if b == nil || in == nil || in.Row.Inside {
		return nil
	}
	g := in.Row
	ring, err := grooves.RingFor(g.DiameterMm, false)
	if err != nil { // of another make
		return nil
	}
	there, line, mates := m.Stage().Together(n+1, b.ID), m.Along(b.Pose), []string{j.A.Instance().ID(), j.B.Instance().ID()}
	on := line.Find(k.On)
	for _, o := range line {
		if o.ID == b.ID || !there[o.ID] || j.Kind == parts.BearingKind && slices.Contains(mates, o.ID) {
			continue
		}
		whole := geom.Between(on.Own(o.Whole().FromMm), on.Own(o.Whole().ToMm))
		way := geom.Span{FromMm: min(0, whole.FromMm), ToMm: g.ToMm} // to the end that it comes from, and out of what it lies in
		if k.ToBack {
			way = geom.Span{FromMm: g.FromMm, ToMm: max(r.LengthMm(), whole.ToMm)}
		}
		if leaves := leavesMm(&o, on.Span(way), ring.NominalMm); whole.OnMm(g.Span()) > 0 && geom.Over(ring.ClearMm, leaves) {
			return []plan.Problem{m.Fault(j.Name, plan.LugsShut, plan.Named(words.Spaced(g.Name)), m.Named(b.ID), m.Named(o.ID), plan.Of(plan.Diameter, leaves), plan.Of(plan.Diameter, ring.ClearMm))}
		}
	}
	return nil
}

// leavesMm is the diameter that a part leaves free round a shaft along a way.
func leavesMm(o *stand.OnAxis, way geom.Span, shaftMm float64) float64 {
	const stepMm = 0.25
	leaves := inf
	for z := way.FromMm + stepMm/2; z < way.ToMm; z += stepMm {
		if inner, outer, ok := o.Radii(z); ok && geom.Over(outer, shaftMm/2) {
			leaves = min(leaves, 2*inner)
		}
	}
	return leaves
}
