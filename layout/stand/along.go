package stand

import (
	"iter"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/parts/geom"
)

// OnAxis is a part of the job as it stands along an axis, z of a frame. Places along that are counted in mm from its
// origin against z, as from the front face of the part whose frame it is.
type OnAxis struct {
	*assembly.Body
	Of *part.Model
	at assembly.Pose // in that frame
}

// On is a body of a part along an axis.
func On(axis assembly.Pose, b *assembly.Body, of *part.Model) OnAxis {
	return OnAxis{b, of, axis.Inverse().Of(b.Pose)}
}

// Along goes over the parts of the job whose own axis an axis is.
func (m *Stand) Along(axis assembly.Pose) iter.Seq[OnAxis] {
	return func(yield func(OnAxis) bool) {
		for b, of := range m.Parts() {
			if SameAxis(axis, b.Pose) && standsIn(axis) == StandsIn(b) && !yield(On(axis, b, of)) {
				return
			}
		}
	}
}

// Z is where along the axis a place of the part lies that is so far behind its front face.
func (p OnAxis) Z(ownMm float64) float64 { return geom.Clean(-p.at.Apply(assembly.Vec{Z: -ownMm}).Z) }

// Own is how far behind the front face of the part a place along the axis lies.
func (p OnAxis) Own(zMm float64) float64 {
	return geom.Clean(-p.at.Inverse().Apply(assembly.Vec{Z: -zMm}).Z)
}

// Span is where a stretch of the part lies along the axis.
func (p OnAxis) Span(own geom.Span) geom.Span { return geom.Between(p.Z(own.FromMm), p.Z(own.ToMm)) }
