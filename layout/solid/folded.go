package solid

import (
	"math"

	"centrepop/layout/assembly"
	"centrepop/layout/bend"
	"centrepop/layout/part"
	"centrepop/parts/seq"
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
	for f := range seq.Refs(b.Folds) {
		if f.Nth == 0 {
			add = append(add, besideFlap(f, up[(f.Side+1)%4])...)
			up[f.Side] = f.BeginMm
		}
		// Of the section x runs up to the side and y out of the front.
		across := assembly.Pose{X: assembly.AxisY, Y: assembly.AxisZ, Z: assembly.AxisX}
		add = append(add, assembly.Prism(assembly.Outline{f.Section()}, f.LeftMm, f.RightMm).At(sideFrame(f.Side).Of(across)))
	}
	base := assembly.Cuboid(assembly.Vec{X: -up[bend.Left], Y: -up[bend.Bottom], Z: -t}, assembly.Vec{X: up[bend.Right], Y: up[bend.Top]})
	return assembly.Of(append(add, base)...)
}

// besideFlap is the base beside a flange shorter than its side, which keeps its edge.
func besideFlap(f *bend.PanelFold, half float64) (add []assembly.Simple) {
	t := f.ThicknessMm
	for _, end := range [][2]float64{{-half, f.LeftMm - t}, {f.RightMm + t, half}} {
		if end[1]-end[0] > f.ReliefMm {
			strip := assembly.Cuboid(assembly.Vec{X: end[0], Y: f.BeginMm, Z: -t}, assembly.Vec{X: end[1], Y: f.OutsideMm})
			add = append(add, strip.At(sideFrame(f.Side)))
		}
	}
	return add
}

// OnFlap is the frame of a flange, in that of its part, mm: x along its side from the middle, y up its outside
// from the corner, z out of the face that was the front.
func OnFlap(f *bend.PanelFold) assembly.Pose {
	foot, turn := f.Wall()
	sin, cos := math.Sincos(turn * math.Pi / 180)
	return sideFrame(f.Side).Of(assembly.Pose{X: assembly.AxisX, Y: assembly.Vec{Y: cos, Z: sin}, Z: assembly.Vec{Y: -sin, Z: cos}, At: assembly.Vec{Y: foot.XMm, Z: foot.YMm}})
}
