package machine

import (
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// A bead is looked for every beadEveryMm along its edge, and beadShare of its leg
// out of the corner that it fills. Common practice, no source.
const (
	beadEveryMm = 2.0
	beadShare   = 0.45
)

// onBeads finds parts that come to stand where a fillet of an earlier weld lies
// already, a gusset in its corner or a stud beside it: that of a plate that stands with
// an edge on a face, welded along both its sides for as long as the edge is.
func (m *Machine) onBeads() (looks []look) {
	came := map[string]int{} // the step at which a part is first joined to something
	for n, j := range m.joints {
		for _, id := range append(m.goWith(j), Instance{j.A.Part, j.A.Copy}.id(), Instance{j.B.Part, j.B.Copy}.id()) {
			if _, before := came[id]; !before {
				came[id] = n
			}
		}
	}
	for n, j := range m.joints {
		in, a := m.joint(j.Name), m.standing(Instance{j.A.Part, j.A.Copy})
		if j.Weld == nil || j.Weld.Type != "fillet" || j.Weld.Sides != 2 || in.Place == nil || !in.Place.Edge() || a == nil || m.model(j.A.Part).Part.Outline == nil {
			continue
		}
		line := beadLine(a, in.Place.With, beadShare*j.Weld.LegMm)
		if long := float64(len(line)/2-1) * beadEveryMm; j.Weld.LengthMm < long-beadEveryMm {
			continue // it may end before the corner
		}
		looks = append(looks, func() []plan.Problem {
			for i := range m.Bodies {
				c := &m.Bodies[i]
				if of, made := m.Of[c.ID]; made && came[c.ID] > n && of.Part != j.A.Part && c.Box().Meets(a.Box(), j.Weld.LegMm) && holdsAny(c, line) {
					return []plan.Problem{{Joint: j.Name, Kind: plan.OnBead, Pos: m.posOf(j.Name), Args: []plan.Arg{
						plan.Named(m.title(c.ID)), plan.Named(m.title(a.ID)), plan.Of(plan.Mm, words.Round(j.Weld.LegMm, 2)),
					}}}
				}
			}
			return nil
		})
	}
	return looks
}

// beadLine are places in the fillets on both sides of a plate that stands on one
// of its edges, in the machine: out from each side and from the edge inwards.
func beadLine(plate *assembly.Body, edge string, out float64) (line []assembly.Vec) {
	box := plate.Solid.Box()
	low, high := assembly.Vec{X: box.Low.X, Y: box.Low.Y + out}, assembly.Vec{X: box.High.X, Y: box.Low.Y + out}
	switch edge {
	case "top":
		low.Y, high.Y = box.High.Y-out, box.High.Y-out
	case "left":
		low, high = assembly.Vec{X: box.Low.X + out, Y: box.Low.Y}, assembly.Vec{X: box.Low.X + out, Y: box.High.Y}
	case "right":
		low, high = assembly.Vec{X: box.High.X - out, Y: box.Low.Y}, assembly.Vec{X: box.High.X - out, Y: box.High.Y}
	}
	long := high.Sub(low)
	for _, z := range []float64{box.High.Z + out, box.Low.Z - out} {
		for t := 0.0; t <= long.Len(); t += beadEveryMm {
			p := low.Add(long.Unit().Times(t))
			p.Z = z
			line = append(line, plate.Pose.Apply(p))
		}
	}
	return line
}

// holdsAny tells whether one of some places lies in a body.
func holdsAny(b *assembly.Body, places []assembly.Vec) bool {
	into := b.Pose.Inverse()
	return slices.ContainsFunc(places, func(p assembly.Vec) bool { return b.Solid.Dist(into.Apply(p)) < -surfaceMm })
}

// surfaceMm forgives what lies on a surface.
const surfaceMm = 0.01
