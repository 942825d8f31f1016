// Package measured takes a bolted flange as it is, not as a catalogue says:
// from caliper readings over and between the holes it works out the pitch
// circle, each hole's radius and clock angle, says how sure they are and whether the readings
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
//
// Standards: IEC 60072-1 for the flanges of motors, ISO 286-2 for spigots, ISO 273
// for the holes of bolts.
package measured

import (
	"cmp"
	"fmt"
	"math"

	"centrepop/parts/seq"
)

// ScatterMm is how far off its circle a machined hole usually sits, as a
// standard deviation (common practice, no source). Where the readings fix a
// hole's radius they decide; elsewhere this does. Readings that contradict it
// and still fix every radius overrule it.
const ScatterMm = 0.1

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

// Code names what is wrong with a survey; codes do not change.
type Code string

// The codes of an InputError.
const (
	HolesCount       Code = "holes-count"    // not MinHoles to MaxHoles
	ReadingsCount    Code = "readings-count" // none, or more than MaxReadings
	FirstRange       Code = "first-range"    // the clock angle of hole 1 is beyond ±360°
	HoleRange        Code = "hole-range"     // the diameter of Hole is not a size
	HolePlusMinus    Code = "hole-plus-minus"
	SpigotRange      Code = "spigot-range"
	NoSuchHole       Code = "no-such-hole" // the reading goes to Hole, which is not there
	SameHole         Code = "same-hole"    // the reading goes from Hole to itself
	UnknownKind      Code = "unknown-kind"
	LengthRange      Code = "length-range"
	ReadingPlusMinus Code = "reading-plus-minus"
	NoSpigot         Code = "no-spigot"     // a reading to a spigot without diameter
	TooShort         Code = "too-short"     // Mm is less than the holes side by side
	FewToSpigot      Code = "few-to-spigot" // one or two readings cannot show where it sits
	Undetermined     Code = "undetermined"  // Hole has the fewest readings, too few
	NotClockwise     Code = "not-clockwise" // Hole does not come before the next one
)

// InputError is a survey that cannot be worked with: a value outside its
// range or too few readings. Reading is the index into Survey.Readings, −1
// where it does not apply; Hole the hole number, 0 where it does not.
type InputError struct {
	Code    Code
	Reading int
	Hole    int
	Mm      float64 // the value at fault
}

// Error gives code and place, for a log; package words says it to people.
func (e *InputError) Error() string {
	return fmt.Sprintf("measured: %s: reading %d, hole %d, %g", e.Code, e.Reading+1, e.Hole, e.Mm)
}

// SmallestPlusMinusMm is the finest ± that is believed; the coarsest is
// MostPlusMinus of what was measured.
const (
	SmallestPlusMinusMm = 0.0005
	MostPlusMinus       = 0.1
)

// slackMm is how far two holes may seem to overlap before a reading is refused
// (common practice, no source).
const slackMm = 0.2

func usable(mm float64) bool { return mm > 0 && mm <= largestMm } // false for NaN

// usablePM judges the ± of a measured value; 0 is the default.
func usablePM(pm, of float64) bool {
	return pm == 0 || pm >= SmallestPlusMinusMm && pm <= MostPlusMinus*of
}

func plusMinus(mm float64) float64 { return cmp.Or(mm, DefaultPlusMinusMm) }

// check refuses values outside their range and pairs that make no sense.
func (s Survey) check() error {
	switch n := len(s.Holes); {
	case n < MinHoles || n > MaxHoles:
		return &InputError{Code: HolesCount, Reading: -1, Mm: float64(n)}
	case len(s.Readings) == 0 || len(s.Readings) > MaxReadings:
		return &InputError{Code: ReadingsCount, Reading: -1, Mm: float64(len(s.Readings))}
	case !(math.Abs(s.FirstDeg) <= 360):
		return &InputError{Code: FirstRange, Reading: -1, Hole: 1, Mm: s.FirstDeg}
	case s.Spigot != (Diameter{}) && (!usable(s.Spigot.Mm) || !usablePM(s.Spigot.PlusMinusMm, s.Spigot.Mm)):
		return &InputError{Code: SpigotRange, Reading: -1, Mm: s.Spigot.Mm}
	}
	for i, d := range s.Holes {
		if !usable(d.Mm) {
			return &InputError{Code: HoleRange, Reading: -1, Hole: i + 1, Mm: d.Mm}
		}
		if !usablePM(d.PlusMinusMm, d.Mm) {
			return &InputError{Code: HolePlusMinus, Reading: -1, Hole: i + 1, Mm: d.PlusMinusMm}
		}
	}
	return s.checkReadings()
}

// checkReadings refuses readings that make no sense, one by one, and too few to the spigot.
func (s Survey) checkReadings() error {
	for k, r := range s.Readings {
		if e := s.checkReading(r); e != nil {
			e.Reading = k
			return e
		}
	}
	if n := len(seq.Keep(s.Readings, func(r Reading) bool { return r.To == Spigot })); n == 1 || n == 2 {
		return &InputError{Code: FewToSpigot, Reading: -1, Mm: float64(n)}
	}
	return nil
}

