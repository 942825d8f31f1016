package bolts

import (
	"math"
	"testing"
)

// Worked by hand. M10: across flats 16, corners 18.475, washer 20 on a bore
// 10.5, medium hole 11.
func TestHeadRoom(t *testing.T) {
	b := find(t, "M10")
	for _, c := range []struct {
		name            string
		p               Place
		wall, neighbour float64
		problems        int
	}{
		{"socket wrench", Place{WallMm: 13, NeighbourMm: 22}, 0.5 + 11.5, 1 + 11.5 + 16/math.Sqrt(3), 0},
		{"wall too near", Place{WallMm: 11.9}, 12, 1 + 11.5 + 16/math.Sqrt(3), 1},
		{"neighbour too near", Place{NeighbourMm: 21}, 12, 1 + 11.5 + 16/math.Sqrt(3), 1},
		{"open spanner", Place{Tool: ToolOpen, WallMm: 18}, 0.5 + 18.3, 1 + 18.3 + 16/math.Sqrt(3), 1},
		{"ring spanner", Place{Tool: ToolRing, WallMm: 14}, 0.5 + 12.6, 1 + 12.6 + 16/math.Sqrt(3), 0},
		{"washer beside a weld", Place{Washer: true, FilletMm: 5, WallMm: 15}, 0.5 + 10.25 + 5, 1 + 11.5 + 16/math.Sqrt(3), 1},
		{"socket head", Place{Head: Socket, WallMm: 9}, 0.5 + 8, 1 + 16, 0},
		{"no tool", Place{Tool: ToolNone, HoleMm: 10}, 16 / math.Sqrt(3), 32 / math.Sqrt(3), 0},
		{"nut", Place{Nut: true, Tool: ToolNone, HoleMm: 10}, 16 / math.Sqrt(3), 32 / math.Sqrt(3), 0},
	} {
		got, err := b.HeadRoom(c.p)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if !near(got.NeedWallMm, c.wall, 1e-9) || !near(got.NeedNeighbourMm, c.neighbour, 1e-9) || len(got.Problems) != c.problems {
			t.Errorf("%s: %+v, want %v, %v, %d problems", c.name, got, c.wall, c.neighbour, c.problems)
		}
		if c.p.WallMm > 0 && !near(got.WallGapMm, c.p.WallMm-c.wall, 1e-9) {
			t.Errorf("%s: wall gap %v", c.name, got.WallGapMm)
		}
	}
	// The 7/16 in nut is wider than the head: 11/16 against 5/8.
	wide, err := find(t, "7/16 UNC").HeadRoom(Place{Nut: true, Tool: ToolNone})
	if err != nil || !near(wide.HeadRadiusMm, 11.0/16*inch/math.Sqrt(3), 1e-9) {
		t.Errorf("7/16 nut: %+v, %v", wide, err)
	}
}

func TestHeadRoomRefuses(t *testing.T) {
	b := find(t, "M10")
	for name, p := range map[string]Place{
		"wall": {WallMm: math.NaN()}, "fillet": {FilletMm: -1}, "neighbour": {NeighbourMm: math.Inf(1)},
		"small hole": {HoleMm: 9}, "tool": {Tool: "hammer"}, "key on hexagon": {Tool: ToolHexKey}, "spanner on socket head": {Head: Socket, Tool: ToolRing}, "head": {Head: "round"},
	} {
		if got, err := b.HeadRoom(p); err == nil {
			t.Errorf("%s: %+v", name, got)
		}
	}
	if got, err := find(t, "#10-24 UNC").HeadRoom(Place{Head: Socket, WallMm: 5}); err != nil || !near(got.HeadRadiusMm, 0.156*25.4, 1e-9) { // ASME B18.3: Ø0.312 in
		t.Errorf("a socket head without a hexagon of its size: %+v, %v", got, err)
	}
	if _, err := ToolRadiusMm(ToolRing, math.NaN()); err == nil {
		t.Error("NaN size accepted")
	}
}
