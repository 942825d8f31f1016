package grooves

import (
	"math"
	"sort"

	"centrepop/layout/fits"
	"centrepop/layout/lookup"
)

// Ring is a retaining ring with its groove.
type Ring struct {
	NominalMm   float64     // diameter of the shaft or bore
	ThicknessMm float64     // of the ring
	Groove      fits.Limits // diameter of the groove's floor
	Width       fits.Limits // of the groove, H13
	EdgeMm      float64     // least from the groove to the end of the part or the next groove
	ClearMm     float64     // diameter that must stay free around (or within) the lugs while the ring is fitted
	Standard    string
	Source      lookup.Source // of ring thickness and groove diameter
}

// ringRow is nominal diameter, thickness, groove diameter, and height of the lugs.
type ringRow struct{ nominal, thickness, groove, lug float64 }

// din471 is DIN 471, normal type, as the file din471def.csv of the repository
// shaise/FreeCAD_FastenersWB has it, and a public copy of the sheets of Westfield
// Fasteners to 100; 52 as these, because that file and a catalogue (scribd.com
// 416335815) print 49.5, which breaks the depth of its neighbours.
var din471 = []ringRow{
	{3, 0.4, 2.8, 2}, {4, 0.4, 3.8, 2.2}, {5, 0.6, 4.8, 2.5}, {6, 0.7, 5.7, 2.7}, {7, 0.8, 6.7, 3.1}, {8, 0.8, 7.6, 3.2},
	{9, 1, 8.6, 3.3}, {10, 1, 9.6, 3.3}, {11, 1, 10.5, 3.3}, {12, 1, 11.5, 3.3}, {13, 1, 12.4, 3.4}, {14, 1, 13.4, 3.5},
	{15, 1, 14.3, 3.6}, {16, 1, 15.2, 3.7}, {17, 1, 16.2, 3.8}, {18, 1.2, 17, 3.9}, {19, 1.2, 18, 3.9}, {20, 1.2, 19, 4},
	{21, 1.2, 20, 4.1}, {22, 1.2, 21, 4.2}, {23, 1.2, 22, 4.3}, {24, 1.2, 22.9, 4.4}, {25, 1.2, 23.9, 4.4}, {26, 1.2, 24.9, 4.5},
	{27, 1.2, 25.6, 4.6}, {28, 1.5, 26.6, 4.7}, {29, 1.5, 27.6, 4.8}, {30, 1.5, 28.6, 5}, {31, 1.5, 29.3, 5}, {32, 1.5, 30.3, 5.2},
	{33, 1.5, 31.3, 5.2}, {34, 1.5, 32.3, 5.4}, {35, 1.5, 33, 5.6}, {36, 1.75, 34, 5.6}, {37, 1.75, 35, 5.7}, {38, 1.75, 36, 5.8},
	{39, 1.75, 37, 5.9}, {40, 1.75, 37.5, 6}, {41, 1.75, 38.5, 6.2}, {42, 1.75, 39.5, 6.5}, {44, 1.75, 41.5, 6.6}, {45, 1.75, 42.5, 6.7},
	{46, 1.75, 43.5, 6.7}, {47, 1.75, 44.5, 6.8}, {48, 1.75, 45.5, 6.9}, {50, 2, 47, 6.9}, {52, 2, 49, 7}, {54, 2, 51, 7.1},
	{55, 2, 52, 7.2}, {56, 2, 53, 7.3}, {57, 2, 54, 7.3}, {58, 2, 55, 7.3}, {60, 2, 57, 7.4}, {62, 2, 59, 7.5}, {63, 2, 60, 7.6},
	{65, 2.5, 62, 7.8}, {67, 2.5, 64, 7.9}, {68, 2.5, 65, 8}, {70, 2.5, 67, 8.1}, {72, 2.5, 69, 8.2}, {75, 2.5, 72, 8.4},
	{77, 2.5, 74, 8.5}, {78, 2.5, 75, 8.6}, {80, 2.5, 76.5, 8.6}, {82, 2.5, 78.5, 8.7}, {85, 3, 81.5, 8.7}, {87, 3, 83.5, 8.8},
	{88, 3, 84.5, 8.8}, {90, 3, 86.5, 8.8}, {92, 3, 88.5, 9}, {95, 3, 91.5, 9.4}, {97, 3, 93.5, 9.4}, {98, 3, 94.5, 9.5}, {100, 3, 96.5, 9.6},
	{105, 4, 101, 9.9}, {110, 4, 106, 10.1}, {115, 4, 111, 10.6}, {120, 4, 116, 11}, {125, 4, 121, 11.4}, {130, 4, 126, 11.6},
	{135, 4, 131, 11.8}, {140, 4, 136, 12}, {145, 4, 141, 12.2}, {150, 4, 145, 13}, {160, 4, 155, 13.3}, {170, 4, 165, 13.5},
	{180, 4, 175, 14.2}, {190, 4, 185, 14.2}, {200, 4, 195, 14.2},
}

