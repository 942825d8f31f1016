package bolts

import (
	"fmt"
	"math"
)

// A SunkHead is the head of a screw that lies in a cone. Lengths in mm.
type SunkHead struct {
	DiameterMm float64 // of its cone at the top, sharp, at the most: what it lies flush in
	HeightMm   float64 // of its cone, at the most
	KeyMm      float64 // of its hexagon key
	AngleDeg   float64 // of its cone
	fromMm     float64 // shortest
}

// sunkHeads: those in mm of ISO 10642 (codecupboard.com, "Capscrews"; engineeringhardware.com; M14 and the
// shortest from memory), those in inches of ASME B18.3 (adfastcomponents.com, BS 2470, the same series but for its
// heights; designparams.com).
var sunkHeads = []struct{ majorMm, diameterMm, heightMm, keyMm, angleDeg, fromMm float64 }{
	{3, 6.72, 1.86, 2, 90, 8}, {4, 8.96, 2.48, 2.5, 90, 8}, {5, 11.2, 3.1, 3, 90, 8}, {6, 13.44, 3.72, 4, 90, 8}, {8, 17.92, 4.96, 5, 90, 10},
	{10, 22.4, 6.2, 6, 90, 12}, {12, 26.88, 7.44, 8, 90, 20}, {14, 30.8, 8.4, 10, 90, 25}, {16, 33.6, 8.8, 10, 90, 30}, {20, 40.32, 10.16, 12, 90, 35},
	{0.138 * inch, 0.307 * inch, 0.097 * inch, 5.0 / 64 * inch, 82, 0}, {0.164 * inch, 0.359 * inch, 0.112 * inch, 3.0 / 32 * inch, 82, 0},
	{0.190 * inch, 0.411 * inch, 0.127 * inch, 1.0 / 8 * inch, 82, 0}, {1.0 / 4 * inch, 0.531 * inch, 0.161 * inch, 5.0 / 32 * inch, 82, 0},
	{5.0 / 16 * inch, 0.656 * inch, 0.198 * inch, 3.0 / 16 * inch, 82, 0}, {3.0 / 8 * inch, 0.781 * inch, 0.234 * inch, 7.0 / 32 * inch, 82, 0},
	{7.0 / 16 * inch, 0.844 * inch, 0.234 * inch, 1.0 / 4 * inch, 82, 0}, {1.0 / 2 * inch, 0.938 * inch, 0.251 * inch, 5.0 / 16 * inch, 82, 0},
	{5.0 / 8 * inch, 1.188 * inch, 0.324 * inch, 3.0 / 8 * inch, 82, 0}, {3.0 / 4 * inch, 1.438 * inch, 0.396 * inch, 1.0 / 2 * inch, 82, 0},
	{7.0 / 8 * inch, 1.688 * inch, 0.468 * inch, 9.0 / 16 * inch, 82, 0}, {1 * inch, 1.938 * inch, 0.540 * inch, 5.0 / 8 * inch, 82, 0},
}

// sunkShare is what a countersunk head with a socket carries of what its thread does: ISO 10642 reduces it, and the scope
// of ISO 14581, the same head with another socket, says 80 % for all sizes and classes;
// F835 has 145 of the 180 ksi of A574 to 1/2 in, and 135 of 170 over it.
const sunkShare = 0.8

// Sunk is the countersunk head of the size; ok is false where the standards have none.
func (b Bolt) Sunk() (s SunkHead, ok bool) {
	for _, row := range sunkHeads {
		if math.Abs(row.majorMm-b.Thread.MajorMm) < 1e-3 {
			return SunkHead{row.diameterMm, row.heightMm, row.keyMm, row.angleDeg, row.fromMm}, true
		}
	}
	return s, false
}

// SourceOf names the standards that the sizes of the bolt and of a head of it are from.
func (b Bolt) SourceOf(h Head) string {
	if h == Countersunk && b.metric {
		return b.Source + "; ISO 10642"
	}
	return b.Source
}

// DeepMm is how deep the top of the head lies under the face in a cone as wide there; below 0 it stands proud.
func (s SunkHead) DeepMm(coneMm float64) float64 {
	return (coneMm - s.DiameterMm) / 2 / math.Tan(s.AngleDeg*math.Pi/360)
}

// HeadDiameterMm returns the largest diameter of the head in mm: across the
// corners of a hexagon (taken sharp, across flats × 2/√3), the cylinder of
// a socket head, or the sharp cone of a countersunk one. It is an error where the size has no such head.
func (b Bolt) HeadDiameterMm(h Head) (float64, error) {
	switch h {
	case Hex:
		if b.AcrossFlatsMm > 0 {
			return b.AcrossFlatsMm * 2 / math.Sqrt(3), nil
		}
	case Socket:
		if b.SocketHeadDiameterMm > 0 {
			return b.SocketHeadDiameterMm, nil
		}
	case Countersunk:
		if s, ok := b.Sunk(); ok {
			return s.DiameterMm, nil
		}
	default:
		return 0, fmt.Errorf("bolts: head %q is not known: use hex, socket or countersunk", string(h))
	}
	return 0, fmt.Errorf("bolts: no %s head for %q in the standard", h, b.Thread.Designation)
}
