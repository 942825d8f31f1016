package parts

import (
	"iter"
	"math"
	"slices"

	"centrepop/parts/geom"
)

// BarSection names what a bar's cross section is.
type BarSection string

// The sections.
const (
	SquareBar    BarSection = "square"
	RectangleBar BarSection = "rectangle"
	RoundBar     BarSection = "round"
	AngleBar     BarSection = "angle"
	ChannelBar   BarSection = "channel"
	FlatBar      BarSection = "flat"
)

// The ends of a bar, and its sides besides front, back, top and bottom of the
// front view, in which the bar lies level.
const (
	LeftEnd   = LeftSide
	RightEnd  = RightSide
	FrontSide = Side(Front)
	BackSide  = Side(Back)
)

// Bar is a length of tube or rolled section. It lies level in its front view, its
// length from the left end to the right one.
type Bar struct {
	Pos     Pos
	Section BarSection
	Width   Length // across the front view: a side, a diameter, the leg in front, the web
	Depth   Length // behind its front: the other leg, the flanges, a flat's thickness
	Wall    Length // of a tube, an angle, a channel's web; unset of a solid bar
	Flange  Length // thickness of a channel's flanges
	Corner  Length // outside radius of a square or rectangular tube
	Open    Side   // of a channel: the side that its flanges point to
	Length  Length // over all: between the outermost points
	Left    BarEnd
	Right   BarEnd
}

// BarEnd is how an end of a bar is cut: square where neither Mitre nor Onto or
// Round is set.
type BarEnd struct {
	Pos   Pos
	Mitre Angle // from a square cut
	Long  Side  // top or bottom: the side of the long point
	// Onto is the round that the end is coped onto: an outside of another part,
	// or, if that is not set, a diameter.
	Onto  Ref
	Round Length
	// Place says where on the round; nil if not said.
	Place *EndPlace
}

// Mitred tells whether the end is cut at an angle.
func (e *BarEnd) Mitred() bool { return e.Mitre.Pos.Line > 0 && e.Mitre.Deg > 0 }

// Coped tells whether the end is hollowed to sit on a round.
func (e *BarEnd) Coped() bool { return e.Onto.Set() || e.Round.Set() }

// RiseDeg is the angle of the end from a square cut, positive where the top
// sticks out.
func (e *BarEnd) RiseDeg() float64 {
	if !e.Mitred() {
		return 0
	}
	if e.Long == BottomSide {
		return -e.Mitre.Deg
	}
	return e.Mitre.Deg
}

// Tube tells whether the section is closed round a hollow.
func (b *Bar) Tube() bool {
	return b.Wall.Set() && (b.Section == SquareBar || b.Section == RectangleBar || b.Section == RoundBar)
}

// BothWalls of a tube are what a hole goes through that is not in one only.
const BothWalls = "both"

// Tubular tells whether a part is a bar whose section is closed.
func (p *Part) Tubular() bool { return p.Bar != nil && p.Bar.Tube() }

// PlateLike tells whether a part is a plate, or a flat bar.
func (p *Part) PlateLike() bool {
	return p.Flat() && p.Kind != Folded || p.Kind == BarPart && p.Bar.Section == FlatBar
}

// OneWall tells whether the holes of a bar go through one wall of it alone, for what is not screwed in.
func (g *HoleGroup) OneWall() bool { return g.Walls != BothWalls && g.Size.Make != TappedHole }

// BarEnds are the left and the right end of a bar, none of another part.
func (p *Part) BarEnds() iter.Seq2[Side, *BarEnd] {
	return func(yield func(Side, *BarEnd) bool) {
		_ = p.Bar != nil && yield(LeftEnd, &p.Bar.Left) && yield(RightEnd, &p.Bar.Right)
	}
}

// BarEnd is the end of a bar that a feature names, nil for another feature.
func (p *Part) BarEnd(feature string) *BarEnd {
	for side, end := range p.BarEnds() {
		if string(side) == feature {
			return end
		}
	}
	return nil
}

// OtherEnd is the other end of a bar, empty for a side that is none.
func (s Side) OtherEnd() Side {
	switch s {
	case LeftEnd:
		return RightEnd
	case RightEnd:
		return LeftEnd
	}
	return ""
}

// End is one of the two ends.
func (b *Bar) End(side Side) *BarEnd {
	if side == RightEnd {
		return &b.Right
	}
	return &b.Left
}

// Walls are the sides that have metal to drill from outside.
func (b *Bar) Walls() []Side {
	all := []Side{FrontSide, BackSide, TopSide, BottomSide}
	switch b.Section {
	case AngleBar:
		return []Side{FrontSide, BottomSide}
	case ChannelBar:
		return slices.DeleteFunc(all, func(s Side) bool { return s == b.Open })
	}
	return all
}

// SideMm is a side as seen by who looks at it: along the bar from the middle of its
// length, and across from the middle of the side. On top y
// goes to the back and on the bottom to the front.
func (b *Bar) SideMm(side Side) geom.Box {
	half := b.Width.Mm / 2
	if side == TopSide || side == BottomSide {
		half = b.Depth.Mm / 2
	}
	return geom.Box{Min: geom.Point{XMm: -b.Length.Mm / 2, YMm: -half}, Max: geom.Point{XMm: b.Length.Mm / 2, YMm: half}}
}

// EndMm is how far an end has run back from the outermost point where it is cut, at a
// height y over the middle of the front view.
func (b *Bar) EndMm(side Side, yMm float64) float64 {
	rise := math.Tan(b.End(side).RiseDeg() * math.Pi / 180)
	return b.Width.Mm/2*math.Abs(rise) - yMm*rise
}

// IsEnd tells whether it is the left or the right end of a bar.
func (s Side) IsEnd() bool { return s == LeftEnd || s == RightEnd }
