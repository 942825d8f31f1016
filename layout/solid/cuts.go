package solid

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

// past is how far a cut goes beyond the face it opens on, in mm, so that no
// skin is left on it.
const past = 1.0

// On is a frame moved to a place in its own x and y, mm.
func On(frame assembly.Pose, at plan.XY) assembly.Pose {
	return frame.Of(assembly.Move(assembly.Vec{X: at.XMm, Y: at.YMm}))
}

// obround is a slot along y: half the distance of its ends' centres, and half
// its width.
func obround(half, wide float64) geom.Loop {
	return geom.Loop{
		{Point: geom.Point{XMm: wide, YMm: -half}}, {Point: geom.Point{XMm: wide, YMm: half}, Bulge: 1},
		{Point: geom.Point{XMm: -wide, YMm: half}}, {Point: geom.Point{XMm: -wide, YMm: -half}, Bulge: 1},
	}
}

// hole is one hole or slot at its mouth, in a part so deep, which leaves it clear so far before its mouths.
func hole(g *part.Group, deep, clear float64) assembly.Simple {
	if half, depth, ok := g.SlotMm(); ok {
		low := -deep - clear
		if depth > 0 {
			low = -depth
		}
		l, w := math.Hypot(half.XMm, half.YMm), g.Size.FinishedMm/2
		flat := assembly.Prism(assembly.Outline{obround(l, w)}, low, clear)
		return flat.At(assembly.Frame(assembly.Vec{}, assembly.AxisZ, assembly.Vec{X: half.XMm, Y: half.YMm}))
	}
	h, r := g.Hole, g.Size.FinishedMm/2
	if g.Size.Thread != nil {
		r = g.Size.DrillMm / 2
	}
	low := -deep - clear
	if !h.Through && h.Depth.Mm < deep-1e-6 {
		low = -h.Depth.Mm
	}
	line := []assembly.ZR{{Z: low, R: r}}
	switch {
	case h.Counterbore != nil:
		line = append(line, assembly.ZR{Z: -h.Counterbore.Depth.Mm, R: r}, assembly.ZR{Z: -h.Counterbore.Depth.Mm, R: h.Counterbore.Diameter.Mm / 2},
			assembly.ZR{Z: clear, R: h.Counterbore.Diameter.Mm / 2})
	case h.Countersink != nil:
		wide := h.Countersink.Diameter.Mm / 2
		line = append(line, assembly.ZR{Z: -h.Countersink.DepthMm(2 * r), R: r}, assembly.ZR{Z: 0, R: wide}, assembly.ZR{Z: clear, R: wide})
	default:
		line = append(line, assembly.ZR{Z: clear, R: r})
	}
	return assembly.Turned(line, nil)
}
