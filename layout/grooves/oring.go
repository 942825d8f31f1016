package grooves

import (
	"math"
	"sort"

	"centrepop/layout/lookup"
	"centrepop/parts/seq"
)

// ORing is an O-ring by its free inside diameter and section.
type ORing struct {
	InsideMm  float64 `json:"inside_mm"`
	SectionMm float64 `json:"section_mm"`
}

// Seat is how an O-ring is held.
type Seat string

// The seats.
const (
	Piston      Seat = "piston"       // groove on a shaft, sealing against a bore
	Rod         Seat = "rod"          // groove in a bore, sealing against a rod
	FaceInside  Seat = "face-inside"  // groove in a face, pressure from within
	FaceOutside Seat = "face-outside" // groove in a face, pressure from around, or vacuum within
)

// glandRow is one section: radial depth moving and at rest, radial width, depth
// and width in a face, and radius of the groove's corners.
type glandRow struct{ section, moving, still, width, faceDepth, faceWidth, radius float64 }

// glands is a trade table of housing dimensions by section (orings.co.uk,
// "O-ring housing"); ISO 3601-1 sections are 1.78, 2.62, 3.53, 5.33 and 6.99.
var glands = []glandRow{
	{1.5, 1.25, 1.1, 2, 1.1, 2.1, 0.3},
	{1.78, 1.45, 1.3, 2.4, 1.3, 2.6, 0.3},
	{2, 1.65, 1.5, 2.7, 1.5, 2.8, 0.3},
	{2.4, 2.05, 1.8, 3.2, 1.8, 3.3, 0.3},
	{2.5, 2.15, 1.9, 3.3, 1.9, 3.4, 0.3},
	{2.62, 2.25, 2, 3.6, 2, 3.8, 0.3},
	{3, 2.6, 2.3, 4, 2.3, 4, 0.6},
	{3.5, 3.05, 2.65, 4.6, 2.65, 4.7, 0.6},
	{3.53, 3.1, 2.7, 4.8, 2.7, 5, 0.6},
	{4, 3.5, 3.1, 5.2, 3.1, 5.3, 0.6},
	{4.5, 4, 3.5, 5.8, 3.5, 5.9, 0.6},
	{5, 4.4, 4, 6.6, 4, 6.7, 0.6},
	{5.33, 4.7, 4.3, 7.1, 4.3, 7.3, 0.6},
	{5.7, 5, 4.6, 7.2, 4.6, 7.4, 0.6},
	{6, 5.3, 4.9, 7.4, 4.9, 7.6, 0.6},
	{6.99, 6.1, 5.8, 9.5, 5.8, 9.7, 1},
	{7, 6.1, 5.8, 9.5, 5.8, 9.7, 1},
}

// glandWider and faceDeeper are the tolerances of the same table: width +0.25 on
// a round, +0.2 in a face; depth +0.1 in a face, +0.05 on a round (the last
// sealsupply.nl, scribd.com 690505894).
const (
	radialWider, faceWider   = 0.25, 0.2
	radialDeeper, faceDeeper = 0.05, 0.1
)

// A ring in a face lies against the wall that the pressure drives it to: its diameter is
// H11 outside, h11 inside; the other wall follows from the width (trade guide of housings
// in flanges, yumpu.com 23866560, figures 9 and 10).
const outerWall, innerWall = "H11", "h11"

// sameSection is how near a section must come to the table's, mm: the sections
// of ISO 3601-1 are inch sizes, 0.070, 0.103, 0.139, 0.210 and 0.275 in, rounded.
const sameSection = 0.006

// leadIns is the length of the 15° lead-in chamfer by section (scribd.com
// 515814706, "O-ring design", chamfer length).
var leadIns = []struct{ upTo, length float64 }{{1.78, 2.1}, {2.62, 3.1}, {3.53, 4}, {5.33, 6}, {7, 7.2}}

// leadInDeg is the angle of the lead-in to the axis, same source.
const leadInDeg = 15

