// Package threads gives the dimensions of the screw threads a workshop meets:
// what to drill before tapping, what to turn before cutting, and what hole
// lets the screw through.
//
// In goes a designation as it stands on a drawing ("M10x1.25", "G1 1/4",
// "1/2-13 UNC", "Rc3/8"); out comes a [Thread] in millimetres. All lengths are
// millimetres, also for inch threads; TPI is threads per inch of 25.4 mm.
//
// Standards:
//
//   - ISO 68-1 and ISO 724: profile and basic dimensions of metric threads;
//     ISO 261 and ISO 262: which diameters and pitches exist.
//   - ISO 2306 practice: tap drills. Unified tap drills are the usual chart
//     of number, letter and fraction drills.
//   - ISO 273:1979: clearance holes for metric bolts. ASME B18.2.8-1999:
//     clearance holes for inch screws.
//   - ISO 228-1: parallel pipe threads G. ISO 7-1: pipe threads R, Rc, Rp.
//   - ASME B1.20.1: taper pipe threads NPT.
//   - ASME B1.1: Unified coarse (UNC), fine (UNF), extra-fine (UNEF) and constant-pitch (UN)
//     series, and the limits of classes 1A to 3B.
//     ABMA 8.2: threads of bearing lock nuts.
//   - ISO 2901 to 2904: metric trapezoidal threads Tr. ASME B1.5: general purpose Acme threads.
//   - DIN 76-1: how much deeper than the full thread a blind hole is drilled.
//
// Where a table value is only remembered, or is shop practice with no
// standard behind it, Thread.Note says so.
//
// Nothing here panics on bad input: an unknown designation is an
// [*UnknownError] that lists the nearest known ones.
package threads

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"centrepop/layout/lookup"
)

// The values of Thread.Series.
const (
	MetricCoarse = "metric-coarse" // ISO 261 coarse pitch
	MetricFine   = "metric-fine"   // ISO 261 fine pitch
	PipeG        = "G"             // ISO 228-1, parallel, not sealing on the thread
	PipeR        = "R"             // ISO 7-1, taper external
	PipeRc       = "Rc"            // ISO 7-1, taper internal
	PipeRp       = "Rp"            // ISO 7-1, parallel internal
	PipeNPT      = "NPT"           // ASME B1.20.1, taper, external and internal
	UnifiedUNC   = "UNC"           // ASME B1.1 coarse
	UnifiedUNF   = "UNF"           // ASME B1.1 fine
	UnifiedUNEF  = "UNEF"          // ASME B1.1 extra fine
	UnifiedUN    = "UN"            // ASME B1.1 constant pitch
	Trapezoidal  = "Tr"            // ISO 2901 to 2904, lead screws
	Acme         = "ACME"          // ASME B1.5 general purpose, lead screws
	UnifiedUNS   = "UNS"           // the form of ASME B1.1 with another size: bearing lock nuts
)

// A Thread is one thread with its basic dimensions.
type Thread struct {
	// Designation is the spelling used on every sheet: "M10", "M10x1.25",
	// "G1 1/4", "Rc1/2", "1/2-13 UNC", "#10-24 UNC". Parse accepts it.
	Designation string
	// Series is one of the constants above.
	Series string
	// LeftHand tells a left-hand thread; of lead screws Lead does.
	LeftHand bool
	// Class is the class of a Unified ("1A" to "3B"), trapezoidal or Acme thread as it was given; mostly empty.
	Class string
	// PitchMm is the pitch in mm. Inch threads give it rounded to 0.001 mm,
	// as ISO 228-1 prints it; 25.4/TPI is exact.
	PitchMm float64
	// TPI is threads per inch; 0 for metric threads.
	TPI float64
	// MajorMm is the basic major diameter d = D in mm. For taper threads the
	// three diameters hold at the gauge plane.
	MajorMm float64
	// PitchDiameterMm is the basic pitch diameter d2 = D2 in mm, to 0.001.
	PitchDiameterMm float64
	// MinorMm is the basic minor diameter of the internal thread D1 in mm,
	// to 0.001.
	MinorMm float64
	// TapDrillMm is the drill before cutting the internal thread with a tap,
	// in mm. It is 0 for R, which is only an external thread, and for lead screws, which no usual tap cuts.
	TapDrillMm float64
	// TapDrillName is the drill's trade name where it is not a metric drill:
	// "#7", "F", "27/64 in"; otherwise empty.
	TapDrillName string
	// Taper is true for the threads with a taper of 1:16 on diameter: R, Rc, NPT.
	Taper bool
	// GaugeLengthMm is the basic gauge length of ISO 7-1 in mm: the distance
	// from the small end of the external thread to the gauge plane; for NPT the
	// engagement by hand L1 of ASME B1.20.1. It is 0 for other threads than R, Rc,
	// Rp and NPT.
	GaugeLengthMm float64
	// UsefulLengthMm is the least useful length of the external thread of
	// ISO 7-1 at the basic gauge length, in mm; what an internal thread must
	// take in is longer by the tolerance of the gauge length. For NPT it is the
	// effective length L2 of the external thread. It is 0 for threads other than R,
	// Rc, Rp and NPT.
	UsefulLengthMm float64
	// WrenchMm is how much farther than by hand a wrench turns an NPT thread in, in
	// mm: L3 of ASME B1.20.1. It is 0 for all others.
	WrenchMm float64
	// Clearance holds the clearance holes; nil for pipe threads and for
	// metric diameters that ISO 273 does not list (M9, M15, ...).
	Clearance *Clearance
	// Lead holds what trapezoidal and Acme threads have beyond this; nil for all others.
	Lead *Lead
	// Source names the standard the dimensions follow.
	Source lookup.Source
	// Note says which values are from memory or shop practice; it may be
	// empty.
	Note string
}

// Clearance holds the clearance hole diameters of one bolt size in mm: fine,
// medium and coarse series of ISO 273, or close, normal and loose fit of
// ASME B18.2.8.
type Clearance struct {
	FineMm   float64 `json:"fine"`
	MediumMm float64 `json:"medium"`
	CoarseMm float64 `json:"coarse"`
}

// TaperPerMm is the taper of R, Rc and NPT threads: growth of diameter per mm of
// length. ISO 7-1, ASME B1.20.1.
const TaperPerMm = 1.0 / 16

// ClearanceMm returns the clearance hole in mm. The series is "fine",
// "medium" or "coarse", or the ASME words "close", "normal" and "loose" for
// the same three; case does not matter and an empty series is medium. It is
// an error to ask for another series, or for a thread without a clearance
// hole (see Thread.Clearance).
func (t Thread) ClearanceMm(series string) (float64, error) {
	of := cmp.Or(t.Clearance, &Clearance{})
	mm, known := map[string]float64{
		"fine": of.FineMm, "close": of.FineMm, "medium": of.MediumMm, "normal": of.MediumMm, "": of.MediumMm, "coarse": of.CoarseMm, "loose": of.CoarseMm,
	}[strings.ToLower(strings.TrimSpace(series))]
	switch {
	case !known:
		return 0, fmt.Errorf("threads: clearance series %q is not known: use fine, medium or coarse (or close, normal, loose)", series)
	case t.Clearance == nil:
		return 0, fmt.Errorf("threads: no standard clearance hole for %s: give the hole diameter itself", t.Designation)
	}
	return mm, nil
}

// round3 rounds to 0.001 mm, the step of ISO 724 and ISO 228-1.
func round3(x float64) float64 { return math.Round(x*1000) / 1000 }
