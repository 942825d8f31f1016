package bars

import (
	"math"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

// Where the sizes are from: testdata/reference/bars.csv says of each row what it was
// compared with. Some walls of metric tube were found in no list; and a size that is not
// listed may well be sold.
var (
	squareSource  = lookup.Source{Name: "EN 10219-2", State: lookup.FromMemory}
	angleSource   = lookup.Source{Name: "EN 10056-1", State: lookup.Checked}
	channelSource = lookup.Source{Name: "DIN 1026-1 (UPN), DIN 1026-2 (UPE)", State: lookup.Checked}
	hssSource     = lookup.Source{Name: "ASTM A500 sizes", State: lookup.Checked}
	lSource       = lookup.Source{Name: "ASTM A6 L shapes", State: lookup.Checked}
)

// SoldMm is the length that bars are sold in: 6 m, or 20 ft. Common practice, no source.
func SoldMm(inch bool) float64 {
	if inch {
		return 20 * 12 * geom.MmPerInch
	}
	return 6000
}

// listed are sizes of one shape: width and depth with the walls they come in. Inch
// sizes are in inches.
type listed struct {
	shape        Shape
	inch         bool
	width, depth float64
	walls        []float64
	flange       float64 // of a channel
	root         float64 // radius, where legs or flanges meet; 0 is left out
}

var standards = []listed{
	{Square, false, 20, 20, []float64{1.5, 2, 2.5}, 0, 0}, {Square, false, 25, 25, []float64{1.5, 2, 2.5, 3}, 0, 0}, {Square, false, 30, 30, []float64{2, 2.5, 3}, 0, 0},
	{Square, false, 40, 40, []float64{2, 2.5, 3, 4}, 0, 0}, {Square, false, 50, 50, []float64{2, 2.5, 3, 4, 5}, 0, 0}, {Square, false, 60, 60, []float64{2, 2.5, 3, 4, 5, 6, 6.3}, 0, 0},
	{Square, false, 70, 70, []float64{2.5, 3, 3.5, 4, 5, 6, 6.3}, 0, 0}, {Square, false, 80, 80, []float64{3, 3.5, 4, 5, 6, 8}, 0, 0},
	{Square, false, 90, 90, []float64{3, 3.5, 4, 5, 6, 6.3, 8}, 0, 0},
	{Square, false, 100, 100, []float64{3, 4, 5, 6, 6.3, 8, 10}, 0, 0}, {Square, false, 120, 120, []float64{3, 4, 5, 6, 6.3, 8, 10, 12}, 0, 0},
	{Rectangle, false, 40, 20, []float64{2, 2.5, 3}, 0, 0}, {Rectangle, false, 50, 30, []float64{2, 2.5, 3, 4}, 0, 0}, {Rectangle, false, 60, 40, []float64{2, 2.5, 3, 4, 5}, 0, 0},
	{Rectangle, false, 80, 40, []float64{3, 4, 5, 6}, 0, 0}, {Rectangle, false, 80, 60, []float64{3, 3.5, 4, 5, 6}, 0, 0}, {Rectangle, false, 100, 50, []float64{3, 4, 5, 6}, 0, 0},
	{Rectangle, false, 100, 60, []float64{3, 3.5, 4, 5, 6, 6.3, 8}, 0, 0}, {Rectangle, false, 120, 60, []float64{3, 3.5, 4, 5, 6, 6.3, 8}, 0, 0},
	{Angle, false, 20, 20, []float64{3}, 0, 3.5}, {Angle, false, 25, 25, []float64{3, 4}, 0, 3.5}, {Angle, false, 30, 30, []float64{3, 4}, 0, 5}, {Angle, false, 40, 40, []float64{4, 5}, 0, 6},
	{Angle, false, 50, 50, []float64{4, 5, 6}, 0, 7}, {Angle, false, 60, 60, []float64{5, 6, 8}, 0, 8}, {Angle, false, 70, 70, []float64{6, 7}, 0, 9}, {Angle, false, 80, 80, []float64{8, 10}, 0, 10},
	{Angle, false, 60, 40, []float64{5, 6}, 0, 6}, {Angle, false, 80, 40, []float64{6, 8}, 0, 7}, {Angle, false, 100, 50, []float64{6, 8}, 0, 8},
	{Channel, false, 80, 50, []float64{4}, 7, 10}, {Channel, false, 100, 55, []float64{4.5}, 7.5, 10}, {Channel, false, 120, 60, []float64{5}, 8, 12}, {Channel, false, 140, 65, []float64{5}, 9, 12},
	{Channel, false, 80, 45, []float64{6}, 8, 0}, {Channel, false, 100, 50, []float64{6}, 8.5, 0}, {Channel, false, 120, 55, []float64{7}, 9, 0}, {Channel, false, 140, 60, []float64{7}, 10, 0},
	{Square, true, 1, 1, []float64{0.125}, 0, 0}, {Square, true, 1.5, 1.5, []float64{0.125, 0.1875}, 0, 0}, {Square, true, 2, 2, []float64{0.125, 0.1875, 0.25}, 0, 0},
	{Square, true, 2.5, 2.5, []float64{0.125, 0.1875, 0.25, 0.3125}, 0, 0}, {Square, true, 3, 3, []float64{0.125, 0.1875, 0.25, 0.3125, 0.375}, 0, 0},
	{Rectangle, true, 2, 1, []float64{0.125, 0.1875}, 0, 0}, {Rectangle, true, 3, 2, []float64{0.125, 0.1875, 0.25, 0.3125}, 0, 0},
	{Rectangle, true, 4, 2, []float64{0.125, 0.1875, 0.25, 0.3125, 0.375}, 0, 0},
	{Angle, true, 1, 1, []float64{0.125, 0.1875, 0.25}, 0, 0}, {Angle, true, 1.5, 1.5, []float64{0.125, 0.1875, 0.25, 0.375}, 0, 0},
	{Angle, true, 2, 2, []float64{0.125, 0.1875, 0.25, 0.3125, 0.375}, 0, 0},
	{Angle, true, 2.5, 2.5, []float64{0.1875, 0.25, 0.3125, 0.375, 0.5}, 0, 0}, {Angle, true, 3, 3, []float64{0.1875, 0.25, 0.3125, 0.375, 0.4375, 0.5}, 0, 0},
	{Angle, true, 3, 2, []float64{0.1875, 0.25, 0.3125, 0.375, 0.5}, 0, 0},
}

func sourceOf(shape Shape, inch bool) lookup.Source {
	switch {
	case shape == Angle && inch:
		return lSource
	case shape == Angle:
		return angleSource
	case shape == Channel:
		return channelSource
	case inch:
		return hssSource
	}
	return squareSource
}

// row is the listed size of a width and a depth; nil where no list has it.
func (s Section) row() *listed {
	unit := 1.0
	if s.Inch {
		unit = geom.MmPerInch
	}
	w, d := math.Max(s.WidthMm, s.DepthMm), math.Min(s.WidthMm, s.DepthMm)
	for i, row := range standards {
		if row.shape == s.Shape && row.inch == s.Inch && same(row.width*unit, w) && same(row.depth*unit, d) {
			return &standards[i]
		}
	}
	return nil
}

func same(a, b float64) bool { return math.Abs(a-b) < 1e-3 }

// rootMm is the radius at the root of an angle or a channel of a listed size: of angles
// that of EN 10056-1, of channels that of DIN 1026-2. It is 0 for inch angles, whose
// published areas have at most 1 % for it, and for a size that no list has.
func (s Section) rootMm() float64 {
	if sold, _, _, _ := Listed(s); sold {
		return s.row().root
	}
	return 0
}

// Listed compares a section with the sizes it is sold in. known is false for a shape, or a
// width and depth, of which no list is kept here; sold tells whether its wall is among those
// of the list, which wallsMm gives.
func Listed(s Section) (sold, known bool, wallsMm []float64, source lookup.Source) {
	row := s.row()
	if row == nil || s.WallMm == 0 {
		return false, false, nil, lookup.Source{}
	}
	unit := 1.0
	if s.Inch {
		unit = geom.MmPerInch
	}
	for _, wall := range row.walls {
		wallsMm = append(wallsMm, geom.Clean(wall*unit))
		sold = sold || same(wall*unit, s.WallMm) && (row.flange == 0 || same(row.flange*unit, s.FlangeMm))
	}
	return sold, true, wallsMm, sourceOf(s.Shape, s.Inch)
}