// sectionTolerances is ISO 3601-1 by section, as a seller of O-rings prints it (rtdygert.com, tolerances for metric
// O-rings).
var sectionTolerances = []struct{ upTo, plusMinus float64 }{{2.25, 0.08}, {3.15, 0.09}, {4.5, 0.1}, {6.3, 0.13}, {8.4, 0.15}}

// Gland is the groove of an O-ring and how the ring sits in it.
type Gland struct {
	SectionTolMm float64       `json:"section_tolerance_mm"` // the section is this much more or less
	Seat         Seat          `json:"seat"`
	DepthMm      float64       `json:"depth_mm"`  // from the surface sealed against
	DeeperMm     float64       `json:"deeper_mm"` // its tolerance
	WidthMm      float64       `json:"width_mm"`
	WiderMm      float64       `json:"wider_mm"`
	RadiusMm     float64       `json:"radius_mm"`            // of the corners, at most
	FloorMm      float64       `json:"floor_mm,omitempty"`   // diameter of the groove's floor; 0 in a face
	OuterMm      float64       `json:"outer_mm,omitempty"`   // diameter of the groove's outer wall in a face; 0 on a round
	InnerMm      float64       `json:"inner_mm,omitempty"`   // and of the inner one
	WallClass    string        `json:"-"`                    // tolerance class (ISO 286-1) of the wall that holds the ring, in a face
	Squeeze      lookup.Range  `json:"squeeze"`              // share of the section pressed flat, of a thin ring in a deep groove and of a thick one in a nominal groove
	Fill         float64       `json:"fill"`                 // share of the groove that the ring takes, nominal
	Stretch      float64       `json:"stretch"`              // of the inside on a piston, of the outside elsewhere: share, negative if pressed together
	LeadInMm     float64       `json:"lead_in_mm,omitempty"` // length of the chamfer the ring is pushed over; 0 in a face
	LeadInDeg    float64       `json:"lead_in_deg,omitempty"`
	Problems     []Problem     `json:"problems,omitempty"`
	Source       lookup.Source `json:"source"` // of depth, width and lead-in
}

// Code names a problem of a gland.
type Code string

// The problems. Limits: common practice, no source.
const (
	StretchHigh Code = "stretch-high" // the ring is stretched more than it keeps
	StretchLow  Code = "stretch-low"  // the ring is loose on its floor, or buckles where it is pressed together
	FillHigh    Code = "fill-high"    // no room to swell and move
)

// Problem is one value of a gland beyond what is common.
type Problem struct {
	Code  Code    `json:"code"`
	Value float64 `json:"value"` // shares
	Least float64 `json:"least"`
	Most  float64 `json:"most"`
}

// Limits of a good seat: common practice, no source.
const (
	maxStretch, maxTogether = 0.06, 0.03
	maxFill                 = 0.85
)

