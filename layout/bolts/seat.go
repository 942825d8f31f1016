package bolts

import "math"

// The bearing face of a hexagon is less across than its flats by faceLessMm, or faceShare of them where that is less:
// 8.88, 11.63, 14.63, 16.63, 22.49 and 28.19 mm of M6 to M20 (ISO 4017, from memory). Of a socket head it is socketShare
// of the diameter: 9.38, 15.33 and 23.17 of M6, M10 and M16 (ISO 4762, from memory). Under a washer the
// load is spread by spreadShare of its thickness, at most to its edge (VDI 2230, from memory).
const faceLessMm, faceShare, socketShare, spreadShare = 1.37, 0.94, 0.95, 1.6

// SeatMm2 is the ring of metal that a head, or the nut of the size, bears on round a hole, mm²; 0 for a countersunk
// head, and where the standard has no such head or the hole is as large.
func (b Bolt) SeatMm2(head Head, nut, washer bool, holeMm float64) float64 {
	flats := b.AcrossFlatsMm
	if nut {
		flats = b.NutAcrossFlatsMm
	}
	face := math.Min(flats-faceLessMm, faceShare*flats)
	if !nut && head == Socket {
		face = socketShare * b.SocketHeadDiameterMm
	}
	if !nut && head == Countersunk || face <= 0 {
		return 0
	}
	if washer && b.WasherODMm > 0 {
		face = math.Max(face, math.Min(b.WasherODMm, face+spreadShare*b.WasherThicknessMm))
	}
	return math.Max(0, math.Pi/4*(face*face-holeMm*holeMm))
}
