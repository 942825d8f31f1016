// Package bolts answers what a joint asks of its fastener: which length to
// take, whether the thread holds, whether head and spanner have room, and how
// tight to tighten.
//
// In go a size ("M10", "1/2-13 UNC"), a strength class ("8.8", "grade 5")
// and lengths in mm; out come mm, N, N·m and MPa. Inch bolts are converted
// to the same units.
//
// Standards:
//
//   - ISO 4014 and ISO 4017 (hexagon bolts and screws), ISO 4032 (nuts),
//     ISO 4762 (socket head screws), ISO 10642 (countersunk ones), ISO 7089 (washers), ISO 888 (lengths).
//   - ISO 898-1 (stress areas, proof loads), ISO 3506-1 (stainless).
//   - ASME B18.2.1 (hex cap screws), B18.2.2 (nuts), B18.3 (socket head),
//     B18.21.1 (washers); SAE J429 (grades 2, 5, 8).
//   - EN 1993-1-8 Table 3.3 (edge and pitch distances).
//
// Much of a bolting joint is rule of thumb: required engagement, nut factor,
// scatter, spanner size. Each such number is marked at its place.
//
// Bad input (unknown size or class, NaN, negative lengths) is an error. A
// joint that cannot be bolted well is no error: the result lists problems.
package bolts

import (
	"fmt"
	"math"

	"centrepop/layout/threads"
	"centrepop/parts/geom"
)

// A Head is the kind of head.
type Head string

const (
	Hex    Head = "hex"    // hexagon head, ISO 4014/4017 or ASME B18.2.1
	Socket Head = "socket" // socket head cap screw, ISO 4762 or ASME B18.3

	Countersunk Head = "countersunk" // with a hexagon socket, ISO 10642 or ASME B18.3
)

// A Bolt is one size with the nut and washer that go with it. Lengths in mm;
// a zero field means the standard does not have the part.
type Bolt struct {
	// Thread is the thread; fine pitches share head, nut and washer with the
	// coarse one.
	Thread threads.Thread
	// StressAreaMm2 is the tensile stress area in mm²: the ISO 898-1 value
	// for coarse metric, the SAE J429 value for UNC, the formula for others.
	StressAreaMm2 float64
	// AcrossFlatsMm and HeadHeightMm are the hexagon head, nominal.
	AcrossFlatsMm, HeadHeightMm float64
	// NutAcrossFlatsMm and NutHeightMm are the nut; the height is the largest
	// allowed (ISO 4032) or the basic one (ASME B18.2.2).
	NutAcrossFlatsMm, NutHeightMm float64
	// SocketHeadDiameterMm, SocketHeadHeightMm and SocketKeyMm are the
	// cylindrical head and its hexagon key.
	SocketHeadDiameterMm, SocketHeadHeightMm, SocketKeyMm float64
	// WasherIDMm, WasherODMm and WasherThicknessMm are the plain washer,
	// nominal.
	WasherIDMm, WasherODMm, WasherThicknessMm float64
	// Source names the standards of the dimensions.
	Source string

	row    int  // row of its table
	metric bool // which table
}

// StressAreaMm2 computes the tensile stress area in mm² by formula:
// π/4 (d − 0.9382 P)², ISO 898-1, which with d and P in inches is also
// the π/4 (D − 0.9743/n)² of ASME B1.1 but for the constant. It is an error
// for pipe threads or a thread without dimensions.
func StressAreaMm2(t threads.Thread) (float64, error) {
	factor := 0.9382
	pitch := t.PitchMm
	switch t.Series {
	case threads.MetricCoarse, threads.MetricFine:
	case threads.UnifiedUNC, threads.UnifiedUNF, threads.UnifiedUNEF, threads.UnifiedUN, threads.UnifiedUNS:
		factor, pitch = 0.9743, inch/t.TPI
	default:
		return 0, fmt.Errorf("bolts: %q has no tensile stress area", t.Designation)
	}
	d := t.MajorMm - factor*pitch
	if !finite(d) || d <= 0 {
		return 0, fmt.Errorf("bolts: %q has no valid diameter and pitch", t.Designation)
	}
	return math.Pi / 4 * d * d, nil
}

// inch is one inch in mm.
const inch = geom.MmPerInch

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// atLeast0 is an error unless x lies between 0 and 1 km.
func atLeast0(what string, x float64) error {
	if !finite(x) || x < 0 || x > 1e6 {
		return fmt.Errorf("bolts: %s must be a number of mm, 0 or more, not %v", what, x)
	}
	return nil
}

// Keyed tells whether a hexagon key goes into the head.
func (h Head) Keyed() bool { return h == Socket || h == Countersunk }
