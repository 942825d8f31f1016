package stand

import (
	"centrepop/layout/assembly"
	"centrepop/layout/solid"
	"centrepop/parts"
)

// keys are those in the keyways of shafts: with the hub that slides over one, or with what stands
// on its step.
func (m *Stand) keys() {
	for _, j := range m.OfKind(parts.SlideKind) {
		if j.Slide.Key != "" {
			m.key(j.B.Instance(), j.B.Feature, j.Name, j.A.Instance().ID())
		}
	}
	for b, on := range m.running() {
		m.key(on.Instance(), on.Feature, m.Roles[b].Joint, b)
	}
}

// key stands in the keyway of a step, and comes with a joint into a hub.
func (m *Stand) key(on parts.Instance, step, joint, hub string) {
	pose, ok := m.Poses[on.ID()]
	r := m.Model(on.Part)
	for i := range r.Keyways {
		row := &r.Keyways[i].Row
		if !ok || row.In != step || row.Inside {
			continue
		}
		at := assembly.Frame(assembly.Vec{}, assembly.ClockWay(row.ClockDeg), assembly.AxisZ)
		floor := assembly.Vec{Y: -(row.FromMm + row.ToMm) / 2, Z: row.DiameterMm/2 - row.DepthMm}
		b := assembly.Body{ID: joint + " key " + row.Name, Solid: assembly.Of(solid.Key(row)), Pose: pose.Of(at).Of(assembly.Move(floor)), DensityKgM3: steelKgM3}
		m.add(b, Role{Kind: Key, What: "key", Joint: joint, On: on.ID()})
		m.Allow(b.ID, on.ID(), FitMm)
		if m.Roles[hub].Kind == Standing {
			m.Allow(b.ID, hub, inf) // bored for it by the maker
		}
	}
}
