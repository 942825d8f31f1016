// Package keys gives the keyway of a shaft and its hub: which key goes with a
// diameter, how deep each side is cut and what is measured, which width class
// makes it loose or tight, and which lengths are sold.
//
// In goes a shaft diameter, out comes a [Parallel] or a list of [Woodruff].
// All lengths are millimetres, also of inch keys.
//
// A depth is measured twice: from the crown of the round, as the cutter is fed,
// and from the far side of the round, as callipers read it. Both are given.
//
// Standards:
//
//   - DIN 6885-1:1968 (ISO 773 for the section): parallel keys, high form, by
//     shaft diameter, with depths and lengths.
//   - ISO 286-1 through package fits: limits of the keyway width.
//   - ASME B17.1-1967: inch parallel keys; depths by its chord formula.
//   - DIN 6888:1956 (ISO 3912): Woodruff keys, hub depth of series A.
//   - ASME B17.2-1967: inch Woodruff keys, as Shigley, Mechanical Engineering
//     Design, Tables 7-7 and 7-8, prints them.
//
// Every result says in its Source whether its row was read in a publication or
// is only remembered. A key's strength is not computed here.
package keys

import (
	"math"

	"centrepop/layout/fits"
	"centrepop/layout/lookup"
	"centrepop/parts/seq"
)

// Parallel is a parallel key with the two keyways it lies in.
type Parallel struct {
	WidthMm         float64       `json:"width_mm"`
	HeightMm        float64       `json:"height_mm"`
	ShaftDepthMm    float64       `json:"shaft_depth_mm"`  // from the crown of the shaft to the floor of its keyway
	HubDepthMm      float64       `json:"hub_depth_mm"`    // from the crown of the bore to the floor of its keyway
	OverMm          [2]float64    `json:"over_mm"`         // shaft diameters this key is for: above the first, up to the second
	ShaftAcrossMm   float64       `json:"shaft_across_mm"` // floor of the shaft keyway to the far side of the shaft
	HubAcrossMm     float64       `json:"hub_across_mm"`   // floor of the hub keyway to the far side of the bore
	ShaftDeeperMm   float64       `json:"shaft_deeper_mm"` // tolerance: the shaft keyway may be this much deeper
	HubDeeperMm     float64       `json:"hub_deeper_mm"`   // tolerance: the hub keyway may be this much deeper
	LeastLengthMm   float64       `json:"-"`               // shortest key sold, 0 if not tabled
	MostLengthMm    float64       `json:"-"`               // longest key sold, 0 if not tabled
	Material        string        `json:"material"`        // of the key
	Standard        string        `json:"standard"`
	Source          lookup.Source `json:"source"`           // of width, height and depths
	ToleranceSource lookup.Source `json:"tolerance_source"` // of depth tolerances and length range
}

// row is one line of DIN 6885-1, high form.
type row struct {
	upTo, width, height, shaft, hub, least, most float64
	state                                        lookup.State
}

// overMm is where the table of DIN 6885-1 begins.
const overMm = 6

// din6885 is DIN 6885-1:1968, high form, as engineersedge.com prints it
// ("Parallel Key and Taper Keys Dimensions"); above 260 mm as the keyway chart of
// Martin and of Maryland Metrics prints it, which agrees with every row below too,
// the lengths of those from memory.
var din6885 = []row{
	{8, 2, 2, 1.2, 1, 6, 20, lookup.Checked},
	{10, 3, 3, 1.8, 1.4, 6, 36, lookup.Checked},
	{12, 4, 4, 2.5, 1.8, 8, 45, lookup.Checked},
	{17, 5, 5, 3, 2.3, 10, 56, lookup.Checked},
	{22, 6, 6, 3.5, 2.8, 14, 70, lookup.Checked},
	{30, 8, 7, 4, 3.3, 18, 90, lookup.Checked},
	{38, 10, 8, 5, 3.3, 22, 110, lookup.Checked},
	{44, 12, 8, 5, 3.3, 28, 140, lookup.Checked},
	{50, 14, 9, 5.5, 3.8, 36, 160, lookup.Checked},
	{58, 16, 10, 6, 4.3, 45, 180, lookup.Checked},
	{65, 18, 11, 7, 4.4, 50, 200, lookup.Checked},
	{75, 20, 12, 7.5, 4.9, 56, 220, lookup.Checked},
	{85, 22, 14, 9, 5.4, 63, 250, lookup.Checked},
	{95, 25, 14, 9, 5.4, 70, 280, lookup.Checked},
	{110, 28, 16, 10, 6.4, 80, 320, lookup.Checked},
	{130, 32, 18, 11, 7.4, 90, 360, lookup.Checked},
	{150, 36, 20, 12, 8.4, 100, 400, lookup.Checked},
	{170, 40, 22, 13, 9.4, 110, 400, lookup.Checked},
	{200, 45, 25, 15, 10.4, 125, 400, lookup.Checked},
	{230, 50, 28, 17, 11.4, 140, 400, lookup.Checked},
	{260, 56, 32, 20, 12.4, 160, 400, lookup.Checked},
	{290, 63, 32, 20, 12.4, 180, 400, lookup.Checked},
	{330, 70, 36, 22, 14.4, 200, 400, lookup.Checked},
	{380, 80, 40, 25, 15.4, 220, 400, lookup.Checked},
	{440, 90, 45, 28, 17.4, 250, 400, lookup.Checked},
	{500, 100, 50, 31, 19.5, 280, 400, lookup.Checked},
}

