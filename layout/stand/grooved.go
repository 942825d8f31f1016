package stand

import (
	"fmt"
	"iter"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// Densities of a shaft seal, rubber on a steel ring, and of an O-ring. Common practice, no source.
const (
	sealKgM3   = 3000
	rubberKgM3 = 1200
)

// seals are what is on a part from the start: the shaft seals in its bores, each a plain ring for
// its stiff half, as the lip gives way, with the retaining rings that keep them there, and its O-rings.
func (m *Stand) seals() {
	for b, r := range m.Parts() {
		add := func(what, name string, solid assembly.Simple, kgM3 float64) {
			ring := assembly.Body{ID: what + " of " + b.ID + name, Solid: assembly.Of(solid), Pose: b.Pose, DensityKgM3: kgM3}
			m.Allow(ring.ID, b.ID, FitMm)
			m.add(ring, Role{Kind: Seal, What: what, On: b.ID})
		}
		for _, s := range r.Out.Section.Seals {
			add("seal", "", assembly.Tube(s.OuterMm/2, (s.OuterMm+s.InnerMm)/4, -s.ToMm, -s.FromMm), sealKgM3)
		}
		for g := range seq.Refs(r.Grooves) {
			if g.Row.ORing != nil {
				add("O-ring", " "+g.Row.Name, solid.ORing(g), rubberKgM3)
			}
			for _, s := range r.Out.Section.Seals {
				if solid, ok := solid.Retaining(r, g, s.FromMm < g.Row.FromMm); ok && g.Row.Inside && g.Row.DiameterMm == s.OuterMm {
					add("retaining ring", "", solid, steelKgM3)
				}
			}
		}
	}
}

// keepers are the retaining rings that come with a joint: with the hub that they keep, or with
// what stands on their step.
func (m *Stand) keepers() {
	for _, j := range m.OfKind(parts.SlideKind) {
		if j.Slide.Ring {
			name := m.Joint(j.Name).Slide.KeptBy.Feature
			m.kept(j.Name, j.B.Instance(), j.Slide.From == string(parts.Back), func(row *plan.GrooveRow) bool { return row.Name == name })
		}
	}
	for _, j := range m.Joints {
		for _, k := range j.Keepers {
			m.kept(j.Name, k.On, k.ToBack, func(row *plan.GrooveRow) bool { return row.Name == k.Groove })
		}
	}
	for b, on := range m.running() {
		joint := m.Roles[b].Joint
		m.kept(joint, on.Instance(), m.Driven(on) < 0, func(row *plan.GrooveRow) bool { return row.In == on.Feature })
		m.Allow(joint+ringAfter, b, inf) // turned out for it by the maker
	}
}

// running are what sits on shafts and is bought, with their steps.
func (m *Stand) running() iter.Seq2[string, parts.JointRef] {
	return func(yield func(string, parts.JointRef) bool) {
		for _, b := range slices.Clone(m.Bodies) {
			if r := m.Roles[b.ID]; r.Runs && !yield(b.ID, m.Job.Loose[r.Loose].Stands.On) {
				return
			}
		}
	}
}

// ringAfter stands after the name of a joint in that of its retaining ring.
const ringAfter = " ring"

// kept stands the ring of a groove of a part, which comes with a joint and is pressed to the back wall of that or to the front one.
func (m *Stand) kept(joint string, on parts.Instance, toBack bool, is func(*plan.GrooveRow) bool) {
	pose, placed := m.Poses[on.ID()]
	r := m.Model(on.Part)
	for g := range seq.Refs(r.Grooves) {
		if solid, ok := solid.Retaining(r, g, toBack); ok && placed && is(&g.Row) {
			id := joint + ringAfter
			for n := 2; m.Roles[id].Kind != 0; n++ {
				id = fmt.Sprintf("%s%s %d", joint, ringAfter, n)
			}
			b := assembly.Body{ID: id, Solid: assembly.Of(solid), Pose: pose, DensityKgM3: steelKgM3}
			m.add(b, Role{Kind: Ring, What: "retaining ring", Joint: joint, On: on.ID()})
			m.Allow(b.ID, on.ID(), FitMm)
		}
	}
}