// din472 is DIN 472, normal type, as the file din472def.csv of the same
// repository has it, and those sheets to 100; 28 and 100 as these, because 20.4 and
// 103 in that file break the depth of their neighbours. The sheets have 1.5 for the
// thickness of 31 and 32, that file and fasteners.eu 1.2.
var din472 = []ringRow{
	{8, 0.8, 8.4, 2.4}, {9, 0.8, 9.4, 2.5}, {10, 1, 10.4, 3.2}, {11, 1, 11.4, 3.3}, {12, 1, 12.5, 3.4}, {13, 1, 13.6, 3.6},
	{14, 1, 14.6, 3.7}, {15, 1, 15.7, 3.7}, {16, 1, 16.8, 3.8}, {17, 1, 17.8, 3.9}, {18, 1, 19, 4.1}, {19, 1, 20, 4.1},
	{20, 1, 21, 4.2}, {21, 1, 22, 4.2}, {22, 1, 23, 4.2}, {23, 1.2, 24.1, 4.2}, {24, 1.2, 25.2, 4.4}, {25, 1.2, 26.2, 4.5},
	{26, 1.2, 27.2, 4.7}, {27, 1.2, 28.4, 4.7}, {28, 1.2, 29.4, 4.8}, {29, 1.2, 30.4, 4.8}, {30, 1.2, 31.4, 4.8}, {31, 1.2, 32.7, 5.2},
	{32, 1.2, 33.7, 5.4}, {33, 1.2, 34.7, 5.4}, {34, 1.5, 35.7, 5.4}, {35, 1.5, 37, 5.4}, {36, 1.5, 38, 5.4}, {37, 1.5, 39, 5.5},
	{38, 1.5, 40, 5.5}, {39, 1.5, 41, 5.6}, {40, 1.75, 42.5, 5.8}, {41, 1.75, 43.5, 5.9}, {42, 1.75, 44.5, 5.9}, {43, 1.75, 45.5, 5.9},
	{44, 1.75, 46.5, 6}, {45, 1.75, 47.5, 6.2}, {46, 1.75, 48.5, 6.3}, {47, 1.75, 49.5, 6.4}, {48, 1.75, 50.5, 6.4}, {49, 1.75, 51.5, 6.5},
	{50, 2, 53, 6.5}, {51, 2, 54, 6.5}, {52, 2, 55, 6.7}, {53, 2, 56, 6.7}, {54, 2, 57, 6.7}, {55, 2, 58, 6.8}, {56, 2, 59, 6.8},
	{57, 2, 60, 6.8}, {58, 2, 61, 6.9}, {60, 2, 63, 7.3}, {62, 2, 65, 7.3}, {63, 2, 66, 7.3}, {64, 2, 67, 7.6}, {65, 2.5, 68, 7.6},
	{67, 2.5, 70, 7.7}, {68, 2.5, 71, 7.8}, {70, 2.5, 73, 7.8}, {72, 2.5, 75, 7.8}, {75, 2.5, 78, 7.8}, {77, 2.5, 80, 7.9},
	{78, 2.5, 81, 8.5}, {80, 2.5, 83.5, 8.5}, {82, 2.5, 85.5, 8.5}, {85, 3, 88.5, 8.6}, {87, 3, 90.5, 8.6}, {88, 3, 91.5, 8.6},
	{90, 3, 93.5, 8.6}, {92, 3, 95.5, 8.7}, {95, 3, 98.5, 8.8}, {97, 3, 100.5, 8.8}, {98, 3, 101.5, 9}, {100, 3, 103.5, 9.2},
	{105, 4, 109, 9.5}, {110, 4, 114, 10.4}, {115, 4, 119, 10.5}, {120, 4, 124, 11}, {125, 4, 129, 11}, {130, 4, 134, 11},
	{135, 4, 139, 11.2}, {140, 4, 144, 11.2}, {145, 4, 149, 11.4}, {150, 4, 155, 12}, {160, 4, 165, 13}, {170, 4, 175, 13.5},
	{180, 4, 185, 14.2}, {190, 4, 195, 14.2}, {200, 4, 205, 14.2},
}

