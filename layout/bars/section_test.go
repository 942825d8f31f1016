package bars

import (
	"math"
	"slices"
	"testing"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

// Areas by hand. The square tube of 50 × 4 with radii of 8 and 4: 50² − 42² less
// the corners, (4 − π)(8² − 4²); the angle of 60 × 40 × 5 has a root of 6 and toes of 3.
func TestSectionAreas(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name string
		s    Section
		want float64
	}{
		{"square tube", Section{Shape: Square, WidthMm: 50, DepthMm: 50, WallMm: 4}, 2500 - 1764 - (4-math.Pi)*(64-16)},
		{"square tube, corner given", Section{Shape: Square, WidthMm: 50, DepthMm: 50, WallMm: 4, CornerMm: 4}, 2500 - 1764 - (4-math.Pi)*16},
		{"rectangular tube", Section{Shape: Rectangle, WidthMm: 60, DepthMm: 40, WallMm: 3}, 2400 - 54*34 - (4-math.Pi)*(36-9)},
		{"thick tube: a corner of half the side", Section{Shape: Square, WidthMm: 20, DepthMm: 20, WallMm: 6}, 400 - 64 - (4-math.Pi)*(100-16)},
		{"solid square", Section{Shape: Square, WidthMm: 20, DepthMm: 20}, 400},
		{"round tube", Section{Shape: Round, WidthMm: 60, DepthMm: 60, WallMm: 5}, math.Pi * (900 - 625)},
		{"round", Section{Shape: Round, WidthMm: 60, DepthMm: 60}, math.Pi * 900},
		{"angle", Section{Shape: Angle, WidthMm: 60, DepthMm: 40, WallMm: 5}, 5*(60+40-5) + (1-math.Pi/4)*(36-2*9)},
		{"angle of no list", Section{Shape: Angle, WidthMm: 61, DepthMm: 40, WallMm: 5}, 5 * (61 + 40 - 5)},
		{"channel", Section{Shape: Channel, WidthMm: 100, DepthMm: 50, WallMm: 6, FlangeMm: 8.5, Open: Back}, 100*6 + 2*44*8.5},
		{"angle of no listed wall", Section{Shape: Angle, WidthMm: 20, DepthMm: 20, WallMm: 1}, 39},
		{"parallel channel", Section{Shape: Channel, WidthMm: 80, DepthMm: 50, WallMm: 4, FlangeMm: 7, Open: Back}, 80*4 + 2*46*7 + (2-math.Pi/2)*100},
		{"another flange", Section{Shape: Channel, WidthMm: 80, DepthMm: 50, WallMm: 4, FlangeMm: 6, Open: Back}, 80*4 + 2*46*6},
		{"channel lying", Section{Shape: Channel, WidthMm: 50, DepthMm: 100, WallMm: 6, FlangeMm: 8.5, Open: Top}, 100*6 + 2*44*8.5},
		{"flat", Section{Shape: Flat, WidthMm: 80, DepthMm: 8}, 640},
	} {
		if got := c.s.AreaMm2(); !near(got, c.want, 0.02) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// Published masses, kg/m at 7850 kg/m³, to 1 %: square and rectangular tube of
// EN 10219-2:2006 and UPE of DIN 1026-2 and UPN of DIN 1026-1 as their tables are reprinted
// by steel merchants; unequal angles of EN 10056-1 as reprinted; equal angles, the thick
// tubes and inch sizes (AISC manual, lb/ft) from memory.
func TestPublishedMasses(t *testing.T) {
	t.Parallel()
	const perLbFt = 0.45359237 / 0.3048
	for _, c := range []struct {
		shape              Shape
		w, d, wall, flange float64
		inch               bool
		want               float64
	}{
		{Rectangle, 40, 20, 2, 0, false, 1.68}, {Rectangle, 40, 20, 3, 0, false, 2.36}, {Rectangle, 50, 30, 4, 0, false, 4.20}, {Rectangle, 60, 40, 2.5, 0, false, 3.60}, {Rectangle, 60, 40, 4, 0, false, 5.45},
		{Square, 50, 50, 4, 0, false, 5.45}, {Square, 80, 80, 8, 0, false, 16.4}, {Square, 100, 100, 10, 0, false, 25.6}, {Square, 120, 120, 12, 0, false, 35.8},
		{Angle, 20, 20, 3, 0, false, 0.882}, {Angle, 25, 25, 3, 0, false, 1.12}, {Angle, 25, 25, 4, 0, false, 1.45}, {Angle, 30, 30, 3, 0, false, 1.36}, {Angle, 30, 30, 4, 0, false, 1.78},
		{Angle, 40, 40, 4, 0, false, 2.42}, {Angle, 40, 40, 5, 0, false, 2.97}, {Angle, 50, 50, 4, 0, false, 3.06}, {Angle, 50, 50, 5, 0, false, 3.77}, {Angle, 50, 50, 6, 0, false, 4.47},
		{Angle, 60, 60, 5, 0, false, 4.57}, {Angle, 60, 60, 6, 0, false, 5.42}, {Angle, 60, 60, 8, 0, false, 7.09}, {Angle, 70, 70, 7, 0, false, 7.38}, {Angle, 80, 80, 8, 0, false, 9.63}, {Angle, 80, 80, 10, 0, false, 11.9},
		{Angle, 60, 40, 5, 0, false, 3.76}, {Angle, 40, 60, 6, 0, false, 4.46}, {Angle, 80, 40, 6, 0, false, 5.41}, {Angle, 100, 50, 8, 0, false, 8.97},
		{Channel, 80, 45, 6, 8, false, 8.63}, {Channel, 100, 50, 6, 8.5, false, 10.6}, {Channel, 120, 55, 7, 9, false, 13.3}, {Channel, 140, 60, 7, 10, false, 16.0},
		{Channel, 80, 50, 4, 7, false, 7.90}, {Channel, 100, 55, 4.5, 7.5, false, 9.82}, {Channel, 120, 60, 5, 8, false, 12.1}, {Channel, 140, 65, 5, 9, false, 14.5},
		{Square, 2, 2, 0.25, 0, true, 5.41 * perLbFt}, {Square, 3, 3, 0.375, 0, true, 12.17 * perLbFt}, {Rectangle, 3, 2, 0.1875, 0, true, 5.59 * perLbFt},
		{Angle, 2, 2, 0.25, 0, true, 3.19 * perLbFt}, {Angle, 3, 3, 0.375, 0, true, 7.2 * perLbFt},
	} {
		unit := 1.0
		if c.inch {
			unit = 25.4
		}
		s := Section{Shape: c.shape, WidthMm: c.w * unit, DepthMm: c.d * unit, WallMm: c.wall * unit, FlangeMm: c.flange * unit, Open: Back, Inch: c.inch}
		if kg := s.AreaMm2() * 7850e-6; math.Abs(kg-c.want) > 0.01*c.want {
			t.Errorf("%s %v × %v × %v: %.3f kg/m, published %v", c.shape, c.w, c.d, c.wall, kg, c.want)
		}
		if sold, known, _, _ := Listed(s); !sold || !known {
			t.Errorf("%s %v × %v × %v is not listed", c.shape, c.w, c.d, c.wall)
		}
	}
}

// A mitre takes as much off one side of an angle as its shape has metal there: a leg
// of 61 × 5 in front, and one of 35 × 5 beside its lower edge, 28 under the middle.
func TestMitredVolume(t *testing.T) {
	t.Parallel()
	s := Section{Shape: Angle, WidthMm: 61, DepthMm: 40, WallMm: 5}
	m := Member{LengthMm: 300, WidthMm: 61, StartDeg: 45, EndDeg: 45}
	if got, want := s.VolumeMm3(m), 480*300.0-2*35*5*28.0; !near(got, want, 1e-6) {
		t.Errorf("%v, want %v", got, want)
	}
	tube := Section{Shape: Square, WidthMm: 50, DepthMm: 50, WallMm: 4}
	if got := tube.VolumeMm3(Member{LengthMm: 300, WidthMm: 50, StartDeg: 45, EndDeg: 45}); !near(got, 300*tube.AreaMm2(), 1e-6) {
		t.Errorf("%v of a tube", got)
	}
}

// What a drill meets from each side, and what of a side is flat.
func TestSides(t *testing.T) {
	t.Parallel()
	tube := Section{Shape: Rectangle, WidthMm: 60, DepthMm: 40, WallMm: 3}
	angle := Section{Shape: Angle, WidthMm: 60, DepthMm: 40, WallMm: 5}
	channel := func(open Side) Section {
		s := Section{Shape: Channel, WidthMm: 100, DepthMm: 50, WallMm: 6, FlangeMm: 8.5, Open: open}
		if open == Top || open == Bottom {
			s.WidthMm, s.DepthMm = 50, 100
		}
		return s
	}
	for _, c := range []struct {
		name          string
		s             Section
		side          Side
		mm, low, high float64
		stretches     [][2]float64 // behind the front
	}{
		{"tube", tube, Front, 3, -24, 24, [][2]float64{{0, 3}, {37, 40}}},
		{"tube above", tube, Top, 3, -14, 14, nil},
		{"round", Section{Shape: Round, WidthMm: 60, DepthMm: 60, WallMm: 5}, Top, 5, -30, 30, [][2]float64{{0, 5}, {55, 60}}},
		{"solid", Section{Shape: Rectangle, WidthMm: 60, DepthMm: 40}, Front, 40, -30, 30, [][2]float64{{0, 40}}},
		{"solid above", Section{Shape: Rectangle, WidthMm: 60, DepthMm: 40}, Top, 60, -20, 20, nil},
		{"angle", angle, Front, 5, -25, 30, [][2]float64{{0, 5}}},
		{"angle below", angle, Bottom, 5, -20, 15, nil},
		{"angle above", angle, Top, 0, -20, 15, nil},
		{"web", channel(Back), Front, 6, -41.5, 41.5, [][2]float64{{0, 6}}},
		{"flange above", channel(Back), Top, 8.5, -19, 25, nil},
		{"flange below", channel(Back), Bottom, 8.5, -25, 19, nil},
		{"web behind", channel(Front), Back, 6, -41.5, 41.5, [][2]float64{{44, 50}}},
		{"open side", channel(Front), Front, 0, -50, 44, nil},
		{"flange below, web behind", channel(Front), Bottom, 8.5, -19, 25, nil},
		{"flange of a trough", channel(Top), Front, 8.5, -19, 25, [][2]float64{{0, 8.5}, {91.5, 100}}},
		{"web of a trough", channel(Top), Bottom, 6, -41.5, 41.5, nil},
		{"flange of a lid", channel(Bottom), Back, 8.5, -25, 19, [][2]float64{{0, 8.5}, {91.5, 100}}},
		{"web of a lid", channel(Bottom), Top, 6, -41.5, 41.5, nil},
	} {
		low, high := c.s.FlatMm(c.side)
		if got := c.s.AtMm(c.side); got != c.mm || c.mm > 0 && (low != c.low || high != c.high) {
			t.Errorf("%s: %v, flat %v to %v", c.name, got, low, high)
		}
		if c.stretches != nil && !slices.Equal(c.s.Metal(), c.stretches) {
			t.Errorf("%s: %v, want %v", c.name, c.s.Metal(), c.stretches)
		}
	}
}

// The flanges of a channel lie on the side it is open to: their tips there, the web on
// the other.
func TestChannelOpens(t *testing.T) {
	t.Parallel()
	for open, tip := range map[Side]geom.Vertex{Back: {Point: geom.Point{XMm: -50, YMm: -50}}, Front: {Point: geom.Point{XMm: -50}}, Top: {Point: geom.Point{XMm: 25, YMm: -100}}, Bottom: {Point: geom.Point{XMm: -25, YMm: -100}}} {
		s := Section{Shape: Channel, WidthMm: 100, DepthMm: 50, WallMm: 6, FlangeMm: 8.5, Open: open}
		if open == Top || open == Bottom {
			s.WidthMm, s.DepthMm = 50, 100
		}
		if got := s.Loops()[0][1]; got != tip {
			t.Errorf("%s: %v, want %v", open, got, tip)
		}
	}
}

// What is sold: lists from memory, a size that they lack is not judged.
func TestListed(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		s           Section
		inch        bool
		sold, known bool
	}{
		{Section{Shape: Square, WidthMm: 50, DepthMm: 50, WallMm: 4}, false, true, true},
		{Section{Shape: Square, WidthMm: 50, DepthMm: 50, WallMm: 7}, false, false, true},
		{Section{Shape: Square, WidthMm: 53, DepthMm: 53, WallMm: 4}, false, false, false},
		{Section{Shape: Square, WidthMm: 50, DepthMm: 50}, false, false, false},
		{Section{Shape: Rectangle, WidthMm: 40, DepthMm: 60, WallMm: 3}, false, true, true},
		{Section{Shape: Channel, WidthMm: 100, DepthMm: 50, WallMm: 6, FlangeMm: 8.5}, false, true, true},
		{Section{Shape: Channel, WidthMm: 100, DepthMm: 50, WallMm: 6, FlangeMm: 6}, false, false, true},
		{Section{Shape: Angle, WidthMm: 63.5, DepthMm: 63.5, WallMm: 6.35}, true, true, true},
		{Section{Shape: Square, WidthMm: 50, DepthMm: 50, WallMm: 4}, true, false, false},
	} {
		c.s.Inch = c.inch
		sold, known, walls, source := Listed(c.s)
		if sold != c.sold || known != c.known || known && (len(walls) == 0 || source.State != lookup.FromMemory || source.Name == "") {
			t.Errorf("%+v: %v %v %v %v", c.s, sold, known, walls, source)
		}
	}
	names := map[string]bool{}
	for _, row := range standards {
		names[sourceOf(row.shape, row.inch).Name] = true
	}
	if len(names) != 5 {
		t.Errorf("%v", names)
	}
}

// Seams by hand, cut at 60° from square, where what runs across the width is twice as long:
// once along the middle of the metal, whose other side is no seam of its own; round a tube
// along the middle of its wall; of a solid bar across its front.
func TestSeams(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		s       Section
		want    float64
		outside []Side
	}{
		{Section{Shape: Angle, WidthMm: 61, DepthMm: 40, WallMm: 5}, 2*58.5 + 37.5, []Side{Front, Bottom}},
		{Section{Shape: Channel, WidthMm: 100, DepthMm: 50, WallMm: 6, FlangeMm: 8.5, Open: Back}, 2*91.5 + 2*47, []Side{Front, Top, Bottom}},
		{Section{Shape: Channel, WidthMm: 100, DepthMm: 50, WallMm: 6, FlangeMm: 8.5, Open: Front}, 2*91.5 + 2*47, []Side{Back, Top, Bottom}},
		{Section{Shape: Channel, WidthMm: 50, DepthMm: 100, WallMm: 6, FlangeMm: 8.5, Open: Top}, 2*2*47 + 91.5, []Side{Front, Back, Bottom}},
		{Section{Shape: Channel, WidthMm: 50, DepthMm: 100, WallMm: 6, FlangeMm: 8.5, Open: Bottom}, 2*2*47 + 91.5, []Side{Front, Back, Top}},
		{Section{Shape: Rectangle, WidthMm: 60, DepthMm: 40, WallMm: 20, CornerMm: 0.0001}, 2*2*40 + 2*20, []Side{Front, Back, Top, Bottom}},
		{Section{Shape: Flat, WidthMm: 80, DepthMm: 8}, 160, []Side{Front}},
		{Section{Shape: Round, WidthMm: 30, DepthMm: 30}, 60, []Side{Front}},
	} {
		if got := c.s.SeamMm(60); !near(got, c.want, 0.01) || !slices.Equal(c.s.Outside(), c.outside) {
			t.Errorf("%+v: %v on %v, want %v on %v", c.s, got, c.s.Outside(), c.want, c.outside)
		}
	}
}
