package grooves

import (
	"math"
	"sort"
	"strconv"

	"centrepop/layout/lookup"
)

// CentreForm is the form of a centre hole.
type CentreForm string

// The forms of ISO 6411.
const (
	CentreA CentreForm = "A" // plain 60° cone
	CentreB CentreForm = "B" // with a protecting chamfer of 120°
	CentreR CentreForm = "R" // curved flank
)

// Centre is a centre hole.
type Centre struct {
	Designation string        `json:"designation"`             // as drawings name it: "ISO 6411-B 2.5/8"
	PilotMm     float64       `json:"pilot_mm"`                // diameter of the pilot hole (d), which names the drill
	MouthMm     float64       `json:"mouth_mm"`                // diameter at the face (D)
	ConeMm      float64       `json:"cone_mm"`                 // diameter of the 60° cone where it ends; the mouth but in form B
	PilotDepth  float64       `json:"pilot_depth_mm"`          // of the pilot below the cone, reference (t), mm
	ConeDepthMm float64       `json:"cone_depth_mm,omitempty"` // of the cone and the chamfer; 0 in form R
	Source      lookup.Source `json:"source"`
}

// centres is ISO 6411 (ISO 866, 2540, 2541): pilot, cone of forms A and R, mouth
// of form B, reference depth of the pilot; as a public data file prints DIN 332-1.
var centres = []struct{ pilot, cone, mouthB, depth float64 }{
	{1, 2.12, 3.15, 0.9}, {1.25, 2.65, 4, 1.1}, {1.6, 3.35, 5, 1.4}, {2, 4.25, 6.3, 1.8}, {2.5, 5.3, 8, 2.2}, {3.15, 6.7, 10, 2.8},
	{4, 8.5, 12.5, 3.5}, {5, 10.6, 16, 4.4}, {6.3, 13.2, 18, 5.5}, {8, 17, 22.4, 7}, {10, 21.2, 28, 8.7},
}

// pilotFor is the pilot by the diameter of the turned part: "Techniques for
// machining of material", trainees' handbook, table 1 (nzdl.org), whose 3 is
// 3.15 today; above 100 mm common practice, no source.
var pilotFor = []struct {
	upTo, pilot float64
	state       lookup.State
}{{10, 1, lookup.Checked}, {25, 2, lookup.Checked}, {63, 3.15, lookup.Checked}, {100, 5, lookup.Checked}, {math.Inf(1), 6.3, lookup.Practice}}

// LeastCentredMm is the diameter in mm over which an end has a centre hole there.
const LeastCentredMm = 6.0

// PilotFor returns the pilot in mm of a centre hole for a part diameter above 6
// mm, and where the choice comes from, else a *lookup.RangeError.
func PilotFor(partMm float64) (float64, lookup.Source, error) {
	if err := lookup.Length("part diameter", partMm, LeastCentredMm, 1e4); err != nil {
		return 0, lookup.Source{}, err
	}
	row := pilotFor[sort.Search(len(pilotFor), func(i int) bool { return partMm <= pilotFor[i].upTo })]
	return row.pilot, lookup.Source{Name: "choice by part diameter, trainees' handbook", State: row.state}, nil
}

// number writes a size without trailing zeros.
func number(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// CentreFor returns the centre hole with a pilot of the series 1, 1.25, 1.6, 2,
// 2.5, 3.15, 4, 5, 6.3, 8, 10 mm. It errs with a *lookup.UnknownError for another
// form or pilot.
func CentreFor(pilotMm float64, form CentreForm) (Centre, error) {
	if form != CentreA && form != CentreB && form != CentreR {
		return Centre{}, &lookup.UnknownError{What: "form", Value: string(form), Known: []string{string(CentreA), string(CentreB), string(CentreR)}}
	}
	unknown := &lookup.UnknownError{What: "pilot", Value: number(pilotMm)}
	for _, row := range centres {
		unknown.Known = append(unknown.Known, number(row.pilot))
		if math.Abs(row.pilot-pilotMm) > 1e-6 {
			continue
		}
		c := Centre{PilotMm: row.pilot, MouthMm: row.cone, ConeMm: row.cone, PilotDepth: row.depth, Source: lookup.Source{Name: "ISO 6411", State: lookup.Checked}}
		if form == CentreB {
			c.MouthMm = row.mouthB
		}
		if form != CentreR {
			c.ConeDepthMm = (c.ConeMm-c.PilotMm)/2/math.Tan(math.Pi/6) + (c.MouthMm-c.ConeMm)/2/math.Tan(math.Pi/3)
		}
		c.Designation = "ISO 6411-" + string(form) + " " + number(c.PilotMm) + "/" + number(c.MouthMm)
		return c, nil
	}
	return Centre{}, unknown
}
