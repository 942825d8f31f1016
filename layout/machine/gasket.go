package machine

import (
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// A gasket may end clearMm over an edge, and what lies backedMm behind it bears it, as the neck that ends a little
// under its flange does; it is looked at every rimMm from its bore outward. Common practice, no source.
const (
	clearMm  = 1.0
	backedMm = 10.0
	rimMm    = 0.1
)

// gaskets finds gaskets between bolted parts that reach into the opening which they seal round.
func (m *Machine) gaskets() (found []plan.Problem) {
	for _, j := range m.OfKind(parts.BoltKind) {
		for _, ref := range m.Joint(j.Name).Bolt.Stack {
			r, b := m.Model(ref.Part), m.Standing(ref.Instance())
			if bore := r.StepNamed("bore"); b != nil && bore != nil && r.Part.For == parts.Gasket {
				if mm := m.reachesIn(b, bore.Size.NominalMm/2); mm > clearMm {
					found = append(found, m.Fault(j.Name, plan.GasketIn, m.Named(b.ID), plan.Of(plan.Read, mm),
						plan.Of(plan.Diameter, words.Writer{Units: m.Job.Units}.Up(bore.Size.NominalMm+2*mm, 1, 1.0/16))))
				}
			}
		}
	}
	return found
}

// reachesIn is how far a flat ring reaches, from its bore of a radius outward, over nothing that bears it on one of its
// sides; over a notch, which is narrower than the bore, it may.
func (m *Machine) reachesIn(b *assembly.Body, boreMm float64) (mm float64) {
	others := slices.DeleteFunc(slices.Clone(m.Bodies), func(o assembly.Body) bool { return o.ID == b.ID || m.Roles[o.ID].Kind == stand.Screw })
	box, axis := b.Solid.Box(), b.Pose.Z
	size, middle := box.Size(), b.Pose.Apply(assembly.AxisZ.Times(box.Centre().Z))
	most := min(size.X, size.Y)/2 - boreMm
	const rays = 24
	for _, out := range []assembly.Vec{axis, axis.Reversed()} {
		var bare [rays]float64
		for k, side := range assembly.Round(axis, rays) {
			for bare[k] < most {
				if hit := assembly.Crossings(others, middle.Add(side.Times(boreMm+bare[k]+rimMm/2)), out); len(hit) > 0 && !geom.Over(hit[0].FromMm, size.Z/2+backedMm) {
					break
				}
				bare[k] = geom.Clean(bare[k] + rimMm)
			}
		}
		for k := range bare {
			mm = max(mm, min(bare[(k+rays-1)%rays], bare[k], bare[(k+1)%rays]))
		}
	}
	return mm
}
