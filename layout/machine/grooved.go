package machine

import (
	"iter"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
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
func (m *Machine) seals() {
	for b, r := range m.parts() {
		add := func(what, name string, solid assembly.Simple, kgM3 float64) {
			ring := assembly.Body{ID: what + " of " + b.ID + name, Solid: assembly.Of(solid), Pose: b.Pose, DensityKgM3: kgM3}
			m.allow(ring.ID, b.ID, fitMm)
			m.add(ring, role{kind: aSeal, what: what, on: b.ID})
		}
		for _, s := range r.Out.Section.Seals {
			add("seal", "", assembly.Tube(s.OuterMm/2, (s.OuterMm+s.InnerMm)/4, -s.ToMm, -s.FromMm), sealKgM3)
		}
		for g := range seq.Refs(r.Grooves) {
			if g.Row.ORing != nil {
				add("O-ring", " "+g.Row.Name, oRing(g), rubberKgM3)
			}
			for _, s := range r.Out.Section.Seals {
				if solid, ok := keeper(r, g, s.FromMm < g.Row.FromMm); ok && g.Row.Inside && g.Row.DiameterMm == s.OuterMm {
					add("retaining ring", "", solid, steelKgM3)
				}
			}
		}
	}
}

// oRing is an O-ring as it lies squeezed in its groove: from the floor to what it seals against, in
// the middle of a groove round about, at the wall that holds it in a face; as wide as its section
// leaves it, since rubber gives way and does not shrink.
func oRing(g *part.Groove) assembly.Simple {
	row := &g.Row
	mm2 := math.Pi / 4 * row.ORing.SectionMm * row.ORing.SectionMm
	if row.Face != "" {
		wide := mm2 / row.DepthMm
		inner := row.OuterMm/2 - wide
		if g.In.PressureOutside {
			inner = row.InnerMm / 2
		}
		return assembly.Tube(inner+wide, inner, -row.ToMm, -row.FromMm)
	}
	low, high := min(row.FloorMm, row.AgainstMm)/2, max(row.FloorMm, row.AgainstMm)/2
	middle, half := -(row.FromMm+row.ToMm)/2, min(mm2/(high-low), row.WidthMm)/2
	return assembly.Tube(high, low, middle-half, middle+half)
}

// keepers are the retaining rings that come with a joint: with the hub that they keep, or with
// what stands on their step.
func (m *Machine) keepers() {
	for _, j := range m.ofKind(parts.SlideKind) {
		if j.Slide.Ring {
			name := m.joint(j.Name).Slide.KeptBy.Feature
			m.kept(j.Name, instance(j.B), j.Slide.From == string(parts.Back), func(row *plan.GrooveRow) bool { return row.Name == name })
		}
	}
	for b, on := range m.running() {
		joint := m.roles[b].joint
		m.kept(joint, named(on), m.driven(on) < 0, func(row *plan.GrooveRow) bool { return row.In == on.Feature })
		m.allow(joint+ringAfter, b, inf) // turned out for it by the maker
	}
}

// running are what sits on shafts and is bought, with their steps.
func (m *Machine) running() iter.Seq2[string, parts.JointRef] {
	return func(yield func(string, parts.JointRef) bool) {
		for _, b := range slices.Clone(m.Bodies) {
			if r := m.roles[b.ID]; r.runs && !yield(b.ID, m.job.Loose[r.loose].Stands.On) {
				return
			}
		}
	}
}

// ringAfter stands after the name of a joint in that of its retaining ring.
const ringAfter = " ring"

// kept stands the ring of a groove on a shaft, which comes with a joint.
func (m *Machine) kept(joint string, on Instance, fromBack bool, is func(*plan.GrooveRow) bool) {
	pose, placed := m.poses[on.id()]
	r := m.model(on.Part)
	for g := range seq.Refs(r.Grooves) {
		if solid, ok := keeper(r, g, fromBack); ok && placed && !g.Row.Inside && is(&g.Row) {
			b := assembly.Body{ID: joint + ringAfter, Solid: assembly.Of(solid), Pose: pose, DensityKgM3: steelKgM3}
			m.add(b, role{kind: aRing, what: "retaining ring", joint: joint, on: on.id()})
			m.allow(b.ID, on.id(), fitMm)
		}
	}
}

// keeper is a retaining ring in its groove, at the wall that it is pressed on: towards the back or
// the front. It reaches halfway to where its lugs need room: common practice, no source.
func keeper(r *part.Model, g *part.Groove, toBack bool) (ring assembly.Simple, ok bool) {
	_, thick, ok := g.Ring(r.W)
	if !ok {
		return ring, false
	}
	row := &g.Row
	front := row.FromMm
	if toBack {
		front = row.ToMm - thick
	}
	rim, floor := (row.DiameterMm+row.ClearMm)/4, row.FloorMm/2
	return assembly.Tube(max(rim, floor), min(rim, floor), -front-thick, -front), true
}
