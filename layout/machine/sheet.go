package machine

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// sheetPlayMm is the least by which a folded part is drawn narrower than the room that it goes into, flange by flange: bends come out by some
// tenths. Common practice, no source.
const sheetPlayMm = 0.1

// flangeOn is a flange of a folded part that a joint bolts to a flat one, and the way from it to that.
type flangeOn struct {
	joint *plan.JointPlan
	to    *assembly.Body
	out   assembly.Vec
}

// sheetsTight finds folded parts that go between two flat ones with a flange on each and are as wide as the room there.
func (m *Machine) sheetsTight() (found []plan.Problem) {
	for b, r := range m.Parts() {
		all := m.flangesOn(b)
		if r.Part.Kind != parts.Folded {
			continue
		}
		for i, f := range all {
			for _, g := range all[:i] {
				low, high := b.Along(f.out)
				near, _ := f.to.Along(f.out)
				_, far := g.to.Along(f.out)
				if f.out.Dot(g.out) > stand.Level-1 || near < far || near < low || far > high {
					continue
				}
				if play := near - far - (high - low); geom.Over(sheetPlayMm, play) && play > -geom.CloseMm { // wider, its joints do not close
					found = append(found, m.Fault(f.joint.Name, plan.SheetTight, m.Named(b.ID), m.Named(g.to.ID), m.Named(f.to.ID), m.Rounded(high-low, 2), m.Rounded(near-far, 2)))
				}
			}
		}
	}
	return found
}

// flangesOn are those of a body.
func (m *Machine) flangesOn(b *assembly.Body) (all []flangeOn) {
	for _, j := range m.OfKind(parts.BoltKind) {
		own, other := j.A, j.B
		if own.Instance().ID() != b.ID {
			own, other = other, own
		}
		r, to := m.PartOf(b.ID), m.At(other)
		if own.Instance().ID() != b.ID || to == nil || !m.PartOf(to.ID).Part.Flat() {
			continue
		}
		g := r.GroupNamed(own.Feature)
		if _, flap := r.FlapOf(g); !flap {
			continue
		}
		out := b.Pose.Of(solid.Wall(r, g)).Z
		if to.Box().Centre().Sub(b.Box().Centre()).Dot(out) < 0 {
			out = out.Reversed()
		}
		if math.Abs(out.Dot(to.Pose.Z)) > 1-stand.Level {
			all = append(all, flangeOn{j, to, out})
		}
	}
	return all
}
