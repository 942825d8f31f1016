// Package solid makes a solid of a part, and of what is bought and lies on or in one:
// what body it is in the assembled machine, before it has a place there.
//
// In goes a part worked out (package part), a row of its plan, or what a joint buys;
// out come solids of package assembly in millimetres. The frame is that of the front
// view: x right and y up to TOP, z out of the front, so that depth d behind the front
// face is z = −d. What a solid leaves out (threads, fillets, rounded edges) its
// function says. A form of part is one case of uncut, and what is cut from it one
// line of Of. It asks nothing of joints or of other parts.
package solid

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Of is a part as a solid. Rounded edges of outlines, threads and fillets are left out.
func Of(r *part.Model) *assembly.Solid {
	s := uncut(r)
	for i := range r.Groups {
		s = s.Cut(holes(r, &r.Groups[i])...)
	}
	for f := range seq.Refs(r.Radials) {
		s = s.Cut(radial(r, f)...)
	}
	for i := range r.Flats {
		s = s.Cut(flats(&r.Flats[i].Row)...)
	}
	for i := range r.Keyways {
		s = s.Cut(keyway(&r.Keyways[i])...)
	}
	if r.Clamp != nil {
		s = s.Cut(split(&r.Clamp.Row, r.LengthMm()))
	}
	for i := range r.Grooves {
		if row := &r.Grooves[i].Row; row.Face != "" {
			s = s.Cut(faceGroove(row))
		}
	}
	for _, e := range r.Part.Ends {
		s = s.Cut(saddle(r, &e)...)
	}
	return s
}

// uncut is the form of a part. A round plate is turned, so that what shares its axis is judged by the exact sections.
func uncut(r *part.Model) *assembly.Solid {
	p, turned := r.Part, assembly.Turned(behind(r.Out.Section.Outer), behind(r.Out.Section.Inner))
	switch p.Kind {
	case parts.TransitionPiece:
		return transition(p.Transition)
	case parts.Cone:
		if p.Frustum.Offset.Mm != 0 {
			return leaning(p.Frustum)
		}
	case parts.FlightPart:
		return helicoid(p.Flight)
	case parts.Folded:
		return folded(r)
	case parts.BarPart:
		return barSolid(r)
	}
	if !p.Flat() || p.Outline.Shape == parts.CircleOutline {
		return assembly.Of(turned)
	}
	s := assembly.Of(assembly.Prism(Outline(r), -r.LengthMm(), 0))
	if inner := r.Out.Section.Inner; inner != nil {
		s = s.Cut(bore(inner))
	}
	return s.Cut(bevels(r)...)
}

// behind takes a contour of depths and radii to the z of the front view.
func behind(line []plan.XY) []assembly.ZR {
	return seq.Map(line, func(q plan.XY) assembly.ZR { return assembly.ZR{Z: -q.XMm, R: q.YMm} })
}

// clearMm is how far a bore, or a hole in what is flat, is clear before and behind its part, where nothing of that lies: further
// than anything is looked for there, so that what stands before its mouth is as far off as the metal round it.
const clearMm = 1000.0

// bore is what a bore's contour takes out, past both faces.
func bore(inner []plan.XY) assembly.Simple {
	line := behind(inner)
	first, last := line[0], line[len(line)-1]
	line = append([]assembly.ZR{{Z: first.Z + clearMm, R: first.R}}, line...)
	if last.R > 0 {
		line = append(line, assembly.ZR{Z: last.Z - clearMm, R: last.R})
	}
	return assembly.Turned(line, nil)
}

// Outline is a flat part's contour, mm in its front view; arcs of circles stay arcs.
func Outline(r *part.Model) assembly.Outline {
	return assembly.Outline{geom.NewContour(r.OutlinePath()).Loop()}
}

func transition(t *parts.Transition) *assembly.Solid {
	grown := func(mm float64) assembly.Simple { // across
		return assembly.SquareToRound(geom.Point{XMm: t.Width.Mm + mm, YMm: t.Depth.Mm + mm}, 0, (t.Diameter.Mm+mm)/2,
			geom.Point{XMm: t.Offset.X.Mm, YMm: t.Offset.Y.Mm}, -t.Height.Mm)
	}
	outside, inside := t.Walls()
	return assembly.Of(grown(outside)).Hollow(grown(-inside))
}

// leaning has its wall across the plate, which is further across the axis: as a mean all
// round, by the slope of the cone.
func leaning(f *parts.Frustum) *assembly.Solid {
	slope := math.Hypot(1, (f.Large.Mm-f.Small.Mm)/2/f.Height.Mm)
	grown := func(mm float64) assembly.Simple {
		return assembly.Leaning((f.Large.Mm+mm*slope)/2, 0, (f.Small.Mm+mm*slope)/2, geom.Point{YMm: f.Offset.Mm}, -f.Height.Mm)
	}
	outside, inside := f.Walls()
	return assembly.Of(grown(outside)).Hollow(grown(-inside))
}

