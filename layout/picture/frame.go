package picture

import (
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// framePicture is a frame cut through the middle of its bars, angles through their front
// legs, and seen on their fronts, with its diagonals. ok is false where a bar of it has no
// place.
func (v *viewed) framePicture() (p plan.Picture, ok bool) {
	bar := v.Model(v.j.B.Part).Part.Bar
	deep := bar.Depth.Mm
	if bar.Section == parts.AngleBar {
		deep = bar.Wall.Mm
	}
	plane := v.still.Pose.Shifted(v.still.Pose.Turn(assembly.Vec{Z: -deep / 2}))
	var ends []plan.JointEnd
	var all [][]plan.XY
	for _, j := range v.Joints[:v.j.N] {
		if j.Frame != v.j.Frame {
			continue
		}
		for _, e := range []plan.JointEnd{j.A, j.B} {
			b := v.BodyOf[e.Instance().ID()]
			if b == nil {
				return p, false
			}
			all = append(all, v.cut(plane, b)...)
		}
		end := j.A
		if side := parts.Side(end.Feature); !side.IsEnd() {
			end = j.B
		}
		ends = append(ends, end)
	}
	if len(all) == 0 {
		return p, false
	}
	win := rectOf(all)
	var corners []plan.XY
	for _, e := range ends {
		bar, pose := v.Model(e.Part).Part.Bar, v.BodyOf[e.Instance().ID()].Pose
		at := longPoint(bar, parts.Side(e.Feature))
		corner := onPlane(plane, pose.Apply(at))
		if !bar.End(parts.Side(e.Feature)).Mitred() { // that of the opening
			middle := win.Middle()
			if other := onPlane(plane, pose.Apply(assembly.Vec{X: at.X, Y: -at.Y})); geom.Distance(other, middle) < geom.Distance(corner, middle) {
				corner = other
			}
		}
		corners = append(corners, corner)
	}
	win = win.grown(0.04 * win.longest())
	p = plan.Picture{Cut: plan.CutFrame, MinMm: win.Min, MaxMm: win.Max, Centres: diagonals(corners), Corners: corners}
	p.Shapes, _ = v.shapes(plane, win)
	return p, true
}

// longPoint is the outermost point of a mitred end, on the front, or a corner of a square one.
func longPoint(b *parts.Bar, end parts.Side) assembly.Vec {
	y := b.Width.Mm / 2
	if b.End(end).Long == parts.BottomSide {
		y = -y
	}
	return assembly.Vec{X: solid.EndX(b, end, y), Y: y}
}

// diagonals of four corners, in whatever order: the longest line between two, and that
// between the others.
func diagonals(c []plan.XY) [][2]plan.XY {
	if len(c) != 4 {
		return nil
	}
	best := 1
	for i := 2; i < 4; i++ {
		if geom.Distance(c[0], c[i]) > geom.Distance(c[0], c[best]) {
			best = i
		}
	}
	rest := slices.Delete(slices.Clone(c), best, best+1)
	return [][2]plan.XY{{c[0], c[best]}, {rest[1], rest[2]}}
}
