// Package weld works out what a welder needs to know before striking an arc:
// edge preparation by thickness, fillet sizes, the strength of a fillet, the
// filler to buy, where to tack round a circle and in which order to run, and how
// much metal to leave for squaring up afterwards.
//
// Units: millimetres, degrees, MPa, N, kg. Clock angles: 0 at TOP, clockwise,
// looking at the named face. Bad input returns an error.
//
// Standards: ISO 9692-1 (preparations, from memory), ISO 2553 (symbol names,
// from memory), AWS D1.1 Table 7.7 in the 2020 numbering (least fillet leg), EN
// 1993-1-8 clause 4.5 (strength of fillets). Tacking, run order and machining
// allowances are common practice, and say so. Nothing here replaces a welding
// procedure where one is asked for.
package weld

import (
	"fmt"
	"math"

	"centrepop/layout/lookup"
	"centrepop/layout/material"
)

// Throat returns the throat a in mm of an equal-leg fillet of leg z mm:
// a = z/sqrt(2). 0 if z is not positive and finite.
func Throat(legMm float64) float64 {
	if !positive(legMm) {
		return 0
	}
	return legMm / math.Sqrt2
}

// FilletJoint is what fillet sizes depend on.
type FilletJoint struct {
	ThinnerMm float64 // thickness of the thinner part, mm
	ThickerMm float64 // thickness of the thicker part, mm
	// LowHydrogen is true for gas-shielded and cored wire, TIG, and stick with
	// low-hydrogen electrodes: the thinner part then rules the least leg. Else
	// the thicker rules.
	LowHydrogen bool
}

func (j FilletJoint) check() error {
	if !positive(j.ThinnerMm) || !positive(j.ThickerMm) || j.ThinnerMm > j.ThickerMm {
		return fmt.Errorf("weld: thicknesses %v and %v mm: want the thinner and the thicker part, both positive", j.ThinnerMm, j.ThickerMm)
	}
	return nil
}

// MinLeg returns the least leg in mm, AWS D1.1:2020 Table 7.7: 3 mm up to 6 mm
// thickness, 5 over 6 to 12, 6 over 12 to 20, 8 over 20. The
// thickness is the thinner part's with low hydrogen, else the thicker's; the leg
// need not exceed the thinner part. The purpose is that the weld does not cool
// too fast, whatever its load.
func MinLeg(j FilletJoint) (float64, error) {
	if err := j.check(); err != nil {
		return 0, err
	}
	t := j.ThickerMm
	if j.LowHydrogen {
		t = j.ThinnerMm
	}
	leg := 8.0
	switch {
	case t <= 6:
		leg = 3
	case t <= 12:
		leg = 5
	case t <= 20:
		leg = 6
	}
	return math.Min(leg, j.ThinnerMm), nil
}

// LegRule is what decided the leg of a fillet, and where it is from.
type LegRule string

// The rules.
const (
	LegByThickness LegRule = "0.7 of the thinner part, common practice"
	LegByLeast     LegRule = "least leg, AWS D1.1 Table 7.7"
	LegByThinner   LegRule = "no more than the thinner part"
)

// SuggestLeg returns a leg in mm for a joint without a calculated load: 0.7 of the
// thinner part, which makes a fillet on both sides about as strong as the part
// (common practice), not under MinLeg, and the rule that decided.
func SuggestLeg(j FilletJoint) (legMm float64, rule LegRule, err error) {
	least, err := MinLeg(j)
	if err != nil {
		return 0, "", err
	}
	legMm, rule = math.Ceil(0.7*j.ThinnerMm-1e-9), LegByThickness
	if legMm < least {
		legMm, rule = least, LegByLeast
	}
	if legMm > j.ThinnerMm {
		legMm, rule = j.ThinnerMm, LegByThinner
	}
	return legMm, rule, nil
}

// gammaM2 is the partial factor for welds, EN 1993-1-8 Table 2.1.
const gammaM2 = 1.25

// Least sizes of a load-carrying fillet, EN 1993-1-8 clauses 4.5.2(2) and
// 4.5.1(2).
const (
	LeastThroatMm    = 3.0
	leastLengthMm    = 30.0
	leastLengthThick = 6.0 // throats
)

// FilletStrength returns the design shear strength of a fillet's throat in MPa
// by the simplified method of EN 1993-1-8 clause 4.5.3.3:
// f_vw,d = fu/(sqrt 3 beta_w gamma_M2), gamma_M2 = 1.25. grade is the weaker part's,
// one for which Table 4.1 has a correlation factor (S235 to S460), and fuMPa its
// tensile strength by its product standard (layout/material); careful, since EN
// 1993-1-1 Table 3.1 has 430 for S275 and 510 for S355.
func FilletStrength(grade string, fuMPa float64) (float64, error) {
	m, err := material.Find(grade)
	if err != nil {
		return 0, err
	}
	if m.BetaW == 0 {
		return 0, fmt.Errorf("weld: EN 1993-1-8 Table 4.1 has no correlation factor for %s", m.Name)
	}
	if !positive(fuMPa) {
		return 0, fmt.Errorf("weld: tensile strength %v MPa is not a positive number", fuMPa)
	}
	return fuMPa / (math.Sqrt(3) * m.BetaW * gammaM2), nil
}

// FilletForce returns the force in N that a fillet of throat throatMm and design
// strength stressMPa (FilletStrength) carries, whatever its direction (EN 1993-1-8
// clause 4.5.3.3). The effective length is lengthMm less a throat at each end, or
// all of it if closed (a full circle). It errs for a throat under 3 mm or an
// effective length under the greater of 30 mm and 6 throats: such a weld must not
// be counted on.
func FilletForce(stressMPa, throatMm, lengthMm float64, closed bool) (float64, error) {
	if !positive(throatMm) || !positive(lengthMm) {
		return 0, fmt.Errorf("weld: throat %v mm and length %v mm must be positive numbers", throatMm, lengthMm)
	}
	if throatMm < LeastThroatMm {
		return 0, lookup.Refuse("weld: throat %v is under the %v of EN 1993-1-8 clause 4.5.2(2)", lookup.Mm(throatMm), lookup.Mm(LeastThroatMm))
	}
	effective := lengthMm
	if !closed {
		effective -= 2 * throatMm
	}
	if least := math.Max(leastLengthMm, leastLengthThick*throatMm); effective < least {
		return 0, lookup.Refuse("weld: effective length %v is under the %v of EN 1993-1-8 clause 4.5.1(2)", lookup.Mm(effective), lookup.Mm(least))
	}
	force := stressMPa * throatMm * effective
	if !positive(force) {
		return 0, fmt.Errorf("weld: the sizes are out of all proportion: no finite force")
	}
	return force, nil
}

// positive reports whether x is above zero and finite.
func positive(x float64) bool { return x > 0 && !math.IsInf(x, 0) }

// notNegative reports whether x is zero or above, and finite.
func notNegative(x float64) bool { return x >= 0 && !math.IsInf(x, 0) }
