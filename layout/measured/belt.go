package measured

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"centrepop/parts/geom"
)

// Belt is a V-belt by its designation, in mm: how wide it is at its top and at its pitch line, how deep the pitch line of its
// pulleys lies under their rims, how thick it is, and between what lengths that line is long; both 0 where the designation has no length.
type Belt struct {
	Name                        string
	TopMm, PitchWidthMm, DeepMm float64
	ThickMm, LeastMm, MostMm    float64
}

// beltSections are the sections of V-belts of ISO 4183 and 4184 and of those in inches, as makers table them (docplayer.gr 22499730, vbelts4less.com;
// the depths, the thicknesses and the narrow ones from memory): top width, pitch width, depth of the pitch line, thickness, and how much longer than its number that line is; the unit
// of the number, mm. Light ones (L) are numbered by the length of their backs, narrow ones of inches (V) by that on the rims, both in tenths of an inch.
var beltSections = map[string]struct{ top, pitch, deep, thick, longer, unit float64 }{
	"Z": {10, 8.5, 2, 6, 22, geom.MmPerInch}, "A": {12.7, 11, 2.75, 8, 33, geom.MmPerInch}, "B": {16.7, 14, 3.5, 11, 45, geom.MmPerInch}, "C": {22.2, 19, 4.8, 14, 66, geom.MmPerInch},
	"SPZ": {9.7, 8.5, 2, 8, 0, 1}, "SPA": {12.7, 11, 2.75, 10, 0, 1}, "SPB": {16.3, 14, 3.5, 13, 0, 1}, "SPC": {22, 19, 4.8, 18, 0, 1},
	"3L": {9.5, 7.5, 2, 5.6, -13, geom.MmPerInch / 10}, "4L": {12.7, 11, 2.75, 7.9, -17, geom.MmPerInch / 10}, "5L": {16.7, 14, 3.5, 9.5, -30, geom.MmPerInch / 10},
	"3V": {9.5, 8.5, 0, 8, 0, geom.MmPerInch / 10}, "5V": {15.9, 14, 0, 13.5, 0, geom.MmPerInch / 10}, "8V": {25.4, 22, 0, 23, 0, geom.MmPerInch / 10},
}

// beltName is a V-belt in words: its section, toothed ones with an X, and its length.
var beltName = regexp.MustCompile(`\b(SP[ZABC]|XP[ZABC]|[ABC]X?|Z|[345]LX?|[358]VX?)[ -]?(\d{2,4})?\b`)

// classicalInches is up to where the number of a classical section is inches; beyond it is millimetres, which makers take of the inside or of the
// pitch line.
const classicalInches = 450

// beltShare is how much the length of a belt differs from its number, as a share: ISO 4184, from memory.
const beltShare = 0.01

// ParseBelt is the V-belt that words name, such as SPZ 1000, A54 or 4L430; ok is false where they name none.
func ParseBelt(words string) (b Belt, ok bool) {
	m := beltName.FindStringSubmatch(words)
	if m == nil {
		return b, false
	}
	section := strings.Replace(strings.TrimSuffix(m[1], "X"), "XP", "SP", 1)
	s := beltSections[section]
	b = Belt{Name: m[0], TopMm: s.top, PitchWidthMm: s.pitch, DeepMm: s.deep, ThickMm: s.thick}
	number, err := strconv.ParseFloat(m[2], 64)
	if err != nil {
		return b, true
	}
	least, most := number*s.unit+s.longer, number*s.unit+s.longer
	if s.unit == geom.MmPerInch && number > classicalInches {
		least, most = number, number+s.longer
	}
	b.LeastMm, b.MostMm = least*(1-beltShare), most*(1+beltShare)
	return b, true
}

// RoundMm is how long a belt lies round two wheels of two diameters, its run straight between them: exact, by geometry.
func RoundMm(aMm, bMm, apartMm float64) float64 {
	lean := math.Asin(math.Min(1, math.Abs(aMm-bMm)/2/apartMm))
	return 2*apartMm*math.Cos(lean) + math.Pi*(aMm+bMm)/2 + lean*math.Abs(aMm-bMm)
}
