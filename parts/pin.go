package parts

import (
	"regexp"
	"strings"
)

// BareLength is a regular expression of a length in words whose unit may be that of the job: the number, and the unit.
const BareLength = `(\d+-\d+/\d+|\d+/\d+|\d+(?:\.\d+)?)(?: ?(mm|in)\b)?`

// pinWords are the diameter and the length of a pin as it is ordered.
var pinWords = regexp.MustCompile(`(?i)\bpins?\b(?:[^/]*?[^/\d.])` + BareLength + `(?: ?[a-z]\d+)? ?[x×] ?` + BareLength)

// PinSizes are the diameter and the length in mm of a pin that words order by both, such as "dowel pin 8 m6 x 20", what
// has no unit in that of the job; 0 where they name none. A fraction alone is of an inch.
func PinSizes(text string, units Units) (acrossMm, longMm float64) {
	m := pinWords.FindStringSubmatch(text)
	if m == nil {
		return 0, 0
	}
	return BareMm(m[1], m[2], units), BareMm(m[3], m[4], units)
}

// BareMm is what a [BareLength] is in mm; 0 for what is none.
func BareMm(number, unit string, units Units) float64 {
	if unit == "" && strings.Contains(number, "/") {
		unit = "in"
	}
	mm, _ := ParseLength(strings.TrimSpace(number+" "+unit), units)
	return mm
}
