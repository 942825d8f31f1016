package cutting

import (
	"math"

	"centrepop/parts/geom"
)

// cutter is how long the flutes of an end mill are, in mm.
type cutter struct{ dMm, shortMm, longMm float64 }

// endMills are sold in each system: ISO 1641-1 (standard and long series), ASME
// B94.19 (regular and long, single end); both from memory.
var endMills = map[System][]cutter{
	Metric: {{3, 8, 12}, {4, 11, 19}, {5, 13, 24}, {6, 13, 24}, {8, 19, 38}, {10, 22, 45}, {12, 26, 53}, {16, 32, 63}, {20, 38, 75}, {25, 45, 90}},
	Inch: {
		{inches(1, 4), inches(5, 8), inches(5, 4)}, {inches(5, 16), inches(3, 4), inches(11, 8)}, {inches(3, 8), inches(3, 4), inches(3, 2)},
		{inches(1, 2), inches(5, 4), inches(2, 1)}, {inches(5, 8), inches(13, 8), inches(5, 2)}, {inches(3, 4), inches(13, 8), inches(3, 1)}, {inches(1, 1), inches(2, 1), inches(4, 1)},
	},
}

func inches(n, of float64) float64 { return geom.Clean(n / of * geom.MmPerInch) }

// MillReach is the end mill for a slot: the largest sold that is not wider, and how
// deep its flutes reach in the standard and in the long series; zero where none is so
// narrow. Millimetres.
func MillReach(widthMm float64, s System) (dMm, shortMm, longMm float64) {
	for _, c := range endMills[s] {
		if c.dMm <= widthMm+sameMm {
			dMm, shortMm, longMm = c.dMm, c.shortMm, c.longMm
		}
	}
	return dMm, shortMm, longMm
}

// flutes are those of jobber drills, and above 14 mm of taper shank drills, to a
// diameter: ISO 235, from memory.
var flutes = []struct{ toMm, longMm float64 }{
	{3, 33}, {3.35, 36}, {3.75, 39}, {4.25, 43}, {4.75, 47}, {5.3, 52}, {6, 57}, {6.7, 63}, {7.5, 69}, {8.5, 75}, {9.5, 81}, {10.6, 87}, {11.8, 94}, {13.2, 101}, {14, 108},
	{15, 114}, {16, 120}, {17, 125}, {18, 130}, {19, 135}, {20, 140}, {21.2, 145}, {22.4, 150}, {23.6, 155}, {25, 160}, {26.5, 165}, {28, 170}, {30, 175},
}

// FluteMm is how long the flutes of a drill of usual length are, so how deep it goes
// and still clears its chips. That of 3 mm for less, that of 30 mm for more.
func FluteMm(dMm float64) float64 {
	for _, f := range flutes {
		if dMm <= f.toMm+sameMm {
			return f.longMm
		}
	}
	return flutes[len(flutes)-1].longMm
}

// PointMm is how long the point of a drill is, in mm: 118°, by geometry.
func PointMm(dMm float64) float64 { return dMm / 2 / math.Tan(59*math.Pi/180) }

// ReamBeyondMm is how much deeper than it is reamed a blind hole is drilled: for the
// lead of the reamer, a quarter of its diameter, and 2 mm for chips (common practice,
// no source).
func ReamBeyondMm(dMm float64) float64 { return dMm/4 + 2 }
