package threads

import (
	"fmt"
	"math"
)

// A runout is the least distance from the last full turn of an internal
// thread to the end of the cylinder of the drilled hole, for one pitch.
type runout struct {
	pitch, short, regular, long float64
}

// runouts is DIN 76-1, internal threads: regular e1, short e2, long e3. From
// memory.
var runouts = []runout{
	{0.2, 0.8, 1.3, 2},
	{0.25, 1, 1.5, 2.4},
	{0.3, 1.2, 1.8, 2.9},
	{0.35, 1.3, 2.1, 3.3},
	{0.4, 1.5, 2.3, 3.7},
	{0.45, 1.6, 2.6, 4.1},
	{0.5, 1.8, 2.8, 4.5},
	{0.6, 2.1, 3.4, 5.4},
	{0.7, 2.4, 3.8, 6.1},
	{0.75, 2.5, 4, 6.4},
	{0.8, 2.7, 4.2, 6.8},
	{1, 3.2, 5.1, 8.2},
	{1.25, 3.9, 6.2, 10},
	{1.5, 4.6, 7.3, 11.6},
	{1.75, 5.2, 8.3, 13.3},
	{2, 5.8, 9.3, 14.8},
	{2.5, 7, 11.2, 17.9},
	{3, 8.2, 13.1, 21},
	{3.5, 9.5, 15.2, 24.3},
	{4, 10.5, 16.8, 26.9},
	{4.5, 11.5, 18.4, 29.4},
	{5, 13, 20.8, 33.3},
	{5.5, 14, 22.4, 35.8},
	{6, 15, 24, 38.4},
	{8, 20, 32, 51.2}, // beyond the table: 2.5, 4 and 6.4 times the pitch, as at 6
}

// RunoutMm returns the DIN 76-1 distance in mm from the last full turn of an
// internal thread to the end of the drilled cylinder. The kind is "regular"
// (or empty), "short" (room is tight: needs a bottoming tap) or "long".
// Pitches between the table's, as inch threads have, are interpolated. It is
// an error for R, Rc and NPT threads, another kind, or a pitch out of range.
// Source: DIN 76-1, from memory.
func (t Thread) RunoutMm(kind string) (float64, error) {
	if t.Taper {
		return 0, fmt.Errorf("threads: %s is a taper thread: its depth follows the useful length of %s, not a run-out", t.Designation, t.Source)
	}
	column := func(r runout) float64 { return r.regular }
	switch kind {
	case "", "regular":
	case "short":
		column = func(r runout) float64 { return r.short }
	case "long":
		column = func(r runout) float64 { return r.long }
	default:
		return 0, fmt.Errorf("threads: run-out %q is not known: use short, regular or long", kind)
	}
	p := t.PitchMm
	for i, r := range runouts {
		if math.Abs(p-r.pitch) < 1e-9 {
			return column(r), nil
		}
		if i > 0 && p > runouts[i-1].pitch && p < r.pitch {
			low := runouts[i-1]
			share := (p - low.pitch) / (r.pitch - low.pitch)
			return math.Round(10*(column(low)+share*(column(r)-column(low)))) / 10, nil
		}
	}
	return 0, fmt.Errorf("threads: no run-out for pitch %v mm", p)
}

// BlindDrillMm returns how deep to drill a blind hole, in mm to the end of
// the full drill diameter (the drill point goes deeper), so that the thread
// is full over fullThreadMm: the full thread plus the regular run-out of
// DIN 76-1 (from memory). It is an error for R, Rc and NPT threads, and when
// fullThreadMm is not a positive finite number.
func (t Thread) BlindDrillMm(fullThreadMm float64) (drillDepthMm float64, err error) {
	if err := positive("full thread length", fullThreadMm); err != nil {
		return 0, err
	}
	runout, err := t.RunoutMm("regular")
	if err != nil {
		return 0, err
	}
	return fullThreadMm + runout, nil
}
