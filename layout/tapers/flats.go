package tapers

import (
	"math"
	"strconv"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

// headRatio is how often the crank of a common dividing head turns for one turn
// of the spindle.
const headRatio = 40

// Flats are equal flats milled on a round: one, two for a spanner, four or six.
type Flats struct {
	Sides    int
	RoundMm  float64 // diameter before milling
	AcrossMm float64 // across opposite flats; for one flat, from it to the far side of the round
}

// Milled is what the mill sets for flats.
type Milled struct {
	DepthMm    float64 // to feed from the crown of the round, for each flat
	WidthMm    float64 // of a flat, as it shows when done
	CornersMm  float64 // across opposite corners of a full polygon; 0 for one or two flats
	Full       bool    // the corners are sharp: the flats meet
	IndexDeg   float64 // turn from one flat to the next; 0 for one
	HeadTurns  int     // whole turns of a 40:1 dividing head from one flat to the next
	HeadRest   int     // and further HeadRest of HeadOf holes, reduced
	HeadOf     int     // 1 if there is no rest
	LeastRound float64 // the smallest round in mm that gives sharp corners; 0 for one or two flats
}

// Work computes the milling of the flats. It errs with a *lookup.UnknownError
// for a number of sides that is not 1 or an even number up to 12 (opposite flats
// are what a spanner and callipers take), and with a *lookup.RangeError unless
// the flats lie within the round; one flat must lie beyond its axis.
func (f Flats) Work() (Milled, error) {
	if f.Sides != 1 && (f.Sides < 2 || f.Sides > 12 || f.Sides%2 != 0) {
		return Milled{}, &lookup.UnknownError{What: "number of sides", Value: strconv.Itoa(f.Sides), Known: []string{"1", "2", "4", "6", "8", "10", "12"}}
	}
	if err := lookup.Length("round", f.RoundMm, 0, MaxMm); err != nil {
		return Milled{}, err
	}
	least := 0.0
	if f.Sides == 1 {
		least = f.RoundMm / 2
	}
	if err := lookup.Length("across flats", f.AcrossMm, least, lookup.Under(f.RoundMm)); err != nil {
		return Milled{}, err
	}
	if f.Sides == 1 {
		depth := f.RoundMm - f.AcrossMm
		return Milled{DepthMm: depth, WidthMm: chord(f.RoundMm, depth), HeadOf: 1}, nil
	}
	depth := (f.RoundMm - f.AcrossMm) / 2
	m := Milled{DepthMm: depth, WidthMm: chord(f.RoundMm, depth), IndexDeg: 360 / float64(f.Sides)}
	if f.Sides > 2 {
		m.CornersMm = f.AcrossMm / math.Cos(math.Pi/float64(f.Sides))
		m.LeastRound = m.CornersMm
		if side := f.AcrossMm * math.Tan(math.Pi/float64(f.Sides)); side <= m.WidthMm+1e-9 {
			m.WidthMm, m.Full = side, true
		}
	}
	whole, rest := headRatio/f.Sides, headRatio%f.Sides
	by := geom.Common(rest, f.Sides)
	m.HeadTurns, m.HeadRest, m.HeadOf = whole, rest/by, f.Sides/by
	return m, nil
}

// chord is the width of a flat cut depthMm deep into a round.
func chord(roundMm, depthMm float64) float64 { return 2 * math.Sqrt(depthMm*(roundMm-depthMm)) }
