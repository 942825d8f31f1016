package parts

import "centrepop/parts/geom"

// Clamp splits a ring by a saw cut, with a socket screw across it that closes it on
// what goes through its bore.
type Clamp struct {
	Pos         Pos
	In          Text   // the bore that it closes
	Slot        Length // width of the saw cut
	Screw       Pos    // of size and class
	Size, Class string // "M4", "8.8"
	At          Length // from the axis to that of the screw; unset for the middle of the wall
	Axial       Length // from the face From to the screw; unset for the middle of the ring
	From        Face
	Clock       Angle // of the saw cut, seen from the front face
}

// AxialMm is where the screw lies, in mm from the front face of a part of a length.
func (c *Clamp) AxialMm(lengthMm float64) float64 {
	if !c.Axial.Set() {
		return lengthMm / 2
	}
	return geom.Clean(c.From.FromFront(c.Axial.Mm, lengthMm))
}
