// Package cutting does the shop arithmetic around metal removal and stock:
// cutting speed to spindle speed, drill sizes and drilling steps, blank and
// stock sizes, mass, and the plan for sawing bars.
//
// Units: millimetres, metres per minute, revolutions per minute, kg and
// kg/m3. Functions that can meet bad input return an error and never panic;
// the few that return a bare number say what they return instead.
//
// Sources. The spindle speed is n = 1000 v/(pi d), true by definition. Cutting
// speeds come from named tables or are marked "from memory" or "common
// practice", and each figure carries that remark with it (see Speed and layout/material).
// Drill sizes follow ISO 235 and DIN 338 (metric) and ASME B94.11M (inch);
// round bar sizes follow EN 10060; all three from memory. Allowances for sawing
// and turning are common practice and say so.
package cutting

import (
	"fmt"
	"math"
)

// SpindleRPM returns the spindle speed in rev/min that gives the cutting speed
// vMPerMin (m/min) at diameter dMm (mm): n = 1000 v/(pi d). The diameter is the
// work's when turning and the tool's when drilling, reaming or tapping. It
// returns 0 unless both are positive and finite and so is the result.
func SpindleRPM(vMPerMin, dMm float64) float64 {
	if n := 1000 * vMPerMin / (math.Pi * dMm); dMm > 0 && positive(n) {
		return n
	}
	return 0
}

// farBelow is the fraction of the wanted speed under which ChooseSpeed remarks
// that the gear is slow. Common practice, no source.
const farBelow = 0.6

// ChooseSpeed picks from the machine's spindle speeds (rev/min, any order) the
// highest that is not above wantRPM. The note is empty when the choice needs no
// remark. If every speed is above the wanted one it returns the lowest with a
// warning; if the chosen one is under 60 percent of the wanted it says so.
// Speeds that are not positive and finite are passed over; if none is left, or
// wantRPM itself is not positive and finite, it returns 0 and the reason.
func ChooseSpeed(wantRPM float64, speeds []float64) (rpm float64, note string) {
	if !positive(wantRPM) {
		return 0, "no speed chosen: the wanted speed is not a positive number"
	}
	// One part in 1e9 so that a speed computed from the list finds itself.
	limit := wantRPM * (1 + 1e-9)
	best, lowest := 0.0, 0.0
	for _, s := range speeds {
		if !positive(s) {
			continue
		}
		if lowest == 0 || s < lowest {
			lowest = s
		}
		if s <= limit && s > best {
			best = s
		}
	}
	switch {
	case lowest == 0:
		return 0, "no speed chosen: the machine lists no usable spindle speed"
	case best == 0:
		return lowest, fmt.Sprintf("warning: lowest speed of the machine is above the wanted %.0f rpm; use a light cut and coolant, or a tool for higher speed", wantRPM)
	case best < farBelow*wantRPM:
		return best, fmt.Sprintf("slow: the machine has nothing nearer below the wanted %.0f rpm", wantRPM)
	}
	return best, ""
}

// Rim speeds in m/min that bound a spindle, common practice, no source: round
// work in a chuck to 21 m/s, the figure scroll chucks of grey iron are marked
// with (630 mm at about 640 rev/min, 200 mm at 2000); out of balance to 5 m/s.
const (
	rimMPerMin       = 1260.0
	rimUnevenMPerMin = 300.0
	leastChuckMm     = 160.0 // the smallest thing that turns is the chuck
)

// SpindleLimitRPM returns the most rev/min for work whose largest swung diameter
// is swungMm (mm), whatever the cut would allow; uneven is for work out of
// balance: a plate, a bore off the centre. Such work is also started at the lowest
// speed. Common practice, no source; the chuck's and the machine's own mark comes
// first. 0 if swungMm is not positive and finite.
func SpindleLimitRPM(swungMm float64, uneven bool) float64 {
	rim := rimMPerMin
	if uneven {
		rim = rimUnevenMPerMin
	}
	if !positive(swungMm) {
		return 0
	}
	return SpindleRPM(rim, math.Max(swungMm, leastChuckMm))
}

// Range is a span of cutting speeds in m/min, lowest to highest recommended.
type Range struct {
	MinMPerMin float64 // lowest, m/min
	MaxMPerMin float64 // highest, m/min
}

// MidMPerMin returns the middle of the range in m/min: where to start with a
// sound machine and a sharp tool. Start at MinMPerMin for a first cut, an
// interrupted cut, a long overhang or no coolant (common practice, no source).
func (r Range) MidMPerMin() float64 { return (r.MinMPerMin + r.MaxMPerMin) / 2 }

// scaled returns the range with its ends multiplied by lo and hi, to half a metre.
func (r Range) scaled(lo, hi float64) Range {
	return Range{math.Round(r.MinMPerMin*lo*2) / 2, math.Round(r.MaxMPerMin*hi*2) / 2}
}

// positive reports whether x is above zero and finite.
func positive(x float64) bool { return x > 0 && !math.IsInf(x, 0) }

// notNegative reports whether x is zero or above, and finite.
func notNegative(x float64) bool { return x >= 0 && !math.IsInf(x, 0) }
