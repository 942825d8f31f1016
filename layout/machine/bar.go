package machine

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/bars"
	"centrepop/layout/part"
	"centrepop/parts"
)

// alongBar is the frame of a bar's section in its front view: up and out of the front
// lie across the bar, and the section runs along it.
var alongBar = assembly.Pose{X: assembly.AxisY, Y: assembly.AxisZ, Z: assembly.AxisX}

// barSolid is the section along the bar between its mitres, its ends hollowed.
func barSolid(r *part.Model) *assembly.Solid {
	section, _, _ := r.Bar()
	in := r.Part.Bar
	var ends [2]assembly.End
	var copes []assembly.Simple
	for k, side := range []parts.Side{parts.LeftEnd, parts.RightEnd} {
		x := endX(in, side, 0)
		ends[k] = assembly.End{AtMm: x, Rise: endX(in, side, 1) - x}
		if c, ok := r.Cope(side); ok {
			copes = append(copes, assembly.Cylinder(c.RadiusMm, -in.Depth.Mm-past, past).At(assembly.Move(assembly.Vec{X: x + math.Copysign(c.EdgeMm, x)})))
		}
	}
	return assembly.Of(assembly.Mitred(section.Loops(), ends[0], ends[1]).At(alongBar)).Cut(copes...)
}

// endX is where an end of a bar lies along it, from its middle, at a height over that of its front view.
func endX(b *parts.Bar, end parts.Side, yMm float64) float64 {
	x := b.Length.Mm/2 - b.EndMm(end, yMm)
	if end == parts.LeftEnd {
		return -x
	}
	return x
}

// onSide is the frame of the top or the bottom of a bar: z out of the side.
func onSide(r *part.Model, side parts.Side) assembly.Pose {
	in := r.Part.Bar
	mid := assembly.Vec{Y: in.Width.Mm / 2, Z: -in.Depth.Mm / 2}
	if side == parts.TopSide {
		return assembly.Frame(mid, assembly.AxisY, assembly.AxisZ.Reversed())
	}
	mid.Y = -mid.Y
	return assembly.Frame(mid, assembly.AxisY.Reversed(), assembly.AxisZ)
}

// barHoles are what a group of holes takes out of a bar.
func barHoles(r *part.Model, g *part.Group) []assembly.Simple {
	in := r.Part.Bar
	deep, travel := r.DrillMm(g)
	var out []assembly.Simple
	for _, q := range g.Points {
		at := on(wall(r, g), q)
		if g.Side() == parts.BackSide {
			at = assembly.Frame(assembly.Vec{X: -q.XMm, Y: q.YMm, Z: -in.Depth.Mm}, assembly.AxisZ.Reversed(), assembly.AxisY)
		}
		out = append(out, hole(g, max(deep, travel)).At(at))
	}
	return out
}

// corner is the pose of a bar whose mitred end meets another's: cut to cut, long point to
// long point, the fronts in one plane.
func (m *Machine) corner(a, b Instance, aEnd, bEnd string) (assembly.Pose, bool) {
	_, own, okA := m.model(a.Part).Bar()
	_, other, okB := m.model(b.Part).Bar()
	if !okA || !okB || !isEnd(aEnd) || !isEnd(bEnd) {
		return assembly.Pose{}, false
	}
	meet, ok := bars.Onto(own, aEnd == string(parts.RightEnd), other, bEnd == string(parts.RightEnd))
	if !ok {
		return assembly.Pose{}, false
	}
	pose := assembly.Move(assembly.Vec{X: meet.ShiftMm.XMm, Y: meet.ShiftMm.YMm}).Of(assembly.Rotate(assembly.AxisZ, meet.TurnDeg))
	if meet.Over {
		// About its own length, so that it comes to lie in the plane it came from.
		deep := m.model(a.Part).Part.Bar.Depth.Mm
		pose = pose.Of(assembly.Move(assembly.Vec{Z: -deep})).Of(assembly.Rotate(assembly.AxisX, 180))
	}
	return pose, true
}

func isEnd(feature string) bool {
	return feature == string(parts.LeftEnd) || feature == string(parts.RightEnd)
}

// coped is the pose of a bar with a cope on the round that it sits on.
func (m *Machine) coped(a, b Instance) (assembly.Pose, bool) {
	e := m.cope(a, b)
	if e == nil {
		return assembly.Pose{}, false
	}
	r := m.model(a.Part)
	out, end := assembly.ClockWay(e.Place.Clock.Deg), parts.LeftEnd
	along := out // the way to the bar's right end
	if e == r.Part.Bar.End(parts.RightEnd) {
		end, along = parts.RightEnd, out.Reversed()
	}
	c, _ := r.Cope(end)
	middle := out.Times(c.EdgeMm + r.Part.Bar.Length.Mm/2)
	middle.Z = r.Part.Bar.Depth.Mm/2 - e.Place.AxialMm(m.model(b.Part).LengthMm())
	return assembly.Frame(middle, assembly.AxisZ, assembly.AxisZ.Cross(along)), true
}

// cope is the end of a bar that sits in a place of a round, nil if there is none.
func (m *Machine) cope(a, b Instance) *parts.BarEnd {
	r := m.model(a.Part)
	for side, e := range r.Part.BarEnds() {
		if _, ok := r.Cope(side); ok && e.Place != nil && e.Onto.Part == b.Part {
			return e
		}
	}
	return nil
}
