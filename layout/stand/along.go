package stand

import (
	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
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

// Line is what stands along one axis.
type Line []OnAxis

// Along are the parts of the job whose own axis an axis is.
func (m *Stand) Along(axis assembly.Pose) (all Line) {
	for b, of := range m.Parts() {
		if SameAxis(axis, b.Pose) && standsIn(axis) == StandsIn(b) {
			all = append(all, On(axis, b, of))
		}
	}
	return all
}

// Find is a copy of a part among them; nil where it is none.
func (l Line) Find(i parts.Instance) *OnAxis {
	return seq.At(l, func(p *OnAxis) bool { return p.ID == i.ID() })
}

// Z is where along the axis a place of the part lies that is so far behind its front face.
func (p OnAxis) Z(ownMm float64) float64 { return geom.Clean(-p.at.Apply(assembly.Vec{Z: -ownMm}).Z) }

// Own is how far behind the front face of the part a place along the axis lies.
func (p OnAxis) Own(zMm float64) float64 {
	return geom.Clean(-p.at.Inverse().Apply(assembly.Vec{Z: -zMm}).Z)
}

// Span is where a stretch of the part lies along the axis.
func (p OnAxis) Span(own geom.Span) geom.Span { return geom.Between(p.Z(own.FromMm), p.Z(own.ToMm)) }

// Whole is where the part lies along the axis.
func (p OnAxis) Whole() geom.Span { return p.Span(geom.Span{ToMm: p.Of.Out.Section.LengthMm}) }

// Middle is the middle of the part on the axis.
func (p OnAxis) Middle() float64 { return p.Z(p.Of.Out.Section.LengthMm / 2) }

// Round tells whether the section of the part says where its metal is, plates taken as round.
func (p OnAxis) Round() bool {
	return p.Of.Part.Kind != parts.BarPart && p.Of.Part.Kind != parts.Folded
}

// Radii are the radii of its bore and of its outside at a place along the axis, in mm; ok is false beyond its ends, and of
// what is not Round.
func (p OnAxis) Radii(zMm float64) (innerMm, outerMm float64, ok bool) {
	if !p.Round() {
		return 0, 0, false
	}
	return p.Of.Out.Section.RadiiAt(p.Own(zMm))
}

// Metal are the corners of its metal on one side of the axis, places along that and radii, closed by the last to the first;
// nil of what is not Round.
func (p OnAxis) Metal() []geom.Point {
	if !p.Round() {
		return nil
	}
	return seq.Map(p.Of.Out.Section.Metal(), func(c geom.Point) geom.Point { return geom.Point{XMm: p.Z(c.XMm), YMm: c.YMm} })
}