// holes are what a group of holes or slots takes out.
func holes(r *part.Model, g *part.Group) []assembly.Simple {
	if r.Part.Kind == parts.BarPart {
		return barHoles(r, g)
	}
	clear := past
	if r.Part.PlateLike() {
		clear = clearMm
	}
	var out []assembly.Simple
	for n, q := range g.Points {
		x, way := q.XMm, -1.0 // into the part from the front
		front, deep := 0.0, r.LengthMm()
		z, thick, ok := r.Plane(g.Face, math.Hypot(q.XMm, q.YMm))
		if r.Part.Turned() && ok {
			front, deep = -z, thick
		} else if g.Face == parts.Back {
			front = -r.LengthMm()
		}
		if g.Face == parts.Back {
			x, way = -q.XMm, 1
		}
		at := assembly.Pose{X: assembly.AxisX.Times(-way), Y: assembly.AxisY, Z: assembly.AxisZ.Times(-way), At: assembly.Vec{X: x, Y: q.YMm, Z: front}}
		if g.OnWall() {
			at = On(Wall(r, g), g.OwnMm()[n])
		}
		// In the hole's frame z runs out of the face and x as seen on it.
		out = append(out, hole(g, deep, clear).At(at))
	}
	return out
}

// radial are the openings cut into a round from outside.
func radial(r *part.Model, f *part.Radial) []assembly.Simple {
	var out []assembly.Simple
	for _, row := range f.Rows {
		from, to := 0.0, row.OutsideMm/2+past
		if f.In.Depth.Mm > 0 {
			from = row.OutsideMm/2 - f.In.Depth.Mm
		}
		// z runs outward, y to the part's front, x clockwise seen from there.
		outward := assembly.ClockWay(row.ClockDeg)
		at := assembly.Frame(assembly.Vec{Z: -row.AxialMm}, outward, assembly.AxisZ)
		if row.Shape == string(parts.RadialHole) {
			d := f.Size.FinishedMm
			if f.Size.Thread != nil {
				d = f.Size.DrillMm
			}
			out = append(out, assembly.Cylinder(d/2, from, to).At(at))
			continue
		}
		half := row.OutsideMm / 2 * math.Sin(math.Min(math.Pi/2, row.AroundMm/row.OutsideMm))
		corner := row.CornerMm
		if row.Shape == string(parts.RadialSlot) {
			corner = math.Min(half, row.AlongMm/2)
		}
		loop := geom.RectangleLoop(geom.Point{XMm: -half, YMm: -row.AlongMm / 2}, geom.Point{XMm: half, YMm: row.AlongMm / 2}, math.Min(corner, math.Min(half, row.AlongMm/2)-1e-6))
		out = append(out, assembly.Prism(assembly.Outline{loop}, from, to).At(at))
	}
	return out
}

// split is what the saw takes off a ring.
func split(row *plan.ClampRow, longMm float64) assembly.Simple {
	at := assembly.Frame(assembly.Vec{Z: -longMm / 2}, assembly.ClockWay(row.ClockDeg), assembly.AxisZ)
	return assembly.Cuboid(assembly.Vec{X: -row.SlotMm / 2, Y: -longMm/2 - past}, assembly.Vec{X: row.SlotMm / 2, Y: longMm/2 + past, Z: row.OutsideMm/2 + past}).At(at)
}

// flats are what a cutter takes off a round for its flats.
func flats(row *plan.FlatsRow) []assembly.Simple {
	var out []assembly.Simple
	low, high := row.DiameterMm/2-row.DepthMm, row.DiameterMm/2+past
	half := row.DiameterMm
	for i := range row.Sides {
		outward := assembly.ClockWay(row.ClockDeg + 360*float64(i)/float64(row.Sides))
		at := assembly.Frame(assembly.Vec{Z: -(row.FromMm + row.ToMm) / 2}, outward, assembly.AxisZ)
		along := (row.ToMm - row.FromMm) / 2
		out = append(out, assembly.Cuboid(assembly.Vec{X: -half, Y: -along, Z: low}, assembly.Vec{X: half, Y: along, Z: high}).At(at))
	}
	return out
}

// faceGroove is what a groove in an end face takes out.
func faceGroove(row *plan.GrooveRow) assembly.Simple {
	low, high := -row.ToMm, -row.FromMm
	if row.Face == parts.Front {
		high += past
	} else {
		low -= past
	}
	ends := func(radius float64) []assembly.ZR { return []assembly.ZR{{Z: low, R: radius}, {Z: high, R: radius}} }
	return assembly.Turned(ends(row.OuterMm/2), ends(row.InnerMm/2))
}

// saddle is what the main takes out of the end of a tube.
func saddle(r *part.Model, e *parts.TubeEnd) []assembly.Simple {
	reach, main, ok := r.ReachMm(e.Face)
	if !ok {
		return nil
	}
	radius := main / 2
	if e.SetIn {
		radius -= e.Wall.Mm
	}
	z := parts.At(e.Face, reach-r.LengthMm(), -reach)
	// The main's front lies at the branch's clock e.Clock, leaning to the acute
	// side.
	along := assembly.ClockWay(e.Clock.Deg)
	side := along.Cross(assembly.AxisZ)
	// The free end is that of the other face; seen from there with the acute side up
	// the main's axis lies to the left by the offset.
	lean, off := 90-e.Angle.Deg, -e.Offset.Mm
	if e.Face == parts.Front {
		lean, off = -lean, -off
	}
	along = assembly.Rotate(side, lean).Turn(along)
	at := assembly.Frame(assembly.Vec{Z: z}.Add(side.Times(off)), along, assembly.AxisZ)
	const long = 2000
	return []assembly.Simple{assembly.Cylinder(radius, -long, long).At(at)}
}
