// Package tapers computes what the lathe and the mill need for shapes that are
// not straight or not round: cones turned with the top slide, flats and
// polygons milled on a round, and knurls.
//
// All lengths are millimetres, all angles degrees.
//
// Sources: the geometry of a cone with the terms of ISO 3040 (angle α is the
// included one, the ratio C = (D − d)/L is written 1:x); the rule for a
// measurement over two pins is that of the handbooks, M = d + p·(1 + cot((90° −
// α/2)/2)) for a cone on its small end; DIN 82:1973 for knurls.
package tapers

import (
	"cmp"
	"math"

	"centrepop/layout/lookup"
)

// MaxMm is the greatest length taken.
const MaxMm = 10000.0

// Taper is a cone between two faces across its axis. It stands for a shaft or a
// bore.
type Taper struct {
	LargeMm, SmallMm float64 // diameters at the ends
	LengthMm         float64 // along the axis
}

// New returns the taper between two diameters. It errs with a
// *lookup.RangeError unless 0 <= small < large <= MaxMm and the length is above
// 0 and at most MaxMm.
func New(largeMm, smallMm, lengthMm float64) (Taper, error) {
	if err := cmp.Or(
		lookup.Length("large diameter", largeMm, 0, MaxMm),
		lookup.Length("small diameter", smallMm, lookup.Under(0), lookup.Under(largeMm)),
		lookup.Length("length", lengthMm, 0, MaxMm),
	); err != nil {
		return Taper{}, err
	}
	return Taper{LargeMm: largeMm, SmallMm: smallMm, LengthMm: lengthMm}, nil
}

// ByRatio returns the taper 1:ratio below a large diameter. It errs as New does,
// and for a ratio not above 0.
func ByRatio(largeMm, ratio, lengthMm float64) (Taper, error) {
	if err := lookup.Number("ratio", ratio, 0, 1e6); err != nil {
		return Taper{}, err
	}
	return New(largeMm, largeMm-lengthMm/ratio, lengthMm)
}

// ByAngle returns the taper of an included angle above 0 and below 180° below a
// large diameter. It errs as New does.
func ByAngle(largeMm, includedDeg, lengthMm float64) (Taper, error) {
	if err := lookup.Angle("included angle", includedDeg, 0, lookup.Under(180)); err != nil {
		return Taper{}, err
	}
	return New(largeMm, largeMm-2*lengthMm*math.Tan(includedDeg*math.Pi/360), lengthMm)
}

// half is the angle between the flank and the axis.
func (t Taper) half() float64 { return math.Atan2(t.LargeMm-t.SmallMm, 2*t.LengthMm) }

// IncludedDeg is the angle between opposite flanks, α of ISO 3040.
func (t Taper) IncludedDeg() float64 { return 2 * t.TopSlideDeg() }

// TopSlideDeg is what the top slide is swivelled to from the axis: half the
// included angle.
func (t Taper) TopSlideDeg() float64 { return t.half() * 180 / math.Pi }

// Ratio is x of 1:x: how far along the axis the diameter changes by one.
func (t Taper) Ratio() float64 { return t.LengthMm / (t.LargeMm - t.SmallMm) }

// FlankMm is the length of the flank, which the top slide has to travel.
func (t Taper) FlankMm() float64 { return math.Hypot(t.LengthMm, (t.LargeMm-t.SmallMm)/2) }

// DiameterMm returns the diameter in a plane across the axis, fromLargeMm from
// the large end. It errs for a plane outside the taper.
func (t Taper) DiameterMm(fromLargeMm float64) (float64, error) {
	if err := lookup.Length("distance from the large end", fromLargeMm, lookup.Under(0), t.LengthMm); err != nil {
		return 0, err
	}
	return t.LargeMm - fromLargeMm/t.Ratio(), nil
}

// AdvanceMm returns how much further a taper goes into its mate when deeperMm
// (on diameter) is taken off: the way to cut to a gauge plane.
func (t Taper) AdvanceMm(deeperMm float64) float64 { return deeperMm * t.Ratio() }

// OverPinsMm returns the measurement over two equal pins laid against opposite
// flanks of a taper that stands on a plate, on its large end or on its small
// one, the pins raised by equal stacks of gauge blocks; 0 for pins on the
// plate. Two measurements at different stacks give the angle without the pins'
// diameter. It errs for pins not above 0, a stack below 0, and pins that would
// touch above the flank.
func (t Taper) OverPinsMm(pinMm, stackMm float64, onSmallEnd bool) (float64, error) {
	if err := lookup.Length("pin diameter", pinMm, 0, MaxMm); err != nil {
		return 0, err
	}
	a, r := t.half(), pinMm/2
	lean, end := -math.Tan(a), t.LargeMm // the flank leans inwards going up
	if onSmallEnd {
		lean, end = -lean, t.SmallMm
	}
	if err := lookup.Length("stack", stackMm, lookup.Under(0), t.LengthMm); err != nil {
		return 0, err
	}
	// A flank that leans inwards faces up and is touched below the pin's middle.
	touch := stackMm + r + math.Copysign(r*math.Sin(a), lean)
	if err := lookup.Length("height of contact", touch, 0, t.LengthMm); err != nil {
		return 0, err
	}
	return end + 2*(stackMm+r)*lean + 2*r/math.Cos(a) + 2*r, nil
}
