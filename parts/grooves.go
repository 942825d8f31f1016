package parts

import "centrepop/parts/geom"

// GrooveKind is what a groove is for.
type GrooveKind string

// The kinds of groove.
const (
	RingGroove   GrooveKind = "retaining-ring"
	ORingGroove  GrooveKind = "o-ring" // for an O-ring, in a round or a face
	GreaseGroove GrooveKind = "grease"
	ReliefGroove GrooveKind = "relief" // for a tool that runs out
	OtherGroove  GrooveKind = "other"  // as its name says: for a wire, a belt, a grip
)

// Plain tells whether a groove has its own width and depth.
func (k GrooveKind) Plain() bool { return k == GreaseGroove || k == ReliefGroove || k == OtherGroove }

// Groove is a groove turned into a step, a bore or an end face.
type Groove struct {
	Pos             Pos
	Name            Text
	In              Text   // a step; bore or outline of a flat part; front or back
	Axial           Length // from the face From to its nearer side; unset in a face
	From            Face
	Kind            GrooveKind
	Inside, Section Length // of an O-ring
	Against         Length // diameter an O-ring seals against; unset for that of the step
	Moving          bool
	PressureOutside bool   // of an O-ring in a face
	Width, Depth    Length // of a plain groove; depth on one side
}

// Face is the end face that the groove lies in, "" for one in a round.
func (g *Groove) Face() Face {
	if f := Face(g.In.Value); f == Front || f == Back {
		return f
	}
	return ""
}

// StretchMm is where a groove of a width lies along the axis in mm from the
// front face of a part of lengthMm.
func (g *Groove) StretchMm(widthMm, lengthMm float64) (from, to float64) {
	if g.From == Back {
		to = lengthMm - g.Axial.Mm
		return geom.Clean(to - widthMm), geom.Clean(to)
	}
	return geom.Clean(g.Axial.Mm), geom.Clean(g.Axial.Mm + widthMm)
}
