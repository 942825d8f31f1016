package tapers

import (
	"slices"

	"centrepop/layout/lookup"
)

// Knurl is a knurl of DIN 82.
type Knurl struct {
	Type    string  // RAA, RBL, RBR, RGE, RGV, RKE or RKV
	PitchMm float64 // 0.5, 0.6, 0.8, 1, 1.2 or 1.6
}

// knurls are the types of DIN 82 and how much smaller than its nominal diameter
// a round is turned, in pitches, for a profile angle of 90°. RKV as the
// standard's page reads (mydoc123.com p-661784), the others from memory.
var knurls = []struct {
	kind, name string
	factor     float64
	state      lookup.State
}{
	{"RAA", "straight", 0.5, lookup.FromMemory},
	{"RBL", "left-hand", 0.5, lookup.FromMemory},
	{"RBR", "right-hand", 0.5, lookup.FromMemory},
	{"RGE", "left-right, points raised", 0.67, lookup.FromMemory},
	{"RGV", "left-right, points indented", 0.33, lookup.FromMemory},
	{"RKE", "cross, points raised", 0.67, lookup.FromMemory},
	{"RKV", "cross, points indented", 0.33, lookup.Checked},
}

// knurlPitches is the series of DIN 82, as a textbook of drawing prints it.
var knurlPitches = []float64{0.5, 0.6, 0.8, 1, 1.2, 1.6}

// Knurled is what to turn before knurling.
type Knurled struct {
	Name   string  // of the type in words
	TurnMm float64 // diameter to turn: the round grows to its nominal one when knurled
	Source lookup.Source
}

// Work returns the diameter to turn for a nominal diameter over the knurl,
// above ten pitches and up to MaxMm. It errs with a *lookup.UnknownError for
// another type and a *lookup.RangeError for a pitch that is not of the series or
// another diameter. How far a real round grows depends on its metal: try it.
func (k Knurl) Work(nominalMm float64) (Knurled, error) {
	e := &lookup.UnknownError{What: "knurl", Value: k.Type}
	for _, row := range knurls {
		e.Known = append(e.Known, row.kind)
		if row.kind != k.Type {
			continue
		}
		if !slices.Contains(knurlPitches, k.PitchMm) {
			return Knurled{}, &lookup.RangeError{What: "knurl pitch", Value: k.PitchMm, Above: 0, UpTo: knurlPitches[len(knurlPitches)-1], Unit: "mm"}
		}
		if err := lookup.Length("nominal diameter", nominalMm, 10*k.PitchMm, MaxMm); err != nil {
			return Knurled{}, err
		}
		return Knurled{Name: row.name, TurnMm: nominalMm - row.factor*k.PitchMm, Source: lookup.Source{Name: "DIN 82:1973", State: row.state}}, nil
	}
	return Knurled{}, e
}