// In returns the groove of an O-ring in a seat: on a piston for a bore of
// diameterMm, in a bore for a rod of diameterMm, or in a face, where the ring
// alone sets it and diameterMm is not used. Moving is for a piston or rod that
// slides. It errs with a *lookup.UnknownError for another seat, and with a
// *lookup.RangeError for a section the table lacks, a ring that is not wider
// than its section, or a diameter with no room for the groove.
func (o ORing) In(seat Seat, diameterMm float64, moving bool) (Gland, error) {
	row, err := o.row()
	if err != nil {
		return Gland{}, err
	}
	g := Gland{
		Seat: seat, DepthMm: row.still, DeeperMm: radialDeeper, WidthMm: row.width, WiderMm: radialWider, RadiusMm: row.radius,
		SectionTolMm: sectionTolerances[sort.Search(len(sectionTolerances), func(i int) bool { return row.section <= sectionTolerances[i].upTo })].plusMinus,
		LeadInMm:     leadIns[sort.Search(len(leadIns), func(i int) bool { return row.section <= leadIns[i].upTo })].length, LeadInDeg: leadInDeg,
		Source: lookup.Source{Name: "trade tables of housings by section", Of: "; limits of stretch and fill common practice, no source", State: lookup.Checked, Told: true},
	}
	if moving {
		g.DepthMm = row.moving
	}
	outside, section := o.InsideMm+2*o.SectionMm, o.SectionMm
	switch seat {
	case Piston:
		if err := lookup.Length("bore", diameterMm, 2*g.DepthMm, 1e4); err != nil {
			return Gland{}, err
		}
		g.FloorMm = diameterMm - 2*g.DepthMm
		g.Stretch = g.FloorMm/o.InsideMm - 1
		// A stretched ring grows thin: its volume stays.
		section /= math.Sqrt(math.Max(1, 1+g.Stretch))
	case Rod:
		if err := lookup.Length("rod", diameterMm, 0, 1e4); err != nil {
			return Gland{}, err
		}
		g.FloorMm = diameterMm + 2*g.DepthMm
		g.Stretch = g.FloorMm/outside - 1
	case FaceInside, FaceOutside:
		g.DepthMm, g.DeeperMm, g.WidthMm, g.WiderMm, g.LeadInMm, g.LeadInDeg = row.faceDepth, faceDeeper, row.faceWidth, faceWider, 0, 0
		g.OuterMm, g.InnerMm, g.WallClass = outside, outside-2*g.WidthMm, outerWall
		if seat == FaceOutside {
			g.OuterMm, g.InnerMm, g.WallClass = o.InsideMm+2*g.WidthMm, o.InsideMm, innerWall
		}
	default:
		return Gland{}, &lookup.UnknownError{What: "seat", Value: string(seat), Known: []string{string(Piston), string(Rod), string(FaceInside), string(FaceOutside)}}
	}
	g.squeeze(section)
	g.judge()
	return g, nil
}

// row finds the section in the table.
func (o ORing) row() (glandRow, error) {
	first, last := glands[0].section, glands[len(glands)-1].section
	for _, row := range glands {
		if math.Abs(row.section-o.SectionMm) < sameSection {
			return row, lookup.Length("inside diameter", o.InsideMm, o.SectionMm, 1e4)
		}
	}
	if err := lookup.Length("section", o.SectionMm, lookup.Under(first), last); err != nil {
		return glandRow{}, err
	}
	e := &SectionError{SectionMm: o.SectionMm}
	e.KnownMm = seq.Map(glands, func(row glandRow) float64 { return row.section })
	return glandRow{}, e
}

// squeeze fills in what the ring's section comes to in the groove.
func (g *Gland) squeeze(sectionMm float64) {
	thin, thick := sectionMm-g.SectionTolMm, sectionMm+g.SectionTolMm
	g.Squeeze = lookup.Range{Min: (thin - g.DepthMm - g.DeeperMm) / thin, Max: (thick - g.DepthMm) / thick}
	g.Fill = math.Pi / 4 * sectionMm * sectionMm / (g.DepthMm * g.WidthMm)
}

// judge lists what is beyond common practice.
func (g *Gland) judge() {
	least, most := -maxTogether, 0.0
	switch g.Seat {
	case Piston:
		least, most = 0, maxStretch
	case Rod:
		most = maxStretch
	}
	if g.Stretch > most+1e-12 {
		g.Problems = append(g.Problems, Problem{StretchHigh, g.Stretch, least, most})
	}
	if g.Stretch < least-1e-12 {
		g.Problems = append(g.Problems, Problem{StretchLow, g.Stretch, least, most})
	}
	if g.Fill > maxFill {
		g.Problems = append(g.Problems, Problem{FillHigh, g.Fill, 0, maxFill})
	}
}

// SectionError refuses a section for which the table has no groove.
type SectionError struct {
	SectionMm float64
	KnownMm   []float64
}

// Error describes the refusal without a unit, for a programmer's log.
func (e *SectionError) Error() string { return "grooves: no groove of the table is for this section" }
