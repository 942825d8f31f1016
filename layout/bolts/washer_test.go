package bolts

import (
	"math"
	"testing"
)

// The wide washers of 1/4, 3/8, 1/2 and 3/4 in: Machinery's Handbook, 31st edition, table 1a, ASME B18.21.1-2009
// type A preferred sizes, series W. Those of M6 to M16: ISO 7093-1, from memory.
func TestWide(t *testing.T) {
	for size, want := range map[string][3]float64{
		"1/4-20 UNC": {0.312 * inch, 0.734 * inch, 0.065 * inch}, "3/8-16 UNC": {0.438 * inch, 1 * inch, 0.083 * inch},
		"1/2-13 UNC": {0.562 * inch, 1.375 * inch, 0.109 * inch}, "3/4-10 UNC": {0.812 * inch, 2 * inch, 0.148 * inch},
		"M6": {6.4, 18, 1.6}, "M8": {8.4, 24, 2}, "M10": {10.5, 30, 2.5}, "M12": {13, 37, 3}, "M16": {17, 50, 3},
	} {
		b, err := With(size, true)
		if err != nil || b.WasherIDMm != want[0] || b.WasherODMm != want[1] || b.WasherThicknessMm != want[2] {
			t.Errorf("%s: %v %v %v, %v", size, b.WasherIDMm, b.WasherODMm, b.WasherThicknessMm, err)
		}
	}
	for _, row := range metricBolts {
		b := metricBolt(find(t, "M10").Thread, 0)
		b.Thread.MajorMm = row.d
		if w, ok := b.Wide(); !ok || w.WasherODMm <= row.washerOD || w.WasherIDMm < row.d {
			t.Errorf("M%v: %+v", row.d, w)
		}
	}
	if b, ok := find(t, "#10-24 UNC").Wide(); ok || b != find(t, "#10-24 UNC") {
		t.Errorf("#10 has no wide washer: %+v", b)
	}
	if _, err := With("M7", true); err == nil {
		t.Error("M7 has no bolt here")
	}
}

// M10, worked by hand: head 16 across flats, nut 16, socket head 16, washer 20 on a bore of 10.5; a slot of 11
// lets the bolt 0.5 off its middle, and the washer 0.25 off the bolt.
func TestOverSlot(t *testing.T) {
	b := find(t, "M10")
	wide, _ := b.Wide()
	for _, c := range []struct {
		name        string
		of          Bolt
		head        Head
		nut, washer bool
		slotMm      float64
		out, left   float64
	}{
		{"head", b, Hex, false, false, 11, 16, 2}, {"nut", b, Socket, true, false, 11, 16, 2}, {"socket", find(t, "M12"), Socket, false, false, 14, 18, 1},
		{"washer", b, Hex, false, true, 11, 20, 3.75}, {"wide", wide, Hex, false, true, 15, 30, 4.75}, {"through", b, Hex, false, true, 20, 20, -5.25},
		{"tight", b, Hex, false, true, 9, 20, 5.25},
	} {
		got := c.of.OverSlot(c.head, c.nut, c.washer, c.slotMm)
		if got.OutsideMm != c.out || math.Abs(got.LeftMm-c.left) > 1e-9 || math.Abs(got.NeedMm-c.of.Thread.MajorMm/10) > 1e-9 {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
	if mm := b.SlotMm(); mm != 10.5 { // ISO 273 fine
		t.Error(mm)
	}
	if b.Thread.Clearance = nil; b.SlotMm() != 10 {
		t.Error(b.SlotMm())
	}
}
