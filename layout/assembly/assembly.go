// Package assembly is the machine in space: solids made of simple ones, bodies
// that stand somewhere, and what can be asked of them: is a point inside, which
// bodies share a place, what is in the way of a part going to its seat, how far
// faces stand apart, what lies behind an opening, sections and views, mass,
// centre of gravity, and whether what stands would tip.
//
// Lengths are millimetres, angles degrees, masses kilograms, densities kg/m³.
// Coordinates are right-handed. A part's own frame is that of its front view: x
// right, y up to TOP, z out of the front face towards who looks at it, so that
// depth d behind the front face is z = −d and the clock runs from +y to +x.
// Nothing here draws, prints or knows a part's name beyond the id it is given.
//
// The formulas are elementary: volumes of turned bodies by Pappus, distances to
// quadrics, the prismoidal rule for ruled bodies. No standard is used.
package assembly

import (
	"centrepop/parts/seq"
)

// Body is a solid that stands somewhere.
type Body struct {
	// ID names the body in every answer; unique among the bodies asked about.
	ID    string
	Solid *Solid
	Pose  Pose // of the solid's frame in the machine's
	// DensityKgM3 is used for the mass unless MassKg is set; 0 if not known.
	DensityKgM3 float64
	MassKg      float64 // given, such as a motor's from its plate; 0 if not
	Bought      bool    // from a catalogue: a simple solid stands for it
}

// Box is the body's bounding box in the machine's frame.
func (b *Body) Box() Box { return b.Solid.Box().Moved(b.Pose) }

// Along is how far the body reaches in a direction, by the box of its own frame, in mm from the machine's origin.
func (b *Body) Along(way Vec) (low, high float64) {
	own, at := Vec{X: way.Dot(b.Pose.X), Y: way.Dot(b.Pose.Y), Z: way.Dot(b.Pose.Z)}, b.Pose.At.Dot(way)
	low, high = b.Solid.Box().Along(own)
	return low + at, high + at
}

// boxes are those of bodies, in their order.
func boxes(bodies []Body) []Box { return seq.Map(bodies, func(b Body) Box { return b.Box() }) }

// Dist is Solid.Dist of a point in the machine's frame.
func (b *Body) Dist(p Vec) float64 { return b.Solid.Dist(b.Pose.in(p)) }

// Spans is Solid.Spans of a line in the machine's frame.
func (b *Body) Spans(from, along Vec) []Span {
	inv := b.Pose.Inverse()
	return b.Solid.Spans(inv.Apply(from), inv.Turn(along))
}