// RingFor returns the retaining ring and groove for a shaft of 3 to 200 mm or,
// inside, a bore of 8 to 200 mm. It errs with a *lookup.RangeError beyond that,
// and with a *RingError for a diameter between that no ring of the table fits.
//
// The width of the groove, its tolerance class and the edge follow rules seen in
// the printed tables: the ring's thickness and 0.1, from 2 on 0.15; H13; three
// times the depth of the groove, to 0.1. The classes of the diameter: DIN 471
// h10 to a shaft of 10, h11 to 22, h12 to 100, h13 above; DIN 472 H11 to a bore
// of 22, H12 to 100, H13 above (above 68 on shafts and 16 in bores from memory).
func RingFor(diameterMm float64, inside bool) (Ring, error) {
	table, standard := din471, "DIN 471"
	if inside {
		table, standard = din472, "DIN 472"
	}
	first, last := table[0].nominal, table[len(table)-1].nominal
	if err := lookup.Length("diameter", diameterMm, lookup.Under(first), last); err != nil {
		return Ring{}, err
	}
	i := sort.Search(len(table), func(i int) bool { return table[i].nominal >= diameterMm-1e-6 })
	r := table[i]
	if math.Abs(r.nominal-diameterMm) > 1e-6 {
		return Ring{}, &RingError{DiameterMm: diameterMm, BelowMm: table[i-1].nominal, AboveMm: r.nominal}
	}
	depth := math.Abs(r.nominal-r.groove) / 2
	ring := Ring{
		NominalMm: r.nominal, ThicknessMm: r.thickness, EdgeMm: math.Floor(30*depth+0.5+1e-9) / 10,
		ClearMm: r.nominal + 2.1*r.lug, Standard: standard, Source: lookup.Source{Name: standard + ", normal type", State: lookup.Checked},
	}
	if inside {
		ring.ClearMm = r.nominal - 2.1*r.lug
	}
	width := r.thickness + 0.1
	if r.thickness >= 2 {
		width = r.thickness + 0.15
	}
	var err error
	if ring.Width, err = fits.Limit(math.Round(width*100)/100, "H13"); err != nil {
		return Ring{}, err
	}
	ring.Groove, err = fits.Limit(r.groove, ringClass(r.nominal, inside))
	return ring, err
}

// ringClass is the tolerance class of a groove's diameter.
func ringClass(nominalMm float64, inside bool) string {
	switch {
	case inside && nominalMm <= 22:
		return "H11"
	case inside && nominalMm <= 100:
		return "H12"
	case inside:
		return "H13"
	case nominalMm <= 10:
		return "h10"
	case nominalMm <= 22:
		return "h11"
	case nominalMm <= 100:
		return "h12"
	}
	return "h13"
}

// RingError refuses a diameter for which the table has no ring.
type RingError struct {
	DiameterMm       float64
	BelowMm, AboveMm float64 // the nearest diameters that have one
}

// Error names the diameters without a unit, for a programmer's log.
func (e *RingError) Error() string {
	return "grooves: no retaining ring of the table fits this diameter"
}
