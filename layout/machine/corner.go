package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/layout/stand"
	"centrepop/parts"
)

// beadEveryMm is how far apart a bead is looked for along its edge. Common practice, no source.
const beadEveryMm = 2.0

// beadShares are places in a fillet by its leg, out from the plate and up from its edge: in
// the middle, and near both toes, where thin sheet lies.
var beadShares = [][2]float64{{stand.BeadShare, stand.BeadShare}, {0.1, 0.8}, {0.8, 0.1}}

// onBeads finds parts that come to stand where a fillet of an earlier weld lies
// already, a gusset in its corner or a stud beside it: that of a plate that stands with
// an edge on a face, welded along both its sides for as long as the edge is.
func (m *Machine) onBeads() (looks []look) {
	st := m.Stage()
	for _, j := range m.OfKind(parts.WeldKind) {
		in, a, on := m.Joint(j.Name), m.At(j.A), m.At(j.B)
		if a == nil || on == nil || j.Weld.Type != "fillet" || j.Weld.Sides != 2 || !in.OnEdge() || !m.Model(j.A.Part).Part.Flat() {
			continue
		}
		looks = append(looks, func() []plan.Problem {
			laid := beadsOn(on, a, in.Place.With, j.Weld)
			for c, r := range m.Parts() {
				if st.First(c.ID) >= j.N && r.Part.Name.Value != j.A.Part && c.Box().Meets(a.Box(), j.Weld.LegMm) && holdsAny(c, laid) {
					return []plan.Problem{m.Fault(j.Name, plan.OnBead, m.Named(c.ID), m.Named(a.ID), m.Rounded(j.Weld.LegMm, 2))}
				}
			}
			return nil
		})
	}
	return looks
}

// beadsOn are the places in the fillets of a weld on both sides of a plate that stands on an edge, where there is
// a face below and not its edge; none where the weld may end before a corner.
func beadsOn(on, plate *assembly.Body, edge string, w *plan.WeldPlan) (laid []assembly.Vec) {
	line, feet := beadLine(plate, edge, w.LegMm)
	if long := float64(len(line)/(2*len(beadShares))-1) * beadEveryMm; w.LengthMm < long-beadEveryMm {
		return nil
	}
	for k := range line {
		if holdsAny(on, feet[k:k+1]) {
			laid = append(laid, line[k])
		}
	}
	return laid
}

// beadLine are places in the fillets on both sides of a plate that stands on one
// of its edges, in the machine, by their leg: out from each side and from the edge inwards; and
// the feet of them, in what it stands on.
func beadLine(plate *assembly.Body, edge string, legMm float64) (line, feet []assembly.Vec) {
	for _, share := range beadShares {
		line = append(line, besideEdge(plate, edge, share[0]*legMm, share[1]*legMm)...)
		feet = append(feet, besideEdge(plate, edge, share[0]*legMm, -2*stand.SurfaceMm)...)
	}
	return line, feet
}

// besideEdge are places along an edge of a plate, in the machine: out from each side, and up
// from the edge.
func besideEdge(plate *assembly.Body, edge string, out, up float64) (line []assembly.Vec) {
	box, way := plate.Solid.Box(), solid.OutOf(edge)
	size, along := box.Size(), assembly.Vec{X: math.Abs(way.Y), Y: math.Abs(way.X)}
	from := box.Low.Add(assembly.Vec{X: max(way.X, 0) * size.X, Y: max(way.Y, 0) * size.Y}).Sub(way.Times(up))
	for _, z := range []float64{box.High.Z + out, box.Low.Z - out} {
		for t := 0.0; t <= size.Dot(along); t += beadEveryMm {
			p := from.Add(along.Times(t))
			p.Z = z
			line = append(line, plate.Pose.Apply(p))
		}
	}
	return line
}

// holdsAny tells whether one of some places lies in a body.
func holdsAny(b *assembly.Body, places []assembly.Vec) bool {
	into := b.Pose.Inverse()
	return slices.ContainsFunc(places, func(p assembly.Vec) bool { return b.Solid.Dist(into.Apply(p)) < -stand.SurfaceMm })
}
