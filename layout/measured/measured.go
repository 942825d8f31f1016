// Package measured takes a bolted flange as it is, not as a catalogue says:
// from caliper readings over and between the holes it works out the pitch
// circle and the clock angles, says how sure they are and whether the readings
// agree with each other, names the nearest standard motor flange, and tells
// whether a drawn part with clearance holes will go onto it.
//
// Standards: IEC 60072-1 for the flange sizes; JCGM 100:2008 (GUM) for the
// uncertainties: a caliper's ± is taken as a uniform spread (4.3.7) and
// expanded results use the coverage factor 2 (6.2, 6.3).
//
// Lengths are millimetres. Clock angles are degrees from TOP, clockwise
// looking at the flange; x is to the right and y up, with the origin at the
// centre of the pitch circle. Holes are numbered from 1, clockwise.
package measured

import (
	"fmt"
	"math"
)

// DefaultPlusMinusMm is what a reading with an ordinary caliper is good for,
// as ± (common practice, no source).
const DefaultPlusMinusMm = 0.05

// Limits of what can be entered.
const (
	MinHoles    = 3
	MaxHoles    = 36
	MaxReadings = 400
	largestMm   = 10_000.0
)

// CoverageFactor turns a standard uncertainty into an expanded one.
const CoverageFactor = 2.0

// Coverage is the statement that belongs beside every expanded uncertainty.
const Coverage = "expanded uncertainty, coverage factor 2, about 95 %"

// Kind says how the jaws stood.
type Kind string

// The kinds of reading.
const (
	Over    Kind = "over"    // across the far edges of two holes
	Between Kind = "between" // across the near edges of two holes
	Centres Kind = "centres" // centre to centre, such as over fitted pins, already reduced
)

// Spigot stands in Reading.To for the outside of the spigot: Between is then
// from the hole's near edge to it, Over from the hole's far edge.
const Spigot = 0

// Reading is one distance taken with a caliper.
type Reading struct {
	From, To    int // hole numbers from 1; To may be Spigot
	Kind        Kind
	Mm          float64
	PlusMinusMm float64 // DefaultPlusMinusMm if 0
}

// Name is how a reading is called in messages: "1–3 over".
func (r Reading) Name() string {
	if r.To == Spigot {
		return fmt.Sprintf("%d–spigot %s", r.From, r.Kind)
	}
	return fmt.Sprintf("%d–%d %s", r.From, r.To, r.Kind)
}

// Diameter is a measured diameter.
type Diameter struct {
	Mm          float64
	PlusMinusMm float64 // DefaultPlusMinusMm if 0
}

// Survey is everything that was measured on one flange.
type Survey struct {
	Holes    []Diameter // 3 to 36 holes, in clockwise order
	Spigot   Diameter   // zero if it was not measured
	Readings []Reading
	FirstDeg float64 // clock angle given to hole 1
}

// InputError is a survey that cannot be worked with: a value outside its
// range or too few readings. Reading is the index into Survey.Readings, Hole
// the hole number; −1 and 0 where they do not apply.
type InputError struct {
	Reading int
	Hole    int
	What    string
	Right   string
}

func (e *InputError) Error() string { return "measured: " + e.What }

func refuse(reading, hole int, right, format string, args ...any) error {
	return &InputError{Reading: reading, Hole: hole, What: fmt.Sprintf(format, args...), Right: right}
}

func usable(mm float64) bool { return mm > 0 && mm <= largestMm } // false for NaN

func plusMinus(mm float64) float64 {
	if mm == 0 {
		return DefaultPlusMinusMm
	}
	return mm
}

