package solid

import (
	"math"

	"centrepop/layout/assembly"
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
		x := EndX(in, side, 0)
		ends[k] = assembly.End{AtMm: x, Rise: EndX(in, side, 1) - x}
		if c, ok := r.Cope(side); ok {
			copes = append(copes, assembly.Cylinder(c.RadiusMm, -in.Depth.Mm-past, past).At(assembly.Move(assembly.Vec{X: x + math.Copysign(c.EdgeMm, x)})))
		}
	}
	return assembly.Of(assembly.Mitred(section.Loops(), ends[0], ends[1]).At(alongBar)).Cut(copes...)
}

// EndX is where an end of a bar lies along it in mm, right of its middle, at a height over that of its front view.
func EndX(b *parts.Bar, end parts.Side, yMm float64) float64 {
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

// Wall is the frame in which the holes of a group are placed (OwnMm), in that of the part: x right,
// y up and z out of the front of what they go through, a flange or the side of a bar.
func Wall(r *part.Model, g *part.Group) assembly.Pose {
	if fold, ok := r.FlapOf(g); ok {
		return OnFlap(fold)
	}
	if g.OnWall() {
		return onSide(r, g.Side())
	}
	return assembly.Still
}

// barHoles are what a group of holes takes out of a bar.
func barHoles(r *part.Model, g *part.Group) []assembly.Simple {
	in := r.Part.Bar
	deep, travel := r.DrillMm(g)
	if deep = max(deep, travel); !g.Through {
		deep += past // it ends where it says
	}
	var out []assembly.Simple
	for _, q := range g.Points {
		at := On(Wall(r, g), q)
		if g.Side() == parts.BackSide {
			at = assembly.Frame(assembly.Vec{X: -q.XMm, Y: q.YMm, Z: -in.Depth.Mm}, assembly.AxisZ.Reversed(), assembly.AxisY)
		}
		out = append(out, hole(g, deep, past).At(at))
	}
	return out
}
