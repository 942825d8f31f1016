package parts

import (
	"regexp"
	"strconv"
)

// DeepGroove is the boundary sizes of a single-row deep-groove ball bearing, mm, and its smallest chamfer,
// ISO 15: bore d, outside D, width B, and rs min of both rings.
type DeepGroove struct {
	BoreMm, OutsideMm, WidthMm, ChamferMm float64
	Checked                               bool // bore, outside and width were compared with a printed table
}

// deepGroove are outside, width and least chamfer in mm by series and the code of the bore from 00 on.
// ISO 15, dimension series 10, 02 and 03: outside and width of 60 and 62 as a seller's size chart prints them, those of
// 63 and all chamfers from memory.
var deepGroove = map[string][][3]float64{
	"60": {
		{26, 8, 0.3}, {28, 8, 0.3}, {32, 9, 0.3}, {35, 10, 0.3}, {42, 12, 0.6}, {47, 12, 0.6}, {55, 13, 1}, {62, 14, 1}, {68, 15, 1}, {75, 16, 1}, {80, 16, 1},
		{90, 18, 1.1}, {95, 18, 1.1}, {100, 18, 1.1}, {110, 20, 1.1}, {115, 20, 1.1}, {125, 22, 1.1}, {130, 22, 1.1}, {140, 24, 1.5}, {145, 24, 1.5}, {150, 24, 1.5},
	},
	"62": {
		{30, 9, 0.6}, {32, 10, 0.6}, {35, 11, 0.6}, {40, 12, 0.6}, {47, 14, 1}, {52, 15, 1}, {62, 16, 1}, {72, 17, 1.1}, {80, 18, 1.1}, {85, 19, 1.1}, {90, 20, 1.1},
		{100, 21, 1.5}, {110, 22, 1.5}, {120, 23, 1.5}, {125, 24, 1.5}, {130, 25, 1.5}, {140, 26, 2}, {150, 28, 2}, {160, 30, 2}, {170, 32, 2.1}, {180, 34, 2.1},
	},
	"63": {
		{35, 11, 0.6}, {37, 12, 1}, {42, 13, 1}, {47, 14, 1}, {52, 15, 1.1}, {62, 17, 1.1}, {72, 19, 1.1}, {80, 21, 1.5}, {90, 23, 1.5}, {100, 25, 1.5}, {110, 27, 2},
		{120, 29, 2}, {130, 31, 2.1}, {140, 33, 2.1}, {150, 35, 2.1}, {160, 37, 2.1}, {170, 39, 2.1}, {180, 41, 3}, {190, 43, 3}, {200, 45, 3}, {215, 47, 3},
	},
}

// smallBoresMm are the bores of the bore codes 00 to 03, DIN 623-1.
var smallBoresMm = []float64{10, 12, 15, 17}

// CodedBoreMm is the bore in mm that the last two figures of a bearing's designation say, 00 to 96; 0 for another
// number. DIN 623-1, as two bearing makers print it.
func CodedBoreMm(code int) float64 {
	switch {
	case code < 0 || code > 96:
		return 0
	case code < len(smallBoresMm):
		return smallBoresMm[code]
	}
	return 5 * float64(code)
}

var (
	deepGrooveName = regexp.MustCompile(`^(6[023])(\d\d)(?:[^\d.]|$)`)
	sealedName     = regexp.MustCompile(`(?i)[ /-]2RS|[ /-]2RZ|[ /-]2Z|ZZ`)
)

// DeepGrooveOf is the bearing of a designation such as 6004 or 6204-2RS; false for a series or a size that no
// table here has.
func DeepGrooveOf(designation string) (b DeepGroove, known bool) {
	m := deepGrooveName.FindStringSubmatch(designation)
	if m == nil {
		return b, false
	}
	code, _ := strconv.Atoi(m[2]) // two figures
	rows := deepGroove[m[1]]
	if code >= len(rows) {
		return b, false
	}
	return DeepGroove{CodedBoreMm(code), rows[code][0], rows[code][1], rows[code][2], m[1] != "63"}, true
}

// Sealed tells whether the bearing has seals or shields on both sides and comes with its grease, by its designation: 2RS, 2RZ, 2Z or ZZ.
func (b *BearingJoint) Sealed() bool { return b.Ball && sealedName.MatchString(b.Bearing.Value) }
