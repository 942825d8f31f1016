package fits

import (
	"fmt"
	"math"
)

// The light press: how far, mm, the bore is to be under the measured outside
// diameter of its mate, at least and at most. Common practice, no source.
const (
	lightPressLeastMm = 0.01
	lightPressMostMm  = 0.03
)

// Rung is one line of a light-press ladder.
type Rung struct {
	MeasuredMm float64 // measured outside diameter of the mate, mm
	BoreMinMm  float64 // smallest bore for it, mm
	BoreMaxMm  float64 // largest bore for it, mm
}

// LightPressLadder returns the bores for a light press, 0.03 to 0.01 mm under the measured outside of a mate,
// to the nearest 0.000 001 mm, for measured diameters
// around a nominal one, from small to large: the nominal itself and every whole
// step of stepMm, above zero, from it up to spreadMm either way. Print it when the part is
// bored before its mate is at hand, as bought tube and bar, whose size does not follow any tolerance class.
//
// It errs where the smallest diameter is not above 0.03 mm. Common practice, no source.
func LightPressLadder(nominalMm, spreadMm, stepMm float64) ([]Rung, error) {
	if nominalMm-spreadMm <= lightPressMostMm {
		return nil, fmt.Errorf("fits: light press ladder: smallest diameter %v mm must be above %v mm", nominalMm-spreadMm, lightPressMostMm)
	}
	// The small addition lets 0.3 / 0.1 count as three whole steps.
	n := int(math.Floor(spreadMm/stepMm + 1e-9))
	rungs := make([]Rung, 0, 2*n+1)
	for i := -n; i <= n; i++ {
		measured := sizeMm(nominalMm, float64(float64(i)*stepMm)*1000)
		rungs = append(rungs, Rung{measured, sizeMm(measured, -lightPressMostMm*1000), sizeMm(measured, -lightPressLeastMm*1000)})
	}
	return rungs, nil
}

// OilShare is the share of its diameter that a journal has of play in its bush at the least, for oil. Common practice, no
// source.
const OilShare = 0.0005
