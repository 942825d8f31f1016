package develop

import (
	"cmp"
	"fmt"
	"math"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

// Oblique is a cone between two parallel circles that need not lie on one
// axis: an eccentric reducer, a leaning cone, or with equal ends a leaning
// tube. Such a surface unrolls without stretching, because lines between
// points at equal clock angles lie in common tangent planes.
//
// The base is the front face. The pattern has the base down and clock angles
// growing to the right.
type Oblique struct {
	// BaseDiameterMm and TopDiameterMm are the end diameters; either may be the larger.
	BaseDiameterMm, TopDiameterMm float64
	Forming
}

// Forming is what the triangulated patterns share: sheet formed between two
// parallel planes.
type Forming struct {
	// Inside tells that the sizes of the ends are those clear of the plate, not over it.
	Inside bool
	// HeightMm is the distance between the planes of the two ends.
	HeightMm float64
	// OffsetTopMm and OffsetRightMm shift the middle of the top from that of the
	// base towards TOP (12 o'clock) and towards 3 o'clock.
	OffsetTopMm, OffsetRightMm float64
	// ThicknessMm is the plate, 0 for thin sheet. The sizes are moved to its
	// middle by ∓ t: common practice, no source; the exact amount varies round a
	// leaning cone.
	ThicknessMm float64
	// Faceted tells that it is bent in the press at every division line, round ends to polygons with their
	// corners on the circle; else it is formed smoothly, and division lines are for marking and for guiding
	// the rolls or the bar.
	Faceted bool
	// OverlapMm is the lap at the right-hand end of each piece.
	OverlapMm float64
	// SeamDeg is the clock angle of the seam, -360..360; of a transition the
	// middle of a side: 0, 90, 180 or 270.
	SeamDeg float64
	// Divisions is the number of lines all round, of a transition a multiple of
	// 4; 0 for 12.
	Divisions int
	// SheetWidthMm and SheetHeightMm limit each of as few pieces as fit it, at most one per division
	// and MaxGores, of a transition 1, 2 or 4, cut in the middle of sides; both 0 for no limit.
	SheetWidthMm, SheetHeightMm float64
}

// Develop returns the pattern by triangulation with true lengths. It refuses
// equal concentric ends (a cylinder), plate too thick for an end, and a
// pattern that overlaps itself or does not fit the sheet.
func (o Oblique) Develop() (StripPattern, error) {
	choices := []int{1}
	for k := 2; o.SheetWidthMm != 0 && k <= min(cmp.Or(o.Divisions, DefaultDivisions), MaxGores); k++ {
		choices = append(choices, k)
	}
	return o.develop(choices)
}

// develop tries numbers of pieces, fewest first.
func (o Oblique) develop(choices []int) (StripPattern, error) {
	if err := cmp.Or(checkLength("base diameter", o.BaseDiameterMm), checkLength("top diameter", o.TopDiameterMm), o.check()); err != nil {
		return StripPattern{}, err
	}
	n := cmp.Or(o.Divisions, DefaultDivisions)
	offset := math.Hypot(o.OffsetTopMm, o.OffsetRightMm)
	if math.Abs(o.BaseDiameterMm-o.TopDiameterMm) < 1e-6*o.BaseDiameterMm && offset < 1e-6*o.BaseDiameterMm {
		return StripPattern{}, refuse("both ends are %v on one axis: this is a cylinder, use the cylinder wrap", lookup.Mm(o.BaseDiameterMm))
	}
	base, err1 := middleRadius("base diameter", o.BaseDiameterMm, o.ThicknessMm, o.Inside)
	top, err2 := middleRadius("top diameter", o.TopDiameterMm, o.ThicknessMm, o.Inside)
	if err := cmp.Or(err1, err2); err != nil {
		return StripPattern{}, err
	}

	fine := o.fine(n)
	m := n * fine
	s := strip{title: "oblique cone development", faceted: o.Faceted, lapMm: o.OverlapMm,
		baseGirthMm: polygonGirthMm(base, m), topGirthMm: polygonGirthMm(top, m)}
	for i := range m + 1 {
		a := o.SeamDeg + 360*float64(i%m)/float64(m)
		r := rung{
			base: Space{base * sinDeg(a), base * cosDeg(a), 0},
			top:  Space{o.OffsetRightMm + top*sinDeg(a), o.OffsetTopMm + top*cosDeg(a), o.HeightMm},
		}
		if i%fine == 0 {
			r.label, r.cut = fmt.Sprint(i/fine), true
		}
		s.rungs = append(s.rungs, r)
	}
	p, err := s.fit(choices, o.SheetWidthMm, o.SheetHeightMm)
	if err != nil {
		return StripPattern{}, err
	}
	for i := range p.Pieces {
		o.describe(&p.Pieces[i], base, top, p.AreaMm2)
	}
	return p, nil
}

func (o Oblique) describe(d *Development, base, top, areaMm2 float64) {
	_, measured := toMiddle(o.Inside, 0)
	d.Formulas = []Formula{{"middle of plate", "D' = D ∓ t (common practice, no source)"}, {"true length", "√(Δx² + Δy² + Δdepth²) between points at equal clock angle"}}
	o.Forming.describe(d, []Value{{"base diameter, " + measured, o.BaseDiameterMm, "mm"}, {"top diameter, " + measured, o.TopDiameterMm, "mm"}},
		[]Value{{"base diameter, middle of plate", 2 * base, "mm"}, {"top diameter, middle of plate", 2 * top, "mm"}}, areaMm2)
}

// check refuses what no pattern can be made of.
func (f *Forming) check() error {
	err := cmp.Or(checkLength("height", f.HeightMm), checkOffset("offset to TOP", f.OffsetTopMm), checkOffset("offset to the right", f.OffsetRightMm),
		checkAllowance("plate thickness", f.ThicknessMm), checkAllowance("seam overlap", f.OverlapMm),
		checkAllowance("sheet width", f.SheetWidthMm), checkAllowance("sheet height", f.SheetHeightMm))
	return cmp.Or(err, checkAngle("seam angle", f.SeamDeg))
}

// describe says what the pattern was made from and how, given its own sizes
// and those at the middle of the plate.
func (f *Forming) describe(d *Development, own, middle []Value, areaMm2 float64) {
	d.Inputs = append(own, Value{"height", f.HeightMm, "mm"}, Value{"offset to TOP", f.OffsetTopMm, "mm"}, Value{"offset to the right", f.OffsetRightMm, "mm"},
		Value{"plate thickness", f.ThicknessMm, "mm"}, Value{"seam overlap", f.OverlapMm, "mm"}, Value{"seam clock angle", geom.OnClock(f.SeamDeg), "deg"})
	d.Results = append(middle, Value{"area of all pieces", areaMm2, "mm2"})
	d.Formulas = append(d.Formulas, Formula{"triangulation", "each point from the two before it by true lengths"})
	d.Notes = append(d.Notes, "Seen from outside, base down: clock angles grow to the right.")
	if f.Faceted {
		d.Notes = append(d.Notes, "Bend at every fold line; corners of round ends lie on the circle.")
		return
	}
	d.Notes = append(d.Notes, "Roll or form smoothly along the division lines.")
}

// fine is how many lines a division has, where the sheet is rolled.
func (f *Forming) fine(divisions int) int {
	if f.Faceted {
		return 1
	}
	return (rolledSteps + divisions - 1) / divisions
}

// middleRadius returns half of a size moved to the middle of the plate.
func middleRadius(name string, sizeMm, thicknessMm float64, inside bool) (float64, error) {
	add, _ := toMiddle(inside, thicknessMm)
	if middle := sizeMm + add; middle > thicknessMm {
		return middle / 2, nil
	}
	return 0, refuse("a plate of %v is too thick for a %s of %v", lookup.Mm(thicknessMm), name, lookup.Mm(sizeMm))
}

// polygonGirthMm is the edge of a regular polygon with n corners on a circle.
func polygonGirthMm(radiusMm float64, n int) float64 {
	return 2 * radiusMm * float64(n) * math.Sin(math.Pi/float64(n))
}
