package weld

import "centrepop/layout/lookup"

import "math"

// PlaceSource is where PlaceOff and LeanOff come from. The finest class is taken: other
// work is built on what is placed.
var PlaceSource = lookup.Standard("ISO 13920 class A")

// generalStep is a tolerance of sizes up to a size, both in mm; of the lean it is mm per m.
type generalStep struct{ upToMm, off float64 }

var (
	placeSteps = []generalStep{{400, 1}, {1000, 2}, {2000, 3}, {4000, 4}, {8000, 5}, {12000, 6}, {16000, 7}, {20000, 8}, {math.Inf(1), 9}}
	alikeSteps = []generalStep{{120, 0.5}, {400, 1}, {1000, 1.5}, {2000, 2}, {4000, 3}, {8000, 4}, {12000, 5}, {16000, 6}, {20000, 7}, {math.Inf(1), 8}}
	leanSteps  = []generalStep{{400, 6}, {1000, 4.5}, {math.Inf(1), 3}}
)

func generalOff(steps []generalStep, mm float64) float64 {
	i := 0
	for mm > steps[i].upToMm {
		i++
	}
	return steps[i].off
}

// PlaceOff returns how far a length of mm may be off after welding, either way, in mm:
// ISO 13920 table 1, class A (as modulusmetal.com prints it); what is under 2 mm, where the
// table begins, as 2 mm. mm is not negative.
func PlaceOff(mm float64) float64 { return generalOff(placeSteps, mm) }

// LeanOff returns how far a part whose shorter leg is mm long may lean out of its angle, in
// mm over that leg: ISO 13920 table 2, class A, calculated and rounded. mm is not negative.
func LeanOff(mm float64) float64 { return generalOff(leanSteps, mm) * mm / 1000 }

// AlikeSource is where AlikeOff comes from.
var AlikeSource = lookup.Standard("ISO 13920 class E")

// AlikeOff returns by how much the distances between two faces of mm across may differ after
// welding, in mm: parallelism of ISO 13920 table 3, class E
// (as modulusmetal.com prints it); what is under 30 mm,
// where the table begins, as 30 mm. mm is not negative.
func AlikeOff(mm float64) float64 { return generalOff(alikeSteps, mm) }
