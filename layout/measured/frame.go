package measured

import (
	"regexp"

	"centrepop/parts/geom"
)

// ShaftEnd is the end of a motor's shaft, in mm.
type ShaftEnd struct{ DiameterMm, LengthMm float64 }

// shaftEnds are the ends of the shafts of frames: IEC 60072-1 of four and more poles, and
// NEMA MG 1, U by N-W, as tabled by makers; 56 from memory.
var shaftEnds = map[string]ShaftEnd{
	"56": {9, 20}, "63": {11, 23}, "71": {14, 30}, "80": {19, 40}, "90": {24, 50}, "100": {28, 60}, "112": {28, 60}, "132": {38, 80},
	"160": {42, 110}, "180": {48, 110}, "200": {55, 110}, "225": {60, 140}, "250": {65, 140}, "280": {75, 140},
	"42": {9.525, 28.575}, "48": {12.7, 38.1}, "56C": {15.875, 47.625}, "143": {22.225, 57.15}, "145": {22.225, 57.15},
	"182": {28.575, 69.85}, "184": {28.575, 69.85}, "213": {34.925, 85.725}, "215": {34.925, 85.725}, "254": {41.275, 101.6}, "256": {41.275, 101.6},
	"284": {47.625, 117.475}, "286": {47.625, 117.475}, "324": {53.975, 133.35}, "326": {53.975, 133.35},
}

// ShaftLengthMm is how long the end of a shaft of a diameter is at the most, mm: the long series of ISO/R 775. Its lengths
// to 170 as DIN 748-1:1970 has them (mydoc123.com p-661482); the diameters at which they change from memory, to 75 mm as
// the frames of motors have them.
func ShaftLengthMm(diameterMm float64) float64 {
	for _, e := range []ShaftEnd{{11, 23}, {14, 30}, {19, 40}, {24, 50}, {28, 60}, {38, 80}, {56, 110}, {75, 140}, {95, 170}} {
		if diameterMm <= e.DiameterMm {
			return e.LengthMm
		}
	}
	return 2 * diameterMm
}

// frameName is a frame: of IEC with the letters of its length, of NEMA with T and C for
// the shaft and the face.
var frameName = regexp.MustCompile(`^(56)-?(?:C|HC|J)$|^(\d{2,3})(?: ?[SML]\d?| ?TC?| ?TCH)?$`)

// nema56KW is the power in kW from which a bare 56 is the frame of NEMA: those of IEC end at 0.12 kW (EN 50347, as a
// maker's series has them), those of NEMA begin at 1/4 hp (from memory).
const nema56KW = 0.15

// FrameShaft is the shaft end of a motor by the frame and the power in kW on its plate, such as 100L or 184TC;
// ok is false for a frame that is not tabled. A bare 56 is that of IEC where the power is not more than that has.
func FrameShaft(frame string, kw float64) (end ShaftEnd, ok bool) {
	m := frameName.FindStringSubmatch(frame)
	if m == nil {
		return end, false
	}
	name := m[2]
	if m[1] != "" || name == "56" && kw > nema56KW {
		name = "56C"
	}
	end, ok = shaftEnds[name]
	return end, ok
}

// cFaces are the faces of NEMA MG 1: AJ, AK, BD and BB, as tabled by makers; the thread of their four
// screws by tables 18-33 and 18-34 of MG 1 (9 and 3 3/4 in from memory), and the frames that have them, from memory.
// How deep a screw may come in, its BF, is from memory, 0 where it is not known.
var cFaces = []struct {
	pitchMm, spigotMm, outsideMm, spigotHeightMm float64
	thread                                       string
	deepMm                                       float64
	frames                                       string
}{
	{95.25, 76.2, 142.875, 3.175, "1/4-20 UNC", 0, "42C, 48C"},
	{149.225, 114.3, 165.1, 3.175, "3/8-16 UNC", 0.56 * geom.MmPerInch, "56C, 143TC, 145TC"},
	{184.15, 215.9, 254, 6.35, "1/2-13 UNC", 0.75 * geom.MmPerInch, "182TC, 184TC, 213TC, 215TC, 254TC, 256TC"},
	{228.6, 266.7, 285.75, 6.35, "1/2-13 UNC", 0.75 * geom.MmPerInch, "284TC, 286TC"},
	{279.4, 317.5, 339.725, 6.35, "5/8-11 UNC", 0.94 * geom.MmPerInch, "324TC, 326TC"},
}
