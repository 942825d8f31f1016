package machine

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/bend"
	"centrepop/layout/part"
)

// sideFrame is the view of the base in which a side lies at the top: x along the
// side, y up to it, z out of the front.
func sideFrame(s bend.Side) assembly.Pose { return assembly.Rotate(assembly.AxisZ, -90*float64(s)) }

// folded is the base and its flanges; the reliefs at the bends are left out.
func folded(r *part.Model) *assembly.Solid {
	b, _ := r.Folded()
	t := b.ThicknessMm
	up := [4]float64{b.HeightMm / 2, b.WidthMm / 2, b.HeightMm / 2, b.WidthMm / 2}
	var add []assembly.Simple
	for i := range b.Folds {
		f := &b.Folds[i]
		// The base beside a short flange keeps its edge.
		half := up[(f.Side+1)%4]
		for _, end := range [][2]float64{{-half, f.LeftMm - t}, {f.RightMm + t, half}} {
			if end[1]-end[0] > f.ReliefMm {
				strip := assembly.RectangleLoop(assembly.Pt{X: end[0], Y: f.BeginMm}, assembly.Pt{X: end[1], Y: f.OutsideMm}, 0)
				add = append(add, assembly.Prism(assembly.Outline{strip}, -t, 0).At(sideFrame(f.Side)))
			}
		}
		up[f.Side] = f.BeginMm
		var loop assembly.Loop
		for _, v := range f.Section(t) {
			loop = append(loop, assembly.Vertex{Pt: assembly.Pt{X: v.XMm, Y: v.YMm}, Bulge: v.Bulge})
		}
		// Of the section x runs up to the side and y out of the front.
		across := assembly.Pose{X: assembly.AxisY, Y: assembly.AxisZ, Z: assembly.AxisX}
		add = append(add, assembly.Prism(assembly.Outline{loop}, f.LeftMm, f.RightMm).At(sideFrame(f.Side).Of(across)))
	}
	base := assembly.RectangleLoop(assembly.Pt{X: -up[bend.Left], Y: -up[bend.Bottom]}, assembly.Pt{X: up[bend.Right], Y: up[bend.Top]}, 0)
	return assembly.Of(append(add, assembly.Prism(assembly.Outline{base}, -t, 0))...)
}

// onFlap is the frame of a flange: x along its side from the middle, y up its outside
// from the corner, z out of the face that was the front.
func onFlap(r *part.Model, f *bend.PanelFold) assembly.Pose {
	b, _ := r.Folded()
	sin, cos := math.Sincos(f.AngleDeg * math.Pi / 180)
	tip, down := f.Section(b.ThicknessMm)[3], -1.0 // the free edge on the front's side
	if f.Forward {
		down = 1
	}
	along := assembly.Vec{Y: cos, Z: down * sin}
	out := assembly.Vec{Y: -down * sin, Z: cos}
	foot := assembly.Vec{Y: tip.XMm, Z: tip.YMm}.Add(along.Times(-f.HeightMm))
	return sideFrame(f.Side).Of(assembly.Pose{X: assembly.AxisX, Y: along, Z: out, At: foot})
}
