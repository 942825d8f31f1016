package develop

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"centrepop/layout/lookup"
)

// toMiddle returns what to add to a diameter, measured inside the plate or over it, to reach the middle of
// a plate that takes up thicknessMm along the radius, and what such diameters are called.
func toMiddle(inside bool, thicknessMm float64) (addMm float64, measured string) {
	if inside {
		return thicknessMm, "inside"
	}
	return -thicknessMm, "outside"
}

// MaxGores is the largest number of equal pieces a cone is split into.
const MaxGores = 24

// Frustum is a right cone, cut off, with both ends on one axis.
type Frustum struct {
	// LargeDiameterMm and SmallDiameterMm are the end diameters, over the plate or, with Inside, clear of it.
	LargeDiameterMm, SmallDiameterMm float64
	Inside                           bool
	// HeightMm is along the axis between the edges the diameters are
	// measured at.
	HeightMm float64
	// ThicknessMm is the plate, 0 for paper or thin sheet. The edges of the
	// blank are taken as cut square to the plate.
	ThicknessMm float64
	// OverlapMm is the width of the seam lap along one edge of each piece, 0
	// for a butt.
	OverlapMm float64
	// SheetWidthMm and SheetHeightMm are the sheet or paper each of as few equal
	// pieces as it allows must fit on, either way round; both 0 for no limit.
	SheetWidthMm, SheetHeightMm float64
}

// FrustumPattern is the flat pattern of a Frustum: one piece, cut Gores
// times. Radii, slant and angle are those of the middle of the plate.
type FrustumPattern struct {
	// Piece is one of the equal pieces. Its apex is the origin and the y axis
	// its middle line; the large end, the front face, is down, and the lap is
	// at the right-hand edge.
	Piece Development
	// Gores is how many pieces make the cone.
	Gores int
	// SlantMm is the length along the side.
	SlantMm float64
	// OuterRadiusMm and InnerRadiusMm are the radii of the sector.
	OuterRadiusMm, InnerRadiusMm float64
	// AngleDeg is the angle of the whole sector, below 360°; PieceAngleDeg
	// that of one piece.
	AngleDeg, PieceAngleDeg float64
	// AreaMm2 is the developed area of the whole cone without laps.
	AreaMm2 float64
}

// Develop returns the exact sector. It refuses equal diameters (a cylinder,
// see Cylinder), a small end larger than the large one, a plate too thick for
// the small end, a lap that would run into the blank, and a piece that does
// not fit the sheet.
func (f Frustum) Develop() (FrustumPattern, error) {
	err := cmp.Or(
		checkLength("large diameter", f.LargeDiameterMm), checkLength("small diameter", f.SmallDiameterMm),
		checkLength("height", f.HeightMm), checkAllowance("plate thickness", f.ThicknessMm),
		checkAllowance("seam overlap", f.OverlapMm),
		checkAllowance("sheet width", f.SheetWidthMm), checkAllowance("sheet height", f.SheetHeightMm))
	if err != nil {
		return FrustumPattern{}, err
	}
	switch {
	case f.LargeDiameterMm-f.SmallDiameterMm < 1e-6*f.LargeDiameterMm && f.SmallDiameterMm <= f.LargeDiameterMm:
		return FrustumPattern{}, refuse("both ends are %v: this is a cylinder, use the cylinder wrap", lookup.Mm(f.LargeDiameterMm))
	case f.SmallDiameterMm > f.LargeDiameterMm:
		return FrustumPattern{}, refuse("the small end, %v, is larger than the large end, %v: swap them", lookup.Mm(f.SmallDiameterMm), lookup.Mm(f.LargeDiameterMm))
	}

	// The plate leans by the half apex angle, so along the radius its middle
	// is half its thickness times the cosine away; both edges shift along the
	// axis alike and the height stays.
	halfApex := math.Atan2((f.LargeDiameterMm-f.SmallDiameterMm)/2, f.HeightMm)
	add, _ := toMiddle(f.Inside, f.ThicknessMm*math.Cos(halfApex))
	large, small := (f.LargeDiameterMm+add)/2, (f.SmallDiameterMm+add)/2
	if small < f.ThicknessMm/2*math.Cos(halfApex) {
		return FrustumPattern{}, refuse("a plate of %v is too thick for a small end of %v", lookup.Mm(f.ThicknessMm), lookup.Mm(f.SmallDiameterMm))
	}

	p := FrustumPattern{SlantMm: math.Hypot(f.HeightMm, large-small)}
	p.OuterRadiusMm = large * p.SlantMm / (large - small)
	p.InnerRadiusMm = small * p.SlantMm / (large - small)
	p.AngleDeg = 360 * (large - small) / p.SlantMm
	p.AreaMm2 = math.Pi * (large + small) * p.SlantMm
	if p.OuterRadiusMm > 1000*MaxLengthMm {
		return FrustumPattern{}, refuse("the taper is so slight that the sector's radius is %v: use the cylinder wrap", lookup.Mm(p.OuterRadiusMm))
	}
	most := 1
	if f.SheetWidthMm > 0 {
		most = MaxGores
	}
	if err := f.split(&p, 1, most); err != nil {
		return FrustumPattern{}, err
	}
	f.describe(&p, large, small, halfApex)
	return p, nil
}

// split chooses the number of gores, between two, and draws the piece.
func (f Frustum) split(p *FrustumPattern, from, to int) error {
	for p.Gores = from; p.Gores <= to; p.Gores++ {
		p.PieceAngleDeg = p.AngleDeg / float64(p.Gores)
		if err := f.checkLap(p); err != nil {
			if p.Gores < to {
				continue
			}
			return err
		}
		p.Piece = Development{}
		f.draw(p, (DefaultDivisions+p.Gores-1)/p.Gores)
		if fitsSheet(p.Piece.Box().Size(), f.SheetWidthMm, f.SheetHeightMm) {
			return nil
		}
	}
	size := p.Piece.Box().Size()
	return refuse("a piece of %d needs %v × %v, the sheet is %v × %v", to, lookup.Mm(size.XMm), lookup.Mm(size.YMm), lookup.Mm(f.SheetWidthMm), lookup.Mm(f.SheetHeightMm))
}

