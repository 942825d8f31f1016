package grooves

import (
	"math"
	"sort"

	"centrepop/layout/fits"
	"centrepop/layout/lookup"
)

// ThreadEnd is what a metric thread needs at its end: the length in which it
// runs out, the room to a shoulder, and the undercut that replaces both.
type ThreadEnd struct {
	PitchMm    float64       `json:"-"`                     // of the row used: the thread's own, or the next larger one
	FloorMm    float64       `json:"floor_mm"`              // diameter of the undercut (dg)
	Floor      fits.Limits   `json:"floor"`                 // its limits, of h13 outside and H13 inside (ISO 286-1)
	LeastMm    float64       `json:"straight_mm"`           // straight part of the undercut, at least (g1)
	MostMm     float64       `json:"whole_mm"`              // the whole undercut, at most (g2)
	RadiusMm   float64       `json:"radius_mm"`             // of its corners
	AngleDeg   float64       `json:"angle_deg"`             // of its flank on the thread's side
	RunoutMm   float64       `json:"runout_mm,omitempty"`   // unfinished turns outside (x); for a blind hole see threads.Thread.RunoutMm. 0 inside
	ShoulderMm float64       `json:"shoulder_mm,omitempty"` // last full turn to a shoulder without undercut (a). 0 inside
	Source     lookup.Source `json:"source"`                // of diameter and radius, and of the whole length of the regular form
	RestSource lookup.Source `json:"rest_source"`           // of the other values
}

// endRow is one pitch of DIN 76-1: smaller is how much below (outside) the
// diameter the undercut is turned, larger how much above (inside); most and
// mostInside are the regular forms A and C, the rest is short forms B and D.
type endRow struct {
	pitch, runout, runoutShort, smaller, least, most, leastShort, mostShort, radius float64
	larger, mostInside, leastInsideShort, mostInsideShort                           float64
}

// ends is DIN 76-1. Diameter, radius and the whole length of forms A and C as
// the MANUALplus 620 user's manual 12/2017, "DIN 76 – undercut parameters",
// prints them; the rest from memory.
var ends = []endRow{
	{0.5, 1.25, 0.7, 0.8, 1.1, 1.75, 0.5, 1.25, 0.2, 0.3, 2.7, 1.25, 2},
	{0.6, 1.5, 0.75, 1, 1.2, 2.1, 0.6, 1.5, 0.4, 0.3, 3.3, 1.5, 2.4},
	{0.7, 1.75, 0.9, 1.1, 1.5, 2.45, 0.8, 1.75, 0.4, 0.3, 3.8, 1.75, 2.75},
	{0.75, 1.9, 1, 1.2, 1.6, 2.6, 0.9, 1.9, 0.4, 0.3, 4, 1.9, 2.9},
	{0.8, 2, 1, 1.3, 1.7, 2.8, 0.9, 2, 0.4, 0.3, 4.2, 2, 3},
	{1, 2.5, 1.25, 1.6, 2.1, 3.5, 1.1, 2.5, 0.6, 0.5, 5.2, 2.5, 3.7},
	{1.25, 3.2, 1.6, 2, 2.7, 4.4, 1.5, 3.2, 0.6, 0.5, 6.7, 3.2, 4.9},
	{1.5, 3.8, 1.9, 2.3, 3.2, 5.2, 1.8, 3.8, 0.8, 0.5, 7.8, 3.8, 5.6},
	{1.75, 4.3, 2.2, 2.6, 3.9, 6.1, 2.1, 4.3, 1, 0.5, 9.1, 4.3, 6.4},
	{2, 5, 2.5, 3, 4.5, 7, 2.5, 5, 1, 0.5, 10.3, 5, 7.3},
	{2.5, 6.3, 3.2, 3.6, 5.6, 8.7, 3.2, 6.3, 1.2, 0.5, 13, 6.3, 9.3},
	{3, 7.5, 3.8, 4.4, 6.7, 10.5, 3.7, 7.5, 1.6, 0.5, 15.2, 7.5, 10.7},
	{3.5, 9, 4.5, 5, 7.7, 12, 4.7, 9, 1.6, 0.5, 17.7, 9, 12.7},
	{4, 10, 5, 5.7, 9, 14, 5, 10, 2, 0.5, 20, 10, 14},
	{4.5, 11, 5.5, 6.4, 10.5, 16, 5.5, 11, 2, 0.5, 23, 11, 16},
	{5, 12.5, 6.3, 7, 11.5, 17.5, 6.5, 12.5, 2.5, 0.5, 26, 12.5, 18.5},
	{5.5, 14, 7, 7.7, 12.5, 19, 7.5, 14, 3.2, 0.5, 28, 14, 20},
	{6, 15, 7.5, 8.3, 14, 21, 8, 15, 3.2, 0.5, 30, 15, 21},
}

// undercutDeg is the flank of an undercut on the thread's side (same manual).
const undercutDeg = 30

// ThreadEndFor returns the end of a thread of pitchMm from 0.5 to 6 mm on a
// major diameter majorMm, outside or inside, regular or short. A pitch between
// the table's, as inch threads have, takes the next larger row (common practice,
// no source). It errs with a *lookup.RangeError for another pitch or a diameter
// that leaves nothing within the undercut.
func ThreadEndFor(majorMm, pitchMm float64, inside, short bool) (ThreadEnd, error) {
	last := ends[len(ends)-1].pitch
	if err := lookup.Length("pitch", pitchMm, lookup.Under(ends[0].pitch), last); err != nil {
		return ThreadEnd{}, err
	}
	r := ends[sort.Search(len(ends), func(i int) bool { return ends[i].pitch >= pitchMm-1e-6 })]
	if err := lookup.Length("major diameter", majorMm, r.smaller, 1e4); err != nil {
		return ThreadEnd{}, err
	}
	name := "DIN 76-1"
	e := ThreadEnd{
		PitchMm: r.pitch, RadiusMm: r.radius, AngleDeg: undercutDeg, Source: lookup.Source{Name: name, State: lookup.Checked},
		RestSource: lookup.Source{Name: name, State: lookup.FromMemory},
	}
	if math.Abs(r.pitch-pitchMm) > 1e-6 {
		e.Source = lookup.Source{Name: name + ", next larger pitch", State: lookup.Practice}
	}
	class := "H13"
	switch e.FloorMm = majorMm + r.larger; {
	case inside && short:
		e.LeastMm, e.MostMm = r.leastInsideShort, r.mostInsideShort
	case inside:
		e.LeastMm, e.MostMm = 4*r.pitch, r.mostInside
	case short:
		e.LeastMm, e.MostMm, e.RunoutMm, e.ShoulderMm = r.leastShort, r.mostShort, r.runoutShort, 2*r.pitch
	default:
		e.LeastMm, e.MostMm, e.RunoutMm, e.ShoulderMm = r.least, r.most, r.runout, 3*r.pitch
	}
	if !inside {
		e.FloorMm, class = majorMm-r.smaller, "h13"
	}
	var err error
	e.Floor, err = fits.Limit(e.FloorMm, class)
	return e, err
}
