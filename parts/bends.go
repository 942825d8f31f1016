package parts

import (
	"slices"

	"centrepop/parts/geom"
)

// On is the flange on a side, nil if there is none.
func (b *Bends) On(s Side) *Flap {
	if i := slices.IndexFunc(b.Flanges, func(a Flap) bool { return a.Side == s }); i >= 0 {
		return &b.Flanges[i]
	}
	return nil
}

// BoxMm is a flange in the view that places on it are given in: along its side
// from the middle, and up its outside from the corner.
func (a *Flap) BoxMm(o *Outline) geom.Box {
	half := o.Width.Mm / 2
	if side, _ := a.Side.Base(); side == LeftSide || side == RightSide {
		half = o.Height.Mm / 2
	}
	return geom.Box{Min: geom.Point{XMm: a.Left.Mm - half}, Max: geom.Point{XMm: half - a.Right.Mm, YMm: a.Height.Mm}}
}