// checkLap refuses a lap that would cover the piece's other edge, which
// happens in a sector near a full circle.
func (f Frustum) checkLap(p *FrustumPattern) error {
	if free := 360 - p.PieceAngleDeg; f.OverlapMm > 0 && deg(math.Atan2(f.OverlapMm, p.InnerRadiusMm)) >= free {
		return refuse("a lap of %v runs into the other edge of a sector of %.2f°: a narrower lap, a butt, or a stock sheet so small that it is cut in pieces", lookup.Mm(f.OverlapMm), p.PieceAngleDeg)
	}
	return nil
}

// draw adds the outline, the lap and the division lines of one piece.
func (f Frustum) draw(p *FrustumPattern, parts int) {
	d := &p.Piece
	// The large end is the front face and points down, so clock angles grow to
	// the right: anticlockwise about the apex.
	half := p.PieceAngleDeg / 2
	outerL, outerR := polar(p.OuterRadiusMm, 270-half), polar(p.OuterRadiusMm, 270+half)
	innerL, innerR := polar(p.InnerRadiusMm, 270-half), polar(p.InnerRadiusMm, 270+half)
	d.Blank = Curve{Name: "edge", Role: Edge, Closed: true, Start: outerL}
	d.Blank.Segments = []Segment{{To: outerR, SweepDeg: p.PieceAngleDeg}, {To: innerR}, {To: innerL, SweepDeg: -p.PieceAngleDeg}, {To: outerL}}
	d.Curves = append(d.Curves, d.Blank)
	if f.OverlapMm > 0 {
		out := polar(f.OverlapMm, half) // square to the right edge
		lap := polyline("lap", Tab, outerR, outerR.Plus(out), innerR.Plus(out), innerR)
		d.Curves = append(d.Curves, lap, polyline("seam", Seam, outerR, innerR))
		d.Blank.Segments = slices.Insert(slices.Clone(d.Blank.Segments), 1, lap.Segments[:2]...)
	}
	t := Table{Title: "divisions", Drawn: true, Columns: []Column{
		{"angle from left edge", "deg"}, {"outer x", "mm"}, {"outer y", "mm"}, {"inner x", "mm"}, {"inner y", "mm"},
		{"outer chord from left edge", "mm"},
	}}
	for i := range parts + 1 {
		a := p.PieceAngleDeg * float64(i) / float64(parts)
		o, in := polar(p.OuterRadiusMm, 270-half+a), polar(p.InnerRadiusMm, 270-half+a)
		label := fmt.Sprint(i)
		if i > 0 && i < parts {
			d.Curves = append(d.Curves, polyline(label, Division, in, o))
		}
		d.Labels = append(d.Labels, Label{label, o})
		chord := 2 * p.OuterRadiusMm * math.Sin(rad(a)/2)
		t.Rows = append(t.Rows, Row{Label: label, Values: []float64{a, o.XMm, o.YMm, in.XMm, in.YMm, chord}})
	}
	d.Tables = []Table{t}
}

// describe fills in the numbers and rules of the piece.
func (f Frustum) describe(p *FrustumPattern, large, small, halfApex float64) {
	d := &p.Piece
	_, measured := toMiddle(f.Inside, 0)
	d.Inputs = []Value{
		{"large diameter, " + measured, f.LargeDiameterMm, "mm"},
		{"small diameter, " + measured, f.SmallDiameterMm, "mm"},
		{"height", f.HeightMm, "mm"},
		{"plate thickness", f.ThicknessMm, "mm"},
		{"seam overlap", f.OverlapMm, "mm"},
	}
	pieceAngle := rad(p.PieceAngleDeg)
	d.Results = []Value{
		{"large diameter, middle of plate", 2 * large, "mm"},
		{"small diameter, middle of plate", 2 * small, "mm"},
		{"slant", p.SlantMm, "mm"},
		{"outer radius", p.OuterRadiusMm, "mm"},
		{"inner radius", p.InnerRadiusMm, "mm"},
		{"sector angle", p.AngleDeg, "deg"},
		{"pieces", float64(p.Gores), ""},
		{"angle of one piece", p.PieceAngleDeg, "deg"},
		{"outer arc of one piece", p.OuterRadiusMm * pieceAngle, "mm"},
		{"outer chord of one piece", 2 * p.OuterRadiusMm * math.Sin(pieceAngle/2), "mm"},
		{"inner arc of one piece", p.InnerRadiusMm * pieceAngle, "mm"},
		{"inner chord of one piece", 2 * p.InnerRadiusMm * math.Sin(pieceAngle/2), "mm"},
		{"area of the whole cone", p.AreaMm2, "mm2"},
		{"half apex angle", deg(halfApex), "deg"},
		{"height over square-cut edges", f.HeightMm + f.ThicknessMm*math.Sin(halfApex), "mm"},
	}
	d.Formulas = []Formula{
		{"middle of plate", "D' = D ∓ t·cos(half apex angle), edges cut square to the plate"},
		{"slant", "s = √(h² + (R - r)²)"},
		{"sector radii", "outer = R·s/(R - r), inner = r·s/(R - r)"},
		{"sector angle", "360·(R - r)/s"},
	}
	d.Notes = append(d.Notes, "Seen from outside, large end down: clock angles grow to the right. Roll with the marks outside.",
		"R and r are half the diameters at the middle of the plate.")
}
