package keys

import (
	"math"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

const mmPerInch = geom.MmPerInch

// inchRow is one line of ASME B17.1-1967 in inches. square is the height up to
// 6-1/2 in, where square keys are preferred; flat is the height of the
// rectangular key, 0 where there is none.
type inchRow struct{ upTo, width, square, flat float64 }

const inchOver = 5.0 / 16

// asmeB171 is ASME B17.1-1967, key size by shaft diameter: up to 6-1/2 in as
// utilitiesbunker.com prints it, the last two rows from memory.
var asmeB171 = []inchRow{
	{7.0 / 16, 3.0 / 32, 3.0 / 32, 0},
	{9.0 / 16, 1.0 / 8, 1.0 / 8, 3.0 / 32},
	{7.0 / 8, 3.0 / 16, 3.0 / 16, 1.0 / 8},
	{1.25, 1.0 / 4, 1.0 / 4, 3.0 / 16},
	{1.375, 5.0 / 16, 5.0 / 16, 1.0 / 4},
	{1.75, 3.0 / 8, 3.0 / 8, 1.0 / 4},
	{2.25, 1.0 / 2, 1.0 / 2, 3.0 / 8},
	{2.75, 5.0 / 8, 5.0 / 8, 7.0 / 16},
	{3.25, 3.0 / 4, 3.0 / 4, 1.0 / 2},
	{3.75, 7.0 / 8, 7.0 / 8, 5.0 / 8},
	{4.5, 1, 1, 3.0 / 4},
	{5.5, 1.25, 1.25, 7.0 / 8},
	{6.5, 1.5, 1.5, 1},
	{7.5, 1.75, 1.75, 1.5},
	{9, 2, 2, 1.5},
}

// Section is the shape of an inch key across.
type Section int

// The sections of ASME B17.1.
const (
	Square      Section = iota // as high as wide
	Rectangular                // lower than wide
)

// inchClearance is the room above the key in the hub, inches (ASME B17.1).
const inchClearance = 0.005

// Inch depth tolerances of ASME B17.1: the shaft keyway may be 0.015 in deeper,
// the hub keyway 0.010 in, as engineersedge.com prints them ("Design Fits for
// Parallel and Taper Keys").
const (
	inchShaftDeeper = 0.015
	inchHubDeeper   = 0.010
)

// ForInch returns the parallel key of ASME B17.1 for a shaft diameter in mm
// above 5/16 and up to 9 in. The depths are those of the standard's formula: S
// and T are measured across to the far side, from the middle of the key's flat
// to where its edges meet the round. It errs with a *lookup.RangeError for
// another diameter, or a Rectangular key up to 7/16 in, for which there is none.
func ForInch(shaftMm float64, section Section) (Parallel, error) {
	d, from := shaftMm/mmPerInch, inchOver
	if section == Rectangular {
		from = asmeB171[0].upTo
	}
	last := asmeB171[len(asmeB171)-1].upTo
	if err := lookup.Length("shaft diameter", shaftMm, from*mmPerInch, last*mmPerInch); err != nil {
		return Parallel{}, err
	}
	over, i := inchOver, 0
	// A diameter written as a fraction must not fall into the next row by its last bit.
	for ; d > asmeB171[i].upTo+1e-9; i++ {
		over = asmeB171[i].upTo
	}
	r := asmeB171[i]
	h := r.square
	if section == Rectangular {
		h = r.flat
	}
	state := lookup.Checked
	if d > 6.5 {
		state = lookup.FromMemory
	}
	p := inchKey(d, r.width, h, state)
	p.OverMm = [2]float64{over * mmPerInch, r.upTo * mmPerInch}
	return p, nil
}

// inchKey is a key of a width and height in a diameter, all inches, with the
// depths of the standard's formula.
func inchKey(d, width, h float64, state lookup.State) Parallel {
	chord := math.Sqrt(d*d - width*width)
	s := (d - h + chord) / 2
	t := (d+h+chord)/2 + inchClearance
	return Parallel{
		WidthMm: width * mmPerInch, HeightMm: h * mmPerInch,
		ShaftDepthMm: (d - s) * mmPerInch, HubDepthMm: (t - d) * mmPerInch, ShaftAcrossMm: s * mmPerInch, HubAcrossMm: t * mmPerInch,
		ShaftDeeperMm: inchShaftDeeper * mmPerInch, HubDeeperMm: inchHubDeeper * mmPerInch,
		Material: "cold finished 1018", Standard: "ASME B17.1",
		Source:          lookup.Source{Name: "ASME B17.1-1967", State: state},
		ToleranceSource: lookup.Source{Name: "ASME B17.1-1967", State: lookup.Checked},
	}
}
