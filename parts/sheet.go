package parts

import (
	"math"

	"centrepop/parts/geom"
)

// Formed is what every part formed from sheet has. Sizes of the ends are at the
// outside of the sheet unless Inside is true.
type Formed struct {
	Height    Length
	Thickness Length
	Inside    bool
	Seam      Angle // clock angle of the seam
	Overlap   Length
	// The stock sheet; both 0 if not said. A blank too large for it is cut
	// in pieces.
	SheetWidth, SheetHeight Length
}

// Frustum is a rolled cone from flat sheet.
type Frustum struct {
	Pos          Pos
	Large, Small Length
	Offset       Length // eccentric: small end moved sideways by this much
	Formed
}

// Formed is what a cone, a transition or a tube of sheet is formed from; nil for another part.
func (p *Part) Formed() *Formed {
	switch p.Kind {
	case Tube:
		return p.Rolled
	case Cone:
		return &p.Frustum.Formed
	case TransitionPiece:
		return &p.Transition.Formed
	}
	return nil
}

// BoughtTube tells whether a part is a tube whose outside and bore are those of a maker.
func (p *Part) BoughtTube() bool { return p.Kind == Tube && p.Rolled == nil }

// Walls are how much larger than drawn it is outside, and smaller inside, on the diameter, mm.
func (f *Formed) Walls() (outsideMm, insideMm float64) {
	if f.Inside {
		return 2 * f.Thickness.Mm, 0
	}
	return 0, 2 * f.Thickness.Mm
}

// SeamGapMm is the metal between the seam, its lap and all, and what reaches halfMm to both sides of a
// clock angle, along an outside of that diameter; below 0 where it lies in the seam.
func (f *Formed) SeamGapMm(outsideMm, clockDeg, halfMm float64) float64 {
	perDeg, lap := outsideMm*math.Pi/360, f.Overlap.Mm/2
	return math.Abs(math.Remainder(clockDeg-f.Seam.Deg-lap/perDeg, 360))*perDeg - lap - halfMm
}

// Transition is a square-to-round made from flat sheet. The rectangle is the
// front face, the circle the back. Its seam lies at 0, 90, 180 or 270: the side
// with the seam in its middle.
type Transition struct {
	Pos          Pos
	Width, Depth Length // of the rectangle: from 9 to 3 o'clock, from 6 o'clock to TOP
	Diameter     Length
	Offset       Point // of the circle's centre from the rectangle's: x to the right, y to TOP
	Faceted      bool  // bent in the press at each line; else rolled
	Formed
}

// Narrowed is where the middle of the back lies from that of the front of what narrows to one side, in
// mm: x to the right, y to TOP. The zero point of every other part.
func (p *Part) Narrowed() geom.Point {
	switch {
	case p.Transition != nil:
		return geom.Point{XMm: p.Transition.Offset.X.Mm, YMm: p.Transition.Offset.Y.Mm}
	case p.Frustum != nil:
		return geom.Point{YMm: p.Frustum.Offset.Mm}
	}
	return geom.Point{}
}
