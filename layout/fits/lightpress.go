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

// maxRungs keeps a ladder on a sheet of paper.
const maxRungs = 1000

// LightPress returns the smallest and the largest bore, mm, for a light press
// on a part whose outside diameter was measured: 0.03 to 0.01 mm under it, to
// the nearest 0.000 001 mm. It is meant for bought tube and bar, whose size
// does not follow any tolerance class.
//
// A diameter that is not finite, or not above 0.03 mm, has no such bore: both
// results are then 0. Common practice, no source.
func LightPress(measuredOutsideMm float64) (minBoreMm, maxBoreMm float64) {
	if math.IsInf(measuredOutsideMm, 0) || !(measuredOutsideMm > lightPressMostMm) {
		return 0, 0
	}
	return sizeMm(measuredOutsideMm, -lightPressMostMm*1000), sizeMm(measuredOutsideMm, -lightPressLeastMm*1000)
}

// Rung is one line of a light-press ladder.
type Rung struct {
	MeasuredMm float64 // measured outside diameter of the mate, mm
	BoreMinMm  float64 // smallest bore for it, mm
	BoreMaxMm  float64 // largest bore for it, mm
}

// LightPressLadder returns the bores of [LightPress] for measured diameters
// around a nominal one, from small to large: the nominal itself and every whole
// step of stepMm from it up to spreadMm either way. Print it when the part is
// bored before its mate is at hand.
//
// The error says which value cannot be used: all must be finite, the step above
// zero, the spread not below zero, the smallest diameter above 0.03 mm, and the
// ladder not longer than 1000 rungs. Common practice, no source.
func LightPressLadder(nominalMm, spreadMm, stepMm float64) ([]Rung, error) {
	for _, v := range [...]struct {
		name string
		mm   float64
	}{{"nominal", nominalMm}, {"spread", spreadMm}, {"step", stepMm}} {
		if math.IsNaN(v.mm) || math.IsInf(v.mm, 0) {
			return nil, fmt.Errorf("fits: light press ladder: %s %v is not a finite number", v.name, v.mm)
		}
	}
	switch {
	case stepMm < 1e-6:
		return nil, fmt.Errorf("fits: light press ladder: step %v mm must be 0.000001 mm or more", stepMm)
	case spreadMm < 0:
		return nil, fmt.Errorf("fits: light press ladder: spread %v mm is below zero", spreadMm)
	case nominalMm-spreadMm <= lightPressMostMm:
		return nil, fmt.Errorf("fits: light press ladder: smallest diameter %v mm must be above %v mm", nominalMm-spreadMm, lightPressMostMm)
	}
	// The small addition lets 0.3 / 0.1 count as three whole steps.
	each := math.Floor(spreadMm/stepMm + 1e-9)
	if 2*each+1 > maxRungs {
		return nil, fmt.Errorf("fits: light press ladder: %.0f rungs are too many, at most %d: take a larger step", 2*each+1, maxRungs)
	}
	n := int(each)
	rungs := make([]Rung, 0, 2*n+1)
	for i := -n; i <= n; i++ {
		measured := sizeMm(nominalMm, float64(float64(i)*stepMm)*1000)
		lo, hi := LightPress(measured)
		rungs = append(rungs, Rung{MeasuredMm: measured, BoreMinMm: lo, BoreMaxMm: hi})
	}
	return rungs, nil
}
