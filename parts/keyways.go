package parts

import "centrepop/parts/geom"

// Keyway is a keyway for a parallel or a Woodruff key: outside on a shaft step,
// inside in a hub's bore.
type Keyway struct {
	Pos           Pos
	Name          Text
	In            Text // the step it is cut into; "bore" of a flat part
	Clock         Angle
	Width, Height Length // of a parallel key; unset for that of the diameter
	Disc          Text   // size or number of a Woodruff key; empty for a parallel one
	Fit           Fit    // of the keyway's width
	Depth         Length // from the crown to the floor; unset for that of the key
	Through       bool   // from end to end of its step
	Length        Length // at full depth, with round ends; unset if Through
	Axial         Length // of its middle from the face From; may be unset
	From          Face
	Cutter        Length // diameter of a side-and-face cutter; unset for an end mill
}

// StretchMm is where a keyway lies along the axis in mm from the front face, in
// a step from fromMm to toMm of a part of lengthMm. A Woodruff key's in a shaft is its
// middle.
func (k *Keyway) StretchMm(inside bool, fromMm, toMm, lengthMm float64) (from, to float64) {
	middle, half := (fromMm+toMm)/2, k.Length.Mm/2
	switch {
	case k.Disc.Value != "" && !inside:
		half = 0
		if k.Axial.Set() {
			middle = k.From.FromFront(k.Axial.Mm, lengthMm)
		}
	case k.Through:
		return geom.Clean(fromMm), geom.Clean(toMm)
	case k.Axial.Set():
		middle = k.From.FromFront(k.Axial.Mm, lengthMm)
	case inside && k.From == Back:
		middle = toMm - half
	case inside:
		middle = fromMm + half
	}
	return geom.Clean(middle - half), geom.Clean(middle + half)
}
