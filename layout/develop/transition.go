package develop

import (
	"cmp"
	"fmt"
	"math"
)

// Transition is a square or rectangle to round piece between two parallel
// planes: four flat triangles, one on each side, and a quarter of a leaning
// cone at each corner. The flats touch the circle where its tangent runs
// along their side, so flats and cones join without a crease and the surface
// unrolls without stretching, offset or not.
//
// The rectangle is the base and front face. The pattern has the base down and
// clock angles growing to the right.
type Transition struct {
	// WidthMm is the rectangle's size from 9 to 3 o'clock, DepthMm from 6
	// o'clock to TOP.
	WidthMm, DepthMm float64
	// DiameterMm is the round end, the top.
	DiameterMm float64
	Forming
}

// Develop returns the pattern by triangulation with true lengths. It refuses
// a seam off the four sides, plate too thick for the sizes, and a pattern
// that overlaps itself or does not fit the sheet.
func (tr Transition) Develop() (StripPattern, error) {
	if tr.SheetWidthMm == 0 {
		return tr.develop([]int{1})
	}
	return tr.develop([]int{1, 2, 4})
}

// develop tries numbers of pieces, fewest first.
func (tr Transition) develop(choices []int) (StripPattern, error) {
	if err := cmp.Or(checkLength("width", tr.WidthMm), checkLength("depth", tr.DepthMm), checkLength("diameter", tr.DiameterMm), tr.check()); err != nil {
		return StripPattern{}, err
	}
	if math.Mod(tr.SeamDeg, 90) != 0 {
		return StripPattern{}, refuse("seam angle is %g°, want the middle of a side: 0, 90, 180 or 270°", tr.SeamDeg)
	}
	halfWidth, err1 := middleRadius("width", tr.WidthMm, tr.ThicknessMm, tr.Inside)
	halfDepth, err2 := middleRadius("depth", tr.DepthMm, tr.ThicknessMm, tr.Inside)
	radius, err3 := middleRadius("diameter", tr.DiameterMm, tr.ThicknessMm, tr.Inside)
	if err := cmp.Or(err1, err2, err3); err != nil {
		return StripPattern{}, err
	}
	p, err := tr.strip(cmp.Or(tr.Divisions, DefaultDivisions), halfWidth, halfDepth, radius).fit(choices, tr.SheetWidthMm, tr.SheetHeightMm)
	if err != nil {
		return StripPattern{}, err
	}
	for i := range p.Pieces {
		tr.describe(&p.Pieces[i], halfWidth, halfDepth, radius, p.AreaMm2)
	}
	return p, nil
}

// strip lists the lines from the seam round: at each side's middle one, and
// from each corner a fan to its quarter of the circle. A fan line is labelled
// by its corner letter and division number.
func (tr Transition) strip(n int, halfWidth, halfDepth, radius float64) strip {
	fine := tr.fine(n)
	s := strip{title: "transition development", faceted: tr.Faceted, lapMm: tr.OverlapMm,
		baseGirthMm: 4 * (halfWidth + halfDepth), topGirthMm: polygonGirthMm(radius, n*fine)}
	onCircle := func(step int) Space {
		a := tr.SeamDeg + 360*float64(step%(n*fine))/float64(n*fine)
		return Space{tr.OffsetRightMm + radius*sinDeg(a), tr.OffsetTopMm + radius*cosDeg(a), tr.HeightMm}
	}
	onBase := func(clock float64) Space {
		sx, sy := sinDeg(clock), cosDeg(clock)
		return Space{halfWidth * sign(sx), halfDepth * sign(sy), 0}
	}
	quarter := n * fine / 4
	for side := range 5 {
		clock := tr.SeamDeg + 90*float64(side)
		s.rungs = append(s.rungs, rung{base: onBase(clock), top: onCircle(side * quarter), label: fmt.Sprintf("side %d", side%4+1), cut: true, flat: true})
		if side == 4 {
			break
		}
		for i := range quarter + 1 {
			r := rung{base: onBase(clock + 45), top: onCircle(side*quarter + i)}
			if i%fine == 0 {
				r.label = fmt.Sprintf("%c%d", 'A'+side, i/fine)
			}
			s.rungs = append(s.rungs, r)
		}
	}
	return s
}

// sign returns -1, 0 or 1.
func sign(v float64) float64 {
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}

func (tr Transition) describe(d *Development, halfWidth, halfDepth, radius, areaMm2 float64) {
	_, at := toMiddle(tr.Inside, 0)
	at = ", " + at
	d.Formulas = []Formula{{"middle of plate", "size ∓ t (common practice, no source)"}, {"true length", "√(Δx² + Δy² + Δdepth²) from corner to circle"}}
	tr.Forming.describe(d, []Value{{"width" + at, tr.WidthMm, "mm"}, {"depth" + at, tr.DepthMm, "mm"}, {"diameter" + at, tr.DiameterMm, "mm"}},
		[]Value{{"width, middle of plate", 2 * halfWidth, "mm"}, {"depth, middle of plate", 2 * halfDepth, "mm"}, {"diameter, middle of plate", 2 * radius, "mm"}}, areaMm2)
	d.Notes = append(d.Notes, "Corners A to D follow the seam in clock order; the flats between them stay flat.")
}
