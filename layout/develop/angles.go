package develop

import (
	"math"

	"centrepop/parts/geom"
)

func rad(deg float64) float64 { return deg * math.Pi / 180 }
func deg(rad float64) float64 { return rad * 180 / math.Pi }

// sinDeg and cosDeg are exact at the quadrants, so a line that must be level
// or upright is so to the last digit.
func sinDeg(a float64) float64 { sin, _ := geom.SinCosDeg(a); return sin }
func cosDeg(a float64) float64 { _, cos := geom.SinCosDeg(a); return cos }

// asin is math.Asin with its argument held within -1..1 against rounding.
func asin(v float64) float64 { return math.Asin(math.Max(-1, math.Min(1, v))) }
