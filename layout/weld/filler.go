package weld

import (
	"fmt"
	"math"
)

// Process is an arc-welding process.
type Process int

// The processes, with their ISO 4063 numbers.
const (
	Stick        Process = iota // 111, covered electrode
	SelfShielded                // 114, cored wire without gas
	MIG                         // 131, solid wire, inert gas
	MAG                         // 135, solid wire, active gas
	FluxCored                   // 136, flux-cored wire with gas
	MetalCored                  // 138, metal-cored wire with gas
	TIG                         // 141
)

// laid is what the amount of filler of a process depends on.
type laid struct {
	leastShare float64 // least part of the bought filler that ends in the weld
	runMm2     float64 // cross-section one run lays by hand; common practice
}

// laidBy: efficiencies of a welding engineer's published list, the least of each
// (stick 60-65 percent with stub loss, self-shielded 75-85, gas-shielded flux-cored
// 82-88, solid wire 92-99, metal-cored 94-98, TIG 94-97). Area per run: common
// practice.
var laidBy = map[Process]laid{
	Stick:        {0.60, 18},
	SelfShielded: {0.75, 25},
	MIG:          {0.92, 25},
	MAG:          {0.92, 25},
	FluxCored:    {0.82, 30},
	MetalCored:   {0.94, 30},
	TIG:          {0.94, 10},
}

// Filler is an amount of weld metal.
type Filler struct {
	DepositedKg float64 // of weld metal
	BuyMaxKg    float64 // filler to use up at the worst efficiency: buy this
	Runs        int     // runs to fill the section by hand, about
}

// maxRuns bounds the number of runs, so that a mistyped size is refused.
const maxRuns = 1000

// FillerFor returns the filler for a weld of areaMm2 cross-section (mm2) and
// lengthMm (mm; for a circle pi times the diameter at the weld) of densityKgM3
// (kg/m3). It errs for values that are not positive and finite, an unknown
// process, or a section of over a thousand runs.
func FillerFor(areaMm2, lengthMm, densityKgM3 float64, p Process) (Filler, error) {
	by, ok := laidBy[p]
	if !ok {
		return Filler{}, fmt.Errorf("weld: unknown process %d", int(p))
	}
	kg := areaMm2 * lengthMm * densityKgM3 * 1e-9
	if !positive(areaMm2) || !positive(lengthMm) || !positive(densityKgM3) || !positive(kg) {
		return Filler{}, fmt.Errorf("weld: filler needs positive numbers, has area %v mm2, length %v mm, density %v kg/m3", areaMm2, lengthMm, densityKgM3)
	}
	runs := math.Ceil(areaMm2/by.runMm2 - 1e-9)
	if runs > maxRuns {
		return Filler{}, fmt.Errorf("weld: a section of %.0f mm2 would take over %d runs", areaMm2, maxRuns)
	}
	return Filler{kg, kg / by.leastShare, int(runs)}, nil
}

// FlareArea is the section, mm2, of the gap between the end of a wall of wideMm and the round corner
// of radiusMm that it stands over, flush with the side that the corner runs out into. By geometry:
// what a square of that width has over the round. No width beyond the radius counts; 0 for no radius.
func FlareArea(radiusMm, wideMm float64) float64 {
	if !positive(radiusMm) || !positive(wideMm) {
		return 0
	}
	w := math.Min(wideMm, radiusMm)
	u := radiusMm - w
	return radiusMm*w - (radiusMm*radiusMm*math.Acos(u/radiusMm)-u*math.Sqrt(radiusMm*radiusMm-u*u))/2
}
