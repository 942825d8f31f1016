package parts

import "centrepop/parts/geom"

// Flats are equal flats milled on an outside step: one, two for a spanner, a
// square, a hexagon.
type Flats struct {
	Pos    Pos
	Name   Text
	In     Text
	Sides  Number
	Across Length // over opposite flats; of one flat to the far side of the round
	Clock  Angle  // of the middle of the first flat
	Length Length // along the axis, from the end From of the step; unset for all of it
	From   Face
}

// StretchMm is where flats lie along the axis, in mm from the front face, in a
// step from fromMm to toMm.
func (f *Flats) StretchMm(fromMm, toMm float64) (from, to float64) {
	switch {
	case !f.Length.Set():
		return fromMm, toMm
	case f.From == Back:
		return geom.Clean(toMm - f.Length.Mm), toMm
	}
	return fromMm, geom.Clean(fromMm + f.Length.Mm)
}