func (s Survey) checkReading(r Reading) *InputError {
	there := func(hole int) bool { return hole >= 1 && hole <= len(s.Holes) }
	switch {
	case !there(r.From):
		return &InputError{Code: NoSuchHole, Hole: r.From}
	case r.To != Spigot && !there(r.To):
		return &InputError{Code: NoSuchHole, Hole: r.To}
	case r.From == r.To:
		return &InputError{Code: SameHole, Hole: r.From}
	case r.Kind != Over && r.Kind != Between && r.Kind != Centres:
		return &InputError{Code: UnknownKind}
	case !usable(r.Mm):
		return &InputError{Code: LengthRange, Mm: r.Mm}
	case !usablePM(r.PlusMinusMm, r.Mm):
		return &InputError{Code: ReadingPlusMinus, Mm: r.PlusMinusMm}
	case r.To == Spigot && s.Spigot.Mm == 0:
		return &InputError{Code: NoSpigot}
	case r.To != Spigot && s.centres(r) <= math.Max(s.halves(r)-slackMm, 0):
		return &InputError{Code: TooShort, Mm: r.Mm}
	}
	return nil
}

// halves is the distance of two holes side by side, of a hole and the centre
// for a reading to the spigot.
func (s Survey) halves(r Reading) float64 {
	if r.To == Spigot {
		return s.Holes[r.From-1].Mm / 2
	}
	return (s.Holes[r.From-1].Mm + s.Holes[r.To-1].Mm) / 2
}

// centres is the reading taken from centre to centre, or from a hole's centre
// to the spigot's.
func (s Survey) centres(r Reading) float64 {
	c := r.Mm - edges[r.Kind]*s.halves(r)
	if r.To == Spigot {
		c += s.Spigot.Mm / 2
	}
	return c
}

// edges is how many half diameters a kind of reading adds to the distance of
// the centres.
var edges = map[Kind]float64{Over: 1, Between: -1, Centres: 0}

// Result is the flange as measured. Uncertainties (u) are standard ones.
type Result struct {
	PCDMm      float64      `json:"pcd_mm"` // of the circle that fits the holes best
	PCDUMm     float64      `json:"pcd_u_mm"`
	Holes      []HoleResult `json:"holes"`
	Residuals  []Residual   `json:"residuals"`
	Redundancy int          `json:"redundancy"` // readings beyond what the unknowns need; 0 means nothing checks them
	ChiSquare  float64      `json:"chi_square"` // sum of the squared normalised residuals
	// ScatterMm is the standard deviation with which holes were taken to sit
	// about one circle; 0 where only the readings say how far out each is.
	ScatterMm   float64 `json:"scatter_taken_mm"`
	OneCircle   bool    `json:"on_one_circle"` // as far as the readings tell
	CircleHole  int     `json:"furthest_from_circle"`
	CircleOffMm float64 `json:"furthest_from_circle_mm"` // outward positive
	Equal       bool    `json:"equally_spaced"`          // as far as the readings tell
	EqualHole   int     `json:"furthest_from_equal"`
	EqualOffMm  float64 `json:"furthest_from_equal_mm"` // clockwise positive
	SpigotMm    float64 `json:"spigot_mm,omitempty"`
	SpigotUMm   float64 `json:"spigot_u_mm,omitempty"`
	Centred     *Offset `json:"spigot_offset,omitempty"` // of the spigot from the pitch circle; nil if not measured
	Coverage    string  `json:"coverage"`
}

// Offset is where the spigot's centre lies from that of the pitch circle.
type Offset struct {
	XMm float64 `json:"x_mm"`
	YMm float64 `json:"y_mm"`
	UMm float64 `json:"u_mm"` // the larger of both axes
}

// HoleResult is one hole of the fit. The uncertainties of angle, radius and
// place are relative to the pattern as a whole.
type HoleResult struct {
	N           int     `json:"n"`
	AngleDeg    float64 `json:"angle_deg"`
	AngleUDeg   float64 `json:"angle_u_deg"`
	RadiusMm    float64 `json:"radius_mm"`
	RadiusUMm   float64 `json:"radius_u_mm"`
	XMm         float64 `json:"x_mm"`
	YMm         float64 `json:"y_mm"`
	PlaceUMm    float64 `json:"place_u_mm"` // the larger of along and across the circle
	DiameterMm  float64 `json:"diameter_mm"`
	DiaUMm      float64 `json:"diameter_u_mm"`
	OffCircleMm float64 `json:"off_circle_mm"` // outward positive
	OffEqualMm  float64 `json:"off_equal_mm"`  // along the circle from equal spacing, clockwise positive
}

// Entry says which entry of a survey a value belongs to.
type Entry struct {
	Reading int `json:"reading,omitempty"` // its number from 1, 0 for a diameter
	Hole    int `json:"hole,omitempty"`    // of a hole's diameter; 0 beside Reading 0 is the spigot's
}

// Residual is an entry beside what the fit says it should have been.
type Residual struct {
	Entry
	MeasuredMm float64 `json:"measured_mm"`
	FittedMm   float64 `json:"fitted_mm"`
	OffMm      float64 `json:"off_mm"`     // measured − fitted
	Normalised float64 `json:"normalised"` // off by its own standard deviation; 0 where nothing checks the entry
}
