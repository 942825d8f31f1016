package bolts

import "math"

// wideWashers are bore, outside and thickness of wide plain washers. In mm those of ISO 7093-1:2000, from
// memory; the inch ones are ASME B18.21.1 type A wide, thickness basic, as the Machinery's Handbook, 31st
// edition, has them. Number sizes have none.
var wideWashers = []struct{ majorMm, idMm, odMm, thickMm float64 }{
	{3, 3.2, 9, 0.8}, {4, 4.3, 12, 1}, {5, 5.3, 15, 1}, {6, 6.4, 18, 1.6}, {8, 8.4, 24, 2}, {10, 10.5, 30, 2.5}, {12, 13, 37, 3}, {14, 15, 44, 3},
	{16, 17, 50, 3}, {18, 19, 56, 4}, {20, 21, 60, 4}, {22, 23, 66, 5}, {24, 25, 72, 5}, {27, 30, 85, 6}, {30, 33, 92, 6}, {33, 36, 105, 6}, {36, 39, 110, 8},
	{1.0 / 4 * inch, 0.312 * inch, 0.734 * inch, 0.065 * inch}, {5.0 / 16 * inch, 0.375 * inch, 0.875 * inch, 0.083 * inch},
	{3.0 / 8 * inch, 0.438 * inch, 1 * inch, 0.083 * inch}, {7.0 / 16 * inch, 0.5 * inch, 1.25 * inch, 0.083 * inch},
	{1.0 / 2 * inch, 0.562 * inch, 1.375 * inch, 0.109 * inch}, {9.0 / 16 * inch, 0.625 * inch, 1.469 * inch, 0.109 * inch},
	{5.0 / 8 * inch, 0.688 * inch, 1.75 * inch, 0.134 * inch}, {3.0 / 4 * inch, 0.812 * inch, 2 * inch, 0.148 * inch},
	{7.0 / 8 * inch, 0.938 * inch, 2.25 * inch, 0.165 * inch}, {1 * inch, 1.062 * inch, 2.5 * inch, 0.165 * inch},
}

// Wide is the bolt with the wide plain washer of its size; ok is false, and the bolt as it is, where the
// standard has none.
func (b Bolt) Wide() (wide Bolt, ok bool) {
	for _, row := range wideWashers {
		if math.Abs(row.majorMm-b.Thread.MajorMm) < 1e-3 {
			b.WasherIDMm, b.WasherODMm, b.WasherThicknessMm = row.idMm, row.odMm, row.thickMm
			return b, true
		}
	}
	return b, false
}

// SlotMm is the least width of a slot for a bolt in mm: the fine clearance hole of ISO 273, or the close one of
// ASME B18.2.8; without one the bolt's own diameter.
func (b Bolt) SlotMm() float64 {
	if mm, err := b.Thread.ClearanceMm("fine"); err == nil {
		return mm
	}
	return b.Thread.MajorMm
}

// With is Find, with the wide washer of the size where that is wanted and there is one.
func With(size string, wide bool) (Bolt, error) {
	b, err := Find(size)
	if wide {
		b, _ = b.Wide()
	}
	return b, err
}

// leastBearing is what a head, a nut or a washer has to lie on at each side of a slot, over the diameter of the
// bolt. Common practice, no source.
const leastBearing = 0.1

// A Bearing is what head, nut or washer lies on beside a slot.
type Bearing struct {
	OutsideMm float64 // of the flats, the head or the washer
	LeftMm    float64 // on the narrower side, the bolt against the other and its washer against the bolt; below 0 none
	NeedMm    float64 // wanted of that
}

// OverSlot is what the head, or the nut, or the washer under it, bears on at the sides of a slot so wide in mm.
func (b Bolt) OverSlot(head Head, nut, washer bool, widthMm float64) Bearing {
	out, slip := b.AcrossFlatsMm, 0.0
	switch {
	case washer && b.WasherODMm > 0:
		out, slip = b.WasherODMm, math.Max(0, b.WasherIDMm-b.Thread.MajorMm)/2
	case nut:
		out = b.NutAcrossFlatsMm
	case head == Socket:
		out = b.SocketHeadDiameterMm
	}
	off := math.Max(0, widthMm-b.Thread.MajorMm)/2 + slip
	return Bearing{OutsideMm: out, LeftMm: (out-widthMm)/2 - off, NeedMm: leastBearing * b.Thread.MajorMm}
}
