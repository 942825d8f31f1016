package bolts

import (
	"math"
	"strconv"

	"centrepop/layout/threads"
	"centrepop/parts/seq"
)

// metricLengths are the nominal lengths of ISO 888 in mm, as data files of ISO 4014 and 4762 have them.
var metricLengths = []float64{
	5, 6, 8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100,
	110, 120, 130, 140, 150, 160, 180, 200, 220, 240, 260, 280, 300, 320, 340, 360,
}

// StockLengths returns the lengths in mm in which the bolt is listed with
// this head, rising: ISO 888 lengths within the range of ISO 4014, 4017 or
// 4762, which end at 10 d, and at 200 mm for 4762; or for inch bolts steps of 1/8 in to 1 in, 1/4 in to 5 in, 1/2 in to
// 8 in and 1 in beyond (common practice, no source). Merchants keep fewer.
// The list is empty where the size has no such head.
func (b Bolt) StockLengths(h Head) []float64 {
	if _, err := b.HeadDiameterMm(h); err != nil {
		return nil
	}
	if s, _ := b.Sunk(); b.metric && h == Countersunk {
		return s.sunkLengths()
	}
	if b.metric {
		from, to := metricBolts[b.row].hexFrom, 10*b.Thread.MajorMm
		if h == Socket {
			from, to = metricBolts[b.row].socketFrom, math.Min(to, 200)
		}
		return seq.Keep(metricLengths, func(l float64) bool { return from <= l && l <= to })
	}
	var list []float64
	row := inchBolts[b.row]
	for eighths := int(8 * row.from); eighths <= int(8*row.to); {
		list = append(list, float64(eighths)/8*inch)
		switch {
		case eighths < 8:
			eighths++
		case eighths < 40:
			eighths += 2
		case eighths < 64:
			eighths += 4
		default:
			eighths += 8
		}
	}
	return list
}

// sunkLengths are the listed lengths of ISO 10642, from 8 to 100 mm.
func (s SunkHead) sunkLengths() []float64 {
	return seq.Keep(metricLengths, func(l float64) bool { return s.fromMm <= l && l <= 100 })
}

// requestLengths returns the ISO 888 lengths beyond StockLengths to 20 d or
// 360 mm, which makers supply on request; none for inch bolts.
func (b Bolt) requestLengths(stock []float64) []float64 {
	if !b.metric || len(stock) == 0 {
		return nil
	}
	return seq.Keep(metricLengths, func(l float64) bool { return l > stock[len(stock)-1] && l <= 20*b.Thread.MajorMm })
}

// shankPitches is the plain shank, in pitches beyond the run-out of five, under
// which a socket screw is threaded to the head instead (ISO 4762).
const shankPitches = 3

// ThreadLengthMm returns the nominal thread length in mm of a part-threaded
// bolt of length l mm: ISO 4014 2d+6, 2d+12 above 125, 2d+25 above 200; ISO 4762
// 2d+12, and to the head where less than three pitches of shank and five of run-out
// would be left (from memory); inch hexagon 2D+1/4 in, 2D+1/2 in above 6 in (ASME
// B18.2.1), inch socket 2D+1/2 in and to the head by the same rule (ASME B18.3, from
// memory). It is never more than l: shorter bolts are threaded to the head. A
// length that is not positive and finite gives 0.
func (b Bolt) ThreadLengthMm(h Head, l float64) float64 {
	if !finite(l) || l <= 0 {
		return 0
	}
	d := b.Thread.MajorMm
	length := 2*d + 6
	switch {
	case b.metric && h.Keyed():
		length = 2*d + 12
	case b.metric && l > 200:
		length = 2*d + 25
	case b.metric && l > 125:
		length = 2*d + 12
	case !b.metric && (h.Keyed() || l > 6*inch):
		length = 2*d + 0.5*inch
	case !b.metric:
		length = 2*d + 0.25*inch
	}
	const runOut = 5
	if s, _ := b.Sunk(); h == Countersunk {
		length += s.HeightMm // no shank lies in its cone
	}
	if h.Keyed() && l-length <= (runOut+shankPitches)*b.Thread.PitchMm+1e-9 {
		return l
	}
	return math.Min(length, l)
}

// fullThreadOnly reports whether the length is below the shortest ISO 4014
// bolt, so that only the fully threaded ISO 4017 screw is sold.
func (b Bolt) fullThreadOnly(h Head, l float64) bool {
	return b.metric && h == Hex && l < metricBolts[b.row].boltFrom
}

// fullThreadAvailable reports whether a screw threaded to the head is listed
// at this length: ISO 4017 hexagon screws to 200 mm (10 d below M20), inch
// "tap bolts" to 4 in (common practice, no source). Socket heads are so only
// where their thread length reaches the head.
func (b Bolt) fullThreadAvailable(h Head, l float64) bool {
	switch {
	case h.Keyed():
		return b.ThreadLengthMm(h, l) >= l
	case b.metric:
		return l <= math.Min(10*b.Thread.MajorMm, 200) // ISO 4017, from memory: 10 d to the nearest listed length, 200 from M20 up
	}
	return l <= 4*inch
}

// Ordered names the bolt with a length in mm as it is ordered: "M10 x 40".
func (b Bolt) Ordered(lengthMm float64) string {
	return b.Thread.Designation + " x " + b.LengthName(lengthMm)
}

// LengthName writes a length in mm as it is ordered: "40" or "2 1/4 in".
func (b Bolt) LengthName(l float64) string {
	if b.metric {
		return strconv.FormatFloat(l, 'f', -1, 64)
	}
	return threads.Fraction(int(math.Round(l/inch*8)), 8, " ") + " in"
}
