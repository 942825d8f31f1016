// Package fits turns a nominal size and a tolerance class into limits to
// machine to.
//
// It covers three things a drawing asks for:
//
//   - the ISO code system for tolerances on linear sizes (ISO 286-1:2010):
//     standard tolerances IT01 to IT18, hole classes A to ZC, shaft classes a
//     to zc, and the fit between a hole and a shaft, for nominal sizes above 0
//     up to and including 3150 mm;
//   - general tolerances for dimensions without one of their own
//     (ISO 2768-1:1989): linear sizes, chamfers and radii, angles;
//   - a light press on a part that was measured instead of drawn, as used for
//     bought tube (common practice, no source).
//
// Sizes are millimetres, deviations are micrometres, angles are degrees; the
// name of each value says which. Nothing is interpolated and nothing is
// computed from the formulae behind the tables: a class that the standard
// leaves blank is refused with an error that wraps [ErrNotDefined] and names
// the nearest class that is defined.
//
// The tables were written down from memory of ISO 286-1. The tests check them
// against the reference rows in testdata/reference (Machine Drawing by
// Narayana, Kannaiah and Reddy, 3rd ed., Tables 15.1 to 15.3; Machinery's
// Handbook, 31st ed., Table 6a; ISO 286-2:1988) and against the formulae from
// which the system was built (Machine Drawing, Table 15.4).
package fits

import (
	"fmt"
	"math"
	"strings"

	"centrepop/layout/lookup"
)

// MaxNominalMm is the largest nominal size, in mm, that ISO 286-1 covers.
const MaxNominalMm = 3150

// Limits holds the two limits of one class at one nominal size.
type Limits struct {
	NominalMm float64 `json:"-"`        // nominal size, mm
	Class     string  `json:"class"`    // as [Class.String] writes it, "H7" or "js6"
	UpperUm   float64 `json:"upper_um"` // upper limit deviation ES or es, µm, signed
	LowerUm   float64 `json:"lower_um"` // lower limit deviation EI or ei, µm, signed
	MaxMm     float64 `json:"max_mm"`   // upper limit of size, mm, to the nearest 0.000 001 mm
	MinMm     float64 `json:"min_mm"`   // lower limit of size, mm, to the nearest 0.000 001 mm
	Hole      bool    `json:"-"`        // true for an internal feature, false for an external one
}

// Limit returns the limits of a class such as "H7" (hole) or "p6" (shaft) at a
// nominal size above 0 up to and including 3150 mm. A size on the edge of a
// step belongs to the lower step: 50 mm is in "30 to 50".
//
// JS and js are exactly plus and minus half the tolerance, also where that is
// half a micrometre (ISO 286-1:2010; older editions let odd values be rounded).
//
// The error wraps [ErrNotDefined] when class and size are well formed but the
// standard gives no limits for them; it is a plain error for a class that
// cannot be read or a size that is not a finite number above zero. The Limits
// returned with an error are zero. Source: ISO 286-1:2010, Tables 1 to 5.
func Limit(nominalMm float64, class string) (Limits, error) {
	c, err := Parse(class)
	if err != nil {
		return Limits{}, err
	}
	return limitOf(nominalMm, c)
}

func limitOf(nominalMm float64, c Class) (Limits, error) {
	if err := checkNominal(nominalMm); err != nil {
		return Limits{}, lookup.Refuse("fits: %s: %w", c, err)
	}
	upper, lower, reason := deviations(nominalMm, c)
	if reason != "" {
		return Limits{}, refuse(nominalMm, c, reason)
	}
	l := Limits{
		NominalMm: nominalMm,
		Class:     c.String(),
		UpperUm:   upper,
		LowerUm:   lower,
		MaxMm:     sizeMm(nominalMm, upper),
		MinMm:     sizeMm(nominalMm, lower),
		Hole:      c.Hole,
	}
	return l, nil
}

// Fit is a hole and a shaft of the same nominal size.
type Fit struct {
	Hole  Limits
	Shaft Limits
	Kind  string // "clearance", "transition" or "interference"
	// ClearanceMaxUm is the largest hole less the smallest shaft, µm;
	// negative means interference.
	ClearanceMaxUm float64
	// ClearanceMinUm is the smallest hole less the largest shaft, µm;
	// negative means interference.
	ClearanceMinUm float64
}

// The three kinds of fit, as [Fit].Kind holds them (ISO 286-1:2010, 3.3).
const (
	KindClearance    = "clearance"    // the least clearance is zero or more
	KindTransition   = "transition"   // may come out loose or tight
	KindInterference = "interference" // the greatest clearance is zero or less
)

// Between returns the fit written hole first, shaft second: "H7/p6". Spaces
// around the stroke are allowed. Errors are those of [Limit], or say that the
// two halves are missing, or are in the wrong order. The Fit returned with an
// error is zero.
//
// A fit is a clearance fit also when the least clearance is exactly zero
// (H7/h6), and an interference fit also when the greatest is exactly zero.
func Between(nominalMm float64, fit string) (Fit, error) {
	left, right, ok := strings.Cut(fit, "/")
	if !ok {
		return Fit{}, fmt.Errorf(`fits: %q is not a fit: write hole/shaft, such as "H7/p6"`, fit)
	}
	h, err := Parse(left)
	if err != nil {
		return Fit{}, err
	}
	s, err := Parse(right)
	if err != nil {
		return Fit{}, err
	}
	switch {
	case !h.Hole && s.Hole:
		return Fit{}, fmt.Errorf(`fits: %q has the shaft first: write "%s/%s"`, fit, s, h)
	case !h.Hole || s.Hole:
		return Fit{}, fmt.Errorf("fits: %q needs one hole class (capitals) and one shaft class (small letters)", fit)
	}
	hole, err := limitOf(nominalMm, h)
	if err != nil {
		return Fit{}, err
	}
	shaft, err := limitOf(nominalMm, s)
	if err != nil {
		return Fit{}, err
	}
	f := Fit{
		Hole:           hole,
		Shaft:          shaft,
		Kind:           KindTransition,
		ClearanceMaxUm: roundUm(hole.UpperUm - shaft.LowerUm),
		ClearanceMinUm: roundUm(hole.LowerUm - shaft.UpperUm),
	}
	switch {
	case f.ClearanceMinUm >= 0:
		f.Kind = KindClearance
	case f.ClearanceMaxUm <= 0:
		f.Kind = KindInterference
	}
	return f, nil
}

// checkNominal refuses sizes outside the standard.
func checkNominal(nominalMm float64) error {
	switch {
	case math.IsNaN(nominalMm) || math.IsInf(nominalMm, 0):
		return fmt.Errorf("nominal size %v is not a finite number", nominalMm)
	case nominalMm <= 0:
		return fmt.Errorf("nominal size %v mm is not above zero", nominalMm)
	case nominalMm > MaxNominalMm:
		return lookup.Refuse("%w: nominal size %v is above %v, the largest size covered", ErrNotDefined, lookup.Mm(nominalMm), lookup.Mm(MaxNominalMm))
	}
	return nil
}
