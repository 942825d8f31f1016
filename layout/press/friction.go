package press

import (
	"fmt"
	"math"

	"centrepop/layout/material"
)

// Friction is a span of coefficients of friction between the members. A single
// figure would feign knowledge: the same joint pressed twice may differ by half.
// The lowest is for what the joint holds, the highest for what the press must
// give.
type Friction struct {
	Min, Max float64
	Source   string // in words, for printing
}

// check refuses a span that is no span of coefficients.
func (f Friction) check() error {
	if !(f.Min > 0 && f.Min <= f.Max && f.Max <= 1) {
		return fmt.Errorf("press: friction %v to %v must rise from above 0 to at most 1", f.Min, f.Max)
	}
	return nil
}

// Joining says how the surfaces meet.
type Joining int

// The ways of joining.
const (
	PressedDry   Joining = iota // pressed, surfaces clean and dry: risk of galling with equal steels
	PressedOiled                // pressed with oil or paste, the usual way
	Shrunk                      // joined hot or cold with clearance, surfaces degreased
)

// FrictionFor proposes the friction span for two materials and a way of
// joining. With two materials other than steel it spans both their figures
// against steel. It errs only for an unknown Joining or family.
//
// Sources: shrunk joints, DIN 7190-1, 5.3, as a secondary source quotes it
// (steel 0.15 to 0.20, cast iron 0.10 to 0.16, brass 0.17 to 0.25, light alloy
// 0.10 to 0.15). Pressed joints: a tribology course page (steel dry 0.10 to 0.15
// and oiled 0.05 to 0.10, brass and bronze dry 0.05 to 0.10) widened to 0.20 and
// 0.12 for steel as machine-design textbooks do, and to the shrunk figures for
// copper alloys where the two disagree; cast iron, light alloy and oiled copper
// alloy from memory.
func FrictionFor(hub, shaft Material, j Joining) (Friction, error) {
	a, err := familyFriction(hub.Family, j)
	if err != nil {
		return Friction{}, err
	}
	b, err := familyFriction(shaft.Family, j)
	if err != nil {
		return Friction{}, err
	}
	switch {
	case hub.Family == material.Steel:
		return b, nil
	case shaft.Family == material.Steel || hub.Family == shaft.Family:
		return a, nil
	}
	return Friction{math.Min(a.Min, b.Min), math.Max(a.Max, b.Max), a.Source + "; " + b.Source}, nil
}

// familyFriction is the span of one family against steel.
func familyFriction(f material.Family, j Joining) (Friction, error) {
	type row [3]Friction // by Joining
	var r row
	switch f {
	case material.Steel:
		r = row{{0.10, 0.20, "steel, dry: textbooks"}, {0.05, 0.12, "steel, oiled: textbooks"}, {0.15, 0.20, "steel, shrunk: DIN 7190-1, 5.3"}}
	case material.CastIron:
		r = row{{0.10, 0.16, "cast iron, dry: from memory"}, {0.05, 0.10, "cast iron, oiled: from memory"}, {0.10, 0.16, "cast iron, shrunk: DIN 7190-1, 5.3"}}
	case material.CopperAlloy:
		r = row{{0.05, 0.25, "copper alloy, dry: sources disagree, 0.05-0.10 and 0.17-0.25"}, {0.04, 0.10, "copper alloy, oiled: from memory"}, {0.17, 0.25, "copper alloy, shrunk: DIN 7190-1, 5.3"}}
	case material.Aluminium:
		r = row{{0.07, 0.15, "light alloy, dry: from memory"}, {0.05, 0.10, "light alloy, oiled: from memory"}, {0.10, 0.15, "light alloy, shrunk: DIN 7190-1, 5.3"}}
	default:
		return Friction{}, fmt.Errorf("press: no friction known for material family %d", int(f))
	}
	if j < PressedDry || j > Shrunk {
		return Friction{}, fmt.Errorf("press: unknown way of joining %d", int(j))
	}
	return r[j], nil
}

// Rules for pressing, printed on the press sheet.
const (
	LeadInDeg        = 5.0 // angle of the lead-in to the axis; DIN 7190, at most 5 degrees (from memory)
	MaxPressMmPerSec = 2.0 // press no faster; DIN 7190 (from memory)
	RestHours        = 24  // leave a pressed joint before loading it; DIN 7190 (from memory)
)

// leadInShare is how much of the engaged length a lead-in may take: what it takes holds
// nothing. Common practice, no source.
const leadInShare = 0.1

// LeadInFor returns the length in mm of the lead-in, the taper at the end of the shaft (or
// the mouth of the bore) that starts a pressed joint square, for a diameter dMm with at most
// interferenceMm on diameter over engagedMm: LeadInDeg, length the cube root of the
// diameter in mm (DIN 7190, from memory) but no more than a tenth of what is engaged,
// longer where the taper would not take up the interference with 0.1 mm to spare
// (common practice). It errs unless dMm and engagedMm are positive, interferenceMm zero
// or more, and all finite.
func LeadInFor(dMm, interferenceMm, engagedMm float64) (float64, error) {
	if !positive(dMm) || !notNegative(interferenceMm) || !positive(engagedMm) {
		return 0, fmt.Errorf("press: lead-in needs a positive diameter, interference and engaged length, has %v, %v and %v mm", dMm, interferenceMm, engagedMm)
	}
	slope := 2 * math.Tan(LeadInDeg*math.Pi/180) // of diameter over length
	return math.Max(math.Min(math.Cbrt(dMm), leadInShare*engagedMm), (interferenceMm+0.1)/slope), nil
}