// deeperMm is how much deeper DIN 6885-1 lets a keyway be by its width, to 14 mm as
// berger-tools.co.uk prints it ("DIN 6885 Keyway, Key Details"), the rest from memory.
func deeperMm(widthMm float64) float64 {
	switch {
	case widthMm <= 6:
		return 0.1
	case widthMm <= 32:
		return 0.2
	}
	return 0.3
}

// lengthsMm is the series of key lengths of DIN 6885-1; the ends
// of each width's range are in its table.
var lengthsMm = []float64{
	6, 8, 10, 12, 14, 16, 18, 20, 22, 25, 28, 32, 36, 40, 45, 50, 56, 63, 70, 80, 90, 100,
	110, 125, 140, 160, 180, 200, 220, 250, 280, 320, 360, 400,
}

// For returns the parallel key of DIN 6885-1, high form, for a shaft diameter
// above 6 and up to 500 mm, else a *lookup.RangeError.
func For(shaftMm float64) (Parallel, error) {
	if err := lookup.Length("shaft diameter", shaftMm, overMm, din6885[len(din6885)-1].upTo); err != nil {
		return Parallel{}, err
	}
	over, i := float64(overMm), 0
	for ; shaftMm > din6885[i].upTo; i++ {
		over = din6885[i].upTo
	}
	r := din6885[i]
	return Parallel{
		OverMm: [2]float64{over, r.upTo}, WidthMm: r.width, HeightMm: r.height,
		ShaftDepthMm: r.shaft, HubDepthMm: r.hub, ShaftAcrossMm: shaftMm - r.shaft, HubAcrossMm: shaftMm + r.hub,
		ShaftDeeperMm: deeperMm(r.width), HubDeeperMm: deeperMm(r.width),
		LeastLengthMm: r.least, MostLengthMm: r.most, Material: "C45+C", Standard: "DIN 6885-1",
		Source:          lookup.Source{Name: "DIN 6885-1:1968, high form", State: r.state},
		ToleranceSource: lookup.Source{Name: "DIN 6885-1:1968", State: lookup.FromMemory},
	}, nil
}

// LengthsMm returns the lengths in mm in which this key is sold, shortest
// first; none for a key whose range is not tabled (inch keys are cut to length
// from bar).
func (p Parallel) LengthsMm() []float64 {
	return seq.Keep(lengthsMm, func(l float64) bool { return l >= p.LeastLengthMm && l <= p.MostLengthMm })
}

// LongerMm returns how much longer than its key, in mm, a keyway may be that has it between its ends; it is
// no shorter. DIN 6885-1:1968, lengths, from memory.
func LongerMm(lengthMm float64) float64 {
	switch {
	case lengthMm <= 28:
		return 0.2
	case lengthMm <= 80:
		return 0.3
	}
	return 0.5
}

// SledRunoutMm returns how far beyond the full depth a side-and-face cutter of
// cutterMm diameter runs out in mm, on each end of a keyway depthMm deep: the
// half chord of the cutter at the crown. It errs unless the depth is below the
// cutter's radius. Geometry.
func SledRunoutMm(cutterMm, depthMm float64) (float64, error) {
	if err := lookup.Length("cutter diameter", cutterMm, 0, math.Inf(1)); err != nil {
		return 0, err
	}
	if err := lookup.Length("keyway depth", depthMm, 0, cutterMm/2); err != nil {
		return 0, err
	}
	return math.Sqrt(depthMm * (cutterMm - depthMm)), nil
}

// Fit is how a parallel key sits in its two keyways.
type Fit string

// The fits of DIN 6885-1 and ISO 773.
const (
	Tight  Fit = "tight"  // shaft and hub P9: the key is driven in both
	Normal Fit = "normal" // shaft N9, hub JS9: the usual fit
	Free   Fit = "free"   // shaft H9, hub D10: the hub slides along
)

// Fits is the fits in the order to offer them.
var Fits = []Fit{Tight, Normal, Free}

// Widths are the limits of both keyways and of the key for one fit.
type Widths struct {
	Shaft, Hub, Key fits.Limits
}

// metric tells whether the keyways of a key have widths of ISO 286-1. That Woodruff keys
// have those of parallel ones is from memory.
func (p Parallel) metric() bool { return p.Standard == "DIN 6885-1" || p.Standard == metricDiscs }

// Widths returns the limits of the keyway widths for a fit, ISO 286-1; the key
// itself is h9. It errs with a *lookup.UnknownError for another fit, and for an
// inch key, whose tolerances ASME B17.1 gives otherwise.
//
// Classes: DIN 6885-1 and ISO 773, as engineersedge.com prints them (N9 and JS9,
// P9 and P9); H9 and D10 from memory.
func (p Parallel) Widths(fit Fit) (Widths, error) {
	classes, known := map[Fit][2]string{Tight: {"P9", "P9"}, Normal: {"N9", "JS9"}, Free: {"H9", "D10"}}[fit]
	if !known || !p.metric() {
		e := &lookup.UnknownError{What: "fit", Value: string(fit)}
		e.Known = seq.Map(Fits, func(f Fit) string { return string(f) })
		return Widths{}, e
	}
	var w Widths
	var err error
	for _, c := range []struct {
		into  *fits.Limits
		class string
	}{{&w.Shaft, classes[0]}, {&w.Hub, classes[1]}, {&w.Key, "h9"}} {
		if *c.into, err = fits.Limit(p.WidthMm, c.class); err != nil {
			return Widths{}, err
		}
	}
	return w, nil
}
