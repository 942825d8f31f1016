// Package flight computes the blank of one turn of an auger flight: a flat ring
// with a gap that, pulled along the shaft by one pitch, becomes one turn of a
// helicoid, and how many of them an auger needs.
//
// All lengths are millimetres, all angles degrees. The blank is that of the
// middle of the sheet; its thickness only sets the mass.
//
// The ring is chosen so that both its edges have exactly the length of the
// helices they become, and its radial width is kept. With the inside helix
// B = √((π·d)² + P²), the outside helix A = √((π·D)² + P²) and the radial width
// b = (D − d)/2, the inside radius is r = b·B/(A − B): the rule for screw
// flights made of plate (scribd.com 24008487, "Screw Conveyor Design"). A
// helicoid cannot be unrolled without strain: between the edges the sheet has
// to give a little, which [Blank.MidStrain] tells. No standard is followed.
package flight

import (
	"cmp"
	"math"

	"centrepop/layout/lookup"
)

// MaxMm is the greatest length taken.
const MaxMm = 10000.0

// Hand is the way the helix winds.
type Hand string

// A right-hand flight, like a common screw, goes away from the eye turning
// clockwise; turned the same way a left-hand one conveys the other way.
const (
	Right Hand = "right"
	Left  Hand = "left"
)

// Flight is one flight on its shaft.
type Flight struct {
	ShaftMm     float64 // outside of the shaft or tube, which is the inside of the flight
	OutsideMm   float64 // outside of the flight
	PitchMm     float64 // advance along the axis in one turn
	ThicknessMm float64 // of the sheet; 0 if only the shape is wanted
	Hand        Hand    // "" is Right
}

// Blank is the flat ring for one turn.
type Blank struct {
	InsideMm       float64 `json:"blank_inside_mm"` // diameter
	OutsideMm      float64 `json:"blank_outside_mm"`
	GapDeg         float64 `json:"gap_deg"`          // the sector to cut out
	WidthMm        float64 `json:"width_mm"`         // radial, in the flat as on the shaft
	InsideGapMm    float64 `json:"inside_gap_mm"`    // the gap as a straight line at the inside
	OutsideGapMm   float64 `json:"outside_gap_mm"`   // and at the outside
	InsideHelixMm  float64 `json:"inside_helix_mm"`  // length of the inside edge: the weld seam of one turn
	OutsideHelixMm float64 `json:"outside_helix_mm"` // length of the outside edge
	InsideLeadDeg  float64 `json:"inside_lead_deg"`  // angle of the inside edge to a plane across the shaft
	OutsideLeadDeg float64 `json:"outside_lead_deg"` // and of the outside edge
	MidStrain      float64 `json:"mid_strain"`       // how much the middle of the ring must stretch, as a share; negative: upset
	AreaMm2        float64 `json:"-"`                // of the sheet
}

// Blank computes the ring. It errs with a *lookup.RangeError for a diameter or
// pitch that is not above 0 and at most MaxMm, or an outside not above the
// shaft, and with a *lookup.UnknownError for another hand.
func (f Flight) Blank() (Blank, error) {
	if err := cmp.Or(
		lookup.Length("shaft diameter", f.ShaftMm, 0, MaxMm),
		lookup.Length("outside diameter", f.OutsideMm, f.ShaftMm, MaxMm),
		lookup.Length("pitch", f.PitchMm, 0, MaxMm),
		lookup.Length("thickness", f.ThicknessMm, lookup.Under(0), (f.OutsideMm-f.ShaftMm)/2),
	); err != nil {
		return Blank{}, err
	}
	if f.Hand != "" && f.Hand != Right && f.Hand != Left {
		return Blank{}, &lookup.UnknownError{What: "hand", Value: string(f.Hand), Known: []string{string(Right), string(Left)}}
	}
	width := (f.OutsideMm - f.ShaftMm) / 2
	inner, outer := helix(f.ShaftMm, f.PitchMm), helix(f.OutsideMm, f.PitchMm)
	radius := width * inner / (outer - inner)
	sweep := inner / radius
	gap := 2*math.Pi - sweep
	mid := helix(f.ShaftMm+width, f.PitchMm)
	return Blank{
		InsideMm: 2 * radius, OutsideMm: 2 * (radius + width), WidthMm: width,
		GapDeg: degrees(gap), InsideGapMm: 2 * radius * math.Sin(gap/2), OutsideGapMm: 2 * (radius + width) * math.Sin(gap/2),
		InsideHelixMm: inner, OutsideHelixMm: outer,
		InsideLeadDeg:  degrees(math.Atan2(f.PitchMm, math.Pi*f.ShaftMm)),
		OutsideLeadDeg: degrees(math.Atan2(f.PitchMm, math.Pi*f.OutsideMm)),
		MidStrain:      mid/(sweep*(radius+width/2)) - 1,
		AreaMm2:        sweep / 2 * width * (2*radius + width),
	}, nil
}

// helix is the length of one turn of a helix.
func helix(diameterMm, pitchMm float64) float64 { return math.Hypot(math.Pi*diameterMm, pitchMm) }

func degrees(rad float64) float64 { return rad * 180 / math.Pi }

// Run is the flights along a length of shaft.
type Run struct {
	Turns     float64 `json:"turns"`    // pitches in the length
	Blanks    int     `json:"blanks"`   // rings to cut, the last perhaps shortened
	LastDeg   float64 `json:"last_deg"` // sector of the last ring to keep; the whole ring if no part is left over
	SeamMm    float64 `json:"seam_mm"`  // weld along the inside edge, one side
	VolumeMm3 float64 `json:"-"`        // of their metal
}

// For returns what a length of auger along the axis needs. It errs as Blank
// does, and for a length not above 0 and at most MaxMm.
func (f Flight) For(lengthMm float64) (Run, error) {
	b, err := f.Blank()
	if err != nil {
		return Run{}, err
	}
	if err := lookup.Length("length", lengthMm, 0, MaxMm); err != nil {
		return Run{}, err
	}
	turns := lengthMm / f.PitchMm
	// A rest below a thousandth of a turn is rounding, not another ring.
	blanks := max(1, int(math.Ceil(turns-1e-3)))
	ring := 360 - b.GapDeg
	return Run{
		Turns: turns, Blanks: blanks, LastDeg: ring * math.Min(1, turns-float64(blanks-1)),
		SeamMm: turns * b.InsideHelixMm, VolumeMm3: turns * b.AreaMm2 * f.ThicknessMm,
	}, nil
}
