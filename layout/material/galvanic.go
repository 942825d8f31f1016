package material

import "math"

// UnlikeV is how far apart in volts two metals may lie in the galvanic series
// and still touch where it gets wet: 0.15 V in harsh surroundings, from memory.
const UnlikeV = 0.15

// Galvanic tells which of two kinds is eaten where they touch in the wet, and by
// how many volts the middles of their spans in the galvanic series lie apart, 0
// or more. Two kinds that share a place give the first and 0.
func Galvanic(a, b Kind) (eaten Kind, apartV float64) {
	middle := func(k Kind) float64 { v := k.Data().GalvanicV; return (v.Min + v.Max) / 2 }
	if eaten = a; middle(b) < middle(a) {
		eaten = b
	}
	return eaten, math.Round(1000*math.Abs(middle(a)-middle(b))) / 1000
}

// Galls tells whether two kinds seize where they slide on one another under load:
// both stainless. Common practice, no source.
func Galls(a, b Kind) bool {
	stainless := func(k Kind) bool { return k == AusteniticStainless || k == ChromiumStainless }
	return stainless(a) && stainless(b)
}
