package develop

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

// Shell is a cylinder rolled from sheet and closed by a seam along it.
type Shell struct {
	// OutsideDiameterMm is over the sheet, LengthMm along the axis.
	OutsideDiameterMm, LengthMm float64
	// ThicknessMm is the sheet.
	ThicknessMm float64
	// OverlapMm is the width of the seam's lap, 0 for a butt.
	OverlapMm float64
	// SeamDeg is the clock angle of the seam on the front face.
	SeamDeg float64
	// Openings are cut in the flat: Windows, sized there, with their places round and along from the front face.
	Openings []Feature
}

// Develop returns the flat blank, its outside up: a rectangle as long as the middle of the sheet goes
// round, π·(D − t). The axes are those of a Cylinder whose square edge is at the front face; the lap is
// at the right-hand edge, and lies on the metal clockwise of the seam. It refuses lengths out of range, a
// sheet that fills the round, a lap of more than half the girth, and an opening that runs over an edge or the seam.
func (s Shell) Develop() (Development, error) {
	if err := cmp.Or(checkLength("diameter", s.OutsideDiameterMm), checkLength("length", s.LengthMm), checkLength("sheet thickness", s.ThicknessMm),
		checkAllowance("seam overlap", s.OverlapMm)); err != nil {
		return Development{}, err
	}
	if 2*s.ThicknessMm >= s.OutsideDiameterMm {
		return Development{}, refuse("a sheet of %v cannot be rolled to a diameter of %v", lookup.Mm(s.ThicknessMm), lookup.Mm(s.OutsideDiameterMm))
	}
	middle := Cylinder{DiameterMm: s.OutsideDiameterMm - s.ThicknessMm, WidthMm: s.LengthMm, TabMm: s.OverlapMm}
	long, err := wrapLengthMm(middle.DiameterMm, 0)
	if err != nil {
		return Development{}, err
	}
	if s.OverlapMm > long/2 {
		return Development{}, refuse("a lap of %v is more than half of the girth of %v", lookup.Mm(s.OverlapMm), lookup.Mm(long))
	}
	d := middle.closed(nil, long, s.SeamDeg)
	edge := d.Curves[0].Box()
	d.Curves = slices.DeleteFunc(d.Curves, func(c Curve) bool { // what would be scribed along a cut
		x := c.Start.XMm
		return c.Role == Division && (geom.Alike(x, edge.Min.XMm) || geom.Alike(x, edge.Max.XMm))
	})
	for _, f := range s.Openings {
		c, _, err := f.shape(middle.DiameterMm / 2)
		if err != nil {
			return Development{}, lookup.Refuse("opening %q: %w", f.Name, err)
		}
		at := middle.Position(geom.OnClock(f.ClockDeg), f.AxialMm)
		at.XMm -= long * math.Ceil((at.XMm-edge.Max.XMm)/long)
		c = c.movedBy(at)
		if b := c.Box(); geom.Over(edge.Min.XMm, b.Min.XMm) || geom.Over(b.Max.XMm, edge.Max.XMm) || geom.Over(edge.Min.YMm, b.Min.YMm) || geom.Over(b.Max.YMm, edge.Max.YMm) {
			return Development{}, refuse("opening %q runs over the edge of the blank", f.Name)
		}
		c.Name, c.Role = f.Name, Cut
		d.Curves, d.Labels, d.Openings = append(d.Curves, c), append(d.Labels, Label{f.Name, at}), append(d.Openings, at)
	}
	d.Results = []Value{{"girth at the middle of the sheet", long, "mm"}}
	d.Formulas = []Formula{{"girth", "L = π·(D − t): the middle of the sheet keeps its length (DIN 6935, inside radius over 5·t)"}}
	return d, nil
}

// LapGirthMm is what a tape round the outside reads over π·D where a lap of another thickness lies on it: it runs over
// the lap, and straight down to the round on both sides of it. 0 for a butt.
func (s Shell) LapGirthMm() float64 {
	if s.OverlapMm == 0 {
		return 0
	}
	radius := s.OutsideDiameterMm / 2
	down := math.Acos(radius / (radius + s.ThicknessMm))
	return s.ThicknessMm*s.OverlapMm/radius + 2*radius*(math.Tan(down)-down)
}
