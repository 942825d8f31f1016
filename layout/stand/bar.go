package stand

import (
	"centrepop/layout/assembly"
	"centrepop/layout/bars"
	"centrepop/layout/solid"
	"centrepop/parts"
)

// corner is the pose of a bar whose mitred end meets another's: cut to cut, long point to
// long point, the fronts in one plane.
func (m *Stand) corner(a, b parts.Instance, aEnd, bEnd string) (assembly.Pose, bool) {
	_, own, _ := m.Model(a.Part).Bar() // what is no bar has no mitre
	_, other, _ := m.Model(b.Part).Bar()
	meet, ok := bars.Onto(own, aEnd == string(parts.RightEnd), other, bEnd == string(parts.RightEnd))
	if !ok || !parts.Side(aEnd).IsEnd() || !parts.Side(bEnd).IsEnd() {
		return assembly.Pose{}, false
	}
	pose := assembly.Move(assembly.Vec{X: meet.ShiftMm.XMm, Y: meet.ShiftMm.YMm}).Of(assembly.Rotate(assembly.AxisZ, meet.TurnDeg))
	if meet.Over {
		// About its own length, so that it comes to lie in the plane it came from.
		deep := m.Model(a.Part).Part.Bar.Depth.Mm
		pose = pose.Of(assembly.Move(assembly.Vec{Z: -deep})).Of(assembly.Rotate(assembly.AxisX, 180))
	}
	return pose, true
}

// coped is the pose of a bar with a cope on the round that it sits on.
func (m *Stand) coped(a, b parts.Instance) (assembly.Pose, bool) {
	e := m.Cope(a, b)
	if e == nil {
		return assembly.Pose{}, false
	}
	r := m.Model(a.Part)
	out, end := assembly.ClockWay(e.Place.Clock.Deg), parts.LeftEnd
	along := out // the way to the bar's right end
	if e == r.Part.Bar.End(parts.RightEnd) {
		end, along = parts.RightEnd, out.Reversed()
	}
	c, _ := r.Cope(end)
	middle := out.Times(c.EdgeMm + r.Part.Bar.Length.Mm/2)
	middle.Z = r.Part.Bar.Depth.Mm/2 - e.Place.AxialMm(m.Model(b.Part).LengthMm())
	return assembly.Frame(middle, assembly.AxisZ, assembly.AxisZ.Cross(along)), true
}

// Cope is the end of a bar a that sits in a place of a round b, nil if there is none.
func (m *Stand) Cope(a, b parts.Instance) *parts.BarEnd {
	r := m.Model(a.Part)
	for side, e := range r.Part.BarEnds() {
		if _, ok := r.Cope(side); ok && e.Place != nil && e.Onto.Part == b.Part {
			return e
		}
	}
	return nil
}

// CutOf is the plane of a bar's mitred end, out of the bar from a corner of its cut, in its
// own frame, and how far the cut reaches in mm, along x and y of it; ok is false where it is no end of a bar.
func (m *Stand) CutOf(i parts.Instance, end string) (at assembly.Pose, size assembly.Vec, ok bool) {
	in := m.Model(i.Part).Part
	if in.BarEnd(end) == nil {
		return at, size, false
	}
	foot := func(y float64) assembly.Vec {
		return assembly.Vec{X: solid.EndX(in.Bar, parts.Side(end), y), Y: y, Z: -in.Bar.Depth.Mm}
	}
	from, to := foot(-in.Bar.Width.Mm/2), foot(in.Bar.Width.Mm/2)
	if end == string(parts.LeftEnd) {
		from, to = to, from
	}
	up := to.Sub(from)
	return assembly.Frame(from, up.Cross(assembly.AxisZ), assembly.AxisZ), assembly.Vec{X: up.Len(), Y: in.Bar.Depth.Mm}, true
}

// Mitred tells whether a face of a part is a bar's end with a mitre.
func (m *Stand) Mitred(i parts.Instance, face string) bool {
	end := m.Model(i.Part).Part.BarEnd(face)
	return end != nil && end.Mitred()
}
