package threads

import (
	"fmt"
	"math"

	"centrepop/layout/lookup"
)

// A runout is the least distance from the last full turn of an internal
// thread to the end of the cylinder of the drilled hole, for one pitch.
type runout struct {
	pitch, regular float64
}

// runouts is DIN 76-1, internal threads, regular e1; the last is beyond the
// table: four times the pitch, as at 6.
var runouts = []runout{
	{0.2, 1.3}, {0.25, 1.5}, {0.3, 1.8}, {0.35, 2.1}, {0.4, 2.3}, {0.45, 2.6}, {0.5, 2.8}, {0.6, 3.4}, {0.7, 3.8},
	{0.75, 4}, {0.8, 4.2}, {1, 5.1}, {1.25, 6.2}, {1.5, 7.3}, {1.75, 8.3}, {2, 9.3}, {2.5, 11.2}, {3, 13.1},
	{3.5, 15.2}, {4, 16.8}, {4.5, 18.4}, {5, 20.8}, {5.5, 22.4}, {6, 24}, {8, 32},
}

// RunoutMm returns the regular DIN 76-1 distance in mm from the last full turn of an
// internal thread to the end of the drilled cylinder. Pitches between the
// table's, as inch threads have, are interpolated. It is an error for R, Rc and NPT
// threads, and for a pitch out of range. A lead screw, for which DIN 76-1 has no rows, takes two pitches,
// or one lead where that is more: what passes while the tool is drawn back (common practice, no source).
func (t Thread) RunoutMm() (float64, error) {
	if t.Taper {
		return 0, fmt.Errorf("threads: %s is a taper thread: its depth follows the useful length of %s, not a run-out", t.Designation, t.Source)
	}
	if t.Lead != nil {
		return max(2*t.PitchMm, t.Lead.LeadMm), nil
	}
	p := t.PitchMm
	for i, r := range runouts {
		if math.Abs(p-r.pitch) < 1e-9 {
			return r.regular, nil
		}
		if i > 0 && p > runouts[i-1].pitch && p < r.pitch {
			low := runouts[i-1]
			share := (p - low.pitch) / (r.pitch - low.pitch)
			return math.Round(10*(low.regular+share*(r.regular-low.regular))) / 10, nil
		}
	}
	return 0, lookup.Refuse("threads: no run-out for pitch %v", lookup.Mm(p))
}

// BlindDrillMm returns how deep to drill a blind hole, in mm to the end of
// the full drill diameter (the drill point goes deeper), so that the thread
// is full over fullThreadMm: the full thread plus the regular run-out of
// DIN 76-1. It is an error for R, Rc and NPT threads.
func (t Thread) BlindDrillMm(fullThreadMm float64) (drillDepthMm float64, err error) {
	runout, err := t.RunoutMm()
	if err != nil {
		return 0, err
	}
	return fullThreadMm + runout, nil
}
