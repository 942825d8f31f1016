package weld

import (
	"fmt"
	"math"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Tack is one tack weld on a circle.
type Tack struct {
	ClockDeg float64 // middle of the tack, 0 at TOP, clockwise, from 0 to below 360
}

// Tacks is a tacking plan.
type Tacks struct {
	LengthMm float64 // of each tack
	PitchMm  float64 // from middle to middle along the circle
	Tacks    []Tack  // in the order to weld them
}

// Rules for tacks. The length is the least of EN 1011-2 clause 13, as everyweld.fi
// quotes it: 50 mm, or four thicknesses of the thicker part where that is under 12 mm.
// The rest, and all for sheet, is common practice.
const (
	tackThicknesses  = 4.0
	fullTackFromMm   = 12.0
	maxTackMm        = 50.0
	minTackMm        = 8.0
	pitchThicknesses = 30.0
	minPitchMm       = 100.0
	maxPitchMm       = 300.0
	tackShare        = 1.0 / 3 // of the circle at most
	maxTacks         = 400

	// Sheet to 3 mm burns through under a long tack and buckles between far ones.
	sheetMm         = 3.0
	sheetMinTackMm  = 5.0
	sheetMaxTackMm  = 10.0
	sheetMinPitchMm = 40.0
)

// TackCircle plans the tacks for a joint round a circle of diameterMm of parts
// thinnerMm and thickerMm thick, the first tack at firstDeg (clock angle). There
// are four or a multiple of four, so that each has one opposite, at a pitch of
// about 30 thicknesses (100 to 300 mm), and the order is opposite first, then
// square to it, then always into the widest gap (common practice). The length is
// four thicknesses of the thicker part, 8 to 50 mm and 50 from 12 mm on, less if the tacks would fill
// over a third of the circle. Where the thinner part is sheet of 3 mm or less, it
// goes by that sheet: four thicknesses, 5 to 10 mm, every 30 thicknesses, at least
// 40 mm (common practice). It errs for sizes that are not positive and finite or
// fall, an angle that is not finite, or a circle of over 400 tacks.
func TackCircle(diameterMm, thinnerMm, thickerMm, firstDeg float64) (Tacks, error) {
	if !positive(diameterMm) || !positive(thinnerMm) || !positive(thickerMm) || thinnerMm > thickerMm {
		return Tacks{}, fmt.Errorf("weld: tacking needs a positive diameter and the thinner and the thicker part, has %v, %v and %v mm", diameterMm, thinnerMm, thickerMm)
	}
	if math.IsNaN(firstDeg) || math.IsInf(firstDeg, 0) {
		return Tacks{}, fmt.Errorf("weld: first tack at %v degrees is not a finite angle", firstDeg)
	}
	girth := math.Pi * diameterMm
	length, _, pitch := tackRule(thinnerMm, thickerMm)
	want := 4 * math.Ceil(girth/pitch/4-1e-9)
	if !(want <= maxTacks) {
		return Tacks{}, lookup.Refuse("weld: a circle of %v would take over %d tacks", lookup.Mm(diameterMm), maxTacks)
	}
	n := max(4, int(want))
	t := Tacks{PitchMm: girth / float64(n)}
	t.LengthMm = math.Min(length, tackShare*t.PitchMm)
	t.Tacks = append(t.Tacks, seq.Map(balanced(n), func(i int) Tack { return Tack{geom.OnClock(firstDeg + 360*float64(i)/float64(n))} })...)
	return t, nil
}

// tackRule is the length, the least length and the greatest pitch of tacks by the thicknesses.
func tackRule(thinnerMm, thickerMm float64) (lengthMm, leastMm, pitchMm float64) {
	thickMm, least, most, near := thickerMm, minTackMm, maxTackMm, minPitchMm
	if thinnerMm <= sheetMm {
		thickMm, least, most, near = thinnerMm, sheetMinTackMm, sheetMaxTackMm, sheetMinPitchMm
	}
	long := tackThicknesses * thickMm
	if thickMm >= fullTackFromMm {
		long = most
	}
	return min(max(long, least), most), least, min(max(pitchThicknesses*thickMm, near), maxPitchMm)
}

// TackRow is the number and length of the tacks of a straight seam of lengthMm, one at each end
// and the others at equal distances, by the rules of TackCircle; one in the middle where two
// would be shorter than the rules' least. It errs for sizes that are not positive and finite or
// fall, or a seam of over 400 tacks.
func TackRow(lengthMm, thinnerMm, thickerMm float64) (n int, eachMm float64, err error) {
	if !positive(lengthMm) || !positive(thinnerMm) || !positive(thickerMm) || thinnerMm > thickerMm {
		return 0, 0, fmt.Errorf("weld: tacking needs a positive length and the thinner and the thicker part, has %v, %v and %v mm", lengthMm, thinnerMm, thickerMm)
	}
	tack, least, pitch := tackRule(thinnerMm, thickerMm)
	want := 1 + math.Ceil(lengthMm/pitch-1e-9)
	if !(want <= maxTacks) {
		return 0, 0, lookup.Refuse("weld: a seam of %v would take over %d tacks", lookup.Mm(lengthMm), maxTacks)
	}
	if tackShare*lengthMm/want < least {
		want = 1
	}
	return int(want), min(tack, tackShare*lengthMm/want), nil
}

// balanced returns 0 to n-1 in an order that spreads heat round a circle: each
// next place is the one farthest from all those used, then the one farthest from
// the place just used, then the first clockwise.
func balanced(n int) []int {
	near := make([]int, n) // steps to the nearest used place
	for i := range near {
		near[i] = n
	}
	order := make([]int, 0, n)
	for last := 0; len(order) < n; {
		order = append(order, last)
		best := 0
		for i := range n {
			near[i] = min(near[i], apart(i, last, n))
			if near[i] > near[best] || near[i] == near[best] && apart(i, last, n) > apart(best, last, n) {
				best = i
			}
		}
		last = best
	}
	return order
}

// apart is the shorter way in steps between two places of n on a circle.
func apart(i, j, n int) int {
	d := i - j
	if d < 0 {
		d = -d
	}
	return min(d, n-d)
}

// Run is one stretch of weld on a circle, struck at StartDeg and broken at EndDeg.
type Run struct {
	Layer     int     // 1 is the root
	StartDeg  float64 // clock angle, from 0 to below 360
	EndDeg    float64 // clock angle, from 0 to below 360; equal to StartDeg for one whole turn
	Clockwise bool    // direction of travel
}

const (
	longestRunMm = 150.0 // welded at once, about one stick electrode: common practice
	maxSectors   = 400
	maxLayers    = 50
)

// RunOrder returns the runs of a weld round a diameter in the order to weld them, in
// 1 or more layers (see Filler.Runs); the first sector begins at a clock angle. The
// circle is cut in four sectors, or a multiple of four when a quarter is longer than
// 150 mm; opposite sectors follow each other, then those square to them, then the
// widest gap, which keeps the heat even and the part from tipping. Each layer begins
// half a sector further on than the one below, so that ends do not lie on ends, and
// goes round the other way. All of it common practice, no source. It errs for sizes
// out of range, an angle that is not finite, or a plan of over 400 sectors or 50 layers.
func RunOrder(diameterMm float64, layers int, firstDeg float64) ([]Run, error) {
	if !positive(diameterMm) {
		return nil, fmt.Errorf("weld: run order needs a positive diameter, has %v mm", diameterMm)
	}
	if layers < 1 || layers > maxLayers {
		return nil, fmt.Errorf("weld: %d layers, want 1 to %d", layers, maxLayers)
	}
	if math.IsNaN(firstDeg) || math.IsInf(firstDeg, 0) {
		return nil, fmt.Errorf("weld: first sector at %v degrees is not a finite angle", firstDeg)
	}
	want := 4 * math.Ceil(math.Pi*diameterMm/longestRunMm/4-1e-9)
	if !(want <= maxSectors) {
		return nil, lookup.Refuse("weld: runs of %v on a circle of %v make over %d sectors", lookup.Mm(longestRunMm), lookup.Mm(diameterMm), maxSectors)
	}
	n := max(4, int(want))
	step := 360 / float64(n)
	var out []Run
	for layer := 1; layer <= layers; layer++ {
		begin := firstDeg + float64(layer-1)*step/2
		clockwise := layer%2 == 1
		for _, i := range balanced(n) {
			from, to := geom.OnClock(begin+float64(i)*step), geom.OnClock(begin+float64(i+1)*step)
			if !clockwise {
				from, to = to, from
			}
			out = append(out, Run{layer, from, to, clockwise})
		}
	}
	return out, nil
}