// check refuses values outside their range and pairs that make no sense.
func (s Survey) check() error {
	n := len(s.Holes)
	if n < MinHoles || n > MaxHoles {
		return refuse(-1, 0, fmt.Sprintf("%d to %d holes", MinHoles, MaxHoles), "a pitch circle cannot be found from %d holes", n)
	}
	if len(s.Readings) > MaxReadings {
		return refuse(-1, 0, fmt.Sprintf("at most %d readings", MaxReadings), "%d readings are too many", len(s.Readings))
	}
	if !(math.Abs(s.FirstDeg) <= 360) {
		return refuse(-1, 1, "−360 to 360 degrees", "the clock angle of hole 1 is %v", s.FirstDeg)
	}
	goodPM := func(pm, of float64) bool { return pm == 0 || pm >= 0.0005 && pm <= 0.1*of }
	for i, d := range s.Holes {
		if !usable(d.Mm) {
			return refuse(-1, i+1, "a diameter above 0", "the diameter of hole %d is %v", i+1, d.Mm)
		}
		if !goodPM(d.PlusMinusMm, d.Mm) {
			return refuse(-1, i+1, "0.0005 mm to a tenth of the diameter", "hole %d has ±%v mm", i+1, d.PlusMinusMm)
		}
	}
	if s.Spigot != (Diameter{}) && (!usable(s.Spigot.Mm) || !goodPM(s.Spigot.PlusMinusMm, s.Spigot.Mm)) {
		return refuse(-1, 0, "a diameter above 0 with a small ±", "the spigot is %v ±%v mm", s.Spigot.Mm, s.Spigot.PlusMinusMm)
	}
	atSpigot := 0
	for k, r := range s.Readings {
		switch {
		case r.From < 1 || r.From > n:
			return refuse(k, r.From, fmt.Sprintf("1 to %d", n), "reading %d is from hole %d, and there are %d holes", k+1, r.From, n)
		case r.To != Spigot && (r.To < 1 || r.To > n):
			return refuse(k, r.To, fmt.Sprintf("1 to %d", n), "reading %d is to hole %d, and there are %d holes", k+1, r.To, n)
		case r.From == r.To:
			return refuse(k, r.From, "two different holes", "reading %d goes from hole %d to itself", k+1, r.From)
		case r.Kind != Over && r.Kind != Between && r.Kind != Centres:
			return refuse(k, 0, "over, between or centres", "reading %d is %q", k+1, r.Kind)
		case !usable(r.Mm):
			return refuse(k, 0, "a length above 0", "reading %s is %v", r.Name(), r.Mm)
		case !goodPM(r.PlusMinusMm, r.Mm):
			return refuse(k, 0, "0.0005 mm to a tenth of the reading", "reading %s has ±%v mm", r.Name(), r.PlusMinusMm)
		case r.To == Spigot && s.Spigot.Mm == 0:
			return refuse(k, 0, "measure the spigot's diameter too", "reading %s needs the spigot", r.Name())
		}
		if r.To == Spigot {
			atSpigot++
			continue
		}
		half := (s.Holes[r.From-1].Mm + s.Holes[r.To-1].Mm) / 2
		if r.Kind == Over && r.Mm <= 2*half-0.2 {
			return refuse(k, 0, "the distance across the far edges", "reading %s is %v mm, less than the two holes side by side", r.Name(), r.Mm)
		}
		if r.Kind == Centres && r.Mm <= half-0.2 {
			return refuse(k, 0, "the distance between the centres", "reading %s is %v mm; the holes would overlap", r.Name(), r.Mm)
		}
	}
	if atSpigot > 0 && atSpigot < 3 {
		return refuse(-1, 0, "readings to the spigot from three holes or more, or none", "%d readings to the spigot cannot show where it sits", atSpigot)
	}
	return nil
}

// Result is the flange as measured.
type Result struct {
	PCDMm      float64      `json:"pcd_mm"`
	PCDUMm     float64      `json:"pcd_u_mm"` // standard uncertainty
	Holes      []HoleResult `json:"holes"`
	Residuals  []Residual   `json:"residuals"`
	Redundancy int          `json:"redundancy"` // readings beyond what the unknowns need; 0 means nothing checks them
	ChiSquare  float64      `json:"chi_square"` // sum of the squared normalised residuals
	Equal      bool         `json:"equally_spaced"`
	EqualHole  int          `json:"furthest_from_equal"` // the hole furthest from equal spacing
	EqualOffMm float64      `json:"furthest_from_equal_mm"`
	SpigotMm   float64      `json:"spigot_mm,omitempty"`
	SpigotUMm  float64      `json:"spigot_u_mm,omitempty"`
	Centred    *Offset      `json:"spigot_offset,omitempty"` // of the spigot from the pitch circle; nil if not measured
	Coverage   string       `json:"coverage"`
}

// Offset is where the spigot's centre lies from that of the pitch circle.
type Offset struct {
	XMm float64 `json:"x_mm"`
	YMm float64 `json:"y_mm"`
	UMm float64 `json:"u_mm"` // standard uncertainty, the larger of both axes
}

// HoleResult is one hole of the fit. Uncertainties are standard ones; those of
// angle and place are relative to the pattern as a whole.
type HoleResult struct {
	N          int     `json:"n"`
	AngleDeg   float64 `json:"angle_deg"`
	AngleUDeg  float64 `json:"angle_u_deg"`
	XMm        float64 `json:"x_mm"`
	YMm        float64 `json:"y_mm"`
	PlaceUMm   float64 `json:"place_u_mm"`
	DiameterMm float64 `json:"diameter_mm"`
	DiaUMm     float64 `json:"diameter_u_mm"`
	OffEqualMm float64 `json:"off_equal_mm"` // along the circle from equal spacing, clockwise positive
}

// Residual is a reading beside what the fit says it should have been.
type Residual struct {
	Reading    string  `json:"reading"`
	MeasuredMm float64 `json:"measured_mm"`
	FittedMm   float64 `json:"fitted_mm"`
	OffMm      float64 `json:"off_mm"`     // measured − fitted
	Normalised float64 `json:"normalised"` // off by its own standard deviation; 0 where nothing checks the reading
}
