package grooves

import (
	"math"
	"slices"
	"sort"

	"centrepop/layout/lookup"
)

// Form is the form of a relief undercut of DIN 509.
type Form string

// The forms: E frees the cylinder for grinding, F the cylinder and the shoulder.
const (
	FormE Form = "E"
	FormF Form = "F"
)

// Relief is a relief undercut at a shoulder.
type Relief struct {
	Designation   string        `json:"designation"`             // as drawings name it: "DIN 509-F 0.6x0.3"
	RadiusMm      float64       `json:"radius_mm"`               // r
	DepthMm       float64       `json:"depth_mm"`                // into the cylinder, radial (t1), +0.1
	WidthMm       float64       `json:"width_mm"`                // along the axis from the shoulder (f), +0.2
	FaceDepthMm   float64       `json:"face_depth_mm,omitempty"` // into the shoulder (t2), +0.05; 0 for form E
	FaceWidthMm   float64       `json:"face_width_mm,omitempty"` // up the shoulder from the floor of DepthMm (g); 0 for form E
	RunoutDeg     float64       `json:"runout_deg"`              // of the slope back to the cylinder
	FaceRunoutDeg float64       `json:"-"`                       // and of the slope back to the shoulder; 0 for form E
	ChamferMm     float64       `json:"mate_chamfer_mm"`         // the mate's chamfer must be larger than this to clear the radius (a)
	OverMm        float64       `json:"over_mm"`                 // diameters above which it is meant for
	UpToMm        float64       `json:"up_to_mm,omitempty"`      // and up to which; infinite in the last row
	Source        lookup.Source `json:"source"`
}

// reliefRow is radius, depth, width, g, t2, and the chamfer a for E and F.
type reliefRow struct {
	over, upTo                                    float64
	radius, depth, width, face, faceDepth, aE, aF float64
	state                                         lookup.State
}

// reliefs is DIN 509 for common loads, fatigued for changing loads: ltoi.kr
// ("DIN 509 undercut"). The last row's face depth is printed 0.4 there; the row's g
// closes only with 0.3 (TestReliefCloses), as a public data file prints it.
var reliefs = []reliefRow{
	{0, 1.6, 0.1, 0.1, 0.5, 0.8, 0.1, 0, 0, lookup.Checked},
	{1.6, 3, 0.2, 0.1, 1, 0.9, 0.1, 0.2, 0, lookup.Checked},
	{3, 10, 0.4, 0.2, 2, 1.1, 0.1, 0.4, 0, lookup.Checked},
	{10, 18, 0.6, 0.2, 2, 1.4, 0.1, 0.8, 0.2, lookup.Checked},
	{18, 80, 0.6, 0.3, 2.5, 2.1, 0.2, 0.6, 0, lookup.Checked},
	{80, math.Inf(1), 1, 0.4, 4, 3.2, 0.3, 1.2, 0, lookup.Checked},
}

var fatigued = []reliefRow{
	{18, 50, 1, 0.2, 2.5, 1.8, 0.1, 1.6, 0.8, lookup.Checked},
	{50, 80, 1.6, 0.3, 4, 3.1, 0.2, 2.6, 1.1, lookup.Checked},
	{80, 125, 2.5, 0.4, 5, 4.8, 0.3, 4.2, 1.9, lookup.Checked},
	{125, math.Inf(1), 4, 0.5, 7, 6.4, 0.3, 7, 4, lookup.Checked},
}

// The slopes of DIN 509 (MANUALplus and CNC PILOT user's manuals, "Undercut DIN
// 509 E, F").
const (
	reliefDeg     = 15
	reliefFaceDeg = 8
)

// ReliefFor returns the relief undercut of DIN 509 for a diameter: for common
// loads above 0, and for changing loads (a larger radius, so that the shaft does
// not tire) above 18 mm. It errs with a *lookup.UnknownError for another form
// and a *lookup.RangeError for another diameter.
func ReliefFor(diameterMm float64, form Form, changing bool) (Relief, error) {
	if form != FormE && form != FormF {
		return Relief{}, unknownForm(form)
	}
	table := reliefs
	if changing {
		table = fatigued
	}
	if err := lookup.Length("diameter", diameterMm, table[0].over, 1e4); err != nil {
		return Relief{}, err
	}
	return table[sort.Search(len(table), func(i int) bool { return diameterMm <= table[i].upTo })].relief(form), nil
}

// ReliefSized returns the relief undercut of DIN 509 that drawings name by its
// radius and depth in mm, whatever diameter it is meant for. It errs with a
// *lookup.UnknownError for another form or another pair.
func ReliefSized(radiusMm, depthMm float64, form Form) (Relief, error) {
	if form != FormE && form != FormF {
		return Relief{}, unknownForm(form)
	}
	e := &lookup.UnknownError{What: "undercut"}
	for _, row := range slices.Concat(reliefs, fatigued) {
		r := row.relief(form)
		if math.Abs(row.radius-radiusMm) < 1e-6 && math.Abs(row.depth-depthMm) < 1e-6 {
			return r, nil
		}
		e.Known = append(e.Known, r.Designation)
	}
	e.Value = designation(form, radiusMm, depthMm)
	return Relief{}, e
}

func unknownForm(form Form) error {
	return &lookup.UnknownError{What: "form", Value: string(form), Known: []string{string(FormE), string(FormF)}}
}

func designation(form Form, radiusMm, depthMm float64) string {
	return "DIN 509-" + string(form) + " " + number(radiusMm) + "x" + number(depthMm)
}

func (row reliefRow) relief(form Form) Relief {
	r := Relief{
		Designation: designation(form, row.radius, row.depth),
		OverMm:      row.over, UpToMm: row.upTo, RadiusMm: row.radius, DepthMm: row.depth, WidthMm: row.width, RunoutDeg: reliefDeg, ChamferMm: row.aE,
		Source: lookup.Source{Name: "DIN 509", State: row.state},
	}
	if form == FormF {
		r.FaceWidthMm, r.FaceDepthMm, r.FaceRunoutDeg, r.ChamferMm = row.face, row.faceDepth, reliefFaceDeg, row.aF
	}
	return r
}
